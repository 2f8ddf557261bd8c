/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-picture.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-band-view.h"
#include "app-batch-words.h"
#include "app-dialog.h"

/* By its width alone, so that the charts over each other keep one axis of pieces. */
#define PLAIN_WIDTH 820.0
#define MAX_SCALE   1.4

#define MIN_WIDTH 320

struct _TmBatchPicture {
  GtkWidget parent_instance;

  TmBatchPictureKind kind;
  const TmBatch *batch;    /* borrowed */
  const TmChartPlot *plot; /* borrowed */
  gint focus;
};

enum { SIGNAL_PIECE, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmBatchPicture, tm_batch_picture, GTK_TYPE_WIDGET)

static double
find_scale (GtkWidget *widget)
{
  return CLAMP (gtk_widget_get_width (widget) / PLAIN_WIDTH, 1.0, MAX_SCALE);
}

static void
draw (TmBatchPicture *self, cairo_t *cr, double width, double height)
{
  const TmTheme *theme = tm_app_theme ();

  switch (self->kind)
    {
    case TM_BATCH_RUN:
    case TM_BATCH_SMALL_SHIFTS:
      tm_chart_plot_draw (self->plot, cr, width, height, self->focus, theme);
      break;
    case TM_BATCH_DISPERSION:
      tm_chart_plot_draw_dispersion (self->plot, cr, width, height, theme);
      break;
    case TM_BATCH_HISTOGRAM:
      tm_chart_plot_draw_histogram (self->plot, cr, width, height, theme);
      break;
    case TM_BATCH_PROBABILITY:
      tm_chart_plot_draw_probability (self->plot, cr, width, height, theme);
      break;
    case TM_N_BATCH_PICTURES:
    default:
      break;
    }
}

static void
tm_batch_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmBatchPicture *self = TM_BATCH_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double scale = find_scale (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  cairo_t *cr;

  if (self->plot == NULL || width <= 0 || height <= 0)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  cairo_scale (cr, scale, scale);
  draw (self, cr, width / scale, height / scale);
  cairo_destroy (cr);
}

static void
tm_batch_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  static const int heights[TM_N_BATCH_PICTURES] = {
    [TM_BATCH_RUN] = 150,         [TM_BATCH_DISPERSION] = 84,    [TM_BATCH_HISTOGRAM] = 150,
    [TM_BATCH_PROBABILITY] = 150, [TM_BATCH_SMALL_SHIFTS] = 150,
  };

  *minimum = *natural
      = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN_WIDTH : heights[TM_BATCH_PICTURE (widget)->kind];
}

/* -------- Pieces of the run chart -------- */

static gint
find_piece_at (TmBatchPicture *self, double x)
{
  double scale = find_scale (GTK_WIDGET (self));

  if (self->kind != TM_BATCH_RUN || self->plot == NULL)
    return -1;
  return tm_chart_plot_piece_at (self->plot, gtk_widget_get_width (GTK_WIDGET (self)) / scale,
                                 gtk_widget_get_height (GTK_WIDGET (self)) / scale, x / scale);
}

static void
pressed_cb (GtkGestureClick *click, int n_press, double x, double y, TmBatchPicture *self)
{
  gint piece = find_piece_at (self, x);

  gtk_widget_grab_focus (GTK_WIDGET (self));
  if (piece >= 0)
    g_signal_emit (self, signals[SIGNAL_PIECE], 0, (guint)piece);
}

