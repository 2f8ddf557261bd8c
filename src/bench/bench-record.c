/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-record: from what is typed to a row that the recorder has kept and the job holds.
 *
 * Every check that the job makes is made before the recorder is called, so that a row that was kept
 * is a row that the job takes.
 */

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bench-private.h"

/* How many earlier readings of the feature a slip is held against, newest pieces first. */
#define SO_FAR_MAX 64

gboolean
tm_bench_is_blank (const char *text)
{
  return text == NULL || strspn (text, " \t\r\n") == strlen (text);
}

gboolean
tm_bench_check_somewhere (const TmBench *bench, GError **error)
{
  if (bench->spot.feature == NULL)
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NOWHERE,
                   _ ("The job has no feature yet: add one before you record."));
      return FALSE;
    }
  if (bench->spot.piece == NULL)
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NOWHERE,
                   _ ("The job has no piece yet: add one before you record."));
      return FALSE;
    }
  return TRUE;
}

static void
set_entry_error (const TmFeature *feature, const char *text, TmEntryStatus status, GError **error)
{
  g_autofree char *shown = tm_bench_show_text (text);

  g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY, _ ("Feature %s: “%s”: %s."), feature->balloon,
               shown, _ (tm_entry_status_text (status)));
}

/* Adds the newest readings of one place, up to SO_FAR_MAX in all. */
static void
gather_place (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place, GArray *so_far)
{
  const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);

  for (guint i = readings != NULL ? readings->len : 0; i > 0 && so_far->len < SO_FAR_MAX; i--)
    {
      const TmReading *reading = g_ptr_array_index (readings, i - 1);

      if (tm_row_counts (&reading->row) && reading->value.given)
        g_array_append_val (so_far, reading->value.count);
    }
}

/* What was read of the feature on this piece and the ones before it. */
static GArray *
gather_so_far (const TmBench *bench)
{
  GArray *so_far = g_array_new (FALSE, FALSE, sizeof (gint64));
  const TmFeature *feature = bench->spot.feature;
  guint piece = tm_tally_piece_index (bench->tally, bench->spot.piece);
  guint n_looked = 0;

  for (guint p = piece + 1; p > 0 && n_looked < SO_FAR_MAX; p--)
    {
      for (guint place = 1; place <= feature->places && n_looked < SO_FAR_MAX; place++, n_looked++)
        gather_place (bench->job, g_ptr_array_index (bench->job->pieces, p - 1), feature, place, so_far);
    }
  return so_far;
}

/* A slip of the hand first, where it says what was meant; then a size that the gauge cannot have read. */
static TmSlipCheck
check_slip (TmBench *bench)
{
  g_autoptr (GArray) so_far = gather_so_far (bench);
  TmSlipCheck check = tm_entry_slip_check (&bench->entry, bench->spot.feature,
                                           (const gint64 *)(gpointer)so_far->data, so_far->len);

  if (!check.likelier.given && tm_bench_find_short (bench, &bench->entry.value) != NULL)
    check.slip = TM_SLIP_OUT_OF_REACH;
  return check;
}

/* TRUE when the reading may be recorded now; else @result says why not. */
static gboolean
pass_slip (TmBench *bench, gint64 now_ms, TmSubmit *result)
{
  TmSlipCheck check;

  if (bench->question.slip != TM_SLIP_NONE)
    {
      *result = TM_SUBMIT_TOO_SOON;
      return now_ms - bench->asked_ms >= TM_BENCH_CONFIRM_MS;
    }
  check = check_slip (bench);
  if (check.slip == TM_SLIP_NONE)
    return TRUE;
  bench->question = check;
  bench->asked_ms = now_ms;
  *result = TM_SUBMIT_ASKED;
  return FALSE;
}

/* A free id: one more than the largest whole-number one. */
static const char *
choose_id (const TmBench *bench)
{
  guint64 number = tm_tally_next_id (bench->tally);
  char text[24];

  do
    g_snprintf (text, sizeof text, "%" G_GUINT64_FORMAT, number++);
  while (tm_job_find_reading (bench->job, text) != NULL);
  return tm_job_intern (bench->job, text);
}

