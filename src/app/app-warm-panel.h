/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-warm-panel: a size at another temperature.
 */

#pragma once

#include <adwaita.h>

#include "app-expansion-choice.h"
#include "app-live-read.h"

G_BEGIN_DECLS

typedef struct {
  TmLiveAnswer answer;
  AdwEntryRow *size, *from, *to;
  TmExpansionChoice material;
  const TmJob *job; /* borrowed, or NULL */
  gboolean filling;
} TmWarmPanel;

void tm_warm_panel_build (TmWarmPanel *panel, GtkBox *into);
void tm_warm_panel_show (TmWarmPanel *panel, const TmJob *job);
void tm_warm_panel_clear (TmWarmPanel *panel);

G_END_DECLS
