/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-drawing-private: what the kinds of file share.
 */

#pragma once

#include "plot-drawing.h"

G_BEGIN_DECLS

struct _TmDrawingPage {
  gatomicrefcount refs;
  GMutex lock; /* the libraries draw one page on one thread at a time */
  double width, height;
  gboolean (*draw) (gpointer data, cairo_t *cr, double width, double height);
  gpointer data;
  GDestroyNotify free_data;
};

typedef enum {
  TM_DRAWING_UNKNOWN,
  TM_DRAWING_PNG,
  TM_DRAWING_JPEG,
  TM_DRAWING_SVG,
  TM_DRAWING_PDF,
} TmDrawingMedia;

/* By the first bytes. */
TmDrawingMedia tm_drawing_media (GBytes *content);

/* Each sets size, drawing and data of @page, whose lock is not held, or fails. */
gboolean tm_drawing_open_png (TmDrawingPage *page, GBytes *content, GError **error);
gboolean tm_drawing_open_jpeg (TmDrawingPage *page, GBytes *content, GError **error);
gboolean tm_drawing_open_svg (TmDrawingPage *page, GBytes *content, GError **error);
gboolean tm_drawing_open_pdf (TmDrawingPage *page, GBytes *content, guint number, GError **error);

/* 0 with @error when it cannot be read, or has none. */
guint tm_drawing_count_pdf_pages (GBytes *content, GError **error);

/* Opens without a check before: what the check itself does. */
TmDrawingPage *tm_drawing_page_open_unchecked (GBytes *content, guint page,
                                               GError **error) G_GNUC_WARN_UNUSED_RESULT;
const char *tm_drawing_look_unchecked (GBytes *content, guint *n_pages, GError **error);

/* FALSE with @error when a side is no size for a page. */
gboolean tm_drawing_set_size (TmDrawingPage *page, double width, double height, GError **error);

/* FALSE with @error when a picture of so many pixels is none, or too large. */
gboolean tm_drawing_pixels_fit (guint width, guint height, GError **error);

/* What the head of a picture says of its size on paper.  0: nothing. */
typedef struct {
  guint width, height; /* pixels */
  double across, down; /* pixels an inch */
  guint components;    /* of JPEG */
  guint orientation;   /* 1..8 as Exif counts them; 1: upright */
} TmPictureHead;

gboolean tm_drawing_read_png_head (GBytes *content, TmPictureHead *head, GError **error);
gboolean tm_drawing_read_jpeg_head (GBytes *content, TmPictureHead *head, GError **error);

/* Makes @page a picture.  Takes @surface. */
gboolean tm_drawing_take_picture (TmDrawingPage *page, cairo_surface_t *surface, const TmPictureHead *head,
                                  GError **error);

void tm_drawing_fail (GError **error, TmPlotError code, const char *format, ...) G_GNUC_PRINTF (3, 4);

G_END_DECLS
