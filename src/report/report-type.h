/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-type: the type that pages are set in: a few styles, texts measured and drawn, each text shaped once
 * and kept while it recurs.  Independent of what it is drawn on, so that screen, printer and PDF break their
 * lines alike.  Texts are known by their address: pass those of one document (report-document.h).
 */

#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_TYPE_TITLE,
  TM_TYPE_SUBTITLE,
  TM_TYPE_SECTION,
  TM_TYPE_HEADING,
  TM_TYPE_BODY,
  TM_TYPE_NOTE,
  TM_TYPE_LABEL, /* over a fact */
  TM_TYPE_FACT,
  TM_TYPE_HEAD, /* of a table's column */
  TM_TYPE_CELL,
  TM_TYPE_STRONG, /* a cell that stands out */
  TM_TYPE_MARGIN, /* head and foot of a page */
  TM_N_TYPE_STYLES
} TmTypeStyle;

typedef enum { TM_SET_START, TM_SET_CENTRE, TM_SET_END } TmTypeSetting;

typedef struct _TmType TmType;
TmType *tm_type_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_type_free (TmType *type);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmType, tm_type_free)

/* All in points.  Height of one line of Latin text. */
double tm_type_line (const TmType *type, TmTypeStyle style);
/* Width of the text in one line, or of its widest line; a little too large rather than too small. */
double tm_type_width (TmType *type, TmTypeStyle style, const char *text);
/* Width of its longest word, likewise. */
double tm_type_word (TmType *type, TmTypeStyle style, const char *text);
/* The text broken into lines of at most @width, words that are too long inside: how many, and how high they
 * are together and the highest.  Nothing for the empty text. */
typedef struct {
  guint lines;
  double height;
  double highest;
} TmTypeExtent;
TmTypeExtent tm_type_measure (TmType *type, TmTypeStyle style, const char *text, double width);

/* Draws lines @from … @from + @n - 1 (@n 0: to the last) with their top at @y.  A right-to-left paragraph
 * starts at the right. */
void tm_type_draw (TmType *type, cairo_t *cr, TmTypeStyle style, const char *text, double x, double y,
                   double width, TmTypeSetting setting, guint from, guint n);

/* A short text of the caller's, that is not kept. */
void tm_type_draw_once (TmType *type, cairo_t *cr, TmTypeStyle style, const char *text, double x, double y,
                        double width, TmTypeSetting setting);

G_END_DECLS
