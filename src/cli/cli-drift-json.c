/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-drift-json: the answer of drift as JSON.
 */

#include <math.h>

#include "cli-drift.h"
#include "cli-json.h"

/* -------- Lengths -------- */

/* A size that lies @counts beside the reference. */
static void
put_size (yajl_gen gen, const char *key, const TmSeries *series, double counts)
{
  tm_print_counts (gen, key, (double)series->reference + counts, series->feature->unit);
}

static void
put_spread (yajl_gen gen, const char *key, const TmSeries *series, double counts)
{
  tm_print_counts (gen, key, counts, series->feature->unit);
}

/* A change of size a piece may be less than a count. */
static void
put_rate (yajl_gen gen, const char *key, const TmSeries *series, double counts)
{
  char text[64];
  gint64 unit = tm_unit_counts (series->feature->unit);

  if (!isfinite (counts) || unit == 0 || fabs (counts) > (double)TM_COUNT_MAX)
    {
      tm_print_null (gen, key);
      return;
    }
  g_ascii_formatd (text, sizeof text, "%.15f", counts / (double)unit);
  tm_print_text (gen, key, text);
}

static void
open_map (yajl_gen gen, const char *key)
{
  tm_print_key (gen, key);
  yajl_gen_map_open (gen);
}

static void
open_array (yajl_gen gen, const char *key)
{
  tm_print_key (gen, key);
  yajl_gen_array_open (gen);
}

/* -------- Charts -------- */

static const char *
get_chart_word (TmChartKind kind)
{
  switch (kind)
    {
    case TM_CHART_INDIVIDUALS:
      return "individuals";
    case TM_CHART_RANGES:
      return "means and ranges";
    case TM_CHART_DEVIATIONS:
      return "means and standard deviations";
    default:
      g_assert_not_reached ();
    }
}

static void
put_charts (yajl_gen gen, const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  const TmChartGroup *group = tm_drift_present_group (batch);

  open_map (gen, "location");
  tm_print_text (gen, "chart", get_chart_word (batch->chart.kind));
  put_size (gen, "centre", series, group ? (group->location_lower + group->location_upper) / 2 : NAN);
  put_size (gen, "lower", series, group ? tm_drift_lower_limit (batch, group) : NAN);
  put_size (gen, "upper", series, group ? group->location_upper : NAN);
  yajl_gen_map_close (gen);
  open_map (gen, "dispersion");
  put_spread (gen, "centre", series, group ? group->dispersion_centre : NAN);
  put_spread (gen, "lower", series, group ? group->dispersion_lower : NAN);
  put_spread (gen, "upper", series, group ? group->dispersion_upper : NAN);
  yajl_gen_map_close (gen);
}

static void
put_groups (yajl_gen gen, const TmBatch *batch)
{
  const TmSeries *series = &batch->series;

  open_array (gen, "groups");
  for (guint i = 0; i < batch->chart.n_groups; i++)
    {
      const TmChartGroup *group = &batch->chart.groups[i];

      yajl_gen_map_open (gen);
      tm_print_integer (gen, "group", i + 1);
      tm_print_integer (gen, "values", group->n);
      put_size (gen, "location", series, group->location);
      put_size (gen, "lower", series, tm_drift_lower_limit (batch, group));
      put_size (gen, "upper", series, group->location_upper);
      put_spread (gen, "dispersion", series, group->dispersion);
      put_spread (gen, "dispersion_centre", series, group->dispersion_centre);
      put_spread (gen, "dispersion_lower", series, group->dispersion_lower);
      put_spread (gen, "dispersion_upper", series, group->dispersion_upper);
      yajl_gen_map_close (gen);
    }
  yajl_gen_array_close (gen);
}

static void
put_hits (yajl_gen gen, const TmBatch *batch, const GArray *hits, const char *chart)
{
  for (guint i = 0; i < hits->len; i++)
    {
      const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, i);
      const TmPiece *piece = tm_drift_group_piece (batch, hit->point);

      yajl_gen_map_open (gen);
      tm_print_integer (gen, "group", hit->point + 1);
      tm_print_text (gen, "piece", piece ? piece->serial : NULL);
      tm_print_text (gen, "chart", chart);
      tm_print_text (gen, "rule", tm_run_rule_word (hit->rule));
      yajl_gen_map_close (gen);
    }
}

