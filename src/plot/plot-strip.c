/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <math.h>

#include "plot-axis.h"
#include "plot-band.h"
#include "plot-mark.h"

/* Of the strip's width: where the band begins and ends. */
#define BAND_FROM 0.12
#define BAND_TO   0.88

typedef struct {
  TmPen pen;
  const TmJudgement *judgement;
  TmLimits limits;
  TmAxis axis;
  double width, height, radius;
  double bar_top, bar_height;
} Strip;

static double
find_mean (const TmLocalSize *size)
{
  return size->n > 0 ? (double)size->sum / (double)size->n : NAN;
}

/* With one limit the strip reaches as far inside it as the reading lies from it, and more. */
static double
find_open_span (const TmJudgement *judgement, double limit)
{
  const TmSizes *sizes = &judgement->sizes;
  double span = MAX (1.0, 6.0 * (double)judgement->guard);

  if (sizes->n_stations > 0)
    span = MAX (span, 1.6 * fabs (find_mean (&sizes->stations[judgement->deciding]) - limit));
  return span;
}

/* Maps the band to its part of the strip.  FALSE when there are no limits. */
static gboolean
choose_axis (Strip *strip)
{
  const TmLimits limits = strip->limits;
  double low, high, margin;

  if (!limits.has_lower && !limits.has_upper)
    return FALSE;
  low = limits.has_lower ? (double)limits.lower : 0.0;
  high = limits.has_upper ? (double)limits.upper : 0.0;
  if (!limits.has_lower && !limits.zero_bounded)
    low = high - find_open_span (strip->judgement, high);
  if (!limits.has_upper)
    high = low + find_open_span (strip->judgement, low);
  margin = (high - low) * BAND_FROM / (BAND_TO - BAND_FROM);
  strip->axis = tm_axis_new (low - margin, high + margin, strip->judgement->feature->unit);
  return TRUE;
}

static void
fill_bar (const Strip *strip, double from, double to, const TmColour *colour, double opacity)
{
  cairo_new_path (strip->pen.cr);
  cairo_rectangle (strip->pen.cr, from * strip->width, strip->bar_top, (to - from) * strip->width,
                   strip->bar_height);
  tm_pen_colour (&strip->pen, colour, opacity);
  cairo_fill (strip->pen.cr);
}

static void
draw_bar (const Strip *strip, gboolean banded)
{
  const TmLimits *limits = &strip->limits;
  const double guard = (double)strip->judgement->guard / (strip->axis.high - strip->axis.low);
  const double from = limits->has_lower || limits->zero_bounded || !limits->has_upper ? BAND_FROM : 0.0;
  const double to = limits->has_upper || !limits->has_lower ? BAND_TO : 1.0;
  const double inner_from = from + (limits->has_lower && !limits->zero_bounded ? guard : 0.0);
  const double inner_to = to - (limits->has_upper ? guard : 0.0);

  cairo_save (strip->pen.cr);
  fill_bar (strip, 0.0, 1.0, &strip->pen.theme->dim, 0.28);
  if (banded)
    {
      fill_bar (strip, from, to, &strip->pen.theme->band, 0.7);
      if (inner_to > inner_from)
        fill_bar (strip, inner_from, inner_to, &strip->pen.theme->in, 0.28);
    }
  cairo_restore (strip->pen.cr);
}

static double
find_x (const Strip *strip, double count)
{
  const double fraction = CLAMP (tm_axis_fraction (&strip->axis, count), 0.0, 1.0);

  return CLAMP (fraction * strip->width, strip->radius * 1.2,
                MAX (strip->radius * 1.2, strip->width - strip->radius * 1.2));
}

static TmPoint
choose_point (const Strip *strip, double at)
{
  const TmLimits *limits = &strip->limits;

  return limits->has_lower && at < (double)limits->lower ? TM_POINT_LEFT : TM_POINT_RIGHT;
}

/* A line from the smallest to the largest reading, and the mark of the one that decides. */
static void
draw_readings (const Strip *strip)
{
  const TmSizes *sizes = &strip->judgement->sizes;
  const double at = find_mean (&sizes->stations[strip->judgement->deciding]);
  const double from = find_mean (&sizes->stations[sizes->smallest]);
  const double to = find_mean (&sizes->stations[sizes->largest]);
  const double y = strip->height / 2.0;
  const TmColour *colour = tm_mark_colour (strip->pen.theme, strip->judgement->verdict);

  if (!isfinite (at))
    return;
  if (to > from)
    {
      cairo_new_path (strip->pen.cr);
      cairo_move_to (strip->pen.cr, find_x (strip, from), y);
      cairo_line_to (strip->pen.cr, find_x (strip, to), y);
      cairo_set_line_width (strip->pen.cr, 2.0);
      tm_pen_colour (&strip->pen, colour, 1.0);
      cairo_stroke (strip->pen.cr);
    }
  tm_mark_draw (&strip->pen, find_x (strip, at), y, strip->radius, strip->judgement->verdict,
                choose_point (strip, at));
}

void
tm_band_strip_draw (const TmJudgement *judgement, cairo_t *cr, double width, double height,
                    const TmTheme *theme)
{
  Strip strip = { .judgement = judgement, .width = width, .height = height };
  gboolean banded;

  g_return_if_fail (judgement != NULL && judgement->feature != NULL && cr != NULL && theme != NULL);
  if (!(width >= 4.0) || !(height >= 2.0) || !isfinite (width) || !isfinite (height))
    return;
  strip.limits = judgement->limits;
  if (!strip.limits.has_lower && !strip.limits.has_upper)
    strip.limits = tm_feature_limits (judgement->feature);
  strip.radius = MIN (5.0, height / 2.4);
  strip.bar_height = MIN (5.0, height);
  strip.bar_top = (height - strip.bar_height) / 2.0;
  /* No words: only the context and the theme of the pen are used. */
  strip.pen = (TmPen) { .cr = cr, .theme = theme };
  cairo_save (cr);
  banded = choose_axis (&strip);
  draw_bar (&strip, banded);
  if (tm_kind_is_attribute (judgement->feature->kind))
    {
      if (judgement->verdict != TM_VERDICT_NOT_MEASURED)
        tm_mark_draw (&strip.pen, width / 2.0, height / 2.0, strip.radius, judgement->verdict, TM_POINT_NONE);
    }
  else if (judgement->sizes.n_stations > 0 && banded)
    draw_readings (&strip);
  cairo_restore (cr);
}
