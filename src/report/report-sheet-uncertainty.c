/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-uncertainty: what each result's uncertainty is made of, line by line, with live formulas.
 *
 * One budget for each method on each feature, at the station that decides the first line of the report
 * that uses it.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-combine.h"
#include "core-correction.h"
#include "core-method.h"
#include "report-sheets.h"
#include "report-words.h"

enum {
  COLUMN_LINE,
  COLUMN_OF,
  COLUMN_SOURCE,
  COLUMN_DISTRIBUTION,
  COLUMN_VALUE,
  COLUMN_DIVISOR,
  COLUMN_SENSITIVITY,
  COLUMN_CONTRIBUTION,
  COLUMN_DOF,
  COLUMN_SHARE,
  COLUMN_ASSUMED,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_LINE] = { N_ ("Line"), 16, 26 },
  [COLUMN_OF] = { N_ ("Of"), 8, 20 },
  [COLUMN_SOURCE] = { N_ ("Source"), 14, 36 },
  [COLUMN_DISTRIBUTION] = { N_ ("Distribution"), 11, 14 },
  [COLUMN_VALUE] = { N_ ("Value"), 9, 14 },
  [COLUMN_DIVISOR] = { N_ ("Divisor"), 7, 10 },
  [COLUMN_SENSITIVITY] = { N_ ("Sensitivity"), 7, 12 },
  [COLUMN_CONTRIBUTION] = { N_ ("Standard uncertainty"), 10, 14 },
  [COLUMN_DOF] = { N_ ("Degrees of freedom"), 8, 12 },
  [COLUMN_SHARE] = { N_ ("Share of variance (%)"), 8, 10 },
  [COLUMN_ASSUMED] = { N_ ("Known how"), 8, 14 },
};

/* One budget that is being written. */
typedef struct {
  const TmReportLine *line;
  const TmLocalSize *size;
  TmMethodUse use;
  TmComponent lines[TM_METHOD_MAX_LINES];
  guint n;
  TmUncertainty whole;
  double counts; /* in one unit of the feature */
  guint decimals;
} Budget;

/* Digits that show the smallest line that matters. */
static guint
choose_decimals (const Budget *budget)
{
  const double u = budget->whole.u / budget->counts;

  return isfinite (u) && u > 0 ? (guint)CLAMP (2.0 - floor (log10 (u)), 0.0, 9.0) : 4;
}

/* The local size at the station that decides; NULL when there is none. */
static const TmLocalSize *
get_deciding (const TmReportLine *line)
{
  const TmJudgement *judgement = &line->judgement;

  return judgement->sizes.n_stations > 0 && !tm_kind_is_attribute (line->feature->kind)
             ? &judgement->sizes.stations[judgement->deciding]
             : NULL;
}

/* @size is borrowed.  FALSE when its method is not known. */
static gboolean
make_budget (const TmJob *job, const TmReportLine *line, const TmLocalSize *size, Budget *budget)
{
  TmUseWhen when;

  *budget = (Budget) { .line = line, .size = size };
  budget->counts = (double)MAX (1, tm_unit_counts (line->feature->unit));
  when = tm_use_when (budget->size->last);
  budget->use = tm_method_use_at (job, line->feature, budget->size->method_name, &when);
  if (!budget->use.known)
    return FALSE;
  budget->n = tm_method_lines (&budget->use, budget->size, NULL, budget->lines);
  budget->whole = tm_method_uncertainty (&budget->use, budget->size, NULL);
  budget->decimals = choose_decimals (budget);
  return budget->n > 0 && isfinite (budget->whole.u);
}

static const char *
name_component (const TmComponent *component)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "component", tm_component_word (component->kind));
}

/* The divisor that the line is held by, also where it is the distribution's own. */
static double
get_divisor (const TmComponent *component)
{
  const double standard = tm_component_standard (component);

  if (component->divisor > 0 || standard <= 0)
    return component->divisor > 0 ? component->divisor : 1.0;
  return component->value / standard;
}

static double
get_share (const Budget *budget, const TmComponent *component)
{
  const double part = component->sensitivity * tm_component_standard (component);

  return budget->whole.u > 0 ? 100.0 * part * part / (budget->whole.u * budget->whole.u) : NAN;
}