static gboolean
tm_batch_picture_query_tooltip (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  TmBatchPicture *self = TM_BATCH_PICTURE (widget);
  gint piece = keyboard ? -1 : find_piece_at (self, x);
  g_autofree char *words = NULL;

  if (piece < 0 || self->batch == NULL || (guint)piece >= self->batch->series.n_points)
    return FALSE;
  words = tm_words_batch_piece (self->batch, (guint)piece);
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

/* From one measured piece to the next: those between have no point.  -1: there is none. */
static gint
find_measured (TmBatchPicture *self, gint from, gint way)
{
  const TmSeries *series = &self->batch->series;

  for (gint i = from; i >= 0 && i < (gint)series->n_points; i += way)
    if (!isnan (series->points[i].mean))
      return i;
  return -1;
}

/* @where: -1, 1: the one before, the next; -2, 2: the first, the last. */
static gboolean
key_cb (GtkWidget *widget, GVariant *where, gpointer data)
{
  TmBatchPicture *self = TM_BATCH_PICTURE (widget);
  gint way = g_variant_get_int32 (where);
  gint piece;

  if (self->kind != TM_BATCH_RUN || self->batch == NULL || self->batch->series.n_points == 0)
    return FALSE;
  if (way == -2)
    piece = find_measured (self, 0, 1);
  else if (way == 2)
    piece = find_measured (self, (gint)self->batch->series.n_points - 1, -1);
  else
    piece = find_measured (self, self->focus + way, way);
  if (piece >= 0)
    g_signal_emit (self, signals[SIGNAL_PIECE], 0, (guint)piece);
  return TRUE;
}

static void
add_keys (GtkWidgetClass *widget_class)
{
  static const struct {
    guint key;
    int where;
  } keys[] = {
    { GDK_KEY_Left, -1 }, { GDK_KEY_KP_Left, -1 }, { GDK_KEY_Right, 1 }, { GDK_KEY_KP_Right, 1 },
    { GDK_KEY_Home, -2 }, { GDK_KEY_KP_Home, -2 }, { GDK_KEY_End, 2 },   { GDK_KEY_KP_End, 2 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    gtk_widget_class_add_binding (widget_class, keys[i].key, 0, key_cb, "i", keys[i].where);
}

/* -------- The widget -------- */

static void
tm_batch_picture_class_init (TmBatchPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = tm_batch_picture_snapshot;
  widget_class->measure = tm_batch_picture_measure;
  widget_class->query_tooltip = tm_batch_picture_query_tooltip;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "batchpicture");
  signals[SIGNAL_PIECE] = g_signal_new ("piece", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  add_keys (widget_class);
}

static void
tm_batch_picture_init (TmBatchPicture *self)
{
  self->focus = -1;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
}

static void
add_pointer (TmBatchPicture *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
}

GtkWidget *
tm_batch_picture_new (TmBatchPictureKind kind)
{
  TmBatchPicture *self = g_object_new (TM_TYPE_BATCH_PICTURE, NULL);

  g_return_val_if_fail (kind < TM_N_BATCH_PICTURES, GTK_WIDGET (self));

  self->kind = kind;
  gtk_widget_set_vexpand (GTK_WIDGET (self), kind != TM_BATCH_DISPERSION);
  if (kind == TM_BATCH_RUN)
    add_pointer (self);
  tm_batch_picture_set (self, NULL, NULL);
  return GTK_WIDGET (self);
}

static char *
describe (TmBatchPicture *self)
{
  if (self->plot == NULL)
    return g_strdup (_ ("Nothing to show yet"));
  switch (self->kind)
    {
    case TM_BATCH_RUN:
    case TM_BATCH_SMALL_SHIFTS:
      return tm_chart_plot_describe (self->plot);
    case TM_BATCH_DISPERSION:
      return tm_chart_plot_describe_dispersion (self->plot);
    case TM_BATCH_HISTOGRAM:
      return tm_chart_plot_describe_histogram (self->plot);
    case TM_BATCH_PROBABILITY:
      return tm_chart_plot_describe_probability (self->plot);
    case TM_N_BATCH_PICTURES:
    default:
      return g_strdup ("");
    }
}

void
tm_batch_picture_set (TmBatchPicture *self, const TmBatch *batch, const TmChartPlot *plot)
{
  g_autofree char *words = NULL;

  g_return_if_fail (TM_IS_BATCH_PICTURE (self));

  self->batch = batch;
  self->plot = plot;
  words = describe (self);
  tm_name_widget (GTK_WIDGET (self), words);
  if (self->kind == TM_BATCH_RUN)
    gtk_widget_set_focusable (GTK_WIDGET (self), plot != NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
tm_batch_picture_set_focus (TmBatchPicture *self, gint piece)
{
  g_autofree char *words = NULL;

  g_return_if_fail (TM_IS_BATCH_PICTURE (self));

  self->focus = piece;
  if (self->batch != NULL && piece >= 0 && (guint)piece < self->batch->series.n_points)
    words = tm_words_batch_piece (self->batch, (guint)piece);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words != NULL ? words : "", -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
