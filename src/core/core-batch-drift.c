/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drift or shift within the present stretch.
 *
 * A tool that wears looks to a test for a shift like a shift, and a shift like wear to a test for a slope.
 * Four models are held against each other.  A line needs a slope with p <= 0.05, two levels a change that
 * tm_level_change() finds, a line that jumps such a slope beside a jump with p <= 0.01.  Of those that have
 * what they need the one with the least n ln RSS + q ln n counts (G. Schwarz, Annals of Statistics 6, 1978),
 * q the number of its parameters, the place of the change among them; where none has, one level is left.
 */

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-batch-private.h"

#define LEVEL_P 0.05

/* Tools wear in every lot and chip in few: beside a slope that is shown a jump needs more to be believed. */
#define JUMP_P        0.01
#define JUMP_IS_RARER 3.0 /* ln of the odds, twice */

typedef enum { MODEL_LEVEL, MODEL_LINE, MODEL_CHANGE, MODEL_BOTH } Model;

static const guint n_parameters[] = { 1, 2, 3, 4 };

/* The measured pieces of the stretch. */
typedef struct {
  guint *pieces;
  double *x, *y;
  guint n;
  double rounding; /* as of the series */
} Run;

static void
run_init (Run *run, const TmSeries *series, guint from)
{
  const guint most = series->n_points - from;

  *run = (Run) { g_new (guint, most + 1), g_new (double, most + 1), g_new (double, most + 1), 0,
                 series->rounding };
  for (guint i = from; i < series->n_points; i++)
    if (!isnan (series->points[i].mean))
      {
        run->pieces[run->n] = i;
        run->x[run->n] = i + 1.0;
        run->y[run->n++] = series->points[i].mean;
      }
}

static void
run_clear (Run *run)
{
  g_free (run->pieces);
  g_free (run->x);
  g_free (run->y);
}

/* -------- The line that jumps -------- */

typedef struct {
  double rss; /* that is left */
  double p_jump, p_slope;
  double slope;
} Both;

/* What a jump before value @k takes off the squares that the line leaves: the sum of the residuals after it,
 * squared, over what the line leaves of the jump itself. */
static guint
find_jump (const Run *run, const TmTrend *line, double *best)
{
  double rest = 0, x = 0;
  guint at = 0;

  *best = -1;
  for (guint k = run->n - 1; k >= 2; k--)
    {
      double after = run->n - k, gain, left;

      rest += run->y[k] - line->mean_y - line->slope * (run->x[k] - line->mean_x);
      x += run->x[k] - line->mean_x;
      left = after * k / run->n - x * x / line->sxx;
      gain = left > 1e-9 * after ? rest * rest / left : 0;
      if (gain > *best && k <= run->n - 2)
        {
          *best = gain;
          at = k;
        }
    }
  return at;
}

typedef struct {
  double sxx, sxy, syy;
} Sums;

static void
add_part (const Run *run, guint from, guint end, Sums *sums)
{
  double mean_x = 0, mean_y = 0;

  for (guint i = from; i < end; i++)
    {
      mean_x += (run->x[i] - run->x[from]) / (end - from);
      mean_y += (run->y[i] - run->y[from]) / (end - from);
    }
  for (guint i = from; i < end; i++)
    {
      double dx = run->x[i] - run->x[from] - mean_x, dy = run->y[i] - run->y[from] - mean_y;

      sums->sxx += dx * dx;
      sums->sxy += dx * dy;
      sums->syy += dy * dy;
    }
}

/* Two-sided, of what one parameter takes off, @rss being left with @dof. */
static double
find_p (double gain, double rss, double dof)
{
  if (!(rss > 0))
    return gain > 0 ? 0 : 1;
  return 2 * gsl_cdf_tdist_Q (sqrt (MAX (gain, 0) * dof / rss), dof);
}

static gboolean
fit_both (const Run *run, const TmTrend *line, double rss_line, Both *both)
{
  Sums sums = { 0 };
  double gain;
  guint at;

  if (run->n < 6)
    return FALSE;
  at = find_jump (run, line, &gain);
  if (at == 0)
    return FALSE;
  add_part (run, 0, at, &sums);
  add_part (run, at, run->n, &sums);
  both->slope = sums.sxy / sums.sxx;
  both->rss = MAX (rss_line - gain, (run->n - 3) * run->rounding * run->rounding);
  /* Each place looked at counts (Bonferroni). */
  both->p_jump = MIN (1, (run->n - 3) * find_p (gain, both->rss, run->n - 3));
  both->p_slope = find_p (sums.sxy * sums.sxy / sums.sxx, both->rss, run->n - 3);
  return TRUE;
}

/* -------- Choice -------- */

/* Readings in steps leave as much at the least. */
static double
get_score (const Run *run, Model model, double rss)
{
  const double least = run->n * run->rounding * run->rounding;

  return run->n * log (MAX (rss, MAX (least, 1e-300))) + n_parameters[model] * log (run->n);
}

static double
find_rss_change (const Run *run, const TmLevelChange *change)
{
  double rss = 0;

  for (guint i = 0; i < run->n; i++)
    {
      double away = run->y[i] - (i < change->at ? change->before : change->after);

      rss += away * away;
    }
  return rss;
}

