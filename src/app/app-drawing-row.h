/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-row: one line of the list at the side of a drawing, as an object for GListModel: a feature, or
 * one place of a feature that is unfolded; and the list.
 */

#pragma once

#include <gio/gio.h>

#include "core-model.h"

G_BEGIN_DECLS

#define TM_TYPE_DRAWING_ROW (tm_drawing_row_get_type ())
G_DECLARE_FINAL_TYPE (TmDrawingRow, tm_drawing_row, TM, DRAWING_ROW, GObject)

/* Borrowed from the job.  Signal "changed" (): what it shows is another now. */
const TmFeature *tm_drawing_row_feature (TmDrawingRow *self);

/* 0: the feature itself; else one of its places, from 1. */
guint tm_drawing_row_place (TmDrawingRow *self);

/* Brings @store (of TM_TYPE_DRAWING_ROW) in step with the features of @job, in their order, each of
 * @unfolded (a set of TmFeature) that has several places followed by these.  Rows that stay keep their
 * object, so that focus, selection and scrolling stay too. */
void tm_drawing_rows_refresh (GListStore *store, const TmJob *job, GHashTable *unfolded);

/* Where the row of @place of the feature @balloon stands; G_MAXUINT, as GTK says it: nowhere. */
guint tm_drawing_rows_find (GListStore *store, const char *balloon, guint place);

G_END_DECLS
