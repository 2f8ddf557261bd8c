/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-fit-view.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-feature-dialog.h"
#include "app-feature-words.h"
#include "app-fit-pane.h"
#include "app-fit-state.h"
#include "app-pair-pane.h"
#include "app-press-pane.h"
#include "app-tip.h"

typedef struct {
  const char *name;
  const char *label;
  const char *tip;
} Part;

static const Part parts[] = {
  { "fit", NC_ ("part", "Fit"), N_ ("Will the mate go in, and how tight (Ctrl+1)") },
  { "pairing", NC_ ("part", "Pairing"), N_ ("Which measured mate to which piece (Ctrl+2)") },
  { "press", NC_ ("part", "Press"), N_ ("Pressure, stresses and forces (Ctrl+3)") },
};

struct _TmFitView {
  GtkBox parent_instance;

  TmDocument *document;
  TmSpot shown; /* its pointers are only compared */
  char *part;

  GtkLabel *title;
  GtkStack *stack;
  TmFitPane *fit;
  TmPairPane *pairing;
  TmPressPane *press;
};

enum { PROP_0, PROP_PART, N_PROPERTIES };

static GParamSpec *properties[N_PROPERTIES];

G_DEFINE_FINAL_TYPE (TmFitView, tm_fit_view, GTK_TYPE_BOX)

static TmFeature *
get_feature (TmFitView *self)
{
  return self->document != NULL ? tm_bench_spot (tm_document_bench (self->document))->feature : NULL;
}

/* Only the part in sight is worked out: a pairing of hundreds is not done at each key. */
static void
show_part (TmFitView *self)
{
  TmFitState state;

  tm_fit_state_of (self->document, tm_fit_pane_serial (self->fit), tm_fit_pane_part_temperature (self->fit),
                   tm_fit_pane_mate_temperature (self->fit), &state);
  if (state.piece == NULL || state.feature == NULL)
    return;
  if (g_str_equal (self->part, "pairing"))
    tm_pair_pane_show (self->pairing, self->document);
  else if (g_str_equal (self->part, "press"))
    tm_press_pane_show (self->press, self->document, &state);
  else
    tm_fit_pane_show (self->fit, self->document, &state);
}

static void
changed_cb (TmFitView *self)
{
  if (self->document != NULL)
    show_part (self);
}

/* What was typed for one feature must not be kept for the next, nor a mate be looked at where another is
 * meant. */
static void
follow_spot (TmFitView *self, const TmSpot *spot)
{
  g_autofree char *title = tm_words_feature (spot->feature);
  gboolean moved = spot->piece != self->shown.piece || spot->place != self->shown.place;

  if (spot->feature != self->shown.feature)
    {
      tm_fit_pane_reset (self->fit);
      tm_press_pane_reset (self->press);
    }
  else if (moved && tm_fit_state_has_meant (self->document))
    tm_fit_pane_forget_mate (self->fit);
  self->shown = *spot;
  gtk_label_set_text (self->title, title);
}

void
tm_fit_view_show (TmFitView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_FIT_VIEW (self));

  if (document != self->document)
    self->shown = (TmSpot) { 0 };
  g_set_object (&self->document, document);
  if (get_feature (self) == NULL)
    return;
  follow_spot (self, tm_bench_spot (tm_document_bench (document)));
  show_part (self);
}

void
tm_fit_view_enter (TmFitView *self)
{
  g_return_if_fail (TM_IS_FIT_VIEW (self));

  if (g_str_equal (self->part, "pairing"))
    tm_pair_pane_enter (self->pairing);
  else if (g_str_equal (self->part, "press"))
    tm_press_pane_enter (self->press);
  else
    tm_fit_pane_enter (self->fit);
}

const char *
tm_fit_view_part (TmFitView *self)
{
  g_return_val_if_fail (TM_IS_FIT_VIEW (self), NULL);

  return self->part;
}

void
tm_fit_view_show_part (TmFitView *self, const char *name)
{
  g_return_if_fail (TM_IS_FIT_VIEW (self));

  if (gtk_stack_get_child_by_name (self->stack, name) == NULL)
    return;
  if (!g_str_equal (self->part, name))
    {
      /* What is being typed is kept before its entry goes out of sight. */
      gtk_root_set_focus (gtk_widget_get_root (GTK_WIDGET (self)), NULL);
      g_free (self->part);
      self->part = g_strdup (name);
      g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_PART]);
    }
  tm_access_show_page (self->stack, name);
  if (self->document != NULL)
    show_part (self);
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    tm_fit_view_enter (self);
}

/* -------- Actions -------- */

static void
add_mate_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmFitView *self = TM_FIT_VIEW (widget);

  if (get_feature (self) == NULL)
    return;
  tm_fit_pane_add_mate (self->fit);
}

static void
choose_mate_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmFitView *self = TM_FIT_VIEW (widget);

  tm_fit_pane_choose (self->fit, g_variant_get_string (parameter, NULL));
}

