/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-batch: for each feature that was measured on enough pieces, its control charts, and what is
 * said of them: rules, drift, capability, pieces to hold back.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report-batch-data.h"
#include "report-batch-words.h"
#include "report-sheets.h"
#include "report-words.h"

#define LEAST_PIECES 10 /* measured, of one place */
#define MOST_PLACES  60
#define MOST_HELD    200

#define CHART_WIDTH  1040
#define RUN_HEIGHT   320 /* pixels: rows of 20 */
#define RUN_ROWS     17
#define SCAT_HEIGHT  200
#define SCAT_ROWS    11
#define LAST_COLUMN  5
#define LINE_LETTERS 150 /* that fit across the sheet */

/* A line of a chart. */
typedef struct {
  TmDataColumn column;
  lxw_color_t colour;
  float width; /* 0: no line */
  uint8_t dash, marker;
} Line;

static const Line run_lines[] = {
  { TM_DATA_LOWER, 0x2A2A2A, 1.75f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_NONE },
  { TM_DATA_UPPER, 0x2A2A2A, 1.75f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_NONE },
  { TM_DATA_GUARD_LOWER, 0xE69F00, 1.0f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_NONE },
  { TM_DATA_GUARD_UPPER, 0xE69F00, 1.0f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_NONE },
  { TM_DATA_TARGET, 0x8A8A8A, 0.75f, LXW_CHART_LINE_DASH_LONG_DASH_DOT, LXW_CHART_MARKER_NONE },
  { TM_DATA_CENTRE, 0x6B6B6B, 1.0f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_NONE },
  { TM_DATA_CONTROL_LOWER, 0x6B6B6B, 1.0f, LXW_CHART_LINE_DASH_DASH, LXW_CHART_MARKER_NONE },
  { TM_DATA_CONTROL_UPPER, 0x6B6B6B, 1.0f, LXW_CHART_LINE_DASH_DASH, LXW_CHART_MARKER_NONE },
  { TM_DATA_LOCATION, 0x0072B2, 1.25f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_CIRCLE },
  { TM_DATA_SPOKEN, 0xD55E00, 0.0f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_DIAMOND },
};

static const Line scatter_lines[] = {
  { TM_DATA_DISPERSION_CENTRE, 0x6B6B6B, 1.0f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_NONE },
  { TM_DATA_DISPERSION_LOWER, 0x6B6B6B, 1.0f, LXW_CHART_LINE_DASH_DASH, LXW_CHART_MARKER_NONE },
  { TM_DATA_DISPERSION_UPPER, 0x6B6B6B, 1.0f, LXW_CHART_LINE_DASH_DASH, LXW_CHART_MARKER_NONE },
  { TM_DATA_DISPERSION, 0x0072B2, 1.25f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_CIRCLE },
  { TM_DATA_DISPERSION_SPOKEN, 0xD55E00, 0.0f, LXW_CHART_LINE_DASH_SOLID, LXW_CHART_MARKER_DIAMOND },
};

/* One feature's place on both sheets. */
typedef struct {
  TmSheet *sheet;
  const char *data; /* name of the sheet with the rows */
  const TmBatch *batch;
  const TmDataBlock *block;
  const char *tool; /* what its features show together, or "" */
} Section;

/* -------- Charts -------- */

static lxw_chart_series *
add_series (const Section *section, lxw_chart *chart, TmDataColumn column)
{
  const TmDataBlock *block = section->block;
  const lxw_row_t last = block->first + block->n_groups - 1;
  lxw_chart_series *series = chart_add_series (chart, NULL, NULL);

  chart_series_set_categories (series, section->data, block->first, TM_DATA_FIRST, last, TM_DATA_FIRST);
  chart_series_set_values (series, section->data, block->first, (lxw_col_t)column, last, (lxw_col_t)column);
  chart_series_set_name (series, tm_batch_data_name (column));
  return series;
}

