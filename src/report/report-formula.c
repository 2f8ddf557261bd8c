/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-formula.h"

#include <float.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "report-words.h"

static double
get_mean (const TmLocalSize *size, TmUnit unit)
{
  return (double)size->sum / ((double)MAX (1, size->n) * (double)MAX (1, tm_unit_counts (unit)));
}

static guint
count_unread (const TmFeature *feature, const TmSizes *sizes)
{
  guint unread = 0;

  for (guint i = 0; i < feature->stations->len; i++)
    unread += !tm_sizes_has_station (feature, sizes, g_ptr_array_index (feature->stations, i));
  return unread;
}

TmRowValues
tm_row_values (const TmReportLine *line)
{
  const TmFeature *feature = line->feature;
  const TmJudgement *judgement = &line->judgement;
  const TmLimits *limits = &judgement->limits;
  const TmSizes *sizes = &judgement->sizes;
  const TmUnit unit = feature->unit;
  TmRowValues values = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, 0, FALSE };

  values.unread = count_unread (feature, sizes);
  values.cannot = judgement->settles == TM_SETTLES_CANNOT;
  if (tm_kind_is_attribute (feature->kind))
    return values;
  if (feature->nominal.given)
    values.nominal = tm_count_to_double (feature->nominal.count, unit);
  if (limits->has_lower)
    values.lower = tm_count_to_double (limits->lower, unit);
  if (limits->has_upper)
    values.upper = tm_count_to_double (limits->upper, unit);
  if (sizes->n_stations == 0)
    return values;
  values.smallest = get_mean (&sizes->stations[sizes->smallest], unit);
  values.largest = get_mean (&sizes->stations[sizes->largest], unit);
  values.guard = tm_count_to_double (judgement->guard, unit);
  values.guard_out = tm_count_to_double (judgement->guard_out, unit);
  return values;
}

guint
tm_formula_digits (TmUnit unit)
{
  const double counts = (double)MAX (1, tm_unit_counts (unit));

  return (guint)CLAMP (ceil (log10 (counts) - 1e-9), 0.0, 11.0);
}

/* By its decimal text: to the nearest, as the exact value of the double says. */
static double
round_by_text (double value, guint digits)
{
  char format[16], text[G_ASCII_DTOSTR_BUF_SIZE + 32];

  g_snprintf (format, sizeof format, "%%.%uf", digits);
  return g_ascii_strtod (g_ascii_formatd (text, sizeof text, format, value), NULL);
}

/* Whole numbers below 2^53 and powers of ten up to 10^22 are exact doubles, so their quotient is the double
 * nearest to the decimal.  A half goes away from zero, also one that its double does not quite hit: sheets
 * look at the decimal that was meant, and a mean of four readings often ends in a five. */
double
tm_formula_round (double value, guint digits)
{
  static const double powers[] = { 1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11 };
  double scaled, whole;

  if (digits >= G_N_ELEMENTS (powers) || !(fabs (value) < 1e15 / powers[digits]))
    return round_by_text (value, digits);
  scaled = fabs (value) * powers[digits];
  whole = floor (scaled);
  if (scaled - whole >= 0.5 - scaled * DBL_EPSILON)
    whole += 1.0;
  return copysign (whole / powers[digits], value);
}

char *
tm_formula_deviation (const TmRowValues *values, const TmRowCells *cells, guint digits)
{
  if (isnan (values->nominal))
    return NULL;
  return g_strdup_printf ("=IF(COUNT(%s,%s)=0,\"\",ROUND(IF(ABS(%s-%s)>ABS(%s-%s),%s,%s)-%s,%u))",
                          cells->smallest, cells->largest, cells->smallest, cells->nominal, cells->largest,
                          cells->nominal, cells->smallest, cells->largest, cells->nominal, digits);
}

double
tm_deviation_value (const TmRowValues *values, guint digits)
{
  const double low = values->smallest - values->nominal, high = values->largest - values->nominal;

  return tm_formula_round (fabs (low) > fabs (high) ? low : high, digits);
}

/* -------- The verdict -------- */

/* A word as a text constant of a formula. */
static char *
quote (const char *word)
{
  g_auto (GStrv) parts = NULL;
  g_autofree char *doubled = NULL;

  if (strchr (word, '"') == NULL)
    return g_strconcat ("\"", word, "\"", NULL);
  parts = g_strsplit (word, "\"", -1);
  doubled = g_strjoinv ("\"\"", parts);
  return g_strdup_printf ("\"%s\"", doubled);
}

typedef struct {
  char *in, *out, *close, *unmeasured, *cannot, *pass;
} Words;

static Words
make_words (void)
{
  return (Words) {
    .in = quote (tm_report_verdict_word (TM_VERDICT_IN)),
    .out = quote (tm_report_verdict_word (TM_VERDICT_OUT)),
    .close = quote (tm_report_verdict_word (TM_VERDICT_TOO_CLOSE)),
    .unmeasured = quote (tm_report_verdict_word (TM_VERDICT_NOT_MEASURED)),
    .cannot = quote (tm_report_settles_word (TM_SETTLES_CANNOT)),
    .pass = quote (_ ("pass")),
  };
}

