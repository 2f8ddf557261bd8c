/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-workbook-state: how far the workbook is, whether whoever waits still wants it, and what failed.
 */

#include <glib/gi18n-lib.h>

#include "report-sheet.h"

gboolean
tm_workbook_stopped (const TmWorkbook *workbook)
{
  return workbook->cancelled || workbook->error != NULL;
}

/* Often enough for whoever waits, and seldom enough to cost nothing. */
#define ASK_EVERY (15 * G_TIME_SPAN_MILLISECOND)

gboolean
tm_workbook_tell (TmWorkbook *workbook, double fraction)
{
  if (tm_workbook_stopped (workbook))
    return FALSE;
  workbook->asked = g_get_monotonic_time ();
  workbook->told = MAX (workbook->told, fraction);
  if (workbook->progress != NULL && !workbook->progress (workbook->told, workbook->data))
    workbook->cancelled = TRUE;
  return !workbook->cancelled;
}

gboolean
tm_workbook_goes_on (TmWorkbook *workbook, double fraction)
{
  if (g_get_monotonic_time () - workbook->asked < ASK_EVERY)
    return !tm_workbook_stopped (workbook);
  return tm_workbook_tell (workbook, fraction);
}

gboolean
tm_workbook_ask_stop (gpointer workbook)
{
  return !tm_workbook_goes_on (workbook, ((TmWorkbook *)workbook)->done);
}

void
tm_workbook_fail (TmWorkbook *workbook, TmReportError code, const char *format, ...)
{
  va_list arguments;

  if (workbook->error != NULL)
    return;
  va_start (arguments, format);
  workbook->error = g_error_new_valist (TM_REPORT_ERROR, (int)code, format, arguments);
  va_end (arguments);
}

/* An image's size cannot be read when the library's own copy of it was cut short. */
static gboolean
is_file_error (lxw_error status)
{
  return (status >= LXW_ERROR_CREATING_XLSX_FILE && status <= LXW_ERROR_ZIP_CLOSE)
         || status == LXW_ERROR_IMAGE_DIMENSIONS;
}

void
tm_workbook_check (TmWorkbook *workbook, lxw_error status)
{
  if (is_file_error (status))
    tm_workbook_fail (workbook, TM_REPORT_ERROR_CANNOT_WRITE,
                      _ ("The temporary folder %s cannot hold the workbook: make room there"),
                      g_get_tmp_dir ());
  else if (status != LXW_NO_ERROR)
    tm_workbook_fail (workbook, TM_REPORT_ERROR_FAILED, _ ("The workbook could not be made: %s"),
                      lxw_strerror (status));
}
