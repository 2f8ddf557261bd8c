/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-cut-work: the cuts of one place of one feature of one piece, from the record: what they taught, what
 * risk they spent, and what to dial next.
 */

#pragma once

#include "core-cut.h"
#include "core-judge.h"

G_BEGIN_DECLS

typedef struct _TmCutWork TmCutWork;

/* Answers of a tool that a plan learns from: the newest.  An older one tells of another edge (our own
 * choice).
 */
#define TM_CUT_MOST_ANSWERS 40

/* Replays the readings and cuts of the place that stand, in order.  @shop (may be NULL) holds answers of the
 * tool from elsewhere, oldest first: the last TM_CUT_MOST_ANSWERS of them are learned from, and copied.  The
 * job is borrowed and must not change while it is used. */
TmCutWork *tm_cut_work_new (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                            const TmTool *tool, const TmCutAnswer *shop,
                            gsize n_shop) G_GNUC_WARN_UNUSED_RESULT;
void tm_cut_work_free (TmCutWork *work);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmCutWork, tm_cut_work_free)

/* What is aimed at, beyond what the job says. */
typedef struct {
  const TmMateSize *mate; /* aim at the wanted clearance of the feature's mate with this one, inside the
                           * drawing's limits; NULL: the drawing's limits alone */
  double risk;            /* for the whole run; 0: the job's, else TM_CUT_RISK */
  TmAim aim;
  const char *method; /* of the next reading; NULL or "": the feature's */
} TmCutAsk;

/* A plan in the record's terms; sizes in counts. */
typedef struct {
  TmCutPlan plan; /* sizes relative to `reference` */
  gint64 reference;
  gint64 dial;        /* as the dial shows it: half the change where it reads on the radius */
  gint64 second_dial; /* likewise of plan.second */
  gint64 graduation;
  double step; /* change of size per graduation; 0: no dial */
  guint spring_passes;
  gint64 backlash;   /* turn back by more than this before coming up; 0: unknown */
  double risk;       /* accepted for the whole run */
  double risk_spent; /* by its cuts so far: since the last one that by itself risked far more than `risk` */
  TmCutBand band;    /* relative to `reference` */
  TmCutResponse response;
  gboolean assumed;      /* the response rests on the priors alone: no cut of this tool is on record */
  const TmMethod *finer; /* TOO_COARSE, PROVE: a method of the job that would do, or NULL */
  guint n_cuts;          /* at this place so far, that stand */
  guint n_unread;        /* stations that the feature asks for and that were not read since the last cut: what
                          * is said of metal gone leaves them out */
} TmCutAdvice;

/* Always writes a whole answer; plan.status tells what it is. */
void tm_cut_work_plan (const TmCutWork *work, const TmCutAsk *ask, TmCutAdvice *out);
/* The same for another value on the dial, >= 0: status OK whatever the risk, or why nothing can be said. */
void tm_cut_work_try (const TmCutWork *work, const TmCutAsk *ask, gint64 dial, TmCutAdvice *out);

/* What one cut of the record did. */
typedef struct {
  const TmCutRow *cut;
  TmCutAnswer answer; /* NAN achieved: no reading has closed it yet */
  double expected;    /* change that was expected when it was made */
  double expected_sd;
  double surprise; /* (achieved - expected) / its standard deviation; NAN while open */
  gboolean unlike; /* answered unlike the others: |surprise| > 3 (our own choice) */
} TmCutOutcome;

guint tm_cut_work_n_outcomes (const TmCutWork *work);
void tm_cut_work_outcome (const TmCutWork *work, guint i, TmCutOutcome *out);

/* TmCutAnswer of every cut of @job by the tool of that name that a reading has closed and that is not unlike
 * the others; without those of the one place given, where @piece is not NULL. */
GArray *tm_cut_answers (const TmJob *job, const char *tool, const TmPiece *piece, const TmFeature *feature,
                        guint place) G_GNUC_WARN_UNUSED_RESULT;

/* The same, of as many of the places that were cut last as it takes to have TM_CUT_MOST_ANSWERS of them:
 * quick enough to be asked for each plan. */
GArray *tm_cut_newest_answers (const TmJob *job, const char *tool, const TmPiece *piece,
                               const TmFeature *feature, guint place) G_GNUC_WARN_UNUSED_RESULT;

/* The change of size that one count on the dial makes: 2 for a diameter where it reads on the radius, else 1.
 */
gint64 tm_cut_changes_by (const TmFeature *feature, TmReads reads);

/* TRUE for the kinds that a cut takes to size: bores, shafts, diameters, lengths, depths. */
gboolean tm_feature_is_cut_to_size (const TmFeature *feature);

G_END_DECLS
