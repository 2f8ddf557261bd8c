/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cut being planned on the band plot: what it holds, what it says, where it puts its ink, and what a
 * finger that drags the aim is told.  The plans are filled in by hand: their figures are invented.
 */

#include "plot-support.h"

#include "plot-band-layout.h"
#include "plot-chance.h"

#define MM (1e9)

/* From @now to @after, mm, a cut of @change and two standard uncertainties of the size after it. */
static TmCutAdvice
make_advice (const char *now, double change, double after_u)
{
  TmCutAdvice advice = { 0 };

  advice.reference = quantity (now, TM_UNIT_MM).count;
  advice.plan.status = TM_CUT_OK;
  advice.plan.change = change * MM;
  advice.plan.predicted = change * MM;
  advice.plan.predicted_low = advice.plan.predicted_high = change * MM;
  advice.plan.size_u = 0.002 * MM;
  advice.plan.predicted_u = after_u * MM;
  advice.plan.chances = (TmCutChances) { 0.93, 0.062, 0.008, NAN };
  advice.plan.now = advice.plan.chances;
  advice.response = (TmCutResponse) { 1.0, 0.0, 0.001 * MM, 0.0005 * MM, 0.002 * MM, 3 };
  advice.band = (TmCutBand) { -INFINITY, INFINITY, -INFINITY, INFINITY, 0.0 };
  advice.graduation = 10000000;
  advice.step = 10000000;
  return advice;
}

static TmBandPlot *
make_planned (const TmJob *job, const TmFeature *feature, const TmCutAdvice *advice)
{
  TmBandPlot *plot = make_plot (job, feature);

  tm_band_plot_set_plan (plot, advice);
  return plot;
}

static TmJob *
make_bore (TmFeature **bore, const char *stations, const char *size)
{
  TmJob *job = make_job ();

  *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.021", stations);
  (*bore)->requirement = "Ø25 H7";
  if (stations == NULL)
    add_reading (job, *bore, "", size);
  for (guint i = 0; i < (*bore)->stations->len; i++)
    add_reading (job, *bore, g_ptr_array_index ((*bore)->stations, i), size);
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
assert_figures (const char *words)
{
  g_autofree char *small = g_utf8_strdown (words, -1);

  g_assert_null (strstr (small, "nan"));
  g_assert_null (strstr (small, "inf"));
}

/* -------- Words -------- */

static void
test_words (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.003);
  g_autoptr (TmBandPlot) plot = make_planned (job, bore, &advice), proving = NULL, only = NULL, mated = NULL;
  g_autofree char *words = tm_band_plot_describe (plot), *second = NULL, *mate = NULL, *none = NULL;

  g_assert_cmpstr (words, ==,
                   "Ø25 H7: limits 25.000 to 25.021 mm; proven in from 25.0033 to 25.0177. "
                   "size: 24.981 mm, out. Planned cut 0.029 mm: from 24.981 ± 0.004 to "
                   "25.010 ± 0.006 mm; chances: 93 % in, 6.2 % metal left, 0.8 % metal gone.");
  advice.plan.status = TM_CUT_PROVE;
  advice.plan.change = advice.plan.predicted = 0.015 * MM;
  advice.plan.predicted_low = advice.plan.predicted_high = 0.015 * MM;
  /* In whole marks of the dial, as the number to dial is. */
  advice.plan.second = 0.016 * MM;
  advice.plan.chances = (TmCutChances) { 0.29, 0.71, 0.0, NAN };
  proving = make_planned (job, bore, &advice);
  second = tm_band_plot_describe (proving);
  g_assert_nonnull (strstr (second, "; then a second cut of about 0.020 mm"));
  g_assert_cmpfloat_with_epsilon (proving->plan.second, 25.016 * MM, 1.0);
  /* Where the first most likely brings it in there is none to be seen. */
  advice.plan.chances = (TmCutChances) { 0.93, 0.062, 0.008, NAN };
  only = make_planned (job, bore, &advice);
  g_assert_true (isnan (only->plan.second));
  advice.band.mate_lower = 0.0225 * MM;
  advice.band.mate_upper = 0.055 * MM; /* wider than the drawing: it narrows nothing */
  mated = make_planned (job, bore, &advice);
  mate = tm_band_plot_describe (mated);
  g_assert_nonnull (strstr (mate, "; the mate as measured asks for at least 25.0035"));
  g_assert_true (isnan (mated->plan.mate_upper));
  tm_band_plot_set_plan (mated, NULL);
  none = tm_band_plot_describe (mated);
  g_assert_null (strstr (none, "lanned"));
}

