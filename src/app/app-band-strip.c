/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-band-strip.h"

#include <adwaita.h>

#include "app-band-view.h"
#include "plot-band.h"

#define NATURAL_WIDTH 150
#define MIN_WIDTH     60
#define HEIGHT        12

struct _TmBandStrip {
  GtkWidget parent_instance;

  const TmJudgement *judgement;
};

G_DEFINE_FINAL_TYPE (TmBandStrip, tm_band_strip, GTK_TYPE_WIDGET)

static void
tm_band_strip_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmBandStrip *self = TM_BAND_STRIP (widget);
  int width = MIN (gtk_widget_get_width (widget), NATURAL_WIDTH);
  int height = gtk_widget_get_height (widget);
  if (self->judgement == NULL || width <= 0 || height <= 0)
    return;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  tm_band_strip_draw (self->judgement, cr, width, height, tm_app_theme ());
  cairo_destroy (cr);
}

static void
tm_band_strip_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN_WIDTH : HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? NATURAL_WIDTH : HEIGHT;
}

static void
tm_band_strip_class_init (TmBandStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->snapshot = tm_band_strip_snapshot;
  widget_class->measure = tm_band_strip_measure;
  /* The row says in words what the strip shows. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
tm_band_strip_init (TmBandStrip *self)
{
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
}

GtkWidget *
tm_band_strip_new (void)
{
  return g_object_new (TM_TYPE_BAND_STRIP, NULL);
}

void
tm_band_strip_set_judgement (TmBandStrip *self, const TmJudgement *judgement)
{
  g_return_if_fail (TM_IS_BAND_STRIP (self));

  self->judgement = judgement;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
