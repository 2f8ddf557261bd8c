/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Press fits: published worked examples, and Lamé's formulas against the differential equation itself.
 */

#include "press-support.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_odeiv2.h>
#include <string.h>

#define PSI_PER_MPA 145.0377377
#define MM_PER_IN   25.4

static TmPressAnswer
answer (const TmPressInput *input)
{
  TmPressAnswer out;

  tm_press (input, &out);
  g_assert_cmpint (out.status, ==, TM_PRESS_OK);
  return out;
}

/* A tube 20/40 in a jacket 40/60, E 207 GPa, largest hoop stress 100 MPa: the jacket's bore is 39.968289
 * (a textbook of machine elements, example 22.6: published).  The pressure and the tube's stresses are
 * recomputed.  Tolerances: half of the last figure given. */
static void
test_tube_and_jacket (void)
{
  TmPressInput input = make_press (40 - 39.968289, 20, 40, 60);
  TmPressAnswer out;

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 207, 0.3);
  out = answer (&input);
  assert_close (out.state.hub_hoop, 100.000,
                2e-3); /* 5e-7 mm of bore is 1.6e-3 MPa here, the rest rounding */
  assert_close (out.state.pressure, 38.4615, 1e-3);
  assert_close (out.state.shaft_hoop_outer, -64.10, 5e-3);
  assert_close (out.state.shaft_hoop_inner, -102.56, 7e-3);
  assert_close (out.state.hub_radial, -out.state.pressure, 1e-12);
}

/* A hollow shaft 100/200 in a sleeve 200/350, interference 0.2 (recomputed). */
static void
test_three_pairings (void)
{
  static const struct {
    double hub_modulus, hub_poisson, shaft_modulus, shaft_poisson, pressure, tolerance;
  } cases[] = {
    { 200, 0.28, 200, 0.28, 55.0, 0.05 },
    { 80, 0.33, 200, 0.28, 28.03, 0.005 },
    { 200, 0.28, 80, 0.33, 35.77, 0.005 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmPressInput input = make_press (0.2, 100, 200, 350);

      set_body (&input.hub, cases[i].hub_modulus, cases[i].hub_poisson);
      set_body (&input.shaft, cases[i].shaft_modulus, cases[i].shaft_poisson);
      assert_close (answer (&input).state.pressure, cases[i].pressure, cases[i].tolerance);
    }
}

/* A bush 20/25 (E 110, ν 0.34) in a steel ring of 50 (E 207, ν 0.3), interference 0.020: p 16.7280 MPa, the
 * bore closes by 16.897 µm (recomputed). */
static void
test_bush_closure (void)
{
  TmPressInput input = make_press (0.020, 20, 25, 50);
  TmPressAnswer out;

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 110, 0.34);
  out = answer (&input);
  assert_close (out.state.pressure, 16.7280, 5e-5);
  assert_close (out.state.bore_closure, 0.016897, 5e-7);
}