static void
test_chance_words (void)
{
  static const struct {
    double chance;
    const char *words;
  } rows[] = {
    { 0.0, "under 0.1 %" }, { 0.00099, "under 0.1 %" }, { 0.001, "0.1 %" },     { 0.0087, "0.9 %" },
    { 0.01, "1 %" },        { 0.0996, "10 %" },         { 0.5, "50 %" },        { 0.934, "93.4 %" },
    { 0.999, "99.9 %" },    { 0.9991, "over 99.9 %" },  { 1.0, "over 99.9 %" }, { NAN, NULL },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words = tm_chance_text (rows[i].chance);
      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

/* -------- What is shown -------- */

/* Without figures there is nothing to show; where no cut is to be made the size now still is. */
static void
test_statuses (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.981");

  for (int status = 0; status < TM_N_CUT_STATUSES; status++)
    {
      TmCutAdvice advice = make_advice ("24.981", status <= TM_CUT_PROVE ? 0.02 : 0.0, 0.003);
      g_autoptr (TmBandPlot) plot = NULL;

      advice.plan.status = (TmCutStatus)status;
      plot = make_planned (job, bore, &advice);
      g_assert_cmpint (plot->plan.shown, ==, status < TM_CUT_BAD_BAND);
      if (plot->plan.shown)
        g_assert_cmpfloat_with_epsilon (plot->plan.now, 24.981 * MM, 1.0);
    }
}

/* Nobody knows which way the metal of a plain length goes: no plan can be drawn. */
static void
test_no_side (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *length = add_feature (job, TM_KIND_LENGTH, "40.0", "40.2", NULL);
  TmCutAdvice advice = make_advice ("40.4", 0.2, 0.01);
  g_autoptr (TmBandPlot) plot = make_planned (job, length, &advice);

  g_assert_false (plot->plan.shown);
}

/* Figures that are none never reach the picture or its words, whatever is left out of the plan. */
static void
test_nonsense (void)
{
  static const double bad[] = { NAN, INFINITY, -INFINITY, -1.0, 1e30, -1e30, 0.0 };
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, "mouth bottom", "24.981");

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    for (int field = 0; field < 16; field++)
      {
        TmCutAdvice advice = make_advice ("24.981", 0.02, 0.003);
        double *fields[] = { &advice.plan.size,
                             &advice.plan.size_u,
                             &advice.plan.predicted_low,
                             &advice.plan.predicted_high,
                             &advice.step,
                             &advice.plan.change,
                             &advice.plan.predicted,
                             &advice.plan.predicted_u,
                             &advice.plan.second,
                             &advice.plan.chances.in,
                             &advice.plan.chances.gone,
                             &advice.response.factor,
                             &advice.response.factor_sd,
                             &advice.response.scatter,
                             &advice.band.mate_lower,
                             &advice.band.mate_upper };
        g_autoptr (TmBandPlot) plot = NULL;
        g_autofree char *words = NULL;
        Picture picture;
        double x, y;

        *fields[field] = bad[i];
        plot = make_planned (job, bore, &advice);
        g_assert_true (isfinite (plot->axis.low) && isfinite (plot->axis.high));
        g_assert_cmpfloat (plot->axis.low, <, plot->axis.high);
        words = tm_band_plot_describe (plot);
        assert_figures (words);
        picture = draw (plot, 400, 200, tm_theme_light ());
        g_assert_false (is_blank (&picture));
        clear_picture (&picture);
        if (tm_band_plot_aim_at (plot, 400, 200, &x, &y))
          g_assert_true (x >= 0 && x <= 400 && y >= 0 && y <= 200);
      }
}

/* -------- The axis -------- */

static void
assert_on_axis (const TmBandPlot *plot, double count)
{
  g_assert_cmpfloat (tm_axis_fraction (&plot->axis, count), >=, 0.0);
  g_assert_cmpfloat (tm_axis_fraction (&plot->axis, count), <=, 1.0);
}

/* The plan lies on the axis while the band stays readable; what is farther is at the edge. */
static void
test_axis (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.600");
  TmCutAdvice advice = make_advice ("24.600", 0.340, 0.008);
  g_autoptr (TmBandPlot) proving = make_planned (job, bore, &advice), whole = NULL, far = NULL;
  const double span = 0.021 * MM;

  /* 0.4 mm to go on a band of 0.021: after a first cut to 24.940, which is shown; the size now is not. */
  assert_on_axis (proving, 24.940 * MM - 2 * 0.008 * MM);
  g_assert_cmpfloat (tm_axis_fraction (&proving->axis, 24.6 * MM), <, 0.0);
  advice.plan.change = advice.plan.predicted = 0.410 * MM;
  whole = make_planned (job, bore, &advice);
  assert_on_axis (whole, 25.010 * MM);
  advice.plan.change = advice.plan.predicted = 0.1 * MM;
  far = make_planned (job, bore, &advice);
  g_assert_cmpfloat (tm_axis_fraction (&far->axis, 24.7 * MM), <, 0.0);
  /* Whatever is planned, the band takes a seventh of the picture or more. */
  g_assert_cmpfloat (proving->axis.high - proving->axis.low, <, 7 * span);
  g_assert_cmpfloat (far->axis.high - far->axis.low, <, 7 * span);
}

/* While the aim is dragged the axis stays. */
static void
test_hold (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.003);
  g_autoptr (TmBandPlot) first = make_planned (job, bore, &advice), next = make_plot (job, bore);

  advice.plan.predicted = advice.plan.change = 0.099 * MM;
  tm_band_plot_set_plan (next, &advice);
  g_assert_cmpfloat (next->axis.high, >, first->axis.high);
  tm_band_plot_hold_axis (next, first);
  g_assert_cmpfloat (next->axis.high, ==, first->axis.high);
  tm_band_plot_set_plan (next, &advice);
  g_assert_cmpfloat (next->axis.high, ==, first->axis.high);
  g_assert_cmpfloat (next->axis.low, ==, first->axis.low);
  tm_band_plot_hold_axis (next, NULL);
  g_assert_cmpfloat (next->axis.high, >, first->axis.high);
}