static void
write_contribution (TmSheet *sheet, const Budget *budget, const TmComponent *component)
{
  g_autofree char *value = tm_cell_name (sheet->row, COLUMN_VALUE);
  g_autofree char *divisor = tm_cell_name (sheet->row, COLUMN_DIVISOR);
  g_autofree char *sensitivity = tm_cell_name (sheet->row, COLUMN_SENSITIVITY);
  g_autofree char *formula = g_strdup_printf ("=ABS(%s)*%s/%s", sensitivity, value, divisor);
  const double result
      = fabs (component->sensitivity) * (component->value / budget->counts) / get_divisor (component);

  tm_sheet_formula_number (sheet, COLUMN_CONTRIBUTION, formula, result, budget->decimals + 1,
                           TM_STYLE_NUMBER);
}

static void
write_component (TmSheet *sheet, const Budget *budget, const TmComponent *component)
{
  const TmDistribution distribution = component->distribution;

  tm_sheet_text (sheet, COLUMN_LINE, name_component (component), TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_OF, component->subject != NULL ? component->subject : "", TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_SOURCE,
                 component->source != NULL && *component->source != '\0' ? _ (component->source) : "",
                 TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_DISTRIBUTION,
                 g_dpgettext2 (GETTEXT_PACKAGE, "distribution", tm_distribution_word (distribution)),
                 TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_VALUE, component->value / budget->counts, budget->decimals + 1,
                   TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_DIVISOR, get_divisor (component), 3, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_SENSITIVITY, component->sensitivity, 2, TM_STYLE_NUMBER);
  write_contribution (sheet, budget, component);
  if (isfinite (component->dof))
    tm_sheet_number (sheet, COLUMN_DOF, component->dof, component->dof == floor (component->dof) ? 0 : 1,
                     TM_STYLE_NUMBER);
  else
    tm_sheet_text (sheet, COLUMN_DOF, _ ("infinite"), TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_SHARE, get_share (budget, component), 1, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_ASSUMED, component->assumed ? _ ("assumed") : _ ("stated"), TM_STYLE_CENTRE);
}

/* "Combined", and what it is. */
static void
write_sum (TmSheet *sheet, const char *name, const char *formula, double value, guint decimals)
{
  tm_sheet_text (sheet, COLUMN_LINE, name, TM_STYLE_STRONG);
  if (formula != NULL)
    tm_sheet_formula_number (sheet, COLUMN_CONTRIBUTION, formula, value, decimals, TM_STYLE_NUMBER);
  else if (isfinite (value))
    tm_sheet_number (sheet, COLUMN_CONTRIBUTION, value, decimals, TM_STYLE_NUMBER);
  else
    tm_sheet_text (sheet, COLUMN_CONTRIBUTION, _ ("infinite"), TM_STYLE_CENTRE);
  tm_sheet_down (sheet);
}

static void
write_sums (TmSheet *sheet, const Budget *budget, guint32 first)
{
  const TmUncertainty *whole = &budget->whole;
  g_autofree char *from = tm_cell_name (first, COLUMN_CONTRIBUTION);
  g_autofree char *to = tm_cell_name (sheet->row - 1, COLUMN_CONTRIBUTION);
  g_autofree char *combined = g_strdup_printf ("=SQRT(SUMSQ(%s:%s))", from, to);
  g_autofree char *u = tm_cell_name (sheet->row, COLUMN_CONTRIBUTION);
  g_autofree char *k = tm_cell_name (sheet->row + 2, COLUMN_CONTRIBUTION);
  g_autofree char *expanded = g_strdup_printf ("=%s*%s", k, u);

  write_sum (sheet, _ ("Combined"), combined, whole->u / budget->counts, budget->decimals + 1);
  write_sum (sheet, _ ("Effective degrees of freedom"), NULL, whole->dof, 1);
  write_sum (sheet, _ ("Coverage factor k (95 %)"), NULL, whole->coverage, 3);
  write_sum (sheet, _ ("Expanded ±"), expanded, whole->expanded / budget->counts, budget->decimals);
}

static char *
name_budget (const Budget *budget)
{
  const TmReportLine *line = budget->line;
  g_autofree char *feature = tm_report_feature_name (line->feature, 0);

  return g_strdup_printf (ngettext ("%s on feature %s, mean of %u reading; unit: %s",
                                    "%s on feature %s, mean of %u readings; unit: %s", budget->size->n),
                          budget->size->method_name, feature, budget->size->n,
                          tm_unit_symbol (line->feature->unit));
}

