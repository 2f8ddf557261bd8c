/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cuts at the bench: which tool is meant, what a dial value would do, what is recorded, refused, corrected
 * and withdrawn, and what is to be read after it.  The job, its tools and its sizes are invented.
 */

#include <math.h>
#include <string.h>

#include "bench-cut.h"
#include "bench-fixture.h"

/* Recorded after AT. */
#define AT_CUT   "2026-05-04T09:20:00Z"
#define AT_AFTER "2026-05-04T09:25:00Z"

typedef struct {
  TmJob *job;
  TmTool *bar;
  Keeper keeper;
  TmBench *bench;
} Shop;

/* The 25 H7 bore with a bore micrometer that settles it, and a boring bar with a dial on the radius. */
static Shop
open_shop (void)
{
  Shop shop = { .job = make_job () };
  TmFeature *bore = g_ptr_array_index (shop.job->features, 0);

  add_method (shop.job, "BM-1", "0.001", "0.002", "0.0005");
  bore->method = tm_job_intern (shop.job, "BM-1");
  shop.bar = add_tool (shop.job, "bar 20", TM_READS_RADIUS, "0.005");
  return shop;
}

static void
begin (Shop *shop)
{
  shop->bench = tm_bench_new (shop->job, make_recorder (&shop->keeper));
  tm_bench_set_by (shop->bench, "AB");
}

static void
close_shop (Shop *shop)
{
  clear_keeper (&shop->keeper);
  tm_bench_free (shop->bench);
  tm_job_free (shop->job);
}

/* A rough size is far from the band: a second Enter says that it was meant. */
static void
read_at (Shop *shop, const char *station, const char *size)
{
  g_assert_true (tm_bench_go (shop->bench, g_ptr_array_index (shop->job->pieces, 0),
                              g_ptr_array_index (shop->job->features, 0), 1, station));
  if (enter (shop->bench, size, 0) == TM_SUBMIT_ASKED)
    g_assert_cmpint (tm_bench_submit (shop->bench, AT, 1000, NULL), ==, TM_SUBMIT_RECORDED);
}

/* Both stations of feature 1 on piece 001. */
static void
read_bore (Shop *shop, const char *mouth, const char *bottom)
{
  guint before = shop->job->readings->len;

  read_at (shop, "mouth/12", mouth);
  read_at (shop, "bottom/12", bottom);
  g_assert_cmpuint (shop->job->readings->len, ==, before + 2);
  g_assert_true (tm_bench_go (shop->bench, g_ptr_array_index (shop->job->pieces, 0),
                              g_ptr_array_index (shop->job->features, 0), 1, "mouth/12"));
}

static TmSubmit
cut (Shop *shop, const char *text, guint passes, gint64 now_ms)
{
  g_autoptr (GError) error = NULL;
  TmSubmit submit = tm_bench_submit_cut (shop->bench, text, passes, " coolant on ", AT_CUT, now_ms, &error);

  g_assert_true ((submit == TM_SUBMIT_REFUSED || submit == TM_SUBMIT_FAILED) == (error != NULL));
  return submit;
}

static const TmCutRow *
last_cut (Shop *shop)
{
  return tm_bench_newest (shop->bench).cut;
}

static void
assert_unread (Shop *shop, guint expected)
{
  guint due, read;

  tm_bench_count (shop->bench, g_ptr_array_index (shop->job->pieces, 0), &due, &read);
  g_assert_cmpuint (due - read, ==, expected);
}

