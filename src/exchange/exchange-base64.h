/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-base64: the bytes of a file as text, read strictly; private to this folder.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* NULL: empty, or no base64 as it is usually written (RFC 4648 §4, padded, without line ends). */
GBytes *tm_base64_read (const char *text) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
