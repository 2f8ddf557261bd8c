/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cuts of the record: what of it reaches the belief, in which order, and what comes out in the record's
 * terms.
 */

#include "core-cut-work.h"

#include <math.h>
#include <string.h>

#include "judge-support.h"

#define UM 1e6

/* -------- A job with a bore, a micrometer and a boring bar: invented -------- */

typedef struct {
  TmJob *job;
  TmFeature *feature;
  TmTool *tool;
} Shop;

static TmTool *
add_tool (TmJob *job, const char *name, TmReads reads, const char *graduation, const char *least)
{
  TmTool *tool = tm_tool_new ();

  tool->name = tm_job_intern (job, name);
  tool->unit = TM_UNIT_MM;
  tool->reads = reads;
  tool->graduation = quantity (graduation, TM_UNIT_MM);
  tool->least_cut = quantity (least, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  return tool;
}

static void
open_shop (Shop *shop, TmKind kind, const char *lower, const char *upper)
{
  shop->job = make_job (TM_DECISION_GUARDED);
  add_gauge (shop->job, "G1", NULL, "0.001");
  add_method (shop->job, "micrometer", "G1", "0.0005", NULL);
  shop->feature = add_feature (shop->job, "1", kind, lower, upper, "micrometer");
  shop->tool = add_tool (shop->job, "bar", TM_READS_RADIUS, "0.001", "0.002");
}

static void
close_shop (Shop *shop)
{
  tm_job_free (shop->job);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Shop, close_shop)

static TmCutRow *
new_cut (const Shop *shop, const char *dialled, const char *after)
{
  TmCutRow *cut = tm_cut_row_new ();

  cut->row.piece = first_piece (shop->job);
  cut->row.feature = shop->feature;
  cut->place = 1;
  cut->dialled = quantity (dialled, TM_UNIT_MM);
  cut->reads = shop->tool->reads;
  cut->tool = shop->tool->name;
  cut->after = tm_job_intern (shop->job, after);
  return cut;
}

/* After the newest reading. */
static TmCutRow *
make_cut (const Shop *shop, const char *dialled)
{
  const GPtrArray *readings = shop->job->readings;
  const TmReading *newest = readings->len > 0 ? g_ptr_array_index (readings, readings->len - 1) : NULL;
  TmCutRow *cut = new_cut (shop, dialled, newest ? newest->row.id : "none");

  g_assert_cmpint (tm_job_add_cut (shop->job, cut), ==, TM_ADD_OK);
  return cut;
}

static void
read_ends (const Shop *shop, const char *mouth, const char *bottom)
{
  read_size (shop->job, shop->feature, "mouth", mouth, "");
  read_size (shop->job, shop->feature, "bottom", bottom, "");
}

static TmCutWork *
open_work (const Shop *shop)
{
  return tm_cut_work_new (shop->job, first_piece (shop->job), shop->feature, 1, shop->tool, NULL, 0);
}

static void
plan (const Shop *shop, const TmCutAsk *ask, TmCutAdvice *out)
{
  g_autoptr (TmCutWork) work = open_work (shop);

  tm_cut_work_plan (work, ask, out);
}

static void
assert_status (const Shop *shop, TmCutStatus status)
{
  TmCutAdvice advice;

  plan (shop, NULL, &advice);
  g_assert_cmpstr (tm_cut_status_word (advice.plan.status), ==, tm_cut_status_word (status));
}

/* -------- One cut -------- */

/* The dial reads the radius: half the change, whole marks; the size is given beside the lower limit. */
static void
test_dial (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice, tried;
  g_autoptr (TmCutWork) work = NULL;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "24.902", "24.900");
  work = open_work (&shop);
  tm_cut_work_plan (work, NULL, &advice);
  g_assert_true (advice.plan.status == TM_CUT_OK || advice.plan.status == TM_CUT_PROVE);
  g_assert_cmpint (advice.reference, ==, 25000000000);
  g_assert_cmpint (advice.dial % 1000000, ==, 0);
  assert_near ((double)advice.dial * 2, advice.plan.change, 1e-6);
  assert_near (advice.plan.predicted, -99 * UM + advice.plan.change, 0.1 * UM);
  assert_near (advice.risk, TM_CUT_RISK, 1e-15);
  assert_near (advice.risk_spent, 0, 1e-15);
  g_assert_true (advice.assumed);
  tm_cut_work_try (work, NULL, advice.dial, &tried);
  assert_near (tried.plan.chances.gone, advice.plan.chances.gone, 1e-12);
  tm_cut_work_try (work, NULL, 0, &tried);
  assert_near (tried.plan.chances.left, 1, 1e-6);
}

