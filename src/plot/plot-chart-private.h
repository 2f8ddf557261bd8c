/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-chart-private: what the pictures of a batch hold between their making and their drawing.
 */

#pragma once

#include "plot-chart.h"
#include "plot-envelope.h"
#include "plot-frame.h"

G_BEGIN_DECLS

/* One group: a piece, or several at their middle.  Counts relative to the series' reference; NAN: missing. */
typedef struct {
  double x;               /* index of the piece; half way for groups */
  double mean, low, high; /* low and high of its stations, or of its pieces' */
  guint first, last;      /* indexes of its pieces that were measured */
  guint stretch;          /* 0.. */
  guint8 verdict;
  guint8 point; /* TmPoint */
} TmChartItem;

/* What rules say at one group. */
typedef struct {
  guint item;
  guint rules; /* TM_RULE_BIT */
  guint fresh; /* those that did not speak at the group before: said in words */
} TmChartMark;

/* Groups in a row that share their control limits. */
typedef struct {
  double from, to; /* in pieces from the left edge */
  double lower;    /* NAN: none, at or below zero */
  double centre, upper;
} TmChartRun;

typedef enum {
  TM_BINS_NONE,
  TM_BINS_SPREAD, /* Freedman and Diaconis */
  TM_BINS_COUNT,  /* Sturges: where the middle half are equal */
  TM_BINS_ONE,    /* all equal, or a single value */
} TmBinRule;

typedef struct {
  TmBinRule rule;
  double from, width; /* counts relative to the reference */
  guint n;
  guint *counts;
  guint most;
  guint first, n_shown; /* of the sorted sizes, those that lie on the axis: a slip far off is in no bar */
} TmChartBins;

typedef struct {
  double value; /* counts relative to the reference */
  double z;     /* the normal quantile of its rank */
} TmQuantilePoint;

struct _TmChartPlot {
  const TmBatch *batch;
  guint show;
  char *title;
  char *lower_text, *upper_text;
  TmFrameBand band;
  TmUnit unit;
  guint decimals; /* of the limits */
  guint figures;  /* of what is reckoned from sizes */

  TmChartItem *items;
  guint n_items;
  gboolean gapless;                          /* item i is piece i */
  GArray *outs;                              /* guint: items that are out */
  GArray *events;                            /* TmFrameEvent */
  GArray *location_marks, *dispersion_marks; /* TmChartMark */
  guint location_counts[TM_N_RUN_RULES];     /* of them, those at which a rule speaks */
  guint dispersion_counts[TM_N_RUN_RULES];
  GArray *location_runs, *dispersion_runs; /* TmChartRun */
  TmEnvelope *means, *lows, *highs;
  TmEnvelope *dispersions;
  TmEnvelope *ewma; /* NULL: not shown */
  TmEnvelope *ewma_lower, *ewma_upper;
  TmEnvelope *cusum_high, *cusum_low;

  TmAxis axis;
  gboolean has_axis;
  TmAxis dispersion_axis;
  gboolean has_dispersion;
  gint last;         /* index of the last item that is measured; -1: none */
  gboolean foretold; /* the forecast is drawn */
  double meets;      /* piece index, as x of an item, at which the size meets the guarded limit */
  guint trend_from;  /* index of the piece that the trend begins with */
  TmTrend ahead;     /* the line that meets it; of use when foretold */
  double slots;      /* pieces on the axis */
  double widest;     /* of the numbers at the left, in text sizes */

  double *sorted; /* measured means, rising; owned */
  guint n_sorted;
  TmChartBins bins;
  GArray *quantiles;      /* TmQuantilePoint, rising, thinned */
  double mean, deviation; /* of them; the deviation NAN for fewer than two */
  gboolean has_curve;
  TmFittedShape shape;
};

/* -------- Ahead of drawing -------- */

/* Where the limits of a forecast stand: x of an item from a piece number that counts from 1. */
#define TM_CHART_X(number) ((number)-1.0)

void tm_chart_fill_items (TmChartPlot *plot);
void tm_chart_fill_envelopes (TmChartPlot *plot);
void tm_chart_fill_events (TmChartPlot *plot);
void tm_chart_fill_runs (TmChartPlot *plot);
void tm_chart_choose_axis (TmChartPlot *plot);
void tm_chart_choose_dispersion_axis (TmChartPlot *plot);
void tm_chart_choose_slots (TmChartPlot *plot);
void tm_chart_measure_numbers (TmChartPlot *plot);
void tm_chart_sort (TmChartPlot *plot);
void tm_chart_fill_bins (TmChartPlot *plot);
void tm_chart_fill_quantiles (TmChartPlot *plot);
void tm_chart_fit_shape (TmChartPlot *plot);

