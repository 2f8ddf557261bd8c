/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-cell-text: what a cell of the workbook can hold of a text, and how much room that takes.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A copy of @text that a cell can hold: valid, with no character a sheet cannot store, at most
 * 32,767 characters; what is cut off is said at its end. */
char *tm_cell_text (const char *text) G_GNUC_WARN_UNUSED_RESULT;
/* Most texts: what a cell holds as it is. */
gboolean tm_cell_text_is_plain (const char *text);
/* Bytes of the longest start of @text that is at most @most UTF-16 units long. */
gsize tm_cell_text_cut (const char *text, guint most);

/* Letters of its longest line; a wide one counts twice. */
double tm_cell_text_width (const char *text);
/* Lines that it takes when it is wrapped at @fitting letters between words. */
guint tm_cell_text_lines (const char *text, double fitting);

G_END_DECLS
