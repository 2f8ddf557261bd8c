/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-style: the cell formats of the workbook, each made once.
 */

#pragma once

#include <glib.h>
#include <xlsxwriter.h>

#include "core-judge.h"
#include "core-template.h"
#include "report-form.h"

G_BEGIN_DECLS

typedef enum {
  TM_STYLE_TITLE,     /* a sheet's name at its top */
  TM_STYLE_SUBTITLE,  /* what the sheet is about */
  TM_STYLE_SECTION,   /* a heading between tables */
  TM_STYLE_HEAD,      /* a column's name */
  TM_STYLE_LABEL,     /* a fact's name beside its value */
  TM_STYLE_TEXT,      /* text in a table, wrapped */
  TM_STYLE_STRONG,    /* the same in bold */
  TM_STYLE_CENTRE,    /* short words, in the middle */
  TM_STYLE_PLAIN,     /* text outside tables, not wrapped */
  TM_STYLE_PARAGRAPH, /* text outside tables, wrapped */
  TM_STYLE_NUMBER,    /* with decimals */
  TM_STYLE_COUNT,     /* a whole number in bold, in the middle */
  TM_STYLE_SIGNED,    /* with decimals and its sign */
  TM_STYLE_DATE,
  TM_STYLE_TIME,
  TM_STYLE_BY_HAND, /* empty, shaded: to be filled in by hand */
  TM_N_STYLES
} TmStyle;

#define TM_STYLE_MAX_DECIMALS 12

typedef struct {
  lxw_workbook *book;
  TmDateForm dates;
  const TmTemplate *template; /* the shop's; or NULL */
  lxw_format *formats[TM_N_STYLES][TM_STYLE_MAX_DECIMALS + 1];
  lxw_format *verdicts[TM_N_VERDICTS]; /* what the verdict's own word adds to a cell */
} TmStyles;

/* @template may be NULL; it outlives the styles. */
void tm_styles_init (TmStyles *styles, lxw_workbook *book, TmDateForm dates, const TmTemplate *template);

/* @decimals is for NUMBER and SIGNED, 0 elsewhere.  Borrowed from the workbook. */
lxw_format *tm_styles_get (TmStyles *styles, TmStyle style, guint decimals);

G_END_DECLS
