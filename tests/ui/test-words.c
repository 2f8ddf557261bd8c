/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The sentences of the Bench, for every code that core and bench can give.  Needs no display.  The
 * expected words are those of the design; the numbers are worked out beside them.
 */

#include <string.h>

#include "app-entry-words.h"
#include "app-feature-words.h"
#include "app-reading-words.h"
#include "ui-fixture.h"

static void
record (TmJob *job, guint feature, guint place, const char *station, const char *value)
{
  TmReading *reading = tm_reading_new ();
  reading->row.piece = g_ptr_array_index (job->pieces, 0);
  reading->row.feature = g_ptr_array_index (job->features, feature);
  reading->place = place;
  reading->station = tm_job_intern (job, station);
  g_assert_cmpint (tm_quantity_read (value, TM_UNIT_MM, &reading->value), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

static void
judge (TmJob *job, guint feature, TmJudgement *judgement)
{
  tm_judge (job, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, feature), 1,
            judgement);
}

/* 25 H7 is 25.000 … 25.021; the micrometer's guard is about 0.002 (error limit 0.002 / √3 and step
 * 0.001 / √12 give u 0.0012, times 1.65). */
static void
test_verdicts (void)
{
  static const struct {
    const char *values[4]; /* by station; NULL: not read */
    const char *title;
    const char *where;
  } cases[] = {
    { { NULL }, "Not measured", "" },
    { { "25.010" }, "1 of 4 read", "in so far; every station has to be read" },
    { { "25.010", "25.010", "25.010", "25.010" }, "In", "at all 4 stations" },
    { { "25.010", "25.010", "25.021", "25.010" }, "Too close", "to call at bottom 12" },
    { { "25.010", "25.040" }, "Out – metal\u00a0gone", "at mouth 3" },
    { { "24.950", "25.010" }, "Out – metal\u00a0left", "at mouth 12" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = ui_make_job ();
      const TmFeature *bore = g_ptr_array_index (job->features, 0);
      g_auto (TmJudgement) judgement = { 0 };
      for (guint s = 0; s < G_N_ELEMENTS (cases[i].values) && cases[i].values[s] != NULL; s++)
        record (job, 0, 1, g_ptr_array_index (bore->stations, s), cases[i].values[s]);
      judge (job, 0, &judgement);
      g_autofree char *title = tm_words_verdict (&judgement);
      g_autofree char *where = tm_words_where (&judgement);
      g_assert_cmpstr (title, ==, cases[i].title);
      g_assert_cmpstr (where, ==, cases[i].where);
    }
}

static void
test_numbers (void)
{
  g_autoptr (TmJob) job = ui_make_job ();
  g_auto (TmJudgement) judgement = { 0 };
  record (job, 0, 1, "mouth/12", "25.004");
  record (job, 0, 1, "mouth/3", "25.006");
  record (job, 0, 1, "bottom/12", "25.010");
  record (job, 0, 1, "bottom/3", "25.010");
  judge (job, 0, &judgement);
  g_autofree char *size = tm_words_size (&judgement);
  g_autofree char *form = tm_words_form (job, &judgement);
  g_autofree char *chance = tm_words_chance (&judgement);
  g_assert_true (g_str_has_prefix (size, "25.0"));
  g_assert_nonnull (strstr (size, " ± 0.00"));
  g_assert_true (g_str_has_suffix (size, " mm"));
  /* Mouth 25.005 on average, bottom 25.010; diameters 0.002 apart at the mouth. */
  g_assert_nonnull (strstr (form, "taper 0.005 mm, opens to the bottom"));
  g_assert_nonnull (strstr (form, "spread of diameters 0.0"));
  g_assert_nonnull (strstr (chance, "likely in, all stations read"));
}

static void
test_gauge (void)
{
  g_autoptr (TmJob) job = ui_make_job ();
  const TmFeature *bore = g_ptr_array_index (job->features, 0);
  g_autofree char *good = tm_words_gauge (job, bore, "BM-2", "2026-05-04");
  g_autofree char *late = tm_words_gauge (job, bore, "BM-2", "2100-01-01");
  g_autofree char *none = tm_words_gauge (job, bore, "", "2026-05-04");
  g_autofree char *unknown = tm_words_gauge (job, bore, "XX-9", "2026-05-04");
  g_assert_true (g_str_has_prefix (good, "due 14 Mar 2099\nsettles "));
  g_assert_nonnull (strstr (good, "; guard 0.00"));
  g_assert_true (g_str_has_prefix (late, "overdue since 14 Mar 2099"));
  g_assert_cmpstr (none, ==, "");
  g_assert_true (g_str_has_prefix (unknown, "XX-9 is not in the list of gauges"));
}

static void
test_advice (void)
{
  g_autoptr (TmJob) job = ui_make_job ();
  for (int kind = TM_ADVICE_ADD_PIECE; kind <= TM_ADVICE_ALL_DONE; kind++)
    {
      TmAdvice advice = { .kind = (TmAdviceKind)kind,
                          .station = "bottom/3",
                          .feature = g_ptr_array_index (job->features, 0),
                          .method = "",
                          .gauge = g_ptr_array_index (job->gauges, 0) };
      g_autofree char *text = tm_words_advice (&advice, NULL);
      g_autofree char *caution = tm_words_caution (&advice);
      g_assert_cmpstr (text, !=, "");
      g_assert_true (g_str_has_suffix (text, "."));
      g_assert_nonnull (strstr (caution, "spindle stopped"));
    }
  TmAdvice read = { .kind = TM_ADVICE_READ, .station = "bottom/3", .method = "" };
  g_autofree char *text = tm_words_advice (&read, NULL);
  g_assert_cmpstr (text, ==, "Read bottom 3.");
}

static void
test_entries (void)
{
  static const struct {
    const char *typed;
    const char *says;
  } cases[] = {
    { "", "" },
    { "25.019", "reads as 25.019 mm" },
    { "25019", "reads as 25.019 mm" },
    { "+3", "reads as 25.003 mm" },
    { "25,0195", "reads as 25.0195 mm" },
    { "0.985 in", "reads as 25.019 mm" },
  };
  g_autoptr (TmJob) job = ui_make_job ();
  const TmFeature *bore = g_ptr_array_index (job->features, 0);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmEntry entry = tm_entry_read (cases[i].typed, bore);
      g_autofree char *says = tm_words_entry (&entry, bore);
      g_assert_cmpstr (says, ==, cases[i].says);
    }
  for (int status = TM_ENTRY_NOT_A_NUMBER; status < TM_N_ENTRY_STATUSES; status++)
    {
      TmEntry entry = { .status = (TmEntryStatus)status };
      g_autofree char *says = tm_words_entry (&entry, bore);
      g_assert_cmpstr (says, !=, "");
      g_assert_false (g_str_has_prefix (says, "reads as"));
    }
}

static void
test_slips (void)
{
  g_autoptr (TmJob) job = ui_make_job ();
  const TmFeature *bore = g_ptr_array_index (job->features, 0);
  TmEntry entry = tm_entry_read ("25.512", bore);
  TmSlipCheck turn
      = { TM_SLIP_THIMBLE_TURN, tm_quantity_new (G_GINT64_CONSTANT (25012000000), TM_UNIT_MM, 3) };
  g_autofree char *question = tm_words_slip (&turn, &entry, bore, NULL);
  g_assert_cmpstr (question, ==,
                   "25.512 is one thimble turn from 25.012. Enter again to record it, or correct it.");
  TmGauge gauge = { .tag = "BM-2", .unit = TM_UNIT_MM };
  tm_quantity_read ("30", TM_UNIT_MM, &gauge.range_from);
  tm_quantity_read ("50", TM_UNIT_MM, &gauge.range_to);
  TmSlipCheck reach = { TM_SLIP_OUT_OF_REACH, TM_QUANTITY_NONE };
  g_autofree char *outside = tm_words_slip (&reach, &entry, bore, &gauge);
  g_assert_cmpstr (
      outside, ==,
      "25.512 is outside what BM-2 reaches, 30 to 50 mm. Enter again to record it, or correct it.");
  for (int slip = TM_SLIP_NONE + 1; slip < TM_N_SLIPS; slip++)
    {
      TmSlipCheck check = { (TmSlip)slip, turn.likelier };
      g_autofree char *text = tm_words_slip (&check, &entry, bore, &gauge);
      g_assert_nonnull (strstr (text, "25.512"));
      g_assert_nonnull (strstr (text, "Enter again to record it"));
    }
}

static void
test_features (void)
{
  g_autoptr (TmJob) job = ui_make_job ();
  TmFeature *position = g_ptr_array_index (job->features, 2);
  const TmFeature *holes = g_ptr_array_index (job->features, 1);
  position->designator = "critical";
  position->sheet = "1";
  position->zone = "C4";
  g_autofree char *requirement = tm_words_requirement (position);
  g_autofree char *on_drawing = tm_words_on_drawing (position);
  g_autofree char *spot = tm_words_spot (holes, 3, "");
  g_autofree char *deep = tm_words_station ("12.5/3", TM_UNIT_MM);
  g_autofree char *mouth = tm_words_station ("mouth/12", TM_UNIT_MM);
  g_assert_cmpstr (requirement, ==, "pos Ø0.2 A B");
  g_assert_cmpstr (on_drawing, ==, "critical  ·  sheet 1, C4");
  g_assert_cmpstr (spot, ==, "place 3");
  g_assert_cmpstr (deep, ==, "12.5 mm, 3");
  g_assert_cmpstr (mouth, ==, "mouth 12");
}

static void
test_states (void)
{
  static const struct {
    TmVerdict verdict;
    TmSide side;
    gboolean due;
    guint n_read, n_due;
    const char *state;
  } cases[] = {
    { TM_VERDICT_NOT_MEASURED, TM_SIDE_NONE, TRUE, 0, 1, "—" },
    { TM_VERDICT_NOT_MEASURED, TM_SIDE_NONE, FALSE, 0, 1, "not due" },
    { TM_VERDICT_NOT_MEASURED, TM_SIDE_NONE, TRUE, 3, 4, "3 of 4" },
    { TM_VERDICT_IN, TM_SIDE_NONE, TRUE, 4, 4, "in" },
    { TM_VERDICT_IN, TM_SIDE_NONE, TRUE, 2, 4, "2 of 4" },
    { TM_VERDICT_TOO_CLOSE, TM_SIDE_NONE, TRUE, 1, 4, "too close" },
    { TM_VERDICT_OUT, TM_SIDE_NONE, TRUE, 1, 1, "out" },
    { TM_VERDICT_OUT, TM_SIDE_METAL_LEFT, TRUE, 1, 1, "metal left" },
    { TM_VERDICT_OUT, TM_SIDE_METAL_GONE, TRUE, 1, 4, "metal gone" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *state
          = tm_words_state (cases[i].verdict, cases[i].side, cases[i].due, cases[i].n_read, cases[i].n_due);
      g_assert_cmpstr (state, ==, cases[i].state);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/words/verdicts", test_verdicts);
  g_test_add_func ("/words/numbers", test_numbers);
  g_test_add_func ("/words/gauge", test_gauge);
  g_test_add_func ("/words/advice", test_advice);
  g_test_add_func ("/words/entries", test_entries);
  g_test_add_func ("/words/slips", test_slips);
  g_test_add_func ("/words/features", test_features);
  g_test_add_func ("/words/states", test_states);
  return g_test_run ();
}
