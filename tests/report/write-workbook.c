/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * write-workbook JOB OUT: writes the workbook of a job file, for the checks that open it elsewhere.
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

  if (argc != 3)
    {
      g_printerr ("usage: write-workbook JOB OUT\n");
      return 2;
    }
  job = tm_job_from_file (argv[1], &notes, NULL, NULL, &error);
  if (job == NULL)
    {
      g_printerr ("%s\n", error->message);
      return 2;
    }
  content = tm_report_content_new (job);
  if (!tm_workbook_write (content, argv[2], &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL, NULL, &error))
    {
      g_printerr ("%s\n", error->message);
      return 2;
    }
  return 0;
}
