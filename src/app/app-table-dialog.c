/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-table-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-table-item.h"
#include "app-toast.h"
#include "exchange-qif.h"

/* Wait this long after the last keystroke before the rows are read again. */
#define SETTLE_MS 150
/* A table of features is a few kilobytes; a file beyond this is another kind of file.  QIF may hold results
 * and geometry besides, and has a limit of its own. */
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
  GBytes *file;         /* a file that is no text to be shown here; read while the text is empty */
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

static void
append_remarks (TmTableDialog *self, GString *text)
{
  for (guint i = 0; i < self->preview->unused->len; i++)
    g_string_append_printf (text, i == 0 ? _ ("; columns not used: %s") : ", %s",
                            (char *)g_ptr_array_index (self->preview->unused, i));
  if (self->preview->remark != NULL)
    g_string_append_printf (text, "; %s", self->preview->remark);
}

/* "part.qif: 12 of 13 rows can be added; columns not used: colour, weight" */
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
  if (self->file != NULL)
    g_string_append_printf (text, "%s: ", self->place);
  g_string_append_printf (
      text, ngettext ("%u of %u row can be added", "%u of %u rows can be added", self->preview->rows->len), n,
      self->preview->rows->len);
  append_remarks (self, text);
  gtk_label_set_text (self->summary_label, text->str);
  g_string_free (text, TRUE);
}

/* What stands in a table, or in a QIF file. */
static TmTablePreview *
preview_data (TmTableDialog *self, const char *place, const char *data, gsize length, GError **error)
{
  TmJob *job = tm_document_job (self->document);

  if (tm_qif_is_likely (data, length))
    return tm_qif_read_features (data, length, place, job, error);
  return tm_table_preview (data, length, place, job, error);
}

static void
read_rows (TmTableDialog *self)
{
  g_autofree char *text = get_text (self);
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  g_autoptr (GError) error = NULL;
  gsize length;
  const char *data = self->file != NULL ? g_bytes_get_data (self->file, &length) : NULL;

  g_clear_pointer (&self->preview, tm_table_preview_free);
  if (*stripped != '\0')
    self->preview = preview_data (self, self->place, text, strlen (text), &error);
  else if (data != NULL)
    self->preview = preview_data (self, self->place, data, length, &error);
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
read_soon (TmTableDialog *self)
{
  g_clear_handle_id (&self->settle_id, g_source_remove);
  self->settle_id = g_timeout_add (SETTLE_MS, settle_cb, self);
}

static void
text_changed_cb (TmTableDialog *self)
{
  if (!self->keeps_place)
    {
      g_free (self->place);
      self->place = g_strdup (_ ("pasted rows"));
      g_clear_pointer (&self->file, g_bytes_unref);
    }
  read_soon (self);
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

/* Text that is no UTF-8 cannot stand in the text view, and nobody edits XML here. */
static void
show_file (TmTableDialog *self, const char *name, const char *data, gsize length)
{
  gboolean is_qif = tm_qif_is_likely (data, length);

  g_free (self->place);
  self->place = g_strdup (name);
  g_clear_pointer (&self->file, g_bytes_unref);
  self->keeps_place = TRUE;
  if (is_qif)
    self->file = g_bytes_new (data, length);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->text_view), is_qif ? "" : data,
                            is_qif ? 0 : (int)length);
  self->keeps_place = FALSE;
  read_soon (self);
}

/* What cannot be read leaves what is shown alone: the reader says why, with the file's name. */
static void
take_file (TmTableDialog *self, const char *name, const char *data, gsize length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmTablePreview) preview = NULL;

  if (length > MAX_BYTES && !tm_qif_is_likely (data, length))
    {
      g_autofree char *line = g_strdup_printf (_ ("%s is too large for a table of features."), name);

      tm_dialog_problem_set (self->problem_label, line);
      return;
    }
  preview = preview_data (self, name, data, length, &error);
  if (preview == NULL)
    {
      tm_dialog_problem_set (self->problem_label, error->message);
      return;
    }
  show_file (self, name, data, length);
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

void
tm_table_dialog_load (GtkWindow *dialog, GFile *file)
{
  TmTableDialog *self = TM_TABLE_DIALOG (dialog);
  g_autoptr (GFileInfo) info
      = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_SIZE, G_FILE_QUERY_INFO_NONE, NULL, NULL);

  if (info != NULL && g_file_info_get_size (info) > (goffset)TM_EXCHANGE_MAX_BYTES)
    {
      g_autofree char *name = g_file_get_basename (file);
      g_autofree char *shown = g_filename_display_name (name);
      g_autofree char *line = g_strdup_printf (_ ("%s is too large for a table of features."), shown);

      tm_dialog_problem_set (self->problem_label, line);
      return;
    }
  g_file_load_contents_async (file, self->cancellable, loaded_cb, g_object_ref (self));
}

static void
open_response_cb (GtkFileChooserNative *chooser, int response, TmTableDialog *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));

  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    tm_table_dialog_load (GTK_WINDOW (self), file);
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
  g_clear_pointer (&self->file, g_bytes_unref);
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
