/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-batch: for each feature that was measured on enough pieces, its control charts, and what is
 * said of them: rules, drift, capability, pieces to hold back.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-chance.h"
#include "report-batch-charts.h"
#include "report-batch-words.h"
#include "report-sheet-words.h"
#include "report-sheets.h"
#include "report-words.h"

#define LEAST_PIECES 10 /* measured, of one place */
#define MOST_PLACES  60
#define MOST_HELD    200

#define LAST_COLUMN  5
#define LINE_LETTERS 150 /* that fit across the sheet */

/* -------- Words -------- */

static void
write_line (TmSheet *sheet, const char *text)
{
  const guint lines = (guint)(g_utf8_strlen (text, -1) / LINE_LETTERS) + 1;

  tm_sheet_across (sheet, 0, LAST_COLUMN, text, TM_STYLE_PARAGRAPH, lines);
  tm_sheet_down (sheet);
}

static void
write_lines (TmSheet *sheet, const char *heading, GPtrArray *lines)
{
  tm_sheet_section (sheet, heading);
  for (guint i = 0; i < lines->len; i++)
    write_line (sheet, g_ptr_array_index (lines, i));
}

/* Mean and deviation over the rows of the data, live. */
static void
write_summary (const TmBatchSection *section)
{
  TmSheet *sheet = section->sheet;
  const TmBatch *batch = section->batch;
  const TmDataBlock *block = section->block;
  const guint decimals = tm_batch_decimals (batch);
  g_autofree char *from = tm_cell_name (block->first, TM_DATA_SIZE);
  g_autofree char *to = tm_cell_name (block->first + block->n_pieces - 1, TM_DATA_SIZE);
  g_autofree char *mean = g_strdup_printf ("=AVERAGE('%s'!%s:%s)", section->data, from, to);
  g_autofree char *deviation = g_strdup_printf ("=STDEV('%s'!%s:%s)", section->data, from, to);
  double sum = 0, squares = 0;

  for (guint i = 0; i < batch->series.n_points; i++)
    if (isfinite (batch->series.points[i].mean))
      sum += batch->series.points[i].mean / block->n_pieces;
  for (guint i = 0; i < batch->series.n_points; i++)
    if (isfinite (batch->series.points[i].mean))
      squares += (batch->series.points[i].mean - sum) * (batch->series.points[i].mean - sum);
  tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, N_ ("Mean")), TM_STYLE_LABEL);
  tm_sheet_formula_number (sheet, 1, mean, tm_batch_size (batch, sum), decimals, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
  tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, N_ ("Standard deviation of all")),
                 TM_STYLE_LABEL);
  tm_sheet_formula_number (sheet, 1, deviation,
                           tm_batch_spread (batch, sqrt (squares / MAX (1u, block->n_pieces - 1))), decimals,
                           TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
  if (batch->chart.status != TM_CHART_OK)
    return;
  tm_sheet_text (sheet, 0, tm_sheet_label (sheet->workbook, NULL, N_ ("From piece to piece")),
                 TM_STYLE_LABEL);
  tm_sheet_number (sheet, 1, tm_batch_spread (batch, batch->chart.sigma), decimals, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
}

static void
write_index (const TmBatchSection *section, TmBatchIndex which)
{
  TmSheet *sheet = section->sheet;
  const TmIndex *index = tm_batch_index (&section->batch->capability, which);
  g_autofree char *reason = tm_batch_index_reason (section->batch, which);
  const gboolean has = isfinite (index->value);

  tm_sheet_text (sheet, 0, tm_batch_index_name (which), TM_STYLE_TEXT);
  tm_sheet_number (sheet, 1, has ? index->value : NAN, 2, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 2, has && isfinite (index->low) ? index->low : NAN, 2, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 3, has && isfinite (index->high) ? index->high : NAN, 2, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, 4, has ? (double)section->batch->capability.n : NAN, 0, TM_STYLE_NUMBER);
  tm_sheet_text (sheet, 5, reason, TM_STYLE_TEXT);
  tm_sheet_down (sheet);
}

/* Under the figures: what they stand on. */
static void
write_reasons (const TmBatchSection *section)
{
  TmSheet *sheet = section->sheet;
  const TmBatch *batch = section->batch;
  const double p = batch->capability.normality_p;
  const char *unsteady = tm_batch_unsteady_words (batch);
  g_autofree char *interval = tm_batch_interval_line (batch);
  g_autofree char *test = NULL;

  if (*unsteady != '\0')
    write_line (sheet, unsteady);
  if (isfinite (p))
    {
      test = p < 0.001 ? g_strdup (_ ("Test of normality (Anderson and Darling): p under 0.001."))
                       : g_strdup_printf (_ ("Test of normality (Anderson and Darling): p %.2g."), p);
      write_line (sheet, test);
    }
  if (batch->series.repeatability > 0)
    write_line (sheet, _ ("The repeatability of measuring is taken out of the figures."));
  if (tm_batch_state (batch) == TM_BATCH_DRIFTING && isfinite (batch->capability_apart.ppk.value))
    {
      g_autofree char *text
          = g_strdup_printf (_ ("With the drift taken out Ppk would be %.2f: that is the scatter alone."),
                             batch->capability_apart.ppk.value);

      write_line (sheet, text);
    }
  if (interval != NULL)
    write_line (sheet, interval);
}

static void
write_capability (const TmBatchSection *section)
{
  TmSheet *sheet = section->sheet;
  const TmBatch *batch = section->batch;
  const TmCapability *c = &batch->capability;
  static const char *const names[]
      = { N_ ("Figure"), N_ ("Value"), N_ ("95 %: from"), N_ ("to"), N_ ("Pieces"), N_ ("Note") };

  tm_sheet_section (sheet, N_ ("Capability"));
  write_summary (section);
  if (c->status != TM_CAPABLE_OK)
    {
      g_autofree char *text
          = g_strdup_printf (_ ("Refused: %s."), g_dpgettext2 (GETTEXT_PACKAGE, "capability",
                                                               tm_capable_status_word (c->status)));

      write_line (sheet, text);
      return;
    }
  tm_sheet_heads (sheet, names, G_N_ELEMENTS (names));
  for (guint i = 0; i < TM_N_BATCH_INDEXES; i++)
    write_index (section, i);
  write_reasons (section);
}

/* -------- Pieces to hold back -------- */

static const char *
find_disposition (const TmPiece *piece)
{
  static const char *const words[][2] = { { "hold", NC_ ("disposition", "held back") },
                                          { "measure", NC_ ("disposition", "to be measured") },
                                          { "release", NC_ ("disposition", "released") },
                                          { "scrap", NC_ ("disposition", "scrapped") } };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (piece->disposition, words[i][0]))
      return g_dpgettext2 (GETTEXT_PACKAGE, "disposition", words[i][1]);
  return _ ("not decided");
}

