/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli budget: published budgets as files, and what is no budget; judge with what it rests on.
 */

#include <math.h>

#include "cli-support.h"

static void
assert_close (yajl_val tree, const char *key, double expected, double tolerance)
{
  yajl_val value = member (tree, key);

  g_assert_true (YAJL_IS_NUMBER (value));
  if (!(fabs (YAJL_GET_DOUBLE (value) - expected) <= tolerance))
    g_error ("%s: %.17g, expected %.17g", key, YAJL_GET_DOUBLE (value), expected);
}

static yajl_val
budget (const char *content)
{
  g_autofree char *path = write_job ("budget.json", content);
  g_auto (Call) call = { 0 };

  run (&call, "budget", path, "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  return parse (&call);
}

/* JCGM 100, H.1, from unrounded parts: u_c 31.66 nm, dof 16.74 → 16, k 2.92, U99 92.5 nm (recomputed; the GUM
 * prints 32, 16, 2.92, 93 from rounded steps). */
static void
test_end_gauge (void)
{
  yajl_val tree = budget (
      "{\"unit\": \"nm\", \"value\": 50000838, \"coverage\": 0.99, \"components\": ["
      "{\"name\": \"standard\", \"value\": 75, \"distribution\": \"normal\", \"divisor\": 3, \"dof\": 18},"
      "{\"name\": \"repeated\", \"value\": 13, \"distribution\": \"t\", \"divisor\": 2.2360679775, \"dof\": "
      "24},"
      "{\"name\": \"comparator\", \"value\": \"10\", \"distribution\": \"t\", \"divisor\": \"2.57\", "
      "\"dof\": 5},"
      "{\"name\": \"systematic\", \"value\": 20, \"distribution\": \"normal\", \"divisor\": 3, \"dof\": 8},"
      "{\"name\": \"expansion\", \"value\": 1e-6, \"distribution\": \"rectangular\", \"sensitivity\": "
      "-5000062.3,"
      " \"dof\": 50},"
      "{\"name\": \"temperature\", \"value\": 0.05, \"distribution\": \"rectangular\","
      " \"sensitivity\": 575.0071645, \"dof\": 2}]}");

  assert_close (tree, "combined", 31.66, 5e-3);
  assert_close (tree, "dof", 16.74, 5e-3);
  assert_close (tree, "k", 2.92078, 5e-6);
  assert_close (tree, "expanded", 92.5, 0.05);
  assert_text (tree, "unit", "nm");
  assert_close (YAJL_GET_ARRAY (member (tree, "components"))->values[5], "contribution", 16.6, 0.05);
  yajl_tree_free (tree);
}

/* Welch-Satterthwaite: published 12.8 (recomputed 12.7956); no dof at all is null, and k the normal's. */
static void
test_dof (void)
{
  yajl_val tree = budget ("{\"components\": [{\"value\": 0.57, \"distribution\": \"t\", \"dof\": 9},"
                          "{\"value\": 0.25, \"distribution\": \"normal\"}]}");

  assert_close (tree, "dof", 12.7956, 5e-5);
  assert_close (tree, "k", 2.1788, 5e-5);
  yajl_tree_free (tree);
  tree = budget ("{\"components\": [{\"value\": 6, \"distribution\": \"triangular\"},"
                 "{\"value\": 2, \"distribution\": \"u-shaped\", \"dof\": null}]}");
  assert_close (tree, "combined", sqrt (6 + 2), 1e-12);
  g_assert_true (YAJL_IS_NULL (member (tree, "dof")));
  assert_close (tree, "k", 1.959964, 5e-7);
  assert_text (tree, "unit", NULL);
  yajl_tree_free (tree);
}

static void
test_words (void)
{
  g_autofree char *path = write_job ("words.json", "{\"unit\": \"mm\", \"value\": 25.0105, \"components\": ["
                                                   "{\"name\": \"Meßschraube\", \"value\": 0.003,"
                                                   " \"distribution\": \"rectangular\"}]}");
  g_auto (Call) call = { 0 };

  run (&call, "budget", path, NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "Meßschraube"));
  g_assert_nonnull (strstr (call.out, "combined 0.00173205 mm"));
  g_assert_nonnull (strstr (call.out, "25.0105 ± 0.00339476 mm"));
}

#define ONE(member) "{\"components\": [{\"value\": 1, \"distribution\": \"normal\", " member "}]}"

