/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the buttons of a batch do: events, an advised offset, rules, pieces held back, how many to measure.
 * The sizes are invented.
 */

#include <math.h>

#include "app-batch-tools.h"
#include "app-chart-dialog.h"
#include "app-dialog.h"
#include "app-edit-event.h"
#include "app-edit-tool.h"
#include "app-hold-dialog.h"
#include "app-hold-print.h"
#include "app-resources.h"
#include "app-sample-words.h"
#include "core-run-rules.h"
#include "methods-support.h"

/* Micrometres from nominal: in statistical control about a level, with a standard deviation near two. */
static const int noise[] = { 1, -2, 3,  0, -1, 2, -3, 1,  0, -2, 2, 1, -1, 3, -2,
                             0, 1,  -3, 2, -1, 0, 2,  -2, 1, -1, 3, 0, -2, 1, -1 };

static void
read_piece (TmJob *job, guint piece, int micrometres)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = g_ptr_array_index (job->pieces, piece);
  reading->row.feature = tm_job_find_feature (job, "9");
  reading->place = 1;
  reading->value = tm_quantity_new (
      G_GINT64_CONSTANT (25000000000) + micrometres * G_GINT64_CONSTANT (1000000), TM_UNIT_MM, 3);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

/* Thirty-two pieces, the last two of them not measured; from piece @changed (index) on the level is @level
 * higher. */
static TmJob *
make_batch_job (guint changed, int level)
{
  TmJob *job = make_methods_job ();
  TmTool *tool = tm_tool_new ();

  tool->name = tm_job_intern (job, "bar 20");
  tool->offset_step = mm ("0.002");
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  ui_add_feature (job, "9", "Ø25 ±0.020", "bored")->tool = tool->name;
  for (guint i = 2; i < 32; i++)
    {
      g_autofree char *serial = g_strdup_printf ("%03u", i + 1);

      ui_add_piece (job, serial);
    }
  for (guint i = 0; i < 30; i++)
    read_piece (job, i, noise[i] + (i >= changed ? level : 0));
  return job;
}

typedef struct {
  UiFixture *ui;
  GtkWidget *window, *tools;
  TmBatch batch;
  TmSpread spread;
} Fixture;

static void
set_tools (Fixture *fixture)
{
  const TmJob *job = tm_document_job (fixture->ui->document);
  const TmFeature *feature = tm_job_find_feature (job, "9");

  tm_batch_tools_set (TM_BATCH_TOOLS (fixture->tools), fixture->ui->document, feature, NULL, NULL);
  tm_batch_clear (&fixture->batch);
  g_assert_true (tm_batch_init (&fixture->batch, job, feature, 1, NULL, NULL, NULL));
  fixture->spread = tm_spread_of (&fixture->batch);
  tm_batch_tools_set (TM_BATCH_TOOLS (fixture->tools), fixture->ui->document, feature, &fixture->batch,
                      &fixture->spread);
}

static Fixture *
open_tools (TmJob *job)
{
  Fixture *fixture = g_new0 (Fixture, 1);

  fixture->ui = ui_fixture_new (job);
  fixture->window = gtk_window_new ();
  fixture->tools = tm_batch_tools_new ();
  gtk_window_set_child (GTK_WINDOW (fixture->window), fixture->tools);
  gtk_window_present (GTK_WINDOW (fixture->window));
  set_tools (fixture);
  return fixture;
}

static void
close_tools (Fixture *fixture)
{
  GtkWidget *dialog;

  while ((dialog = dialog_over (fixture->window)) != NULL)
    gtk_window_destroy (GTK_WINDOW (dialog));
  ui_close (fixture->window);
  tm_batch_clear (&fixture->batch);
  ui_fixture_free (fixture->ui);
  g_free (fixture);
}

/* The list of rows to choose from. */
static gboolean
is_list (GtkWidget *widget, const char *text)
{
  return GTK_IS_LIST_VIEW (widget) && gtk_widget_has_css_class (widget, "tm-choices");
}