static void
give_mate_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmFitView *self = TM_FIT_VIEW (widget);
  TmFeature *feature = get_feature (self);

  if (feature != NULL)
    tm_feature_dialog_present (widget, self->document, feature, TM_FEATURE_ROW_MATE);
}

static void
use_pairing_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmFitView *self = TM_FIT_VIEW (widget);

  if (g_str_equal (self->part, "pairing"))
    tm_pair_pane_use (self->pairing);
}

static void
tm_fit_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_PART)
    g_value_set_string (value, TM_FIT_VIEW (object)->part);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
tm_fit_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_PART)
    tm_fit_view_show_part (TM_FIT_VIEW (object), g_value_get_string (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
tm_fit_view_dispose (GObject *object)
{
  TmFitView *self = TM_FIT_VIEW (object);

  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_fit_view_parent_class)->dispose (object);
}

static void
tm_fit_view_finalize (GObject *object)
{
  TmFitView *self = TM_FIT_VIEW (object);

  g_clear_pointer (&self->part, g_free);
  G_OBJECT_CLASS (tm_fit_view_parent_class)->finalize (object);
}

static void
install_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_property_action (klass, "fit.part", "part");
  gtk_widget_class_install_action (klass, "fit.add-mate", NULL, add_mate_action);
  gtk_widget_class_install_action (klass, "fit.choose-mate", "s", choose_mate_action);
  gtk_widget_class_install_action (klass, "fit.give-mate", NULL, give_mate_action);
  gtk_widget_class_install_action (klass, "fit.use-pairing", NULL, use_pairing_action);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_i, GDK_CONTROL_MASK, "fit.add-mate", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Return, GDK_CONTROL_MASK, "fit.use-pairing", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_KP_Enter, GDK_CONTROL_MASK, "fit.use-pairing", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Escape, 0, "bench.fit", NULL);
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    gtk_widget_class_add_binding_action (klass, GDK_KEY_1 + i, GDK_CONTROL_MASK, "fit.part", "s",
                                         parts[i].name);
}

static void
tm_fit_view_class_init (TmFitViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = tm_fit_view_dispose;
  object_class->finalize = tm_fit_view_finalize;
  object_class->get_property = tm_fit_view_get_property;
  object_class->set_property = tm_fit_view_set_property;
  properties[PROP_PART] = g_param_spec_string (
      "part", NULL, NULL, "fit", G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
  install_actions (GTK_WIDGET_CLASS (klass));
}

/* -------- Building -------- */

static GtkWidget *
build_switch (void)
{
  GtkWidget *box
      = g_object_new (GTK_TYPE_BOX, "spacing", 6, "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  tm_name_widget (box, _ ("Fit and press"));
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      GtkWidget *button
          = gtk_toggle_button_new_with_label (g_dpgettext2 (GETTEXT_PACKAGE, "part", parts[i].label));

      /* The target first: an action without the target it wants is complained about. */
      gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", parts[i].name);
      gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "fit.part");
      gtk_widget_set_tooltip_text (button, g_dgettext (GETTEXT_PACKAGE, parts[i].tip));
      gtk_widget_add_css_class (button, "flat");
      gtk_widget_add_css_class (button, "tm-page");
      gtk_box_append (GTK_BOX (box), button);
    }
  return box;
}

static GtkWidget *
build_head (TmFitView *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 16);
  GtkWidget *back = tm_button_new (_ ("Back to _measuring"));

  self->title = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->title, 0);
  gtk_label_set_ellipsize (self->title, PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (GTK_WIDGET (self->title), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->title), "tm-fit-title");
  tm_tip_own_text (GTK_WIDGET (self->title));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (back), "bench.fit");
  gtk_widget_set_tooltip_text (back, _ ("Measure on (Escape or F6)"));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (head), build_switch ());
  gtk_box_append (GTK_BOX (head), back);
  gtk_widget_add_css_class (head, "tm-fit-head");
  return head;
}

static void
tm_fit_view_init (TmFitView *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->part = g_strdup (parts[0].name);
  self->stack = GTK_STACK (gtk_stack_new ());
  self->fit = TM_FIT_PANE (tm_fit_pane_new ());
  self->pairing = TM_PAIR_PANE (tm_pair_pane_new ());
  self->press = TM_PRESS_PANE (tm_press_pane_new ());
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->fit), "fit");
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->pairing), "pairing");
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->press), "press");
  gtk_stack_set_vhomogeneous (self->stack, FALSE);
  gtk_widget_set_vexpand (GTK_WIDGET (self->stack), TRUE);
  g_signal_connect_swapped (self->fit, "changed", G_CALLBACK (changed_cb), self);
  gtk_box_append (GTK_BOX (self), build_head (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_access_show_page (self->stack, self->part);
}

GtkWidget *
tm_fit_view_new (void)
{
  return g_object_new (TM_TYPE_FIT_VIEW, NULL);
}
