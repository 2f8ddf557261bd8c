/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture of a fit: what it shows, what it says, where zero is.  The figures are invented.
 */

#include "plot-support.h"

#include "plot-clearance.h"
#include "plot-fit-private.h"

#define UM (1e6)

static TmFitCheck
make_check (double least, double most, double u, double within)
{
  return (TmFitCheck) { .least = least * UM,
                        .most = most * UM,
                        .u = u * UM,
                        .expanded = 2 * u * UM,
                        .loose = u > 0 ? (1 - within) / 2 : (double)NAN,
                        .tight = u > 0 ? (1 - within) / 2 : (double)NAN,
                        .within = u > 0 ? within : (double)NAN,
                        .clearance = NAN,
                        .interference = NAN };
}

static TmFitPicture
make_fit (void)
{
  return (TmFitPicture) { .unit = TM_UNIT_MM,
                          .want = { TRUE, TRUE, -30 * (gint64)UM, -8 * (gint64)UM },
                          .has_limits = TRUE,
                          .limits = make_check (-35, -1, 0, 0),
                          .has_measured = TRUE,
                          .measured = make_check (-25, -12, 1.5, 0.98) };
}

static Picture
draw (const TmFitPicture *fit, int width, int height, const TmTheme *theme)
{
  Picture picture = make_picture (width, height, theme);

  tm_fit_plot_draw (fit, picture.cr, width, height, theme);
  return picture;
}

static void
test_words (void)
{
  TmFitPicture fit = make_fit ();
  g_autofree char *words = tm_fit_plot_describe (&fit), *outward = NULL, *open = NULL, *none = NULL;

  g_assert_cmpstr (words, ==,
                   "Fit: press 0.008 to 0.030 mm wanted. "
                   "by limits: press 0.001 to 0.035 mm, not all within what is wanted. "
                   "as measured: press 0.012 to 0.025 mm, each end ± 0.0030 mm; "
                   "98 % within what is wanted, 1 % too loose, 1 % too tight.");
  /* Rounded outward: what is said holds all of it. */
  fit.measured = make_check (-93.25, -90.55, 1.6, 0.0);
  outward = tm_fit_plot_describe (&fit);
  g_assert_nonnull (strstr (outward, "as measured: press 0.0905 to 0.0933 mm"));
  fit.want = (TmFitWant) { 0 };
  open = tm_fit_plot_describe (&fit);
  g_assert_nonnull (strstr (open, "no clearance is asked for"));
  g_assert_null (strstr (open, "within"));
  fit = (TmFitPicture) { .unit = TM_UNIT_MM };
  none = tm_fit_plot_describe (&fit);
  g_assert_cmpstr (none, ==, "No fit to show yet");
}

