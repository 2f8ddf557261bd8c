/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-drift-print: the answer of drift in words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-drift.h"

/* Lines about one rule. */
#define MOST_RUNS 10

/* -------- Lengths -------- */

/* A hundredth of a micrometre, or of a ten-thousandth of an inch. */
static guint
get_decimals (const TmSeries *series)
{
  switch (series->feature->unit)
    {
    case TM_UNIT_MM:
      return 5;
    case TM_UNIT_IN:
      return 6;
    case TM_UNIT_NONE:
    case TM_UNIT_UM:
    case TM_UNIT_UIN:
    case TM_UNIT_THOU:
    case TM_UNIT_TENTH:
    case TM_UNIT_DEGREE:
    case TM_UNIT_HARDNESS:
    case TM_UNIT_COUNT:
    case TM_UNIT_CELSIUS:
    case TM_N_UNITS:
    default:
      return 3;
    }
}

static char *
format_spread (const TmSeries *series, double counts)
{
  double most = (double)TM_COUNT_MAX;

  return tm_count_format (llround (CLAMP (counts, -most, most)), series->feature->unit,
                          get_decimals (series));
}

static char *
format_size (const TmSeries *series, double counts)
{
  return format_spread (series, (double)series->reference + counts);
}

static const char *
get_unit (const TmSeries *series)
{
  return tm_unit_symbol (series->feature->unit);
}

/* Of a slope, whose last digits a piece are small: micrometres, or ten-thousandths of an inch. */
static char *
format_rate (const TmSeries *series, double counts)
{
  TmUnit small = tm_unit_small (series->feature->unit);
  gint64 unit = tm_unit_counts (small);

  return g_strdup_printf ("%+.4f", unit > 0 ? counts / (double)unit : counts);
}

static const char *
get_serial (const TmBatch *batch, guint point)
{
  return batch->series.points[point].piece->serial;
}

/* -------- What it is about -------- */

static void
print_state (const TmBatch *batch)
{
  static const char *const sentences[TM_N_BATCH_STATES] = {
    [TM_BATCH_NOT_MEASURED] = N_ ("nothing is measured yet"),
    [TM_BATCH_TOO_FEW]
    = N_ ("too few pieces are measured since the last event for anything to be said of drift"),
    [TM_BATCH_OUT] = N_ ("a piece since the last event is out"),
    [TM_BATCH_SHIFTED] = N_ ("shifted: the level is not what it was"),
    [TM_BATCH_DRIFTING] = N_ ("drifting"),
    [TM_BATCH_STEADY] = N_ ("no drift shown"),
  };

  printf ("%s\n", _ (sentences[tm_batch_state (batch)]));
}

static void
print_head (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;

  printf (_ ("feature %s"), series->feature->balloon);
  if (*series->feature->name != '\0')
    printf (", %s", series->feature->name);
  if (series->feature->places > 1)
    printf (_ (", place %u"), series->place);
  printf (ngettext (": %u of %u piece measured\n", ": %u of %u pieces measured\n", series->n_points),
          series->n_measured, series->n_points);
  print_state (batch);
}

/* -------- Charts -------- */

static void
print_summary (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  double mean, deviation;
  g_autofree char *middle = NULL;
  g_autofree char *overall = NULL;
  g_autofree char *within = NULL;

  tm_drift_summary (batch, &mean, &deviation);
  if (isnan (mean))
    return;
  middle = format_size (series, mean);
  printf (_ ("mean %s %s"), middle, get_unit (series));
  if (!isnan (deviation))
    {
      overall = format_spread (series, deviation);
      printf (_ (", standard deviation %s overall"), overall);
    }
  if (batch->chart.status == TM_CHART_OK)
    {
      within = format_spread (series, batch->chart.sigma);
      printf (_ (", %s from piece to piece"), within);
    }
  printf ("\n");
}

