/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-job: a whole job into the book, in one transaction.
 */

#include "book-private.h"

#include <glib/gi18n-lib.h>

/* How far the work is. */
typedef struct {
  TmBook *book;
  const TmJob *job;
  gint64 number;
  TmBookProgress progress;
  gpointer data;
  guint64 done;
  guint64 total;
} Work;

static const GPtrArray *
list_of (const TmJob *job, TmBookKind kind)
{
  return G_STRUCT_MEMBER (GPtrArray *, job, tm_kind_info (kind)->list);
}

static gboolean
add_versions (Work *work, TmBookKind kind, GError **error)
{
  const GPtrArray *list = list_of (work->job, kind);

  for (guint i = 0; i < list->len; i++)
    {
      gconstpointer row = g_ptr_array_index (list, i);
      g_autofree char *key = tm_book_key (kind, row, i + 1);
      TmVersion version = { key, (i + 1) * TM_RANK_STEP, FALSE, "", "" };

      if (tm_book_append (work->book, kind, work->number, &version, row, error) == 0)
        return FALSE;
    }
  return TRUE;
}

/* As many rows are worth a thread that makes their facts. */
#define AHEAD_ROWS 2048

static gint64
add_row (Work *work, TmBookKind kind, gconstpointer row, TmAhead *ahead, GError **error)
{
  if (ahead == NULL)
    return tm_book_append (work->book, kind, work->number, NULL, row, error);
  return tm_book_append_made (work->book, kind, work->number, row, tm_ahead_next (ahead), error);
}

static gboolean
add_record (Work *work, TmBookKind kind, GError **error)
{
  const GPtrArray *list = list_of (work->job, kind);
  g_autoptr (TmAhead) ahead
      = list->len >= AHEAD_ROWS ? tm_ahead_new (kind, work->number, list, &work->book->chain) : NULL;

  for (guint i = 0; i < list->len; i++)
    {
      if (add_row (work, kind, g_ptr_array_index (list, i), ahead, error) == 0
          || !tm_book_tick (work->book, work->progress, work->data, ++work->done, work->total, error))
        return FALSE;
    }
  return TRUE;
}

/* The withdrawals noted on the rows of one kind. */
static gboolean
add_withdrawals (Work *work, TmBookKind kind, GError **error)
{
  const GPtrArray *list = list_of (work->job, kind);

  for (guint i = 0; i < list->len; i++)
    {
      /* Every row of the record begins with its TmEntryRow. */
      const TmEntryRow *row = g_ptr_array_index (list, i);
      TmBookWithdrawal withdrawal = { tm_kind_info (kind)->table, row->id, { 0 } };

      if (row->withdrawn == NULL)
        continue;
      withdrawal.note = *row->withdrawn;
      if (tm_book_append (work->book, TM_BOOK_WITHDRAWAL, work->number, NULL, &withdrawal, error) == 0)
        return FALSE;
    }
  return TRUE;
}

static gboolean
add_all (Work *work, GError **error)
{
  static const TmBookKind record[] = { TM_BOOK_READING, TM_BOOK_PIN_TRIAL, TM_BOOK_CUT };
  TmVersion version = { "", 0, FALSE, "", "" };

  work->number = tm_book_append (work->book, TM_BOOK_JOB, 0, NULL, work->job, error);
  if (work->number == 0
      || tm_book_append (work->book, TM_BOOK_FACTS, work->number, &version, work->job, error) == 0)
    return FALSE;
  for (TmBookKind kind = TM_BOOK_FIRST_LIST; kind <= TM_BOOK_LAST_LIST; kind++)
    {
      if (!add_versions (work, kind, error))
        return FALSE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (record); i++)
    {
      if (!add_record (work, record[i], error) || !add_withdrawals (work, record[i], error))
        return FALSE;
    }
  return TRUE;
}

void
tm_book_write_content (TmCells *cells, TmBookKind kind, gconstpointer row, GString *out)
{
  static const TmVersion blank = { "", 0, FALSE, "", "" };

  g_string_truncate (out, 0);
  tm_cells_from_struct (cells, kind, tm_kind_info (kind)->versioned ? &blank : NULL, row);
  tm_cells_content (cells, kind, out);
}

static gboolean
same_note (const TmWithdrawal *a, const TmWithdrawal *b)
{
  if (a == NULL || b == NULL)
    return a == b;
  return g_str_equal (a->by, b->by) && g_str_equal (a->at, b->at) && g_str_equal (a->reason, b->reason)
         && g_str_equal (a->extra, b->extra);
}

