/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-view.h"

#include <adwaita.h>
#include <math.h>

#include "app-report-view-private.h"

#define LEAST 200 /* pixels of the view */

#define PER_POINT     (96.0 / 72.0) /* pixels at factor 1: CSS has 96 to the inch */
#define LEAST_FACTOR  0.1
#define MOST_FACTOR   4.0
#define PREFETCH_MOST 4194304.0 /* pixels of a page that is drawn before it is looked at */

enum { SIGNAL_MOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmReportView, tm_report_view, TM_TYPE_SCROLLED)

/* -------- What is looked at -------- */

static gboolean
moved_cb (gpointer data)
{
  TmReportView *self = data;

  self->moved_id = 0;
  tm_report_view_say_page (self);
  g_signal_emit (self, signals[SIGNAL_MOVED], 0);
  return G_SOURCE_REMOVE;
}

/* Not at once: it may be found out while room is given to widgets, which then must not ask for more. */
static void
tell_moved (TmReportView *self)
{
  self->page = tm_report_view_find_page (self);
  if (self->moved_id == 0)
    self->moved_id = g_idle_add_full (G_PRIORITY_HIGH_IDLE, moved_cb, self, NULL);
}

/* -------- Zoom -------- */

static double
find_factor (TmReportView *self, int width, int height)
{
  double across, down, wide, high;

  if (self->paper == NULL || self->zoom == TM_ZOOM_FACTOR)
    return self->factor;
  tm_report_paper_size (self->paper, &across, &down);
  wide = (width - 2 * TM_SHEET_MARGIN) / (across * PER_POINT);
  high = (height - 2 * TM_SHEET_MARGIN) / (down * PER_POINT);
  return CLAMP (self->zoom == TM_ZOOM_WIDTH ? wide : MIN (wide, high), LEAST_FACTOR, MOST_FACTOR);
}

static void
configure (TmReportView *self, GtkOrientation orientation, double value)
{
  const gboolean across = orientation == GTK_ORIENTATION_HORIZONTAL;
  const guint n = tm_report_view_n_pages (self);
  const double room = MAX (
      across ? gtk_widget_get_width (GTK_WIDGET (self)) : gtk_widget_get_height (GTK_WIDGET (self)), 1);
  const double high = tm_report_view_sheet_top (self, n) - (n > 0 ? TM_SHEET_GAP : 0) + TM_SHEET_MARGIN;

  tm_scrolled_configure (TM_SCROLLED (self), orientation, value,
                         across ? self->widest + 2 * TM_SHEET_MARGIN : high, room, room * 0.1, room * 0.9);
}

/* Another size of the sheets, or of the view: what is in its middle stays there, but its first page begins at
 * the top. */
static void
arrange (TmReportView *self, int width, int height)
{
  GtkAdjustment *across = tm_scrolled_adjustment (TM_SCROLLED (self), GTK_ORIENTATION_HORIZONTAL);
  const double scale = gtk_widget_get_scale_factor (GTK_WIDGET (self));
  const gboolean at_top = tm_report_view_top (self) <= 0;
  const double hold = height / 2.0;
  const double place = tm_report_view_find_place (self, tm_report_view_top (self) + hold);
  const double middle = gtk_adjustment_get_upper (across) > 0
                            ? (gtk_adjustment_get_value (across) + gtk_adjustment_get_page_size (across) / 2)
                                  / gtk_adjustment_get_upper (across)
                            : 0.5;

  self->factor = find_factor (self, width, height);
  tm_report_tiles_set (self->tiles, self->paper, self->factor * PER_POINT * scale);
  tm_report_view_place_sheets (self);
  configure (self, GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_adjustment_set_value (across, middle * gtk_adjustment_get_upper (across) - width / 2.0);
  configure (self, GTK_ORIENTATION_VERTICAL,
             self->anchor >= 0 ? tm_report_view_find_height (self, self->anchor) - TM_SHEET_MARGIN
             : at_top          ? 0
                               : tm_report_view_find_height (self, place) - hold);
  self->anchor = -1;
}

static void
tm_report_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TmReportView *self = TM_REPORT_VIEW (widget);

  arrange (self, width, height);
  tell_moved (self);
}

