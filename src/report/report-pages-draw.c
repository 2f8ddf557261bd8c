/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages-draw: draws one page: head, foot and what was put on it.
 */

#include <glib/gi18n-lib.h>

#include "plot-mark.h"
#include "report-pages-private.h"

#define HAIRLINE  0.4
#define THIN      0.7
#define STRONG    1.6
#define MARK_SIZE 2.6 /* radius */

#define MOST_TAGGED 30000u /* cells of one table */

typedef struct {
  TmPages *pages;
  cairo_t *cr;
  TmPen pen;
  gboolean tags;
} Sheet;

static void
use_ink (const Sheet *sheet, gboolean dim)
{
  tm_pen_colour (&sheet->pen, dim ? &sheet->pen.theme->dim : &sheet->pen.theme->text, 1.0);
}

/* @rgb is 0xRRGGBB. */
static void
use_colour (const TmPen *pen, guint32 rgb)
{
  const TmColour colour
      = { (rgb >> 16 & 0xff) / 255.0, (rgb >> 8 & 0xff) / 255.0, (rgb & 0xff) / 255.0, 1.0 };

  tm_pen_colour (pen, &colour, 1.0);
}

static void
use_accent (const TmPages *pages, const TmPen *pen, gboolean when)
{
  if (when)
    use_colour (pen, pages->document->shop.accent);
  else
    tm_pen_colour (pen, &pen->theme->text, 1.0);
}

void
tm_pages_use_head_ink (const TmPages *pages, const TmPen *pen)
{
  use_accent (pages, pen, pages->document->shop.accent_reads);
}

void
tm_pages_use_line_ink (const TmPages *pages, const TmPen *pen)
{
  use_accent (pages, pen, pages->document->shop.has_accent);
}

static void
draw_rule (const Sheet *sheet, double from, double to, double y, double width)
{
  cairo_set_line_width (sheet->cr, width);
  cairo_move_to (sheet->cr, from, y);
  cairo_line_to (sheet->cr, to, y);
  if (width < THIN)
    tm_pen_colour (&sheet->pen, &sheet->pen.theme->text, 0.3);
  else
    tm_pages_use_line_ink (sheet->pages, &sheet->pen);
  cairo_stroke (sheet->cr);
}

static void
begin_tag (const Sheet *sheet, const char *tag, const char *attributes)
{
  if (sheet->tags)
    cairo_tag_begin (sheet->cr, tag, attributes);
}

static void
end_tag (const Sheet *sheet, const char *tag)
{
  if (sheet->tags)
    cairo_tag_end (sheet->cr, tag);
}

/* A name as a tag's attribute (cairo_tag_begin(), string values). */
static char *
quote_name (const char *name)
{
  g_autoptr (GString) quoted = g_string_new (name);

  g_string_replace (quoted, "\\", "\\\\", 0);
  g_string_replace (quoted, "'", "\\'", 0);
  return g_string_free (g_steal_pointer (&quoted), FALSE);
}

/* Links lead to the top of the item. */
static void
mark_place (const Sheet *sheet, const TmItem *item, const char *name)
{
  g_autofree char *quoted = NULL;
  g_autofree char *attributes = NULL;
  char x[G_ASCII_DTOSTR_BUF_SIZE], y[G_ASCII_DTOSTR_BUF_SIZE];

  if (!sheet->tags || name == NULL || item->from > 0)
    return;
  quoted = quote_name (name);
  g_ascii_formatd (x, sizeof x, "%.2f", item->x);
  g_ascii_formatd (y, sizeof y, "%.2f", item->y);
  attributes = g_strdup_printf ("name='%s' x=%s y=%s", quoted, x, y);
  cairo_tag_begin (sheet->cr, CAIRO_TAG_DEST, attributes);
  cairo_tag_end (sheet->cr, CAIRO_TAG_DEST);
}

/* -------- Rows -------- */

static void
draw_mark (const Sheet *sheet, const TmReportCell *cell, double x, double y)
{
  if (cell->verdict == TM_VERDICT_NOT_MEASURED)
    return;
  tm_mark_draw (&sheet->pen, x, y, MARK_SIZE, cell->verdict, cell->point);
}

