/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut: how much to dial next, and at what risk, from what was read and how the cutter answered.
 *
 * The state is jointly normal: the true size at each station, the response b of the cutter (a change c that
 * is dialled moves the size by b c + e) and one bias for each method; given the scatter s_e of e each reading
 * and each cut is an exact linear update (a Kalman filter), and s_e is integrated on a grid.  Consecutive
 * readings share their bias, so it cancels in their difference and the response is learned from it.
 *
 * Everything here is in counts, as doubles relative to one reference that the caller chooses; a change is
 * positive towards less metal, whichever way the size goes.
 */

#pragma once

#include "core-method.h"
#include "core-model.h"

G_BEGIN_DECLS

/* Priors: ours, assumed, replaced by what the tool does (metrology: Next cut). */
#define TM_CUT_RESPONSE_SD    0.08
#define TM_CUT_SCATTER_MEDIAN 5e6 /* 5 µm */
#define TM_CUT_SCATTER_FACTOR 2.0 /* one standard deviation of ln s_e is ln of this */
#define TM_CUT_RISK           0.01
/* Cuts that a plan reckons may follow, where nobody says otherwise: our own choice, by simulation. */
#define TM_CUT_FURTHER 2

/* Stations that one belief can hold. */
#define TM_CUT_MOST_STATIONS 64

/* One cut of the past, with what the readings round it said. */
typedef struct {
  double dialled;  /* change of size that was asked for, > 0 */
  double achieved; /* change that was found */
  double u;        /* standard uncertainty of `achieved`; 0: taken as known */
} TmCutAnswer;

/* How the cutter answers, as far as it is known. */
typedef struct {
  double factor; /* mean of b */
  double factor_sd;
  double scatter;                   /* median of s_e, counts */
  double scatter_low, scatter_high; /* 95 % */
  guint n_answers;                  /* cuts that it was learned from */
} TmCutResponse;

typedef struct _TmCutBelief TmCutBelief;

/* Nothing known but the priors; @n_stations 1..TM_CUT_MOST_STATIONS; @grows: metal is taken away by making
 * the size larger.  A station has no size until its first reading gives it one.  Numbers handed to the
 * functions below have to be finite. */
TmCutBelief *tm_cut_belief_new (guint n_stations, gboolean grows) G_GNUC_WARN_UNUSED_RESULT;
TmCutBelief *tm_cut_belief_copy (const TmCutBelief *belief) G_GNUC_WARN_UNUSED_RESULT;
void tm_cut_belief_free (TmCutBelief *belief);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmCutBelief, tm_cut_belief_free)

/* Other priors than the assumed ones: @scatter_median in counts, @scatter_factor > 1.  For simulation, before
 * anything is learned. */
void tm_cut_belief_set_prior (TmCutBelief *belief, double response_sd, double scatter_median,
                              double scatter_factor);

/* Learns from cuts made elsewhere by the same tool. */
void tm_cut_belief_learn (TmCutBelief *belief, const TmCutAnswer *answer);

/* The mean of the repeats at one station: @own is its own standard uncertainty, @shared the method's, which
 * all readings of @method (a number that the caller gives out, from 0) have in common. */
void tm_cut_belief_read (TmCutBelief *belief, guint station, guint method, double size, double own,
                         double shared);

/* A cut by @change was made at every station. */
void tm_cut_belief_cut (TmCutBelief *belief, double change);

/* Every station moved by @change, give or take @sd in common, in a way that tells nothing of the cutter: a
 * cut with another tool, or one that went wrong. */
void tm_cut_belief_move (TmCutBelief *belief, double change, double sd);

/* TRUE once some station was read. */
gboolean tm_cut_belief_has_size (const TmCutBelief *belief);

void tm_cut_belief_response (const TmCutBelief *belief, TmCutResponse *out);
/* Mean and standard uncertainty of the true size at @station; over all s_e; NAN before its first reading. */
void tm_cut_belief_size (const TmCutBelief *belief, guint station, double *size, double *u);

/* Where the feature has to end up.  Drawing limits are exact; those that a measured mate and the wanted
 * clearance give are shifted together by a normal error of @mate_u.  A limit that is not there: +-INFINITY.
 */
