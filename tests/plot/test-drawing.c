/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawings: what a file is, its size, and that each kind is drawn where it belongs.  The files are made here,
 * by the libraries that write them.
 */

#include "plot-support.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <gdk-pixbuf/gdk-pixbuf.h>

#include "plot-drawing.h"

/* What every file shows: white, with its upper left quarter black. */
static void
draw_quarter (cairo_t *cr, double width, double height)
{
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_set_source_rgb (cr, 0, 0, 0);
  cairo_rectangle (cr, 0, 0, width / 2, height / 2);
  cairo_fill (cr);
}

static cairo_status_t
keep (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static GBytes *
make_vectors (gboolean pdf, guint pages)
{
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *surface = pdf ? cairo_pdf_surface_create_for_stream (keep, bytes, 360, 180)
                                 : cairo_svg_surface_create_for_stream (keep, bytes, 360, 180);
  cairo_t *cr = cairo_create (surface);

  for (guint i = 0; i < pages; i++)
    {
      draw_quarter (cr, 360, 180);
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return g_byte_array_free_to_bytes (bytes);
}

static GBytes *
make_picture_file (const char *type, const char *resolution)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 200, 100);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (GdkPixbuf) pixels = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, 200, 100);
  char *data;
  gsize length;

  draw_quarter (cr, 200, 100);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < 100; y++)
    for (int x = 0; x < 200; x++)
      memset (gdk_pixbuf_get_pixels (pixels) + y * gdk_pixbuf_get_rowstride (pixels) + x * 3,
              cairo_image_surface_get_data (surface)[y * cairo_image_surface_get_stride (surface) + x * 4],
              3);
  cairo_surface_destroy (surface);
  g_assert_true (gdk_pixbuf_save_to_buffer (pixels, &data, &length, type, NULL,
                                            resolution != NULL ? "x-dpi" : NULL, resolution, "y-dpi",
                                            resolution, NULL));
  return g_bytes_new_take (data, length);
}

/* Drawn at 2 pixels a point and more: the quarter is black, the rest white. */
static void
check_page (TmDrawingPage *page)
{
  const double width = tm_drawing_page_width (page), height = tm_drawing_page_height (page);
  Picture picture = make_picture ((int)(width * 2), (int)(height * 2), tm_theme_dark ());

  cairo_scale (picture.cr, 2, 2);
  tm_drawing_page_draw (page, picture.cr);
  g_assert_cmphex (get_pixel (&picture, (int)(width * 0.9), (int)(height * 0.9)), ==, 0x000000);
  g_assert_cmphex (get_pixel (&picture, (int)(width * 1.1), (int)(height * 0.9)), ==, 0xffffff);
  g_assert_cmphex (get_pixel (&picture, (int)(width * 0.9), (int)(height * 1.1)), ==, 0xffffff);
  g_assert_cmphex (get_pixel (&picture, (int)(width * 1.9), (int)(height * 1.9)), ==, 0xffffff);
  clear_picture (&picture);
}

static void
check_file (GBytes *content, const char *media, guint n_pages, double width, double height)
{
  g_autoptr (TmDrawingPage) page = NULL;
  g_autoptr (GError) error = NULL;
  guint pages = 0;

  g_assert_cmpstr (tm_drawing_look (content, &pages, &error), ==, media);
  g_assert_no_error (error);
  g_assert_cmpuint (pages, ==, n_pages);
  page = tm_drawing_page_open (content, n_pages, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (tm_drawing_page_width (page), width, 0.05);
  g_assert_cmpfloat_with_epsilon (tm_drawing_page_height (page), height, 0.05);
  check_page (page);
}

/* 200 pixels at 100 an inch are 2 inches, 144 points; where none is said, 96 an inch. */
static void
test_png (void)
{
  g_autoptr (GBytes) said = make_picture_file ("png", "100"), unsaid = make_picture_file ("png", NULL);

  check_file (said, "image/png", 1, 144, 72);
  check_file (unsaid, "image/png", 1, 150, 75);
}

static void
test_jpeg (void)
{
  g_autoptr (GBytes) said = make_picture_file ("jpeg", "100"), unsaid = make_picture_file ("jpeg", NULL);

  check_file (said, "image/jpeg", 1, 144, 72);
  check_file (unsaid, "image/jpeg", 1, 150, 75);
}

static void
test_svg (void)
{
  g_autoptr (GBytes) content = make_vectors (FALSE, 1);

  check_file (content, "image/svg+xml", 1, 360, 180);
}

static void
test_pdf (void)
{
  g_autoptr (GBytes) content = make_vectors (TRUE, 3);

  check_file (content, "application/pdf", 3, 360, 180);
}

static void
check_refused (GBytes *content, guint page, TmPlotError code, const char *says)
{
  g_autoptr (GError) error = NULL;
  TmDrawingPage *opened = tm_drawing_page_open (content, page, &error);

  g_assert_null (opened);
  g_assert_error (error, TM_PLOT_ERROR, (gint)code);
  if (strstr (error->message, says) == NULL || strchr (error->message, '\n') != NULL)
    g_error ("“%s” says no “%s” in one line", error->message, says);
}

static void
test_no_such_page (void)
{
  g_autoptr (GBytes) pdf = make_vectors (TRUE, 2), svg = make_vectors (FALSE, 1);

  check_refused (pdf, 3, TM_PLOT_ERROR_NO_PAGE, "no page 3: the PDF has 2 pages");
  check_refused (pdf, 0, TM_PLOT_ERROR_NO_PAGE, "no page 0");
  check_refused (svg, 2, TM_PLOT_ERROR_NO_PAGE, "no page 2");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/png", test_png);
  g_test_add_func ("/drawing/jpeg", test_jpeg);
  g_test_add_func ("/drawing/svg", test_svg);
  g_test_add_func ("/drawing/pdf", test_pdf);
  g_test_add_func ("/drawing/no-such-page", test_no_such_page);
  return g_test_run ();
}
