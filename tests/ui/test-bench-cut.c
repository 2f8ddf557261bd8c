/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cuts at the Bench page: the entry that is swapped, another number and its chances, recording, what a tool
 * did on another job of the book, and a cut that answered unlike the others.  Jobs and sizes are invented.
 */

#include <adwaita.h>
#include <string.h>

#include "app-bench-page-private.h"
#include "app-cut-words.h"
#include "app-reason-dialog.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *job;
  GtkWidget *window;
  TmBenchPage *page;
} BenchFixture;

static void
add_tool (TmJob *job)
{
  TmTool *tool = tm_tool_new ();
  tool->name = tm_job_intern (job, "bar 12");
  tool->unit = TM_UNIT_MM;
  tool->reads = TM_READS_RADIUS;
  g_assert_cmpint (tm_quantity_read ("0.001", TM_UNIT_MM, &tool->graduation), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("2", TM_UNIT_COUNT, &tool->spring_passes), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
}

/* A 12 H7 bore without stations by the fixture's gauge, and the tool that cuts it. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();
  ui_add_feature (job, "7", "Ø12 H7", "BM-2");
  add_tool (job);
  return job;
}

static void
go_to (BenchFixture *bench, const char *balloon, const char *station)
{
  TmJob *job = tm_document_job (bench->job->document);
  tm_document_go (bench->job->document, g_ptr_array_index (job->pieces, 0),
                  tm_job_find_feature (job, balloon), 1, station);
}

static BenchFixture
open_bench (TmJob *job)
{
  BenchFixture bench = { .job = ui_fixture_new (job), .window = gtk_window_new () };
  bench.page = TM_BENCH_PAGE (tm_bench_page_new ());
  gtk_window_set_child (GTK_WINDOW (bench.window), GTK_WIDGET (bench.page));
  tm_bench_page_set_document (bench.page, bench.job->document);
  ui_present (bench.window);
  go_to (&bench, "7", "");
  return bench;
}

static void
close_bench (BenchFixture *bench)
{
  ui_close (bench->window);
  ui_fixture_free (bench->job);
}

/* Past the session's questions: the fixture has no clock to wait by. */
static void
read_size (BenchFixture *bench, const char *text)
{
  TmBench *session = tm_document_bench (bench->job->document);
  g_autoptr (GError) error = NULL;
  go_to (bench, "7", "");
  tm_bench_set_text (session, text);
  if (tm_bench_submit (session, "2026-05-04T09:00:00Z", 0, &error) == TM_SUBMIT_ASKED)
    g_assert_cmpint (tm_bench_submit (session, "2026-05-04T09:00:00Z", 1000, &error), ==, TM_SUBMIT_RECORDED);
  g_assert_no_error (error);
  go_to (bench, "7", "");
}

static void
plan (BenchFixture *bench)
{
  if (!bench->page->planning)
    gtk_widget_activate_action (GTK_WIDGET (bench->page), "bench.plan-cut", NULL);
  g_assert_true (bench->page->planning);
}

static void
type_dial (BenchFixture *bench, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (tm_cut_bar_entry (bench->page->cut_bar)), text);
}

static const char *
get_dial (BenchFixture *bench)
{
  return gtk_editable_get_text (GTK_EDITABLE (tm_cut_bar_entry (bench->page->cut_bar)));
}

static void
record (BenchFixture *bench)
{
  gtk_widget_activate_action (GTK_WIDGET (bench->page), "bench.record", NULL);
}

static guint
count_cuts (BenchFixture *bench)
{
  return tm_document_job (bench->job->document)->cuts->len;
}

/* One entry at a time, and what stands in the other is not lost. */
static void
test_swap (void)
{
  BenchFixture bench = open_bench (make_job ());
  read_size (&bench, "11.90");
  tm_document_set_text (bench.job->document, "11.99");
  plan (&bench);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (bench.page->entry)));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (bench.page->cut_bar)));
  type_dial (&bench, "0.012");
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.plan-cut", NULL);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (bench.page->entry)));
  g_assert_cmpstr (tm_bench_text (tm_document_bench (bench.job->document)), ==, "11.99");
  plan (&bench);
  g_assert_cmpstr (get_dial (&bench), ==, "0.012");
  /* At a feature that is not cut, readings are taken. */
  go_to (&bench, "4", "");
  g_assert_false (bench.page->planning);
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.plan-cut", NULL);
  g_assert_false (bench.page->planning);
  close_bench (&bench);
}

