/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-paired.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-mark.h"
#include "plot-study.h"

struct _TmPairedPlot {
  guint n;
  double *means, *differences;
  TmPaired paired;
  TmUnit unit;
  double low_mean, high_mean; /* shown */
  double reach;               /* of the differences, either side of their mean */
};

typedef struct {
  TmPen pen;
  const TmPairedPlot *plot;
  double width, height;
  double left, right, top, bottom;
} Drawing;

TmPairedPlot *
tm_paired_plot_new (const double *a, const double *b, guint n, const TmPaired *paired, TmUnit unit)
{
  TmPairedPlot *plot = g_new0 (TmPairedPlot, 1);

  plot->n = n;
  plot->means = g_new (double, MAX (1, n));
  plot->differences = g_new (double, MAX (1, n));
  plot->paired = *paired;
  plot->unit = unit;
  plot->low_mean = INFINITY;
  plot->high_mean = -INFINITY;
  plot->reach = MAX (paired->agree_high - paired->mean, fabs (paired->mean));
  for (guint i = 0; i < n; i++)
    {
      plot->means[i] = a[i] + (b[i] - a[i]) / 2;
      plot->differences[i] = a[i] - b[i];
      plot->low_mean = MIN (plot->low_mean, plot->means[i]);
      plot->high_mean = MAX (plot->high_mean, plot->means[i]);
      plot->reach = MAX (plot->reach, fabs (plot->differences[i] - paired->mean));
    }
  return plot;
}

void
tm_paired_plot_free (TmPairedPlot *plot)
{
  if (plot == NULL)
    return;
  g_free (plot->means);
  g_free (plot->differences);
  g_free (plot);
}

static guint
count_outside (const TmPairedPlot *plot)
{
  guint n = 0;

  for (guint i = 0; i < plot->n; i++)
    n += plot->differences[i] < plot->paired.agree_low || plot->differences[i] > plot->paired.agree_high;
  return n;
}

char *
tm_paired_plot_describe (const TmPairedPlot *plot)
{
  g_autofree char *mean = NULL, *low = NULL, *high = NULL;

  g_return_val_if_fail (plot != NULL, NULL);
  mean = tm_study_number (plot->paired.mean, plot->unit);
  low = tm_study_number (plot->paired.agree_low, plot->unit);
  high = tm_study_number (plot->paired.agree_high, plot->unit);
  return g_strdup_printf (
      ngettext ("Difference of %u pair against its mean, in %s: mean difference %s, limits of "
                "agreement %s and %s, %u outside them.",
                "Differences of %u pairs against their mean, in %s: mean difference %s, limits "
                "of agreement %s and %s, %u outside them.",
                plot->n),
      plot->n, tm_unit_symbol (plot->unit), mean, low, high, count_outside (plot));
}

static void
draw_line (const Drawing *d, double y, double width, const TmColour *colour, gboolean dashed)
{
  const double dash[] = { 5.0, 4.0 };

  cairo_new_path (d->pen.cr);
  cairo_move_to (d->pen.cr, d->left, y);
  cairo_line_to (d->pen.cr, d->right, y);
  cairo_set_line_width (d->pen.cr, width);
  cairo_set_dash (d->pen.cr, dash, dashed ? 2 : 0, 0.0);
  tm_pen_colour (&d->pen, colour, 1.0);
  cairo_stroke (d->pen.cr);
  cairo_set_dash (d->pen.cr, NULL, 0, 0.0);
}

static double
find_y (const Drawing *d, double difference)
{
  const double reach = d->plot->reach > 0 ? d->plot->reach * 1.15 : 1.0;

  return (d->top + d->bottom) / 2.0
         - (difference - d->plot->paired.mean) / reach * (d->bottom - d->top) / 2.0;
}

static double
find_x (const Drawing *d, double mean)
{
  const double span = d->plot->high_mean - d->plot->low_mean;
  const double fraction = span > 0 ? (mean - d->plot->low_mean) / span : 0.5;

  return d->left + (0.04 + 0.92 * fraction) * (d->right - d->left);
}

static void
draw_level (Drawing *d, const char *label, double difference, gboolean dashed)
{
  const TmTextStyle style = { .align = TM_ALIGN_RIGHT, .max_width = d->left - d->pen.size };
  const double y = find_y (d, difference);
  g_autofree char *number = tm_study_number (difference, d->plot->unit);
  g_autofree char *text = g_strdup_printf ("%s %s", label, number);

  draw_line (d, y, dashed ? 1.4 : 2.0, &d->pen.theme->text, dashed);
  if (d->left > d->pen.size * 3.0)
    tm_text_draw (&d->pen, text, d->left - d->pen.size * 0.6, y, &style);
}

