/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-entry-text: the text of a reading taken apart: sign, number or fraction, unit.
 */

#pragma once

#include "core-entry.h"

G_BEGIN_DECLS

#define TM_ENTRY_TEXT_MAX 60

typedef struct {
  TmEntryStatus status;
  char plain[TM_ENTRY_TEXT_MAX + 4]; /* the text in ASCII, lower case, stripped */
  char sign;                         /* '+', '-' or 0 */
  gboolean is_fraction;
  char number[TM_ENTRY_TEXT_MAX + 4]; /* digits with at most one mark; the whole part of a fraction, or "" */
  char numerator[TM_ENTRY_TEXT_MAX + 4];
  char denominator[TM_ENTRY_TEXT_MAX + 4];
  char unit[TM_ENTRY_TEXT_MAX + 4]; /* "" when none was written */
} TmEntryText;

/* Takes any bytes apart.  Spaces, tabs, carriage returns and line feeds around the text are
 * dropped.  On a refusal `plain` still holds the text when it is short enough and wholly known. */
void tm_entry_text_read (const char *text, TmEntryText *out);

G_END_DECLS