/* A thin plastic bush closes by about all of the interference (common practice); by Lamé by 4 to 9 % more. */
static void
test_plastic_bush (void)
{
  static const struct {
    double inside, poisson;
  } cases[] = { { 22, 0.41 }, { 21, 0.41 }, { 20, 0.41 }, { 20, 0.46 }, { 22.5, 0.46 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmPressInput input = make_press (0.100, cases[i].inside, 25, 50);
      double share;

      set_body (&input.hub, 207, 0.3);
      set_body (&input.shaft, 2.7, cases[i].poisson);
      share = answer (&input).state.bore_closure / 0.100;
      g_assert_cmpfloat (share, >, 1.035);
      g_assert_cmpfloat (share, <, 1.09);
    }
}

/* Two steel cylinders of radii 4, 6 and 8 in, radial interference 0.005 in, E 30e6 psi: 4050 psi at the
 * contact; hoop 14 500 in the outer's bore and -14 580 in the inner's (Timoshenko, Strength of Materials,
 * part II, compound cylinders: from memory, given to three figures). */
static void
test_compound_cylinder (void)
{
  TmPressInput input = make_press (0.010 * MM_PER_IN, 8 * MM_PER_IN, 12 * MM_PER_IN, 16 * MM_PER_IN);
  TmPressAnswer out;

  set_body (&input.hub, 30e6 / PSI_PER_MPA / 1000, 0.3);
  set_body (&input.shaft, 30e6 / PSI_PER_MPA / 1000, 0.3);
  out = answer (&input);
  assert_close (out.state.pressure * PSI_PER_MPA, 4050, 5);
  assert_close (out.state.hub_hoop * PSI_PER_MPA, 14500, 50);
  assert_close (out.state.shaft_hoop_inner * PSI_PER_MPA, -14580, 10);
}

/* A bronze bush 2.000/2.500 in in a steel sleeve of 3.500 in, interference 0.0032 in, E 17e6 and 30e6 psi, ν
 * 0.27: p 3518 psi, hoop in the sleeve 10 846 psi (Mott, Machine Elements in Mechanical Design, stresses for
 * force fits: from memory). */
static void
test_bush_in_sleeve (void)
{
  TmPressInput input = make_press (0.0032 * MM_PER_IN, 2 * MM_PER_IN, 2.5 * MM_PER_IN, 3.5 * MM_PER_IN);
  TmPressAnswer out;

  set_body (&input.hub, 30e6 / PSI_PER_MPA / 1000, 0.27);
  set_body (&input.shaft, 17e6 / PSI_PER_MPA / 1000, 0.27);
  out = answer (&input);
  assert_close (out.state.pressure * PSI_PER_MPA, 3518, 1);
  assert_close (out.state.hub_hoop * PSI_PER_MPA, 10846, 2);
}

/* --- three cylinders, by the public rings --- */

typedef struct {
  TmRing ring;
  double density; /* t / mm³ */
} Cylinder;

/* What a spinning ring grows by at @diameter (Timoshenko, Strength of Materials, part II, rotating discs). */
static double
find_spin_growth (const Cylinder *cylinder, double speed, double diameter)
{
  double a = cylinder->ring.inside / 2, b = cylinder->ring.outside / 2, r = diameter / 2;
  double nu = cylinder->ring.poisson;
  double shape = a * a + b * b + (1 + nu) / (1 - nu) * a * a * b * b / (r * r) - (1 + nu) / (3 + nu) * r * r;

  return 2 * (3 + nu) * (1 - nu) / (8 * cylinder->ring.modulus * 1000) * cylinder->density * speed * speed * r
         * shape;
}

static double
find_growth (const Cylinder *cylinder, double inner_pressure, double outer_pressure, double diameter)
{
  TmRing ring = cylinder->ring;

  ring.inner_pressure = inner_pressure;
  ring.outer_pressure = outer_pressure;
  return tm_ring_growth (&ring, diameter);
}

/* The two contact pressures, from the two contacts that must close: linear in both. */
static void
solve_three (const Cylinder c[3], const double interference[2], double outer, double inner, double speed,
             double pressure[2])
{
  double d1 = c[0].ring.inside, d2 = c[1].ring.inside;
  double a11 = find_growth (&c[0], 1, 0, d1) - find_growth (&c[1], 0, 1, d1);
  double a12 = -find_growth (&c[1], 1, 0, d1);
  double a21 = find_growth (&c[1], 0, 1, d2);
  double a22 = find_growth (&c[1], 1, 0, d2) - find_growth (&c[2], 0, 1, d2);
  double b1 = interference[0] - find_growth (&c[0], 0, outer, d1) - find_spin_growth (&c[0], speed, d1)
              + find_spin_growth (&c[1], speed, d1);
  double b2 = interference[1] + find_growth (&c[2], inner, 0, d2) - find_spin_growth (&c[1], speed, d2)
              + find_spin_growth (&c[2], speed, d2);
  double det = a11 * a22 - a12 * a21;

  pressure[0] = (b1 * a22 - b2 * a12) / det;
  pressure[1] = (a11 * b2 - a21 * b1) / det;
}

/* Steel, aluminium, steel; outer pressure 150, inner 30 MPa, 420 rad/s: 161.4 and 175.0 MPa (Croccolo and
 * Vincenzi 2009, as publicly quoted); 161.635 and 175.311 at rest (recomputed). */
static void
test_three_cylinders (void)
{
  static const Cylinder cylinders[3] = {
    { { 49.976, 70, 206, 0.29, 0, 0 }, 7850e-12 },
    { { 29.990, 49.976, 70, 0.33, 0, 0 }, 2770e-12 },
    { { 20, 29.990, 206, 0.29, 0, 0 }, 7850e-12 },
  };
  static const double interference[2] = { 0.050, 0.020 };
  double pressure[2];

  solve_three (cylinders, interference, 150, 30, 420, pressure);
  assert_close (pressure[0], 161.4, 0.05);
  assert_close (pressure[1], 175.0, 0.05);
  assert_close (pressure[0], 161.388, 1e-3);
  assert_close (pressure[1], 175.007, 1e-3);
  solve_three (cylinders, interference, 150, 30, 0, pressure);
  assert_close (pressure[0], 161.635, 1e-3);
  assert_close (pressure[1], 175.311, 1e-3);
}

/* --- against the differential equation --- */

typedef struct {
  double modulus; /* MPa */
  double poisson;
} Elasticity;

/* Equilibrium dσr/dr = (σt - σr)/r and the plane-stress law, for y = { u, σr }. */
static int
find_slope (double r, const double y[], double slope[], void *data)
{
  const Elasticity *e = data;
  double strain = y[0] / r;
  double hoop = e->modulus * strain + e->poisson * y[1];

  slope[0] = y[1] * (1 - e->poisson * e->poisson) / e->modulus - e->poisson * strain;
  slope[1] = (hoop - y[1]) / r;
  return GSL_SUCCESS;
}

static void
integrate (Elasticity e, double from, double to, double y[2])
{
  gsl_odeiv2_system system = { find_slope, NULL, 2, &e };
  gsl_odeiv2_driver *driver
      = gsl_odeiv2_driver_alloc_y_new (&system, gsl_odeiv2_step_rk8pd, (to - from) / 100, 1e-15, 1e-12);

  g_assert_cmpint (gsl_odeiv2_driver_apply (driver, &from, to, y), ==, GSL_SUCCESS);
  gsl_odeiv2_driver_free (driver);
}

/* From each free surface to the contact, to any scale; the contact fixes the scales: equal σr, and
 * displacements δ/2 apart. */
static void
check_by_integration (const TmPressInput *input)
{
  TmPressAnswer out = answer (input);
  double c = input->diameter / 2;
  Elasticity hub = { input->hub.modulus * 1000, input->hub.poisson };
  Elasticity shaft = { input->shaft.modulus * 1000, input->shaft.poisson };
  double h[2] = { 1e-3, 0 }, s[2] = { 1e-3, 0 };
  double pressure, scale;

  integrate (hub, input->hub_outside / 2, c, h);
  if (input->shaft_inside > 0)
    integrate (shaft, input->shaft_inside / 2, c, s);
  else
    { /* the middle of a solid shaft is pressed alike all round */
      s[1] = s[0] / 1e-3 * shaft.modulus / (1 - shaft.poisson);
      integrate (shaft, 1e-3, c, s);
    }
  pressure = input->interference / 2 / (s[0] / s[1] - h[0] / h[1]);
  assert_same (out.state.pressure, pressure, 1e-9);
  scale = -pressure / h[1];
  assert_same (out.state.hub_growth, 2 * scale * 1e-3, 1e-9);
  assert_same (out.state.hub_outside_hoop, hub.modulus * scale * 1e-3 / (input->hub_outside / 2), 1e-9);
  assert_same (out.state.hub_hoop, hub.modulus * scale * h[0] / c - hub.poisson * pressure, 1e-9);
  scale = -pressure / s[1];
  assert_same (out.state.shaft_hoop_outer, shaft.modulus * scale * s[0] / c - shaft.poisson * pressure, 1e-9);
  if (input->shaft_inside > 0)
    {
      assert_same (out.state.bore_closure, -2 * scale * 1e-3, 1e-9);
      assert_same (out.state.shaft_hoop_inner, shaft.modulus * scale * 1e-3 / (input->shaft_inside / 2),
                   1e-9);
    }
}

static void
test_integration (void)
{
  static const struct {
    double inside, diameter, outside, hub_modulus, hub_poisson, shaft_modulus, shaft_poisson;
  } cases[] = {
    { 20, 25, 50, 207, 0.3, 110, 0.34 },    { 0, 25, 50, 207, 0.3, 207, 0.3 },
    { 22, 25, 26.5, 2.7, 0.41, 2.7, 0.41 }, { 100, 200, 350, 80, 0.33, 200, 0.28 },
    { 3, 12, 80, 84, 0.22, 0.69, 0.46 },    { 0, 8, 12, 70.3, 0.345, 212, 0.293 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmPressInput input
          = make_press (cases[i].diameter / 1000, cases[i].inside, cases[i].diameter, cases[i].outside);

      set_body (&input.hub, cases[i].hub_modulus, cases[i].hub_poisson);
      set_body (&input.shaft, cases[i].shaft_modulus, cases[i].shaft_poisson);
      check_by_integration (&input);
    }
}

/* --- what follows from pressure and stress --- */

/* With σz = 0: in the hub's bore √(σt² + σt p + p²); at the shaft's bore σt alone; a solid shaft p (von
 * Mises; by hand with p = 38.4615, hoop 100 and -102.564). */
static void
test_mises (void)
{
  TmPressInput input = make_press (0.0317106, 20, 40, 60);
  TmPressAnswer out;

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 207, 0.3);
  input.hub.yield = 250;
  out = answer (&input);
  assert_close (out.state.hub_mises, 123.796, 2e-3);
  assert_close (out.state.shaft_mises, 102.564, 2e-3);
  assert_close (out.state.hub_use, 123.796 / 250, 1e-5);
  g_assert_true (isnan (out.state.shaft_use));
  input.shaft_inside = 0;
  out = answer (&input);
  assert_same (out.state.shaft_mises, out.state.pressure, 1e-12);
  g_assert_true (isnan (out.state.shaft_hoop_inner));
  g_assert_cmpfloat (out.state.bore_closure, ==, 0);
}

/* F = μ p π d L, T = F d/2: 16.7280 MPa on 25 × 30 mm with 0.08 and 0.14. */
static void
test_forces (void)
{
  TmPressInput input = make_press (0.020, 20, 25, 50);
  TmPressAnswer out;

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 110, 0.34);
  input.length = 30;
  input.friction_least = 0.08;
  input.friction_most = 0.14;
  out = answer (&input);
  assert_close (out.state.axial_least, 3153.1, 0.1);
  assert_close (out.state.axial_most, 5518.0, 0.1);
  assert_close (out.state.torque_least, 39.414, 1e-3);
  assert_close (out.state.torque_most, 68.975, 1e-3);
  input.length = NAN;
  out = answer (&input);
  g_assert_true (isnan (out.state.axial_least));
  g_assert_true (isnan (out.state.torque_most));
  assert_close (out.state.pressure, 16.7280, 5e-5);
}

