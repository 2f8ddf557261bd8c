/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-tool-view: the shop's cutting tools on the left; on the right the one chosen: its dial, the features
 * that it cuts, and how it has cut.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_TOOL_VIEW (tm_tool_view_get_type ())
G_DECLARE_FINAL_TYPE (TmToolView, tm_tool_view, TM, TOOL_VIEW, GtkBox)

GtkWidget *tm_tool_view_new (void);

/* @document may be NULL. */
void tm_tool_view_set_document (TmToolView *self, TmDocument *document);

/* Shows the tool called @name. */
void tm_tool_view_choose (TmToolView *self, const char *name);

/* Puts the focus on the tool chosen. */
void tm_tool_view_enter (TmToolView *self);

/* The tools, and what is said of how the one chosen has cut; for tests. */
GtkListBox *tm_tool_view_tools (TmToolView *self);
const char *tm_tool_view_response (TmToolView *self);

G_END_DECLS
