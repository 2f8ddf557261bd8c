/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two methods compared: the words and the ink of the picture.
 */

#include "plot-support.h"

#include "plot-paired.h"

static TmPairedPlot *
make_paired (guint n)
{
  static const double a[] = { 25.012, 25.008, 25.004, 25.010 }, b[] = { 25.010, 25.004, 25.002, 25.006 };
  TmPaired paired;

  g_assert_cmpint (tm_paired (a, b, n, &paired), ==, n >= 2);
  return tm_paired_plot_new (a, b, n, &paired, TM_UNIT_MM);
}

/* Differences 2, 4, 2, 4 µm: mean 3, s = √(4/3) = 1.1547, 1.96 s = 2.2632. */
static void
test_words (void)
{
  g_autoptr (TmPairedPlot) plot = make_paired (4);
  g_autofree char *words = tm_paired_plot_describe (plot);

  g_assert_cmpstr (
      words, ==,
      "Differences of 4 pairs against their mean, in mm: mean difference 0.00300, limits of agreement "
      "0.000737 and 0.00526, 0 outside them.");
}

static void
test_ink (void)
{
  g_autoptr (TmPairedPlot) plot = make_paired (4);
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (600, 260, theme);

  tm_paired_plot_draw (plot, picture.cr, 600, 260, theme);
  /* Four dots of 4 pixels' radius each. */
  g_assert_cmpuint (count_colour (&picture, &theme->in, 0, 600), >, 4 * 25);
  clear_picture (&picture);
}

static void
test_sizes (void)
{
  static const double sizes[] = { 0.0, -1.0, 8.0, 40.0, 120.0, 300.0, 2000.0, NAN, INFINITY };

  for (guint n = 0; n <= 4; n++)
    {
      g_autoptr (TmPairedPlot) plot = make_paired (n);

      for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
        for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
          {
            Picture picture = make_picture (8, 8, tm_theme_dark ());
            tm_paired_plot_draw (plot, picture.cr, sizes[w], sizes[h], tm_theme_dark ());
            clear_picture (&picture);
          }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/paired/words", test_words);
  g_test_add_func ("/paired/ink", test_ink);
  g_test_add_func ("/paired/sizes", test_sizes);
  return g_test_run ();
}
