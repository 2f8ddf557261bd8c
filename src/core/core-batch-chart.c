/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The control charts of a batch.
 *
 * A piece that nobody meant to measure is no gap: groups are made of the pieces that are due by the plan or
 * measured all the same, individuals of those that were measured.
 */

#include <math.h>

#include "core-batch-private.h"

/* Groups back from the newest at which a rule still speaks of now: the longest usual run. */
#define RECENT 8

/* -------- Groups -------- */

typedef struct {
  GArray *pieces; /* guint, index in the series */
  GArray *values; /* double */
  GArray *breaks; /* guint, index in the two above */
} Slots;

static void
add_slot (const TmSeries *series, guint piece, guint *next_break, Slots *slots)
{
  gboolean begins = FALSE;

  while (*next_break < series->n_breaks && series->breaks[*next_break] <= piece)
    {
      begins = slots->pieces->len > 0;
      ++*next_break;
    }
  if (begins)
    g_array_append_val (slots->breaks, slots->pieces->len);
  g_array_append_val (slots->pieces, piece);
  g_array_append_val (slots->values, series->points[piece].mean);
}

static void
fill_slots (const TmSeries *series, gboolean with_due, Slots *slots)
{
  guint next_break = 0, last = series->n_points;

  while (last > 0 && isnan (series->points[last - 1].mean))
    last--;
  g_array_set_size (slots->pieces, 0);
  g_array_set_size (slots->values, 0);
  g_array_set_size (slots->breaks, 0);
  for (guint i = 0; i < last; i++)
    if (!isnan (series->points[i].mean) || (with_due && series->points[i].due))
      add_slot (series, i, &next_break, slots);
}

static void
draw_chart (TmBatch *batch, const Slots *slots)
{
  TmChartInput input = {
    .values = &g_array_index (slots->values, double, 0),
    .n = slots->values->len,
    .breaks = &g_array_index (slots->breaks, guint, 0),
    .n_breaks = slots->breaks->len,
    .group_size = batch->options.group_size,
    .baseline = batch->options.baseline,
  };

  tm_chart_clear (&batch->chart);
  tm_chart (&input, &batch->chart);
  for (guint i = 0; i < batch->chart.n_groups; i++)
    batch->chart.groups[i].from = g_array_index (slots->pieces, guint, batch->chart.groups[i].from);
}

/* -------- Stretches -------- */

/* Indexes of the groups that begin a stretch, without 0. */
static GArray *
find_group_breaks (const TmBatch *batch)
{
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (guint));
  const TmSeries *series = &batch->series;
  guint next = 0;

  for (guint i = 0; i < batch->chart.n_groups; i++)
    {
      guint passed = next;

      while (next < series->n_breaks && series->breaks[next] <= batch->chart.groups[i].from)
        next++;
      if (next > passed && i > 0)
        g_array_append_val (breaks, i);
    }
  return breaks;
}

static guint
get_stretch_end (const TmBatch *batch, const GArray *breaks, guint index)
{
  return index < breaks->len ? g_array_index (breaks, guint, index) : batch->chart.n_groups;
}

static double
get_centre (const TmChartGroup *group)
{
  return (group->location_lower + group->location_upper) / 2;
}

/* What an event moved is moved on purpose: each stretch has its own centre, unless the limits were frozen. */
static void
centre_stretch (TmChart *chart, guint from, guint end)
{
  double sum = 0;
  guint n = 0;

  for (guint i = from; i < end; i++)
    if (chart->groups[i].n > 0)
      {
        sum += (chart->groups[i].location - chart->centre) * chart->groups[i].n;
        n += chart->groups[i].n;
      }
  for (guint i = from; i < end && n > 0; i++)
    if (chart->groups[i].n > 0)
      {
        chart->groups[i].location_lower += sum / n;
        chart->groups[i].location_upper += sum / n;
      }
}

/* -------- Hits -------- */

static double *
find_deviates (const TmBatch *batch)
{
  double *z = g_new (double, batch->chart.n_groups + 1);

  for (guint i = 0; i < batch->chart.n_groups; i++)
    {
      const TmChartGroup *group = &batch->chart.groups[i];
      double half = (group->location_upper - group->location_lower) / 2;

      z[i] = batch->chart.status == TM_CHART_OK && group->n > 0
                 ? 3 * (group->location - get_centre (group)) / half
                 : NAN;
    }
  return z;
}

static GArray *
find_dispersion_hits (const TmChart *chart)
{
  GArray *hits = g_array_new (FALSE, FALSE, sizeof (TmRuleHit));

  for (guint i = 0; i < chart->n_groups && chart->status == TM_CHART_OK; i++)
    {
      const TmChartGroup *group = &chart->groups[i];
      TmRuleHit hit = { i, TM_RULE_BEYOND_3S };

      if (group->dispersion > group->dispersion_upper || group->dispersion < group->dispersion_lower)
        g_array_append_val (hits, hit);
    }
  return hits;
}

/* Asked for at every reading, and slow where it is simulated: each set of rules once. */
static double
get_rules_length (guint rules, gboolean *exact)
{
  static GMutex mutex;
  static struct {
    double length; /* 0: not asked for yet */
    gboolean exact;
  } known[1u << TM_N_RUN_RULES];
  const guint at = rules & (G_N_ELEMENTS (known) - 1);
  double length;

  g_mutex_lock (&mutex);
  if (!(known[at].length > 0))
    known[at].length = tm_run_rules_length (at, 0, &known[at].exact);
  *exact = known[at].exact;
  length = known[at].length;
  g_mutex_unlock (&mutex);
  return length;
}

