/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-table-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-table-item.h"
#include "app-toast.h"

/* Wait this long after the last keystroke before the rows are read again. */
#define SETTLE_MS 150
/* A feature list is a few kilobytes; a file beyond this is another kind of file. */
#define MAX_BYTES (16u * 1024u * 1024u)

#define TM_TYPE_TABLE_DIALOG (tm_table_dialog_get_type ())
G_DECLARE_FINAL_TYPE (TmTableDialog, tm_table_dialog, TM, TABLE_DIALOG, AdwWindow)

struct _TmTableDialog {
  AdwWindow parent_instance;

  TmDocument *document;
  TmTablePreview *preview; /* NULL while there is nothing to read */
  GListStore *items;
  char *place;          /* what errors call the source */
  gboolean keeps_place; /* the text is being set from a file */
  guint settle_id;
  GtkFileChooserNative *chooser;
  GCancellable *cancellable;

  GtkWidget *add_button;
  GtkTextView *text_view;
  GtkLabel *problem_label;
  GtkLabel *summary_label;
  GtkColumnView *view;
};

G_DEFINE_FINAL_TYPE (TmTableDialog, tm_table_dialog, ADW_TYPE_WINDOW)

static char *
get_text (TmTableDialog *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->text_view);
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
}

static void
show_rows (TmTableDialog *self)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);

  for (guint i = 0; self->preview != NULL && i < self->preview->rows->len; i++)
    g_ptr_array_add (items, tm_table_item_new (g_ptr_array_index (self->preview->rows, i)));
  g_list_store_splice (self->items, 0, g_list_model_get_n_items (G_LIST_MODEL (self->items)), items->pdata,
                       items->len);
}

/* "12 of 13 rows can be added; not used: colour, weight" */
static void
show_summary (TmTableDialog *self)
{
  guint n = self->preview != NULL ? self->preview->n_addable : 0;
  g_autofree char *label = n > 0 ? g_strdup_printf (ngettext ("_Add %u feature", "_Add %u features", n), n)
                                 : g_strdup (_ ("_Add"));
  GString *text;

  gtk_button_set_label (GTK_BUTTON (self->add_button), label);
  gtk_widget_set_sensitive (self->add_button, n > 0);
  if (self->preview == NULL)
    {
      gtk_label_set_text (self->summary_label,
                          _ ("What each row is understood as stands here before anything is added."));
      return;
    }
  text = g_string_new (NULL);
  g_string_append_printf (
      text, ngettext ("%u of %u row can be added", "%u of %u rows can be added", self->preview->rows->len), n,
      self->preview->rows->len);
  for (guint i = 0; i < self->preview->unused->len; i++)
    g_string_append_printf (text, i == 0 ? _ ("; columns not used: %s") : ", %s",
                            (char *)g_ptr_array_index (self->preview->unused, i));
  gtk_label_set_text (self->summary_label, text->str);
  g_string_free (text, TRUE);
}

static void
read_rows (TmTableDialog *self)
{
  g_autofree char *text = get_text (self);
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&self->preview, tm_table_preview_free);
  if (*stripped != '\0')
    self->preview
        = tm_table_preview (text, strlen (text), self->place, tm_document_job (self->document), &error);
  tm_dialog_problem_set (self->problem_label, error != NULL ? error->message : NULL);
  show_rows (self);
  show_summary (self);
}

static gboolean
settle_cb (gpointer data)
{
  TmTableDialog *self = data;

  self->settle_id = 0;
  read_rows (self);
  return G_SOURCE_REMOVE;
}

static void
text_changed_cb (TmTableDialog *self)
{
  if (!self->keeps_place)
    {
      g_free (self->place);
      self->place = g_strdup (_ ("pasted rows"));
    }
  g_clear_handle_id (&self->settle_id, g_source_remove);
  self->settle_id = g_timeout_add (SETTLE_MS, settle_cb, self);
}

static void
add_cb (TmTableDialog *self)
{
  GtkWidget *parent = GTK_WIDGET (gtk_window_get_transient_for (GTK_WINDOW (self)));
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  guint n;

  g_clear_handle_id (&self->settle_id, g_source_remove);
  read_rows (self);
  if (self->preview == NULL)
    return;
  if (!tm_edit_add_table (self->document, self->preview, &n, &error))
    {
      tm_dialog_problem_set (self->problem_label, error->message);
      return;
    }
  text = g_strdup_printf (ngettext ("Added %u feature", "Added %u features", n), n);
  if (parent != NULL)
    tm_window_toast (parent, text);
  gtk_window_destroy (GTK_WINDOW (self));
}

