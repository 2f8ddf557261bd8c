/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first-article table as CSV: one line per piece, feature and place.
 */

#include "exchange-table.h"

#include "core-judge.h"
#include "exchange-csv.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *const columns[] = {
  N_ ("Piece"),
  N_ ("Feature"),
  N_ ("Name"),
  N_ ("Class"),
  N_ ("Sheet"),
  N_ ("Zone"),
  N_ ("Place"),
  N_ ("Requirement"),
  N_ ("Unit"),
  N_ ("Nominal"),
  N_ ("Lower"),
  N_ ("Upper"),
  N_ ("Result"),
  N_ ("Smallest"),
  N_ ("Largest"),
  N_ ("Deviation"),
  N_ ("Verdict"),
  N_ ("Side"),
  N_ ("Expanded uncertainty"),
  N_ ("Method"),
  N_ ("Gauge"),
  N_ ("Calibration due"),
  N_ ("Nonconformance"),
  N_ ("What counts"),
  N_ ("Because"),
  N_ ("Correction"),
  N_ ("Overdue gauge used because"),
};

static void
put_headings (GString *out)
{
  for (gsize i = 0; i < G_N_ELEMENTS (columns); i++)
    tm_csv_put_text (out, _ (columns[i]));
  tm_csv_end_line (out);
}

static void
put_quantity (GString *out, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = NULL;

  if (quantity->given)
    text = quantity->unit == unit ? tm_quantity_format (quantity)
                                  : tm_count_format_exact (quantity->count, unit, 0);
  tm_csv_put_number (out, text != NULL ? text : "");
}

/* The number of digits after the point of @text. */
static guint
count_decimals (const char *text)
{
  const char *point = strchr (text, '.');

  return point != NULL ? (guint)strlen (point + 1) : 0;
}

static void
put_station (GString *out, const TmJudgement *judgement, guint station, guint decimals)
{
  const TmLocalSize *size = &judgement->sizes.stations[station];
  g_autofree char *text = tm_mean_format (size->sum, size->n, judgement->feature->unit, decimals);

  tm_csv_put_number (out, text);
}

/* The deviation of the printed result from nominal. */
static void
put_deviation (GString *out, const TmJudgement *judgement, const char *result)
{
  const TmFeature *feature = judgement->feature;
  TmQuantity printed = TM_QUANTITY_NONE;
  g_autofree char *text = NULL;

  if (feature->nominal.given && tm_quantity_read (result, feature->unit, &printed) == TM_READ_OK)
    text = tm_count_format_exact (printed.count - feature->nominal.count, feature->unit, printed.decimals);
  tm_csv_put_number (out, text != NULL ? text : "");
}

static void
put_result (GString *out, const TmJudgement *judgement)
{
  g_autofree char *result = tm_judgement_size_text (judgement);
  guint decimals = count_decimals (result);
  gboolean numeric = judgement->sizes.n_stations > 0 && !tm_kind_is_attribute (judgement->feature->kind);

  if (!numeric)
    {
      tm_csv_put_text (out, result);
      for (guint i = 0; i < 3; i++)
        tm_csv_put_number (out, "");
      return;
    }
  tm_csv_put_number (out, result);
  put_station (out, judgement, judgement->sizes.smallest, decimals);
  put_station (out, judgement, judgement->sizes.largest, decimals);
  put_deviation (out, judgement, result);
}

static const char *
translate_verdict (TmVerdict verdict)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (verdict));
}

static const char *
translate_side (TmSide side)
{
  return side != TM_SIDE_NONE ? g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (side)) : "";
}

static void
put_method (GString *out, const TmJudgement *judgement)
{
  g_autofree char *spread
      = judgement->expanded > 0 ? tm_judgement_spread_text (judgement, judgement->expanded) : g_strdup ("");

  tm_csv_put_number (out, spread);
  tm_csv_put_text (out, judgement->method_name);
  tm_csv_put_text (out, judgement->gauge != NULL ? judgement->gauge->tag : "");
  tm_csv_put_text (out, judgement->gauge != NULL ? judgement->gauge->due : "");
}

