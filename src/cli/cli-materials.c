/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-materials: the tables of materials, each figure with its source.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-press.h"

/* Runs @each over the shop's entries, then the tables. */
static void
list_all (const TmJob *job, void (*each) (const TmElastic *material, gpointer data), gpointer data)
{
  TmElastic material;

  for (guint i = 0; job != NULL && i < job->materials->len; i++)
    {
      tm_elastic_of_shop (g_ptr_array_index (job->materials, i), &material);
      each (&material, data);
    }
  for (guint i = 0; tm_elastic_table (i, &material); i++)
    each (&material, data);
}

/* -------- JSON -------- */

static void
put_figure (yajl_gen gen, const char *key, const TmFigure *figure)
{
  tm_print_key (gen, key);
  if (isnan (figure->value))
    {
      yajl_gen_null (gen);
      return;
    }
  yajl_gen_map_open (gen);
  tm_print_number (gen, "value", figure->value);
  tm_print_number (gen, "low", figure->low);
  tm_print_number (gen, "high", figure->high);
  tm_print_text (gen, "source", figure->source[0] != '\0' ? _ (figure->source) : NULL);
  tm_print_text (gen, "other_source", figure->other_source != NULL ? _ (figure->other_source) : NULL);
  yajl_gen_map_close (gen);
}

static void
put_material (const TmElastic *material, gpointer data)
{
  yajl_gen gen = data;

  yajl_gen_map_open (gen);
  tm_print_text (gen, "material", material->name);
  put_figure (gen, "modulus", &material->modulus);
  put_figure (gen, "poisson", &material->poisson);
  put_figure (gen, "yield", &material->yield);
  put_figure (gen, "expansion", &material->expansion);
  put_figure (gen, "cold_expansion", &material->cold);
  tm_print_flag (gen, "plastic", material->plastic);
  tm_print_flag (gen, "shop", material->shop);
  yajl_gen_map_close (gen);
}

void
tm_materials_print_json (const TmJob *job)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_array_open (gen);
  list_all (job, put_material, gen);
  yajl_gen_array_close (gen);
  tm_print_end (gen);
}

/* -------- Words -------- */

static void
print_figure (const char *label, const TmFigure *figure, const char *unit)
{
  if (isnan (figure->value))
    return;
  printf ("  %s %.4g%s", label, figure->value, unit);
  if (figure->high > figure->low)
    printf (_ (" (%.4g to %.4g)"), figure->low, figure->high);
  if (figure->source[0] != '\0')
    printf (": %s", _ (figure->source));
  if (figure->other_source != NULL)
    printf ("; %s", _ (figure->other_source));
  printf ("\n");
}

static void
print_material (const TmElastic *material, G_GNUC_UNUSED gpointer data)
{
  printf (material->shop      ? _ ("%s, the shop's own\n")
          : material->plastic ? _ ("%s, a plastic\n")
                              : "%s\n",
          material->name);
  print_figure (_ ("modulus"), &material->modulus, " GPa");
  print_figure (_ ("Poisson's ratio"), &material->poisson, "");
  print_figure (_ ("yield"), &material->yield, " MPa");
  print_figure (_ ("expansion"), &material->expansion, "e-6/°C");
  print_figure (_ ("expansion, cooling"), &material->cold, "e-6/°C");
}

void
tm_materials_print (const TmJob *job)
{
  list_all (job, print_material, NULL);
}
