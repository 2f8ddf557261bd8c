/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli drift, as its users call it.
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

/* A feature of 25 ±0.02 without a method; NAN: not measured. */
static char *
write_sizes (const char *name, const double *sizes, guint n, const char *feature_more)
{
  g_autoptr (GString) pieces = g_string_new (NULL);
  g_autoptr (GString) readings = g_string_new (NULL);
  g_autofree char *job = NULL;

  for (guint i = 0; i < n; i++)
    {
      char text[G_ASCII_DTOSTR_BUF_SIZE];

      g_string_append_printf (pieces, "%s{\"serial\": \"%03u\"}", i > 0 ? ", " : "", i + 1);
      if (isnan (sizes[i]))
        continue;
      g_ascii_formatd (text, sizeof text, "%.4f", sizes[i]);
      g_string_append_printf (
          readings, "%s{\"id\": \"%u\", \"piece\": \"%03u\", \"feature\": \"1\", \"value\": \"%s\"}",
          readings->len > 0 ? ", " : "", i + 1, i + 1, text);
    }
  job = g_strdup_printf (
      "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"D-1\", \"unit\": \"mm\", "
      "\"decision\": \"simple\"}, \"tools\": [{\"name\": \"Bar\", \"unit\": \"mm\"}, {\"name\": \"Idle\", "
      "\"unit\": \"mm\"}], \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 ±0.02\"%s}, "
      "{\"balloon\": \"2\", \"kind\": \"note\", \"requirement\": \"deburr\"}], \"pieces\": [%s], "
      "\"readings\": [%s]}",
      feature_more, pieces->str, readings->str);
  return write_job (name, job);
}

static yajl_val
run_json (Call *call, const char *path, int status)
{
  run (call, "drift", path, "--feature", "1", "--json", NULL);
  g_assert_cmpstr (call->err, ==, "");
  g_assert_cmpint (call->status, ==, status);
  return parse (call);
}

/* D. C. Montgomery, Introduction to Statistical Quality Control, table 6.3: mean of means 74.001176, mean
 * range 0.02324, limits of the means 73.987771 and 74.014581, of the ranges 0 and 0.049141, Cp 1.66805, Cpk
 * 1.62882, Pp 1.63417, Ppk 1.59573 with 73.95 and 74.05; half a unit of the last digit. */
static void
test_rings (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree = run_json (&call, g_getenv ("TM_RINGS"), 0), location, dispersion, capability;

  g_assert_cmpfloat (number (tree, "count"), ==, 125);
  assert_text (tree, "state", "steady");
  g_assert_cmpfloat_with_epsilon (decimal (tree, "mean"), 74.001176, 5e-7);
  g_assert_cmpfloat_with_epsilon (decimal (tree, "sd_within"), 0.02324 / 2.32593, 5e-8);
  location = member (tree, "location");
  assert_text (location, "chart", "means and ranges");
  g_assert_cmpfloat_with_epsilon (decimal (location, "centre"), 74.001176, 5e-7);
  g_assert_cmpfloat_with_epsilon (decimal (location, "lower"), 73.987771, 5e-7);
  g_assert_cmpfloat_with_epsilon (decimal (location, "upper"), 74.014581, 5e-7);
  dispersion = member (tree, "dispersion");
  g_assert_cmpfloat_with_epsilon (decimal (dispersion, "centre"), 0.02324, 5e-6);
  g_assert_cmpfloat_with_epsilon (decimal (dispersion, "upper"), 0.049141, 5e-7);
  g_assert_cmpfloat (decimal (dispersion, "lower"), ==, 0);
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "violations"))->len, ==, 0);
  g_assert_true (YAJL_IS_NULL (member (tree, "forecast")));
  g_assert_true (YAJL_IS_NULL (member (tree, "change")));
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "hold_back"))->len, ==, 0);
  capability = member (tree, "capability");
  g_assert_cmpfloat_with_epsilon (number (capability, "cp"), 1.66805, 5e-6);
  g_assert_cmpfloat_with_epsilon (number (capability, "cpk"), 1.62882, 5e-6);
  g_assert_cmpfloat_with_epsilon (number (capability, "pp"), 1.63417, 5e-6);
  g_assert_cmpfloat_with_epsilon (number (capability, "ppk"), 1.59573, 5e-6);
  g_assert_cmpfloat (number (capability, "cpk_lower"), <, 1.5);
  g_assert_cmpfloat (number (capability, "cpk_upper"), >, 1.75);
  yajl_tree_free (tree);
}

