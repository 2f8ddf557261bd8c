/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-template-versions.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-form-dialog.h"
#include "app-list-row.h"
#include "app-template-preview.h"
#include "app-words.h"

/* Pixels. */
#define WIDTH  960
#define HEIGHT 640

typedef struct {
  TmBook *book; /* outlives the dialog */
  TmFormDialog window;
  GtkListBox *list;
  GtkWidget *preview;
  GPtrArray *versions;  /* TmBookTemplateVersion, a row each */
  TmTemplate *template; /* of the row chosen; NULL where it cannot be read */
  TmTemplateTaken taken;
  gpointer data;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_ptr_array_unref (dialog->versions);
  tm_template_free (dialog->template);
  g_free (dialog);
}

/* -------- Rows -------- */

static const char *
word_state (gboolean newest, const TmBookTemplateVersion *version)
{
  if (version->is_empty)
    return _ ("taken away");
  return newest ? _ ("holds now") : "";
}

static GtkWidget *
make_row (const Dialog *dialog, guint at)
{
  const TmBookTemplateVersion *version = g_ptr_array_index (dialog->versions, at);
  g_autofree char *when = tm_words_time (version->at);
  g_autofree char *title
      = *version->by != '\0' ? g_strdup_printf (_ ("%s, by %s"), when, version->by) : g_strdup (when);
  const char *state = word_state (at == 0, version);
  g_autoptr (GString) sentence = g_string_new (title);

  if (*version->name != '\0')
    g_string_append_printf (sentence, ", %s", version->name);
  if (*state != '\0')
    g_string_append_printf (sentence, ", %s", state);
  return tm_list_row_new (title, version->name, state, sentence->str, "");
}

/* -------- Looking and taking -------- */

static void
selected_cb (Dialog *dialog, GtkListBoxRow *row)
{
  g_autoptr (GError) error = NULL;
  const TmBookTemplateVersion *version;

  if (row == NULL)
    return;
  version = g_ptr_array_index (dialog->versions, (guint)gtk_list_box_row_get_index (row));
  g_clear_pointer (&dialog->template, tm_template_free);
  dialog->template = tm_book_template_version (dialog->book, version->number, &error);
  tm_dialog_problem_set (dialog->window.problem, error != NULL ? error->message : NULL);
  gtk_widget_set_sensitive (dialog->window.save, dialog->template != NULL);
  if (dialog->template != NULL)
    tm_template_preview_show (TM_TEMPLATE_PREVIEW (dialog->preview), dialog->template);
}

static void
take_cb (Dialog *dialog)
{
  if (dialog->template == NULL)
    return;
  dialog->taken (dialog->template, dialog->data);
  gtk_window_destroy (dialog->window.window);
}

static void
build (Dialog *dialog, TmDocument *document)
{
  dialog->preview = tm_template_preview_new (document);
  gtk_widget_add_css_class (dialog->preview, "tm-paper");
  tm_form_dialog_add_side (&dialog->window, dialog->preview);
  tm_button_set_label (dialog->window.save, _ ("_Take again"));
  dialog->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_activate_on_single_click (dialog->list, FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (dialog->list), "tm-choices");
  tm_list_tab_leaves (dialog->list);
  tm_name_widget (GTK_WIDGET (dialog->list), _ ("Versions of the report template"));
  gtk_box_append (dialog->window.rows, GTK_WIDGET (dialog->list));
  for (guint i = 0; i < dialog->versions->len; i++)
    gtk_list_box_append (dialog->list, make_row (dialog, i));
  g_signal_connect_swapped (dialog->list, "row-activated", G_CALLBACK (take_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (take_cb), dialog);
}

/* The one before that which holds is what most people come for. */
static void
choose_first (Dialog *dialog)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (dialog->list, dialog->versions->len > 1 ? 1 : 0);

  gtk_widget_set_sensitive (dialog->window.save, FALSE);
  g_signal_connect_swapped (dialog->list, "row-selected", G_CALLBACK (selected_cb), dialog);
  gtk_list_box_select_row (dialog->list, row);
  if (row != NULL)
    gtk_window_set_focus (dialog->window.window, GTK_WIDGET (row));
}

GtkWindow *
tm_template_versions_present (GtkWidget *any_child, TmBook *book, TmDocument *document, TmTemplateTaken taken,
                              gpointer data, GError **error)
{
  GPtrArray *versions;
  Dialog *dialog;

  g_return_val_if_fail (book != NULL && taken != NULL, NULL);

  versions = tm_book_template_versions (book, error);
  if (versions == NULL)
    return NULL;
  dialog = g_new0 (Dialog, 1);
  dialog->book = book;
  dialog->versions = versions;
  dialog->taken = taken;
  dialog->data = data;
  tm_form_dialog_build (&dialog->window, any_child, _ ("Versions of the report template"), WIDTH, HEIGHT);
  build (dialog, document);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_window_present (dialog->window.window);
  choose_first (dialog);
  return dialog->window.window;
}
