/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli record: what it writes, and what it refuses to write because it could not be read back.
 */

#include "cli-support.h"

static const char position_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"T-3\", \"unit\": \"mm\"},"
      " \"gauges\": [{\"tag\": \"HG\", \"unit\": \"mm\", \"resolution\": \"0.001\", \"error_limit\": "
      "\"0.002\"}],"
      " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø10 H9\", \"method\": \"HG\"},"
      "  {\"balloon\": \"2\", \"requirement\": \"⌖ Ø0.2 Ⓜ A B C\", \"size_feature\": \"1\", \"method\": "
      "\"HG\"}],"
      " \"pieces\": [{\"serial\": \"001\"}]}";

static const char gauges_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"T-4\", \"unit\": \"mm\"},"
      " \"gauges\": [{\"tag\": \"BM-2\", \"kind\": \"dial bore gauge\", \"unit\": \"mm\", \"resolution\": "
      "\"0.001\","
      "  \"error_limit\": \"0.002\", \"due\": \"2026-05-03\", \"range_from\": \"10\", \"range_to\": "
      "\"12.5\"},"
      "  {\"tag\": \"PS-XP\", \"kind\": \"pin set\", \"unit\": \"mm\", \"range_from\": \"11.9\", "
      "\"range_to\": \"12.1\","
      "  \"pin_step\": \"0.002\", \"pin_class\": \"X\", \"pin_sign\": \"plus\"},"
      "  {\"tag\": \"PS-ZM\", \"kind\": \"pin set\", \"unit\": \"mm\", \"range_from\": \"11.9\", "
      "\"range_to\": \"12.1\","
      "  \"pin_step\": \"0.002\", \"pin_class\": \"ZZ\", \"pin_sign\": \"minus\"}],"
      " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø12 H7\", \"method\": \"BM-2\"},"
      "  {\"balloon\": \"2\", \"requirement\": \"40 ±0.1\"}],"
      " \"pieces\": [{\"serial\": \"001\"}]}";

static void
assert_unchanged (const char *path, const char *content)
{
  g_autofree char *after = NULL;

  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, content);
}

/* A row that the file could not be read back with must never get into it. */
static void
test_bad_time (void)
{
  static const char *const times[] = {
    "yesterday", "2026-02-30T10:00:00Z", "2026-05-04T09:12:33", "2026-05-04", "", "2026-05-04T24:00:00Z"
  };
  g_autofree char *path = write_job ("time.tmjob", bore_job);

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "record", path, "--piece", "001", "--feature", "1", "--at", times[i], "25.010", NULL);
      assert_refused (&call, "2026-05-04T09:12:33Z");
      assert_unchanged (path, bore_job);
    }
}

static void
test_not_text (void)
{
  g_autofree char *path = write_job ("text.tmjob", bore_job);
  g_auto (Call) bytes = { 0 };
  g_auto (Call) blank = { 0 };

  run (&bytes, "record", path, "--piece", "\xff\xfe", "--new-piece", "--feature", "1", "25.010", NULL);
  assert_refused (&bytes, "UTF-8");
  run (&blank, "record", path, "--piece", "  ", "--new-piece", "--feature", "1", "25.010", NULL);
  assert_refused (&blank, "serial");
  assert_unchanged (path, bore_job);
}

/* 2·sqrt(0.05² + 0.08²) = 0.188680; with a bore 0.020 above its least size 0.220 is allowed at MMC
 * (ASME Y14.5, ISO 2692). */
static void
test_offsets (void)
{
  g_autofree char *path = write_job ("offsets.tmjob", position_job);
  g_auto (Call) size = { 0 };
  g_auto (Call) offsets = { 0 };
  g_auto (Call) judged = { 0 };
  yajl_val tree, row;

  run (&size, "record", path, "--piece", "001", "--feature", "1", "10.020", NULL);
  g_assert_cmpint (size.status, ==, 0);
  run (&offsets, "record", path, "--piece", "001", "--feature", "2", "--dx", "0.05", "--dy", "-0.08",
       "--json", NULL);
  g_assert_cmpint (offsets.status, ==, 0);
  tree = parse (&offsets);
  row = YAJL_GET_ARRAY (tree)->values[0];
  assert_text (row, "value", NULL);
  assert_text (row, "dx", "0.05");
  assert_text (row, "dy", "-0.08");
  yajl_tree_free (tree);
  run (&judged, "judge", path, "--feature", "2", "--json", NULL);
  g_assert_cmpint (judged.status, ==, 0);
  tree = parse (&judged);
  row = YAJL_GET_ARRAY (tree)->values[0];
  assert_text (row, "verdict", "in");
  assert_text (row, "size", "0.189");
  assert_text (row, "upper", "0.22");
  assert_text (row, "lower", NULL);
  yajl_tree_free (tree);
}

