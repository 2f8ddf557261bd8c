/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "support-batch.h"

#include <gsl/gsl_randist.h>
#include <gsl/gsl_rng.h>
#include <math.h>

#include "core-batch.h"

#define COUNTS_PER_UM 1e6
#define FIRST_LENGTH  256
#define LONGEST       (1u << 20)

static gsl_rng *
new_random (guint32 seed)
{
  gsl_rng *random = gsl_rng_alloc (gsl_rng_mt19937);

  gsl_rng_set (random, seed);
  return random;
}

/* -------- Run lengths -------- */

typedef struct {
  double *z;
  TmEwmaPoint *ewma;
  TmCusumPoint *cusum;
  guint room;
} Run;

/* The number of the first point that speaks; 0: none of the first @n. */
static guint
find_signal (const SupportChartCase *given, Run *run, guint n)
{
  const double limit = given->l * sqrt (given->lambda / (2 - given->lambda));

  if (given->chart == SUPPORT_CHART_RULES)
    {
      g_autoptr (GArray) hits = tm_run_rules (run->z, n, NULL, 0, given->rules);

      return hits->len > 0 ? g_array_index (hits, TmRuleHit, 0).point + 1 : 0;
    }
  if (given->chart == SUPPORT_CHART_EWMA)
    tm_ewma (run->z, n, 0, 1, given->lambda, given->l, run->ewma);
  else
    tm_cusum (run->z, n, 0, 1, given->k, run->cusum);
  for (guint i = 0; i < n; i++)
    if (given->chart == SUPPORT_CHART_EWMA ? fabs (run->ewma[i].value) > limit
                                           : MAX (run->cusum[i].high, run->cusum[i].low) > given->h)
      return i + 1;
  return 0;
}

static guint
find_length (const SupportChartCase *given, double shift, gsl_rng *random, Run *run)
{
  guint length = 0, filled = 0;

  for (guint n = FIRST_LENGTH; length == 0 && n <= LONGEST; n *= 2)
    {
      if (n > run->room)
        {
          run->room = n;
          run->z = g_renew (double, run->z, n);
          run->ewma = g_renew (TmEwmaPoint, run->ewma, n);
          run->cusum = g_renew (TmCusumPoint, run->cusum, n);
        }
      for (; filled < n; filled++)
        run->z[filled] = shift + gsl_ran_gaussian_ziggurat (random, 1);
      length = find_signal (given, run, n);
    }
  return length > 0 ? length : LONGEST;
}

double
support_run_length (const SupportChartCase *given, double shift, guint runs, guint32 seed, double *se)
{
  gsl_rng *random = new_random (seed);
  Run run = { 0 };
  double mean = 0, squares = 0;

  for (guint i = 0; i < runs; i++)
    {
      double length = find_length (given, shift, random, &run), away = length - mean;

      mean += away / (i + 1);
      squares += away * (length - mean);
    }
  *se = sqrt (squares / (runs - 1.0) / runs);
  g_free (run.z);
  g_free (run.ewma);
  g_free (run.cusum);
  gsl_rng_free (random);
  return mean;
}

/* -------- Wearing tools -------- */

typedef struct {
  guint n;
  double start, slope; /* µm, µm a piece: the mean of piece i, from 1, is start + slope i */
  double meets;        /* the piece at which it meets the guarded limit */
} Tool;

#define LIMIT_UM   20.0
#define SCATTER_UM 1.0

static Tool
draw_tool (gsl_rng *random, double limit, SupportWear *wear)
{
  Tool tool = { .n = 10 + (guint)gsl_rng_uniform_int (random, 31) };
  double se = SCATTER_UM / sqrt (tool.n * ((double)tool.n * tool.n - 1) / 12);
  double ratio = 5 + 10 * gsl_rng_uniform (random), direction = gsl_rng_uniform (random) < 0.5 ? 1 : -1;

  tool.slope = direction * ratio * se;
  tool.start = -direction * 10 * gsl_rng_uniform (random);
  tool.meets = (direction * limit - tool.start) / tool.slope;
  wear->ratio += ratio;
  return tool;
}

static void
count_forecast (const TmForecast *forecast, double meets, SupportWear *wear)
{
  wear->given += forecast->given;
  wear->held += forecast->given && forecast->low <= meets && meets <= forecast->high;
}

SupportWear
support_wear_lines (guint n, guint32 seed)
{
  gsl_rng *random = new_random (seed);
  SupportWear wear = { .n = n };

  for (guint i = 0; i < n; i++)
    {
      Tool tool = draw_tool (random, LIMIT_UM, &wear);
      double x[64], y[64];
      TmTrend trend;
      TmForecast forecast;

      for (guint k = 0; k < tool.n; k++)
        {
          x[k] = k + 1.0;
          y[k] = tool.start + tool.slope * x[k] + gsl_ran_gaussian (random, SCATTER_UM);
        }
      tm_trend_line (x, y, tool.n, &trend);
      tm_forecast (&trend, -LIMIT_UM, LIMIT_UM, &forecast);
      count_forecast (&forecast, tool.meets, &wear);
    }
  wear.ratio /= n;
  gsl_rng_free (random);
  return wear;
}

static const char *
number_text (TmJob *job, guint number)
{
  g_autofree char *text = g_strdup_printf ("%u", number);

  return tm_job_intern (job, text);
}

