/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-suitability-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-budget-words.h"

/* A resolution coarser than this share of the band is pointed out (metrology: Uncertainty). */
#define COARSE_SHARE 0.1

const char *
tm_words_settles (TmSettles settles)
{
  switch (settles)
    {
    case TM_SETTLES:
      return _ ("settles it");
    case TM_SETTLES_MOSTLY:
      return _ ("settles most readings");
    case TM_SETTLES_SELDOM:
      return _ ("settles few readings");
    case TM_SETTLES_CANNOT:
      return _ ("cannot settle it");
    case TM_SETTLES_UNKNOWN:
    default:
      return _ ("not known");
    }
}

/* With one limit, a maximum or a minimum, there is no band for the guard to eat. */
static const char *
describe_settles (const TmFeature *feature, TmSettles settles)
{
  TmLimits limits = tm_feature_limits (feature);

  if (settles == TM_SETTLES_UNKNOWN && tm_limits_band (&limits) <= 0)
    return _ ("one limit only");
  return tm_words_settles (settles);
}

static gboolean
has_limits (const TmFeature *feature)
{
  return feature->lower.given || feature->upper.given;
}

static gboolean
wants_method (const TmFeature *feature)
{
  return !tm_kind_is_attribute (feature->kind) && has_limits (feature);
}

const char *
tm_words_suitability_word (const TmFeature *feature, const TmSuitability *row)
{
  if (!row->fits)
    return _ ("not made for it");
  if (!row->reaches)
    return _ ("does not reach it");
  return row->known ? describe_settles (feature, row->outlook.settles)
                    : tm_words_settles (TM_SETTLES_UNKNOWN);
}

gboolean
tm_suitability_cannot (const TmSuitability *row)
{
  return !row->fits || !row->reaches || (row->known && row->outlook.settles == TM_SETTLES_CANNOT);
}

const char *
tm_words_assigned (const TmJob *job, const TmFeature *feature)
{
  TmSuitability row;

  if (tm_kind_is_attribute (feature->kind))
    return _ ("pass or fail");
  if (!has_limits (feature))
    return _ ("no limits");
  if (*feature->method == '\0')
    return _ ("no method");
  if (!tm_suitability_of (job, feature, feature->method, NULL, &row))
    return _ ("not in the register");
  return tm_words_suitability_word (feature, &row);
}

gboolean
tm_assigned_cannot (const TmJob *job, const TmFeature *feature)
{
  TmSuitability row;

  return wants_method (feature) && tm_suitability_of (job, feature, feature->method, NULL, &row)
         && tm_suitability_cannot (&row);
}

/* A method that nobody has stated enough of, or that is gone: it is not said to prove anything. */
static gboolean
is_open (const TmJob *job, const TmFeature *feature)
{
  TmSuitability row;

  if (!wants_method (feature) || *feature->method == '\0')
    return FALSE;
  return !tm_suitability_of (job, feature, feature->method, NULL, &row)
         || (!row.known && !tm_suitability_cannot (&row));
}

static void
append_sentence (GString *text, char *sentence)
{
  g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", sentence);
  g_free (sentence);
}

char *
tm_words_suitability_summary (const TmJob *job)
{
  guint n_cannot = 0, n_without = 0, n_open = 0, n_assigned = 0;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      n_cannot += tm_assigned_cannot (job, feature) ? 1 : 0;
      n_without += wants_method (feature) && *feature->method == '\0' ? 1 : 0;
      n_assigned += wants_method (feature) && *feature->method != '\0' ? 1 : 0;
      n_open += is_open (job, feature) ? 1 : 0;
    }
  if (n_cannot > 0)
    append_sentence (text,
                     g_strdup_printf (ngettext ("%u feature cannot be proven with its method.",
                                                "%u features cannot be proven with their method.", n_cannot),
                                      n_cannot));
  else if (n_assigned > n_open)
    append_sentence (text, g_strdup (n_open > 0 ? _ ("Each other method can prove its feature.")
                                                : _ ("Each method can prove its feature.")));
  if (n_open > 0)
    append_sentence (
        text,
        g_strdup_printf (ngettext ("Of %u feature it is not known what its method can prove.",
                                   "Of %u features it is not known what their method can prove.", n_open),
                         n_open));
  if (n_without > 0)
    append_sentence (text, g_strdup_printf (ngettext ("%u feature has no method.",
                                                      "%u features have no method.", n_without),
                                            n_without));
  return g_string_free (text, FALSE);
}

static void
append_remark (GString *text, gboolean applies, const char *remark)
{
  if (applies)
    g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", remark);
}

char *
tm_words_suitability_remarks (const TmSuitability *row)
{
  GString *text = g_string_new (NULL);
  g_autofree char *coarse
      = g_strdup_printf (_ ("one step is %.0f %% of the band"), 100.0 * row->outlook.blind_share);

  append_remark (text, !row->fits && !row->reaches, _ ("out of its range"));
  append_remark (text, row->due == TM_DUE_OVERDUE, _ ("calibration overdue"));
  append_remark (text, row->due == TM_DUE_SOON, _ ("calibration due soon"));
  append_remark (text, row->known && row->outlook.blind_share > COARSE_SHARE, coarse);
  append_remark (text, row->assumed, _ ("rests on assumed figures"));
  append_remark (text, !row->known, _ ("its uncertainty is not stated"));
  return g_string_free (text, FALSE);
}

static void
append_figures (GString *text, const TmFeature *feature, const TmSuitability *row)
{
  g_autofree char *expanded = tm_words_total (feature, &row->outlook, TM_TOTAL_EXPANDED);
  g_autofree char *guard = tm_words_total (feature, &row->outlook, TM_TOTAL_GUARD);
  g_autofree char *share = tm_words_share (row->share);

  g_string_append_printf (text, _ ("; expanded uncertainty %s"), expanded);
  if (*guard != '\0')
    g_string_append_printf (text, _ (", guard %s"), guard);
  if (*share != '\0' && row->outlook.settles != TM_SETTLES_CANNOT)
    g_string_append_printf (text, _ (", %s of the band"), share);
}

char *
tm_words_suitability (const TmFeature *feature, const TmSuitability *row, gboolean assigned)
{
  g_autofree char *remarks = tm_words_suitability_remarks (row);
  const char *word = tm_words_suitability_word (feature, row);
  GString *text = g_string_new (row->name);

  if (assigned)
    g_string_append (text, _ (", assigned"));
  g_string_append_printf (text, ": %s", word);
  if (row->known)
    append_figures (text, feature, row);
  if (*remarks != '\0')
    g_string_append_printf (text, "; %s", remarks);
  return g_string_free (text, FALSE);
}
