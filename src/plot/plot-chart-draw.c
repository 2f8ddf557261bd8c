/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chart-private.h"

#define DENSE_SLOT   2.2 /* pixels a piece: less, and columns are drawn in place of points */
#define WHISKER_SLOT 4.0 /* less, and whiskers would touch */
#define CONE_STEPS   24

typedef struct {
  TmFrame frame;
  const TmChartPlot *plot;
  double event_y; /* NAN: no room */
  guint event_rows;
  double lane_top, lane_bottom; /* of the sums; NAN: none */
} Drawing;

static double
find_y (const Drawing *d, double relative)
{
  return tm_frame_at (&d->frame, tm_chart_count (d->plot, relative));
}

void
tm_chart_place_columns (TmFrame *frame, const TmChartPlot *plot)
{
  frame->slots = plot->slots;
  tm_frame_place_columns (frame, plot->widest * frame->pen.size);
}

gboolean
tm_chart_is_dense (const TmFrame *frame, const TmChartPlot *plot)
{
  const double each = plot->n_items > 0 ? (double)plot->batch->series.n_points / plot->n_items : 1.0;

  return tm_frame_slot (frame) * each < DENSE_SLOT;
}

/* -------- A line through the values -------- */

static void
trace_points (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  guint stretch = G_MAXUINT;

  for (guint i = 0; i < plot->n_items; i++)
    {
      const TmChartItem *item = &plot->items[i];
      const double value = tm_envelope_value (thread->mean, i);
      double x, y;

      if (!isfinite (value))
        continue;
      x = tm_frame_piece (frame, item->x);
      y = tm_frame_keep (frame, tm_frame_at (frame, thread->base + value));
      if (item->stretch == stretch)
        cairo_line_to (frame->pen.cr, x, y);
      else
        cairo_move_to (frame->pen.cr, x, y);
      stretch = item->stretch;
    }
}

/* Of many items a column ends at a round number of them: by less than an eighth of a pixel elsewhere, and the
 * envelope need not look at single items. */
static guint
find_column_end (const TmFrame *frame, const TmChartPlot *plot, double x)
{
  const double slot = tm_frame_slot (frame);
  const double each = plot->n_items / MAX (1.0, plot->batch->series.n_points) / slot;
  const guint end = tm_chart_find_item (plot, (x + 1.0 - frame->left) / slot - 0.5);
  guint grain = 1;

  while (grain * TM_ENVELOPE_FAN * 4.0 <= each)
    grain *= TM_ENVELOPE_FAN;
  return end == plot->n_items ? end : end / grain * grain;
}

/* One bar for each column of pixels, from the smallest to the largest that fall on it. */
static void
trace_columns (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  guint from = 0;

  for (double x = floor (frame->left); x < frame->right; x += 1.0)
    {
      const guint to = find_column_end (frame, plot, x);
      const TmSpan low = tm_envelope_span (thread->low, from, to);
      const TmSpan high = thread->high == thread->low ? low : tm_envelope_span (thread->high, from, to);

      from = to;
      if (low.n > 0 && high.n > 0)
        {
          const double top = tm_frame_keep (frame, tm_frame_at (frame, thread->base + high.high));
          const double bottom = tm_frame_keep (frame, tm_frame_at (frame, thread->base + low.low));

          cairo_rectangle (frame->pen.cr, x, floor (top), 1.0, MAX (1.0, ceil (bottom) - floor (top)));
        }
    }
}

/* Steps of whole pixels from one column to the next: at this density no different from a line, and many times
 * cheaper. */
static void
trace_column_means (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  guint from = 0, stretch = G_MAXUINT;
  double last = NAN;

  for (double x = floor (frame->left); x < frame->right; x += 1.0)
    {
      const guint to = find_column_end (frame, plot, x);
      const TmSpan mean = tm_envelope_span (thread->mean, from, to);

      if (mean.n > 0)
        {
          const double y
              = floor (tm_frame_keep (frame, tm_frame_at (frame, thread->base + mean.sum / mean.n)));
          const double before = plot->items[from].stretch == stretch ? last : y;

          cairo_rectangle (frame->pen.cr, x, MIN (y, before), 1.0, fabs (y - before) + 1.0);
          last = y;
          stretch = plot->items[to - 1].stretch;
        }
      from = to;
    }
}

