/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-tool-drift: one tool, several features: the wear that all of them show together since the tool was
 * last changed.
 *
 * Wear leaves metal: a bore gets smaller by it, a shaft larger.  The slopes of all features are turned that
 * way and combined by their uncertainties (core-weighted); χ² says whether they agree, for a tool that wears
 * wears in all of them alike, and one feature that goes its own way has another cause.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef enum {
  TM_TOOL_ROW_USED,
  TM_TOOL_ROW_TOO_FEW,     /* three or more pieces, beyond the corrections between them, are needed */
  TM_TOOL_ROW_NO_SPREAD,   /* they lie on a line without any scatter: nothing says how certain it is */
  TM_TOOL_ROW_NO_SIDE,     /* nobody said which way its metal goes */
  TM_TOOL_ROW_NO_DIAMETER, /* a length beside diameters: the same wear changes it by another amount */
} TmToolRowStatus;

/* One place of one feature.  Counts a piece. */
typedef struct {
  const TmFeature *feature;
  guint place;
  TmToolRowStatus status;
  guint n;    /* pieces measured since the tool was changed */
  guint from; /* index of the first piece that it cut */
  double slope, slope_se,
      dof;     /* of the size; corrections between move the level, not the slope; NAN: unknown */
  double wear; /* the slope turned to metal left; NAN where the side is not known */
} TmToolDriftRow;

typedef struct {
  const TmTool *tool; /* NULL: the job does not describe it */
  TmToolDriftRow *rows;
  guint n_rows, n_used;               /* owned */
  double wear, wear_se, lower, upper; /* 95 %; NAN: no row is used */
  double p;                           /* of no wear, two-sided */
  gboolean shown;                     /* p <= 0.05 */
  double chi_square, agreement_p;     /* n_used - 1 degrees of freedom; NAN for one row */
  gboolean disagree;                  /* agreement_p < 0.05: the interval is widened for it */
  int apart;                          /* row furthest from the others where three or more disagree, or -1 */
} TmToolDrift;

/* Judges every piece of each feature that names @tool: slow for a large job.  FALSE when @cancelled (may be
 * NULL) said so: then @out holds nothing. */
gboolean tm_tool_drift_init (TmToolDrift *out, const TmJob *job, const char *tool,
                             gboolean (*cancelled) (gpointer data), gpointer data);
void tm_tool_drift_clear (TmToolDrift *drift);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmToolDrift, tm_tool_drift_clear)

G_END_DECLS
