/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-pages.h"

#include <glib/gi18n-lib.h>

#include "app-batch-page.h"
#include "app-bench-page.h"
#include "app-gauges-page.h"
#include "app-job-page.h"
#include "app-report-page.h"

static void
set_job_document (GtkWidget *page, TmDocument *document)
{
  tm_job_page_set_document (TM_JOB_PAGE (page), document);
}

static void
set_bench_document (GtkWidget *page, TmDocument *document)
{
  tm_bench_page_set_document (TM_BENCH_PAGE (page), document);
}

static void
set_batch_document (GtkWidget *page, TmDocument *document)
{
  tm_batch_page_set_document (TM_BATCH_PAGE (page), document);
}

static void
set_gauges_document (GtkWidget *page, TmDocument *document)
{
  tm_gauges_page_set_document (TM_GAUGES_PAGE (page), document);
}

static void
set_report_document (GtkWidget *page, TmDocument *document)
{
  tm_report_page_set_document (TM_REPORT_PAGE (page), document);
}

static void
enter_job (GtkWidget *page)
{
  tm_job_page_enter (TM_JOB_PAGE (page));
}

static void
enter_batch (GtkWidget *page)
{
  tm_batch_page_enter (TM_BATCH_PAGE (page));
}

static void
enter_gauges (GtkWidget *page)
{
  tm_gauges_page_enter (TM_GAUGES_PAGE (page));
}

static void
enter_report (GtkWidget *page)
{
  tm_report_page_enter (TM_REPORT_PAGE (page));
}

static const TmPageKind pages[] = {
  { "job", N_ ("Job"), tm_job_page_new, set_job_document, enter_job },
  { "bench", N_ ("Bench"), tm_bench_page_new, set_bench_document, NULL },
  { "batch", N_ ("Batch"), tm_batch_page_new, set_batch_document, enter_batch },
  { "gauges", N_ ("Gauges"), tm_gauges_page_new, set_gauges_document, enter_gauges },
  { "report", N_ ("Report"), tm_report_page_new, set_report_document, enter_report },
};

const TmPageKind *
tm_pages (guint *n_pages)
{
  *n_pages = G_N_ELEMENTS (pages);
  return pages;
}
