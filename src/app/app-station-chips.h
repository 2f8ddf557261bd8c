/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-station-chips: where the next reading goes: one chip for each place and each station of the
 * present feature. A chip that has been read carries a tick.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_STATION_CHIPS (tm_station_chips_get_type ())
G_DECLARE_FINAL_TYPE (TmStationChips, tm_station_chips, TM, STATION_CHIPS, GtkBox)

/* "chosen" (guint place, gpointer const char *station) is emitted when the person picks another. */
GtkWidget *tm_station_chips_new (void) G_GNUC_WARN_UNUSED_RESULT;

/* Shows the session's present spot; @document may be NULL. */
void tm_station_chips_show (TmStationChips *self, TmDocument *document);

/* Whether they are offered, where there are any; at first they are. */
void tm_station_chips_set_offered (TmStationChips *self, gboolean offered);

/* The chip of a place (1..), or of a station (0..), or NULL; for tests. */
GtkWidget *tm_station_chips_place (TmStationChips *self, guint place);
GtkWidget *tm_station_chips_station (TmStationChips *self, guint index);

G_END_DECLS
