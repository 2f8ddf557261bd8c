/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-view-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-dialog.h"
#include "app-drawing-words.h"

/* Pixels. */
#define LEAST_WIDTH  240
#define LEAST_HEIGHT 160
#define REVEAL       90.0

static guint signals[TM_DRAWING_N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmDrawingView, tm_drawing_view, GTK_TYPE_WIDGET)

void
tm_drawing_view_emit (TmDrawingView *self, guint signal)
{
  g_signal_emit (self, signals[signal], 0);
}

static const TmJob *
get_job (TmDrawingView *self)
{
  return self->document != NULL ? tm_document_job (self->document) : NULL;
}

static TmDrawing *
get_drawing (TmDrawingView *self)
{
  const TmJob *job = get_job (self);

  return job != NULL && self->drawing != NULL ? tm_job_find_drawing (job, self->drawing) : NULL;
}

/* -------- Balloons -------- */

static void
clear_item (gpointer data)
{
  TmDrawingItem *item = data;

  g_free (item->text);
  tm_drawing_stamp_clear (&item->stamp);
}

static void
take_items (TmDrawingView *self)
{
  const TmJob *job = get_job (self);

  g_array_set_size (self->items, 0);
  self->held = -1;
  for (guint i = 0; job != NULL && self->drawing != NULL && i < job->balloon_marks->len; i++)
    {
      const TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);
      const TmFeature *feature = tm_job_find_feature (job, mark->feature);
      TmDrawingItem item;

      if (feature == NULL || !g_str_equal (mark->drawing, self->drawing))
        continue;
      item = (TmDrawingItem) {
        feature->balloon, mark->place, tm_balloon_text (feature, mark->place), tm_mark_spot (mark), { 0 }
      };
      g_array_append_val (self->items, item);
    }
}

const TmFeature *
tm_drawing_view_feature_of (TmDrawingView *self, const TmDrawingItem *item)
{
  return tm_job_find_feature (get_job (self), item->balloon);
}

int
tm_drawing_view_chosen_item (TmDrawingView *self)
{
  int other = -1;

  for (guint i = 0; self->chosen != NULL && i < self->items->len; i++)
    {
      const TmDrawingItem *item = &g_array_index (self->items, TmDrawingItem, i);

      if (!g_str_equal (item->balloon, self->chosen))
        continue;
      if (item->place == self->place)
        return (int)i;
      if (other < 0 || item->place == 0)
        other = (int)i;
    }
  /* Where they are put, the balloon of a place is that one alone; where they are looked at, the one of the
   * whole feature shows its place too. */
  return self->for_change && self->place > 0 ? -1 : other;
}

/* -------- What is said -------- */

static char *
describe_chosen (TmDrawingView *self)
{
  const TmJob *job = get_job (self);
  const TmFeature *feature = self->chosen != NULL ? tm_job_find_feature (job, self->chosen) : NULL;
  int at = tm_drawing_view_chosen_item (self);
  const TmDrawingItem *item = at >= 0 ? &g_array_index (self->items, TmDrawingItem, at) : NULL;
  TmDrawingState state;

  if (feature == NULL)
    return NULL;
  if (item == NULL)
    return tm_words_no_balloon (feature, self->for_change ? self->place : 0);
  return tm_words_balloon (feature, item->place,
                           tm_drawing_states_get (self->states, feature, item->place, &state) ? &state
                                                                                              : NULL);
}

static void
say (TmDrawingView *self)
{
  const TmDrawing *drawing = get_drawing (self);
  g_autofree char *about = drawing != NULL ? describe_chosen (self) : NULL;
  g_autofree char *words
      = drawing != NULL ? tm_words_drawing_with (drawing, about) : g_strdup (_ ("No drawing"));

  if (g_strcmp0 (words, self->said) == 0)
    return;
  tm_name_widget (GTK_WIDGET (self), words);
  g_free (self->said);
  self->said = g_steal_pointer (&words);
}

