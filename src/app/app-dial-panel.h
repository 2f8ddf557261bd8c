/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-dial-panel: where the pointer of a dial bore gauge, or another comparing gauge, is put on its ring.
 */

#pragma once

#include <adwaita.h>

#include "app-expansion-choice.h"
#include "app-live-read.h"

G_BEGIN_DECLS

typedef struct {
  TmLiveAnswer answer;
  AdwComboRow *feature;
  GPtrArray *balloons; /* char *, of the features listed after "typed below" */
  AdwEntryRow *nominal, *lower, *upper;
  AdwComboRow *ring;
  GPtrArray *tags; /* char *, of the rings listed after "typed below" */
  AdwEntryRow *standard, *uncertainty, *graduation;
  AdwComboRow *pointer;
  AdwEntryRow *part_temp, *standard_temp;
  TmExpansionChoice part, ring_material;
  const TmJob *job; /* borrowed, or NULL */
  gboolean filling;
} TmDialPanel;

/* The answer with what is asked, and the temperatures below them. */
void tm_dial_panel_build (TmDialPanel *panel, GtkBox *into);
/* @job may be NULL; its features, rings and materials are listed anew. */
void tm_dial_panel_show (TmDialPanel *panel, const TmJob *job);
void tm_dial_panel_clear (TmDialPanel *panel);

G_END_DECLS
