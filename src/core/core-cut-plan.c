/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-plan: the change that is worth most within the risk.
 *
 * The worth of a change is P(in now) + P(metal left)·(best P(in) of the cuts that may follow), those having
 * what this one leaves of the risk.  Risk is counted over the whole run: what a cut adds to
 * the chance of metal gone is spent, whatever is read afterwards, and what is spent never exceeds what was
 * accepted. The share of runs that end with metal gone is the mean of what they spent, so it cannot exceed it
 * either.
 */

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-cut-private.h"

/* A cut has to raise the chance to end in the band by this much to be worth its while (our own choice). */
#define NOTICEABLE 0.02
/* What a further cut and its readings are worth to be spared (our own choice). */
#define TROUBLE 0.03
/* Two changes whose worth differs by less are alike: then the smaller one is dialled, or, where another cut
 * follows in any case, the larger one. */
#define ALIKE 1e-4
/* Changes tried: from the largest down in steps that widen so, until so many one after the other are no
 * better; then narrower ones about the best. */
#define WIDENING    1.6
#define PATIENCE    5
#define REFINEMENTS 8
/* What is tried to tell whether the dial stands in the way. */
#define MUCH_FINER 64
/* A cut is never larger than this many steps: what a double still counts. */
#define MOST_STEPS 1e12

typedef struct {
  const TmCutBelief *belief;
  const TmCutWish *wish;
  TmCutTarget target;
  TmCutSequel sequel;
  double inward; /* by how much the limits of worth lie inside */
  double now;    /* chance of metal gone before the cut */
} Planner;

/* -------- Worth of one change -------- */

typedef struct {
  TmCutShares shares;
  double value;
  double rank; /* value, less the trouble of a further cut */
  double second;
} Worth;

static void
find_worth (const Planner *self, double change, gboolean is_search, Worth *out)
{
  double spent, next;

  if (is_search)
    tm_cut_rough_shares (self->belief, &self->target, change, self->inward, &out->shares);
  else
    tm_cut_shares (self->belief, &self->target, change, self->inward, &out->shares);
  out->value = out->rank = out->shares.in;
  out->second = 0;
  if (self->wish->further == 0 || !(out->shares.left > 1e-9))
    return;
  spent = MAX (0, out->shares.gone - self->now);
  next = tm_cut_sequel_value (&self->sequel, change, self->wish->risk - spent,
                              is_search ? NULL : &out->second);
  out->value += out->shares.left * next;
  out->rank = out->value - out->shares.left * (next > 0 ? TROUBLE : 0);
}

/* -------- The search -------- */

static double
find_furthest (const Planner *self)
{
  double sum = 0;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    sum += self->sequel.nodes[j].weight * self->sequel.nodes[j].furthest;
  return sum;
}

/* Beyond this no cut is of use: metal is gone for certain, or the near limit is passed with all of the
 * spread. */
static double
find_reach (const Planner *self)
{
  const TmCutSequel *sequel = &self->sequel;
  double furthest = find_furthest (self), spread = 0, to;

  for (guint j = 0; j < TM_CUT_NODES; j++)
    if (sequel->nodes[j].weight > 1e-4)
      spread = MAX (spread, sqrt (sequel->nodes[j].x_x) + sequel->nodes[j].scatter);
  to = isinf (sequel->end) ? sequel->near + 6 * spread : sequel->end;
  return MAX (0, to - furthest) * 1.5 + 6 * spread;
}

/* By how many standard deviations the chance of metal gone lies above the risk: nearly straight in the
 * change.
 * @rough: as if the station furthest on were alone, which is never more than the chance itself. */
static double
find_excess (const Planner *self, double steps, gboolean rough)
{
  double change = steps * self->wish->step, risk = self->wish->risk, gone;

  if (risk >= 1)
    return -1;
  gone = rough ? tm_cut_rough_gone (self->belief, &self->target, change)
               : tm_cut_share_gone (self->belief, &self->target, change);
  return gsl_cdf_ugaussian_Pinv (CLAMP (gone, 1e-300, 1 - 1e-16))
         - gsl_cdf_ugaussian_Pinv (CLAMP (risk, 1e-300, 1 - 1e-16));
}

/* What brackets the answer: at `low` the risk is kept, at `high` it is not. */
typedef struct {
  double low, high;
  double at_low, at_high;
} Bracket;

