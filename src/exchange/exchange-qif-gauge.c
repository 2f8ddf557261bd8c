/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The gauges of the job as the measurement devices of QIF, with their calibration.
 */

#include "core-gauge-kind.h"
#include "exchange-qif-private.h"

typedef enum { DEVICE_OTHER, DEVICE_GAGE, DEVICE_MICROMETER, DEVICE_CALIPER } Device;

/* Elements of the schema; a micrometer or caliper is not said to be digital or not. */
static const char *const elements[] = { "MeasurementDevice", "GageDevice", "Micrometer", "Caliper" };

static Device
find_device (const TmGaugeKind *kind)
{
  if (kind == NULL)
    return DEVICE_OTHER;
  if (strstr (kind->word, "micrometer") != NULL)
    return DEVICE_MICROMETER;
  if (g_str_equal (kind->word, "caliper"))
    return DEVICE_CALIPER;
  if (kind->contact == TM_CONTACT_FULL_FORM || g_str_equal (kind->word, "snap gauge"))
    return DEVICE_GAGE;
  return DEVICE_OTHER;
}

/* A day as the moment it begins, for fields that take no date. */
static void
put_day (TmQif *qif, const char *name, const char *day)
{
  g_autofree char *moment = g_strdup_printf ("%sT00:00:00Z", day);

  tm_qif_moment (qif, name, moment);
}

static gboolean
is_day (const char *day)
{
  g_autofree char *moment = g_strdup_printf ("%sT00:00:00Z", day);

  return tm_job_is_moment (moment);
}

/* QIF holds a calibration only with the day that it runs out. */
static gboolean
is_complete (const TmCalibration *calibration, const TmGauge *gauge)
{
  return g_str_equal (calibration->gauge, gauge->tag) && is_day (calibration->due)
         && !g_str_equal (calibration->outcome, "bad");
}

/* The dates on the gauge itself, unless a calibration states them. */
static gboolean
has_own_dates (const TmJob *job, const TmGauge *gauge)
{
  if (!is_day (gauge->due))
    return FALSE;
  for (guint i = 0; i < job->calibrations->len; i++)
    {
      const TmCalibration *one = g_ptr_array_index (job->calibrations, i);

      if (is_complete (one, gauge) && g_str_equal (one->due, gauge->due))
        return FALSE;
    }
  return TRUE;
}

static void
put_calibration (TmQif *qif, const char *date, const char *due)
{
  tm_qif_open (qif, "Calibration");
  if (*date != '\0')
    put_day (qif, "CalibrationDate", date);
  put_day (qif, "ExpirationDate", due);
  tm_qif_close (qif);
}

static void
put_calibrations (TmQif *qif, const TmGauge *gauge)
{
  const TmJob *job = qif->job;
  gboolean own = has_own_dates (job, gauge);
  guint n = own;

  for (guint i = 0; i < job->calibrations->len; i++)
    n += is_complete (g_ptr_array_index (job->calibrations, i), gauge);
  if (n == 0)
    return;
  tm_qif_open_list (qif, "Calibrations", n);
  for (guint i = 0; i < job->calibrations->len; i++)
    {
      const TmCalibration *one = g_ptr_array_index (job->calibrations, i);

      if (is_complete (one, gauge))
        put_calibration (qif, one->date, one->due);
    }
  if (own)
    put_calibration (qif, gauge->calibrated, gauge->due);
  tm_qif_close (qif);
}

static void
add_quantity (TmQifNotes *notes, const char *name, const TmQuantity *quantity)
{
  g_autofree char *text = quantity->given ? tm_quantity_format_in (quantity, TM_UNIT_NONE) : g_strdup ("");

  tm_qif_notes_add (notes, name, text);
}

static void
put_notes (TmQif *qif, const TmGauge *gauge)
{
  TmQifNotes notes;

  tm_qif_notes_init (&notes);
  tm_qif_notes_add (&notes, "CalibrationCertificate", gauge->certificate);
  if (*gauge->due == '\0')
    tm_qif_notes_add (&notes, "Calibrated", gauge->calibrated);
  add_quantity (&notes, "Resolution", &gauge->resolution);
  add_quantity (&notes, "LimitOfError", &gauge->error_limit);
  tm_qif_notes_add (&notes, "Owner", gauge->owner);
  tm_qif_notes_write (qif, &notes);
}

static gboolean
is_length (const TmQuantity *quantity)
{
  return quantity->given && tm_unit_dimension ((TmUnit)quantity->unit) == TM_DIMENSION_LENGTH;
}

static void
put_range (TmQif *qif, const TmGauge *gauge)
{
  if (is_length (&gauge->range_from))
    tm_qif_quantity (qif, "MinMeasuringDistance", &gauge->range_from, TM_QIF_LINEAR);
  if (is_length (&gauge->range_to))
    tm_qif_quantity (qif, "MaxMeasuringDistance", &gauge->range_to, TM_QIF_LINEAR);
}

static void
put_resolution (TmQif *qif, const TmGauge *gauge)
{
  if (!is_length (&gauge->resolution))
    return;
  tm_qif_open (qif, "LinearResolution");
  tm_qif_quantity (qif, "LinearValue", &gauge->resolution, TM_QIF_LINEAR);
  tm_qif_close (qif);
}

static void
put_reach (TmQif *qif, const TmGauge *gauge, const TmGaugeKind *kind, Device device)
{
  if (device == DEVICE_OTHER)
    return;
  put_range (qif, gauge);
  if (device == DEVICE_GAGE)
    return;
  put_resolution (qif, gauge);
  if (device == DEVICE_MICROMETER && kind->measures_inside != kind->measures_outside)
    tm_qif_text (qif, "InternalExternal", kind->measures_inside ? "INTERNAL" : "EXTERNAL");
}

static void
put_gauge (TmQif *qif, const TmGauge *gauge, guint id)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);
  Device device = find_device (kind);

  tm_qif_open_id (qif, elements[device], id);
  tm_qif_text (qif, "Name", gauge->tag);
  tm_qif_maybe (qif, "Description", gauge->kind);
  tm_qif_maybe (qif, "SerialNumber", gauge->serial);
  put_notes (qif, gauge);
  put_calibrations (qif, gauge);
  put_reach (qif, gauge, kind, device);
  tm_qif_close (qif);
}

void
tm_qif_gauges (TmQif *qif)
{
  const GPtrArray *gauges = qif->job->gauges;

  if (gauges->len == 0)
    return;
  tm_qif_open (qif, "MeasurementResources");
  tm_qif_open_list (qif, "MeasurementDevices", gauges->len);
  for (guint i = 0; i < gauges->len; i++)
    put_gauge (qif, g_ptr_array_index (gauges, i), qif->gauge + i);
  tm_qif_close (qif);
  tm_qif_close (qif);
}
