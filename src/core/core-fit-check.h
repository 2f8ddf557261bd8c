/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-fit-check: whether a bore and the shaft that goes into it, or a feature and its mate, will fit.
 *
 * Clearance is bore - shaft; negative is interference.  Counts throughout.
 */

#pragma once

#include "core-judge.h"
#include "core-model.h"

G_BEGIN_DECLS

/* One of the two parts, at 20 °C. */
typedef struct {
  gint64 smallest, largest; /* over its stations, or its limits */
  double u;                 /* standard uncertainty that both share; 0: limits, exact; NAN: unknown */
  double alpha;             /* 1e-6 / °C; matters only away from 20 °C; NAN: unknown */
  double alpha_half_width;  /* of alpha, rectangular; 0: taken as known */
  double temp;              /* °C */
} TmFitPart;

/* Temperatures are taken between these, °C: absolute zero, and what no expansion near 20 °C speaks for
 * (our own choice). */
#define TM_FIT_TEMPERATURE_LEAST (-273.15)
#define TM_FIT_TEMPERATURE_MOST  1000.0

/* The wanted clearance; an end that is not given: any. */
typedef struct {
  gboolean has_least, has_most;
  gint64 least, most;
} TmFitWant;

typedef struct {
  double least, most;  /* clearance: smallest bore - largest shaft, largest bore - smallest shaft */
  double u;            /* standard uncertainty of both ends; 0 by limits */
  double expanded;     /* 2 u */
  double loose;        /* P(most > wanted most) */
  double tight;        /* P(least < wanted least) */
  double within;       /* P(neither); 1 - loose - tight where both cannot be */
  double clearance;    /* P(least > 0): it goes in without force */
  double interference; /* P(most < 0): it presses all over */
} TmFitCheck;

typedef enum {
  TM_FIT_OK,
  TM_FIT_NOT_MEASURED, /* of the feature, or of the mate */
  TM_FIT_NO_LIMITS,    /* the feature or its mate has not both limits */
  TM_FIT_NO_MATE,      /* the feature has no mate */
  TM_FIT_NO_SIDE,      /* which of the two is the bore is unknown */
  TM_FIT_NO_METHOD,    /* the uncertainty is unknown: ranges stand, chances do not (NAN) */
  TM_FIT_BAD_TEMPERATURE,
  TM_FIT_BAD_WANT,     /* wanted least above wanted most */
  TM_FIT_BAD_PART,     /* smallest above largest, not above zero, or an uncertainty below zero */
  TM_FIT_NO_EXPANSION, /* away from 20 °C, and how much a part grows is unknown */
  TM_FIT_NO_WANT,      /* no wanted clearance is stated */
  TM_FIT_TOO_MANY,     /* more parts than are paired at once */
  TM_N_FIT_STATUSES
} TmFitStatus;

/* Both sizes as they are at the temperatures of their parts, each (1 + α (T - 20)) times its size at 20 °C.
 * The true clearance is taken to differ from what was measured by one normal error that both ends share, of
 * standard deviation u = √(u_bore² + u_shaft²), away from 20 °C with what is not known of the expansions.
 *
 * By limits (both u are 0) nobody knows where between its ends a pair will be: the chances are 0 or 1 where
 * the whole range says so, else NAN.  On OK and NO_METHOD the range stands; on every other status all of
 * @out is NAN. @want may be NULL: any. */
TmFitStatus tm_fit_check (const TmFitPart *bore, const TmFitPart *shaft, const TmFitWant *want,
                          TmFitCheck *out);

/* The smallest chance at which a fit is called within what is wanted, and whether it is: by limits and where
 * the uncertainty is unknown, the whole range must be. */
#define TM_FIT_PROVEN 0.95
gboolean tm_fit_is_within (const TmFitCheck *check, const TmFitWant *want);

/* Parts from the record, at 20 °C and with no expansion known: tm_fit_part_warm() sets both.  On any status
 * but OK and NO_METHOD (where u is NAN) @out is not a part.
 *
 * As measured: the smallest and the largest station, each rounded away from the other, with the uncertainty
 * of the station that decides, made wider where it has few degrees of freedom, so that the 95 % interval
 * stays the judgement's, and only once the place has a verdict.  Where pins count, their estimate is the
 * mating size: the smallest of a bore, and all of it where nothing else was read. */
TmFitStatus tm_fit_part_by_limits (const TmFeature *feature, TmFitPart *out);
TmFitStatus tm_fit_part_as_measured (const TmJob *job, const TmPiece *piece, const TmFeature *feature,
                                     guint place, TmFitPart *out);
TmFitStatus tm_fit_mate_by_limits (const TmFeature *feature, TmFitPart *out);
TmFitStatus tm_fit_mate_as_measured (const TmMateSize *mate, TmFitPart *out);
TmFitWant tm_fit_wanted (const TmFeature *feature);

/* The place that a measured mate was made out for: the first where it states none. */
guint tm_fit_mate_place (const TmMateSize *mate);
/* The first measured mate that was made out for that place of @piece; NULL: none. */
TmMateSize *tm_fit_find_mate (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place);

/* Sets the temperature of a part of the feature's fit and, where it is known, its expansion: of the feature's
 * own part by the job's, else of its mate (@of_mate), by the materials of its press.  FALSE when no material
 * is stated or nothing knows it; it is NAN then. */
gboolean tm_fit_part_warm (const TmJob *job, const TmFeature *feature, gboolean of_mate, double temp,
                           TmFitPart *part);

/* TRUE when the feature is the bore of the pair; its mate is the shaft then.  By its kind, else by the
 * way its metal goes, else by the kind of its mate.  @status, which may be NULL, is NO_SIDE when none of them
 * says. */
gboolean tm_fit_feature_is_bore (const TmFeature *feature, TmFitStatus *status);

const char *tm_fit_status_word (TmFitStatus status); /* marked for translation, context "fit status" */

G_END_DECLS
