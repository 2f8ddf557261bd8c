/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-batch-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "app-feature-words.h"
#include "app-reading-words.h"
#include "plot-chance.h"

#define SHOWN_P 0.05 /* of a drift: core-trend */

/* -------- Numbers -------- */

/* With a sign that is as wide as a digit. */
static char *
format_signed (gint64 count, TmUnit unit, guint decimals, gboolean plus)
{
  g_autofree char *number = tm_count_format (count, unit, decimals);

  if (*number == '-')
    return g_strconcat ("−", number + 1, NULL);
  return plus && strpbrk (number, "123456789") != NULL ? g_strconcat ("+", number, NULL)
                                                       : g_steal_pointer (&number);
}

/* A chance of a test. */
static char *
format_p (double p)
{
  return p < 0.001 ? g_strdup (_ ("under 0.001")) : g_strdup_printf ("%.3f", p);
}

/* Decimals in @unit that show two digits of a difference of @counts. */
static guint
find_decimals (double counts, TmUnit unit)
{
  double share = fabs (counts) / (double)MAX (tm_unit_counts (unit), 1);

  return share > 0 ? (guint)CLAMP (1 - floor (log10 (share)), 0, 5) : 2;
}

static gint64
to_count (double value)
{
  return isfinite (value) ? (gint64)llround (CLAMP (value, -4e18, 4e18)) : 0;
}

/* A size of the series in the feature's unit, with one digit more than its limits. */
static char *
format_size (const TmSeries *series, double value)
{
  const TmFeature *feature = series->feature;
  guint decimals = MAX (feature->upper.decimals, feature->lower.decimals);

  decimals = MAX (decimals, feature->nominal.decimals) + 1;
  return format_signed (series->reference + to_count (value), feature->unit, MIN (decimals, 6), FALSE);
}

static const char *
find_symbol (const TmSeries *series)
{
  return tm_unit_symbol (series->feature->unit);
}

static const char *
find_serial (const TmSeries *series, guint at)
{
  return at < series->n_points ? series->points[at].piece->serial : "";
}

static gint
find_last_measured (const TmSeries *series)
{
  for (guint i = series->n_points; i > 0; i--)
    if (!isnan (series->points[i - 1].mean))
      return (gint)i - 1;
  return -1;
}

static guint
count_stretch (const TmBatch *batch)
{
  guint n = 0;

  for (guint i = batch->stretch_from; i < batch->series.n_points; i++)
    n += !isnan (batch->series.points[i].mean);
  return n;
}

static gboolean
has_drift (const TmBatch *batch)
{
  return batch->trend.status == TM_TREND_OK && batch->trend.p <= SHOWN_P;
}

/* -------- A cell of the grid -------- */

static char *
describe_cell (const TmGridCell *cell)
{
  const char *verdict, *side;
  long percent;

  if (cell == NULL)
    return g_strdup (_ ("not judged yet"));
  if (cell->verdict == TM_VERDICT_NOT_MEASURED)
    return g_strdup (cell->due ? _ ("to be measured") : _ ("not due"));
  verdict = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word ((TmVerdict)cell->verdict));
  if (cell->side != TM_SIDE_NONE)
    {
      side = g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word ((TmSide)cell->side));
      /* Translators: verdict and side: "out, metal left". */
      return g_strdup_printf (_ ("%s, %s"), verdict, side);
    }
  if (!isfinite (cell->used))
    return g_strdup (verdict);
  percent = lround (CLAMP (cell->used, 0.0f, 99.0f) * 100);
  /* Translators: verdict, and how far from the middle of the band to its limit: "in, 62 % of the band used".
   */
  return g_strdup_printf (_ ("%s, %ld %% of the band used"), verdict, percent);
}

char *
tm_words_batch_cell (const TmPiece *piece, const TmFeature *feature, const TmGridCell *cell)
{
  g_autofree char *name = feature != NULL ? tm_words_feature (feature) : NULL;
  g_autofree char *state = NULL;

  if (piece == NULL)
    return g_steal_pointer (&name);
  if (feature == NULL)
    return g_strdup_printf (_ ("Piece %s"), piece->serial);
  state = describe_cell (cell);
  /* Translators: piece, feature, state: "Piece 006, 6 · Ø12 H8 bore: out, metal left". */
  return g_strdup_printf (_ ("Piece %s, %s: %s"), piece->serial, name, state);
}

