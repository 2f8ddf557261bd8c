/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-sheet-runs: a native chart of each bore's sizes over the pieces, and the data behind them.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-correction.h"
#include "core-form.h"
#include "plot-run.h"
#include "report-axis.h"
#include "report-sheets.h"
#include "report-words.h"

#define CHART_WIDTH   1200
#define CHART_HEIGHT  250
#define ROWS_EACH     13 /* of 20 pixels */
#define CHARTS_A_PAGE 3
#define PRINT_SCALE   75 /* percent */
#define MOST_CHARTS   100

enum {
  COLUMN_FEATURE,
  COLUMN_PIECE,
  COLUMN_UNIT,
  COLUMN_MEAN,
  COLUMN_SMALLEST,
  COLUMN_LARGEST,
  COLUMN_LOWER,
  COLUMN_UPPER,
  N_COLUMNS
};

static const TmColumn columns[N_COLUMNS] = {
  [COLUMN_FEATURE] = { N_ ("Feature"), 20, 40 },   [COLUMN_PIECE] = { N_ ("Piece"), 8, 16 },
  [COLUMN_UNIT] = { N_ ("Unit"), 6, 8 },           [COLUMN_MEAN] = { N_ ("Mean of stations"), 11, 14 },
  [COLUMN_SMALLEST] = { N_ ("Smallest"), 11, 14 }, [COLUMN_LARGEST] = { N_ ("Largest"), 11, 14 },
  [COLUMN_LOWER] = { N_ ("Lower limit"), 11, 14 }, [COLUMN_UPPER] = { N_ ("Upper limit"), 11, 14 },
};

/* The rows of one feature in the data sheet, and what its chart needs to know. */
typedef struct {
  const TmFeature *feature;
  guint32 first, last;
  guint n;
  double low, high; /* of everything that the chart shows */
  guint decimals;
} Block;

static double
get_mean (const TmLocalSize *size, TmUnit unit)
{
  return (double)size->sum / ((double)MAX (1, size->n) * (double)MAX (1, tm_unit_counts (unit)));
}

static double
get_limit (gboolean has, gint64 limit, TmUnit unit)
{
  return has ? tm_count_to_double (limit, unit) : NAN;
}

static void
stretch (Block *block, double value)
{
  if (!isfinite (value))
    return;
  block->low = isnan (block->low) ? value : MIN (block->low, value);
  block->high = isnan (block->high) ? value : MAX (block->high, value);
}

static void
write_sizes (TmSheet *sheet, Block *block, const TmSizes *sizes)
{
  const TmUnit unit = block->feature->unit;
  const double smallest = get_mean (&sizes->stations[sizes->smallest], unit);
  const double largest = get_mean (&sizes->stations[sizes->largest], unit);
  double mean = 0.0;

  for (guint i = 0; i < sizes->n_stations; i++)
    mean += get_mean (&sizes->stations[i], unit) / sizes->n_stations;
  tm_sheet_number (sheet, COLUMN_MEAN, mean, MIN (block->decimals + 1, TM_MAX_DECIMALS), TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_SMALLEST, smallest, block->decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_LARGEST, largest, block->decimals, TM_STYLE_NUMBER);
  stretch (block, smallest);
  stretch (block, largest);
}

static void
write_row (TmSheet *sheet, Block *block, const TmPiece *piece, guint place, const TmSizes *sizes)
{
  const TmFeature *feature = block->feature;
  const TmLimits limits = tm_feature_limits (feature);
  g_autofree char *name = tm_report_feature_name (feature, place);
  g_autofree char *where
      = feature->places > 1 ? g_strdup_printf ("%s/%u", piece->serial, place) : g_strdup (piece->serial);

  tm_sheet_text (sheet, COLUMN_FEATURE, name, TM_STYLE_TEXT);
  tm_sheet_text (sheet, COLUMN_PIECE, where, TM_STYLE_CENTRE);
  tm_sheet_text (sheet, COLUMN_UNIT, tm_unit_symbol (feature->unit), TM_STYLE_CENTRE);
  write_sizes (sheet, block, sizes);
  tm_sheet_number (sheet, COLUMN_LOWER, get_limit (limits.has_lower, limits.lower, feature->unit),
                   feature->lower.decimals, TM_STYLE_NUMBER);
  tm_sheet_number (sheet, COLUMN_UPPER, get_limit (limits.has_upper, limits.upper, feature->unit),
                   feature->upper.decimals, TM_STYLE_NUMBER);
}

