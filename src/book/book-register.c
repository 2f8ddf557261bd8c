/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-register: the gauges of the whole shop, out of all the jobs that hold a copy of them.
 */

#include "book-private.h"

#include <glib/gi18n-lib.h>

/* --- the register */

/* Which rows of a kind make the register: the newest of those that hold in some job.  Of a history that
 * the jobs know in parts it is the union. */
typedef struct {
  TmBookKind kind;
  const char *where;
} Selection;

#define KNOWN "gauge IN (SELECT key FROM current_gauge)"

static const Selection selections[] = {
  { TM_BOOK_GAUGE, "seq IN (SELECT max (seq) FROM current_gauge GROUP BY key) ORDER BY key" },
  { TM_BOOK_CALIBRATION, "seq IN (SELECT max (seq) FROM current_calibration WHERE " KNOWN
                         " GROUP BY gauge, date) ORDER BY gauge, date" },
  { TM_BOOK_CHECK, "seq IN (SELECT max (seq) FROM current_gauge_check WHERE " KNOWN
                   " GROUP BY gauge, checked_at, standard_pm, reading_pm) ORDER BY gauge, checked_at, seq" },
  { TM_BOOK_PIN_SIZE, "seq IN (SELECT max (seq) FROM current_pin_size WHERE " KNOWN
                      " GROUP BY gauge, size_pm) ORDER BY gauge, size_pm" },
  { TM_BOOK_METHOD, "seq IN (SELECT max (seq) FROM current_method GROUP BY key) ORDER BY key" },
  /* A line has no name of its own: those of the job from which the method is taken. */
  { TM_BOOK_BUDGET_LINE,
    "seq IN (SELECT l.seq FROM current_budget_line AS l JOIN current_method AS m ON m.job = l.job"
    " AND m.key = l.method WHERE m.seq IN (SELECT max (seq) FROM current_method GROUP BY key))"
    " ORDER BY method, rank, seq" },
  { TM_BOOK_TOOL, "seq IN (SELECT max (seq) FROM current_tool GROUP BY key) ORDER BY key" },
  { TM_BOOK_MATERIAL, "seq IN (SELECT max (seq) FROM current_material GROUP BY key) ORDER BY key" },
};

static gboolean
load_selection (TmBook *book, const Selection *selection, TmJob *job, GError **error)
{
  g_autofree char *select = tm_kind_select_sql (selection->kind);
  g_autofree char *sql = g_strconcat (select, " WHERE ", selection->where, NULL);
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);

  return statement != NULL && tm_book_load_rows (book, selection->kind, statement, job, error);
}

static gboolean
has_its_gauges (const TmJob *job, const TmMethod *method)
{
  for (guint i = 0; i < method->gauges->len; i++)
    {
      if (tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i)) == NULL)
        return FALSE;
    }
  return TRUE;
}

/* A method whose gauge has left every job has left the shop. */
static void
drop_methods_without_gauges (TmJob *job)
{
  for (guint i = job->methods->len; i > 0; i--)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i - 1);

      if (!has_its_gauges (job, method))
        tm_job_remove_method (job, method->name);
    }
}

TmJob *
tm_book_gauge_register (TmBook *book, GError **error)
{
  g_autoptr (TmJob) job = tm_job_new ();
  gboolean outermost;
  gboolean done = TRUE;

  g_return_val_if_fail (book != NULL, NULL);

  outermost = sqlite3_get_autocommit (book->db) != 0;
  if (outermost && !tm_book_exec (book, "BEGIN", error))
    return NULL;
  for (gsize i = 0; done && i < G_N_ELEMENTS (selections); i++)
    done = load_selection (book, &selections[i], job, error);
  if (outermost)
    tm_book_rollback (book);
  if (!done)
    return NULL;
  drop_methods_without_gauges (job);
  return g_steal_pointer (&job);
}

/* --- one gauge into every job */

/* What is spread with a gauge: the lists whose rows name it in their first member. */
static const TmBookKind history[] = { TM_BOOK_CALIBRATION, TM_BOOK_CHECK, TM_BOOK_PIN_SIZE };

static GPtrArray *
list_of (const TmJob *job, TmBookKind kind)
{
  return G_STRUCT_MEMBER (GPtrArray *, job, tm_kind_info (kind)->list);
}

/* A copy of @row of @kind whose texts live in @job. */
static gpointer
copy_row (TmBook *book, TmJob *job, TmBookKind kind, gconstpointer row)
{
  static const TmVersion blank = { "", 0, FALSE, "", "" };
  TmReader reader = { .job = job };
  TmVersion version = { 0 };
  gpointer copy = tm_book_new_row (kind);

  tm_cells_from_struct (&book->cells, kind, &blank, row);
  tm_cells_to_struct (&book->cells, kind, &reader, &version, copy);
  return copy;
}

static gboolean
is_of_gauge (gconstpointer row, const char *tag)
{
  return g_str_equal (*(const char *const *)row, tag);
}