/* The first ten samples: mean 74.00198, mean range 0.0238, limits ± 3/(2.32593 √5) of it; and as single
 * pieces. */
static void
test_groups (void)
{
  g_auto (Call) frozen = { 0 };
  g_auto (Call) single = { 0 };
  yajl_val tree;

  run (&frozen, "drift", g_getenv ("TM_RINGS"), "--feature", "1", "--baseline", "10", "--json", NULL);
  tree = parse (&frozen);
  g_assert_cmpfloat_with_epsilon (decimal (member (tree, "location"), "centre"), 74.00198, 5e-9);
  g_assert_cmpfloat_with_epsilon (decimal (member (tree, "location"), "lower"), 73.9882517, 5e-8);
  g_assert_cmpfloat_with_epsilon (decimal (member (tree, "location"), "upper"), 74.0157083, 5e-8);
  yajl_tree_free (tree);
  run (&single, "drift", g_getenv ("TM_RINGS"), "--feature", "1", "--group-size", "1", "--json", NULL);
  tree = parse (&single);
  assert_text (member (tree, "location"), "chart", "individuals");
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "groups"))->len, ==, 125);
  yajl_tree_free (tree);
}

/* y = 25.01 - 0.0005 x ± 0.001 by turns, x from 1 to 20: Σ (x - 10.5)² = 665, Σ ± (x - 10.5) = 10, so that
 * the slope is -0.0005 + 0.001 · 10 / 665, the mean 25.00475; 24.98 is met at 10.5 + 0.02475 / 0.00048496241.
 */
static void
test_wear (void)
{
  double sizes[22], slope = 0.0005 - 0.001 * 10 / 665;
  g_autofree char *path = NULL;
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree, trend, forecast;

  for (guint i = 0; i < 22; i++)
    sizes[i] = i < 20 ? 25.01 - 0.0005 * (i + 1) + (i % 2 == 0 ? -0.001 : 0.001) : NAN;
  path = write_sizes ("wear.tmjob", sizes, 22, ", \"tool\": \"Bar\"");
  tree = run_json (&call, path, 0);
  assert_text (tree, "state", "drifting");
  g_assert_cmpfloat (number (tree, "pieces"), ==, 22);
  g_assert_cmpfloat (number (tree, "count"), ==, 20);
  trend = member (tree, "trend");
  g_assert_cmpfloat_with_epsilon (decimal (trend, "slope"), -slope, 1e-12);
  g_assert_cmpfloat (decimal (trend, "slope_lower"), <, -slope);
  g_assert_cmpfloat (decimal (trend, "slope_upper"), >, -slope);
  g_assert_cmpfloat (number (trend, "p"), <, 1e-4);
  g_assert_cmpfloat (number (trend, "mann_kendall_p"), <, 1e-3);
  forecast = member (tree, "forecast");
  g_assert_cmpfloat_with_epsilon (number (forecast, "pieces_left"), 10.5 + 0.02475 / slope - 20, 1e-6);
  g_assert_cmpfloat (number (forecast, "low"), <, number (forecast, "pieces_left"));
  g_assert_cmpfloat (number (forecast, "high"), >, number (forecast, "pieces_left"));
  assert_text (forecast, "limit", "lower");
  /* The line ends at 25.00475 - 9.5 slope, 0.000143 over the target: less than twice its own error. */
  assert_text (member (tree, "offset_advice"), "advice", "leave alone");
  g_assert_cmpfloat_with_epsilon (decimal (member (tree, "offset_advice"), "level"), 25.00475 - 9.5 * slope,
                                  1e-9);
  yajl_tree_free (tree);
  run (&words, "drift", path, "--tool", "Bar", NULL);
  g_assert_cmpint (words.status, ==, 0);
  g_assert_nonnull (strstr (words.out, "tool “Bar”: feature 1 meets its limit first, after about 42 more"));
  g_assert_nonnull (strstr (words.out, "about 42 more pieces after 020"));
  g_assert_nonnull (strstr (words.out, "the drift is in Pp and Ppk"));
  g_assert_nonnull (strstr (words.out, "Cm and Cmk refused"));
}

