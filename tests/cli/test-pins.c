/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli pins.
 */

#include "cli-support.h"

static void
assert_truth (yajl_val tree, const char *key, gboolean expected)
{
  yajl_val value = member (tree, key);

  g_assert_true (expected ? YAJL_IS_TRUE (value) : YAJL_IS_FALSE (value));
}

static void
assert_number (yajl_val tree, const char *key, double expected, double tolerance)
{
  yajl_val value = member (tree, key);
  double number
      = YAJL_IS_STRING (value) ? g_ascii_strtod (YAJL_GET_STRING (value), NULL) : YAJL_GET_DOUBLE (value);

  g_assert_cmpfloat_with_epsilon (number, expected, tolerance);
}

/* "The .2500 ZZ minus enters, the .2510 ZZ minus does not: >= .2498 and < .2510" (recomputed from the
 * classes of ASME B89.1.5); what a pin needs to enter, 1 µm unless said, comes on top. */
static void
test_minus_pins (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) assumed = { 0 };
  yajl_val tree;

  run (&call, "pins", "--lower", ".2500", "--upper", ".2510", "--unit", "in", "--clearance", "0", "--trials",
       ".2500-ZZ- go, .2510-ZZ- nogo", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "low", "0.2498");
  assert_text (tree, "high", "0.2510");
  assert_text (tree, "open_below", "0.0002");
  assert_text (tree, "open_above", "0.0000");
  assert_truth (tree, "proves_band", FALSE);
  /* By symmetry of the two ramps. */
  assert_number (tree, "estimate", 0.2504, 1e-9);
  yajl_tree_free (tree);
  run (&assumed, "pins", "--lower", ".2500", "--upper", ".2510", "--unit", "in", "--trials",
       ".2500-ZZ- go, .2510-ZZ- nogo", "--json", NULL);
  tree = parse (&assumed);
  assert_number (tree, "high", 0.2510 + 0.001 / 25.4, 1e-11);
  yajl_tree_free (tree);
}

/* 12.006 Z plus is 12.006 to 12.00854 and 12.018 Z minus 12.01546 to 12.018. */
static void
test_words (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) proven = { 0 };

  run (&call, "pins", "--lower", "12.006", "--upper", "12.015", "--unit", "mm", "--clearance", "0",
       "--trials", "12.006-Z+ go, 12.018-Z- nogo", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "these two prove 12.006 to 12.018 mm"));
  g_assert_nonnull (strstr (call.out, "the band ends at 12.015: 0.003 mm above it is left open"));
  run (&proven, "pins", "--lower", "12.006", "--upper", "12.019", "--trials",
       "12,006-Z+ go,12,018 Z minus did not go", NULL);
  g_assert_cmpstr (proven.err, ==, "");
  g_assert_nonnull (strstr (proven.out, "these two prove 12.006 to 12.019 mm"));
  g_assert_nonnull (strstr (proven.out, "they prove it"));
}

/* With one side open and no size there is no estimate; a size gives one. */
static void
test_size (void)
{
  g_auto (Call) open = { 0 };
  g_auto (Call) sized = { 0 };
  yajl_val tree;

  run (&open, "pins", "--lower", "12.000", "--upper", "12.018", "--trials", "12.006-X+ go", "--json", NULL);
  tree = parse (&open);
  assert_text (tree, "low", "12.006");
  assert_text (tree, "high", NULL);
  assert_text (tree, "open_above", NULL);
  assert_text (tree, "estimate", NULL);
  assert_text (tree, "uncertainty", NULL);
  assert_truth (tree, "proves_band", FALSE);
  yajl_tree_free (tree);
  /* The pin is far below: the reading stands as it is. */
  run (&sized, "pins", "--lower", "12.000", "--upper", "12.018", "--trials", "12.006-X+ go", "--size",
       "12.100", "--u", "0.002", "--json", NULL);
  tree = parse (&sized);
  assert_number (tree, "estimate", 12.1, 1e-9);
  assert_number (tree, "uncertainty", 0.002, 1e-9);
  assert_number (tree, "estimate_high", 12.1 + 1.959964 * 0.002, 1e-8);
  yajl_tree_free (tree);
}

static void
test_contradiction (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) far = { 0 };

  run (&call, "pins", "--lower", "12.000", "--trials", "12.016-Z+ go, 12.006-Z+ nogo", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "contradiction: 12.016 Z plus went and 12.006 Z plus did not"));
  run (&far, "pins", "--lower", "12.000", "--trials", "12.016-Z+ go", "--size", "12.000", "--u", "0.001",
       NULL);
  g_assert_nonnull (strstr (far.out, "contradiction"));
  g_assert_nonnull (strstr (far.out, "12.016 Z plus"));
}

