/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-record: readings, trials, cuts and withdrawals, one durable transaction each.
 *
 * The rules of the record (core-model.h) are checked against the book, inside the transaction: the
 * job that the caller holds may be older than the book.
 */

#include "book-private.h"

#include <glib/gi18n-lib.h>

G_GNUC_PRINTF (3, 4)
static gboolean
refuse (TmBook *book, GError **error, const char *format, ...)
{
  g_autofree char *why = NULL;
  va_list arguments;

  va_start (arguments, format);
  why = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_REFUSED, _ ("not recorded in “%s”: %s"), book->path, why);
  return FALSE;
}

static gboolean
ask_by_name (TmBook *book, const char *sql, gint64 job, const char *name, gint64 *out, GError **error)
{
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, job);
  tm_bind_text (statement, 2, name);
  return tm_book_ask (book, statement, 0, out, error);
}

/* The piece and the feature must be in the book's newest lists, and the place on the feature. */
static gboolean
check_spot (TmBook *book, gint64 job, const TmEntryRow *row, guint place, GError **error)
{
  gint64 piece = 0;
  gint64 places = 0;

  if (row->piece == NULL || row->feature == NULL)
    return refuse (book, error, _ ("it names no piece and feature; choose both first"));
  if (!ask_by_name (book, "SELECT removed = 0 FROM piece WHERE job = ? AND key = ? ORDER BY seq DESC LIMIT 1",
                    job, row->piece->serial, &piece, error)
      || !ask_by_name (book,
                       "SELECT places * (removed = 0) FROM feature WHERE job = ? AND key = ?"
                       " ORDER BY seq DESC LIMIT 1",
                       job, row->feature->balloon, &places, error))
    return FALSE;
  if (piece == 0)
    return refuse (book, error, _ ("piece %s is not in the book's list; save the job first"),
                   row->piece->serial);
  if (places == 0)
    return refuse (book, error, _ ("feature %s is not in the book's list; save the job first"),
                   row->feature->balloon);
  if (place < 1 || place > places)
    return refuse (book, error, _ ("feature %s has no place %u; choose one of its places"),
                   row->feature->balloon, place);
  return TRUE;
}

static gboolean
check_id (TmBook *book, TmBookKind kind, gint64 job, const char *id, GError **error)
{
  const char *table = tm_kind_info (kind)->table;
  g_autofree char *sql = g_strdup_printf ("SELECT 1 FROM %s WHERE job = ? AND id = ?", table);
  gint64 taken = 0;

  if (!ask_by_name (book, sql, job, id, &taken, error))
    return FALSE;
  if (taken != 0)
    return refuse (book, error, _ ("number %s is taken, by another window or program; open the job again"),
                   id);
  return TRUE;
}

/* Whether row @id of @kind stands: found, neither corrected nor withdrawn.  @spot, when not NULL,
 * must be its piece and feature. */
static gboolean
check_target (TmBook *book, TmBookKind kind, gint64 job, const char *id, const TmEntryRow *spot,
              GError **error)
{
  const char *table = tm_kind_info (kind)->table;
  g_autofree char *sql = g_strdup_printf (
      "SELECT piece, feature, EXISTS (SELECT 1 FROM %s AS c WHERE c.job = r.job AND c.replaces = r.id"
      " AND c.replaces <> '') OR EXISTS (SELECT 1 FROM withdrawal AS w WHERE w.job = r.job"
      " AND w.target = '%s' AND w.id = r.id) FROM %s AS r WHERE job = ? AND id = ?",
      table, table, table);
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);
  g_autofree char *name = tm_kind_name (kind, id);
  GError *failure = NULL;
  gboolean right;
  gboolean gone;

  if (statement == NULL)
    return FALSE;
  sqlite3_bind_int64 (statement, 1, job);
  tm_bind_text (statement, 2, id);
  if (!tm_book_step (book, statement, &failure))
    {
      if (failure == NULL)
        return refuse (book, error, _ ("there is no %s to correct or withdraw; open the job again"), name);
      g_propagate_error (error, failure);
      return FALSE;
    }
  right = spot == NULL
          || (g_str_equal (tm_column_text (statement, 0), spot->piece->serial)
              && g_str_equal (tm_column_text (statement, 1), spot->feature->balloon));
  gone = sqlite3_column_int (statement, 2) != 0;
  sqlite3_reset (statement);
  if (!right)
    return refuse (book, error, _ ("%s is of another piece or feature; correct one of the same"), name);
  if (gone)
    return refuse (book, error, _ ("%s is corrected or withdrawn already; open the job again"), name);
  return TRUE;
}

