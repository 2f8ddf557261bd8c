/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-budget: changes to the lines that a person wrote into a method's budget.
 */

#include "app-edit.h"

static gboolean
add_line (TmDocument *document, TmBudgetLine *line, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmAddStatus status = tm_job_add_budget_line (job, line);

  if (status != TM_ADD_OK)
    {
      tm_edit_refuse (line->name, status, error);
      tm_budget_line_free (line);
      return FALSE;
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_budget_line (job, line);
  return FALSE;
}

static void
free_line (gpointer row)
{
  tm_budget_line_free (row);
}

gboolean
tm_edit_put_budget_line (TmDocument *document, TmBudgetLine *old, TmBudgetLine *line, GError **error)
{
  if (old == NULL)
    return add_line (document, line, error);
  return tm_edit_put_row (document, tm_document_job (document)->budget_lines, old, line, sizeof *line,
                          free_line, error);
}

gboolean
tm_edit_remove_budget_line (TmDocument *document, TmBudgetLine *line, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->budget_lines, line, free_line, error);
}

TmBudgetLine *
tm_edit_copy_budget_line (const TmBudgetLine *line)
{
  return g_memdup2 (line, sizeof *line);
}
