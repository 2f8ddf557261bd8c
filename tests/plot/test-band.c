/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The band plot: what it holds, what it says in words, and where it puts its ink.
 */

#include "plot-support.h"

#include "plot-band-layout.h"
#include "plot-label.h"

#define WIDTH  640
#define HEIGHT 420

/* The bore of the design's picture: three of four stations read, two pins, a bearing. */
static TmJob *
make_bore (TmFeature **bore)
{
  TmJob *job = make_job ();
  const struct {
    const char *size;
    gboolean went;
  } pins[] = { { "25.000", TRUE }, { "24.990", TRUE }, { "25.020", FALSE } };

  *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", "mouth/12 mouth/3 bottom/12 bottom/3");
  (*bore)->requirement = "Ø25 H7";
  (*bore)->name = "bearing bore";
  (*bore)->mate = (TmMate) { .given = TRUE,
                             .kind = TM_KIND_SHAFT,
                             .lower = quantity ("25.022", TM_UNIT_MM),
                             .upper = quantity ("25.035", TM_UNIT_MM),
                             .extra = "" };
  add_reading (job, *bore, "mouth/12", "25.012");
  add_reading (job, *bore, "mouth/3", "25.012");
  add_reading (job, *bore, "bottom/12", "25.018");
  for (gsize i = 0; i < G_N_ELEMENTS (pins); i++)
    {
      TmPinTrial *trial = tm_pin_trial_new ();
      trial->row.piece = first_piece (job);
      trial->row.feature = *bore;
      trial->size = quantity (pins[i].size, TM_UNIT_MM);
      trial->pin_class = "X";
      trial->went = pins[i].went;
      g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
    }
  return job;
}

static Picture
draw (const TmBandPlot *plot, int width, int height, const TmTheme *theme)
{
  Picture picture = make_picture (width, height, theme);

  tm_band_plot_draw (plot, picture.cr, width, height, theme);
  return picture;
}

static TmBandLayout
lay_out (const TmBandPlot *plot, Picture *picture, const TmTheme *theme)
{
  TmBandLayout layout;
  TmPen pen;

  tm_pen_init (&pen, picture->cr, theme);
  tm_band_layout_fill (&layout, plot, &pen, picture->width, picture->height);
  tm_pen_clear (&pen);
  return layout;
}

static void
test_words (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_autoptr (TmBandPlot) plot = make_plot (job, bore);
  g_autofree char *words = tm_band_plot_describe (plot);

  g_assert_cmpstr (words, ==,
                   "Ø25 H7 bearing bore: limits 25.000 to 25.021 mm; proven in from 25.0033 to 25.0177. "
                   "mouth 12: 25.012 mm, in. mouth 3: 25.012 mm, in. bottom 12: 25.018 mm, too close. "
                   "bottom 3: not read. mating size: 25.0120 mm, from 25.0081 to 25.0159. "
                   "Pin 25.000 X minus went, truly 24.9985 to 25.0000. "
                   "Pin 24.990 X minus went, truly 24.9885 to 24.9900. "
                   "Pin 25.020 X minus did not go, truly 25.0185 to 25.0200. "
                   "The pins leave open 0.0015 mm below the band. "
                   "Mate 25.022 … 25.035, press 0.001 to 0.035 mm by limits, "
                   "press 0.004 to 0.023 mm as measured.");
}

static void
test_typed_words (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_auto (TmJudgement) judgement = { 0 };
  TmBandEntry entry = { quantity ("25.019", TM_UNIT_MM), "bottom/3", NULL };
  g_autoptr (TmBandPlot) plot = NULL;
  g_autofree char *words = NULL;
  const TmBandRow *row;

  tm_judge (job, first_piece (job), bore, 1, &judgement);
  plot = tm_band_plot_new (job, &judgement, &entry);
  words = tm_band_plot_describe (plot);
  g_assert_nonnull (strstr (words, "bottom 3: not read, 25.019 mm typed, not recorded"));
  row = &g_array_index (plot->rows, TmBandRow, 3);
  g_assert_true (row->typed);
  g_assert_cmpint (row->typed_verdict, ==, TM_VERDICT_TOO_CLOSE);
  /* A station nobody asked for gets a row of its own. */
  tm_band_plot_free (g_steal_pointer (&plot));
  entry.station = "middle/6";
  plot = tm_band_plot_new (job, &judgement, &entry);
  g_assert_cmpuint (plot->rows->len, ==, 6); /* and the mating size that the pins give */
  /* By a gauge that nobody knows it is only held against the limits. */
  tm_band_plot_free (g_steal_pointer (&plot));
  entry.method = "another gauge";
  plot = tm_band_plot_new (job, &judgement, &entry);
  row = &g_array_index (plot->rows, TmBandRow, 4);
  g_assert_true (row->typed);
  g_assert_cmpint (row->typed_verdict, ==, TM_VERDICT_IN);
}

