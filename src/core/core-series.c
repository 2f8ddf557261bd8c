/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-series.h"

#include <math.h>
#include <string.h>

#include "core-method.h"

/* -------- The sizes of one piece -------- */

static void
fill_sizes (TmSeriesPoint *point, const TmSizes *sizes, gint64 reference)
{
  double sum = 0;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      double size = tm_local_size_beyond (&sizes->stations[i], reference);

      sum += size;
      point->smallest = i == 0 ? size : MIN (point->smallest, size);
      point->largest = i == 0 ? size : MAX (point->largest, size);
    }
  if (sizes->n_stations > 0)
    point->mean = sum / sizes->n_stations;
}

/* The variance of the mean over the stations, as a share of that of one reading.  An offset's error counts
 * twice in a diametral deviation. */
static double
find_share (const TmSizes *sizes)
{
  double share = 0;

  for (guint i = 0; i < sizes->n_stations; i++)
    share += (sizes->stations[i].radial ? 4.0 : 1.0) / sizes->stations[i].n;
  return share / sizes->n_stations / sizes->n_stations;
}

/* -------- What the sizes are held against -------- */

static gboolean
find_middle (const TmLimits *limits, gint64 *middle)
{
  if (!limits->has_lower || !limits->has_upper)
    return FALSE;
  *middle = (gint64)(((TmWide)limits->lower + limits->upper) / 2);
  return TRUE;
}

static gint64
round_mean (const TmLocalSize *size)
{
  return (gint64)CLAMP (size->sum / size->n, -(TmWide)TM_COUNT_MAX, (TmWide)TM_COUNT_MAX);
}

static void
fill_limits (TmSeries *series)
{
  const TmLimits *limits = &series->limits;
  const TmQuantity *nominal = &series->feature->nominal;
  const double reference = (double)series->reference;

  series->lower = limits->has_lower ? (double)(limits->lower - series->reference) : -INFINITY;
  series->upper = limits->has_upper ? (double)(limits->upper - series->reference) : INFINITY;
  series->target = NAN;
  if (limits->zero_bounded)
    return;
  if (limits->has_lower && limits->has_upper)
    series->target = (series->lower + series->upper) / 2;
  else if (nominal->given && (double)nominal->count - reference > series->lower + series->guard
           && (double)nominal->count - reference < series->upper - series->guard)
    series->target = (double)nominal->count - reference;
}

/* The greatest step of which all differences of the sizes are multiples; 0: they do not differ. */
static double
find_common_step (const TmSeries *series)
{
  double first = NAN;
  gint64 step = 0;

  for (guint i = 0; i < series->n_points && step != 1; i++)
    if (!isnan (series->points[i].mean))
      {
        gint64 other;

        first = isnan (first) ? series->points[i].mean : first;
        for (other = llabs (llround (series->points[i].mean - first)); other != 0;)
          {
            gint64 rest = step % other;

            step = other;
            other = rest;
          }
      }
  return (double)step;
}

/* @share: mean over the pieces of the variance of their size as a share of that of one reading. */
static void
fill_method (TmSeries *series, const TmJob *job, const char *name, double share)
{
  TmMethodUse use = tm_method_use (job, series->feature, name);
  const TmComponent *last = use.n_components > 0 ? &use.components[use.n_components - 1] : NULL;
  TmOutlook outlook;

  if (tm_judge_outlook (job, series->feature, name, &outlook))
    series->guard = (double)outlook.guard;
  if (use.has_repeatability && !last->shared && share > 0)
    series->repeatability = tm_component_standard (last) * sqrt (share);
  series->rounding
      = (use.resolution > 0 ? use.resolution * sqrt (share) : find_common_step (series)) / sqrt (12);
}

/* -------- Events -------- */

gboolean
tm_event_resets (const TmJob *job, const TmEvent *event, const TmFeature *feature)
{
  g_return_val_if_fail (job != NULL && event != NULL && feature != NULL, FALSE);

  if (strcmp (event->kind, "tool") != 0 && strcmp (event->kind, "offset") != 0
      && strcmp (event->kind, "lot") != 0)
    return FALSE;
  if (*event->feature != '\0')
    return strcmp (event->feature, feature->balloon) == 0;
  return *event->tool == '\0' || strcmp (event->tool, feature->tool) == 0;
}

/* A note of another kind is shown where it is about the feature, or about nothing in particular. */
static gboolean
is_about (const TmEvent *event, const TmFeature *feature)
{
  if (*event->feature != '\0')
    return strcmp (event->feature, feature->balloon) == 0;
  return *event->tool == '\0' || strcmp (event->tool, feature->tool) == 0;
}

static gint
compare_events_cb (gconstpointer a, gconstpointer b, gpointer data G_GNUC_UNUSED)
{
  const TmSeriesEvent *left = a, *right = b;

  return (left->before > right->before) - (left->before < right->before);
}

