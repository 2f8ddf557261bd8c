/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-material-form.h"

#include <glib/gi18n-lib.h>

#include "app-form-read.h"
#include "app-form.h"
#include "core-elastic.h"

/* Beyond these a figure is in another unit: diamond has about 1100 GPa, the strongest wires about 6000 MPa,
 * and no solid that parts are made of expands by 500 ppm for each degree (common knowledge). */
#define MOST_MODULUS   1500
#define MOST_YIELD     10000
#define MOST_EXPANSION 500
/* One hundredth of a millionth: below it the whole coefficient was typed (0.0000115); the least of any alloy
 * is Invar's, about 1. */
#define LEAST_EXPANSION_PARTS 100

void
tm_material_form_build (TmMaterialForm *form, GtkBox *into)
{
  const char *kinds[] = { _ ("metal"), _ ("plastic"), NULL };
  AdwPreferencesGroup *what = tm_form_group (
      into, _ ("Material"), _ ("The name as presses and the job are to call it, letter for letter."));
  AdwPreferencesGroup *figures
      = tm_form_group (into, _ ("Figures"),
                       _ ("Leave out what you have no better figure for: where the tables know the name, "
                          "theirs is taken."));

  form->name = tm_form_entry (what, _ ("Name"));
  form->kind = tm_form_choice (what, _ ("Kind of material"), kinds);
  form->modulus = tm_form_entry (figures, _ ("Modulus of elasticity, GPa"));
  form->poisson = tm_form_entry (figures, _ ("Poisson’s ratio"));
  form->yield = tm_form_entry (figures, _ ("Yield strength, MPa"));
  form->expansion = tm_form_entry (figures, _ ("Expansion, 1e-6 per °C"));
  form->cold = tm_form_entry (figures, _ ("Expansion in deep cooling, 1e-6 per °C"));
  form->source = tm_form_entry (figures, _ ("Source of the figures"));
}

void
tm_material_form_fill (TmMaterialForm *form, const TmShopMaterial *material, const char *like)
{
  TmShopMaterial *blank = tm_shop_material_new ();
  const TmShopMaterial *shown = material != NULL ? material : blank;
  TmElastic table;

  if (like != NULL)
    {
      blank->name = like;
      blank->plastic = tm_elastic_find (NULL, like, &table) && table.plastic;
    }
  tm_form_fill_text (form->name, shown->name);
  adw_combo_row_set_selected (form->kind, shown->plastic ? 1 : 0);
  tm_form_fill_quantity (form->modulus, &shown->modulus, TM_UNIT_HARDNESS);
  tm_form_fill_quantity (form->poisson, &shown->poisson, TM_UNIT_HARDNESS);
  tm_form_fill_quantity (form->yield, &shown->yield, TM_UNIT_HARDNESS);
  tm_form_fill_quantity (form->expansion, &shown->expansion, TM_UNIT_HARDNESS);
  tm_form_fill_quantity (form->cold, &shown->cold, TM_UNIT_HARDNESS);
  tm_form_fill_text (form->source, shown->source);
  tm_shop_material_free (blank);
}

/* Above zero, and not above @most: then @unit_line says which unit is wanted. */
static gboolean
read_figure (AdwEntryRow *row, gint64 most, const char *unit_line, TmQuantity *out, char **problem)
{
  const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));

  if (!tm_form_read_quantity (row, TM_UNIT_HARDNESS, out, problem))
    return FALSE;
  if (out->given && out->count == 0)
    return tm_form_refuse (row, problem, g_strdup_printf (_ ("%s: it must be above zero."), title));
  if (out->given && out->count / tm_unit_counts (TM_UNIT_HARDNESS) >= most)
    return tm_form_refuse (row, problem, g_strdup (unit_line));
  return TRUE;
}

/* Read as millimetres it has the digits that a coefficient per degree takes. */
static gboolean
is_whole_coefficient (AdwEntryRow *row)
{
  g_autofree char *text = tm_form_text (row);
  TmQuantity quantity;

  return tm_quantity_read (text, TM_UNIT_MM, &quantity) == TM_READ_OK && quantity.count > 0
         && quantity.count < tm_unit_counts (TM_UNIT_MM) / LEAST_EXPANSION_PARTS;
}

static gboolean
read_expansion (AdwEntryRow *row, TmQuantity *out, char **problem)
{
  const char *line = _ ("Expansion: give millionths per °C; steel has about 11.5.");

  if (is_whole_coefficient (row))
    return tm_form_refuse (row, problem, g_strdup (line));
  return read_figure (row, MOST_EXPANSION, line, out, problem);
}

/* A solid pushed one way does not gain volume (elementary elasticity). */
static gboolean
read_poisson (AdwEntryRow *row, TmQuantity *out, char **problem)
{
  const gint64 one = tm_unit_counts (TM_UNIT_HARDNESS);

  if (!tm_form_read_signed (row, TM_UNIT_HARDNESS, out, problem))
    return FALSE;
  if (out->given && (out->count <= -one || out->count > one / 2))
    return tm_form_refuse (
        row, problem, g_strdup (_ ("Poisson’s ratio lies between -1 and 0.5; most metals have about 0.3.")));
  return TRUE;
}

static gboolean
read_figures (TmMaterialForm *form, TmShopMaterial *material, char **problem)
{
  return read_figure (form->modulus, MOST_MODULUS,
                      _ ("Modulus: give GPa, thousands of MPa; steel has about 207."), &material->modulus,
                      problem)
         && read_poisson (form->poisson, &material->poisson, problem)
         && read_figure (form->yield, MOST_YIELD, _ ("Yield strength: give MPa; 1000 psi are about 6.9 MPa."),
                         &material->yield, problem)
         && read_expansion (form->expansion, &material->expansion, problem)
         && read_expansion (form->cold, &material->cold, problem);
}

/* A figure that nobody can look up again is worth little. */
static gboolean
check_whole (TmMaterialForm *form, TmShopMaterial *material, TmJob *job, char **problem)
{
  if (!(material->modulus.given || material->poisson.given || material->yield.given
        || material->expansion.given || material->cold.given))
    return tm_form_refuse (form->modulus, problem, g_strdup (_ ("State at least one figure.")));
  return tm_form_read_name (form->source, job, &material->source, problem);
}

TmShopMaterial *
tm_material_form_read (TmMaterialForm *form, TmJob *job, const TmShopMaterial *material, char **problem)
{
  TmShopMaterial *read = material != NULL ? g_memdup2 (material, sizeof *material) : tm_shop_material_new ();

  *problem = NULL;
  read->plastic = tm_form_chosen (form->kind) == 1;
  if (tm_form_read_name (form->name, job, &read->name, problem) && read_figures (form, read, problem)
      && check_whole (form, read, job, problem))
    return read;
  tm_shop_material_free (read);
  return NULL;
}
