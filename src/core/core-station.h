/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-station: where in a feature a reading was taken, and the local sizes there.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef enum {
  TM_DEPTH_NONE, /* "" */
  TM_DEPTH_MOUTH,
  TM_DEPTH_MIDDLE,
  TM_DEPTH_BOTTOM,
  TM_DEPTH_LENGTH, /* a depth in the feature's unit */
} TmDepthKind;

typedef struct {
  TmDepthKind depth;
  TmQuantity at; /* for TM_DEPTH_LENGTH */
  guint hour;    /* 1..12, or 0: no direction */
} TmStation;

/* Reads `depth[/hour]`; @unit is that of a bare depth.  FALSE when @text is no station. */
gboolean tm_station_read (const char *text, TmUnit unit, TmStation *out);

/* Hours 6 apart are one diameter: 12 and 6 give 0, 1 and 7 give 1, … 5 and 11 give 5.  Ask only
 * where the station has an hour. */
guint tm_station_diameter (const TmStation *station);

/* TRUE when both texts name one station ("25/12" and "25.0/12"); texts that are no station are
 * compared as they stand. */
gboolean tm_station_same (const char *a, const char *b, TmUnit unit);

typedef struct {
  gint64 lower, upper;
  gboolean has_lower, has_upper;
  gboolean zero_bounded; /* zero is a physical bound: band is the upper limit */
} TmLimits;

/* The limits that readings of @feature are held against, before any bonus.  Zero is a bound of a form,
 * a position or a roughness, not a lower limit. */
TmLimits tm_feature_limits (const TmFeature *feature);

/* Upper - lower (upper when zero-bounded); 0 when there is no two-sided band. */
gint64 tm_limits_band (const TmLimits *limits);

/* The local size at one station: the exact mean sum / n of its repeats.  A position taken as offsets
 * keeps the exact sums of both; its sum is then n times the deviation of the mean offsets, rounded. */
typedef struct {
  const char *station; /* text as recorded; belongs to the job */
  TmWide sum;          /* of the readings as corrected */
  TmWide raw_sum;      /* of the readings as recorded */
  guint n;             /* readings averaged */
  guint decimals;      /* most digits typed */
  TmUnit unit;         /* unit of those digits */
  double spread;       /* standard deviation of the repeats (of one offset), counts; 0 for one */
  gboolean radial;     /* taken as offsets from true position */
  TmWide dx_sum;       /* when radial */
  TmWide dy_sum;
  const char *method_name; /* of the readings averaged: as recorded, else the feature's, else "" */
  TmOutcome outcome;       /* for pass/fail features: the last one entered */
  const TmReading *last;
  gboolean several_methods; /* others were used here too, and are left out */
} TmLocalSize;

/* Readings that count, grouped by station, in the order first read.  Where several methods were used
 * at one station, those of the feature's assigned method are taken if there are any, else those of
 * the method used last: values of different methods are never averaged. */
typedef struct {
  TmLocalSize *stations;
  guint n_stations;
  guint smallest; /* index; valid when n_stations > 0 and the feature has numbers */
  guint largest;
} TmSizes;

void tm_sizes_collect (const TmFeature *feature, const GPtrArray *readings, /* TmReading; may be NULL */
                       TmSizes *out);

/* Counts to be added to a reading's value before it is averaged (core-correction). */
typedef gint64 (*TmCorrect) (gconstpointer data, const TmReading *reading);

/* As tm_sizes_collect(), of corrected values; @correct may be NULL. */
void tm_sizes_collect_corrected (const TmFeature *feature, const GPtrArray *readings, TmCorrect correct,
                                 gconstpointer data, TmSizes *out);

/* What correction has made of the mean, counts. */
double tm_local_size_correction (const TmLocalSize *size);
void tm_sizes_clear (TmSizes *sizes);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmSizes, tm_sizes_clear)

/* The sign of size - limit, exactly. */
int tm_local_size_compare (const TmLocalSize *size, gint64 limit);

/* size - limit in counts, for probabilities and drawing: the difference is exact before it is
 * rounded to a double. */
double tm_local_size_beyond (const TmLocalSize *size, gint64 limit);

/* TRUE when there is a local size at @station, however it is written. */
gboolean tm_sizes_has_station (const TmFeature *feature, const TmSizes *sizes, const char *station);

/* TRUE when each station the feature asks for has a local size. */
gboolean tm_sizes_complete (const TmFeature *feature, const TmSizes *sizes);

/* The diametral position deviation 2·sqrt(dx² + dy²) of a reading in counts, rounded to the nearest
 * count, at most TM_COUNT_MAX, or its value where no offset was taken; for statistics and print (a limit is
 * compared exactly in core-position). */
gint64 tm_position_deviation (const TmReading *reading);

G_END_DECLS
