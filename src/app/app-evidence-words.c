/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-evidence-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app-reading-words.h"
#include "core-method.h"

static char *
join_lines (GPtrArray *lines)
{
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **)lines->pdata);
}

static guint
count_decimals (const char *number)
{
  const char *point = strchr (number, '.');
  return point != NULL ? (guint)strspn (point + 1, "0123456789") : 0;
}

char *
tm_words_size_pair (const TmFeature *feature, gint64 reference, double size, double half)
{
  TmJudgement form = { .feature = feature };
  const char *symbol = tm_unit_symbol (feature->unit);
  gint64 count = reference + (gint64)llround (size);
  if (!isfinite (half))
    {
      g_autofree char *alone
          = tm_count_format (count, feature->unit, MAX (feature->lower.decimals, feature->upper.decimals));
      return g_strdup_printf ("%s %s", alone, symbol);
    }
  g_autofree char *spread = tm_judgement_spread_text (&form, half);
  g_autofree char *number = tm_count_format (count, feature->unit, count_decimals (spread));
  return g_strdup_printf ("%s ± %s %s", number, spread, symbol);
}

static const char *
find_part_sentence (const TmCombinePart *part)
{
  switch (part->settles)
    {
    case TM_SETTLES_CANNOT:
      return _ ("cannot settle this band");
    case TM_SETTLES_SELDOM:
      return _ ("settles few");
    case TM_SETTLES_MOSTLY:
      return _ ("settles most");
    case TM_SETTLES:
      return _ ("settles it");
    case TM_SETTLES_UNKNOWN:
    default:
      return isfinite (part->u) ? "" : _ ("its uncertainty is not known");
    }
}

/* The method, then what it read and how well it settles: two lines, for a narrow column. */
static char *
describe_part (const TmCombined *combined, const TmCombinePart *part, const TmFeature *feature)
{
  const char *settles = find_part_sentence (part);
  const char *name = *part->method_name != '\0' ? part->method_name : _ ("no gauge named");
  g_autofree char *size = tm_words_size_pair (feature, combined->reference, part->size, part->expanded);
  g_autofree char *counted
      = part->n > 1 ? g_strdup_printf (ngettext ("%s, %u\u00a0reading", "%s, %u\u00a0readings", part->n),
                                       name, part->n)
                    : g_strdup (name);
  if (*settles == '\0')
    return g_strdup_printf ("%s\n%s", counted, size);
  /* Translators: a method; on the next line what it read, and how well it settles. */
  return g_strdup_printf (_ ("%s\n%s: %s"), counted, size, settles);
}

char *
tm_words_methods (const TmCombined *combined, const TmFeature *feature)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < combined->n_parts; i++)
    g_ptr_array_add (lines, describe_part (combined, &combined->parts[i], feature));
  return join_lines (lines);
}

static char *
describe_disagreement (const TmCombined *combined)
{
  if (!combined->disagree)
    return NULL;
  if (combined->apart < 0 || (guint)combined->apart >= combined->n_parts)
    return g_strdup (_ ("They disagree by more than their uncertainties explain: one of them is wrong."));
  return g_strdup_printf (_ ("They disagree by more than their uncertainties explain: %s stands apart."),
                          combined->parts[combined->apart].method_name);
}

char *
tm_words_together (const TmCombined *combined, const TmFeature *feature)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  if (combined->n_parts < 2 || !isfinite (combined->u))
    return g_strdup ("");
  g_autofree char *size
      = tm_words_size_pair (feature, combined->reference, combined->size, combined->expanded);
  char *disagreement = describe_disagreement (combined);
  g_ptr_array_add (lines, g_strdup_printf (_ ("together: %s"), size));
  if (combined->best_alone)
    g_ptr_array_add (lines, g_strdup (_ ("What they have in common leaves the best one to count alone.")));
  if (disagreement != NULL)
    g_ptr_array_add (lines, disagreement);
  return join_lines (lines);
}

/* One digit more than was read, and as many more as tell the two values apart. */
static guint
find_telling_decimals (const TmLocalSize *size, const TmFeature *feature)
{
  guint decimals = MAX (size->decimals, MAX (feature->lower.decimals, feature->upper.decimals)) + 1;
  for (; decimals < TM_MAX_DECIMALS; decimals++)
    {
      g_autofree char *raw = tm_mean_format (size->raw_sum, size->n, feature->unit, decimals);
      g_autofree char *corrected = tm_mean_format (size->sum, size->n, feature->unit, decimals);
      if (!g_str_equal (raw, corrected))
        break;
    }
  return MIN (decimals, TM_MAX_DECIMALS);
}

char *
tm_words_corrected (const TmJudgement *judgement)
{
  const TmFeature *feature = judgement->feature;
  const TmSizes *sizes = &judgement->sizes;
  if (judgement->deciding >= sizes->n_stations)
    return g_strdup ("");
  const TmLocalSize *size = &sizes->stations[judgement->deciding];
  gboolean warm = size->last != NULL && size->last->part_temp.given && size->last->gauge_temp.given;
  /* Methods put together have no one raw value. */
  if (judgement->counted != TM_COUNTED_READINGS)
    return g_strdup (warm ? _ ("each reading is brought to 20 °C first") : "");
  if (judgement->correction == 0.0 || size->radial)
    return g_strdup ("");
  guint decimals = find_telling_decimals (size, feature);
  g_autofree char *raw = tm_mean_format (size->raw_sum, size->n, feature->unit, decimals);
  g_autofree char *corrected = tm_mean_format (size->sum, size->n, feature->unit, decimals);
  if (warm)
    return g_strdup_printf (_ ("%s read, %s at 20 °C"), raw, corrected);
  return g_strdup_printf (_ ("%s read, %s by the certificate"), raw, corrected);
}

char *
tm_words_assumed (const TmJob *job, const TmFeature *feature, const char *method_name)
{
  TmMethodUse use = tm_method_use (job, feature, method_name);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < use.n_components && use.known; i++)
    {
      const TmComponent *line = &use.components[i];
      const char *kind = g_dpgettext2 (GETTEXT_PACKAGE, "component", tm_component_word (line->kind));
      if (line->assumed && line->value > 0)
        g_ptr_array_add (names, line->subject != NULL ? g_strdup_printf ("%s %s", kind, line->subject)
                                                      : g_strdup (kind));
    }
  if (names->len == 0 || !tm_method_rests_on_assumed (&use))
    return g_strdup ("");
  g_ptr_array_add (names, NULL);
  g_autofree char *list = g_strjoinv (", ", (char **)names->pdata);
  /* Translators: figures that nobody has measured in this shop. */
  return g_strdup_printf (_ ("assumed, not measured here: %s"), list);
}