static void
clear_words (Words *words)
{
  g_free (words->in);
  g_free (words->out);
  g_free (words->close);
  g_free (words->unmeasured);
  g_free (words->cannot);
  g_free (words->pass);
}

/* "AND(smallest>=lower+guard, largest<=upper-guard)", each side rounded, with what limits there are. */
static char *
write_inside (const TmRowValues *values, const TmRowCells *cells, guint digits)
{
  g_autofree char *lower = g_strdup_printf ("ROUND(%s,%u)>=ROUND(%s+%s,%u)", cells->smallest, digits,
                                            cells->lower, cells->guard, digits);
  g_autofree char *upper = g_strdup_printf ("ROUND(%s,%u)<=ROUND(%s-%s,%u)", cells->largest, digits,
                                            cells->upper, cells->guard, digits);

  if (!isnan (values->lower) && !isnan (values->upper))
    return g_strdup_printf ("AND(%s,%s)", lower, upper);
  return g_strdup (isnan (values->lower) ? upper : lower);
}

static char *
write_outside (const TmRowValues *values, const TmRowCells *cells, guint digits)
{
  g_autofree char *lower = g_strdup_printf ("ROUND(%s,%u)<ROUND(%s-%s,%u)", cells->smallest, digits,
                                            cells->lower, cells->guard_out, digits);
  g_autofree char *upper = g_strdup_printf ("ROUND(%s,%u)>ROUND(%s+%s,%u)", cells->largest, digits,
                                            cells->upper, cells->guard_out, digits);

  if (!isnan (values->lower) && !isnan (values->upper))
    return g_strdup_printf ("OR(%s,%s)", lower, upper);
  return g_strdup (isnan (values->lower) ? upper : lower);
}

static gboolean
is_inside (const TmRowValues *values, guint digits)
{
  return (isnan (values->lower)
          || tm_formula_round (values->smallest, digits)
                 >= tm_formula_round (values->lower + values->guard, digits))
         && (isnan (values->upper)
             || tm_formula_round (values->largest, digits)
                    <= tm_formula_round (values->upper - values->guard, digits));
}

static gboolean
is_outside (const TmRowValues *values, guint digits)
{
  return (!isnan (values->lower)
          && tm_formula_round (values->smallest, digits)
                 < tm_formula_round (values->lower - values->guard_out, digits))
         || (!isnan (values->upper)
             && tm_formula_round (values->largest, digits)
                    > tm_formula_round (values->upper + values->guard_out, digits));
}

/* What the formula below comes to. */
static TmVerdict
evaluate (TmDecision decision, const TmRowValues *values, guint digits)
{
  if (isnan (values->smallest))
    return TM_VERDICT_NOT_MEASURED;
  if (decision == TM_DECISION_SIMPLE && values->cannot)
    return TM_VERDICT_TOO_CLOSE;
  if (is_outside (values, digits))
    return TM_VERDICT_OUT;
  if (values->cannot || !is_inside (values, digits))
    return TM_VERDICT_TOO_CLOSE;
  return values->unread > 0 ? TM_VERDICT_NOT_MEASURED : TM_VERDICT_IN;
}

static char *
write_number_verdict (const TmJob *job, const TmRowValues *values, const TmRowCells *cells, guint digits,
                      const Words *words)
{
  g_autofree char *inside = write_inside (values, cells, digits);
  g_autofree char *outside = write_outside (values, cells, digits);
  g_autofree char *good = g_strdup_printf ("IF(%s>0,%s,%s)", cells->unread, words->unmeasured, words->in);
  const char *none = words->unmeasured;

  if (job->decision == TM_DECISION_SIMPLE)
    return g_strdup_printf ("=IF(COUNT(%s,%s)=0,%s,IF(%s=%s,%s,IF(%s,%s,IF(%s,%s,%s))))", cells->smallest,
                            cells->largest, none, cells->settles, words->cannot, words->close, outside,
                            words->out, inside, good, words->close);
  return g_strdup_printf ("=IF(COUNT(%s,%s)=0,%s,IF(%s,%s,IF(%s=%s,%s,IF(%s,%s,%s))))", cells->smallest,
                          cells->largest, none, outside, words->out, cells->settles, words->cannot,
                          words->close, inside, good, words->close);
}

/* Pass or fail: the result's own word. */
static char *
write_outcome_verdict (const TmRowCells *cells, const Words *words)
{
  return g_strdup_printf ("=IF(%s=\"\",%s,IF(%s<>%s,%s,IF(%s>0,%s,%s)))", cells->smallest, words->unmeasured,
                          cells->smallest, words->pass, words->out, cells->unread, words->unmeasured,
                          words->in);
}

char *
tm_formula_verdict (const TmJob *job, const TmReportLine *line, const TmRowValues *values,
                    const TmRowCells *cells)
{
  const guint digits = tm_formula_digits (line->feature->unit);
  Words words = make_words ();
  char *formula = NULL;

  if (tm_kind_is_attribute (line->feature->kind))
    formula = write_outcome_verdict (cells, &words);
  else if ((!isnan (values->lower) || !isnan (values->upper))
           && evaluate (job->decision, values, digits) == line->judgement.verdict)
    formula = write_number_verdict (job, values, cells, digits, &words);
  clear_words (&words);
  return formula;
}
