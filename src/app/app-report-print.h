/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-print: the pages of a report on a printer.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-report-paper.h"

G_BEGIN_DECLS

/* Asks for a printer and prints; @path: writes a PDF there instead, asking nothing.  @name is what the
 * printer's queue calls it, @current the page, from 0, that "current page" means.  Returns when it has been
 * handed over. FALSE with @error where that failed; given up is no error. */
gboolean tm_report_print (GtkWindow *parent, TmReportPaper *paper, const char *name, guint current,
                          const char *path, GError **error);

G_END_DECLS
