/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A gauge set on a ring, and a length at another temperature (ISO 1).
 */

#include <math.h>

#include "core-setting.h"
#include "core-temperature.h"

#define UM 1e6
#define MM G_GINT64_CONSTANT (1000000000)

/* g_assert_cmpfloat_with_epsilon() would let a NAN through in a negated form; this does not. */
static void
assert_near (double value, double wanted, double within)
{
  g_assert_true (fabs (value - wanted) <= within);
}

/* T1 of the worked cases (recomputed): aluminium 6061 and a steel micrometer, both at 25 °C, 100.0000
 * indicated: the part is as long as the micrometer's 100 mm at 25 °C, and 99.993951 at 20 °C.  T4: a steel
 * part at 30 °C, read as 50.0000 by a micrometer at 20 °C: 49.994251.  T6: a steel pin in an aluminium bore
 * of 25 mm gains 0.00605 mm of clearance from 20 to 40 °C.  To the last digit given. */
static void
test_length_at (void)
{
  double warm = tm_length_at (100, 11.5, 20, 25);

  assert_near (tm_length_at (warm, 23.6, 25, 20), 99.993951, 5e-7);
  assert_near (tm_length_at (50, 11.5, 30, 20), 49.994251, 5e-7);
  assert_near (tm_length_at (25, 23.6, 20, 40) - tm_length_at (25, 11.5, 20, 40), 0.00605, 5e-9);
  assert_near (tm_length_at (tm_length_at (7, 17, 20, 90), 17, 90, 20), 7, 1e-14);
  g_assert_cmpfloat (tm_length_at (7, 17, 35, 35), ==, 7);
  /* 100 mm of steel warmed by 10 °C: 11.5 µm (hand arithmetic). */
  assert_near (tm_length_gain (100, 11.5, 20, 30), 0.0115, 1e-12);
}

static void
test_length_nowhere (void)
{
  g_assert_true (isnan (tm_length_at (50, 11.5, 20, -273.16)));
  g_assert_true (isnan (tm_length_at (50, 11.5, -300, 20)));
  g_assert_true (isnan (tm_length_at (NAN, 11.5, 20, 30)));
  g_assert_true (isnan (tm_length_at (50, INFINITY, 20, 30)));
  g_assert_true (isnan (tm_length_at (50, 1e5, -273, 20)));
  g_assert_true (isnan (tm_length_at (1e308, 500, 20, 1e9)));
  g_assert_false (isnan (tm_length_at (50, 11.5, 20, TM_ABSOLUTE_ZERO)));
}

static TmSettingInput
make_input (void)
{
  return (TmSettingInput) { .nominal = 25 * MM + 10 * MM / 1000,
                            .standard = 25 * MM + 2300000,
                            .graduation = MM / 1000,
                            .lower = 25 * MM,
                            .upper = 25 * MM + 21 * MM / 1000,
                            .has_lower = TRUE,
                            .has_upper = TRUE,
                            .standard_alpha = 11.5,
                            .part_alpha = 23.6,
                            .standard_temp = 20,
                            .part_temp = 20 };
}

/* Hand arithmetic: Ø25 H7 (25.000 to 25.021, ISO 286-2), zero at 25.010, a ring of 25.0023: the ring is
 * 7.7 µm below zero, the pointer goes to -8 marks of 1 µm, and 0.3 µm is left to be added.  The limits show
 * as -10 and +11 µm. */
static void
test_ring (void)
{
  TmSettingInput input = make_input ();
  TmSetting setting;

  g_assert_cmpint (tm_setting (&input, &setting), ==, TM_SETTING_OK);
  assert_near (setting.at_standard, -7.7 * UM, 1e-6);
  g_assert_cmpint (setting.marks, ==, -8);
  assert_near (setting.left_over, 0.3 * UM, 1e-6);
  assert_near (setting.lower, -10 * UM, 1e-6);
  assert_near (setting.upper, 11 * UM, 1e-6);
  g_assert_cmpfloat (setting.temperature, ==, 0);
  g_assert_true (isnan (setting.expanded));
}

