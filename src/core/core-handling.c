/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-handling.h"

#include <glib/gi18n-lib.h>
#include <math.h>

double
tm_handling_tilt_error (double diameter, double tilt)
{
  /* 1 / cos t - 1 without the loss of digits of small angles. */
  const double half = sin (tilt * G_PI / 360);

  return diameter * 2 * half * half / cos (tilt * G_PI / 180);
}

double
tm_handling_chord_error (double diameter, double offset)
{
  const double across = 2 * offset;

  return -across * across / (diameter + sqrt (MAX (0, diameter * diameter - across * across)));
}

TmHandling
tm_handling_of (const TmJob *job, const TmFeature *feature, const char *method)
{
  const TmGaugeKind *kind = tm_method_touching (job, method);

  if (kind == NULL || !kind->measures_inside || tm_feature_cut (feature) != TM_CUT_GROWS
      || (feature->kind != TM_KIND_BORE && feature->kind != TM_KIND_DIAMETER))
    return TM_HANDLING_NONE;
  switch (kind->contact)
    {
    case TM_CONTACT_TWO_POINT:
      return TM_HANDLING_INSIDE;
    case TM_CONTACT_THREE_POINT:
      return TM_HANDLING_LEANS;
    case TM_CONTACT_OTHER:
    case TM_CONTACT_FULL_FORM:
    default:
      return TM_HANDLING_NONE;
    }
}

const char *
tm_handling_text (TmHandling handling)
{
  static const char *const texts[] = {
    [TM_HANDLING_NONE] = "",
    [TM_HANDLING_INSIDE] = N_ ("Rock the gauge: the size is the largest across and the smallest along."),
    [TM_HANDLING_LEANS] = N_ ("Rock the gauge along the axis: the size is the smallest reading."),
  };

  return handling < G_N_ELEMENTS (texts) ? texts[handling] : "";
}
