/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-form-area.h"

#include "app-dialog.h"

#define LINE_HEIGHT 22 /* pixels */
#define MARGIN      8

static GtkTextView *
new_view (const char *title, guint lines)
{
  GtkTextView *view = GTK_TEXT_VIEW (gtk_text_view_new ());

  gtk_text_view_set_accepts_tab (view, FALSE);
  gtk_text_view_set_wrap_mode (view, GTK_WRAP_WORD_CHAR);
  gtk_text_view_set_left_margin (view, MARGIN);
  gtk_text_view_set_right_margin (view, MARGIN);
  gtk_text_view_set_top_margin (view, MARGIN / 2);
  gtk_text_view_set_bottom_margin (view, MARGIN / 2);
  gtk_widget_set_size_request (GTK_WIDGET (view), -1, (int)lines * LINE_HEIGHT + MARGIN);
  tm_name_widget (GTK_WIDGET (view), title);
  return view;
}

GtkTextView *
tm_form_area_new (AdwPreferencesGroup *group, const char *title, guint lines)
{
  GtkTextView *view = new_view (title, lines);
  GtkWidget *row = adw_preferences_row_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *label = gtk_label_new (title);
  GtkWidget *frame = gtk_frame_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_widget_add_css_class (label, "caption");
  gtk_widget_add_css_class (box, "tm-area");
  gtk_frame_set_child (GTK_FRAME (frame), GTK_WIDGET (view));
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), frame);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  tm_name_widget (row, title);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_widget_set_focusable (row, FALSE);
  adw_preferences_group_add (group, row);
  return view;
}

char *
tm_form_area_text (GtkTextView *area)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (area);
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  return g_strstrip (gtk_text_buffer_get_text (buffer, &start, &end, FALSE));
}

void
tm_form_area_set_text (GtkTextView *area, const char *text)
{
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (area), text, -1);
}
