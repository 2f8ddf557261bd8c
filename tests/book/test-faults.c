/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fault runs: the nth change of the disk, the nth allocation, a full disk, a read-only medium, a
 * book that another program holds.  After each the book holds the old state or the new one, whole,
 * and what was said to be recorded is recorded.
 */

#include "book-fixture.h"
#include "book-private.h"
#include "fault-vfs.h"
#include "support-template.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <sys/mount.h>
#include <sys/stat.h>
#include <unistd.h>

#define ID "5f6c2f0e-0000-4000-8000-000000000005"

/* The sanitizers make a round several times as long. */
#ifdef __SANITIZE_ADDRESS__
#define SPARSE 7
#else
#define SPARSE 1
#endif

/* What is done while the fault comes; each returns TRUE when the book says that it is done. */
typedef gboolean (*Work) (TmBook *book, Place *place, GError **error);

static gboolean
work_record (TmBook *book, Place *place, GError **error)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 2);
  g_autoptr (TmReading) reading = make_reading (job, "2", "001", "25.017");

  return tm_book_record_reading (book, ID, reading, error);
}

static gboolean
work_withdraw (TmBook *book, Place *place, GError **error)
{
  static const TmWithdrawal note = { "RW", "", "burr", "" };

  return tm_book_withdraw_reading (book, ID, "1", &note, error);
}

static gboolean
work_trial (TmBook *book, Place *place, GError **error)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 2);
  g_autoptr (TmPinTrial) trial = make_trial (job, "2", "001", "25.017");

  trial->place = 3;
  trial->gauge = "PS-1";
  return tm_book_record_pin_trial (book, ID, trial, error);
}

static gboolean
work_withdraw_trial (TmBook *book, Place *place, GError **error)
{
  static const TmWithdrawal note = { "RW", "", "the wrong pin", "" };

  return tm_book_withdraw_pin_trial (book, ID, "1", &note, error);
}

static gboolean
work_add (TmBook *book, Place *place, GError **error)
{
  g_autoptr (TmJob) job = make_rich_job ("added");

  return tm_book_add_job (book, job, NULL, NULL, NULL, error);
}

static gboolean
work_save (TmBook *book, Place *place, GError **error)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 30);

  job->customer = "Other Works";
  return tm_book_save_definitions (book, job, "", "", error);
}

static gboolean
work_template (TmBook *book, Place *place, GError **error)
{
  g_autoptr (TmTemplate) template = tm_test_template ();

  return tm_book_save_template (book, template, "RW", "2026-05-04T09:12:33Z", error);
}

static gboolean
work_checkpoint (TmBook *book, Place *place, GError **error)
{
  return work_record (book, place, error) && tm_book_checkpoint (book, error);
}

static gboolean
work_load (TmBook *book, Place *place, GError **error)
{
  g_autoptr (TmJob) job = tm_book_load_job (book, ID, NULL, NULL, error);
  g_autofree char *dump = job != NULL ? dump_job (job) : NULL;

  /* a load that says it is done has it all */
  g_assert_true (job == NULL || strstr (dump, "typed=<25.016>") != NULL);
  g_assert_true (job == NULL || strstr (dump, "part_number=<INV-2002>") != NULL);
  return job != NULL;
}

static gboolean
work_backup (TmBook *book, Place *place, GError **error)
{
  g_autofree char *copy = g_strconcat (place->path, ".copy", NULL);
  gboolean done = tm_book_backup (book, copy, error);

  /* either the whole copy or none */
  g_assert_cmpint (g_file_test (copy, G_FILE_TEST_EXISTS), ==, done);
  g_unlink (copy);
  return done;
}

/* The state in short: what a load gives, and the number of facts. */
static char *
read_state (const char *path)
{
  g_autoptr (TmJob) job = take_job (path, ID);
  g_autofree char *dump = dump_job (job);

  return g_strdup_printf ("%s %" G_GINT64_FORMAT, dump, ask_file (path, "SELECT count (*) FROM journal"));
}

static void
make_book (const char *path)
{
  g_autoptr (TmJob) job = make_bench_job (ID, 2);
  TmReading *reading = make_reading (job, "1", "001", "25.016");

  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_add_pin_trial (job, make_trial (job, "1", "001", "25.016")), ==, TM_ADD_OK);
  put_job (path, job);
}

