/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A long list in a list view: what fills a window is there at once, the rest follows, in order and whole.
 */

#include <gtk/gtk.h>

#include "app-growing-list.h"
#include "methods-support.h"

#define N_ITEMS 1000

typedef struct {
  GtkStringList *model;
  TmGrowingList *list;
  GtkWidget *window, *view;
} Fixture;

static void
add_items (GtkStringList *model, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *text = g_strdup_printf ("%u", i);

      gtk_string_list_append (model, text);
    }
}

static guint
count (Fixture *fixture)
{
  return g_list_model_get_n_items (G_LIST_MODEL (fixture->list));
}

static Fixture
open_list (guint n)
{
  Fixture fixture = { .model = gtk_string_list_new (NULL), .window = gtk_window_new () };
  GtkWidget *scroller = gtk_scrolled_window_new ();

  add_items (fixture.model, n);
  fixture.list = tm_growing_list_new (g_object_ref (G_LIST_MODEL (fixture.model)));
  fixture.view = gtk_list_view_new (
      GTK_SELECTION_MODEL (gtk_no_selection_new (g_object_ref (G_LIST_MODEL (fixture.list)))),
      gtk_signal_list_item_factory_new ());
  tm_growing_list_follow (fixture.list, fixture.view);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), fixture.view);
  gtk_window_set_child (GTK_WINDOW (fixture.window), scroller);
  return fixture;
}

static void
close_list (Fixture *fixture)
{
  gtk_window_destroy (GTK_WINDOW (fixture->window));
  g_assert_finalize_object (fixture->list);
  g_assert_finalize_object (fixture->model);
}

static void
test_grows (void)
{
  Fixture fixture = open_list (N_ITEMS);

  g_assert_cmpuint (count (&fixture), >, 0);
  g_assert_cmpuint (count (&fixture), <, N_ITEMS / 10);
  gtk_window_present (GTK_WINDOW (fixture.window));
  ui_wait_until (count (&fixture) == N_ITEMS);
  for (guint i = 0; i < N_ITEMS; i += 37)
    {
      g_autoptr (GtkStringObject) item = g_list_model_get_item (G_LIST_MODEL (fixture.list), i);
      g_autofree char *text = g_strdup_printf ("%u", i);

      g_assert_cmpstr (gtk_string_object_get_string (item), ==, text);
    }
  g_assert_null (g_list_model_get_item (G_LIST_MODEL (fixture.list), N_ITEMS));
  close_list (&fixture);
}

/* What changes while rows are missing, or once all are there, is shown as it is now. */
static void
test_changes (void)
{
  Fixture fixture = open_list (N_ITEMS);

  gtk_string_list_splice (fixture.model, 0, N_ITEMS, (const char *const[]) { "only", NULL });
  g_assert_cmpuint (count (&fixture), ==, 1);
  add_items (fixture.model, N_ITEMS);
  gtk_window_present (GTK_WINDOW (fixture.window));
  ui_wait_until (count (&fixture) == N_ITEMS + 1);
  gtk_string_list_splice (fixture.model, 0, N_ITEMS + 1, NULL);
  g_assert_cmpuint (count (&fixture), ==, 0);
  close_list (&fixture);
}

/* A key may choose all or go to the end: then all are there.  The key itself is the journeys' business. */
static void
test_key (void)
{
  Fixture fixture = open_list (N_ITEMS);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (fixture.view);
  gboolean found = FALSE, taken = TRUE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (!GTK_IS_EVENT_CONTROLLER_KEY (controller))
        continue;
      found = TRUE;
      g_signal_emit_by_name (controller, "key-pressed", GDK_KEY_End, 0, 0, &taken);
    }
  g_assert_true (found);
  g_assert_false (taken);
  g_assert_cmpuint (count (&fixture), ==, N_ITEMS);
  close_list (&fixture);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/growing-list/grows", test_grows);
  g_test_add_func ("/growing-list/changes", test_changes);
  g_test_add_func ("/growing-list/key", test_key);
  return g_test_run ();
}
