/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-axis.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* 1, 2 or 5 times a power of ten, some five of them over what is shown, none finer than is printed. */
static double
choose_step (double low, double high, guint decimals)
{
  const double least = MAX ((high - low) / 5.0, pow (10.0, -(double)decimals));
  const double decade = pow (10.0, floor (log10 (least) + 1e-9));

  for (int factor = 1; factor <= 2; factor++)
    if (decade * factor >= least * 0.999)
      return decade * factor;
  return decade * 5.0 >= least * 0.999 ? decade * 5.0 : decade * 10.0;
}

TmAxisRange
tm_axis_range (double low, double high, guint decimals)
{
  const double step = choose_step (low, high, decimals);

  return (TmAxisRange) { (floor (low / step + 1e-9) - 1.0) * step, (ceil (high / step - 1e-9) + 1.0) * step,
                         step };
}

guint
tm_axis_decimals (const TmAxisRange *range)
{
  return (guint)CLAMP (ceil (-log10 (range->step) - 1e-9), 0, 12);
}

void
tm_axis_apply (lxw_chart *chart, const TmAxisRange *range, guint decimals, const char *name)
{
  g_autofree char *digits = g_strnfill (decimals, '0');
  g_autofree char *format = g_strdup_printf ("0%s%s", decimals > 0 ? "." : "", digits);

  chart_axis_set_num_format (chart->y_axis, format);
  chart_axis_set_min (chart->y_axis, range->low);
  chart_axis_set_max (chart->y_axis, range->high);
  chart_axis_set_major_unit (chart->y_axis, range->step);
  chart_axis_set_name (chart->y_axis, name);
}

void
tm_axis_of_pieces (lxw_chart *chart, guint n)
{
  chart_axis_set_name (chart->x_axis, _ ("piece"));
  chart_axis_set_label_position (chart->x_axis, LXW_CHART_AXIS_LABEL_POSITION_LOW);
  chart_axis_set_interval_unit (chart->x_axis, (uint16_t)CLAMP ((n + 11) / 12, 1, 1000));
}
