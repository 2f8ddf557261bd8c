/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-cut-words.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <math.h>

#include "app-evidence-words.h"
#include "core-form.h"
#include "plot-chance.h"

/* The chance of metal left from which on the cut after this one is worth a line. */
#define LEFT_WORTH_SAYING 0.05

gboolean
tm_cut_has_dial (const TmCutAdvice *advice)
{
  return advice->plan.status == TM_CUT_OK || advice->plan.status == TM_CUT_PROVE;
}

static char *
format_dial (const TmTool *tool, gint64 dial)
{
  g_autofree char *number = tm_bench_dial_text (tool, dial);
  return g_strdup_printf ("%s %s", number, tm_unit_symbol ((TmUnit)tool->unit));
}

/* A change of size: to a micrometre or a ten-thousandth of an inch. */
static char *
format_change (const TmFeature *feature, double counts)
{
  guint least = feature->unit == TM_UNIT_IN ? 4 : 3;
  guint decimals = MAX (least, MAX (feature->lower.decimals, feature->upper.decimals));
  gint64 count = tm_count_from_double (counts / (double)tm_unit_counts (feature->unit), feature->unit);
  g_autofree char *number = tm_count_format (count, feature->unit, decimals);
  return g_strdup_printf ("%s %s", number, tm_unit_symbol (feature->unit));
}

static const char *
find_title (TmCutStatus status)
{
  switch (status)
    {
    case TM_CUT_NOTHING_LEFT:
      return _ ("Nothing to cut");
    case TM_CUT_METAL_GONE:
      return _ ("Metal gone");
    case TM_CUT_TOO_COARSE:
      return _ ("No cut within the risk");
    case TM_CUT_UNDER_LEAST:
      return _ ("Less than the tool takes");
    case TM_CUT_UNEVEN:
      return _ ("Too uneven for one cut");
    case TM_CUT_BAD_BAND:
      return _ ("No size fits both");
    case TM_CUT_NOT_READ:
      return _ ("Read the size first");
    case TM_CUT_NO_LIMITS:
      return _ ("No limit to cut to");
    case TM_CUT_NO_SIDE:
      return _ ("Inside or outside?");
    case TM_CUT_NO_METHOD:
      return _ ("Which gauge read it?");
    case TM_CUT_NO_DIAL:
      return _ ("Which tool cuts it?");
    case TM_CUT_NO_MATE:
      return _ ("No mate to fit");
    case TM_CUT_NOT_A_SIZE:
      return _ ("Not cut to a size");
    case TM_CUT_OK:
    case TM_CUT_PROVE:
    case TM_N_CUT_STATUSES:
    default:
      return "";
    }
}

char *
tm_words_cut_title (const TmCutAdvice *advice, const TmTool *tool)
{
  if (tool != NULL && tm_cut_has_dial (advice))
    return tm_bench_dial_text (tool, advice->dial);
  return g_strdup (find_title (advice->plan.status));
}

/* "mm on the radius": what the dial counts; a length has neither radius nor diameter. */
static char *
describe_unit (const TmFeature *feature, TmUnit unit, TmReads reads)
{
  const char *symbol = tm_unit_symbol (unit);
  if (!tm_feature_is_diameter (feature))
    return g_strdup (symbol);
  return g_strdup_printf (reads == TM_READS_RADIUS ? _ ("%s on the radius") : _ ("%s on the diameter"),
                          symbol);
}

char *
tm_words_cut_marks (const TmTool *tool, const TmFeature *feature, gint64 dial)
{
  g_autofree char *unit = describe_unit (feature, (TmUnit)tool->unit, tool->reads);
  gint64 marks = tool->graduation.count > 0 ? dial / tool->graduation.count : 0;
  if (tool->graduation.count <= 0 || dial % tool->graduation.count != 0)
    return g_steal_pointer (&unit);
  g_autofree char *graduation = tm_quantity_format (&tool->graduation);
  /* Translators: "mm on the radius", on the next line "7 marks of 0.005". */
  return g_strdup_printf (
      ngettext ("%s\n%" PRId64 " mark of %s", "%s\n%" PRId64 " marks of %s", (gulong)MIN (marks, 1000000)),
      unit, marks, graduation);
}

