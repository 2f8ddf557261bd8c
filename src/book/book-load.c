/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-load: a job out of the book, in the order recorded.
 */

#include "book-private.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

gint64
tm_book_job_number (TmBook *book, const char *id, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (book, "SELECT seq FROM job WHERE id = ?", error);
  gint64 number = 0;

  if (statement == NULL)
    return 0;
  tm_bind_text (statement, 1, id);
  if (!tm_book_ask (book, statement, 0, &number, error))
    return 0;
  if (number == 0)
    g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_JOB,
                 _ ("no job “%s” in “%s”; look at the list of jobs, or add its job file first"), id,
                 book->path);
  return number;
}

gboolean
tm_book_tick (TmBook *book, TmBookProgress progress, gpointer data, guint64 done, guint64 total,
              GError **error)
{
  if (progress == NULL || done % TM_BOOK_STRIDE != 0)
    return TRUE;
  if (progress (total > 0 ? (double)done / (double)total : 0.0, data))
    return TRUE;
  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_CANCELLED,
               _ ("work on “%s” was cancelled; nothing was changed"), book->path);
  return FALSE;
}

/* A row that cannot be what the program wrote. */
static gboolean
refuse_row (TmBook *book, TmBookKind kind, gint64 seq, const char *why, GError **error)
{
  g_set_error (
      error, TM_BOOK_ERROR, TM_BOOK_ERROR_DAMAGED,
      _ ("“%s” is damaged: table %s, row %" PRId64 ": %s; verify the book, and go on with the newest backup"),
      book->path, tm_kind_info (kind)->table, seq, why);
  return FALSE;
}

gpointer
tm_book_new_row (TmBookKind kind)
{
  switch ((guint)kind)
    {
    case TM_BOOK_PERSON:
      return tm_person_new ();
    case TM_BOOK_GAUGE:
      return tm_gauge_new ();
    case TM_BOOK_METHOD:
      return tm_method_new ();
    case TM_BOOK_FEATURE:
      return tm_feature_new ();
    case TM_BOOK_PIECE:
      return tm_piece_new ();
    case TM_BOOK_CALIBRATION:
      return tm_calibration_new ();
    case TM_BOOK_CHECK:
      return tm_check_new ();
    case TM_BOOK_PIN_SIZE:
      return tm_pin_size_new ();
    case TM_BOOK_BUDGET_LINE:
      return tm_budget_line_new ();
    case TM_BOOK_TOOL:
      return tm_tool_new ();
    case TM_BOOK_MATERIAL:
      return tm_shop_material_new ();
    case TM_BOOK_MATE:
      return tm_mate_size_new ();
    case TM_BOOK_SUPPLY:
      return tm_supply_new ();
    case TM_BOOK_SUB_PART:
      return tm_sub_part_new ();
    case TM_BOOK_REPORT_FIELD:
      return tm_report_field_new ();
    case TM_BOOK_DRAWING:
      return tm_drawing_new ();
    case TM_BOOK_BALLOON:
      return tm_balloon_mark_new ();
    case TM_BOOK_STUDY:
      return tm_study_new ();
    case TM_BOOK_STUDY_READING:
      return tm_study_reading_new ();
    case TM_BOOK_EVENT:
      return tm_event_new ();
    case TM_BOOK_NONCONFORMANCE:
      return tm_nonconformance_new ();
    case TM_BOOK_SIGNATURE:
      return tm_signature_new ();
    case TM_BOOK_READING:
      return tm_reading_new ();
    case TM_BOOK_PIN_TRIAL:
      return tm_pin_trial_new ();
    case TM_BOOK_CUT:
      return tm_cut_row_new ();
    default:
      g_assert_not_reached ();
    }
}

