/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-press-print: the answer of press, in words and as JSON.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-press.h"

#define COUNTS_PER_MM 1e9
/* NIST SP 811: 1 lbf is 4.4482216152605 N. */
#define N_PER_LBF      4.4482216152605
#define PSI_PER_MPA    (1e6 / N_PER_LBF * 0.0254 * 0.0254)
#define N_M_PER_LBF_FT (N_PER_LBF * 0.3048)

/* -------- JSON -------- */

static void
put_length (yajl_gen gen, const char *key, double mm, TmUnit unit)
{
  tm_print_counts (gen, key, mm * COUNTS_PER_MM, unit);
}

/* The figures of one interference, in the open object. */
static void
put_state (yajl_gen gen, const TmPressState *state, TmUnit unit)
{
  put_length (gen, "effective_interference", state->effective, unit);
  tm_print_number (gen, "pressure", state->pressure);
  tm_print_number (gen, "hub_hoop", state->hub_hoop);
  tm_print_number (gen, "hub_radial", state->hub_radial);
  tm_print_number (gen, "hub_outside_hoop", state->hub_outside_hoop);
  tm_print_number (gen, "hub_von_mises", state->hub_mises);
  tm_print_number (gen, "hub_share_of_yield", state->hub_use);
  put_length (gen, "hub_growth", state->hub_growth, unit);
  tm_print_number (gen, "shaft_hoop_outer", state->shaft_hoop_outer);
  tm_print_number (gen, "shaft_hoop_inner", state->shaft_hoop_inner);
  tm_print_number (gen, "shaft_von_mises", state->shaft_mises);
  tm_print_number (gen, "shaft_share_of_yield", state->shaft_use);
  put_length (gen, "bore_closure", state->bore_closure, unit);
  /* The press has to give the most, and the fit is sure to hold the least. */
  tm_print_number (gen, "press_force", state->axial_most);
  tm_print_number (gen, "press_force_least", state->axial_least);
  tm_print_number (gen, "torque", state->torque_least);
  tm_print_number (gen, "torque_most", state->torque_most);
}

static void
put_end (yajl_gen gen, const char *key, const TmPressState *state, TmUnit unit)
{
  tm_print_key (gen, key);
  yajl_gen_map_open (gen);
  put_state (gen, state, unit);
  yajl_gen_map_close (gen);
}

static void
put_body (yajl_gen gen, const char *key, const TmPressBody *body, const TmElastic *material)
{
  tm_print_key (gen, key);
  yajl_gen_map_open (gen);
  tm_print_text (gen, "material", material->name[0] != '\0' ? material->name : NULL);
  tm_print_number (gen, "modulus", body->modulus);
  tm_print_number (gen, "poisson", body->poisson);
  tm_print_number (gen, "yield", body->yield);
  tm_print_number (gen, "expansion", body->expansion);
  tm_print_number (gen, "cold_expansion", body->cold);
  yajl_gen_map_close (gen);
}

static gboolean
has_plastic (const TmPressCase *press)
{
  return press->hub.plastic || press->shaft.plastic;
}

static void
put_cautions (yajl_gen gen, const TmPressCase *press)
{
  tm_print_key (gen, "cautions");
  yajl_gen_array_open (gen);
  for (int i = 0; i < TM_N_PRESS_CAUTIONS; i++)
    if (tm_press_caution_applies (i, &press->answer, has_plastic (press)))
      tm_print_item (gen, g_dpgettext2 (GETTEXT_PACKAGE, "press caution", tm_press_caution_word (i)));
  yajl_gen_array_close (gen);
}

/* Of a job: what was looked at; null was taken by its limits. */
static void
put_which (yajl_gen gen, const TmPressCase *press)
{
  if (press->feature == NULL)
    return;
  tm_print_text (gen, "feature", press->feature);
  tm_print_text (gen, "piece", press->piece);
  tm_print_text (gen, "mate", press->mate);
}

