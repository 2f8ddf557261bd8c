/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One thing that is missing on many pieces, at many places or stations is one row that names them all, in
 * each language; unlike things stay apart.
 */

#include <time.h>

#include "plot-words.h"
#include "report-gaps.h"
#include "report-language.h"
#include "report-name-list.h"
#include "report-package.h"
#include "report-support.h"

#include "pdf-support.h"

/* -------- Lists of names -------- */

static char *
tell_serials (const char *list)
{
  g_auto (GStrv) serials = g_strsplit (list, " ", -1);
  g_autoptr (TmJob) job = tm_job_new ();

  for (guint i = 0; serials[i] != NULL; i++)
    add_piece (job, tm_job_intern (job, serials[i]), FALSE);
  return tm_report_serials (job->pieces);
}

static void
test_serials (void)
{
  static const struct {
    const char *serials, *text;
  } cases[] = {
    { "7", "7" },
    { "7 8", "7 and 8" },
    { "3 4 5 6 7 9 12", "3–7, 9 and 12" },
    { "008 009 010 011", "008–011" },
    { "8 9 10 11", "8–11" },
    /* Written otherwise they are other pieces. */
    { "08 9 10", "08, 9 and 10" },
    { "99 100 101 0102", "99–101 and 0102" },
    { "A-09 A-10 A-11 B-12", "A-09 – A-11 and B-12" },
    { "9 8 7", "9, 8 and 7" },
    { "x y z", "x, y and z" },
    { "1 3 5 7 9 11 13", "1, 3, 5, 7, 9, 11 and 13" },
    { "1 3 5 7 9 11 13 15 16 17", "1, 3, 5, 7, 9, 11 … and 4 more pieces" },
    { "1 2 3 5 6 7 9 11 12 13 20 21 30 40 50", "1–3, 5–7, 9, 11–13, 20, 21 … and 3 more pieces" },
    /* Longer than any number that is counted up: only its end is. */
    { "99999999999999999999997 99999999999999999999998 99999999999999999999999",
      "99999999999999999999997 – 99999999999999999999999" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = tell_serials (cases[i].serials);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

/* Stations are names: 10, 11 and 12 mm deep are no range of stations. */
static void
test_names (void)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *few = NULL, *many = NULL;

  for (guint i = 0; i < 3; i++)
    g_ptr_array_add (names, (gpointer)((const char *[]) { "10", "11", "12" })[i]);
  few = tm_report_names (names);
  g_assert_cmpstr (few, ==, "10, 11 and 12");
  for (guint i = 0; i < 6; i++)
    g_ptr_array_add (names, (gpointer) "z");
  many = tm_report_names (names);
  g_assert_cmpstr (many, ==, "10, 11, 12, z, z, z … and 3 more");
}

/* -------- Gaps that are alike -------- */

/* A job that lacks nothing, of @n pieces 001, 002…, each first article and read. */
static TmJob *
make_pieces (guint n)
{
  TmJob *job = make_whole_job ();

  for (guint i = 2; i <= n; i++)
    {
      g_autofree char *serial = g_strdup_printf ("%03u", i);

      add_reading (job, add_piece (job, tm_job_intern (job, serial), TRUE),
                   g_ptr_array_index (job->features, 0), "", "25.010");
    }
  return job;
}

static TmPiece *
get_piece (TmJob *job, guint number)
{
  return g_ptr_array_index (job->pieces, number - 1);
}

/* What each row says, a line for each; the job is freed. */
static char *
list_gaps (TmJob *job)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < content->gaps->len; i++)
    {
      g_autofree char *gap = tm_gap_describe (g_ptr_array_index (content->gaps, i));

      g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", gap);
    }
  g_clear_pointer (&content, tm_report_content_free);
  tm_job_free (job);
  return g_string_free (text, FALSE);
}

static void
assert_gaps (TmJob *job, const char *text)
{
  g_autofree char *found = list_gaps (job);

  g_assert_cmpstr (found, ==, text);
}

/* A length that the pieces of those numbers lack, and the others have. */
static TmFeature *
add_length (TmJob *job, const guint *lacking, guint n)
{
  TmFeature *length = add_feature (job, "2", TM_KIND_LENGTH, "62", "61.9", "62.1", "micrometer");

  for (guint i = 1; i <= job->pieces->len; i++)
    {
      gboolean read = TRUE;

      for (guint k = 0; k < n; k++)
        read &= lacking[k] != i;
      if (read)
        add_reading (job, get_piece (job, i), length, "", "62.01");
    }
  return length;
}

