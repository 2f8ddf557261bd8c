/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauges-page.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-gauge-register.h"
#include "app-gauges-views.h"
#include "app-settings.h"

struct _TmGaugesPage {
  GtkBox parent_instance;

  TmDocument *document;
  char *shown; /* name of the view */
  GtkStack *stack;
};

enum { PROP_0, PROP_VIEW, N_PROPS };

static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TmGaugesPage, tm_gauges_page, GTK_TYPE_BOX)

static const TmPageKind *
find_kind (const char *name)
{
  guint n;
  const TmPageKind *kinds = tm_gauges_views (&n);

  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (kinds[i].name, name) == 0)
      return &kinds[i];
  return NULL;
}

GtkWidget *
tm_gauges_page_view (TmGaugesPage *self, const char *name)
{
  const TmPageKind *kind = find_kind (name);
  GtkWidget *view;

  g_return_val_if_fail (TM_IS_GAUGES_PAGE (self), NULL);

  if (kind == NULL)
    return NULL;
  view = gtk_stack_get_child_by_name (self->stack, name);
  if (view != NULL)
    return view;
  view = kind->create ();
  gtk_stack_add_named (self->stack, view, name);
  kind->set_document (view, self->document);
  return view;
}

static void
focus_view (const TmPageKind *kind, GtkWidget *view)
{
  if (kind->enter != NULL)
    kind->enter (view);
  else
    gtk_widget_child_focus (view, GTK_DIR_TAB_FORWARD);
}

void
tm_gauges_page_show_view (TmGaugesPage *self, const char *name)
{
  const TmPageKind *kind = find_kind (name);
  GtkWidget *view;

  g_return_if_fail (TM_IS_GAUGES_PAGE (self));

  if (kind == NULL)
    return;
  view = tm_gauges_page_view (self, name);
  if (g_strcmp0 (self->shown, name) != 0)
    {
      g_free (self->shown);
      self->shown = g_strdup (name);
      tm_settings_set_text ("gauges-view", name);
      g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_VIEW]);
    }
  tm_access_show_page (self->stack, name);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    focus_view (kind, view);
}

void
tm_gauges_page_show_gauge (TmGaugesPage *self, const char *tag)
{
  g_return_if_fail (TM_IS_GAUGES_PAGE (self));

  tm_gauges_page_show_view (self, "register");
  tm_gauge_register_choose (TM_GAUGE_REGISTER (tm_gauges_page_view (self, "register")), tag);
}

void
tm_gauges_page_enter (TmGaugesPage *self)
{
  g_return_if_fail (TM_IS_GAUGES_PAGE (self));

  focus_view (find_kind (self->shown), gtk_stack_get_visible_child (self->stack));
}

void
tm_gauges_page_set_document (TmGaugesPage *self, TmDocument *document)
{
  guint n;
  const TmPageKind *kinds = tm_gauges_views (&n);

  g_return_if_fail (TM_IS_GAUGES_PAGE (self));

  g_set_object (&self->document, document);
  for (guint i = 0; i < n; i++)
    {
      GtkWidget *view = gtk_stack_get_child_by_name (self->stack, kinds[i].name);

      if (view != NULL)
        kinds[i].set_document (view, document);
    }
}

/* One button of the switch; the action's state presses it. */
static void
add_switch (GtkWidget *box, const TmPageKind *kind)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (g_dgettext (GETTEXT_PACKAGE, kind->title));

  /* The target first: an action without the target it wants is complained about. */
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", kind->name);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "gauges.view");
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "tm-page");
  gtk_box_append (GTK_BOX (box), button);
}

static GtkWidget *
build_switch (void)
{
  GtkWidget *box
      = g_object_new (GTK_TYPE_BOX, "spacing", 6, "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  guint n;
  const TmPageKind *kinds = tm_gauges_views (&n);

  tm_name_widget (box, _ ("Views of the gauges"));
  gtk_widget_add_css_class (box, "tm-views");
  for (guint i = 0; i < n; i++)
    add_switch (box, &kinds[i]);
  return box;
}

static void
tm_gauges_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  TmGaugesPage *self = TM_GAUGES_PAGE (object);

  if (id == PROP_VIEW)
    g_value_set_string (value, self->shown);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
tm_gauges_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TmGaugesPage *self = TM_GAUGES_PAGE (object);

  if (id == PROP_VIEW)
    tm_gauges_page_show_view (self, g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
tm_gauges_page_dispose (GObject *object)
{
  TmGaugesPage *self = TM_GAUGES_PAGE (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (tm_gauges_page_parent_class)->dispose (object);
}

/* Ctrl+1 … Ctrl+9 go to the views, as Alt with a digit goes to the pages. */
static void
bind_view_keys (GtkWidgetClass *klass)
{
  guint n;
  const TmPageKind *kinds = tm_gauges_views (&n);

  for (guint i = 0; i < MIN (n, 9); i++)
    gtk_widget_class_add_binding_action (klass, GDK_KEY_1 + i, GDK_CONTROL_MASK, "gauges.view", "s",
                                         kinds[i].name);
}

static void
tm_gauges_page_class_init (TmGaugesPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = tm_gauges_page_dispose;
  object_class->get_property = tm_gauges_page_get_property;
  object_class->set_property = tm_gauges_page_set_property;
  properties[PROP_VIEW] = g_param_spec_string (
      "view", NULL, NULL, NULL, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  gtk_widget_class_install_property_action (widget_class, "gauges.view", "view");
  bind_view_keys (widget_class);
}

static void
tm_gauges_page_init (TmGaugesPage *self)
{
  g_autofree char *remembered = tm_settings_get_text ("gauges-view");
  guint n;
  const char *first = tm_gauges_views (&n)[0].name;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_widget_set_vexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), build_switch ());
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_gauges_page_show_view (self, find_kind (remembered) != NULL ? remembered : first);
}

GtkWidget *
tm_gauges_page_new (void)
{
  return g_object_new (TM_TYPE_GAUGES_PAGE, NULL);
}
