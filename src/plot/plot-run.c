/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-correction.h"
#include "plot-label.h"
#include "plot-run-private.h"

static void
clear_event_cb (gpointer data)
{
  g_free (((TmFrameEvent *)data)->label);
}

/* Beyond a limit by any station: exact. */
static void
judge_point (const TmRunPlot *plot, const TmSizes *sizes, TmRunPoint *point)
{
  const TmLocalSize *smallest = &sizes->stations[sizes->smallest];
  const TmLocalSize *largest = &sizes->stations[sizes->largest];

  point->verdict = TM_VERDICT_IN;
  point->point = TM_POINT_UP;
  if (plot->limits.has_lower && tm_mean_compare (smallest->sum, smallest->n, plot->limits.lower) < 0)
    {
      point->verdict = TM_VERDICT_OUT;
      point->point = TM_POINT_DOWN;
    }
  if (plot->limits.has_upper && tm_mean_compare (largest->sum, largest->n, plot->limits.upper) > 0)
    {
      point->verdict = TM_VERDICT_OUT;
      point->point = TM_POINT_UP;
    }
}

static double
find_mean (const TmLocalSize *size)
{
  return (double)size->sum / (double)MAX (1, size->n);
}

static void
add_point (TmRunPlot *plot, const TmJob *job, const TmFeature *feature, const GPtrArray *readings,
           guint piece, guint place)
{
  TmSizes sizes = { 0 };
  TmRunPoint point = { .piece = piece, .place = place };

  tm_sizes_of (job, feature, readings, NULL, &sizes);
  if (sizes.n_stations > 0)
    {
      double sum = 0.0;
      for (guint i = 0; i < sizes.n_stations; i++)
        sum += find_mean (&sizes.stations[i]) / sizes.n_stations;
      point.mean = sum;
      point.smallest = find_mean (&sizes.stations[sizes.smallest]);
      point.largest = find_mean (&sizes.stations[sizes.largest]);
      judge_point (plot, &sizes, &point);
      plot->fineness = MAX (plot->fineness, sizes.stations[0].decimals);
      g_array_append_val (plot->points, point);
    }
  tm_sizes_clear (&sizes);
}

static void
add_points (TmRunPlot *plot, const TmJob *job, const TmFeature *feature)
{
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, i);
      g_ptr_array_add (plot->serials, g_strdup (piece->serial));
      if (tm_kind_is_attribute (feature->kind))
        continue;
      for (guint place = 1; place <= feature->places; place++)
        {
          const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);
          if (readings != NULL)
            add_point (plot, job, feature, readings, i, place);
        }
    }
}

static int
compare_events_cb (gconstpointer a, gconstpointer b)
{
  const double first = ((const TmFrameEvent *)a)->at, second = ((const TmFrameEvent *)b)->at;

  return first < second ? -1 : first > second;
}

static void
add_events (TmRunPlot *plot, const TmJob *job)
{
  for (guint i = 0; i < job->events->len; i++)
    {
      const TmEvent *event = g_ptr_array_index (job->events, i);
      for (guint p = 0; p < job->pieces->len; p++)
        {
          const TmPiece *piece = g_ptr_array_index (job->pieces, p);
          if (g_strcmp0 (piece->serial, event->before_piece) == 0)
            {
              const TmFrameEvent shown = { .at = p, .label = tm_event_label (event) };
              g_array_append_val (plot->events, shown);
            }
        }
    }
  g_array_sort (plot->events, compare_events_cb);
}

static void
choose_axis (TmRunPlot *plot, gboolean attribute)
{
  TmRange range = {
    .limits = plot->limits,
    .guard = plot->guard,
    .decimals = plot->decimals,
    .unit = plot->unit,
    .data_low = NAN,
    .data_high = NAN,
    .mate_low = NAN,
    .mate_high = NAN,
  };

  if (!plot->limits.has_lower || !plot->limits.has_upper)
    range.decimals = MAX (range.decimals, plot->fineness);
  for (guint i = 0; i < plot->points->len; i++)
    {
      const TmRunPoint *point = &g_array_index (plot->points, TmRunPoint, i);
      tm_range_stretch (&range.data_low, &range.data_high, point->smallest);
      tm_range_stretch (&range.data_low, &range.data_high, point->largest);
    }
  plot->has_axis = !attribute && tm_range_choose (&range, &plot->axis);
}

