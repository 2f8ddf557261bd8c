/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-fit-state: what the view of fit and press shows of one place: the feature there, the mate chosen, the
 * fit by limits, as measured, and at other temperatures.  No widgets.
 */

#pragma once

#include "app-document.h"
#include "core-fit-check.h"
#include "core-press.h"

G_BEGIN_DECLS

typedef struct {
  TmPiece *piece; /* NULL: nowhere */
  TmFeature *feature;
  guint place;
  gboolean bore; /* the feature is the bore of the two */
  TmFitStatus side;
  TmMateSize *mate; /* chosen; NULL: none is measured */

  TmFitWant want;
  TmFitStatus limits_status;
  TmFitCheck limits;
  TmFitStatus measured_status; /* the ranges stand on NO_METHOD too */
  TmFitCheck measured;
  gboolean warm_asked; /* a temperature other than 20 °C was given */
  TmFitStatus warm_status;
  TmFitCheck warm;
} TmFitState;

/* The kinds that a mate can go with. */
gboolean tm_feature_takes_mate (const TmFeature *feature);

/* @serial: of the mate wanted; NULL, or one that is not there: the one meant for this piece and place, else
 * the first.  Temperatures in °C. */
void tm_fit_state_of (TmDocument *document, const char *serial, double part_temp, double mate_temp,
                      TmFitState *out);

/* Whether some mate is meant for the piece and place at hand. */
gboolean tm_fit_state_has_meant (TmDocument *document);

/* As measured where it was, with its uncertainty known or not; else by limits; NULL: neither. */
const TmFitCheck *tm_fit_state_best (const TmFitState *state);
gboolean tm_fit_state_is_measured (const TmFitState *state);

/* How the feature at hand fits @mate; the ranges stand on NO_METHOD too. */
TmFitStatus tm_fit_state_with (TmDocument *document, TmMateSize *mate, TmFitCheck *out);

/* What the press of @state is computed from. */
void tm_fit_state_press (TmDocument *document, const TmFitState *state, TmPressInput *out);

G_END_DECLS
