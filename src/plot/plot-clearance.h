/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-clearance: a range of clearance or interference in words.
 */

#pragma once

#include "core-quantity.h"

G_BEGIN_DECLS

/* "press 0.001 to 0.035 mm", "clearance 0.003 to 0.011 mm", or from one to the other; one end alone as what
 * it bounds; "" for neither.  Counts, bore - shaft: negative is press.  Translated. */
char *tm_clearance_words (gboolean has_least, gint64 least, gboolean has_most, gint64 most, TmUnit unit,
                          guint decimals) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
