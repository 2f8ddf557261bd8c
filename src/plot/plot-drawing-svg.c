/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pages in SVG.  They are given no address of their own, so that librsvg follows no reference out of them
 * (of pictures only those in the file itself), and its limits of depth and of uses stay on.
 */

#include "plot-drawing-private.h"

#include <gio/gio.h>
#include <librsvg/rsvg.h>
#include <string.h>

#define POINTS_PER_PIXEL 0.75 /* CSS: 96 pixels an inch */

static gboolean
draw_svg (gpointer data, cairo_t *cr, double width, double height)
{
  const RsvgRectangle room = { 0.0, 0.0, width, height };

  return rsvg_handle_render_document (data, cr, &room, NULL);
}

/* In points: its width and height, else its view box. */
static gboolean
find_size (RsvgHandle *handle, double *width, double *height)
{
  RsvgRectangle box = { 0 };
  gboolean has_width, has_height, has_box;
  RsvgLength across, down;

  rsvg_handle_set_dpi (handle, 96.0);
  if (!rsvg_handle_get_intrinsic_size_in_pixels (handle, width, height))
    {
      rsvg_handle_get_intrinsic_dimensions (handle, &has_width, &across, &has_height, &down, &has_box, &box);
      if (!has_box)
        return FALSE;
      *width = box.width;
      *height = box.height;
    }
  *width *= POINTS_PER_PIXEL;
  *height *= POINTS_PER_PIXEL;
  return TRUE;
}

/* What the parser says of it, from the line on. */
static void
fail_damaged (const GError *problem, GError **error)
{
  const char *line = strstr (problem->message, "line ");
  g_autofree char *reason = g_strdup (line != NULL ? line : problem->message);

  g_strdelimit (reason, "\n", ' ');
  tm_drawing_fail (error, TM_PLOT_ERROR_DAMAGED, _ ("the SVG cannot be read (%s); save it again"),
                   g_strstrip (reason));
}

gboolean
tm_drawing_open_svg (TmDrawingPage *page, GBytes *content, GError **error)
{
  g_autoptr (GInputStream) stream = g_memory_input_stream_new_from_bytes (content);
  g_autoptr (GError) problem = NULL;
  RsvgHandle *handle
      = rsvg_handle_new_from_stream_sync (stream, NULL, RSVG_HANDLE_FLAGS_NONE, NULL, &problem);
  double width, height;

  if (handle == NULL)
    {
      fail_damaged (problem, error);
      return FALSE;
    }
  page->data = handle;
  page->free_data = g_object_unref;
  page->draw = draw_svg;
  if (find_size (handle, &width, &height))
    return tm_drawing_set_size (page, width, height, error);
  tm_drawing_fail (error, TM_PLOT_ERROR_DAMAGED,
                   _ ("the SVG says neither width and height nor a view box; save it with its page size"));
  return FALSE;
}
