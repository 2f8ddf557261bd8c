/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The run chart: its points, its words and where it puts its ink.
 */

#include "plot-support.h"

#include "plot-run-private.h"

static TmPiece *
add_piece (TmJob *job, const char *serial)
{
  TmPiece *piece = tm_piece_new ();

  piece->serial = tm_job_intern (job, serial);
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
  return piece;
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

/* Three pieces, two stations each; the second lies out above. */
static TmJob *
make_run (TmFeature **bore)
{
  TmJob *job = make_job ();
  TmPiece *second = add_piece (job, "002"), *third = add_piece (job, "003");

  *bore = add_feature (job, TM_KIND_BORE, "25.000", "25.020", "mouth bottom");
  (*bore)->requirement = "Ø25";
  add_reading (job, *bore, "mouth", "25.008");
  add_reading (job, *bore, "bottom", "25.010");
  add_reading_of (job, second, *bore, "mouth", "25.018");
  add_reading_of (job, second, *bore, "bottom", "25.021");
  add_reading_of (job, third, *bore, "mouth", "25.006");
  return job;
}

static void
test_points (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_run (&bore);
  g_autoptr (TmRunPlot) plot = tm_run_plot_new (job, bore);
  const TmRunPoint *points = (const TmRunPoint *)(gpointer)plot->points->data;

  g_assert_cmpuint (plot->points->len, ==, 3);
  /* Means of picometre counts: doubles hold them exactly. */
  g_assert_cmpfloat (points[0].mean, ==, 25009000000.0);
  g_assert_cmpfloat (points[0].smallest, ==, 25008000000.0);
  g_assert_cmpfloat (points[0].largest, ==, 25010000000.0);
  g_assert_cmpint (points[0].verdict, ==, TM_VERDICT_IN);
  g_assert_cmpint (points[1].verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpint (points[1].point, ==, TM_POINT_UP);
  g_assert_true (plot->has_target);
  g_assert_cmpfloat (plot->target, ==, 25010000000.0);
}

static void
test_words (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_run (&bore);
  g_autoptr (TmRunPlot) plot = NULL;
  g_autofree char *words = NULL;

  add_event (job, "003", "tool", "");
  add_event (job, "002", "other", "new insert");
  add_event (job, "no such piece", "lot", "");
  plot = tm_run_plot_new (job, bore);
  words = tm_run_plot_describe (plot);
  g_assert_cmpstr (words, ==,
                   "Ø25 by piece: 3 means from 25.0060 to 25.0195 mm; limits 25.000 … 25.020. "
                   "Piece 002 lies outside. Before piece 002: new insert. Before piece 003: tool change.");
}

static void
test_ink (void)
{
  TmFeature *bore;
  g_autoptr (TmJob) job = make_run (&bore);
  g_autoptr (TmRunPlot) plot = NULL;
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (600, 300, theme);
  guint rows_with_line = 0;

  add_event (job, "003", "tool", "");
  plot = tm_run_plot_new (job, bore);
  tm_run_plot_draw (plot, picture.cr, 600, 300, theme);
  g_assert_cmpuint (count_colour (&picture, &theme->in, 0, 600), >, 20);
  g_assert_cmpuint (count_colour (&picture, &theme->out, 0, 600), >, 10);
  /* A limit is a row of the text colour from side to side: two of them, two pixels each at most. */
  for (int y = 0; y < picture.height; y++)
    {
      guint inked = 0;
      for (int x = 100; x < 590; x++)
        inked += is_colour (get_pixel (&picture, x, y), &theme->text, 40.0);
      rows_with_line += inked > 440;
    }
  g_assert_cmpuint (rows_with_line, >=, 2);
  g_assert_cmpuint (rows_with_line, <=, 6);
  clear_picture (&picture);
}

static void
test_sizes (void)
{
  static const double sizes[] = { 0.0, -1.0, 8.0, 40.0, 120.0, 300.0, 2000.0, NAN, INFINITY };
  TmFeature *bore;
  g_autoptr (TmJob) job = make_run (&bore);
  TmFeature *features[] = {
    bore,
    add_feature (job, TM_KIND_ATTRIBUTE, "", "", NULL),
    add_feature (job, TM_KIND_LENGTH, "", "", NULL),
    add_feature (job, TM_KIND_DEPTH, "18", "", NULL),
    add_feature (job, TM_KIND_FORM, "", "0.05", NULL),
  };

  add_reading (job, features[3], "", "18.3");
  features[0]->places = 4;
  for (guint i = 0; i < 40; i++)
    add_event (job, i % 2 == 0 ? "002" : "003", "lot", "a note that goes on and on and on");
  for (gsize f = 0; f < G_N_ELEMENTS (features); f++)
    {
      g_autoptr (TmRunPlot) plot = tm_run_plot_new (job, features[f]);
      g_autofree char *words = tm_run_plot_describe (plot);

      g_assert_nonnull (words);
      for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
        for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
          {
            Picture picture = make_picture (8, 8, tm_theme_dark ());
            tm_run_plot_draw (plot, picture.cr, sizes[w], sizes[h], tm_theme_dark ());
            clear_picture (&picture);
          }
    }
}

static void
test_empty (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *length = add_feature (job, TM_KIND_LENGTH, "", "", NULL);
  g_autoptr (TmRunPlot) plot = tm_run_plot_new (job, length);
  g_autofree char *words = tm_run_plot_describe (plot);
  Picture picture = make_picture (300, 200, tm_theme_light ());

  g_assert_cmpstr (words, ==, "1 by piece: no sizes yet.");
  tm_run_plot_draw (plot, picture.cr, 300, 200, tm_theme_light ());
  g_assert_false (is_blank (&picture));
  clear_picture (&picture);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/run/points", test_points);
  g_test_add_func ("/run/words", test_words);
  g_test_add_func ("/run/ink", test_ink);
  g_test_add_func ("/run/sizes", test_sizes);
  g_test_add_func ("/run/empty", test_empty);
  return g_test_run ();
}
