/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-share: a chance in words.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* "98.1 %" with @decimals 0 .. 9; never rounded to certainty: "under 0.1 %", "over 99.9 %". */
char *tm_format_share (double share, guint decimals) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