/* Ten pieces about 25.000 and ten about 25.010. */
static void
test_shift (void)
{
  double sizes[20];
  g_autofree char *path = NULL;
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree, change, advice;

  for (guint i = 0; i < 20; i++)
    sizes[i] = (i < 10 ? 25.000 : 25.010) + (i % 2 == 0 ? -0.001 : 0.001);
  path = write_sizes ("shift.tmjob", sizes, 20, "");
  tree = run_json (&call, path, 1);
  assert_text (tree, "state", "shifted");
  change = member (tree, "change");
  assert_text (change, "piece", "011");
  assert_text (change, "low", "011");
  assert_text (change, "high", "011");
  g_assert_cmpfloat_with_epsilon (decimal (change, "before"), 25.000, 1e-9);
  g_assert_cmpfloat_with_epsilon (decimal (change, "after"), 25.010, 1e-9);
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "hold_back"))->len, ==, 10);
  advice = member (tree, "offset_advice");
  assert_text (advice, "advice", "correct");
  g_assert_cmpfloat (decimal (advice, "size_change"), <=, -0.009);
  g_assert_cmpfloat (decimal (advice, "size_change"), >=, -0.010);
  yajl_tree_free (tree);
  run (&words, "drift", path, "--feature", "1", "--hold-back", "--rules", "beyond-3s 8-one-side", NULL);
  g_assert_cmpint (words.status, ==, 1);
  g_assert_nonnull (strstr (words.out, "the level changed at piece 011: from 25.00000 to 25.01000 mm"));
  g_assert_nonnull (strstr (words.out, "hold back 10 pieces, from 011 to 020"));
  g_assert_nonnull (strstr (words.out, "  011, measured: out with a chance of "));
  /* Both rules together: 152.73 groups (C. W. Champ, W. H. Woodall, Technometrics 29, 1987). */
  g_assert_nonnull (strstr (words.out, "once in about 153 groups"));
}

/* A sample job beside the piston rings. */
static char *
find_sample (const char *name)
{
  g_autofree char *samples = g_path_get_dirname (g_getenv ("TM_RINGS"));

  return g_build_filename (samples, name, NULL);
}

static yajl_val
run_sample (Call *call, const char *name, const char *feature, const char *place)
{
  g_autofree char *path = find_sample (name);

  run (call, "drift", path, "--feature", feature, "--place", place, "--json", NULL);
  return call->status < 2 ? parse (call) : NULL;
}

/* The wear that is written in the notes of the tool: 0.00025 mm a piece from piece 031 on, whose interval
 * holds it, and the piece by which the true mean, @from less that wear, meets the guarded lower limit. */
