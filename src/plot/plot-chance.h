/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-chance: a probability as people read it.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* "97 %"; with a tenth below 10 % and above 90 %, where it matters; "under 0.1 %" and "over 99.9 %" beyond
 * what can be promised.  NULL when @chance is no number.  Translated. */
char *tm_chance_text (double chance) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
