/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-private.h"
#include "plot-label.h"
#include "plot-range.h"
#include "plot-size.h"

static void
clear_row_cb (gpointer data)
{
  TmBandRow *row = data;

  g_free (row->label);
  g_free (row->value);
  g_free (row->typed_value);
}

/* The side an `out` lies on, for its arrow. */
static TmPoint
choose_point (const TmBandPlot *plot, double at)
{
  if (plot->limits.has_lower && at < (double)plot->limits.lower)
    return TM_POINT_LEFT;
  if (plot->limits.has_upper && at > (double)plot->limits.upper)
    return TM_POINT_RIGHT;
  return plot->limits.has_upper ? TM_POINT_RIGHT : TM_POINT_LEFT;
}

static char *
print_station (const TmBandPlot *plot, const TmJudgement *judgement, guint index)
{
  if (plot->attribute)
    return g_strdup (judgement->sizes.stations[index].outcome == TM_OUTCOME_FAIL ? _ ("fail") : _ ("pass"));
  return tm_station_number (judgement, index, plot->decimals);
}

static void
fill_row (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement, guint index, TmBandRow *row)
{
  const TmLocalSize *size = &judgement->sizes.stations[index];
  TmSizeMark mark;

  row->read = TRUE;
  row->repeats = size->n;
  row->value = print_station (plot, judgement, index);
  if (plot->attribute)
    {
      row->verdict = size->outcome == TM_OUTCOME_FAIL ? TM_VERDICT_OUT : TM_VERDICT_IN;
      row->point = TM_POINT_NONE;
      return;
    }
  row->at = (double)size->sum / (double)MAX (1, size->n);
  row->point = choose_point (plot, row->at);
  mark = tm_station_mark (job, judgement, index);
  row->uncertainty = mark.uncertainty;
  row->low = row->at - mark.uncertainty;
  row->high = row->at + mark.uncertainty;
  row->verdict = mark.verdict;
  row->together = mark.combined;
  if (size->unit == plot->unit)
    plot->fineness = MAX (plot->fineness, size->decimals);
}

/* The method of the next reading. */
static const char *
choose_method (const TmFeature *feature, const TmBandEntry *entry)
{
  return entry != NULL && entry->method != NULL && *entry->method != '\0' ? entry->method : feature->method;
}

static void
fill_typed (const TmBandPlot *plot, const TmJob *job, const TmFeature *feature, const TmBandEntry *entry,
            TmBandRow *row)
{
  const TmQuantity *typed = &entry->value;
  const char *method = choose_method (feature, entry);
  const TmLocalSize size
      = { .station = "", .sum = typed->count, .raw_sum = typed->count, .n = 1, .method_name = method };

  row->typed = TRUE;
  row->typed_at = (double)typed->count;
  row->typed_value = typed->unit == plot->unit ? tm_quantity_format (typed)
                                               : tm_count_format (typed->count, plot->unit,
                                                                  MIN (plot->decimals + 1, TM_MAX_DECIMALS));
  row->typed_verdict = tm_size_mark (job, feature, &plot->limits, &size, method).verdict;
  row->typed_point = choose_point (plot, row->typed_at);
}

static int
find_station (const TmSizes *sizes, const char *station, TmUnit unit)
{
  for (guint i = 0; i < sizes->n_stations; i++)
    if (tm_station_same (sizes->stations[i].station, station, unit))
      return (int)i;
  return -1;
}

static gboolean
is_required (const TmFeature *feature, const char *station)
{
  for (guint i = 0; i < feature->stations->len; i++)
    if (tm_station_same (g_ptr_array_index (feature->stations, i), station, feature->unit))
      return TRUE;
  return FALSE;
}

/* A size is read at a station or is called a size; anything else is just a reading. */
static char *
make_row_label (const TmFeature *feature, const char *station)
{
  if ((station == NULL || *station == '\0')
      && (tm_kind_is_zero_bounded (feature->kind) || feature->kind == TM_KIND_ANGLE
          || feature->kind == TM_KIND_HARDNESS))
    return g_strdup (_ ("reading"));
  return tm_station_label (station, feature->unit);
}

static gboolean
is_typed (const TmBandEntry *entry)
{
  return entry != NULL && entry->value.given;
}

static const char *
get_station (const TmBandEntry *entry)
{
  return entry != NULL && entry->station != NULL ? entry->station : "";
}

/* Appends the row of @station and, when it is where the entry stands, what is typed there. */
static void
add_row (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement, const char *station,
         const TmBandEntry *entry)
{
  const int index = find_station (&judgement->sizes, station, plot->unit);
  TmBandRow row = { .label = make_row_label (judgement->feature, station),
                    .at = NAN,
                    .uncertainty = NAN,
                    .low = NAN,
                    .high = NAN };

  if (index >= 0)
    fill_row (plot, job, judgement, (guint)index, &row);
  else
    row.value = g_strdup ("");
  if (is_typed (entry) && !plot->attribute && tm_station_same (get_station (entry), station, plot->unit))
    fill_typed (plot, job, judgement->feature, entry, &row);
  g_array_append_val (plot->rows, row);
  if (index >= 0 && judgement->sizes.stations[index].several_methods)
    tm_band_plot_add_parts (plot, job, judgement, station);
}

