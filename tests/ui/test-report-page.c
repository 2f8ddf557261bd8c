/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Report page: what is missing leads to the place, and the files it writes are there whole.
 */

#include <adwaita.h>

#include "app-report-page.h"
#include "ui-fixture.h"

typedef struct {
  TmGapKind kind;
  const TmFeature *feature;
  guint n_calls;
} Jump;

static void
go_to_cb (TmReportPage *page, const TmGap *gap, Jump *jump)
{
  jump->kind = gap->kind;
  jump->feature = gap->feature;
  jump->n_calls++;
}

static GtkWidget *
open_page (UiFixture *fixture, TmReportPage **page)
{
  GtkWidget *window = gtk_window_new ();
  *page = TM_REPORT_PAGE (tm_report_page_new ());
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (*page));
  tm_report_page_set_document (*page, fixture->document);
  gtk_window_present (GTK_WINDOW (window));
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (*page)));
  return window;
}

static void
close_page (GtkWidget *window, UiFixture *fixture)
{
  gtk_window_destroy (GTK_WINDOW (window));
  while (g_main_context_iteration (NULL, FALSE))
    ;
  ui_fixture_free (fixture);
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

  /* A reading fills one of the holes, and the page that shows knows it. */
  tm_document_go (fixture->document, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 3),
                  1, "");
  tm_document_set_text (fixture->document, "p");
  g_assert_cmpint (tm_document_submit (fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpuint (tm_report_page_count_gaps (page), !=, n_gaps);
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
  } cases[] = { { "report.xlsx", "PK" }, { "report.csv", NULL } };
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

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/report-page/gaps", test_gaps);
  g_test_add_func ("/report-page/writes", test_writes);
  g_test_add_func ("/report-page/large", test_large);
  return g_test_run ();
}
