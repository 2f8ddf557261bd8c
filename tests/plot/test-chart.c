/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures of a batch: what they hold ready, their words, and where they put their ink.
 */

#include "plot-support.h"

#include "plot-chart-private.h"

#define BASIC (TM_CHART_SHOW_GUARD | TM_CHART_SHOW_TREND)
#define ALL   (BASIC | TM_CHART_SHOW_CONTROL | TM_CHART_SHOW_EWMA | TM_CHART_SHOW_CUSUM)

/* A scatter that is the same each time, about -1 to 1. */
static double
scatter (guint i)
{
  const double mixed = sin (i * 12.9898 + 4.1) * 43758.5453;

  return 2.0 * (mixed - floor (mixed)) - 1.0;
}

typedef double (*SizeOf) (guint piece);

/* A bore of 25.000 to 25.021 mm with two stations, invented sizes; NAN leaves a piece out. */
static TmJob *
make_batch_job (TmFeature **bore, guint n, SizeOf size_of)
{
  TmJob *job = make_job ();

  *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", "mouth bottom");
  (*bore)->requirement = "Ø25 H7";
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *serial = g_strdup_printf ("%03u", i + 1);
      const double size = size_of (i);
      TmPiece *piece = first_piece (job);

      if (i > 0)
        {
          piece = tm_piece_new ();
          piece->serial = tm_job_intern (job, serial);
          g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
        }
      if (isnan (size))
        continue;
      for (guint k = 0; k < 2; k++)
        {
          g_autofree char *value = g_strdup_printf ("%.4f", size + (k == 0 ? 0.0008 : -0.0008));

          add_reading_of (job, piece, *bore, k == 0 ? "mouth" : "bottom", value);
        }
    }
  return job;
}

static void
add_event (TmJob *job, const char *before, const char *kind, const char *note)
{
  TmEvent *event = tm_event_new ();

  event->before_piece = before;
  event->kind = kind;
  event->note = note;
  tm_job_add_event (job, event);
}

/* Wears by 0.3 µm a piece from a new insert on. */
static double
size_of_wearing (guint i)
{
  return i < 12 ? 25.0065 + 0.0006 * scatter (i) : 25.004 + 0.0003 * (i - 12) + 0.0006 * scatter (i);
}

static double
size_of_steady (guint i)
{
  return 25.0105 + 0.0012 * scatter (i);
}

static double
size_of_out (guint i)
{
  return i == 7 ? 25.0235 : size_of_steady (i);
}

static double
size_of_equal (guint i)
{
  return i == 3 ? NAN : 25.010;
}

static double
size_of_none (guint i)
{
  return i < G_MAXUINT ? NAN : 0.0;
}

/* -------- The envelope -------- */

static double
get_value_cb (gconstpointer data, gsize at)
{
  return ((const double *)data)[at];
}

/* Against the plain way, over ranges of every kind. */
static void
test_envelope (void)
{
  enum { N = 5000 };
  g_autofree double *values = g_new (double, N);
  g_autoptr (TmEnvelope) envelope = NULL;

  for (guint i = 0; i < N; i++)
    values[i] = i % 7 == 3 ? NAN : scatter (i) * (i % 100);
  envelope = tm_envelope_new (get_value_cb, values, N);
  for (guint i = 0; i < 400; i++)
    {
      const gsize from = i * 37 % N, to = MIN (N, from + i * i % 4000);
      const TmSpan span = tm_envelope_span (envelope, from, to);
      double low = NAN, high = NAN, sum = 0.0;
      guint n = 0;

      for (gsize k = from; k < to; k++)
        if (!isnan (values[k]))
          {
            tm_range_stretch (&low, &high, values[k]);
            sum += values[k];
            n++;
          }
      g_assert_cmpuint (span.n, ==, n);
      if (n == 0)
        continue;
      g_assert_cmpfloat (span.low, ==, low);
      g_assert_cmpfloat (span.high, ==, high);
      /* Summed in another order: rounding of 5,000 terms. */
      g_assert_cmpfloat_with_epsilon (span.sum, sum, 1e-8);
    }
  g_assert_cmpuint (tm_envelope_span (envelope, 3, 3).n, ==, 0);
  g_assert_cmpuint (tm_envelope_span (envelope, 4990, 99999).n, ==, 9);
}

