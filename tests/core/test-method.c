/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The budget of a method, line by line, against hand sums of its parts.
 */

#include <math.h>

#include "core-method.h"
#include "method-support.h"

typedef struct {
  TmJob *job;
  TmFeature *bore;
} Shop;

static Shop
set_up (void)
{
  Shop shop = { make_job (TM_DECISION_GUARDED), NULL };
  TmGauge *transfer = add_gauge (shop.job, "TELE", NULL, NULL);

  transfer->kind = "telescoping gauge";
  add_gauge (shop.job, "MIC", "0.001", "0.004");
  add_method (shop.job, "mic", "MIC", NULL, NULL);
  add_method (shop.job, "transfer", "TELE,MIC", NULL, NULL);
  add_method (shop.job, "studied", "TELE,MIC", "0.003", "30");
  shop.bore = add_feature (shop.job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  shop.bore->nominal = quantity ("25.000", TM_UNIT_MM);
  return shop;
}

static double
find_u (const TmMethodUse *use)
{
  TmLocalSize one = { .n = 1 };

  return tm_method_uncertainty (use, &one, NULL).u;
}

/* -------- Certificate -------- */

/* The certificate of the calibration in force stands in place of the limit of error: U / k, k 2 where it
 * states none (JCGM 100, 4.3.3). Before the first calibration the limit stands. */
static void
test_certificate (void)
{
  Shop shop = set_up ();
  const TmUseWhen before = { "2026-01-31T23:59:59Z" }, first = { "2026-02-01T08:00:00Z" },
                  second = { "2026-08-02" };
  TmCalibration *newest;
  TmMethodUse use;

  add_calibration (shop.job, "MIC", "2026-02-01", "0.0012", NULL)->certificate = "C-17";
  newest = add_calibration (shop.job, "MIC", "2026-08-01", "0.0030", "0.0005");
  newest->coverage = quantity ("3", TM_UNIT_HARDNESS);
  use = tm_method_use_at (shop.job, shop.bore, "mic", &before);
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_ERROR_LIMIT)), 4e6 / sqrt (3), 1e-3);
  use = tm_method_use_at (shop.job, shop.bore, "mic", &first);
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_CERTIFICATE)), 0.6e6, 1e-3);
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_ERROR_LIMIT), ==, 0);
  g_assert_cmpstr (only_line (&use, TM_COMPONENT_CERTIFICATE)->source, ==, "C-17");
  g_assert_cmpstr (only_line (&use, TM_COMPONENT_CERTIFICATE)->subject, ==, "MIC");
  use = tm_method_use_at (shop.job, shop.bore, "mic", &second);
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_CERTIFICATE)), 1e6, 1e-3);
  use = tm_method_use (shop.job, shop.bore, "mic");
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_CERTIFICATE)), 1e6, 1e-3);
  assert_near (find_u (&use), sqrt (1e12 + 1e12 / 12), 1e-3);
  tm_job_free (shop.job);
}

/* A calibration at which the gauge was bad is never in force; one without an uncertainty leaves the limit. */
static void
test_certificate_not_in_force (void)
{
  Shop shop = set_up ();
  TmMethodUse use;

  add_calibration (shop.job, "MIC", "2026-08-01", "0.0001", NULL)->outcome = "bad";
  use = tm_method_use (shop.job, shop.bore, "mic");
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_CERTIFICATE), ==, 0);
  add_calibration (shop.job, "MIC", "2026-09-01", NULL, "0.001");
  use = tm_method_use (shop.job, shop.bore, "mic");
  assert_near (only_line (&use, TM_COMPONENT_ERROR_LIMIT)->value, 4e6, 1e-6);
  tm_job_free (shop.job);
}

/* -------- Drift -------- */

