/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pins at the Bench page: one key after F2, the next pin in the entry, and what goes with them: an overdue
 * gauge, which value counts.
 */

#include <adwaita.h>

#include "app-bench-page-private.h"
#include "app-overdue-dialog.h"
#include "app-reason-dialog.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *job;
  GtkWidget *window;
  TmBenchPage *page;
} BenchFixture;

static TmGauge *
add_set (TmJob *job, const char *tag, const char *sign)
{
  TmGauge *set = tm_gauge_new ();
  set->tag = tm_job_intern (job, tag);
  set->kind = tm_job_intern (job, "pin set");
  set->unit = TM_UNIT_MM;
  set->pin_class = tm_job_intern (job, "X");
  set->pin_sign = tm_job_intern (job, sign);
  g_assert_cmpint (tm_quantity_read ("11.9", TM_UNIT_MM, &set->range_from), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("12.1", TM_UNIT_MM, &set->range_to), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("0.002", TM_UNIT_MM, &set->pin_step), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_gauge (job, set), ==, TM_ADD_OK);
  return set;
}

/* A 12 H7 bore without stations by the fixture's gauge, another feature after it, and two sets. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();
  TmFeature *bore = ui_add_feature (job, "7", "Ø12 H7", "BM-2");
  g_assert_nonnull (bore);
  add_set (job, "P-XP", "plus");
  add_set (job, "P-XM", "minus");
  return job;
}

static TmFeature *
bore_of (BenchFixture *bench)
{
  return tm_job_find_feature (tm_document_job (bench->job->document), "7");
}

static void
go_to_bore (BenchFixture *bench)
{
  TmJob *job = tm_document_job (bench->job->document);
  tm_document_go (bench->job->document, g_ptr_array_index (job->pieces, 0), bore_of (bench), 1, "");
}

static BenchFixture
open_bench (TmJob *job)
{
  BenchFixture bench = { .job = ui_fixture_new (job), .window = gtk_window_new () };
  bench.page = TM_BENCH_PAGE (tm_bench_page_new ());
  gtk_window_set_child (GTK_WINDOW (bench.window), GTK_WIDGET (bench.page));
  tm_bench_page_set_document (bench.page, bench.job->document);
  ui_present (bench.window);
  go_to_bore (&bench);
  return bench;
}

static void
close_bench (BenchFixture *bench)
{
  ui_close (bench->window);
  ui_fixture_free (bench->job);
}

static const char *
get_text (BenchFixture *bench)
{
  return gtk_editable_get_text (GTK_EDITABLE (tm_reading_entry_editable (bench->page->entry)));
}

static void
type (BenchFixture *bench, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (tm_reading_entry_editable (bench->page->entry)), text);
}

static void
act (BenchFixture *bench, const char *action)
{
  gtk_widget_activate_action (GTK_WIDGET (bench->page), action, NULL);
}

static guint
count_trials (BenchFixture *bench)
{
  return tm_document_job (bench->job->document)->pin_trials->len;
}

static GtkWidget *
find_dialog (GType type)
{
  g_autoptr (GListModel) windows = g_object_ref (gtk_window_get_toplevels ());
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);
      if (G_TYPE_CHECK_INSTANCE_TYPE (window, type))
        return window;
    }
  return NULL;
}

static void
test_two_keys (void)
{
  BenchFixture bench = open_bench (make_job ());
  act (&bench, "bench.pin-trial");
  g_assert_true (tm_reading_entry_takes_pins (bench.page->entry));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (bench.page->pin_bar)));
  g_assert_cmpstr (get_text (&bench), ==, "12.000 X plus");
  g_assert_false (tm_reading_entry_has_text (bench.page->entry)); /* Ctrl+Z is not the entry's */
  g_assert_true (tm_reading_entry_try_pin (bench.page->entry, TRUE));
  g_assert_cmpuint (count_trials (&bench), ==, 1);
  /* The next pin stands ready, and after it there is none: readings again. */
  g_assert_true (g_str_has_suffix (get_text (&bench), " X minus"));
  g_assert_true (tm_reading_entry_try_pin (bench.page->entry, FALSE));
  g_assert_cmpuint (count_trials (&bench), ==, 2);
  g_assert_false (tm_reading_entry_takes_pins (bench.page->entry));
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (bench.page->pin_bar)));
  g_assert_cmpstr (get_text (&bench), ==, "");
  g_assert_cmpstr (tm_verdict_panel_title (bench.page->panel), ==, "In");
  close_bench (&bench);
}

/* What was typed stays when pins are tried, and comes to nothing when they are not. */
static void
test_toggle (void)
{
  BenchFixture bench = open_bench (make_job ());
  type (&bench, "12.004");
  act (&bench, "bench.pin-trial");
  g_assert_cmpstr (get_text (&bench), ==, "12.004");
  act (&bench, "bench.pin-trial");
  g_assert_cmpstr (get_text (&bench), ==, "12.004");
  type (&bench, "");
  act (&bench, "bench.pin-trial");
  act (&bench, "bench.pin-trial");
  g_assert_cmpstr (get_text (&bench), ==, ""); /* the pin that was offered goes with the offer */
  act (&bench, "bench.pin-trial");
  act (&bench, "bench.previous");
  g_assert_false (tm_reading_entry_takes_pins (bench.page->entry));
  /* No bore: there is nothing to toggle. */
  tm_document_go (bench.job->document, tm_bench_spot (tm_document_bench (bench.job->document))->piece,
                  tm_job_find_feature (tm_document_job (bench.job->document), "3"), 1, "");
  act (&bench, "bench.pin-trial");
  g_assert_false (tm_reading_entry_takes_pins (bench.page->entry));
  close_bench (&bench);
}

