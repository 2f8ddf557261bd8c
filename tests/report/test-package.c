/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The first-article report as pages: what the record holds stands on them, in every paper and language, for
 * every sample job and for jobs that are hard to set.
 */

#include "exchange-job.h"
#include "report-package.h"
#include "report-support.h"

#include "pdf-support.h"

#define MADE "2026-05-04T09:12:33Z"

static const TmReportForm forms[] = {
  { .paper = TM_PAPER_A4 },
  { .paper = TM_PAPER_LETTER, .landscape = TRUE, .language = "en", .dates = TM_DATE_MDY },
  { .paper = TM_PAPER_A4,
    .landscape = TRUE,
    .language = "de",
    .decimal = TM_DECIMAL_COMMA,
    .dates = TM_DATE_DMY },
  { .paper = TM_PAPER_LETTER, .language = "de", .second_language = "en" },
};

typedef struct {
  char *folder;
  char *path;
} Place;

static void
make_place (Place *place)
{
  place->folder = g_dir_make_tmp ("tenthmark-package-XXXXXX", NULL);
  g_assert_nonnull (place->folder);
  place->path = g_build_filename (place->folder, "report.pdf", NULL);
}

static void
clear_place (Place *place)
{
  (void)g_unlink (place->path);
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->folder);
  g_free (place->path);
}

static guint
write_report (const TmJob *job, const TmReportForm *form, const char *path)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;
  TmPackageMade told = { 0 };

  g_assert_true (tm_report_package_write (content, form, MADE, path, &told, NULL, NULL, &error));
  g_assert_no_error (error);
  g_free (told.missing_glyphs);
  return told.n_pages;
}

static char *
use_comma (const TmReportForm *form, char *number)
{
  if (form->decimal == TM_DECIMAL_COMMA)
    g_strdelimit (number, ".", ',');
  return number;
}

/* The balloon as a word, and the smallest size to the digit. */
static void
assert_line (const TmReportLine *line, gboolean together, const TmReportForm *form, const char *words)
{
  const TmSizes *sizes = &line->judgement.sizes;
  g_autofree char *balloon = g_strdup_printf ("\n%s\n", line->feature->balloon);

  g_assert_nonnull (strstr (words, balloon));
  if (together && line->judgement.verdict == TM_VERDICT_IN)
    return;
  if (sizes->n_stations == 1 && !tm_kind_is_attribute (line->feature->kind))
    {
      g_autofree char *size = use_comma (form, tm_judgement_size_text (&line->judgement));
      g_autofree char *word = g_strdup_printf ("\n%s\n", size);

      if (strstr (words, word) == NULL)
        g_error ("feature %s: no %s", line->feature->balloon, size);
    }
}

/* Each word of the file on a line of its own. */
static char *
list_words (const char *path)
{
  g_autofree char *text = pdf_ask (path, "-", "pdftotext", NULL);
  g_auto (GStrv) words = g_strsplit_set (text, " \n\f", -1);
  g_autofree char *joined = g_strjoinv ("\n", words);

  return g_strconcat ("\n", joined, "\n", NULL);
}

static void
check_sample (const char *path)
{
  g_auto (TmJobNotes) notes = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = tm_job_from_file (path, &notes, NULL, NULL, &error);
  g_autoptr (TmReportContent) content = NULL;

  g_assert_no_error (error);
  content = tm_report_content_new (job);
  /* The published piston rings are no first article. */
  if (tm_job_has_first_article (job))
    {
      g_assert_cmpuint (content->gaps->len, ==, 1);
      g_assert_cmpint (((const TmGap *)g_ptr_array_index (content->gaps, 0))->kind, ==, TM_GAP_UNSIGNED);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      Place place;
      g_autofree char *words = NULL, *text = NULL, *fonts = NULL;
      guint n;

      make_place (&place);
      n = write_report (job, &forms[i], place.path);
      g_assert_cmpuint (pdf_pages (place.path), ==, n);
      words = list_words (place.path);
      for (guint k = 0; k < content->lines->len; k++)
        assert_line (g_ptr_array_index (content->lines, k), !tm_job_has_first_article (job), &forms[i],
                     words);
      assert_inside (place.path, 20);
      fonts = pdf_ask (place.path, NULL, "pdffonts", NULL);
      g_assert_null (strstr (fonts, " no "));
      text = pdf_text (place.path);
      g_assert_cmpuint (count_text (text, job->part_number), >=, n);
      clear_place (&place);
    }
}

