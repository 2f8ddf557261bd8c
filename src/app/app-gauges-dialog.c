/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauges-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-form.h"
#include "app-gauge-form.h"
#include "app-method-form.h"
#include "app-words.h"

typedef struct {
  TmDocument *document;
  GtkWindow *window;
  GtkStack *stack;
  GtkWidget *back;
  GtkWidget *save;
  GtkWidget *remove;
  GtkLabel *problem;

  AdwPreferencesGroup *gauges;
  AdwPreferencesGroup *methods;
  GPtrArray *gauge_rows; /* owned by the groups */
  GPtrArray *method_rows;

  TmGaugeForm gauge_form;
  TmMethodForm method_form;
  char *editing; /* tag or name of what is being changed; NULL: a new one */
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_ptr_array_unref (dialog->gauge_rows);
  g_ptr_array_unref (dialog->method_rows);
  g_free (dialog->editing);
  tm_gauge_form_clear (&dialog->gauge_form);
  g_free (dialog);
}

static gboolean
is_editing_gauge (Dialog *dialog)
{
  return g_str_equal (gtk_stack_get_visible_child_name (dialog->stack), "gauge");
}

/* @page: "list", "gauge" or "method". */
static void
show_page (Dialog *dialog, const char *page, const char *editing)
{
  gboolean in_list = g_str_equal (page, "list");

  g_free (dialog->editing);
  dialog->editing = g_strdup (editing);
  gtk_stack_set_visible_child_name (dialog->stack, page);
  gtk_widget_set_visible (dialog->back, !in_list);
  gtk_widget_set_visible (dialog->save, !in_list);
  gtk_widget_set_visible (dialog->remove, !in_list && editing != NULL);
  tm_dialog_problem_set (dialog->problem, NULL);
  gtk_widget_child_focus (gtk_stack_get_visible_child (dialog->stack), GTK_DIR_TAB_FORWARD);
}

static void
back_cb (Dialog *dialog)
{
  show_page (dialog, "list", NULL);
}

static void
edit_gauge (Dialog *dialog, const char *tag)
{
  const TmJob *job = tm_document_job (dialog->document);

  tm_gauge_form_fill (&dialog->gauge_form, tag != NULL ? tm_job_find_gauge (job, tag) : NULL, job->unit,
                      FALSE);
  show_page (dialog, "gauge", tag);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->gauge_form.tag));
}

static void
edit_method (Dialog *dialog, const char *name)
{
  const TmJob *job = tm_document_job (dialog->document);

  tm_method_form_fill (&dialog->method_form, job, name != NULL ? tm_job_find_method (job, name) : NULL);
  show_page (dialog, "method", name);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->method_form.name));
}

static void
add_gauge_cb (Dialog *dialog)
{
  edit_gauge (dialog, NULL);
}

static void
add_method_cb (Dialog *dialog)
{
  edit_method (dialog, NULL);
}

static void
gauge_row_cb (AdwActionRow *row, Dialog *dialog)
{
  edit_gauge (dialog, g_object_get_data (G_OBJECT (row), "name"));
}

static void
method_row_cb (AdwActionRow *row, Dialog *dialog)
{
  edit_method (dialog, g_object_get_data (G_OBJECT (row), "name"));
}

static void
add_row (AdwPreferencesGroup *group, GPtrArray *rows, const char *name, const char *about,
         GCallback activated_cb, Dialog *dialog)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *title = g_markup_escape_text (name, -1);
  g_autofree char *subtitle = g_markup_escape_text (about, -1);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), gtk_image_new_from_icon_name ("go-next-symbolic"));
  tm_access_hide_decoration (row);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_object_set_data_full (G_OBJECT (row), "name", g_strdup (name), g_free);
  g_signal_connect (row, "activated", activated_cb, dialog);
  adw_preferences_group_add (group, row);
  g_ptr_array_add (rows, row);
}

/* "bore micrometer, 0.001 mm, error within ±0.002 mm, due 2027-03-01" */
static char *
describe_gauge (const TmGauge *gauge)
{
  g_autofree char *resolution = tm_words_quantity (&gauge->resolution);
  g_autofree char *error_limit = tm_words_quantity (&gauge->error_limit);
  GString *text = g_string_new (gauge->kind);

  if (gauge->resolution.given)
    g_string_append_printf (text, _ (", reads %s"), resolution);
  if (gauge->error_limit.given)
    g_string_append_printf (text, _ (", error within ±%s"), error_limit);
  if (*gauge->due != '\0')
    g_string_append_printf (text, _ (", due %s"), gauge->due);
  else
    g_string_append (text, _ (", no due date"));
  if (g_str_has_prefix (text->str, ", "))
    g_string_erase (text, 0, 2);
  return g_string_free (text, FALSE);
}

static char *
describe_method (const TmMethod *method)
{
  const char *first = method->gauges->len > 0 ? g_ptr_array_index (method->gauges, 0) : "";

  if (method->gauges->len > 1)
    return g_strdup_printf (_ ("%s, read with %s"), first, (char *)g_ptr_array_index (method->gauges, 1));
  return g_strdup (first);
}

static void
drop_rows (AdwPreferencesGroup *group, GPtrArray *rows)
{
  for (guint i = 0; i < rows->len; i++)
    adw_preferences_group_remove (group, g_ptr_array_index (rows, i));
  g_ptr_array_set_size (rows, 0);
}

static void
refresh (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);

  drop_rows (dialog->gauges, dialog->gauge_rows);
  drop_rows (dialog->methods, dialog->method_rows);
  for (guint i = 0; i < job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (job->gauges, i);
      g_autofree char *about = describe_gauge (gauge);

      add_row (dialog->gauges, dialog->gauge_rows, gauge->tag, about, G_CALLBACK (gauge_row_cb), dialog);
    }
  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);
      g_autofree char *about = describe_method (method);

      add_row (dialog->methods, dialog->method_rows, method->name, about, G_CALLBACK (method_row_cb), dialog);
    }
}

