/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Setting and Cutting tools views.  Figures of the setting: as in tests/core/test-setting.c and
 * test-blocks.c, whose sources they share.
 */

#include "app-dialog.h"
#include "app-edit-tool.h"
#include "app-list-row.h"
#include "app-resources.h"
#include "app-setting-view.h"
#include "app-tool-view.h"
#include "app-tool-words.h"
#include "methods-support.h"

typedef struct {
  UiFixture *fixture;
  GtkWidget *window;
  GtkWidget *view;
  TmJob *job;
} Page;

static Page *
open_page (TmJob *job, GtkWidget *view)
{
  Page *page = g_new0 (Page, 1);

  page->fixture = ui_fixture_new (job);
  page->job = job;
  page->view = view;
  page->window = ui_window_new (view);
  if (TM_IS_SETTING_VIEW (view))
    tm_setting_view_set_document (TM_SETTING_VIEW (view), page->fixture->document);
  else
    tm_tool_view_set_document (TM_TOOL_VIEW (view), page->fixture->document);
  ui_present (page->window);
  return page;
}

static void
close_page (Page *page)
{
  ui_close (page->window);
  ui_fixture_free (page->fixture);
  g_free (page);
}

static void
write_row (AdwEntryRow *row, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (row), text);
}

static void
assert_answer (const TmLiveAnswer *answer, const char *large, const char *under)
{
  g_assert_cmpstr (gtk_label_get_text (answer->large), ==, large);
  assert_says (gtk_label_get_text (answer->under), under);
}

/* -------- Setting -------- */

/* A set in the register goes before the usual ones. */
static TmJob *
make_job (void)
{
  TmJob *job = make_methods_job ();
  TmGauge *blocks = add_gauge (job, "GB-1", "gauge blocks");
  TmGauge *ring = add_gauge (job, "SR-25", "setting ring");

  blocks->blocks = tm_job_intern (job, "1-9 by 1; 10-90 by 10");
  ring->range_from = ring->range_to = mm ("25.0023");
  job->material = tm_job_intern (job, "6061-T6");
  return job;
}

static void
test_stack (void)
{
  Page *page = open_page (make_job (), tm_setting_view_new ());
  TmStackPanel *stack = tm_setting_view_stack (TM_SETTING_VIEW (page->view));

  assert_answer (&stack->answer, "", "GB-1 holds 18 sizes, 1 to 90 mm");
  write_row (stack->size, "47");
  assert_answer (&stack->answer, "7 + 40 mm", "2 blocks of GB-1");
  write_row (stack->size, "47.5");
  assert_answer (&stack->answer, "", "GB-1: no eight blocks");
  adw_combo_row_set_selected (stack->set, 1);
  write_row (stack->size, "58.345");
  assert_answer (&stack->answer, "1.005 + 1.34 + 6 + 50 mm", "4 blocks of M112");
  write_row (stack->wear, "2");
  assert_answer (&stack->answer, "2 + 1.005 + 1.34 + 2 + 50 + 2 mm", "wear block at either end");
  write_row (stack->wear, "two");
  assert_answer (&stack->answer, "", "“two”");
  g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (stack->wear), "error"));
  write_row (stack->wear, "");
  write_row (stack->size, "-3");
  assert_answer (&stack->answer, "", "larger than zero");
  close_page (page);
}

static void
test_dial (void)
{
  Page *page = open_page (make_job (), tm_setting_view_new ());
  TmDialPanel *dial = tm_setting_view_dial (TM_SETTING_VIEW (page->view));

  assert_answer (&dial->answer, "", "Choose a feature");
  adw_combo_row_set_selected (dial->feature, 1);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (dial->upper)), ==, "25.021");
  write_row (dial->nominal, "25.010");
  adw_combo_row_set_selected (dial->ring, 1);
  g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (dial->standard)), ==, "25.0023");
  write_row (dial->graduation, "0.001");
  assert_answer (&dial->answer, "On the ring: mark −8 (−7.7 µm)",
                 "The lower limit shows as −10.0 µm, the upper as +11.0 µm.");
  assert_answer (&dial->answer, "On the ring: mark −8 (−7.7 µm)", "add +0.3 µm to every reading");
  adw_combo_row_set_selected (dial->pointer, 1);
  assert_answer (&dial->answer, "On the ring: mark +8 (+7.7 µm)", "upper as −11.0 µm");
  adw_combo_row_set_selected (dial->pointer, 0);
  write_row (dial->part_temp, "24");
  assert_answer (&dial->answer, "On the ring: mark −10 (−10.1 µm)", "the temperatures make −2.4 µm");
  write_row (dial->part_temp, "75");
  assert_answer (&dial->answer, "", "outside −20 to 60 °C");
  write_row (dial->part_temp, "");
  write_row (dial->graduation, "0");
  assert_answer (&dial->answer, "", "graduation must be above zero");
  close_page (page);
}

