/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-batch-data.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "report-batch-words.h"
#include "report-words.h"

static const TmColumn columns[TM_N_DATA] = {
  [TM_DATA_FEATURE] = { N_ ("Feature"), 16, 34 },
  [TM_DATA_PIECE] = { N_ ("Piece"), 8, 16 },
  [TM_DATA_UNIT] = { N_ ("Unit"), 6, 8 },
  [TM_DATA_SIZE] = { N_ ("Size"), 9, 14 },
  [TM_DATA_EVENT] = { N_ ("Before it"), 10, 22 },
  [TM_DATA_GROUP] = { N_ ("Group"), 7, 9 },
  [TM_DATA_FIRST] = { N_ ("First piece"), 8, 16 },
  [TM_DATA_COUNT] = { N_ ("Pieces in it"), 8, 10 },
  [TM_DATA_LOCATION] = { N_ ("Level"), 9, 14 },
  [TM_DATA_CENTRE] = { N_ ("Centre"), 9, 14 },
  [TM_DATA_CONTROL_LOWER] = { N_ ("Lower control limit"), 9, 14 },
  [TM_DATA_CONTROL_UPPER] = { N_ ("Upper control limit"), 9, 14 },
  [TM_DATA_LOWER] = { N_ ("Lower limit"), 9, 14 },
  [TM_DATA_UPPER] = { N_ ("Upper limit"), 9, 14 },
  [TM_DATA_GUARD_LOWER] = { N_ ("Lower limit with guard"), 9, 14 },
  [TM_DATA_GUARD_UPPER] = { N_ ("Upper limit with guard"), 9, 14 },
  [TM_DATA_TARGET] = { N_ ("Target"), 9, 14 },
  [TM_DATA_SPOKEN] = { N_ ("A rule speaks"), 9, 14 },
  [TM_DATA_EVENT_LINE] = { N_ ("Event"), 9, 14 },
  [TM_DATA_DISPERSION] = { N_ ("Scatter"), 9, 14 },
  [TM_DATA_DISPERSION_CENTRE] = { N_ ("Centre of scatter"), 9, 14 },
  [TM_DATA_DISPERSION_LOWER] = { N_ ("Lower control limit of scatter"), 9, 14 },
  [TM_DATA_DISPERSION_UPPER] = { N_ ("Upper control limit of scatter"), 9, 14 },
  [TM_DATA_DISPERSION_SPOKEN] = { N_ ("Beyond it"), 9, 14 },
  [TM_DATA_RULES] = { N_ ("Rules"), 12, 30 },
};

/* What is being written. */
typedef struct {
  TmSheet *sheet;
  const TmBatch *batch;
  TmDataBlock *block;
  guint *measured; /* indexes of the pieces measured, a row each; owned */
  double low, high, spread_high;
  guint next_location, next_dispersion; /* hits: in the order of groups, as these are written */
} Writing;

const char *
tm_batch_data_name (TmDataColumn column)
{
  return _ (columns[column].name);
}

void
tm_batch_data_head (TmSheet *sheet)
{
  tm_sheet_head (sheet, columns, TM_N_DATA, TM_N_DATA);
}

static void
put (const Writing *w, TmDataColumn column, double value)
{
  tm_sheet_number (w->sheet, column, isfinite (value) ? value : NAN, tm_batch_decimals (w->batch),
                   TM_STYLE_NUMBER);
}

static void
put_formula (const Writing *w, TmDataColumn column, const char *formula, double value)
{
  tm_sheet_formula_number (w->sheet, column, formula, value, tm_batch_decimals (w->batch), TM_STYLE_NUMBER);
}

static void
reach (Writing *w, double value)
{
  if (!isfinite (value))
    return;
  w->low = isnan (w->low) ? value : MIN (w->low, value);
  w->high = isnan (w->high) ? value : MAX (w->high, value);
}

/* -------- Pieces -------- */

