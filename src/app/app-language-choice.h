/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-language-choice: a row of a form from which a language of the report is chosen.
 */

#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/* Offers @none, then the languages there are; one that the job names (@chosen) and that is not there is kept.
 * Their codes in the order of the row, the first of them "": free them with g_strfreev(). */
GStrv tm_language_choice_fill (AdwComboRow *row, const char *none,
                               const char *chosen) G_GNUC_WARN_UNUSED_RESULT;

/* The code of what is chosen: one of @codes. */
const char *tm_language_choice_get (GStrv codes, AdwComboRow *row);

G_END_DECLS
