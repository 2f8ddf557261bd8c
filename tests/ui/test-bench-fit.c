/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fit and press at the Bench page: in the place of the reading entry, and back; what is typed there.
 */

#include <adwaita.h>

#include "app-bench-page-private.h"
#include "app-edit-mate.h"
#include "app-figure-entry.h"
#include "app-fit-state.h"
#include "app-list-row.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *job;
  GtkWidget *window;
  TmBenchPage *page;
} BenchFixture;

static TmFeature *
find_feature (BenchFixture *bench, const char *balloon)
{
  return tm_job_find_feature (tm_document_job (bench->job->document), balloon);
}

static void
go_to (BenchFixture *bench, const char *balloon)
{
  TmJob *job = tm_document_job (bench->job->document);

  tm_document_go (bench->job->document, g_ptr_array_index (job->pieces, 0), find_feature (bench, balloon), 1,
                  "");
}

static BenchFixture
open_bench (void)
{
  BenchFixture bench = { .job = ui_fixture_new (ui_make_job ()), .window = gtk_window_new () };

  bench.page = TM_BENCH_PAGE (tm_bench_page_new ());
  gtk_window_set_child (GTK_WINDOW (bench.window), GTK_WIDGET (bench.page));
  tm_bench_page_set_document (bench.page, bench.job->document);
  ui_present (bench.window);
  go_to (&bench, "1");
  return bench;
}

static void
close_bench (BenchFixture *bench)
{
  ui_close (bench->window);
  ui_fixture_free (bench->job);
}

static void
act (BenchFixture *bench, const char *action)
{
  gtk_widget_activate_action (GTK_WIDGET (bench->page), action, NULL);
}

/* The shown entry whose name begins with @name. */
static TmFigureEntry *
find_entry (GtkWidget *widget, const char *name)
{
  TmFigureEntry *found = NULL;

  if (!gtk_widget_get_mapped (widget))
    return NULL;
  if (TM_IS_FIGURE_ENTRY (widget))
    {
      GtkWidget *line = gtk_widget_get_first_child (widget);
      GtkWidget *title = gtk_widget_get_first_child (line);

      return g_str_has_prefix (gtk_label_get_text (GTK_LABEL (title)), name) ? TM_FIGURE_ENTRY (widget)
                                                                             : NULL;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_entry (child, name);
  return found;
}

static GtkWidget *
find_list (GtkWidget *widget)
{
  GtkWidget *found = NULL;

  if (!gtk_widget_get_mapped (widget))
    return NULL;
  if (GTK_IS_LIST_BOX (widget))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_list (child);
  return found;
}

static TmFigureEntry *
enter (BenchFixture *bench, const char *name, const char *text)
{
  TmFigureEntry *entry = find_entry (GTK_WIDGET (bench->page->fit), name);

  g_assert_nonnull (entry);
  gtk_editable_set_text (tm_figure_entry_editable (entry), text);
  g_signal_emit_by_name (tm_figure_entry_editable (entry), "activate");
  return entry;
}

static void
open_fit (BenchFixture *bench, const char *part)
{
  act (bench, "bench.fit");
  g_assert_true (tm_bench_page_is_fitting (bench->page));
  tm_fit_view_show_part (bench->page->fit, part);
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (bench->page->fit)));
}

/* Of the row that is chosen among the measured mates. */
static const char *
get_mate (BenchFixture *bench)
{
  GtkWidget *list = find_list (GTK_WIDGET (bench->page->fit));

  g_assert_nonnull (list);
  return tm_list_row_key (gtk_list_box_get_selected_row (GTK_LIST_BOX (list)));
}

static void
test_toggle (void)
{
  BenchFixture bench = open_bench ();

  g_assert_true (gtk_widget_get_visible (bench.page->fit_button));
  g_assert_false (tm_bench_page_is_fitting (bench.page));
  act (&bench, "bench.fit");
  g_assert_true (tm_bench_page_is_fitting (bench.page));
  g_assert_false (gtk_widget_get_mapped (GTK_WIDGET (bench.page->entry)));
  /* What measures is left alone while it is out of sight. */
  act (&bench, "bench.pin-trial");
  act (&bench, "bench.record");
  act (&bench, "bench.fit");
  g_assert_false (tm_bench_page_is_fitting (bench.page));
  g_assert_false (tm_reading_entry_holds_pin (bench.page->entry));
  g_assert_cmpuint (tm_document_job (bench.job->document)->readings->len, ==, 0);
  close_bench (&bench);
}

/* A position has no mate: the view is not offered, and gives way when one is chosen. */
static void
test_without_mate (void)
{
  BenchFixture bench = open_bench ();

  act (&bench, "bench.fit");
  go_to (&bench, "3");
  g_assert_false (tm_bench_page_is_fitting (bench.page));
  g_assert_false (gtk_widget_get_visible (bench.page->fit_button));
  act (&bench, "bench.fit");
  g_assert_false (tm_bench_page_is_fitting (bench.page));
  close_bench (&bench);
}

static void
test_wanted (void)
{
  BenchFixture bench = open_bench ();
  const TmMate *mate = &find_feature (&bench, "1")->mate;
  TmFigureEntry *least;
  g_autofree char *text = NULL;

  open_fit (&bench, "fit");
  least = enter (&bench, "Least", "-0.035");
  g_assert_cmpstr (tm_figure_entry_problem (least), ==, "");
  g_assert_cmpint (mate->wanted_least.count, ==, -G_GINT64_CONSTANT (35000000));
  enter (&bench, "Least", "tight");
  g_assert_cmpstr (tm_figure_entry_problem (least), !=, "");
  g_assert_cmpint (mate->wanted_least.count, ==, -G_GINT64_CONSTANT (35000000));
  text = tm_figure_entry_text (least);
  g_assert_cmpstr (text, ==, "tight");
  close_bench (&bench);
}

