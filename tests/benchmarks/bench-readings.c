/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-readings: what 1,000,000 readings of one feature take.  What is asked at every reading (mean,
 * deviation, lag-1 autocorrelation, control limits, moving average and cumulative sum) is held against the
 * passes of the GNU Scientific Library for the first three alone; what sorts or ranks has a second.  Beside
 * them what R takes, where it is installed.
 */

#include <glib/gstdio.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <gsl/gsl_statistics_double.h>
#include <math.h>
#include <stdio.h>
#include <time.h>

#include "bench-figures.h"
#include "core-chart.h"
#include "core-normality.h"
#include "core-small-shift.h"
#include "core-statistics.h"
#include "core-trend.h"

#define N_READINGS 1000000
#define N_RUNS     9
#define MOST_RATIO 1.5
#define MOST_RANK  1.0

typedef struct {
  double *x, *values;
  TmEwmaPoint *ewma;
  TmCusumPoint *cusum;
  double sink; /* keeps what was worked out from being left out */
} Data;

typedef void (*WorkFunc) (Data *data);

static void
run_library (Data *data)
{
  double mean = gsl_stats_mean (data->values, 1, N_READINGS);

  data->sink += gsl_stats_sd_m (data->values, 1, N_READINGS, mean);
  data->sink += gsl_stats_lag1_autocorrelation_m (data->values, 1, N_READINGS, mean);
}

static void
run_summary (Data *data)
{
  TmSummary summary;

  tm_summary (data->values, N_READINGS, &summary);
  data->sink += summary.lag1;
}

static void
run_limits (Data *data)
{
  const TmChartInput input = { .values = data->values, .n = N_READINGS, .group_size = 1 };
  TmChart chart;

  tm_chart_level (&input, &chart);
  data->sink += chart.sigma;
}

static void
run_ewma (Data *data)
{
  tm_ewma (data->values, N_READINGS, 25.0, 0.001, 0.2, 2.962, data->ewma);
  data->sink += data->ewma[N_READINGS - 1].value;
}

static void
run_cusum (Data *data)
{
  tm_cusum (data->values, N_READINGS, 25.0, 0.001, 0.5, data->cusum);
  data->sink += data->cusum[N_READINGS - 1].high;
}

static void
run_chart (Data *data)
{
  const TmChartInput input = { .values = data->values, .n = N_READINGS, .group_size = 1 };
  g_auto (TmChart) chart = { 0 };

  tm_chart (&input, &chart);
  data->sink += chart.sigma;
}

static void
run_trend (Data *data)
{
  TmTrend trend;

  tm_trend (data->x, data->values, N_READINGS, &trend);
  data->sink += trend.theil_sen;
}

static void
run_normality (Data *data)
{
  double a_squared, p;

  tm_normality (data->values, N_READINGS, &a_squared, &p);
  data->sink += a_squared;
}

static void
run_change (Data *data)
{
  TmLevelChange change;

  tm_level_change (data->values, N_READINGS, &change);
  data->sink += change.p;
}

/* Of this thread, so that what else the machine does counts as little as it can. */
static double
get_cpu_seconds (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* Milliseconds of the processor, the middle of several runs. */
static double
measure (WorkFunc work, Data *data, guint n_runs)
{
  GArray *times = g_array_new (FALSE, FALSE, sizeof (double));
  double middle;

  work (data);
  for (guint i = 0; i < n_runs; i++)
    {
      double start = get_cpu_seconds (), taken;

      work (data);
      taken = 1e3 * (get_cpu_seconds () - start);
      g_array_append_val (times, taken);
    }
  middle = tm_percentile (times, 50);
  g_array_unref (times);
  return middle;
}

/* What R takes for @expression of the same values, ms; NAN: it is not installed or did not answer. */
static double
ask_r (const char *program, const char *file, const char *expression)
{
  g_autofree char *script = g_strdup_printf (
      "x <- readBin('%s', 'double', %d); t <- sapply(1:5, function(i) system.time({%s})[3]); "
      "cat(1000 * median(t))",
      file, N_READINGS, expression);
  const char *argv[] = { program, "-e", script, NULL };
  g_autofree char *answer = NULL;
  int status = 1;

  if (!g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, &answer, NULL,
                     &status, NULL)
      || status != 0)
    return NAN;
  return g_ascii_strtod (answer, NULL);
}

