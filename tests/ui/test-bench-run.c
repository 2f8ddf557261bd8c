/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Bench while a batch is measured: the run of the feature is one of its pictures, moves with each
 * reading, and a rule that a reading breaks is said there and then.  The sizes are invented.
 */

#include <adwaita.h>
#include <string.h>

#include "app-bench-page-private.h"
#include "app-resources.h"
#include "app-settings.h"
#include "methods-support.h"

/* Micrometres above the lower limit of Ø25 H7: within two standard deviations of their mean. */
static const int sizes[] = { 10, 12, 9, 11, 10, 13, 8, 11, 9, 12, 10, 11, 9, 12, 10 };

/* A feature that is measured on the first @n pieces. */
static void
add_measured (TmJob *job, const char *balloon, guint n)
{
  TmFeature *feature = ui_add_feature (job, balloon, "Ø25 H7", "bored");

  for (guint i = 0; i < n; i++)
    {
      TmReading *reading = tm_reading_new ();

      reading->row.piece = g_ptr_array_index (job->pieces, i);
      reading->row.feature = feature;
      reading->place = 1;
      reading->value = tm_quantity_new (
          G_GINT64_CONSTANT (25000000000) + sizes[i] * G_GINT64_CONSTANT (1000000), TM_UNIT_MM, 3);
      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
}

/* Feature 9 is measured on the first @n pieces, feature 10 on the first fifteen. */
static TmJob *
make_job (guint n)
{
  TmJob *job = make_methods_job ();

  for (guint i = 2; i < G_N_ELEMENTS (sizes) + 3; i++)
    {
      g_autofree char *serial = g_strdup_printf ("%03u", i + 1);

      ui_add_piece (job, serial);
    }
  add_measured (job, "9", n);
  add_measured (job, "10", G_N_ELEMENTS (sizes));
  return job;
}

typedef struct {
  UiFixture *ui;
  GtkWidget *window;
  TmBenchPage *page;
} Fixture;

static void
go (Fixture *fixture, const char *serial, const char *balloon)
{
  TmJob *job = tm_document_job (fixture->ui->document);

  g_assert_true (tm_document_go (fixture->ui->document, tm_job_find_piece (job, serial),
                                 tm_job_find_feature (job, balloon), 1, ""));
}

static Fixture
open_bench (guint n)
{
  Fixture fixture = { .ui = ui_fixture_new (make_job (n)), .window = gtk_window_new () };

  fixture.page = TM_BENCH_PAGE (tm_bench_page_new ());
  gtk_window_set_default_size (GTK_WINDOW (fixture.window), 1280, 720);
  gtk_window_set_child (GTK_WINDOW (fixture.window), GTK_WIDGET (fixture.page));
  gtk_window_present (GTK_WINDOW (fixture.window));
  tm_bench_page_set_document (fixture.page, fixture.ui->document);
  tm_bench_set_order (tm_document_bench (fixture.ui->document), TM_ORDER_FEATURE_FIRST);
  return fixture;
}

static void
close_bench (Fixture *fixture)
{
  tm_bench_page_set_document (fixture->page, NULL);
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  /* Work that was cancelled lets go of the document when its thread has ended. */
  ui_wait_until (G_OBJECT (fixture->ui->document)->ref_count == 1);
  tm_settings_set_text ("picture", "band");
  ui_fixture_free (fixture->ui);
}

static void
record (Fixture *fixture, const char *text)
{
  tm_document_set_text (fixture->ui->document, text);
  tm_bench_page_submit (fixture->page);
  /* A slip that is asked about is confirmed: nobody types two Enters within the time that a gauge does. */
  if (*tm_bench_text (tm_document_bench (fixture->ui->document)) != '\0')
    {
      g_usleep (400000);
      tm_bench_page_submit (fixture->page);
    }
}

static gboolean
is_settled (Fixture *fixture)
{
  return fixture->page->run_working == NULL && fixture->page->run_ask_id == 0;
}

static gboolean
says_violation (Fixture *fixture)
{
  return gtk_widget_get_visible (GTK_WIDGET (fixture->page->run_line));
}

/* Nine pieces are no run; the tenth makes one, which is offered and can be chosen. */
static void
test_offered (void)
{
  Fixture fixture = open_bench (9);

  go (&fixture, "010", "9");
  ui_wait_until (is_settled (&fixture));
  g_assert_null (fixture.page->run);
  tm_pictures_choose (fixture.page->pictures, TM_PICTURE_RUN);
  g_assert_cmpint (tm_pictures_shown (fixture.page->pictures), ==, TM_PICTURE_BAND);
  record (&fixture, "25.012");
  ui_wait_until (is_settled (&fixture));
  g_assert_nonnull (fixture.page->run);
  g_assert_cmpuint (fixture.page->run->batch.series.n_measured, ==, 10);
  g_assert_cmpint (tm_pictures_shown (fixture.page->pictures), ==, TM_PICTURE_RUN);
  g_assert_false (says_violation (&fixture));
  close_bench (&fixture);
}

/* The rule that a reading breaks is said; the next good one takes the line away. */
static void
test_violation (void)
{
  Fixture fixture = open_bench (15);
  g_autofree char *said = NULL;

  go (&fixture, "016", "9");
  record (&fixture, "25.019");
  ui_wait_until (is_settled (&fixture));
  g_assert_true (says_violation (&fixture));
  said = g_strdup (gtk_label_get_text (fixture.page->run_line));
  assert_says (said, "Piece 016, feature 9");
  assert_says (said, "3 sigma");
  go (&fixture, "017", "9");
  record (&fixture, "25.010");
  ui_wait_until (is_settled (&fixture));
  g_assert_nonnull (fixture.page->run);
  g_assert_cmpuint (fixture.page->run->batch.series.n_measured, ==, 17);
  close_bench (&fixture);
}

/* Although the bench goes on to another feature at once, the violation is said, and the run of the other is
 * not that of the first. */
static void
test_moves_on (void)
{
  Fixture fixture = open_bench (15);

  go (&fixture, "016", "9");
  record (&fixture, "25.019");
  go (&fixture, "016", "1");
  ui_wait_until (is_settled (&fixture));
  g_assert_true (says_violation (&fixture));
  g_assert_null (fixture.page->run);
  go (&fixture, "016", "9");
  ui_wait_until (fixture.page->run != NULL);
  g_assert_true (says_violation (&fixture));
  close_bench (&fixture);
}

/* Two that are recorded before the first is worked out: each is said, and neither once more with the next. */
static void
check_both (const char *second_serial, const char *second_balloon, gboolean while_working)
{
  Fixture fixture = open_bench (15);
  g_autofree char *second = g_strdup_printf ("Piece %s, feature %s:", second_serial, second_balloon);
  g_auto (GStrv) lines = NULL;

  go (&fixture, "016", "9");
  record (&fixture, "25.019");
  if (while_working)
    ui_wait_until (fixture.page->run_working != NULL);
  go (&fixture, second_serial, second_balloon);
  record (&fixture, "25.019");
  ui_wait_until (is_settled (&fixture));
  g_assert_true (says_violation (&fixture));
  lines = g_strsplit (gtk_label_get_text (fixture.page->run_line), "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, 2);
  g_assert_true (g_str_has_prefix (lines[0], "Piece 016, feature 9:"));
  g_assert_true (g_str_has_prefix (lines[1], second));
  go (&fixture, "018", "9");
  record (&fixture, "25.010");
  ui_wait_until (is_settled (&fixture));
  g_assert_null (strstr (gtk_label_get_text (fixture.page->run_line), "Piece 016"));
  g_assert_null (strstr (gtk_label_get_text (fixture.page->run_line), second));
  close_bench (&fixture);
}

static void
test_both (void)
{
  check_both ("017", "9", FALSE);
  check_both ("017", "9", TRUE);
  check_both ("016", "10", FALSE);
  check_both ("016", "10", TRUE);
}

/* Of many the last are said, and how many there were before. */
static void
test_many (void)
{
  static const char *const starts[]
      = { "1 reading before", "Piece 017, feature 9:", "Piece 016, feature 10:", "Piece 017, feature 10:" };
  Fixture fixture = open_bench (15);
  g_auto (GStrv) lines = NULL;

  for (guint i = 0; i < 4; i++)
    {
      go (&fixture, i % 2 == 0 ? "016" : "017", i < 2 ? "9" : "10");
      record (&fixture, "25.019");
    }
  ui_wait_until (is_settled (&fixture));
  lines = g_strsplit (gtk_label_get_text (fixture.page->run_line), "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, G_N_ELEMENTS (starts));
  for (guint i = 0; i < G_N_ELEMENTS (starts); i++)
    g_assert_true (g_str_has_prefix (lines[i], starts[i]));
  close_bench (&fixture);
}

/* One that is withdrawn before it was worked out is not said; the other is. */
static void
test_withdrawn (void)
{
  Fixture fixture = open_bench (15);
  const TmReading *last;
  const char *said;

  go (&fixture, "016", "9");
  record (&fixture, "25.019");
  go (&fixture, "016", "10");
  record (&fixture, "25.019");
  last = tm_bench_last (tm_document_bench (fixture.ui->document));
  g_assert_true (tm_document_withdraw (fixture.ui->document, last, "dirt", NULL));
  ui_wait_until (is_settled (&fixture));
  said = gtk_label_get_text (fixture.page->run_line);
  assert_says (said, "Piece 016, feature 9:");
  g_assert_null (strstr (said, "feature 10"));
  close_bench (&fixture);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/bench-run/offered", test_offered);
  g_test_add_func ("/bench-run/violation", test_violation);
  g_test_add_func ("/bench-run/moves-on", test_moves_on);
  g_test_add_func ("/bench-run/both", test_both);
  g_test_add_func ("/bench-run/many", test_many);
  g_test_add_func ("/bench-run/withdrawn", test_withdrawn);
  return g_test_run ();
}
