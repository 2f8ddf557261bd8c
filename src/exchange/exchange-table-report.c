/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The record of a job as one CSV: what counts for each piece, feature and place, and under it each reading,
 * pin trial and cut that was recorded there; then what happened between pieces, and the nonconformances.
 */

#include "exchange-table.h"

#include "core-first-result.h"
#include "core-judge.h"
#include "exchange-csv.h"

#include <glib/gi18n-lib.h>
#include <math.h>

typedef enum {
  ROW,
  PIECE,
  FEATURE,
  NAME,
  CLASS,
  SHEET,
  ZONE,
  PLACE,
  REQUIREMENT,
  UNIT,
  NOMINAL,
  LOWER,
  UPPER,
  RESULT,
  SMALLEST,
  LARGEST,
  DEVIATION,
  VERDICT,
  SIDE,
  EXPANDED,
  METHOD,
  GAUGE,
  DUE,
  NONCONFORMANCE,
  COUNTED,
  BECAUSE,
  CORRECTION,
  OVERDUE,
  FIRST_RESULT,
  FIRST_VERDICT,
  REWORKED,
  TOOLING,
  COMMENT,
  ID,
  STATION,
  VALUE,
  VALUE_UNIT,
  OUTCOME,
  DX,
  DY,
  TYPED,
  PIN,
  PIN_MEASURED,
  PASSES,
  PART_TEMP,
  GAUGE_TEMP,
  BY,
  AT,
  STANDS,
  REASON,
  NOTE,
  PART,
  REVISION,
  ORDER,
  N_COLUMNS
} Column;

static const char *const columns[N_COLUMNS] = {
  [ROW] = N_ ("Row"),
  [PIECE] = N_ ("Piece"),
  [FEATURE] = N_ ("Feature"),
  [NAME] = N_ ("Name"),
  [CLASS] = N_ ("Class"),
  [SHEET] = N_ ("Sheet"),
  [ZONE] = N_ ("Zone"),
  [PLACE] = N_ ("Place"),
  [REQUIREMENT] = N_ ("Requirement"),
  [UNIT] = N_ ("Unit"),
  [NOMINAL] = N_ ("Nominal"),
  [LOWER] = N_ ("Lower"),
  [UPPER] = N_ ("Upper"),
  [RESULT] = N_ ("Result"),
  [SMALLEST] = N_ ("Smallest"),
  [LARGEST] = N_ ("Largest"),
  [DEVIATION] = N_ ("Deviation"),
  [VERDICT] = N_ ("Verdict"),
  [SIDE] = N_ ("Side"),
  [EXPANDED] = N_ ("Expanded uncertainty"),
  [METHOD] = N_ ("Method"),
  [GAUGE] = N_ ("Gauge"),
  [DUE] = N_ ("Calibration due"),
  [NONCONFORMANCE] = N_ ("Nonconformance"),
  [COUNTED] = N_ ("What counts"),
  [BECAUSE] = N_ ("Because"),
  [CORRECTION] = N_ ("Correction"),
  [OVERDUE] = N_ ("Overdue gauge used because"),
  [FIRST_RESULT] = N_ ("First result"),
  [FIRST_VERDICT] = N_ ("First verdict"),
  [REWORKED] = N_ ("Reworked at (UTC)"),
  [TOOLING] = N_ ("Qualified tooling"),
  [COMMENT] = N_ ("Comment"),
  [ID] = N_ ("Number in the record"),
  [STATION] = N_ ("Station"),
  [VALUE] = N_ ("Value"),
  [VALUE_UNIT] = N_ ("Unit of the value"),
  [OUTCOME] = N_ ("Outcome"),
  [DX] = N_ ("X offset"),
  [DY] = N_ ("Y offset"),
  [TYPED] = N_ ("As typed"),
  [PIN] = N_ ("Pin class and sign"),
  [PIN_MEASURED] = N_ ("Pin as measured"),
  [PASSES] = N_ ("Spring passes"),
  [PART_TEMP] = N_ ("Part temperature, °C"),
  [GAUGE_TEMP] = N_ ("Gauge temperature, °C"),
  [BY] = N_ ("By"),
  [AT] = N_ ("At (UTC)"),
  [STANDS] = N_ ("Stands"),
  [REASON] = N_ ("Reason"),
  [NOTE] = N_ ("Note"),
  [PART] = N_ ("Part number"),
  [REVISION] = N_ ("Revision"),
  [ORDER] = N_ ("Order"),
};