/* A dial on the radius means nothing to a depth. */
static void
test_depth (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_DEPTH, "5.000", "5.040");
  read_size (shop.job, shop.feature, "", "4.900", "");
  plan (&shop, NULL, &advice);
  assert_near ((double)advice.dial, advice.plan.change, 1e-6);
  g_assert_cmpint (advice.dial, >, 0);
}

/* -------- The record -------- */

/* Cut, measured again: the size that counts is the new one, the cut is an answer, what it risked is spent. */
static void
test_replay (void)
{
  g_auto (Shop) shop = { NULL };
  g_autoptr (TmCutWork) work = NULL;
  TmCutOutcome outcome;
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "24.902", "24.900");
  make_cut (&shop, "0.045");
  assert_status (&shop, TM_CUT_NOT_READ);
  read_ends (&shop, "24.990", "24.988");
  work = open_work (&shop);
  g_assert_cmpuint (tm_cut_work_n_outcomes (work), ==, 1);
  tm_cut_work_outcome (work, 0, &outcome);
  assert_near (outcome.answer.dialled, 90 * UM, 1e-6);
  assert_near (outcome.answer.achieved, 88 * UM, 1);
  /* Two stations, each 0.5 µm before and after: √(0.5² + 0.5²)/√2. */
  assert_near (outcome.answer.u, 0.5 * UM, 1);
  assert_near (outcome.expected, 90 * UM, 1);
  g_assert_cmpfloat (fabs (outcome.surprise), <, 1);
  g_assert_false (outcome.unlike);
  tm_cut_work_plan (work, NULL, &advice);
  g_assert_false (advice.assumed);
  g_assert_cmpuint (advice.n_cuts, ==, 1);
  g_assert_cmpuint (advice.response.n_answers, ==, 1);
  g_assert_cmpfloat (advice.risk_spent, >, 0);
  g_assert_cmpfloat (advice.risk_spent, <, TM_CUT_RISK);
  g_assert_cmpfloat (advice.plan.chances.gone, <=, TM_CUT_RISK - advice.risk_spent);
}

/* A roughing cut with a tool of which nothing is known risks more by itself than is accepted: the run that
 * the accepted risk is for begins after it.  A smaller one counts. */
static void
test_roughing (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;
  TmCutAsk ask = { .risk = 0.01 };

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "21.002", "21.000");
  make_cut (&shop, "1.850");
  read_ends (&shop, "24.702", "24.700");
  plan (&shop, &ask, &advice);
  g_assert_cmpfloat (advice.risk_spent, <=, 0);
  g_assert_cmpint (advice.dial, >, 0);
  g_assert_cmpfloat (advice.plan.chances.gone, <=, 0.01);
  /* To those who accept as much it is one of the run's. */
  ask.risk = 0.5;
  plan (&shop, &ask, &advice);
  g_assert_cmpfloat (advice.risk_spent, >, 0.1);
  g_assert_cmpfloat (advice.risk_spent, <, 0.2);
}

