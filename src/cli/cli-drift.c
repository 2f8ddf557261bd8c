/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-drift: tenthmark-cli drift: what a feature does over the pieces of a job, and how many to measure.
 */

#include "cli-drift.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "cli-verbs.h"

#define MOST_GROUP 1000

typedef struct {
  const char *feature, *place, *group_size, *baseline, *rules, *tool;
  const char *lot, *values, *share, *risk, *coverage, *confidence;
  gboolean hold_back, json;
} Words;

/* -------- What is asked -------- */

static gboolean
read_whole (const char *option, const char *text, guint most, guint *out)
{
  guint64 value;

  if (text == NULL)
    return TRUE;
  if (!g_ascii_string_to_unsigned (text, 10, 1, most, &value, NULL))
    return tm_fail (_ ("drift: --%s “%s”: use a whole number from 1 to %u"), option, text, most) == 0;
  *out = (guint)value;
  return TRUE;
}

static gboolean
read_share (const char *option, const char *text, double usual, double *out)
{
  TmQuantity share;

  *out = usual;
  if (text == NULL)
    return TRUE;
  if (tm_quantity_read (text, TM_UNIT_HARDNESS, &share) == TM_READ_OK)
    *out = tm_count_to_double (share.count, TM_UNIT_HARDNESS);
  else
    *out = 0;
  if (*out > 0 && *out < 1)
    return TRUE;
  return tm_fail (_ ("drift: --%s “%s”: use a share between 0 and 1, such as %g"), option, text, usual) == 0;
}

static char *
list_rules (void)
{
  GString *list = g_string_new (NULL);

  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? ", " : "", tm_run_rule_word (i));
  return g_string_free (list, FALSE);
}

static gboolean
read_rules (const char *text, guint *out)
{
  g_auto (GStrv) each = g_strsplit_set (text ? text : "", " ,\t", -1);

  for (guint i = 0; each[i] != NULL; i++)
    {
      TmRunRule rule;

      if (*each[i] == '\0')
        continue;
      if (!tm_run_rule_from_word (each[i], &rule))
        {
          g_autofree char *known = list_rules ();

          return tm_fail (_ ("drift: --rules “%s” is none; use %s"), each[i], known) == 0;
        }
      *out |= TM_RULE_BIT (rule);
    }
  if (text != NULL && *out == 0)
    return tm_fail (_ ("drift: --rules is empty; name one, or leave it out")) == 0;
  return TRUE;
}

static gboolean
read_sure (const Words *words, TmHowSure *sure)
{
  return read_share ("share", words->share, 0.01, &sure->share)
         && read_share ("risk", words->risk, 0.05, &sure->risk)
         && read_share ("coverage", words->coverage, 0.99, &sure->coverage)
         && read_share ("confidence", words->confidence, 0.95, &sure->confidence);
}

static gboolean
read_options (const Words *words, TmBatchOptions *options)
{
  return read_whole ("group-size", words->group_size, MOST_GROUP, &options->group_size)
         && read_whole ("baseline", words->baseline, G_MAXINT, &options->baseline)
         && read_rules (words->rules, &options->rules);
}

/* -------- What of the job -------- */

static void
add_case (const TmJob *job, const TmFeature *feature, guint place, const TmBatchOptions *options,
          const Words *words, const TmHowSure *sure, GArray *cases)
{
  TmDriftCase drift = { job, g_new (TmBatch, 1), sure, words->hold_back };

  tm_batch_init (drift.batch, job, feature, place, options, NULL, NULL);
  g_array_append_val (cases, drift);
}

static void
clear_case (gpointer data)
{
  TmDriftCase *drift = data;

  tm_batch_clear (drift->batch);
  g_free (drift->batch);
}

static gboolean
take_tool (const TmJob *job, const char *path, const Words *words, const TmBatchOptions *options,
           const TmHowSure *sure, GArray *cases)
{
  if (words->place != NULL)
    return tm_fail (_ ("drift: --place goes with --feature; --tool takes every place that the tool cuts"))
           == 0;
  if (tm_job_find_tool (job, words->tool) == NULL)
    return tm_fail (_ ("%s: there is no tool “%s”; name one of the job's"), path, words->tool) == 0;
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      for (guint place = 1; place <= feature->places && strcmp (feature->tool, words->tool) == 0; place++)
        add_case (job, feature, place, options, words, sure, cases);
    }
  if (cases->len == 0)
    return tm_fail (_ ("%s: tool “%s” cuts no feature of this job; name it in the feature, or use --feature"),
                    path, words->tool)
           == 0;
  return TRUE;
}

