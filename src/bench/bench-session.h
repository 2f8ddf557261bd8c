/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-session: one person measuring the pieces of one job: where they are in the measuring order,
 * what they have typed, what it would mean, recording, correcting and withdrawing it.
 *
 * No screen, no clock, no file: the caller hands in the time and a recorder.  The session changes
 * its job only after the recorder has kept the fact.
 */

#pragma once

#include "core-entry.h"
#include "core-judge.h"
#include "core-recorder.h"

G_BEGIN_DECLS

#define TM_BENCH_ERROR (tm_bench_error_quark ())
GQuark tm_bench_error_quark (void);

typedef enum {
  TM_BENCH_ERROR_NOWHERE, /* no piece or no feature to record for */
  TM_BENCH_ERROR_ENTRY,   /* the text is refused: see tm_bench_entry() */
  TM_BENCH_ERROR_NO_REASON,
  TM_BENCH_ERROR_NO_TARGET, /* nothing to correct or withdraw */
  TM_BENCH_ERROR_REFUSED,   /* the job refuses the row */
  TM_BENCH_ERROR_OVERDUE,   /* the gauge is past its due date and no reason is stated */
} TmBenchError;

typedef enum {
  TM_ORDER_PIECE_FIRST,   /* all features of a piece, then the next piece */
  TM_ORDER_FEATURE_FIRST, /* one feature on every piece, then the next feature */
} TmOrder;

/* Where the next reading goes. */
typedef struct {
  TmPiece *piece;      /* NULL: the job has none yet */
  TmFeature *feature;  /* NULL: the job has none yet */
  guint place;         /* 1.. */
  const char *station; /* "" where the feature has no stations */
} TmSpot;

typedef enum {
  TM_SUBMIT_RECORDED,
  TM_SUBMIT_ASKED,    /* a slip: a second Enter, 300 ms or more later, records it */
  TM_SUBMIT_TOO_SOON, /* an Enter within 300 ms of the question: not taken */
  TM_SUBMIT_REFUSED,  /* the text is not a reading: see tm_bench_entry(); nothing was recorded */
  TM_SUBMIT_FAILED,   /* the recorder failed: @error; what was typed stays */
} TmSubmit;

#define TM_BENCH_CONFIRM_MS 300

typedef struct _TmBench TmBench;

/* @job is borrowed and must outlive the session; @recorder is copied. */
TmBench *tm_bench_new (TmJob *job, TmRecorder recorder) G_GNUC_WARN_UNUSED_RESULT;
void tm_bench_free (TmBench *bench);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmBench, tm_bench_free)

TmOrder tm_bench_order (const TmBench *bench);
void tm_bench_set_order (TmBench *bench, TmOrder order);

const TmSpot *tm_bench_spot (const TmBench *bench);
/* Moves to the spot and drops any question; the text is kept.  @station NULL or "": the first
 * station there without a reading, else its first.  Any other station that can be read is taken,
 * whether or not the feature lists it.  FALSE (and no move) when the spot is not in the job. */
gboolean tm_bench_go (TmBench *bench, TmPiece *piece, TmFeature *feature, guint place, const char *station);
/* The next spot in measuring order that is due and has no reading that counts, after the present
 * one and then from the start; FALSE (and no move) when nothing is left. */
gboolean tm_bench_go_next_unread (TmBench *bench);
/* One step in measuring order, read or not; FALSE at the end. */
gboolean tm_bench_go_next (TmBench *bench);
gboolean tm_bench_go_previous (TmBench *bench);

/* The session sees readings, pieces and features that others add, remove or replace.  Call this
 * after a change that it cannot see: a withdrawal made past it. */
void tm_bench_job_changed (TmBench *bench);

/* How many spots of @piece are due, and how many have a reading that counts. */
void tm_bench_count (const TmBench *bench, const TmPiece *piece, guint *n_due, guint *n_read);

/* Who measures and by what: borrowed texts are copied. */
void tm_bench_set_by (TmBench *bench, const char *initials);
const char *tm_bench_by (const TmBench *bench);
/* A method that overrides the feature's; "" = the feature's own. */
void tm_bench_set_method (TmBench *bench, const char *name);
const char *tm_bench_method (const TmBench *bench);

/* What has been typed so far and what it means.  Setting other text drops a pending question. */
void tm_bench_set_text (TmBench *bench, const char *text);
const char *tm_bench_text (const TmBench *bench);
const TmEntry *tm_bench_entry (const TmBench *bench);
/* The slip being asked about; slip NONE when nothing is asked. */
const TmSlipCheck *tm_bench_question (const TmBench *bench);