/* -------- What is held ready -------- */

static void
test_items (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 20, size_of_out);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;

  add_event (job, "011", "tool", "new insert");
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, TM_CHART_SHOW_GUARD);
  g_assert_cmpuint (plot->n_items, ==, 20);
  g_assert_cmpuint (plot->outs->len, ==, 1);
  g_assert_cmpuint (g_array_index (plot->outs, guint, 0), ==, 7);
  g_assert_cmpint (plot->items[7].point, ==, TM_POINT_UP);
  g_assert_cmpuint (plot->items[9].stretch, ==, 0);
  g_assert_cmpuint (plot->items[10].stretch, ==, 1);
  /* Two stations 1.6 µm apart; a picometre is a count. */
  g_assert_cmpfloat_with_epsilon (plot->items[3].high - plot->items[3].low, 1.6e6, 1.0);
  g_assert_cmpfloat (plot->slots, ==, 20.0);
}

static double
size_of_begun (guint i)
{
  return i < 30 ? size_of_steady (i) : NAN;
}

/* A large job that has just begun is shown as far as it has come, and an event far off at the edge. */
static void
test_begun (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 500, size_of_begun);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;

  add_event (job, "500", "tool", "new insert");
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, TM_CHART_SHOW_GUARD);
  g_assert_cmpfloat (plot->slots, >, 30.0);
  g_assert_cmpfloat (plot->slots, <, 45.0);
  g_assert_cmpint (tm_chart_plot_piece_at (plot, 700, 300, 690), <, 45);
  g_assert_cmpfloat (g_array_index (plot->events, TmFrameEvent, 0).at, ==, 499.0);
  for (gint focus = -1; focus < 500; focus += 50)
    {
      Picture picture = make_picture (60, 60, tm_theme_light ());

      tm_chart_plot_draw (plot, picture.cr, 700, 300, focus, tm_theme_light ());
      clear_picture (&picture);
    }
}

/* Groups stand in the middle of their pieces, and none goes over an event. */
static void
test_groups (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 20, size_of_steady);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  g_autofree char *name = NULL;

  bore->group_size = 5;
  add_event (job, "009", "tool", "");
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, ALL);
  /* 1-5, 6-8, 9-13, 14-18, 19-20. */
  g_assert_cmpuint (plot->n_items, ==, 5);
  g_assert_cmpfloat (plot->items[0].x, ==, 2.0);
  g_assert_cmpfloat (plot->items[1].x, ==, 6.0);
  g_assert_cmpfloat (plot->items[4].x, ==, 18.5);
  name = tm_chart_item_name (plot, 1);
  g_assert_cmpstr (name, ==, "006 to 008");
  /* Unequal groups: each with limits of its own. */
  g_assert_cmpuint (plot->location_runs->len, >, 2);
}

static void
test_forecast (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 34, size_of_wearing);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  g_autofree char *name = NULL;
  double at;

  add_event (job, "013", "tool", "new insert");
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, BASIC);
  g_assert_true (plot->foretold);
  g_assert_cmpuint (plot->trend_from, ==, 12);
  /* The line that is drawn meets the guard where the forecast says. */
  at = plot->ahead.mean_y + plot->ahead.slope * (batch.forecast.at - plot->ahead.mean_x);
  g_assert_cmpfloat_with_epsilon (at, batch.series.upper - batch.series.guard, 1.0);
  g_assert_cmpfloat (plot->slots, >, batch.forecast.at);
  /* Serial numbers go on as they are. */
  name = tm_chart_piece_name (plot, 51);
  g_assert_cmpstr (name, ==, "052");
}