static gboolean
take_feature (const TmJob *job, const char *path, const Words *words, const TmBatchOptions *options,
              const TmHowSure *sure, GArray *cases)
{
  TmFeature *feature;
  guint place = 1;

  if (!tm_pick_feature (job, path, words->feature, &feature))
    return FALSE;
  if (feature == NULL)
    return tm_fail (_ ("drift: say which: --feature N, or --tool T for all that one tool cuts")) == 0;
  if (feature->unit == TM_UNIT_NONE)
    return tm_fail (_ ("%s: feature %s has no sizes, which drift is about; name one that is measured"), path,
                    feature->balloon)
           == 0;
  if (!read_whole ("place", words->place, feature->places, &place))
    return FALSE;
  add_case (job, feature, place, options, words, sure, cases);
  return TRUE;
}

static int
answer_job (const char *path, const Words *words, const TmBatchOptions *options, const TmHowSure *sure)
{
  g_autoptr (TmJob) job = tm_load_job (path);
  g_autoptr (GArray) cases = g_array_new (FALSE, FALSE, sizeof (TmDriftCase));
  g_auto (TmToolDrift) together = { 0 };
  const TmToolDrift *all = NULL;
  gboolean is_bad = FALSE;

  if (job == NULL)
    return 2;
  g_array_set_clear_func (cases, clear_case);
  if (!(words->tool != NULL ? take_tool : take_feature) (job, path, words, options, sure, cases))
    return 2;
  if (words->tool != NULL && tm_tool_drift_init (&together, job, words->tool, NULL, NULL))
    all = &together;
  if (words->json)
    tm_drift_print_json (&g_array_index (cases, TmDriftCase, 0), cases->len, all);
  else
    tm_drift_print (&g_array_index (cases, TmDriftCase, 0), cases->len, all);
  for (guint i = 0; i < cases->len; i++)
    is_bad = tm_drift_is_bad (g_array_index (cases, TmDriftCase, i).batch) || is_bad;
  return is_bad ? 1 : 0;
}

/* -------- The verb -------- */

static int
answer_how_many (const Words *words, const TmHowSure *sure)
{
  guint n = 0;

  if (words->lot != NULL)
    return read_whole ("sample-lot", words->lot, G_MAXINT, &n) ? tm_drift_sample_lot (n, sure, words->json)
                                                               : 2;
  return read_whole ("values", words->values, 1000000, &n) ? tm_drift_values (n, sure, words->json) : 2;
}

static int
answer (const TmVerb *verb, const GPtrArray *operands, const Words *words)
{
  TmBatchOptions options = { 0 };
  TmHowSure sure;
  const char *path;

  if (!read_sure (words, &sure) || !read_options (words, &options))
    return 2;
  if (words->lot != NULL && words->values != NULL)
    return tm_fail (_ ("drift: --sample-lot and --values are two questions; ask one"));
  if (words->lot != NULL || words->values != NULL)
    {
      if (operands->len > 0 || words->feature != NULL || words->tool != NULL)
        return tm_fail (_ ("drift: --sample-lot and --values are asked without a job; leave JOB out"));
      return answer_how_many (words, &sure);
    }
  if (words->tool != NULL && words->feature != NULL)
    return tm_fail (_ ("drift: --feature and --tool are two questions; ask one"));
  path = tm_only_operand (verb, operands);
  return path != NULL ? answer_job (path, words, &options, &sure) : 2;
}

int
tm_verb_drift (int n_words, char **argument_words)
{
  const TmVerb *verb = tm_verb_find ("drift");
  Words words = { 0 };
  const TmOption options[] = {
    { "feature", "N", N_ ("the feature"), &words.feature, NULL },
    { "place", "P", N_ ("its place, counted from 1 (1)"), &words.place, NULL },
    { "tool", "T", N_ ("every feature that this tool cuts, together"), &words.tool, NULL },
    { "group-size", "n", N_ ("pieces a group (the feature's, else 1)"), &words.group_size, NULL },
    { "baseline", "m", N_ ("freeze the limits by the first m groups"), &words.baseline, NULL },
    { "rules", "WORDS", N_ ("run rules, such as \"beyond-3s 8-one-side\""), &words.rules, NULL },
    { "hold-back", NULL, N_ ("list the pieces to hold back"), NULL, &words.hold_back },
    { "sample-lot", "N", N_ ("instead: how many of a lot of N to measure"), &words.lot, NULL },
    { "share", "P", N_ ("share of bad ones that must not be missed (0.01)"), &words.share, NULL },
    { "risk", "R", N_ ("with which chance it may be missed (0.05)"), &words.risk, NULL },
    { "values", "n", N_ ("instead: what n values say of all pieces"), &words.values, NULL },
    { "coverage", "P", N_ ("share of all pieces that shall lie between (0.99)"), &words.coverage, NULL },
    { "confidence", "C", N_ ("how sure that is to be (0.95)"), &words.confidence, NULL },
    { "json", NULL, N_ ("print as JSON"), NULL, &words.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, argument_words, &status);

  return operands != NULL ? answer (verb, operands, &words) : status;
}
