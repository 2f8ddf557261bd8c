/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-private: what the files of the cut share.  core-cut-belief keeps the state and its filter,
 * core-cut-chances what a cut would bring, core-cut-value what the cut after it could still gain,
 * core-cut-plan chooses.
 *
 * Inside, a size is measured in the direction in which metal goes: a shaft's sizes change their sign.  So
 * every cut adds, the near limit is the one that is reached first, and beyond the far limit metal is gone.
 */

#pragma once

#include "core-cut.h"

G_BEGIN_DECLS

/* The grid of s_e: its logarithm in steps of half a standard deviation, to 3.5 of them either side.  What is
 * left out beyond is 0.0005 of the prior; a spread learned from twenty cuts still covers several steps. */
#define TM_CUT_NODES     15
#define TM_CUT_NODE_STEP 0.5

/* Methods that have a bias of their own in the state. */
#define TM_CUT_METHODS 8

/* Places in the state. */
#define TM_CUT_AT_RESPONSE   0
#define TM_CUT_AT_METHOD(m)  (1 + (m))
#define TM_CUT_AT_STATION(k) (1 + TM_CUT_METHODS + (k))

typedef struct {
  double scatter; /* s_e */
  double log_weight;
  double weight;      /* over all nodes they add up to 1 */
  double *mean;       /* n of them */
  double *covariance; /* n x n, symmetric, both halves kept */
} TmCutNode;

struct _TmCutBelief {
  gboolean grows;
  guint n_stations;
  guint n; /* of the state */
  guint n_answers;
  guint n_open; /* cuts since the last reading */
  double response_sd;
  double scatter_median, scatter_factor;
  gboolean started;                          /* something was learned: the priors are fixed */
  double method_shared[TM_CUT_METHODS];      /* of the prior of each bias; negative: not yet used */
  guint read_stations[TM_CUT_MOST_STATIONS]; /* those that were read, in that order */
  guint n_read;
  gboolean is_read[TM_CUT_MOST_STATIONS];
  TmCutNode nodes[TM_CUT_NODES];
  double *numbers; /* all means and covariances */
};

/* The sizes at the stations that were read, given s_e, as mean + common z + own z_k with independent standard
 * normal z, z_k. */
typedef struct {
  guint n;
  double mean[TM_CUT_MOST_STATIONS];
  double common[TM_CUT_MOST_STATIONS];
  double own[TM_CUT_MOST_STATIONS];
} TmCutSpread;

/* A reading to come, of every station. */
typedef struct {
  guint method;
  double own;
  double shared;
} TmCutNext;

/* After a cut of @change (0: as it is now); @next (may be NULL): not the sizes, but what will be read. */
void tm_cut_spread_after (const TmCutBelief *belief, guint node, double change, const TmCutNext *next,
                          TmCutSpread *out);

/* Limits in the direction in which metal goes; infinite where there is none. */
typedef struct {
  double near, far;
} TmCutLimits;

/* Of one spread: some station is beyond far; none is, and some station is short of near. */
void tm_cut_spread_chances (const TmCutSpread *spread, const TmCutLimits *limits, double *gone, double *left);

/* The drawing's limits and those of the mate, each in the direction in which metal goes. */
typedef struct {
  TmCutLimits drawing;
  TmCutLimits mate;
  double mate_u;
} TmCutTarget;

TmCutTarget tm_cut_target (const TmCutBelief *belief, const TmCutBand *band);
/* Where both are met, the mate taken as measured. */
TmCutLimits tm_cut_target_limits (const TmCutTarget *target);
/* @inward shrinks the near and the far limit for `left` and `in`, but not for `gone`; then what lies between
 * the shrunk far limit and the far limit is neither. */
typedef struct {
  double gone, left, in;
} TmCutShares;
void tm_cut_shares (const TmCutBelief *belief, const TmCutTarget *target, double change, double inward,
                    TmCutShares *out);
/* The same for a search: the stations furthest on and furthest back alone. */
void tm_cut_rough_shares (const TmCutBelief *belief, const TmCutTarget *target, double change, double inward,
                          TmCutShares *out);
double tm_cut_rough_gone (const TmCutBelief *belief, const TmCutTarget *target, double change);
/* The first of them alone. */
double tm_cut_share_gone (const TmCutBelief *belief, const TmCutTarget *target, double change);
/* The chance that @next reads every station inside the limits less @guard. */
double tm_cut_share_proven (const TmCutBelief *belief, const TmCutTarget *target, double change,
                            const TmCutNext *next, double guard);

/* `size`, `predicted` and their kin after @change. */
void tm_cut_say_sizes (const TmCutBelief *belief, double change, TmCutPlan *out);

/* What the cut after this one could gain: what it needs of the belief, drawn out once. */
typedef struct {
  double scatter, weight;
  double b;                            /* mean response */
  double furthest;                     /* mean of the station furthest on */
  double own;                          /* its own standard uncertainty */
  double x_x, x_b, x_m, b_b, b_m, m_m; /* covariances of the mean size, the response and the next bias */
} TmCutSequelNode;

typedef struct {
  guint n_stations;
  double near, far; /* limits of worth for the station furthest on: the others' distance is taken off */
  double end;       /* beyond this metal is gone */
  double mate_variance;
  double least;
  double next_own;
  guint further;
  TmCutSequelNode nodes[TM_CUT_NODES];
} TmCutSequel;

void tm_cut_sequel_init (TmCutSequel *sequel, const TmCutBelief *belief, const TmCutWish *wish,
                         const TmCutTarget *target, double inward);
/* The chance to be brought in by the next cut, given that metal is left after @change and that the next cut's
 * chance of metal gone may be @risk; @second (may be NULL) gets its likely change, 0 for none. */
double tm_cut_sequel_value (const TmCutSequel *sequel, double change, double risk, double *second);

G_END_DECLS
