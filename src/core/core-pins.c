/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-pins.h"

#include <math.h>
#include <string.h>

#include "core-pin-density.h"
#include "core-uncertainty.h"

/* A size that the pins leave less than this chance stands against them. */
#define FAR_OUTSIDE 0.001
/* Pins beyond this number on one side are far below or above the ones that bind: leaving their share
 * out changes nothing that could be seen, and the work stays bounded. */
#define MOST_FACTORS 16

/* One pin with all its trials. */
typedef struct {
  gint64 low, high;
  const TmPin *went;    /* a trial that went, or NULL */
  const TmPin *stopped; /* a trial that did not go, or NULL */
} Group;

/* -------- Trials of one pin -------- */

static int
compare_counts (gint64 a, gint64 b)
{
  return (a > b) - (a < b);
}

static int
compare_texts (const char *a, const char *b)
{
  return strcmp (a ? a : "", b ? b : "");
}

/* Zero for two trials of one pin: of one set and marked size.  Where it is not known which set, a pin
 * of the same size, class and sign is taken for the same pin: the trials then prove less. */
static int
compare_trials (const TmPinTrial *a, const TmPinTrial *b)
{
  int order = compare_texts (a->gauge, b->gauge);

  if (order == 0)
    order = compare_counts (a->size.count, b->size.count);
  if (order == 0)
    order = compare_texts (a->pin_class, b->pin_class);
  return order != 0 ? order : (int)a->sign - (int)b->sign;
}

static int
compare_pins (gconstpointer a, gconstpointer b, gpointer data)
{
  const TmPin *one = *(const TmPin *const *)a, *other = *(const TmPin *const *)b;
  int order;

  if (one->trial != NULL && other->trial != NULL)
    return compare_trials (one->trial, other->trial);
  if (one->trial != NULL || other->trial != NULL)
    return one->trial != NULL ? -1 : 1;
  order = compare_counts (one->low, other->low);
  return order != 0 ? order : compare_counts (one->high, other->high);
}

/* A trial of the pin whose own size was measured speaks for those where it was not. */
static void
join_group (Group *group, const TmPin *pin)
{
  if (pin->high - pin->low < group->high - group->low)
    {
      group->low = pin->low;
      group->high = pin->high;
    }
  if (pin->went && group->went == NULL)
    group->went = pin;
  if (!pin->went && group->stopped == NULL)
    group->stopped = pin;
}

static GArray *
group_pins (const TmPin *pins, guint n)
{
  g_autofree const TmPin **sorted = g_new (const TmPin *, MAX (n, 1));
  GArray *groups = g_array_new (FALSE, FALSE, sizeof (Group));

  for (guint i = 0; i < n; i++)
    sorted[i] = &pins[i];
  g_qsort_with_data (sorted, (gint)n, sizeof *sorted, compare_pins, NULL);
  for (guint i = 0; i < n; i++)
    {
      if (i == 0 || compare_pins (&sorted[i - 1], &sorted[i], NULL) != 0)
        {
          Group group = { sorted[i]->low, sorted[i]->high, NULL, NULL };

          g_array_append_val (groups, group);
        }
      join_group (&g_array_index (groups, Group, groups->len - 1), sorted[i]);
    }
  return groups;
}

/* -------- Certain bounds -------- */

static void
find_bounds (const GArray *groups, gint64 clearance, TmPinResult *out)
{
  for (guint i = 0; i < groups->len; i++)
    {
      const Group *group = &g_array_index (groups, Group, i);
      gint64 above = group->high + clearance;

      if (group->went != NULL && (!out->has_low || group->low > out->low))
        {
          out->has_low = TRUE;
          out->low = group->low;
          out->low_pin = group->went;
        }
      if (group->stopped != NULL && (!out->has_high || above < out->high))
        {
          out->has_high = TRUE;
          out->high = above;
          out->high_pin = group->stopped;
        }
    }
}

static void
note_contradiction (TmPinResult *out, const TmPin *one, const TmPin *other)
{
  out->contradiction = TRUE;
  out->contradicting[0] = one;
  out->contradicting[1] = other;
}

/* A pin that went and is certainly no smaller than one that did not; or one pin that did both. */
static void
find_contradiction (const GArray *groups, gint64 clearance, TmPinResult *out)
{
  if (out->has_low && out->has_high && out->low >= out->high)
    {
      note_contradiction (out, out->low_pin, out->high_pin);
      return;
    }
  for (guint i = 0; i < groups->len && clearance == 0; i++)
    {
      const Group *group = &g_array_index (groups, Group, i);

      if (group->went != NULL && group->stopped != NULL)
        note_contradiction (out, group->went, group->stopped);
    }
}

/* How far the proven part reaches beyond a limit; -1 where nothing is proven. */
static gint64
find_open (gboolean has_limit, gboolean has_bound, gint64 beyond)
{
  if (!has_limit)
    return 0;
  return has_bound ? MAX (beyond, 0) : -1;
}

static void
compare_with_limits (const TmLimits *limits, TmPinResult *out)
{
  out->open_below = find_open (limits->has_lower, out->has_low, limits->lower - out->low);
  out->open_above = find_open (limits->has_upper, out->has_high, out->high - limits->upper);
  out->proves_band = (limits->has_lower || limits->has_upper) && out->open_below == 0 && out->open_above == 0
                     && !out->contradiction;
}

