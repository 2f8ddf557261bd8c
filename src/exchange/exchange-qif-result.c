/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Results of the QIF writer: for each piece one set of measurements, one for each place that is due on it or
 * was read, with the size that counts as the report prints it.
 */

#include <math.h>

#include "exchange-qif-private.h"

#define PASS_VALUE "ACCEPT"
#define FAIL_VALUE "REJECT"

/* One place of one piece. */
typedef struct {
  const TmQifFeature *of;
  const TmPiece *piece;
  guint place;
  guint component;
  guint event; /* id of the nonconformance that it shows; 0: none */
  const TmNonconformance *nonconformance;
  TmJudgement judgement;
} Result;

/* Gauges. */

static guint
find_gauge (const TmQif *qif, const char *tag)
{
  for (guint i = 0; i < qif->job->gauges->len; i++)
    if (g_str_equal (((TmGauge *)g_ptr_array_index (qif->job->gauges, i))->tag, tag))
      return qif->gauge + i;
  return 0;
}

static guint
get_method_gauges (const TmQif *qif, const TmMethod *method, guint *ids, guint most)
{
  guint n = 0;

  for (guint i = 0; i < method->gauges->len && n < most; i++)
    {
      guint id = find_gauge (qif, g_ptr_array_index (method->gauges, i));

      if (id != 0 && (n == 0 || ids[0] != id))
        ids[n++] = id;
    }
  return n;
}

void
tm_qif_devices (TmQif *qif, const char *method_name)
{
  const TmMethod *method = tm_job_find_method (qif->job, method_name);
  guint ids[2];
  guint n = 0;

  if (method != NULL)
    n = get_method_gauges (qif, method, ids, G_N_ELEMENTS (ids));
  else if (find_gauge (qif, method_name) != 0)
    ids[n++] = find_gauge (qif, method_name);
  if (n == 0)
    return;
  tm_qif_open_list (qif, "MeasurementDeviceIds", n);
  for (guint i = 0; i < n; i++)
    tm_qif_number (qif, "Id", ids[i]);
  tm_qif_close (qif);
}

/* Notes of a measurement. */

/* "mouth/12 25.012 (3); mouth/3 25.014": the mean of what was read at each station, and of how many. */
static char *
describe_stations (const TmJudgement *judgement, guint decimals)
{
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < judgement->sizes.n_stations; i++)
    {
      const TmLocalSize *size = &judgement->sizes.stations[i];
      g_autofree char *mean = tm_mean_format (size->sum, size->n, judgement->feature->unit, decimals);

      g_string_append_printf (out, "%s%s%s%s", i > 0 ? "; " : "", size->station,
                              *size->station != '\0' ? " " : "", mean);
      if (size->n > 1)
        g_string_append_printf (out, " (%u)", size->n);
    }
  return g_string_free (out, FALSE);
}

static guint
count_decimals (const char *text)
{
  const char *point = strchr (text, '.');

  return point != NULL ? (guint)strlen (point + 1) : 0;
}

static gboolean
is_number (const TmJudgement *judgement, const char *text)
{
  return *text != '\0' && !tm_kind_is_attribute (judgement->feature->kind);
}

/* The row that was recorded last among those that count. */
static const TmEntryRow *
find_last (const TmJob *job, const Result *result)
{
  const TmFeature *feature = result->of->feature;
  const GPtrArray *lists[] = { tm_job_readings_at (job, result->piece, feature, result->place),
                               tm_job_pin_trials_at (job, result->piece, feature, result->place) };
  const TmEntryRow *last = NULL;

  for (gsize list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; lists[list] != NULL && i < lists[list]->len; i++)
      {
        const TmEntryRow *row = g_ptr_array_index (lists[list], i); /* its first member */

        if (tm_row_counts (row) && (last == NULL || strcmp (row->at, last->at) >= 0))
          last = row;
      }
  return last;
}

