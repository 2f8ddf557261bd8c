/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows of "gauges", "calibrations", "checks" and "pin_sizes".
 */

#include "exchange-job-read.h"

#include "core-blocks.h"
#include "core-gauge.h"

#include <glib/gi18n-lib.h>

/* Refuses what core finds wrong with a row: @member is the member to blame. */
static gboolean
fail_fault (TmMember member, TmGaugeFault fault, GError **error)
{
  return tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error, "%s", _ (tm_gauge_fault_text (fault)));
}

static gboolean
fail_missing (TmMember member, const char *mend, GError **error)
{
  return tm_member_fail (member, TM_EXCHANGE_ERROR_MISSING, error, "%s", mend);
}

static gboolean
take_gauge_unit (const TmJob *job, const TmJsonRow *row, TmGauge *gauge, GError **error)
{
  TmMember unit = TM_OWN (row, GAUGE_UNIT);

  gauge->unit = job->unit;
  if (!TM_TAKE_WORD (unit, tm_unit_from_word, "mm, in", &gauge->unit, error))
    return FALSE;
  return gauge->unit == TM_UNIT_MM || gauge->unit == TM_UNIT_IN
         || tm_member_fail_word (unit, "mm, in", error);
}

static void
take_gauge_texts (TmJob *job, const TmJsonRow *row, TmGauge *gauge)
{
  tm_take_text (TM_OWN (row, GAUGE_KIND), job, &gauge->kind);
  tm_take_text (TM_OWN (row, GAUGE_CERTIFICATE), job, &gauge->certificate);
  tm_take_text (TM_OWN (row, GAUGE_SERIAL), job, &gauge->serial);
  tm_take_text (TM_OWN (row, GAUGE_OWNER), job, &gauge->owner);
  tm_take_text (TM_OWN (row, GAUGE_PLACE), job, &gauge->place);
  tm_take_text (TM_OWN (row, GAUGE_SOURCE), job, &gauge->source);
  gauge->extra = tm_job_intern (job, row->extra->str);
}

static gboolean
take_gauge_figures (const TmJsonRow *row, TmGauge *gauge, GError **error)
{
  return tm_take_spread_not_negative (TM_OWN (row, GAUGE_RESOLUTION), gauge->unit, &gauge->resolution, error)
         && tm_take_spread_not_negative (TM_OWN (row, GAUGE_ERROR_LIMIT), gauge->unit, &gauge->error_limit,
                                         error)
         && tm_take_spread (TM_OWN (row, GAUGE_RANGE_FROM), gauge->unit, &gauge->range_from, error)
         && tm_take_spread (TM_OWN (row, GAUGE_RANGE_TO), gauge->unit, &gauge->range_to, error)
         && tm_take_spread_not_negative (TM_OWN (row, GAUGE_FEEL), gauge->unit, &gauge->feel, error)
         && tm_take_quantity (TM_OWN (row, GAUGE_EXPANSION), TM_UNIT_HARDNESS, &gauge->expansion, error);
}

static gboolean
take_pin_set (TmJob *job, const TmJsonRow *row, TmGauge *gauge, GError **error)
{
  TmMember pin_sign = TM_OWN (row, GAUGE_PIN_SIGN);
  TmPinSign unused;

  if (!TM_TAKE_WORD (pin_sign, tm_pin_sign_from_word, "minus, plus", &unused, error))
    return FALSE;
  tm_take_text (pin_sign, job, &gauge->pin_sign);
  tm_take_text (TM_OWN (row, GAUGE_PIN_CLASS), job, &gauge->pin_class);
  return tm_take_spread (TM_OWN (row, GAUGE_PIN_STEP), gauge->unit, &gauge->pin_step, error);
}

/* The sizes of a set of gauge blocks. */
static gboolean
take_blocks (TmJob *job, const TmJsonRow *row, TmGauge *gauge, GError **error)
{
  TmMember member = TM_OWN (row, GAUGE_BLOCKS);
  g_autoptr (GArray) sizes = NULL;
  TmBlocksStatus status;

  tm_take_text (member, job, &gauge->blocks);
  if (!tm_member_is_given (member))
    return TRUE;
  status = tm_blocks_read (gauge->blocks, gauge->unit, &sizes, NULL);
  return status == TM_BLOCKS_OK
         || tm_member_fail (member, TM_EXCHANGE_ERROR_BAD_VALUE, error, "%s",
                            g_dpgettext2 (GETTEXT_PACKAGE, "blocks status", tm_blocks_status_word (status)));
}

