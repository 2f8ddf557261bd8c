/* SPDX-License-Identifier: GPL-3.0-or-later */

#include <glib/gi18n-lib.h>
#include <math.h>

#include "plot-band-private.h"
#include "plot-clearance.h"

/* Hole minus shaft at its least and most; negative: press.  Exact counts. */
typedef struct {
  gint64 least, most;
  gboolean has_least, has_most;
  guint decimals; /* to print with */
} Clearance;

/* TRUE when the feature is the hole, FALSE in @known when neither says. */
static gboolean
is_hole (const TmFeature *feature, gboolean *known)
{
  const TmCut cut = tm_feature_cut (feature);

  *known = TRUE;
  if (feature->kind == TM_KIND_BORE || feature->mate.kind == TM_KIND_SHAFT)
    return TRUE;
  if (feature->kind == TM_KIND_SHAFT || feature->mate.kind == TM_KIND_BORE)
    return FALSE;
  *known = cut != TM_CUT_UNKNOWN;
  return cut == TM_CUT_GROWS;
}

static char *
describe_clearance (const TmBandPlot *plot, const Clearance *clearance)
{
  return tm_clearance_words (clearance->has_least, clearance->least, clearance->has_most, clearance->most,
                             plot->unit, clearance->decimals);
}

/* The fit of sizes @low…@high of the feature with the limits of its mate. */
static Clearance
find_clearance (const TmFeature *feature, gboolean hole, gboolean has_low, gint64 low, gboolean has_high,
                gint64 high)
{
  const TmMate *mate = &feature->mate;
  Clearance clearance = { 0 };

  clearance.decimals = MAX (mate->lower.decimals, mate->upper.decimals);
  clearance.decimals = MAX (clearance.decimals, MAX (feature->lower.decimals, feature->upper.decimals));
  if (hole)
    {
      clearance.has_least = has_low && mate->upper.given;
      clearance.has_most = has_high && mate->lower.given;
      clearance.least = clearance.has_least ? low - mate->upper.count : 0;
      clearance.most = clearance.has_most ? high - mate->lower.count : 0;
    }
  else
    {
      clearance.has_least = has_high && mate->lower.given;
      clearance.has_most = has_low && mate->upper.given;
      clearance.least = clearance.has_least ? mate->lower.count - high : 0;
      clearance.most = clearance.has_most ? mate->upper.count - low : 0;
    }
  return clearance;
}

static gint64
round_mean (const TmLocalSize *size)
{
  return (gint64)(size->sum / (TmWide)MAX (1, size->n));
}

/* The fit by limits and, once there are sizes, as measured: smallest with largest. */
static void
describe_fit (TmBandPlot *plot, const TmFeature *feature, const TmJudgement *judgement)
{
  const TmSizes *sizes = &judgement->sizes;
  const TmLimits *limits = &plot->limits;
  g_autofree char *by_limits = NULL, *measured = NULL;
  gboolean known;
  const gboolean hole = is_hole (feature, &known);
  Clearance clearance;

  if (!known)
    return;
  clearance
      = find_clearance (feature, hole, limits->has_lower, limits->lower, limits->has_upper, limits->upper);
  by_limits = describe_clearance (plot, &clearance);
  if (*by_limits != '\0')
    plot->fit_by_limits = g_strdup_printf (_ ("%s by limits"), by_limits);
  if (sizes->n_stations == 0)
    return;
  clearance = find_clearance (feature, hole, TRUE, round_mean (&sizes->stations[sizes->smallest]), TRUE,
                              round_mean (&sizes->stations[sizes->largest]));
  measured = describe_clearance (plot, &clearance);
  if (*measured != '\0')
    plot->fit_measured = g_strdup_printf (_ ("%s as measured"), measured);
}

void
tm_band_plot_add_mate (TmBandPlot *plot, const TmFeature *feature, const TmJudgement *judgement)
{
  const TmMate *mate = &feature->mate;
  g_autofree char *lower = NULL, *upper = NULL;

  plot->has_mate = mate->given && !plot->attribute && (mate->lower.given || mate->upper.given);
  if (!plot->has_mate)
    return;
  lower = tm_quantity_format_in (&mate->lower, plot->unit);
  upper = tm_quantity_format_in (&mate->upper, plot->unit);
  plot->mate_has_lower = mate->lower.given;
  plot->mate_has_upper = mate->upper.given;
  plot->mate_lower = mate->lower.given ? (double)mate->lower.count : -INFINITY;
  plot->mate_upper = mate->upper.given ? (double)mate->upper.count : INFINITY;
  plot->mate_text = g_strdup_printf ("%s … %s", lower, upper);
  describe_fit (plot, feature, judgement);
}