/* Straight lines between what brackets it, halves when they do not narrow it. */
static void
close_bracket (const Planner *self, Bracket *bracket, gboolean rough)
{
  for (guint i = 0; bracket->high - bracket->low > 1; i++)
    {
      double slope = (bracket->at_high - bracket->at_low) / (bracket->high - bracket->low);
      double middle
          = i % 3 == 2 ? (bracket->low + bracket->high) / 2 : bracket->low - bracket->at_low / slope;
      double at_middle;

      middle = CLAMP (floor (middle), bracket->low + 1, bracket->high - 1);
      at_middle = find_excess (self, middle, rough);
      if (at_middle <= 0)
        {
          bracket->low = middle;
          bracket->at_low = at_middle;
        }
      else
        {
          bracket->high = middle;
          bracket->at_high = at_middle;
        }
    }
}

/* The largest whole number of steps with no more than the risk; metal gone only grows with it.  The rough
 * chance finds one that is never too small; from it the way down is short. */
static double
find_most_steps (const Planner *self)
{
  double reach = floor (MIN (find_reach (self) / self->wish->step, MOST_STEPS)), back = 1;
  Bracket bracket = { 0, reach, find_excess (self, 0, TRUE), find_excess (self, reach, TRUE) };

  if (bracket.at_low > 0)
    return 0;
  if (bracket.at_high > 0)
    close_bracket (self, &bracket, TRUE);
  else
    bracket.low = reach;
  bracket.high = bracket.low + 1;
  bracket.at_low = find_excess (self, bracket.low, FALSE);
  while (bracket.at_low > 0 && bracket.low > 0)
    {
      bracket.high = bracket.low;
      bracket.at_high = bracket.at_low;
      bracket.low = MAX (0, bracket.low - back);
      bracket.at_low = find_excess (self, bracket.low, FALSE);
      back *= 3;
    }
  close_bracket (self, &bracket, FALSE);
  return bracket.low;
}

typedef struct {
  double steps;
  double rank;
  double value;
} Best;

static void
try_steps (const Planner *self, double steps, Best *best)
{
  Worth worth;

  find_worth (self, steps * self->wish->step, TRUE, &worth);
  if (worth.rank > best->rank + ALIKE
      || (worth.rank > best->rank - ALIKE && steps < best->steps && worth.shares.left < 0.5))
    *best = (Best) { steps, MAX (worth.rank, best->rank), worth.value };
}

/* From the largest change down in widening steps, then narrower ones about the best. */
static Best
search (const Planner *self, double least, double most)
{
  Best best = { most, -1, 0 };
  double width = 1, from = 1;
  guint idle = 0;

  for (double steps = most; steps >= least && idle < PATIENCE; steps = floor (MIN (steps - 1, most - width)))
    {
      try_steps (self, steps, &best);
      idle = best.steps < steps || best.steps > steps ? idle + 1 : 0;
      if (idle == 0)
        from = width;
      width = MAX (width + 1, width * WIDENING);
    }
  width = floor (MAX (1, from * (WIDENING - 1)));
  for (guint i = 0; i < REFINEMENTS && width >= 1; i++)
    {
      double centre = best.steps;

      if (centre + width <= most)
        try_steps (self, centre + width, &best);
      if (centre - width >= least && best.steps == centre)
        try_steps (self, centre - width, &best);
      width = floor (width / 2);
    }
  return best;
}

/* -------- What is said -------- */

/* @known (may be NULL): shares of worth, which are the chances where worth is being in. */
static void
fill_chances (const Planner *self, double change, const TmCutShares *known, TmCutChances *out)
{
  const TmCutNext next = { self->wish->next_method, self->wish->next_own, self->wish->next_shared };
  TmCutShares shares;

  if (known != NULL && !(self->inward > 0))
    shares = *known;
  else
    tm_cut_shares (self->belief, &self->target, change, 0, &shares);
  out->gone = shares.gone;
  out->left = shares.left;
  out->in = MAX (0, 1 - shares.gone - shares.left);
  out->proven = NAN;
  if (next.own > 0 || next.shared > 0)
    out->proven = tm_cut_share_proven (self->belief, &self->target, change, &next, self->wish->guard);
}

static void
fill_plan (const Planner *self, double change, TmCutPlan *out)
{
  Worth worth;

  out->change = change;
  tm_cut_say_sizes (self->belief, change, out);
  find_worth (self, change, FALSE, &worth);
  fill_chances (self, change, &worth.shares, &out->chances);
  out->value = worth.value;
  out->second = worth.second;
}