/* A bore of 25 mm ± 20 µm, @n pieces, a gauge of 1 µm error with a repeatability of 0.3 µm. */
static TmFeature *
fill_job (TmJob *job, guint n)
{
  TmGauge *gauge = tm_gauge_new ();
  TmMethod *method = tm_method_new ();
  TmFeature *feature = tm_feature_new ();

  gauge->tag = "G";
  gauge->unit = TM_UNIT_MM;
  gauge->resolution = tm_quantity_new (100000, TM_UNIT_MM, 4);
  gauge->error_limit = tm_quantity_new (1000000, TM_UNIT_MM, 3);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  method->name = "M";
  g_ptr_array_add (method->gauges, (gpointer)gauge->tag);
  method->repeatability = tm_quantity_new (300000, TM_UNIT_MM, 4);
  method->repeatability_dof = tm_quantity_new (30, TM_UNIT_COUNT, 0);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  feature->balloon = "1";
  feature->kind = TM_KIND_BORE;
  feature->unit = TM_UNIT_MM;
  feature->lower = tm_quantity_new (24980000000, TM_UNIT_MM, 3);
  feature->upper = tm_quantity_new (25020000000, TM_UNIT_MM, 3);
  feature->method = "M";
  feature->places = 1;
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  for (guint i = 1; i <= n; i++)
    {
      TmPiece *piece = tm_piece_new ();

      piece->serial = number_text (job, i);
      g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
    }
  return feature;
}

static void
read_piece (TmJob *job, TmFeature *feature, guint index, double um)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = g_ptr_array_index (job->pieces, index);
  reading->row.feature = feature;
  reading->place = 1;
  /* A tenth of a micrometre is what the gauge shows. */
  reading->value = tm_quantity_new (25000000000 + (gint64)llround (um * 10) * 100000, TM_UNIT_MM, 4);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

static const TmBatchOptions brief = { .brief = TRUE };

SupportWear
support_wear_batches (guint n, guint32 seed)
{
  gsl_rng *random = new_random (seed);
  SupportWear wear = { .n = n };
  double guard = NAN;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (TmJob) job = tm_job_new ();
      g_auto (TmBatch) batch = { 0 };
      Tool tool = draw_tool (random, isnan (guard) ? LIMIT_UM : LIMIT_UM - guard, &wear);
      TmFeature *feature = fill_job (job, tool.n);

      for (guint k = 0; k < tool.n; k++)
        read_piece (job, feature, k,
                    tool.start + tool.slope * (k + 1) + gsl_ran_gaussian (random, SCATTER_UM));
      g_assert_true (tm_batch_init (&batch, job, feature, 1, &brief, NULL, NULL));
      if (isnan (guard))
        {
          guard = batch.series.guard / COUNTS_PER_UM;
          tool.meets = (copysign (LIMIT_UM - guard, tool.slope) - tool.start) / tool.slope;
        }
      wear.changed += batch.change.found;
      count_forecast (&batch.forecast, tool.meets, &wear);
    }
  wear.ratio /= n;
  gsl_rng_free (random);
  return wear;
}

/* -------- Corrections -------- */

#define LOT 60

static void
record_offset (TmJob *job, guint before)
{
  TmEvent *event = tm_event_new ();

  event->kind = "offset";
  event->before_piece = before < LOT ? number_text (job, before + 1) : "";
  tm_job_add_event (job, event);
}

/* What the policy changes of the next piece's size, after piece @at was measured as @um. */
static double
find_correction (TmJob *job, TmFeature *feature, SupportPolicy policy, guint at, double um)
{
  g_auto (TmBatch) batch = { 0 };

  if (policy == SUPPORT_NEVER)
    return 0;
  if (policy == SUPPORT_EVERY)
    return -round (um);
  read_piece (job, feature, at, um);
  g_assert_true (tm_batch_init (&batch, job, feature, 1, &brief, NULL, NULL));
  if (batch.offset.status != TM_OFFSET_ADVISED)
    return 0;
  record_offset (job, at + 1);
  return batch.offset.size_change / COUNTS_PER_UM;
}

static double
run_lot (const SupportMachine *machine, SupportPolicy policy, gsl_rng *random, double *corrections)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *feature = fill_job (job, LOT);
  double offset = 0, squares = 0;

  for (guint i = 0; i < LOT; i++)
    {
      double level = machine->set_up + machine->wear * i + (i >= LOT / 2 ? machine->shift : 0);
      double um = SCATTER_UM * level + offset + gsl_ran_gaussian (random, SCATTER_UM), change;

      squares += um * um / (SCATTER_UM * SCATTER_UM);
      change = find_correction (job, feature, policy, i, um);
      offset += change;
      *corrections += fabs (change) > 0;
    }
  return squares;
}

double
support_correct (const SupportMachine *machine, SupportPolicy policy, guint lots, guint32 seed,
                 double *corrections)
{
  gsl_rng *random = new_random (seed);
  double squares = 0, n = 0;

  for (guint i = 0; i < lots; i++)
    squares += run_lot (machine, policy, random, &n);
  if (corrections != NULL)
    *corrections = n / lots;
  gsl_rng_free (random);
  return sqrt (squares / lots / LOT);
}
