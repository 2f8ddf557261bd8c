/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli fit.
 */

#include "cli-support.h"

/* Bores of an aluminium block and steel bushes (invented). */
static const char fit_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"T-1\", \"unit\": \"mm\", \"material\": \"6061-T6\"},"
      " \"gauges\": [{\"tag\": \"BM-1\", \"kind\": \"bore micrometer\", \"unit\": \"mm\", \"resolution\": "
      "\"0.001\","
      "  \"error_limit\": \"0.001732051\", \"calibrated\": \"2026-03-01\", \"due\": \"2027-03-01\"}],"
      " \"methods\": [{\"name\": \"bore micrometer\", \"gauges\": [\"BM-1\"]}],"
      " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"method\": \"bore micrometer\","
      "   \"mate\": {\"kind\": \"shaft\", \"lower\": \"25.022\", \"upper\": \"25.035\","
      "   \"wanted_least\": \"-0.030\", \"wanted_most\": \"-0.018\"}, \"press\": {\"shaft_material\": "
      "\"steel\"}},"
      "  {\"balloon\": \"2\", \"requirement\": \"62 ±0.1\"}, {\"balloon\": \"3\", \"requirement\": \"Ø10 "
      "H7\"}],"
      " \"pieces\": [{\"serial\": \"001\"}, {\"serial\": \"002\"}, {\"serial\": \"003\"}],"
      " \"mates\": [{\"feature\": \"1\", \"serial\": \"B-1\", \"smallest\": \"25.028\", \"uncertainty\": "
      "\"0.002\"},"
      "  {\"feature\": \"1\", \"serial\": \"B-2\", \"smallest\": \"25.033\", \"largest\": \"25.034\","
      "   \"uncertainty\": \"0.002\"},"
      "  {\"feature\": \"1\", \"serial\": \"B-3\", \"smallest\": \"25.020\", \"piece\": \"002\", "
      "\"uncertainty\": \"0.002\"},"
      "  {\"feature\": \"1\", \"serial\": \"B-4\", \"smallest\": \"25.024\"}],"
      " \"readings\": [{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.009\"},"
      "  {\"piece\": \"002\", \"feature\": \"1\", \"value\": \"25.004\"}]}";

static char *job_path;

static double
get_number (yajl_val object, const char *key)
{
  return YAJL_GET_DOUBLE (member (object, key));
}

static yajl_val
get_item (yajl_val object, const char *key, gsize i)
{
  yajl_val array = member (object, key);

  g_assert_cmpuint (i, <, YAJL_GET_ARRAY (array)->len);
  return YAJL_GET_ARRAY (array)->values[i];
}

static void
assert_says (yajl_val object, const char *key, const char *wanted)
{
  yajl_val value = member (object, key);

  g_assert_true (YAJL_IS_STRING (value));
  g_assert_nonnull (strstr (value->u.string, wanted));
}

/* -------- Plain sizes -------- */

/* 25 H7/p6 from its limits: interference 0.001 to 0.035 mm, recomputed from the ISO 286 tables. */
static void
test_limits (void)
{
  g_auto (Call) inside = { 0 };
  g_auto (Call) between = { 0 };
  yajl_val tree;

  run (&inside, "fit", "--bore", "25.000..25.021", "--shaft", "25.022..25.035", "--want-least", "-0.035",
       "--want-most", "-0.001", "--json", NULL);
  g_assert_cmpstr (inside.err, ==, "");
  g_assert_cmpint (inside.status, ==, 0);
  tree = parse (&inside);
  assert_text (tree, "unit", "mm");
  assert_text (tree, "clearance_min", "-0.035");
  assert_text (tree, "clearance_max", "-0.001");
  assert_text (tree, "expanded_uncertainty", "0");
  g_assert_cmpfloat (get_number (tree, "probability_within"), ==, 1);
  g_assert_true (YAJL_IS_TRUE (member (tree, "within")));
  assert_text (member (tree, "wanted"), "least", "-0.035");
  yajl_tree_free (tree);
  run (&between, "fit", "--bore", "25.000..25.021", "--shaft", "25.022..25.035", "--want-most", "-0.010",
       "--json", NULL);
  g_assert_cmpint (between.status, ==, 1);
  tree = parse (&between);
  g_assert_true (YAJL_IS_NULL (member (tree, "probability_loose")));
  g_assert_true (YAJL_IS_NULL (member (tree, "probability_within")));
  g_assert_true (YAJL_IS_FALSE (member (tree, "within")));
  yajl_tree_free (tree);
}

