/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-form.h"

#include <math.h>

#define N_DIAMETERS 6

/* A local size with the station it was taken at; the size is held as the distance from the first
 * station's, so that differences of counts lose nothing. */
typedef struct {
  TmStation station;
  double size;
} Spot;

static Spot *
list_spots (const TmFeature *feature, const TmSizes *sizes, guint *n_spots)
{
  Spot *spots = g_new (Spot, MAX (sizes->n_stations, 1));
  guint n = 0;
  gint64 origin = 0;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      const TmLocalSize *size = &sizes->stations[i];

      if (i == 0)
        origin = (gint64)(size->sum / size->n);
      if (!tm_station_read (size->station, feature->unit, &spots[n].station))
        continue;
      spots[n++].size = tm_local_size_beyond (size, origin);
    }
  *n_spots = n;
  return spots;
}

static gboolean
is_at (const TmStation *station, TmDepthKind depth, gint64 at)
{
  return station->depth == depth && (depth != TM_DEPTH_LENGTH || station->at.count == at);
}

static gboolean
find_mean (const Spot *spots, guint n, TmDepthKind depth, gint64 at, double *mean)
{
  double sum = 0;
  guint found = 0;

  for (guint i = 0; i < n; i++)
    if (is_at (&spots[i].station, depth, at))
      {
        sum += spots[i].size;
        found++;
      }
  if (found > 0)
    *mean = sum / found;
  return found > 0;
}

static gboolean
find_lengths (const Spot *spots, guint n, gint64 *shallowest, gint64 *deepest)
{
  *shallowest = G_MAXINT64;
  *deepest = -1;
  for (guint i = 0; i < n; i++)
    if (spots[i].station.depth == TM_DEPTH_LENGTH)
      {
        *shallowest = MIN (*shallowest, spots[i].station.at.count);
        *deepest = MAX (*deepest, spots[i].station.at.count);
      }
  return *deepest >= 0;
}

static gboolean
may_taper (const TmFeature *feature, const TmSizes *sizes)
{
  return sizes->n_stations >= 2 && !tm_kind_is_zero_bounded (feature->kind)
         && !tm_kind_is_attribute (feature->kind);
}

gboolean
tm_form_taper (const TmFeature *feature, const TmSizes *sizes, double *taper)
{
  g_autofree Spot *spots = NULL;
  guint n;
  gint64 shallowest, deepest;
  double mouth = 0, bottom = 0;
  gboolean has_mouth, has_bottom, has_lengths;

  if (!may_taper (feature, sizes))
    return FALSE;
  spots = list_spots (feature, sizes, &n);
  has_lengths = find_lengths (spots, n, &shallowest, &deepest);
  has_mouth = find_mean (spots, n, TM_DEPTH_MOUTH, 0, &mouth);
  has_bottom = find_mean (spots, n, TM_DEPTH_BOTTOM, 0, &bottom);
  if (!has_mouth && !has_bottom && shallowest == deepest)
    return FALSE;
  if (!has_mouth && has_lengths)
    has_mouth = find_mean (spots, n, TM_DEPTH_LENGTH, shallowest, &mouth);
  if (!has_bottom && has_lengths)
    has_bottom = find_mean (spots, n, TM_DEPTH_LENGTH, deepest, &bottom);
  if (!has_mouth || !has_bottom)
    return FALSE;
  *taper = mouth - bottom;
  return TRUE;
}

gboolean
tm_form_taper_slope (const TmFeature *feature, const TmSizes *sizes, double *slope)
{
  g_autofree Spot *spots = NULL;
  guint n;
  gint64 shallowest, deepest;
  double mouth = 0, bottom = 0;

  if (!may_taper (feature, sizes) || tm_unit_dimension (feature->unit) != TM_DIMENSION_LENGTH)
    return FALSE;
  spots = list_spots (feature, sizes, &n);
  if (!find_lengths (spots, n, &shallowest, &deepest) || shallowest == deepest
      || find_mean (spots, n, TM_DEPTH_MOUTH, 0, &mouth) || find_mean (spots, n, TM_DEPTH_BOTTOM, 0, &bottom))
    return FALSE;
  find_mean (spots, n, TM_DEPTH_LENGTH, shallowest, &mouth);
  find_mean (spots, n, TM_DEPTH_LENGTH, deepest, &bottom);
  *slope = (mouth - bottom) / (double)(deepest - shallowest);
  return TRUE;
}

gboolean
tm_feature_is_diameter (const TmFeature *feature)
{
  return feature->kind == TM_KIND_BORE || feature->kind == TM_KIND_SHAFT || feature->kind == TM_KIND_DIAMETER;
}

/* Largest less smallest diameter at the depth of @at; FALSE for fewer than two directions. */
static gboolean
find_range (const Spot *spots, guint n, const TmStation *at, double *range)
{
  double sum[N_DIAMETERS] = { 0 }, smallest = INFINITY, largest = -INFINITY;
  guint found[N_DIAMETERS] = { 0 }, directions = 0;

  for (guint i = 0; i < n; i++)
    if (spots[i].station.hour > 0 && is_at (&spots[i].station, at->depth, at->at.count))
      {
        guint diameter = tm_station_diameter (&spots[i].station);

        sum[diameter] += spots[i].size;
        found[diameter]++;
      }
  for (guint i = 0; i < N_DIAMETERS; i++)
    if (found[i] > 0)
      {
        smallest = MIN (smallest, sum[i] / found[i]);
        largest = MAX (largest, sum[i] / found[i]);
        directions++;
      }
  *range = largest - smallest;
  return directions >= 2;
}

static gboolean
is_first_at_depth (const Spot *spots, guint index)
{
  for (guint i = 0; i < index; i++)
    if (is_at (&spots[i].station, spots[index].station.depth, spots[index].station.at.count))
      return FALSE;
  return TRUE;
}

gboolean
tm_form_out_of_round (const TmFeature *feature, const TmSizes *sizes, double *out_of_round)
{
  g_autofree Spot *spots = NULL;
  guint n;
  gboolean found = FALSE;

  if (sizes->n_stations < 2 || !tm_feature_is_diameter (feature))
    return FALSE;
  spots = list_spots (feature, sizes, &n);
  for (guint i = 0; i < n; i++)
    {
      double range;

      if (!is_first_at_depth (spots, i) || !find_range (spots, n, &spots[i].station, &range))
        continue;
      *out_of_round = found ? MAX (*out_of_round, range) : range;
      found = TRUE;
    }
  return found;
}
