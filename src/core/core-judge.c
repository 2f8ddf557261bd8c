/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-judge.h"

#include <math.h>
#include <string.h>

#include "core-form.h"
#include "core-method.h"
#include "core-position.h"
#include "core-probability.h"
#include "core-verdict.h"

/* Under this many degrees of freedom an uncertainty is itself uncertain by a quarter and more
 * (JCGM 100, table E.1), and the judgement says so. */
#define FEW_DOF 10
/* Beyond this room, in u, nothing is left of a normal tail in a double. */
#define FAR_INSIDE 9.0

/* One station's method, rule and verdict. */
typedef struct {
  TmMethodUse use;
  TmRule rule;
  TmVerdict verdict;
} StationCase;

typedef struct {
  const TmJob *job;
  TmJudgement *out;
  TmComponent bonus; /* uncertainty of the bonus; value 0: none */
  gboolean bonus_unknown;
  StationCase *cases; /* one per station */
} Judge;

static int
rank_verdict (TmVerdict verdict)
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
apply_bonus (Judge *self, const TmPiece *piece, const TmFeature *feature, guint place)
{
  TmLimits *limits = &self->out->limits;
  TmBonus bonus;

  if (feature->kind != TM_KIND_POSITION || feature->modifier == TM_MODIFIER_NONE || !limits->zero_bounded)
    return (MissingSize) { FALSE };
  bonus = tm_position_bonus_of (self->job, piece, feature, place);
  if (!bonus.measured)
    return (MissingSize) { TRUE, bonus.feature != NULL, bonus.most };
  limits->upper = widen_limit (limits->upper, bonus.bonus);
  self->bonus_unknown = isnan (bonus.u);
  self->bonus = tm_component (TM_COMPONENT_SIZE, TM_DISTRIBUTION_NORMAL, isnan (bonus.u) ? 0 : bonus.u,
                              bonus.dof, TRUE);
  return (MissingSize) { FALSE };
}

/* -------- Stations -------- */

static gboolean
is_same_case (const TmLocalSize *a, const TmLocalSize *b, const StationCase *of_a)
{
  return a->n == b->n && a->radial == b->radial && strcmp (a->method_name, b->method_name) == 0
         && (a->n == 1 || of_a->use.has_repeatability);
}

static void
make_case (Judge *self, const TmLocalSize *size, StationCase *out)
{
  const TmJob *job = self->job;
  TmUncertainty uncertainty;

  out->use = tm_method_use (job, self->out->feature, size->method_name);
  if (self->bonus_unknown)
    out->use.known = FALSE;
  uncertainty = tm_method_uncertainty (&out->use, size, self->bonus.value > 0 ? &self->bonus : NULL);
  tm_rule_init (&out->rule, job->decision, tm_job_simple_ratio (job), &self->out->limits, &uncertainty,
                size->radial);
}

static void
judge_stations (Judge *self)
{
  const TmSizes *sizes = &self->out->sizes;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      if (i > 0 && is_same_case (&sizes->stations[i - 1], &sizes->stations[i], &self->cases[i - 1]))
        self->cases[i] = self->cases[i - 1];
      else
        make_case (self, &sizes->stations[i], &self->cases[i]);
      self->cases[i].verdict = tm_rule_verdict (&self->cases[i].rule, &sizes->stations[i]);
    }
}

static TmSide
find_side (const TmFeature *feature, const TmLimits *limits, const TmLocalSize *size)
{
  TmCut cut = tm_feature_cut (feature);
  gboolean is_small = limits->has_lower && tm_local_size_compare (size, limits->lower) < 0;

  if (cut == TM_CUT_UNKNOWN || limits->zero_bounded)
    return TM_SIDE_NONE;
  return is_small == (cut == TM_CUT_GROWS) ? TM_SIDE_METAL_LEFT : TM_SIDE_METAL_GONE;
}

