/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Bench page in a window: typing, recording, slips, chips, correcting and withdrawing, and that
 * a job with a thousand features is judged only where somebody looks.
 */

#include <adwaita.h>

#include "app-bench-page-private.h"
#include "app-edit.h"
#include "app-feature-words.h"
#include "app-nonconformance-dialog.h"
#include "app-reason-dialog.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *job;
  GtkWidget *window;
  TmBenchPage *page;
} BenchFixture;

static BenchFixture
open_bench (TmJob *job)
{
  BenchFixture bench = { .job = ui_fixture_new (job), .window = gtk_window_new () };
  bench.page = TM_BENCH_PAGE (tm_bench_page_new ());
  gtk_window_set_default_size (GTK_WINDOW (bench.window), 1280, 720);
  gtk_window_set_child (GTK_WINDOW (bench.window), GTK_WIDGET (bench.page));
  tm_bench_page_set_document (bench.page, bench.job->document);
  ui_present (bench.window);
  return bench;
}

static void
close_bench (BenchFixture *bench)
{
  ui_close (bench->window);
  ui_fixture_free (bench->job);
}

static GtkEditable *
get_entry (BenchFixture *bench)
{
  return GTK_EDITABLE (tm_reading_entry_editable (bench->page->entry));
}

static const TmSpot *
get_spot (BenchFixture *bench)
{
  return tm_bench_spot (tm_document_bench (bench->job->document));
}

static void
type (BenchFixture *bench, const char *text)
{
  gtk_editable_set_text (get_entry (bench), text);
}

static void
press_enter (BenchFixture *bench)
{
  g_signal_emit_by_name (get_entry (bench), "activate");
}

static void
enter (BenchFixture *bench, const char *text)
{
  type (bench, text);
  press_enter (bench);
}

static guint
count_readings (BenchFixture *bench)
{
  return tm_document_job (bench->job->document)->readings->len;
}

static const TmReading *
get_last (BenchFixture *bench)
{
  return tm_bench_last (tm_document_bench (bench->job->document));
}

static gboolean
entry_has_focus (BenchFixture *bench)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (bench->window));
  return focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (get_entry (bench)));
}

static void
test_record (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  ui_wait_until (entry_has_focus (&bench));
  enter (&bench, "25012");
  g_assert_cmpuint (count_readings (&bench), ==, 1);
  g_assert_cmpint (get_last (&bench)->value.count, ==, G_GINT64_CONSTANT (25012000000));
  g_assert_cmpstr (get_last (&bench)->station, ==, "mouth/12");
  g_assert_cmpstr (get_spot (&bench)->station, ==, "mouth/3");
  g_assert_cmpstr (gtk_editable_get_text (get_entry (&bench)), ==, "");
  g_assert_cmpstr (tm_verdict_panel_title (bench.page->panel), ==, "1 of 4 read");
  enter (&bench, "25.010");
  enter (&bench, "25.010");
  enter (&bench, "25.010");
  /* The bore is read: the session and the page move to the next feature. */
  g_assert_cmpstr (get_spot (&bench)->feature->balloon, ==, "2");
  g_assert_cmpstr (tm_verdict_panel_title (bench.page->panel), ==, "Not measured");
  g_assert_true (entry_has_focus (&bench));
  close_bench (&bench);
}

static void
test_refused_text_stays (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  enter (&bench, "abc");
  g_assert_cmpuint (count_readings (&bench), ==, 0);
  g_assert_cmpstr (gtk_editable_get_text (get_entry (&bench)), ==, "abc");
  g_assert_true (gtk_editable_get_selection_bounds (get_entry (&bench), NULL, NULL));
  enter (&bench, "");
  g_assert_cmpuint (count_readings (&bench), ==, 0);
  close_bench (&bench);
}

static void
test_slip_asks (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  const TmBench *session = tm_document_bench (bench.job->document);
  enter (&bench, "25.512");
  g_assert_cmpuint (count_readings (&bench), ==, 0);
  g_assert_cmpint (tm_bench_question (session)->slip, ==, TM_SLIP_THIMBLE_TURN);
  /* A gauge that sends Enter twice confirms nothing. */
  press_enter (&bench);
  g_assert_cmpuint (count_readings (&bench), ==, 0);
  enter (&bench, "25.012");
  g_assert_cmpuint (count_readings (&bench), ==, 1);
  g_assert_cmpint (tm_bench_question (session)->slip, ==, TM_SLIP_NONE);
  close_bench (&bench);
}