/* Loss 0.8 (Rz hub + Rz shaft) (DIN 7190): 3.2 µm of Rz 2.5 and 1.5; growth and pressure follow what is left.
 */
static void
test_roughness (void)
{
  TmPressInput input = make_press (0.020, 20, 25, 50);
  TmPressAnswer smooth, rough;

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 110, 0.34);
  smooth = answer (&input);
  input.hub_roughness = 0.0025;
  input.shaft_roughness = 0.0015;
  rough = answer (&input);
  assert_close (rough.roughness_loss, 0.0032, 1e-12);
  assert_close (rough.state.effective, 0.0168, 1e-12);
  assert_same (rough.state.pressure, smooth.state.pressure * 0.84, 1e-12);
  assert_same (rough.state.hub_growth, smooth.state.hub_growth * 0.84, 1e-12);
}

/* ΔT = (δ + gap)/(α d), at the most interference and before roughness; cooling by the cold α (steel 8.5e-6,
 * DIN 7190, from memory): 0.035 + 0.025 on 25 mm is 2400 ppm. */
static void
test_temperatures (void)
{
  TmPressInput input = make_press (0.020, 0, 25, 50);
  TmPressAnswer out;

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 207, 0.3);
  input.interference_least = 0.007;
  input.interference_most = 0.035;
  out = answer (&input);
  g_assert_true (isnan (out.heat_hub_to) && isnan (out.cool_shaft_to));
  input.gap = 0.025;
  out = answer (&input); /* of no known expansion */
  g_assert_true (isnan (out.heat_hub_to) && isnan (out.cool_shaft_to));
  g_assert_true (out.cold_enough);
  input.hub.expansion = 12;
  input.shaft.expansion = 11.5;
  input.shaft.cold = 8.5;
  out = answer (&input);
  assert_close (out.heat_hub_to, 20 + 200, 1e-9);
  assert_close (out.cool_shaft_to, 20 - 2400 / 8.5, 1e-9);
  g_assert_true (out.cold_enough);
  g_assert_false (out.cold_assumed);
  input.shaft.cold = NAN;
  out = answer (&input);
  assert_close (out.cool_shaft_to, 20 - 2400 / 11.5, 1e-9);
  g_assert_true (out.cold_assumed);
  input.gap = 0.075;
  input.shaft.cold = 8.5;
  out = answer (&input);
  g_assert_false (out.cold_enough);
  g_assert_true (isnan (out.cool_shaft_to));
  input.interference = input.interference_least = input.interference_most = -0.100;
  tm_press (&input, &out);
  assert_close (out.heat_hub_to, 20, 0);
  assert_close (out.cool_shaft_to, 20, 0);
}