static Model
choose (const Run *run, const TmTrend *line, const TmLevelChange *change, Both *both)
{
  const double rss_line = line->residual * line->residual * (run->n - 2.0);
  Model model = MODEL_LEVEL;
  double least = INFINITY, score;

  if (line->status != TM_TREND_OK)
    return MODEL_LEVEL;
  if (line->p <= LEVEL_P)
    {
      least = get_score (run, MODEL_LINE, rss_line);
      model = MODEL_LINE;
    }
  if (change->found
      && (score = get_score (run, MODEL_CHANGE, find_rss_change (run, change)) + JUMP_IS_RARER) < least)
    {
      least = score;
      model = MODEL_CHANGE;
    }
  if (fit_both (run, line, rss_line, both) && both->p_jump <= JUMP_P && both->p_slope <= LEVEL_P
      && get_score (run, MODEL_BOTH, both->rss) + JUMP_IS_RARER < least)
    model = MODEL_BOTH;
  return model;
}

/* The jump of a line, and its interval, from what is left when the slope is taken out; both levels as they
 * are at the jump. */
static void
find_change_beside (const Run *run, double slope, TmLevelChange *change)
{
  g_autofree double *values = g_new (double, run->n);
  double x;

  for (guint i = 0; i < run->n; i++)
    values[i] = run->y[i] - slope * (run->x[i] - run->x[0]);
  tm_level_change (values, run->n, change);
  x = run->x[change->at] - run->x[0];
  change->before += slope * x;
  change->after += slope * x;
}

static void
find_change (const Run *run, TmLevelChange *change)
{
  TmTrend line;
  Both both = { 0 };

  tm_level_change (run->y, run->n, change);
  tm_trend_line (run->x, run->y, run->n, &line);
  tm_trend_allow (&line, run->rounding);
  switch (choose (run, &line, change, &both))
    {
    case MODEL_LINE:
    case MODEL_LEVEL:
      *change = (TmLevelChange) { .before = NAN, .after = NAN, .p = change->p };
      break;
    case MODEL_BOTH:
      find_change_beside (run, both.slope, change);
      break;
    case MODEL_CHANGE:
    default:
      break;
    }
}

/* -------- Trend and forecast -------- */

gboolean
tm_batch_has_drift (const TmBatch *batch)
{
  return batch->trend.status == TM_TREND_OK && batch->trend.p <= 0.05;
}

/* The line that meets the limit: of the largest size of each piece where the sizes grow, of the smallest
 * where they fall.  It differs from that of the means where stations do. */
static void
find_trend_of_extremes (const TmSeries *series, const Run *run, gboolean grows, guint from, TmTrend *trend)
{
  g_autofree double *y = g_new (double, run->n);

  for (guint i = from; i < run->n; i++)
    {
      const TmSeriesPoint *point = &series->points[run->pieces[i]];

      y[i] = grows ? point->largest : point->smallest;
    }
  tm_trend_line (run->x + from, y + from, run->n - from, trend);
  tm_trend_allow (trend, run->rounding);
}

static void
fill_forecast (TmBatch *batch, const Run *run, guint from)
{
  const TmSeries *series = &batch->series;
  const double lower = series->lower + series->guard, upper = series->upper - series->guard;
  TmTrend trend = batch->trend;
  double last;

  batch->pieces_left = batch->pieces_left_low = batch->pieces_left_high = NAN;
  /* Nothing is claimed of so few; and where the guards leave no band there is nothing to meet its end. */
  if (run->n - from <= TM_BATCH_FEW || !(lower < upper))
    trend.status = TM_TREND_TOO_FEW;
  else if (tm_batch_has_drift (batch))
    find_trend_of_extremes (series, run, batch->trend.slope > 0, from, &trend);
  tm_forecast (&trend, lower, upper, &batch->forecast);
  if (!batch->forecast.given)
    return;
  last = run->x[run->n - 1];
  batch->pieces_left = MAX (0, batch->forecast.at - last);
  batch->pieces_left_low = MAX (0, batch->forecast.low - last);
  batch->pieces_left_high = MAX (0, batch->forecast.high - last);
}

/* An event after the last piece begins a stretch that has none yet. */
static guint
find_stretch (const TmSeries *series)
{
  for (guint i = 0; i < series->n_events; i++)
    if (series->events[i].resets && series->events[i].before >= series->n_points)
      return series->n_points;
  return series->n_breaks > 0 ? series->breaks[series->n_breaks - 1] : 0;
}

void
tm_batch_fill_drift (TmBatch *batch, guint *from)
{
  TmLevelChange *change = &batch->change;
  Run run;
  guint since = 0;

  batch->stretch_from = *from = find_stretch (&batch->series);
  run_init (&run, &batch->series, batch->stretch_from);
  find_change (&run, change);
  if (change->found)
    {
      since = change->at;
      *from = run.pieces[since];
      change->at = run.pieces[change->at];
      change->low = run.pieces[change->low];
      change->high = run.pieces[change->high];
    }
  tm_trend (run.x + since, run.y + since, run.n - since, &batch->trend);
  tm_trend_allow (&batch->trend, run.rounding);
  fill_forecast (batch, &run, since);
  run_clear (&run);
}
