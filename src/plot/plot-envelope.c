/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-envelope.h"

#include <math.h>

#define FAN         TM_ENVELOPE_FAN /* spans of one level that one of the next stands for */
#define MOST_LEVELS 16

struct _TmEnvelope {
  TmEnvelopeValue value;
  gconstpointer data;
  gsize n;
  guint n_levels;
  TmSpan *levels[MOST_LEVELS]; /* whole blocks only: what is left over is read one level below */
  gsize lengths[MOST_LEVELS];
};

static void
add_span (TmSpan *out, const TmSpan *span)
{
  if (span->n == 0)
    return;
  if (out->n == 0)
    {
      *out = *span;
      return;
    }
  out->low = MIN (out->low, span->low);
  out->high = MAX (out->high, span->high);
  out->sum += span->sum;
  out->n += span->n;
}

static void
add_value (TmSpan *out, double value)
{
  const TmSpan span = { value, value, value, 1 };

  if (isfinite (value))
    add_span (out, &span);
}

/* Of level 0, the values themselves, or of the blocks of a level above. */
static void
add_range (const TmEnvelope *envelope, guint level, gsize from, gsize to, TmSpan *out)
{
  for (gsize i = from; i < to; i++)
    if (level == 0)
      add_value (out, envelope->value (envelope->data, i));
    else
      add_span (out, &envelope->levels[level - 1][i]);
}

static void
build_level (TmEnvelope *envelope, gsize below)
{
  const guint level = envelope->n_levels;
  const gsize length = below / FAN;

  envelope->levels[level] = g_new (TmSpan, length);
  envelope->lengths[level] = length;
  for (gsize i = 0; i < length; i++)
    {
      TmSpan span = { NAN, NAN, 0.0, 0 };
      add_range (envelope, level, i * FAN, (i + 1) * FAN, &span);
      envelope->levels[level][i] = span;
    }
  envelope->n_levels++;
}

TmEnvelope *
tm_envelope_new (TmEnvelopeValue value, gconstpointer data, gsize n)
{
  TmEnvelope *envelope = g_new0 (TmEnvelope, 1);

  envelope->value = value;
  envelope->data = data;
  envelope->n = n;
  for (gsize below = n; below >= FAN && envelope->n_levels < MOST_LEVELS;
       below = envelope->lengths[envelope->n_levels - 1])
    build_level (envelope, below);
  return envelope;
}

void
tm_envelope_free (TmEnvelope *envelope)
{
  if (envelope == NULL)
    return;
  for (guint i = 0; i < envelope->n_levels; i++)
    g_free (envelope->levels[i]);
  g_free (envelope);
}

gsize
tm_envelope_length (const TmEnvelope *envelope)
{
  return envelope->n;
}

double
tm_envelope_value (const TmEnvelope *envelope, gsize at)
{
  return at < envelope->n ? envelope->value (envelope->data, at) : NAN;
}

/* Ends that are no whole block are taken from this level, what lies between from the one above. */
static void
collect (const TmEnvelope *envelope, guint level, gsize from, gsize to, TmSpan *out)
{
  const gsize head = (from + FAN - 1) / FAN * FAN, tail = to / FAN * FAN;

  if (level >= envelope->n_levels || head >= tail)
    {
      add_range (envelope, level, from, to, out);
      return;
    }
  add_range (envelope, level, from, head, out);
  collect (envelope, level + 1, head / FAN, tail / FAN, out);
  add_range (envelope, level, tail, to, out);
}

TmSpan
tm_envelope_span (const TmEnvelope *envelope, gsize from, gsize to)
{
  TmSpan span = { NAN, NAN, 0.0, 0 };

  to = MIN (to, envelope->n);
  if (from < to)
    collect (envelope, 0, from, to, &span);
  return span;
}
