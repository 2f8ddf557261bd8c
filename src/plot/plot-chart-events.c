/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The events between the pieces of a chart.
 */

#include <glib/gi18n-lib.h>

#include "plot-chart-private.h"
#include "plot-label.h"

static void
clear_event_cb (gpointer data)
{
  g_free (((TmFrameEvent *)data)->label);
}

static int
compare_events_cb (gconstpointer a, gconstpointer b)
{
  const double first = ((const TmFrameEvent *)a)->at, second = ((const TmFrameEvent *)b)->at;

  return first < second ? -1 : first > second;
}

/* What happened between the same two pieces stands at one line. */
static gboolean
join_event (GArray *events, const TmFrameEvent *event)
{
  TmFrameEvent *last;
  char *both;

  if (events->len == 0)
    return FALSE;
  last = &g_array_index (events, TmFrameEvent, events->len - 1);
  if (last->at < event->at || last->at > event->at)
    return FALSE;
  /* Translators: two events between the same two pieces. */
  both = g_strdup_printf (_ ("%s, %s"), last->label, event->label);
  g_free (last->label);
  g_free (event->label);
  last->label = both;
  last->lesser = last->lesser && event->lesser;
  return TRUE;
}

void
tm_chart_fill_events (TmChartPlot *plot)
{
  const TmSeries *series = &plot->batch->series;
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (TmFrameEvent));

  for (guint i = 0; i < series->n_events; i++)
    {
      const TmSeriesEvent *event = &series->events[i];
      const TmFrameEvent shown = { .at = MIN (event->before, series->n_points),
                                   .label = tm_event_label (event->event),
                                   .lesser = !event->resets };

      g_array_append_val (all, shown);
    }
  g_array_set_clear_func (plot->events, clear_event_cb);
  g_array_sort (all, compare_events_cb);
  for (guint i = 0; i < all->len; i++)
    {
      const TmFrameEvent *event = &g_array_index (all, TmFrameEvent, i);

      if (!join_event (plot->events, event))
        g_array_append_val (plot->events, *event);
    }
}
