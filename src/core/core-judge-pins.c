/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge-pins: what pin trials add to a judgement.
 *
 * A pin that went is a certain lower bound of the mating size, and no two-point size of the bore is
 * smaller than the mating size: where it proves the lower limit it does so at every station.  A pin
 * that did not go bounds the mating size alone from above: an oval or bell-mouthed bore is larger at some
 * station, so a station that is proven out by its readings stays out.
 */

#include <math.h>

#include "core-judge-private.h"

/* Guarded: proven in, or proven out, by this probability (as ISO 14253-1:2017). */
#define CONFORMANCE 0.95

/* Which side of the band the certain bounds lie on: -1 below it, 1 above it, 0 neither. */
static int
find_certain_side (const TmLimits *limits, const TmPinResult *pins)
{
  if (limits->has_upper && pins->has_low && pins->low > limits->upper)
    return 1;
  return limits->has_lower && pins->has_high && pins->high <= limits->lower ? -1 : 0;
}

static void
set_out (TmJudgement *out, gboolean is_small)
{
  out->verdict = TM_VERDICT_OUT;
  out->side = tm_judge_side (out->feature, &out->limits, is_small);
}

static void
set_too_close (TmJudgement *out)
{
  out->verdict = TM_VERDICT_TOO_CLOSE;
  out->side = TM_SIDE_NONE;
}

/* -------- Pins alone -------- */

static void
note_estimate (TmJudgement *out, const TmPinResult *pins)
{
  if (!pins->has_estimate)
    return;
  out->combined_reference = pins->reference;
  out->combined_size = pins->estimate;
  out->u = pins->u;
  out->expanded = (pins->high95 - pins->low95) / 2;
  out->coverage = pins->u > 0 ? out->expanded / pins->u : (double)NAN;
  out->probability_in = pins->probability_in;
}

gboolean
tm_judge_pins_alone (TmJudge *self)
{
  TmJudgement *out = self->out;
  g_auto (TmPinEvidence) evidence = { 0 };
  const TmPinResult *pins = &evidence.result;
  int side;

  if (tm_job_pin_trials_at (self->job, out->piece, out->feature, out->place) == NULL
      || !tm_pin_evidence_with (self->job, out->piece, out->feature, out->place, FALSE, self->options,
                                &evidence))
    return FALSE;
  side = find_certain_side (&out->limits, pins);
  out->counted = TM_COUNTED_PINS;
  out->pins_joined = TRUE;
  set_too_close (out);
  self->pins_contradict = pins->contradiction;
  if (!pins->contradiction)
    {
      note_estimate (out, pins);
      if (pins->proves_band)
        out->verdict = TM_VERDICT_IN;
      else if (side != 0)
        set_out (out, side < 0);
      else
        self->pins_open = TRUE;
      if (pins->proves_band || side != 0)
        out->probability_in = pins->proves_band ? 1 : 0;
    }
  out->why = tm_judge_find_why (self);
  return TRUE;
}

/* -------- Pins beside readings -------- */

/* Readings and certain bounds cannot both be right.  A bore that is out above may well let no larger
 * pin through elsewhere. */
static gboolean
cannot_both_be (const TmJudgement *out, const TmPinResult *pins)
{
  int side = find_certain_side (&out->limits, pins);
  const TmLocalSize *size = &out->sizes.stations[out->deciding];
  gboolean is_below = out->limits.has_lower && tm_local_size_compare (size, out->limits.lower) < 0;

  if (out->verdict == TM_VERDICT_IN)
    return side != 0;
  if (out->verdict != TM_VERDICT_OUT)
    return FALSE;
  return is_below ? pins->has_low && pins->low >= out->limits.lower : side < 0;
}

static gboolean
is_any_out (const TmJudge *self)
{
  for (guint i = 0; i < self->out->sizes.n_stations; i++)
    if (self->cases[i].verdict == TM_VERDICT_OUT)
      return TRUE;
  return FALSE;
}

/* The density is that of the smallest station; at the others the upper limit must be proven by what was
 * read there. */