/* A withdrawn cut was not made, a corrected one was made as corrected, where it was. */
static void
test_corrected (void)
{
  g_auto (Shop) shop = { NULL };
  g_autoptr (TmCutWork) work = NULL;
  TmCutOutcome outcome;
  TmCutRow *first, *right, *last;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "24.802", "24.800");
  first = make_cut (&shop, "0.450");
  read_ends (&shop, "24.892", "24.890");
  last = make_cut (&shop, "0.030");
  read_ends (&shop, "24.952", "24.950");
  right = new_cut (&shop, "0.045", first->after);
  right->row.replaces = first->row.id;
  right->row.reason = "slip";
  g_assert_cmpint (tm_job_add_cut (shop.job, right), ==, TM_ADD_OK);
  /* The correction of an older cut is not the last one made. */
  g_assert_true (tm_job_last_cut (shop.job, first_piece (shop.job), shop.feature, 1) == last);
  work = open_work (&shop);
  g_assert_cmpuint (tm_cut_work_n_outcomes (work), ==, 2);
  tm_cut_work_outcome (work, 0, &outcome);
  g_assert_true (outcome.cut == right);
  assert_near (outcome.answer.achieved, 90 * UM, 1);
  tm_cut_work_outcome (work, 1, &outcome);
  g_assert_true (outcome.cut == last);
  assert_near (outcome.answer.achieved, 60 * UM, 1);
  g_assert_cmpint (tm_job_withdraw (shop.job, &last->row, "", "", "not made"), ==, TM_ADD_OK);
  g_clear_pointer (&work, tm_cut_work_free);
  work = open_work (&shop);
  g_assert_cmpuint (tm_cut_work_n_outcomes (work), ==, 1);
}

/* A cut that was written down at the wrong place joins those of its own place, and takes none of them away.
 */
static void
test_corrected_place (void)
{
  g_auto (Shop) shop = { NULL };
  g_autoptr (TmCutWork) work = NULL;
  TmCutOutcome outcome;
  TmCutRow *first, *wrong, *right;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  shop.feature->places = 2;
  read_ends (&shop, "24.802", "24.800");
  first = make_cut (&shop, "0.045");
  read_ends (&shop, "24.892", "24.890");
  wrong = new_cut (&shop, "0.030", "none");
  wrong->place = 2;
  g_assert_cmpint (tm_job_add_cut (shop.job, wrong), ==, TM_ADD_OK);
  right = new_cut (&shop, "0.030", "4");
  right->row.replaces = wrong->row.id;
  right->row.reason = "it was the other hole";
  g_assert_cmpint (tm_job_add_cut (shop.job, right), ==, TM_ADD_OK);
  work = open_work (&shop);
  g_assert_cmpuint (tm_cut_work_n_outcomes (work), ==, 2);
  tm_cut_work_outcome (work, 0, &outcome);
  g_assert_true (outcome.cut == first);
  assert_near (outcome.answer.achieved, 90 * UM, 1);
  tm_cut_work_outcome (work, 1, &outcome);
  g_assert_true (outcome.cut == right);
}

/* A correction is written down later than the cut was made: what was read in between was read after the cut,
 * with nothing but the times to tell. */
static void
test_corrected_later (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutRow *first, *right;
  TmReading *before, *after;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  before = read_size (shop.job, shop.feature, "mouth", "24.900", "");
  before->row.at = "2026-05-04T09:00:00Z";
  first = new_cut (&shop, "0.045", "");
  first->row.at = "2026-05-04T09:10:00Z";
  g_assert_cmpint (tm_job_add_cut (shop.job, first), ==, TM_ADD_OK);
  after = new_reading (shop.job, shop.feature, "mouth", "");
  after->value = quantity ("24.990", TM_UNIT_MM);
  after->row.at = "2026-05-04T09:20:00Z";
  g_assert_cmpint (tm_job_add_reading (shop.job, after), ==, TM_ADD_OK);
  g_assert_true (tm_row_counts (&after->row));
  right = new_cut (&shop, "0.046", "");
  right->row.at = "2026-05-04T09:30:00Z";
  right->row.replaces = first->row.id;
  right->row.reason = "slip";
  g_assert_cmpint (tm_job_add_cut (shop.job, right), ==, TM_ADD_OK);
  g_assert_true (tm_row_counts (&after->row));
  g_assert_false (tm_row_counts (&before->row));
}