/* The middle of a two-sided band; nothing is aimed at otherwise. */
static void
find_target (TmRunPlot *plot)
{
  const TmLimits *limits = &plot->limits;

  plot->has_target = limits->has_lower && limits->has_upper && !limits->zero_bounded;
  if (plot->has_target)
    plot->target = ((double)limits->lower + (double)limits->upper) / 2.0;
}

static void
find_guard (TmRunPlot *plot, const TmJob *job, const TmFeature *feature)
{
  TmOutlook outlook;

  if (job->decision == TM_DECISION_GUARDED && !tm_kind_is_attribute (feature->kind)
      && tm_judge_outlook (job, feature, feature->method, &outlook))
    plot->guard = (double)outlook.guard;
}

TmRunPlot *
tm_run_plot_new (const TmJob *job, const TmFeature *feature)
{
  TmRunPlot *plot;

  g_return_val_if_fail (job != NULL && feature != NULL, NULL);
  plot = g_new0 (TmRunPlot, 1);
  plot->title = tm_feature_title (feature);
  plot->unit = feature->unit;
  plot->places = feature->places;
  plot->limits = tm_feature_limits (feature);
  plot->decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  plot->lower_text = tm_limit_text (plot->limits.has_lower, plot->limits.lower, &feature->lower,
                                    feature->unit, plot->decimals);
  plot->upper_text = tm_limit_text (plot->limits.has_upper, plot->limits.upper, &feature->upper,
                                    feature->unit, plot->decimals);
  plot->serials = g_ptr_array_new_with_free_func (g_free);
  plot->points = g_array_new (FALSE, FALSE, sizeof (TmRunPoint));
  plot->events = g_array_new (FALSE, FALSE, sizeof (TmFrameEvent));
  g_array_set_clear_func (plot->events, clear_event_cb);
  find_guard (plot, job, feature);
  find_target (plot);
  add_points (plot, job, feature);
  add_events (plot, job);
  choose_axis (plot, tm_kind_is_attribute (feature->kind));
  return plot;
}

void
tm_run_plot_free (TmRunPlot *plot)
{
  if (plot == NULL)
    return;
  g_free (plot->title);
  g_free (plot->lower_text);
  g_free (plot->upper_text);
  g_ptr_array_unref (plot->serials);
  g_array_unref (plot->points);
  g_array_unref (plot->events);
  g_free (plot);
}

static void
describe_points (const TmRunPlot *plot, GString *out)
{
  const guint decimals = MIN (plot->decimals + 1, TM_MAX_DECIMALS);
  double low = NAN, high = NAN;
  g_autofree char *from = NULL, *to = NULL;

  if (plot->points->len == 0)
    {
      g_string_append (out, _ ("no sizes yet"));
      return;
    }
  for (guint i = 0; i < plot->points->len; i++)
    tm_range_stretch (&low, &high, g_array_index (plot->points, TmRunPoint, i).mean);
  from = tm_count_format ((gint64)low, plot->unit, decimals);
  to = tm_count_format ((gint64)high, plot->unit, decimals);
  g_string_append_printf (
      out, ngettext ("%u mean from %s to %s %s", "%u means from %s to %s %s", plot->points->len),
      plot->points->len, from, to, tm_unit_symbol (plot->unit));
}

char *
tm_run_plot_describe (const TmRunPlot *plot)
{
  GString *out;

  g_return_val_if_fail (plot != NULL, NULL);
  out = g_string_new (NULL);
  g_string_append_printf (out, _ ("%s by piece"), plot->title);
  g_string_append (out, ": ");
  describe_points (plot, out);
  if (*plot->lower_text != '\0' || *plot->upper_text != '\0')
    g_string_append_printf (out, _ ("; limits %s … %s"), plot->lower_text, plot->upper_text);
  for (guint i = 0; i < plot->points->len; i++)
    {
      const TmRunPoint *point = &g_array_index (plot->points, TmRunPoint, i);
      if (point->verdict != TM_VERDICT_OUT)
        continue;
      g_string_append (out, ". ");
      g_string_append_printf (out, _ ("Piece %s lies outside"),
                              (const char *)g_ptr_array_index (plot->serials, point->piece));
    }
  for (guint i = 0; i < plot->events->len; i++)
    {
      const TmFrameEvent *event = &g_array_index (plot->events, TmFrameEvent, i);
      g_string_append (out, ". ");
      g_string_append_printf (out, _ ("Before piece %s: %s"),
                              (const char *)g_ptr_array_index (plot->serials, (guint)event->at),
                              event->label);
    }
  g_string_append_c (out, '.');
  return g_string_free (out, FALSE);
}
