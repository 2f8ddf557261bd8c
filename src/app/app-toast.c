/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-toast.h"

/* The window that shows lines offers actions for it; a dialog passes them on to its parent. */
static void
tell_window (GtkWidget *widget, const char *action, const char *text)
{
  while (widget != NULL)
    {
      GtkRoot *root;

      if (gtk_widget_activate_action (widget, action, "s", text))
        return;
      root = gtk_widget_get_root (widget);
      widget = GTK_IS_WINDOW (root) ? (GtkWidget *)gtk_window_get_transient_for (GTK_WINDOW (root)) : NULL;
    }
}

void
tm_window_toast (GtkWidget *any_child, const char *text)
{
  g_return_if_fail (GTK_IS_WIDGET (any_child));
  g_return_if_fail (text != NULL);

  tell_window (any_child, "win.show-toast", text);
}

void
tm_toast_keep_words (AdwToastOverlay *overlay, const char *text)
{
  g_return_if_fail (ADW_IS_TOAST_OVERLAY (overlay));
  g_return_if_fail (text != NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (overlay), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

void
tm_window_show_error (GtkWidget *any_child, const char *text)
{
  g_return_if_fail (GTK_IS_WIDGET (any_child));
  g_return_if_fail (text != NULL);

  tell_window (any_child, "win.show-error", text);
}

void
tm_window_clear_error (GtkWidget *any_child)
{
  g_return_if_fail (GTK_IS_WIDGET (any_child));

  tell_window (any_child, "win.show-error", "");
}
