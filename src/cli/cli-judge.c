/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-judge: tenthmark-cli judge, what the readings prove.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-judge-detail.h"
#include "cli-verbs.h"
#include "core-first-result.h"
#include "core-judge.h"

/* What is wanted, and what has been found so far. */
typedef struct {
  const TmJob *job;
  const TmPiece *only_piece;
  const TmFeature *only_feature;
  yajl_gen gen; /* NULL: words */
  gboolean budget;
  gboolean good;
} Judging;

/* The exact mean where it is a whole count, else to the nearest 1e-9 of the unit or finer. */
static char *
format_local_size (const TmLocalSize *local, TmUnit unit)
{
  if (local->n == 0)
    return NULL;
  if (local->sum % local->n == 0)
    return tm_count_format_exact ((gint64)(local->sum / local->n), unit,
                                  local->unit == unit ? local->decimals : 0);
  return tm_mean_format (local->sum, local->n, unit, 9);
}

static void
put_local_size (yajl_gen gen, const char *key, const TmJudgement *judgement, guint at)
{
  g_autofree char *text = NULL;

  if (at < judgement->sizes.n_stations && !tm_kind_is_attribute (judgement->feature->kind))
    text = format_local_size (&judgement->sizes.stations[at], judgement->feature->unit);
  tm_print_text (gen, key, text);
}

static void
put_limit (yajl_gen gen, const char *key, gboolean has, gint64 limit, const TmQuantity *written, TmUnit unit)
{
  if (!has)
    {
      tm_print_null (gen, key);
    }
  else if (written->given && written->count == limit)
    {
      tm_print_quantity (gen, key, written, unit);
    }
  else
    {
      g_autofree char *text = tm_count_format_exact (limit, unit, 0);

      tm_print_text (gen, key, text);
    }
}

/* A word as the contract spells it: null for none. */
static const char *
word_or_null (const char *word)
{
  return *word != '\0' ? word : NULL;
}

static void
put_sizes (yajl_gen gen, const TmJudgement *judgement)
{
  TmUnit unit = judgement->feature->unit;
  g_autofree char *size = tm_judgement_size_text (judgement);

  tm_print_text (gen, "size", word_or_null (size));
  put_local_size (gen, "smallest", judgement, judgement->sizes.smallest);
  put_local_size (gen, "largest", judgement, judgement->sizes.largest);
  tm_print_counts (gen, "expanded_uncertainty", judgement->expanded, unit);
  tm_print_unit (gen, tm_kind_is_attribute (judgement->feature->kind) ? TM_UNIT_NONE : unit);
  put_limit (gen, "lower", judgement->limits.has_lower, judgement->limits.lower, &judgement->feature->lower,
             unit);
  put_limit (gen, "upper", judgement->limits.has_upper, judgement->limits.upper, &judgement->feature->upper,
             unit);
}

static void
put_proof (yajl_gen gen, const TmJudgement *judgement)
{
  TmUnit unit = judgement->feature->unit;
  gboolean named = judgement->deciding < judgement->sizes.n_stations;

  tm_print_text (gen, "verdict", tm_verdict_word (judgement->verdict));
  tm_print_text (gen, "side", word_or_null (tm_side_word (judgement->side)));
  tm_print_number (gen, "probability_in", judgement->probability_in);
  tm_print_counts (gen, "taper", judgement->has_taper ? judgement->taper : (double)NAN, unit);
  tm_print_counts (gen, "out_of_round", judgement->has_out_of_round ? judgement->out_of_round : (double)NAN,
                   unit);
  tm_print_text (gen, "method", word_or_null (judgement->method_name));
  tm_print_text (gen, "settles", word_or_null (tm_settles_word (judgement->settles)));
  tm_print_text (gen, "reason", word_or_null (tm_why_word (judgement->why)));
  tm_print_text (gen, "station", named ? judgement->sizes.stations[judgement->deciding].station : NULL);
  tm_print_counts (gen, "guard", isnan (judgement->u) ? (double)NAN : (double)judgement->guard, unit);
  tm_print_number (gen, "coverage_factor", judgement->coverage);
  tm_print_number (gen, "dof", judgement->dof);
}

