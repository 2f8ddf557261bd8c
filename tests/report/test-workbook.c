/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The workbook as a file: its cells, formulas, dates, page setup, pictures and charts, read back from
 * its XML (ECMA-376), and what happens when it cannot be written.
 */

#include "report-support.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <locale.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "report-file-check.h"
#include "report-sheet.h"
#include "report-workbook.h"
#include "zip-support.h"

#define PART            "Part and order"
#define MATERIALS       "Materials and processes"
#define CHARACTERISTICS "Characteristics"
#define READINGS        "Readings"
#define GAUGES          "Gauges"

typedef struct {
  char *folder;
  char *path;
} Place;

static void
make_place (Place *place)
{
  place->folder = g_dir_make_tmp ("tenthmark-report-XXXXXX", NULL);
  g_assert_nonnull (place->folder);
  place->path = g_build_filename (place->folder, "report.xlsx", NULL);
}

static guint
count_files (const Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
clear_place (Place *place)
{
  (void)g_unlink (place->path);
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->folder);
  g_free (place->path);
}

static void
write_job (const TmJob *job, const char *path, TmPaper paper)
{
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;
  gboolean written
      = tm_workbook_write (content, path, &(TmReportForm) { .paper = paper }, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_true (written);
}

/* Whatever a text begins with, its cell is a string and no formula. */
static void
test_text_stays_text (void)
{
  static const char *const texts[] = { "=1+1", "-A", "+49", "@x", "=HYPERLINK(\"http://x\")", "'quoted" };
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *sheet = NULL;

  make_place (&place);
  job->part_number = texts[0];
  job->part_name = texts[1];
  job->revision = texts[2];
  job->drawing = texts[3];
  job->customer = texts[4];
  job->order = texts[5];
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, PART);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      static const char *const cells[] = { "B4", "D4", "F4", "B5", "D5", "F5" };
      g_autofree char *text = cell_string (place.path, sheet, cells[i]);
      g_autoptr (GString) plain = g_string_new (text);
      g_string_replace (plain, "&quot;", "\"", 0);
      g_assert_cmpstr (plain->str, ==, texts[i]);
    }
  clear_place (&place);
}

static void
test_numbers (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *sheet = NULL, *deviation = NULL, *verdict = NULL, *styles = NULL;

  make_place (&place);
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, CHARACTERISTICS);
  /* The doubles nearest to the decimals: exact. */
  g_assert_true (cell_number (sheet, "H5") == 25.0);
  g_assert_true (cell_number (sheet, "I5") == 25.0);
  g_assert_true (cell_number (sheet, "J5") == 25.021);
  g_assert_true (cell_number (sheet, "K5") == 25.01);
  g_assert_true (cell_number (sheet, "L5") == 25.01);
  deviation = sheet_cell (sheet, "M5");
  g_assert_nonnull (strstr (deviation, "<f>IF(COUNT(K5,L5)=0"));
  g_assert_nonnull (strstr (deviation, "<v>0.01</v>"));
  verdict = sheet_cell (sheet, "O5");
  g_assert_nonnull (strstr (verdict, "t=\"str\""));
  g_assert_nonnull (strstr (verdict, "<f>IF(COUNT(K5,L5)=0"));
  g_assert_nonnull (strstr (verdict, "<v>in</v>"));
  styles = zip_read (place.path, "xl/styles.xml");
  g_assert_nonnull (strstr (styles, "formatCode=\"0.000\""));
  g_assert_nonnull (strstr (styles, "formatCode=\"+0.000;-0.000;0.000\""));
  clear_place (&place);
}

/* Serial numbers counted by hand: 2000-01-01 is day 36526 of the sheet's calendar, so 2027-01-05 is
 * 36526 + 27·365 + 7 leap days + 4 = 46392, and 2026-05-04 is 46146. */
