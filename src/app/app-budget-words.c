/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-budget-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-suitability-words.h"
#include "app-words.h"
#include "core-gauge-kind.h"

#define MAX_DECIMALS        6
#define MAX_STATED_DECIMALS 2

/* Digits after the point that show two significant ones of @value; one of what is below a hundredth. */
static guint
count_decimals (double value)
{
  double decimals = value > 0 ? (value < 0.01 ? 0 : 1) - floor (log10 (value)) : 0;

  return (guint)CLAMP (decimals, 0, MAX_DECIMALS);
}

static char *
join_unit (const char *number, TmUnit unit)
{
  const char *symbol = tm_unit_symbol (unit);
  const char *gap = *symbol == '\0' || unit == TM_UNIT_DEGREE ? "" : " ";

  return g_strconcat (number, gap, symbol, NULL);
}

char *
tm_words_small (double counts, TmUnit unit, gboolean up)
{
  TmUnit small = tm_unit_small (unit);
  double value = fabs (counts) / (double)MAX (tm_unit_counts (small), 1);
  guint decimals = count_decimals (value);
  double step = pow (10, -(double)decimals);
  g_autofree char *number = NULL;

  if (!isfinite (value))
    return g_strdup ("");
  /* What is a whole number of steps but for the last bit stays it. */
  if (up)
    value = ceil (value / step - 1e-6) * step;
  number = tm_count_format (tm_count_from_double (value, small), small, decimals);
  return join_unit (number, small);
}

char *
tm_words_share (double share)
{
  if (!isfinite (share))
    return g_strdup ("");
  if (share > 0 && share < 0.005)
    return g_strdup_printf (_ ("under %d %%"), 1);
  /* Translators: a share of the whole. */
  return g_strdup_printf (_ ("%.0f %%"), 100.0 * share);
}

void
tm_budget_row_free (TmBudgetRow *row)
{
  g_free (row->what);
  g_free (row->stated);
  g_free (row->distribution);
  g_free (row->divisor);
  g_free (row->standard);
  g_free (row->dof);
  g_free (row->percent);
  g_free (row->source);
  g_free (row->sentence);
  g_free (row);
}

/* -------- One line -------- */

static gboolean
is_of_job (const TmComponent *line)
{
  return line->kind == TM_COMPONENT_TEMPERATURE || line->kind == TM_COMPONENT_EXPANSION;
}

/* "limit of error of BM-2", "temperature of the part", "between people: study 3". */
static char *
describe_what (const TmComponent *component, const TmBudgetLine *line)
{
  const char *word = g_dpgettext2 (GETTEXT_PACKAGE, "component", tm_component_word (component->kind));
  const char *subject = component->subject != NULL ? component->subject : "";

  if (line != NULL && component->kind == TM_COMPONENT_OTHER && *line->name != '\0')
    return g_strdup (line->name);
  if (line != NULL && *line->name != '\0')
    return g_strdup_printf ("%s: %s", word, line->name);
  if (*subject == '\0')
    return g_strdup (word);
  if (is_of_job (component) && g_str_equal (subject, "part"))
    return g_strdup_printf (_ ("%s of the part"), word);
  /* Translators: a line of a budget, and the gauge or method that it is of. */
  return g_strdup_printf (_ ("%s of %s"), word, subject);
}

/* Where the figure comes from; what the program itself says is translated, what a person wrote stands. */
static char *
describe_source (const TmComponent *component)
{
  const char *written = component->source != NULL ? component->source : "";
  const char *source = *written != '\0' ? g_dgettext (GETTEXT_PACKAGE, written) : "";

  if (!component->assumed)
    return g_strdup (source);
  if (*source == '\0')
    return g_strdup (_ ("assumed"));
  if (tm_gauge_source_is_assumed (written))
    return g_strdup (source);
  return g_strdup_printf (_ ("assumed: %s"), source);
}

/* The figure as it was stated when it has few digits, else to two significant ones. */
static char *
format_stated (double counts, TmUnit unit)
{
  TmUnit small = tm_unit_small (unit);
  g_autofree char *exact = tm_count_format_exact ((gint64)llround (counts), small, 0);
  const char *point = strchr (exact, '.');

  return point == NULL || strlen (point) <= MAX_STATED_DECIMALS + 1 ? join_unit (exact, small)
                                                                    : tm_words_small (counts, unit, FALSE);
}

/* A half-width goes both ways; a deviation stands as it is. */
static char *
describe_stated (const TmComponent *component, TmUnit unit)
{
  g_autofree char *value = format_stated (component->value, unit);

  return tm_component_divisor (component) > 1 ? g_strconcat ("±", value, NULL) : g_steal_pointer (&value);
}

static char *
describe_dof (double dof)
{
  return isfinite (dof) ? g_strdup_printf ("%.3g", dof) : g_strdup ("∞");
}

static char *
make_sentence (const TmBudgetRow *row)
{
  GString *text = g_string_new (NULL);

  /* Translators: "Limit of error of BM-2: ±4 µm, rectangular, 2.3 µm standard, 61 % of the whole". */
  g_string_append_printf (text, _ ("%s: %s, %s, %s standard, %s of the whole"), row->what, row->stated,
                          row->distribution, row->standard, row->percent);
  if (!g_str_equal (row->dof, "∞"))
    g_string_append_printf (text, _ (", %s degrees of freedom"), row->dof);
  if (*row->source != '\0')
    g_string_append_printf (text, ", %s", row->source);
  return g_string_free (text, FALSE);
}