static void
put_result_notes (TmQif *qif, const Result *result, const char *text)
{
  const TmJudgement *judgement = &result->judgement;
  const TmEntryRow *last = find_last (qif->job, result);
  gboolean known = judgement->expanded > 0 && isfinite (judgement->coverage);
  g_autofree char *expanded
      = known ? tm_judgement_spread_text (judgement, judgement->expanded) : g_strdup ("");
  char coverage[G_ASCII_DTOSTR_BUF_SIZE] = "";
  g_autofree char *stations
      = is_number (judgement, text) ? describe_stations (judgement, count_decimals (text)) : g_strdup ("");
  TmQifNotes notes;

  if (known)
    g_ascii_formatd (coverage, sizeof coverage, "%.2f", judgement->coverage);
  tm_qif_notes_init (&notes);
  tm_qif_notes_add (&notes, "Verdict",
                    judgement->verdict == TM_VERDICT_TOO_CLOSE ? tm_verdict_word (judgement->verdict) : "");
  tm_qif_notes_add (&notes, "Side", tm_side_word (judgement->side));
  tm_qif_notes_add (&notes, "Reason", tm_why_word (judgement->why));
  tm_qif_notes_add (&notes, "ExpandedUncertainty", expanded);
  tm_qif_notes_add (&notes, "CoverageFactor", coverage);
  tm_qif_notes_add (&notes, "Stations", stations);
  tm_qif_notes_add (&notes, "MeasuredBy", last != NULL ? last->by : "");
  tm_qif_notes_write (qif, &notes);
}

/* The measurement. */

static const char *
get_status (TmVerdict verdict)
{
  switch (verdict)
    {
    case TM_VERDICT_IN:
      return "PASS";
    case TM_VERDICT_OUT:
      return "FAIL";
    case TM_VERDICT_TOO_CLOSE:
      return "INDETERMINATE";
    case TM_VERDICT_NOT_MEASURED:
    case TM_N_VERDICTS:
    default:
      return "NOT_ANALYZED";
    }
}

static void
put_station_value (TmQif *qif, const char *name, const Result *result, guint station, guint decimals)
{
  const TmLocalSize *size = &result->judgement.sizes.stations[station];
  TmUnit unit = result->of->feature->unit;
  g_autofree char *text = tm_mean_format (size->sum, size->n, unit, decimals);

  tm_qif_value (qif, name, text, unit, result->of->type->shape, "");
}

static void
put_sizes (TmQif *qif, const Result *result, const char *text)
{
  const TmJudgement *judgement = &result->judgement;
  TmQifShape shape = result->of->type->shape;
  g_autofree char *uncertainty = tm_judgement_spread_text (judgement, judgement->u);
  gboolean texture = shape == TM_QIF_TEXTURE;

  tm_qif_value (qif, texture ? "RoughnessAverageValue" : "Value", text, result->of->feature->unit, shape,
                judgement->u > 0 ? uncertainty : "");
  if (texture || judgement->sizes.n_stations < 2)
    return;
  put_station_value (qif, "MaxValue", result, judgement->sizes.largest, count_decimals (text));
  put_station_value (qif, "MinValue", result, judgement->sizes.smallest, count_decimals (text));
}

/* What the size of its feature adds to a zone: without it a value beyond the stated tolerance would not be
 * understood to pass. */
static void
put_bonus (TmQif *qif, const Result *result)
{
  const TmFeature *feature = result->of->feature;
  const TmLimits *limits = &result->judgement.limits;
  g_autofree char *text = NULL;

  if (!result->of->type->takes_modifier || !limits->has_upper || limits->upper <= feature->upper.count)
    return;
  text = tm_count_format_exact (limits->upper - feature->upper.count, feature->unit, feature->upper.decimals);
  tm_qif_value (qif, "Bonus", text, feature->unit, TM_QIF_ZONE, "");
}

static void
put_number (TmQif *qif, const Result *result)
{
  g_autofree char *text = tm_judgement_size_text (&result->judgement);
  TmQifShape shape = result->of->type->shape;
  gboolean accepts = shape == TM_QIF_ATTRIBUTE || shape == TM_QIF_THREAD;

  if (is_number (&result->judgement, text) && !accepts)
    {
      put_sizes (qif, result, text);
      put_bonus (qif, result);
    }
  else if (shape == TM_QIF_ATTRIBUTE && g_str_equal (text, tm_outcome_word (TM_OUTCOME_PASS)))
    tm_qif_text (qif, "Value", PASS_VALUE);
  else if (shape == TM_QIF_ATTRIBUTE && g_str_equal (text, tm_outcome_word (TM_OUTCOME_FAIL)))
    tm_qif_text (qif, "Value", FAIL_VALUE);
}

