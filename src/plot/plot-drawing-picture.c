/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pages that are pictures: PNG and JPEG.  The head is read first, so that one that claims a billion pixels
 * is refused before memory is asked for.  Heads: ISO/IEC 15948 (PNG, IHDR and pHYs), ITU-T T.81 annex B
 * (JPEG markers), ITU-T T.871 (JFIF density).
 */

#include "plot-drawing-private.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <string.h>

/* Where a picture says no resolution, and what any scanner or program may say, in pixels an inch. */
#define USUAL_RESOLUTION 96.0
#define LEAST_RESOLUTION 30.0
#define MOST_RESOLUTION  4800.0

#define MM_PER_INCH 25.4
#define PNG_HEAD    33 /* signature and IHDR with its length, name and sum */

static guint
read_be16 (const guchar *data)
{
  return (guint)data[0] << 8 | data[1];
}

static guint
read_be32 (const guchar *data)
{
  return read_be16 (data) << 16 | read_be16 (data + 2);
}

static gboolean
fail_damaged (GError **error)
{
  tm_drawing_fail (error, TM_PLOT_ERROR_DAMAGED,
                   _ ("the picture is damaged or cut off; save or scan the drawing again"));
  return FALSE;
}

gboolean
tm_drawing_pixels_fit (guint width, guint height, GError **error)
{
  if (width == 0 || height == 0)
    return fail_damaged (error);
  if (width <= 32767 && height <= 32767 && width * height <= TM_DRAWING_MAX_PIXELS)
    return TRUE;
  tm_drawing_fail (error, TM_PLOT_ERROR_TOO_LARGE,
                   _ ("the picture claims %u × %u pixels; scan it at a lower resolution, at most %u million "
                      "pixels in all"),
                   width, height, TM_DRAWING_MAX_PIXELS / 1000000);
  return FALSE;
}

/* -------- The head of a PNG -------- */

static void
read_png_density (const guchar *data, gsize length, TmPictureHead *head)
{
  for (gsize at = PNG_HEAD; at + 8 <= length;)
    {
      const gsize size = read_be32 (data + at);

      if (memcmp (data + at + 4, "IDAT", 4) == 0 || size > length - at - 8)
        return;
      if (memcmp (data + at + 4, "pHYs", 4) == 0 && size == 9 && data[at + 16] == 1)
        {
          head->across = (double)read_be32 (data + at + 8) * MM_PER_INCH / 1000.0;
          head->down = (double)read_be32 (data + at + 12) * MM_PER_INCH / 1000.0;
          return;
        }
      at += MIN (size + 12, length - at);
    }
}

gboolean
tm_drawing_read_png_head (GBytes *content, TmPictureHead *head, GError **error)
{
  gsize length;
  const guchar *data = g_bytes_get_data (content, &length);

  *head = (TmPictureHead) { .orientation = 1 };
  if (length < PNG_HEAD || memcmp (data + 12, "IHDR", 4) != 0)
    return fail_damaged (error);
  head->width = read_be32 (data + 16);
  head->height = read_be32 (data + 20);
  read_png_density (data, length, head);
  return tm_drawing_pixels_fit (head->width, head->height, error);
}

/* -------- The head of a JPEG -------- */

/* The Exif orientation in @data, the body of an APP1 segment; 1 where there is none (tag 0x0112 of the
 * first directory, TIFF 6.0). */
static guint
read_exif_orientation (const guchar *data, gsize length)
{
  const guchar *tiff = data + 6;
  gboolean little;
  gsize at, n;

#define U16(p) (little ? (guint)((p)[1]) << 8 | (p)[0] : read_be16 (p))
#define U32(p) (little ? U16 ((p) + 2) << 16 | U16 (p) : read_be32 (p))
  if (length < 22 || memcmp (data, "Exif\0\0", 6) != 0)
    return 1;
  length -= 6;
  little = tiff[0] == 'I';
  at = U32 (tiff + 4);
  if (at > length - 2)
    return 1;
  n = U16 (tiff + at);
  for (at += 2; n > 0 && at + 12 <= length; n--, at += 12)
    {
      const guint value = U16 (tiff + at + 8);

      if (U16 (tiff + at) == 0x0112)
        return value >= 1 && value <= 8 ? value : 1;
    }
  return 1;
#undef U16
#undef U32
}