static void
test_marks (void)
{
  static const TmRuleHit hits[] = {
    { 3, TM_RULE_BEYOND_3S },
    { 4, TM_RULE_BEYOND_3S },
    { 4, TM_RULE_2_OF_3_BEYOND_2S },
    { 6, TM_RULE_BEYOND_3S },
  };
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 20, size_of_steady);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  g_autofree char *rules = NULL, *words = NULL;
  const TmChartMark *marks;

  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  g_array_set_size (batch.location_hits, 0);
  g_array_append_vals (batch.location_hits, hits, G_N_ELEMENTS (hits));
  plot = tm_chart_plot_new (&batch, BASIC);
  marks = (const TmChartMark *)(gpointer)plot->location_marks->data;
  g_assert_cmpuint (plot->location_marks->len, ==, 3);
  g_assert_cmpuint (marks[1].rules, ==,
                    TM_RULE_BIT (TM_RULE_BEYOND_3S) | TM_RULE_BIT (TM_RULE_2_OF_3_BEYOND_2S));
  /* What spoke at the point before is no news. */
  g_assert_cmpuint (marks[1].fresh, ==, TM_RULE_BIT (TM_RULE_2_OF_3_BEYOND_2S));
  g_assert_cmpuint (marks[2].fresh, ==, TM_RULE_BIT (TM_RULE_BEYOND_3S));
  g_assert_cmpuint (plot->location_counts[TM_RULE_BEYOND_3S], ==, 3);
  rules = tm_chart_rules_text (marks[1].rules, plot->location_counts);
  g_assert_true (g_str_has_prefix (rules, "one point beyond 3 sigma (3 times); "));
  g_assert_null (strstr (rules, "(1 time"));
  /* Points in a row are said as one. */
  words = tm_chart_plot_describe (plot);
  g_assert_nonnull (strstr (words, " At pieces 004 to 005, 007: one point beyond 3 sigma. At piece 005: "));
}

/* 27 values of a middle half 8 steps wide: 2 · 8 / 27^(1/3) = 5.33 steps, whole steps of reading: 5. */
static double
size_of_spread (guint i)
{
  static const int steps[]
      = { 0, 1, 2, 3, 4, 4, 4, 5, 5, 6, 7, 8, 8, 9, 9, 10, 10, 11, 12, 12, 12, 13, 14, 15, 16, 17, 18 };

  return 25.001 + 0.001 * steps[i];
}

static void
test_bins (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 27, size_of_spread);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  guint sum = 0;

  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, BASIC);
  g_assert_cmpint (plot->bins.rule, ==, TM_BINS_SPREAD);
  g_assert_cmpfloat_with_epsilon (plot->bins.width, 5e6 * 1000 / 1000, 1e3);
  for (guint i = 0; i < plot->bins.n; i++)
    sum += plot->bins.counts[i];
  g_assert_cmpuint (sum, ==, 27);
  g_assert_cmpuint (plot->quantiles->len, ==, 27);
}

static double
size_of_slip (guint i)
{
  return i == 20 ? 28.010 : size_of_steady (i);
}

/* A slip of the decimal far off leaves the rest to be seen: it is in no bar, and is counted. */
static void
test_far (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 40, size_of_slip);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  g_autofree char *words = NULL;
  guint sum = 0;

  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, ALL);
  for (guint i = 0; i < plot->bins.n; i++)
    sum += plot->bins.counts[i];
  g_assert_cmpuint (sum, ==, 39);
  g_assert_cmpuint (plot->bins.n, >, 3);
  words = tm_chart_plot_describe_histogram (plot);
  g_assert_nonnull (strstr (words, " 1 lies beyond the picture."));
}

/* One size to all: the scatter's axis is a step of the limits' last digit, not a picometre. */
static void
test_equal (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 8, size_of_equal);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;

  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, ALL);
  g_assert_true (plot->has_dispersion);
  g_assert_cmpfloat_with_epsilon (plot->dispersion_axis.high, 1.15e6, 1.0);
}