/* One mark of a dial that reads on the radius moves the size by two, and by how the cutter answers. */
static void
test_aim (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.03, 0.003);
  g_autoptr (TmBandPlot) plot = make_plot (job, bore);
  double per_mark;
  gint64 size;

  g_assert_false (tm_band_plot_get_aim (plot, &size, &per_mark));
  advice.step = 20000000;
  advice.response.factor = 0.9;
  tm_band_plot_set_plan (plot, &advice);
  g_assert_true (tm_band_plot_get_aim (plot, &size, &per_mark));
  g_assert_cmpint (size, ==, llround (25.011 * MM));
  g_assert_cmpfloat_with_epsilon (per_mark, 0.018 * MM, 1.0);
}

/* -------- Dragging -------- */

/* The grip lies where the size after the cut does, and there the size is that one, at any size. */
static void
test_drag (void)
{
  static const int sizes[][2] = { { 1280, 720 }, { 585, 330 }, { 585, 200 }, { 320, 160 }, { 90, 60 } };
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, "mouth bottom", "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.003);
  g_autoptr (TmBandPlot) plot = make_planned (job, bore, &advice);

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      const double width = sizes[i][0], height = sizes[i][1];
      double x, y, pixel;

      g_assert_true (tm_band_plot_aim_at (plot, width, height, &x, &y));
      g_assert_true (x > 0 && x < width && y > 0 && y < height);
      pixel = (double)(tm_band_plot_size_at (plot, width, height, x + 1, y)
                       - tm_band_plot_size_at (plot, width, height, x, y));
      g_assert_cmpfloat (pixel, >, 0);
      g_assert_cmpfloat (fabs ((double)tm_band_plot_size_at (plot, width, height, x, y) - 25.010 * MM), <, 2);
      /* Beyond the ends it is the end. */
      g_assert_cmpint (tm_band_plot_size_at (plot, width, height, -1e9, y), ==, llround (plot->axis.low));
      g_assert_cmpint (tm_band_plot_size_at (plot, width, height, 1e9, y), ==, llround (plot->axis.high));
    }
}