/* Spring passes alone take a little and teach nothing of the dial. */
static void
test_spring_passes (void)
{
  g_auto (Shop) shop = { NULL };
  g_autoptr (TmCutWork) work = NULL;
  g_autoptr (GArray) answers = NULL;
  TmCutOutcome outcome;
  TmCutAdvice advice;
  TmCutRow *cut;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "24.902", "24.900");
  cut = make_cut (&shop, "0");
  cut->passes = 2;
  read_ends (&shop, "24.908", "24.906");
  work = open_work (&shop);
  tm_cut_work_outcome (work, 0, &outcome);
  assert_near (outcome.answer.achieved, 6 * UM, 1);
  g_assert_false (outcome.unlike);
  tm_cut_work_plan (work, NULL, &advice);
  g_assert_true (advice.assumed);
  assert_near (advice.plan.size, -93 * UM, 0.5 * UM);
  answers = tm_cut_answers (shop.job, "bar", NULL, NULL, 0);
  g_assert_cmpuint (answers->len, ==, 0);
}

/* Far less than was dialled: pointed out, no measure of the tool; the next cut is planned from the readings.
 */
static void
test_unlike (void)
{
  g_auto (Shop) shop = { NULL };
  g_autoptr (TmCutWork) work = NULL;
  g_autoptr (GArray) answers = NULL;
  TmCutOutcome outcome;
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "24.802", "24.800");
  make_cut (&shop, "0.050");
  read_ends (&shop, "24.902", "24.900");
  make_cut (&shop, "0.040");
  read_ends (&shop, "24.912", "24.910");
  work = open_work (&shop);
  tm_cut_work_outcome (work, 0, &outcome);
  g_assert_false (outcome.unlike);
  tm_cut_work_outcome (work, 1, &outcome);
  g_assert_true (outcome.unlike);
  g_assert_cmpfloat (outcome.surprise, <, -3);
  tm_cut_work_plan (work, NULL, &advice);
  assert_near (advice.response.factor, 1, 0.03);
  g_assert_cmpuint (advice.response.n_answers, ==, 1);
  assert_near (advice.plan.predicted - advice.plan.change, -89 * UM, 3 * UM);
  answers = tm_cut_answers (shop.job, "bar", NULL, NULL, 0);
  g_assert_cmpuint (answers->len, ==, 1);
  assert_near (g_array_index (answers, TmCutAnswer, 0).achieved, 100 * UM, 1);
  g_clear_pointer (&answers, g_array_unref);
  answers = tm_cut_answers (shop.job, "bar", first_piece (shop.job), shop.feature, 1);
  g_assert_cmpuint (answers->len, ==, 0);
  g_clear_pointer (&answers, g_array_unref);
  answers = tm_cut_answers (shop.job, "another", NULL, NULL, 0);
  g_assert_cmpuint (answers->len, ==, 0);
}

static void
read_place (const Shop *shop, guint place, const char *size)
{
  TmReading *reading = new_reading (shop->job, shop->feature, "", "");

  reading->place = place;
  reading->value = quantity (size, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_reading (shop->job, reading), ==, TM_ADD_OK);
}

/* A plan learns from the newest answers: those of the places that were cut last, in the order of the record.
 */
static void
test_newest_answers (void)
{
  g_auto (Shop) shop = { NULL };
  g_autoptr (GArray) all = NULL;
  g_autoptr (GArray) newest = NULL;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  shop.feature->places = TM_CUT_MOST_ANSWERS + 3;
  for (guint place = 1; place <= shop.feature->places; place++)
    {
      g_autofree char *after = g_strdup_printf ("%u", 2 * place - 1);
      g_autofree char *size = g_strdup_printf ("24.%03u", 920 + place);
      TmCutRow *cut = new_cut (&shop, "0.050", after);

      read_place (&shop, place, "24.840");
      cut->place = place;
      g_assert_cmpint (tm_job_add_cut (shop.job, cut), ==, TM_ADD_OK);
      read_place (&shop, place, size);
    }
  all = tm_cut_answers (shop.job, "bar", NULL, NULL, 0);
  newest = tm_cut_newest_answers (shop.job, "bar", first_piece (shop.job), shop.feature, 5);
  g_assert_cmpuint (all->len, ==, TM_CUT_MOST_ANSWERS + 3);
  g_assert_cmpuint (newest->len, ==, TM_CUT_MOST_ANSWERS);
  /* All but the fifth and the two oldest. */
  for (guint i = 0; i < newest->len; i++)
    assert_near (g_array_index (newest, TmCutAnswer, i).achieved,
                 g_array_index (all, TmCutAnswer, i < 2 ? i + 2 : i + 3).achieved, 1e-6);
}

