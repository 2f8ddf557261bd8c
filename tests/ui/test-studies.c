/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Gauge studies in the window: planned, taken blind in the order drawn, analysed, put into the method;
 * what is refused, and that the book holds each step.
 */

#include <adwaita.h>
#include <math.h>

#include "app-edit-study.h"
#include "app-form.h"
#include "app-study-dialog.h"
#include "app-study-view.h"
#include "app-study-words.h"
#include "exchange-job.h"
#include "ui-fixture.h"

static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();
  TmMethod *method = tm_method_new ();
  TmPerson *person = tm_person_new ();

  method->name = tm_job_intern (job, "bore micrometer");
  g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, "BM-2"));
  g_assert_cmpint (tm_quantity_read ("0.003", TM_UNIT_MM, &method->repeatability), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
  person->initials = tm_job_intern (job, "EF");
  person->name = tm_job_intern (job, "Eva Falk");
  g_assert_cmpint (tm_job_add_person (job, person), ==, TM_ADD_OK);
  return job;
}

static GtkWidget *
open_view (UiFixture *fixture, TmStudyView **view)
{
  GtkWidget *window = gtk_window_new ();

  *view = TM_STUDY_VIEW (tm_study_view_new ());
  gtk_window_set_default_size (GTK_WINDOW (window), 1100, 650);
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (*view));
  tm_study_view_set_document (*view, fixture->document);
  ui_present (window);
  return window;
}

static void
close_view (GtkWidget *window, UiFixture *fixture)
{
  ui_close (window);
  ui_fixture_free (fixture);
}

/* The job in the book is the job in the model. */
static void
assert_kept (UiFixture *fixture)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_document_job (fixture->document);
  g_autoptr (TmJob) loaded = tm_book_load_job (fixture->book, job->id, NULL, NULL, &error);
  g_autofree char *in_model = g_string_free (tm_job_to_string (job), FALSE);
  g_autofree char *in_book = NULL;

  g_assert_no_error (error);
  in_book = g_string_free (tm_job_to_string (loaded), FALSE);
  g_assert_cmpstr (in_book, ==, in_model);
}

static void
choose_cb (const char *name, gpointer view)
{
  tm_study_view_choose (view, name);
}

static void
plan (TmStudyView *view, UiFixture *fixture, const char *pieces, const char *people)
{
  GtkWindow *dialog = tm_study_dialog_present (GTK_WIDGET (view), fixture->document, choose_cb, view);
  TmStudyForm *form = tm_study_dialog_form (dialog);

  tm_form_set_text (form->name, "bore, May");
  tm_form_set_text (form->pieces, pieces);
  tm_form_set_text (form->people, people);
  tm_form_set_text (form->repeats, "2");
  tm_study_dialog_confirm (dialog);
}

static void
type (TmStudyEntry *entry, const char *text)
{
  gtk_editable_set_text (tm_study_entry_editable (entry), text);
}

