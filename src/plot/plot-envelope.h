/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-envelope: smallest, largest and mean of any stretch of a long row of values, at the cost of a few
 * steps: what a column of pixels has to show of the thousand values that fall on it.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* NAN: the value is missing. */
typedef double (*TmEnvelopeValue) (gconstpointer data, gsize at);

typedef struct {
  double low, high; /* NAN where n is 0 */
  double sum;
  guint n; /* values that are there */
} TmSpan;

typedef struct _TmEnvelope TmEnvelope;

/* Spans that begin and end at multiples of this, of its square, cube… are the cheapest. */
#define TM_ENVELOPE_FAN 16

/* @data is borrowed and must not change. */
TmEnvelope *tm_envelope_new (TmEnvelopeValue value, gconstpointer data, gsize n) G_GNUC_WARN_UNUSED_RESULT;
void tm_envelope_free (TmEnvelope *envelope);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmEnvelope, tm_envelope_free)

gsize tm_envelope_length (const TmEnvelope *envelope);
double tm_envelope_value (const TmEnvelope *envelope, gsize at);

/* Of the values @from to @to - 1; a range that reaches beyond the row is cut to it. */
TmSpan tm_envelope_span (const TmEnvelope *envelope, gsize from, gsize to);

G_END_DECLS