/* The events between the piece measured before it and this one, joined. */
static char *
find_events (const Writing *w, guint row)
{
  const TmSeries *series = &w->batch->series;
  const guint at = w->measured[row];
  const guint after = row > 0 ? w->measured[row - 1] : 0;
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < series->n_events; i++)
    {
      const TmSeriesEvent *event = &series->events[i];
      g_autofree char *words = NULL;

      if (event->before > at || (row > 0 && event->before <= after))
        continue;
      words = tm_batch_event_words (event->event);
      g_string_append_printf (text, "%s%s", text->len > 0 ? "; " : "", words);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
write_piece (Writing *w, guint row)
{
  const TmSeries *series = &w->batch->series;
  const TmSeriesPoint *point = &series->points[w->measured[row]];
  g_autofree char *name
      = tm_report_feature_name (series->feature, series->feature->places > 1 ? series->place : 0);
  g_autofree char *events = find_events (w, row);
  const double size = tm_batch_size (w->batch, point->mean);

  tm_sheet_text (w->sheet, TM_DATA_FEATURE, name, TM_STYLE_TEXT);
  tm_sheet_text (w->sheet, TM_DATA_PIECE, point->piece->serial, TM_STYLE_CENTRE);
  tm_sheet_text (w->sheet, TM_DATA_UNIT, tm_unit_symbol (series->feature->unit), TM_STYLE_CENTRE);
  put (w, TM_DATA_SIZE, size);
  tm_sheet_text (w->sheet, TM_DATA_EVENT, events, TM_STYLE_TEXT);
}

/* -------- Groups -------- */

/* The first row whose piece stands at @point of the series or after it. */
static guint
find_row (const Writing *w, guint point)
{
  guint low = 0, high = w->block->n_pieces;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (w->measured[middle] < point)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

/* The rows of its pieces, counted from 0: from *@first, *@n of them. */
static void
find_rows (const Writing *w, guint group, guint *first, guint *n)
{
  const TmChart *chart = &w->batch->chart;
  const guint end = group + 1 < chart->n_groups ? chart->groups[group + 1].from : w->batch->series.n_points;

  *first = find_row (w, chart->groups[group].from);
  *n = find_row (w, end) - *first;
}

/* "D7:D11" */
static char *
name_range (const Writing *w, guint first, guint n, guint column)
{
  g_autofree char *from = tm_cell_name (w->block->first + first, column);
  g_autofree char *to = tm_cell_name (w->block->first + first + n - 1, column);

  return g_strdup_printf ("%s:%s", from, to);
}

static void
write_location (Writing *w, guint group)
{
  const TmChartGroup *g = &w->batch->chart.groups[group];
  guint first = 0, n = 0;
  g_autofree char *range = NULL;
  g_autofree char *formula = NULL;
  const double value = tm_batch_size (w->batch, g->location);

  find_rows (w, group, &first, &n);
  if (n == 0 || !isfinite (g->location))
    return;
  range = name_range (w, first, n, TM_DATA_SIZE);
  formula = g_strdup_printf ("=AVERAGE(%s)", range);
  put_formula (w, TM_DATA_LOCATION, formula, value);
  reach (w, value);
}

/* Of single pieces, from the one before; else within the group. */
static char *
make_scatter (const Writing *w, guint group)
{
  guint first = 0, n = 0;
  g_autofree char *range = NULL;

  if (w->batch->chart.kind == TM_CHART_INDIVIDUALS)
    {
      g_autofree char *here = tm_cell_name (w->block->first + group, TM_DATA_LOCATION);
      g_autofree char *before = tm_cell_name (w->block->first + group - 1, TM_DATA_LOCATION);

      return g_strdup_printf ("=ABS(%s-%s)", here, before);
    }
  find_rows (w, group, &first, &n);
  range = name_range (w, first, n, TM_DATA_SIZE);
  if (w->batch->chart.kind == TM_CHART_RANGES)
    return g_strdup_printf ("=MAX(%s)-MIN(%s)", range, range);
  return g_strdup_printf ("=STDEV(%s)", range);
}

static void
write_scatter (Writing *w, guint group)
{
  const TmBatch *batch = w->batch;
  const TmChartGroup *g = &batch->chart.groups[group];
  g_autofree char *formula = NULL;

  put (w, TM_DATA_DISPERSION_CENTRE, tm_batch_spread (batch, g->dispersion_centre));
  put (w, TM_DATA_DISPERSION_LOWER, tm_batch_spread (batch, g->dispersion_lower));
  put (w, TM_DATA_DISPERSION_UPPER, tm_batch_spread (batch, g->dispersion_upper));
  if (isfinite (g->dispersion_upper))
    w->spread_high = fmax (w->spread_high, tm_batch_spread (batch, g->dispersion_upper));
  if (!isfinite (g->dispersion) || (batch->chart.kind == TM_CHART_INDIVIDUALS && group == 0))
    return;
  formula = make_scatter (w, group);
  put_formula (w, TM_DATA_DISPERSION, formula, tm_batch_spread (batch, g->dispersion));
  w->spread_high = fmax (w->spread_high, tm_batch_spread (batch, g->dispersion));
}

static void
write_lines (Writing *w, guint group)
{
  const TmBatch *batch = w->batch;
  const TmSeries *series = &batch->series;
  const TmChartGroup *g = &batch->chart.groups[group];
  const struct {
    TmDataColumn column;
    double counts;
  } lines[] = {
    { TM_DATA_CENTRE, (g->location_lower + g->location_upper) / 2.0 },
    { TM_DATA_CONTROL_LOWER, tm_batch_lower_limit (batch, group) },
    { TM_DATA_CONTROL_UPPER, g->location_upper },
    { TM_DATA_LOWER, series->lower },
    { TM_DATA_UPPER, series->upper },
    { TM_DATA_GUARD_LOWER, series->guard > 0 ? series->lower + series->guard : NAN },
    { TM_DATA_GUARD_UPPER, series->guard > 0 ? series->upper - series->guard : NAN },
    { TM_DATA_TARGET, series->target },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      const double value = tm_batch_size (batch, lines[i].counts);

      put (w, lines[i].column, value);
      reach (w, value);
    }
}

/* Passes over what speaks at @group, whose rules are said in @words (NULL: not said); FALSE: nothing does. */
static gboolean
take_hits (const GArray *hits, guint group, guint *next, GString *words)
{
  const guint from = *next;

  for (; *next < hits->len && g_array_index (hits, TmRuleHit, *next).point <= group; (*next)++)
    if (words != NULL)
      g_string_append_printf (words, "%s%s", words->len > 0 ? "; " : "",
                              _ (tm_run_rule_text (g_array_index (hits, TmRuleHit, *next).rule)));
  return *next > from;
}

/* Marks what speaks at the group, and says it. */
static void
write_hits (Writing *w, guint group)
{
  const TmBatch *batch = w->batch;
  const TmChartGroup *g = &batch->chart.groups[group];
  g_autoptr (GString) words = g_string_new (NULL);

  if (take_hits (batch->location_hits, group, &w->next_location, words))
    put (w, TM_DATA_SPOKEN, tm_batch_size (batch, g->location));
  if (take_hits (batch->dispersion_hits, group, &w->next_dispersion, NULL))
    {
      put (w, TM_DATA_DISPERSION_SPOKEN, tm_batch_spread (batch, g->dispersion));
      g_string_append_printf (words, "%s%s", words->len > 0 ? "; " : "", _ ("scatter beyond 3 sigma"));
    }
  tm_sheet_text (w->sheet, TM_DATA_RULES, words->str, TM_STYLE_TEXT);
}

/* TRUE for the first group after an event that begins a stretch. */
static gboolean
is_after_event (const TmBatch *batch, guint group)
{
  const TmSeries *series = &batch->series;
  const guint from = batch->chart.groups[group].from;
  const guint before = group > 0 ? batch->chart.groups[group - 1].from : 0;

  for (guint i = 0; group > 0 && i < series->n_breaks; i++)
    if (series->breaks[i] <= from && series->breaks[i] > before)
      return TRUE;
  return FALSE;
}

static void
write_group (Writing *w, guint group)
{
  const TmChartGroup *g = &w->batch->chart.groups[group];

  tm_sheet_number (w->sheet, TM_DATA_GROUP, group + 1, 0, TM_STYLE_NUMBER);
  tm_sheet_text (w->sheet, TM_DATA_FIRST, tm_batch_group_serial (w->batch, group), TM_STYLE_CENTRE);
  tm_sheet_number (w->sheet, TM_DATA_COUNT, g->n, 0, TM_STYLE_NUMBER);
  write_location (w, group);
  write_lines (w, group);
  write_scatter (w, group);
  if (is_after_event (w->batch, group))
    {
      w->block->has_events = TRUE;
      put (w, TM_DATA_EVENT_LINE, tm_batch_size (w->batch, g->location));
    }
  write_hits (w, group);
}

static guint *
list_measured (const TmSeries *series, guint *n)
{
  guint *list = g_new (guint, MAX (1u, series->n_points));

  *n = 0;
  for (guint i = 0; i < series->n_points; i++)
    if (isfinite (series->points[i].mean))
      list[(*n)++] = i;
  return list;
}

gboolean
tm_batch_data_write (TmSheet *sheet, const TmBatch *batch, TmDataBlock *block, double fraction)
{
  Writing w = { .sheet = sheet, .batch = batch, .block = block, .low = NAN, .high = NAN };
  g_autofree guint *measured = list_measured (&batch->series, &block->n_pieces);
  const guint decimals = tm_batch_decimals (batch);
  gboolean going = TRUE;

  w.measured = measured;
  block->first = sheet->row;
  block->n_groups = batch->chart.n_groups;
  block->has_events = FALSE;
  for (guint row = 0; row < MAX (block->n_pieces, block->n_groups) && going; row++)
    {
      if (row < block->n_pieces)
        write_piece (&w, row);
      if (row < block->n_groups)
        write_group (&w, row);
      going = tm_sheet_next (sheet, fraction);
    }
  block->has_spreads = w.spread_high > 0;
  if (isfinite (w.low))
    block->sizes = tm_axis_range (w.low, w.high, decimals);
  if (batch->series.limits.zero_bounded)
    block->sizes.low = MAX (block->sizes.low, 0.0);
  if (block->has_spreads)
    {
      block->spreads = tm_axis_range (0, w.spread_high, decimals);
      block->spreads.low = 0;
    }
  return going;
}