static void
draw_dense (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  if (thread->low != NULL)
    trace_columns (frame, plot, thread);
  else
    trace_column_means (frame, plot, thread);
  tm_pen_colour (&frame->pen, thread->colour, thread->opacity);
  cairo_fill (frame->pen.cr);
}

void
tm_chart_draw_thread (const TmFrame *frame, const TmChartPlot *plot, const TmChartThread *thread)
{
  static const double dots[] = { 1.0, 2.5 };

  cairo_new_path (frame->pen.cr);
  if (tm_chart_is_dense (frame, plot))
    {
      draw_dense (frame, plot, thread);
      return;
    }
  trace_points (frame, plot, thread);
  if (thread->dotted)
    cairo_set_dash (frame->pen.cr, dots, 2, 0.0);
  cairo_set_line_width (frame->pen.cr, thread->width);
  cairo_set_line_join (frame->pen.cr, CAIRO_LINE_JOIN_BEVEL);
  tm_pen_colour (&frame->pen, thread->colour, thread->opacity);
  cairo_stroke (frame->pen.cr);
  cairo_set_dash (frame->pen.cr, NULL, 0, 0.0);
}

/* -------- Control limits -------- */

/* Steps of one limit over the runs; runs narrower than a pixel are passed over. */
static void
trace_run (const TmFrame *frame, const GArray *runs, double base, gsize offset)
{
  double last = NAN, until = -INFINITY;

  for (guint i = 0; i < runs->len; i++)
    {
      const TmChartRun *run = &g_array_index (runs, TmChartRun, i);
      const double value = *(const double *)(gconstpointer)((const char *)run + offset);
      const double y = tm_frame_at (frame, base + value);
      const double from = tm_frame_piece (frame, run->from - 0.5), to = tm_frame_piece (frame, run->to - 0.5);

      if (to - until < 1.0 && i + 1 < runs->len)
        continue;
      if (!tm_frame_holds (frame, y))
        {
          last = NAN;
          until = to;
          continue;
        }
      if (isfinite (last) && from - until < 1.5)
        cairo_line_to (frame->pen.cr, from, y);
      else
        cairo_move_to (frame->pen.cr, from, y);
      cairo_line_to (frame->pen.cr, to, y);
      last = y;
      until = to;
    }
}

void
tm_chart_draw_runs (const TmFrame *frame, const GArray *runs, double base, gboolean centre)
{
  static const double dash[] = { 7.0, 4.0 }, dots[] = { 1.5, 3.0 };
  cairo_t *cr = frame->pen.cr;

  cairo_new_path (cr);
  if (g_array_index (runs, TmChartRun, runs->len - 1).lower > 0 || !centre)
    trace_run (frame, runs, base, G_STRUCT_OFFSET (TmChartRun, lower)); /* a spread has no limit at zero */
  trace_run (frame, runs, base, G_STRUCT_OFFSET (TmChartRun, upper));
  cairo_set_line_width (cr, 1.0);
  cairo_set_dash (cr, dash, 2, 0.0);
  tm_pen_colour (&frame->pen, &frame->pen.theme->text, 0.75);
  cairo_stroke (cr);
  if (centre)
    {
      trace_run (frame, runs, base, G_STRUCT_OFFSET (TmChartRun, centre));
      cairo_set_dash (cr, dots, 2, 0.0);
      tm_pen_colour (&frame->pen, &frame->pen.theme->dim, 1.0);
      cairo_stroke (cr);
    }
  cairo_set_dash (cr, NULL, 0, 0.0);
}

static void
draw_control_number (Drawing *d, double relative)
{
  const double y = find_y (d, relative);
  g_autofree char *text = NULL;

  if (!tm_frame_holds (&d->frame, y))
    return;
  text = tm_chart_size_text (d->plot, relative);
  tm_frame_number (&d->frame, text, y, FALSE, TRUE);
}

/* The numbers are those of the last run: of the group size that goes on. */
static void
draw_control (Drawing *d)
{
  const GArray *runs = d->plot->location_runs;
  const TmChartRun *last;

  if ((d->plot->show & TM_CHART_SHOW_CONTROL) == 0 || runs->len == 0)
    return;
  last = &g_array_index (runs, TmChartRun, runs->len - 1);
  tm_chart_draw_runs (&d->frame, runs, (double)d->plot->batch->series.reference, FALSE);
  draw_control_number (d, last->lower);
  draw_control_number (d, last->upper);
}

/* -------- Place -------- */

