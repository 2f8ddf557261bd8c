/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-gauge.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core-gauge-kind.h"
#include "core-pins.h"

#define DATE_LENGTH 10 /* YYYY-MM-DD */

static const char *const due_words[TM_N_DUES] = {
  [TM_DUE_UNKNOWN] = NC_ ("due", "no due date"),
  [TM_DUE_GOOD] = NC_ ("due", "good"),
  [TM_DUE_SOON] = NC_ ("due", "due soon"),
  [TM_DUE_OVERDUE] = NC_ ("due", "overdue"),
};

static const char *const fault_texts[TM_N_GAUGE_FAULTS] = {
  [TM_GAUGE_FINE] = "",
  [TM_GAUGE_ZERO_RESOLUTION] = N_ ("The resolution is zero; write the smallest step that the gauge shows, "
                                   "such as 0.001, or leave it empty."),
  [TM_GAUGE_NEGATIVE] = N_ ("A resolution, limit or uncertainty is below zero; write it without a sign."),
  [TM_GAUGE_RANGE_BACKWARDS] = N_ ("The range ends before it begins; write the smaller size first."),
  [TM_GAUGE_DUE_BEFORE] = N_ ("The due date is before the calibration; look at both dates."),
  [TM_GAUGE_PIN_CLASS] = N_ ("There is no such class; it is XXX, XX, X, Y, Z or ZZ, as written on the set."),
  [TM_GAUGE_CLASS_SIZE]
  = N_ ("The classes are made for 0.010 to 12.010 in (0.254 to 305.054 mm); leave the class empty."),
  [TM_GAUGE_PIN_OUT_OF_RANGE]
  = N_ ("This pin is not in the set; look at its size and at the set's range and step."),
  [TM_GAUGE_PIN_STEP]
  = N_ ("The step between the pins does not fit the range; write it like 0.001, smaller than the range."),
  [TM_GAUGE_PIN_RANGE]
  = N_ ("A set with a step needs its smallest and its largest pin; write both ends of the range."),
  [TM_GAUGE_COVERAGE] = N_ ("k must be above zero; the certificate states it, mostly 2."),
  [TM_GAUGE_UNIT] = N_ ("This unit does not fit what the gauge measures; look at the unit."),
  [TM_GAUGE_STANDARD]
  = N_ ("The gauge does not reach this standard; look at its size and at the gauge's range."),
  [TM_GAUGE_DATE] = N_ ("This is not a day of the calendar; write it like 2026-03-01."),
};

/* ASME B89.1.5: the sizes that the classes are made for, 0.010 to 12.010 in, both included. */
#define CLASS_FROM (10 * G_GINT64_CONSTANT (25400000))
#define CLASS_TO   (12010 * G_GINT64_CONSTANT (25400000))

/* Dates. */

static gboolean
read_number (const char *text, guint digits, guint *value)
{
  *value = 0;
  for (guint i = 0; i < digits; i++)
    {
      if (!g_ascii_isdigit (text[i]))
        return FALSE;
      *value = *value * 10 + (guint)g_ascii_digit_value (text[i]);
    }
  return TRUE;
}

/* Days since the calendar's first of the date that @text begins with; 0: it is none. */
static guint32
read_day (const char *text)
{
  guint year, month, day;
  GDate date;

  if (text == NULL || strlen (text) < DATE_LENGTH || !read_number (text, 4, &year) || text[4] != '-'
      || !read_number (text + 5, 2, &month) || text[7] != '-' || !read_number (text + 8, 2, &day)
      || !g_date_valid_dmy ((GDateDay)day, (GDateMonth)month, (GDateYear)year))
    return 0;
  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay)day, (GDateMonth)month, (GDateYear)year);
  return g_date_get_julian (&date);
}

/* Seconds since the calendar's first; a date alone is its first moment.  FALSE when it is none. */
static gboolean
read_moment (const char *text, gint64 *seconds)
{
  guint32 day = read_day (text);
  guint hour = 0, minute = 0, second = 0;

  if (day == 0)
    return FALSE;
  if (strlen (text) >= 19
      && !(read_number (text + 11, 2, &hour) && read_number (text + 14, 2, &minute)
           && read_number (text + 17, 2, &second)))
    return FALSE;
  *seconds = (gint64)day * 86400 + hour * 3600 + minute * 60 + second;
  return TRUE;
}

static gboolean
is_given (const char *text)
{
  return text != NULL && *text != '\0';
}

/* Both as their dates alone. */
static int
compare_days (const char *a, const char *b)
{
  return strncmp (a, b, DATE_LENGTH);
}

/* TRUE when @moment is not after @at; where @at is a date, not after the end of that day. */
static gboolean
is_by (const char *moment, const char *at)
{
  if (!is_given (at))
    return TRUE;
  return strlen (at) <= DATE_LENGTH ? compare_days (moment, at) <= 0 : strcmp (moment, at) <= 0;
}

