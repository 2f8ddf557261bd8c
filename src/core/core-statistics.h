/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-statistics: summary of a column of numbers.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_SUMMARY_OK,
  TM_SUMMARY_EMPTY,    /* no values */
  TM_SUMMARY_ONE,      /* one value: no standard deviation, no autocorrelation */
  TM_SUMMARY_CONSTANT, /* all equal: no autocorrelation */
} TmSummaryStatus;

typedef struct {
  gsize count;
  double mean;
  double standard_deviation; /* n - 1; NAN when undefined */
  double lag1;               /* lag-1 autocorrelation; NAN when undefined */
  double minimum;
  double maximum;
} TmSummary;

/* Two-pass with compensated sums; see the formula in the .c file. */
TmSummaryStatus tm_summary (const double *values, gsize n, TmSummary *out);

G_END_DECLS
