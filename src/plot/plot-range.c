/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-range.h"

#include <math.h>

/* Shares of the band: shown beyond each limit in any case, at most, and kept free at the ends. */
#define MARGIN 0.4
#define REACH  1.6
#define EDGE   0.05

void
tm_range_stretch (double *low, double *high, double at)
{
  if (!isfinite (at))
    return;
  *low = isfinite (*low) ? MIN (*low, at) : at;
  *high = isfinite (*high) ? MAX (*high, at) : at;
}

/* The limits' own ends; the same twice for one limit, NAN for none. */
static void
find_band (const TmLimits *limits, double *low, double *high)
{
  *low = *high = NAN;
  if (limits->has_lower)
    tm_range_stretch (low, high, (double)limits->lower);
  if (limits->has_upper)
    tm_range_stretch (low, high, (double)limits->upper);
  if (limits->has_upper && limits->zero_bounded)
    tm_range_stretch (low, high, 0.0);
}

static void
choose_banded (const TmRange *range, double low, double high, TmAxis *axis)
{
  const double span = high - low, edge = EDGE * span;
  const double bottom = low - REACH * span, top = high + REACH * span;
  const double margin = range->margin > 0 ? range->margin : MARGIN;
  double from = low - margin * span, to = high + margin * span;

  if (isfinite (range->data_low))
    {
      from = MIN (from, MAX (range->data_low - edge, bottom));
      to = MAX (to, MIN (range->data_high + edge, top));
    }
  if (isfinite (range->mate_low) && range->mate_low >= bottom)
    from = MIN (from, range->mate_low - edge);
  if (isfinite (range->mate_high) && range->mate_high <= top)
    to = MAX (to, range->mate_high + edge);
  if (range->planned)
    {
      from = MIN (from, range->plan_low - edge);
      to = MAX (to, range->plan_high + edge);
    }
  if (range->limits.zero_bounded)
    from = MAX (from, -0.02 * span);
  *axis = tm_axis_new (from, to, range->unit);
}

/* One limit, or none: wide enough for all that was read. */
static void
choose_open (const TmRange *range, double limit, TmAxis *axis)
{
  const double counts = (double)MAX (1, tm_unit_counts (range->unit));
  double span = MAX (6.0 * range->guard, 20.0 * counts * pow (10.0, -(double)range->decimals));
  double low = range->data_low, high = range->data_high;

  tm_range_stretch (&low, &high, limit);
  if (range->planned)
    {
      tm_range_stretch (&low, &high, range->plan_low);
      tm_range_stretch (&low, &high, range->plan_high);
    }
  span = MAX (span, high - low);
  *axis = tm_axis_new (low - 0.35 * span, high + 0.35 * span, range->unit);
}

gboolean
tm_range_choose (const TmRange *range, TmAxis *axis)
{
  double low, high;

  *axis = tm_axis_new (0.0, 1.0, range->unit);
  find_band (&range->limits, &low, &high);
  if (isfinite (low) && high > low)
    choose_banded (range, low, high, axis);
  else if (isfinite (low) || isfinite (range->data_low))
    choose_open (range, low, axis);
  else
    return FALSE;
  return TRUE;
}
