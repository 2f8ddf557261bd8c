/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli pins --stack and --zero.  The stacks: as in tests/core/test-blocks.c, whose sources they
 * share.
 */

#include "cli-support.h"

static void
assert_stack (const Call *call, const char *const *wanted)
{
  yajl_val tree = parse (call);
  yajl_val stack = member (tree, "stack");

  g_assert_cmpint (call->status, ==, 0);
  g_assert_cmpuint (stack->u.array.len, ==, g_strv_length ((char **)wanted));
  for (gsize i = 0; i < stack->u.array.len; i++)
    g_assert_cmpstr (YAJL_GET_STRING (stack->u.array.values[i]), ==, wanted[i]);
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "count")), ==, (long long)stack->u.array.len);
  yajl_tree_free (tree);
}

static void
test_sets (void)
{
  static const char *const metric[] = { "1.005", "1.340", "6.000", "50.000", NULL };
  static const char *const inch[] = { "0.1001", "0.4000", NULL };
  g_auto (Call) one = { 0 };
  g_auto (Call) other = { 0 };

  run (&one, "pins", "--stack", "58.345", "--set", "M112", "--json", NULL);
  assert_stack (&one, metric);
  run (&other, "pins", "--stack", "0.5001", "--set", "in81", "--json", NULL);
  assert_stack (&other, inch);
}

/* 12.7 mm is half an inch. */
static void
test_units (void)
{
  static const char *const wanted[] = { "12.700", NULL };
  static const char *const own[] = { "0.2000", "0.3000", NULL };
  g_auto (Call) inch_set = { 0 };
  g_auto (Call) own_sizes = { 0 };

  run (&inch_set, "pins", "--stack", "12.7", "--unit", "mm", "--set", "IN81", "--json", NULL);
  assert_stack (&inch_set, wanted);
  run (&own_sizes, "pins", "--stack", ".5", "--unit", "in", "--sizes", ".1-.3 by .1", "--json", NULL);
  assert_stack (&own_sizes, own);
}

static void
test_words (void)
{
  g_auto (Call) call = { 0 };

  run (&call, "pins", "--stack", "58.345", "--set", "M112", "--wear", "2", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_cmpstr (call.out, ==,
                   "1.005 mm\n1.340 mm\n2.000 mm\n50.000 mm\n"
                   "and a wear block of 2.000 mm at either end\n4 blocks make 58.345 mm\n");
}

static void
test_no_stack (void)
{
  g_auto (Call) words = { 0 };
  g_auto (Call) json = { 0 };
  yajl_val tree;

  run (&words, "pins", "--stack", "58.3451", "--set", "M112", NULL);
  g_assert_cmpint (words.status, ==, 1);
  g_assert_cmpstr (words.err, ==, "");
  g_assert_nonnull (strstr (words.out, "58.3451: no eight blocks"));
  run (&json, "pins", "--stack", "58.3451", "--set", "M112", "--json", NULL);
  g_assert_cmpint (json.status, ==, 1);
  tree = parse (&json);
  g_assert_true (YAJL_IS_NULL (member (tree, "stack")));
  g_assert_true (YAJL_IS_NULL (member (tree, "count")));
  yajl_tree_free (tree);
}

static const char blocks_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"T-1\", \"unit\": \"mm\"},"
      " \"gauges\": [{\"tag\": \"GB-1\", \"kind\": \"gauge blocks\", \"unit\": \"mm\","
      "   \"blocks\": \"1-9 by 1; 10-100 by 10\"},"
      "  {\"tag\": \"OM-1\", \"kind\": \"outside micrometer\", \"unit\": \"mm\"}]}";

/* Sizes that do not read are refused with the file, which says where. */
static const char bad_blocks_job[] = "{\"format\": \"tenthmark-job\", \"version\": 1,"
                                     " \"job\": {\"part_number\": \"T-1\", \"unit\": \"mm\"},"
                                     " \"gauges\": [{\"tag\": \"GB-2\", \"kind\": \"gauge blocks\", "
                                     "\"unit\": \"mm\", \"blocks\": \"1; two\"}]}";

static void
test_bad_job (void)
{
  g_autofree char *path = write_job ("bad-blocks.tmjob", bad_blocks_job);
  g_auto (Call) call = { 0 };

  run (&call, "pins", path, "--stack", "47", "--gauge", "GB-2", NULL);
  assert_refused (&call, "gauges[0].blocks");
}

static void
test_job (void)
{
  static const char *const wanted[] = { "7.000", "40.000", NULL };
  static const struct {
    const char *gauge, *wanted;
  } refused[] = { { "OM-1", "no block sizes" }, { "GB-9", "no gauge “GB-9”" } };
  g_autofree char *path = write_job ("blocks.tmjob", blocks_job);
  g_auto (Call) found = { 0 };
  g_auto (Call) unsaid = { 0 };

  run (&found, "pins", path, "--stack", "47", "--gauge", "GB-1", "--json", NULL);
  assert_stack (&found, wanted);
  run (&unsaid, "pins", path, "--stack", "47", NULL);
  assert_refused (&unsaid, "--gauge");
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "pins", path, "--stack", "47", "--gauge", refused[i].gauge, NULL);
      assert_refused (&call, refused[i].wanted);
    }
}

