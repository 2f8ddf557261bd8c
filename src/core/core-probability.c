/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-probability.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <math.h>

#include "core-uncertainty.h"

#define POINTS 32
/* Beyond this many standard deviations a normal tail is under 1e-10 and left out: a wider reach would
 * cost the fixed number of points more than that. */
#define REACH 6.4

double
tm_probability_in (const TmMargin *margin, double u, double dof)
{
  double beyond_upper, beyond_lower;

  if (isnan (u))
    return NAN;
  beyond_upper = tm_t_above (margin->above / u, dof);
  beyond_lower = tm_t_below (-margin->below / u, dof);
  if (margin->zero_bounded)
    return MAX (0, 1 - beyond_upper / tm_t_below (margin->below / u, dof));
  return MAX (0, 1 - beyond_upper - beyond_lower);
}

/* Φ(x / r); a step where the own part is nothing.  By erfc() of the C library: most of the time of a
 * judgement goes here, and it takes two thirds of what GSL's does, to the same last digit but one. */
static double
get_share_below (double x, double r)
{
  if (x >= REACH * r)
    return 1;
  return x <= -REACH * r ? 0 : erfc (-x / r * G_SQRT2 / 2) / 2;
}

/* Π over the sizes, when every one of them is off by @s.  @whole: the upper limits are left out. */
static double
get_product (const TmMargin *margins, gsize n, double s, gboolean whole)
{
  double product = 1;

  for (gsize i = 0; i < n && product > 0; i++)
    {
      double outside = get_share_below (-margins[i].below - s, margins[i].own);

      if (!whole)
        outside += get_share_below (s - margins[i].above, margins[i].own);
      product *= MAX (0, 1 - outside);
    }
  return product;
}

/* Where the product climbs from nothing to one, and where it falls again. */
typedef struct {
  double rise_from, rise_to, fall_from, fall_to;
} Slopes;

static Slopes
find_slopes (const TmMargin *margins, gsize n, gboolean whole)
{
  Slopes slopes = { -INFINITY, -INFINITY, INFINITY, INFINITY };

  for (gsize i = 0; i < n; i++)
    {
      double reach = REACH * margins[i].own;

      slopes.rise_from = MAX (slopes.rise_from, -margins[i].below - reach);
      slopes.rise_to = MAX (slopes.rise_to, -margins[i].below + reach);
      if (whole)
        continue;
      slopes.fall_from = MIN (slopes.fall_from, margins[i].above - reach);
      slopes.fall_to = MIN (slopes.fall_to, margins[i].above + reach);
    }
  return slopes;
}

static double
integrate_panel (const TmMargin *margins, gsize n, double shared, double from, double to, gboolean whole)
{
  gsl_integration_glfixed_table *table;
  double sum = 0;

  if (!(to > from))
    return 0;
  table = gsl_integration_glfixed_table_alloc (POINTS);
  for (gsize i = 0; i < POINTS; i++)
    {
      double s, weight;

      gsl_integration_glfixed_point (from, to, i, &s, &weight, table);
      sum += weight * exp (-s * s / (2 * shared * shared)) * get_product (margins, n, s, whole);
    }
  gsl_integration_glfixed_table_free (table);
  return sum / (shared * sqrt (2 * G_PI));
}

/* The share of the shared error between @from and @to, where the product is one. */
static double
get_plateau (double shared, double from, double to)
{
  if (!(to > from))
    return 0;
  return gsl_cdf_ugaussian_P (to / shared) - gsl_cdf_ugaussian_P (from / shared);
}

/* Quadrature only where the product is neither nothing nor one, so that an own part far smaller
 * than the shared one (a steep product) costs no accuracy. */
static double
integrate_all (const TmMargin *margins, gsize n, double shared, gboolean whole)
{
  Slopes slopes = find_slopes (margins, n, whole);
  double low = -REACH * shared, high = REACH * shared;
  double from = CLAMP (slopes.rise_from, low, high), to = CLAMP (slopes.fall_to, low, high);
  double top_from = CLAMP (slopes.rise_to, low, high), top_to = CLAMP (slopes.fall_from, low, high);
  double middle = (from + to) / 2;

  if (!(shared > 0))
    return get_product (margins, n, 0, whole);
  if (top_from >= top_to)
    return integrate_panel (margins, n, shared, from, middle, whole)
           + integrate_panel (margins, n, shared, middle, to, whole);
  return integrate_panel (margins, n, shared, from, top_from, whole) + get_plateau (shared, top_from, top_to)
         + integrate_panel (margins, n, shared, top_to, to, whole);
}

double
tm_probability_all_in (const TmMargin *margins, gsize n, double shared)
{
  double inside = integrate_all (margins, n, shared, FALSE);
  gboolean is_cut = FALSE;

  for (gsize i = 0; i < n; i++)
    is_cut = is_cut || margins[i].zero_bounded;
  if (is_cut)
    inside /= integrate_all (margins, n, shared, TRUE);
  return CLAMP (inside, 0, 1);
}