/* The row of the job that @component was made of. */
static TmBudgetLine *
find_line (const TmJob *job, const char *method_name, const TmComponent *component)
{
  for (guint i = 0; i < job->budget_lines->len; i++)
    {
      TmBudgetLine *line = g_ptr_array_index (job->budget_lines, i);
      const char *subject = *line->name != '\0' ? line->name : line->method;

      if (g_str_equal (line->method, method_name) && g_strcmp0 (subject, component->subject) == 0
          && fabs ((double)line->value.count) == component->value)
        return line;
    }
  return NULL;
}

static TmBudgetRow *
make_row (const TmJob *job, const TmFeature *feature, const char *method_name, const TmComponent *component,
          double variance)
{
  TmBudgetRow *row = g_new0 (TmBudgetRow, 1);
  double part = tm_component_share (component);
  g_autofree char *what = NULL;

  row->line = find_line (job, method_name, component);
  what = describe_what (component, row->line);
  row->what = tm_words_start_upper (what);
  row->stated = describe_stated (component, feature->unit);
  row->distribution = g_strdup (
      g_dpgettext2 (GETTEXT_PACKAGE, "distribution", tm_distribution_word (component->distribution)));
  row->divisor = g_strdup_printf ("%.4g", tm_component_divisor (component));
  row->standard = tm_words_small (part, feature->unit, FALSE);
  row->dof = describe_dof (component->dof);
  row->share = variance > 0 ? part * part / variance : 0;
  row->percent = tm_words_share (row->share);
  row->source = describe_source (component);
  row->assumed = component->assumed;
  row->sentence = make_sentence (row);
  return row;
}

/* Position is taken as two offsets, which is the less certain way. */
static guint
collect_lines (const TmJob *job, const TmFeature *feature, const char *method_name, TmComponent *lines)
{
  TmMethodUse use = tm_method_use (job, feature, method_name);
  const TmLocalSize single = { .n = 1, .radial = feature->kind == TM_KIND_POSITION };

  return tm_method_lines (&use, &single, NULL, lines);
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  const TmBudgetRow *first = *(const TmBudgetRow *const *)a;
  const TmBudgetRow *second = *(const TmBudgetRow *const *)b;

  return first->share < second->share ? 1 : first->share > second->share ? -1 : 0;
}

GPtrArray *
tm_words_budget (const TmJob *job, const TmFeature *feature, const char *method_name)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_budget_row_free);
  TmComponent lines[TM_METHOD_MAX_LINES];
  guint n = collect_lines (job, feature, method_name, lines);
  double variance = 0;

  for (guint i = 0; i < n; i++)
    variance += tm_component_share (&lines[i]) * tm_component_share (&lines[i]);
  for (guint i = 0; i < n; i++)
    g_ptr_array_add (rows, make_row (job, feature, method_name, &lines[i], variance));
  g_ptr_array_sort (rows, compare_rows);
  return rows;
}

/* -------- What they come to -------- */

static const char *const total_names[TM_N_TOTALS] = {
  [TM_TOTAL_COMBINED] = NC_ ("total", "Combined"),
  [TM_TOTAL_DOF] = NC_ ("total", "Effective degrees of freedom"),
  [TM_TOTAL_COVERAGE] = NC_ ("total", "Coverage factor k"),
  [TM_TOTAL_EXPANDED] = NC_ ("total", "Expanded (95 %)"),
  [TM_TOTAL_GUARD] = NC_ ("total", "Guard"),
  [TM_TOTAL_SHARE] = NC_ ("total", "Share of the band"),
  [TM_TOTAL_WORD] = NC_ ("total", "In a word"),
};

const char *
tm_words_total_name (TmTotal total)
{
  g_return_val_if_fail ((guint)total < TM_N_TOTALS, "");

  return g_dpgettext2 (GETTEXT_PACKAGE, "total", total_names[total]);
}

/* Degrees of freedom are cut to a whole number, never below one, before k is taken; cut here too, so that
 * what is printed and what is taken agree. */
static char *
describe_total_dof (double dof)
{
  if (!isfinite (dof) || dof > 1e6)
    return g_strdup (_ ("without limit"));
  return g_strdup_printf (_ ("%.2f, taken as %.0f"), floor (dof * 100) / 100, MAX (floor (dof), 1));
}

static char *
describe_band_share (const TmFeature *feature, const TmOutlook *outlook)
{
  double share = tm_outlook_share (feature, outlook);

  if (!isfinite (share) || outlook->guard <= 0)
    return g_strdup ("");
  if (outlook->settles == TM_SETTLES_CANNOT)
    return g_strdup (_ ("all of it"));
  return tm_words_share (share);
}

char *
tm_words_total (const TmFeature *feature, const TmOutlook *outlook, TmTotal total)
{
  switch (total)
    {
    case TM_TOTAL_COMBINED:
      return tm_words_small (outlook->u, feature->unit, FALSE);
    case TM_TOTAL_DOF:
      return describe_total_dof (outlook->dof);
    case TM_TOTAL_COVERAGE:
      return g_strdup_printf ("%.2f", outlook->coverage);
    case TM_TOTAL_EXPANDED:
      {
        g_autofree char *expanded = tm_words_small (outlook->expanded, feature->unit, FALSE);

        return g_strconcat ("±", expanded, NULL);
      }
    case TM_TOTAL_GUARD:
      return outlook->guard > 0 ? tm_words_small ((double)outlook->guard, feature->unit, TRUE)
                                : g_strdup ("");
    case TM_TOTAL_SHARE:
      return describe_band_share (feature, outlook);
    case TM_TOTAL_WORD:
      return g_strdup (outlook->settles != TM_SETTLES_UNKNOWN ? tm_words_settles (outlook->settles) : "");
    case TM_N_TOTALS:
    default:
      return g_strdup ("");
    }
}
