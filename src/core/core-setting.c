/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-setting.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-temperature.h"

/* ISO 1: the temperature at which sizes are stated, °C. */
#define REFERENCE 20.0

/* 1e-6 / °C: no solid of a shop, plastics included, is beyond it (our own choice). */
#define EXPANSION_MOST 500.0

double
tm_length_gain (double length, double alpha, double from, double to)
{
  double before = 1 + alpha * 1e-6 * (from - REFERENCE);
  double gain = length * alpha * 1e-6 * (to - from) / before;

  return from >= TM_ABSOLUTE_ZERO && to >= TM_ABSOLUTE_ZERO && before > 0 && isfinite (length + gain) ? gain
                                                                                                      : NAN;
}

double
tm_length_at (double length, double alpha, double from, double to)
{
  return length + tm_length_gain (length, alpha, from, to);
}

static gboolean
is_expansion (double alpha)
{
  return isfinite (alpha) && fabs (alpha) <= EXPANSION_MOST;
}

static gboolean
is_temperature (double celsius)
{
  return celsius >= TM_TEMPERATURE_LEAST && celsius <= TM_TEMPERATURE_MOST;
}

static TmSettingStatus
check_input (const TmSettingInput *input)
{
  if (input->graduation <= 0)
    return TM_SETTING_BAD_GRADUATION;
  if (input->nominal <= 0 || input->standard <= 0)
    return TM_SETTING_BAD_SIZE;
  if (input->has_lower && input->has_upper && input->lower > input->upper)
    return TM_SETTING_BAD_LIMITS;
  if (!is_temperature (input->standard_temp) || !is_temperature (input->part_temp))
    return TM_SETTING_BAD_TEMPERATURE;
  if (!is_expansion (input->standard_alpha) || !is_expansion (input->part_alpha))
    return TM_SETTING_BAD_EXPANSION;
  if (ABS (input->standard - input->nominal) > TM_SETTING_REACH)
    return TM_SETTING_FAR;
  return TM_SETTING_OK;
}

/* What warmth adds to a length, counts. */
static double
find_growth (gint64 length, double alpha, double celsius)
{
  return (double)length * alpha * 1e-6 * (celsius - REFERENCE);
}

/* What the pointer shows of a part of this size at 20 °C: both it and nominal have grown. */
static double
find_pointer (const TmSettingInput *input, gint64 limit, double sign)
{
  TmWide beside = (TmWide)limit - input->nominal;

  return sign * (double)beside * (1 + input->part_alpha * 1e-6 * (input->part_temp - REFERENCE));
}

TmSettingStatus
tm_setting (const TmSettingInput *input, TmSetting *out)
{
  TmSettingStatus status;
  double sign, graduation;

  g_return_val_if_fail (input != NULL && out != NULL, TM_SETTING_BAD_SIZE);

  status = check_input (input);
  if (status != TM_SETTING_OK)
    return status;
  sign = input->reversed ? -1 : 1;
  graduation = (double)input->graduation;
  out->temperature = sign
                     * (find_growth (input->standard, input->standard_alpha, input->standard_temp)
                        - find_growth (input->nominal, input->part_alpha, input->part_temp));
  out->at_standard = sign * (double)(input->standard - input->nominal) + out->temperature;
  out->marks = llround (out->at_standard / graduation);
  out->left_over = out->at_standard - (double)out->marks * graduation;
  out->lower = input->has_lower ? find_pointer (input, input->lower, sign) : NAN;
  out->upper = input->has_upper ? find_pointer (input, input->upper, sign) : NAN;
  out->expanded
      = input->standard_expanded > 0 ? hypot (input->standard_expanded, 2 * graduation / sqrt (12)) : NAN;
  return TM_SETTING_OK;
}

const char *
tm_setting_status_word (TmSettingStatus status)
{
  static const char *const words[TM_N_SETTING_STATUSES] = {
    [TM_SETTING_OK] = NC_ ("setting status", "set"),
    [TM_SETTING_BAD_GRADUATION]
    = NC_ ("setting status", "the graduation must be above zero: what one mark of the dial stands for"),
    [TM_SETTING_BAD_SIZE] = NC_ ("setting status", "nominal and standard must both be above zero"),
    [TM_SETTING_BAD_LIMITS] = NC_ ("setting status", "the lower limit is above the upper; exchange them"),
    [TM_SETTING_BAD_TEMPERATURE]
    = NC_ ("setting status", "a temperature outside −20 to 60 °C; give it in degrees Celsius, as measured"),
    [TM_SETTING_BAD_EXPANSION] = NC_ (
        "setting status", "no coefficient of expansion that a solid has; steel has 11.5 millionths per °C"),
    [TM_SETTING_FAR]
    = NC_ ("setting status",
           "the standard is more than 2 mm away from nominal: no dial reaches so far; check both"),
  };

  g_return_val_if_fail ((guint)status < TM_N_SETTING_STATUSES, "");
  return words[status];
}