static void
add_line (const Section *section, lxw_chart *chart, const Line *wanted)
{
  lxw_chart_series *series = add_series (section, chart, wanted->column);
  const gboolean is_ring = wanted->marker == LXW_CHART_MARKER_DIAMOND;
  lxw_chart_line line = { .color = wanted->colour,
                          .width = wanted->width,
                          .dash_type = wanted->dash,
                          .none = wanted->width > 0 ? LXW_FALSE : LXW_TRUE };
  lxw_chart_line edge = { .color = wanted->colour, .width = is_ring ? 1.75f : 0.75f };
  lxw_chart_fill fill = { .color = wanted->colour, .none = is_ring ? LXW_TRUE : LXW_FALSE };

  chart_series_set_line (series, &line);
  chart_series_set_marker_type (series, wanted->marker);
  if (wanted->marker == LXW_CHART_MARKER_NONE)
    return;
  chart_series_set_marker_size (series, is_ring ? 10 : 4);
  chart_series_set_marker_line (series, &edge);
  chart_series_set_marker_fill (series, &fill);
}

static gboolean
is_shown (const TmBatch *batch, TmDataColumn column)
{
  const TmSeries *series = &batch->series;

  switch ((guint)column)
    {
    case TM_DATA_LOWER:
      return isfinite (series->lower);
    case TM_DATA_UPPER:
      return isfinite (series->upper);
    case TM_DATA_GUARD_LOWER:
      return series->guard > 0 && isfinite (series->lower);
    case TM_DATA_GUARD_UPPER:
      return series->guard > 0 && isfinite (series->upper);
    case TM_DATA_TARGET:
      return isfinite (series->target);
    case TM_DATA_CENTRE:
    case TM_DATA_CONTROL_LOWER:
    case TM_DATA_CONTROL_UPPER:
      return batch->chart.status != TM_CHART_TOO_FEW;
    case TM_DATA_SPOKEN:
      return batch->location_hits->len > 0;
    case TM_DATA_DISPERSION_SPOKEN:
      return batch->dispersion_hits->len > 0;
    default:
      return TRUE;
    }
}

static guint
count_shown (const TmBatch *batch)
{
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (run_lines); i++)
    n += is_shown (batch, run_lines[i].column);
  return n;
}

/* An upright line at the first group after each event: an error bar longer than the axis. */
static void
add_events (const Section *section, lxw_chart *chart)
{
  int16_t unnamed[] = { (int16_t)count_shown (section->batch), -1 };
  lxw_chart_series *series = add_series (section, chart, TM_DATA_EVENT_LINE);
  const TmAxisRange *range = &section->block->sizes;
  lxw_chart_line none = { .none = LXW_TRUE };
  lxw_chart_line line = { .color = 0x2A2A2A, .width = 1.0f, .dash_type = LXW_CHART_LINE_DASH_SQUARE_DOT };

  chart_series_set_line (series, &none);
  chart_series_set_marker_type (series, LXW_CHART_MARKER_NONE);
  chart_series_set_error_bars (series->y_error_bars, LXW_CHART_ERROR_BAR_TYPE_FIXED,
                               range->high - range->low);
  chart_series_set_error_bars_endcap (series->y_error_bars, LXW_CHART_ERROR_BAR_NO_CAP);
  chart_series_set_error_bars_line (series->y_error_bars, &line);
  /* A legend shows no error bar: the words beneath the chart say what happened. */
  chart_legend_delete_series (chart, unnamed);
}

static lxw_chart *
make_chart (const Section *section, const Line *lines, gsize n, const TmAxisRange *range, const char *title)
{
  lxw_chart *chart = workbook_add_chart (section->sheet->workbook->book, LXW_CHART_LINE);
  lxw_chart_font font = { .size = 11, .bold = LXW_TRUE };
  lxw_chart_line faint = { .color = 0xDDDDDD, .width = 0.5f };

  for (gsize i = 0; i < n; i++)
    if (is_shown (section->batch, lines[i].column))
      add_line (section, chart, &lines[i]);
  chart_title_set_name (chart, title);
  chart_title_set_name_font (chart, &font);
  chart_legend_set_position (chart, LXW_CHART_LEGEND_RIGHT);
  tm_axis_apply (chart, range, tm_axis_decimals (range),
                 tm_unit_symbol (section->batch->series.feature->unit));
  chart_axis_major_gridlines_set_line (chart->y_axis, &faint);
  tm_axis_of_pieces (chart, section->block->n_groups);
  return chart;
}

