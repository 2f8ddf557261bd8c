/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-core: how long a job file with 1,000 features and 200,000 readings takes without a screen, and
 * how much memory.  Each line is a process of its own.
 */

#include <glib/gstdio.h>

#include "bench-figures.h"
#include "book-store.h"
#include "core-judge.h"
#include "exchange-job.h"
#include "report-workbook.h"
#include "support-big-job.h"

#define N_FEATURES 1000
#define N_READINGS 200000
#define N_RUNS     3

#define JUDGE_SECONDS 2.0
#define OPEN_SECONDS  3.0
#define PEAK_MIB      400.0

typedef struct {
  char *job_path;
  char *book_path;
  char *other_path;
} Paths;

static TmJob *
read_job (const Paths *paths)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_file (paths->job_path, NULL, NULL, NULL, &error);

  g_assert_no_error (error);
  return job;
}

static TmBook *
open_book (const Paths *paths)
{
  g_autoptr (GError) error = NULL;
  TmBook *book = tm_book_open (paths->book_path, TM_BOOK_OPEN_NORMAL, &error);

  g_assert_no_error (error);
  return book;
}

/* The job whole, for the phases that measure something else. */
static double
make_file (gpointer data)
{
  const Paths *paths = data;
  double start = tm_steady_seconds ();
  TmJob *job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (GError) error = NULL;

  tm_job_to_file (job, paths->job_path, &error);
  g_assert_no_error (error);
  return tm_steady_seconds () - start;
}

static double
measure_read (gpointer data)
{
  double start = tm_steady_seconds ();
  TmJob *job = read_job (data);
  double seconds = tm_steady_seconds () - start;

  g_assert_cmpuint (job->readings->len, ==, N_READINGS);
  return seconds;
}

/* As a program judges that keeps nothing: read, then every place of every piece. */
static double
measure_judge (gpointer data)
{
  double start = tm_steady_seconds ();
  const TmJob *job = read_job (data);
  guint n_measured = 0;

  for (guint p = 0; p < job->pieces->len; p++)
    for (guint f = 0; f < job->features->len; f++)
      {
        g_auto (TmJudgement) judgement = { 0 };

        tm_judge (job, g_ptr_array_index (job->pieces, p), g_ptr_array_index (job->features, f), 1,
                  &judgement);
        n_measured += judgement.verdict != TM_VERDICT_NOT_MEASURED;
      }
  /* The last piece is half measured: every other place has its readings. */
  g_assert_cmpuint (n_measured, >, (job->pieces->len - 1) * job->features->len - 1);
  return tm_steady_seconds () - start;
}

static double
measure_write (gpointer data)
{
  const Paths *paths = data;
  const TmJob *job = read_job (paths);
  g_autoptr (GError) error = NULL;
  double start = tm_steady_seconds ();

  tm_job_to_file (job, paths->other_path, &error);
  g_assert_no_error (error);
  return tm_steady_seconds () - start;
}