static void
read_jfif_density (const guchar *data, gsize length, TmPictureHead *head)
{
  double factor;

  if (length < 12 || memcmp (data, "JFIF", 5) != 0 || data[7] < 1 || data[7] > 2)
    return;
  factor = data[7] == 2 ? MM_PER_INCH / 10.0 : 1.0;
  head->across = (double)read_be16 (data + 8) * factor;
  head->down = (double)read_be16 (data + 10) * factor;
}

/* The frame headers: C0 to CF without the tables among them. */
static gboolean
is_frame (guchar marker)
{
  return marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
}

/* TRUE at the frame header, which ends the search. */
static gboolean
take_segment (guchar marker, const guchar *body, gsize length, TmPictureHead *head)
{
  if (marker == 0xe0)
    read_jfif_density (body, length, head);
  else if (marker == 0xe1 && head->orientation == 1)
    head->orientation = read_exif_orientation (body, length);
  else if (is_frame (marker) && length >= 6)
    {
      head->height = read_be16 (body + 1);
      head->width = read_be16 (body + 3);
      head->components = body[5];
      return TRUE;
    }
  return FALSE;
}

gboolean
tm_drawing_read_jpeg_head (GBytes *content, TmPictureHead *head, GError **error)
{
  gsize length;
  const guchar *data = g_bytes_get_data (content, &length);

  *head = (TmPictureHead) { .orientation = 1 };
  for (gsize at = 2; at + 4 <= length && data[at] == 0xff;)
    {
      const guchar marker = data[at + 1];
      gsize size;

      if (marker == 0xff) /* fill */
        {
          at++;
          continue;
        }
      size = read_be16 (data + at + 2);
      if (size < 2 || size > length - at - 2)
        break;
      if (take_segment (marker, data + at + 4, size - 2, head))
        return tm_drawing_pixels_fit (head->width, head->height, error);
      at += 2 + size;
    }
  return fail_damaged (error);
}

/* -------- The page -------- */

static gboolean
draw_picture (gpointer data, cairo_t *cr, double width, double height)
{
  cairo_surface_t *surface = data;

  cairo_scale (cr, width / cairo_image_surface_get_width (surface),
               height / cairo_image_surface_get_height (surface));
  cairo_set_source_surface (cr, surface, 0.0, 0.0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_GOOD);
  cairo_paint (cr);
  return TRUE;
}

static double
choose_resolution (double said)
{
  return said >= LEAST_RESOLUTION && said <= MOST_RESOLUTION ? said : USUAL_RESOLUTION;
}

gboolean
tm_drawing_take_picture (TmDrawingPage *page, cairo_surface_t *surface, const TmPictureHead *head,
                         GError **error)
{
  const gboolean turned = head->orientation >= 5;
  const double across = choose_resolution (turned ? head->down : head->across);
  const double down = choose_resolution (turned ? head->across : head->down);

  page->data = surface;
  page->free_data = (GDestroyNotify)cairo_surface_destroy;
  page->draw = draw_picture;
  return tm_drawing_set_size (page, MAX (1.0, cairo_image_surface_get_width (surface) * 72.0 / across),
                              MAX (1.0, cairo_image_surface_get_height (surface) * 72.0 / down), error);
}

typedef struct {
  const guchar *data;
  gsize left;
} Source;

static cairo_status_t
read_source (void *closure, unsigned char *data, unsigned int length)
{
  Source *source = closure;

  if (length > source->left)
    return CAIRO_STATUS_READ_ERROR;
  memcpy (data, source->data, length);
  source->data += length;
  source->left -= length;
  return CAIRO_STATUS_SUCCESS;
}