static TmSide
find_case_side (const Judge *self, guint station)
{
  if (self->cases[station].verdict != TM_VERDICT_OUT)
    return TM_SIDE_NONE;
  return find_side (self->out->feature, &self->out->limits, &self->out->sizes.stations[station]);
}

/* Of two stations that are both out, the one that cannot be cut again decides over the one that can;
 * then the one furthest beyond a limit, or nearest to one, in its own uncertainty. */
static gboolean
decides_over (const Judge *self, guint a, guint b)
{
  int rank = rank_verdict (self->cases[a].verdict) - rank_verdict (self->cases[b].verdict);
  TmSide side_a, side_b;

  if (rank != 0)
    return rank > 0;
  side_a = find_case_side (self, a);
  side_b = find_case_side (self, b);
  if (side_a != side_b)
    return side_a == TM_SIDE_METAL_GONE;
  return tm_rule_room (&self->cases[a].rule, &self->out->sizes.stations[a])
         < tm_rule_room (&self->cases[b].rule, &self->out->sizes.stations[b]);
}

/* -------- Probability over stations -------- */

/* P(all in) of the stations that @method measured: they share that method's systematic error. */
static double
find_group_probability (const Judge *self, const char *method, TmMargin *margins)
{
  const TmSizes *sizes = &self->out->sizes;
  const TmLimits *limits = &self->out->limits;
  double shared = 0, room = INFINITY;
  guint n = 0;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      const TmUncertainty *uncertainty = &self->cases[i].rule.uncertainty;
      const TmLocalSize *size = &sizes->stations[i];
      double widening;

      if (strcmp (size->method_name, method) != 0)
        continue;
      /* Few degrees of freedom widen both parts, so that one station alone keeps its 95 % point. */
      widening = tm_t_quantile (0.95, uncertainty->dof) / tm_t_quantile (0.95, INFINITY);
      shared = MAX (shared, uncertainty->shared * widening);
      room = MIN (room, limits->zero_bounded ? 0 : tm_rule_room (&self->cases[i].rule, size) / widening);
      margins[n++] = (TmMargin) {
        limits->has_lower || limits->zero_bounded ? tm_local_size_beyond (size, limits->lower) : INFINITY,
        limits->has_upper ? -tm_local_size_beyond (size, limits->upper) : INFINITY,
        limits->zero_bounded,
        uncertainty->own * widening,
      };
    }
  return room > FAR_INSIDE ? 1 : tm_probability_all_in (margins, n, shared);
}

static gboolean
is_first_of_method (const TmSizes *sizes, guint index)
{
  for (guint i = 0; i < index; i++)
    if (strcmp (sizes->stations[i].method_name, sizes->stations[index].method_name) == 0)
      return FALSE;
  return TRUE;
}

/* Over all stations.  Methods are taken as independent of each other, and so are positions found by
 * offsets, whose shared errors need not point the same way. */
static double
find_probability (const Judge *self)
{
  const TmSizes *sizes = &self->out->sizes;
  g_autofree TmMargin *margins = NULL;
  double probability = 1;
  gboolean radial = FALSE;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      radial = radial || sizes->stations[i].radial;
      if (isnan (self->cases[i].rule.uncertainty.u))
        return NAN;
    }
  if (sizes->n_stations == 1)
    return tm_rule_probability (&self->cases[0].rule, &sizes->stations[0]);
  margins = g_new (TmMargin, sizes->n_stations);
  for (guint i = 0; i < sizes->n_stations; i++)
    {
      if (radial)
        probability *= tm_rule_probability (&self->cases[i].rule, &sizes->stations[i]);
      else if (is_first_of_method (sizes, i))
        probability *= find_group_probability (self, sizes->stations[i].method_name, margins);
    }
  return probability;
}

/* -------- Putting it together -------- */

