/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli cut, as its users call it.
 */

#include <math.h>

#include "cli-support.h"

static double
number (yajl_val tree, const char *key)
{
  return YAJL_GET_DOUBLE (member (tree, key));
}

static double
decimal (yajl_val tree, const char *key)
{
  return g_ascii_strtod (YAJL_GET_STRING (member (tree, key)), NULL);
}

/* A bore with 0.098 mm to its lower limit, a dial on the radius: whole marks, three chances that make one,
 * and metal gone within the risk. */
static void
test_figures (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) again = { 0 };
  g_autofree char *dial = NULL;
  yajl_val tree;
  double in, left, gone, marks;

  run (&call, "cut", "--size", "24.902", "--u", "0.0008", "--lower", "25.000", "--upper", "25.021", "--kind",
       "bore", "--graduation", "0.001", "--reads", "radius", "--risk", "0.01", "--unit", "mm", "--history",
       "0.100:0.196, 0.050:0.099", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  in = number (tree, "probability_in");
  left = number (tree, "probability_metal_left");
  gone = number (tree, "probability_metal_gone");
  g_assert_cmpfloat_with_epsilon (in + left + gone, 1, 1e-9);
  g_assert_cmpfloat (gone, <=, 0.01);
  g_assert_cmpfloat (gone, >, 0);
  marks = decimal (tree, "dial") / 0.001;
  g_assert_cmpfloat_with_epsilon (marks, round (marks), 1e-9);
  /* Two cuts that fell short by 2 % and 1 %: the size moves by a little less than twice the dial. */
  g_assert_cmpfloat_with_epsilon (decimal (tree, "predicted"), 24.902 + 2 * 0.98 * decimal (tree, "dial"),
                                  0.001);
  g_assert_cmpfloat (decimal (tree, "predicted_uncertainty"), >, 0.0008);
  dial = g_strdup (YAJL_GET_STRING (member (tree, "dial")));
  yajl_tree_free (tree);
  /* The same dial, stated: the same chances. */
  run (&again, "cut", "--size", "24.902", "--u", "0.0008", "--lower", "25.000", "--upper", "25.021", "--kind",
       "bore", "--graduation", "0.001", "--reads", "radius", "--history", "0.100:0.196, 0.050:0.099",
       "--dial", dial, "--json", NULL);
  tree = parse (&again);
  g_assert_cmpfloat_with_epsilon (number (tree, "probability_metal_gone"), gone, 1e-12);
  yajl_tree_free (tree);
}

/* A shaft in inches, as a mirror of a bore. */
static void
test_shaft (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "cut", "--size", "1.2530", "--u", "0.00005", "--lower", "1.2490", "--upper", "1.2500", "--kind",
       "shaft", "--graduation", "0.0005", "--unit", "in", "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  g_assert_cmpfloat (decimal (tree, "dial"), >, 0.001);
  g_assert_cmpfloat (decimal (tree, "dial"), <, 0.004);
  g_assert_cmpfloat (decimal (tree, "predicted"), <, 1.2521);
  yajl_tree_free (tree);
}

static void
test_words (void)
{
  g_auto (Call) cut = { 0 };
  g_auto (Call) in = { 0 };
  g_auto (Call) gone = { 0 };

  run (&cut, "cut", "--size", "24.902", "--u", "0.0008", "--lower", "25.000", "--upper", "25.021", "--kind",
       "bore", "--graduation", "0.001", NULL);
  g_assert_cmpint (cut.status, ==, 0);
  g_assert_nonnull (strstr (cut.out, "dial 0.0"));
  g_assert_nonnull (strstr (cut.out, "proving cut"));
  g_assert_nonnull (strstr (cut.out, "that is assumed"));
  /* Nothing is ever quite certain. */
  g_assert_null (strstr (cut.out, "100.00 %"));
  g_assert_nonnull (strstr (cut.out, "spindle stopped and isolated"));
  run (&in, "cut", "--size", "25.010", "--u", "0.0008", "--lower", "25.000", "--upper", "25.021", "--kind",
       "bore", "--graduation", "0.001", NULL);
  g_assert_cmpint (in.status, ==, 1);
  g_assert_nonnull (strstr (in.out, "another cut would gain nothing"));
  run (&gone, "cut", "--size", "25.030", "--u", "0.0008", "--lower", "25.000", "--upper", "25.021", "--kind",
       "bore", "--graduation", "0.001", NULL);
  g_assert_cmpint (gone.status, ==, 1);
  g_assert_nonnull (strstr (gone.out, "metal is more likely gone"));
}