static void
put_rules (yajl_gen gen, const TmBatch *batch)
{
  open_map (gen, "rules");
  open_array (gen, "chosen");
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if (batch->options.rules & TM_RULE_BIT (i))
      tm_print_item (gen, tm_run_rule_word (i));
  yajl_gen_array_close (gen);
  tm_print_number (gen, "groups_to_a_false_alarm", batch->rules_length);
  tm_print_flag (gen, "exact", batch->rules_exact);
  yajl_gen_map_close (gen);
  open_array (gen, "violations");
  put_hits (gen, batch, batch->location_hits, "location");
  put_hits (gen, batch, batch->dispersion_hits, "dispersion");
  yajl_gen_array_close (gen);
}

static void
put_first (yajl_gen gen, gint first)
{
  if (first >= 0)
    tm_print_integer (gen, "first", first + 1);
  else
    tm_print_null (gen, "first");
}

static void
put_ewma (yajl_gen gen, const TmBatch *batch)
{
  open_map (gen, "ewma");
  tm_print_number (gen, "lambda", TM_BATCH_LAMBDA);
  tm_print_number (gen, "reach", TM_BATCH_EWMA_REACH);
  put_first (gen, batch->first_ewma);
  open_array (gen, "points");
  for (guint i = 0; batch->ewma != NULL && i < batch->chart.n_groups; i++)
    {
      yajl_gen_map_open (gen);
      tm_print_integer (gen, "group", i + 1);
      put_size (gen, "value", &batch->series, batch->ewma[i].value);
      put_size (gen, "lower", &batch->series, batch->ewma[i].lower);
      put_size (gen, "upper", &batch->series, batch->ewma[i].upper);
      yajl_gen_map_close (gen);
    }
  yajl_gen_array_close (gen);
  yajl_gen_map_close (gen);
}

static void
put_cusum (yajl_gen gen, const TmBatch *batch)
{
  open_map (gen, "cusum");
  tm_print_number (gen, "k", TM_BATCH_CUSUM_K);
  tm_print_number (gen, "h", TM_BATCH_CUSUM_H);
  put_first (gen, batch->first_cusum);
  open_array (gen, "points");
  for (guint i = 0; batch->cusum != NULL && i < batch->chart.n_groups; i++)
    {
      yajl_gen_map_open (gen);
      tm_print_integer (gen, "group", i + 1);
      tm_print_number (gen, "high", batch->cusum[i].high);
      tm_print_number (gen, "low", batch->cusum[i].low);
      yajl_gen_map_close (gen);
    }
  yajl_gen_array_close (gen);
  yajl_gen_map_close (gen);
}

/* -------- Drift -------- */

static void
put_trend (yajl_gen gen, const TmBatch *batch)
{
  const TmTrend *trend = &batch->trend;

  open_map (gen, "trend");
  put_rate (gen, "slope", &batch->series, trend->slope);
  put_rate (gen, "slope_lower", &batch->series, trend->slope_lower);
  put_rate (gen, "slope_upper", &batch->series, trend->slope_upper);
  tm_print_number (gen, "p", trend->p);
  put_rate (gen, "theil_sen", &batch->series, trend->theil_sen);
  put_rate (gen, "theil_sen_lower", &batch->series, trend->theil_sen_lower);
  put_rate (gen, "theil_sen_upper", &batch->series, trend->theil_sen_upper);
  tm_print_number (gen, "mann_kendall_p", trend->kendall_p);
  tm_print_integer (gen, "values", (gint64)trend->n);
  yajl_gen_map_close (gen);
}

static void
put_forecast (yajl_gen gen, const TmBatch *batch)
{
  if (!batch->forecast.given)
    {
      tm_print_null (gen, "forecast");
      return;
    }
  open_map (gen, "forecast");
  tm_print_number (gen, "pieces_left", batch->pieces_left);
  tm_print_number (gen, "low", batch->pieces_left_low);
  tm_print_number (gen, "high", batch->pieces_left_high);
  tm_print_text (gen, "limit", batch->forecast.upper ? "upper" : "lower");
  tm_print_number (gen, "piece_number", batch->forecast.at);
  tm_print_number (gen, "single_piece_number", batch->forecast.single);
  yajl_gen_map_close (gen);
}