/* -------- What it says first -------- */

static gint
find_last_out (const TmBatch *batch)
{
  for (guint i = batch->series.n_points; i > batch->stretch_from; i--)
    if (batch->series.points[i - 1].verdict == TM_VERDICT_OUT)
      return (gint)i - 1;
  return -1;
}

static const char *
find_shift_headline (const TmBatch *batch)
{
  if (!batch->change.found)
    return _ ("Not by chance");
  return batch->change.after > batch->change.before ? _ ("Shifted larger") : _ ("Shifted smaller");
}

char *
tm_words_batch_headline (const TmBatch *batch)
{
  switch (tm_batch_state (batch))
    {
    case TM_BATCH_NOT_MEASURED:
      return g_strdup (_ ("Not measured"));
    case TM_BATCH_TOO_FEW:
      return g_strdup (_ ("Too few to tell"));
    case TM_BATCH_OUT:
      return g_strdup (_ ("Out"));
    case TM_BATCH_SHIFTED:
      return g_strdup (find_shift_headline (batch));
    case TM_BATCH_DRIFTING:
      return g_strdup (batch->trend.slope > 0 ? _ ("Drifting larger") : _ ("Drifting smaller"));
    case TM_BATCH_STEADY:
      return g_strdup (_ ("Steady"));
    case TM_N_BATCH_STATES:
    default:
      return g_strdup ("");
    }
}

static char *
describe_event (const TmEvent *event)
{
  if (*event->note != '\0')
    return g_strdup (event->note);
  if (g_str_equal (event->kind, "tool"))
    return *event->tool != '\0' ? g_strdup_printf (_ ("tool changed: %s"), event->tool)
                                : g_strdup (_ ("tool changed"));
  if (g_str_equal (event->kind, "offset"))
    return *event->amount != '\0' ? g_strdup_printf (_ ("offset of %s"), event->amount)
                                  : g_strdup (_ ("offset"));
  if (g_str_equal (event->kind, "lot"))
    return g_strdup (_ ("new lot"));
  return g_strdup (_ ("event"));
}

static char *
describe_stretch (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;

  for (guint i = series->n_events; i > 0; i--)
    {
      const TmSeriesEvent *event = &series->events[i - 1];
      g_autofree char *words = NULL;

      if (!event->resets || event->before != batch->stretch_from)
        continue;
      words = describe_event (event->event);
      if (batch->stretch_from >= series->n_points)
        /* Translators: an event after the last piece. */
        return g_strdup_printf (_ ("since the last piece: %s"), words);
      /* Translators: a piece, and the event before it: "since piece 013: new insert". */
      return g_strdup_printf (_ ("since piece %s: %s"), find_serial (series, batch->stretch_from), words);
    }
  if (batch->stretch_from == 0)
    return g_strdup (_ ("since the first piece"));
  return g_strdup_printf (_ ("since piece %s"), find_serial (series, batch->stretch_from));
}

static char *
describe_out (const TmBatch *batch)
{
  gint last = find_last_out (batch);
  const TmSeriesPoint *point = &batch->series.points[last];
  guint n = 0;

  for (guint i = batch->stretch_from; i < batch->series.n_points; i++)
    n += batch->series.points[i].verdict == TM_VERDICT_OUT;
  if (n > 1)
    /* Translators: %u is at least 2; the serial is that of the newest. */
    return g_strdup_printf (ngettext ("%u piece, the newest %s", "%u pieces, the newest %s", n), n,
                            point->piece->serial);
  if (point->side == TM_SIDE_NONE)
    return g_strdup_printf (_ ("piece %s"), point->piece->serial);
  return g_strdup_printf (_ ("piece %s, %s"), point->piece->serial,
                          g_dpgettext2 (GETTEXT_PACKAGE, "side", tm_side_word (point->side)));
}

static char *
describe_change (const TmBatch *batch)
{
  const TmSeries *series = &batch->series;
  const TmLevelChange *change = &batch->change;
  const char *at = find_serial (series, change->at);

  if (change->low == change->high)
    return g_strdup_printf (_ ("from piece %s on"), at);
  return g_strdup_printf (_ ("most likely from piece %s on (%s to %s)"), at,
                          find_serial (series, change->low), find_serial (series, change->high));
}

