/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages-text: what stands on a page, as text.
 */

#include "report-pages-private.h"

static void
add_line (GString *out, const char *line)
{
  if (*line == '\0')
    return;
  if (out->len > 0)
    g_string_append_c (out, '\n');
  g_string_append (out, line);
}

/* "Part number: PH-204, Revision: C", or the cells of a table's row. */
static void
add_row (TmPages *pages, const TmItem *item, GString *out)
{
  TmSlot slots[TM_DOCUMENT_COLUMNS];
  const guint n = tm_pages_slots (pages, item->block, item->row, item->kind == TM_ITEM_HEAD, slots);
  g_autoptr (GString) line = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    {
      if (item->block->kind == TM_BLOCK_PARAGRAPH && i > 0)
        {
          add_line (out, line->str);
          g_string_truncate (line, 0);
        }
      if (*slots[i].text == '\0' && *slots[i].label == '\0')
        continue;
      g_string_append (line, line->len > 0 ? ", " : "");
      g_string_append (line, slots[i].label);
      /* A label alone is a line to write on. */
      if (*slots[i].label != '\0' && *slots[i].text != '\0')
        g_string_append (line, ": ");
      g_string_append (line, slots[i].text);
    }
  /* A cell of several lines is read as one. */
  g_strdelimit (line->str, "\n", ' ');
  add_line (out, line->str);
}

static void
add_picture (const TmReportBlock *block, GString *out)
{
  const TmReportPicture *picture = &block->picture;
  g_autofree char *words = picture->describe != NULL ? picture->describe (picture->data) : NULL;

  add_line (out, block->text != NULL ? block->text : "");
  add_line (out, words != NULL ? words : "");
}

static void
add_item (TmPages *pages, const TmItem *item, GString *out)
{
  switch (item->kind)
    {
    case TM_ITEM_LETTERHEAD:
      add_line (out, pages->document->shop.name);
      add_line (out, pages->document->shop.address);
      return;
    case TM_ITEM_TITLE:
      add_line (out, pages->document->title);
      return;
    case TM_ITEM_SUBTITLE:
      add_line (out, pages->document->subtitle);
      return;
    case TM_ITEM_SECTION:
      add_line (out, item->section->title);
      return;
    case TM_ITEM_HEAD:
    case TM_ITEM_ROW:
    default:
      if (item->block->kind == TM_BLOCK_PICTURE)
        add_picture (item->block, out);
      /* A row that goes on from the page before was read there. */
      else if (item->from == 0)
        add_row (pages, item, out);
    }
}

char *
tm_pages_text (TmPages *pages, guint page)
{
  const TmPage *at;
  const TmWords *before;
  GString *out;

  g_return_val_if_fail (pages != NULL && page < pages->pages->len, NULL);
  at = &g_array_index (pages->pages, TmPage, page);
  out = g_string_new (NULL);
  before = tm_words_use (&pages->words[0]);
  for (guint i = 0; i < at->n; i++)
    add_item (pages, &g_array_index (pages->items, TmItem, at->first + i), out);
  tm_words_use (before);
  return g_string_free (out, FALSE);
}
