/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-drawing-check.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "plot-drawing-private.h"

/* Sides of the picture that is drawn to try a page: as large as a screen shows it. */
#define TRIAL_PIXELS 1600.0
#define MAX_ANSWER   4096

#if defined(__SANITIZE_ADDRESS__)
#define SANITIZED 1 /* its shadow memory alone is more than any limit */
#else
#define SANITIZED 0
#endif

/* -------- The child -------- */

static void
set_limit (__rlimit_resource_t resource, rlim_t limit)
{
  const struct rlimit both = { limit, limit };

  setrlimit (resource, &both);
}

static void
set_limits (void)
{
  const int nowhere = SANITIZED ? -1 : STDERR_FILENO;

  set_limit (RLIMIT_CORE, 0);
  set_limit (RLIMIT_CPU, TM_DRAWING_CHECK_SECONDS);
  alarm (TM_DRAWING_CHECK_ALARM);
  if (!SANITIZED)
    set_limit (RLIMIT_DATA, TM_DRAWING_CHECK_BYTES);
  /* What the libraries say of a damaged file is for nobody: the answer says it. */
  if (nowhere >= 0 && freopen ("/dev/null", "w", stderr) == NULL)
    close (nowhere);
}

static GBytes *
read_input (void)
{
  GByteArray *all = g_byte_array_new ();
  guint8 part[65536];
  gssize n;

  while (all->len <= TM_DRAWING_MAX_BYTES && (n = read (STDIN_FILENO, part, sizeof part)) > 0)
    g_byte_array_append (all, part, (guint)n);
  return g_byte_array_free_to_bytes (all);
}

static gboolean
try_page (GBytes *content, guint number, GError **error)
{
  g_autoptr (TmDrawingPage) page = tm_drawing_page_open_unchecked (content, number, error);
  cairo_surface_t *surface;
  cairo_t *cr;
  double scale;

  if (page == NULL)
    return FALSE;
  scale = TRIAL_PIXELS / MAX (page->width, page->height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)MAX (1.0, page->width * scale),
                                        (int)MAX (1.0, page->height * scale));
  cr = cairo_create (surface);
  cairo_scale (cr, scale, scale);
  tm_drawing_page_draw (page, cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return TRUE;
}

/* Answers on standard output: the code of an error and its line, or nothing. */
static int
run_check (const char *page)
{
  g_autoptr (GBytes) content = NULL;
  g_autoptr (GError) error = NULL;
  const guint number = (guint)g_ascii_strtoull (page, NULL, 10);

  set_limits ();
  content = read_input ();
  if (number == 0 ? tm_drawing_look_unchecked (content, NULL, &error) != NULL
                  : try_page (content, number, &error))
    return 0;
  printf ("%d %s\n", error->code, error->message);
  fflush (stdout);
  return 1;
}

/* -------- Who makes the check -------- */

static GMutex lock;
static char *checker;       /* NULL: nobody */
static GHashTable *answers; /* digest and page -> GError, or NULL for what passed */

void
tm_drawing_check_with (const char *program)
{
  g_mutex_lock (&lock);
  g_free (checker);
  checker = g_strdup (program);
  g_mutex_unlock (&lock);
}

gboolean
tm_drawing_check_main (int argc, char *argv[], int *status)
{
  if (argc == 3 && strcmp (argv[1], TM_DRAWING_CHECK_OPTION) == 0)
    {
      *status = run_check (argv[2]);
      return TRUE;
    }
  tm_drawing_check_with ("/proc/self/exe");
  return FALSE;
}

/* -------- The parent -------- */

static void
fail_not_checked (GError **error, const char *reason)
{
  tm_drawing_fail (
      error, TM_PLOT_ERROR_NOT_CHECKED,
      _ ("the drawing could not be checked, since the program cannot start itself (%s); try again, "
         "or keep the drawing as PNG"),
      reason);
}

/* A file in memory with @content, read from its start; -1 with errno. */
static int
put_in_memory (GBytes *content)
{
  gsize length, done = 0;
  const char *data = g_bytes_get_data (content, &length);
  const int file = memfd_create ("drawing", MFD_CLOEXEC);

  while (file >= 0 && done < length)
    {
      const gssize n = write (file, data + done, length - done);

      if (n < 0 && errno != EINTR)
        {
          close (file);
          return -1;
        }
      done += n > 0 ? (gsize)n : 0;
    }
  if (file >= 0)
    lseek (file, 0, SEEK_SET);
  return file;
}