static void
test_samples (void)
{
  const char *folder = g_getenv ("TM_SAMPLE_JOBS");
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  if (!has_pdf_tools ())
    return;
  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".tmjob"))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);

        check_sample (path);
        n++;
      }
  g_assert_cmpuint (n, >, 4);
}

/* A job of @n features read once each, every third out, every fifth unread. */
static TmJob *
make_job (guint n)
{
  TmJob *job = make_whole_job ();
  TmPiece *piece = g_ptr_array_index (job->pieces, 0);

  for (guint i = 2; i <= n; i++)
    {
      g_autofree char *balloon = g_strdup_printf ("%u", i);
      TmFeature *feature = add_feature (job, g_string_chunk_insert (job->texts, balloon), TM_KIND_LENGTH,
                                        "12", "11.9", "12.1", "micrometer");

      feature->requirement = "12 ±0.1";
      if (i % 5 != 0)
        add_reading (job, piece, feature, "", i % 3 == 0 ? "12.345" : "12.012");
    }
  return job;
}

static void
test_sizes (void)
{
  static const guint sizes[] = { 1, 40, 600 };

  if (!has_pdf_tools ())
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (gsize f = 0; f < G_N_ELEMENTS (forms); f++)
      {
        g_autoptr (TmJob) job = make_job (sizes[i]);
        g_autoptr (TmReportContent) content = tm_report_content_new (job);
        g_autofree char *words = NULL;
        Place place;

        make_place (&place);
        write_report (job, &forms[f], place.path);
        assert_inside (place.path, 20);
        words = list_words (place.path);
        for (guint k = 0; k < content->lines->len; k++)
          assert_line (g_ptr_array_index (content->lines, k), FALSE, &forms[f], words);
        clear_place (&place);
      }
}

/* Many pieces: one row for each characteristic, with the smallest and largest of all, and under it those that
 * are not in. */
static void
test_many_pieces (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  g_autofree char *text = NULL;
  Place place;

  if (!has_pdf_tools ())
    return;
  ((TmPiece *)g_ptr_array_index (job->pieces, 0))->first_article = FALSE;
  for (guint i = 2; i <= 8; i++)
    {
      g_autofree char *serial = g_strdup_printf ("S-%u", i);
      g_autofree char *size = g_strdup_printf ("25.0%02u", i == 8 ? 77 : 5 + i);
      TmPiece *piece = add_piece (job, g_string_chunk_insert (job->texts, serial), FALSE);

      add_reading (job, piece, bore, "", g_string_chunk_insert (job->texts, size));
    }
  add_piece (job, "S-9", FALSE);
  make_place (&place);
  write_report (job, &forms[1], place.path);
  text = pdf_text (place.path);
  g_assert_nonnull (strstr (text, "all 9"));
  g_assert_nonnull (strstr (text, "25.007 … 25.077"));
  g_assert_nonnull (strstr (text, "1 piece not measured"));
  g_assert_cmpuint (count_text (text, "S-8"), >=, 1);
  g_assert_cmpuint (count_text (text, "S-3"), ==, 1); /* among the pieces on the first page */
  clear_place (&place);
}

/* -------- Hard texts -------- */

static void
test_hard_names (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *feature = g_ptr_array_index (job->features, 0);
  g_autoptr (GString) word = g_string_new (NULL);
  g_autofree char *expected = NULL;

  if (!has_pdf_tools ())
    return;
  for (guint i = 0; i < 30; i++)
    g_string_append (word, "Wellenlage");
  job->part_name = word->str;
  job->part_number = word->str;
  job->customer = "\xd7\x9e\xd7\xa4\xd7\xa2\xd7\x9c 7 (invented)";
  feature->name = word->str;
  expected = g_strndup (word->str, word->len);
  for (gsize f = 0; f < G_N_ELEMENTS (forms); f++)
    {
      Place place;
      g_autofree char *text = NULL, *joined = NULL, *words = NULL;
      g_auto (GStrv) lines = NULL;

      make_place (&place);
      write_report (job, &forms[f], place.path);
      assert_inside (place.path, 20);
      text = pdf_ask (place.path, "-", "pdftotext", "-raw", NULL);
      lines = g_strsplit_set (text, "\n", -1);
      joined = g_strjoinv ("", lines);
      /* The part's number, its name twice over (title and fact), and the feature's. */
      g_assert_cmpuint (count_text (joined, expected), >=, 4);
      words = pdf_ask (place.path, "-", "pdftotext", NULL);
      g_assert_nonnull (strstr (words, "\xd7\x9e\xd7\xa4\xd7\xa2\xd7\x9c"));
      clear_place (&place);
    }
}

