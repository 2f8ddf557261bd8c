/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-pin-text: the text of a pin trial taken apart: size, class, sign, and whether it went.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  char size[64];         /* as a reading is typed; "" when there is none */
  const char *pin_class; /* "XXX" … "ZZ", or NULL: not written */
  gboolean has_sign;
  TmPinSign sign;
  gboolean has_outcome;
  gboolean went;
} TmPinText;

/* From the end: how it went ("+", "-", "g", "n", "go", "no go", "went"…), then the sign ("plus",
 * "minus"; "+" or "-" after a class), then the class, and the rest is the size.  "12.006+",
 * "12.006 Z minus +", "12.018-Z- nogo".  Any byte string is allowed. */
void tm_pin_text_read (const char *text, TmPinText *out);

/* The finest is 0; a class that is none comes last. */
guint tm_pin_class_rank (const char *pin_class);

G_END_DECLS
