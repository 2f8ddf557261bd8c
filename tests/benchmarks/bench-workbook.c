/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-workbook: the workbook of a report of 600 characteristics on 100 pieces, against the writing library
 * alone with the same cells and the same pictures; and how long whoever cancels it waits.
 */

#include <glib/gstdio.h>
#include <time.h>
#include <xlsxwriter.h>

#include "bench-figures.h"
#include "core-form.h"
#include "plot-band.h"
#include "report-picture.h"
#include "report-workbook.h"
#include "support-big-job.h"
#include "workbook-cells.h"

#define N_FEATURES 600
#define N_READINGS 114000 /* two for each bore, one for each tenth feature: 100 pieces */
#define MADE       "2026-05-04T09:12:33Z"

/* What is asked: at most 1.3 times the library alone, under 250 MiB, and cancelled within 100 ms. */
#define RATIO 1.3
#define MIB   250.0
#define WAIT  100.0 /* ms */
/* What a person puts up with. */
#define SECONDS 15.0

/* As the pictures' sheet has them. */
#define MOST_PICTURES 200
#define WIDTH         (590.0 / 1.25)
#define HEIGHT        (256.0 / 1.25)
#define SCALE         (2.5 * 1.25)

typedef struct {
  const char *folder;
  const char *path;
  gboolean all; /* no first article: the report is about each piece */
  gboolean write;
} Run;

static TmJob *
make_job (const Run *run)
{
  TmJob *job = tm_test_big_job (N_FEATURES, N_READINGS);

  if (run->all)
    ((TmPiece *)g_ptr_array_index (job->pieces, 0))->first_article = FALSE;
  return job;
}

/* Seconds of the processor, which other work on the machine does not stretch; those of the clock are told. */
static double
tell (const char *what, gint64 start, clock_t busy)
{
  g_printerr ("%s: %.2f s by the clock\n", what, (double)(g_get_monotonic_time () - start) / G_USEC_PER_SEC);
  return (double)(clock () - busy) / CLOCKS_PER_SEC;
}

/* Judging is the same for every form of the report, and measured elsewhere. */
static double
measure_ours (gpointer data)
{
  const Run *run = data;
  TmReportContent *content = tm_report_content_new (make_job (run));
  g_autoptr (GError) error = NULL;
  const gint64 start = g_get_monotonic_time ();
  const clock_t busy = clock ();

  if (!run->write)
    return 0.0;
  g_assert_true (tm_workbook_write (content, run->path, &(TmReportForm) { .landscape = TRUE },
                                    &(TmWorkbookFacts) { .made = MADE }, NULL, NULL, &error));
  g_assert_no_error (error);
  return tell ("ours", start, busy);
}

/* -------- The library alone -------- */

static gboolean
is_shown (const TmReportLine *line)
{
  return tm_feature_is_diameter (line->feature) && line->judgement.sizes.n_stations > 0;
}

static void
draw_pictures (const TmReportContent *content, lxw_worksheet *sheet)
{
  guint shown = 0;

  for (guint i = 0; i < content->lines->len && shown < MOST_PICTURES; i++)
    {
      const TmReportLine *line = g_ptr_array_index (content->lines, i);
      g_autoptr (TmBandPlot) plot = NULL;
      g_autoptr (GBytes) png = NULL;
      gsize length;
      const void *bytes;

      if (!is_shown (line))
        continue;
      plot = tm_band_plot_new (content->job, &line->judgement, NULL);
      png = tm_picture_of_band_plot (plot, WIDTH, HEIGHT, SCALE, NULL);
      bytes = g_bytes_get_data (png, &length);
      worksheet_insert_image_buffer (sheet, shown++ * 14, 30, bytes, length);
    }
}

static void
write_cell (lxw_worksheet *sheet, const TmWorkbookCell *cell, lxw_format *const *formats)
{
  lxw_format *format = cell->style > 0 ? formats[cell->style] : NULL;
  const lxw_col_t column = (lxw_col_t)cell->column;

  switch (cell->kind)
    {
    case TM_CELL_KIND_NUMBER:
      worksheet_write_number (sheet, cell->row, column, cell->number, format);
      break;
    case TM_CELL_KIND_TEXT:
      worksheet_write_string (sheet, cell->row, column, cell->text, format);
      break;
    case TM_CELL_KIND_NUMBER_FORMULA:
      worksheet_write_formula_num (sheet, cell->row, column, cell->formula, format, cell->number);
      break;
    case TM_CELL_KIND_TEXT_FORMULA:
      worksheet_write_formula_str (sheet, cell->row, column, cell->formula, format, cell->text);
      break;
    case TM_CELL_KIND_BLANK:
    default:
      worksheet_write_blank (sheet, cell->row, column, format);
      break;
    }
}

/* The cells of the workbook that was written before, with as many formats, and the pictures drawn again; the
 * few charts, names and page settings are left out. */
static double
measure_library (gpointer data)
{
  const Run *run = data;
  TmReportContent *content = tm_report_content_new (make_job (run));
  g_autoptr (TmWorkbookCells) cells = tm_workbook_cells_read (run->path);
  g_autofree char *path = g_build_filename (run->folder, "alone.xlsx", NULL);
  g_autofree lxw_format **formats = g_new0 (lxw_format *, cells->n_styles);
  lxw_workbook_options options = { .constant_memory = LXW_TRUE };
  const gint64 start = g_get_monotonic_time ();
  const clock_t busy = clock ();
  lxw_workbook *book = workbook_new_opt (path, &options);

  for (guint i = 0; i < cells->n_styles; i++)
    {
      formats[i] = workbook_add_format (book);
      format_set_font_size (formats[i], 8.0 + i);
    }
  for (guint i = 0; i < cells->sheets->len; i++)
    {
      const GArray *rows = g_ptr_array_index (cells->sheets, i);
      lxw_worksheet *sheet = workbook_add_worksheet (book, NULL);

      if (i == 0)
        draw_pictures (content, sheet);
      for (guint j = 0; j < rows->len; j++)
        write_cell (sheet, &g_array_index (rows, TmWorkbookCell, j), formats);
    }
  g_assert_cmpint (workbook_close (book), ==, LXW_NO_ERROR);
  g_unlink (path);
  return tell ("the library alone", start, busy);
}

