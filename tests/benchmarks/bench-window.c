/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-window: the real window with a job file of 1,000 features and 200,000 readings: how long until
 * the Bench is drawn, and from each key until the end of drawing, without the wait for a frame.
 *
 * The keys are real: another program (xdotool) presses them on the X server.  The program measures
 * itself, from the moment that the surface hands over the key press to the end of the next painting,
 * less the time that it slept in poll().  On a machine that others use as well, the figures without the
 * wait for a processor say what the program itself takes.
 */

#include <gio/gio.h>
#include <locale.h>

#include "app-application.h"
#include "app-resources.h"
#include "app-window-private.h"
#include "bench-figures.h"
#include "exchange-job.h"
#include "support-big-job.h"

#define N_FEATURES 1000
#define N_READINGS 200000
#define N_RECORDED 100 /* readings typed and recorded */

#define OPEN_SECONDS 3.0
#define KEY_MS       16.0
#define PEAK_MIB     400.0

#define SETTLE_MS    1500 /* after the Bench is drawn, before the first key */
#define GAP_MS       15   /* from the end of drawing to the next key */
#define GIVE_UP_SECS 240
#define MOVE_EVERY   10 /* readings between two walks through features and pieces */

typedef enum { KEY_TYPED, KEY_RECORDED, KEY_MOVED, N_KEYS } KeyKind;

typedef struct {
  KeyKind kind;
  char name[16]; /* as xdotool calls it */
} Key;

typedef struct {
  double started;
  double opened;

  TmWindow *window;
  GOutputStream *presser; /* xdotool's standard input */
  GQueue keys;            /* Key: still to be pressed */
  guint press_id;         /* of the timer that presses the next one */
  guint n_before;         /* readings when the first key was pressed */
  guint n_rounds;

  gboolean waiting; /* a key was handed over and is not drawn yet */
  KeyKind kind;
  double handed;
  double slept_before;
  double queued_before;
  double slept; /* in poll(), all told */

  GArray *latencies[N_KEYS]; /* ms, double */
  GArray *all;
  GArray *unqueued; /* ms, without the wait for a processor */
} Run;

static Run run;

/* How long the main thread could have run and did not, because others did; 0 where the kernel does
 * not say. */
static double
queued_seconds (void)
{
  g_autofree char *text = NULL;
  const char *second;

  if (!g_file_get_contents ("/proc/self/schedstat", &text, NULL, NULL))
    return 0;
  second = strchr (text, ' ');
  return second != NULL ? 1e-9 * (double)g_ascii_strtoull (second, NULL, 10) : 0;
}

static int
counted_poll (GPollFD *fds, guint n, int timeout)
{
  double start = tm_steady_seconds ();
  int ready = g_poll (fds, n, timeout);

  run.slept += tm_steady_seconds () - start;
  return ready;
}

/* Runs before any handler of the window does. */
static gboolean
surface_event_cb (GSignalInvocationHint *hint, guint n_values, const GValue *values, gpointer data)
{
  GdkEvent *event = g_value_get_pointer (&values[1]);

  if (gdk_event_get_event_type (event) == GDK_KEY_PRESS && !run.waiting)
    {
      run.waiting = TRUE;
      run.handed = tm_steady_seconds ();
      run.slept_before = run.slept;
      run.queued_before = queued_seconds ();
    }
  return TRUE;
}

static void
add_key (KeyKind kind, const char *name)
{
  Key *key = g_new (Key, 1);

  key->kind = kind;
  g_strlcpy (key->name, name, sizeof key->name);
  g_queue_push_tail (&run.keys, key);
}

static void
add_digits (const char *digits)
{
  for (; *digits != '\0'; digits++)
    add_key (KEY_TYPED, (const char[]) { *digits, '\0' });
}

/* A reading of the present feature, in the shorthand of the bench. */
static void
add_reading_keys (const TmFeature *feature)
{
  g_autofree char *microns = g_strdup_printf ("%u", 25008 + run.n_rounds % 5);

  if (tm_kind_is_attribute (feature->kind))
    add_digits ("p");
  else
    {
      add_digits (microns);
      add_key (KEY_TYPED, "BackSpace");
      add_digits (microns + strlen (microns) - 1);
    }
  add_key (KEY_RECORDED, "Return");
}