/* Far more than was dialled: to leave that out would make the next cut too large if it happens again, so here
 * it counts; elsewhere it does not. */
static void
test_unlike_too_much (void)
{
  g_auto (Shop) shop = { NULL };
  g_autoptr (TmCutWork) work = NULL;
  g_autoptr (GArray) answers = NULL;
  TmCutOutcome outcome;
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "24.602", "24.600");
  make_cut (&shop, "0.050");
  read_ends (&shop, "24.702", "24.700");
  make_cut (&shop, "0.040");
  read_ends (&shop, "24.852", "24.850");
  work = open_work (&shop);
  tm_cut_work_outcome (work, 1, &outcome);
  g_assert_true (outcome.unlike);
  g_assert_cmpfloat (outcome.surprise, >, 3);
  tm_cut_work_plan (work, NULL, &advice);
  g_assert_cmpuint (advice.response.n_answers, ==, 2);
  g_assert_cmpfloat (advice.response.scatter, >, 10 * UM);
  answers = tm_cut_answers (shop.job, "bar", NULL, NULL, 0);
  g_assert_cmpuint (answers->len, ==, 1);
}

/* A cut with another tool is no answer of this one. */
static void
test_other_tool (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;
  TmCutRow *cut;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  add_tool (shop.job, "drill", TM_READS_DIAMETER, "0.1", NULL);
  read_ends (&shop, "24.602", "24.600");
  cut = make_cut (&shop, "0.050");
  cut->tool = "drill";
  read_ends (&shop, "24.672", "24.670");
  plan (&shop, NULL, &advice);
  g_assert_true (advice.assumed);
  assert_near (advice.response.factor, 1, 1e-6);
  assert_near (advice.plan.size, -329 * UM, UM);
}

/* Answers from other jobs take the place of what is assumed. */
static void
test_shop (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAnswer answers[6];
  g_autoptr (TmCutWork) work = NULL;
  TmCutAdvice known, assumed;

  for (guint i = 0; i < G_N_ELEMENTS (answers); i++)
    answers[i] = (TmCutAnswer) { 100 * UM, (89.5 + 0.2 * i) * UM, 0.5 * UM };
  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&shop, "24.902", "24.900");
  plan (&shop, NULL, &assumed);
  work = tm_cut_work_new (shop.job, first_piece (shop.job), shop.feature, 1, shop.tool, answers,
                          G_N_ELEMENTS (answers));
  tm_cut_work_plan (work, NULL, &known);
  g_assert_false (known.assumed);
  assert_near (known.response.factor, 0.90, 0.01);
  /* It is known to cut short, and to do so alike: the dial may be turned further. */
  g_assert_cmpint (known.dial, >, assumed.dial);
  g_assert_cmpfloat (known.plan.value, >, assumed.plan.value);
}

/* More stations than a belief holds: the outermost are kept, so that metal gone at one of them is seen. */
static void
test_crowd (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  for (guint i = 0; i < 300; i++)
    {
      g_autofree char *station = g_strdup_printf ("%u.5", i);

      read_size (shop.job, shop.feature, station, i == 150 ? "25.055" : "24.990", "");
    }
  plan (&shop, NULL, &advice);
  g_assert_cmpint (advice.plan.status, ==, TM_CUT_METAL_GONE);
  assert_near (advice.plan.predicted_high, 55 * UM, 0.1 * UM);
}

/* A station that the drawing asks for and nobody read is told, not guessed. */
static void
test_unread (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  ask_stations (shop.job, shop.feature, "mouth middle bottom");
  read_ends (&shop, "24.902", "24.900");
  plan (&shop, NULL, &advice);
  g_assert_cmpuint (advice.n_unread, ==, 1);
  make_cut (&shop, "0.010");
  read_size (shop.job, shop.feature, "mouth", "24.922", "");
  plan (&shop, NULL, &advice);
  g_assert_cmpuint (advice.n_unread, ==, 2);
}

