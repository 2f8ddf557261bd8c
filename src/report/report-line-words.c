/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-line-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report-language.h"
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

/* -------- What it was before a rework -------- */

/* "24.990 out", "fail out". */
static char *
say_result (const TmJudgement *judgement)
{
  g_autofree char *size = tm_judgement_size_text (judgement);
  const char *verdict = tm_report_verdict_word (judgement->verdict);

  if (tm_kind_is_attribute (judgement->feature->kind) || *size == '\0')
    return g_strdup (verdict);
  return g_strdup_printf ("%s %s", size, verdict);
}

static char *
say_rework (const TmNonconformance *rework, TmDateForm dates)
{
  g_autofree char *date = tm_report_date (dates, rework->rework_at);
  const gboolean repaired = g_str_equal (rework->disposition, "repair");

  if (*rework->number == '\0')
    return g_strdup_printf (repaired ? _ ("repaired %s") : _ ("reworked %s"), date);
  /* Translators: the date, and the number of the nonconformance. */
  return g_strdup_printf (repaired ? _ ("repaired %s (%s)") : _ ("reworked %s (%s)"), date, rework->number);
}

char *
tm_report_line_first (const TmReportLine *line, TmDateForm dates)
{
  const TmJudgement *now = &line->judgement;
  const gboolean again = now->sizes.n_stations > 0 || now->verdict != TM_VERDICT_NOT_MEASURED;
  g_autofree char *before = NULL, *rework = NULL, *after = NULL;

  if (line->first == NULL)
    return NULL;
  before = say_result (&line->first->judgement);
  rework = say_rework (line->first->rework, dates);
  after = say_result (now);
  if (!again)
    /* Translators: "24.990 out", "reworked 2026-05-04 (NC-14)". */
    return g_strdup_printf (_ ("first result %s, %s, not measured since"), before, rework);
  /* Translators: "24.990 out", "reworked 2026-05-04 (NC-14)", "25.010 in". */
  return g_strdup_printf (_ ("first result %s, %s, then %s"), before, rework, after);
}

char *
tm_report_line_comment (const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  GString *out = g_string_new (NULL);

  append_note (out, line->feature->comment);
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