static void
test_drift (void)
{
  Shop shop = set_up ();
  const TmUseWhen early = { "2026-05-01T07:59:00Z" }, late = { "2026-05-01T12:00:00Z" };
  TmMethodUse use;

  add_check (shop.job, "MIC", "2026-05-01T08:00:00Z", "25.000", "24.997");
  use = tm_method_use_at (shop.job, shop.bore, "mic", &early);
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_DRIFT), ==, 0);
  use = tm_method_use_at (shop.job, shop.bore, "mic", &late);
  assert_near (only_line (&use, TM_COMPONENT_DRIFT)->value, 3e6, 1e-6);
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_DRIFT)), 3e6 / sqrt (3), 1e-3);
  shop.job->drift_rule = TM_DRIFT_ASK;
  use = tm_method_use_at (shop.job, shop.bore, "mic", &late);
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_DRIFT), ==, 0);
  shop.job->drift_rule = TM_DRIFT_WIDEN;
  add_check (shop.job, "MIC", "2026-05-01T10:00:00Z", "25.000", "25.000");
  use = tm_method_use_at (shop.job, shop.bore, "mic", &late);
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_DRIFT), ==, 0);
  tm_job_free (shop.job);
}

/* -------- Transfer feel -------- */

/* A telescoping gauge with nothing stated: ± 0.001 in at 95 % in ordinary hands (common practice, from
 * memory), shown as assumed; a study, the gauge's own figure or a written line stand in its place. */
static void
test_feel (void)
{
  Shop shop = set_up ();
  TmMethodUse use = tm_method_use (shop.job, shop.bore, "transfer");
  const TmComponent *feel = only_line (&use, TM_COMPONENT_FEEL);

  assert_near (tm_component_standard (feel), 25.4e6 / 1.96, 1e-3);
  g_assert_true (feel->assumed && feel->shared);
  g_assert_nonnull (feel->source);
  g_assert_cmpstr (feel->subject, ==, "TELE");
  g_assert_true (tm_method_rests_on_assumed (&use));

  use = tm_method_use (shop.job, shop.bore, "studied");
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_FEEL), ==, 0);
  g_assert_false (tm_method_rests_on_assumed (&use));

  tm_job_find_gauge (shop.job, "TELE")->feel = quantity ("0.010", TM_UNIT_MM);
  use = tm_method_use (shop.job, shop.bore, "transfer");
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_FEEL)), 10e6 / 1.96, 1e-3);
  g_assert_false (only_line (&use, TM_COMPONENT_FEEL)->assumed);
  use = tm_method_use (shop.job, shop.bore, "studied");
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_FEEL), ==, 1);
  tm_job_find_gauge (shop.job, "TELE")->source = "assumed: ordinary hand";
  use = tm_method_use (shop.job, shop.bore, "studied");
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_FEEL), ==, 0);

  add_budget_line (shop.job, "transfer", TM_LINE_FEEL, "my hand", "0.004", "normal");
  use = tm_method_use (shop.job, shop.bore, "transfer");
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_FEEL)), 4e6, 1e-3);
  g_assert_cmpstr (only_line (&use, TM_COMPONENT_FEEL)->subject, ==, "my hand");
  tm_job_free (shop.job);
}

/* A repeatability of zero is none: the step hid it, and the assumed feel stays. */
static void
test_zero_repeatability (void)
{
  Shop shop = set_up ();
  TmMethodUse use;

  tm_job_find_method (shop.job, "studied")->repeatability = quantity ("0", TM_UNIT_MM);
  use = tm_method_use (shop.job, shop.bore, "studied");
  g_assert_false (use.has_repeatability);
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_FEEL), ==, 1);
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_REPEATABILITY), ==, 0);
  g_assert_true (tm_method_rests_on_assumed (&use));
  tm_job_free (shop.job);
}

/* -------- Written lines -------- */

