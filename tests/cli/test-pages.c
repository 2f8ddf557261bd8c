/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli report, as pages.
 */

#include "cli-support.h"

static char *
read_out (const char *name, gsize *length)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  char *bytes = NULL;

  g_assert_true (g_file_get_contents (path, &bytes, length, NULL));
  return bytes;
}

static void
test_written (void)
{
  g_autofree char *path = write_job ("pages.tmjob", bore_job);
  g_autofree char *bytes = NULL;
  g_auto (Call) call = { 0 };
  yajl_val tree;
  gsize length;

  run (&call, "report", path, "--out", "out.pdf", "--paper", "letter", "--landscape", "--language", "de",
       "--second-language", "en", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "pages")), >=, 2);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "characteristics")), ==, 2);
  yajl_tree_free (tree);
  bytes = read_out ("out.pdf", &length);
  /* ISO 32000-1, 7.5.2 and 7.5.5: how a file begins and ends. */
  g_assert_true (g_str_has_prefix (bytes, "%PDF-1."));
  g_assert_cmpint (memcmp (bytes + length - strlen ("%%EOF\n"), "%%EOF\n", strlen ("%%EOF\n")), ==, 0);
}

static void
test_refused (void)
{
  g_autofree char *path = write_job ("refused.tmjob", bore_job);
  g_autofree char *nothing = g_build_filename (folder, "none.pdf", NULL);
  g_auto (Call) paper = { 0 }, language = { 0 }, nowhere = { 0 };

  run (&paper, "report", path, "--out", "none.pdf", "--paper", "a9", NULL);
  assert_refused (&paper, "a9");
  run (&language, "report", path, "--out", "none.pdf", "--language", "xx", NULL);
  assert_refused (&language, "choose one of de, en");
  run (&nowhere, "report", path, "--out", "no-such-folder/out.pdf", NULL);
  assert_refused (&nowhere, "no-such-folder/out.pdf");
  g_assert_false (g_file_test (nothing, G_FILE_TEST_EXISTS));
}

static void
add_tests (void)
{
  g_test_add_func ("/pages/written", test_written);
  g_test_add_func ("/pages/refused", test_refused);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
