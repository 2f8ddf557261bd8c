/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-private: what a band plot holds between its making, its drawing and its words.
 */

#pragma once

#include "plot-axis.h"
#include "plot-band.h"
#include "plot-mark.h"

G_BEGIN_DECLS

/* One row: a station, or under it one of the methods that read it.  Values in counts. */
typedef struct {
  char *label;
  gboolean part;     /* a method by itself, under the station that it read */
  gboolean together; /* what all methods, or pins and readings, say together */
  gboolean mating;   /* the mating size that pins give */
  gboolean apart;    /* this method stands apart from the others */
  gboolean cannot;   /* this method alone cannot settle the band */
  gboolean read;
  double at;          /* NAN for pass/fail */
  double uncertainty; /* expanded; NAN when unknown */
  double low, high;   /* of the whisker; NAN when unknown */
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

/* A pin as it truly may be. */
typedef struct {
  double low, high;
  gboolean went;
  gboolean planned; /* not tried: to be pulled; `went` tells which end it would close */
  char *label;      /* "25.000 went" */
  char *words;      /* "Pin 25.000 X minus went, truly 24.9990 to 25.0000" */
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
  gboolean has_axis;                   /* FALSE: pass/fail, or neither limits nor values */
  guint decimals;                      /* of the limits */
  guint fineness;                      /* most decimals of any reading */
  GArray *rows;                        /* TmBandRow */
  GArray *pins;                        /* TmBandPin */
  double open_low_from, open_low_to;   /* where the pins leave the size open beyond a limit; NAN: nowhere */
  double open_high_from, open_high_to; /* INFINITY and -INFINITY: no pin bounds it */
  char *open_words;                    /* the same in words, or NULL */
  gboolean has_mate;
  gboolean mate_has_lower, mate_has_upper;
  double mate_lower, mate_upper;
  char *mate_text;     /* "25.022 … 25.035" */
  char *fit_by_limits; /* "press 0.001 to 0.035 mm by limits", or NULL */
  char *fit_measured;  /* the same as measured, or NULL */
};

/* Fills the mate and the fit from the feature (plot-band-mate.c). */
void tm_band_plot_add_mate (TmBandPlot *plot, const TmFeature *feature, const TmJudgement *judgement);

/* Appends, under the row of @station, a row for each method where several read it (plot-band-methods.c). */
void tm_band_plot_add_parts (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement,
                             const char *station);

/* Pins tried, pins to pull, what they leave open, and the size that they and the readings give together
 * (plot-band-pins.c). */
void tm_band_plot_add_pins (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement);
void tm_band_pin_clear (gpointer pin);

/* Where the proven zone begins and ends, in counts; -INFINITY and INFINITY on an open side.
 * FALSE when nothing can be proven in. */
gboolean tm_band_plot_proven (const TmBandPlot *plot, double *low, double *high);

G_END_DECLS