static void
print_location (const TmBatch *batch, const TmChartGroup *group)
{
  const TmSeries *series = &batch->series;
  g_autofree char *centre = format_size (series, (group->location_lower + group->location_upper) / 2);
  g_autofree char *lower = format_size (series, series->limits.zero_bounded ? fmax (0, group->location_lower)
                                                                            : group->location_lower);
  g_autofree char *upper = format_size (series, group->location_upper);

  if (batch->chart.kind == TM_CHART_INDIVIDUALS)
    printf (_ ("single pieces: centre %s, control limits %s to %s\n"), centre, lower, upper);
  else
    printf (_ ("means of %u: centre %s, control limits %s to %s\n"), group->n, centre, lower, upper);
}

static void
print_dispersion (const TmBatch *batch, const TmChartGroup *group)
{
  const TmSeries *series = &batch->series;
  g_autofree char *centre = NULL;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;

  if (isnan (group->dispersion_centre))
    return;
  centre = format_spread (series, group->dispersion_centre);
  lower = format_spread (series, group->dispersion_lower);
  upper = format_spread (series, group->dispersion_upper);
  if (batch->chart.kind == TM_CHART_INDIVIDUALS)
    printf (_ ("from one piece to the next: centre %s, control limits %s to %s\n"), centre, lower, upper);
  else if (batch->chart.kind == TM_CHART_RANGES)
    printf (_ ("ranges: centre %s, control limits %s to %s\n"), centre, lower, upper);
  else
    printf (_ ("standard deviations: centre %s, control limits %s to %s\n"), centre, lower, upper);
}

static void
print_limits (const TmBatch *batch)
{
  const TmChartGroup *group = tm_drift_present_group (batch);

  if (group == NULL && batch->chart.status == TM_CHART_NO_SPREAD)
    printf ("%s\n", _ ("no control limits: the pieces of each group are all equal"));
  else if (group == NULL)
    printf ("%s\n", _ ("no control limits: fewer than two groups show how the pieces scatter"));
  if (group == NULL)
    return;
  print_location (batch, group);
  print_dispersion (batch, group);
  if (batch->options.baseline > 0)
    printf (ngettext ("the limits are frozen by the first %u group\n",
                      "the limits are frozen by the first %u groups\n", batch->chart.baseline),
            batch->chart.baseline);
}

static const char *
get_group_serial (const TmBatch *batch, guint group)
{
  const TmPiece *piece = tm_drift_group_piece (batch, group);

  return piece != NULL ? piece->serial : _ ("not measured");
}

static void
print_run (const TmBatch *batch, const char *chart, guint rule, guint from, guint to)
{
  const char *text = _ (tm_run_rule_text (rule));

  if (from == to)
    printf (_ ("group %u, piece %s, %s: %s\n"), from + 1, get_group_serial (batch, from), chart, text);
  else
    printf (_ ("groups %u to %u, pieces %s to %s, %s: %s\n"), from + 1, to + 1,
            get_group_serial (batch, from), get_group_serial (batch, to), chart, text);
}

/* The hit after the run of the same rule that begins at @from. */
static guint
find_run_end (const GArray *hits, guint from)
{
  const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, from);
  guint end = from + 1;

  while (end < hits->len && g_array_index (hits, TmRuleHit, end).point == hit->point + (end - from))
    end++;
  return end;
}

static GArray *
pick_rule (const GArray *hits, guint rule)
{
  GArray *picked = g_array_new (FALSE, FALSE, sizeof (TmRuleHit));

  for (guint i = 0; i < hits->len; i++)
    if (g_array_index (hits, TmRuleHit, i).rule == rule)
      g_array_append_val (picked, g_array_index (hits, TmRuleHit, i));
  return picked;
}