static void
draw_text (const Sheet *sheet, const TmSlot *slot, const char *text, TmTypeStyle style, double y, guint from,
           guint n)
{
  tm_type_draw (sheet->pages->type, sheet->cr, style, text, sheet->pages->left + slot->x, y, slot->width,
                slot->setting, from, n);
}

static gboolean
is_on_ground (const Sheet *sheet, const TmItem *item)
{
  return item->kind == TM_ITEM_HEAD && sheet->pages->document->shop.has_ground;
}

static void
use_item_ink (const Sheet *sheet, const TmItem *item, gboolean dim)
{
  if (is_on_ground (sheet, item))
    use_colour (&sheet->pen, sheet->pages->document->shop.text_on_ground);
  else
    use_ink (sheet, dim);
}

/* A row as it is drawn: all of it, or some of its lines. */
typedef struct {
  const TmItem *item;
  TmRowExtent extent;
  double y; /* under the room above */
} Row;

/* The labels' lines come before the texts'. */
static void
draw_slot (const Sheet *sheet, const Row *row, const TmSlot *slot)
{
  const TmItem *item = row->item;
  const guint all = row->extent.labels, from = item->from;
  const guint to = item->n > 0 ? from + item->n : G_MAXUINT;
  const guint labels = from < all ? MIN (to, all) - from : 0;
  double y = row->y;

  if (labels > 0)
    {
      use_item_ink (sheet, item, TRUE);
      draw_text (sheet, slot, slot->label, TM_TYPE_LABEL, y, from, labels);
      y += item->n > 0 ? labels * row->extent.highest : row->extent.labels_height;
    }
  if (item->block->kind == TM_BLOCK_SIGNATURES)
    y += TM_INK_ROOM - 2.0;
  use_item_ink (sheet, item, item->block->kind == TM_BLOCK_PARAGRAPH && item->block->dim);
  if (to > all)
    draw_text (sheet, slot, slot->text, slot->style, y, MAX (from, all) - all,
               item->n > 0 ? to - MAX (from, all) : 0);
}

static void
draw_linked (const Sheet *sheet, const Row *row, const TmSlot *slot)
{
  g_autofree char *quoted = NULL;
  g_autofree char *attributes = NULL;

  if (!sheet->tags || slot->cell == NULL || slot->cell->link == NULL)
    {
      draw_slot (sheet, row, slot);
      return;
    }
  quoted = quote_name (slot->cell->link);
  attributes = g_strdup_printf ("dest='%s'", quoted);
  cairo_tag_begin (sheet->cr, CAIRO_TAG_LINK, attributes);
  draw_slot (sheet, row, slot);
  cairo_tag_end (sheet->cr, CAIRO_TAG_LINK);
}

static double
get_right (const Sheet *sheet, const TmItem *item)
{
  if (item->block->kind == TM_BLOCK_TABLE)
    return sheet->pages->left + tm_pages_columns (sheet->pages, item->block)->total;
  return sheet->pages->right;
}

/* In the shop's colour, under the text. */
static void
draw_ground (const Sheet *sheet, const TmItem *item)
{
  const double left = sheet->pages->left;

  if (!is_on_ground (sheet, item))
    return;
  use_colour (&sheet->pen, sheet->pages->document->shop.ground);
  cairo_rectangle (sheet->cr, left, item->y, get_right (sheet, item) - left, item->height);
  cairo_fill (sheet->cr);
}

static void
draw_rules (const Sheet *sheet, const TmItem *item, const TmSlot *slots, guint n)
{
  const double left = sheet->pages->left, end = item->y + item->height;
  const double right = get_right (sheet, item);

  if (item->kind == TM_ITEM_HEAD)
    draw_rule (sheet, left, right, item->y, THIN);
  if (item->kind == TM_ITEM_HEAD)
    draw_rule (sheet, left, right, end, THIN);
  else if (item->block->kind == TM_BLOCK_TABLE || item->block->kind == TM_BLOCK_FACTS)
    draw_rule (sheet, left, right, end, HAIRLINE);
  else if (item->block->kind == TM_BLOCK_SIGNATURES)
    for (guint i = 0; i < n; i++)
      draw_rule (sheet, left + slots[i].x, left + slots[i].x + slots[i].width, end - 3.0, HAIRLINE);
}