/* What a row is, in the first column. */
typedef enum { IS_RESULT, IS_READING, IS_TRIAL, IS_CUT, IS_EVENT, IS_PIECE, IS_NONCONFORMANCE } RowKind;

static const char *const row_words[] = {
  NC_ ("row", "result"), NC_ ("row", "reading"), NC_ ("row", "pin trial"),      NC_ ("row", "cut"),
  NC_ ("row", "event"),  NC_ ("row", "piece"),   NC_ ("row", "nonconformance"),
};

/* One row while its cells are filled in, in any order; what is not set is empty. */
typedef struct {
  char *cells[N_COLUMNS];
  gboolean is_number[N_COLUMNS];
} Cells;

static void
set_text (Cells *cells, Column column, const char *text)
{
  g_free (cells->cells[column]);
  cells->cells[column] = g_strdup (text);
  cells->is_number[column] = FALSE;
}

static void
set_number (Cells *cells, Column column, const char *number)
{
  set_text (cells, column, number);
  cells->is_number[column] = TRUE;
}

static const char *
translate (const char *context, const char *word)
{
  return *word != '\0' ? g_dpgettext2 (GETTEXT_PACKAGE, context, word) : "";
}

static void
start_row (Cells *cells, const TmJob *job, RowKind kind)
{
  memset (cells, 0, sizeof *cells);
  set_text (cells, ROW, translate ("row", row_words[kind]));
  set_text (cells, PART, job->part_number);
  set_text (cells, REVISION, job->revision);
  set_text (cells, ORDER, job->order);
}

/* Writes the row, and frees its cells. */
static void
end_row (GString *out, Cells *cells)
{
  for (Column column = 0; column < N_COLUMNS; column++)
    {
      const char *cell = cells->cells[column] != NULL ? cells->cells[column] : "";

      if (cells->is_number[column])
        tm_csv_put_number (out, cell);
      else
        tm_csv_put_text (out, cell);
      g_free (cells->cells[column]);
    }
  tm_csv_end_line (out);
}

static void
put_headings (GString *out)
{
  for (Column column = 0; column < N_COLUMNS; column++)
    tm_csv_put_text (out, _ (columns[column]));
  tm_csv_end_line (out);
}

/* What is asked for. */

static void
set_limit (Cells *cells, Column column, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = NULL;

  if (!quantity->given)
    return;
  text = quantity->unit == unit ? tm_quantity_format (quantity)
                                : tm_count_format_exact (quantity->count, unit, 0);
  set_number (cells, column, text);
}

static void
set_requirement (Cells *cells, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_autofree char *number = g_strdup_printf ("%u", place);

  set_text (cells, PIECE, piece->serial);
  set_text (cells, FEATURE, feature->balloon);
  set_text (cells, NAME, feature->name);
  set_text (cells, CLASS, feature->designator);
  set_text (cells, SHEET, feature->sheet);
  set_text (cells, ZONE, feature->zone);
  set_number (cells, PLACE, number);
  set_text (cells, REQUIREMENT, feature->requirement);
  set_text (cells, UNIT, tm_unit_word (feature->unit));
  set_limit (cells, NOMINAL, &feature->nominal, feature->unit);
  set_limit (cells, LOWER, &feature->lower, feature->unit);
  set_limit (cells, UPPER, &feature->upper, feature->unit);
}

/* What counts. */

/* The number of digits after the point of @text. */
static guint
count_decimals (const char *text)
{
  const char *point = strchr (text, '.');

  return point != NULL ? (guint)strlen (point + 1) : 0;
}

static void
set_station (Cells *cells, Column column, const TmJudgement *judgement, guint station, guint decimals)
{
  const TmLocalSize *size = &judgement->sizes.stations[station];
  g_autofree char *text = tm_mean_format (size->sum, size->n, judgement->feature->unit, decimals);

  set_number (cells, column, text);
}