/* What it was before its last rework: null where there was none. */
static void
put_first_result (yajl_gen gen, const TmJob *job, const TmJudgement *judgement)
{
  g_auto (TmFirstResult) first = { 0 };
  g_autofree char *size = NULL;

  if (!tm_first_result (job, judgement->piece, judgement->feature, judgement->place, &first))
    {
      tm_print_null (gen, "first_result");
      return;
    }
  size = tm_judgement_size_text (&first.judgement);
  tm_print_key (gen, "first_result");
  yajl_gen_map_open (gen);
  tm_print_text (gen, "size", word_or_null (size));
  tm_print_text (gen, "verdict", tm_verdict_word (first.judgement.verdict));
  tm_print_text (gen, "side", word_or_null (tm_side_word (first.judgement.side)));
  tm_print_counts (gen, "expanded_uncertainty", first.judgement.expanded, judgement->feature->unit);
  tm_print_text (gen, "nonconformance", word_or_null (first.rework->number));
  tm_print_text (gen, "rework_by", word_or_null (first.rework->rework_by));
  tm_print_text (gen, "rework_at", first.rework->rework_at);
  yajl_gen_map_close (gen);
}

static void
print_json (yajl_gen gen, const TmJob *job, const TmJudgement *judgement, gboolean budget)
{
  yajl_gen_map_open (gen);
  tm_print_text (gen, "piece", judgement->piece->serial);
  tm_print_text (gen, "feature", judgement->feature->balloon);
  tm_print_integer (gen, "place", judgement->place);
  put_sizes (gen, judgement);
  put_proof (gen, judgement);
  put_first_result (gen, job, judgement);
  tm_put_judgement_detail (gen, job, judgement, budget);
  yajl_gen_map_close (gen);
  tm_print_flush (gen);
}

/* @text and spaces up to @width characters: printf would count bytes. */
static void
print_column (const char *text, int width)
{
  glong length = g_utf8_strlen (text, -1);

  printf ("%s%*s", text, (int)MAX (1, width - length), "");
}

static char *
describe_verdict (const TmJudgement *judgement)
{
  const char *verdict = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (judgement->verdict));
  const char *side = tm_side_word (judgement->side);

  if (*side == '\0')
    return g_strdup (verdict);
  return g_strdup_printf ("%s, %s", verdict, g_dpgettext2 (GETTEXT_PACKAGE, "side", side));
}

static char *
describe_size (const TmJudgement *judgement)
{
  g_autofree char *size = tm_judgement_size_text (judgement);
  const char *unit = tm_unit_symbol (judgement->feature->unit);

  if (*size != '\0' && isfinite (judgement->expanded) && judgement->expanded > 0)
    {
      g_autofree char *spread = tm_judgement_spread_text (judgement, judgement->expanded);

      return g_strdup_printf ("%s ± %s %s", size, spread, unit);
    }
  return *size != '\0' ? g_strdup_printf ("%s %s", size, unit) : g_strdup ("");
}

/* Under the result, what it was before its last rework. */
static void
print_first_result (const TmJob *job, const TmJudgement *judgement)
{
  g_auto (TmFirstResult) first = { 0 };
  g_autofree char *verdict = NULL, *size = NULL;

  if (!tm_first_result (job, judgement->piece, judgement->feature, judgement->place, &first))
    return;
  verdict = describe_verdict (&first.judgement);
  size = describe_size (&first.judgement);
  /* Translators: verdict, size, date and time of the rework, number of the nonconformance. */
  printf (_ ("        first result %s %s, reworked %s (%s)\n"), verdict, size, first.rework->rework_at,
          *first.rework->number != '\0' ? first.rework->number : "—");
}

