/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-drawing: changes to the drawings of a job and to the balloons that stand on them.
 *
 * As in app-edit.h: each change is in the book before the function returns TRUE, and on FALSE the job is as
 * before, with one line for the person in @error.  What is handed in is taken in any case.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

/* Where a balloon stands: centre and tip of its leader line, as shares 0..1 of the page's width and height
 * from its upper left corner.  NAN in `to_x`: no leader line. */
typedef struct {
  double x, y;
  double to_x, to_y;
} TmMarkSpot;

TmMarkSpot tm_mark_spot (const TmBalloonMark *mark);

/* The mark of @place (0: all of them) of the feature @balloon on the drawing @drawing, or NULL. */
TmBalloonMark *tm_find_mark (const TmJob *job, const char *drawing, const char *balloon, guint place);

/* The first mark of the feature @balloon on any drawing, in the order of the drawings; NULL: none. */
TmBalloonMark *tm_find_any_mark (const TmJob *job, const char *balloon);

/* The same, and of @place alone, where that is not 0. */
TmBalloonMark *tm_find_place_mark (const TmJob *job, const char *balloon, guint place);

/* @wished, with a number behind it where a drawing of that name is there already. */
char *tm_edit_free_drawing_name (const TmJob *job, const char *wished) G_GNUC_WARN_UNUSED_RESULT;

/* Adds them after the others, all or none.  @drawings: TmDrawing with content, media and page; one without a
 * digest gets it.  Refused: no content, more than TM_BOOK_CONTENT_MAX, a name that is empty or taken.  The
 * array must not free its rows. */
gboolean tm_edit_add_drawings (TmDocument *document, GPtrArray *drawings, GError **error);

/* Other name or sheet; the balloons stay on it. */
gboolean tm_edit_name_drawing (TmDocument *document, TmDrawing *drawing, const char *name, const char *sheet,
                               GError **error);

/* Puts content, media and page of @with in the place of those of @drawing: another revision of the same
 * sheet, on which the balloons stay where they are.  Refused as in tm_edit_add_drawings(). */
gboolean tm_edit_replace_drawing (TmDocument *document, TmDrawing *drawing, TmDrawing *with, GError **error);

/* Goes with its balloons. */
gboolean tm_edit_remove_drawing (TmDocument *document, TmDrawing *drawing, GError **error);

/* Puts the balloon of @place of the feature @balloon at @spot of @drawing, or moves the one there.  What lies
 * outside the page is brought to its edge. */
gboolean tm_edit_put_mark (TmDocument *document, const char *drawing, const char *balloon, guint place,
                           const TmMarkSpot *spot, GError **error);
gboolean tm_edit_remove_mark (TmDocument *document, TmBalloonMark *mark, GError **error);

/* Numbers the features 1, 2, … as their balloons come: drawing after drawing, on each clockwise around the
 * middle of the page from its upper left corner (common practice); those without a balloon follow in the
 * order that they had.  Sizes that positions take their bonus from stay the same features.  Refused where one
 * that would get another number has something recorded under it. */
gboolean tm_edit_number_balloons (TmDocument *document, GError **error);

G_END_DECLS
