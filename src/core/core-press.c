/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-press.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-form.h"
#include "core-material.h"

/* Share of both roughness depths that a press fit flattens (DIN 7190). */
#define ROUGHNESS_SHARE 0.8

/* Of the diameter: a larger interference, or gap, is a slip of the decimal point. */
#define MOST_SHARE 0.1

/* Of the diameter: a wall under it is called thin. */
#define THIN_WALL 0.1

#define MPA_PER_GPA  1000
#define N_MM_PER_N_M 1000
#define PPM          1e-6

/* No figure of a machine shop is larger, or smaller when it has to be above zero; between them no formula
 * here leaves the range of a double. */
#define LARGEST  1e9
#define SMALLEST 1e-9

static const char *const status_words[TM_N_PRESS_STATUSES] = {
  [TM_PRESS_OK] = "",
  [TM_PRESS_NO_INTERFERENCE] = NC_ (
      "press status", "interference: none is left, it is a clearance or roughness takes it; nothing holds"),
  [TM_PRESS_BAD_DIAMETER] = NC_ ("press status", "common diameter: must be above zero; state it"),
  [TM_PRESS_BAD_INTERFERENCE]
  = NC_ ("press status", "interference: must be a number within its own range; state it"),
  [TM_PRESS_TOO_MUCH]
  = NC_ ("press status",
         "interference: more than a tenth of the diameter is no press fit; look at the decimal point"),
  [TM_PRESS_HUB_TOO_THIN]
  = NC_ ("press status", "hub outside: must be larger than the common diameter; state it"),
  [TM_PRESS_SHAFT_BORE]
  = NC_ ("press status",
         "shaft bore: must be smaller than the common diameter, 0 for a solid shaft; correct it"),
  [TM_PRESS_BAD_LENGTH] = NC_ ("press status", "length of contact: must be above zero; correct it"),
  [TM_PRESS_HUB_MODULUS]
  = NC_ ("press status", "hub: its modulus must be above zero; name a material of the tables or state it"),
  [TM_PRESS_SHAFT_MODULUS]
  = NC_ ("press status", "shaft: its modulus must be above zero; name a material of the tables or state it"),
  [TM_PRESS_HUB_POISSON]
  = NC_ ("press status",
         "hub: its Poisson's ratio must lie between -1 and 0.5; name a material of the tables or state it"),
  [TM_PRESS_SHAFT_POISSON]
  = NC_ ("press status",
         "shaft: its Poisson's ratio must lie between -1 and 0.5; name a material of the tables or state it"),
  [TM_PRESS_BAD_YIELD] = NC_ ("press status", "yield strength: must be above zero; correct it"),
  [TM_PRESS_BAD_EXPANSION] = NC_ ("press status", "expansion: must be above zero; correct it"),
  [TM_PRESS_BAD_FRICTION]
  = NC_ ("press status", "friction: must not be below zero, nor the least above the most; correct it"),
  [TM_PRESS_BAD_ROUGHNESS] = NC_ ("press status", "roughness: must not be below zero; correct it"),
  [TM_PRESS_BAD_GAP]
  = NC_ ("press status",
         "gap for dropping in: must not be below zero, nor above a tenth of the diameter; correct it"),
  [TM_PRESS_BAD_TEMPERATURE]
  = NC_ ("press status",
         "ambient temperature: must lie between absolute zero, -273.15 °C, and 1000 °C; correct it"),
};

const char *
tm_press_status_word (TmPressStatus status)
{
  g_return_val_if_fail (status < TM_N_PRESS_STATUSES, "");
  return status_words[status];
}

/* Lamé: σr = A - B/r², σt = A + B/r², with A = (pi a² - po b²)/(b² - a²), B = (pi - po) a² b²/(b² - a²);
 * diameters in place of radii, and in shares of the outside, so that no square runs over. */
void
tm_ring_stress (const TmRing *ring, double diameter, double *radial, double *hoop)
{
  double q = ring->inside / ring->outside;
  double wall = (1 - q) * (1 + q);
  double mean = (ring->inner_pressure * q * q - ring->outer_pressure) / wall;
  double s = ring->inside / diameter;
  double bent = ring->inside > 0 ? (ring->inner_pressure - ring->outer_pressure) * s * s / wall : 0;

  *radial = mean - bent + 0.0; /* never a minus zero */
  *hoop = mean + bent + 0.0;
}

/* Hoop strain in plane stress, (σt - ν σr)/E. */
double
tm_ring_growth (const TmRing *ring, double diameter)
{
  double radial, hoop;

  tm_ring_stress (ring, diameter, &radial, &hoop);
  return diameter * (hoop - ring->poisson * radial) / (ring->modulus * MPA_PER_GPA);
}

