/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-band-view.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

struct _TmBandView {
  GtkWidget parent_instance;

  TmBandPlot *plot;
  gboolean dragging;
  double grip_x; /* of the aim when the drag began */
};

enum { SIGNAL_AIM_MOVED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmBandView, tm_band_view, GTK_TYPE_WIDGET)

/* The size that the picture is laid out for, and how far it grows beyond it. */
#define PLAIN_WIDTH  640.0
#define PLAIN_HEIGHT 430.0
#define MAX_SCALE    1.5

/* How far from the aim a finger takes hold of it, and how many marks an arrow key with Shift is worth. */
#define HOLD_REACH 24.0
#define MANY_MARKS 10

const TmTheme *
tm_app_theme (void)
{
  AdwStyleManager *manager = adw_style_manager_get_default ();
  return adw_style_manager_get_dark (manager) ? tm_theme_dark () : tm_theme_light ();
}

double
tm_picture_scale (int width, int height)
{
  return CLAMP (MIN (width / PLAIN_WIDTH, height / PLAIN_HEIGHT), 1.0, MAX_SCALE);
}

static void
tm_band_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmBandView *self = TM_BAND_VIEW (widget);
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);
  if (self->plot == NULL || width <= 0 || height <= 0)
    return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  double scale = tm_picture_scale (width, height);
  cairo_scale (cr, scale, scale);
  tm_band_plot_draw (self->plot, cr, width / scale, height / scale, tm_app_theme ());
  cairo_destroy (cr);
}

static void
tm_band_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                      int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural
      = orientation == GTK_ORIENTATION_HORIZONTAL ? TM_PICTURE_MIN_WIDTH : TM_PICTURE_MIN_HEIGHT;
}

/* -------- The aim -------- */

/* The picture's own size and what it is shown enlarged by; FALSE when there is no aim to move. */
static gboolean
find_aim (TmBandView *self, double *width, double *height, double *scale, double *x, double *y)
{
  int wide = gtk_widget_get_width (GTK_WIDGET (self)), high = gtk_widget_get_height (GTK_WIDGET (self));
  *scale = tm_picture_scale (wide, high);
  *width = wide / *scale;
  *height = high / *scale;
  return self->plot != NULL && tm_band_plot_aim_at (self->plot, *width, *height, x, y);
}

/* Anywhere along the line of the aim is a hold on it. */
static gboolean
is_on_aim (TmBandView *self, double x)
{
  double width, height, scale, at, y;
  return find_aim (self, &width, &height, &scale, &at, &y) && ABS (x - at * scale) <= HOLD_REACH;
}

static void
drag_begin_cb (GtkGestureDrag *drag, double x, double y, TmBandView *self)
{
  double width, height, scale, at_y;
  if (!is_on_aim (self, x) || !find_aim (self, &width, &height, &scale, &self->grip_x, &at_y))
    {
      gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  self->dragging = TRUE;
}

static void
drag_update_cb (GtkGestureDrag *drag, double by_x, double by_y, TmBandView *self)
{
  double width, height, scale, x, y, per_mark;
  gint64 now;
  if (!self->dragging || !find_aim (self, &width, &height, &scale, &x, &y)
      || !tm_band_plot_get_aim (self->plot, &now, &per_mark))
    return;
  gint64 size = tm_band_plot_size_at (self->plot, width, height, self->grip_x + by_x / scale, y);
  /* Less than half a mark of the dial changes nothing. */
  if (ABS ((double)(size - now)) > per_mark / 2)
    g_signal_emit (self, signals[SIGNAL_AIM_MOVED], 0, size);
}

static void
drag_end_cb (GtkGestureDrag *drag, double by_x, double by_y, TmBandView *self)
{
  self->dragging = FALSE;
}

static void
cancel_cb (GtkGesture *drag, GdkEventSequence *sequence, TmBandView *self)
{
  self->dragging = FALSE;
}

static void
motion_cb (GtkEventControllerMotion *motion, double x, double y, TmBandView *self)
{
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self),
                                   self->dragging || is_on_aim (self, x) ? "ew-resize" : NULL);
}

