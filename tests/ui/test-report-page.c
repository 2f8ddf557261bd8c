/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Report page: what is missing leads to the place, the pages shown are those of the record in the form
 * that was chosen, and what it prints and writes is there whole.
 */

#include <adwaita.h>

#include "../report/pdf-support.h"
#include "app-edit.h"
#include "app-report-form.h"
#include "app-report-gaps.h"
#include "app-report-page.h"
#include "app-report-print.h"
#include "app-resources.h"
#include "report-language.h"
#include "support-big-job.h"
#include "ui-fixture.h"

typedef struct {
  TmGapKind kind;
  const TmFeature *feature;
  const TmPiece *thread_piece; /* where the thread is gone to */
  guint n_calls;
} Jump;

static void
go_to_cb (TmReportPage *page, const TmGap *gap, Jump *jump)
{
  jump->kind = gap->kind;
  jump->feature = gap->feature;
  if (gap->feature != NULL && gap->feature->kind == TM_KIND_THREAD)
    jump->thread_piece = gap->piece;
  jump->n_calls++;
}

static GtkWidget *
open_page (UiFixture *fixture, TmReportPage **page)
{
  GtkWidget *window = gtk_window_new ();
  *page = TM_REPORT_PAGE (tm_report_page_new ());
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (*page));
  tm_report_page_set_document (*page, fixture->document);
  ui_present (window);
  return window;
}

/* Work whose file is there already may have yet to say so: it holds the page, and the page the document. */
static void
close_page (GtkWidget *window, UiFixture *fixture)
{
  gtk_window_destroy (GTK_WINDOW (window));
  ui_wait_until (G_OBJECT (fixture->document)->ref_count == 1);
  ui_fixture_free (fixture);
}

static TmReportView *
view_of (TmReportPage *page)
{
  return tm_report_preview_view (tm_report_page_preview (page));
}

static TmReportPaper *
wait_settled (TmReportPage *page)
{
  ui_wait_until (tm_report_page_is_settled (page));
  g_assert_nonnull (tm_report_view_paper (view_of (page)));
  return tm_report_view_paper (view_of (page));
}

static gboolean
is_drawn (TmReportPage *page)
{
  return tm_report_tiles_bytes (tm_report_view_tiles (view_of (page))) > 0
         && tm_report_tiles_is_idle (tm_report_view_tiles (view_of (page)));
}

static char *
all_text (TmReportPaper *paper)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < tm_report_paper_n_pages (paper); i++)
    {
      g_autofree char *page = tm_report_paper_text (paper, i);
      g_string_append (text, page);
      g_string_append_c (text, '\f');
    }
  return g_string_free (text, FALSE);
}

