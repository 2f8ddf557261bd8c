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

static const char *
find_event_word (const char *kind)
{
  if (g_strcmp0 (kind, "tool") == 0)
    return _ ("tool change");
  if (g_strcmp0 (kind, "offset") == 0)
    return _ ("offset change");
  if (g_strcmp0 (kind, "lot") == 0)
    return _ ("new lot");
  return _ ("event");
}

char *
tm_event_label (const TmEvent *event)
{
  if (event->note != NULL && *event->note != '\0')
    return g_strdup (event->note);
  if (event->amount != NULL && *event->amount != '\0')
    /* Translators: what happened between two pieces, and by how much: "offset change -0.005". */
    return g_strdup_printf (_ ("%s %s"), find_event_word (event->kind), event->amount);
  return g_strdup (find_event_word (event->kind));
}

static const char *
find_depth_word (TmDepthKind depth)
{
  switch (depth)
    {
    case TM_DEPTH_MOUTH:
      return C_ ("depth", "mouth");
    case TM_DEPTH_MIDDLE:
      return C_ ("depth", "middle");
    case TM_DEPTH_BOTTOM:
      return C_ ("depth", "bottom");
    case TM_DEPTH_NONE:
    case TM_DEPTH_LENGTH:
    default:
      return "";
    }
}

/* A depth that is a length, and the clock hour where there is one. */
static char *
print_length (const TmStation *station)
{
  g_autofree char *number = tm_quantity_format (&station->at);
  const char *symbol = tm_unit_symbol (station->at.unit);

  if (station->hour == 0)
    return g_strdup_printf ("%s %s", number, symbol);
  /* Translators: a depth in a bore with its unit, then a clock hour. */
  return g_strdup_printf (_ ("%s %s, %u"), number, symbol, station->hour);
}

char *
tm_station_label (const char *station, TmUnit unit)
{
  TmStation read;
  const char *depth;

  if (station == NULL || *station == '\0')
    return g_strdup (_ ("size"));
  if (!tm_station_read (station, unit, &read))
    return g_strdup (station);
  if (read.depth == TM_DEPTH_LENGTH)
    return print_length (&read);
  depth = find_depth_word (read.depth);
  if (read.hour == 0)
    return g_strdup (depth);
  if (*depth == '\0')
    return g_strdup_printf (_ ("hour %u"), read.hour);
  /* Translators: where in a bore a reading was taken: depth, then direction as a clock hour. */
  return g_strdup_printf (_ ("%s %u"), depth, read.hour);
}
