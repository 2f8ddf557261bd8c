/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Methods view: methods and budget lines added, changed and refused; each line of a budget read out
 * as one sentence; what was left out said.
 */

#include "app-budget-words.h"
#include "app-list-row.h"
#include "app-method-view.h"
#include "app-resources.h"
#include "methods-support.h"

typedef struct {
  UiFixture *fixture;
  GtkWidget *window;
  TmMethodView *view;
  TmJob *job;
} Page;

static Page *
open_page (TmJob *job)
{
  Page *page = g_new0 (Page, 1);

  page->fixture = ui_fixture_new (job);
  page->job = job;
  page->view = TM_METHOD_VIEW (tm_method_view_new ());
  page->window = ui_window_new (page->view);
  tm_method_view_set_document (page->view, page->fixture->document);
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

static GtkWidget *
open_dialog (Page *page, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page->view), action, NULL));
  g_assert_nonnull (dialog_over (page->window));
  return dialog_over (page->window);
}

static void
test_add_method (void)
{
  Page *page = open_page (make_methods_job ());
  GtkWidget *dialog = open_dialog (page, "method.add");
  g_autoptr (TmJob) kept = NULL;
  const TmMethod *method;

  type_in (dialog, "Name", "caliper over transfer");
  choose_in (dialog, "Gauge, or transfer", "TG-1");
  choose_in (dialog, "Instrument", "CA-150");
  type_in (dialog, "Standard deviation", "0.0031");
  type_in (dialog, "Degrees of freedom", "18");
  type_in (dialog, "Where the figure", "study 4");
  press (dialog, "Save");
  g_assert_null (dialog_over (page->window));
  kept = ui_load_again (page->fixture);
  method = tm_job_find_method (kept, "caliper over transfer");
  g_assert_nonnull (method);
  g_assert_cmpuint (method->gauges->len, ==, 2);
  g_assert_cmpint (method->repeatability.count, ==, 3100000);
  g_assert_cmpint (method->repeatability_dof.count, ==, 18);
  g_assert_cmpstr (method->repeatability_source, ==, "study 4");
  g_assert_true (tm_list_select (tm_method_view_methods (page->view), "caliper over transfer", FALSE));
  close_page (page);
}

/* One wrong field, one line; nothing is saved and what was typed stays. */
static void
test_method_refused (void)
{
  static const struct {
    const char *name, *first, *second, *deviation, *dof, *says;
  } cases[] = {
    { "", "BM-2", "none", "", "", "Name: it needs one." },
    { "m", "none", "none", "", "", "A method needs a gauge" },
    { "m", "BM-2", "BM-2", "", "", "are the same gauge" },
    { "m", "BM-2", "none", "-0.001", "", "cannot be below zero" },
    { "m", "BM-2", "none", "a bit", "", "“a bit”" },
    { "m", "BM-2", "none", "0.001", "0", "Degrees of freedom must be at least 1" },
    { "m", "BM-2", "none", "0.001", "-3", "cannot be below zero" },
    { "bored", "BM-2", "none", "0.001", "9", "bored: " },
  };
  Page *page = open_page (make_methods_job ());
  GtkWidget *dialog = open_dialog (page, "method.add");

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      type_in (dialog, "Name", cases[i].name);
      choose_in (dialog, "Gauge, or transfer", cases[i].first);
      choose_in (dialog, "Instrument", cases[i].second);
      type_in (dialog, "Standard deviation", cases[i].deviation);
      type_in (dialog, "Degrees of freedom", cases[i].dof);
      press (dialog, "Save");
      assert_says (problem_in (dialog), cases[i].says);
      g_assert_null (strchr (problem_in (dialog), '\n'));
      g_assert_cmpstr (typed_in (dialog, "Standard deviation"), ==, cases[i].deviation);
      g_assert_cmpuint (page->job->methods->len, ==, 2);
    }
  gtk_window_destroy (GTK_WINDOW (dialog));
  close_page (page);
}