static void
add_moves (void)
{
  static const char *const moves[] = { "Next", "Next", "Prior", "Prior", "ctrl+Prior", "ctrl+Next" };

  for (gsize i = 0; i < G_N_ELEMENTS (moves); i++)
    add_key (KEY_MOVED, moves[i]);
}

static void
fill_keys (void)
{
  const TmBench *bench = tm_document_bench (tm_window_document (run.window));
  const TmSpot *spot = tm_bench_spot (bench);

  run.n_rounds++;
  /* A slip that was asked about: the reading is given up. */
  for (gsize i = strlen (tm_bench_text (bench)); i > 0; i--)
    add_key (KEY_TYPED, "BackSpace");
  add_reading_keys (spot->feature);
  if (run.n_rounds % MOVE_EVERY == 0)
    add_moves ();
}

static guint
count_recorded (void)
{
  return tm_document_job (tm_window_document (run.window))->readings->len - run.n_before;
}

static gboolean
press_cb (gpointer data)
{
  g_autofree Key *key = NULL;
  g_autofree char *command = NULL;

  run.press_id = 0;
  if (g_queue_is_empty (&run.keys))
    {
      if (count_recorded () >= N_RECORDED)
        {
          gtk_window_destroy (GTK_WINDOW (run.window));
          return G_SOURCE_REMOVE;
        }
      fill_keys ();
    }
  key = g_queue_pop_head (&run.keys);
  run.kind = key->kind;
  command = g_strdup_printf ("key --delay 1 %s\n", key->name);
  g_assert_true (g_output_stream_write_all (run.presser, command, strlen (command), NULL, NULL, NULL));
  g_assert_true (g_output_stream_flush (run.presser, NULL, NULL));
  return G_SOURCE_REMOVE;
}

/* A key with Ctrl is two key presses, each of which may be painted. */
static void
press_after (guint ms)
{
  if (run.press_id == 0)
    run.press_id = g_timeout_add (ms, press_cb, NULL);
}

static void
start_keys (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) xdotool
      = g_subprocess_new (G_SUBPROCESS_FLAGS_STDIN_PIPE, &error, "xdotool", "-", NULL);

  g_assert_no_error (error);
  run.presser = g_object_ref (g_subprocess_get_stdin_pipe (xdotool));
  run.n_before = tm_document_job (tm_window_document (run.window))->readings->len;
  press_after (SETTLE_MS);
}

static gboolean
bench_is_drawn (void)
{
  GtkWidget *page = gtk_stack_get_visible_child (run.window->pages);

  return tm_window_document (run.window) != NULL && page != NULL && gtk_widget_get_mapped (page);
}

static void
painted_cb (GdkFrameClock *clock, gpointer data)
{
  double now = tm_steady_seconds ();
  double latency, unqueued;

  if (run.opened <= 0 && bench_is_drawn ())
    {
      run.opened = now - run.started;
      start_keys ();
    }
  if (!run.waiting)
    return;
  run.waiting = FALSE;
  latency = 1000.0 * (now - run.handed - (run.slept - run.slept_before));
  unqueued = latency - 1000.0 * (queued_seconds () - run.queued_before);
  g_array_append_val (run.latencies[run.kind], latency);
  g_array_append_val (run.all, latency);
  g_array_append_val (run.unqueued, unqueued);
  press_after (GAP_MS);
}

static void
realized_cb (GtkWidget *window, gpointer data)
{
  g_signal_connect_after (gtk_widget_get_frame_clock (window), "after-paint", G_CALLBACK (painted_cb), NULL);
}

static void
window_added_cb (GtkApplication *application, GtkWindow *window, gpointer data)
{
  run.window = TM_WINDOW (window);
  g_signal_connect (window, "realize", G_CALLBACK (realized_cb), NULL);
}

static gboolean
give_up_cb (gpointer data)
{
  g_error ("bench-window: %s after %d s, %u keys", run.opened > 0 ? "keys are not drawn" : "not open",
           GIVE_UP_SECS, run.all->len);
  return G_SOURCE_REMOVE;
}