static void
test_gaps (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  ((TmFeature *)g_ptr_array_index (job->features, 3))->tooling = "plug T-1";
  TmReportPage *page;
  Jump jump = { 0 };
  GtkWidget *window = open_page (fixture, &page);
  guint n_gaps = tm_report_page_count_gaps (page);
  g_assert_cmpuint (n_gaps, >, 0);
  g_signal_connect (page, "go-to", G_CALLBACK (go_to_cb), &jump);
  for (guint i = 0; i < n_gaps; i++)
    tm_report_page_activate_gap (page, i);
  g_assert_cmpuint (jump.n_calls, ==, n_gaps);
  g_assert_true (jump.feature == NULL || g_ptr_array_find (job->features, jump.feature, NULL));

  /* No piece has its thread checked: one row, which leads to the first. */
  g_assert_true (jump.thread_piece == g_ptr_array_index (job->pieces, 0));

  /* A reading fills one of the holes, and the page that shows knows it: the next piece is gone to. */
  tm_document_go (fixture->document, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 3),
                  1, "");
  tm_document_set_text (fixture->document, "p");
  g_assert_cmpint (tm_document_submit (fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpuint (tm_report_page_count_gaps (page), ==, n_gaps);
  for (guint i = 0; i < n_gaps; i++)
    tm_report_page_activate_gap (page, i);
  g_assert_true (jump.thread_piece == g_ptr_array_index (job->pieces, 1));

  tm_document_go (fixture->document, g_ptr_array_index (job->pieces, 1), g_ptr_array_index (job->features, 3),
                  1, "");
  tm_document_set_text (fixture->document, "p");
  g_assert_cmpint (tm_document_submit (fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpuint (tm_report_page_count_gaps (page), ==, n_gaps - 1);
  close_page (window, fixture);
}

static gboolean
is_focus_in (TmReportPage *page, GType type)
{
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (page)));

  return focus != NULL && (G_OBJECT_TYPE (focus) == type || gtk_widget_get_ancestor (focus, type) != NULL);
}

static GtkWidget *
open_sized (UiFixture *fixture, TmReportPage **page, int width, int height)
{
  GtkWidget *window = gtk_window_new ();

  *page = TM_REPORT_PAGE (tm_report_page_new ());
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (*page));
  gtk_window_set_default_size (GTK_WINDOW (window), width, height);
  tm_report_page_set_document (*page, fixture->document);
  gtk_window_present (GTK_WINDOW (window));
  wait_settled (*page);
  ui_wait_until (gtk_widget_get_width (window) > 0);
  return window;
}

/* As narrow as it goes: what is missing lies over the pages when it is asked for, is left by the same key,
 * and does not come between whoever enters and the pages. */
static void
test_narrow (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window = open_sized (fixture, &page, 1, 700);
  Jump jump = { 0 };

  tm_report_page_enter (page);
  ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_VIEW));
  for (guint i = 0; i < 2; i++)
    {
      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-missing", NULL));
      ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_GAPS));
      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-missing", NULL));
      ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_VIEW));
    }
  /* What was gone to is not covered when one comes back. */
  g_signal_connect (page, "go-to", G_CALLBACK (go_to_cb), &jump);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-missing", NULL));
  ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_GAPS));
  tm_report_page_activate_gap (page, 0);
  g_assert_cmpuint (jump.n_calls, ==, 1);
  tm_report_page_enter (page);
  ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_VIEW));
  close_page (window, fixture);
}

/* In the program's own style, with counts of four digits, 900 pixels are enough. */
static void
test_fits (void)
{
  UiFixture *fixture = ui_fixture_new (tm_test_big_job (40, 80));
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();
  TmReportPage *page;
  GtkWidget *window;
  int least = 0;

  g_resources_register (tm_resources_get_resource ());
  gtk_css_provider_load_from_resource (style, "/org/tenthmark/Tenthmark/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  window = open_sized (fixture, &page, 900, 700);
  gtk_widget_measure (GTK_WIDGET (page), GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  g_test_message ("at least %d pixels", least);
  g_assert_cmpint (least, >, 500); /* the style was in force */
  g_assert_cmpint (least, <=, 900);
  gtk_style_context_remove_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (style));
  close_page (window, fixture);
}

/* Where there is room both are there, and the key goes from one to the other: the pages, or the table. */
static void
test_wide (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window = open_sized (fixture, &page, 1200, 700);

  tm_report_page_enter (page);
  ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_GAPS));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-missing", NULL));
  ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_VIEW));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-missing", NULL));
  ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_GAPS));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-table", NULL));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-missing", NULL));
  ui_wait_until (is_focus_in (page, GTK_TYPE_COLUMN_VIEW));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.show-missing", NULL));
  ui_wait_until (is_focus_in (page, TM_TYPE_REPORT_GAPS));
  close_page (window, fixture);
}

static gboolean
has_file (const char *path)
{
  g_autofree char *content = NULL;
  gsize length = 0;
  return g_file_get_contents (path, &content, &length, NULL) && length > 0;
}

