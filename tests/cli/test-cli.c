/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The command line as its users call it: the program itself is run, with no locale set.
 */

#include "cli-support.h"

/* ISO 286-2: 25 H7 is 0/+21 µm (the spot limits in tests/data). */
static void
test_callout (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "callout", "Ø25 H7", "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "kind", "bore");
  assert_text (tree, "unit", "mm");
  assert_text (tree, "lower", "25.000");
  assert_text (tree, "upper", "25.021");
  g_assert_false (YAJL_IS_TRUE (member (tree, "zone_diameter")));
  assert_text (tree, "modifier", NULL);
  yajl_tree_free (tree);
}

static void
test_callout_position (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "callout", "⌖ Ø0.2 Ⓜ A B C", "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "kind", "position");
  assert_text (tree, "upper", "0.2");
  assert_text (tree, "lower", NULL);
  assert_text (tree, "modifier", "mmc");
  g_assert_true (YAJL_IS_TRUE (member (tree, "zone_diameter")));
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "datums"))->len, ==, 3);
  yajl_tree_free (tree);
}

static void
test_callout_note (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "callout", "break all sharp edges", "--json", NULL);
  g_assert_cmpint (call.status, ==, 1);
  tree = parse (&call);
  assert_text (tree, "kind", "note");
  assert_text (tree, "text", "break all sharp edges");
  yajl_tree_free (tree);
}

/* 25 H7/p6: interference 0.001 to 0.035 mm, recomputed from the ISO 286 tables. */
static void
test_fit (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "fit", "25 H7/p6", "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "clearance_max", "-0.001");
  assert_text (tree, "clearance_min", "-0.035");
  assert_text (member (tree, "hole"), "upper", "25.021");
  assert_text (member (tree, "shaft"), "lower", "25.022");
  yajl_tree_free (tree);
}

/* A number that begins with a minus sign is an operand, not an option. */
static void
test_record_and_judge (void)
{
  g_autofree char *path = write_job ("record.tmjob", bore_job);
  g_auto (Call) recorded = { 0 };
  g_auto (Call) deviated = { 0 };
  g_auto (Call) judged = { 0 };
  yajl_val tree, row;

  run (&recorded, "record", path, "--piece", "001", "--feature", "1", "--by", "AB", "--json", "25010", NULL);
  g_assert_cmpstr (recorded.err, ==, "");
  g_assert_cmpint (recorded.status, ==, 0);
  tree = parse (&recorded);
  row = YAJL_GET_ARRAY (tree)->values[0];
  assert_text (row, "value", "25.010");
  assert_text (row, "typed", "25010");
  yajl_tree_free (tree);

  run (&deviated, "record", path, "--piece", "001", "--feature", "2", "-30", NULL);
  g_assert_cmpstr (deviated.err, ==, "");
  g_assert_cmpint (deviated.status, ==, 0);

  run (&judged, "judge", path, "--json", NULL);
  g_assert_cmpint (judged.status, ==, 0);
  tree = parse (&judged);
  g_assert_cmpuint (YAJL_GET_ARRAY (tree)->len, ==, 2);
  row = YAJL_GET_ARRAY (tree)->values[0];
  assert_text (row, "verdict", "in");
  assert_text (row, "size", "25.010");
  assert_text (row, "reason", NULL);
  row = YAJL_GET_ARRAY (tree)->values[1];
  assert_text (row, "size", "61.970");
  assert_text (row, "verdict", "in");
  assert_text (row, "reason", "no method");
  assert_text (row, "expanded_uncertainty", NULL);
  yajl_tree_free (tree);
}

static void
test_judge_not_good (void)
{
  g_autofree char *path = write_job ("judge.tmjob", bore_job);
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "judge", path, "--feature", "1", "--json", NULL);
  g_assert_cmpint (call.status, ==, 1);
  tree = parse (&call);
  assert_text (YAJL_GET_ARRAY (tree)->values[0], "verdict", "not measured");
  yajl_tree_free (tree);
}

