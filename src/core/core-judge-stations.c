/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge-stations: each station judged by its own method, and the one that decides.
 */

#include <math.h>
#include <string.h>

#include "core-combine.h"
#include "core-judge-private.h"
#include "core-probability.h"

/* Beyond this room, in u, nothing is left of a normal tail in a double. */
#define FAR_INSIDE 9.0
/* In a crowd of stations methods are not put together, so that the work stays bounded. */
#define MOST_COMBINED 64

/* -------- One station -------- */

/* Two readings share one budget unless a calibration or a check on the standard may lie between them. */
static gboolean
is_same_when (const TmJob *job, const TmReading *a, const TmReading *b)
{
  if (a->part_temp.given || a->gauge_temp.given || b->part_temp.given || b->gauge_temp.given)
    return FALSE;
  return (job->calibrations->len == 0 && job->checks->len == 0) || strcmp (a->row.at, b->row.at) == 0;
}

static gboolean
is_same_case (const TmJob *job, const TmLocalSize *a, const TmLocalSize *b, const TmStationCase *of_a)
{
  return a->n == b->n && a->radial == b->radial && strcmp (a->method_name, b->method_name) == 0
         && !a->several_methods && !b->several_methods && (a->n == 1 || of_a->use.has_repeatability)
         && is_same_when (job, a->last, b->last);
}

static gboolean
is_weight_on_assumed (const TmJudge *self, const TmCombined *combined, const TmUseWhen *when)
{
  double weight = 0;

  for (guint i = 0; i < combined->n_parts; i++)
    {
      TmMethodUse use
          = tm_method_use_at (self->job, self->out->feature, combined->parts[i].method_name, when);

      weight += tm_method_rests_on_assumed (&use) ? combined->parts[i].weight : 0;
    }
  return weight >= 0.1;
}

/* All methods at this station as one size, exact to a count; FALSE where they make none. */
static gboolean
combine_station (TmJudge *self, TmLocalSize *size, const TmUseWhen *when, TmStationCase *out,
                 TmUncertainty *uncertainty)
{
  TmJudgement *judgement = self->out;
  gboolean asked = judgement->feature->counts == TM_COUNTS_COMBINED;
  g_auto (TmCombined) combined = { 0 };

  if (size->radial || !size->several_methods || judgement->sizes.n_stations > MOST_COMBINED)
    return FALSE;
  tm_combine_with (self->job, judgement->piece, judgement->feature, judgement->place, size->station,
                   self->options, &combined);
  out->disagree = combined.disagree;
  if (!asked || isnan (combined.u) || combined.n_parts < 2)
    return FALSE;
  out->combined = TRUE;
  out->assumed = is_weight_on_assumed (self, &combined, when);
  size->sum = ((TmWide)combined.reference + llround (combined.size)) * size->n;
  *uncertainty
      = (TmUncertainty) { combined.u, combined.u, 0, combined.dof, combined.coverage, combined.expanded };
  return TRUE;
}

static void
make_case (TmJudge *self, TmLocalSize *size, TmStationCase *out)
{
  const TmJob *job = self->job;
  TmUseWhen when = tm_use_when (size->last);
  TmUncertainty uncertainty;

  out->combined = out->disagree = FALSE;
  out->use = tm_method_use_at (job, self->out->feature, size->method_name, &when);
  if (self->bonus_unknown)
    out->use.known = FALSE;
  if (!combine_station (self, size, &when, out, &uncertainty))
    uncertainty = tm_method_uncertainty (&out->use, size, self->bonus.value > 0 ? &self->bonus : NULL);
  tm_rule_init (&out->rule, job->decision, tm_job_simple_ratio (job), &self->out->limits, &uncertainty,
                size->radial);
}

/* Sizes that were combined may change which is the smallest and which the largest. */
static void
find_extremes (TmSizes *sizes)
{
  sizes->smallest = sizes->largest = 0;
  for (guint i = 1; i < sizes->n_stations; i++)
    {
      const TmLocalSize *size = &sizes->stations[i];
      const TmLocalSize *smallest = &sizes->stations[sizes->smallest];
      const TmLocalSize *largest = &sizes->stations[sizes->largest];

      if (size->sum * smallest->n < smallest->sum * size->n)
        sizes->smallest = i;
      if (size->sum * largest->n > largest->sum * size->n)
        sizes->largest = i;
    }
}

static void
make_cases (TmJudge *self)
{
  TmSizes *sizes = &self->out->sizes;
  gboolean combined = FALSE;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      TmStationCase *each = &self->cases[i];

      if (i > 0
          && is_same_case (self->job, &sizes->stations[i - 1], &sizes->stations[i], &self->cases[i - 1]))
        *each = self->cases[i - 1];
      else
        make_case (self, &sizes->stations[i], each);
      each->verdict = tm_rule_verdict (&each->rule, &sizes->stations[i]);
      combined = combined || each->combined;
    }
  if (combined)
    find_extremes (sizes);
}

/* -------- The station that decides -------- */

TmSide
tm_judge_side (const TmFeature *feature, const TmLimits *limits, gboolean is_small)
{
  TmCut cut = tm_feature_cut (feature);

  if (cut == TM_CUT_UNKNOWN || limits->zero_bounded)
    return TM_SIDE_NONE;
  return is_small == (cut == TM_CUT_GROWS) ? TM_SIDE_METAL_LEFT : TM_SIDE_METAL_GONE;
}

static TmSide
find_case_side (const TmJudge *self, guint station)
{
  const TmLimits *limits = &self->out->limits;
  const TmLocalSize *size = &self->out->sizes.stations[station];

  if (self->cases[station].verdict != TM_VERDICT_OUT)
    return TM_SIDE_NONE;
  return tm_judge_side (self->out->feature, limits,
                        limits->has_lower && tm_local_size_compare (size, limits->lower) < 0);
}

/* Of two stations that are both out, the one that cannot be cut again decides over the one that can;
 * then the one furthest beyond a limit, or nearest to one, in its own uncertainty. */
static gboolean
decides_over (const TmJudge *self, guint a, guint b)
{
  int rank = tm_verdict_rank (self->cases[a].verdict) - tm_verdict_rank (self->cases[b].verdict);
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
find_group_probability (const TmJudge *self, const char *method, TmMargin *margins)
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
find_probability (const TmJudge *self)
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
copy_deciding (const TmJudge *self)
{
  TmJudgement *out = self->out;
  const TmStationCase *deciding = &self->cases[out->deciding];
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

/* The size that counts, where it is not simply the deciding station's mean. */
static void
note_counted (TmJudge *self)
{
  TmJudgement *out = self->out;
  const TmLocalSize *size = &out->sizes.stations[out->deciding];

  out->correction = tm_local_size_correction (size);
  for (guint i = 0; i < out->sizes.n_stations; i++)
    if (self->cases[i].combined)
      out->counted = TM_COUNTED_COMBINED;
  if (out->counted != TM_COUNTED_COMBINED)
    return;
  out->correction = 0;
  out->combined_reference = (gint64)(size->sum / size->n);
  out->combined_size = tm_local_size_beyond (size, out->combined_reference);
}

void
tm_judge_stations (TmJudge *self)
{
  TmJudgement *out = self->out;

  make_cases (self);
  out->deciding = 0;
  for (guint i = 1; i < out->sizes.n_stations; i++)
    if (decides_over (self, i, out->deciding))
      out->deciding = i;
  copy_deciding (self);
  out->probability_in = find_probability (self);
  note_counted (self);
}
