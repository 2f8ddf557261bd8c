/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-budget: tenthmark-cli budget, an uncertainty budget combined (JCGM 100).
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-budget-file.h"
#include "cli-json.h"
#include "cli-verbs.h"

static const TmComponent *
get_component (const TmBudgetFile *file, guint index)
{
  return &g_array_index (file->components, TmComponent, index);
}

static const char *
get_name (const TmBudgetFile *file, guint index)
{
  return g_ptr_array_index (file->names, index);
}

/* Its share of the variance. */
static double
find_share (const TmComponent *component, const TmUncertainty *result)
{
  double share = tm_component_share (component) / result->u;

  return share * share;
}

static void
print_line (yajl_gen gen, const TmBudgetFile *file, guint index, const TmUncertainty *result)
{
  const TmComponent *component = get_component (file, index);

  yajl_gen_map_open (gen);
  tm_print_text (gen, "name", get_name (file, index));
  tm_print_number (gen, "value", component->value);
  tm_print_text (gen, "distribution", tm_distribution_word (component->distribution));
  tm_print_number (gen, "divisor", tm_component_divisor (component));
  tm_print_number (gen, "standard", tm_component_standard (component));
  tm_print_number (gen, "sensitivity", component->sensitivity);
  tm_print_number (gen, "contribution", tm_component_share (component));
  tm_print_number (gen, "dof", component->dof);
  tm_print_number (gen, "share", find_share (component, result));
  yajl_gen_map_close (gen);
}

static void
print_json (const TmBudgetFile *file, const TmUncertainty *result)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_number (gen, "combined", result->u);
  tm_print_number (gen, "dof", result->dof);
  tm_print_number (gen, "k", result->coverage);
  tm_print_number (gen, "expanded", result->expanded);
  tm_print_text (gen, "unit", *file->unit != '\0' ? file->unit : NULL);
  tm_print_number (gen, "value", file->value);
  tm_print_number (gen, "coverage", file->coverage);
  tm_print_key (gen, "components");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < file->components->len; i++)
    print_line (gen, file, i, result);
  yajl_gen_array_close (gen);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

/* Six digits, as many as a budget ever means. */
static const char *
format_short (double value, char *text)
{
  if (!isfinite (value))
    return "∞";
  return g_ascii_formatd (text, G_ASCII_DTOSTR_BUF_SIZE, "%.6g", value);
}

static void
print_cell (const char *text, int width)
{
  glong length = g_utf8_strlen (text, -1);

  printf ("%s%*s", text, (int)MAX (2, width - length), "");
}

static void
print_number (double value, int width)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  print_cell (format_short (value, text), width);
}

static void
print_heading (void)
{
  print_cell (_ ("component"), 28);
  print_cell (_ ("value"), 14);
  print_cell (_ ("distribution"), 14);
  print_cell (_ ("divisor"), 11);
  print_cell (_ ("sensitivity"), 14);
  print_cell (_ ("contribution"), 14);
  print_cell (_ ("dof"), 10);
  printf ("%s\n", _ ("share"));
}

static void
print_row (const TmBudgetFile *file, guint index, const TmUncertainty *result)
{
  const TmComponent *component = get_component (file, index);

  print_cell (get_name (file, index), 28);
  print_number (component->value, 14);
  print_cell (g_dpgettext2 (GETTEXT_PACKAGE, "distribution", tm_distribution_word (component->distribution)),
              14);
  print_number (tm_component_divisor (component), 11);
  print_number (component->sensitivity, 14);
  print_number (tm_component_share (component), 14);
  print_number (component->dof, 10);
  printf ("%.1f %%\n", 100 * find_share (component, result));
}

static void
print_words (const TmBudgetFile *file, const TmUncertainty *result)
{
  char u[G_ASCII_DTOSTR_BUF_SIZE], dof[G_ASCII_DTOSTR_BUF_SIZE], whole[G_ASCII_DTOSTR_BUF_SIZE];
  char k[G_ASCII_DTOSTR_BUF_SIZE], expanded[G_ASCII_DTOSTR_BUF_SIZE], coverage[G_ASCII_DTOSTR_BUF_SIZE];
  char value[G_ASCII_DTOSTR_BUF_SIZE];
  const char *unit = file->unit;
  const char *space = *unit != '\0' ? " " : "";

  print_heading ();
  for (guint i = 0; i < file->components->len; i++)
    print_row (file, i, result);
  printf (_ ("combined %s%s%s\n"), format_short (result->u, u), space, unit);
  if (isfinite (result->dof))
    printf (_ ("degrees of freedom %s, taken as %s\n"), format_short (result->dof, dof),
            format_short (MAX (1, floor (result->dof)), whole));
  else
    printf (_ ("degrees of freedom ∞\n"));
  printf (_ ("k %s for %s %%\n"), format_short (result->coverage, k),
          format_short (100 * file->coverage, coverage));
  if (isnan (file->value))
    printf (_ ("expanded %s%s%s\n"), format_short (result->expanded, expanded), space, unit);
  else
    {
      tm_number_format (file->value, value, sizeof value);
      printf (_ ("expanded %s%s%s: %s ± %s%s%s\n"), format_short (result->expanded, expanded), space, unit,
              value, expanded, space, unit);
    }
}

int
tm_verb_budget (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("budget");
  gboolean json = FALSE;
  const TmOption options[] = {
    { "json", NULL, N_ ("print JSON"), NULL, &json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  g_auto (TmBudgetFile) file = { NULL };
  const char *path;
  TmUncertainty result;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  if (path == NULL || !tm_budget_file_read (path, &file))
    return 2;
  result = tm_uncertainty_combine (&g_array_index (file.components, TmComponent, 0), file.components->len,
                                   file.coverage);
  if (isnan (result.u))
    return tm_fail (_ ("%s: components: together they are zero; a budget needs one above zero"), path);
  if (!isfinite (result.expanded))
    return tm_fail (_ ("%s: the result is too large for a number; look at the values, the divisors and the "
                       "coverage"),
                    path);
  if (json)
    print_json (&file, &result);
  else
    print_words (&file, &result);
  return 0;
}
