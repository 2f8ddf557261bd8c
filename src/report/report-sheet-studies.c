/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-studies: each gauge study, what it found and the readings that it rests on.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-study.h"
#include "report-sheets.h"

static const TmColumn part_columns[] = {
  { N_ ("Component"), 20, 30 }, { N_ ("Standard deviation"), 12, 16 }, { N_ ("95 % from"), 10, 14 },
  { N_ ("95 % to"), 10, 14 },   { N_ ("% of study"), 8, 10 },          { N_ ("% of band"), 8, 10 },
};

static const TmColumn reading_columns[] = {
  { N_ ("Piece"), 20, 30 }, { N_ ("Person"), 12, 16 },  { N_ ("Trial"), 10, 14 },
  { N_ ("Value"), 10, 14 }, { N_ ("As typed"), 8, 10 }, { N_ ("Taken (UTC)"), 17, 19 },
};

/* One study that is being written. */
typedef struct {
  const TmStudy *study;
  TmStudyResult result;
  double band;
  guint decimals;
} Shown;

static guint
find_decimals (const TmJob *job, const TmStudy *study)
{
  guint decimals = 0;

  for (guint i = 0; i < job->study_readings->len; i++)
    {
      const TmStudyReading *reading = g_ptr_array_index (job->study_readings, i);
      if (g_str_equal (reading->study, study->name))
        decimals = MAX (decimals, reading->value.decimals);
    }
  return MIN (decimals + 2, TM_MAX_DECIMALS);
}

static void
write_part (TmSheet *sheet, const Shown *shown, const char *name, const TmStudyPart *part)
{
  tm_sheet_text (sheet, 0, name, TM_STYLE_TEXT);
  tm_sheet_number (sheet, 1, part->sd, shown->decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 2, part->low, shown->decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 3, part->high, shown->decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 4, shown->result.tv.sd > 0 ? 100.0 * part->sd / shown->result.tv.sd : NAN, 1,
                   TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 5, shown->band > 0 ? 600.0 * part->sd / shown->band : NAN, 1, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
}

static void
write_parts (TmSheet *sheet, const Shown *shown)
{
  const TmStudyResult *result = &shown->result;

  tm_sheet_head (sheet, part_columns, G_N_ELEMENTS (part_columns), G_N_ELEMENTS (part_columns));
  write_part (sheet, shown, _ ("Repeatability"), &result->ev);
  write_part (sheet, shown, _ ("Between people"), &result->av);
  write_part (sheet, shown, _ ("People and pieces together"), &result->interaction);
  write_part (sheet, shown, _ ("Repeatability and people"), &result->grr);
  write_part (sheet, shown, _ ("Between pieces"), &result->pv);
  write_part (sheet, shown, _ ("Total"), &result->tv);
}

static void
write_line (TmSheet *sheet, const char *text)
{
  tm_sheet_text (sheet, 0, text, TM_STYLE_PLAIN);
  tm_sheet_down (sheet);
}

static void
write_words (TmSheet *sheet, const Shown *shown)
{
  const TmStudyResult *result = &shown->result;

  write_line (sheet, _ (tm_study_status_text (result->status)));
  if (result->ndc > 0)
    {
      g_autofree char *classes
          = g_strdup_printf (_ ("Sizes that the method can tell apart in these pieces: %u"), result->ndc);
      write_line (sheet, classes);
    }
  if (isfinite (result->p_interaction))
    {
      g_autofree char *pooled
          = g_strdup_printf (result->pooled ? _ ("People and pieces act apart (p = %.3f): pooled into the "
                                                 "repeatability.")
                                            : _ ("People and pieces act together (p = %.3f)."),
                             result->p_interaction);
      write_line (sheet, pooled);
    }
}

static char *
name_study (const TmStudy *study)
{
  return g_strdup_printf (_ ("%s: %s, pieces %u, people %u, repeats %u; unit: %s"), study->name,
                          study->method, study->pieces->len, study->people->len, (guint)study->repeats.count,
                          tm_unit_symbol (study->unit));
}

static gboolean
write_readings (TmSheet *sheet, const Shown *shown)
{
  const GPtrArray *readings = sheet->workbook->job->study_readings;

  tm_sheet_head (sheet, reading_columns, G_N_ELEMENTS (reading_columns), G_N_ELEMENTS (reading_columns));
  for (guint i = 0; i < readings->len; i++)
    {
      const TmStudyReading *reading = g_ptr_array_index (readings, i);

      if (!g_str_equal (reading->study, shown->study->name))
        continue;
      tm_sheet_text (sheet, 0, reading->piece, TM_STYLE_TEXT);
      tm_sheet_text (sheet, 1, reading->person, TM_STYLE_CENTRE);
      tm_sheet_quantity (sheet, 2, &reading->trial, TM_UNIT_COUNT);
      tm_sheet_quantity (sheet, 3, &reading->value, shown->study->unit);
      tm_sheet_text (sheet, 4, reading->typed, TM_STYLE_TEXT);
      tm_sheet_time (sheet, 5, reading->at);
      if (!tm_sheet_next (sheet, 0.5))
        return FALSE;
    }
  return tm_sheet_next (sheet, 0.5);
}

static gboolean
write_study (TmSheet *sheet, const TmStudy *study)
{
  const TmJob *job = sheet->workbook->job;
  g_autofree char *name = name_study (study);
  Shown shown
      = { .study = study, .band = tm_study_band (job, study), .decimals = find_decimals (job, study) };

  tm_study_result (job, study, &shown.result);
  tm_sheet_text (sheet, 0, name, TM_STYLE_SECTION);
  tm_sheet_down (sheet);
  if (*study->note != '\0')
    write_line (sheet, study->note);
  write_words (sheet, &shown);
  if (shown.result.status == TM_STUDY_OK || shown.result.status == TM_STUDY_ONE_PERSON)
    write_parts (sheet, &shown);
  return tm_sheet_next (sheet, 0.5) && write_readings (sheet, &shown);
}

void
tm_sheet_write_studies (TmWorkbook *workbook)
{
  const GPtrArray *studies = workbook->job->studies;
  TmSheet sheet;

  if (studies->len == 0)
    return;
  if (tm_sheet_begin (
          &sheet, workbook, _ ("Gauge studies"), N_ ("Gauge studies"),
          _ ("Repeatability and what people add, found on pieces measured several times in random "
             "order.")))
    {
      for (guint i = 0; i < studies->len; i++)
        {
          if (!write_study (&sheet, g_ptr_array_index (studies, i)))
            break;
        }
    }
  tm_sheet_end (&sheet);
}
