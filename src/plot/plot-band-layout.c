/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-layout.h"

/* In sizes of the text. */
#define PADDING         0.7
#define ROW_LEAST       1.3
#define ROW_BARE        0.88
#define ROW_COMMON      4.2
#define ROW_MOST        5.5
#define ROWS_MOST       23.0 /* the rows and the room around them; more only where many rows need it */
#define LABEL_MOST      0.28 /* of the width */
#define PART_LABEL_MOST 0.2

/* The plan's share of the room that it has with the rows, at least that of two rows; and its heights in sizes
 * of the text. */
#define PLAN_SHARE 0.3
#define PLAN_ROWS  2.0
#define PLAN_LEAST 2.6
#define PLAN_MOST  5.6
#define PLAN_LANES 3.8 /* from here on the size now has a lane of its own */
#define PLAN_WISH  4.5 /* two lanes with room for their words */

/* The parts beside the rows, in the order in which they make way when there is little height. */
typedef enum { PART_FIT, PART_PROVEN, PART_MATE, PART_TICKS, PART_LIMITS, N_PARTS } Part;

/* Of a station's row: the row of one method, with its name and, where there is no room, without. */
#define PART_NAMED 0.8
#define PART_BARE  0.3

static guint
count_parts (const TmBandPlot *plot)
{
  guint n = 0;

  for (guint i = 0; i < plot->rows->len; i++)
    n += g_array_index (plot->rows, TmBandRow, i).part;
  return n;
}

char *
tm_band_fit_line (const TmBandPlot *plot)
{
  if (plot->fit_by_limits != NULL && plot->fit_measured != NULL)
    return g_strdup_printf ("%s  ·  %s", plot->fit_by_limits, plot->fit_measured);
  return g_strdup (plot->fit_by_limits != NULL ? plot->fit_by_limits : plot->fit_measured);
}

static gboolean
fit_needs_two_lines (const TmBandPlot *plot, TmPen *pen, double room)
{
  const TmTextStyle style = { .scale = 0.95 };
  g_autofree char *line = tm_band_fit_line (plot);

  return plot->fit_by_limits != NULL && plot->fit_measured != NULL
         && tm_text_width (pen, line, &style) > room;
}

static void
place_columns (TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen)
{
  const TmTextStyle style = { 0 }, small = { .scale = TM_BAND_PART_TEXT };
  const double padding = pen->size * PADDING;
  double widest = 0.0;

  for (guint i = 0; i < plot->rows->len; i++)
    {
      const TmBandRow *row = &g_array_index (plot->rows, TmBandRow, i);
      const double label = tm_text_width (pen, row->label, row->part ? &small : &style);
      widest = MAX (widest, row->part ? MIN (label, layout->width * PART_LABEL_MOST) : label);
    }
  if (plot->pins->len > 0)
    widest = MAX (widest, tm_text_width (pen, _ ("pins"), &style));
  if (plot->has_mate)
    widest = MAX (widest, tm_text_width (pen, _ ("mate"), &style));
  if (plot->plan.shown)
    widest = MAX (widest, tm_text_width (pen, _ ("after cut"), &style));
  widest = MIN (widest, layout->width * LABEL_MOST);
  layout->label_right = layout->width >= pen->size * 14.0 ? padding + widest : 0.0;
  layout->left = layout->label_right > 0 ? layout->label_right + pen->size : MIN (padding, layout->width / 8);
  layout->right = layout->width - MIN (padding, layout->width / 8);
}

/* Heights of the parts; 0 for one that this plot has not. */
static void
measure_parts (const TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen, double heights[N_PARTS])
{
  const gboolean limited = plot->limits.has_lower || plot->limits.has_upper;
  const gboolean fits = plot->fit_by_limits != NULL || plot->fit_measured != NULL;
  const gboolean two = fits && fit_needs_two_lines (plot, pen, layout->right - layout->left);

  for (int part = 0; part < N_PARTS; part++)
    heights[part] = 0.0;
  if (plot->attribute || !plot->has_axis)
    return;
  heights[PART_LIMITS] = limited ? pen->line : 0.0;
  heights[PART_PROVEN] = limited ? pen->line : 0.0;
  heights[PART_TICKS] = pen->line + pen->size * 0.5;
  heights[PART_MATE] = plot->has_mate ? pen->line * 1.7 : 0.0;
  heights[PART_FIT] = fits ? pen->line * (two ? 2.2 : 1.2) : 0.0;
}

static double
sum_parts (const double heights[N_PARTS])
{
  double sum = 0.0;

  for (int part = 0; part < N_PARTS; part++)
    sum += heights[part];
  return sum;
}

/* How low rows may get before a part makes way: the scale and the limits stand until the last. */
static double
get_least (Part part)
{
  return part == PART_TICKS || part == PART_LIMITS ? ROW_BARE : ROW_LEAST;
}

/* Drops parts until each of @rows has its least height and the plan its own, or nothing is left to drop: the
 * words of the fit make way for its two lanes, the others for one. */
