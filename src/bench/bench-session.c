/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-session: where the person is, and what they have typed.
 */

#include <string.h>

#include "bench-private.h"

#include "core-station.h"

/* How much of a refused text a message repeats, bytes. */
#define SHOWN_MAX 60

G_DEFINE_QUARK (tm - bench - error - quark, tm_bench_error)

static const TmSlipCheck no_question = { TM_SLIP_NONE, { 0, TM_UNIT_NONE, 0, FALSE } };

TmBench *
tm_bench_new (TmJob *job, TmRecorder recorder)
{
  TmBench *bench;

  g_return_val_if_fail (job != NULL, NULL);

  bench = g_new0 (TmBench, 1);
  bench->job = job;
  bench->recorder = recorder;
  bench->order = TM_ORDER_PIECE_FIRST;
  bench->spot = (TmSpot) { NULL, NULL, 1, "" };
  bench->tally = tm_tally_new ();
  bench->by = g_strdup ("");
  bench->method = g_strdup ("");
  bench->text = g_strdup ("");
  bench->pin_set = g_strdup ("");
  bench->now = g_strdup ("");
  bench->overdue_reason = g_strdup ("");
  bench->overdue = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  bench->recorded = g_array_new (FALSE, FALSE, sizeof (TmBenchFact));
  bench->question = no_question;
  bench->cut_for = g_strdup ("");
  bench->tool = g_strdup ("");
  bench->cut_mate = g_strdup ("");
  bench->answers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify)g_array_unref);
  tm_bench_refresh (bench);
  return bench;
}

void
tm_bench_free (TmBench *bench)
{
  if (bench == NULL)
    return;
  tm_tally_free (bench->tally);
  g_free (bench->by);
  g_free (bench->method);
  g_free (bench->text);
  g_free (bench->pin_set);
  g_free (bench->now);
  g_free (bench->overdue_reason);
  g_hash_table_unref (bench->overdue);
  g_array_unref (bench->recorded);
  g_free (bench->cut_for);
  g_free (bench->tool);
  g_free (bench->cut_mate);
  g_free (bench->cut_asked);
  g_hash_table_unref (bench->answers);
  g_free (bench);
}

TmBench *
tm_bench_new_like (const TmBench *old)
{
  TmBench *bench;

  g_return_val_if_fail (old != NULL, NULL);

  bench = tm_bench_new (old->job, old->recorder);
  bench->order = old->order;
  tm_bench_set_by (bench, old->by);
  tm_bench_set_method (bench, old->method);
  tm_bench_set_pin_set (bench, old->pin_set);
  tm_bench_set_now (bench, old->now);
  tm_bench_set_temperatures (bench, &old->part_temp, &old->gauge_temp);
  g_free (bench->overdue_reason);
  bench->overdue_reason = g_strdup (old->overdue_reason);
  g_hash_table_unref (bench->overdue);
  bench->overdue = g_hash_table_ref (old->overdue);
  g_hash_table_unref (bench->answers);
  bench->answers = g_hash_table_ref (old->answers);
  bench->cut_risk = old->cut_risk;
  return bench;
}

/* What the text means for the feature as it is now. */
static TmEntry
read_entry (const TmBench *bench)
{
  TmEntry entry = { .status = TM_ENTRY_EMPTY };

  return bench->spot.feature != NULL ? tm_entry_read (bench->text, bench->spot.feature) : entry;
}

void
tm_bench_read_text (TmBench *bench)
{
  bench->question = no_question;
  g_clear_pointer (&bench->cut_asked, g_free);
  bench->entry = read_entry (bench);
}

void
tm_bench_place_at (TmBench *bench, TmSpot spot)
{
  bench->spot = spot;
  tm_bench_read_text (bench);
}

static void *
first_of (const GPtrArray *list)
{
  return list->len > 0 ? g_ptr_array_index (list, 0) : NULL;
}

static const char *
choose_station (const TmBench *bench, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const char *unread = NULL;

  if (piece != NULL)
    unread = tm_bench_unread_station (bench, piece, feature, place, 0);
  return unread != NULL ? unread : tm_spot_station (feature, 0);
}

