/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-chart: control charts of groups of values in the order made: the location of each group with its
 * limits, and the dispersion under it (ISO 7870-2; W. A. Shewhart).
 *
 * Values are doubles of any one unit.  Constants are computed for the size of each group, never copied.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  TM_CHART_INDIVIDUALS, /* groups of one: moving ranges of two */
  TM_CHART_RANGES,      /* means and ranges: groups up to TM_CHART_RANGES_MOST */
  TM_CHART_DEVIATIONS,  /* means and standard deviations */
} TmChartKind;

#define TM_CHART_RANGES_MOST 10

/* c4(n): E(s) = c4 sigma; n >= 2. */
double tm_chart_c4 (guint n);

/* 3-sigma factors for groups of @n >= 2, from d2, d3, c4 of the normal distribution. */
typedef struct {
  double d2, d3, c4;
  double a2, a3;
  double b3, b4;
  double d_3, d_4;
  double e2; /* 3 / d2: for individuals */
} TmChartFactors;
void tm_chart_factors (guint n, TmChartFactors *out);

typedef struct {
  guint from;      /* index of its first value */
  guint n;         /* values that are there; 0: the whole group is missing */
  double location; /* NAN: missing */
  double location_lower, location_upper;
  double dispersion; /* NAN: fewer than two values, or the first of individuals */
  double dispersion_centre, dispersion_lower, dispersion_upper; /* NAN where no limit applies */
} TmChartGroup;

typedef enum {
  TM_CHART_OK,
  TM_CHART_TOO_FEW,   /* fewer than two groups with a dispersion, or no moving range: no limits */
  TM_CHART_NO_SPREAD, /* all equal within groups: the limits have no width */
} TmChartStatus;

typedef struct {
  TmChartStatus status;
  TmChartKind kind;
  guint n_groups;
  TmChartGroup *groups; /* owned */
  double centre;
  double sigma;     /* within groups */
  double sigma_dof; /* effective degrees of freedom of that estimate (Patnaik for ranges) */
  guint baseline;   /* groups that the limits come from, counted from the first that is there */
} TmChart;

typedef struct {
  const double *values; /* NAN: missing */
  gsize n;
  const guint
      *breaks; /* rising indexes that begin a new stretch: no moving range and no group goes over them */
  guint n_breaks;
  guint group_size; /* 1..: consecutive values */
  guint baseline;   /* limits from the first this many groups; 0: all */
} TmChartInput;

/* Equal groups: by mean range or mean standard deviation; unequal: by c4 of each.  A last group that is not
 * full yet leaves them equal, and has limits of its own. */
void tm_chart (const TmChartInput *input, TmChart *out);
/* Centre, sigma, its degrees of freedom and the status alone, no groups: a million individuals need no room.
 */
void tm_chart_level (const TmChartInput *input, TmChart *out);
void tm_chart_clear (TmChart *chart);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmChart, tm_chart_clear)

G_END_DECLS
