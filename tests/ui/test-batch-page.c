/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Batch page: the grid walks and sorts and follows the record, the chosen feature is worked out beside
 * the main loop, and every job that there may be has something to show.
 */

#include <adwaita.h>

#include "app-batch-grid-private.h"
#include "app-batch-page-private.h"
#include "support-big-job.h"
#include "ui-fixture.h"

static GtkWidget *
open_page (UiFixture *fixture, TmBatchPage **page)
{
  GtkWidget *window = gtk_window_new ();

  *page = TM_BATCH_PAGE (tm_batch_page_new ());
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 700);
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (*page));
  tm_batch_page_set_document (*page, fixture->document);
  ui_present (window);
  return window;
}

static void
close_page (GtkWidget *window, UiFixture *fixture)
{
  ui_close (window);
  ui_fixture_free (fixture);
}

static const char *
shown (TmBatchPage *page)
{
  return gtk_stack_get_visible_child_name (page->stack);
}

static void
record (UiFixture *fixture, guint piece, guint feature, const char *station, const char *text)
{
  TmJob *job = tm_document_job (fixture->document);

  g_assert_true (tm_document_go (fixture->document, g_ptr_array_index (job->pieces, piece),
                                 g_ptr_array_index (job->features, feature), 1, station));
  tm_document_set_text (fixture->document, text);
  g_assert_cmpint (tm_document_submit (fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
}

static void
press (GtkWidget *grid, const char *name)
{
  GtkShortcutTrigger *wanted = gtk_shortcut_trigger_parse_string (name);
  GListModel *controllers = gtk_widget_observe_controllers (grid);
  gboolean done = FALSE;

  g_assert_nonnull (wanted);
  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !done; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (!GTK_IS_SHORTCUT_CONTROLLER (controller))
        continue;
      for (guint j = 0; j < g_list_model_get_n_items (G_LIST_MODEL (controller)) && !done; j++)
        {
          g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (G_LIST_MODEL (controller), j);

          if (gtk_shortcut_trigger_equal (gtk_shortcut_get_trigger (shortcut), wanted))
            done = gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, grid,
                                                 gtk_shortcut_get_arguments (shortcut));
        }
    }
  g_assert_true (done);
  g_object_unref (controllers);
  g_object_unref (wanted);
}

static void
test_empty (void)
{
  TmJob *job = tm_job_new ();
  UiFixture *fixture;
  TmBatchPage *page;

  job->id = tm_job_intern (job, "11111111-2222-4333-8444-666666666666");
  job->part_number = tm_job_intern (job, "UI-2");
  job->unit = TM_UNIT_MM;
  fixture = ui_fixture_new (job);
  GtkWidget *window = open_page (fixture, &page);
  g_assert_cmpstr (shown (page), ==, "empty");
  g_assert_cmpstr (adw_status_page_get_title (ADW_STATUS_PAGE (page->empty)), ==, "No features yet");
  ui_add_feature (job, "1", "Ø25 H7", "");
  g_assert_true (tm_document_save_definitions (fixture->document, NULL));
  g_assert_cmpstr (adw_status_page_get_title (ADW_STATUS_PAGE (page->empty)), ==, "No pieces yet");
  ui_add_piece (job, "001");
  g_assert_true (tm_document_save_definitions (fixture->document, NULL));
  g_assert_cmpstr (shown (page), ==, "batch");
  ui_wait_until (page->answer != NULL);
  g_assert_cmpint (tm_batch_state (&page->answer->batch), ==, TM_BATCH_NOT_MEASURED);
  close_page (window, fixture);
}

