/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-advice: what to do next, from what the present place proves.
 */

#include "bench-cut.h"
#include "bench-private.h"

#include "core-combine.h"
#include "core-suitability.h"

/* Repeats lower only the part of the uncertainty that is scatter; after this many readings at one
 * station a finer gauge helps more (our own choice: five lower it to 45 %). */
#define REPEATS_MAX 5

static TmAdvice
advise (const TmBench *bench, TmAdviceKind kind, const char *station)
{
  return (TmAdvice) {
    .kind = kind, .station = station, .feature = bench->spot.feature, .piece = bench->spot.piece, .method = ""
  };
}

static TmAdvice
advise_about (const TmBench *bench, TmAdviceKind kind, const TmGauge *gauge, const char *station)
{
  TmAdvice advice = advise (bench, kind, station);

  advice.gauge = gauge;
  return advice;
}

static gboolean
method_cannot_settle (const TmBench *bench)
{
  const char *method = tm_bench_method_in_force (bench);
  TmOutlook outlook;

  return method[0] != '\0' && tm_judge_outlook (bench->job, bench->spot.feature, method, &outlook)
         && outlook.settles == TM_SETTLES_CANNOT;
}

static gboolean
method_is_pins (const TmBench *bench)
{
  const TmGauge *gauges[TM_BENCH_MAX_GAUGES];
  guint n = tm_bench_method_gauges (bench, tm_bench_method_in_force (bench), gauges);

  return n > 0 && tm_gauge_is_pins (gauges[n - 1]);
}

static gboolean
would_settle (const TmSuitability *row, const char *present)
{
  return row->known && row->fits && row->reaches && row->due != TM_DUE_OVERDUE
         && (row->outlook.settles == TM_SETTLES || row->outlook.settles == TM_SETTLES_MOSTLY)
         && !g_str_equal (row->name, present);
}

/* The best method of the shop that would settle the feature; "" when none does. */
static const char *
find_finer_method (const TmBench *bench)
{
  g_autoptr (GArray) rows = tm_suitability (bench->job, bench->spot.feature, bench->now);

  for (guint i = 0; i < rows->len; i++)
    {
      const TmSuitability *row = &g_array_index (rows, TmSuitability, i);

      if (would_settle (row, tm_bench_method_in_force (bench)))
        return row->name;
    }
  return "";
}

/* The present gauge does not do: pins that prove the band, else a finer gauge; the edge may name both. */
static TmAdvice
advise_better_means (const TmBench *bench, const char *station)
{
  TmAdvice advice = advise (bench, TM_ADVICE_FINER_GAUGE, station);

  tm_bench_pin_plan (bench, &advice.pins);
  advice.method = find_finer_method (bench);
  if (!tm_bench_plan_next (bench, &advice.pins).given)
    advice.pins = (TmPinPlan) { .has_go = FALSE };
  else if (advice.pins.proves_band)
    advice.kind = TM_ADVICE_PULL_PINS;
  return advice;
}

/* A gauge of the method in force that is overdue without a reason, or has to be checked first. */
static gboolean
find_unfit_gauge (const TmBench *bench, TmAdvice *advice, const char *station)
{
  const TmGauge *gauges[TM_BENCH_MAX_GAUGES];
  guint n = tm_bench_method_gauges (bench, tm_bench_method_in_force (bench), gauges);
  const TmGauge *overdue = tm_bench_find_overdue (bench, gauges, n, bench->now);

  if (overdue != NULL)
    {
      *advice = advise_about (bench, TM_ADVICE_STATE_REASON, overdue, station);
      return TRUE;
    }
  for (guint i = 0; i < n && bench->now[0] != '\0'; i++)
    {
      TmCheckState state = tm_gauge_check_state (bench->job, gauges[i], bench->now);

      if (!state.stale && !(state.beyond && bench->job->drift_rule == TM_DRIFT_ASK))
        continue;
      *advice = advise_about (bench, TM_ADVICE_CHECK_GAUGE, gauges[i], station);
      return TRUE;
    }
  return FALSE;
}

/* A cut was made, and nothing that counts was read at the place since. */
static gboolean
cut_is_newest (const TmBench *bench)
{
  const TmSpot *spot = &bench->spot;
  const GPtrArray *readings = tm_job_readings_at (bench->job, spot->piece, spot->feature, spot->place);

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);

      if (tm_row_counts (&reading->row))
        return FALSE;
    }
  return tm_job_last_cut (bench->job, spot->piece, spot->feature, spot->place) != NULL;
}

static TmAdvice
advise_reading (const TmBench *bench, const TmJudgement *judgement, const char *unread)
{
  TmAdvice advice;

  if (find_unfit_gauge (bench, &advice, unread))
    return advice;
  if (judgement->verdict == TM_VERDICT_NOT_MEASURED && method_cannot_settle (bench))
    return advise_better_means (bench, unread);
  if (method_is_pins (bench))
    {
      advice = advise_better_means (bench, unread);
      if (advice.pins.has_go || advice.pins.has_nogo)
        advice.kind = TM_ADVICE_PULL_PINS;
      return advice;
    }
  return advise (bench, cut_is_newest (bench) ? TM_ADVICE_READ_AFTER_CUT : TM_ADVICE_READ, unread);
}

