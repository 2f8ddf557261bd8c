/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-facts: the dialog for what a first-article report says of itself: its identifier, who makes it,
 * the state of the drawing, its languages.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

/* TRUE when the dialog has a row for the member of TmJob with this name ("report_identifier"). */
gboolean tm_report_facts_has (const char *fact);

/* The row of @fact has the focus; NULL: the first. */
GtkWindow *tm_report_facts_present (GtkWidget *any_child, TmDocument *document, const char *fact);

/* The same with the focus on the row of a field that the shop's template or the job has. */
GtkWindow *tm_report_facts_present_field (GtkWidget *any_child, TmDocument *document, const char *name);

G_END_DECLS
