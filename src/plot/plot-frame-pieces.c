/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pieces along the bottom of a chart, and the events between them.
 */

#include <math.h>

#include "plot-frame.h"

/* -------- Pieces -------- */

static double
find_foot (const TmFrame *frame)
{
  return frame->height - tm_frame_padding (frame) - frame->pen.line / 2.0;
}

void
tm_frame_mark_piece (TmFrame *frame, double x, const char *text)
{
  TmTextStyle style = { .scale = 0.95, .bold = TRUE };
  double half;

  if (!tm_frame_is_tall (frame))
    return;
  half = tm_text_width (&frame->pen, text, &style) / 2.0;
  x = CLAMP (x, half, MAX (half, frame->width - half));
  style.align = TM_ALIGN_CENTRE;
  if (tm_frame_take (&frame->foot, x - half - frame->pen.size * 0.4, x + half + frame->pen.size * 0.4))
    tm_text_draw_within (&frame->pen, text, x, find_foot (frame), 0.0, frame->width, &style, NULL);
}

/* Every how many pieces a name fits under the axis: 1, 2, 5, 10, 20… */
static guint
choose_every (TmFrame *frame, guint n, TmFrameName name, gconstpointer data, const TmTextStyle *style)
{
  static const guint factors[] = { 1, 2, 5 };
  double widest = 0.0;

  for (guint i = 0; i < n; i += MAX (1, n / 20))
    {
      g_autofree char *text = name (data, i);
      widest = MAX (widest, tm_text_width (&frame->pen, text, style));
    }
  widest = MIN (widest, frame->width * 0.3) + frame->pen.size;
  for (guint power = 1; power <= 100000000; power *= 10)
    for (gsize i = 0; i < G_N_ELEMENTS (factors); i++)
      if (factors[i] * power * tm_frame_slot (frame) >= widest)
        return factors[i] * power;
  return G_MAXUINT;
}

static void
draw_piece_name (TmFrame *frame, double x, const char *text, const TmTextStyle *style)
{
  const double half
      = MIN (tm_text_width (&frame->pen, text, style), frame->width * 0.3) / 2.0 + frame->pen.size * 0.3;

  tm_frame_line (frame, x, frame->bottom, x, frame->bottom + frame->pen.size * 0.35, 1.0,
                 &frame->pen.theme->text, 0.8);
  if (tm_frame_take (&frame->foot, x - half, x + half))
    tm_text_draw (&frame->pen, text, x, find_foot (frame), style);
}

void
tm_frame_draw_pieces (TmFrame *frame, guint n, TmFrameName name, gconstpointer data)
{
  const TmTextStyle style
      = { .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE, .max_width = frame->width * 0.3 };
  guint every;

  tm_frame_line (frame, frame->left, frame->bottom, frame->right, frame->bottom, 1.5, &frame->pen.theme->text,
                 0.6);
  if (!tm_frame_is_tall (frame))
    return;
  every = choose_every (frame, n, name, data, &style);
  for (guint i = 0; i < n;)
    {
      g_autofree char *text = name (data, i);

      draw_piece_name (frame, tm_frame_piece (frame, i), text, &style);
      if (every >= n)
        break;
      /* The first, then the fifth, tenth, fifteenth… */
      i += i == 0 && every >= 5 ? every - 1 : every;
    }
}

/* -------- Events -------- */

#define MOST_EVENT_ROWS 3
#define EVENT_SCALE     0.9
#define LEAST_APART     3.0 /* pixels: lines of events that stand closer are drawn as one */

static double
find_event_x (const TmFrame *frame, const TmFrameEvent *events, guint n, guint index)
{
  return index < n ? frame->left + events[index].at * tm_frame_slot (frame) : frame->right;
}

/* With words on @rows lines in turn, each reaches at most to the next event on its line. */
static gboolean
fits_on (TmFrame *frame, const TmFrameEvent *events, guint n, guint rows)
{
  const TmTextStyle style = { .scale = EVENT_SCALE };

  for (guint i = 0; i + rows < n; i++)
    if (tm_text_width (&frame->pen, events[i].label, &style) + frame->pen.size
        > find_event_x (frame, events, n, i + rows) - find_event_x (frame, events, n, i))
      return FALSE;
  return TRUE;
}

guint
tm_frame_event_rows (TmFrame *frame, const TmFrameEvent *events, guint n)
{
  const guint most = frame->height >= frame->pen.line * 10.0 ? MOST_EVENT_ROWS : 2;
  guint rows = 1;

  if (n == 0)
    return 0;
  if (n > 200) /* none of their words would fit */
    return 1;
  while (rows < most && !fits_on (frame, events, n, rows))
    rows++;
  return rows;
}

/* Right of its line; left of it where only there is room. */
static void
draw_event_words (TmFrame *frame, const TmFrameEvent *event, double x, double y, double from, double until)
{
  const double gap = frame->pen.size * 0.4;
  TmTextStyle style = { .scale = EVENT_SCALE };
  const double width = tm_text_width (&frame->pen, event->label, &style);

  if (until - x - gap < width && x - from - gap >= width)
    {
      style.align = TM_ALIGN_RIGHT;
      tm_text_draw (&frame->pen, event->label, x - gap, y, &style);
      return;
    }
  style.max_width = until - x - gap * 2.0;
  if (style.max_width > frame->pen.size * 1.5)
    tm_text_draw (&frame->pen, event->label, x + gap, y, &style);
}

static void
draw_event_line (const TmFrame *frame, const TmFrameEvent *event, double x, double top)
{
  if (event->lesser)
    tm_frame_dashed (frame, x, top, x, frame->bottom, 1.2, &frame->pen.theme->dim, 0.9, 1.5, 4.0);
  else
    tm_frame_dashed (frame, x, top, x, frame->bottom, 1.4, &frame->pen.theme->text, 0.8, 5.0, 4.0);
}

void
tm_frame_draw_events (TmFrame *frame, const TmFrameEvent *events, guint n, double y, guint rows)
{
  double last = -INFINITY;

  for (guint i = 0; i < n; i++)
    {
      const guint row = rows > 0 ? i % rows : 0;
      const double x = find_event_x (frame, events, n, i), at = y + row * frame->pen.line;
      const double from = i == 0 ? 0.0 : find_event_x (frame, events, n, i - 1) + frame->pen.size;

      if (x - last < LEAST_APART)
        continue;
      last = x;
      draw_event_line (frame, &events[i], x, isnan (y) ? frame->top : at - frame->pen.line * 0.4);
      if (!isnan (y) && n <= 200)
        draw_event_words (frame, &events[i], x, at, from, find_event_x (frame, events, n, i + MAX (1, rows)));
    }
}
