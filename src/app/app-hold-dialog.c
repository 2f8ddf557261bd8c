/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-hold-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-piece.h"
#include "app-form.h"
#include "app-hold-print.h"
#include "app-hold-rows.h"
#include "app-save-path.h"
#include "app-view-parts.h"

/* Pixels. */
#define WIDTH  680
#define HEIGHT 620

typedef struct {
  TmDocument *document;
  TmHoldList *list;
  GtkWindow *window;
  GtkLabel *problem, *summary;
  TmHoldRows rows;
  GtkStack *stack;
  AdwComboRow *disposition;
  AdwEntryRow *note;
  GtkWidget *apply;
  GtkFileChooserNative *chooser;
  gulong changed_id;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_clear_signal_handler (&dialog->changed_id, dialog->document);
  g_clear_object (&dialog->chooser);
  tm_hold_rows_clear (&dialog->rows);
  g_object_unref (dialog->document);
  tm_hold_list_unref (dialog->list);
  g_free (dialog);
}

/* -------- The decision -------- */

/* What a piece that is chosen alone has stands in the fields. */
static void
show_decision (Dialog *dialog, const TmPiece *piece)
{
  const guint which = tm_disposition_which (piece->disposition);

  adw_combo_row_set_selected (dialog->disposition, tm_disposition_word (which) != NULL ? which : 0);
  tm_form_set_text (dialog->note, piece->disposition_note);
}

static void
chosen_changed_cb (Dialog *dialog)
{
  g_autoptr (GPtrArray) pieces = tm_hold_rows_chosen (&dialog->rows);
  const guint n = pieces->len;
  g_autofree char *label = n == 1
                               ? g_strdup (_ ("_Set for the piece"))
                               : g_strdup_printf (ngettext ("_Set for %u piece", "_Set for %u pieces", n), n);

  if (n == 1)
    show_decision (dialog, g_ptr_array_index (pieces, 0));
  tm_button_set_label (dialog->apply, n > 0 ? label : _ ("_Set for the selected"));
  gtk_widget_set_sensitive (dialog->apply, n > 0);
}

static void
apply_cb (Dialog *dialog)
{
  g_autoptr (GPtrArray) pieces = tm_hold_rows_chosen (&dialog->rows);
  g_autoptr (GArray) choice = g_array_new (FALSE, FALSE, sizeof (TmDisposition));
  g_autofree char *note = tm_form_text (dialog->note);
  const char *word = tm_disposition_word (tm_form_chosen (dialog->disposition));
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < pieces->len; i++)
    {
      const TmDisposition one = { g_ptr_array_index (pieces, i), word != NULL ? word : "", note };

      g_array_append_val (choice, one);
    }
  if (choice->len == 0)
    return;
  tm_edit_dispose (dialog->document, (const TmDisposition *)(gpointer)choice->data, choice->len, &error);
  tm_dialog_problem_set (dialog->problem, error != NULL ? error->message : NULL);
}

static void
definitions_changed_cb (Dialog *dialog)
{
  tm_hold_rows_refresh (&dialog->rows);
}

/* Enter on a row goes on to what is decided of it. */
static void
activated_cb (Dialog *dialog)
{
  gtk_widget_grab_focus (GTK_WIDGET (dialog->disposition));
}

/* -------- Paper and table -------- */

static void
print_cb (Dialog *dialog)
{
  /* The dialog of the printers runs the main loop: what it needs must stay. */
  g_autoptr (TmDocument) document = g_object_ref (dialog->document);
  g_autoptr (TmHoldList) list = tm_hold_list_ref (dialog->list);
  g_autoptr (GtkWindow) window = g_object_ref (dialog->window);
  g_autoptr (GError) error = NULL;

  if (!tm_hold_print_run (window, list, tm_document_job (document), NULL, &error)
      && gtk_widget_get_visible (GTK_WIDGET (window)))
    tm_dialog_problem_set (dialog->problem, error->message);
}

gboolean
tm_hold_dialog_write (TmDocument *document, const TmHoldList *list, const char *path, GError **error)
{
  GString *table = tm_hold_list_table (list, tm_document_job (document));
  gboolean written
      = g_file_set_contents_full (path, table->str, (gssize)table->len,
                                  G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, error);

  g_string_free (table, TRUE);
  return written;
}

static void
chosen_cb (GtkFileChooserNative *chooser, int response, Dialog *dialog)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path
      = response == GTK_RESPONSE_ACCEPT ? tm_save_path_chosen (chooser, ".csv", &error) : NULL;
  g_autofree char *shown = path != NULL ? g_filename_display_basename (path) : NULL;
  g_autofree char *text = g_strdup_printf (_ ("Written: %s"), shown != NULL ? shown : "");

  g_clear_object (&dialog->chooser);
  if (path == NULL && error == NULL)
    return;
  if (path != NULL && tm_hold_dialog_write (dialog->document, dialog->list, path, &error))
    gtk_label_set_text (dialog->summary, text);
  tm_dialog_problem_set (dialog->problem, error != NULL ? error->message : NULL);
}