/* -------- Mates -------- */

static TmMateSize *
add_mate_size (const Shop *shop, const char *smallest, const char *largest, const char *uncertainty)
{
  TmMateSize *mate = tm_mate_size_new ();

  mate->feature = shop->feature->balloon;
  mate->serial = tm_job_intern (shop->job, "A");
  mate->smallest = quantity (smallest, TM_UNIT_MM);
  mate->largest = quantity (largest, TM_UNIT_MM);
  mate->uncertainty = quantity (uncertainty, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_mate_size (shop->job, mate), ==, TM_ADD_OK);
  return mate;
}

/* A bush of 25.050…25.052 is to be pressed into the bore with 0.030…0.060 of interference: the bore has to be
 * 25.052 - 0.060 or more and 25.050 - 0.030 or less.  For a shaft in a bore the other way about. */
static void
test_mate (void)
{
  g_auto (Shop) bore = { NULL };
  g_auto (Shop) shaft = { NULL };
  TmCutAsk ask = { NULL };
  TmCutAdvice advice;

  open_shop (&bore, TM_KIND_BORE, "25.000", "25.040");
  read_ends (&bore, "24.902", "24.900");
  ask.mate = add_mate_size (&bore, "25.050", "25.052", "0.002");
  plan (&bore, &ask, &advice);
  g_assert_cmpint (advice.plan.status, ==, TM_CUT_NO_MATE);
  bore.feature->mate.wanted_least = quantity ("-0.060", TM_UNIT_MM);
  bore.feature->mate.wanted_most = quantity ("-0.030", TM_UNIT_MM);
  plan (&bore, &ask, &advice);
  assert_near (advice.band.mate_lower, -8 * UM, 1);
  assert_near (advice.band.mate_upper, 20 * UM, 1);
  assert_near (advice.band.mate_u, 1 * UM, 1);
  g_assert_cmpint (advice.dial, >, 0);
  open_shop (&shaft, TM_KIND_SHAFT, "25.000", "25.040");
  read_ends (&shaft, "25.140", "25.142");
  shaft.feature->mate.wanted_least = quantity ("0.010", TM_UNIT_MM);
  shaft.feature->mate.wanted_most = quantity ("0.030", TM_UNIT_MM);
  ask.mate = add_mate_size (&shaft, "25.040", "25.042", "0.001");
  plan (&shaft, &ask, &advice);
  assert_near (advice.band.mate_lower, 12 * UM, 1);
  assert_near (advice.band.mate_upper, 30 * UM, 1);
  assert_near (advice.band.mate_u, 0.5 * UM, 1e-9);
  g_assert_cmpint (advice.dial, >, 0);
  g_assert_cmpfloat (advice.plan.predicted, <, 141 * UM);
}

/* -------- Why nothing is planned -------- */

/* A mate whose uncertainty nobody states is not taken as exact. */
static void
test_mate_unknown (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;
  TmCutAsk ask = { NULL };
  TmMateSize *mate;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  shop.feature->mate.given = TRUE;
  shop.feature->mate.wanted_least = quantity ("0.005", TM_UNIT_MM);
  read_ends (&shop, "24.902", "24.900");
  ask.mate = mate = add_mate_size (&shop, "24.990", "24.990", "0.002");
  plan (&shop, &ask, &advice);
  g_assert_cmpint (advice.plan.status, !=, TM_CUT_NO_MATE);
  mate->uncertainty = TM_QUANTITY_NONE;
  plan (&shop, &ask, &advice);
  g_assert_cmpint (advice.plan.status, ==, TM_CUT_NO_MATE);
  g_assert_cmpint (advice.dial, ==, 0);
}

