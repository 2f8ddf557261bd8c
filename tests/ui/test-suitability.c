/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Suitability and Shop rules views: a plain word for each feature and each method, assignment by one
 * key; the shop's rules saved, loaded again, refused in one line.
 */

#include "app-edit.h"
#include "app-list-row.h"
#include "app-resources.h"
#include "app-rules-view.h"
#include "app-suitability-view.h"
#include "app-suitability-words.h"
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
  if (TM_IS_RULES_VIEW (view))
    tm_rules_view_set_document (TM_RULES_VIEW (view), page->fixture->document);
  else
    tm_suitability_view_set_document (TM_SUITABILITY_VIEW (view), page->fixture->document);
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

/* -------- Suitability -------- */

/* The bore of the fixture, band 21 µm, by a caliper of ±30 µm: 1.96 · 2 · 17.6 µm is more than the band. */
static TmJob *
make_job (void)
{
  TmJob *job = make_methods_job ();

  tm_job_find_feature (job, "1")->method = "CA-150";
  tm_job_find_feature (job, "2")->method = "CA-150";
  ui_add_feature (job, "5", "60 max", "CA-150");
  return job;
}

static void
test_features (void)
{
  Page *page = open_page (make_job (), tm_suitability_view_new ());
  TmSuitabilityView *view = TM_SUITABILITY_VIEW (page->view);
  GtkListBox *features = tm_suitability_view_features (view);

  g_assert_cmpstr (tm_suitability_view_summary (view), ==,
                   "1 feature cannot be proven with its method. 1 feature has no method.");
  g_assert_true (is_read_out (features, "1 · Ø25 H7: cannot settle it · CA-150"));
  g_assert_true (is_read_out (features, "2 · 4X Ø6.6 ±0.15: settles it · CA-150"));
  g_assert_true (is_read_out (features, "3 · pos Ø0.2 A B: no method"));
  g_assert_true (is_read_out (features, "4 · M8x1.25 6H: pass or fail"));
  g_assert_true (is_read_out (features, "5 · 60 max: one limit only · CA-150"));
  /* The one that cannot be proven is shown first. */
  g_assert_cmpstr (tm_list_row_key (gtk_list_box_get_selected_row (features)), ==, "1");
  close_page (page);
}

/* Best first; the assigned one says so; what is not made for a bore stands last and says so. */
static void
test_methods (void)
{
  Page *page = open_page (make_job (), tm_suitability_view_new ());
  GtkListBox *methods = tm_suitability_view_methods (TM_SUITABILITY_VIEW (page->view));

  g_assert_cmpuint (count_rows (methods), ==, 3);
  g_assert_cmpstr (tm_list_row_key (gtk_list_box_get_row_at_index (methods, 0)), ==, "bored");
  /* u² = 16/3 + 1/12 µm², u 2.327 µm: U 4.56, guard 1.65 u = 3.84 µm, twice that of 21 µm 36.6 %. */
  g_assert_true (is_read_out (methods,
                              "bored: settles most readings; expanded uncertainty ±4.6 µm, guard 3.9 "
                              "µm, 37 % of the band"));
  g_assert_true (is_read_out (methods,
                              "CA-150, assigned: cannot settle it; expanded uncertainty ±34 µm, guard "
                              "29 µm; one step is 48 % of the band"));
  close_page (page);
}

/* A gauge that does not reach the size, or is made for something else, cannot prove it, however fine. */
static void
test_unfit (void)
{
  TmJob *job = make_job ();
  GtkListBox *methods, *features;
  TmGauge *short_one;
  Page *page;

  short_one = add_gauge (job, "BM-9", "three-point bore micrometer");
  short_one->resolution = mm ("0.001");
  short_one->error_limit = mm ("0.001");
  short_one->range_from = mm ("6");
  short_one->range_to = mm ("12");
  add_method (job, "outside", "OM-25", NULL);
  tm_job_find_feature (job, "1")->method = "BM-9";
  page = open_page (job, tm_suitability_view_new ());
  methods = tm_suitability_view_methods (TM_SUITABILITY_VIEW (page->view));
  features = tm_suitability_view_features (TM_SUITABILITY_VIEW (page->view));
  g_assert_true (is_read_out (features, "1 · Ø25 H7: does not reach it · BM-9"));
  g_assert_true (is_read_out (methods,
                              "outside: not made for it; expanded uncertainty ±2.3 µm, guard 2.0 µm, "
                              "19 % of the band"));
  assert_says (tm_suitability_view_summary (TM_SUITABILITY_VIEW (page->view)), "1 feature cannot be proven");
  close_page (page);
}

