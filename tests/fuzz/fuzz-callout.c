/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Any bytes as a requirement or a fit: never a crash, never half a result, never limits from a text
 * that holds something not understood.
 */

#include "core-callout.h"
#include "fuzz-driver.h"

#include <string.h>

const char *const fuzz_seeds[] = {
  "Ø25 H7",
  "25.000/25.021",
  "1.250 ±.005",
  ".875 +.001 -.000",
  "25 +0.1/-0.2",
  "12 max",
  "R3 min",
  "4X Ø6.5 ±0.1",
  "Ra 1.6 µm",
  "90° ±0.5°",
  "1°30' ±10'",
  "M8x1.25 6H",
  "1/4-20 UNC-2B",
  "⌖ Ø0.2 Ⓜ A B C",
  "pos dia 0.2 mmc A B C",
  "⏥ 0.05",
  "total runout 0.02 A-B",
  "58-62 HRC",
  "700 HV10 min",
  "Ø25 H7 (25.021/25.000) Ⓔ",
  "1 3/16 +.005/-0",
  "↧ 12 ±0.1",
  "1 ±0.1 x 45°",
  "10 min 12 max",
  "25-26",
  "25 -0.1",
  "(25)",
  "40",
  "25 H7/p6",
  "25 H7 / 25 p6",
  NULL,
};

static void
check_ok (const TmCallout *callout)
{
  g_assert_cmpint (callout->kind, !=, TM_KIND_NOTE);
  g_assert_cmpint (callout->kind, <, TM_N_KINDS);
  g_assert_cmpuint (callout->places, >=, 1);
  g_assert_cmpuint (callout->n_datums, <=, TM_CALLOUT_MAX_DATUMS);
  for (guint i = 0; i < callout->n_datums; i++)
    g_assert_true (g_utf8_validate (callout->datums[i], -1, NULL) && callout->datums[i][0] != '\0');
  if (callout->kind == TM_KIND_THREAD)
    {
      g_assert_false (callout->lower.given || callout->upper.given);
      return;
    }
  g_assert_true (callout->lower.given || callout->upper.given);
  if (callout->lower.given && callout->upper.given)
    g_assert_cmpint (callout->lower.count, <, callout->upper.count);
  if (tm_kind_is_zero_bounded (callout->kind))
    g_assert_true (callout->upper.given && !callout->lower.given && !callout->nominal.given);
}

/* A limit is the number that its text says. */
static void
check_reads_back (const TmQuantity *limit, TmUnit unit)
{
  g_autofree char *text = tm_quantity_format (limit);
  TmQuantity back = TM_QUANTITY_NONE;

  if (!limit->given)
    return;
  g_assert_cmpint (tm_quantity_read (text, unit, &back), ==, TM_READ_OK);
  g_assert_cmpint (back.count, ==, limit->count);
}

static void
check_note (const TmCallout *callout)
{
  g_assert_cmpint (callout->kind, ==, TM_KIND_NOTE);
  g_assert_false (callout->nominal.given || callout->lower.given || callout->upper.given);
  g_assert_cmpuint (callout->places, ==, 1);
  g_assert_cmpuint (callout->n_datums, ==, 0);
}

/* Spaces around a text change nothing; a sign that no drawing has makes it a note. */
static void
check_relations (const char *text, TmUnit unit, const char *general, const TmCallout *callout)
{
  g_autofree char *padded = g_strconcat ("  ", text, " ", NULL);
  g_autofree char *spoilt = g_strconcat (text, " ~", NULL);
  TmCallout again = tm_callout_read (padded, unit, general);

  if (strlen (text) < 300)
    {
      g_assert_cmpint (again.status, ==, callout->status);
      g_assert_cmpint (again.lower.count, ==, callout->lower.count);
      g_assert_cmpint (again.upper.count, ==, callout->upper.count);
    }
  again = tm_callout_read (spoilt, unit, general);
  g_assert_cmpint (again.status, !=, TM_CALLOUT_OK);
  check_note (&again);
}

static void
check_callout (const char *text, TmUnit unit, const char *general)
{
  TmCallout callout = tm_callout_read (text, unit, general);

  g_assert_cmpint (callout.status, <, TM_N_CALLOUT_STATUSES);
  check_reads_back (&callout.nominal, callout.unit);
  check_reads_back (&callout.lower, callout.unit);
  check_reads_back (&callout.upper, callout.unit);
  if (callout.status == TM_CALLOUT_OK)
    check_ok (&callout);
  else
    check_note (&callout);
  check_relations (text, unit, general, &callout);
}

static void
check_fit (const char *text)
{
  TmFit fit = tm_fit_read (text);

  if (fit.status != TM_CALLOUT_OK)
    return;
  g_assert_cmpint (fit.hole_lower, <, fit.hole_upper);
  g_assert_cmpint (fit.shaft_lower, <, fit.shaft_upper);
  g_assert_cmpint (fit.clearance_min, <, fit.clearance_max);
}

int
LLVMFuzzerTestOneInput (const guint8 *data, gsize size)
{
  g_autofree char *text = g_strndup ((const char *)data, size);

  check_callout (text, TM_UNIT_MM, NULL);
  check_callout (text, TM_UNIT_MM, "ISO 2768-mK");
  check_callout (text, TM_UNIT_IN, ".X .1, .XX .01, .XXX .005, .XXXX .0005");
  check_callout ("Ø25", TM_UNIT_MM, text); /* the general tolerance is free text too */
  check_callout ("Ø.500", TM_UNIT_IN, text);
  check_fit (text);
  return 0;
}