static double
size_of_coarse (guint i)
{
  return 3.2 + 0.1 * scatter (i);
}

/* Control limits of a feature with whole limits have the digits that its scatter wants: of 0.06 mm, two. */
static void
test_figures (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 30, size_of_coarse);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  g_autofree char *text = NULL;

  bore->lower = quantity ("3", TM_UNIT_MM);
  bore->upper = quantity ("", TM_UNIT_MM);
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, ALL);
  g_assert_cmpuint (plot->figures, ==, 2);
  text = tm_chart_size_text (plot, 3.456e9 - (double)batch.series.reference);
  g_assert_cmpstr (text, ==, "3.46");
}

static double
size_of_form (guint i)
{
  return 0.01 + 0.008 * scatter (i);
}

/* What cannot be below zero has no lower control limit there, drawn or said. */
static void
test_zero_bounded (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 30, size_of_form);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  g_autofree char *words = NULL;

  bore->kind = TM_KIND_FORM;
  bore->lower = quantity ("", TM_UNIT_MM);
  bore->upper = quantity ("0.05", TM_UNIT_MM);
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, ALL);
  g_assert_cmpuint (plot->location_runs->len, ==, 1);
  g_assert_true (isnan (g_array_index (plot->location_runs, TmChartRun, 0).lower));
  words = tm_chart_plot_describe (plot);
  g_assert_nonnull (strstr (words, " The upper control limit is 0.0"));
  g_assert_null (strstr (words, "-0.0"));
}

/* -------- Words -------- */

static void
test_words (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 12, size_of_out);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  g_autofree char *words = NULL;

  add_event (job, "001", "lot", "bar 17");
  add_event (job, "", "other", "end of shift");
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, BASIC);
  words = tm_chart_plot_describe (plot);
  g_assert_true (g_str_has_prefix (words, "Ø25 H7 by piece. 12 of 12 pieces measured, from 25.0"));
  g_assert_nonnull (strstr (words, " The limits are 25.000 and 25.021 mm. Piece 008 lies outside."
                                   " Before piece 001: bar 17. After the last piece: end of shift."
                                   " At piece 008: one point beyond 3 sigma."));
  g_assert_nonnull (strstr (words, "No drift is shown."));
}

static void
assert_speakable (char *words)
{
  g_assert_true (g_str_has_suffix (words, "."));
  g_assert_null (strstr (words, "nan"));
  g_assert_null (strstr (words, "inf"));
  g_assert_null (strstr (words, "  "));
  g_free (words);
}

/* -------- Ink -------- */

typedef void (*Draw) (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                      const TmTheme *theme);

static void
draw_run (const TmChartPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  tm_chart_plot_draw (plot, cr, width, height, 0, theme);
}

static const Draw pictures[] = { draw_run, tm_chart_plot_draw_dispersion, tm_chart_plot_draw_histogram,
                                 tm_chart_plot_draw_probability };

static void
draw_everything (const TmChartPlot *plot)
{
  static const double sizes[] = { NAN, 8.0, 130.0, 900.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (pictures); i++)
    for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
      for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
        {
          Picture picture = make_picture (8, 8, tm_theme_dark ());

          pictures[i](plot, picture.cr, sizes[w], sizes[h], tm_theme_dark ());
          clear_picture (&picture);
        }
  assert_speakable (tm_chart_plot_describe (plot));
  assert_speakable (tm_chart_plot_describe_dispersion (plot));
  assert_speakable (tm_chart_plot_describe_histogram (plot));
  assert_speakable (tm_chart_plot_describe_probability (plot));
}

