/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Another program, as the desktop has them: a small window that can be dragged from, and that owns the
 * clipboard.  It offers the files that it is started with, or, with the one argument "picture", a picture.
 *
 *   offer FILE…      offer picture
 */

#include <gtk/gtk.h>

/* Pixels. */
#define SIDE 120

static GdkContentProvider *
offer_files (int n, char *paths[])
{
  GSList *files = NULL;
  g_auto (GValue) value = G_VALUE_INIT;

  for (int i = n - 1; i >= 0; i--)
    files = g_slist_prepend (files, g_file_new_for_commandline_arg (paths[i]));
  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_take_boxed (&value, files);
  return gdk_content_provider_new_for_value (&value);
}

/* 40 by 30 pixels of one colour. */
static GdkContentProvider *
offer_picture (void)
{
  g_autoptr (GdkPixbuf) pixels = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, 40, 30);
  g_autoptr (GdkTexture) texture = NULL;

  gdk_pixbuf_fill (pixels, 0x3070b0ff);
  texture = gdk_texture_new_for_pixbuf (pixels);
  return gdk_content_provider_new_typed (GDK_TYPE_TEXTURE, texture);
}

int
main (int argc, char *argv[])
{
  GdkContentProvider *content;
  GtkDragSource *source;
  GtkWidget *window, *label;

  gtk_init ();
  content
      = argc == 2 && g_str_equal (argv[1], "picture") ? offer_picture () : offer_files (argc - 1, argv + 1);
  window = gtk_window_new ();
  label = gtk_label_new ("Drag from here");
  source = gtk_drag_source_new ();
  gtk_drag_source_set_content (source, content);
  gtk_widget_add_controller (label, GTK_EVENT_CONTROLLER (source));
  gtk_window_set_title (GTK_WINDOW (window), "Offer");
  gtk_window_set_decorated (GTK_WINDOW (window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (window), SIDE, SIDE);
  gtk_window_set_child (GTK_WINDOW (window), label);
  gtk_window_present (GTK_WINDOW (window));
  gdk_clipboard_set_content (gtk_widget_get_clipboard (window), content);
  g_object_unref (content);
  while (g_list_model_get_n_items (gtk_window_get_toplevels ()) > 0)
    g_main_context_iteration (NULL, TRUE);
  return 0;
}
