/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Balloons: what stands in them, where they are met and put, and that verdicts differ without colour.
 */

#include "plot-support.h"

#include "plot-balloon.h"

#define SIDE 120

static void
test_words (void)
{
  g_autoptr (TmJob) job = make_job ();
  TmFeature *feature = add_feature (job, TM_KIND_BORE, "25.000", "25.020", NULL);
  g_autofree char *one = tm_balloon_text (feature, 0), *said = NULL, *place = NULL, *placed = NULL,
                  *bare = NULL;

  g_assert_cmpstr (one, ==, "1");
  said = tm_balloon_words (feature, 0, TM_VERDICT_IN, FALSE);
  g_assert_cmpstr (said, ==, "balloon 1, in");
  feature->places = 4;
  place = tm_balloon_text (feature, 3);
  g_assert_cmpstr (place, ==, "1.3");
  placed = tm_balloon_words (feature, 3, TM_VERDICT_TOO_CLOSE, FALSE);
  g_assert_cmpstr (placed, ==, "balloon 1, place 3, too close");
  bare = tm_balloon_words (feature, 3, TM_VERDICT_OUT, TRUE);
  g_assert_cmpstr (bare, ==, "balloon 1, place 3");
}

static TmBalloon
make_balloon (double x, double y, const char *text)
{
  return (
      TmBalloon) { .x = x, .y = y, .text = text, .verdict = TM_VERDICT_NOT_MEASURED, .point = TM_POINT_NONE };
}

static TmBalloon
make_led (double x, double y, double to_x, double to_y)
{
  TmBalloon balloon = make_balloon (x, y, "7");

  balloon.led = TRUE;
  balloon.to_x = to_x;
  balloon.to_y = to_y;
  return balloon;
}

static void
test_parts (void)
{
  const TmTheme *theme = tm_theme_light ();
  const double radius = tm_balloon_radius (theme);
  const TmBalloon balloon = make_led (50, 50, 100, 90);

  g_assert_cmpint (tm_balloon_part_at (&balloon, 50 + radius * 0.9, 50, 0, theme), ==, TM_BALLOON_DISC);
  g_assert_cmpint (tm_balloon_part_at (&balloon, 50 + radius * 1.2, 50, 0, theme), ==, TM_BALLOON_NOWHERE);
  g_assert_cmpint (tm_balloon_part_at (&balloon, 50 + radius * 1.2, 50, radius, theme), ==, TM_BALLOON_DISC);
  g_assert_cmpint (tm_balloon_part_at (&balloon, 99, 89, 0, theme), ==, TM_BALLOON_TIP);
  g_assert_cmpint (tm_balloon_part_at (&balloon, 75, 70, 0, theme), ==, TM_BALLOON_NOWHERE);
}

/* A long number makes the balloon wider, and it is met there too. */
static void
test_wide (void)
{
  const TmTheme *theme = tm_theme_light ();
  const double radius = tm_balloon_radius (theme);
  const TmBalloon balloon = make_balloon (60, 60, "104.12");

  g_assert_cmpfloat (tm_balloon_half_width ("12", theme), ==, radius);
  g_assert_cmpfloat (tm_balloon_half_width ("104.12", theme), >, radius * 1.5);
  g_assert_cmpint (tm_balloon_part_at (&balloon, 60 + radius * 1.4, 60, 0, theme), ==, TM_BALLOON_DISC);
  g_assert_cmpint (tm_balloon_part_at (&balloon, 60, 60 + radius * 1.4, 0, theme), ==, TM_BALLOON_NOWHERE);
}

/* The one that is drawn last lies on top; a disc is met before a tip. */
static void
test_order (void)
{
  const TmTheme *theme = tm_theme_light ();
  const TmBalloon balloons[]
      = { make_balloon (50, 50, "1"), make_balloon (52, 50, "2"), make_led (90, 90, 50, 50) };
  TmBalloonPart part;

  g_assert_cmpint (tm_balloon_at (balloons, 3, 51, 50, 0, theme, &part), ==, 1);
  g_assert_cmpint (part, ==, TM_BALLOON_DISC);
  g_assert_cmpint (tm_balloon_at (balloons + 2, 1, 51, 50, 0, theme, &part), ==, 0);
  g_assert_cmpint (part, ==, TM_BALLOON_TIP);
  g_assert_cmpint (tm_balloon_at (balloons, 3, 5, 5, 0, theme, &part), ==, -1);
  g_assert_cmpint (part, ==, TM_BALLOON_NOWHERE);
}

/* Each new one, put near a tip of its own, covers none of those before and stays inside. */
static void
test_place (void)
{
  const TmTheme *theme = tm_theme_light ();
  const double radius = tm_balloon_radius (theme);
  TmBalloon all[40];
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      all[i] = make_led (0, 0, g_rand_double_range (rand, 0, 800), g_rand_double_range (rand, 0, 600));
      tm_balloon_place (&all[i], 800, 600, all, i, theme);
      g_assert_cmpfloat (all[i].x, >=, radius);
      g_assert_cmpfloat (all[i].x, <=, 800 - radius);
      g_assert_cmpfloat (all[i].y, >=, radius);
      g_assert_cmpfloat (all[i].y, <=, 600 - radius);
      for (guint k = 0; k < i; k++)
        g_assert_cmpfloat (hypot (all[i].x - all[k].x, all[i].y - all[k].y), >, radius * 2.0);
    }
}

