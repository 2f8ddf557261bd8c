/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-study: gauge repeatability and reproducibility, pieces × people × repeats, crossed.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* A study with more readings than this is none: nobody takes them, and a damaged file may ask for them. */
#define TM_STUDY_MOST_CELLS 100000

typedef enum {
  TM_STUDY_OK,
  TM_STUDY_ONE_PERSON, /* valid: repeatability only; what people add is not known */
  TM_STUDY_MISSING,    /* a cell is empty: refused; see `missing` */
  TM_STUDY_TOO_SMALL,  /* fewer than 2 pieces or 2 repeats, or nobody */
  TM_STUDY_NO_SPREAD,  /* every value equal: nothing can be said beyond the resolution */
  TM_N_STUDY_STATUSES
} TmStudyStatus;

/* One component as a standard deviation with its 95 % interval (modified large-sample; exact for the
 * repeatability).  NAN where it is not known.  The estimate of a variance that comes out negative is 0;
 * its interval then begins at 0. */
typedef struct {
  double sd;
  double low, high;
} TmStudyPart;

/* By the range method: averages of ranges over d2* (core-study-range.h).  NAN where it does not apply. */
typedef struct {
  double mean_range;  /* of the repeats, over all pieces and people */
  double mean_spread; /* largest - smallest mean of a person */
  double piece_range; /* largest - smallest mean of a piece */
  double ev, av, grr, pv, tv;
} TmStudyRange;

typedef struct {
  TmStudyStatus status;
  guint missing_piece, missing_person, missing_trial; /* indices from 0, of the first empty cell */
  guint n_missing;
  guint pieces, people, repeats;
  gboolean pooled;      /* interaction pooled into repeatability: p > 0.25 */
  double p_interaction; /* NAN with one person */
  TmStudyPart ev;       /* repeatability */
  TmStudyPart av;       /* people */
  TmStudyPart interaction;
  TmStudyPart grr;
  TmStudyPart pv; /* pieces */
  TmStudyPart tv;
  double ev_dof;
  double between;     /* what another person may add: sqrt (people² + interaction²); NAN with one person */
  double between_dof; /* Satterthwaite, at least 1; NAN where `between` is 0 or unknown */
  double ms_error, ms_interaction, ms_people, ms_pieces; /* mean squares, unpooled; NAN: not there */
  double percent_study;                                  /* 100 grr / tv; NAN without spread */
  double percent_band;                                   /* 100 · 6 grr / band; NAN without a band */
  guint ndc; /* ⌊√2 pv / grr⌋, at least 1; 0: not known, as no repeat differs from another */
  TmStudyRange range;
} TmStudyResult;

/* @values[(piece · people + person) · repeats + trial]; NAN: an empty cell.  @band <= 0: none.
 * Everything comes back in the unit of the values. */
void tm_study_analyse (const double *values, guint pieces, guint people, guint repeats, double band,
                       TmStudyResult *out);
/* Analyses what @study holds: tm_study_values() against tm_study_band(). */
void tm_study_result (const TmJob *job, const TmStudy *study, TmStudyResult *out);
/* One sentence for people, marked for translation. */
const char *tm_study_status_text (TmStudyStatus status);

/* The values of @study in its unit, in that order; free with g_free(). */
double *tm_study_values (const TmJob *job, const TmStudy *study) G_GNUC_WARN_UNUSED_RESULT;
/* What it is compared with: its band, else its feature's, in its unit; 0: none. */
double tm_study_band (const TmJob *job, const TmStudy *study);

/* How much of @band six standard deviations of @sd take, in percent; both in one unit; NAN without a band. */
double tm_study_band_share (double sd, double band);

/* The cell to be measured as the @n-th (from 0), in the study's random order: within a repeat each
 * person's run through the pieces is shuffled on its own, by the seed.  The same on every machine. */
typedef struct {
  guint piece, person, trial; /* indices from 0 */
} TmStudyCell;
TmStudyCell tm_study_cell (const TmStudy *study, guint n);
/* 0 when it has no pieces, people or repeats, or more than TM_STUDY_MOST_CELLS. */
guint tm_study_n_cells (const TmStudy *study);
/* The next cell without a reading, in that order; FALSE when all are there.  Nothing here tells what
 * was read before: who measures stays blind. */
gboolean tm_study_next (const TmJob *job, const TmStudy *study, TmStudyCell *cell, guint *n);
/* How many cells have a reading. */
guint tm_study_n_done (const TmJob *job, const TmStudy *study);

/* What a study puts into the budget of its method. */
typedef enum {
  TM_STUDY_BUDGET_OK,
  TM_STUDY_BUDGET_NO_METHOD, /* it was made with a bare gauge: there is no method to put it into */
  TM_STUDY_BUDGET_NO_RESULT, /* refused or not complete */
  TM_STUDY_BUDGET_NO_SPREAD, /* no repeat differs from another: the step of the gauge hides it */
  TM_N_STUDY_BUDGET_STATUSES
} TmStudyBudgetStatus;

/* For the mean of n readings the budget is ev² / n + between²: repeats average only the first. */
typedef struct {
  TmQuantity repeatability;     /* ev, in the unit of the method's first gauge, five digits */
  TmQuantity repeatability_dof; /* TM_UNIT_COUNT */
  const char *source;           /* "study NAME", of the job */
  TmBudgetLine *people; /* kind TM_LINE_PEOPLE, owned by the caller; NULL: one person, or none found */
} TmStudyBudget;

/* Makes both from @result, of @study, in the texts of @job; changes nothing that is saved. */
TmStudyBudgetStatus tm_study_budget (TmJob *job, const TmStudy *study, const TmStudyResult *result,
                                     TmStudyBudget *out);
const char *tm_study_budget_status_text (TmStudyBudgetStatus status);

/* Method against method on the same pieces (Bland & Altman, Lancet 1986; the intervals of the limits
 * with their full variance, Statistical Methods in Medical Research 1999). */
typedef struct {
  guint n;
  double mean, sd;              /* of a - b */
  double mean_low, mean_high;   /* 95 % t interval */
  double agree_low, agree_high; /* limits of agreement: mean ± 1.96 sd */
  double agree_low_low, agree_low_high, agree_high_low, agree_high_high; /* their 95 % intervals */
} TmPaired;
/* FALSE with fewer than two pairs. */
gboolean tm_paired (const double *a, const double *b, guint n, TmPaired *out);
/* Means, as corrected, at each piece, place and station that both methods have read, in the feature's unit;
 * @a and @b to be freed by the caller.  Returns: how many pairs. */
guint tm_paired_values (const TmJob *job, const TmFeature *feature, const char *method_a,
                        const char *method_b, double **a, double **b);

G_END_DECLS