static void
tm_report_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                        int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = LEAST;
}

/* -------- Painting -------- */

static void
paint_sheet (TmReportView *self, GtkSnapshot *snapshot, guint page, double x, double y)
{
  const float scale = (float)gtk_widget_get_scale_factor (GTK_WIDGET (self));
  const float room_x = (float)gtk_widget_get_width (GTK_WIDGET (self));
  const float room_y = (float)gtk_widget_get_height (GTK_WIDGET (self));
  double width, height;
  graphene_rect_t seen;

  tm_report_view_sheet_size (self, page, &width, &height);
  seen = GRAPHENE_RECT_INIT ((float)-x * scale, (float)-y * scale, room_x * scale, room_y * scale);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)x, (float)y));
  gtk_snapshot_append_outset_shadow (snapshot, &GSK_ROUNDED_RECT_INIT (0, 0, (float)width, (float)height),
                                     &(GdkRGBA) { 0, 0, 0, 0.35F }, 0, 1, 0, 4);
  gtk_snapshot_scale (snapshot, 1 / scale, 1 / scale);
  tm_report_tiles_paint (self->tiles, snapshot, page, &seen);
  gtk_snapshot_restore (snapshot);
}

/* The pages beside those that are seen, unless they are so large that others would have to go for them. */
static void
want_beside (TmReportView *self, guint first, guint last)
{
  int width, height;

  tm_report_tiles_page_size (self->tiles, first, &width, &height);
  if ((double)width * height > PREFETCH_MOST)
    return;
  if (last + 1 < tm_report_view_n_pages (self))
    tm_report_tiles_want (self->tiles, last + 1);
  if (first > 0)
    tm_report_tiles_want (self->tiles, first - 1);
}

static void
tm_report_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmReportView *self = TM_REPORT_VIEW (widget);
  const int room = gtk_widget_get_height (widget);
  const double top = tm_report_view_top (self);
  const double left = tm_scrolled_value (TM_SCROLLED (self), GTK_ORIENTATION_HORIZONTAL);
  const guint n = tm_report_view_n_pages (self);
  const double middle = MAX (gtk_widget_get_width (widget) / 2.0, TM_SHEET_MARGIN + self->widest / 2) - left;
  const guint first = tm_report_view_find_sheet (self, top);
  guint last = first;
  double width, height;

  if (n == 0)
    return;
  tm_report_tiles_begin (self->tiles);
  for (guint i = first; i < n && tm_report_view_sheet_top (self, i) - top < room; last = i, i++)
    {
      tm_report_view_sheet_size (self, i, &width, &height);
      paint_sheet (self, snapshot, i, round (middle - width / 2),
                   round (tm_report_view_sheet_top (self, i) - top));
    }
  want_beside (self, first, last);
  tm_report_tiles_end (self->tiles);
}

/* -------- Keys and wheel -------- */

/* @where: -1, 1: a tenth of the view; -2, 2: a view; -3, 3: the first, the last page. */
static gboolean
key_cb (GtkWidget *widget, GVariant *where, gpointer data)
{
  TmReportView *self = TM_REPORT_VIEW (widget);
  GtkAdjustment *adjustment = tm_scrolled_adjustment (TM_SCROLLED (self), GTK_ORIENTATION_VERTICAL);
  const int way = g_variant_get_int32 (where);
  const double step = ABS (way) == 1   ? gtk_adjustment_get_step_increment (adjustment)
                      : ABS (way) == 2 ? gtk_adjustment_get_page_increment (adjustment)
                                       : gtk_adjustment_get_upper (adjustment);

  /* A whole page at a time where that is what is shown. */
  if (ABS (way) == 2 && self->zoom == TM_ZOOM_PAGE)
    tm_report_view_show_page (
        self, (guint)CLAMP ((int)self->page + way / 2, 0, (int)tm_report_view_n_pages (self) - 1));
  else
    gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment) + (way < 0 ? -step : step));
  return TRUE;
}