static void
put_event_ids (TmQif *qif, const Result *result)
{
  if (result->nonconformance == NULL)
    return;
  tm_qif_open_list (qif, "NotedEventIds", 1);
  tm_qif_number (qif, "Id", result->event);
  tm_qif_close (qif);
  tm_qif_maybe (qif, "NonConformanceDesignator", result->nonconformance->number);
}

static void
put_measurement (TmQif *qif, const Result *result)
{
  const TmJudgement *judgement = &result->judgement;
  const TmEntryRow *last = find_last (qif->job, result);
  g_autofree char *text = tm_judgement_size_text (judgement);

  tm_qif_open_typed (qif, result->of->type, "CharacteristicMeasurement", qif->next++);
  put_result_notes (qif, result, text);
  tm_qif_open (qif, "Status");
  tm_qif_text (qif, "CharacteristicStatusEnum", get_status (judgement->verdict));
  tm_qif_close (qif);
  tm_qif_number (qif, "CharacteristicItemId", result->of->first_item + result->place - 1);
  if (last != NULL)
    tm_qif_moment (qif, "TimeStamp", last->at);
  tm_qif_number (qif, "ActualComponentId", result->component);
  if (last != NULL)
    tm_qif_devices (qif, judgement->method_name);
  put_event_ids (qif, result);
  put_number (qif, result);
  tm_qif_close (qif);
}

/* What the verdict of one place means for the piece. */
static void
count_verdict (TmQifPiece *piece, TmVerdict verdict, gboolean due)
{
  piece->n_measured += verdict != TM_VERDICT_NOT_MEASURED;
  piece->n_out += verdict == TM_VERDICT_OUT;
  piece->n_due += due;
  piece->n_open += verdict == TM_VERDICT_TOO_CLOSE || (due && verdict == TM_VERDICT_NOT_MEASURED);
}

static void
put_places (TmQif *qif, guint index, guint first_event)
{
  const TmJob *job = qif->job;
  const TmPiece *piece = g_ptr_array_index (job->pieces, index);
  TmQifPiece *state = &g_array_index (qif->pieces, TmQifPiece, index);

  for (guint f = 0; f < qif->features->len; f++)
    {
      const TmQifFeature *of = &g_array_index (qif->features, TmQifFeature, f);
      gboolean due = tm_job_feature_is_due (job, of->feature, piece, index);
      const TmNonconformance *shown = tm_job_nonconformance_of (job, piece, of->feature);
      guint event = first_event;

      for (guint i = 0; shown != NULL && g_ptr_array_index (job->nonconformances, i) != shown; i++)
        event += tm_qif_concerns (g_ptr_array_index (job->nonconformances, i), piece);
      for (guint place = 1; place <= of->feature->places; place++)
        {
          Result result = { of, piece, place, qif->component + index, event, shown, { 0 } };

          if (!tm_qif_is_shown (job, index, of->feature, place))
            continue;
          tm_judge (job, piece, of->feature, place, &result.judgement);
          count_verdict (state, result.judgement.verdict, due);
          put_measurement (qif, &result);
          tm_judgement_clear (&result.judgement);
        }
    }
}

/* Traceability of one piece. */

/* When it was begun and ended, and who measured: left out where several did. */
typedef struct {
  const char *start;
  const char *end;
  const char *by;
  gboolean several;
} Session;

static void
note_row (Session *session, const TmEntryRow *row, const TmPiece *piece)
{
  if (row->piece != piece || !tm_row_stands (row))
    return;
  if (*row->at != '\0' && (session->start == NULL || strcmp (row->at, session->start) < 0))
    session->start = row->at;
  if (*row->at != '\0' && (session->end == NULL || strcmp (row->at, session->end) > 0))
    session->end = row->at;
  if (session->by != NULL && !g_str_equal (session->by, row->by))
    session->several = TRUE;
  session->by = row->by;
}

