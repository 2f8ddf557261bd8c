/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-clearance.h"

#include <glib/gi18n-lib.h>

char *
tm_clearance_words (gboolean has_least, gint64 least, gboolean has_most, gint64 most, TmUnit unit,
                    guint decimals)
{
  const char *symbol = tm_unit_symbol (unit);
  g_autofree char *low = tm_count_format (ABS (least), unit, decimals);
  g_autofree char *high = tm_count_format (ABS (most), unit, decimals);

  if (has_least && has_most)
    {
      if (most <= 0)
        return g_strdup_printf (_ ("press %s to %s %s"), high, low, symbol);
      if (least >= 0)
        return g_strdup_printf (_ ("clearance %s to %s %s"), low, high, symbol);
      return g_strdup_printf (_ ("press up to %s, clearance up to %s %s"), low, high, symbol);
    }
  if (has_least)
    return g_strdup_printf (least < 0 ? _ ("press up to %s %s") : _ ("clearance from %s %s"), low, symbol);
  if (has_most)
    return g_strdup_printf (most < 0 ? _ ("press from %s %s") : _ ("clearance up to %s %s"), high, symbol);
  return g_strdup ("");
}