/* A fit that may be loose or tight: each end stands for itself. */
static void
test_range (void)
{
  TmPressInput input = make_press (0.020, 0, 25, 50);
  TmPressAnswer out;

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 207, 0.3);
  input.length = 30;
  input.friction_least = input.friction_most = 0.1;
  input.interference_least = -0.010;
  input.interference_most = 0.040;
  out = answer (&input);
  g_assert_cmpfloat (out.least.pressure, ==, 0);
  g_assert_cmpfloat (out.least.axial_most, ==, 0);
  assert_same (out.most.pressure, 2 * out.state.pressure, 1e-12);
  input.interference = -0.005;
  tm_press (&input, &out);
  g_assert_cmpint (out.status, ==, TM_PRESS_NO_INTERFERENCE);
  g_assert_cmpfloat (out.state.hub_hoop, ==, 0);
  g_assert_false (signbit (out.state.hub_radial) || signbit (out.state.shaft_hoop_outer));
  g_assert_cmpfloat (out.most.pressure, >, 0);
}

static void
test_thin_hub (void)
{
  TmPressInput input = make_press (0.010, 0, 25, 29.9);

  set_body (&input.hub, 207, 0.3);
  set_body (&input.shaft, 207, 0.3);
  g_assert_true (answer (&input).thin_hub);
  input.hub_outside = 30.1;
  g_assert_false (answer (&input).thin_hub);
}

