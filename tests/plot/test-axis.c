/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The axis maps values to 0..1, whatever range it is asked for, and its ticks are round numbers of
 * its unit; ranges hold what must be seen.
 */

#include <glib.h>
#include <math.h>

#include "plot-axis.h"
#include "plot-range.h"

#define MM 1e9
#define IN 25.4e9

static void
test_mapping (void)
{
  const TmAxis axis = tm_axis_new (25.0 * MM, 25.02 * MM, TM_UNIT_MM);

  g_assert_cmpfloat (tm_axis_fraction (&axis, 25.0 * MM), ==, 0.0);
  g_assert_cmpfloat (tm_axis_fraction (&axis, 25.02 * MM), ==, 1.0);
  /* Doubles of 2.5e10 counts: exact to a few parts in 1e9 of the range. */
  g_assert_cmpfloat_with_epsilon (tm_axis_fraction (&axis, 25.005 * MM), 0.25, 1e-9);
  g_assert_cmpfloat (tm_axis_fraction (&axis, 24.99 * MM), <, 0.0);
  g_assert_cmpfloat (tm_axis_fraction (&axis, 25.03 * MM), >, 1.0);
}

static void
test_degenerate (void)
{
  const double ends[] = { 0.0, -0.0, 1.0, -1.0, 1e9, 4e18, -4e18, 1e300, -1e300, NAN, INFINITY, -INFINITY };

  for (gsize i = 0; i < G_N_ELEMENTS (ends); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (ends); k++)
      for (int unit = 0; unit < TM_N_UNITS; unit++)
        {
          const TmAxis axis = tm_axis_new (ends[i], ends[k], (TmUnit)unit);
          const TmTicks ticks = tm_axis_ticks (&axis, 8);

          g_assert_true (isfinite (axis.low) && isfinite (axis.high) && axis.low < axis.high);
          g_assert_cmpint (ticks.step, >, 0);
          g_assert_cmpuint (ticks.n, <=, 9);
          g_assert_cmpint (tm_ticks_minor_step (&ticks), >, 0);
        }
}

