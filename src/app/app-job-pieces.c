/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-pieces.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-toast.h"

struct _TmJobPieces {
  GtkBox parent_instance;

  TmDocument *document;
  GtkStringList *serials;
  GtkSingleSelection *selection;
  char *proposed; /* the serial put into the entry, not typed */

  GtkLabel *count_label;
  GtkEditable *serial_entry;
  GtkStack *stack;
  GtkColumnView *view;
};

G_DEFINE_FINAL_TYPE (TmJobPieces, tm_job_pieces, GTK_TYPE_BOX)

static void
propose_serial (TmJobPieces *self)
{
  const char *text = gtk_editable_get_text (self->serial_entry);

  if (*text != '\0' && g_strcmp0 (text, self->proposed) != 0)
    return;
  g_free (self->proposed);
  self->proposed = tm_edit_next_serial (tm_document_job (self->document));
  gtk_editable_set_text (self->serial_entry, self->proposed);
}

static void
add_cb (TmJobPieces *self)
{
  g_autofree char *serial = g_strstrip (g_strdup (gtk_editable_get_text (self->serial_entry)));
  g_autoptr (GError) error = NULL;
  gboolean first;

  if (self->document == NULL || *serial == '\0')
    return;
  first = tm_document_job (self->document)->pieces->len == 0;
  if (!tm_edit_add_piece (self->document, serial, first, &error))
    {
      tm_window_show_error (GTK_WIDGET (self), error->message);
      return;
    }
  tm_window_clear_error (GTK_WIDGET (self));
  gtk_editable_set_text (self->serial_entry, "");
  propose_serial (self);
  tm_job_pieces_focus_entry (self);
}

static TmPiece *
piece_of (TmJobPieces *self, GtkStringObject *serial)
{
  if (self->document == NULL || serial == NULL)
    return NULL;
  return tm_job_find_piece (tm_document_job (self->document), gtk_string_object_get_string (serial));
}

static TmPiece *
selected_piece (TmJobPieces *self)
{
  return piece_of (self, gtk_single_selection_get_selected_item (self->selection));
}

static void
measure_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPieces *self = TM_JOB_PIECES (widget);
  TmPiece *piece = selected_piece (self);
  const TmSpot *spot;

  if (piece == NULL)
    return;
  spot = tm_bench_spot (tm_document_bench (self->document));
  if (spot->feature != NULL)
    tm_document_go (self->document, piece, spot->feature, spot->place, spot->station);
  gtk_widget_activate_action (widget, "win.page", "s", "bench");
}

static void
activate_cb (TmJobPieces *self, guint position)
{
  gtk_single_selection_set_selected (self->selection, position);
  measure_action (GTK_WIDGET (self), NULL, NULL);
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPieces *self = TM_JOB_PIECES (widget);
  const TmPiece *piece = selected_piece (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (piece == NULL)
    return;
  text = g_strdup_printf (_ ("Removed piece %s"), piece->serial);
  if (tm_edit_remove_piece (self->document, piece->serial, &error))
    tm_window_toast (widget, text);
  else
    tm_window_show_error (widget, error->message);
}

static void
mark_cb (GtkCheckButton *check, GtkListItem *item)
{
  TmJobPieces *self = g_object_get_data (G_OBJECT (check), "pieces");
  TmPiece *piece = piece_of (self, gtk_list_item_get_item (item));
  gboolean marked = gtk_check_button_get_active (check);
  g_autoptr (GError) error = NULL;

  if (piece == NULL || piece->first_article == marked)
    return;
  if (!tm_edit_mark_first_article (self->document, piece, marked, &error))
    {
      tm_window_show_error (GTK_WIDGET (self), error->message);
      gtk_check_button_set_active (check, !marked);
    }
}

static void
setup_serial_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (cell), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_MIDDLE);
  gtk_widget_add_css_class (cell, "numeric");
  gtk_list_item_set_child (item, cell);
}

static void
bind_serial_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  const char *serial = gtk_string_object_get_string (gtk_list_item_get_item (item));
  GtkWidget *cell = gtk_list_item_get_child (item);
  g_autofree char *spoken = g_strdup_printf (_ ("Piece %s"), serial);

  gtk_inscription_set_text (GTK_INSCRIPTION (cell), serial);
  tm_name_widget (cell, spoken);
  tm_access_name_row (cell, spoken);
}

static void
setup_mark_cb (GtkSignalListItemFactory *factory, GtkListItem *item, TmJobPieces *self)
{
  GtkWidget *check = gtk_check_button_new ();

  gtk_widget_set_halign (check, GTK_ALIGN_CENTER);
  g_object_set_data (G_OBJECT (check), "pieces", self);
  g_signal_connect (check, "toggled", G_CALLBACK (mark_cb), item);
  gtk_list_item_set_child (item, check);
}

