/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-export: asking where a report is to be written, writing it, and saying so.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

typedef enum { TM_EXPORT_WORKBOOK, TM_EXPORT_PAGES, TM_EXPORT_QIF, TM_EXPORT_TABLE } TmExport;

/* Asks for the file and writes it over @page. */
void tm_report_export (GtkWidget *page, TmDocument *document, TmExport export);

/* Writes @path by its ending, and says so. */
void tm_report_export_to (GtkWidget *page, TmDocument *document, const char *path);

G_END_DECLS
