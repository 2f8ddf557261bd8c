/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-words.h"

#include <glib/gi18n-lib.h>

#include "core-station.h"

static const char *const kind_words[TM_N_KINDS] = {
  [TM_KIND_BORE] = NC_ ("kind", "bore"),           [TM_KIND_SHAFT] = NC_ ("kind", "shaft"),
  [TM_KIND_DIAMETER] = NC_ ("kind", "diameter"),   [TM_KIND_LENGTH] = NC_ ("kind", "length"),
  [TM_KIND_DEPTH] = NC_ ("kind", "depth"),         [TM_KIND_ANGLE] = NC_ ("kind", "angle"),
  [TM_KIND_POSITION] = NC_ ("kind", "position"),   [TM_KIND_FORM] = NC_ ("kind", "form"),
  [TM_KIND_ROUGHNESS] = NC_ ("kind", "roughness"), [TM_KIND_HARDNESS] = NC_ ("kind", "hardness"),
  [TM_KIND_THREAD] = NC_ ("kind", "thread"),       [TM_KIND_ATTRIBUTE] = NC_ ("kind", "pass or fail"),
  [TM_KIND_NOTE] = NC_ ("kind", "note"),
};

const char *
tm_words_kind (TmKind kind)
{
  g_return_val_if_fail ((guint)kind < TM_N_KINDS, "");

  return g_dpgettext2 (GETTEXT_PACKAGE, "kind", kind_words[kind]);
}

char *
tm_words_start_upper (const char *text)
{
  char letter[7] = { 0 };

  g_return_val_if_fail (text != NULL, NULL);

  if (*text == '\0')
    return g_strdup ("");
  g_unichar_to_utf8 (g_unichar_toupper (g_utf8_get_char (text)), letter);
  return g_strconcat (letter, g_utf8_next_char (text), NULL);
}

char *
tm_words_quantity (const TmQuantity *quantity)
{
  g_autofree char *number = NULL;
  const char *symbol;

  g_return_val_if_fail (quantity != NULL, NULL);

  number = tm_quantity_format (quantity);
  symbol = quantity->given ? tm_unit_symbol (quantity->unit) : "";
  return g_strconcat (number, *symbol == '\0' || quantity->unit == TM_UNIT_DEGREE ? "" : " ", symbol, NULL);
}

static char *
format_limits (const TmQuantity *lower, const TmQuantity *upper)
{
  g_autofree char *low = lower->given ? tm_words_quantity (lower) : NULL;
  g_autofree char *high = upper->given ? tm_words_quantity (upper) : NULL;
  g_autofree char *bare_low = NULL;

  if (low == NULL && high == NULL)
    return NULL;
  if (low == NULL)
    return g_strdup_printf (_ ("%s max"), high);
  if (high == NULL)
    return g_strdup_printf (_ ("%s min"), low);
  if (lower->unit != upper->unit)
    return g_strdup_printf (_ ("%s … %s"), low, high);
  bare_low = tm_quantity_format (lower);
  return g_strdup_printf (_ ("%s … %s"), bare_low, high);
}

char *
tm_words_limits (const TmFeature *feature)
{
  char *limits;

  g_return_val_if_fail (feature != NULL, NULL);

  limits = format_limits (&feature->lower, &feature->upper);
  if (limits != NULL)
    return limits;
  return g_strdup (tm_kind_is_attribute (feature->kind) ? _ ("pass or fail") : _ ("no limits"));
}

char *
tm_words_callout (const TmFeature *feature)
{
  g_return_val_if_fail (feature != NULL, NULL);

  return *feature->requirement != '\0' ? g_strdup (feature->requirement) : tm_words_limits (feature);
}

char *
tm_words_kept_as_note (TmCalloutStatus status)
{
  const char *why = g_dgettext (GETTEXT_PACKAGE, tm_callout_status_text (status));

  /* The commonest reason says already what becomes of it. */
  return status == TM_CALLOUT_NOT_READ ? g_strdup (why) : g_strdup_printf (_ ("kept as a note: %s"), why);
}

/* "4 places, bore, nominal 25 mm" */
static GString *
start_reads_as (const TmCallout *callout)
{
  GString *words = g_string_new (NULL);

  if (callout->places > 1)
    g_string_append_printf (words, ngettext ("%u place, ", "%u places, ", callout->places), callout->places);
  g_string_append (words, tm_words_kind (callout->kind));
  if (callout->nominal.given)
    {
      g_autofree char *nominal = tm_words_quantity (&callout->nominal);

      g_string_append_printf (words, _ (", nominal %s"), nominal);
    }
  return words;
}

static void
append_geometry (GString *words, const TmCallout *callout)
{
  if (callout->zone_diameter)
    g_string_append (words, _ (", round zone"));
  if (callout->modifier == TM_MODIFIER_MMC)
    g_string_append (words, _ (", at most material"));
  if (callout->modifier == TM_MODIFIER_LMC)
    g_string_append (words, _ (", at least material"));
  for (guint i = 0; i < callout->n_datums; i++)
    g_string_append_printf (words, i == 0 ? _ (", to %s") : " %s", callout->datums[i]);
}

char *
tm_words_reads_as (const TmCallout *callout)
{
  g_autofree char *limits = NULL;
  GString *words;

  g_return_val_if_fail (callout != NULL, NULL);

  if (callout->status == TM_CALLOUT_EMPTY)
    return g_strdup ("");
  if (callout->status != TM_CALLOUT_OK)
    return tm_words_kept_as_note (callout->status);
  words = start_reads_as (callout);
  limits = format_limits (&callout->lower, &callout->upper);
  if (limits != NULL)
    g_string_append_printf (words, ", %s", limits);
  append_geometry (words, callout);
  return g_string_free (words, FALSE);
}

char *
tm_words_job_title (const char *part_number, const char *part_name, const char *revision)
{
  GString *title = g_string_new (part_number);

  if (part_name != NULL && *part_name != '\0')
    g_string_append_printf (title, " %s", part_name);
  if (revision != NULL && *revision != '\0')
    g_string_append_printf (title, _ (", rev %s"), revision);
  return g_string_free (title, FALSE);
}

char *
tm_words_time (const char *utc)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = NULL;
  g_autoptr (GDateTime) local = NULL;

  if (utc == NULL || *utc == '\0')
    return g_strdup ("");
  time = g_date_time_new_from_iso8601 (utc, zone);
  if (time == NULL)
    return g_strdup (utc);
  local = g_date_time_to_local (time);
  /* Translators: a day and a time of day, as strftime writes them. */
  return g_date_time_format (local, _ ("%-e %b %Y, %H:%M"));
}

char *
tm_words_piece (const char *serial, guint n_pieces)
{
  return g_strdup_printf (_ ("Piece %s of %u"), serial, n_pieces);
}
