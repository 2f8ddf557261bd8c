/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-new.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-words.h"

struct _TmDrawingNew {
  GtkBox parent_instance;

  const TmJob *job; /* borrowed while it is in sight */
  GtkLabel *title;
  GtkEditable *entry;
  GtkLabel *reads;
};

enum { SIGNAL_TYPED, SIGNAL_CLOSED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmDrawingNew, tm_drawing_new, GTK_TYPE_BOX)

static char *
typed (TmDrawingNew *self)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (self->entry)));
}

static void
changed_cb (TmDrawingNew *self)
{
  g_autofree char *text = typed (self);
  g_autofree char *words = NULL;
  TmCallout callout;

  if (self->job == NULL)
    return;
  callout = tm_callout_read (text, self->job->unit, self->job->general_tolerance);
  words = callout.status == TM_CALLOUT_EMPTY ? g_strdup (_ ("Type it as the drawing has it"))
                                             : tm_words_reads_as (&callout);
  gtk_label_set_text (self->reads, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_editable_get_delegate (self->entry)),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
activate_cb (TmDrawingNew *self)
{
  g_autofree char *text = typed (self);

  if (*text != '\0')
    g_signal_emit (self, signals[SIGNAL_TYPED], 0, text);
}

static void
close_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_drawing_new_close (TM_DRAWING_NEW (widget));
}

static void
tm_drawing_new_class_init (TmDrawingNewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GType type = G_TYPE_FROM_CLASS (klass);

  signals[SIGNAL_TYPED]
      = g_signal_new ("typed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SIGNAL_CLOSED]
      = g_signal_new ("closed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "new-feature.close", NULL, close_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "new-feature.close", NULL);
}

static void
tm_drawing_new_init (TmDrawingNew *self)
{
  GtkWidget *add = tm_button_new (_ ("_Add"));
  GtkWidget *cancel = tm_button_new (_ ("_Cancel"));

  self->title = GTK_LABEL (gtk_label_new (NULL));
  self->entry = GTK_EDITABLE (gtk_entry_new ());
  self->reads = GTK_LABEL (gtk_label_new (NULL));
  tm_name_entry (self->entry, _ ("Requirement of the new feature"));
  gtk_editable_set_width_chars (self->entry, 18);
  gtk_label_set_xalign (self->reads, 0);
  gtk_label_set_ellipsize (self->reads, PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (GTK_WIDGET (self->reads), TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->reads), "dim-label");
  gtk_widget_add_css_class (add, "suggested-action");
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (activate_cb), self);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (cancel), "new-feature.close");
  gtk_box_set_spacing (GTK_BOX (self), 8);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->entry));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->reads));
  gtk_box_append (GTK_BOX (self), add);
  gtk_box_append (GTK_BOX (self), cancel);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-drawing-new");
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
tm_drawing_new_new (void)
{
  return g_object_new (TM_TYPE_DRAWING_NEW, NULL);
}

void
tm_drawing_new_open (TmDrawingNew *self, const TmJob *job, const char *balloon)
{
  g_autofree char *title = NULL;

  g_return_if_fail (TM_IS_DRAWING_NEW (self));

  title = g_strdup_printf (_ ("New feature %s:"), balloon);
  self->job = job;
  gtk_label_set_text (self->title, title);
  gtk_editable_set_text (self->entry, "");
  changed_cb (self);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
}

void
tm_drawing_new_close (TmDrawingNew *self)
{
  g_return_if_fail (TM_IS_DRAWING_NEW (self));

  if (self->job == NULL)
    return;
  self->job = NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_emit (self, signals[SIGNAL_CLOSED], 0);
}
