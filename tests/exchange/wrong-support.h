/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * wrong-support: what every refusal of a job file must be.
 */

#pragma once

#include "exchange-job.h"

#include <string.h>

typedef struct {
  const char *text;
  TmExchangeError code;
  const char *place; /* what the message names; "" = the whole file */
  const char *mend;  /* a part of what it says to do */
} Wrong;

#define BAD     TM_EXCHANGE_ERROR_BAD_VALUE
#define MISSING TM_EXCHANGE_ERROR_MISSING
#define DIFFERS TM_EXCHANGE_ERROR_DISAGREES
#define NO_JSON TM_EXCHANGE_ERROR_NOT_JSON
#define NO_JOB  TM_EXCHANGE_ERROR_NOT_A_JOB

/* The whole contract of an error message. */
static inline void
check_wrong (const char *text, const Wrong *wrong)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_bytes (text, strlen (text), "part.tmjob", NULL, NULL, NULL, &error);
  g_autofree char *shown = g_strescape (text, NULL);
  g_autofree char *start
      = g_strdup_printf ("part.tmjob: %s%s", wrong->place, *wrong->place != '\0' ? ": " : "");

  g_test_message ("%s", shown);
  g_assert_null (job);
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_error (error, TM_EXCHANGE_ERROR, (gint)wrong->code);
  g_assert_null (strpbrk (error->message, "\n\r\t"));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  if (wrong->code != MISSING || strchr (wrong->place, '.') != NULL)
    g_assert_true (g_str_has_prefix (error->message, start));
  g_assert_nonnull (strstr (error->message, wrong->place));
  g_assert_nonnull (strstr (error->message, wrong->mend));
}

static inline void
check_all (const char *before, const Wrong *table, gsize n, const char *after)
{
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *text = g_strconcat (before, table[i].text, after, NULL);

      check_wrong (text, &table[i]);
    }
}