static void
test_written (void)
{
  static const struct {
    TmLineKind kind;
    const char *distribution;
    TmComponentKind component;
    double standard; /* of 0.006 mm, counts */
  } cases[] = {
    { TM_LINE_OTHER, "normal", TM_COMPONENT_OTHER, 6e6 },
    { TM_LINE_FORM, "rectangular", TM_COMPONENT_FORM, 3464101.615 },
    { TM_LINE_SETTING, "triangular", TM_COMPONENT_SETTING, 2449489.743 },
    { TM_LINE_FEEL, "u-shaped", TM_COMPONENT_FEEL, 4242640.687 },
    { TM_LINE_PEOPLE, "t", TM_COMPONENT_PEOPLE, 6e6 },
    { TM_LINE_TEMPERATURE, "", TM_COMPONENT_TEMPERATURE, 6e6 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Shop shop = set_up ();
      TmBudgetLine *row
          = add_budget_line (shop.job, "mic", cases[i].kind, "line", "0.006", cases[i].distribution);
      TmMethodUse use = tm_method_use (shop.job, shop.bore, "mic");

      assert_near (tm_component_standard (only_line (&use, cases[i].component)), cases[i].standard, 1e-2);
      g_assert_true (only_line (&use, cases[i].component)->shared);
      row->divisor = quantity ("2.5", TM_UNIT_HARDNESS);
      row->dof = quantity ("7", TM_UNIT_HARDNESS);
      use = tm_method_use (shop.job, shop.bore, "mic");
      assert_near (tm_component_standard (only_line (&use, cases[i].component)), 2.4e6, 1e-3);
      assert_near (only_line (&use, cases[i].component)->dof, 7, 1e-9);
      tm_job_free (shop.job);
    }
}

/* Forty lines of 0.001 mm each: those beyond the room are one line, and the sum is the same. */
static void
test_many_lines (void)
{
  Shop shop = set_up ();
  TmMethodUse use;

  for (guint i = 0; i < 40; i++)
    {
      g_autofree char *name = g_strdup_printf ("line %u", i);

      add_budget_line (shop.job, "studied", TM_LINE_OTHER, name, "0.001", "normal")->dof
          = quantity ("10", TM_UNIT_COUNT);
    }
  use = tm_method_use (shop.job, shop.bore, "studied");
  g_assert_cmpuint (use.n_components, ==, TM_METHOD_MAX_COMPONENTS);
  g_assert_cmpint (use.components[use.n_components - 1].kind, ==, TM_COMPONENT_REPEATABILITY);
  g_assert_cmpstr (use.components[use.n_components - 2].subject, ==, "further lines");
  assert_near (find_u (&use), sqrt (40e12 + 9e12 + 16e12 / 3 + 1e12 / 12), 1e-2);
  tm_job_free (shop.job);
}

/* A line in degrees says nothing of a length: the budget is not known. */
static void
test_line_dimension (void)
{
  Shop shop = set_up ();

  add_budget_line (shop.job, "mic", TM_LINE_OTHER, "angle", NULL, "normal")->value
      = quantity ("0.1", TM_UNIT_DEGREE);
  g_assert_false (tm_method_use (shop.job, shop.bore, "mic").known);
  tm_job_free (shop.job);
}

/* What two studies or people share is not averaged by repeats; repeatability is. */
static void
test_repeats_average_only_their_own (void)
{
  Shop shop = set_up ();
  TmLocalSize four = { .n = 4 };
  TmMethodUse use;

  add_budget_line (shop.job, "studied", TM_LINE_PEOPLE, "people", "0.002", "normal");
  use = tm_method_use (shop.job, shop.bore, "studied");
  assert_near (tm_method_uncertainty (&use, &four, NULL).u, sqrt (9e12 / 4 + 4e12 + 16e12 / 3 + 1e12 / 12),
               1e-3);
  tm_job_free (shop.job);
}

/* -------- Temperature -------- */

/* JCGM 100, H.1: 50 mm of 11.5e-6 / °C, a difference within ± 0.05 °C: 16.6 nm. */
static void
test_temperature_gum (void)
{
  Shop shop = set_up ();
  const TmUseWhen when = { .size = G_GINT64_CONSTANT (50000623000) };
  TmMethodUse use;

  shop.job->expansion = quantity ("11.5", TM_UNIT_HARDNESS);
  shop.job->part_temp_limit = quantity ("0.05", TM_UNIT_CELSIUS);
  use = tm_method_use_at (shop.job, shop.bore, "mic", &when);
  assert_near (tm_component_standard (only_line (&use, TM_COMPONENT_TEMPERATURE)), 16.6e3, 50);
  g_assert_cmpstr (only_line (&use, TM_COMPONENT_TEMPERATURE)->subject, ==, "part");
  tm_job_free (shop.job);
}

/* No line without a limit or a temperature; one for each side that has a limit, by its own expansion. */
static void
test_temperature_limits (void)
{
  Shop shop = set_up ();
  TmMethodUse use = tm_method_use (shop.job, shop.bore, "mic");

  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_TEMPERATURE), ==, 0);
  shop.job->material = "6061-T6";
  shop.job->part_temp_limit = quantity ("3", TM_UNIT_CELSIUS);
  use = tm_method_use (shop.job, shop.bore, "mic");
  assert_near (only_line (&use, TM_COMPONENT_TEMPERATURE)->value, 25e9 * 23.6e-6 * 3, 1);
  shop.job->gauge_temp_limit = quantity ("2", TM_UNIT_CELSIUS);
  use = tm_method_use (shop.job, shop.bore, "mic");
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_TEMPERATURE), ==, 2);
  /* Both sides' expansion at second order: aα · u(θ). */
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_EXPANSION), ==, 2);
  assert_near (find_u (&use),
               sqrt (1e12 / 12 + 16e12 / 3 + pow (25e9 * 23.6e-6, 2) * (3 + 9 * 0.01 / 9)
                     + pow (25e9 * 11.5e-6, 2) * (4.0 / 3 + 4 * 0.01 / 9)),
               1);
  add_budget_line (shop.job, "mic", TM_LINE_TEMPERATURE, "room", "0.001", "normal");
  use = tm_method_use (shop.job, shop.bore, "mic");
  assert_near (only_line (&use, TM_COMPONENT_TEMPERATURE)->value, 1e6, 1e-6);
  tm_job_free (shop.job);
}