/* The deviation of the printed result from nominal. */
static void
set_deviation (Cells *cells, const TmJudgement *judgement, const char *result)
{
  const TmFeature *feature = judgement->feature;
  TmQuantity printed = TM_QUANTITY_NONE;
  g_autofree char *text = NULL;

  if (!feature->nominal.given || tm_quantity_read (result, feature->unit, &printed) != TM_READ_OK)
    return;
  text = tm_count_format_exact (printed.count - feature->nominal.count, feature->unit, printed.decimals);
  set_number (cells, DEVIATION, text);
}

static void
set_result (Cells *cells, const TmJudgement *judgement)
{
  g_autofree char *result = tm_judgement_size_text (judgement);
  guint decimals = count_decimals (result);

  if (judgement->sizes.n_stations == 0 || tm_kind_is_attribute (judgement->feature->kind))
    {
      set_text (cells, RESULT, result);
      return;
    }
  set_number (cells, RESULT, result);
  set_station (cells, SMALLEST, judgement, judgement->sizes.smallest, decimals);
  set_station (cells, LARGEST, judgement, judgement->sizes.largest, decimals);
  set_deviation (cells, judgement, result);
}

static void
set_method (Cells *cells, const TmJudgement *judgement)
{
  g_autofree char *spread
      = judgement->expanded > 0 ? tm_judgement_spread_text (judgement, judgement->expanded) : g_strdup ("");

  set_number (cells, EXPANDED, spread);
  set_text (cells, METHOD, judgement->method_name);
  set_text (cells, GAUGE, judgement->gauge != NULL ? judgement->gauge->tag : "");
  set_text (cells, DUE, judgement->gauge != NULL ? judgement->gauge->due : "");
}