static gboolean
are_others_below_upper (const TmJudge *self)
{
  const TmSizes *sizes = &self->out->sizes;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      TmRule rule;
      TmLimits upper = self->out->limits;

      if (i == sizes->smallest || !upper.has_upper || self->cases[i].verdict == TM_VERDICT_IN)
        continue;
      upper.has_lower = FALSE;
      tm_rule_init (&rule, TM_DECISION_GUARDED, 1, &upper, &self->cases[i].rule.uncertainty, FALSE);
      if (tm_rule_verdict (&rule, &sizes->stations[i]) != TM_VERDICT_IN)
        return FALSE;
    }
  return TRUE;
}

/* N:1 on half the width of the 95 % interval. */
static gboolean
meets_ratio (const TmJudge *self, const TmPinResult *pins)
{
  gint64 band = tm_limits_band (&self->out->limits);

  return band <= 0 || (double)band >= tm_job_simple_ratio (self->job) * (pins->high95 - pins->low95);
}

static double
get_estimate_beyond (const TmPinResult *pins, gint64 limit)
{
  return (double)(pins->reference - limit) + pins->estimate;
}

static gboolean
is_estimate_small (const TmJudgement *out, const TmPinResult *pins)
{
  return out->limits.has_lower && get_estimate_beyond (pins, out->limits.lower) < 0;
}

static gboolean
is_estimate_within (const TmJudgement *out, const TmPinResult *pins)
{
  return !is_estimate_small (out, pins)
         && !(out->limits.has_upper && get_estimate_beyond (pins, out->limits.upper) > 0);
}

static void
weigh_simple (TmJudge *self, const TmPinResult *pins)
{
  TmJudgement *out = self->out;

  if (!meets_ratio (self, pins))
    self->not_good = TRUE;
  else if (!is_estimate_within (out, pins))
    set_out (out, is_estimate_small (out, pins));
  else if (are_others_below_upper (self))
    out->verdict = TM_VERDICT_IN;
}

/* Proven in, or proven out on one side: a method so coarse that the band is lost in its uncertainty
 * proves neither. */
static void
weigh_guarded (TmJudge *self, const TmPinResult *pins)
{
  TmJudgement *out = self->out;

  if (pins->probability_in >= CONFORMANCE && are_others_below_upper (self))
    out->verdict = TM_VERDICT_IN;
  else if (pins->probability_below >= CONFORMANCE || pins->probability_above >= CONFORMANCE)
    set_out (out, pins->probability_below >= CONFORMANCE);
}

/* Pins and readings together, where all methods count. */
static void
weigh (TmJudge *self, const TmPinResult *pins)
{
  TmJudgement *out = self->out;
  int side = find_certain_side (&out->limits, pins);

  out->counted = TM_COUNTED_COMBINED;
  out->pins_joined = TRUE;
  note_estimate (out, pins);
  if (is_any_out (self))
    return;
  set_too_close (out);
  if (pins->proves_band)
    out->verdict = TM_VERDICT_IN;
  else if (side != 0)
    set_out (out, side < 0);
  else if (!pins->has_estimate)
    self->pins_open = TRUE;
  else if (self->job->decision == TM_DECISION_SIMPLE)
    weigh_simple (self, pins);
  else
    weigh_guarded (self, pins);
}

gboolean
tm_judge_join_pins (TmJudge *self)
{
  TmJudgement *out = self->out;
  g_auto (TmPinEvidence) evidence = { 0 };
  gboolean combine = out->feature->counts == TM_COUNTS_COMBINED;

  if (tm_job_pin_trials_at (self->job, out->piece, out->feature, out->place) == NULL
      || !tm_pin_evidence_with (self->job, out->piece, out->feature, out->place, TRUE, self->options,
                                &evidence))
    return FALSE;
  self->pins_contradict = evidence.result.contradiction || cannot_both_be (out, &evidence.result);
  if (combine && self->pins_contradict)
    set_too_close (out);
  else if (combine)
    weigh (self, &evidence.result);
  return TRUE;
}