static void
copy_file (const char *from, const char *to)
{
  g_autofree char *bytes = NULL;
  gsize length = 0;

  g_assert_true (g_file_get_contents (from, &bytes, &length, NULL));
  g_assert_true (g_file_set_contents (to, bytes, (gssize)length, NULL));
}

static void
clear_files (const char *path)
{
  static const char *const endings[] = { "", "-wal", "-shm", "-journal" };

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *file = g_strconcat (path, endings[i], NULL);

      g_unlink (file);
    }
}

/* The bytes of the book's files: all that whoever opens it next can find. */
static GBytes *
read_files (const char *path)
{
  static const char *const endings[] = { "", "-wal", "-journal" };
  GByteArray *all = g_byte_array_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++)
    {
      g_autofree char *file = g_strconcat (path, endings[i], NULL);
      g_autofree char *bytes = NULL;
      gsize length = 0;

      if (g_file_get_contents (file, &bytes, &length, NULL))
        g_byte_array_append (all, (const guint8 *)bytes, (guint)length);
    }
  return g_byte_array_free_to_bytes (all);
}

/* The state of the book, which is clean.  Most faults leave the same bytes: @known has what they hold, so
 * that they are verified and loaded once. */
static const char *
check_state (const char *path, GHashTable *known)
{
  g_autoptr (GBytes) files = read_files (path);
  char *state = g_hash_table_lookup (known, files);

  if (state != NULL)
    return state;
  assert_clean (path);
  state = read_state (path);
  g_hash_table_insert (known, g_steal_pointer (&files), state);
  return state;
}

typedef struct {
  const char *name;
  Work work;
  int rc; /* SQLITE_NOMEM: the memory fails, else the disk */
  gboolean stays;
  guint step; /* from one fault that is tried to the next */
} Run;

static void
arm (const Run *run, guint nth)
{
  if (run->rc == SQLITE_NOMEM)
    fault_arm_memory (nth);
  else
    fault_arm_disk (nth, run->rc, run->stays);
}

static void
assert_said_well (const GError *error, const char *path)
{
  g_assert_nonnull (error);
  g_assert_true (error->domain == TM_BOOK_ERROR);
  g_assert_null (strchr (error->message, '\n'));
  g_assert_nonnull (strstr (error->message, path));
}

/* One round: TRUE when the fault came. */
static gboolean
run_once (Place *place, const Run *run, guint nth, GHashTable *known, const char *before, const char *after)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  const char *state;
  gboolean done;
  gboolean came;

  g_assert_no_error (error);
  arm (run, nth);
  done = run->work (book, place, &error);
  came = fault_disarm ();
  if (done)
    g_assert_no_error (error);
  else
    assert_said_well (error, place->path);
  if (!done && !came)
    g_error ("%s failed without a fault: %s", run->name, error->message);
  g_clear_error (&error);
  g_clear_pointer (&book, tm_book_close);
  state = check_state (place->path, known);
  if (done)
    g_assert_cmpstr (state, ==, after);
  else
    g_assert_true (g_str_equal (state, before) || g_str_equal (state, after));
  return came;
}