/* A key that bounces is no answer to what was only just shown.  FALSE where this computer took so long
 * between the two that the second one was an answer. */
static gboolean
bounce (void)
{
  BenchFixture bench = open_bench (make_job ());
  gboolean held;
  gint64 at;

  read_size (&bench, "11.90");
  plan (&bench);
  at = g_get_monotonic_time ();
  record (&bench);
  record (&bench);
  held = count_cuts (&bench) == 0;
  g_assert_true (held || g_get_monotonic_time () - at >= TM_BENCH_CONFIRM_MS * G_TIME_SPAN_MILLISECOND);
  close_bench (&bench);
  return held;
}

static void
test_bounce (void)
{
  while (!bounce ())
    ;
}

/* Enter on nothing shows the planned number first; a second one records it. */
static void
test_record (void)
{
  BenchFixture bench = open_bench (make_job ());
  read_size (&bench, "11.90");
  plan (&bench);
  record (&bench);
  g_assert_cmpuint (count_cuts (&bench), ==, 0);
  g_assert_cmpstr (get_dial (&bench), !=, "");
  g_usleep ((TM_BENCH_CONFIRM_MS + 20) * G_TIME_SPAN_MILLISECOND);
  record (&bench);
  g_assert_cmpuint (count_cuts (&bench), ==, 1);
  g_assert_false (bench.page->planning);
  const TmCutRow *cut = tm_bench_newest (tm_document_bench (bench.job->document)).cut;
  g_assert_nonnull (cut);
  g_assert_cmpuint (cut->passes, ==, 2);
  g_assert_cmpint (cut->dialled.count, >, 0);
  /* It is in the book, and the size is unknown. */
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) kept
      = tm_book_load_job (bench.job->book, tm_document_job (bench.job->document)->id, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (kept->cuts->len, ==, 1);
  g_assert_cmpstr (((TmCutRow *)g_ptr_array_index (kept->cuts, 0))->tool, ==, "bar 12");
  g_assert_cmpint (bench.page->judgement.verdict, ==, TM_VERDICT_NOT_MEASURED);
  close_bench (&bench);
}

/* The next job is measured first. */
static void
test_close (void)
{
  BenchFixture bench = open_bench (make_job ());
  read_size (&bench, "11.90");
  plan (&bench);
  type_dial (&bench, "0.012");
  tm_bench_page_set_document (bench.page, NULL);
  g_assert_false (bench.page->planning);
  g_assert_null (tm_cut_bar_advice (bench.page->cut_bar));
  tm_bench_page_set_document (bench.page, bench.job->document);
  g_assert_false (bench.page->planning);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (bench.page->entry)));
  plan (&bench);
  g_assert_cmpstr (get_dial (&bench), ==, "");
  close_bench (&bench);
}

static gboolean
is_seen (GtkWidget *widget)
{
  return widget != NULL && gtk_widget_get_child_visible (widget) && gtk_widget_get_mapped (widget);
}

/* Which hole is cut can be seen, at whatever feature and place; the chips take no room. */
static void
test_places (void)
{
  BenchFixture bench = open_bench (make_job ());
  go_to (&bench, "2", "");
  plan (&bench);
  g_assert_true (g_str_has_suffix (gtk_label_get_text (bench.page->limits), "place 1 of 4"));
  tm_document_go (bench.job->document, tm_bench_spot (tm_document_bench (bench.job->document))->piece,
                  tm_job_find_feature (tm_document_job (bench.job->document), "2"), 3, "");
  g_assert_true (g_str_has_suffix (gtk_label_get_text (bench.page->limits), "place 3 of 4"));
  go_to (&bench, "1", "mouth/3");
  g_assert_true (bench.page->planning);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (bench.page->chips)));
  g_assert_null (strstr (gtk_label_get_text (bench.page->limits), "place"));
  gtk_widget_activate_action (GTK_WIDGET (bench.page), "bench.plan-cut", NULL);
  ui_wait_until (is_seen (tm_station_chips_station (bench.page->chips, 0)));
  go_to (&bench, "7", "");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (bench.page->chips)));
  close_bench (&bench);
}