TmAddStatus
tm_book_add_row (TmJob *job, TmBookKind kind, gpointer row)
{
  switch ((guint)kind)
    {
    case TM_BOOK_PERSON:
      return tm_job_add_person (job, row);
    case TM_BOOK_GAUGE:
      return tm_job_add_gauge (job, row);
    case TM_BOOK_METHOD:
      return tm_job_add_method (job, row);
    case TM_BOOK_FEATURE:
      return tm_job_add_feature (job, row);
    case TM_BOOK_PIECE:
      return tm_job_add_piece (job, row);
    case TM_BOOK_CALIBRATION:
      return tm_job_add_calibration (job, row);
    case TM_BOOK_CHECK:
      return tm_job_add_check (job, row);
    case TM_BOOK_PIN_SIZE:
      return tm_job_add_pin_size (job, row);
    case TM_BOOK_BUDGET_LINE:
      return tm_job_add_budget_line (job, row);
    case TM_BOOK_TOOL:
      return tm_job_add_tool (job, row);
    case TM_BOOK_MATERIAL:
      return tm_job_add_material (job, row);
    case TM_BOOK_MATE:
      return tm_job_add_mate_size (job, row);
    case TM_BOOK_SUPPLY:
      tm_job_add_supply (job, row);
      return TM_ADD_OK;
    case TM_BOOK_SUB_PART:
      tm_job_add_sub_part (job, row);
      return TM_ADD_OK;
    case TM_BOOK_REPORT_FIELD:
      tm_job_add_report_field (job, row);
      return TM_ADD_OK;
    case TM_BOOK_DRAWING:
      return tm_job_add_drawing (job, row);
    case TM_BOOK_BALLOON:
      return tm_job_add_balloon_mark (job, row);
    case TM_BOOK_STUDY:
      return tm_job_add_study (job, row);
    case TM_BOOK_STUDY_READING:
      return tm_job_add_study_reading (job, row);
    case TM_BOOK_EVENT:
      tm_job_add_event (job, row);
      return TM_ADD_OK;
    case TM_BOOK_NONCONFORMANCE:
      tm_job_add_nonconformance (job, row);
      return TM_ADD_OK;
    case TM_BOOK_SIGNATURE:
      tm_job_add_signature (job, row);
      return TM_ADD_OK;
    case TM_BOOK_READING:
      return tm_job_add_reading (job, row);
    case TM_BOOK_PIN_TRIAL:
      return tm_job_add_pin_trial (job, row);
    case TM_BOOK_CUT:
      return tm_job_add_cut (job, row);
    default:
      g_assert_not_reached ();
    }
}

void
tm_book_free_row (TmBookKind kind, gpointer row)
{
  switch ((guint)kind)
    {
    case TM_BOOK_METHOD:
      tm_method_free (row);
      break;
    case TM_BOOK_FEATURE:
      tm_feature_free (row);
      break;
    case TM_BOOK_DRAWING:
      tm_drawing_free (row);
      break;
    case TM_BOOK_STUDY:
      tm_study_free (row);
      break;
    case TM_BOOK_READING:
      tm_reading_free (row);
      break;
    case TM_BOOK_PIN_TRIAL:
      tm_pin_trial_free (row);
      break;
    case TM_BOOK_CUT:
      tm_cut_row_free (row);
      break;
    default:
      g_free (row);
    }
}

sqlite3_stmt *
tm_book_select_kind (TmBook *book, TmBookKind kind, gint64 number, GError **error)
{
  const TmKindInfo *info = tm_kind_info (kind);
  g_autofree char *select = tm_kind_select_sql (kind);
  g_autofree char *newest = g_strdup_printf ("%s WHERE removed = 0 AND seq IN (SELECT max (seq) FROM %s"
                                             " WHERE job = ? GROUP BY key) ORDER BY rank, seq",
                                             select, info->table);
  g_autofree char *all = g_strdup_printf ("%s WHERE job = ? ORDER BY seq", select);
  sqlite3_stmt *statement = tm_book_prepare (book, info->versioned ? newest : all, error);

  if (statement != NULL)
    sqlite3_bind_int64 (statement, 1, number);
  return statement;
}