static void
test_walk (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  TmBatchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  GtkWidget *grid = GTK_WIDGET (page->grid);

  g_assert_true (tm_batch_grid_piece (page->grid) == g_ptr_array_index (job->pieces, 0));
  press (grid, "Right");
  press (grid, "Down");
  g_assert_true (tm_batch_grid_piece (page->grid) == g_ptr_array_index (job->pieces, 1));
  g_assert_true (tm_batch_grid_feature (page->grid) == g_ptr_array_index (job->features, 1));
  /* Beyond the edge it stays. */
  press (grid, "Right");
  g_assert_true (tm_batch_grid_piece (page->grid) == g_ptr_array_index (job->pieces, 1));
  press (grid, "<Control>End");
  g_assert_true (tm_batch_grid_feature (page->grid) == g_ptr_array_index (job->features, 3));
  press (grid, "<Control>Home");
  g_assert_true (tm_batch_grid_piece (page->grid) == g_ptr_array_index (job->pieces, 0));
  g_assert_true (tm_batch_grid_feature (page->grid) == g_ptr_array_index (job->features, 0));
  ui_wait_until (page->answer != NULL
                 && g_str_equal (page->answer->batch.series.feature->balloon, page->balloon));
  press (grid, "Right");
  press (grid, "Return");
  g_assert_true (tm_bench_spot (tm_document_bench (fixture->document))->piece
                 == g_ptr_array_index (job->pieces, 1));
  close_page (window, fixture);
}

/* A reading shows at once in its cell, and in what is said of its feature; so does a withdrawal. */
static void
test_follows_record (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  TmBatchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  const TmGridCell *cell;

  ui_wait_until (page->answer != NULL);
  g_assert_cmpuint (page->answer->batch.series.n_measured, ==, 0);
  cell = tm_batch_cells_get (page->cells, 0, 0);
  g_assert_cmpint (cell->verdict, ==, TM_VERDICT_NOT_MEASURED);
  record (fixture, 0, 0, "mouth/12", "25.026");
  cell = tm_batch_cells_get (page->cells, 0, 0);
  g_assert_cmpint (cell->verdict, ==, TM_VERDICT_OUT);
  ui_wait_until (page->answer != NULL && page->answer->batch.series.n_measured == 1);
  g_assert_cmpuint (tm_batch_cells_n_measured (page->cells), ==, 1);

  /* The worst comes first, and the focus goes with its cell. */
  record (fixture, 1, 3, "", "f");
  tm_batch_cells_set_sort (page->cells, TM_BATCH_BY_WORST);
  g_assert_true (tm_batch_cells_piece (page->cells, 0) == g_ptr_array_index (job->pieces, 0));
  g_assert_true (tm_batch_cells_feature (page->cells, 1) == g_ptr_array_index (job->features, 3));
  g_assert_true (
      tm_document_withdraw (fixture->document, g_ptr_array_index (job->readings, 0), "dirt", NULL));
  g_assert_true (tm_batch_cells_piece (page->cells, 0) == g_ptr_array_index (job->pieces, 1));
  g_assert_true (tm_batch_cells_feature (page->cells, 0) == g_ptr_array_index (job->features, 3));
  tm_batch_cells_set_sort (page->cells, TM_BATCH_AS_MADE);
  g_assert_true (tm_batch_cells_feature (page->cells, 0) == g_ptr_array_index (job->features, 0));
  ui_wait_until (page->answer != NULL && page->answer->batch.series.n_measured == 0);
  close_page (window, fixture);
}

/* A feature that goes away takes the focus to another; the page lives through every change out of sight too.
 */
static void
test_definitions (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  TmBatchPage *page;
  GtkWidget *window = open_page (fixture, &page);

  press (GTK_WIDGET (page->grid), "<Control>End");
  tm_document_leave (fixture->document, NULL, tm_job_find_feature (job, "4"));
  g_assert_cmpint (tm_job_remove_feature (job, "4"), ==, TM_ADD_OK);
  g_assert_true (tm_document_save_definitions (fixture->document, NULL));
  g_assert_cmpuint (tm_batch_cells_n_rows (page->cells), ==, 3);
  g_assert_nonnull (tm_batch_grid_feature (page->grid));
  gtk_widget_set_visible (GTK_WIDGET (page), FALSE);
  ui_add_piece (job, "003");
  g_assert_true (tm_document_save_definitions (fixture->document, NULL));
  gtk_widget_set_visible (GTK_WIDGET (page), TRUE);
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (page)));
  g_assert_cmpuint (tm_batch_cells_n_columns (page->cells), ==, 3);
  tm_batch_page_set_document (page, NULL);
  g_assert_null (tm_batch_grid_piece (page->grid));
  close_page (window, fixture);
}

