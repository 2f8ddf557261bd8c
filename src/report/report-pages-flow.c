/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages-flow: puts a document's blocks on pages, from the top down.
 *
 * A heading stays with what follows it.  A table's head is repeated on each page, and two rows at least stand
 * under it.  A row is never broken
 * unless it is taller than a page, and then between its lines; running text is, with two lines at least on
 * either side.  Lines to sign on are not parted.  Pictures that can be flatter are where that saves a page.
 */

#include <math.h>

#include "report-pages-private.h"

#define LEAST_LINES 2
#define LEAST_ROWS  4 /* of a table, that two at its end are kept together */
/* Of a page: what is no higher is not parted. */
#define SHORT_WORDS 0.35
#define SHORT_TABLE 0.24
#define MOST_SHORT  24 /* rows that are measured for it */
/* Room above and below, points. */
#define AFTER_LETTERHEAD 14.0
#define AFTER_TITLE      4.0
#define AFTER_SUBTITLE   12.0
#define BEFORE_SECTION   16.0
#define AFTER_SECTION    7.0
#define BEFORE_HEADING   7.0
#define AFTER_HEADING    3.0
#define AFTER_PARAGRAPH  3.0
#define AFTER_CELLS      7.0
#define AFTER_PICTURES   8.0
#define FLAT_STEPS       8    /* from as high as is wished to as flat as may be */
#define LEAST_UNDER      0.25 /* of a page, for what starts one to stay under another section */
#define WORTH_TURNING    1.15 /* as large again, at least: turning paper is a nuisance */
#define LEAST_REST       0.6  /* of a page, under words, is enough for a picture that fills one */
#define NARROW_PICTURE   0.85 /* of its wished width is still enough for it */

typedef struct {
  TmPages *pages;
  TmPage page;
  double y;
  gboolean fresh; /* nothing stands on the page but repeated heads */
  double flat;    /* 0…1: how far pictures that can give way do */
} Flow;

/* -------- Pages -------- */

static void
begin_page (Flow *flow, const TmReportSection *section, gboolean turned)
{
  tm_pages_turn (flow->pages, turned);
  flow->page = (TmPage) { .first = flow->pages->items->len, .section = section, .turned = turned };
  flow->y = flow->pages->top;
  flow->fresh = TRUE;
}

static void
end_page (Flow *flow)
{
  flow->page.n = flow->pages->items->len - flow->page.first;
  g_array_append_val (flow->pages->pages, flow->page);
}

static void
turn_page (Flow *flow, const TmReportSection *section)
{
  end_page (flow);
  begin_page (flow, section, FALSE);
}

static double
get_rest (const Flow *flow)
{
  return flow->pages->bottom - flow->y;
}

static void
add_item (Flow *flow, const TmItem *item)
{
  TmItem placed = *item;

  placed.x = flow->pages->left + item->x;
  placed.y = flow->y;
  g_array_append_val (flow->pages->items, placed);
  flow->y += item->height;
  if (item->kind != TM_ITEM_HEAD)
    flow->fresh = FALSE;
}

static void
leave (Flow *flow, double room)
{
  flow->y = MIN (flow->y + room, flow->pages->bottom);
}

/* -------- Rows -------- */

static void
add_head (Flow *flow, const TmReportSection *section, const TmReportBlock *block)
{
  const TmRowExtent extent = tm_pages_row_extent (flow->pages, block, 0, TRUE);
  const TmItem item = { .kind = TM_ITEM_HEAD, .section = section, .block = block, .height = extent.height };

  add_item (flow, &item);
}

static double
get_head_height (const Flow *flow, const TmReportBlock *block)
{
  return block->kind == TM_BLOCK_TABLE ? tm_pages_row_extent (flow->pages, block, 0, TRUE).height : 0.0;
}

static void
turn_for (Flow *flow, const TmReportSection *section, const TmReportBlock *block)
{
  turn_page (flow, section);
  if (block->kind == TM_BLOCK_TABLE)
    add_head (flow, section, block);
}

/* How many of @left lines go on this page; 0: it has no room. */
static guint
count_lines_here (const Flow *flow, const TmRowExtent *extent, guint left)
{
  const double room = get_rest (flow) - extent->above - extent->below;
  const guint fit = room > 0 ? (guint)floor (room / extent->highest + 1e-6) : 0;
  guint n = MIN (fit, left);

  if (n < left && left - n < LEAST_LINES && left > LEAST_LINES)
    n = left - LEAST_LINES;
  if (n >= MIN (left, LEAST_LINES))
    return n;
  return flow->fresh ? MAX (1u, MIN (fit, left)) : 0;
}