/* Von Mises with no axial stress. */
static double
find_mises (double radial, double hoop)
{
  return sqrt (radial * radial - radial * hoop + hoop * hoop);
}

static TmRing
make_hub (const TmPressInput *in, double pressure)
{
  return (TmRing) {
    in->diameter, in->hub_outside, in->hub.modulus, in->hub.poisson, pressure, 0,
  };
}

static TmRing
make_shaft (const TmPressInput *in, double pressure)
{
  return (TmRing) {
    in->shaft_inside, in->diameter, in->shaft.modulus, in->shaft.poisson, 0, pressure,
  };
}

/* What one MPa opens the hub and closes the shaft by together, on diameter. */
static double
find_give (const TmPressInput *in)
{
  TmRing hub = make_hub (in, 1), shaft = make_shaft (in, 1);

  return tm_ring_growth (&hub, in->diameter) - tm_ring_growth (&shaft, in->diameter);
}

static void
fill_hub (const TmPressInput *in, TmPressState *out)
{
  TmRing hub = make_hub (in, out->pressure);
  double radial;

  tm_ring_stress (&hub, in->diameter, &out->hub_radial, &out->hub_hoop);
  tm_ring_stress (&hub, in->hub_outside, &radial, &out->hub_outside_hoop);
  out->hub_growth = tm_ring_growth (&hub, in->hub_outside);
  out->hub_mises = find_mises (out->hub_radial, out->hub_hoop);
  out->hub_use = out->hub_mises / in->hub.yield;
}

static void
fill_shaft (const TmPressInput *in, TmPressState *out)
{
  TmRing shaft = make_shaft (in, out->pressure);
  double radial;

  tm_ring_stress (&shaft, in->diameter, &radial, &out->shaft_hoop_outer);
  out->shaft_mises = find_mises (radial, out->shaft_hoop_outer);
  out->shaft_hoop_inner = NAN;
  if (in->shaft_inside > 0)
    {
      tm_ring_stress (&shaft, in->shaft_inside, &radial, &out->shaft_hoop_inner);
      out->shaft_mises = MAX (out->shaft_mises, fabs (out->shaft_hoop_inner));
      out->bore_closure = 0 - tm_ring_growth (&shaft, in->shaft_inside);
    }
  out->shaft_use = out->shaft_mises / in->shaft.yield;
}

static void
fill_forces (const TmPressInput *in, TmPressState *out)
{
  double normal = out->pressure * G_PI * in->diameter * in->length;

  out->axial_least = in->friction_least * normal;
  out->axial_most = in->friction_most * normal;
  out->torque_least = out->axial_least * in->diameter / 2 / N_MM_PER_N_M;
  out->torque_most = out->axial_most * in->diameter / 2 / N_MM_PER_N_M;
}

static TmPressState
find_state (const TmPressInput *in, double interference, double loss)
{
  TmPressState state = { .effective = MAX (interference - loss, 0) };

  state.pressure = state.effective / find_give (in);
  fill_hub (in, &state);
  fill_shaft (in, &state);
  fill_forces (in, &state);
  return state;
}

/* Not a number, or larger than anything here. */
static gboolean
is_wild (double value)
{
  return !(fabs (value) <= LARGEST);
}

static gboolean
is_above_zero (double value)
{
  return value >= SMALLEST && value <= LARGEST;
}

static gboolean
is_unknown_or_above_zero (double value)
{
  return isnan (value) || is_above_zero (value);
}

static gboolean
is_unknown_or_not_negative (double value)
{
  return isnan (value) || (value >= 0 && value <= LARGEST);
}

static gboolean
is_poisson (double value)
{
  return value > -1 && value <= 0.5;
}

static TmPressStatus
check_interference (const TmPressInput *in, double least, double most)
{
  if (is_wild (in->interference) || is_wild (least) || is_wild (most))
    return TM_PRESS_BAD_INTERFERENCE;
  if (least > in->interference || most < in->interference)
    return TM_PRESS_BAD_INTERFERENCE;
  return most > MOST_SHARE * in->diameter ? TM_PRESS_TOO_MUCH : TM_PRESS_OK;
}

static TmPressStatus
check_shape (const TmPressInput *in)
{
  double q = in->diameter / in->hub_outside;
  double s = in->shaft_inside / in->diameter;

  if (!is_above_zero (in->hub_outside) || !((1 - q) * (1 + q) > SMALLEST))
    return TM_PRESS_HUB_TOO_THIN;
  if (!(in->shaft_inside >= 0) || !((1 - s) * (1 + s) > SMALLEST))
    return TM_PRESS_SHAFT_BORE;
  return is_unknown_or_above_zero (in->length) ? TM_PRESS_OK : TM_PRESS_BAD_LENGTH;
}

