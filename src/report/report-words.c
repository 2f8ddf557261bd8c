/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-words.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core-verdict.h"

#define MOST_SERIALS 12 /* that are named one by one */
#define LONGEST_NAME 48 /* letters, where there is little room */

/* The empty text is a translation's header, never a word. */
static const char *
translate (const char *context, const char *word)
{
  return *word != '\0' ? g_dpgettext2 (GETTEXT_PACKAGE, context, word) : "";
}

const char *
tm_report_verdict_word (TmVerdict verdict)
{
  return translate ("verdict", tm_verdict_word (verdict));
}

const char *
tm_report_side_word (TmSide side)
{
  return translate ("side", tm_side_word (side));
}

const char *
tm_report_why_word (TmWhy why)
{
  return translate ("why", tm_why_word (why));
}

const char *
tm_report_settles_word (TmSettles settles)
{
  return translate ("settles", tm_settles_word (settles));
}

char *
tm_report_gauges_of (const TmJob *job, const char *method_name)
{
  const TmMethod *method = tm_job_find_method (job, method_name);
  GString *out;

  if (method == NULL || method->gauges->len == 0)
    return g_strdup (method_name);
  out = g_string_new (NULL);
  for (guint i = 0; i < method->gauges->len; i++)
    g_string_append_printf (out, "%s%s", i > 0 ? ", " : "",
                            (const char *)g_ptr_array_index (method->gauges, i));
  return g_string_free (out, FALSE);
}

const char *
tm_report_fact_name (const char *field)
{
  static const struct {
    const char *field;
    const char *name;
  } facts[] = {
    { "part_number", N_ ("part number") },
    { "part_name", N_ ("part name") },
    { "revision", N_ ("revision") },
    { "drawing", N_ ("drawing number") },
    { "report_identifier", N_ ("report identifier") },
    { "organisation", N_ ("organisation") },
    { "customer", N_ ("customer") },
    { "order", N_ ("order") },
    { "reason", N_ ("reason") },
    { "baseline", N_ ("baseline report") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    if (strcmp (facts[i].field, field) == 0)
      return _ (facts[i].name);
  return field;
}

char *
tm_report_feature_name (const TmFeature *feature, guint place)
{
  const gboolean both = *feature->requirement != '\0' && *feature->name != '\0';
  GString *out = g_string_new (feature->balloon);

  if (*feature->requirement != '\0' || *feature->name != '\0')
    g_string_append_printf (out, " (%s%s%s)", feature->requirement, both ? " " : "", feature->name);
  if (feature->places > 1 && place > 0)
    {
      g_string_append (out, ", ");
      g_string_append_printf (out, _ ("place %u"), place);
    }
  return g_string_free (out, FALSE);
}

char *
tm_report_shorten (const char *text, guint most)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *head = NULL;

  if (g_utf8_strlen (valid, -1) <= (glong)most)
    return g_steal_pointer (&valid);
  head = g_utf8_substring (valid, 0, (glong)most - 1);
  return g_strconcat (g_strchomp (head), "…", NULL);
}

char *
tm_report_feature_short_name (const TmFeature *feature, guint place)
{
  TmFeature shown = *feature;
  g_autofree char *balloon = tm_report_shorten (feature->balloon, LONGEST_NAME);
  g_autofree char *requirement = tm_report_shorten (feature->requirement, LONGEST_NAME);
  g_autofree char *name = tm_report_shorten (feature->name, LONGEST_NAME);

  shown.balloon = balloon;
  shown.requirement = requirement;
  shown.name = name;
  return tm_report_feature_name (&shown, place);
}

char *
tm_report_rule (const TmJob *job)
{
  if (job->decision == TM_DECISION_SIMPLE)
    return g_strdup_printf (
        _ ("Simple acceptance (ASME B89.7.3.1): a size on or within its limits is in, provided that the band "
           "is at least %g times the method's uncertainty interval; otherwise it is too close to call."),
        tm_job_simple_ratio (job));
  return g_strdup (
      _ ("Guarded acceptance (ISO 14253-1): a size is in when it lies inside its limits by at "
         "least the guard, and out when it lies beyond them by more than the guard, each at 95 %; "
         "between, it is too close to call."));
}

char *
tm_report_pieces (const TmReportContent *content)
{
  g_autoptr (GPtrArray) serials = g_ptr_array_new ();
  const TmPiece *last = NULL;

  for (guint i = 0; i < content->lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (content->lines, i);
      if (line->piece != last)
        g_ptr_array_add (serials, (gpointer)line->piece->serial);
      last = line->piece;
    }
  if (serials->len > MOST_SERIALS)
    return g_strdup_printf (
        g_dngettext (GETTEXT_PACKAGE, "%s … %s (%u piece)", "%s … %s (%u pieces)", serials->len),
        (const char *)serials->pdata[0], (const char *)serials->pdata[serials->len - 1], serials->len);
  g_ptr_array_add (serials, NULL);
  return g_strjoinv (", ", (char **)serials->pdata);
}
