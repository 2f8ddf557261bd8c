/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a batch says, in words: of invented sizes, few and many, steady, drifting, shifted and out; and the
 * part of a job that it is worked out from.
 */

#include <math.h>
#include <string.h>

#include "app-batch-copy.h"
#include "app-batch-words.h"
#include "ui-fixture.h"

#define assert_words(call, expected)          \
  G_STMT_START                                \
  {                                           \
    g_autofree char *words_ = (call);         \
    g_assert_cmpstr (words_, ==, (expected)); \
  }                                           \
  G_STMT_END

static TmReading *
add_reading (TmJob *job, const char *serial, TmFeature *feature, double mm)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = tm_job_find_piece (job, serial);
  reading->row.feature = feature;
  reading->place = 1;
  reading->value = tm_quantity_new ((gint64)llround (mm * 1e6) * 1000, TM_UNIT_MM, 4);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

/* A bore of 25.000 to 25.021 with these sizes, in mm over 25; NAN: not measured. */
static TmJob *
make_job (const double *over, guint n)
{
  TmJob *job = tm_job_new ();
  TmFeature *feature;

  job->part_number = tm_job_intern (job, "WORDS-1");
  job->unit = TM_UNIT_MM;
  ui_add_gauge (job);
  feature = ui_add_feature (job, "1", "Ø25 H7", "BM-2");
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *serial = g_strdup_printf ("%03u", i + 1);

      ui_add_piece (job, serial);
      if (!isnan (over[i]))
        add_reading (job, serial, feature, 25 + over[i]);
    }
  return job;
}

static void
add_event (TmJob *job, const char *before, const char *kind, const char *note)
{
  TmEvent *event = tm_event_new ();

  event->before_piece = tm_job_intern (job, before);
  event->kind = tm_job_intern (job, kind);
  event->note = tm_job_intern (job, note);
  tm_job_add_event (job, event);
}

/* Every text there is: none may hold what no person reads. */
static void
check_all_words (const TmBatch *batch)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);

  g_ptr_array_add (texts, tm_words_batch_headline (batch));
  g_ptr_array_add (texts, tm_words_batch_since (batch));
  g_ptr_array_add (texts, tm_words_batch_forecast (batch));
  g_ptr_array_add (texts, tm_words_batch_forecast_range (batch));
  g_ptr_array_add (texts, tm_words_batch_same_tool (batch));
  for (guint i = 0; i < TM_N_BATCH_SAYS; i++)
    g_ptr_array_add (texts, tm_words_batch_says (batch, (TmBatchSays)i));
  for (guint i = 0; i < batch->series.n_points; i++)
    g_ptr_array_add (texts, tm_words_batch_piece (batch, i));
  for (guint i = 0; i < texts->len; i++)
    {
      g_autofree char *lower = g_ascii_strdown (g_ptr_array_index (texts, i), -1);

      g_assert_null (strstr (lower, "nan"));
      g_assert_null (strstr (lower, "inf"));
      g_assert_null (strstr (lower, "922337"));
    }
  g_assert_cmpstr (g_ptr_array_index (texts, 0), !=, "");
}

static void
init_batch (TmBatch *batch, const TmJob *job)
{
  g_assert_true (tm_batch_init (batch, job, g_ptr_array_index (job->features, 0), 1, NULL, NULL, NULL));
  check_all_words (batch);
}

static void
test_few (void)
{
  static const double three[] = { 0.004, 0.006, 0.005 };
  static const double gap[] = { NAN, 0.006, NAN };

  for (guint n = 0; n <= 3; n++)
    {
      g_autoptr (TmJob) job = make_job (n == 0 ? gap : three, n == 0 ? 1 : n);
      g_auto (TmBatch) batch = { 0 };

      init_batch (&batch, job);
      assert_words (tm_words_batch_headline (&batch), n == 0 ? "Not measured" : "Too few to tell");
      assert_words (tm_words_batch_forecast (&batch), "");
      if (n == 1)
        assert_words (tm_words_batch_since (&batch),
                      "1 piece measured; four are the least that a drift is looked for in");
    }
  g_autoptr (TmJob) job = make_job (gap, 3);
  g_auto (TmBatch) batch = { 0 };
  init_batch (&batch, job);
  assert_words (tm_words_batch_headline (&batch), "Too few to tell");
  assert_words (tm_words_batch_piece (&batch, 0), "Piece 001: not measured");
  assert_words (tm_words_batch_piece (&batch, 1), "Piece 002: 25.0060 mm, in");
}

