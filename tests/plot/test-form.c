/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The section and the clock view: what they hold, what they say in words, and where they put their ink.
 */

#include "plot-support.h"

#include "plot-clock.h"
#include "plot-section-private.h"
#include "plot-section.h"
#include "plot-size.h"

#define WIDTH  585
#define HEIGHT 400

static TmFeature *
make_bore (TmJob *job)
{
  static const char *const readings[][2] = {
    { "mouth/12", "25.006" },  { "mouth/2", "25.009" },  { "mouth/4", "25.008" },
    { "middle/12", "25.010" }, { "middle/3", "25.011" }, { "bottom/12", "25.018" },
  };
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);

  ((TmGauge *)g_ptr_array_index (job->gauges, 0))->kind = "dial bore gauge";
  bore->requirement = "Ø25 H7";
  for (gsize i = 0; i < G_N_ELEMENTS (readings); i++)
    add_reading (job, bore, readings[i][0], readings[i][1]);
  return bore;
}

static TmSectionPlot *
make_section (const TmJob *job, const TmFeature *feature)
{
  g_auto (TmJudgement) judgement = { 0 };

  tm_judge (job, first_piece (job), feature, 1, &judgement);
  return tm_section_plot_new (job, &judgement);
}

static TmClockPlot *
make_clock (const TmJob *job, const TmFeature *feature)
{
  g_auto (TmJudgement) judgement = { 0 };

  tm_judge (job, first_piece (job), feature, 1, &judgement);
  return tm_clock_plot_new (job, &judgement);
}

static const TmLevel *
get_level (const TmSectionPlot *plot, guint index)
{
  g_assert_cmpuint (index, <, plot->levels->len);
  return &g_array_index (plot->levels, TmLevel, index);
}

/* -------- Section -------- */

static void
test_section_words (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = make_bore (job);
  g_autoptr (TmSectionPlot) plot = make_section (job, bore);
  g_autofree char *words = tm_section_plot_describe (plot);

  g_assert_cmpstr (words, ==,
                   "Section of Ø25 H7: limits 25.000 to 25.021 mm. "
                   "mouth: smallest 25.006 mm, in; largest 25.009 mm, in. "
                   "middle: smallest 25.010 mm, in; largest 25.011 mm, in. bottom: 25.018 mm, too close. "
                   "taper 0.010 mm, opens to the bottom. differences drawn 500 times too large.");
}

/* Depths from the mouth down, in whatever order they were read. */
static void
test_section_depths (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *shaft = add_feature (job, TM_KIND_SHAFT, "24.980", "25.000", NULL);
  g_autoptr (TmSectionPlot) plot = NULL;
  g_autofree char *words = NULL;

  add_reading (job, shaft, "65", "24.984");
  add_reading (job, shaft, "5", "24.991");
  add_reading (job, shaft, "20/3", "24.989");
  plot = make_section (job, shaft);
  g_assert_cmpuint (plot->levels->len, ==, 3);
  g_assert_cmpstr (get_level (plot, 0)->label, ==, "5 mm");
  g_assert_cmpstr (get_level (plot, 1)->label, ==, "20 mm");
  /* In proportion: 15 of 60 mm. */
  g_assert_cmpfloat (get_level (plot, 0)->down, ==, 0.0);
  g_assert_cmpfloat_with_epsilon (get_level (plot, 1)->down, 0.25, 1e-9);
  g_assert_cmpfloat (get_level (plot, 2)->down, ==, 1.0);
  g_assert_true (plot->scale.outside);
  g_assert_cmpint (plot->opens, ==, -1);
  words = tm_section_plot_describe (plot);
  /* 0.007 on 60 mm is 1 in 8571. */
  g_assert_nonnull (strstr (words, "taper 0.007 mm, larger at the mouth, 1 in 8600"));
}

