/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-series: the sizes of one place of one feature over the pieces of a job, in the order made, with the
 * events between them.
 */

#pragma once

#include "core-judge.h"
#include "core-model.h"

G_BEGIN_DECLS

/* One piece.  Sizes are counts relative to the series' reference; NAN: not measured, or bounded by pins
 * alone, or judged by pass and fail: such a piece has a verdict and no size. */
typedef struct {
  const TmPiece *piece;
  double mean;              /* over its stations */
  double smallest, largest; /* of its stations */
  TmVerdict verdict;
  TmSide side;
  double probability_in; /* NAN: unknown */
  gboolean due;          /* to be measured by the feature's plan */
} TmSeriesPoint;

/* An event, and the piece that it comes before. */
typedef struct {
  const TmEvent *event;
  guint before;    /* index of the piece; n_points: after the last */
  gboolean resets; /* begins a new stretch: a tool, an offset, a lot; a note of another kind does not */
} TmSeriesEvent;

typedef struct {
  const TmFeature *feature;
  guint place;
  gint64 reference;      /* nominal, else the middle of the limits, else the first size; 0 of a zero-bounded
                          * feature */
  TmSeriesPoint *points; /* one a piece of the job; owned */
  guint n_points;
  guint n_measured;
  TmSeriesEvent *events; /* owned */
  guint n_events;
  guint *breaks; /* indexes of the pieces that begin a stretch, rising, without 0; owned */
  guint n_breaks;
  TmLimits limits;      /* of the feature, exact; a position's without its bonus, which differs by piece */
  double lower, upper;  /* the same, relative to the reference; -INFINITY, INFINITY: none, as zero is */
  double guard;         /* of a verdict by the feature's method, else by that of the newest size, counts; 0:
                         * none */
  double target;        /* relative: the middle of both limits, for the nominal of an H or h class is a limit
                         * itself; of one limit the nominal where the guard leaves it in; NAN: none, as of a
                         * zero-bounded feature */
  double repeatability; /* standard deviation of repeated measuring of one piece's mean, counts: of the
                         * method, over as many readings as a piece has on average; NAN: unknown */
  double rounding;      /* standard deviation that reading in steps leaves in a piece's mean, counts: of the
                         * gauge's resolution, where none is stated of the step that all sizes have in common */
} TmSeries;

/* Judges every piece once: slow for a large job, so off the main loop. */
void tm_series_init (TmSeries *series, const TmJob *job, const TmFeature *feature, guint place);
void tm_series_clear (TmSeries *series);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmSeries, tm_series_clear)

/* Index of the first piece of the stretch that piece @at is in; and of the piece after its last. */
guint tm_series_stretch_start (const TmSeries *series, guint at);
guint tm_series_stretch_end (const TmSeries *series, guint at);

/* TRUE where the event begins a new stretch of that feature: of a kind that resets, for all features or for
 * this one or, for a tool, for the features that it cuts. */
gboolean tm_event_resets (const TmJob *job, const TmEvent *event, const TmFeature *feature);

G_END_DECLS
