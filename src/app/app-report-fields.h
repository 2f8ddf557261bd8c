/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-fields: the rows for what the shop's template asks of a job, and for what the job answers
 * besides.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"

G_BEGIN_DECLS

typedef struct _TmReportFields TmReportFields;

/* Adds a group with the rows at the end of @into; NULL where there is nothing to ask.  @activated is called
 * with @data when Enter is pressed in a row. */
TmReportFields *tm_report_fields_new (GtkBox *into, TmDocument *document, GCallback activated,
                                      gpointer data) G_GNUC_WARN_UNUSED_RESULT;
void tm_report_fields_free (TmReportFields *fields);

/* The row of the field, borrowed; NULL when there is none. */
GtkWidget *tm_report_fields_row (TmReportFields *fields, const char *name);

/* Puts what was typed into @job, whose rows must be those of before; an answer that was emptied is taken
 * out. */
void tm_report_fields_read (TmReportFields *fields, TmJob *job);

G_END_DECLS