static void
test_offsets_refused (void)
{
  g_autofree char *path = write_job ("half.tmjob", position_job);
  g_auto (Call) one = { 0 };
  g_auto (Call) both = { 0 };
  g_auto (Call) word = { 0 };
  g_auto (Call) bore = { 0 };

  run (&one, "record", path, "--piece", "001", "--feature", "2", "--dx", "0.05", NULL);
  assert_refused (&one, "--dx X --dy Y");
  run (&both, "record", path, "--piece", "001", "--feature", "2", "--dx", "1", "--dy", "1", "0.1", NULL);
  assert_refused (&both, "--dx X --dy Y");
  run (&word, "record", path, "--piece", "001", "--feature", "2", "--dx", "0.05", "--dy", "left", NULL);
  assert_refused (&word, "left");
  run (&bore, "record", path, "--piece", "001", "--feature", "1", "--dx", "0.05", "--dy", "0.05", NULL);
  assert_refused (&bore, "no position");
  assert_unchanged (path, position_job);
}

/* What was read is kept whatever it was read with; but a method that is not there is said. */
static void
test_unknown_method (void)
{
  g_autofree char *path = write_job ("method.tmjob", bore_job);
  g_auto (Call) call = { 0 };

  run (&call, "record", path, "--piece", "001", "--feature", "1", "--method", "borrowed", "25.010", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.err, "borrowed"));
  g_assert_nonnull (strstr (call.out, "25.010"));
}

/* A file that this program wrote comes back byte for byte from the book. */
static void
test_byte_stable (void)
{
  g_autofree char *path = write_job ("stable.tmjob", position_job);
  g_autofree char *before = NULL;
  g_auto (Call) record = { 0 }, add = { 0 }, export = { 0 };

  run (&record, "record", path, "--piece", "001", "--feature", "1", "+12", "10012", ".3945 in", NULL);
  g_assert_cmpint (record.status, ==, 0);
  g_assert_true (g_file_get_contents (path, &before, NULL, NULL));
  run (&add, "book", "add", path, "--book", "stable.tmbook", NULL);
  g_assert_cmpint (add.status, ==, 0);
  run (&export, "book", "export", "T-3", "--book", "stable.tmbook", NULL);
  g_assert_cmpint (export.status, ==, 0);
  g_assert_cmpstr (export.out, ==, before);
}

/* Twenty programs that record at once: each reading that was acknowledged is there. */
static void
test_at_once (void)
{
  g_autofree char *path = write_job ("at-once.tmjob", bore_job);
  const char *words[]
      = { g_getenv ("TM_CLI"), "record", path, "--piece", "001", "--feature", "1", "25.010", NULL };
  GSubprocess *processes[20];
  g_auto (Call) check = { 0 };
  yajl_val tree;

  for (gsize i = 0; i < G_N_ELEMENTS (processes); i++)
    {
      processes[i] = g_subprocess_newv (words, G_SUBPROCESS_FLAGS_STDOUT_SILENCE, NULL);
      g_assert_nonnull (processes[i]);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (processes); i++)
    {
      g_assert_true (g_subprocess_wait_check (processes[i], NULL, NULL));
      g_object_unref (processes[i]);
    }
  run (&check, "check", path, "--json", NULL);
  tree = parse (&check);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "readings")), ==, G_N_ELEMENTS (processes));
  yajl_tree_free (tree);
}

/* Nobody has seen what could not be printed. */
static void
test_full_output (void)
{
  g_autofree char *path = write_job ("full.tmjob", bore_job);
  const char *words[] = { g_getenv ("TM_CLI"), "check", path, NULL };
  g_autoptr (GSubprocessLauncher) launcher = g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDERR_PIPE);
  g_autoptr (GSubprocess) process = NULL;
  g_autofree char *said = NULL;

  g_subprocess_launcher_set_stdout_file_path (launcher, "/dev/full");
  process = g_subprocess_launcher_spawnv (launcher, words, NULL);
  g_assert_nonnull (process);
  g_assert_true (g_subprocess_communicate_utf8 (process, NULL, NULL, NULL, &said, NULL));
  g_assert_cmpint (g_subprocess_get_exit_status (process), ==, 2);
  g_assert_nonnull (strstr (said, "standard output"));
}