static void
test_fault_run (Place *place, gconstpointer data)
{
  const Run *run = data;
  g_autoptr (GHashTable) known
      = g_hash_table_new_full (g_bytes_hash, g_bytes_equal, (GDestroyNotify)g_bytes_unref, g_free);
  g_autofree char *original = g_build_filename (place->folder, "original", NULL);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  GError *error = NULL;
  TmBook *book;
  guint nth = 1;

  make_book (original);
  before = read_state (original);
  copy_file (original, place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (run->work (book, place, &error));
  tm_book_close (book);
  after = read_state (place->path);
  clear_files (place->path);
  copy_file (original, place->path);
  while (run_once (place, run, nth, known, before, after))
    {
      nth += run->step;
      clear_files (place->path);
      copy_file (original, place->path);
    }
  g_test_message ("up to fault %u, each %u; %u outcomes", nth, run->step, g_hash_table_size (known));
  g_assert_cmpuint (nth, >, 1);
}

/* After a fault the same open book goes on working. */
static void
test_goes_on (Place *place, gconstpointer data)
{
  g_autofree char *original = g_build_filename (place->folder, "original", NULL);

  make_book (original);
  for (guint nth = 1; nth < 30; nth++)
    {
      GError *error = NULL;
      g_autoptr (TmBook) book = NULL;
      gboolean done;

      clear_files (place->path);
      copy_file (original, place->path);
      book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
      fault_arm_disk (nth, SQLITE_FULL, FALSE);
      done = work_record (book, place, &error);
      fault_disarm ();
      g_assert_true (done || g_error_matches (error, TM_BOOK_ERROR, TM_BOOK_ERROR_FULL));
      g_clear_error (&error);
      g_assert_true (done || work_record (book, place, &error));
      g_assert_no_error (error);
      g_clear_pointer (&book, tm_book_close);
      g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM reading WHERE id = '2'"), ==, 1);
      assert_clean (place->path);
    }
}

/* Opening a new book on a failing disk: an error, and later a good book. */
static void
test_open_new (Place *place, gconstpointer data)
{
  guint nth = 0;
  gboolean came;

  do
    {
      GError *error = NULL;
      g_autoptr (TmBook) book = NULL;

      clear_files (place->path);
      fault_arm_disk (++nth, SQLITE_IOERR, FALSE);
      book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
      came = fault_disarm ();
      if (book == NULL)
        assert_said_well (error, place->path);
      g_clear_error (&error);
      g_clear_pointer (&book, tm_book_close);
      assert_clean (place->path);
    }
  while (came);
  g_test_message ("up to fault %u", nth);
  g_assert_cmpuint (nth, >, 5);
}

/* --- a book that another program holds */

static void
test_locked (Place *place, gconstpointer data)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  sqlite3 *other = NULL;
  gint64 start;
  gint64 waited;

  make_book (place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_cmpint (sqlite3_open (place->path, &other), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (other, "BEGIN IMMEDIATE", NULL, NULL, NULL), ==, SQLITE_OK);
  start = g_get_monotonic_time ();
  g_assert_false (work_record (book, place, &error));
  waited = g_get_monotonic_time () - start;
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_BUSY);
  assert_said_well (error, place->path);
  g_clear_error (&error);
  /* a moment's patience, and no more: between one second and ten */
  g_assert_cmpint (waited, >, 1000000);
  g_assert_cmpint (waited, <, 10000000);
  /* reading goes on meanwhile */
  g_assert_true (work_load (book, place, &error));
  sqlite3_exec (other, "ROLLBACK", NULL, NULL, NULL);
  sqlite3_close (other);
  g_assert_true (work_record (book, place, &error));
  g_assert_no_error (error);
}

/* With the rollback journal a writer keeps readers out; a backup says so and leaves nothing behind. */
static void
test_locked_backup (Place *place, gconstpointer data)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autofree char *copy = g_strconcat (place->path, ".copy", NULL);
  sqlite3 *other = NULL;

  make_book (place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_ROLLBACK, &error);
  g_assert_no_error (error);
  g_assert_cmpint (sqlite3_open (place->path, &other), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_exec (other, "BEGIN EXCLUSIVE", NULL, NULL, NULL), ==, SQLITE_OK);
  g_assert_false (tm_book_backup (book, copy, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_BUSY);
  assert_said_well (error, place->path);
  g_clear_error (&error);
  g_assert_false (g_file_test (copy, G_FILE_TEST_EXISTS));
  sqlite3_exec (other, "ROLLBACK", NULL, NULL, NULL);
  sqlite3_close (other);
  g_assert_true (tm_book_backup (book, copy, &error));
  g_assert_no_error (error);
}

/* --- real small file systems, for which one must be root */

static gboolean
mount_small (Place *place, const char *options)
{
  if (mount ("tmpfs", place->folder, "tmpfs", 0, options) == 0)
    return TRUE;
  g_test_skip ("no file system can be mounted here (that needs root)");
  return FALSE;
}

static void
remount (Place *place, unsigned long flags, const char *options)
{
  g_assert_cmpint (mount ("tmpfs", place->folder, "tmpfs", MS_REMOUNT | flags, options), ==, 0);
}

static void
tear_down_mount (Place *place, gconstpointer data)
{
  umount2 (place->folder, MNT_DETACH);
  place_tear_down (place, data);
}

static void
fill_disk (const char *path)
{
  FILE *file = fopen (path, "wb");
  char block[4096] = { 1 };

  g_assert_nonnull (file);
  setvbuf (file, NULL, _IONBF, 0);
  while (fwrite (block, 1, sizeof block, file) == sizeof block)
    ;
  fclose (file);
}