/* The pins alone prove the band, and what was chosen to count does not say so. */
static gboolean
pins_prove (const TmBench *bench)
{
  const TmSpot *spot = &bench->spot;
  g_auto (TmPinEvidence) evidence = { NULL };

  return spot->feature->counts == TM_COUNTS_ASSIGNED
         && tm_pin_evidence (bench->job, spot->piece, spot->feature, spot->place, FALSE, &evidence)
         && evidence.result.proves_band && !evidence.result.contradiction;
}

/* More of the same does not help: a gauge that seldom settles it, or enough repeats. */
static gboolean
needs_better_means (const TmJudgement *judgement, const TmLocalSize *deciding)
{
  return judgement->why == TM_WHY_METHOD_NOT_GOOD || judgement->why == TM_WHY_PINS_OPEN
         || judgement->settles == TM_SETTLES_SELDOM || judgement->settles == TM_SETTLES_CANNOT
         || (deciding != NULL && deciding->n >= REPEATS_MAX);
}

/* What is in doubt is whether enough was cut, and a cut within the accepted risk makes it likelier in than it
 * is: better than reading the doubt over and over. */
static gboolean
cut_would_help (const TmBench *bench)
{
  TmCutAdvice cut;

  if (!tm_feature_is_cut_to_size (bench->spot.feature) || tm_bench_tool (bench) == NULL)
    return FALSE;
  tm_bench_cut_plan (bench, &cut);
  return (cut.plan.status == TM_CUT_OK || cut.plan.status == TM_CUT_PROVE)
         && cut.plan.now.left > cut.plan.now.gone && cut.plan.chances.in > cut.plan.now.in;
}

static TmAdvice
advise_too_close (const TmBench *bench, const TmJudgement *judgement)
{
  const TmLocalSize *deciding = NULL;
  const char *station = bench->spot.station;

  if (judgement->deciding < judgement->sizes.n_stations)
    {
      deciding = &judgement->sizes.stations[judgement->deciding];
      station = deciding->station;
    }
  if (judgement->why == TM_WHY_PINS_CONTRADICT)
    return advise (bench, TM_ADVICE_SETTLE_CONTRADICTION, station);
  if (judgement->why == TM_WHY_CHECK_ASKED && judgement->gauge != NULL)
    return advise_about (bench, TM_ADVICE_CHECK_GAUGE, judgement->gauge, station);
  if (pins_prove (bench))
    return advise (bench, TM_ADVICE_COUNT_COMBINED, station);
  if (cut_would_help (bench))
    return advise (bench, TM_ADVICE_CUT_AGAIN, "");
  if (needs_better_means (judgement, deciding))
    return advise_better_means (bench, station);
  return advise (bench, TM_ADVICE_REPEAT, station);
}

static TmAdvice
advise_going_on (const TmBench *bench)
{
  guint piece = tm_tally_piece_index (bench->tally, bench->spot.piece);
  TmAdvice advice = advise (bench, TM_ADVICE_NEXT, "");
  TmSpot next;

  if (!tm_bench_find_unread (bench, &next))
    advice.kind = TM_ADVICE_ALL_DONE;
  else if (bench->order == TM_ORDER_PIECE_FIRST && tm_tally_piece_unread (bench->tally, piece) == 0)
    advice.kind = TM_ADVICE_PIECE_DONE;
  else
    {
      advice.station = next.station;
      advice.feature = next.feature;
      advice.piece = next.piece;
    }
  return advice;
}

/* Whether the out verdict still asks for something. */
static gboolean
is_open_out (const TmBench *bench, const TmJudgement *judgement)
{
  return judgement->verdict == TM_VERDICT_OUT
         && (judgement->side == TM_SIDE_METAL_LEFT
             || tm_job_nonconformance_of (bench->job, bench->spot.piece, bench->spot.feature) == NULL);
}

static TmAdvice
advise_on (const TmBench *bench, const TmJudgement *judgement)
{
  const TmSpot *spot = &bench->spot;
  const char *unread = tm_bench_unread_station (bench, spot->piece, spot->feature, spot->place, 0);

  if (is_open_out (bench, judgement))
    return advise (
        bench, judgement->side == TM_SIDE_METAL_LEFT ? TM_ADVICE_CUT_AGAIN : TM_ADVICE_REPORT_NONCONFORMANCE,
        "");
  if (unread != NULL)
    return advise_reading (bench, judgement, unread);
  if (judgement->verdict == TM_VERDICT_TOO_CLOSE)
    return advise_too_close (bench, judgement);
  if (judgement->why == TM_WHY_NO_METHOD)
    return advise (bench, TM_ADVICE_NAME_METHOD, "");
  return advise_going_on (bench);
}

TmAdvice
tm_bench_advice (const TmBench *bench)
{
  g_auto (TmJudgement) judgement = { .method_name = "" };

  g_return_val_if_fail (bench != NULL, ((TmAdvice) { .kind = TM_ADVICE_NONE, .station = "", .method = "" }));

  tm_bench_refresh (bench);
  if (bench->spot.feature == NULL)
    return advise (bench, TM_ADVICE_ADD_FEATURE, "");
  if (bench->spot.piece == NULL)
    return advise (bench, TM_ADVICE_ADD_PIECE, "");
  tm_bench_judge (bench, &judgement);
  return advise_on (bench, &judgement);
}
