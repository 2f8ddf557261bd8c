/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * write-workbook JOB OUT [LANGUAGE SECOND]: writes the workbook of a job file, for the checks that open it
 * elsewhere.
 */

#include "exchange-job.h"
#include "report-workbook.h"

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_auto (TmJobNotes) notes = { 0 };
  g_autoptr (TmJob) job = NULL;
  g_autoptr (TmReportContent) content = NULL;
  g_autofree char *digest = NULL;
  TmReportForm form = { .paper = TM_PAPER_A4 };
  TmWorkbookFacts facts = { .made = "2026-05-04T09:12:33Z" };

  if (argc != 3 && argc != 5)
    {
      g_printerr ("usage: write-workbook JOB OUT [LANGUAGE SECOND]\n");
      return 2;
    }
  if (argc == 5)
    {
      form.language = argv[3];
      form.second_language = argv[4];
    }
  job = tm_job_from_file (argv[1], &notes, NULL, NULL, &error);
  if (job == NULL)
    {
      g_printerr ("%s\n", error->message);
      return 2;
    }
  content = tm_report_content_new (job);
  facts.digest = digest = tm_job_digest (job);
  if (!tm_workbook_write (content, argv[2], &form, &facts, NULL, NULL, &error))
    {
      g_printerr ("%s\n", error->message);
      return 2;
    }
  return 0;
}
