/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <png.h>
#include <string.h>

#include "report-error.h"

#define MOST_COLOURS 256
#define SLOTS        2048 /* a power of two, with room to spare */

typedef struct {
  guint32 mask;         /* the bits of a colour that tell it from others */
  guint32 slots[SLOTS]; /* masked colour, with OCCUPIED */
  guint8 at[SLOTS];     /* its place in the palette */
  guint n;
  guint8 colours[3 * MOST_COLOURS]; /* red, green, blue */
} Palette;

#define OCCUPIED 0x80000000u

/* The place of @colour, which joins the palette when it is new; -1: there is no more room. */
static int
find_colour (Palette *palette, guint32 colour)
{
  const guint32 key = (colour & palette->mask) | OCCUPIED;
  guint slot = (key * 2654435761u) >> 21;

  while (palette->slots[slot] != 0 && palette->slots[slot] != key)
    slot = (slot + 1) % SLOTS;
  if (palette->slots[slot] == key)
    return palette->at[slot];
  if (palette->n == MOST_COLOURS)
    return -1;
  palette->slots[slot] = key;
  palette->at[slot] = (guint8)palette->n;
  palette->colours[3 * palette->n] = (guint8)(colour >> 16);
  palette->colours[3 * palette->n + 1] = (guint8)(colour >> 8);
  palette->colours[3 * palette->n + 2] = (guint8)colour;
  return (int)palette->n++;
}

/* FALSE: too many colours. */
static gboolean
index_row (Palette *palette, const guint32 *pixels, guint width, guint8 *out)
{
  guint32 last = 0;
  int at = -1;

  for (guint x = 0; x < width; x++)
    {
      const guint32 colour = pixels[x] & 0xFFFFFFu;

      if (at < 0 || colour != last)
        {
          at = find_colour (palette, colour);
          if (at < 0)
            return FALSE;
          last = colour;
        }
      out[x] = (guint8)at;
    }
  return TRUE;
}

static gboolean
index_surface (cairo_surface_t *surface, Palette *palette, guint8 *out)
{
  const guint width = (guint)cairo_image_surface_get_width (surface);
  const guint height = (guint)cairo_image_surface_get_height (surface);
  const gsize stride = (gsize)cairo_image_surface_get_stride (surface);
  const unsigned char *data = cairo_image_surface_get_data (surface);

  for (guint y = 0; y < height; y++)
    if (!index_row (palette, (const guint32 *)(gconstpointer)(data + y * stride), width,
                    out + (gsize)y * width))
      return FALSE;
  return TRUE;
}

/* The simplest of the library's ways, which reports errors by its return value. */
static GBytes *
pack (cairo_surface_t *surface, const Palette *palette, const guint8 *indexes)
{
  png_image image = { .version = PNG_IMAGE_VERSION };
  png_alloc_size_t length;
  guint8 *bytes;

  image.width = (png_uint_32)cairo_image_surface_get_width (surface);
  image.height = (png_uint_32)cairo_image_surface_get_height (surface);
  image.format = PNG_FORMAT_RGB_COLORMAP;
  image.flags = PNG_IMAGE_FLAG_FAST;
  image.colormap_entries = palette->n;
  length = PNG_IMAGE_PNG_SIZE_MAX (image);
  bytes = g_malloc (length);
  if (png_image_write_to_memory (&image, bytes, &length, 0, indexes, 0, palette->colours) == 0)
    {
      g_free (bytes);
      return NULL;
    }
  return g_bytes_new_take (g_realloc (bytes, length), length);
}

static cairo_status_t
append_cb (void *closure, const unsigned char *bytes, unsigned int length)
{
  g_byte_array_append (closure, bytes, length);
  return CAIRO_STATUS_SUCCESS;
}

/* A photograph: the palette that holds it would show. */
static GBytes *
pack_true (cairo_surface_t *surface)
{
  g_autoptr (GByteArray) png = g_byte_array_new ();

  if (cairo_surface_write_to_png_stream (surface, append_cb, png) != CAIRO_STATUS_SUCCESS)
    return NULL;
  return g_byte_array_free_to_bytes (g_steal_pointer (&png));
}

GBytes *
tm_picture_to_png (cairo_surface_t *surface)
{
  static const guint32 masks[] = { 0xFFFFFF, 0xFEFEFE, 0xFCFCFC, 0xF8F8F8, 0xF0F0F0 };
  g_autofree Palette *palette = g_new (Palette, 1);
  g_autofree guint8 *indexes = NULL;

  g_return_val_if_fail (cairo_image_surface_get_format (surface) == CAIRO_FORMAT_RGB24, NULL);
  cairo_surface_flush (surface);
  indexes = g_malloc ((gsize)cairo_image_surface_get_width (surface)
                      * (gsize)cairo_image_surface_get_height (surface));
  for (gsize i = 0; i < G_N_ELEMENTS (masks); i++)
    {
      memset (palette, 0, sizeof *palette);
      palette->mask = masks[i];
      if (index_surface (surface, palette, indexes))
        return pack (surface, palette, indexes);
    }
  return pack_true (surface);
}

static cairo_surface_t *
draw (const TmBandPlot *plot, double width, double height, double scale)
{
  const TmTheme *theme = tm_theme_paper ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)ceil (width * scale),
                                                         (int)ceil (height * scale));
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, theme->surface.red, theme->surface.green, theme->surface.blue);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  tm_band_plot_draw (plot, cr, width, height, theme);
  if (cairo_status (cr) != CAIRO_STATUS_SUCCESS)
    g_clear_pointer (&surface, cairo_surface_destroy);
  cairo_destroy (cr);
  return surface;
}

GBytes *
tm_picture_of_band_plot (const TmBandPlot *plot, double width, double height, double scale, GError **error)
{
  cairo_surface_t *surface = draw (plot, width, height, scale);
  GBytes *png = surface != NULL ? tm_picture_to_png (surface) : NULL;

  g_clear_pointer (&surface, cairo_surface_destroy);
  if (png == NULL)
    g_set_error_literal (error, TM_REPORT_ERROR, TM_REPORT_ERROR_FAILED, _ ("A picture could not be drawn"));
  return png;
}
