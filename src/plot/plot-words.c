/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-words.h"

#include <string.h>

#undef g_dngettext
#undef g_dpgettext2
#undef g_dgettext

static _Thread_local const TmWords *in_use;

const TmWords *
tm_words_use (const TmWords *words)
{
  const TmWords *before = in_use;

  in_use = words;
  return before;
}

const char *
tm_words_text (const char *context, const char *text)
{
  if (in_use != NULL && in_use->text != NULL)
    return in_use->text (in_use->data, context, text);
  return context != NULL ? g_dpgettext2 (GETTEXT_PACKAGE, context, text) : g_dgettext (GETTEXT_PACKAGE, text);
}

const char *
tm_words_plural (const char *one, const char *many, gulong n)
{
  if (in_use != NULL && in_use->plural != NULL)
    return in_use->plural (in_use->data, one, many, n);
  return g_dngettext (GETTEXT_PACKAGE, one, many, n);
}

char *
tm_words_number (char *number)
{
  char *point;

  if (in_use == NULL || !in_use->decimal_comma || number == NULL)
    return number;
  point = strchr (number, '.');
  if (point != NULL)
    *point = ',';
  return number;
}