static void
test_chips (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  GtkWidget *chip = tm_station_chips_station (bench.page->chips, 2);
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (chip)), ==, "bottom 12");
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (chip), TRUE);
  g_assert_cmpstr (get_spot (&bench)->station, ==, "bottom/12");
  enter (&bench, "25.010");
  g_assert_cmpstr (gtk_button_get_label (GTK_BUTTON (chip)), ==, "✓ bottom 12");
  g_assert_null (tm_station_chips_place (bench.page->chips, 1));
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.next", NULL);
  while (get_spot (&bench)->feature->places == 1)
    gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.next", NULL);
  g_assert_nonnull (tm_station_chips_place (bench.page->chips, 4));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (tm_station_chips_place (bench.page->chips, 3)), TRUE);
  g_assert_cmpuint (get_spot (&bench)->place, ==, 3);
  close_bench (&bench);
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
test_withdraw_last (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  enter (&bench, "25.010");
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.withdraw-last", NULL);
  TmReasonDialog *dialog = TM_REASON_DIALOG (find_dialog (TM_TYPE_REASON_DIALOG));
  const TmReading *reading = get_last (&bench);
  g_assert_nonnull (dialog);
  g_assert_false (tm_reason_dialog_answer (dialog, NULL, "  "));
  g_assert_true (tm_row_counts (&reading->row));
  g_assert_true (tm_reason_dialog_answer (dialog, NULL, "wrong feature"));
  g_assert_cmpstr (reading->row.withdrawn->reason, ==, "wrong feature");
  g_assert_cmpuint (count_readings (&bench), ==, 1);
  close_bench (&bench);
}

static void
test_correct (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  enter (&bench, "25.010");
  const TmReading *reading = get_last (&bench);
  TmReasonDialog *dialog = TM_REASON_DIALOG (
      tm_reason_dialog_present_correct (GTK_WIDGET (bench.page), bench.job->document, reading));
  g_assert_false (tm_reason_dialog_answer (dialog, "far", "misread"));
  g_assert_cmpuint (count_readings (&bench), ==, 1);
  g_assert_true (tm_reason_dialog_answer (dialog, "25.011", "misread"));
  g_assert_cmpuint (count_readings (&bench), ==, 2);
  const TmReading *with = reading->row.replaced_by;
  g_assert_cmpint (with->value.count, ==, G_GINT64_CONSTANT (25011000000));
  g_assert_cmpstr (with->row.reason, ==, "misread");
  close_bench (&bench);
}

static void
test_nonconformance (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  TmJob *job = tm_document_job (bench.job->document);
  enter (&bench, "25.040");
  tm_document_go (bench.job->document, g_ptr_array_index (job->pieces, 0),
                  g_ptr_array_index (job->features, 0), 1, "mouth/12");
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.nonconformance", NULL);
  TmNonconformanceDialog *dialog = TM_NONCONFORMANCE_DIALOG (find_dialog (TM_TYPE_NONCONFORMANCE_DIALOG));
  g_assert_nonnull (dialog);
  g_assert_false (tm_nonconformance_dialog_answer (dialog, "", "", 0));
  g_assert_true (tm_nonconformance_dialog_answer (dialog, "NC-7", "bored over", 4));
  const TmNonconformance *row = tm_job_nonconformance_of (job, g_ptr_array_index (job->pieces, 0),
                                                          g_ptr_array_index (job->features, 0));
  g_assert_cmpstr (row->number, ==, "NC-7");
  g_assert_cmpstr (row->disposition, ==, "scrap");
  g_assert_cmpstr (row->by, ==, tm_bench_by (tm_document_bench (bench.job->document)));
  g_assert_cmpuint (strlen (row->at), ==, strlen ("2026-05-04T09:12:00Z"));
  close_bench (&bench);
}

/* A decision in words of the shop's own, or of an older program, is kept as it is, and so is who raised it.
 */
static void
test_own_disposition (void)
{
  TmJob *job = ui_make_job ();
  TmNonconformance *row = tm_nonconformance_new ();
  row->feature = "1";
  row->number = "NC-1";
  row->disposition = "return to supplier";
  row->by = "XY";
  tm_job_add_nonconformance (job, row);
  BenchFixture bench = open_bench (job);
  tm_document_go (bench.job->document, g_ptr_array_index (job->pieces, 0),
                  g_ptr_array_index (job->features, 0), 1, "mouth/12");
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.nonconformance", NULL);
  TmNonconformanceDialog *dialog = TM_NONCONFORMANCE_DIALOG (find_dialog (TM_TYPE_NONCONFORMANCE_DIALOG));
  g_assert_true (tm_nonconformance_dialog_answer (dialog, "NC-2", "scratched", 6));
  g_assert_cmpuint (job->nonconformances->len, ==, 1);
  g_assert_cmpstr (row->number, ==, "NC-2");
  g_assert_cmpstr (row->disposition, ==, "return to supplier");
  g_assert_cmpstr (row->by, ==, "XY");
  g_assert_cmpstr (row->piece, ==, "");
  close_bench (&bench);
}

