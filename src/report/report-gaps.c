/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-gaps.h"

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
    { "part_number", job->part_number }, { "part_name", job->part_name }, { "revision", job->revision },
    { "drawing", job->drawing },         { "customer", job->customer },   { "order", job->order },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    if (is_blank (facts[i].value))
      add_gap (content, TM_GAP_FACT_MISSING, NULL, "", facts[i].name);
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
      add_gap (content, TM_GAP_NO_METHOD, line, sizes->stations[i].station, name);
      return;
    }
}

static void
find_line_gaps (TmReportContent *content, const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;
  const TmNonconformance *note = line->nonconformance;

  if (judgement->sizes.n_stations == 0
      || (judgement->verdict == TM_VERDICT_NOT_MEASURED && judgement->why != TM_WHY_STATIONS_MISSING))
    add_gap (content, TM_GAP_NOT_MEASURED, line, "", "");
  if (judgement->sizes.n_stations == 0)
    return;
  find_station_gaps (content, line);
  find_method_gap (content, line);
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

/* Whether the calibration of @gauge covers the day of @at (UTC text, or "": any day up to the due
 * date). */
static gboolean
covers (const TmGauge *gauge, const char *at)
{
  if (*gauge->due == '\0')
    return FALSE;
  if (strlen (at) < DATE_LENGTH)
    return TRUE;
  return strncmp (at, gauge->due, DATE_LENGTH) <= 0
         && (*gauge->calibrated == '\0' || strncmp (at, gauge->calibrated, DATE_LENGTH) >= 0);
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

/* A transfer gauge is overdue only where the shop gave it a due date and that has passed. */
static gboolean
was_good (const TmJob *job, const TmReading *reading, const TmGauge *gauge)
{
  const char *at = reading->row.at;

  if (!is_transfer (job, reading, gauge))
    return covers (gauge, at);
  return *gauge->due == '\0' || strlen (at) < DATE_LENGTH || strncmp (at, gauge->due, DATE_LENGTH) <= 0;
}

typedef struct {
  TmReportContent *content;
  GHashTable *named; /* tags that already have their gap */
} GaugeSearch;

/* One gap for each gauge, at the first reading that it spoils. */
static void
check_tag_cb (const char *tag, const TmReading *reading, gpointer data)
{
  GaugeSearch *search = data;
  const TmGauge *gauge = tm_job_find_gauge (search->content->job, tag);
  const TmReportLine line
      = { .feature = reading->row.feature, .piece = reading->row.piece, .place = reading->place };

  if (gauge != NULL && was_good (search->content->job, reading, gauge))
    return;
  if (!g_hash_table_add (search->named, (gpointer)tag))
    return;
  add_gap (search->content, gauge == NULL ? TM_GAP_GAUGE_UNKNOWN : TM_GAP_GAUGE_OVERDUE, &line,
           reading->station, tag);
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
}

void
tm_report_find_gaps (TmReportContent *content)
{
  find_job_gaps (content);
  for (guint i = 0; i < content->lines->len; i++)
    find_line_gaps (content, g_ptr_array_index (content->lines, i));
  find_gauge_gaps (content);
}
