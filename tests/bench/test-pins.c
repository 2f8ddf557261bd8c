/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pin trials at the bench: which pin is meant, what is recorded, refused and withdrawn.  The job and
 * its sets are invented.
 */

#include <string.h>

#include "bench-fixture.h"

static TmSubmit
try_pin (TmBench *bench, const char *text)
{
  g_autoptr (GError) error = NULL;
  TmSubmit submit = tm_bench_submit_pin (bench, text, AT, &error);

  g_assert_true ((submit == TM_SUBMIT_RECORDED) == (error == NULL));
  return submit;
}

static const TmPinTrial *
last_trial (TmBench *bench)
{
  return tm_bench_newest (bench).trial;
}

/* The refusal of @text, which records nothing and loses nothing. */
static void
assert_refused (TmJob *job, TmBench *bench, const char *text, const char *part)
{
  g_autoptr (GError) error = NULL;
  guint before = job->pin_trials->len;

  tm_bench_set_text (bench, text);
  g_assert_cmpint (tm_bench_submit_pin (bench, text, AT, &error), ==, TM_SUBMIT_REFUSED);
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY);
  if (strstr (error->message, part) == NULL)
    g_error ("%s: %s", text, error->message);
  g_assert_null (strchr (error->message, '\n'));
  g_assert_cmpstr (tm_bench_text (bench), ==, text);
  g_assert_cmpuint (job->pin_trials->len, ==, before);
}

