/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-tally: how many spots are due and unread, per piece and feature.
 */

#include "bench-tally.h"

#include "core-judge.h"

/* Pieces looked at to see whether the list has changed. */
#define SAMPLE_MAX 4096

typedef struct {
  guint due;
  guint unread;
} Cell;

struct _TmTally {
  gboolean stale;
  guint64 mark;    /* of the lists that were counted */
  guint n_seen;    /* readings counted so far */
  guint64 last_id; /* largest whole-number id seen */
  guint n_trials;  /* the same for pin trials */
  guint64 last_trial_id;
  guint n_cuts; /* the same for cuts */
  guint64 last_cut_id;
  guint n_pieces;
  guint n_features;
  Cell *cells;        /* n_pieces rows of n_features */
  Cell *per_piece;    /* sums of rows */
  Cell *per_feature;  /* sums of columns */
  GHashTable *places; /* piece or feature -> its position + 1 */
};

TmTally *
tm_tally_new (void)
{
  TmTally *tally = g_new0 (TmTally, 1);

  tally->stale = TRUE;
  tally->places = g_hash_table_new (NULL, NULL);
  return tally;
}

void
tm_tally_free (TmTally *tally)
{
  g_free (tally->cells);
  g_free (tally->per_piece);
  g_free (tally->per_feature);
  g_hash_table_unref (tally->places);
  g_free (tally);
}

void
tm_tally_forget (TmTally *tally)
{
  tally->stale = TRUE;
}

guint
tm_spot_n_stations (const TmFeature *feature)
{
  return feature->stations != NULL && feature->stations->len > 0 ? feature->stations->len : 1;
}

const char *
tm_spot_station (const TmFeature *feature, guint index)
{
  if (feature->stations == NULL || index >= feature->stations->len)
    return "";
  return g_ptr_array_index (feature->stations, index);
}

guint
tm_spot_station_index (const TmFeature *feature, const char *station)
{
  guint n = tm_spot_n_stations (feature);

  for (guint i = 0; i < n; i++)
    {
      if (g_str_equal (tm_spot_station (feature, i), station))
        return i;
    }
  return n;
}

/* Whether pins were tried from each side that has a limit. */
static gboolean
pins_settle (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *trials = tm_job_pin_trials_at (job, piece, feature, place);
  gboolean went = !feature->lower.given;
  gboolean did_not_go = !feature->upper.given;

  for (guint i = 0; trials != NULL && i < trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (trials, i);

      if (!tm_row_counts (&trial->row))
        continue;
      went = went || trial->went;
      did_not_go = did_not_go || !trial->went;
    }
  return trials != NULL && trials->len > 0 && went && did_not_go;
}

gboolean
tm_spot_is_read (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                 const char *station)
{
  const GPtrArray *readings = tm_job_readings_at (job, piece, feature, place);
  gboolean any_station = feature->stations == NULL || feature->stations->len == 0;

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);

      if (tm_row_counts (&reading->row) && (any_station || g_str_equal (reading->station, station)))
        return TRUE;
    }
  return any_station && pins_settle (job, piece, feature, place);
}

static guint64
mix (guint64 mark, guint64 value)
{
  return (mark ^ value) * G_GUINT64_CONSTANT (0x9E3779B97F4A7C15) + (mark >> 29);
}

/* A number that changes when pieces or features come, go or change what is due: cheap enough to work
 * out at every key. */
static guint64
mark_lists (const TmJob *job)
{
  guint64 mark = mix (job->pieces->len, job->features->len);

  mark = mix (mark, job->first_article);
  for (guint i = 0; i < job->pieces->len; i++)
    mark = mix (mark, (guint64)(guintptr)g_ptr_array_index (job->pieces, i));
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      mark = mix (mark, (guint64)(guintptr)feature);
      mark = mix (mark, (guint64)(guintptr)feature->check);
      mark = mix (mark, feature->places * 2 + feature->affected);
      for (guint s = 0; feature->stations != NULL && s < feature->stations->len; s++)
        mark = mix (mark, (guint64)(guintptr)g_ptr_array_index (feature->stations, s));
    }
  return mark;
}

static Cell
count_cell (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint index)
{
  Cell cell = { 0, 0 };
  guint n_stations = tm_spot_n_stations (feature);

  if (!tm_job_feature_is_due (job, feature, piece, index))
    return cell;
  cell.due = feature->places * n_stations;
  for (guint place = 1; place <= feature->places; place++)
    {
      for (guint s = 0; s < n_stations; s++)
        cell.unread += !tm_spot_is_read (job, piece, feature, place, tm_spot_station (feature, s));
    }
  return cell;
}

static void
set_cell (TmTally *tally, guint piece, guint feature, Cell now)
{
  Cell *cell = &tally->cells[(gsize)piece * tally->n_features + feature];

  tally->per_piece[piece].due += now.due - cell->due;
  tally->per_piece[piece].unread += now.unread - cell->unread;
  tally->per_feature[feature].due += now.due - cell->due;
  tally->per_feature[feature].unread += now.unread - cell->unread;
  *cell = now;
}