static void
assert_wear (const char *feature, double from, double lower)
{
  /* Of the 0.0017 mm that judge prints with k = 2, to one side: 1.645 of its halves. */
  const double guard = 0.0014;
  const double meets = 31 + (from - lower - guard) / 0.00025;
  g_auto (Call) call = { 0 };
  yajl_val tree = run_sample (&call, "valve-body-batch.tmjob", feature, "1"), trend, forecast;

  assert_text (tree, "state", "drifting");
  g_assert_true (YAJL_IS_NULL (member (tree, "change")));
  g_assert_cmpuint (YAJL_GET_ARRAY (member (tree, "hold_back"))->len, ==, 0);
  trend = member (tree, "trend");
  g_assert_cmpfloat (decimal (trend, "slope_lower"), <, -0.00025);
  g_assert_cmpfloat (decimal (trend, "slope_upper"), >, -0.00025);
  forecast = member (tree, "forecast");
  assert_text (forecast, "limit", "lower");
  g_assert_cmpfloat (60 + number (forecast, "low"), <, meets);
  g_assert_cmpfloat (60 + number (forecast, "high"), >, meets);
  assert_text (member (tree, "offset_advice"), "advice", "correct");
  g_assert_cmpfloat (decimal (member (tree, "offset_advice"), "size_change"), >, 0.002);
  yajl_tree_free (tree);
}

/* The truth of the invented batch, as the notes of its tools tell it: both bores wear, and the spigot grew by
 * 0.010 mm from piece 045 on, of which every third is measured. */
static void
test_truth (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree, change, hold;

  assert_wear ("1", 16.0125, 16.000);
  assert_wear ("2", 20.0140, 20.000);
  tree = run_sample (&call, "valve-body-batch.tmjob", "3", "1");
  g_assert_cmpint (call.status, ==, 1);
  assert_text (tree, "check", "every 3");
  g_assert_true (YAJL_IS_NULL (member (tree, "forecast")));
  change = member (tree, "change");
  assert_text (change, "piece", "046"); /* the first one measured since */
  g_assert_cmpfloat_with_epsilon (decimal (change, "after") - decimal (change, "before"), 0.010, 0.002);
  hold = member (tree, "hold_back");
  g_assert_cmpuint (YAJL_GET_ARRAY (hold)->len, ==, 17);
  assert_text (YAJL_GET_ARRAY (hold)->values[0], "piece", "044"); /* after 043, which was measured well */
  assert_text (YAJL_GET_ARRAY (hold)->values[16], "piece", "060");
  yajl_tree_free (tree);
}

static void
assert_decimals (yajl_val tree, const char *const *keys)
{
  for (guint i = 0; keys[i] != NULL; i++)
    {
      yajl_val value = member (tree, keys[i]);

      g_assert_true (YAJL_IS_NULL (value) || YAJL_IS_STRING (value));
    }
}

static void
assert_numbers (yajl_val tree, const char *const *keys)
{
  for (guint i = 0; keys[i] != NULL; i++)
    {
      yajl_val value = member (tree, keys[i]);

      g_assert_true (YAJL_IS_NULL (value) || YAJL_IS_NUMBER (value));
    }
}

static void
assert_violations (yajl_val list)
{
  for (gsize i = 0; i < YAJL_GET_ARRAY (list)->len; i++)
    {
      yajl_val each = YAJL_GET_ARRAY (list)->values[i];

      g_assert_true (YAJL_IS_INTEGER (member (each, "group")));
      g_assert_true (YAJL_IS_STRING (member (each, "piece")));
      g_assert_true (YAJL_IS_STRING (member (each, "chart")));
      g_assert_true (YAJL_IS_STRING (member (each, "rule")));
    }
}

/* Every key that outside checks rely on, of the type that was promised: lengths are text, figures are
 * numbers, what does not apply is null. */