/* A rule that goes on speaking is said once, and a long list is cut. */
static void
print_hits (const TmBatch *batch, const GArray *hits, guint rule, const char *chart)
{
  g_autoptr (GArray) picked = pick_rule (hits, rule);
  guint runs = 0;

  for (guint i = 0, end; i < picked->len; i = end, runs++)
    {
      end = find_run_end (picked, i);
      if (runs == MOST_RUNS)
        {
          printf (_ ("… and %u more groups, %s: %s; --json lists all\n"), picked->len - i, chart,
                  _ (tm_run_rule_text (rule)));
          break;
        }
      print_run (batch, chart, rule, g_array_index (picked, TmRuleHit, i).point,
                 g_array_index (picked, TmRuleHit, end - 1).point);
    }
}

static void
print_rules (const TmBatch *batch)
{
  const char *gap = "";

  if (batch->chart.status != TM_CHART_OK)
    return;
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    print_hits (batch, batch->location_hits, i, _ ("level"));
  print_hits (batch, batch->dispersion_hits, TM_RULE_BEYOND_3S, _ ("scatter"));
  if (batch->location_hits->len + batch->dispersion_hits->len == 0)
    printf ("%s\n", _ ("no rule speaks on either chart"));
  if (batch->first_ewma >= 0)
    printf (_ ("the weighted moving average leaves its limits at group %d\n"), batch->first_ewma + 1);
  if (batch->first_cusum >= 0)
    printf (_ ("the cumulative sum passes its bound at group %d\n"), batch->first_cusum + 1);
  printf ("%s ", _ ("rules:"));
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if (batch->options.rules & TM_RULE_BIT (i))
      {
        printf ("%s%s", gap, _ (tm_run_rule_text (i)));
        gap = "; ";
      }
  printf (_ (": with nothing wrong they speak once in about %.0f groups\n"), batch->rules_length);
}

/* -------- Drift -------- */

static void
print_trend (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  const TmTrend *trend = &batch->trend;
  const char *unit = tm_unit_symbol (tm_unit_small (series->feature->unit));
  g_autofree char *slope = NULL;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;
  g_autofree char *robust = NULL;

  if (trend->status != TM_TREND_OK)
    return;
  slope = format_rate (series, trend->slope);
  lower = format_rate (series, trend->slope_lower);
  upper = format_rate (series, trend->slope_upper);
  robust = format_rate (series, trend->theil_sen);
  printf (_ ("slope %s %s a piece (95 %%: %s to %s), p %.2g; robust %s, by ranks p %.2g\n"), slope, unit,
          lower, upper, trend->p, robust, trend->kendall_p);
}

static const char *
get_last_serial (const TmBatch *batch)
{
  for (guint i = batch->series.n_points; i > 0; i--)
    if (!isnan (batch->series.points[i - 1].mean))
      return get_serial (batch, i - 1);
  return "";
}

static void
print_pieces_left (const TmBatch *batch, const char *limit)
{
  const char *last = get_last_serial (batch);

  if (batch->pieces_left < 1)
    printf (_ ("the mean is at the %s limit, guard taken off: stop and correct\n"), limit);
  else if (isinf (batch->pieces_left_high))
    printf (_ ("about %.0f more pieces after %s (%.0f or more) before the mean meets the %s limit, guard "
               "taken off\n"),
            batch->pieces_left, last, batch->pieces_left_low, limit);
  else
    printf (_ ("about %.0f more pieces after %s (%.0f to %.0f) before the mean meets the %s limit, guard "
               "taken off\n"),
            batch->pieces_left, last, batch->pieces_left_low, batch->pieces_left_high, limit);
  if (batch->pieces_left >= 1 && isfinite (batch->forecast.single))
    printf (_ ("single pieces may meet it from about number %.0f on\n"), fmax (1, batch->forecast.single));
}

static void
print_forecast (const TmBatch *batch)
{
  if (batch->forecast.given)
    print_pieces_left (batch, batch->forecast.upper ? _ ("upper") : _ ("lower"));
  else if (tm_batch_state (batch) == TM_BATCH_DRIFTING)
    printf ("%s\n", _ ("the drift leads away from the limits, or there is none on its side"));
}

