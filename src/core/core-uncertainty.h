/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-uncertainty: a budget of components combined into one standard uncertainty, its degrees of
 * freedom and its coverage factor (JCGM 100:2008, the GUM).
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_COMPONENT_RESOLUTION,
  TM_COMPONENT_ERROR_LIMIT,
  TM_COMPONENT_CERTIFICATE, /* of the calibration in force, in place of the limit of error */
  TM_COMPONENT_DRIFT,       /* since the last check on the standard */
  TM_COMPONENT_REPEATABILITY,
  TM_COMPONENT_PEOPLE,      /* reproducibility, from a study: repeats do not average it */
  TM_COMPONENT_FEEL,        /* transfer feel */
  TM_COMPONENT_TEMPERATURE, /* of the part ("part") or of a gauge (its tag) */
  TM_COMPONENT_EXPANSION,   /* of the material ("part") or of a gauge (its tag) */
  TM_COMPONENT_FORM,        /* form that the method does not see */
  TM_COMPONENT_SETTING,
  TM_COMPONENT_SIZE, /* of the size that gives a bonus to a position */
  TM_COMPONENT_OTHER,
  TM_N_COMPONENT_KINDS
} TmComponentKind;

/* What a component's value is, and so what it is divided by to give a standard uncertainty
 * (JCGM 100, 4.3). */
typedef enum {
  TM_DISTRIBUTION_NORMAL,      /* a standard uncertainty: 1 */
  TM_DISTRIBUTION_T,           /* a standard deviation with its degrees of freedom: 1 */
  TM_DISTRIBUTION_RECTANGULAR, /* a half-width: sqrt 3 */
  TM_DISTRIBUTION_TRIANGULAR,  /* a half-width: sqrt 6 */
  TM_DISTRIBUTION_U_SHAPED,    /* a half-width: sqrt 2 */
  TM_N_DISTRIBUTIONS
} TmDistribution;

typedef struct {
  TmComponentKind kind;
  TmDistribution distribution;
  double value;        /* >= 0, in any one unit that the whole budget uses */
  double divisor;      /* 0: the distribution's own */
  double sensitivity;  /* factor from this input to the result */
  double dof;          /* > 0; INFINITY when the value is taken as known */
  gboolean shared;     /* the same error in every reading of the method, so that repeats and
                        * stations do not average it */
  gboolean assumed;    /* a starting value that nobody has measured here */
  const char *subject; /* tag of the gauge, or name of the line; NULL: the method or the job itself.
                        * Equal kind and subject in two methods are one error: they are correlated */
  const char *source;  /* where the figure comes from, or NULL: as written in the job, else a text marked
                        * for translation */
} TmComponent;

/* A component with sensitivity 1 and its distribution's own divisor. */
TmComponent tm_component (TmComponentKind kind, TmDistribution distribution, double value, double dof,
                          gboolean shared);

/* What the value is divided by: its own divisor, else the distribution's. */
double tm_component_divisor (const TmComponent *component);

/* Standard uncertainty of the input itself, before its sensitivity. */
double tm_component_standard (const TmComponent *component);

/* What it gives to the result: |sensitivity| times its standard uncertainty. */
double tm_component_share (const TmComponent *component);

/* "resolution", "limit of error"…: marked for translation, context "component". */
const char *tm_component_word (TmComponentKind kind);
/* "normal", "t", "rectangular"…: the words of files; marked for translation, context "distribution". */
const char *tm_distribution_word (TmDistribution distribution);
gboolean tm_distribution_from_word (const char *word, TmDistribution *distribution);

typedef struct {
  double u;        /* combined standard uncertainty: sqrt of the sum of (c_i u_i)² */
  double own;      /* the part of u that each station has by itself */
  double shared;   /* the part that all stations have in common */
  double dof;      /* Welch-Satterthwaite, not truncated; INFINITY when all are known */
  double coverage; /* k: two-sided t at the asked coverage, for dof truncated to a whole number */
  double expanded; /* k u */
} TmUncertainty;

/* All NAN: nothing is known. */
extern const TmUncertainty tm_uncertainty_unknown;

/* Combines independent components (JCGM 100, 5.1.2 and G.4.1) for @coverage (0.95 unless another is
 * asked for).  With no component that is not zero the result is tm_uncertainty_unknown. */
TmUncertainty tm_uncertainty_combine (const TmComponent *components, gsize n, double coverage);

/* The value that Student's t with @dof, truncated to a whole number, stays under with @probability
 * (0.5 < @probability < 1); the normal distribution's for INFINITY. */
double tm_t_quantile (double probability, double dof);

/* P(t <= @x) and P(t > @x), @dof truncated likewise. */
double tm_t_below (double x, double dof);
double tm_t_above (double x, double dof);

G_END_DECLS
