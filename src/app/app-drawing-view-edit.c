/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-view-edit: balloons put, moved and taken off, and taken back.
 */

#include "app-drawing-view-private.h"

#include <math.h>

#include "app-toast.h"

/* More than anybody takes back. */
#define MOST_UNDO 500

static TmJob *
get_job (TmDrawingView *self)
{
  return tm_document_job (self->document);
}

/* -------- Taking back -------- */

static void
clear_undo (TmDrawingUndo *undo)
{
  g_free (undo->drawing);
  g_free (undo->balloon);
}

void
tm_drawing_view_clear_undo (TmDrawingView *self)
{
  for (guint i = 0; i < self->undo->len; i++)
    clear_undo (&g_array_index (self->undo, TmDrawingUndo, i));
  g_array_set_size (self->undo, 0);
}

void
tm_drawing_view_forget_undo (TmDrawingView *self)
{
  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  tm_drawing_view_clear_undo (self);
}

/* How the balloon stands before it is changed. */
static TmDrawingUndo
note_before (TmDrawingView *self, const char *balloon, guint place)
{
  const TmBalloonMark *mark = tm_find_mark (get_job (self), self->drawing, balloon, place);
  TmDrawingUndo undo = { g_strdup (self->drawing), g_strdup (balloon), place, mark != NULL, { 0 } };

  if (mark != NULL)
    undo.spot = tm_mark_spot (mark);
  return undo;
}

static void
keep_undo (TmDrawingView *self, TmDrawingUndo *undo)
{
  if (self->undo->len >= MOST_UNDO)
    {
      clear_undo (&g_array_index (self->undo, TmDrawingUndo, 0));
      g_array_remove_index (self->undo, 0);
    }
  g_array_append_val (self->undo, *undo);
}

/* What @undo speaks of may be gone: then there is nothing to take back of it. */
static gboolean
take_back (TmDrawingView *self, const TmDrawingUndo *undo, GError **error)
{
  TmBalloonMark *mark = tm_find_mark (get_job (self), undo->drawing, undo->balloon, undo->place);

  if (undo->was_there)
    return tm_edit_put_mark (self->document, undo->drawing, undo->balloon, undo->place, &undo->spot, error);
  return mark == NULL || tm_edit_remove_mark (self->document, mark, error);
}

gboolean
tm_drawing_view_undo (TmDrawingView *self)
{
  g_autoptr (GError) error = NULL;
  TmDrawingUndo undo;

  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), FALSE);

  tm_drawing_view_settle (self);
  if (self->document == NULL || self->undo->len == 0)
    return FALSE;
  undo = g_array_index (self->undo, TmDrawingUndo, self->undo->len - 1);
  g_array_set_size (self->undo, self->undo->len - 1);
  if (take_back (self, &undo, &error))
    {
      tm_drawing_view_turn_to (self, undo.drawing);
      tm_drawing_view_choose_place (self, undo.balloon, undo.place, FALSE);
      tm_drawing_view_emit (self, TM_DRAWING_CHOSEN);
    }
  else
    tm_window_show_error (GTK_WIDGET (self), error->message);
  /* What the book did not keep can be tried again; what the job refuses, never. */
  if (error != NULL && error->domain != TM_EDIT_ERROR)
    keep_undo (self, &undo);
  else
    clear_undo (&undo);
  return TRUE;
}

/* -------- Moving -------- */