static TmPressStatus
check_bodies (const TmPressBody *hub, const TmPressBody *shaft)
{
  if (!is_above_zero (hub->modulus))
    return TM_PRESS_HUB_MODULUS;
  if (!is_above_zero (shaft->modulus))
    return TM_PRESS_SHAFT_MODULUS;
  if (!is_poisson (hub->poisson))
    return TM_PRESS_HUB_POISSON;
  if (!is_poisson (shaft->poisson))
    return TM_PRESS_SHAFT_POISSON;
  if (!is_unknown_or_above_zero (hub->yield) || !is_unknown_or_above_zero (shaft->yield))
    return TM_PRESS_BAD_YIELD;
  if (!is_unknown_or_above_zero (hub->expansion) || !is_unknown_or_above_zero (shaft->expansion)
      || !is_unknown_or_above_zero (shaft->cold))
    return TM_PRESS_BAD_EXPANSION;
  return TM_PRESS_OK;
}

static TmPressStatus
check_rest (const TmPressInput *in)
{
  if (!is_unknown_or_not_negative (in->friction_least) || !is_unknown_or_not_negative (in->friction_most)
      || in->friction_least > in->friction_most)
    return TM_PRESS_BAD_FRICTION;
  if (is_wild (in->hub_roughness) || in->hub_roughness < 0 || is_wild (in->shaft_roughness)
      || in->shaft_roughness < 0)
    return TM_PRESS_BAD_ROUGHNESS;
  if (!is_unknown_or_not_negative (in->gap) || in->gap > MOST_SHARE * in->diameter)
    return TM_PRESS_BAD_GAP;
  return in->ambient >= TM_FIT_TEMPERATURE_LEAST && in->ambient <= TM_FIT_TEMPERATURE_MOST
             ? TM_PRESS_OK
             : TM_PRESS_BAD_TEMPERATURE;
}

static TmPressStatus
check_input (const TmPressInput *in, double least, double most)
{
  TmPressStatus status = is_above_zero (in->diameter) ? TM_PRESS_OK : TM_PRESS_BAD_DIAMETER;

  if (status == TM_PRESS_OK)
    status = check_interference (in, least, most);
  if (status == TM_PRESS_OK)
    status = check_shape (in);
  if (status == TM_PRESS_OK)
    status = check_bodies (&in->hub, &in->shaft);
  return status == TM_PRESS_OK ? check_rest (in) : status;
}

/* ΔT = (δ + gap)/(α d); the roughness is not flattened yet. */
static void
fill_temperatures (const TmPressInput *in, double most, TmPressAnswer *out)
{
  double room = MAX (most + in->gap, 0) / in->diameter;
  gboolean unknown_cold = isnan (in->shaft.cold);
  double cold = unknown_cold ? in->shaft.expansion : in->shaft.cold;

  if (isnan (in->gap))
    return;
  out->heat_hub_to = in->ambient + room / (in->hub.expansion * PPM);
  out->cool_shaft_to = in->ambient - room / (cold * PPM);
  out->cold_assumed = unknown_cold && !isnan (cold);
  out->hot_enough = !(out->heat_hub_to > TM_FIT_TEMPERATURE_MOST);
  out->cold_enough = !(out->cool_shaft_to < TM_FIT_TEMPERATURE_LEAST);
  if (!out->hot_enough)
    out->heat_hub_to = NAN;
  if (!out->cold_enough)
    out->cool_shaft_to = NAN;
}

/* A state of which nothing is known. */
static const TmPressState unknown_state
    = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN };

void
tm_press (const TmPressInput *input, TmPressAnswer *out)
{
  double least = isnan (input->interference_least) ? input->interference : input->interference_least;
  double most = isnan (input->interference_most) ? input->interference : input->interference_most;

  *out = (TmPressAnswer) { .status = check_input (input, least, most),
                           .roughness_loss = NAN,
                           .state = unknown_state,
                           .least = unknown_state,
                           .most = unknown_state,
                           .heat_hub_to = NAN,
                           .cool_shaft_to = NAN,
                           .hot_enough = TRUE,
                           .cold_enough = TRUE };
  if (out->status != TM_PRESS_OK)
    return;
  out->roughness_loss = ROUGHNESS_SHARE * (input->hub_roughness + input->shaft_roughness);
  out->state = find_state (input, input->interference, out->roughness_loss);
  out->least = find_state (input, least, out->roughness_loss);
  out->most = find_state (input, most, out->roughness_loss);
  out->thin_hub = (input->hub_outside - input->diameter) / 2 < THIN_WALL * input->diameter;
  fill_temperatures (input, most, out);
  if (!(out->state.effective > 0))
    out->status = TM_PRESS_NO_INTERFERENCE;
}

