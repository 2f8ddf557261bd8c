/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lane of the cumulative sums under a run chart.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

/* Standard deviations to either edge of the lane; a sum that is larger has said enough. */
#define SUMS_SHOWN (2.0 * TM_BATCH_CUSUM_H)

/* In standard deviations, either way. */
static double
find_sum_y (const TmFrame *lane, double sum)
{
  const double share = CLAMP (sum / SUMS_SHOWN, -1.0, 1.0);

  return (lane->top + lane->bottom) / 2.0 - share * (lane->bottom - lane->top) / 2.0;
}

static void
draw_sum_lines (TmFrame *lane)
{
  static const double sums[] = { TM_BATCH_CUSUM_H, -TM_BATCH_CUSUM_H };

  tm_frame_fill (lane, lane->left, lane->top, lane->right - lane->left, lane->bottom - lane->top,
                 &lane->pen.theme->dim, 0.08);
  tm_frame_dashed (lane, lane->left, find_sum_y (lane, 0.0), lane->right, find_sum_y (lane, 0.0), 1.0,
                   &lane->pen.theme->dim, 1.0, 1.5, 3.0);
  tm_frame_number (lane, "0", find_sum_y (lane, 0.0), FALSE, TRUE);
  for (gsize i = 0; i < G_N_ELEMENTS (sums); i++)
    {
      const double y = find_sum_y (lane, sums[i]);
      g_autofree char *text = g_strdup_printf ("%s%.0f σ", sums[i] > 0 ? "+" : "−", fabs (sums[i]));

      tm_frame_dashed (lane, lane->left, y, lane->right, y, 1.0, &lane->pen.theme->text, 0.75, 7.0, 4.0);
      tm_frame_number (lane, text, y, FALSE, TRUE);
    }
}

/* The first signal, by a square and in words. */
static void
draw_sum_signal (TmFrame *lane, const TmChartPlot *plot)
{
  const TmTextStyle style = { .scale = 0.85 };
  const char *text = _ ("the cumulative sum signals");
  const gint first = plot->batch->first_cusum;
  const double half = lane->pen.size * 0.45;
  const TmCusumPoint *point;
  double x, y, words;

  if (first < 0 || (guint)first >= plot->n_items || (guint)first >= plot->batch->chart.n_groups)
    return;
  point = &plot->batch->cusum[first];
  x = tm_frame_piece (lane, plot->items[first].x);
  y = find_sum_y (lane, point->high > TM_BATCH_CUSUM_H ? point->high : -point->low);
  tm_chart_draw_square (lane, x, y);
  words = tm_text_width (&lane->pen, text, &style);
  x = CLAMP (x + half * 2.0, lane->left, MAX (lane->left, lane->right - words));
  y = CLAMP (y, lane->top + lane->pen.line * 0.5, lane->bottom - lane->pen.line * 0.5);
  tm_frame_fill (lane, x - 1.0, y - lane->pen.line * 0.4, words + 2.0, lane->pen.line * 0.8,
                 &lane->pen.theme->surface, 0.75);
  tm_text_draw_within (&lane->pen, text, x, y, lane->left, lane->right, &style, NULL);
}

/* At the left, under the words of a signal that stands there. */
static void
draw_caption (TmFrame *lane, const TmChartPlot *plot)
{
  const TmTextStyle style = { .scale = 0.85, .dim = TRUE };
  const gint first = plot->batch->first_cusum;
  const gboolean is_under = first >= 0 && (guint)first < plot->n_items
                            && tm_frame_piece (lane, plot->items[first].x) < (lane->left + lane->right) / 2.0
                            && plot->batch->cusum[first].high > TM_BATCH_CUSUM_H;
  const double half = lane->pen.line * 0.5;

  tm_text_draw_within (&lane->pen, _ ("cumulative sum"), lane->left + lane->pen.size * 0.5,
                       is_under ? lane->bottom - half : lane->top + half, lane->left, lane->right, &style,
                       NULL);
}

void
tm_chart_draw_lane (TmFrame *frame, const TmChartPlot *plot, double top, double bottom)
{
  TmFrame lane = *frame;
  TmChartThread thread = { .mean = plot->cusum_high,
                           .low = NULL,
                           .high = NULL,
                           .width = 1.4,
                           .colour = &frame->pen.theme->in,
                           .opacity = 1.0,
                           .kept = TRUE };

  lane.top = top;
  lane.bottom = bottom;
  lane.axis.low = -SUMS_SHOWN;
  lane.axis.high = SUMS_SHOWN;
  lane.side.n = 0;
  draw_sum_lines (&lane);
  tm_chart_draw_thread (&lane, plot, &thread);
  thread.mean = plot->cusum_low;
  tm_chart_draw_thread (&lane, plot, &thread);
  draw_caption (&lane, plot);
  draw_sum_signal (&lane, plot);
}
