/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-column: a file with one number to a line.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The numbers of a file, and each as its distance from the first.  Distances and mean are taken from
 * the decimals as written, so that the spread of 10000000.1, 10000000.3… keeps all its digits. */
typedef struct {
  GArray *values;  /* double */
  GArray *offsets; /* double; empty when a number has an exponent or too many digits for it */
  double mean;     /* of the decimals; NAN when there are no offsets */
} TmColumn;

void tm_column_clear (TmColumn *column);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmColumn, tm_column_clear)

/* Blank lines, lines that begin with # and a heading in line 1 are passed over; a decimal comma is
 * read as a point.  FALSE after an error line. */
gboolean tm_column_read (const char *path, TmColumn *out) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
