/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-pin-class: how large a pin marked with a size, a class and a sign may truly be.
 */

#include "core-pins.h"

#include "core-pin-class.h"

#define MILLIONTH G_GINT64_CONSTANT (25400) /* of an inch, in picometres */

/* Plain cylindrical gauge-maker tolerances of ASME B89.1.5, as published in US Army TM 9-243 and in
 * calibration tables: upper ends of the ranges of size in thousandths of an inch (above the one
 * before, up to and including), and the total tolerance of each class in millionths. */
static const int range_ends[TM_N_PIN_RANGES + 1] = { 10, 825, 1510, 2510, 4510, 6510, 9010, 12010 };

static const struct {
  const char *name;
  int tolerance[TM_N_PIN_RANGES];
} classes[] = {
  { "XXX", { 10, 15, 20, 25, 33, 40, 50 } },      { "XX", { 20, 30, 40, 50, 65, 80, 100 } },
  { "X", { 40, 60, 80, 100, 130, 160, 200 } },    { "Y", { 70, 90, 120, 150, 190, 240, 300 } },
  { "Z", { 100, 120, 160, 200, 250, 320, 400 } }, { "ZZ", { 200, 240, 320, 400, 500, 640, 800 } },
};

const char *
tm_pin_class_nth (guint n)
{
  return n < G_N_ELEMENTS (classes) ? classes[n].name : NULL;
}

static int
find_class (const char *name)
{
  for (guint i = 0; name != NULL && i < G_N_ELEMENTS (classes); i++)
    if (g_ascii_strcasecmp (classes[i].name, name) == 0)
      return (int)i;
  return -1;
}

gboolean
tm_pin_class_known (const char *pin_class)
{
  return find_class (pin_class) >= 0;
}

gboolean
tm_pin_range_get (const char *pin_class, guint index, TmPinRange *out)
{
  int found = find_class (pin_class);

  if (found < 0 || index >= TM_N_PIN_RANGES)
    return FALSE;
  *out = (TmPinRange) {
    range_ends[index] * 1000 * MILLIONTH + (index > 0),
    range_ends[index + 1] * 1000 * MILLIONTH,
    classes[found].tolerance[index] * MILLIONTH,
  };
  return TRUE;
}

gint64
tm_pin_class_tolerance (const char *pin_class, gint64 size)
{
  TmPinRange range;

  for (guint i = 0; tm_pin_range_get (pin_class, i, &range); i++)
    if (size >= range.from && size <= range.to)
      return range.tolerance;
  return 0;
}

gboolean
tm_pin_extent (gint64 size, const char *pin_class, TmPinSign sign, const TmQuantity *measured, TmPin *out)
{
  gint64 tolerance = tm_pin_class_tolerance (pin_class, size);

  g_return_val_if_fail (out != NULL, FALSE);
  if (measured != NULL && measured->given && measured->count > 0
      && tm_unit_dimension (measured->unit) == TM_DIMENSION_LENGTH)
    *out = (TmPin) { .low = measured->count, .high = measured->count };
  else if (tolerance > 0)
    *out = (TmPin) { .low = sign == TM_PIN_MINUS ? size - tolerance : size,
                     .high = sign == TM_PIN_PLUS ? size + tolerance : size };
  else
    return FALSE;
  return TRUE;
}

gboolean
tm_pins_measure (const TmFeature *feature)
{
  return tm_unit_dimension (feature->unit) == TM_DIMENSION_LENGTH && !tm_kind_is_zero_bounded (feature->kind)
         && !tm_kind_is_attribute (feature->kind) && tm_feature_cut (feature) != TM_CUT_SHRINKS;
}

gint64
tm_job_entry_clearance (const TmJob *job)
{
  const TmQuantity *stated = &job->entry_clearance;

  if (!stated->given || stated->count < 0 || tm_unit_dimension (stated->unit) != TM_DIMENSION_LENGTH)
    return TM_PIN_ENTRY_CLEARANCE;
  return MIN (stated->count, TM_PIN_CLEARANCE_MOST);
}