void
tm_drawing_view_show (TmDrawingView *self)
{
  say (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
zoomed_cb (gpointer data)
{
  TmDrawingView *self = data;

  self->zoomed_id = 0;
  tm_drawing_view_emit (self, TM_DRAWING_ZOOMED);
  return G_SOURCE_REMOVE;
}

/* Whoever shows the scale may then ask for another size, which must not be while this one is being given. */
void
tm_drawing_view_moved_frame (TmDrawingView *self, double scale_before)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (self->frame.scale != scale_before && self->zoomed_id == 0)
    self->zoomed_id = g_idle_add_full (G_PRIORITY_HIGH_IDLE, zoomed_cb, self, NULL);
}

/* -------- What is in sight -------- */

/* Between the tip and the balloon: both are looked at. */
static void
bring (TmDrawingView *self)
{
  int at = tm_drawing_view_chosen_item (self);
  const TmMarkSpot *spot = at >= 0 ? &g_array_index (self->items, TmDrawingItem, at).spot : NULL;
  double before = self->frame.scale;

  if (!tm_drawing_frame_is_set (&self->frame) || (!self->closer && !self->reveals))
    return;
  if (spot != NULL && self->closer && !self->whole)
    {
      gboolean led = isfinite (spot->to_x);

      tm_drawing_frame_centre (&self->frame, led ? (spot->x + spot->to_x) / 2 : spot->x,
                               led ? (spot->y + spot->to_y) / 2 : spot->y, TM_FRAME_PAPER_SCALE);
    }
  else if (spot != NULL)
    tm_drawing_frame_reveal (&self->frame, spot->x, spot->y, REVEAL);
  else if (self->closer)
    tm_drawing_frame_fit (&self->frame);
  self->closer = self->reveals = FALSE;
  tm_drawing_view_moved_frame (self, before);
}

static void
sheet_changed_cb (gpointer data)
{
  TmDrawingView *self = data;
  double width, height, before = self->frame.scale;

  if (tm_drawing_sheet_size (self->sheet, &width, &height)
      && (width != self->frame.page_width || height != self->frame.page_height))
    {
      tm_drawing_frame_set_page (&self->frame, width, height);
      bring (self);
      tm_drawing_view_moved_frame (self, before);
    }
  else if (tm_drawing_sheet_problem (self->sheet) != NULL)
    tm_drawing_view_emit (self, TM_DRAWING_TURNED);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
states_changed_cb (gpointer data)
{
  tm_drawing_view_show (data);
}

static void
show_drawing (TmDrawingView *self, const char *name)
{
  const TmDrawing *drawing;
  gboolean other = g_strcmp0 (name, self->drawing) != 0;

  if (other)
    {
      g_free (self->drawing);
      self->drawing = g_strdup (name);
      self->frame.page_width = self->frame.page_height = 0;
      self->whole = FALSE;
    }
  drawing = get_drawing (self);
  tm_drawing_sheet_set (self->sheet, drawing != NULL ? drawing->content : NULL,
                        drawing != NULL ? drawing->page : 1);
  take_items (self);
  tm_drawing_view_show (self);
  if (other)
    tm_drawing_view_emit (self, TM_DRAWING_TURNED);
}

static void
definitions_changed_cb (TmDocument *document, TmDrawingView *self)
{
  const TmJob *job = get_job (self);
  const TmDrawing *drawing = get_drawing (self);
  const TmFeature *feature = self->chosen != NULL ? tm_job_find_feature (job, self->chosen) : NULL;

  if (drawing == NULL && job->drawings->len > 0)
    drawing = g_ptr_array_index (job->drawings, 0);
  if (feature == NULL)
    g_clear_pointer (&self->chosen, g_free);
  if (feature == NULL || self->place > feature->places)
    self->place = 0;
  self->moving = FALSE;
  show_drawing (self, drawing != NULL ? drawing->name : NULL);
}

/* -------- The widget -------- */

static void
tm_drawing_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TmDrawingView *self = TM_DRAWING_VIEW (widget);
  double before = self->frame.scale;

  if (width == self->frame.width && height == self->frame.height)
    return;
  tm_drawing_frame_set_view (&self->frame, width, height);
  bring (self);
  tm_drawing_view_moved_frame (self, before);
}

static void
tm_drawing_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
}