static gboolean
is_listed (const TmFeature *feature, const char *station)
{
  return tm_spot_station_index (feature, station) < tm_spot_n_stations (feature);
}

/* Keeps what still stands of the present spot and fills in the rest. */
static TmSpot
mend_spot (const TmBench *bench)
{
  TmSpot spot = bench->spot;
  gboolean feature_stands = tm_tally_feature_index (bench->tally, spot.feature) != G_MAXUINT;

  if (tm_tally_piece_index (bench->tally, spot.piece) == G_MAXUINT)
    spot.piece = first_of (bench->job->pieces);
  if (!feature_stands)
    spot.feature = first_of (bench->job->features);
  if (spot.feature == NULL || spot.place > spot.feature->places)
    spot.place = 1;
  if (spot.feature == NULL)
    spot.station = "";
  else if (!feature_stands || (spot.feature->stations->len > 0 && !is_listed (spot.feature, spot.station)))
    spot.station = choose_station (bench, spot.piece, spot.feature, spot.place);
  return spot;
}

void
tm_bench_refresh (const TmBench *bench)
{
  /* The session is a view of the job: bringing it up to date changes nothing that a caller put in,
   * but for a text whose feature is gone: it would be taken for a reading of the next one. */
  TmBench *mutable = (TmBench *)bench;
  const TmFeature *before = bench->spot.feature;
  gboolean was_nowhere = bench->spot.piece == NULL || bench->spot.feature == NULL;

  if (tm_tally_follow (mutable->tally, bench->job))
    {
      if (!was_nowhere || !tm_bench_find_first_unread (bench, &mutable->spot))
        mutable->spot = mend_spot (bench);
      mutable->question = no_question;
      if (before != NULL && bench->spot.feature != before)
        {
          g_free (mutable->text);
          mutable->text = g_strdup ("");
        }
    }
  mutable->entry = read_entry (bench);
  /* The gauge may be another by now, or gone. */
  if (bench->question.slip == TM_SLIP_OUT_OF_REACH
      && tm_bench_find_short (bench, &bench->entry.value) == NULL)
    mutable->question = no_question;
}

void
tm_bench_job_changed (TmBench *bench)
{
  g_return_if_fail (bench != NULL);

  tm_tally_forget (bench->tally);
  tm_bench_refresh (bench);
}

TmOrder
tm_bench_order (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, TM_ORDER_PIECE_FIRST);

  return bench->order;
}

void
tm_bench_set_order (TmBench *bench, TmOrder order)
{
  g_return_if_fail (bench != NULL);

  bench->order = order;
}

const TmSpot *
tm_bench_spot (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, NULL);

  tm_bench_refresh (bench);
  return &bench->spot;
}

gboolean
tm_bench_go (TmBench *bench, TmPiece *piece, TmFeature *feature, guint place, const char *station)
{
  TmStation read;

  g_return_val_if_fail (bench != NULL, FALSE);

  tm_bench_refresh (bench);
  if (tm_tally_piece_index (bench->tally, piece) == G_MAXUINT
      || tm_tally_feature_index (bench->tally, feature) == G_MAXUINT || place < 1 || place > feature->places)
    return FALSE;
  if (station == NULL || *station == '\0')
    station = choose_station (bench, piece, feature, place);
  else if (!is_listed (feature, station) && !tm_station_read (station, feature->unit, &read))
    return FALSE;
  tm_bench_place_at (bench, (TmSpot) { piece, feature, place, tm_job_intern (bench->job, station) });
  return TRUE;
}

void
tm_bench_count (const TmBench *bench, const TmPiece *piece, guint *n_due, guint *n_read)
{
  guint index;

  g_return_if_fail (bench != NULL && n_due != NULL && n_read != NULL);

  tm_bench_refresh (bench);
  *n_due = *n_read = 0;
  index = tm_tally_piece_index (bench->tally, piece);
  if (index == G_MAXUINT)
    return;
  *n_due = tm_tally_piece_due (bench->tally, index);
  *n_read = *n_due - tm_tally_piece_unread (bench->tally, index);
}

