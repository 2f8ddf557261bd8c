/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-fit: the fits that a report shows: by limits, and of each measured mate with the place that it is
 * meant for.
 */

#pragma once

#include "core-fit-check.h"
#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  const TmFeature *feature;
  const TmPiece *piece;   /* NULL: by limits, or a mate that is meant for no piece */
  guint place;            /* or 0 */
  const TmMateSize *mate; /* NULL: by limits */
  gboolean is_bore;       /* the feature is the bore of the pair */
  TmFitPart own, other;   /* the feature, its mate; smallest 0: not known */
  TmFitWant want;
  TmFitStatus status;
  TmFitCheck check;
} TmReportFit;

/* TRUE when a mate was measured or a clearance is wanted. */
gboolean tm_report_has_fits (const TmJob *job);

/* TmReportFit, in the drawing's order. */
GArray *tm_report_fits (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;

/* What the fit is, in a few words of the user's language. */
const char *tm_report_fit_word (const TmReportFit *fit);

/* Digits after the point that its sizes and clearances are shown with. */
guint tm_report_fit_decimals (const TmReportFit *fit);

G_END_DECLS