static void
test_equal (void)
{
  double over[12];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.010;
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) batch = { 0 };
  init_batch (&batch, job);
  assert_words (tm_words_batch_headline (&batch), "Steady");
  assert_words (tm_words_batch_forecast (&batch), "No drift shown");
  assert_words (tm_words_batch_says (&batch, TM_BATCH_SAYS_SLOPE), "none: all sizes are equal");
  assert_words (tm_words_batch_says (&batch, TM_BATCH_SAYS_CAPABILITY),
                "refused: all sizes are equal; the gauge shows no spread");
}

/* Deviations of no particular order, in mm. */
static const double noise[]
    = { 0.0004, -0.0007, 0.0002, 0.0009, -0.0003, -0.0006, 0.0005, 0.0001, -0.0008, 0.0003 };

static void
test_drift (void)
{
  double over[34];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.003 + (i < 12 ? 0 : (i - 12) * 0.00034) + noise[i % G_N_ELEMENTS (noise)];
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) batch = { 0 };
  add_event (job, "013", "tool", "new insert");
  init_batch (&batch, job);
  assert_words (tm_words_batch_headline (&batch), "Drifting larger");
  assert_words (tm_words_batch_since (&batch), "since piece 013: new insert");
  g_autofree char *forecast = tm_words_batch_forecast (&batch);
  g_autofree char *range = tm_words_batch_forecast_range (&batch);
  g_autofree char *slope = tm_words_batch_says (&batch, TM_BATCH_SAYS_SLOPE);
  /* 0.34 µm a piece from 10.2 µm over 25 at piece 34 to the limit of 21 µm less the guard: 20 to 32 pieces.
   */
  guint n = (guint)g_ascii_strtoull (forecast + strlen ("About "), NULL, 10);
  g_assert_true (g_str_has_prefix (forecast, "About "));
  g_assert_cmpuint (n, >=, 20);
  g_assert_cmpuint (n, <=, 32);
  g_assert_nonnull (strstr (range, "until the mean meets the guard"));
  g_assert_nonnull (strstr (range, "A single piece may meet it in about "));
  g_assert_true (g_str_has_prefix (slope, "+0.3"));
  g_assert_nonnull (strstr (slope, " µm a piece ("));
  g_assert_nonnull (strstr (slope, "under 0.001"));

  /* A tool changed after the last piece: nothing is known of it yet. */
  g_auto (TmBatch) fresh = { 0 };
  add_event (job, "", "tool", "");
  init_batch (&fresh, job);
  assert_words (tm_words_batch_headline (&fresh), "Too few to tell");
  assert_words (tm_words_batch_since (&fresh), "since the last piece: tool changed");
}

static void
test_shift_and_out (void)
{
  double over[30];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = (i < 20 ? 0.008 : 0.014) + noise[i % G_N_ELEMENTS (noise)];
  over[21] = NAN;
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) batch = { 0 };
  init_batch (&batch, job);
  assert_words (tm_words_batch_headline (&batch), "Shifted larger");
  g_autofree char *since = tm_words_batch_since (&batch);
  g_autofree char *hold = tm_words_batch_says (&batch, TM_BATCH_SAYS_HOLD);
  g_assert_nonnull (strstr (since, "piece 021 on"));
  g_assert_nonnull (strstr (hold, "to 030, 1 of them not measured"));

  g_auto (TmBatch) out = { 0 };
  add_reading (job, "022", g_ptr_array_index (job->features, 0), 25.040);
  init_batch (&out, job);
  assert_words (tm_words_batch_headline (&out), "Out");
  g_autofree char *since_out = tm_words_batch_since (&out);
  g_assert_true (g_str_has_prefix (since_out, "piece 022, metal gone\n"));
}

