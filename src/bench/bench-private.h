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
  char *pin_set;
  char *now; /* for advice, "" unknown */
  TmQuantity part_temp;
  TmQuantity gauge_temp;
  char *overdue_reason; /* not yet bound to a gauge */
  GHashTable *overdue;  /* char * tag -> char * reason */
  GArray *recorded;     /* TmBenchFact recorded here, oldest first */
  char *cut_for;        /* balloon that the next two were chosen for; of another they do not hold */
  char *tool;
  char *cut_mate;
  const TmPiece *cut_piece; /* that the mate was chosen for, and its place; only compared */
  guint cut_place;
  GHashTable *answers; /* char * tool -> GArray of TmCutAnswer */
  double cut_risk;     /* 0: the job's */
  char *cut_asked;     /* the text that is asked about; NULL: none is */
  gint64 cut_asked_ms;
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

/* TRUE when there is nothing but blanks. */
gboolean tm_bench_is_blank (const char *text);
/* FALSE with TM_BENCH_ERROR_NOWHERE. */
gboolean tm_bench_check_somewhere (const TmBench *bench, GError **error);
/* Remembers what was just recorded and counts it. */
void tm_bench_note_fact (TmBench *bench, TmBenchFact fact);
TmWithdrawal tm_bench_make_withdrawal (const TmBench *bench, const char *reason, const char *at);

#define TM_BENCH_MAX_GAUGES 4

/* The method of the next reading: the one chosen, else the feature's; "" for none. */
const char *tm_bench_method_in_force (const TmBench *bench);
/* The gauges of the method (or bare gauge) of that name that are registered. */
guint tm_bench_method_gauges (const TmBench *bench, const char *name,
                              const TmGauge *gauges[TM_BENCH_MAX_GAUGES]);
/* A gauge of the method in force that does not reach @value; NULL: all do. */
const TmGauge *tm_bench_find_short (const TmBench *bench, const TmQuantity *value);

/* The first of the gauges that is overdue at @at and has no reason; NULL: none. */
const TmGauge *tm_bench_find_overdue (const TmBench *bench, const TmGauge *const *gauges, guint n,
                                      const char *at);
/* FALSE with TM_BENCH_ERROR_OVERDUE; else *@reason is what the row carries, "" where none is overdue. */
gboolean tm_bench_excuse_overdue (TmBench *bench, const TmGauge *const *gauges, guint n, const char *at,
                                  const char **reason, GError **error);
/* After the row was kept: the reason stays with the gauges that it was given for. */
void tm_bench_bind_reason (TmBench *bench, const TmGauge *const *gauges, guint n, const char *at);

/* @text without blanks at its ends, interned. */
const char *tm_bench_intern_stripped (TmJob *job, const char *text);

/* What a message repeats of a refused text: the beginning, valid UTF-8, on one line. */
char *tm_bench_show_text (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* Reads both offsets of a position; FALSE with TM_BENCH_ERROR_ENTRY. */
gboolean tm_bench_read_offsets (const TmFeature *feature, const char *dx_text, const char *dy_text,
                                TmReading *into, GError **error);
/* The same from one text, as a correction has it. */
gboolean tm_bench_read_offset_pair (const TmFeature *feature, const char *text, TmReading *into,
                                    GError **error);

G_END_DECLS