/* A table of many thousand cells would be mostly structure: its rows are then paragraphs. */
static gboolean
has_cell_tags (const TmReportBlock *block)
{
  return block->kind == TM_BLOCK_TABLE && block->cells->len <= MOST_TAGGED;
}

static const char *
get_row_tag (const TmItem *item)
{
  switch (item->block->kind)
    {
    case TM_BLOCK_TABLE:
      return has_cell_tags (item->block) ? "TR" : "P";
    case TM_BLOCK_HEADING:
      return "H2";
    case TM_BLOCK_PARAGRAPH:
    case TM_BLOCK_FACTS:
    case TM_BLOCK_SIGNATURES:
    case TM_BLOCK_PICTURE:
    default:
      return "P";
    }
}

static void
draw_row (const Sheet *sheet, const TmItem *item)
{
  TmSlot slots[TM_DOCUMENT_COLUMNS];
  const gboolean head = item->kind == TM_ITEM_HEAD;
  const guint n = tm_pages_slots (sheet->pages, item->block, item->row, head, slots);
  const TmRowExtent extent = tm_pages_row_extent (sheet->pages, item->block, item->row, head);
  const Row row = { item, extent, item->y + extent.above };
  const gboolean table = has_cell_tags (item->block);

  draw_ground (sheet, item);
  begin_tag (sheet, get_row_tag (item), NULL);
  for (guint i = 0; i < n; i++)
    {
      if (*slots[i].text == '\0' && *slots[i].label == '\0')
        continue;
      if (slots[i].cell != NULL && slots[i].cell->role == TM_CELL_VERDICT && item->from == 0)
        draw_mark (sheet, slots[i].cell, sheet->pages->left + slots[i].x - TM_MARK_ROOM + MARK_SIZE + 1.0,
                   row.y + tm_type_line (sheet->pages->type, TM_TYPE_CELL) / 2);
      if (table)
        begin_tag (sheet, head ? "TH" : "TD", NULL);
      draw_linked (sheet, &row, &slots[i]);
      if (table)
        end_tag (sheet, head ? "TH" : "TD");
    }
  end_tag (sheet, get_row_tag (item));
  draw_rules (sheet, item, slots, n);
}

/* -------- Other items -------- */

static void
draw_picture (const Sheet *sheet, const TmItem *item)
{
  TmType *type = sheet->pages->type;
  const TmReportBlock *block = item->block;
  const TmTypeExtent caption = tm_type_measure (type, TM_TYPE_STRONG, block->text, item->width);
  const double above = caption.height > 0 ? caption.height + TM_CAPTION_GAP : 0.0;
  const gboolean stretches = block->picture.flattest > 0;
  double height = MAX (1.0, item->height - above);
  const double width = stretches ? item->width : MIN (item->width, height / block->picture.aspect);

  begin_tag (sheet, "Figure", NULL);
  use_ink (sheet, FALSE);
  tm_type_draw (type, sheet->cr, TM_TYPE_STRONG, block->text, item->x, item->y, item->width, TM_SET_START, 0,
                0);
  if (!stretches)
    height = MIN (height, width * block->picture.aspect);
  cairo_save (sheet->cr);
  cairo_translate (sheet->cr, item->x, item->y + above);
  cairo_new_path (sheet->cr);
  block->picture.draw (sheet->cr, width, height, block->picture.data);
  cairo_restore (sheet->cr);
  end_tag (sheet, "Figure");
}

static void
draw_line (const Sheet *sheet, const TmItem *item, const char *tag, TmTypeStyle style, const char *text)
{
  begin_tag (sheet, tag, NULL);
  if (style == TM_TYPE_SUBTITLE)
    use_ink (sheet, FALSE);
  else
    tm_pages_use_head_ink (sheet->pages, &sheet->pen);
  tm_type_draw (sheet->pages->type, sheet->cr, style, text, item->x, item->y,
                sheet->pages->right - sheet->pages->left, TM_SET_START, 0, 0);
  end_tag (sheet, tag);
}