/* Enter on a method assigns it: in the model, in the book, and in the words. */
static void
test_assign (void)
{
  Page *page = open_page (make_job (), tm_suitability_view_new ());
  TmSuitabilityView *view = TM_SUITABILITY_VIEW (page->view);
  GtkListBox *methods = tm_suitability_view_methods (view);
  g_autoptr (TmJob) kept = NULL;

  g_signal_emit_by_name (methods, "row-activated", gtk_list_box_get_row_at_index (methods, 0));
  g_assert_cmpstr (tm_job_find_feature (page->job, "1")->method, ==, "bored");
  kept = ui_load_again (page->fixture);
  g_assert_cmpstr (tm_job_find_feature (kept, "1")->method, ==, "bored");
  g_assert_true (
      is_read_out (tm_suitability_view_features (view), "1 · Ø25 H7: settles most readings · bored"));
  g_assert_cmpstr (tm_suitability_view_summary (view), ==,
                   "Each method can prove its feature. 1 feature has no method.");
  /* The button does the same for the one selected. */
  tm_suitability_view_choose (view, "3");
  g_assert_true (tm_list_select (tm_suitability_view_methods (view), "CA-150", FALSE));
  g_assert_true (gtk_widget_activate_action (page->view, "suitability.assign", NULL));
  g_assert_cmpstr (tm_job_find_feature (page->job, "3")->method, ==, "CA-150");
  close_page (page);
}

/* Pass or fail has no methods to weigh, and an empty job none at all. */
static void
test_nothing (void)
{
  Page *page = open_page (make_job (), tm_suitability_view_new ());
  TmSuitabilityView *view = TM_SUITABILITY_VIEW (page->view);

  tm_suitability_view_choose (view, "4");
  g_assert_cmpuint (count_rows (tm_suitability_view_methods (view)), ==, 0);
  tm_suitability_view_set_document (view, NULL);
  g_assert_cmpuint (count_rows (tm_suitability_view_features (view)), ==, 0);
  close_page (page);
}

/* A method is not said to prove its feature where nobody knows what it can, or where there is none. */
static void
test_summary (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autofree char *known = NULL;
  g_autofree char *gone = NULL;
  g_autofree char *none = NULL;

  tm_job_find_feature (job, "1")->method = "bored";
  known = tm_words_suitability_summary (job);
  g_assert_cmpstr (known, ==, "Each method can prove its feature. 1 feature has no method.");
  tm_job_find_feature (job, "2")->method = "not registered";
  gone = tm_words_suitability_summary (job);
  g_assert_cmpstr (
      gone, ==,
      "Each other method can prove its feature. Of 1 feature it is not known what its method can "
      "prove. 1 feature has no method.");
  for (guint i = 0; i < job->features->len; i++)
    ((TmFeature *)g_ptr_array_index (job->features, i))->method = "";
  none = tm_words_suitability_summary (job);
  g_assert_cmpstr (none, ==, "4 features have no method.");
}

static void
test_words (void)
{
  g_assert_cmpstr (tm_words_settles (TM_SETTLES), ==, "settles it");
  g_assert_cmpstr (tm_words_settles (TM_SETTLES_MOSTLY), ==, "settles most readings");
  g_assert_cmpstr (tm_words_settles (TM_SETTLES_SELDOM), ==, "settles few readings");
  g_assert_cmpstr (tm_words_settles (TM_SETTLES_CANNOT), ==, "cannot settle it");
  g_assert_cmpstr (tm_words_settles (TM_SETTLES_UNKNOWN), ==, "not known");
}

/* -------- Shop rules -------- */

static void
write_rule (Page *page, const char *rule, const char *text)
{
  GtkEditable *entry = tm_rules_view_entry (TM_RULES_VIEW (page->view), rule);

  g_assert_nonnull (entry);
  gtk_editable_set_text (entry, text);
  g_signal_emit_by_name (entry, "activate");
}

static const char *
problem_of (Page *page)
{
  return tm_rules_view_problem (TM_RULES_VIEW (page->view));
}

