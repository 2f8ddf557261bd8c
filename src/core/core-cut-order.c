/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A cut says which reading was the newest when it was made.  One that does not (a file by other hands)
 * is placed by the times; where there is none, what is recorded is taken to be older than the cut: nothing
 * is then claimed of a size that may have been cut away.
 */

#include "core-cut-order.h"

#include <string.h>

const TmReading *
tm_cut_order_first_reading (const TmJob *job, const TmReading *reading)
{
  const TmReading *target = reading;

  while (*target->row.replaces != '\0')
    {
      const TmReading *earlier = tm_job_find_reading (job, target->row.replaces);

      if (earlier == NULL || earlier == target)
        break;
      target = earlier;
    }
  return target;
}

const TmCutRow *
tm_cut_order_first (const TmJob *job, const TmCutRow *cut)
{
  while (*cut->row.replaces != '\0')
    {
      const TmCutRow *earlier = tm_job_find_cut (job, cut->row.replaces);

      if (earlier == NULL || earlier == cut)
        break;
      cut = earlier;
    }
  return cut;
}

/* A correction of a cut keeps the time of the cut. */
static const char *
find_time (const TmJob *job, const TmCutRow *cut)
{
  return tm_cut_order_first (job, cut)->row.at;
}

static gboolean
is_later (const char *row_at, const char *cut_at)
{
  return *row_at != '\0' && *cut_at != '\0' && strcmp (row_at, cut_at) > 0;
}

/* The place of the reading that @cut names, among those of its own place. */
static gboolean
find_newest (const TmJob *job, const TmCutRow *cut, const GPtrArray *readings, guint *at)
{
  const TmReading *newest = tm_job_find_reading (job, cut->after);

  return newest != NULL && readings != NULL && g_ptr_array_find ((GPtrArray *)readings, newest, at);
}

TmCutStand
tm_cut_order_stand (const TmJob *job, const TmCutRow *cut)
{
  const GPtrArray *readings = tm_job_readings_at (job, cut->row.piece, cut->row.feature, cut->place);
  TmCutStand stand = { .before_all = g_str_equal (cut->after, "none"), .at = find_time (job, cut) };

  stand.placed = find_newest (job, cut, readings, &stand.newest);
  return stand;
}

/* A correction stands where the reading did that it corrects. */
static gboolean
is_up_to (const TmJob *job, const TmReading *reading, guint number, guint newest)
{
  const TmReading *first = tm_cut_order_first_reading (job, reading);

  if (first != reading
      && !g_ptr_array_find (
          (GPtrArray *)tm_job_readings_at (job, reading->row.piece, reading->row.feature, reading->place),
          first, &number))
    return FALSE;
  return number <= newest;
}

gboolean
tm_cut_order_follows (const TmJob *job, const TmCutStand *stand, const TmReading *reading, guint number)
{
  if (stand->before_all)
    return FALSE;
  return stand->placed ? is_up_to (job, reading, number, stand->newest)
                       : !is_later (tm_cut_order_first_reading (job, reading)->row.at, stand->at);
}

gboolean
tm_cut_follows (const TmJob *job, const TmCutRow *cut, const TmReading *reading)
{
  const GPtrArray *readings;
  TmCutStand stand;
  guint number = G_MAXUINT;

  g_return_val_if_fail (job != NULL && cut != NULL && reading != NULL, FALSE);

  stand = tm_cut_order_stand (job, cut);
  readings = tm_job_readings_at (job, cut->row.piece, cut->row.feature, cut->place);
  if (stand.placed && !g_ptr_array_find ((GPtrArray *)readings, reading, &number))
    return FALSE;
  return tm_cut_order_follows (job, &stand, reading, number);
}

void
tm_cut_order_mark_reading (const TmJob *job, TmReading *reading)
{
  const GPtrArray *cuts = tm_job_cuts_at (job, reading->row.piece, reading->row.feature, reading->place);

  reading->row.before_cut = FALSE;
  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (cuts, i);

      if (tm_row_stands (&cut->row) && tm_cut_follows (job, cut, reading))
        reading->row.before_cut = TRUE;
    }
}

void
tm_cut_order_mark_trial (const TmJob *job, TmPinTrial *trial)
{
  const GPtrArray *cuts = tm_job_cuts_at (job, trial->row.piece, trial->row.feature, trial->place);

  trial->row.before_cut = FALSE;
  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (cuts, i);

      if (tm_row_stands (&cut->row) && !is_later (trial->row.at, find_time (job, cut)))
        trial->row.before_cut = TRUE;
    }
}

static void
mark_readings (const TmJob *job, const TmCutRow *cut)
{
  const GPtrArray *readings = tm_job_readings_at (job, cut->row.piece, cut->row.feature, cut->place);
  TmCutStand stand = tm_cut_order_stand (job, cut);

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      TmReading *reading = g_ptr_array_index (readings, i);

      if (!reading->row.before_cut)
        reading->row.before_cut = tm_cut_order_follows (job, &stand, reading, i);
    }
}

void
tm_cut_order_mark_cut (const TmJob *job, const TmCutRow *cut)
{
  const GPtrArray *trials = tm_job_pin_trials_at (job, cut->row.piece, cut->row.feature, cut->place);
  const char *at = find_time (job, cut);

  if (!tm_row_stands (&cut->row))
    return;
  mark_readings (job, cut);
  for (guint i = 0; trials != NULL && i < trials->len; i++)
    {
      TmPinTrial *trial = g_ptr_array_index (trials, i);

      if (!is_later (trial->row.at, at))
        trial->row.before_cut = TRUE;
    }
}

static void
clear_marks (const GPtrArray *rows)
{
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    ((TmEntryRow *)g_ptr_array_index (rows, i))->before_cut = FALSE;
}

void
tm_cut_order_mark_place (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *cuts = tm_job_cuts_at (job, piece, feature, place);

  clear_marks (tm_job_readings_at (job, piece, feature, place));
  clear_marks (tm_job_pin_trials_at (job, piece, feature, place));
  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    tm_cut_order_mark_cut (job, g_ptr_array_index (cuts, i));
}