static void
test_refused (void)
{
  static const struct {
    const char *lower, *upper, *unit, *trials, *size, *u, *wanted;
  } rows[] = {
    { "12.006", "12.018", "mm", "12.006-W+ go", NULL, NULL, "class “W”" },
    { "12.006", "12.018", "mm", "12.006-Z go", NULL, NULL, "12.006-Z go" },
    { "12.006", "12.018", "mm", "12.006-Z+ perhaps", NULL, NULL, "is not read" },
    { "12.006", "12.018", "mm", "12.006-Z+ go, nonsense", NULL, NULL, "“nonsense”" },
    { "12.006", "12.018", "mm", "400-Z+ go", NULL, NULL, "305.054" },
    { "12.006", "12.018", "mm", "0.1-Z+ go", NULL, NULL, "0.254" },
    { "12.006", "12.018", "mm", "1.2.3-Z+ go", NULL, NULL, "1.2.3" },
    { "12.006", "12.018", "mm", "", NULL, NULL, "names no pin" },
    { "12.006", "12.018", "mm", "12-Z+ go \xff", NULL, NULL, "is not read" },
    { "12.006", "12.018", "mm", NULL, NULL, NULL, "--trials" },
    { "12.019", "12.018", "mm", "12.006-Z+ go", NULL, NULL, "above --upper" },
    { NULL, NULL, "mm", "12.006-Z+ go", NULL, NULL, "the band is missing" },
    { "x", "12.018", "mm", "12.006-Z+ go", NULL, NULL, "--lower “x”" },
    { "12.006", "12.018", "deg", "12.006-Z+ go", NULL, NULL, "--unit “deg”" },
    { "12.006", "12.018", "mm", "12.006-Z+ go", "12.01", NULL, "go together" },
    { "12.006", "12.018", "mm", "12.006-Z+ go", NULL, "0.001", "go together" },
    { "12.006", "12.018", "mm", "12.006-Z+ go", "12.01", "-0.001", "below zero" },
    { "12.006", "12.018", "mm", "12.006-Z+ go", "12.01", "0", "above zero" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Call) call = { 0 };
      const char *words[14];
      guint n = 0;
      const char *options[][2] = {
        { "--unit", rows[i].unit },     { "--lower", rows[i].lower }, { "--upper", rows[i].upper },
        { "--trials", rows[i].trials }, { "--size", rows[i].size },   { "--u", rows[i].u },
      };

      for (gsize j = 0; j < G_N_ELEMENTS (options); j++)
        if (options[j][1] != NULL)
          {
            words[n++] = options[j][0];
            words[n++] = options[j][1];
          }
      while (n < G_N_ELEMENTS (words))
        words[n++] = NULL;
      run (&call, "pins", words[0], words[1], words[2], words[3], words[4], words[5], words[6], words[7],
           words[8], words[9], words[10], words[11], NULL);
      assert_refused (&call, rows[i].wanted);
    }
}

static void
test_clearance_refused (void)
{
  g_auto (Call) wide = { 0 };
  g_auto (Call) negative = { 0 };

  run (&wide, "pins", "--lower", "12.006", "--trials", "12.006-Z+ go", "--clearance", "1000.1", NULL);
  assert_refused (&wide, "more than a metre");
  run (&negative, "pins", "--lower", "12.006", "--trials", "12.006-Z+ go", "--clearance", "-0.001", NULL);
  assert_refused (&negative, "below zero");
}

static const char pins_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"T-1\", \"unit\": \"in\"},"
      " \"gauges\": [{\"tag\": \"XP\", \"kind\": \"pin set\", \"unit\": \"in\", \"range_from\": \".4000\","
      "   \"range_to\": \".6000\", \"pin_step\": \".0005\", \"pin_class\": \"X\", \"pin_sign\": \"plus\"},"
      "  {\"tag\": \"ZZ\", \"kind\": \"pin set\", \"unit\": \"in\", \"range_from\": \".011\","
      "   \"range_to\": \".750\", \"pin_step\": \".001\", \"pin_class\": \"ZZ\", \"pin_sign\": \"minus\"}],"
      " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø.5000/.5010\"},"
      "  {\"balloon\": \"2\", \"requirement\": \"Ø.7000/.7003\"},"
      "  {\"balloon\": \"3\", \"requirement\": \"1.5 max\"}]}";

static void
test_pull (void)
{
  g_autofree char *path = write_job ("pins.tmjob", pins_job);
  g_auto (Call) closes = { 0 };
  g_auto (Call) open = { 0 };
  g_auto (Call) unknown = { 0 };
  g_auto (Call) unsaid = { 0 };
  yajl_val tree;

  run (&closes, "pins", path, "--feature", "1", "--json", NULL);
  g_assert_cmpstr (closes.err, ==, "");
  g_assert_cmpint (closes.status, ==, 0);
  tree = parse (&closes);
  assert_text (member (tree, "go"), "set", "XP");
  assert_text (member (tree, "go"), "size", "0.5000");
  assert_text (member (tree, "nogo"), "size", "0.5005");
  assert_text (tree, "low", "0.5000");
  assert_truth (tree, "proves_band", TRUE);
  yajl_tree_free (tree);
  run (&open, "pins", path, "--feature", "2", NULL);
  g_assert_cmpint (open.status, ==, 0);
  g_assert_nonnull (strstr (open.out, "go: the 0.7000 in pin of ZZ"));
  g_assert_nonnull (strstr (open.out, "no-go: the 0.7010 in pin of ZZ"));
  g_assert_nonnull (strstr (open.out, "the band begins at 0.7000: 0.0002 in below it is left open"));
  run (&unknown, "pins", path, "--feature", "9", NULL);
  assert_refused (&unknown, "“9”");
  run (&unsaid, "pins", path, NULL);
  assert_refused (&unsaid, "--feature");
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/pins/minus-pins", test_minus_pins);
  g_test_add_func ("/cli/pins/words", test_words);
  g_test_add_func ("/cli/pins/size", test_size);
  g_test_add_func ("/cli/pins/contradiction", test_contradiction);
  g_test_add_func ("/cli/pins/refused", test_refused);
  g_test_add_func ("/cli/pins/clearance-refused", test_clearance_refused);
  g_test_add_func ("/cli/pins/pull", test_pull);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
