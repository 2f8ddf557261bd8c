/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-material-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-press.h"

typedef struct {
  const char *what;
  const char *unit; /* with the space before it, if any */
  gsize figure;     /* in TmElastic */
} Kind;

static const Kind kinds[] = {
  { N_ ("Modulus of elasticity"), " GPa", G_STRUCT_OFFSET (TmElastic, modulus) },
  { N_ ("Poisson’s ratio"), "", G_STRUCT_OFFSET (TmElastic, poisson) },
  { N_ ("Yield strength"), " MPa", G_STRUCT_OFFSET (TmElastic, yield) },
  { N_ ("Expansion near 20 °C"), "e-6/°C", G_STRUCT_OFFSET (TmElastic, expansion) },
  { N_ ("Expansion in deep cooling"), "e-6/°C", G_STRUCT_OFFSET (TmElastic, cold) },
};

void
tm_material_line_free (TmMaterialLine *line)
{
  g_free (line->what);
  g_free (line->value);
  g_free (line->tables);
  g_free (line->source);
  g_free (line->sentence);
  g_free (line);
}

static const TmFigure *
get_figure (const TmElastic *material, const Kind *kind)
{
  return (const TmFigure *)(const void *)((const char *)material + kind->figure);
}

static char *
format_value (const TmFigure *figure, const char *unit)
{
  return g_strdup_printf ("%.4g%s", figure->value, unit);
}

static char *
format_range (const TmFigure *figure)
{
  return figure->high > figure->low ? g_strdup_printf (_ ("%.4g to %.4g"), figure->low, figure->high)
                                    : g_strdup_printf ("%.4g", figure->value);
}

/* The tables' own range, or what the tables have in place of the shop's figure. */
static char *
format_tables (const TmFigure *figure, const TmFigure *table)
{
  if (table == NULL || isnan (table->value))
    return g_strdup ("");
  if (!(table->high > table->low) && !(fabs (table->value - figure->value) > 0))
    return g_strdup ("");
  return format_range (table);
}

static char *
format_source (const TmFigure *figure, gboolean shop)
{
  if (isnan (figure->value))
    return g_strdup ("");
  if (figure->source[0] == '\0')
    return g_strdup (_ ("the shop’s own, no source stated"));
  if (figure->other_source != NULL)
    return g_strdup_printf ("%s; %s", g_dgettext (GETTEXT_PACKAGE, figure->source),
                            g_dgettext (GETTEXT_PACKAGE, figure->other_source));
  /* What the shop wrote is nothing to translate. */
  return g_strdup (shop ? figure->source : g_dgettext (GETTEXT_PACKAGE, figure->source));
}

static char *
make_sentence (const TmMaterialLine *line)
{
  GString *sentence = g_string_new (NULL);

  g_string_append_printf (sentence, "%s: %s", line->what, line->value);
  if (line->tables[0] != '\0')
    g_string_append_printf (sentence, _ (", in the tables %s"), line->tables);
  if (line->source[0] != '\0')
    g_string_append_printf (sentence, ", %s", line->source);
  return g_string_free (sentence, FALSE);
}

static TmMaterialLine *
make_line (const Kind *kind, const TmElastic *material, const TmElastic *table)
{
  TmMaterialLine *line = g_new0 (TmMaterialLine, 1);
  const TmFigure *figure = get_figure (material, kind);
  const TmFigure *other = table != NULL ? get_figure (table, kind) : NULL;
  gboolean own = material->shop && (other == NULL || other->source != figure->source);

  line->what = g_strdup (g_dgettext (GETTEXT_PACKAGE, kind->what));
  line->value = isnan (figure->value) ? g_strdup (_ ("not known")) : format_value (figure, kind->unit);
  line->tables = format_tables (figure, other);
  line->source = format_source (figure, own);
  line->sentence = make_sentence (line);
  return line;
}

GPtrArray *
tm_words_material (const TmElastic *material, const TmElastic *table)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_material_line_free);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    g_ptr_array_add (lines, make_line (&kinds[i], material, table));
  return lines;
}

GStrv
tm_words_material_notes (const TmElastic *material)
{
  g_autoptr (GPtrArray) notes = g_ptr_array_new ();

  if (material->yield.high > material->yield.low)
    g_ptr_array_add (notes,
                     g_strdup (_ ("The yield strength hangs on the condition: the weakest is reckoned "
                                  "with. State the one on your certificate as an entry of your own.")));
  if (material->modulus.high > material->modulus.low || material->poisson.high > material->poisson.low)
    g_ptr_array_add (notes, g_strdup (_ ("Where sources differ both stand: the value is reckoned with, and "
                                         "the range says what the others would give.")));
  if (material->plastic)
    for (TmPressCaution i = TM_PRESS_CAUTION_RELAXES; i <= TM_PRESS_CAUTION_MOISTURE; i++)
      g_ptr_array_add (notes,
                       g_strdup (g_dpgettext2 (GETTEXT_PACKAGE, "press caution", tm_press_caution_word (i))));
  g_ptr_array_add (notes, NULL);
  return (GStrv)g_ptr_array_free (g_steal_pointer (&notes), FALSE);
}

char *
tm_words_modulus (const TmElastic *material)
{
  return isnan (material->modulus.value) ? g_strdup ("") : format_value (&material->modulus, " GPa");
}

/* "1, 4" */
static char *
list_presses (const TmJob *job, const char *name)
{
  GString *balloons = g_string_new (NULL);

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (g_str_equal (feature->press.hub_material, name)
          || g_str_equal (feature->press.shaft_material, name))
        g_string_append_printf (balloons, "%s%s", balloons->len > 0 ? ", " : "", feature->balloon);
    }
  return g_string_free (balloons, FALSE);
}

char *
tm_words_material_about (const TmJob *job, const TmElastic *material)
{
  g_autofree char *presses = list_presses (job, material->name);
  const char *what = material->shop      ? _ ("The shop’s own")
                     : material->plastic ? _ ("A plastic of the tables")
                                         : _ ("A metal of the tables");

  return presses[0] != '\0' ? g_strdup_printf (_ ("%s, in the press of feature %s"), what, presses)
                            : g_strdup (what);
}
