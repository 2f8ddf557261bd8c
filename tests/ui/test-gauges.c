/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The Gauges page's register: gauges by kind with their starting figures, what is refused, calibrations,
 * checks on the standard, overdue ones first, gauges of the book, and the recall.
 */

#include <adwaita.h>

#include "app-button.h"
#include "app-edit.h"
#include "app-gauge-detail.h"
#include "app-gauge-item.h"
#include "app-gauge-register.h"
#include "app-gauge-take.h"
#include "app-gauges-page.h"
#include "app-recall-dialog.h"
#include "app-resources.h"
#include "core-gauge-kind.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *fixture;
  GtkWidget *window;
  TmGaugesPage *page;
  TmGaugeRegister *list;
  TmJob *job;
} Page;

static void
add_gauge (TmJob *job, const char *tag, const char *kind, const char *calibrated, const char *due)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tm_job_intern (job, tag);
  gauge->kind = tm_job_intern (job, kind);
  gauge->unit = TM_UNIT_MM;
  gauge->calibrated = tm_job_intern (job, calibrated);
  gauge->due = tm_job_intern (job, due);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
}

/* The fixture's job with one gauge that is long overdue and a set of pins. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();
  TmGauge *set;

  add_gauge (job, "ZZ-9", "caliper", "2019-01-05", "2020-01-05");
  add_gauge (job, "PS-1", "pin set", "", "");
  set = tm_job_find_gauge (job, "PS-1");
  tm_quantity_read ("1", TM_UNIT_MM, &set->range_from);
  tm_quantity_read ("10", TM_UNIT_MM, &set->range_to);
  tm_quantity_read ("0.02", TM_UNIT_MM, &set->pin_step);
  set->pin_class = "ZZ";
  set->pin_sign = "minus";
  return job;
}

static Page *
open_page (TmJob *job)
{
  Page *page = g_new0 (Page, 1);

  page->fixture = ui_fixture_new (job);
  page->job = job;
  page->page = TM_GAUGES_PAGE (tm_gauges_page_new ());
  page->window = ui_window_new (page->page);
  tm_gauges_page_set_document (page->page, page->fixture->document);
  tm_gauges_page_show_view (page->page, "register");
  page->list = TM_GAUGE_REGISTER (tm_gauges_page_view (page->page, "register"));
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

static gpointer
child_of (gpointer widget, GType type, const char *name)
{
  GObject *child = gtk_widget_get_template_child (GTK_WIDGET (widget), type, name);

  g_assert_nonnull (child);
  return child;
}

static TmGaugeHistory *
history (Page *page)
{
  return tm_gauge_detail_history (child_of (page->list, TM_TYPE_GAUGE_REGISTER, "detail"));
}

static char *
tag_at (Page *page, guint i)
{
  GtkColumnView *view = child_of (page->list, TM_TYPE_GAUGE_REGISTER, "view");
  GListModel *model = G_LIST_MODEL (gtk_column_view_get_model (view));
  g_autoptr (TmGaugeItem) item = g_list_model_get_item (model, i);

  return g_strdup (item != NULL ? tm_gauge_item_tag (item) : NULL);
}

static void
act (Page *page, const char *action)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page->list), action, NULL));
}

/* -------- Dialogs, by what stands on them -------- */

/* The modal window that is over the page. */
static GtkWidget *
dialog_over (Page *page)
{
  GListModel *all = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (all, i);

      if (window != page->window && gtk_window_get_modal (GTK_WINDOW (window)))
        return window;
    }
  return NULL;
}

static GtkWidget *
find_row (GtkWidget *widget, const char *title)
{
  if (ADW_IS_PREFERENCES_ROW (widget)
      && g_str_has_prefix (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), title))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_row (child, title);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
row_of (Page *page, const char *title)
{
  GtkWidget *row = find_row (dialog_over (page), title);

  if (row == NULL)
    g_error ("no row “%s”", title);
  return row;
}

static void
type (Page *page, const char *title, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (row_of (page, title)), text);
}

static const char *
typed (Page *page, const char *title)
{
  return gtk_editable_get_text (GTK_EDITABLE (row_of (page, title)));
}

