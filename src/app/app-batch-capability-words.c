/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-capability-words: what the process can hold, or why that is not said.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app-batch-words-private.h"
#include "plot-chance.h"

/* Two decimals, with a minus as wide as a digit and none before zero. */
static char *
format_figure (double value)
{
  char *text = g_strdup_printf ("%.2f", fabs (value));

  if (value < 0 && strpbrk (text, "123456789") != NULL)
    {
      char *signed_text = g_strconcat ("−", text, NULL);

      g_free (text);
      return signed_text;
    }
  return text;
}

char *
tm_words_batch_index (const TmIndex *index)
{
  g_autofree char *value = NULL, *low = NULL, *high = NULL;

  if (!isfinite (index->value))
    return g_strdup ("");
  value = format_figure (index->value);
  if (!isfinite (index->low) || !isfinite (index->high))
    return g_steal_pointer (&value);
  low = format_figure (index->low);
  high = format_figure (index->high);
  /* Translators: an index of capability and its interval. */
  return g_strdup_printf (_ ("%s (%s to %s)"), value, low, high);
}

/* "Ppk 1.18 (0.88 to 1.48)"; NULL where there is none. */
static char *
format_index (const char *name, const TmIndex *index)
{
  g_autofree char *figure = tm_words_batch_index (index);

  return *figure != '\0' ? g_strdup_printf ("%s %s", name, figure) : NULL;
}

static char *
describe_refusal (const TmCapability *capability)
{
  guint n = (guint)capability->n;

  switch (capability->status)
    {
    case TM_CAPABLE_TOO_FEW:
      return g_strdup_printf (ngettext ("refused: %u piece, and five are the least",
                                        "refused: %u pieces, and five are the least", n),
                              n);
    case TM_CAPABLE_NO_SPREAD:
      return g_strdup (_ ("refused: all sizes are equal; the gauge shows no spread"));
    case TM_CAPABLE_NO_LIMITS:
      return g_strdup (_ ("refused: there are no limits to compare with"));
    case TM_CAPABLE_MEASURING:
      return g_strdup (_ ("refused: measuring spreads as far as the pieces do"));
    case TM_CAPABLE_OK:
    case TM_N_CAPABLE_STATUSES:
    default:
      return g_strdup ("");
    }
}

/* What the figures rest on where that is not a normal distribution. */
static char *
describe_shape (const TmCapability *capability)
{
  g_autofree char *p = tm_batch_words_p (capability->normality_p);

  if (capability->shape == TM_SHAPE_NORMAL)
    return NULL;
  if (isfinite (capability->normality_p))
    return g_strdup_printf (_ ("not normal (p %s): by quantiles, %s"), p,
                            g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (capability->shape)));
  return g_strdup_printf (_ ("by quantiles, %s"),
                          g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (capability->shape)));
}

static char *
describe_overall (const TmCapability *capability)
{
  g_autofree char *ppk = format_index ("Ppk", &capability->ppk);
  guint n = (guint)capability->n;

  if (ppk == NULL)
    return NULL;
  return g_strdup_printf (ngettext ("%s, %u piece", "%s, %u pieces", n), ppk, n);
}

/* Cpk stands on the scatter alone as it is. */
static char *
describe_apart (const TmBatch *batch)
{
  g_autofree char *together = format_index ("Ppk", &batch->capability.ppk);
  g_autofree char *alone = format_index ("Ppk", &batch->capability_apart.ppk);

  if (batch->capability_apart.status != TM_CAPABLE_OK || alone == NULL || g_strcmp0 (alone, together) == 0)
    return NULL;
  /* Translators: an index of capability with the drift taken out. */
  return g_strdup_printf (_ ("scatter alone: %s"), alone);
}

/* Why a figure that is usually given is not. */
static char *
describe_lost (const TmCapability *capability)
{
  if (capability->unshaped)
    return g_strdup (_ ("Ppk refused: not normal, and no named shape fits"));
  if (capability->within_lost)
    return g_strdup (_ ("Cpk refused: measuring scatters as much as the pieces do"));
  return NULL;
}

static char *
describe_expected (const TmCapability *capability)
{
  g_autofree char *share = NULL;

  if (!isfinite (capability->expected_out) || !(capability->expected_out > 0))
    return NULL;
  share = tm_chance_text (capability->expected_out);
  return g_strdup_printf (_ ("expected out: %s"), share);
}

static char *
describe_measuring (const TmBatch *batch)
{
  const double scatter = batch->series.repeatability;
  const TmUnit unit = tm_unit_small (batch->series.feature->unit);
  g_autofree char *text = NULL;

  if (!isfinite (scatter) || !(scatter > 0))
    return NULL;
  text = tm_batch_words_signed (tm_batch_words_count (scatter), unit,
                                tm_batch_words_decimals (scatter, scatter, unit), FALSE);
  /* Translators: a standard deviation and its unit. */
  return g_strdup_printf (_ ("scatter of measuring taken out: %s %s"), text, tm_unit_symbol (unit));
}

/* Of a process that moves no number of pieces makes the figure surer. */
static char *
describe_wanted (const TmBatch *batch)
{
  const TmCapability *capability = &batch->capability;
  const guint n = capability->n_wanted;

  if (!isfinite (capability->ppk.value) || n <= capability->n || tm_batch_state (batch) != TM_BATCH_STEADY)
    return NULL;
  return g_strdup_printf (
      ngettext ("%u piece would bring Ppk within a fifth", "%u pieces would bring Ppk within a fifth", n), n);
}

char *
tm_batch_words_say_capability (const TmBatch *batch)
{
  const TmCapability *capability = &batch->capability;
  GString *lines;

  if (capability->status != TM_CAPABLE_OK)
    return describe_refusal (capability);
  lines = g_string_new (NULL);
  tm_batch_words_add_line (lines, describe_overall (capability));
  tm_batch_words_add_line (lines, describe_apart (batch));
  tm_batch_words_add_line (lines, format_index ("Cmk", &capability->cmk));
  tm_batch_words_add_line (lines, describe_lost (capability));
  if (!capability->unshaped)
    tm_batch_words_add_line (lines, describe_shape (capability));
  tm_batch_words_add_line (lines, describe_expected (capability));
  tm_batch_words_add_line (lines, describe_measuring (batch));
  tm_batch_words_add_line (lines, describe_wanted (batch));
  return g_string_free (lines, FALSE);
}
