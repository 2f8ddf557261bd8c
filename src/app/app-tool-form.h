/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-tool-form: the fields of one cutting tool, and what they mean.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwEntryRow *name;
  AdwComboRow *unit, *reads;
  AdwEntryRow *graduation, *least_cut, *backlash, *spring_passes, *note;
} TmToolForm;

void tm_tool_form_build (TmToolForm *form, GtkBox *into);
/* @tool NULL: a new one whose dial is in @unit. */
void tm_tool_form_fill (TmToolForm *form, const TmTool *tool, TmUnit unit);
/* A new tool on the ground of @tool (NULL: none); NULL with one line in @problem. */
TmTool *tm_tool_form_read (TmToolForm *form, TmJob *job, const TmTool *tool,
                           char **problem) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
