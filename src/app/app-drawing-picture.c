/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-picture.h"

#include "app-dialog.h"
#include "app-drawing-sheet.h"

/* Pixels. */
#define WIDTH  320
#define HEIGHT 240

struct _TmDrawingPicture {
  GtkWidget parent_instance;

  TmDrawingSheet *sheet;
  TmDrawingFrame frame;
};

G_DEFINE_FINAL_TYPE (TmDrawingPicture, tm_drawing_picture, GTK_TYPE_WIDGET)

static void
sheet_changed_cb (gpointer data)
{
  TmDrawingPicture *self = data;
  double width, height;

  if (tm_drawing_sheet_size (self->sheet, &width, &height))
    tm_drawing_frame_set_page (&self->frame, width, height);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
tm_drawing_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  TmDrawingPicture *self = TM_DRAWING_PICTURE (widget);
  cairo_t *cr;

  tm_drawing_frame_set_view (&self->frame, gtk_widget_get_width (widget), gtk_widget_get_height (widget));
  if (!tm_drawing_frame_is_set (&self->frame))
    return;
  cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)self->frame.width, (float)self->frame.height));
  tm_drawing_sheet_draw (self->sheet, cr, &self->frame, gtk_widget_get_scale_factor (widget));
  cairo_destroy (cr);
}

static void
tm_drawing_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                            int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT;
}

static void
tm_drawing_picture_finalize (GObject *object)
{
  tm_drawing_sheet_free (TM_DRAWING_PICTURE (object)->sheet);
  G_OBJECT_CLASS (tm_drawing_picture_parent_class)->finalize (object);
}

static void
tm_drawing_picture_class_init (TmDrawingPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = tm_drawing_picture_finalize;
  widget_class->snapshot = tm_drawing_picture_snapshot;
  widget_class->measure = tm_drawing_picture_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "drawing");
}

static void
tm_drawing_picture_init (TmDrawingPicture *self)
{
  self->sheet = tm_drawing_sheet_new (sheet_changed_cb, self);
  self->frame = TM_FRAME_NONE;
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
tm_drawing_picture_new (void)
{
  return g_object_new (TM_TYPE_DRAWING_PICTURE, NULL);
}

void
tm_drawing_picture_show (TmDrawingPicture *self, GBytes *content, guint page, const char *name)
{
  g_return_if_fail (TM_IS_DRAWING_PICTURE (self));

  self->frame.page_width = self->frame.page_height = 0;
  tm_drawing_sheet_set (self->sheet, content, page);
  tm_name_widget (GTK_WIDGET (self), name);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