static void
test_writes (void)
{
  static const struct {
    const char *name;
    const char *start; /* of the file */
  } cases[] = {
    { "report.xlsx", "PK" }, { "report.csv", NULL }, { "report.pdf", "%PDF-" }, { "report.qif", "<?xml" }
  };
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window = open_page (fixture, &page);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_build_filename (fixture->folder, cases[i].name, NULL);
      g_autofree char *content = NULL;
      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.write", "s", path));
      ui_wait_until (has_file (path));
      g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
      g_assert_true (cases[i].start == NULL || g_str_has_prefix (content, cases[i].start));
    }
  close_page (window, fixture);
}

/* 4,000 lines are gathered off the main loop, from a copy; the jumps still name our own features. */
static void
test_large (void)
{
  TmJob *job = ui_make_job ();
  for (guint i = 5; i <= 1000; i++)
    {
      g_autofree char *balloon = g_strdup_printf ("%u", i);
      ui_add_feature (job, balloon, "12 ±0.1", "BM-2");
    }
  ui_add_piece (job, "003");
  ui_add_piece (job, "004");
  UiFixture *fixture = ui_fixture_new (job);
  TmReportPage *page;
  Jump jump = { 0 };
  GtkWidget *window = open_page (fixture, &page);
  ui_wait_until (tm_report_page_count_gaps (page) > 0);
  g_signal_connect (page, "go-to", G_CALLBACK (go_to_cb), &jump);
  tm_report_page_activate_gap (page, tm_report_page_count_gaps (page) - 1);
  g_assert_cmpuint (jump.n_calls, ==, 1);
  g_assert_true (jump.feature == NULL || g_ptr_array_find (job->features, jump.feature, NULL));
  close_page (window, fixture);
}

/* Sections, page numbers and zoom: what is asked for is what is looked at. */
static void
test_pages (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window = open_page (fixture, &page);
  TmReportPaper *paper = wait_settled (page);
  TmReportView *view = view_of (page);
  const guint n = tm_report_paper_n_pages (paper);
  const GArray *sections = tm_report_paper_sections (paper);

  g_assert_cmpuint (n, >, 1);
  g_assert_cmpuint (sections->len, >, 2);
  ui_wait_until (is_drawn (page));
  g_assert_cmpuint (tm_report_view_page (view), ==, 0);
  tm_report_view_show_page (view, n - 1);
  g_assert_cmpuint (tm_report_view_page (view), ==, n - 1);
  tm_report_view_show_page (view, 1);
  g_assert_cmpuint (tm_report_view_page (view), ==, 1);

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.zoom-page", NULL));
  g_assert_cmpint (tm_report_view_zoom (view), ==, TM_ZOOM_PAGE);
  g_assert_cmpuint (tm_report_view_page (view), ==, 1);
  const double whole = tm_report_view_factor (view);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.zoom-width", NULL));
  g_assert_cmpfloat (tm_report_view_factor (view), >, whole);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.zoom-one", NULL));
  g_assert_cmpfloat (tm_report_view_factor (view), ==, 1);
  for (guint i = 0; i < 20; i++)
    g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.zoom-in", NULL));
  g_assert_cmpfloat (tm_report_view_factor (view), ==, 4);
  for (guint i = 0; i < 40; i++)
    g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.zoom-out", NULL));
  g_assert_cmpfloat (tm_report_view_factor (view), ==, 0.1);
  close_page (window, fixture);
}

/* However large they are shown and however far one scrolls, pictures of pages stay within their bound. */
static void
test_bound (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window = open_page (fixture, &page);
  TmReportPaper *paper = wait_settled (page);
  TmReportTiles *tiles = tm_report_view_tiles (view_of (page));
  gsize most = 0;

  for (guint zoom = 1; zoom <= 4; zoom += 3)
    {
      tm_report_view_set_factor (view_of (page), zoom);
      for (guint i = 0; i < tm_report_paper_n_pages (paper); i++)
        {
          tm_report_view_show_page (view_of (page), i);
          gtk_test_widget_wait_for_draw (GTK_WIDGET (page));
          ui_wait_until (is_drawn (page));
          most = MAX (most, tm_report_tiles_bytes (tiles));
        }
    }
  g_assert_cmpuint (most, >, 1024 * 1024);
  g_assert_cmpuint (most, <=, tm_report_tiles_most_bytes ());
  close_page (window, fixture);
}