/* Enter.  @at is UTC "YYYY-MM-DDThh:mm:ssZ"; @now_ms any steady clock.  On RECORDED the text is
 * emptied, the session moves to the next unread spot (and stays when none is left), and
 * tm_bench_last() is the new reading.  The row names the method that counted when it was taken.
 * @error is set on REFUSED and FAILED; on every result but RECORDED the text and the job stay. */
TmSubmit tm_bench_submit (TmBench *bench, const char *at, gint64 now_ms, GError **error);

/* The offsets of a position feature from true position, as signed numbers in the feature's unit or
 * with a unit; same results as tm_bench_submit(), but no slip is asked about. */
TmSubmit tm_bench_submit_offsets (TmBench *bench, const char *dx_text, const char *dy_text, const char *at,
                                  GError **error);

/* The newest reading recorded through @bench that counts, or NULL. */
const TmReading *tm_bench_last (const TmBench *bench);

/* Records @text as the correction of @reading, with its reason.  No slip is asked about.  The new
 * row keeps piece, feature, place, station, method and temperatures of the old one.  Where the old
 * one holds position offsets, @text is both, with a space or a semicolon between. */
gboolean tm_bench_correct (TmBench *bench, const TmReading *reading, const char *text, const char *reason,
                           const char *at, GError **error);

/* Withdraws @reading, with the reason; the row stays in the record and no longer counts. */
gboolean tm_bench_withdraw (TmBench *bench, const TmReading *reading, const char *reason, const char *at,
                            GError **error);

/* Pin trials.  @text is what a hand types: the size as a reading is typed (shorthand too), then + for went
 * or - for did not go, at the end ("12.006+", "12018-"); class, sign and set follow from the pin set chosen
 * by tm_bench_set_pin_set(), and may be written ("12.006 Z minus +").  Records it for the present place; same
 * results as tm_bench_submit().  A pin that the set does not hold is refused. */
void tm_bench_set_pin_set (TmBench *bench, const char *tag);
const char *tm_bench_pin_set (const TmBench *bench);

typedef struct {
  gboolean ok;
  TmQuantity size;
  const char *pin_class; /* borrowed from the job or the tables */
  TmPinSign sign;
  gboolean went;
  gboolean has_outcome; /* + or - was typed */
  const TmGauge *set;   /* or NULL */
  char problem[256];    /* translated, one line; "" when ok */
} TmPinEntry;
void tm_bench_read_pin (const TmBench *bench, const char *text, TmPinEntry *out);
TmSubmit tm_bench_submit_pin (TmBench *bench, const char *text, const char *at, GError **error);
gboolean tm_bench_withdraw_pin (TmBench *bench, const TmPinTrial *trial, const char *reason, const char *at,
                                GError **error);

/* Temperatures that go with the readings taken from now on; not given: none were taken. */
void tm_bench_set_temperatures (TmBench *bench, const TmQuantity *part, const TmQuantity *gauge);
void tm_bench_temperatures (const TmBench *bench, TmQuantity *part, TmQuantity *gauge);

/* Why a gauge past its due date is used, for the readings and trials taken from now on with it; dropped
 * when another method is chosen.  A reading by an overdue gauge without one is REFUSED with
 * TM_BENCH_ERROR_OVERDUE and nothing is lost. */
void tm_bench_set_overdue_reason (TmBench *bench, const char *reason);
const char *tm_bench_overdue_reason (const TmBench *bench);

/* The judgement of the present spot's place as recorded; clear it with tm_judgement_clear(). */
void tm_bench_judge (const TmBench *bench, TmJudgement *out);

/* What to do next, as a code with its subject; the edge puts it into words.  READ, REPEAT: the
 * present piece and feature, and the station.  NEXT: where to go.  The others: the present ones. */
typedef enum {
  TM_ADVICE_NONE,
  TM_ADVICE_ADD_PIECE,
  TM_ADVICE_ADD_FEATURE,
  TM_ADVICE_READ,                  /* read `station` */
  TM_ADVICE_REPEAT,                /* too close: repeat the reading at `station` */
  TM_ADVICE_FINER_GAUGE,           /* this method cannot or seldom settles the band: fetch a finer one */
  TM_ADVICE_CUT_AGAIN,             /* metal left */
  TM_ADVICE_REPORT_NONCONFORMANCE, /* metal gone, or out with the side unknown */
  TM_ADVICE_NAME_METHOD,           /* no method: say which gauge */
  TM_ADVICE_NEXT,                  /* settled: go on to the next feature */
  TM_ADVICE_PIECE_DONE,
  TM_ADVICE_ALL_DONE,
} TmAdviceKind;

typedef struct {
  TmAdviceKind kind;
  const char *station;      /* or "" */
  const TmFeature *feature; /* or NULL */
  const TmPiece *piece;     /* or NULL */
} TmAdvice;

/* What comes next at the present spot; texts and structs belong to the job. */
TmAdvice tm_bench_advice (const TmBench *bench);

G_END_DECLS
