/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-form.h"

#include <langinfo.h>
#include <locale.h>
#include <string.h>

/* Millimetres across a sheet of Letter paper. */
#define LETTER_WIDTH 216

/* Territories that use Letter paper (Unicode CLDR, territory supplement, paper size). */
static gboolean
is_letter_territory (const char *locale)
{
  static const char *const territories[]
      = { "BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE" };
  const char *at = locale != NULL ? strchr (locale, '_') : NULL;

  for (gsize i = 0; at != NULL && i < G_N_ELEMENTS (territories); i++)
    if (strncmp (at + 1, territories[i], 2) == 0)
      return TRUE;
  return FALSE;
}

/* The locale the user asked for, which may not be installed. */
static const char *
get_wanted_locale (void)
{
  static const char *const variables[] = { "LC_ALL", "LC_PAPER", "LANG" };

  for (gsize i = 0; i < G_N_ELEMENTS (variables); i++)
    {
      const char *value = g_getenv (variables[i]);
      if (value != NULL && *value != '\0')
        return value;
    }
  return NULL;
}

TmPaper
tm_paper_of_locale (void)
{
  const char *current = setlocale (LC_PAPER, NULL);

  if (current != NULL && strcmp (current, "C") != 0 && strcmp (current, "POSIX") != 0
      && !g_str_has_prefix (current, "C."))
    return GPOINTER_TO_INT (nl_langinfo (_NL_PAPER_WIDTH)) == LETTER_WIDTH ? TM_PAPER_LETTER : TM_PAPER_A4;
  return is_letter_territory (get_wanted_locale ()) ? TM_PAPER_LETTER : TM_PAPER_A4;
}