static void
test_drag_nothing (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.003);
  g_autoptr (TmBandPlot) bare = make_plot (job, bore), plot = make_planned (job, bore, &advice);
  double x = 0, y = 0;

  g_assert_false (tm_band_plot_aim_at (bare, 585, 330, &x, &y));
  g_assert_false (tm_band_plot_aim_at (plot, 0, 0, &x, &y));
  g_assert_false (tm_band_plot_aim_at (plot, NAN, 300, &x, &y));
  g_assert_cmpint (tm_band_plot_size_at (plot, 0, 0, 3, 3), ==, llround (25.010 * MM));
}

/* -------- Ink -------- */

/* A colour thinned over the surface. */
static TmColour
blend (const TmColour *colour, const TmColour *surface, double opacity)
{
  return (TmColour) { surface->red + opacity * (colour->red - surface->red),
                      surface->green + opacity * (colour->green - surface->green),
                      surface->blue + opacity * (colour->blue - surface->blue), 1.0 };
}

static guint
count_in_plan (Picture *picture, const TmBandLayout *layout, const TmColour *colour, double from, double to)
{
  guint n = 0;

  for (int y = (int)layout->plan_top; y < (int)(layout->plan_top + layout->plan_height); y++)
    for (int x = MAX (0, (int)from); x < MIN (picture->width, (int)to); x++)
      n += is_colour (get_pixel (picture, x, y), colour, 8.0);
  return n;
}

/* Pale where metal is left, hatched in the colour of what is out where it is gone: both ways of cutting. */
static void
test_shares (void)
{
  for (int grows = 0; grows < 2; grows++)
    {
      g_autoptr (TmJob) job = make_job ();
      TmFeature *feature = add_feature (job, grows ? TM_KIND_BORE : TM_KIND_SHAFT, "25.000", "25.021", NULL);
      TmCutAdvice advice = make_advice (grows ? "24.981" : "25.040", 0.029, 0.012);
      const TmTheme *themes[] = { tm_theme_light (), tm_theme_dark (), tm_theme_paper () };
      g_autoptr (TmBandPlot) plot = NULL;

      add_reading (job, feature, "", grows ? "24.981" : "25.040");
      if (!grows)
        advice.plan.predicted = -advice.plan.predicted;
      plot = make_planned (job, feature, &advice);
      for (gsize t = 0; t < G_N_ELEMENTS (themes); t++)
        {
          Picture picture = draw (plot, 585, 330, themes[t]);
          const TmBandLayout layout = lay_out (plot, &picture, themes[t]);
          const double lower = tm_band_layout_x (&layout, plot, 25.000 * MM);
          const double upper = tm_band_layout_x (&layout, plot, 25.021 * MM);
          const TmColour pale = blend (&themes[t]->planned, &themes[t]->surface, 0.3);
          const TmColour *out = &themes[t]->out;
          const guint pale_left = count_in_plan (&picture, &layout, &pale, 0, lower - 2),
                      pale_right = count_in_plan (&picture, &layout, &pale, upper + 2, 585),
                      out_left = count_in_plan (&picture, &layout, out, 0, lower - 2),
                      out_right = count_in_plan (&picture, &layout, out, upper + 2, 585);

          /* The edges of letters are pale too. */
          g_assert_cmpuint (grows ? pale_left : pale_right, >, 200);
          g_assert_cmpuint (grows ? pale_right : pale_left, <, 40);
          g_assert_cmpuint (grows ? out_right : out_left, >, 20);
          g_assert_cmpuint (grows ? out_left : out_right, ==, 0);
          clear_picture (&picture);
        }
    }
}