/* Calibration. */

static gboolean
is_bad (const TmCalibration *calibration)
{
  return g_str_equal (calibration->outcome, "bad");
}

/* The newest of the list, dated by @at; with @good, of those that were good. */
static const TmCalibration *
find_newest (const TmJob *job, const char *tag, const char *at, gboolean good)
{
  const TmCalibration *newest = NULL;

  for (guint i = 0; i < job->calibrations->len; i++)
    {
      const TmCalibration *each = g_ptr_array_index (job->calibrations, i);

      if (!g_str_equal (each->gauge, tag) || (good && is_bad (each)))
        continue;
      if (is_given (at) && compare_days (each->date, at) > 0)
        continue;
      if (newest == NULL || compare_days (each->date, newest->date) >= 0)
        newest = each;
    }
  return newest;
}

const TmCalibration *
tm_calibration_at (const TmJob *job, const char *tag, const char *at)
{
  g_return_val_if_fail (job != NULL && tag != NULL, NULL);

  return find_newest (job, tag, at, TRUE);
}

const TmCalibration *
tm_gauge_found_bad (const TmJob *job, const char *tag, const char *at)
{
  const TmCalibration *newest;
  const TmGauge *gauge;

  g_return_val_if_fail (job != NULL && tag != NULL, NULL);

  newest = find_newest (job, tag, at, FALSE);
  if (newest == NULL || !is_bad (newest))
    return NULL;
  /* A newer date on the gauge itself says that it was made good since. */
  gauge = tm_job_find_gauge (job, tag);
  if (gauge != NULL && is_given (gauge->calibrated) && compare_days (gauge->calibrated, newest->date) > 0
      && (!is_given (at) || compare_days (gauge->calibrated, at) <= 0))
    return NULL;
  return newest;
}

const char *
tm_gauge_due_date (const TmJob *job, const TmGauge *gauge, const char *at)
{
  const TmCalibration *in_force;
  gboolean own_counts;

  g_return_val_if_fail (job != NULL && gauge != NULL, "");

  in_force = find_newest (job, gauge->tag, at, TRUE);
  own_counts = !is_given (gauge->calibrated) || !is_given (at) || compare_days (gauge->calibrated, at) <= 0;
  if (in_force == NULL)
    return own_counts ? gauge->due : "";
  if (own_counts && is_given (gauge->calibrated) && compare_days (gauge->calibrated, in_force->date) >= 0
      && is_given (gauge->due))
    return gauge->due;
  return in_force->due;
}

TmDue
tm_gauge_due (const TmJob *job, const TmGauge *gauge, const char *at)
{
  const char *due;
  guint32 due_day, at_day;

  g_return_val_if_fail (job != NULL && gauge != NULL, TM_DUE_UNKNOWN);

  at_day = read_day (at);
  if (at_day == 0)
    return TM_DUE_UNKNOWN;
  if (tm_gauge_found_bad (job, gauge->tag, at) != NULL)
    return TM_DUE_OVERDUE;
  due = tm_gauge_due_date (job, gauge, at);
  due_day = read_day (due);
  if (due_day == 0)
    return TM_DUE_UNKNOWN;
  if (at_day > due_day)
    return TM_DUE_OVERDUE;
  return due_day - at_day <= TM_DUE_SOON_DAYS ? TM_DUE_SOON : TM_DUE_GOOD;
}

const char *
tm_due_word (TmDue due)
{
  g_return_val_if_fail (due < TM_N_DUES, "");

  return due_words[due];
}

/* Checks on the standard. */

static const TmCheck *
find_last_check (const TmJob *job, const char *tag, const char *at)
{
  const TmCheck *last = NULL;

  for (guint i = 0; i < job->checks->len; i++)
    {
      const TmCheck *each = g_ptr_array_index (job->checks, i);

      if (g_str_equal (each->gauge, tag) && is_by (each->at, at)
          && (last == NULL || strcmp (each->at, last->at) >= 0))
        last = each;
    }
  return last;
}

gint64
tm_pin_size_error (const TmPinSize *pin)
{
  g_return_val_if_fail (pin != NULL, 0);

  return pin->measured.count - pin->size.count;
}

gint64
tm_gauge_drift_limit (const TmJob *job, const TmGauge *gauge)
{
  TmWide share, one;

  g_return_val_if_fail (job != NULL && gauge != NULL, -1);

  if (!gauge->error_limit.given)
    return -1;
  share = job->drift_limit.given ? job->drift_limit.count : 1;
  one = job->drift_limit.given ? MAX (tm_unit_counts ((TmUnit)job->drift_limit.unit), 1) : 1;
  return (gint64)MIN (share * gauge->error_limit.count / one, TM_COUNT_MAX);
}

