/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pages of a PDF.
 */

#include "plot-drawing-private.h"

#include <poppler.h>

static PopplerDocument *
open_document (GBytes *content, GError **error)
{
  g_autoptr (GError) problem = NULL;
  PopplerDocument *document = poppler_document_new_from_bytes (content, NULL, &problem);

  if (document != NULL)
    return document;
  if (g_error_matches (problem, POPPLER_ERROR, POPPLER_ERROR_ENCRYPTED))
    tm_drawing_fail (error, TM_PLOT_ERROR_LOCKED,
                     _ ("the PDF is locked with a password; save it without one"));
  else
    tm_drawing_fail (error, TM_PLOT_ERROR_DAMAGED,
                     _ ("the PDF is damaged or cut off; save the drawing again"));
  return NULL;
}

guint
tm_drawing_count_pdf_pages (GBytes *content, GError **error)
{
  PopplerDocument *document = open_document (content, error);
  int n;

  if (document == NULL)
    return 0;
  n = poppler_document_get_n_pages (document);
  g_object_unref (document);
  if (n > 0)
    return (guint)n;
  tm_drawing_fail (error, TM_PLOT_ERROR_NO_PAGE, _ ("the PDF has no pages; save the drawing again"));
  return 0;
}

typedef struct {
  PopplerDocument *document;
  PopplerPage *page;
} PdfPage;

static void
free_pdf_page (gpointer data)
{
  PdfPage *pdf = data;

  g_clear_object (&pdf->page);
  g_clear_object (&pdf->document);
  g_free (pdf);
}

static gboolean
draw_pdf (gpointer data, cairo_t *cr, double width, double height)
{
  PdfPage *pdf = data;

  poppler_page_render_for_printing (pdf->page, cr);
  return TRUE;
}

static gboolean
take_page (PdfPage *pdf, guint number, GError **error)
{
  const guint n = (guint)MAX (0, poppler_document_get_n_pages (pdf->document));

  if (number >= 1 && number <= n)
    pdf->page = poppler_document_get_page (pdf->document, (int)number - 1);
  if (pdf->page != NULL)
    return TRUE;
  if (n == 0)
    tm_drawing_fail (error, TM_PLOT_ERROR_NO_PAGE, _ ("the PDF has no pages; save the drawing again"));
  else if (number >= 1 && number <= n)
    tm_drawing_fail (error, TM_PLOT_ERROR_DAMAGED,
                     _ ("page %u of the PDF cannot be read; save the drawing again"), number);
  else
    tm_drawing_fail (error, TM_PLOT_ERROR_NO_PAGE,
                     ngettext ("no page %u: the PDF has %u page; ask for that one",
                               "no page %u: the PDF has %u pages; ask for one of them", n),
                     number, n);
  return FALSE;
}

gboolean
tm_drawing_open_pdf (TmDrawingPage *page, GBytes *content, guint number, GError **error)
{
  PdfPage *pdf = g_new0 (PdfPage, 1);
  double width = 0.0, height = 0.0;

  page->data = pdf;
  page->free_data = free_pdf_page;
  page->draw = draw_pdf;
  pdf->document = open_document (content, error);
  if (pdf->document == NULL || !take_page (pdf, number, error))
    return FALSE;
  poppler_page_get_size (pdf->page, &width, &height);
  return tm_drawing_set_size (page, width, height, error);
}
