/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-plan: the cut being planned, as a band plot shows it: where the size is, where it will be, which
 * limits hold, and the same in words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "plot-band-private.h"
#include "plot-chance.h"
#include "plot-range.h"

/* How far from the band the axis follows the plan, in widths of the band, so that the band stays readable:
 * farther for where the size will be than for where it is. */
#define REACH_NOW   3.0
#define REACH_AFTER 5.0
/* Standard deviations of the size after the cut that the axis holds. */
#define TAIL 2.5

/* -------- Numbers -------- */

static guint
get_decimals (const TmBandPlot *plot)
{
  return MIN (MAX (plot->decimals, plot->fineness), TM_MAX_DECIMALS - 1);
}

/* One digit more than the limits have. */
static char *
print_finer (const TmBandPlot *plot, double count)
{
  return tm_count_format ((gint64)llround (count), plot->unit, get_decimals (plot) + 1);
}

/* That digit is a nought that can go. */
static gboolean
ends_in_nought (const TmBandPlot *plot, const char *text)
{
  return get_decimals (plot) > 0 && g_str_has_suffix (text, "0");
}

static void
cut_last (char *text)
{
  text[strlen (text) - 1] = '\0';
}

/* No noughts beyond the digits of the limits. */
static char *
print_fine (const TmBandPlot *plot, double count)
{
  char *text = print_finer (plot, count);

  for (guint digits = get_decimals (plot) + 1;
       digits > MAX (plot->decimals, 1) && g_str_has_suffix (text, "0"); digits--)
    cut_last (text);
  return text;
}

/* The last digit of the limits, in counts. */
static double
get_step (const TmBandPlot *plot)
{
  return (double)tm_unit_counts (plot->unit) * pow (10.0, -(double)get_decimals (plot));
}

/* Size and spread with the same digits; a spread of ten or more of the limits' last digit needs none finer.
 */
static char *
print_size (const TmBandPlot *plot, double at, double u)
{
  g_autofree char *size = NULL, *spread = NULL;
  const guint finer = 2 * u < 10 * get_step (plot) ? 1 : 0;

  if (!isfinite (u) || u <= 0)
    return print_fine (plot, at);
  size = tm_count_format (llround (at), plot->unit, get_decimals (plot) + finer);
  spread = tm_count_format_bound (llround (2 * u), plot->unit, get_decimals (plot) + finer, TRUE);
  if (finer && ends_in_nought (plot, size) && ends_in_nought (plot, spread))
    {
      cut_last (size);
      cut_last (spread);
    }
  return g_strdup_printf ("%s ± %s", size, spread);
}

/* The size alone, with the digits that it has beside its spread. */
static char *
take_size (const char *text)
{
  const char *end = strstr (text, " ±");

  return end != NULL ? g_strndup (text, (gsize)(end - text)) : g_strdup (text);
}

static char *
print_change (const TmBandPlot *plot, double change)
{
  return change > 0 ? print_fine (plot, change) : NULL;
}

/* -------- The plan -------- */

/* Where nothing can be said of the size there is nothing to draw. */
static const TmCutStatus not_drawn[]
    = { TM_CUT_BAD_BAND,  TM_CUT_NOT_READ, TM_CUT_NO_LIMITS, TM_CUT_NO_SIDE,
        TM_CUT_NO_METHOD, TM_CUT_NO_DIAL,  TM_CUT_NO_MATE,   TM_CUT_NOT_A_SIZE };

static gboolean
is_drawn (TmCutStatus status)
{
  for (gsize i = 0; i < G_N_ELEMENTS (not_drawn); i++)
    if (status == not_drawn[i])
      return FALSE;
  return status < TM_N_CUT_STATUSES;
}

static gboolean
is_within (double value, double least)
{
  return isfinite (value) && value >= least && value < (double)TM_COUNT_MAX;
}

/* Something is read, the way of the cut is known, and the figures are figures. */
static gboolean
is_shown (const TmBandPlot *plot, const TmCutAdvice *advice)
{
  const TmCutPlan *plan = &advice->plan;
  const double least = -(double)TM_COUNT_MAX;

  return is_drawn (plan->status) && plot->has_axis && plot->cut != TM_CUT_UNKNOWN
         && is_within (plan->predicted, least)
         && is_within ((double)advice->reference + plan->predicted, least)
         && is_within (plan->predicted_u, 0.0) && is_within (plan->change, 0.0)
         && is_within ((double)advice->reference + plan->size, least) && is_within (plan->size_u, 0.0);
}

static double
or_else (double value, double otherwise)
{
  return isfinite (value) ? value : otherwise;
}