static void
test_tool (void)
{
  Shop shop = open_shop ();
  TmFeature *bore = g_ptr_array_index (shop.job->features, 0);
  TmFeature *length = g_ptr_array_index (shop.job->features, 1);
  TmPiece *piece = g_ptr_array_index (shop.job->pieces, 0);

  begin (&shop);
  /* The only one. */
  g_assert_true (tm_bench_tool (shop.bench) == shop.bar);
  add_tool (shop.job, "bar 16", TM_READS_DIAMETER, "0.01");
  add_tool (shop.job, "facing tool", TM_READS_DIAMETER, "0.02");
  g_assert_null (tm_bench_tool (shop.bench));
  /* The one of the last cut, then the feature's, then the one chosen. */
  tm_bench_set_tool (shop.bench, "bar 20");
  g_assert_cmpint (cut (&shop, "0.1", 0, 0), ==, TM_SUBMIT_RECORDED);
  tm_bench_set_tool (shop.bench, "");
  g_assert_cmpstr (tm_bench_tool (shop.bench)->name, ==, "bar 20");
  bore->tool = tm_job_intern (shop.job, "bar 16");
  g_assert_cmpstr (tm_bench_tool (shop.bench)->name, ==, "bar 16");
  tm_bench_set_tool (shop.bench, "facing tool");
  g_assert_cmpstr (tm_bench_tool (shop.bench)->name, ==, "facing tool");
  /* It does not follow to another feature, where nothing is known. */
  g_assert_true (tm_bench_go (shop.bench, piece, length, 1, NULL));
  g_assert_null (tm_bench_tool (shop.bench));
  tm_bench_set_tool (shop.bench, "no such tool");
  g_assert_null (tm_bench_tool (shop.bench));
  close_shop (&shop);
}

