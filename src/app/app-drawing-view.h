/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-view: a drawing of the job with its balloons, which show what was measured of the piece at the
 * bench.  Zoomed and moved by pointer and keys; while it is for change, balloons are put, moved and taken
 * off.
 *
 * One widget, own-drawn, with one accessible description: of the drawing and of the balloon chosen.
 *
 *   "chosen" ()                       another feature, or none, was chosen here
 *   "turned" ()                       another drawing is shown
 *   "zoomed" ()                       the scale is another one
 *   "jump" ()                         the chosen feature is to be measured
 *   "asks-feature" (double, double)   a feature is to be made at this place, in shares of the page
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-edit-drawing.h"

G_BEGIN_DECLS

#define TM_TYPE_DRAWING_VIEW (tm_drawing_view_get_type ())
G_DECLARE_FINAL_TYPE (TmDrawingView, tm_drawing_view, TM, DRAWING_VIEW, GtkWidget)

/* @for_change: balloons can be put and moved; else a click chooses. */
GtkWidget *tm_drawing_view_new (gboolean for_change) G_GNUC_WARN_UNUSED_RESULT;

/* @document may be NULL. */
void tm_drawing_view_set_document (TmDrawingView *self, TmDocument *document);

/* The drawing shown, by name; NULL when the job has none. */
const char *tm_drawing_view_drawing (TmDrawingView *self);
void tm_drawing_view_turn_to (TmDrawingView *self, const char *drawing);
/* The next one (1) or the one before (-1), as far as there are. */
void tm_drawing_view_turn (TmDrawingView *self, int by);

/* Why the drawing shown cannot be, in one line, or NULL. */
const char *tm_drawing_view_problem (TmDrawingView *self);

/* The balloon number chosen, or NULL. */
const char *tm_drawing_view_chosen (TmDrawingView *self);

/* Chooses the feature @balloon (NULL: none), turns to the drawing that it stands on and brings it into sight;
 * with @closer in the middle, at least as large as on paper.  Emits no "chosen". */
void tm_drawing_view_choose (TmDrawingView *self, const char *balloon, gboolean closer);

/* The same, and of several balloons of it that of @place, where that has one of its own. */
void tm_drawing_view_choose_place (TmDrawingView *self, const char *balloon, guint place, gboolean closer);

/* Place of the balloon chosen; 0: all of them, or none is chosen. */
guint tm_drawing_view_place (TmDrawingView *self);

/* Whether the chosen feature has a balloon on the drawing shown. */
gboolean tm_drawing_view_is_placed (TmDrawingView *self);

/* The next feature after the chosen one, and on from the first, that has no balloon on any drawing; NULL: all
 * have.  Borrowed from the job. */
const char *tm_drawing_view_next_unplaced (TmDrawingView *self);

/* Percent of its size on paper. */
double tm_drawing_view_percent (TmDrawingView *self);
void tm_drawing_view_zoom (TmDrawingView *self, double factor); /* about the middle, or the chosen balloon */
void tm_drawing_view_fit (TmDrawingView *self);

/* The middle of what is in sight, in shares of the page. */
void tm_drawing_view_middle (TmDrawingView *self, double *share_x, double *share_y);

/* Shows where a feature will be made; NAN: nowhere. */
void tm_drawing_view_show_new (TmDrawingView *self, double share_x, double share_y);

/* Puts the balloon of @place (0: all of them) of the feature @balloon, with its leader line to here. */
gboolean tm_drawing_view_put (TmDrawingView *self, const char *balloon, guint place, double share_x,
                              double share_y);

/* From the chosen feature to its first place, from there to the next, from the last to the feature again.
 * FALSE: none is chosen, or it has one place. */
gboolean tm_drawing_view_step_place (TmDrawingView *self);

/* Takes back what was last put, moved or taken off here; FALSE: there is nothing. */
gboolean tm_drawing_view_undo (TmDrawingView *self);
/* After numbers, or drawings, have changed, what was done before is not taken back. */
void tm_drawing_view_forget_undo (TmDrawingView *self);

G_END_DECLS
