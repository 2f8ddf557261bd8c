/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-panel-line.h"

#include "app-column.h"

GtkLabel *
tm_panel_line_add (GtkWidget *box, const char *css_class)
{
  GtkLabel *line = GTK_LABEL (gtk_label_new (NULL));

  g_return_val_if_fail (GTK_IS_BOX (box), line);

  gtk_label_set_xalign (line, 0);
  gtk_label_set_wrap (line, TRUE);
  gtk_label_set_wrap_mode (line, PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (GTK_WIDGET (line), css_class);
  gtk_box_append (GTK_BOX (box), tm_column_new_filling (GTK_WIDGET (line)));
  return line;
}

void
tm_panel_line_take (GtkLabel *line, char *text)
{
  if (!g_str_equal (gtk_label_get_text (line), text))
    gtk_label_set_text (line, text);
  gtk_widget_set_visible (GTK_WIDGET (line), *text != '\0');
  g_free (text);
}
