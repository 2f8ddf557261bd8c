/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * press-support: press fits for the tests.
 */

#pragma once

#include <math.h>

#include "core-press.h"

/* A fit of @inside/@diameter in @diameter/@outside (mm) at one interference; no forces, no temperatures. */
static inline TmPressInput
make_press (double interference, double inside, double diameter, double outside)
{
  TmPressInput input;

  tm_press_input_init (&input);
  input.interference = interference;
  input.diameter = diameter;
  input.hub_outside = outside;
  input.shaft_inside = inside;
  return input;
}

static inline void
set_body (TmPressBody *body, double modulus, double poisson)
{
  body->modulus = modulus;
  body->poisson = poisson;
}

static inline void
assert_close (double got, double want, double tolerance)
{
  if (!(fabs (got - want) <= tolerance))
    g_error ("%.12g is not %.12g within %g", got, want, tolerance);
}

/* Relative. */
static inline void
assert_same (double got, double want, double share)
{
  assert_close (got, want, share * fabs (want));
}