static void
test_ticks (void)
{
  /* Counts: 1 mm = 1e9, 1 in = 25.4e9, 1° = 3.6e9, 1 µm = 1e6, one thing = 1. */
  static const struct {
    double low, high;
    TmUnit unit;
    guint most;
    gint64 step;
    guint decimals;
    gint64 first;
  } cases[] = {
    { 24.992 * MM, 25.041 * MM, TM_UNIT_MM, 6, 10000000, 2, G_GINT64_CONSTANT (25000000000) },
    { 25.0 * MM, 25.021 * MM, TM_UNIT_MM, 5, 5000000, 3, G_GINT64_CONSTANT (25000000000) },
    { 0.7497 * IN, 0.7512 * IN, TM_UNIT_IN, 4, 12700000, 4, G_GINT64_CONSTANT (19050000000) },
    { 28.5 * 3.6e9, 31.5 * 3.6e9, TM_UNIT_DEGREE, 3, G_GINT64_CONSTANT (3600000000), 0,
      G_GINT64_CONSTANT (104400000000) },
    { 0.0, 1.6e6, TM_UNIT_UM, 4, 500000, 1, 0 },
    { 0.0, 3.0, TM_UNIT_COUNT, 10, 1, 0, 0 },
    { 0.0, 900.0 * MM, TM_UNIT_MM, 5, G_GINT64_CONSTANT (200000000000), 0, 0 },
    { -0.003 * MM, 0.004 * MM, TM_UNIT_MM, 4, 2000000, 3, -2000000 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TmAxis axis = tm_axis_new (cases[i].low, cases[i].high, cases[i].unit);
      const TmTicks ticks = tm_axis_ticks (&axis, cases[i].most);

      g_assert_cmpint (ticks.step, ==, cases[i].step);
      g_assert_cmpuint (ticks.decimals, ==, cases[i].decimals);
      g_assert_cmpint (ticks.first, ==, cases[i].first);
      g_assert_cmpuint (ticks.n, >=, 1);
      g_assert_cmpuint (ticks.n, <=, cases[i].most + 1);
    }
}

/* Whatever the range and the number asked for: round, on the axis, no more than asked for. */
static void
test_ticks_swept (void)
{
  for (double span = 3.0; span < 1e17; span *= 1.7)
    for (guint most = 1; most < 12; most++)
      {
        const TmAxis axis = tm_axis_new (7.3 * span, 8.3 * span, TM_UNIT_IN);
        const TmTicks ticks = tm_axis_ticks (&axis, most);

        if (ticks.n == 0)
          continue;
        g_assert_cmpint (ticks.first % ticks.step, ==, 0);
        g_assert_cmpfloat ((double)ticks.first, >=, axis.low);
        g_assert_cmpfloat ((double)(ticks.first + (ticks.n - 1) * ticks.step), <=, axis.high);
        g_assert_cmpuint (ticks.n, <=, most + 1);
        g_assert_cmpint (ticks.step % tm_ticks_minor_step (&ticks), ==, 0);
      }
}

static TmRange
make_range (double lower, double upper)
{
  return (TmRange) {
    .limits = { .lower = isnan (lower) ? 0 : (gint64)lower,
                .upper = isnan (upper) ? 0 : (gint64)upper,
                .has_lower = !isnan (lower),
                .has_upper = !isnan (upper) },
    .decimals = 3,
    .unit = TM_UNIT_MM,
    .data_low = NAN,
    .data_high = NAN,
    .mate_low = NAN,
    .mate_high = NAN,
  };
}

static void
test_range (void)
{
  const double low = 25.0 * MM, high = 25.021 * MM, band = high - low;
  TmRange range = make_range (low, high);
  TmAxis axis;

  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_true (axis.low < low && axis.high > high);
  /* A near mate is shown whole, a far one not. */
  range.mate_low = 25.022 * MM;
  range.mate_high = 25.035 * MM;
  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_true (axis.high > range.mate_high);
  range.mate_low = 26.0 * MM;
  range.mate_high = 26.1 * MM;
  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_true (axis.high < high + band);
  /* A wild value does not squeeze the band to nothing. */
  range.data_low = 1.0 * MM;
  range.data_high = 99.0 * MM;
  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_true (axis.high - axis.low < 5.0 * band);
}

static void
test_range_open (void)
{
  TmRange range = make_range (18.0 * MM, NAN);
  TmAxis axis;

  /* One limit: everything read is shown. */
  range.data_low = range.data_high = 45.0 * MM;
  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_true (axis.low < 18.0 * MM && axis.high > 45.0 * MM);
  /* None: the values alone; nothing at all: no axis. */
  range.limits.has_lower = FALSE;
  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_true (axis.low < 45.0 * MM && axis.high > 45.0 * MM);
  range.data_low = range.data_high = NAN;
  g_assert_false (tm_range_choose (&range, &axis));
  /* Limits that coincide. */
  range = make_range (25.0 * MM, 25.0 * MM);
  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_true (axis.low < 25.0 * MM && axis.high > 25.0 * MM);
  /* Zero is a physical bound: hardly anything below it is shown. */
  range = make_range (NAN, 0.2 * MM);
  range.limits.zero_bounded = TRUE;
  g_assert_true (tm_range_choose (&range, &axis));
  g_assert_cmpfloat (tm_axis_fraction (&axis, 0.0), <, 0.05);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/axis/mapping", test_mapping);
  g_test_add_func ("/axis/degenerate", test_degenerate);
  g_test_add_func ("/axis/ticks", test_ticks);
  g_test_add_func ("/axis/ticks-swept", test_ticks_swept);
  g_test_add_func ("/range/banded", test_range);
  g_test_add_func ("/range/open", test_range_open);
  return g_test_run ();
}
