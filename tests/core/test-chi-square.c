/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The χ² distribution, where the library's inverse goes wrong among others.
 */

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-chi-square.h"
#include "core-numerics.h"

/* Recomputed with SciPy 1.10.1 (Cephes); 30 and 1000 stand in any table (16.791, 46.979; 914.257, 1089.531).
 * Above 100000 degrees of freedom 3e-9 of the value is a millionth of its deviation. */
static const struct {
  double dof, low, high;
} quantiles[] = {
  { 0.3, 2.6300743566293655e-11, 2.5450554374525542 }, { 0.5, 5.273202591259991e-07, 3.433235299960781 },
  { 1, 0.0009820691171752555, 5.02388618731489 },      { 30, 16.79077226556663, 46.97924224367116 },
  { 1000, 914.257153799259, 1089.5309127749135 },      { 2324.6, 2192.8640475903126, 2460.1243297370497 },
  { 5313.81, 5113.657555733551, 5517.750953488934 },   { 48763.7, 48153.51195721948, 49377.6766433691 },
  { 81876.3, 81085.069991121, 82671.31861398598 },     { 720502, 718151.1183216601, 722856.6702893446 },
  { 999999, 997229.0885291945, 1002772.7000820216 },   { 3000000.0, 2995200.982910247, 3004802.8057013326 },
};

static void
test_quantiles (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (quantiles); i++)
    {
      g_assert_cmpfloat_with_epsilon (tm_chi_square_quantile (0.025, quantiles[i].dof) / quantiles[i].low, 1,
                                      3e-9);
      g_assert_cmpfloat_with_epsilon (tm_chi_square_quantile (0.975, quantiles[i].dof) / quantiles[i].high, 1,
                                      3e-9);
    }
}

/* What lies above a quantile is what is left, and it falls as degrees of freedom go by. */
static void
test_above (void)
{
  for (double dof = 0.1; dof < 1e8; dof *= 1.7)
    {
      double last = 1;

      for (guint i = 1; i <= 19; i++)
        {
          double above = tm_chi_square_above (tm_chi_square_quantile (0.05 * i, dof), dof);

          g_assert_cmpfloat_with_epsilon (above, 1 - 0.05 * i, 1e-8);
          g_assert_cmpfloat (above, <, last);
          last = above;
        }
    }
}

static void
test_ends (void)
{
  static const double dofs[] = { 0.1, 1, 50, 1e5, 1e6, 1e7 };

  for (guint i = 0; i < G_N_ELEMENTS (dofs); i++)
    {
      g_assert_cmpfloat (tm_chi_square_above (1e12, dofs[i]), ==, 0);
      g_assert_cmpfloat (tm_chi_square_above (0, dofs[i]), ==, 1);
      g_assert_cmpfloat (tm_chi_square_above (-1, dofs[i]), ==, 1);
      g_assert_true (isnan (tm_chi_square_above (NAN, dofs[i])));
    }
  g_assert_true (isnan (tm_chi_square_quantile (0, 5)));
  g_assert_true (isnan (tm_chi_square_quantile (1, 5)));
  g_assert_true (isnan (tm_chi_square_quantile (0.5, 0)));
  g_assert_true (isnan (tm_chi_square_quantile (0.5, NAN)));
}

/* Where the library gives up, the program goes on. */
static void
test_giving_up (void)
{
  tm_numerics_init ();
  g_assert_true (isnan (gsl_cdf_chisq_Pinv (0.025, 0.034)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chi-square/quantiles", test_quantiles);
  g_test_add_func ("/chi-square/above", test_above);
  g_test_add_func ("/chi-square/ends", test_ends);
  g_test_add_func ("/chi-square/giving-up", test_giving_up);
  return g_test_run ();
}
