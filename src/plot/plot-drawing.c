/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-drawing-check.h"
#include "plot-drawing-private.h"

#include <math.h>
#include <string.h>

/* How far into a file its head may stand: what viewers of PDF allow; what comments before <svg> may take. */
#define PDF_HEAD 1024
#define SVG_HEAD 65536

G_DEFINE_QUARK (tm - plot - error - quark, tm_plot_error)

void
tm_drawing_fail (GError **error, TmPlotError code, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list list;

  va_start (list, format);
  message = g_strdup_vprintf (format, list);
  va_end (list);
  g_strdelimit (message, "\r\n\t", ' ');
  g_set_error_literal (error, TM_PLOT_ERROR, (gint)code, message);
}

/* -------- What it is -------- */

static gboolean
has_text (const guchar *data, gsize length, const char *text)
{
  return data != NULL && memmem (data, length, text, strlen (text)) != NULL;
}

/* Text that begins with an element, and <svg among the first of it. */
static gboolean
is_svg (const guchar *data, gsize length)
{
  gsize at = length >= 3 && memcmp (data, "\xef\xbb\xbf", 3) == 0 ? 3 : 0;

  while (at < length && g_ascii_isspace (data[at]))
    at++;
  return at < length && data[at] == '<' && has_text (data + at, MIN (length - at, SVG_HEAD), "<svg");
}

TmDrawingMedia
tm_drawing_media (GBytes *content)
{
  gsize length;
  const guchar *data = g_bytes_get_data (content, &length);

  if (data == NULL)
    return TM_DRAWING_UNKNOWN;
  if (length >= 8 && memcmp (data, "\x89PNG\r\n\x1a\n", 8) == 0)
    return TM_DRAWING_PNG;
  if (length >= 3 && memcmp (data, "\xff\xd8\xff", 3) == 0)
    return TM_DRAWING_JPEG;
  if (length >= 5 && has_text (data, MIN (length, PDF_HEAD), "%PDF-"))
    return TM_DRAWING_PDF;
  return is_svg (data, length) ? TM_DRAWING_SVG : TM_DRAWING_UNKNOWN;
}

static gboolean
check_bytes (GBytes *content, GError **error)
{
  const gsize length = g_bytes_get_size (content);

  if (length == 0)
    {
      tm_drawing_fail (error, TM_PLOT_ERROR_UNKNOWN_MEDIA,
                       _ ("the file is empty; choose the drawing as PNG, JPEG, SVG or PDF"));
      return FALSE;
    }
  if (length <= TM_DRAWING_MAX_BYTES)
    return TRUE;
  tm_drawing_fail (error, TM_PLOT_ERROR_TOO_LARGE,
                   _ ("the file has %u MiB, a drawing at most %u; save it smaller"),
                   (guint)(length / (1024 * 1024)) + 1, TM_DRAWING_MAX_BYTES / (1024 * 1024));
  return FALSE;
}

static void
fail_unknown (GError **error)
{
  tm_drawing_fail (error, TM_PLOT_ERROR_UNKNOWN_MEDIA,
                   _ ("the file is no PNG, JPEG, SVG or PDF, whatever its name says; save the drawing as one "
                      "of them"));
}

const char *
tm_drawing_look_unchecked (GBytes *content, guint *n_pages, GError **error)
{
  static const char *const words[] = { NULL, "image/png", "image/jpeg", "image/svg+xml", "application/pdf" };
  TmPictureHead head = { 0 };
  guint pages = 1;
  TmDrawingMedia media;

  if (!check_bytes (content, error))
    return NULL;
  media = tm_drawing_media (content);
  if (media == TM_DRAWING_UNKNOWN)
    fail_unknown (error);
  else if (media == TM_DRAWING_PDF)
    pages = tm_drawing_count_pdf_pages (content, error);
  if ((media == TM_DRAWING_PNG && !tm_drawing_read_png_head (content, &head, error))
      || (media == TM_DRAWING_JPEG && !tm_drawing_read_jpeg_head (content, &head, error)) || pages == 0)
    return NULL;
  if (n_pages != NULL)
    *n_pages = pages;
  return words[media];
}

const char *
tm_drawing_look (GBytes *content, guint *n_pages, GError **error)
{
  g_return_val_if_fail (content != NULL, NULL);
  if (check_bytes (content, error) && tm_drawing_check (content, 0, error))
    return tm_drawing_look_unchecked (content, n_pages, error);
  return NULL;
}

