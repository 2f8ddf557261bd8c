/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "plot-drawing-check.h"

#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/resource.h>
#include <sys/time.h>
#include <sys/times.h>
#include <sys/wait.h>
#include <unistd.h>

#include "plot-drawing-private.h"

/* Sides of the picture that is drawn to try a page: as large as a screen shows it. */
#define TRIAL_PIXELS 1600.0
#define TRIAL_STACK  (2u * 1024u * 1024u)
#define MAX_ANSWER   4096

#define TICK_US 10000 /* between two looks at the memory */

/* How the child ends. */
enum { PASSED, REFUSED, TOO_MUCH_MEMORY = 3, TOO_LONG = 4, TOO_LONG_TO_OPEN = 5 };

/* -------- The child -------- */

/* A limit of the kernel's would make a library go on without what it asked for, and the same file would then
 * be let through and get that memory here.  So the child may ask for all it likes, is looked at as it runs,
 * and gives up once it has too much. */
static struct {
  int statm;
  gsize page, base; /* bytes: of a page of memory, of the address space at the start */
  clock_t second;   /* ticks in one */
  clock_t begun; /* ticks of the time that passes; of the processor's when the opening began, 0: it has not */
  volatile clock_t opening;
} watch = { .statm = -1 };

/* In ticks (times(2)), which a signal handler may call: what passes, and what this process has used. */
static clock_t
read_ticks (clock_t *used)
{
  struct tms tms = { 0 };
  const clock_t passed = times (&tms);

  *used = tms.tms_utime + tms.tms_stime;
  return passed;
}

/* Address space and memory in use, in bytes (proc(5)).  Only what a signal handler may call. */
static void
read_memory (gsize *size, gsize *resident)
{
  char text[64];
  const gssize n = pread (watch.statm, text, sizeof text - 1, 0);
  gsize *out = size;

  *size = *resident = 0;
  for (gssize i = 0; i < n; i++)
    if (text[i] >= '0' && text[i] <= '9')
      *out = *out * 10 + (gsize)(text[i] - '0');
    else if (out == size)
      out = resident;
    else
      break;
  *size *= watch.page;
  *resident *= watch.page;
}

static void
look_cb (int signal_number)
{
  const int before = errno;
  gsize size, resident;
  clock_t used;

  read_memory (&size, &resident);
  if (resident > TM_DRAWING_CHECK_BYTES || size > watch.base + TM_DRAWING_CHECK_BYTES)
    _exit (TOO_MUCH_MEMORY);
  if (read_ticks (&used) - watch.begun > (clock_t)TM_DRAWING_CHECK_ALARM * watch.second)
    _exit (TOO_LONG);
  if (watch.opening != 0 && used - watch.opening > (clock_t)TM_DRAWING_CHECK_OPENING * watch.second)
    _exit (TOO_LONG_TO_OPEN);
  errno = before;
}

/* The most address space there was, which a look every now and then may miss. */
static gboolean
had_too_much (void)
{
  g_autofree char *status = NULL;
  const char *peak;

  if (!g_file_get_contents ("/proc/self/status", &status, NULL, NULL))
    return TRUE;
  peak = strstr (status, "VmPeak:");
  return peak == NULL
         || g_ascii_strtoull (peak + strlen ("VmPeak:"), NULL, 10) * 1024
                > watch.base + TM_DRAWING_CHECK_BYTES;
}

/* @hard: where the kernel says no more than SIGKILL. */
static void
set_limit (__rlimit_resource_t resource, rlim_t soft, rlim_t hard)
{
  const struct rlimit both = { soft, hard };

  setrlimit (resource, &both);
}

static gboolean
set_limits (void)
{
  const struct sigaction action = { .sa_handler = look_cb, .sa_flags = SA_RESTART };
  const struct itimerval every = { { 0, TICK_US }, { 0, TICK_US } };
  gsize resident;
  clock_t used;

  set_limit (RLIMIT_CORE, 0, 0);
  set_limit (RLIMIT_CPU, TM_DRAWING_CHECK_SECONDS, TM_DRAWING_CHECK_SECONDS + 2);
  watch.second = (clock_t)sysconf (_SC_CLK_TCK);
  watch.begun = read_ticks (&used);
  watch.page = (gsize)sysconf (_SC_PAGESIZE);
  watch.statm = open ("/proc/self/statm", O_RDONLY | O_CLOEXEC);
  read_memory (&watch.base, &resident);
  return watch.base > 0 && sigaction (SIGALRM, &action, NULL) == 0
         && setitimer (ITIMER_REAL, &every, NULL) == 0;
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

/* A PDF is opened again each time that it is shown; a picture and an SVG are drawn as they are opened. */
static TmDrawingPage *
open_page (GBytes *content, guint number, GError **error)
{
  TmDrawingPage *page;
  clock_t used;

  read_ticks (&used);
  if (tm_drawing_media (content) == TM_DRAWING_PDF)
    watch.opening = MAX (used, 1);
  page = tm_drawing_page_open_unchecked (content, number, error);
  watch.opening = 0;
  return page;
}

static gboolean
try_page (GBytes *content, guint number, GError **error)
{
  g_autoptr (TmDrawingPage) page = open_page (content, number, error);
  cairo_surface_t *surface;
  gboolean drawn;
  cairo_t *cr;
  double scale;

  if (page == NULL)
    return FALSE;
  scale = TRIAL_PIXELS / MAX (page->width, page->height);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)MAX (1.0, page->width * scale),
                                        (int)MAX (1.0, page->height * scale));
  cr = cairo_create (surface);
  cairo_scale (cr, scale, scale);
  drawn = tm_drawing_page_draw (page, cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  if (!drawn)
    tm_drawing_fail (error, TM_PLOT_ERROR_TOO_MUCH,
                     _ ("the page is more than can be drawn; save the drawing simpler, or as PNG"));
  return drawn;
}