static void
assert_keys (yajl_val tree)
{
  static const char *const sizes[] = { "mean", "sd_within", "sd_overall", NULL };
  static const char *const limits[] = { "centre", "lower", "upper", NULL };
  static const char *const slopes[] = { "slope", "slope_lower", "slope_upper", "theil_sen", NULL };
  static const char *const chances[] = { "p", "mann_kendall_p", NULL };
  static const char *const left[] = { "pieces_left", "low", "high", NULL };
  static const char *const indexes[]
      = { "cp", "cpk", "pp", "ppk", "cpm", "cpk_lower", "cpk_upper", "normality_p", NULL };
  static const char *const serials[] = { "piece", "low", "high", NULL };

  g_assert_true (YAJL_IS_INTEGER (member (tree, "count")));
  assert_decimals (tree, sizes);
  g_assert_true (YAJL_IS_STRING (member (member (tree, "location"), "chart")));
  assert_decimals (member (tree, "location"), limits);
  assert_decimals (member (tree, "dispersion"), limits);
  assert_violations (member (tree, "violations"));
  g_assert_true (YAJL_IS_OBJECT (member (tree, "ewma")));
  g_assert_true (YAJL_IS_OBJECT (member (tree, "cusum")));
  assert_decimals (member (tree, "trend"), slopes);
  assert_numbers (member (tree, "trend"), chances);
  if (!YAJL_IS_NULL (member (tree, "forecast")))
    assert_numbers (member (tree, "forecast"), left);
  if (!YAJL_IS_NULL (member (tree, "change")))
    assert_decimals (member (tree, "change"), serials);
  g_assert_true (YAJL_IS_ARRAY (member (tree, "hold_back")));
  assert_numbers (member (tree, "capability"), indexes);
  g_assert_true (YAJL_IS_OBJECT (member (tree, "offset_advice")));
}

static void
test_samples (void)
{
  static const char *const rows[][3] = {
    { "piston-rings.tmjob", "1", "1" },          { "valve-body-batch.tmjob", "1", "1" },
    { "valve-body-batch.tmjob", "3", "1" },      { "bushed-lever.tmjob", "1", "1" },
    { "bushed-lever.tmjob", "2", "1" },          { "guide-block-inch.tmjob", "3", "2" },
    { "pivot-arm-inch.tmjob", "6", "1" },        { "pump-bearing-housing.tmjob", "5", "1" },
    { "pump-bearing-housing.tmjob", "6", "4" },  { "pump-bearing-housing.tmjob", "7", "3" },
    { "pump-bearing-housing.tmjob", "11", "1" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Call) call = { 0 };
      yajl_val tree = run_sample (&call, rows[i][0], rows[i][1], rows[i][2]);

      g_assert_nonnull (tree);
      g_assert_cmpstr (call.err, ==, "");
      assert_keys (tree);
      yajl_tree_free (tree);
    }
}

/* A piece out hides neither that the level changed nor that nothing is promised for the pieces to come; a
 * form error has no control limit below zero. */
static void
test_nothing_promised (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) form = { 0 };
  yajl_val tree = run_sample (&call, "bushed-lever.tmjob", "1", "1");

  assert_text (tree, "state", "out");
  g_assert_false (YAJL_IS_NULL (member (tree, "change")));
  g_assert_true (YAJL_IS_NULL (member (tree, "tolerance_interval")));
  yajl_tree_free (tree);
  tree = run_sample (&form, "pump-bearing-housing.tmjob", "8", "1");
  g_assert_cmpfloat (decimal (member (tree, "location"), "lower"), ==, 0);
  g_assert_cmpfloat (decimal (member (tree, "location"), "upper"), >, 0.03);
  yajl_tree_free (tree);
}

/* No word of the machine's for a number that is none. */
static void
assert_plain (const Call *call, int status)
{
  g_assert_cmpint (call->status, ==, status);
  g_assert_cmpstr (call->err, ==, "");
  g_assert_null (strstr (call->out, "nan"));
  g_assert_null (strstr (call->out, "inf"));
}

