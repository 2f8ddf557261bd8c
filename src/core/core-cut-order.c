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

gboolean
tm_cut_follows (const TmJob *job, const TmCutRow *cut, const TmReading *reading)
{
  const GPtrArray *readings;
  const TmReading *newest;
  const TmReading *first;
  guint newest_at, first_at;

  g_return_val_if_fail (job != NULL && cut != NULL && reading != NULL, FALSE);

  if (g_str_equal (cut->after, "none"))
    return FALSE;
  first = find_first (job, reading);
  newest = tm_job_find_reading (job, cut->after);
  readings = tm_job_readings_at (job, cut->row.piece, cut->row.feature, cut->place);
  if (newest == NULL || readings == NULL || !g_ptr_array_find ((GPtrArray *)readings, newest, &newest_at))
    return !is_later (first->row.at, find_time (job, cut));
  return g_ptr_array_find ((GPtrArray *)readings, first, &first_at) && first_at <= newest_at;
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

void
tm_cut_order_mark_place (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);
  const GPtrArray *trials = tm_job_pin_trials_at (job, piece, feature, place);

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    tm_cut_order_mark_reading (job, g_ptr_array_index (readings, i));
  for (guint i = 0; trials != NULL && i < trials->len; i++)
    tm_cut_order_mark_trial (job, g_ptr_array_index (trials, i));
}
