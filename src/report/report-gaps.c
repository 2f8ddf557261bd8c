/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-gaps.h"

#include "core-combine.h"
#include "core-gauge.h"
#include "core-method.h"

#include <string.h>

#define DATE_LENGTH 10 /* YYYY-MM-DD */

static void
add_gap (TmReportContent *content, TmGapKind kind, const TmReportLine *line, const char *station,
         const char *field)
{
  TmGap *gap = g_new0 (TmGap, 1);

  gap->kind = kind;
  gap->piece = line != NULL ? line->piece : NULL;
  gap->feature = line != NULL ? line->feature : NULL;
  gap->place = line != NULL ? line->place : 0;
  gap->station = station;
  gap->field = field;
  g_ptr_array_add (content->gaps, gap);
}

static gboolean
is_blank (const char *text)
{
  for (; *text != '\0'; text++)
    if (!g_ascii_isspace (*text))
      return FALSE;
  return TRUE;
}

static void
find_fact_gaps (TmReportContent *content)
{
  const TmJob *job = content->job;
  const struct {
    const char *name;
    const char *value;
  } facts[] = {
    { "part_number", job->part_number },
    { "part_name", job->part_name },
    { "revision", job->revision },
    { "drawing", job->drawing },
    { "customer", job->customer },
    { "order", job->order },
    { "report_identifier", job->report_identifier },
    { "organisation", job->organisation },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    if (is_blank (facts[i].value))
      add_gap (content, TM_GAP_FACT_MISSING, NULL, "", facts[i].name);
}

/* -------- What the report says besides sizes -------- */

static void
add_row_gap (TmReportContent *content, TmGapKind kind, guint row, const char *name)
{
  add_gap (content, kind, NULL, "", name);
  ((TmGap *)g_ptr_array_index (content->gaps, content->gaps->len - 1))->row = row;
}

static void
find_supply_gaps (TmReportContent *content)
{
  const GPtrArray *supplies = content->job->supplies;
  gboolean has_material = FALSE;

  for (guint i = 0; i < supplies->len; i++)
    {
      const TmSupply *supply = g_ptr_array_index (supplies, i);

      has_material |= supply->kind == TM_SUPPLY_MATERIAL;
      if (is_blank (supply->certificate))
        add_row_gap (content, TM_GAP_SUPPLY_PROOF, i, supply->name);
      if (supply->kind == TM_SUPPLY_PROCESS && supply->approval != TM_APPROVAL_YES
          && supply->approval != TM_APPROVAL_NOT_ASKED)
        add_row_gap (content, TM_GAP_SUPPLY_APPROVAL, i, supply->name);
    }
  /* Those of an assembly stand in the reports of its parts. */
  if (!has_material && content->job->article == TM_ARTICLE_DETAIL)
    add_gap (content, TM_GAP_NO_MATERIAL, NULL, "", "");
}

static void
find_sub_part_gaps (TmReportContent *content)
{
  const TmJob *job = content->job;

  if (job->article != TM_ARTICLE_ASSEMBLY)
    return;
  if (job->sub_parts->len == 0)
    add_gap (content, TM_GAP_NO_SUB_PARTS, NULL, "", "");
  for (guint i = 0; i < job->sub_parts->len; i++)
    {
      const TmSubPart *part = g_ptr_array_index (job->sub_parts, i);

      if (is_blank (part->report))
        add_row_gap (content, TM_GAP_SUB_PART_REPORT, i, *part->number != '\0' ? part->number : part->name);
    }
}

/* -------- Drawings and balloons -------- */

/* Which places of a feature have a balloon. */
typedef struct {
  gboolean all;
  GHashTable *places; /* guint; NULL: none by itself */
} Marked;

static void
free_marked_cb (gpointer data)
{
  Marked *marked = data;

  g_clear_pointer (&marked->places, g_hash_table_unref);
  g_free (marked);
}

/* By balloon: many features with many marks are looked through once. */
static GHashTable *
collect_marks (const TmJob *job)
{
  GHashTable *all = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, free_marked_cb);

  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      const TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);
      Marked *marked = g_hash_table_lookup (all, mark->feature);

      if (marked == NULL)
        {
          marked = g_new0 (Marked, 1);
          marked->places = g_hash_table_new (NULL, NULL);
          g_hash_table_insert (all, (gpointer)mark->feature, marked);
        }
      marked->all |= mark->place == 0;
      g_hash_table_add (marked->places, GUINT_TO_POINTER (mark->place));
    }
  return all;
}