/* -------- Choosing -------- */

/* The best whole number of steps within the risk; rank -1: there is none. */
static Best
find_best (const Planner *self, const TmCutShares *now)
{
  const TmCutWish *wish = self->wish;
  double most = find_most_steps (self);
  double least = ceil (MAX (wish->least, wish->step) / wish->step - 1e-9);

  if (most < least || !(now->left > 0))
    return (Best) { 0, -1, 0 };
  return search (self, least, most);
}

/* Whether a dial with marks as fine as one likes, on a tool that takes as little, would gain something. */
static gboolean
is_dial_too_coarse (const Planner *self, const TmCutShares *now)
{
  TmCutWish fine = *self->wish;
  Planner other = *self;

  fine.step = fine.least = self->wish->step / MUCH_FINER;
  other.wish = &fine;
  other.sequel.least = fine.least;
  return find_best (&other, now).rank > now->in + NOTICEABLE;
}

/* Why nothing is dialled. */
static TmCutStatus
find_refusal (const Planner *self, const TmCutShares *now)
{
  /* With a gauge that tells next to nothing metal may be gone by chance alone. */
  if (now->gone > 0.5 && find_furthest (self) > self->sequel.end)
    return TM_CUT_METAL_GONE;
  if (now->left < NOTICEABLE || now->in >= 0.5)
    return TM_CUT_NOTHING_LEFT;
  if (self->sequel.near > self->sequel.end)
    return TM_CUT_UNEVEN;
  return is_dial_too_coarse (self, now) ? TM_CUT_UNDER_LEAST : TM_CUT_TOO_COARSE;
}

static gboolean
start (Planner *self, const TmCutBelief *belief, const TmCutWish *wish, TmCutPlan *out)
{
  TmCutLimits limits;

  *out = (TmCutPlan) { .status = TM_CUT_OK };
  out->chances.proven = out->now.proven = NAN;
  self->belief = belief;
  self->wish = wish;
  tm_cut_say_sizes (belief, 0, out);
  self->target = tm_cut_target (belief, &wish->band);
  self->inward = wish->aim == TM_AIM_PROVEN && isfinite (wish->guard) ? MAX (0, wish->guard) : 0;
  limits = tm_cut_target_limits (&self->target);
  if (isinf (limits.near) && isinf (limits.far))
    out->status = TM_CUT_NO_LIMITS;
  else if (limits.near > limits.far)
    out->status = TM_CUT_BAD_BAND;
  else if (belief->n_read == 0)
    out->status = TM_CUT_NOT_READ;
  else if (!(wish->step > 0) || !isfinite (wish->step))
    out->status = TM_CUT_NO_DIAL;
  if (belief->n_read == 0 || out->status == TM_CUT_NO_LIMITS || out->status == TM_CUT_BAD_BAND)
    return FALSE;
  tm_cut_sequel_init (&self->sequel, belief, wish, &self->target, self->inward);
  fill_chances (self, 0, NULL, &out->now);
  self->now = out->now.gone;
  return out->status == TM_CUT_OK;
}

void
tm_cut_plan (const TmCutBelief *belief, const TmCutWish *wish, TmCutPlan *out)
{
  Planner self;
  TmCutShares now;
  Best best;

  g_return_if_fail (belief != NULL && wish != NULL && out != NULL);
  if (!start (&self, belief, wish, out))
    return;
  now = (TmCutShares) { out->now.gone, out->now.left, out->now.in };
  if (self.inward > 0)
    tm_cut_shares (belief, &self.target, 0, self.inward, &now);
  best = find_best (&self, &now);
  if (best.rank > now.in + NOTICEABLE)
    {
      fill_plan (&self, best.steps * wish->step, out);
      out->status = out->chances.left > 0.5 && out->second > 0 ? TM_CUT_PROVE : TM_CUT_OK;
      return;
    }
  fill_plan (&self, 0, out);
  out->second = 0;
  out->value = now.in;
  out->status = find_refusal (&self, &now);
}

void
tm_cut_try (const TmCutBelief *belief, const TmCutWish *wish, double change, TmCutPlan *out)
{
  Planner self;

  g_return_if_fail (belief != NULL && wish != NULL && out != NULL);
  g_return_if_fail (isfinite (change) && change >= 0);
  if (start (&self, belief, wish, out))
    fill_plan (&self, change, out);
}
