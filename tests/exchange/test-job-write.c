/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "exchange-job.h"
#include "support-big-job.h"
#include "support-job-text.h"

#include <glib/gstdio.h>
#include <sched.h>
#include <signal.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>

static TmJob *
read_text (const char *text, gsize length, TmJobNotes *notes)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_job_from_bytes (text, length, "part.tmjob", notes, NULL, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (job);
  return job;
}

static void
assert_same (const char *found, gsize found_length, const char *expected, gsize expected_length)
{
  if (found_length != expected_length || memcmp (found, expected, expected_length) != 0)
    g_assert_cmpstr (found, ==, expected);
  g_assert_cmpuint (found_length, ==, expected_length);
}

/* What is written is read, and written again to the same bytes. */
static void
check_stable (const char *text, gsize length)
{
  g_autoptr (TmJob) job = read_text (text, length, NULL);
  g_autoptr (GString) again = tm_job_to_string (job);

  assert_same (again->str, again->len, text, length);
}

static void
test_samples (void)
{
  const char *folder = g_getenv ("TM_SAMPLE_JOBS");
  const char *names[] = { "bushed-lever.tmjob",   "guide-block-inch.tmjob",     "piston-rings.tmjob",
                          "pivot-arm-inch.tmjob", "pump-bearing-housing.tmjob", "valve-body-batch.tmjob" };

  g_assert_nonnull (folder);
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);
      g_autofree char *text = NULL;
      gsize length;

      g_assert_true (g_file_get_contents (path, &text, &length, NULL));
      check_stable (text, length);
    }
}

/* The canonical form, spelled out: order of members, one row a line, what is empty left out. */
static void
test_canonical (void)
{
  static const char text[]
      = TM_TEST_READINGS ("{\"value\": \"25,010\", \"piece\": \"001\", \"feature\": \"1\", \"typed\": \"\", "
                          "\"place\": 1, \"station\": \"mouth\"}, "
                          "{\"piece\": \"002\", \"feature\": \"3\", \"value\": \"pass\", \"withdrawn\": "
                          "{\"reason\": \"a \\\"b\\\" \\\\ \\u000a\"}}");
  static const char expected[]
      = "{\n \"format\": \"tenthmark-job\",\n \"version\": 1,\n \"job\": {\n  \"id\": \"j\",\n  "
        "\"part_number\": \"P-1\",\n"
        "  \"unit\": \"mm\",\n  \"standard\": \"ISO\",\n  \"decision\": \"guarded\"\n },\n \"features\": [\n"
        "  {\"balloon\": \"1\", \"kind\": \"bore\", \"requirement\": \"Ø25 H7\", \"unit\": \"mm\", "
        "\"nominal\": \"25\","
        " \"lower\": \"25.000\", \"upper\": \"25.021\"},\n"
        "  {\"balloon\": \"2\", \"kind\": \"position\", \"requirement\": \"4X ⌖ Ø0.2 Ⓜ A B\", \"unit\": "
        "\"mm\","
        " \"upper\": \"0.2\", \"places\": 4},\n"
        "  {\"balloon\": \"3\", \"kind\": \"attribute\", \"name\": \"Edges\"}\n ],\n \"pieces\": [\n"
        "  {\"serial\": \"001\"},\n  {\"serial\": \"002\"}\n ],\n \"readings\": [\n"
        "  {\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"station\": \"mouth\", \"value\": "
        "\"25.010\"},\n"
        "  {\"id\": \"2\", \"piece\": \"002\", \"feature\": \"3\", \"value\": \"pass\","
        " \"withdrawn\": {\"reason\": \"a \\\"b\\\" \\\\ \\n\"}}\n ]\n}\n";
  g_autoptr (TmJob) job = read_text (text, strlen (text), NULL);
  g_autoptr (GString) written = tm_job_to_string (job);

  g_assert_cmpstr (written->str, ==, expected);
}