/* Where a point of the widget is, and what is under it when it has scrolled. */
static void
test_scrolls (void)
{
  TmJob *job = tm_test_big_job (60, 20000);
  UiFixture *fixture;
  TmBatchPage *page;
  gint column, row;

  job->id = tm_job_intern (job, "11111111-2222-4333-8444-777777777777");
  fixture = ui_fixture_new (job);
  GtkWidget *window = open_page (fixture, &page);
  ui_wait_until (tm_batch_cells_progress (page->cells) == 1);
  press (GTK_WIDGET (page->grid), "<Control>End");
  ui_wait_until (tm_batch_grid_scroll (page->grid, GTK_ORIENTATION_HORIZONTAL) > 0);
  g_assert_cmpfloat (tm_batch_grid_scroll (page->grid, GTK_ORIENTATION_VERTICAL), >, 0);
  g_assert_true (
      tm_batch_grid_cell_at (page->grid, page->grid->head_width + 1, TM_GRID_HEAD + 1, &column, &row));
  g_assert_cmpint (column, >, 0);
  g_assert_cmpint (row, >, 0);
  g_assert_cmpint (column, <, (gint)tm_batch_cells_n_columns (page->cells));
  press (GTK_WIDGET (page->grid), "<Control>Home");
  g_assert_cmpfloat (tm_batch_grid_scroll (page->grid, GTK_ORIENTATION_HORIZONTAL), ==, 0);
  g_assert_true (tm_batch_grid_cell_at (page->grid, page->grid->head_width + TM_GRID_STEP_X * 3 + 1,
                                        TM_GRID_HEAD + TM_GRID_STEP_Y + 1, &column, &row));
  g_assert_cmpint (column, ==, 3);
  g_assert_cmpint (row, ==, 1);
  g_assert_true (tm_batch_grid_cell_at (page->grid, 40, TM_GRID_HEAD + 1, &column, &row));
  g_assert_cmpint (column, ==, -1);
  close_page (window, fixture);
}

/* While something is worked out the panel says so, and is no higher beside others than by itself: where it
 * was, GTK found fault with whatever measured it at that moment. */
static void
test_says_busy (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmBatchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  GtkWidget *panel = GTK_WIDGET (page->panel);
  int by_itself, beside;

  ui_wait_until (page->answer != NULL);
  tm_batch_panel_set_busy (page->panel, TRUE);
  ui_wait_until (gtk_widget_get_visible (gtk_widget_get_last_child (panel)));
  gtk_widget_measure (gtk_widget_get_parent (panel), GTK_ORIENTATION_VERTICAL, -1, &by_itself, NULL, NULL,
                      NULL);
  gtk_widget_measure (gtk_widget_get_parent (panel), GTK_ORIENTATION_VERTICAL, 4000, &beside, NULL, NULL,
                      NULL);
  g_assert_cmpint (beside, <=, by_itself);
  tm_batch_panel_set_busy (page->panel, FALSE);
  g_assert_false (gtk_widget_get_visible (gtk_widget_get_last_child (panel)));
  close_page (window, fixture);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/batch-page/empty", test_empty);
  g_test_add_func ("/batch-page/walk", test_walk);
  g_test_add_func ("/batch-page/follows-record", test_follows_record);
  g_test_add_func ("/batch-page/definitions", test_definitions);
  g_test_add_func ("/batch-page/scrolls", test_scrolls);
  g_test_add_func ("/batch-page/says-busy", test_says_busy);
  return g_test_run ();
}