static const TmFrameEvent *
get_events (const TmChartPlot *plot)
{
  return (const TmFrameEvent *)(gconstpointer)plot->events->data;
}

static void
place_lane (Drawing *d)
{
  TmFrame *frame = &d->frame;
  const double tall = MAX (frame->pen.line * 4.0, (frame->bottom - frame->top) * 0.24);

  d->lane_top = d->lane_bottom = NAN;
  if (d->plot->cusum_high == NULL || frame->bottom - frame->top < tall * 2.0)
    return;
  d->lane_bottom = frame->bottom;
  d->lane_top = frame->bottom - tall;
  frame->bottom = d->lane_top - frame->pen.size * 0.6;
}

static void
place_parts (Drawing *d)
{
  TmFrame *frame = &d->frame;
  const double padding = MIN (frame->pen.size * 0.7, frame->height / 10.0);
  const gboolean tall = tm_frame_is_tall (frame);

  frame->axis = d->plot->axis;
  tm_chart_place_columns (frame, d->plot);
  frame->top = padding;
  d->event_y = NAN;
  if (tall && d->plot->events->len > 0)
    {
      d->event_y = frame->top + frame->pen.line / 2.0;
      d->event_rows = tm_frame_event_rows (frame, get_events (d->plot), d->plot->events->len);
      frame->top += frame->pen.line * (d->event_rows + 0.2);
    }
  frame->bottom = frame->height - padding - (tall ? frame->pen.line + frame->pen.size * 0.3 : 0.0);
}

/* -------- Trend and forecast -------- */

static double
find_line (const TmTrend *trend, double number)
{
  return trend->mean_y + trend->slope * (number - trend->mean_x);
}

/* Half the width of the 95 % band of the fitted mean. */
static double
find_half (const TmTrend *trend, double number)
{
  const double away = number - trend->mean_x;
  double t;

  if (!(trend->slope_se > 0) || !(trend->sxx > 0) || trend->n < 3)
    return 0.0;
  t = (trend->slope_upper - trend->slope) / trend->slope_se;
  return t * trend->residual * sqrt (1.0 / (double)trend->n + away * away / trend->sxx);
}

gboolean
tm_chart_has_drift (const TmChartPlot *plot)
{
  const TmTrend *trend = &plot->batch->trend;

  return trend->status == TM_TREND_OK && trend->p <= 0.05 && plot->batch->series.n_measured > 3
         && isfinite (trend->slope) && isfinite (trend->mean_y);
}

static double
find_number_x (const Drawing *d, double number)
{
  return tm_frame_piece (&d->frame, TM_CHART_X (number));
}

static void
draw_trend_line (Drawing *d)
{
  const TmTrend *trend = &d->plot->batch->trend;
  const double from = d->plot->trend_from + 1.0, to = d->plot->items[d->plot->last].last + 1.0;

  tm_frame_line (&d->frame, find_number_x (d, from), find_y (d, find_line (trend, from)),
                 find_number_x (d, to), find_y (d, find_line (trend, to)), 2.0, &d->frame.pen.theme->text,
                 1.0);
}

static void
draw_cone (const Drawing *d, double from, double to)
{
  const TmTrend *trend = &d->plot->ahead;
  cairo_t *cr = d->frame.pen.cr;

  cairo_new_path (cr);
  for (int i = 0; i <= CONE_STEPS; i++)
    {
      const double at = from + (to - from) * i / CONE_STEPS;
      cairo_line_to (cr, find_number_x (d, at), find_y (d, find_line (trend, at) + find_half (trend, at)));
    }
  for (int i = CONE_STEPS; i >= 0; i--)
    {
      const double at = from + (to - from) * i / CONE_STEPS;
      cairo_line_to (cr, find_number_x (d, at), find_y (d, find_line (trend, at) - find_half (trend, at)));
    }
  cairo_close_path (cr);
  tm_pen_colour (&d->frame.pen, &d->frame.pen.theme->planned, 0.3);
  cairo_fill (cr);
}

/* Where the mean meets the guard, down to the pieces. */
static void
draw_meeting (Drawing *d, double x, double y)
{
  const TmColour *planned = &d->frame.pen.theme->planned;
  g_autofree char *name = tm_chart_piece_name (d->plot, (guint)floor (d->plot->meets));
  g_autofree char *text = g_strdup_printf (_ ("piece %s"), name);
  const double foot = isfinite (d->lane_bottom) ? d->lane_bottom : d->frame.bottom;

  tm_frame_dashed (&d->frame, x, y, x, foot, 1.6, planned, 1.0, 2.5, 3.0);
  tm_frame_mark_piece (&d->frame, x, text);
}