/* -------- The page -------- */

gboolean
tm_drawing_set_size (TmDrawingPage *page, double width, double height, GError **error)
{
  if (!isfinite (width) || !isfinite (height) || width < 1.0 || height < 1.0)
    {
      tm_drawing_fail (error, TM_PLOT_ERROR_DAMAGED,
                       _ ("the page has no size; save the drawing again with the size of its paper"));
      return FALSE;
    }
  if (MAX (width, height) > TM_DRAWING_MAX_POINTS)
    {
      tm_drawing_fail (error, TM_PLOT_ERROR_TOO_LARGE,
                       _ ("the page is %.4g mm long, a drawing at most %.0f; save it on a usual paper size"),
                       MAX (width, height) / 72.0 * 25.4, TM_DRAWING_MAX_POINTS / 72.0 * 25.4);
      return FALSE;
    }
  page->width = width;
  page->height = height;
  return TRUE;
}

static gboolean
open_media (TmDrawingPage *page, GBytes *content, guint number, GError **error)
{
  const TmDrawingMedia media = tm_drawing_media (content);

  if (media != TM_DRAWING_PDF && media != TM_DRAWING_UNKNOWN && number != 1)
    {
      tm_drawing_fail (error, TM_PLOT_ERROR_NO_PAGE, _ ("no page %u: a picture has one; ask for page 1"),
                       number);
      return FALSE;
    }
  switch (media)
    {
    case TM_DRAWING_PNG:
      return tm_drawing_open_png (page, content, error);
    case TM_DRAWING_JPEG:
      return tm_drawing_open_jpeg (page, content, error);
    case TM_DRAWING_SVG:
      return tm_drawing_open_svg (page, content, error);
    case TM_DRAWING_PDF:
      return tm_drawing_open_pdf (page, content, number, error);
    case TM_DRAWING_UNKNOWN:
    default:
      fail_unknown (error);
      return FALSE;
    }
}

TmDrawingPage *
tm_drawing_page_open_unchecked (GBytes *content, guint number, GError **error)
{
  g_autoptr (TmDrawingPage) page = NULL;

  if (!check_bytes (content, error))
    return NULL;
  page = g_new0 (TmDrawingPage, 1);
  g_atomic_ref_count_init (&page->refs);
  g_mutex_init (&page->lock);
  return open_media (page, content, number, error) ? g_steal_pointer (&page) : NULL;
}

TmDrawingPage *
tm_drawing_page_open (GBytes *content, guint number, GError **error)
{
  g_return_val_if_fail (content != NULL, NULL);
  if (!check_bytes (content, error) || !tm_drawing_check (content, MAX (number, 1), error))
    return NULL;
  return tm_drawing_page_open_unchecked (content, number, error);
}

TmDrawingPage *
tm_drawing_page_ref (TmDrawingPage *page)
{
  g_return_val_if_fail (page != NULL, NULL);
  g_atomic_ref_count_inc (&page->refs);
  return page;
}

void
tm_drawing_page_unref (TmDrawingPage *page)
{
  g_return_if_fail (page != NULL);
  if (!g_atomic_ref_count_dec (&page->refs))
    return;
  if (page->free_data != NULL)
    page->free_data (page->data);
  g_mutex_clear (&page->lock);
  g_free (page);
}

double
tm_drawing_page_width (const TmDrawingPage *page)
{
  g_return_val_if_fail (page != NULL, 0.0);
  return page->width;
}

double
tm_drawing_page_height (const TmDrawingPage *page)
{
  g_return_val_if_fail (page != NULL, 0.0);
  return page->height;
}

gboolean
tm_drawing_page_draw (TmDrawingPage *page, cairo_t *cr)
{
  gboolean drawn;

  g_return_val_if_fail (page != NULL && cr != NULL, FALSE);
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, 0.0, 0.0, page->width, page->height);
  cairo_clip_preserve (cr);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_fill (cr);
  g_mutex_lock (&page->lock);
  drawn = page->draw (page->data, cr, page->width, page->height);
  g_mutex_unlock (&page->lock);
  cairo_restore (cr);
  return drawn && cairo_status (cr) == CAIRO_STATUS_SUCCESS;
}