static void
insert_chart (const Section *section, lxw_chart *chart, const char *words, guint height, guint rows)
{
  TmSheet *sheet = section->sheet;
  g_autofree char *description = tm_cell_text (words);
  lxw_chart_options options = { 0 };

  options.x_scale = CHART_WIDTH / 480.0;
  options.y_scale = height / 288.0;
  options.description = description;
  options.object_position = LXW_OBJECT_MOVE_DONT_SIZE;
  tm_workbook_check (sheet->workbook,
                     worksheet_insert_chart_opt (sheet->sheet, sheet->row, 0, chart, &options));
  for (guint i = 0; i < rows; i++)
    tm_sheet_next (sheet, 0.5);
}

static char *
join (GPtrArray *lines)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < lines->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "", (const char *)g_ptr_array_index (lines, i));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
write_charts (const Section *section)
{
  const TmBatch *batch = section->batch;
  const gboolean single = batch->chart.kind == TM_CHART_INDIVIDUALS;
  g_autoptr (GPtrArray) said = tm_batch_chart_lines (batch);
  g_autofree char *words = join (said);
  lxw_chart *chart;

  if (section->block->n_groups == 0)
    return;
  chart = make_chart (section, run_lines, G_N_ELEMENTS (run_lines), &section->block->sizes,
                      single ? _ ("Level: single pieces") : _ ("Level: means of groups"));
  if (section->block->has_events)
    add_events (section, chart);
  insert_chart (section, chart, words, RUN_HEIGHT, RUN_ROWS);
  if (!section->block->has_spreads)
    return;
  chart = make_chart (section, scatter_lines, G_N_ELEMENTS (scatter_lines), &section->block->spreads,
                      single                                 ? _ ("Scatter: from one piece to the next")
                      : batch->chart.kind == TM_CHART_RANGES ? _ ("Scatter: ranges of groups")
                                                             : _ ("Scatter: standard deviations of groups"));
  insert_chart (section, chart, words, SCAT_HEIGHT, SCAT_ROWS);
}

/* -------- Words -------- */

static void
write_line (TmSheet *sheet, const char *text)
{
  const guint lines = (guint)(g_utf8_strlen (text, -1) / LINE_LETTERS) + 1;

  tm_sheet_across (sheet, 0, LAST_COLUMN, text, TM_STYLE_PARAGRAPH, lines);
  tm_sheet_down (sheet);
}

static void
write_heading (TmSheet *sheet, const char *text)
{
  tm_sheet_down (sheet);
  tm_sheet_text (sheet, 0, text, TM_STYLE_SECTION);
  tm_sheet_down (sheet);
}

static void
write_lines (TmSheet *sheet, const char *heading, GPtrArray *lines)
{
  write_heading (sheet, heading);
  for (guint i = 0; i < lines->len; i++)
    write_line (sheet, g_ptr_array_index (lines, i));
}

