/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-error.h"

#include <errno.h>
#include <glib/gi18n-lib.h>

#define QUOTE_LENGTH 40

G_DEFINE_QUARK (tm - exchange - error - quark, tm_exchange_error)

/* Makes @text one line of valid UTF-8. */
static char *
flatten (const char *text)
{
  char *flat = g_utf8_make_valid (text, -1);

  for (char *cursor = flat; *cursor != '\0'; cursor++)
    {
      if (g_ascii_iscntrl (*cursor))
        *cursor = ' ';
    }
  return flat;
}

static void
append_part (GString *message, const char *part)
{
  if (part != NULL && *part != '\0')
    g_string_append_printf (message, "%s: ", part);
}

void
tm_exchange_fail (GError **error, TmExchangeError code, const char *source, const char *place,
                  const char *format, ...)
{
  g_autoptr (GString) message = g_string_new (NULL);
  g_autofree char *flat = NULL;
  va_list args;

  append_part (message, source);
  append_part (message, place);
  va_start (args, format);
  g_string_append_vprintf (message, format, args);
  va_end (args);
  flat = flatten (message->str);
  g_set_error_literal (error, TM_EXCHANGE_ERROR, (gint)code, flat);
}

char *
tm_exchange_quote (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *start = NULL;

  if (g_utf8_strlen (valid, -1) <= QUOTE_LENGTH)
    return g_strdup_printf ("“%s”", valid);
  start = g_utf8_substring (valid, 0, QUOTE_LENGTH);
  return g_strdup_printf ("“%s…”", start);
}

static const char *
mend_for (int code_number)
{
  switch (code_number)
    {
    case ENOENT:
      return _ ("there is no such file or folder; check the name");
    case EACCES:
    case EPERM:
      return _ ("not permitted; choose another folder, or ask for access to this one");
    case EROFS:
      return _ ("the folder is read-only; choose another folder");
    case ENOSPC:
    case EDQUOT:
      return _ ("the disk is full; free some room or choose another disk");
    case EISDIR:
      return _ ("this is a folder; name a file in it");
    case ENOTDIR:
      return _ ("part of the path is not a folder; check the name");
    case ENAMETOOLONG:
      return _ ("the name is too long; choose a shorter one");
    default:
      return NULL;
    }
}

void
tm_exchange_fail_io (GError **error, const char *path, int code_number)
{
  const char *mend = mend_for (code_number);

  if (mend != NULL)
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_IO, path, NULL, "%s", mend);
  else
    tm_exchange_fail (error, TM_EXCHANGE_ERROR_IO, path, NULL, _ ("%s; check the disk and try again"),
                      g_strerror (code_number));
}
