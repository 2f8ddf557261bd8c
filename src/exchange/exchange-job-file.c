/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The job file on disk.
 */

#include "exchange-file.h"

#include <glib/gi18n-lib.h>

/* @path as an error message shows it. */
static char *
display_path (const char *path)
{
  return g_filename_display_name (path);
}

TmJob *
tm_job_from_file (const char *path, TmJobNotes *notes, TmExchangeProgress progress, gpointer user_data,
                  GError **error)
{
  g_autofree char *shown = display_path (path);
  g_autoptr (GString) bytes = tm_file_load (
      path, TM_EXCHANGE_MAX_BYTES, _ ("larger than a job file may be (96 MiB); split the job"), error);

  if (bytes == NULL)
    {
      if (notes != NULL)
        *notes = (TmJobNotes) { NULL, 0 };
      return NULL;
    }
  return tm_job_from_bytes (bytes->str, bytes->len, shown, notes, progress, user_data, error);
}

static gboolean
fill_cb (int fd, gpointer data, GError **error)
{
  const GString *bytes = data;

  return tm_file_put (fd, bytes->str, bytes->len);
}

gboolean
tm_job_to_file (const TmJob *job, const char *path, GError **error)
{
  g_autoptr (GString) bytes = tm_job_to_string (job);
  g_autofree char *shown = display_path (path);

  if (bytes->len > TM_EXCHANGE_MAX_BYTES)
    {
      tm_exchange_fail (error, TM_EXCHANGE_ERROR_TOO_LARGE, shown, NULL,
                        _ ("the job is larger than a job file may be (96 MiB); split the job"));
      return FALSE;
    }
  return tm_file_replace (path, fill_cb, bytes, error);
}