/* Taken temperatures leave the thermometer's limit and the coefficient's: L aα θ. */
static void
test_temperature_taken (void)
{
  Shop shop = set_up ();
  const TmUseWhen when = { .temperatures = TRUE, .part_temp = 26, .gauge_temp = 20 };
  TmMethodUse use;
  guint assumed = 0;

  shop.job->material = "steel";
  shop.job->thermometer = quantity ("0.2", TM_UNIT_CELSIUS);
  use = tm_method_use_at (shop.job, shop.bore, "mic", &when);
  g_assert_cmpuint (count_lines (&use, TM_COMPONENT_TEMPERATURE), ==, 2);
  assert_near (find_u (&use),
               sqrt (1e12 / 12 + 16e12 / 3 + 2 * pow (25e9 * 11.5e-6 * 0.2, 2) / 3
                     + pow (25e9 * 1.15e-6, 2) / 3 * (36 + 2 * 0.04 / 3)),
               1);
  shop.job->thermometer = TM_QUANTITY_NONE;
  use = tm_method_use_at (shop.job, shop.bore, "mic", &when);
  for (guint i = 0; i < use.n_components; i++)
    assumed += use.components[i].kind == TM_COMPONENT_TEMPERATURE && use.components[i].assumed;
  g_assert_cmpuint (assumed, ==, 2);
  /* A material that nobody knows cannot be corrected for: all of the six degrees stay in the budget. */
  shop.job->material = "unobtainium";
  use = tm_method_use_at (shop.job, shop.bore, "mic", &when);
  assert_near (use.components[2].value, 25e9 * 23.6e-6 * 6.5, 1);
  tm_job_free (shop.job);
}