static void
test_position_and_outcome (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  TmJob *job = tm_document_job (bench.job->document);
  const char *dx = NULL;
  const char *dy = NULL;
  TmPiece *piece = g_ptr_array_index (job->pieces, 0);
  tm_document_go (bench.job->document, piece, g_ptr_array_index (job->features, 2), 1, "");
  g_assert_false (tm_reading_entry_offsets (bench.page->entry, &dx, &dy));
  enter (&bench, "0.05");
  g_assert_cmpuint (count_readings (&bench), ==, 1);
  tm_document_go (bench.job->document, piece, g_ptr_array_index (job->features, 3), 1, "");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (bench.page->pictures)));
  enter (&bench, "p");
  g_assert_cmpint (get_last (&bench)->outcome, ==, TM_OUTCOME_PASS);
  close_bench (&bench);
}

static GtkEditable *
get_focused_entry (BenchFixture *bench)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (bench->window));
  GtkWidget *entry = focus != NULL ? gtk_widget_get_ancestor (focus, GTK_TYPE_ENTRY) : NULL;
  g_assert_nonnull (entry);
  return GTK_EDITABLE (entry);
}

/* Enter leads from dx to dy and then records both. */
static void
test_offsets (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  TmJob *job = tm_document_job (bench.job->document);
  ui_wait_until (entry_has_focus (&bench));
  tm_document_go (bench.job->document, g_ptr_array_index (job->pieces, 0),
                  g_ptr_array_index (job->features, 2), 1, "");
  GtkEditable *dx = get_focused_entry (&bench);
  g_assert_true (dx != get_entry (&bench));
  gtk_editable_set_text (dx, "0.03");
  /* Another definition changes meanwhile: what is typed stays. */
  g_assert_true (tm_document_save_definitions (bench.job->document, NULL));
  g_assert_cmpstr (gtk_editable_get_text (dx), ==, "0.03");
  g_signal_emit_by_name (dx, "activate");
  GtkEditable *dy = get_focused_entry (&bench);
  g_assert_true (dy != dx);
  gtk_editable_set_text (dy, "-0.04");
  g_signal_emit_by_name (dy, "activate");
  g_assert_cmpuint (count_readings (&bench), ==, 1);
  g_assert_cmpint (get_last (&bench)->dx.count, ==, G_GINT64_CONSTANT (30000000));
  g_assert_cmpint (get_last (&bench)->dy.count, ==, G_GINT64_CONSTANT (-40000000));
  g_assert_cmpstr (gtk_editable_get_text (dx), ==, "");
  close_bench (&bench);
}

/* A feature without a gauge keeps the one that is chosen for it, and its readings count by it. */
static void
test_choose_gauge (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  TmJob *job = tm_document_job (bench.job->document);
  TmFeature *position = g_ptr_array_index (job->features, 2);
  tm_document_go (bench.job->document, g_ptr_array_index (job->pieces, 0), position, 1, "");
  g_signal_emit_by_name (bench.page->panel, "method-chosen", "BM-2");
  g_assert_cmpstr (position->method, ==, "BM-2");
  /* One that has a gauge is only read with another for now. */
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  tm_document_go (bench.job->document, g_ptr_array_index (job->pieces, 0), bore, 1, "mouth/12");
  g_signal_emit_by_name (bench.page->panel, "method-chosen", "BM-9");
  g_assert_cmpstr (bore->method, ==, "BM-2");
  g_assert_cmpstr (tm_bench_method (tm_document_bench (bench.job->document)), ==, "BM-9");
  tm_document_go (bench.job->document, g_ptr_array_index (job->pieces, 0), position, 1, "");
  g_assert_cmpstr (tm_bench_method (tm_document_bench (bench.job->document)), ==, "");
  close_bench (&bench);
}