static void
test_record_is_all_or_nothing (void)
{
  g_autofree char *path = write_job ("slip.tmjob", bore_job);
  g_autofree char *after = NULL;
  g_auto (Call) slip = { 0 };
  g_auto (Call) bad = { 0 };
  g_auto (Call) sure = { 0 };

  run (&slip, "record", path, "--piece", "001", "--feature", "1", "25.010", "25.510", NULL);
  assert_refused (&slip, "--sure");
  run (&bad, "record", path, "--piece", "001", "--feature", "1", "25.010", "25,0x0", NULL);
  assert_refused (&bad, "25,0x0");
  g_assert_true (g_file_get_contents (path, &after, NULL, NULL));
  g_assert_cmpstr (after, ==, bore_job);
  run (&sure, "record", path, "--piece", "001", "--feature", "1", "--sure", "25.510", NULL);
  g_assert_cmpint (sure.status, ==, 0);
}

static void
test_summary (void)
{
  g_autofree char *path = write_job ("column.txt", "reading\n10000001\n10000003\n10000002\n");
  g_auto (Call) call = { 0 };
  yajl_val tree;

  /* NIST StRD NumAcc1: mean 10000002, standard deviation 1, lag-1 autocorrelation -0.5, exact. */
  run (&call, "summary", path, "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "count")), ==, 3);
  g_assert_cmpfloat (YAJL_GET_DOUBLE (member (tree, "mean")), ==, 10000002.0);
  g_assert_cmpfloat (YAJL_GET_DOUBLE (member (tree, "standard_deviation")), ==, 1.0);
  g_assert_cmpfloat (YAJL_GET_DOUBLE (member (tree, "lag1")), ==, -0.5);
  yajl_tree_free (tree);
}

static void
test_report (void)
{
  g_autofree char *path = write_job ("report.tmjob", bore_job);
  g_autofree char *head = NULL;
  g_auto (Call) sheet = { 0 };
  g_auto (Call) table = { 0 };
  g_auto (Call) unknown = { 0 };
  g_auto (Call) nowhere = { 0 };
  g_auto (Call) qif = { 0 };
  g_autofree char *written = NULL;
  g_autofree char *table_path = NULL;
  g_autofree char *rows = NULL;

  run (&sheet, "report", path, "--out", "out.xlsx", NULL);
  g_assert_cmpint (sheet.status, ==, 0);
  run (&table, "report", path, "--out", "out.csv", NULL);
  g_assert_cmpint (table.status, ==, 0);
  table_path = g_build_filename (folder, "out.csv", NULL);
  g_file_get_contents (table_path, &rows, NULL, NULL);
  g_assert_true (g_str_has_prefix (rows, "\xef\xbb\xbfRow,Piece,Feature,"));
  g_assert_nonnull (strstr (rows, "\r\nresult,"));
  run (&qif, "report", path, "--out", "out.QIF", NULL);
  g_assert_cmpstr (qif.err, ==, "");
  g_assert_cmpint (qif.status, ==, 0);
  written = g_build_filename (folder, "out.QIF", NULL);
  g_file_get_contents (written, &head, NULL, NULL);
  g_assert_nonnull (
      strstr (head, "<QIFDocument xmlns=\"http://qifstandards.org/xsd/qif3\" versionQIF=\"3.0.0\""));
  run (&unknown, "report", path, "--out", "out.odt", NULL);
  assert_refused (&unknown, "out.odt");
  run (&nowhere, "report", path, "--out", "no-such-folder/out.csv", NULL);
  assert_refused (&nowhere, "no-such-folder/out.csv");
}

static void
test_book (void)
{
  g_autofree char *path = write_job ("book.tmjob", bore_job);
  g_autofree char *exported = NULL;
  g_autofree char *again = NULL;
  g_auto (Call) add = { 0 }, list = { 0 }, export = { 0 }, verify = { 0 }, backup = { 0 }, twice = { 0 };
  g_auto (Call) second = { 0 };

  run (&add, "book", "add", path, "--book", "shop.tmbook", NULL);
  g_assert_cmpstr (add.err, ==, "");
  g_assert_cmpint (add.status, ==, 0);
  run (&twice, "book", "add", path, "--book", "shop.tmbook", NULL);
  g_assert_cmpint (twice.status, ==, 0);
  run (&list, "book", "list", "--book", "shop.tmbook", "--json", NULL);
  g_assert_cmpint (list.status, ==, 0);
  g_assert_nonnull (strstr (list.out, "\"T-1\""));
  run (&export, "book", "export", "T-1", "--book", "shop.tmbook", "--out", "exported.tmjob", NULL);
  g_assert_cmpint (export.status, ==, 0);
  run (&second, "book", "add", "exported.tmjob", "--book", "shop.tmbook", NULL);
  g_assert_cmpint (second.status, ==, 0);
  run (&verify, "book", "verify", "--book", "shop.tmbook", NULL);
  g_assert_cmpint (verify.status, ==, 0);
  run (&backup, "book", "backup", "copy.tmbook", "--book", "shop.tmbook", NULL);
  g_assert_cmpint (backup.status, ==, 0);
}

/* Every verb: wrong arguments are one line and status 2, --help is status 0. */
static void
test_usage (void)
{
  static const char *const verbs[]
      = { "check", "judge", "record", "report", "callout", "fit", "press", "summary", "book" };
  g_auto (Call) unknown = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (verbs); i++)
    {
      g_auto (Call) help = { 0 };
      g_auto (Call) option = { 0 };
      g_auto (Call) empty = { 0 };

      run (&help, verbs[i], "--help", NULL);
      g_assert_cmpint (help.status, ==, 0);
      g_assert_cmpstr (help.err, ==, "");
      g_assert_nonnull (strstr (help.out, verbs[i]));
      run (&option, verbs[i], "--no-such-option", NULL);
      assert_refused (&option, "--no-such-option");
      run (&empty, verbs[i], NULL);
      assert_refused (&empty, verbs[i]);
    }
  run (&unknown, "measure-everything", NULL);
  assert_refused (&unknown, "measure-everything");
}

