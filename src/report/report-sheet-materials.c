/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-materials: materials, special processes and functional tests; the parts of an assembly.  What
 * the job does not hold is filled in by hand, in cells marked for it.
 */

#include <glib/gi18n-lib.h>

#include "report-sheet-words.h"
#include "report-sheets.h"
#include "report-supply-words.h"

#define ROWS_BY_HAND 6

static const TmColumn columns[] = {
  { N_ ("Material or process"), 30, 40 },
  { N_ ("Specification"), 24, 30 },
  { N_ ("Code"), 12, 16 },
  { N_ ("Supplier"), 24, 30 },
  { N_ ("Customer approval verified (yes, no, not needed)"), 22, 26 },
  { N_ ("Certificate number"), 20, 26 },
  { N_ ("Comment"), 30, 40 },
  { N_ ("Kind"), 12, 20 },
};

static const TmColumn test_columns[] = {
  { N_ ("Functional test"), 30, 40 }, { N_ ("Procedure"), 24, 30 },          { N_ ("Code"), 12, 16 },
  { N_ ("Done by"), 24, 30 },         { N_ ("Accepted (yes, no)"), 22, 26 }, { N_ ("Report number"), 20, 26 },
  { N_ ("Comment"), 30, 40 },
};

static const TmColumn sub_part_columns[] = {
  { N_ ("Part number"), 30, 40 },
  { N_ ("Part name"), 24, 30 },
  { N_ ("Serial"), 12, 16 },
  { N_ ("Report identifier"), 24, 30 },
};

/* What is not known is to be filled in. */
static void
write_row (TmSheet *sheet, const char *const *cells, guint n)
{
  worksheet_set_row (sheet->sheet, sheet->row, 20.0, NULL);
  for (guint column = 0; column < n; column++)
    if (*cells[column] != '\0')
      tm_sheet_text (sheet, column, cells[column], column == 0 ? TM_STYLE_STRONG : TM_STYLE_TEXT);
    else
      tm_sheet_blank (sheet, column, TM_STYLE_BY_HAND);
  tm_sheet_down (sheet);
}

static void
write_blanks (TmSheet *sheet, const char *first, guint n_columns, guint rows)
{
  const char *cells[] = { first, "", "", "", "", "", "", "" };

  for (guint i = 0; i < rows; i++)
    {
      write_row (sheet, cells, n_columns);
      cells[0] = "";
    }
}

/* A comment may stay empty.  Whether a test was accepted stands in its report. */
static void
write_supply (TmSheet *sheet, const TmSupply *supply)
{
  const char *approval = supply->kind != TM_SUPPLY_TEST ? tm_report_approval_word (supply->approval) : "";
  const char *cells[] = {
    supply->name,
    supply->specification,
    supply->code,
    supply->supplier,
    tm_sheet_label (sheet->workbook, "approval", approval),
    supply->certificate,
  };

  tm_sheet_text (sheet, G_N_ELEMENTS (cells), supply->note, TM_STYLE_TEXT);
  if (supply->kind != TM_SUPPLY_TEST)
    tm_sheet_text (sheet, G_N_ELEMENTS (cells) + 1,
                   tm_sheet_label (sheet->workbook, NULL, tm_report_supply_word (supply->kind)),
                   TM_STYLE_TEXT);
  write_row (sheet, cells, G_N_ELEMENTS (cells));
}

/* Those of the tests, or the others; how many there were. */
static guint
write_supplies (TmSheet *sheet, gboolean tests)
{
  const GPtrArray *supplies = sheet->workbook->job->supplies;
  guint n = 0;

  for (guint i = 0; i < supplies->len && !tm_workbook_stopped (sheet->workbook); i++)
    {
      const TmSupply *supply = g_ptr_array_index (supplies, i);

      if ((supply->kind == TM_SUPPLY_TEST) != tests)
        continue;
      write_supply (sheet, supply);
      n++;
    }
  return n;
}

static void
write_sub_parts (TmSheet *sheet)
{
  const TmJob *job = sheet->workbook->job;

  if (job->article != TM_ARTICLE_ASSEMBLY && job->sub_parts->len == 0)
    return;
  tm_sheet_down (sheet);
  tm_sheet_head (sheet, sub_part_columns, G_N_ELEMENTS (sub_part_columns), G_N_ELEMENTS (columns));
  for (guint i = 0; i < job->sub_parts->len && !tm_workbook_stopped (sheet->workbook); i++)
    {
      const TmSubPart *part = g_ptr_array_index (job->sub_parts, i);
      const char *cells[] = { part->number, part->name, part->serial, part->report };

      write_row (sheet, cells, G_N_ELEMENTS (cells));
    }
  if (job->sub_parts->len == 0)
    write_blanks (sheet, "", G_N_ELEMENTS (sub_part_columns), ROWS_BY_HAND);
}

void
tm_sheet_write_materials (TmWorkbook *workbook)
{
  TmSheet sheet;

  if (tm_sheet_begin (&sheet, workbook, _ ("Materials and processes"), N_ ("Materials, processes and tests"),
                      _ ("One line for each raw material, special process and functional test. Shaded cells "
                         "are not held by the job: fill them in by hand.")))
    {
      tm_sheet_head (&sheet, columns, G_N_ELEMENTS (columns), G_N_ELEMENTS (columns));
      if (write_supplies (&sheet, FALSE) == 0)
        write_blanks (&sheet, workbook->job->material, G_N_ELEMENTS (columns), ROWS_BY_HAND + 1);
      tm_sheet_down (&sheet);
      tm_sheet_head (&sheet, test_columns, G_N_ELEMENTS (test_columns), G_N_ELEMENTS (test_columns));
      if (write_supplies (&sheet, TRUE) == 0)
        write_blanks (&sheet, "", G_N_ELEMENTS (test_columns), ROWS_BY_HAND / 2);
      write_sub_parts (&sheet);
    }
  tm_sheet_end (&sheet);
}
