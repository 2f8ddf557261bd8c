/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-fit: whether each feature fits its mate, by limits and as measured.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report-fit.h"
#include "report-part.h"

static char *
format_size (const TmFitPart *part, const TmReportFit *fit)
{
  const guint decimals = tm_report_fit_decimals (fit);
  g_autofree char *smallest = NULL, *largest = NULL;

  if (part->smallest <= 0)
    return g_strdup ("");
  smallest = tm_count_format (part->smallest, fit->feature->unit, decimals);
  largest = tm_count_format (part->largest, fit->feature->unit, decimals);
  return g_str_equal (smallest, largest) ? g_strdup (smallest)
                                         : g_strdup_printf ("%s … %s", smallest, largest);
}

static char *
say_fit (gconstpointer fit)
{
  return g_strdup (tm_report_fit_word (fit));
}

static void
add_fit (TmParts *parts, const TmReportFit *fit)
{
  const double unit = (double)MAX (1, tm_unit_counts (fit->feature->unit));
  const guint decimals = tm_report_fit_decimals (fit);
  g_autofree char *bore = format_size (fit->is_bore ? &fit->own : &fit->other, fit);
  g_autofree char *shaft = format_size (fit->is_bore ? &fit->other : &fit->own, fit);
  g_autofree char *says = tm_part_both (parts, say_fit, fit);

  tm_report_add_cell (parts->document, fit->feature->balloon);
  tm_report_add_cell (parts->document, fit->piece != NULL ? fit->piece->serial : "");
  tm_report_add_cell (parts->document,
                      fit->mate != NULL ? fit->mate->serial : tm_part_label (parts, NULL, N_ ("by limits")));
  tm_report_add_cell (parts->document, tm_unit_symbol (fit->feature->unit));
  tm_report_add_cell (parts->document, bore);
  tm_report_add_cell (parts->document, shaft);
  tm_part_number_cell (parts, fit->check.least / unit, decimals);
  tm_part_number_cell (parts, fit->check.most / unit, decimals);
  tm_part_number_cell (parts, fit->mate != NULL ? fit->check.expanded / unit : (double)NAN, decimals);
  tm_report_add_cell (parts->document, says);
}

void
tm_part_fit (TmParts *parts)
{
  static const TmReportColumn columns[] = {
    { N_ ("Feature"), 30, 50, 0, TM_CELL_CENTRE },
    { N_ ("Piece"), 28, 60, 0, TM_CELL_CENTRE },
    { N_ ("Mate"), 36, 70, 0, TM_CELL_PLAIN },
    { N_ ("Unit"), 22, 30, 0, TM_CELL_CENTRE },
    { N_ ("Bore"), 40, 90, 0, TM_CELL_PLAIN },
    { N_ ("Shaft"), 40, 90, 0, TM_CELL_PLAIN },
    { N_ ("Clearance least"), 36, 0, 0, TM_CELL_NUMBER },
    { N_ ("Clearance most"), 36, 0, 0, TM_CELL_NUMBER },
    { N_ ("± (k = 2)"), 30, 0, 0, TM_CELL_NUMBER },
    { N_ ("The fit is"), 70, 150, 1, TM_CELL_PLAIN },
  };
  g_autoptr (GArray) fits = NULL;

  if (!tm_report_has_fits (parts->job))
    return;
  fits = tm_report_fits (parts->job);
  tm_part_section (parts, N_ ("Fit"), "fit", FALSE);
  tm_part_say_text (parts,
                    N_ ("Each feature with its mate at 20 °C, by limits and as measured. Clearance is bore "
                        "less shaft: below zero it is interference."),
                    TRUE);
  tm_part_table (parts, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < fits->len; i++)
    add_fit (parts, &g_array_index (fits, TmReportFit, i));
}
