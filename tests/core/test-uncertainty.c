/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Budgets against JCGM 100:2008 (the GUM) and tabled t; methods against hand sums.
 */

#include <math.h>

#include "core-method.h"
#include "core-uncertainty.h"
#include "judge-support.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))

static TmComponent
part (double value, double sensitivity, double dof)
{
  TmComponent component = tm_component (TM_COMPONENT_OTHER, TM_DISTRIBUTION_NORMAL, value, dof, FALSE);

  component.sensitivity = sensitivity;
  return component;
}

/* Half-width over standard uncertainty (JCGM 100, 4.3.7 to 4.4.6). */
static void
test_distributions (void)
{
  static const struct {
    TmDistribution distribution;
    double divisor;
  } cases[] = {
    { TM_DISTRIBUTION_NORMAL, 1 },
    { TM_DISTRIBUTION_T, 1 },
    { TM_DISTRIBUTION_RECTANGULAR, 1.7320508075688772 },
    { TM_DISTRIBUTION_TRIANGULAR, 2.449489742783178 },
    { TM_DISTRIBUTION_U_SHAPED, 1.4142135623730951 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmComponent component = tm_component (TM_COMPONENT_OTHER, cases[i].distribution, 6, INFINITY, FALSE);

      assert_near (tm_component_standard (&component), 6 / cases[i].divisor, 1e-15);
      component.divisor = 3;
      assert_near (tm_component_standard (&component), 2, 1e-15);
    }
}

/* Spot cases of Welch-Satterthwaite.  First: published 12.8 (recomputed 12.7956).  Second: inputs
 * published, answers recomputed. */
static void
test_welch_satterthwaite (void)
{
  const TmComponent first[] = { part (0.57, 1, 9), part (0.25, 1, INFINITY) };
  const TmComponent second[]
      = { part (0.1, 1, INFINITY), part (0.3, 2, 6), part (0.2, 3, 8), part (1.1, 0.5, 3) };
  TmUncertainty uncertainty = tm_uncertainty_combine (first, 2, 0.95);

  assert_near (uncertainty.dof, 12.7956, 5e-5);
  /* Truncated to 12 for k (JCGM 100, G.6.4); t table: 2.1788. */
  assert_near (uncertainty.coverage, 2.1788, 5e-5);
  uncertainty = tm_uncertainty_combine (second, 4, 0.95);
  assert_near (uncertainty.u, 1.016120, 5e-7);
  assert_near (uncertainty.dof, 15.60796, 5e-6);
}

/* The mean difference of H.1: repeatability 13/√5 with 24 dof, comparator ±10 at 95 % with 5 dof (t
 * printed as 2.57), comparator systematic 20 at three sigma, 8 dof. */
static TmUncertainty
combine_difference (void)
{
  const TmComponent parts[] = {
    part (13 / sqrt (5), 1, 24),
    part (10 / 2.57, 1, 5),
    part (20.0 / 3, 1, 8),
  };

  return tm_uncertainty_combine (parts, 3, 0.95);
}

/* JCGM 100, H.1, end-gauge calibration.  From unrounded parts: u(d) 9.664, u_c 31.66, dof 16.74 → 16,
 * t99 2.92, U99 92.5 nm (recomputed); the GUM prints 9.7, 32, 16, 2.92, 93 from rounded steps. */
static void
test_end_gauge (void)
{
  const double length = 50000623;
  TmUncertainty difference = combine_difference (), result;
  TmComponent parts[] = {
    part (25, 1, 18),
    part (difference.u, 1, difference.dof),
    part (11.5e-6, 0, INFINITY),
    part (0, length * -0.1, 50),
    tm_component (TM_COMPONENT_OTHER, TM_DISTRIBUTION_RECTANGULAR, 0.05, 2, FALSE),
  };

  assert_near (difference.u, 9.664, 5e-4);
  parts[3].value = 1e-6;
  parts[3].distribution = TM_DISTRIBUTION_RECTANGULAR;
  parts[4].sensitivity = length * 11.5e-6;
  result = tm_uncertainty_combine (parts, 5, 0.99);
  assert_near (result.u, 31.66, 5e-3);
  assert_near (result.dof, 16.74, 1e-2);
  assert_near (result.coverage, 2.92078, 5e-6);
  assert_near (result.expanded, 92.5, 5e-2);
}

/* JCGM 100, 5.1.2 note, with H.1's second-order terms 11.7 and 1.7 nm (published numbers from memory;
 * recomputed 11.726 and 1.667): 33.8 (published as 34). */
static void
test_end_gauge_second_order (void)
{
  const double length = 50e6, per_root_3 = 1 / sqrt (3);
  const double mean_temperature = hypot (0.2, 0.5 / G_SQRT2);
  const TmComponent parts[] = {
    part (31.66, 1, 16.74),
    part (1e-6 * per_root_3 * mean_temperature, length, INFINITY),
    part (2e-6 * per_root_3 * 0.05 * per_root_3, length, INFINITY),
  };
  TmUncertainty result = tm_uncertainty_combine (parts, 3, 0.95);

  /* The mean temperature: u 0.2, and a cycle of ± 0.5 °C, arcsine: 0.406201920232 (public value). */
  assert_near (mean_temperature, 0.406201920232, 1e-12);
  assert_near (tm_component_share (&parts[1]), 11.726, 5e-4);
  assert_near (tm_component_share (&parts[2]), 1.667, 5e-4);
  assert_near (result.u, 33.8, 5e-2);
}

/* With the GUM's rounded parts 5.8, 3.9, 6.7: u(d) 9.68194195397, dof 25.4472507774 (public reference
 * values). */
static void
test_end_gauge_rounded (void)
{
  const TmComponent parts[] = { part (5.8, 1, 24), part (3.9, 1, 5), part (6.7, 1, 8) };
  TmUncertainty result = tm_uncertainty_combine (parts, 3, 0.95);

  assert_near (result.u, 9.68194195397, 1e-11);
  assert_near (result.dof, 25.4472507774, 1e-10);
}

/* Two-sided t (published: 5 → 2.57, 10 → 2.23, 20 → 2.09, 50 → 2.01; all recomputed to four digits). */
static void
test_t_table (void)
{
  static const struct {
    double dof, at_95, at_99;
  } rows[] = {
    { 1, 12.7062, 63.6567 }, { 2, 4.3027, 9.9248 },   { 3, 3.1824, 5.8409 },  { 4, 2.7764, 4.6041 },
    { 5, 2.5706, 4.0321 },   { 6, 2.4469, 3.7074 },   { 7, 2.3646, 3.4995 },  { 8, 2.3060, 3.3554 },
    { 9, 2.2622, 3.2498 },   { 10, 2.2281, 3.1693 },  { 12, 2.1788, 3.0545 }, { 16, 2.1199, 2.9208 },
    { 18, 2.1009, 2.8784 },  { 20, 2.0860, 2.8453 },  { 25, 2.0595, 2.7874 }, { 30, 2.0423, 2.7500 },
    { 50, 2.0086, 2.6778 },  { 100, 1.9840, 2.6259 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (double fraction = 0; fraction < 1; fraction += 0.499)
      {
        assert_near (tm_t_quantile (0.975, rows[i].dof + fraction), rows[i].at_95, 5.1e-5);
        assert_near (tm_t_quantile (0.995, rows[i].dof + fraction), rows[i].at_99, 5.1e-5);
      }
  assert_near (tm_t_quantile (0.95, INFINITY), 1.6449, 5e-5);
  assert_near (tm_t_quantile (0.975, INFINITY), 1.959964, 5e-7);
  assert_near (tm_t_below (1.96, INFINITY), 0.9750021, 5e-8);
  assert_near (tm_t_above (2, INFINITY), 0.02275013, 5e-9);
  assert_near (tm_t_below (tm_t_quantile (0.95, 7), 7.9), 0.95, 1e-12);
}

static void
test_nothing_known (void)
{
  const TmComponent zero[] = { part (0, 1, 4) };

  g_assert_true (isnan (tm_uncertainty_combine (NULL, 0, 0.95).u));
  g_assert_true (isnan (tm_uncertainty_combine (zero, 1, 0.95).expanded));
}

/* -------- Methods -------- */

typedef struct {
  TmJob *job;
  TmFeature *bore;
} Shop;

static Shop
set_up (void)
{
  Shop shop = { make_job (TM_DECISION_GUARDED), NULL };

  add_gauge (shop.job, "MIC", "0.001", "0.002");
  add_gauge (shop.job, "TELE", NULL, "0.013");
  add_gauge (shop.job, "BARE", NULL, NULL);
  add_method (shop.job, "bore by transfer", "TELE,MIC", "0.004", "24");
  add_method (shop.job, "micrometer", "MIC", NULL, NULL);
  add_method (shop.job, "studied", "", "0.004", NULL);
  add_method (shop.job, "lost", "MIC,GONE", "0.004", "24");
  shop.bore = add_feature (shop.job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  return shop;
}

/* Resolution: half a step, rectangular: step/√12.  Error limit a/√3.  Repeatability s/√n with its
 * pooled dof. */
static void
test_method_budget (void)
{
  Shop shop = set_up ();
  TmLocalSize size = { .n = 4 };
  TmMethodUse use = tm_method_use (shop.job, shop.bore, "bore by transfer");
  TmUncertainty uncertainty = tm_method_uncertainty (&use, &size, NULL);
  double own = 1e12 / 12 + 16e12 / 4, shared = 4e12 / 3 + 169e12 / 3;

  g_assert_true (use.known);
  g_assert_cmpstr (use.gauge->tag, ==, "MIC");
  assert_near (uncertainty.u, sqrt (own + shared), 1e-3);
  assert_near (uncertainty.own, sqrt (own), 1e-3);
  assert_near (uncertainty.shared, sqrt (shared), 1e-3);
  assert_near (uncertainty.dof, pow (own + shared, 2) / (pow (16e12 / 4, 2) / 24), 1e-6);
  tm_job_free (shop.job);
}

static void
test_method_names (void)
{
  static const struct {
    const char *name;
    gboolean known, has_method, has_gauge;
  } cases[] = {
    { "micrometer", TRUE, TRUE, TRUE }, { "MIC", TRUE, FALSE, TRUE },  { "studied", TRUE, TRUE, FALSE },
    { "BARE", FALSE, FALSE, TRUE },     { "lost", FALSE, TRUE, TRUE }, { "nobody", FALSE, FALSE, FALSE },
    { "", FALSE, FALSE, FALSE },        { NULL, FALSE, FALSE, FALSE },
  };
  Shop shop = set_up ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmMethodUse use = tm_method_use (shop.job, shop.bore, cases[i].name);

      g_assert_cmpint (use.known, ==, cases[i].known);
      g_assert_cmpint (use.method != NULL, ==, cases[i].has_method);
      g_assert_cmpint (use.gauge != NULL, ==, cases[i].has_gauge);
    }
  tm_job_free (shop.job);
}

/* A gauge in millimetres says nothing about an angle. */
static void
test_method_dimension (void)
{
  Shop shop = set_up ();
  TmFeature *angle = add_feature (shop.job, "2", TM_KIND_ANGLE, NULL, NULL, "");

  angle->unit = TM_UNIT_DEGREE;
  g_assert_false (tm_method_use (shop.job, angle, "MIC").known);
  tm_job_free (shop.job);
}

/* Without a stated repeatability the repeats' own spread is used, with its n - 1 degrees of freedom. */
static void
test_own_repeats (void)
{
  Shop shop = set_up ();
  TmMethodUse use = tm_method_use (shop.job, shop.bore, "micrometer");
  TmLocalSize one = { .n = 1 }, three = { .n = 3, .spread = 3e6 };
  double fixed = 1e12 / 12 + 4e12 / 3;
  TmUncertainty uncertainty = tm_method_uncertainty (&use, &one, NULL);

  assert_near (uncertainty.u, sqrt (fixed), 1e-3);
  g_assert_true (isinf (uncertainty.dof));
  assert_near (uncertainty.coverage, 1.959964, 5e-7);
  uncertainty = tm_method_uncertainty (&use, &three, NULL);
  assert_near (uncertainty.u, sqrt (fixed + 3e12), 1e-3);
  assert_near (uncertainty.dof, pow (fixed + 3e12, 2) / (9e24 / 2), 1e-9);
  tm_job_free (shop.job);
}

/* Two offsets make twice their length: every part counts double; a bonus's size does not. */
static void
test_radial_sensitivity (void)
{
  Shop shop = set_up ();
  TmMethodUse use = tm_method_use (shop.job, shop.bore, "micrometer");
  TmLocalSize size = { .n = 1, .radial = TRUE };
  TmComponent bonus = tm_component (TM_COMPONENT_SIZE, TM_DISTRIBUTION_NORMAL, 5e6, INFINITY, TRUE);
  double fixed = 4 * (1e12 / 12 + 4e12 / 3);

  assert_near (tm_method_uncertainty (&use, &size, NULL).u, sqrt (fixed), 1e-3);
  assert_near (tm_method_uncertainty (&use, &size, &bonus).u, sqrt (fixed + 25e12), 1e-3);
  tm_job_free (shop.job);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/uncertainty/distributions", test_distributions);
  g_test_add_func ("/core/uncertainty/welch-satterthwaite", test_welch_satterthwaite);
  g_test_add_func ("/core/uncertainty/end-gauge", test_end_gauge);
  g_test_add_func ("/core/uncertainty/end-gauge-second-order", test_end_gauge_second_order);
  g_test_add_func ("/core/uncertainty/end-gauge-rounded", test_end_gauge_rounded);
  g_test_add_func ("/core/uncertainty/t-table", test_t_table);
  g_test_add_func ("/core/uncertainty/nothing-known", test_nothing_known);
  g_test_add_func ("/core/uncertainty/method-budget", test_method_budget);
  g_test_add_func ("/core/uncertainty/method-names", test_method_names);
  g_test_add_func ("/core/uncertainty/method-dimension", test_method_dimension);
  g_test_add_func ("/core/uncertainty/own-repeats", test_own_repeats);
  g_test_add_func ("/core/uncertainty/radial-sensitivity", test_radial_sensitivity);
  return g_test_run ();
}
