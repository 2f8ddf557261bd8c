/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-study: gauge repeatability and reproducibility, pieces × people × repeats, crossed.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef enum {
  TM_STUDY_OK,
  TM_STUDY_ONE_PERSON, /* valid: repeatability only; what people add is not known */
  TM_STUDY_MISSING,    /* a cell is empty: refused; see `missing` */
  TM_STUDY_TOO_SMALL,  /* fewer than 2 pieces or 2 repeats */
  TM_STUDY_NO_SPREAD,  /* every value equal: nothing can be said beyond the resolution */
  TM_N_STUDY_STATUSES
} TmStudyStatus;

/* One component as a standard deviation with its 95 % interval (modified large-sample). */
typedef struct {
  double sd;
  double low, high;
} TmStudyPart;

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
  double ms_error, ms_interaction, ms_people, ms_pieces;    /* mean squares, unpooled */
  double percent_study;                                     /* 100 grr / tv */
  double percent_band;                                      /* 100 · 6 grr / band; NAN without a band */
  guint ndc;                                                /* ⌊√2 pv / grr⌋, at least 1 */
  double range_ev, range_av, range_grr, range_pv, range_tv; /* by the range method, beside; NAN where it
                                                             * does not apply */
} TmStudyResult;

/* @values[(piece · people + person) · repeats + trial]; NAN: an empty cell.  @band <= 0: none. */
void tm_study_analyse (const double *values, guint pieces, guint people, guint repeats, double band,
                       TmStudyResult *out);
const char *tm_study_status_text (TmStudyStatus status);

/* The values of @study in its unit, in that order; free with g_free(). */
double *tm_study_values (const TmJob *job, const TmStudy *study) G_GNUC_WARN_UNUSED_RESULT;
/* What it is compared with: its band, else its feature's, in its unit; 0: none. */
double tm_study_band (const TmJob *job, const TmStudy *study);

/* The cell to be measured as the @n-th (from 0), in the study's random order: within a repeat each
 * person's run through the pieces is shuffled on its own, by the seed.  The same on every machine. */
typedef struct {
  guint piece, person, trial; /* indices from 0 */
} TmStudyCell;
TmStudyCell tm_study_cell (const TmStudy *study, guint n);
guint tm_study_n_cells (const TmStudy *study);
/* The next cell without a reading, in that order; FALSE when all are there. */
gboolean tm_study_next (const TmJob *job, const TmStudy *study, TmStudyCell *cell, guint *n);

/* Method against method on the same pieces (Bland & Altman, Lancet 1986). */
typedef struct {
  guint n;
  double mean, sd;              /* of a - b */
  double mean_low, mean_high;   /* 95 % t interval */
  double agree_low, agree_high; /* limits of agreement: mean ± 1.96 sd */
  double agree_low_low, agree_low_high, agree_high_low, agree_high_high; /* their 95 % intervals */
} TmPaired;
/* FALSE with fewer than two pairs. */
gboolean tm_paired (const double *a, const double *b, guint n, TmPaired *out);
/* Means at each piece and station that both methods have read, in the feature's unit; @a and @b to be
 * freed by the caller.  Returns: how many pairs. */
guint tm_paired_values (const TmJob *job, const TmFeature *feature, const char *method_a,
                        const char *method_b, double **a, double **b);

G_END_DECLS
