/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-private: what the files of the bench share.
 */

#pragma once

#include "bench-session.h"
#include "bench-tally.h"

G_BEGIN_DECLS

struct _TmBench {
  TmJob *job;
  TmRecorder recorder;
  TmOrder order;
  TmSpot spot;
  TmTally *tally;
  char *by;
  char *method;
  char *text;
  TmEntry entry;        /* what `text` means at `spot` */
  TmSlipCheck question; /* slip NONE: nothing is asked */
  gint64 asked_ms;
  GPtrArray *recorded; /* TmReading recorded here, oldest first */
};

/* Brings tally, spot and entry in line with the job.  Every public function begins with it. */
void tm_bench_refresh (const TmBench *bench);

/* Moves without any check, drops the question and reads the text anew. */
void tm_bench_place_at (TmBench *bench, TmSpot spot);

/* Drops the question and reads the text for the present feature. */
void tm_bench_read_text (TmBench *bench);

/* The first station of @place without a reading, from @station on; NULL when there is none. */
const char *tm_bench_unread_station (const TmBench *bench, const TmPiece *piece, const TmFeature *feature,
                                     guint place, guint station);

/* The next spot without a reading, after the present one and then from the start; or the first one
 * of all.  FALSE, and @spot untouched, when none is left. */
gboolean tm_bench_find_unread (const TmBench *bench, TmSpot *spot);
gboolean tm_bench_find_first_unread (const TmBench *bench, TmSpot *spot);

/* What a message repeats of a refused text: the beginning, valid UTF-8, on one line. */
char *tm_bench_show_text (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* Reads both offsets of a position; FALSE with TM_BENCH_ERROR_ENTRY. */
gboolean tm_bench_read_offsets (const TmFeature *feature, const char *dx_text, const char *dy_text,
                                TmReading *into, GError **error);
/* The same from one text, as a correction has it. */
gboolean tm_bench_read_offset_pair (const TmFeature *feature, const char *text, TmReading *into,
                                    GError **error);

G_END_DECLS
