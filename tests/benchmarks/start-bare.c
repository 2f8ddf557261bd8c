/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * start-bare: the least window of libadwaita, for comparison: a header bar and nothing in it.
 */

#include <adwaita.h>
#include <locale.h>

#include "first-frame.h"

static void
activate_cb (GtkApplication *application, gpointer data)
{
  GtkWidget *window = adw_application_window_new (application);

  adw_application_window_set_content (ADW_APPLICATION_WINDOW (window), adw_header_bar_new ());
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 720);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char *argv[])
{
  g_autoptr (AdwApplication) application = NULL;

  setlocale (LC_ALL, "");
  application = adw_application_new ("org.tenthmark.StartBare", G_APPLICATION_NON_UNIQUE);
  tell_first_frame (GTK_APPLICATION (application));
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
