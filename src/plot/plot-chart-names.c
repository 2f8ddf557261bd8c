/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What sizes, lengths and pieces are called on the pictures of a batch.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "plot-chart-private.h"

/* -------- Numbers -------- */

double
tm_chart_count (const TmChartPlot *plot, double relative)
{
  return (double)plot->batch->series.reference + relative;
}

char *
tm_chart_size_text (const TmChartPlot *plot, double relative)
{
  const double count = CLAMP (tm_chart_count (plot, relative), -(double)TM_COUNT_MAX, (double)TM_COUNT_MAX);

  return tm_count_format ((gint64)llround (count), plot->unit, plot->figures);
}

/* Two digits that count, in the shop's small unit. */
char *
tm_chart_length_text (const TmChartPlot *plot, double counts)
{
  const TmUnit unit = tm_unit_small (plot->unit);
  const double value = fabs (counts) / (double)MAX (1, tm_unit_counts (unit));
  g_autofree char *number = NULL;
  double digits = 0.0;

  if (value > 0)
    digits = 1.0 - floor (log10 (value * (1 + 1e-9)));
  number = tm_count_format ((gint64)llround (CLAMP (counts, -4e18, 4e18)), unit, (guint)CLAMP (digits, 0, 6));
  return g_strdup_printf ("%s %s", number, tm_unit_symbol (unit));
}

/* -------- Pieces -------- */

/* The number at the end of a serial; FALSE where there is none that can be counted on. */
static gboolean
split_serial (const char *serial, guint64 *number, gsize *from)
{
  const gsize length = strlen (serial);

  *from = length;
  while (*from > 0 && g_ascii_isdigit (serial[*from - 1]))
    (*from)--;
  if (*from == length || length - *from > 15)
    return FALSE;
  *number = g_ascii_strtoull (serial + *from, NULL, 10);
  return TRUE;
}

/* TRUE where the serials before @piece count in ones, so that those to come can be told. */
static gboolean
continue_serials (const TmSeries *series, guint piece, char **name)
{
  const char *last = series->points[series->n_points - 1].piece->serial;
  guint64 number, before;
  gsize from, from_before;

  if (!split_serial (last, &number, &from))
    return FALSE;
  if (series->n_points > 1
      && (!split_serial (series->points[series->n_points - 2].piece->serial, &before, &from_before)
          || number != before + 1))
    return FALSE;
  *name = g_strdup_printf ("%.*s%0*" G_GUINT64_FORMAT, (int)from, last, (int)(strlen (last) - from),
                           number + (piece - (series->n_points - 1)));
  return TRUE;
}

char *
tm_chart_piece_name (const TmChartPlot *plot, guint piece)
{
  const TmSeries *series = &plot->batch->series;
  char *name;

  if (piece < series->n_points)
    return g_strdup (series->points[piece].piece->serial);
  if (series->n_points > 0 && continue_serials (series, piece, &name))
    return name;
  return g_strdup_printf ("%u", piece + 1);
}

char *
tm_chart_name_piece_cb (gconstpointer data, guint piece)
{
  return tm_chart_piece_name (data, piece);
}

char *
tm_chart_item_name (const TmChartPlot *plot, guint item)
{
  g_autofree char *first = tm_chart_piece_name (plot, plot->items[item].first), *last = NULL;

  if (plot->items[item].last == plot->items[item].first)
    return g_steal_pointer (&first);
  last = tm_chart_piece_name (plot, plot->items[item].last);
  /* Translators: a group of pieces, from the first serial number to the last. */
  return g_strdup_printf (_ ("%s to %s"), first, last);
}
