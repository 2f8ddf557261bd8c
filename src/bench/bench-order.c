/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-order: the way through pieces, features, places and stations.
 *
 * Pieces and features make a grid of cells; the measuring order walks it by rows (piece first) or by
 * columns (feature first), so that each cell has one position in it.
 */

#include "bench-private.h"

typedef struct {
  guint piece;
  guint feature;
} Cell;

static guint
count_minor (const TmBench *bench)
{
  return bench->order == TM_ORDER_PIECE_FIRST ? bench->job->features->len : bench->job->pieces->len;
}

static gsize
count_cells (const TmBench *bench)
{
  return (gsize)bench->job->features->len * bench->job->pieces->len;
}

static Cell
cell_at (const TmBench *bench, gsize position)
{
  guint major = (guint)(position / count_minor (bench));
  guint minor = (guint)(position % count_minor (bench));

  if (bench->order == TM_ORDER_PIECE_FIRST)
    return (Cell) { major, minor };
  return (Cell) { minor, major };
}

/* FALSE when the session is nowhere. */
static gboolean
find_position (const TmBench *bench, gsize *position)
{
  guint piece = tm_tally_piece_index (bench->tally, bench->spot.piece);
  guint feature = tm_tally_feature_index (bench->tally, bench->spot.feature);

  if (piece == G_MAXUINT || feature == G_MAXUINT)
    return FALSE;
  if (bench->order == TM_ORDER_PIECE_FIRST)
    *position = (gsize)piece * count_minor (bench) + feature;
  else
    *position = (gsize)feature * count_minor (bench) + piece;
  return TRUE;
}

static TmPiece *
piece_at (const TmBench *bench, Cell cell)
{
  return g_ptr_array_index (bench->job->pieces, cell.piece);
}

static TmFeature *
feature_at (const TmBench *bench, Cell cell)
{
  return g_ptr_array_index (bench->job->features, cell.feature);
}

const char *
tm_bench_unread_station (const TmBench *bench, const TmPiece *piece, const TmFeature *feature, guint place,
                         guint station)
{
  for (; station < tm_spot_n_stations (feature); station++)
    {
      const char *text = tm_spot_station (feature, station);

      if (!tm_spot_is_read (bench->job, piece, feature, place, text))
        return text;
    }
  return NULL;
}

/* The first unread spot of a cell, from @place and @station on. */
static gboolean
find_in_cell (const TmBench *bench, Cell cell, guint place, guint station, TmSpot *spot)
{
  TmPiece *piece = piece_at (bench, cell);
  TmFeature *feature = feature_at (bench, cell);

  if (tm_tally_unread (bench->tally, cell.piece, cell.feature) == 0)
    return FALSE;
  for (; place <= feature->places; place++, station = 0)
    {
      const char *text = tm_bench_unread_station (bench, piece, feature, place, station);

      if (text != NULL)
        {
          *spot = (TmSpot) { piece, feature, place, text };
          return TRUE;
        }
    }
  return FALSE;
}

static gboolean
major_is_read (const TmBench *bench, Cell cell)
{
  if (bench->order == TM_ORDER_PIECE_FIRST)
    return tm_tally_piece_unread (bench->tally, cell.piece) == 0;
  return tm_tally_feature_unread (bench->tally, cell.feature) == 0;
}

/* The first unread spot of the cells from @from up to, but not including, @end.  A finished row or
 * column is passed in one step. */
static gboolean
find_in_range (const TmBench *bench, gsize from, gsize end, TmSpot *spot)
{
  gsize minor = count_minor (bench);

  while (from < end)
    {
      Cell cell = cell_at (bench, from);

      if (major_is_read (bench, cell))
        from = (from / minor + 1) * minor;
      else if (find_in_cell (bench, cell, 1, 0, spot))
        return TRUE;
      else
        from++;
    }
  return FALSE;
}

gboolean
tm_bench_find_first_unread (const TmBench *bench, TmSpot *spot)
{
  return find_in_range (bench, 0, count_cells (bench), spot);
}

gboolean
tm_bench_find_unread (const TmBench *bench, TmSpot *spot)
{
  const TmSpot *here = &bench->spot;
  gsize position;
  guint station;

  if (!find_position (bench, &position))
    return tm_bench_find_first_unread (bench, spot);
  station = tm_spot_station_index (here->feature, here->station);
  return find_in_cell (bench, cell_at (bench, position), here->place, station + 1, spot)
         || find_in_range (bench, position + 1, count_cells (bench), spot)
         || find_in_range (bench, 0, position + 1, spot);
}

gboolean
tm_bench_go_next_unread (TmBench *bench)
{
  TmSpot spot;

  g_return_val_if_fail (bench != NULL, FALSE);

  tm_bench_refresh (bench);
  if (!tm_bench_find_unread (bench, &spot))
    return FALSE;
  tm_bench_place_at (bench, spot);
  return TRUE;
}

static gboolean
is_due (const TmBench *bench, Cell cell)
{
  return tm_tally_due (bench->tally, cell.piece, cell.feature) > 0;
}

static gboolean
step_within (const TmBench *bench, int step, TmSpot *spot)
{
  guint n = tm_spot_n_stations (spot->feature);
  guint station = tm_spot_station_index (spot->feature, spot->station);

  if (step > 0 && station + 1 < n)
    station++;
  else if (step < 0 && station > 0)
    station--;
  else if (step > 0 && spot->place < spot->feature->places)
    {
      spot->place++;
      station = 0;
    }
  else if (step < 0 && spot->place > 1)
    {
      spot->place--;
      station = n - 1;
    }
  else
    return FALSE;
  spot->station = tm_spot_station (spot->feature, station);
  return TRUE;
}

/* The first spot of the next cell that is due, or the last of the one before. */
static gboolean
step_cell (const TmBench *bench, int step, TmSpot *spot)
{
  gsize position;

  if (!find_position (bench, &position))
    return FALSE;
  while (step > 0 ? ++position < count_cells (bench) : position-- > 0)
    {
      Cell cell = cell_at (bench, position);
      TmFeature *feature = feature_at (bench, cell);

      if (!is_due (bench, cell))
        continue;
      *spot = (TmSpot) { piece_at (bench, cell), feature, 1, tm_spot_station (feature, 0) };
      if (step < 0)
        {
          spot->place = feature->places;
          spot->station = tm_spot_station (feature, tm_spot_n_stations (feature) - 1);
        }
      return TRUE;
    }
  return FALSE;
}

static gboolean
take_step (TmBench *bench, int step)
{
  TmSpot spot;

  tm_bench_refresh (bench);
  spot = bench->spot;
  if (spot.piece == NULL || spot.feature == NULL)
    return FALSE;
  if (!step_within (bench, step, &spot) && !step_cell (bench, step, &spot))
    return FALSE;
  tm_bench_place_at (bench, spot);
  return TRUE;
}

gboolean
tm_bench_go_next (TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, FALSE);

  return take_step (bench, 1);
}

gboolean
tm_bench_go_previous (TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, FALSE);

  return take_step (bench, -1);
}