gboolean
tm_book_load_row (TmBook *book, TmBookKind kind, TmReader *reader, sqlite3_stmt *statement, GError **error)
{
  TmVersion version = { 0 };
  gpointer row = tm_book_new_row (kind);
  const char *wrong;
  TmAddStatus status;

  tm_cells_from_row (&book->cells, statement);
  wrong = tm_cells_to_struct (&book->cells, kind, reader, &version, row);
  status = wrong == NULL ? tm_book_add_row (reader->job, kind, row) : TM_ADD_OK;
  if (wrong == NULL && status == TM_ADD_OK)
    return TRUE;
  tm_book_free_row (kind, row);
  return refuse_row (book, kind, sqlite3_column_int64 (statement, 0),
                     wrong != NULL ? wrong : _ (tm_add_status_text (status)), error);
}

/* How far a long load is. */
typedef struct {
  TmBookProgress progress;
  gpointer data;
  guint64 done;
  guint64 total;
} Work;

static gboolean
load_rows (TmBook *book, TmBookKind kind, sqlite3_stmt *statement, TmJob *job, Work *work, GError **error)
{
  TmReader reader = { .job = job };
  GError *failure = NULL;

  while (tm_book_step (book, statement, &failure))
    {
      if (tm_book_load_row (book, kind, &reader, statement, &failure)
          && (work == NULL
              || tm_book_tick (book, work->progress, work->data, ++work->done, work->total, &failure)))
        continue;
      sqlite3_reset (statement);
      break;
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

gboolean
tm_book_load_rows (TmBook *book, TmBookKind kind, sqlite3_stmt *statement, TmJob *job, GError **error)
{
  return load_rows (book, kind, statement, job, NULL, error);
}

static gboolean
load_kind (TmBook *book, TmBookKind kind, gint64 number, TmJob *job, Work *work, GError **error)
{
  sqlite3_stmt *statement = tm_book_select_kind (book, kind, number, error);

  return statement != NULL && load_rows (book, kind, statement, job, work, error);
}

/* Where a row is read alone, a text for which there was no memory shows only at the reset. */
static gboolean
finish_row (TmBook *book, sqlite3_stmt *statement, GError **error)
{
  int rc = sqlite3_reset (statement);

  return rc == SQLITE_OK || tm_book_fail (book, rc, error);
}

static gboolean
load_id (TmBook *book, gint64 number, TmJob *job, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (book, "SELECT id FROM job WHERE seq = ?", error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, number);
  if (sqlite3_step (statement) == SQLITE_ROW)
    job->id = tm_job_intern (job, tm_column_text (statement, 0));
  return finish_row (book, statement, error);
}

static gboolean
load_facts (TmBook *book, gint64 number, TmJob *job, GError **error)
{
  sqlite3_stmt *statement = tm_book_select_kind (book, TM_BOOK_FACTS, number, error);
  TmReader reader = { .job = job };
  TmVersion version = { 0 };
  const char *wrong = _ ("the job has no facts");

  if (statement == NULL)
    return FALSE;
  if (sqlite3_step (statement) == SQLITE_ROW)
    {
      tm_cells_from_row (&book->cells, statement);
      wrong = tm_cells_to_struct (&book->cells, TM_BOOK_FACTS, &reader, &version, job);
    }
  if (!finish_row (book, statement, error))
    return FALSE;
  return wrong == NULL || refuse_row (book, TM_BOOK_FACTS, number, wrong, error);
}

TmJob *
tm_book_load_definitions (TmBook *book, gint64 number, GError **error)
{
  g_autoptr (TmJob) job = tm_job_new ();

  if (!load_id (book, number, job, error) || !load_facts (book, number, job, error))
    return NULL;
  for (TmBookKind kind = TM_BOOK_FIRST_LIST; kind <= TM_BOOK_LAST_LIST; kind++)
    {
      if (!load_kind (book, kind, number, job, NULL, error))
        return NULL;
    }
  return g_steal_pointer (&job);
}

TmEntryRow *
tm_book_find_target (const TmJob *job, const char *target, const char *id)
{
  if (g_str_equal (target, "reading"))
    return (TmEntryRow *)tm_job_find_reading (job, id);
  if (g_str_equal (target, "pin_trial"))
    return (TmEntryRow *)tm_job_find_pin_trial (job, id);
  return (TmEntryRow *)tm_job_find_cut (job, id);
}

static gboolean
load_withdrawal (TmBook *book, TmReader *reader, sqlite3_stmt *statement, GError **error)
{
  TmBookWithdrawal row = { 0 };
  TmEntryRow *target;

  tm_cells_from_row (&book->cells, statement);
  tm_cells_to_struct (&book->cells, TM_BOOK_WITHDRAWAL, reader, NULL, &row);
  target = tm_book_find_target (reader->job, row.target, row.id);
  if (target == NULL
      || tm_job_withdraw (reader->job, target, row.note.by, row.note.at, row.note.reason) != TM_ADD_OK)
    return refuse_row (book, TM_BOOK_WITHDRAWAL, sqlite3_column_int64 (statement, 0),
                       _ ("it withdraws a row that is not there or counts no more"), error);
  target->withdrawn->extra = row.note.extra;
  return TRUE;
}

static gboolean
load_withdrawals (TmBook *book, gint64 number, TmJob *job, GError **error)
{
  sqlite3_stmt *statement = tm_book_select_kind (book, TM_BOOK_WITHDRAWAL, number, error);
  TmReader reader = { .job = job };
  GError *failure = NULL;

  if (statement == NULL)
    return FALSE;
  while (tm_book_step (book, statement, &failure))
    {
      if (load_withdrawal (book, &reader, statement, &failure))
        continue;
      sqlite3_reset (statement);
      break;
    }
  if (failure == NULL)
    return TRUE;
  g_propagate_error (error, failure);
  return FALSE;
}

static gboolean
count_rows (TmBook *book, gint64 number, guint64 *total, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (book, "SELECT count (*) FROM reading WHERE job = ?", error);
  gint64 count = 0;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, number);
  if (!tm_book_ask (book, statement, 0, &count, error))
    return FALSE;
  *total = (guint64)count;
  return TRUE;
}

static TmJob *
load_all (TmBook *book, gint64 number, Work *work, GError **error)
{
  g_autoptr (TmJob) job = NULL;

  if (work->progress != NULL && !count_rows (book, number, &work->total, error))
    return NULL;
  job = tm_book_load_definitions (book, number, error);
  if (job == NULL || !load_kind (book, TM_BOOK_READING, number, job, work, error)
      || !load_kind (book, TM_BOOK_PIN_TRIAL, number, job, NULL, error)
      || !load_kind (book, TM_BOOK_CUT, number, job, NULL, error)
      || !load_withdrawals (book, number, job, error) || !tm_book_load_drawings (book, number, job, error))
    return NULL;
  tm_job_mark_reworks (job);
  return g_steal_pointer (&job);
}

TmJob *
tm_book_load_job (TmBook *book, const char *id, TmBookProgress progress, gpointer data, GError **error)
{
  Work work = { progress, data, 0, 0 };
  gboolean outermost;
  TmJob *job = NULL;
  gint64 number;

  g_return_val_if_fail (book != NULL && id != NULL, NULL);

  /* One read transaction, so that a reading recorded meanwhile is in all of it or in none. */
  outermost = sqlite3_get_autocommit (book->db) != 0;
  if (outermost && !tm_book_exec (book, "BEGIN", error))
    return NULL;
  number = tm_book_job_number (book, id, error);
  if (number > 0)
    job = load_all (book, number, &work, error);
  if (outermost)
    tm_book_rollback (book);
  return job;
}
