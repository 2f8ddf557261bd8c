/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-press: how hard each pair of the fit presses, where the press is stated.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-press.h"
#include "report-fit.h"
#include "report-row.h"
#include "report-sheets.h"

enum {
  COLUMN_FEATURE,
  COLUMN_NAME,
  COLUMN_PIECE,
  COLUMN_PLACE,
  COLUMN_MATE,
  COLUMN_UNIT,
  COLUMN_LEAST,
  COLUMN_MOST,
  COLUMN_PRESSURE_LEAST,
  COLUMN_PRESSURE_MOST,
  COLUMN_HUB_USE,
  COLUMN_SHAFT_USE,
  COLUMN_GROWTH,
  COLUMN_CLOSURE,
  COLUMN_FORCE_LEAST,
  COLUMN_FORCE_MOST,
  COLUMN_TORQUE_LEAST,
  COLUMN_TORQUE_MOST,
  COLUMN_HEAT,
  COLUMN_COOL,
  COLUMN_SAYS,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_FEATURE] = { N_ ("Feature"), 6, 10 },
  [COLUMN_NAME] = { N_ ("Name"), 8, 20 },
  [COLUMN_PIECE] = { N_ ("Piece"), 5, 12 },
  [COLUMN_PLACE] = { N_ ("Place"), 5, 6 },
  [COLUMN_MATE] = { N_ ("Mate"), 8, 14 },
  [COLUMN_UNIT] = { N_ ("Unit"), 5, 7 },
  [COLUMN_LEAST] = { N_ ("Interference least"), 9, 12 },
  [COLUMN_MOST] = { N_ ("Interference most"), 9, 12 },
  [COLUMN_PRESSURE_LEAST] = { N_ ("Pressure least, MPa"), 8, 10 },
  [COLUMN_PRESSURE_MOST] = { N_ ("Pressure most, MPa"), 8, 10 },
  [COLUMN_HUB_USE] = { N_ ("Hub (% of yield)"), 7, 9 },
  [COLUMN_SHAFT_USE] = { N_ ("Shaft (% of yield)"), 7, 9 },
  [COLUMN_GROWTH] = { N_ ("Hub grows by"), 8, 12 },
  [COLUMN_CLOSURE] = { N_ ("Shaft bore closes by"), 8, 12 },
  [COLUMN_FORCE_LEAST] = { N_ ("Holds at least, kN"), 8, 11 },
  [COLUMN_FORCE_MOST] = { N_ ("Pressing takes up to, kN"), 8, 11 },
  [COLUMN_TORQUE_LEAST] = { N_ ("Torque at least, N·m"), 8, 11 },
  [COLUMN_TORQUE_MOST] = { N_ ("Torque up to, N·m"), 8, 11 },
  [COLUMN_HEAT] = { N_ ("Heat hub to, °C"), 7, 9 },
  [COLUMN_COOL] = { N_ ("Or cool shaft to, °C"), 7, 9 },
  [COLUMN_SAYS] = { N_ ("Remark"), 12, 30 },
};

typedef struct {
  const TmReportFit *fit;
  TmPressInput input;
  TmPressAnswer answer;
  gboolean plastic;
} Press;

/* A press is stated by its hub or its contact. */
static gboolean
is_stated (const TmFeature *feature)
{
  return feature->press.hub_outside.given || feature->press.length.given;
}

/* Whether the fit presses at all, somewhere in its range. */
static gboolean
has_interference (const TmReportFit *fit)
{
  return isfinite (fit->check.least) && fit->check.least < 0;
}

static GArray *
find_presses (const TmJob *job, const GArray *fits)
{
  GArray *presses = g_array_new (FALSE, FALSE, sizeof (Press));

  for (guint i = 0; i < fits->len; i++)
    {
      Press press = { .fit = &g_array_index (fits, TmReportFit, i) };

      if (!is_stated (press.fit->feature) || !has_interference (press.fit))
        continue;
      tm_press_input_of (job, press.fit->feature, &press.input);
      tm_press_take_fit (&press.input, &press.fit->check);
      tm_press (&press.input, &press.answer);
      press.plastic = tm_press_has_plastic (job, press.fit->feature);
      g_array_append_val (presses, press);
    }
  return presses;
}

static void
write_names (TmSheet *sheet, const TmReportFit *fit)
{
  const TmFeature *feature = fit->feature;

  tm_sheet_text (sheet, COLUMN_FEATURE, feature->balloon, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_NAME, feature->name, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_PIECE, fit->piece != NULL ? fit->piece->serial : "", TM_STYLE_CENTRE);
  tm_sheet_number (sheet, COLUMN_PLACE, fit->place > 0 ? fit->place : (double)NAN, 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_MATE, fit->mate != NULL ? fit->mate->serial : _ ("by limits"),
                 TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_UNIT, tm_unit_symbol (feature->unit), TM_STYLE_CENTRE);
}