/* Texts longer than many pages, with and without places to break them: all of it stands inside the margins.
 */
static void
test_endless_texts (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *feature = g_ptr_array_index (job->features, 0);
  g_autoptr (GString) words = g_string_new (NULL);
  g_autofree char *solid = g_strnfill (20000, 'x');

  if (!has_pdf_tools ())
    return;
  for (guint i = 0; i < 6000; i++)
    g_string_append_printf (words, "w%04u ", i);
  job->part_name = job->part_number = job->revision = job->id = job->customer = solid;
  feature->name = words->str;
  feature->zone = feature->designator = solid;
  ((TmPiece *)g_ptr_array_index (job->pieces, 0))->serial = words->str;
  for (gsize f = 0; f < G_N_ELEMENTS (forms); f += 3)
    {
      Place place;
      g_autofree char *text = NULL;

      make_place (&place);
      write_report (job, &forms[f], place.path);
      assert_inside (place.path, 20);
      text = pdf_ask (place.path, "-", "pdftotext", "-raw", NULL);
      for (guint i = 0; i < 6000; i++)
        {
          g_autofree char *word = g_strdup_printf ("w%04u", i);
          g_assert_cmpuint (count_text (text, word), >=, 2); /* the serial and the feature's name */
        }
      clear_place (&place);
    }
}

/* -------- Languages -------- */

static void
test_german (void)
{
  g_autoptr (TmJob) job = make_job (3);
  Place place;
  g_autofree char *text = NULL;

  if (!has_pdf_tools ())
    return;
  make_place (&place);
  write_report (job, &forms[2], place.path);
  text = pdf_text (place.path);
  g_assert_nonnull (strstr (text, "Erstmusterprüfbericht"));
  g_assert_nonnull (strstr (text, "Merkmale"));
  g_assert_nonnull (strstr (text, "25,010"));
  g_assert_nonnull (strstr (text, "05.01.2027"));
  g_assert_nonnull (strstr (text, "Seite 1 von"));
  g_assert_null (strstr (text, "25.010"));
  g_assert_null (strstr (text, "Characteristics"));
  clear_place (&place);
}

/* The file names who made the report, what of and for whom. */
static void
test_facts (void)
{
  g_autoptr (TmJob) job = make_job (3);
  Place place;
  g_autofree char *info = NULL;

  job->organisation = "Invented Works";
  job->part_name = "Sleeve";
  job->customer = "Invented Pumps";
  job->language = "de";
  g_assert_cmpstr (tm_report_package_facts (job, MADE).author, ==, "Invented Works");
  g_assert_cmpstr (tm_report_package_facts (job, MADE).language, ==, "de");
  if (!has_pdf_tools ())
    return;
  make_place (&place);
  write_report (job, &forms[0], place.path);
  info = pdf_ask (place.path, NULL, "pdfinfo", NULL);
  g_assert_nonnull (strstr (info, "Invented Works"));
  g_assert_nonnull (strstr (info, "Sleeve"));
  g_assert_nonnull (strstr (info, "Invented Pumps"));
  clear_place (&place);
}

/* The page's text with each run of white space as one blank. */
static char *
write_and_read (const TmJob *job, const TmReportForm *form)
{
  Place place;
  g_autofree char *text = NULL;
  g_auto (GStrv) words = NULL;
  GString *out = g_string_new (NULL);

  make_place (&place);
  write_report (job, form, place.path);
  assert_inside (place.path, 20);
  text = pdf_ask (place.path, "-", "pdftotext", "-raw", NULL);
  words = g_strsplit_set (text, " \n\f", -1);
  for (char **word = words; *word != NULL; word++)
    if (**word != '\0')
      g_string_append_printf (out, "%s ", *word);
  clear_place (&place);
  return g_string_free (out, FALSE);
}

