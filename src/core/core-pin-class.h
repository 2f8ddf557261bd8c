/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pin-class: the ranges of size of a pin class, each with its tolerance.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TM_N_PIN_RANGES 7

typedef struct {
  gint64 from, to; /* marked sizes, counts, both included */
  gint64 tolerance;
} TmPinRange;

/* The @index-th range of @pin_class, smallest first; FALSE when there is none. */
gboolean tm_pin_range_get (const char *pin_class, guint index, TmPinRange *out);

G_END_DECLS