static void
test_dates (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *sheet = NULL, *gauges = NULL, *readings = NULL, *bad = NULL;

  make_place (&place);
  add_gauge (job, "M-2", "0.001", "0.002", "2027-02-30");
  g_ptr_array_add (tm_job_find_method (job, "micrometer")->gauges, (gpointer) "M-2");
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, CHARACTERISTICS);
  g_assert_cmpfloat (cell_number (sheet, "R5"), ==, 46392.0);
  gauges = zip_sheet (place.path, GAUGES);
  g_assert_cmpfloat (cell_number (gauges, "J5"), ==, 46392.0);
  bad = cell_string (place.path, gauges, "J6");
  g_assert_cmpstr (bad, ==, "2027-02-30");
  readings = zip_sheet (place.path, READINGS);
  /* 09:12:33 of the day, to a tenth of a second. */
  g_assert_cmpfloat_with_epsilon (cell_number (readings, "N5"), 46146.0 + (9 * 3600 + 12 * 60 + 33) / 86400.0,
                                  1e-6);
  clear_place (&place);
}

static void
test_pages (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *book = NULL, *sheet = NULL, *letter = NULL;

  make_place (&place);
  job->part_number = "A&B";
  write_job (job, place.path, TM_PAPER_A4);
  book = zip_read (place.path, "xl/workbook.xml");
  g_assert_nonnull (strstr (book, "localSheetId=\"2\">Characteristics!$A$1:$V$5</definedName>"));
  g_assert_nonnull (strstr (book, "localSheetId=\"2\">Characteristics!$4:$4</definedName>"));
  sheet = zip_sheet (place.path, CHARACTERISTICS);
  g_assert_nonnull (strstr (sheet, "paperSize=\"9\""));
  g_assert_nonnull (strstr (sheet, "fitToHeight=\"0\""));
  g_assert_nonnull (strstr (sheet, "<pageSetUpPr fitToPage=\"1\"/>"));
  g_assert_nonnull (strstr (sheet, "orientation=\"landscape\""));
  g_assert_nonnull (strstr (sheet, "page &amp;P of &amp;N"));
  g_assert_nonnull (strstr (sheet, "A&amp;&amp;B A"));
  g_assert_nonnull (strstr (sheet, "<pane xSplit=\"1\" ySplit=\"4\""));
  write_job (job, place.path, TM_PAPER_LETTER);
  letter = zip_sheet (place.path, CHARACTERISTICS);
  g_assert_nonnull (strstr (letter, "paperSize=\"1\""));
  clear_place (&place);
}

static void
test_pictures (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *drawing = NULL, *chart = NULL, *core = NULL;

  make_place (&place);
  write_job (job, place.path, TM_PAPER_A4);
  g_assert_cmpuint (zip_count (place.path, "xl/media/image"), ==, 1);
  g_assert_cmpuint (zip_count (place.path, "xl/charts/chart"), ==, 1);
  drawing = zip_read (place.path, "xl/drawings/drawing1.xml");
  g_assert_nonnull (strstr (drawing, "descr=\"Ø25 H7: limits 25.000 to 25.021 mm; proven in"));
  chart = zip_read (place.path, "xl/charts/chart1.xml");
  g_assert_nonnull (strstr (chart, "<c:lineChart>"));
  g_assert_nonnull (strstr (chart, "'Run data'!$D$4</c:f>"));
  core = zip_read (place.path, "docProps/core.xml");
  g_assert_nonnull (strstr (core, "<dc:title>First-article report, P-1 revision A</dc:title>"));
  clear_place (&place);
}