static void
test_section_needs (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);
  TmFeature *width = add_feature (job, TM_KIND_LENGTH, "61.9", "62.1", NULL);
  TmFeature *thread = add_feature (job, TM_KIND_THREAD, "", "", NULL);

  g_assert_null (make_section (job, bore));
  add_reading (job, bore, "mouth/12", "25.010");
  add_reading (job, bore, "mouth/3", "25.012");
  add_reading (job, bore, "", "25.011");
  g_assert_null (make_section (job, bore));
  add_reading (job, width, "mouth", "62.0");
  add_reading (job, width, "bottom", "62.0");
  g_assert_null (make_section (job, width));
  add_reading (job, thread, "mouth", "pass");
  add_reading (job, thread, "bottom", "pass");
  g_assert_null (make_section (job, thread));
}

/* What is stated is what is drawn: differences over sizes, as they stand on the picture. */
static void
test_section_enlargement (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = make_bore (job);
  g_autoptr (TmSectionPlot) section = make_section (job, bore);
  g_autoptr (TmClockPlot) clock = make_clock (job, bore);
  const TmFormScale *scale = &section->scale;
  double drawn_per_count = TM_SECTION_ROOM / (scale->axis.high - scale->axis.low);
  double true_per_count = TM_SECTION_WALL / 25e9;

  g_assert_cmpfloat_with_epsilon (drawn_per_count / true_per_count, scale->enlarged, scale->enlarged * 1e-3);
  scale = &clock->scale;
  drawn_per_count = TM_CLOCK_ROOM / (scale->axis.high - scale->axis.low);
  true_per_count = TM_CLOCK_WALL / 25e9;
  g_assert_cmpfloat_with_epsilon (drawn_per_count / true_per_count, scale->enlarged, scale->enlarged * 1e-3);
}