/* The job's part is aluminium 6061, 23.6 by the tables; T1 of the worked cases has it as the second step. */
static void
test_warm (void)
{
  Page *page = open_page (make_job (), tm_setting_view_new ());
  TmWarmPanel *warm = tm_setting_view_warm (TM_SETTING_VIEW (page->view));

  assert_answer (&warm->answer, "", "Type the size");
  write_row (warm->size, "100.00575");
  write_row (warm->from, "25");
  assert_answer (&warm->answer, "99.9940 mm", "It shrinks by 11.8 µm.");
  write_row (warm->to, "-300");
  assert_answer (&warm->answer, "", "nothing is colder");
  write_row (warm->to, "25");
  assert_answer (&warm->answer, "100.0058 mm", "The same");
  close_page (page);
}

/* Nothing is asked of a job that is gone. */
static void
test_no_job (void)
{
  Page *page = open_page (make_job (), tm_setting_view_new ());
  TmStackPanel *stack = tm_setting_view_stack (TM_SETTING_VIEW (page->view));

  tm_setting_view_set_document (TM_SETTING_VIEW (page->view), NULL);
  write_row (stack->size, "3");
  close_page (page);
}

/* -------- Cutting tools -------- */

static TmJob *
make_tool_job (void)
{
  TmJob *job = make_methods_job ();
  TmTool *tool = tm_tool_new ();

  tool->name = tm_job_intern (job, "Boring head");
  tool->graduation = mm ("0.01");
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  return job;
}

static void
test_tools (void)
{
  Page *page = open_page (make_tool_job (), tm_tool_view_new ());
  TmToolView *view = TM_TOOL_VIEW (page->view);

  g_assert_true (is_read_out (tm_tool_view_tools (view), "Boring head: dial in 0.01 mm, reads the size"));
  assert_says (tm_tool_view_response (view), "No cut by it is on record. Assumed: it takes 100 %");
  assert_says (tm_tool_view_response (view), "scatters by 5.0 µm");
  close_page (page);
}

/* Added in its dialog: in the job, in the book, and chosen. */
static void
test_add_tool (void)
{
  Page *page = open_page (make_tool_job (), tm_tool_view_new ());
  TmToolView *view = TM_TOOL_VIEW (page->view);
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) kept = NULL;
  TmTool *tool = tm_tool_new ();

  tool->name = tm_job_intern (page->job, "Slide");
  tool->reads = TM_READS_RADIUS;
  tool->graduation = mm ("0.02");
  g_assert_true (tm_edit_put_tool (page->fixture->document, NULL, tool, &error));
  g_assert_no_error (error);
  tm_tool_view_choose (view, "Slide");
  g_assert_cmpstr (tm_list_row_key (gtk_list_box_get_selected_row (tm_tool_view_tools (view))), ==, "Slide");
  kept = tm_book_load_job (page->fixture->book, page->job->id, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (tm_job_find_tool (kept, "Slide")->reads, ==, TM_READS_RADIUS);
  g_assert_true (tm_edit_remove_tool (page->fixture->document, "Slide", &error));
  g_assert_cmpstr (tm_list_row_key (gtk_list_box_get_selected_row (tm_tool_view_tools (view))), ==,
                   "Boring head");
  close_page (page);
}

/* A cut of 0.1 that made 0.095: the words say what was asked and what came of it. */
static void
test_answer_words (void)
{
  const TmCutAnswer answer = { .dialled = 1e8, .achieved = 9.5e7, .u = 1e6 };
  g_autofree char *words = tm_words_tool_answer (&answer, TM_UNIT_MM);

  g_assert_cmpstr (words, ==, "asked 0.100, got 0.095 mm: 95 %");
}

int
main (int argc, char *argv[])
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/setting-view/stack", test_stack);
  g_test_add_func ("/setting-view/dial", test_dial);
  g_test_add_func ("/setting-view/warm", test_warm);
  g_test_add_func ("/setting-view/no-job", test_no_job);
  g_test_add_func ("/tool-view/tools", test_tools);
  g_test_add_func ("/tool-view/add", test_add_tool);
  g_test_add_func ("/tool-view/words", test_answer_words);
  return g_test_run ();
}
