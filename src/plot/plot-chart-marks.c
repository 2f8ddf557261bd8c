/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The marks where rules speak, and their words.
 */

#include <math.h>

#include "plot-chart-private.h"

#define MOST_TRIED 10 /* marks that words are tried for: where they find no room more would not either */

/* -------- Squares -------- */

/* Smaller on a low picture, which they would fill. */
static void
trace_square (const TmFrame *frame, double x, double y)
{
  const double half = CLAMP ((frame->bottom - frame->top) * 0.05 + 1.5, 2.5, frame->pen.size * 0.45);

  cairo_rectangle (frame->pen.cr, x - half, y - half, half * 2.0, half * 2.0);
}

static void
stroke_squares (const TmFrame *frame)
{
  cairo_set_line_width (frame->pen.cr, 1.4);
  tm_pen_colour (&frame->pen, &frame->pen.theme->text, 0.95);
  cairo_stroke (frame->pen.cr);
}

void
tm_chart_draw_square (const TmFrame *frame, double x, double y)
{
  cairo_new_path (frame->pen.cr);
  trace_square (frame, x, y);
  stroke_squares (frame);
}

static double
find_mark_y (const TmChartSpeech *speech, guint item)
{
  const double value = tm_envelope_value (speech->middle, item);
  const double y = isfinite (value) ? tm_frame_at (speech->frame, speech->base + value) : speech->frame->top;

  return tm_frame_keep (speech->frame, y);
}

/* The first mark that stands at or right of @x. */
static guint
find_mark (const TmChartSpeech *speech, guint from, double x)
{
  guint low = from, high = speech->marks->len;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;
      const guint item = g_array_index (speech->marks, TmChartMark, middle).item;

      if (tm_frame_piece (speech->frame, speech->plot->items[item].x) < x)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* Of marks that would cover each other one is drawn: the first that has something new to say, while it
 * stands near. */
static guint
choose_mark (const TmChartSpeech *speech, guint first, guint end)
{
  for (guint i = first; i < end && i < first + 64; i++)
    if (g_array_index (speech->marks, TmChartMark, i).fresh != 0)
      return i;
  return first;
}

/* Those that do not cover each other. */
static GArray *
thin_marks (const TmChartSpeech *speech, double apart)
{
  GArray *chosen = g_array_new (FALSE, FALSE, sizeof (TmChartMark));

  for (guint i = 0; i < speech->marks->len;)
    {
      const guint item = g_array_index (speech->marks, TmChartMark, i).item;
      const double x = tm_frame_piece (speech->frame, speech->plot->items[item].x);
      const guint next = MAX (i + 1, find_mark (speech, i, x + apart));

      g_array_append_val (chosen, g_array_index (speech->marks, TmChartMark, choose_mark (speech, i, next)));
      i = next;
    }
  return chosen;
}

static void
draw_squares (const TmChartSpeech *speech, const GArray *marks)
{
  cairo_new_path (speech->frame->pen.cr);
  for (guint i = 0; i < marks->len; i++)
    {
      const guint item = g_array_index (marks, TmChartMark, i).item;

      trace_square (speech->frame, tm_frame_piece (speech->frame, speech->plot->items[item].x),
                    find_mark_y (speech, item));
    }
  stroke_squares (speech->frame);
}

/* -------- Words -------- */

/* Each rule once, at the newest run of points that it speaks of and that has room for it: what speaks now is
 * what is to be done about, and the same words at every square would cover the picture. */
static void
draw_words (TmChartSpeech *speech, const GArray *marks)
{
  guint tried = 0, said = 0;

  for (guint i = marks->len; i > 0 && tried < MOST_TRIED; i--)
    {
      const TmChartMark *mark = &g_array_index (marks, TmChartMark, i - 1);
      const guint rules = mark->fresh & ~said;
      g_autofree char *text = NULL;

      if (rules == 0)
        continue;
      tried++;
      text = tm_chart_rules_text (rules, speech->counts);
      if (tm_chart_draw_say (speech, tm_frame_piece (speech->frame, speech->plot->items[mark->item].x),
                             find_mark_y (speech, mark->item), text))
        said |= rules;
    }
}

/* The squares first: words keep clear of them by keeping clear of the points. */
void
tm_chart_draw_marks (TmChartSpeech *speech)
{
  const double size = speech->frame->pen.size, near = size * 1.3;
  const gboolean dense = tm_chart_is_dense (speech->frame, speech->plot);
  g_autoptr (GArray) squares
      = thin_marks (speech, dense ? near : MIN (tm_frame_slot (speech->frame) * 0.9, size * 0.6) + 0.5);
  g_autoptr (GArray) spoken = dense ? g_array_ref (squares) : thin_marks (speech, near);

  draw_squares (speech, squares);
  draw_words (speech, spoken);
}