static void
print_r (const Data *data)
{
  static const struct {
    const char *what, *expression;
  } questions[] = {
    { "R: mean, deviation, lag-1", "mean(x); sd(x); acf(x, 1, plot = FALSE)" },
    { "R: limits from moving ranges", "mean(x) + c(-3, 3) * mean(abs(diff(x))) / 1.128379" },
    { "R: moving average", "stats::filter(0.2 * x, 0.8, 'recursive', init = 25)" },
  };
  g_autofree char *program = g_find_program_in_path ("Rscript");
  g_autofree char *folder = NULL, *file = NULL;

  if (program == NULL)
    {
      printf ("  R is not installed: its times are left out\n");
      return;
    }
  folder = tm_scratch_new ();
  file = g_build_filename (folder, "readings", NULL);
  if (g_file_set_contents (file, (const char *)data->values, N_READINGS * sizeof (double), NULL))
    for (guint i = 0; i < G_N_ELEMENTS (questions); i++)
      printf ("  %-44s %9.2f ms\n", questions[i].what, ask_r (program, file, questions[i].expression));
  tm_scratch_remove (folder);
}

static void
fill_data (Data *data)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);

  gsl_rng_set (random, 31);
  data->x = g_new (double, N_READINGS);
  data->values = g_new (double, N_READINGS);
  data->ewma = g_new0 (TmEwmaPoint, N_READINGS);
  data->cusum = g_new0 (TmCusumPoint, N_READINGS);
  for (guint i = 0; i < N_READINGS; i++)
    {
      data->x[i] = i + 1.0;
      data->values[i] = round ((25 + gsl_ran_gaussian_ziggurat (random, 0.001)) * 1e5) / 1e5;
    }
  gsl_rng_free (random);
}

static void
free_data (Data *data)
{
  g_free (data->x);
  g_free (data->values);
  g_free (data->ewma);
  g_free (data->cusum);
}

int
main (void)
{
  static const struct {
    const char *what;
    WorkFunc work;
  } parts[] = {
    { "mean, deviation, lag-1 autocorrelation", run_summary },
    { "limits from moving ranges", run_limits },
    { "moving average with exact limits", run_ewma },
    { "cumulative sums", run_cusum },
  };
  TmFigures *figures = tm_figures_new ("1,000,000 readings of one feature");
  Data data = { 0 };
  double library, ours = 0;

  fill_data (&data);
  library = measure (run_library, &data, N_RUNS);
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      double taken = measure (parts[i].work, &data, N_RUNS);

      ours += taken;
      tm_figures_add (figures, parts[i].what, taken, "ms", TM_NO_BOUND);
    }
  tm_figures_add (figures, "together", ours, "ms", TM_NO_BOUND);
  tm_figures_add (figures, "GSL: mean, deviation, lag-1", library, "ms", TM_NO_BOUND);
  tm_figures_add (figures, "together, as a multiple of GSL's", ours / library, "", MOST_RATIO);
  tm_figures_add (figures, "individuals chart with each point's limits", measure (run_chart, &data, 3), "ms",
                  TM_NO_BOUND);
  tm_figures_add (figures, "line, Theil-Sen, Mann-Kendall", measure (run_trend, &data, 3) / 1e3, "s",
                  MOST_RANK);
  tm_figures_add (figures, "test of normality", measure (run_normality, &data, 3) / 1e3, "s", MOST_RANK);
  tm_figures_add (figures, "change of level", measure (run_change, &data, 3) / 1e3, "s", MOST_RANK);
  print_r (&data);
  free_data (&data);
  return tm_figures_finish (figures);
}
