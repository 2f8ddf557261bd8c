/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-template-versions: the versions of the shop's report template that the book has, each with who and
 * when, to be looked at and taken again.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @template is borrowed. */
typedef void (*TmTemplateTaken) (const TmTemplate *template, gpointer data);

/* Shows them over the window that @any_child is in, which outlives it with @book; @document, for the preview,
 * may be NULL.  The one that is taken goes to @taken, with @data, and nothing is recorded yet.  NULL, with
 * the reason in @error, when the book cannot be read.  Borrowed. */
GtkWindow *tm_template_versions_present (GtkWidget *any_child, TmBook *book, TmDocument *document,
                                         TmTemplateTaken taken, gpointer data, GError **error);

G_END_DECLS
