/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-pull: which pins of the shop's sets to try next at the present place.
 */

#include "bench-private.h"

void
tm_bench_pin_plan (const TmBench *bench, TmPinPlan *out)
{
  g_return_if_fail (bench != NULL && out != NULL);

  tm_bench_refresh (bench);
  *out = (TmPinPlan) { .has_go = FALSE };
  if (bench->spot.feature != NULL && tm_feature_takes_pins (bench->spot.feature))
    tm_pins_to_pull (bench->job, bench->spot.feature, out);
}

/* The trial of this pin of this set at the present place that counts; NULL: none. */
static const TmPinTrial *
find_trial (const TmBench *bench, gint64 size, const TmGauge *set)
{
  const TmSpot *spot = &bench->spot;
  const GPtrArray *trials = tm_job_pin_trials_at (bench->job, spot->piece, spot->feature, spot->place);

  for (guint i = 0; trials != NULL && i < trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (trials, i);

      if (tm_row_counts (&trial->row) && trial->size.count == size && g_str_equal (trial->gauge, set->tag))
        return trial;
    }
  return NULL;
}

TmNextPin
tm_bench_plan_next (const TmBench *bench, const TmPinPlan *plan)
{
  TmNextPin none = { .given = FALSE };
  const TmPinTrial *go;

  g_return_val_if_fail (bench != NULL && plan != NULL, none);

  if (bench->spot.piece == NULL || bench->spot.feature == NULL)
    return none;
  go = plan->has_go ? find_trial (bench, plan->go_size, plan->go_set) : NULL;
  if (plan->has_go && go == NULL)
    return (TmNextPin) { TRUE, plan->go_size, plan->go_set, TRUE };
  /* Where the smaller pin did not go, a larger one says nothing. */
  if (plan->has_nogo && (go == NULL || go->went)
      && find_trial (bench, plan->nogo_size, plan->nogo_set) == NULL)
    return (TmNextPin) { TRUE, plan->nogo_size, plan->nogo_set, FALSE };
  return none;
}

TmNextPin
tm_bench_next_pin (const TmBench *bench)
{
  TmPinPlan plan;

  tm_bench_pin_plan (bench, &plan);
  return tm_bench_plan_next (bench, &plan);
}

char *
tm_bench_next_pin_text (const TmBench *bench)
{
  TmNextPin next = tm_bench_next_pin (bench);
  g_autofree char *size = NULL;
  const TmFeature *feature = bench->spot.feature;

  if (!next.given)
    return g_strdup ("");
  size = tm_count_format_exact (next.size, feature->unit,
                                MAX (feature->lower.decimals, feature->upper.decimals));
  if (next.set->pin_class[0] == '\0' || next.set->pin_sign[0] == '\0')
    return g_steal_pointer (&size);
  return g_strdup_printf ("%s %s %s", size, next.set->pin_class, next.set->pin_sign);
}
