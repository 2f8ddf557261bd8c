/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * screen-server: the processor time that the X server of a display has taken, seconds; NAN where that is not
 * known.
 */

#pragma once

#include <gtk/gtk.h>

double tm_screen_server_seconds (GdkDisplay *display);
