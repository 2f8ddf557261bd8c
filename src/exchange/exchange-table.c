/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of a table as features.  A row is laid out as a row of the job file's "features" and goes
 * through the same reader, so that both take the same values and refuse the same ones.
 */

#include "exchange-table.h"

#include "exchange-csv.h"
#include "exchange-job-read.h"

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

/* What the rows are read with: one row of the reader, filled anew for each line. */
typedef struct {
  TmJob *job;
  Columns columns;
  TmJsonRow row;
  GHashTable *taken; /* balloons of the rows before */
  guint next_number;
} Builder;

static void
free_table_row (gpointer data)
{
  TmTableRow *row = data;

  g_clear_pointer (&row->feature, tm_feature_free);
  g_free (row->problem);
  g_free (row);
}

void
tm_table_preview_free (TmTablePreview *preview)
{
  g_ptr_array_unref (preview->rows);
  g_ptr_array_unref (preview->unused);
  g_free (preview);
}

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

static void
set_text (TmJsonRow *row, guint member, const char *text)
{
  row->slots[member].given = TRUE;
  row->slots[member].at = row->texts->len;
  g_string_append (row->texts, text);
  g_string_append_c (row->texts, '\0');
}

/* Sets a count; FALSE when the cell holds none. */
static gboolean
set_whole (TmJsonRow *row, guint member, const char *text)
{
  guint64 whole;

  if (!g_ascii_string_to_unsigned (text, 10, 0, 999999999, &whole, NULL))
    return FALSE;
  row->slots[member].given = TRUE;
  row->slots[member].whole = (guint)whole;
  return TRUE;
}

/* Sets one cell; returns NULL, or why it cannot be taken. */
static char *
set_cell (TmJsonRow *row, int member, const char *cell)
{
  g_autofree char *lower = g_ascii_strdown (cell, -1);
  g_autofree char *quoted = NULL;

  if (member == NOT_USED || *cell == '\0')
    return NULL;
  if (row->shape[member].type != TM_JSON_WHOLE)
    {
      gboolean is_word = member == FEATURE_KIND || member == FEATURE_CLASS || member == FEATURE_CHECK;

      set_text (row, (guint)member, is_word ? lower : cell);
      return NULL;
    }
  if (set_whole (row, (guint)member, cell))
    return NULL;
  quoted = tm_exchange_quote (cell);
  return g_strdup_printf (_ ("places: %s is no whole number; write it like 4"), quoted);
}

/* Lays @source out as a row of the reader; returns NULL, or why it cannot be taken. */
static char *
lay_out (Builder *builder, const TmCsvRow *source)
{
  TmJsonRow *row = &builder->row;
  char *problem = NULL;

  memset (row->slots, 0, sizeof row->slots);
  g_string_truncate (row->texts, 0);
  for (guint i = 0; i < MIN (source->cells->len, builder->columns.n) && problem == NULL; i++)
    problem = set_cell (row, builder->columns.members[i], g_ptr_array_index (source->cells, i));
  return problem;
}

static void
number_row (Builder *builder)
{
  g_autofree char *number = NULL;

  if (*tm_json_text (&builder->row, FEATURE_BALLOON) != '\0')
    return;
  number = g_strdup_printf ("%u", builder->next_number);
  set_text (&builder->row, FEATURE_BALLOON, number);
}

/* Notes that @balloon is in use. */
static void
note_number (Builder *builder, const char *balloon)
{
  guint64 number;

  if (g_ascii_string_to_unsigned (balloon, 10, 0, 999999998, &number, NULL))
    builder->next_number = MAX (builder->next_number, (guint)number + 1);
}

static gboolean
is_empty (const TmJsonRow *row)
{
  return *tm_json_text (row, FEATURE_REQUIREMENT) == '\0' && *tm_json_text (row, FEATURE_LOWER) == '\0'
         && *tm_json_text (row, FEATURE_UPPER) == '\0';
}

