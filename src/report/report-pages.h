/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-pages: a document laid out on pages, for the screen, the printer and PDF alike.
 *
 * Make the pages once, then draw any of them as often as is wanted, on any cairo_t whose unit is the point:
 * for a preview scale it first; in GtkPrintOperation's draw-page scale it by the resolution of the context
 * over 72, and give the operation a page setup of the same paper with no margins of its own.  Not to be used
 * on two threads at a time, but for its sizes, counts and names, which stay as they are.
 */

#pragma once

#include "report-document.h"
#include "report-error.h"
#include "report-form.h"

G_BEGIN_DECLS

typedef struct _TmPages TmPages;

/* @document must outlive the pages, and what its pictures show with it. */
TmPages *tm_pages_new (const TmReportDocument *document, const TmReportForm *form) G_GNUC_WARN_UNUSED_RESULT;
void tm_pages_free (TmPages *pages);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmPages, tm_pages_free)

guint tm_pages_count (const TmPages *pages); /* at least 1 */
/* Of the paper: points, with the orientation taken into account. */
void tm_pages_size (const TmPages *pages, double *width, double *height);
/* Page @page, from 0, into 0,0 … width,height.  Nothing is painted behind it.  A page that lies on its side
 * is turned to fit, its top to the left: as a printer wants it. */
void tm_pages_draw (TmPages *pages, guint page, cairo_t *cr);
/* The same for a screen: size of that page as it is read, and the page upright. */
void tm_pages_upright_size (const TmPages *pages, guint page, double *width, double *height);
void tm_pages_draw_upright (TmPages *pages, guint page, cairo_t *cr);
/* The page, from 0, on which the section or block of that name begins; -1: there is none. */
gint tm_pages_find (const TmPages *pages, const char *name);
/* The title of the section that stands first on a page. */
const char *tm_pages_section (const TmPages *pages, guint page);
/* What stands on a page, line by line, pictures in words, for those who cannot see it; free it. */
char *tm_pages_text (TmPages *pages, guint page) G_GNUC_WARN_UNUSED_RESULT;

/* What the file says of itself; NULL or "" is left out.  Dates: YYYY-MM-DDThh:mm:ssZ. */
typedef struct {
  const char *author; /* the organisation */
  const char *subject;
  const char *keywords;
  const char *made;     /* must be given: equal input then gives equal bytes */
  const char *language; /* "de", "de_CH": what a screen reader chooses its voice by */
} TmPdfFacts;

/* Takes @length bytes; FALSE when it cannot, with @error set. */
typedef gboolean (*TmPdfSink) (const void *bytes, gsize length, gpointer data, GError **error);

/* PDF with outline, tags, links, metadata and embedded fonts, page by page. */
gboolean tm_pages_write_pdf_to (TmPages *pages, const TmPdfFacts *facts, TmPdfSink sink, gpointer sink_data,
                                TmReportProgress progress, gpointer data, GError **error);
/* The same through a temporary file beside @path: the old file or a whole new one. */
gboolean tm_pages_write_pdf (TmPages *pages, const TmPdfFacts *facts, const char *path,
                             TmReportProgress progress, gpointer data, GError **error);

G_END_DECLS