G_STATIC_ASSERT (G_STRUCT_OFFSET (TmCalibration, gauge) == 0 && G_STRUCT_OFFSET (TmCheck, gauge) == 0
                 && G_STRUCT_OFFSET (TmPinSize, gauge) == 0);

/* Puts the rows of @tag in @from in the place of those in @into; rows of other gauges keep theirs, so that
 * what is the same already writes nothing. */
static void
replace_rows (TmBook *book, TmJob *into, const TmJob *from, TmBookKind kind, const char *tag)
{
  GPtrArray *list = list_of (into, kind);
  const GPtrArray *source = list_of (from, kind);
  guint at = list->len;

  for (guint i = list->len; i > 0; i--)
    {
      if (!is_of_gauge (g_ptr_array_index (list, i - 1), tag))
        continue;
      g_ptr_array_remove_index (list, i - 1);
      at = i - 1;
    }
  at = MIN (at, list->len);
  for (guint i = 0; i < source->len; i++)
    {
      gconstpointer row = g_ptr_array_index (source, i);

      if (is_of_gauge (row, tag))
        g_ptr_array_insert (list, (gint)at++, copy_row (book, into, kind, row));
    }
}

/* The gauges of one job, with their history. */
static TmJob *
load_gauges (TmBook *book, gint64 number, GError **error)
{
  g_autoptr (TmJob) job = tm_job_new ();

  for (TmBookKind kind = TM_BOOK_GAUGE; kind <= TM_BOOK_PIN_SIZE; kind++)
    {
      sqlite3_stmt *statement = tm_book_select_kind (book, kind, number, error);

      if (statement == NULL || !tm_book_load_rows (book, kind, statement, job, error))
        return NULL;
    }
  return g_steal_pointer (&job);
}

typedef struct {
  const TmJob *from;
  const TmGauge *gauge;
  const char *by;
  const char *at;
} Spread;

static gboolean
spread_to (TmBook *book, const Spread *spread, gint64 number, GError **error)
{
  const char *tag = spread->gauge->tag;
  g_autoptr (TmJob) job = NULL;
  gboolean frozen = FALSE;

  if (!tm_book_is_frozen (book, number, &frozen, error))
    return FALSE;
  if (frozen)
    return TRUE;
  job = load_gauges (book, number, error);
  if (job == NULL)
    return FALSE;
  tm_job_replace_gauge (job, tag, copy_row (book, job, TM_BOOK_GAUGE, spread->gauge));
  for (gsize i = 0; i < G_N_ELEMENTS (history); i++)
    replace_rows (book, job, spread->from, history[i], tag);
  for (TmBookKind kind = TM_BOOK_GAUGE; kind <= TM_BOOK_PIN_SIZE; kind++)
    {
      if (!tm_book_save_list (book, number, kind, job, spread->by, spread->at, error))
        return FALSE;
    }
  return TRUE;
}

/* The numbers of the other jobs that have the gauge. */
static GArray *
find_holders (TmBook *book, const Spread *spread, GError **error)
{
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (gint64));
  sqlite3_stmt *statement
      = tm_book_prepare (book,
                         "SELECT g.job FROM current_gauge AS g JOIN job AS j ON j.seq = g.job"
                         " WHERE g.key = ? AND j.id <> ? ORDER BY g.job",
                         error);
  GError *failure = NULL;

  if (statement == NULL)
    return NULL;
  tm_bind_text (statement, 1, spread->gauge->tag);
  tm_bind_text (statement, 2, spread->from->id);
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

static gboolean
spread_all (TmBook *book, const Spread *spread, guint *n_jobs, GError **error)
{
  g_autoptr (GArray) numbers = find_holders (book, spread, error);

  for (guint i = 0; numbers != NULL && i < numbers->len; i++)
    {
      gint64 before = book->chain.seq;

      if (!spread_to (book, spread, g_array_index (numbers, gint64, i), error))
        return FALSE;
      *n_jobs += book->chain.seq > before ? 1 : 0;
    }
  return numbers != NULL;
}

gboolean
tm_book_spread_gauge (TmBook *book, const TmJob *from, const char *tag, const char *by, const char *at,
                      guint *n_jobs, GError **error)
{
  Spread spread = { from, NULL, by != NULL ? by : "", at != NULL ? at : "" };
  guint changed = 0;

  g_return_val_if_fail (book != NULL && from != NULL && tag != NULL, FALSE);

  if (n_jobs != NULL)
    *n_jobs = 0;
  spread.gauge = tm_job_find_gauge (from, tag);
  if (spread.gauge == NULL)
    {
      g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED,
                   _ ("no gauge %s to take over into the other jobs of “%s”; add it to the job first"), tag,
                   book->path);
      return FALSE;
    }
  if (!tm_book_begin (book, error) || !tm_book_end (book, spread_all (book, &spread, &changed, error), error))
    return FALSE;
  if (n_jobs != NULL)
    *n_jobs = changed;
  return TRUE;
}
