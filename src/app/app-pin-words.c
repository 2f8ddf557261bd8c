/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-pin-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-evidence-words.h"
#include "app-feature-words.h"
#include "app-reading-words.h"

static guint
limit_decimals (const TmFeature *feature)
{
  return MAX (feature->lower.decimals, feature->upper.decimals);
}

/* A size as it is marked on the pin, in the feature's unit. */
static char *
format_mark (gint64 size, const TmFeature *feature)
{
  return tm_count_format_exact (size, feature->unit, limit_decimals (feature));
}

/* A bound of the true size, rounded to the side that stays true: to a tenth of a micrometre or a
 * hundred-thousandth of an inch, for a pin's class is finer than the limits are written. */
static char *
format_bound (gint64 count, const TmFeature *feature, gboolean up)
{
  guint least = feature->unit == TM_UNIT_IN ? 5 : 4;
  return tm_count_format_bound (count, feature->unit, MAX (limit_decimals (feature), least), up);
}

static const char *
find_sign_word (TmPinSign sign)
{
  return sign == TM_PIN_PLUS ? C_ ("pin", "plus") : C_ ("pin", "minus");
}

/* "pin 12.006, class X plus" */
static char *
describe_pin (gint64 size, const char *pin_class, TmPinSign sign, const TmQuantity *measured,
              const TmFeature *feature)
{
  g_autofree char *mark = format_mark (size, feature);
  if (measured->given)
    {
      g_autofree char *own = tm_quantity_format_in (measured, feature->unit);
      /* Translators: the size marked on a pin, then its own measured size. */
      return g_strdup_printf (_ ("pin %s, measured %s"), mark, own);
    }
  /* Translators: a pin's size, its class, "plus" or "minus". */
  return g_strdup_printf (_ ("pin %s, class %s %s"), mark, pin_class, find_sign_word (sign));
}

static char *
describe_outcome (const char *pin, gboolean went)
{
  /* Translators: a pin, with what it did. */
  return g_strdup_printf (went ? _ ("%s, went") : _ ("%s, did not go"), pin);
}

char *
tm_words_pin_entry (const TmPinEntry *pin, const TmFeature *feature)
{
  if (!pin->ok)
    return g_strdup (pin->problem);
  g_autofree char *what = describe_pin (pin->size.count, pin->pin_class, pin->sign, &pin->measured, feature);
  if (!pin->has_outcome)
    /* Translators: a pin; on the next line the keys that say what it did. */
    return g_strdup_printf (_ ("%s\n+ went, −\u00a0did\u00a0not\u00a0go"), what);
  g_autofree char *trial = describe_outcome (what, pin->went);
  return g_strdup_printf (_ ("reads as %s"), trial);
}

char *
tm_words_pin_trial (const TmPinTrial *trial)
{
  g_autofree char *pin
      = describe_pin (trial->size.count, trial->pin_class, trial->sign, &trial->measured, trial->row.feature);
  return describe_outcome (pin, trial->went);
}

char *
tm_words_pin_recorded (const TmPinTrial *trial, const TmJudgement *judgement)
{
  g_autofree char *what = tm_words_pin_trial (trial);
  g_autofree char *proves = tm_words_state (judgement->verdict, judgement->side, TRUE,
                                            judgement->sizes.n_stations, trial->row.feature->stations->len);
  if (judgement->verdict == TM_VERDICT_NOT_MEASURED && judgement->sizes.n_stations == 0)
    return g_strdup_printf (_ ("Recorded %s"), what);
  /* Translators: a pin trial, and what the place now proves. */
  return g_strdup_printf (_ ("Recorded %s: %s"), what, proves);
}

char *
tm_words_pin_set (const TmGauge *set)
{
  TmPinSign sign;
  if (*set->pin_class == '\0')
    return g_strdup (set->tag);
  if (!tm_pin_sign_from_word (set->pin_sign, &sign))
    return g_strdup_printf (_ ("%s, class %s"), set->tag, set->pin_class);
  return g_strdup_printf (_ ("%s, class %s %s"), set->tag, set->pin_class, find_sign_word (sign));
}

