/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The place is judged as ever, in a job that differs only in its rows there: copies of those that the last
 * rework follows and no earlier one, which then count.
 */

#include "core-first-result.h"

#include "core-cut-order.h"
#include "core-index.h"
#include "core-rework.h"

#include <string.h>

/* How often the place was reworked after a row; the last of these reworks. */
typedef struct {
  guint n;
  const TmNonconformance *last;
} Reworks;

static void
count_rework (Reworks *reworks, const TmNonconformance *rework)
{
  reworks->n++;
  if (reworks->last == NULL || strcmp (rework->rework_at, reworks->last->rework_at) >= 0)
    reworks->last = rework;
}

static Reworks
find_reworks (const TmJob *job, const TmEntryRow *row, guint place, gboolean is_trial)
{
  Reworks reworks = { 0, NULL };

  for (guint i = 0; i < job->nonconformances->len; i++)
    {
      const TmNonconformance *rework = g_ptr_array_index (job->nonconformances, i);

      if (tm_rework_is_about (rework, row->piece, row->feature, place)
          && (is_trial ? tm_rework_follows_trial (rework, (const TmPinTrial *)row)
                       : tm_rework_follows_reading (job, rework, (const TmReading *)row)))
        count_rework (&reworks, rework);
    }
  return reworks;
}

/* -------- Which rows -------- */

typedef struct {
  const TmJob *job;
  const TmPiece *piece;
  const TmFeature *feature;
  guint place;
  const GPtrArray *readings, *trials; /* of the place; may be NULL */
  Reworks fewest;          /* of a row that stands and was reworked after: the last state but one */
  const TmReading *newest; /* of that state; NULL: only pins were tried */
} State;

/* A correction is as old as the reading that it corrects. */
static gboolean
is_newer (const State *state, const TmReading *reading)
{
  return state->newest == NULL
         || tm_cut_order_first_reading (state->job, reading)->row.order
                > tm_cut_order_first_reading (state->job, state->newest)->row.order;
}

static void
look_at_rows (State *state, const GPtrArray *rows, gboolean is_trial)
{
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      const TmEntryRow *row = g_ptr_array_index (rows, i);
      const Reworks reworks = row->before_rework && tm_row_stands (row)
                                  ? find_reworks (state->job, row, state->place, is_trial)
                                  : (Reworks) { 0, NULL };

      if (reworks.n == 0 || (state->fewest.n > 0 && reworks.n > state->fewest.n))
        continue;
      if (reworks.n < state->fewest.n)
        state->newest = NULL;
      state->fewest = reworks;
      if (!is_trial && is_newer (state, (const TmReading *)row))
        state->newest = (const TmReading *)row;
    }
}

/* A cut that was made before the newest reading of the state, and so not as part of the rework. */
static gboolean
was_cut (const State *state, const TmReading *reading)
{
  const GPtrArray *cuts = tm_job_cuts_at (state->job, state->piece, state->feature, state->place);

  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (cuts, i);

      if (tm_row_stands (&cut->row) && tm_cut_follows (state->job, cut, reading)
          && !tm_cut_follows (state->job, cut, state->newest))
        return TRUE;
    }
  return FALSE;
}

/* Pins go by the times, as they do for a cut: one that was not tried after the cut says nothing. */
static gboolean
trial_was_cut (const State *state, const TmPinTrial *trial)
{
  const GPtrArray *cuts = tm_job_cuts_at (state->job, state->piece, state->feature, state->place);

  for (guint i = 0; trial->row.before_cut && cuts != NULL && i < cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (cuts, i);

      if (tm_row_stands (&cut->row) && strcmp (trial->row.at, cut->row.at) <= 0
          && strcmp (cut->row.at, state->fewest.last->rework_at) < 0
          && (state->newest == NULL || !tm_cut_follows (state->job, cut, state->newest)))
        return TRUE;
    }
  return FALSE;
}

static gboolean
belongs (const State *state, const TmEntryRow *row, gboolean is_trial)
{
  if (!row->before_rework || !tm_row_stands (row)
      || find_reworks (state->job, row, state->place, is_trial).n != state->fewest.n)
    return FALSE;
  return is_trial ? !trial_was_cut (state, (const TmPinTrial *)row)
                  : !was_cut (state, (const TmReading *)row);
}

/* -------- Copies that count -------- */

static void
let_count (TmEntryRow *row)
{
  row->before_cut = row->before_rework = FALSE;
}

static GPtrArray *
copy_readings (const State *state)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; state->readings != NULL && i < state->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (state->readings, i);
      TmReading *copy;

      if (!belongs (state, &reading->row, FALSE))
        continue;
      copy = g_memdup2 (reading, sizeof *reading);
      let_count (&copy->row);
      g_ptr_array_add (copies, copy);
    }
  return copies;
}

static GPtrArray *
copy_trials (const State *state)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; state->trials != NULL && i < state->trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (state->trials, i);
      TmPinTrial *copy;

      if (!belongs (state, &trial->row, TRUE))
        continue;
      copy = g_memdup2 (trial, sizeof *trial);
      let_count (&copy->row);
      g_ptr_array_add (copies, copy);
    }
  return copies;
}

/* The copies go; the result names what they are copies of. */
static void
name_originals (const TmJob *job, TmSizes *sizes)
{
  for (guint i = 0; i < sizes->n_stations; i++)
    if (sizes->stations[i].last != NULL)
      sizes->stations[i].last = tm_job_find_reading (job, sizes->stations[i].last->row.id);
}

static void
judge_state (const State *state, TmJudgement *out)
{
  g_autoptr (GPtrArray) readings = copy_readings (state);
  g_autoptr (GPtrArray) trials = copy_trials (state);
  TmJob before = *state->job;

  before.index = tm_index_view (state->job->index, state->piece, state->feature, state->place,
                                readings->len > 0 ? readings : NULL, trials->len > 0 ? trials : NULL);
  tm_judge (&before, state->piece, state->feature, state->place, out);
  name_originals (state->job, &out->sizes);
  tm_index_free (before.index);
}

gboolean
tm_first_result (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                 TmFirstResult *out)
{
  State state = { job, piece, feature, place, NULL, NULL, { 0, NULL }, NULL };

  g_return_val_if_fail (job != NULL && piece != NULL && feature != NULL && out != NULL, FALSE);
  memset (out, 0, sizeof *out);
  if (job->nonconformances->len == 0)
    return FALSE;
  state.readings = tm_job_readings_at (job, piece, feature, place);
  state.trials = tm_job_pin_trials_at (job, piece, feature, place);
  look_at_rows (&state, state.readings, FALSE);
  look_at_rows (&state, state.trials, TRUE);
  if (state.fewest.n == 0)
    return FALSE;
  out->rework = state.fewest.last;
  judge_state (&state, &out->judgement);
  return TRUE;
}

void
tm_first_result_clear (TmFirstResult *result)
{
  tm_judgement_clear (&result->judgement);
}
