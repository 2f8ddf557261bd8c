/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-study-picture.h"

#include <adwaita.h>

#include "app-band-view.h"
#include "app-dialog.h"

/* Pixels. */
#define MIN_WIDTH  320
#define MIN_HEIGHT 230

struct _TmStudyPicture {
  GtkWidget parent_instance;

  gconstpointer plot; /* borrowed */
  TmStudyPictureDraw draw;
};

G_DEFINE_FINAL_TYPE (TmStudyPicture, tm_study_picture, GTK_TYPE_WIDGET)

static void
tm_study_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmStudyPicture *self = TM_STUDY_PICTURE (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  cairo_t *cr;

  if (self->plot == NULL || width <= 0 || height <= 0)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  self->draw (self->plot, cr, width, height, tm_app_theme ());
  cairo_destroy (cr);
}

static void
tm_study_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN_WIDTH : MIN_HEIGHT;
}

static void
tm_study_picture_class_init (TmStudyPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = tm_study_picture_snapshot;
  widget_class->measure = tm_study_picture_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
tm_study_picture_init (TmStudyPicture *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-study-picture");
  g_signal_connect_object (adw_style_manager_get_default (), "notify::dark",
                           G_CALLBACK (gtk_widget_queue_draw), self, G_CONNECT_SWAPPED);
}

GtkWidget *
tm_study_picture_new (void)
{
  return g_object_new (TM_TYPE_STUDY_PICTURE, "hexpand", TRUE, NULL);
}

void
tm_study_picture_set (TmStudyPicture *self, gconstpointer plot, TmStudyPictureDraw draw, const char *words)
{
  g_return_if_fail (TM_IS_STUDY_PICTURE (self));

  self->plot = plot;
  self->draw = draw;
  tm_name_widget (GTK_WIDGET (self), words);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
