/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures of a gauge study: their words and their ink.
 */

#include "plot-support.h"

#include "plot-study-private.h"

/* Invented readings, µm above 25 mm: pieces of 5, 10 and 15; B reads 2 µm larger; repeats 1 µm apart. */
static TmStudy *
add_study (TmJob *job, guint people, gboolean complete)
{
  TmStudy *study = tm_study_new ();
  const guint n = 3 * people * 2 - (complete ? 0 : 1);

  study->name = "bore micrometer";
  study->method = "bore micrometer";
  study->unit = TM_UNIT_MM;
  study->repeats = quantity ("2", TM_UNIT_COUNT);
  study->band = quantity ("0.030", TM_UNIT_MM);
  for (guint i = 0; i < 3; i++)
    g_ptr_array_add (study->pieces, (gpointer)((const char *[]) { "P1", "P2", "P3" })[i]);
  for (guint i = 0; i < people; i++)
    g_ptr_array_add (study->people, (gpointer)((const char *[]) { "A", "B" })[i]);
  g_assert_cmpint (tm_job_add_study (job, study), ==, TM_ADD_OK);
  for (guint i = 0; i < n; i++)
    {
      TmStudyReading *reading = tm_study_reading_new ();
      const guint piece = i / (people * 2), person = i / 2 % people;
      g_autofree char *value = g_strdup_printf ("25.%03u", 5 * (piece + 1) + 2 * person + i % 2);

      reading->study = study->name;
      reading->piece = g_ptr_array_index (study->pieces, piece);
      reading->person = g_ptr_array_index (study->people, person);
      reading->trial = tm_quantity_new (i % 2 + 1, TM_UNIT_COUNT, 0);
      reading->value = quantity (value, TM_UNIT_MM);
      g_assert_cmpint (tm_job_add_study_reading (job, reading), ==, TM_ADD_OK);
    }
  return study;
}

static TmStudyPlot *
make_study_plot (TmJob *job, guint people, gboolean complete)
{
  const TmStudy *study = add_study (job, people, complete);
  TmStudyResult result;

  tm_study_result (job, study, &result);
  return tm_study_plot_new (job, study, &result);
}

/* By hand, in µm: error 6 · 0.5 = 3 of 6 degrees of freedom, crossed 0 of 2, pooled 3/8 of 8; people 12 of 1;
 * pieces 200 of 2. */
static void
test_words (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmStudyPlot) plot = make_study_plot (job, 2, TRUE);
  g_autofree char *parts = tm_study_plot_describe_parts (plot);
  g_autofree char *pieces = tm_study_plot_describe_pieces (plot);

  /* ev = √(3/8) µm, times six 3.67; people √((12 - 3/8) / 6) = 1.39, times six 8.35; pieces
   * √((100 - 3/8) / 4) = 4.99, times six 29.9; gauge √(0.375 + 1.9375) = 1.52, times six 9.12, of 30: 30 %.
   */
  g_assert_nonnull (strstr (parts, "repeatability: 0.00367, between 0.00248 and 0.00704"));
  g_assert_nonnull (strstr (parts, "people: 0.00835, "));
  g_assert_nonnull (strstr (parts, "people with pieces: 0, "));
  g_assert_nonnull (strstr (parts, "gauge, in all: 0.00912, "));
  g_assert_nonnull (strstr (parts, "pieces: 0.0299, "));
  g_assert_nonnull (strstr (parts, "The band is 0.0300 wide; the gauge in all takes 30 % of it."));
  g_assert_cmpstr (
      pieces, ==,
      "Readings less the mean of their piece: pieces 3, people 2, repeats 2. A reads 0.00100 mm below "
      "the mean of all. B reads 0.00100 mm above the mean of all. Repeats differ most on piece P1 by "
      "A: by 0.00100 mm.");
}

static void
test_one_person (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmStudyPlot) plot = make_study_plot (job, 1, TRUE);
  g_autofree char *parts = tm_study_plot_describe_parts (plot);
  g_autofree char *pieces = tm_study_plot_describe_pieces (plot);

  g_assert_nonnull (strstr (parts, "people: not known. people with pieces: not known."));
  g_assert_null (strstr (pieces, "mean of all"));
}

/* Whoever measures stays blind: neither words nor picture tell a value. */
static void
test_blind (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmStudyPlot) plot = make_study_plot (job, 2, FALSE);
  g_autofree char *parts = tm_study_plot_describe_parts (plot);
  g_autofree char *pieces = tm_study_plot_describe_pieces (plot);
  const TmTheme *theme = tm_theme_light ();
  Picture picture = make_picture (600, 300, theme);

  g_assert_null (plot->away);
  g_assert_null (strpbrk (parts, "0123456789"));
  g_assert_null (strpbrk (pieces, "0123456789"));
  tm_study_plot_draw_pieces (plot, picture.cr, 600, 300, theme);
  g_assert_false (is_blank (&picture));
  g_assert_cmpuint (count_colour (&picture, &theme->in, 0, 600), ==, 0);
  clear_picture (&picture);
}

static void
test_ink (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmStudyPlot) plot = make_study_plot (job, 2, TRUE);
  const TmTheme *theme = tm_theme_light ();
  Picture parts = make_picture (600, 300, theme), pieces = make_picture (600, 300, theme);

  tm_study_plot_draw_parts (plot, parts.cr, 600, 300, theme);
  /* The gauge in all is the one bar at full strength: about a third of the band's length. */
  g_assert_cmpuint (count_colour (&parts, &theme->in, 0, 600), >, 800);
  tm_study_plot_draw_pieces (plot, pieces.cr, 600, 300, theme);
  g_assert_cmpuint (count_colour (&pieces, &theme->in, 0, 600), >, 12 * 20);
  clear_picture (&parts);
  clear_picture (&pieces);
}

static void
test_sizes (void)
{
  static const double sizes[] = { 0.0, -1.0, 8.0, 40.0, 120.0, 300.0, 2000.0, NAN, INFINITY };

  for (guint people = 1; people <= 2; people++)
    for (guint complete = 0; complete <= 1; complete++)
      {
        g_autoptr (TmJob) job = make_job ();
        g_autoptr (TmStudyPlot) plot = make_study_plot (job, people, complete == 1);

        for (gsize w = 0; w < G_N_ELEMENTS (sizes); w++)
          for (gsize h = 0; h < G_N_ELEMENTS (sizes); h++)
            {
              Picture picture = make_picture (8, 8, tm_theme_dark ());
              tm_study_plot_draw_parts (plot, picture.cr, sizes[w], sizes[h], tm_theme_dark ());
              tm_study_plot_draw_pieces (plot, picture.cr, sizes[w], sizes[h], tm_theme_dark ());
              clear_picture (&picture);
            }
      }
}

static void
test_number (void)
{
  static const struct {
    double value;
    const char *text;
  } cases[]
      = { { 0.0025399, "0.00254" }, { 0, "0" }, { 12.3456, "12.3" }, { 1234.5, "1234" }, { -0.5, "-0.500" } };
  g_autofree char *unknown = tm_study_number (NAN, TM_UNIT_MM);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = tm_study_number (cases[i].value, TM_UNIT_MM);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
  g_assert_cmpstr (unknown, ==, "—");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/study/words", test_words);
  g_test_add_func ("/study/one-person", test_one_person);
  g_test_add_func ("/study/blind", test_blind);
  g_test_add_func ("/study/ink", test_ink);
  g_test_add_func ("/study/sizes", test_sizes);
  g_test_add_func ("/study/number", test_number);
  return g_test_run ();
}
