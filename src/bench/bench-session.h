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
#include "core-gauge.h"
#include "core-judge.h"
#include "core-pins.h"
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

/* A fresh session over the same job and recorder that keeps order, person, method, pin set,
 * temperatures, reasons, answers of tools, accepted risk and time of @old, but not where it stands, nor what
 * it typed and recorded. */
TmBench *tm_bench_new_like (const TmBench *old) G_GNUC_WARN_UNUSED_RESULT;

/* The time that advice is given for (is a gauge overdue today?), UTC as in tm_bench_submit(); a submit
 * sets it too.  "" as long as none was given: then nothing is overdue. */
void tm_bench_set_now (TmBench *bench, const char *at);

TmOrder tm_bench_order (const TmBench *bench);
void tm_bench_set_order (TmBench *bench, TmOrder order);

const TmSpot *tm_bench_spot (const TmBench *bench);
/* Moves to the spot and drops any question; the text is kept.  @station NULL or "": the first
 * station there without a reading, else its first.  Any other station that can be read is taken,
 * whether or not the feature lists it.  FALSE (and no move) when the spot is not in the job. */
gboolean tm_bench_go (TmBench *bench, TmPiece *piece, TmFeature *feature, guint place, const char *station);
/* The next spot in measuring order that is due and has no reading that counts, after the present
 * one and then from the start; FALSE (and no move) when nothing is left.  Where a feature lists no
 * stations, pins that were tried from each side that has a limit do as well. */
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
/* The slip being asked about; slip NONE when nothing is asked.  OUT_OF_REACH is about
 * tm_bench_question_gauge(), NULL for the others. */
const TmSlipCheck *tm_bench_question (const TmBench *bench);
const TmGauge *tm_bench_question_gauge (const TmBench *bench);

/* Enter.  @at is UTC "YYYY-MM-DDThh:mm:ssZ"; @now_ms any steady clock.  On RECORDED the text is
 * emptied, the session moves to the next unread spot (and stays when none is left), and
 * tm_bench_last() is the new reading.  The row names the method that counted when it was taken.
 * @error is set on REFUSED and FAILED; on every result but RECORDED the text and the job stay. */
TmSubmit tm_bench_submit (TmBench *bench, const char *at, gint64 now_ms, GError **error);

/* The offsets of a position feature from true position, as signed numbers in the feature's unit or
 * with a unit; same results as tm_bench_submit(), but no slip is asked about. */
TmSubmit tm_bench_submit_offsets (TmBench *bench, const char *dx_text, const char *dy_text, const char *at,
                                  GError **error);

/* What was recorded through the session: one of the three, the others NULL; all NULL: nothing. */
typedef struct {
  const TmReading *reading;
  const TmPinTrial *trial;
  const TmCutRow *cut;
} TmBenchFact;
/* The row of the one that is set; NULL: nothing. */
const TmEntryRow *tm_bench_fact_row (const TmBenchFact *fact);
/* The newest of the readings, pin trials and cuts that stand. */
TmBenchFact tm_bench_newest (const TmBench *bench);

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

/* Pin trials.  @text is what a hand types: the size as a reading is typed (shorthand too), then + for
 * went or - for did not go, at the end ("12.006+", "12018-"; g, n, "go", "no go" too).  Class and sign may
 * be written before that ("12.006 Z minus +"); else they follow from the set.
 *
 * The set is the one among the job's pin sets that holds the size (and the class and sign, where they
 * are written): of several the one chosen by tm_bench_set_pin_set(), else the finest class.  Two sets of
 * that class that differ in sign are refused, both named: which pin it was matters.  A pin that no set
 * holds is refused unless its class and sign are written. */
void tm_bench_set_pin_set (TmBench *bench, const char *tag);
const char *tm_bench_pin_set (const TmBench *bench);

typedef struct {
  gboolean ok; /* the pin is known; it is a trial when has_outcome too */
  TmQuantity size;
  const char *pin_class; /* borrowed from the job or the tables */
  TmPinSign sign;
  TmQuantity measured; /* its own size, where the set has it */
  gboolean went;
  gboolean has_outcome; /* + or - was typed */
  const TmGauge *set;   /* or NULL: a pin of no set */
  char problem[256];    /* translated, without a full stop; "" when ok */
} TmPinEntry;
void tm_bench_read_pin (const TmBench *bench, const char *text, TmPinEntry *out);

/* Whether @text, typed where readings are typed, is a pin trial: the present feature takes pins and the
 * text ends with how it went. */