static void
draw_forecast (Drawing *d)
{
  const TmTrend *trend = &d->plot->ahead;
  const double from = d->plot->items[d->plot->last].last + 1.0;
  const double edge = d->plot->slots + 0.5, to = MIN (d->plot->meets + 1.0, edge);

  cairo_save (d->frame.pen.cr);
  cairo_rectangle (d->frame.pen.cr, d->frame.left, d->frame.top, d->frame.right - d->frame.left,
                   d->frame.bottom - d->frame.top);
  cairo_clip (d->frame.pen.cr);
  draw_cone (d, from, to);
  tm_frame_dashed (&d->frame, find_number_x (d, from), find_y (d, find_line (trend, from)),
                   find_number_x (d, to), find_y (d, find_line (trend, to)), 1.6, &d->frame.pen.theme->text,
                   0.9, 5.0, 4.0);
  cairo_restore (d->frame.pen.cr);
  if (d->plot->meets + 1.0 <= edge)
    draw_meeting (d, find_number_x (d, to), tm_frame_keep (&d->frame, find_y (d, find_line (trend, to))));
}

/* A line where there is no drift would be taken for one. */
static gboolean
shows_trend (const Drawing *d)
{
  return (d->plot->show & TM_CHART_SHOW_TREND) != 0 && d->plot->last >= 0 && tm_chart_has_drift (d->plot);
}

/* -------- Points -------- */

/* From the smallest mean of a column to the largest, and the mean of all; whiskers have no room. */
static void
draw_columns (const Drawing *d)
{
  const TmChartPlot *plot = d->plot;
  const double base = (double)plot->batch->series.reference;
  const TmColour *in = &d->frame.pen.theme->in;
  const TmChartThread bars = {
    .mean = plot->means, .low = plot->means, .high = plot->means, .base = base, .colour = in, .opacity = 0.7
  };
  const TmChartThread middle
      = { .mean = plot->means, .base = base, .colour = &d->frame.pen.theme->surface, .opacity = 1.0 };

  tm_chart_draw_thread (&d->frame, plot, &bars);
  if (plot->n_items > 4 * (d->frame.right - d->frame.left)) /* a mean of few is no line yet */
    tm_chart_draw_thread (&d->frame, plot, &middle);
}

static TmFrameMark
get_mark (const Drawing *d, guint index)
{
  const TmChartItem *item = &d->plot->items[index];
  const TmFrameMark mark = { .x = tm_frame_piece (&d->frame, item->x),
                             .mean = tm_chart_count (d->plot, item->mean),
                             .low = tm_chart_count (d->plot, item->low),
                             .high = tm_chart_count (d->plot, item->high),
                             .verdict = item->verdict,
                             .point = item->point };

  return mark;
}

static double
find_radius (const Drawing *d)
{
  const double each = d->plot->n_items > 0 ? (double)d->plot->batch->series.n_points / d->plot->n_items : 1.0;

  return CLAMP (tm_frame_slot (&d->frame) * each * 0.33, 1.4, d->frame.pen.size * 0.29);
}