/* --- nonsense --- */

typedef struct {
  const char *name;
  gsize field;
  double value;
  TmPressStatus status;
} Nonsense;

#define FIELD(member) G_STRUCT_OFFSET (TmPressInput, member)

static const Nonsense nonsense[] = {
  { "diameter of nothing", FIELD (diameter), 0, TM_PRESS_BAD_DIAMETER },
  { "diameter below zero", FIELD (diameter), -25, TM_PRESS_BAD_DIAMETER },
  { "diameter unknown", FIELD (diameter), NAN, TM_PRESS_BAD_DIAMETER },
  { "diameter without end", FIELD (diameter), INFINITY, TM_PRESS_BAD_DIAMETER },
  { "diameter that would run over", FIELD (diameter), 1e200, TM_PRESS_BAD_DIAMETER },
  { "hub thinner than zero", FIELD (hub_outside), 24, TM_PRESS_HUB_TOO_THIN },
  { "hub of no wall", FIELD (hub_outside), 25, TM_PRESS_HUB_TOO_THIN },
  { "hub of one bit of wall", FIELD (hub_outside), 25.000000000000004, TM_PRESS_HUB_TOO_THIN },
  { "hub unknown", FIELD (hub_outside), NAN, TM_PRESS_HUB_TOO_THIN },
  { "hub without end", FIELD (hub_outside), INFINITY, TM_PRESS_HUB_TOO_THIN },
  { "bush bore larger than its outside", FIELD (shaft_inside), 26, TM_PRESS_SHAFT_BORE },
  { "bush of no wall", FIELD (shaft_inside), 25, TM_PRESS_SHAFT_BORE },
  { "bush bore below zero", FIELD (shaft_inside), -1, TM_PRESS_SHAFT_BORE },
  { "bush bore not a number", FIELD (shaft_inside), NAN, TM_PRESS_SHAFT_BORE },
  { "length of nothing", FIELD (length), 0, TM_PRESS_BAD_LENGTH },
  { "length without end", FIELD (length), INFINITY, TM_PRESS_BAD_LENGTH },
  { "hub modulus below zero", FIELD (hub.modulus), -207, TM_PRESS_HUB_MODULUS },
  { "hub modulus of nothing", FIELD (hub.modulus), 0, TM_PRESS_HUB_MODULUS },
  { "hub modulus unknown", FIELD (hub.modulus), NAN, TM_PRESS_HUB_MODULUS },
  { "shaft modulus below zero", FIELD (shaft.modulus), -1, TM_PRESS_SHAFT_MODULUS },
  { "shaft modulus without end", FIELD (shaft.modulus), INFINITY, TM_PRESS_SHAFT_MODULUS },
  { "hub Poisson 0.6", FIELD (hub.poisson), 0.6, TM_PRESS_HUB_POISSON },
  { "hub Poisson -1", FIELD (hub.poisson), -1, TM_PRESS_HUB_POISSON },
  { "shaft Poisson 0.6", FIELD (shaft.poisson), 0.6, TM_PRESS_SHAFT_POISSON },
  { "shaft Poisson unknown", FIELD (shaft.poisson), NAN, TM_PRESS_SHAFT_POISSON },
  { "yield below zero", FIELD (hub.yield), -1, TM_PRESS_BAD_YIELD },
  { "yield without end", FIELD (shaft.yield), INFINITY, TM_PRESS_BAD_YIELD },
  { "expansion of nothing", FIELD (hub.expansion), 0, TM_PRESS_BAD_EXPANSION },
  { "cold expansion below zero", FIELD (shaft.cold), -8.5, TM_PRESS_BAD_EXPANSION },
  { "friction below zero", FIELD (friction_least), -0.1, TM_PRESS_BAD_FRICTION },
  { "friction least above most", FIELD (friction_least), 0.3, TM_PRESS_BAD_FRICTION },
  { "friction without end", FIELD (friction_most), INFINITY, TM_PRESS_BAD_FRICTION },
  { "roughness below zero", FIELD (hub_roughness), -0.001, TM_PRESS_BAD_ROUGHNESS },
  { "roughness not a number", FIELD (shaft_roughness), NAN, TM_PRESS_BAD_ROUGHNESS },
  { "gap below zero", FIELD (gap), -0.01, TM_PRESS_BAD_GAP },
  { "gap of more than a tenth", FIELD (gap), 2.6, TM_PRESS_BAD_GAP },
  { "hotter than any part", FIELD (ambient), 1001, TM_PRESS_BAD_TEMPERATURE },
  { "colder than absolute zero", FIELD (ambient), -274, TM_PRESS_BAD_TEMPERATURE },
  { "ambient not a number", FIELD (ambient), NAN, TM_PRESS_BAD_TEMPERATURE },
  { "interference of a tenth of the diameter", FIELD (interference_most), 2.51, TM_PRESS_TOO_MUCH },
  { "interference unknown", FIELD (interference), NAN, TM_PRESS_BAD_INTERFERENCE },
  { "interference without end", FIELD (interference), INFINITY, TM_PRESS_BAD_INTERFERENCE },
  { "least above the interference", FIELD (interference_least), 0.021, TM_PRESS_BAD_INTERFERENCE },
  { "most below the interference", FIELD (interference_most), 0.019, TM_PRESS_BAD_INTERFERENCE },
  { "roughness takes it all", FIELD (hub_roughness), 0.026, TM_PRESS_NO_INTERFERENCE },
  { "nothing pressed", FIELD (interference), 0, TM_PRESS_BAD_INTERFERENCE },
};