void
tm_drawing_view_move (TmDrawingView *self, const TmMarkSpot *spot)
{
  gboolean led = isfinite (spot->to_x);

  self->moving = TRUE;
  self->moved = (TmMarkSpot) { CLAMP (spot->x, 0, 1), CLAMP (spot->y, 0, 1),
                               led ? CLAMP (spot->to_x, 0, 1) : (double)NAN,
                               led ? CLAMP (spot->to_y, 0, 1) : (double)NAN };
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
put (TmDrawingView *self, const char *balloon, guint place, const TmMarkSpot *spot)
{
  g_autoptr (GError) error = NULL;
  TmDrawingUndo undo = note_before (self, balloon, place);

  if (!tm_edit_put_mark (self->document, self->drawing, balloon, place, spot, &error))
    {
      clear_undo (&undo);
      tm_window_show_error (GTK_WIDGET (self), error->message);
      return FALSE;
    }
  tm_window_clear_error (GTK_WIDGET (self));
  keep_undo (self, &undo);
  return TRUE;
}

void
tm_drawing_view_settle (TmDrawingView *self)
{
  int at = tm_drawing_view_chosen_item (self);
  TmMarkSpot spot = self->moved;

  if (!self->moving)
    return;
  self->moving = FALSE;
  if (at >= 0)
    {
      const TmDrawingItem *item = &g_array_index (self->items, TmDrawingItem, at);
      g_autofree char *balloon = g_strdup (item->balloon);

      put (self, balloon, item->place, &spot);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
tm_drawing_view_take_off (TmDrawingView *self)
{
  int at = tm_drawing_view_chosen_item (self);
  const TmDrawingItem *item = at >= 0 ? &g_array_index (self->items, TmDrawingItem, at) : NULL;
  TmBalloonMark *mark
      = item != NULL ? tm_find_mark (get_job (self), self->drawing, item->balloon, item->place) : NULL;
  g_autoptr (GError) error = NULL;
  TmDrawingUndo undo;

  self->moving = FALSE;
  if (mark == NULL)
    return;
  undo = note_before (self, mark->feature, mark->place);
  if (tm_edit_remove_mark (self->document, mark, &error))
    {
      keep_undo (self, &undo);
      tm_drawing_view_emit (self, TM_DRAWING_CHOSEN);
      return;
    }
  clear_undo (&undo);
  tm_window_show_error (GTK_WIDGET (self), error->message);
}

/* -------- Putting -------- */

/* Beside its tip, clear of the others.  Worked out as on a page that fits, so that it comes to the same place
 * however far the drawing is zoomed; but never far out of a sight that is small. */
static TmMarkSpot
find_spot (TmDrawingView *self, double share_x, double share_y, const char *text)
{
  TmDrawingFrame frame = self->frame;
  g_autoptr (GArray) others = g_array_new (FALSE, FALSE, sizeof (TmBalloon));
  TmBalloon balloon = { .led = TRUE, .text = text };

  frame.x = frame.y = 0;
  frame.scale = MIN (self->frame.scale, 2 * tm_drawing_frame_fit_scale (&frame));
  for (guint i = 0; i < self->items->len; i++)
    {
      const TmDrawingItem *item = &g_array_index (self->items, TmDrawingItem, i);
      TmBalloon other = { .text = item->text, .led = isfinite (item->spot.to_x) };

      tm_drawing_frame_to_view (&frame, item->spot.x, item->spot.y, &other.x, &other.y);
      if (other.led)
        tm_drawing_frame_to_view (&frame, item->spot.to_x, item->spot.to_y, &other.to_x, &other.to_y);
      g_array_append_val (others, other);
    }
  tm_drawing_frame_to_view (&frame, share_x, share_y, &balloon.to_x, &balloon.to_y);
  tm_balloon_place (&balloon, frame.page_width * frame.scale, frame.page_height * frame.scale,
                    (const TmBalloon *)(gpointer)others->data, others->len, tm_theme_light ());
  TmMarkSpot spot = { 0, 0, share_x, share_y };
  tm_drawing_frame_to_page (&frame, balloon.x, balloon.y, &spot.x, &spot.y);
  return spot;
}

gboolean
tm_drawing_view_put (TmDrawingView *self, const char *balloon, guint place, double share_x, double share_y)
{
  const TmFeature *feature;
  g_autofree char *text = NULL;
  TmMarkSpot spot;

  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), FALSE);

  feature = self->document != NULL ? tm_job_find_feature (get_job (self), balloon) : NULL;
  if (feature == NULL || self->drawing == NULL || !tm_drawing_frame_is_set (&self->frame))
    return FALSE;
  text = tm_balloon_text (feature, place);
  spot = find_spot (self, CLAMP (share_x, 0, 1), CLAMP (share_y, 0, 1), text);
  return put (self, balloon, place, &spot);
}

const char *
tm_drawing_view_next_unplaced (TmDrawingView *self)
{
  const TmJob *job;
  guint at = 0;
  gboolean found;

  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), NULL);

  if (self->document == NULL)
    return NULL;
  job = get_job (self);
  found = self->chosen != NULL
          && g_ptr_array_find (job->features, tm_job_find_feature (job, self->chosen), &at);
  for (guint i = found ? 1 : 0; i < job->features->len + (found ? 1 : 0); i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, (at + i) % job->features->len);

      if (tm_find_any_mark (job, feature->balloon) == NULL)
        return feature->balloon;
    }
  return NULL;
}

static void
choose_loud (TmDrawingView *self, const char *balloon, guint place)
{
  g_autofree char *kept = g_strdup (balloon);

  tm_drawing_view_choose_place (self, kept, place, FALSE);
  tm_drawing_view_emit (self, TM_DRAWING_CHOSEN);
}

gboolean
tm_drawing_view_is_to_place (TmDrawingView *self)
{
  return self->for_change && self->chosen != NULL
         && tm_find_place_mark (get_job (self), self->chosen, self->place) == NULL;
}

/* The next place after @place, and on from the first, without a balloon of its own; 0: all have one. */
static guint
find_next_place (TmDrawingView *self, const char *balloon, guint place)
{
  const TmFeature *feature = tm_job_find_feature (get_job (self), balloon);

  for (guint i = 0; place > 0 && feature != NULL && i < feature->places; i++)
    {
      const guint next = (place + i) % feature->places + 1;

      if (tm_find_place_mark (get_job (self), balloon, next) == NULL)
        return next;
    }
  return 0;
}

gboolean
tm_drawing_view_place_chosen (TmDrawingView *self, double share_x, double share_y)
{
  g_autofree char *balloon = g_strdup (self->chosen);
  const guint place = self->place;
  guint next_place;
  const char *next;

  if (!tm_drawing_view_is_to_place (self) || !tm_drawing_view_put (self, balloon, place, share_x, share_y))
    return FALSE;
  next_place = find_next_place (self, balloon, place);
  next = next_place > 0 ? balloon : tm_drawing_view_next_unplaced (self);
  choose_loud (self, next != NULL ? next : balloon, next != NULL ? next_place : place);
  return TRUE;
}

void
tm_drawing_view_step (TmDrawingView *self, int by)
{
  const TmJob *job = get_job (self);
  gboolean found;
  guint at = 0;

  if (job->features->len == 0)
    return;
  found = self->chosen != NULL
          && g_ptr_array_find (job->features, tm_job_find_feature (job, self->chosen), &at);
  at = (guint)CLAMP ((int)at + (found ? by : 0), 0, (int)job->features->len - 1);
  choose_loud (self, ((TmFeature *)g_ptr_array_index (job->features, at))->balloon, 0);
}

gboolean
tm_drawing_view_step_place (TmDrawingView *self)
{
  const TmFeature *feature;

  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), FALSE);

  feature = self->document != NULL && self->chosen != NULL
                ? tm_job_find_feature (get_job (self), self->chosen)
                : NULL;
  if (feature == NULL || feature->places <= 1)
    return FALSE;
  choose_loud (self, feature->balloon, (self->place + 1) % (feature->places + 1));
  return TRUE;
}
