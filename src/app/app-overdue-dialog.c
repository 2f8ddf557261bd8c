/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-overdue-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-form.h"

struct _TmOverdueDialog {
  AdwWindow parent_instance;

  GtkWidget *reason; /* AdwEntryRow */
  GtkWidget *confirm;
  GtkLabel *about;
};

enum { SIGNAL_STATED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmOverdueDialog, tm_overdue_dialog, ADW_TYPE_WINDOW)

static void
changed_cb (GtkEditable *editable, TmOverdueDialog *self)
{
  g_autofree char *reason = tm_form_text (ADW_ENTRY_ROW (self->reason));
  gtk_widget_set_sensitive (self->confirm, *reason != '\0');
}

static void
confirm_cb (GtkWidget *widget, TmOverdueDialog *self)
{
  g_autofree char *reason = tm_form_text (ADW_ENTRY_ROW (self->reason));
  if (*reason == '\0')
    return;
  g_object_ref (self);
  gtk_window_close (GTK_WINDOW (self));
  g_signal_emit (self, signals[SIGNAL_STATED], 0, reason);
  g_object_unref (self);
}

static void
tm_overdue_dialog_class_init (TmOverdueDialogClass *klass)
{
  signals[SIGNAL_STATED] = g_signal_new ("stated", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
tm_overdue_dialog_init (TmOverdueDialog *self)
{
  TmDialogForm form;
  self->confirm = tm_button_new (_ ("_Use it"));
  gtk_widget_set_sensitive (self->confirm, FALSE);
  gtk_widget_add_css_class (self->confirm, "suggested-action");
  g_signal_connect (self->confirm, "clicked", G_CALLBACK (confirm_cb), self);
  form = tm_dialog_form_build (ADW_WINDOW (self), _ ("Reason"), self->confirm);
  self->about = form.about;
  gtk_label_set_text (form.hint,
                      _ ("The reason stays with each reading taken so, and the report carries it."));
  self->reason = GTK_WIDGET (tm_access_entry_row_new (_ ("Why it is used all the same")));
  g_signal_connect (self->reason, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (self->reason, "entry-activated", G_CALLBACK (confirm_cb), self);
  adw_preferences_group_add (form.rows, self->reason);
  gtk_window_set_title (GTK_WINDOW (self), _ ("A gauge past its due date"));
}

GtkWidget *
tm_overdue_dialog_present (GtkWidget *parent, const char *about)
{
  TmOverdueDialog *self = g_object_new (TM_TYPE_OVERDUE_DIALOG, NULL);
  gtk_label_set_text (self->about, about);
  tm_dialog_attach (GTK_WINDOW (self), parent);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (self->reason);
  return GTK_WIDGET (self);
}

void
tm_overdue_dialog_answer (TmOverdueDialog *self, const char *reason)
{
  g_return_if_fail (TM_IS_OVERDUE_DIALOG (self));

  tm_form_set_text (ADW_ENTRY_ROW (self->reason), reason);
  confirm_cb (self->confirm, self);
}