static gboolean
aside_cb (GtkWidget *widget, GVariant *where, gpointer data)
{
  GtkAdjustment *across = tm_scrolled_adjustment (TM_SCROLLED (widget), GTK_ORIENTATION_HORIZONTAL);
  const double step = gtk_adjustment_get_step_increment (across);

  gtk_adjustment_set_value (across, gtk_adjustment_get_value (across) + g_variant_get_int32 (where) * step);
  return TRUE;
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct {
    guint key;
    int where;
  } keys[] = {
    { GDK_KEY_Up, -1 },       { GDK_KEY_KP_Up, -1 },       { GDK_KEY_Down, 1 },
    { GDK_KEY_KP_Down, 1 },   { GDK_KEY_Page_Up, -2 },     { GDK_KEY_KP_Page_Up, -2 },
    { GDK_KEY_Page_Down, 2 }, { GDK_KEY_KP_Page_Down, 2 }, { GDK_KEY_Home, -3 },
    { GDK_KEY_KP_Home, -3 },  { GDK_KEY_End, 3 },          { GDK_KEY_KP_End, 3 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, 0, key_cb, "i", keys[i].where);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Left, 0, aside_cb, "i", -1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Right, 0, aside_cb, "i", 1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_KP_Left, 0, aside_cb, "i", -1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_KP_Right, 0, aside_cb, "i", 1);
}

/* Ctrl and the wheel. */
static gboolean
scroll_cb (GtkEventControllerScroll *scroll, double dx, double dy, TmReportView *self)
{
  const GdkModifierType state = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (scroll));

  if ((state & GDK_CONTROL_MASK) == 0)
    return FALSE;
  if (dy != 0)
    tm_report_view_step_zoom (self, dy < 0 ? 1 : -1);
  return TRUE;
}

static void
pressed_cb (GtkGestureClick *click, int n_press, double x, double y, TmReportView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* -------- The widget -------- */

static void
tm_report_view_moved (TmScrolled *scrolled)
{
  tell_moved (TM_REPORT_VIEW (scrolled));
  TM_SCROLLED_CLASS (tm_report_view_parent_class)->moved (scrolled);
}

static void
tm_report_view_dispose (GObject *object)
{
  TmReportView *self = TM_REPORT_VIEW (object);

  g_clear_handle_id (&self->read_id, g_source_remove);
  g_clear_handle_id (&self->moved_id, g_source_remove);
  if (self->tiles != NULL)
    g_signal_handlers_disconnect_by_data (self->tiles, self);
  g_clear_object (&self->tiles);
  g_clear_pointer (&self->tops, g_array_unref);
  g_clear_pointer (&self->paper, tm_report_paper_unref);
  G_OBJECT_CLASS (tm_report_view_parent_class)->dispose (object);
}

static void
tm_report_view_class_init (TmReportViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tm_report_view_dispose;
  widget_class->snapshot = tm_report_view_snapshot;
  widget_class->measure = tm_report_view_measure;
  widget_class->size_allocate = tm_report_view_size_allocate;
  TM_SCROLLED_CLASS (klass)->moved = tm_report_view_moved;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "reportview");
  signals[SIGNAL_MOVED] = g_signal_new ("moved", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 0);
  add_keys (widget_class);
}

static void
tm_report_view_init (TmReportView *self)
{
  GtkEventController *scroll = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL
                                                                | GTK_EVENT_CONTROLLER_SCROLL_DISCRETE);
  GtkGesture *click = gtk_gesture_click_new ();

  self->factor = 1;
  self->anchor = -1;
  self->tops = g_array_new (FALSE, FALSE, sizeof (double));
  self->tiles = tm_report_tiles_new ();
  tm_report_view_place_sheets (self);
  g_signal_connect_swapped (self->tiles, "drawn", G_CALLBACK (gtk_widget_queue_draw), self);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_event_controller_set_propagation_phase (scroll, GTK_PHASE_CAPTURE);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "notify::scale-factor", G_CALLBACK (gtk_widget_queue_allocate), NULL);
}

