/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-batch: everything that is said of one feature over a batch, from its series.
 */

#pragma once

#include "core-capability.h"
#include "core-chart.h"
#include "core-hold.h"
#include "core-offset.h"
#include "core-run-rules.h"
#include "core-series.h"
#include "core-small-shift.h"
#include "core-trend.h"

G_BEGIN_DECLS

/* Usual choices (common practice). */
#define TM_BATCH_LAMBDA 0.2
#define TM_BATCH_EWMA_REACH \
  2.962 /* run length 500 in control with 0.2 (Lucas and Saccucci 1990, from memory) */
#define TM_BATCH_CUSUM_K 0.5
#define TM_BATCH_CUSUM_H 5.0

typedef struct {
  guint group_size; /* 0: the feature's */
  guint baseline;   /* groups that freeze the limits; 0: the feature's, else all */
  guint rules;      /* TM_RULE_BIT; 0: the feature's, else TM_RULES_USUAL */
  gint64
      step; /* of the control, counts of size; 0: of the feature's tool, else a micrometre or half a tenth */
} TmBatchOptions;

typedef struct {
  TmSeries series;
  TmBatchOptions options;  /* as used */
  TmChart chart;           /* of the means; groups of pieces, none over a break */
  GArray *location_hits;   /* TmRuleHit by group: on the location */
  GArray *dispersion_hits; /* likewise, beyond-3s alone */
  double rules_length;     /* mean number of groups to a false alarm of the chosen rules */
  gboolean rules_exact;
  TmEwmaPoint *ewma;            /* one a group; owned */
  TmCusumPoint *cusum;          /* one a group, in units of sigma; owned */
  gint first_ewma, first_cusum; /* first group that signals, or -1 */
  guint stretch_from;           /* the present stretch: pieces from here to the last */
  TmTrend trend;                /* within it, by piece number from 1 */
  TmForecast forecast;          /* to the guarded limit */
  double pieces_left, pieces_left_low, pieces_left_high; /* after the last piece measured; NAN: no forecast */
  TmLevelChange change;                                  /* within it; indexes of pieces in the series */
  GArray *hold;                                          /* TmHoldRow */
  TmOffsetAdvice offset;
  TmCapability capability;       /* of all pieces, drift within */
  TmCapability capability_apart; /* the same with the drift of each stretch taken out: scatter alone */
} TmBatch;

/* @options may be NULL.  Off the main loop for a large job; @cancelled (may be NULL) is looked at between
 * parts, TRUE stops it: then FALSE, and @out holds nothing. */
gboolean tm_batch_init (TmBatch *out, const TmJob *job, const TmFeature *feature, guint place,
                        const TmBatchOptions *options, gboolean (*cancelled) (gpointer data), gpointer data);
void tm_batch_clear (TmBatch *batch);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmBatch, tm_batch_clear)

/* The first of these that holds is what the page says first. */
typedef enum {
  TM_BATCH_NOT_MEASURED,
  TM_BATCH_TOO_FEW,  /* three pieces or fewer: shown, nothing claimed */
  TM_BATCH_OUT,      /* a piece of the present stretch is out */
  TM_BATCH_SHIFTED,  /* a change of level, or a rule speaks */
  TM_BATCH_DRIFTING, /* a trend, towards a limit or away */
  TM_BATCH_STEADY,   /* no drift shown */
  TM_N_BATCH_STATES
} TmBatchState;
TmBatchState tm_batch_state (const TmBatch *batch);

G_END_DECLS