static void
choose_kind (Page *page, const char *word)
{
  guint n;
  const TmGaugeKind *kinds = tm_gauge_kinds (&n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (kinds[i].word, word))
      adw_combo_row_set_selected (ADW_COMBO_ROW (row_of (page, "Kind")), i);
}

/* The line that says what is wrong, "" when none is shown. */
static const char *
problem_in (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget) && gtk_widget_has_css_class (widget, "tm-problem"))
    return gtk_widget_get_visible (widget) ? gtk_label_get_text (GTK_LABEL (widget)) : "";
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      const char *found = problem_in (child);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
press_enter (Page *page, const char *title)
{
  g_signal_emit_by_name (row_of (page, title), "entry-activated");
}

#define assert_says(text, part) g_assert_nonnull (strstr ((text), (part)))

/* -------- Tests -------- */

/* Overdue before the others, with a mark and words; searching leaves what has the words. */
static void
test_list (void)
{
  Page *page = open_page (make_job ());
  GtkEditable *search = child_of (page->list, TM_TYPE_GAUGE_REGISTER, "search");
  GtkLabel *count = child_of (page->list, TM_TYPE_GAUGE_REGISTER, "count_label");
  g_autofree char *first = tag_at (page, 0), *second = tag_at (page, 1), *third = tag_at (page, 2);
  g_autofree char *found = NULL, *none = NULL;

  g_assert_cmpstr (first, ==, "ZZ-9");
  g_assert_cmpstr (second, ==, "BM-2");
  g_assert_cmpstr (third, ==, "PS-1");
  assert_says (gtk_label_get_text (count), "3 gauges, 1 overdue");
  gtk_editable_set_text (search, "minus pin");
  ui_wait_until (g_strcmp0 ((g_free (found), found = tag_at (page, 0)), "PS-1") == 0);
  g_assert_null (none = tag_at (page, 1));
  close_page (page);
}

/* A kind brings its published figure and where it comes from; a person's own figure takes the source
 * away. DIN 863-1: 4 µm to 25 mm, 6 µm to 150 mm. */
static void
test_add_by_kind (void)
{
  Page *page = open_page (make_job ());
  const TmGauge *gauge;

  act (page, "register.add");
  choose_kind (page, "outside micrometer");
  g_assert_cmpstr (typed (page, "Limit of error"), ==, "0.004");
  assert_says (typed (page, "Where these figures"), "DIN 863-1");
  type (page, "Range to", "150");
  g_assert_cmpstr (typed (page, "Limit of error"), ==, "0.006");
  choose_kind (page, "telescoping gauge");
  g_assert_cmpstr (typed (page, "Limit of error"), ==, "");
  g_assert_cmpstr (typed (page, "Transfer feel"), ==, "0.0254");
  assert_says (typed (page, "Where these figures"), "assumed");
  choose_kind (page, "outside micrometer");
  type (page, "Limit of error", "0.003");
  g_assert_cmpstr (typed (page, "Where these figures"), ==, "");
  type (page, "Tag", "OM-7");
  type (page, "Resolution", "0.001");
  press_enter (page, "Tag");
  g_assert_null (dialog_over (page));
  gauge = tm_job_find_gauge (page->job, "OM-7");
  g_assert_nonnull (gauge);
  g_assert_cmpstr (gauge->kind, ==, "outside micrometer");
  g_assert_cmpint (gauge->error_limit.count, ==, 3000000);
  g_assert_cmpint (gauge->range_to.count, ==, G_GINT64_CONSTANT (150000000000));
  g_assert_cmpstr (gauge->source, ==, "");
  close_page (page);
}