/* --- from a fit and from the job --- */

void
tm_press_take_fit (TmPressInput *input, const TmFitCheck *check)
{
  double mm = (double)tm_unit_counts (TM_UNIT_MM);
  double wider = isnan (check->expanded) ? 0 : check->expanded;

  input->interference = -(check->least + check->most) / 2 / mm;
  input->interference_least = (-check->most - wider) / mm;
  input->interference_most = (-check->least + wider) / mm;
}

static const TmPressBody unknown_body = { NAN, NAN, NAN, NAN, NAN };

void
tm_press_input_init (TmPressInput *out)
{
  *out = (TmPressInput) { .interference = NAN,
                          .interference_least = NAN,
                          .interference_most = NAN,
                          .diameter = NAN,
                          .length = NAN,
                          .hub_outside = NAN,
                          .hub = unknown_body,
                          .shaft = unknown_body,
                          .friction_least = NAN,
                          .friction_most = NAN,
                          .gap = NAN,
                          .ambient = 20 };
}

TmPressBody
tm_press_body (const TmElastic *material)
{
  return (TmPressBody) { material->modulus.value, material->poisson.value, material->yield.value,
                         material->expansion.value, material->cold.value };
}

gboolean
tm_press_material (const TmJob *job, const TmFeature *feature, gboolean hub, TmElastic *out)
{
  const char *named = hub ? feature->press.hub_material : feature->press.shaft_material;

  if (named[0] != '\0')
    return tm_elastic_find (job, named, out);
  return hub == tm_fit_feature_is_bore (feature, NULL) && tm_elastic_find (job, job->material, out);
}

static TmPressBody
find_body (const TmJob *job, const TmFeature *feature, gboolean hub)
{
  const char *named = hub ? feature->press.hub_material : feature->press.shaft_material;
  TmElastic material;
  TmPressBody body = unknown_body;
  TmExpansion stated;

  if (tm_press_material (job, feature, hub, &material))
    body = tm_press_body (&material);
  if (named[0] == '\0' && hub == tm_fit_feature_is_bore (feature, NULL) && job->expansion.given
      && tm_job_expansion (job, &stated))
    body.expansion = stated.value;
  return body;
}

gboolean
tm_press_has_plastic (const TmJob *job, const TmFeature *feature)
{
  TmElastic material;

  return (tm_press_material (job, feature, TRUE, &material) && material.plastic)
         || (tm_press_material (job, feature, FALSE, &material) && material.plastic);
}

static double
in_unit (const TmQuantity *quantity, TmUnit unit, double absent)
{
  return quantity->given ? tm_count_to_double (quantity->count, unit) : absent;
}

/* A width or a length has none: what is pressed into it is no cylinder. */
static double
find_diameter (const TmFeature *feature)
{
  if (!tm_feature_is_diameter (feature))
    return NAN;
  double lower = in_unit (&feature->lower, TM_UNIT_MM, NAN);
  double upper = in_unit (&feature->upper, TM_UNIT_MM, NAN);

  return in_unit (&feature->nominal, TM_UNIT_MM, (lower + upper) / 2);
}

void
tm_press_input_of (const TmJob *job, const TmFeature *feature, TmPressInput *out)
{
  const TmPress *press = &feature->press;

  tm_press_input_init (out);
  out->diameter = find_diameter (feature);
  out->length = in_unit (&press->length, TM_UNIT_MM, NAN);
  out->hub_outside = in_unit (&press->hub_outside, TM_UNIT_MM, NAN);
  out->shaft_inside = in_unit (&press->shaft_inside, TM_UNIT_MM, 0);
  out->hub = find_body (job, feature, TRUE);
  out->shaft = find_body (job, feature, FALSE);
  out->friction_least = in_unit (&press->friction_least, TM_UNIT_HARDNESS, NAN);
  out->friction_most = in_unit (&press->friction_most, TM_UNIT_HARDNESS, out->friction_least);
  if (isnan (out->friction_least))
    out->friction_least = out->friction_most;
  out->hub_roughness = in_unit (&press->hub_roughness, TM_UNIT_MM, 0);
  out->shaft_roughness = in_unit (&press->shaft_roughness, TM_UNIT_MM, 0);
  out->gap = in_unit (&press->gap, TM_UNIT_MM, NAN);
}
