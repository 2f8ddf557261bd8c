/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-tool: changes to the tools of a job and to which tool cuts which feature, as app-edit makes
 * changes: in the model and in the book, or in neither; a struct handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* What the job file would refuse in a tool as written: NULL, or the line that says so, translated. */
const char *tm_edit_tool_problem (const TmTool *tool);

/* @name of the tool to be replaced; NULL adds.  A tool that a feature or a cut names keeps its name. */
gboolean tm_edit_put_tool (TmDocument *document, const char *name, TmTool *tool, GError **error);
gboolean tm_edit_remove_tool (TmDocument *document, const char *name, GError **error);

/* @name "" or NULL: none.  FALSE also where the job has no such feature or tool. */
gboolean tm_edit_set_feature_tool (TmDocument *document, const char *balloon, const char *name,
                                   GError **error);

/* Brings the tools of @from whose names the job has not into it; @n_tools gets how many came, and with none
 * nothing is saved. */
gboolean tm_edit_take_tools (TmDocument *document, const TmJob *from, guint *n_tools, GError **error);

/* A copy that shares the job's texts. */
TmTool *tm_edit_copy_tool (const TmTool *tool) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
