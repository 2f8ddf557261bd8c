/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-job: what the verbs that work on a job file share.
 */

#include <glib/gi18n-lib.h>

#include "cli-verbs.h"
#include "exchange-job.h"

const char *
tm_only_operand (const TmVerb *verb, const GPtrArray *operands)
{
  if (operands->len == 1)
    return g_ptr_array_index (operands, 0);
  tm_fail (_ ("%s: it takes %s; see tenthmark-cli %s --help"), verb->name, verb->operands, verb->name);
  return NULL;
}

TmJob *
tm_load_job (const char *path)
{
  GError *error = NULL;
  TmJob *job = tm_job_from_file (path, NULL, NULL, NULL, &error);

  if (job == NULL)
    tm_fail_error (error);
  return job;
}

gboolean
tm_pick_piece (const TmJob *job, const char *path, const char *serial, TmPiece **out)
{
  *out = tm_job_find_piece (job, serial);
  if (serial == NULL || *out != NULL)
    return TRUE;
  tm_fail (_ ("%s: there is no piece “%s”; see tenthmark-cli judge %s"), path, serial, path);
  return FALSE;
}

gboolean
tm_pick_feature (const TmJob *job, const char *path, const char *balloon, TmFeature **out)
{
  *out = tm_job_find_feature (job, balloon);
  if (balloon == NULL || *out != NULL)
    return TRUE;
  tm_fail (_ ("%s: there is no feature “%s”; see tenthmark-cli judge %s"), path, balloon, path);
  return FALSE;
}

gboolean
tm_pick_place (const char *verb, const TmFeature *feature, const char *text, guint *out)
{
  guint64 place = 1;

  *out = 1;
  if (text != NULL
      && (!g_ascii_string_to_unsigned (text, 10, 1, G_MAXUINT, &place, NULL) || place > feature->places))
    return tm_fail (ngettext ("%s: --place “%s”: feature %s has %u place; count from 1",
                              "%s: --place “%s”: feature %s has %u places; count from 1", feature->places),
                    verb, text, feature->balloon, feature->places)
           == 0;
  *out = (guint)place;
  return TRUE;
}

char *
tm_time_now (void)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_utc ();

  return g_date_time_format (now, "%Y-%m-%dT%H:%M:%SZ");
}