static gboolean
tm_drawing_view_query_tooltip (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  TmDrawingView *self = TM_DRAWING_VIEW (widget);
  TmBalloonPart part;
  int at = keyboard || self->document == NULL ? -1 : tm_drawing_view_item_at (self, x, y, &part);
  const TmDrawingItem *item = at >= 0 ? &g_array_index (self->items, TmDrawingItem, at) : NULL;
  const TmFeature *feature = item != NULL ? tm_drawing_view_feature_of (self, item) : NULL;
  g_autofree char *words = NULL;
  TmDrawingState state;
  gboolean known;

  if (feature == NULL)
    return FALSE;
  known = tm_drawing_states_get (self->states, feature, item->place, &state);
  words = tm_words_balloon (feature, item->place, known ? &state : NULL);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

static void
tm_drawing_view_dispose (GObject *object)
{
  TmDrawingView *self = TM_DRAWING_VIEW (object);

  tm_drawing_view_set_document (self, NULL);
  g_clear_handle_id (&self->zoomed_id, g_source_remove);
  G_OBJECT_CLASS (tm_drawing_view_parent_class)->dispose (object);
}

static void
tm_drawing_view_finalize (GObject *object)
{
  TmDrawingView *self = TM_DRAWING_VIEW (object);

  tm_drawing_states_free (self->states);
  tm_drawing_sheet_free (self->sheet);
  tm_drawing_view_clear_undo (self);
  g_array_unref (self->undo);
  g_array_unref (self->items);
  g_array_unref (self->balloons);
  g_array_unref (self->order);
  g_free (self->drawing);
  g_free (self->chosen);
  g_free (self->said);
  G_OBJECT_CLASS (tm_drawing_view_parent_class)->finalize (object);
}

static void
tm_drawing_view_class_init (TmDrawingViewClass *klass)
{
  static const char *const names[TM_DRAWING_ASKS_FEATURE] = { "chosen", "turned", "zoomed", "jump" };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  object_class->dispose = tm_drawing_view_dispose;
  object_class->finalize = tm_drawing_view_finalize;
  widget_class->snapshot = tm_drawing_view_snapshot;
  widget_class->size_allocate = tm_drawing_view_size_allocate;
  widget_class->measure = tm_drawing_view_measure;
  widget_class->query_tooltip = tm_drawing_view_query_tooltip;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    signals[i] = g_signal_new (names[i], type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[TM_DRAWING_ASKS_FEATURE] = g_signal_new ("asks-feature", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                                   NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_DOUBLE);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "drawing");
}

static void
tm_drawing_view_init (TmDrawingView *self)
{
  self->states = tm_drawing_states_new (states_changed_cb, self);
  self->sheet = tm_drawing_sheet_new (sheet_changed_cb, self);
  self->frame = TM_FRAME_NONE;
  self->items = g_array_new (FALSE, FALSE, sizeof (TmDrawingItem));
  g_array_set_clear_func (self->items, clear_item);
  self->balloons = g_array_new (FALSE, FALSE, sizeof (TmBalloon));
  self->order = g_array_new (FALSE, FALSE, sizeof (guint));
  self->undo = g_array_new (FALSE, FALSE, sizeof (TmDrawingUndo));
  self->held = -1;
  self->new_x = self->new_y = NAN;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  tm_drawing_view_add_keys (self);
  tm_drawing_view_add_pointer (self);
  g_signal_connect (self, "notify::has-focus", G_CALLBACK (gtk_widget_queue_draw), NULL);
  say (self);
}

GtkWidget *
tm_drawing_view_new (gboolean for_change)
{
  TmDrawingView *self = g_object_new (TM_TYPE_DRAWING_VIEW, NULL);

  self->for_change = for_change;
  return GTK_WIDGET (self);
}

void
tm_drawing_view_set_document (TmDrawingView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  if (self->document == document)
    return;
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_array_set_size (self->items, 0);
  tm_drawing_view_clear_undo (self);
  g_clear_pointer (&self->chosen, g_free);
  tm_drawing_states_set_document (self->states, document);
  g_set_object (&self->document, document);
  self->moving = FALSE;
  show_drawing (self, NULL);
  if (document == NULL)
    return;
  g_signal_connect (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (document, self);
}

const char *
tm_drawing_view_drawing (TmDrawingView *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), NULL);

  return self->drawing;
}

void
tm_drawing_view_turn_to (TmDrawingView *self, const char *drawing)
{
  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  tm_drawing_view_settle (self);
  if (self->document != NULL && tm_job_find_drawing (get_job (self), drawing) != NULL)
    show_drawing (self, drawing);
}