/* A gauge that a file names but does not bring. */
static void
test_gauge_missing (void)
{
  TmJob *job = make_methods_job ();
  const TmFeature *bore = tm_job_find_feature (job, "1");
  g_autofree char *none = NULL;
  GtkWidget *dialog;
  Page *page;

  add_method (job, "lost", "XX-1", NULL);
  none = tm_words_no_budget (job, bore, "lost");
  g_assert_cmpstr (none, ==, "lost: its gauge XX-1 is not in the register.");
  page = open_page (job);
  tm_method_view_choose (page->view, "lost", "1");
  g_assert_true (is_read_out (tm_method_view_budget (page->view), none));
  dialog = open_dialog (page, "method.change");
  press (dialog, "Save");
  assert_says (problem_in (dialog), "XX-1 is not in the register");
  gtk_window_destroy (GTK_WINDOW (dialog));
  close_page (page);
}

static void
read_twice (TmJob *job, const char *station, const char *one, const char *two)
{
  const char *values[] = { one, two };

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    {
      TmReading *reading = tm_reading_new ();

      reading->row.piece = g_ptr_array_index (job->pieces, 0);
      reading->row.feature = tm_job_find_feature (job, "1");
      reading->place = 1;
      reading->station = tm_job_intern (job, station);
      reading->method = tm_job_intern (job, "bored");
      reading->value = mm (values[i]);
      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
}

/* By hand: differences of 2 and 4 µm are sums of squares of 2 and 8 µm², together 10 with 2 degrees of
 * freedom: √5 = 2.236 µm. */
static void
test_from_readings (void)
{
  TmJob *job = make_methods_job ();
  GtkWidget *dialog;
  Page *page;

  read_twice (job, "mouth/12", "25.008", "25.010");
  read_twice (job, "bottom/12", "25.004", "25.008");
  page = open_page (job);
  tm_method_view_choose (page->view, "transfer", "1");
  dialog = open_dialog (page, "method.change");
  press (dialog, "From readings…");
  assert_says (problem_in (dialog), "No station of this job was read twice by transfer");
  gtk_window_destroy (GTK_WINDOW (dialog));
  tm_method_view_choose (page->view, "bored", "1");
  dialog = open_dialog (page, "method.change");
  press (dialog, "From readings…");
  g_assert_cmpstr (problem_in (dialog), ==, "");
  g_assert_cmpstr (typed_in (dialog, "Standard deviation"), ==, "0.00224");
  g_assert_cmpstr (typed_in (dialog, "Degrees of freedom"), ==, "2");
  g_assert_cmpstr (typed_in (dialog, "Where the figure"), ==, "readings: 4 at 2 stations");
  g_assert_false (tm_job_find_method (job, "bored")->repeatability.given);
  press (dialog, "Save");
  g_assert_cmpint (tm_job_find_method (job, "bored")->repeatability.count, ==, 2240000);
  close_page (page);
}

static void
test_add_line (void)
{
  Page *page = open_page (make_methods_job ());
  g_autoptr (TmJob) kept = NULL;
  const TmBudgetLine *line;
  GtkWidget *dialog;

  tm_method_view_choose (page->view, "bored", "1");
  dialog = open_dialog (page, "method.add-line");
  choose_in (dialog, "Kind", "setting");
  type_in (dialog, "Name", "ring SR-25");
  type_in (dialog, "Value", "0.8 um");
  choose_in (dialog, "Distribution", "normal");
  type_in (dialog, "Divisor", "2");
  type_in (dialog, "Where the figure", "certificate 1147");
  press (dialog, "Save");
  g_assert_null (dialog_over (page->window));
  kept = ui_load_again (page->fixture);
  g_assert_cmpuint (kept->budget_lines->len, ==, 1);
  line = g_ptr_array_index (kept->budget_lines, 0);
  g_assert_cmpstr (line->method, ==, "bored");
  g_assert_cmpint (line->kind, ==, TM_LINE_SETTING);
  g_assert_cmpint (line->value.count, ==, 800000);
  g_assert_cmpstr (line->distribution, ==, "normal");
  /* ±0.8 µm over 2 is 0.4 µm: 0.16 of 0.16 + 5.333 + 0.083 µm². */
  g_assert_true (is_read_out (
      tm_method_view_budget (page->view),
      "Setting: ring SR-25: ±0.8 µm, normal, 0.40 µm standard, 3 % of the whole, certificate 1147"));
  close_page (page);
}

static GtkListBoxRow *
own_line (Page *page)
{
  GtkListBox *list = tm_method_view_budget (page->view);

  for (int i = 0;; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (list, i);

      g_assert_nonnull (row);
      if (gtk_list_box_row_get_activatable (row))
        return row;
    }
}

/* Enter on a line that a person wrote changes it, and takes it away. */
static void
test_change_line (void)
{
  TmJob *job = make_methods_job ();
  TmBudgetLine *line = tm_budget_line_new ();
  GtkWidget *dialog;
  Page *page;

  line->method = "bored";
  line->name = "jaws";
  line->kind = TM_LINE_FORM;
  line->value = mm ("0.002");
  line->distribution = "rectangular";
  g_assert_cmpint (tm_job_add_budget_line (job, line), ==, TM_ADD_OK);
  page = open_page (job);
  tm_method_view_choose (page->view, "bored", "1");
  g_signal_emit_by_name (tm_method_view_budget (page->view), "row-activated", own_line (page));
  dialog = dialog_over (page->window);
  g_assert_cmpstr (typed_in (dialog, "Value"), ==, "0.002");
  type_in (dialog, "Value", "0.003");
  press (dialog, "Save");
  g_assert_cmpint (line->value.count, ==, 3000000);
  g_signal_emit_by_name (tm_method_view_budget (page->view), "row-activated", own_line (page));
  press (dialog_over (page->window), "Remove");
  g_assert_cmpuint (job->budget_lines->len, ==, 0);
  close_page (page);
}

static void
test_line_refused (void)
{
  static const struct {
    const char *name, *value, *distribution, *divisor, *dof, *says;
  } cases[] = {
    { "", "0.001", "normal", "", "", "Name: it needs one." },
    { "n", "", "normal", "", "", "Value: a line needs one" },
    { "n", "-0.001", "normal", "", "", "Value cannot be below zero." },
    { "n", "0", "normal", "", "", "zero adds nothing" },
    { "n", "much", "normal", "", "", "“much”" },
    { "n", "0.001", "normal", "0", "", "Divisor: write a number above zero" },
    { "n", "0.001", "normal", "", "0", "Degrees of freedom: write a number above zero" },
    { "n", "0.001", "normal", "", "-1", "cannot be below zero" },
    { "n", "0.001", "t,", "", "", "a deviation from readings needs them" },
    { "n", "0.001", "sawtooth", "", "", "“sawtooth” is none that is known here" },
  };
  TmJob *job = make_methods_job ();
  TmBudgetLine *line = tm_budget_line_new ();
  GtkWidget *dialog;
  Page *page;

  line->method = "bored";
  line->name = "odd";
  line->value = mm ("0.002");
  line->distribution = "sawtooth";
  g_assert_cmpint (tm_job_add_budget_line (job, line), ==, TM_ADD_OK);
  page = open_page (job);
  tm_method_view_choose (page->view, "bored", "1");
  g_signal_emit_by_name (tm_method_view_budget (page->view), "row-activated", own_line (page));
  dialog = dialog_over (page->window);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      type_in (dialog, "Name", cases[i].name);
      type_in (dialog, "Value", cases[i].value);
      choose_in (dialog, "Distribution", cases[i].distribution);
      type_in (dialog, "Divisor", cases[i].divisor);
      type_in (dialog, "Degrees of freedom", cases[i].dof);
      press (dialog, "Save");
      assert_says (problem_in (dialog), cases[i].says);
      g_assert_cmpint (line->value.count, ==, 2000000);
    }
  gtk_window_destroy (GTK_WINDOW (dialog));
  close_page (page);
}

