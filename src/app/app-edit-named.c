/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-named.h"

static const char *
get_name (gconstpointer row)
{
  return *(const char *const *)row;
}

static gboolean
refuse (const TmNamedKind *kind, gpointer row, TmAddStatus status, GError **error)
{
  tm_edit_refuse (get_name (row), status, error);
  kind->free (row);
  return FALSE;
}

static gboolean
add (TmDocument *document, const TmNamedKind *kind, gpointer row, GError **error)
{
  TmJob *job = tm_document_job (document);
  const char *name = get_name (row);
  TmAddStatus status = kind->add (job, row);

  if (status != TM_ADD_OK)
    return refuse (kind, row, status, error);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  kind->remove (job, name);
  return FALSE;
}

static gpointer
copy_named (const TmJob *job, const TmNamedKind *kind, const char *name)
{
  gconstpointer row = kind->find (job, name);

  return row != NULL ? kind->copy (row) : NULL;
}

static gboolean
replace (TmDocument *document, const TmNamedKind *kind, const char *name, gpointer row, GError **error)
{
  TmJob *job = tm_document_job (document);
  const char *new_name = get_name (row);
  gpointer before = copy_named (job, kind, name);
  TmAddStatus status = kind->replace (job, name, row);

  if (status != TM_ADD_OK)
    {
      g_clear_pointer (&before, kind->free);
      return refuse (kind, row, status, error);
    }
  if (tm_document_save_definitions (document, error))
    {
      kind->free (before);
      return TRUE;
    }
  kind->replace (job, new_name, before);
  tm_document_restored (document);
  return FALSE;
}

gboolean
tm_edit_put_named (TmDocument *document, const TmNamedKind *kind, const char *name, gpointer row,
                   GError **error)
{
  return name == NULL ? add (document, kind, row, error) : replace (document, kind, name, row, error);
}

gboolean
tm_edit_remove_named (TmDocument *document, const TmNamedKind *kind, GPtrArray *list, const char *name,
                      GError **error)
{
  TmJob *job = tm_document_job (document);
  gpointer before = copy_named (job, kind, name);
  TmAddStatus status;
  guint at = 0;

  g_ptr_array_find (list, kind->find (job, name), &at);
  status = kind->remove (job, name);
  if (status == TM_ADD_OK && !tm_document_save_definitions (document, error))
    {
      kind->add (job, before);
      tm_edit_move_last (list, at);
      tm_document_restored (document);
      return FALSE;
    }
  g_clear_pointer (&before, kind->free);
  return status == TM_ADD_OK || tm_edit_refuse (name, status, error);
}