/* A row in pieces, between its lines. */
static void
add_split_row (Flow *flow, TmItem *item, const TmRowExtent *extent)
{
  guint from = 0;

  while (from < extent->lines)
    {
      const guint n = count_lines_here (flow, extent, extent->lines - from);

      if (n > 0)
        {
          item->from = from;
          item->n = n;
          item->height = extent->above + extent->below + n * extent->highest;
          add_item (flow, item);
          from += n;
        }
      if (from < extent->lines)
        turn_for (flow, item->section, item->block);
    }
}

static void
add_row (Flow *flow, const TmReportSection *section, const TmReportBlock *block, guint row)
{
  const TmRowExtent extent = tm_pages_row_extent (flow->pages, block, row, FALSE);
  TmItem item
      = { .kind = TM_ITEM_ROW, .section = section, .block = block, .row = row, .height = extent.height };

  if (extent.height <= get_rest (flow))
    {
      add_item (flow, &item);
      return;
    }
  if (!flow->fresh && block->kind != TM_BLOCK_PARAGRAPH
      && extent.height <= flow->pages->bottom - flow->pages->top - get_head_height (flow, block))
    turn_for (flow, section, block);
  if (extent.height <= get_rest (flow))
    add_item (flow, &item);
  else
    add_split_row (flow, &item, &extent);
}

static double
measure_rows (const Flow *flow, const TmReportBlock *block)
{
  const guint n = tm_report_block_rows (block);
  double height = 0.0;

  for (guint row = 0; row < n; row++)
    height += tm_pages_row_extent (flow->pages, block, row, FALSE).height;
  return height;
}

/* -------- Size of a picture -------- */

static guint
count_across (const Flow *flow, const TmReportBlock *block)
{
  const double room = flow->pages->right - flow->pages->left;
  const double n = floor ((room + TM_PICTURE_GAP) / (NARROW_PICTURE * block->picture.width + TM_PICTURE_GAP));

  return (guint)CLAMP (n, 1.0, 4.0);
}

static double
get_caption_height (const Flow *flow, const TmReportBlock *block, double width)
{
  if (*block->text == '\0')
    return 0.0;
  return tm_type_measure (flow->pages->type, TM_TYPE_STRONG, block->text, width).height + TM_CAPTION_GAP;
}

/* Of the picture alone. */
static double
get_picture_height (const Flow *flow, const TmReportBlock *block, double width)
{
  const double wished = width * block->picture.aspect, flattest = block->picture.flattest;

  return flattest > 0 && flattest < wished ? wished - flow->flat * (wished - flattest) : wished;
}

/* A picture with its caption, no higher than a page. */
static TmItem
make_picture (const Flow *flow, const TmReportSection *section, const TmReportBlock *block, guint across)
{
  const double room = flow->pages->right - flow->pages->left;
  const double width = (room - (across - 1) * TM_PICTURE_GAP) / across;
  const double most = flow->pages->bottom - flow->pages->top;
  TmItem item = { .kind = TM_ITEM_ROW, .section = section, .block = block };

  item.width = across == 1 ? MIN (width, block->picture.width) : width;
  item.height = get_picture_height (flow, block, item.width);
  item.height = MIN (item.height + get_caption_height (flow, block, item.width), most);
  return item;
}

/* -------- Blocks -------- */

/* What a heading, a table's head or a first row must be followed by on its page.  Lines to sign on stay
 * together: who signs sees who else has to. */
static double
measure_start (const Flow *flow, const TmReportBlock *block)
{
  TmRowExtent extent;
  double height = 0.0;

  if (block == NULL)
    return 0.0;
  if (block->kind == TM_BLOCK_PICTURE)
    return make_picture (flow, NULL, block, count_across (flow, block)).height;
  if (block->kind == TM_BLOCK_SIGNATURES)
    return measure_rows (flow, block);
  if (tm_report_block_rows (block) == 0)
    return 0.0;
  extent = tm_pages_row_extent (flow->pages, block, 0, FALSE);
  height = extent.height;
  if (block->kind == TM_BLOCK_PARAGRAPH)
    height = MIN (height, LEAST_LINES * extent.highest);
  if (block->kind == TM_BLOCK_TABLE && tm_report_block_rows (block) > 1)
    height += tm_pages_row_extent (flow->pages, block, 1, FALSE).height;
  return height + get_head_height (flow, block);
}

/* What begins here and wants @height on one page goes to the next where that is not left; what is taller
 * than a page stays. */