/* BM-2: ±4 µm / √3 = 2.309 µm, half a step of 1 µm / √3 = 0.289 µm, repeatability 1.2 µm with 30 degrees
 * of freedom: variances 5.333, 0.083 and 1.44 of 6.857 µm²; u 2.619 µm.  Welch-Satterthwaite by hand:
 * 6.85667² / (1.44² / 30) = 680.178; k = t at 95 % for 680: 1.963; U = 5.142 µm. */
static void
test_budget (void)
{
  TmJob *job = make_methods_job ();
  TmMethod *method = tm_job_find_method (job, "bored");
  GtkListBox *budget;
  Page *page;

  method->repeatability = mm ("0.0012");
  method->repeatability_dof = tm_quantity_new (30, TM_UNIT_COUNT, 0);
  method->repeatability_source = "study 3";
  tm_job_find_gauge (job, "BM-2")->source = "assumed: common practice, from memory";
  page = open_page (job);
  tm_method_view_choose (page->view, "bored", "1");
  budget = tm_method_view_budget (page->view);
  g_assert_true (is_read_out (budget, "Limit of error of BM-2: ±4 µm, rectangular, 2.3 µm standard, 78 % of "
                                      "the whole, assumed: common practice, from memory"));
  g_assert_true (is_read_out (budget, "Resolution of BM-2: ±0.5 µm, rectangular, 0.29 µm standard, 1 % of "
                                      "the whole, assumed: common practice, from memory"));
  g_assert_true (is_read_out (budget, "Repeatability of bored: 1.2 µm, t, 1.2 µm standard, 21 % of the "
                                      "whole, 30 degrees of freedom, study 3"));
  g_assert_true (is_read_out (
      budget, "Together: Combined 2.6 µm, Effective degrees of freedom 680.17, taken as 680, Coverage "
              "factor k 1.96, Expanded (95 %) ±5.1 µm, Guard 4.4 µm, Share of the band 41 %, In a word "
              "settles most readings"));
  g_assert_true (is_read_out (budget, "Temperature: no limits are stated in the shop rules, left out."));
  g_assert_true (is_read_out (budget, "Form that the method does not see: not stated, left out."));
  g_assert_cmpuint (count_rows (budget), ==, 6);
  g_assert_true (
      is_read_out (tm_method_view_methods (page->view), "bored: BM-2, expanded uncertainty ±5.1 µm"));
  close_page (page);
}