/* Corrected and withdrawn readings stay in the list, with the reasons. */
static void
test_history (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  TmReading *first = g_ptr_array_index (job->readings, 0);
  TmReading *second;
  g_autofree char *sheet = NULL, *status = NULL, *reason = NULL, *withdrawn = NULL;

  make_place (&place);
  second = tm_reading_new ();
  second->row.piece = first->row.piece;
  second->row.feature = first->row.feature;
  second->row.replaces = first->row.id;
  second->row.reason = "=a turn high";
  second->place = 1;
  second->value = quantity ("25.011", TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_reading (job, second), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_withdraw (job, &second->row, "AB", "2026-05-05T08:00:00Z", "chip"), ==, TM_ADD_OK);
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, READINGS);
  status = cell_string (place.path, sheet, "R5");
  g_assert_cmpstr (status, ==, "corrected by 2");
  withdrawn = cell_string (place.path, sheet, "R6");
  g_assert_cmpstr (withdrawn, ==, "withdrawn");
  reason = cell_string (place.path, sheet, "T6");
  g_assert_cmpstr (reason, ==, "=a turn high; withdrawn by AB, 2026-05-05T08:00:00Z: chip");
  clear_place (&place);
}

/* What the job holds stands in its cell; a shaded blank is only left for the rest. */
static void
test_accountability (void)
{
  static const char *const told[]
      = { "FA-0815",       "C2",          "Invented Works", "S-4711", "LOT-9", "ECN-3", "assembly",
          "re-inspection", "after-NC-14", "Heat",           "H-77" };
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *strings = NULL, *sheet = NULL, *name = NULL, *approval = NULL, *test = NULL,
                  *report = NULL;

  make_place (&place);
  add_accountability (job);
  write_job (job, place.path, TM_PAPER_A4);
  strings = zip_read (place.path, "xl/sharedStrings.xml");
  for (gsize i = 0; i < G_N_ELEMENTS (told); i++)
    {
      g_autofree char *cell = g_strdup_printf (">%s</t>", told[i]);

      g_test_message ("%s", told[i]);
      g_assert_nonnull (strstr (strings, cell));
    }
  sheet = zip_sheet (place.path, MATERIALS);
  name = cell_string (place.path, sheet, "A5");
  g_assert_cmpstr (name, ==, "Bar-EN-1.4301");
  approval = cell_string (place.path, sheet, "E6");
  g_assert_cmpstr (approval, ==, "yes");
  test = cell_string (place.path, sheet, "A9");
  g_assert_cmpstr (test, ==, "Leak-test");
  report = cell_string (place.path, sheet, "D12");
  g_assert_cmpstr (report, ==, "FA-0700");
  clear_place (&place);
}

/* A reworked feature does not look like one that was right at once. */
static void
test_rework (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  g_autofree char *sheet = NULL, *verdict = NULL, *tooling = NULL, *comment = NULL, *readings = NULL,
                  *status = NULL;

  make_place (&place);
  rework_bore (job);
  bore->tooling = "bush T-7";
  bore->comment = "datum A";
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, CHARACTERISTICS);
  g_assert_true (cell_number (sheet, "K5") == 25.01);
  verdict = cell_string (place.path, sheet, "S5");
  g_assert_cmpstr (verdict, ==, "NC-14");
  tooling = cell_string (place.path, sheet, "U5");
  g_assert_cmpstr (tooling, ==, "bush T-7");
  comment = cell_string (place.path, sheet, "V5");
  g_assert_true (g_str_has_prefix (
      comment, "first result 24.990 out, reworked 2026-05-04 (NC-14), then 25.010 in\ndatum A; "));
  g_assert_nonnull (strstr (comment, "bore under size; rework"));
  readings = zip_sheet (place.path, READINGS);
  status = cell_string (place.path, readings, "R5");
  g_assert_cmpstr (status, ==, "before a rework");
  clear_place (&place);
}