static void
drop_parts (double heights[N_PARTS], double room, double rows, gboolean planned, double size)
{
  for (int part = 0; part < N_PARTS; part++)
    if (room - sum_parts (heights) < (rows * get_least ((Part)part)
                                      + (!planned           ? 0.0
                                         : part == PART_FIT ? PLAN_WISH
                                                            : PLAN_LEAST))
                                         * size)
      heights[part] = 0.0;
}

/* The middle of the next @height from *@y on, which moves past it; NAN for no height. */
static double
take (double *y, double height)
{
  const double middle = *y + height / 2.0;

  *y += height;
  return height > 0 ? middle : NAN;
}

/* Two lanes where there is the height, one over the other else. */
static void
place_plan (TmBandLayout *layout, TmPen *pen, double top, double height)
{
  const double size = pen->size;

  layout->plan_top = top;
  layout->plan_height = height;
  layout->plan_grip = CLAMP (height * 0.14, MIN (3.0, height / 4.0), size * 0.6);
  layout->plan_base = top + height - layout->plan_grip - MIN (2.0, height * 0.1);
  if (height >= size * PLAN_LANES)
    {
      layout->plan_now_y = top + MAX (size * 1.25, height * 0.28);
      layout->plan_peak = layout->plan_now_y + size * 0.55;
    }
  else
    {
      layout->plan_now_y = layout->plan_base;
      layout->plan_peak = top + MIN (2.0, height * 0.1);
    }
}

/* How much of @room the plan takes from the rows. */
static double
measure_plan (const TmBandPlot *plot, TmPen *pen, double room, double rows)
{
  const double share = MAX (PLAN_SHARE, PLAN_ROWS / (PLAN_ROWS + rows)) * room;
  /* What the rows can spare, for two lanes. */
  const double spare = MIN (room - rows * ROW_LEAST * pen->size, PLAN_WISH * pen->size);

  if (!plot->plan.shown || !plot->has_axis)
    return 0.0;
  return MIN (room * 0.6, CLAMP (MAX (share, spare), PLAN_LEAST * pen->size, PLAN_MOST * pen->size));
}

static void
place_rows (TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen, const double heights[N_PARTS],
            double padding)
{
  const guint parts = count_parts (plot);
  const guint whole = MAX (1, plot->rows->len - parts + layout->n_pin_rows);
  const double room = MAX (0.0, layout->height - 2.0 * padding - sum_parts (heights));
  const double plan = measure_plan (plot, pen, room, whole + PART_BARE * parts);
  const double most = MAX (ROWS_MOST, ROW_COMMON * (whole + PART_NAMED * parts)) * pen->size;
  const double rows = MIN (room - plan, most);
  double y = padding + (room - plan - rows) / 2.0;
  double share = PART_NAMED, slack;

  if (share * rows / (whole + share * parts) < pen->size * 1.15)
    share = PART_BARE;
  layout->row_height = MIN (rows / (whole + share * parts), ROW_MOST * pen->size);
  layout->part_height = share * layout->row_height;
  slack = (rows - layout->row_height * (whole + share * parts)) / 2.0;
  layout->limits_y = take (&y, heights[PART_LIMITS]);
  layout->top = y;
  layout->proven_y = take (&y, heights[PART_PROVEN]);
  layout->rows_top = y + slack;
  layout->pins_top
      = layout->rows_top + layout->row_height * (plot->rows->len - parts) + layout->part_height * parts;
  y += rows;
  place_plan (layout, pen, y, plan);
  y += plan;
  layout->bottom = y;
  layout->ticks_y = take (&y, heights[PART_TICKS]) + pen->size * 0.2;
  layout->mate_y = take (&y, heights[PART_MATE]);
  layout->fit_y = take (&y, heights[PART_FIT]);
  layout->fit_second_y = NAN;
  if (heights[PART_FIT] > pen->line * 2.0)
    {
      layout->fit_y -= pen->line / 2.0;
      layout->fit_second_y = layout->fit_y + pen->line;
    }
}

void
tm_band_layout_fill (TmBandLayout *layout, const TmBandPlot *plot, TmPen *pen, double width, double height)
{
  const double padding = MIN (pen->size * PADDING, height / 8.0);
  double heights[N_PARTS];
  guint parts;

  layout->width = width;
  layout->height = height;
  place_columns (layout, plot, pen);
  tm_band_layout_pins (layout, plot, pen);
  parts = count_parts (plot);
  measure_parts (layout, plot, pen, heights);
  drop_parts (heights, height - 2.0 * padding,
              MAX (1, plot->rows->len - parts + layout->n_pin_rows + PART_BARE * parts), plot->plan.shown,
              pen->size);
  place_rows (layout, plot, pen, heights, padding);
}

double
tm_band_layout_x (const TmBandLayout *layout, const TmBandPlot *plot, double count)
{
  const double fraction = tm_axis_fraction (&plot->axis, count);

  /* Far off the scale is as good as a little off it, and cairo's coordinates are small. */
  return layout->left + CLAMP (fraction, -2.0, 3.0) * (layout->right - layout->left);
}
