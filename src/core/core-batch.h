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
  gint64 step;      /* of the control, counts of size; 0: of the feature's tool, else a micrometre or half a
                     * tenth */
  gboolean
      brief; /* no capability (its status is TOO_FEW): what moves with each reading is all that is wanted */
} TmBatchOptions;

typedef struct {
  TmSeries series;
  TmBatchOptions options; /* as used */
  /* Of the means; groups of pieces that are due or measured, individuals of those measured, none over a
   * break.  `from` of a group is an index in the series, and its pieces reach to the next group's.  Limits
   * lie about the centre of the group's own stretch (the middle of both), unless a baseline froze them. */
  TmChart chart;
  GArray *location_hits;   /* TmRuleHit by group: on the location */
  GArray *dispersion_hits; /* likewise, beyond-3s alone */
  double rules_length;     /* mean number of groups to a false alarm of the chosen rules */
  gboolean rules_exact;
  /* Each begins anew with a stretch, at its centre. */
  TmEwmaPoint *ewma;            /* one a group, counts as the sizes are; owned */
  TmCusumPoint *cusum;          /* one a group, in units of sigma of the group's mean; owned */
  gint first_ewma, first_cusum; /* first group that signals, or -1 */
  gboolean signalled; /* a rule speaks at one of the newest 8 groups, and the drift does not account for it */
  guint stretch_from; /* the present stretch: pieces from here to the last; n_points: an event after the last
                       * piece began one that has none yet */
  TmTrend trend;      /* within it, by piece number from 1; since the change where one is found */
  TmForecast forecast; /* to the guarded limit: of each piece's largest size where they grow, else smallest;
                        * none of three pieces or fewer, or where the guards leave no band */
  /* After the last piece measured, not below 0; NAN: no forecast; high INFINITY: open. */
  double pieces_left, pieces_left_low, pieces_left_high;
  /* Within it; indexes of pieces in the series.  A steady drift is none: found only where two levels, or a
   * line that jumps, tell more than the line alone. */
  TmLevelChange change;
  GArray *hold; /* TmHoldRow; all pieces since the change may have begun, whatever their chance */
  /* Of the level that is there now; drifting: within the stretch, or by all stretches since the tool or lot
   * was changed, for a correction does not stop wear. */
  TmOffsetAdvice offset;
  gboolean drifted;              /* the last pieces, before an event after which none is measured yet */
  TmCapability capability;       /* of all pieces, drift within */
  TmCapability capability_apart; /* the same with the level of each stretch, and after a change, taken out,
                                  * and its drift where one is shown: scatter alone, about the mean of all */
} TmBatch;

/* @options may be NULL.  Off the main loop for a large job; @cancelled (may be NULL) is looked at between
 * parts, TRUE stops it: then FALSE, and @out holds nothing. */
gboolean tm_batch_init (TmBatch *out, const TmJob *job, const TmFeature *feature, guint place,
                        const TmBatchOptions *options, gboolean (*cancelled) (gpointer data), gpointer data);
void tm_batch_clear (TmBatch *batch);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmBatch, tm_batch_clear)

/* Whether the trend is one that is shown: less likely by chance than one in twenty. */
gboolean tm_batch_has_drift (const TmBatch *batch);

/* The first of these that holds is what the page says first. */
typedef enum {
  TM_BATCH_NOT_MEASURED,
  TM_BATCH_TOO_FEW, /* three pieces or fewer in the present stretch, none of them out: shown, nothing claimed;
                     * and pass and fail alone */
  TM_BATCH_OUT,     /* a piece of the present stretch is out */
  TM_BATCH_SHIFTED, /* a change of level, or a rule speaks */
  TM_BATCH_DRIFTING, /* a trend, towards a limit or away */
  TM_BATCH_STEADY,   /* no drift shown */
  TM_N_BATCH_STATES
} TmBatchState;
TmBatchState tm_batch_state (const TmBatch *batch);

G_END_DECLS