static void
test_record (void)
{
  g_autoptr (TmJob) job = make_job ();
  Keeper keeper = { 0 };
  g_autoptr (TmBench) bench = NULL;
  const TmPinTrial *trial;

  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  bench = tm_bench_new (job, make_recorder (&keeper));
  tm_bench_set_by (bench, "AB");
  tm_bench_set_text (bench, "25.002+");
  g_assert_true (tm_bench_text_is_pin (bench, "25.002+"));
  g_assert_cmpint (try_pin (bench, "25.002+"), ==, TM_SUBMIT_RECORDED);
  trial = last_trial (bench);
  g_assert_cmpstr (trial->row.id, ==, "1");
  g_assert_cmpstr (trial->row.by, ==, "AB");
  g_assert_cmpstr (trial->row.at, ==, AT);
  g_assert_cmpstr (trial->row.piece->serial, ==, "001");
  g_assert_cmpuint (trial->place, ==, 1);
  g_assert_cmpint (trial->size.count, ==, G_GINT64_CONSTANT (25002000000));
  g_assert_cmpstr (trial->pin_class, ==, "X");
  g_assert_cmpint (trial->sign, ==, TM_PIN_PLUS);
  g_assert_true (trial->went);
  g_assert_cmpstr (trial->gauge, ==, "P-XP");
  g_assert_false (trial->measured.given);
  g_assert_cmpuint (keeper.n_trials, ==, 1);
  g_assert_cmpstr (tm_bench_text (bench), ==, "");
  /* Pins are tried in pairs: the session stays. */
  assert_spot (bench, "001", "1", 1, "mouth/12");
  /* Shorthand, and a text of the session's that is not the trial stays. */
  tm_bench_set_text (bench, "25.0");
  g_assert_cmpint (try_pin (bench, "25020 n"), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (last_trial (bench)->size.count, ==, G_GINT64_CONSTANT (25020000000));
  g_assert_false (last_trial (bench)->went);
  g_assert_cmpstr (last_trial (bench)->row.id, ==, "2");
  g_assert_cmpstr (tm_bench_text (bench), ==, "25.0");
  clear_keeper (&keeper);
}

/* The set that holds the size, the finest class, or the one chosen; class and sign as written. */
static void
test_choose_set (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = NULL;
  TmPinEntry pin;

  add_pin_set (job, "P-ZM", "24.900", "25.100", "ZZ", "minus");
  add_pin_set (job, "P-XP", "24.950", "25.050", "X", "plus");
  add_pin_set (job, "P-20", "20.000", "21.000", "X", "minus");
  bench = tm_bench_new (job, tm_recorder_memory ());

  tm_bench_read_pin (bench, "25.002+", &pin);
  g_assert_true (pin.ok && pin.has_outcome && pin.went);
  g_assert_cmpstr (pin.set->tag, ==, "P-XP");
  tm_bench_read_pin (bench, "24.902", &pin); /* held by one set only */
  g_assert_true (pin.ok && !pin.has_outcome);
  g_assert_cmpstr (pin.set->tag, ==, "P-ZM");
  g_assert_cmpstr (pin.pin_class, ==, "ZZ");
  g_assert_cmpint (pin.sign, ==, TM_PIN_MINUS);
  tm_bench_read_pin (bench, "25.002 ZZ minus +", &pin);
  g_assert_cmpstr (pin.set->tag, ==, "P-ZM");
  tm_bench_set_pin_set (bench, "P-ZM");
  g_assert_cmpstr (tm_bench_pin_set (bench), ==, "P-ZM");
  tm_bench_read_pin (bench, "25.002+", &pin);
  g_assert_cmpstr (pin.set->tag, ==, "P-ZM");
  tm_bench_set_pin_set (bench, "P-20"); /* does not hold it: as if none were chosen */
  tm_bench_read_pin (bench, "25.002+", &pin);
  g_assert_cmpstr (pin.set->tag, ==, "P-XP");
  /* A pin of no set, with class and sign written. */
  tm_bench_read_pin (bench, "25.003 Y minus +", &pin);
  g_assert_true (pin.ok);
  g_assert_null (pin.set);
  g_assert_cmpstr (pin.pin_class, ==, "Y");
}

static void
test_measured (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = NULL;
  TmPinSize *own = tm_pin_size_new ();

  add_pin_set (job, "P-ZM", "24.900", "25.100", "ZZ", "minus");
  own->gauge = tm_job_intern (job, "P-ZM");
  g_assert_cmpint (tm_quantity_read ("25.002", TM_UNIT_MM, &own->size), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("25.0008", TM_UNIT_MM, &own->measured), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_pin_size (job, own), ==, TM_ADD_OK);
  bench = tm_bench_new (job, tm_recorder_memory ());
  g_assert_cmpint (try_pin (bench, "25.002+"), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (last_trial (bench)->measured.count, ==, G_GINT64_CONSTANT (25000800000));
  g_assert_cmpint (try_pin (bench, "25.004+"), ==, TM_SUBMIT_RECORDED);
  g_assert_false (last_trial (bench)->measured.given);
}

static void
test_refused (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = NULL;

  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  add_pin_set (job, "P-XM", "24.900", "25.100", "X", "minus");
  add_pin_set (job, "P-NO", "26.000", "26.100", "", "");
  bench = tm_bench_new (job, tm_recorder_memory ());
  assert_refused (job, bench, "25.003 X plus", "say whether the pin went");
  assert_refused (job, bench, "25.003+", "no pin set of this job holds 25.003");
  assert_refused (job, bench, "26.002 X+", "class and sign");
  assert_refused (job, bench, "25.002+", "P-XP and P-XM both hold 25.002");
  assert_refused (job, bench, "25,0q+", "25,0q");
  assert_refused (job, bench, "+", "type the pin's size");
  assert_refused (job, bench, "\xff+", "Feature 1");
  tm_bench_go (bench, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 1), 1, "");
  g_assert_false (tm_bench_text_is_pin (bench, "40.002+"));
  assert_refused (job, bench, "40.002 X plus +", "bores alone");
}

static void
test_recorder_fails (void)
{
  g_autoptr (TmJob) job = make_job ();
  Keeper keeper = { .failing = TRUE };
  g_autoptr (TmBench) bench = NULL;
  g_autoptr (GError) error = NULL;

  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  bench = tm_bench_new (job, make_recorder (&keeper));
  tm_bench_set_text (bench, "25.002+");
  g_assert_cmpint (tm_bench_submit_pin (bench, "25.002+", AT, &error), ==, TM_SUBMIT_FAILED);
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE);
  g_assert_cmpuint (job->pin_trials->len, ==, 0);
  g_assert_cmpstr (tm_bench_text (bench), ==, "25.002+");
  keeper.failing = FALSE;
  g_assert_cmpint (try_pin (bench, "25.002+"), ==, TM_SUBMIT_RECORDED);
  keeper.failing = TRUE;
  g_assert_false (tm_bench_withdraw_pin (bench, last_trial (bench), "chip", AT, NULL));
  g_assert_true (tm_row_counts (&last_trial (bench)->row));
  clear_keeper (&keeper);
}

