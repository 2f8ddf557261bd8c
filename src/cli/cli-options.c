/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-options.h"

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

static const TmOption *
find_option (const TmOption *options, const char *name, gsize length)
{
  for (const TmOption *option = options; option->name != NULL; option++)
    {
      if (strlen (option->name) == length && strncmp (option->name, name, length) == 0)
        return option;
    }
  return NULL;
}

static void
print_help (const TmVerb *verb, const TmOption *options)
{
  printf (_ ("Usage: tenthmark-cli %s %s [OPTION…]\n%s\n"), verb->name, verb->operands, _ (verb->summary));
  if (options->name != NULL)
    printf ("\n%s\n", _ ("Options:"));
  for (const TmOption *option = options; option->name != NULL; option++)
    {
      g_autofree char *left = g_strdup_printf ("--%s%s%s", option->name, option->argument ? " " : "",
                                               option->argument ? option->argument : "");

      printf ("  %-22s %s\n", left, _ (option->help));
    }
  printf ("  %-22s %s\n", "--help", _ ("show this help"));
}

/* A word that is an option rather than an operand such as "-3" or "-.5". */
static gboolean
is_option (const char *word)
{
  return word[0] == '-' && word[1] != '\0' && !g_ascii_isdigit (word[1]) && word[1] != '.' && word[1] != ',';
}

/* Takes one option; @words[*at] is its word.  Returns FALSE after an error line. */
static gboolean
take_option (const TmVerb *verb, const TmOption *options, int n_words, char **words, int *at)
{
  const char *word = words[*at];
  const char *name = g_str_has_prefix (word, "--") ? word + 2 : word + 1;
  const char *equals = strchr (name, '=');
  gsize length = equals != NULL ? (gsize)(equals - name) : strlen (name);
  const TmOption *option = g_str_has_prefix (word, "--") ? find_option (options, name, length) : NULL;

  if (option == NULL)
    {
      tm_fail (_ ("%s: unknown option %s; see tenthmark-cli %s --help"), verb->name, word, verb->name);
      return FALSE;
    }
  if (option->flag != NULL && equals != NULL)
    {
      tm_fail (_ ("%s: option --%s takes nothing after it"), verb->name, option->name);
      return FALSE;
    }
  if (option->flag != NULL)
    {
      *option->flag = TRUE;
      return TRUE;
    }
  if (equals == NULL && (*at + 1 >= n_words || g_str_has_prefix (words[*at + 1], "--")))
    {
      tm_fail (_ ("%s: option --%s needs %s after it"), verb->name, option->name, option->argument);
      return FALSE;
    }
  *option->value = equals != NULL ? equals + 1 : words[++*at];
  return TRUE;
}

GPtrArray *
tm_options_read (const TmVerb *verb, const TmOption *options, int n_words, char **words, int *status)
{
  g_autoptr (GPtrArray) operands = g_ptr_array_new ();
  gboolean only_operands = FALSE;

  for (int at = 0; at < n_words; at++)
    {
      if (!only_operands && strcmp (words[at], "--") == 0)
        {
          only_operands = TRUE;
        }
      else if (!only_operands && strcmp (words[at], "--help") == 0)
        {
          print_help (verb, options);
          *status = 0;
          return NULL;
        }
      else if (!only_operands && is_option (words[at]))
        {
          *status = 2;
          if (!take_option (verb, options, n_words, words, &at))
            return NULL;
        }
      else
        {
          g_ptr_array_add (operands, words[at]);
        }
    }
  return g_steal_pointer (&operands);
}

int
tm_fail (const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list arguments;

  va_start (arguments, format);
  message = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  /* One line is promised, whatever a file name or a typed text holds. */
  g_strdelimit (message, "\r\n", ' ');
  fprintf (stderr, "tenthmark-cli: %s\n", message);
  return 2;
}

int
tm_fail_error (GError *error)
{
  int status = tm_fail ("%s", error->message);

  g_error_free (error);
  return status;
}
