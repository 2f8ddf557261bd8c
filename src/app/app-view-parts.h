/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-view-parts: what the heads and columns of several views are made of.
 */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A button with a mnemonic that does @action; @tip may be NULL. */
GtkWidget *tm_view_button_new (const char *label, const char *action,
                               const char *tip) G_GNUC_WARN_UNUSED_RESULT;

/* @child, which is scrolled up and down alone and takes the height that there is. */
GtkWidget *tm_view_scroller_new (GtkWidget *child) G_GNUC_WARN_UNUSED_RESULT;

/* A line that begins at the left; it wraps, or else ends in an ellipsis where it is too long. */
GtkLabel *tm_view_label_new (const char *css_class, gboolean wraps) G_GNUC_WARN_UNUSED_RESULT;

/* A head with a title, and one with a title over a fainter line, both empty; more is appended at its end. */
GtkWidget *tm_view_title_new (const char *title) G_GNUC_WARN_UNUSED_RESULT;
GtkWidget *tm_view_head_new (GtkLabel **title, GtkLabel **about) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
