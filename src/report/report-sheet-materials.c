/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-materials: materials, special processes and functional tests.  The job holds only the
 * material's name; the rest is filled in by hand, in rows marked for it.
 */

#include <glib/gi18n-lib.h>

#include "report-sheets.h"

#define ROWS_BY_HAND 6

static const TmColumn columns[] = {
  { N_ ("Material or process"), 30, 40 },
  { N_ ("Specification"), 24, 30 },
  { N_ ("Code"), 12, 16 },
  { N_ ("Supplier"), 24, 30 },
  { N_ ("Customer approval verified (yes, no, not needed)"), 22, 26 },
  { N_ ("Certificate number"), 20, 26 },
  { N_ ("Comment"), 30, 40 },
};

static const TmColumn test_columns[] = {
  { N_ ("Functional test"), 30, 40 }, { N_ ("Procedure"), 24, 30 },          { N_ ("Revision"), 12, 16 },
  { N_ ("Done by"), 24, 30 },         { N_ ("Accepted (yes, no)"), 22, 26 }, { N_ ("Report number"), 20, 26 },
  { N_ ("Comment"), 30, 40 },
};

/* @first may be "": then the row is wholly to be filled in. */
static void
write_row (TmSheet *sheet, const char *first)
{
  worksheet_set_row (sheet->sheet, sheet->row, 20.0, NULL);
  if (*first != '\0')
    tm_sheet_text (sheet, 0, first, TM_STYLE_STRONG);
  else
    tm_sheet_blank (sheet, 0, TM_STYLE_BY_HAND);
  for (guint column = 1; column < G_N_ELEMENTS (columns); column++)
    tm_sheet_blank (sheet, column, TM_STYLE_BY_HAND);
  tm_sheet_down (sheet);
}

void
tm_sheet_write_materials (TmWorkbook *workbook)
{
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("Materials and processes"), _ ("Materials, processes and tests"),
                      _ ("One line for each raw material, special process and functional test. Shaded cells "
                         "are not held by the job: fill them in by hand.")))
    {
      tm_sheet_head (&sheet, columns, G_N_ELEMENTS (columns), G_N_ELEMENTS (columns));
      write_row (&sheet, workbook->job->material);
      for (guint i = 0; i < ROWS_BY_HAND; i++)
        write_row (&sheet, "");
      tm_sheet_down (&sheet);
      tm_sheet_head (&sheet, test_columns, G_N_ELEMENTS (test_columns), G_N_ELEMENTS (test_columns));
      for (guint i = 0; i < ROWS_BY_HAND / 2; i++)
        write_row (&sheet, "");
    }
  tm_sheet_end (&sheet);
}