char *
tm_words_cut_manner (const TmCutAdvice *advice, const TmTool *tool)
{
  g_autofree char *back = NULL;
  g_autofree char *passes = NULL;
  if (advice->backlash > 0)
    {
      g_autofree char *amount = format_dial (tool, advice->backlash);
      back = g_strdup_printf (_ ("Turn back by more than %s, then come up from one side."), amount);
    }
  else
    back = g_strdup (_ ("Come up from one side: the backlash of this screw is not stated."));
  if (advice->spring_passes == 0)
    return g_steal_pointer (&back);
  passes = g_strdup_printf (ngettext ("Then %u spring pass at the same setting.",
                                      "Then %u spring passes at the same setting.", advice->spring_passes),
                            advice->spring_passes);
  return g_strdup_printf ("%s %s", back, passes);
}

static char *
describe_finer (const TmCutAdvice *advice)
{
  if (advice->finer != NULL)
    return g_strdup_printf (_ ("Fetch %s and read it again: with it the cut can be risked."),
                            advice->finer->name);
  return g_strdup (
      _ ("No cut on this dial gains anything within the accepted risk, and no other gauge of this "
         "job changes that: a finer dial does, or a tool whose cuts scatter less."));
}

static char *
describe_proving (const TmCutAdvice *advice, const TmTool *tool)
{
  g_autofree char *second = format_dial (tool, advice->second_dial);
  g_autofree char *then
      = advice->second_dial > 0
            ? g_strdup_printf (_ ("A proving cut first; read it, and then the second is likely %s."), second)
            : g_strdup (_ ("A proving cut first; read it, and then plan the second."));
  if (advice->finer == NULL)
    return g_steal_pointer (&then);
  return g_strdup_printf (_ ("%s Or fetch %s, which can risk the whole cut."), then, advice->finer->name);
}

/* Of metal that is hardly ever left nothing is said. */
static char *
describe_cut (const TmCutAdvice *advice, const TmTool *tool)
{
  if (advice->second_dial <= 0 || !(advice->plan.chances.left >= LEFT_WORTH_SAYING))
    return g_strdup ("");
  g_autofree char *second = format_dial (tool, advice->second_dial);
  return g_strdup_printf (_ ("If metal is left then, the next cut is likely %s."), second);
}

static char *
describe_least (const TmTool *tool)
{
  const TmQuantity *least = tool->least_cut.given ? &tool->least_cut : &tool->graduation;
  g_autofree char *amount = format_dial (tool, least->count);
  return g_strdup_printf (
      _ ("What may be cut within the accepted risk is less than the least that this dial and "
         "tool take, %s: take a spring pass, or another tool."),
      amount);
}

static const char *
find_sentence (TmCutStatus status)
{
  switch (status)
    {
    case TM_CUT_NOTHING_LEFT:
      return _ ("It is in, as far as it is known: another cut would gain nothing.");
    case TM_CUT_METAL_GONE:
      return _ ("It is more likely over than not, and no cut brings metal back. Hold this piece and write a "
                "nonconformance (Ctrl+Shift+K).");
    case TM_CUT_UNEVEN:
      return _ (
          "The stations differ by more than the band: no cut brings all of them in. Mend the taper or the "
          "roundness first.");
    case TM_CUT_BAD_BAND:
      return _ ("The drawing's limits and the wanted fit with this mate leave no size at all: choose another "
                "mate, or aim at the drawing.");
    case TM_CUT_NOT_READ:
      return _ (
          "Nothing is read here yet, or nothing since the last cut. Go back with F4, read it, then plan.");
    case TM_CUT_NO_LIMITS:
      return _ ("The feature has no limit on the side where metal goes.");
    case TM_CUT_NO_SIDE:
      return _ ("Say on the Job page whether cutting makes this feature larger or smaller.");
    case TM_CUT_NO_METHOD:
      return _ ("Choose the gauge on the right: without it nobody knows how well the size is known.");
    case TM_CUT_NO_DIAL:
      return _ ("Choose the tool above, or add it: its dial's marks, and whether they count radius or "
                "diameter.");
    case TM_CUT_NO_MATE:
      return _ ("No mate is measured, its uncertainty is not stated, or no clearance is wanted of it: state "
                "what is missing, or aim at the drawing.");
    case TM_CUT_NOT_A_SIZE:
      return _ ("Bores, shafts, lengths and depths are cut to a size; this feature is none.");
    case TM_CUT_OK:
    case TM_CUT_PROVE:
    case TM_CUT_TOO_COARSE:
    case TM_CUT_UNDER_LEAST:
    case TM_N_CUT_STATUSES:
    default:
      return "";
    }
}