/* What was added to the mean of the deciding station before it was judged. */
static void
put_correction (GString *out, const TmJudgement *judgement)
{
  g_autofree char *text = NULL;

  if (judgement->sizes.n_stations > 0 && judgement->correction != 0)
    text = tm_count_format (
        llround (judgement->correction), judgement->feature->unit,
        MIN (judgement->sizes.stations[judgement->deciding].decimals + 1u, TM_MAX_DECIMALS));
  tm_csv_put_number (out, text != NULL ? text : "");
}

/* Why a reading or a trial of the place was taken with an overdue gauge: the last reason stated. */
static const char *
find_overdue_reason (const TmJob *job, const TmJudgement *judgement)
{
  const GPtrArray *readings
      = tm_job_readings_at (job, judgement->piece, judgement->feature, judgement->place);
  const GPtrArray *trials
      = tm_job_pin_trials_at (job, judgement->piece, judgement->feature, judgement->place);
  const char *reason = "";

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);
      if (tm_row_counts (&reading->row) && *reading->overdue_reason != '\0')
        reason = reading->overdue_reason;
    }
  for (guint i = 0; trials != NULL && i < trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (trials, i);
      if (tm_row_counts (&trial->row) && *trial->overdue_reason != '\0')
        reason = trial->overdue_reason;
    }
  return reason;
}

static const char *
translate (const char *context, const char *word)
{
  return *word != '\0' ? g_dpgettext2 (GETTEXT_PACKAGE, context, word) : "";
}

/* What the verdict rests on. */
static void
put_basis (GString *out, const TmJob *job, const TmJudgement *judgement)
{
  const gboolean measured = (judgement->sizes.n_stations > 0 || judgement->counted == TM_COUNTED_PINS)
                            && !tm_kind_is_attribute (judgement->feature->kind);

  tm_csv_put_text (out, measured ? translate ("counted", tm_counted_word (judgement->counted)) : "");
  tm_csv_put_text (out, translate ("why", tm_why_word (judgement->why)));
  put_correction (out, judgement);
  tm_csv_put_text (out, find_overdue_reason (job, judgement));
}

static void
put_requirement (GString *out, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_autofree char *number = g_strdup_printf ("%u", place);

  tm_csv_put_text (out, piece->serial);
  tm_csv_put_text (out, feature->balloon);
  tm_csv_put_text (out, feature->name);
  tm_csv_put_text (out, feature->designator);
  tm_csv_put_text (out, feature->sheet);
  tm_csv_put_text (out, feature->zone);
  tm_csv_put_number (out, number);
  tm_csv_put_text (out, feature->requirement);
  tm_csv_put_text (out, tm_unit_word (feature->unit));
  put_quantity (out, &feature->nominal, feature->unit);
  put_quantity (out, &feature->lower, feature->unit);
  put_quantity (out, &feature->upper, feature->unit);
}

static void
put_line (GString *out, const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const TmNonconformance *nonconformance = tm_job_nonconformance_of (job, piece, feature);
  g_auto (TmJudgement) judgement = { 0 };

  tm_judge (job, piece, feature, place, &judgement);
  put_requirement (out, piece, feature, place);
  put_result (out, &judgement);
  tm_csv_put_text (out, translate_verdict (judgement.verdict));
  tm_csv_put_text (out, translate_side (judgement.side));
  put_method (out, &judgement);
  tm_csv_put_text (out, nonconformance != NULL ? nonconformance->number : "");
  put_basis (out, job, &judgement);
  tm_csv_end_line (out);
}

/* A feature that this piece need not show has no line, unless it was read all the same. */
static gboolean
is_shown (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint index, guint place)
{
  return tm_job_feature_is_due (job, feature, piece, index)
         || tm_job_readings_at (job, piece, feature, place) != NULL
         || tm_job_pin_trials_at (job, piece, feature, place) != NULL;
}

GString *
tm_table_report (const TmJob *job)
{
  GString *out = g_string_new (NULL);

  put_headings (out);
  for (guint p = 0; p < job->pieces->len; p++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, p);

      for (guint f = 0; f < job->features->len; f++)
        {
          const TmFeature *feature = g_ptr_array_index (job->features, f);

          for (guint place = 1; place <= feature->places; place++)
            {
              if (is_shown (job, piece, feature, p, place))
                put_line (out, job, piece, feature, place);
            }
        }
    }
  return out;
}