/* The newest point that a rule speaks of; -1: none. */
static gint
find_last_hit (const TmBatch *batch, guint *rule)
{
  const GArray *hits = batch->location_hits;
  const TmRuleHit *hit;

  if (hits == NULL || hits->len == 0)
    return -1;
  hit = &g_array_index (hits, TmRuleHit, hits->len - 1);
  if (hit->point >= batch->chart.n_groups)
    return -1;
  *rule = hit->rule;
  return (gint)batch->chart.groups[hit->point].from;
}

static char *
describe_hit (const TmBatch *batch)
{
  guint rule = 0;
  gint at = find_last_hit (batch, &rule);

  if (at < 0)
    return describe_stretch (batch);
  /* Translators: a run rule in words, and the piece at which it spoke. */
  return g_strdup_printf (_ ("%s, at piece %s"),
                          g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)rule)),
                          find_serial (&batch->series, (guint)at));
}

static char *
describe_few (const TmBatch *batch)
{
  guint n = count_stretch (batch);

  if (tm_kind_is_attribute (batch->series.feature->kind))
    return g_strdup (_ ("judged by pass or fail: there are no sizes to follow"));
  if (n == 0 && batch->stretch_from > 0)
    return describe_stretch (batch);
  if (batch->stretch_from > 0)
    {
      g_autofree char *since = describe_stretch (batch);
      return g_strdup_printf (ngettext ("%u piece measured %s", "%u pieces measured %s", n), n, since);
    }
  return g_strdup_printf (ngettext ("%u piece measured; four are the least that a drift is looked for in",
                                    "%u pieces measured; four are the least that a drift is looked for in",
                                    n),
                          n);
}

char *
tm_words_batch_since (const TmBatch *batch)
{
  switch (tm_batch_state (batch))
    {
    case TM_BATCH_NOT_MEASURED:
      return g_strdup (_ ("Measure a piece at the Bench: it shows here as it is recorded."));
    case TM_BATCH_TOO_FEW:
      return describe_few (batch);
    case TM_BATCH_OUT:
      return describe_out (batch);
    case TM_BATCH_SHIFTED:
      return batch->change.found ? describe_change (batch) : describe_hit (batch);
    case TM_BATCH_DRIFTING:
    case TM_BATCH_STEADY:
      return describe_stretch (batch);
    case TM_N_BATCH_STATES:
    default:
      return g_strdup ("");
    }
}

/* -------- How long it can go on -------- */

static gboolean
is_told (const TmBatch *batch)
{
  TmBatchState state = tm_batch_state (batch);

  return state != TM_BATCH_NOT_MEASURED && state != TM_BATCH_TOO_FEW;
}

char *
tm_words_batch_forecast (const TmBatch *batch)
{
  guint n;

  if (!is_told (batch))
    return g_strdup ("");
  if (!isfinite (batch->pieces_left))
    return g_strdup (has_drift (batch) ? _ ("No limit ahead") : _ ("No drift shown"));
  if (batch->pieces_left < 1)
    return g_strdup (_ ("No more pieces"));
  n = (guint)MIN (batch->pieces_left, 999999);
  return g_strdup_printf (ngettext ("About %u more piece", "About %u more pieces", n), n);
}

/* "until the mean meets the guard": the wear of a single piece meets it earlier. */
static char *
describe_reach (const TmBatch *batch)
{
  gboolean guarded = batch->series.guard > 0;
  guint low = (guint)CLAMP (batch->pieces_left_low, 0, 999999);
  guint high;

  if (!isfinite (batch->pieces_left_high))
    return guarded ? g_strdup_printf (_ ("(%u or more) until the mean meets the guard"), low)
                   : g_strdup_printf (_ ("(%u or more) until the mean meets the limit"), low);
  high = (guint)CLAMP (ceil (batch->pieces_left_high), 0, 999999);
  return guarded ? g_strdup_printf (_ ("(%u to %u) until the mean meets the guard"), low, high)
                 : g_strdup_printf (_ ("(%u to %u) until the mean meets the limit"), low, high);
}

