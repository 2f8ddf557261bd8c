/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-pages.h"

#include <glib/gi18n-lib.h>

#include "app-batch-page.h"
#include "app-bench-page.h"
#include "app-gauges-page.h"
#include "app-job-page.h"
#include "app-report-page.h"

TM_DEFINE_PAGE (job_page, JOB_PAGE)
TM_DEFINE_PAGE (batch_page, BATCH_PAGE)
TM_DEFINE_PAGE (gauges_page, GAUGES_PAGE)
TM_DEFINE_PAGE (report_page, REPORT_PAGE)

static void
set_bench_page (GtkWidget *page, TmDocument *document)
{
  tm_bench_page_set_document (TM_BENCH_PAGE (page), document);
}

static const TmPageKind pages[] = {
  { "job", N_ ("Job"), tm_job_page_new, set_job_page, enter_job_page },
  { "bench", N_ ("Bench"), tm_bench_page_new, set_bench_page, NULL },
  { "batch", N_ ("Batch"), tm_batch_page_new, set_batch_page, enter_batch_page },
  { "gauges", N_ ("Gauges"), tm_gauges_page_new, set_gauges_page, enter_gauges_page },
  { "report", N_ ("Report"), tm_report_page_new, set_report_page, enter_report_page },
};

const TmPageKind *
tm_pages (guint *n_pages)
{
  *n_pages = G_N_ELEMENTS (pages);
  return pages;
}
