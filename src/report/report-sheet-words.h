/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-words: the words of the workbook in its languages: a label of two is "Label / Beschriftung", a
 * sentence stands twice.  Words that a formula looks for are those of the first language alone.
 */

#pragma once

#include "report-sheet.h"

G_BEGIN_DECLS

/* @text is marked for translation (@context NULL: with N_ ()).  Owned by the workbook. */
const char *tm_sheet_label (TmWorkbook *workbook, const char *context, const char *text);

/* Makes a text in the language in use; free it.  NULL: nothing to say. */
typedef char *(*TmSheetSentence) (gconstpointer data);

/* The sentence as a paragraph across the sheet's @n columns, once in each language. */
void tm_sheet_say (TmSheet *sheet, guint n, TmSheetSentence sentence, gconstpointer data);
/* A sentence that is one text, marked for translation. */
void tm_sheet_say_text (TmSheet *sheet, guint n, const char *text);
/* A heading between tables, with a row free above it. */
void tm_sheet_section (TmSheet *sheet, const char *title);
/* The heads of a table in a sheet that has several; marked for translation. */
void tm_sheet_heads (TmSheet *sheet, const char *const *names, guint n);

G_END_DECLS
