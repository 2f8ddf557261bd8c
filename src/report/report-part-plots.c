/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part-plots: the band plot of each bore and shaft that was measured, several on a page.
 */

#include <glib/gi18n-lib.h>

#include "plot-band.h"
#include "report-part.h"
#include "report-words.h"

#define WIDTH  245.0 /* points */
#define ASPECT 0.52

#define LONGEST_SERIAL 30 /* letters, in a caption */
/* Of the plot's own units, so that its words are as large as a table's. */
#define SCALE 0.78

typedef struct {
  const TmJob *job;
  const TmReportLine *line;
} Picture;

/* The plot is made when it is drawn: a document of many would hold them all. */
static void
draw_cb (cairo_t *cr, double width, double height, gpointer data)
{
  const Picture *picture = data;
  g_autoptr (TmBandPlot) plot = tm_band_plot_new (picture->job, &picture->line->judgement, NULL);

  cairo_scale (cr, SCALE, SCALE);
  tm_band_plot_draw (plot, cr, width / SCALE, height / SCALE, tm_theme_paper ());
}

static char *
describe_cb (gpointer data)
{
  const Picture *picture = data;
  g_autoptr (TmBandPlot) plot = tm_band_plot_new (picture->job, &picture->line->judgement, NULL);

  return tm_band_plot_describe (plot);
}

static char *
say_caption (gconstpointer data)
{
  const TmReportLine *line = data;
  g_autofree char *feature = tm_report_feature_short_name (line->feature, line->place);
  g_autofree char *serial = tm_report_shorten (line->piece->serial, LONGEST_SERIAL);

  return g_strdup_printf (_ ("%s, piece %s: %s"), feature, serial,
                          tm_report_verdict_word (line->judgement.verdict));
}

static void
add_plot (TmParts *parts, guint index)
{
  const TmReportLine *line = g_ptr_array_index (parts->content->lines, index);
  Picture *data = g_new (Picture, 1);
  const TmReportPicture picture = {
    .draw = draw_cb, .describe = describe_cb, .data = data, .free = g_free, .width = WIDTH, .aspect = ASPECT
  };
  g_autofree char *name = tm_part_plot_name (parts, index);
  g_autofree char *caption = tm_part_both (parts, say_caption, line);

  *data = (Picture) { parts->job, line };
  tm_report_add_picture (parts->document, &picture, caption, name);
}

typedef struct {
  guint shown, all;
} Counts;

static char *
say_cut (gconstpointer data)
{
  const Counts *counts = data;

  return g_strdup_printf (_ ("Shown are the first %u places of %u."), counts->shown, counts->all);
}

void
tm_part_plots (TmParts *parts)
{
  const Counts counts = { parts->plotted->len, parts->n_plottable };

  if (counts.shown == 0)
    return;
  tm_part_section (parts, N_ ("Band plots"), "plots", FALSE);
  tm_part_say_text (
      parts,
      N_ ("Each bore's limits, the zone in which a size is proven in, and each station's reading "
          "with its uncertainty."),
      TRUE);
  if (counts.shown < counts.all)
    tm_part_say (parts, say_cut, &counts, TRUE);
  for (guint i = 0; i < parts->plotted->len; i++)
    add_plot (parts, g_array_index (parts->plotted, guint, i));
}