/* Its stations after the cut lie on either side of their mean, or at it. */
static void
find_reach (TmBandPlan *plan, const TmCutAdvice *advice)
{
  const double low = (double)advice->reference + advice->plan.predicted_low;
  const double high = (double)advice->reference + advice->plan.predicted_high;
  const gboolean known = is_within (low, -(double)TM_COUNT_MAX) && is_within (high, low);

  plan->reach_low = known ? MIN (low, plan->after) : plan->after;
  plan->reach_high = known ? MAX (high, plan->after) : plan->after;
}

/* How far one mark of the dial moves the size. */
static double
find_per_mark (const TmCutAdvice *advice)
{
  const double by = advice->step * or_else (advice->response.factor, 1.0);

  return is_within (by, 0.0) ? by : 0.0;
}

/* The spread of a change that the cutter is not known to answer exactly. */
static double
find_spread_of (const TmCutResponse *response, double change)
{
  return hypot (change * or_else (response->factor_sd, 0.0), or_else (response->scatter, 0.0));
}

/* The change of a second cut: a whole number of marks, as the words beside the picture have it. */
static double
round_second (const TmCutAdvice *advice)
{
  const double second = advice->plan.second, step = advice->step;

  return isfinite (second) && isfinite (step) && step > 0 ? round (second / step) * step : second;
}

static void
find_second (TmBandPlan *plan, const TmCutAdvice *advice, double way)
{
  const double second = round_second (advice);

  /* Less than half a mark cannot be dialled; and it comes only where metal is left, which is not drawn as if
   * it were sure. */
  if (!is_within (second, 0.0) || second <= 0 || second < plan->per_mark / 2
      || !(advice->plan.chances.left > 0.5))
    return;
  plan->next_change = second;
  plan->second = plan->after + way * second * or_else (advice->response.factor, 1.0);
  plan->second_u = hypot (plan->now_u, find_spread_of (&advice->response, second));
}

/* The limits that hold, each the narrower of the drawing's and the mate's. */
static void
find_limits (const TmBandPlot *plot, TmBandPlan *plan, const TmCutAdvice *advice)
{
  const double reference = (double)advice->reference;
  double lower = plot->limits.has_lower ? (double)plot->limits.lower : -INFINITY;
  double upper = plot->limits.has_upper ? (double)plot->limits.upper : INFINITY;

  if (isfinite (advice->band.mate_lower) && reference + advice->band.mate_lower > lower)
    lower = plan->mate_lower = reference + advice->band.mate_lower;
  if (isfinite (advice->band.mate_upper) && reference + advice->band.mate_upper < upper)
    upper = plan->mate_upper = reference + advice->band.mate_upper;
  plan->left = plan->grows ? lower : upper;
  plan->gone = plan->grows ? upper : lower;
}

static void
print_plan (const TmBandPlot *plot, TmBandPlan *plan)
{
  plan->now_text = print_size (plot, plan->now, plan->now_u);
  plan->after_text = print_size (plot, plan->after, plan->after_u);
  plan->now_short = take_size (plan->now_text);
  plan->after_short = take_size (plan->after_text);
  plan->change_text = print_change (plot, plan->change);
  if (plan->next_change > 0)
    plan->next_text = tm_count_format (llround (plan->next_change), plot->unit,
                                       MIN (plot->decimals, get_decimals (plot)));
  plan->mate_lower_text = isfinite (plan->mate_lower) ? print_fine (plot, plan->mate_lower) : NULL;
  plan->mate_upper_text = isfinite (plan->mate_upper) ? print_fine (plot, plan->mate_upper) : NULL;
}

void
tm_band_plan_clear (TmBandPlan *plan)
{
  g_free (plan->now_text);
  g_free (plan->after_text);
  g_free (plan->now_short);
  g_free (plan->after_short);
  g_free (plan->change_text);
  g_free (plan->next_text);
  g_free (plan->mate_lower_text);
  g_free (plan->mate_upper_text);
  *plan = (TmBandPlan) { 0 };
}

void
tm_band_plot_set_plan (TmBandPlot *plot, const TmCutAdvice *advice)
{
  TmBandPlan *plan;
  double way;

  g_return_if_fail (plot != NULL);
  plan = &plot->plan;
  tm_band_plan_clear (plan);
  if (advice != NULL && is_shown (plot, advice))
    {
      plan->shown = TRUE;
      plan->grows = plot->cut == TM_CUT_GROWS;
      way = plan->grows ? 1.0 : -1.0;
      plan->second = plan->second_u = plan->mate_lower = plan->mate_upper = NAN;
      plan->change = advice->plan.change;
      plan->chances = advice->plan.chances;
      plan->after = (double)advice->reference + advice->plan.predicted;
      plan->after_u = advice->plan.predicted_u;
      plan->now = (double)advice->reference + advice->plan.size;
      plan->now_u = advice->plan.size_u;
      find_reach (plan, advice);
      plan->per_mark = find_per_mark (advice);
      find_second (plan, advice, way);
      find_limits (plot, plan, advice);
      print_plan (plot, plan);
    }
  tm_band_plot_choose_axis (plot);
}