/* Each limit's line stands where the axis says, in the text colour, from top to bottom. */
static void
test_limit_lines (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_autoptr (TmBandPlot) plot = make_plot (job, bore);
  const TmTheme *themes[] = { tm_theme_light (), tm_theme_dark (), tm_theme_paper () };
  const gint64 limits[] = { bore->lower.count, bore->upper.count };

  for (gsize t = 0; t < G_N_ELEMENTS (themes); t++)
    {
      Picture picture = draw (plot, WIDTH, HEIGHT, themes[t]);
      const TmBandLayout layout = lay_out (plot, &picture, themes[t]);

      for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
        {
          const int x = (int)lround (tm_band_layout_x (&layout, plot, (double)limits[i]));
          guint inked = 0;
          for (int y = (int)layout.top + 1; y < (int)layout.bottom - 1; y++)
            /* Two pixels wide: one of the two columns about it is wholly its own. */
            inked += is_colour (get_pixel (&picture, x, y), &themes[t]->text, 40.0)
                     || is_colour (get_pixel (&picture, x - 1, y), &themes[t]->text, 40.0);
          /* Numbers with their halo, whiskers and brackets cross it here and there. */
          g_assert_cmpuint (inked, >, (guint)(0.8 * (layout.bottom - layout.top)));
        }
      clear_picture (&picture);
    }
}

static void
test_colours (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  const TmTheme *theme = tm_theme_light ();
  g_autoptr (TmBandPlot) plot = make_plot (job, bore);
  Picture picture = draw (plot, WIDTH, HEIGHT, theme);
  g_autoptr (TmBandPlot) after = NULL;
  const TmBandRow *row;

  g_assert_cmpuint (count_colour (&picture, &theme->in, 0, WIDTH), >, 100);
  g_assert_cmpuint (count_colour (&picture, &theme->close, 0, WIDTH), >, 100);
  g_assert_cmpuint (count_colour (&picture, &theme->mate, 0, WIDTH), >, 100);
  g_assert_cmpuint (count_colour (&picture, &theme->out, 0, WIDTH), ==, 0);
  clear_picture (&picture);
  add_reading (job, bore, "bottom/3", "25.030");
  after = make_plot (job, bore);
  row = &g_array_index (after->rows, TmBandRow, 3);
  g_assert_cmpint (row->verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpint (row->point, ==, TM_POINT_RIGHT);
  picture = draw (after, WIDTH, HEIGHT, theme);
  g_assert_cmpuint (count_colour (&picture, &theme->out, 0, WIDTH), >, 50);
  clear_picture (&picture);
}

/* A value far off is an arrow at the edge on its side, and the band keeps its size. */
static void
test_off_scale (void)
{
  static const struct {
    const char *value;
    TmPoint point;
  } cases[] = { { "24.000", TM_POINT_LEFT }, { "99.000", TM_POINT_RIGHT } };
  const TmTheme *theme = tm_theme_light ();

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job ();
      TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", "mouth");
      g_autoptr (TmBandPlot) plot = NULL;
      Picture picture;
      TmBandLayout layout;
      guint left, right;

      add_reading (job, bore, "mouth", cases[i].value);
      plot = make_plot (job, bore);
      picture = draw (plot, WIDTH, HEIGHT, theme);
      layout = lay_out (plot, &picture, theme);
      g_assert_cmpint (g_array_index (plot->rows, TmBandRow, 0).point, ==, cases[i].point);
      left = count_colour (&picture, &theme->out, (int)layout.left - 1, (int)layout.left + 20);
      right = count_colour (&picture, &theme->out, (int)layout.right - 20, (int)layout.right + 1);
      g_assert_cmpuint (i == 0 ? left : right, >, 20);
      g_assert_cmpuint (i == 0 ? right : left, ==, 0);
      g_assert_cmpfloat (tm_band_layout_x (&layout, plot, (double)bore->upper.count)
                             - tm_band_layout_x (&layout, plot, (double)bore->lower.count),
                         >, 100.0);
      clear_picture (&picture);
    }
}

/* What was corrected or withdrawn is no part of the picture; nor are another piece's pins. */
static void
test_record (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_autoptr (TmBandPlot) plot = NULL;
  TmReading *last = g_ptr_array_index (job->readings, 2);
  TmPinTrial *pin = g_ptr_array_index (job->pin_trials, 0);

  g_assert_cmpint (tm_job_withdraw (job, &last->row, "AB", "", "chip"), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (job, &pin->row, "AB", "", "wrong pin"), ==, TM_ADD_OK);
  plot = make_plot (job, bore);
  g_assert_false (g_array_index (plot->rows, TmBandRow, 2).read);
  g_assert_cmpuint (plot->pins->len, ==, 2);
}

