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
  GHashTable *spots;
  TmJob *job;
  GString *spot; /* scratch */
} Loading;

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
      tm_recall_spot (loading->spot, piece, feature->size_feature);
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
  TmBook *book = loading->query->book;
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
  if (tm_book_step (loading->query->book, statement, &failure))
    tm_book_load_row (loading->query->book, kind, reader, statement, &failure);
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
  sqlite3_stmt *statement = numbers != NULL ? tm_book_prepare (loading->query->book, sql, error) : NULL;
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
  const char *id = tm_column_text (statement, 1);
  TmEntryRow *row = g_str_equal (tm_column_text (statement, 0), "reading")
                        ? (TmEntryRow *)tm_job_find_reading (job, id)
                        : (TmEntryRow *)tm_job_find_pin_trial (job, id);

  if (row != NULL)
    tm_job_withdraw (job, row, tm_column_text (statement, 2), tm_column_text (statement, 3),
                     tm_column_text (statement, 4));
}

/* The withdrawals of the rows that were loaded. */
static gboolean
load_withdrawals (Loading *loading, GError **error)
{
  sqlite3_stmt *statement
      = tm_book_prepare (loading->query->book,
                         "SELECT target, id, done_by, done_at, reason FROM withdrawal WHERE job = ?"
                         " AND target <> 'cut' ORDER BY seq",
                         error);
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, loading->number);
  while (tm_book_step (loading->query->book, statement, &failure))
    note_withdrawal (loading->job, statement);
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

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
  g_autoptr (TmJob) job = tm_book_load_definitions (query->book, number, error);
  g_autoptr (GString) spot = g_string_new (NULL);
  Loading loading = { query, number, spots, job, spot };

  if (job == NULL)
    return NULL;
  add_sizes (&loading);
  if (!load_record (&loading, TM_BOOK_READING, error) || !load_record (&loading, TM_BOOK_PIN_TRIAL, error)
      || !load_withdrawals (&loading, error) || !settle_methods (&loading, error))
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
