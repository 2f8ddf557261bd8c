/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-batch: for each feature that was measured on enough pieces, its charts, and what is said of
 * them: rules, drift, capability, pieces to hold back.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "plot-chart.h"
#include "report-batch-words.h"
#include "report-part.h"
#include "report-words.h"

#define LEAST_PIECES 10 /* measured, of one place */
#define MOST_PLACES  60
#define MOST_HELD    200

/* Points. */
#define WIDE        2000.0 /* the page's width */
#define SHAPE_WIDTH 245.0
#define SCALE       0.8 /* of the charts' own units */

/* -------- Pictures -------- */

typedef void (*DrawChart) (const TmChartPlot *plot, cairo_t *cr, double width, double height,
                           const TmTheme *theme);
typedef char *(*DescribeChart) (const TmChartPlot *plot);

typedef struct {
  TmBatch *batch; /* shared: see clear_batch() */
  DrawChart draw;
  DescribeChart describe;
  guint show;
} Chart;

static void
draw_run (const TmChartPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  tm_chart_plot_draw (plot, cr, width, height, -1, theme);
}

static void
draw_cb (cairo_t *cr, double width, double height, gpointer data)
{
  const Chart *chart = data;
  g_autoptr (TmChartPlot) plot = tm_chart_plot_new (chart->batch, chart->show);

  cairo_scale (cr, SCALE, SCALE);
  chart->draw (plot, cr, width / SCALE, height / SCALE, tm_theme_paper ());
}

static char *
describe_cb (gpointer data)
{
  const Chart *chart = data;
  g_autoptr (TmChartPlot) plot = tm_chart_plot_new (chart->batch, chart->show);

  return chart->describe (plot);
}

static void
clear_batch (gpointer batch)
{
  tm_batch_clear (batch);
}

static void
free_chart_cb (gpointer data)
{
  Chart *chart = data;

  g_rc_box_release_full (chart->batch, clear_batch);
  g_free (chart);
}

/* Heights are shares of the width; @flattest, in points, where its section then takes a page less. */
typedef struct {
  DrawChart draw;
  DescribeChart describe;
  double width, aspect, flattest;
} ChartKind;

static void
add_chart (TmParts *parts, TmBatch *batch, const ChartKind *kind)
{
  Chart *chart = g_new (Chart, 1);
  const TmReportPicture picture = { .draw = draw_cb,
                                    .describe = describe_cb,
                                    .data = chart,
                                    .free = free_chart_cb,
                                    .width = kind->width,
                                    .aspect = kind->aspect,
                                    .flattest = kind->flattest };

  *chart = (Chart) { g_rc_box_acquire (batch), kind->draw, kind->describe,
                     TM_CHART_SHOW_GUARD | TM_CHART_SHOW_CONTROL | TM_CHART_SHOW_TREND };
  tm_report_add_picture (parts->document, &picture, "", NULL);
}

static void
add_charts (TmParts *parts, TmBatch *batch)
{
  static const ChartKind run = { draw_run, tm_chart_plot_describe, WIDE, 0.21, 80.0 };
  static const ChartKind scatter
      = { tm_chart_plot_draw_dispersion, tm_chart_plot_describe_dispersion, WIDE, 0.12, 43.0 };
  static const ChartKind histogram
      = { tm_chart_plot_draw_histogram, tm_chart_plot_describe_histogram, SHAPE_WIDTH, 0.40, 64.0 };
  static const ChartKind probability
      = { tm_chart_plot_draw_probability, tm_chart_plot_describe_probability, SHAPE_WIDTH, 0.40, 64.0 };

  add_chart (parts, batch, &run);
  if (batch->chart.status == TM_CHART_OK)
    add_chart (parts, batch, &scatter);
  add_chart (parts, batch, &histogram);
  add_chart (parts, batch, &probability);
}

/* -------- Sentences -------- */

typedef GPtrArray *(*Lines) (const TmBatch *batch);

static GPtrArray *
say_lines (TmParts *parts, guint language, const TmBatch *batch, Lines lines)
{
  const TmWords *before = tm_words_use (&parts->words[language]);
  GPtrArray *said = lines (batch);

  tm_words_use (before);
  return said;
}