static void
test_order (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  g_autofree char *order = NULL;
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.toggle-order", NULL);
  g_assert_cmpint (tm_bench_order (tm_document_bench (bench.job->document)), ==, TM_ORDER_FEATURE_FIRST);
  g_object_get (bench.page, "order", &order, NULL);
  g_assert_cmpstr (order, ==, "feature-first");
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.toggle-order", NULL);
  g_assert_cmpint (tm_bench_order (tm_document_bench (bench.job->document)), ==, TM_ORDER_PIECE_FIRST);
  close_bench (&bench);
}

static void
test_empty (void)
{
  TmJob *job = tm_job_new ();
  job->id = tm_job_intern (job, "11111111-2222-4333-8444-666666666666");
  job->part_number = tm_job_intern (job, "UI-2");
  job->unit = TM_UNIT_MM;
  BenchFixture bench = open_bench (job);
  g_assert_cmpstr (gtk_stack_get_visible_child_name (bench.page->stack), ==, "empty");
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.record", NULL);
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.readings", NULL);
  close_bench (&bench);
}

/* The page stands at the feature that is taken away, perhaps with something typed for it. */
static void
test_current_feature_removed (void)
{
  g_autoptr (GError) error = NULL;
  BenchFixture bench = open_bench (ui_make_job ());

  type (&bench, "25.0");
  tm_edit_remove_feature (bench.job->document, "1", &error);
  g_assert_no_error (error);
  g_assert_cmpstr (get_spot (&bench)->feature->balloon, ==, "2");
  g_assert_cmpstr (tm_bench_text (tm_document_bench (bench.job->document)), ==, "");
  enter (&bench, "6.60");
  g_assert_cmpuint (count_readings (&bench), ==, 1);
  g_assert_cmpstr (get_last (&bench)->row.feature->balloon, ==, "2");
  close_bench (&bench);
}

static void
test_picture_has_words (void)
{
  BenchFixture bench = open_bench (ui_make_job ());
  gtk_test_accessible_assert_role (GTK_ACCESSIBLE (tm_pictures_get (bench.page->pictures, TM_PICTURE_BAND)),
                                   GTK_ACCESSIBLE_ROLE_IMG);
  g_assert_true (gtk_test_accessible_has_property (
      GTK_ACCESSIBLE (tm_pictures_get (bench.page->pictures, TM_PICTURE_BAND)),
      GTK_ACCESSIBLE_PROPERTY_LABEL));
  g_assert_true (
      gtk_test_accessible_has_property (GTK_ACCESSIBLE (get_entry (&bench)), GTK_ACCESSIBLE_PROPERTY_LABEL));
  close_bench (&bench);
}

static void
test_large_job_is_judged_in_sight (void)
{
  TmJob *job = ui_make_job ();
  for (guint i = 5; i <= 1000; i++)
    {
      g_autofree char *balloon = g_strdup_printf ("%u", i);
      ui_add_feature (job, balloon, "12 ±0.1", "BM-2");
    }
  BenchFixture bench = open_bench (job);
  guint at_once = tm_feature_list_count_judged (bench.page->list);
  g_assert_cmpuint (at_once, >, 0);
  g_assert_cmpuint (at_once, <, 120);
  enter (&bench, "25.010");
  g_assert_cmpuint (tm_feature_list_count_judged (bench.page->list), <, 300);
  close_bench (&bench);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/bench-page/record", test_record);
  g_test_add_func ("/bench-page/refused-text-stays", test_refused_text_stays);
  g_test_add_func ("/bench-page/slip-asks", test_slip_asks);
  g_test_add_func ("/bench-page/chips", test_chips);
  g_test_add_func ("/bench-page/withdraw-last", test_withdraw_last);
  g_test_add_func ("/bench-page/correct", test_correct);
  g_test_add_func ("/bench-page/nonconformance", test_nonconformance);
  g_test_add_func ("/bench-page/own-disposition", test_own_disposition);
  g_test_add_func ("/bench-page/position-and-outcome", test_position_and_outcome);
  g_test_add_func ("/bench-page/offsets", test_offsets);
  g_test_add_func ("/bench-page/choose-gauge", test_choose_gauge);
  g_test_add_func ("/bench-page/order", test_order);
  g_test_add_func ("/bench-page/empty", test_empty);
  g_test_add_func ("/bench-page/current-feature-removed", test_current_feature_removed);
  g_test_add_func ("/bench-page/picture-has-words", test_picture_has_words);
  g_test_add_func ("/bench-page/large-job-is-judged-in-sight", test_large_job_is_judged_in_sight);
  return g_test_run ();
}