static const TmEvent *
last_event (Fixture *fixture)
{
  const TmJob *job = tm_document_job (fixture->ui->document);

  return job->events->len > 0 ? g_ptr_array_index (job->events, job->events->len - 1) : NULL;
}

/* The advised offset is one press and one agreement away; after it the stretch begins anew. */
static void
test_offset (void)
{
  Fixture *fixture = open_tools (make_batch_job (0, 9));
  GtkWidget *dialog;
  const TmEvent *event;

  g_assert_cmpint (fixture->batch.offset.status, ==, TM_OFFSET_ADVISED);
  press (fixture->tools, "Record the offset −0.008 mm…");
  dialog = dialog_over (fixture->window);
  g_assert_cmpstr (typed_in (dialog, "Change of size"), ==, "-0.008");
  g_assert_cmpstr (typed_in (dialog, "Before piece"), ==, "031");
  press (dialog, "Save");
  event = last_event (fixture);
  g_assert_cmpstr (event->kind, ==, "offset");
  g_assert_cmpstr (event->amount, ==, "-0.008");
  g_assert_cmpstr (event->before_piece, ==, "031");
  g_assert_cmpstr (event->tool, ==, "bar 20");
  g_assert_cmpstr (event->feature, ==, "");
  g_assert_cmpuint (strlen (event->at), ==, strlen ("2026-05-04T09:12:33Z"));
  set_tools (fixture);
  g_assert_cmpuint (fixture->batch.stretch_from, ==, 30);
  g_assert_false (gtk_widget_get_visible (gtk_widget_get_first_child (fixture->tools)));
  close_tools (fixture);
}

/* Noise about the target is left alone: there is no button. */
static void
test_no_offset (void)
{
  Fixture *fixture = open_tools (make_batch_job (0, 0));

  g_assert_cmpint (fixture->batch.offset.status, !=, TM_OFFSET_ADVISED);
  g_assert_false (gtk_widget_get_visible (gtk_widget_get_first_child (fixture->tools)));
  close_tools (fixture);
}

typedef struct {
  const char *title, *text, *says;
} Refusal;

static const Refusal refusals[] = {
  { "Before piece", "999", "999" },
  { "At", "yesterday", "yesterday" },
  { "At", "2026-13-45 99:99", "2026-13-45" },
};

/* A wrong field is named and nothing is recorded; mended, it is. */
static void
test_event_refused (void)
{
  Fixture *fixture = open_tools (make_batch_job (0, 0));
  GtkWidget *list, *dialog;

  press (fixture->tools, "Events…");
  list = dialog_over (fixture->window);
  press (list, "Add…");
  dialog = GTK_WIDGET (tm_dialog_over (GTK_WINDOW (list)));
  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autofree char *before = g_strdup (typed_in (dialog, refusals[i].title));

      type_in (dialog, refusals[i].title, refusals[i].text);
      press (dialog, "Save");
      assert_says (problem_in (dialog), refusals[i].says);
      g_assert_null (last_event (fixture));
      type_in (dialog, refusals[i].title, before);
    }
  choose_in (dialog, "Kind", "Offset");
  press (dialog, "Save");
  assert_says (problem_in (dialog), "Change of size");
  type_in (dialog, "Change of size", "0,004");
  press (dialog, "Save");
  g_assert_cmpstr (last_event (fixture)->amount, ==, "0,004");
  close_tools (fixture);
}

/* Rules are chosen with their rate beside them, and saved; none at all is refused. */
static void
test_charts (void)
{
  Fixture *fixture = open_tools (make_batch_job (0, 0));
  TmFeature *feature = tm_job_find_feature (tm_document_job (fixture->ui->document), "9");
  GtkWidget *dialog;

  press (fixture->tools, "Charts…");
  dialog = dialog_over (fixture->window);
  type_in (dialog, "Pieces in a group", "5000");
  press (dialog, "Save");
  assert_says (problem_in (dialog), "5000");
  type_in (dialog, "Pieces in a group", "3");
  type_in (dialog, "Limits from the first groups", "4");
  press (dialog, "Save");
  g_assert_cmpuint (feature->group_size, ==, 3);
  g_assert_cmpuint (feature->chart_baseline, ==, 4);
  g_assert_cmpstr (feature->chart_rules, ==, "");
  close_tools (fixture);
}

