/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-scrolled.h"

typedef struct {
  GtkAdjustment *adjustments[2]; /* by GtkOrientation; never NULL until it is disposed of */
  GtkScrollablePolicy policies[2];
} TmScrolledPrivate;

/* Those of one kind in the order of GtkOrientation. */
enum { PROP_0, PROP_HADJUSTMENT, PROP_VADJUSTMENT, PROP_HSCROLL_POLICY, PROP_VSCROLL_POLICY };

G_DEFINE_ABSTRACT_TYPE_WITH_CODE (TmScrolled, tm_scrolled, GTK_TYPE_WIDGET,
                                  G_ADD_PRIVATE (TmScrolled)
                                      G_IMPLEMENT_INTERFACE (GTK_TYPE_SCROLLABLE, NULL))

static void
value_changed_cb (TmScrolled *self)
{
  TM_SCROLLED_GET_CLASS (self)->moved (self);
}

static void
let_go (TmScrolled *self, GtkOrientation orientation)
{
  TmScrolledPrivate *own = tm_scrolled_get_instance_private (self);

  if (own->adjustments[orientation] != NULL)
    g_signal_handlers_disconnect_by_data (own->adjustments[orientation], self);
  g_clear_object (&own->adjustments[orientation]);
}

/* Its range is set when the widget is given its room next. */
static void
set_adjustment (TmScrolled *self, GtkOrientation orientation, GtkAdjustment *adjustment)
{
  TmScrolledPrivate *own = tm_scrolled_get_instance_private (self);

  if (adjustment == NULL)
    adjustment = gtk_adjustment_new (0, 0, 0, 0, 0, 0);
  g_object_ref_sink (adjustment);
  let_go (self, orientation);
  own->adjustments[orientation] = adjustment;
  g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (value_changed_cb), self);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
tm_scrolled_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  const TmScrolledPrivate *own = tm_scrolled_get_instance_private (TM_SCROLLED (object));

  if (id >= PROP_HSCROLL_POLICY)
    g_value_set_enum (value, own->policies[id - PROP_HSCROLL_POLICY]);
  else
    g_value_set_object (value, own->adjustments[id - PROP_HADJUSTMENT]);
}

static void
tm_scrolled_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TmScrolledPrivate *own = tm_scrolled_get_instance_private (TM_SCROLLED (object));

  if (id >= PROP_HSCROLL_POLICY)
    own->policies[id - PROP_HSCROLL_POLICY] = (GtkScrollablePolicy)g_value_get_enum (value);
  else
    set_adjustment (TM_SCROLLED (object), (GtkOrientation)(id - PROP_HADJUSTMENT),
                    g_value_get_object (value));
}

static void
tm_scrolled_moved (TmScrolled *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
tm_scrolled_dispose (GObject *object)
{
  let_go (TM_SCROLLED (object), GTK_ORIENTATION_HORIZONTAL);
  let_go (TM_SCROLLED (object), GTK_ORIENTATION_VERTICAL);
  G_OBJECT_CLASS (tm_scrolled_parent_class)->dispose (object);
}

static void
tm_scrolled_class_init (TmScrolledClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  klass->moved = tm_scrolled_moved;
  object_class->get_property = tm_scrolled_get_property;
  object_class->set_property = tm_scrolled_set_property;
  object_class->dispose = tm_scrolled_dispose;
  g_object_class_override_property (object_class, PROP_HADJUSTMENT, "hadjustment");
  g_object_class_override_property (object_class, PROP_VADJUSTMENT, "vadjustment");
  g_object_class_override_property (object_class, PROP_HSCROLL_POLICY, "hscroll-policy");
  g_object_class_override_property (object_class, PROP_VSCROLL_POLICY, "vscroll-policy");
}

static void
tm_scrolled_init (TmScrolled *self)
{
  set_adjustment (self, GTK_ORIENTATION_HORIZONTAL, NULL);
  set_adjustment (self, GTK_ORIENTATION_VERTICAL, NULL);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkAdjustment *
tm_scrolled_adjustment (TmScrolled *self, GtkOrientation orientation)
{
  const TmScrolledPrivate *own = tm_scrolled_get_instance_private (self);

  return own->adjustments[orientation];
}

double
tm_scrolled_value (TmScrolled *self, GtkOrientation orientation)
{
  return gtk_adjustment_get_value (tm_scrolled_adjustment (self, orientation));
}

void
tm_scrolled_configure (TmScrolled *self, GtkOrientation orientation, double value, double whole, double room,
                       double step, double page)
{
  whole = MAX (whole, room);
  gtk_adjustment_configure (tm_scrolled_adjustment (self, orientation), CLAMP (value, 0, whole - room), 0,
                            whole, step, page, room);
}