/* The typed value is hollow: its middle has the surface's colour. */
static void
test_hollow (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", "mouth");
  const TmTheme *theme = tm_theme_light ();
  const TmBandEntry entry = { quantity ("25.010", TM_UNIT_MM), "mouth", NULL };
  g_auto (TmJudgement) judgement = { 0 };
  g_autoptr (TmBandPlot) plot = NULL;
  Picture picture;
  TmBandLayout layout;
  int x, y;

  tm_judge (job, first_piece (job), bore, 1, &judgement);
  plot = tm_band_plot_new (job, &judgement, &entry);
  picture = draw (plot, WIDTH, HEIGHT, theme);
  layout = lay_out (plot, &picture, theme);
  x = (int)lround (tm_band_layout_x (&layout, plot, (double)entry.value.count));
  y = (int)lround (layout.rows_top + 0.62 * layout.row_height);
  g_assert_true (is_colour (get_pixel (&picture, x, y), &theme->surface, 6.0));
  g_assert_cmpuint (count_colour (&picture, &theme->in, x - 10, x + 10), >, 10);
  clear_picture (&picture);
}

/* Any size and any feature: nothing breaks, and nothing is drawn outside. */
static void
test_sizes (void)
{
  static const double sizes[] = { 0.0, -5.0, 1.0, 7.9, 8.0, 20.0, 60.0, 150.0, 300.0, 1400.0, NAN, INFINITY };
  g_autoptr (TmJob) job = make_job ();
  TmFeature *features[] = {
    add_feature (job, TM_KIND_BORE, "25.000", "25.021", "a b c d e f g h i j k l"),
    add_feature (job, TM_KIND_LENGTH, "", "", NULL),
    add_feature (job, TM_KIND_DEPTH, "18", "", NULL),
    add_feature (job, TM_KIND_FORM, "", "0.05", NULL),
    add_feature (job, TM_KIND_ATTRIBUTE, "", "", NULL),
    add_feature (job, TM_KIND_BORE, "25", "25", NULL),
  };

  features[0]->name = "a name that is much too long for any label \xff\xfe of any plot";
  add_reading (job, features[0], "c", "25.010");
  add_reading (job, features[0], "somewhere nobody asked for", "26.5");
  for (gsize f = 0; f < G_N_ELEMENTS (features); f++)
    {
      g_autoptr (TmBandPlot) plot = make_plot (job, features[f]);
      g_autofree char *words = tm_band_plot_describe (plot);

      g_assert_nonnull (words);
      for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
        for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
          {
            Picture picture = make_picture (8, 8, tm_theme_light ());
            tm_band_plot_draw (plot, picture.cr, sizes[w], sizes[h], tm_theme_light ());
            if (!(sizes[w] >= 8.0 && sizes[h] >= 8.0 && isfinite (sizes[w]) && isfinite (sizes[h])))
              g_assert_true (is_blank (&picture));
            clear_picture (&picture);
          }
    }
}

static void
test_stays_inside (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_autoptr (TmBandPlot) plot = make_plot (job, bore);
  Picture picture = make_picture (500, 400, tm_theme_light ());

  tm_band_plot_draw (plot, picture.cr, 300.0, 200.0, tm_theme_light ());
  for (int y = 0; y < picture.height; y++)
    for (int x = 0; x < picture.width; x++)
      if (x >= 300 || y >= 200)
        g_assert_cmphex (get_pixel (&picture, x, y), ==, 0xffffff);
  clear_picture (&picture);
}

/* Rows never overlap, nor the parts below them, whatever there is room for. */
static void
test_layout (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_autoptr (TmBandPlot) plot = make_plot (job, bore);

  for (int height = 40; height < 900; height += 20)
    for (int width = 60; width < 1300; width += 120)
      {
        Picture picture = make_picture (width, height, tm_theme_light ());
        const TmBandLayout layout = lay_out (plot, &picture, tm_theme_light ());

        g_assert_cmpfloat (layout.left, <, layout.right);
        g_assert_cmpfloat (layout.right, <=, width);
        g_assert_cmpfloat (layout.label_right, <=, layout.left);
        g_assert_cmpfloat (layout.top, <=, layout.rows_top);
        g_assert_cmpfloat (layout.bottom, <=, height);
        g_assert_cmpfloat_with_epsilon (layout.bottom - layout.rows_top,
                                        layout.row_height * (plot->rows->len + layout.n_pin_rows), 1e-6);
        if (!isnan (layout.fit_y))
          g_assert_cmpfloat (layout.mate_y, <, layout.fit_y);
        clear_picture (&picture);
      }
}

