/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-pin-words.h"

#include <glib/gi18n-lib.h>

#include "core-pins.h"

/* @count with some digits more than the pin is marked with, to the side on which it stays true. */
static char *
print_bound (gint64 count, TmUnit unit, guint decimals, gboolean upward)
{
  gint64 step = tm_unit_counts (unit);

  for (guint i = 0; i < decimals && step % 10 == 0; i++)
    step /= 10;
  if (count % step != 0)
    count = count / step * step + (upward ? step : 0);
  return tm_count_format_exact (count, unit, 0);
}

char *
tm_report_pin_proof (const TmJob *job, const TmPinTrial *trial)
{
  const TmUnit unit = trial->row.feature->unit;
  TmPin pin = { 0 };
  g_autofree char *bound = NULL;

  if (!tm_row_counts (&trial->row))
    return g_strdup ("");
  if (!tm_pin_extent (trial->size.count, trial->pin_class, trial->sign, &trial->measured, &pin))
    return g_strdup (_ ("nothing: class or size unknown"));
  bound = print_bound (trial->went ? pin.low : pin.high + tm_job_entry_clearance (job), unit,
                       trial->size.decimals + 2u, !trial->went);
  return g_strdup_printf (trial->went ? _ ("at least %s %s") : _ ("under %s %s"), bound,
                          tm_unit_symbol (unit));
}