/* u = √(3² + 4²) = 5 µm: Φ(1) = 0.841345, Φ(2) = 0.977250 (tables). */
static void
test_measured (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree;

  run (&call, "fit", "--bore", "25,010", "--bore-u", "0.003", "--shaft", "25", "--shaft-u", "0.004",
       "--want-least", "0.005", "--want-most", "0.020", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 1);
  tree = parse (&call);
  assert_text (tree, "expanded_uncertainty", "0.01");
  g_assert_cmpfloat_with_epsilon (get_number (tree, "probability_tight"), 1 - 0.841345, 1e-6);
  g_assert_cmpfloat_with_epsilon (get_number (tree, "probability_loose"), 1 - 0.977250, 1e-6);
  g_assert_cmpfloat_with_epsilon (get_number (tree, "probability_clearance"), 0.977250, 1e-6);
  yajl_tree_free (tree);
  run (&words, "fit", "--bore", "25.010", "--bore-u", "0.003", "--shaft", "25", "--shaft-u", "0.004",
       "--want-least", "0.005", "--want-most", "0.020", NULL);
  g_assert_nonnull (strstr (words.out, "clearance 0.010 mm ± 0.010"));
  g_assert_nonnull (strstr (words.out, "inside what is wanted 81.9 %, too loose 2.3 %, too tight 15.9 %"));
  g_assert_null (strstr (words.out, "nan"));
}

/* Aluminium on steel from 20 to 40 °C: 25·(23.6 - 11.5)e-6·20 = 0.00605 mm more clearance. */
static void
test_temperatures (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree;

  run (&call, "fit", "--bore", "25.0000", "--bore-alpha", "23.6", "--bore-temp", "40", "--shaft", "25.0000",
       "--shaft-alpha", "11.5", "--shaft-temp", "40", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  tree = parse (&call);
  assert_text (tree, "clearance_min", "0.00605");
  yajl_tree_free (tree);
  run (&words, "fit", "--bore", "25.0000", "--bore-alpha", "23.6", "--bore-temp", "40", "--shaft", "25.0000",
       NULL);
  g_assert_nonnull (strstr (words.out, "a qualified engineer decide"));
}

/* In inches; a size and not a range, told to its last digit; what is wanted open on one side. */
static void
test_inches (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) press = { 0 };

  run (&call, "fit", "--bore", ".7510", "--shaft", ".7500", "--unit", "in", "--want-least", ".0005", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "bore 0.7510 in\n"));
  g_assert_nonnull (strstr (call.out, "clearance 0.0010 in\n"));
  g_assert_nonnull (strstr (call.out, "wanted: clearance of 0.0005 in or more"));
  run (&press, "fit", "--bore", "25.0000001", "--shaft", "25.030", "--want-most", "-0.020", NULL);
  g_assert_cmpint (press.status, ==, 0);
  g_assert_nonnull (strstr (press.out, "wanted: interference of 0.020 mm or more"));
  g_assert_nonnull (strstr (press.out, "bore 25.0000001 mm\n"));
}

/* -------- Of a job -------- */

static void
test_job_by_limits (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "fit", job_path, "--feature", "1", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  /* The whole range is not within what is wanted, and no piece is named. */
  g_assert_cmpint (call.status, ==, 1);
  tree = parse (&call);
  assert_text (tree, "feature", "1");
  assert_text (tree, "piece", NULL);
  assert_text (member (tree, "by_limits"), "clearance_min", "-0.035");
  assert_text (member (tree, "by_limits"), "clearance_max", "-0.001");
  g_assert_true (YAJL_IS_NULL (member (tree, "as_measured")));
  g_assert_true (YAJL_IS_NULL (member (tree, "at_temperature")));
  assert_text (member (tree, "wanted"), "most", "-0.018");
  yajl_tree_free (tree);
}

/* Bore 25.009, u = √(1² + 0.2887²) = 1.0408 µm by error limit and resolution; bush 25.033 to 25.034, U 2 µm:
 * clearance -0.025 to -0.024, u = √(1.0408² + 1²) = 1.4434 µm. */
static void
test_job_as_measured (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree, measured;

  run (&call, "fit", job_path, "--feature", "1", "--piece", "001", "--mate", "B-2", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "piece", "001");
  assert_text (tree, "mate", "B-2");
  measured = member (tree, "as_measured");
  assert_text (member (measured, "bore"), "smallest", "25.009");
  assert_text (member (measured, "shaft"), "largest", "25.034");
  assert_text (measured, "clearance_min", "-0.025");
  assert_text (measured, "clearance_max", "-0.024");
  g_assert_cmpfloat_with_epsilon (
      g_ascii_strtod (YAJL_GET_STRING (member (measured, "expanded_uncertainty")), NULL), 2 * 0.0014434,
      1e-6);
  g_assert_cmpfloat (get_number (measured, "probability_within"), >, 0.999);
  assert_text (measured, "reason", NULL);
  yajl_tree_free (tree);
}

