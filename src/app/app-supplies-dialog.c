/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-supplies-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-list-row.h"
#include "app-sub-part-dialog.h"
#include "app-supply-dialog.h"
#include "app-supply-words.h"
#include "app-view-parts.h"

/* Pixels. */
#define WIDTH  620
#define HEIGHT 520

/* What is listed. */
typedef struct {
  const char *title;
  const char *none;
  const char *advice;
  GPtrArray *(*list) (const TmJob *job);
  const char *(*name) (gconstpointer row);
  char *(*details) (gconstpointer row);
  void (*present) (GtkWidget *any_child, TmDocument *document, gpointer row); /* NULL adds */
} Kind;

typedef struct {
  const Kind *kind;
  TmDocument *document;
  GtkWindow *window;
  GtkListBox *list;
  GtkStack *stack;
  gulong changed_id;
} Dialog;

static GPtrArray *
list_supplies (const TmJob *job)
{
  return job->supplies;
}

static const char *
name_supply (gconstpointer row)
{
  return ((const TmSupply *)row)->name;
}

static char *
describe_supply (gconstpointer row)
{
  return tm_words_supply (row);
}

static void
present_supply (GtkWidget *any_child, TmDocument *document, gpointer row)
{
  tm_supply_dialog_present (any_child, document, row);
}

static GPtrArray *
list_sub_parts (const TmJob *job)
{
  return job->sub_parts;
}

static const char *
name_sub_part (gconstpointer row)
{
  return ((const TmSubPart *)row)->number;
}

static char *
describe_sub_part (gconstpointer row)
{
  return tm_words_sub_part (row);
}

static void
present_sub_part (GtkWidget *any_child, TmDocument *document, gpointer row)
{
  tm_sub_part_dialog_present (any_child, document, row);
}

static const Kind supplies = {
  N_ ("Materials, processes, tests"),
  N_ ("Nothing listed yet"),
  N_ ("Add each raw material, special process and functional test that the drawing or the order asks for, "
      "with "
      "the certificate that proves it."),
  list_supplies,
  name_supply,
  describe_supply,
  present_supply,
};

static const Kind sub_parts = {
  N_ ("Parts of the assembly"),
  N_ ("No part listed yet"),
  N_ ("Add each part of the assembly with the identifier of its own first-article report."),
  list_sub_parts,
  name_sub_part,
  describe_sub_part,
  present_sub_part,
};

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_clear_signal_handler (&dialog->changed_id, dialog->document);
  g_object_unref (dialog->document);
  g_free (dialog);
}

static GtkWidget *
build_row (const Kind *kind, gpointer row)
{
  g_autofree char *details = kind->details (row);
  g_autofree char *sentence = g_strdup_printf ("%s, %s", kind->name (row), details);
  GtkWidget *widget = tm_list_row_new (kind->name (row), details, "", sentence, "");

  g_object_set_data (G_OBJECT (widget), "row", row);
  return widget;
}

static void
fill (Dialog *dialog)
{
  const GPtrArray *rows = dialog->kind->list (tm_document_job (dialog->document));
  gboolean focused = tm_list_clear (dialog->list);

  for (guint i = 0; i < rows->len; i++)
    gtk_list_box_append (dialog->list, build_row (dialog->kind, g_ptr_array_index (rows, i)));
  tm_access_show_page (dialog->stack, rows->len > 0 ? "list" : "empty");
  if (focused && rows->len > 0)
    gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (dialog->list, 0)));
}

static void
activated_cb (GtkListBox *list, GtkListBoxRow *widget, Dialog *dialog)
{
  gpointer row = g_object_get_data (G_OBJECT (widget), "row");

  if (g_ptr_array_find (dialog->kind->list (tm_document_job (dialog->document)), row, NULL))
    dialog->kind->present (GTK_WIDGET (dialog->window), dialog->document, row);
}

static void
add_cb (Dialog *dialog)
{
  dialog->kind->present (GTK_WIDGET (dialog->window), dialog->document, NULL);
}

static GtkWidget *
build_list (Dialog *dialog)
{
  dialog->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (dialog->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (dialog->list), "tm-choices");
  tm_name_widget (GTK_WIDGET (dialog->list), g_dgettext (GETTEXT_PACKAGE, dialog->kind->title));
  tm_list_tab_leaves (dialog->list);
  g_signal_connect (dialog->list, "row-activated", G_CALLBACK (activated_cb), dialog);
  return tm_view_scroller_new (GTK_WIDGET (dialog->list));
}

static GtkWidget *
build_empty (const Kind *kind)
{
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_title (ADW_STATUS_PAGE (page), g_dgettext (GETTEXT_PACKAGE, kind->none));
  adw_status_page_set_description (ADW_STATUS_PAGE (page), g_dgettext (GETTEXT_PACKAGE, kind->advice));
  return page;
}

static GtkWidget *
build (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *header = adw_header_bar_new ();
  GtkWidget *add = tm_button_new (_ ("_Add…"));

  gtk_widget_add_css_class (add, "suggested-action");
  adw_header_bar_pack_start (ADW_HEADER_BAR (header), add);
  g_signal_connect_swapped (add, "clicked", G_CALLBACK (add_cb), dialog);
  dialog->stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (dialog->stack, build_list (dialog), "list");
  gtk_stack_add_named (dialog->stack, build_empty (dialog->kind), "empty");
  gtk_box_append (GTK_BOX (box), header);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->stack));
  gtk_window_set_focus (dialog->window, add);
  return box;
}

static void
focus_row (Dialog *dialog, gconstpointer row)
{
  GtkListBoxRow *widget;

  for (int i = 0; (widget = gtk_list_box_get_row_at_index (dialog->list, i)) != NULL; i++)
    if (g_object_get_data (G_OBJECT (widget), "row") == row)
      gtk_window_set_focus (dialog->window, GTK_WIDGET (widget));
}

static GtkWindow *
present (GtkWidget *any_child, TmDocument *document, const Kind *kind, gconstpointer focus)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->kind = kind;
  dialog->document = g_object_ref (document);
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, g_dgettext (GETTEXT_PACKAGE, kind->title));
  gtk_window_set_default_size (dialog->window, WIDTH, HEIGHT);
  adw_window_set_content (ADW_WINDOW (dialog->window), build (dialog));
  tm_dialog_attach (dialog->window, any_child);
  fill (dialog);
  if (focus != NULL)
    focus_row (dialog, focus);
  dialog->changed_id = g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (fill), dialog);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  gtk_window_present (dialog->window);
  return dialog->window;
}

GtkWindow *
tm_supplies_dialog_present (GtkWidget *any_child, TmDocument *document, const TmSupply *focus)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  return present (any_child, document, &supplies, focus);
}

GtkWindow *
tm_sub_parts_dialog_present (GtkWidget *any_child, TmDocument *document, const TmSubPart *focus)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  return present (any_child, document, &sub_parts, focus);
}
