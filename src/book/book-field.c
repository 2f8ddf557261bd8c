/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-field.h"

#include <string.h>

/* The form of a quantity, "unit.decimals", as a text that lives for ever. */
#define MAX_FORM 16
static char forms[TM_N_UNITS][TM_MAX_DECIMALS + 1][MAX_FORM];

static void
fill_forms (void)
{
  static gsize done;

  if (!g_once_init_enter (&done))
    return;
  for (guint u = 0; u < TM_N_UNITS; u++)
    {
      for (guint d = 0; d <= TM_MAX_DECIMALS; d++)
        g_snprintf (forms[u][d], MAX_FORM, "%s.%u", tm_book_unit_words[u], d);
    }
  g_once_init_leave (&done, 1);
}

static gboolean
read_form (const char *text, TmQuantity *quantity)
{
  for (guint u = 0; u < TM_N_UNITS; u++)
    {
      if (text[0] != tm_book_unit_words[u][0])
        continue;
      for (guint d = 0; d <= TM_MAX_DECIMALS; d++)
        {
          if (strcmp (text, forms[u][d]) == 0)
            {
              quantity->unit = (guint8)u;
              quantity->decimals = (guint8)d;
              return TRUE;
            }
        }
    }
  return FALSE;
}

void
tm_cells_init (TmCells *cells)
{
  fill_forms ();
  cells->n = 0;
  for (guint i = 0; i < TM_MAX_LISTS; i++)
    cells->lists[i] = g_string_new (NULL);
}

void
tm_cells_clear (TmCells *cells)
{
  for (guint i = 0; i < TM_MAX_LISTS; i++)
    {
      g_string_free (cells->lists[i], TRUE);
      cells->lists[i] = NULL;
    }
}

static void
put_text (TmCells *cells, const char *text)
{
  TmCell *cell = &cells->cell[cells->n++];

  cell->text = text != NULL ? text : "";
  cell->length = (int)strlen (cell->text);
  cell->number = 0;
  cell->filled = TRUE;
}

static void
put_number (TmCells *cells, gint64 number)
{
  cells->cell[cells->n++] = (TmCell) { NULL, number, 0, TRUE };
}

static void
put_nothing (TmCells *cells)
{
  cells->cell[cells->n++] = (TmCell) { NULL, 0, 0, FALSE };
}

static void
put_quantity (TmCells *cells, const TmQuantity *quantity)
{
  if (!quantity->given)
    {
      put_nothing (cells);
      put_nothing (cells);
      return;
    }
  put_number (cells, quantity->count);
  put_text (cells, forms[quantity->unit][quantity->decimals]);
}

/* The usual number is held as nothing: place 1, the only one of most features, as all places were before
 * there were any. */
static void
put_unless (TmCells *cells, guint number, guint usual)
{
  if (number == usual)
    put_nothing (cells);
  else
    put_number (cells, number);
}

/* Appends @text with "\" and line ends written as two characters. */
static void
append_escaped (GString *out, const char *text, gsize length)
{
  gsize plain = strcspn (text, "\\\n");

  while (plain < length)
    {
      g_string_append_len (out, text, (gssize)plain);
      g_string_append (out, text[plain] == '\n' ? "\\n" : "\\\\");
      text += plain + 1;
      length -= plain + 1;
      plain = strcspn (text, "\\\n");
    }
  g_string_append_len (out, text, (gssize)length);
}

/* A line for each text of the list. */
static void
put_list (TmCells *cells, const GPtrArray *list)
{
  GString *out = cells->lists[cells->n_lists++];

  g_string_truncate (out, 0);
  for (guint i = 0; list != NULL && i < list->len; i++)
    {
      const char *text = g_ptr_array_index (list, i);

      append_escaped (out, text, strlen (text));
      g_string_append_c (out, '\n');
    }
  put_text (cells, out->str);
}

static gboolean
is_guarded (const TmField *field, gconstpointer row)
{
  return field->guard != 0 && !G_STRUCT_MEMBER (gboolean, row, field->guard);
}

