/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-view-keys: the drawing by keyboard alone.
 */

#include "app-drawing-view-private.h"

#include <math.h>

/* Pixels that an arrow moves the page, a balloon, and a balloon with Shift. */
#define PAN_STEP   60.0
#define MOVE_STEP  10.0
#define SMALL_STEP 1.0
#define ZOOM_STEP  1.25

static gboolean
find_arrow (guint keyval, double *across, double *down)
{
  static const struct {
    guint key, pad;
    double across, down;
  } arrows[] = {
    { GDK_KEY_Left, GDK_KEY_KP_Left, -1, 0 },
    { GDK_KEY_Right, GDK_KEY_KP_Right, 1, 0 },
    { GDK_KEY_Up, GDK_KEY_KP_Up, 0, -1 },
    { GDK_KEY_Down, GDK_KEY_KP_Down, 0, 1 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (arrows); i++)
    {
      if (keyval != arrows[i].key && keyval != arrows[i].pad)
        continue;
      *across = arrows[i].across;
      *down = arrows[i].down;
      return TRUE;
    }
  return FALSE;
}

static void
pan (TmDrawingView *self, double across, double down)
{
  tm_drawing_frame_pan (&self->frame, -across * PAN_STEP, -down * PAN_STEP);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* The balloon, or with Ctrl the tip of its leader line, which a balloon without one gets then. */
static void
move (TmDrawingView *self, int at, double across, double down, GdkModifierType state)
{
  TmMarkSpot spot = self->moving ? self->moved : g_array_index (self->items, TmDrawingItem, at).spot;
  double step = (state & GDK_SHIFT_MASK) != 0 ? SMALL_STEP : MOVE_STEP;
  double share_x = across * step / (self->frame.page_width * self->frame.scale);
  double share_y = down * step / (self->frame.page_height * self->frame.scale);

  if ((state & GDK_CONTROL_MASK) != 0)
    {
      spot.to_x = (isfinite (spot.to_x) ? spot.to_x : spot.x) + share_x;
      spot.to_y = (isfinite (spot.to_y) ? spot.to_y : spot.y) + share_y;
    }
  else
    {
      spot.x += share_x;
      spot.y += share_y;
    }
  tm_drawing_view_move (self, &spot);
  /* By pointer it stays under the pointer; by key the page follows it. */
  tm_drawing_frame_reveal (&self->frame, self->moved.x, self->moved.y, 0);
}

static gboolean
press_arrow (TmDrawingView *self, double across, double down, GdkModifierType state)
{
  int at = self->for_change ? tm_drawing_view_chosen_item (self) : -1;

  if ((state & GDK_ALT_MASK) != 0 || !tm_drawing_frame_is_set (&self->frame))
    return FALSE;
  if (at >= 0)
    move (self, at, across, down, state);
  else
    pan (self, across, down);
  return TRUE;
}

/* A feature without a balloon gets it in the middle of what is in sight; one that has it is measured. */
static gboolean
press_enter (TmDrawingView *self)
{
  double x, y;

  if (self->chosen == NULL)
    return FALSE;
  tm_drawing_view_settle (self);
  tm_drawing_view_middle (self, &x, &y);
  if (!self->for_change || !tm_drawing_view_place_chosen (self, x, y))
    tm_drawing_view_emit (self, TM_DRAWING_JUMP);
  return TRUE;
}

static gboolean
press_escape (TmDrawingView *self)
{
  if (self->moving)
    {
      self->moving = FALSE;
      tm_drawing_view_show (self);
      return TRUE;
    }
  if (!self->for_change || self->chosen == NULL)
    return FALSE;
  tm_drawing_view_choose_item (self, -1);
  return TRUE;
}

static gboolean
press_with_control (TmDrawingView *self, guint keyval)
{
  switch (keyval)
    {
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      tm_drawing_view_zoom (self, ZOOM_STEP);
      return TRUE;
    case GDK_KEY_minus:
    case GDK_KEY_KP_Subtract:
      tm_drawing_view_zoom (self, 1 / ZOOM_STEP);
      return TRUE;
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      tm_drawing_view_fit (self);
      return TRUE;
    default:
      return FALSE;
    }
}

static gboolean
press_for_change (TmDrawingView *self, guint keyval)
{
  switch (keyval)
    {
    case GDK_KEY_n:
    case GDK_KEY_N:
      tm_drawing_view_step (self, 1);
      return TRUE;
    case GDK_KEY_p:
    case GDK_KEY_P:
      tm_drawing_view_step (self, -1);
      return TRUE;
    /* As a balloon has it: 4.2 is the second place of 4. */
    case GDK_KEY_period:
    case GDK_KEY_KP_Decimal:
    case GDK_KEY_KP_Separator:
      tm_drawing_view_step_place (self);
      return TRUE;
    case GDK_KEY_Delete:
    case GDK_KEY_KP_Delete:
      tm_drawing_view_take_off (self);
      return TRUE;
    case GDK_KEY_Page_Down:
    case GDK_KEY_KP_Page_Down:
      tm_drawing_view_turn (self, 1);
      return TRUE;
    case GDK_KEY_Page_Up:
    case GDK_KEY_KP_Page_Up:
      tm_drawing_view_turn (self, -1);
      return TRUE;
    default:
      return FALSE;
    }
}

gboolean
tm_drawing_view_key (TmDrawingView *self, guint keyval, GdkModifierType state)
{
  double across, down;

  if (self->document == NULL || self->drawing == NULL)
    return FALSE;
  if (find_arrow (keyval, &across, &down))
    return press_arrow (self, across, down, state);
  if ((state & GDK_CONTROL_MASK) != 0)
    return press_with_control (self, keyval);
  if ((state & (GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return FALSE;
  if (keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter || keyval == GDK_KEY_ISO_Enter)
    return press_enter (self);
  if (keyval == GDK_KEY_Escape)
    return press_escape (self);
  return self->for_change && press_for_change (self, keyval);
}

static gboolean
pressed_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state,
            TmDrawingView *self)
{
  return tm_drawing_view_key (self, keyval, state);
}

/* An arrow that is held down moves a balloon once: that is one change, and one to take back. */
static void
released_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state,
             TmDrawingView *self)
{
  double across, down;

  if (find_arrow (keyval, &across, &down))
    tm_drawing_view_settle (self);
}

static void
left_cb (GtkEventControllerFocus *focus, TmDrawingView *self)
{
  if (self->document != NULL)
    tm_drawing_view_settle (self);
}

void
tm_drawing_view_add_keys (TmDrawingView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect (keys, "key-pressed", G_CALLBACK (pressed_cb), self);
  g_signal_connect (keys, "key-released", G_CALLBACK (released_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
