/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of a table as features.
 */

#include "exchange-table.h"

#include "exchange-csv.h"
#include "exchange-table-build.h"

#include <glib/gi18n-lib.h>

#define NOT_USED    (-1)
#define MAX_COLUMNS 256

/* Headings as people write them, in lower case; they are data of the file, not of the screen. */
static const struct {
  const char *heading;
  int member;
} headings[] = {
  { "balloon", FEATURE_BALLOON },
  { "balloon no", FEATURE_BALLOON },
  { "balloon number", FEATURE_BALLOON },
  { "no", FEATURE_BALLOON },
  { "nr", FEATURE_BALLOON },
  { "#", FEATURE_BALLOON },
  { "number", FEATURE_BALLOON },
  { "item", FEATURE_BALLOON },
  { "char no", FEATURE_BALLOON },
  { "characteristic no", FEATURE_BALLOON },
  { "characteristic number", FEATURE_BALLOON },
  { "feature", FEATURE_BALLOON },
  { "feature no", FEATURE_BALLOON },
  { "feature number", FEATURE_BALLOON },
  { "requirement", FEATURE_REQUIREMENT },
  { "callout", FEATURE_REQUIREMENT },
  { "dimension", FEATURE_REQUIREMENT },
  { "specification", FEATURE_REQUIREMENT },
  { "spec", FEATURE_REQUIREMENT },
  { "name", FEATURE_NAME },
  { "feature name", FEATURE_NAME },
  { "description", FEATURE_NAME },
  { "lower", FEATURE_LOWER },
  { "lower limit", FEATURE_LOWER },
  { "min", FEATURE_LOWER },
  { "minimum", FEATURE_LOWER },
  { "lsl", FEATURE_LOWER },
  { "upper", FEATURE_UPPER },
  { "upper limit", FEATURE_UPPER },
  { "max", FEATURE_UPPER },
  { "maximum", FEATURE_UPPER },
  { "usl", FEATURE_UPPER },
  { "nominal", FEATURE_NOMINAL },
  { "unit", FEATURE_UNIT },
  { "units", FEATURE_UNIT },
  { "kind", FEATURE_KIND },
  { "type", FEATURE_KIND },
  { "sheet", FEATURE_SHEET },
  { "page", FEATURE_SHEET },
  { "zone", FEATURE_ZONE },
  { "class", FEATURE_CLASS },
  { "designator", FEATURE_CLASS },
  { "places", FEATURE_PLACES },
  { "qty", FEATURE_PLACES },
  { "quantity", FEATURE_PLACES },
  { "method", FEATURE_METHOD },
  { "check", FEATURE_CHECK },
};

/* Which member of a feature each column holds. */
typedef struct {
  int members[MAX_COLUMNS];
  guint n;
} Columns;

typedef struct {
  TmTableBuilder rows;
  Columns columns;
} Builder;

/* Headings. */

/* The member that @cell names, or NOT_USED: case, a closing period and "_" for a space do not matter. */
static int
find_heading (const char *cell)
{
  g_autofree char *plain = g_utf8_casefold (cell, -1);

  g_strdelimit (plain, "_-.", ' ');
  g_strstrip (plain);
  for (gsize i = 0; i < G_N_ELEMENTS (headings); i++)
    {
      if (g_str_equal (headings[i].heading, plain))
        return headings[i].member;
    }
  return NOT_USED;
}

