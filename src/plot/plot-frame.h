/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-frame: the ground that charts of sizes stand on: the place of each part, limits with their numbers,
 * the band and its guards, the target, the pieces along the bottom, and the events between them.
 */

#pragma once

#include "plot-mark.h"
#include "plot-range.h"

G_BEGIN_DECLS

#define TM_FRAME_MOST_LABELS 64

/* Stretches of an edge that words stand on. */
typedef struct {
  double from[TM_FRAME_MOST_LABELS], to[TM_FRAME_MOST_LABELS];
  guint n;
} TmFrameEdge;

typedef struct {
  TmPen pen;
  double width, height;
  double left, right, top, bottom; /* of the area that values are drawn in */
  TmAxis axis;                     /* of the sizes */
  gboolean sideways;               /* sizes run along the bottom rather than up the side */
  double slots;                    /* pieces that the width holds */
  TmFrameEdge side, foot;
} TmFrame;

/* What sizes are held against, counts. */
typedef struct {
  TmLimits limits;
  const char *lower_text, *upper_text; /* "": none */
  double guard;                        /* 0: none known */
  double target;                       /* NAN: none */
  guint decimals;                      /* of the limits */
} TmFrameBand;

/* FALSE where there is no room for a picture; nothing is to be ended then. */
gboolean tm_frame_begin (TmFrame *frame, cairo_t *cr, double width, double height, const TmTheme *theme);
void tm_frame_end (TmFrame *frame);

/* Room beside the picture, and room for numbers @widest wide at its left where the picture is large enough.
 */
double tm_frame_padding (const TmFrame *frame);
void tm_frame_place_columns (TmFrame *frame, double widest);
gboolean tm_frame_is_tall (const TmFrame *frame); /* room for words above and below */

void tm_frame_line (const TmFrame *frame, double x1, double y1, double x2, double y2, double width,
                    const TmColour *colour, double opacity);
void tm_frame_dashed (const TmFrame *frame, double x1, double y1, double x2, double y2, double width,
                      const TmColour *colour, double opacity, double on, double off);
void tm_frame_fill (const TmFrame *frame, double x, double y, double width, double height,
                    const TmColour *colour, double opacity);

/* Where a size lies: x when sideways, else y; far beyond the area it is cut short, never endless. */
double tm_frame_at (const TmFrame *frame, double count);
double tm_frame_keep (const TmFrame *frame, double at);     /* moved inside the area */
gboolean tm_frame_holds (const TmFrame *frame, double at);  /* lies in the area */
double tm_frame_slot (const TmFrame *frame);                /* width of one piece */
double tm_frame_piece (const TmFrame *frame, double piece); /* middle of the piece of that index */
/* The middle of the pixel that a line of one pixel lies on; on paper it lies where it lies. */
double tm_frame_snap (const TmFrame *frame, double at);

/* Keeps a stretch of an edge for words; FALSE where others stand. */
gboolean tm_frame_take (TmFrameEdge *edge, double from, double to);
/* A number at the edge of the sizes: at the left of the area, or under it.  FALSE: no room for it. */
gboolean tm_frame_number (TmFrame *frame, const char *text, double at, gboolean bold, gboolean dim);

void tm_frame_draw_zones (const TmFrame *frame, const TmFrameBand *band);
void tm_frame_draw_limits (TmFrame *frame, const TmFrameBand *band);
void tm_frame_draw_target (TmFrame *frame, const TmFrameBand *band);
/* Round numbers between; at most @most. */
void tm_frame_draw_ticks (TmFrame *frame, guint most, guint decimals);
guint tm_frame_most_ticks (const TmFrame *frame);

/* One value with its whisker; counts. */
typedef struct {
  double x;
  double mean, low, high;
  TmVerdict verdict;
  TmPoint point;
} TmFrameMark;

/* By its verdict; beyond the area an arrow at its edge.  Larger where it is out. */
void tm_frame_draw_mark (const TmFrame *frame, const TmFrameMark *mark, double radius, gboolean whisker);

/* -------- Pieces and events -------- */

typedef char *(*TmFrameName) (gconstpointer data, guint piece);

/* The name of one piece in bold, before tm_frame_draw_pieces() keeps clear of it. */
void tm_frame_mark_piece (TmFrame *frame, double x, const char *text);
/* The line along the bottom with the names of the first piece and of every second, fifth, tenth… */
void tm_frame_draw_pieces (TmFrame *frame, guint n, TmFrameName name, gconstpointer data);

typedef struct {
  double at; /* pieces before it */
  char *label;
  gboolean lesser; /* begins no new stretch */
} TmFrameEvent;

/* Lines of words that the events want above the area: 0 to 3. */
guint tm_frame_event_rows (TmFrame *frame, const TmFrameEvent *events, guint n);
/* In the order of pieces; the first line of words has its middle at @y (NAN: no words). */
void tm_frame_draw_events (TmFrame *frame, const TmFrameEvent *events, guint n, double y);

void tm_frame_draw_empty (TmFrame *frame, const char *text);

G_END_DECLS