/* The bush that is meant for the piece is taken by itself; what was not measured, or nobody knows how well,
 * is said. */
static void
test_job_choices (void)
{
  g_auto (Call) meant = { 0 };
  g_auto (Call) unread = { 0 };
  g_auto (Call) unknown = { 0 };
  yajl_val tree, measured;

  run (&meant, "fit", job_path, "--feature", "1", "--piece", "002", "--json", NULL);
  tree = parse (&meant);
  assert_text (tree, "mate", "B-3");
  assert_text (member (tree, "as_measured"), "clearance_min", "-0.016");
  g_assert_cmpint (meant.status, ==, 1);
  yajl_tree_free (tree);
  run (&unread, "fit", job_path, "--feature", "1", "--piece", "003", "--json", NULL);
  g_assert_cmpint (unread.status, ==, 1);
  tree = parse (&unread);
  measured = member (tree, "as_measured");
  g_assert_true (YAJL_IS_NULL (member (measured, "clearance_min")));
  assert_says (measured, "reason", "piece 003: not measured");
  yajl_tree_free (tree);
  run (&unknown, "fit", job_path, "--feature", "1", "--piece", "001", "--mate", "B-4", "--want-most",
       "-0.010", "--json", NULL);
  g_assert_cmpint (unknown.status, ==, 0);
  tree = parse (&unknown);
  measured = member (tree, "as_measured");
  assert_text (measured, "clearance_min", "-0.015");
  g_assert_true (YAJL_IS_NULL (member (measured, "probability_within")));
  assert_says (measured, "reason", "mate B-4: its uncertainty");
  yajl_tree_free (tree);
}

/* The block at 40 °C grows by 25.009·23.6e-6·20 = 0.011804, the steel bush, left at 20 °C, not at all. */
static void
test_job_warm (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree, warm;

  run (&call, "fit", job_path, "--feature", "1", "--piece", "001", "--mate", "B-2", "--part-temp", "40",
       "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  warm = member (tree, "at_temperature");
  g_assert_cmpfloat (get_number (warm, "part_temp"), ==, 40);
  g_assert_cmpfloat (get_number (warm, "mate_temp"), ==, 20);
  g_assert_cmpfloat_with_epsilon (
      g_ascii_strtod (YAJL_GET_STRING (member (member (warm, "as_measured"), "clearance_min")), NULL),
      -0.025 + 0.011804, 1e-6);
  g_assert_cmpfloat_with_epsilon (
      g_ascii_strtod (YAJL_GET_STRING (member (member (warm, "by_limits"), "clearance_min")), NULL),
      -0.035 + 25 * 23.6e-6 * 20, 1e-6);
  yajl_tree_free (tree);
  run (&words, "fit", job_path, "--feature", "1", "--piece", "001", "--mate-temp", "-80", NULL);
  g_assert_nonnull (strstr (words.out, "with the part at 20 °C and the mate at -80 °C"));
  g_assert_nonnull (strstr (words.out, "eyes protected"));
  g_assert_null (strstr (words.out, "nan"));
}

/* 001 (25.009) gets B-2 (25.033), 002 (25.004) B-1 (25.028): 0.024 each; the order entered would give 0.019
 * and 0.029. */
static void
test_pair (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree;

  run (&call, "fit", job_path, "--feature", "1", "--pair", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "pairs"))->len, ==, 2);
  assert_text (get_item (tree, "pairs", 0), "piece", "001");
  assert_text (get_item (tree, "pairs", 0), "mate", "B-2");
  assert_text (get_item (tree, "pairs", 0), "clearance_max", "-0.024");
  assert_text (get_item (tree, "pairs", 1), "mate", "B-1");
  g_assert_cmpstr (YAJL_GET_STRING (get_item (tree, "mates_left_over", 0)), ==, "B-3");
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "left_out"))->len, ==, 2);
  assert_text (get_item (tree, "left_out", 0), "piece", "003");
  assert_text (get_item (tree, "left_out", 1), "mate", "B-4");
  g_assert_cmpfloat (get_number (tree, "expected_outside"), <, 0.01);
  g_assert_cmpfloat (get_number (tree, "expected_outside_first_come"), >, 0.2);
  yajl_tree_free (tree);
  run (&words, "fit", job_path, "--feature", "1", "--pair", NULL);
  g_assert_nonnull (strstr (words.out, "piece 001: mate B-2, interference 0.024 to 0.025 mm ± 0.0029"));
  g_assert_nonnull (strstr (words.out, "piece 003: left out: not measured"));
  g_assert_nonnull (strstr (words.out, "of 2 pairs; in the order they came: "));
  g_assert_null (strstr (words.out, "nan"));
}