/* The first of those out that stands at or right of @x. */
static guint
find_out (const Drawing *d, guint from, double x)
{
  guint low = from, high = d->plot->outs->len;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (tm_frame_piece (&d->frame, d->plot->items[g_array_index (d->plot->outs, guint, middle)].x) < x)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Out, in a picture too dense for points: arrows that do not cover each other. */
static void
draw_outs (const Drawing *d)
{
  for (guint i = 0; i < d->plot->outs->len;)
    {
      TmFrameMark mark = get_mark (d, g_array_index (d->plot->outs, guint, i));

      mark.mean = mark.point == TM_POINT_DOWN ? mark.low : mark.high;
      tm_frame_draw_mark (&d->frame, &mark, 3.0, FALSE);
      i = MAX (i + 1, find_out (d, i, mark.x + 9.0));
    }
}

/* Points that are in make one path: they are most. */
static void
draw_dots (const Drawing *d, double radius)
{
  cairo_t *cr = d->frame.pen.cr;

  cairo_new_path (cr);
  for (guint i = 0; i < d->plot->n_items; i++)
    {
      const TmChartItem *item = &d->plot->items[i];
      const double y = find_y (d, item->mean), x = tm_frame_piece (&d->frame, item->x);

      if (!isfinite (item->mean) || item->verdict != TM_VERDICT_IN || !tm_frame_holds (&d->frame, y))
        continue;
      cairo_new_sub_path (cr);
      cairo_arc (cr, x, y, radius, 0.0, 2.0 * G_PI);
    }
  tm_pen_colour (&d->frame.pen, &d->frame.pen.theme->in, 1.0);
  cairo_fill (cr);
}

static void
draw_whiskers (const Drawing *d, double radius)
{
  cairo_t *cr = d->frame.pen.cr;

  cairo_new_path (cr);
  for (guint i = 0; i < d->plot->n_items; i++)
    {
      const TmChartItem *item = &d->plot->items[i];
      const double x = tm_frame_piece (&d->frame, item->x);

      if (!isfinite (item->mean) || item->verdict != TM_VERDICT_IN || !(item->high - item->low > 0))
        continue;
      cairo_move_to (cr, x, tm_frame_keep (&d->frame, find_y (d, item->high)));
      cairo_line_to (cr, x, tm_frame_keep (&d->frame, find_y (d, item->low)));
    }
  cairo_set_line_width (cr, CLAMP (radius * 0.5, 1.0, 1.8));
  tm_pen_colour (&d->frame.pen, &d->frame.pen.theme->in, 1.0);
  cairo_stroke (cr);
}

static void
draw_points (const Drawing *d)
{
  const TmChartPlot *plot = d->plot;
  const double radius = find_radius (d);
  const gboolean whisker
      = tm_frame_slot (&d->frame) * plot->batch->series.n_points / MAX (1, plot->n_items) >= WHISKER_SLOT;
  const TmChartThread thread
      = { plot->means, NULL, NULL, (double)plot->batch->series.reference, 1.0, &d->frame.pen.theme->in, 0.6 };

  tm_chart_draw_thread (&d->frame, plot, &thread);
  if (whisker)
    draw_whiskers (d, radius);
  draw_dots (d, radius);
  for (guint i = 0; i < plot->n_items; i++)
    {
      const TmChartItem *item = &plot->items[i];
      TmFrameMark mark;

      if (!isfinite (item->mean)
          || (item->verdict == TM_VERDICT_IN && tm_frame_holds (&d->frame, find_y (d, item->mean))))
        continue;
      mark = get_mark (d, i);
      tm_frame_draw_mark (&d->frame, &mark, radius, whisker);
    }
}

/* -------- Moving average -------- */

static void
draw_ewma (Drawing *d)
{
  TmChartThread thread
      = { .base = (double)d->plot->batch->series.reference, .colour = &d->frame.pen.theme->text };
  const TmEnvelope *limits[] = { d->plot->ewma_lower, d->plot->ewma_upper };

  if (d->plot->ewma == NULL)
    return;
  thread.width = 1.0;
  thread.opacity = 0.7;
  thread.dotted = TRUE;
  for (gsize i = 0; i < G_N_ELEMENTS (limits) && !tm_chart_is_dense (&d->frame, d->plot); i++)
    {
      thread.mean = limits[i];
      tm_chart_draw_thread (&d->frame, d->plot, &thread);
    }
  thread.mean = d->plot->ewma;
  thread.width = 1.2;
  thread.opacity = 0.8;
  thread.dotted = FALSE;
  tm_chart_draw_thread (&d->frame, d->plot, &thread);
}

/* -------- Focus, words -------- */

static void
draw_focus (Drawing *d, gint focus)
{
  const double bottom = isfinite (d->lane_bottom) ? d->lane_bottom : d->frame.bottom;
  const double width = CLAMP (tm_frame_slot (&d->frame), 3.0, d->frame.pen.size * 1.2);
  g_autofree char *name = NULL;
  double x;

  if (focus < 0 || (guint)focus >= d->plot->batch->series.n_points || focus > d->plot->slots - 0.5)
    return;
  x = tm_frame_piece (&d->frame, focus);
  name = tm_chart_piece_name (d->plot, (guint)focus);
  tm_frame_fill (&d->frame, x - width / 2.0, d->frame.top, width, bottom - d->frame.top,
                 &d->frame.pen.theme->text, 0.14);
  tm_frame_mark_piece (&d->frame, x, name);
}

/* Where it leaves its limits, else at its end what the line is. */
static void
say_ewma (Drawing *d, TmChartSpeech *speech)
{
  const gint first = d->plot->batch->first_ewma;
  const gboolean signals = first >= 0 && (guint)first < d->plot->n_items;
  const gint at = signals ? first : d->plot->last;
  double value, x, y;

  if (d->plot->ewma == NULL || at < 0)
    return;
  value = tm_envelope_value (d->plot->ewma, (guint)at);
  if (!isfinite (value))
    return;
  x = tm_frame_piece (&d->frame, d->plot->items[at].x);
  y = tm_frame_keep (&d->frame, find_y (d, value));
  if (signals)
    tm_chart_draw_square (&d->frame, x, y);
  tm_chart_draw_say (speech, x, y,
                     signals ? _ ("the moving average leaves its limits") : _ ("moving average"));
}

static void
draw_words (Drawing *d)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (TmChartBox));
  TmChartSpeech speech = { .frame = &d->frame,
                           .plot = d->plot,
                           .marks = d->plot->location_marks,
                           .middle = d->plot->means,
                           .low = d->plot->lows,
                           .high = d->plot->highs,
                           .base = (double)d->plot->batch->series.reference,
                           .boxes = boxes };

  tm_chart_keep_limits_clear (&speech);
  say_ewma (d, &speech);
  tm_chart_draw_marks (&speech);
}