static void
keep_together (Flow *flow, const TmReportSection *section, double height)
{
  if (!flow->fresh && height > get_rest (flow)
      && (height <= flow->pages->bottom - flow->pages->top || get_rest (flow) < height / 4))
    turn_page (flow, section);
}

/* A table that is no higher than a part of a page is not parted. */
static double
measure_kept (const Flow *flow, const TmReportBlock *block)
{
  const double start = measure_start (flow, block);
  double whole;

  if (block == NULL || block->kind != TM_BLOCK_TABLE || tm_report_block_rows (block) > MOST_SHORT)
    return start;
  whole = get_head_height (flow, block) + measure_rows (flow, block);
  return whole <= SHORT_TABLE * (flow->pages->bottom - flow->pages->top) ? whole : start;
}

/* Before the last row but one: a table's last row does not stand alone on a page. */
static void
keep_last_rows (Flow *flow, const TmReportSection *section, const TmReportBlock *block, guint n)
{
  const double room = flow->pages->bottom - flow->pages->top - get_head_height (flow, block);
  const double height = tm_pages_row_extent (flow->pages, block, n - 2, FALSE).height
                        + tm_pages_row_extent (flow->pages, block, n - 1, FALSE).height;

  if (!flow->fresh && height > get_rest (flow) && height <= room)
    turn_for (flow, section, block);
}

static void
add_cells (Flow *flow, const TmReportSection *section, const TmReportBlock *block)
{
  const guint n = tm_report_block_rows (block);

  keep_together (flow, section, measure_kept (flow, block));
  if (block->kind == TM_BLOCK_TABLE)
    add_head (flow, section, block);
  for (guint row = 0; row < n; row++)
    {
      if (block->kind == TM_BLOCK_TABLE && n >= LEAST_ROWS && row == n - 2)
        keep_last_rows (flow, section, block, n);
      add_row (flow, section, block, row);
    }
  leave (flow, block->kind == TM_BLOCK_PARAGRAPH ? AFTER_PARAGRAPH : AFTER_CELLS);
}

/* -------- Pictures -------- */

/* Pictures that follow each other stand side by side, each row as high as its highest. */
static guint
add_pictures (Flow *flow, const TmReportSection *section, guint from)
{
  const guint across = count_across (flow, g_ptr_array_index (section->blocks, from));
  TmItem items[4];
  double height = 0.0;
  guint n = 0;

  while (n < across && from + n < section->blocks->len)
    {
      const TmReportBlock *block = g_ptr_array_index (section->blocks, from + n);

      if (block->kind != TM_BLOCK_PICTURE || (n > 0 && count_across (flow, block) != across))
        break;
      items[n] = make_picture (flow, section, block, across);
      items[n].x = n * (items[n].width + TM_PICTURE_GAP);
      height = MAX (height, items[n].height);
      n++;
    }
  keep_together (flow, section, height);
  for (guint i = 0; i < n; i++)
    {
      const double y = flow->y;

      add_item (flow, &items[i]);
      flow->y = y;
    }
  flow->y += height;
  leave (flow, AFTER_PICTURES * (1.0 - 0.5 * flow->flat));
  return n;
}

/* -------- Pictures with a page of their own -------- */

/* As large as it can be in that room. */
static double
get_scale (const TmReportBlock *block, double width, double height)
{
  return MIN (width, height / block->picture.aspect);
}

/* Whether it is larger on a page that lies on its side. */
static gboolean
is_better_turned (const Flow *flow, const TmReportBlock *block)
{
  const TmPages *pages = flow->pages;
  const double width = pages->right - pages->left, height = pages->bottom - pages->top;
  const double other_width = pages->height - 2.0 * TM_PAGE_MARGIN;
  const double other_height = pages->width - TM_PAGE_MARGIN - TM_PAGE_FOOT - pages->top;

  return get_scale (block, other_width, other_height) > WORTH_TURNING * get_scale (block, width, height);
}

/* What is not on a page by itself gets one that is like @block wants it. */
static void
turn_for_picture (Flow *flow, const TmReportSection *section, const TmReportBlock *block)
{
  gboolean turned;

  tm_pages_turn (flow->pages, FALSE);
  turned = is_better_turned (flow, block);
  tm_pages_turn (flow->pages, flow->page.turned);
  if (flow->fresh && flow->page.turned == turned)
    return;
  end_page (flow);
  begin_page (flow, section, turned);
}

/* Whether the words before it have left it too little of the page. */
static gboolean
is_crowded (const Flow *flow)
{
  return get_rest (flow) < LEAST_REST * (flow->pages->bottom - flow->pages->top);
}

