/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-button.h"

GtkWidget *
tm_button_new (const char *label)
{
  GtkWidget *button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (button), gtk_label_new (NULL));
  gtk_widget_add_css_class (button, "text-button");
  tm_button_set_label (button, label);
  return button;
}

void
tm_button_set_label (GtkWidget *button, const char *label)
{
  g_return_if_fail (GTK_IS_BUTTON (button));
  g_return_if_fail (GTK_IS_LABEL (gtk_button_get_child (GTK_BUTTON (button))));

  gtk_label_set_text_with_mnemonic (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  tm_button_text (button), -1);
}

const char *
tm_button_text (GtkWidget *button)
{
  g_return_val_if_fail (GTK_IS_BUTTON (button), NULL);

  return gtk_label_get_text (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))));
}