/* 370.4 and 43.9: mean run lengths of three sigma limits, shift 0 and 1 (1 / (2 Q(3)); C. W. Champ, W. H.
 * Woodall, Technometrics 29 (1987), table 1). */
static void
test_rate (void)
{
  const TmAlarmRate usual = tm_alarm_rate (TM_RULES_USUAL);
  const TmAlarmRate none = tm_alarm_rate (0);
  g_autofree char *singly = tm_words_alarm_rate (&usual, 1);
  g_autofree char *grouped = tm_words_alarm_rate (&usual, 5);
  g_autofree char *nothing = tm_words_alarm_rate (&none, 1);

  assert_says (singly, "about every 370 pieces (exact)");
  assert_says (singly, "about 44");
  assert_says (grouped, "370 groups, 1850 pieces");
  assert_says (nothing, "No rule");
}

/* The list holds the pieces since the change, those not measured among them, and what is decided stays. */
static void
test_hold (void)
{
  Fixture *fixture = open_tools (make_batch_job (20, 16));
  const TmJob *job = tm_document_job (fixture->ui->document);
  GtkSelectionModel *list;
  GtkWidget *dialog;
  const TmPiece *piece;

  g_assert_true (fixture->batch.change.found);
  press (fixture->tools, "Hold back…");
  dialog = dialog_over (fixture->window);
  list = gtk_list_view_get_model (GTK_LIST_VIEW (need (dialog, is_list, "")));
  g_assert_cmpuint (g_list_model_get_n_items (G_LIST_MODEL (list)), ==, fixture->batch.hold->len);
  gtk_selection_model_select_all (list);
  choose_in (dialog, "Disposition", "measure");
  type_in (dialog, "Note", "=SUM(A1)");
  g_signal_emit_by_name (need (dialog, is_row, "Note"), "entry-activated");
  piece = tm_job_find_piece (job, "032");
  g_assert_cmpstr (piece->disposition, ==, "measure");
  g_assert_cmpstr (piece->disposition_note, ==, "=SUM(A1)");
  g_assert_cmpstr (tm_job_find_piece (job, "001")->disposition, ==, "");
  close_tools (fixture);
}

/* No cell of the table starts a formula. */
static void
test_table (void)
{
  Fixture *fixture = open_tools (make_batch_job (20, 16));
  TmJob *job = tm_document_job (fixture->ui->document);
  g_autoptr (TmHoldList) list = NULL;
  GString *table;
  g_auto (GStrv) lines = NULL;

  tm_job_find_piece (job, "032")->disposition_note = "=HYPERLINK(\"x\")";
  tm_job_find_piece (job, "031")->disposition_note = "+1, and more";
  tm_job_find_piece (job, "001")->disposition = "melt";
  list = tm_hold_list_new (job, tm_job_find_feature (job, "9"), &fixture->batch);
  table = tm_hold_list_table (list, job);
  lines = g_strsplit (table->str, "\r\n", -1);
  g_assert_cmpuint (g_strv_length (lines), >=, list->lines->len + 1);
  g_assert_null (strstr (table->str, ",="));
  g_assert_null (strstr (table->str, ",\"="));
  g_assert_null (strstr (table->str, ",+"));
  g_assert_null (strstr (table->str, ",\"+"));
  g_assert_null (strstr (table->str, "nan"));
  assert_says (table->str, "melt");
  g_string_free (table, TRUE);
  close_tools (fixture);
}

/* Pages follow each other without a line lost, a long note takes the lines that it needs, and one page is
 * never none. */