/* -------- Charts that remember -------- */

/* The limits are exact for groups of any size: v = (1 - λ)² v + λ² σ²/n. */
static void
average_stretch (TmBatch *batch, guint from, guint end)
{
  const TmChart *chart = &batch->chart;
  double level = NAN, variance = 0, centre = chart->centre;

  for (guint i = from; i < end; i++)
    {
      const TmChartGroup *group = &chart->groups[i];
      double half;

      if (group->n > 0)
        {
          if (isnan (level))
            level = centre = chart->status == TM_CHART_TOO_FEW ? chart->centre : get_centre (group);
          level += TM_BATCH_LAMBDA * (group->location - level);
          variance = (1 - TM_BATCH_LAMBDA) * (1 - TM_BATCH_LAMBDA) * variance
                     + TM_BATCH_LAMBDA * TM_BATCH_LAMBDA * chart->sigma * chart->sigma / group->n;
        }
      half = TM_BATCH_EWMA_REACH * sqrt (variance);
      batch->ewma[i] = (TmEwmaPoint) { isnan (level) ? centre : level, centre - half, centre + half };
      if (chart->status == TM_CHART_OK && batch->first_ewma < 0 && fabs (batch->ewma[i].value - centre) > half
          && group->n > 0)
        batch->first_ewma = (gint)i;
    }
}

static void
fill_memory (TmBatch *batch, const GArray *breaks, const double *z)
{
  guint from = 0;

  batch->ewma = g_new0 (TmEwmaPoint, batch->chart.n_groups);
  batch->cusum = g_new0 (TmCusumPoint, batch->chart.n_groups);
  batch->first_ewma = batch->first_cusum = -1;
  for (guint stretch = 0; stretch <= breaks->len; stretch++)
    {
      guint end = get_stretch_end (batch, breaks, stretch);

      average_stretch (batch, from, end);
      tm_cusum (z + from, end - from, 0, 1, TM_BATCH_CUSUM_K, batch->cusum + from);
      from = end;
    }
  for (guint i = 0; i < batch->chart.n_groups && batch->first_cusum < 0; i++)
    if (MAX (batch->cusum[i].high, batch->cusum[i].low) > TM_BATCH_CUSUM_H)
      batch->first_cusum = (gint)i;
}

/* -------- All of it -------- */

void
tm_batch_fill_charts (TmBatch *batch)
{
  const gboolean grouped = batch->options.group_size > 1;
  Slots slots = { g_array_new (FALSE, FALSE, sizeof (guint)), g_array_new (FALSE, FALSE, sizeof (double)),
                  g_array_new (FALSE, FALSE, sizeof (guint)) };
  g_autoptr (GArray) breaks = NULL;
  g_autofree double *z = NULL;
  guint from = 0;

  fill_slots (&batch->series, grouped, &slots);
  draw_chart (batch, &slots);
  if (grouped && batch->chart.status == TM_CHART_TOO_FEW)
    {
      /* Measured here and there: the plan's groups hold hardly one each. */
      fill_slots (&batch->series, FALSE, &slots);
      draw_chart (batch, &slots);
    }
  breaks = find_group_breaks (batch);
  if (batch->options.baseline == 0 && batch->chart.status != TM_CHART_TOO_FEW)
    for (guint stretch = 0; stretch <= breaks->len; stretch++)
      {
        centre_stretch (&batch->chart, from, get_stretch_end (batch, breaks, stretch));
        from = get_stretch_end (batch, breaks, stretch);
      }
  z = find_deviates (batch);
  batch->location_hits = tm_run_rules (z, batch->chart.n_groups, &g_array_index (breaks, guint, 0),
                                       breaks->len, batch->options.rules);
  batch->dispersion_hits = find_dispersion_hits (&batch->chart);
  batch->rules_length = get_rules_length (batch->options.rules, &batch->rules_exact);
  fill_memory (batch, breaks, z);
  g_array_unref (slots.pieces);
  g_array_unref (slots.values);
  g_array_unref (slots.breaks);
}

/* -------- What speaks now -------- */

/* Where the line lies under the pieces of a group. */
static double
find_line_at (const TmBatch *batch, guint group)
{
  const TmChart *chart = &batch->chart;
  const guint end = group + 1 < chart->n_groups ? chart->groups[group + 1].from : batch->series.n_points;
  double sum = 0;
  guint n = 0;

  for (guint i = chart->groups[group].from; i < end; i++)
    if (!isnan (batch->series.points[i].mean))
      sum += i + 1, n++;
  return batch->trend.mean_y + batch->trend.slope * (sum / MAX (n, 1) - batch->trend.mean_x);
}

void
tm_batch_fill_signal (TmBatch *batch)
{
  const TmChart *chart = &batch->chart;
  g_autofree double *z = find_deviates (batch);
  g_autoptr (GArray) hits = NULL;
  guint first = chart->n_groups;

  while (first > 0 && chart->groups[first - 1].from >= batch->stretch_from)
    first--;
  if (tm_batch_has_drift (batch) && !batch->change.found)
    for (guint i = first; i < chart->n_groups; i++)
      if (!isnan (z[i]))
        z[i] = (chart->groups[i].location - find_line_at (batch, i)) * sqrt (chart->groups[i].n)
               / chart->sigma;
  hits = tm_run_rules (z + first, chart->n_groups - first, NULL, 0, batch->options.rules);
  for (guint i = 0; i < hits->len; i++)
    if (first + g_array_index (hits, TmRuleHit, i).point + RECENT >= chart->n_groups)
      batch->signalled = TRUE;
}
