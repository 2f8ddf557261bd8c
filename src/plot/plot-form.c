/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-form: what the section and the clock view have in common: their scale, their sizes, their words.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-label.h"
#include "plot-range.h"
#include "plot-section-private.h"
#include "plot-size.h"

/* Widens the axis so that differences are enlarged by a whole, round number. */
static void
round_scale (TmFormScale *scale, double reference, double share)
{
  const double span = scale->axis.high - scale->axis.low;
  const double middle = (scale->axis.high + scale->axis.low) / 2;

  scale->enlarged = reference > 0 ? tm_round_enlargement (share * reference / span) : 0;
  if (scale->enlarged > 0)
    {
      const double half = share * reference / scale->enlarged / 2;
      scale->axis = tm_axis_new (middle - half, middle + half, scale->unit);
    }
}

void
tm_form_scale_init (TmFormScale *scale, const TmJudgement *judgement, double low, double high,
                    double reference, double share)
{
  const TmFeature *feature = judgement->feature;
  const guint decimals = MAX (feature->lower.decimals, feature->upper.decimals);
  TmRange range = {
    .limits = judgement->limits,
    .guard = (double)judgement->guard,
    .decimals = decimals,
    .unit = feature->unit,
    .data_low = low,
    .data_high = high,
    .mate_low = NAN,
    .mate_high = NAN,
  };

  *scale = (TmFormScale) { .unit = feature->unit, .limits = judgement->limits };
  scale->title = tm_feature_title (feature);
  scale->outside = tm_feature_cut (feature) == TM_CUT_SHRINKS;
  scale->lower_text = tm_limit_text (scale->limits.has_lower, scale->limits.lower, &feature->lower,
                                     feature->unit, decimals);
  scale->upper_text = tm_limit_text (scale->limits.has_upper, scale->limits.upper, &feature->upper,
                                     feature->unit, decimals);
  tm_range_choose (&range, &scale->axis);
  round_scale (scale, reference, share);
}

void
tm_form_scale_clear (TmFormScale *scale)
{
  g_clear_pointer (&scale->title, g_free);
  g_clear_pointer (&scale->lower_text, g_free);
  g_clear_pointer (&scale->upper_text, g_free);
}

TmFormSize
tm_form_size (const TmJob *job, const TmJudgement *judgement, guint index)
{
  const TmFeature *feature = judgement->feature;
  const TmLocalSize *local = &judgement->sizes.stations[index];
  const TmSizeMark mark = tm_station_mark (job, judgement, index);

  return (TmFormSize) {
    .at = (double)local->sum / (double)MAX (1, local->n),
    .uncertainty = mark.uncertainty,
    .verdict = mark.verdict,
    .number = tm_station_number (judgement, index, MAX (feature->lower.decimals, feature->upper.decimals)),
  };
}

void
tm_form_size_clear (TmFormSize *size)
{
  g_clear_pointer (&size->number, g_free);
}

void
tm_form_size_stretch (const TmFormSize *size, double *low, double *high)
{
  const double reach = isfinite (size->uncertainty) ? size->uncertainty : 0.0;

  tm_range_stretch (low, high, size->at - reach);
  tm_range_stretch (low, high, size->at + reach);
}

/* -------- Where sizes were read -------- */

/* Where a depth stands among the others, from mouth to bottom. */
static int
rank_depth (TmDepthKind depth)
{
  switch (depth)
    {
    case TM_DEPTH_MOUTH:
      return 1;
    case TM_DEPTH_LENGTH:
      return 2;
    case TM_DEPTH_MIDDLE:
      return 3;
    case TM_DEPTH_BOTTOM:
      return 4;
    case TM_DEPTH_NONE:
    default:
      return 0;
    }
}

int
tm_form_compare_depths (const TmStation *one, const TmStation *other)
{
  if (one->depth != other->depth)
    return rank_depth (one->depth) - rank_depth (other->depth);
  return (one->at.count > other->at.count) - (one->at.count < other->at.count);
}

static int
compare_spots_cb (gconstpointer a, gconstpointer b)
{
  const TmFormSpot *one = a, *other = b;
  const int depths = tm_form_compare_depths (&one->station, &other->station);

  return depths != 0 ? depths : (int)(one->index > other->index) - (int)(one->index < other->index);
}

GArray *
tm_form_spots (const TmJudgement *judgement, TmSpotNeed need)
{
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (TmFormSpot));

  for (guint i = 0; i < judgement->sizes.n_stations; i++)
    {
      TmFormSpot spot = { .index = i };

      if (tm_station_read (judgement->sizes.stations[i].station, judgement->feature->unit, &spot.station)
          && (need == TM_SPOT_DEPTH ? spot.station.depth != TM_DEPTH_NONE : spot.station.hour > 0))
        g_array_append_val (spots, spot);
    }
  g_array_sort (spots, compare_spots_cb);
  return spots;
}

/* -------- Words -------- */

void
tm_form_describe_limits (const TmFormScale *scale, GString *out)
{
  const char *unit = tm_unit_symbol (scale->unit);

  g_string_append (out, ": ");
  if (scale->limits.has_lower && scale->limits.has_upper)
    g_string_append_printf (out, _ ("limits %s to %s %s"), scale->lower_text, scale->upper_text, unit);
  else if (scale->limits.has_upper)
    g_string_append_printf (out, _ ("at most %s %s"), scale->upper_text, unit);
  else if (scale->limits.has_lower)
    g_string_append_printf (out, _ ("at least %s %s"), scale->lower_text, unit);
  else
    g_string_append (out, _ ("no limits"));
}

void
tm_form_describe_size (const TmFormScale *scale, const TmFormSize *size, GString *out)
{
  g_string_append_printf (out, "%s %s", size->number, tm_unit_symbol (scale->unit));
  if (size->verdict != TM_VERDICT_NOT_MEASURED)
    g_string_append_printf (out, ", %s",
                            g_dpgettext2 (GETTEXT_PACKAGE, "verdict", tm_verdict_word (size->verdict)));
}

char *
tm_form_enlarged_words (const TmFormScale *scale)
{
  if (scale->enlarged == 0)
    return NULL;
  /* Translators: of a drawing whose small differences of size are enlarged so that they can be seen. */
  return g_strdup_printf (ngettext ("differences drawn %u time too large",
                                    "differences drawn %u times too large", scale->enlarged),
                          scale->enlarged);
}
