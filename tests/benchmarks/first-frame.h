/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * first-frame: makes a program say when its window is first drawn, and end there.
 */

#pragma once

#include <gtk/gtk.h>
#include <unistd.h>

/* The moment of drawing, in microseconds of the steady clock, is all that the program prints. */
static void
first_painted_cb (GdkFrameClock *clock, gpointer data)
{
  g_print ("%" G_GINT64_FORMAT "\n", g_get_monotonic_time ());
  _exit (0);
}

static void
first_realized_cb (GtkWidget *window, gpointer data)
{
  g_signal_connect_after (gtk_widget_get_frame_clock (window), "after-paint", G_CALLBACK (first_painted_cb),
                          NULL);
}

static void
first_added_cb (GtkApplication *application, GtkWindow *window, gpointer data)
{
  g_signal_connect (window, "realize", G_CALLBACK (first_realized_cb), NULL);
}

static inline void
tell_first_frame (GtkApplication *application)
{
  g_signal_connect (application, "window-added", G_CALLBACK (first_added_cb), NULL);
}