const char *
tm_bench_intern_stripped (TmJob *job, const char *text)
{
  g_autofree char *copy = g_strdup (text);

  return tm_job_intern (job, g_strstrip (copy));
}

/* A row for the present spot with everything but its value. */
static TmReading *
begin_row (const TmBench *bench, const char *typed, const char *at)
{
  const TmSpot *spot = &bench->spot;
  TmReading *row = tm_reading_new ();

  row->row.piece = spot->piece;
  row->row.feature = spot->feature;
  row->row.by = tm_job_intern (bench->job, bench->by);
  row->row.at = tm_job_intern (bench->job, at);
  row->place = spot->place;
  row->station = tm_job_intern (bench->job, spot->station);
  row->method = tm_job_intern (bench->job, tm_bench_method_in_force (bench));
  row->part_temp = bench->part_temp;
  row->gauge_temp = bench->gauge_temp;
  row->typed = tm_bench_intern_stripped (bench->job, typed);
  return row;
}

/* Hands the row to the recorder and then to the job; takes ownership of it. */
static gboolean
keep_row (TmBench *bench, TmReading *row, GError **error)
{
  TmAddStatus status;

  row->row.id = choose_id (bench);
  if (!bench->recorder.record_reading (bench->recorder.self, row, error))
    {
      tm_reading_free (row);
      return FALSE;
    }
  status = tm_job_add_reading (bench->job, row);
  if (status != TM_ADD_OK)
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_REFUSED, _ ("Feature %s, piece %s: %s."),
                   row->row.feature->balloon, row->row.piece->serial, _ (tm_add_status_text (status)));
      tm_reading_free (row);
      return FALSE;
    }
  tm_bench_note_fact (bench, (TmBenchFact) { .reading = row });
  return TRUE;
}

/* Why a gauge past its due date may be used; FALSE when nobody has said. */
static gboolean
excuse_gauges (TmBench *bench, const char *at, const char **reason, GError **error)
{
  const TmGauge *gauges[TM_BENCH_MAX_GAUGES];
  guint n = tm_bench_method_gauges (bench, tm_bench_method_in_force (bench), gauges);

  tm_bench_set_now (bench, at);
  return tm_bench_excuse_overdue (bench, gauges, n, at, reason, error);
}

static void
keep_reason (TmBench *bench, const char *method, const char *at)
{
  const TmGauge *gauges[TM_BENCH_MAX_GAUGES];
  guint n = tm_bench_method_gauges (bench, method, gauges);

  tm_bench_bind_reason (bench, gauges, n, at);
}

/* Records @row, empties the entry and moves on. */
static TmSubmit
finish_submit (TmBench *bench, TmReading *row, GError **error)
{
  if (!keep_row (bench, row, error))
    return TM_SUBMIT_FAILED;
  keep_reason (bench, row->method, row->row.at);
  tm_bench_set_text (bench, "");
  if (!tm_bench_go_next_unread (bench))
    tm_bench_read_text (bench);
  return TM_SUBMIT_RECORDED;
}

TmSubmit
tm_bench_submit (TmBench *bench, const char *at, gint64 now_ms, GError **error)
{
  TmSubmit result = TM_SUBMIT_REFUSED;
  const char *reason;
  TmReading *row;

  g_return_val_if_fail (bench != NULL, TM_SUBMIT_REFUSED);

  tm_bench_refresh (bench);
  if (!tm_bench_check_somewhere (bench, error))
    return TM_SUBMIT_REFUSED;
  if (bench->entry.status != TM_ENTRY_OK)
    {
      set_entry_error (bench->spot.feature, bench->text, bench->entry.status, error);
      return TM_SUBMIT_REFUSED;
    }
  if (!excuse_gauges (bench, at, &reason, error) || !pass_slip (bench, now_ms, &result))
    return result;
  row = begin_row (bench, bench->text, at);
  row->overdue_reason = reason;
  row->value = bench->entry.value;
  row->outcome = bench->entry.outcome;
  return finish_submit (bench, row, error);
}

