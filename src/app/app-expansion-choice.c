/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-expansion-choice.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-form.h"
#include "core-elastic.h"
#include "core-material.h"

void
tm_expansion_choice_build (TmExpansionChoice *choice, AdwPreferencesGroup *group, const char *title)
{
  const char *none[] = { NULL };

  choice->alphas = g_array_new (FALSE, FALSE, sizeof (double));
  choice->row = tm_form_choice (group, title, none);
  /* Names of materials are long; under the title there is room for them. */
  adw_combo_row_set_use_subtitle (choice->row, TRUE);
}

/* "aluminium 6061: 23.6" */
static void
add_choice (TmExpansionChoice *choice, GtkStringList *words, const char *name, double alpha)
{
  g_autofree char *word = NULL;

  if (isnan (alpha))
    return;
  /* Translators: a material and its coefficient of expansion, in millionths per °C. */
  word = g_strdup_printf (_ ("%s: %.4g"), name, alpha);
  gtk_string_list_append (words, word);
  g_array_append_val (choice->alphas, alpha);
}

static void
add_part (TmExpansionChoice *choice, GtkStringList *words, const TmJob *job)
{
  TmExpansion found;

  if (tm_job_expansion (job, &found))
    add_choice (choice, words, _ ("this job’s part"), found.value);
}

static GtkStringList *
list_materials (TmExpansionChoice *choice, const TmJob *job, gboolean part)
{
  GtkStringList *words = gtk_string_list_new (NULL);
  TmElastic found;

  g_array_set_size (choice->alphas, 0);
  if (part)
    add_part (choice, words, job);
  for (guint i = 0; i < job->materials->len; i++)
    {
      const TmShopMaterial *material = g_ptr_array_index (job->materials, i);

      if (tm_elastic_find (job, material->name, &found))
        add_choice (choice, words, material->name, found.expansion.value);
    }
  for (guint i = 0; tm_elastic_table (i, &found); i++)
    add_choice (choice, words, found.name, found.expansion.value);
  return words;
}

static char *
get_word (const TmExpansionChoice *choice)
{
  GObject *item = adw_combo_row_get_selected_item (choice->row);

  return GTK_IS_STRING_OBJECT (item) ? g_strdup (gtk_string_object_get_string (GTK_STRING_OBJECT (item)))
                                     : NULL;
}

void
tm_expansion_choice_fill (TmExpansionChoice *choice, const TmJob *job, gboolean part)
{
  g_autofree char *before = get_word (choice);
  g_autoptr (GtkStringList) words = list_materials (choice, job, part);
  guint chosen = 0;

  for (guint i = 0; before != NULL && i < g_list_model_get_n_items (G_LIST_MODEL (words)); i++)
    if (g_str_equal (gtk_string_list_get_string (words, i), before))
      chosen = i;
  adw_combo_row_set_model (choice->row, G_LIST_MODEL (words));
  adw_combo_row_set_selected (choice->row, chosen);
}

double
tm_expansion_choice_get (const TmExpansionChoice *choice)
{
  guint chosen = tm_form_chosen (choice->row);

  return chosen < choice->alphas->len ? g_array_index (choice->alphas, double, chosen) : NAN;
}

void
tm_expansion_choice_clear (TmExpansionChoice *choice)
{
  g_clear_pointer (&choice->alphas, g_array_unref);
}