gboolean tm_bench_text_is_pin (const TmBench *bench, const char *text);

/* Records the trial for the present place; results as of tm_bench_submit(), with no slip to ask about.
 * The session stays where it is; its own text is emptied when it is @text. */
TmSubmit tm_bench_submit_pin (TmBench *bench, const char *text, const char *at, GError **error);
gboolean tm_bench_withdraw_pin (TmBench *bench, const TmPinTrial *trial, const char *reason, const char *at,
                                GError **error);

/* Pins measure bores, and diameters that are not known to be outside. */
gboolean tm_feature_takes_pins (const TmFeature *feature);
/* Whether the gauge is a set of pins (or a plug). */
gboolean tm_gauge_is_pins (const TmGauge *gauge);

/* Of the present feature: what tm_pins_to_pull() says. */
void tm_bench_pin_plan (const TmBench *bench, TmPinPlan *out);

/* The pin of the plan that was not tried yet at the present place: the go pin first, and none after a go
 * pin that did not go. */
typedef struct {
  gboolean given;
  gint64 size;
  const TmGauge *set;
  gboolean go; /* it should go; else it should not */
} TmNextPin;
TmNextPin tm_bench_next_pin (const TmBench *bench);
TmNextPin tm_bench_plan_next (const TmBench *bench, const TmPinPlan *plan);
/* The same as it would be typed, with class and sign and without + or -: "12.006 X plus"; "": none. */
char *tm_bench_next_pin_text (const TmBench *bench) G_GNUC_WARN_UNUSED_RESULT;

/* Temperatures that go with the readings taken from now on; not given: none were taken. */
void tm_bench_set_temperatures (TmBench *bench, const TmQuantity *part, const TmQuantity *gauge);
void tm_bench_temperatures (const TmBench *bench, TmQuantity *part, TmQuantity *gauge);

/* Why a gauge past its due date is used.  A reading or trial by an overdue gauge without a reason is
 * REFUSED with TM_BENCH_ERROR_OVERDUE and nothing is lost.  The reason holds for the overdue gauge that
 * is used next and stays with it; another overdue gauge needs its own.  Dropped by "" and when another
 * method is chosen. */
void tm_bench_set_overdue_reason (TmBench *bench, const char *reason);
const char *tm_bench_overdue_reason (const TmBench *bench);

/* The judgement of the present spot's place as recorded; clear it with tm_judgement_clear(). */
void tm_bench_judge (const TmBench *bench, TmJudgement *out);

/* What to do next, as a code with its subject; the edge puts it into words.  READ, REPEAT: the
 * present piece and feature, and the station.  NEXT: where to go.  The others: the present ones.
 * FINER_GAUGE, PULL_PINS: `method` is one that would settle it, where the shop has one, and `pins` what
 * its pins would prove (has_go and has_nogo FALSE: no pins).  CHECK_GAUGE, STATE_REASON: `gauge`. */
typedef enum {
  TM_ADVICE_NONE,
  TM_ADVICE_ADD_PIECE,
  TM_ADVICE_ADD_FEATURE,
  TM_ADVICE_READ,                  /* read `station` */
  TM_ADVICE_REPEAT,                /* too close: repeat the reading at `station` */
  TM_ADVICE_FINER_GAUGE,           /* this method cannot or seldom settles the band: fetch a finer one */
  TM_ADVICE_CUT_AGAIN,             /* metal left, or so close on that side that a cut helps: plan it */
  TM_ADVICE_READ_AFTER_CUT,        /* a cut was made: read `station` */
  TM_ADVICE_REPORT_NONCONFORMANCE, /* metal gone, or out with the side unknown */
  TM_ADVICE_PULL_PINS,             /* pins of the shop settle it */
  TM_ADVICE_COUNT_COMBINED,        /* the pins prove it, but the assigned method is what counts */
  TM_ADVICE_CHECK_GAUGE,           /* check the gauge on its standard first */
  TM_ADVICE_STATE_REASON,          /* the gauge is overdue: calibrate it, or say why it is used */
  TM_ADVICE_SETTLE_CONTRADICTION,  /* pins, or pins and readings, cannot all be true: try them again */
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
  const char *method;       /* or "" */
  const TmGauge *gauge;     /* or NULL */
  TmPinPlan pins;
} TmAdvice;

/* What comes next at the present spot; texts and structs belong to the job. */
TmAdvice tm_bench_advice (const TmBench *bench);

G_END_DECLS
