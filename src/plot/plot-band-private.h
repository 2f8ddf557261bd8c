/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-private: what a band plot holds between its making, its drawing and its words.
 */

#pragma once

#include "plot-axis.h"
#include "plot-band.h"
#include "plot-mark.h"

G_BEGIN_DECLS

/* One station's row.  Values in counts. */
typedef struct {
  char *label;
  gboolean read;
  double at;          /* NAN for pass/fail */
  double uncertainty; /* expanded; NAN when unknown */
  char *value;        /* printed */
  guint repeats;
  TmVerdict verdict;
  TmPoint point;  /* where an `out` arrow points */
  gboolean typed; /* typed and not recorded: the next two hold */
  double typed_at;
  char *typed_value;
  TmVerdict typed_verdict;
  TmPoint typed_point;
} TmBandRow;

typedef struct {
  double at;
  gboolean went;
  char *label; /* "25.000 went" */
} TmBandPin;

struct _TmBandPlot {
  char *title; /* the feature in words */
  TmUnit unit;
  TmLimits limits;
  char *lower_text, *upper_text; /* "" when there is none */
  gboolean guarded;              /* the guard is known */
  double guard;
  gboolean provable; /* the method can prove some value in */
  gboolean attribute;
  TmAxis axis;
  gboolean has_axis; /* FALSE: pass/fail, or neither limits nor values */
  guint decimals;    /* of the limits */
  guint fineness;    /* most decimals of any reading */
  GArray *rows;      /* TmBandRow */
  GArray *pins;      /* TmBandPin */
  gboolean has_mate;
  gboolean mate_has_lower, mate_has_upper;
  double mate_lower, mate_upper;
  char *mate_text;     /* "25.022 … 25.035" */
  char *fit_by_limits; /* "press 0.001 to 0.035 mm by limits", or NULL */
  char *fit_measured;  /* the same as measured, or NULL */
};

/* Fills the mate and the fit from the feature (plot-band-mate.c). */
void tm_band_plot_add_mate (TmBandPlot *plot, const TmFeature *feature, const TmJudgement *judgement);

/* Where the proven zone begins and ends, in counts; -INFINITY and INFINITY on an open side.
 * FALSE when nothing can be proven in. */
gboolean tm_band_plot_proven (const TmBandPlot *plot, double *low, double *high);

G_END_DECLS