static void
put_change (yajl_gen gen, const TmBatch *batch)
{
  const TmLevelChange *change = &batch->change;
  const TmSeriesPoint *points = batch->series.points;

  if (!change->found)
    {
      tm_print_null (gen, "change");
      return;
    }
  open_map (gen, "change");
  tm_print_text (gen, "piece", points[change->at].piece->serial);
  tm_print_text (gen, "low", points[change->low].piece->serial);
  tm_print_text (gen, "high", points[change->high].piece->serial);
  tm_print_integer (gen, "number", change->at + 1);
  tm_print_integer (gen, "number_low", change->low + 1);
  tm_print_integer (gen, "number_high", change->high + 1);
  put_size (gen, "before", &batch->series, change->before);
  put_size (gen, "after", &batch->series, change->after);
  tm_print_number (gen, "p", change->p);
  yajl_gen_map_close (gen);
}

static void
put_hold (yajl_gen gen, const TmBatch *batch)
{
  open_array (gen, "hold_back");
  for (guint i = 0; i < batch->hold->len; i++)
    {
      const TmHoldRow *row = &g_array_index (batch->hold, TmHoldRow, i);
      const TmPiece *piece = batch->series.points[row->point].piece;

      yajl_gen_map_open (gen);
      tm_print_text (gen, "piece", piece->serial);
      tm_print_flag (gen, "measured", row->measured);
      tm_print_number (gen, "probability_out", row->out);
      tm_print_text (gen, "disposition", *piece->disposition != '\0' ? piece->disposition : NULL);
      yajl_gen_map_close (gen);
    }
  yajl_gen_array_close (gen);
}

static const char *
get_offset_word (TmOffsetStatus status)
{
  switch (status)
    {
    case TM_OFFSET_ADVISED:
      return "correct";
    case TM_OFFSET_TOO_FEW:
      return "too few";
    case TM_OFFSET_ON_TARGET:
      return "leave alone";
    case TM_OFFSET_UNDER_STEP:
      return "less than a step";
    case TM_OFFSET_NO_TARGET:
      return "no target";
    default:
      g_assert_not_reached ();
    }
}

static void
put_offset (yajl_gen gen, const TmBatch *batch)
{
  const TmOffsetAdvice *offset = &batch->offset;
  const TmSeries *series = &batch->series;

  open_map (gen, "offset_advice");
  tm_print_text (gen, "advice", get_offset_word (offset->status));
  put_spread (gen, "size_change", series, offset->size_change);
  tm_print_integer (gen, "steps", offset->steps);
  put_spread (gen, "step", series, (double)batch->options.step);
  put_size (gen, "target", series, series->target);
  put_size (gen, "level", series, offset->status == TM_OFFSET_TOO_FEW ? NAN : offset->level);
  put_spread (gen, "level_error", series, offset->status == TM_OFFSET_TOO_FEW ? NAN : offset->level_se);
  put_spread (gen, "spread", series, offset->spread);
  put_spread (gen, "spread_corrected_each", series, offset->spread_corrected);
  yajl_gen_map_close (gen);
}

/* -------- Capability -------- */

static void
put_index (yajl_gen gen, const char *key, const TmIndex *index)
{
  g_autofree char *low = g_strconcat (key, "_lower", NULL);
  g_autofree char *high = g_strconcat (key, "_upper", NULL);

  tm_print_number (gen, key, index->value);
  tm_print_number (gen, low, index->low);
  tm_print_number (gen, high, index->high);
}

static const char *
get_capable_word (TmCapableStatus status)
{
  switch (status)
    {
    case TM_CAPABLE_OK:
      return "ok";
    case TM_CAPABLE_TOO_FEW:
      return "too few";
    case TM_CAPABLE_NO_SPREAD:
      return "no spread";
    case TM_CAPABLE_NO_LIMITS:
      return "no limits";
    case TM_CAPABLE_MEASURING:
      return "measuring";
    case TM_N_CAPABLE_STATUSES:
    default:
      g_assert_not_reached ();
    }
}

static const char *
get_shape_word (TmShape shape)
{
  switch (shape)
    {
    case TM_SHAPE_NORMAL:
      return "normal";
    case TM_SHAPE_LOGNORMAL:
      return "lognormal";
    case TM_SHAPE_WEIBULL:
      return "weibull";
    case TM_SHAPE_RAYLEIGH:
      return "rayleigh";
    case TM_SHAPE_EMPIRIC:
      return "empiric";
    case TM_N_SHAPES:
    default:
      g_assert_not_reached ();
    }
}

