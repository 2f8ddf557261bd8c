/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-table-item.h"

#include <glib/gi18n-lib.h>

#include "app-feature-words.h"
#include "app-tip.h"
#include "app-words.h"

enum { LINE, BALLOON, REQUIREMENT, UNDERSTOOD, N_TEXTS };

struct _TmTableItem {
  GObject parent_instance;

  char *texts[N_TEXTS];
  gboolean wrong; /* cannot be added, or becomes a note */
};

G_DEFINE_FINAL_TYPE (TmTableItem, tm_table_item, G_TYPE_OBJECT)

typedef struct {
  const char *title;
  int width; /* pixels; 0: takes what is left */
  guint which;
} Column;

static const Column columns[] = {
  { N_ ("Line"), 60, LINE },
  { N_ ("No."), 72, BALLOON },
  { N_ ("Requirement"), 190, REQUIREMENT },
  { N_ ("Understood as"), 0, UNDERSTOOD },
};

static void
tm_table_item_finalize (GObject *object)
{
  TmTableItem *self = TM_TABLE_ITEM (object);

  for (guint i = 0; i < N_TEXTS; i++)
    g_free (self->texts[i]);
  G_OBJECT_CLASS (tm_table_item_parent_class)->finalize (object);
}

static void
tm_table_item_class_init (TmTableItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_table_item_finalize;
}

static void
tm_table_item_init (TmTableItem *self)
{
}

static char *
describe (const TmTableRow *row)
{
  g_autofree char *limits = NULL;

  if (row->problem != NULL)
    return g_strdup_printf (_ ("left out: %s"), row->problem);
  if (row->remark != NULL)
    return g_strdup_printf (_ ("kept as a note: %s"), row->remark);
  if (row->read != TM_CALLOUT_OK && row->feature->kind == TM_KIND_NOTE)
    return tm_words_kept_as_note (row->read);
  limits = tm_words_limits (row->feature);
  return g_strdup_printf ("%s, %s", tm_words_kind (row->feature->kind), limits);
}

TmTableItem *
tm_table_item_new (const TmTableRow *row)
{
  TmTableItem *self = g_object_new (TM_TYPE_TABLE_ITEM, NULL);

  self->texts[LINE] = g_strdup_printf ("%u", row->line);
  self->texts[BALLOON] = g_strdup (row->feature != NULL ? row->feature->balloon : "");
  self->texts[REQUIREMENT] = row->feature != NULL ? tm_words_requirement (row->feature) : g_strdup ("");
  self->texts[UNDERSTOOD] = describe (row);
  self->wrong = row->problem != NULL || row->read != TM_CALLOUT_OK;
  return self;
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (cell), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_add_css_class (cell, "numeric");
  tm_tip_own_text (cell);
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, const Column *column)
{
  TmTableItem *item = gtk_list_item_get_item (list_item);
  GtkWidget *cell = gtk_list_item_get_child (list_item);
  const char *text = item->texts[column->which];
  g_autofree char *spoken = g_strdup_printf ("%s: %s", g_dgettext (GETTEXT_PACKAGE, column->title), text);

  gtk_inscription_set_text (GTK_INSCRIPTION (cell), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  if (item->wrong)
    gtk_widget_add_css_class (cell, "tm-set-apart");
  else
    gtk_widget_remove_css_class (cell, "tm-set-apart");
}

void
tm_table_add_columns (GtkColumnView *view)
{
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column
          = gtk_column_view_column_new (g_dgettext (GETTEXT_PACKAGE, columns[i].title), factory);

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), (gpointer)&columns[i]);
      gtk_column_view_column_set_expand (column, columns[i].width == 0);
      if (columns[i].width != 0)
        gtk_column_view_column_set_fixed_width (column, columns[i].width);
      gtk_column_view_append_column (view, column);
    }
}