static void
write_place (TmSheet *sheet, Block *block, const TmPiece *piece, guint place)
{
  const TmJob *job = sheet->workbook->job;
  g_auto (TmSizes) sizes = { 0 };

  if (tm_job_readings_at (job, piece, block->feature, place) == NULL)
    return;
  tm_sizes_at (job, piece, block->feature, place, NULL, &sizes);
  if (sizes.n_stations == 0)
    return;
  block->decimals = MAX (block->decimals, sizes.stations[0].decimals);
  write_row (sheet, block, piece, place, &sizes);
  if (block->n++ == 0)
    block->first = sheet->row;
  block->last = sheet->row;
  tm_sheet_next (sheet, 0.5);
}

static Block
write_block (TmSheet *sheet, const TmFeature *feature)
{
  const TmJob *job = sheet->workbook->job;
  const TmLimits limits = tm_feature_limits (feature);
  Block block = { .feature = feature, .low = NAN, .high = NAN };

  block.decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  for (guint p = 0; p < job->pieces->len && !tm_workbook_stopped (sheet->workbook); p++)
    for (guint place = 1; place <= feature->places; place++)
      write_place (sheet, &block, g_ptr_array_index (job->pieces, p), place);
  stretch (&block, get_limit (limits.has_lower, limits.lower, feature->unit));
  stretch (&block, get_limit (limits.has_upper, limits.upper, feature->unit));
  return block;
}

/* -------- Charts -------- */

static void
add_series (lxw_chart *chart, const char *data, const Block *block, guint column, lxw_color_t colour,
            float width, uint8_t marker)
{
  lxw_chart_series *series = chart_add_series (chart, NULL, NULL);
  lxw_chart_line line = { .color = colour, .width = width, .none = width > 0 ? LXW_FALSE : LXW_TRUE };
  lxw_chart_line edge = { .color = colour };
  lxw_chart_fill fill = { .color = colour };

  chart_series_set_categories (series, data, block->first, COLUMN_PIECE, block->last, COLUMN_PIECE);
  chart_series_set_values (series, data, block->first, (lxw_col_t)column, block->last, (lxw_col_t)column);
  chart_series_set_name (series, _ (columns[column].name));
  chart_series_set_line (series, &line);
  chart_series_set_marker_type (series, marker);
  if (marker == LXW_CHART_MARKER_NONE)
    return;
  chart_series_set_marker_size (series, 5);
  chart_series_set_marker_line (series, &edge);
  chart_series_set_marker_fill (series, &fill);
}

static void
set_axes (lxw_chart *chart, const Block *block)
{
  const TmAxisRange range = tm_axis_range (block->low, block->high, block->decimals);

  tm_axis_apply (chart, &range, block->decimals, tm_unit_symbol (block->feature->unit));
  tm_axis_of_pieces (chart, block->n);
}

static lxw_chart *
make_chart (TmWorkbook *workbook, const char *data, const Block *block)
{
  const TmLimits limits = tm_feature_limits (block->feature);
  /* One piece makes no line. */
  const uint8_t limit_marker = block->n > 1 ? LXW_CHART_MARKER_NONE : LXW_CHART_MARKER_PLUS;
  lxw_chart *chart = workbook_add_chart (workbook->book, LXW_CHART_LINE);
  g_autofree char *name = tm_report_feature_name (block->feature, 0);
  /* A chart's title that began with = would be taken as a reference to cells. */
  g_autofree char *title = g_strdup_printf (_ ("Feature %s"), name);
  lxw_chart_font font = { .size = 11, .bold = LXW_TRUE };

  add_series (chart, data, block, COLUMN_SMALLEST, 0x6B6B6B, 0.0f, LXW_CHART_MARKER_TRIANGLE);
  add_series (chart, data, block, COLUMN_LARGEST, 0x6B6B6B, 0.0f, LXW_CHART_MARKER_DIAMOND);
  if (limits.has_lower)
    add_series (chart, data, block, COLUMN_LOWER, 0x2A2A2A, 1.75f, limit_marker);
  if (limits.has_upper)
    add_series (chart, data, block, COLUMN_UPPER, 0x2A2A2A, 1.75f, limit_marker);
  /* The places of one piece are not a run: no line joins them. */
  add_series (chart, data, block, COLUMN_MEAN, 0x0072B2, block->feature->places > 1 ? 0.0f : 1.25f,
              LXW_CHART_MARKER_CIRCLE);
  chart_title_set_name (chart, title);
  chart_title_set_name_font (chart, &font);
  chart_legend_set_position (chart, LXW_CHART_LEGEND_RIGHT);
  set_axes (chart, block);
  return chart;
}

