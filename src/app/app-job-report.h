/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-report: what the report of a job says besides its features, each opened from a row: its facts, the
 * materials, processes and tests, and of an assembly its parts.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_REPORT (tm_job_report_get_type ())
G_DECLARE_FINAL_TYPE (TmJobReport, tm_job_report, TM, JOB_REPORT, GtkBox)

void tm_job_report_set_document (TmJobReport *self, TmDocument *document);

G_END_DECLS