/* The member of a gauge that @fault lies in. */
static guint
blame_gauge (TmGaugeFault fault, const TmGauge *gauge)
{
  if (fault == TM_GAUGE_ZERO_RESOLUTION)
    return GAUGE_RESOLUTION;
  if (fault == TM_GAUGE_DUE_BEFORE)
    return GAUGE_DUE;
  if (fault == TM_GAUGE_PIN_CLASS)
    return GAUGE_PIN_CLASS;
  if (fault == TM_GAUGE_PIN_STEP)
    return GAUGE_PIN_STEP;
  if (fault == TM_GAUGE_UNIT && gauge->feel.given)
    return GAUGE_FEEL;
  if (fault == TM_GAUGE_UNIT && !gauge->range_from.given)
    return GAUGE_ERROR_LIMIT;
  return GAUGE_RANGE_FROM;
}

static gboolean
take_gauge (TmJob *job, const TmJsonRow *row, TmGauge *gauge, GError **error)
{
  TmGaugeFault fault;

  take_gauge_texts (job, row, gauge);
  if (!take_gauge_unit (job, row, gauge, error)
      || !tm_take_name (TM_OWN (row, GAUGE_TAG), job, TRUE, &gauge->tag, error)
      || !take_gauge_figures (row, gauge, error) || !take_pin_set (job, row, gauge, error)
      || !take_blocks (job, row, gauge, error)
      || !tm_take_date (TM_OWN (row, GAUGE_CALIBRATED), job, &gauge->calibrated, error)
      || !tm_take_date (TM_OWN (row, GAUGE_DUE), job, &gauge->due, error))
    return FALSE;
  fault = tm_gauge_fault (gauge);
  return fault == TM_GAUGE_FINE || fail_fault (TM_OWN (row, blame_gauge (fault, gauge)), fault, error);
}

gboolean
tm_read_gauge_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmGauge *gauge = tm_gauge_new ();
  TmAddStatus status;

  if (take_gauge (job, row, gauge, error))
    {
      status = tm_job_add_gauge (job, gauge);
      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, GAUGE_TAG), status, error);
    }
  tm_gauge_free (gauge);
  return FALSE;
}

/* The gauge that a row of its history names. */
static const TmGauge *
take_owner (TmJob *job, TmMember member, const char **tag, GError **error)
{
  const TmGauge *gauge;

  if (!tm_take_name (member, job, TRUE, tag, error))
    return NULL;
  gauge = tm_job_find_gauge (job, *tag);
  if (gauge == NULL)
    tm_read_add_fail (member, TM_ADD_NO_GAUGE, error);
  return gauge;
}

static gboolean
take_calibration_texts (TmJob *job, const TmJsonRow *row, TmCalibration *calibration, GError **error)
{
  TmMember outcome = TM_OWN (row, CALIBRATION_OUTCOME);
  TmMember date = TM_OWN (row, CALIBRATION_DATE);

  if (!tm_member_is_given (date))
    return fail_missing (date, _ ("missing; write the day of the calibration"), error);
  if (tm_member_is_given (outcome) && !g_str_equal (tm_member_text (outcome), "good")
      && !g_str_equal (tm_member_text (outcome), "bad"))
    return tm_member_fail_word (outcome, "good, bad", error);
  tm_take_text (outcome, job, &calibration->outcome);
  tm_take_text (TM_OWN (row, CALIBRATION_CERTIFICATE), job, &calibration->certificate);
  tm_take_text (TM_OWN (row, CALIBRATION_BY), job, &calibration->by);
  tm_take_text (TM_OWN (row, CALIBRATION_NOTE), job, &calibration->note);
  calibration->extra = tm_job_intern (job, row->extra->str);
  return tm_take_date (date, job, &calibration->date, error)
         && tm_take_date (TM_OWN (row, CALIBRATION_DUE), job, &calibration->due, error);
}

/* The member of a calibration that @fault lies in. */
static guint
blame_calibration (TmGaugeFault fault)
{
  if (fault == TM_GAUGE_DUE_BEFORE)
    return CALIBRATION_DUE;
  return fault == TM_GAUGE_COVERAGE ? CALIBRATION_COVERAGE : CALIBRATION_UNCERTAINTY;
}