static void
try_job (guint n, SizeOf size_of, const char *lower, const char *upper, guint group_size)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, n, size_of);
  const TmBatchOptions options = { .group_size = group_size, .rules = TM_RULE_BIT (TM_N_RUN_RULES) - 1 };
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;

  bore->lower = quantity (lower, TM_UNIT_MM);
  bore->upper = quantity (upper, TM_UNIT_MM);
  add_event (job, "001", "lot", "a note that goes on and on and on and on");
  add_event (job, "", "tool", "");
  tm_batch_init (&batch, job, bore, 1, &options, NULL, NULL);
  plot = tm_chart_plot_new (&batch, ALL);
  draw_everything (plot);
}

static void
test_few (void)
{
  static const guint counts[] = { 1, 3, 6, 40 };
  static const SizeOf sizes[] = { size_of_steady, size_of_equal, size_of_none, size_of_wearing, size_of_out };

  for (gsize i = 0; i < G_N_ELEMENTS (counts); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (sizes); k++)
      {
        try_job (counts[i], sizes[k], "25.000", "25.021", 1);
        try_job (counts[i], sizes[k], "", "25.021", 1);
        try_job (counts[i], sizes[k], "", "", i % 2 == 0 ? 1 : 4);
      }
}

static void
test_no_pieces (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *length = add_feature (job, TM_KIND_LENGTH, "", "", NULL);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;

  tm_batch_init (&batch, job, length, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, ALL);
  draw_everything (plot);
  g_assert_cmpint (tm_chart_plot_piece_at (plot, 600, 300, 300), ==, -1);
}

/* Limits from side to side, points in blue, the one outside as an arrow in vermilion. */
static void
test_ink (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 20, size_of_out);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (700, 300, theme);
  guint rows_with_line = 0;

  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, BASIC);
  tm_chart_plot_draw (plot, picture.cr, 700, 300, -1, theme);
  g_assert_cmpuint (count_colour (&picture, &theme->in, 0, 700), >, 100);
  g_assert_cmpuint (count_colour (&picture, &theme->out, 0, 700), >, 10);
  for (int y = 0; y < picture.height; y++)
    {
      guint inked = 0;

      for (int x = 100; x < 690; x++)
        inked += is_colour (get_pixel (&picture, x, y), &theme->text, 40.0);
      rows_with_line += inked > 500;
    }
  g_assert_cmpuint (rows_with_line, >=, 2);
  g_assert_cmpuint (rows_with_line, <=, 6);
  clear_picture (&picture);
}

static guint
count_ink (const Picture *picture, const TmTheme *theme, int left, int right, int top, int bottom)
{
  guint n = 0;

  for (int y = top; y < bottom; y++)
    for (int x = left; x < right; x++)
      n += !is_colour (get_pixel (picture, x, y), &theme->surface, 40.0);
  return n;
}

/* The moving average begins at a mean that one slip has pulled out of the picture: nothing runs along the
 * edge as if it were a size. */
static void
test_edge (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 40, size_of_slip);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (700, 400, theme);

  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, TM_CHART_SHOW_EWMA);
  g_assert_nonnull (plot->ewma);
  tm_chart_plot_draw (plot, picture.cr, 700, 400, -1, theme);
  g_assert_cmpuint (count_ink (&picture, theme, 80, 690, 6, 12), <, 300);
  clear_picture (&picture);
}

static double
size_of_third (guint i)
{
  return i % 3 == 0 ? size_of_steady (i) : NAN;
}

/* Of a long run every third piece is measured: no lone dots of a pixel each, but a line as of a short one. */
static void
test_every_third (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 900, size_of_third);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (460, 200, theme);

  bore->lower = bore->upper = quantity ("", TM_UNIT_MM);
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, 0);
  tm_chart_plot_draw (plot, picture.cr, 460, 200, -1, theme);
  g_assert_cmpuint (count_ink (&picture, theme, 90, 450, 12, 160), >, 2000);
  clear_picture (&picture);
}