static void
test_clearance_words (void)
{
  static const struct {
    gboolean has_least, has_most;
    int least, most; /* µm */
    const char *words;
  } rows[] = {
    { TRUE, TRUE, -35, -1, "press 0.001 to 0.035 mm" },
    { TRUE, TRUE, 3, 11, "clearance 0.003 to 0.011 mm" },
    { TRUE, TRUE, 0, 11, "clearance 0.000 to 0.011 mm" },
    { TRUE, TRUE, -4, 11, "press up to 0.004, clearance up to 0.011 mm" },
    { TRUE, FALSE, -4, 0, "press up to 0.004 mm" },
    { TRUE, FALSE, 4, 0, "clearance from 0.004 mm" },
    { FALSE, TRUE, 0, -4, "press from 0.004 mm" },
    { FALSE, TRUE, 0, 4, "clearance up to 0.004 mm" },
    { FALSE, FALSE, 0, 0, "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words
          = tm_clearance_words (rows[i].has_least, rows[i].least * (gint64)UM, rows[i].has_most,
                                rows[i].most * (gint64)UM, TM_UNIT_MM, 3);
      g_assert_cmpstr (words, ==, rows[i].words);
    }
}

/* How a range stands to what is wanted is what its shape and colour say. */
static void
test_stands (void)
{
  TmFitPicture fit = make_fit ();
  g_auto (TmFitSight) in = { 0 }, close = { 0 }, out = { 0 };
  const TmTheme *theme = tm_theme_light ();
  Picture picture = draw (&fit, 585, 240, theme);

  tm_fit_sight_fill (&in, &fit);
  g_assert_cmpuint (in.n_rows, ==, 2);
  g_assert_cmpint (in.rows[0].stands, ==, TM_FIT_STANDS_CLOSE);
  g_assert_cmpint (in.rows[1].stands, ==, TM_FIT_STANDS_IN);
  g_assert_cmpuint (count_colour (&picture, &theme->in, 0, 585), >, 500);
  clear_picture (&picture);
  fit.measured = make_check (-33, -20, 1.5, 0.1);
  tm_fit_sight_fill (&close, &fit);
  g_assert_cmpint (close.rows[1].stands, ==, TM_FIT_STANDS_CLOSE);
  picture = draw (&fit, 585, 240, theme);
  g_assert_cmpuint (count_colour (&picture, &theme->close, 0, 585), >, 100);
  g_assert_cmpuint (count_colour (&picture, &theme->in, 0, 585), ==, 0);
  clear_picture (&picture);
  fit.measured = make_check (2, 9, 1.5, 0.0);
  tm_fit_sight_fill (&out, &fit);
  g_assert_cmpint (out.rows[1].stands, ==, TM_FIT_STANDS_OUT);
  picture = draw (&fit, 585, 240, theme);
  g_assert_cmpuint (count_colour (&picture, &theme->out, 0, 585), >, 100);
  clear_picture (&picture);
}

/* Zero, where press ends and clearance begins, is shown when it is near; far from it the range is. */
static void
test_zero (void)
{
  TmFitPicture fit = make_fit ();
  g_auto (TmFitSight) near = { 0 }, far = { 0 };

  tm_fit_sight_fill (&near, &fit);
  g_assert_true (near.has_zero);
  g_assert_cmpfloat (near.axis.low, <, -35 * UM);
  fit = (TmFitPicture) { .unit = TM_UNIT_MM, .has_limits = TRUE, .limits = make_check (300, 340, 0, 0) };
  tm_fit_sight_fill (&far, &fit);
  g_assert_false (far.has_zero);
  g_assert_cmpfloat (far.axis.low, >, 250 * UM);
  g_assert_cmpfloat (far.axis.high, >=, 340 * UM);
}

/* Everything that is shown lies on the axis. */
static void
test_axis (void)
{
  TmFitPicture fit = make_fit ();
  g_auto (TmFitSight) sight = { 0 };

  fit.has_warm = TRUE;
  fit.warm = make_check (-60, -44, 2, 0.5);
  tm_fit_sight_fill (&sight, &fit);
  g_assert_cmpuint (sight.n_rows, ==, 3);
  for (guint i = 0; i < sight.n_rows; i++)
    {
      g_assert_cmpfloat (sight.rows[i].least - sight.rows[i].expanded, >, sight.axis.low);
      g_assert_cmpfloat (sight.rows[i].most + sight.rows[i].expanded, <, sight.axis.high);
    }
}

/* What is no figure is left out, and never printed. */
static void
test_nonsense (void)
{
  static const double bad[] = { NAN, INFINITY, -INFINITY, 1e30, -1e30 };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    for (int field = 0; field < 6; field++)
      {
        TmFitPicture fit = make_fit ();
        double *fields[] = { &fit.measured.least,  &fit.measured.most,  &fit.measured.expanded,
                             &fit.measured.within, &fit.measured.loose, &fit.measured.tight };
        g_autofree char *words = NULL, *small = NULL;
        Picture picture;

        *fields[field] = bad[i];
        words = tm_fit_plot_describe (&fit);
        small = g_utf8_strdown (words, -1);
        g_assert_null (strstr (small, "nan"));
        g_assert_null (strstr (small, "inf"));
        picture = draw (&fit, 400, 160, tm_theme_dark ());
        g_assert_false (is_blank (&picture));
        clear_picture (&picture);
      }
}

static void
test_sizes (void)
{
  static const int sizes[][2]
      = { { 1, 1 }, { 8, 8 }, { 9, 300 }, { 300, 9 }, { 60, 40 }, { 320, 120 }, { 1600, 700 } };
  TmFitPicture fit = make_fit (), none = { .unit = TM_UNIT_MM };

  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      Picture picture = draw (&fit, sizes[i][0], sizes[i][1], tm_theme_light ());
      Picture empty = draw (&none, sizes[i][0], sizes[i][1], tm_theme_light ());

      g_assert_cmpint (is_blank (&picture), ==, sizes[i][0] < 8);
      g_assert_true (is_blank (&empty));
      clear_picture (&picture);
      clear_picture (&empty);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit/words", test_words);
  g_test_add_func ("/fit/clearance-words", test_clearance_words);
  g_test_add_func ("/fit/stands", test_stands);
  g_test_add_func ("/fit/zero", test_zero);
  g_test_add_func ("/fit/axis", test_axis);
  g_test_add_func ("/fit/nonsense", test_nonsense);
  g_test_add_func ("/fit/sizes", test_sizes);
  return g_test_run ();
}