gint64
tm_check_drift (const TmJob *job, const TmCheck *check)
{
  const TmCalibration *calibration;
  TmWide drift;

  g_return_val_if_fail (job != NULL && check != NULL, 0);

  drift = (TmWide)check->reading.count - check->standard.count;
  calibration = tm_calibration_at (job, check->gauge, check->at);
  if (calibration != NULL && calibration->error.given
      && tm_unit_dimension (calibration->error.unit) == tm_unit_dimension (check->reading.unit))
    drift -= calibration->error.count;
  return (gint64)CLAMP (drift, -TM_COUNT_MAX, TM_COUNT_MAX);
}

/* In whole counts: what is at the limit is not beyond it. */
static gboolean
is_beyond (const TmJob *job, const TmGauge *gauge, gint64 drift)
{
  gint64 limit = tm_gauge_drift_limit (job, gauge);

  return limit >= 0 && ABS (drift) > limit;
}

static gboolean
is_stale (const TmJob *job, const TmCheck *last, const char *at)
{
  gint64 now, then;
  double hours;

  if (!job->check_hours.given)
    return FALSE;
  if (last == NULL)
    return TRUE;
  if (!read_moment (at, &now) || !read_moment (last->at, &then))
    return FALSE;
  hours = tm_count_to_double (job->check_hours.count, job->check_hours.unit);
  return (double)(now - then) > hours * 3600;
}

TmCheckState
tm_gauge_check_state (const TmJob *job, const TmGauge *gauge, const char *at)
{
  TmCheckState state = { NULL, 0, FALSE, FALSE };

  g_return_val_if_fail (job != NULL && gauge != NULL, state);

  state.last = find_last_check (job, gauge->tag, at);
  state.stale = is_stale (job, state.last, at);
  if (state.last != NULL)
    {
      gint64 drift = tm_check_drift (job, state.last);

      state.drift = (double)drift;
      state.beyond = is_beyond (job, gauge, drift);
    }
  return state;
}

static gboolean
is_length (const TmQuantity *quantity)
{
  return tm_unit_dimension (quantity->unit) == TM_DIMENSION_LENGTH;
}

gboolean
tm_gauge_reaches (const TmGauge *gauge, gint64 size)
{
  g_return_val_if_fail (gauge != NULL, TRUE);

  if (gauge->range_from.given && is_length (&gauge->range_from) && size < gauge->range_from.count)
    return FALSE;
  return !gauge->range_to.given || !is_length (&gauge->range_to) || size <= gauge->range_to.count;
}

/* Faults. */

static gboolean
is_negative (const TmQuantity *quantity)
{
  return quantity->given && quantity->count < 0;
}

/* TRUE when both are given and measure different things. */
static gboolean
is_mixed (const TmQuantity *a, const TmQuantity *b)
{
  return a->given && b->given && tm_unit_dimension (a->unit) != tm_unit_dimension (b->unit);
}

/* Letter for letter, as it is written everywhere else. */
static gboolean
is_class (const char *pin_class)
{
  const char *name;

  for (guint i = 0; (name = tm_pin_class_nth (i)) != NULL; i++)
    if (g_str_equal (name, pin_class))
      return TRUE;
  return FALSE;
}

static TmGaugeFault
find_class_fault (const TmGauge *gauge)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);
  const TmQuantity *ends[] = { &gauge->range_from, &gauge->range_to };

  if (!is_given (gauge->pin_class) || (kind != NULL && !kind->classed))
    return TM_GAUGE_FINE;
  if (!is_class (gauge->pin_class))
    return TM_GAUGE_PIN_CLASS;
  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    {
      if (ends[i]->given && !is_length (ends[i]))
        return TM_GAUGE_UNIT;
      if (ends[i]->given && (ends[i]->count < CLASS_FROM || ends[i]->count > CLASS_TO))
        return TM_GAUGE_CLASS_SIZE;
    }
  return TM_GAUGE_FINE;
}

static TmGaugeFault
find_step_fault (const TmGauge *gauge)
{
  const TmQuantity *step = &gauge->pin_step;

  if (!step->given)
    return TM_GAUGE_FINE;
  if (!is_length (step))
    return TM_GAUGE_UNIT;
  if (step->count <= 0)
    return TM_GAUGE_PIN_STEP;
  if (!gauge->range_from.given || !gauge->range_to.given)
    return TM_GAUGE_PIN_RANGE;
  return step->count > gauge->range_to.count - gauge->range_from.count ? TM_GAUGE_PIN_STEP : TM_GAUGE_FINE;
}

/* "" is no date, and no fault. */
static gboolean
is_wrong_date (const char *text)
{
  return is_given (text) && (strlen (text) != DATE_LENGTH || read_day (text) == 0);
}