static void
put_field (TmCells *cells, const TmField *field, gconstpointer row)
{
  switch (field->type)
    {
    case TM_FIELD_TEXT:
      put_text (cells, G_STRUCT_MEMBER (const char *, row, field->offset));
      break;
    case TM_FIELD_QUANTITY:
      put_quantity (cells, &G_STRUCT_MEMBER (TmQuantity, row, field->offset));
      break;
    case TM_FIELD_WORD:
      put_text (cells,
                is_guarded (field, row) ? "" : field->words[G_STRUCT_MEMBER (guint, row, field->offset)]);
      break;
    case TM_FIELD_UINT:
      put_number (cells, G_STRUCT_MEMBER (guint, row, field->offset));
      break;
    case TM_FIELD_BOOL:
      put_number (cells, G_STRUCT_MEMBER (gboolean, row, field->offset) ? 1 : 0);
      break;
    case TM_FIELD_WIDE:
      put_number (cells, G_STRUCT_MEMBER (gint64, row, field->offset));
      break;
    case TM_FIELD_PLACE:
      put_unless (cells, G_STRUCT_MEMBER (guint, row, field->offset), 1);
      break;
    case TM_FIELD_COUNT:
      put_unless (cells, G_STRUCT_MEMBER (guint, row, field->offset), 0);
      break;
    case TM_FIELD_LIST:
      put_list (cells, G_STRUCT_MEMBER (GPtrArray *, row, field->offset));
      break;
    case TM_FIELD_PIECE:
      put_text (cells, G_STRUCT_MEMBER (TmPiece *, row, field->offset)->serial);
      break;
    case TM_FIELD_FEATURE:
      put_text (cells, G_STRUCT_MEMBER (TmFeature *, row, field->offset)->balloon);
      break;
    default:
      g_assert_not_reached ();
    }
}

void
tm_cells_from_struct (TmCells *cells, TmBookKind kind, const TmVersion *version, gconstpointer row)
{
  const TmKindInfo *info = tm_kind_info (kind);
  guint n = 0;
  const TmField *fields = tm_version_fields (&n);

  g_assert ((version != NULL) == info->versioned);
  cells->n = 0;
  cells->n_lists = 0;
  for (guint i = 0; version != NULL && i < n; i++)
    put_field (cells, &fields[i], version);
  for (guint i = 0; i < info->n_fields; i++)
    put_field (cells, &info->fields[i], row);
}

void
tm_cells_from_row (TmCells *cells, sqlite3_stmt *statement)
{
  int n = sqlite3_column_count (statement);

  cells->n = 0;
  for (int i = 2; i < n && cells->n < TM_MAX_CELLS; i++)
    {
      TmCell *cell = &cells->cell[cells->n++];

      *cell = (TmCell) { NULL, 0, 0, TRUE };
      switch (sqlite3_column_type (statement, i))
        {
        case SQLITE_NULL:
          cell->filled = FALSE;
          break;
        case SQLITE_INTEGER:
          cell->number = sqlite3_column_int64 (statement, i);
          break;
        default:
          cell->text = (const char *)sqlite3_column_text (statement, i);
          if (cell->text == NULL)
            cell->text = "";
          cell->length = (int)strlen (cell->text);
          break;
        }
    }
}

void
tm_cells_bind (const TmCells *cells, sqlite3_stmt *statement)
{
  for (guint i = 0; i < cells->n; i++)
    {
      const TmCell *cell = &cells->cell[i];
      int index = (int)i + 3;

      if (!cell->filled)
        sqlite3_bind_null (statement, index);
      else if (cell->text != NULL)
        sqlite3_bind_text (statement, index, cell->text, cell->length, SQLITE_STATIC);
      else
        sqlite3_bind_int64 (statement, index, cell->number);
    }
}

static void
append_number (GString *out, gint64 number)
{
  char buffer[24];
  char *cursor = buffer + sizeof buffer;
  guint64 rest = number < 0 ? 0 - (guint64)number : (guint64)number;

  do
    *--cursor = (char)('0' + rest % 10);
  while ((rest /= 10) > 0);
  if (number < 0)
    *--cursor = '-';
  g_string_append_len (out, cursor, buffer + sizeof buffer - cursor);
}

static void
append_cell (GString *out, const char *column, const TmCell *cell)
{
  if (!cell->filled || (cell->text != NULL && cell->length == 0))
    return;
  g_string_append (out, column);
  g_string_append_c (out, '=');
  if (cell->text != NULL)
    append_escaped (out, cell->text, (gsize)cell->length);
  else
    append_number (out, cell->number);
  g_string_append_c (out, '\n');
}

/* Walks the columns of the cells in order. */
static guint
append_fields (const TmCells *cells, guint at, const TmField *fields, guint n, GString *out)
{
  for (guint i = 0; i < n && at < cells->n; i++)
    {
      append_cell (out, fields[i].column, &cells->cell[at++]);
      if (fields[i].form_column != NULL && at < cells->n)
        append_cell (out, fields[i].form_column, &cells->cell[at++]);
    }
  return at;
}