static void
put_capability (yajl_gen gen, const char *key, const TmCapability *capability)
{
  open_map (gen, key);
  tm_print_text (gen, "status", get_capable_word (capability->status));
  tm_print_integer (gen, "values", (gint64)capability->n);
  put_index (gen, "cp", &capability->cp);
  put_index (gen, "cpk", &capability->cpk);
  put_index (gen, "pp", &capability->pp);
  put_index (gen, "ppk", &capability->ppk);
  put_index (gen, "cpm", &capability->cpm);
  put_index (gen, "cm", &capability->cm);
  put_index (gen, "cmk", &capability->cmk);
  tm_print_number (gen, "normality_p", capability->normality_p);
  tm_print_text (gen, "shape", get_shape_word (capability->shape));
  tm_print_number (gen, "shape_p", capability->shape_p);
  tm_print_flag (gen, "no_shape_fits", capability->unshaped);
  tm_print_number (gen, "expected_out", capability->expected_out);
  tm_print_integer (gen, "values_wanted", capability->n_wanted);
  yajl_gen_map_close (gen);
}

static void
put_interval (yajl_gen gen, const TmDriftCase *drift)
{
  TmDriftInterval interval;

  if (!tm_drift_interval (drift, &interval))
    {
      tm_print_null (gen, "tolerance_interval");
      return;
    }
  open_map (gen, "tolerance_interval");
  tm_print_number (gen, "coverage", drift->sure->coverage);
  tm_print_number (gen, "confidence", drift->sure->confidence);
  tm_print_number (gen, "k", interval.k);
  put_size (gen, "lower", &drift->batch->series, interval.lower);
  put_size (gen, "upper", &drift->batch->series, interval.upper);
  yajl_gen_map_close (gen);
}

/* -------- All of it -------- */

static void
put_case (yajl_gen gen, const TmDriftCase *drift)
{
  const TmBatch *batch = drift->batch;
  const TmSeries *series = &batch->series;
  double mean, deviation;

  tm_drift_summary (batch, &mean, &deviation);
  yajl_gen_map_open (gen);
  tm_print_text (gen, "feature", series->feature->balloon);
  tm_print_integer (gen, "place", series->place);
  tm_print_unit (gen, series->feature->unit);
  tm_print_text (gen, "state", tm_drift_state_word (tm_batch_state (batch)));
  tm_print_integer (gen, "pieces", series->n_points);
  tm_print_integer (gen, "count", series->n_measured);
  tm_print_text (gen, "check", *series->feature->check != '\0' ? series->feature->check : "each");
  put_size (gen, "mean", series, mean);
  put_spread (gen, "sd_within", series, batch->chart.status == TM_CHART_OK ? batch->chart.sigma : NAN);
  put_spread (gen, "sd_overall", series, deviation);
  put_charts (gen, batch);
  put_rules (gen, batch);
  put_groups (gen, batch);
  put_ewma (gen, batch);
  put_cusum (gen, batch);
  put_trend (gen, batch);
  put_forecast (gen, batch);
  put_change (gen, batch);
  put_hold (gen, batch);
  put_capability (gen, "capability", &batch->capability);
  put_capability (gen, "capability_apart", &batch->capability_apart);
  put_interval (gen, drift);
  put_offset (gen, batch);
  yajl_gen_map_close (gen);
}

/* Of what all features of the tool show together; metal left counts up. */
static void
put_wear (yajl_gen gen, const TmDriftCase *drifts, const TmToolDrift *together)
{
  const TmSeries *series = &drifts->batch->series;

  open_map (gen, "wear");
  put_rate (gen, "a_piece", series, together->wear);
  put_rate (gen, "lower", series, together->lower);
  put_rate (gen, "upper", series, together->upper);
  tm_print_number (gen, "p", together->p);
  tm_print_flag (gen, "shown", together->shown);
  tm_print_number (gen, "agreement_p", together->agreement_p);
  tm_print_integer (gen, "features", together->n_used);
  tm_print_text (gen, "apart",
                 together->apart >= 0 ? together->rows[together->apart].feature->balloon : NULL);
  yajl_gen_map_close (gen);
}

void
tm_drift_print_json (const TmDriftCase *drifts, guint n, const TmToolDrift *together)
{
  yajl_gen gen = tm_print_begin ();

  if (together == NULL)
    put_case (gen, drifts);
  else
    {
      yajl_gen_map_open (gen);
      tm_print_text (gen, "tool", together->tool->name);
      tm_print_unit (gen, drifts->batch->series.feature->unit);
      put_wear (gen, drifts, together);
      open_array (gen, "features");
      for (guint i = 0; i < n; i++)
        put_case (gen, &drifts[i]);
      yajl_gen_array_close (gen);
      yajl_gen_map_close (gen);
    }
  tm_print_end (gen);
}