/* -------- All -------- */

static char *
name_piece_cb (gconstpointer data, guint piece)
{
  return tm_chart_piece_name (data, piece);
}

/* The line of the pieces lies under the lane of the sums, the area of the sizes over it. */
static void
draw_foot (Drawing *d, gint focus)
{
  const double bottom = d->frame.bottom;

  draw_focus (d, focus);
  if (isfinite (d->lane_bottom))
    d->frame.bottom = d->lane_bottom;
  tm_frame_draw_pieces (&d->frame, (guint)ceil (d->plot->slots - 0.5), name_piece_cb, d->plot);
  tm_frame_draw_events (&d->frame, get_events (d->plot), d->plot->events->len, d->event_y);
  d->frame.bottom = bottom;
}

static void
draw_all (Drawing *d, gint focus)
{
  const TmLimits *limits = &d->plot->band.limits;

  tm_frame_draw_zones (&d->frame, &d->plot->band);
  tm_frame_draw_limits (&d->frame, &d->plot->band);
  tm_frame_draw_target (&d->frame, &d->plot->band);
  draw_control (d);
  if (!limits->has_lower || !limits->has_upper)
    tm_frame_draw_ticks (&d->frame, tm_frame_most_ticks (&d->frame), d->plot->decimals);
  if (shows_trend (d) && d->plot->foretold)
    draw_forecast (d); /* its piece stands at the foot before others take the room */
  draw_foot (d, focus);
  if (tm_chart_is_dense (&d->frame, d->plot))
    {
      draw_columns (d);
      draw_outs (d);
    }
  else
    draw_points (d);
  draw_ewma (d);
  if (shows_trend (d))
    draw_trend_line (d);
  if (isfinite (d->lane_top))
    tm_chart_draw_lane (&d->frame, d->plot, d->lane_top, d->lane_bottom);
  draw_words (d);
}

void
tm_chart_plot_draw (const TmChartPlot *plot, cairo_t *cr, double width, double height, gint focus,
                    const TmTheme *theme)
{
  Drawing d = { .plot = plot };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!tm_frame_begin (&d.frame, cr, width, height, theme))
    return;
  place_parts (&d);
  place_lane (&d);
  if (plot->has_axis && plot->n_items > 0)
    draw_all (&d, focus);
  else
    tm_frame_draw_empty (&d.frame, _ ("no sizes yet"));
  tm_frame_end (&d.frame);
}

gint
tm_chart_plot_piece_at (const TmChartPlot *plot, double width, double height, double x)
{
  TmFrame frame = { .width = width, .height = height };
  double piece;

  g_return_val_if_fail (plot != NULL, -1);
  if (!(width >= 8.0) || !isfinite (width) || !isfinite (x) || plot->batch->series.n_points == 0)
    return -1;
  frame.pen.size = tm_theme_light ()->text_size;
  tm_chart_place_columns (&frame, plot);
  piece = floor ((x - frame.left) / tm_frame_slot (&frame));
  if (piece < -0.5 || piece >= plot->batch->series.n_points)
    return -1;
  return (gint)piece;
}
