/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-sample-words: how many pieces of a lot are to be measured, and between which sizes nearly all of a
 * process lie, in words.  No widgets.
 */

#pragma once

#include "core-batch.h"

G_BEGIN_DECLS

/* "Measure 58 of the 500, and accept the lot only when none of them is out: …" */
char *tm_words_lot_sample (guint lot, double share, double risk) G_GNUC_WARN_UNUSED_RESULT;

/* What a batch knows that a tolerance interval is made from. */
typedef struct {
  guint n;
  double mean, deviation; /* counts; the mean relative to @reference */
  gint64 reference;
  double normality_p; /* NAN: not tested */
  gboolean drifting;
  gboolean shifted; /* the level has changed, or a rule speaks; a piece that is out changes neither */
} TmSpread;
TmSpread tm_spread_of (const TmBatch *batch);

/* "95 % sure that 99 % lie between 24.998 and 25.016 mm: …", or why that cannot be said. */
char *tm_words_tolerance_interval (const TmFeature *feature, const TmSpread *spread, double coverage,
                                   double confidence) G_GNUC_WARN_UNUSED_RESULT;

/* A share of one as typed in percent: "99", "99.73 %", "0,5".  FALSE unless it lies between 0 and 100, both
 * left out. */
gboolean tm_read_percent (const char *text, double *share);

G_END_DECLS