static void
print_change (const TmBatch *batch)
{
  const TmLevelChange *change = &batch->change;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  if (!change->found)
    return;
  before = format_size (&batch->series, change->before);
  after = format_size (&batch->series, change->after);
  printf (_ ("the level changed at piece %s (%s to %s): from %s to %s %s\n"), get_serial (batch, change->at),
          get_serial (batch, change->low), get_serial (batch, change->high), before, after,
          get_unit (&batch->series));
}

static void
print_hold_row (const TmBatch *batch, const TmHoldRow *row)
{
  const char *measured = row->measured ? _ ("measured") : _ ("not measured");

  if (row->out < 0.0001)
    printf (_ ("  %s, %s: out with a chance of under 0.01 %%\n"), get_serial (batch, row->point), measured);
  else
    printf (_ ("  %s, %s: out with a chance of %.2f %%\n"), get_serial (batch, row->point), measured,
            100 * row->out);
}

static void
print_hold (const TmDriftCase *drift)
{
  const TmBatch *batch = drift->batch;
  const GArray *hold = batch->hold;

  if (hold->len == 0 && drift->lists_held)
    printf ("%s\n", _ ("nothing to hold back: no shift is found since the last event"));
  if (hold->len == 0)
    return;
  printf (ngettext ("hold back %u piece, from %s to %s\n", "hold back %u pieces, from %s to %s\n", hold->len),
          hold->len, get_serial (batch, g_array_index (hold, TmHoldRow, 0).point),
          get_serial (batch, g_array_index (hold, TmHoldRow, hold->len - 1).point));
  for (guint i = 0; drift->lists_held && i < hold->len; i++)
    print_hold_row (batch, &g_array_index (hold, TmHoldRow, i));
}

/* -------- Correct or leave alone -------- */

static void
print_correction (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  g_autofree char *change = format_spread (series, batch->offset.size_change);
  g_autofree char *level = format_size (series, batch->offset.level);
  g_autofree char *target = format_size (series, series->target);

  printf (_ ("correct: the size by %s%s %s; it is about %s, the target %s\n"),
          batch->offset.size_change > 0 ? "+" : "", change, get_unit (series), level, target);
  printf ("%s\n", _ ("Before a gauge goes in: spindle stopped and isolated, chips cleared, edge deburred."));
}

static void
print_advice (const TmBatch *batch)
{
  switch (batch->offset.status)
    {
    case TM_OFFSET_ADVISED:
      print_correction (batch);
      break;
    case TM_OFFSET_TOO_FEW:
      printf ("%s\n", _ ("correct or leave alone: nothing to go by yet"));
      break;
    case TM_OFFSET_ON_TARGET:
      printf ("%s\n",
              _ ("leave the offset alone: the level is on target as far as the scatter lets one see"));
      break;
    case TM_OFFSET_UNDER_STEP:
      printf ("%s\n", _ ("leave the offset alone: what it is off is less than a step of the control"));
      break;
    case TM_OFFSET_NO_TARGET:
      printf ("%s\n", _ ("correct or leave alone: the feature has no target"));
      break;
    default:
      g_assert_not_reached ();
    }
}

static void
print_over_correction (const TmBatch *batch)
{
  g_autofree char *spread = NULL;
  g_autofree char *corrected = NULL;

  if (isnan (batch->offset.spread) || isnan (batch->offset.spread_corrected))
    return;
  spread = format_spread (&batch->series, batch->offset.spread);
  corrected = format_spread (&batch->series, batch->offset.spread_corrected);
  printf (_ ("had each piece been corrected by all that it was off, they would scatter by %s instead of %s "
             "%s\n"),
          corrected, spread, get_unit (&batch->series));
}

/* -------- Capability -------- */