static void
resize (TmTally *tally, const TmJob *job)
{
  tally->n_pieces = job->pieces->len;
  tally->n_features = job->features->len;
  g_free (tally->cells);
  g_free (tally->per_piece);
  g_free (tally->per_feature);
  tally->cells = g_new0 (Cell, (gsize)tally->n_pieces * tally->n_features);
  tally->per_piece = g_new0 (Cell, tally->n_pieces);
  tally->per_feature = g_new0 (Cell, tally->n_features);
  g_hash_table_remove_all (tally->places);
  for (guint i = 0; i < tally->n_pieces; i++)
    g_hash_table_insert (tally->places, g_ptr_array_index (job->pieces, i), GUINT_TO_POINTER (i + 1));
  for (guint i = 0; i < tally->n_features; i++)
    g_hash_table_insert (tally->places, g_ptr_array_index (job->features, i), GUINT_TO_POINTER (i + 1));
}

static void
count_all (TmTally *tally, const TmJob *job)
{
  resize (tally, job);
  for (guint p = 0; p < tally->n_pieces; p++)
    {
      for (guint f = 0; f < tally->n_features; f++)
        set_cell (
            tally, p, f,
            count_cell (job, g_ptr_array_index (job->pieces, p), g_ptr_array_index (job->features, f), p));
    }
}

static void
note_id (guint64 *last, const char *id)
{
  guint64 number;

  if (g_ascii_string_to_unsigned (id, 10, 1, G_MAXUINT64 - 1, &number, NULL))
    *last = MAX (*last, number);
}

static void
follow_trials (TmTally *tally, const TmJob *job, gboolean lists_changed)
{
  for (; tally->n_trials < job->pin_trials->len; tally->n_trials++)
    {
      const TmPinTrial *trial = g_ptr_array_index (job->pin_trials, tally->n_trials);

      note_id (&tally->last_trial_id, trial->row.id);
      if (!lists_changed)
        tm_tally_recount (tally, job, trial->row.piece, trial->row.feature);
    }
}

static void
follow_cuts (TmTally *tally, const TmJob *job, gboolean lists_changed)
{
  for (; tally->n_cuts < job->cuts->len; tally->n_cuts++)
    {
      const TmCutRow *cut = g_ptr_array_index (job->cuts, tally->n_cuts);

      note_id (&tally->last_cut_id, cut->row.id);
      if (!lists_changed)
        tm_tally_recount (tally, job, cut->row.piece, cut->row.feature);
    }
}

gboolean
tm_tally_follow (TmTally *tally, const TmJob *job)
{
  guint64 mark = mark_lists (job);
  gboolean lists_changed = tally->stale || mark != tally->mark;

  if (lists_changed)
    count_all (tally, job);
  for (; tally->n_seen < job->readings->len; tally->n_seen++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, tally->n_seen);

      note_id (&tally->last_id, reading->row.id);
      if (!lists_changed)
        tm_tally_recount (tally, job, reading->row.piece, reading->row.feature);
    }
  follow_trials (tally, job, lists_changed);
  follow_cuts (tally, job, lists_changed);
  tally->stale = FALSE;
  tally->mark = mark;
  return lists_changed;
}

void
tm_tally_recount (TmTally *tally, const TmJob *job, const TmPiece *piece, const TmFeature *feature)
{
  guint p = tm_tally_piece_index (tally, piece);
  guint f = tm_tally_feature_index (tally, feature);

  if (p < tally->n_pieces && f < tally->n_features)
    set_cell (tally, p, f, count_cell (job, piece, feature, p));
}

static guint
find_position (const TmTally *tally, gconstpointer row)
{
  return GPOINTER_TO_UINT (g_hash_table_lookup (tally->places, row)) - 1;
}

guint
tm_tally_piece_index (const TmTally *tally, const TmPiece *piece)
{
  return find_position (tally, piece);
}

guint
tm_tally_feature_index (const TmTally *tally, const TmFeature *feature)
{
  return find_position (tally, feature);
}

guint
tm_tally_due (const TmTally *tally, guint piece, guint feature)
{
  return tally->cells[(gsize)piece * tally->n_features + feature].due;
}

guint
tm_tally_unread (const TmTally *tally, guint piece, guint feature)
{
  return tally->cells[(gsize)piece * tally->n_features + feature].unread;
}

guint
tm_tally_piece_due (const TmTally *tally, guint piece)
{
  return tally->per_piece[piece].due;
}

guint
tm_tally_piece_unread (const TmTally *tally, guint piece)
{
  return tally->per_piece[piece].unread;
}

guint
tm_tally_feature_unread (const TmTally *tally, guint feature)
{
  return tally->per_feature[feature].unread;
}

guint64
tm_tally_next_id (const TmTally *tally)
{
  return tally->last_id + 1;
}

guint64
tm_tally_next_trial_id (const TmTally *tally)
{
  return tally->last_trial_id + 1;
}

guint64
tm_tally_next_cut_id (const TmTally *tally)
{
  return tally->last_cut_id + 1;
}