/* The first place without a balloon, 0 where none has one; FALSE: nothing is missing. */
static gboolean
find_unmarked (const TmFeature *feature, const Marked *marked, guint *place)
{
  *place = 0;
  if (marked == NULL)
    return TRUE;
  for (guint i = 1; i <= feature->places && !marked->all; i++)
    if (!g_hash_table_contains (marked->places, GUINT_TO_POINTER (i)))
      {
        *place = i;
        return TRUE;
      }
  return FALSE;
}

static void
find_drawing_gaps (TmReportContent *content)
{
  const TmJob *job = content->job;
  g_autoptr (GHashTable) marks = collect_marks (job);

  if (job->drawings->len == 0)
    {
      add_gap (content, TM_GAP_NO_DRAWING, NULL, "", "");
      return;
    }
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      TmReportLine line = { .feature = feature };

      if (tm_job_feature_is_asked (job, feature)
          && find_unmarked (feature, g_hash_table_lookup (marks, feature->balloon), &line.place))
        add_gap (content, TM_GAP_NO_BALLOON, &line, "", "");
    }
}

static void
find_job_gaps (TmReportContent *content)
{
  const TmJob *job = content->job;

  if (job->features->len == 0)
    add_gap (content, TM_GAP_NO_FEATURES, NULL, "", "");
  if (!tm_job_has_first_article (job))
    add_gap (content, TM_GAP_NO_PIECE, NULL, "", "");
  find_fact_gaps (content);
  if (!is_blank (job->drawing_revision) && !g_str_equal (job->drawing_revision, job->revision))
    add_gap (content, TM_GAP_DRAWING_REVISION, NULL, "", "drawing_revision");
  find_drawing_gaps (content);
  find_supply_gaps (content);
  find_sub_part_gaps (content);
  if (job->first_article != TM_FIRST_ARTICLE_PARTIAL)
    return;
  if (is_blank (job->first_article_reason))
    add_gap (content, TM_GAP_PARTIAL_REASON, NULL, "", "reason");
  if (is_blank (job->first_article_baseline))
    add_gap (content, TM_GAP_PARTIAL_REASON, NULL, "", "baseline");
}

static void
find_station_gaps (TmReportContent *content, const TmReportLine *line)
{
  const TmFeature *feature = line->feature;

  for (guint i = 0; i < feature->stations->len; i++)
    {
      const char *station = g_ptr_array_index (feature->stations, i);

      if (!tm_sizes_has_station (feature, &line->judgement.sizes, station))
        add_gap (content, TM_GAP_STATION_MISSING, line, station, "");
    }
}

static void
find_method_gap (TmReportContent *content, const TmReportLine *line)
{
  const TmSizes *sizes = &line->judgement.sizes;

  if (tm_kind_is_attribute (line->feature->kind))
    return;
  for (guint i = 0; i < sizes->n_stations; i++)
    {
      const char *name = sizes->stations[i].method_name;
      if (tm_job_find_method (content->job, name) != NULL || tm_job_find_gauge (content->job, name) != NULL)
        continue;
      /* Whatever it is called, and at whichever station: one thing mends it. */
      add_gap (content, TM_GAP_NO_METHOD, line, "", "");
      return;
    }
}

static gboolean
do_pins_contradict (const TmReportContent *content, const TmReportLine *line)
{
  g_auto (TmPinEvidence) evidence = { 0 };

  return tm_job_pin_trials_at (content->job, line->piece, line->feature, line->place) != NULL
         && tm_pin_evidence (content->job, line->piece, line->feature, line->place, TRUE, &evidence)
         && evidence.result.contradiction;
}

static gboolean
do_methods_disagree (const TmReportContent *content, const TmReportLine *line)
{
  const TmSizes *sizes = &line->judgement.sizes;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      g_auto (TmCombined) combined = { 0 };

      if (!sizes->stations[i].several_methods)
        continue;
      tm_combine (content->job, line->piece, line->feature, line->place, sizes->stations[i].station,
                  &combined);
      if (combined.disagree)
        return TRUE;
    }
  return FALSE;
}

static void
find_evidence_gaps (TmReportContent *content, const TmReportLine *line)
{
  if (tm_kind_is_attribute (line->feature->kind))
    return;
  if (line->judgement.why == TM_WHY_PINS_CONTRADICT || do_pins_contradict (content, line))
    add_gap (content, TM_GAP_PINS_CONTRADICT, line, "", "");
  if (line->judgement.why == TM_WHY_METHODS_DISAGREE || do_methods_disagree (content, line))
    add_gap (content, TM_GAP_METHODS_DISAGREE, line, "", "");
}

/* Whether the place was read, and then cut. */
static gboolean
was_cut_since (const TmJob *job, const TmReportLine *line)
{
  const GPtrArray *readings = tm_job_readings_at (job, line->piece, line->feature, line->place);

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);

      if (tm_row_stands (&reading->row) && reading->row.before_cut)
        return TRUE;
    }
  return FALSE;
}

