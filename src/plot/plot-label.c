/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-label.h"

#include <glib/gi18n-lib.h>

char *
tm_feature_title (const TmFeature *feature)
{
  if (*feature->requirement != '\0' && *feature->name != '\0')
    return g_strdup_printf ("%s %s", feature->requirement, feature->name);
  if (*feature->requirement != '\0')
    return g_strdup (feature->requirement);
  return g_strdup (*feature->name != '\0' ? feature->name : feature->balloon);
}

char *
tm_limit_text (gboolean has, gint64 count, const TmQuantity *written, TmUnit unit, guint decimals)
{
  if (!has)
    return g_strdup ("");
  if (written->given && written->count == count && written->unit == unit)
    return tm_quantity_format (written);
  return tm_count_format_exact (count, unit, decimals);
}

char *
tm_station_label (const char *station, TmUnit unit)
{
  TmStation read;
  const char *depth;
  g_autofree char *length = NULL;

  if (station == NULL || *station == '\0')
    return g_strdup (_ ("size"));
  if (!tm_station_read (station, unit, &read))
    return g_strdup (station);
  switch (read.depth)
    {
    case TM_DEPTH_MOUTH:
      depth = _ ("mouth");
      break;
    case TM_DEPTH_MIDDLE:
      depth = _ ("middle");
      break;
    case TM_DEPTH_BOTTOM:
      depth = _ ("bottom");
      break;
    case TM_DEPTH_LENGTH:
      {
        g_autofree char *number = tm_quantity_format (&read.at);
        length = g_strdup_printf ("%s %s", number, tm_unit_symbol (read.at.unit));
        depth = length;
        break;
      }
    case TM_DEPTH_NONE:
    default:
      depth = "";
      break;
    }
  if (read.hour == 0)
    return g_strdup (depth);
  if (read.depth == TM_DEPTH_LENGTH)
    return g_strdup_printf (_ ("%s, %u o'clock"), depth, read.hour);
  /* TRANSLATORS: where in a bore a reading was taken: depth, then direction as a clock hour. */
  return g_strdup_printf (_ ("%s %u"), depth, read.hour);
}
