/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which pins to pull: from the shop's sets, the pair that proves most of a band.
 */

#include "core-pins.h"

#include "judge-support.h"

static TmGauge *
add_set (TmJob *job, const char *tag, const char *from, const char *to, const char *step,
         const char *pin_class, const char *sign)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tm_job_intern (job, tag);
  gauge->kind = tm_job_intern (job, "pin set");
  gauge->unit = TM_UNIT_IN;
  gauge->range_from = quantity (from, TM_UNIT_IN);
  gauge->range_to = quantity (to, TM_UNIT_IN);
  gauge->pin_step = quantity (step, TM_UNIT_IN);
  gauge->pin_class = tm_job_intern (job, pin_class);
  gauge->pin_sign = tm_job_intern (job, sign);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
  return gauge;
}

static void
add_measured (TmJob *job, const char *tag, const char *size, const char *measured)
{
  TmPinSize *pin = tm_pin_size_new ();

  pin->gauge = tm_job_intern (job, tag);
  pin->size = quantity (size, TM_UNIT_IN);
  pin->measured = quantity (measured, TM_UNIT_IN);
  g_assert_cmpint (tm_job_add_pin_size (job, pin), ==, TM_ADD_OK);
}

static TmFeature *
add_bore (TmJob *job, const char *balloon, const char *lower, const char *upper)
{
  TmFeature *feature = add_feature (job, balloon, TM_KIND_BORE, NULL, NULL, "");

  feature->unit = TM_UNIT_IN;
  feature->lower = quantity (lower, TM_UNIT_IN);
  feature->upper = quantity (upper, TM_UNIT_IN);
  return feature;
}

static void
assert_count (gint64 count, const char *text)
{
  g_assert_cmpint (count, ==, quantity (text, TM_UNIT_IN).count);
}

/* Go plus and no-go minus, class X: +.00004 and -.00004 at this size. */
static void
test_closes (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmGauge *plus = add_set (job, "XP", ".4000", ".6000", ".0005", "X", "plus");
  TmGauge *minus = add_set (job, "XM", ".4000", ".6000", ".0005", "X", "minus");
  TmFeature *bore = add_bore (job, "1", ".5000", ".5010");
  TmPinPlan plan;

  job->entry_clearance = quantity ("0", TM_UNIT_IN);
  tm_pins_to_pull (job, bore, &plan);
  g_assert_true (plan.has_go && plan.has_nogo && plan.proves_band);
  g_assert_true (plan.go_set == plus && plan.nogo_set == minus);
  assert_count (plan.go_size, ".5000");
  assert_count (plan.go.high, ".50004");
  assert_count (plan.nogo_size, ".5010");
  assert_count (plan.low, ".5000");
  assert_count (plan.high, ".5010");
  g_assert_true (plan.go.went && !plan.nogo.went);
  /* What a pin needs to enter takes the .5010 away; of the two of .5005 the plus pin leaves more room. */
  job->entry_clearance = TM_QUANTITY_NONE;
  tm_pins_to_pull (job, bore, &plan);
  g_assert_true (plan.proves_band);
  assert_count (plan.nogo_size, ".5005");
  g_assert_cmpint (plan.high, ==, quantity (".50054", TM_UNIT_IN).count + TM_PIN_ENTRY_CLEARANCE);
}

/* A minus set alone leaves both ends open: its go pin may be smaller than the lower limit. */
static void
test_leaves_open (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "1", ".5000", ".5010");
  TmFeature *least = add_bore (job, "2", ".5000", NULL);
  TmFeature *most = add_bore (job, "3", NULL, ".5010");
  TmPinPlan plan;

  add_set (job, "ZZ", ".251", ".500", ".001", "ZZ", "minus");
  add_set (job, "ZZ2", ".501", ".750", ".001", "ZZ", "minus");
  tm_pins_to_pull (job, bore, &plan);
  g_assert_true (plan.has_go && plan.has_nogo);
  g_assert_false (plan.proves_band);
  assert_count (plan.go_size, ".500");
  assert_count (plan.nogo_size, ".501");
  assert_count (plan.open_below, ".0002");
  g_assert_cmpint (plan.open_above, ==, TM_PIN_ENTRY_CLEARANCE);
  /* A minimum is proven by the next pin up; a maximum by the one below. */
  tm_pins_to_pull (job, least, &plan);
  g_assert_true (plan.proves_band && plan.has_go && !plan.has_nogo);
  assert_count (plan.go_size, ".501");
  tm_pins_to_pull (job, most, &plan);
  g_assert_true (plan.proves_band && plan.has_nogo && !plan.has_go);
  assert_count (plan.nogo_size, ".500");
}

