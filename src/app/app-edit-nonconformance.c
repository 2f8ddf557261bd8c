/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-nonconformance.h"

TmNonconformance *
tm_edit_copy_nonconformance (const TmNonconformance *row)
{
  return g_memdup2 (row, sizeof *row);
}

/* The book did not keep @row: it is emptied first, so that what it said of readings is forgotten. */
static void
take_back (TmJob *job, TmNonconformance *row)
{
  row->rework_at = "";
  tm_job_mark_rework (job, row);
  g_ptr_array_remove (job->nonconformances, row);
}

static gboolean
add (TmDocument *document, TmNonconformance *row, GError **error)
{
  TmJob *job = tm_document_job (document);

  tm_job_add_nonconformance (job, row);
  tm_job_mark_rework (job, row);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  take_back (job, row);
  return FALSE;
}

gboolean
tm_edit_put_nonconformance (TmDocument *document, TmNonconformance *old, TmNonconformance *row,
                            GError **error)
{
  TmJob *job = tm_document_job (document);
  TmNonconformance before;

  if (old == NULL)
    return add (document, row, error);
  before = *old;
  *old = *row;
  tm_nonconformance_free (row);
  tm_job_mark_rework (job, old);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  *old = before;
  tm_job_mark_rework (job, old);
  return FALSE;
}

static gboolean
is_about (const TmNonconformance *row, const TmReading *reading)
{
  return g_str_equal (row->feature, reading->row.feature->balloon)
         && (*row->piece == '\0' || g_str_equal (row->piece, reading->row.piece->serial));
}

static const char *
find_newest_reading (const TmJob *job, const TmNonconformance *row)
{
  for (guint i = job->readings->len; i > 0; i--)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i - 1);

      if (is_about (row, reading))
        return reading->row.id;
    }
  return "none";
}

void
tm_edit_mark_reworked (TmJob *job, TmNonconformance *row, const char *by)
{
  g_autofree char *now = tm_now_utc ();

  g_return_if_fail (job != NULL && row != NULL && by != NULL);

  row->rework_by = tm_job_intern (job, by);
  row->rework_at = tm_job_intern (job, now);
  row->rework_after = tm_job_intern (job, find_newest_reading (job, row));
}

void
tm_edit_unmark_reworked (TmJob *job, TmNonconformance *row)
{
  g_return_if_fail (job != NULL && row != NULL);

  row->rework_by = row->rework_at = row->rework_after = tm_job_intern (job, "");
}
