/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-home-columns.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-book-item.h"
#include "app-tip.h"
#include "app-words.h"

typedef struct {
  const char *title;
  char *(*text) (const TmBookEntry *entry);
  guint (*number) (const TmBookEntry *entry); /* for sorting, or NULL: by text */
  int width;                                  /* pixels; 0: takes what is left */
} Column;

static char *
part_text (const TmBookEntry *entry)
{
  return g_strdup (entry->part_number);
}

static char *
name_text (const TmBookEntry *entry)
{
  return g_strdup (entry->part_name);
}

static char *
revision_text (const TmBookEntry *entry)
{
  return g_strdup (entry->revision);
}

static char *
customer_text (const TmBookEntry *entry)
{
  return g_strdup (entry->customer);
}

static char *
order_text (const TmBookEntry *entry)
{
  return g_strdup (entry->order);
}

static guint
features_number (const TmBookEntry *entry)
{
  return entry->n_features;
}

static char *
features_text (const TmBookEntry *entry)
{
  return g_strdup_printf ("%u", entry->n_features);
}

static guint
pieces_number (const TmBookEntry *entry)
{
  return entry->n_pieces;
}

static char *
pieces_text (const TmBookEntry *entry)
{
  return g_strdup_printf ("%u", entry->n_pieces);
}

static guint
readings_number (const TmBookEntry *entry)
{
  return entry->n_readings;
}

static char *
readings_text (const TmBookEntry *entry)
{
  return g_strdup_printf ("%u", entry->n_readings);
}

static char *
last_text (const TmBookEntry *entry)
{
  return tm_words_time (entry->last_at);
}

static const Column columns[] = {
  { N_ ("Part number"), part_text, NULL, 150 },      { N_ ("Name"), name_text, NULL, 0 },
  { N_ ("Rev"), revision_text, NULL, 64 },           { N_ ("Customer"), customer_text, NULL, 170 },
  { N_ ("Order"), order_text, NULL, 120 },           { N_ ("Features"), features_text, features_number, 88 },
  { N_ ("Pieces"), pieces_text, pieces_number, 80 }, { N_ ("Readings"), readings_text, readings_number, 96 },
  { N_ ("Last change"), last_text, NULL, 160 },
};

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const Column *column)
{
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), 0.0f);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (cell), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_add_css_class (cell, "numeric");
  tm_tip_own_text (cell);
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const Column *column)
{
  const TmBookEntry *entry = tm_book_item_entry (gtk_list_item_get_item (item));
  GtkInscription *cell = GTK_INSCRIPTION (gtk_list_item_get_child (item));
  g_autofree char *text = column->text (entry);
  g_autofree char *spoken = g_strdup_printf ("%s: %s", g_dgettext (GETTEXT_PACKAGE, column->title), text);

  gtk_inscription_set_text (cell, text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  if (column == &columns[0])
    {
      g_autofree char *title = tm_words_job_title (entry->part_number, entry->part_name, entry->revision);
      tm_access_name_row (GTK_WIDGET (cell), title);
    }
}

static int
compare (gconstpointer a, gconstpointer b, gpointer data)
{
  const Column *column = data;
  const TmBookEntry *one = tm_book_item_entry ((TmBookItem *)a);
  const TmBookEntry *other = tm_book_item_entry ((TmBookItem *)b);
  g_autofree char *one_text = NULL;
  g_autofree char *other_text = NULL;

  if (column->number != NULL)
    return (column->number (one) > column->number (other)) - (column->number (one) < column->number (other));
  if (column->text == last_text)
    return g_strcmp0 (one->last_at, other->last_at);
  one_text = column->text (one);
  other_text = column->text (other);
  return g_utf8_collate (one_text, other_text);
}

static void
add_column (GtkColumnView *view, const Column *kind)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) column
      = gtk_column_view_column_new (g_dgettext (GETTEXT_PACKAGE, kind->title), factory);
  g_autoptr (GtkSorter) sorter = GTK_SORTER (gtk_custom_sorter_new (compare, (gpointer)kind, NULL));

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), (gpointer)kind);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), (gpointer)kind);
  gtk_column_view_column_set_sorter (column, sorter);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_column_set_expand (column, kind->width == 0);
  if (kind->width != 0)
    gtk_column_view_column_set_fixed_width (column, kind->width);
  gtk_column_view_append_column (view, column);
}

void
tm_home_add_columns (GtkColumnView *view)
{
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    add_column (view, &columns[i]);
}
