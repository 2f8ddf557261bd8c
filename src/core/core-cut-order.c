/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A cut says which reading was the newest when it was made.  One that does not (a file by other hands)
 * is placed by the times; where there is none, what is recorded is taken to be older than the cut: nothing
 * is then claimed of a size that may have been cut away.
 */

#include "core-cut-order.h"

#include <string.h>

/* A correction is about the size as it was when the reading that it corrects was taken. */
static const TmReading *
find_first (const TmJob *job, const TmReading *reading)
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

/* A correction of a cut keeps the time of the cut. */
static const char *
find_time (const TmJob *job, const TmCutRow *cut)
{
  while (*cut->row.replaces != '\0')
    {
      const TmCutRow *earlier = tm_job_find_cut (job, cut->row.replaces);

      if (earlier == NULL || earlier == cut)
        break;
      cut = earlier;
    }
  return cut->row.at;
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

/* @at is where @reading stands, if it is known; a correction stands where the reading did that it corrects.
 */
static gboolean
is_up_to (const TmJob *job, const GPtrArray *readings, const TmReading *reading, guint at, guint newest_at)
{
  const TmReading *first = find_first (job, reading);
  guint first_at = at;

  if (first == reading && at != G_MAXUINT)
    return at <= newest_at;
  return g_ptr_array_find ((GPtrArray *)readings, first, &first_at) && first_at <= newest_at;
}

gboolean
tm_cut_follows (const TmJob *job, const TmCutRow *cut, const TmReading *reading)
{
  const GPtrArray *readings;
  guint newest_at;

  g_return_val_if_fail (job != NULL && cut != NULL && reading != NULL, FALSE);

  if (g_str_equal (cut->after, "none"))
    return FALSE;
  readings = tm_job_readings_at (job, cut->row.piece, cut->row.feature, cut->place);
  if (find_newest (job, cut, readings, &newest_at))
    return is_up_to (job, readings, reading, G_MAXUINT, newest_at);
  return !is_later (find_first (job, reading)->row.at, find_time (job, cut));
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
  const char *at = find_time (job, cut);
  guint newest_at;
  gboolean placed;

  if (readings == NULL || g_str_equal (cut->after, "none"))
    return;
  placed = find_newest (job, cut, readings, &newest_at);
  for (guint i = 0; i < readings->len; i++)
    {
      TmReading *reading = g_ptr_array_index (readings, i);

      if (!reading->row.before_cut)
        reading->row.before_cut = placed ? is_up_to (job, readings, reading, i, newest_at)
                                         : !is_later (find_first (job, reading)->row.at, at);
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