static void
test_poor (void)
{
  static const struct {
    double sizes[6];
    guint n;
    int status;
    const char *state;
  } rows[] = {
    { { 0 }, 0, 0, "not measured" },
    { { NAN, NAN }, 2, 0, "not measured" },
    { { 25 }, 1, 0, "too few" },
    { { 25, NAN, 25.001 }, 3, 0, "too few" },
    { { 25, 25, 25, 25, 25, 25 }, 6, 0, "steady" },
    { { 25.001, 25, NAN, 25.002, 25, 25.001 }, 6, 0, "steady" },
    { { 25, 25.001, 25.05, 25, 25, 25.002 }, 6, 1, "out" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *path = write_sizes ("poor.tmjob", rows[i].sizes, rows[i].n, "");
      g_auto (Call) words = { 0 };
      g_auto (Call) json = { 0 };
      yajl_val tree;

      run (&words, "drift", path, "--feature", "1", "--hold-back", NULL);
      assert_plain (&words, rows[i].status);
      tree = run_json (&json, path, rows[i].status);
      assert_plain (&json, rows[i].status);
      assert_text (tree, "state", rows[i].state);
      yajl_tree_free (tree);
    }
}

/* 500 pieces, 1 % bad missed with 5 % at most: 5 bad ones; of 225 drawn none with C(495, 225) / C(500, 225) =
 * 0.0495, of 224 with 0.0501.  Ten values, 95 % with 95 %: 3.393 (two-sided) and 2.911 (handbooks). */
static void
test_how_many (void)
{
  g_auto (Call) lot = { 0 };
  g_auto (Call) values = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree;

  run (&lot, "drift", "--sample-lot", "500", "--json", NULL);
  g_assert_cmpint (lot.status, ==, 0);
  tree = parse (&lot);
  g_assert_cmpfloat (number (tree, "sample"), ==, 225);
  g_assert_cmpfloat (number (tree, "bad"), ==, 5);
  g_assert_cmpfloat_with_epsilon (number (tree, "missed"), 0.0495, 5e-5);
  yajl_tree_free (tree);
  run (&values, "drift", "--values", "10", "--coverage", "0.95", "--json", NULL);
  tree = parse (&values);
  g_assert_cmpfloat_with_epsilon (number (tree, "two_sided"), 3.393, 5e-4);
  g_assert_cmpfloat_with_epsilon (number (tree, "one_sided"), 2.911, 5e-4);
  yajl_tree_free (tree);
  run (&words, "drift", "--sample-lot", "500", "--share", "0.1", "--risk", "0.1", NULL);
  g_assert_cmpint (words.status, ==, 0);
  g_assert_nonnull (strstr (words.out, "of 500"));
}

/* One bar, one bore: its wear is the slope turned to metal left (a bore gets smaller). */
static void
test_tool (void)
{
  double sizes[20], slope = 0.0005 - 0.001 * 10 / 665;
  g_autofree char *path = NULL;
  g_auto (Call) call = { 0 };
  yajl_val tree, features;

  for (guint i = 0; i < 20; i++)
    sizes[i] = 25.01 - 0.0005 * (i + 1) + (i % 2 == 0 ? -0.001 : 0.001);
  path = write_sizes ("tool.tmjob", sizes, 20, ", \"kind\": \"bore\", \"tool\": \"Bar\"");
  run (&call, "drift", path, "--tool", "Bar", "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "tool", "Bar");
  g_assert_cmpfloat_with_epsilon (decimal (member (tree, "wear"), "a_piece"), slope, 1e-12);
  g_assert_cmpfloat (number (member (tree, "wear"), "features"), ==, 1);
  features = member (tree, "features");
  g_assert_cmpuint (YAJL_GET_ARRAY (features)->len, ==, 1);
  assert_text (YAJL_GET_ARRAY (features)->values[0], "feature", "1");
  yajl_tree_free (tree);
}

/* Four pieces carry no capability; 60 that are not normal and follow no shape no Pp: three values by turns.
 */
static void
test_not_carried (void)
{
  double sizes[60];
  g_autofree char *path = NULL;
  g_auto (Call) few = { 0 };
  g_auto (Call) lumps = { 0 };

  for (guint i = 0; i < 60; i++)
    sizes[i] = 25 + 0.005 * ((int)(i % 3) - 1);
  path = write_sizes ("lumps.tmjob", sizes, 4, "");
  run (&few, "drift", path, "--feature", "1", NULL);
  g_assert_nonnull (strstr (few.out, "capability refused: too few pieces"));
  g_free (path);
  path = write_sizes ("lumps.tmjob", sizes, 60, "");
  run (&lumps, "drift", path, "--feature", "1", NULL);
  g_assert_nonnull (strstr (lumps.out, "Pp and Ppk refused: the values are not normal"));
  g_assert_null (strstr (lumps.out, "  Ppk "));
}

static void
test_refused (void)
{
  static const struct {
    const char *words[6];
    const char *wanted;
  } rows[] = {
    { { NULL }, "--feature N" },
    { { "--feature", "9" }, "“9”" },
    { { "--feature", "2" }, "no sizes" },
    { { "--tool", "Drill" }, "“Drill”" },
    { { "--tool", "Idle" }, "cuts no feature" },
    { { "--tool", "Bar", "--feature", "1" }, "ask one" },
    { { "--tool", "Bar", "--place", "1" }, "--place" },
    { { "--feature", "1", "--place", "2" }, "--place “2”" },
    { { "--feature", "1", "--group-size", "0" }, "--group-size “0”" },
    { { "--feature", "1", "--group-size", "1001" }, "from 1 to 1000" },
    { { "--feature", "1", "--group-size", "two" }, "“two”" },
    { { "--feature", "1", "--baseline", "-1" }, "--baseline “-1”" },
    { { "--feature", "1", "--rules", "always" }, "“always” is none; use beyond-3s" },
    { { "--feature", "1", "--rules", " " }, "--rules is empty" },
    { { "--feature", "1", "--coverage", "1" }, "--coverage “1”" },
    { { "--feature", "1", "--confidence", "nan" }, "--confidence “nan”" },
    { { "--feature", "1", "--loudly" }, "--loudly" },
    { { "--sample-lot", "500" }, "without a job" },
  };
  static const double sizes[] = { 25 };
  g_autofree char *path = write_sizes ("refused.tmjob", sizes, 1, ", \"tool\": \"Bar\"");
  g_auto (Call) none = { 0 };
  g_auto (Call) missing = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "drift", path, rows[i].words[0], rows[i].words[1], rows[i].words[2], rows[i].words[3],
           NULL);
      assert_refused (&call, rows[i].wanted);
    }
  run (&none, "drift", "--feature", "1", NULL);
  assert_refused (&none, "JOB");
  run (&missing, "drift", "no-such.tmjob", "--feature", "1", NULL);
  assert_refused (&missing, "no-such.tmjob");
}