static void
export_cb (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);
  g_autofree char *asked = g_strdup_printf (_ ("Held back %s.csv"), job->part_number);
  g_autofree char *name = g_strdelimit (g_steal_pointer (&asked), "/\\:*?\"<>|", '-');

  g_clear_object (&dialog->chooser);
  dialog->chooser = gtk_file_chooser_native_new (_ ("Export the pieces held back as CSV"), dialog->window,
                                                 GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog->chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog->chooser), name);
  g_signal_connect (dialog->chooser, "response", G_CALLBACK (chosen_cb), dialog);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog->chooser));
}

/* -------- The window -------- */

static GtkWidget *
build_header (Dialog *dialog)
{
  GtkWidget *header = adw_header_bar_new ();
  GtkWidget *print = tm_button_new (_ ("_Print…"));
  GtkWidget *export = tm_button_new (_ ("_Export as CSV…"));
  const gboolean any = dialog->list->lines->len > 0;

  gtk_widget_set_sensitive (print, any);
  gtk_widget_set_sensitive (export, any);
  adw_header_bar_pack_start (ADW_HEADER_BAR (header), print);
  adw_header_bar_pack_start (ADW_HEADER_BAR (header), export);
  g_signal_connect_swapped (print, "clicked", G_CALLBACK (print_cb), dialog);
  g_signal_connect_swapped (export, "clicked", G_CALLBACK (export_cb), dialog);
  return header;
}

static GtkWidget *
build_rows (Dialog *dialog)
{
  tm_hold_rows_init (&dialog->rows, dialog->document, dialog->list);
  g_signal_connect_swapped (dialog->rows.selection, "selection-changed", G_CALLBACK (chosen_changed_cb),
                            dialog);
  g_signal_connect_swapped (dialog->rows.view, "activate", G_CALLBACK (activated_cb), dialog);
  return tm_view_scroller_new (GTK_WIDGET (dialog->rows.view));
}

static void
fill_dispositions (Dialog *dialog)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  for (guint i = 0; tm_disposition_text (i) != NULL; i++)
    g_ptr_array_add (words, (gpointer)tm_disposition_text (i));
  g_ptr_array_add (words, NULL);
  tm_form_set_words (dialog->disposition, (const char *const *)words->pdata, 0);
}

/* What is decided, under the list. */
static GtkWidget *
build_decision (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  AdwPreferencesGroup *group = tm_form_group (GTK_BOX (box), _ ("Decision for the selected pieces"),
                                              _ ("Shift with the arrows selects more, Ctrl+A all."));

  dialog->disposition = tm_form_choice (group, _ ("Disposition"), (const char *const[]) { NULL });
  dialog->note = tm_form_entry (group, _ ("Note: why, and who said so"));
  dialog->apply = tm_button_new (_ ("_Set for the selected"));
  fill_dispositions (dialog);
  gtk_widget_set_halign (dialog->apply, GTK_ALIGN_END);
  gtk_widget_add_css_class (dialog->apply, "suggested-action");
  gtk_box_append (GTK_BOX (box), dialog->apply);
  gtk_widget_add_css_class (box, "tm-dialog");
  g_signal_connect_swapped (dialog->apply, "clicked", G_CALLBACK (apply_cb), dialog);
  g_signal_connect_swapped (dialog->note, "entry-activated", G_CALLBACK (apply_cb), dialog);
  return box;
}

static GtkWidget *
build_empty (void)
{
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No piece to hold back"));
  adw_status_page_set_description (
      ADW_STATUS_PAGE (page), _ ("When a shift or a drift is found, the pieces made since it most likely "
                                 "began stand here, those not measured among them."));
  return page;
}

static GtkWidget *
build (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *full = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  dialog->problem = tm_dialog_problem_new ();
  dialog->summary
      = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_xalign (dialog->summary, 0);
  gtk_label_set_wrap (dialog->summary, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (dialog->summary), "tm-view-summary");
  gtk_box_append (GTK_BOX (full), GTK_WIDGET (dialog->summary));
  gtk_box_append (GTK_BOX (full), build_rows (dialog));
  gtk_box_append (GTK_BOX (full), build_decision (dialog));
  dialog->stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (dialog->stack, full, "list");
  gtk_stack_add_named (dialog->stack, build_empty (), "empty");
  gtk_box_append (GTK_BOX (box), build_header (dialog));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->stack));
  return box;
}

static void
fill (Dialog *dialog)
{
  g_autofree char *summary = tm_hold_list_summary (dialog->list);
  const gboolean any = dialog->list->lines->len > 0;

  gtk_label_set_text (dialog->summary, summary);
  chosen_changed_cb (dialog);
  tm_access_show_page (dialog->stack, any ? "list" : "empty");
  if (any)
    tm_hold_rows_focus (&dialog->rows);
}

GtkWindow *
tm_hold_dialog_present (GtkWidget *any_child, TmDocument *document, TmHoldList *list)
{
  Dialog *dialog;

  g_return_val_if_fail (TM_IS_DOCUMENT (document) && list != NULL, NULL);

  dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  dialog->list = tm_hold_list_ref (list);
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, _ ("Hold back"));
  gtk_window_set_default_size (dialog->window, WIDTH, HEIGHT);
  adw_window_set_content (ADW_WINDOW (dialog->window), build (dialog));
  tm_dialog_attach (dialog->window, any_child);
  dialog->changed_id = g_signal_connect_swapped (document, "definitions-changed",
                                                 G_CALLBACK (definitions_changed_cb), dialog);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  fill (dialog);
  gtk_window_present (dialog->window);
  return dialog->window;
}
