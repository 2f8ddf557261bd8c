/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-edit-tool.h"

#include <glib/gi18n-lib.h>

#include "app-edit-named.h"

TmTool *
tm_edit_copy_tool (const TmTool *tool)
{
  return g_memdup2 (tool, sizeof *tool);
}

static gboolean
is_below_zero (const TmQuantity *quantity)
{
  return quantity->given && quantity->count < 0;
}

const char *
tm_edit_tool_problem (const TmTool *tool)
{
  if (tool->graduation.given && tool->graduation.count <= 0)
    return _ ("the graduation must be above zero: what one mark of the dial stands for");
  if (is_below_zero (&tool->least_cut) || is_below_zero (&tool->backlash)
      || is_below_zero (&tool->spring_passes))
    return _ ("least cut, backlash and spring passes cannot be below zero; leave out what is not known");
  if (tool->spring_passes.given && tool->spring_passes.count > 1000)
    return _ ("more than 1000 spring passes; give the number that the tool usually takes");
  return NULL;
}

static gboolean
refuse (const char *name, const char *why, GError **error)
{
  g_set_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED, "%s: %s", name, why);
  return FALSE;
}

TM_DEFINE_NAMED_KIND (tools, tool, tm_edit_copy_tool, tm_tool_free)

gboolean
tm_edit_put_tool (TmDocument *document, const char *name, TmTool *tool, GError **error)
{
  const char *new_name = tool->name;
  const char *problem = tm_edit_tool_problem (tool);

  if (problem == NULL)
    return tm_edit_put_named (document, &tools, name, tool, error);
  tm_tool_free (tool);
  return refuse (new_name, problem, error);
}

gboolean
tm_edit_remove_tool (TmDocument *document, const char *name, GError **error)
{
  return tm_edit_remove_named (document, &tools, tm_document_job (document)->tools, name, error);
}

gboolean
tm_edit_set_feature_tool (TmDocument *document, const char *balloon, const char *name, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmFeature *feature = tm_job_find_feature (job, balloon);
  const TmTool *tool = name != NULL && *name != '\0' ? tm_job_find_tool (job, name) : NULL;
  const char *before;

  if (feature == NULL)
    return refuse (balloon, _ ("the job has no such feature any more"), error);
  if (tool == NULL && name != NULL && *name != '\0')
    return refuse (name, _ ("the job has no such tool; add it on the Gauges page, under Cutting tools"),
                   error);
  before = feature->tool;
  feature->tool = tool != NULL ? tool->name : tm_job_intern (job, "");
  if (tm_document_save_definitions (document, error))
    return TRUE;
  feature->tool = before;
  return FALSE;
}

static TmTool *
copy_from (TmJob *job, const TmTool *from)
{
  TmTool *tool = tm_edit_copy_tool (from);

  tool->name = tm_job_intern (job, from->name);
  tool->note = tm_job_intern (job, from->note);
  tool->extra = tm_job_intern (job, from->extra);
  return tool;
}

static void
drop_tools_after (TmJob *job, guint n)
{
  while (job->tools->len > n)
    tm_job_remove_tool (job, ((const TmTool *)g_ptr_array_index (job->tools, job->tools->len - 1))->name);
}

gboolean
tm_edit_take_tools (TmDocument *document, const TmJob *from, guint *n_tools, GError **error)
{
  TmJob *job = tm_document_job (document);
  guint n_before = job->tools->len;

  for (guint i = 0; i < from->tools->len; i++)
    {
      TmTool *tool = copy_from (job, g_ptr_array_index (from->tools, i));

      if (tm_job_add_tool (job, tool) != TM_ADD_OK)
        tm_tool_free (tool);
    }
  *n_tools = job->tools->len - n_before;
  if (*n_tools == 0 || tm_document_save_definitions (document, error))
    return TRUE;
  drop_tools_after (job, n_before);
  *n_tools = 0;
  return FALSE;
}