/* Every text that is on the screen under @widget. */
static void
collect_texts (GtkWidget *widget, GString *out)
{
  if (!gtk_widget_get_mapped (widget))
    return;
  if (GTK_IS_LABEL (widget))
    g_string_append_printf (out, "%s\n", gtk_label_get_text (GTK_LABEL (widget)));
  if (GTK_IS_EDITABLE (widget))
    g_string_append_printf (out, "%s\n", gtk_editable_get_text (GTK_EDITABLE (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    collect_texts (child, out);
}

static void
assert_blind (TmStudyView *view, const char *value)
{
  g_autoptr (GString) texts = g_string_new (NULL);

  collect_texts (GTK_WIDGET (view), texts);
  g_assert_cmpuint (texts->len, >, 100);
  g_assert_null (strstr (texts->str, value));
}

/* Two pieces, two people, two repeats of an Ø25 H7 bore: by cell 25.006 + 0.004 piece + 0.002 person + 0.001
 * repeat.  By hand, µm²: error 4 · 0.5 = 2 of 4 and crossed 0 of 1, pooled 0.4 of 5; people 8 of 1: σ² =
 * (8 - 0.4) / 4 = 1.9; GRR² = 2.3, 6 · 1.5166 of 21 µm is 43.3 %. */
static void
take_all (TmStudyView *view, UiFixture *fixture)
{
  TmStudyEntry *entry = tm_study_view_entry (view);
  const TmJob *job = tm_document_job (fixture->document);
  const TmStudy *study = tm_job_find_study (job, "bore, May");
  TmStudyCell cell;
  guint n;

  while (tm_study_next (job, study, &cell, &n))
    {
      g_autofree char *text = g_strdup_printf ("25.%03u", 6 + 4 * cell.piece + 2 * cell.person + cell.trial);
      const char *initials = g_ptr_array_index (study->people, cell.person);

      g_assert_cmpstr (tm_study_view_page (view), ==, "entry");
      g_assert_nonnull (strstr (tm_study_entry_who (entry), initials));
      type (entry, text);
      g_assert_cmpstr (tm_study_entry_submit (entry), ==, "");
      assert_blind (view, text);
    }
}

static void
assert_budget (const TmJob *job, const char *repeatability, const char *dof, const char *source,
               const char *people)
{
  const TmMethod *method = tm_job_find_method (job, "bore micrometer");
  g_autofree char *found = tm_quantity_format (&method->repeatability);
  g_autofree char *found_dof = tm_quantity_format (&method->repeatability_dof);

  g_assert_cmpstr (found, ==, repeatability);
  g_assert_cmpstr (found_dof, ==, dof);
  g_assert_cmpstr (method->repeatability_source, ==, source);
  g_assert_cmpuint (job->budget_lines->len, ==, people != NULL ? 1 : 0);
  if (people != NULL)
    {
      const TmBudgetLine *line = g_ptr_array_index (job->budget_lines, 0);
      g_autofree char *value = tm_quantity_format (&line->value);

      g_assert_cmpint (line->kind, ==, TM_LINE_PEOPLE);
      g_assert_cmpstr (line->method, ==, "bore micrometer");
      g_assert_cmpstr (value, ==, people);
    }
}

static void
test_whole (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  const TmJob *job = tm_document_job (fixture->document);
  TmStudyView *view;
  GtkWidget *window = open_view (fixture, &view);
  TmStudyOutcome *outcome = tm_study_view_outcome (view);

  g_assert_cmpstr (tm_study_view_page (view), ==, "empty");
  plan (view, fixture, "2", "CD; EF");
  g_assert_cmpstr (tm_study_view_page (view), ==, "entry");
  g_assert_cmpstr (tm_study_entry_progress (tm_study_view_entry (view)), ==, "0 of 8 taken");
  take_all (view, fixture);
  g_assert_cmpstr (tm_study_view_page (view), ==, "outcome");
  g_assert_cmpstr (tm_study_outcome_headline (outcome), ==,
                   "The gauge eats 43.3 % of the band: too coarse for it.");
  g_assert_nonnull (strstr (tm_study_outcome_words (outcome),
                            "Repeatability alone eats 18.1 % of the band of 0.0210 "
                            "mm, people alone 39.4 %"));
  g_assert_nonnull (strstr (tm_study_outcome_budget (outcome),
                            "in place of 0.003 mm; and a line for people, 0.0013784 mm."));
  assert_kept (fixture);

  tm_study_outcome_put (outcome);
  assert_budget (job, "0.00063246", "5", "study bore, May", "0.0013784");
  g_assert_nonnull (
      strstr (tm_study_outcome_budget (outcome), "holds this study: repeatability 0.00063246 mm, people"));
  assert_kept (fixture);
  tm_study_outcome_undo (outcome);
  assert_budget (job, "0.003", "", "", NULL);
  assert_kept (fixture);
  close_view (window, fixture);
}

static void
test_one_person (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmStudyView *view;
  GtkWidget *window = open_view (fixture, &view);
  TmStudyOutcome *outcome = tm_study_view_outcome (view);

  plan (view, fixture, "A, B, C", "CD");
  take_all (view, fixture);
  g_assert_nonnull (
      strstr (tm_study_outcome_words (outcome), "how much another person would differ is not known"));
  g_assert_nonnull (strstr (tm_study_outcome_budget (outcome), "no line for people"));
  tm_study_outcome_put (outcome);
  /* Repeats 1 µm apart: σ² = 0.5 µm², of 3 degrees of freedom. */
  assert_budget (tm_document_job (fixture->document), "0.00070711", "3", "study bore, May", NULL);
  close_view (window, fixture);
}

/* The last one is measured again; it is not shown. */
static void
test_take_back (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  const TmJob *job = tm_document_job (fixture->document);
  TmStudyView *view;
  GtkWidget *window = open_view (fixture, &view);
  TmStudyEntry *entry = tm_study_view_entry (view);
  g_autofree char *first = NULL;

  plan (view, fixture, "2", "CD, EF");
  g_assert_false (tm_study_entry_take_back (entry));
  first = g_strdup (gtk_editable_get_text (tm_study_entry_editable (entry)));
  g_assert_cmpstr (first, ==, "");
  type (entry, "25.013");
  g_assert_cmpstr (tm_study_entry_submit (entry), ==, "");
  g_assert_cmpuint (job->study_readings->len, ==, 1);
  g_assert_true (tm_study_entry_take_back (entry));
  g_assert_cmpuint (job->study_readings->len, ==, 0);
  g_assert_cmpstr (tm_study_entry_progress (entry), ==, "0 of 8 taken");
  assert_blind (view, "25.013");
  assert_kept (fixture);
  close_view (window, fixture);
}

/* Two Enters at once, as a gauge sends them: neither confirms.  FALSE where this computer took so long
 * between them that the second one did, and rightly. */
static gboolean
ask_twice (TmStudyEntry *entry, const char *text)
{
  gint64 at;
  gboolean held;

  type (entry, text);
  at = g_get_monotonic_time ();
  g_assert_nonnull (strstr (tm_study_entry_submit (entry), "thimble"));
  held = strstr (tm_study_entry_submit (entry), "thimble") != NULL;
  g_assert_true (held || g_get_monotonic_time () - at >= TM_BENCH_CONFIRM_MS * G_TIME_SPAN_MILLISECOND);
  return held;
}

/* What does not read is not recorded, and what looks like a slip is asked about: Ø25 H7 read as 25.512. */
static void
test_entry_refused (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  const TmJob *job = tm_document_job (fixture->document);
  TmStudyView *view;
  GtkWidget *window = open_view (fixture, &view);
  TmStudyEntry *entry = tm_study_view_entry (view);

  plan (view, fixture, "2", "CD, EF");
  type (entry, "abc");
  g_assert_cmpstr (tm_study_entry_submit (entry), !=, "");
  while (!ask_twice (entry, "25.512"))
    tm_study_entry_take_back (entry);
  g_assert_cmpuint (job->study_readings->len, ==, 0);
  g_usleep ((TM_BENCH_CONFIRM_MS + 20) * G_TIME_SPAN_MILLISECOND);
  g_assert_cmpstr (tm_study_entry_submit (entry), ==, "");
  g_assert_cmpuint (job->study_readings->len, ==, 1);
  close_view (window, fixture);
}

/* What the gauge does not reach is asked about. */
static void
test_out_of_reach (void)
{
  TmJob *job = make_job ();
  TmGauge *gauge = tm_job_find_gauge (job, "BM-2");
  UiFixture *fixture;
  TmStudyView *view;
  TmStudyEntry *entry;
  GtkWidget *window;

  g_assert_cmpint (tm_quantity_read ("30", TM_UNIT_MM, &gauge->range_from), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("40", TM_UNIT_MM, &gauge->range_to), ==, TM_READ_OK);
  fixture = ui_fixture_new (job);
  window = open_view (fixture, &view);
  entry = tm_study_view_entry (view);
  plan (view, fixture, "2", "CD");
  type (entry, "25.012");
  g_assert_nonnull (strstr (tm_study_entry_submit (entry), "BM-2"));
  g_assert_cmpuint (job->study_readings->len, ==, 0);
  close_view (window, fixture);
}

static void
test_plan_refused (void)
{
  static const struct {
    const char *name, *pieces, *people, *repeats, *band, *wanted;
  } cases[] = {
    { "", "2", "CD", "2", "", "Name of the study" },
    { "a", "", "CD", "2", "", "two pieces" },
    { "a", "one", "CD", "2", "", "two pieces" },
    { "a", "1", "CD", "2", "", "two pieces" },
    { "a", "x, y, x", "CD", "2", "", "“x” stands twice" },
    { "a", "2", " , ", "2", "", "needs a person" },
    { "a", "2", "CD, CD", "2", "", "“CD” stands twice" },
    { "a", "2", "CD", "1", "", "from 2 to 100" },
    { "a", "2", "CD", "", "", "from 2 to 100" },
    { "a", "2", "CD", "two", "", "“two”" },
    { "a", "1000", "CD", "100", "", "more than 10000 readings" },
    { "a", "2", "CD", "2", "0", "wider than zero" },
    { "a", "2", "CD", "2", "-1", "below zero" },
  };
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmStudyView *view;
  GtkWidget *window = open_view (fixture, &view);
  GtkWindow *dialog = tm_study_dialog_present (GTK_WIDGET (view), fixture->document, choose_cb, view);
  TmStudyForm *form = tm_study_dialog_form (dialog);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].wanted);
      tm_form_set_text (form->name, cases[i].name);
      tm_form_set_text (form->pieces, cases[i].pieces);
      tm_form_set_text (form->people, cases[i].people);
      tm_form_set_text (form->repeats, cases[i].repeats);
      tm_form_set_text (form->band, cases[i].band);
      tm_study_dialog_confirm (dialog);
      g_assert_nonnull (strstr (tm_study_dialog_problem (dialog), cases[i].wanted));
    }
  g_assert_cmpuint (tm_document_job (fixture->document)->studies->len, ==, 0);
  tm_form_set_text (form->band, "");
  tm_study_dialog_confirm (dialog);
  g_assert_cmpuint (tm_document_job (fixture->document)->studies->len, ==, 1);
  close_view (window, fixture);
}