static void
test_refused (void)
{
  static const struct {
    const char *words[6];
    const char *wanted;
  } rows[] = {
    { { "--stack", "47" }, "--set (M112" },
    { { "--stack", "47", "--set", "M13" }, "“M13”" },
    { { "--stack", "47", "--set", "M112", "--sizes", "1" }, "one of --set" },
    { { "--stack", "4x7", "--set", "M112" }, "“4x7”" },
    { { "--stack", "20deg", "--set", "M112" }, "20deg" },
    { { "--stack", "-47", "--set", "M112" }, "not above zero" },
    { { "--stack", "47", "--set", "M112", "--wear", "-2" }, "below zero" },
    { { "--stack", "47", "--sizes", "3-1 by 1" }, "does not come out" },
    { { "--stack", "47", "--set", "M112", "--unit", "ell" }, "“ell”" },
    { { "--stack", "47", "--zero", "25" }, "one at a time" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *const *words = rows[i].words;
      g_auto (Call) call = { 0 };

      run (&call, "pins", words[0], words[1], words[2], words[3], words[4], words[5], NULL);
      assert_refused (&call, rows[i].wanted);
    }
}

/* Hand arithmetic: as in tests/core/test-setting.c. */
static void
test_zero (void)
{
  g_auto (Call) json = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree;

  run (&json, "pins", "--zero", "25.010", "--standard", "25.0023", "--graduation", "0.001", "--lower", "25",
       "--upper", "25.021", "--json", NULL);
  g_assert_cmpint (json.status, ==, 0);
  tree = parse (&json);
  assert_text (tree, "at_standard", "-0.0077");
  g_assert_cmpint (YAJL_GET_INTEGER (member (tree, "marks")), ==, -8);
  assert_text (tree, "left_over", "0.0003");
  assert_text (tree, "lower", "-0.01");
  assert_text (tree, "upper", "0.011");
  yajl_tree_free (tree);
  run (&words, "pins", "--zero", "25.010", "--standard", "25.0023", "--graduation", "0.001", "--reversed",
       NULL);
  g_assert_cmpstr (words.out, ==,
                   "on the standard, put the pointer at +0.0077 mm (mark +8)\n"
                   "that mark leaves -0.0003 mm: add it to every reading\n");
}

static void
test_zero_refused (void)
{
  static const struct {
    const char *words[6];
    const char *wanted;
  } rows[] = {
    { { "--zero", "25" }, "--standard is missing" },
    { { "--zero", "25", "--standard", "25", "--graduation", "0" }, "graduation must be above zero" },
    { { "--zero", "25", "--standard", "52", "--graduation", ".001" }, "more than 2 mm" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const char *const *words = rows[i].words;
      g_auto (Call) call = { 0 };

      run (&call, "pins", words[0], words[1], words[2], words[3], words[4], words[5], NULL);
      assert_refused (&call, rows[i].wanted);
    }
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/stack/sets", test_sets);
  g_test_add_func ("/cli/stack/units", test_units);
  g_test_add_func ("/cli/stack/words", test_words);
  g_test_add_func ("/cli/stack/no-stack", test_no_stack);
  g_test_add_func ("/cli/stack/job", test_job);
  g_test_add_func ("/cli/stack/bad-job", test_bad_job);
  g_test_add_func ("/cli/stack/refused", test_refused);
  g_test_add_func ("/cli/zero/answers", test_zero);
  g_test_add_func ("/cli/zero/refused", test_zero_refused);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
