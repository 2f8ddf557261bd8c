/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-form-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-form.h"
#include "app-toast.h"

static GtkWidget *
build_header (TmFormDialog *dialog)
{
  GtkWidget *header;

  dialog->save = tm_button_new (_ ("_Save"));
  gtk_widget_add_css_class (dialog->save, "suggested-action");
  header = tm_dialog_header_new (dialog->save);
  dialog->remove = tm_button_new (_ ("_Remove"));
  gtk_widget_set_visible (dialog->remove, FALSE);
  adw_header_bar_pack_end (ADW_HEADER_BAR (header), dialog->remove);
  return header;
}

void
tm_form_dialog_build (TmFormDialog *dialog, GtkWidget *any_child, const char *title, int width, int height)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  dialog->window = GTK_WINDOW (adw_window_new ());
  dialog->problem = tm_dialog_problem_new ();
  dialog->rows = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 18));
  gtk_widget_add_css_class (GTK_WIDGET (dialog->rows), "tm-dialog");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (dialog->rows));
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_hexpand (scroller, TRUE);
  dialog->body = GTK_BOX (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));
  gtk_box_append (dialog->body, scroller);
  gtk_box_append (GTK_BOX (box), build_header (dialog));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->body));
  gtk_window_set_title (dialog->window, title);
  gtk_window_set_default_size (dialog->window, width, height);
  adw_window_set_content (ADW_WINDOW (dialog->window), box);
  tm_dialog_attach (dialog->window, any_child);
}

static void
act (TmFormDialog *dialog, TmFormAct how)
{
  g_autofree char *said = NULL;
  g_autoptr (GError) error = NULL;

  if (how (dialog->form, &said, &error))
    tm_form_dialog_done (dialog, said);
  else
    tm_dialog_problem_set (dialog->problem, error != NULL ? error->message : said);
}

static void
save_cb (TmFormDialog *dialog)
{
  act (dialog, dialog->on_save);
}

static void
remove_cb (TmFormDialog *dialog)
{
  act (dialog, dialog->on_remove);
}

void
tm_form_dialog_act (TmFormDialog *dialog, TmFormAct save, TmFormAct remove, gpointer form,
                    GDestroyNotify free_form)
{
  dialog->on_save = save;
  dialog->on_remove = remove;
  dialog->form = form;
  gtk_widget_set_visible (dialog->remove, remove != NULL);
  g_signal_connect_swapped (dialog->save, "clicked", G_CALLBACK (save_cb), dialog);
  if (remove != NULL)
    g_signal_connect_swapped (dialog->remove, "clicked", G_CALLBACK (remove_cb), dialog);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", form, free_form);
}

void
tm_form_dialog_enter_saves (TmFormDialog *dialog, AdwEntryRow *const rows[], gsize n_rows)
{
  for (gsize i = 0; i < n_rows; i++)
    g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (save_cb), dialog);
}

AdwEntryRow *
tm_form_dialog_entry (TmFormDialog *dialog, AdwPreferencesGroup *group, const char *title)
{
  AdwEntryRow *row = tm_form_entry (group, title);

  tm_form_dialog_enter_saves (dialog, &row, 1);
  return row;
}

GtkWindow *
tm_form_dialog_present (TmFormDialog *dialog, GtkWidget *start)
{
  tm_dialog_start_in (start);
  gtk_window_present (dialog->window);
  return dialog->window;
}

void
tm_form_dialog_add_side (TmFormDialog *dialog, GtkWidget *side)
{
  gtk_box_append (dialog->body, side);
  gtk_box_set_homogeneous (dialog->body, TRUE);
}

void
tm_form_dialog_done (TmFormDialog *dialog, const char *text)
{
  GtkWindow *parent = gtk_window_get_transient_for (dialog->window);

  if (parent != NULL)
    tm_window_toast (GTK_WIDGET (parent), text);
  gtk_window_destroy (dialog->window);
}