/* What opening a job file does below the window. */
static double
measure_add (gpointer data)
{
  const Paths *paths = data;
  double start, seconds;
  g_autoptr (TmBook) book = NULL;
  g_autoptr (GError) error = NULL;
  const TmJob *job;

  g_remove (paths->book_path);
  start = tm_steady_seconds ();
  job = read_job (paths);
  book = open_book (paths);
  tm_book_add_job (book, job, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  seconds = tm_steady_seconds () - start;
  return seconds;
}

static double
measure_load (gpointer data)
{
  double start = tm_steady_seconds ();
  g_autoptr (TmBook) book = open_book (data);
  g_autoptr (GError) error = NULL;
  const TmJob *job = tm_book_load_job (book, "b0000000-0000-4000-8000-000000000001", NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (job->readings->len, ==, N_READINGS);
  return tm_steady_seconds () - start;
}

static double
measure_verify (gpointer data)
{
  double start = tm_steady_seconds ();
  g_autoptr (TmBook) book = open_book (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) faults = NULL;
  guint64 n_checked = 0;

  faults = tm_book_verify (book, &n_checked, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_cmpuint (n_checked, >=, N_READINGS);
  return tm_steady_seconds () - start;
}

static double
measure_workbook (gpointer data)
{
  const Paths *paths = data;
  const TmJob *job = read_job (paths);
  g_autoptr (GError) error = NULL;
  double start = tm_steady_seconds ();
  g_autoptr (TmReportContent) content = tm_report_content_new (job);

  tm_workbook_write (content, paths->other_path, &(TmReportForm) { .paper = TM_PAPER_A4 }, NULL, NULL, NULL,
                     &error);
  g_assert_no_error (error);
  return tm_steady_seconds () - start;
}

typedef struct {
  const char *what;
  TmPhaseFunc run;
  double bound; /* seconds */
} Measure;

static void
add_phase (TmFigures *figures, const char *what, GArray *seconds, GArray *cpu, double peak_mib, double bound)
{
  g_autofree char *wall = g_strdup_printf ("%s: time", what);
  g_autofree char *busy = g_strdup_printf ("%s: processor", what);
  g_autofree char *memory = g_strdup_printf ("%s: peak memory", what);

  tm_figures_add (figures, wall, tm_percentile (seconds, 50), "s", bound);
  tm_figures_add (figures, busy, tm_percentile (cpu, 50), "s", TM_NO_BOUND);
  tm_figures_add (figures, memory, peak_mib, "MiB", PEAK_MIB);
}

static void
note_phase (const TmPhase *phase, GArray *seconds, GArray *cpu, double *peak_mib)
{
  g_array_append_val (seconds, phase->seconds);
  g_array_append_val (cpu, phase->cpu);
  *peak_mib = MAX (*peak_mib, phase->peak_mib);
}

static void
run_measure (TmFigures *figures, const Measure *measure, Paths *paths)
{
  g_autoptr (GArray) seconds = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) cpu = g_array_new (FALSE, FALSE, sizeof (double));
  double peak_mib = 0;

  for (guint i = 0; i < N_RUNS; i++)
    {
      TmPhase phase = tm_phase_run (measure->run, paths);

      note_phase (&phase, seconds, cpu, &peak_mib);
    }
  add_phase (figures, measure->what, seconds, cpu, peak_mib, measure->bound);
}

/* `judge` of the whole file by the command line program, @cli. */
static void
run_cli (TmFigures *figures, const char *cli, const Paths *paths)
{
  const char *argv[] = { cli, "judge", paths->job_path, "--json", NULL };
  g_autoptr (GArray) seconds = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) cpu = g_array_new (FALSE, FALSE, sizeof (double));
  double peak_mib = 0;

  for (guint i = 0; i < N_RUNS; i++)
    {
      int status = 0;
      TmPhase phase = tm_phase_spawn (argv, &status);

      /* 1: the last piece is half measured, which is "not good". */
      g_assert_cmpint (status, ==, 1);
      note_phase (&phase, seconds, cpu, &peak_mib);
    }
  add_phase (figures, "tenthmark-cli judge --json", seconds, cpu, peak_mib, JUDGE_SECONDS);
}

int
main (int argc, char *argv[])
{
  static const Measure measures[] = {
    { "read the job file", measure_read, TM_NO_BOUND },
    { "read it and judge everything", measure_judge, JUDGE_SECONDS },
    { "read it and add it to a new book", measure_add, OPEN_SECONDS },
    { "load it from the book", measure_load, OPEN_SECONDS },
    { "verify the book", measure_verify, TM_NO_BOUND },
    { "write the job file", measure_write, TM_NO_BOUND },
    { "write the workbook", measure_workbook, TM_NO_BOUND },
  };
  char *folder = tm_scratch_new ();
  Paths paths = { g_build_filename (folder, "big.tmjob", NULL), g_build_filename (folder, "big.tmbook", NULL),
                  g_build_filename (folder, "other", NULL) };
  g_autofree char *title = g_strdup_printf ("A job with %d features and %d readings, middle of %d runs",
                                            N_FEATURES, N_READINGS, N_RUNS);
  TmFigures *figures = tm_figures_new (title);

  tm_phase_run (make_file, &paths);
  for (guint i = 0; i < G_N_ELEMENTS (measures); i++)
    run_measure (figures, &measures[i], &paths);
  if (argc > 1)
    run_cli (figures, argv[1], &paths);
  g_free (paths.job_path);
  g_free (paths.book_path);
  g_free (paths.other_path);
  tm_scratch_remove (folder);
  return tm_figures_finish (figures);
}