static void
test_rules_kept (void)
{
  Page *page = open_page (make_methods_job (), tm_rules_view_new ());
  g_autoptr (TmJob) kept = NULL;

  write_rule (page, "part_temp_limit", "3");
  write_rule (page, "gauge_temp_limit", "1.5");
  write_rule (page, "thermometer", "0.3");
  write_rule (page, "expansion", "22.9");
  write_rule (page, "entry_clearance", "2 um");
  write_rule (page, "drift_limit", "0.5");
  write_rule (page, "check_hours", "8");
  write_rule (page, "cut_risk", "0.002");
  choose_in (page->view, "A gauge that has moved", "ask");
  choose_in (page->view, "A cut aims at a size", "in the proven zone");
  g_assert_cmpstr (problem_of (page), ==, "");
  kept = ui_load_again (page->fixture);
  g_assert_cmpint (kept->part_temp_limit.count, ==, 3000000);
  g_assert_cmpint (kept->gauge_temp_limit.count, ==, 1500000);
  g_assert_cmpint (kept->thermometer.count, ==, 300000);
  g_assert_cmpint (kept->expansion.count, ==, 22900000);
  g_assert_cmpint (kept->entry_clearance.count, ==, 2000000);
  g_assert_cmpint (kept->drift_limit.count, ==, 500000);
  g_assert_cmpint (kept->check_hours.count, ==, 8000000);
  g_assert_cmpint (kept->drift_rule, ==, TM_DRIFT_ASK);
  g_assert_cmpint (kept->cut_risk.count, ==, 2000);
  g_assert_cmpint (kept->cut_aim, ==, TM_AIM_PROVEN);
  /* Empty again: nothing is stated. */
  write_rule (page, "part_temp_limit", "");
  g_assert_false (page->job->part_temp_limit.given);
  close_page (page);
}

static void
test_rules_refused (void)
{
  static const struct {
    const char *rule, *text;
  } cases[] = {
    { "part_temp_limit", "-3" }, { "part_temp_limit", "200" }, { "gauge_temp_limit", "warm" },
    { "thermometer", "-0.5" },   { "expansion", "0" },         { "expansion", "-11.7" },
    { "expansion", "5000" },     { "entry_clearance", "-1" },  { "entry_clearance", "3 mm" },
    { "drift_limit", "0" },      { "check_hours", "0" },       { "check_hours", "-8" },
    { "cut_risk", "0" },         { "cut_risk", "0.6" },        { "cut_risk", "1 %" },
  };
  Page *page = open_page (make_methods_job (), tm_rules_view_new ());
  guint before = page->job->drift_rule;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GtkEditable *entry = tm_rules_view_entry (TM_RULES_VIEW (page->view), cases[i].rule);

      write_rule (page, cases[i].rule, cases[i].text);
      assert_says (problem_of (page), "cannot be right; write");
      assert_says (problem_of (page), cases[i].text);
      g_assert_null (strchr (problem_of (page), '\n'));
      g_assert_true (gtk_widget_has_css_class (GTK_WIDGET (entry), "error"));
      g_assert_cmpstr (gtk_editable_get_text (entry), ==, cases[i].text);
      write_rule (page, cases[i].rule, "");
      g_assert_cmpstr (problem_of (page), ==, "");
    }
  g_assert_cmpuint (page->job->drift_rule, ==, before);
  g_assert_false (page->job->expansion.given || page->job->check_hours.given
                  || page->job->part_temp_limit.given || page->job->entry_clearance.given);
  close_page (page);
}

/* What is taken while a rule is empty stands in its line: of the material, by its source. */
static void
test_rules_assumed (void)
{
  TmJob *job = make_methods_job ();
  GtkWidget *row;
  Page *page;

  job->material = "6061-T6";
  page = open_page (job, tm_rules_view_new ());
  row = need (page->view, is_row, "Expansion");
  assert_says (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)),
               "In the tables: aluminium 6061, 23.6, by Callister");
  write_rule (page, "expansion", "22.9");
  assert_says (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), "Your own figure: 22.9.");
  row = need (page->view, is_row, "Thermometer");
  assert_says (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), "Assumed while empty: 0.5 °C");
  write_rule (page, "thermometer", "0.2");
  g_assert_null (strstr (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), "Assumed"));
  row = need (page->view, is_row, "Decision rule");
  assert_says (adw_action_row_get_subtitle (ADW_ACTION_ROW (row)), "Guarded");
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
  g_test_add_func ("/suitability/words", test_words);
  g_test_add_func ("/suitability/summary", test_summary);
  g_test_add_func ("/suitability/features", test_features);
  g_test_add_func ("/suitability/methods", test_methods);
  g_test_add_func ("/suitability/unfit", test_unfit);
  g_test_add_func ("/suitability/assign", test_assign);
  g_test_add_func ("/suitability/nothing", test_nothing);
  g_test_add_func ("/rules/kept", test_rules_kept);
  g_test_add_func ("/rules/refused", test_rules_refused);
  g_test_add_func ("/rules/assumed", test_rules_assumed);
  return g_test_run ();
}
