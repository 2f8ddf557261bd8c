/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-batch: simulated processes whose truth is known to the test alone: points on control charts until
 * they speak, tools that wear towards a limit, and a machine that is corrected by one policy or another.
 */

#pragma once

#include <glib.h>

/* -------- Run lengths -------- */

typedef enum { SUPPORT_CHART_RULES, SUPPORT_CHART_EWMA, SUPPORT_CHART_CUSUM } SupportChart;

typedef struct {
  SupportChart chart;
  guint rules;      /* TM_RULE_BIT */
  double lambda, l; /* of the moving average, with fixed limits */
  double k, h;      /* of the cumulative sum */
} SupportChartCase;

/* Mean number of points until the chart speaks, known parameters, the mean @shift off; @se gets its standard
 * error. */
double support_run_length (const SupportChartCase *given, double shift, guint runs, guint32 seed, double *se);

/* -------- Wearing tools -------- */

typedef struct {
  guint n;
  guint given;   /* had a forecast */
  guint held;    /* the interval held the piece at which the true mean meets the guarded limit */
  guint changed; /* said to have shifted, which none had */
  double ratio;  /* mean of slope over its standard error, true ones */
} SupportWear;

/* @n tools with a true slope of 5 to 15 of its standard errors, 10 to 40 pieces measured. Through the line
 * and forecast alone; and through a job, readings, method, guard and all that is said of a batch. */
SupportWear support_wear_lines (guint n, guint32 seed);
SupportWear support_wear_batches (guint n, guint32 seed);

/* -------- Corrections -------- */

typedef enum { SUPPORT_NEVER, SUPPORT_EVERY, SUPPORT_RULE, SUPPORT_N_POLICIES } SupportPolicy;

typedef struct {
  const char *what;
  double set_up; /* error of the set-up, in the scatter of one piece */
  double wear;   /* by piece */
  double shift;  /* before the middle piece */
} SupportMachine;

/* Root mean square deviation from the target over @lots of 60 pieces, in the scatter of one piece;
 * @corrections (may be NULL) gets the mean number of them a lot. */
double support_correct (const SupportMachine *machine, SupportPolicy policy, guint lots, guint32 seed,
                        double *corrections);
