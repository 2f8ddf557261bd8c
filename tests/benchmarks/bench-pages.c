/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-pages: the pages of a report of 600 characteristics on 100 pieces, as PDF: with one piece as first
 * article, and with all pieces put together.
 */

#include <glib/gstdio.h>

#include "bench-figures.h"
#include "report-package.h"
#include "support-big-job.h"

#define N_FEATURES 600
#define N_READINGS 114000 /* two for each bore, one for each tenth feature: 100 pieces */
#define N_PIECES   100

/* What is asked: under 5 s, and memory that does not grow with the pages. */
#define SECONDS 5.0
#define MIB     250.0

typedef struct {
  const char *path;
  gboolean all; /* no first article: the report is about each piece */
  gboolean write;
} Run;

static TmJob *
make_job (const Run *run)
{
  TmJob *job = tm_test_big_job (N_FEATURES, N_READINGS);

  g_assert_cmpuint (job->pieces->len, ==, N_PIECES);
  if (run->all)
    ((TmPiece *)g_ptr_array_index (job->pieces, 0))->first_article = FALSE;
  return job;
}

/* Judging is the same for every form of the report, and measured elsewhere. */
static double
measure (gpointer data)
{
  const Run *run = data;
  TmJob *job = make_job (run);
  TmReportContent *content = tm_report_content_new (job);
  g_autoptr (GError) error = NULL;
  const gint64 start = g_get_monotonic_time ();
  TmPackageMade told = { 0 };

  if (!run->write)
    return 0.0;
  g_assert_true (tm_report_package_write (content, &(TmReportForm) { .landscape = TRUE },
                                          "2026-05-04T09:12:33Z", run->path, &told, NULL, NULL, &error));
  g_assert_no_error (error);
  g_printerr ("%u pages\n", told.n_pages);
  g_free (told.missing_glyphs);
  return (double)(g_get_monotonic_time () - start) / G_USEC_PER_SEC;
}

static void
add_run (TmFigures *figures, const char *what, Run *run)
{
  TmPhase before, after;

  run->write = FALSE;
  before = tm_phase_run (measure, run);
  run->write = TRUE;
  after = tm_phase_run (measure, run);
  tm_figures_add (figures, what, after.seconds, "s", SECONDS);
  tm_figures_add (figures, "  processor", after.cpu - before.cpu, "s", SECONDS);
  tm_figures_add (figures, "  memory for it", after.peak_mib - before.peak_mib, "MiB", MIB);
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "report.pdf", NULL);
  TmFigures *figures = tm_figures_new ("Pages of 600 characteristics on 100 pieces, as PDF");
  Run first = { path, FALSE, TRUE }, all = { path, TRUE, TRUE };

  add_run (figures, "one piece as first article, with its batch", &first);
  add_run (figures, "no first article: all pieces put together", &all);
  g_remove (path);
  g_rmdir (folder);
  return tm_figures_finish (figures);
}
