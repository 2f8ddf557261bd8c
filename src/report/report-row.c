/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-row.h"

#include <glib/gi18n-lib.h>

static const char *
get_row_id (gpointer row)
{
  return row != NULL ? ((const TmEntryRow *)row)->id : "";
}

static char *
describe_status (const TmEntryRow *row)
{
  if (row->withdrawn != NULL)
    return g_strdup (_ ("withdrawn"));
  if (row->replaced_by != NULL)
    return g_strdup_printf (_ ("corrected by %s"), get_row_id (row->replaced_by));
  if (row->before_rework)
    return g_strdup (_ ("before a rework"));
  return g_strdup (row->before_cut ? _ ("before a cut") : _ ("counts"));
}

/* Why a row was corrected, and who withdrew it, when and why. */
static char *
describe_reason (const TmEntryRow *row)
{
  GString *out = g_string_new (row->reason);

  if (row->withdrawn != NULL)
    {
      if (out->len > 0)
        g_string_append (out, "; ");
      g_string_append_printf (out, _ ("withdrawn by %s, %s: %s"), row->withdrawn->by, row->withdrawn->at,
                              row->withdrawn->reason);
    }
  return g_string_free (out, FALSE);
}

void
tm_sheet_row_status (TmSheet *sheet, const TmEntryRow *row, guint column)
{
  g_autofree char *status_text = describe_status (row);
  g_autofree char *reason_text = describe_reason (row);

  tm_sheet_text (sheet, column, status_text, TM_STYLE_TEXT);
  tm_sheet_text (sheet, column + 1, row->replaces, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, column + 2, reason_text, TM_STYLE_TEXT);
}

gboolean
tm_sheet_rows_fit (TmWorkbook *workbook, guint n)
{
  if (n < TM_SHEET_ROWS - 8)
    return TRUE;
  tm_workbook_fail (workbook, TM_REPORT_ERROR_TOO_LARGE,
                    _ ("%u readings are more than the %u rows of a sheet hold: split the job"), n,
                    TM_SHEET_ROWS);
  return FALSE;
}
