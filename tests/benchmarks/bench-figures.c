/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "bench-figures.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <math.h>
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct {
  char *what;
  double value;
  const char *unit;
  double bound;
} Row;

struct _TmFigures {
  char *title;
  GArray *rows;
};

static void
clear_row (gpointer data)
{
  Row *row = data;

  g_free (row->what);
}

TmFigures *
tm_figures_new (const char *title)
{
  TmFigures *figures = g_new0 (TmFigures, 1);

  figures->title = g_strdup (title);
  figures->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  g_array_set_clear_func (figures->rows, clear_row);
  return figures;
}

void
tm_figures_add (TmFigures *figures, const char *what, double value, const char *unit, double bound)
{
  Row row = { g_strdup (what), value, unit, bound };

  g_array_append_val (figures->rows, row);
}

static gboolean
is_kept (const Row *row)
{
  return row->bound < 0 || row->value < row->bound;
}

static void
print_row (const Row *row)
{
  if (row->bound < 0)
    g_print ("%-70s %10.2f %-4s\n", row->what, row->value, row->unit);
  else
    g_print ("%-70s %10.2f %-4s under %6.0f  %s\n", row->what, row->value, row->unit, row->bound,
             is_kept (row) ? "kept" : "BROKEN");
}

int
tm_figures_finish (TmFigures *figures)
{
  gboolean all_kept = TRUE;

  g_print ("\n%s\n", figures->title);
  for (guint i = 0; i < figures->rows->len; i++)
    {
      const Row *row = &g_array_index (figures->rows, Row, i);

      print_row (row);
      all_kept = all_kept && is_kept (row);
    }
  g_array_unref (figures->rows);
  g_free (figures->title);
  g_free (figures);
  return all_kept ? 0 : 1;
}

static TmPhase
wait_for (pid_t pid, int *exit_status)
{
  struct rusage usage;
  int status = 0;
  TmPhase phase = { 0 };

  g_assert_cmpint (wait4 (pid, &status, 0, &usage), ==, pid);
  g_assert_true (WIFEXITED (status));
  *exit_status = WEXITSTATUS (status);
  phase.cpu = (double)(usage.ru_utime.tv_sec + usage.ru_stime.tv_sec)
              + 1e-6 * (double)(usage.ru_utime.tv_usec + usage.ru_stime.tv_usec);
  phase.peak_mib = (double)usage.ru_maxrss / 1024.0;
  return phase;
}

TmPhase
tm_phase_run (TmPhaseFunc func, gpointer data)
{
  TmPhase phase;
  double seconds = 0;
  int ends[2];
  int status;
  pid_t pid;

  g_assert_cmpint (pipe (ends), ==, 0);
  pid = fork ();
  g_assert_cmpint (pid, >=, 0);
  if (pid == 0)
    {
      seconds = func (data);
      _exit (write (ends[1], &seconds, sizeof seconds) == (gssize)sizeof seconds ? 0 : 1);
    }
  close (ends[1]);
  g_assert_cmpint (read (ends[0], &seconds, sizeof seconds), ==, (gssize)sizeof seconds);
  close (ends[0]);
  phase = wait_for (pid, &status);
  g_assert_cmpint (status, ==, 0);
  phase.seconds = seconds;
  return phase;
}

TmPhase
tm_phase_spawn (const char *const *argv, int *exit_status)
{
  double start = tm_steady_seconds ();
  TmPhase phase;
  pid_t pid = fork ();

  g_assert_cmpint (pid, >=, 0);
  if (pid == 0)
    {
      int nowhere = open ("/dev/null", O_WRONLY | O_CLOEXEC);

      dup2 (nowhere, STDOUT_FILENO);
      execv (argv[0], (char *const *)argv);
      _exit (127);
    }
  phase = wait_for (pid, exit_status);
  phase.seconds = tm_steady_seconds () - start;
  return phase;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double left = *(const double *)a;
  double right = *(const double *)b;

  return (left > right) - (left < right);
}

double
tm_percentile (GArray *values, double percent)
{
  guint rank;

  g_assert_cmpuint (values->len, >, 0);
  g_array_sort (values, compare_doubles);
  rank = (guint)ceil (percent / 100.0 * values->len);
  return g_array_index (values, double, MAX (rank, 1) - 1);
}

double
tm_steady_seconds (void)
{
  return (double)g_get_monotonic_time () / 1e6;
}

/* Not getrusage(): its peak outlives exec(), so that a child shows its parent's. */
double
tm_peak_mib (void)
{
  g_autofree char *status = NULL;
  const char *peak;

  g_assert_true (g_file_get_contents ("/proc/self/status", &status, NULL, NULL));
  peak = strstr (status, "VmHWM:");
  g_assert_nonnull (peak);
  return (double)g_ascii_strtoll (peak + strlen ("VmHWM:"), NULL, 10) / 1024.0;
}

char *
tm_scratch_new (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("tenthmark-bench-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

void
tm_scratch_remove (char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_remove (path);
    }
  g_rmdir (folder);
  g_free (folder);
}