static void
test_cell_text (void)
{
  g_autofree char *bad = tm_cell_text ("a\xff\x01\r\nb\xef\xbf\xbf");
  g_autofree char *long_text = g_strnfill (40000, 'x');
  g_autofree char *cut = tm_cell_text (long_text);
  g_autofree char *fits_text = g_strnfill (32767, 'x');
  g_autofree char *fits = tm_cell_text (fits_text);
  GString *wide = g_string_new (NULL);
  g_autofree char *wide_cut = NULL;

  g_assert_cmpstr (bad, ==, "a\xef\xbf\xbd\xef\xbf\xbd\nb\xef\xbf\xbd");
  g_assert_cmpuint (strlen (fits), ==, 32767);
  g_assert_cmpint (g_utf8_strlen (cut, -1), <=, 32767);
  g_assert_true (g_str_has_suffix (cut, "longer than a cell holds]"));
  /* Characters outside the basic plane count twice there. */
  for (int i = 0; i < 20000; i++)
    g_string_append (wide, "🔩");
  wide_cut = tm_cell_text (wide->str);
  g_assert_true (g_utf8_validate (wide_cut, -1, NULL));
  g_assert_cmpint (g_utf8_strlen (wide_cut, -1), <, 16500);
  g_string_free (wide, TRUE);
}

static void
test_long_text (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *text = g_strnfill (40000, 'y');
  g_autofree char *sheet = NULL, *cell = NULL;

  make_place (&place);
  job->customer = text;
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, PART);
  cell = cell_string (place.path, sheet, "D5");
  g_assert_cmpint (g_utf8_strlen (cell, -1), <=, 32767);
  clear_place (&place);
}

/* A long job's rows leave memory as they are written; the file says the same. */
static void
test_many (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  TmPiece *piece = g_ptr_array_index (job->pieces, 0);
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  g_autofree char *sheet = NULL, *part = NULL, *text = NULL, *last = NULL, *first_cell = NULL;

  make_place (&place);
  job->part_number = "=P";
  for (guint i = 0; i < 21000; i++)
    add_reading (job, piece, bore, "", "25.010");
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, READINGS);
  g_assert_true (cell_number (sheet, "F21005") == 25.01);
  last = cell_string (place.path, sheet, "A21005");
  g_assert_cmpstr (last, ==, "21001");
  part = zip_sheet (place.path, PART);
  text = cell_string (place.path, part, "B4");
  g_assert_cmpstr (text, ==, "=P");
  g_assert_cmpuint (zip_count (place.path, "xl/media/image"), ==, 1);
  clear_place (&place);
}

/* -------- When it cannot be written -------- */

typedef struct {
  guint calls, stop_at;
  double last;
} Watch;

static gboolean
watch_cb (double fraction, gpointer data)
{
  Watch *watch = data;

  g_assert_cmpfloat (fraction, >=, watch->last);
  g_assert_cmpfloat (fraction, <=, 1.0);
  watch->last = fraction;
  return ++watch->calls != watch->stop_at;
}

/* Everything there is among the temporary files, which are this program's own. */
static guint
count_temporary (void)
{
  g_autoptr (GDir) dir = g_dir_open (g_get_tmp_dir (), 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

/* The library names its own temporary files for an instant while it ends what was cancelled. */
static void
wait_for_temporary (guint n)
{
  const gint64 end = g_get_monotonic_time () + 5 * G_USEC_PER_SEC;

  while (count_temporary () != n && g_get_monotonic_time () < end)
    g_thread_yield ();
  g_assert_cmpuint (count_temporary (), ==, n);
}

static void
test_cancel (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const guint temporary = count_temporary ();
  guint stopped = 0;

  make_place (&place);
  g_assert_true (g_file_set_contents (place.path, "old", 3, NULL));
  for (guint stop_at = 1; stop_at < 40; stop_at++)
    {
      Watch watch = { 0, stop_at, 0.0 };
      g_autoptr (GError) error = NULL;
      g_autofree char *data = NULL;

      if (tm_workbook_write (content, place.path, &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL, watch_cb,
                             &watch, &error))
        break;
      stopped++;
      g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANCELLED);
      g_assert_true (g_file_get_contents (place.path, &data, NULL, NULL));
      g_assert_cmpstr (data, ==, "old");
      g_assert_cmpuint (count_files (&place), ==, 1);
    }
  g_assert_cmpuint (stopped, >=, 8);
  clear_place (&place);
  wait_for_temporary (temporary);
}

static void
test_no_folder (void)
{
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;

  g_assert_false (tm_workbook_write (content, "/nonexistent/folder/r.xlsx",
                                     &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL, NULL, NULL, &error));
  g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE);
  g_assert_nonnull (strstr (error->message, "/nonexistent/folder/r.xlsx"));
  g_assert_null (strchr (error->message, '\n'));
}

