/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-cut-print: the answer of cut, in words and as JSON.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-cut.h"
#include "cli-json.h"
#include "cli-share.h"

/* -------- Lengths -------- */

/* A size that lies @counts beside the reference, to @decimals. */
static char *
format_size (const TmCutCase *cut, double counts, guint decimals)
{
  double most = (double)TM_COUNT_MAX;
  TmWide sum = (TmWide)cut->advice.reference + llround (CLAMP (counts, -most, most));

  return tm_count_format ((gint64)CLAMP (sum, -TM_COUNT_MAX, TM_COUNT_MAX), cut->unit, decimals);
}

static char *
format_spread (const TmCutCase *cut, double counts, guint decimals)
{
  double most = (double)TM_COUNT_MAX;

  return tm_count_format (llround (CLAMP (counts, 0, most)), cut->unit, decimals);
}

static char *
format_dial (const TmCutCase *cut, gint64 dial)
{
  return tm_count_format_exact (dial, cut->dial_unit, cut->dial_unit == TM_UNIT_IN ? 4 : 3);
}

/* A tenth of a micrometre, or of a ten-thousandth of an inch. */
static guint
get_decimals (const TmCutCase *cut)
{
  return cut->unit == TM_UNIT_IN ? 5 : 4;
}

/* -------- JSON -------- */

static void
put_size (yajl_gen gen, const char *key, const TmCutCase *cut, double counts)
{
  g_autofree char *text = format_size (cut, counts, cut->unit == TM_UNIT_IN ? 8 : 6);

  tm_print_text (gen, key, text);
}

static void
put_spread (yajl_gen gen, const char *key, const TmCutCase *cut, double counts)
{
  g_autofree char *text = format_spread (cut, counts, cut->unit == TM_UNIT_IN ? 8 : 6);

  tm_print_text (gen, key, text);
}

static void
put_chances (yajl_gen gen, const TmCutChances *chances)
{
  tm_print_number (gen, "probability_in", chances->in);
  tm_print_number (gen, "probability_metal_left", chances->left);
  tm_print_number (gen, "probability_metal_gone", chances->gone);
  tm_print_number (gen, "probability_proven", chances->proven);
}

static void
put_response (yajl_gen gen, const TmCutCase *cut)
{
  const TmCutResponse *response = &cut->advice.response;

  tm_print_key (gen, "response");
  yajl_gen_map_open (gen);
  tm_print_number (gen, "factor", response->factor);
  tm_print_number (gen, "factor_sd", response->factor_sd);
  put_spread (gen, "scatter", cut, response->scatter);
  put_spread (gen, "scatter_low", cut, response->scatter_low);
  put_spread (gen, "scatter_high", cut, response->scatter_high);
  tm_print_integer (gen, "cuts", response->n_answers);
  tm_print_flag (gen, "assumed", cut->advice.assumed);
  yajl_gen_map_close (gen);
}

static void
put_dial (yajl_gen gen, const char *key, const TmCutCase *cut, gint64 dial)
{
  g_autofree char *text = format_dial (cut, dial);

  tm_print_text (gen, key, text);
}

static void
put_job (yajl_gen gen, const TmCutCase *cut)
{
  if (cut->feature == NULL)
    return;
  tm_print_text (gen, "piece", cut->piece);
  tm_print_text (gen, "feature", cut->feature);
  tm_print_integer (gen, "place", cut->place);
  tm_print_text (gen, "tool", cut->tool);
  tm_print_integer (gen, "stations_not_read", cut->advice.n_unread);
  tm_print_integer (gen, "cuts_made", cut->advice.n_cuts);
}