/* Unknown members at every level, with their own spaces and line breaks, come back byte for byte. */
static void
test_unknown (void)
{
  static const char *const kept[] = {
    "\"x_doc\" :\t{\"a\": [1.50, -0, 1e9],\n   \"b\": null}",
    "\"x_job\": \"\\u00e9\\/\\ud800\"",
    "\"x_first\": true",
    "\"x_person\": []",
    "\"x_gauge\": {}",
    "\"x_method\": 0.10",
    "\"x\\\"feature\\\\\": [[\"}\"]]",
    "\"x_mate\": \"]\"",
    "\"x_piece\": 1",
    "\"x_reading\": {\"value\": 25.0}",
    "\"x_withdrawn\": [ ]",
    "\"x_trial\": 2",
    "\"x_cut\": 3",
    "\"x_event\": 4",
    "\"x_nonconformance\": 5",
    "\"x_signature\": 6",
    "\"x_calibration\": 7",
    "\"x_check\": 8",
    "\"x_pin_size\": 9",
    "\"x_line\": 10",
    "\"x_study\": 11",
    "\"x_study_reading\": 12",
  };
  g_autofree char *text = g_strdup_printf (
      "{%s, \"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"P\", \"unit\": "
      "\"mm\", %s, "
      "\"first_article\": {%s}}, \"people\": [{\"initials\": \"A\", %s}], \"gauges\": [{\"tag\": \"g\", "
      "%s}], "
      "\"methods\": [{\"name\": \"m\", \"gauges\": [\"g\"], %s}], \"features\": [{\"balloon\": \"1\", %s, "
      "\"requirement\": \"Ø25 H7\", \"mate\": {%s}}], \"pieces\": [{\"serial\": \"1\", %s}], \"readings\": "
      "[{\"piece\": \"1\", "
      "\"feature\": \"1\", \"value\": \"25\", %s, \"withdrawn\": {\"reason\": \"r\", %s}}], \"pin_trials\": "
      "[{\"piece\": \"1\", "
      "\"feature\": \"1\", \"size\": \"25\", \"went\": true, %s}], \"cuts\": [{\"piece\": \"1\", "
      "\"feature\": \"1\", "
      "\"dialled\": \"1\", %s}], \"events\": [{%s}], \"nonconformances\": [{%s}], \"signatures\": [{%s, "
      "\"x_more\": 7}], \"calibrations\": [{\"gauge\": \"g\", \"date\": \"2026-05-04\", %s}], \"checks\": "
      "[{\"gauge\": \"g\", \"standard\": \"1\", \"reading\": \"1\", %s}], \"pin_sizes\": [{\"gauge\": "
      "\"g\", \"size\": \"1\", \"measured\": \"1\", %s}], \"budget_lines\": [{\"method\": \"m\", "
      "\"value\": \"0\", %s}], \"studies\": [{\"name\": \"s\", \"method\": \"m\", \"pieces\": [\"a\", "
      "\"b\"], \"people\": [\"A\"], \"repeats\": \"2\", %s}], \"study_readings\": [{\"study\": \"s\", "
      "\"piece\": \"a\", \"person\": \"A\", \"trial\": \"2\", \"value\": \"1\", %s}]}",
      kept[0], kept[1], kept[2], kept[3], kept[4], kept[5], kept[6], kept[7], kept[8], kept[9], kept[10],
      kept[11], kept[12], kept[13], kept[14], kept[15], kept[16], kept[17], kept[18], kept[19], kept[20],
      kept[21]);
  g_auto (TmJobNotes) notes = { 0 };
  g_autoptr (TmJob) job = read_text (text, strlen (text), &notes);
  g_autoptr (GString) written = tm_job_to_string (job);

  for (gsize i = 0; i < G_N_ELEMENTS (kept); i++)
    g_assert_nonnull (strstr (written->str, kept[i]));
  g_assert_nonnull (strstr (written->str, "\"x_signature\": 6,\n\"x_more\": 7"));
  check_stable (written->str, written->len);
  g_assert_cmpuint (notes.n_unknown, ==, G_N_ELEMENTS (kept) + 1);
  g_assert_cmpuint (notes.unknown->len, ==, G_N_ELEMENTS (kept) + 1);
  g_assert_true (
      g_ptr_array_find_with_equal_func (notes.unknown, "features[0].mate.x_mate", g_str_equal, NULL));
  g_assert_true (g_ptr_array_find_with_equal_func (notes.unknown, "readings[0].withdrawn.x_withdrawn",
                                                   g_str_equal, NULL));
  g_assert_true (g_ptr_array_find_with_equal_func (notes.unknown, "x_doc", g_str_equal, NULL));
}

/* Of very many unknown members the first hundred are named and all are counted. */
static void
test_many_unknown (void)
{
  g_autoptr (GString) text = g_string_new (TM_TEST_JOB_MM);
  g_auto (TmJobNotes) notes = { 0 };
  g_autoptr (TmJob) job = NULL;

  for (guint i = 0; i < 250; i++)
    g_string_append_printf (text, ", \"x%u\": %u", i, i);
  g_string_append_c (text, '}');
  job = read_text (text->str, text->len, &notes);
  g_assert_cmpuint (notes.n_unknown, ==, 250);
  g_assert_cmpuint (notes.unknown->len, ==, 100);
  g_assert_nonnull (strstr (job->extra, "\"x249\": 249"));
}