static void
test_folder_in_the_way (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;

  make_place (&place);
  g_assert_cmpint (g_mkdir (place.path, 0700), ==, 0);
  g_assert_false (tm_workbook_write (content, place.path, &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL,
                                     NULL, NULL, &error));
  g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE);
  g_assert_cmpuint (count_files (&place), ==, 1);
  g_assert_cmpint (g_rmdir (place.path), ==, 0);
  clear_place (&place);
}

/* Files may grow to @most bytes only: as when the disk fills up, at one point after another. */
static void
test_full (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  struct rlimit old, now;
  guint failed = 0;

  make_place (&place);
  g_assert_true (g_file_set_contents (place.path, "old", 3, NULL));
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &old), ==, 0);
  (void)signal (SIGXFSZ, SIG_IGN);
  for (rlim_t most = 64; most < 200000; most = most * 3 / 2)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *data = NULL;
      gboolean written;

      now = (struct rlimit) { most, old.rlim_max };
      g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &now), ==, 0);
      written = tm_workbook_write (content, place.path, &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL, NULL,
                                   NULL, &error);
      g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &old), ==, 0);
      g_assert_cmpuint (count_files (&place), ==, 1);
      if (written)
        {
          g_assert_true (tm_file_check_workbook (place.path, NULL, NULL));
          break;
        }
      failed++;
      g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_CANNOT_WRITE);
      g_assert_true (g_file_get_contents (place.path, &data, NULL, NULL));
      g_assert_cmpstr (data, ==, "old");
    }
  (void)signal (SIGXFSZ, SIG_DFL);
  g_assert_cmpuint (failed, >=, 5);
  clear_place (&place);
}

static void
test_mode (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  struct stat info;
  const mode_t mask = umask (022);

  make_place (&place);
  write_job (job, place.path, TM_PAPER_A4);
  g_assert_cmpint (stat (place.path, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 0777, ==, 0644);
  umask (mask);
  clear_place (&place);
}

/* A file cut off anywhere is not called whole. */
static void
test_file_check (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *data = NULL;
  gsize length;

  make_place (&place);
  write_job (job, place.path, TM_PAPER_A4);
  g_assert_true (tm_file_check_workbook (place.path, NULL, NULL));
  g_assert_true (g_file_get_contents (place.path, &data, &length, NULL));
  for (gsize part = 0; part < 20; part++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_true (g_file_set_contents (place.path, data, (gssize)(length * part / 20), NULL));
      g_assert_false (tm_file_check_workbook (place.path, NULL, &error));
      g_assert_nonnull (error);
    }
  clear_place (&place);
}

static void
test_too_large (void)
{
  Place place;
  g_autoptr (TmJob) job = NULL;
  g_autoptr (TmReportContent) content = NULL;
  g_autoptr (GError) error = NULL;

  if (!g_test_slow ())
    {
      g_test_skip ("a million readings only in slow mode");
      return;
    }
  make_place (&place);
  job = make_whole_job ();
  for (guint i = 0; i < 1048576; i++)
    add_reading (job, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 0), "", "25.010");
  content = tm_report_content_new (job);
  g_assert_false (tm_workbook_write (content, place.path, &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL,
                                     NULL, NULL, &error));
  g_assert_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_TOO_LARGE);
  g_assert_cmpuint (count_files (&place), ==, 0);
  clear_place (&place);
}