/* So many marks of the dial to the right; with no plan the key is left to others. */
static gboolean
key_cb (GtkWidget *widget, GVariant *marks, gpointer data)
{
  TmBandView *self = TM_BAND_VIEW (widget);
  double per_mark;
  gint64 size;
  if (self->plot == NULL || !tm_band_plot_get_aim (self->plot, &size, &per_mark) || !(per_mark > 0))
    return FALSE;
  size += (gint64)(per_mark * g_variant_get_int32 (marks));
  g_signal_emit (self, signals[SIGNAL_AIM_MOVED], 0, size);
  return TRUE;
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct {
    guint key;
    int way;
  } keys[] = {
    { GDK_KEY_Left, -1 },
    { GDK_KEY_KP_Left, -1 },
    { GDK_KEY_Right, 1 },
    { GDK_KEY_KP_Right, 1 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      gtk_widget_class_add_binding (widget_class, keys[i].key, 0, key_cb, "i", keys[i].way);
      gtk_widget_class_add_binding (widget_class, keys[i].key, GDK_SHIFT_MASK, key_cb, "i",
                                    keys[i].way * MANY_MARKS);
    }
}

/* The words, and whether there is anything that a key or a finger could move. */
static void
refresh (TmBandView *self)
{
  double per_mark;
  gint64 size;
  gboolean aimed = self->plot != NULL && tm_band_plot_get_aim (self->plot, &size, &per_mark);
  g_autofree char *words
      = self->plot != NULL ? tm_band_plot_describe (self->plot) : g_strdup (_ ("Nothing to show yet"));
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
      aimed ? _ ("Left and right move the aim by one mark of the dial, with Shift by ten") : "", -1);
  gtk_widget_set_focusable (GTK_WIDGET (self), aimed);
  if (!aimed)
    gtk_widget_set_cursor (GTK_WIDGET (self), NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* -------- The widget -------- */

static void
tm_band_view_finalize (GObject *object)
{
  TmBandView *self = TM_BAND_VIEW (object);
  g_clear_pointer (&self->plot, tm_band_plot_free);
  G_OBJECT_CLASS (tm_band_view_parent_class)->finalize (object);
}

static void
tm_band_view_class_init (TmBandViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->finalize = tm_band_view_finalize;
  widget_class->snapshot = tm_band_view_snapshot;
  widget_class->measure = tm_band_view_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "bandview");
  signals[SIGNAL_AIM_MOVED] = g_signal_new ("aim-moved", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                            NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
  add_keys (widget_class);
}

static void
add_pointer (TmBandView *self)
{
  GtkGesture *drag = gtk_gesture_drag_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  g_signal_connect (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect (drag, "cancel", G_CALLBACK (cancel_cb), self);
  g_signal_connect (motion, "motion", G_CALLBACK (motion_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

static void
tm_band_view_init (TmBandView *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  add_pointer (self);
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
}

GtkWidget *
tm_band_view_new (void)
{
  return g_object_new (TM_TYPE_BAND_VIEW, NULL);
}

void
tm_band_view_take_plot (TmBandView *self, TmBandPlot *plot)
{
  g_return_if_fail (TM_IS_BAND_VIEW (self));

  if (self->dragging && plot != NULL && self->plot != NULL)
    tm_band_plot_hold_axis (plot, self->plot);
  g_clear_pointer (&self->plot, tm_band_plot_free);
  self->plot = plot;
  refresh (self);
}

void
tm_band_view_set_plan (TmBandView *self, const TmCutAdvice *plan)
{
  g_return_if_fail (TM_IS_BAND_VIEW (self));

  if (self->plot == NULL)
    return;
  tm_band_plot_hold_axis (self->plot, self->dragging ? self->plot : NULL);
  tm_band_plot_set_plan (self->plot, plan);
  refresh (self);
}