/* -------- What cannot be -------- */

static void
test_refused (void)
{
  static const char *const rows[][8] = {
    /* wanted, then the words after "fit" */
    { "it takes a fit" },
    { "is not a fit that is read", "rubbish" },
    { "--shaft is missing", "--bore", "25" },
    { "--bore is missing", "--shaft", "25" },
    { "--bore is empty", "--bore", "", "--shaft", "25" },
    { "--bore “25.1.2”", "--bore", "25.1.2", "--shaft", "25" },
    { "--bore: its sizes cannot be", "--bore", "25.1..25", "--shaft", "25" },
    { "--shaft: its sizes cannot be", "--bore", "25", "--shaft", "-25" },
    { "--shaft “”", "--bore", "25", "--shaft", "25.." },
    { "--bore-u “-1” is below zero", "--bore", "25", "--shaft", "25", "--bore-u", "-1" },
    { "--bore-u “nan”", "--bore", "25", "--shaft", "25", "--bore-u", "nan" },
    { "-273.15", "--bore", "25", "--shaft", "25", "--bore-temp", "-273.16" },
    { "give --shaft-alpha", "--bore", "25", "--shaft", "25", "--shaft-temp", "21" },
    { "the least wanted clearance is above", "--bore=25", "--shaft=25", "--want-least=1", "--want-most=0" },
    { "--unit “deg”", "--bore", "25", "--shaft", "25", "--unit", "deg" },
    { "“x” does not go with --bore", "x", "--bore", "25", "--shaft", "25" },
    { "--want-least goes with", "25 H7/p6", "--want-least", "0" },
    { "--bore-u goes with", "25 H7/p6", "--bore-u", "0" },
    { "--piece goes with --feature", "fit.tmjob", "--piece", "001" },
    { "--pair goes with --feature", "fit.tmjob", "--pair" },
    { "goes with one job file", "--feature", "1" },
    { "--bore goes with plain sizes", "fit.tmjob", "--feature", "1", "--bore", "25" },
    { "no-such.tmjob", "no-such.tmjob", "--feature", "1" },
    { "there is no feature “9”", "fit.tmjob", "--feature", "9" },
    { "there is no piece “9”", "fit.tmjob", "--feature", "1", "--piece", "9" },
    { "feature 1 has 1 place", "fit.tmjob", "--feature", "1", "--place", "2" },
    { "feature 1 has 1 place", "fit.tmjob", "--feature", "1", "--place", "0" },
    { "no measured mate “B-9”", "fit.tmjob", "--feature", "1", "--mate", "B-9" },
    { "feature 2: which of the two", "fit.tmjob", "--feature", "2" },
    { "feature 3: it has no mate", "fit.tmjob", "--feature", "3" },
    { "feature 3: no clearance is wanted", "fit.tmjob", "--feature", "3", "--pair" },
    { "leave --piece, --place", "fit.tmjob", "--feature", "1", "--pair", "--piece", "001" },
    { "give degrees Celsius", "fit.tmjob", "--feature", "1", "--part-temp", "1001" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Call) call = { 0 };

      g_test_message ("%s", rows[i][0]);
      run (&call, "fit", rows[i][1], rows[i][2], rows[i][3], rows[i][4], rows[i][5], rows[i][6], rows[i][7],
           NULL);
      assert_refused (&call, rows[i][0]);
    }
}

static void
add_tests (void)
{
  job_path = write_job ("fit.tmjob", fit_job);
  g_test_add_func ("/cli/fit/limits", test_limits);
  g_test_add_func ("/cli/fit/measured", test_measured);
  g_test_add_func ("/cli/fit/temperatures", test_temperatures);
  g_test_add_func ("/cli/fit/inches", test_inches);
  g_test_add_func ("/cli/fit/job-by-limits", test_job_by_limits);
  g_test_add_func ("/cli/fit/job-as-measured", test_job_as_measured);
  g_test_add_func ("/cli/fit/job-choices", test_job_choices);
  g_test_add_func ("/cli/fit/job-warm", test_job_warm);
  g_test_add_func ("/cli/fit/pair", test_pair);
  g_test_add_func ("/cli/fit/refused", test_refused);
}

int
main (int argc, char *argv[])
{
  int status = run_cli_tests (argc, argv, add_tests);

  g_free (job_path);
  return status;
}