/* What is said hangs on the batch, not on the language: the lists are equally long. */
static void
add_lines (TmParts *parts, const char *heading, const TmBatch *batch, Lines lines)
{
  g_autoptr (GPtrArray) said = say_lines (parts, 0, batch, lines);
  g_autoptr (GPtrArray) again = parts->n_words > 1 ? say_lines (parts, 1, batch, lines) : NULL;

  tm_report_add_heading (parts->document, tm_part_label (parts, NULL, heading));
  for (guint i = 0; i < said->len; i++)
    tm_report_add_paragraphs (parts->document, g_ptr_array_index (said, i),
                              again != NULL && i < again->len ? g_ptr_array_index (again, i) : NULL, FALSE);
}

/* -------- Capability -------- */

static void
add_spread (TmParts *parts, const TmBatch *batch, const char *label, double value)
{
  char format[16], text[G_ASCII_DTOSTR_BUF_SIZE + 32];

  if (!isfinite (value))
    return;
  g_snprintf (format, sizeof format, "%%.%uf", tm_batch_decimals (batch));
  tm_part_fact (parts, label, tm_words_number (g_ascii_formatd (text, sizeof text, format, value)));
}

static void
add_summary (TmParts *parts, const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  double sum = 0.0, squares = 0.0;

  for (guint i = 0; i < series->n_points; i++)
    if (isfinite (series->points[i].mean))
      sum += series->points[i].mean / series->n_measured;
  for (guint i = 0; i < series->n_points; i++)
    if (isfinite (series->points[i].mean))
      squares += (series->points[i].mean - sum) * (series->points[i].mean - sum);
  tm_report_begin_facts (parts->document, 4);
  tm_part_fact (parts, N_ ("Unit"), tm_unit_symbol (series->feature->unit));
  add_spread (parts, batch, N_ ("Mean"), tm_batch_size (batch, sum));
  add_spread (parts, batch, N_ ("Standard deviation of all"),
              tm_batch_spread (batch, sqrt (squares / MAX (1u, series->n_measured - 1))));
  if (batch->chart.status == TM_CHART_OK)
    add_spread (parts, batch, N_ ("From piece to piece"), tm_batch_spread (batch, batch->chart.sigma));
}

static char *
say_refused (gconstpointer data)
{
  const TmCapability *c = data;

  return g_strdup_printf (_ ("Refused: %s."),
                          g_dpgettext2 (GETTEXT_PACKAGE, "capability", tm_capable_status_word (c->status)));
}

static char *
say_normality (gconstpointer data)
{
  const double p = ((const TmCapability *)data)->normality_p;

  if (!isfinite (p))
    return NULL;
  return p < 0.001 ? g_strdup (_ ("Test of normality (Anderson and Darling): p under 0.001."))
                   : g_strdup_printf (_ ("Test of normality (Anderson and Darling): p %.2g."), p);
}

static char *
say_unsteady (gconstpointer batch)
{
  return g_strdup (tm_batch_unsteady_words (batch));
}

static char *
say_apart (gconstpointer data)
{
  const TmBatch *batch = data;

  if (tm_batch_state (batch) != TM_BATCH_DRIFTING || !isfinite (batch->capability_apart.ppk.value))
    return NULL;
  return g_strdup_printf (_ ("With the drift taken out Ppk would be %.2f: that is the scatter alone."),
                          batch->capability_apart.ppk.value);
}

static char *
say_interval (gconstpointer batch)
{
  return tm_batch_interval_line (batch);
}

typedef struct {
  const TmBatch *batch;
  TmBatchIndex index;
} Figure;

static char *
say_reason (gconstpointer data)
{
  const Figure *figure = data;

  return tm_batch_index_reason (figure->batch, figure->index);
}

static void
add_index (TmParts *parts, const TmBatch *batch, TmBatchIndex which)
{
  const TmIndex *index = tm_batch_index (&batch->capability, which);
  const Figure figure = { batch, which };
  g_autofree char *reason = tm_part_both (parts, say_reason, &figure);

  tm_report_add_cell (parts->document, tm_batch_index_name (which));
  tm_part_number_cell (parts, index->value, 2);
  tm_part_number_cell (parts, index->low, 2);
  tm_part_number_cell (parts, index->high, 2);
  tm_part_number_cell (parts, (double)batch->capability.n, 0);
  tm_report_add_cell (parts->document, reason);
}