void
tm_cells_payload (const TmCells *cells, TmBookKind kind, GString *out)
{
  const TmKindInfo *info = tm_kind_info (kind);
  guint n = 0;
  const TmField *fields = tm_version_fields (&n);
  guint at = info->versioned ? append_fields (cells, 0, fields, n, out) : 0;

  append_fields (cells, at, info->fields, info->n_fields, out);
}

void
tm_cells_content (const TmCells *cells, TmBookKind kind, GString *out)
{
  const TmKindInfo *info = tm_kind_info (kind);
  guint skipped = 0;

  tm_version_fields (&skipped);
  append_fields (cells, info->versioned ? skipped : 0, info->fields, info->n_fields, out);
}

/* The text of cell @at as one that lives in the job. */
static const char *
keep_text (const TmCells *cells, guint at, TmReader *reader)
{
  const char *text = cells->cell[at].text;

  if (text == NULL || *text == '\0')
    return "";
  if (reader->last[at] == NULL || strcmp (reader->last[at], text) != 0)
    reader->last[at] = tm_job_intern (reader->job, text);
  return reader->last[at];
}

static gboolean
get_quantity (const TmCells *cells, guint at, TmQuantity *quantity)
{
  const TmCell *count = &cells->cell[at];
  const TmCell *form = &cells->cell[at + 1];

  *quantity = TM_QUANTITY_NONE;
  if (!count->filled)
    return TRUE;
  if (form->text == NULL || !read_form (form->text, quantity))
    return FALSE;
  quantity->count = count->number;
  quantity->given = TRUE;
  return TRUE;
}

static gboolean
get_word (const TmCells *cells, guint at, const TmField *field, guint *word)
{
  const char *text = cells->cell[at].text;

  if (text != NULL && *text == '\0' && field->guard != 0)
    return TRUE;
  for (guint i = 0; text != NULL && field->words[i] != NULL; i++)
    {
      if (strcmp (field->words[i], text) == 0)
        {
          *word = i;
          return TRUE;
        }
    }
  return FALSE;
}

/* Takes one line of a list off @text, undoing the escapes. */
static const char *
take_line (const char *text, GString *line)
{
  g_string_truncate (line, 0);
  for (; *text != '\0' && *text != '\n'; text++)
    {
      if (*text == '\\' && text[1] != '\0')
        g_string_append_c (line, *++text == 'n' ? '\n' : *text);
      else
        g_string_append_c (line, *text);
    }
  return *text == '\n' ? text + 1 : text;
}

static void
get_list (const TmCells *cells, guint at, TmReader *reader, GPtrArray *list)
{
  const char *text = cells->cell[at].text;
  g_autoptr (GString) line = g_string_new (NULL);

  g_ptr_array_set_size (list, 0);
  while (text != NULL && *text != '\0')
    {
      text = take_line (text, line);
      g_ptr_array_add (list, (gpointer)tm_job_intern (reader->job, line->str));
    }
}

static gboolean
get_piece (const TmCells *cells, guint at, TmReader *reader, TmPiece **piece)
{
  const char *serial = cells->cell[at].text != NULL ? cells->cell[at].text : "";

  if (reader->piece == NULL || strcmp (reader->piece->serial, serial) != 0)
    reader->piece = tm_job_find_piece (reader->job, serial);
  *piece = reader->piece;
  return *piece != NULL;
}

static gboolean
get_feature (const TmCells *cells, guint at, TmReader *reader, TmFeature **feature)
{
  const char *balloon = cells->cell[at].text != NULL ? cells->cell[at].text : "";

  if (reader->feature == NULL || strcmp (reader->feature->balloon, balloon) != 0)
    reader->feature = tm_job_find_feature (reader->job, balloon);
  *feature = reader->feature;
  return *feature != NULL;
}