static gboolean
write_budget (TmSheet *sheet, const Budget *budget, double fraction)
{
  g_autofree char *name = name_budget (budget);
  guint32 first;

  tm_sheet_text (sheet, 0, name, TM_STYLE_SECTION);
  tm_sheet_down (sheet);
  tm_sheet_head (sheet, columns, N_COLUMNS, N_COLUMNS);
  first = sheet->row;
  for (guint i = 0; i < budget->n; i++)
    {
      write_component (sheet, budget, &budget->lines[i]);
      tm_sheet_down (sheet);
    }
  write_sums (sheet, budget, first);
  return tm_sheet_next (sheet, fraction);
}

/* -------- Several methods put together -------- */

static const TmColumn combined_columns[] = {
  { N_ ("Method"), 16, 26 },
  { N_ ("Readings"), 8, 20 },
  { N_ ("Settles"), 14, 36 },
  { N_ ("Stands apart by"), 11, 14 },
  { N_ ("Size"), 9, 14 },
  { N_ ("Weight (%)"), 7, 10 },
  { N_ ("Degrees of freedom"), 7, 12 },
  { N_ ("Standard uncertainty"), 10, 14 },
};

static void
write_dof (TmSheet *sheet, guint column, double dof)
{
  if (isfinite (dof))
    tm_sheet_number (sheet, column, dof, dof == floor (dof) ? 0 : 1, TM_STYLE_NUMBER);
  else
    tm_sheet_text (sheet, column, isinf (dof) ? _ ("infinite") : "", TM_STYLE_CENTRE);
}

static double
to_unit (gint64 reference, double counts, TmUnit unit)
{
  return tm_count_to_double (reference, unit) + counts / (double)MAX (1, tm_unit_counts (unit));
}

