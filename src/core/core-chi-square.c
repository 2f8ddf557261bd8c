/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-chi-square.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

/* Normal deviates beyond which less than 1e-32 lies. */
#define REACH 12.0

/* Above this GSL's distribution function is rough by 2e-7, and gives up on tails of two million; the cube
 * root is then as good. */
#define MANY 1e5

/* (χ²/ν)^(1/3) is nearly normal with mean 1 - 2/(9ν) and variance 2/(9ν) (E. B. Wilson, M. M. Hilferty,
 * Proceedings of the National Academy of Sciences 17, 1931). */
static double
find_near (double deviate, double dof)
{
  const double variance = 2 / (9 * dof), root = 1 - variance + deviate * sqrt (variance);

  return root > 0 ? dof * root * root * root : 0;
}

double
tm_chi_square_above (double x, double dof)
{
  if (isnan (x))
    return NAN;
  if (x <= find_near (-REACH, dof))
    return 1;
  if (dof > MANY)
    return gsl_cdf_ugaussian_Q ((cbrt (x / dof) - 1 + 2 / (9 * dof)) * sqrt (9 * dof / 2));
  return x > find_near (REACH, dof) + 4 * REACH * REACH ? 0 : gsl_cdf_chisq_Q (MAX (x, 0), dof);
}

/* By halving, on the logarithm: the tail that is the smaller one keeps its digits. */
double
tm_chi_square_quantile (double probability, double dof)
{
  const gboolean is_low = probability < 0.5;
  double low, high;

  if (!(probability > 0 && probability < 1 && dof > 0 && isfinite (dof)))
    return NAN;
  if (dof > MANY)
    return find_near (gsl_cdf_ugaussian_Pinv (probability), dof);
  low = log (MAX (find_near (-REACH, dof), 1e-300));
  high = log (find_near (REACH, dof) + 4 * REACH * REACH);
  for (guint i = 0; i < 100 && high - low > 1e-13; i++)
    {
      const double middle = (low + high) / 2, x = exp (middle);
      const gboolean under
          = is_low ? gsl_cdf_chisq_P (x, dof) < probability : gsl_cdf_chisq_Q (x, dof) > 1 - probability;

      *(under ? &low : &high) = middle;
    }
  return exp ((low + high) / 2);
}