/* The pin's own measured size stands in place of its class. */
static void
test_measured (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "1", ".5000", ".5010");
  TmPinPlan plan;

  add_set (job, "ZZ", ".251", ".750", ".001", "ZZ", "minus");
  add_measured (job, "ZZ", ".500", ".50002");
  add_measured (job, "ZZ", ".501", ".50093");
  tm_pins_to_pull (job, bore, &plan);
  g_assert_true (plan.proves_band);
  assert_count (plan.low, ".50002");
  g_assert_cmpint (plan.high, ==, quantity (".50093", TM_UNIT_IN).count + TM_PIN_ENTRY_CLEARANCE);
}

static void
test_nothing_to_pull (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "1", ".5000", ".5010");
  TmFeature *shaft = add_bore (job, "2", ".5000", ".5010");
  TmFeature *huge = add_bore (job, "3", "13.0000", "13.0010");
  TmPinPlan plan;

  shaft->kind = TM_KIND_SHAFT;
  tm_pins_to_pull (job, bore, &plan);
  g_assert_false (plan.has_go || plan.has_nogo || plan.proves_band);
  g_assert_cmpint (plan.open_below, ==, -1);
  g_assert_cmpint (plan.open_above, ==, -1);
  add_set (job, "BACK", ".750", ".251", ".001", "X", "plus");
  add_set (job, "STILL", ".251", ".750", "0", "X", "plus");
  add_set (job, "UNSIGNED", ".251", ".750", ".001", "X", "");
  add_set (job, "UNKNOWN", ".251", ".750", ".001", "W", "plus");
  tm_pins_to_pull (job, bore, &plan);
  g_assert_false (plan.has_go || plan.has_nogo);
  /* Beyond the classes' sizes there is no tolerance, and so no extent. */
  add_set (job, "X", ".251", "20", ".0005", "X", "plus");
  tm_pins_to_pull (job, huge, &plan);
  g_assert_true (plan.has_go);
  assert_count (plan.go_size, "12.0100");
  tm_pins_to_pull (job, shaft, &plan);
  g_assert_false (plan.has_go || plan.has_nogo);
  g_assert_cmpint (plan.open_below, ==, -1);
}

/* A set of a thousand million pins is searched by division. */
static void
test_huge_set (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "1", "1.5095", "1.5105");
  gint64 start = g_get_monotonic_time ();
  TmPinPlan plan;

  add_set (job, "P", ".010", "10", ".00000001", "X", "plus");
  add_set (job, "M", ".010", "10", ".00000001", "X", "minus");
  tm_pins_to_pull (job, bore, &plan);
  g_assert_true (plan.proves_band);
  assert_count (plan.low, "1.5095");
  g_assert_cmpint (plan.high, <=, bore->upper.count);
  g_assert_cmpint (plan.high, >, bore->upper.count - 2 * 25400);
  g_assert_cmpint (g_get_monotonic_time () - start, <, G_USEC_PER_SEC);
}

/* Against every pair of a small set, one by one. */
static void
test_against_all_pairs (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "1", ".8240", ".8260");
  gint64 step = quantity (".0003", TM_UNIT_IN).count, first = quantity (".8200", TM_UNIT_IN).count;

  add_set (job, "P", ".8200", ".8300", ".0003", "ZZ", "plus");
  add_set (job, "M", ".8200", ".8300", ".0003", "ZZ", "minus");
  for (gint64 shift = 0; shift < 40; shift++)
    {
      gint64 best_open = G_MAXINT64, best_width = 0;
      TmPinPlan plan;

      bore->lower.count += quantity (".00005", TM_UNIT_IN).count;
      for (int i = 0; i < 68; i++)
        for (int j = 0; j < 68; j++)
          {
            TmPin go, nogo;
            gint64 high, open;

            tm_pin_extent (first + i / 2 * step, "ZZ", i % 2 ? TM_PIN_PLUS : TM_PIN_MINUS, NULL, &go);
            tm_pin_extent (first + j / 2 * step, "ZZ", j % 2 ? TM_PIN_PLUS : TM_PIN_MINUS, NULL, &nogo);
            high = nogo.high + TM_PIN_ENTRY_CLEARANCE;
            open = MAX (0, bore->lower.count - go.low) + MAX (0, high - bore->upper.count);
            if (go.high > nogo.low || i == j || open > best_open)
              continue;
            if (open < best_open || high - go.low > best_width)
              best_width = high - go.low;
            best_open = open;
          }
      tm_pins_to_pull (job, bore, &plan);
      g_assert_true (plan.has_go && plan.has_nogo);
      g_assert_cmpint (plan.open_below + plan.open_above, ==, best_open);
      g_assert_cmpint (plan.high - plan.low, ==, best_width);
      g_assert_true (plan.proves_band == (best_open == 0));
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/pin-plan/closes", test_closes);
  g_test_add_func ("/pin-plan/leaves-open", test_leaves_open);
  g_test_add_func ("/pin-plan/measured", test_measured);
  g_test_add_func ("/pin-plan/nothing-to-pull", test_nothing_to_pull);
  g_test_add_func ("/pin-plan/huge-set", test_huge_set);
  g_test_add_func ("/pin-plan/against-all-pairs", test_against_all_pairs);

  return g_test_run ();
}