static guint
record_until_full (TmBook *book, TmJob *job)
{
  for (guint n = 0;; n++)
    {
      g_autofree char *id = g_strdup_printf ("f%u", n);
      g_autoptr (TmReading) reading = make_reading (job, id, "002", "25.018");
      GError *error = NULL;

      if (tm_book_record_reading (book, ID, reading, &error))
        continue;
      g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_FULL);
      assert_said_well (error, tm_book_path (book));
      g_clear_error (&error);
      return n;
    }
}

static void
test_full_disk (Place *place, gconstpointer data)
{
  g_autofree char *filler = g_build_filename (place->folder, "filler", NULL);
  g_autoptr (TmJob) job = make_bench_job (ID, 2);
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  guint n;

  if (!mount_small (place, "size=2m"))
    return;
  make_book (place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (work_record (book, place, &error));
  fill_disk (filler);
  n = record_until_full (book, job);
  g_assert_true (work_load (book, place, &error));
  g_assert_no_error (error);
  g_unlink (filler);
  g_assert_cmpint (ask_file (place->path, "SELECT count (*) FROM reading"), ==, (gint64)n + 2);
  g_assert_true (work_withdraw (book, place, &error));
  g_assert_no_error (error);
  g_clear_pointer (&book, tm_book_close);
  assert_clean (place->path);
}

static TmJob *
make_large_job (guint n_readings)
{
  TmJob *job = make_bench_job ("large", 1);

  for (guint i = 0; i < n_readings; i++)
    {
      TmReading *reading = make_reading (job, "", "001", "25.019");

      g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
    }
  return job;
}

static void
test_full_in_the_middle (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_large_job (20000);
  g_autoptr (TmJob) back = NULL;
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  if (!mount_small (place, "size=3m"))
    return;
  make_book (place->path);
  before = read_state (place->path);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_false (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_FULL);
  assert_said_well (error, place->path);
  g_clear_error (&error);
  after = read_state (place->path);
  g_assert_cmpstr (before, ==, after);
  /* what the attempt took up is given back: the bench can go on at once */
  g_assert_true (work_record (book, place, &error));
  g_assert_no_error (error);
  remount (place, 0, "size=64m");
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
  g_assert_no_error (error);
  back = tm_book_load_job (book, "large", NULL, NULL, &error);
  assert_same_job (job, back);
  g_clear_pointer (&book, tm_book_close);
  assert_clean (place->path);
}

static void
test_backup_on_full_disk (Place *place, gconstpointer data)
{
  g_autofree char *original = g_strconcat (place->folder, "-original", NULL);
  g_autofree char *filler = g_build_filename (place->folder, "filler", NULL);
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autoptr (GDir) dir = NULL;

  make_book (original);
  if (mount_small (place, "size=100k"))
    {
      book = tm_book_open (original, TM_BOOK_OPEN_NORMAL, &error);
      g_assert_false (tm_book_backup (book, place->path, &error));
      g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_FULL);
      assert_said_well (error, place->path);
      g_clear_error (&error);
      dir = g_dir_open (place->folder, 0, NULL);
      g_assert_null (g_dir_read_name (dir));
      g_clear_pointer (&book, tm_book_close);
    }
  clear_files (original);
}