GtkWidget *
tm_report_view_new (void)
{
  return g_object_new (TM_TYPE_REPORT_VIEW, NULL);
}

void
tm_report_view_set_paper (TmReportView *self, TmReportPaper *paper)
{
  g_return_if_fail (TM_IS_REPORT_VIEW (self));

  if (paper != NULL)
    tm_report_paper_ref (paper);
  g_clear_pointer (&self->paper, tm_report_paper_unref);
  self->paper = paper;
  self->said_page = 0;
  arrange (self, gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)));
  tell_moved (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

TmReportPaper *
tm_report_view_paper (TmReportView *self)
{
  g_return_val_if_fail (TM_IS_REPORT_VIEW (self), NULL);

  return self->paper;
}

guint
tm_report_view_page (TmReportView *self)
{
  g_return_val_if_fail (TM_IS_REPORT_VIEW (self), 0);

  return self->page;
}

void
tm_report_view_show_page (TmReportView *self, guint page)
{
  g_return_if_fail (TM_IS_REPORT_VIEW (self));

  gtk_adjustment_set_value (tm_scrolled_adjustment (TM_SCROLLED (self), GTK_ORIENTATION_VERTICAL),
                            tm_report_view_sheet_top (self, page) - TM_SHEET_MARGIN);
}

TmZoom
tm_report_view_zoom (TmReportView *self)
{
  g_return_val_if_fail (TM_IS_REPORT_VIEW (self), TM_ZOOM_WIDTH);

  return self->zoom;
}

double
tm_report_view_factor (TmReportView *self)
{
  g_return_val_if_fail (TM_IS_REPORT_VIEW (self), 1);

  return self->factor;
}

static void
change_zoom (TmReportView *self, TmZoom zoom, double factor)
{
  self->zoom = zoom;
  self->factor = factor;
  if (zoom == TM_ZOOM_PAGE)
    self->anchor = self->page;
  arrange (self, gtk_widget_get_width (GTK_WIDGET (self)), gtk_widget_get_height (GTK_WIDGET (self)));
  tell_moved (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
tm_report_view_set_zoom (TmReportView *self, TmZoom zoom)
{
  g_return_if_fail (TM_IS_REPORT_VIEW (self));

  change_zoom (self, zoom, self->factor);
}

void
tm_report_view_set_factor (TmReportView *self, double factor)
{
  g_return_if_fail (TM_IS_REPORT_VIEW (self));

  change_zoom (self, TM_ZOOM_FACTOR, CLAMP (factor, LEAST_FACTOR, MOST_FACTOR));
}

void
tm_report_view_step_zoom (TmReportView *self, int way)
{
  static const double usual[] = { 0.1, 0.25, 0.33, 0.5, 0.67, 0.8, 1.0, 1.25, 1.5, 1.75, 2.0, 2.5, 3.0, 4.0 };
  double next;

  g_return_if_fail (TM_IS_REPORT_VIEW (self));
  g_return_if_fail (way == 1 || way == -1);

  next = way > 0 ? MOST_FACTOR : LEAST_FACTOR;
  for (guint i = 0; i < G_N_ELEMENTS (usual); i++)
    if (way > 0 && usual[i] > self->factor * 1.01)
      next = MIN (next, usual[i]);
    else if (way < 0 && usual[i] < self->factor * 0.99)
      next = MAX (next, usual[i]);
  tm_report_view_set_factor (self, next);
}

TmReportTiles *
tm_report_view_tiles (TmReportView *self)
{
  g_return_val_if_fail (TM_IS_REPORT_VIEW (self), NULL);

  return self->tiles;
}