gboolean
tm_band_plot_get_aim (const TmBandPlot *plot, gint64 *size, double *per_mark)
{
  g_return_val_if_fail (plot != NULL && size != NULL && per_mark != NULL, FALSE);

  *size = plot->plan.shown ? llround (plot->plan.after) : 0;
  *per_mark = plot->plan.shown ? plot->plan.per_mark : 0.0;
  return plot->plan.shown;
}

void
tm_band_plot_hold_axis (TmBandPlot *plot, const TmBandPlot *as)
{
  g_return_if_fail (plot != NULL);
  plot->axis_held = FALSE;
  if (as == NULL)
    tm_band_plot_choose_axis (plot);
  if (as == NULL || !plot->has_axis || !as->has_axis || plot->unit != as->unit)
    return;
  plot->axis = as->axis;
  plot->axis_held = TRUE;
}

/* -------- The axis -------- */

/* Widens to @at and to so much of its tail, @by to either side, as lies within @reach of the band; not at all
 * when @at itself does not. */
static void
stretch_near (const TmBandPlot *plot, double *low, double *high, double at, double by, double reach)
{
  const TmLimits *limits = &plot->limits;
  const double span = (double)limits->upper - (double)limits->lower;
  double bottom = -INFINITY, top = INFINITY;

  if (limits->has_lower && limits->has_upper && span > 0)
    {
      bottom = (double)limits->lower - reach * span;
      top = (double)limits->upper + reach * span;
    }
  if (at < bottom || at > top)
    return;
  tm_range_stretch (low, high, MAX (at - by, bottom));
  tm_range_stretch (low, high, MIN (at + by, top));
}

gboolean
tm_band_plan_range (const TmBandPlot *plot, double *low, double *high)
{
  const TmBandPlan *plan = &plot->plan;

  *low = *high = NAN;
  if (!plan->shown)
    return FALSE;
  stretch_near (plot, low, high, plan->now, 2 * plan->now_u, REACH_NOW);
  stretch_near (plot, low, high, plan->after, TAIL * plan->after_u, REACH_AFTER);
  stretch_near (plot, low, high, plan->reach_low, TAIL * plan->after_u, REACH_AFTER);
  stretch_near (plot, low, high, plan->reach_high, TAIL * plan->after_u, REACH_AFTER);
  if (isfinite (plan->second))
    stretch_near (plot, low, high, plan->second, TAIL * plan->second_u, REACH_AFTER);
  return isfinite (*low) && isfinite (*high);
}

/* -------- Words -------- */

static void
describe_chances (const TmBandPlan *plan, GString *out)
{
  g_autofree char *in = tm_chance_text (plan->chances.in), *left = tm_chance_text (plan->chances.left),
                  *gone = tm_chance_text (plan->chances.gone);

  if (in == NULL || left == NULL || gone == NULL)
    return;
  g_string_append (out, "; ");
  /* Translators: three chances, each "97 %", "under 0.1 %"… */
  g_string_append_printf (out, _ ("chances: %s in, %s metal left, %s metal gone"), in, left, gone);
}

static void
describe_mate_limits (const TmBandPlan *plan, GString *out)
{
  if (plan->mate_lower_text == NULL && plan->mate_upper_text == NULL)
    return;
  g_string_append (out, "; ");
  if (plan->mate_lower_text != NULL && plan->mate_upper_text != NULL)
    g_string_append_printf (out, _ ("the mate as measured asks for %s to %s"), plan->mate_lower_text,
                            plan->mate_upper_text);
  else if (plan->mate_lower_text != NULL)
    g_string_append_printf (out, _ ("the mate as measured asks for at least %s"), plan->mate_lower_text);
  else
    g_string_append_printf (out, _ ("the mate as measured asks for at most %s"), plan->mate_upper_text);
}

void
tm_band_plan_describe (const TmBandPlot *plot, GString *out)
{
  const TmBandPlan *plan = &plot->plan;
  const char *unit = tm_unit_symbol (plot->unit);

  if (!plan->shown)
    return;
  g_string_append (out, ". ");
  if (plan->change_text != NULL)
    /* Translators: the change of size, its unit, the size now and after it, each "24.981 ± 0.004", and the
     * unit. */
    g_string_append_printf (out, _ ("Planned cut %s %s: from %s to %s %s"), plan->change_text, unit,
                            plan->now_text, plan->after_text, unit);
  else
    g_string_append_printf (out, _ ("No cut planned: now %s %s"), plan->now_text, unit);
  describe_chances (plan, out);
  if (plan->next_text != NULL)
    {
      g_string_append (out, "; ");
      g_string_append_printf (out, _ ("then a second cut of about %s %s"), plan->next_text, unit);
    }
  describe_mate_limits (plan, out);
}
