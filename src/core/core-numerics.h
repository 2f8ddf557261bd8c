/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-numerics: what every program that computes has to say to the numerical library first.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Once, before anything is computed: a computation in which the GNU Scientific Library gives up is then NAN,
 * which is shown as not known, where by default the library ends the program with what was typed in it. */
void tm_numerics_init (void);

G_END_DECLS