/* Text that is no UTF-8 cannot stand in the text view: the reader says so, with the file's name. */
static void
take_file (TmTableDialog *self, const char *name, const char *data, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmTablePreview) preview = NULL;

  if (length > MAX_BYTES)
    {
      g_autofree char *line = g_strdup_printf (_ ("%s is too large for a table of features."), name);

      tm_dialog_problem_set (self->problem_label, line);
      return;
    }
  preview = tm_table_preview (data, length, name, tm_document_job (self->document), &error);
  if (preview == NULL)
    {
      tm_dialog_problem_set (self->problem_label, error->message);
      return;
    }
  g_free (self->place);
  self->place = g_strdup (name);
  self->keeps_place = TRUE;
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->text_view), data, (int)length);
  self->keeps_place = FALSE;
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (TmTableDialog) self = data;
  g_autofree char *path = g_file_get_path (G_FILE (source));
  g_autofree char *name
      = path != NULL ? g_filename_display_basename (path) : g_file_get_uri (G_FILE (source));
  g_autofree char *contents = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;

  if (!g_file_load_contents_finish (G_FILE (source), result, &contents, &length, NULL, &error))
    {
      if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        tm_dialog_problem_set (self->problem_label, error->message);
      return;
    }
  if (self->document != NULL)
    take_file (self, name, contents, length);
}

static void
open_response_cb (GtkFileChooserNative *chooser, int response, TmTableDialog *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));

  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    g_file_load_contents_async (file, self->cancellable, loaded_cb, g_object_ref (self));
  g_clear_object (&self->chooser);
}

static void
open_cb (TmTableDialog *self)
{
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Open a table of features"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (open_response_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
tm_table_dialog_dispose (GObject *object)
{
  TmTableDialog *self = TM_TABLE_DIALOG (object);

  g_clear_handle_id (&self->settle_id, g_source_remove);
  g_cancellable_cancel (self->cancellable);
  g_clear_object (&self->cancellable);
  g_clear_object (&self->chooser);
  if (self->view != NULL)
    gtk_column_view_set_model (self->view, NULL);
  if (self->text_view != NULL)
    g_signal_handlers_disconnect_by_data (gtk_text_view_get_buffer (self->text_view), self);
  g_clear_object (&self->items);
  g_clear_pointer (&self->preview, tm_table_preview_free);
  g_clear_object (&self->document);
  g_clear_pointer (&self->place, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), TM_TYPE_TABLE_DIALOG);
  G_OBJECT_CLASS (tm_table_dialog_parent_class)->dispose (object);
}

static void
tm_table_dialog_class_init (TmTableDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_table_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/table-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, TmTableDialog, add_button);
  gtk_widget_class_bind_template_child (widget_class, TmTableDialog, text_view);
  gtk_widget_class_bind_template_child (widget_class, TmTableDialog, problem_label);
  gtk_widget_class_bind_template_child (widget_class, TmTableDialog, summary_label);
  gtk_widget_class_bind_template_child (widget_class, TmTableDialog, view);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_cb);
}

static void
tm_table_dialog_init (TmTableDialog *self)
{
  g_autoptr (GtkSelectionModel) selection = NULL;

  gtk_widget_init_template (GTK_WIDGET (self));
  self->place = g_strdup (_ ("pasted rows"));
  self->cancellable = g_cancellable_new ();
  self->items = g_list_store_new (TM_TYPE_TABLE_ITEM);
  selection = GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (g_object_ref (self->items))));
  tm_table_add_columns (self->view);
  tm_access_name_column_view (self->view, _ ("What the rows are understood as"));
  gtk_column_view_set_model (self->view, selection);
  g_signal_connect_swapped (gtk_text_view_get_buffer (self->text_view), "changed",
                            G_CALLBACK (text_changed_cb), self);
}

void
tm_table_dialog_present (GtkWidget *any_child, TmDocument *document)
{
  TmTableDialog *self = g_object_new (TM_TYPE_TABLE_DIALOG, NULL);

  self->document = g_object_ref (document);
  tm_dialog_attach (GTK_WINDOW (self), any_child);
  gtk_widget_grab_focus (GTK_WIDGET (self->text_view));
  gtk_window_present (GTK_WINDOW (self));
}
