/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-gauge: the state of a registered gauge at a moment: is its calibration in force, which one
 * was, what its last check on the standard says; and what is wrong with a gauge as it was written.
 *
 * Dates are YYYY-MM-DD, moments UTC YYYY-MM-DDThh:mm:ssZ; a moment begins with its date, so that
 * both compare as text.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef enum {
  TM_DUE_UNKNOWN, /* no due date is stated */
  TM_DUE_GOOD,
  TM_DUE_SOON, /* due within TM_DUE_SOON_DAYS */
  TM_DUE_OVERDUE,
  TM_N_DUES
} TmDue;

#define TM_DUE_SOON_DAYS 30

/* Of @gauge at @at, a date or a moment, by the calibration then in force: the newest good one of the list
 * or the dates on the gauge itself, whichever is newer; "" gives UNKNOWN, and so does a moment before the
 * only calibration known.  A gauge is still good on its due date.  One that was found bad and not good
 * again since counts as OVERDUE (tm_gauge_found_bad() tells). */
TmDue tm_gauge_due (const TmJob *job, const TmGauge *gauge, const char *at);
const char *tm_due_word (TmDue due);

/* The newest calibration of @tag that is dated on or before @at (NULL or "": the newest of all) and
 * was good; NULL when none is in the list. */
const TmCalibration *tm_calibration_at (const TmJob *job, const char *tag, const char *at);

/* The calibration at which @tag was found bad, when none on or before @at (as above) came after it. */
const TmCalibration *tm_gauge_found_bad (const TmJob *job, const char *tag, const char *at);

/* The day until which @gauge is good at @at by that calibration, YYYY-MM-DD or "". */
const char *tm_gauge_due_date (const TmJob *job, const TmGauge *gauge, const char *at);

/* What the last check of @tag on its standard, at or before @at (NULL or "": the newest), says. */
typedef struct {
  const TmCheck *last; /* NULL: none */
  double drift;        /* tm_check_drift() of the last check, counts; 0 without one */
  gboolean beyond;     /* |drift| is beyond the job's limit: drift_limit × the error limit; never where
                        * the gauge states no error limit */
  gboolean stale;      /* older than the job's check_hours at @at, or there is none and one is asked for */
} TmCheckState;
/* @at may be a date: checks of that day count, and age is taken at its first moment. */
TmCheckState tm_gauge_check_state (const TmJob *job, const TmGauge *gauge, const char *at);

/* By how much the gauge of @check has moved, counts: reading - standard, less the error that the calibration
 * in force then knows of and readings are corrected for. */
gint64 tm_check_drift (const TmJob *job, const TmCheck *check);

/* How much larger a pin measures than is marked on it, in counts of the measured size's unit. */
gint64 tm_pin_size_error (const TmPinSize *pin);

/* By how much @gauge may have drifted on its standard: the job's share of its limit of error, rounded down to
 * a count; -1 where it states none. */
gint64 tm_gauge_drift_limit (const TmJob *job, const TmGauge *gauge);

/* Whether @size (a length) is within what the gauge says it reaches; TRUE when it says nothing. */
gboolean tm_gauge_reaches (const TmGauge *gauge, gint64 size);

/* What is wrong with a gauge, calibration, check or pin set as written; text marked for translation:
 * one line that names the mend. */
typedef enum {
  TM_GAUGE_FINE,
  TM_GAUGE_ZERO_RESOLUTION,
  TM_GAUGE_NEGATIVE, /* a resolution, error limit, feel or uncertainty below zero */
  TM_GAUGE_RANGE_BACKWARDS,
  TM_GAUGE_DUE_BEFORE,       /* due before the calibration */
  TM_GAUGE_PIN_CLASS,        /* no such class */
  TM_GAUGE_CLASS_SIZE,       /* a size that the classes are not made for */
  TM_GAUGE_PIN_OUT_OF_RANGE, /* a pin that is not in the set */
  TM_GAUGE_PIN_STEP,         /* a step of zero or below, or larger than the range */
  TM_GAUGE_PIN_RANGE,        /* a step without both ends of the range */
  TM_GAUGE_COVERAGE,         /* k of zero or below */
  TM_GAUGE_UNIT,             /* not a length where one is needed */
  TM_GAUGE_STANDARD,         /* a standard that the gauge does not reach */
  TM_GAUGE_DATE,             /* not a day of the calendar, written YYYY-MM-DD */
  TM_N_GAUGE_FAULTS
} TmGaugeFault;
TmGaugeFault tm_gauge_fault (const TmGauge *gauge);
TmGaugeFault tm_calibration_fault (const TmGauge *gauge, const TmCalibration *calibration);
TmGaugeFault tm_check_fault (const TmGauge *gauge, const TmCheck *check);
TmGaugeFault tm_pin_size_fault (const TmGauge *gauge, const TmPinSize *pin);
/* What of the history of gauge @tag in @job (calibrations, checks, measured pins) would no longer fit it if
 * it were @gauge: a job file with such a row would be refused. */
TmGaugeFault tm_gauge_history_fault (const TmJob *job, const char *tag, const TmGauge *gauge);
const char *tm_gauge_fault_text (TmGaugeFault fault);

G_END_DECLS