static char *
describe_two (const TmPinPlan *plan, const TmFeature *feature)
{
  g_autofree char *go = format_mark (plan->go_size, feature);
  g_autofree char *nogo = format_mark (plan->nogo_size, feature);
  const char *go_class = plan->go_set->pin_class, *nogo_class = plan->nogo_set->pin_class;
  TmPinSign go_sign = TM_PIN_MINUS, nogo_sign = TM_PIN_MINUS;
  tm_pin_sign_from_word (plan->go_set->pin_sign, &go_sign);
  tm_pin_sign_from_word (plan->nogo_set->pin_sign, &nogo_sign);
  if (!g_str_equal (go_class, nogo_class))
    return g_strdup_printf (_ ("%s go (class %s %s) and %s no-go (class %s %s)"), go, go_class,
                            find_sign_word (go_sign), nogo, nogo_class, find_sign_word (nogo_sign));
  /* Translators: "12.006 plus go and 12.018 minus no-go, class X". */
  return g_strdup_printf (_ ("%s %s go and %s %s no-go, class %s"), go, find_sign_word (go_sign), nogo,
                          find_sign_word (nogo_sign), go_class);
}

char *
tm_words_pin_plan (const TmPinPlan *plan, const TmFeature *feature)
{
  if (plan->has_go && plan->has_nogo)
    return describe_two (plan, feature);
  if (!plan->has_go && !plan->has_nogo)
    return g_strdup ("");
  const TmGauge *set = plan->has_go ? plan->go_set : plan->nogo_set;
  g_autofree char *size = format_mark (plan->has_go ? plan->go_size : plan->nogo_size, feature);
  TmPinSign sign = TM_PIN_MINUS;
  tm_pin_sign_from_word (set->pin_sign, &sign);
  return g_strdup_printf (plan->has_go ? _ ("%s %s go, class %s") : _ ("%s %s no-go, class %s"), size,
                          find_sign_word (sign), set->pin_class);
}

/* "the band begins at 12.000", "…ends at 12.015", or both; "" when neither side is open. */
static char *
describe_missing (gint64 open_below, gint64 open_above, const TmFeature *feature)
{
  g_autofree char *lower = tm_quantity_format_in (&feature->lower, feature->unit);
  g_autofree char *upper = tm_quantity_format_in (&feature->upper, feature->unit);
  gboolean below = open_below != 0 && feature->lower.given;
  gboolean above = open_above != 0 && feature->upper.given;
  if (below && above)
    return g_strdup_printf (_ ("the band goes from %s to %s"), lower, upper);
  if (below)
    return g_strdup_printf (_ ("the band begins at %s"), lower);
  return above ? g_strdup_printf (_ ("the band ends at %s"), upper) : g_strdup ("");
}

char *
tm_words_plan_leaves_open (const TmPinPlan *plan, const TmFeature *feature)
{
  g_autofree char *missing = describe_missing (plan->open_below, plan->open_above, feature);
  if (plan->proves_band || *missing == '\0' || (!plan->has_go && !plan->has_nogo))
    return g_strdup ("");
  g_autofree char *low = format_bound (plan->low, feature, FALSE);
  g_autofree char *high = format_bound (plan->high, feature, TRUE);
  if (plan->has_go && plan->has_nogo)
    return g_strdup_printf (_ ("They prove %s to %s; %s."), low, high, missing);
  if (plan->has_go)
    return g_strdup_printf (_ ("It proves %s or more; %s."), low, missing);
  return g_strdup_printf (_ ("It proves less than %s; %s."), high, missing);
}

