/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-home.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-book-item.h"
#include "app-dialog.h"
#include "app-home-columns.h"
#include "app-welcome.h"

/* More rows than a screen of 1080 pixels shows. */
#define FIRST_ROWS 26

struct _TmHome {
  AdwBin parent_instance;

  TmBook *book; /* borrowed; NULL when it cannot be opened */
  GListStore *items;
  GtkFilter *filter;
  char *folded;    /* what is searched for, case-folded */
  GPtrArray *rest; /* TmBookItem that the list gets after the first drawing */
  guint rest_id;

  GtkStack *stack;
  GtkLabel *count_label;
  GtkEditable *search_entry;
  GtkColumnView *view;
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

/* The page for an empty book is made when the book is empty: most starts do without it. */
static void
show_welcome (TmHome *self)
{
  if (gtk_stack_get_child_by_name (self->stack, "empty") == NULL)
    gtk_stack_add_named (self->stack, tm_welcome_new (), "empty");
  tm_access_show_page (self->stack, "empty");
}

static gboolean
show_rest_cb (gpointer data)
{
  TmHome *self = data;

  self->rest_id = 0;
  g_list_store_splice (self->items, g_list_model_get_n_items (G_LIST_MODEL (self->items)), 0,
                       self->rest->pdata, self->rest->len);
  g_clear_pointer (&self->rest, g_ptr_array_unref);
  return G_SOURCE_REMOVE;
}

static void
forget_rest (TmHome *self)
{
  g_clear_handle_id (&self->rest_id, g_source_remove);
  g_clear_pointer (&self->rest, g_ptr_array_unref);
}

/* The list makes widgets for every row it is given, seen or not: the first drawing is of what a
 * screen holds, and the rest comes after it. */
static void
show_entries (TmHome *self, GPtrArray *entries)
{
  guint n_first = gtk_widget_get_mapped (GTK_WIDGET (self)) ? entries->len : MIN (entries->len, FIRST_ROWS);
  g_autoptr (GPtrArray) first = g_ptr_array_new_with_free_func (g_object_unref);
  g_autofree char *count = g_strdup_printf (ngettext ("%u job", "%u jobs", entries->len), entries->len);

  forget_rest (self);
  self->rest = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < entries->len; i++)
    g_ptr_array_add (i < n_first ? first : self->rest, tm_book_item_new (g_ptr_array_index (entries, i)));
  g_list_store_splice (self->items, 0, g_list_model_get_n_items (G_LIST_MODEL (self->items)), first->pdata,
                       first->len);
  if (self->rest->len > 0)
    self->rest_id = g_idle_add_full (G_PRIORITY_LOW, show_rest_cb, self, NULL);
  gtk_label_set_text (self->count_label, count);
  if (entries->len > 0)
    tm_access_show_page (self->stack, "list");
  else
    show_welcome (self);
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
    gtk_widget_grab_focus (gtk_stack_get_visible_child (self->stack));
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
  forget_rest (self);
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
  gtk_widget_class_bind_template_child (klass, TmHome, book_problem_label);
  gtk_widget_class_bind_template_callback (klass, activate_cb);
  gtk_widget_class_bind_template_callback (klass, search_changed_cb);
  gtk_widget_class_bind_template_callback (klass, search_activate_cb);
}

static void
tm_home_class_init (TmHomeClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_home_dispose;
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
