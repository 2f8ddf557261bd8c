/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-job-copy: the definitions of a job as a job of their own.
 *
 * By way of the job file: what it carries is what a job defines, members that this version does not know
 * included.
 */

#include "exchange-job-write.h"

static void
share_drawings (const TmJob *from, TmJob *to)
{
  for (guint i = 0; i < to->drawings->len; i++)
    {
      TmDrawing *drawing = g_ptr_array_index (to->drawings, i);
      const TmDrawing *original = tm_job_find_drawing (from, drawing->name);

      if (original != NULL && original->content != NULL)
        drawing->content = g_bytes_ref (original->content);
    }
}

TmJob *
tm_job_copy_definitions (const TmJob *job, GError **error)
{
  g_autoptr (GString) bytes = NULL;
  TmJob *copy;

  g_return_val_if_fail (job != NULL, NULL);

  bytes = tm_job_write_definitions (job);
  copy = tm_job_from_bytes (bytes->str, bytes->len, job->part_number, NULL, NULL, NULL, error);
  if (copy != NULL)
    share_drawings (job, copy);
  return copy;
}
