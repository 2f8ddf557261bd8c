/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-signatures: who signed, over which record and which files, and lines to sign on by hand.
 */

#include <glib/gi18n-lib.h>

#include "report-sheet-shop.h"
#include "report-sheet-words.h"
#include "report-sheets.h"
#include "report-signed.h"

static const double widths[] = { 26, 28, 20, 34, 20, 42, 42, 42 };

static const char *const heads[] = { N_ ("Role"),
                                     N_ ("Name"),
                                     N_ ("Date"),
                                     N_ ("Signature"),
                                     N_ ("Report identifier"),
                                     N_ ("Record signed (SHA-256)"),
                                     N_ ("Pages signed (SHA-256)"),
                                     N_ ("Workbook signed (SHA-256)") };

#define N_BY_HAND 4 /* columns of the lines to sign on */

static void
write_signature (TmSheet *sheet, const TmSignature *signature)
{
  const TmReportContent *content = sheet->workbook->content;
  const gboolean known = g_strv_contains (tm_report_roles (), signature->role);
  g_autofree char *said = tm_report_say_signature (content, signature);

  tm_sheet_text (sheet, 0, known ? tm_sheet_label (sheet->workbook, NULL, signature->role) : signature->role,
                 TM_STYLE_STRONG);
  tm_sheet_text (sheet, 1, tm_report_signer (content->job, signature), TM_STYLE_TEXT);
  tm_sheet_time (sheet, 2, signature->at);
  tm_sheet_text (sheet, 3, said, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 4, signature->report, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 5, signature->digest, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 6, signature->pages, TM_STYLE_TEXT);
  tm_sheet_text (sheet, 7, signature->workbook, TM_STYLE_TEXT);
  tm_sheet_next (sheet, 0.5);
}

static char *
say_gaps (gconstpointer content)
{
  return tm_report_say_signed_with_gaps (content);
}

static void
write_signed (TmSheet *sheet)
{
  const TmReportContent *content = sheet->workbook->content;
  const GPtrArray *signatures = content->job->signatures;

  if (signatures->len == 0)
    return;
  tm_sheet_heads (sheet, heads, G_N_ELEMENTS (heads));
  for (guint i = 0; i < signatures->len && !tm_workbook_stopped (sheet->workbook); i++)
    write_signature (sheet, g_ptr_array_index (signatures, i));
  tm_sheet_say (sheet, G_N_ELEMENTS (heads), say_gaps, content);
  tm_sheet_down (sheet);
}

/* For those who have not signed. */
static void
write_lines (TmSheet *sheet)
{
  gboolean has_head = FALSE;

  for (const char *const *role = tm_report_roles (); *role != NULL; role++)
    {
      if (tm_report_role_is_signed (sheet->workbook->content, *role))
        continue;
      if (!has_head)
        tm_sheet_heads (sheet, heads, N_BY_HAND);
      has_head = TRUE;
      tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, *role), TM_STYLE_LABEL);
      for (guint column = 1; column < N_BY_HAND; column++)
        tm_sheet_blank (sheet, column, TM_STYLE_BY_HAND);
      sheet->lines = MAX (sheet->lines, 2);
      tm_sheet_down (sheet);
    }
}

void
tm_sheet_write_signatures (TmWorkbook *workbook)
{
  /* Without digests, as wide as the lines to sign on. */
  const gboolean is_signed = workbook->job->signatures->len > 0;
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("Signatures"), N_ ("Signatures"),
                      _ ("Shaded cells are to be filled in by hand.")))
    {
      tm_sheet_columns (&sheet, widths, is_signed ? G_N_ELEMENTS (widths) : N_BY_HAND);
      tm_sheet_write_statements (&sheet, TM_STATEMENT_BEFORE_SIGNATURES,
                                 is_signed ? G_N_ELEMENTS (widths) : N_BY_HAND);
      write_signed (&sheet);
      write_lines (&sheet);
    }
  tm_sheet_end (&sheet);
}