/* Temperature is no line of a deviation, nor of what is no length. */
static void
test_temperature_kinds (void)
{
  Shop shop = set_up ();
  TmFeature *form = add_feature (shop.job, "2", TM_KIND_FORM, NULL, "0.01", "");

  shop.job->part_temp_limit = quantity ("3", TM_UNIT_CELSIUS);
  g_assert_cmpuint (tm_method_use (shop.job, form, "mic").n_components, ==, 2);
  tm_job_free (shop.job);
}

/* -------- Resolution -------- */

static void
test_coarse (void)
{
  Shop shop = set_up ();
  TmMethodUse use = tm_method_use (shop.job, shop.bore, "mic");
  TmLimits limits = tm_feature_limits (shop.bore);

  g_assert_false (tm_resolution_is_coarse (&use, &limits));
  limits.upper = limits.lower + 10000000;
  g_assert_false (tm_resolution_is_coarse (&use, &limits));
  limits.upper -= 1;
  g_assert_true (tm_resolution_is_coarse (&use, &limits));
  limits.has_upper = FALSE;
  g_assert_false (tm_resolution_is_coarse (&use, &limits));
  tm_job_free (shop.job);
}

static void
test_few_values (void)
{
  static const char *const values[] = { "25.010", "25.011", "25.012", "25.011", "25.013" };
  Shop shop = set_up ();
  guint n;

  for (guint i = 0; i < 10; i++)
    {
      g_assert_false (tm_method_shows_few_values (shop.job, shop.bore, "mic", &n));
      read_size (shop.job, shop.bore, "", values[i % 5], "mic");
    }
  g_assert_true (tm_method_shows_few_values (shop.job, shop.bore, "mic", &n));
  g_assert_cmpuint (n, ==, 4);
  g_assert_false (tm_method_shows_few_values (shop.job, shop.bore, "transfer", &n));
  read_size (shop.job, shop.bore, "", "25.014", "mic");
  g_assert_false (tm_method_shows_few_values (shop.job, shop.bore, "mic", &n));
  tm_job_free (shop.job);
}

/* -------- Words -------- */

static void
test_words (void)
{
  for (guint i = 0; i < TM_N_COMPONENT_KINDS; i++)
    g_assert_cmpstr (tm_component_word ((TmComponentKind)i), !=, "");
  for (guint i = 0; i < TM_N_DISTRIBUTIONS; i++)
    {
      TmDistribution found = TM_N_DISTRIBUTIONS;

      g_assert_true (tm_distribution_from_word (tm_distribution_word ((TmDistribution)i), &found));
      g_assert_cmpuint (found, ==, i);
    }
  g_assert_false (tm_distribution_from_word ("flat", &(TmDistribution) { 0 }));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/method/certificate", test_certificate);
  g_test_add_func ("/core/method/certificate-not-in-force", test_certificate_not_in_force);
  g_test_add_func ("/core/method/drift", test_drift);
  g_test_add_func ("/core/method/feel", test_feel);
  g_test_add_func ("/core/method/zero-repeatability", test_zero_repeatability);
  g_test_add_func ("/core/method/written", test_written);
  g_test_add_func ("/core/method/many-lines", test_many_lines);
  g_test_add_func ("/core/method/line-dimension", test_line_dimension);
  g_test_add_func ("/core/method/repeats-average-only-their-own", test_repeats_average_only_their_own);
  g_test_add_func ("/core/method/temperature-gum", test_temperature_gum);
  g_test_add_func ("/core/method/temperature-limits", test_temperature_limits);
  g_test_add_func ("/core/method/temperature-taken", test_temperature_taken);
  g_test_add_func ("/core/method/temperature-kinds", test_temperature_kinds);
  g_test_add_func ("/core/method/coarse", test_coarse);
  g_test_add_func ("/core/method/few-values", test_few_values);
  g_test_add_func ("/core/method/words", test_words);
  return g_test_run ();
}