static TmPressInput
make_sound_press (void)
{
  TmPressInput input = make_press (0.020, 20, 25, 50);

  input.hub = (TmPressBody) { 207, 0.3, 250, 11.5, 8.5 };
  input.shaft = (TmPressBody) { 110, 0.34, 145, 18, 15 };
  input.interference_least = 0.010;
  input.interference_most = 0.030;
  input.length = 30;
  input.friction_least = 0.08;
  input.friction_most = 0.14;
  input.gap = 0.020;
  return input;
}

/* Every figure of an answer is finite, or NAN where it is not known. */
static void
assert_no_infinity (const TmPressAnswer *out)
{
  const double *const states[] = { &out->state.effective, &out->least.effective, &out->most.effective };

  for (guint i = 0; i < G_N_ELEMENTS (states); i++)
    for (guint j = 0; j < sizeof (TmPressState) / sizeof (double); j++)
      g_assert_false (isinf (states[i][j]));
  g_assert_false (isinf (out->heat_hub_to) || isinf (out->cool_shaft_to) || isinf (out->roughness_loss));
}

static void
test_nonsense (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (nonsense); i++)
    {
      TmPressInput input = make_sound_press ();
      TmPressAnswer out;

      memcpy ((char *)&input + nonsense[i].field, &nonsense[i].value, sizeof (double));
      tm_press (&input, &out);
      if (out.status != nonsense[i].status)
        g_error ("%s: status %d", nonsense[i].name, out.status);
      assert_no_infinity (&out);
      g_assert_cmpstr (tm_press_status_word (out.status), !=, "");
      g_assert_true (out.status == TM_PRESS_NO_INTERFERENCE || isnan (out.state.pressure));
    }
}