static void
test_no_method (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);
  g_autoptr (TmBandPlot) plot = NULL;
  g_autofree char *words = NULL;
  Picture picture;

  bore->method = "";
  add_reading (job, bore, "", "25.010");
  plot = make_plot (job, bore);
  words = tm_band_plot_describe (plot);
  /* Nothing is said to be proven. */
  g_assert_cmpstr (words, ==, "1: limits 25.000 to 25.021 mm. size: 25.010 mm, in.");
  picture = draw (plot, WIDTH, HEIGHT, tm_theme_light ());
  g_assert_cmpuint (count_colour (&picture, &tm_theme_light ()->close, 0, WIDTH), ==, 0);
  clear_picture (&picture);
}

static void
test_outcome (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *thread = add_feature (job, TM_KIND_THREAD, "", "", "mouth bottom");
  g_autoptr (TmBandPlot) plot = NULL;
  g_autofree char *words = NULL;
  Picture picture;

  add_reading (job, thread, "mouth", "fail");
  plot = make_plot (job, thread);
  words = tm_band_plot_describe (plot);
  g_assert_cmpstr (words, ==, "1: pass or fail. mouth: fail. bottom: not read.");
  picture = draw (plot, WIDTH, HEIGHT, tm_theme_light ());
  g_assert_cmpuint (count_colour (&picture, &tm_theme_light ()->out, 0, WIDTH), >, 20);
  clear_picture (&picture);
}

/* A shaft presses into its bore the other way round: 25 H7/p6 is 0.001 to 0.035 of interference
 * (ISO 286-2: H7 0/+21, p6 +22/+35 µm). */
static void
test_shaft_fit (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *shaft = add_feature (job, TM_KIND_SHAFT, "25.022", "25.035", NULL);
  g_autoptr (TmBandPlot) plot = NULL;

  shaft->mate = (TmMate) { .given = TRUE,
                           .kind = TM_KIND_BORE,
                           .lower = quantity ("25.000", TM_UNIT_MM),
                           .upper = quantity ("25.021", TM_UNIT_MM),
                           .extra = "" };
  plot = make_plot (job, shaft);
  g_assert_cmpstr (plot->fit_by_limits, ==, "press 0.001 to 0.035 mm by limits");
  tm_band_plot_free (g_steal_pointer (&plot));
  /* 25 H7/g6: clearance 0.007 to 0.041; H7/k6 (+2/+15): a transition fit. */
  shaft->lower = quantity ("24.980", TM_UNIT_MM);
  shaft->upper = quantity ("24.993", TM_UNIT_MM);
  plot = make_plot (job, shaft);
  g_assert_cmpstr (plot->fit_by_limits, ==, "clearance 0.007 to 0.041 mm by limits");
  tm_band_plot_free (g_steal_pointer (&plot));
  shaft->lower = quantity ("25.002", TM_UNIT_MM);
  shaft->upper = quantity ("25.015", TM_UNIT_MM);
  plot = make_plot (job, shaft);
  g_assert_cmpstr (plot->fit_by_limits, ==, "press up to 0.015, clearance up to 0.019 mm by limits");
}

static void
test_strip (void)
{
  static const double sizes[] = { 0.0, 1.0, 4.0, 30.0, 150.0, NAN };
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_auto (TmJudgement) judgement = { 0 };
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (150, 16, theme);

  tm_judge (job, first_piece (job), bore, 1, &judgement);
  tm_band_strip_draw (&judgement, picture.cr, 150, 16, theme);
  g_assert_cmpuint (count_colour (&picture, &theme->close, 75, 150), >, 5);
  g_assert_cmpuint (count_colour (&picture, &theme->close, 0, 60), ==, 0);
  for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
    for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
      tm_band_strip_draw (&judgement, picture.cr, sizes[w], sizes[h], theme);
  clear_picture (&picture);
}

static void
test_strip_arrow (void)
{
  static const char *const values[] = { "24.900", "25.900" };
  const TmTheme *theme = tm_theme_dark ();

  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    {
      g_autoptr (TmJob) job = make_job ();
      TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);
      g_auto (TmJudgement) judgement = { 0 };
      Picture picture = make_picture (150, 16, theme);

      add_reading (job, bore, "", values[i]);
      tm_judge (job, first_piece (job), bore, 1, &judgement);
      tm_band_strip_draw (&judgement, picture.cr, 150, 16, theme);
      g_assert_cmpuint (count_colour (&picture, &theme->out, i == 0 ? 0 : 130, i == 0 ? 20 : 150), >, 10);
      g_assert_cmpuint (count_colour (&picture, &theme->out, 30, 120), ==, 0);
      clear_picture (&picture);
    }
}

