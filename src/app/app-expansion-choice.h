/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-expansion-choice: a row in which a material is chosen for how much it grows with temperature.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  AdwComboRow *row;
  GArray *alphas; /* double, 1e-6 / °C, one for each choice */
} TmExpansionChoice;

void tm_expansion_choice_build (TmExpansionChoice *choice, AdwPreferencesGroup *group, const char *title);
/* Lists what is known: the job's own part first where @part is TRUE, the shop's materials, the tables'.  What
 * was chosen by name stays chosen. */
void tm_expansion_choice_fill (TmExpansionChoice *choice, const TmJob *job, gboolean part);
double tm_expansion_choice_get (const TmExpansionChoice *choice);
void tm_expansion_choice_clear (TmExpansionChoice *choice);

G_END_DECLS