static void
test_pages (void)
{
  Fixture *fixture = open_tools (make_batch_job (20, 16));
  TmJob *job = tm_document_job (fixture->ui->document);
  g_autoptr (TmHoldList) list = tm_hold_list_new (job, NULL, &fixture->batch);
  g_autoptr (TmHoldList) empty = tm_hold_list_new (job, NULL, NULL);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 10, 10);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GArray) one = tm_hold_print_paginate (list, job, cr, 540, 800);
  g_autoptr (GArray) none = tm_hold_print_paginate (empty, job, cr, 540, 800);
  g_autoptr (GArray) many = tm_hold_print_paginate (list, job, cr, 540, 250);
  g_autoptr (GArray) longer = NULL;

  g_assert_cmpuint (one->len, ==, 1);
  g_assert_cmpuint (none->len, ==, 1);
  g_assert_cmpuint (many->len, >, 1);
  for (guint i = 1; i < many->len; i++)
    g_assert_cmpuint (g_array_index (many, guint, i), >, g_array_index (many, guint, i - 1));
  g_assert_cmpuint (g_array_index (many, guint, many->len - 1), <, list->lines->len);
  for (guint i = 20; i < 32; i++)
    ((TmPiece *)g_ptr_array_index (job->pieces, i))->disposition_note
        = "measured again with the air gauge on the surface plate, and the customer was told by telephone";
  longer = tm_hold_print_paginate (list, job, cr, 540, 250);
  g_assert_cmpuint (longer->len, >, many->len);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  close_tools (fixture);
}

