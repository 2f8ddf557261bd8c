/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-correction: what is added to a reading before it is judged.
 *
 * The corrected value is the raw one, brought to 20 °C where the temperatures of part and gauge were
 * both taken, less the known error of the calibration in force.  The record keeps the raw value.
 */

#pragma once

#include "core-judge.h"

G_BEGIN_DECLS

/* The parts of a correction, counts; what is added to the raw value is `total`. */
typedef struct {
  double temperature; /* 0: not taken, or the material is not known */
  gint64 certificate; /* minus the known errors of the method's gauges */
  gint64 total;       /* rounded to a count */
} TmCorrection;

/* @options (may be NULL): an error to be supposed. */
TmCorrection tm_reading_correction (const TmJob *job, const TmReading *reading,
                                    const TmJudgeOptions *options);

/* Whether @options (may be NULL) suppose an error of the gauge @tag at the moment @at. */
gboolean tm_error_is_supposed (const TmJudgeOptions *options, const char *tag, const char *at);

/* The local sizes of one place from corrected readings. */
void tm_sizes_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                  const TmJudgeOptions *options, TmSizes *out);

/* As tm_sizes_at(), of the readings handed in. */
void tm_sizes_of (const TmJob *job, const TmFeature *feature, const GPtrArray *readings,
                  const TmJudgeOptions *options, TmSizes *out);

G_END_DECLS
