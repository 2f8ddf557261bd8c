/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * pages-support: a document for the tests of pages.
 */

#pragma once

#include "report-document.h"

/* A table of @n rows with three columns, the first numbered. */
static inline TmReportDocument *
make_table (guint n)
{
  static const TmReportColumn columns[] = { { "No.", 20, 0, 0, TM_CELL_CENTRE },
                                            { "Requirement", 60, 200, 1, TM_CELL_PLAIN },
                                            { "Result", 40, 0, 0, TM_CELL_NUMBER } };
  TmReportDocument *document = tm_report_document_new ("Report");

  document->head_left = tm_report_text (document, "P-1 A");
  document->head_right = tm_report_text (document, "R-17");
  tm_report_add_section (document, "Table", "table", FALSE);
  tm_report_begin_table (document, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *number = g_strdup_printf ("n%u", i + 1);
      g_autofree char *result = g_strdup_printf ("25.%04u", i);

      tm_report_add_cell (document, number);
      tm_report_add_cell (document, "Ø25 H7");
      tm_report_add_cell (document, result);
    }
  return document;
}
