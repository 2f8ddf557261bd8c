/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-words: what is said of a drawing and of its balloons.
 */

#pragma once

#include "app-drawing-states.h"

G_BEGIN_DECLS

/* "4711-2, sheet 1" */
char *tm_words_drawing (const TmDrawing *drawing) G_GNUC_WARN_UNUSED_RESULT;

/* "balloon 4, in: Ø25 H7 bearing bore"; @state NULL: no verdict is told. */
char *tm_words_balloon (const TmFeature *feature, guint place,
                        const TmDrawingState *state) G_GNUC_WARN_UNUSED_RESULT;

/* "feature 4 has no balloon on it: Ø25 H7 bearing bore", or of one place of it, where that is not 0. */
char *tm_words_no_balloon (const TmFeature *feature, guint place) G_GNUC_WARN_UNUSED_RESULT;

/* The whole: "Drawing 4711-2, sheet 1; balloon 4, in: Ø25 H7".  @about may be NULL. */
char *tm_words_drawing_with (const TmDrawing *drawing, const char *about) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
