/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-signed: what signing a report asks of the book.
 */

#include "book-private.h"

gboolean
tm_book_mark (TmBook *book, gint64 *mark, GError **error)
{
  sqlite3_stmt *statement;

  g_return_val_if_fail (book != NULL && mark != NULL, FALSE);

  statement = tm_book_prepare (book, "SELECT coalesce (max (seq), 0) FROM journal", error);
  return statement != NULL && tm_book_ask (book, statement, 0, mark, error);
}

gboolean
tm_book_changed_since (TmBook *book, const char *job_id, gint64 mark, gboolean *changed, GError **error)
{
  sqlite3_stmt *statement;
  gint64 number, found = 0;

  g_return_val_if_fail (book != NULL && job_id != NULL && changed != NULL, FALSE);

  number = tm_book_job_number (book, job_id, error);
  statement = number > 0 ? tm_book_prepare (book,
                                            "SELECT 1 FROM journal WHERE seq > ? AND job = ?"
                                            " AND kind <> 'content' LIMIT 1",
                                            error)
                         : NULL;
  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, mark);
  sqlite3_bind_int64 (statement, 2, number);
  if (!tm_book_ask (book, statement, 0, &found, error))
    return FALSE;
  *changed = found == 1;
  return TRUE;
}

static TmBookEntry *
read_name (sqlite3_stmt *statement)
{
  TmBookEntry *entry = g_new0 (TmBookEntry, 1);

  entry->id = g_strdup (tm_column_text (statement, 0));
  entry->part_number = g_strdup (tm_column_text (statement, 1));
  entry->part_name = g_strdup (tm_column_text (statement, 2));
  entry->revision = g_strdup (tm_column_text (statement, 3));
  entry->customer = g_strdup (tm_column_text (statement, 4));
  entry->order = g_strdup (tm_column_text (statement, 5));
  entry->last_at = g_strdup (tm_column_text (statement, 6));
  return entry;
}

static GPtrArray *
find_report (TmBook *book, const char *identifier, const char *except_job, GError **error)
{
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_book_entry_free);
  sqlite3_stmt *statement = tm_book_prepare (
      book,
      "SELECT j.id, f.part_number, f.part_name, f.revision, f.customer, f.order_number, f.changed_at"
      " FROM current_facts AS f JOIN job AS j ON j.seq = f.job"
      " WHERE trim (f.report_identifier) = ? COLLATE NOCASE AND j.id <> ? ORDER BY f.seq",
      error);
  GError *failure = NULL;

  if (statement == NULL)
    return NULL;
  tm_bind_text (statement, 1, identifier);
  tm_bind_text (statement, 2, except_job);
  while (tm_book_step (book, statement, &failure))
    g_ptr_array_add (entries, read_name (statement));
  if (failure == NULL)
    return g_steal_pointer (&entries);
  g_propagate_error (error, failure);
  return NULL;
}

GPtrArray *
tm_book_find_report (TmBook *book, const char *identifier, const char *except_job, GError **error)
{
  g_autofree char *wanted = NULL;

  g_return_val_if_fail (book != NULL && identifier != NULL, NULL);

  wanted = g_strstrip (g_strdup (identifier));
  if (*wanted == '\0')
    return g_ptr_array_new_with_free_func ((GDestroyNotify)tm_book_entry_free);
  return find_report (book, wanted, except_job != NULL ? except_job : "", error);
}

/* By the table's index on the job: the journal has none. */
static gboolean
ask_newest (TmBook *book, TmBookKind kind, gint64 number, gint64 *newest, GError **error)
{
  g_autofree char *sql
      = g_strdup_printf ("SELECT coalesce (max (seq), 0) FROM %s WHERE job = ?", tm_kind_info (kind)->table);
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, number);
  return tm_book_ask (book, statement, 0, newest, error);
}

gboolean
tm_book_is_frozen (TmBook *book, gint64 number, gboolean *frozen, GError **error)
{
  gint64 signed_at = 0, newest = 0;

  *frozen = FALSE;
  if (!ask_newest (book, TM_BOOK_SIGNATURE, number, &signed_at, error))
    return FALSE;
  if (signed_at == 0)
    return TRUE;
  for (TmBookKind kind = TM_BOOK_JOB; kind < TM_BOOK_CONTENT; kind++)
    {
      if (!ask_newest (book, kind, number, &newest, error))
        return FALSE;
      if (newest > signed_at)
        return TRUE;
    }
  *frozen = TRUE;
  return TRUE;
}

GPtrArray *
tm_book_signed_jobs (TmBook *book, GError **error)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);
  GError *failure = NULL;
  sqlite3_stmt *statement;

  g_return_val_if_fail (book != NULL, NULL);

  statement = tm_book_prepare (book,
                               "SELECT j.id FROM signature AS s JOIN job AS j ON j.seq = s.job"
                               " GROUP BY s.job ORDER BY max (s.seq) DESC",
                               error);
  if (statement == NULL)
    return NULL;
  while (tm_book_step (book, statement, &failure))
    g_ptr_array_add (ids, g_strdup (tm_column_text (statement, 0)));
  if (failure == NULL)
    return g_steal_pointer (&ids);
  g_propagate_error (error, failure);
  return NULL;
}