/* The corners of what is accepted: all stays within the range of a double. */
static void
test_extremes (void)
{
  static const double sizes[] = { 1e-9, 1e-3, 1, 1e9 };
  static const double moduli[] = { 1e-9, 1, 1e9 };

  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint j = 0; j < G_N_ELEMENTS (moduli); j++)
      for (guint k = 0; k < G_N_ELEMENTS (moduli); k++)
        {
          TmPressInput input = make_sound_press ();
          TmPressAnswer out;

          input.interference = input.interference_least = input.interference_most = 1e-10;
          input.diameter = sizes[i];
          input.hub_outside = sizes[i] >= 1e9 ? 1e9 : sizes[i] * 1.001;
          input.shaft_inside = sizes[i] * 0.999;
          input.hub.modulus = moduli[j];
          input.shaft.modulus = moduli[k];
          input.hub.yield = input.shaft.yield = 1e-9;
          input.hub.expansion = input.shaft.expansion = input.shaft.cold = 1e-9;
          input.length = input.friction_most = 1e9;
          input.gap = sizes[i] / 10;
          tm_press (&input, &out);
          assert_no_infinity (&out);
          g_assert_true (out.status == TM_PRESS_OK || out.status == TM_PRESS_HUB_TOO_THIN);
        }
}

/* Any figure at any place, as often sound as not: never an infinity, and what is called sound is a number. */
static void
test_any_figures (void)
{
  static const double figures[] = { NAN, INFINITY, -INFINITY, -1,        0,  5e-324, 1e-12, 1e-9, 0.02,
                                    0.3, 20,       25,        24.999999, 50, 207,    1e9,   1e18, 1e308 };
  g_autoptr (GRand) any = g_rand_new_with_seed (7190);
  const gsize n_fields = sizeof (TmPressInput) / sizeof (double);
  guint n_sound = 0;

  for (guint i = 0; i < 200000; i++)
    {
      TmPressInput input = make_sound_press ();
      TmPressAnswer out;

      for (guint j = 0; j < 3; j++)
        {
          gsize field = (gsize)g_rand_int_range (any, 0, (gint32)n_fields);

          memcpy ((char *)&input + field * sizeof (double),
                  &figures[g_rand_int_range (any, 0, G_N_ELEMENTS (figures))], sizeof (double));
        }
      tm_press (&input, &out);
      assert_no_infinity (&out);
      g_assert_true (out.status != TM_PRESS_OK || isfinite (out.state.pressure + out.most.hub_mises));
      n_sound += out.status == TM_PRESS_OK;
    }
  g_assert_cmpuint (n_sound, >, 5000);
}