/* Each refusal is one line, keeps what was typed, and the register as it was. */
static void
test_refusals (void)
{
  static const struct {
    const char *row, *text, *says;
  } cases[] = {
    { "Resolution", "0", "resolution is zero" },
    { "Resolution", "-0.001", "below zero" },
    { "Limit of error", "0,0,2", "more than one decimal mark" },
    { "Range to", "20", "ends before it begins" },
    { "Due on", "2026-02-28", "before the calibration" },
    { "Due on", "next year", "no date" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Page *page = open_page (make_job ());

      act (page, "register.add");
      choose_kind (page, "outside micrometer");
      type (page, "Tag", "OM-7");
      type (page, "Range from", "25");
      type (page, "Range to", "50");
      type (page, "Calibrated on", "2026-03-01");
      type (page, cases[i].row, cases[i].text);
      press_enter (page, "Tag");
      g_assert_nonnull (dialog_over (page));
      assert_says (problem_in (dialog_over (page)), cases[i].says);
      g_assert_null (strchr (problem_in (dialog_over (page)), '\n'));
      g_assert_cmpstr (typed (page, cases[i].row), ==, cases[i].text);
      g_assert_null (tm_job_find_gauge (page->job, "OM-7"));
      gtk_window_destroy (GTK_WINDOW (dialog_over (page)));
      close_page (page);
    }
}

/* A gauge changed and saved has all that the form does not show as it was. */
static void
test_change_keeps (void)
{
  Page *page = open_page (make_job ());
  const TmGauge *set;

  tm_gauge_register_choose (page->list, "PS-1");
  act (page, "register.change");
  type (page, "Place where", "drawer 4");
  press_enter (page, "Tag");
  g_assert_null (dialog_over (page));
  set = tm_job_find_gauge (page->job, "PS-1");
  g_assert_cmpstr (set->place, ==, "drawer 4");
  g_assert_cmpstr (set->pin_class, ==, "ZZ");
  g_assert_cmpstr (set->pin_sign, ==, "minus");
  g_assert_cmpint (set->pin_step.count, ==, 20000000);
  g_assert_cmpstr (set->kind, ==, "pin set");
  close_page (page);
}

static void
test_calibration (void)
{
  Page *page = open_page (make_job ());
  const TmGauge *gauge;

  tm_gauge_register_choose (page->list, "ZZ-9");
  act (page, "register.calibrate");
  type (page, "Calibrated on", "2026-11-02");
  type (page, "Due on", "2026-11-01");
  press_enter (page, "Calibrated on");
  assert_says (problem_in (dialog_over (page)), "before the calibration");
  type (page, "Due on", "2099-11-02");
  type (page, "Expanded uncertainty", "-0.001");
  press_enter (page, "Calibrated on");
  assert_says (problem_in (dialog_over (page)), "below zero");
  type (page, "Expanded uncertainty", "0.001");
  type (page, "Its k", "0");
  press_enter (page, "Calibrated on");
  assert_says (problem_in (dialog_over (page)), "k must be above zero");
  type (page, "Its k", "");
  type (page, "Known error", "-0.002");
  press_enter (page, "Calibrated on");
  g_assert_null (dialog_over (page));
  gauge = tm_job_find_gauge (page->job, "ZZ-9");
  g_assert_cmpstr (gauge->calibrated, ==, "2026-11-02");
  g_assert_cmpstr (gauge->due, ==, "2099-11-02");
  /* The new one, and the one that the gauge itself spoke of before. */
  g_assert_cmpuint (page->job->calibrations->len, ==, 2);
  /* No longer overdue: it stands by its tag, last. */
  {
    g_autofree char *first = tag_at (page, 0);

    g_assert_cmpstr (first, ==, "BM-2");
  }
  close_page (page);
}

static void
test_check (void)
{
  Page *page = open_page (make_job ());
  TmGaugeHistory *of;

  tm_gauge_register_choose (page->list, "BM-2");
  of = history (page);
  tm_gauge_history_enter_check (of, "25.000", "25,0,1");
  assert_says (tm_gauge_history_check_says (of), "more than one decimal mark");
  g_assert_cmpuint (page->job->checks->len, ==, 0);
  tm_gauge_history_enter_check (of, "25.000", "");
  assert_says (tm_gauge_history_check_says (of), "Type the standard");
  /* The limit of error of BM-2 is 0.002. */
  tm_gauge_history_enter_check (of, "25.000", "25.003");
  g_assert_cmpuint (page->job->checks->len, ==, 1);
  g_assert_true (tm_gauge_check_state (page->job, tm_job_find_gauge (page->job, "BM-2"), NULL).beyond);
  tm_gauge_history_enter_check (of, "25.000", "25.001");
  g_assert_cmpuint (page->job->checks->len, ==, 2);
  close_page (page);
}

/* A pin larger than the set's range, and one between its steps. */
static void
test_pins (void)
{
  Page *page = open_page (make_job ());
  TmGaugeHistory *of;

  tm_gauge_register_choose (page->list, "PS-1");
  of = history (page);
  tm_gauge_history_enter_pin (of, "10.02", "10.0197");
  assert_says (tm_gauge_history_pin_says (of), "not in the set");
  tm_gauge_history_enter_pin (of, "5.01", "5.0097");
  assert_says (tm_gauge_history_pin_says (of), "not in the set");
  g_assert_cmpuint (page->job->pin_sizes->len, ==, 0);
  tm_gauge_history_enter_pin (of, "5.02", "5.0197");
  g_assert_cmpuint (page->job->pin_sizes->len, ==, 1);
  close_page (page);
}

static void
take (Page *page, const char *text)
{
  GError *error = NULL;
  TmBench *bench = tm_document_bench (page->fixture->document);

  tm_bench_set_by (bench, "CD");
  g_assert_true (tm_document_go (page->fixture->document, g_ptr_array_index (page->job->pieces, 0),
                                 g_ptr_array_index (page->job->features, 0), 1, "mouth/12"));
  tm_document_set_text (page->fixture->document, text);
  tm_document_submit (page->fixture->document, &error);
  g_assert_no_error (error);
}

/* Ø25 H7 is 25.000 … 25.021: the gauge that shows 0.010 too little makes 25.015 a 25.025. */
static void
test_recall (void)
{
  Page *page = open_page (make_job ());
  TmRecallDialog *dialog;
  const TmRecallLine *line;
  g_autofree char *path = g_build_filename (page->fixture->folder, "recall.csv", NULL);
  g_autofree char *csv = NULL;

  take (page, "25.015");
  g_assert_cmpuint (page->job->readings->len, ==, 1);
  dialog = tm_recall_dialog_present (GTK_WIDGET (page->list), page->fixture->document, "BM-2", "");
  tm_recall_dialog_ask (dialog, "2026-13-40", "");
  assert_says (problem_in (GTK_WIDGET (dialog)), "no date");
  tm_recall_dialog_ask (dialog, "2020-01-01", "-0.010");
  ui_wait_until (tm_recall_dialog_list (dialog) != NULL);
  assert_says (tm_recall_dialog_says (dialog), "1 reading in 1 job; 1 verdict would change");
  g_assert_cmpuint (tm_recall_dialog_list (dialog)->lines->len, ==, 1);
  line = g_ptr_array_index (tm_recall_dialog_list (dialog)->lines, 0);
  g_assert_true (line->changes);
  assert_says (line->value, "25.015");
  assert_says (line->after, "metal gone");
  tm_recall_dialog_write (dialog, path);
  g_assert_true (g_file_get_contents (path, &csv, NULL, NULL));
  assert_says (csv, "UI-1");
  assert_says (csv, "25.015");
  tm_recall_dialog_ask (dialog, "2099-01-01", "-0.010");
  ui_wait_until (tm_recall_dialog_list (dialog) != NULL);
  assert_says (tm_recall_dialog_says (dialog), "Nothing was measured");
  gtk_window_destroy (GTK_WINDOW (dialog));
  close_page (page);
}

/* A gauge found bad is followed by what it has measured, from the day of its last good calibration. */
static void
test_found_bad (void)
{
  Page *page = open_page (make_job ());

  tm_gauge_register_choose (page->list, "ZZ-9");
  act (page, "register.calibrate");
  type (page, "Calibrated on", "2026-11-02");
  type (page, "Known error", "0.03");
  adw_combo_row_set_selected (ADW_COMBO_ROW (row_of (page, "Outcome")), 1);
  press_enter (page, "Calibrated on");
  g_assert_true (TM_IS_RECALL_DIALOG (dialog_over (page)));
  g_assert_cmpstr (typed (page, "Last known good"), ==, "2019-01-05");
  g_assert_cmpstr (typed (page, "Error"), ==, "0.03");
  gtk_window_destroy (GTK_WINDOW (dialog_over (page)));
  close_page (page);
}

/* What another job of the book has: offered when it is not here, with its history. */
static void
test_take (void)
{
  Page *page = open_page (make_job ());
  TmJob *other = tm_job_new ();
  TmGaugeTake *dialog;
  gboolean added = FALSE;

  other->id = tm_job_intern (other, "22222222-2222-4333-8444-555555555555");
  other->part_number = tm_job_intern (other, "UI-2");
  other->unit = TM_UNIT_MM;
  add_gauge (other, "TG-9", "telescoping gauge", "", "");
  add_gauge (other, "BM-2", "bore micrometer", "2026-01-05", "2027-01-05");
  g_assert_true (tm_book_add_job (page->fixture->book, other, NULL, NULL, &added, NULL));
  tm_job_free (other);

  dialog = tm_gauge_take_present (GTK_WIDGET (page->list), page->fixture->document);
  ui_wait_until (tm_gauge_take_is_ready (dialog));
  g_assert_false (tm_gauge_take_mark (dialog, "BM-2"));
  g_assert_true (tm_gauge_take_mark (dialog, "TG-9"));
  tm_gauge_take_confirm (dialog);
  g_assert_nonnull (tm_job_find_gauge (page->job, "TG-9"));
  act (page, "register.spread");
  close_page (page);
}

/* No gauge: the page says what to do, and the first is added from there. */
static void
test_empty (void)
{
  TmJob *job = tm_job_new ();
  Page *page;
  GtkStack *stack;

  job->id = tm_job_intern (job, "33333333-2222-4333-8444-555555555555");
  job->part_number = tm_job_intern (job, "UI-3");
  job->unit = TM_UNIT_IN;
  page = open_page (job);
  stack = child_of (page->list, TM_TYPE_GAUGE_REGISTER, "stack");
  g_assert_cmpstr (gtk_stack_get_visible_child_name (stack), ==, "empty");
  act (page, "register.add");
  choose_kind (page, "dial bore gauge");
  g_assert_cmpstr (typed (page, "Limit of error"), ==, "0.0001");
  type (page, "Tag", "BG-1");
  press_enter (page, "Tag");
  g_assert_cmpstr (gtk_stack_get_visible_child_name (stack), ==, "list");
  close_page (page);
}

/* The view looked at last is the one that a new page begins with; what is no view changes nothing. */
static void
test_views (void)
{
  Page *page = open_page (make_job ());
  g_autofree char *view = NULL;
  GtkWidget *other;

  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page->page), "gauges.view", "s", "methods"));
  tm_gauges_page_show_view (page->page, "nowhere");
  other = g_object_ref_sink (tm_gauges_page_new ());
  g_object_get (other, "view", &view, NULL);
  g_assert_cmpstr (view, ==, "methods");
  g_object_unref (other);
  tm_gauges_page_show_gauge (page->page, "PS-1");
  g_clear_pointer (&view, g_free);
  g_object_get (page->page, "view", &view, NULL);
  g_assert_cmpstr (view, ==, "register");
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
  g_test_add_func ("/gauges/list", test_list);
  g_test_add_func ("/gauges/add-by-kind", test_add_by_kind);
  g_test_add_func ("/gauges/refusals", test_refusals);
  g_test_add_func ("/gauges/change-keeps", test_change_keeps);
  g_test_add_func ("/gauges/calibration", test_calibration);
  g_test_add_func ("/gauges/check", test_check);
  g_test_add_func ("/gauges/pins", test_pins);
  g_test_add_func ("/gauges/recall", test_recall);
  g_test_add_func ("/gauges/found-bad", test_found_bad);
  g_test_add_func ("/gauges/take", test_take);
  g_test_add_func ("/gauges/views", test_views);
  g_test_add_func ("/gauges/empty", test_empty);
  return g_test_run ();
}
