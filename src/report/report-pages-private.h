/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages-private: what laying out, drawing and writing pages share.
 */

#pragma once

#include "plot-text.h"
#include "plot-words.h"
#include "report-pages.h"
#include "report-type.h"

G_BEGIN_DECLS

/* Points. */
#define TM_PAGE_MARGIN 42.0
#define TM_PAGE_FOOT   20.0 /* of the margin's inside, at the bottom */
#define TM_TABLE_GAP   4.0  /* beside a column's text */
#define TM_MARK_ROOM   11.0 /* before a verdict */
#define TM_PICTURE_GAP 14.0
#define TM_CAPTION_GAP 3.0
#define TM_INK_ROOM    9.0 /* more room to write in */

/* One thing on a page. */
typedef enum {
  TM_ITEM_LETTERHEAD,
  TM_ITEM_TITLE,
  TM_ITEM_SUBTITLE,
  TM_ITEM_SECTION,
  TM_ITEM_HEAD,
  TM_ITEM_ROW
} TmItemKind;

typedef struct {
  TmItemKind kind;
  const TmReportSection *section;
  const TmReportBlock *block; /* HEAD, ROW */
  guint row;
  guint from, n; /* lines of a row that is split; n 0: whole */
  double x, y, width, height;
} TmItem;

typedef struct {
  guint first, n;                 /* items */
  const TmReportSection *section; /* the one that the page begins in */
  gboolean turned; /* lies on its side: what follows is laid out on paper turned by a quarter */
} TmPage;

/* Where a table's columns stand, from the left margin. */
typedef struct {
  double x[TM_DOCUMENT_COLUMNS], width[TM_DOCUMENT_COLUMNS];
  double total;
} TmTableColumns;

struct _TmPages {
  const TmReportDocument *document;
  TmReportForm form;
  TmWords words[2]; /* in use while a page is drawn: the first */
  guint n_words;
  double width, height;             /* of the page that is laid out or drawn */
  double paper_width, paper_height; /* never change: may be asked for while another thread draws */
  double left, right, top, bottom;  /* of what stands between head and foot */
  TmType *type;
  GArray *items;       /* TmItem */
  GArray *pages;       /* TmPage */
  GHashTable *columns; /* const TmReportBlock *, TmTableColumns */
};

/* -------- Cells as they are set (report-pages-slot.c) -------- */

typedef struct {
  const TmReportCell *cell; /* or NULL */
  const char *label, *text; /* the label may be "" */
  TmTypeStyle style;
  TmTypeSetting setting;
  double x, width; /* of the text, from the left margin */
} TmSlot;

typedef struct {
  double height; /* with the room above and below */
  double above, below;
  guint labels;         /* lines of the longest label */
  double labels_height; /* and their height: texts begin beside each other */
  guint lines;          /* with those of the longest text */
  double highest;       /* line */
} TmRowExtent;

/* The texts of a heading, paragraph, fact row, signature row, table row or (@head) table head. */
guint tm_pages_slots (TmPages *pages, const TmReportBlock *block, guint row, gboolean head, TmSlot *slots);
TmRowExtent tm_pages_row_extent (TmPages *pages, const TmReportBlock *block, guint row, gboolean head);
const TmTableColumns *tm_pages_columns (TmPages *pages, const TmReportBlock *block);

/* -------- Who made the report (report-pages-letterhead.c) -------- */

/* With the room above the rule under it; 0: the report does not say. */
double tm_pages_letterhead_height (TmPages *pages);
void tm_pages_draw_letterhead (TmPages *pages, const TmPen *pen, const TmItem *item, gboolean tags);
/* What the small logo takes of the head's left side; 0: there is none. */
double tm_pages_small_logo_room (const TmPages *pages);
void tm_pages_draw_small_logo (const TmPages *pages, cairo_t *cr, double x, double y);

/* From now on everything is laid out and drawn on the paper as it is, or turned by a quarter. */
void tm_pages_turn (TmPages *pages, gboolean turned);

/* -------- Layout (report-pages-flow.c), drawing (report-pages-draw.c) -------- */

/* The ink of heads and of strong lines: the shop's colour, where it has one that does. */
void tm_pages_use_head_ink (const TmPages *pages, const TmPen *pen);
void tm_pages_use_line_ink (const TmPages *pages, const TmPen *pen);

void tm_pages_flow (TmPages *pages);
/* On paper that is turned where the page is.  @tags: structure, links and places for a PDF. */
void tm_pages_draw_page (TmPages *pages, guint page, cairo_t *cr, gboolean tags);

G_END_DECLS
