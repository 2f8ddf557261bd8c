/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge-private: what the files of a judgement share.  core-judge puts the parts together:
 * core-judge-stations judges each station and finds the one that decides, core-judge-pins joins the
 * pins, core-judge-why says what the verdict rests on.
 */

#pragma once

#include "core-combine.h"
#include "core-judge.h"
#include "core-method.h"
#include "core-verdict.h"

G_BEGIN_DECLS

/* One station's method, rule and verdict. */
typedef struct {
  TmMethodUse use;
  TmRule rule;
  TmVerdict verdict;
  gboolean combined; /* its size is that of several methods together */
  gboolean disagree; /* they differ by more than their uncertainties explain */
  gboolean assumed;  /* of a combined size: a tenth or more of its weight lies on methods that rest on lines
                      * which nobody measured */
} TmStationCase;

/* A judgement in the making. */
typedef struct {
  const TmJob *job;
  const TmJudgeOptions *options; /* or NULL */
  TmJudgement *out;
  TmComponent bonus; /* uncertainty of the bonus; value 0: none */
  gboolean bonus_unknown;
  TmStationCase *cases; /* one per station */
  gboolean pins_contradict;
  gboolean pins_open;
  gboolean not_good; /* simple rule: pins and readings together fail N:1 */
} TmJudge;

/* Out before too close before not measured before in. */
int tm_verdict_rank (TmVerdict verdict);

/* Judges each station; makes of it the verdict, the side, the uncertainty and the probability. */
void tm_judge_stations (TmJudge *self);

/* The side of a size that is out. */
TmSide tm_judge_side (const TmFeature *feature, const TmLimits *limits, gboolean is_small);

/* Pins beside readings, and pins alone. FALSE: no pin trial counts here. */
gboolean tm_judge_join_pins (TmJudge *self);
gboolean tm_judge_pins_alone (TmJudge *self);

/* Why, once the verdict is there. */
TmWhy tm_judge_find_why (const TmJudge *self);

G_END_DECLS