/* An advice that no drift calls for says how often it is one too many; a drift's does not. */
static void
test_advice (void)
{
  double over[30];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.015 + noise[i % G_N_ELEMENTS (noise)];
  g_autoptr (TmJob) off = make_job (over, G_N_ELEMENTS (over));
  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.006 + i * 0.0004 + noise[i % G_N_ELEMENTS (noise)];
  g_autoptr (TmJob) drifting = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) still = { 0 };
  g_auto (TmBatch) moving = { 0 };
  init_batch (&still, off);
  init_batch (&moving, drifting);
  g_autofree char *says = tm_words_batch_says (&still, TM_BATCH_SAYS_OFFSET);
  g_autofree char *other = tm_words_batch_says (&moving, TM_BATCH_SAYS_OFFSET);
  g_assert_true (g_str_has_prefix (says, "An offset of −0.00"));
  g_assert_nonnull (strstr (says, "for nothing about once in 45 pieces."));
  g_assert_true (g_str_has_prefix (other, "An offset of −0.00"));
  g_assert_null (strstr (other, "for nothing"));
}

/* A piece that is out after a shift: both are said, for the shift is why others are held back. */
static void
test_out_by_shift (void)
{
  double over[30];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = (i < 20 ? 0.008 : 0.020) + noise[i % G_N_ELEMENTS (noise)];
  over[27] = 0.030;
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) batch = { 0 };
  init_batch (&batch, job);
  g_assert_true (batch.change.found);
  g_autofree char *since = tm_words_batch_since (&batch);
  assert_words (tm_words_batch_headline (&batch), "Out");
  g_assert_true (g_str_has_prefix (since, "piece 028, metal gone\nshifted larger, "));
  g_assert_nonnull (strstr (since, "from piece 021 on"));
}

/* Every rule is said once, with the newest pieces at which it speaks and how many were before. */
static void
test_rules (void)
{
  double over[40];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.010 + noise[i % G_N_ELEMENTS (noise)] + (i >= 4 && i % 6 == 4 ? 0.006 : 0);
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) batch = { 0 };
  TmRuleHit hits[] = { { 4, 0 }, { 10, 0 }, { 16, 0 }, { 22, 0 }, { 28, 0 }, { 34, 0 } };

  init_batch (&batch, job);
  /* Which points are beyond the limits is core's to say: here they are put in. */
  g_array_set_size (batch.location_hits, 0);
  g_array_set_size (batch.dispersion_hits, 0);
  g_array_append_vals (batch.location_hits, hits, G_N_ELEMENTS (hits));
  g_array_append_vals (batch.dispersion_hits, hits, 1);
  g_autofree char *many = tm_words_batch_says (&batch, TM_BATCH_SAYS_RULES);
  g_assert_true (g_str_has_prefix (many, "one point beyond 3 sigma: at 017, 023, 029, 035, and 2 before\n"
                                         "scatter beyond its limits: at 005\n"));
  g_array_set_size (batch.location_hits, 2);
  g_autofree char *two = tm_words_batch_says (&batch, TM_BATCH_SAYS_RULES);
  g_assert_true (g_str_has_prefix (two, "one point beyond 3 sigma: at 005, 011\n"));
  assert_words (tm_words_batch_hits (&batch, 4),
                "one point beyond 3 sigma; scatter: one point beyond 3 sigma");
  assert_words (tm_words_batch_hits (&batch, 5), "");
}

/* What is refused says so, and no figure is promised to grow surer while the process moves. */
static void
test_refused (void)
{
  double over[30];
  const TmIndex index = { -0.16, -1.2, 0.66 }, none = { NAN, NAN, NAN };

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.010 + noise[i % G_N_ELEMENTS (noise)];
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) batch = { 0 };
  init_batch (&batch, job);
  batch.capability.unshaped = TRUE;
  batch.capability.ppk = none;
  batch.capability.n_wanted = 500;
  g_autofree char *says = tm_words_batch_says (&batch, TM_BATCH_SAYS_CAPABILITY);
  g_assert_nonnull (strstr (says, "Ppk refused"));
  g_assert_null (strstr (says, "500 pieces"));
  assert_words (tm_words_batch_index (&index), "−0.16 (−1.20 to 0.66)");
  assert_words (tm_words_batch_index (&none), "");
}

