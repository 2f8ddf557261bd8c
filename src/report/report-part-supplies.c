/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-supplies: materials, special processes and functional tests with what proves them; the parts of
 * an assembly with their own reports.  A column that no row has anything for is left out.
 */

#include <glib/gi18n-lib.h>

#include "report-part.h"
#include "report-supply-words.h"

#define MOST_COLUMNS 8

/* A table whose cells are all there before it is known which columns it has. */
typedef struct {
  const TmReportColumn *columns;
  guint n_columns;
  GPtrArray *cells; /* const char *, row by row; the document's */
} Matrix;

static void
add_text (TmParts *parts, Matrix *matrix, const char *text)
{
  g_ptr_array_add (matrix->cells, (gpointer)tm_report_text (parts->document, text));
}

static gboolean
has_text (const Matrix *matrix, guint column)
{
  for (guint i = column; i < matrix->cells->len; i += matrix->n_columns)
    if (*(const char *)g_ptr_array_index (matrix->cells, i) != '\0')
      return TRUE;
  return FALSE;
}

static void
write_matrix (TmParts *parts, const Matrix *matrix)
{
  TmReportColumn own[MOST_COLUMNS];
  gboolean shown[MOST_COLUMNS];
  guint n = 0;

  for (guint i = 0; i < matrix->n_columns; i++)
    {
      shown[i] = has_text (matrix, i);
      if (shown[i])
        own[n++] = matrix->columns[i];
    }
  if (n == 0)
    return;
  tm_part_table (parts, own, n);
  for (guint i = 0; i < matrix->cells->len; i++)
    if (shown[i % matrix->n_columns])
      tm_report_add_cell (parts->document, g_ptr_array_index (matrix->cells, i));
}

static void
add_supplies (TmParts *parts, const GPtrArray *supplies)
{
  static const TmReportColumn columns[] = {
    { N_ ("Kind"), 50, 90, 0.5, TM_CELL_PLAIN },
    { N_ ("Name"), 60, 130, 1.5, TM_CELL_STRONG },
    { N_ ("Specification"), 56, 130, 1, TM_CELL_PLAIN },
    { N_ ("Code"), 26, 60, 0.2, TM_CELL_PLAIN },
    { N_ ("Supplier"), 50, 120, 1, TM_CELL_PLAIN },
    { N_ ("Customer's approval"), 46, 80, 0.3, TM_CELL_PLAIN },
    { N_ ("Certificate or report"), 50, 110, 0.7, TM_CELL_PLAIN },
    { N_ ("Comment"), 50, 150, 1.5, TM_CELL_PLAIN },
  };
  g_autoptr (GPtrArray) cells = g_ptr_array_new ();
  Matrix matrix = { columns, G_N_ELEMENTS (columns), cells };

  for (guint i = 0; i < supplies->len; i++)
    {
      const TmSupply *supply = g_ptr_array_index (supplies, i);

      add_text (parts, &matrix, tm_part_label (parts, NULL, tm_report_supply_word (supply->kind)));
      add_text (parts, &matrix, supply->name);
      add_text (parts, &matrix, supply->specification);
      add_text (parts, &matrix, supply->code);
      add_text (parts, &matrix, supply->supplier);
      add_text (parts, &matrix,
                tm_part_label (parts, "approval", tm_report_approval_word (supply->approval)));
      add_text (parts, &matrix, supply->certificate);
      add_text (parts, &matrix, supply->note);
    }
  write_matrix (parts, &matrix);
}

static void
add_sub_parts (TmParts *parts, const GPtrArray *sub_parts)
{
  static const TmReportColumn columns[] = {
    { N_ ("Part number"), 60, 130, 0.5, TM_CELL_STRONG },
    { N_ ("Part name"), 80, 220, 1, TM_CELL_PLAIN },
    { N_ ("Serial"), 50, 110, 0.4, TM_CELL_PLAIN },
    { N_ ("Report identifier"), 60, 140, 0.6, TM_CELL_PLAIN },
  };
  g_autoptr (GPtrArray) cells = g_ptr_array_new ();
  Matrix matrix = { columns, G_N_ELEMENTS (columns), cells };

  for (guint i = 0; i < sub_parts->len; i++)
    {
      const TmSubPart *part = g_ptr_array_index (sub_parts, i);

      add_text (parts, &matrix, part->number);
      add_text (parts, &matrix, part->name);
      add_text (parts, &matrix, part->serial);
      add_text (parts, &matrix, part->report);
    }
  write_matrix (parts, &matrix);
}

void
tm_part_supplies (TmParts *parts)
{
  const TmJob *job = parts->job;

  if (job->sub_parts->len > 0)
    {
      tm_part_section (parts, N_ ("Parts of the assembly"), "sub-parts", FALSE);
      add_sub_parts (parts, job->sub_parts);
    }
  if (job->supplies->len > 0)
    {
      tm_part_section (parts, N_ ("Materials, processes and tests"), "supplies", FALSE);
      add_supplies (parts, job->supplies);
    }
}
