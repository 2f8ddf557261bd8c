/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-recall.h"

#include "judge-support.h"

static TmReading *
take (TmJob *job, const char *balloon, const char *method, const char *value, const char *at)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = first_piece (job);
  reading->row.feature = tm_job_find_feature (job, balloon);
  reading->row.at = tm_job_intern (job, at);
  reading->place = 1;
  reading->method = tm_job_intern (job, method);
  reading->value = quantity (value, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

static void
try_pin (TmJob *job, const char *balloon, const char *set, const char *size, gboolean went, const char *at)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = tm_job_find_feature (job, balloon);
  trial->row.at = tm_job_intern (job, at);
  trial->place = 1;
  trial->gauge = tm_job_intern (job, set);
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = "ZZ";
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
}

/* An invented job: M-1 alone and under a telescoping gauge, M-2 apart, a pin set. */
static TmJob *
make_recall_job (void)
{
  TmJob *job = make_job (TM_DECISION_GUARDED);

  add_gauge (job, "M-1", "0.001", "0.001");
  add_gauge (job, "M-2", "0.001", "0.001");
  add_gauge (job, "T-1", NULL, NULL);
  add_gauge (job, "P-1", NULL, NULL);
  add_method (job, "telescoping", "T-1,M-1", "0.001", "30");
  add_method (job, "other", "M-2", "0.001", "30");
  add_feature (job, "1", TM_KIND_BORE, "25.000", "25.020", "telescoping");
  add_feature (job, "2", TM_KIND_LENGTH, "9.900", "10.100", "other");
  return job;
}

static const TmRecallRow *
row_at (GArray *rows, guint i)
{
  g_assert_cmpuint (i, <, rows->len);
  return &g_array_index (rows, TmRecallRow, i);
}

static void
test_uses (void)
{
  g_autoptr (TmJob) job = make_recall_job ();

  g_assert_true (tm_method_uses_gauge (job, "telescoping", "M-1"));
  g_assert_true (tm_method_uses_gauge (job, "telescoping", "T-1"));
  g_assert_false (tm_method_uses_gauge (job, "telescoping", "M-2"));
  g_assert_true (tm_method_uses_gauge (job, "M-1", "M-1"));
  g_assert_false (tm_method_uses_gauge (job, "M-2", "M-1"));
  g_assert_false (tm_method_uses_gauge (job, "", "M-1"));
  g_assert_false (tm_method_uses_gauge (job, NULL, "M-1"));
}

/* Taken in: alone, by its method, by the feature's method, from the day after, without a time.  Left
 * out: by another gauge, up to and on the last good day, corrected and withdrawn. */
static void
test_list (void)
{
  g_autoptr (TmJob) job = make_recall_job ();
  g_autoptr (GArray) rows = NULL;
  TmReading *corrected, *correction, *withdrawn, *first, *bare, *untimed, *alone;

  take (job, "1", "", "25.010", "2026-05-04T23:59:59Z");
  first = take (job, "1", "", "25.010", "2026-05-05T00:00:00Z");
  bare = take (job, "2", "M-1", "10.000", "2026-05-06T08:00:00Z");
  take (job, "2", "", "10.000", "2026-05-06T08:00:00Z");
  untimed = take (job, "1", "telescoping", "25.011", "");
  corrected = take (job, "1", "", "25.110", "2026-05-06T09:00:00Z");
  correction = tm_reading_new ();
  *correction = *corrected;
  correction->row.id = "";
  correction->row.replaces = corrected->row.id;
  correction->row.reason = "slip";
  correction->value = quantity ("25.011", TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_reading (job, correction), ==, TM_ADD_OK);
  withdrawn = take (job, "1", "", "25.010", "2026-05-06T10:00:00Z");
  g_assert_cmpint (tm_job_withdraw (job, &withdrawn->row, "", "", "chip"), ==, TM_ADD_OK);
  alone = take (job, "1", "M-1", "25.010", "2026-05-07T10:00:00Z");

  rows = tm_recall (job, "M-1", "2026-05-04", NULL);
  g_assert_cmpuint (rows->len, ==, 5);
  g_assert_true (row_at (rows, 0)->reading == first);
  g_assert_true (row_at (rows, 1)->reading == bare);
  g_assert_true (row_at (rows, 2)->reading == untimed);
  g_assert_true (row_at (rows, 3)->reading == correction);
  g_assert_true (row_at (rows, 4)->reading == alone);
  for (guint i = 0; i < rows->len; i++)
    {
      g_assert_null (row_at (rows, i)->trial);
      g_assert_cmpint (row_at (rows, i)->before, ==, TM_VERDICT_IN);
      g_assert_cmpint (row_at (rows, i)->after, ==, TM_VERDICT_IN);
    }
  g_clear_pointer (&rows, g_array_unref);

  /* Nobody knows when it was last good: everything. */
  rows = tm_recall (job, "M-1", "", NULL);
  g_assert_cmpuint (rows->len, ==, 6);
}

static void
test_pins (void)
{
  g_autoptr (TmJob) job = make_recall_job ();
  g_autoptr (GArray) rows = NULL;

  try_pin (job, "1", "P-1", "25.00", TRUE, "2026-05-05T08:00:00Z");
  try_pin (job, "1", "", "25.02", FALSE, "2026-05-05T08:01:00Z");
  try_pin (job, "1", "P-1", "25.02", FALSE, "2026-05-01T08:01:00Z");
  rows = tm_recall (job, "P-1", "2026-05-04", NULL);
  g_assert_cmpuint (rows->len, ==, 1);
  g_assert_null (row_at (rows, 0)->reading);
  g_assert_true (row_at (rows, 0)->trial->went);
}