static void
test_read_only_medium (Place *place, gconstpointer data)
{
  g_autofree char *missing = g_build_filename (place->folder, "missing", NULL);
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;
  g_autoptr (GPtrArray) faults = NULL;
  g_autoptr (GPtrArray) entries = NULL;

  if (!mount_small (place, "size=2m"))
    return;
  make_book (place->path);
  remount (place, MS_RDONLY, NULL);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_no_error (error);
  g_assert_true (tm_book_is_read_only (book));
  g_assert_true (work_load (book, place, &error));
  entries = tm_book_list (book, &error);
  g_assert_cmpuint (entries->len, ==, 1);
  faults = tm_book_verify (book, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_false (work_record (book, place, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY);
  assert_said_well (error, place->path);
  g_clear_error (&error);
  g_assert_true (tm_book_checkpoint (book, &error));
  g_assert_null (tm_book_open (missing, TM_BOOK_OPEN_NORMAL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_CANNOT_OPEN);
  g_clear_error (&error);
}

/* A log left beside the book holds part of the record.  On a medium where it cannot be read in
 * with the book the answer is an error, never the older state. */
static void
test_read_only_with_log (Place *place, gconstpointer data)
{
  g_autofree char *other = g_strconcat (place->folder, "-other", NULL);
  g_autofree char *from = g_strconcat (other, "-wal", NULL);
  g_autofree char *to = g_strconcat (place->path, "-wal", NULL);
  GError *error = NULL;
  g_autoptr (TmBook) writer = NULL;
  g_autoptr (TmBook) book = NULL;

  make_book (other);
  if (mount_small (place, "size=2m"))
    {
      writer = tm_book_open (other, TM_BOOK_OPEN_NORMAL, &error);
      g_assert_true (work_record (writer, place, &error));
      copy_file (other, place->path);
      copy_file (from, to);
      remount (place, MS_RDONLY, NULL);
      book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
      if (book == NULL)
        assert_said_well (error, place->path);
      else
        {
          g_autoptr (TmJob) job = tm_book_load_job (book, ID, NULL, NULL, &error);

          g_assert_no_error (error);
          g_assert_nonnull (tm_job_find_reading (job, "2"));
        }
      g_clear_error (&error);
      g_clear_pointer (&writer, tm_book_close);
    }
  clear_files (other);
}

static void
add_runs (void)
{
  /* Every change of the disk fails in its turn.  So does every allocation, but where there are thousands and
   * most of them alike: there every third or eleventh does. */
  static const struct {
    const char *name;
    Work work;
    guint memory_step;
  } works[] = {
    { "record", work_record, 1 },
    { "withdraw", work_withdraw, 1 },
    { "add", work_add, 3 },
    { "trial", work_trial, 1 },
    { "withdraw-trial", work_withdraw_trial, 1 },
    { "save", work_save, 3 },
    { "template", work_template, 1 },
    { "checkpoint", work_checkpoint, 1 },
    { "backup", work_backup, 11 },
  };
  static const struct {
    const char *name;
    int rc;
    gboolean stays;
  } faults[] = {
    { "io-once", SQLITE_IOERR, FALSE },  { "io-stays", SQLITE_IOERR, TRUE },
    { "full-once", SQLITE_FULL, FALSE }, { "full-stays", SQLITE_FULL, TRUE },
    { "memory", SQLITE_NOMEM, FALSE },
  };
  static Run runs[G_N_ELEMENTS (works) * G_N_ELEMENTS (faults) + 1];
  guint n = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (works); i++)
    {
      for (gsize k = 0; k < G_N_ELEMENTS (faults); k++)
        {
          g_autofree char *path = g_strdup_printf ("/book/faults/%s/%s", works[i].name, faults[k].name);

          runs[n] = (Run) { works[i].name, works[i].work, faults[k].rc, faults[k].stays,
                            faults[k].rc == SQLITE_NOMEM ? SPARSE * works[i].memory_step : 1 };
          g_test_add (path, Place, &runs[n++], place_set_up, test_fault_run, place_tear_down);
        }
    }
  runs[n] = (Run) { "load", work_load, SQLITE_NOMEM, FALSE, SPARSE * 3 };
  g_test_add ("/book/faults/load/memory", Place, &runs[n], place_set_up, test_fault_run, place_tear_down);
}

int
main (int argc, char **argv)
{
  /* hundreds of small books: in memory where there is such a folder, for the faults are ours */
  if (access ("/dev/shm", W_OK) == 0)
    g_setenv ("TMPDIR", "/dev/shm", FALSE);
  g_test_init (&argc, &argv, NULL);
  fault_set_up ();

  add_runs ();
#define ADD(name_, function_) \
  g_test_add ("/book/faults/" name_, Place, NULL, place_set_up, function_, place_tear_down)
#define ADD_MOUNT(name_, function_) \
  g_test_add ("/book/faults/" name_, Place, NULL, place_set_up, function_, tear_down_mount)
  ADD ("goes-on", test_goes_on);
  ADD ("open-new", test_open_new);
  ADD ("locked", test_locked);
  ADD ("locked-backup", test_locked_backup);
  ADD_MOUNT ("full-disk", test_full_disk);
  ADD_MOUNT ("full-in-the-middle", test_full_in_the_middle);
  ADD_MOUNT ("backup-on-full-disk", test_backup_on_full_disk);
  ADD_MOUNT ("read-only-medium", test_read_only_medium);
  ADD_MOUNT ("read-only-with-log", test_read_only_with_log);
  return g_test_run ();
}