/* Core gives millimetres. */
static void
write_length (TmSheet *sheet, guint column, double mm, const TmReportFit *fit)
{
  const TmUnit unit = fit->feature->unit;
  const double scale = (double)tm_unit_counts (TM_UNIT_MM) / (double)tm_unit_counts (unit);

  tm_sheet_number (sheet, column, mm * scale, tm_report_fit_decimals (fit), TM_STYLE_NUMBER);
}

/* Three digits are more than an estimate for planning holds. */
static void
write_figure (TmSheet *sheet, guint column, double value)
{
  tm_sheet_number (sheet, column, value,
                   fabs (value) >= 100  ? 0
                   : fabs (value) >= 10 ? 1
                                        : 2,
                   TM_STYLE_NUMBER);
}

static void
write_press (TmSheet *sheet, const Press *press)
{
  const TmPressAnswer *answer = &press->answer;

  write_names (sheet, press->fit);
  write_length (sheet, COLUMN_LEAST, press->input.interference_least, press->fit);
  write_length (sheet, COLUMN_MOST, press->input.interference_most, press->fit);
  write_figure (sheet, COLUMN_PRESSURE_LEAST, answer->least.pressure);
  write_figure (sheet, COLUMN_PRESSURE_MOST, answer->most.pressure);
  write_figure (sheet, COLUMN_HUB_USE, 100 * answer->most.hub_use);
  write_figure (sheet, COLUMN_SHAFT_USE, 100 * answer->most.shaft_use);
  write_length (sheet, COLUMN_GROWTH, answer->most.hub_growth, press->fit);
  write_length (sheet, COLUMN_CLOSURE,
                press->input.shaft_inside > 0 ? answer->most.bore_closure : (double)NAN, press->fit);
  write_figure (sheet, COLUMN_FORCE_LEAST, answer->least.axial_least / 1000);
  write_figure (sheet, COLUMN_FORCE_MOST, answer->most.axial_most / 1000);
  write_figure (sheet, COLUMN_TORQUE_LEAST, answer->least.torque_least);
  write_figure (sheet, COLUMN_TORQUE_MOST, answer->most.torque_most);
  tm_sheet_number (sheet, COLUMN_HEAT, ceil (answer->heat_hub_to), 0, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_COOL, floor (answer->cool_shaft_to), 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, COLUMN_SAYS,
                 answer->status != TM_PRESS_OK
                     ? g_dpgettext2 (GETTEXT_PACKAGE, "press status", tm_press_status_word (answer->status))
                     : "",
                 TM_STYLE_TEXT);
}

/* Under the table, each once: what has to be minded of any of the presses. */
static void
write_cautions (TmSheet *sheet, const GArray *presses)
{
  tm_sheet_down (sheet);
  for (TmPressCaution caution = 0; caution < TM_N_PRESS_CAUTIONS; caution++)
    {
      gboolean applies = FALSE;

      for (guint i = 0; i < presses->len && !applies; i++)
        {
          const Press *press = &g_array_index (presses, Press, i);

          applies = tm_press_caution_applies (caution, &press->answer, press->plastic);
        }
      if (!applies)
        continue;
      tm_sheet_across (sheet, 0, N_COLUMNS - 1,
                       g_dpgettext2 (GETTEXT_PACKAGE, "press caution", tm_press_caution_word (caution)),
                       TM_STYLE_PARAGRAPH, 2);
      tm_sheet_down (sheet);
    }
}

void
tm_sheet_write_press (TmWorkbook *workbook)
{
  g_autoptr (GArray) fits = NULL;
  g_autoptr (GArray) presses = NULL;
  TmSheet sheet;

  if (!tm_report_has_fits (workbook->job))
    return;
  fits = tm_report_fits (workbook->job);
  presses = find_presses (workbook->job, fits);
  if (presses->len == 0 || !tm_sheet_rows_fit (workbook, presses->len))
    return;
  if (tm_sheet_begin (&sheet, workbook, _ ("Press"), N_ ("Press"),
                      _ ("Elastic figures for planning, after what roughness takes: least at the least "
                         "interference and friction, most at the most. Stresses and growth at the most.")))
    {
      tm_sheet_head (&sheet, columns, N_COLUMNS, N_COLUMNS);
      for (guint i = 0; i < presses->len; i++)
        {
          write_press (&sheet, &g_array_index (presses, Press, i));
          if (!tm_sheet_next (&sheet, (double)i / presses->len))
            break;
        }
      if (!tm_workbook_stopped (workbook))
        write_cautions (&sheet, presses);
    }
  tm_sheet_end (&sheet);
}