static void
test_pieces (void)
{
  static const guint lacking[] = { 3, 4, 5, 6, 7, 9, 12 };
  g_autoptr (TmJob) job = make_pieces (13);
  g_autoptr (TmReportContent) content = NULL;
  g_autofree char *text = NULL;
  const TmGap *gap;

  add_length (job, lacking, G_N_ELEMENTS (lacking));
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->gaps->len, ==, 1);
  gap = g_ptr_array_index (content->gaps, 0);
  text = tm_gap_describe (gap);
  g_assert_cmpstr (text, ==, "Feature 2 of pieces 003–007, 009 and 012 is not measured: measure it.");
  /* It is gone to at the first of them. */
  g_assert_true (gap->piece == get_piece (job, 3));
  g_assert_cmpuint (gap->pieces->len, ==, 7);
  g_assert_true (g_ptr_array_index (gap->pieces, 0) == gap->piece);
  g_assert_cmpuint (gap->place, ==, 1);
  g_assert_cmpuint (content->n_not_measured, ==, 7);
}

static void
test_one_piece (void)
{
  static const guint lacking[] = { 2 };
  TmJob *job = make_pieces (3);

  add_length (job, lacking, 1);
  assert_gaps (job, "Feature 2 of piece 002 is not measured: measure it.");
}

/* Never measured, cut since, out without a number: three reasons, three rows, in the order they are met. */
static void
test_unlike (void)
{
  static const guint lacking[] = { 1, 3 };
  TmJob *job = make_pieces (6);
  TmFeature *length = add_length (job, lacking, G_N_ELEMENTS (lacking));

  for (guint i = 4; i <= 5; i++)
    {
      TmCutRow *cut = tm_cut_row_new ();
      g_autofree char *after = NULL;

      for (guint k = 0; k < job->readings->len; k++)
        {
          const TmReading *reading = g_ptr_array_index (job->readings, k);

          if (reading->row.piece == get_piece (job, i) && reading->row.feature == length)
            after = g_strdup (reading->row.id);
        }
      cut->row.piece = get_piece (job, i);
      cut->row.feature = length;
      cut->dialled = quantity ("0.005", TM_UNIT_MM);
      cut->after = tm_job_intern (job, after);
      g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
    }
  for (guint k = 0; k < job->readings->len; k++)
    {
      TmReading *reading = g_ptr_array_index (job->readings, k);

      if (reading->row.piece == get_piece (job, 2) || reading->row.piece == get_piece (job, 6))
        reading->value = quantity (reading->row.feature == length ? "63" : "25.010", TM_UNIT_MM);
    }
  assert_gaps (job, "Feature 2 of pieces 001 and 003 is not measured: measure it.\n"
                    "Feature 2 of pieces 002 and 006 is out: enter the nonconformance number of each.\n"
                    "Feature 2 of pieces 004 and 005 was cut after it was last read: measure it again.");
}

/* The same kind on another feature is another thing. */
static void
test_features (void)
{
  TmJob *job = make_pieces (3);

  add_feature (job, "2", TM_KIND_LENGTH, "62", "61.9", "62.1", "micrometer");
  add_feature (job, "3", TM_KIND_LENGTH, "9", "8.9", "9.1", "micrometer");
  assert_gaps (job, "Feature 2 of pieces 001–003 is not measured: measure it.\n"
                    "Feature 3 of pieces 001–003 is not measured: measure it.");
}

/* Each nonconformance is decided by itself. */
static void
test_dispositions (void)
{
  TmJob *job = make_pieces (4);
  static const char *const numbers[] = { "NC-1", "NC-2", "NC-1" };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      add_nonconformance (job, get_piece (job, i + 1)->serial, "1", numbers[i]);
      ((TmNonconformance *)g_ptr_array_index (job->nonconformances, i))->disposition = "";
    }
  assert_gaps (job,
               "Nonconformance NC-1 of feature 1 (Ø25 H7), pieces 001 and 003, has no disposition: record "
               "what was decided.\n"
               "Nonconformance NC-2 of feature 1 (Ø25 H7), piece 002, has no disposition: record what was "
               "decided.");
}

