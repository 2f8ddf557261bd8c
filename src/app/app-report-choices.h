/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-choices: the dialog in which the form of the report is chosen: its languages, which the job
 * keeps, decimal mark, dates, paper and orientation, which are remembered.  Each choice counts at once.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* @changed is called with @page after something other than the languages was chosen; those are told by the
 * document. */
GtkWindow *tm_report_choices_present (GtkWidget *page, TmDocument *document,
                                      void (*changed) (GtkWidget *page));

G_END_DECLS