static void
bind_mark_cb (GtkSignalListItemFactory *factory, GtkListItem *item, TmJobPieces *self)
{
  const TmPiece *piece = piece_of (self, gtk_list_item_get_item (item));
  GtkWidget *check = gtk_list_item_get_child (item);
  g_autofree char *spoken = NULL;

  if (piece == NULL)
    return;
  spoken = g_strdup_printf (_ ("Piece %s is a first article"), piece->serial);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (check), piece->first_article);
  tm_name_widget (check, spoken);
}

/* Brings the list in step; what stays at the front keeps its row. */
static void
refresh_serials (TmJobPieces *self, const TmJob *job)
{
  guint n_old = g_list_model_get_n_items (G_LIST_MODEL (self->serials));
  guint n_kept = 0;
  g_autoptr (GPtrArray) fresh = g_ptr_array_new ();

  while (n_kept < n_old && n_kept < job->pieces->len
         && g_str_equal (gtk_string_list_get_string (self->serials, n_kept),
                         ((TmPiece *)g_ptr_array_index (job->pieces, n_kept))->serial))
    n_kept++;
  for (guint i = n_kept; i < job->pieces->len; i++)
    g_ptr_array_add (fresh, (gpointer)((TmPiece *)g_ptr_array_index (job->pieces, i))->serial);
  g_ptr_array_add (fresh, NULL);
  if (n_old > n_kept || fresh->len > 1)
    gtk_string_list_splice (self->serials, n_kept, n_old - n_kept, (const char *const *)fresh->pdata);
}

static void
definitions_changed_cb (TmJobPieces *self)
{
  const TmJob *job = tm_document_job (self->document);
  g_autofree char *count = job->pieces->len > 0 ? g_strdup_printf ("%u", job->pieces->len) : g_strdup ("");

  refresh_serials (self, job);
  gtk_label_set_text (self->count_label, count);
  tm_access_show_page (self->stack, job->pieces->len > 0 ? "list" : "empty");
  propose_serial (self);
}

void
tm_job_pieces_set_document (TmJobPieces *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_JOB_PIECES (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  gtk_string_list_splice (self->serials, 0, g_list_model_get_n_items (G_LIST_MODEL (self->serials)), NULL);
  g_set_object (&self->document, document);
  gtk_editable_set_text (self->serial_entry, "");
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

void
tm_job_pieces_focus_entry (TmJobPieces *self)
{
  g_return_if_fail (TM_IS_JOB_PIECES (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->serial_entry));
}

static void
tm_job_pieces_dispose (GObject *object)
{
  TmJobPieces *self = TM_JOB_PIECES (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  if (self->view != NULL)
    gtk_column_view_set_model (self->view, NULL);
  g_clear_object (&self->selection);
  g_clear_object (&self->serials);
  g_clear_pointer (&self->proposed, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), TM_TYPE_JOB_PIECES);
  G_OBJECT_CLASS (tm_job_pieces_parent_class)->dispose (object);
}

static void
tm_job_pieces_class_init (TmJobPiecesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_job_pieces_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/job-pieces.ui");
  gtk_widget_class_bind_template_child (widget_class, TmJobPieces, count_label);
  gtk_widget_class_bind_template_child (widget_class, TmJobPieces, serial_entry);
  gtk_widget_class_bind_template_child (widget_class, TmJobPieces, stack);
  gtk_widget_class_bind_template_child (widget_class, TmJobPieces, view);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_install_action (widget_class, "pieces.measure", NULL, measure_action);
  gtk_widget_class_install_action (widget_class, "pieces.remove", NULL, remove_action);
}

static void
add_column (TmJobPieces *self, const char *title, GCallback setup, GCallback bind, gboolean expand)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (title, factory);

  g_signal_connect (factory, "setup", setup, self);
  g_signal_connect (factory, "bind", bind, self);
  gtk_column_view_column_set_expand (column, expand);
  gtk_column_view_append_column (self->view, column);
}

static void
tm_job_pieces_init (TmJobPieces *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->serials = gtk_string_list_new (NULL);
  self->selection = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (self->serials)));
  tm_name_entry (self->serial_entry, _ ("Serial of the next piece"));
  tm_access_name_column_view (self->view, _ ("Pieces"));
  add_column (self, _ ("Serial"), G_CALLBACK (setup_serial_cb), G_CALLBACK (bind_serial_cb), TRUE);
  add_column (self, _ ("First article"), G_CALLBACK (setup_mark_cb), G_CALLBACK (bind_mark_cb), FALSE);
  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (self->selection));
  /* Delete works while the list has the focus, not while something is typed. */
  tm_add_key (GTK_WIDGET (self->view), GDK_KEY_Delete, "pieces.remove");
}
