/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-sheet-words.h"

#include <glib/gi18n-lib.h>

static const char *
translate (const char *context, const char *text)
{
  return *text != '\0' ? tm_words_text (context, text) : "";
}

const char *
tm_sheet_label (TmWorkbook *workbook, const char *context, const char *text)
{
  const char *first = translate (context, text), *second;
  const TmWords *before;
  g_autofree char *both = NULL;

  if (!workbook->has_second)
    return first;
  before = tm_words_use (&workbook->second);
  second = translate (context, text);
  tm_words_use (before);
  if (*second == '\0' || g_str_equal (first, second))
    return first;
  both = g_strconcat (first, " / ", second, NULL);
  return g_string_chunk_insert_const (workbook->texts, both);
}

void
tm_sheet_say (TmSheet *sheet, guint n, TmSheetSentence sentence, gconstpointer data)
{
  g_autofree char *first = sentence (data);
  g_autofree char *second = NULL;

  if (first == NULL || *first == '\0')
    return;
  tm_sheet_paragraph (sheet, n, first);
  if (sheet->workbook->has_second)
    {
      const TmWords *before = tm_words_use (&sheet->workbook->second);

      second = sentence (data);
      tm_words_use (before);
    }
  if (second != NULL && g_strcmp0 (first, second) != 0)
    tm_sheet_paragraph (sheet, n, second);
}

static char *
say_text (gconstpointer text)
{
  return g_strdup (translate (NULL, text));
}

void
tm_sheet_say_text (TmSheet *sheet, guint n, const char *text)
{
  tm_sheet_say (sheet, n, say_text, text);
}

void
tm_sheet_section (TmSheet *sheet, const char *title)
{
  tm_sheet_down (sheet);
  tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, title), TM_STYLE_SECTION);
  tm_sheet_down (sheet);
}

void
tm_sheet_heads (TmSheet *sheet, const char *const *names, guint n)
{
  for (guint i = 0; i < n; i++)
    tm_sheet_text (sheet, i, tm_sheet_label (sheet->workbook, NULL, names[i]), TM_STYLE_HEAD);
  tm_sheet_down (sheet);
}