/* Why a place that was measured is not any more. */
static const char *
find_since (const TmJob *job, const TmReportLine *line)
{
  if (line->first != NULL)
    return "rework";
  return was_cut_since (job, line) ? "cut" : "";
}

/* A pass that nobody can trace to what it was checked with; a note is read, not gauged. */
static void
find_tooling_gap (TmReportContent *content, const TmReportLine *line)
{
  if (tm_kind_is_attribute (line->feature->kind) && line->feature->kind != TM_KIND_NOTE
      && is_blank (line->judgement.method_name) && is_blank (line->feature->tooling))
    add_gap (content, TM_GAP_NO_TOOLING, line, "", "");
}

static void
find_disposition_gap (TmReportContent *content, const TmReportLine *line)
{
  const TmNonconformance *note = line->nonconformance;

  if (note != NULL && !is_blank (note->number) && is_blank (note->disposition))
    add_gap (content, TM_GAP_NO_DISPOSITION, line, "", note->number);
  if (note != NULL && *note->rework_at == '\0'
      && (g_str_equal (note->disposition, "rework") || g_str_equal (note->disposition, "repair")))
    add_gap (content, TM_GAP_REWORK_OPEN, line, "", "");
}

static void
find_line_gaps (TmReportContent *content, const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  const TmNonconformance *note = line->nonconformance;
  const gboolean by_pins = judgement->sizes.n_stations == 0 && judgement->verdict != TM_VERDICT_NOT_MEASURED;

  if (!by_pins
      && (judgement->sizes.n_stations == 0
          || (judgement->verdict == TM_VERDICT_NOT_MEASURED && judgement->why != TM_WHY_STATIONS_MISSING)))
    add_gap (content, TM_GAP_NOT_MEASURED, line, "", find_since (content->job, line));
  find_disposition_gap (content, line);
  find_evidence_gaps (content, line);
  if (judgement->sizes.n_stations == 0 && !by_pins)
    return;
  if (!by_pins)
    find_station_gaps (content, line);
  find_method_gap (content, line);
  find_tooling_gap (content, line);
  if (judgement->verdict == TM_VERDICT_TOO_CLOSE
      && (note == NULL || (is_blank (note->number) && is_blank (note->disposition))))
    add_gap (content, TM_GAP_TOO_CLOSE, line, "", "");
  if (judgement->verdict == TM_VERDICT_OUT && (note == NULL || is_blank (note->number)))
    add_gap (content, TM_GAP_NO_REFERENCE, line, "", "");
}

void
tm_report_each_tag (const TmJob *job, const TmReading *reading, TmTagFunc each, gpointer data)
{
  const char *name = *reading->method != '\0' ? reading->method : reading->row.feature->method;
  const TmMethod *method = tm_job_find_method (job, name);

  if (method == NULL)
    {
      if (tm_job_find_gauge (job, name) != NULL)
        each (name, reading, data);
      return;
    }
  for (guint i = 0; i < method->gauges->len; i++)
    each (g_ptr_array_index (method->gauges, i), reading, data);
}

/* The first of a method's two gauges (a telescoping gauge, a small-hole gauge) only carries the size
 * to the one that reads, which has the calibration. */
static gboolean
is_transfer (const TmJob *job, const TmReading *reading, const TmGauge *gauge)
{
  const char *name = *reading->method != '\0' ? reading->method : reading->row.feature->method;
  const TmMethod *method = tm_job_find_method (job, name);

  return method != NULL && method->gauges->len == 2
         && strcmp (g_ptr_array_index (method->gauges, 0), gauge->tag) == 0;
}

/* A transfer gauge is overdue only where the shop gave it a due date and that has passed.  Without a time
 * any day up to the due date is taken. */
static gboolean
was_good (const TmJob *job, const char *at, const TmGauge *gauge, gboolean transfer)
{
  TmDue due;

  if (strlen (at) < DATE_LENGTH)
    return transfer || *tm_gauge_due_date (job, gauge, NULL) != '\0';
  due = tm_gauge_due (job, gauge, at);
  return due == TM_DUE_UNKNOWN ? transfer : due != TM_DUE_OVERDUE;
}

typedef struct {
  TmReportContent *content;
  GHashTable *named; /* tags that already have their gap */
} GaugeSearch;

/* One gap for each gauge, at the first row that it spoils. */
static void
add_gauge_gap (GaugeSearch *search, const char *tag, TmGapKind kind, const TmEntryRow *row, guint place,
               const char *station)
{
  const TmReportLine line = { .feature = row->feature, .piece = row->piece, .place = place };

  if (g_hash_table_add (search->named, (gpointer)tag))
    add_gap (search->content, kind, &line, station, tag);
}

