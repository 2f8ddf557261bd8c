/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cells of the grid of a batch: what a judgement makes of one, and its ink.
 */

#include "plot-support.h"

#include "plot-grid.h"
#include "plot-mark.h"

static TmGridCell
judge (const char *lower, const char *upper, const char *value)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *bore = add_feature (job, TM_KIND_BORE, lower, upper, NULL);
  g_auto (TmJudgement) judgement = { 0 };

  if (value != NULL)
    add_reading (job, bore, "", value);
  tm_judge (job, first_piece (job), bore, 1, &judgement);
  return tm_grid_cell (&judgement, TRUE);
}

/* The middle of 25.000 to 25.020 is 25.010: half a band is 0.010. */
static void
test_used (void)
{
  g_assert_cmpfloat_with_epsilon ((double)judge ("25.000", "25.020", "25.010").used, 0.0, 1e-6);
  g_assert_cmpfloat_with_epsilon ((double)judge ("25.000", "25.020", "25.005").used, 0.5, 1e-6);
  g_assert_cmpfloat_with_epsilon ((double)judge ("25.000", "25.020", "25.020").used, 1.0, 1e-6);
  g_assert_cmpfloat_with_epsilon ((double)judge ("25.000", "25.020", "24.990").used, 2.0, 1e-6);
  g_assert_true (isnan (judge ("", "25.020", "25.010").used));
  g_assert_true (isnan (judge ("25.000", "25.020", NULL).used));
}