static gboolean
print_index (const char *name, const TmIndex *index)
{
  if (isnan (index->value))
    return FALSE;
  printf (_ ("  %-3s %.2f (95 %%: %.2f to %.2f)\n"), name, index->value, index->low, index->high);
  return TRUE;
}

static void
print_unsteady (const TmBatch *batch)
{
  if (batch->change.found)
    printf ("%s\n",
            _ ("  the pieces before and after the shift are taken together: it is no steady process, and "
               "the figures promise nothing"));
  else if (batch->trend.status == TM_TREND_OK && batch->trend.p <= 0.05)
    printf ("%s\n",
            _ ("  the drift is in Pp and Ppk: it is no steady process, and the figures promise nothing"));
  else if (batch->series.n_breaks > 0)
    printf ("%s\n", _ ("  the pieces before and after events are taken together"));
}

/* Why a figure is missing, or is to be taken with care. */
static void
print_reasons (const TmBatch *batch, const TmCapability *c)
{
  const TmSeries *series = &batch->series;
  gboolean one_sided = !isfinite (series->lower) || !isfinite (series->upper);

  if (c->unshaped)
    printf (
        _ ("  Pp and Ppk refused: the values are not normal (p %.2g) and follow no named shape; %u pieces "
           "carry their own quantiles\n"),
        c->normality_p, TM_CAPABLE_EMPIRIC);
  else if (c->shape == TM_SHAPE_EMPIRIC)
    printf ("%s\n", _ ("  Ppk by the quantiles of the values themselves: they are not normal"));
  else if (c->shape != TM_SHAPE_NORMAL)
    printf (_ ("  Ppk by the quantiles of a distribution that is %s\n"),
            g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (c->shape)));
  if (c->shape != TM_SHAPE_NORMAL && !isnan (c->cp.value))
    printf ("%s\n", _ ("  Cp, Cpk and Cpm stand on a normal distribution, which this is not: go by Ppk"));
  if (one_sided)
    printf ("%s\n", _ ("  one limit: Ppk to that side alone; the others do not apply"));
  else if (c->within_lost)
    printf ("%s\n", _ ("  Cp and Cpk refused: measuring scatters as much as the pieces within groups"));
  else if (isnan (c->cp.value))
    printf ("%s\n", _ ("  Cp and Cpk refused: the scatter from piece to piece is not known"));
  if (!one_sided && !c->unshaped && isnan (c->cm.value))
    printf (c->n < TM_CAPABLE_MACHINE ? _ ("  Cm and Cmk refused: they need %u pieces\n")
                                      : _ ("  Cm and Cmk refused: they need %u pieces without drift\n"),
            TM_CAPABLE_MACHINE);
}

static void
print_capability (const TmBatch *batch, const TmCapability *c)
{
  if (c->status != TM_CAPABLE_OK)
    {
      printf (_ ("capability refused: %s\n"),
              g_dpgettext2 (GETTEXT_PACKAGE, "capability", tm_capable_status_word (c->status)));
      return;
    }
  printf (ngettext ("capability of %u piece:\n", "capability of %u pieces:\n", (gulong)c->n), (guint)c->n);
  print_index ("Cp", &c->cp);
  print_index ("Cpk", &c->cpk);
  print_index ("Pp", &c->pp);
  print_index ("Ppk", &c->ppk);
  print_index ("Cpm", &c->cpm);
  print_index ("Cm", &c->cm);
  print_index ("Cmk", &c->cmk);
  print_unsteady (batch);
  print_reasons (batch, c);
  if (batch->series.repeatability > 0)
    printf ("%s\n", _ ("  repeatability of measuring is taken out"));
  if (tm_batch_state (batch) == TM_BATCH_DRIFTING && batch->capability_apart.status == TM_CAPABLE_OK
      && !isnan (batch->capability_apart.ppk.value))
    printf (_ ("  with the drift taken out Ppk would be %.2f: that is the scatter alone\n"),
            batch->capability_apart.ppk.value);
  if (c->n_wanted > c->n)
    printf (_ ("  about %u pieces would bring Ppk within a fifth\n"), c->n_wanted);
}

