/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-column.h"

struct _TmColumn {
  GtkWidget parent_instance;

  GtkWidget *child;
  gboolean filling; /* asks for no width */
};

G_DEFINE_FINAL_TYPE (TmColumn, tm_column, GTK_TYPE_WIDGET)

static GtkSizeRequestMode
tm_column_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
tm_column_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                   int *minimum_baseline, int *natural_baseline)
{
  TmColumn *self = TM_COLUMN (widget);

  *minimum = *natural = 0;
  if (self->child == NULL || !gtk_widget_should_layout (self->child)
      || (self->filling && orientation == GTK_ORIENTATION_HORIZONTAL))
    return;
  gtk_widget_measure (self->child, orientation, orientation == GTK_ORIENTATION_HORIZONTAL ? -1 : for_size,
                      minimum, natural, minimum_baseline, natural_baseline);
}

static void
tm_column_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  TmColumn *self = TM_COLUMN (widget);

  if (self->child != NULL && gtk_widget_should_layout (self->child))
    gtk_widget_allocate (self->child, width, height, baseline, NULL);
}

static void
tm_column_dispose (GObject *object)
{
  TmColumn *self = TM_COLUMN (object);

  g_clear_pointer (&self->child, gtk_widget_unparent);
  G_OBJECT_CLASS (tm_column_parent_class)->dispose (object);
}

static void
tm_column_class_init (TmColumnClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_column_dispose;
  widget_class->get_request_mode = tm_column_get_request_mode;
  widget_class->measure = tm_column_measure;
  widget_class->size_allocate = tm_column_size_allocate;
}

static void
tm_column_init (TmColumn *self)
{
}

static GtkWidget *
make_column (GtkWidget *child, gboolean filling)
{
  TmColumn *self = g_object_new (TM_TYPE_COLUMN, NULL);

  self->child = child;
  self->filling = filling;
  gtk_widget_set_parent (child, GTK_WIDGET (self));
  gtk_widget_set_hexpand (GTK_WIDGET (self), gtk_widget_compute_expand (child, GTK_ORIENTATION_HORIZONTAL));
  gtk_widget_set_vexpand (GTK_WIDGET (self), gtk_widget_compute_expand (child, GTK_ORIENTATION_VERTICAL));
  g_object_bind_property (child, "visible", self, "visible", G_BINDING_SYNC_CREATE);
  return GTK_WIDGET (self);
}

GtkWidget *
tm_column_new (GtkWidget *child)
{
  g_return_val_if_fail (GTK_IS_WIDGET (child), NULL);

  return make_column (child, FALSE);
}

GtkWidget *
tm_column_new_filling (GtkWidget *child)
{
  g_return_val_if_fail (GTK_IS_WIDGET (child), NULL);

  return make_column (child, TRUE);
}