static void
set_text (char **target, const char *text)
{
  char *copy = g_strdup (text != NULL ? text : "");

  g_free (*target);
  *target = copy;
}

void
tm_bench_set_by (TmBench *bench, const char *initials)
{
  g_return_if_fail (bench != NULL);

  set_text (&bench->by, initials);
}

const char *
tm_bench_by (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, "");

  return bench->by;
}

void
tm_bench_set_method (TmBench *bench, const char *name)
{
  g_return_if_fail (bench != NULL);

  if (g_strcmp0 (bench->method, name != NULL ? name : "") == 0)
    return;
  tm_bench_set_overdue_reason (bench, "");
  set_text (&bench->method, name);
}

const char *
tm_bench_method (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, "");

  return bench->method;
}

void
tm_bench_set_text (TmBench *bench, const char *text)
{
  g_return_if_fail (bench != NULL);

  if (g_strcmp0 (bench->text, text) == 0)
    return;
  set_text (&bench->text, text);
  tm_bench_read_text (bench);
}

const char *
tm_bench_text (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, "");

  return bench->text;
}

const TmEntry *
tm_bench_entry (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, NULL);

  tm_bench_refresh (bench);
  return &bench->entry;
}

const TmSlipCheck *
tm_bench_question (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, NULL);

  tm_bench_refresh (bench);
  return &bench->question;
}

const TmGauge *
tm_bench_question_gauge (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, NULL);

  return tm_bench_question (bench)->slip == TM_SLIP_OUT_OF_REACH
             ? tm_bench_find_short (bench, &bench->entry.value)
             : NULL;
}

const TmEntryRow *
tm_bench_fact_row (const TmBenchFact *fact)
{
  g_return_val_if_fail (fact != NULL, NULL);

  if (fact->reading != NULL)
    return &fact->reading->row;
  if (fact->trial != NULL)
    return &fact->trial->row;
  return fact->cut != NULL ? &fact->cut->row : NULL;
}

static gboolean
fact_stands (const TmBenchFact *fact)
{
  return tm_row_stands (tm_bench_fact_row (fact));
}

TmBenchFact
tm_bench_newest (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, ((TmBenchFact) { NULL, NULL, NULL }));

  for (guint i = bench->recorded->len; i > 0; i--)
    {
      const TmBenchFact *fact = &g_array_index (bench->recorded, TmBenchFact, i - 1);

      if (fact_stands (fact))
        return *fact;
    }
  return (TmBenchFact) { NULL, NULL, NULL };
}

const TmReading *
tm_bench_last (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, NULL);

  for (guint i = bench->recorded->len; i > 0; i--)
    {
      const TmBenchFact *fact = &g_array_index (bench->recorded, TmBenchFact, i - 1);

      if (fact->reading != NULL && tm_row_counts (&fact->reading->row))
        return fact->reading;
    }
  return NULL;
}

void
tm_bench_note_fact (TmBench *bench, TmBenchFact fact)
{
  g_array_append_val (bench->recorded, fact);
  tm_tally_follow (bench->tally, bench->job);
}

void
tm_bench_judge (const TmBench *bench, TmJudgement *out)
{
  g_return_if_fail (bench != NULL && out != NULL);

  tm_bench_refresh (bench);
  if (bench->spot.piece != NULL && bench->spot.feature != NULL)
    tm_judge (bench->job, bench->spot.piece, bench->spot.feature, bench->spot.place, out);
  else
    *out = (TmJudgement) { .verdict = TM_VERDICT_NOT_MEASURED, .method_name = "" };
}

char *
tm_bench_show_text (const char *text)
{
  char *shown = g_utf8_make_valid (text, (gssize)strnlen (text, SHOWN_MAX));

  for (char *p = shown; *p != '\0'; p++)
    {
      if (g_ascii_iscntrl (*p))
        *p = ' ';
    }
  return g_strstrip (shown);
}