/* Neither nought nor a hundred in a hundred can be promised. */
static void
write_chance (TmSheet *sheet, guint column, double chance)
{
  g_autofree char *text = tm_chance_text (chance);

  if (chance >= 0.001 && chance <= 0.999)
    tm_sheet_number (sheet, column, 100.0 * chance, 1, TM_STYLE_NUMBER);
  else
    tm_sheet_text (sheet, column, text != NULL ? text : "", TM_STYLE_CENTRE);
}

static void
write_hold (const TmBatchSection *section)
{
  TmSheet *sheet = section->sheet;
  const GArray *hold = section->batch->hold;
  static const char *const names[]
      = { N_ ("Piece"), N_ ("Measured"), N_ ("Percent out"), N_ ("Disposition") };

  tm_sheet_section (sheet, N_ ("Pieces to hold back"));
  if (hold->len == 0)
    {
      write_line (sheet, _ ("None: no shift is found since the last event."));
      return;
    }
  write_line (sheet, _ ("Made since the level may have changed; beside each the chance that it is out."));
  tm_sheet_across (sheet, 4, LAST_COLUMN, tm_sheet_label (sheet->workbook, NULL, N_ ("Note")), TM_STYLE_HEAD,
                   1);
  tm_sheet_heads (sheet, names, G_N_ELEMENTS (names));
  for (guint i = 0; i < MIN (hold->len, MOST_HELD); i++)
    {
      const TmHoldRow *row = &g_array_index (hold, TmHoldRow, i);
      const TmPiece *piece = section->batch->series.points[row->point].piece;

      tm_sheet_text (sheet, 0, piece->serial, TM_STYLE_TEXT);
      tm_sheet_text (sheet, 1, row->measured ? _ ("yes") : _ ("no"), TM_STYLE_CENTRE);
      write_chance (sheet, 2, row->out);
      tm_sheet_text (sheet, 3, find_disposition (piece), TM_STYLE_TEXT);
      tm_sheet_across (sheet, 4, LAST_COLUMN, piece->disposition_note, TM_STYLE_TEXT, 1);
      tm_sheet_next (sheet, 0.5);
    }
  if (hold->len > MOST_HELD)
    {
      g_autofree char *text
          = g_strdup_printf (ngettext ("And %u more piece, up to the last one made.",
                                       "And %u more pieces, up to the last one made.", hold->len - MOST_HELD),
                             hold->len - MOST_HELD);

      write_line (sheet, text);
    }
}

/* -------- A feature -------- */

