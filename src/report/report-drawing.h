/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-drawing: drawings for whoever shows no pictures itself, as the command line.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* tm_drawing_check_main() of plot-drawing-check.h. */
gboolean tm_report_drawing_main (int argc, char *argv[], int *status);

/* What page @page of @content is, "image/png"…, when it can be drawn; else NULL with @error, one line. */
const char *tm_report_drawing_media (GBytes *content, guint page, GError **error);

/* Most bytes that a drawing may have. */
gsize tm_report_drawing_most (void);

G_END_DECLS