/* The first result stays visible after a rework, in the customer's language. */
static void
test_rework (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *english = NULL, *german = NULL, *unread = NULL;

  if (!has_pdf_tools ())
    return;
  rework_bore (job);
  english = write_and_read (job, &forms[0]);
  g_assert_nonnull (strstr (english, "first result 24.990 out, reworked 2026-05-04 (NC-14), then 25.010 in"));
  german = write_and_read (job, &forms[2]);
  g_assert_nonnull (strstr (
      german,
      "erstes Ergebnis 24,990 außerhalb, nachgearbeitet 04.05.2026 (NC-14), danach 25,010 innerhalb"));
  g_assert_cmpint (
      tm_job_withdraw (job, g_ptr_array_index (job->readings, 1), "AB", "2026-05-04T11:00:00Z", "wrong bore"),
      ==, TM_ADD_OK);
  unread = write_and_read (job, &forms[0]);
  g_assert_nonnull (
      strstr (unread, "first result 24.990 out, reworked 2026-05-04 (NC-14), not measured since"));
}

/* Everything that the job holds is printed, and no label of what it does not. */
static void
test_accountability (void)
{
  static const char *const told[] = { "FA-0815",     "C2",        "Invented Works",
                                      "S-4711",      "LOT-9",     "ECN-3",
                                      "assembly",    "Heat",      "re-inspection",
                                      "after-NC-14", "H-77",      "Bar-EN-1.4301",
                                      "Passivation", "Leak-test", "Z-1",
                                      "Z-2",         "Z-3",       "SUB-1",
                                      "FA-0700" };
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *bare = NULL, *whole = NULL, *german = NULL;

  if (!has_pdf_tools ())
    return;
  g_ptr_array_set_size (job->supplies, 0);
  bare = write_and_read (job, &forms[0]);
  g_assert_null (strstr (bare, "Supplier code"));
  g_assert_null (strstr (bare, "Manufacturing record"));
  g_assert_null (strstr (bare, "Materials, processes and tests"));
  g_assert_null (strstr (bare, "Parts of the assembly"));
  add_accountability (job);
  whole = write_and_read (job, &forms[0]);
  for (gsize i = 0; i < G_N_ELEMENTS (told); i++)
    {
      g_test_message ("%s", told[i]);
      g_assert_nonnull (strstr (whole, told[i]));
    }
  /* No supply has a specification. */
  g_assert_null (strstr (whole, "Specification"));
  german = write_and_read (job, &forms[2]);
  g_assert_nonnull (strstr (german, "Baugruppe"));
  g_assert_nonnull (strstr (german, "Nachprüfung"));
  g_assert_nonnull (strstr (german, "Teile der Baugruppe"));
}

/* Of a partial first article only the affected features have a row. */
static void
test_partial (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  g_autofree char *text = NULL, *unnamed = NULL;
  g_autoptr (TmReportContent) content = NULL;

  if (!has_pdf_tools ())
    return;
  add_feature (job, "20", TM_KIND_LENGTH, "62", "61.9", "62.1", "");
  add_feature (job, "30", TM_KIND_LENGTH, "12", "11.9", "12.1", "");
  bore->affected = TRUE;
  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  job->first_article_reason = "new tool";
  job->first_article_baseline = "FA-7";
  content = tm_report_content_new (job);
  g_assert_cmpuint (content->lines->len, ==, 1);
  g_assert_cmpuint (content->referred->len, ==, 2);
  g_assert_cmpuint (content->gaps->len, ==, 0);
  text = write_and_read (job, &forms[0]);
  g_assert_nonnull (
      strstr (text, "Not measured again, by reference to baseline report FA-7: features 20, 30."));
  g_assert_null (strstr (text, "61.9"));
  job->first_article_baseline = "";
  unnamed = write_and_read (job, &forms[0]);
  g_assert_nonnull (strstr (unnamed, "a baseline report that is not named yet: features 20, 30."));
}