static gboolean
check_row (TmBook *book, TmBookKind kind, gint64 job, const TmEntryRow *row, guint place, GError **error)
{
  gboolean corrects = row->replaces != NULL && row->replaces[0] != '\0';

  if (!check_spot (book, job, row, place, error) || !check_id (book, kind, job, row->id, error))
    return FALSE;
  if (!corrects)
    return TRUE;
  if (row->reason == NULL || row->reason[0] == '\0')
    return refuse (book, error, _ ("a correction needs its reason; say why"));
  return check_target (book, kind, job, row->replaces, row, error);
}

/* One more than the largest whole number among the ids, as core numbers them. */
static char *
next_id (TmBook *book, TmBookKind kind, gint64 job, GError **error)
{
  g_autofree char *sql = g_strdup_printf ("SELECT max (CAST (id AS INTEGER)) FROM %s WHERE job = ?"
                                          " AND id NOT GLOB '*[^0-9]*'",
                                          tm_kind_info (kind)->table);
  sqlite3_stmt *statement = tm_book_prepare (book, sql, error);
  gint64 last = 0;

  if (statement == NULL)
    return NULL;
  sqlite3_bind_int64 (statement, 1, job);
  if (!tm_book_ask (book, statement, 0, &last, error))
    return NULL;
  return g_strdup_printf ("%" G_GUINT64_FORMAT, (guint64)last + 1);
}

/* @row is a copy that begins with its TmEntryRow. */
static gboolean
append_row (TmBook *book, const char *job_id, TmBookKind kind, TmEntryRow *row, guint place, GError **error)
{
  g_autofree char *id = NULL;
  gint64 job = tm_book_job_number (book, job_id, error);

  if (job == 0)
    return FALSE;
  if (row->id == NULL || row->id[0] == '\0')
    {
      id = next_id (book, kind, job, error);
      if (id == NULL)
        return FALSE;
      row->id = id;
    }
  return check_row (book, kind, job, row, place, error)
         && tm_book_append (book, kind, job, NULL, row, error) > 0;
}

static gboolean
record_row (TmBook *book, const char *job_id, TmBookKind kind, TmEntryRow *row, guint place, GError **error)
{
  if (!tm_book_begin (book, error))
    return FALSE;
  return tm_book_end (book, append_row (book, job_id, kind, row, place, error), error);
}

gboolean
tm_book_record_reading (TmBook *book, const char *job_id, const TmReading *reading, GError **error)
{
  TmReading copy;

  g_return_val_if_fail (book != NULL && job_id != NULL && reading != NULL, FALSE);

  copy = *reading;
  return record_row (book, job_id, TM_BOOK_READING, &copy.row, copy.place, error);
}

gboolean
tm_book_record_pin_trial (TmBook *book, const char *job_id, const TmPinTrial *trial, GError **error)
{
  TmPinTrial copy;

  g_return_val_if_fail (book != NULL && job_id != NULL && trial != NULL, FALSE);

  copy = *trial;
  return record_row (book, job_id, TM_BOOK_PIN_TRIAL, &copy.row, copy.place, error);
}

gboolean
tm_book_record_cut (TmBook *book, const char *job_id, const TmCutRow *cut, GError **error)
{
  TmCutRow copy;

  g_return_val_if_fail (book != NULL && job_id != NULL && cut != NULL, FALSE);

  copy = *cut;
  return record_row (book, job_id, TM_BOOK_CUT, &copy.row, copy.place, error);
}

static gboolean
append_withdrawal (TmBook *book, const char *job_id, TmBookKind kind, const TmBookWithdrawal *withdrawal,
                   GError **error)
{
  gint64 job = tm_book_job_number (book, job_id, error);

  return job > 0 && check_target (book, kind, job, withdrawal->id, NULL, error)
         && tm_book_append (book, TM_BOOK_WITHDRAWAL, job, NULL, withdrawal, error) > 0;
}

