/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-states: what the record says of each balloon's feature on the piece at the bench.
 *
 * A balloon is judged when it is first asked for, a few at a time while the main loop has nothing else to do,
 * so that no key waits for a large job; until then it is not known.
 */

#pragma once

#include "app-document.h"
#include "core-judge.h"
#include "plot-mark.h"

G_BEGIN_DECLS

typedef struct _TmDrawingStates TmDrawingStates;

typedef struct {
  TmVerdict verdict;
  TmPoint point; /* UP or DOWN when out above or below the band; else NONE */
} TmDrawingState;

/* @changed is called on the main loop once more is known, or what was known is no longer so. */
TmDrawingStates *tm_drawing_states_new (void (*changed) (gpointer data),
                                        gpointer data) G_GNUC_WARN_UNUSED_RESULT;
void tm_drawing_states_free (TmDrawingStates *states);

/* Watches @document, which may be NULL. */
void tm_drawing_states_set_document (TmDrawingStates *states, TmDocument *document);

/* Of @place of @feature, the worst of all where @place is 0; FALSE: not known yet, and asked for. */
gboolean tm_drawing_states_get (TmDrawingStates *states, const TmFeature *feature, guint place,
                                TmDrawingState *state);

/* Whether all that was asked for is known. */
gboolean tm_drawing_states_are_known (TmDrawingStates *states);

G_END_DECLS
