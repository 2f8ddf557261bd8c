/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-view-pointer: the drawing by mouse, touch pad and finger.
 */

#include "app-drawing-view-private.h"

#include <math.h>

/* Pixels. */
#define DRAG_FROM   5.0
#define SCROLL_STEP 50.0
#define ZOOM_STEP   1.2

/* -------- Clicks -------- */

static gboolean
is_on_page (TmDrawingView *self, double x, double y, double *share_x, double *share_y)
{
  tm_drawing_frame_to_page (&self->frame, x, y, share_x, share_y);
  return tm_drawing_frame_is_set (&self->frame) && *share_x >= 0 && *share_x <= 1 && *share_y >= 0
         && *share_y <= 1;
}

static void
click_paper (TmDrawingView *self, double x, double y, GdkModifierType state)
{
  double share_x, share_y;

  if (!self->for_change || !is_on_page (self, x, y, &share_x, &share_y))
    return;
  if ((state & GDK_CONTROL_MASK) != 0)
    g_signal_emit_by_name (self, "asks-feature", share_x, share_y);
  else
    tm_drawing_view_place_chosen (self, share_x, share_y);
}

void
tm_drawing_view_click (TmDrawingView *self, int n_press, double x, double y, GdkModifierType state)
{
  TmBalloonPart part;
  int at;

  if (self->document == NULL || self->drawing == NULL)
    return;
  tm_drawing_view_settle (self);
  at = tm_drawing_view_item_at (self, x, y, &part);
  /* Where the next balloon's leader line is to point, that of another may point already. */
  if (at < 0 || (part == TM_BALLOON_TIP && tm_drawing_view_is_to_place (self)))
    {
      /* The second of two quick clicks is not meant for the next balloon. */
      if (n_press == 1)
        click_paper (self, x, y, state);
      return;
    }
  tm_drawing_view_choose_item (self, at);
  if (n_press == 2 && part == TM_BALLOON_DISC)
    tm_drawing_view_emit (self, TM_DRAWING_JUMP);
}

static void
released_cb (GtkGestureClick *click, int n_press, double x, double y, TmDrawingView *self)
{
  if (!self->pinched)
    tm_drawing_view_click (self, n_press, x, y,
                           gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (click)));
}

/* -------- Dragging -------- */

static void
drag_begin_cb (GtkGestureDrag *drag, double x, double y, TmDrawingView *self)
{
  self->held = -1;
  self->drag_x = self->drag_y = 0;
  self->pinched = gtk_gesture_is_recognized (self->zooming);
  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (self->document == NULL)
    return;
  tm_drawing_view_settle (self);
  if (self->for_change)
    self->held = tm_drawing_view_item_at (self, x, y, &self->held_part);
  if (self->held >= 0)
    self->held_spot = g_array_index (self->items, TmDrawingItem, self->held).spot;
}

static void
drag_balloon (TmDrawingView *self, double x, double y)
{
  TmMarkSpot spot = self->held_spot;
  double share_x = x / (self->frame.page_width * self->frame.scale);
  double share_y = y / (self->frame.page_height * self->frame.scale);

  if (!self->moving)
    tm_drawing_view_choose_item (self, self->held);
  if (self->held_part == TM_BALLOON_TIP)
    {
      spot.to_x += share_x;
      spot.to_y += share_y;
    }
  else
    {
      spot.x += share_x;
      spot.y += share_y;
    }
  tm_drawing_view_move (self, &spot);
}

static void
drag_update_cb (GtkGestureDrag *drag, double x, double y, TmDrawingView *self)
{
  gboolean begun = self->drag_x != 0 || self->drag_y != 0;

  if (self->pinched || (!begun && hypot (x, y) < DRAG_FROM) || !tm_drawing_frame_is_set (&self->frame))
    return;
  if (!begun)
    gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  if (self->held >= 0)
    drag_balloon (self, x, y);
  else
    tm_drawing_frame_pan (&self->frame, x - self->drag_x, y - self->drag_y);
  self->drag_x = x;
  self->drag_y = y;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drag_end_cb (GtkGestureDrag *drag, double x, double y, TmDrawingView *self)
{
  self->held = -1;
  if (self->document != NULL)
    tm_drawing_view_settle (self);
}

/* -------- Zooming -------- */

static void
zoom_at (TmDrawingView *self, double factor, double x, double y)
{
  double before = self->frame.scale;

  self->whole = FALSE;
  tm_drawing_frame_zoom (&self->frame, factor, x, y);
  tm_drawing_view_moved_frame (self, before);
}

static gboolean
scroll_cb (GtkEventControllerScroll *scroll, double dx, double dy, TmDrawingView *self)
{
  GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));
  gboolean across = (state & GDK_SHIFT_MASK) != 0 && dx == 0;

  if ((state & GDK_CONTROL_MASK) != 0)
    zoom_at (self, pow (ZOOM_STEP, -dy), self->pointer_x, self->pointer_y);
  else
    tm_drawing_frame_pan (&self->frame, -SCROLL_STEP * (across ? dy : dx), across ? 0 : -SCROLL_STEP * dy);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

static void
pinch_begin_cb (GtkGesture *gesture, GdkEventSequence *sequence, TmDrawingView *self)
{
  self->pinch = 1;
  self->pinched = TRUE;
}

static void
pinch_cb (GtkGestureZoom *zoom, double scale, TmDrawingView *self)
{
  double x = self->frame.width / 2, y = self->frame.height / 2;

  if (gtk_gesture_is_active (GTK_GESTURE (zoom)))
    gtk_gesture_get_bounding_box_center (GTK_GESTURE (zoom), &x, &y);
  zoom_at (self, scale / self->pinch, x, y);
  self->pinch = scale;
}

/* -------- The pointer over it -------- */

static const char *
find_cursor (TmDrawingView *self, double x, double y)
{
  TmBalloonPart part;
  double share_x, share_y;

  if (self->document == NULL || self->drawing == NULL)
    return NULL;
  if (tm_drawing_view_item_at (self, x, y, &part) >= 0)
    return "pointer";
  if (tm_drawing_view_is_to_place (self) && is_on_page (self, x, y, &share_x, &share_y))
    return "crosshair";
  return self->frame.fits ? NULL : "grab";
}

static void
motion_cb (GtkEventControllerMotion *motion, double x, double y, TmDrawingView *self)
{
  self->pointer_x = x;
  self->pointer_y = y;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), find_cursor (self, x, y));
}

static void
add (TmDrawingView *self, gpointer controller)
{
  gtk_widget_add_controller (GTK_WIDGET (self), controller);
}

void
tm_drawing_view_add_pointer (TmDrawingView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkGesture *pinch = gtk_gesture_zoom_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  GtkEventController *motion = gtk_event_controller_motion_new ();

  self->zooming = pinch;
  g_signal_connect (click, "released", G_CALLBACK (released_cb), self);
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect (motion, "enter", G_CALLBACK (motion_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  add (self, click);
  add (self, drag);
  add (self, pinch);
  add (self, scroll);
  add (self, motion);
  /* A finger that moved before the second one came must not have taken itself away from the two. */
  gtk_gesture_group (pinch, drag);
}
