/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plot-band-methods: the rows of the several methods that read one station.
 */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core-combine.h"
#include "plot-band-private.h"

/* A mean and a weighted mean fall between the steps of their readings. */
static char *
print_size (const TmBandPlot *plot, double count, gboolean mean)
{
  const guint decimals = MAX (plot->decimals, plot->fineness) + (mean ? 1 : 0);

  return tm_count_format ((gint64)llround (count), plot->unit, MIN (decimals, TM_MAX_DECIMALS));
}

static TmBandRow
make_part (const TmBandPlot *plot, const char *label, double at, double expanded, gboolean mean)
{
  return (TmBandRow) {
    .label = g_strdup (label),
    .part = TRUE,
    .read = TRUE,
    .at = at,
    .uncertainty = expanded,
    .low = at - expanded,
    .high = at + expanded,
    .value = print_size (plot, at, mean),
    .repeats = 1,
    .verdict = TM_VERDICT_NOT_MEASURED,
    .point = TM_POINT_NONE,
  };
}

static void
add_method (TmBandPlot *plot, const TmCombined *combined, guint index)
{
  const TmCombinePart *part = &combined->parts[index];
  const char *label = *part->method_name != '\0' ? part->method_name : _ ("no gauge named");
  TmBandRow row
      = make_part (plot, label, (double)combined->reference + part->size, part->expanded, part->n > 1);

  row.repeats = part->n;
  row.apart = combined->disagree && (combined->apart == (int)index || combined->apart < 0);
  row.cannot = part->settles == TM_SETTLES_CANNOT;
  g_array_append_val (plot->rows, row);
}

/* What counts stands on the station's own row: all methods together, or one of them, and then the others
 * and all together stand under it. */
void
tm_band_plot_add_parts (TmBandPlot *plot, const TmJob *job, const TmJudgement *judgement, const char *station)
{
  const TmBandRow *own = &g_array_index (plot->rows, TmBandRow, plot->rows->len - 1);
  const gboolean counts_together = own->together;
  g_auto (TmCombined) combined = { 0 };

  tm_combine (job, judgement->piece, judgement->feature, judgement->place, station, &combined);
  if (combined.n_parts < 2)
    return;
  for (guint i = 0; i < combined.n_parts; i++)
    add_method (plot, &combined, i);
  if (!counts_together && !isnan (combined.u))
    {
      TmBandRow row = make_part (plot, _ ("all together"), (double)combined.reference + combined.size,
                                 combined.expanded, TRUE);
      row.together = TRUE;
      g_array_append_val (plot->rows, row);
    }
}