static void
test_record (void)
{
  Shop shop = open_shop ();
  const TmCutRow *row;

  begin (&shop);
  read_bore (&shop, "24.800", "24.802");
  assert_unread (&shop, 2);
  tm_bench_set_text (shop.bench, "24.9");
  g_assert_cmpint (cut (&shop, "0.05", 2, 0), ==, TM_SUBMIT_RECORDED);
  row = last_cut (&shop);
  g_assert_cmpstr (row->row.id, ==, "1");
  g_assert_cmpstr (row->row.by, ==, "AB");
  g_assert_cmpstr (row->row.at, ==, AT_CUT);
  g_assert_cmpstr (row->row.piece->serial, ==, "001");
  g_assert_cmpstr (row->row.feature->balloon, ==, "1");
  g_assert_cmpuint (row->place, ==, 1);
  g_assert_cmpint (row->dialled.count, ==, 50000000);
  g_assert_cmpint (row->reads, ==, TM_READS_RADIUS);
  g_assert_cmpuint (row->passes, ==, 2);
  g_assert_cmpstr (row->tool, ==, "bar 20");
  g_assert_cmpstr (row->after, ==, "2");
  g_assert_cmpstr (row->note, ==, "coolant on");
  g_assert_cmpuint (shop.keeper.n_cuts, ==, 1);
  g_assert_true (tm_bench_fact_row (&(TmBenchFact) { .cut = row }) == &row->row);
  /* What was read before stands and no longer counts: both stations are to be read again, the first
   * first, and what was typed is still there. */
  assert_unread (&shop, 4);
  assert_spot (shop.bench, "001", "1", 1, "mouth/12");
  g_assert_cmpstr (tm_bench_text (shop.bench), ==, "24.9");
  g_assert_null (tm_bench_last (shop.bench));
  /* The next cut is numbered on, and made after nothing new. */
  g_assert_cmpint (cut (&shop, "50 um", 0, 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (last_cut (&shop)->row.id, ==, "2");
  g_assert_cmpstr (last_cut (&shop)->after, ==, "2");
  g_assert_cmpint (last_cut (&shop)->dialled.count, ==, 50000000);
  close_shop (&shop);
}

/* A cut before anything was read says so; spring passes alone are a cut too. */
static void
test_unread (void)
{
  Shop shop = open_shop ();
  TmCutAdvice advice;

  begin (&shop);
  tm_bench_cut_plan (shop.bench, &advice);
  g_assert_cmpint (advice.plan.status, ==, TM_CUT_NOT_READ);
  g_assert_cmpint (cut (&shop, "0", 1, 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (last_cut (&shop)->after, ==, "none");
  g_assert_cmpint (last_cut (&shop)->dialled.count, ==, 0);
  close_shop (&shop);
}

static void
test_plan (void)
{
  Shop shop = open_shop ();
  TmCutAdvice plan, tried;
  g_autofree char *text = NULL;

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  tm_bench_cut_plan (shop.bench, &plan);
  g_assert_true (plan.plan.status == TM_CUT_OK || plan.plan.status == TM_CUT_PROVE);
  g_assert_true (plan.assumed);
  g_assert_cmpint (plan.dial % shop.bar->graduation.count, ==, 0);
  g_assert_cmpint (plan.dial, >, 0);
  g_assert_cmpfloat (plan.plan.chances.gone, <=, TM_CUT_RISK + 1e-9);
  /* What the plan says is what trying its number says. */
  text = tm_bench_dial_text (shop.bar, plan.dial);
  g_assert_true (tm_bench_cut_try (shop.bench, text, &tried, NULL));
  g_assert_cmpfloat_with_epsilon (tried.plan.chances.gone, plan.plan.chances.gone, 1e-9);
  g_assert_cmpfloat_with_epsilon (tried.plan.predicted, plan.plan.predicted, 1);
  /* Double the number takes twice as much off; the chances change. */
  tm_bench_cut_try_count (shop.bench, 2 * plan.dial, &tried);
  g_assert_cmpfloat (tried.plan.predicted, >, plan.plan.predicted);
  g_assert_cmpfloat (tried.plan.chances.gone, >=, plan.plan.chances.gone);
  /* The dial for a size: the whole mark whose prediction is nearest. */
  tm_bench_cut_try_count (shop.bench, plan.dial, &tried);
  g_assert_cmpint (
      tm_bench_cut_dial_for (shop.bench, tried.reference + (gint64)tried.plan.predicted + 1000000), ==,
      plan.dial);
  g_assert_cmpint (tm_bench_cut_dial_for (shop.bench, G_GINT64_CONSTANT (24000000000)), ==, 0);
  close_shop (&shop);
}

/* What the tool did on the first piece is known on the second, without leaving the job. */
static void
test_next_piece (void)
{
  Shop shop = open_shop ();
  TmCutAdvice first, second;

  begin (&shop);
  read_bore (&shop, "24.800", "24.800");
  tm_bench_cut_plan (shop.bench, &first);
  g_assert_true (first.assumed);
  g_assert_cmpint (cut (&shop, "0.050", 0, 0), ==, TM_SUBMIT_RECORDED);
  read_bore (&shop, "24.890", "24.890");
  g_assert_true (tm_bench_go (shop.bench, g_ptr_array_index (shop.job->pieces, 1),
                              g_ptr_array_index (shop.job->features, 0), 1, NULL));
  tm_bench_cut_plan (shop.bench, &second);
  g_assert_false (second.assumed);
  g_assert_cmpuint (second.response.n_answers, ==, 1);
  g_assert_cmpfloat (second.response.factor, <, 0.96);
  close_shop (&shop);
}

/* On a depth the radius means nothing: a mark moves the size by a mark. */
static void
test_depth (void)
{
  Shop shop = open_shop ();
  TmFeature *depth = add_feature (shop.job, "90", TM_KIND_DEPTH, TM_UNIT_MM, "10", "10.000", "10.050");
  TmCutAdvice still;
  gint64 size;

  depth->method = tm_job_intern (shop.job, "BM-1");
  begin (&shop);
  g_assert_true (tm_bench_go (shop.bench, g_ptr_array_index (shop.job->pieces, 0), depth, 1, NULL));
  if (enter (shop.bench, "9.900", 0) == TM_SUBMIT_ASKED)
    g_assert_cmpint (tm_bench_submit (shop.bench, AT, 1000, NULL), ==, TM_SUBMIT_RECORDED);
  g_assert_true (tm_bench_go (shop.bench, g_ptr_array_index (shop.job->pieces, 0), depth, 1, NULL));
  tm_bench_cut_try_count (shop.bench, 0, &still);
  g_assert_cmpint (still.plan.status, ==, TM_CUT_OK);
  size = still.reference + llround (still.plan.size) + 10 * shop.bar->graduation.count;
  g_assert_cmpint (tm_bench_cut_dial_for (shop.bench, size), ==, 10 * shop.bar->graduation.count);
  /* Three times what is left and the band, 0.60 mm, may still be meant; half of it more is a slip. */
  g_assert_true (tm_bench_cut_try (shop.bench, "0.5", &still, NULL));
  g_assert_false (tm_bench_cut_try (shop.bench, "0.9", &still, NULL));
  close_shop (&shop);
}

static void
test_risk (void)
{
  Shop shop = open_shop ();
  TmCutAdvice bold, careful;

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  tm_bench_set_cut_risk (shop.bench, 0.1);
  g_assert_cmpfloat (tm_bench_cut_risk (shop.bench), ==, 0.1);
  tm_bench_cut_plan (shop.bench, &bold);
  tm_bench_set_cut_risk (shop.bench, 0.0001);
  tm_bench_cut_plan (shop.bench, &careful);
  g_assert_cmpfloat (bold.risk, ==, 0.1);
  g_assert_cmpfloat (careful.risk, ==, 0.0001);
  g_assert_cmpint (careful.dial, <=, bold.dial);
  /* No risk is none: the job's holds. */
  tm_bench_set_cut_risk (shop.bench, (double)NAN);
  g_assert_cmpfloat (tm_bench_cut_risk (shop.bench), ==, 0);
  close_shop (&shop);
}

/* What the tool did on other jobs replaces the assumption. */
static void
test_answers (void)
{
  Shop shop = open_shop ();
  g_autoptr (GArray) answers = g_array_new (FALSE, FALSE, sizeof (TmCutAnswer));
  TmCutAdvice before, after;

  for (guint i = 0; i < 12; i++)
    {
      TmCutAnswer answer = { 200e6, 180e6, 1e6 };

      g_array_append_val (answers, answer);
    }
  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  tm_bench_cut_plan (shop.bench, &before);
  g_assert_false (tm_bench_has_answers (shop.bench, "bar 20"));
  tm_bench_set_answers (shop.bench, "bar 20", answers);
  g_assert_true (tm_bench_has_answers (shop.bench, "bar 20"));
  tm_bench_cut_plan (shop.bench, &after);
  g_assert_true (before.assumed && !after.assumed);
  g_assert_cmpfloat_with_epsilon (before.response.factor, 1, 0.01);
  g_assert_cmpfloat_with_epsilon (after.response.factor, 0.9, 0.02);
  g_assert_cmpuint (after.response.n_answers, ==, 12);
  tm_bench_set_answers (shop.bench, "bar 20", NULL);
  tm_bench_cut_plan (shop.bench, &after);
  g_assert_true (after.assumed);
  close_shop (&shop);
}

static void
test_mate (void)
{
  Shop shop = open_shop ();
  TmFeature *bore = g_ptr_array_index (shop.job->features, 0);
  TmMateSize *pin = tm_mate_size_new ();

  pin->feature = tm_job_intern (shop.job, "1");
  pin->serial = tm_job_intern (shop.job, "P-7");
  g_assert_cmpint (tm_quantity_read ("24.990", TM_UNIT_MM, &pin->smallest), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_mate_size (shop.job, pin), ==, TM_ADD_OK);
  begin (&shop);
  g_assert_null (tm_bench_cut_mate (shop.bench));
  tm_bench_set_cut_mate (shop.bench, "P-7");
  g_assert_true (tm_bench_cut_mate (shop.bench) == pin);
  tm_bench_set_cut_mate (shop.bench, "P-8");
  g_assert_null (tm_bench_cut_mate (shop.bench));
  /* It goes into one piece: the next is not cut to it as well. */
  tm_bench_set_cut_mate (shop.bench, "P-7");
  g_assert_true (tm_bench_go (shop.bench, g_ptr_array_index (shop.job->pieces, 1), bore, 1, NULL));
  g_assert_null (tm_bench_cut_mate (shop.bench));
  g_assert_true (tm_bench_go (shop.bench, g_ptr_array_index (shop.job->pieces, 0), bore, 1, NULL));
  g_assert_true (tm_bench_cut_mate (shop.bench) == pin);
  /* A mate of this feature is none of the next. */
  tm_bench_set_cut_mate (shop.bench, "P-7");
  g_assert_true (tm_bench_go (shop.bench, g_ptr_array_index (shop.job->pieces, 0),
                              g_ptr_array_index (shop.job->features, 1), 1, NULL));
  g_assert_null (tm_bench_cut_mate (shop.bench));
  g_assert_true (bore->mate.given == FALSE);
  close_shop (&shop);
}

/* A refusal is one line, records nothing, and says what to mend. */
static void
assert_refused (Shop *shop, const char *text, guint passes, const char *part)
{
  g_autoptr (GError) error = NULL;
  guint before = shop->job->cuts->len;

  g_assert_cmpint (tm_bench_submit_cut (shop->bench, text, passes, "", AT_CUT, 0, &error), ==,
                   TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  if (strstr (error->message, part) == NULL)
    g_error ("%s: %s", text, error->message);
  g_assert_null (strchr (error->message, '\n'));
  g_assert_cmpuint (shop->job->cuts->len, ==, before);
  g_assert_cmpuint (shop->keeper.n_cuts, ==, before);
}

static void
test_refused (void)
{
  Shop shop = open_shop ();
  TmPiece *piece = g_ptr_array_index (shop.job->pieces, 0);
  TmCutAdvice advice;

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  assert_refused (&shop, "", 0, "dial");
  assert_refused (&shop, "abc", 0, "abc");
  assert_refused (&shop, "-0.05", 0, "without a sign");
  assert_refused (&shop, "0.05 deg", 0, "0.05 deg");
  assert_refused (&shop, "0", 0, "no spring pass");
  assert_refused (&shop, "1e5", 0, "1e5");
  /* A decimal point in the wrong place is told apart while it is typed. */
  {
    g_autoptr (GError) error = NULL;

    g_assert_false (tm_bench_cut_try (shop.bench, "5", &advice, &error));
    g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
    g_assert_nonnull (strstr (error->message, "decimal point"));
  }
  /* A thread is not cut to a size. */
  g_assert_true (tm_bench_go (shop.bench, piece, g_ptr_array_index (shop.job->features, 2), 1, NULL));
  assert_refused (&shop, "0.05", 0, "not cut to a size");
  /* And without a tool nobody knows what the dial counts. */
  add_tool (shop.job, "bar 16", TM_READS_DIAMETER, "0.01");
  g_assert_true (tm_bench_go (shop.bench, piece, g_ptr_array_index (shop.job->features, 1), 1, NULL));
  assert_refused (&shop, "0.05", 0, "which tool");
  close_shop (&shop);
}

/* A cut that most likely takes the metal over is asked about, once for each text. */
static void
test_question (void)
{
  Shop shop = open_shop ();

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  g_assert_cmpint (cut (&shop, "0.2", 0, 1000), ==, TM_SUBMIT_ASKED);
  g_assert_cmpint (cut (&shop, "0.2", 0, 1100), ==, TM_SUBMIT_TOO_SOON);
  g_assert_cmpuint (shop.job->cuts->len, ==, 0);
  g_assert_cmpint (cut (&shop, "0.21", 0, 2000), ==, TM_SUBMIT_ASKED);
  g_assert_cmpint (cut (&shop, "0.21", 0, 2300), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpuint (shop.job->cuts->len, ==, 1);
  close_shop (&shop);
}

/* A disk that is full loses nothing and claims nothing. */
static void
test_failing (void)
{
  Shop shop = open_shop ();

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  shop.keeper.failing = TRUE;
  g_assert_cmpint (cut (&shop, "0.02", 0, 0), ==, TM_SUBMIT_FAILED);
  g_assert_cmpuint (shop.job->cuts->len, ==, 0);
  g_assert_null (last_cut (&shop));
  assert_unread (&shop, 2);
  shop.keeper.failing = FALSE;
  g_assert_cmpint (cut (&shop, "0.02", 0, 0), ==, TM_SUBMIT_RECORDED);
  shop.keeper.failing = TRUE;
  {
    g_autoptr (GError) error = NULL;

    g_assert_false (tm_bench_withdraw_cut (shop.bench, last_cut (&shop), "slip", AT_AFTER, &error));
    g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE);
    g_clear_error (&error);
    g_assert_false (tm_bench_correct_cut (shop.bench, last_cut (&shop), "0.03", 0, "slip", AT_AFTER, &error));
    g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE);
  }
  g_assert_true (tm_row_stands (&last_cut (&shop)->row));
  g_assert_cmpint (last_cut (&shop)->dialled.count, ==, 20000000);
  close_shop (&shop);
}

/* What was read before a cut counts again when the cut is withdrawn: it was never made. */
static void
test_withdraw (void)
{
  Shop shop = open_shop ();
  g_autoptr (GError) error = NULL;
  const TmCutRow *row;

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  g_assert_cmpint (cut (&shop, "0.02", 0, 0), ==, TM_SUBMIT_RECORDED);
  assert_unread (&shop, 4);
  row = last_cut (&shop);
  g_assert_false (tm_bench_withdraw_cut (shop.bench, row, "  ", AT_AFTER, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_REASON);
  g_clear_error (&error);
  g_assert_true (tm_bench_withdraw_cut (shop.bench, row, "it was another piece", AT_AFTER, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (row->row.withdrawn->reason, ==, "it was another piece");
  g_assert_null (last_cut (&shop));
  g_assert_nonnull (tm_bench_last (shop.bench));
  assert_unread (&shop, 2);
  g_assert_false (tm_bench_withdraw_cut (shop.bench, row, "again", AT_AFTER, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET);
  close_shop (&shop);
}

/* A correction keeps piece, place, tool and its place among the readings. */
static void
test_correct (void)
{
  Shop shop = open_shop ();
  g_autoptr (GError) error = NULL;
  const TmCutRow *old, *row;

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  g_assert_cmpint (cut (&shop, "0.02", 1, 0), ==, TM_SUBMIT_RECORDED);
  old = last_cut (&shop);
  read_bore (&shop, "24.960", "24.961");
  assert_unread (&shop, 2);
  g_assert_false (tm_bench_correct_cut (shop.bench, old, "0.03x", 1, "misread", AT_AFTER, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  g_clear_error (&error);
  g_assert_true (tm_bench_correct_cut (shop.bench, old, "0.03", 2, "the dial was misread", AT_AFTER, &error));
  g_assert_no_error (error);
  row = old->row.replaced_by;
  g_assert_nonnull (row);
  g_assert_cmpstr (row->row.replaces, ==, "1");
  g_assert_cmpstr (row->row.reason, ==, "the dial was misread");
  g_assert_cmpint (row->dialled.count, ==, 30000000);
  g_assert_cmpuint (row->passes, ==, 2);
  g_assert_cmpstr (row->tool, ==, "bar 20");
  g_assert_cmpstr (row->after, ==, old->after);
  g_assert_cmpstr (row->note, ==, "coolant on");
  /* What was read after the cut still counts. */
  assert_unread (&shop, 2);
  g_assert_cmpuint (shop.keeper.n_cuts, ==, 2);
  close_shop (&shop);
}

static TmAdviceKind
advise (Shop *shop)
{
  return tm_bench_advice (shop->bench).kind;
}

/* Measure, cut, measure again, until it is in. */
static void
test_journey (void)
{
  Shop shop = open_shop ();

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  g_assert_cmpint (advise (&shop), ==, TM_ADVICE_CUT_AGAIN);
  g_assert_cmpint (cut (&shop, "0.04", 0, 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (advise (&shop), ==, TM_ADVICE_READ_AFTER_CUT);
  g_assert_cmpstr (tm_bench_advice (shop.bench).station, ==, "mouth/12");
  read_bore (&shop, "24.978", "24.980");
  g_assert_cmpint (advise (&shop), ==, TM_ADVICE_CUT_AGAIN);
  g_assert_cmpint (cut (&shop, "0.015", 0, 0), ==, TM_SUBMIT_RECORDED);
  read_bore (&shop, "25.008", "25.010");
  g_assert_cmpint (advise (&shop), ==, TM_ADVICE_NEXT);
  close_shop (&shop);
}

/* Too close on the side with metal left: where the tool is well known and its dial fine, a cut helps more
 * than reading again; with a coarse dial nobody knows, it does not; on the other side it never does. */
static void
test_too_close (void)
{
  Shop shop = open_shop ();
  g_autoptr (GArray) answers = g_array_new (FALSE, FALSE, sizeof (TmCutAnswer));

  for (guint i = 0; i < 30; i++)
    {
      TmCutAnswer answer = { 20e6, i % 2 == 0 ? 20.5e6 : 19.5e6, 0.2e6 };

      g_array_append_val (answers, answer);
    }
  begin (&shop);
  read_bore (&shop, "25.0005", "25.0005");
  g_assert_cmpint (advise (&shop), ==, TM_ADVICE_REPEAT);
  g_assert_cmpint (tm_quantity_read ("0.001", TM_UNIT_MM, &shop.bar->graduation), ==, TM_READ_OK);
  tm_bench_set_answers (shop.bench, "bar 20", answers);
  g_assert_cmpint (advise (&shop), ==, TM_ADVICE_CUT_AGAIN);
  g_assert_cmpint (cut (&shop, "0.003", 0, 0), ==, TM_SUBMIT_RECORDED);
  read_bore (&shop, "25.0205", "25.0205");
  g_assert_cmpint (advise (&shop), ==, TM_ADVICE_REPEAT);
  close_shop (&shop);
}

/* A correction of a cut whose order only the times tell is placed by what they told. */
static void
test_foreign_order (void)
{
  Shop shop = open_shop ();
  TmCutRow *foreign = tm_cut_row_new ();
  g_autoptr (GError) error = NULL;

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  foreign->row.piece = g_ptr_array_index (shop.job->pieces, 0);
  foreign->row.feature = g_ptr_array_index (shop.job->features, 0);
  foreign->row.at = tm_job_intern (shop.job, AT_CUT);
  foreign->place = 1;
  foreign->tool = shop.bar->name;
  foreign->dialled = tm_quantity_new (20000000, TM_UNIT_MM, 2);
  g_assert_cmpint (tm_job_add_cut (shop.job, foreign), ==, TM_ADD_OK);
  assert_unread (&shop, 4);
  g_assert_true (tm_bench_correct_cut (shop.bench, foreign, "0.03", 0, "misread", AT_AFTER, &error));
  g_assert_cmpstr (((TmCutRow *)foreign->row.replaced_by)->after, ==, "2");
  assert_unread (&shop, 4);
  close_shop (&shop);
}

/* A reading that was put right after the cut is still one from before it, and the newest in the list. */
static void
test_foreign_corrected (void)
{
  Shop shop = open_shop ();
  TmCutRow *foreign = tm_cut_row_new ();
  TmReading *right = tm_reading_new ();
  const TmReading *wrong;
  g_autoptr (GError) error = NULL;

  begin (&shop);
  read_bore (&shop, "24.900", "24.902");
  foreign->row.piece = g_ptr_array_index (shop.job->pieces, 0);
  foreign->row.feature = g_ptr_array_index (shop.job->features, 0);
  foreign->row.at = tm_job_intern (shop.job, AT_CUT);
  foreign->tool = shop.bar->name;
  foreign->dialled = tm_quantity_new (20000000, TM_UNIT_MM, 2);
  g_assert_cmpint (tm_job_add_cut (shop.job, foreign), ==, TM_ADD_OK);
  wrong = g_ptr_array_index (shop.job->readings, 1);
  right->row.piece = wrong->row.piece;
  right->row.feature = wrong->row.feature;
  right->row.at = tm_job_intern (shop.job, AT_AFTER);
  right->row.replaces = wrong->row.id;
  right->row.reason = "misread";
  right->station = wrong->station;
  right->value = wrong->value;
  g_assert_cmpint (tm_job_add_reading (shop.job, right), ==, TM_ADD_OK);
  g_assert_true (tm_bench_correct_cut (shop.bench, foreign, "0.03", 0, "misread", AT_AFTER, &error));
  g_assert_cmpstr (((TmCutRow *)foreign->row.replaced_by)->after, ==, wrong->row.id);
  close_shop (&shop);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cut/tool", test_tool);
  g_test_add_func ("/cut/record", test_record);
  g_test_add_func ("/cut/unread", test_unread);
  g_test_add_func ("/cut/plan", test_plan);
  g_test_add_func ("/cut/next-piece", test_next_piece);
  g_test_add_func ("/cut/depth", test_depth);
  g_test_add_func ("/cut/risk", test_risk);
  g_test_add_func ("/cut/answers", test_answers);
  g_test_add_func ("/cut/mate", test_mate);
  g_test_add_func ("/cut/refused", test_refused);
  g_test_add_func ("/cut/question", test_question);
  g_test_add_func ("/cut/failing", test_failing);
  g_test_add_func ("/cut/withdraw", test_withdraw);
  g_test_add_func ("/cut/correct", test_correct);
  g_test_add_func ("/cut/journey", test_journey);
  g_test_add_func ("/cut/too-close", test_too_close);
  g_test_add_func ("/cut/foreign-order", test_foreign_order);
  g_test_add_func ("/cut/foreign-corrected", test_foreign_corrected);
  return g_test_run ();
}
