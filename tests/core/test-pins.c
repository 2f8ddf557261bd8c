/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What pins prove: certain bounds by class and sign, the density of the mating size, contradictions.
 */

#include "core-pins.h"

#include <math.h>

#include "judge-support.h"

/* 1e-9 in is 25.4 pm: far below anything printed. */
#define MILLIONTH G_GINT64_CONSTANT (25400)

static TmPin
make_pin (const char *size, TmUnit unit, const char *pin_class, TmPinSign sign, gboolean went)
{
  TmQuantity marked = quantity (size, unit);
  TmPin pin = { 0 };

  g_assert_true (tm_pin_extent (marked.count, pin_class, sign, NULL, &pin));
  pin.went = went;
  return pin;
}

static TmLimits
make_limits (const char *lower, const char *upper, TmUnit unit)
{
  TmQuantity low = quantity (lower, unit), high = quantity (upper, unit);

  return (TmLimits) { low.count, high.count, low.given, high.given, FALSE };
}

static gint64
count_of (const char *text, TmUnit unit)
{
  return quantity (text, unit).count;
}

/* Plain cylindrical gauge-maker classes (ASME B89.1.5), total tolerance in inches by size above… up to
 * and including…, as published in US Army TM 9-243 and in calibration tables. */
static void
test_class_table (void)
{
  static const struct {
    const char *name;
    const char *inside; /* a size within the range */
    const char *end;    /* its upper end */
    int millionths;
  } rows[] = {
    { "XXX", "0.5", "0.825", 10 }, { "XXX", "1", "1.510", 15 },   { "XXX", "2", "2.510", 20 },
    { "XXX", "3", "4.510", 25 },   { "XXX", "5", "6.510", 33 },   { "XXX", "7", "9.010", 40 },
    { "XXX", "10", "12.010", 50 }, { "XX", "0.5", "0.825", 20 },  { "XX", "1", "1.510", 30 },
    { "XX", "2", "2.510", 40 },    { "XX", "3", "4.510", 50 },    { "XX", "5", "6.510", 65 },
    { "XX", "7", "9.010", 80 },    { "XX", "10", "12.010", 100 }, { "X", "0.5", "0.825", 40 },
    { "X", "1", "1.510", 60 },     { "X", "2", "2.510", 80 },     { "X", "3", "4.510", 100 },
    { "X", "5", "6.510", 130 },    { "X", "7", "9.010", 160 },    { "X", "10", "12.010", 200 },
    { "Y", "0.5", "0.825", 70 },   { "Y", "1", "1.510", 90 },     { "Y", "2", "2.510", 120 },
    { "Y", "3", "4.510", 150 },    { "Y", "5", "6.510", 190 },    { "Y", "7", "9.010", 240 },
    { "Y", "10", "12.010", 300 },  { "Z", "0.5", "0.825", 100 },  { "Z", "1", "1.510", 120 },
    { "Z", "2", "2.510", 160 },    { "Z", "3", "4.510", 200 },    { "Z", "5", "6.510", 250 },
    { "Z", "7", "9.010", 320 },    { "Z", "10", "12.010", 400 },  { "ZZ", "0.5", "0.825", 200 },
    { "ZZ", "1", "1.510", 240 },   { "ZZ", "2", "2.510", 320 },   { "ZZ", "3", "4.510", 400 },
    { "ZZ", "5", "6.510", 500 },   { "ZZ", "7", "9.010", 640 },   { "ZZ", "10", "12.010", 800 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      gint64 expected = rows[i].millionths * MILLIONTH;

      g_assert_cmpint (tm_pin_class_tolerance (rows[i].name, count_of (rows[i].inside, TM_UNIT_IN)), ==,
                       expected);
      g_assert_cmpint (tm_pin_class_tolerance (rows[i].name, count_of (rows[i].end, TM_UNIT_IN)), ==,
                       expected);
    }
  /* The same table prints .001 02 mm for X and .005 08 mm for ZZ up to .825 in. */
  g_assert_cmpint (tm_pin_class_tolerance ("x", count_of ("12", TM_UNIT_MM)), ==, 1016000);
  g_assert_cmpint (tm_pin_class_tolerance ("ZZ", count_of ("12", TM_UNIT_MM)), ==, 5080000);
}

static void
test_class_edges (void)
{
  TmQuantity measured = quantity ("400.0012", TM_UNIT_MM);
  TmPin pin;

  g_assert_cmpint (tm_pin_class_tolerance ("ZZ", count_of ("0.010", TM_UNIT_IN)), ==, 200 * MILLIONTH);
  g_assert_cmpint (tm_pin_class_tolerance ("ZZ", count_of ("0.010", TM_UNIT_IN) - 1), ==, 0);
  g_assert_cmpint (tm_pin_class_tolerance ("ZZ", count_of ("0.825", TM_UNIT_IN) + 1), ==, 240 * MILLIONTH);
  g_assert_cmpint (tm_pin_class_tolerance ("ZZ", count_of ("12.010", TM_UNIT_IN) + 1), ==, 0);
  g_assert_cmpint (tm_pin_class_tolerance ("W", count_of ("1", TM_UNIT_IN)), ==, 0);
  g_assert_cmpint (tm_pin_class_tolerance ("", count_of ("1", TM_UNIT_IN)), ==, 0);
  g_assert_cmpint (tm_pin_class_tolerance (NULL, count_of ("1", TM_UNIT_IN)), ==, 0);
  g_assert_false (tm_pin_extent (count_of ("400", TM_UNIT_MM), "X", TM_PIN_PLUS, NULL, &pin));
  /* Its own measured size needs no class. */
  g_assert_true (tm_pin_extent (count_of ("400", TM_UNIT_MM), "", TM_PIN_PLUS, &measured, &pin));
  g_assert_cmpint (pin.low, ==, measured.count);
  g_assert_cmpint (pin.high, ==, measured.count);
}

/* "0.2500 ZZ minus pin enters and the 0.2510 ZZ minus pin does not: mating size >= 0.2498 and < 0.2510":
 * recomputed from the class table; the clearance that a pin needs to enter comes on top. */
static void
test_minus_pins (void)
{
  TmPin pins[] = {
    make_pin (".2500", TM_UNIT_IN, "ZZ", TM_PIN_MINUS, TRUE),
    make_pin (".2510", TM_UNIT_IN, "ZZ", TM_PIN_MINUS, FALSE),
  };
  TmLimits limits = make_limits (".2500", ".2510", TM_UNIT_IN);
  TmPinResult result;

  tm_pins_judge (pins, 2, &limits, 0, NULL, &result);
  g_assert_true (result.has_low && result.has_high);
  g_assert_cmpint (result.low, ==, count_of (".2498", TM_UNIT_IN));
  g_assert_cmpint (result.high, ==, count_of (".2510", TM_UNIT_IN));
  g_assert_true (result.low_pin == &pins[0] && result.high_pin == &pins[1]);
  g_assert_false (result.proves_band);
  g_assert_cmpint (result.open_below, ==, count_of (".0002", TM_UNIT_IN));
  g_assert_cmpint (result.open_above, ==, 0);
  tm_pins_judge (pins, 2, &limits, TM_PIN_ENTRY_CLEARANCE, NULL, &result);
  g_assert_cmpint (result.high, ==, count_of (".2510", TM_UNIT_IN) + 1000000);
  g_assert_cmpint (result.open_above, ==, 1000000);
}

/* "These two prove 12.006 to 12.018; the band ends at 12.015". */
static void
test_band_left_open (void)
{
  TmPin pins[] = {
    make_pin ("12.006", TM_UNIT_MM, "Z", TM_PIN_PLUS, TRUE),
    make_pin ("12.018", TM_UNIT_MM, "Z", TM_PIN_MINUS, FALSE),
  };
  TmLimits limits = make_limits ("12.005", "12.015", TM_UNIT_MM);
  TmLimits wide = make_limits ("12.006", "12.018", TM_UNIT_MM);
  TmLimits least = make_limits ("12.006", NULL, TM_UNIT_MM);
  TmPinResult result;

  tm_pins_judge (pins, 2, &limits, 0, NULL, &result);
  g_assert_cmpint (result.low, ==, count_of ("12.006", TM_UNIT_MM));
  g_assert_cmpint (result.high, ==, count_of ("12.018", TM_UNIT_MM));
  g_assert_false (result.proves_band);
  g_assert_cmpint (result.open_above, ==, count_of ("0.003", TM_UNIT_MM));
  tm_pins_judge (pins, 2, &wide, 0, NULL, &result);
  g_assert_true (result.proves_band);
  /* A minimum alone asks nothing of the no-go pin. */
  tm_pins_judge (pins, 1, &least, TM_PIN_ENTRY_CLEARANCE, NULL, &result);
  g_assert_true (result.proves_band);
  tm_pins_judge (&pins[1], 1, &wide, TM_PIN_ENTRY_CLEARANCE, NULL, &result);
  g_assert_false (result.proves_band);
  g_assert_cmpint (result.open_below, ==, -1);
}

/* Without a reading every size between the bounds is as likely, but for what the pins' own spread
 * takes: the mean and the variance of a trapezium, worked out by hand for pins of known size (a
 * rectangle) and for two ramps (mean at the middle, by symmetry). */
static void
test_flat_density (void)
{
  TmPin known[] = { { 1000000, 1000000, TRUE, NULL }, { 4000000, 4000000, FALSE, NULL } };
  TmPin ramps[] = { { 1000000, 2000000, TRUE, NULL }, { 4000000, 5000000, FALSE, NULL } };
  TmLimits limits = { 1000000, 2500000, TRUE, TRUE, FALSE };
  TmPinResult result;

  tm_pins_judge (known, 2, &limits, 0, NULL, &result);
  g_assert_true (result.has_estimate);
  assert_near (result.estimate + (double)result.reference, 2500000, 1e-3);
  assert_near (result.u, 3000000 / sqrt (12), 1e-3);
  assert_near (result.low95 + (double)result.reference, 1075000, 1e-2);
  assert_near (result.high95 + (double)result.reference, 3925000, 1e-2);
  assert_near (result.probability_in, 0.5, 1e-12);
  /* Trapezium of bases 4 and 2 (millions): variance (4² + 2²)/24. */
  tm_pins_judge (ramps, 2, &limits, 0, NULL, &result);
  assert_near (result.estimate + (double)result.reference, 3000000, 1e-3);
  assert_near (result.u, 1e6 * sqrt ((16.0 + 4.0) / 24), 1e-3);
  /* Mass below 2.5: the ramp 1/2 and 0.5 of the plateau, of 3. */
  assert_near (result.probability_in, 1.0 / 3, 1e-12);
}

/* A normal cut on both sides: its mean and variance are elementary (the textbook moments of a truncated
 * normal, written out here with erf). */
static void
test_cut_normal (void)
{
  TmPin pins[] = { { 9000000, 9000000, TRUE, NULL }, { 11000000, 11000000, FALSE, NULL } };
  TmPinSizeInput size = { TRUE, 10000000, 500000, 1000000, INFINITY, 0 };
  TmLimits limits = { 9500000, 10500000, TRUE, TRUE, FALSE };
  double a = -1.5, b = 0.5;
  double mass = (erf (b * M_SQRT1_2) - erf (a * M_SQRT1_2)) / 2;
  double pa = exp (-a * a / 2) / sqrt (2 * G_PI), pb = exp (-b * b / 2) / sqrt (2 * G_PI);
  double mean = (pa - pb) / mass;
  double variance = 1 + (a * pa - b * pb) / mass - mean * mean;
  TmPinResult result;

  tm_pins_judge (pins, 2, &limits, 0, &size, &result);
  assert_near (result.estimate + (double)result.reference, 10500000 + 1e6 * mean, 1e-2);
  assert_near (result.u, 1e6 * sqrt (variance), 1e-2);
  assert_near (result.probability_in, (erf (0) - erf (-M_SQRT1_2)) / 2 / mass, 1e-10);
  /* No pin at all: the reading itself, with its own interval by Student's t. */
  size.dof = 9;
  tm_pins_judge (NULL, 0, &limits, 0, &size, &result);
  assert_near (result.estimate + (double)result.reference, 10500000, 1);
  assert_near (result.u, 1e6 * sqrt (9.0 / 7), 10);
  assert_near (result.high95 + (double)result.reference, 10500000 + 2.2622e6, 100);
  g_assert_false (result.has_low || result.has_high);
}

/* Two-point size exceeds the mating size by f, rectangular 0…F: the mean falls by F/2 and the variance
 * grows by F²/12. */
static void
test_form (void)
{
  TmPinSizeInput size = { TRUE, 10000000, 0, 1000000, INFINITY, 3000000 };
  TmLimits limits = { 9500000, 10500000, TRUE, TRUE, FALSE };
  TmPinResult result;

  tm_pins_judge (NULL, 0, &limits, 0, &size, &result);
  assert_near (result.estimate + (double)result.reference, 8500000, 1e-2);
  assert_near (result.u, 1e6 * sqrt (1 + 9.0 / 12), 1e-2);
}

/* Repeats of one pin share its size: trying it again proves nothing new; another pin of the same mark
 * from another set does. */
static void
test_repeated_trials (void)
{
  TmPinTrial one = { .gauge = "PS-1", .pin_class = "ZZ" }, other = { .gauge = "PS-2", .pin_class = "ZZ" };
  TmPin pins[] = { { 1000000, 2000000, TRUE, &one }, { 1000000, 2000000, TRUE, &one } };
  TmPinSizeInput size = { TRUE, 1500000, 0, 500000, INFINITY, 0 };
  TmLimits limits = { 1000000, 2000000, TRUE, TRUE, FALSE };
  TmPinResult single, repeated, two;

  tm_pins_judge (pins, 1, &limits, 0, &size, &single);
  tm_pins_judge (pins, 2, &limits, 0, &size, &repeated);
  pins[1].trial = &other;
  tm_pins_judge (pins, 2, &limits, 0, &size, &two);
  assert_near (single.estimate, repeated.estimate, 1e-6);
  assert_near (single.u, repeated.u, 1e-6);
  g_assert_cmpfloat (two.estimate, >, single.estimate + 1000);
}

/* One pin that went once and once did not: D lies within the clearance above its true size, so that the
 * density is that of a rectangle of its tolerance with one of the clearance: variance (t² + c²)/12. */
static void
test_pin_went_and_did_not (void)
{
  TmPin pins[] = { { 1000000, 5000000, TRUE, NULL }, { 1000000, 5000000, FALSE, NULL } };
  TmLimits limits = { 0, 0, FALSE, FALSE, FALSE };
  TmPinResult result;

  tm_pins_judge (pins, 2, &limits, 1000000, NULL, &result);
  g_assert_false (result.contradiction);
  assert_near (result.estimate + (double)result.reference, 3500000, 1e-3);
  assert_near (result.u, 1e6 * sqrt ((16.0 + 1.0) / 12), 1e-2);
  g_assert_true (isnan (result.probability_in));
  tm_pins_judge (pins, 2, &limits, 0, NULL, &result);
  g_assert_true (result.contradiction);
}

static void
test_contradiction (void)
{
  TmPin pins[] = { { 5000000, 6000000, TRUE, NULL }, { 3000000, 4000000, FALSE, NULL } };
  TmPin fair[] = { { 3500000, 4500000, TRUE, NULL }, { 3000000, 4000000, FALSE, NULL } };
  TmPinSizeInput size = { TRUE, 9000000, 0, 1000000, INFINITY, 0 };
  TmLimits limits = { 2000000, 8000000, TRUE, TRUE, FALSE };
  TmPinResult result;

  tm_pins_judge (pins, 2, &limits, 0, NULL, &result);
  g_assert_true (result.contradiction);
  g_assert_true (result.contradicting[0] == &pins[0] && result.contradicting[1] == &pins[1]);
  g_assert_false (result.has_estimate || result.proves_band);
  /* The marked sizes are in the wrong order, the true ones need not be. */
  tm_pins_judge (fair, 2, &limits, 0, NULL, &result);
  g_assert_false (result.contradiction);
  g_assert_true (result.has_estimate && result.proves_band);
  /* The reading lies 5 u above the most that the pins allow. */
  tm_pins_judge (fair, 2, &limits, 0, &size, &result);
  g_assert_true (result.contradiction);
  g_assert_true (result.contradicting[0] == &fair[1] && result.contradicting[1] == NULL);
  g_assert_false (result.has_estimate);
  /* With form that explains it, it does not. */
  size.form = 5000000;
  tm_pins_judge (fair, 2, &limits, 0, &size, &result);
  g_assert_false (result.contradiction);
}

/* Open on a side with no reading: bounds only. */
static void
test_open_side (void)
{
  TmPin pin = { 1000000, 2000000, TRUE, NULL };
  TmLimits limits = { 500000, 3000000, TRUE, TRUE, FALSE };
  TmPinSizeInput size = { TRUE, 2000000, 0, 100000, 1, 0 };
  TmPinResult result;

  tm_pins_judge (&pin, 1, &limits, 0, NULL, &result);
  g_assert_false (result.has_estimate || result.has_high);
  g_assert_true (isnan (result.estimate) && isnan (result.u) && isnan (result.probability_in));
  g_assert_cmpint (result.open_below, ==, 0);
  g_assert_cmpint (result.open_above, ==, -1);
  /* One degree of freedom has no standard deviation: the numbers stay finite. */
  tm_pins_judge (&pin, 1, &limits, 0, &size, &result);
  g_assert_true (result.has_estimate && isfinite (result.u) && result.u > 0);
  g_assert_cmpfloat (result.low95, <, result.estimate);
  g_assert_cmpfloat (result.high95, >, result.estimate);
}

/* The largest counts that can be typed wrap nowhere. */
static void
test_extremes (void)
{
  TmPin pins[]
      = { { -TM_COUNT_MAX, -TM_COUNT_MAX, TRUE, NULL }, { TM_COUNT_MAX, TM_COUNT_MAX, FALSE, NULL } };
  TmLimits limits = { TM_COUNT_MAX, -TM_COUNT_MAX, TRUE, TRUE, FALSE };
  TmPinSizeInput size = { TRUE, TM_COUNT_MAX, 0, 1, 2, 1e18 };
  TmPinResult result;

  tm_pins_judge (pins, 2, &limits, TM_COUNT_MAX, &size, &result);
  g_assert_cmpint (result.open_below, ==, 2 * TM_COUNT_MAX);
  g_assert_true (result.has_estimate && isfinite (result.u));
  tm_pins_judge (pins, 1, &limits, 0, &size, &result);
  g_assert_true (isfinite (result.estimate));
}

/* A crowd of trials is answered at once, and the certain bounds take every one of them. */
static void
test_many_pins (void)
{
  guint n = 100000;
  g_autofree TmPin *pins = g_new0 (TmPin, n);
  TmPinSizeInput size = { TRUE, 50000000, 0, 20000000, 5, 1000000 };
  TmLimits limits = { 1000000, 99000000, TRUE, TRUE, FALSE };
  TmPinResult result;
  gint64 start = g_get_monotonic_time ();

  for (guint i = 0; i < n; i++)
    pins[i] = (TmPin) { 500 * (gint64)i, 500 * (gint64)i + 5000000, i < n / 2, NULL };
  tm_pins_judge (pins, n, &limits, 0, &size, &result);
  g_assert_cmpint (result.low, ==, 500 * ((gint64)n / 2 - 1));
  g_assert_cmpint (result.high, ==, 500 * ((gint64)n / 2) + 5000000);
  g_assert_true (result.has_estimate && isfinite (result.u));
  g_assert_cmpint (g_get_monotonic_time () - start, <, 2 * G_USEC_PER_SEC);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pins/class-table", test_class_table);
  g_test_add_func ("/pins/class-edges", test_class_edges);
  g_test_add_func ("/pins/minus-pins", test_minus_pins);
  g_test_add_func ("/pins/band-left-open", test_band_left_open);
  g_test_add_func ("/pins/flat-density", test_flat_density);
  g_test_add_func ("/pins/cut-normal", test_cut_normal);
  g_test_add_func ("/pins/form", test_form);
  g_test_add_func ("/pins/repeated-trials", test_repeated_trials);
  g_test_add_func ("/pins/went-and-did-not", test_pin_went_and_did_not);
  g_test_add_func ("/pins/contradiction", test_contradiction);
  g_test_add_func ("/pins/open-side", test_open_side);
  g_test_add_func ("/pins/extremes", test_extremes);
  g_test_add_func ("/pins/many", test_many_pins);

  return g_test_run ();
}