/* The least above the most: neither is kept. */
static void
test_crossed (void)
{
  BenchFixture bench = open_bench ();
  const TmMate *mate = &find_feature (&bench, "1")->mate;
  TmFigureEntry *most;

  open_fit (&bench, "fit");
  enter (&bench, "Least", "0.010");
  most = enter (&bench, "Most", "0.005");
  g_assert_cmpstr (tm_figure_entry_problem (most), !=, "");
  g_assert_false (mate->wanted_most.given);
  enter (&bench, "Most", "0.020");
  g_assert_cmpstr (tm_figure_entry_problem (most), ==, "");
  g_assert_cmpint (mate->wanted_most.count, ==, G_GINT64_CONSTANT (20000000));
  close_bench (&bench);
}

static void
test_press (void)
{
  BenchFixture bench = open_bench ();
  const TmPress *press = &find_feature (&bench, "1")->press;
  TmFigureEntry *hub;
  g_autofree char *kept = NULL;
  g_autofree char *other = NULL;

  open_fit (&bench, "press");
  hub = enter (&bench, "Hub outside", "60");
  g_assert_cmpint (press->hub_outside.count, ==, G_GINT64_CONSTANT (60000000000));
  enter (&bench, "Hub outside", "-3");
  g_assert_cmpstr (tm_figure_entry_problem (hub), !=, "");
  g_assert_cmpint (press->hub_outside.count, ==, G_GINT64_CONSTANT (60000000000));
  kept = tm_figure_entry_text (hub);
  g_assert_cmpstr (kept, ==, "-3");
  /* Another feature: what was wrong with the one before is not said of it. */
  go_to (&bench, "2");
  g_assert_true (tm_bench_page_is_fitting (bench.page));
  g_assert_cmpstr (tm_figure_entry_problem (hub), ==, "");
  other = tm_figure_entry_text (hub);
  g_assert_cmpstr (other, ==, "");
  close_bench (&bench);
}

static TmMateSize *
add_mate (BenchFixture *bench, const char *feature, const char *serial, const char *piece)
{
  TmJob *job = tm_document_job (bench->job->document);
  TmMateSize *mate = tm_mate_size_new ();

  mate->feature = tm_job_intern (job, feature);
  mate->serial = tm_job_intern (job, serial);
  mate->piece = tm_job_intern (job, piece);
  g_assert_cmpint (tm_quantity_read ("11.990", TM_UNIT_MM, &mate->smallest), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_mate_size (job, mate), ==, TM_ADD_OK);
  return mate;
}

/* A mate that was picked is looked at on other pieces, but not where another is meant. */
static void
test_meant (void)
{
  BenchFixture bench = open_bench ();
  TmJob *job = tm_document_job (bench.job->document);
  TmFeature *feature = find_feature (&bench, "1");
  TmFitState state;

  add_mate (&bench, "1", "A", "");
  add_mate (&bench, "1", "B", "001");
  add_mate (&bench, "1", "C", "002");
  tm_fit_state_of (bench.job->document, NULL, 20, 20, &state);
  g_assert_cmpstr (state.mate->serial, ==, "B");
  open_fit (&bench, "fit");
  gtk_widget_activate_action (GTK_WIDGET (bench.page->fit), "fit.choose-mate", "s", "A");
  g_assert_cmpstr (get_mate (&bench), ==, "A");
  tm_document_go (bench.job->document, g_ptr_array_index (job->pieces, 1), feature, 1, "");
  g_assert_cmpstr (get_mate (&bench), ==, "C");
  close_bench (&bench);
}

/* A mate that has to be left out makes way for the one that gets its piece. */
static void
test_use_pairing (void)
{
  BenchFixture bench = open_bench ();
  TmJob *job = tm_document_job (bench.job->document);
  TmFeature *feature = ui_add_feature (job, "7", "Ø12 H7", "BM-2");
  TmMateSize *left_out = add_mate (&bench, "7", "X", "001");
  TmMateSize *paired = add_mate (&bench, "7", "R", "");
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (tm_quantity_read ("0.002", TM_UNIT_MM, &paired->uncertainty), ==, TM_READ_OK);
  g_assert_true (tm_edit_wanted_clearance (bench.job->document, feature, tm_quantity_new (0, TM_UNIT_MM, 3),
                                           tm_quantity_new (40000000, TM_UNIT_MM, 3), &error));
  go_to (&bench, "7");
  tm_bench_set_text (tm_document_bench (bench.job->document), "12.010");
  g_assert_cmpint (
      tm_bench_submit (tm_document_bench (bench.job->document), "2026-05-04T09:00:00Z", 0, &error), ==,
      TM_SUBMIT_RECORDED);
  go_to (&bench, "7");
  open_fit (&bench, "pairing");
  gtk_widget_activate_action (GTK_WIDGET (bench.page->fit), "fit.use-pairing", NULL);
  g_assert_cmpstr (paired->piece, ==, "001");
  g_assert_cmpstr (left_out->piece, ==, "");
  close_bench (&bench);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/bench-fit/toggle", test_toggle);
  g_test_add_func ("/bench-fit/without-mate", test_without_mate);
  g_test_add_func ("/bench-fit/wanted", test_wanted);
  g_test_add_func ("/bench-fit/crossed", test_crossed);
  g_test_add_func ("/bench-fit/press", test_press);
  g_test_add_func ("/bench-fit/meant", test_meant);
  g_test_add_func ("/bench-fit/use-pairing", test_use_pairing);
  return g_test_run ();
}
