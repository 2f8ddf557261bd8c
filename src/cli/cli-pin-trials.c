/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-pin-trials.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "cli-options.h"

/* Size with or without its unit, class, sign, and what happened; then a comma, a semicolon or the end.
 * A comma inside the size is a decimal comma. */
#define TRIAL                                                                                   \
  "\\G\\s*([0-9.,]*[0-9][0-9.,]*\\s*(?:mm|in|\")?)\\s*[- ]?\\s*([a-z]+?)\\s*(\\+|-|plus|minus)" \
  "\\s+(go|goes|went|no-?go|no go|did not go|stopped)\\s*(?:[,;]\\s*|$)"

/* The trial that begins at @text, for an error line. */
static char *
copy_trial (const char *text)
{
  const char *end = strpbrk (text, ";");
  const char *comma = strstr (text, ", ");
  gsize length;

  if (comma != NULL && (end == NULL || comma < end))
    end = comma;
  length = end != NULL ? (gsize)(end - text) : strlen (text);
  return g_strstrip (g_utf8_make_valid (text, (gssize)length));
}

static gboolean
is_go (const char *word)
{
  return g_ascii_strncasecmp (word, "go", 2) == 0 || g_ascii_strcasecmp (word, "went") == 0;
}

static const char *
find_class (const char *word)
{
  const char *name;

  for (guint i = 0; (name = tm_pin_class_nth (i)) != NULL; i++)
    if (g_ascii_strcasecmp (name, word) == 0)
      return name;
  return NULL;
}

static gboolean
add_trial (TmPinTrials *trials, const GMatchInfo *match, TmUnit unit, const char *trial)
{
  g_autofree char *size = g_match_info_fetch (match, 1);
  g_autofree char *pin_class = g_match_info_fetch (match, 2);
  g_autofree char *sign = g_match_info_fetch (match, 3);
  g_autofree char *result = g_match_info_fetch (match, 4);
  TmWrittenPin written = { .pin_class = find_class (pin_class) };
  TmPin pin = { 0 };
  TmReadStatus status = tm_quantity_read (size, unit, &written.size);

  if (status != TM_READ_OK)
    return tm_fail (_ ("pins: trial “%s”: “%s”: %s"), trial, size, _ (tm_read_status_text (status))) == 0;
  if (written.pin_class == NULL)
    return tm_fail (_ ("pins: trial “%s”: there is no class “%s”; the classes are XXX, XX, X, Y, Z and ZZ"),
                    trial, pin_class)
           == 0;
  written.sign = sign[0] == '+' || g_ascii_strcasecmp (sign, "plus") == 0 ? TM_PIN_PLUS : TM_PIN_MINUS;
  if (!tm_pin_extent (written.size.count, written.pin_class, written.sign, NULL, &pin))
    return tm_fail (_ ("pins: trial “%s”: the classes give tolerances from 0.010 in (0.254 mm) to 12.010 in "
                       "(305.054 mm); this pin lies beyond them"),
                    trial)
           == 0;
  pin.went = is_go (result);
  g_array_append_val (trials->pins, pin);
  g_array_append_val (trials->written, written);
  return TRUE;
}

gboolean
tm_pin_trials_read (const char *text, TmUnit unit, TmPinTrials *out)
{
  g_autoptr (GRegex) regex = g_regex_new (TRIAL, G_REGEX_CASELESS, 0, NULL);
  int at = 0, end;

  out->pins = g_array_new (FALSE, FALSE, sizeof (TmPin));
  out->written = g_array_new (FALSE, FALSE, sizeof (TmWrittenPin));
  while (text[at] != '\0')
    {
      g_autoptr (GMatchInfo) match = NULL;
      g_autofree char *trial = copy_trial (text + at);

      if (!g_utf8_validate (text, -1, NULL) || !g_regex_match_full (regex, text, -1, at, 0, &match, NULL))
        return tm_fail (_ ("pins: trial “%s” is not read; write size, class, sign and what happened, like "
                           "\"12.006-Z+ go, 12.018-Z- nogo\""),
                        trial)
               == 0;
      if (!add_trial (out, match, unit, trial))
        return FALSE;
      g_match_info_fetch_pos (match, 0, NULL, &end);
      at = end;
    }
  if (out->pins->len == 0)
    return tm_fail (_ ("pins: --trials names no pin; write it like \"12.006-Z+ go, 12.018-Z- nogo\"")) == 0;
  return TRUE;
}

void
tm_pin_trials_clear (TmPinTrials *trials)
{
  g_clear_pointer (&trials->pins, g_array_unref);
  g_clear_pointer (&trials->written, g_array_unref);
}