static void
test_png (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore);
  g_autoptr (TmBandPlot) plot = make_plot (job, bore);
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) png = tm_band_plot_to_png (plot, 300, 200, 2.0, tm_theme_paper (), &error);
  gsize length;
  const guint8 *data;

  g_assert_no_error (error);
  data = g_bytes_get_data (png, &length);
  g_assert_cmpuint (length, >, 1000);
  g_assert_cmpmem (data, 8, "\x89PNG\r\n\x1a\n", 8);
  /* Width and height of the image header: 600 by 400. */
  g_assert_cmpuint (data[18] << 8 | data[19], ==, 600);
  g_assert_cmpuint (data[22] << 8 | data[23], ==, 400);
  g_assert_null (tm_band_plot_to_png (plot, 0, 200, 1.0, tm_theme_paper (), NULL));
  g_assert_null (tm_band_plot_to_png (plot, 1e9, 200, 1.0, tm_theme_paper (), &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL);
}

static void
test_station_labels (void)
{
  static const struct {
    const char *station;
    TmUnit unit;
    const char *label;
  } cases[] = {
    { "", TM_UNIT_MM, "size" },
    { "mouth", TM_UNIT_MM, "mouth" },
    { "mouth/12", TM_UNIT_MM, "mouth 12" },
    { "/3", TM_UNIT_MM, "hour 3" },
    { "12.5", TM_UNIT_MM, "12.5 mm" },
    { "12.5/3", TM_UNIT_MM, "12.5 mm, 3" },
    { "0.5/6", TM_UNIT_IN, "0.5 in, 6" },
    { "by the slot", TM_UNIT_MM, "by the slot" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *label = tm_station_label (cases[i].station, cases[i].unit);

      g_assert_cmpstr (label, ==, cases[i].label);
    }
}

/* -------- Several methods at one station -------- */

static void
add_gauge_of (TmJob *job, const char *tag, const char *error_limit)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tag;
  gauge->unit = TM_UNIT_MM;
  gauge->resolution = quantity ("0.001", TM_UNIT_MM);
  gauge->error_limit = quantity (error_limit, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
}

static void
read_by (TmJob *job, TmFeature *feature, const char *station, const char *value, const char *method)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = first_piece (job);
  reading->row.feature = feature;
  reading->place = 1;
  reading->station = station;
  reading->value = quantity (value, TM_UNIT_MM);
  reading->method = method;
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

static const TmBandRow *
get_row (const TmBandPlot *plot, guint index)
{
  g_assert_cmpuint (index, <, plot->rows->len);
  return &g_array_index (plot->rows, TmBandRow, index);
}

/* A bore of 0.025 mm read by a caliper and by two finer gauges. */
static TmJob *
make_methods (TmFeature **bore)
{
  TmJob *job = make_job ();

  add_gauge_of (job, "caliper", "0.05");
  add_gauge_of (job, "telescope", "0.012");
  add_gauge_of (job, "dial", "0.002");
  *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", "mouth bottom");
  (*bore)->method = "dial";
  read_by (job, *bore, "mouth", "25.040", "caliper");
  read_by (job, *bore, "mouth", "25.011", "telescope");
  read_by (job, *bore, "mouth", "25.012", "dial");
  return job;
}

static void
test_methods (void)
{
  static const char *const labels[] = { "mouth", "caliper", "telescope", "dial", "all together", "bottom" };
  TmFeature *bore;
  g_autoptr (TmJob) job = make_methods (&bore);
  g_autoptr (TmBandPlot) plot = make_plot (job, bore), together = NULL;
  g_autofree char *words = tm_band_plot_describe (plot), *all = NULL;

  g_assert_cmpuint (plot->rows->len, ==, G_N_ELEMENTS (labels));
  for (guint i = 0; i < G_N_ELEMENTS (labels); i++)
    {
      g_assert_cmpstr (get_row (plot, i)->label, ==, labels[i]);
      g_assert_cmpint (get_row (plot, i)->part, ==, i > 0 && i < 5);
      g_assert_cmpint (get_row (plot, i)->cannot, ==, i == 1 || i == 2);
    }
  /* The assigned method counts; all together is tighter than each. */
  g_assert_cmpfloat_with_epsilon (get_row (plot, 0)->at, 25.012e9, 0.5);
  for (guint i = 1; i < 4; i++)
    g_assert_cmpfloat (get_row (plot, 4)->uncertainty, <, get_row (plot, i)->uncertainty);
  g_assert_nonnull (strstr (words, "caliper: 25.040 mm, from 24.9"));
  g_assert_nonnull (strstr (words, "cannot settle it"));
  bore->counts = TM_COUNTS_COMBINED;
  together = make_plot (job, bore);
  all = tm_band_plot_describe (together);
  g_assert_cmpuint (together->rows->len, ==, 5);
  g_assert_true (get_row (together, 0)->together);
  g_assert_cmpfloat_with_epsilon (get_row (together, 0)->at, get_row (plot, 4)->at, 1.0);
  g_assert_cmpfloat_with_epsilon (get_row (together, 0)->uncertainty, get_row (plot, 4)->uncertainty, 1.0);
  g_assert_nonnull (strstr (all, "all methods together"));
}

/* Of three methods the one that the others do not bear out is marked; of two, both. */
static void
test_stands_apart (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", "mouth");
  g_autoptr (TmBandPlot) two = NULL, three = NULL;
  g_autofree char *words = NULL;
  Picture picture;

  add_gauge_of (job, "one", "0.002");
  add_gauge_of (job, "other", "0.002");
  add_gauge_of (job, "third", "0.002");
  bore->counts = TM_COUNTS_COMBINED;
  read_by (job, bore, "mouth", "25.010", "one");
  read_by (job, bore, "mouth", "25.022", "other");
  two = make_plot (job, bore);
  g_assert_true (get_row (two, 1)->apart);
  g_assert_true (get_row (two, 2)->apart);
  read_by (job, bore, "mouth", "25.011", "third");
  three = make_plot (job, bore);
  g_assert_false (get_row (three, 1)->apart);
  g_assert_true (get_row (three, 2)->apart);
  g_assert_false (get_row (three, 3)->apart);
  words = tm_band_plot_describe (three);
  g_assert_nonnull (strstr (words, "stands apart"));
  picture = draw (three, WIDTH, HEIGHT, tm_theme_light ());
  g_assert_cmpuint (count_colour (&picture, &tm_theme_light ()->out, 0, WIDTH), >, 20);
  clear_picture (&picture);
}

static void
read_crowd (TmJob *job, TmFeature *bore)
{
  static const char *const methods[] = { "caliper", "telescope", "dial", "BM-2" };

  for (guint i = 0; i < bore->stations->len; i++)
    for (gsize m = 0; m < G_N_ELEMENTS (methods); m++)
      {
        g_autofree char *value = g_strdup_printf ("25.0%02u", 10 + (i * 5 + (guint)m * 3) % 9);
        read_by (job, bore, g_ptr_array_index (bore->stations, i), value, methods[m]);
      }
}

/* Twelve stations by four methods share the height that there is: each station keeps a row of its own that
 * is at least as high as its methods', nothing falls out below, and what is too small for words goes without.
 */
static void
test_crowd (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025",
                                 "1/12 1/3 2/12 2/3 3/12 3/3 4/12 4/3 5/12 5/3 6/12 6/3");
  g_autoptr (TmBandPlot) plot = NULL;
  static const int heights[] = { 60, 200, 330, 430, 900 };

  add_gauge_of (job, "caliper", "0.05");
  add_gauge_of (job, "telescope", "0.012");
  add_gauge_of (job, "dial", "0.002");
  bore->counts = TM_COUNTS_COMBINED;
  read_crowd (job, bore);
  plot = make_plot (job, bore);
  g_assert_cmpuint (plot->rows->len, ==, 12 * 5);
  for (gsize i = 0; i < G_N_ELEMENTS (heights); i++)
    {
      Picture picture = draw (plot, 585, heights[i], tm_theme_light ());
      const TmBandLayout layout = lay_out (plot, &picture, tm_theme_light ());

      g_assert_cmpfloat (layout.part_height, <=, layout.row_height);
      g_assert_cmpfloat_with_epsilon (layout.pins_top - layout.rows_top,
                                      12 * layout.row_height + 48 * layout.part_height, 1e-6);
      g_assert_cmpfloat (layout.pins_top, <=, layout.bottom + 1e-6);
      if (heights[i] >= 330)
        g_assert_cmpfloat (layout.row_height, >=, 11.0);
      g_assert_cmpuint (count_colour (&picture, &tm_theme_light ()->in, 0, 585), >, 12);
      clear_picture (&picture);
    }
}

