/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-grid.h"

#include <math.h>

#include "plot-mark.h"

#define EMPTY_TINT 0.07 /* of the dim colour */
#define DUE_TINT   0.28
#define PLAIN_USED 0.34 /* in, and no share to tell: pass, or one limit */

/* Of the blue, for nothing used and for all of it.  A piece in the very middle is measured too, and has to
 * show: the least differs from the page by a contrast of 1.3.  On the most, words can still be read: 4.5.
 * The blue is a dark one, so that it takes more of it on a dark page. */
typedef struct {
  double least, most;
} Tints;

static Tints
find_tints (const TmTheme *theme)
{
  return theme->dark ? (Tints) { 0.38, 0.94 } : (Tints) { 0.22, 0.72 };
}

static void
set_mixed (cairo_t *cr, const TmColour *over, const TmColour *under, double share)
{
  cairo_set_source_rgb (cr, under->red + (over->red - under->red) * share,
                        under->green + (over->green - under->green) * share,
                        under->blue + (over->blue - under->blue) * share);
}

/* A rectangle with its corners cut by steps of whole pixels: many times cheaper than arcs, and no different
 * to the eye at this size. */
static void
trace_cell (cairo_t *cr, double x, double y, double width, double height)
{
  if (width < 10.0 || height < 10.0)
    {
      cairo_rectangle (cr, x, y, width, height);
      return;
    }
  cairo_rectangle (cr, x + 3.0, y, width - 6.0, 1.0);
  cairo_rectangle (cr, x + 1.0, y + 1.0, width - 2.0, 2.0);
  cairo_rectangle (cr, x, y + 3.0, width, height - 6.0);
  cairo_rectangle (cr, x + 1.0, y + height - 3.0, width - 2.0, 2.0);
  cairo_rectangle (cr, x + 3.0, y + height - 1.0, width - 6.0, 1.0);
}

static void
fill_cell (cairo_t *cr, double x, double y, double width, double height)
{
  trace_cell (cr, x, y, width, height);
  cairo_fill (cr);
}

static void
draw_in (const TmGridCell *cell, cairo_t *cr, double x, double y, double width, double height,
         const TmTheme *theme)
{
  const double used = isfinite (cell->used) ? CLAMP ((double)cell->used, 0.0, 1.0) : PLAIN_USED;
  const Tints tints = find_tints (theme);

  set_mixed (cr, &theme->in, &theme->surface, tints.least + (tints.most - tints.least) * used);
  fill_cell (cr, x, y, width, height);
}

#define TILE 8 /* pixels from one bar of the hatch to the next */

static guint32
mix_pixel (const TmColour *over, const TmColour *under, double share)
{
  const double red = under->red + (over->red - under->red) * share;
  const double green = under->green + (over->green - under->green) * share;
  const double blue = under->blue + (over->blue - under->blue) * share;

  return 0xff000000u | (guint32)lround (red * 255.0) << 16 | (guint32)lround (green * 255.0) << 8
         | (guint32)lround (blue * 255.0);
}

/* Slanted bars on half of their colour, as a tile that repeats: one painting a cell, where lines would take
 * ten times as long. */
static void
fill_tile (guint32 *pixels, const TmTheme *theme)
{
  static const double shares[TILE] = { 0.5, 0.62, 0.95, 1.0, 0.95, 0.62, 0.5, 0.5 };
  guint32 mixed[TILE];

  for (guint i = 0; i < TILE; i++)
    mixed[i] = mix_pixel (&theme->close, &theme->surface, shares[i]);
  for (guint y = 0; y < TILE; y++)
    for (guint x = 0; x < TILE; x++)
      pixels[y * TILE + x] = mixed[(x + y) % TILE];
}

static void
draw_close (cairo_t *cr, double x, double y, double width, double height, const TmTheme *theme)
{
  guint32 pixels[TILE * TILE];
  cairo_surface_t *tile;

  set_mixed (cr, &theme->close, &theme->surface, 0.5);
  fill_cell (cr, x, y, width, height);
  if (width < 6.0 || height < 6.0)
    return;
  fill_tile (pixels, theme);
  tile = cairo_image_surface_create_for_data ((unsigned char *)pixels, CAIRO_FORMAT_RGB24, TILE, TILE,
                                              TILE * (int)sizeof (guint32));
  cairo_set_source_surface (cr, tile, floor (x), floor (y));
  cairo_pattern_set_extend (cairo_get_source (cr), CAIRO_EXTEND_REPEAT);
  cairo_rectangle (cr, x + 2.0, y + 2.0, width - 4.0, height - 4.0);
  cairo_fill (cr);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  cairo_surface_finish (tile); /* whoever replays the drawing later has a copy from here on */
  cairo_surface_destroy (tile);
}

static void
trace_arrow (cairo_t *cr, double x, double y, double size, TmPoint point)
{
  const double way = point == TM_POINT_LEFT ? -1.0 : 1.0;

  cairo_move_to (cr, x + way * size, y);
  cairo_line_to (cr, x - way * size * 0.8, y - size);
  cairo_line_to (cr, x - way * size * 0.8, y + size);
  cairo_close_path (cr);
}

static void
trace_diamond (cairo_t *cr, double x, double y, double size)
{
  cairo_move_to (cr, x, y - size * 1.1);
  cairo_line_to (cr, x + size * 1.1, y);
  cairo_line_to (cr, x, y + size * 1.1);
  cairo_line_to (cr, x - size * 1.1, y);
  cairo_close_path (cr);
}

