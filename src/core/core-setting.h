/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-setting: setting a comparing gauge on a standard (a dial bore gauge on a ring or between blocks), and
 * a length at another temperature.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  gint64 nominal;      /* the size that the pointer is to be zero at */
  gint64 standard;     /* the ring's or stack's own size at 20 °C, by its certificate */
  double standard_u;   /* its standard uncertainty, counts; 0: unknown */
  gint64 graduation;   /* of the dial, > 0 */
  gint64 lower, upper; /* limits of the feature, where given */
  gboolean has_lower, has_upper;
  gboolean reversed;                 /* the pointer falls when the size grows */
  double standard_alpha, part_alpha; /* 1e-6 / °C */
  double standard_temp, part_temp;   /* °C; both 20: nothing is corrected */
} TmSettingInput;

typedef enum {
  TM_SETTING_OK,
  TM_SETTING_BAD_GRADUATION,
  TM_SETTING_BAD_SIZE,
  TM_SETTING_BAD_TEMPERATURE,
  TM_SETTING_FAR, /* the standard is further from nominal than any dial reaches: a slip */
  TM_N_SETTING_STATUSES
} TmSettingStatus;

typedef struct {
  double at_standard;  /* what the pointer is set to on the standard, counts, for zero at nominal */
  gint64 marks;        /* the same in whole graduations, nearest */
  double left_over;    /* what the nearest mark leaves, counts: goes into every reading */
  double lower, upper; /* what the pointer shows at the limits; NAN: none */
  double temperature;  /* of it, what the temperatures make, counts */
} TmSetting;

TmSettingStatus tm_setting (const TmSettingInput *input, TmSetting *out);

/* A @length (counts) at @from °C when it is at @to °C; NAN for a temperature below absolute zero. */
double tm_length_at (double length, double alpha, double from, double to);

#define TM_ABSOLUTE_ZERO (-273.15)

const char *
tm_setting_status_word (TmSettingStatus status); /* marked for translation, context "setting status" */

G_END_DECLS