/* -------- The estimate -------- */

static double
get_distance (gint64 count, gint64 reference)
{
  return (double)((TmWide)count - reference);
}

static int
compare_lows (gconstpointer a, gconstpointer b)
{
  const Group *one = a, *other = b;

  return compare_counts (other->low, one->low);
}

static int
compare_highs (gconstpointer a, gconstpointer b)
{
  const Group *one = a, *other = b;

  return compare_counts (one->high, other->high);
}

/* The pins that bind: those that went from the largest down, the others from the smallest up. */
static guint
choose_factors (GArray *groups, gint64 reference, TmPinFactor *factors)
{
  guint n = 0, n_went = 0, n_stopped = 0;

  g_array_sort (groups, compare_lows);
  for (guint i = 0; i < groups->len && n_went < MOST_FACTORS; i++)
    {
      const Group *group = &g_array_index (groups, Group, i);

      if (group->went == NULL)
        continue;
      n_went++;
      factors[n++] = (TmPinFactor) { get_distance (group->low, reference),
                                     get_distance (group->high, reference), TRUE, group->stopped != NULL };
    }
  g_array_sort (groups, compare_highs);
  for (guint i = 0; i < groups->len && n_stopped < MOST_FACTORS; i++)
    {
      const Group *group = &g_array_index (groups, Group, i);

      if (group->stopped == NULL || group->went != NULL)
        continue;
      n_stopped++;
      factors[n++] = (TmPinFactor) { get_distance (group->low, reference),
                                     get_distance (group->high, reference), FALSE, TRUE };
    }
  return n;
}

/* Even with the form that explains it best, the readings leave the pins no room. */
static gboolean
is_far_outside (const TmPinDensity *density)
{
  return density->has_size
         && (tm_t_below ((density->size - density->from) / density->u, density->dof) < FAR_OUTSIDE
             || tm_t_below ((density->to - density->size + density->form) / density->u, density->dof)
                    < FAR_OUTSIDE);
}

static void
start_density (const TmPinResult *out, const TmLimits *limits, const TmPinSizeInput *size,
               TmPinDensity *density)
{
  density->from = out->has_low ? get_distance (out->low, out->reference) : -INFINITY;
  density->to = out->has_high ? get_distance (out->high, out->reference) : INFINITY;
  density->lower = limits->has_lower ? get_distance (limits->lower, out->reference) : -INFINITY;
  density->upper = limits->has_upper ? get_distance (limits->upper, out->reference) : INFINITY;
  density->dof = INFINITY;
  if (size == NULL || !size->given || !isfinite (size->size) || isnan (size->u))
    return;
  density->has_size = TRUE;
  density->size = size->size + get_distance (size->reference, out->reference);
  density->u = MAX (size->u, 1);
  density->dof = isnan (size->dof) ? INFINITY : size->dof;
  density->form = MAX (size->form, 0);
}

static void
find_estimate (GArray *groups, gint64 clearance, const TmLimits *limits, const TmPinSizeInput *size,
               TmPinResult *out)
{
  TmPinFactor factors[2 * MOST_FACTORS];
  TmPinDensity density = { .factors = factors, .clearance = (double)clearance };
  TmPinSummary summary;

  out->reference = out->has_low ? out->low : out->has_high ? out->high : size ? size->reference : 0;
  start_density (out, limits, size, &density);
  if (!density.has_size && !(out->has_low && out->has_high))
    return;
  if (is_far_outside (&density))
    {
      gboolean below = density.size < density.from;

      note_contradiction (out, below ? out->low_pin : out->high_pin, NULL);
      return;
    }
  density.n = choose_factors (groups, out->reference, factors);
  out->has_estimate = tm_pin_density_summarise (&density, &summary);
  if (!out->has_estimate)
    return;
  out->estimate = summary.mean;
  out->u = summary.sd;
  out->low95 = summary.low95;
  out->high95 = summary.high95;
  if (limits->has_lower || limits->has_upper)
    {
      out->probability_in = summary.inside;
      out->probability_below = summary.below;
      out->probability_above = summary.above;
    }
}

void
tm_pins_judge (const TmPin *pins, guint n, const TmLimits *limits, gint64 clearance,
               const TmPinSizeInput *size, TmPinResult *out)
{
  g_autoptr (GArray) groups = NULL;

  g_return_if_fail (limits != NULL && out != NULL && clearance >= 0);
  clearance = MIN (clearance, TM_PIN_CLEARANCE_MOST);
  groups = group_pins (pins, n);
  *out = (TmPinResult) { .n_pins = n,
                         .estimate = NAN,
                         .u = NAN,
                         .low95 = NAN,
                         .high95 = NAN,
                         .probability_in = NAN,
                         .probability_below = NAN,
                         .probability_above = NAN };
  find_bounds (groups, clearance, out);
  find_contradiction (groups, clearance, out);
  if (!out->contradiction)
    find_estimate (groups, clearance, limits, size, out);
  compare_with_limits (limits, out);
}
