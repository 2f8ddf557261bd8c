/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-edit-calibration: what hangs on a gauge: its calibrations, its checks on the standard, its measured
 * pins.
 */

#include "app-edit.h"

#include <glib/gi18n-lib.h>

/* The three texts of a gauge that follow its newest good calibration. */
typedef struct {
  const char *calibrated;
  const char *due;
  const char *certificate;
} Dates;

static Dates
get_dates (const TmGauge *gauge)
{
  return (Dates) { gauge->calibrated, gauge->due, gauge->certificate };
}

static void
set_dates (TmGauge *gauge, Dates dates)
{
  gauge->calibrated = dates.calibrated;
  gauge->due = dates.due;
  gauge->certificate = dates.certificate;
}

/* The gauge itself says what its newest good calibration says; dates on it that are newer still stand. */
static void
follow_newest (const TmJob *job, TmGauge *gauge)
{
  const TmCalibration *newest = tm_calibration_at (job, gauge->tag, NULL);

  if (newest != NULL && strcmp (newest->date, gauge->calibrated) >= 0)
    set_dates (gauge, (Dates) { newest->date, newest->due, newest->certificate });
}

/* Dates that stand on the gauge alone would be lost when newer ones take their place: they become a row of
 * its history.  Returns: that row, or NULL where none is needed. */
static TmCalibration *
keep_own_dates (TmJob *job, const TmGauge *gauge)
{
  const TmCalibration *newest = tm_calibration_at (job, gauge->tag, NULL);
  TmCalibration *own;

  if (*gauge->calibrated == '\0' || newest == NULL || strcmp (newest->date, gauge->calibrated) <= 0)
    return NULL;
  own = tm_calibration_new ();
  own->gauge = gauge->tag;
  own->date = gauge->calibrated;
  own->due = gauge->due;
  own->certificate = gauge->certificate;
  own->outcome = "good";
  if (tm_job_add_calibration (job, own) == TM_ADD_OK)
    return own;
  tm_calibration_free (own);
  return NULL;
}

/* The job knows no @tag, or what is wrong with the row: says so. */
static gboolean
refuse_row (const char *tag, const TmGauge *gauge, TmGaugeFault fault, GError **error)
{
  if (gauge == NULL)
    return tm_edit_refuse (tag, TM_ADD_NO_GAUGE, error);
  return tm_edit_refuse_fault (tag, fault, error);
}

gboolean
tm_edit_add_calibration (TmDocument *document, TmCalibration *calibration, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmGauge *gauge = tm_job_find_gauge (job, calibration->gauge);
  TmGaugeFault fault = gauge != NULL ? tm_calibration_fault (gauge, calibration) : TM_GAUGE_FINE;
  const char *tag = calibration->gauge;
  TmCalibration *own;
  TmAddStatus status;
  Dates before;

  if (gauge == NULL || fault != TM_GAUGE_FINE)
    {
      tm_calibration_free (calibration);
      return refuse_row (tag, gauge, fault, error);
    }
  status = tm_job_add_calibration (job, calibration);
  if (status != TM_ADD_OK)
    {
      g_autofree char *what = g_strdup_printf (_ ("%s, calibration of %s"), tag, calibration->date);

      tm_calibration_free (calibration);
      return tm_edit_refuse (what, status, error);
    }
  before = get_dates (gauge);
  own = keep_own_dates (job, gauge);
  follow_newest (job, gauge);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  set_dates (gauge, before);
  if (own != NULL)
    tm_job_remove_calibration (job, own);
  tm_job_remove_calibration (job, calibration);
  return FALSE;
}

/* Dates that came from the calibration which is taken away go back to the one before it. */
static void
unfollow (const TmJob *job, TmGauge *gauge, const char *date)
{
  if (!g_str_equal (gauge->calibrated, date))
    return;
  set_dates (gauge, (Dates) { "", "", "" });
  follow_newest (job, gauge);
}

gboolean
tm_edit_remove_calibration (TmDocument *document, TmCalibration *calibration, GError **error)
{
  TmJob *job = tm_document_job (document);
  TmGauge *gauge = tm_job_find_gauge (job, calibration->gauge);
  Dates before = get_dates (gauge);
  guint at = 0;

  g_ptr_array_find (job->calibrations, calibration, &at);
  g_ptr_array_steal_index (job->calibrations, at);
  unfollow (job, gauge, calibration->date);
  if (tm_document_save_definitions (document, error))
    {
      tm_calibration_free (calibration);
      return TRUE;
    }
  set_dates (gauge, before);
  g_ptr_array_insert (job->calibrations, (int)at, calibration);
  return FALSE;
}

gboolean
tm_edit_add_check (TmDocument *document, TmCheck *check, GError **error)
{
  TmJob *job = tm_document_job (document);
  const TmGauge *gauge = tm_job_find_gauge (job, check->gauge);
  TmGaugeFault fault = gauge != NULL ? tm_check_fault (gauge, check) : TM_GAUGE_FINE;
  const char *tag = check->gauge;

  if (gauge == NULL || fault != TM_GAUGE_FINE)
    {
      tm_check_free (check);
      return refuse_row (tag, gauge, fault, error);
    }
  tm_job_add_check (job, check);
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_check (job, check);
  return FALSE;
}

static void
free_check (gpointer row)
{
  tm_check_free (row);
}

gboolean
tm_edit_remove_check (TmDocument *document, TmCheck *check, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->checks, check, free_check, error);
}

gboolean
tm_edit_add_pin_size (TmDocument *document, TmPinSize *pin, GError **error)
{
  TmJob *job = tm_document_job (document);
  const TmGauge *gauge = tm_job_find_gauge (job, pin->gauge);
  TmGaugeFault fault = gauge != NULL ? tm_pin_size_fault (gauge, pin) : TM_GAUGE_FINE;
  const char *tag = pin->gauge;
  TmAddStatus status;

  if (gauge == NULL || fault != TM_GAUGE_FINE)
    {
      tm_pin_size_free (pin);
      return refuse_row (tag, gauge, fault, error);
    }
  status = tm_job_add_pin_size (job, pin);
  if (status != TM_ADD_OK)
    {
      g_autofree char *size = tm_quantity_format (&pin->size);
      g_autofree char *what = g_strdup_printf (_ ("%s, pin %s"), tag, size);

      tm_pin_size_free (pin);
      return tm_edit_refuse (what, status, error);
    }
  if (tm_document_save_definitions (document, error))
    return TRUE;
  tm_job_remove_pin_size (job, pin);
  return FALSE;
}

static void
free_pin_size (gpointer row)
{
  tm_pin_size_free (row);
}

gboolean
tm_edit_remove_pin_size (TmDocument *document, TmPinSize *pin, GError **error)
{
  return tm_edit_remove_row (document, tm_document_job (document)->pin_sizes, pin, free_pin_size, error);
}