/* In the middle of the room that is left, and nothing under it. */
static void
add_filling_picture (Flow *flow, const TmReportSection *section, const TmReportBlock *block, gboolean begun)
{
  TmItem item = { .kind = TM_ITEM_ROW, .section = section, .block = block };
  double room, caption;

  if (!begun || is_crowded (flow))
    turn_for_picture (flow, section, block);
  room = flow->pages->right - flow->pages->left;
  caption = get_caption_height (flow, block, room);
  item.width = get_scale (block, room, MAX (1.0, get_rest (flow) - caption));
  item.height = item.width * block->picture.aspect + caption;
  item.x = (room - item.width) / 2.0;
  add_item (flow, &item);
  flow->y = flow->pages->bottom;
}

/* The first picture of a section that fills a page; the words before it stand above it. */
static const TmReportBlock *
find_filling_picture (const TmReportSection *section)
{
  for (guint i = 0; i < section->blocks->len; i++)
    {
      const TmReportBlock *block = g_ptr_array_index (section->blocks, i);

      if (block->kind == TM_BLOCK_PICTURE && block->picture.fills_page)
        return block;
      if (block->kind != TM_BLOCK_PARAGRAPH)
        return NULL;
    }
  return NULL;
}

/* -------- Sections -------- */

static double
measure_line (const Flow *flow, TmTypeStyle style, const char *text)
{
  return tm_type_measure (flow->pages->type, style, text, flow->pages->right - flow->pages->left).height;
}

static const TmReportBlock *
get_block (const TmReportSection *section, guint at)
{
  return at < section->blocks->len ? g_ptr_array_index (section->blocks, at) : NULL;
}

/* What a heading is followed by on its page: the paragraphs under it, where they are few. */
static double
measure_under (const Flow *flow, const TmReportSection *section, guint at)
{
  const double most = SHORT_WORDS * (flow->pages->bottom - flow->pages->top);
  const TmReportBlock *block = get_block (section, at);
  double height = 0.0;

  if (block == NULL || block->kind != TM_BLOCK_PARAGRAPH)
    return block == NULL ? 0.0 : measure_kept (flow, block);
  for (guint i = at; block != NULL && block->kind == TM_BLOCK_PARAGRAPH && height <= most; i++)
    {
      height += measure_rows (flow, block) + (i > at ? AFTER_PARAGRAPH : 0.0);
      block = get_block (section, i + 1);
    }
  return height <= most ? height : measure_start (flow, get_block (section, at));
}

static void
add_heading (Flow *flow, const TmReportSection *section, guint at)
{
  const TmReportBlock *block = get_block (section, at);
  const double height = measure_line (flow, TM_TYPE_HEADING, block->text);
  const TmItem item = { .kind = TM_ITEM_ROW, .section = section, .block = block, .height = height };

  if (!flow->fresh)
    leave (flow, BEFORE_HEADING);
  keep_together (flow, section, height + AFTER_HEADING + measure_under (flow, section, at + 1));
  add_item (flow, &item);
  leave (flow, AFTER_HEADING);
}

static void
add_section_title (Flow *flow, const TmReportSection *section)
{
  const double height = measure_line (flow, TM_TYPE_SECTION, section->title);
  const TmItem item = { .kind = TM_ITEM_SECTION, .section = section, .height = height };
  const TmReportBlock *first = get_block (section, 0);
  double start = first != NULL ? measure_kept (flow, first) : 0.0;

  if (first != NULL && first->kind == TM_BLOCK_HEADING)
    start += BEFORE_HEADING + AFTER_HEADING + measure_under (flow, section, 1);
  if (!flow->fresh)
    leave (flow, BEFORE_SECTION);
  keep_together (flow, section, height + AFTER_SECTION + start);
  add_item (flow, &item);
  leave (flow, AFTER_SECTION);
}

static void
lay_section (Flow *flow, const TmReportSection *section, gboolean starts)
{
  const TmReportBlock *filling = find_filling_picture (section);
  guint page;

  if (filling != NULL)
    turn_for_picture (flow, section, filling);
  else if (flow->page.turned || (starts && !flow->fresh))
    turn_page (flow, section);
  page = flow->pages->pages->len;
  add_section_title (flow, section);
  for (guint i = 0; i < section->blocks->len;)
    {
      const TmReportBlock *block = get_block (section, i);

      if (block->kind == TM_BLOCK_PICTURE && block->picture.fills_page)
        {
          add_filling_picture (flow, section, block, block == filling && page == flow->pages->pages->len);
          i++;
          continue;
        }
      if (block->kind == TM_BLOCK_PICTURE)
        {
          i += add_pictures (flow, section, i);
          continue;
        }
      if (block->kind == TM_BLOCK_HEADING)
        add_heading (flow, section, i);
      else
        add_cells (flow, section, block);
      i++;
    }
}

