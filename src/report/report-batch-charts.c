/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The native charts of the batch sheet.
 */

#include "report-batch-charts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report-batch-words.h"

#define CHART_WIDTH 1040
#define RUN_HEIGHT  320 /* pixels: rows of 20 */
#define RUN_ROWS    17
#define SCAT_HEIGHT 200
#define SCAT_ROWS   11

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

static lxw_chart_series *
add_series (const TmBatchSection *section, lxw_chart *chart, TmDataColumn column)
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
add_line (const TmBatchSection *section, lxw_chart *chart, const Line *wanted)
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
has_lower_limit (const TmBatch *batch)
{
  for (guint i = 0; i < batch->chart.n_groups; i++)
    if (isfinite (tm_batch_lower_limit (batch, i)))
      return TRUE;
  return FALSE;
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
    case TM_DATA_CONTROL_LOWER:
      return batch->chart.status == TM_CHART_OK && has_lower_limit (batch);
    case TM_DATA_CENTRE:
    case TM_DATA_CONTROL_UPPER:
      return batch->chart.status == TM_CHART_OK;
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
add_events (const TmBatchSection *section, lxw_chart *chart)
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
make_chart (const TmBatchSection *section, const Line *lines, gsize n, const TmAxisRange *range,
            const char *title)
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
insert_chart (const TmBatchSection *section, lxw_chart *chart, const char *words, guint height, guint rows)
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

void
tm_batch_write_charts (const TmBatchSection *section)
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