static void
test_refused (void)
{
  static const struct {
    const char *content, *wanted;
  } cases[] = {
    { "{\"components\": [{\"value\": -1, \"distribution\": \"normal\"}]}",
      "components[0].value: it is below zero" },
    { "{\"components\": [{\"value\": 1, \"distribution\": \"flat\"}]}", "“flat” is none" },
    { "{\"components\": [{\"value\": 1}]}", "components[0].distribution" },
    { "{\"components\": [{\"value\": 1, \"distribution\": \"t\"}]}", "components[0].dof: it is missing" },
    { "{\"components\": [{\"distribution\": \"normal\"}]}", "components[0].value: it is missing" },
    { "{\"components\": [{\"value\": \"1,5\", \"distribution\": \"normal\"}]}",
      "“1,5” is not a decimal number" },
    { "{\"components\": [{\"value\": true, \"distribution\": \"normal\"}]}", "is not a decimal number" },
    { "{\"components\": [{\"value\": 1e999, \"distribution\": \"normal\"}]}", "is not a decimal number" },
    { ONE ("\"dof\": 0"), "components[0].dof" },
    { ONE ("\"dof\": -3"), "components[0].dof" },
    { ONE ("\"divisor\": 0"), "components[0].divisor" },
    { ONE ("\"divisor\": -2"), "components[0].divisor" },
    { "{\"components\": [{\"value\": 0, \"distribution\": \"normal\"}]}", "together they are zero" },
    { "{\"components\": [{\"value\": 1e200, \"distribution\": \"normal\"}]}", "too large" },
    { "{\"components\": [{\"value\": 1, \"distribution\": \"normal\", \"divisor\": 1e-320}]}", "too large" },
    { "{\"components\": []}", "there is none" },
    { "{\"components\": 5}", "there is none" },
    { "{\"components\": [5]}", "it is no object" },
    { "{}", "there is none" },
    { "[]", "it is no budget" },
    { "{\"coverage\": 1, \"components\": [{\"value\": 1, \"distribution\": \"normal\"}]}", "coverage" },
    { "{\"coverage\": 0, \"components\": [{\"value\": 1, \"distribution\": \"normal\"}]}", "coverage" },
    { "{\"coverage\": 95, \"components\": [{\"value\": 1, \"distribution\": \"normal\"}]}", "coverage" },
    { "{\"coverage\": 0.95", "it is no JSON" },
    { "", "it is no JSON" },
  };
  g_auto (Call) missing = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = write_job ("wrong.json", cases[i].content);
      g_auto (Call) call = { 0 };

      g_test_message ("%s", cases[i].content);
      run (&call, "budget", path, "--json", NULL);
      assert_refused (&call, cases[i].wanted);
      g_assert_nonnull (strstr (call.err, "wrong.json"));
    }
  run (&missing, "budget", "nowhere.json", NULL);
  assert_refused (&missing, "nowhere.json");
}

/* Nesting that a tree would be freed by recursion for. */
static void
test_deep (void)
{
  g_autoptr (GString) content = g_string_new ("{\"components\": ");
  g_autofree char *path = NULL;
  g_auto (Call) call = { 0 };

  for (guint i = 0; i < 200000; i++)
    g_string_append_c (content, '[');
  path = write_job ("deep.json", content->str);
  run (&call, "budget", path, NULL);
  assert_refused (&call, "deeply nested");
}

/* A misspelt member is named, and the rest counts. */
static void
test_unknown_member (void)
{
  g_autofree char *path = write_job ("typo.json", ONE ("\"sensitivty\": 2"));
  g_auto (Call) call = { 0 };

  run (&call, "budget", path, "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.err, "components[0].sensitivty"));
}

/* -------- judge -------- */

#define WARM                                                                                                \
  "{\"format\": \"tenthmark-job\", \"version\": 1,"                                                         \
  " \"job\": {\"part_number\": \"T-1\", \"unit\": \"mm\", \"material\": \"6061\"},"                         \
  " \"gauges\": [{\"tag\": \"MIC\", \"kind\": \"micrometer\", \"unit\": \"mm\", \"resolution\": \"0.001\"," \
  " \"error_limit\": \"0.002\"}],"                                                                          \
  " \"features\": [{\"balloon\": \"1\", \"kind\": \"shaft\", \"unit\": \"mm\", \"lower\": \"99.980\","      \
  " \"upper\": \"100.020\", \"method\": \"MIC\"}], \"pieces\": [{\"serial\": \"1\"}],"                      \
  " \"readings\": [{\"piece\": \"1\", \"feature\": \"1\", \"value\": \"100.0000\", \"part_temp\": \"25\","  \
  " \"gauge_temp\": \"25\"}]}"

/* The corrected size beside the raw one (T1, recomputed: 99.993951), and each line of the budget. */
static void
test_judge (void)
{
  g_autofree char *path = write_job ("warm.tmjob", WARM);
  g_auto (Call) call = { 0 }, words = { 0 };
  yajl_val tree, first, lines;

  run (&call, "judge", path, "--json", "--budget", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  first = YAJL_GET_ARRAY (tree)->values[0];
  g_assert_true (g_str_has_prefix (YAJL_GET_STRING (member (first, "size")), "99.9939"));
  assert_text (first, "raw_size", "100.0000");
  g_assert_true (g_str_has_prefix (YAJL_GET_STRING (member (first, "correction")), "-0.006049"));
  assert_text (first, "counted", "readings");
  lines = member (first, "budget");
  g_assert_cmpuint (YAJL_GET_ARRAY (lines)->len, ==, 6);
  assert_text (YAJL_GET_ARRAY (lines)->values[0], "component", "resolution");
  assert_text (YAJL_GET_ARRAY (lines)->values[0], "subject", "MIC");
  assert_text (YAJL_GET_ARRAY (lines)->values[1], "value", "0.002");
  assert_text (YAJL_GET_ARRAY (lines)->values[1], "distribution", "rectangular");
  g_assert_true (YAJL_IS_NULL (member (YAJL_GET_ARRAY (lines)->values[1], "dof")));
  g_assert_true (YAJL_IS_TRUE (member (YAJL_GET_ARRAY (lines)->values[2], "assumed")));
  g_assert_true (YAJL_IS_NULL (member (first, "pins")));
  g_assert_true (YAJL_IS_NULL (member (first, "combined")));
  yajl_tree_free (tree);
  run (&words, "judge", path, "--budget", NULL);
  g_assert_nonnull (strstr (words.out, "raw 100.00000 mm, corrected by -0.0060493 mm"));
  g_assert_nonnull (strstr (words.out, "limit of error, MIC: 0.0020 mm rectangular"));
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/budget/end-gauge", test_end_gauge);
  g_test_add_func ("/cli/budget/dof", test_dof);
  g_test_add_func ("/cli/budget/words", test_words);
  g_test_add_func ("/cli/budget/refused", test_refused);
  g_test_add_func ("/cli/budget/deep", test_deep);
  g_test_add_func ("/cli/budget/unknown-member", test_unknown_member);
  g_test_add_func ("/cli/budget/judge", test_judge);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
