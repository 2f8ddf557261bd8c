/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <math.h>
#include <string.h>

#include "core-correction.h"
#include "core-form.h"
#include "core-judge-private.h"
#include "core-position.h"

int
tm_verdict_rank (TmVerdict verdict)
{
  switch (verdict)
    {
    case TM_VERDICT_OUT:
      return 3;
    case TM_VERDICT_TOO_CLOSE:
      return 2;
    case TM_VERDICT_NOT_MEASURED:
      return 1;
    case TM_VERDICT_IN:
    case TM_N_VERDICTS:
    default:
      return 0;
    }
}

/* -------- Limits, with the bonus -------- */

/* What a position that is not proven in would be allowed if its unread size gave all it can. */
typedef struct {
  gboolean missing;
  gboolean may_help; /* a size feature is there and could be read */
  gint64 most;
} MissingSize;

static gint64
widen_limit (gint64 limit, gint64 bonus)
{
  return (gint64)MIN ((TmWide)limit + bonus, TM_COUNT_MAX);
}

static MissingSize
apply_bonus (TmJudge *self, const TmPiece *piece, const TmFeature *feature, guint place)
{
  TmLimits *limits = &self->out->limits;
  TmBonus bonus;

  if (feature->kind != TM_KIND_POSITION || feature->modifier == TM_MODIFIER_NONE || !limits->zero_bounded)
    return (MissingSize) { FALSE };
  bonus = tm_position_bonus_with (self->job, piece, feature, place, self->options);
  if (!bonus.measured)
    return (MissingSize) { TRUE, bonus.feature != NULL, bonus.most };
  limits->upper = widen_limit (limits->upper, bonus.bonus);
  self->bonus_unknown = isnan (bonus.u);
  self->bonus = tm_component (TM_COMPONENT_SIZE, TM_DISTRIBUTION_NORMAL, isnan (bonus.u) ? 0 : bonus.u,
                              bonus.dof, TRUE);
  return (MissingSize) { FALSE };
}

/* "In" is not claimed while a station that the feature asks for is unread; out and too close stand
 * whatever the unread ones would show. */
static void
hold_for_stations (TmJudgement *out)
{
  if (tm_sizes_complete (out->feature, &out->sizes))
    return;
  if (out->verdict == TM_VERDICT_IN)
    {
      out->verdict = TM_VERDICT_NOT_MEASURED;
      out->why = TM_WHY_STATIONS_MISSING;
    }
  else if (out->why == TM_WHY_NONE || out->why == TM_WHY_FEW_READINGS || out->why == TM_WHY_NO_ERROR_LIMIT
           || out->why == TM_WHY_ASSUMED)
    out->why = TM_WHY_STATIONS_MISSING;
}

/* A position judged without its bonus may be in once the size is read: then nothing is claimed. */
static void
hold_for_size (TmJudgement *out, const MissingSize *size)
{
  TmLimits most = out->limits;

  if (!size->missing)
    return;
  out->why = TM_WHY_NO_SIZE;
  if (!size->may_help || out->verdict == TM_VERDICT_IN)
    return;
  most.upper = widen_limit (most.upper, size->most);
  if (tm_local_size_compare (&out->sizes.stations[out->deciding], most.upper) <= 0)
    out->verdict = TM_VERDICT_NOT_MEASURED;
}

static void
judge_numbers (TmJudge *self)
{
  TmJudgement *out = self->out;
  MissingSize missing = apply_bonus (self, out->piece, out->feature, out->place);
  TmStationCase one;
  g_autofree TmStationCase *many = NULL;

  if (out->sizes.n_stations > 1)
    many = g_new (TmStationCase, out->sizes.n_stations);
  self->cases = many ? many : &one;
  tm_judge_stations (self);
  tm_judge_join_pins (self);
  out->why = tm_judge_find_why (self);
  out->has_taper = tm_form_taper (out->feature, &out->sizes, &out->taper);
  out->has_out_of_round = tm_form_out_of_round (out->feature, &out->sizes, &out->out_of_round);
  hold_for_size (out, &missing);
  hold_for_stations (out);
  self->cases = NULL;
}

static void
judge_outcomes (TmJudgement *out)
{
  out->verdict = TM_VERDICT_IN;
  for (guint i = 0; i < out->sizes.n_stations; i++)
    if (out->sizes.stations[i].outcome == TM_OUTCOME_FAIL && out->verdict == TM_VERDICT_IN)
      {
        out->verdict = TM_VERDICT_OUT;
        out->deciding = i;
      }
  out->method_name = out->sizes.stations[out->deciding].method_name;
  hold_for_stations (out);
}

static void
name_method (const TmJob *job, TmJudgement *out)
{
  TmMethodUse use = tm_method_use (job, out->feature, out->method_name);

  out->method = use.method;
  out->gauge = use.gauge;
}

static void
start_judgement (const TmPiece *piece, const TmFeature *feature, guint place, TmJudgement *out)
{
  *out = (TmJudgement) {
    .piece = piece,
    .feature = feature,
    .place = place,
    .method_name = "",
    .u = NAN,
    .dof = NAN,
    .coverage = NAN,
    .expanded = NAN,
    .probability_in = NAN,
    .blind_share = NAN,
    .combined_size = NAN,
    .limits = tm_feature_limits (feature),
  };
}

static void
judge_place (TmJudge *self)
{
  TmJudgement *out = self->out;
  gboolean is_attribute = tm_kind_is_attribute (out->feature->kind);

  tm_sizes_at (self->job, out->piece, out->feature, out->place, self->options, &out->sizes);
  if (out->feature->kind == TM_KIND_NOTE && out->sizes.n_stations == 0)
    out->why = TM_WHY_NO_LIMITS;
  else if (!is_attribute && !out->limits.has_lower && !out->limits.has_upper)
    out->why = TM_WHY_NO_LIMITS;
  else if (out->sizes.n_stations > 0 && is_attribute)
    {
      judge_outcomes (out);
      name_method (self->job, out);
    }
  else if (out->sizes.n_stations > 0)
    judge_numbers (self);
  else if (!is_attribute && tm_judge_pins_alone (self))
    hold_for_stations (out);
}

void
tm_judge_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
               const TmJudgeOptions *options, TmJudgement *out)
{
  TmJudge self = { .job = job, .options = options, .out = out };

  g_return_if_fail (job != NULL && piece != NULL && feature != NULL && out != NULL);
  start_judgement (piece, feature, place, out);
  judge_place (&self);
}

void
tm_judge (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place, TmJudgement *out)
{
  tm_judge_with (job, piece, feature, place, NULL, out);
}

void
tm_judgement_clear (TmJudgement *judgement)
{
  tm_sizes_clear (&judgement->sizes);
}

TmVerdict
tm_judge_feature (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint *n_measured)
{
  TmVerdict worst = TM_VERDICT_IN;
  guint measured = 0;

  for (guint place = 1; place <= feature->places; place++)
    {
      g_auto (TmJudgement) judgement = { 0 };

      tm_judge (job, piece, feature, place, &judgement);
      if (tm_verdict_rank (judgement.verdict) > tm_verdict_rank (worst))
        worst = judgement.verdict;
      measured += judgement.verdict != TM_VERDICT_NOT_MEASURED;
    }
  if (n_measured)
    *n_measured = measured;
  return feature->places > 0 ? worst : TM_VERDICT_NOT_MEASURED;
}