/* "12.006 to 12.0183", and whether that is the band. */
static char *
describe_bounds (const TmPinResult *result, const TmFeature *feature)
{
  g_autofree char *low = format_bound (result->low, feature, FALSE);
  g_autofree char *high = format_bound (result->high, feature, TRUE);
  const char *symbol = tm_unit_symbol (feature->unit);
  if (result->proves_band && result->has_low && result->has_high)
    return g_strdup_printf (_ ("prove the band: %s to %s %s"), low, high, symbol);
  if (result->proves_band)
    return g_strdup_printf (_ ("prove the limit: %s %s"), result->has_low ? low : high, symbol);
  if (result->has_low && result->has_high)
    return g_strdup_printf (_ ("prove %s to %s %s"), low, high, symbol);
  if (result->has_low)
    return g_strdup_printf (_ ("prove %s %s or more"), low, symbol);
  return g_strdup_printf (_ ("prove less than %s %s"), high, symbol);
}

/* What is left open on one side: "12.015 to 12.0183 stays open", or that no pin bounds it at all. */
static char *
describe_open_side (gint64 open, const char *from, const char *to, const char *unbounded)
{
  if (open == 0)
    return NULL;
  if (open < 0)
    return g_strdup (unbounded);
  return g_strdup_printf (_ ("leave %s to %s open"), from, to);
}

static void
add_line (GPtrArray *lines, char *line)
{
  if (line != NULL)
    g_ptr_array_add (lines, line);
}

static void
add_open (GPtrArray *lines, const TmPinResult *result, const TmFeature *feature)
{
  g_autofree char *lower = tm_quantity_format_in (&feature->lower, feature->unit);
  g_autofree char *upper = tm_quantity_format_in (&feature->upper, feature->unit);
  g_autofree char *low = format_bound (result->low, feature, FALSE);
  g_autofree char *high = format_bound (result->high, feature, TRUE);
  if (feature->lower.given)
    add_line (lines,
              describe_open_side (result->open_below, low, lower, _ ("no pin that went bounds it below")));
  if (feature->upper.given)
    add_line (lines, describe_open_side (result->open_above, upper, high,
                                         _ ("no pin that did not go bounds it above")));
}

static char *
describe_contradiction (const TmPinResult *result)
{
  const TmPin *first = result->contradicting[0], *second = result->contradicting[1];
  if (first == NULL || second == NULL || first->trial == NULL || second->trial == NULL)
    return g_strdup (_ ("The pins and the readings cannot both be true: try them again."));
  g_autofree char *one = tm_words_pin_trial (first->trial);
  g_autofree char *other = tm_words_pin_trial (second->trial);
  /* Translators: two pin trials that exclude each other. */
  return g_strdup_printf (_ ("Cannot both be true: %s; %s. Try them again."), one, other);
}

/* The mating size that pins and readings give together. */
static char *
describe_estimate (const TmPinEvidence *evidence, const TmFeature *feature)
{
  const TmPinResult *result = &evidence->result;
  TmJudgement form = { .feature = feature };
  double half = (result->high95 - result->low95) / 2;
  double middle = (result->high95 + result->low95) / 2;
  if (!result->has_estimate || !isfinite (half))
    return NULL;
  g_autofree char *size = tm_words_size_pair (feature, result->reference, middle, half);
  if (!evidence->form_assumed || evidence->form <= 0)
    return g_strdup_printf (_ ("mating size %s"), size);
  g_autofree char *unseen = tm_judgement_spread_text (&form, evidence->form);
  return g_strdup_printf (_ ("mating size %s; form not seen, %s assumed"), size, unseen);
}

char *
tm_words_pins_prove (const TmPinEvidence *alone, const TmPinEvidence *with_readings, const TmFeature *feature)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const TmPinResult *result = &alone->result;
  if (result->contradiction)
    g_ptr_array_add (lines, describe_contradiction (result));
  else
    {
      if (result->has_low || result->has_high)
        g_ptr_array_add (lines, describe_bounds (result, feature));
      if (!result->proves_band)
        add_open (lines, result, feature);
      if (with_readings != NULL && with_readings->result.contradiction)
        g_ptr_array_add (lines, describe_contradiction (&with_readings->result));
      else
        add_line (lines, with_readings != NULL ? describe_estimate (with_readings, feature)
                                               : describe_estimate (alone, feature));
    }
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **)lines->pdata);
}
