/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-window-pieces: the drop-down of pieces in the header, in step with the bench session.
 */

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-window-private.h"
#include "app-words.h"

static void
setup_label_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 24);
  gtk_widget_add_css_class (label, "numeric");
  gtk_list_item_set_child (item, label);
}

/* In the button: "Piece 004 of 10". */
static void
bind_button_cb (GtkSignalListItemFactory *factory, GtkListItem *item, TmWindow *self)
{
  GtkStringObject *serial = gtk_list_item_get_item (item);
  GListModel *model = gtk_drop_down_get_model (self->piece_drop);
  guint n = model != NULL ? g_list_model_get_n_items (model) : 0;
  g_autofree char *text = tm_words_piece (gtk_string_object_get_string (serial), n);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), text);
}

/* In the list: the serial, and whether it is the first article. */
static void
bind_list_cb (GtkSignalListItemFactory *factory, GtkListItem *item, TmWindow *self)
{
  const char *serial = gtk_string_object_get_string (gtk_list_item_get_item (item));
  const TmPiece *piece
      = self->document != NULL ? tm_job_find_piece (tm_document_job (self->document), serial) : NULL;
  g_autofree char *text = piece != NULL && piece->first_article
                              ? g_strdup_printf (_ ("%s, first article"), serial)
                              : g_strdup (serial);

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), text);
}

static void
selected_cb (TmWindow *self)
{
  const TmJob *job;
  const TmSpot *spot;
  TmPiece *piece;
  guint at = gtk_drop_down_get_selected (self->piece_drop);

  if (self->document == NULL)
    return;
  job = tm_document_job (self->document);
  spot = tm_bench_spot (tm_document_bench (self->document));
  if (at >= job->pieces->len || spot->feature == NULL)
    return;
  piece = g_ptr_array_index (job->pieces, at);
  if (piece != spot->piece)
    tm_document_go (self->document, piece, spot->feature, spot->place, spot->station);
}

void
tm_window_setup_pieces (TmWindow *self)
{
  g_autoptr (GtkListItemFactory) button = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkListItemFactory) list = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkExpression) serial = gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string");

  g_signal_connect (button, "setup", G_CALLBACK (setup_label_cb), NULL);
  g_signal_connect (button, "bind", G_CALLBACK (bind_button_cb), self);
  g_signal_connect (list, "setup", G_CALLBACK (setup_label_cb), NULL);
  g_signal_connect (list, "bind", G_CALLBACK (bind_list_cb), self);
  gtk_drop_down_set_factory (self->piece_drop, button);
  gtk_drop_down_set_list_factory (self->piece_drop, list);
  gtk_drop_down_set_expression (self->piece_drop, serial);
  tm_access_name_drop_down (self->piece_drop, _ ("Piece"));
  g_signal_connect_swapped (self->piece_drop, "notify::selected", G_CALLBACK (selected_cb), self);
}

void
tm_window_follow_piece (TmWindow *self)
{
  const TmJob *job = tm_document_job (self->document);
  const TmSpot *spot = tm_bench_spot (tm_document_bench (self->document));
  guint at;

  if (spot->piece != NULL && g_ptr_array_find (job->pieces, spot->piece, &at)
      && at != gtk_drop_down_get_selected (self->piece_drop))
    gtk_drop_down_set_selected (self->piece_drop, at);
}

void
tm_window_refresh_pieces (TmWindow *self)
{
  const TmJob *job = tm_document_job (self->document);
  g_autoptr (GtkStringList) serials = gtk_string_list_new (NULL);

  for (guint i = 0; i < job->pieces->len; i++)
    gtk_string_list_append (serials, ((TmPiece *)g_ptr_array_index (job->pieces, i))->serial);
  g_signal_handlers_block_by_func (self->piece_drop, selected_cb, self);
  gtk_drop_down_set_model (self->piece_drop, G_LIST_MODEL (serials));
  tm_window_follow_piece (self);
  g_signal_handlers_unblock_by_func (self->piece_drop, selected_cb, self);
  gtk_widget_set_visible (GTK_WIDGET (self->piece_drop), job->pieces->len > 0);
}

void
tm_window_step_piece (TmWindow *self, int step)
{
  const TmJob *job;
  gint64 at;

  if (self->document == NULL)
    return;
  job = tm_document_job (self->document);
  at = (gint64)gtk_drop_down_get_selected (self->piece_drop) + step;
  if (at >= 0 && at < job->pieces->len)
    gtk_drop_down_set_selected (self->piece_drop, (guint)at);
}