static void
test_refused (void)
{
  static const struct {
    const char *option, *value, *wanted;
  } rows[] = {
    { "--size", "x", "--size “x”" },
    { "--size", "nan", "--size “nan”" },
    { "--u", "0", "above zero" },
    { "--u", "-0.001", "below zero" },
    { "--u-own", "0.01", "--u-own 0.01" },
    { "--lower", "26", "above --upper" },
    { "--kind", "thread", "“thread”" },
    { "--kind", "length", "--way" },
    { "--graduation", "0", "--graduation" },
    { "--reads", "thread", "diameter or radius" },
    { "--risk", "0", "0.000001 and 1" },
    { "--risk", "1", "0.000001 and 1" },
    { "--risk", "nan", "0.000001 and 1" },
    { "--history", "0.1", "dialled:achieved" },
    { "--history", "0:0.1", "nothing was" },
    { "--history", "0.1:100", "more than ten times" },
    { "--history", "0.1:-0.2", "the other way" },
    { "--size", "0", "not above zero" },
    { "--size", "-25", "not above zero" },
    { "--upper", "-4", "no size is below it" },
    { "--risk", "0.000000001", "0.000001 and 1" },
    { "--history", "0.1:0.1,", "dialled:achieved" },
    { "--unit", "deg", "mm or in" },
    { "--aim", "high", "in or proven" },
    { "--dial", "-0.01", "below zero" },
    { "--piece", "001", "of a job" },
    { "--graduation", "1e999", "graduation" },
    { "--u", "99999999999", "--u" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "cut", "--size", "24.902", "--u", "0.0008", "--lower", "25.000", "--upper", "25.021",
           "--kind", "bore", "--graduation", "0.001", rows[i].option, rows[i].value, NULL);
      assert_refused (&call, rows[i].wanted);
    }
}

static const char cut_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"T-1\", \"unit\": \"mm\", \"decision\": \"guarded\"},"
      " \"gauges\": [{\"tag\": \"BM-1\", \"kind\": \"bore micrometer\", \"unit\": \"mm\","
      "  \"resolution\": \"0.001\", \"error_limit\": \"0.002\"}],"
      " \"methods\": [{\"name\": \"bore micrometer\", \"gauges\": [\"BM-1\"], \"repeatability\": "
      "\"0.0005\"}],"
      " \"tools\": [{\"name\": \"bar\", \"unit\": \"mm\", \"reads\": \"radius\", \"graduation\": \"0.005\"}],"
      " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 +0.04 0\", \"kind\": \"bore\","
      "  \"method\": \"bore micrometer\", \"tool\": \"bar\"},"
      "  {\"balloon\": \"2\", \"requirement\": \"90° ±0.5°\"}],"
      " \"pieces\": [{\"serial\": \"001\"}],"
      " \"readings\": [{\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"24.800\"},"
      "  {\"id\": \"2\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"24.899\"}],"
      " \"cuts\": [{\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"dialled\": \"0.050\","
      "  \"reads\": \"radius\", \"tool\": \"bar\", \"after\": \"1\"}]}";

static void
test_job (void)
{
  g_autofree char *path = write_job ("cut.tmjob", cut_job);
  g_auto (Call) call = { 0 };
  g_auto (Call) angle = { 0 };
  g_auto (Call) nobody = { 0 };
  g_auto (Call) tool = { 0 };
  g_auto (Call) both = { 0 };
  g_auto (Call) place = { 0 };
  yajl_val tree;

  run (&call, "cut", path, "--piece", "001", "--feature", "1", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "tool", "bar");
  g_assert_cmpfloat_with_epsilon (fmod (decimal (tree, "dial") + 1e-9, 0.005), 0, 1e-8);
  g_assert_cmpfloat_with_epsilon (decimal (tree, "size"), 24.899, 0.001);
  g_assert_cmpint (YAJL_GET_INTEGER (member (member (tree, "response"), "cuts")), ==, 1);
  g_assert_cmpfloat (number (tree, "risk_spent"), <=, 0.01);
  yajl_tree_free (tree);
  run (&angle, "cut", path, "--piece", "001", "--feature", "2", NULL);
  assert_refused (&angle, "not cut to size");
  run (&nobody, "cut", path, "--feature", "1", NULL);
  assert_refused (&nobody, "--piece S");
  run (&tool, "cut", path, "--piece", "001", "--feature", "1", "--tool", "lathe", NULL);
  assert_refused (&tool, "“lathe”");
  run (&place, "cut", path, "--piece", "001", "--feature", "1", "--place", "7", NULL);
  assert_refused (&place, "feature 1 has 1 place; count from 1");
  run (&both, "cut", path, "--piece", "001", "--feature", "1", "--u", "0.001", NULL);
  assert_refused (&both, "leave --size");
}

/* A roughing cut that spent more than is accepted for the run, and one so far beyond it that the run begins
 * after it. */
static void
test_spent (void)
{
  g_auto (GStrv) at_size = g_strsplit (cut_job, "24.800", 2);
  g_autofree char *from = g_strjoinv ("21.000", at_size);
  g_auto (GStrv) at_dial = g_strsplit (from, "\"0.050\"", 2);
  g_autofree char *job = g_strjoinv ("\"1.950\"", at_dial);
  g_autofree char *path = write_job ("spent.tmjob", job);
  g_auto (Call) spent = { 0 };
  g_auto (Call) anew = { 0 };

  run (&spent, "cut", path, "--piece", "001", "--feature", "1", "--risk", "0.2", NULL);
  g_assert_cmpint (spent.status, ==, 1);
  g_assert_nonnull (strstr (spent.out, "have spent the accepted risk; accept more with --risk"));
  run (&anew, "cut", path, "--piece", "001", "--feature", "1", "--risk", "0.01", NULL);
  g_assert_cmpint (anew.status, ==, 0);
  g_assert_nonnull (strstr (anew.out, "spent so far 0.000 %"));
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/cut/figures", test_figures);
  g_test_add_func ("/cli/cut/shaft", test_shaft);
  g_test_add_func ("/cli/cut/words", test_words);
  g_test_add_func ("/cli/cut/refused", test_refused);
  g_test_add_func ("/cli/cut/job", test_job);
  g_test_add_func ("/cli/cut/spent", test_spent);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