static char *
describe_single (const TmBatch *batch)
{
  gint last = find_last_measured (&batch->series);
  double left = batch->forecast.single - (last + 1);
  guint n;

  if (!isfinite (left))
    return g_strdup ("");
  if (left < 1)
    return g_strdup (_ ("A single piece may meet it already."));
  n = (guint)MIN (left, 999999);
  return g_strdup_printf (ngettext ("A single piece may in about %u.", "A single piece may in about %u.", n),
                          n);
}

char *
tm_words_batch_forecast_range (const TmBatch *batch)
{
  g_autofree char *reach = NULL;
  g_autofree char *single = NULL;

  if (!is_told (batch))
    return g_strdup ("");
  if (!isfinite (batch->pieces_left))
    return g_strdup (has_drift (batch) ? _ ("the drift leads away from the limits") : "");
  if (batch->pieces_left < 1)
    return g_strdup (batch->series.guard > 0 ? _ ("the mean has met the guard")
                                             : _ ("the mean has met the limit"));
  reach = describe_reach (batch);
  single = describe_single (batch);
  return *single != '\0' ? g_strdup_printf ("%s\n%s", reach, single) : g_steal_pointer (&reach);
}

/* -------- Slope -------- */

static char *
say_slope (const TmBatch *batch)
{
  const TmTrend *trend = &batch->trend;
  TmUnit unit = tm_unit_small (batch->series.feature->unit);
  guint decimals = find_decimals ((trend->slope_upper - trend->slope_lower) / 2, unit);
  g_autofree char *slope = NULL, *low = NULL, *high = NULL, *robust = NULL, *p = NULL;
  const char *symbol = tm_unit_symbol (unit);

  if (trend->status == TM_TREND_CONSTANT)
    return g_strdup (_ ("none: all sizes are equal"));
  if (trend->status != TM_TREND_OK || !isfinite (trend->slope_lower) || !isfinite (trend->slope_upper))
    return g_strdup (_ ("too few pieces for a slope"));
  slope = format_signed (to_count (trend->slope), unit, decimals, TRUE);
  low = format_signed (to_count (trend->slope_lower), unit, decimals, FALSE);
  high = format_signed (to_count (trend->slope_upper), unit, decimals, FALSE);
  if (!isfinite (trend->theil_sen) || !isfinite (trend->kendall_p))
    return g_strdup_printf (_ ("%s %s a piece (%s to %s)"), slope, symbol, low, high);
  robust = format_signed (to_count (trend->theil_sen), unit, decimals, TRUE);
  p = format_p (trend->kendall_p);
  /* Translators: slope, unit, its interval; the slope of Theil and Sen; chance of the test of Mann and
   * Kendall. */
  return g_strdup_printf (_ ("%s %s a piece (%s to %s)\nrobust %s; by chance alone: %s"), slope, symbol, low,
                          high, robust, p);
}

/* -------- Correct or leave alone -------- */

static char *
say_step (const TmBatch *batch)
{
  return tm_words_count (batch->series.feature, batch->options.step, 0);
}

/* What chasing every piece would have cost, from the job's own data. */
static char *
describe_cost (const TmBatch *batch)
{
  const TmOffsetAdvice *offset = &batch->offset;
  double ratio = offset->spread_corrected / offset->spread;

  if (!isfinite (ratio) || ratio < 1.05 || count_stretch (batch) <= 3)
    return g_strdup ("");
  return g_strdup_printf (_ ("Correcting after every piece would have spread them %.1f times as far."),
                          ratio);
}

static char *
describe_offset (const TmBatch *batch)
{
  const TmOffsetAdvice *offset = &batch->offset;
  const TmFeature *feature = batch->series.feature;
  g_autofree char *amount = NULL;
  g_autofree char *step = NULL;

  switch (offset->status)
    {
    case TM_OFFSET_ADVISED:
      amount = format_signed (to_count (offset->size_change), feature->unit,
                              MAX (find_decimals ((double)batch->options.step, feature->unit), 1) - 1, TRUE);
      /* Translators: a change of size and its unit. */
      return g_strdup_printf (_ ("An offset of %s %s on the size would recentre it."), amount,
                              tm_unit_symbol (feature->unit));
    case TM_OFFSET_ON_TARGET:
      return g_strdup (_ ("Leave it: no further off than chance explains."));
    case TM_OFFSET_UNDER_STEP:
      step = say_step (batch);
      return g_strdup_printf (_ ("Leave it: off by less than the control’s step of %s."), step);
    case TM_OFFSET_NO_TARGET:
      return g_strdup (_ ("There is no size to aim at."));
    case TM_OFFSET_TOO_FEW:
    default:
      return g_strdup (_ ("Too few pieces to go by: leave it."));
    }
}

