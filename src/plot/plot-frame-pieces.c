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
  TmTextStyle style = { .scale = 0.95, .bold = TRUE, .cut_start = TRUE };
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

/* Moved in from the left edge where it would be cut there. */
static void
draw_piece_name (TmFrame *frame, double x, const char *text, const TmTextStyle *style)
{
  const double half = MIN (tm_text_width (&frame->pen, text, style), style->max_width) / 2.0;
  const double middle = MAX (x, half), room = half + frame->pen.size * 0.3;

  tm_frame_line (frame, x, frame->bottom, x, frame->bottom + frame->pen.size * 0.35, 1.0,
                 &frame->pen.theme->text, 0.8);
  if (middle + room <= frame->width && tm_frame_take (&frame->foot, middle - room, middle + room))
    tm_text_draw (&frame->pen, text, middle, find_foot (frame), style);
}

void
tm_frame_draw_pieces (TmFrame *frame, guint n, TmFrameName name, gconstpointer data)
{
  const TmTextStyle style = {
    .scale = 0.95, .dim = TRUE, .align = TM_ALIGN_CENTRE, .max_width = frame->width * 0.3, .cut_start = TRUE
  };
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
  double room;   /* what they have; too little for them to tell anything: none are written */
  gboolean left; /* they stand left of the line */
} Place;

/* The words on the rows so far. */
typedef struct {
  guint rows;
  double ends[MOST_EVENT_ROWS];
  gint last[MOST_EVENT_ROWS]; /* index of the event whose words stand last; -1: none */
} Rows;

/* At the edge where it lies beyond what is shown. */
static double
find_event_x (const TmFrame *frame, const TmFrameEvent *event)
{
  return frame->left + MIN (event->at, frame->slots) * tm_frame_slot (frame);
}

/* A letter or two and dots tell nothing. */
static gboolean
is_legible (const TmFrame *frame, const Place *place, double room)
{
  return room >= MIN (place->width, frame->pen.size * 4.0);
}

/* A line begins at the height of its words and runs down: words may pass over the lines of events on lower
 * rows, so a row is free while no words on it or below it reach there. */
static gboolean
is_row_free (const Rows *rows, guint row, double x)
{
  for (guint i = row; i < rows->rows; i++)
    if (rows->ends[i] > x)
      return FALSE;
  return TRUE;
}

/* Right of its line, or left of it where that leaves more of them whole. */
static void
choose_side (const TmFrame *frame, const Rows *rows, double gap, Place *place)
{
  const double right = frame->right - place->x - gap, left = place->x - gap - frame->pen.size * 0.3;

  place->left = place->width > right && left > right
                && is_row_free (rows, place->row, place->x - gap * 2.0 - MIN (place->width, left));
  place->room = MIN (place->width, place->left ? left : right);
}

/* On the first row that has room; on the last, words before it are cut as long as they still tell something,
 * else the event has none. */
static void
place_event (const TmFrame *frame, Place *places, guint index, Rows *rows)
{
  const double gap = frame->pen.size * 0.4;
  Place *place = &places[index];

  while (place->row + 1 < rows->rows && !is_row_free (rows, place->row, place->x - gap))
    place->row++;
  if (rows->ends[place->row] > place->x - gap && rows->last[place->row] >= 0)
    {
      Place *before = &places[rows->last[place->row]];
      const double room = place->x - before->x - gap * 2.0;

      if (before->left || !is_legible (frame, before, room))
        return;
      before->room = MIN (before->room, room);
    }
  choose_side (frame, rows, gap, place);
  rows->ends[place->row] = place->x + (place->left ? 0.0 : gap + place->room);
  rows->last[place->row] = (gint)index;
}

/* Of up to MOST_WORDED events; returns the rows that their words take.  Many are called the same. */
static guint
place_events (TmFrame *frame, const TmFrameEvent *events, guint n, Place *places)
{
  const TmTextStyle style = { .scale = EVENT_SCALE };
  Rows rows = { .rows = frame->height >= frame->pen.line * 10.0 ? MOST_EVENT_ROWS : 2,
                .ends = { -INFINITY, -INFINITY, -INFINITY },
                .last = { -1, -1, -1 } };
  guint used = 0;

  for (guint i = 0; i < n; i++)
    {
      const gboolean again = i > 0 && g_str_equal (events[i].label, events[i - 1].label);

      places[i] = (Place) { .x = find_event_x (frame, &events[i]),
                            .width = again ? places[i - 1].width
                                           : tm_text_width (&frame->pen, events[i].label, &style) };
      place_event (frame, places, i, &rows);
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
  const TmTextStyle style = { .scale = EVENT_SCALE,
                              .align = place->left ? TM_ALIGN_RIGHT : TM_ALIGN_LEFT,
                              .max_width = place->room };

  tm_text_draw (&frame->pen, event->label, place->left ? place->x - gap : place->x + gap, y, &style);
}

static void
draw_event_line (const TmFrame *frame, const TmFrameEvent *event, double x, double top)
{
  if (event->lesser)
    tm_frame_dashed (frame, x, top, x, frame->bottom, 1.2, &frame->pen.theme->dim, 0.9, 1.5, 4.0);
  else
    tm_frame_dashed (frame, x, top, x, frame->bottom, 1.4, &frame->pen.theme->text, 0.95, 5.0, 4.0);
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
      const Place *place = &places[i];
      const gboolean worded = is_legible (frame, place, place->room);
      const double at = y + place->row * frame->pen.line;

      draw_event_line (frame, &events[i], place->x, worded ? at - frame->pen.line * 0.4 : frame->top);
      if (worded)
        draw_event_words (frame, &events[i], place, at);
    }
}
