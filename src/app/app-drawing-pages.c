/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-drawing-pages.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-drawing-picture.h"

/* Pixels. */
#define WIDTH  760
#define HEIGHT 520
/* A file with more pages is hardly a set of drawings: only its first page is proposed. */
#define MOST_PROPOSED 12
/* As many as anybody goes through; those beyond are asked for by their number. */
#define MOST_LISTED 500

typedef struct {
  GtkWidget *parent;
  GtkWindow *window;
  GtkListBox *list;
  TmDrawingPicture *picture;
  GtkWidget *add;
  GtkEditable *number; /* of a page beyond those listed, or NULL */
  GtkLabel *problem;
  GBytes *content;
  guint n_pages;
  TmPagesChosen chosen;
  gpointer data;
  GDestroyNotify free_data;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  if (dialog->free_data != NULL)
    dialog->free_data (dialog->data);
  g_object_unref (dialog->parent);
  g_bytes_unref (dialog->content);
  g_free (dialog);
}

static GtkCheckButton *
check_of (GtkListBoxRow *row)
{
  return GTK_CHECK_BUTTON (gtk_list_box_row_get_child (row));
}

static guint
page_of (GtkListBoxRow *row)
{
  return GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (check_of (row)), "page"));
}

static GArray *
read_pages (Dialog *dialog)
{
  GArray *pages = g_array_new (FALSE, FALSE, sizeof (guint));
  GtkListBoxRow *row;

  for (int i = 0; (row = gtk_list_box_get_row_at_index (dialog->list, i)) != NULL; i++)
    {
      guint page = page_of (row);

      if (gtk_check_button_get_active (check_of (row)))
        g_array_append_val (pages, page);
    }
  return pages;
}

static void
toggled_cb (Dialog *dialog)
{
  g_autoptr (GArray) pages = read_pages (dialog);
  g_autofree char *label
      = g_strdup_printf (ngettext ("_Add %u drawing", "_Add %u drawings", pages->len), pages->len);

  tm_button_set_label (dialog->add, label);
  gtk_widget_set_sensitive (dialog->add, pages->len > 0);
}

static void
selected_cb (GtkListBox *list, GtkListBoxRow *row, Dialog *dialog)
{
  g_autofree char *name = NULL;
  guint page;

  /* While the window is taken apart nothing is chosen any more. */
  if (row == NULL)
    return;
  page = page_of (row);
  name = g_strdup_printf (_ ("Page %u"), page);
  tm_drawing_picture_show (dialog->picture, dialog->content, page, name);
}

/* Enter, or a second click: as the space bar. */
static void
activated_cb (GtkListBox *list, GtkListBoxRow *row, Dialog *dialog)
{
  gtk_check_button_set_active (check_of (row), !gtk_check_button_get_active (check_of (row)));
}

static void
add_row (Dialog *dialog, guint page, int at, gboolean chosen)
{
  g_autofree char *label = g_strdup_printf (_ ("Page %u"), page);
  GtkWidget *check = gtk_check_button_new_with_label (label);

  g_object_set_data (G_OBJECT (check), "page", GUINT_TO_POINTER (page));
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), chosen);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (toggled_cb), dialog);
  gtk_list_box_insert (dialog->list, check, at);
}

/* -------- A page by its number -------- */

/* The row of @page; one that is not listed gets its row in its place. */
static GtkListBoxRow *
find_row (Dialog *dialog, guint page)
{
  GtkListBoxRow *row;
  int at = (int)MIN (page, MOST_LISTED) - 1;

  while ((row = gtk_list_box_get_row_at_index (dialog->list, at)) != NULL && page_of (row) < page)
    at++;
  if (row == NULL || page_of (row) != page)
    add_row (dialog, page, at, FALSE);
  return gtk_list_box_get_row_at_index (dialog->list, at);
}

/* FALSE, and said, when what is typed is no page. */
static gboolean
take_number (Dialog *dialog)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (dialog->number)));
  g_autofree char *problem
      = g_strdup_printf (_ ("This is no page of it; type a number from 1 to %u."), dialog->n_pages);
  GtkListBoxRow *row;
  guint64 page;

  if (!g_ascii_string_to_unsigned (text, 10, 1, dialog->n_pages, &page, NULL))
    {
      tm_dialog_problem_set (dialog->problem, problem);
      return FALSE;
    }
  tm_dialog_problem_set (dialog->problem, NULL);
  gtk_editable_set_text (dialog->number, "");
  row = find_row (dialog, (guint)page);
  gtk_check_button_set_active (check_of (row), TRUE);
  gtk_list_box_select_row (dialog->list, row);
  gtk_widget_grab_focus (GTK_WIDGET (row));
  return TRUE;
}

static void
number_cb (Dialog *dialog)
{
  take_number (dialog);
}

/* A number that was typed and not entered is not lost. */
static gboolean
number_is_taken (Dialog *dialog)
{
  return dialog->number == NULL || *gtk_editable_get_text (dialog->number) == '\0' || take_number (dialog);
}