static void
print_words (const TmJob *job, const TmJudgement *judgement, gboolean budget)
{
  const TmFeature *feature = judgement->feature;
  g_autofree char *number = feature->places > 1
                                ? g_strdup_printf ("%s (%u)", feature->balloon, judgement->place)
                                : g_strdup (feature->balloon);
  g_autofree char *verdict = describe_verdict (judgement);
  g_autofree char *size = describe_size (judgement);
  const char *why = tm_why_word (judgement->why);

  print_column (judgement->piece->serial, 7);
  print_column (number, 8);
  print_column (*feature->requirement ? feature->requirement : feature->name, 26);
  print_column (verdict, 18);
  printf ("%s%s%s\n", size, *size && *why ? "  " : "",
          *why ? g_dpgettext2 (GETTEXT_PACKAGE, "why", why) : "");
  print_first_result (job, judgement);
  if (budget)
    tm_print_judgement_detail (job, judgement);
}

static void
judge_place (Judging *judging, const TmPiece *piece, const TmFeature *feature, guint place)
{
  g_auto (TmJudgement) judgement = { NULL };

  tm_judge (judging->job, piece, feature, place, &judgement);
  if (judging->gen != NULL)
    print_json (judging->gen, judging->job, &judgement, judging->budget);
  else
    print_words (judging->job, &judgement, judging->budget);
  if (judgement.verdict != TM_VERDICT_IN)
    judging->good = FALSE;
}

static gboolean
is_measured (const Judging *judging, const TmPiece *piece, const TmFeature *feature)
{
  for (guint place = 1; place <= feature->places; place++)
    {
      if (tm_job_readings_at (judging->job, piece, feature, place) != NULL
          || tm_job_pin_trials_at (judging->job, piece, feature, place) != NULL)
        return TRUE;
    }
  return FALSE;
}

/* A feature that is not due on this piece and was not measured is not asked about. */
static void
judge_feature (Judging *judging, const TmPiece *piece, guint index, const TmFeature *feature)
{
  if (!tm_job_feature_is_due (judging->job, feature, piece, index) && !is_measured (judging, piece, feature))
    return;
  for (guint place = 1; place <= feature->places; place++)
    judge_place (judging, piece, feature, place);
}

static void
judge_piece (Judging *judging, const TmPiece *piece, guint index)
{
  for (guint i = 0; i < judging->job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (judging->job->features, i);

      if (judging->only_feature == NULL || judging->only_feature == feature)
        judge_feature (judging, piece, index, feature);
    }
}

static gboolean
judge_all (Judging *judging)
{
  judging->good = TRUE;
  if (judging->gen != NULL)
    yajl_gen_array_open (judging->gen);
  for (guint i = 0; i < judging->job->pieces->len; i++)
    {
      const TmPiece *piece = g_ptr_array_index (judging->job->pieces, i);

      if (judging->only_piece == NULL || judging->only_piece == piece)
        judge_piece (judging, piece, i);
    }
  if (judging->gen != NULL)
    {
      yajl_gen_array_close (judging->gen);
      tm_print_end (judging->gen);
    }
  return judging->good;
}

int
tm_verb_judge (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("judge");
  const char *serial = NULL;
  const char *balloon = NULL;
  gboolean json = FALSE, budget = FALSE;
  const TmOption options[] = {
    { "piece", "S", N_ ("only this piece"), &serial, NULL },
    { "feature", "N", N_ ("only this feature"), &balloon, NULL },
    { "budget", NULL, N_ ("with the uncertainty budget, line by line"), NULL, &budget },
    { "json", NULL, N_ ("print JSON"), NULL, &json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  g_autoptr (TmJob) job = NULL;
  Judging judging = { NULL };
  TmPiece *piece;
  TmFeature *feature;
  const char *path;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  job = path != NULL ? tm_load_job (path) : NULL;
  if (job == NULL || !tm_pick_piece (job, path, serial, &piece)
      || !tm_pick_feature (job, path, balloon, &feature))
    return 2;
  judging.job = job;
  judging.only_piece = piece;
  judging.only_feature = feature;
  judging.budget = budget;
  judging.gen = json ? tm_print_begin () : NULL;
  return judge_all (&judging) ? 0 : 1;
}
