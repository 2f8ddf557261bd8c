/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-form-read: what a form's rows say, as quantities and names, and how a wrong one is refused.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

/* Reads @row into @out: a number without a unit is in @unit, an angle may say degrees of its own;
 * empty is absent.  FALSE with one line in @problem, and the row marked, for what is no number or is
 * below zero. */
gboolean tm_form_read_quantity (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem);

/* The same, where a value below zero is right: a known error, an offset. */
gboolean tm_form_read_signed (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem);

/* Reads a date, YYYY-MM-DD, or nothing. */
gboolean tm_form_read_date (AdwEntryRow *row, TmJob *job, const char **out, char **problem);

/* Reads @row into @out, interned in @job; FALSE likewise when it is empty. */
gboolean tm_form_read_name (AdwEntryRow *row, TmJob *job, const char **out, char **problem);

/* What @row says, interned in @job; it may say nothing. */
const char *tm_form_read_text (AdwEntryRow *row, TmJob *job);

/* Puts the text into @row, and takes away a mark of being wrong. */
void tm_form_fill_quantity (AdwEntryRow *row, const TmQuantity *quantity, TmUnit unit);
void tm_form_fill_text (AdwEntryRow *row, const char *text);

G_END_DECLS