/* -------- Pins -------- */

static void
try_pin (TmJob *job, TmFeature *feature, const char *size, const char *pin_class, TmPinSign sign,
         gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = feature;
  trial->place = 1;
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = pin_class;
  trial->sign = sign;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
}

static void
add_set (TmJob *job)
{
  TmGauge *set = tm_gauge_new ();

  set->tag = "PS-1";
  set->kind = "pin set";
  set->unit = TM_UNIT_MM;
  set->range_from = quantity ("20.000", TM_UNIT_MM);
  set->range_to = quantity ("30.000", TM_UNIT_MM);
  set->pin_step = quantity ("0.005", TM_UNIT_MM);
  set->pin_class = "X";
  set->pin_sign = "minus";
  g_assert_cmpint (tm_job_add_gauge (job, set), ==, TM_ADD_OK);
}

static const TmBandPin *
find_pin (const TmBandPlot *plot, const char *label)
{
  for (guint i = 0; i < plot->pins->len; i++)
    if (g_str_equal (g_array_index (plot->pins, TmBandPin, i).label, label))
      return &g_array_index (plot->pins, TmBandPin, i);
  return NULL;
}

/* A pin is drawn as wide as its class leaves its size open: class X, 20.96 to 38.35 mm, 1.52 µm (ASME
 * B89.1.5 as published: 0.00006 in). */