static void
test_round_enlargement (void)
{
  static const struct {
    double wished;
    guint enlarged;
  } cases[] = { { 1.9, 0 },     { 2.0, 2 },       { 547, 500 }, { 999, 800 },
                { 1000, 1000 }, { 33000, 30000 }, { 0.4, 0 },   { NAN, 0 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpuint (tm_round_enlargement (cases[i].wished), ==, cases[i].enlarged);
}

/* -------- Ink -------- */

/* Metal is outside a bore's wall and inside a shaft's. */
static void
test_section_metal (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = make_bore (job);
  TmFeature *shaft = add_feature (job, TM_KIND_SHAFT, "24.980", "25.000", NULL);
  g_autoptr (TmSectionPlot) inside = make_section (job, bore), outside = NULL;
  const TmTheme *themes[] = { tm_theme_light (), tm_theme_dark (), tm_theme_paper () };

  add_reading (job, shaft, "mouth", "24.984");
  add_reading (job, shaft, "bottom", "24.984");
  outside = make_section (job, shaft);
  for (gsize t = 0; t < G_N_ELEMENTS (themes); t++)
    {
      Picture of_bore = make_picture (WIDTH, HEIGHT, themes[t]);
      Picture of_shaft = make_picture (WIDTH, HEIGHT, themes[t]);
      guint bore_ink = 0, shaft_ink = 0;

      tm_section_plot_draw (inside, of_bore.cr, WIDTH, HEIGHT, themes[t]);
      tm_section_plot_draw (outside, of_shaft.cr, WIDTH, HEIGHT, themes[t]);
      /* A strip beside the middle line, clear of arrow and walls. */
      for (int y = 120; y < 280; y++)
        for (int x = 195; x < 225; x++)
          {
            bore_ink += !is_colour (get_pixel (&of_bore, x, y), &themes[t]->surface, 2.0);
            shaft_ink += !is_colour (get_pixel (&of_shaft, x, y), &themes[t]->surface, 2.0);
          }
      g_assert_cmpuint (bore_ink, ==, 0);
      g_assert_cmpuint (shaft_ink, >, 300);
      g_assert_cmpuint (count_colour (&of_bore, &themes[t]->in, 0, WIDTH), >, 50);
      g_assert_cmpuint (count_colour (&of_bore, &themes[t]->close, 0, WIDTH), >, 20);
      clear_picture (&of_bore);
      clear_picture (&of_shaft);
    }
}

/* Any size: nothing breaks, and nothing is drawn outside. */
static void
test_sizes (void)
{
  static const double sizes[] = { 0.0, -5.0, 1.0, 7.9, 8.0, 20.0, 60.0, 150.0, 300.0, 1400.0, NAN, INFINITY };
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = make_bore (job);
  g_autoptr (TmSectionPlot) section = make_section (job, bore);
  g_autoptr (TmClockPlot) clock = make_clock (job, bore);

  for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
    for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
      {
        const gboolean shown
            = sizes[w] >= 8.0 && sizes[h] >= 8.0 && isfinite (sizes[w]) && isfinite (sizes[h]);
        Picture picture = make_picture (320, 320, tm_theme_light ());

        tm_section_plot_draw (section, picture.cr, sizes[w], sizes[h], tm_theme_light ());
        tm_clock_plot_draw (clock, picture.cr, sizes[w], sizes[h], tm_theme_light ());
        if (!shown)
          g_assert_true (is_blank (&picture));
        for (int y = 0; shown && y < picture.height; y++)
          for (int x = 0; x < picture.width; x++)
            if (x >= (int)ceil (sizes[w]) || y >= (int)ceil (sizes[h]))
              g_assert_cmphex (get_pixel (&picture, x, y), ==, 0xffffff);
        clear_picture (&picture);
      }
}

/* Limits far from the readings, readings far from each other, no limits, no known uncertainty. */
static void
test_extremes (void)
{
  static const char *const limits[][2] = { { "25.000", "25.021" }, { "1", "2" }, { "", "25.021" },
                                           { "25.000", "" },       { "", "" },   { "25", "25" } };
  static const char *const values[] = { "0", "0.001", "25.010", "900", "4000000000" };

  for (gsize l = 0; l < G_N_ELEMENTS (limits); l++)
    {
      g_autoptr (TmJob) job = make_job ();
      TmFeature *bore = add_feature (job, TM_KIND_BORE, limits[l][0], limits[l][1], NULL);
      g_autoptr (TmSectionPlot) section = NULL;
      g_autoptr (TmClockPlot) clock = NULL;
      Picture picture = make_picture (WIDTH, HEIGHT, tm_theme_light ());

      bore->method = l % 2 == 0 ? "" : bore->method;
      for (guint i = 0; i < G_N_ELEMENTS (values); i++)
        {
          g_autofree char *mouth = g_strdup_printf ("mouth/%u", i + 1);
          g_autofree char *length = g_strdup_printf ("%u/%u", i, i + 1);
          add_reading (job, bore, mouth, values[i]);
          add_reading (job, bore, length, values[i]);
        }
      section = make_section (job, bore);
      clock = make_clock (job, bore);
      g_assert_nonnull (section);
      g_assert_nonnull (clock);
      tm_section_plot_draw (section, picture.cr, WIDTH, HEIGHT, tm_theme_light ());
      tm_clock_plot_draw (clock, picture.cr, WIDTH, HEIGHT, tm_theme_light ());
      g_free (tm_section_plot_describe (section));
      g_free (tm_clock_plot_describe (clock));
      clear_picture (&picture);
    }
}

/* -------- Clock -------- */

static void
test_clock_words (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = make_bore (job);
  g_autoptr (TmClockPlot) plot = make_clock (job, bore);
  g_autofree char *words = tm_clock_plot_describe (plot);

  g_assert_cmpstr (words, ==,
                   "Clock view of Ø25 H7: limits 25.000 to 25.021 mm. "
                   "mouth: hour 12 25.006 mm, in; hour 2 25.009 mm, in; hour 4 25.008 mm, in; "
                   "spread of diameters 0.003 mm; oval 0.004 mm, largest across 3 and 9 o'clock. "
                   "middle: hour 12 25.010 mm, in; hour 3 25.011 mm, in; "
                   "spread of diameters 0.001 mm; two directions may miss an oval between them. "
                   "The circularity deviation of an oval is half of it. "
                   "differences drawn 600 times too large. "
                   "Two-point gauges cannot see an odd number of lobes.");
}

static void
test_clock_needs (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);
  g_autoptr (TmClockPlot) plot = NULL;

  g_assert_null (make_clock (job, bore));
  add_reading (job, bore, "mouth/12", "25.010");
  /* The other end of the same diameter, another depth, and no direction at all. */
  add_reading (job, bore, "mouth/6", "25.012");
  add_reading (job, bore, "bottom/3", "25.012");
  add_reading (job, bore, "mouth", "25.013");
  g_assert_null (make_clock (job, bore));
  add_reading (job, bore, "mouth/9", "25.014");
  plot = make_clock (job, bore);
  g_assert_cmpuint (plot->dials->len, ==, 1);
  /* 12 and 6 are averaged: 25.014 less 25.011. */
  g_assert_cmpfloat_with_epsilon (g_array_index (plot->dials, TmDial, 0).spread, 3e6, 1.0);
}

/* The oval's long axis points at the clock hour that it is largest across. */
static void
test_clock_axis (void)
{
  static const struct {
    const char *values[3]; /* at 12, 2 and 4 */
    const char *across;
  } cases[] = {
    { { "25.012", "25.006", "25.006" }, "12 and 6" },
    { { "25.006", "25.012", "25.006" }, "2 and 8" },
    { { "25.006", "25.006", "25.012" }, "4 and 10" },
    { { "25.000", "25.009", "25.009" }, "3 and 9" },
  };
  static const char *const hours[] = { "/12", "/2", "/4" };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job ();
      TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);
      g_autoptr (TmClockPlot) plot = NULL;

      for (gsize h = 0; h < G_N_ELEMENTS (hours); h++)
        add_reading (job, bore, hours[h], cases[i].values[h]);
      plot = make_clock (job, bore);
      g_assert_true (g_array_index (plot->dials, TmDial, 0).has_oval);
      g_assert_nonnull (strstr (g_array_index (plot->dials, TmDial, 0).oval_text, cases[i].across));
    }
}

