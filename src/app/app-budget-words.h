/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-budget-words: the uncertainty budget of a method for a feature, put into words. No widgets.
 *
 * Every text is translated and of the caller's own.  Lengths are in the shop's small unit, to two
 * significant digits.
 */

#pragma once

#include "core-judge.h"
#include "core-method.h"
#include "core-model.h"

G_BEGIN_DECLS

/* One line of the budget of a single reading. */
typedef struct {
  char *what;         /* "limit of error of BM-2" */
  char *stated;       /* "±4 µm" */
  char *distribution; /* "rectangular" */
  char *divisor;      /* "1.732" */
  char *standard;     /* "2.3 µm": what it gives to the result */
  char *dof;          /* "30", or "∞" when the value is taken as known */
  double share;       /* of the total variance, 0 to 1 */
  char *percent;      /* "61 %" */
  char *source;       /* where the figure comes from, "" when nobody said; an assumed one says so */
  gboolean assumed;
  TmBudgetLine *line; /* of the job, when a person or a study wrote it; else NULL */
  char *sentence;     /* all of it, as it is read out */
} TmBudgetRow;

void tm_budget_row_free (TmBudgetRow *row);

/* TmBudgetRow *, largest share first; empty when the method is unknown. */
GPtrArray *tm_words_budget (const TmJob *job, const TmFeature *feature,
                            const char *method_name) G_GNUC_WARN_UNUSED_RESULT;

/* What the lines come to: a name and its value for each. */
typedef enum {
  TM_TOTAL_COMBINED,
  TM_TOTAL_DOF, /* "16.7, taken as 16" */
  TM_TOTAL_COVERAGE,
  TM_TOTAL_EXPANDED,
  TM_TOTAL_GUARD,
  TM_TOTAL_SHARE, /* of the band that the guards take */
  TM_TOTAL_WORD,  /* "settles most readings" */
  TM_N_TOTALS
} TmTotal;
const char *tm_words_total_name (TmTotal total);
/* "" where it does not apply. */
char *tm_words_total (const TmFeature *feature, const TmOutlook *outlook,
                      TmTotal total) G_GNUC_WARN_UNUSED_RESULT;

/* What one would expect in the budget and is not stated: a line each ("Transfer feel of TG-1: not
 * stated, left out."); NULL-terminated. */
char **tm_words_left_out (const TmJob *job, const TmFeature *feature,
                          const char *method_name) G_GNUC_WARN_UNUSED_RESULT;

/* Why there is no budget: one line; "" when there is one. */
char *tm_words_no_budget (const TmJob *job, const TmFeature *feature,
                          const char *method_name) G_GNUC_WARN_UNUSED_RESULT;

/* "BM-2", or "TG-1, read with OM-25". */
char *tm_words_method_gauges (const TmMethod *method) G_GNUC_WARN_UNUSED_RESULT;

/* @counts in the small unit that goes with @unit, with its symbol: "2.3 µm"; up rounds up. */
char *tm_words_small (double counts, TmUnit unit, gboolean up) G_GNUC_WARN_UNUSED_RESULT;

/* "61 %", "under 1 %". */
char *tm_words_share (double share) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