gboolean
tm_drawing_open_png (TmDrawingPage *page, GBytes *content, GError **error)
{
  TmPictureHead head;
  Source source = { NULL, 0 };
  cairo_surface_t *surface;

  if (!tm_drawing_read_png_head (content, &head, error))
    return FALSE;
  source.data = g_bytes_get_data (content, &source.left);
  surface = cairo_image_surface_create_from_png_stream (read_source, &source);
  if (cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS)
    return tm_drawing_take_picture (page, surface, &head, error);
  cairo_surface_destroy (surface);
  return fail_damaged (error);
}

/* -------- JPEG -------- */

static void
copy_row (const guchar *from, guint32 *to, guint width, guint channels)
{
  for (guint x = 0; x < width; x++, from += channels)
    to[x] = (guint32)from[0] << 16 | (guint32)from[1] << 8 | from[2];
}

static cairo_surface_t *
copy_pixels (const GdkPixbuf *pixels)
{
  const int width = gdk_pixbuf_get_width (pixels), height = gdk_pixbuf_get_height (pixels);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  const guchar *from = gdk_pixbuf_read_pixels (pixels);
  guchar *to = cairo_image_surface_get_data (surface);

  if (to == NULL)
    return surface;
  for (int y = 0; y < height; y++)
    copy_row (from + (gsize)y * (gsize)gdk_pixbuf_get_rowstride (pixels),
              (guint32 *)(void *)(to + (gsize)y * (gsize)cairo_image_surface_get_stride (surface)),
              (guint)width, (guint)gdk_pixbuf_get_n_channels (pixels));
  cairo_surface_mark_dirty (surface);
  return surface;
}

/* Upright, as its Exif orientation asks. */
static GdkPixbuf *
decode_jpeg (GBytes *content)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new_with_type ("jpeg", NULL);
  GdkPixbuf *pixels;
  gboolean read, closed;

  if (loader == NULL)
    return NULL;
  read = gdk_pixbuf_loader_write_bytes (loader, content, NULL);
  closed = gdk_pixbuf_loader_close (loader, NULL);
  pixels = gdk_pixbuf_loader_get_pixbuf (loader);
  return read && closed && pixels != NULL ? gdk_pixbuf_apply_embedded_orientation (pixels) : NULL;
}

/* A surface that keeps it as it is takes the file's own bytes; not of inks, which are told apart badly. */
static void
attach_bytes (cairo_surface_t *surface, GBytes *content, const TmPictureHead *head)
{
  gsize length;
  const guchar *data = g_bytes_get_data (content, &length);

  if (head->orientation != 1 || (head->components != 1 && head->components != 3))
    return;
  if (cairo_surface_set_mime_data (surface, CAIRO_MIME_TYPE_JPEG, data, length,
                                   (cairo_destroy_func_t)g_bytes_unref, g_bytes_ref (content))
      != CAIRO_STATUS_SUCCESS)
    g_bytes_unref (content);
}

gboolean
tm_drawing_open_jpeg (TmDrawingPage *page, GBytes *content, GError **error)
{
  g_autoptr (GdkPixbuf) pixels = NULL;
  TmPictureHead head;
  cairo_surface_t *surface;

  if (!tm_drawing_read_jpeg_head (content, &head, error))
    return FALSE;
  pixels = decode_jpeg (content);
  if (pixels == NULL)
    return fail_damaged (error);
  surface = copy_pixels (pixels);
  if (cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    {
      cairo_surface_destroy (surface);
      tm_drawing_fail (error, TM_PLOT_ERROR_TOO_MUCH,
                       _ ("there is no memory for the picture; save it with fewer pixels"));
      return FALSE;
    }
  attach_bytes (surface, content, &head);
  return tm_drawing_take_picture (page, surface, &head, error);
}
