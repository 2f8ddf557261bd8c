/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was read before a rework or repair is the first result: it stands, and judges no longer.
 */

#include "judge-support.h"

#include "core-first-result.h"
#include "core-judge.h"

/* A bore that is 10 µm too small, read three times: invented. */
static TmJob *
make_reworked_job (void)
{
  TmJob *job = make_job (TM_DECISION_SIMPLE);

  add_gauge (job, "G1", NULL, "0.001");
  add_method (job, "micrometer", "G1", "0.0005", NULL);
  add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "micrometer");
  return job;
}

static TmReading *
read_bore (TmJob *job, const char *value, const char *at, const char *replaces)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = first_piece (job);
  reading->row.feature = tm_job_find_feature (job, "1");
  reading->row.at = tm_job_intern (job, at);
  reading->row.replaces = tm_job_intern (job, replaces);
  reading->row.reason = tm_job_intern (job, *replaces != '\0' ? "misread" : "");
  reading->value = quantity (value, TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

static TmNonconformance *
raise_row (TmJob *job, const char *rework_at, const char *after)
{
  TmNonconformance *row = tm_nonconformance_new ();

  row->piece = first_piece (job)->serial;
  row->feature = "1";
  row->disposition = "rework";
  row->rework_at = tm_job_intern (job, rework_at);
  row->rework_after = tm_job_intern (job, after);
  tm_job_add_nonconformance (job, row);
  return row;
}

static TmVerdict
find_verdict (const TmJob *job)
{
  TmJudgement judgement;
  TmVerdict verdict;

  tm_judge (job, first_piece (job), tm_job_find_feature (job, "1"), 1, &judgement);
  verdict = judgement.verdict;
  tm_judgement_clear (&judgement);
  return verdict;
}

static void
test_first_result_stays (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  TmReading *before = read_bore (job, "24.990", "2026-05-04T09:00:00Z", "");
  TmNonconformance *row = raise_row (job, "", "");
  TmReading *after;

  /* Raised, not reworked: it is out. */
  g_assert_cmpint (find_verdict (job), ==, TM_VERDICT_OUT);
  row->rework_at = "2026-05-04T10:00:00Z";
  row->rework_after = before->row.id;
  tm_job_mark_rework (job, row);
  g_assert_true (before->row.before_rework);
  g_assert_true (tm_row_stands (&before->row));
  g_assert_false (tm_row_counts (&before->row));
  g_assert_cmpint (find_verdict (job), ==, TM_VERDICT_NOT_MEASURED);
  /* The clock of the bench PC may be wrong: the order of the record decides. */
  after = read_bore (job, "25.010", "2026-05-04T08:00:00Z", "");
  g_assert_true (tm_row_counts (&after->row));
  g_assert_cmpint (find_verdict (job), ==, TM_VERDICT_IN);
  /* The rework is taken back. */
  row->rework_at = row->rework_after = "";
  tm_job_mark_rework (job, row);
  g_assert_true (tm_row_counts (&before->row));
}

/* A correction of the first result is about the size before the rework. */
static void
test_correction (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  TmReading *before = read_bore (job, "24.990", "2026-05-04T09:00:00Z", "");
  TmReading *corrected;

  raise_row (job, "2026-05-04T10:00:00Z", before->row.id);
  corrected = read_bore (job, "24.980", "2026-05-04T11:00:00Z", before->row.id);
  g_assert_true (corrected->row.before_rework);
  g_assert_cmpint (find_verdict (job), ==, TM_VERDICT_NOT_MEASURED);
}

typedef struct {
  const char *rework_at, *after, *read_at;
  gboolean before;
} ByTime;

static void
test_by_time (void)
{
  static const ByTime cases[] = {
    { "2026-05-04T10:00:00Z", "", "2026-05-04T09:59:59Z", TRUE },
    { "2026-05-04T10:00:00Z", "", "2026-05-04T10:00:00Z", TRUE },
    { "2026-05-04T10:00:00Z", "", "2026-05-04T10:00:01Z", FALSE },
    /* No time: nothing is claimed of a size that may have been worked on. */
    { "2026-05-04T10:00:00Z", "", "", TRUE },
    { "2026-05-04T10:00:00Z", "none", "2026-05-04T09:00:00Z", FALSE },
    /* Names a reading that is not there: the time decides. */
    { "2026-05-04T10:00:00Z", "77", "2026-05-04T09:00:00Z", TRUE },
    { "", "", "2026-05-04T09:00:00Z", FALSE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_reworked_job ();
      g_autoptr (TmJob) other = make_reworked_job ();
      const TmReading *reading = read_bore (job, "24.990", cases[i].read_at, "");

      g_test_message ("case %" G_GSIZE_FORMAT, i);
      raise_row (job, cases[i].rework_at, cases[i].after);
      g_assert_cmpint (reading->row.before_rework, ==, cases[i].before);
      /* The same when the rework is known first. */
      raise_row (other, cases[i].rework_at, cases[i].after);
      reading = read_bore (other, "24.990", cases[i].read_at, "");
      g_assert_cmpint (reading->row.before_rework, ==, cases[i].before);
    }
}

/* Other pieces, other features and other places are left alone. */
static void
test_elsewhere (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  TmFeature *two = add_feature (job, "2", TM_KIND_BORE, "25.000", "25.021", "micrometer");
  TmReading *of_two;
  TmReading *of_one = read_bore (job, "24.990", "", "");
  TmNonconformance *row = raise_row (job, "2026-05-04T10:00:00Z", of_one->row.id);

  of_two = tm_reading_new ();
  of_two->row.piece = first_piece (job);
  of_two->row.feature = two;
  of_two->value = quantity ("25.001", TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_reading (job, of_two), ==, TM_ADD_OK);
  g_assert_false (of_two->row.before_rework);
  row->place = 2;
  tm_job_mark_rework (job, row);
  g_assert_false (of_one->row.before_rework);
  row->place = 1;
  tm_job_mark_rework (job, row);
  g_assert_true (of_one->row.before_rework);
}

/* A pin that did not go in before the bore was opened says nothing of it now. */
static void
test_pins (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = tm_job_find_feature (job, "1");
  trial->row.at = "2026-05-04T09:00:00Z";
  trial->size = quantity ("25.000", TM_UNIT_MM);
  trial->pin_class = "X";
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  raise_row (job, "2026-05-04T10:00:00Z", "none");
  g_assert_true (trial->row.before_rework);
  g_assert_false (tm_row_counts (&trial->row));
}

/* -------- The first result -------- */

static void
assert_first_result (const TmJob *job, TmVerdict verdict, const char *size, const TmNonconformance *rework)
{
  g_auto (TmFirstResult) first = { 0 };
  g_autofree char *text = NULL;

  g_assert_true (tm_first_result (job, first_piece (job), tm_job_find_feature (job, "1"), 1, &first));
  text = tm_judgement_size_text (&first.judgement);
  g_assert_cmpint (first.judgement.verdict, ==, verdict);
  g_assert_cmpstr (text, ==, size);
  g_assert_true (first.rework == rework);
}

static void
assert_no_first_result (const TmJob *job)
{
  g_auto (TmFirstResult) first = { 0 };

  g_assert_false (tm_first_result (job, first_piece (job), tm_job_find_feature (job, "1"), 1, &first));
  g_assert_null (first.rework);
}

static void
test_first_result_is_told (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  const TmReading *before = read_bore (job, "24.990", "2026-05-04T09:00:00Z", "");
  const TmNonconformance *row;

  assert_no_first_result (job);
  row = raise_row (job, "2026-05-04T10:00:00Z", before->row.id);
  tm_job_mark_rework (job, row);
  assert_first_result (job, TM_VERDICT_OUT, "24.990", row);
  read_bore (job, "25.010", "2026-05-04T11:00:00Z", "");
  assert_first_result (job, TM_VERDICT_OUT, "24.990", row);
  /* The job itself is as it was. */
  g_assert_true (before->row.before_rework);
  g_assert_cmpint (find_verdict (job), ==, TM_VERDICT_IN);
}

/* Twice reworked: it is the state before the last one. */
static void
test_first_result_of_two (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  const TmReading *first = read_bore (job, "24.980", "2026-05-04T09:00:00Z", "");
  const TmReading *second;
  const TmNonconformance *row = raise_row (job, "2026-05-04T10:00:00Z", first->row.id);

  tm_job_mark_rework (job, row);
  second = read_bore (job, "24.995", "2026-05-04T11:00:00Z", "");
  assert_first_result (job, TM_VERDICT_OUT, "24.980", row);
  row = raise_row (job, "2026-05-04T12:00:00Z", second->row.id);
  tm_job_mark_rework (job, row);
  assert_first_result (job, TM_VERDICT_OUT, "24.995", row);
  /* A correction is as old as what it corrects. */
  read_bore (job, "24.981", "2026-05-04T13:00:00Z", first->row.id);
  assert_first_result (job, TM_VERDICT_OUT, "24.995", row);
  read_bore (job, "24.996", "2026-05-04T13:00:00Z", second->row.id);
  assert_first_result (job, TM_VERDICT_OUT, "24.996", row);
}

static void
cut_after (TmJob *job, const TmReading *reading)
{
  TmCutRow *cut = tm_cut_row_new ();

  cut->row.piece = first_piece (job);
  cut->row.feature = tm_job_find_feature (job, "1");
  cut->dialled = quantity ("0.005", TM_UNIT_MM);
  cut->after = reading->row.id;
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
}

/* What was read before a cut is no first result; the cut of the rework itself takes nothing away. */
static void
test_first_result_and_cuts (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  const TmReading *roughed = read_bore (job, "24.970", "2026-05-04T08:00:00Z", "");
  const TmReading *finished;
  const TmNonconformance *row;

  cut_after (job, roughed);
  finished = read_bore (job, "24.990", "2026-05-04T09:00:00Z", "");
  row = raise_row (job, "2026-05-04T10:00:00Z", finished->row.id);
  tm_job_mark_rework (job, row);
  assert_first_result (job, TM_VERDICT_OUT, "24.990", row);
  cut_after (job, finished);
  assert_first_result (job, TM_VERDICT_OUT, "24.990", row);
  read_bore (job, "24.971", "2026-05-04T13:00:00Z", roughed->row.id);
  assert_first_result (job, TM_VERDICT_OUT, "24.990", row);
}

/* One place of two, and a withdrawn reading. */
static void
test_no_first_result (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  TmReading *reading = read_bore (job, "24.990", "2026-05-04T09:00:00Z", "");
  TmNonconformance *row = raise_row (job, "2026-05-04T10:00:00Z", reading->row.id);

  row->place = 2;
  tm_job_mark_rework (job, row);
  assert_no_first_result (job);
  row->place = 1;
  tm_job_mark_rework (job, row);
  assert_first_result (job, TM_VERDICT_OUT, "24.990", row);
  g_assert_cmpint (tm_job_withdraw (job, &reading->row, "AB", "2026-05-04T12:00:00Z", "wrong bore"), ==,
                   TM_ADD_OK);
  assert_no_first_result (job);
}

static void
test_nonconformance_at (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  const TmPiece *piece = first_piece (job);
  const TmFeature *feature = tm_job_find_feature (job, "1");
  TmNonconformance *all = raise_row (job, "", ""), *second = raise_row (job, "", "");

  g_assert_true (tm_job_nonconformance_at (job, piece, feature, 1) == second);
  second->place = 2;
  g_assert_true (tm_job_nonconformance_at (job, piece, feature, 1) == all);
  g_assert_true (tm_job_nonconformance_at (job, piece, feature, 2) == second);
  all->piece = "002";
  g_assert_null (tm_job_nonconformance_at (job, piece, feature, 1));
}

static void
test_what_is_asked (void)
{
  g_autoptr (TmJob) job = make_reworked_job ();
  TmFeature *two = add_feature (job, "2", TM_KIND_BORE, "25.000", "25.021", "micrometer");
  TmFeature *one = tm_job_find_feature (job, "1");

  two->affected = TRUE;
  g_assert_true (tm_job_feature_is_asked (job, one));
  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  g_assert_false (tm_job_feature_is_asked (job, one));
  g_assert_true (tm_job_feature_is_asked (job, two));
  /* Partial with nothing marked: nobody has said what may be left out. */
  two->affected = FALSE;
  g_assert_true (tm_job_feature_is_asked (job, one));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rework/first-result-stays", test_first_result_stays);
  g_test_add_func ("/rework/correction", test_correction);
  g_test_add_func ("/rework/by-time", test_by_time);
  g_test_add_func ("/rework/elsewhere", test_elsewhere);
  g_test_add_func ("/rework/pins", test_pins);
  g_test_add_func ("/rework/first-result/told", test_first_result_is_told);
  g_test_add_func ("/rework/first-result/two", test_first_result_of_two);
  g_test_add_func ("/rework/first-result/cuts", test_first_result_and_cuts);
  g_test_add_func ("/rework/first-result/none", test_no_first_result);
  g_test_add_func ("/rework/nonconformance-at", test_nonconformance_at);
  g_test_add_func ("/rework/what-is-asked", test_what_is_asked);
  return g_test_run ();
}