/* In a language that writes a comma, a sheet's numbers still have a point. */
static void
test_decimal_comma (void)
{
  static const char *const names[]
      = { "de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "nl_NL.UTF-8", "sv_SE.UTF-8" };
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autofree char *sheet = NULL, *deviation = NULL;
  gsize i = 0;

  while (i < G_N_ELEMENTS (names) && setlocale (LC_ALL, names[i]) == NULL)
    i++;
  if (i == G_N_ELEMENTS (names))
    {
      g_test_skip ("no locale with a decimal comma is installed");
      return;
    }
  make_place (&place);
  write_job (job, place.path, TM_PAPER_A4);
  g_assert_cmpstr (localeconv ()->decimal_point, ==, ",");
  sheet = zip_sheet (place.path, CHARACTERISTICS);
  g_assert_true (cell_number (sheet, "K5") == 25.01);
  deviation = sheet_cell (sheet, "M5");
  g_assert_nonnull (strstr (deviation, "<v>0.01</v>"));
  (void)setlocale (LC_ALL, "C");
  clear_place (&place);
}

/* The same job, form and time give the same bytes. */
static void
test_stable (void)
{
  Place first, second;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmWorkbookFacts facts = { .made = "2026-05-04T09:12:33Z" };
  const TmReportForm form = { 0 };
  g_autofree char *a = NULL, *b = NULL, *core = NULL, *company = NULL;
  gsize length_a, length_b;

  make_place (&first);
  make_place (&second);
  g_assert_true (tm_workbook_write (content, first.path, &form, &facts, NULL, NULL, NULL));
  g_assert_true (tm_workbook_write (content, second.path, &form, &facts, NULL, NULL, NULL));
  g_assert_true (g_file_get_contents (first.path, &a, &length_a, NULL));
  g_assert_true (g_file_get_contents (second.path, &b, &length_b, NULL));
  g_assert_cmpuint (length_a, ==, length_b);
  g_assert_true (memcmp (a, b, length_a) == 0);
  core = zip_read (first.path, "docProps/core.xml");
  g_assert_nonnull (strstr (core, ">2026-05-04T09:12:33Z</dcterms:created>"));
  company = zip_read (first.path, "docProps/app.xml");
  g_assert_nonnull (strstr (company, "<Company>Invented</Company>"));
  clear_place (&first);
  clear_place (&second);
}

/* What a customer's formulas may refer to, in any language; what can be filtered; what marks a verdict. */
static void
test_names (void)
{
  static const char *const names[] = { "\"Verdict\">'Merkmale'!$O$5<",
                                       "\"Smallest_result\">'Merkmale'!$K$5<",
                                       "\"Lower_limit\">'Merkmale'!$I$5<",
                                       "\"Verdict_recorded\">'Merkmale'!$AA$5<",
                                       "\"Reading_value\">'Messwerte'!$F$5<",
                                       "\"Count_in\">'Teil und Auftrag'!$D$",
                                       "\"Count_missing\">'Teil und Auftrag'!$B$",
                                       "\"Self_check\">" };
  static const char *const words[] = { "innerhalb", "außerhalb", "zu knapp", "nicht gemessen" };
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmReportForm form = { .language = "de", .second_language = "en" };
  g_autofree char *book = NULL, *sheet = NULL;

  make_place (&place);
  g_assert_true (tm_workbook_write (content, place.path, &form, NULL, NULL, NULL, NULL));
  book = zip_read (place.path, "xl/workbook.xml");
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_test_message ("%s", names[i]);
      g_assert_nonnull (strstr (book, names[i]));
    }
  sheet = zip_sheet (place.path, "Merkmale");
  g_assert_nonnull (strstr (sheet, "<autoFilter ref=\"A4:AA5\"/>"));
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      g_autofree char *rule = g_strdup_printf ("<formula>\"%s\"</formula>", words[i]);

      g_test_message ("%s", rule);
      g_assert_nonnull (strstr (sheet, rule));
    }
  clear_place (&place);
}

