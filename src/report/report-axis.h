/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-axis: the value axis of a native chart, with marks at round numbers.
 */

#pragma once

#include <glib.h>
#include <xlsxwriter.h>

G_BEGIN_DECLS

/* What an axis reaches over, and the step between its marks. */
typedef struct {
  double low, high, step;
} TmAxisRange;

/* Holds everything from @low to @high, with marks no finer than @decimals. */
TmAxisRange tm_axis_range (double low, double high, guint decimals);

/* Decimals that tell its marks apart. */
guint tm_axis_decimals (const TmAxisRange *range);

/* @name: of the unit, may be "". */
void tm_axis_apply (lxw_chart *chart, const TmAxisRange *range, guint decimals, const char *name);

/* Categories are pieces, of which there are @n: about twelve get their name. */
void tm_axis_of_pieces (lxw_chart *chart, guint n);

G_END_DECLS
