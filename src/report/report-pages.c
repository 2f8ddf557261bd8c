/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-pages.h"

#include <string.h>

#include "report-language.h"
#include "report-pages-private.h"

/* ISO 216 A4; ANSI/ASME Y14.1 A (Letter): points of 1/72 in. */
#define A4_WIDTH      595.276
#define A4_HEIGHT     841.890
#define LETTER_WIDTH  612.0
#define LETTER_HEIGHT 792.0

static void
set_paper (TmPages *pages)
{
  const gboolean letter = pages->form.paper == TM_PAPER_LETTER;
  const double width = letter ? LETTER_WIDTH : A4_WIDTH;
  const double height = letter ? LETTER_HEIGHT : A4_HEIGHT;

  pages->width = pages->paper_width = pages->form.landscape ? height : width;
  pages->height = pages->paper_height = pages->form.landscape ? width : height;
  pages->left = TM_PAGE_MARGIN;
  pages->right = pages->width - TM_PAGE_MARGIN;
}

/* The head takes as many lines as its longer side. */
static void
set_inside (TmPages *pages)
{
  const TmReportDocument *document = pages->document;
  const double half = (pages->right - pages->left - TM_PICTURE_GAP) / 2;
  const TmTypeExtent left = tm_type_measure (pages->type, TM_TYPE_MARGIN, document->head_left,
                                             half - tm_pages_small_logo_room (pages));
  const TmTypeExtent right = tm_type_measure (pages->type, TM_TYPE_MARGIN, document->head_right, half);

  pages->top = TM_PAGE_MARGIN - 12.0 + MAX (left.height, right.height) + 16.0;
  pages->bottom = pages->height - TM_PAGE_MARGIN - TM_PAGE_FOOT;
}

void
tm_pages_turn (TmPages *pages, gboolean turned)
{
  pages->width = turned ? pages->paper_height : pages->paper_width;
  pages->height = turned ? pages->paper_width : pages->paper_height;
  pages->right = pages->width - TM_PAGE_MARGIN;
  pages->bottom = pages->height - TM_PAGE_MARGIN - TM_PAGE_FOOT;
}

TmPages *
tm_pages_new (const TmReportDocument *document, const TmReportForm *form)
{
  TmPages *pages;

  g_return_val_if_fail (document != NULL && form != NULL, NULL);
  pages = g_new0 (TmPages, 1);
  pages->document = document;
  pages->form = *form; /* its texts are not needed again */
  tm_language_words (form->language, form->decimal, &pages->words[pages->n_words++]);
  if (form->second_language != NULL && *form->second_language != '\0')
    tm_language_words (form->second_language, form->decimal, &pages->words[pages->n_words++]);
  pages->type = tm_type_new ();
  pages->items = g_array_new (FALSE, FALSE, sizeof (TmItem));
  pages->pages = g_array_new (FALSE, FALSE, sizeof (TmPage));
  pages->columns = g_hash_table_new_full (NULL, NULL, NULL, g_free);
  set_paper (pages);
  set_inside (pages);
  tm_pages_flow (pages);
  return pages;
}

void
tm_pages_free (TmPages *pages)
{
  if (pages == NULL)
    return;
  tm_type_free (pages->type);
  g_array_unref (pages->items);
  g_array_unref (pages->pages);
  g_hash_table_unref (pages->columns);
  g_free (pages);
}

guint
tm_pages_count (const TmPages *pages)
{
  g_return_val_if_fail (pages != NULL, 0);
  return pages->pages->len;
}

void
tm_pages_size (const TmPages *pages, double *width, double *height)
{
  g_return_if_fail (pages != NULL);
  *width = pages->paper_width;
  *height = pages->paper_height;
}

void
tm_pages_draw (TmPages *pages, guint page, cairo_t *cr)
{
  g_return_if_fail (pages != NULL && page < pages->pages->len && cr != NULL);
  cairo_save (cr);
  if (g_array_index (pages->pages, TmPage, page).turned)
    {
      cairo_translate (cr, 0.0, pages->paper_height);
      cairo_rotate (cr, -G_PI / 2.0);
    }
  tm_pages_draw_page (pages, page, cr, FALSE);
  cairo_restore (cr);
}

void
tm_pages_upright_size (const TmPages *pages, guint page, double *width, double *height)
{
  gboolean turned;

  g_return_if_fail (pages != NULL && page < pages->pages->len);
  turned = g_array_index (pages->pages, TmPage, page).turned;
  *width = turned ? pages->paper_height : pages->paper_width;
  *height = turned ? pages->paper_width : pages->paper_height;
}

void
tm_pages_draw_upright (TmPages *pages, guint page, cairo_t *cr)
{
  g_return_if_fail (pages != NULL && page < pages->pages->len && cr != NULL);
  tm_pages_draw_page (pages, page, cr, FALSE);
}

static gboolean
is_named (const TmItem *item, const char *name)
{
  const char *own = item->kind == TM_ITEM_SECTION ? item->section->name
                    : item->kind == TM_ITEM_ROW   ? item->block->name
                                                  : NULL;

  return own != NULL && g_str_equal (own, name);
}

gint
tm_pages_find (const TmPages *pages, const char *name)
{
  g_return_val_if_fail (pages != NULL && name != NULL, -1);
  for (guint i = 0; i < pages->pages->len; i++)
    {
      const TmPage *page = &g_array_index (pages->pages, TmPage, i);

      for (guint k = 0; k < page->n; k++)
        if (is_named (&g_array_index (pages->items, TmItem, page->first + k), name))
          return (gint)i;
    }
  return -1;
}

const char *
tm_pages_section (const TmPages *pages, guint page)
{
  const TmReportSection *section;

  g_return_val_if_fail (pages != NULL && page < pages->pages->len, NULL);
  section = g_array_index (pages->pages, TmPage, page).section;
  return section != NULL ? section->title : "";
}