/* Nothing may be cut any more, however well the size is known. */
static gboolean
is_risk_spent (const TmCutAdvice *advice)
{
  return (advice->plan.status == TM_CUT_TOO_COARSE || advice->plan.status == TM_CUT_UNDER_LEAST)
         && advice->risk_spent >= advice->risk;
}

char *
tm_words_cut_status (const TmCutAdvice *advice, const TmTool *tool, const TmFeature *feature)
{
  if (tool != NULL && advice->plan.status == TM_CUT_OK)
    return describe_cut (advice, tool);
  if (tool != NULL && advice->plan.status == TM_CUT_PROVE)
    return describe_proving (advice, tool);
  if (is_risk_spent (advice))
    return g_strdup (_ ("The cuts so far have spent the accepted risk of metal gone: accept more in the shop "
                        "rules, or leave it as it is."));
  if (advice->plan.status == TM_CUT_TOO_COARSE)
    return describe_finer (advice);
  if (tool != NULL && advice->plan.status == TM_CUT_UNDER_LEAST)
    return describe_least (tool);
  return g_strdup (find_sentence (advice->plan.status));
}

char *
tm_words_cut_predicted (const TmCutAdvice *advice, const TmFeature *feature, const char *typed)
{
  if (!isfinite (advice->plan.predicted) || !(advice->plan.predicted_u >= 0))
    return g_strdup ("");
  g_autofree char *size
      = tm_words_size_pair (feature, advice->reference, advice->plan.predicted, 2 * advice->plan.predicted_u);
  /* Translators: on the next line a size with its uncertainty. */
  if (*typed == '\0')
    return g_strdup_printf (_ ("after it\n%s"), size);
  /* Translators: the number typed; on the next line a size with its uncertainty. */
  return g_strdup_printf (_ ("after %s dialled\n%s"), typed, size);
}

char *
tm_words_cut_risk (const TmCutAdvice *advice)
{
  g_autofree char *accepted = tm_chance_text (advice->risk);
  g_autofree char *spent = tm_chance_text (advice->risk_spent);
  if (accepted == NULL || !(advice->risk > 0))
    return g_strdup ("");
  if (spent == NULL || !(advice->risk_spent > 0))
    return g_strdup_printf (_ ("accepted risk of metal gone: %s, none spent"), accepted);
  return g_strdup_printf (_ ("accepted risk of metal gone: %s, spent so far: %s"), accepted, spent);
}

char *
tm_words_cut_unread (const TmCutAdvice *advice)
{
  if (advice->n_unread == 0 || advice->plan.status == TM_CUT_NOT_READ)
    return g_strdup ("");
  return g_strdup_printf (
      ngettext ("%u station is not read since the last cut: the chances are those of the "
                "others.",
                "%u stations are not read since the last cut: the chances are those of the "
                "others.",
                advice->n_unread),
      advice->n_unread);
}

/* As all else that is known "give or take": two standard deviations. */
static char *
format_spread (const TmCutResponse *response)
{
  return tm_chance_text (2 * response->factor_sd);
}