static TmGaugeFault
find_date_fault (const char *calibrated, const char *due)
{
  if (is_wrong_date (calibrated) || is_wrong_date (due))
    return TM_GAUGE_DATE;
  return is_given (calibrated) && is_given (due) && strcmp (due, calibrated) < 0 ? TM_GAUGE_DUE_BEFORE
                                                                                 : TM_GAUGE_FINE;
}

static TmGaugeFault
find_figure_fault (const TmGauge *gauge)
{
  if (gauge->resolution.given && gauge->resolution.count == 0)
    return TM_GAUGE_ZERO_RESOLUTION;
  if (is_negative (&gauge->resolution) || is_negative (&gauge->error_limit) || is_negative (&gauge->feel))
    return TM_GAUGE_NEGATIVE;
  if (is_mixed (&gauge->resolution, &gauge->error_limit) || is_mixed (&gauge->range_from, &gauge->range_to)
      || (gauge->feel.given && !is_length (&gauge->feel)))
    return TM_GAUGE_UNIT;
  if (gauge->range_from.given && gauge->range_to.given && gauge->range_from.count > gauge->range_to.count)
    return TM_GAUGE_RANGE_BACKWARDS;
  return TM_GAUGE_FINE;
}

TmGaugeFault
tm_gauge_fault (const TmGauge *gauge)
{
  TmGaugeFault fault;

  g_return_val_if_fail (gauge != NULL, TM_GAUGE_FINE);

  fault = find_figure_fault (gauge);
  if (fault == TM_GAUGE_FINE)
    fault = find_date_fault (gauge->calibrated, gauge->due);
  if (fault == TM_GAUGE_FINE)
    fault = find_class_fault (gauge);
  return fault == TM_GAUGE_FINE ? find_step_fault (gauge) : fault;
}

/* What the gauge shows: a quantity that tells its dimension, or NULL. */
static const TmQuantity *
find_shown (const TmGauge *gauge)
{
  if (gauge->resolution.given)
    return &gauge->resolution;
  return gauge->error_limit.given ? &gauge->error_limit : NULL;
}

static gboolean
fits_gauge (const TmGauge *gauge, const TmQuantity *quantity)
{
  const TmQuantity *shown = find_shown (gauge);

  if (!quantity->given)
    return TRUE;
  return shown == NULL || !is_mixed (shown, quantity);
}

TmGaugeFault
tm_calibration_fault (const TmGauge *gauge, const TmCalibration *calibration)
{
  g_return_val_if_fail (gauge != NULL && calibration != NULL, TM_GAUGE_FINE);

  if (!is_given (calibration->date))
    return TM_GAUGE_DATE;
  if (is_negative (&calibration->uncertainty))
    return TM_GAUGE_NEGATIVE;
  if (calibration->coverage.given && calibration->coverage.count <= 0)
    return TM_GAUGE_COVERAGE;
  if (!fits_gauge (gauge, &calibration->uncertainty) || !fits_gauge (gauge, &calibration->error)
      || is_mixed (&calibration->uncertainty, &calibration->error))
    return TM_GAUGE_UNIT;
  return find_date_fault (calibration->date, calibration->due);
}

TmGaugeFault
tm_check_fault (const TmGauge *gauge, const TmCheck *check)
{
  g_return_val_if_fail (gauge != NULL && check != NULL, TM_GAUGE_FINE);

  if (is_negative (&check->standard))
    return TM_GAUGE_NEGATIVE;
  if (!check->standard.given || !check->reading.given || is_mixed (&check->standard, &check->reading)
      || !fits_gauge (gauge, &check->standard))
    return TM_GAUGE_UNIT;
  return is_length (&check->standard) && !tm_gauge_reaches (gauge, check->standard.count) ? TM_GAUGE_STANDARD
                                                                                          : TM_GAUGE_FINE;
}

TmGaugeFault
tm_pin_size_fault (const TmGauge *gauge, const TmPinSize *pin)
{
  const TmQuantity *from = &gauge->range_from, *step = &gauge->pin_step;

  g_return_val_if_fail (gauge != NULL && pin != NULL, TM_GAUGE_FINE);

  if (!pin->size.given || !pin->measured.given || !is_length (&pin->size) || !is_length (&pin->measured))
    return TM_GAUGE_UNIT;
  if (pin->size.count <= 0 || pin->measured.count <= 0)
    return TM_GAUGE_NEGATIVE;
  if (!tm_gauge_reaches (gauge, pin->size.count))
    return TM_GAUGE_PIN_OUT_OF_RANGE;
  if (step->given && step->count > 0 && from->given && (pin->size.count - from->count) % step->count != 0)
    return TM_GAUGE_PIN_OUT_OF_RANGE;
  return TM_GAUGE_FINE;
}

const char *
tm_gauge_fault_text (TmGaugeFault fault)
{
  g_return_val_if_fail (fault < TM_N_GAUGE_FAULTS, "");

  return fault_texts[fault];
}
