/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-home.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-book-item.h"
#include "app-dialog.h"
#include "app-files.h"
#include "app-first-job.h"
#include "app-home-columns.h"
#include "app-new-job.h"
#include "app-toast.h"

struct _TmHome {
  AdwBin parent_instance;

  TmBook *book; /* borrowed; NULL when it cannot be opened */
  GListStore *items;
  GtkFilter *filter;
  char *folded; /* what is searched for, case-folded */

  GtkStack *stack;
  GtkLabel *count_label;
  GtkEditable *search_entry;
  GtkColumnView *view;
  TmFirstJob *first_job;
  GtkLabel *problem_label;
  GtkWidget *samples_box;
  GtkListBox *samples_list;
  GtkLabel *book_problem_label;
};

G_DEFINE_FINAL_TYPE (TmHome, tm_home, ADW_TYPE_BIN)

static gboolean
matches_search (gpointer item, gpointer data)
{
  TmHome *self = data;

  return self->folded == NULL || tm_book_item_matches (item, self->folded);
}

static void
search_changed_cb (TmHome *self)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (self->search_entry)));

  g_free (self->folded);
  self->folded = g_utf8_casefold (text, -1);
  gtk_filter_changed (self->filter, GTK_FILTER_CHANGE_DIFFERENT);
}

static void
open_position (TmHome *self, guint position)
{
  g_autoptr (TmBookItem) item
      = g_list_model_get_item (G_LIST_MODEL (gtk_column_view_get_model (self->view)), position);

  if (item != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self), "win.open-job", "s", tm_book_item_entry (item)->id);
}

static void
activate_cb (TmHome *self, guint position)
{
  open_position (self, position);
}

/* Enter in the search opens the first job that is left. */
static void
search_activate_cb (TmHome *self)
{
  open_position (self, 0);
}

static void
begun_cb (TmHome *self, TmFirstJob *form)
{
  TmWindow *window = TM_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  g_autofree char *problem = NULL;

  if (tm_new_job_from_form (window, form, &problem))
    tm_dialog_problem_set (self->problem_label, NULL);
  else
    tm_dialog_problem_set (self->problem_label, problem);
}

static void
sample_activated_cb (TmHome *self, GtkListBoxRow *row)
{
  const char *path = g_object_get_data (G_OBJECT (row), "path");

  gtk_widget_activate_action (GTK_WIDGET (self), "win.import", "s", path);
}

/* "bearing-housing.tmjob" is shown as "bearing housing". */
static char *
sample_title (const char *path)
{
  char *name = g_filename_display_basename (path);
  char *dot = strrchr (name, '.');

  if (dot != NULL)
    *dot = '\0';
  name = g_strdelimit (name, "-_", ' ');
  if (g_ascii_islower (*name))
    *name = g_ascii_toupper (*name);
  return name;
}

static void
add_sample (TmHome *self, const char *path)
{
  g_autofree char *title = sample_title (path);
  GtkWidget *row = adw_action_row_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), gtk_image_new_from_icon_name ("go-next-symbolic"));
  tm_access_hide_pictures (row);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_object_set_data_full (G_OBJECT (row), "path", g_strdup (path), g_free);
  gtk_list_box_append (self->samples_list, row);
}

/* Only once, and only when there is nothing else to show. */
static void
list_samples (TmHome *self)
{
  g_autoptr (GPtrArray) paths = NULL;

  if (gtk_list_box_get_row_at_index (self->samples_list, 0) != NULL)
    return;
  paths = tm_files_samples ();
  for (guint i = 0; i < paths->len; i++)
    add_sample (self, g_ptr_array_index (paths, i));
  gtk_widget_set_visible (self->samples_box, paths->len > 0);
}

static void
show_entries (TmHome *self, GPtrArray *entries)
{
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *count = NULL;

  for (guint i = 0; i < entries->len; i++)
    g_ptr_array_add (items, tm_book_item_new (g_ptr_array_index (entries, i)));
  g_list_store_splice (self->items, 0, g_list_model_get_n_items (G_LIST_MODEL (self->items)), items->pdata,
                       items->len);
  count = g_strdup_printf (ngettext ("%u job", "%u jobs", entries->len), entries->len);
  gtk_label_set_text (self->count_label, count);
  if (entries->len == 0)
    list_samples (self);
  tm_access_show_page (self->stack, entries->len > 0 ? "list" : "empty");
}