static void
draw_out (const TmGridCell *cell, cairo_t *cr, double x, double y, double width, double height,
          const TmTheme *theme)
{
  const double size = MIN (width, height) * 0.22;

  set_mixed (cr, &theme->out, &theme->surface, 1.0);
  fill_cell (cr, x, y, width, height);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  if (cell->point == TM_POINT_LEFT || cell->point == TM_POINT_RIGHT)
    trace_arrow (cr, x + width / 2.0, y + height / 2.0, size, cell->point);
  else
    trace_diamond (cr, x + width / 2.0, y + height / 2.0, size);
  cairo_fill (cr);
}

static void
draw_focus (cairo_t *cr, double x, double y, double width, double height, const TmTheme *theme)
{
  cairo_rectangle (cr, x - 1.0, y - 1.0, width + 2.0, height + 2.0);
  cairo_set_line_width (cr, 2.0);
  set_mixed (cr, &theme->text, &theme->surface, 1.0);
  cairo_stroke (cr);
}

void
tm_grid_cell_draw (const TmGridCell *cell, cairo_t *cr, double x, double y, double width, double height,
                   gboolean focused, const TmTheme *theme)
{
  g_return_if_fail (cell != NULL && cr != NULL && theme != NULL);
  if (!(width >= 1.0) || !(height >= 1.0) || !isfinite (x) || !isfinite (y) || !isfinite (width)
      || !isfinite (height))
    return;
  cairo_new_path (cr);
  switch (cell->verdict)
    {
    case TM_VERDICT_IN:
      draw_in (cell, cr, x, y, width, height, theme);
      break;
    case TM_VERDICT_TOO_CLOSE:
      draw_close (cr, x, y, width, height, theme);
      break;
    case TM_VERDICT_OUT:
      draw_out (cell, cr, x, y, width, height, theme);
      break;
    case TM_VERDICT_NOT_MEASURED:
    default:
      set_mixed (cr, &theme->dim, &theme->surface, cell->due ? DUE_TINT : EMPTY_TINT);
      fill_cell (cr, x, y, width, height);
      break;
    }
  if (focused)
    draw_focus (cr, x, y, width, height, theme);
}

/* -------- The cell of a judgement -------- */

/* How far from the middle of the band, in half bands; of a zero-bounded feature, in bands from zero. */
static double
find_used (const TmLimits *limits, double above_lower)
{
  const double band = (double)tm_limits_band (limits);

  if (limits->zero_bounded)
    return MAX (0.0, above_lower / band);
  return fabs (above_lower / (band / 2.0) - 1.0);
}

static double
find_worst_used (const TmJudgement *judgement)
{
  const TmLimits *limits = &judgement->limits;
  const TmSizes *sizes = &judgement->sizes;
  const gint64 from = limits->zero_bounded ? 0 : limits->lower;
  double used = NAN;

  if (tm_limits_band (limits) <= 0)
    return NAN;
  if (judgement->counted != TM_COUNTED_READINGS)
    {
      if (isfinite (judgement->combined_size))
        used = find_used (limits, judgement->combined_size + (double)(judgement->combined_reference - from));
    }
  else if (sizes->n_stations > 0 && !tm_kind_is_attribute (judgement->feature->kind))
    used = MAX (find_used (limits, tm_local_size_beyond (&sizes->stations[sizes->smallest], from)),
                find_used (limits, tm_local_size_beyond (&sizes->stations[sizes->largest], from)));
  return isfinite (used) ? used : NAN;
}

/* The limit that is crossed; where pins alone say so, the larger share decides nothing: a diamond. */
static TmPoint
find_point (const TmJudgement *judgement)
{
  const TmLimits *limits = &judgement->limits;
  const TmSizes *sizes = &judgement->sizes;
  const TmLocalSize *deciding;

  if (judgement->verdict != TM_VERDICT_OUT || tm_kind_is_attribute (judgement->feature->kind))
    return TM_POINT_NONE;
  if (judgement->counted != TM_COUNTED_READINGS)
    {
      const double size = judgement->combined_size + (double)judgement->combined_reference;

      if (!isfinite (judgement->combined_size))
        return TM_POINT_NONE;
      return limits->has_lower && size < (double)limits->lower ? TM_POINT_LEFT : TM_POINT_RIGHT;
    }
  if (judgement->deciding >= sizes->n_stations)
    return TM_POINT_NONE;
  deciding = &sizes->stations[judgement->deciding];
  if (limits->has_lower && !limits->zero_bounded && tm_local_size_compare (deciding, limits->lower) < 0)
    return TM_POINT_LEFT;
  return limits->has_upper ? TM_POINT_RIGHT : TM_POINT_LEFT;
}

TmGridCell
tm_grid_cell (const TmJudgement *judgement, gboolean due)
{
  TmGridCell cell = { .used = NAN, .due = due != FALSE, .point = TM_POINT_NONE };

  g_return_val_if_fail (judgement != NULL && judgement->feature != NULL, cell);
  cell.verdict = (guint8)judgement->verdict;
  cell.side = (guint8)judgement->side;
  cell.used = (gfloat)find_worst_used (judgement);
  cell.point = (guint8)find_point (judgement);
  return cell;
}