static char *
write_signed_and_read (const TmJob *job, const char *digest)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;
  Place place;
  char *words;

  tm_report_content_set_digest (content, digest);
  make_place (&place);
  g_assert_true (tm_report_package_write (content, &forms[0], MADE, place.path, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  words = pdf_ask (place.path, "-", "pdftotext", "-layout", NULL);
  clear_place (&place);
  g_strdelimit (words, "\n\f", ' ');
  return words;
}

/* A signature that holds takes the place of the line to sign on; a superseded one does not, and the first
 * page says so. */
static void
test_signed (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *holding = NULL, *superseded = NULL, *with_gaps = NULL;

  if (!has_pdf_tools ())
    return;
  holding = write_signed_and_read (job, SIGNED_DIGEST);
  g_assert_nonnull (strstr (holding, "3f1c6a2b9d8e7f60"));
  g_assert_null (strstr (holding, "An earlier report"));
  g_assert_null (strstr (holding, "Signed although"));
  g_assert_cmpuint (count_text (holding, "Measured by"), ==, 1);
  superseded = write_signed_and_read (job, "0000");
  g_assert_nonnull (strstr (superseded, "An earlier report, FA-1, was signed by AB on 2026-05-05"));
  g_assert_nonnull (strstr (superseded, "superseded"));
  g_assert_cmpuint (count_text (superseded, "Measured by"), ==, 2);
  job->customer = "";
  with_gaps = write_signed_and_read (job, SIGNED_DIGEST);
  g_assert_nonnull (strstr (with_gaps, "Signed although 1 thing was missing"));
}

static void
test_two_languages (void)
{
  g_autoptr (TmJob) job = make_job (3);
  Place place;
  g_autofree char *text = NULL;

  if (!has_pdf_tools ())
    return;
  make_place (&place);
  write_report (job, &forms[3], place.path);
  text = pdf_text (place.path);
  g_assert_nonnull (strstr (text, "Teilenummer / Part number"));
  g_assert_nonnull (strstr (text, "Guarded acceptance (ISO 14253-1)"));
  g_assert_nonnull (strstr (text, "Seite 1 von"));
  g_assert_nonnull (strstr (text, "page 1 of"));
  clear_place (&place);
}

static void
test_unknown_language (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;
  Place place;

  make_place (&place);
  g_assert_false (tm_report_package_write (content, &(TmReportForm) { .language = "xx" }, MADE, place.path,
                                           NULL, NULL, NULL, &error));
  g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_NO_LANGUAGE);
  g_assert_false (g_file_test (place.path, G_FILE_TEST_EXISTS));
  clear_place (&place);
}

/* -------- The file -------- */

static void
test_outline_and_links (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  Place place;
  g_autofree char *dests = NULL;

  if (!has_pdf_tools ())
    return;
  make_place (&place);
  write_report (job, &forms[0], place.path);
  dests = pdf_ask (place.path, NULL, "pdfinfo", "-dests", NULL);
  g_assert_nonnull (strstr (dests, "\"characteristics\""));
  g_assert_nonnull (strstr (dests, "\"plot-0\""));
  g_assert_nonnull (strstr (dests, "\"signatures\""));
  clear_place (&place);
}

static gboolean
stop_cb (double fraction, gpointer data)
{
  return fraction < *(const double *)data;
}

static void
test_cancel (void)
{
  g_autoptr (TmJob) job = make_job (300);
  g_autoptr (TmReportContent) content = tm_report_content_new (job);

  for (double at = 0.0; at < 0.95; at += 0.15)
    {
      g_autoptr (GError) error = NULL;
      Place place;

      make_place (&place);
      g_assert_false (
          tm_report_package_write (content, &forms[0], MADE, place.path, NULL, stop_cb, &at, &error));
      g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED);
      g_assert_cmpint (g_rmdir (place.folder), ==, 0);
      g_free (place.folder);
      g_free (place.path);
    }
}

static void
test_same_bytes (void)
{
  g_autoptr (TmJob) job = make_job (40);
  g_autofree char *first = NULL, *second = NULL;
  gsize first_length, second_length;
  Place place;

  make_place (&place);
  write_report (job, &forms[3], place.path);
  g_assert_true (g_file_get_contents (place.path, &first, &first_length, NULL));
  write_report (job, &forms[3], place.path);
  g_assert_true (g_file_get_contents (place.path, &second, &second_length, NULL));
  g_assert_cmpuint (first_length, ==, second_length);
  g_assert_true (memcmp (first, second, first_length) == 0);
  clear_place (&place);
}

