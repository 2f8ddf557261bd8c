/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-stack-panel: which gauge blocks make a size.
 */

#pragma once

#include <adwaita.h>

#include "app-live-read.h"
#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  TmLiveAnswer answer;
  AdwComboRow *set;
  GPtrArray *tags; /* char *, of the registered sets; the usual ones follow in the list */
  AdwEntryRow *size, *wear;
  const TmJob *job; /* borrowed, or NULL */
} TmStackPanel;

void tm_stack_panel_build (TmStackPanel *panel, GtkBox *into);
/* @job may be NULL; its sets are listed anew. */
void tm_stack_panel_show (TmStackPanel *panel, const TmJob *job);
void tm_stack_panel_clear (TmStackPanel *panel);

G_END_DECLS