/* -------- Names -------- */

double tm_chart_count (const TmChartPlot *plot, double relative); /* on the axis */
char *tm_chart_size_text (const TmChartPlot *plot, double relative) G_GNUC_WARN_UNUSED_RESULT;
char *tm_chart_length_text (const TmChartPlot *plot, double counts) G_GNUC_WARN_UNUSED_RESULT;
/* Serial number of a piece; of one not made yet, how the numbers go on. */
char *tm_chart_piece_name (const TmChartPlot *plot, guint piece) G_GNUC_WARN_UNUSED_RESULT;
/* As above, of the plot in @data: for tm_frame_draw_pieces(). */
char *tm_chart_name_piece_cb (gconstpointer data, guint piece) G_GNUC_WARN_UNUSED_RESULT;
char *tm_chart_item_name (const TmChartPlot *plot, guint item) G_GNUC_WARN_UNUSED_RESULT;
/* First item whose x is at least @x. */
guint tm_chart_find_item (const TmChartPlot *plot, double x);

/* -------- Rules -------- */

/* TmChartMark, of the groups under @n_items; of each rule the number of groups in @counts. */
GArray *tm_chart_collect_marks (const GArray *hits, guint n_items,
                                guint counts[TM_N_RUN_RULES]) G_GNUC_WARN_UNUSED_RESULT;
/* With how often each speaks. */
char *tm_chart_rules_text (guint rules, const guint counts[TM_N_RUN_RULES]) G_GNUC_WARN_UNUSED_RESULT;

/* -------- Run chart -------- */

typedef struct {
  TmFrame frame;
  const TmChartPlot *plot;
  double event_y; /* NAN: no room */
  guint event_rows;
  double lane_top, lane_bottom; /* of the sums; NAN: none */
} TmChartDrawing;

double tm_chart_find_y (const TmChartDrawing *d, double relative);
void tm_chart_place_columns (TmFrame *frame, const TmChartPlot *plot);
void tm_chart_draw_control (TmChartDrawing *d);
/* A line where there is no drift would be taken for one. */
gboolean tm_chart_has_drift (const TmChartPlot *plot);
gboolean tm_chart_shows_trend (const TmChartDrawing *d);
void tm_chart_draw_forecast (TmChartDrawing *d);
void tm_chart_draw_trend_line (TmChartDrawing *d);
void tm_chart_draw_points (const TmChartDrawing *d);
void tm_chart_draw_lane (TmFrame *frame, const TmChartPlot *plot, double top, double bottom);

/* -------- Lines over the pieces -------- */

/* Values of one envelope over the pieces: joined points, or the columns of pixels. */
typedef struct {
  const TmEnvelope *mean, *low, *high; /* low and high may be the mean's own */
  double base;
  double width;
  const TmColour *colour;
  double opacity;
  gboolean dotted;
  gboolean kept; /* runs along the edge where it lies beyond the area, in place of ending there */
} TmChartThread;
gboolean tm_chart_is_dense (const TmFrame *frame, const TmChartPlot *plot);
void tm_chart_draw_thread (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread);
void tm_chart_draw_runs (const TmFrame *frame, const GArray *runs, double base, gboolean centre);

/* -------- Marks and words -------- */

/* Words that stand on a picture already, so that none covers another. */
typedef struct {
  double x, y, width, height;
} TmChartBox;

/* An open square in the text colour about each point that a rule speaks of, with its words where they find
 * room. */
typedef struct {
  TmFrame *frame;
  const TmChartPlot *plot;
  const GArray *marks;
  const guint *counts;          /* of each rule */
  const TmEnvelope *middle;     /* where a point stands */
  const TmEnvelope *low, *high; /* of what is drawn, to keep words clear of it */
  double base;                  /* added to a value before it is placed */
  GArray *boxes;                /* TmChartBox */
  guint n_words;
} TmChartSpeech;
/* Before the marks: no word on the lines of the limits. */
void tm_chart_keep_limits_clear (TmChartSpeech *speech);
void tm_chart_draw_marks (TmChartSpeech *speech);
void tm_chart_draw_square (const TmFrame *frame, double x, double y);
/* FALSE: there is no room for it. */
gboolean tm_chart_draw_say (TmChartSpeech *speech, double x, double y, const char *text);

/* -------- Sizes along the bottom -------- */

extern const TmFittedShape tm_chart_normal; /* mean 0, deviation 1 */
void tm_chart_place_sizes (TmFrame *frame, const TmChartPlot *plot, double widest);
void tm_chart_draw_heading (TmFrame *frame, const char *text);
void tm_chart_draw_ground (TmFrame *frame, const TmChartPlot *plot);
void tm_chart_draw_foot_line (const TmFrame *frame);

G_END_DECLS