/* A reading's text that ends in + is a pin trial without F2; one that is refused records nothing. */
static void
test_typed (void)
{
  BenchFixture bench = open_bench (make_job ());
  type (&bench, "12.002+");
  act (&bench, "bench.record");
  g_assert_cmpuint (count_trials (&bench), ==, 0); /* plus or minus: two sets hold it */
  g_assert_cmpstr (get_text (&bench), ==, "12.002+");
  type (&bench, "12.002 plus +");
  act (&bench, "bench.record");
  g_assert_cmpuint (count_trials (&bench), ==, 1);
  g_assert_cmpstr (get_text (&bench), ==, "");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (tm_pin_bar_sets (bench.page->pin_bar)), 0);
  act (&bench, "bench.pin-trial");
  gtk_drop_down_set_selected (GTK_DROP_DOWN (tm_pin_bar_sets (bench.page->pin_bar)), 2);
  g_assert_cmpstr (tm_bench_pin_set (tm_document_bench (bench.job->document)), ==, "P-XM");
  /* The buttons do as the keys: a pin of the chosen set, one of no set, a text that says it already. */
  type (&bench, "12.0");
  g_signal_emit_by_name (bench.page->pin_bar, "tried", TRUE);
  g_assert_cmpuint (count_trials (&bench), ==, 2);
  type (&bench, "12.001");
  g_signal_emit_by_name (bench.page->pin_bar, "tried", TRUE);
  g_assert_cmpuint (count_trials (&bench), ==, 2);
  type (&bench, "12.014 +");
  g_signal_emit_by_name (bench.page->pin_bar, "tried", FALSE);
  g_assert_cmpstr (get_text (&bench), ==, "12.014 +");
  type (&bench, "12.014");
  g_assert_true (tm_reading_entry_try_pin (bench.page->entry, FALSE));
  g_assert_cmpstr (tm_bench_newest (tm_document_bench (bench.job->document)).trial->gauge, ==, "P-XM");
  close_bench (&bench);
}

static void
test_withdraw (void)
{
  BenchFixture bench = open_bench (make_job ());
  type (&bench, "12.002 plus +");
  act (&bench, "bench.record");
  const TmPinTrial *trial = tm_bench_newest (tm_document_bench (bench.job->document)).trial;
  act (&bench, "bench.withdraw-last");
  TmReasonDialog *dialog = TM_REASON_DIALOG (find_dialog (TM_TYPE_REASON_DIALOG));
  g_assert_nonnull (dialog);
  g_assert_false (tm_reason_dialog_answer (dialog, NULL, " "));
  g_assert_true (tm_reason_dialog_answer (dialog, NULL, "burr"));
  g_assert_cmpstr (trial->row.withdrawn->reason, ==, "burr");
  close_bench (&bench);
}

static void
test_overdue (void)
{
  TmJob *job = make_job ();
  tm_job_find_gauge (job, "P-XP")->due = tm_job_intern (job, "2020-05-01");
  BenchFixture bench = open_bench (job);
  act (&bench, "bench.pin-trial");
  g_assert_true (tm_reading_entry_try_pin (bench.page->entry, TRUE));
  TmOverdueDialog *dialog = TM_OVERDUE_DIALOG (find_dialog (TM_TYPE_OVERDUE_DIALOG));
  g_assert_nonnull (dialog);
  g_assert_cmpuint (count_trials (&bench), ==, 0);
  g_assert_cmpstr (get_text (&bench), ==, "12.000 X plus +");
  tm_overdue_dialog_answer (dialog, " ");
  g_assert_cmpuint (count_trials (&bench), ==, 0);
  tm_overdue_dialog_answer (dialog, "booked for Friday");
  g_assert_cmpuint (count_trials (&bench), ==, 1);
  g_assert_cmpstr (tm_bench_newest (tm_document_bench (bench.job->document)).trial->overdue_reason, ==,
                   "booked for Friday");
  close_bench (&bench);
}

/* A feature that pins are assigned to begins with them. */
static void
test_assigned_pins (void)
{
  TmJob *job = make_job ();
  tm_job_find_feature (job, "7")->method = tm_job_intern (job, "P-XP");
  BenchFixture bench = open_bench (job);
  g_assert_true (tm_reading_entry_takes_pins (bench.page->entry));
  g_assert_cmpstr (get_text (&bench), ==, "12.000 X plus");
  close_bench (&bench);
}

/* The choice of what counts is kept with the feature. */
static void
test_counts (void)
{
  BenchFixture bench = open_bench (make_job ());
  g_signal_emit_by_name (bench.page->panel, "counts-chosen", TRUE);
  g_assert_cmpint (bore_of (&bench)->counts, ==, TM_COUNTS_COMBINED);
  g_autoptr (GError) error = NULL;
  const TmJob *job = tm_document_job (bench.job->document);
  g_autoptr (TmJob) kept = tm_book_load_job (bench.job->book, job->id, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (tm_job_find_feature (kept, "7")->counts, ==, TM_COUNTS_COMBINED);
  close_bench (&bench);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/bench-pins/two-keys", test_two_keys);
  g_test_add_func ("/bench-pins/toggle", test_toggle);
  g_test_add_func ("/bench-pins/typed", test_typed);
  g_test_add_func ("/bench-pins/withdraw", test_withdraw);
  g_test_add_func ("/bench-pins/overdue", test_overdue);
  g_test_add_func ("/bench-pins/assigned-pins", test_assigned_pins);
  g_test_add_func ("/bench-pins/counts", test_counts);
  return g_test_run ();
}
