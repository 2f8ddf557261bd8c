/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Programs that are killed while they record, and programs that record at once.
 *
 * The child is this program itself: it records through the recorder and writes a line with the id
 * of each reading and pin trial only after the book said that it is recorded.  SIGKILL shows what the program
 * and SQLite do when they stop at any instruction; it does not show what a power failure does to
 * the disk's own cache.
 */

#include "book-fixture.h"

#include <errno.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#define ID        "5f6c2f0e-0000-4000-8000-000000000006"
#define N_KILLS   200
#define N_A_BOOK  25 /* kills before a new book is begun, so that loading stays quick */
#define PREFIX_ID "%s-%u"

static const char *program;
static const char count_sql[] = "SELECT (SELECT count (*) FROM reading) + (SELECT count (*) FROM pin_trial)";

/* --- the child */

static void
record_one (TmRecorder *recorder, TmJob *job, const char *prefix, guint n)
{
  g_autofree char *id = g_strdup_printf (PREFIX_ID, prefix, n);
  g_autofree char *value = g_strdup_printf ("25.%03u", n % 1000);
  g_autofree char *line = g_strconcat (id, "\n", NULL);
  g_autoptr (TmReading) reading = make_reading (job, id, "001", value);
  GError *error = NULL;

  g_autoptr (TmPinTrial) trial = make_trial (job, id, "001", value);

  /* every other one is a pin trial */
  trial->place = 1 + n % 4;
  if (n % 2 == 0 ? !recorder->record_reading (recorder->self, reading, &error)
                 : !recorder->record_pin_trial (recorder->self, trial, &error))
    g_error ("%s", error->message);
  if (write (STDOUT_FILENO, line, strlen (line)) < 0)
    _exit (1);
}

/* Records @count readings, or for ever when it is 0; now and then folds the log in, too. */
static int
run_child (const char *path, const char *prefix, guint count)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 1);
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  TmRecorder recorder;

  if (book == NULL)
    g_error ("%s", error->message);
  recorder = tm_book_recorder (book, ID);
  for (guint n = 0; count == 0 || n < count; n++)
    {
      record_one (&recorder, job, prefix, n);
      if (n % 16 == 15 && !tm_book_checkpoint (book, &error))
        g_error ("%s", error->message);
    }
  return 0;
}

/* --- the parent */

typedef struct {
  GPid pid;
  int out;
} Child;

static Child
start_child (const char *path, const char *prefix, guint count)
{
  g_autofree char *number = g_strdup_printf ("%u", count);
  const char *arguments[] = { program, "--record", path, prefix, number, NULL };
  Child child = { 0, -1 };
  GError *error = NULL;

  g_spawn_async_with_pipes (NULL, (char **)arguments, NULL, G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL, &child.pid,
                            NULL, &child.out, NULL, &error);
  g_assert_no_error (error);
  return child;
}

/* Every whole line until the end of the pipe. */
static void
read_lines (Child *child, GPtrArray *ids)
{
  g_autoptr (GString) text = g_string_new (NULL);
  char buffer[4096];
  ssize_t n;

  while ((n = read (child->out, buffer, sizeof buffer)) > 0 || (n < 0 && errno == EINTR))
    g_string_append_len (text, buffer, MAX (n, 0));
  for (char *line = text->str, *end; (end = strchr (line, '\n')) != NULL; line = end + 1)
    g_ptr_array_add (ids, g_strndup (line, (gsize)(end - line)));
  close (child->out);
}

static int
finish_child (Child *child, GPtrArray *ids)
{
  int status = 0;

  read_lines (child, ids);
  while (waitpid (child->pid, &status, 0) < 0 && errno == EINTR)
    ;
  g_spawn_close_pid (child->pid);
  return status;
}

static void
make_book (const char *path)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 1);

  put_job (path, job);
}

/* Each id that was acknowledged is there with its value, and no row is half one. */
static void
assert_recorded (const char *path, const GPtrArray *ids)
{
  g_autoptr (TmJob) job = take_job (path, ID);

  for (guint i = 0; i < ids->len; i++)
    {
      const char *id = g_ptr_array_index (ids, i);

      if (tm_job_find_reading (job, id) == NULL && tm_job_find_pin_trial (job, id) == NULL)
        g_error ("%s was acknowledged and is not in the book", id);
    }
  for (guint i = 0; i < job->readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (job->readings, i);
      guint n = (guint)g_ascii_strtoull (strrchr (reading->row.id, '-') + 1, NULL, 10);
      g_autofree char *value = tm_quantity_format (&reading->value);

      g_assert_cmpint (reading->value.count, ==, G_GINT64_CONSTANT (25000000000) + (n % 1000) * 1000000);
      g_assert_cmpstr (value, ==, reading->typed);
    }
  for (guint i = 0; i < job->pin_trials->len; i++)
    {
      const TmPinTrial *trial = g_ptr_array_index (job->pin_trials, i);
      guint n = (guint)g_ascii_strtoull (strrchr (trial->row.id, '-') + 1, NULL, 10);

      g_assert_cmpint (trial->size.count, ==, G_GINT64_CONSTANT (25000000000) + (n % 1000) * 1000000);
      g_assert_cmpuint (trial->place, ==, 1 + n % 4);
    }
  g_assert_cmpuint (job->readings->len + job->pin_trials->len, >=, ids->len);
}