/* The sheet that a customer checks with: formulas over the other sheets, each with the value that the record
 * gives, and the digest of the record. */
static void
test_check (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmWorkbookFacts facts = { .digest = "0f1e2d3c" };
  g_autofree char *sheet = NULL, *strings = NULL, *differing = NULL, *sum = NULL, *verdict = NULL;

  make_place (&place);
  g_assert_true (tm_workbook_write (content, place.path, &(TmReportForm) { 0 }, &facts, NULL, NULL, NULL));
  sheet = zip_sheet (place.path, "How to check");
  differing = between (sheet, "SUMPRODUCT(--(Verdict&lt;&gt;Verdict_recorded))</f><v>", "<");
  g_assert_cmpstr (differing, ==, "0");
  sum = between (sheet, "ROUND(SUM(Reading_value),6)</f><v>", "<");
  g_assert_cmpstr (sum, ==, "25.01");
  verdict = between (sheet, "COUNTIF(Reading_status,\"counts\")</f><v>", "<");
  g_assert_cmpstr (verdict, ==, "1");
  strings = zip_read (place.path, "xl/sharedStrings.xml");
  g_assert_nonnull (strstr (strings, ">0f1e2d3c<"));
  clear_place (&place);
}

/* Who signed, and over what: the whole digests. */
static void
test_signatures (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  TmSignature *signature = tm_signature_new ();
  TmPerson *nameless = tm_person_new ();
  g_autofree char *sheet = NULL, *role = NULL, *digest = NULL, *pages = NULL, *core = NULL;

  make_place (&place);
  nameless->initials = "XY";
  tm_job_add_person (job, nameless);
  signature->by = "XY";
  signature->role = "=Quality";
  signature->at = "2026-05-05T08:00:00Z";
  signature->digest = "aa00000000000000000000000000000000000000000000000000000000000011";
  signature->pages = "bb00000000000000000000000000000000000000000000000000000000000022";
  tm_job_add_signature (job, signature);
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, "Signatures");
  role = cell_string (place.path, sheet, "A6");
  g_assert_cmpstr (role, ==, "=Quality");
  digest = cell_string (place.path, sheet, "F6");
  g_assert_cmpstr (digest, ==, signature->digest);
  pages = cell_string (place.path, sheet, "G6");
  g_assert_cmpstr (pages, ==, signature->pages);
  core = zip_read (place.path, "docProps/core.xml");
  g_assert_nonnull (strstr (core, "<dc:creator>XY</dc:creator>"));
  clear_place (&place);
}

static double
column_width (const char *sheet, guint number, gboolean *hidden)
{
  g_autofree char *open = g_strdup_printf ("<col min=\"%u\" max=\"%u\" ", number, number);
  g_autofree char *column = between (sheet, open, "/>");
  g_autofree char *width = column != NULL ? between (column, "width=\"", "\"") : NULL;

  g_assert_nonnull (width);
  *hidden = strstr (column, "hidden=\"1\"") != NULL;
  return g_ascii_strtod (width, NULL);
}

/* A number that does not fit would be shown as signs of none; a column with nothing in it is hidden. */
static void
test_columns (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  g_autofree char *sheet = NULL;
  gboolean hidden;

  make_place (&place);
  bore->nominal = quantity ("1252.123456789", TM_UNIT_MM);
  write_job (job, place.path, TM_PAPER_A4);
  sheet = zip_sheet (place.path, CHARACTERISTICS);
  g_assert_cmpfloat (column_width (sheet, 8, &hidden), >=, 14.0); /* its 14 characters */
  g_assert_false (hidden);
  (void)column_width (sheet, 21, &hidden); /* qualified tooling: none */
  g_assert_true (hidden);
  clear_place (&place);
}