static gboolean
get_field (const TmCells *cells, guint at, const TmField *field, TmReader *reader, gpointer row)
{
  gint64 number = cells->cell[at].number;

  switch (field->type)
    {
    case TM_FIELD_TEXT:
      G_STRUCT_MEMBER (const char *, row, field->offset) = keep_text (cells, at, reader);
      return TRUE;
    case TM_FIELD_QUANTITY:
      return get_quantity (cells, at, &G_STRUCT_MEMBER (TmQuantity, row, field->offset));
    case TM_FIELD_WORD:
      return get_word (cells, at, field, &G_STRUCT_MEMBER (guint, row, field->offset));
    case TM_FIELD_UINT:
      G_STRUCT_MEMBER (guint, row, field->offset) = (guint)number;
      return number >= 0 && number <= G_MAXUINT;
    case TM_FIELD_BOOL:
      G_STRUCT_MEMBER (gboolean, row, field->offset) = number != 0;
      return number == 0 || number == 1;
    case TM_FIELD_WIDE:
      G_STRUCT_MEMBER (gint64, row, field->offset) = number;
      return TRUE;
    case TM_FIELD_PLACE:
      G_STRUCT_MEMBER (guint, row, field->offset) = cells->cell[at].filled ? (guint)number : 1;
      return number >= 0 && number <= G_MAXUINT;
    case TM_FIELD_COUNT:
      G_STRUCT_MEMBER (guint, row, field->offset) = cells->cell[at].filled ? (guint)number : 0;
      return number >= 0 && number <= G_MAXUINT;
    case TM_FIELD_LIST:
      get_list (cells, at, reader, G_STRUCT_MEMBER (GPtrArray *, row, field->offset));
      return TRUE;
    case TM_FIELD_PIECE:
      return get_piece (cells, at, reader, &G_STRUCT_MEMBER (TmPiece *, row, field->offset));
    case TM_FIELD_FEATURE:
      return get_feature (cells, at, reader, &G_STRUCT_MEMBER (TmFeature *, row, field->offset));
    default:
      g_assert_not_reached ();
    }
}

/* Fills @row from the cells from @at on; NULL, or the column that means nothing. */
static const char *
get_fields (const TmCells *cells, guint *at, const TmField *fields, guint n, TmReader *reader, gpointer row)
{
  for (guint i = 0; i < n; i++)
    {
      guint width = fields[i].form_column != NULL ? 2 : 1;

      if (*at + width > cells->n || !get_field (cells, *at, &fields[i], reader, row))
        return fields[i].column;
      *at += width;
    }
  return NULL;
}

const char *
tm_cells_to_struct (const TmCells *cells, TmBookKind kind, TmReader *reader, TmVersion *version, gpointer row)
{
  const TmKindInfo *info = tm_kind_info (kind);
  guint n = 0;
  const TmField *fields = tm_version_fields (&n);
  guint at = 0;
  const char *wrong = NULL;

  if (info->versioned)
    wrong = get_fields (cells, &at, fields, n, reader, version);
  if (wrong == NULL)
    wrong = get_fields (cells, &at, info->fields, info->n_fields, reader, row);
  return wrong;
}

/* "a, b, c" of the columns of the kind, or as many "?". */
static void
append_columns (GString *sql, const TmField *fields, guint n, gboolean marks)
{
  for (guint i = 0; i < n; i++)
    {
      g_string_append_printf (sql, ", %s", marks ? "?" : fields[i].column);
      if (fields[i].form_column != NULL)
        g_string_append_printf (sql, ", %s", marks ? "?" : fields[i].form_column);
    }
}

static void
append_kind_columns (GString *sql, TmBookKind kind, gboolean marks)
{
  const TmKindInfo *info = tm_kind_info (kind);
  guint n = 0;
  const TmField *fields = tm_version_fields (&n);

  if (info->versioned)
    append_columns (sql, fields, n, marks);
  append_columns (sql, info->fields, info->n_fields, marks);
}

char *
tm_kind_insert_sql (TmBookKind kind)
{
  GString *sql = g_string_new (NULL);

  g_string_append_printf (sql, "INSERT OR FAIL INTO %s (seq, job", tm_kind_info (kind)->table);
  append_kind_columns (sql, kind, FALSE);
  g_string_append (sql, tm_kind_has_bytes (kind) ? ", bytes) VALUES (?, ?" : ") VALUES (?, ?");
  append_kind_columns (sql, kind, TRUE);
  g_string_append (sql, tm_kind_has_bytes (kind) ? ", ?)" : ")");
  return g_string_free (sql, FALSE);
}

char *
tm_kind_select_sql (TmBookKind kind)
{
  GString *sql = g_string_new ("SELECT seq, job");

  append_kind_columns (sql, kind, FALSE);
  g_string_append_printf (sql, " FROM %s", tm_kind_info (kind)->table);
  return g_string_free (sql, FALSE);
}