void
tm_cut_print_json (const TmCutCase *cut)
{
  const TmCutAdvice *advice = &cut->advice;
  const TmCutPlan *plan = &advice->plan;
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  put_job (gen, cut);
  tm_print_unit (gen, cut->unit);
  tm_print_text (gen, "status", tm_cut_status_word (plan->status));
  put_dial (gen, "dial", cut, advice->dial);
  tm_print_text (gen, "dial_unit", tm_unit_word (cut->dial_unit));
  tm_print_text (gen, "reads", tm_reads_word (cut->reads));
  put_spread (gen, "change", cut, plan->change);
  put_size (gen, "size", cut, plan->size);
  put_spread (gen, "uncertainty", cut, plan->size_u);
  put_size (gen, "predicted", cut, plan->predicted);
  put_spread (gen, "predicted_uncertainty", cut, plan->predicted_u);
  put_chances (gen, &plan->chances);
  tm_print_number (gen, "probability_in_in_the_end", plan->value);
  if (advice->second_dial > 0)
    put_dial (gen, "second", cut, advice->second_dial);
  else
    tm_print_null (gen, "second");
  tm_print_key (gen, "now");
  yajl_gen_map_open (gen);
  put_chances (gen, &plan->now);
  yajl_gen_map_close (gen);
  tm_print_number (gen, "risk", advice->risk);
  tm_print_number (gen, "risk_spent", advice->risk_spent);
  tm_print_text (gen, "finer", advice->finer ? advice->finer->name : NULL);
  put_response (gen, cut);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

/* -------- Words -------- */

/* No size is known so well that a chance is none, or certain. */
static char *
format_chance (double chance, guint decimals)
{
  return tm_format_share (CLAMP (chance, 1e-15, 1 - 1e-15), decimals);
}

static void
print_chances (const TmCutChances *chances)
{
  g_autofree char *in = format_chance (chances->in, 2);
  g_autofree char *left = format_chance (chances->left, 2);
  g_autofree char *gone = format_chance (chances->gone, 3);

  /* Translators: each is a percentage. */
  printf (_ ("in the band %s, metal left %s, metal gone %s\n"), in, left, gone);
}

static void
print_now (const TmCutCase *cut)
{
  g_autofree char *size = format_size (cut, cut->advice.plan.size, get_decimals (cut));
  g_autofree char *u = format_spread (cut, cut->advice.plan.size_u, get_decimals (cut));

  printf (_ ("now %s %s, standard uncertainty %s: "), size, tm_unit_symbol (cut->unit), u);
  print_chances (&cut->advice.plan.now);
}

static void
print_dial (const TmCutCase *cut)
{
  g_autofree char *dial = format_dial (cut, cut->advice.dial);
  g_autofree char *change
      = tm_count_format_exact (llround (cut->advice.plan.change), cut->unit, cut->unit == TM_UNIT_IN ? 4 : 3);
  const char *unit = tm_unit_symbol (cut->dial_unit);

  if (llround (cut->advice.plan.change) != cut->advice.dial)
    printf (_ ("dial %s %s on the radius: the size changes by %s %s\n"), dial, unit, change,
            tm_unit_symbol (cut->unit));
  else
    printf (_ ("dial %s %s\n"), dial, unit);
  if (cut->advice.plan.status == TM_CUT_PROVE)
    printf ("%s\n", _ ("it is a proving cut: measure after it, and plan anew"));
}

static void
print_after (const TmCutCase *cut)
{
  g_autofree char *size = format_size (cut, cut->advice.plan.predicted, get_decimals (cut));
  g_autofree char *u = format_spread (cut, cut->advice.plan.predicted_u, get_decimals (cut));
  g_autofree char *second = format_dial (cut, cut->advice.second_dial);
  g_autofree char *proven = format_chance (cut->advice.plan.chances.proven, 2);
  g_autofree char *end = format_chance (cut->advice.plan.value, 2);

  printf (_ ("then %s %s, standard uncertainty %s: "), size, tm_unit_symbol (cut->unit), u);
  print_chances (&cut->advice.plan.chances);
  if (!isnan (cut->advice.plan.chances.proven))
    printf (_ ("the next reading proves it in: %s\n"), proven);
  if (cut->advice.second_dial > 0)
    printf (_ ("if metal is left then, the next cut is about %s %s; in the band in the end: %s\n"), second,
            tm_unit_symbol (cut->dial_unit), end);
}

static void
print_response (const TmCutCase *cut)
{
  const TmCutResponse *response = &cut->advice.response;
  g_autofree char *scatter = format_spread (cut, response->scatter, get_decimals (cut));
  g_autofree char *low = format_spread (cut, response->scatter_low, get_decimals (cut));
  g_autofree char *high = format_spread (cut, response->scatter_high, get_decimals (cut));

  printf (
      _ ("the cutter answers %.3f ± %.3f of what is dialled, with a scatter of %s %s (95 %%: %s to %s)\n"),
      response->factor, response->factor_sd, scatter, tm_unit_symbol (cut->unit), low, high);
  if (cut->advice.assumed)
    printf ("%s\n", _ ("that is assumed: no cut of this tool is known"));
  else
    printf (ngettext ("learned from %u cut\n", "learned from %u cuts\n", response->n_answers),
            response->n_answers);
}

static void
print_risk (const TmCutCase *cut)
{
  const TmCutAdvice *advice = &cut->advice;

  printf (_ ("accepted risk of metal gone, over the whole run of cuts: %.3f %%; spent so far %.3f %%, left "
             "%.3f %%\n"),
          100 * advice->risk, 100 * advice->risk_spent, 100 * MAX (0, advice->risk - advice->risk_spent));
}

static const char *
get_refusal (const TmCutAdvice *advice)
{
  gboolean is_spent = advice->risk_spent >= advice->risk;

  switch (advice->plan.status)
    {
    case TM_CUT_NOTHING_LEFT:
      return _ ("do not cut: it is in as far as is known, and another cut would gain nothing");
    case TM_CUT_METAL_GONE:
      return _ ("do not cut: metal is more likely gone than not");
    case TM_CUT_TOO_COARSE:
      if (is_spent)
        return _ (
            "do not cut: the cuts so far have spent the accepted risk; accept more with --risk, or leave it");
      return _ ("do not cut: no cut within the risk gains anything; the size, or how the tool answers, is "
                "not known "
                "well enough");
    case TM_CUT_UNDER_LEAST:
      return _ (
          "do not cut: what could be cut within the risk is less than a mark of the dial, or than the tool "
          "takes without rubbing");
    case TM_CUT_UNEVEN:
      return _ ("do not cut: the stations differ by more than the band; no cut brings all of them in");
    case TM_CUT_OK:
    case TM_CUT_PROVE:
    case TM_CUT_BAD_BAND:
    case TM_CUT_NOT_READ:
    case TM_CUT_NO_LIMITS:
    case TM_CUT_NO_SIDE:
    case TM_CUT_NO_METHOD:
    case TM_CUT_NO_DIAL:
    case TM_CUT_NO_MATE:
    case TM_CUT_NOT_A_SIZE:
    case TM_N_CUT_STATUSES:
    default:
      return _ ("do not cut");
    }
}

/* How to go about it at the machine: common practice. */
static void
print_practice (const TmCutCase *cut)
{
  g_autofree char *backlash = format_dial (cut, cut->advice.backlash);
  guint passes = cut->advice.spring_passes;

  if (cut->advice.backlash > 0)
    printf (_ ("come up to the mark from one side: turn back by more than %s %s first\n"), backlash,
            tm_unit_symbol (cut->dial_unit));
  else
    printf ("%s\n", _ ("come up to the mark from one side: turn back beyond the backlash first"));
  if (passes > 0)
    printf (
        ngettext ("then %u spring pass without advance\n", "then %u spring passes without advance\n", passes),
        passes);
  printf ("%s\n", _ ("Before a gauge goes in: spindle stopped and isolated, chips cleared, edge deburred."));
}

void
tm_cut_print (const TmCutCase *cut)
{
  const TmCutAdvice *advice = &cut->advice;
  gboolean is_cut = advice->plan.status == TM_CUT_OK || advice->plan.status == TM_CUT_PROVE;

  print_now (cut);
  if (is_cut)
    {
      print_dial (cut);
      print_after (cut);
    }
  else
    printf ("%s\n", get_refusal (advice));
  if (advice->finer != NULL)
    printf (_ ("fetch “%s”: with it the chance is better\n"), advice->finer->name);
  if (advice->n_unread > 0)
    printf (ngettext ("%u station is not read since the last cut: nothing is said of it\n",
                      "%u stations are not read since the last cut: nothing is said of them\n",
                      advice->n_unread),
            advice->n_unread);
  print_response (cut);
  print_risk (cut);
  if (is_cut)
    print_practice (cut);
}
