/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-cut-record: cuts that were made, corrected and withdrawn.  The recorder keeps a row before the job
 * holds it, as with readings.
 */

#include <glib/gi18n-lib.h>

#include "bench-cut-private.h"
#include "bench-private.h"

static const char *
choose_cut_id (const TmBench *bench)
{
  guint64 number = tm_tally_next_cut_id (bench->tally);
  char text[24];

  do
    g_snprintf (text, sizeof text, "%" G_GUINT64_FORMAT, number++);
  while (tm_job_find_cut (bench->job, text) != NULL);
  return tm_job_intern (bench->job, text);
}

/* The newest reading of the place, whether or not it stands: "none" where there is none. */
static const char *
find_newest_reading (const TmBench *bench)
{
  const TmSpot *spot = &bench->spot;
  const GPtrArray *readings = tm_job_readings_at (bench->job, spot->piece, spot->feature, spot->place);
  const TmReading *newest
      = readings != NULL && readings->len > 0 ? g_ptr_array_index (readings, readings->len - 1) : NULL;

  return newest != NULL ? newest->row.id : "none";
}

/* The newest reading that @cut was made after, also where only the times tell. */
static const char *
find_reading_before (const TmBench *bench, const TmCutRow *cut)
{
  const GPtrArray *readings = tm_job_readings_at (bench->job, cut->row.piece, cut->row.feature, cut->place);

  if (cut->after[0] != '\0')
    return cut->after;
  for (guint i = readings != NULL ? readings->len : 0; i > 0; i--)
    {
      const TmReading *reading = g_ptr_array_index (readings, i - 1);

      /* A correction stands where the reading did, not where it is in the list. */
      if (reading->row.replaces[0] == '\0' && tm_cut_follows (bench->job, cut, reading))
        return reading->row.id;
    }
  return "none";
}

/* Hands the cut to the recorder and then to the job; takes ownership of it. */
static gboolean
keep_cut (TmBench *bench, TmCutRow *cut, GError **error)
{
  TmAddStatus status;

  cut->row.id = choose_cut_id (bench);
  if (!bench->recorder.record_cut (bench->recorder.self, cut, error))
    {
      tm_cut_row_free (cut);
      return FALSE;
    }
  status = tm_job_add_cut (bench->job, cut);
  if (status != TM_ADD_OK)
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_REFUSED, _ ("Feature %s, piece %s: %s."),
                   cut->row.feature->balloon, cut->row.piece->serial, _ (tm_add_status_text (status)));
      tm_cut_row_free (cut);
      return FALSE;
    }
  tm_bench_note_fact (bench, (TmBenchFact) { .cut = cut });
  return TRUE;
}

/* FALSE when nothing was cut at all; spring passes alone take a little. */
static gboolean
check_amount (const TmFeature *feature, const TmQuantity *dialled, guint passes, GError **error)
{
  if (dialled->count > 0 || passes > 0)
    return TRUE;
  g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY,
               _ ("Feature %s: nothing was dialled and no spring pass taken: there is no cut to record."),
               feature->balloon);
  return FALSE;
}

/* Whether the cut would most likely take the metal over: then what was typed may be a slip. */
static gboolean
would_be_gone (const TmBench *bench, gint64 dial)
{
  TmCutAdvice advice;

  tm_bench_cut_try_count (bench, dial, &advice);
  return advice.plan.status == TM_CUT_OK && advice.plan.chances.gone > 0.5;
}

/* TRUE when the cut may be recorded now; else @result says why not. */
static gboolean
pass_question (TmBench *bench, const char *text, gint64 dial, gint64 now_ms, TmSubmit *result)
{
  if (bench->cut_asked != NULL && g_str_equal (bench->cut_asked, text))
    {
      *result = TM_SUBMIT_TOO_SOON;
      return now_ms - bench->cut_asked_ms >= TM_BENCH_CONFIRM_MS;
    }
  g_clear_pointer (&bench->cut_asked, g_free);
  if (!would_be_gone (bench, dial))
    return TRUE;
  bench->cut_asked = g_strdup (text);
  bench->cut_asked_ms = now_ms;
  *result = TM_SUBMIT_ASKED;
  return FALSE;
}

static TmCutRow *
begin_cut (const TmBench *bench, const TmTool *tool, const TmQuantity *dialled, guint passes,
           const char *note, const char *at)
{
  const TmSpot *spot = &bench->spot;
  TmCutRow *cut = tm_cut_row_new ();

  cut->row.piece = spot->piece;
  cut->row.feature = spot->feature;
  cut->row.by = tm_job_intern (bench->job, bench->by);
  cut->row.at = tm_job_intern (bench->job, at);
  cut->dialled = *dialled;
  cut->reads = tool->reads;
  cut->passes = passes;
  cut->place = spot->place;
  cut->tool = tool->name;
  cut->after = tm_job_intern (bench->job, find_newest_reading (bench));
  cut->note = tm_bench_intern_stripped (bench->job, note);
  return cut;
}

