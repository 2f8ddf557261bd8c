/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-clock: a bore or a shaft seen along its axis: diameters at the clock directions they were read
 * in, their differences enlarged, the limits as circles, the oval that fits best; one ring a depth.
 */

#pragma once

#include <cairo.h>

#include "core-judge.h"
#include "core-model.h"
#include "plot-theme.h"

G_BEGIN_DECLS

typedef struct _TmClockPlot TmClockPlot;

/* NULL unless some depth was read in two directions distinct modulo 180°. */
TmClockPlot *tm_clock_plot_new (const TmJob *job, const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;
void tm_clock_plot_free (TmClockPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmClockPlot, tm_clock_plot_free)
void tm_clock_plot_draw (const TmClockPlot *plot, cairo_t *cr, double width, double height,
                         const TmTheme *theme);
/* In words, translated: each direction's size, the spread, the oval and its direction, what the gauge
 * cannot see. */
char *tm_clock_plot_describe (const TmClockPlot *plot) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