static void
note_place (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place, Session *session)
{
  const GPtrArray *lists[] = { tm_job_readings_at (job, piece, feature, place),
                               tm_job_pin_trials_at (job, piece, feature, place) };

  for (gsize list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; lists[list] != NULL && i < lists[list]->len; i++)
      note_row (session, g_ptr_array_index (lists[list], i), piece);
}

static void
put_event (TmQif *qif, const TmNonconformance *event, guint number)
{
  const char *const parts[] = { event->number, event->note, event->disposition };
  g_autoptr (GString) text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (*parts[i] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? ": " : "", parts[i]);
  tm_qif_open_id (qif, "NotedEvent", qif->next++);
  tm_qif_text (qif, "Description", text->str);
  tm_qif_number (qif, "SequenceNumber", number);
  tm_qif_close (qif);
}

static void
put_events (TmQif *qif, const TmPiece *piece)
{
  const GPtrArray *all = qif->job->nonconformances;
  guint n = 0;

  for (guint i = 0; i < all->len; i++)
    n += tm_qif_concerns (g_ptr_array_index (all, i), piece);
  if (n == 0)
    return;
  tm_qif_open_list (qif, "NotedEvents", n);
  n = 0;
  for (guint i = 0; i < all->len; i++)
    if (tm_qif_concerns (g_ptr_array_index (all, i), piece))
      put_event (qif, g_ptr_array_index (all, i), ++n);
  tm_qif_close (qif);
}

static void
put_session (TmQif *qif, const TmPiece *piece)
{
  const TmJob *job = qif->job;
  Session session = { 0 };

  for (guint f = 0; f < job->features->len; f++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, f);

      for (guint place = 1; place <= feature->places; place++)
        note_place (job, piece, feature, place, &session);
    }
  tm_qif_open (qif, "InspectionTraceability");
  put_events (qif, piece);
  if (session.start != NULL)
    {
      tm_qif_moment (qif, "InspectionStart", session.start);
      tm_qif_moment (qif, "InspectionEnd", session.end);
    }
  if (session.by != NULL && *session.by != '\0' && !session.several)
    tm_qif_employee (qif, "InspectionOperator", session.by);
  tm_qif_close (qif);
}

/* Pieces. */

/* A piece passes only when nothing that is due on it is open. */
static const char *
get_piece_status (const TmQifPiece *piece)
{
  if (piece->n_out > 0)
    return "FAIL";
  if (piece->n_measured == 0)
    return "NOT_MEASURED";
  return piece->n_open > 0 ? "UNKNOWN" : "PASS";
}

static void
put_piece_status (TmQif *qif, const char *name, guint index)
{
  tm_qif_open (qif, name);
  tm_qif_text (qif, "InspectionStatusEnum",
               get_piece_status (&g_array_index (qif->pieces, TmQifPiece, index)));
  tm_qif_close (qif);
}

static guint
count_places (const TmQif *qif, guint index)
{
  guint n = 0;

  for (guint f = 0; f < qif->features->len; f++)
    {
      const TmFeature *feature = g_array_index (qif->features, TmQifFeature, f).feature;

      for (guint place = 1; place <= feature->places; place++)
        n += tm_qif_is_shown (qif->job, index, feature, place);
    }
  return n;
}