static void
assert_left_out (const TmJob *job, const char *method, const char *line)
{
  g_auto (GStrv) lines = tm_words_left_out (job, tm_job_find_feature (job, "1"), method);

  if (!g_strv_contains ((const char *const *)lines, line))
    g_error ("%s does not say “%s”", method, line);
}

/* What nobody stated is said, gauge by gauge. */
static void
test_left_out (void)
{
  g_autoptr (TmJob) job = make_methods_job ();
  TmGauge *special;

  tm_job_find_gauge (job, "TG-1")->feel = TM_QUANTITY_NONE;
  tm_job_find_method (job, "transfer")->repeatability = mm ("0.003");
  special = add_gauge (job, "SP-1", "shop-made");
  special->error_limit = mm ("0.01");
  add_method (job, "special", "SP-1", NULL);
  assert_left_out (job, "transfer", "Transfer feel of TG-1: taken as within the repeatability.");
  assert_left_out (job, "special", "Resolution of SP-1: not stated, left out.");
  assert_left_out (job, "special", "Repeatability: not stated; the spread of repeats stands in for it.");
  special->error_limit = TM_QUANTITY_NONE;
  special->resolution = mm ("0.01");
  assert_left_out (job, "special",
                   "Limit of error of SP-1: neither it nor a certificate is stated, left out.");
  assert_left_out (job, "CA-150", "Repeatability: a gauge alone has none; make a method of it to state one.");
}

/* An empty shop says what to do; a shop with gauges alone shows their budgets. */
static void
test_empty (void)
{
  TmJob *job = tm_job_new ();
  Page *page;

  job->id = tm_job_intern (job, "11111111-2222-4333-8444-555555555556");
  job->part_number = "UI-2";
  job->unit = TM_UNIT_MM;
  page = open_page (job);
  g_assert_cmpuint (count_rows (tm_method_view_methods (page->view)), ==, 0);
  g_assert_cmpuint (count_rows (tm_method_view_budget (page->view)), ==, 0);
  close_page (page);
  page = open_page (ui_make_job ());
  g_assert_true (is_read_out (tm_method_view_methods (page->view),
                              "BM-2: bore micrometer, expanded uncertainty ±2.3 µm"));
  close_page (page);
}

int
main (int argc, char *argv[])
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/methods/add-method", test_add_method);
  g_test_add_func ("/methods/method-refused", test_method_refused);
  g_test_add_func ("/methods/gauge-missing", test_gauge_missing);
  g_test_add_func ("/methods/from-readings", test_from_readings);
  g_test_add_func ("/methods/add-line", test_add_line);
  g_test_add_func ("/methods/change-line", test_change_line);
  g_test_add_func ("/methods/line-refused", test_line_refused);
  g_test_add_func ("/methods/budget", test_budget);
  g_test_add_func ("/methods/left-out", test_left_out);
  g_test_add_func ("/methods/empty", test_empty);
  return g_test_run ();
}