static void
show_problem (TmHome *self, const char *problem)
{
  gtk_label_set_text (self->book_problem_label, problem);
  tm_access_show_page (self->stack, "problem");
}

void
tm_home_refresh (TmHome *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) entries = NULL;

  g_return_if_fail (TM_IS_HOME (self));

  if (self->book == NULL)
    return;
  entries = tm_book_list (self->book, &error);
  if (entries == NULL)
    {
      show_problem (self, error->message);
      return;
    }
  /* The items own the entries from here on. */
  g_ptr_array_set_free_func (entries, NULL);
  show_entries (self, entries);
}

void
tm_home_set_book (TmHome *self, TmBook *book, const char *problem)
{
  g_return_if_fail (TM_IS_HOME (self));

  self->book = book;
  if (book == NULL)
    show_problem (self, problem != NULL ? problem : "");
  else
    tm_home_refresh (self);
}

void
tm_home_enter (TmHome *self)
{
  const char *state;

  g_return_if_fail (TM_IS_HOME (self));

  state = gtk_stack_get_visible_child_name (self->stack);
  if (g_strcmp0 (state, "empty") == 0)
    gtk_widget_grab_focus (GTK_WIDGET (self->first_job));
  else if (g_strcmp0 (state, "list") == 0)
    gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

static void
build_model (TmHome *self)
{
  GtkSorter *sorter = g_object_ref (gtk_column_view_get_sorter (self->view));
  GtkFilterListModel *filtered;
  GtkSortListModel *sorted;
  g_autoptr (GtkSingleSelection) selection = NULL;

  self->items = g_list_store_new (TM_TYPE_BOOK_ITEM);
  self->filter = GTK_FILTER (gtk_custom_filter_new (matches_search, self, NULL));
  filtered
      = gtk_filter_list_model_new (G_LIST_MODEL (g_object_ref (self->items)), g_object_ref (self->filter));
  sorted = gtk_sort_list_model_new (G_LIST_MODEL (filtered), sorter);
  selection = gtk_single_selection_new (G_LIST_MODEL (sorted));
  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (selection));
}

static void
tm_home_dispose (GObject *object)
{
  TmHome *self = TM_HOME (object);

  if (self->view != NULL)
    gtk_column_view_set_model (self->view, NULL);
  g_clear_object (&self->filter);
  g_clear_object (&self->items);
  g_clear_pointer (&self->folded, g_free);
  /* Disposing of the template unparents the stack, which the bin would do once more. */
  adw_bin_set_child (ADW_BIN (self), NULL);
  gtk_widget_dispose_template (GTK_WIDGET (self), TM_TYPE_HOME);
  G_OBJECT_CLASS (tm_home_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, TmHome, stack);
  gtk_widget_class_bind_template_child (klass, TmHome, count_label);
  gtk_widget_class_bind_template_child (klass, TmHome, search_entry);
  gtk_widget_class_bind_template_child (klass, TmHome, view);
  gtk_widget_class_bind_template_child (klass, TmHome, first_job);
  gtk_widget_class_bind_template_child (klass, TmHome, problem_label);
  gtk_widget_class_bind_template_child (klass, TmHome, samples_box);
  gtk_widget_class_bind_template_child (klass, TmHome, samples_list);
  gtk_widget_class_bind_template_child (klass, TmHome, book_problem_label);
  gtk_widget_class_bind_template_callback (klass, activate_cb);
  gtk_widget_class_bind_template_callback (klass, search_changed_cb);
  gtk_widget_class_bind_template_callback (klass, search_activate_cb);
  gtk_widget_class_bind_template_callback (klass, begun_cb);
  gtk_widget_class_bind_template_callback (klass, sample_activated_cb);
}

static void
tm_home_class_init (TmHomeClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_home_dispose;
  g_type_ensure (TM_TYPE_FIRST_JOB);
  gtk_widget_class_set_template_from_resource (GTK_WIDGET_CLASS (klass), "/org/tenthmark/Tenthmark/home.ui");
  bind_children (GTK_WIDGET_CLASS (klass));
}

static void
tm_home_init (TmHome *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tm_name_entry (self->search_entry, _ ("Search the jobs"));
  tm_access_name_column_view (self->view, _ ("Jobs"));
  tm_home_add_columns (self->view);
  build_model (self);
}

GtkWidget *
tm_home_new (void)
{
  return g_object_new (TM_TYPE_HOME, NULL);
}
