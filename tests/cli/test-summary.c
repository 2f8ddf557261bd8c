/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli summary against certified values, and on files that are not a column of numbers.
 */

#include <math.h>

#include "cli-support.h"

/* NIST/ITL Statistical Reference Datasets, univariate summary statistics: the certified values, of
 * 15 digits; the data in tests/data/strd_univariate.  NumAcc4 in plain double arithmetic keeps 8 of
 * them, because 10000000.1 is no binary fraction. */
static const struct {
  const char *file;
  gint64 count;
  double mean, standard_deviation, lag1;
} certified[] = {
  { "Lew.txt", 200, -177.435000000000, 277.332168044316, -0.307304800605679 },
  { "Mavro.txt", 50, 2.00185600000000, 0.000429123454003053, 0.937989183438248 },
  { "NumAcc1.txt", 3, 10000002, 1, -0.5 },
  { "NumAcc2.txt", 1001, 1.2, 0.1, -0.999 },
  { "NumAcc4.txt", 1001, 10000000.2, 0.1, -0.999 },
  { "PiDigits.txt", 5000, 4.53480000000000, 2.86733906028871, -0.00355099287237972 },
};

/* Twice the half unit of the fifteenth digit that the certified value leaves open. */
#define TOLERANCE 1e-14

static void
assert_close (yajl_val tree, const char *key, double expected)
{
  double found = YAJL_GET_DOUBLE (member (tree, key));

  if (!(fabs (found - expected) <= TOLERANCE * fabs (expected)))
    g_error ("%s: %.17g, certified %.17g", key, found, expected);
}

static void
test_certified (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (certified); i++)
    {
      g_autofree char *path
          = g_build_filename (g_getenv ("TM_TEST_DATA"), "strd_univariate", certified[i].file, NULL);
      g_auto (Call) call = { 0 };
      yajl_val tree;

      g_test_message ("%s", certified[i].file);
      run (&call, "summary", path, "--json", NULL);
      g_assert_cmpint (call.status, ==, 0);
      tree = parse (&call);
      g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "count")), ==, certified[i].count);
      assert_close (tree, "mean", certified[i].mean);
      assert_close (tree, "standard_deviation", certified[i].standard_deviation);
      assert_close (tree, "lag1", certified[i].lag1);
      yajl_tree_free (tree);
    }
}

static void
assert_summary (const char *content, gint64 count, const char *mean)
{
  g_autofree char *path = write_job ("column.txt", content);
  g_autofree char *line = g_strdup_printf ("\"mean\": %s,", mean);
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "summary", path, "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "count")), ==, count);
  g_assert_nonnull (strstr (call.out, line));
  yajl_tree_free (tree);
}

static void
test_forms (void)
{
  assert_summary ("\xEF\xBB\xBF"
                  "1.1\n1.3\n",
                  2, "1.2");
  assert_summary ("1,5\r\n2,5\r\n", 2, "2");
  assert_summary ("size, mm\n# note\n\n24.98\n", 1, "24.98");
  assert_summary ("1e3\n-2.5E-1\n", 2, "499.875");
  assert_summary ("0.1234567890123456789012\n0.1234567890123456789012\n", 2, "0.12345678901234568");
}

static void
test_refused (void)
{
  static const struct {
    const char *content, *wanted;
  } cases[] = {
    { "", "no number" },        { "heading\n", "no number" }, { "1\n0x10\n", "line 2" },
    { "1\n2 3\n", "line 2" },   { "1\nnan\n", "line 2" },     { "1\n1e999\n", "line 2" },
    { "12.3x\n4\n", "line 1" },
  };
  g_autofree char *path = g_build_filename (folder, "zero.txt", NULL);
  g_auto (Call) zero = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *column = write_job ("wrong.txt", cases[i].content);
      g_auto (Call) call = { 0 };

      run (&call, "summary", column, NULL);
      assert_refused (&call, cases[i].wanted);
    }
  g_assert_true (g_file_set_contents (path, "1\n\0\n2\n", 6, NULL));
  run (&zero, "summary", path, NULL);
  assert_refused (&zero, "0x00");
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/summary/certified", test_certified);
  g_test_add_func ("/cli/summary/forms", test_forms);
  g_test_add_func ("/cli/summary/refused", test_refused);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