/* Long serials keep their ends, which tell them apart, and are not cut by the edge. */
static void
test_long_serials (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 20, size_of_steady);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (700, 300, theme);

  for (guint i = 0; i < job->pieces->len; i++)
    {
      TmPiece *piece = g_ptr_array_index (job->pieces, i);
      g_autofree char *serial = g_strdup_printf ("ORDER-4711-FIXTURE-B-SPINDLE-2-PIECE-%05u", i + 1);

      piece->serial = tm_job_intern (job, serial);
    }
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, BASIC);
  tm_chart_plot_draw (plot, picture.cr, 700, 300, -1, theme);
  g_assert_cmpuint (count_ink (&picture, theme, 0, 200, 275, 300), >, 100);
  g_assert_cmpuint (count_ink (&picture, theme, 0, 1, 275, 300), ==, 0);
  clear_picture (&picture);
}

/* Of events that stand close some have their words, from one end to the other. */
static void
test_many_events (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 40, size_of_steady);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  const TmTheme *theme = tm_theme_light ();
  Picture with = make_picture (900, 400, theme), without = make_picture (900, 400, theme);

  for (guint i = 2; i <= 40; i += 2)
    {
      g_autofree char *before = g_strdup_printf ("%03u", i);

      add_event (job, tm_job_intern (job, before), "tool", "new insert");
    }
  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, BASIC);
  tm_chart_plot_draw (plot, with.cr, 900, 400, -1, theme);
  for (guint i = 0; i < plot->events->len; i++)
    *g_array_index (plot->events, TmFrameEvent, i).label = '\0';
  tm_chart_plot_draw (plot, without.cr, 900, 400, -1, theme);
  for (int x = 90; x < 800; x += 200)
    g_assert_cmpuint (count_ink (&with, theme, x, x + 200, 0, 60), >,
                      count_ink (&without, theme, x, x + 200, 0, 60) + 40);
  clear_picture (&with);
  clear_picture (&without);
}

/* A click on a point finds its piece, from the left one to the right one. */
static void
test_piece_at (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_batch_job (&bore, 20, size_of_steady);
  g_auto (TmBatch) batch = { 0 };
  g_autoptr (TmChartPlot) plot = NULL;
  gint last = -1;
  guint seen = 0;

  tm_batch_init (&batch, job, bore, 1, NULL, NULL, NULL);
  plot = tm_chart_plot_new (&batch, BASIC);
  for (double x = 0.0; x < 700.0; x += 1.0)
    {
      const gint piece = tm_chart_plot_piece_at (plot, 700, 300, x);

      if (piece < 0)
        continue;
      g_assert_cmpint (piece, >=, last);
      seen += piece != last;
      last = piece;
    }
  g_assert_cmpuint (seen, ==, 20);
  g_assert_cmpint (last, ==, 19);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart/envelope", test_envelope);
  g_test_add_func ("/chart/items", test_items);
  g_test_add_func ("/chart/begun", test_begun);
  g_test_add_func ("/chart/groups", test_groups);
  g_test_add_func ("/chart/forecast", test_forecast);
  g_test_add_func ("/chart/marks", test_marks);
  g_test_add_func ("/chart/bins", test_bins);
  g_test_add_func ("/chart/far", test_far);
  g_test_add_func ("/chart/equal", test_equal);
  g_test_add_func ("/chart/figures", test_figures);
  g_test_add_func ("/chart/zero-bounded", test_zero_bounded);
  g_test_add_func ("/chart/words", test_words);
  g_test_add_func ("/chart/few", test_few);
  g_test_add_func ("/chart/no-pieces", test_no_pieces);
  g_test_add_func ("/chart/ink", test_ink);
  g_test_add_func ("/chart/edge", test_edge);
  g_test_add_func ("/chart/every-third", test_every_third);
  g_test_add_func ("/chart/long-serials", test_long_serials);
  g_test_add_func ("/chart/many-events", test_many_events);
  g_test_add_func ("/chart/piece-at", test_piece_at);
  return g_test_run ();
}
