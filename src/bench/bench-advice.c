/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-advice: what to do next, from what the present place proves.
 */

#include "bench-private.h"

/* Repeats lower only the part of the uncertainty that is scatter; after this many readings at one
 * station a finer gauge helps more (our own choice: five lower it to 45 %). */
#define REPEATS_MAX 5

static TmAdvice
advise (const TmBench *bench, TmAdviceKind kind, const char *station)
{
  return (TmAdvice) { kind, station, bench->spot.feature, bench->spot.piece };
}

/* The method that the next reading would be taken by. */
static const char *
choose_method (const TmBench *bench)
{
  return bench->method[0] != '\0' ? bench->method : bench->spot.feature->method;
}

static gboolean
method_cannot_settle (const TmBench *bench)
{
  const char *method = choose_method (bench);
  TmOutlook outlook;

  return method[0] != '\0' && tm_judge_outlook (bench->job, bench->spot.feature, method, &outlook)
         && outlook.settles == TM_SETTLES_CANNOT;
}

static TmAdvice
advise_reading (const TmBench *bench, const TmJudgement *judgement, const char *unread)
{
  if (judgement->verdict == TM_VERDICT_NOT_MEASURED && method_cannot_settle (bench))
    return advise (bench, TM_ADVICE_FINER_GAUGE, unread);
  return advise (bench, TM_ADVICE_READ, unread);
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
  if (judgement->why == TM_WHY_METHOD_NOT_GOOD || judgement->settles == TM_SETTLES_SELDOM
      || judgement->settles == TM_SETTLES_CANNOT || (deciding != NULL && deciding->n >= REPEATS_MAX))
    return advise (bench, TM_ADVICE_FINER_GAUGE, station);
  return advise (bench, TM_ADVICE_REPEAT, station);
}

static TmAdvice
advise_going_on (const TmBench *bench)
{
  guint piece = tm_tally_piece_index (bench->tally, bench->spot.piece);
  TmSpot next;

  if (!tm_bench_find_unread (bench, &next))
    return advise (bench, TM_ADVICE_ALL_DONE, "");
  if (bench->order == TM_ORDER_PIECE_FIRST && tm_tally_piece_unread (bench->tally, piece) == 0)
    return advise (bench, TM_ADVICE_PIECE_DONE, "");
  return (TmAdvice) { TM_ADVICE_NEXT, next.station, next.feature, next.piece };
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

  g_return_val_if_fail (bench != NULL, ((TmAdvice) { TM_ADVICE_NONE, "", NULL, NULL }));

  tm_bench_refresh (bench);
  if (bench->spot.feature == NULL)
    return advise (bench, TM_ADVICE_ADD_FEATURE, "");
  if (bench->spot.piece == NULL)
    return advise (bench, TM_ADVICE_ADD_PIECE, "");
  tm_bench_judge (bench, &judgement);
  return advise_on (bench, &judgement);
}