static void
print_interval (const TmDriftCase *drift)
{
  const TmSeries *series = &drift->batch->series;
  TmDriftInterval interval;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;

  if (drift->batch->capability.status != TM_CAPABLE_OK)
    return;
  if (!tm_drift_interval (drift, &interval))
    {
      printf ("%s\n",
              _ ("where nearly all pieces lie is refused: it takes a steady, normal run without events"));
      return;
    }
  lower = format_size (series, interval.lower);
  upper = format_size (series, interval.upper);
  printf (_ ("%g %% sure that %g %% of all pieces lie between %s and %s %s\n"), 100 * drift->sure->confidence,
          100 * drift->sure->coverage, lower, upper, get_unit (series));
}

/* -------- All of it -------- */

static void
print_case (const TmDriftCase *drift)
{
  const TmBatch *batch = drift->batch;

  print_head (batch);
  if (batch->series.n_measured == 0)
    return;
  print_summary (batch);
  print_limits (batch);
  print_rules (batch);
  print_trend (batch);
  print_forecast (batch);
  print_change (batch);
  print_hold (drift);
  print_advice (batch);
  print_over_correction (batch);
  print_capability (batch, &batch->capability);
  print_interval (drift);
}

/* The feature that its drift brings to a limit first; NULL: none. */
static const TmBatch *
find_soonest (const TmDriftCase *drifts, guint n)
{
  const TmBatch *soonest = NULL;

  for (guint i = 0; i < n; i++)
    {
      const TmBatch *batch = drifts[i].batch;

      if (batch->forecast.given && (soonest == NULL || batch->pieces_left < soonest->pieces_left))
        soonest = batch;
    }
  return soonest;
}

static void
print_wear (const TmDriftCase *drifts, const TmToolDrift *together)
{
  const TmSeries *series = &drifts->batch->series;
  const char *unit = tm_unit_symbol (tm_unit_small (series->feature->unit));
  g_autofree char *wear = NULL;
  g_autofree char *lower = NULL;
  g_autofree char *upper = NULL;

  if (together->n_used == 0)
    return;
  wear = format_rate (series, together->wear);
  lower = format_rate (series, together->lower);
  upper = format_rate (series, together->upper);
  printf (ngettext ("wear by %u place, metal left counting up: %s %s a piece (95 %%: %s to %s), p %.2g\n",
                    "wear by %u places together, metal left counting up: %s %s a piece (95 %%: %s to %s), p "
                    "%.2g\n",
                    together->n_used),
          together->n_used, wear, unit, lower, upper, together->p);
  if (together->apart >= 0)
    printf (_ ("feature %s goes its own way: look for another cause than wear\n"),
            together->rows[together->apart].feature->balloon);
  else if (together->disagree)
    printf ("%s\n", _ ("the places do not agree: look for another cause than wear"));
}

static void
print_tool (const TmDriftCase *drifts, guint n, const TmToolDrift *together)
{
  const TmBatch *soonest = find_soonest (drifts, n);

  if (soonest != NULL)
    printf (_ ("tool “%s”: feature %s meets its limit first, after about %.0f more pieces\n"),
            together->tool->name, soonest->series.feature->balloon, soonest->pieces_left);
  else
    printf (_ ("tool “%s”: no drift leads any of its features to a limit\n"), together->tool->name);
  print_wear (drifts, together);
  printf ("\n");
}

void
tm_drift_print (const TmDriftCase *drifts, guint n, const TmToolDrift *together)
{
  if (together != NULL)
    print_tool (drifts, n, together);
  for (guint i = 0; i < n; i++)
    {
      if (i > 0)
        printf ("\n");
      print_case (&drifts[i]);
    }
}