/* A book that does not write leaves the job as it was, byte for byte. */
static void
test_undone (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  g_autofree char *id = g_strdup (tm_document_job (fixture->document)->id);
  g_autofree char *before = NULL, *after = NULL;
  TmBudgetUndo undo = { 0 };
  TmStudyResult result;
  TmStudyView *view;
  GtkWidget *window = open_view (fixture, &view);
  TmStudy *study;
  TmStudyCell cell = { 0 };
  TmQuantity value = tm_quantity_new (25 * G_GINT64_CONSTANT (1000000000), TM_UNIT_MM, 0);

  plan (view, fixture, "2", "CD, EF");
  take_all (view, fixture);
  tm_study_view_set_document (view, NULL);
  g_assert_finalize_object (fixture->document);
  tm_book_close (fixture->book);
  fixture->book = tm_book_open (fixture->path, TM_BOOK_OPEN_READ_ONLY, NULL);
  fixture->document = tm_document_new (fixture->book, tm_book_load_job (fixture->book, id, NULL, NULL, NULL));
  study = tm_job_find_study (tm_document_job (fixture->document), "bore, May");
  before = g_string_free (tm_job_to_string (tm_document_job (fixture->document)), FALSE);

  g_assert_false (tm_edit_take_back_study_reading (fixture->document, study, NULL));
  tm_study_result (tm_document_job (fixture->document), study, &result);
  g_assert_false (tm_edit_put_study_into_method (fixture->document, study, &result, &undo, NULL));
  g_assert_null (undo.method);
  g_assert_false (tm_edit_add_study_reading (fixture->document, study, cell, &value, "25", NULL));
  g_assert_false (tm_edit_remove_study (fixture->document, study, NULL));
  after = g_string_free (tm_job_to_string (tm_document_job (fixture->document)), FALSE);
  g_assert_cmpstr (after, ==, before);
  close_view (window, fixture);
}

