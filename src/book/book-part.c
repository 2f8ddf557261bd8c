/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-part.h"

/* One job that is being loaded. */
typedef struct {
  TmBook *book;
  gint64 number;
  GHashTable *spots;
  TmJob *job;
  GString *spot; /* scratch */
} Loading;

void
tm_part_spot (GString *out, const char *piece, const char *feature)
{
  g_string_assign (out, piece);
  g_string_append_c (out, '\n');
  g_string_append (out, feature);
}

void
tm_part_add_spot (GHashTable *spots, const char *piece, const char *feature)
{
  g_autoptr (GString) spot = g_string_new (NULL);

  tm_part_spot (spot, piece, feature);
  if (!g_hash_table_contains (spots, spot->str))
    g_hash_table_add (spots, g_strndup (spot->str, spot->len));
}

GHashTable *
tm_part_spots_new (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

/* A position that takes its bonus from a size needs the readings of that too. */
static void
add_sizes (Loading *loading)
{
  g_autoptr (GPtrArray) more = g_ptr_array_new_with_free_func (g_free);
  GHashTableIter iterator;
  gpointer key;

  g_hash_table_iter_init (&iterator, loading->spots);
  while (g_hash_table_iter_next (&iterator, &key, NULL))
    {
      const char *end = strchr (key, '\n');
      const TmFeature *feature = tm_job_find_feature (loading->job, end + 1);
      g_autofree char *piece = g_strndup (key, (gsize)(end - (const char *)key));

      if (feature == NULL || *feature->size_feature == '\0')
        continue;
      tm_part_spot (loading->spot, piece, feature->size_feature);
      g_ptr_array_add (more, g_strdup (loading->spot->str));
    }
  g_ptr_array_set_free_func (more, NULL);
  for (guint i = 0; i < more->len; i++)
    g_hash_table_add (loading->spots, g_ptr_array_index (more, i));
}

static int
compare_seq_cb (gconstpointer a, gconstpointer b)
{
  gint64 one = *(const gint64 *)a;
  gint64 other = *(const gint64 *)b;

  return (one > other) - (one < other);
}

/* Appends the numbers of the rows of one spot.  All its places are taken: a correction may name another
 * place than the row that it corrects. */
static gboolean
collect_spot (Loading *loading, const char *sql, const char *spot, GArray *numbers, GError **error)
{
  TmBook *book = loading->book;
  const char *end = strchr (spot, '\n');
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, loading->number);
  sqlite3_bind_text (statement, 2, spot, (int)(end - spot), SQLITE_STATIC);
  sqlite3_bind_text (statement, 3, end + 1, -1, SQLITE_STATIC);
  while (tm_book_step (book, statement, &failure))
    {
      gint64 seq = sqlite3_column_int64 (statement, 0);

      g_array_append_val (numbers, seq);
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

/* The numbers of the rows of @kind that are concerned, in the order recorded. */
static GArray *
collect_rows (Loading *loading, TmBookKind kind, GError **error)
{
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autofree char *sql = g_strdup_printf ("SELECT seq FROM %s WHERE job = ? AND piece = ? AND feature = ?",
                                          tm_kind_info (kind)->table);
  GHashTableIter iterator;
  gpointer spot;

  g_hash_table_iter_init (&iterator, loading->spots);
  while (g_hash_table_iter_next (&iterator, &spot, NULL))
    {
      if (!collect_spot (loading, sql, spot, numbers, error))
        return NULL;
    }
  g_array_sort (numbers, compare_seq_cb);
  return g_steal_pointer (&numbers);
}

static gboolean
load_numbered (Loading *loading, TmBookKind kind, TmReader *reader, sqlite3_stmt *statement, gint64 seq,
               GError **error)
{
  GError *failure = NULL;

  sqlite3_bind_int64 (statement, 1, seq);
  if (tm_book_step (loading->book, statement, &failure))
    tm_book_load_row (loading->book, kind, reader, statement, &failure);
  sqlite3_reset (statement);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

static gboolean
load_record (Loading *loading, TmBookKind kind, GError **error)
{
  g_autoptr (GArray) numbers = collect_rows (loading, kind, error);
  g_autofree char *select = tm_kind_select_sql (kind);
  g_autofree char *sql = g_strconcat (select, " WHERE seq = ?", NULL);
  sqlite3_stmt *statement = numbers != NULL ? tm_book_prepare (loading->book, sql, error) : NULL;
  TmReader reader = { .job = loading->job };

  if (statement == NULL)
    return FALSE;
  for (guint i = 0; i < numbers->len; i++)
    {
      if (!load_numbered (loading, kind, &reader, statement, g_array_index (numbers, gint64, i), error))
        return FALSE;
    }
  return TRUE;
}

static void
note_withdrawal (TmJob *job, sqlite3_stmt *statement)
{
  TmEntryRow *row = tm_book_find_target (job, tm_column_text (statement, 0), tm_column_text (statement, 1));

  if (row != NULL)
    tm_job_withdraw (job, row, tm_column_text (statement, 2), tm_column_text (statement, 3),
                     tm_column_text (statement, 4));
}

/* The withdrawals of the rows that were loaded. */
static gboolean
load_withdrawals (Loading *loading, GError **error)
{
  sqlite3_stmt *statement
      = tm_book_prepare (loading->book,
                         "SELECT target, id, done_by, done_at, reason FROM withdrawal WHERE job = ?"
                         " ORDER BY seq",
                         error);
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, loading->number);
  while (tm_book_step (loading->book, statement, &failure))
    note_withdrawal (loading->job, statement);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

TmJob *
tm_book_load_part (TmBook *book, gint64 number, GHashTable *spots, GError **error)
{
  static const TmBookKind record[] = { TM_BOOK_READING, TM_BOOK_PIN_TRIAL, TM_BOOK_CUT };
  g_autoptr (TmJob) job = tm_book_load_definitions (book, number, error);
  g_autoptr (GString) spot = g_string_new (NULL);
  Loading loading = { book, number, spots, job, spot };

  if (job == NULL)
    return NULL;
  add_sizes (&loading);
  for (gsize i = 0; i < G_N_ELEMENTS (record); i++)
    {
      if (!load_record (&loading, record[i], error))
        return NULL;
    }
  if (!load_withdrawals (&loading, error))
    return NULL;
  tm_job_mark_reworks (job);
  return g_steal_pointer (&job);
}