static void
test_obstacles (void)
{
  g_auto (Shop) shop = { NULL };
  g_auto (Shop) length = { NULL };
  g_auto (Shop) angle = { NULL };
  TmTool *tool;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  assert_status (&shop, TM_CUT_NOT_READ);
  read_size (shop.job, shop.feature, "", "24.9", "unheard of");
  assert_status (&shop, TM_CUT_NO_METHOD);
  read_size (shop.job, shop.feature, "", "24.9", "");
  tool = shop.tool;
  shop.tool = NULL;
  assert_status (&shop, TM_CUT_NO_DIAL);
  shop.tool = tool;
  read_size (shop.job, shop.feature, "", "25.2", "");
  read_size (shop.job, shop.feature, "", "25.2", "");
  read_size (shop.job, shop.feature, "", "25.2", "");
  assert_status (&shop, TM_CUT_METAL_GONE);
  shop.feature->lower = shop.feature->upper = TM_QUANTITY_NONE;
  assert_status (&shop, TM_CUT_NO_LIMITS);
  open_shop (&length, TM_KIND_LENGTH, "25.000", "25.040");
  assert_status (&length, TM_CUT_NO_SIDE);
  open_shop (&angle, TM_KIND_ANGLE, "25.000", "25.040");
  assert_status (&angle, TM_CUT_NOT_A_SIZE);
}

/* The present gauge cannot hold this band; another one of the job can, and is named. */
static void
test_finer (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_BORE, "25.000", "25.040");
  add_gauge (shop.job, "T1", NULL, "0.100");
  add_method (shop.job, "telescoping", "T1", "0.010", NULL);
  shop.feature->method = "telescoping";
  read_ends (&shop, "24.902", "24.900");
  plan (&shop, NULL, &advice);
  g_assert_cmpint (advice.plan.status, ==, TM_CUT_TOO_COARSE);
  g_assert_cmpint (advice.dial, ==, 0);
  g_assert_nonnull (advice.finer);
  g_assert_cmpstr (advice.finer->name, ==, "micrometer");
}

/* What a coarse gauge shows between two stations is mostly its own scatter: it does not speak against the
 * finer one. */
static void
test_finer_scatter (void)
{
  g_auto (Shop) shop = { NULL };
  TmCutAdvice advice;

  open_shop (&shop, TM_KIND_BORE, "30.000", "30.021");
  add_gauge (shop.job, "CAL", "0.010", "0.020");
  add_method (shop.job, "caliper", "CAL", "0.010", NULL);
  shop.feature->method = "caliper";
  read_ends (&shop, "29.970", "29.980");
  plan (&shop, NULL, &advice);
  g_assert_cmpint (advice.plan.status, ==, TM_CUT_TOO_COARSE);
  g_assert_nonnull (advice.finer);
  g_assert_cmpstr (advice.finer->name, ==, "micrometer");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cut-work/dial", test_dial);
  g_test_add_func ("/cut-work/depth", test_depth);
  g_test_add_func ("/cut-work/replay", test_replay);
  g_test_add_func ("/cut-work/roughing", test_roughing);
  g_test_add_func ("/cut-work/corrected", test_corrected);
  g_test_add_func ("/cut-work/corrected-place", test_corrected_place);
  g_test_add_func ("/cut-work/corrected-later", test_corrected_later);
  g_test_add_func ("/cut-work/spring-passes", test_spring_passes);
  g_test_add_func ("/cut-work/unlike", test_unlike);
  g_test_add_func ("/cut-work/unlike-too-much", test_unlike_too_much);
  g_test_add_func ("/cut-work/other-tool", test_other_tool);
  g_test_add_func ("/cut-work/newest-answers", test_newest_answers);
  g_test_add_func ("/cut-work/shop", test_shop);
  g_test_add_func ("/cut-work/crowd", test_crowd);
  g_test_add_func ("/cut-work/unread", test_unread);
  g_test_add_func ("/cut-work/mate", test_mate);
  g_test_add_func ("/cut-work/mate-unknown", test_mate_unknown);
  g_test_add_func ("/cut-work/obstacles", test_obstacles);
  g_test_add_func ("/cut-work/finer", test_finer);
  g_test_add_func ("/cut-work/finer-scatter", test_finer_scatter);
  return g_test_run ();
}
