/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-field.h"

static gpointer
copy_field (gconstpointer row, gpointer data)
{
  return g_memdup2 (row, sizeof (TmReportField));
}

/* At other addresses than they had. */
static void
put_back (TmDocument *document, GPtrArray *before)
{
  GPtrArray *fields = tm_document_job (document)->report_fields;
  const gboolean moved = before->len > 0;

  tm_edit_give_back (fields, before);
  if (moved)
    tm_document_restored (document);
}

gboolean
tm_edit_report_facts (TmDocument *document, TmFactsChange change, gpointer data, GError **error)
{
  GPtrArray *fields = g_ptr_array_copy (tm_document_job (document)->report_fields, copy_field, NULL);

  if (tm_edit_facts (document, change, data, error))
    {
      g_ptr_array_unref (fields);
      return TRUE;
    }
  put_back (document, fields);
  return FALSE;
}