/* What was added to the mean of the deciding station before it was judged. */
static void
set_correction (Cells *cells, const TmJudgement *judgement)
{
  g_autofree char *text = NULL;

  if (judgement->sizes.n_stations == 0 || judgement->correction == 0)
    return;
  text
      = tm_count_format (llround (judgement->correction), judgement->feature->unit,
                         MIN (judgement->sizes.stations[judgement->deciding].decimals + 1u, TM_MAX_DECIMALS));
  set_number (cells, CORRECTION, text);
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

/* What the verdict rests on. */
static void
set_basis (Cells *cells, const TmJob *job, const TmJudgement *judgement)
{
  const gboolean measured = (judgement->sizes.n_stations > 0 || judgement->counted == TM_COUNTED_PINS)
                            && !tm_kind_is_attribute (judgement->feature->kind);

  set_text (cells, COUNTED, measured ? translate ("counted", tm_counted_word (judgement->counted)) : "");
  set_text (cells, BECAUSE, translate ("why", tm_why_word (judgement->why)));
  set_correction (cells, judgement);
  set_text (cells, OVERDUE, find_overdue_reason (job, judgement));
}

/* What it was before its last rework. */
static void
set_first_result (Cells *cells, const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_auto (TmFirstResult) first = { 0 };
  g_autofree char *size = NULL;

  if (!tm_first_result (job, piece, feature, place, &first))
    return;
  size = tm_judgement_size_text (&first.judgement);
  if (tm_kind_is_attribute (feature->kind) || first.judgement.sizes.n_stations == 0)
    set_text (cells, FIRST_RESULT, size);
  else
    set_number (cells, FIRST_RESULT, size);
  set_text (cells, FIRST_VERDICT, translate ("verdict", tm_verdict_word (first.judgement.verdict)));
  set_text (cells, REWORKED, first.rework->rework_at);
}

static void
put_result_row (GString *out, const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const TmNonconformance *nonconformance = tm_job_nonconformance_at (job, piece, feature, place);
  g_auto (TmJudgement) judgement = { 0 };
  Cells cells;

  tm_judge (job, piece, feature, place, &judgement);
  start_row (&cells, job, IS_RESULT);
  set_requirement (&cells, piece, feature, place);
  set_result (&cells, &judgement);
  set_text (&cells, VERDICT, translate ("verdict", tm_verdict_word (judgement.verdict)));
  set_text (&cells, SIDE,
            judgement.side != TM_SIDE_NONE ? translate ("side", tm_side_word (judgement.side)) : "");
  set_method (&cells, &judgement);
  set_text (&cells, NONCONFORMANCE, nonconformance != NULL ? nonconformance->number : "");
  set_basis (&cells, job, &judgement);
  set_first_result (&cells, job, piece, feature, place);
  set_text (&cells, TOOLING, feature->tooling);
  set_text (&cells, COMMENT, feature->comment);
  end_row (out, &cells);
}

/* What was recorded, as it was recorded. */

/* A number of @unit; one of another unit is a text that names it. */
static void
set_value (Cells *cells, Column column, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = NULL;

  if (!quantity->given)
    return;
  text = tm_quantity_format_in (quantity, unit);
  if ((TmUnit)quantity->unit == unit)
    set_number (cells, column, text);
  else
    set_text (cells, column, text);
}

/* The value itself, and the unit that the others of its row are in unless they say another. */
static TmUnit
set_main (Cells *cells, const TmQuantity *quantity)
{
  TmUnit unit = (TmUnit)quantity->unit;

  if (!quantity->given)
    return TM_UNIT_NONE;
  set_value (cells, VALUE, quantity, unit);
  set_text (cells, VALUE_UNIT, tm_unit_word (unit));
  return unit;
}

/* A row that does not stand says what became of it. */
static void
set_standing (Cells *cells, const TmEntryRow *row)
{
  const char *stands = tm_row_counts (row) ? NC_ ("row", "yes") : NC_ ("row", "before a cut");

  if (row->before_rework)
    stands = NC_ ("row", "before a rework");
  if (row->replaced_by != NULL)
    stands = NC_ ("row", "corrected");
  if (row->withdrawn != NULL)
    stands = NC_ ("row", "withdrawn");
  set_text (cells, STANDS, translate ("row", stands));
  set_text (cells, REASON, row->withdrawn != NULL ? row->withdrawn->reason : row->reason);
}

static void
start_entry (Cells *cells, const TmJob *job, RowKind kind, const TmEntryRow *row, guint place)
{
  start_row (cells, job, kind);
  set_requirement (cells, row->piece, row->feature, place);
  set_text (cells, ID, row->id);
  set_text (cells, BY, row->by);
  set_text (cells, AT, row->at);
  set_standing (cells, row);
}

static void
put_reading (GString *out, const TmJob *job, const TmReading *reading)
{
  Cells cells;
  TmUnit unit;

  start_entry (&cells, job, IS_READING, &reading->row, reading->place);
  set_text (&cells, STATION, reading->station);
  unit = set_main (&cells, &reading->value);
  if (unit == TM_UNIT_NONE && reading->dx.given)
    set_text (&cells, VALUE_UNIT, tm_unit_word (unit = (TmUnit)reading->dx.unit));
  set_value (&cells, DX, &reading->dx, unit);
  set_value (&cells, DY, &reading->dy, unit);
  set_text (&cells, OUTCOME, tm_outcome_word (reading->outcome));
  set_text (&cells, TYPED, reading->typed);
  set_text (&cells, METHOD, *reading->method != '\0' ? reading->method : reading->row.feature->method);
  set_value (&cells, PART_TEMP, &reading->part_temp, TM_UNIT_CELSIUS);
  set_value (&cells, GAUGE_TEMP, &reading->gauge_temp, TM_UNIT_CELSIUS);
  set_text (&cells, OVERDUE, reading->overdue_reason);
  end_row (out, &cells);
}

static void
put_trial (GString *out, const TmJob *job, const TmPinTrial *trial)
{
  g_autofree char *pin = g_strdup_printf ("%s %s", trial->pin_class, tm_pin_sign_word (trial->sign));
  Cells cells;

  start_entry (&cells, job, IS_TRIAL, &trial->row, trial->place);
  set_value (&cells, PIN_MEASURED, &trial->measured, set_main (&cells, &trial->size));
  set_text (&cells, OUTCOME,
            trial->went ? translate ("row", NC_ ("row", "went"))
                        : translate ("row", NC_ ("row", "did not go")));
  set_text (&cells, PIN, g_strstrip (pin));
  set_text (&cells, GAUGE, trial->gauge);
  set_text (&cells, OVERDUE, trial->overdue_reason);
  end_row (out, &cells);
}

static void
put_cut (GString *out, const TmJob *job, const TmCutRow *cut)
{
  g_autofree char *passes = g_strdup_printf ("%u", cut->passes);
  Cells cells;

  start_entry (&cells, job, IS_CUT, &cut->row, cut->place);
  set_main (&cells, &cut->dialled);
  set_number (&cells, PASSES, passes);
  set_text (&cells, OUTCOME, tm_reads_word (cut->reads));
  set_text (&cells, GAUGE, cut->tool);
  set_text (&cells, NOTE, cut->note);
  end_row (out, &cells);
}

static void
put_records (GString *out, const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);
  const GPtrArray *trials = tm_job_pin_trials_at (job, piece, feature, place);
  const GPtrArray *cuts = tm_job_cuts_at (job, piece, feature, place);

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    put_reading (out, job, g_ptr_array_index (readings, i));
  for (guint i = 0; trials != NULL && i < trials->len; i++)
    put_trial (out, job, g_ptr_array_index (trials, i));
  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    put_cut (out, job, g_ptr_array_index (cuts, i));
}