/* Shown less true is -0.010: the bore that read 25.017 is 25.027, beyond 25.020 by more than its guard of
 * about 0.003 (u from 0.001 twice); a length that read 10.000 is 10.010, within 9.9 to 10.1 all the same. */
static void
test_error (void)
{
  g_autoptr (TmJob) job = make_recall_job ();
  TmQuantity error = quantity ("-0.010", TM_UNIT_MM);
  TmQuantity angle = quantity ("1", TM_UNIT_DEGREE);
  g_autoptr (GArray) rows = NULL;

  take (job, "1", "", "25.017", "2026-05-05T00:00:00Z");
  take (job, "2", "M-1", "10.000", "2026-05-06T08:00:00Z");
  rows = tm_recall (job, "M-1", "2026-05-04", &error);
  g_assert_cmpuint (rows->len, ==, 2);
  g_assert_cmpint (row_at (rows, 0)->before, ==, TM_VERDICT_IN);
  g_assert_cmpint (row_at (rows, 0)->after, ==, TM_VERDICT_OUT);
  g_assert_cmpint (row_at (rows, 0)->side_after, ==, TM_SIDE_METAL_GONE);
  g_assert_cmpint (row_at (rows, 1)->before, ==, TM_VERDICT_IN);
  g_assert_cmpint (row_at (rows, 1)->after, ==, TM_VERDICT_IN);
  g_clear_pointer (&rows, g_array_unref);

  /* An error that is none of a length changes nothing. */
  rows = tm_recall (job, "M-1", "2026-05-04", &angle);
  g_assert_cmpint (row_at (rows, 0)->after, ==, TM_VERDICT_IN);
}

/* A set that is 0.010 smaller than marked: its 25.009, of class ZZ minus at least 25.0009, was at least
 * 24.9909, so that the lower limit is proven no more. */
static void
test_error_of_pins (void)
{
  g_autoptr (TmJob) job = make_recall_job ();
  TmQuantity error = quantity ("0.010", TM_UNIT_MM);
  g_autoptr (GArray) rows = NULL;

  try_pin (job, "1", "P-1", "25.009", TRUE, "2026-05-05T08:00:00Z");
  try_pin (job, "1", "P-1", "25.015", FALSE, "2026-05-05T08:01:00Z");
  rows = tm_recall (job, "P-1", "2026-05-04", &error);
  g_assert_cmpuint (rows->len, ==, 2);
  g_assert_cmpint (row_at (rows, 0)->before, ==, TM_VERDICT_IN);
  g_assert_cmpint (row_at (rows, 0)->after, ==, TM_VERDICT_TOO_CLOSE);
}

/* A place read on both sides of the last good day: only what came after has the error, and the mean of
 * 25.017 and 25.025 is 25.021: no longer proven in. */
static void
test_error_since (void)
{
  g_autoptr (TmJob) job = make_recall_job ();
  TmQuantity error = quantity ("-0.008", TM_UNIT_MM);
  g_autoptr (GArray) rows = NULL;

  take (job, "1", "", "25.017", "2026-02-28T23:59:59Z");
  take (job, "1", "", "25.017", "2026-03-01T00:00:00Z");
  rows = tm_recall (job, "M-1", "2026-02-28", &error);
  g_assert_cmpuint (rows->len, ==, 1);
  g_assert_cmpint (row_at (rows, 0)->before, ==, TM_VERDICT_IN);
  g_assert_cmpint (row_at (rows, 0)->after, ==, TM_VERDICT_TOO_CLOSE);
}

/* Two readings at one place rest on one verdict; that of the other feature stays. */
static void
test_count (void)
{
  g_autoptr (TmJob) job = make_recall_job ();
  g_autoptr (GArray) rows = NULL;
  TmQuantity error = quantity ("-0.010", TM_UNIT_MM);

  take (job, "1", "M-1", "25.015", "2026-05-04T09:00:00Z");
  take (job, "1", "M-1", "25.015", "2026-05-04T09:01:00Z");
  take (job, "2", "M-1", "10.000", "2026-05-04T09:02:00Z");
  rows = tm_recall (job, "M-1", "2026-05-01", &error);
  g_assert_cmpuint (rows->len, ==, 3);
  g_assert_true (tm_recall_changes (row_at (rows, 0)));
  g_assert_true (tm_recall_changes (row_at (rows, 1)));
  g_assert_false (tm_recall_changes (row_at (rows, 2)));
  g_assert_cmpuint (tm_recall_count_changes (rows), ==, 1);
}

static void
test_nothing (void)
{
  g_autoptr (TmJob) job = make_recall_job ();
  g_autoptr (GArray) rows = tm_recall (job, "M-1", "2026-05-04", NULL);

  g_assert_cmpuint (rows->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/recall/uses", test_uses);
  g_test_add_func ("/recall/list", test_list);
  g_test_add_func ("/recall/pins", test_pins);
  g_test_add_func ("/recall/error", test_error);
  g_test_add_func ("/recall/error-of-pins", test_error_of_pins);
  g_test_add_func ("/recall/error-since", test_error_since);
  g_test_add_func ("/recall/count", test_count);
  g_test_add_func ("/recall/nothing", test_nothing);
  return g_test_run ();
}