static void
test_refused_counts (void)
{
  static const char *const rows[][3] = {
    { "--sample-lot", "0", "--sample-lot “0”" },
    { "--sample-lot", "-4", "--sample-lot “-4”" },
    { "--sample-lot", "1e3", "“1e3”" },
    { "--values", "1", "two or more" },
    { "--values", "99999999999", "--values “99" },
  };
  g_auto (Call) both = { 0 };
  g_auto (Call) share = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "drift", rows[i][0], rows[i][1], NULL);
      assert_refused (&call, rows[i][2]);
    }
  run (&both, "drift", "--sample-lot", "5", "--values", "5", NULL);
  assert_refused (&both, "ask one");
  run (&share, "drift", "--sample-lot", "5", "--share", "2", NULL);
  assert_refused (&share, "--share “2”");
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/drift/rings", test_rings);
  g_test_add_func ("/cli/drift/groups", test_groups);
  g_test_add_func ("/cli/drift/wear", test_wear);
  g_test_add_func ("/cli/drift/tool", test_tool);
  g_test_add_func ("/cli/drift/shift", test_shift);
  g_test_add_func ("/cli/drift/truth", test_truth);
  g_test_add_func ("/cli/drift/samples", test_samples);
  g_test_add_func ("/cli/drift/nothing-promised", test_nothing_promised);
  g_test_add_func ("/cli/drift/poor", test_poor);
  g_test_add_func ("/cli/drift/how-many", test_how_many);
  g_test_add_func ("/cli/drift/not-carried", test_not_carried);
  g_test_add_func ("/cli/drift/refused", test_refused);
  g_test_add_func ("/cli/drift/refused-counts", test_refused_counts);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