static void
add_rows (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement, const TmBandEntry *entry)
{
  const TmFeature *feature = judgement->feature;
  const TmSizes *sizes = &judgement->sizes;
  const char *extra = get_station (entry);

  for (guint i = 0; i < feature->stations->len; i++)
    add_row (plot, job, judgement, g_ptr_array_index (feature->stations, i), entry);
  for (guint i = 0; i < sizes->n_stations; i++)
    if (!is_required (feature, sizes->stations[i].station))
      add_row (plot, job, judgement, sizes->stations[i].station, entry);
  if (plot->rows->len == 0
      || (is_typed (entry) && !is_required (feature, extra) && find_station (sizes, extra, plot->unit) < 0))
    add_row (plot, job, judgement, extra, entry);
}

/* What was judged against; before anything is read, what one reading would be. */
static void
find_guard (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement, const TmBandEntry *entry)
{
  TmOutlook outlook;

  plot->guard = (double)judgement->guard;
  plot->guarded = judgement->guard > 0;
  plot->provable = judgement->settles != TM_SETTLES_CANNOT;
  if (judgement->sizes.n_stations == 0 && !plot->attribute
      && tm_judge_outlook (job, judgement->feature, choose_method (judgement->feature, entry), &outlook))
    {
      plot->guard = (double)outlook.guard;
      plot->guarded = outlook.guard > 0;
      plot->provable = outlook.settles != TM_SETTLES_CANNOT;
    }
}

gboolean
tm_band_plot_proven (const TmBandPlot *plot, double *low, double *high)
{
  *low = plot->limits.has_lower ? (double)plot->limits.lower + plot->guard : -INFINITY;
  *high = plot->limits.has_upper ? (double)plot->limits.upper - plot->guard : INFINITY;
  if (plot->limits.zero_bounded && plot->limits.has_upper)
    *low = 0.0;
  return plot->provable && *low <= *high;
}

/* The range of every value, of the whiskers of those that count, and of the pins. */
static void
find_data_range (const TmBandPlot *plot, double *low, double *high)
{
  *low = *high = NAN;
  for (guint i = 0; i < plot->rows->len; i++)
    {
      const TmBandRow *row = &g_array_index (plot->rows, TmBandRow, i);

      if (row->read)
        {
          tm_range_stretch (low, high, row->at);
          /* A coarse method beside finer ones would leave the band too small to read. */
          tm_range_stretch (low, high, row->part ? (double)NAN : row->low);
          tm_range_stretch (low, high, row->part ? (double)NAN : row->high);
        }
      if (row->typed)
        tm_range_stretch (low, high, row->typed_at);
    }
  for (guint i = 0; i < plot->pins->len; i++)
    {
      tm_range_stretch (low, high, g_array_index (plot->pins, TmBandPin, i).low);
      tm_range_stretch (low, high, g_array_index (plot->pins, TmBandPin, i).high);
    }
}

void
tm_band_plot_choose_axis (TmBandPlot *plot)
{
  TmRange range = {
    .limits = plot->limits,
    .guard = plot->guard,
    .decimals = MAX (plot->decimals, plot->fineness),
    .unit = plot->unit,
    .mate_low = plot->has_mate && plot->mate_has_lower ? plot->mate_lower : NAN,
    .mate_high = plot->has_mate && plot->mate_has_upper ? plot->mate_upper : NAN,
  };

  if (plot->axis_held)
    return;
  find_data_range (plot, &range.data_low, &range.data_high);
  range.planned = tm_band_plan_range (plot, &range.plan_low, &range.plan_high);
  plot->has_axis = !plot->attribute && tm_range_choose (&range, &plot->axis);
}

TmBandPlot *
tm_band_plot_new (const TmJob *job, const TmJudgement *judgement, const TmBandEntry *entry)
{
  const TmFeature *feature;
  TmBandPlot *plot;

  g_return_val_if_fail (job != NULL && judgement != NULL && judgement->feature != NULL, NULL);
  feature = judgement->feature;
  plot = g_new0 (TmBandPlot, 1);
  plot->title = tm_feature_title (feature);
  plot->unit = feature->unit;
  plot->attribute = tm_kind_is_attribute (feature->kind);
  plot->cut = tm_feature_cut (feature);
  plot->limits = judgement->limits;
  if (!plot->limits.has_lower && !plot->limits.has_upper)
    plot->limits = tm_feature_limits (feature);
  plot->decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  plot->lower_text = tm_limit_text (plot->limits.has_lower, plot->limits.lower, &feature->lower,
                                    feature->unit, plot->decimals);
  plot->upper_text = tm_limit_text (plot->limits.has_upper, plot->limits.upper, &feature->upper,
                                    feature->unit, plot->decimals);
  plot->rows = g_array_new (FALSE, FALSE, sizeof (TmBandRow));
  g_array_set_clear_func (plot->rows, clear_row_cb);
  plot->pins = g_array_new (FALSE, FALSE, sizeof (TmBandPin));
  g_array_set_clear_func (plot->pins, tm_band_pin_clear);
  find_guard (plot, job, judgement, entry);
  add_rows (plot, job, judgement, entry);
  tm_band_plot_add_pins (plot, job, judgement);
  tm_band_plot_add_mate (plot, feature, judgement);
  tm_band_plot_choose_axis (plot);
  return plot;
}

void
tm_band_plot_free (TmBandPlot *plot)
{
  if (plot == NULL)
    return;
  g_free (plot->title);
  g_free (plot->lower_text);
  g_free (plot->upper_text);
  g_free (plot->mate_text);
  g_free (plot->fit_by_limits);
  g_free (plot->fit_measured);
  g_free (plot->open_words);
  tm_band_plan_clear (&plot->plan);
  g_array_unref (plot->rows);
  g_array_unref (plot->pins);
  g_free (plot);
}