/* The arrow goes from where the size is to where it will be; dialling nothing there is none. */
static void
test_arrow (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.003);
  g_autoptr (TmBandPlot) plot = make_planned (job, bore, &advice), still = NULL;
  Picture picture = draw (plot, 585, 330, tm_theme_light ());
  const TmBandLayout layout = lay_out (plot, &picture, tm_theme_light ());
  const double from = tm_band_layout_x (&layout, plot, plot->plan.now),
               to = tm_band_layout_x (&layout, plot, plot->plan.after);

  for (double x = from + 12; x < to - 4; x += 3)
    g_assert_true (
        is_colour (get_pixel (&picture, (int)x, (int)layout.plan_now_y), &tm_theme_light ()->planned, 60.0));
  clear_picture (&picture);
  advice.plan.change = advice.plan.predicted = 0.0;
  advice.plan.status = TM_CUT_TOO_COARSE;
  still = make_planned (job, bore, &advice);
  g_assert_null (still->plan.change_text);
  g_assert_cmpfloat (still->plan.now, ==, still->plan.after);
}

/* Stations keep their offsets: the spread is level from the smallest to the largest. */
static void
test_reach (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, "mouth bottom", "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.001);
  g_autoptr (TmBandPlot) plot = NULL;
  const TmTheme *theme = tm_theme_light ();
  TmColour solid = blend (&theme->planned, &theme->surface, 0.75);
  Picture picture;
  TmBandLayout layout;

  advice.plan.predicted_low = 0.024 * MM;
  advice.plan.predicted_high = 0.034 * MM;
  plot = make_planned (job, bore, &advice);
  g_assert_cmpfloat_with_epsilon (plot->plan.reach_low, 25.005 * MM, 1.0);
  g_assert_cmpfloat_with_epsilon (plot->plan.reach_high, 25.015 * MM, 1.0);
  picture = draw (plot, 585, 330, theme);
  layout = lay_out (plot, &picture, theme);
  /* Just under its top, away from the aim, near both ends: over the shade of the band. */
  for (int end = 0; end < 2; end++)
    {
      const double x = tm_band_layout_x (&layout, plot, (end == 0 ? 25.0055 : 25.0145) * MM);
      g_assert_true (is_colour (get_pixel (&picture, (int)x, (int)layout.plan_peak + 4), &solid, 40.0));
    }
  clear_picture (&picture);
}

/* The limit that the mate asks for stands in its colour over the height of the picture. */
static void
test_mate_line (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, NULL, "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.003);
  g_autoptr (TmBandPlot) plain = make_planned (job, bore, &advice), plot = NULL;
  Picture without = draw (plain, 585, 330, tm_theme_light ()), picture;

  g_assert_cmpuint (count_colour (&without, &tm_theme_light ()->mate, 0, 585), ==, 0);
  advice.band.mate_lower = 0.026 * MM;
  advice.band.mate_upper = 0.034 * MM;
  plot = make_planned (job, bore, &advice);
  g_assert_cmpfloat_with_epsilon (plot->plan.gone, 25.015 * MM, 1.0);
  g_assert_cmpfloat_with_epsilon (plot->plan.left, 25.007 * MM, 1.0);
  picture = draw (plot, 585, 330, tm_theme_light ());
  g_assert_cmpuint (count_colour (&picture, &tm_theme_light ()->mate, 0, 585), >, 100);
  clear_picture (&picture);
  clear_picture (&without);
}

/* -------- Layout -------- */

