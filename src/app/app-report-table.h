/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-table: the characteristics as they will go out, as a column view.
 */

#pragma once

#include <gtk/gtk.h>

#include "report-content.h"

G_BEGIN_DECLS

/* A GtkColumnView over a list model of TmPointerItem with TmReportLine. */
GtkWidget *tm_report_table_new (GListModel *lines) G_GNUC_WARN_UNUSED_RESULT;

/* The piece column is shown only when there is more than one piece. */
void tm_report_table_show_pieces (GtkWidget *table, gboolean show);

G_END_DECLS
