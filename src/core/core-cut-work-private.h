/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-work-private: what the files of the cuts of one place share.  core-cut-record draws readings and
 * cuts out of the job, core-cut-work replays them and plans, core-cut-outcome tells what each cut did.
 */

#pragma once

#include "core-cut-order.h"
#include "core-cut-work.h"
#include "core-method.h"

G_BEGIN_DECLS

/* The repeats of one method at one station between two cuts, as one reading; counts, corrected. */
typedef struct {
  guint part; /* how many cuts that stand were made before it */
  const char *station;
  guint at;     /* number of the station; TM_CUT_MOST_STATIONS: left out, there are too many */
  guint method; /* number of the method and its bias */
  const char *method_name;
  double size; /* relative to the reference */
  double own, shared;
  gboolean known; /* its uncertainty is */
  TmLocalSize raw;
} TmCutReading;

/* A method with one bias: a name, and what its readings share. */
typedef struct {
  const char *name;
  double shared;
} TmCutMethod;

typedef struct {
  const TmCutRow *row;
  TmCutStand stand;
  double change; /* of the size, > 0 */
  gboolean same_tool;
  gboolean untaught; /* answered too little, unlike the others: it is no measure of the tool */
  TmCutOutcome outcome;
} TmCutStep;

struct _TmCutWork {
  const TmJob *job;
  const TmPiece *piece;
  const TmFeature *feature;
  guint place;
  const TmTool *tool;
  TmCutAnswer *shop; /* owned */
  gsize n_shop;
  gint64 reference;
  GArray *readings; /* TmCutReading, by part, then in the order read */
  GArray *methods;  /* TmCutMethod */
  GArray *steps;    /* TmCutStep */
  guint n_stations;
  guint n_unread;
  gboolean any_unknown; /* a reading since the last cut has no known uncertainty */
  gboolean any_read;    /* a reading since the last cut has */
  TmCutBelief *belief;  /* NULL: nothing is cut to size here */
  double *risked;       /* by each step, against the drawing's limits */
};

/* Fills readings, methods, steps and the reference. */
void tm_cut_record_collect (TmCutWork *work);
/* What a single reading by the method @name would share and have of its own, and the number of its bias among
 * @methods: one of its own where it was not used here. FALSE: its uncertainty is unknown. */
gboolean tm_cut_record_next (const TmCutWork *work, const char *name, guint *method, double *own,
                             double *shared);

/* What the readings round the cut with number @i say it did: from the same stations by the same method where
 * there are any, so that their bias cancels.  FALSE: they do not. */
gboolean tm_cut_outcome_measure (const TmCutWork *work, guint i, double *achieved, double *u);
/* Fills the outcome of cut @i; @belief is what was known when it was made. */
void tm_cut_outcome_fill (TmCutWork *work, guint i, const TmCutBelief *belief);

/* Of what a cut by another tool moves, of which only the priors are known. */
double tm_cut_step_sd (const TmCutStep *step);

/* Goes through the record once.  @risked gets, for each step, what it added to the chance of metal gone
 * against
 * @band. */
TmCutBelief *tm_cut_work_replay (TmCutWork *work, gboolean first, const TmCutBand *band,
                                 double *risked) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