static gboolean
has_digit (const TmCsvRow *row)
{
  for (guint i = 0; i < row->cells->len; i++)
    {
      if (strpbrk (g_ptr_array_index (row->cells, i), "0123456789") != NULL)
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_column (const Columns *columns, int member)
{
  for (guint i = 0; i < columns->n; i++)
    {
      if (columns->members[i] == member)
        return TRUE;
    }
  return FALSE;
}

/* Reads @row as headings; returns how many it knows. */
static guint
read_headings (const TmCsvRow *row, Columns *columns, GPtrArray *unused)
{
  guint known = 0;

  columns->n = 0;
  for (guint i = 0; i < MIN (row->cells->len, MAX_COLUMNS); i++)
    {
      const char *cell = g_ptr_array_index (row->cells, i);
      int member = find_heading (cell);

      if (member != NOT_USED && has_column (columns, member))
        member = NOT_USED;
      if (member != NOT_USED)
        known++;
      else if (*cell != '\0')
        g_ptr_array_add (unused, g_strdup (cell));
      columns->members[columns->n++] = member;
    }
  return known;
}

static void
assume_columns (const TmCsvRow *row, Columns *columns)
{
  const int usual[] = { FEATURE_BALLOON, FEATURE_REQUIREMENT, FEATURE_NAME };

  *columns = (Columns) { { FEATURE_REQUIREMENT }, 1 };
  if (row->cells->len < 2)
    return;
  columns->n = MIN (row->cells->len, (guint)G_N_ELEMENTS (usual));
  for (guint i = 0; i < columns->n; i++)
    columns->members[i] = usual[i];
}

static gboolean
fail_column (const TmCsvRow *row, const char *place, const char *text, GError **error)
{
  g_autofree char *where = g_strdup_printf (_ ("line %u"), row->line);

  tm_exchange_fail (error, TM_EXCHANGE_ERROR_NO_COLUMN, place, where, "%s", text);
  return FALSE;
}

/* Finds what the columns hold, and whether the first row is data (@first = 0) or headings (1). */
static gboolean
find_columns (const GPtrArray *rows, const char *place, Columns *columns, GPtrArray *unused, guint *first,
              GError **error)
{
  const TmCsvRow *row = g_ptr_array_index (rows, 0);

  *first = 1;
  if (read_headings (row, columns, unused) == 0)
    {
      if (rows->len > 1 && row->cells->len > 1 && !has_digit (row) && has_digit (g_ptr_array_index (rows, 1)))
        return fail_column (row, place,
                            _ ("none of the headings is known; name the columns balloon, requirement, name"),
                            error);
      g_ptr_array_set_size (unused, 0);
      assume_columns (row, columns);
      *first = 0;
      return TRUE;
    }
  if (!has_column (columns, FEATURE_REQUIREMENT) && !has_column (columns, FEATURE_LOWER)
      && !has_column (columns, FEATURE_UPPER))
    return fail_column (row, place,
                        _ ("no column “requirement” (and none “lower” or “upper”); add one, or name it so"),
                        error);
  return TRUE;
}

/* Rows. */

/* Lays @source out as a row of the reader; returns NULL, or why it cannot be taken. */
static char *
lay_out (Builder *builder, const TmCsvRow *source)
{
  char *problem = NULL;

  tm_table_builder_start (&builder->rows);
  for (guint i = 0; i < MIN (source->cells->len, builder->columns.n) && problem == NULL; i++)
    if (builder->columns.members[i] != NOT_USED)
      problem = tm_table_builder_set (&builder->rows, (guint)builder->columns.members[i],
                                      g_ptr_array_index (source->cells, i));
  return problem;
}

static TmTableRow *
read_table_row (Builder *builder, const TmCsvRow *source)
{
  TmTableRow *out = g_new0 (TmTableRow, 1);

  out->line = source->line;
  out->read = TM_CALLOUT_OK;
  out->problem = lay_out (builder, source);
  if (out->problem == NULL)
    tm_table_builder_finish (&builder->rows, out);
  return out;
}

/* A number that a later row states is not given to an earlier row that has none. */
static void
note_stated_numbers (Builder *builder, const GPtrArray *rows, guint first)
{
  for (guint i = first; i < rows->len; i++)
    {
      const TmCsvRow *row = g_ptr_array_index (rows, i);

      for (guint column = 0; column < MIN (row->cells->len, builder->columns.n); column++)
        {
          if (builder->columns.members[column] == FEATURE_BALLOON)
            tm_table_builder_note (&builder->rows, g_ptr_array_index (row->cells, column));
        }
    }
}

static void
read_rows (Builder *builder, const GPtrArray *rows, guint first, TmTablePreview *preview)
{
  note_stated_numbers (builder, rows, first);
  for (guint i = first; i < rows->len; i++)
    tm_table_preview_add (preview, read_table_row (builder, g_ptr_array_index (rows, i)));
}

TmTablePreview *
tm_table_preview (const char *text, gsize length, const char *place, TmJob *job, GError **error)
{
  g_autoptr (GPtrArray) rows = tm_csv_read (text, length, place, error);
  g_autoptr (TmTablePreview) preview = NULL;
  Builder builder = { 0 };
  guint first = 0;
  gboolean found;

  if (rows == NULL)
    return NULL;
  if (rows->len == 0)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_MISSING, place, NULL,
                        _ ("the table is empty; put one feature in each row"));
      return NULL;
    }
  preview = tm_table_preview_new ();
  found = find_columns (rows, place, &builder.columns, preview->unused, &first, error);
  if (!found)
    return NULL;
  tm_table_builder_init (&builder.rows, job);
  read_rows (&builder, rows, first, preview);
  tm_table_builder_clear (&builder.rows);
  return g_steal_pointer (&preview);
}

static gboolean
is_addable (const TmTableRow *row)
{
  return row->problem == NULL && row->feature != NULL;
}

guint
tm_table_apply (TmTablePreview *preview, TmJob *job)
{
  guint n = 0;

  for (guint i = 0; i < preview->rows->len; i++)
    {
      const TmTableRow *row = g_ptr_array_index (preview->rows, i);

      if (is_addable (row) && tm_job_find_feature (job, row->feature->balloon) != NULL)
        return 0;
    }
  for (guint i = 0; i < preview->rows->len; i++)
    {
      TmTableRow *row = g_ptr_array_index (preview->rows, i);

      if (is_addable (row) && tm_job_add_feature (job, row->feature) == TM_ADD_OK)
        {
          row->feature = NULL;
          n++;
        }
    }
  return n;
}
