/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-qif-decimal: decimals of any file, exactly, until they are rounded once to what a feature holds;
 * private to this folder.
 */

#pragma once

#include "core-quantity.h"

G_BEGIN_DECLS

/* digits / 10^places; at most 12 digits before the point and 24 behind it, so that a sum never wraps. */
typedef struct {
  TmWide digits;
  guint places; /* as written */
} TmDecimal;

#define TM_DECIMAL_WHOLE  12
#define TM_DECIMAL_PLACES 24

/* Reads xs:decimal (XML Schema part 2, 3.2.3): a sign, digits, a point; blanks around.  FALSE for anything
 * else, and for more digits than above. */
gboolean tm_decimal_read (const char *text, TmDecimal *out);

/* Exactly; FALSE where the digits do not suffice. */
gboolean tm_decimal_add (const TmDecimal *a, const TmDecimal *b, TmDecimal *out);
gboolean tm_decimal_multiply (const TmDecimal *a, const TmDecimal *b, TmDecimal *out);

/* The sign of a - b. */
int tm_decimal_compare (const TmDecimal *a, const TmDecimal *b);

/* As text without zeros at the end, rounded half to even where it has more than @most places, and with zeros
 * up to @least, unless those are more than @most. */
char *tm_decimal_format (const TmDecimal *decimal, guint least, guint most) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
