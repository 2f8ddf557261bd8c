/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge-words: the words of a judgement, as the job file's tools and the screen write them.
 */

#include <glib/gi18n-lib.h>

#include "core-judge.h"

static const char *const verdict_words[TM_N_VERDICTS] = {
  [TM_VERDICT_NOT_MEASURED] = NC_ ("verdict", "not measured"),
  [TM_VERDICT_IN] = NC_ ("verdict", "in"),
  [TM_VERDICT_OUT] = NC_ ("verdict", "out"),
  [TM_VERDICT_TOO_CLOSE] = NC_ ("verdict", "too close"),
};

static const char *const side_words[] = {
  [TM_SIDE_NONE] = "",
  [TM_SIDE_METAL_LEFT] = NC_ ("side", "metal left"),
  [TM_SIDE_METAL_GONE] = NC_ ("side", "metal gone"),
};

static const char *const settles_words[] = {
  [TM_SETTLES_UNKNOWN] = "",
  [TM_SETTLES] = NC_ ("settles", "settles"),
  [TM_SETTLES_MOSTLY] = NC_ ("settles", "mostly"),
  [TM_SETTLES_SELDOM] = NC_ ("settles", "seldom"),
  [TM_SETTLES_CANNOT] = NC_ ("settles", "cannot"),
};

static const char *const counted_words[TM_N_COUNTED] = {
  [TM_COUNTED_READINGS] = NC_ ("counted", "readings"),
  [TM_COUNTED_COMBINED] = NC_ ("counted", "combined"),
  [TM_COUNTED_PINS] = NC_ ("counted", "pins"),
};

static const char *const why_words[TM_N_WHYS] = {
  [TM_WHY_NONE] = "",
  [TM_WHY_NO_METHOD] = NC_ ("why", "no method"),
  [TM_WHY_METHOD_NOT_GOOD] = NC_ ("why", "method not good enough"),
  [TM_WHY_NO_ERROR_LIMIT] = NC_ ("why", "limit of error unknown"),
  [TM_WHY_FEW_READINGS] = NC_ ("why", "few readings"),
  [TM_WHY_STATIONS_MISSING] = NC_ ("why", "stations missing"),
  [TM_WHY_NO_SIZE] = NC_ ("why", "size not measured"),
  [TM_WHY_NO_LIMITS] = NC_ ("why", "no limits"),
  [TM_WHY_ASSUMED] = NC_ ("why", "assumed uncertainty"),
  [TM_WHY_OUT_OF_RANGE] = NC_ ("why", "gauge out of its range"),
  [TM_WHY_OVERDUE] = NC_ ("why", "gauge overdue"),
  [TM_WHY_CHECK_ASKED] = NC_ ("why", "check the gauge on its standard"),
  [TM_WHY_PINS_CONTRADICT] = NC_ ("why", "pins contradict"),
  [TM_WHY_METHODS_DISAGREE] = NC_ ("why", "methods disagree"),
  [TM_WHY_PINS_OPEN] = NC_ ("why", "pins leave the band open"),
};

const char *
tm_verdict_word (TmVerdict verdict)
{
  g_return_val_if_fail ((guint)verdict < G_N_ELEMENTS (verdict_words), "");
  return verdict_words[verdict];
}

const char *
tm_side_word (TmSide side)
{
  g_return_val_if_fail ((guint)side < G_N_ELEMENTS (side_words), "");
  return side_words[side];
}

const char *
tm_settles_word (TmSettles settles)
{
  g_return_val_if_fail ((guint)settles < G_N_ELEMENTS (settles_words), "");
  return settles_words[settles];
}

const char *
tm_counted_word (TmCounted counted)
{
  g_return_val_if_fail ((guint)counted < G_N_ELEMENTS (counted_words), "");
  return counted_words[counted];
}

const char *
tm_why_word (TmWhy why)
{
  g_return_val_if_fail ((guint)why < G_N_ELEMENTS (why_words), "");
  return why_words[why];
}
