/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages-letterhead: who made the report, at the head of its first page: the logo or, without one, the
 * shop's name at the left, name and address at the right; and the small logo in the head of the others.
 */

#include "report-pages-private.h"

#define LOGO_HEIGHT   46.0 /* at most; points */
#define LOGO_SHARE    0.45 /* of the page's width, at most */
#define COLUMN_GAP    18.0
#define RULE_ROOM     8.0 /* above the rule */
#define AFTER_NAME    2.0
#define SMALL_HEIGHT  11.0
#define SMALL_WIDTH   60.0
#define SMALL_GAP     8.0
#define ADDRESS_SHARE 0.5 /* of the page's width, at most */

static gboolean
has_text (const TmReportShop *shop)
{
  return *shop->name != '\0' || *shop->address != '\0';
}

/* The logo as large as fits into @width and @height. */
static double
scale_logo (const TmReportShop *shop, double width, double height)
{
  return MIN (width / tm_drawing_page_width (shop->logo), height / tm_drawing_page_height (shop->logo));
}

/* Where everything stands, from the item's upper left corner. */
typedef struct {
  double scale, logo_height;
  double name_x, name_width, name_height;
  double address_x, address_width, address_height;
  double height;
} Letterhead;

static void
place_logo (TmPages *pages, Letterhead *head)
{
  const double width = pages->right - pages->left;
  const TmReportShop *shop = &pages->document->shop;

  head->scale = scale_logo (shop, width * LOGO_SHARE, LOGO_HEIGHT);
  head->logo_height = head->scale * tm_drawing_page_height (shop->logo);
}

/* The block of texts stands at the right margin, as wide as it needs. */
static void
place_right (TmPages *pages, Letterhead *head, TmTypeStyle style)
{
  const TmReportShop *shop = &pages->document->shop;
  const double width = pages->right - pages->left;
  const double name = tm_type_width (pages->type, style, shop->name);
  const double address = tm_type_width (pages->type, TM_TYPE_NOTE, shop->address);
  const double room = MIN (width * ADDRESS_SHARE, MAX (name, address) + 1.0);

  head->name_width = head->address_width = room;
  head->name_x = head->address_x = width - room;
}

static void
measure (TmPages *pages, Letterhead *head, TmTypeStyle style)
{
  const TmReportShop *shop = &pages->document->shop;

  head->name_height = tm_type_measure (pages->type, style, shop->name, head->name_width).height;
  head->address_height
      = tm_type_measure (pages->type, TM_TYPE_NOTE, shop->address, head->address_width).height;
}

/* With a logo the name stands over the address; without one it takes the logo's place. */
static Letterhead
make_letterhead (TmPages *pages)
{
  const TmReportShop *shop = &pages->document->shop;
  Letterhead head = { 0 };

  if (shop->logo != NULL)
    {
      place_logo (pages, &head);
      place_right (pages, &head, TM_TYPE_HEADING);
      measure (pages, &head, TM_TYPE_HEADING);
      head.height = MAX (head.logo_height, head.name_height + AFTER_NAME + head.address_height);
    }
  else
    {
      place_right (pages, &head, TM_TYPE_SECTION);
      head.address_width
          = MIN (head.address_width, tm_type_width (pages->type, TM_TYPE_NOTE, shop->address) + 1.0);
      head.address_x = pages->right - pages->left - head.address_width;
      head.name_x = 0.0;
      head.name_width = *shop->address != '\0' ? head.address_x - COLUMN_GAP : pages->right - pages->left;
      /* No wider than the name, lest one that is read from the right stands beside the address. */
      head.name_width = MIN (head.name_width, tm_type_width (pages->type, TM_TYPE_SECTION, shop->name) + 1.0);
      measure (pages, &head, TM_TYPE_SECTION);
      head.height = MAX (head.name_height, head.address_height);
    }
  head.height += RULE_ROOM;
  return head;
}

double
tm_pages_letterhead_height (TmPages *pages)
{
  const TmReportShop *shop = &pages->document->shop;

  return shop->logo != NULL || has_text (shop) ? make_letterhead (pages).height : 0.0;
}

static void
draw_logo (const TmReportShop *shop, cairo_t *cr, double x, double y, double scale)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_scale (cr, scale, scale);
  tm_drawing_page_draw (shop->logo, cr);
  cairo_restore (cr);
}

void
tm_pages_draw_letterhead (TmPages *pages, const TmPen *pen, const TmItem *item, gboolean tags)
{
  const TmReportShop *shop = &pages->document->shop;
  const Letterhead head = make_letterhead (pages);
  const gboolean has_logo = shop->logo != NULL;
  cairo_t *cr = pen->cr;

  if (has_logo)
    {
      if (tags)
        cairo_tag_begin (cr, "Figure", NULL);
      draw_logo (shop, cr, item->x, item->y, head.scale);
      if (tags)
        cairo_tag_end (cr, "Figure");
    }
  if (tags)
    cairo_tag_begin (cr, "P", NULL);
  tm_pages_use_head_ink (pages, pen);
  tm_type_draw (pages->type, cr, has_logo ? TM_TYPE_HEADING : TM_TYPE_SECTION, shop->name,
                item->x + head.name_x, item->y, head.name_width, TM_SET_START, 0, 0);
  tm_pen_colour (pen, &pen->theme->text, 1.0);
  tm_type_draw (pages->type, cr, TM_TYPE_NOTE, shop->address, item->x + head.address_x,
                item->y + (has_logo ? head.name_height + AFTER_NAME : 0.0), head.address_width, TM_SET_START,
                0, 0);
  if (tags)
    cairo_tag_end (cr, "P");
}

double
tm_pages_small_logo_room (const TmPages *pages)
{
  const TmReportShop *shop = &pages->document->shop;

  if (shop->logo == NULL)
    return 0.0;
  return tm_drawing_page_width (shop->logo) * scale_logo (shop, SMALL_WIDTH, SMALL_HEIGHT) + SMALL_GAP;
}

void
tm_pages_draw_small_logo (const TmPages *pages, cairo_t *cr, double x, double y)
{
  const TmReportShop *shop = &pages->document->shop;
  const double scale = scale_logo (shop, SMALL_WIDTH, SMALL_HEIGHT);

  draw_logo (shop, cr, x, y + (SMALL_HEIGHT - scale * tm_drawing_page_height (shop->logo)) / 2, scale);
}
