/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-chart: the pictures of a batch of 1,000,000 readings of one feature, and a view of 1280×720 onto a
 * grid of 2,000 pieces × 200 features, drawn on an image: processor time until they are ready, and of a
 * frame.
 */

#include <math.h>
#include <time.h>

#include "bench-figures.h"
#include "plot-chart.h"
#include "plot-grid.h"
#include "plot-mark.h"

#define N_READINGS 1000000
#define N_EVENTS   20
#define N_PIECES   2000
#define N_FEATURES 200
#define N_FRAMES   60

#define FRAME_MS      8.0
#define READY_SECONDS 1.0

#define WIDTH  1280
#define HEIGHT 720
#define CELL_X 30 /* from one cell to the next, pixels */
#define CELL_Y 26

/* -------- A batch, invented -------- */

/* Twenty tools that wear by 8 µm each, with a scatter of 2 µm. */
static double
make_size (GRand *rand, guint i)
{
  double scatter = -6.0;

  for (guint k = 0; k < 12; k++)
    scatter += g_rand_double (rand);
  return -4.0e6 + 8.0e6 * (i % (N_READINGS / N_EVENTS)) / (N_READINGS / N_EVENTS) + 2.0e6 * scatter;
}

typedef struct {
  TmFeature *feature;
  TmPiece piece;
  TmEvent event;
  TmBatch batch;
} Case;

static void
fill_points (Case *c)
{
  TmSeries *series = &c->batch.series;
  GRand *rand = g_rand_new_with_seed (5);

  series->n_points = series->n_measured = N_READINGS;
  series->points = g_new0 (TmSeriesPoint, N_READINGS);
  for (guint i = 0; i < N_READINGS; i++)
    {
      const double size = make_size (rand, i);

      series->points[i]
          = (TmSeriesPoint) { .piece = &c->piece,
                              .mean = size,
                              .smallest = size - 0.5e6,
                              .largest = size + 0.5e6,
                              .verdict = fabs (size) > 10.0e6 ? TM_VERDICT_OUT : TM_VERDICT_IN };
    }
  g_rand_free (rand);
}

static void
fill_events (Case *c)
{
  TmSeries *series = &c->batch.series;

  series->n_events = series->n_breaks = N_EVENTS - 1;
  series->events = g_new0 (TmSeriesEvent, N_EVENTS);
  series->breaks = g_new0 (guint, N_EVENTS);
  for (guint i = 0; i + 1 < N_EVENTS; i++)
    {
      series->breaks[i] = (i + 1) * (N_READINGS / N_EVENTS);
      series->events[i] = (TmSeriesEvent) { &c->event, series->breaks[i], TRUE };
    }
}

/* As the batch of a job holds them. */
static void
fill_charts (Case *c)
{
  TmBatch *batch = &c->batch;
  g_autofree double *values = g_new (double, N_READINGS);
  TmChartInput input = { values, N_READINGS, batch->series.breaks, batch->series.n_breaks, 1, 0 };

  for (guint i = 0; i < N_READINGS; i++)
    values[i] = batch->series.points[i].mean;
  tm_chart (&input, &batch->chart);
  batch->ewma = g_new0 (TmEwmaPoint, N_READINGS);
  batch->cusum = g_new0 (TmCusumPoint, N_READINGS);
  tm_ewma (values, N_READINGS, batch->chart.centre, batch->chart.sigma, TM_BATCH_LAMBDA, TM_BATCH_EWMA_REACH,
           batch->ewma);
  for (guint i = 0; i < N_READINGS; i++)
    values[i] = (values[i] - batch->chart.centre) / batch->chart.sigma;
  tm_cusum (values, N_READINGS, 0.0, 1.0, TM_BATCH_CUSUM_K, batch->cusum);
  batch->location_hits = tm_run_rules (values, N_READINGS, batch->series.breaks, batch->series.n_breaks,
                                       TM_RULE_BIT (TM_RULE_BEYOND_3S) | TM_RULE_BIT (TM_RULE_8_ONE_SIDE));
  batch->dispersion_hits = g_array_new (FALSE, FALSE, sizeof (TmRuleHit));
  batch->first_ewma = batch->first_cusum = 100;
}

static void
case_init (Case *c)
{
  TmSeries *series = &c->batch.series;

  *c = (Case) { .feature = tm_feature_new () };
  c->feature->balloon = "1";
  c->feature->kind = TM_KIND_BORE;
  c->feature->unit = TM_UNIT_MM;
  c->feature->requirement = "25 ±0.01";
  c->feature->places = 1;
  c->feature->lower = tm_quantity_new (G_GINT64_CONSTANT (24990000000), TM_UNIT_MM, 3);
  c->feature->upper = tm_quantity_new (G_GINT64_CONSTANT (25010000000), TM_UNIT_MM, 3);
  c->piece.serial = "A-000001";
  c->event = (TmEvent) { .kind = "tool", .note = "new insert", .amount = "" };
  series->feature = c->feature;
  series->place = 1;
  series->reference = G_GINT64_CONSTANT (25000000000);
  series->limits = tm_feature_limits (c->feature);
  series->lower = -10.0e6;
  series->upper = 10.0e6;
  series->guard = 2.0e6;
  c->batch.options.group_size = 1;
  c->batch.trend.status = TM_TREND_TOO_FEW;
  fill_points (c);
  fill_events (c);
  fill_charts (c);
}

static void
case_clear (Case *c)
{
  tm_batch_clear (&c->batch);
  tm_feature_free (c->feature);
}

/* -------- Frames -------- */