/* An event before a piece that is no longer there has no place to stand. */
static void
add_event (const TmSeries *series, const TmJob *job, GHashTable *places, const TmEvent *event, GArray *events)
{
  TmSeriesEvent here = { event, series->n_points, tm_event_resets (job, event, series->feature) };
  gpointer at;

  if (!is_about (event, series->feature))
    return;
  if (*event->before_piece != '\0')
    {
      if (!g_hash_table_lookup_extended (places, event->before_piece, NULL, &at))
        return;
      here.before = GPOINTER_TO_UINT (at);
    }
  g_array_append_val (events, here);
}

static void
fill_breaks (TmSeries *series)
{
  series->breaks = g_new (guint, series->n_events + 1);
  for (guint i = 0; i < series->n_events; i++)
    {
      const TmSeriesEvent *event = &series->events[i];

      if (!event->resets || event->before == 0 || event->before >= series->n_points)
        continue;
      if (series->n_breaks == 0 || series->breaks[series->n_breaks - 1] != event->before)
        series->breaks[series->n_breaks++] = event->before;
    }
}

static void
fill_events (TmSeries *series, const TmJob *job)
{
  g_autoptr (GHashTable) places = NULL;
  GArray *events;

  if (job->events->len > 0)
    {
      places = g_hash_table_new (g_str_hash, g_str_equal);
      for (guint i = 0; i < series->n_points; i++)
        g_hash_table_insert (places, (gpointer)series->points[i].piece->serial, GUINT_TO_POINTER (i));
    }
  events = g_array_new (FALSE, FALSE, sizeof (TmSeriesEvent));
  for (guint i = 0; i < job->events->len; i++)
    add_event (series, job, places, g_ptr_array_index (job->events, i), events);
  series->n_events = events->len;
  series->events = (TmSeriesEvent *)(gpointer)g_array_free (events, FALSE);
  /* Stable: events of one place keep the order in which they were noted. */
  g_qsort_with_data (series->events, (gint)series->n_events, sizeof *series->events, compare_events_cb, NULL);
  fill_breaks (series);
}

/* -------- The series -------- */

typedef struct {
  const char *method; /* of the newest size; "": none yet */
  double shares;      /* Σ of the variance of each size as a share of that of one reading */
  gboolean has_reference;
} Gathering;

static void
fill_point (TmSeries *series, const TmJob *job, guint at, Gathering *gathering)
{
  TmSeriesPoint *point = &series->points[at];
  g_auto (TmJudgement) judgement = { 0 };

  tm_judge (job, point->piece, series->feature, series->place, &judgement);
  point->verdict = judgement.verdict;
  point->side = judgement.side;
  point->probability_in = judgement.probability_in;
  if (judgement.sizes.n_stations == 0 || tm_kind_is_attribute (series->feature->kind))
    return;
  if (!gathering->has_reference)
    {
      series->reference = round_mean (&judgement.sizes.stations[0]);
      gathering->has_reference = TRUE;
    }
  fill_sizes (point, &judgement.sizes, series->reference);
  gathering->shares += find_share (&judgement.sizes);
  gathering->method = judgement.method_name;
  series->n_measured++;
}

static gboolean
find_reference (TmSeries *series)
{
  if (series->limits.zero_bounded)
    series->reference = 0;
  else if (series->feature->nominal.given)
    series->reference = series->feature->nominal.count;
  else if (!find_middle (&series->limits, &series->reference))
    return FALSE;
  return TRUE;
}

void
tm_series_init (TmSeries *series, const TmJob *job, const TmFeature *feature, guint place)
{
  Gathering gathering = { .method = "" };

  g_return_if_fail (series != NULL && job != NULL && feature != NULL);
  g_return_if_fail (place >= 1 && place <= feature->places);

  *series = (TmSeries) { .feature = feature, .place = place, .repeatability = NAN };
  series->limits = tm_feature_limits (feature);
  series->n_points = job->pieces->len;
  series->points = g_new (TmSeriesPoint, series->n_points);
  gathering.has_reference = find_reference (series);
  for (guint i = 0; i < series->n_points; i++)
    {
      TmPiece *piece = g_ptr_array_index (job->pieces, i);

      series->points[i] = (TmSeriesPoint) { .piece = piece, .mean = NAN, .smallest = NAN, .largest = NAN };
      series->points[i].due = tm_job_feature_is_due (job, feature, piece, i);
      fill_point (series, job, i, &gathering);
    }
  fill_method (series, job, *feature->method != '\0' ? feature->method : gathering.method,
               series->n_measured > 0 ? gathering.shares / series->n_measured : 0);
  fill_limits (series); /* after the guard */
  fill_events (series, job);
}

void
tm_series_clear (TmSeries *series)
{
  g_clear_pointer (&series->points, g_free);
  g_clear_pointer (&series->events, g_free);
  g_clear_pointer (&series->breaks, g_free);
  series->n_points = series->n_measured = series->n_events = series->n_breaks = 0;
}

guint
tm_series_stretch_start (const TmSeries *series, guint at)
{
  guint start = 0;

  for (guint i = 0; i < series->n_breaks && series->breaks[i] <= at; i++)
    start = series->breaks[i];
  return start;
}

guint
tm_series_stretch_end (const TmSeries *series, guint at)
{
  for (guint i = 0; i < series->n_breaks; i++)
    if (series->breaks[i] > at)
      return series->breaks[i];
  return series->n_points;
}