static void
put_measured (TmQif *qif, guint index, guint first_event)
{
  guint n = count_places (qif, index);

  if (n == 0)
    return;
  tm_qif_open (qif, "MeasuredCharacteristics");
  tm_qif_open_list (qif, "CharacteristicMeasurements", n);
  put_places (qif, index, first_event);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

static void
put_piece (TmQif *qif, guint index)
{
  const TmPiece *piece = g_ptr_array_index (qif->job->pieces, index);
  g_autofree char *name = g_strdup_printf ("results %s %s", qif->facts->created, piece->serial);
  g_autofree char *uuid = tm_qif_uuid (qif->job_id, name);
  guint first_event = qif->next;

  tm_qif_open_id (qif, "MeasurementResults", qif->result + index);
  put_session (qif, piece);
  tm_qif_text (qif, "ThisResultsInstanceQPId", uuid);
  put_measured (qif, index, first_event);
  put_piece_status (qif, "InspectionStatus", index);
  tm_qif_open_list (qif, "ActualComponentIds", 1);
  tm_qif_number (qif, "Id", qif->component + index);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

static void
put_components (TmQif *qif)
{
  const GPtrArray *pieces = qif->job->pieces;

  tm_qif_open_list (qif, "ActualComponentSets", 1);
  tm_qif_open_list (qif, "ActualComponentSet", pieces->len);
  for (guint i = 0; i < pieces->len; i++)
    {
      tm_qif_open_id (qif, "ActualComponent", qif->component + i);
      tm_qif_text (qif, "SerialNumber", ((TmPiece *)g_ptr_array_index (pieces, i))->serial);
      put_piece_status (qif, "Status", i);
      tm_qif_close (qif);
    }
  tm_qif_close (qif);
  tm_qif_close (qif);
}

gboolean
tm_qif_results (TmQif *qif, TmExchangeProgress progress, gpointer data)
{
  const GPtrArray *pieces = qif->job->pieces;

  if (pieces->len == 0)
    return TRUE;
  tm_qif_open (qif, "Results");
  tm_qif_open_list (qif, "MeasurementResultsSet", pieces->len);
  for (guint i = 0; i < pieces->len; i++)
    {
      if (progress != NULL && !progress ((double)i / pieces->len, data))
        return FALSE;
      put_piece (qif, i);
    }
  tm_qif_close (qif);
  put_components (qif);
  tm_qif_traceability (qif);
  tm_qif_close (qif);
  return TRUE;
}

/* The first article as a whole. */

static const char *
get_study_status (const TmQif *qif)
{
  gboolean open = FALSE;

  for (guint i = 0; i < qif->pieces->len; i++)
    {
      const TmQifPiece *piece = &g_array_index (qif->pieces, TmQifPiece, i);

      if (!tm_qif_is_first_article (qif->job, i))
        continue;
      if (piece->n_out > 0)
        return "FAIL";
      open = open || piece->n_open > 0 || piece->n_measured == 0;
    }
  return open ? "UNDEFINED" : "PASS";
}

static void
put_study_plan (TmQif *qif)
{
  tm_qif_open_list (qif, "StatisticalStudyPlans", 1);
  tm_qif_open_id (qif, "FirstArticleStudyPlan", qif->study);
  tm_qif_open_list (qif, "CharacteristicItemIds", qif->n_items);
  for (guint f = 0; f < qif->features->len; f++)
    {
      const TmQifFeature *of = &g_array_index (qif->features, TmQifFeature, f);

      for (guint place = 0; place < of->feature->places; place++)
        tm_qif_number (qif, "Id", of->first_item + place);
    }
  tm_qif_close (qif);
  tm_qif_text (qif, "Name", "First article");
  tm_qif_text (qif, "InSpecRatio", "1");
  tm_qif_text (qif, "RelativeMaximum", "0");
  tm_qif_close (qif);
  tm_qif_close (qif);
}

static void
put_study_results (TmQif *qif)
{
  guint n = 0;

  for (guint i = 0; i < qif->pieces->len; i++)
    n += tm_qif_is_first_article (qif->job, i);
  tm_qif_open_list (qif, "StatisticalStudiesResults", 1);
  tm_qif_open_id (qif, "FirstArticleStudyResults", qif->study_result);
  tm_qif_open (qif, "Status");
  tm_qif_text (qif, "StatsEvalStatusEnum", get_study_status (qif));
  tm_qif_close (qif);
  tm_qif_text (qif, "Name", "First article");
  tm_qif_number (qif, "StudyId", qif->study);
  tm_qif_open_list (qif, "ResultsIds", n);
  for (guint i = 0; i < qif->pieces->len; i++)
    if (tm_qif_is_first_article (qif->job, i))
      tm_qif_number (qif, "Id", qif->result + i);
  tm_qif_close (qif);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

void
tm_qif_study (TmQif *qif)
{
  if (qif->pieces->len == 0 || qif->features->len == 0)
    return;
  tm_qif_open (qif, "Statistics");
  put_study_plan (qif);
  put_study_results (qif);
  tm_qif_close (qif);
}
