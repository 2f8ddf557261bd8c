/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-check-batch.h"

#include <glib/gi18n-lib.h>

#include "core-judge.h"

static void add_fault (GPtrArray *faults, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_fault (GPtrArray *faults, const char *format, ...)
{
  va_list list;

  va_start (list, format);
  g_ptr_array_add (faults, g_strdup_vprintf (format, list));
  va_end (list);
}

/* The event's place in the list stands for a name, which it has not. */
static void
check_event (const TmJob *job, const TmEvent *event, guint number, GPtrArray *faults)
{
  const TmFeature *feature = *event->feature != '\0' ? tm_job_find_feature (job, event->feature) : NULL;

  if (*event->before_piece != '\0' && tm_job_find_piece (job, event->before_piece) == NULL)
    add_fault (faults, _ ("event %u: piece “%s” is not in this job; add it, or name another"), number,
               event->before_piece);
  if (*event->feature != '\0' && feature == NULL)
    add_fault (faults, _ ("event %u: feature “%s” is not in this job; add it, or name another"), number,
               event->feature);
  if (*event->tool != '\0' && tm_job_find_tool (job, event->tool) == NULL)
    add_fault (faults, _ ("event %u: tool “%s” is not in this job; add it, or name another"), number,
               event->tool);
  else if (*event->tool != '\0' && feature != NULL && !g_str_equal (feature->tool, event->tool))
    add_fault (faults, _ ("event %u: tool “%s” does not cut feature %s; name the tool that does"), number,
               event->tool, feature->balloon);
}

/* The first feature that is out and that no nonconformance answers for, or NULL. */
static const TmFeature *
find_out (const TmJob *job, const TmPiece *piece)
{
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (tm_judge_feature (job, piece, feature, NULL) == TM_VERDICT_OUT
          && tm_job_nonconformance_of (job, piece, feature) == NULL)
        return feature;
    }
  return NULL;
}

static void
check_piece (const TmJob *job, const TmPiece *piece, GPtrArray *faults)
{
  const TmFeature *out;

  if (*piece->disposition == '\0' && *piece->disposition_note != '\0')
    add_fault (faults,
               _ ("piece %s: a note says why it is held back, but it is not; write hold, measure, release or "
                  "scrap, or take the note out"),
               piece->serial);
  if (!g_str_equal (piece->disposition, "release"))
    return;
  out = find_out (job, piece);
  if (out != NULL)
    add_fault (
        faults,
        _ ("piece %s: it is released, but feature %s is out; decide again, or give the nonconformance"),
        piece->serial, out->balloon);
}

void
tm_check_batch (const TmJob *job, GPtrArray *faults)
{
  for (guint i = 0; i < job->events->len; i++)
    check_event (job, g_ptr_array_index (job->events, i), i + 1, faults);
  for (guint i = 0; i < job->pieces->len; i++)
    check_piece (job, g_ptr_array_index (job->pieces, i), faults);
}
