/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-line-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report-words.h"

guint
tm_report_line_decimals (const TmReportLine *line)
{
  const TmFeature *feature = line->feature;
  /* In brackets: with its point, whatever mark this thread prints. */
  g_autofree char *size = (tm_judgement_size_text)(&line->judgement);
  const char *point = strchr (size, '.');
  guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);

  decimals = MAX (decimals, feature->nominal.decimals);
  return MAX (decimals, point != NULL ? (guint)strlen (point + 1) : 0);
}

const char *
tm_report_line_due (const TmJob *job, const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  const char *due = judgement->gauge != NULL ? judgement->gauge->due : "";

  if (judgement->method == NULL || *due == '\0')
    return due;
  for (guint i = 0; i < judgement->method->gauges->len; i++)
    {
      const TmGauge *gauge = tm_job_find_gauge (job, g_ptr_array_index (judgement->method->gauges, i));
      if (gauge != NULL && *gauge->due != '\0' && strcmp (gauge->due, due) < 0)
        due = gauge->due;
    }
  return due;
}

static void
append_note (GString *out, const char *text)
{
  if (*text == '\0')
    return;
  if (out->len > 0)
    g_string_append (out, "; ");
  g_string_append (out, text);
}

/* The value that counts, where it is not the smallest and the largest reading. */
static void
append_combined (GString *out, const TmJudgement *judgement)
{
  g_autofree char *size = NULL;
  g_autofree char *note = NULL;

  if (judgement->counted == TM_COUNTED_READINGS || isnan (judgement->combined_size))
    return;
  size = tm_judgement_size_text (judgement);
  note = g_strdup_printf (judgement->pins_joined ? _ ("mating size %s") : _ ("combined %s"), size);
  append_note (out, note);
}

const char *
tm_report_line_counted (const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;

  if ((judgement->sizes.n_stations == 0 && judgement->counted != TM_COUNTED_PINS)
      || tm_kind_is_attribute (judgement->feature->kind))
    return "";
  if (judgement->counted == TM_COUNTED_READINGS && *judgement->method_name != '\0'
      && g_str_equal (judgement->method_name, judgement->feature->method))
    return _ ("assigned method");
  return g_dpgettext2 (GETTEXT_PACKAGE, "counted", tm_counted_word (judgement->counted));
}

char *
tm_report_line_comment (const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  GString *out = g_string_new (NULL);

  append_note (out, tm_report_why_word (judgement->why));
  append_combined (out, judgement);
  if (judgement->limits.has_upper && line->feature->upper.given
      && judgement->limits.upper != line->feature->upper.count)
    append_note (out, _ ("upper limit with bonus"));
  if (line->nonconformance != NULL)
    {
      append_note (out, line->nonconformance->note);
      append_note (out, line->nonconformance->disposition);
    }
  return g_string_free (out, FALSE);
}