/* It is written. */
static void
test_print (void)
{
  Fixture *fixture = open_tools (make_batch_job (20, 16));
  const TmJob *job = tm_document_job (fixture->ui->document);
  g_autoptr (TmHoldList) list = tm_hold_list_new (job, NULL, &fixture->batch);
  g_autofree char *path = g_build_filename (fixture->ui->folder, "held.pdf", NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *bytes = NULL;
  gsize length = 0;

  g_assert_true (tm_hold_print_run (GTK_WINDOW (fixture->window), list, job, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_cmpuint (length, >, 1000);
  g_assert_true (g_str_has_prefix (bytes, "%PDF"));
  close_tools (fixture);
}

/* The zero-acceptance sample: the chance of none bad among n of N with D bad is hypergeometric; for 100, 5 %
 * and 5 % it is 45 (C(95, 45) / C(100, 45) = 0.0462, and 44 gives 0.0509). */
static void
test_lot (void)
{
  g_autofree char *some = tm_words_lot_sample (100, 0.05, 0.05);
  g_autofree char *all = tm_words_lot_sample (3, 0.01, 0.01);
  g_autofree char *none = tm_words_lot_sample (0, 0.05, 0.05);
  double share = 0;

  assert_says (some, "Measure 45 of the 100");
  assert_says (some, "4.6");
  assert_says (all, "all 3");
  assert_says (none, "one piece");
  g_assert_true (tm_read_percent (" 99,73 %", &share));
  g_assert_cmpfloat_with_epsilon (share, 0.9973, 1e-12);
  g_assert_false (tm_read_percent ("0", &share));
  g_assert_false (tm_read_percent ("100", &share));
  g_assert_false (tm_read_percent ("nan", &share));
  g_assert_false (tm_read_percent ("", &share));
  g_assert_false (tm_read_percent ("-5", &share));
}

static void
check_interval (const TmSpread *spread, const char *says)
{
  g_autoptr (TmJob) job = make_batch_job (0, 0);
  g_autofree char *words = tm_words_tolerance_interval (tm_job_find_feature (job, "9"), spread, 0.99, 0.95);

  assert_says (words, says);
  g_assert_null (strstr (words, "nan"));
  g_assert_null (strstr (words, "inf"));
}

/* k = 4.437 for n = 10, 99 %, 95 % (tests/data/tolerance_factors.csv, ISO 16269-6): ± 8.874 µm about 25 mm.
 */
static void
test_interval (void)
{
  const TmSpread good = {
    .n = 10, .mean = 0, .deviation = 2e6, .reference = G_GINT64_CONSTANT (25000000000), .normality_p = 0.4
  };
  TmSpread spread = good;

  check_interval (&spread, "95 % sure that 99 % lie between 24.9911 and 25.0089 mm");
  check_interval (&spread, "4.437");
  spread.normality_p = 0.01;
  check_interval (&spread, "normal");
  spread = good;
  spread.drifting = TRUE;
  check_interval (&spread, "drifts");
  spread.drifting = FALSE;
  spread.shifted = TRUE;
  check_interval (&spread, "level has changed");
  spread = good;
  spread.deviation = 0;
  check_interval (&spread, "the same");
  spread = good;
  spread.n = 1;
  spread.deviation = NAN;
  check_interval (&spread, "fewer than two");
  spread = (TmSpread) { 0 };
  check_interval (&spread, "Not said");
}

/* A piece that is out does not hide that the level has changed: there is no interval all the same. */
static void
test_interval_of_shift (void)
{
  g_autoptr (TmJob) job = make_batch_job (15, 18);
  const TmFeature *feature = tm_job_find_feature (job, "9");
  g_auto (TmBatch) batch = { 0 };
  TmSpread spread;
  g_autofree char *words = NULL;

  read_piece (job, 30, 90);
  g_assert_true (tm_batch_init (&batch, job, feature, 1, NULL, NULL, NULL));
  g_assert_cmpint (tm_batch_state (&batch), ==, TM_BATCH_OUT);
  spread = tm_spread_of (&batch);
  words = tm_words_tolerance_interval (feature, &spread, 0.99, 0.95);
  assert_says (words, "Not said");
}

/* Which pieces are measured is saved with the feature. */
static void
test_plan (void)
{
  Fixture *fixture = open_tools (make_batch_job (0, 0));
  const TmFeature *feature = tm_job_find_feature (tm_document_job (fixture->ui->document), "9");
  GtkWidget *dialog;

  press (fixture->tools, "How many…");
  dialog = dialog_over (fixture->window);
  choose_in (dialog, "Measure", "one of so many");
  type_in (dialog, "One of how many", "1");
  press (dialog, "Save");
  assert_says (problem_in (dialog), "whole number");
  type_in (dialog, "One of how many", "4");
  press (dialog, "Save");
  g_assert_cmpstr (feature->check, ==, "every 4");
  press (fixture->tools, "How many…");
  dialog = dialog_over (fixture->window);
  g_assert_cmpstr (typed_in (dialog, "One of how many"), ==, "4");
  close_tools (fixture);
}

/* Without a job and without a feature the buttons stand, and do nothing. */
static void
test_nothing (void)
{
  GtkWidget *tools = g_object_ref_sink (tm_batch_tools_new ());

  tm_batch_tools_set (TM_BATCH_TOOLS (tools), NULL, NULL, NULL, NULL);
  g_assert_false (gtk_widget_get_sensitive (need (tools, is_button, "Events…")));
  press (tools, "Events…");
  press (tools, "Charts…");
  press (tools, "Hold back…");
  press (tools, "How many…");
  g_object_unref (tools);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/batch-tools/offset", test_offset);
  g_test_add_func ("/batch-tools/no-offset", test_no_offset);
  g_test_add_func ("/batch-tools/event-refused", test_event_refused);
  g_test_add_func ("/batch-tools/charts", test_charts);
  g_test_add_func ("/batch-tools/rate", test_rate);
  g_test_add_func ("/batch-tools/hold", test_hold);
  g_test_add_func ("/batch-tools/table", test_table);
  g_test_add_func ("/batch-tools/pages", test_pages);
  g_test_add_func ("/batch-tools/print", test_print);
  g_test_add_func ("/batch-tools/lot", test_lot);
  g_test_add_func ("/batch-tools/interval", test_interval);
  g_test_add_func ("/batch-tools/interval-of-shift", test_interval_of_shift);
  g_test_add_func ("/batch-tools/plan", test_plan);
  g_test_add_func ("/batch-tools/nothing", test_nothing);
  return g_test_run ();
}
