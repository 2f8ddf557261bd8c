/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A new revision by the command line: a job file that measures what is affected, and refusals.
 */

#include "cli-support.h"

static char *sample; /* the housing of the sample jobs: features 1 to 12, report EX-FA-1181 */

static char *
out_path (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
test_partial (void)
{
  g_autofree char *out = out_path ("next.tmjob");
  g_auto (Call) call = { 0 }, check = { 0 }, judge = { 0 };
  yajl_val tree;

  run (&call, "revise", sample, "--revision", "Z9", "--reason", "bore moved", "--affected", "1, 3",
       "--report", "FA-NEXT", "--out", out, "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "revision", "Z9");
  assert_text (tree, "first_article", "partial");
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "measure_again"))->len, ==, 2);
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "by_reference"))->len, ==, 10);
  yajl_tree_free (tree);
  run (&check, "check", out, NULL);
  g_assert_cmpint (check.status, ==, 0);
  g_assert_nonnull (strstr (check.out, "readings 0"));
  /* No piece, so nothing is judged, and nothing is wrong. */
  run (&judge, "judge", out, "--json", NULL);
  g_assert_cmpint (judge.status, ==, 0);
}

static void
test_refused (void)
{
  g_autofree char *out = out_path ("refused.tmjob");
  g_auto (Call) same = { 0 }, none = { 0 }, stranger = { 0 }, nowhere = { 0 }, reason = { 0 };

  run (&none, "revise", sample, "--revision", "Z9", "--reason", "x", "--out", out, NULL);
  assert_refused (&none, "no feature is affected");
  run (&same, "revise", sample, "--reason", "x", "--affected", "1", "--out", out, NULL);
  assert_refused (&same, "the new revision has no name");
  run (&stranger, "revise", sample, "--revision", "Z9", "--reason", "x", "--affected", "1,99", "--out", out,
       NULL);
  assert_refused (&stranger, "feature 99");
  run (&nowhere, "revise", sample, "--revision", "Z9", NULL);
  assert_refused (&nowhere, "--out");
  run (&reason, "revise", sample, "--revision", "Z9", "--affected", "1", "--out", out, NULL);
  assert_refused (&reason, "reason");
  g_assert_false (g_file_test (out, G_FILE_TEST_EXISTS));
}

/* A file that is there is never overwritten. */
static void
test_keeps_file (void)
{
  g_autofree char *out = write_job ("there.tmjob", "kept");
  g_autofree char *content = NULL;
  g_auto (Call) call = { 0 };

  run (&call, "revise", sample, "--revision", "Z9", "--full", "--out", out, NULL);
  assert_refused (&call, "there.tmjob");
  g_assert_true (g_file_get_contents (out, &content, NULL, NULL));
  g_assert_cmpstr (content, ==, "kept");
}

static void
add_tests (void)
{
  sample = g_build_filename (g_getenv ("TM_SAMPLE_JOBS"), "pump-bearing-housing.tmjob", NULL);
  g_test_add_func ("/cli/revise/partial", test_partial);
  g_test_add_func ("/cli/revise/refused", test_refused);
  g_test_add_func ("/cli/revise/keeps-file", test_keeps_file);
}

int
main (int argc, char *argv[])
{
  int status = run_cli_tests (argc, argv, add_tests);

  g_free (sample);
  return status;
}
