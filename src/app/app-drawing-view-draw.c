/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-view-draw: where the balloons are, and how page and balloons are drawn.
 */

#include <math.h>

#include "app-batch-portion.h"
#include "app-drawing-view-private.h"

/* Pixels. */
#define REACH 8.0
#define CROSS 14.0

/* -------- Where the balloons are -------- */

static TmBalloon
make_balloon (TmDrawingView *self, const TmDrawingItem *item, gboolean chosen)
{
  const TmMarkSpot *spot = chosen && self->moving ? &self->moved : &item->spot;
  gboolean has_piece = tm_bench_spot (tm_document_bench (self->document))->piece != NULL;
  const TmFeature *feature = tm_drawing_view_feature_of (self, item);
  TmDrawingState state = { TM_VERDICT_NOT_MEASURED, TM_POINT_NONE };
  gboolean known = feature != NULL && tm_drawing_states_get (self->states, feature, item->place, &state);
  TmBalloon balloon
      = { .text = item->text, .verdict = state.verdict, .point = state.point, .chosen = chosen };

  balloon.plain = !known || !has_piece;
  balloon.focused = chosen && gtk_widget_has_focus (GTK_WIDGET (self));
  balloon.led = isfinite (spot->to_x);
  tm_drawing_frame_to_view (&self->frame, spot->x, spot->y, &balloon.x, &balloon.y);
  if (balloon.led)
    tm_drawing_frame_to_view (&self->frame, spot->to_x, spot->to_y, &balloon.to_x, &balloon.to_y);
  return balloon;
}

static int
rank (const TmBalloon *balloon)
{
  return balloon->chosen ? 10 : balloon->plain ? 0 : tm_batch_rank_verdict ((guint8)balloon->verdict) + 1;
}

static int
compare_ranks (gconstpointer a, gconstpointer b, gpointer balloons)
{
  guint one = *(const guint *)a, other = *(const guint *)b;
  int by = rank (&g_array_index ((GArray *)balloons, TmBalloon, one))
           - rank (&g_array_index ((GArray *)balloons, TmBalloon, other));

  return by != 0 ? by : one < other ? -1 : 1;
}

/* On a crowded drawing what is out lies over what is in, and the chosen one over all. */
void
tm_drawing_view_lay_out (TmDrawingView *self)
{
  int chosen = tm_drawing_view_chosen_item (self);

  g_array_set_size (self->balloons, 0);
  g_array_set_size (self->order, 0);
  for (guint i = 0; i < self->items->len; i++)
    {
      TmBalloon balloon
          = make_balloon (self, &g_array_index (self->items, TmDrawingItem, i), (int)i == chosen);

      g_array_append_val (self->balloons, balloon);
      g_array_append_val (self->order, i);
    }
  g_array_sort_with_data (self->order, compare_ranks, self->balloons);
}

/* A disc before a tip, and of several the one on top. */
int
tm_drawing_view_item_at (TmDrawingView *self, double x, double y, TmBalloonPart *part)
{
  static const TmBalloonPart wanted[] = { TM_BALLOON_DISC, TM_BALLOON_TIP };

  tm_drawing_view_lay_out (self);
  for (gsize w = 0; w < G_N_ELEMENTS (wanted); w++)
    for (guint i = self->order->len; i > 0; i--)
      {
        guint at = g_array_index (self->order, guint, i - 1);

        *part = tm_balloon_part_at (&g_array_index (self->balloons, TmBalloon, at), x, y, REACH,
                                    tm_theme_light ());
        if (*part == wanted[w])
          return (int)at;
      }
  *part = TM_BALLOON_NOWHERE;
  return -1;
}

/* -------- Drawing -------- */

static gboolean
is_in_sight (TmDrawingView *self, const TmBalloon *balloon)
{
  double around = 4 * tm_balloon_radius (tm_theme_light ());
  double left = balloon->led ? MIN (balloon->x, balloon->to_x) : balloon->x;
  double right = balloon->led ? MAX (balloon->x, balloon->to_x) : balloon->x;
  double top = balloon->led ? MIN (balloon->y, balloon->to_y) : balloon->y;
  double bottom = balloon->led ? MAX (balloon->y, balloon->to_y) : balloon->y;

  return right > -around && left < self->frame.width + around && bottom > -around
         && top < self->frame.height + around;
}

/* Cross hairs where a feature is being made. */
static void
draw_new (TmDrawingView *self, cairo_t *cr)
{
  const TmColour *colour = &tm_theme_light ()->text;
  double x, y;

  if (!isfinite (self->new_x))
    return;
  tm_drawing_frame_to_view (&self->frame, self->new_x, self->new_y, &x, &y);
  cairo_set_source_rgba (cr, colour->red, colour->green, colour->blue, colour->alpha);
  cairo_set_line_width (cr, 2);
  cairo_arc (cr, x, y, CROSS / 2, 0, 2 * G_PI);
  cairo_move_to (cr, x - CROSS, y);
  cairo_line_to (cr, x + CROSS, y);
  cairo_move_to (cr, x, y - CROSS);
  cairo_line_to (cr, x, y + CROSS);
  cairo_stroke (cr);
}

static void
draw_balloons (TmDrawingView *self, cairo_t *cr)
{
  int device = gtk_widget_get_scale_factor (GTK_WIDGET (self));

  tm_drawing_view_lay_out (self);
  for (guint i = 0; i < self->order->len; i++)
    {
      guint at = g_array_index (self->order, guint, i);
      const TmBalloon *balloon = &g_array_index (self->balloons, TmBalloon, at);

      if (is_in_sight (self, balloon))
        tm_drawing_stamp_draw (&g_array_index (self->items, TmDrawingItem, at).stamp, balloon, cr, device,
                               tm_theme_light ());
    }
  draw_new (self, cr);
}

void
tm_drawing_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmDrawingView *self = TM_DRAWING_VIEW (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float)gtk_widget_get_width (widget),
                                               (float)gtk_widget_get_height (widget));
  cairo_t *cr;

  if (self->document == NULL || !tm_drawing_frame_is_set (&self->frame))
    return;
  gtk_snapshot_push_clip (snapshot, &bounds);
  cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  tm_drawing_sheet_draw (self->sheet, cr, &self->frame, gtk_widget_get_scale_factor (widget));
  draw_balloons (self, cr);
  cairo_destroy (cr);
  gtk_snapshot_pop (snapshot);
}
