/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-blind: what form the gauges used at a place cannot see, and whether a full-form pin is asked for.
 */

#include <glib/gi18n-lib.h>

#include "core-contact.h"
#include "core-form.h"
#include "core-pins.h"

/* -------- What is not seen -------- */

static const char *
get_method (const TmFeature *feature, const TmReading *reading)
{
  return *reading->method != '\0' ? reading->method : feature->method;
}

/* TRUE when each reading that counts was taken by @contact; @readings may be NULL. */
static gboolean
all_touch (const TmJob *job, const TmFeature *feature, const GPtrArray *readings, TmContact contact)
{
  const char *last = NULL;

  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);
      const char *method = get_method (feature, reading);

      if (!tm_row_counts (&reading->row) || method == last)
        continue;
      if (tm_method_contact (job, method) != contact)
        return FALSE;
      last = method;
    }
  return TRUE;
}

/* A trial of a bore's pin or a shaft's ring that could only pass where no form reaches beyond the
 * maximum material size. */
static gboolean
shows_form (const TmFeature *feature, const TmPinTrial *trial)
{
  const gboolean outside = tm_feature_cut (feature) == TM_CUT_SHRINKS;
  TmPin pin;

  if (!trial->went || !tm_row_counts (&trial->row)
      || !tm_pin_extent (trial->size.count, trial->pin_class, trial->sign, &trial->measured, &pin))
    return FALSE;
  return outside ? pin.high <= feature->upper.count : pin.low >= feature->lower.count;
}

static gboolean
has_maximum_material (const TmFeature *feature)
{
  switch (tm_feature_cut (feature))
    {
    case TM_CUT_GROWS:
      return feature->lower.given;
    case TM_CUT_SHRINKS:
      return feature->upper.given;
    case TM_CUT_UNKNOWN:
    default:
      return FALSE;
    }
}

static gboolean
has_shown_form (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  const GPtrArray *trials = tm_job_pin_trials_at (job, piece, feature, place);

  for (guint i = 0; has_maximum_material (feature) && trials != NULL && i < trials->len; i++)
    if (shows_form (feature, g_ptr_array_index (trials, i)))
      return TRUE;
  return FALSE;
}

TmBlind
tm_form_blind (const TmJob *job, const TmFeature *feature, const TmSizes *sizes)
{
  const TmReading *one = sizes->n_stations > 0 ? sizes->stations[0].last : NULL;
  const GPtrArray *readings;
  TmContact contact;

  if (one == NULL || !tm_feature_is_diameter (feature))
    return TM_BLIND_NONE;
  contact = tm_method_contact (job, sizes->stations[0].method_name);
  if (contact != TM_CONTACT_TWO_POINT && contact != TM_CONTACT_THREE_POINT)
    return TM_BLIND_NONE;
  readings = tm_job_readings_at (job, one->row.piece, feature, one->place);
  if (!all_touch (job, feature, readings, contact))
    return TM_BLIND_NONE;
  if (contact == TM_CONTACT_THREE_POINT)
    return TM_BLIND_OVAL;
  return has_shown_form (job, one->row.piece, feature, one->place) ? TM_BLIND_NONE : TM_BLIND_ODD_LOBES;
}

const char *
tm_blind_text (TmBlind blind)
{
  static const char *const texts[] = {
    [TM_BLIND_NONE] = "",
    [TM_BLIND_ODD_LOBES] = N_ ("Two-point gauges cannot see an odd number of lobes."),
    [TM_BLIND_OVAL] = N_ ("Three-point gauges cannot see an oval."),
  };

  return blind < G_N_ELEMENTS (texts) ? texts[blind] : "";
}

/* -------- Perfect form at the maximum material size -------- */

static gboolean
asks_perfect_form (const TmJob *job, const TmFeature *feature)
{
  if (tm_kind_is_attribute (feature->kind) || tm_kind_is_zero_bounded (feature->kind))
    return FALSE;
  return feature->envelope || (job->standard == TM_STANDARD_ASME && tm_feature_is_diameter (feature));
}

gboolean
tm_form_asks_pin (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place)
{
  return asks_perfect_form (job, feature) && has_maximum_material (feature)
         && !has_shown_form (job, piece, feature, place);
}
