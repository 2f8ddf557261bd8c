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

/* "Ppk 1.18 (0.88 to 1.48)"; NULL where there is none. */
static char *
format_index (const char *name, const TmIndex *index)
{
  g_autofree char *value = NULL, *low = NULL, *high = NULL;

  if (!isfinite (index->value))
    return NULL;
  value = format_figure (index->value);
  if (!isfinite (index->low) || !isfinite (index->high))
    return g_strdup_printf ("%s %s", name, value);
  low = format_figure (index->low);
  high = format_figure (index->high);
  /* Translators: an index of capability, its value and its interval. */
  return g_strdup_printf (_ ("%s %s (%s to %s)"), name, value, low, high);
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

static char *
describe_apart (const TmBatch *batch)
{
  g_autofree char *cpk = format_index ("Cpk", &batch->capability_apart.cpk);

  if (cpk == NULL)
    return NULL;
  /* Translators: an index of capability with the drift taken out. */
  return g_strdup_printf (_ ("scatter alone: %s"), cpk);
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
  tm_batch_words_add_line (lines, describe_shape (capability));
  if (isfinite (capability->expected_out) && capability->expected_out > 0)
    {
      g_autofree char *share = tm_chance_text (capability->expected_out);
      tm_batch_words_add_line (lines, g_strdup_printf (_ ("expected out: %s"), share));
    }
  if (capability->n_wanted > capability->n)
    tm_batch_words_add_line (
        lines, g_strdup_printf (ngettext ("%u piece would bring Ppk within a fifth",
                                          "%u pieces would bring Ppk within a fifth", capability->n_wanted),
                                capability->n_wanted));
  return g_string_free (lines, FALSE);
}