/* Answers on standard output: the code of an error and its line, or nothing. */
static gpointer
run_trial (gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) content = read_input ();
  const guint number = *(const guint *)data;

  if (number == 0 ? tm_drawing_look_unchecked (content, NULL, &error) != NULL
                  : try_page (content, number, &error))
    return GINT_TO_POINTER (had_too_much () ? TOO_MUCH_MEMORY : PASSED);
  printf ("%d %s\n", error->code, error->message);
  fflush (stdout);
  return GINT_TO_POINTER (REFUSED);
}

/* On a small stack, so that what nests too deep breaks down here and not later on a larger one. */
static int
run_check (const char *page)
{
  guint number = (guint)g_ascii_strtoull (page, NULL, 10);
  gpointer status = GINT_TO_POINTER (TOO_MUCH_MEMORY);
  pthread_attr_t attributes;
  pthread_t thread;

  if (set_limits () && pthread_attr_init (&attributes) == 0
      && pthread_attr_setstacksize (&attributes, TRIAL_STACK) == 0
      && pthread_create (&thread, &attributes, run_trial, &number) == 0)
    pthread_join (thread, &status);
  return GPOINTER_TO_INT (status);
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
  /* What the libraries print of a damaged file is for nobody: the answer says it. */
  const GSpawnFlags flags = G_SPAWN_DO_NOT_REAP_CHILD | G_SPAWN_CLOEXEC_PIPES | G_SPAWN_STDERR_TO_DEV_NULL;
  const int input = put_in_memory (content);
  g_autoptr (GError) problem = NULL;
  GPid child = -1;

  if (input < 0)
    {
      fail_not_checked (error, g_strerror (errno));
      return -1;
    }
  if (!g_spawn_async_with_pipes_and_fds (NULL, argv, NULL, flags, NULL, NULL, input, -1, -1, NULL, NULL, 0,
                                         &child, NULL, answer, NULL, &problem))
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

/* The child refused it and says why; FALSE: it does not. */
static gboolean
take_line (const char *answer, GError **error)
{
  char *line = NULL;
  const gint64 code = g_ascii_strtoll (answer, &line, 10);
  g_autofree char *valid = line != answer ? g_utf8_make_valid (line, -1) : NULL;

  if (valid == NULL || code < 0 || code > TM_PLOT_ERROR_NOT_CHECKED)
    return FALSE;
  tm_drawing_fail (error, (TmPlotError)code, "%s", g_strstrip (valid));
  return TRUE;
}

static void
fail_too_much (int ended, GError **error)
{
  if (ended == TOO_LONG)
    /* Nothing is known of the drawing: the processor was busy with something else. */
    tm_drawing_fail (error, TM_PLOT_ERROR_NOT_CHECKED,
                     _ ("the drawing could not be checked within %u seconds, since the computer has too much "
                        "else to do; try again, or keep the drawing as PNG"),
                     TM_DRAWING_CHECK_ALARM);
  else if (ended == TOO_LONG_TO_OPEN)
    tm_drawing_fail (error, TM_PLOT_ERROR_TOO_MUCH,
                     ngettext ("finding its page takes more than %u second; save the page alone, or as PNG",
                               "finding its page takes more than %u seconds; save the page alone, or as PNG",
                               TM_DRAWING_CHECK_OPENING),
                     TM_DRAWING_CHECK_OPENING);
  else
    tm_drawing_fail (
        error, TM_PLOT_ERROR_TOO_MUCH,
        _ ("drawing it takes more than %u MiB of memory or breaks down; save the drawing simpler, "
           "or as PNG"),
        TM_DRAWING_CHECK_BYTES / (1024 * 1024));
}

/* What the child's end says of the drawing. */
static gboolean
take_answer (const char *answer, int status, GError **error)
{
  const int ended = WIFEXITED (status) ? WEXITSTATUS (status) : -1;

  if (ended == PASSED)
    return TRUE;
  if (ended == REFUSED && take_line (answer, error))
    return FALSE;
  if (WIFSIGNALED (status) && WTERMSIG (status) == SIGXCPU)
    tm_drawing_fail (error, TM_PLOT_ERROR_TOO_MUCH,
                     _ ("drawing it takes more than %u seconds; save the drawing simpler, or as PNG"),
                     TM_DRAWING_CHECK_SECONDS);
  else
    fail_too_much (ended, error);
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