/* Of this thread on a processor, seconds: others that use the machine are not counted. */
static double
get_busy_seconds (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

typedef void (*DrawFrame) (gconstpointer data, cairo_t *cr, guint frame);

static double
time_frames (DrawFrame draw, gconstpointer data)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  GArray *times = g_array_new (FALSE, FALSE, sizeof (double));
  double middle;

  for (guint i = 0; i < N_FRAMES; i++)
    {
      cairo_t *cr = cairo_create (surface);
      const double from = get_busy_seconds ();
      double ms;

      draw (data, cr, i);
      cairo_surface_flush (surface);
      ms = 1e3 * (get_busy_seconds () - from);
      g_array_append_val (times, ms);
      g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
      cairo_destroy (cr);
    }
  middle = tm_percentile (times, 50.0);
  g_array_unref (times);
  cairo_surface_destroy (surface);
  return middle;
}

static void
draw_run (gconstpointer data, cairo_t *cr, guint frame)
{
  tm_chart_plot_draw (data, cr, 860, 400, (gint)frame * 1000, tm_theme_light ());
}

static void
draw_dispersion (gconstpointer data, cairo_t *cr, guint frame)
{
  tm_chart_plot_draw_dispersion (data, cr, 860 - frame % 2, 160, tm_theme_light ());
}

static void
draw_histogram (gconstpointer data, cairo_t *cr, guint frame)
{
  tm_chart_plot_draw_histogram (data, cr, 430 - frame % 2, 280, tm_theme_light ());
}

static void
draw_probability (gconstpointer data, cairo_t *cr, guint frame)
{
  tm_chart_plot_draw_probability (data, cr, 430 - frame % 2, 280, tm_theme_light ());
}

static void
measure_chart (TmFigures *figures, const Case *c, guint show, const char *words)
{
  g_autofree char *ready = g_strdup_printf ("ready to draw, %s", words);
  g_autofree char *run = g_strdup_printf ("run chart, %s", words);
  const double from = get_busy_seconds ();
  g_autoptr (TmChartPlot) plot = tm_chart_plot_new (&c->batch, show);

  tm_figures_add (figures, ready, get_busy_seconds () - from, "s", READY_SECONDS);
  tm_figures_add (figures, run, time_frames (draw_run, plot), "ms", FRAME_MS);
  tm_figures_add (figures, "dispersion chart", time_frames (draw_dispersion, plot), "ms", FRAME_MS);
  tm_figures_add (figures, "histogram", time_frames (draw_histogram, plot), "ms", FRAME_MS);
  tm_figures_add (figures, "probability plot", time_frames (draw_probability, plot), "ms", FRAME_MS);
}

/* -------- The grid -------- */

typedef struct {
  TmGridCell *cells;
} Grid;

/* One view, scrolled on with each frame. */
static void
draw_view (gconstpointer data, cairo_t *cr, guint frame)
{
  const Grid *grid = data;
  const guint first = frame * 7 % (N_PIECES - WIDTH / CELL_X),
              row = frame * 3 % (N_FEATURES - HEIGHT / CELL_Y);

  for (guint j = 0; j <= HEIGHT / CELL_Y; j++)
    for (guint i = 0; i <= WIDTH / CELL_X && first + i < N_PIECES; i++)
      tm_grid_cell_draw (&grid->cells[(first + i) * N_FEATURES + MIN (row + j, N_FEATURES - 1)], cr,
                         i * CELL_X, j * CELL_Y, CELL_X - 3, CELL_Y - 3, i == 3 && j == 3, tm_theme_light ());
}

static void
fill_grid (Grid *grid, gboolean worst)
{
  GRand *rand = g_rand_new_with_seed (9);

  for (guint i = 0; i < N_PIECES * N_FEATURES; i++)
    {
      const double chance = g_rand_double (rand);
      TmGridCell *cell = &grid->cells[i];

      *cell = (TmGridCell) {
        .used = (gfloat)g_rand_double (rand), .verdict = TM_VERDICT_IN, .due = TRUE, .point = TM_POINT_NONE
      };
      if (worst || chance < 0.05)
        cell->verdict = TM_VERDICT_TOO_CLOSE;
      else if (chance < 0.07)
        *cell = (TmGridCell) { .used = 1.5f, .verdict = TM_VERDICT_OUT, .due = TRUE, .point = TM_POINT_LEFT };
      else if (chance < 0.3)
        *cell = (TmGridCell) { .used = NAN, .verdict = TM_VERDICT_NOT_MEASURED, .point = TM_POINT_NONE };
    }
  g_rand_free (rand);
}

static void
measure_grid (TmFigures *figures)
{
  Grid grid = { g_new0 (TmGridCell, N_PIECES * N_FEATURES) };

  fill_grid (&grid, FALSE);
  tm_figures_add (figures, "grid of 2,000 by 200, one view", time_frames (draw_view, &grid), "ms", FRAME_MS);
  fill_grid (&grid, TRUE);
  tm_figures_add (figures, "the same, every cell hatched", time_frames (draw_view, &grid), "ms", FRAME_MS);
  g_free (grid.cells);
}

int
main (void)
{
  TmFigures *figures
      = tm_figures_new ("the pictures of a batch, 1,000,000 readings; the middle of 60 frames");
  Case c;

  case_init (&c);
  measure_chart (figures, &c, TM_CHART_SHOW_GUARD | TM_CHART_SHOW_TREND, "plain");
  measure_chart (figures, &c,
                 TM_CHART_SHOW_GUARD | TM_CHART_SHOW_TREND | TM_CHART_SHOW_CONTROL | TM_CHART_SHOW_EWMA
                     | TM_CHART_SHOW_CUSUM,
                 "with everything");
  case_clear (&c);
  measure_grid (figures);
  return tm_figures_finish (figures);
}
