/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-csv: separated values, as rows of cells (RFC 4180, with comma, semicolon or tab), and
 * cells back into such a text.
 */

#pragma once

#include "exchange-error.h"

G_BEGIN_DECLS

typedef struct {
  guint line;       /* where the row starts in the source, from 1 */
  GPtrArray *cells; /* char *, without spaces around */
} TmCsvRow;

/* The rows of @text that are not blank.  UTF-8 with or without a byte order mark, or UTF-16 with
 * one.  The separator is the one that cuts the first rows alike: tab, else semicolon, else comma.
 * A quotation mark inside an unquoted cell (.750") is taken as it stands. */
GPtrArray *tm_csv_read (const char *text, gsize length, const char *place,
                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Begins a text that a spreadsheet is to read as UTF-8: without a byte order mark the usual ones take Ø and ±
 * for something else. */
void tm_csv_begin (GString *out);

/* Appends one cell, quoted where it must be; a comma comes before all but the first of a line.
 * tm_csv_put_text() also keeps a spreadsheet from taking the text for a formula: what begins like one gets an
 * apostrophe before it, a plain number such as -0.012 does not. */
void tm_csv_put_number (GString *out, const char *number);
void tm_csv_put_text (GString *out, const char *text);
void tm_csv_end_line (GString *out);

G_END_DECLS