static void
test_big (void)
{
  g_autoptr (TmJob) job = tm_test_big_job (200, 5000);
  g_autoptr (GString) text = tm_job_to_string (job);

  check_stable (text->str, text->len);
}

/* A limit that inches cannot express in decimals is written exactly all the same: 1 in = 25.4 mm,
 * and 25.4 mm + 21 µm is no finite decimal of an inch. */
static void
test_inexact_inches (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *feature = tm_feature_new ();
  g_autoptr (GString) text = NULL;
  g_autoptr (TmJob) again = NULL;

  job->id = job->part_number = tm_job_intern (job, "P");
  job->unit = TM_UNIT_IN;
  feature->balloon = tm_job_intern (job, "1");
  feature->kind = TM_KIND_BORE;
  feature->unit = TM_UNIT_IN;
  feature->lower = tm_quantity_new (G_GINT64_CONSTANT (25400000000), TM_UNIT_IN, 3);
  feature->upper = tm_quantity_new (G_GINT64_CONSTANT (25421000000), TM_UNIT_IN, 4);
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  text = tm_job_to_string (job);
  g_assert_nonnull (strstr (text->str, "\"lower\": \"1.000\", \"upper\": \"25.421 mm\""));
  check_stable (text->str, text->len);
  again = read_text (text->str, text->len, NULL);
  g_assert_cmpint (tm_job_find_feature (again, "1")->upper.count, ==, feature->upper.count);
}

/* What is signed is the job without its signatures, so that signing does not change it. */
static void
test_digest (void)
{
  g_autoptr (TmJob) job = tm_test_big_job (3, 10);
  g_autofree char *before = tm_job_digest (job);
  g_autofree char *after = NULL;
  g_autofree char *changed = NULL;
  g_autofree char *expected = NULL;
  g_autoptr (GString) text = tm_job_to_string (job);
  TmSignature *signature = tm_signature_new ();

  expected = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *)text->str, text->len);
  g_assert_cmpstr (before, ==, expected);
  signature->by = tm_job_intern (job, "RT");
  signature->digest = tm_job_intern (job, before);
  tm_job_add_signature (job, signature);
  after = tm_job_digest (job);
  g_assert_cmpstr (after, ==, before);
  job->revision = tm_job_intern (job, "Z");
  changed = tm_job_digest (job);
  g_assert_cmpstr (changed, !=, before);
}

/* Files. */

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
test_file (void)
{
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "Ø job.tmjob", NULL);
  g_autoptr (TmJob) job = tm_test_big_job (5, 30);
  g_autoptr (GString) text = tm_job_to_string (job);
  g_autoptr (GError) error = NULL;
  g_autofree char *found = NULL;
  gsize length;
  struct stat facts;

  g_assert_true (g_file_set_contents (path, "old", 3, NULL));
  g_assert_cmpint (g_chmod (path, 0640), ==, 0);
  g_assert_true (tm_job_to_file (job, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &found, &length, NULL));
  assert_same (found, length, text->str, text->len);
  g_assert_cmpint (g_stat (path, &facts), ==, 0);
  g_assert_cmpint (facts.st_mode & 0777, ==, 0640);
  g_assert_cmpuint (count_files (folder), ==, 1);
  g_unlink (path);
  g_rmdir (folder);
}

/* Where it cannot be written the old file stays, nothing is left over, and one line says why. */
static void
test_file_refused (void)
{
  static const struct {
    const char *name;
    const char *mend;
  } cases[] = {
    { "none/job.tmjob", "check the name" },
    { "file/job.tmjob", "check the name" },
    { "taken", "name a file in it" },
  };
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-XXXXXX", NULL);
  g_autofree char *file = g_build_filename (folder, "file", NULL);
  g_autofree char *taken = g_build_filename (folder, "taken", NULL);
  g_autoptr (TmJob) job = tm_test_big_job (1, 1);

  g_assert_true (g_file_set_contents (file, "old", 3, NULL));
  g_assert_cmpint (g_mkdir (taken, 0700), ==, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_build_filename (folder, cases[i].name, NULL);
      g_autoptr (GError) error = NULL;

      g_assert_false (tm_job_to_file (job, path, &error));
      g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_IO);
      g_assert_true (g_str_has_prefix (error->message, path));
      g_assert_nonnull (strstr (error->message, cases[i].mend));
      g_assert_null (strchr (error->message, '\n'));
      g_assert_cmpuint (count_files (folder), ==, 2);
    }
  g_unlink (file);
  g_rmdir (taken);
  g_rmdir (folder);
}

/* A write that stops in the middle (here at a limit on file sizes, which holds for root too) leaves
 * the old file and nothing else. */
