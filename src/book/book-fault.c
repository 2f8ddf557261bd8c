/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-fault.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <string.h>

void
tm_book_fault_free (TmBookFault *fault)
{
  if (fault == NULL)
    return;
  g_free (fault->what);
  g_free (fault->where);
  g_free (fault->how);
  g_free (fault);
}

void
tm_faults_init (TmFaults *faults, TmBook *book)
{
  faults->book = book;
  faults->list = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_book_fault_free);
  faults->unlisted = 0;
  faults->parts = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);
}

static void
push_fault (TmFaults *faults, const char *what, char *where, char *how)
{
  TmBookFault *fault = g_new (TmBookFault, 1);

  *fault = (TmBookFault) { g_strdup (what), where, how };
  g_ptr_array_add (faults->list, fault);
}

static gboolean
is_of_schema (const TmBookFault *fault)
{
  return strcmp (fault->what, "schema") == 0;
}

/* What happened to the record comes before how the file was opened to it; each in its own order. */
static GPtrArray *
put_record_first (GPtrArray *list)
{
  GPtrArray *sorted = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_book_fault_free);

  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < list->len; i++)
      if (is_of_schema (g_ptr_array_index (list, i)) == (pass == 1))
        g_ptr_array_add (sorted, g_ptr_array_index (list, i));
  g_ptr_array_set_free_func (list, NULL);
  g_ptr_array_unref (list);
  return sorted;
}

GPtrArray *
tm_faults_finish (TmFaults *faults)
{
  faults->list = put_record_first (faults->list);
  if (faults->unlisted > 0)
    push_fault (
        faults, "file", g_strdup (faults->book->path),
        g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%" PRIu64 " more fault, not listed",
                                      "%" PRIu64 " more faults, not listed", (gulong)faults->unlisted),
                         faults->unlisted));
  g_hash_table_unref (faults->parts);
  return g_steal_pointer (&faults->list);
}

void
tm_faults_add (TmFaults *faults, const char *what, char *where, char *how)
{
  if (faults->list->len < TM_BOOK_MAX_FAULTS)
    {
      push_fault (faults, what, where, how);
      return;
    }
  faults->unlisted++;
  g_free (where);
  g_free (how);
}

/* The value of @column, still escaped, with its length; NULL when it is not there. */
static const char *
find_value (const char *payload, const char *column, gsize *length)
{
  gsize n = strlen (column);

  for (const char *line = payload; *line != '\0';)
    {
      gsize end = strcspn (line, "\n");

      if (end > n && strncmp (line, column, n) == 0 && line[n] == '=')
        {
          *length = end - n - 1;
          return line + n + 1;
        }
      line += line[end] == '\n' ? end + 1 : end;
    }
  return NULL;
}

char *
tm_payload_get (const char *payload, const char *column)
{
  gsize length = 0;
  const char *value = find_value (payload, column, &length);
  GString *text;

  if (value == NULL)
    return NULL;
  text = g_string_new (NULL);
  for (const char *end = value + length; value < end; value++)
    {
      if (*value == '\\' && value + 1 < end)
        g_string_append_c (text, *++value == 'n' ? '\n' : *value);
      else
        g_string_append_c (text, *value);
    }
  return g_string_free (text, FALSE);
}

static const char *
find_part (TmFaults *faults, gint64 job)
{
  const char *known = g_hash_table_lookup (faults->parts, &job);
  sqlite3_stmt *statement;

  if (known != NULL)
    return known;
  statement = tm_book_prepare (faults->book,
                               "SELECT part_number FROM facts WHERE job = ? ORDER BY seq DESC LIMIT 1", NULL);
  if (statement != NULL)
    {
      sqlite3_bind_int64 (statement, 1, job);
      if (sqlite3_step (statement) == SQLITE_ROW)
        known = tm_column_text (statement, 0);
    }
  g_hash_table_insert (faults->parts, g_memdup2 (&job, sizeof job), g_strdup (known != NULL ? known : "?"));
  if (statement != NULL)
    sqlite3_reset (statement);
  return g_hash_table_lookup (faults->parts, &job);
}

static void
append_named (GString *out, TmBookKind kind, const char *payload, const char *column)
{
  g_autofree char *value = tm_payload_get (payload, column);
  g_autofree char *name = value != NULL ? tm_kind_name (kind, value) : NULL;

  if (name != NULL)
    g_string_append_printf (out, ", %s", name);
}