/* Its height in a window of 1280. */
static int
measure_bar (BenchFixture *bench)
{
  int least, natural;
  gtk_widget_measure (GTK_WIDGET (bench->page->cut_bar), GTK_ORIENTATION_VERTICAL, 586, &least, &natural,
                      NULL, NULL);
  return least;
}

/* What is typed decides what is drawn; nonsense is kept and not recorded. */
static void
test_typed (void)
{
  BenchFixture bench = open_bench (make_job ());
  read_size (&bench, "11.90");
  plan (&bench);
  const TmCutAdvice planned = *tm_cut_bar_advice (bench.page->cut_bar);
  type_dial (&bench, "0.045");
  const TmCutAdvice *tried = tm_cut_bar_advice (bench.page->cut_bar);
  g_assert_cmpint (tried->dial, ==, 45000000);
  g_assert_cmpfloat (tried->plan.predicted, >, planned.plan.predicted);
  int before = measure_bar (&bench);
  type_dial (&bench, "0.04x");
  /* What is wrong takes no more room, of which there is none at 1280 by 720. */
  g_assert_cmpint (measure_bar (&bench), <=, before);
  g_assert_cmpint (tm_cut_bar_advice (bench.page->cut_bar)->dial, ==, planned.dial);
  record (&bench);
  g_assert_cmpstr (get_dial (&bench), ==, "0.04x");
  g_assert_cmpuint (count_cuts (&bench), ==, 0);
  /* A drag to a size gives the nearest mark. */
  g_signal_emit_by_name (tm_pictures_get (bench.page->pictures, TM_PICTURE_BAND), "aim-moved",
                         G_GINT64_CONSTANT (11950000000));
  g_assert_cmpstr (get_dial (&bench), ==, "0.025");
  close_bench (&bench);
}

static TmReading *
make_reading (TmJob *job, const char *value)
{
  TmReading *reading = tm_reading_new ();
  reading->row.piece = g_ptr_array_index (job->pieces, 0);
  reading->row.feature = tm_job_find_feature (job, "7");
  reading->place = 1;
  reading->method = tm_job_intern (job, "BM-2");
  g_assert_cmpint (tm_quantity_read (value, TM_UNIT_MM, &reading->value), ==, TM_READ_OK);
  return reading;
}

/* Another job: three cuts of 0.1 mm on the radius that each took 0.19 mm off. */
static void
add_other_job (BenchFixture *bench)
{
  static const char *const sizes[] = { "11.00", "11.19", "11.38", "11.57" };
  static const char *const after[] = { "1", "2", "3" };
  g_autoptr (TmJob) other = make_job ();
  g_autoptr (GError) error = NULL;
  gboolean added = FALSE;
  other->id = tm_job_intern (other, "99999999-2222-4333-8444-555555555555");
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    {
      g_assert_cmpint (tm_job_add_reading (other, make_reading (other, sizes[i])), ==, TM_ADD_OK);
      if (i >= G_N_ELEMENTS (after))
        break;
      TmCutRow *cut = tm_cut_row_new ();
      cut->row.piece = g_ptr_array_index (other->pieces, 0);
      cut->row.feature = tm_job_find_feature (other, "7");
      cut->place = 1;
      cut->tool = tm_job_intern (other, "bar 12");
      cut->reads = TM_READS_RADIUS;
      cut->after = tm_job_intern (other, after[i]);
      cut->dialled = tm_quantity_new (100000000, TM_UNIT_MM, 2);
      g_assert_cmpint (tm_job_add_cut (other, cut), ==, TM_ADD_OK);
    }
  g_assert_true (tm_book_add_job (bench->job->book, other, NULL, NULL, &added, &error));
  g_assert_no_error (error);
}