/* In the customer's language: names of sheets, heads in both, words in formulas; numbers stay numbers. */
static void
test_language (void)
{
  Place place;
  g_autoptr (TmJob) job = make_whole_job ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);
  const TmReportForm form
      = { .language = "de", .second_language = "en", .decimal = TM_DECIMAL_COMMA, .dates = TM_DATE_DMY };
  g_autofree char *book = NULL, *sheet = NULL, *head = NULL, *verdict = NULL, *styles = NULL;
  g_autoptr (GError) error = NULL;

  make_place (&place);
  g_assert_true (tm_workbook_write (content, place.path, &form, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  book = zip_read (place.path, "xl/workbook.xml");
  g_assert_nonnull (strstr (book, "name=\"Merkmale\""));
  sheet = zip_sheet (place.path, "Merkmale");
  head = cell_string (place.path, sheet, "D4");
  g_assert_cmpstr (head, ==, "Anforderung / Requirement");
  g_assert_true (cell_number (sheet, "K5") == 25.01);
  verdict = sheet_cell (sheet, "O5");
  g_assert_nonnull (strstr (verdict, "<v>innerhalb</v>"));
  styles = zip_read (place.path, "xl/styles.xml");
  g_assert_nonnull (strstr (styles, "formatCode=\"dd.mm.yyyy\""));
  clear_place (&place);
}

static void
test_paper (void)
{
  /* The tests run in the C locale, where the wanted locale's territory decides. */
  static const struct {
    const char *locale;
    TmPaper paper;
  } cases[] = { { "en_US.UTF-8", TM_PAPER_LETTER },
                { "de_DE.UTF-8", TM_PAPER_A4 },
                { "fr_CA", TM_PAPER_LETTER },
                { "C", TM_PAPER_A4 },
                { "", TM_PAPER_A4 } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_setenv ("LC_ALL", cases[i].locale, TRUE);
      g_setenv ("LC_PAPER", "", TRUE);
      g_setenv ("LANG", "", TRUE);
      g_assert_cmpint (tm_paper_of_locale (), ==, cases[i].paper);
    }
}

int
main (int argc, char **argv)
{
  g_autofree char *temporary = g_strdup ("/tmp/tenthmark-workbook-XXXXXX");
  int result;

  g_assert_nonnull (g_mkdtemp (temporary));
  g_setenv ("TMPDIR", temporary, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/workbook/text-stays-text", test_text_stays_text);
  g_test_add_func ("/workbook/numbers", test_numbers);
  g_test_add_func ("/workbook/dates", test_dates);
  g_test_add_func ("/workbook/pages", test_pages);
  g_test_add_func ("/workbook/pictures", test_pictures);
  g_test_add_func ("/workbook/history", test_history);
  g_test_add_func ("/workbook/accountability", test_accountability);
  g_test_add_func ("/workbook/rework", test_rework);
  g_test_add_func ("/workbook/cell-text", test_cell_text);
  g_test_add_func ("/workbook/long-text", test_long_text);
  g_test_add_func ("/workbook/many", test_many);
  g_test_add_func ("/workbook/cancel", test_cancel);
  g_test_add_func ("/workbook/no-folder", test_no_folder);
  g_test_add_func ("/workbook/folder-in-the-way", test_folder_in_the_way);
  g_test_add_func ("/workbook/full", test_full);
  g_test_add_func ("/workbook/mode", test_mode);
  g_test_add_func ("/workbook/file-check", test_file_check);
  g_test_add_func ("/workbook/too-large", test_too_large);
  g_test_add_func ("/workbook/decimal-comma", test_decimal_comma);
  g_test_add_func ("/workbook/stable", test_stable);
  g_test_add_func ("/workbook/language", test_language);
  g_test_add_func ("/workbook/columns", test_columns);
  g_test_add_func ("/workbook/names", test_names);
  g_test_add_func ("/workbook/check", test_check);
  g_test_add_func ("/workbook/signatures", test_signatures);
  g_test_add_func ("/workbook/paper", test_paper);
  result = g_test_run ();
  (void)g_rmdir (temporary);
  return result;
}
