/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-judged: how it was judged, in plain paragraphs.
 */

#include <glib/gi18n-lib.h>

#include "report-rule-words.h"
#include "report-sheet-words.h"
#include "report-sheets.h"
#include "report-words.h"

static const double widths[] = { 24, 24, 24, 24, 24, 24 };

static char *
say_rule (gconstpointer job)
{
  return tm_report_rule (job);
}

void
tm_sheet_write_judged (TmWorkbook *workbook)
{
  const guint n = G_N_ELEMENTS (widths);
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("How it was judged"), N_ ("How it was judged"), NULL))
    {
      tm_sheet_columns (&sheet, widths, n);
      tm_sheet_say (&sheet, n, say_rule, workbook->job);
      tm_sheet_say_text (&sheet, n, tm_report_uncertainty_words ());
    }
  tm_sheet_end (&sheet);
}