/* Three equal diameters are no oval, and no axis is named. */
static void
test_clock_round (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);
  g_autoptr (TmClockPlot) plot = NULL;
  g_autofree char *words = NULL;

  add_reading (job, bore, "/12", "25.010");
  add_reading (job, bore, "/2", "25.010");
  add_reading (job, bore, "/4", "25.010");
  plot = make_clock (job, bore);
  words = tm_clock_plot_describe (plot);
  g_assert_nonnull (strstr (words, "spread of diameters 0.000 mm; no oval seen"));
}

/* More depths than find room: those that spread most are shown, and the picture says how many are not. */
static void
test_clock_many (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", NULL);
  g_autoptr (TmClockPlot) plot = NULL;
  g_autofree char *words = NULL;
  Picture picture = make_picture (WIDTH, HEIGHT, tm_theme_light ());

  for (guint depth = 1; depth <= 9; depth++)
    {
      g_autofree char *twelve = g_strdup_printf ("%u/12", depth), *three = g_strdup_printf ("%u/3", depth);
      g_autofree char *value = g_strdup_printf ("25.01%u", depth);
      add_reading (job, bore, twelve, "25.010");
      add_reading (job, bore, three, value);
    }
  plot = make_clock (job, bore);
  g_assert_cmpuint (plot->dials->len, ==, 9);
  tm_clock_plot_draw (plot, picture.cr, WIDTH, HEIGHT, tm_theme_light ());
  words = tm_clock_plot_describe (plot);
  g_assert_nonnull (strstr (words, "9 mm: hour 12 25.010 mm"));
  clear_picture (&picture);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/section/words", test_section_words);
  g_test_add_func ("/section/depths", test_section_depths);
  g_test_add_func ("/section/needs", test_section_needs);
  g_test_add_func ("/section/enlargement", test_section_enlargement);
  g_test_add_func ("/section/round-enlargement", test_round_enlargement);
  g_test_add_func ("/section/metal", test_section_metal);
  g_test_add_func ("/form/sizes", test_sizes);
  g_test_add_func ("/form/extremes", test_extremes);
  g_test_add_func ("/clock/words", test_clock_words);
  g_test_add_func ("/clock/needs", test_clock_needs);
  g_test_add_func ("/clock/axis", test_clock_axis);
  g_test_add_func ("/clock/round", test_clock_round);
  g_test_add_func ("/clock/many", test_clock_many);
  return g_test_run ();
}