static void
check_tag_cb (const char *tag, const TmReading *reading, gpointer data)
{
  GaugeSearch *search = data;
  const TmJob *job = search->content->job;
  const TmGauge *gauge = tm_job_find_gauge (job, tag);

  if (gauge == NULL)
    add_gauge_gap (search, tag, TM_GAP_GAUGE_UNKNOWN, &reading->row, reading->place, reading->station);
  else if (is_blank (reading->overdue_reason)
           && !was_good (job, reading->row.at, gauge, is_transfer (job, reading, gauge)))
    add_gauge_gap (search, tag, TM_GAP_GAUGE_OVERDUE, &reading->row, reading->place, reading->station);
}

/* A trial may name no set: its class and sign are what it proves by. */
static void
check_trial (GaugeSearch *search, const TmPinTrial *trial)
{
  const TmJob *job = search->content->job;
  const TmGauge *set = tm_job_find_gauge (job, trial->gauge);

  if (*trial->gauge == '\0')
    return;
  if (set == NULL)
    add_gauge_gap (search, trial->gauge, TM_GAP_GAUGE_UNKNOWN, &trial->row, trial->place, "");
  else if (is_blank (trial->overdue_reason) && !was_good (job, trial->row.at, set, FALSE))
    add_gauge_gap (search, trial->gauge, TM_GAP_GAUGE_OVERDUE, &trial->row, trial->place, "");
}

static void
find_gauge_gaps (TmReportContent *content)
{
  g_autoptr (GHashTable) named = g_hash_table_new (g_str_hash, g_str_equal);
  GaugeSearch search = { content, named };

  for (guint i = 0; i < content->job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (content->job->readings, i);
      if (tm_row_counts (&reading->row))
        tm_report_each_tag (content->job, reading, check_tag_cb, &search);
    }
  for (guint i = 0; i < content->job->pin_trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (content->job->pin_trials, i);
      if (tm_row_counts (&trial->row))
        check_trial (&search, trial);
    }
}

/* Whether what decided @line rests on a starting value of its method. */
static gboolean
rests_on_assumed (const TmReportContent *content, const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  const TmLocalSize *size;
  TmUseWhen when;
  TmMethodUse use;

  if (judgement->why == TM_WHY_ASSUMED)
    return TRUE;
  if (judgement->sizes.n_stations == 0 || judgement->counted != TM_COUNTED_READINGS
      || tm_kind_is_attribute (line->feature->kind))
    return FALSE;
  size = &judgement->sizes.stations[judgement->deciding];
  when = tm_use_when (size->last);
  use = tm_method_use_at (content->job, line->feature, size->method_name, &when);
  return use.known && tm_method_rests_on_assumed (&use);
}

/* One gap for each method, at the first line that rests on it. */
static void
find_assumed_gaps (TmReportContent *content)
{
  g_autoptr (GHashTable) named = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < content->lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (content->lines, i);
      const char *name = line->judgement.method_name;

      if (!g_hash_table_contains (named, name) && rests_on_assumed (content, line)
          && g_hash_table_add (named, (gpointer)name))
        add_gap (content, TM_GAP_ASSUMED, line, "", name);
    }
}

/* What many pieces lack alike is one gap; of what was found before nothing is alike. */
static void
find_gaps_of_lines (TmReportContent *content)
{
  GPtrArray *before = content->gaps;

  content->gaps = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_gap_free);
  for (guint i = 0; i < content->lines->len; i++)
    find_line_gaps (content, g_ptr_array_index (content->lines, i));
  tm_report_join_gaps (content->gaps);
  g_ptr_array_extend_and_steal (before, content->gaps);
  content->gaps = before;
}

void
tm_report_find_gaps (TmReportContent *content)
{
  find_job_gaps (content);
  find_gaps_of_lines (content);
  find_gauge_gaps (content);
  find_assumed_gaps (content);
}

static gboolean
is_answered (const TmJob *job, const char *name)
{
  for (guint i = 0; i < job->report_fields->len; i++)
    {
      const TmReportField *field = g_ptr_array_index (job->report_fields, i);

      if (g_str_equal (field->name, name) && !is_blank (field->value))
        return TRUE;
    }
  return FALSE;
}

void
tm_report_find_field_gaps (TmReportContent *content)
{
  const TmTemplate *template = content->template;

  for (guint i = 0; template != NULL && i < template->fields->len; i++)
    {
      const TmTemplateField *field = g_ptr_array_index (template->fields, i);

      if (field->required && !is_answered (content->job, field->name))
        add_gap (content, TM_GAP_FIELD_MISSING, NULL, "", field->name);
    }
}
