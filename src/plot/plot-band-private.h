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

/* A cut being planned, in absolute counts; NAN: not known, or there is none. */
typedef struct {
  gboolean shown;
  gboolean grows;        /* metal goes by the size growing: it is gone beyond the upper limit */
  double now, now_u;     /* mean over the stations, and its standard uncertainty */
  double after, after_u; /* the same after the cut */
  double reach_low;      /* of the smallest station after it, and of the largest */
  double reach_high;
  double second, second_u; /* where a second cut would take it, as the next reading would leave it */
  double left, gone;       /* the limits that hold: beyond them there is metal left, or it is gone */
  double mate_lower;       /* where the mate as measured asks for more than the drawing */
  double mate_upper;
  TmCutChances chances;
  double per_mark;                         /* how far one mark of the dial moves the size; 0: unknown */
  double change, next_change;              /* of size, > 0 towards less metal; 0: none */
  char *now_text, *after_text;             /* "24.981 ± 0.004" */
  char *now_short, *after_short;           /* "24.981" */
  char *change_text, *next_text;           /* "0.024", or NULL */
  char *mate_lower_text, *mate_upper_text; /* NULL where there is none */
} TmBandPlan;

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
  TmCut cut;           /* which way the size goes */
  TmBandPlan plan;
  gboolean axis_held; /* as another plot has it, whatever there is to show */
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

/* Chooses the axis anew for all that there is to show, unless it is held (plot-band.c). */
void tm_band_plot_choose_axis (TmBandPlot *plot);

/* The sizes of the plan that the axis has to reach, as far as the band stays readable; FALSE: none. */
gboolean tm_band_plan_range (const TmBandPlot *plot, double *low, double *high);
/* The plan in words, after a full stop; nothing where none is shown. */
void tm_band_plan_describe (const TmBandPlot *plot, GString *out);
void tm_band_plan_clear (TmBandPlan *plan);

/* Where the proven zone begins and ends, in counts; -INFINITY and INFINITY on an open side.
 * FALSE when nothing can be proven in. */
gboolean tm_band_plot_proven (const TmBandPlot *plot, double *low, double *high);

G_END_DECLS