static void
test_pin_extent (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", NULL);
  g_autoptr (TmBandPlot) plot = NULL;
  const TmBandPin *plus, *minus;

  try_pin (job, bore, "25.000", "X", TM_PIN_PLUS, TRUE);
  try_pin (job, bore, "25.020", "X", TM_PIN_MINUS, FALSE);
  plot = make_plot (job, bore);
  plus = find_pin (plot, "25.000 went");
  minus = find_pin (plot, "25.020 did not go");
  g_assert_cmpfloat_with_epsilon (plus->low, 25.000e9, 0.5);
  g_assert_cmpfloat_with_epsilon (plus->high, 25.001524e9, 0.5e6);
  g_assert_cmpfloat_with_epsilon (minus->low, 25.018476e9, 0.5e6);
  g_assert_cmpfloat_with_epsilon (minus->high, 25.020e9, 0.5);
  /* Both ends are closed. */
  g_assert_true (isnan (plot->open_low_from) && isnan (plot->open_high_from));
  g_assert_null (plot->open_words);
}

/* ZZ minus pins leave open what they may be smaller than they are marked. */
static void
test_pins_open (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", NULL);
  g_autoptr (TmBandPlot) one = NULL, both = NULL;
  g_autofree char *words = NULL;
  Picture picture;
  TmColour open = tm_theme_light ()->close;

  try_pin (job, bore, "25.000", "ZZ", TM_PIN_MINUS, TRUE);
  one = make_plot (job, bore);
  g_assert_cmpfloat (one->open_low_from, <, (double)bore->lower.count);
  g_assert_cmpfloat_with_epsilon (one->open_low_to, (double)bore->lower.count, 0.5);
  g_assert_true (isinf (one->open_high_to));
  g_assert_nonnull (strstr (one->open_words, "below the band"));
  g_assert_nonnull (strstr (one->open_words, "No pin bounds the size above"));
  try_pin (job, bore, "25.025", "ZZ", TM_PIN_MINUS, FALSE);
  both = make_plot (job, bore);
  /* It stopped at 25.025 + 0.001 at most. */
  g_assert_cmpfloat_with_epsilon (both->open_high_to, 25.026e9, 0.5);
  words = tm_band_plot_describe (both);
  g_assert_nonnull (strstr (words, "The pins leave open 0.0010 mm above the band"));
  /* The shade: the colour of what is too close, thin on the surface. */
  open.red = 1 - 0.22 * (1 - open.red);
  open.green = 1 - 0.22 * (1 - open.green);
  open.blue = 1 - 0.22 * (1 - open.blue);
  picture = draw (both, WIDTH, HEIGHT, tm_theme_light ());
  g_assert_cmpuint (count_colour (&picture, &open, 0, WIDTH), >, 100);
  clear_picture (&picture);
}

/* From the shop's sets, where the question is open and only the end that is. */
static void
test_pins_to_pull (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", NULL);
  g_autoptr (TmBandPlot) settled = NULL, close = NULL, half = NULL, closed = NULL;
  g_autofree char *words = NULL;

  add_set (job);
  add_reading (job, bore, "", "25.012");
  settled = make_plot (job, bore);
  g_assert_cmpuint (settled->pins->len, ==, 0);
  add_reading (job, bore, "", "25.036");
  close = make_plot (job, bore);
  words = tm_band_plot_describe (close);
  g_assert_cmpuint (close->pins->len, ==, 2);
  g_assert_true (find_pin (close, "25.005 to pull")->planned);
  g_assert_true (find_pin (close, "25.020 to pull")->planned);
  g_assert_nonnull (strstr (words, "Pull pin 25.020 of PS-1: it should not go"));
  try_pin (job, bore, "25.005", "X", TM_PIN_MINUS, TRUE);
  half = make_plot (job, bore);
  g_assert_null (find_pin (half, "25.005 to pull"));
  g_assert_nonnull (find_pin (half, "25.020 to pull"));
  try_pin (job, bore, "25.020", "X", TM_PIN_MINUS, FALSE);
  closed = make_plot (job, bore);
  g_assert_cmpuint (closed->pins->len, ==, 2);
  g_assert_null (closed->open_words);
}