static void
add_latencies (TmFigures *figures, const char *what, GArray *latencies, double bound)
{
  static const struct {
    const char *name;
    double percent;
  } points[] = { { "half are under", 50 }, { "95 of 100 are under", 95 }, { "longest", 100 } };

  for (gsize i = 0; i < G_N_ELEMENTS (points); i++)
    {
      g_autofree char *line = g_strdup_printf ("%s (%u): %s", what, latencies->len, points[i].name);

      tm_figures_add (figures, line, tm_percentile (latencies, points[i].percent), "ms",
                      points[i].percent == 95 ? bound : TM_NO_BOUND);
    }
}

static int
report (void)
{
  TmFigures *figures = tm_figures_new ("The window with a job of 1000 features and 200000 readings");

  tm_figures_add (figures, "from the start of the program to the Bench drawn", run.opened, "s", OPEN_SECONDS);
  add_latencies (figures, "all keys", run.all, KEY_MS);
  add_latencies (figures, "typed", run.latencies[KEY_TYPED], TM_NO_BOUND);
  add_latencies (figures, "recorded", run.latencies[KEY_RECORDED], TM_NO_BOUND);
  add_latencies (figures, "moved", run.latencies[KEY_MOVED], TM_NO_BOUND);
  add_latencies (figures, "all keys, without the wait for a processor", run.unqueued, TM_NO_BOUND);
  tm_figures_add (figures, "peak memory", tm_peak_mib (), "MiB", PEAK_MIB);
  return tm_figures_finish (figures);
}

/* The program itself, as app-main starts it. */
static int
run_window (const char *book, const char *job, double started)
{
  char *argv[] = { (char *)"tenthmark", (char *)"--book", (char *)book, (char *)job, NULL };
  g_autoptr (TmApplication) application = NULL;
  gpointer surface_class;

  run.started = started;
  run.all = g_array_new (FALSE, FALSE, sizeof (double));
  run.unqueued = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < N_KEYS; i++)
    run.latencies[i] = g_array_new (FALSE, FALSE, sizeof (double));
  setlocale (LC_ALL, "");
  g_resources_register (tm_resources_get_resource ());
  g_main_context_set_poll_func (NULL, counted_poll);
  g_timeout_add_seconds (GIVE_UP_SECS, give_up_cb, NULL);
  application = tm_application_new ();
  surface_class = g_type_class_ref (GDK_TYPE_SURFACE);
  g_signal_add_emission_hook (g_signal_lookup ("event", GDK_TYPE_SURFACE), 0, surface_event_cb, NULL, NULL);
  g_signal_connect (application, "window-added", G_CALLBACK (window_added_cb), NULL);
  g_application_run (G_APPLICATION (application), 4, argv);
  g_type_class_unref (surface_class);
  return report ();
}

static double
make_file (gpointer data)
{
  g_autoptr (TmJob) job = tm_test_big_job (N_FEATURES, N_READINGS);
  g_autoptr (GError) error = NULL;

  tm_job_to_file (job, data, &error);
  g_assert_no_error (error);
  return 0;
}

/* The window is a program of its own, so that its time and memory begin at nothing. */
static int
run_all (const char *self)
{
  char *folder = tm_scratch_new ();
  g_autofree char *job = g_build_filename (folder, "big.tmjob", NULL);
  g_autofree char *book = g_build_filename (folder, "big.tmbook", NULL);
  g_autofree char *started = NULL;
  g_autoptr (GError) error = NULL;
  int status = 0;

  tm_phase_run (make_file, job);
  started = g_strdup_printf ("%" G_GINT64_FORMAT, g_get_monotonic_time ());
  const char *argv[] = { self, book, job, started, NULL };
  g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL, &status, &error);
  g_assert_no_error (error);
  tm_scratch_remove (folder);
  if (g_spawn_check_wait_status (status, &error))
    return 0;
  g_printerr ("bench-window: %s\n", error->message);
  return 1;
}

int
main (int argc, char *argv[])
{
  if (argc == 4)
    return run_window (argv[1], argv[2], (double)g_ascii_strtoll (argv[3], NULL, 10) / 1e6);
  return run_all (argv[0]);
}
