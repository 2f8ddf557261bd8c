/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-options: the words of a command line.
 *
 * Our own small reader, because an operand may be a number that begins with a minus sign, and
 * because arguments are UTF-8 whatever the locale says.
 */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  const char *name;     /* without the dashes */
  const char *argument; /* what stands for it in the help, or NULL for a switch */
  const char *help;
  const char **value; /* where the argument goes: borrowed from the command line */
  gboolean *flag;     /* for a switch */
} TmOption;

/* What a verb is, for its own --help and the list of verbs. */
typedef struct {
  const char *name;     /* "judge", "book add" */
  const char *operands; /* "JOB" */
  const char *summary;
  int (*run) (int n_words, char **words); /* the words after the verb; returns the exit status */
} TmVerb;

/* Sorts @words into options and operands.  @options ends with a row whose name is NULL; --help is
 * understood always.  Returns: the operands (borrowed texts), or NULL after printing the help
 * (@status 0) or an error line (@status 2). */
GPtrArray *tm_options_read (const TmVerb *verb, const TmOption *options, int n_words, char **words,
                            int *status) G_GNUC_WARN_UNUSED_RESULT;

/* Prints "tenthmark-cli: MESSAGE" as one line on standard error.  Returns: 2, the exit status. */
int tm_fail (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* As tm_fail(), and frees @error. */
int tm_fail_error (GError *error);

G_END_DECLS
