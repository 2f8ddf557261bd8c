/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-band-view.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

struct _TmBandView {
  GtkWidget parent_instance;

  TmBandPlot *plot;
};

G_DEFINE_FINAL_TYPE (TmBandView, tm_band_view, GTK_TYPE_WIDGET)

/* The size that the picture is laid out for, and how far it grows beyond it. */
#define PLAIN_WIDTH  640.0
#define PLAIN_HEIGHT 430.0
#define MAX_SCALE    1.5

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
}

static void
tm_band_view_init (TmBandView *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
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

  g_clear_pointer (&self->plot, tm_band_plot_free);
  self->plot = plot;
  g_autofree char *words = plot != NULL ? tm_band_plot_describe (plot) : g_strdup (_ ("Nothing to show yet"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
