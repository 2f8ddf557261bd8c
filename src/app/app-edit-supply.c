/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-supply.h"

#include <glib/gi18n-lib.h>

TmSupply *
tm_edit_copy_supply (const TmSupply *supply)
{
  return g_memdup2 (supply, sizeof *supply);
}

TmSubPart *
tm_edit_copy_sub_part (const TmSubPart *part)
{
  return g_memdup2 (part, sizeof *part);
}

static gboolean
refuse (const char *line, GError **error)
{
  g_set_error_literal (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, line);
  return FALSE;
}

static void
free_supply (gpointer row)
{
  tm_supply_free (row);
}

gboolean
tm_edit_put_supply (TmDocument *document, TmSupply *old, TmSupply *supply, GError **error)
{
  if (*supply->name == '\0')
    {
      tm_supply_free (supply);
      return refuse (_ ("Name: a material, process or test needs one; write it as the drawing has it."),
                     error);
    }
  return tm_edit_put_row (document, tm_document_job (document)->supplies, old, supply, sizeof *supply,
                          free_supply, error);
}

gboolean
tm_edit_remove_supply (TmDocument *document, TmSupply *supply, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->supplies, supply, free_supply, error);
}

static void
free_sub_part (gpointer row)
{
  tm_sub_part_free (row);
}

gboolean
tm_edit_put_sub_part (TmDocument *document, TmSubPart *old, TmSubPart *part, GError **error)
{
  if (*part->number == '\0')
    {
      tm_sub_part_free (part);
      return refuse (_ ("Part number: a part of the assembly needs one; write it as the parts list has it."),
                     error);
    }
  return tm_edit_put_row (document, tm_document_job (document)->sub_parts, old, part, sizeof *part,
                          free_sub_part, error);
}

gboolean
tm_edit_remove_sub_part (TmDocument *document, TmSubPart *part, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->sub_parts, part, free_sub_part, error);
}
