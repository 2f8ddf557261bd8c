/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-outcome: what each cut of the record did, beside what was expected of it.
 */

#include <math.h>
#include <string.h>

#include "core-cut-private.h"
#include "core-cut-work-private.h"

/* |surprise| above this is unlike the others (our own choice). */
#define UNLIKE 3.0

/* -------- Measured from both sides -------- */

typedef struct {
  double weights, sum;
} Mean;

static void
add_difference (Mean *mean, const TmCutReading *before, const TmCutReading *after, gboolean same_method)
{
  double variance = before->own * before->own + after->own * after->own;
  double weight;

  if (!same_method)
    variance += before->shared * before->shared + after->shared * after->shared;
  weight = 1 / MAX (variance, 1);
  mean->weights += weight;
  mean->sum += weight * (after->size - before->size);
}

static void
add_pairs (const TmCutWork *work, guint i, gboolean same_method, Mean *mean)
{
  for (guint a = 0; a < work->readings->len; a++)
    {
      const TmCutReading *before = &g_array_index (work->readings, TmCutReading, a);

      if (before->part != i || !before->known || before->at >= TM_CUT_MOST_STATIONS)
        continue;
      for (guint b = a + 1; b < work->readings->len; b++)
        {
          const TmCutReading *after = &g_array_index (work->readings, TmCutReading, b);

          if (after->part == i + 1 && after->known && after->at == before->at
              && (after->method == before->method) == same_method)
            add_difference (mean, before, after, same_method);
        }
    }
}

gboolean
tm_cut_outcome_measure (const TmCutWork *work, guint i, double *achieved, double *u)
{
  Mean mean = { 0, 0 };

  add_pairs (work, i, TRUE, &mean);
  if (!(mean.weights > 0))
    add_pairs (work, i, FALSE, &mean);
  if (!(mean.weights > 0))
    return FALSE;
  *achieved = mean.sum / mean.weights;
  if (tm_feature_cut (work->feature) == TM_CUT_SHRINKS)
    *achieved = -*achieved;
  *u = 1 / sqrt (mean.weights);
  return TRUE;
}

/* -------- Beside what was expected -------- */

/* b c + e over all s_e. */
static void
expect (const TmCutBelief *belief, double change, double *mean, double *variance)
{
  double square = 0;

  *mean = 0;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    *mean += belief->nodes[j].weight * belief->nodes[j].mean[TM_CUT_AT_RESPONSE] * change;
  for (guint j = 0; j < TM_CUT_NODES; j++)
    {
      const TmCutNode *node = &belief->nodes[j];
      double off = node->mean[TM_CUT_AT_RESPONSE] * change - *mean;

      square += node->weight
                * (node->covariance[TM_CUT_AT_RESPONSE] * change * change + node->scatter * node->scatter
                   + off * off);
    }
  *variance = square;
}

double
tm_cut_step_sd (const TmCutStep *step)
{
  return hypot (TM_CUT_RESPONSE_SD * step->change, TM_CUT_SCATTER_MEDIAN * TM_CUT_SCATTER_FACTOR);
}

void
tm_cut_outcome_fill (TmCutWork *work, guint i, const TmCutBelief *belief)
{
  TmCutStep *step = &g_array_index (work->steps, TmCutStep, i);
  TmCutOutcome *out = &step->outcome;
  double variance;

  out->answer = (TmCutAnswer) { step->change, NAN, NAN };
  out->surprise = NAN;
  out->unlike = FALSE;
  expect (belief, step->change, &out->expected, &variance);
  if (!step->same_tool)
    {
      out->expected = step->change;
      variance = tm_cut_step_sd (step) * tm_cut_step_sd (step);
    }
  out->expected_sd = sqrt (variance);
  if (!tm_cut_outcome_measure (work, i, &out->answer.achieved, &out->answer.u))
    return;
  out->surprise = (out->answer.achieved - out->expected) / sqrt (variance + out->answer.u * out->answer.u);
  out->unlike = step->change > 0 && fabs (out->surprise) > UNLIKE;
  step->untaught = out->unlike && out->surprise < 0;
}

guint
tm_cut_work_n_outcomes (const TmCutWork *work)
{
  g_return_val_if_fail (work != NULL, 0);
  return work->steps->len;
}

void
tm_cut_work_outcome (const TmCutWork *work, guint i, TmCutOutcome *out)
{
  g_return_if_fail (work != NULL && out != NULL && i < work->steps->len);
  *out = g_array_index (work->steps, TmCutStep, i).outcome;
}

/* -------- Of a whole job -------- */

static void
add_answers (GArray *answers, const TmJob *job, const TmTool *tool, const TmCutRow *cut)
{
  const TmEntryRow *row = &cut->row;
  g_autoptr (TmCutWork) work = tm_cut_work_new (job, row->piece, row->feature, cut->place, tool, NULL, 0);

  for (guint i = 0; i < tm_cut_work_n_outcomes (work); i++)
    {
      TmCutOutcome outcome;

      tm_cut_work_outcome (work, i, &outcome);
      if (strcmp (outcome.cut->tool, tool->name) == 0 && isfinite (outcome.answer.achieved) && !outcome.unlike
          && outcome.answer.dialled > 0)
        g_array_append_val (answers, outcome.answer);
    }
}

/* One cut of each place stands for all of them. */
static gboolean
is_first_at_place (const TmJob *job, const TmCutRow *cut)
{
  return g_ptr_array_index (tm_job_cuts_at (job, cut->row.piece, cut->row.feature, cut->place), 0) == cut;
}

static gboolean
is_last_at_place (const TmJob *job, const TmCutRow *cut)
{
  const GPtrArray *cuts = tm_job_cuts_at (job, cut->row.piece, cut->row.feature, cut->place);

  return g_ptr_array_index (cuts, cuts->len - 1) == cut;
}

/* @piece NULL: no place at all. */
static gboolean
is_at (const TmCutRow *cut, const TmPiece *piece, const TmFeature *feature, guint place)
{
  return piece != NULL && cut->row.piece == piece && cut->row.feature == feature && cut->place == place;
}

GArray *
tm_cut_answers (const TmJob *job, const char *tool, const TmPiece *piece, const TmFeature *feature,
                guint place)
{
  GArray *answers = g_array_new (FALSE, FALSE, sizeof (TmCutAnswer));
  TmTool named = { .name = tool ? tool : "" };

  g_return_val_if_fail (job != NULL, answers);
  for (guint i = 0; *named.name != '\0' && i < job->cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (job->cuts, i);

      if (is_first_at_place (job, cut) && !is_at (cut, piece, feature, place))
        add_answers (answers, job, &named, cut);
    }
  return answers;
}

GArray *
tm_cut_newest_answers (const TmJob *job, const char *tool, const TmPiece *piece, const TmFeature *feature,
                       guint place)
{
  GArray *answers = g_array_new (FALSE, FALSE, sizeof (TmCutAnswer));
  TmTool named = { .name = tool ? tool : "" };

  g_return_val_if_fail (job != NULL, answers);
  for (guint i = job->cuts->len; *named.name != '\0' && i > 0 && answers->len < TM_CUT_MOST_ANSWERS; i--)
    {
      const TmCutRow *cut = g_ptr_array_index (job->cuts, i - 1);
      g_autoptr (GArray) here = NULL;

      if (!is_last_at_place (job, cut) || is_at (cut, piece, feature, place))
        continue;
      here = g_array_new (FALSE, FALSE, sizeof (TmCutAnswer));
      add_answers (here, job, &named, cut);
      if (here->len > 0)
        g_array_prepend_vals (answers, here->data, here->len);
    }
  return answers;
}
