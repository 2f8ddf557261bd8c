/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pin-evidence: the pins of a place beside its readings.
 */

#include <math.h>

#include "core-combine.h"
#include "core-correction.h"
#include "core-form.h"

/* Of a crowd of stations only the smallest is looked at, so that the work stays bounded. */
#define MOST_STATIONS 64

/* A pin of a set that is supposed to err is as much smaller as the set shows too much. */
static void
suppose_error (const TmJudgeOptions *options, const TmPinTrial *trial, TmPin *pin)
{
  if (!tm_error_is_supposed (options, trial->gauge, trial->row.at))
    return;
  pin->low = CLAMP (pin->low - options->error, -TM_COUNT_MAX, TM_COUNT_MAX);
  pin->high = CLAMP (pin->high - options->error, -TM_COUNT_MAX, TM_COUNT_MAX);
}

static guint
list_pins (const GPtrArray *trials, const TmJudgeOptions *options, TmPin *pins)
{
  guint n = 0;

  for (guint i = 0; i < trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (trials, i);

      if (!tm_row_counts (&trial->row)
          || !tm_pin_extent (trial->size.count, trial->pin_class, trial->sign, &trial->measured, &pins[n]))
        continue;
      suppose_error (options, trial, &pins[n]);
      pins[n].went = trial->went;
      pins[n++].trial = trial;
    }
  return n;
}

/* A perfect pin is stopped by the narrowest place: the smallest station's size stands beside the
 * pins. */
static gboolean
find_smallest (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
               const TmSizes *sizes, const TmJudgeOptions *options, TmPinSizeInput *out)
{
  gboolean is_crowd = sizes->n_stations > MOST_STATIONS;

  for (guint i = 0; i < sizes->n_stations; i++)
    {
      g_auto (TmCombined) combined = { 0 };

      if (is_crowd && i != sizes->smallest)
        continue;
      tm_combine_with (job, piece, feature, place, sizes->stations[i].station, options, &combined);
      if (isnan (combined.u)
          || (out->given
              && (double)((TmWide)combined.reference - out->reference) + combined.size >= out->size))
        continue;
      *out = (TmPinSizeInput) { TRUE, combined.reference, combined.size, combined.u, combined.dof, 0 };
    }
  return out->given;
}

/* F: as stated; else the out-of-round that the readings show; else, assumed, as much as the standard
 * uncertainty of the size: what the readings could not have shown. */
static void
find_form (const TmFeature *feature, const TmSizes *sizes, TmPinSizeInput *size, TmPinEvidence *out)
{
  const TmQuantity *stated = &feature->form_unseen;

  if (stated->given && stated->count >= 0 && tm_unit_dimension (stated->unit) == TM_DIMENSION_LENGTH)
    out->form = (double)stated->count;
  else if (!tm_form_out_of_round (feature, sizes, &out->form))
    {
      out->form = size->u;
      out->form_assumed = TRUE;
    }
  size->form = out->form;
}

gboolean
tm_pin_evidence (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                 gboolean with_readings, TmPinEvidence *out)
{
  return tm_pin_evidence_with (job, piece, feature, place, with_readings, NULL, out);
}

gboolean
tm_pin_evidence_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                      gboolean with_readings, const TmJudgeOptions *options, TmPinEvidence *out)
{
  const GPtrArray *trials;
  g_auto (TmSizes) sizes = { 0 };
  TmPinSizeInput size = { FALSE };
  TmLimits limits;
  guint n;

  g_return_val_if_fail (job != NULL && piece != NULL && feature != NULL && out != NULL, FALSE);
  *out = (TmPinEvidence) { NULL };
  trials = tm_job_pin_trials_at (job, piece, feature, place);
  if (trials == NULL || trials->len == 0 || !tm_pins_measure (feature))
    return FALSE;
  out->pins = g_new0 (TmPin, trials->len);
  n = list_pins (trials, options, out->pins);
  if (n == 0)
    {
      tm_pin_evidence_clear (out);
      return FALSE;
    }
  if (with_readings)
    tm_sizes_at (job, piece, feature, place, options, &sizes);
  if (find_smallest (job, piece, feature, place, &sizes, options, &size))
    find_form (feature, &sizes, &size, out);
  limits = tm_feature_limits (feature);
  tm_pins_judge (out->pins, n, &limits, tm_job_entry_clearance (job), &size, &out->result);
  return TRUE;
}

void
tm_pin_evidence_clear (TmPinEvidence *evidence)
{
  g_clear_pointer (&evidence->pins, g_free);
}