static char *
say_offset (const TmBatch *batch)
{
  g_autofree char *advice = describe_offset (batch);
  g_autofree char *cost = describe_cost (batch);

  return *cost != '\0' ? g_strdup_printf ("%s\n%s", advice, cost) : g_steal_pointer (&advice);
}

/* -------- Hold back -------- */

static char *
say_hold (const TmBatch *batch)
{
  guint n = batch->hold != NULL ? batch->hold->len : 0;
  guint unmeasured = 0;
  const TmHoldRow *first, *last;

  if (n == 0)
    return g_strdup (find_last_out (batch) >= 0 ? _ ("the piece that is out; no shift is shown")
                                                : _ ("none"));
  for (guint i = 0; i < n; i++)
    unmeasured += !g_array_index (batch->hold, TmHoldRow, i).measured;
  first = &g_array_index (batch->hold, TmHoldRow, 0);
  last = &g_array_index (batch->hold, TmHoldRow, n - 1);
  if (n == 1)
    return g_strdup_printf (_ ("piece %s"), find_serial (&batch->series, first->point));
  /* Translators: how many, from which serial to which, how many of them. */
  return g_strdup_printf (ngettext ("%u piece, %s to %s, %u of them not measured",
                                    "%u pieces, %s to %s, %u of them not measured", n),
                          n, find_serial (&batch->series, first->point),
                          find_serial (&batch->series, last->point), unmeasured);
}

/* -------- Capability -------- */

/* Two decimals, with a minus as wide as a digit and none before zero. */
static char *
format_figure (double value)
{
  char *text = g_strdup_printf ("%.2f", fabs (value));

  if (value < 0 && strpbrk (text, "123456789") != NULL)
    {
      char *signed_text = g_strconcat ("−", text, NULL);

      g_free (text);
      return signed_text;
    }
  return text;
}

/* "Ppk 1.18 (0.88 to 1.48)"; NULL where there is none. */
static char *
format_index (const char *name, const TmIndex *index)
{
  g_autofree char *value = NULL, *low = NULL, *high = NULL;

  if (!isfinite (index->value))
    return NULL;
  value = format_figure (index->value);
  if (!isfinite (index->low) || !isfinite (index->high))
    return g_strdup_printf ("%s %s", name, value);
  low = format_figure (index->low);
  high = format_figure (index->high);
  /* Translators: an index of capability, its value and its interval. */
  return g_strdup_printf (_ ("%s %s (%s to %s)"), name, value, low, high);
}

static char *
describe_refusal (const TmCapability *capability)
{
  guint n = (guint)capability->n;

  switch (capability->status)
    {
    case TM_CAPABLE_TOO_FEW:
      return g_strdup_printf (ngettext ("refused: %u piece, and five are the least",
                                        "refused: %u pieces, and five are the least", n),
                              n);
    case TM_CAPABLE_NO_SPREAD:
      return g_strdup (_ ("refused: all sizes are equal; the gauge shows no spread"));
    case TM_CAPABLE_NO_LIMITS:
      return g_strdup (_ ("refused: there are no limits to compare with"));
    case TM_CAPABLE_MEASURING:
      return g_strdup (_ ("refused: measuring spreads as far as the pieces do"));
    case TM_CAPABLE_OK:
    case TM_N_CAPABLE_STATUSES:
    default:
      return g_strdup ("");
    }
}

static void
add_line (GString *lines, char *line)
{
  if (line != NULL && *line != '\0')
    {
      if (lines->len > 0)
        g_string_append_c (lines, '\n');
      g_string_append (lines, line);
    }
  g_free (line);
}