static void
test_kills (Place *place, gconstpointer data)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *path = NULL;
  guint total = 0;
  guint unsaid = 0;

  for (guint i = 0; i < N_KILLS; i++)
    {
      g_autofree char *prefix = g_strdup_printf ("k%u", i);
      Child child;
      int status;

      if (i % N_A_BOOK == 0)
        {
          g_free (path);
          path = g_strdup_printf ("%s-%u", place->path, i);
          make_book (path);
          g_ptr_array_set_size (ids, 0);
        }
      child = start_child (path, prefix, 0);
      g_usleep ((gulong)g_test_rand_int_range (0, 60000));
      kill (child.pid, SIGKILL);
      total -= ids->len;
      status = finish_child (&child, ids);
      total += ids->len;
      g_assert_true (WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL);
      assert_recorded (path, ids);
      assert_clean (path);
      unsaid = (guint)ask_file (path, count_sql) - ids->len;
      g_assert_cmpuint (unsaid, <=, i % N_A_BOOK + 1);
    }
  g_test_message ("%u kills, %u acknowledged readings, all there", N_KILLS, total);
  g_assert_cmpuint (total, >, N_KILLS);
}

/* A program killed while it adds a large job: all of it or nothing. */
static void
test_kill_while_adding (Place *place, gconstpointer data)
{
  guint n_whole = 0;

  for (guint i = 0; i < 12; i++)
    {
      g_autofree char *path = g_strdup_printf ("%s-a%u", place->path, i);
      const char *arguments[] = { program, "--add", path, NULL };
      Child child = { 0, -1 };
      g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
      gint64 readings;

      g_spawn_async_with_pipes (NULL, (char **)arguments, NULL, G_SPAWN_DO_NOT_REAP_CHILD, NULL, NULL,
                                &child.pid, NULL, &child.out, NULL, NULL);
      g_usleep ((gulong)g_test_rand_int_range (10000, 250000));
      kill (child.pid, SIGKILL);
      finish_child (&child, words);
      assert_clean (path);
      readings = ask_file (path, "SELECT count (*) FROM reading");
      g_assert_true (readings == 0 || readings == 20000);
      g_assert_true (words->len == 0 || readings == 20000);
      n_whole += readings > 0;
    }
  g_test_message ("%u of 12 were whole, the others empty", n_whole);
}

static int
run_adding (const char *path)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 1);

  for (guint i = 0; i < 20000; i++)
    {
      TmReading *reading = make_reading (job, "", "001", "25.001");

      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
  put_job (path, job);
  return write (STDOUT_FILENO, "done\n", 5) == 5 ? 0 : 1;
}

/* Two programs, one chain. */
static void
test_two_writers (Place *place, gconstpointer data)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new_with_free_func (g_free);
  const guint count = 150;
  Child one;
  Child two;

  make_book (place->path);
  one = start_child (place->path, "one", count);
  two = start_child (place->path, "two", count);
  g_assert_cmpint (finish_child (&one, ids), ==, 0);
  g_assert_cmpint (finish_child (&two, ids), ==, 0);
  g_assert_cmpuint (ids->len, ==, 2 * count);
  assert_recorded (place->path, ids);
  g_assert_cmpint (ask_file (place->path, count_sql), ==, 2 * count);
  g_assert_cmpint (ask_file (place->path, "SELECT count (DISTINCT hex (prev)) = count (*) FROM journal"), ==,
                   1);
  assert_clean (place->path);
}

int
main (int argc, char **argv)
{
  program = argv[0];
  if (argc == 5 && g_str_equal (argv[1], "--record"))
    return run_child (argv[2], argv[3], (guint)g_ascii_strtoull (argv[4], NULL, 10));
  if (argc == 3 && g_str_equal (argv[1], "--add"))
    return run_adding (argv[2]);

  g_test_init (&argc, &argv, NULL);
#define ADD(name_, function_) \
  g_test_add ("/book/kill/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("kills", test_kills);
  ADD ("kill-while-adding", test_kill_while_adding);
  ADD ("two-writers", test_two_writers);
  return g_test_run ();
}
