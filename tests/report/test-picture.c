/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pictures with a palette, read back by cairo: what has few colours is the same to the pixel, what has many
 * to what an eye can tell.
 */

#include <cairo.h>
#include <glib.h>
#include <string.h>

#include "exchange-job.h"
#include "report-content.h"
#include "report-picture.h"

#define SIDE 256

static cairo_status_t
read_cb (void *closure, unsigned char *data, unsigned int length)
{
  const unsigned char **at = closure;

  memcpy (data, *at, length);
  *at += length;
  return CAIRO_STATUS_SUCCESS;
}

/* The largest difference of any channel of any pixel between @surface and its PNG. */
static int
find_difference (cairo_surface_t *surface)
{
  g_autoptr (GBytes) png = tm_picture_to_png (surface);
  const unsigned char *at = g_bytes_get_data (png, NULL);
  cairo_surface_t *again = cairo_image_surface_create_from_png_stream (read_cb, &at);
  const guint stride = (guint)cairo_image_surface_get_stride (surface);
  int most = 0;

  g_assert_cmpint (cairo_surface_status (again), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpint (cairo_image_surface_get_width (again), ==, cairo_image_surface_get_width (surface));
  g_assert_cmpint (cairo_image_surface_get_height (again), ==, cairo_image_surface_get_height (surface));
  g_assert_cmpuint ((guint)cairo_image_surface_get_stride (again), ==, stride);
  for (guint y = 0; y < (guint)cairo_image_surface_get_height (surface); y++)
    for (guint x = 0; x < 4 * (guint)cairo_image_surface_get_width (surface); x++)
      if (x % 4 != 3)
        most = MAX (most, ABS (cairo_image_surface_get_data (surface)[y * stride + x]
                               - cairo_image_surface_get_data (again)[y * stride + x]));
  cairo_surface_destroy (again);
  return most;
}

static cairo_surface_t *
make_surface (cairo_t **cr)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIDE, SIDE);

  *cr = cairo_create (surface);
  cairo_set_source_rgb (*cr, 1, 1, 1);
  cairo_paint (*cr);
  return surface;
}

static void
test_few (void)
{
  cairo_t *cr;
  cairo_surface_t *surface = make_surface (&cr);

  cairo_set_source_rgb (cr, 0.0, 0.45, 0.70);
  cairo_arc (cr, 128, 128, 90, 0, 6.3);
  cairo_fill (cr);
  cairo_destroy (cr);
  g_assert_cmpint (find_difference (surface), ==, 0);
  cairo_surface_destroy (surface);
}

/* Of 256 greys and more, in a line: all of them once, and those of a second colour. */
static void
test_many (void)
{
  cairo_t *cr;
  cairo_surface_t *surface = make_surface (&cr);

  for (int i = 0; i < SIDE; i++)
    {
      cairo_set_source_rgb (cr, i / 255.0, i / 255.0, i / 255.0);
      cairo_rectangle (cr, i, 0, 1, SIDE / 2.0);
      cairo_fill (cr);
      cairo_set_source_rgb (cr, i / 255.0, 0.5, 1.0);
      cairo_rectangle (cr, i, SIDE / 2.0, 1, SIDE / 2.0);
      cairo_fill (cr);
    }
  cairo_destroy (cr);
  g_assert_cmpint (find_difference (surface), >, 0);
  g_assert_cmpint (find_difference (surface), <=, 7);
  cairo_surface_destroy (surface);
}

/* Every colour there is room for, as noise: no palette holds it, and none is changed. */
static void
test_noise (void)
{
  cairo_t *cr;
  cairo_surface_t *surface = make_surface (&cr);
  guint32 state = 20260504;

  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (guint i = 0; i < SIDE * SIDE; i++)
    {
      state = state * 1664525u + 1013904223u;
      ((guint32 *)(gpointer)cairo_image_surface_get_data (surface))[i] = state >> 8;
    }
  cairo_surface_mark_dirty (surface);
  g_assert_cmpint (find_difference (surface), ==, 0);
  cairo_surface_destroy (surface);
}

/* Bytes of a PNG's head: the colour type of its IHDR (PNG 1.2, 4.1.1); 3 has a palette. */
#define COLOUR_TYPE 25

/* A band plot is written two hundred times in a large report: its words and marks must come to a palette. */
static void
test_plot (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("TM_SAMPLE_JOBS"), "pump-bearing-housing.tmjob", NULL);
  GError *error = NULL;
  g_autoptr (TmJob) job = tm_job_from_file (path, NULL, NULL, NULL, &error);
  g_autoptr (TmReportContent) content = NULL;
  g_autoptr (TmBandPlot) plot = NULL;
  g_autoptr (GBytes) png = NULL;

  g_assert_no_error (error);
  content = tm_report_content_new (job);
  plot = tm_band_plot_new (job, &((const TmReportLine *)g_ptr_array_index (content->lines, 0))->judgement,
                           NULL);
  png = tm_picture_of_band_plot (plot, 480, 240, 2.5, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (((const guint8 *)g_bytes_get_data (png, NULL))[COLOUR_TYPE], ==, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/picture/few", test_few);
  g_test_add_func ("/picture/many", test_many);
  g_test_add_func ("/picture/noise", test_noise);
  g_test_add_func ("/picture/plot", test_plot);
  return g_test_run ();
}