TmSubmit
tm_bench_submit_offsets (TmBench *bench, const char *dx_text, const char *dy_text, const char *at,
                         GError **error)
{
  g_autofree char *typed
      = g_strdup_printf ("%s; %s", dx_text != NULL ? dx_text : "", dy_text != NULL ? dy_text : "");
  const char *reason;
  TmReading *row;

  g_return_val_if_fail (bench != NULL, TM_SUBMIT_REFUSED);

  tm_bench_refresh (bench);
  if (!tm_bench_check_somewhere (bench, error) || !excuse_gauges (bench, at, &reason, error))
    return TM_SUBMIT_REFUSED;
  row = begin_row (bench, typed, at);
  row->overdue_reason = reason;
  if (!tm_bench_read_offsets (row->row.feature, dx_text, dy_text, row, error))
    {
      tm_reading_free (row);
      return TM_SUBMIT_REFUSED;
    }
  return finish_submit (bench, row, error);
}

/* The job's own row for @reading, when it stands and a reason is given. */
static TmReading *
find_standing (const TmBench *bench, const TmReading *reading, const char *reason, GError **error)
{
  TmReading *found = reading != NULL ? tm_job_find_reading (bench->job, reading->row.id) : NULL;

  if (found == NULL || found != reading || !tm_row_stands (&found->row))
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET,
                   _ ("There is no reading here that still stands."));
      return NULL;
    }
  if (tm_bench_is_blank (reason))
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_REASON,
                   _ ("Reading %s: say why, so that the record can be defended."), found->row.id);
      return NULL;
    }
  return found;
}

static gboolean
read_correction (const TmReading *old, const char *text, TmReading *row, GError **error)
{
  TmEntry entry;

  if (old->dx.given && old->dy.given)
    return tm_bench_read_offset_pair (row->row.feature, text, row, error);
  entry = tm_entry_read (text, row->row.feature);
  if (entry.status != TM_ENTRY_OK)
    {
      set_entry_error (row->row.feature, text, entry.status, error);
      return FALSE;
    }
  row->value = entry.value;
  row->outcome = entry.outcome;
  return TRUE;
}

static TmReading *
begin_correction (const TmBench *bench, const TmReading *old, const char *text, const char *reason,
                  const char *at)
{
  TmReading *row = begin_row (bench, text, at);

  row->row.piece = old->row.piece;
  row->row.feature = old->row.feature;
  row->row.replaces = old->row.id;
  row->row.reason = tm_bench_intern_stripped (bench->job, reason);
  row->place = old->place;
  row->station = old->station;
  row->method = old->method;
  row->part_temp = old->part_temp;
  row->gauge_temp = old->gauge_temp;
  row->overdue_reason = old->overdue_reason;
  return row;
}

gboolean
tm_bench_correct (TmBench *bench, const TmReading *reading, const char *text, const char *reason,
                  const char *at, GError **error)
{
  TmReading *old;
  TmReading *row;

  g_return_val_if_fail (bench != NULL, FALSE);

  tm_bench_refresh (bench);
  old = find_standing (bench, reading, reason, error);
  if (old == NULL)
    return FALSE;
  row = begin_correction (bench, old, text != NULL ? text : "", reason, at);
  if (!read_correction (old, row->typed, row, error))
    {
      tm_reading_free (row);
      return FALSE;
    }
  return keep_row (bench, row, error);
}

TmWithdrawal
tm_bench_make_withdrawal (const TmBench *bench, const char *reason, const char *at)
{
  return (TmWithdrawal) { .by = bench->by,
                          .at = at != NULL ? at : "",
                          .reason = tm_bench_intern_stripped (bench->job, reason),
                          .extra = "" };
}

gboolean
tm_bench_withdraw (TmBench *bench, const TmReading *reading, const char *reason, const char *at,
                   GError **error)
{
  TmWithdrawal withdrawal;
  TmReading *found;

  g_return_val_if_fail (bench != NULL, FALSE);

  tm_bench_refresh (bench);
  found = find_standing (bench, reading, reason, error);
  if (found == NULL)
    return FALSE;
  withdrawal = tm_bench_make_withdrawal (bench, reason, at);
  if (!bench->recorder.withdraw_reading (bench->recorder.self, found->row.id, &withdrawal, error))
    return FALSE;
  tm_job_withdraw (bench->job, &found->row, withdrawal.by, withdrawal.at, withdrawal.reason);
  tm_tally_recount (bench->tally, bench->job, found->row.piece, found->row.feature);
  return TRUE;
}