/* Where drift was taken out, Ppk without it is said too; where there was none, nothing is said twice. */
static void
test_scatter_alone (void)
{
  /* The normal distribution's quantiles at (i + 1/2)/30, in no particular order. */
  static const double normal[]
      = { -1.04, 1.19,  -0.13, -1.38, -0.39, -0.48, 2.13, 0.90, -0.21, 0.21, 1.64, -0.78, 0.04, 0.30,  0.57,
          -1.19, -0.90, -1.64, -0.67, -0.04, -2.13, 0.13, 0.48, 1.38,  0.67, 1.04, -0.30, 0.78, -0.57, 0.39 };
  double steady[30], drifting[30];

  for (guint i = 0; i < G_N_ELEMENTS (steady); i++)
    {
      steady[i] = 0.010 + 0.0007 * normal[i];
      drifting[i] = steady[i] + 0.0003 * (i - 15.0);
    }
  g_autoptr (TmJob) still = make_job (steady, G_N_ELEMENTS (steady));
  g_autoptr (TmJob) moving = make_job (drifting, G_N_ELEMENTS (drifting));
  g_auto (TmBatch) none = { 0 }, some = { 0 };
  init_batch (&none, still);
  init_batch (&some, moving);
  g_autofree char *says_none = tm_words_batch_says (&none, TM_BATCH_SAYS_CAPABILITY);
  g_autofree char *says_some = tm_words_batch_says (&some, TM_BATCH_SAYS_CAPABILITY);
  g_assert_nonnull (strstr (says_none, "Ppk"));
  g_assert_null (strstr (says_none, "scatter alone"));
  g_assert_nonnull (strstr (says_some, "scatter alone: Ppk"));
}

/* A perfect line has an interval of nothing: its slope still has digits that somebody can read. */
static void
test_perfect_line (void)
{
  double over[12];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.003 + 0.001 * i;
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  g_auto (TmBatch) batch = { 0 };
  init_batch (&batch, job);
  g_autofree char *slope = tm_words_batch_says (&batch, TM_BATCH_SAYS_SLOPE);
  g_assert_null (strstr (slope, "1.0000"));
}

/* Two bores of one tool that shrink alike: their wear is told together. */
static void
test_same_tool (void)
{
  double over[34];

  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    over[i] = 0.018 - i * 0.0003 + noise[i % G_N_ELEMENTS (noise)];
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmFeature *other = ui_add_feature (job, "2", "Ø30 H7", "BM-2");
  TmTool *tool = tm_tool_new ();
  g_auto (TmToolDrift) drift = { 0 };

  tool->name = tm_job_intern (job, "Bar 1");
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  bore->tool = other->tool = tool->name;
  assert_words (tm_words_tool_drift (&drift), "");
  for (guint i = 0; i < G_N_ELEMENTS (over); i++)
    add_reading (job, ((TmPiece *)g_ptr_array_index (job->pieces, i))->serial, other,
                 30 + over[i] + 0.0002 * (i % 3));
  g_assert_true (tm_tool_drift_init (&drift, job, tool->name, NULL, NULL));
  g_autofree char *words = tm_words_tool_drift (&drift);
  /* 0.3 µm a piece less metal taken: that is left. */
  g_assert_true (g_str_has_prefix (words, "2 places together: metal left +0.297 "));
  g_assert_nonnull (strstr (words, " µm a piece (0.28"));
}

