/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-error: what can keep a drawing from being shown.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TM_PLOT_ERROR (tm_plot_error_quark ())
GQuark tm_plot_error_quark (void);

/* Each comes with one line that names the thing and the mend, translated. */
typedef enum {
  TM_PLOT_ERROR_UNKNOWN_MEDIA, /* neither PNG, JPEG, SVG nor PDF; or nothing at all */
  TM_PLOT_ERROR_DAMAGED,       /* is one of them, and cannot be read */
  TM_PLOT_ERROR_NO_PAGE,       /* has no such page, or none */
  TM_PLOT_ERROR_LOCKED,        /* wants a password */
  TM_PLOT_ERROR_TOO_LARGE,     /* bytes, pixels or points */
  TM_PLOT_ERROR_TOO_MUCH,      /* takes more time or memory than a drawing may */
  TM_PLOT_ERROR_NOT_CHECKED,   /* the check that comes before could not be made */
} TmPlotError;

G_END_DECLS
