/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-columns.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-feature-words.h"
#include "app-job-item.h"
#include "app-tip.h"
#include "app-words.h"

typedef struct {
  const char *title;
  char *(*text) (const TmFeature *feature);
  int width;       /* pixels */
  gboolean expand; /* takes a share of what is left */
} Column;

static char *
balloon_text (const TmFeature *feature)
{
  return g_strdup (feature->balloon);
}

static char *
name_text (const TmFeature *feature)
{
  return g_strdup (feature->name);
}

/* A diameter of which nobody has said whether it is inside or outside says so. */
static char *
kind_text (const TmFeature *feature)
{
  if (feature->kind == TM_KIND_DIAMETER && feature->cut == TM_CUT_UNKNOWN)
    return g_strdup (_ ("diameter: inside or outside?"));
  return g_strdup (tm_words_kind (feature->kind));
}

static char *
method_text (const TmFeature *feature)
{
  return g_strdup (feature->method);
}

static const Column columns[] = {
  { N_ ("No."), balloon_text, 72, FALSE },        { N_ ("Requirement"), tm_words_requirement, 112, TRUE },
  { N_ ("Limits"), tm_words_limits, 168, FALSE }, { N_ ("Name"), name_text, 84, TRUE },
  { N_ ("Kind"), kind_text, 104, FALSE },         { N_ ("Method"), method_text, 80, TRUE },
};

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, const Column *column)
{
  GtkWidget *cell = gtk_inscription_new (NULL);

  gtk_inscription_set_xalign (GTK_INSCRIPTION (cell), 0.0f);
  gtk_widget_set_size_request (cell, column->expand ? column->width : -1, -1);
  gtk_inscription_set_text_overflow (GTK_INSCRIPTION (cell), GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_add_css_class (cell, "numeric");
  tm_tip_own_text (cell);
  g_object_set_data (G_OBJECT (cell), "column", (gpointer)column);
  gtk_list_item_set_child (item, cell);
}

static void
fill_cell (GtkInscription *cell, TmJobItem *item)
{
  const Column *column = g_object_get_data (G_OBJECT (cell), "column");
  g_autofree char *text = column->text (tm_job_item_feature (item));
  g_autofree char *spoken = g_strdup_printf ("%s: %s", g_dgettext (GETTEXT_PACKAGE, column->title), text);

  gtk_inscription_set_text (cell, text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  if (column == &columns[0])
    {
      g_autofree char *name = tm_words_feature (tm_job_item_feature (item));
      tm_access_name_row (GTK_WIDGET (cell), name);
    }
}

static void
item_changed_cb (TmJobItem *item, GtkInscription *cell)
{
  fill_cell (cell, item);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  TmJobItem *item = gtk_list_item_get_item (list_item);
  GtkWidget *cell = gtk_list_item_get_child (list_item);

  fill_cell (GTK_INSCRIPTION (cell), item);
  g_signal_connect (item, "changed", G_CALLBACK (item_changed_cb), cell);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  g_signal_handlers_disconnect_by_func (gtk_list_item_get_item (list_item), item_changed_cb,
                                        gtk_list_item_get_child (list_item));
}

static void
add_column (GtkColumnView *view, const Column *kind)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) column
      = gtk_column_view_column_new (g_dgettext (GETTEXT_PACKAGE, kind->title), factory);

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), (gpointer)kind);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  g_signal_connect (factory, "unbind", G_CALLBACK (unbind_cb), NULL);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_column_set_expand (column, kind->expand);
  if (!kind->expand)
    gtk_column_view_column_set_fixed_width (column, kind->width);
  gtk_column_view_append_column (view, column);
}

void
tm_job_add_columns (GtkColumnView *view)
{
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    add_column (view, &columns[i]);
}
