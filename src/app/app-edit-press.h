/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-press: what a press fit of a feature with its mate needs to be known for: how it is typed, what is
 * refused, and how it is kept.
 */

#pragma once

#include "app-edit.h"

G_BEGIN_DECLS

typedef enum {
  TM_PRESS_LENGTH,
  TM_PRESS_HUB_OUTSIDE,
  TM_PRESS_SHAFT_INSIDE,
  TM_PRESS_FRICTION_LEAST,
  TM_PRESS_FRICTION_MOST,
  TM_PRESS_HUB_ROUGHNESS,
  TM_PRESS_SHAFT_ROUGHNESS,
  TM_PRESS_GAP,
  TM_N_PRESS_FIGURES
} TmPressFigure;

/* "Length of contact", to be read out; translated. */
const char *tm_press_figure_title (TmPressFigure which);

TmQuantity *tm_press_quantity (TmPress *press, TmPressFigure which);

/* What a number without a unit is in. */
TmUnit tm_press_unit (const TmJob *job, const TmFeature *feature, TmPressFigure which);

/* Reads @text; empty is absent.  FALSE with one line in @problem, which names the figure and the mend. */
gboolean tm_press_figure_read (const TmJob *job, const TmFeature *feature, TmPressFigure which,
                               const char *text, TmQuantity *out, char **problem);

/* As in app-edit.h: kept in the book, or the job is as before with one line in @error; figures that
 * contradict each other are refused.  Texts of @press are
 * interned in the job. */
gboolean tm_edit_put_press (TmDocument *document, TmFeature *feature, const TmPress *press, GError **error);

G_END_DECLS