static void
fill_mate (TmFeature *bore)
{
  bore->mate = (TmMate) { .given = TRUE,
                          .kind = TM_KIND_SHAFT,
                          .lower = quantity ("25.022", TM_UNIT_MM),
                          .upper = quantity ("25.035", TM_UNIT_MM),
                          .extra = "" };
}

/* Under the rows and over the axis, at every size; two lanes where there is the height, and in the window's
 * usual size even with eight stations and a mate. */
static void
test_layout (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job
      = make_bore (&bore, "mouth/12 mouth/3 1/12 1/3 2/12 2/3 bottom/12 bottom/3", "24.981");
  TmCutAdvice advice = make_advice ("24.981", 0.029, 0.003);
  g_autoptr (TmBandPlot) plot = NULL;

  fill_mate (bore);
  plot = make_planned (job, bore, &advice);
  for (int height = 8; height < 900; height += 29)
    for (int width = 8; width < 1300; width += 323)
      {
        Picture picture = make_picture (width, height, tm_theme_light ());
        const TmBandLayout layout = lay_out (plot, &picture, tm_theme_light ());

        g_assert_cmpfloat (layout.plan_height, >, 0);
        g_assert_cmpfloat (layout.plan_top, >=, layout.pins_top - 1e-6);
        g_assert_cmpfloat_with_epsilon (layout.plan_top + layout.plan_height, layout.bottom, 1e-6);
        g_assert_cmpfloat (layout.plan_base + layout.plan_grip, <=, layout.bottom);
        g_assert_cmpfloat (layout.plan_peak, <, layout.plan_base);
        g_assert_cmpfloat (layout.plan_now_y, >=, layout.plan_top);
        g_assert_cmpfloat (layout.bottom, <=, height);
        if (height >= 330)
          {
            g_assert_cmpfloat (layout.plan_now_y, <, layout.plan_peak);
            g_assert_false (isnan (layout.limits_y));
            g_assert_false (isnan (layout.ticks_y));
          }
        clear_picture (&picture);
      }
}

/* Nothing is drawn outside, whatever the size; a plan of a huge or an infinitely narrow spread included. */
static void
test_sizes (void)
{
  static const int sizes[][2] = { { 1, 1 }, { 8, 8 }, { 9, 300 }, { 300, 9 }, { 2000, 40 }, { 40, 900 } };
  static const double spreads[] = { 0.0, 1e-9, 0.003, 5.0, 1e5 };
  TmFeature *bore;
  g_autoptr (TmJob) job = make_bore (&bore, "mouth bottom", "24.981");

  for (gsize s = 0; s < G_N_ELEMENTS (spreads); s++)
    for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
      {
        TmCutAdvice advice = make_advice ("24.981", 0.029, spreads[s]);
        g_autoptr (TmBandPlot) plot = make_planned (job, bore, &advice);
        Picture picture = draw (plot, sizes[i][0], sizes[i][1], tm_theme_dark ());
        clear_picture (&picture);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/band-plan/words", test_words);
  g_test_add_func ("/band-plan/chance-words", test_chance_words);
  g_test_add_func ("/band-plan/statuses", test_statuses);
  g_test_add_func ("/band-plan/no-side", test_no_side);
  g_test_add_func ("/band-plan/nonsense", test_nonsense);
  g_test_add_func ("/band-plan/axis", test_axis);
  g_test_add_func ("/band-plan/hold", test_hold);
  g_test_add_func ("/band-plan/aim", test_aim);
  g_test_add_func ("/band-plan/drag", test_drag);
  g_test_add_func ("/band-plan/drag-nothing", test_drag_nothing);
  g_test_add_func ("/band-plan/shares", test_shares);
  g_test_add_func ("/band-plan/arrow", test_arrow);
  g_test_add_func ("/band-plan/reach", test_reach);
  g_test_add_func ("/band-plan/mate-line", test_mate_line);
  g_test_add_func ("/band-plan/layout", test_layout);
  g_test_add_func ("/band-plan/sizes", test_sizes);
  return g_test_run ();
}