typedef struct {
  double lower, upper;
  double mate_lower, mate_upper;
  double mate_u; /* 0: none, or no mate */
} TmCutBand;

/* Chances over all stations: gone if any is beyond the limit on the far side; left if none is, and one has
 * metal left; they add up to 1.  `proven`: the chance that the next reading proves it in, NAN when no next
 * reading is stated. */
typedef struct {
  double in;
  double left;
  double gone;
  double proven;
} TmCutChances;

typedef struct {
  TmCutBand band;
  double step;  /* change of size per graduation of the dial, > 0 */
  double least; /* smallest change that the tool takes without rubbing, >= step */
  double risk;  /* accepted chance of metal gone that the run has left, 0 .. 1: after the cut it is no more */
  TmAim aim;
  guint next_method; /* of the reading after the cut, as in tm_cut_belief_read() */
  double next_own;
  double next_shared;
  double guard;  /* of that reading's verdict; 0: none, or the simple rule */
  guint further; /* cuts that may follow this one: 1 or more lets the plan leave metal for them */
} TmCutWish;

typedef enum {
  TM_CUT_OK,           /* dial `change` */
  TM_CUT_PROVE,        /* dial `change` as a proving cut: `second` is what would then be dialled */
  TM_CUT_NOTHING_LEFT, /* in already: another cut would gain nothing */
  TM_CUT_METAL_GONE,   /* more likely than not gone already */
  TM_CUT_TOO_COARSE,   /* no cut within the risk gains anything: the size, or how the cutter answers, must be
                        * known better first */
  TM_CUT_UNDER_LEAST,  /* what could be cut within the risk is less than the tool, or its dial, takes */
  TM_CUT_UNEVEN,       /* the stations differ by more than the band: no cut brings all of them in */
  TM_CUT_BAD_BAND,     /* the limits leave no size at all */
  TM_CUT_NOT_READ,     /* no reading since the last cut, or none at all */
  TM_CUT_NO_LIMITS,    /* no limit that says where to stop */
  TM_CUT_NO_SIDE,      /* inside or outside? which way metal goes is unknown */
  TM_CUT_NO_METHOD,    /* the uncertainty of the readings is unknown */
  TM_CUT_NO_DIAL,      /* neither a tool nor a graduation is stated */
  TM_CUT_NO_MATE,      /* to fit the mate was asked for, and none is measured, its uncertainty is unknown, or
                        * no clearance is wanted */
  TM_CUT_NOT_A_SIZE,   /* a kind of feature that is not cut to size */
  TM_N_CUT_STATUSES
} TmCutStatus;

typedef struct {
  TmCutStatus status;
  double change;        /* a whole number of steps; 0 when there is none */
  double size;          /* mean over the stations that were read, as it is now; 0 when none was */
  double size_u;        /* of that mean */
  double predicted;     /* the same after the change: equal to `size` when there is none */
  double predicted_u;   /* of that mean */
  double predicted_low; /* after it, at the smallest station and at the largest */
  double predicted_high;
  TmCutChances chances;
  TmCutChances now; /* if nothing is cut */
  double second;    /* PROVE, or a cut that leaves metal: the likely next change; 0: none */
  double value;     /* chance to end in the band, by this cut or those that may follow */
} TmCutPlan;

/* The change that is worth most within the risk, by P(in now) + P(left) · (best P(in) of the cuts that may
 * follow), a whole number of steps, never rounded towards metal gone.  Never a NAN, but `proven` where no
 * reading is stated.  What was read is told whatever the status: size, predicted (after no change) and, where
 * there are limits, `now`. */
void tm_cut_plan (const TmCutBelief *belief, const TmCutWish *wish, TmCutPlan *out);

/* The same figures for a change that somebody else chose, >= 0, any step: status OK. */
void tm_cut_try (const TmCutBelief *belief, const TmCutWish *wish, double change, TmCutPlan *out);

/* A word for files and tests, marked for translation: context "cut status". */
const char *tm_cut_status_word (TmCutStatus status);

G_END_DECLS
