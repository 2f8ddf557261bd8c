/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-tool: where else a tool made its cuts.
 */

#include "book-part.h"

/* The numbers of the jobs in which the tool cut, the one whose last cut is the newest first. */
static GArray *
find_jobs (TmBook *book, const char *name, const char *except_job, guint most, GError **error)
{
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (gint64));
  sqlite3_stmt *statement
      = tm_book_prepare (book,
                         "SELECT c.job FROM cut AS c JOIN job AS j ON j.seq = c.job WHERE c.tool = ? AND"
                         " j.id <> ? GROUP BY c.job ORDER BY max (c.seq) DESC LIMIT ?",
                         error);
  GError *failure = NULL;

  if (statement == NULL)
    return NULL;
  tm_bind_text (statement, 1, name);
  tm_bind_text (statement, 2, except_job != NULL ? except_job : "");
  sqlite3_bind_int64 (statement, 3, most);
  while (tm_book_step (book, statement, &failure))
    {
      gint64 number = sqlite3_column_int64 (statement, 0);

      g_array_append_val (numbers, number);
    }
  if (failure == NULL)
    return g_steal_pointer (&numbers);
  g_propagate_error (error, failure);
  return NULL;
}

/* What the tool cut in one job. */
static GHashTable *
find_spots (TmBook *book, gint64 number, const char *name, GError **error)
{
  g_autoptr (GHashTable) spots = tm_part_spots_new ();
  sqlite3_stmt *statement
      = tm_book_prepare (book, "SELECT DISTINCT piece, feature FROM cut WHERE tool = ? AND job = ?", error);
  GError *failure = NULL;

  if (statement == NULL)
    return NULL;
  tm_bind_text (statement, 1, name);
  sqlite3_bind_int64 (statement, 2, number);
  while (tm_book_step (book, statement, &failure))
    tm_part_add_spot (spots, tm_column_text (statement, 0), tm_column_text (statement, 1));
  if (failure == NULL)
    return g_steal_pointer (&spots);
  g_propagate_error (error, failure);
  return NULL;
}

static GPtrArray *
load_jobs (TmBook *book, const char *name, const char *except_job, guint most, GError **error)
{
  g_autoptr (GPtrArray) jobs = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_job_free);
  g_autoptr (GArray) numbers = find_jobs (book, name, except_job, most, error);

  if (numbers == NULL)
    return NULL;
  for (guint i = numbers->len; i > 0; i--)
    {
      gint64 number = g_array_index (numbers, gint64, i - 1);
      g_autoptr (GHashTable) spots = find_spots (book, number, name, error);
      TmJob *job = spots != NULL ? tm_book_load_part (book, number, spots, error) : NULL;

      if (job == NULL)
        return NULL;
      g_ptr_array_add (jobs, job);
    }
  return g_steal_pointer (&jobs);
}

GPtrArray *
tm_book_tool_jobs (TmBook *book, const char *name, const char *except_job, guint most, GError **error)
{
  gboolean outermost;
  GPtrArray *jobs;

  g_return_val_if_fail (book != NULL && name != NULL, NULL);

  /* A cut that names no tool is nobody's. */
  if (*name == '\0')
    return g_ptr_array_new_with_free_func ((GDestroyNotify)tm_job_free);
  /* One read transaction: a cut recorded meanwhile is in all of it or in none. */
  outermost = sqlite3_get_autocommit (book->db) != 0;
  if (outermost && !tm_book_exec (book, "BEGIN", error))
    return NULL;
  jobs = load_jobs (book, name, except_job, most, error);
  if (outermost)
    tm_book_rollback (book);
  return jobs;
}