/* A page that lies on its side is shown upright and no wider than the others; those after it begin where it
 * ends. */
static void
test_turned (void)
{
  static const char svg[] = "<svg xmlns='http://www.w3.org/2000/svg' width='297mm' height='210mm'>"
                            "<rect x='9' y='9' width='90' height='60' fill='none' stroke='black'/></svg>";
  TmJob *job = ui_make_job ();
  TmDrawing *drawing = tm_drawing_new ();
  g_autofree char *digest = NULL;
  UiFixture *fixture;
  TmReportPage *page;
  TmReportView *view;
  TmReportPaper *paper;
  GtkWidget *window;
  double width, height;
  int across[3], down[3];
  guint at = 1;

  drawing->name = "D-1";
  drawing->media = "image/svg+xml";
  drawing->content = g_bytes_new_static (svg, sizeof svg - 1);
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
  drawing->digest = tm_job_intern (job, digest);
  g_assert_cmpint (tm_job_add_drawing (job, drawing), ==, TM_ADD_OK);
  fixture = ui_fixture_new (job);
  window = open_page (fixture, &page);
  paper = wait_settled (page);
  view = view_of (page);
  while (!g_str_equal (tm_report_paper_section_of (paper, at), "Drawing"))
    at++;
  tm_report_paper_page_size (paper, at, &width, &height);
  g_assert_cmpfloat (width, >, height);
  ui_wait_until (is_drawn (page));
  for (guint i = 0; i < 3; i++)
    tm_report_tiles_page_size (tm_report_view_tiles (view), at + i - 1, &across[i], &down[i]);
  g_assert_cmpint (across[1], ==, across[0]);
  g_assert_cmpint (down[1], <, down[0]);
  g_assert_cmpint (down[2], ==, down[0]);
  for (guint i = 3; i-- > 0;)
    {
      tm_report_view_show_page (view, at + i - 1);
      ui_wait_until (is_drawn (page));
      g_assert_cmpuint (tm_report_view_page (view), ==, at + i - 1);
    }
  close_page (window, fixture);
}

/* Another paper is laid out again at once, without the record being gathered anew. */
static void
test_form (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window = open_page (fixture, &page);
  TmReportContent *content = tm_report_paper_content (wait_settled (page));
  TmFormChoice choice;
  double width, height;

  tm_form_choice_load (&choice);
  tm_report_paper_size (wait_settled (page), &width, &height);
  g_assert_cmpfloat (width, <, height);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.form", NULL));
  tm_form_choice_save (&(TmFormChoice) { TM_PAPER_LETTER, -1, -1, TRUE });
  tm_report_page_form_changed (GTK_WIDGET (page));
  g_assert_false (tm_report_page_is_settled (page));
  tm_report_paper_size (wait_settled (page), &width, &height);
  /* ANSI/ASME Y14.1: Letter is 8.5 in by 11 in, of 72 points. */
  g_assert_cmpfloat (width, ==, 792);
  g_assert_cmpfloat (height, ==, 612);
  g_assert_true (tm_report_paper_content (wait_settled (page)) == content);
  tm_form_choice_save (&choice);
  close_page (window, fixture);
}

static void
speak_cb (TmJob *job, gpointer language)
{
  job->language = tm_job_intern (job, language);
}