/* Starts the child with @content; -1 with @error. */
static GPid
start_child (const char *program, GBytes *content, guint page, int *answer, GError **error)
{
  g_autofree char *number = g_strdup_printf ("%u", page);
  const char *const argv[] = { program, TM_DRAWING_CHECK_OPTION, number, NULL };
  const int input = put_in_memory (content);
  g_autoptr (GError) problem = NULL;
  GPid child = -1;

  if (input < 0)
    {
      fail_not_checked (error, g_strerror (errno));
      return -1;
    }
  if (!g_spawn_async_with_pipes_and_fds (NULL, argv, NULL, G_SPAWN_DO_NOT_REAP_CHILD | G_SPAWN_CLOEXEC_PIPES,
                                         NULL, NULL, input, -1, -1, NULL, NULL, 0, &child, NULL, answer, NULL,
                                         &problem))
    {
      fail_not_checked (error, problem->message);
      child = -1;
    }
  close (input);
  return child;
}

static char *
read_answer (int answer)
{
  GString *text = g_string_new (NULL);
  char part[512];
  gssize n;

  while ((n = read (answer, part, sizeof part)) > 0 || (n < 0 && errno == EINTR))
    {
      if (n > 0 && text->len < MAX_ANSWER)
        g_string_append_len (text, part, n);
    }
  close (answer);
  return g_string_free (text, FALSE);
}

/* What the child's end says of the drawing. */
static gboolean
take_answer (const char *answer, int status, GError **error)
{
  char *line = NULL;
  gint64 code;

  if (WIFEXITED (status) && WEXITSTATUS (status) == 0)
    return TRUE;
  code = g_ascii_strtoll (answer, &line, 10);
  if (WIFEXITED (status) && WEXITSTATUS (status) == 1 && line != answer && code >= 0
      && code <= TM_PLOT_ERROR_NOT_CHECKED)
    {
      g_autofree char *valid = g_utf8_make_valid (line, -1);

      tm_drawing_fail (error, (TmPlotError)code, "%s", g_strstrip (valid));
    }
  else if (WIFSIGNALED (status)
           && (WTERMSIG (status) == SIGXCPU || WTERMSIG (status) == SIGKILL || WTERMSIG (status) == SIGALRM))
    tm_drawing_fail (error, TM_PLOT_ERROR_TOO_MUCH,
                     _ ("drawing it takes more than %u seconds; save the drawing simpler, or as PNG"),
                     TM_DRAWING_CHECK_SECONDS);
  else
    tm_drawing_fail (
        error, TM_PLOT_ERROR_TOO_MUCH,
        _ ("drawing it takes more than %u MiB of memory or breaks down; save the drawing simpler, "
           "or as PNG"),
        TM_DRAWING_CHECK_BYTES / (1024 * 1024));
  return FALSE;
}

static GError *
ask_child (const char *program, GBytes *content, guint page)
{
  g_autofree char *text = NULL;
  GError *error = NULL;
  int answer = -1, status = 0;
  const GPid child = start_child (program, content, page, &answer, &error);

  if (child < 0)
    return error;
  text = read_answer (answer);
  while (waitpid (child, &status, 0) < 0 && errno == EINTR)
    ;
  g_spawn_close_pid (child);
  take_answer (text, status, &error);
  return error;
}

static void
free_answer (gpointer error)
{
  if (error != NULL)
    g_error_free (error);
}

/* TRUE when the answer is known; an error is a copy. */
static gboolean
recall (const char *key, GError **error)
{
  gpointer known = NULL;
  gboolean found;

  g_mutex_lock (&lock);
  found = answers != NULL && g_hash_table_lookup_extended (answers, key, NULL, &known);
  *error = known != NULL ? g_error_copy (known) : NULL;
  g_mutex_unlock (&lock);
  return found;
}

/* A check that could not be made is tried again the next time. */
static void
remember (const char *key, const GError *error)
{
  if (g_error_matches (error, TM_PLOT_ERROR, TM_PLOT_ERROR_NOT_CHECKED))
    return;
  g_mutex_lock (&lock);
  if (answers == NULL)
    answers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, free_answer);
  g_hash_table_insert (answers, g_strdup (key), error != NULL ? g_error_copy (error) : NULL);
  g_mutex_unlock (&lock);
}

static gboolean
needs_child (GBytes *content, guint page)
{
  switch (tm_drawing_media (content))
    {
    case TM_DRAWING_SVG:
    case TM_DRAWING_PDF:
      return TRUE;
    case TM_DRAWING_JPEG:
      return page != 0;
    case TM_DRAWING_PNG:
    case TM_DRAWING_UNKNOWN:
    default:
      return FALSE;
    }
}

gboolean
tm_drawing_check (GBytes *content, guint page, GError **error)
{
  g_autofree char *program = NULL, *digest = NULL, *key = NULL;
  g_autoptr (GError) problem = NULL;

  g_mutex_lock (&lock);
  program = g_strdup (checker);
  g_mutex_unlock (&lock);
  if (program == NULL || !needs_child (content, page))
    return TRUE;
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, content);
  key = g_strdup_printf ("%s %u", digest, page);
  if (!recall (key, &problem))
    {
      problem = ask_child (program, content, page);
      remember (key, problem);
    }
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}