static gboolean
can_be_flatter (const TmReportSection *section)
{
  for (guint i = 0; i < section->blocks->len; i++)
    {
      const TmReportBlock *block = get_block (section, i);

      if (block->kind == TM_BLOCK_PICTURE && block->picture.flattest > 0)
        return TRUE;
    }
  return FALSE;
}

/* Where a section began, to lay it out once more. */
typedef struct {
  Flow flow;
  guint n_pages, n_items;
} Start;

/* Lays the section out from where it began, its pictures as flat as that; returns how many pages are full
 * then. */
static guint
try_section (Flow *flow, const Start *start, const TmReportSection *section, gboolean starts, double flat)
{
  TmPages *pages = flow->pages;

  g_array_set_size (pages->pages, start->n_pages);
  g_array_set_size (pages->items, start->n_items);
  *flow = start->flow;
  flow->flat = flat;
  tm_pages_turn (pages, flow->page.turned);
  lay_section (flow, section, starts);
  flow->flat = 0.0;
  return pages->pages->len;
}

/* A section that starts a page and is so short that all of it fits under the last one stays there, but for
 * the first page, which stands for itself. */
static gboolean
fits_under (Flow *flow, const Start *start, const TmReportSection *section)
{
  const double page = flow->pages->bottom - flow->pages->top;

  return start->n_pages > 0 && !flow->fresh && !flow->page.turned && get_rest (flow) > LEAST_UNDER * page
         && try_section (flow, start, section, FALSE, 0.0) == start->n_pages;
}

/* The least step of @FLAT_STEPS at which the section takes @wanted pages; at the last it does. */
static void
flatten (Flow *flow, const Start *start, const TmReportSection *section, guint wanted)
{
  guint low = 0, high = FLAT_STEPS, last = FLAT_STEPS;

  while (high - low > 1)
    {
      last = (low + high) / 2;
      if (try_section (flow, start, section, section->starts_page, (double)last / FLAT_STEPS) == wanted)
        high = last;
      else
        low = last;
    }
  if (last != high)
    (void)try_section (flow, start, section, section->starts_page, (double)high / FLAT_STEPS);
}

/* With pictures no flatter than it takes to save a page. */
static void
add_section (Flow *flow, const TmReportSection *section)
{
  const Start start = { *flow, flow->pages->pages->len, flow->pages->items->len };
  guint most, least;

  if (section->starts_page && fits_under (flow, &start, section))
    return;
  most = try_section (flow, &start, section, section->starts_page, 0.0);
  if (most <= start.n_pages + (start.flow.fresh ? 0 : 1) || !can_be_flatter (section))
    return;
  least = try_section (flow, &start, section, section->starts_page, 1.0);
  if (least < most)
    flatten (flow, &start, section, least);
  else
    (void)try_section (flow, &start, section, section->starts_page, 0.0);
}

static void
add_letterhead (Flow *flow)
{
  const TmItem item = { .kind = TM_ITEM_LETTERHEAD, .height = tm_pages_letterhead_height (flow->pages) };

  if (item.height <= 0)
    return;
  add_item (flow, &item);
  leave (flow, AFTER_LETTERHEAD);
}

static void
add_title (Flow *flow)
{
  const TmReportDocument *document = flow->pages->document;
  const TmItem title
      = { .kind = TM_ITEM_TITLE, .height = measure_line (flow, TM_TYPE_TITLE, document->title) };
  const TmItem subtitle
      = { .kind = TM_ITEM_SUBTITLE, .height = measure_line (flow, TM_TYPE_SUBTITLE, document->subtitle) };

  add_item (flow, &title);
  leave (flow, AFTER_TITLE);
  if (*document->subtitle != '\0')
    add_item (flow, &subtitle);
  leave (flow, AFTER_SUBTITLE);
  flow->fresh = TRUE;
}

void
tm_pages_flow (TmPages *pages)
{
  const GPtrArray *sections = pages->document->sections;
  Flow flow = { .pages = pages };

  begin_page (&flow, sections->len > 0 ? g_ptr_array_index (sections, 0) : NULL, FALSE);
  add_letterhead (&flow);
  add_title (&flow);
  for (guint i = 0; i < sections->len; i++)
    add_section (&flow, g_ptr_array_index (sections, i));
  end_page (&flow);
  tm_pages_turn (pages, FALSE);
}