static void
draw_item (const Sheet *sheet, const TmItem *item)
{
  switch (item->kind)
    {
    case TM_ITEM_LETTERHEAD:
      tm_pages_draw_letterhead (sheet->pages, &sheet->pen, item, sheet->tags);
      draw_rule (sheet, sheet->pages->left, sheet->pages->right, item->y + item->height, STRONG);
      return;
    case TM_ITEM_TITLE:
      draw_line (sheet, item, "H1", TM_TYPE_TITLE, sheet->pages->document->title);
      return;
    case TM_ITEM_SUBTITLE:
      draw_line (sheet, item, "P", TM_TYPE_SUBTITLE, sheet->pages->document->subtitle);
      return;
    case TM_ITEM_SECTION:
      mark_place (sheet, item, item->section->name);
      draw_line (sheet, item, "H1", TM_TYPE_SECTION, item->section->title);
      return;
    case TM_ITEM_HEAD:
    case TM_ITEM_ROW:
    default:
      if (item->kind == TM_ITEM_ROW)
        mark_place (sheet, item, item->block->name);
      if (item->block->kind == TM_BLOCK_PICTURE)
        draw_picture (sheet, item);
      else
        draw_row (sheet, item);
    }
}

/* -------- The page -------- */

static void
draw_head (const Sheet *sheet, guint page)
{
  TmPages *pages = sheet->pages;
  const TmReportDocument *document = pages->document;
  const double half = (pages->right - pages->left - TM_PICTURE_GAP) / 2;
  const double y = TM_PAGE_MARGIN - 12.0;

  const double logo = tm_pages_small_logo_room (pages);

  if (logo > 0 && page > 0)
    tm_pages_draw_small_logo (pages, sheet->cr, pages->left, y);
  use_ink (sheet, TRUE);
  tm_type_draw (pages->type, sheet->cr, TM_TYPE_MARGIN, document->head_left,
                pages->left + (page > 0 ? logo : 0.0), y, half - logo, TM_SET_START, 0, 0);
  tm_type_draw (pages->type, sheet->cr, TM_TYPE_MARGIN, document->head_right, pages->right - half, y, half,
                TM_SET_END, 0, 0);
  draw_rule (sheet, pages->left, pages->right, pages->top - 12.0, HAIRLINE);
}

static void
draw_foot (const Sheet *sheet, guint page)
{
  TmPages *pages = sheet->pages;
  const double y = pages->height - TM_PAGE_MARGIN - tm_type_line (pages->type, TM_TYPE_MARGIN) + 4.0;
  const double half = (pages->right - pages->left) / 2;
  g_autoptr (GString) number = g_string_new (NULL);

  for (guint i = 0; i < pages->n_words; i++)
    {
      const TmWords *before = tm_words_use (&pages->words[i]);

      g_string_append (number, i > 0 ? " / " : "");
      g_string_append_printf (number, _ ("page %u of %u"), page + 1, pages->pages->len);
      tm_words_use (before);
    }
  draw_rule (sheet, pages->left, pages->right, y - 4.0, HAIRLINE);
  use_ink (sheet, TRUE);
  tm_type_draw (pages->type, sheet->cr, TM_TYPE_MARGIN, pages->document->foot, pages->left, y, half,
                TM_SET_START, 0, 1);
  tm_type_draw_once (pages->type, sheet->cr, TM_TYPE_MARGIN, number->str, pages->right - half, y, half,
                     TM_SET_END);
}

static gboolean
is_table (const TmItem *item)
{
  return item->block != NULL && has_cell_tags (item->block);
}

void
tm_pages_draw_page (TmPages *pages, guint page, cairo_t *cr, gboolean tags)
{
  const TmPage *at = &g_array_index (pages->pages, TmPage, page);
  Sheet sheet = { .pages = pages, .cr = cr, .tags = tags };
  const TmWords *before = tm_words_use (&pages->words[0]);

  tm_pages_turn (pages, at->turned);
  cairo_save (cr);
  tm_pen_init (&sheet.pen, cr, tm_theme_paper ());
  draw_head (&sheet, page);
  for (guint i = 0; i < at->n; i++)
    {
      const TmItem *item = &g_array_index (pages->items, TmItem, at->first + i);

      if (is_table (item) && (i == 0 || item[-1].block != item->block))
        begin_tag (&sheet, "Table", NULL);
      draw_item (&sheet, item);
      if (is_table (item) && (i + 1 == at->n || item[1].block != item->block))
        end_tag (&sheet, "Table");
    }
  draw_foot (&sheet, page);
  tm_pen_clear (&sheet.pen);
  cairo_restore (cr);
  tm_pages_turn (pages, FALSE);
  tm_words_use (before);
}