static gboolean
withdraw_row (TmBook *book, const char *job_id, TmBookKind kind, const char *id,
              const TmWithdrawal *withdrawal, GError **error)
{
  TmBookWithdrawal row = { tm_kind_info (kind)->table, id, *withdrawal };

  if (withdrawal->reason == NULL || withdrawal->reason[0] == '\0')
    return refuse (book, error, _ ("a withdrawal needs its reason; say why"));
  if (!tm_book_begin (book, error))
    return FALSE;
  return tm_book_end (book, append_withdrawal (book, job_id, kind, &row, error), error);
}

gboolean
tm_book_withdraw_reading (TmBook *book, const char *job_id, const char *reading_id,
                          const TmWithdrawal *withdrawal, GError **error)
{
  g_return_val_if_fail (book != NULL && job_id != NULL && reading_id != NULL && withdrawal != NULL, FALSE);

  return withdraw_row (book, job_id, TM_BOOK_READING, reading_id, withdrawal, error);
}

gboolean
tm_book_withdraw_pin_trial (TmBook *book, const char *job_id, const char *trial_id,
                            const TmWithdrawal *withdrawal, GError **error)
{
  g_return_val_if_fail (book != NULL && job_id != NULL && trial_id != NULL && withdrawal != NULL, FALSE);

  return withdraw_row (book, job_id, TM_BOOK_PIN_TRIAL, trial_id, withdrawal, error);
}

gboolean
tm_book_withdraw_cut (TmBook *book, const char *job_id, const char *cut_id, const TmWithdrawal *withdrawal,
                      GError **error)
{
  g_return_val_if_fail (book != NULL && job_id != NULL && cut_id != NULL && withdrawal != NULL, FALSE);

  return withdraw_row (book, job_id, TM_BOOK_CUT, cut_id, withdrawal, error);
}

/* --- the recorder */

typedef struct {
  TmBook *book;
  const char *job_id;
} Binding;

static gboolean
record_reading_cb (gpointer self, const TmReading *reading, GError **error)
{
  const Binding *binding = self;

  return tm_book_record_reading (binding->book, binding->job_id, reading, error);
}

static gboolean
record_pin_trial_cb (gpointer self, const TmPinTrial *trial, GError **error)
{
  const Binding *binding = self;

  return tm_book_record_pin_trial (binding->book, binding->job_id, trial, error);
}

static gboolean
record_cut_cb (gpointer self, const TmCutRow *cut, GError **error)
{
  const Binding *binding = self;

  return tm_book_record_cut (binding->book, binding->job_id, cut, error);
}

static gboolean
withdraw_reading_cb (gpointer self, const char *id, const TmWithdrawal *withdrawal, GError **error)
{
  const Binding *binding = self;

  return tm_book_withdraw_reading (binding->book, binding->job_id, id, withdrawal, error);
}

static gboolean
withdraw_pin_trial_cb (gpointer self, const char *id, const TmWithdrawal *withdrawal, GError **error)
{
  const Binding *binding = self;

  return tm_book_withdraw_pin_trial (binding->book, binding->job_id, id, withdrawal, error);
}

static gboolean
withdraw_cut_cb (gpointer self, const char *id, const TmWithdrawal *withdrawal, GError **error)
{
  const Binding *binding = self;

  return tm_book_withdraw_cut (binding->book, binding->job_id, id, withdrawal, error);
}

TmRecorder
tm_book_recorder (TmBook *book, const char *job_id)
{
  Binding *binding = g_new (Binding, 1);

  *binding = (Binding) { book, job_id };
  g_ptr_array_add (book->recorders, binding);
  return (TmRecorder) { .self = binding,
                        .record_reading = record_reading_cb,
                        .record_pin_trial = record_pin_trial_cb,
                        .record_cut = record_cut_cb,
                        .withdraw_reading = withdraw_reading_cb,
                        .withdraw_pin_trial = withdraw_pin_trial_cb,
                        .withdraw_cut = withdraw_cut_cb };
}