/* The pages speak the job's language; one that is not there is said, in place of pages. */
static void
test_language (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window = open_page (fixture, &page);
  g_autofree char *english = all_text (wait_settled (page));
  g_autofree char *german = NULL;
  g_auto (GStrv) languages = tm_language_list ();

  g_assert_nonnull (strstr (english, "Characteristics"));
  g_assert_true (g_strv_contains ((const char *const *)languages, "de"));
  g_assert_true (tm_edit_facts (fixture->document, speak_cb, (gpointer) "de", NULL));
  german = all_text (wait_settled (page));
  g_assert_nonnull (strstr (german, "Merkmale"));
  g_assert_null (strstr (german, "Characteristics"));
  g_assert_true (tm_edit_facts (fixture->document, speak_cb, (gpointer) "xx", NULL));
  ui_wait_until (tm_report_preview_problem (tm_report_page_preview (page)) != NULL);
  g_assert_true (tm_edit_facts (fixture->document, speak_cb, (gpointer) "en", NULL));
  wait_settled (page);
  g_assert_null (tm_report_preview_problem (tm_report_page_preview (page)));
  close_page (window, fixture);
}

/* What is recorded while the pages are shown is on them. */
static void
test_record (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  TmReportPage *page;
  GtkWidget *window = open_page (fixture, &page);
  g_autofree char *before = all_text (wait_settled (page));
  g_autofree char *after = NULL;

  g_assert_null (strstr (before, "6.623"));
  tm_document_go (fixture->document, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 1),
                  1, "");
  tm_document_set_text (fixture->document, "6.623");
  g_assert_cmpint (tm_document_submit (fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
  after = all_text (wait_settled (page));
  g_assert_nonnull (strstr (after, "6.623"));
  close_page (window, fixture);
}

/* What is printed has the pages that are shown, on their paper, and their text. */
static void
test_print (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmReportPage *page;
  GtkWidget *window;
  TmReportPaper *paper;
  g_autofree char *path = g_build_filename (fixture->folder, "print.pdf", NULL);
  g_autofree char *text = NULL, *info = NULL, *missing = NULL;
  g_autoptr (GError) error = NULL;

  tm_form_choice_save (&(TmFormChoice) { TM_PAPER_LETTER, -1, -1, FALSE });
  window = open_page (fixture, &page);
  paper = wait_settled (page);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "report.print-to", "s", path));
  ui_wait_until (has_file (path));
  if (has_pdf_tools ())
    {
      info = pdf_ask (path, NULL, "pdfinfo", NULL);
      text = pdf_text (path);
      g_assert_cmpuint (pdf_pages (path), ==, tm_report_paper_n_pages (paper));
      g_assert_nonnull (strstr (info, "612 x 792 pts"));
      g_assert_nonnull (strstr (text, "Characteristics"));
      g_assert_nonnull (strstr (text, "UI-1"));
    }
  missing = g_build_filename (fixture->folder, "nowhere", "print.pdf", NULL);
  g_assert_false (tm_report_print (GTK_WINDOW (window), paper, "UI-1", 0, missing, &error));
  g_assert_error (error, GTK_PRINT_ERROR, GTK_PRINT_ERROR_GENERAL);
  g_assert_nonnull (strstr (error->message, "UI-1"));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_false (g_file_test (missing, G_FILE_TEST_EXISTS));
  tm_form_choice_save (&(TmFormChoice) { -1, -1, -1, FALSE });
  close_page (window, fixture);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/report-page/gaps", test_gaps);
  g_test_add_func ("/report-page/narrow", test_narrow);
  g_test_add_func ("/report-page/wide", test_wide);
  g_test_add_func ("/report-page/fits", test_fits);
  g_test_add_func ("/report-page/writes", test_writes);
  g_test_add_func ("/report-page/large", test_large);
  g_test_add_func ("/report-page/pages", test_pages);
  g_test_add_func ("/report-page/bound", test_bound);
  g_test_add_func ("/report-page/turned", test_turned);
  g_test_add_func ("/report-page/form", test_form);
  g_test_add_func ("/report-page/language", test_language);
  g_test_add_func ("/report-page/record", test_record);
  g_test_add_func ("/report-page/print", test_print);
  return g_test_run ();
}