static gboolean
take_calibration (TmJob *job, const TmJsonRow *row, TmCalibration *calibration, GError **error)
{
  const TmGauge *gauge = take_owner (job, TM_OWN (row, CALIBRATION_GAUGE), &calibration->gauge, error);
  TmGaugeFault fault;

  if (gauge == NULL || !take_calibration_texts (job, row, calibration, error)
      || !tm_take_spread_not_negative (TM_OWN (row, CALIBRATION_UNCERTAINTY), gauge->unit,
                                       &calibration->uncertainty, error)
      || !tm_take_above_zero (TM_OWN (row, CALIBRATION_COVERAGE), TM_UNIT_HARDNESS, "2",
                              &calibration->coverage, error)
      || !tm_take_spread (TM_OWN (row, CALIBRATION_ERROR), gauge->unit, &calibration->error, error))
    return FALSE;
  fault = tm_calibration_fault (gauge, calibration);
  return fault == TM_GAUGE_FINE || fail_fault (TM_OWN (row, blame_calibration (fault)), fault, error);
}

gboolean
tm_read_calibration_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmCalibration *calibration = tm_calibration_new ();

  if (take_calibration (job, row, calibration, error))
    {
      if (tm_job_add_calibration (job, calibration) == TM_ADD_OK)
        return TRUE;
      tm_member_fail (TM_OWN (row, CALIBRATION_DATE), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                      _ ("this gauge has a calibration of that day already; keep one of them"));
    }
  tm_calibration_free (calibration);
  return FALSE;
}

static gboolean
take_check (TmJob *job, const TmJsonRow *row, TmCheck *check, GError **error)
{
  const TmGauge *gauge = take_owner (job, TM_OWN (row, CHECK_GAUGE), &check->gauge, error);
  TmMember standard = TM_OWN (row, CHECK_STANDARD);
  TmMember reading = TM_OWN (row, CHECK_READING);
  TmGaugeFault fault;

  if (gauge == NULL || !tm_take_spread (standard, gauge->unit, &check->standard, error)
      || !tm_take_spread (reading, gauge->unit, &check->reading, error)
      || !tm_take_name (TM_OWN (row, CHECK_BY), job, FALSE, &check->by, error)
      || !tm_take_moment (TM_OWN (row, CHECK_AT), job, &check->at, error))
    return FALSE;
  if (!check->standard.given)
    return fail_missing (standard, _ ("missing; write the size of the standard"), error);
  if (!check->reading.given)
    return fail_missing (reading, _ ("missing; write what the gauge read on its standard"), error);
  tm_take_text (TM_OWN (row, CHECK_NOTE), job, &check->note);
  check->extra = tm_job_intern (job, row->extra->str);
  fault = tm_check_fault (gauge, check);
  return fault == TM_GAUGE_FINE || fail_fault (standard, fault, error);
}

gboolean
tm_read_check_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmCheck *check = tm_check_new ();

  if (take_check (job, row, check, error))
    {
      TmAddStatus status = tm_job_add_check (job, check);

      if (status == TM_ADD_OK)
        return TRUE;
      tm_read_add_fail (TM_OWN (row, CHECK_GAUGE), status, error);
    }
  tm_check_free (check);
  return FALSE;
}

static gboolean
take_pin_size (TmJob *job, const TmJsonRow *row, TmPinSize *pin, GError **error)
{
  const TmGauge *gauge = take_owner (job, TM_OWN (row, PIN_SIZE_GAUGE), &pin->gauge, error);
  TmMember size = TM_OWN (row, PIN_SIZE_SIZE);
  TmMember measured = TM_OWN (row, PIN_SIZE_MEASURED);
  TmGaugeFault fault;

  if (gauge == NULL || !tm_take_quantity (size, gauge->unit, &pin->size, error)
      || !tm_take_quantity (measured, gauge->unit, &pin->measured, error))
    return FALSE;
  if (!pin->size.given)
    return fail_missing (size, _ ("missing; write the size marked on the pin"), error);
  if (!pin->measured.given)
    return fail_missing (measured, _ ("missing; write the size that the pin was found to have"), error);
  pin->extra = tm_job_intern (job, row->extra->str);
  fault = tm_pin_size_fault (gauge, pin);
  return fault == TM_GAUGE_FINE || fail_fault (size, fault, error);
}

gboolean
tm_read_pin_size_row (TmJob *job, const TmJsonRow *row, GError **error)
{
  TmPinSize *pin = tm_pin_size_new ();

  if (take_pin_size (job, row, pin, error))
    {
      if (tm_job_add_pin_size (job, pin) == TM_ADD_OK)
        return TRUE;
      tm_member_fail (TM_OWN (row, PIN_SIZE_SIZE), TM_EXCHANGE_ERROR_BAD_VALUE, error,
                      _ ("the set has a measured size for that pin already; keep one of them"));
    }
  tm_pin_size_free (pin);
  return FALSE;
}
