/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"

/* Pixels. */
#define FORM_WIDTH 460

void
tm_dialog_attach (GtkWindow *window, GtkWidget *any_child)
{
  GtkRoot *root = gtk_widget_get_root (any_child);

  tm_add_key (GTK_WIDGET (window), GDK_KEY_Escape, "window.close");
  gtk_window_set_modal (window, TRUE);
  gtk_window_set_destroy_with_parent (window, TRUE);
  if (GTK_IS_WINDOW (root))
    gtk_window_set_transient_for (window, GTK_WINDOW (root));
}

GtkWindow *
tm_dialog_new (GtkWidget *any_child, const char *title, int width, int height, GtkWidget *content)
{
  GtkWindow *window = GTK_WINDOW (adw_window_new ());
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_window_set_title (window, title);
  gtk_window_set_default_size (window, width, height);
  gtk_box_append (GTK_BOX (box), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (box), content);
  adw_window_set_content (ADW_WINDOW (window), box);
  tm_dialog_attach (window, any_child);
  return window;
}

GtkWindow *
tm_dialog_over (GtkWindow *window)
{
  GListModel *all = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) other = g_list_model_get_item (all, i);

      if (gtk_window_get_transient_for (other) == window && gtk_window_get_modal (other)
          && gtk_widget_get_visible (GTK_WIDGET (other)))
        return other;
    }
  return NULL;
}

/* A row has no place before it was laid out, and what scrolls cannot bring it in sight by itself.  With as
 * much around it as it is high: the screen may yet make the window somewhat smaller. */
static gboolean
bring_in_sight_cb (GtkWidget *row, GdkFrameClock *clock, gpointer data)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (row, GTK_TYPE_VIEWPORT);
  GtkAdjustment *down = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (viewport));
  graphene_rect_t at;

  if (gtk_widget_get_height (row) == 0)
    return G_SOURCE_CONTINUE;
  if (gtk_widget_compute_bounds (row, gtk_viewport_get_child (GTK_VIEWPORT (viewport)), &at))
    gtk_adjustment_clamp_page (down, at.origin.y - at.size.height, at.origin.y + 2 * at.size.height);
  return G_SOURCE_REMOVE;
}

void
tm_dialog_start_in (GtkWidget *row)
{
  gtk_widget_grab_focus (row);
  if (gtk_widget_get_ancestor (row, GTK_TYPE_VIEWPORT) != NULL)
    gtk_widget_add_tick_callback (row, bring_in_sight_cb, NULL, NULL);
}

GtkWidget *
tm_dialog_header_new (GtkWidget *confirm)
{
  GtkWidget *header = adw_header_bar_new ();
  GtkWidget *cancel = tm_button_new (_ ("_Cancel"));

  adw_header_bar_set_show_end_title_buttons (ADW_HEADER_BAR (header), FALSE);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (cancel), "window.close");
  adw_header_bar_pack_start (ADW_HEADER_BAR (header), cancel);
  adw_header_bar_pack_end (ADW_HEADER_BAR (header), confirm);
  return header;
}

static GtkLabel *
add_label (GtkBox *box, const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));

  gtk_label_set_xalign (label, 0);
  gtk_label_set_wrap (label, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  gtk_box_append (box, GTK_WIDGET (label));
  return label;
}

TmDialogForm
tm_dialog_form_build (AdwWindow *window, const char *name, GtkWidget *confirm)
{
  GtkWidget *outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  TmDialogForm form;

  form.about = add_label (GTK_BOX (inner), "body");
  form.rows = ADW_PREFERENCES_GROUP (adw_preferences_group_new ());
  tm_access_name_inside (GTK_WIDGET (form.rows), GTK_TYPE_LIST_BOX, name);
  gtk_box_append (GTK_BOX (inner), GTK_WIDGET (form.rows));
  form.hint = add_label (GTK_BOX (inner), "dim-label");
  gtk_widget_add_css_class (inner, "tm-dialog");
  gtk_box_append (GTK_BOX (outer), tm_dialog_header_new (confirm));
  gtk_box_append (GTK_BOX (outer), inner);
  gtk_window_set_default_size (GTK_WINDOW (window), FORM_WIDTH, -1);
  gtk_window_set_resizable (GTK_WINDOW (window), FALSE);
  adw_window_set_content (window, outer);
  return form;
}

GtkLabel *
tm_dialog_problem_new (void)
{
  GtkWidget *line = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_ALERT, NULL);

  gtk_label_set_wrap (GTK_LABEL (line), TRUE);
  gtk_label_set_xalign (GTK_LABEL (line), 0.0f);
  gtk_widget_set_visible (line, FALSE);
  gtk_widget_add_css_class (line, "tm-problem");
  return GTK_LABEL (line);
}

void
tm_dialog_problem_set (GtkLabel *line, const char *text)
{
  gtk_label_set_text (line, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (line), text != NULL && *text != '\0');
}

void
tm_add_key (GtkWidget *widget, guint keyval, const char *action)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys),
      gtk_shortcut_new (gtk_keyval_trigger_new (keyval, 0), gtk_named_action_new (action)));
  gtk_widget_add_controller (widget, keys);
}

void
tm_name_widget (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
tm_name_entry (GtkEditable *entry, const char *name)
{
  GtkEditable *text = gtk_editable_get_delegate (entry);

  tm_name_widget (GTK_WIDGET (entry), name);
  if (text != NULL && GTK_IS_ACCESSIBLE (text))
    tm_name_widget (GTK_WIDGET (text), name);
}