/* What happened besides. */

static void
put_event (GString *out, const TmJob *job, const TmEvent *event)
{
  Cells cells;

  start_row (&cells, job, IS_EVENT);
  set_text (&cells, PIECE, event->before_piece);
  set_text (&cells, FEATURE, event->feature);
  set_text (&cells, OUTCOME, event->kind);
  set_text (&cells, VALUE, event->amount);
  set_text (&cells, GAUGE, event->tool);
  set_text (&cells, BY, event->by);
  set_text (&cells, AT, event->at);
  set_text (&cells, NOTE, event->note);
  end_row (out, &cells);
}

/* What was decided on a piece that was held back. */
static void
put_disposition (GString *out, const TmJob *job, const TmPiece *piece)
{
  Cells cells;

  if (*piece->disposition == '\0')
    return;
  start_row (&cells, job, IS_PIECE);
  set_text (&cells, PIECE, piece->serial);
  set_text (&cells, OUTCOME, piece->disposition);
  set_text (&cells, NOTE, piece->disposition_note);
  end_row (out, &cells);
}

static void
put_nonconformance (GString *out, const TmJob *job, const TmNonconformance *one)
{
  Cells cells;

  start_row (&cells, job, IS_NONCONFORMANCE);
  set_text (&cells, PIECE, one->piece);
  set_text (&cells, FEATURE, one->feature);
  set_text (&cells, NONCONFORMANCE, one->number);
  set_text (&cells, OUTCOME, one->disposition);
  set_text (&cells, NOTE, one->note);
  end_row (out, &cells);
}

/* A feature that this piece need not show has no row, unless it was read all the same. */
static gboolean
is_shown (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint index, guint place)
{
  return tm_job_feature_is_due (job, feature, piece, index)
         || tm_job_readings_at (job, piece, feature, place) != NULL
         || tm_job_pin_trials_at (job, piece, feature, place) != NULL
         || tm_job_cuts_at (job, piece, feature, place) != NULL;
}

static void
put_piece (GString *out, const TmJob *job, guint index)
{
  const TmPiece *piece = g_ptr_array_index (job->pieces, index);

  for (guint f = 0; f < job->features->len; f++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, f);

      for (guint place = 1; place <= feature->places; place++)
        {
          if (!is_shown (job, piece, feature, index, place))
            continue;
          put_result_row (out, job, piece, feature, place);
          put_records (out, job, piece, feature, place);
        }
    }
}

GString *
tm_table_report (const TmJob *job)
{
  GString *out = g_string_new (NULL);

  tm_csv_begin (out);
  put_headings (out);
  for (guint i = 0; i < job->pieces->len; i++)
    put_piece (out, job, i);
  for (guint i = 0; i < job->events->len; i++)
    put_event (out, job, g_ptr_array_index (job->events, i));
  for (guint i = 0; i < job->pieces->len; i++)
    put_disposition (out, job, g_ptr_array_index (job->pieces, i));
  for (guint i = 0; i < job->nonconformances->len; i++)
    put_nonconformance (out, job, g_ptr_array_index (job->nonconformances, i));
  return out;
}
