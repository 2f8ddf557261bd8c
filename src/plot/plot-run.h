/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-run: the plain run chart of one feature: its sizes over the pieces, with limits.
 */

#pragma once

#include <cairo.h>

#include "core-model.h"
#include "plot-theme.h"

G_BEGIN_DECLS

typedef struct _TmRunPlot TmRunPlot;

/* Mean of stations per piece and place, whisker from smallest to largest, events as lines. */
TmRunPlot *tm_run_plot_new (const TmJob *job, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;
void tm_run_plot_free (TmRunPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmRunPlot, tm_run_plot_free)

void tm_run_plot_draw (const TmRunPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme);

char *tm_run_plot_describe (const TmRunPlot *plot) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
