/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-feature-words.h"

#include <glib/gi18n-lib.h>

#include "app-words.h"
#include "plot-label.h"

char *
tm_words_station (const char *station, TmUnit unit)
{
  if (station == NULL || *station == '\0')
    return g_strdup ("");
  return tm_station_label (station, unit);
}

char *
tm_words_requirement (const TmFeature *feature)
{
  /* Few fonts have the signs of ISO 1101 and ASME Y14.5; the words are what people say for them. */
  static const struct {
    const char *sign;
    const char *word;
  } signs[] = { { "⌖", "pos" }, { "Ⓜ", "MMC" }, { "Ⓛ", "LMC" } };
  g_autofree char *callout = tm_words_callout (feature);
  GString *text = g_string_new (callout);
  for (guint i = 0; i < G_N_ELEMENTS (signs); i++)
    g_string_replace (text, signs[i].sign, signs[i].word, 0);
  return g_string_free (text, FALSE);
}

char *
tm_words_on_drawing (const TmFeature *feature)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  if (*feature->designator != '\0')
    g_ptr_array_add (parts, g_strdup (g_dgettext (GETTEXT_PACKAGE, feature->designator)));
  if (*feature->sheet != '\0' && *feature->zone != '\0')
    /* Translators: a sheet of the drawing, then the zone on it. */
    g_ptr_array_add (parts, g_strdup_printf (_ ("sheet %s, %s"), feature->sheet, feature->zone));
  else if (*feature->sheet != '\0')
    g_ptr_array_add (parts, g_strdup_printf (_ ("sheet %s"), feature->sheet));
  else if (*feature->zone != '\0')
    g_ptr_array_add (parts, g_strdup_printf (_ ("zone %s"), feature->zone));
  g_ptr_array_add (parts, NULL);
  return g_strjoinv ("  ·  ", (char **)parts->pdata);
}

char *
tm_words_feature (const TmFeature *feature)
{
  g_autofree char *callout = tm_words_requirement (feature);
  if (*feature->name == '\0' || g_str_equal (feature->name, callout))
    return g_strdup_printf ("%s · %s", feature->balloon, callout);
  return g_strdup_printf ("%s · %s %s", feature->balloon, callout, feature->name);
}

char *
tm_words_spot (const TmFeature *feature, guint place, const char *station)
{
  g_autofree char *where = tm_words_station (station, feature->unit);
  if (feature->places <= 1)
    return g_steal_pointer (&where);
  if (*where == '\0')
    return g_strdup_printf (_ ("place %u"), place);
  return g_strdup_printf (_ ("place %u, %s"), place, where);
}

char *
tm_words_count (const TmFeature *feature, gint64 count, guint min_decimals)
{
  g_autofree char *number = tm_count_format_exact (count, feature->unit, min_decimals);
  const char *symbol = tm_unit_symbol (feature->unit);
  if (*symbol == '\0')
    return g_steal_pointer (&number);
  return feature->unit == TM_UNIT_DEGREE ? g_strconcat (number, symbol, NULL)
                                         : g_strconcat (number, " ", symbol, NULL);
}

static GDateTime *
read_moment (const char *iso)
{
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  if (iso == NULL || *iso == '\0')
    return NULL;
  if (strchr (iso, 'T') != NULL)
    return g_date_time_new_from_iso8601 (iso, utc);
  g_autofree char *midnight = g_strconcat (iso, "T00:00:00Z", NULL);
  return g_date_time_new_from_iso8601 (midnight, utc);
}

char *
tm_words_date (const char *iso)
{
  g_autoptr (GDateTime) moment = read_moment (iso);
  if (moment == NULL)
    return g_strdup (iso != NULL ? iso : "");
  /* Translators: a date, day first; see g_date_time_format(). */
  return g_date_time_format (moment, _ ("%-d %b %Y"));
}