static char *
describe_assumed (const TmCutResponse *response, const TmTool *tool, const TmFeature *feature)
{
  g_autofree char *spread = format_spread (response);
  g_autofree char *scatter = format_change (feature, response->scatter);
  return g_strdup_printf (
      _ ("Assumed: no cut of %s is on record. It is taken to cut what is dialled, give or "
         "take %s (k = 2), and to scatter by %s; the first cuts teach it."),
      tool->name, spread, scatter);
}

char *
tm_words_cut_response (const TmCutAdvice *advice, const TmTool *tool, const TmFeature *feature)
{
  const TmCutResponse *response = &advice->response;
  if (!isfinite (response->factor) || !isfinite (response->factor_sd) || !isfinite (response->scatter)
      || !(response->factor > 0))
    return g_strdup ("");
  if (advice->assumed || response->n_answers == 0)
    return describe_assumed (response, tool, feature);
  g_autofree char *factor = g_strdup_printf (_ ("%.0f %%"), 100 * response->factor);
  g_autofree char *spread = format_spread (response);
  g_autofree char *scatter = format_change (feature, response->scatter);
  return g_strdup_printf (
      ngettext ("%s so far: takes %s of what is dialled, give or take %s (k = 2), and scatters by "
                "%s (%u cut).",
                "%s so far: takes %s of what is dialled, give or take %s (k = 2), and scatters by "
                "%s (%u cuts).",
                response->n_answers),
      tool->name, factor, spread, scatter, response->n_answers);
}

char *
tm_words_cut_unlike (const TmCutOutcome *outcome)
{
  if (!outcome->unlike || !isfinite (outcome->answer.achieved) || !isfinite (outcome->expected))
    return g_strdup ("");
  g_autofree char *achieved = format_change (outcome->cut->row.feature, outcome->answer.achieved);
  g_autofree char *expected = format_change (outcome->cut->row.feature, outcome->expected);
  return g_strdup_printf (_ ("This cut answered unlike the others: %s came off where %s was expected. Look "
                             "for a tool pushed off, a chip under the part, a boring bar that moved."),
                          achieved, expected);
}

char *
tm_words_last_cut_unlike (const TmBench *bench, const TmJob *job)
{
  const TmSpot *spot = tm_bench_spot (bench);
  const TmCutRow *cut = spot->piece != NULL && spot->feature != NULL
                            ? tm_job_last_cut (job, spot->piece, spot->feature, spot->place)
                            : NULL;
  TmCutOutcome outcome;
  if (cut == NULL || !tm_bench_cut_outcome (bench, cut, &outcome))
    return g_strdup ("");
  return tm_words_cut_unlike (&outcome);
}

char *
tm_words_cut_outcome (const TmCutOutcome *outcome)
{
  if (!isfinite (outcome->answer.achieved))
    return g_strdup (_ ("not read since"));
  g_autofree char *achieved = format_change (outcome->cut->row.feature, outcome->answer.achieved);
  g_autofree char *dialled = format_change (outcome->cut->row.feature, outcome->answer.dialled);
  return g_strdup_printf (_ ("%s came off, %s was asked for"), achieved, dialled);
}

char *
tm_words_cut_row (const TmCutRow *cut)
{
  g_autofree char *dialled = tm_quantity_format (&cut->dialled);
  g_autofree char *unit = describe_unit (cut->row.feature, (TmUnit)cut->dialled.unit, cut->reads);
  /* Translators: the number on the dial, and what it counts: "mm on the radius". */
  g_autofree char *words = g_strdup_printf (_ ("cut of %s %s"), dialled, unit);
  if (cut->passes == 0)
    return g_steal_pointer (&words);
  g_autofree char *passes
      = g_strdup_printf (ngettext ("%u spring pass", "%u spring passes", cut->passes), cut->passes);
  return g_strdup_printf ("%s, %s", words, passes);
}

char *
tm_words_cut_question (const TmCutAdvice *tried, const char *typed)
{
  g_autofree char *gone = tm_chance_text (tried->plan.chances.gone);
  return g_strdup_printf (_ ("%s takes the metal over, with a chance of %s. Was that really dialled? Press "
                             "Enter again to record it."),
                          typed, gone);
}
