/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-signature.h"

#include <glib/gi18n-lib.h>

static TmSignature *
copy_row (TmJob *job, const TmSignature *row)
{
  TmSignature *copy = tm_signature_new ();

  copy->by = tm_job_intern (job, row->by);
  copy->role = tm_job_intern (job, row->role);
  copy->at = tm_job_intern (job, row->at);
  copy->digest = tm_job_intern (job, row->digest);
  copy->report = tm_job_intern (job, row->report);
  copy->pages = tm_job_intern (job, row->pages);
  copy->workbook = tm_job_intern (job, row->workbook);
  return copy;
}

static gboolean
check_unchanged (TmDocument *document, gint64 mark, GError **error)
{
  gboolean changed = TRUE;

  if (!tm_book_changed_since (tm_document_book (document), tm_document_job (document)->id, mark, &changed,
                              error))
    return FALSE;
  if (changed)
    g_set_error_literal (
        error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED,
        _ ("The record has changed since it was read for signing, so nothing was signed; sign "
           "again, and look at what is new."));
  return !changed;
}

gboolean
tm_edit_add_signature (TmDocument *document, const TmSignature *row, gint64 mark, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmSignature *added;

  g_return_val_if_fail (row != NULL, FALSE);

  if (!check_unchanged (document, mark, error))
    return FALSE;
  added = copy_row (job, row);
  tm_job_add_signature (job, added);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  g_ptr_array_remove (job->signatures, added);
  return FALSE;
}
