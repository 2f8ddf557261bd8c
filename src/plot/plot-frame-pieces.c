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

  for (guint i = 0; i < n; i += MAX (1, n / 6))
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
  if (x + half <= frame->width && tm_frame_take (&frame->foot, x - half, x + half))
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
#define MOST_WORDED     100

typedef struct {
  double x;
  guint row;
  double width;  /* of its words, whole */
  double until;  /* where they end at the latest */
  gboolean left; /* they stand left of the line */
} Place;

/* At the edge where it lies beyond what is shown. */
static double
find_event_x (const TmFrame *frame, const TmFrameEvent *event)
{
  return frame->left + MIN (event->at, frame->slots) * tm_frame_slot (frame);
}

/* A line begins at the height of its words and runs down: words may pass over the lines of events on lower
 * rows, so a row is free while no words on it or below it reach there. */
static gboolean
is_row_free (const double *ends, guint row, guint rows, double x)
{
  for (guint i = row; i < rows; i++)
    if (ends[i] > x)
      return FALSE;
  return TRUE;
}

static void
place_event (TmFrame *frame, Place *places, guint index, guint rows, double *ends, gint *last)
{
  const double gap = frame->pen.size * 0.4;
  Place *place = &places[index];

  while (place->row + 1 < rows && !is_row_free (ends, place->row, rows, place->x - gap))
    place->row++;
  place->until = frame->right;
  if (place->x + gap + place->width > frame->right
      && is_row_free (ends, place->row, rows, place->x - place->width - gap * 2.0))
    place->left = TRUE;
  if (ends[place->row] > place->x - gap && last[place->row] >= 0)
    places[last[place->row]].until = place->x - gap;
  ends[place->row] = place->x + (place->left ? 0.0 : gap + place->width);
  last[place->row] = (gint)index;
}

/* Of up to MOST_WORDED events; returns the rows that their words take. */
static guint
place_events (TmFrame *frame, const TmFrameEvent *events, guint n, Place *places)
{
  const TmTextStyle style = { .scale = EVENT_SCALE };
  const guint rows = frame->height >= frame->pen.line * 10.0 ? MOST_EVENT_ROWS : 2;
  double ends[MOST_EVENT_ROWS] = { -INFINITY, -INFINITY, -INFINITY };
  gint last[MOST_EVENT_ROWS] = { -1, -1, -1 };
  guint used = 0;

  for (guint i = 0; i < n; i++)
    {
      places[i] = (Place) { .x = find_event_x (frame, &events[i]),
                            .width = tm_text_width (&frame->pen, events[i].label, &style) };
      place_event (frame, places, i, rows, ends, last);
      used = MAX (used, places[i].row + 1);
    }
  return used;
}

guint
tm_frame_event_rows (TmFrame *frame, const TmFrameEvent *events, guint n)
{
  g_autofree Place *places = NULL;

  if (n > MOST_WORDED)
    return 1;
  places = g_new (Place, MAX (1, n));
  return place_events (frame, events, n, places);
}

static void
draw_event_words (TmFrame *frame, const TmFrameEvent *event, const Place *place, double y)
{
  const double gap = frame->pen.size * 0.4;
  TmTextStyle style = { .scale = EVENT_SCALE };

  if (place->left)
    {
      style.align = TM_ALIGN_RIGHT;
      tm_text_draw (&frame->pen, event->label, place->x - gap, y, &style);
      return;
    }
  style.max_width = place->until - place->x - gap;
  /* A letter or two and dots tell nothing. */
  if (style.max_width >= MIN (place->width, frame->pen.size * 4.0))
    tm_text_draw (&frame->pen, event->label, place->x + gap, y, &style);
}

static void
draw_event_line (const TmFrame *frame, const TmFrameEvent *event, double x, double top)
{
  if (event->lesser)
    tm_frame_dashed (frame, x, top, x, frame->bottom, 1.2, &frame->pen.theme->dim, 0.9, 1.5, 4.0);
  else
    tm_frame_dashed (frame, x, top, x, frame->bottom, 1.4, &frame->pen.theme->text, 0.8, 5.0, 4.0);
}

/* So many that none of their words would fit: the lines alone, those that would touch as one. */
static void
draw_event_lines (const TmFrame *frame, const TmFrameEvent *events, guint n)
{
  double last = -INFINITY;

  for (guint i = 0; i < n; i++)
    {
      const double x = find_event_x (frame, &events[i]);

      if (x - last < LEAST_APART)
        continue;
      last = x;
      draw_event_line (frame, &events[i], x, frame->top);
    }
}

void
tm_frame_draw_events (TmFrame *frame, const TmFrameEvent *events, guint n, double y)
{
  g_autofree Place *places = NULL;

  if (n > MOST_WORDED || isnan (y))
    {
      draw_event_lines (frame, events, n);
      return;
    }
  places = g_new (Place, MAX (1, n));
  place_events (frame, events, n, places);
  for (guint i = 0; i < n; i++)
    {
      const double at = y + places[i].row * frame->pen.line;

      draw_event_line (frame, &events[i], places[i].x, at - frame->pen.line * 0.4);
      draw_event_words (frame, &events[i], &places[i], at);
    }
}
