/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "screen-server.h"

#include <math.h>
#include <sys/socket.h>

#ifdef GDK_WINDOWING_X11
#include <gdk/x11/gdkx.h>

/* Whoever listens at the other end of the display's socket. */
static pid_t
find_server (GdkDisplay *display)
{
  struct ucred peer = { 0 };
  socklen_t size = sizeof peer;

  if (!GDK_IS_X11_DISPLAY (display)
      || getsockopt (ConnectionNumber (gdk_x11_display_get_xdisplay (display)), SOL_SOCKET, SO_PEERCRED,
                     &peer, &size)
             != 0)
    return 0;
  return peer.pid;
}
#else
static pid_t
find_server (GdkDisplay *display)
{
  return 0;
}
#endif

/* The first number of the kernel's scheduling account: nanoseconds on a processor. */
double
tm_screen_server_seconds (GdkDisplay *display)
{
  g_autofree char *path = g_strdup_printf ("/proc/%d/schedstat", (int)find_server (display));
  g_autofree char *text = NULL;

  if (!g_file_get_contents (path, &text, NULL, NULL))
    return NAN;
  return 1e-9 * (double)g_ascii_strtoull (text, NULL, 10);
}
