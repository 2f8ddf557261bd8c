/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-section: a bore or a shaft cut along its axis: depth down, size across, its differences enlarged,
 * the limits drawn.
 */

#pragma once

#include <cairo.h>

#include "core-judge.h"
#include "core-model.h"
#include "plot-theme.h"

G_BEGIN_DECLS

typedef struct _TmSectionPlot TmSectionPlot;

/* NULL when the place has no depths to show: fewer than two depths read, or no diameter. */
TmSectionPlot *tm_section_plot_new (const TmJob *job, const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;
void tm_section_plot_free (TmSectionPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmSectionPlot, tm_section_plot_free)
void tm_section_plot_draw (const TmSectionPlot *plot, cairo_t *cr, double width, double height,
                           const TmTheme *theme);
/* In words, translated: sizes from mouth to bottom, taper and its way, how much is exaggerated. */
char *tm_section_plot_describe (const TmSectionPlot *plot) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