static void
test_missing_file (void)
{
  static const char *const verbs[] = { "check", "judge", "summary" };

  for (gsize i = 0; i < G_N_ELEMENTS (verbs); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, verbs[i], "no-such-file.tmjob", NULL);
      assert_refused (&call, "no-such-file.tmjob");
    }
}

static void
test_check (void)
{
  g_autofree char *good = write_job ("good.tmjob", bore_job);
  g_autofree char *bad = write_job (
      "bad.tmjob", "{\"format\": \"tenthmark-job\", \"version\": 1,"
                   " \"job\": {\"part_number\": \"T-2\", \"unit\": \"mm\"},"
                   " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 Q7\"}], \"shop\": 1}");
  g_auto (Call) right = { 0 };
  g_auto (Call) wrong = { 0 };
  yajl_val tree;

  run (&right, "check", good, NULL);
  g_assert_cmpint (right.status, ==, 0);
  run (&wrong, "check", bad, "--json", NULL);
  g_assert_cmpint (wrong.status, ==, 1);
  tree = parse (&wrong);
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "wrong"))->len, ==, 1);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "unknown_members")), ==, 1);
  yajl_tree_free (tree);
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/callout", test_callout);
  g_test_add_func ("/cli/callout-position", test_callout_position);
  g_test_add_func ("/cli/callout-note", test_callout_note);
  g_test_add_func ("/cli/fit", test_fit);
  g_test_add_func ("/cli/record-and-judge", test_record_and_judge);
  g_test_add_func ("/cli/judge-not-good", test_judge_not_good);
  g_test_add_func ("/cli/record-all-or-nothing", test_record_is_all_or_nothing);
  g_test_add_func ("/cli/summary", test_summary);
  g_test_add_func ("/cli/report", test_report);
  g_test_add_func ("/cli/book", test_book);
  g_test_add_func ("/cli/usage", test_usage);
  g_test_add_func ("/cli/missing-file", test_missing_file);
  g_test_add_func ("/cli/check", test_check);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