/* Where pins and readings count together, the station keeps its own size, and the mating size, which pins
 * cut off, has a row with the verdict. */
static void
test_mating_size (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", NULL);
  g_autoptr (TmBandPlot) plot = NULL;
  const TmBandRow *mating;

  bore->counts = TM_COUNTS_COMBINED;
  add_reading (job, bore, "", "25.012");
  try_pin (job, bore, "25.000", "X", TM_PIN_PLUS, TRUE);
  try_pin (job, bore, "25.012", "X", TM_PIN_MINUS, FALSE);
  plot = make_plot (job, bore);
  g_assert_cmpuint (plot->rows->len, ==, 2);
  g_assert_cmpstr (get_row (plot, 0)->value, ==, "25.012");
  g_assert_false (get_row (plot, 0)->mating);
  mating = get_row (plot, 1);
  g_assert_true (mating->mating);
  g_assert_cmpint (mating->verdict, ==, TM_VERDICT_IN);
  g_assert_cmpfloat (mating->at, <, get_row (plot, 0)->at);
  g_assert_cmpfloat (mating->low, >, 25.000e9);
  /* It did not take the pin of 25.012 and its clearance of 1 µm. */
  g_assert_cmpfloat (mating->high, <, 25.013e9);
}

/* Pins that contradict each other are said to, and nothing is planned on them. */
static void
test_pins_contradict (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", NULL);
  g_autoptr (TmBandPlot) plot = NULL;
  g_autofree char *words = NULL;

  add_set (job);
  try_pin (job, bore, "25.020", "X", TM_PIN_MINUS, TRUE);
  try_pin (job, bore, "25.010", "X", TM_PIN_MINUS, FALSE);
  plot = make_plot (job, bore);
  words = tm_band_plot_describe (plot);
  g_assert_nonnull (strstr (words, "The pins contradict each other"));
  g_assert_cmpuint (plot->pins->len, ==, 2);
}

/* The words of pins never cover each other, whatever the width. */
static void
test_pin_rows (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.025", NULL);
  g_autoptr (TmBandPlot) plot = NULL;

  add_set (job);
  try_pin (job, bore, "24.998", "ZZ", TM_PIN_MINUS, TRUE);
  try_pin (job, bore, "25.026", "ZZ", TM_PIN_MINUS, FALSE);
  plot = make_plot (job, bore);
  for (int width = 60; width < 1300; width += 40)
    {
      Picture picture = draw (plot, width, 300, tm_theme_light ());
      const TmBandLayout layout = lay_out (plot, &picture, tm_theme_light ());

      g_assert_cmpuint (layout.n_pins, ==, 4);
      for (guint a = 0; a < layout.n_pins; a++)
        for (guint b = 0; b < a; b++)
          g_assert_true (layout.pins[a].row != layout.pins[b].row || layout.pins[a].from >= layout.pins[b].to
                         || layout.pins[b].from >= layout.pins[a].to);
      clear_picture (&picture);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/band/words", test_words);
  g_test_add_func ("/band/typed-words", test_typed_words);
  g_test_add_func ("/band/limit-lines", test_limit_lines);
  g_test_add_func ("/band/colours", test_colours);
  g_test_add_func ("/band/off-scale", test_off_scale);
  g_test_add_func ("/band/record", test_record);
  g_test_add_func ("/band/hollow", test_hollow);
  g_test_add_func ("/band/sizes", test_sizes);
  g_test_add_func ("/band/stays-inside", test_stays_inside);
  g_test_add_func ("/band/layout", test_layout);
  g_test_add_func ("/band/no-method", test_no_method);
  g_test_add_func ("/band/outcome", test_outcome);
  g_test_add_func ("/band/shaft-fit", test_shaft_fit);
  g_test_add_func ("/band/methods", test_methods);
  g_test_add_func ("/band/stands-apart", test_stands_apart);
  g_test_add_func ("/band/crowd", test_crowd);
  g_test_add_func ("/band/pin-extent", test_pin_extent);
  g_test_add_func ("/band/pins-open", test_pins_open);
  g_test_add_func ("/band/pins-to-pull", test_pins_to_pull);
  g_test_add_func ("/band/mating-size", test_mating_size);
  g_test_add_func ("/band/pins-contradict", test_pins_contradict);
  g_test_add_func ("/band/pin-rows", test_pin_rows);
  g_test_add_func ("/band/png", test_png);
  g_test_add_func ("/strip/marks", test_strip);
  g_test_add_func ("/strip/arrow", test_strip_arrow);
  g_test_add_func ("/band/station-labels", test_station_labels);
  return g_test_run ();
}