/* -------- Waiting -------- */

typedef struct {
  gint64 last;
  clock_t busy_last;
  double longest; /* ms by the clock, which other work on the machine stretches */
  double busiest; /* ms of the processor */
  double at;      /* fraction at the longest */
  guint calls;
  double stop_at; /* fraction */
  gint64 stopped;
} Watch;

static gboolean
watch_cb (double fraction, gpointer data)
{
  Watch *watch = data;
  const gint64 now = g_get_monotonic_time ();
  const clock_t busy = clock ();
  const double gap = (double)(now - watch->last) / 1000.0;

  watch->busiest = MAX (watch->busiest, 1000.0 * (double)(busy - watch->busy_last) / CLOCKS_PER_SEC);
  watch->busy_last = busy;
  if (gap > watch->longest)
    {
      watch->longest = gap;
      watch->at = fraction;
    }
  watch->last = now;
  watch->calls++;
  if (fraction < watch->stop_at)
    return TRUE;
  watch->stopped = now;
  return FALSE;
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

/* The library names its own temporary files for an instant while it ends what was cancelled. */
static void
wait_for_files (const char *folder, guint n)
{
  const gint64 end = g_get_monotonic_time () + 5 * G_USEC_PER_SEC;

  while (count_files (folder) != n && g_get_monotonic_time () < end)
    g_thread_yield ();
  g_assert_cmpuint (count_files (folder), ==, n);
}

/* The window has long found its fonts when a report is written, which takes a while in one call. */
static void
find_fonts (const TmReportContent *content)
{
  for (guint i = 0; i < content->lines->len; i++)
    {
      const TmReportLine *line = g_ptr_array_index (content->lines, i);
      g_autoptr (TmBandPlot) plot = NULL;
      g_autoptr (GBytes) png = NULL;

      if (!is_shown (line))
        continue;
      plot = tm_band_plot_new (content->job, &line->judgement, NULL);
      png = tm_picture_of_band_plot (plot, WIDTH, HEIGHT, SCALE, NULL);
      return;
    }
}

/* Whoever cancels is answered after at most this. */
static void
measure_waiting (TmFigures *figures, const char *folder, const char *path)
{
  const Run run = { folder, path, FALSE, TRUE };
  g_autoptr (TmReportContent) content = tm_report_content_new (make_job (&run));
  Watch watch = { .stop_at = 2.0 };
  const guint files = count_files (folder);
  double longest = 0.0;

  find_fonts (content);
  watch.last = g_get_monotonic_time ();
  watch.busy_last = clock ();
  g_assert_true (tm_workbook_write (content, path, &(TmReportForm) { 0 }, NULL, watch_cb, &watch, NULL));
  g_printerr ("asked %u times, longest after %.0f ms at %.2f\n", watch.calls, watch.longest, watch.at);
  tm_figures_add (figures, "longest time between two askings, by the clock", watch.longest, "ms",
                  TM_NO_BOUND);
  tm_figures_add (figures, "  of the processor", watch.busiest, "ms", WAIT);
  for (guint part = 1; part < 7; part++)
    {
      Watch other = { .stop_at = part / 6.5 };

      g_assert_false (tm_workbook_write (content, path, &(TmReportForm) { 0 }, NULL, watch_cb, &other, NULL));
      longest = MAX (longest, (double)(g_get_monotonic_time () - other.stopped) / 1000.0);
      wait_for_files (folder, files);
    }
  tm_figures_add (figures, "from cancelling to the return", longest, "ms", WAIT);
}

static void
add_run (TmFigures *figures, const char *what, Run *run)
{
  TmPhase before, ours, library;

  run->write = FALSE;
  before = tm_phase_run (measure_ours, run);
  run->write = TRUE;
  ours = tm_phase_run (measure_ours, run);
  library = tm_phase_run (measure_library, run);
  tm_figures_add (figures, what, ours.seconds, "s", SECONDS);
  tm_figures_add (figures, "  the library alone", library.seconds, "s", TM_NO_BOUND);
  tm_figures_add (figures, "  ours in hundredths of it", 100.0 * ours.seconds / library.seconds, "%",
                  100.0 * RATIO);
  tm_figures_add (figures, "  peak memory of the process", ours.peak_mib, "MiB", MIB);
  tm_figures_add (figures, "  of it for the job", before.peak_mib, "MiB", MIB);
}

int
main (void)
{
  g_autofree char *folder = g_strdup ("/tmp/tenthmark-bench-XXXXXX");
  g_autofree char *path = NULL;
  TmFigures *figures = tm_figures_new ("Workbook of 600 characteristics on 100 pieces");
  Run first, all;

  /* Whatever is left behind is seen here. */
  g_assert_nonnull (g_mkdtemp (folder));
  g_setenv ("TMPDIR", folder, TRUE);
  path = g_build_filename (folder, "report.xlsx", NULL);
  first = (Run) { folder, path, FALSE, TRUE };
  all = (Run) { folder, path, TRUE, TRUE };
  add_run (figures, "one piece as first article, with its batch", &first);
  add_run (figures, "no first article: each piece has its lines", &all);
  measure_waiting (figures, folder, path);
  g_unlink (path);
  g_rmdir (folder);
  return tm_figures_finish (figures);
}