/* Lamé's cylinders say nothing of a key in its way. */
static void
test_length (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *feature = tm_feature_new ();
  TmPressInput input;
  TmPressAnswer out;

  feature->kind = TM_KIND_LENGTH;
  feature->nominal = tm_quantity_new (G_GINT64_CONSTANT (30000000000), TM_UNIT_MM, 0);
  tm_press_input_of (job, feature, &input);
  input.interference = input.interference_least = input.interference_most = 0.01;
  g_assert_true (isnan (input.diameter));
  tm_press (&input, &out);
  g_assert_cmpint (out.status, ==, TM_PRESS_BAD_DIAMETER);
  feature->kind = TM_KIND_BORE;
  tm_press_input_of (job, feature, &input);
  g_assert_cmpfloat_with_epsilon (input.diameter, 30, 1e-9);
  tm_feature_free (feature);
}

static void
test_words (void)
{
  g_assert_cmpstr (tm_press_status_word (TM_PRESS_OK), ==, "");
  for (int i = TM_PRESS_OK + 1; i < TM_N_PRESS_STATUSES; i++)
    {
      g_assert_nonnull (strstr (tm_press_status_word (i), ": ")); /* the figure, then the mend */
      for (int j = i + 1; j < TM_N_PRESS_STATUSES; j++)
        g_assert_cmpstr (tm_press_status_word (i), !=, tm_press_status_word (j));
    }
}

static gboolean
has_caution (const TmPressInput *input, TmPressCaution caution, gboolean plastic)
{
  TmPressAnswer out = answer (input);

  return tm_press_caution_applies (caution, &out, plastic);
}

/* Each caution where it belongs, and the two that always do. */
static void
test_cautions (void)
{
  TmPressInput input = make_sound_press ();

  for (int i = 0; i < TM_N_PRESS_CAUTIONS; i++)
    {
      gboolean always = i == TM_PRESS_CAUTION_GUARD || i == TM_PRESS_CAUTION_ESTIMATE;

      g_assert_cmpint (has_caution (&input, i, FALSE), ==, always);
      g_assert_true (g_str_has_suffix (tm_press_caution_word (i), "."));
    }
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_RELAXES, TRUE));
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_MOISTURE, TRUE));
  input.shaft.yield = 100; /* the shaft's bore has 139 MPa at the most interference */
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_OVER_YIELD, FALSE));
  input.shaft.yield = NAN;
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_YIELD_UNKNOWN, FALSE));
  input.shaft.cold = NAN;
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_COLD_ASSUMED, FALSE));
  input.gap = 0.050;
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_TEMPER, FALSE));
  input.gap = 0.500;
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_NOT_COLD_ENOUGH, FALSE));
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_NOT_HOT_ENOUGH, FALSE));
  input.interference_least = -0.005;
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_MAY_BE_LOOSE, FALSE));
  input.hub_outside = 29;
  g_assert_true (has_caution (&input, TM_PRESS_CAUTION_THIN, FALSE));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/press/tube-and-jacket", test_tube_and_jacket);
  g_test_add_func ("/press/three-pairings", test_three_pairings);
  g_test_add_func ("/press/bush-closure", test_bush_closure);
  g_test_add_func ("/press/plastic-bush", test_plastic_bush);
  g_test_add_func ("/press/compound-cylinder", test_compound_cylinder);
  g_test_add_func ("/press/bush-in-sleeve", test_bush_in_sleeve);
  g_test_add_func ("/press/three-cylinders", test_three_cylinders);
  g_test_add_func ("/press/integration", test_integration);
  g_test_add_func ("/press/mises", test_mises);
  g_test_add_func ("/press/forces", test_forces);
  g_test_add_func ("/press/roughness", test_roughness);
  g_test_add_func ("/press/temperatures", test_temperatures);
  g_test_add_func ("/press/range", test_range);
  g_test_add_func ("/press/thin-hub", test_thin_hub);
  g_test_add_func ("/press/nonsense", test_nonsense);
  g_test_add_func ("/press/extremes", test_extremes);
  g_test_add_func ("/press/any-figures", test_any_figures);
  g_test_add_func ("/press/length", test_length);
  g_test_add_func ("/press/words", test_words);
  g_test_add_func ("/press/cautions", test_cautions);
  return g_test_run ();
}
