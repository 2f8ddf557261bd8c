/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-study: a gauge study in pictures: the size of each component beside the band, and each piece's
 * readings person by person.
 */

#pragma once

#include <cairo.h>

#include "core-study.h"
#include "plot-theme.h"

G_BEGIN_DECLS

typedef struct _TmStudyPlot TmStudyPlot;

/* What is not complete is not shown: whoever measures stays blind. */
TmStudyPlot *tm_study_plot_new (const TmJob *job, const TmStudy *study,
                                const TmStudyResult *result) G_GNUC_WARN_UNUSED_RESULT;
void tm_study_plot_free (TmStudyPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmStudyPlot, tm_study_plot_free)
/* Bars of six standard deviations: repeatability, people, interaction, the gauge in all, pieces, with
 * their intervals, and the band where there is one. */
void tm_study_plot_draw_parts (const TmStudyPlot *plot, cairo_t *cr, double width, double height,
                               const TmTheme *theme);
/* Readings less the mean of their piece, by piece, one lane a person. */
void tm_study_plot_draw_pieces (const TmStudyPlot *plot, cairo_t *cr, double width, double height,
                                const TmTheme *theme);
char *tm_study_plot_describe_parts (const TmStudyPlot *plot) G_GNUC_WARN_UNUSED_RESULT;
char *tm_study_plot_describe_pieces (const TmStudyPlot *plot) G_GNUC_WARN_UNUSED_RESULT;

/* @value in @unit with three digits that count, without the unit: "0.00254"; "0" for zero. */
char *tm_study_number (double value, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
