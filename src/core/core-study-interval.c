/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-study-interval.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core-chi-square.h"

#define TAIL 0.025 /* on each side of 95 % */

/* By halving, as the library's own inverse may stop the program where it does not converge. */
static double
find_f_quantile (double p, double dof1, double dof2)
{
  double low = -60, high = 60; /* natural logarithms */

  for (guint i = 0; i < 60; i++)
    {
      const double middle = (low + high) / 2;

      if (gsl_cdf_fdist_P (exp (middle), dof1, dof2) < p)
        low = middle;
      else
        high = middle;
    }
  return exp ((low + high) / 2);
}

/* F with infinitely many second degrees of freedom. */
static double
find_chi_quantile (double p, double dof)
{
  return tm_chi_square_quantile (p, dof) / dof;
}

/* How far, relative to the mean square, its own lower and upper bound lie. */
static double
find_g (double dof)
{
  return 1 - 1 / find_chi_quantile (1 - TAIL, dof);
}

static double
find_h (double dof)
{
  return 1 / find_chi_quantile (TAIL, dof) - 1;
}

/* The joint terms of a difference, that make the interval exact when either part is 0. */
static double
find_g_joint (double dof1, double dof2)
{
  const double f = find_f_quantile (1 - TAIL, dof1, dof2), g = find_g (dof1) * f, h = find_h (dof2);

  return ((f - 1) * (f - 1) - g * g - h * h) / f;
}

static double
find_h_joint (double dof1, double dof2)
{
  const double f = find_f_quantile (TAIL, dof1, dof2), h = find_h (dof1) * f, g = find_g (dof2);

  return ((1 - f) * (1 - f) - h * h - g * g) / f;
}

static double
square (double x)
{
  return x * x;
}

static void
add_joint_terms (const TmSquare *squares, guint n, double *below, double *above)
{
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < n; j++)
      {
        const double product = squares[i].factor * squares[i].ms * squares[j].factor * squares[j].ms;

        if (!(squares[i].factor > 0) || !(squares[j].factor < 0))
          continue;
        *below -= find_g_joint (squares[i].dof, squares[j].dof) * product;
        *above -= find_h_joint (squares[i].dof, squares[j].dof) * product;
      }
}

void
tm_squares_interval (const TmSquare *squares, guint n, double *low, double *high)
{
  double sum = 0, below = 0, above = 0;

  for (guint i = 0; i < n; i++)
    {
      const double term = squares[i].factor * squares[i].ms;
      const double g = find_g (squares[i].dof), h = find_h (squares[i].dof);

      sum += term;
      below += square (term * (term > 0 ? g : h));
      above += square (term * (term > 0 ? h : g));
    }
  add_joint_terms (squares, n, &below, &above);
  *low = MAX (0, sum - sqrt (MAX (0, below)));
  *high = MAX (0, sum + sqrt (MAX (0, above)));
}

double
tm_squares_dof (const TmSquare *squares, guint n)
{
  double sum = 0, spread = 0;

  for (guint i = 0; i < n; i++)
    {
      sum += squares[i].factor * squares[i].ms;
      spread += square (squares[i].factor * squares[i].ms) / squares[i].dof;
    }
  return spread > 0 ? MAX (1, sum * sum / spread) : 1;
}