/* Why @feature cannot join the job, or NULL. */
static char *
check_balloon (const Builder *builder, const TmFeature *feature)
{
  if (tm_job_find_feature (builder->job, feature->balloon) != NULL)
    return g_strdup_printf (_ ("balloon %s is in the job already; give it another number"), feature->balloon);
  if (g_hash_table_contains (builder->taken, feature->balloon))
    return g_strdup_printf (_ ("balloon %s stands in a row before; give it another number"),
                            feature->balloon);
  return NULL;
}

static void
build_feature (Builder *builder, TmTableRow *out)
{
  g_autoptr (GError) error = NULL;
  TmFeature *feature;

  if (is_empty (&builder->row))
    {
      out->problem = g_strdup (_ ("has neither a requirement nor limits; give it one of them"));
      return;
    }
  number_row (builder);
  feature = tm_read_feature (builder->job, &builder->row, &out->read, &error);
  if (feature == NULL)
    {
      /* The path in the row is ".lower": the preview names the line itself. */
      out->problem = g_strdup (error->message + (*error->message == '.' ? 1 : 0));
      return;
    }
  if (feature->kind != TM_KIND_NOTE)
    out->read = TM_CALLOUT_OK;
  out->feature = feature;
  out->problem = check_balloon (builder, feature);
  g_hash_table_add (builder->taken, (gpointer)feature->balloon);
  note_number (builder, feature->balloon);
}

static TmTableRow *
read_table_row (Builder *builder, const TmCsvRow *source)
{
  TmTableRow *out = g_new0 (TmTableRow, 1);

  out->line = source->line;
  out->read = TM_CALLOUT_OK;
  out->problem = lay_out (builder, source);
  if (out->problem == NULL)
    build_feature (builder, out);
  return out;
}

static void
init_builder (Builder *builder, TmJob *job)
{
  *builder = (Builder) { .job = job, .next_number = 1 };
  builder->row.source = builder->row.section = "";
  builder->row.shape = tm_job_sections[IN_FEATURES].inside;
  builder->row.texts = g_string_new (NULL);
  builder->row.extra = g_string_new (NULL);
  for (guint i = 0; i < TM_JSON_MAX_OBJECTS; i++)
    builder->row.inner_extra[i] = g_string_new (NULL);
  builder->row.lists = g_array_new (FALSE, FALSE, sizeof (gsize));
  builder->taken = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < job->features->len; i++)
    note_number (builder, ((TmFeature *)g_ptr_array_index (job->features, i))->balloon);
}

static void
clear_builder (Builder *builder)
{
  g_string_free (builder->row.texts, TRUE);
  g_string_free (builder->row.extra, TRUE);
  for (guint i = 0; i < TM_JSON_MAX_OBJECTS; i++)
    g_string_free (builder->row.inner_extra[i], TRUE);
  g_array_unref (builder->row.lists);
  g_hash_table_unref (builder->taken);
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
            note_number (builder, g_ptr_array_index (row->cells, column));
        }
    }
}

TmTablePreview *
tm_table_preview (const char *text, gsize length, const char *place, TmJob *job, GError **error)
{
  g_autoptr (GPtrArray) rows = tm_csv_read (text, length, place, error);
  g_autoptr (TmTablePreview) preview = NULL;
  Builder builder;
  guint first = 0;

  if (rows == NULL)
    return NULL;
  preview = g_new0 (TmTablePreview, 1);
  preview->rows = g_ptr_array_new_with_free_func (free_table_row);
  preview->unused = g_ptr_array_new_with_free_func (g_free);
  if (rows->len == 0)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_MISSING, place, NULL,
                        _ ("the table is empty; put one feature in each row"));
      return NULL;
    }
  init_builder (&builder, job);
  if (!find_columns (rows, place, &builder.columns, preview->unused, &first, error))
    {
      clear_builder (&builder);
      return NULL;
    }
  note_stated_numbers (&builder, rows, first);
  for (guint i = first; i < rows->len; i++)
    {
      TmTableRow *row = read_table_row (&builder, g_ptr_array_index (rows, i));

      g_ptr_array_add (preview->rows, row);
      preview->n_addable += row->problem == NULL;
    }
  clear_builder (&builder);
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