/* What the figures rest on where that is not a normal distribution. */
static char *
describe_shape (const TmCapability *capability)
{
  g_autofree char *p = format_p (capability->normality_p);

  if (capability->shape == TM_SHAPE_NORMAL)
    return NULL;
  if (isfinite (capability->normality_p))
    return g_strdup_printf (_ ("not normal (p %s): by quantiles, %s"), p,
                            g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (capability->shape)));
  return g_strdup_printf (_ ("by quantiles, %s"),
                          g_dpgettext2 (GETTEXT_PACKAGE, "shape", tm_shape_word (capability->shape)));
}

static char *
describe_overall (const TmCapability *capability)
{
  g_autofree char *ppk = format_index ("Ppk", &capability->ppk);
  guint n = (guint)capability->n;

  if (ppk == NULL)
    return NULL;
  return g_strdup_printf (ngettext ("%s, %u piece", "%s, %u pieces", n), ppk, n);
}

static char *
describe_apart (const TmBatch *batch)
{
  g_autofree char *cpk = format_index ("Cpk", &batch->capability_apart.cpk);

  if (cpk == NULL)
    return NULL;
  /* Translators: an index of capability with the drift taken out. */
  return g_strdup_printf (_ ("scatter alone: %s"), cpk);
}

static char *
say_capability (const TmBatch *batch)
{
  const TmCapability *capability = &batch->capability;
  GString *lines;

  if (capability->status != TM_CAPABLE_OK)
    return describe_refusal (capability);
  lines = g_string_new (NULL);
  add_line (lines, describe_overall (capability));
  add_line (lines, describe_apart (batch));
  add_line (lines, format_index ("Cmk", &capability->cmk));
  add_line (lines, describe_shape (capability));
  if (isfinite (capability->expected_out) && capability->expected_out > 0)
    {
      g_autofree char *share = tm_chance_text (capability->expected_out);
      add_line (lines, g_strdup_printf (_ ("expected out: %s"), share));
    }
  if (capability->n_wanted > capability->n)
    add_line (lines,
              g_strdup_printf (ngettext ("%u piece would bring Ppk within a fifth",
                                         "%u pieces would bring Ppk within a fifth", capability->n_wanted),
                               capability->n_wanted));
  return g_string_free (lines, FALSE);
}

/* -------- Rules -------- */

static char *
list_rules (guint rules)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if ((rules & TM_RULE_BIT (i)) != 0)
      g_ptr_array_add (words, (gpointer)g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)i)));
  g_ptr_array_add (words, NULL);
  return g_strjoinv ("; ", (char **)words->pdata);
}

/* How often the chosen rules speak of nothing at all. */
static char *
describe_false_alarms (const TmBatch *batch)
{
  guint n;

  if (!isfinite (batch->rules_length) || batch->rules_length < 1)
    return NULL;
  n = (guint)MIN (batch->rules_length + 0.5, 999999);
  return batch->options.group_size > 1 ? g_strdup_printf (
             ngettext ("a false alarm about every %u group", "a false alarm about every %u groups", n), n)
                                       : g_strdup_printf (ngettext ("a false alarm about every %u piece",
                                                                    "a false alarm about every %u pieces", n),
                                                          n);
}

static char *
say_rules (const TmBatch *batch)
{
  GString *lines = g_string_new (NULL);
  guint rule = 0;
  gint at = find_last_hit (batch, &rule);

  if (batch->chart.status == TM_CHART_TOO_FEW)
    {
      g_string_free (lines, TRUE);
      return g_strdup (_ ("too few pieces for control limits"));
    }
  add_line (lines, list_rules (batch->options.rules));
  add_line (lines, describe_false_alarms (batch));
  if (at >= 0)
    add_line (lines, g_strdup_printf (_ ("spoke last at piece %s"), find_serial (&batch->series, (guint)at)));
  return g_string_free (lines, FALSE);
}

/* -------- Together -------- */

const char *
tm_words_batch_heading (TmBatchSays says)
{
  static const char *const headings[TM_N_BATCH_SAYS] = {
    [TM_BATCH_SAYS_SLOPE] = N_ ("Slope"),           [TM_BATCH_SAYS_OFFSET] = N_ ("Correct or leave alone"),
    [TM_BATCH_SAYS_HOLD] = N_ ("Hold back"),        [TM_BATCH_SAYS_CAPABILITY] = N_ ("Capability"),
    [TM_BATCH_SAYS_RULES] = N_ ("Rules looked at"),
  };

  g_return_val_if_fail (says < TM_N_BATCH_SAYS, "");

  return g_dgettext (GETTEXT_PACKAGE, headings[says]);
}

