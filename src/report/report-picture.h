/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-picture: a drawn surface as a PNG file with a palette: a plot has few colours, and so it takes a
 * third of the time and of the room that true colours need.
 */

#pragma once

#include <cairo.h>
#include <glib.h>

#include "plot-band.h"

G_BEGIN_DECLS

/* The plot on paper, @width × @height of its own units at @scale pixels each; free the bytes.  NULL with a
 * TM_REPORT_ERROR where it cannot be drawn. */
GBytes *tm_picture_of_band_plot (const TmBandPlot *plot, double width, double height, double scale,
                                 GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* @surface: an image of CAIRO_FORMAT_RGB24.  Where it has more than 256 colours, those that no eye tells
 * apart become one; where it still has, as a photograph, it is packed in true colours.  NULL where it cannot
 * be packed. */
GBytes *tm_picture_to_png (cairo_surface_t *surface) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