static TmReading *
add_at (TmJob *job, TmPiece *piece, TmFeature *feature, guint place, const char *station)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = piece;
  reading->row.feature = feature;
  reading->row.by = "AB";
  reading->row.at = "2026-05-04T09:12:33Z";
  reading->place = place;
  reading->station = station;
  reading->value = quantity ("6.50", TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

/* Four holes: one piece lacks all, two lack the same two, one lacks the last. */
static void
test_places (void)
{
  TmJob *job = make_pieces (5);
  TmFeature *holes = add_feature (job, "2", TM_KIND_BORE, "6.5", "6.4", "6.6", "micrometer");

  holes->requirement = "4X Ø6.5 ±0.1";
  holes->places = 4;
  for (guint place = 1; place <= 4; place++)
    {
      if (place > 2)
        for (guint number = 2; number <= 3; number++)
          add_at (job, get_piece (job, number), holes, place, "");
      if (place < 4)
        add_at (job, get_piece (job, 4), holes, place, "");
      add_at (job, get_piece (job, 5), holes, place, "");
    }
  assert_gaps (job,
               "Feature 2 (4X Ø6.5 ±0.1), places 1 and 2 of pieces 001–003 is not measured: measure it.\n"
               "Feature 2 (4X Ø6.5 ±0.1), place 3 of piece 001 is not measured: measure it.\n"
               "Feature 2 (4X Ø6.5 ±0.1), place 4 of pieces 001 and 004 is not measured: measure it.");
}

static void
test_all_places (void)
{
  TmJob *job = make_pieces (3);
  TmFeature *holes = add_feature (job, "2", TM_KIND_BORE, "6.5", "6.4", "6.6", "micrometer");

  holes->places = 4;
  assert_gaps (job, "Feature 2 of pieces 001–003 is not measured: measure it.");
}

static void
test_stations (void)
{
  TmJob *job = make_pieces (3);
  TmFeature *bore = add_feature (job, "2", TM_KIND_BORE, "6.5", "6.4", "6.6", "micrometer");

  g_ptr_array_add (bore->stations, (gpointer) "mouth/12");
  g_ptr_array_add (bore->stations, (gpointer) "middle/12");
  g_ptr_array_add (bore->stations, (gpointer) "bottom/12");
  for (guint number = 1; number <= 3; number++)
    add_at (job, get_piece (job, number), bore, 1, "mouth/12");
  add_at (job, get_piece (job, 3), bore, 1, "middle/12");
  assert_gaps (job, "Feature 2 of pieces 001 and 002 was not read at station middle/12: read it there.\n"
                    "Feature 2 of pieces 001–003 was not read at station bottom/12: read it there.");
  job = make_pieces (2);
  bore = add_feature (job, "2", TM_KIND_BORE, "6.5", "6.4", "6.6", "micrometer");
  g_ptr_array_add (bore->stations, (gpointer) "mouth/12");
  g_ptr_array_add (bore->stations, (gpointer) "middle/12");
  g_ptr_array_add (bore->stations, (gpointer) "bottom/12");
  for (guint number = 1; number <= 2; number++)
    add_at (job, get_piece (job, number), bore, 1, "mouth/12");
  assert_gaps (job,
               "Feature 2 of pieces 001 and 002 was not read at stations middle/12 and bottom/12: read it "
               "there.");
}

/* A wrong name of a method is mended in one place, whatever stations and readings have it. */
static void
test_no_method (void)
{
  TmJob *job = make_pieces (3);

  ((TmFeature *)g_ptr_array_index (job->features, 0))->method = "";
  ((TmReading *)g_ptr_array_index (job->readings, 1))->method = "lost";
  assert_gaps (job, "Feature 1 (Ø25 H7) of pieces 001–003 was read by no known method: name the gauge.");
}

/* -------- Languages -------- */

static gboolean
has_german (void)
{
  g_auto (GStrv) languages = tm_language_list ();

  return g_strv_contains ((const char *const *)languages, "de");
}

static void
test_german (void)
{
  TmJob *job = make_pieces (20);
  TmFeature *holes = add_feature (job, "2", TM_KIND_BORE, "6.5", "6.4", "6.6", "micrometer");
  TmWords words;
  g_autofree char *text = NULL, *single = NULL, *many = NULL;

  if (!has_german ())
    {
      tm_job_free (job);
      g_test_skip ("no German catalogue");
      return;
    }
  holes->places = 4;
  for (guint number = 1; number <= 17; number++)
    for (guint place = 4; place <= 4; place++)
      add_at (job, get_piece (job, number), holes, place, "");
  for (guint number = 18; number <= 20; number++)
    for (guint place = 1; place <= 4; place++)
      add_at (job, get_piece (job, number), holes, place, "");
  tm_language_words ("de", TM_DECIMAL_COMMA, &words);
  tm_words_use (&words);
  text = list_gaps (job);
  job = make_pieces (2);
  add_feature (job, "2", TM_KIND_BORE, "6.5", "6.4", "6.6", "micrometer");
  get_piece (job, 2)->first_article = FALSE;
  single = list_gaps (job);
  many = tell_serials ("1.01 1.02 1.03 2.05 3 5 7 9 11 13");
  tm_words_use (NULL);
  g_assert_cmpstr (text, ==, "Merkmal 2, Stellen 1–3 von den Teilen 001–017 ist nicht gemessen: messen.");
  g_assert_cmpstr (single, ==, "Merkmal 2 von Teil 001 ist nicht gemessen: messen.");
  /* A serial keeps its point where numbers have a comma. */
  g_assert_cmpstr (many, ==, "1.01 – 1.03, 2.05, 3, 5, 7, 9 … und 2 weiteren Teilen");
}

/* The pages of two languages say each row in both. */
static void
test_two_languages (void)
{
  static const TmReportForm form = { .language = "de", .second_language = "en" };
  g_autoptr (TmJob) job = make_pieces (9);
  g_autoptr (TmReportContent) content = NULL;
  g_autofree char *folder = NULL, *path = NULL, *text = NULL;
  g_auto (GStrv) words = NULL;
  g_autofree char *flat = NULL;
  g_autoptr (GError) error = NULL;

  if (!has_german () || !has_pdf_tools ())
    {
      g_test_skip ("no German catalogue, or nothing that reads a PDF");
      return;
    }
  add_feature (job, "2", TM_KIND_LENGTH, "62", "61.9", "62.1", "micrometer");
  content = tm_report_content_new (job);
  folder = g_dir_make_tmp ("tenthmark-gaps-XXXXXX", NULL);
  path = g_build_filename (folder, "report.pdf", NULL);
  g_assert_true (
      tm_report_package_write (content, &form, "2026-05-05T10:00:00Z", path, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  text = pdf_text (path);
  (void)g_unlink (path);
  (void)g_rmdir (folder);
  words = g_strsplit_set (text, " \n", -1);
  flat = g_strjoinv (" ", words);
  g_assert_nonnull (strstr (flat, "Merkmal 2 von den Teilen 001–009 ist nicht gemessen: messen."));
  g_assert_nonnull (strstr (flat, "Feature 2 of pieces 001–009 is not measured: measure it."));
}

/* -------- Many -------- */

/* Milliseconds that this thread itself worked. */
static double
worked (void)
{
  struct timespec now = { 0 };

  g_assert_cmpint (clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now), ==, 0);
  return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

/* To find and to tell what all of @n_pieces of 100 features lack: a row for each feature. */
static double
time_gaps (guint n_pieces)
{
  g_autoptr (TmJob) job = make_pieces (n_pieces);
  g_autoptr (TmReportContent) content = NULL;
  g_autofree char *first = NULL;
  double least = G_MAXDOUBLE;

  for (guint i = 2; i <= 100; i++)
    {
      g_autofree char *balloon = g_strdup_printf ("%u", i);

      add_feature (job, tm_job_intern (job, balloon), TM_KIND_LENGTH, "62", "61.9", "62.1", "micrometer");
    }
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->gaps->len, ==, 99);
  first = tm_gap_describe (g_ptr_array_index (content->gaps, 0));
  g_assert_nonnull (strstr (first, "of pieces 001–"));
  for (guint turn = 0; turn < 5; turn++)
    {
      const double begun = worked ();

      g_ptr_array_set_size (content->gaps, 0);
      tm_report_find_gaps (content);
      for (guint i = 0; i < content->gaps->len; i++)
        g_free (tm_gap_describe (g_ptr_array_index (content->gaps, i)));
      least = MIN (least, worked () - begun);
    }
  return least;
}

/* Eight times the pieces take about eight times as long; were each held against each it were 64 times.  Half
 * way between on the scale of powers, sqrt (8 * 64) = 23, leaves room for caches that overflow. */
static void
test_many (void)
{
  const double few = time_gaps (75);
  const double many = time_gaps (600);

  g_test_message ("75 pieces: %.2f ms, 600 pieces: %.2f ms", few, many);
  g_assert_cmpfloat (many, <, 23 * few);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/gaps/serials", test_serials);
  g_test_add_func ("/gaps/names", test_names);
  g_test_add_func ("/gaps/pieces", test_pieces);
  g_test_add_func ("/gaps/one-piece", test_one_piece);
  g_test_add_func ("/gaps/unlike", test_unlike);
  g_test_add_func ("/gaps/features", test_features);
  g_test_add_func ("/gaps/dispositions", test_dispositions);
  g_test_add_func ("/gaps/places", test_places);
  g_test_add_func ("/gaps/all-places", test_all_places);
  g_test_add_func ("/gaps/stations", test_stations);
  g_test_add_func ("/gaps/no-method", test_no_method);
  g_test_add_func ("/gaps/german", test_german);
  g_test_add_func ("/gaps/two-languages", test_two_languages);
  g_test_add_func ("/gaps/many", test_many);
  return g_test_run ();
}