static void
draw_zero (Drawing *d)
{
  const TmTextStyle style = { .dim = TRUE, .align = TM_ALIGN_LEFT };
  const double y = find_y (d, 0.0);

  if (y < d->top || y > d->bottom)
    return;
  draw_line (d, y, 1.0, &d->pen.theme->dim, FALSE);
  if (d->width - d->right > d->pen.size)
    tm_text_draw (&d->pen, "0", d->right + d->pen.size * 0.3, y, &style);
}

static void
draw_words (Drawing *d)
{
  const TmTextStyle heading = { .dim = TRUE }, foot = { .dim = TRUE, .scale = 0.95 };
  const TmTextStyle foot_right = { .dim = TRUE, .scale = 0.95, .align = TM_ALIGN_RIGHT };
  g_autofree char *low
      = tm_count_format (tm_count_from_double (d->plot->low_mean, d->plot->unit), d->plot->unit, 4);
  g_autofree char *high
      = tm_count_format (tm_count_from_double (d->plot->high_mean, d->plot->unit), d->plot->unit, 4);
  g_autofree char *title
      = g_strdup_printf (_ ("difference against mean size, %s"), tm_unit_symbol (d->plot->unit));

  if (d->height < d->pen.line * 8.0)
    return;
  tm_text_draw_within (&d->pen, title, d->left, d->top - d->pen.line * 0.6, 0.0, d->width, &heading, NULL);
  tm_text_draw (&d->pen, low, find_x (d, d->plot->low_mean), d->bottom + d->pen.line * 0.7, &foot);
  if (d->plot->high_mean > d->plot->low_mean)
    tm_text_draw (&d->pen, high, find_x (d, d->plot->high_mean), d->bottom + d->pen.line * 0.7, &foot_right);
}

static void
place (Drawing *d)
{
  const TmTextStyle plain = { 0 };
  const double padding = MIN (d->pen.size, d->width / 10.0);
  const gboolean tall = d->height >= d->pen.line * 8.0;
  const double label = MAX (tm_text_width (&d->pen, _ ("agree above"), &plain),
                            MAX (tm_text_width (&d->pen, _ ("agree below"), &plain),
                                 tm_text_width (&d->pen, _ ("mean"), &plain)))
                       + tm_text_width (&d->pen, " −0.00000", &plain);

  d->left = d->width >= d->pen.size * 20.0 ? padding * 2.0 + MIN (label, d->width * 0.35) : padding;
  d->right = d->width - padding * (d->width >= d->pen.size * 20.0 ? 1.6 : 1.0);
  d->top = padding * 0.6 + (tall ? d->pen.line : 0.0);
  d->bottom = d->height - padding * 0.6 - (tall ? d->pen.line : 0.0);
}

static void
draw_all (Drawing *d)
{
  const TmPaired *paired = &d->plot->paired;

  draw_zero (d);
  draw_level (d, _ ("agree above"), paired->agree_high, TRUE);
  draw_level (d, _ ("mean"), paired->mean, FALSE);
  draw_level (d, _ ("agree below"), paired->agree_low, TRUE);
  for (guint i = 0; i < d->plot->n; i++)
    tm_mark_draw (&d->pen, find_x (d, d->plot->means[i]), find_y (d, d->plot->differences[i]),
                  d->pen.size * 0.3, TM_VERDICT_IN, TM_POINT_NONE);
  draw_words (d);
}

void
tm_paired_plot_draw (const TmPairedPlot *plot, cairo_t *cr, double width, double height, const TmTheme *theme)
{
  Drawing d = { .plot = plot, .width = width, .height = height };

  g_return_if_fail (plot != NULL && cr != NULL && theme != NULL);
  if (!(width >= 8.0) || !(height >= 8.0) || !isfinite (width) || !isfinite (height))
    return;
  cairo_save (cr);
  cairo_rectangle (cr, 0.0, 0.0, width, height);
  cairo_clip (cr);
  tm_pen_init (&d.pen, cr, theme);
  place (&d);
  if (plot->n > 0)
    draw_all (&d);
  tm_pen_clear (&d.pen);
  cairo_restore (cr);
}