/* Where all is free it comes up to the right, half a right angle from the tip. */
static void
test_place_first (void)
{
  TmBalloon balloon = make_led (0, 0, 400, 300);

  tm_balloon_place (&balloon, 800, 600, NULL, 0, tm_theme_light ());
  g_assert_cmpfloat (balloon.x, >, 400);
  g_assert_cmpfloat (balloon.y, <, 300);
  /* Rounding of sine and cosine alone. */
  g_assert_cmpfloat_with_epsilon (balloon.x - 400, 300 - balloon.y, 1e-9);
}

/* Without tips they stand in a row and go on in the next; a full page still takes one. */
static void
test_row (void)
{
  const TmTheme *theme = tm_theme_light ();
  TmBalloon all[30], last = make_balloon (0, 0, "9");
  TmBalloon tiny = make_balloon (0, 0, "9");

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      all[i] = make_balloon (0, 0, "12");
      tm_balloon_place (&all[i], 300, 400, all, i, theme);
      if (i > 0)
        g_assert_true (all[i].x > all[i - 1].x || all[i].y > all[i - 1].y);
    }
  tm_balloon_place (&last, 300, 20, all, 30, theme);
  g_assert_cmpfloat (last.x, <, 300);
  tm_balloon_place (&tiny, 4, 4, NULL, 0, theme);
  g_assert_cmpfloat (tiny.x, ==, 2);
}

static guint
count_ink (TmVerdict verdict, TmPoint point)
{
  TmTheme grey = *tm_theme_paper ();
  Picture picture;
  TmBalloon balloon = make_balloon (SIDE / 2, SIDE / 2, "8");
  guint n;

  /* All in one colour, as a printer without colours has it. */
  grey.in = grey.out = grey.close = grey.dim = grey.text;
  grey.text_size = 30.0;
  balloon.verdict = verdict;
  balloon.point = point;
  picture = make_picture (SIDE, SIDE, &grey);
  tm_balloon_draw (&balloon, picture.cr, &grey);
  n = count_colour (&picture, &grey.text, 0, SIDE);
  clear_picture (&picture);
  return n;
}

static void
test_without_colour (void)
{
  const guint in = count_ink (TM_VERDICT_IN, TM_POINT_NONE), out = count_ink (TM_VERDICT_OUT, TM_POINT_UP);
  const guint close = count_ink (TM_VERDICT_TOO_CLOSE, TM_POINT_NONE);
  const guint none = count_ink (TM_VERDICT_NOT_MEASURED, TM_POINT_NONE);

  g_assert_cmpuint (none, >, 50);
  g_assert_cmpuint (none, <, close);
  g_assert_cmpuint (close + 60, <, in);
  g_assert_cmpuint (in + 100, <, out);
  g_assert_cmpuint (out, !=, count_ink (TM_VERDICT_OUT, TM_POINT_DOWN));
}

/* On a drawing as black as ink the number stands on white. */
static void
test_readable (void)
{
  const TmTheme *theme = tm_theme_paper ();
  Picture picture = make_picture (SIDE, SIDE, theme);
  TmBalloon balloon = make_led (60, 60, 20, 20);

  cairo_set_source_rgb (picture.cr, 0, 0, 0);
  cairo_paint (picture.cr);
  tm_balloon_draw (&balloon, picture.cr, theme);
  g_assert_cmphex (get_pixel (&picture, 60, 60 - (int)(tm_balloon_radius (theme) * 0.75)), ==, 0xffffff);
  clear_picture (&picture);
}

static void
test_nonsense (void)
{
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (SIDE, SIDE, theme);
  TmBalloon balloon = make_led (60, 60, (double)NAN, 20);

  tm_balloon_draw (&balloon, picture.cr, theme);
  g_assert_true (is_blank (&picture));
  balloon = make_led (60, 60, 60, 60);
  balloon.text = "\xff\xfe a very long name of a balloon that nobody should give";
  tm_balloon_draw (&balloon, picture.cr, theme);
  g_assert_false (is_blank (&picture));
  clear_picture (&picture);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/balloon/words", test_words);
  g_test_add_func ("/balloon/parts", test_parts);
  g_test_add_func ("/balloon/wide", test_wide);
  g_test_add_func ("/balloon/order", test_order);
  g_test_add_func ("/balloon/place", test_place);
  g_test_add_func ("/balloon/place-first", test_place_first);
  g_test_add_func ("/balloon/row", test_row);
  g_test_add_func ("/balloon/without-colour", test_without_colour);
  g_test_add_func ("/balloon/readable", test_readable);
  g_test_add_func ("/balloon/nonsense", test_nonsense);
  return g_test_run ();
}