/* What is judged by pass or fail has no size that could drift, a piece that fails or not. */
static void
test_attribute (void)
{
  g_autoptr (TmJob) job = make_job (NULL, 0);
  TmFeature *thread = ui_add_feature (job, "2", "M8x1.25 6H", "");
  g_auto (TmBatch) batch = { 0 };

  g_assert_true (tm_kind_is_attribute (thread->kind));
  for (guint i = 0; i < 6; i++)
    {
      g_autofree char *serial = g_strdup_printf ("%03u", i + 1);
      TmReading *reading = tm_reading_new ();

      ui_add_piece (job, serial);
      reading->row.piece = tm_job_find_piece (job, serial);
      reading->row.feature = thread;
      reading->place = 1;
      reading->outcome = i == 4 ? TM_OUTCOME_FAIL : TM_OUTCOME_PASS;
      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
  g_assert_true (tm_batch_init (&batch, job, thread, 1, NULL, NULL, NULL));
  check_all_words (&batch);
  assert_words (tm_words_batch_headline (&batch), "Out");
  assert_words (tm_words_batch_since (&batch), "piece 005");
  assert_words (tm_words_batch_forecast (&batch), "");
  assert_words (tm_words_batch_says (&batch, TM_BATCH_SAYS_SLOPE), "");
}

static void
test_cells (void)
{
  TmPiece piece = { .serial = "006" };
  g_autoptr (TmJob) job = make_job (NULL, 0);
  const TmFeature *feature = g_ptr_array_index (job->features, 0);
  const struct {
    TmGridCell cell;
    const char *words;
  } rows[] = {
    { { 0.62f, TM_VERDICT_IN, TM_SIDE_NONE, TRUE }, "Piece 006, 1 · Ø25 H7: in, 62 % of the band used" },
    { { 1.3f, TM_VERDICT_OUT, TM_SIDE_METAL_LEFT, TRUE }, "Piece 006, 1 · Ø25 H7: out, metal left" },
    { { NAN, TM_VERDICT_IN, TM_SIDE_NONE, TRUE }, "Piece 006, 1 · Ø25 H7: in" },
    { { NAN, TM_VERDICT_NOT_MEASURED, TM_SIDE_NONE, TRUE }, "Piece 006, 1 · Ø25 H7: to be measured" },
    { { NAN, TM_VERDICT_NOT_MEASURED, TM_SIDE_NONE, FALSE }, "Piece 006, 1 · Ø25 H7: not due" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_words (tm_words_batch_cell (&piece, feature, &rows[i].cell), rows[i].words);
  assert_words (tm_words_batch_cell (&piece, feature, NULL), "Piece 006, 1 · Ø25 H7: not judged yet");
  assert_words (tm_words_batch_cell (&piece, NULL, NULL), "Piece 006");
  assert_words (tm_words_batch_cell (NULL, feature, NULL), "1 · Ø25 H7");
  assert_words (tm_words_batch_count (34, 60), "34 of 60 pieces measured");
}

static void
assert_same_judgement (const TmJob *job, const TmJob *copy, const char *balloon)
{
  for (guint i = 0; i < job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, i);
      g_auto (TmJudgement) ours = { 0 };
      g_auto (TmJudgement) theirs = { 0 };

      tm_judge (job, piece, tm_job_find_feature (job, balloon), 1, &ours);
      tm_judge (copy, tm_job_find_piece (copy, piece->serial), tm_job_find_feature (copy, balloon), 1,
                &theirs);
      g_autofree char *one = tm_judgement_size_text (&ours);
      g_autofree char *other = tm_judgement_size_text (&theirs);
      g_assert_cmpint (ours.verdict, ==, theirs.verdict);
      g_assert_cmpint (ours.guard, ==, theirs.guard);
      g_assert_cmpstr (one, ==, other);
    }
}

/* The copy says of its feature what the job says, corrections, withdrawals and cuts among it; and holds no
 * more than it needs. */
static void
test_copy (void)
{
  static const double over[] = { 0.004, 0.006, 0.030, 0.008, 0.012 };
  g_autoptr (TmJob) job = make_job (over, G_N_ELEMENTS (over));
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmFeature *other = ui_add_feature (job, "2", "62 ±0.1", "BM-2");
  TmFeature *same = ui_add_feature (job, "3", "Ø40 H7", "BM-2");
  TmReading *first = g_ptr_array_index (job->readings, 0);
  TmTool *tool = tm_tool_new ();
  TmReading *again = tm_reading_new ();

  tool->name = tm_job_intern (job, "Bar 1");
  g_assert_cmpint (tm_job_add_tool (job, tool), ==, TM_ADD_OK);
  bore->tool = same->tool = tool->name;
  add_reading (job, "001", other, 62);
  add_reading (job, "002", same, 40.01);
  /* Piece 1 corrected, piece 3 withdrawn. */
  *again = *first;
  again->row.id = "";
  again->row.replaces = first->row.id;
  again->row.reason = tm_job_intern (job, "misread");
  again->value = tm_quantity_new (G_GINT64_CONSTANT (25019000000), TM_UNIT_MM, 3);
  g_assert_cmpint (tm_job_add_reading (job, again), ==, TM_ADD_OK);
  g_assert_cmpint (
      tm_job_withdraw (job, &((TmReading *)g_ptr_array_index (job->readings, 2))->row, "CD", "", "dirt"), ==,
      TM_ADD_OK);

  g_autoptr (TmJob) copy = tm_batch_copy (job, bore);
  g_assert_cmpuint (copy->features->len, ==, 2);
  g_assert_null (tm_job_find_feature (copy, "2"));
  g_assert_cmpuint (copy->readings->len, ==, G_N_ELEMENTS (over) + 2);
  assert_same_judgement (job, copy, "1");
  assert_same_judgement (job, copy, "3");
}

/* A reading was typed at the wrong place: its correction stands at place 2, and place 1 is read again. */
static void
test_copy_other_place (void)
{
  g_autoptr (TmJob) job = make_job (NULL, 0);
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmReading *wrong, *moved = tm_reading_new ();

  ui_add_piece (job, "001");
  bore->places = 2;
  wrong = add_reading (job, "001", bore, 25.004);
  *moved = *wrong;
  moved->row.id = "";
  moved->row.replaces = wrong->row.id;
  moved->row.reason = tm_job_intern (job, "the other hole");
  moved->place = 2;
  g_assert_cmpint (tm_job_add_reading (job, moved), ==, TM_ADD_OK);
  add_reading (job, "001", bore, 25.012);

  g_autoptr (TmJob) copy = tm_batch_copy (job, bore);
  const TmPiece *piece = tm_job_find_piece (copy, "001");
  const TmFeature *copied = tm_job_find_feature (copy, bore->balloon);
  g_assert_cmpuint (copy->readings->len, ==, 3);
  assert_same_judgement (job, copy, bore->balloon);
  const TmReading *first = g_ptr_array_index (tm_job_readings_at (copy, piece, copied, 1), 0);
  const TmReading *second = g_ptr_array_index (tm_job_readings_at (copy, piece, copied, 2), 0);
  g_assert_false (tm_row_counts (&first->row));
  g_assert_true (first->row.replaced_by == second);
  g_assert_true (tm_row_counts (&second->row));
}

/* What a rework set aside counts no more in the copy than in the job. */
static void
test_copy_rework (void)
{
  g_autoptr (TmJob) job = make_job (NULL, 0);
  TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmNonconformance *note = tm_nonconformance_new ();
  TmReading *before;

  ui_add_piece (job, "001");
  before = add_reading (job, "001", bore, 24.990);
  note->piece = "001";
  note->feature = bore->balloon;
  note->disposition = "rework";
  note->rework_at = "2026-05-04T10:00:00Z";
  note->rework_after = before->row.id;
  tm_job_add_nonconformance (job, note);
  tm_job_mark_rework (job, note);
  add_reading (job, "001", bore, 25.012);

  g_autoptr (TmJob) copy = tm_batch_copy (job, bore);
  g_assert_cmpuint (copy->readings->len, ==, 2);
  g_assert_false (tm_row_counts (&before->row));
  g_assert_false (tm_row_counts (&((TmReading *)g_ptr_array_index (copy->readings, 0))->row));
  g_assert_true (tm_row_counts (&((TmReading *)g_ptr_array_index (copy->readings, 1))->row));
  assert_same_judgement (job, copy, bore->balloon);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch-words/few", test_few);
  g_test_add_func ("/batch-words/copy-rework", test_copy_rework);
  g_test_add_func ("/batch-words/equal", test_equal);
  g_test_add_func ("/batch-words/drift", test_drift);
  g_test_add_func ("/batch-words/shift-and-out", test_shift_and_out);
  g_test_add_func ("/batch-words/out-by-shift", test_out_by_shift);
  g_test_add_func ("/batch-words/rules", test_rules);
  g_test_add_func ("/batch-words/refused", test_refused);
  g_test_add_func ("/batch-words/scatter-alone", test_scatter_alone);
  g_test_add_func ("/batch-words/perfect-line", test_perfect_line);
  g_test_add_func ("/batch-words/same-tool", test_same_tool);
  g_test_add_func ("/batch-words/attribute", test_attribute);
  g_test_add_func ("/batch-words/advice", test_advice);
  g_test_add_func ("/batch-words/cells", test_cells);
  g_test_add_func ("/batch-words/copy", test_copy);
  g_test_add_func ("/batch-words/copy-other-place", test_copy_other_place);
  return g_test_run ();
}
