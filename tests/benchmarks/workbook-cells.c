/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "workbook-cells.h"

#include "zip-support.h"

/* The text between @open and the next '<' after it, ended in place; NULL where there is none before @end. */
static char *
take (char *from, const char *end, const char *open)
{
  char *at = g_strstr_len (from, end - from, open), *close;

  if (at == NULL)
    return NULL;
  at = strchr (at, '>') + 1;
  close = strchr (at, '<');
  *close = '\0';
  return at;
}

static void
read_address (const char *at, TmWorkbookCell *cell)
{
  cell->column = 0;
  for (; g_ascii_isalpha (*at); at++)
    cell->column = cell->column * 26 + (guint32)(*at - 'A') + 1;
  cell->column--;
  cell->row = (guint32)g_ascii_strtoull (at, NULL, 10) - 1;
}

/* @value comes last in the cell, so that nothing behind it is lost by ending it in place. */
static void
read_content (TmWorkbookCell *cell, char *from, const char *end, gboolean is_text)
{
  const gboolean has_formula = g_strstr_len (from, end - from, "<f>") != NULL;
  char *value = take (from, end, is_text && !has_formula ? "<t" : "<v");

  g_assert_nonnull (value);
  if (is_text)
    cell->text = value;
  else
    cell->number = g_ascii_strtod (value, NULL);
  if (has_formula)
    cell->formula = take (from, end, "<f>");
  cell->kind = is_text       ? has_formula ? TM_CELL_KIND_TEXT_FORMULA : TM_CELL_KIND_TEXT
               : has_formula ? TM_CELL_KIND_NUMBER_FORMULA
                             : TM_CELL_KIND_NUMBER;
}

/* Reads the cell at @at, "<c r=…"; what stands behind it. */
static char *
read_cell (char *at, TmWorkbookCell *cell)
{
  char *inside = strchr (at, '>') + 1;
  char *style = g_strstr_len (at, inside - at, " s=\""), *type = g_strstr_len (at, inside - at, " t=\"");
  char *end;

  memset (cell, 0, sizeof *cell);
  read_address (at + strlen ("<c r=\""), cell);
  if (style != NULL)
    cell->style = (guint)g_ascii_strtoull (style + 4, NULL, 10);
  if (inside[-2] == '/')
    return inside;
  end = strstr (inside, "</c>");
  g_assert (type == NULL || !g_str_has_prefix (type, " t=\"s\""));
  read_content (cell, inside, end, type != NULL);
  return end;
}

static GArray *
read_sheet (char *sheet, guint *n_styles)
{
  GArray *cells = g_array_new (FALSE, FALSE, sizeof (TmWorkbookCell));
  char *at = strstr (sheet, "<sheetData");

  while ((at = strstr (at, "<c r=\"")) != NULL)
    {
      TmWorkbookCell cell;

      at = read_cell (at, &cell);
      *n_styles = MAX (*n_styles, cell.style + 1);
      g_array_append_val (cells, cell);
    }
  return cells;
}

TmWorkbookCells *
tm_workbook_cells_read (const char *path)
{
  TmWorkbookCells *cells = g_new0 (TmWorkbookCells, 1);

  cells->sheets = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  cells->members = g_ptr_array_new_with_free_func (g_free);
  cells->n_styles = 1;
  for (guint i = 1;; i++)
    {
      g_autofree char *name = g_strdup_printf ("xl/worksheets/sheet%u.xml", i);
      char *member = zip_find (path, name, NULL);

      if (member == NULL)
        break;
      g_ptr_array_add (cells->members, member);
      g_ptr_array_add (cells->sheets, read_sheet (member, &cells->n_styles));
    }
  g_assert_cmpuint (cells->sheets->len, >, 0);
  return cells;
}

void
tm_workbook_cells_free (TmWorkbookCells *cells)
{
  g_ptr_array_unref (cells->sheets);
  g_ptr_array_unref (cells->members);
  g_free (cells);
}
