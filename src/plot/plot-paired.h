/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-paired: two methods on the same pieces: their difference against their mean, with the mean
 * difference and the limits of agreement (Bland & Altman, Lancet 1986).
 */

#pragma once

#include <cairo.h>

#include "core-study.h"
#include "plot-theme.h"

G_BEGIN_DECLS

typedef struct _TmPairedPlot TmPairedPlot;

/* @a and @b, n of each, in @unit, are copied. */
TmPairedPlot *tm_paired_plot_new (const double *a, const double *b, guint n, const TmPaired *paired,
                                  TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;
void tm_paired_plot_free (TmPairedPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmPairedPlot, tm_paired_plot_free)
void tm_paired_plot_draw (const TmPairedPlot *plot, cairo_t *cr, double width, double height,
                          const TmTheme *theme);
char *tm_paired_plot_describe (const TmPairedPlot *plot) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
