/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-overdue: a gauge past its due date is used only with a stated reason.
 *
 * A reason is stated once and holds for the gauge that is used next, and for that gauge from then on:
 * what excuses one gauge does not excuse another.
 */

#include <glib/gi18n-lib.h>

#include "bench-private.h"

void
tm_bench_set_overdue_reason (TmBench *bench, const char *reason)
{
  g_return_if_fail (bench != NULL);

  g_free (bench->overdue_reason);
  bench->overdue_reason = g_strstrip (g_strdup (reason != NULL ? reason : ""));
  if (bench->overdue_reason[0] == '\0')
    g_hash_table_remove_all (bench->overdue);
}

const char *
tm_bench_overdue_reason (const TmBench *bench)
{
  const TmGauge *gauges[TM_BENCH_MAX_GAUGES];
  guint n;

  g_return_val_if_fail (bench != NULL, "");

  if (bench->overdue_reason[0] != '\0')
    return bench->overdue_reason;
  n = tm_bench_method_gauges (bench, tm_bench_method_in_force (bench), gauges);
  for (guint i = 0; i < n; i++)
    {
      const char *reason = g_hash_table_lookup (bench->overdue, gauges[i]->tag);

      if (reason != NULL)
        return reason;
    }
  return "";
}

/* What was said for @gauge, or is said now and not yet bound to another; NULL: nothing. */
static const char *
find_reason (const TmBench *bench, const TmGauge *gauge)
{
  const char *reason = g_hash_table_lookup (bench->overdue, gauge->tag);

  if (bench->overdue_reason[0] != '\0')
    return bench->overdue_reason;
  return reason;
}

const TmGauge *
tm_bench_find_overdue (const TmBench *bench, const TmGauge *const *gauges, guint n, const char *at)
{
  for (guint i = 0; i < n; i++)
    {
      if (tm_gauge_due (bench->job, gauges[i], at) == TM_DUE_OVERDUE
          && find_reason (bench, gauges[i]) == NULL)
        return gauges[i];
    }
  return NULL;
}

static gboolean
refuse (const TmBench *bench, const TmGauge *gauge, const char *at, GError **error)
{
  const TmCalibration *bad = tm_gauge_found_bad (bench->job, gauge->tag, at);

  if (bad != NULL)
    g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE,
                 _ ("Gauge %s was found bad at its calibration on %s: put it right, take another, or say why "
                    "it is used all the same."),
                 gauge->tag, bad->date);
  else
    g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE,
                 _ ("Gauge %s was due for calibration on %s: calibrate it, take another, or say why it is "
                    "used all the same."),
                 gauge->tag, tm_gauge_due_date (bench->job, gauge, at));
  return FALSE;
}

gboolean
tm_bench_excuse_overdue (TmBench *bench, const TmGauge *const *gauges, guint n, const char *at,
                         const char **reason, GError **error)
{
  const TmGauge *refused = tm_bench_find_overdue (bench, gauges, n, at);

  *reason = "";
  if (refused != NULL)
    return refuse (bench, refused, at, error);
  for (guint i = 0; i < n; i++)
    {
      if (tm_gauge_due (bench->job, gauges[i], at) == TM_DUE_OVERDUE)
        *reason = tm_job_intern (bench->job, find_reason (bench, gauges[i]));
    }
  return TRUE;
}

void
tm_bench_bind_reason (TmBench *bench, const TmGauge *const *gauges, guint n, const char *at)
{
  gboolean bound = FALSE;

  for (guint i = 0; i < n && bench->overdue_reason[0] != '\0'; i++)
    {
      if (tm_gauge_due (bench->job, gauges[i], at) != TM_DUE_OVERDUE)
        continue;
      g_hash_table_insert (bench->overdue, g_strdup (gauges[i]->tag), g_strdup (bench->overdue_reason));
      bound = TRUE;
    }
  if (bound)
    bench->overdue_reason[0] = '\0';
}
