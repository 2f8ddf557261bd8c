/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-gather.h"

#include "app-words.h"
#include "exchange-job.h"

static char *
name_first (const GPtrArray *found)
{
  const TmBookEntry *entry;

  if (found->len == 0)
    return NULL;
  entry = g_ptr_array_index (found, 0);
  return tm_words_job_title (entry->part_number, entry->part_name, entry->revision);
}

TmReportContent *
tm_report_gather (TmBook *book, const TmJob *job, const TmReportForm *form, GError **error)
{
  g_autoptr (GPtrArray) found = tm_book_find_report (book, job->report_identifier, job->id, error);
  g_autofree char *namesake = NULL;
  g_autofree char *digest = NULL;
  TmReportContent *content;

  if (found == NULL)
    return NULL;
  namesake = name_first (found);
  /* Only a signature is compared with it. */
  digest = job->signatures->len > 0 ? tm_job_digest (job) : NULL;
  content = tm_report_content_new (job);
  tm_report_content_set_template (content, form->template);
  tm_report_content_set_digest (content, digest);
  tm_report_content_set_namesake (content, namesake);
  return content;
}