/* What the tool did there comes in a moment, and changes the plan. */
static void
test_history (void)
{
  BenchFixture bench = open_bench (make_job ());
  add_other_job (&bench);
  read_size (&bench, "11.90");
  plan (&bench);
  ui_wait_until (!tm_cut_bar_advice (bench.page->cut_bar)->assumed);
  const TmCutResponse *response = &tm_cut_bar_advice (bench.page->cut_bar)->response;
  g_assert_cmpuint (response->n_answers, ==, 3);
  g_assert_cmpfloat (response->factor, <, 0.98); /* 0.95 as read, 1 as assumed */
  g_assert_cmpfloat (response->factor, >, 0.93);
  close_bench (&bench);
}

/* The session cannot know why; it says what was expected and where to look. */
static void
test_unlike (void)
{
  BenchFixture bench = open_bench (make_job ());
  add_other_job (&bench);
  read_size (&bench, "11.00");
  plan (&bench);
  ui_wait_until (!tm_cut_bar_advice (bench.page->cut_bar)->assumed);
  type_dial (&bench, "0.1");
  record (&bench);
  g_assert_cmpuint (count_cuts (&bench), ==, 1);
  read_size (&bench, "11.05");
  const TmCutRow *cut = g_ptr_array_index (tm_document_job (bench.job->document)->cuts, 0);
  TmCutOutcome outcome;
  g_assert_true (tm_bench_cut_outcome (tm_document_bench (bench.job->document), cut, &outcome));
  g_assert_true (outcome.unlike);
  g_autofree char *words = tm_words_cut_unlike (&outcome);
  g_assert_nonnull (strstr (words, "0.050 mm came off"));
  g_assert_nonnull (strstr (words, "a chip under the part"));
  close_bench (&bench);
}

/* Every reason for no number has a title and a sentence of its own. */
static void
test_words (void)
{
  TmFeature feature = { .balloon = "1", .kind = TM_KIND_BORE, .unit = TM_UNIT_MM };
  TmTool tool = { .name = "bar 12", .unit = TM_UNIT_MM, .graduation = { 1000000, TM_UNIT_MM, 3, TRUE } };
  for (guint status = 0; status < TM_N_CUT_STATUSES; status++)
    {
      TmCutAdvice advice = { .plan = { .status = (TmCutStatus)status }, .dial = 12000000 };
      g_autofree char *title = tm_words_cut_title (&advice, &tool);
      g_autofree char *sentence = tm_words_cut_status (&advice, &tool, &feature);
      g_assert_cmpstr (title, !=, "");
      g_assert_true (status == TM_CUT_OK || *sentence != '\0');
      g_assert_true (tm_cut_has_dial (&advice) == g_str_equal (title, "0.012"));
    }
  /* The next cut is spoken of where metal may be left, never as if it were sure. */
  TmCutAdvice last
      = { .plan = { .status = TM_CUT_OK, .chances = { 0.7, 0.3, 0, 0 } }, .second_dial = 4000000 };
  g_autofree char *may = tm_words_cut_status (&last, &tool, &feature);
  last.plan.chances = (TmCutChances) { 0.995, 0.005, 0, 0 };
  g_autofree char *nothing = tm_words_cut_status (&last, &tool, &feature);
  g_assert_cmpstr (may, ==, "If metal is left then, the next cut is likely 0.004 mm.");
  g_assert_cmpstr (nothing, ==, "");
  /* As the view of cutting tools has it. */
  TmCutAdvice assumed
      = { .response = { .factor = 1, .factor_sd = 0.08, .scatter = 5000000 }, .assumed = TRUE };
  g_autofree char *response = tm_words_cut_response (&assumed, &tool, &feature);
  g_assert_nonnull (strstr (response, "give or take 16 % (k = 2)"));
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/bench-cut/swap", test_swap);
  g_test_add_func ("/bench-cut/bounce", test_bounce);
  g_test_add_func ("/bench-cut/record", test_record);
  g_test_add_func ("/bench-cut/close", test_close);
  g_test_add_func ("/bench-cut/places", test_places);
  g_test_add_func ("/bench-cut/typed", test_typed);
  g_test_add_func ("/bench-cut/history", test_history);
  g_test_add_func ("/bench-cut/unlike", test_unlike);
  g_test_add_func ("/bench-cut/words", test_words);
  return g_test_run ();
}
