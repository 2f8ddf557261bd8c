/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-events-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-event-dialog.h"
#include "app-event-words.h"
#include "app-list-row.h"

/* Pixels. */
#define WIDTH  620
#define HEIGHT 520

typedef struct {
  TmDocument *document;
  GtkWindow *window;
  GtkListBox *list;
  GtkStack *stack;
  gulong changed_id;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_clear_signal_handler (&dialog->changed_id, dialog->document);
  g_object_unref (dialog->document);
  g_free (dialog);
}

/* Of each piece its place in the order made, by serial. */
static GHashTable *
rank_pieces (const TmJob *job)
{
  GHashTable *ranks = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < job->pieces->len; i++)
    g_hash_table_insert (ranks, (gpointer)((const TmPiece *)g_ptr_array_index (job->pieces, i))->serial,
                         GUINT_TO_POINTER (i));
  return ranks;
}

/* In the order of the pieces; one of a piece that is not there, and after the last, stands last. */
static guint
find_rank (GHashTable *ranks, const TmEvent *event)
{
  gpointer rank;

  return g_hash_table_lookup_extended (ranks, event->before_piece, NULL, &rank) ? GPOINTER_TO_UINT (rank)
                                                                                : G_MAXUINT;
}

typedef struct {
  TmEvent *event;
  guint rank, order;
} Ranked;

static int
compare_cb (gconstpointer a, gconstpointer b)
{
  const Ranked *one = a, *other = b;

  if (one->rank != other->rank)
    return one->rank < other->rank ? -1 : 1;
  return one->order < other->order ? -1 : one->order > other->order;
}

static GtkWidget *
build_row (const TmJob *job, TmEvent *event)
{
  g_autofree char *what = tm_words_event (job, event);
  g_autofree char *details = tm_words_event_details (job, event);
  g_autofree char *sentence = g_strdup_printf ("%s, %s", what, details);
  GtkWidget *row = tm_list_row_new (what, details, "", sentence, "");

  g_object_set_data (G_OBJECT (row), "event", event);
  return row;
}

static void
fill (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);
  g_autoptr (GHashTable) ranks = rank_pieces (job);
  g_autoptr (GArray) ranked = g_array_new (FALSE, FALSE, sizeof (Ranked));
  gboolean focused = tm_list_clear (dialog->list);

  for (guint i = 0; i < job->events->len; i++)
    {
      TmEvent *event = g_ptr_array_index (job->events, i);
      const Ranked one = { event, find_rank (ranks, event), i };

      g_array_append_val (ranked, one);
    }
  g_array_sort (ranked, compare_cb);
  for (guint i = 0; i < ranked->len; i++)
    gtk_list_box_append (dialog->list, build_row (job, g_array_index (ranked, Ranked, i).event));
  tm_access_show_page (dialog->stack, ranked->len > 0 ? "list" : "empty");
  if (focused && ranked->len > 0)
    gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (dialog->list, 0)));
}

static void
activated_cb (GtkListBox *list, GtkListBoxRow *row, Dialog *dialog)
{
  TmEvent *event = g_object_get_data (G_OBJECT (row), "event");

  if (g_ptr_array_find (tm_document_job (dialog->document)->events, event, NULL))
    tm_event_dialog_present (GTK_WIDGET (dialog->window), dialog->document, event);
}

static void
add_cb (Dialog *dialog)
{
  tm_event_dialog_present_new (GTK_WIDGET (dialog->window), dialog->document, NULL);
}

static GtkWidget *
build_list (Dialog *dialog)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  dialog->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (dialog->list, GTK_SELECTION_NONE);
  gtk_widget_add_css_class (GTK_WIDGET (dialog->list), "tm-choices");
  tm_name_widget (GTK_WIDGET (dialog->list), _ ("Events"));
  tm_list_tab_leaves (dialog->list);
  g_signal_connect (dialog->list, "row-activated", G_CALLBACK (activated_cb), dialog);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (dialog->list));
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static GtkWidget *
build_empty (void)
{
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No event yet"));
  adw_status_page_set_description (ADW_STATUS_PAGE (page),
                                   _ ("Add a new tool or insert, an offset or a new material lot when it "
                                      "happens: drift is then looked for from there on."));
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
  gtk_stack_add_named (dialog->stack, build_empty (), "empty");
  gtk_box_append (GTK_BOX (box), header);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->stack));
  gtk_window_set_focus (dialog->window, add);
  return box;
}

GtkWindow *
tm_events_dialog_present (GtkWidget *any_child, TmDocument *document)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->document = g_object_ref (document);
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, _ ("Events between pieces"));
  gtk_window_set_default_size (dialog->window, WIDTH, HEIGHT);
  adw_window_set_content (ADW_WINDOW (dialog->window), build (dialog));
  tm_dialog_attach (dialog->window, any_child);
  fill (dialog);
  dialog->changed_id = g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (fill), dialog);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  gtk_window_present (dialog->window);
  return dialog->window;
}
