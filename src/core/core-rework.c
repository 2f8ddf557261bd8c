/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rework says which reading was the newest when it was done, as a cut does (core-cut-order.c); one that
 * does not, and a pin trial, go by the times.  Where there is none, the row is taken to be older than the
 * rework: nothing is then claimed of a size that has been worked on.
 */

#include "core-rework.h"

#include "core-cut-order.h"

#include <string.h>

static gboolean
is_later (const char *row_at, const char *rework_at)
{
  return *row_at != '\0' && strcmp (row_at, rework_at) > 0;
}

gboolean
tm_rework_is_about (const TmNonconformance *rework, const TmPiece *piece, const TmFeature *feature,
                    guint place)
{
  return *rework->rework_at != '\0' && g_str_equal (rework->feature, feature->balloon)
         && (*rework->piece == '\0' || g_str_equal (rework->piece, piece->serial))
         && (rework->place == 0 || rework->place == place);
}

static gboolean
is_about (const TmNonconformance *rework, const TmEntryRow *row, guint place)
{
  return tm_rework_is_about (rework, row->piece, row->feature, place);
}

gboolean
tm_rework_follows_reading (const TmJob *job, const TmNonconformance *rework, const TmReading *reading)
{
  const TmReading *first = tm_cut_order_first_reading (job, reading);
  const TmReading *newest;

  if (g_str_equal (rework->rework_after, "none"))
    return FALSE;
  newest = tm_job_find_reading (job, rework->rework_after);
  if (newest != NULL && newest->row.feature == reading->row.feature)
    return first->row.order <= newest->row.order;
  return !is_later (first->row.at, rework->rework_at);
}

gboolean
tm_rework_follows_trial (const TmNonconformance *rework, const TmPinTrial *trial)
{
  return !is_later (trial->row.at, rework->rework_at);
}

void
tm_rework_mark_reading (const TmJob *job, TmReading *reading)
{
  reading->row.before_rework = FALSE;
  for (guint i = 0; i < job->nonconformances->len && !reading->row.before_rework; i++)
    {
      const TmNonconformance *rework = g_ptr_array_index (job->nonconformances, i);

      reading->row.before_rework = is_about (rework, &reading->row, reading->place)
                                   && tm_rework_follows_reading (job, rework, reading);
    }
}

void
tm_rework_mark_trial (const TmJob *job, TmPinTrial *trial)
{
  trial->row.before_rework = FALSE;
  for (guint i = 0; i < job->nonconformances->len && !trial->row.before_rework; i++)
    {
      const TmNonconformance *rework = g_ptr_array_index (job->nonconformances, i);

      trial->row.before_rework
          = is_about (rework, &trial->row, trial->place) && tm_rework_follows_trial (rework, trial);
    }
}

static gboolean
concerns (const TmNonconformance *rework, const TmEntryRow *row)
{
  return g_str_equal (rework->feature, row->feature->balloon)
         && (*rework->piece == '\0' || g_str_equal (rework->piece, row->piece->serial));
}

void
tm_job_mark_rework (TmJob *job, const TmNonconformance *row)
{
  g_return_if_fail (job != NULL && row != NULL);

  for (guint i = 0; i < job->readings->len; i++)
    {
      TmReading *reading = g_ptr_array_index (job->readings, i);

      if (concerns (row, &reading->row))
        tm_rework_mark_reading (job, reading);
    }
  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      TmPinTrial *trial = g_ptr_array_index (job->pin_trials, i);

      if (concerns (row, &trial->row))
        tm_rework_mark_trial (job, trial);
    }
}

void
tm_job_mark_reworks (TmJob *job)
{
  g_return_if_fail (job != NULL);

  for (guint i = 0; i < job->nonconformances->len; i++)
    {
      const TmNonconformance *row = g_ptr_array_index (job->nonconformances, i);

      if (*row->rework_at != '\0')
        tm_job_mark_rework (job, row);
    }
}