char *
tm_words_batch_says (const TmBatch *batch, TmBatchSays says)
{
  TmBatchState state = tm_batch_state (batch);

  if (state == TM_BATCH_NOT_MEASURED)
    return g_strdup ("");
  if (tm_kind_is_attribute (batch->series.feature->kind) && says != TM_BATCH_SAYS_HOLD)
    return g_strdup ("");
  switch (says)
    {
    case TM_BATCH_SAYS_SLOPE:
      return is_told (batch) ? say_slope (batch) : g_strdup ("");
    case TM_BATCH_SAYS_OFFSET:
      return say_offset (batch);
    case TM_BATCH_SAYS_HOLD:
      return say_hold (batch);
    case TM_BATCH_SAYS_CAPABILITY:
      return say_capability (batch);
    case TM_BATCH_SAYS_RULES:
      return say_rules (batch);
    case TM_N_BATCH_SAYS:
    default:
      return g_strdup ("");
    }
}

char *
tm_words_batch_same_tool (const TmBatch *other)
{
  g_autofree char *name = tm_words_feature (other->series.feature);
  g_autofree char *headline = tm_words_batch_headline (other);
  g_autofree char *slope = NULL;
  TmUnit unit = tm_unit_small (other->series.feature->unit);

  if (!has_drift (other) || tm_batch_state (other) == TM_BATCH_TOO_FEW)
    /* Translators: a feature and its state: "3 · Ø40 N7: Steady". */
    return g_strdup_printf (_ ("%s: %s"), name, headline);
  slope
      = format_signed (to_count (other->trend.slope), unit,
                       find_decimals ((other->trend.slope_upper - other->trend.slope_lower) / 2, unit), TRUE);
  /* Translators: a feature, its state, its slope and unit. */
  return g_strdup_printf (_ ("%s: %s, %s %s a piece"), name, headline, slope, tm_unit_symbol (unit));
}

/* The rules that speak at a piece, in words. */
static char *
describe_hits_at (const TmBatch *batch, guint at)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; batch->location_hits != NULL && i < batch->location_hits->len; i++)
    {
      const TmRuleHit *hit = &g_array_index (batch->location_hits, TmRuleHit, i);

      if (hit->point < batch->chart.n_groups && batch->chart.groups[hit->point].from == at)
        g_string_append_printf (words, "; %s",
                                g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)hit->rule)));
    }
  return g_string_free (words, FALSE);
}

static char *
describe_sizes (const TmSeries *series, const TmSeriesPoint *point)
{
  g_autofree char *mean = format_size (series, point->mean);
  g_autofree char *low = NULL, *high = NULL;

  if (!(point->largest > point->smallest))
    return g_strdup_printf ("%s %s", mean, find_symbol (series));
  low = format_size (series, point->smallest);
  high = format_size (series, point->largest);
  /* Translators: mean of a piece's stations, the smallest and the largest, the unit. */
  return g_strdup_printf (_ ("%s (%s to %s) %s"), mean, low, high, find_symbol (series));
}

char *
tm_words_batch_piece (const TmBatch *batch, guint at)
{
  const TmSeries *series = &batch->series;
  const TmSeriesPoint *point;
  g_autofree char *sizes = NULL;
  g_autofree char *hits = NULL;
  const char *verdict;

  g_return_val_if_fail (at < series->n_points, g_strdup (""));

  point = &series->points[at];
  verdict = g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (point->verdict));
  if (isnan (point->mean))
    /* Translators: a piece and its verdict. */
    return g_strdup_printf (_ ("Piece %s: %s"), point->piece->serial, verdict);
  sizes = describe_sizes (series, point);
  hits = describe_hits_at (batch, at);
  /* Translators: a piece, its size, its verdict, and rules that speak at it. */
  return g_strdup_printf (_ ("Piece %s: %s, %s%s"), point->piece->serial, sizes, verdict, hits);
}

char *
tm_words_batch_count (guint n_measured, guint n_pieces)
{
  return g_strdup_printf (ngettext ("%u of %u piece measured", "%u of %u pieces measured", n_pieces),
                          n_measured, n_pieces);
}
