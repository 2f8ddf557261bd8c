/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-logo: a logo out of a file, read and tried on a thread.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Runs on the main loop: @logo NULL with one line in @error, or both NULL when it was cancelled; @media
 * "image/png"… */
typedef void (*TmLogoRead) (GtkWidget *parent, GBytes *logo, const char *media, const GError *error,
                            gpointer data);

void tm_logo_read (GtkWidget *parent, const char *path, TmLogoRead done, gpointer data);

G_END_DECLS