void
tm_press_print_json (const TmPressCase *press)
{
  const TmPressAnswer *answer = &press->answer;
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  put_which (gen, press);
  tm_print_unit (gen, press->unit);
  put_length (gen, "interference", press->input.interference, press->unit);
  put_length (gen, "diameter", press->input.diameter, press->unit);
  put_length (gen, "roughness_loss", answer->roughness_loss, press->unit);
  put_state (gen, &answer->state, press->unit);
  if (press->range)
    {
      put_end (gen, "least", &answer->least, press->unit);
      put_end (gen, "most", &answer->most, press->unit);
    }
  tm_print_number (gen, "heat_hub_to", answer->heat_hub_to);
  tm_print_number (gen, "cool_shaft_to", answer->cool_shaft_to);
  tm_print_flag (gen, "hot_enough", answer->hot_enough);
  tm_print_flag (gen, "cold_enough", answer->cold_enough);
  tm_print_flag (gen, "thin_hub", answer->thin_hub);
  put_body (gen, "hub", &press->input.hub, &press->hub);
  put_body (gen, "shaft", &press->input.shaft, &press->shaft);
  put_cautions (gen, press);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

/* -------- Words -------- */

/* To a ten-thousandth of a millimetre, or a millionth of an inch; "" when unknown. */
static char *
format_length (double mm, TmUnit unit)
{
  if (isnan (mm))
    return g_strdup ("");
  return tm_count_format (llround (mm * COUNTS_PER_MM), unit, unit == TM_UNIT_IN ? 6 : 4);
}

/* Four figures: one more than the material's are good for.  "" when unknown. */
static char *
format_figures (double value)
{
  int whole = fabs (value) >= 1 ? (int)floor (log10 (fabs (value))) + 1 : 1;

  if (isnan (value))
    return g_strdup ("");
  return g_strdup_printf ("%.*f", CLAMP (4 - whole, 0, 3), value);
}

/* In the inch shop's unit too. */
static char *
format_both (double value, const char *unit, double other, const char *other_unit, TmUnit length_unit)
{
  g_autofree char *first = format_figures (value);
  g_autofree char *second = format_figures (other);

  return length_unit == TM_UNIT_IN ? g_strdup_printf ("%s %s (%s %s)", first, unit, second, other_unit)
                                   : g_strdup_printf ("%s %s", first, unit);
}

static char *
format_stress (double mpa, TmUnit unit)
{
  return format_both (mpa, "MPa", mpa * PSI_PER_MPA, "psi", unit);
}

static char *
format_force (double newton, TmUnit unit)
{
  return format_both (newton, "N", newton / N_PER_LBF, "lbf", unit);
}

static char *
format_torque (double newton_metre, TmUnit unit)
{
  return format_both (newton_metre, "N·m", newton_metre / N_M_PER_LBF_FT, "lbf·ft", unit);
}

static char *
format_celsius (double celsius, TmUnit unit)
{
  return format_both (celsius, "°C", celsius * 9 / 5 + 32, "°F", unit);
}

static void
print_share (const char *part, double mises, double share, TmUnit unit)
{
  g_autofree char *stress = format_stress (mises, unit);

  if (isnan (share))
    printf (_ ("  %s: von Mises %s; its yield strength is not known\n"), part, stress);
  else
    printf (_ ("  %s: von Mises %s, %.0f %% of yield\n"), part, stress, share * 100);
}

static void
print_stresses (const TmPressCase *press, const TmPressState *state)
{
  TmUnit unit = press->unit;
  g_autofree char *pressure = format_stress (state->pressure, unit);
  g_autofree char *hub_hoop = format_stress (state->hub_hoop, unit);
  g_autofree char *hub_outside = format_stress (state->hub_outside_hoop, unit);
  g_autofree char *outer = format_stress (state->shaft_hoop_outer, unit);

  printf (_ ("  pressure %s\n"), pressure);
  printf (_ ("  hub: hoop %s at the contact, %s at its outside; radial is the pressure\n"), hub_hoop,
          hub_outside);
  print_share (_ ("hub"), state->hub_mises, state->hub_use, unit);
  if (isnan (state->shaft_hoop_inner))
    printf (_ ("  shaft, solid: %s all through\n"), outer);
  else
    {
      g_autofree char *inner = format_stress (state->shaft_hoop_inner, unit);

      printf (_ ("  shaft: hoop %s at the contact, %s at its bore\n"), outer, inner);
    }
  print_share (_ ("shaft"), state->shaft_mises, state->shaft_use, unit);
}

static void
print_movement (const TmPressCase *press, const TmPressState *state)
{
  const char *symbol = tm_unit_symbol (press->unit);
  g_autofree char *growth = format_length (state->hub_growth, press->unit);
  g_autofree char *closure = format_length (state->bore_closure, press->unit);

  printf (_ ("  the hub's outside grows by %s %s\n"), growth, symbol);
  if (press->input.shaft_inside > 0 && state->effective > 0)
    printf (_ ("  the bore of the shaft closes by %s %s, %.1f %% of what is pressed\n"), closure, symbol,
            state->bore_closure / state->effective * 100);
}

static void
print_forces (const TmPressCase *press, const TmPressState *state)
{
  TmUnit unit = press->unit;
  g_autofree char *least = format_force (state->axial_least, unit);
  g_autofree char *most = format_force (state->axial_most, unit);
  g_autofree char *torque = format_torque (state->torque_least, unit);

  if (isnan (state->axial_least))
    return;
  if (press->input.friction_most > press->input.friction_least)
    printf (_ ("  pressing in takes %s to %s by the friction\n"), least, most);
  else
    printf (_ ("  pressing in takes %s\n"), most);
  printf (_ ("  it holds %s along the axis, or %s of torque\n"), least, torque);
}

static void
print_state (const TmPressCase *press, const char *title, double interference, const TmPressState *state)
{
  g_autofree char *nominal = format_length (interference, press->unit);
  g_autofree char *effective = format_length (state->effective, press->unit);

  printf ("%s %s %s\n", title, nominal, tm_unit_symbol (press->unit));
  if (!(state->effective > 0))
    {
      printf ("  %s\n", _ ("nothing is pressed: it holds nothing"));
      return;
    }
  if (press->answer.roughness_loss > 0)
    printf (_ ("  roughness takes some: %s %s is left\n"), effective, tm_unit_symbol (press->unit));
  print_stresses (press, state);
  print_movement (press, state);
  print_forces (press, state);
}

static void
print_states (const TmPressCase *press)
{
  const TmPressInput *input = &press->input;
  const TmPressAnswer *answer = &press->answer;

  if (!press->range)
    {
      print_state (press, _ ("interference"), input->interference, &answer->state);
      return;
    }
  if (!isnan (input->interference_least))
    print_state (press, _ ("at the least interference"), input->interference_least, &answer->least);
  print_state (press, _ ("at the interference"), input->interference, &answer->state);
  if (!isnan (input->interference_most))
    print_state (press, _ ("at the most interference"), input->interference_most, &answer->most);
}

/* "207 GPa (other sources to 212)". */
static char *
format_modulus (double modulus, const TmElastic *material)
{
  g_autofree char *value = format_figures (modulus);

  if (material->name[0] == '\0' || !(material->modulus.high > material->modulus.low)
      || fabs (modulus - material->modulus.value) > 0)
    return g_strdup_printf ("%s GPa", value);
  return g_strdup_printf (_ ("%s GPa (sources have %.4g to %.4g)"), value, material->modulus.low,
                          material->modulus.high);
}

static void
print_body (const char *part, const TmPressBody *body, const TmElastic *material)
{
  g_autofree char *modulus = format_modulus (body->modulus, material);

  printf (_ ("%s: %s, modulus %s, Poisson's ratio %.3g\n"), part,
          material->name[0] != '\0' ? material->name : _ ("figures as stated"), modulus, body->poisson);
}

static void
print_missing (const TmPressCase *press)
{
  const TmPressInput *input = &press->input;

  if (isnan (input->length) || isnan (input->friction_least))
    printf ("%s\n", _ ("no forces: state --length and --friction"));
  if (isnan (input->gap))
    printf ("%s\n", _ ("no temperatures for dropping in: state --gap"));
}

static void
print_temperatures (const TmPressCase *press)
{
  const TmPressAnswer *answer = &press->answer;
  g_autofree char *gap = format_length (press->input.gap, press->unit);
  g_autofree char *heat = format_celsius (answer->heat_hub_to, press->unit);
  g_autofree char *cool = format_celsius (answer->cool_shaft_to, press->unit);

  if (isnan (press->input.gap))
    return;
  printf (_ ("to drop in with %s %s of room at the most interference:\n"), gap, tm_unit_symbol (press->unit));
  if (!isnan (answer->heat_hub_to))
    printf (_ ("  heat the hub to %s\n"), heat);
  else if (answer->hot_enough)
    printf ("  %s\n", _ ("the hub's expansion is not known: state --hub-expansion"));
  if (!isnan (answer->cool_shaft_to))
    printf (_ ("  or cool the shaft to %s\n"), cool);
  else if (answer->cold_enough)
    printf ("  %s\n", _ ("the shaft's expansion is not known: state --shaft-expansion"));
}

static void
print_cautions (const TmPressCase *press)
{
  for (int i = 0; i < TM_N_PRESS_CAUTIONS; i++)
    if (tm_press_caution_applies (i, &press->answer, has_plastic (press)))
      printf ("%s\n", g_dpgettext2 (GETTEXT_PACKAGE, "press caution", tm_press_caution_word (i)));
}

static void
print_which (const TmPressCase *press)
{
  if (press->feature == NULL)
    return;
  if (press->piece != NULL)
    printf (_ ("feature %s: piece %s as measured\n"), press->feature, press->piece);
  else
    printf (_ ("feature %s by its limits\n"), press->feature);
  if (press->mate != NULL)
    printf (_ ("mate %s as measured\n"), press->mate);
  else
    printf ("%s\n", _ ("mate by its limits"));
}

void
tm_press_print (const TmPressCase *press)
{
  print_which (press);
  print_body (_ ("hub"), &press->input.hub, &press->hub);
  print_body (_ ("shaft"), &press->input.shaft, &press->shaft);
  print_states (press);
  print_temperatures (press);
  print_missing (press);
  printf ("\n");
  print_cautions (press);
}