void
tm_drawing_view_turn (TmDrawingView *self, int by)
{
  const TmJob *job = get_job (self);
  guint at;

  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  if (job == NULL || !g_ptr_array_find (job->drawings, get_drawing (self), &at))
    return;
  at = (guint)CLAMP ((int)at + by, 0, (int)job->drawings->len - 1);
  tm_drawing_view_turn_to (self, ((TmDrawing *)g_ptr_array_index (job->drawings, at))->name);
}

const char *
tm_drawing_view_problem (TmDrawingView *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), NULL);

  return tm_drawing_sheet_problem (self->sheet);
}

const char *
tm_drawing_view_chosen (TmDrawingView *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), NULL);

  return self->chosen;
}

void
tm_drawing_view_choose (TmDrawingView *self, const char *balloon, gboolean closer)
{
  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  tm_drawing_view_choose_place (self, balloon, g_strcmp0 (balloon, self->chosen) == 0 ? self->place : 0,
                                closer);
}

guint
tm_drawing_view_place (TmDrawingView *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), 0);

  return self->place;
}

void
tm_drawing_view_choose_place (TmDrawingView *self, const char *balloon, guint place, gboolean closer)
{
  const TmBalloonMark *mark;

  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  if (self->document == NULL)
    return;
  tm_drawing_view_settle (self);
  self->place = place;
  if (g_strcmp0 (balloon, self->chosen) != 0)
    {
      g_free (self->chosen);
      self->chosen = g_strdup (balloon);
    }
  mark = balloon != NULL ? tm_find_place_mark (get_job (self), balloon, self->for_change ? place : 0) : NULL;
  if (mark != NULL && tm_drawing_view_chosen_item (self) < 0)
    show_drawing (self, mark->drawing);
  self->closer = closer;
  self->reveals = TRUE;
  bring (self);
  tm_drawing_view_show (self);
}

void
tm_drawing_view_choose_item (TmDrawingView *self, int at)
{
  const TmDrawingItem *item = at >= 0 ? &g_array_index (self->items, TmDrawingItem, at) : NULL;
  g_autofree char *balloon = item != NULL ? g_strdup (item->balloon) : NULL;
  const guint place = item != NULL ? item->place : self->place;

  if (g_strcmp0 (balloon, self->chosen) != 0 || place != self->place)
    {
      self->place = place;
      g_free (self->chosen);
      self->chosen = g_steal_pointer (&balloon);
      tm_drawing_view_emit (self, TM_DRAWING_CHOSEN);
    }
  tm_drawing_view_show (self);
}

gboolean
tm_drawing_view_is_placed (TmDrawingView *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), FALSE);

  return tm_drawing_view_chosen_item (self) >= 0;
}

double
tm_drawing_view_percent (TmDrawingView *self)
{
  g_return_val_if_fail (TM_IS_DRAWING_VIEW (self), 0);

  return 100 * self->frame.scale / TM_FRAME_PAPER_SCALE;
}

void
tm_drawing_view_zoom (TmDrawingView *self, double factor)
{
  double x, y, before = self->frame.scale;
  int at;

  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  x = self->frame.width / 2;
  y = self->frame.height / 2;
  at = tm_drawing_view_chosen_item (self);
  if (at >= 0)
    {
      tm_drawing_view_lay_out (self);
      x = CLAMP (g_array_index (self->balloons, TmBalloon, at).x, 0, self->frame.width);
      y = CLAMP (g_array_index (self->balloons, TmBalloon, at).y, 0, self->frame.height);
    }
  self->whole = FALSE;
  tm_drawing_frame_zoom (&self->frame, factor, x, y);
  tm_drawing_view_moved_frame (self, before);
}

void
tm_drawing_view_fit (TmDrawingView *self)
{
  double before = self->frame.scale;

  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  self->whole = TRUE;
  tm_drawing_frame_fit (&self->frame);
  tm_drawing_view_moved_frame (self, before);
}

void
tm_drawing_view_middle (TmDrawingView *self, double *share_x, double *share_y)
{
  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  tm_drawing_frame_to_page (&self->frame, self->frame.width / 2, self->frame.height / 2, share_x, share_y);
  *share_x = CLAMP (*share_x, 0, 1);
  *share_y = CLAMP (*share_y, 0, 1);
}

void
tm_drawing_view_show_new (TmDrawingView *self, double share_x, double share_y)
{
  g_return_if_fail (TM_IS_DRAWING_VIEW (self));

  self->new_x = share_x;
  self->new_y = share_y;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
