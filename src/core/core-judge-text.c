/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge-text: the size and the spreads of a judgement as printed, with enough digits that what
 * is printed and the verdict cannot disagree.
 */

#include <math.h>
#include <string.h>

#include "core-judge.h"

/* A printed decimal as the exact fraction digits / scale of its unit. */
typedef struct {
  TmWide digits;
  TmWide scale;
} Printed;

static Printed
read_printed (const char *text)
{
  Printed printed = { 0, 1 };
  gboolean negative = FALSE, fraction = FALSE;

  for (const char *c = text; *c != '\0'; c++)
    {
      negative = negative || *c == '-';
      fraction = fraction || *c == '.';
      if (!g_ascii_isdigit (*c))
        continue;
      printed.digits = printed.digits * 10 + (*c - '0');
      if (fraction)
        printed.scale *= 10;
    }
  if (negative)
    printed.digits = -printed.digits;
  return printed;
}

static int
get_sign (TmWide value)
{
  return (value > 0) - (value < 0);
}

static gboolean
is_on_same_side (const TmLocalSize *size, const Printed *printed, TmUnit unit, gint64 limit)
{
  TmWide difference = printed->digits * tm_unit_counts (unit) - (TmWide)limit * printed->scale;

  return get_sign (difference) == get_sign (tm_local_size_compare (size, limit));
}

/* What counts is an estimate of its own: pins alone, or pins and readings together. */
static gboolean
has_estimate (const TmJudgement *judgement)
{
  return judgement->counted != TM_COUNTED_READINGS && isfinite (judgement->combined_size);
}

/* The printed size stands to each limit, and to each guarded limit, as the size itself does; a size
 * that counts by its probability has no guard. */
static gboolean
agrees (const TmJudgement *judgement, const TmLocalSize *size, const char *text)
{
  const TmLimits *limits = &judgement->limits;
  TmUnit unit = judgement->feature->unit;
  Printed printed = read_printed (text);
  const gint64 insets[] = { 0, judgement->guard, -judgement->guard_out };
  guint n_insets = judgement->pins_joined ? 1 : G_N_ELEMENTS (insets);

  for (guint i = 0; i < n_insets; i++)
    {
      if (limits->has_lower && !is_on_same_side (size, &printed, unit, limits->lower + insets[i]))
        return FALSE;
      if (limits->has_upper && !is_on_same_side (size, &printed, unit, limits->upper - insets[i]))
        return FALSE;
    }
  return TRUE;
}

/* Digits of @unit that are at least as fine as what was typed; one more for a mean or a distance. */
static guint
get_typed_decimals (const TmLocalSize *size, TmUnit unit)
{
  guint decimals = size->decimals;

  if (size->unit != unit && size->unit != TM_UNIT_NONE)
    {
      double step = (double)tm_unit_counts (size->unit) / pow (10, size->decimals);

      decimals = 0;
      while (decimals < TM_MAX_DECIMALS
             && (double)tm_unit_counts (unit) / pow (10, decimals) > step * 1.000001)
        decimals++;
    }
  if (size->n > 1 || size->radial || size->sum != size->raw_sum)
    decimals++;
  return MIN (decimals, TM_MAX_DECIMALS);
}

/* Digits of the limits, and one more for what is reckoned from several sources. */
static guint
get_limit_decimals (const TmFeature *feature)
{
  const TmQuantity *limits[] = { &feature->lower, &feature->upper };
  guint decimals = 0;

  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    if (limits[i]->given && limits[i]->unit == feature->unit)
      decimals = MAX (decimals, limits[i]->decimals);
  return MIN (decimals + 1, TM_MAX_DECIMALS);
}

/* The estimate as a size of one reading. */
static TmLocalSize
make_estimate (const TmJudgement *judgement)
{
  TmLocalSize size = { .station = "", .method_name = "", .n = 1 };

  size.sum = size.raw_sum = (TmWide)judgement->combined_reference + llround (judgement->combined_size);
  return size;
}

static char *
print_size (const TmJudgement *judgement, guint *decimals)
{
  TmUnit unit = judgement->feature->unit;
  TmLocalSize size;

  if (has_estimate (judgement))
    {
      size = make_estimate (judgement);
      *decimals = get_limit_decimals (judgement->feature);
    }
  else
    {
      size = judgement->sizes.stations[judgement->deciding];
      *decimals = get_typed_decimals (&size, unit);
    }
  for (;; (*decimals)++)
    {
      g_autofree char *text = tm_mean_format (size.sum, size.n, unit, *decimals);

      if (*decimals >= TM_MAX_DECIMALS || agrees (judgement, &size, text))
        return g_steal_pointer (&text);
    }
}

static gboolean
has_number (const TmJudgement *judgement)
{
  return !tm_kind_is_attribute (judgement->feature->kind)
         && (judgement->sizes.n_stations > 0 || has_estimate (judgement));
}

char *
tm_judgement_size_text (const TmJudgement *judgement)
{
  guint decimals;

  if (has_number (judgement))
    return print_size (judgement, &decimals);
  if (judgement->sizes.n_stations == 0)
    return g_strdup ("");
  return g_strdup (tm_outcome_word (judgement->sizes.stations[judgement->deciding].outcome));
}

/* Digits after the point that show two significant ones of @value. */
static guint
get_spread_decimals (double value)
{
  int exponent = value > 0 ? (int)floor (log10 (value)) : 0;

  return (guint)CLAMP (1 - exponent, 0, TM_MAX_DECIMALS);
}

/* Two digits finer than the size is printed says nothing more. */
static guint
get_most_decimals (const TmJudgement *judgement)
{
  guint decimals = TM_MAX_DECIMALS;

  if (has_number (judgement))
    {
      g_autofree char *text = print_size (judgement, &decimals);

      decimals = MIN (decimals + 2, TM_MAX_DECIMALS);
    }
  return decimals;
}

char *
tm_judgement_spread_text (const TmJudgement *judgement, double counts)
{
  TmUnit unit = judgement->feature->unit;
  double value, scale;
  guint decimals;

  if (!isfinite (counts) || tm_unit_counts (unit) == 0)
    return g_strdup ("");
  value = fabs (counts) / (double)tm_unit_counts (unit);
  decimals = MIN (get_spread_decimals (value), get_most_decimals (judgement));
  scale = pow (10, decimals);
  value = ceil (value * scale * (1 - 1e-9)) / scale;
  return tm_count_format (tm_count_from_double (copysign (value, counts), unit), unit, decimals);
}
