/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-error: what can keep a report from being written, and how its writing is followed.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define TM_REPORT_ERROR (tm_report_error_quark ())
GQuark tm_report_error_quark (void);

typedef enum {
  TM_REPORT_ERROR_CANNOT_WRITE, /* folder missing, read-only, disk full */
  TM_REPORT_ERROR_TOO_LARGE,    /* more rows than a sheet holds */
  TM_REPORT_ERROR_CANCELLED,
  TM_REPORT_ERROR_FAILED,
  TM_REPORT_ERROR_NO_LANGUAGE, /* there is no translation into the language asked for */
} TmReportError;

/* @fraction 0..1 of the work is done; FALSE cancels. */
typedef gboolean (*TmReportProgress) (double fraction, gpointer data);

G_END_DECLS