static void
insert_chart (TmSheet *sheet, const char *data, const Block *block)
{
  TmWorkbook *workbook = sheet->workbook;
  g_autoptr (TmRunPlot) plot = tm_run_plot_new (workbook->job, block->feature);
  g_autofree char *words = tm_run_plot_describe (plot);
  g_autofree char *description = tm_cell_text (words);
  lxw_chart *chart = make_chart (workbook, data, block);
  lxw_chart_options options = { 0 };

  options.x_scale = CHART_WIDTH / 480.0;
  options.y_scale = CHART_HEIGHT / 288.0;
  options.description = description;
  options.object_position = LXW_OBJECT_MOVE_DONT_SIZE;
  tm_workbook_check (workbook, worksheet_insert_chart_opt (sheet->sheet, sheet->row, 0, chart, &options));
  for (guint i = 0; i < ROWS_EACH; i++)
    tm_sheet_next (sheet, 0.5);
}

static void
insert_charts (TmSheet *sheet, const char *data, const GArray *blocks)
{
  const double widths[] = { 172.0 };
  g_autoptr (GArray) breaks = g_array_new (TRUE, TRUE, sizeof (lxw_row_t));

  sheet->scale = PRINT_SCALE;
  tm_sheet_columns (sheet, widths, 1);
  for (guint i = 0; i < blocks->len && !tm_workbook_stopped (sheet->workbook); i++)
    {
      const lxw_row_t at = sheet->row;
      if (i > 0 && i % CHARTS_A_PAGE == 0)
        g_array_append_val (breaks, at);
      insert_chart (sheet, data, &g_array_index (blocks, Block, i));
    }
  if (breaks->len > 0)
    worksheet_set_h_pagebreaks (sheet->sheet, (lxw_row_t *)(gpointer)breaks->data);
}

static guint
count_bores (const TmJob *job)
{
  guint n = 0;

  for (guint i = 0; i < job->features->len; i++)
    n += tm_feature_is_diameter (g_ptr_array_index (job->features, i));
  return n;
}

/* The data is written first, since the charts name its rows; the sheet of charts stands before it. */
static void
write_data (TmSheet *sheet, GArray *blocks)
{
  const TmJob *job = sheet->workbook->job;

  tm_sheet_head (sheet, columns, N_COLUMNS, N_COLUMNS);
  for (guint i = 0; i < job->features->len && blocks->len < MOST_CHARTS; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);
      Block block;

      if (!tm_feature_is_diameter (feature))
        continue;
      block = write_block (sheet, feature);
      if (block.n > 0)
        g_array_append_val (blocks, block);
    }
}

static gboolean
has_any (const TmJob *job)
{
  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      if (tm_row_counts (&reading->row) && tm_feature_is_diameter (reading->row.feature))
        return TRUE;
    }
  return FALSE;
}

void
tm_sheet_write_runs (TmWorkbook *workbook)
{
  const guint n = count_bores (workbook->job);
  g_autoptr (GArray) blocks = g_array_new (FALSE, FALSE, sizeof (Block));
  g_autofree char *cut = g_strdup_printf (_ ("The first %d bores are shown."), MOST_CHARTS);
  TmSheet charts, data;

  if (!has_any (workbook->job))
    return;
  if (tm_sheet_begin (&charts, workbook, _ ("Runs"), N_ ("Sizes over the pieces"),
                      n > MOST_CHARTS ? cut : _ ("Mean of the stations, with the smallest and the largest.")))
    {
      if (tm_sheet_begin (&data, workbook, _ ("Run data"), N_ ("Data of the charts"), NULL))
        {
          write_data (&data, blocks);
          tm_sheet_filter (&data, N_COLUMNS);
        }
      if (!tm_workbook_stopped (workbook))
        insert_charts (&charts, data.name, blocks);
      tm_sheet_end (&data);
    }
  tm_sheet_end (&charts);
}
