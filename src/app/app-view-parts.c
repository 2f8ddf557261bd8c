/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-view-parts.h"

#include "app-button.h"

GtkWidget *
tm_view_button_new (const char *label, const char *action, const char *tip)
{
  GtkWidget *button = tm_button_new (label);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tip);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  return button;
}

GtkWidget *
tm_view_scroller_new (GtkWidget *child)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), child);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

GtkLabel *
tm_view_label_new (const char *css_class, gboolean wraps)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));

  gtk_label_set_xalign (label, 0);
  if (wraps)
    {
      gtk_label_set_wrap (label, TRUE);
      gtk_label_set_wrap_mode (label, PANGO_WRAP_WORD_CHAR);
    }
  else
    gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  return label;
}

static GtkWidget *
new_head (GtkWidget *first)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  gtk_widget_set_hexpand (first, TRUE);
  gtk_widget_add_css_class (head, "tm-view-head");
  gtk_box_append (GTK_BOX (head), first);
  return head;
}

GtkWidget *
tm_view_title_new (const char *title)
{
  GtkLabel *label = tm_view_label_new ("title-4", FALSE);

  gtk_label_set_text (label, title);
  return new_head (GTK_WIDGET (label));
}

GtkWidget *
tm_view_head_new (GtkLabel **title, GtkLabel **about)
{
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  *title = tm_view_label_new ("title-4", FALSE);
  *about = tm_view_label_new ("dim-label", FALSE);
  gtk_box_append (GTK_BOX (texts), GTK_WIDGET (*title));
  gtk_box_append (GTK_BOX (texts), GTK_WIDGET (*about));
  return new_head (texts);
}