static void
write_combined_part (TmSheet *sheet, const TmReportLine *line, const TmCombined *combined,
                     const TmCombinePart *part, guint decimals)
{
  const TmUnit unit = line->feature->unit;

  tm_sheet_text (sheet, 0, part->method_name, TM_STYLE_TEXT);
  tm_sheet_number (sheet, 1, part->n, 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, 2, tm_report_settles_word (part->settles), TM_STYLE_TEXT);
  tm_sheet_number (sheet, 3, part->apart, 2, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 4, to_unit (combined->reference, part->size, unit), decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 5, 100.0 * part->weight, 1, TM_STYLE_NUMBER);
  write_dof (sheet, 6, part->dof);
  tm_sheet_number (sheet, 7, to_unit (0, part->u, unit), decimals + 1, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
}

static void
write_combined_sum (TmSheet *sheet, const TmReportLine *line, const TmCombined *combined, guint decimals)
{
  const TmUnit unit = line->feature->unit;

  tm_sheet_text (sheet, 0, _ ("Put together"), TM_STYLE_STRONG);
  tm_sheet_text (sheet, 2,
                 combined->disagree     ? _ ("disagree beyond their uncertainties; widened")
                 : combined->best_alone ? _ ("the best method alone counts")
                                        : _ ("agree within their uncertainties"),
                 TM_STYLE_TEXT);
  tm_sheet_number (sheet, 4, to_unit (combined->reference, combined->size, unit), decimals, TM_STYLE_NUMBER);
  write_dof (sheet, 6, combined->dof);
  tm_sheet_number (sheet, 7, to_unit (0, combined->u, unit), decimals + 1, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
  tm_sheet_text (sheet, 0, _ ("Expanded ±"), TM_STYLE_STRONG);
  tm_sheet_number (sheet, 7, to_unit (0, combined->expanded, unit), decimals, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
}

static gboolean
write_combined (TmSheet *sheet, const TmReportLine *line, const TmCombined *combined)
{
  const double u = to_unit (0, combined->u, line->feature->unit);
  const guint decimals = isfinite (u) && u > 0 ? (guint)CLAMP (2.0 - floor (log10 (u)), 0.0, 9.0) : 4;
  g_autofree char *feature = tm_report_feature_name (line->feature, line->place);
  g_autofree char *name = g_strdup_printf (_ ("Methods on feature %s put together; unit: %s"), feature,
                                           tm_unit_symbol (line->feature->unit));

  tm_sheet_text (sheet, 0, name, TM_STYLE_SECTION);
  tm_sheet_down (sheet);
  tm_sheet_head (sheet, combined_columns, G_N_ELEMENTS (combined_columns), G_N_ELEMENTS (combined_columns));
  for (guint i = 0; i < combined->n_parts; i++)
    write_combined_part (sheet, line, combined, &combined->parts[i], decimals);
  if (isfinite (combined->u))
    write_combined_sum (sheet, line, combined, decimals);
  return tm_sheet_next (sheet, 0.5);
}

/* -------- What has its budget already -------- */

typedef struct {
  TmSheet *sheet;
  GHashTable *written; /* feature and method as one text */
  double fraction;
} Budgets;

static gboolean
write_once (Budgets *budgets, const TmReportLine *line, const TmLocalSize *size)
{
  g_autofree char *key = g_strconcat (line->feature->balloon, "\n", size->method_name, NULL);
  Budget budget;

  if (g_hash_table_contains (budgets->written, key)
      || !make_budget (budgets->sheet->workbook->job, line, size, &budget))
    return TRUE;
  g_hash_table_add (budgets->written, g_steal_pointer (&key));
  return write_budget (budgets->sheet, &budget, budgets->fraction);
}

/* The readings at @size's station that @method took. */
static GPtrArray *
collect_readings (const TmJob *job, const TmReportLine *line, const char *station, const char *method)
{
  const GPtrArray *all = tm_job_readings_at (job, line->piece, line->feature, line->place);
  GPtrArray *found = g_ptr_array_new ();

  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      TmReading *reading = g_ptr_array_index (all, i);
      const char *name = *reading->method != '\0' ? reading->method : line->feature->method;

      if (tm_row_counts (&reading->row) && g_str_equal (name, method)
          && tm_station_same (reading->station, station, line->feature->unit))
        g_ptr_array_add (found, reading);
    }
  return found;
}

static gboolean
write_part (Budgets *budgets, const TmReportLine *line, const char *station, const char *method)
{
  const TmJob *job = budgets->sheet->workbook->job;
  g_autoptr (GPtrArray) readings = collect_readings (job, line, station, method);
  g_auto (TmSizes) sizes = { 0 };

  tm_sizes_of (job, line->feature, readings, NULL, &sizes);
  return sizes.n_stations == 0 || write_once (budgets, line, &sizes.stations[0]);
}

/* Every method at the station has its budget, and then what they come to. */
static gboolean
write_several (Budgets *budgets, const TmReportLine *line, const TmLocalSize *size)
{
  g_auto (TmCombined) combined = { 0 };

  tm_combine (budgets->sheet->workbook->job, line->piece, line->feature, line->place, size->station,
              &combined);
  for (guint i = 0; i < combined.n_parts; i++)
    if (!write_part (budgets, line, size->station, combined.parts[i].method_name))
      return FALSE;
  return write_combined (budgets->sheet, line, &combined);
}

static void
write_budgets (TmSheet *sheet)
{
  const GPtrArray *lines = sheet->workbook->content->lines;
  g_autoptr (GHashTable) written = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Budgets budgets = { sheet, written, 0.0 };

  for (guint i = 0; i < lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (lines, i);
      const TmLocalSize *size = get_deciding (line);

      budgets.fraction = (double)i / lines->len;
      if (size != NULL
          && !(size->several_methods && !size->radial ? write_several (&budgets, line, size)
                                                      : write_once (&budgets, line, size)))
        return;
    }
}

static gboolean
has_any (const TmReportContent *content)
{
  Budget budget;

  for (guint i = 0; i < content->lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (content->lines, i);
      const TmLocalSize *size = get_deciding (line);

      if (size != NULL && make_budget (content->job, line, size, &budget))
        return TRUE;
    }
  return FALSE;
}

void
tm_sheet_write_uncertainty (TmWorkbook *workbook)
{
  TmSheet sheet;

  if (!has_any (workbook->content))
    return;
  if (tm_sheet_begin (&sheet, workbook, _ ("Uncertainty"), N_ ("Uncertainty"),
                      _ ("What the uncertainty of each method on each feature is made of (JCGM 100), at the "
                         "station that decides. Standard, combined and expanded are formulas over their "
                         "rows.")))
    write_budgets (&sheet);
  tm_sheet_end (&sheet);
}
