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
  double u;                 /* standard uncertainty that both share; 0: limits, exact */
  double alpha;             /* 1e-6 / °C; matters only away from 20 °C */
  double temp;              /* °C */
} TmFitPart;

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
  TM_FIT_BAD_WANT, /* wanted least above wanted most */
  TM_FIT_BAD_PART, /* smallest above largest, or not above zero */
  TM_N_FIT_STATUSES
} TmFitStatus;

/* By limits the chances are 0 or 1 at the ends and NAN between. */
TmFitStatus tm_fit_check (const TmFitPart *bore, const TmFitPart *shaft, const TmFitWant *want,
                          TmFitCheck *out);

/* Parts from the record. */
TmFitStatus tm_fit_part_by_limits (const TmFeature *feature, TmFitPart *out);
TmFitStatus tm_fit_part_as_measured (const TmJob *job, const TmPiece *piece, const TmFeature *feature,
                                     guint place, TmFitPart *out);
TmFitStatus tm_fit_mate_by_limits (const TmFeature *feature, TmFitPart *out);
TmFitStatus tm_fit_mate_as_measured (const TmMateSize *mate, TmFitPart *out);
TmFitWant tm_fit_wanted (const TmFeature *feature);
/* TRUE when the feature is the bore of the pair; its mate is the shaft then. */
gboolean tm_fit_feature_is_bore (const TmFeature *feature, TmFitStatus *status);

const char *tm_fit_status_word (TmFitStatus status); /* marked for translation, context "fit status" */

G_END_DECLS
