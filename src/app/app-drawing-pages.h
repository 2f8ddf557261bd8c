/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-drawing-pages: which pages of a file become drawings of the job, with a look at each.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* @pages: page numbers from 1, guint; at least one. */
typedef void (*TmPagesChosen) (GtkWidget *parent, const GArray *pages, gpointer data);

/* Asks over the window of @any_child about the file @name with @n_pages pages in @content.  Nothing is called
 * when it is closed; @data is freed with @free_data in any case. */
void tm_drawing_pages_present (GtkWidget *any_child, const char *name, GBytes *content, guint n_pages,
                               TmPagesChosen chosen, gpointer data, GDestroyNotify free_data);

G_END_DECLS