static void
test_verdicts (void)
{
  const TmGridCell small = judge ("25.000", "25.020", "24.990"), large = judge ("25.000", "25.020", "25.030");
  const TmGridCell in = judge ("25.000", "25.020", "25.010"), none = judge ("25.000", "25.020", NULL);

  g_assert_cmpuint (small.verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpuint (small.point, ==, TM_POINT_LEFT);
  g_assert_cmpuint (small.side, ==, TM_SIDE_METAL_LEFT);
  g_assert_cmpuint (large.point, ==, TM_POINT_RIGHT);
  g_assert_cmpuint (large.side, ==, TM_SIDE_METAL_GONE);
  g_assert_cmpuint (in.verdict, ==, TM_VERDICT_IN);
  g_assert_cmpuint (in.point, ==, TM_POINT_NONE);
  g_assert_cmpuint (none.verdict, ==, TM_VERDICT_NOT_MEASURED);
  g_assert_true (none.due);
}

/* Of a zero-bounded feature the share is counted from zero. */
static void
test_zero_bounded (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *form = add_feature (job, TM_KIND_FORM, "", "0.020", NULL);
  g_auto (TmJudgement) judgement = { 0 };

  add_reading (job, form, "", "0.015");
  tm_judge (job, first_piece (job), form, 1, &judgement);
  g_assert_cmpfloat_with_epsilon ((double)tm_grid_cell (&judgement, TRUE).used, 0.75, 1e-6);
}

static double
get_blueness (double used)
{
  const TmTheme *theme = tm_theme_light ();
  const TmGridCell cell = { .used = (gfloat)used, .verdict = TM_VERDICT_IN, .point = TM_POINT_NONE };
  Picture picture = make_picture (40, 40, theme);
  double red;

  tm_grid_cell_draw (&cell, picture.cr, 5, 5, 27, 23, FALSE, theme);
  red = get_pixel (&picture, 18, 16) >> 16;
  clear_picture (&picture);
  return 255.0 - red;
}

static void
test_tint (void)
{
  g_assert_cmpfloat (get_blueness (0.0), >, 10.0);
  g_assert_cmpfloat (get_blueness (0.5), >, get_blueness (0.0) + 20.0);
  g_assert_cmpfloat (get_blueness (1.0), >, get_blueness (0.5) + 20.0);
  g_assert_cmpfloat (get_blueness (9.0), <=, get_blueness (1.0));
}

/* The relative luminance and the contrast of WCAG 2.1. */
static double
get_luminance (guint32 pixel)
{
  static const double weights[] = { 0.0722, 0.7152, 0.2126 };
  double luminance = 0;

  for (guint i = 0; i < G_N_ELEMENTS (weights); i++)
    {
      const double share = (pixel >> (8 * i) & 0xff) / 255.0;
      luminance += weights[i] * (share <= 0.04045 ? share / 12.92 : pow ((share + 0.055) / 1.055, 2.4));
    }
  return luminance;
}

static double
get_contrast (guint32 one, guint32 other)
{
  const double a = get_luminance (one) + 0.05, b = get_luminance (other) + 0.05;

  return MAX (a, b) / MIN (a, b);
}

static guint32
draw_tint (double used, const TmTheme *theme)
{
  const TmGridCell cell = { .used = (gfloat)used, .verdict = TM_VERDICT_IN, .point = TM_POINT_NONE };
  Picture picture = make_picture (40, 40, theme);
  guint32 pixel;

  tm_grid_cell_draw (&cell, picture.cr, 5, 5, 27, 23, FALSE, theme);
  pixel = get_pixel (&picture, 18, 16);
  clear_picture (&picture);
  return pixel;
}

/* Against the grounds of the desktop's windows in its two styles: what uses the least shows, and each tenth
 * more shows more; text can be read on all (4.5 is WCAG's AA). */
static void
test_contrast (void)
{
  static const struct {
    guint32 ground, text;
  } styles[] = { { 0xfafafa, 0x2a2a2a }, { 0x242424, 0xffffff } };

  for (gsize i = 0; i < G_N_ELEMENTS (styles); i++)
    {
      const TmTheme *theme = i == 0 ? tm_theme_light () : tm_theme_dark ();
      double last = 1.25;

      for (int tenth = 0; tenth <= 10; tenth++)
        {
          const guint32 pixel = draw_tint (tenth / 10.0, theme);
          const double contrast = get_contrast (pixel, styles[i].ground);

          g_assert_cmpfloat (contrast, >, last);
          g_assert_cmpfloat (get_contrast (pixel, styles[i].text), >=, 4.5);
          last = contrast;
        }
    }
}

/* Out is told by shape too: the arrow lies on its own side of the middle. */
static void
test_arrow (void)
{
  static const struct {
    TmPoint point;
    int wide, narrow; /* columns where the arrow is high, and where it is a tip */
  } cases[] = { { TM_POINT_RIGHT, 15, 22 }, { TM_POINT_LEFT, 21, 14 } };
  const TmTheme *theme = tm_theme_light ();
  const TmColour white = { 1.0, 1.0, 1.0, 1.0 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TmGridCell cell = { .used = 2.0f, .verdict = TM_VERDICT_OUT, .point = (guint8)cases[i].point };
      Picture picture = make_picture (40, 40, theme);
      guint wide = 0, narrow = 0;

      tm_grid_cell_draw (&cell, picture.cr, 5, 5, 27, 23, FALSE, theme);
      for (int y = 6; y < 27; y++)
        {
          wide += is_colour (get_pixel (&picture, cases[i].wide, y), &white, 30.0);
          narrow += is_colour (get_pixel (&picture, cases[i].narrow, y), &white, 30.0);
        }
      g_assert_cmpuint (count_colour (&picture, &theme->out, 0, 40), >, 300);
      g_assert_cmpuint (wide, >, narrow + 3);
      clear_picture (&picture);
    }
}

static void
test_sizes (void)
{
  static const double sizes[] = { NAN, -3.0, 0.0, 1.0, 5.0, 27.0, 300.0, INFINITY };
  Picture picture = make_picture (40, 40, tm_theme_dark ());

  for (guint verdict = 0; verdict <= TM_N_VERDICTS; verdict++)
    for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
      for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
        {
          const TmGridCell cell = { .used = NAN, .verdict = (guint8)verdict, .point = (guint8)(w % 5) };
          tm_grid_cell_draw (&cell, picture.cr, 2, 2, sizes[w], sizes[h], TRUE, tm_theme_dark ());
        }
  clear_picture (&picture);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/grid/used", test_used);
  g_test_add_func ("/grid/verdicts", test_verdicts);
  g_test_add_func ("/grid/zero-bounded", test_zero_bounded);
  g_test_add_func ("/grid/tint", test_tint);
  g_test_add_func ("/grid/contrast", test_contrast);
  g_test_add_func ("/grid/arrow", test_arrow);
  g_test_add_func ("/grid/sizes", test_sizes);
  return g_test_run ();
}
