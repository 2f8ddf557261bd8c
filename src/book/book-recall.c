/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The jobs that a recall concerns, with as much of their record as their verdicts rest on.
 */

#include "book-recall.h"

#include <glib/gi18n-lib.h>

/* One job that is being loaded. */
typedef struct {
  TmRecallQuery *query;
  gint64 number;
  TmJob *job;
} Loading;

/* --- what a name stood for at the time of a reading */

/* Fills @row of @kind from the one row that @where finds; none leaves it alone. */
static gboolean
load_past (Loading *loading, TmBookKind kind, const char *where, gint64 number, const char *key, gpointer row,
           GError **error)
{
  g_autofree char *select = tm_kind_select_sql (kind);
  g_autofree char *sql = g_strconcat (select, " WHERE ", where, NULL);
  TmBook *book = loading->query->book;
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);
  TmReader reader = { .job = loading->job };
  TmVersion unused = { 0 };
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, number);
  if (key != NULL)
    sqlite3_bind_text (statement, 2, key, -1, SQLITE_STATIC);
  if (tm_book_step (book, statement, &failure))
    {
      tm_cells_from_row (&book->cells, statement);
      tm_cells_to_struct (&book->cells, kind, &reader, &unused, row);
      sqlite3_reset (statement);
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

/* The gauge may have left the job's list since: its last version stands in. */
static gboolean
add_past_gauge (Loading *loading, GError **error)
{
  TmGauge *gauge;

  if (tm_job_find_gauge (loading->job, loading->query->tag) != NULL)
    return TRUE;
  gauge = tm_gauge_new ();
  if (!load_past (loading, TM_BOOK_GAUGE, "job = ?1 AND key = ?2 AND removed = 0 ORDER BY seq DESC LIMIT 1",
                  loading->number, loading->query->tag, gauge, error))
    {
      tm_gauge_free (gauge);
      return FALSE;
    }
  if (tm_job_add_gauge (loading->job, gauge) != TM_ADD_OK)
    tm_gauge_free (gauge); /* it never was in this job */
  return TRUE;
}

/* The lines of a budget that went with the method under its own name. */
static void
copy_lines (TmJob *job, const char *from, const char *to)
{
  guint n = job->budget_lines->len;

  for (guint i = 0; i < n; i++)
    {
      const TmBudgetLine *line = g_ptr_array_index (job->budget_lines, i);
      TmBudgetLine *copy;

      if (!g_str_equal (line->method, from))
        continue;
      copy = tm_budget_line_new ();
      *copy = *line;
      copy->method = to;
      if (tm_job_add_budget_line (job, copy) != TM_ADD_OK)
        tm_budget_line_free (copy);
    }
}

/* The method as @version had it, under a name of its own. */
static const char *
add_past_method (Loading *loading, const TmRecallVersion *version, const char *name, GError **error)
{
  g_autofree char *past = *version->since != '\0'
                              ? g_strdup_printf (_ ("%s (as of %s)"), name, version->since)
                              : g_strdup_printf (_ ("%s (as it was at first)"), name);
  TmMethod *method = tm_job_find_method (loading->job, past);

  if (method != NULL)
    return method->name;
  method = tm_method_new ();
  if (!add_past_gauge (loading, error)
      || !load_past (loading, TM_BOOK_METHOD, "seq = ?1", version->seq, NULL, method, error))
    {
      tm_method_free (method);
      return NULL;
    }
  method->name = tm_job_intern (loading->job, past);
  if (tm_job_add_method (loading->job, method) != TM_ADD_OK)
    {
      tm_method_free (method);
      return name;
    }
  copy_lines (loading->job, name, method->name);
  return method->name;
}

/* Gives @reading the method that it was taken by where the name means something else now. */
static gboolean
settle_method (Loading *loading, TmReading *reading, GError **error)
{
  const TmRecallQuery *query = loading->query;
  const char *at = reading->row.at;
  const GArray *features
      = tm_recall_versions (query->features, loading->number, reading->row.feature->balloon);
  const char *name = reading->method;
  const GArray *methods;
  const TmRecallVersion *then;

  if (*name == '\0')
    name = features != NULL ? tm_recall_in_force (features, at)->name : reading->row.feature->method;
  methods = tm_recall_versions (query->methods, loading->number, name);
  then = methods != NULL ? tm_recall_in_force (methods, at) : NULL;
  if (then != NULL && then->uses != g_array_index (methods, TmRecallVersion, methods->len - 1).uses)
    {
      reading->method = add_past_method (loading, then, name, error);
      return reading->method != NULL;
    }
  if (*reading->method == '\0' && !g_str_equal (name, reading->row.feature->method))
    reading->method = tm_job_intern (loading->job, name);
  return TRUE;
}

static gboolean
settle_methods (Loading *loading, GError **error)
{
  for (guint i = 0; i < loading->job->readings->len; i++)
    {
      if (!settle_method (loading, g_ptr_array_index (loading->job->readings, i), error))
        return FALSE;
    }
  return TRUE;
}

static TmJob *
load_one (TmRecallQuery *query, gint64 number, GHashTable *spots, GError **error)
{
  g_autoptr (TmJob) job = tm_book_load_part (query->book, number, spots, error);
  Loading loading = { query, number, job };

  if (job == NULL || !settle_methods (&loading, error))
    return NULL;
  return g_steal_pointer (&job);
}

/* Newest first. */
static int
compare_numbers_cb (gconstpointer a, gconstpointer b)
{
  gint64 one = *(const gint64 *)a;
  gint64 other = *(const gint64 *)b;

  return (one < other) - (one > other);
}

static GPtrArray *
load_all (TmRecallQuery *query, TmBookProgress progress, gpointer data, GError **error)
{
  g_autoptr (GPtrArray) jobs = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_job_free);
  g_autoptr (GList) numbers = g_list_sort (g_hash_table_get_keys (query->jobs), compare_numbers_cb);
  guint64 total = g_hash_table_size (query->jobs);

  for (const GList *link = numbers; link != NULL; link = link->next)
    {
      const gint64 *number = link->data;
      TmJob *job;

      if (!tm_book_tick (query->book, progress, data, (guint64)jobs->len * TM_BOOK_STRIDE,
                         total * TM_BOOK_STRIDE, error))
        return NULL;
      job = load_one (query, *number, g_hash_table_lookup (query->jobs, number), error);
      if (job == NULL)
        return NULL;
      g_ptr_array_add (jobs, job);
    }
  return g_steal_pointer (&jobs);
}

GPtrArray *
tm_book_recall (TmBook *book, const char *tag, const char *good_until, TmBookProgress progress, gpointer data,
                GError **error)
{
  TmRecallQuery query;
  gboolean outermost;
  GPtrArray *jobs = NULL;

  g_return_val_if_fail (book != NULL && tag != NULL && good_until != NULL, NULL);

  /* One read transaction: a reading recorded meanwhile is in all of it or in none. */
  outermost = sqlite3_get_autocommit (book->db) != 0;
  if (outermost && !tm_book_exec (book, "BEGIN", error))
    return NULL;
  tm_recall_query_init (&query, book, tag, good_until);
  if (tm_recall_find (&query, error))
    jobs = load_all (&query, progress, data, error);
  tm_recall_query_clear (&query);
  if (outermost)
    tm_book_rollback (book);
  return jobs;
}
