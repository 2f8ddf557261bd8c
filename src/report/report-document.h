/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-document: what the pages of a report say, in order, independent of paper and layout: sections of
 * facts, paragraphs, tables, pictures and signature lines.  It is filled from the top down; what is added
 * joins the block that was begun last.
 */

#pragma once

#include <cairo.h>

#include "core-judge.h"
#include "plot-drawing.h"

G_BEGIN_DECLS

#define TM_DOCUMENT_COLUMNS 16

typedef enum {
  TM_BLOCK_HEADING, /* inside a section */
  TM_BLOCK_PARAGRAPH,
  TM_BLOCK_FACTS,
  TM_BLOCK_TABLE,
  TM_BLOCK_PICTURE,
  TM_BLOCK_SIGNATURES,
} TmBlockKind;

typedef enum {
  TM_CELL_PLAIN,
  TM_CELL_STRONG,
  TM_CELL_CENTRE,
  TM_CELL_NUMBER,  /* right-aligned */
  TM_CELL_VERDICT, /* a mark before the words */
} TmCellRole;

/* Texts are the document's. */
typedef struct {
  const char *label; /* small, above the text: facts and signature lines; or NULL */
  const char *text;
  const char *link; /* name of the place in the document that it leads to, or NULL */
  guint8 role;      /* TmCellRole */
  guint8 verdict;   /* TmVerdict, of VERDICT */
  guint8 point;     /* of VERDICT: TmPoint of plot-mark.h, the way an arrow points */
  guint8 by_hand;   /* to be filled in: a line to write on */
} TmReportCell;

/* Widths in points; the table is given the width of the page. */
typedef struct {
  const char *title;
  double least; /* > 0 */
  double most;  /* wished for its longest text; 0: as wide as that is */
  double share; /* of the width that is left over */
  TmCellRole role;
} TmReportColumn;

/* Draws into 0,0 … width,height, in points. */
typedef void (*TmPictureDraw) (cairo_t *cr, double width, double height, gpointer data);
/* The picture in words; free them. */
typedef char *(*TmPictureDescribe) (gpointer data);

typedef struct {
  TmPictureDraw draw;
  TmPictureDescribe describe; /* may be NULL */
  gpointer data;
  GDestroyNotify free; /* of data; may be NULL */
  double width;        /* wished, points; two stand side by side where both fit */
  double aspect;       /* height / width */
  double flattest; /* points: it gives way down to that height where its section then takes a page less; 0:
                    * never */
  gboolean fills_page; /* has what is left of a page for itself, and a page that lies on its side where it is
                        * larger so; width is not looked at */
} TmReportPicture;

typedef struct {
  TmBlockKind kind;
  const char *text;        /* HEADING, PARAGRAPH; the caption of a PICTURE */
  const char *beside;      /* PARAGRAPH: the same in another language, in a column to the right; or NULL */
  const char *name;        /* links lead here; or NULL */
  gboolean dim;            /* PARAGRAPH: a note */
  guint n_columns;         /* FACTS, TABLE, SIGNATURES */
  TmReportColumn *columns; /* TABLE */
  GArray *cells;           /* TmReportCell, row by row */
  TmReportPicture picture; /* PICTURE */
} TmReportBlock;

typedef struct {
  const char *title;
  const char *name;     /* links lead here */
  gboolean starts_page; /* on a new page */
  GPtrArray *blocks;    /* TmReportBlock */
} TmReportSection;

/* Who made the report. */
typedef struct {
  const char *name;    /* or "" */
  const char *address; /* lines; or "" */
  TmDrawingPage *logo; /* owned; or NULL */
  gboolean has_accent;
  guint32 accent;        /* 0xRRGGBB, of lines */
  gboolean accent_reads; /* and of heads */
  gboolean has_ground;
  guint32 ground, text_on_ground; /* of the heads of tables; when has_ground */
} TmReportShop;

typedef struct {
  const char *title;      /* of the whole */
  const char *subtitle;   /* or "" */
  const char *head_left;  /* repeated on each page: the part and its revision */
  const char *head_right; /* the report's identifier; or "" */
  const char *foot;       /* left of the page's number; or "" */
  TmReportShop shop;
  GPtrArray *sections; /* TmReportSection */
  GStringChunk *texts; /* equal texts are one */
} TmReportDocument;

TmReportDocument *tm_report_document_new (const char *title) G_GNUC_WARN_UNUSED_RESULT;
void tm_report_document_free (TmReportDocument *document);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmReportDocument, tm_report_document_free)

/* The document's own copy of @text, made valid UTF-8; equal texts give one address.  NULL gives "". */
const char *tm_report_text (TmReportDocument *document, const char *text);

void tm_report_add_section (TmReportDocument *document, const char *title, const char *name,
                            gboolean starts_page);
void tm_report_add_heading (TmReportDocument *document, const char *text);
/* Nothing is added for an empty text. */
void tm_report_add_paragraph (TmReportDocument *document, const char *text, gboolean dim);
/* The same with @beside, in another language, in a column of its own where that is another text; it may be
 * NULL. */
void tm_report_add_paragraphs (TmReportDocument *document, const char *text, const char *beside,
                               gboolean dim);

/* Facts in @n_columns columns, from left to right. */
void tm_report_begin_facts (TmReportDocument *document, guint n_columns);
void tm_report_add_fact (TmReportDocument *document, const char *label, const char *value);

/* @columns are copied; rows follow cell by cell. */
void tm_report_begin_table (TmReportDocument *document, const TmReportColumn *columns, guint n);
void tm_report_add_cell (TmReportDocument *document, const char *text);
void tm_report_add_cell_as (TmReportDocument *document, TmCellRole role, const char *text);
void tm_report_add_verdict (TmReportDocument *document, TmVerdict verdict, guint point, const char *text);
/* The cell added last leads to the block or section of that name, which the document must have. */
void tm_report_link_cell (TmReportDocument *document, const char *name);

/* Takes the picture's data.  @name may be NULL. */
void tm_report_add_picture (TmReportDocument *document, const TmReportPicture *picture, const char *caption,
                            const char *name);

/* Lines to sign on: each of @n_columns cells, with a label; an empty text is a line to write on. */
void tm_report_begin_signatures (TmReportDocument *document, guint n_columns);
void tm_report_add_signature (TmReportDocument *document, const char *label, const char *text);

/* For those who lay the document out. */
guint tm_report_block_rows (const TmReportBlock *block);
/* One cell of a row; NULL beyond the last. */
const TmReportCell *tm_report_block_cell (const TmReportBlock *block, guint row, guint column);

G_END_DECLS