/* Mean and deviation over the rows of the data, live. */
static void
write_summary (const Section *section)
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
  tm_sheet_text (sheet, 0, _ ("Mean"), TM_STYLE_LABEL);
  tm_sheet_formula_number (sheet, 1, mean, tm_batch_size (batch, sum), decimals, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
  tm_sheet_text (sheet, 0, _ ("Standard deviation of all"), TM_STYLE_LABEL);
  tm_sheet_formula_number (sheet, 1, deviation,
                           tm_batch_spread (batch, sqrt (squares / MAX (1u, block->n_pieces - 1))), decimals,
                           TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
  if (batch->chart.status != TM_CHART_OK)
    return;
  tm_sheet_text (sheet, 0, _ ("From piece to piece"), TM_STYLE_LABEL);
  tm_sheet_number (sheet, 1, tm_batch_spread (batch, batch->chart.sigma), decimals, TM_STYLE_NUMBER);
  tm_sheet_down (sheet);
}

static void
write_row (TmSheet *sheet, const char *const *names, guint n, TmStyle style)
{
  for (guint i = 0; i < n; i++)
    tm_sheet_text (sheet, i, names[i], style);
  tm_sheet_down (sheet);
}

static void
write_index (const Section *section, TmBatchIndex which)
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

static void
write_capability (const Section *section)
{
  TmSheet *sheet = section->sheet;
  const TmBatch *batch = section->batch;
  const TmCapability *c = &batch->capability;
  const char *const names[]
      = { _ ("Figure"), _ ("Value"), _ ("95 %: from"), _ ("to"), _ ("Pieces"), _ ("Note") };

  write_heading (sheet, _ ("Capability"));
  write_summary (section);
  if (c->status != TM_CAPABLE_OK)
    {
      g_autofree char *text
          = g_strdup_printf (_ ("Refused: %s."), g_dpgettext2 (GETTEXT_PACKAGE, "capability",
                                                               tm_capable_status_word (c->status)));

      write_line (sheet, text);
      return;
    }
  write_row (sheet, names, G_N_ELEMENTS (names), TM_STYLE_HEAD);
  for (guint i = 0; i < TM_N_BATCH_INDEXES; i++)
    write_index (section, i);
  if (isfinite (c->normality_p))
    {
      g_autofree char *text
          = g_strdup_printf (_ ("Test of normality (Anderson and Darling): p %.2g."), c->normality_p);

      write_line (sheet, text);
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

static void
write_hold (const Section *section)
{
  TmSheet *sheet = section->sheet;
  const GArray *hold = section->batch->hold;
  const char *const names[] = { _ ("Piece"), _ ("Measured"), _ ("Percent out"), _ ("Disposition") };

  write_heading (sheet, _ ("Pieces to hold back"));
  if (hold->len == 0)
    {
      write_line (sheet, _ ("None: no shift is found since the last event."));
      return;
    }
  write_line (sheet, _ ("Made since the level may have changed; beside each the chance that it is out."));
  tm_sheet_across (sheet, 4, LAST_COLUMN, _ ("Note"), TM_STYLE_HEAD, 1);
  write_row (sheet, names, G_N_ELEMENTS (names), TM_STYLE_HEAD);
  for (guint i = 0; i < MIN (hold->len, MOST_HELD); i++)
    {
      const TmHoldRow *row = &g_array_index (hold, TmHoldRow, i);
      const TmPiece *piece = section->batch->series.points[row->point].piece;

      tm_sheet_text (sheet, 0, piece->serial, TM_STYLE_TEXT);
      tm_sheet_text (sheet, 1, row->measured ? _ ("yes") : _ ("no"), TM_STYLE_CENTRE);
      tm_sheet_number (sheet, 2, isfinite (row->out) ? 100.0 * row->out : NAN, 1, TM_STYLE_NUMBER);
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
write_section (const Section *section)
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
  write_charts (section);
  write_lines (sheet, _ ("Control charts"), said);
  write_lines (sheet, _ ("Drift and offset"), drift);
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

static gboolean
stopped_cb (gpointer workbook)
{
  return tm_workbook_stopped (workbook);
}

/* Every piece of every feature of a tool is judged for it: once is enough. */
static const char *
find_tool_line (TmWorkbook *workbook, GHashTable *lines, const TmFeature *feature)
{
  char *line = g_hash_table_lookup (lines, feature->tool);

  if (line == NULL)
    {
      line = tm_batch_tool_line (workbook->job, feature->tool, feature->unit, stopped_cb, workbook);
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
      Section section = { sheet, data->name, &batch, &block, "" };

      if (!tm_batch_init (&batch, workbook->job, spot->feature, spot->place, NULL, stopped_cb, workbook))
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
  if (tm_sheet_begin (&sheet, workbook, _ ("Batch"), _ ("The batch"),
                      spots->len < MOST_PLACES ? _ ("Features that were measured on ten pieces or more.")
                                               : cut))
    {
      tm_sheet_columns (&sheet, widths, G_N_ELEMENTS (widths));
      if (tm_sheet_begin (&data, workbook, _ ("Batch data"), _ ("Data of the batch’s charts"), NULL))
        {
          tm_batch_data_head (&data);
          write_spots (&sheet, &data, spots);
        }
      tm_sheet_end (&data);
    }
  tm_sheet_end (&sheet);
}
