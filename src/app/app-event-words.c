/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-event-words.h"

#include <glib/gi18n-lib.h>

#include "app-edit-event.h"
#include "app-feature-words.h"
#include "app-words.h"

static const struct {
  const char *word;
  const char *text;
} kinds[] = {
  { "tool", NC_ ("event", "New tool or insert") },
  { "offset", NC_ ("event", "Offset") },
  { "lot", NC_ ("event", "New material lot") },
  { "other", NC_ ("event", "Note") },
};

const char *
tm_event_kind_word (guint which)
{
  return which < G_N_ELEMENTS (kinds) ? kinds[which].word : NULL;
}

const char *
tm_words_event_kind (const char *kind)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kind, kinds[i].word))
      return g_dpgettext2 (GETTEXT_PACKAGE, "event", kinds[i].text);
  return kind;
}

char *
tm_words_event (const TmJob *job, const TmEvent *event)
{
  const char *kind = tm_words_event_kind (event->kind);

  if (*event->amount == '\0')
    return g_strdup (kind);
  /* An amount with a unit of its own keeps it. */
  if (g_ascii_isalpha (event->amount[strlen (event->amount) - 1]))
    return g_strdup_printf ("%s %s", kind, event->amount);
  return g_strdup_printf ("%s %s %s", kind, event->amount, tm_unit_symbol (tm_event_unit (job, event)));
}

char *
tm_words_event_place (const TmEvent *event)
{
  return *event->before_piece != '\0' ? g_strdup_printf (_ ("before piece %s"), event->before_piece)
                                      : g_strdup (_ ("after the last piece"));
}

static void
add_part (GString *parts, const char *part)
{
  if (*part != '\0')
    g_string_append_printf (parts, "%s%s", parts->len > 0 ? " · " : "", part);
}

char *
tm_words_event_details (const TmJob *job, const TmEvent *event)
{
  const TmFeature *feature = tm_job_find_feature (job, event->feature);
  g_autofree char *place = tm_words_event_place (event);
  g_autofree char *about = feature != NULL ? tm_words_feature (feature) : g_strdup (event->feature);
  g_autofree char *at = tm_words_time (event->at);
  GString *parts = g_string_new (NULL);

  add_part (parts, place);
  add_part (parts, about);
  add_part (parts, event->tool);
  add_part (parts, event->by);
  add_part (parts, at);
  add_part (parts, event->note);
  return g_string_free (parts, FALSE);
}

char *
tm_words_clock_from_utc (const char *utc)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = NULL;
  g_autoptr (GDateTime) local = NULL;

  if (*utc == '\0')
    return g_strdup ("");
  time = g_date_time_new_from_iso8601 (utc, zone);
  if (time == NULL)
    return g_strdup (utc);
  local = g_date_time_to_local (time);
  return g_date_time_format (local, "%Y-%m-%d %H:%M");
}

char *
tm_words_clock_to_utc (const char *text)
{
  g_autoptr (GTimeZone) zone = g_time_zone_new_local ();
  g_autofree char *iso = NULL;
  g_autoptr (GDateTime) time = NULL;
  g_autoptr (GDateTime) utc = NULL;

  if (*text == '\0')
    return g_strdup ("");
  if (strlen (text) != strlen ("2026-05-04 11:12") || text[10] != ' ')
    return NULL;
  iso = g_strdup_printf ("%.10sT%s:00", text, text + 11);
  time = g_date_time_new_from_iso8601 (iso, zone);
  if (time == NULL)
    return NULL;
  utc = g_date_time_to_utc (time);
  return g_date_time_format (utc, "%Y-%m-%dT%H:%M:%SZ");
}