static gboolean
is_given (const TmBatch *batch, TmBatchIndex which)
{
  return isfinite (tm_batch_index (&batch->capability, which)->value);
}

/* The figures that are refused for one reason, from @first on, in one row; what was said before is not said
 * again. */
static void
add_refused (TmParts *parts, const TmBatch *batch, TmBatchIndex first, GHashTable *said)
{
  g_autofree char *reason = tm_batch_index_reason (batch, first);
  g_autoptr (GString) names = g_string_new (tm_batch_index_name (first));
  const Figure figure = { batch, first };
  g_autofree char *both = NULL;

  if (!g_hash_table_add (said, g_strdup (reason)))
    return;
  for (guint i = first + 1u; i < TM_N_BATCH_INDEXES; i++)
    {
      g_autofree char *other = tm_batch_index_reason (batch, i);

      if (!is_given (batch, i) && g_str_equal (other, reason))
        g_string_append_printf (names, ", %s", tm_batch_index_name (i));
    }
  both = tm_part_both (parts, say_reason, &figure);
  tm_report_add_cell (parts->document, names->str);
  for (guint i = 0; i < 4; i++)
    tm_report_add_cell (parts->document, "");
  tm_report_add_cell (parts->document, both);
}

/* What is given stands first. */
static void
add_indexes (TmParts *parts, const TmBatch *batch)
{
  g_autoptr (GHashTable) said = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < TM_N_BATCH_INDEXES; i++)
    if (is_given (batch, i))
      add_index (parts, batch, i);
  for (guint i = 0; i < TM_N_BATCH_INDEXES; i++)
    if (!is_given (batch, i))
      add_refused (parts, batch, i, said);
}

static void
add_capability (TmParts *parts, const TmBatch *batch)
{
  static const TmReportColumn columns[] = {
    { N_ ("Figure"), 36, 0, 0, TM_CELL_STRONG },     { N_ ("Value"), 36, 0, 0, TM_CELL_NUMBER },
    { N_ ("95 %: from"), 36, 0, 0, TM_CELL_NUMBER }, { N_ ("to"), 36, 0, 0, TM_CELL_NUMBER },
    { N_ ("Pieces"), 36, 0, 0, TM_CELL_NUMBER },     { N_ ("Note"), 120, 0, 1, TM_CELL_PLAIN },
  };
  const TmCapability *c = &batch->capability;

  tm_report_add_heading (parts->document, tm_part_label (parts, NULL, N_ ("Capability")));
  add_summary (parts, batch);
  if (c->status != TM_CAPABLE_OK)
    {
      tm_part_say (parts, say_refused, c, FALSE);
      return;
    }
  tm_part_table (parts, columns, G_N_ELEMENTS (columns));
  add_indexes (parts, batch);
  tm_part_say (parts, say_unsteady, batch, FALSE);
  tm_part_say (parts, say_normality, c, FALSE);
  if (batch->series.repeatability > 0)
    tm_part_say_text (parts, N_ ("The repeatability of measuring is taken out of the figures."), FALSE);
  tm_part_say (parts, say_apart, batch, FALSE);
  tm_part_say (parts, say_interval, batch, FALSE);
}

/* -------- Pieces to hold back -------- */

static const char *
word_disposition (TmParts *parts, const TmPiece *piece)
{
  static const char *const words[][2] = { { "hold", NC_ ("disposition", "held back") },
                                          { "measure", NC_ ("disposition", "to be measured") },
                                          { "release", NC_ ("disposition", "released") },
                                          { "scrap", NC_ ("disposition", "scrapped") } };

  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (piece->disposition, words[i][0]))
      return tm_part_label (parts, "disposition", words[i][1]);
  return tm_part_label (parts, NULL, N_ ("not decided"));
}

static char *
say_more_held (gconstpointer data)
{
  const guint n = GPOINTER_TO_UINT (data);

  return g_strdup_printf (ngettext ("And %u more piece, up to the last one made.",
                                    "And %u more pieces, up to the last one made.", n),
                          n);
}