static void
test_stopped_in_the_middle (void)
{
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "job.tmjob", NULL);
  g_autoptr (TmJob) job = tm_test_big_job (5, 2000);
  g_autoptr (GError) error = NULL;
  struct rlimit limit, small;

  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  small = limit;
  small.rlim_cur = 4096;
  signal (SIGXFSZ, SIG_IGN);
  g_assert_true (g_file_set_contents (path, "old", 3, NULL));
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &small), ==, 0);
  g_assert_false (tm_job_to_file (job, path, &error));
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_IO);
  g_assert_cmpuint (count_files (folder), ==, 1);
  g_unlink (path);
  g_rmdir (folder);
}

/* A mount table of our own, in which a test may mount small or read-only file systems: as root, or
 * as the root of a user namespace.  FALSE where neither is allowed. */
static gboolean
enter_own_mounts (void)
{
  if (unshare (CLONE_NEWNS) != 0 && unshare (CLONE_NEWUSER | CLONE_NEWNS) != 0)
    return FALSE;
  /* In a changed root "/" is no mount point and cannot be marked; then the test unmounts for itself. */
  mount ("none", "/", NULL, MS_REC | MS_PRIVATE, NULL);
  return TRUE;
}

/* Whether a small file system can be mounted here, tried in a process of its own. */
static gboolean
can_mount (void)
{
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-XXXXXX", NULL);
  pid_t child = fork ();
  int status = 1;

  if (child == 0)
    _exit (enter_own_mounts () && mount ("none", folder, "tmpfs", 0, "size=64k") == 0 && umount (folder) == 0
               ? 0
               : 1);
  if (child > 0)
    waitpid (child, &status, 0);
  g_rmdir (folder);
  return status == 0;
}

/* Runs in a process of its own: writes where @flags and @options of a small file system forbid it. */
static void
write_to_mount (unsigned long flags, const char *mend)
{
  g_autofree char *folder = g_dir_make_tmp ("tenthmark-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "job.tmjob", NULL);
  g_autoptr (TmJob) job = tm_test_big_job (5, 2000);
  g_autoptr (GError) error = NULL;
  g_autofree char *kept = NULL;

  g_assert_true (enter_own_mounts ());
  g_assert_cmpint (mount ("none", folder, "tmpfs", 0, "size=64k"), ==, 0);
  g_assert_true (g_file_set_contents (path, "old", 3, NULL));
  if (flags != 0)
    g_assert_cmpint (mount ("none", folder, "tmpfs", MS_REMOUNT | flags, "size=64k"), ==, 0);
  g_assert_false (tm_job_to_file (job, path, &error));
  g_assert_error (error, TM_EXCHANGE_ERROR, TM_EXCHANGE_ERROR_IO);
  g_assert_true (g_str_has_prefix (error->message, path));
  g_assert_nonnull (strstr (error->message, mend));
  g_assert_true (g_file_get_contents (path, &kept, NULL, NULL));
  g_assert_cmpstr (kept, ==, "old");
  g_assert_cmpuint (count_files (folder), ==, 1);
  umount (folder);
  g_rmdir (folder);
}

static void
test_mount (unsigned long flags, const char *mend)
{
  if (g_test_subprocess ())
    {
      write_to_mount (flags, mend);
      return;
    }
  if (!can_mount ())
    {
      g_test_skip ("mounting is not allowed here");
      return;
    }
  g_test_trap_subprocess (NULL, 0, 0);
  g_test_trap_assert_passed ();
}

static void
test_disk_full (void)
{
  test_mount (0, "free some room");
}

static void
test_read_only (void)
{
  test_mount (MS_RDONLY, "choose another folder");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/job-write/samples", test_samples);
  g_test_add_func ("/exchange/job-write/canonical", test_canonical);
  g_test_add_func ("/exchange/job-write/unknown", test_unknown);
  g_test_add_func ("/exchange/job-write/many-unknown", test_many_unknown);
  g_test_add_func ("/exchange/job-write/big", test_big);
  g_test_add_func ("/exchange/job-write/inexact-inches", test_inexact_inches);
  g_test_add_func ("/exchange/job-write/digest", test_digest);
  g_test_add_func ("/exchange/job-write/file", test_file);
  g_test_add_func ("/exchange/job-write/file-refused", test_file_refused);
  g_test_add_func ("/exchange/job-write/stopped-in-the-middle", test_stopped_in_the_middle);
  g_test_add_func ("/exchange/job-write/disk-full", test_disk_full);
  g_test_add_func ("/exchange/job-write/read-only", test_read_only);
  return g_test_run ();
}