TmSubmit
tm_bench_submit_cut (TmBench *bench, const char *text, guint passes, const char *note, const char *at,
                     gint64 now_ms, GError **error)
{
  TmSubmit result = TM_SUBMIT_REFUSED;
  const TmTool *tool;
  TmQuantity dialled;
  TmSpot spot;

  g_return_val_if_fail (bench != NULL, TM_SUBMIT_REFUSED);

  tm_bench_refresh (bench);
  tool = tm_bench_check_cut (bench, error);
  if (tool == NULL || !tm_bench_read_dial (bench->spot.feature, text, (TmUnit)tool->unit, &dialled, error)
      || !check_amount (bench->spot.feature, &dialled, passes, error))
    return TM_SUBMIT_REFUSED;
  tm_bench_set_now (bench, at);
  if (!pass_question (bench, text, dialled.count, now_ms, &result))
    return result;
  if (!keep_cut (bench, begin_cut (bench, tool, &dialled, passes, note, at), error))
    return TM_SUBMIT_FAILED;
  g_clear_pointer (&bench->cut_asked, g_free);
  /* What is typed of the next reading stays: only the place's stations are to be read anew. */
  spot = bench->spot;
  tm_bench_go (bench, spot.piece, spot.feature, spot.place, NULL);
  return TM_SUBMIT_RECORDED;
}

/* The job's own row for @cut, when it stands and a reason is given. */
static TmCutRow *
find_standing (const TmBench *bench, const TmCutRow *cut, const char *reason, GError **error)
{
  TmCutRow *found = cut != NULL ? tm_job_find_cut (bench->job, cut->row.id) : NULL;

  if (found == NULL || found != cut || !tm_row_stands (&found->row))
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET,
                   _ ("There is no cut here that still stands."));
      return NULL;
    }
  if (tm_bench_is_blank (reason))
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_REASON,
                   _ ("Cut %s: say why, so that the record can be defended."), found->row.id);
      return NULL;
    }
  return found;
}

static TmCutRow *
begin_correction (const TmBench *bench, const TmCutRow *old, const TmQuantity *dialled, guint passes,
                  const char *reason, const char *at)
{
  TmCutRow *cut = tm_cut_row_new ();

  cut->row.piece = old->row.piece;
  cut->row.feature = old->row.feature;
  cut->row.by = tm_job_intern (bench->job, bench->by);
  cut->row.at = tm_job_intern (bench->job, at);
  cut->row.replaces = old->row.id;
  cut->row.reason = tm_bench_intern_stripped (bench->job, reason);
  cut->dialled = *dialled;
  cut->reads = old->reads;
  cut->passes = passes;
  cut->place = old->place;
  cut->tool = old->tool;
  cut->after = tm_job_intern (bench->job, find_reading_before (bench, old));
  cut->note = old->note;
  return cut;
}

gboolean
tm_bench_correct_cut (TmBench *bench, const TmCutRow *cut, const char *text, guint passes, const char *reason,
                      const char *at, GError **error)
{
  const TmCutRow *old;
  TmQuantity dialled;

  g_return_val_if_fail (bench != NULL, FALSE);

  tm_bench_refresh (bench);
  old = find_standing (bench, cut, reason, error);
  if (old == NULL || !tm_bench_read_dial (old->row.feature, text, (TmUnit)old->dialled.unit, &dialled, error)
      || !check_amount (old->row.feature, &dialled, passes, error))
    return FALSE;
  return keep_cut (bench, begin_correction (bench, old, &dialled, passes, reason, at), error);
}

gboolean
tm_bench_withdraw_cut (TmBench *bench, const TmCutRow *cut, const char *reason, const char *at,
                       GError **error)
{
  TmWithdrawal withdrawal;
  TmCutRow *found;

  g_return_val_if_fail (bench != NULL, FALSE);

  tm_bench_refresh (bench);
  found = find_standing (bench, cut, reason, error);
  if (found == NULL)
    return FALSE;
  withdrawal = tm_bench_make_withdrawal (bench, reason, at);
  if (!bench->recorder.withdraw_cut (bench->recorder.self, found->row.id, &withdrawal, error))
    return FALSE;
  tm_job_withdraw (bench->job, &found->row, withdrawal.by, withdrawal.at, withdrawal.reason);
  tm_tally_recount (bench->tally, bench->job, found->row.piece, found->row.feature);
  return TRUE;
}
