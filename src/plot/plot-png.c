/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band.h"

/* Larger pictures than this a side are refused: cairo itself stops at 32767. */
#define MOST_PIXELS 16384.0

static cairo_status_t
append_cb (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_status_t
draw_png (const TmBandPlot *plot, double width, double height, double scale, const TmTheme *theme,
          GByteArray *out)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)ceil (width * scale),
                                                         (int)ceil (height * scale));
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  cairo_set_source_rgb (cr, theme->surface.red, theme->surface.green, theme->surface.blue);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  tm_band_plot_draw (plot, cr, width, height, theme);
  status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (surface, append_cb, out);
  cairo_surface_destroy (surface);
  return status;
}

GBytes *
tm_band_plot_to_png (const TmBandPlot *plot, double width, double height, double scale, const TmTheme *theme,
                     GError **error)
{
  g_autoptr (GByteArray) out = g_byte_array_new ();
  cairo_status_t status;

  g_return_val_if_fail (plot != NULL && theme != NULL, NULL);
  if (!(width * scale >= 1.0) || !(height * scale >= 1.0) || width * scale > MOST_PIXELS
      || height * scale > MOST_PIXELS)
    {
      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL,
                   _ ("a picture of %g × %g pixels cannot be made; choose 1 to %g a side"), width * scale,
                   height * scale, MOST_PIXELS);
      return NULL;
    }
  status = draw_png (plot, width, height, scale, theme, out);
  if (status != CAIRO_STATUS_SUCCESS)
    {
      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED, _ ("the picture could not be drawn: %s"),
                   cairo_status_to_string (status));
      return NULL;
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&out));
}