static void
add_held (TmParts *parts, const TmBatch *batch)
{
  static const TmReportColumn columns[] = {
    { N_ ("Piece"), 40, 90, 0, TM_CELL_PLAIN },       { N_ ("Measured"), 40, 0, 0, TM_CELL_CENTRE },
    { N_ ("Percent out"), 40, 0, 0, TM_CELL_NUMBER }, { N_ ("Disposition"), 60, 120, 0, TM_CELL_PLAIN },
    { N_ ("Note"), 100, 0, 1, TM_CELL_PLAIN },
  };
  const GArray *hold = batch->hold;

  if (hold->len == 0)
    return;
  tm_report_add_heading (parts->document, tm_part_label (parts, NULL, N_ ("Pieces to hold back")));
  tm_part_say_text (
      parts, N_ ("Made since the level may have changed; beside each the chance that it is out."), FALSE);
  tm_part_table (parts, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < MIN (hold->len, MOST_HELD); i++)
    {
      const TmHoldRow *row = &g_array_index (hold, TmHoldRow, i);
      const TmPiece *piece = batch->series.points[row->point].piece;

      tm_report_add_cell (parts->document, piece->serial);
      tm_part_word_cell (parts, NULL, row->measured ? N_ ("yes") : N_ ("no"));
      tm_part_number_cell (parts, 100.0 * row->out, 1);
      tm_report_add_cell (parts->document, word_disposition (parts, piece));
      tm_report_add_cell (parts->document, piece->disposition_note);
    }
  if (hold->len > MOST_HELD)
    tm_part_say (parts, say_more_held, GUINT_TO_POINTER (hold->len - MOST_HELD), FALSE);
}

/* -------- A feature -------- */

static char *
say_title (gconstpointer data)
{
  const TmSeries *series = data;
  g_autofree char *name
      = tm_report_feature_short_name (series->feature, series->feature->places > 1 ? series->place : 0);

  return g_strdup_printf (ngettext ("Feature %s: %u piece measured of %u",
                                    "Feature %s: %u pieces measured of %u", series->n_measured),
                          name, series->n_measured, series->n_points);
}

static void
add_feature (TmParts *parts, TmBatch *batch)
{
  add_charts (parts, batch);
  add_lines (parts, N_ ("Control charts"), batch, tm_batch_chart_lines);
  add_lines (parts, N_ ("Drift and offset"), batch, tm_batch_drift_lines);
  add_capability (parts, batch);
  add_held (parts, batch);
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

static gboolean
stopped_cb (gpointer data)
{
  return !tm_part_goes_on (data, 0.3);
}

/* A section of its own on a new page. */
static void
begin_feature (TmParts *parts, const TmSeries *series, guint n)
{
  g_autofree char *title = say_title (series);
  g_autofree char *both = tm_part_both (parts, say_title, series);
  g_autofree char *name = g_strdup_printf ("batch-%u", n);

  tm_report_add_section (parts->document, title, name, TRUE);
  if (parts->n_words > 1)
    tm_report_add_paragraph (parts->document, both + strlen (title), TRUE);
}

/* Returns: whether the place is shown. */
static gboolean
add_place (TmParts *parts, const TmFeature *feature, guint place, guint n)
{
  TmBatch *batch = g_rc_box_new0 (TmBatch);
  const gboolean made = tm_batch_init (batch, parts->job, feature, place, NULL, stopped_cb, parts);
  const gboolean shown = made && batch->series.n_measured >= LEAST_PIECES;

  if (shown)
    {
      begin_feature (parts, &batch->series, n);
      add_feature (parts, batch);
    }
  if (made)
    g_rc_box_release_full (batch, clear_batch);
  else
    g_rc_box_release (batch);
  return shown;
}

void
tm_part_batch (TmParts *parts)
{
  const TmJob *job = parts->job;
  guint n = 0;

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (tm_kind_is_attribute (feature->kind))
        continue;
      for (guint place = 1; place <= feature->places && n < MOST_PLACES && tm_part_goes_on (parts, 0.3);
           place++)
        if (is_enough (job, feature, place))
          n += add_place (parts, feature, place, n);
    }
}
