/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-cut-history: how a tool answered on the other jobs of the book, looked up off the main loop.
 */

#pragma once

#include <gio/gio.h>

#include "app-document.h"

G_BEGIN_DECLS

/* Hands the answers of the tool @name to the document's session, once for each tool, and then calls @known
 * with @data, both on the main loop.  Does nothing where they are there or on their way.  @owner: when it is
 * gone before, nothing is called. */
void tm_cut_history_ask (TmDocument *document, const char *name, GObject *owner,
                         void (*known) (gpointer data), gpointer data);

G_END_DECLS