static void
read_by (TmJob *job, const char *serial, const char *method, const char *value)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = tm_job_find_piece (job, serial);
  reading->row.feature = tm_job_find_feature (job, "1");
  reading->place = 1;
  reading->station = tm_job_intern (job, "mouth/12");
  reading->method = tm_job_intern (job, method);
  g_assert_cmpint (tm_quantity_read (value, TM_UNIT_MM, &reading->value), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

/* Differences 2 and 4 µm: mean 3, standard deviation √2, t(1) 12.706: -9.7 to 15.7 µm. */
static void
test_paired (void)
{
  TmJob *job = make_job ();
  UiFixture *fixture;
  TmStudyView *view;
  GtkWidget *window;
  const char *words;

  read_by (job, "001", "bore micrometer", "25.012");
  read_by (job, "001", "BM-2", "25.010");
  read_by (job, "002", "bore micrometer", "25.008");
  read_by (job, "002", "BM-2", "25.004");
  fixture = ui_fixture_new (job);
  window = open_view (fixture, &view);
  tm_study_view_choose (view, "");
  g_assert_cmpstr (tm_study_view_page (view), ==, "paired");
  words = tm_paired_panel_words (tm_study_view_paired (view));
  g_assert_nonnull (
      strstr (words, "“bore micrometer” reads 0.00300 mm more than “BM-2” on average (95 %: -0.00971 to "
                     "0.0157 mm)."));
  g_assert_nonnull (strstr (words, "a difference is not proven"));
  close_view (window, fixture);
}

static void
test_paired_empty (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmStudyView *view;
  GtkWidget *window = open_view (fixture, &view);

  tm_study_view_choose (view, "");
  g_assert_nonnull (
      strstr (tm_paired_panel_words (tm_study_view_paired (view)), "no feature with readings yet"));
  close_view (window, fixture);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/studies/whole", test_whole);
  g_test_add_func ("/studies/one-person", test_one_person);
  g_test_add_func ("/studies/take-back", test_take_back);
  g_test_add_func ("/studies/entry-refused", test_entry_refused);
  g_test_add_func ("/studies/out-of-reach", test_out_of_reach);
  g_test_add_func ("/studies/plan-refused", test_plan_refused);
  g_test_add_func ("/studies/undone", test_undone);
  g_test_add_func ("/studies/paired", test_paired);
  g_test_add_func ("/studies/paired-empty", test_paired_empty);
  return g_test_run ();
}
