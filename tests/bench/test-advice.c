/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What to do next.  The job is invented; each step's advice is what a machinist would do.
 */

#include "bench-fixture.h"

static void
assert_advice (const TmBench *bench, TmAdviceKind kind, const char *station)
{
  TmAdvice advice = tm_bench_advice (bench);

  g_assert_cmpint (advice.kind, ==, kind);
  g_assert_cmpstr (advice.station, ==, station);
}

static void
stand_on (TmBench *bench, TmJob *job, guint piece, guint feature)
{
  g_assert_true (tm_bench_go (bench, g_ptr_array_index (job->pieces, piece),
                              g_ptr_array_index (job->features, feature), 1, ""));
}

/* Bore 1 with the method named. */
static TmJob *
make_job_with (const char *resolution, const char *error_limit, const char *repeatability)
{
  TmJob *job = make_job ();
  TmFeature *bore = g_ptr_array_index (job->features, 0);

  add_method (job, "bore mic", resolution, error_limit, repeatability);
  bore->method = tm_job_intern (job, "bore mic");
  return job;
}

static void
test_start (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  assert_advice (bench, TM_ADVICE_ADD_FEATURE, "");
  add_feature (job, "1", TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");
  assert_advice (bench, TM_ADVICE_ADD_PIECE, "");
  add_piece (job, "001");
  assert_advice (bench, TM_ADVICE_READ, "");
}

static void
test_in_and_on (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.001", "0.001", "0.0005");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmAdvice advice;

  assert_advice (bench, TM_ADVICE_READ, "mouth/12");
  g_assert_cmpint (enter (bench, "25.010", 0), ==, TM_SUBMIT_RECORDED);
  assert_advice (bench, TM_ADVICE_READ, "bottom/12");
  g_assert_cmpint (enter (bench, "25.011", 0), ==, TM_SUBMIT_RECORDED);
  stand_on (bench, job, 0, 0);
  advice = tm_bench_advice (bench);
  g_assert_cmpint (advice.kind, ==, TM_ADVICE_NEXT);
  g_assert_cmpstr (advice.feature->balloon, ==, "2");
  g_assert_cmpstr (advice.piece->serial, ==, "001");
}

static void
test_out (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.001", "0.001", "0.0005");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmNonconformance *ticket = tm_nonconformance_new ();

  g_assert_cmpint (enter (bench, "24.985", 0), ==, TM_SUBMIT_RECORDED);
  assert_advice (bench, TM_ADVICE_CUT_AGAIN, "");
  stand_on (bench, job, 1, 0);
  g_assert_cmpint (enter (bench, "25.035", 0), ==, TM_SUBMIT_RECORDED);
  assert_advice (bench, TM_ADVICE_REPORT_NONCONFORMANCE, "");
  ticket->piece = tm_job_intern (job, "002");
  ticket->feature = tm_job_intern (job, "1");
  ticket->number = tm_job_intern (job, "N-1");
  tm_job_add_nonconformance (job, ticket);
  assert_advice (bench, TM_ADVICE_READ, "bottom/12");
}

static void
test_too_close (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.001", "0.002", "0.0015");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  g_assert_cmpint (enter (bench, "25.010", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (enter (bench, "25.020", 0), ==, TM_SUBMIT_RECORDED);
  stand_on (bench, job, 0, 0);
  assert_advice (bench, TM_ADVICE_REPEAT, "bottom/12");
  for (guint i = 0; i < 4; i++)
    {
      g_assert_true (tm_bench_go (bench, g_ptr_array_index (job->pieces, 0),
                                  g_ptr_array_index (job->features, 0), 1, "bottom/12"));
      g_assert_cmpint (enter (bench, "25.020", 0), ==, TM_SUBMIT_RECORDED);
    }
  stand_on (bench, job, 0, 0);
  assert_advice (bench, TM_ADVICE_FINER_GAUGE, "bottom/12");
}

/* A 0.02 mm caliper on a 0.021 mm band proves nothing: said before the first reading. */
static void
test_cannot_settle (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.01", "0.02", "0.01");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  assert_advice (bench, TM_ADVICE_FINER_GAUGE, "mouth/12");
}

/* What the shop has that does better is named: another gauge, or pins. */
static void
test_better_means (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.01", "0.02", "0.01");
  g_autoptr (TmBench) bench = NULL;
  TmAdvice advice;

  add_method (job, "fine mic", "0.001", "0.001", "0.0005");
  bench = tm_bench_new (job, tm_recorder_memory ());
  advice = tm_bench_advice (bench);
  g_assert_cmpint (advice.kind, ==, TM_ADVICE_FINER_GAUGE);
  g_assert_cmpstr (advice.method, ==, "fine mic");
  g_assert_false (advice.pins.has_go || advice.pins.has_nogo);

  /* A plus pin of 25.000 is never below its mark, a minus pin never above. */
  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  add_pin_set (job, "P-XM", "24.900", "25.100", "X", "minus");
  advice = tm_bench_advice (bench);
  g_assert_cmpint (advice.kind, ==, TM_ADVICE_PULL_PINS);
  g_assert_true (advice.pins.proves_band);
  g_assert_cmpint (advice.pins.go_size, ==, G_GINT64_CONSTANT (25000000000));
  g_assert_cmpstr (advice.method, ==, "fine mic");
  /* The fine gauge does; then it says to read. */
  tm_bench_set_method (bench, "fine mic");
  assert_advice (bench, TM_ADVICE_READ, "mouth/12");
}

static void
try_next_pin (TmBench *bench, const char *outcome)
{
  g_autofree char *pin = tm_bench_next_pin_text (bench);
  g_autofree char *text = g_strconcat (pin, outcome, NULL);

  g_assert_cmpint (tm_bench_submit_pin (bench, text, AT, NULL), ==, TM_SUBMIT_RECORDED);
}

/* The caliper's reading is too close to call; pins prove the band; but the caliper is what counts. */
static void
test_let_pins_count (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.01", "0.02", "0.01");
  g_autoptr (TmBench) bench = NULL;
  TmFeature *bore = g_ptr_array_index (job->features, 0);

  g_ptr_array_set_size (bore->stations, 0);
  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  add_pin_set (job, "P-XM", "24.900", "25.100", "X", "minus");
  bench = tm_bench_new (job, tm_recorder_memory ());
  g_assert_cmpint (enter (bench, "25.01", 0), ==, TM_SUBMIT_RECORDED);
  stand_on (bench, job, 0, 0);
  assert_advice (bench, TM_ADVICE_PULL_PINS, "");
  try_next_pin (bench, "+");
  try_next_pin (bench, "-");
  assert_advice (bench, TM_ADVICE_COUNT_COMBINED, "");
  bore->counts = TM_COUNTS_COMBINED;
  assert_advice (bench, TM_ADVICE_NEXT, "");
}

/* Before the first reading: the gauge is overdue, or was not checked in time. */
static void
test_unfit_gauge (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.001", "0.001", "0.0005");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmGauge *gauge = tm_job_find_gauge (job, "bore mic");
  TmAdvice advice;

  gauge->due = tm_job_intern (job, "2026-05-03");
  assert_advice (bench, TM_ADVICE_READ, "mouth/12"); /* nobody has said what day it is */
  tm_bench_set_now (bench, AT);
  advice = tm_bench_advice (bench);
  g_assert_cmpint (advice.kind, ==, TM_ADVICE_STATE_REASON);
  g_assert_true (advice.gauge == gauge);
  tm_bench_set_overdue_reason (bench, "booked for Friday");
  assert_advice (bench, TM_ADVICE_READ, "mouth/12");

  gauge->due = "";
  g_assert_cmpint (tm_quantity_read ("8", TM_UNIT_HARDNESS, &job->check_hours), ==, TM_READ_OK);
  advice = tm_bench_advice (bench);
  g_assert_cmpint (advice.kind, ==, TM_ADVICE_CHECK_GAUGE);
  g_assert_true (advice.gauge == gauge);
}

static void
test_no_method (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  g_assert_cmpint (enter (bench, "25.010", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (enter (bench, "25.011", 0), ==, TM_SUBMIT_RECORDED);
  stand_on (bench, job, 0, 0);
  assert_advice (bench, TM_ADVICE_NAME_METHOD, "");
}

static void
test_done (void)
{
  g_autoptr (TmJob) job = make_job_with ("0.001", "0.001", "0.0005");
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  static const char *const texts[] = { "25.010", "25.011", "40", "p" };

  for (guint piece = 0; piece < 2; piece++)
    {
      for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
        g_assert_cmpint (enter (bench, texts[i], 0), ==, TM_SUBMIT_RECORDED);
      stand_on (bench, job, piece, 2);
      assert_advice (bench, piece == 0 ? TM_ADVICE_PIECE_DONE : TM_ADVICE_ALL_DONE, "");
      if (piece == 0)
        g_assert_true (tm_bench_go_next_unread (bench));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/advice/start", test_start);
  g_test_add_func ("/bench/advice/in-and-on", test_in_and_on);
  g_test_add_func ("/bench/advice/out", test_out);
  g_test_add_func ("/bench/advice/too-close", test_too_close);
  g_test_add_func ("/bench/advice/cannot-settle", test_cannot_settle);
  g_test_add_func ("/bench/advice/better-means", test_better_means);
  g_test_add_func ("/bench/advice/let-pins-count", test_let_pins_count);
  g_test_add_func ("/bench/advice/unfit-gauge", test_unfit_gauge);
  g_test_add_func ("/bench/advice/no-method", test_no_method);
  g_test_add_func ("/bench/advice/done", test_done);
  return g_test_run ();
}
