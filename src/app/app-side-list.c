/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-side-list.h"

#include "app-dialog.h"
#include "app-list-row.h"
#include "app-view-parts.h"

static void
selected_cb (GtkListBox *list, GtkListBoxRow *row, TmSideList *side)
{
  if (side->filling || row == NULL || side->document == NULL)
    return;
  tm_side_list_set_key (side, tm_list_row_key (row));
  side->show (side->view);
}

void
tm_side_list_init (TmSideList *side, GtkWidget *view, const char *name, TmSideListCall refresh,
                   TmSideListCall show)
{
  *side = (TmSideList) { .view = view, .refresh = refresh, .show = show };
  side->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_activate_on_single_click (side->list, FALSE);
  gtk_widget_add_css_class (GTK_WIDGET (side->list), "tm-choices");
  tm_list_tab_leaves (side->list);
  tm_name_widget (GTK_WIDGET (side->list), name);
  g_signal_connect (side->list, "row-selected", G_CALLBACK (selected_cb), side);
}

void
tm_side_list_activates (TmSideList *side, GCallback activate)
{
  g_signal_connect_swapped (side->list, "row-activated", activate, side->view);
}

GtkWidget *
tm_side_list_put (TmSideList *side, GtkWidget *head, GtkWidget *foot)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scroller = tm_view_scroller_new (GTK_WIDGET (side->list));

  side->scroller = GTK_SCROLLED_WINDOW (scroller);
  if (head != NULL)
    gtk_box_append (GTK_BOX (box), head);
  gtk_box_append (GTK_BOX (box), scroller);
  if (foot != NULL)
    gtk_box_append (GTK_BOX (box), foot);
  gtk_widget_set_hexpand (box, FALSE);
  gtk_widget_add_css_class (box, "tm-choice-side");
  return box;
}

static void
drop_document (TmSideList *side)
{
  if (side->document != NULL)
    g_signal_handlers_disconnect_by_data (side->document, side->view);
  g_clear_object (&side->document);
  g_clear_pointer (&side->key, g_free);
}

void
tm_side_list_clear (TmSideList *side)
{
  drop_document (side);
  /* The list may outlive the view that its signals go to. */
  if (side->list != NULL)
    {
      g_signal_handlers_disconnect_by_data (side->list, side);
      g_signal_handlers_disconnect_by_data (side->list, side->view);
    }
  side->list = NULL;
}

void
tm_side_list_set_document (TmSideList *side, TmDocument *document)
{
  drop_document (side);
  tm_list_clear (side->list);
  if (document == NULL)
    return;
  side->document = g_object_ref (document);
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (side->refresh), side->view);
  side->refresh (side->view);
}

void
tm_side_list_set_key (TmSideList *side, const char *key)
{
  char *chosen = g_strdup (key);

  g_free (side->key);
  side->key = chosen;
}

gboolean
tm_side_list_begin (TmSideList *side)
{
  side->filling = TRUE;
  return tm_list_clear (side->list);
}

void
tm_side_list_end (TmSideList *side, gboolean focused)
{
  tm_list_select (side->list, side->key, focused);
  side->filling = FALSE;
}

void
tm_side_list_enter (TmSideList *side)
{
  if (!tm_list_select (side->list, side->key, TRUE))
    gtk_widget_child_focus (side->view, GTK_DIR_TAB_FORWARD);
}
