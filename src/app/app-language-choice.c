/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-language-choice.h"

#include "app-form.h"
#include "report-language.h"

static guint
find_code (GStrv codes, const char *code)
{
  for (guint i = 0; codes[i] != NULL; i++)
    if (g_str_equal (codes[i], code))
      return i;
  return 0;
}

GStrv
tm_language_choice_fill (AdwComboRow *row, const char *none, const char *chosen)
{
  g_auto (GStrv) known = tm_language_list ();
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  GStrv codes;

  g_strv_builder_add (builder, "");
  g_strv_builder_addv (builder, (const char **)known);
  if (*chosen != '\0' && !g_strv_contains ((const char *const *)known, chosen))
    g_strv_builder_add (builder, chosen);
  codes = g_strv_builder_end (builder);
  g_ptr_array_add (words, (gpointer)none);
  for (guint i = 1; codes[i] != NULL; i++)
    g_ptr_array_add (words, (gpointer)tm_language_name (codes[i]));
  g_ptr_array_add (words, NULL);
  tm_form_set_words (row, (const char *const *)words->pdata, find_code (codes, chosen));
  return codes;
}

const char *
tm_language_choice_get (GStrv codes, AdwComboRow *row)
{
  guint chosen = tm_form_chosen (row);

  return chosen < g_strv_length (codes) ? codes[chosen] : "";
}