/* Trials are taken as at the bench: the finest set that holds the pin, or the one named. */
static void
test_pins (void)
{
  g_autofree char *path = write_job ("pins.tmjob", gauges_job);
  g_auto (Call) both = { 0 };
  g_auto (Call) named = { 0 };
  yajl_val tree, row;

  run (&both, "record", path, "--piece", "001", "--feature", "1", "--pin", "12.006+, 12,018 ZZ minus -",
       "--by", "AB", "--json", NULL);
  g_assert_cmpint (both.status, ==, 0);
  tree = parse (&both);
  g_assert_cmpuint (YAJL_GET_ARRAY (tree)->len, ==, 2);
  row = YAJL_GET_ARRAY (tree)->values[0];
  assert_text (row, "id", "1");
  assert_text (row, "pin", "12.006");
  assert_text (row, "class", "X");
  assert_text (row, "sign", "plus");
  assert_text (row, "gauge", "PS-XP");
  g_assert_true (YAJL_IS_TRUE (yajl_tree_get (row, (const char *[]) { "went", NULL }, yajl_t_any)));
  row = YAJL_GET_ARRAY (tree)->values[1];
  assert_text (row, "pin", "12.018");
  assert_text (row, "gauge", "PS-ZM");
  g_assert_true (YAJL_IS_FALSE (yajl_tree_get (row, (const char *[]) { "went", NULL }, yajl_t_any)));
  yajl_tree_free (tree);

  run (&named, "record", path, "--piece", "001", "--feature", "1", "--pin", "12006 go", "--pin-set", "PS-ZM",
       NULL);
  g_assert_cmpint (named.status, ==, 0);
  g_assert_cmpstr (named.out, ==, "pin trial 3: piece 001, feature 1: 12.006, class ZZ minus, went\n");
}

static void
test_pins_refused (void)
{
  static const struct {
    const char *feature;
    const char *pins;
    const char *says;
  } cases[] = {
    { "1", "12.006", "whether the pin went" }, { "1", "12.007+", "no pin set of this job holds 12.007" },
    { "1", "12.006+; 12.0q-", "12.0q" },       { "2", "40.002+", "bores alone" },
    { "1", "", "type the pin's size" },
  };
  g_autofree char *path = write_job ("pins-refused.tmjob", gauges_job);

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "record", path, "--piece", "001", "--feature", cases[i].feature, "--pin", cases[i].pins,
           NULL);
      assert_refused (&call, cases[i].says);
      assert_unchanged (path, gauges_job);
    }
}

static void
test_overdue (void)
{
  g_autofree char *path = write_job ("overdue.tmjob", gauges_job);
  g_auto (Call) refused = { 0 };
  g_auto (Call) excused = { 0 };
  g_autofree char *after = NULL;

  run (&refused, "record", path, "--piece", "001", "--feature", "1", "--at", "2026-05-04T09:12:33Z", "12.010",
       NULL);
  assert_refused (&refused, "BM-2 was due for calibration on 2026-05-03");
  g_assert_nonnull (strstr (refused.err, "--overdue-reason"));
  assert_unchanged (path, gauges_job);
  run (&excused, "record", path, "--piece", "001", "--feature", "1", "--at", "2026-05-04T09:12:33Z",
       "--overdue-reason", "booked for Friday", "--part-temp", "24.5", "--gauge-temp", "21", "12.010", NULL);
  g_assert_cmpint (excused.status, ==, 0);
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_nonnull (strstr (after, "booked for Friday"));
  g_assert_nonnull (strstr (after, "\"part_temp\": \"24.5\""));
  g_assert_nonnull (strstr (after, "\"gauge_temp\": \"21\""));
}

static void
test_gauge_refused (void)
{
  g_autofree char *path = write_job ("gauge-refused.tmjob", gauges_job);
  g_auto (Call) warm = { 0 };
  g_auto (Call) fahrenheit = { 0 };
  g_auto (Call) far = { 0 };

  run (&warm, "record", path, "--piece", "001", "--feature", "1", "--part-temp", "warm", "12.010", NULL);
  assert_refused (&warm, "--part-temp");
  run (&fahrenheit, "record", path, "--piece", "001", "--feature", "1", "--part-temp", "72", "12.010", NULL);
  assert_refused (&fahrenheit, "degrees Celsius");
  /* The gauge reaches 10 to 12.5; a value beyond is asked about like a slip. */
  run (&far, "record", path, "--piece", "001", "--feature", "2", "--method", "BM-2", "--at",
       "2026-05-03T09:12:33Z", "40.01", NULL);
  assert_refused (&far, "outside what BM-2 reaches");
  assert_unchanged (path, gauges_job);
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/record/bad-time", test_bad_time);
  g_test_add_func ("/cli/record/not-text", test_not_text);
  g_test_add_func ("/cli/record/offsets", test_offsets);
  g_test_add_func ("/cli/record/offsets-refused", test_offsets_refused);
  g_test_add_func ("/cli/record/unknown-method", test_unknown_method);
  g_test_add_func ("/cli/record/byte-stable", test_byte_stable);
  g_test_add_func ("/cli/record/at-once", test_at_once);
  g_test_add_func ("/cli/record/pins", test_pins);
  g_test_add_func ("/cli/record/pins-refused", test_pins_refused);
  g_test_add_func ("/cli/record/overdue", test_overdue);
  g_test_add_func ("/cli/record/gauge-refused", test_gauge_refused);
  g_test_add_func ("/cli/full-output", test_full_output);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