/* The same with a dial whose pointer falls when the bore grows: every sign turns. */
static void
test_reversed (void)
{
  TmSettingInput input = make_input ();
  TmSetting setting;

  input.reversed = TRUE;
  g_assert_cmpint (tm_setting (&input, &setting), ==, TM_SETTING_OK);
  assert_near (setting.at_standard, 7.7 * UM, 1e-6);
  g_assert_cmpint (setting.marks, ==, 8);
  assert_near (setting.left_over, -0.3 * UM, 1e-6);
  assert_near (setting.lower, 10 * UM, 1e-6);
  assert_near (setting.upper, -11 * UM, 1e-6);
}

/* Ring at 20 °C, aluminium part at 24 °C (hand arithmetic): a bore of 25.010 is then 25.010 · 23.6e-6 · 4 =
 * 2.360944 µm larger, so that the ring lies 7.7 + 2.361 µm below where the pointer is to be zero.  Both at
 * 24 °C: the steel ring gives 25.0023 · 11.5e-6 · 4 = 1.1501058 µm back. */
static void
test_warm (void)
{
  TmSettingInput input = make_input ();
  TmSetting setting;

  input.part_temp = 24;
  g_assert_cmpint (tm_setting (&input, &setting), ==, TM_SETTING_OK);
  assert_near (setting.temperature, -2.360944 * UM, 1e-3);
  assert_near (setting.at_standard, -10.060944 * UM, 1e-3);
  input.standard_temp = 24;
  g_assert_cmpint (tm_setting (&input, &setting), ==, TM_SETTING_OK);
  assert_near (setting.temperature, (1.1501058 - 2.360944) * UM, 1e-3);
}

/* The setting's own uncertainty (k = 2), hand arithmetic: 0.8 µm of the ring with 2 · 1 µm / √12 = 0.57735 µm
 * of half a mark either way: 0.986577 µm. */
static void
test_uncertainty (void)
{
  TmSettingInput input = make_input ();
  TmSetting setting;

  input.standard_expanded = 0.8 * UM;
  g_assert_cmpint (tm_setting (&input, &setting), ==, TM_SETTING_OK);
  assert_near (setting.expanded, 0.986577 * UM, 1);
}

static void
test_one_limit (void)
{
  TmSettingInput input = make_input ();
  TmSetting setting;

  input.has_lower = FALSE;
  g_assert_cmpint (tm_setting (&input, &setting), ==, TM_SETTING_OK);
  g_assert_true (isnan (setting.lower));
  assert_near (setting.upper, 11 * UM, 1e-6);
}

static void
assert_refused (const TmSettingInput *input, TmSettingStatus wanted)
{
  TmSetting setting;

  g_assert_cmpint (tm_setting (input, &setting), ==, wanted);
  g_assert_cmpstr (tm_setting_status_word (wanted), !=, "");
}

static void
test_refused (void)
{
  TmSettingInput input = make_input ();

  input.graduation = 0;
  assert_refused (&input, TM_SETTING_BAD_GRADUATION);
  input = make_input ();
  input.standard = 0;
  assert_refused (&input, TM_SETTING_BAD_SIZE);
  input = make_input ();
  input.lower = input.upper + 1;
  assert_refused (&input, TM_SETTING_BAD_LIMITS);
  input = make_input ();
  input.part_temp = 72;
  assert_refused (&input, TM_SETTING_BAD_TEMPERATURE);
  input.part_temp = NAN;
  assert_refused (&input, TM_SETTING_BAD_TEMPERATURE);
  input = make_input ();
  input.part_alpha = INFINITY;
  assert_refused (&input, TM_SETTING_BAD_EXPANSION);
  input = make_input ();
  input.standard = input.nominal + TM_SETTING_REACH + 1;
  assert_refused (&input, TM_SETTING_FAR);
  input.standard = G_MAXINT64;
  assert_refused (&input, TM_SETTING_FAR);
  input.standard = input.nominal + TM_SETTING_REACH;
  assert_refused (&input, TM_SETTING_OK);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/setting/length-at", test_length_at);
  g_test_add_func ("/setting/length-nowhere", test_length_nowhere);
  g_test_add_func ("/setting/ring", test_ring);
  g_test_add_func ("/setting/reversed", test_reversed);
  g_test_add_func ("/setting/warm", test_warm);
  g_test_add_func ("/setting/uncertainty", test_uncertainty);
  g_test_add_func ("/setting/one-limit", test_one_limit);
  g_test_add_func ("/setting/refused", test_refused);
  return g_test_run ();
}