static void
copy_deciding (const Judge *self)
{
  TmJudgement *out = self->out;
  const StationCase *deciding = &self->cases[out->deciding];
  const TmUncertainty *uncertainty = &deciding->rule.uncertainty;
  gint64 band = tm_limits_band (&out->limits);
  gboolean is_guarded = deciding->rule.decision == TM_DECISION_GUARDED;

  out->verdict = deciding->verdict;
  out->side = find_case_side (self, out->deciding);
  out->method = deciding->use.method;
  out->gauge = deciding->use.gauge;
  out->method_name = deciding->use.name;
  out->u = uncertainty->u;
  out->dof = uncertainty->dof;
  out->coverage = uncertainty->coverage;
  out->expanded = uncertainty->expanded;
  out->guard = is_guarded ? deciding->rule.guard : 0;
  out->guard_out = is_guarded ? deciding->rule.guard_out : 0;
  out->settles = deciding->rule.settles;
  out->blind_share = band > 0 ? deciding->use.resolution / (double)band : NAN;
}

static TmWhy
find_why (const Judge *self)
{
  const TmJudgement *out = self->out;
  const StationCase *deciding = &self->cases[out->deciding];
  const TmRule *rule = &deciding->rule;

  if (isnan (out->u))
    return TM_WHY_NO_METHOD;
  if (out->verdict == TM_VERDICT_TOO_CLOSE && rule->decision == TM_DECISION_SIMPLE)
    return TM_WHY_METHOD_NOT_GOOD;
  if (deciding->use.gauge != NULL && !deciding->use.gauge->error_limit.given)
    return TM_WHY_NO_ERROR_LIMIT;
  return out->dof < FEW_DOF ? TM_WHY_FEW_READINGS : TM_WHY_NONE;
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
  else if (out->why == TM_WHY_NONE || out->why == TM_WHY_FEW_READINGS || out->why == TM_WHY_NO_ERROR_LIMIT)
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
judge_numbers (Judge *self)
{
  TmJudgement *out = self->out;
  MissingSize missing = apply_bonus (self, out->piece, out->feature, out->place);
  StationCase one;
  g_autofree StationCase *many = NULL;

  if (out->sizes.n_stations > 1)
    many = g_new (StationCase, out->sizes.n_stations);
  self->cases = many ? many : &one;
  judge_stations (self);
  for (guint i = 1; i < out->sizes.n_stations; i++)
    if (decides_over (self, i, out->deciding))
      out->deciding = i;
  copy_deciding (self);
  out->probability_in = find_probability (self);
  out->why = find_why (self);
  out->has_taper = tm_form_taper (out->feature, &out->sizes, &out->taper);
  out->has_out_of_round = tm_form_out_of_round (out->feature, &out->sizes, &out->out_of_round);
  hold_for_size (out, &missing);
  hold_for_stations (out);
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
    .limits = tm_feature_limits (feature),
  };
}

void
tm_judge (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place, TmJudgement *out)
{
  Judge self = { .job = job, .out = out };
  gboolean is_attribute;

  g_return_if_fail (job != NULL && piece != NULL && feature != NULL && out != NULL);
  is_attribute = tm_kind_is_attribute (feature->kind);
  start_judgement (piece, feature, place, out);
  tm_sizes_collect (feature, tm_job_readings_at (job, piece, feature, place), &out->sizes);
  if (feature->kind == TM_KIND_NOTE && out->sizes.n_stations == 0)
    out->why = TM_WHY_NO_LIMITS;
  else if (!is_attribute && !out->limits.has_lower && !out->limits.has_upper)
    out->why = TM_WHY_NO_LIMITS;
  else if (out->sizes.n_stations > 0 && is_attribute)
    {
      judge_outcomes (out);
      name_method (job, out);
    }
  else if (out->sizes.n_stations > 0)
    judge_numbers (&self);
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
      if (rank_verdict (judgement.verdict) > rank_verdict (worst))
        worst = judgement.verdict;
      measured += judgement.verdict != TM_VERDICT_NOT_MEASURED;
    }
  if (n_measured)
    *n_measured = measured;
  return feature->places > 0 ? worst : TM_VERDICT_NOT_MEASURED;
}