/* Whoever cannot see the drawing is told each balloon. */
static void
test_drawing_words (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  const TmReportForm form = { .paper = TM_PAPER_A4 };
  g_autoptr (TmReportContent) content = NULL;
  g_autoptr (TmReportDocument) document = NULL;
  g_autoptr (TmPages) pages = NULL;
  g_autofree char *text = NULL;

  add_feature (job, "2", TM_KIND_LENGTH, "12", "11.9", "12.1", "micrometer");
  content = tm_report_content_new (job);
  document = tm_report_package_new (content, &form, NULL, NULL);
  pages = tm_pages_new (document, &form);
  text = tm_pages_text (pages, (guint)tm_pages_find (pages, "drawing"));
  g_assert_nonnull (strstr (text, "Drawing D-1 with 2 balloons: balloon 1, in; balloon 2, not measured"));
  g_assert_null (strstr (text, "A number such as 6.2"));
}

/* The balloon of one place has that place's own verdict, and the page says what such a number is. */
static void
test_drawing_places (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  const TmReportForm form = { .paper = TM_PAPER_A4 };
  g_autoptr (TmReportContent) content = NULL;
  g_autoptr (TmReportDocument) document = NULL;
  g_autoptr (TmPages) pages = NULL;
  g_autofree char *text = NULL;

  tm_job_find_feature (job, "1")->places = 2;
  add_mark (job, "D-1", "1", 1);
  add_mark (job, "D-1", "1", 2);
  content = tm_report_content_new (job);
  document = tm_report_package_new (content, &form, NULL, NULL);
  pages = tm_pages_new (document, &form);
  text = tm_pages_text (pages, (guint)tm_pages_find (pages, "drawing"));
  g_assert_nonnull (strstr (text, "; balloon 1, place 1, in; balloon 1, place 2, not measured"));
  g_assert_nonnull (strstr (text, "A number such as 6.2 is the second place of characteristic 6"));
}

/* The drawing has a page that is as wide as it wants, named and with its balloons; the characteristic leads
 * to it.  What is not here, or cannot be read, is said in a line. */
static void
test_drawing (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  TmDrawing *elsewhere, *broken;
  g_autofree char *text = NULL, *bytes = NULL, *size = NULL;
  const TmReportForm form = { .paper = TM_PAPER_A4 };
  gsize length;
  Place place;

  if (!has_pdf_tools ())
    return;
  elsewhere = add_drawing (job, "D-2");
  g_clear_pointer (&elsewhere->content, g_bytes_unref);
  broken = add_drawing (job, "D-3");
  g_clear_pointer (&broken->content, g_bytes_unref);
  broken->content = g_bytes_new_static ("PK\3\4", 4);
  make_place (&place);
  write_report (job, &form, place.path);
  text = pdf_text (place.path);
  g_assert_nonnull (strstr (text, "D-1, sheet 1, revision A"));
  g_assert_nonnull (strstr (text, "Each balloon tells the worst verdict"));
  g_assert_nonnull (strstr (text, "Drawing D-2 belongs to this report and is kept elsewhere."));
  g_assert_nonnull (strstr (text, "Drawing D-3 cannot be shown: the file is no PNG, JPEG, SVG or PDF"));
  size = pdf_ask (place.path, NULL, "pdfinfo", "-f", "2", "-l", "2", NULL);
  g_assert_nonnull (strstr (size, "841.89 x 595.2"));
  g_assert_true (g_file_get_contents (place.path, &bytes, &length, NULL));
  g_assert_nonnull (memmem (bytes, length, "drawing-1", strlen ("drawing-1")));
  clear_place (&place);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/package/samples", test_samples);
  g_test_add_func ("/package/sizes", test_sizes);
  g_test_add_func ("/package/drawing", test_drawing);
  g_test_add_func ("/package/drawing-words", test_drawing_words);
  g_test_add_func ("/package/drawing-places", test_drawing_places);
  g_test_add_func ("/package/many-pieces", test_many_pieces);
  g_test_add_func ("/package/hard-names", test_hard_names);
  g_test_add_func ("/package/endless-texts", test_endless_texts);
  g_test_add_func ("/package/facts", test_facts);
  g_test_add_func ("/package/german", test_german);
  g_test_add_func ("/package/accountability", test_accountability);
  g_test_add_func ("/package/partial", test_partial);
  g_test_add_func ("/package/rework", test_rework);
  g_test_add_func ("/package/two-languages", test_two_languages);
  g_test_add_func ("/package/signed", test_signed);
  g_test_add_func ("/package/unknown-language", test_unknown_language);
  g_test_add_func ("/package/outline-and-links", test_outline_and_links);
  g_test_add_func ("/package/cancel", test_cancel);
  g_test_add_func ("/package/same-bytes", test_same_bytes);
  return g_test_run ();
}