static void
write_section (const TmBatchSection *section)
{
  TmSheet *sheet = section->sheet;
  const TmSeries *series = &section->batch->series;
  g_autofree char *name
      = tm_report_feature_name (series->feature, series->feature->places > 1 ? series->place : 0);
  g_autofree char *title
      = g_strdup_printf (ngettext ("Feature %s: %u piece measured of %u",
                                   "Feature %s: %u pieces measured of %u", series->n_measured),
                         name, series->n_measured, series->n_points);
  g_autoptr (GPtrArray) said = tm_batch_chart_lines (section->batch);
  g_autoptr (GPtrArray) drift = tm_batch_drift_lines (section->batch);

  tm_sheet_text (sheet, 0, title, TM_STYLE_SECTION);
  tm_sheet_down (sheet);
  tm_batch_write_charts (section);
  write_lines (sheet, N_ ("Control charts"), said);
  g_array_append_val (section->breaks, sheet->row); /* charts on one page, what they come to on the next */
  write_lines (sheet, N_ ("Drift and offset"), drift);
  if (*section->tool != '\0')
    write_line (sheet, section->tool);
  write_capability (section);
  write_hold (section);
  tm_sheet_down (sheet);
}

/* Pieces that have a reading there. */
static gboolean
is_enough (const TmJob *job, const TmFeature *feature, guint place)
{
  guint n = 0;

  for (guint i = 0; i < job->pieces->len && n < LEAST_PIECES; i++)
    n += tm_job_readings_at (job, g_ptr_array_index (job->pieces, i), feature, place) != NULL;
  return n >= LEAST_PIECES;
}

/* A feature's place that the batch sheet has. */
typedef struct {
  const TmFeature *feature;
  guint place;
} Spot;

static GArray *
list_spots (const TmJob *job)
{
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (Spot));

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      for (guint place = 1; place <= feature->places && !tm_kind_is_attribute (feature->kind); place++)
        {
          const Spot spot = { feature, place };

          if (spots->len < MOST_PLACES && is_enough (job, feature, place))
            g_array_append_val (spots, spot);
        }
    }
  return spots;
}

/* Every piece of every feature of a tool is judged for it: once is enough. */
static const char *
find_tool_line (TmWorkbook *workbook, GHashTable *lines, const TmFeature *feature)
{
  char *line = g_hash_table_lookup (lines, feature->tool);

  if (line == NULL)
    {
      line = tm_batch_tool_line (workbook->job, feature->tool, feature->unit, tm_workbook_ask_stop, workbook);
      if (line == NULL)
        line = g_strdup ("");
      g_hash_table_insert (lines, (gpointer)feature->tool, line);
    }
  return line;
}

static void
write_spots (TmSheet *sheet, TmSheet *data, const GArray *spots)
{
  TmWorkbook *workbook = sheet->workbook;
  g_autoptr (GArray) breaks = g_array_new (TRUE, TRUE, sizeof (lxw_row_t));
  g_autoptr (GHashTable) lines = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);

  for (guint i = 0; i < spots->len && !tm_workbook_stopped (workbook); i++)
    {
      const Spot *spot = &g_array_index (spots, Spot, i);
      const lxw_row_t at = sheet->row;
      g_auto (TmBatch) batch = { 0 };
      TmDataBlock block = { 0 };
      TmBatchSection section = { sheet, data->name, &batch, &block, "", breaks };

      if (!tm_batch_init (&batch, workbook->job, spot->feature, spot->place, NULL, tm_workbook_ask_stop,
                          workbook))
        return;
      if (batch.series.n_measured < LEAST_PIECES)
        continue;
      if (i > 0)
        g_array_append_val (breaks, at);
      if (tm_batch_data_write (data, &batch, &block, (double)i / spots->len))
        {
          section.tool = find_tool_line (workbook, lines, spot->feature);
          write_section (&section);
        }
    }
  if (breaks->len > 0)
    worksheet_set_h_pagebreaks (sheet->sheet, (lxw_row_t *)(gpointer)breaks->data);
}

/* The rows are written with each section, since its charts name them; their sheet stands behind. */
void
tm_sheet_write_batch (TmWorkbook *workbook)
{
  const double widths[] = { 30.0, 14.0, 14.0, 16.0, 10.0, 64.0 };
  g_autoptr (GArray) spots = list_spots (workbook->job);
  g_autofree char *cut = g_strdup_printf (_ ("The first %d places are shown."), MOST_PLACES);
  TmSheet sheet, data;

  if (spots->len == 0)
    return;
  if (tm_sheet_begin (&sheet, workbook, _ ("Batch"), N_ ("The batch"),
                      spots->len < MOST_PLACES ? _ ("Features that were measured on ten pieces or more.")
                                               : cut))
    {
      tm_sheet_columns (&sheet, widths, G_N_ELEMENTS (widths));
      if (tm_sheet_begin (&data, workbook, _ ("Batch data"), N_ ("Data of the batch’s charts"), NULL))
        {
          tm_batch_data_head (&data);
          write_spots (&sheet, &data, spots);
          tm_sheet_filter (&data, TM_N_DATA);
        }
      tm_sheet_end (&data);
    }
  tm_sheet_end (&sheet);
}
