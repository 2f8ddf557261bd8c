/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-axis.h"

#include <math.h>

/* No more ticks than this are ever counted, so that a caller's loop ends soon. */
#define MOST_TICKS 1000

TmAxis
tm_axis_new (double low, double high, TmUnit unit)
{
  const double most = (double)TM_COUNT_MAX;

  if (!isfinite (low))
    low = isfinite (high) ? high : 0.0;
  if (!isfinite (high))
    high = low;
  if (low > high)
    {
      const double swap = low;
      low = high;
      high = swap;
    }
  low = CLAMP (low, -most, most);
  high = CLAMP (high, -most, most);
  if (high - low < 1.0)
    {
      const double widen = fmax (1.0, fabs (low) * 1e-6);
      low -= widen;
      high += widen;
    }
  return (TmAxis) { low, high, unit };
}

double
tm_axis_fraction (const TmAxis *axis, double count)
{
  return (count - axis->low) / (axis->high - axis->low);
}

/* The counts of 10^-@decimals of @unit; 0 when that is not a whole count. */
static gint64
find_decade (TmUnit unit, guint decimals)
{
  gint64 counts = MAX (1, tm_unit_counts (unit));

  for (guint i = 0; i < decimals; i++)
    {
      if (counts % 10 != 0)
        return 0;
      counts /= 10;
    }
  return counts;
}

/* The smallest step of 1, 2 or 5 @decade that is at least @least; 0 when none is. */
static gint64
choose_step (gint64 decade, double least)
{
  static const gint64 factors[] = { 1, 2, 5 };

  for (gsize i = 0; i < G_N_ELEMENTS (factors); i++)
    if ((double)(decade * factors[i]) >= least)
      return decade * factors[i];
  return 0;
}

static void
choose_ticks (TmUnit unit, double least, TmTicks *ticks)
{
  for (int decimals = TM_MAX_DECIMALS; decimals >= 0; decimals--)
    {
      const gint64 decade = find_decade (unit, (guint)decimals);
      const gint64 step = decade > 0 ? choose_step (decade, least) : 0;
      if (step > 0)
        {
          ticks->step = step;
          ticks->decimals = (guint)decimals;
          return;
        }
    }
  /* Wider than five units: whole tens of them. */
  for (gint64 decade = find_decade (unit, 0); decade < TM_COUNT_MAX / 50; decade *= 10)
    {
      ticks->step = choose_step (decade * 10, least);
      ticks->decimals = 0;
      if (ticks->step > 0)
        return;
    }
  ticks->step = TM_COUNT_MAX;
}

TmTicks
tm_axis_ticks (const TmAxis *axis, guint most)
{
  TmTicks ticks = { 0 };
  const double span = axis->high - axis->low;

  choose_ticks (axis->unit, span / CLAMP (most, 1, MOST_TICKS), &ticks);
  ticks.first = (gint64)ceil (axis->low / (double)ticks.step) * ticks.step;
  if ((double)ticks.first <= axis->high)
    ticks.n = 1 + (guint)floor ((axis->high - (double)ticks.first) / (double)ticks.step);
  return ticks;
}

gint64
tm_ticks_minor_step (const TmTicks *ticks)
{
  static const gint64 parts[] = { 2, 5 };

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      gint64 minor = ticks->step / parts[i];
      gint64 lead = minor;
      while (lead > 0 && lead % 10 == 0)
        lead /= 10;
      if (ticks->step % parts[i] == 0 && minor > 0 && lead < 10)
        return minor;
    }
  return ticks->step;
}
