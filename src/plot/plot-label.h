/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-label: what features, limits and stations are called, on plots and in reports.
 */

#pragma once

#include "core-station.h"

G_BEGIN_DECLS

/* What a feature is called: its requirement and its name. */
char *tm_feature_title (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* A limit as the drawing wrote it, or, where a bonus moved it, as it is; "" when there is none. */
char *tm_limit_text (gboolean has, gint64 count, const TmQuantity *written, TmUnit unit,
                     guint decimals) G_GNUC_WARN_UNUSED_RESULT;

/* What an event is called: its note, else what happened, with the amount of a correction.  Translated. */
char *tm_event_label (const TmEvent *event) G_GNUC_WARN_UNUSED_RESULT;

/* "mouth/12" as people say it: "mouth 12"; "size" for a feature without stations.  Translated. */
char *tm_station_label (const char *station, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