static GtkWidget *
build_number (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  g_autofree char *text = g_strdup_printf (
      _ ("The first %u of %u pages are listed. Type the number of another:"), MOST_LISTED, dialog->n_pages);
  GtkWidget *label = gtk_label_new (text);

  dialog->number = GTK_EDITABLE (gtk_entry_new ());
  dialog->problem = tm_dialog_problem_new ();
  gtk_label_set_max_width_chars (dialog->problem, 16);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_width_chars (GTK_LABEL (label), 16);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 16);
  gtk_editable_set_width_chars (dialog->number, 8);
  gtk_entry_set_input_purpose (GTK_ENTRY (dialog->number), GTK_INPUT_PURPOSE_DIGITS);
  tm_name_entry (dialog->number, _ ("Number of a page"));
  g_signal_connect_swapped (dialog->number, "activate", G_CALLBACK (number_cb), dialog);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->number));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_widget_add_css_class (box, "tm-area");
  return box;
}

/* -------- Keys -------- */

/* Of 500 pages nobody goes through all to come behind them: Tab leaves the list. */
static gboolean
leave_list (Dialog *dialog, gboolean back)
{
  GtkWidget *to = back || dialog->number == NULL ? dialog->add : GTK_WIDGET (dialog->number);

  return gtk_widget_get_sensitive (to) && gtk_widget_grab_focus (to);
}

/* A number that is begun in the list goes on in its entry. */
static gboolean
type_digit (Dialog *dialog, gunichar letter)
{
  char text[7] = { 0 };

  if (dialog->number == NULL || !g_unichar_isdigit (letter))
    return FALSE;
  g_unichar_to_utf8 (letter, text);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->number));
  gtk_editable_set_text (dialog->number, text);
  gtk_editable_set_position (dialog->number, -1);
  return TRUE;
}

static gboolean
pressed_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType state, Dialog *dialog)
{
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return FALSE;
  if (keyval == GDK_KEY_Tab || keyval == GDK_KEY_KP_Tab || keyval == GDK_KEY_ISO_Left_Tab)
    return leave_list (dialog, keyval == GDK_KEY_ISO_Left_Tab || (state & GDK_SHIFT_MASK) != 0);
  return type_digit (dialog, gdk_keyval_to_unicode (keyval));
}

static void
add_keys (Dialog *dialog)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (pressed_cb), dialog);
  gtk_widget_add_controller (GTK_WIDGET (dialog->list), keys);
}

/* -------- The window -------- */

static void
add_cb (Dialog *dialog)
{
  g_autoptr (GtkWidget) parent = g_object_ref (dialog->parent);
  g_autoptr (GArray) pages = NULL;
  TmPagesChosen chosen = dialog->chosen;

  if (!number_is_taken (dialog))
    return;
  pages = read_pages (dialog);
  chosen (parent, pages, dialog->data);
  gtk_window_destroy (dialog->window);
}

static GtkWidget *
build_list (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  dialog->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (dialog->list, GTK_SELECTION_BROWSE);
  gtk_list_box_set_activate_on_single_click (dialog->list, FALSE);
  tm_name_widget (GTK_WIDGET (dialog->list), _ ("Pages"));
  add_keys (dialog);
  for (guint i = 1; i <= MIN (dialog->n_pages, MOST_LISTED); i++)
    add_row (dialog, i, -1, dialog->n_pages <= MOST_PROPOSED || i == 1);
  g_signal_connect (dialog->list, "row-selected", G_CALLBACK (selected_cb), dialog);
  g_signal_connect (dialog->list, "row-activated", G_CALLBACK (activated_cb), dialog);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (dialog->list));
  gtk_widget_set_size_request (scroller, 180, -1);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (box), scroller);
  if (dialog->n_pages > MOST_LISTED)
    gtk_box_append (GTK_BOX (box), build_number (dialog));
  return box;
}

static void
build (Dialog *dialog, const char *name)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *across = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  g_autofree char *title = g_strdup_printf (_ ("Pages of %s"), name);

  dialog->window = GTK_WINDOW (adw_window_new ());
  dialog->add = tm_button_new ("");
  gtk_widget_add_css_class (dialog->add, "suggested-action");
  dialog->picture = TM_DRAWING_PICTURE (tm_drawing_picture_new ());
  gtk_box_append (GTK_BOX (across), build_list (dialog));
  gtk_box_append (GTK_BOX (across), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (across), GTK_WIDGET (dialog->picture));
  gtk_widget_set_vexpand (across, TRUE);
  gtk_box_append (GTK_BOX (box), tm_dialog_header_new (dialog->add));
  gtk_box_append (GTK_BOX (box), across);
  gtk_window_set_title (dialog->window, title);
  gtk_window_set_default_size (dialog->window, WIDTH, HEIGHT);
  gtk_window_set_default_widget (dialog->window, dialog->add);
  adw_window_set_content (ADW_WINDOW (dialog->window), box);
  g_signal_connect_swapped (dialog->add, "clicked", G_CALLBACK (add_cb), dialog);
}

void
tm_drawing_pages_present (GtkWidget *any_child, const char *name, GBytes *content, guint n_pages,
                          TmPagesChosen chosen, gpointer data, GDestroyNotify free_data)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->parent = g_object_ref (any_child);
  dialog->content = g_bytes_ref (content);
  dialog->n_pages = n_pages;
  dialog->chosen = chosen;
  dialog->data = data;
  dialog->free_data = free_data;
  build (dialog, name);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  tm_dialog_attach (dialog->window, any_child);
  toggled_cb (dialog);
  gtk_list_box_select_row (dialog->list, gtk_list_box_get_row_at_index (dialog->list, 0));
  gtk_window_present (dialog->window);
  gtk_widget_grab_focus (GTK_WIDGET (gtk_list_box_get_row_at_index (dialog->list, 0)));
}