char *
tm_faults_where (TmFaults *faults, gint64 job, TmBookKind kind, const char *payload)
{
  const TmKindInfo *info = tm_kind_info (kind);
  GString *out = g_string_new (NULL);
  g_autofree char *name = tm_payload_get (payload, info->name_column);

  if (job == 0)
    g_string_append (out, _ ("the whole shop"));
  else
    g_string_append_printf (out, _ ("part %s"), find_part (faults, job));
  if (kind == TM_BOOK_FACTS)
    return g_string_free (out, FALSE);
  if (kind != TM_BOOK_PIECE && kind != TM_BOOK_FEATURE)
    {
      append_named (out, TM_BOOK_PIECE, payload, "piece");
      append_named (out, TM_BOOK_FEATURE, payload, "feature");
    }
  append_named (out, kind, payload, name != NULL ? info->name_column : "key");
  return g_string_free (out, FALSE);
}

/* A count and its form as a person writes it; the raw texts where they are no quantity. */
static char *
show_quantity (const char *count, const char *form)
{
  const char *point = form != NULL ? strrchr (form, '.') : NULL;
  guint64 decimals = 0;
  gint64 number = 0;

  if (count == NULL)
    return g_strdup (_ ("nothing"));
  if (point != NULL && g_ascii_string_to_unsigned (point + 1, 10, 0, TM_MAX_DECIMALS, &decimals, NULL)
      && g_ascii_string_to_signed (count, 10, -TM_COUNT_MAX, TM_COUNT_MAX, &number, NULL))
    {
      for (guint u = 0; tm_book_unit_words[u] != NULL; u++)
        {
          TmQuantity quantity = tm_quantity_new (number, u, (guint)decimals);
          g_autofree char *text = NULL;

          if (strlen (tm_book_unit_words[u]) != (gsize)(point - form)
              || strncmp (tm_book_unit_words[u], form, (gsize)(point - form)) != 0)
            continue;
          text = tm_count_format_exact (quantity.count, u, quantity.decimals);
          return g_strchomp (g_strconcat (text, " ", tm_unit_symbol (u), NULL));
        }
    }
  return g_strdup_printf ("%s (%s)", count, form != NULL ? form : "");
}

/* The member as a person reads it. */
static char *
show_field (const TmField *field, const char *payload)
{
  g_autofree char *value = tm_payload_get (payload, field->column);
  g_autofree char *form = NULL;

  if (field->form_column == NULL)
    return value != NULL ? g_steal_pointer (&value) : g_strdup (_ ("nothing"));
  form = tm_payload_get (payload, field->form_column);
  return show_quantity (value, form);
}

static gboolean
same_value (const char *a, const char *b, const char *column)
{
  gsize length_a = 0;
  gsize length_b = 0;
  const char *value_a;
  const char *value_b;

  if (column == NULL)
    return TRUE;
  value_a = find_value (a, column, &length_a);
  value_b = find_value (b, column, &length_b);
  if (value_a == NULL || value_b == NULL)
    return value_a == value_b;
  return length_a == length_b && memcmp (value_a, value_b, length_a) == 0;
}

/* The column's name without what only says how it is held. */
static char *
show_column (const TmField *field)
{
  gsize n = strlen (field->form_column != NULL ? field->form_column : field->column);

  return g_strndup (field->column, field->form_column != NULL ? n - strlen ("_form") : n);
}

static void
append_differences (GString *out, const TmField *fields, guint n, const char *table, const char *journal)
{
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = NULL;
      g_autofree char *in_table = NULL;
      g_autofree char *in_journal = NULL;

      if (same_value (table, journal, fields[i].column) && same_value (table, journal, fields[i].form_column))
        continue;
      name = show_column (&fields[i]);
      in_table = show_field (&fields[i], table);
      in_journal = show_field (&fields[i], journal);
      if (out->len > 0)
        g_string_append (out, "; ");
      g_string_append_printf (out, _ ("%s is %s in the table, %s in the journal"), name, in_table,
                              in_journal);
    }
}

char *
tm_faults_difference (TmBookKind kind, const char *table, const char *journal)
{
  const TmKindInfo *info = tm_kind_info (kind);
  GString *out = g_string_new (NULL);
  guint n = 0;
  const TmField *fields = tm_version_fields (&n);

  if (info->versioned)
    append_differences (out, fields, n, table, journal);
  append_differences (out, info->fields, info->n_fields, table, journal);
  if (out->len == 0)
    g_string_append (out, _ ("the journal's text is not as this program writes it"));
  return g_string_free (out, FALSE);
}
