/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-setting: setting a comparing gauge on a standard (a dial bore gauge on a ring or between blocks), and
 * a length at another temperature.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

typedef struct {
  gint64 nominal;           /* the size that the pointer is to be zero at */
  gint64 standard;          /* the ring's or stack's own size at 20 °C, by its certificate */
  double standard_expanded; /* its expanded uncertainty (k = 2), counts; 0: unknown */
  gint64 graduation;        /* of the dial, > 0 */
  gint64 lower, upper;      /* limits of the feature, where given */
  gboolean has_lower, has_upper;
  gboolean reversed;                 /* the pointer falls when the size grows */
  double standard_alpha, part_alpha; /* 1e-6 / °C */
  double standard_temp, part_temp; /* °C, as tm_temperature_may_be() allows; both 20: nothing is corrected */
} TmSettingInput;

typedef enum {
  TM_SETTING_OK,
  TM_SETTING_BAD_GRADUATION,
  TM_SETTING_BAD_SIZE,   /* nominal or standard not above zero */
  TM_SETTING_BAD_LIMITS, /* the lower above the upper */
  TM_SETTING_BAD_TEMPERATURE,
  TM_SETTING_BAD_EXPANSION, /* no coefficient that a solid has */
  TM_SETTING_FAR,           /* the standard is further than TM_SETTING_REACH from nominal: a slip */
  TM_N_SETTING_STATUSES
} TmSettingStatus;

/* No dial of a comparing gauge reaches further from its zero (our own choice): 2 mm. */
#define TM_SETTING_REACH G_GINT64_CONSTANT (2000000000)

/* All as the pointer counts: falling with the size where it is reversed. */
typedef struct {
  double at_standard;  /* what the pointer is set to on the standard, counts, for zero at nominal */
  gint64 marks;        /* the same in whole graduations, nearest */
  double left_over;    /* at_standard - marks: where the pointer is set to the mark, to be added to every
                        * reading */
  double lower, upper; /* what the pointer shows at the limits, zero at nominal; NAN: none */
  double temperature;  /* of at_standard, what the temperatures make, counts */
  double expanded;     /* uncertainty of the setting, k = 2: the standard's, and half a graduation either
                        * way, rectangular; NAN where the standard's is unknown */
} TmSetting;

/* The part, of its size at 20 °C, and the standard are compared as they are: at_standard = S (1 + αs θs) -
 * N (1 + αp θp).  @out is written only on TM_SETTING_OK. */
TmSettingStatus tm_setting (const TmSettingInput *input, TmSetting *out);

/* A @length (any unit) at @from °C when it is at @to °C: L (1 + α (to - 20)) / (1 + α (from - 20)), @alpha in
 * 1e-6 / °C, near 20 °C (ISO 1).  NAN for a temperature below absolute zero, and for what is no number. */
double tm_length_at (double length, double alpha, double from, double to);
/* What it is longer there, without the loss of a difference; NAN likewise. */
double tm_length_gain (double length, double alpha, double from, double to);

#define TM_ABSOLUTE_ZERO (-273.15)

/* One line for people, marked for translation, context "setting status". */
const char *tm_setting_status_word (TmSettingStatus status);

G_END_DECLS
