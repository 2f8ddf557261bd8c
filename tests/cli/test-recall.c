/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * `book recall` as its users call it.
 */

#include "cli-support.h"

static const char recalled_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"id\": \"j\", \"part_number\": \"T-1\", "
      "\"revision\": \"B\", \"unit\": \"mm\"}, \"gauges\": [{\"tag\": \"M-1\", \"resolution\": \"0.001\", "
      "\"error_limit\": \"0.001\"}, {\"tag\": \"M-2\", \"unit\": \"in\", \"resolution\": \"0.0001\"}], "
      "\"methods\": [{\"name\": \"micrometer\", \"gauges\": [\"M-1\"]}], \"features\": [{\"balloon\": \"1\", "
      "\"kind\": \"bore\", \"requirement\": \"Ø25 H7\", \"method\": \"micrometer\"}], \"pieces\": "
      "[{\"serial\": \"001\"}, {\"serial\": \"002\"}, {\"serial\": \"003\"}], \"readings\": [{\"id\": \"1\", "
      "\"piece\": \"001\", "
      "\"feature\": \"1\", \"station\": \"mouth/12\", \"value\": \"25.019\", \"by\": \"RT\", \"at\": "
      "\"2026-05-04T09:12:33Z\"}, {\"id\": \"2\", \"piece\": \"002\", \"feature\": \"1\", \"value\": "
      "\"25.010\", \"at\": \"2026-05-04T09:13:33Z\"}, {\"id\": \"3\", \"piece\": \"003\", \"feature\": "
      "\"1\", \"value\": \"25.010\", \"at\": \"2026-03-01T09:13:33Z\"}]}";

static char *book;

static void
make_book (void)
{
  g_autofree char *job = write_job ("recalled.tmjob", recalled_job);
  g_auto (Call) call = { 0 };

  if (book == NULL)
    book = g_build_filename (folder, "shop.tmbook", NULL);
  run (&call, "book", "add", job, "--book", book, NULL);
  g_assert_cmpint (call.status, ==, 0);
}

static void
test_json (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;
  yajl_val rows;

  make_book ();
  run (&call, "book", "recall", "--book", book, "--tag", "M-1", "--good-until", "2026-03-01", "--error",
       "-0.005", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "tag", "M-1");
  assert_text (tree, "error", "-0.005");
  assert_text (tree, "unit", "mm");
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "jobs")), ==, 1);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "changed")), ==, 1);
  rows = member (tree, "readings");
  g_assert_cmpuint (YAJL_GET_ARRAY (rows)->len, ==, 2);
  rows = YAJL_GET_ARRAY (rows)->values[0];
  assert_text (rows, "part_number", "T-1");
  assert_text (rows, "piece", "001");
  assert_text (rows, "reading", "1");
  assert_text (rows, "value", "25.019");
  assert_text (rows, "station", "mouth/12");
  assert_text (rows, "method", "micrometer");
  /* 25.019 was read 0.005 too small: 25.024 lies beyond 25.021 */
  assert_text (rows, "verdict_before", "in");
  assert_text (rows, "side_before", NULL);
  assert_text (rows, "verdict_after", "out");
  assert_text (rows, "side_after", "metal gone");
  g_assert_true (YAJL_IS_TRUE (member (rows, "changes")));
  yajl_tree_free (tree);
}

static void
test_text (void)
{
  g_auto (Call) call = { 0 };

  make_book ();
  run (&call, "book", "recall", "--book", book, "--tag", "M-1", "--good-until", "2026-03-01", "--error",
       "-0.005", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "part T-1, piece 001, feature 1, place 1, mouth/12: 25.019 by "
                                      "micrometer, 2026-05-04T09:12:33Z: in; would be out, metal gone\n"));
  g_assert_nonnull (strstr (call.out, "Taken with M-1 after 2026-03-01: 2, in jobs: 1\n"));
  g_assert_nonnull (strstr (call.out, "would change with the error taken out: 1\n"));
}

static void
test_file (void)
{
  g_autofree char *out = g_build_filename (folder, "recall.csv", NULL);
  g_autofree char *text = NULL;
  g_auto (Call) call = { 0 };
  g_auto (Call) again = { 0 };

  make_book ();
  run (&call, "book", "recall", "--book", book, "--tag", "M-1", "--good-until", "2026-03-01", "--out", out,
       NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "Wrote "));
  g_assert_true (g_file_get_contents (out, &text, NULL, NULL));
  g_assert_true (g_str_has_prefix (text, "Job,Part number,Revision,Piece,Feature,"));
  g_assert_nonnull (strstr (text, ",25.019,mm,2026-05-04T09:12:33Z,RT,micrometer,in,"));
  run (&again, "book", "recall", "--book", book, "--tag", "M-1", "--good-until", "2026-03-01", "--out",
       "/nowhere/recall.csv", NULL);
  assert_refused (&again, "/nowhere/recall.csv");
}

/* A gauge that took nothing is no error; one that nobody knows is. */
static void
test_refusals (void)
{
  g_auto (Call) idle = { 0 };
  g_auto (Call) unknown = { 0 };
  g_auto (Call) no_tag = { 0 };
  g_auto (Call) no_date = { 0 };
  g_auto (Call) bad_date = { 0 };
  g_auto (Call) bad_error = { 0 };
  g_auto (Call) more = { 0 };

  make_book ();
  run (&idle, "book", "recall", "--book", book, "--tag", "M-2", "--good-until", "2026-03-01", "--error",
       "0.0002", "--json", NULL);
  g_assert_cmpint (idle.status, ==, 0);
  g_assert_nonnull (strstr (idle.out, "\"unit\": \"in\""));
  run (&unknown, "book", "recall", "--book", book, "--tag", "M-9", "--good-until", "2026-03-01", NULL);
  assert_refused (&unknown, "no gauge “M-9”");
  run (&no_tag, "book", "recall", "--book", book, "--good-until", "2026-03-01", NULL);
  assert_refused (&no_tag, "--tag");
  run (&no_date, "book", "recall", "--book", book, "--tag", "M-1", NULL);
  assert_refused (&no_date, "--good-until");
  run (&bad_date, "book", "recall", "--book", book, "--tag", "M-1", "--good-until", "2026-02-30", NULL);
  assert_refused (&bad_date, "2026-02-30");
  run (&bad_error, "book", "recall", "--book", book, "--tag", "M-1", "--good-until", "2026-03-01", "--error",
       "much", NULL);
  assert_refused (&bad_error, "much");
  run (&more, "book", "recall", "M-1", "--book", book, NULL);
  assert_refused (&more, "M-1");
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/recall/json", test_json);
  g_test_add_func ("/cli/recall/text", test_text);
  g_test_add_func ("/cli/recall/file", test_file);
  g_test_add_func ("/cli/recall/refusals", test_refusals);
}

int
main (int argc, char *argv[])
{
  int status = run_cli_tests (argc, argv, add_tests);

  g_free (book);
  return status;
}