static gboolean
same_row (TmCells *cells, TmBookKind kind, gconstpointer a, gconstpointer b, GString *text_a, GString *text_b)
{
  tm_book_write_content (cells, kind, a, text_a);
  tm_book_write_content (cells, kind, b, text_b);
  if (!g_string_equal (text_a, text_b))
    return FALSE;
  if (kind != TM_BOOK_READING && kind != TM_BOOK_PIN_TRIAL && kind != TM_BOOK_CUT)
    return TRUE;
  return same_note (((const TmEntryRow *)a)->withdrawn, ((const TmEntryRow *)b)->withdrawn);
}

static gboolean
same_list (TmCells *cells, TmBookKind kind, const GPtrArray *a, const GPtrArray *b)
{
  g_autoptr (GString) text_a = g_string_new (NULL);
  g_autoptr (GString) text_b = g_string_new (NULL);

  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      if (!same_row (cells, kind, g_ptr_array_index (a, i), g_ptr_array_index (b, i), text_a, text_b))
        return FALSE;
    }
  return TRUE;
}

gboolean
tm_book_same_content (TmBook *book, const TmJob *a, const TmJob *b)
{
  g_autoptr (GString) text_a = g_string_new (NULL);
  g_autoptr (GString) text_b = g_string_new (NULL);

  if (!same_row (&book->cells, TM_BOOK_FACTS, a, b, text_a, text_b))
    return FALSE;
  for (TmBookKind kind = TM_BOOK_FIRST_LIST; kind < TM_N_BOOK_KINDS; kind++)
    {
      if (tm_kind_info (kind)->list != 0
          && !same_list (&book->cells, kind, list_of (a, kind), list_of (b, kind)))
        return FALSE;
    }
  return TRUE;
}

/* "P-1 revision B", or the part number alone. */
static char *
name_part (const TmJob *job)
{
  if (*job->revision == '\0')
    return g_strdup (job->part_number);
  return g_strdup_printf (_ ("%s revision %s"), job->part_number, job->revision);
}

/* The book has a job with this id already. */
static gboolean
compare_with_present (TmBook *book, const TmJob *job, GError **error)
{
  g_autoptr (TmJob) present = tm_book_load_job (book, job->id, NULL, NULL, error);
  g_autofree char *held = NULL;
  g_autofree char *given = name_part (job);

  if (present == NULL)
    return FALSE;
  held = name_part (present);
  if (tm_book_same_content (book, job, present))
    return TRUE;
  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_SAME_ID,
               _ ("job id %s stands in “%s” already, for part %s with other content; this one is part %s; "
                  "open that job, or give this one an id of its own"),
               job->id, book->path, held, given);
  return FALSE;
}

static gboolean
is_present (TmBook *book, const char *id, gboolean *present, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (book, "SELECT seq FROM job WHERE id = ?", error);
  gint64 number = 0;

  if (statement == NULL)
    return FALSE;
  tm_bind_text (statement, 1, id);
  if (!tm_book_ask (book, statement, 0, &number, error))
    return FALSE;
  *present = number > 0;
  return TRUE;
}

/* A large job is written without folding the log in on the way, which the idle call does, and with room for
 * the pages of its indices, which would go to the log again and again. */
static void
make_room (TmBook *book, gboolean large)
{
  sqlite3_wal_autocheckpoint (book->db, large ? 0 : TM_BOOK_CHECKPOINT_PAGES);
  /* Without the room it is only slow. */
  sqlite3_exec (book->db, large ? "PRAGMA cache_size = -131072" : TM_BOOK_CACHE_SQL, NULL, NULL, NULL);
}

static gboolean
add_new (Work *work, GError **error)
{
  gboolean present = FALSE;
  gboolean done;

  make_room (work->book, TRUE);
  done = tm_book_begin (work->book, error);
  if (done)
    {
      /* Another program may have added it since the first look. */
      done = is_present (work->book, work->job->id, &present, error)
             && (present ? compare_with_present (work->book, work->job, error) : add_all (work, error));
      done = tm_book_end (work->book, done, error);
    }
  make_room (work->book, FALSE);
  return done;
}

gboolean
tm_book_add_job (TmBook *book, const TmJob *job, TmBookProgress progress, gpointer data, gboolean *added,
                 GError **error)
{
  Work work = { .book = book, .job = job, .progress = progress, .data = data };
  gboolean present = FALSE;

  g_return_val_if_fail (book != NULL && job != NULL && job->id[0] != '\0', FALSE);

  if (added != NULL)
    *added = FALSE;
  if (!is_present (book, job->id, &present, error))
    return FALSE;
  if (present)
    return compare_with_present (book, job, error);
  work.total = job->readings->len + job->pin_trials->len + job->cuts->len;
  if (!add_new (&work, error))
    return FALSE;
  if (added != NULL)
    *added = work.number > 0;
  return TRUE;
}