/* What is taken back first is what was recorded last, of readings and trials alike. */
static void
test_withdraw (void)
{
  g_autoptr (TmJob) job = make_job ();
  Keeper keeper = { 0 };
  g_autoptr (TmBench) bench = NULL;
  g_autoptr (GError) error = NULL;
  TmBenchFact fact;

  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  bench = tm_bench_new (job, make_recorder (&keeper));
  tm_bench_set_by (bench, "AB");
  g_assert_null (tm_bench_newest (bench).trial);
  g_assert_cmpint (enter (bench, "25.012", 0), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpint (try_pin (bench, "25.002+"), ==, TM_SUBMIT_RECORDED);
  fact = tm_bench_newest (bench);
  g_assert_nonnull (fact.trial);
  g_assert_null (fact.reading);
  g_assert_nonnull (tm_bench_last (bench));

  g_assert_false (tm_bench_withdraw_pin (bench, fact.trial, " ", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_REASON);
  g_clear_error (&error);
  g_assert_true (tm_bench_withdraw_pin (bench, fact.trial, "burr at the mouth", AT, &error));
  g_assert_cmpstr (fact.trial->row.withdrawn->reason, ==, "burr at the mouth");
  g_assert_cmpstr (fact.trial->row.withdrawn->by, ==, "AB");
  g_assert_cmpuint (keeper.n_withdrawals, ==, 1);
  g_assert_false (tm_bench_withdraw_pin (bench, fact.trial, "twice", AT, &error));
  g_assert_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET);
  g_assert_true (tm_bench_newest (bench).reading == tm_bench_last (bench));
  clear_keeper (&keeper);
}

/* A bore without stations is measured when pins were tried from both sides. */
static void
test_pins_measure (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = NULL;
  TmFeature *bore = add_feature (job, "7", TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");
  TmPiece *piece = g_ptr_array_index (job->pieces, 0);
  guint due, before, after;

  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  bench = tm_bench_new (job, tm_recorder_memory ());
  g_assert_true (tm_bench_go (bench, piece, bore, 1, ""));
  tm_bench_count (bench, piece, &due, &before);
  g_assert_cmpint (try_pin (bench, "25.000+"), ==, TM_SUBMIT_RECORDED);
  tm_bench_count (bench, piece, &due, &after);
  g_assert_cmpuint (after, ==, before);
  g_assert_cmpint (try_pin (bench, "25.020-"), ==, TM_SUBMIT_RECORDED);
  tm_bench_count (bench, piece, &due, &after);
  g_assert_cmpuint (after, ==, before + 1);
  g_assert_true (tm_bench_withdraw_pin (bench, last_trial (bench), "burr", AT, NULL));
  tm_bench_count (bench, piece, &due, &after);
  g_assert_cmpuint (after, ==, before);
}

/* The plan's go pin first, then its no-go pin, then nothing more to try. */
static void
test_next_pin (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = NULL;
  g_autofree char *first = NULL, *second = NULL, *none = NULL, *typed = NULL;
  TmPinPlan plan;

  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  add_pin_set (job, "P-XM", "24.900", "25.100", "X", "minus");
  bench = tm_bench_new (job, tm_recorder_memory ());
  tm_bench_pin_plan (bench, &plan);
  g_assert_true (plan.has_go && plan.has_nogo && plan.proves_band);
  g_assert_true (tm_bench_next_pin (bench).go);
  first = tm_bench_next_pin_text (bench);
  g_assert_cmpstr (first, ==, "25.000 X plus"); /* a plus pin is never below its mark */
  typed = g_strconcat (first, "+", NULL);
  g_assert_cmpint (try_pin (bench, typed), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (last_trial (bench)->gauge, ==, "P-XP");
  g_assert_false (tm_bench_next_pin (bench).go);
  second = tm_bench_next_pin_text (bench);
  /* A minus pin of 25.020 is at most 25.020, and with the micrometre it needs to enter 25.021. */
  g_assert_cmpstr (second, ==, "25.020 X minus");
  g_free (typed);
  typed = g_strconcat (second, "-", NULL);
  g_assert_cmpint (try_pin (bench, typed), ==, TM_SUBMIT_RECORDED);
  g_assert_cmpstr (last_trial (bench)->gauge, ==, "P-XM");
  g_assert_false (tm_bench_next_pin (bench).given);
  none = tm_bench_next_pin_text (bench);
  g_assert_cmpstr (none, ==, "");
}

/* A go pin that does not go leaves nothing for the larger one to say. */
static void
test_go_stops (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = NULL;

  add_pin_set (job, "P-XP", "24.900", "25.100", "X", "plus");
  add_pin_set (job, "P-XM", "24.900", "25.100", "X", "minus");
  bench = tm_bench_new (job, tm_recorder_memory ());
  g_assert_cmpint (try_pin (bench, "25.000 X plus -"), ==, TM_SUBMIT_RECORDED);
  g_assert_false (tm_bench_next_pin (bench).given);
  g_assert_true (tm_bench_withdraw_pin (bench, last_trial (bench), "burr", AT, NULL));
  g_assert_true (tm_bench_next_pin (bench).go);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/pins/record", test_record);
  g_test_add_func ("/bench/pins/choose-set", test_choose_set);
  g_test_add_func ("/bench/pins/measured", test_measured);
  g_test_add_func ("/bench/pins/refused", test_refused);
  g_test_add_func ("/bench/pins/recorder-fails", test_recorder_fails);
  g_test_add_func ("/bench/pins/withdraw", test_withdraw);
  g_test_add_func ("/bench/pins/pins-measure", test_pins_measure);
  g_test_add_func ("/bench/pins/next-pin", test_next_pin);
  g_test_add_func ("/bench/pins/go-stops", test_go_stops);
  return g_test_run ();
}