static gboolean
save_gauge (Dialog *dialog, char **problem, GError **error)
{
  TmJob *job = tm_document_job (dialog->document);
  const TmGauge *old = dialog->editing != NULL ? tm_job_find_gauge (job, dialog->editing) : NULL;
  TmGauge *gauge = tm_gauge_form_read (&dialog->gauge_form, job, old, problem);

  return gauge != NULL && tm_edit_put_gauge (dialog->document, dialog->editing, gauge, error);
}

static gboolean
save_method (Dialog *dialog, char **problem, GError **error)
{
  TmJob *job = tm_document_job (dialog->document);
  const TmMethod *old = dialog->editing != NULL ? tm_job_find_method (job, dialog->editing) : NULL;
  TmMethod *method = tm_method_form_read (&dialog->method_form, job, old, problem);

  return method != NULL && tm_edit_put_method (dialog->document, dialog->editing, method, error);
}

static void
save_cb (Dialog *dialog)
{
  g_autofree char *problem = NULL;
  g_autoptr (GError) error = NULL;
  gboolean saved = is_editing_gauge (dialog) ? save_gauge (dialog, &problem, &error)
                                             : save_method (dialog, &problem, &error);

  if (!saved)
    {
      tm_dialog_problem_set (dialog->problem, problem != NULL ? problem : error->message);
      return;
    }
  refresh (dialog);
  show_page (dialog, "list", NULL);
}

static void
remove_cb (Dialog *dialog)
{
  g_autoptr (GError) error = NULL;
  gboolean removed = is_editing_gauge (dialog)
                         ? tm_edit_remove_gauge (dialog->document, dialog->editing, &error)
                         : tm_edit_remove_method (dialog->document, dialog->editing, &error);

  if (!removed)
    {
      tm_dialog_problem_set (dialog->problem, error->message);
      return;
    }
  refresh (dialog);
  show_page (dialog, "list", NULL);
}

static GtkWidget *
new_button (Dialog *dialog, const char *label, GCallback clicked_cb)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (button, "clicked", clicked_cb, dialog);
  return button;
}

static GtkWidget *
build_header (Dialog *dialog)
{
  GtkWidget *header = adw_header_bar_new ();

  dialog->back = new_button (dialog, _ ("_Back"), G_CALLBACK (back_cb));
  dialog->save = new_button (dialog, _ ("_Save"), G_CALLBACK (save_cb));
  dialog->remove = new_button (dialog, _ ("_Remove"), G_CALLBACK (remove_cb));
  gtk_widget_add_css_class (dialog->save, "suggested-action");
  adw_header_bar_pack_start (ADW_HEADER_BAR (header), dialog->back);
  adw_header_bar_pack_end (ADW_HEADER_BAR (header), dialog->save);
  adw_header_bar_pack_end (ADW_HEADER_BAR (header), dialog->remove);
  return header;
}

/* A scrolled page of the stack; returns the box for its rows. */
static GtkBox *
add_page (Dialog *dialog, const char *name)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);

  gtk_widget_add_css_class (box, "tm-dialog");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_stack_add_named (dialog->stack, scroller, name);
  return GTK_BOX (box);
}

static void
build_list (Dialog *dialog)
{
  GtkBox *box = add_page (dialog, "list");

  dialog->gauges
      = tm_form_group (box, _ ("Gauges"), _ ("Each instrument with what its calibration says of it."));
  dialog->methods = tm_form_group (box, _ ("Methods"),
                                   _ ("How a size is taken. A single gauge can be named without a method."));
  adw_preferences_group_set_header_suffix (
      dialog->gauges, new_button (dialog, _ ("Add a _gauge…"), G_CALLBACK (add_gauge_cb)));
  adw_preferences_group_set_header_suffix (
      dialog->methods, new_button (dialog, _ ("Add a _method…"), G_CALLBACK (add_method_cb)));
}

/* Enter in a row saves. */
static void
connect_rows (Dialog *dialog)
{
  AdwEntryRow *rows[]
      = { dialog->method_form.name, dialog->method_form.repeatability, dialog->method_form.dof };

  tm_gauge_form_connect (&dialog->gauge_form, G_CALLBACK (save_cb), dialog);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_signal_connect_swapped (rows[i], "entry-activated", G_CALLBACK (save_cb), dialog);
}

static GtkWidget *
build_content (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  dialog->problem = tm_dialog_problem_new ();
  dialog->stack = GTK_STACK (gtk_stack_new ());
  gtk_widget_set_vexpand (GTK_WIDGET (dialog->stack), TRUE);
  build_list (dialog);
  tm_gauge_form_build (&dialog->gauge_form, add_page (dialog, "gauge"));
  tm_method_form_build (&dialog->method_form, add_page (dialog, "method"));
  connect_rows (dialog);
  gtk_box_append (GTK_BOX (box), build_header (dialog));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->stack));
  return box;
}

void
tm_gauges_dialog_present (GtkWidget *any_child, TmDocument *document)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->document = g_object_ref (document);
  dialog->gauge_rows = g_ptr_array_new ();
  dialog->method_rows = g_ptr_array_new ();
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, _ ("Gauges and methods"));
  gtk_window_set_default_size (dialog->window, 560, 660);
  adw_window_set_content (ADW_WINDOW (dialog->window), build_content (dialog));
  tm_dialog_attach (dialog->window, any_child);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  refresh (dialog);
  show_page (dialog, "list", NULL);
  gtk_window_present (dialog->window);
}
