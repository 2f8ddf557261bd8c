/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli check: what loads and is wrong all the same, one fault at a time.
 */

#include "cli-support.h"

/* An SVG of 9 mm, in base64. */
#define SVG                                                      \
  "PHN2ZyB4bWxucz0naHR0cDovL3d3dy53My5vcmcvMjAwMC9zdmcnIHdpZHRo" \
  "PSc5bW0nIGhlaWdodD0nOW1tJy8+"
#define HEAD \
  "{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"T-4\", \"unit\": \"mm\"}"
#define BORE  "{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\"}"
#define PLACE "⌖ Ø0.2 Ⓜ A B"

/* A bore that is out, reworked; @more: what was read since. */
#define REWORK(place, disposition, after, more)                                                              \
  HEAD                                                                                                       \
      ", \"features\": [" BORE "], \"pieces\": [{\"serial\": \"1\"}], \"readings\": ["                       \
      "{\"id\": \"1\", \"piece\": \"1\", \"feature\": \"1\", \"value\": \"24.99\"}" more "],"                \
      " \"nonconformances\": [{\"piece\": \"1\", \"feature\": \"1\", \"number\": \"N-1\", \"place\": " place \
      ","                                                                                                    \
      " \"disposition\": \"" disposition "\", \"rework_at\": \"2026-05-04T10:00:00Z\","                      \
      " \"rework_after\": \"" after "\"}]}"
#define AGAIN                                                                              \
  ", {\"id\": \"2\", \"piece\": \"1\", \"feature\": \"1\", \"value\": \"25.01\", \"at\": " \
  "\"2026-05-04T11:00:00Z\"}"

#define PIN_SET                                                                                     \
  "\"gauges\": [{\"tag\": \"P-1\", \"kind\": \"pin set\", \"unit\": \"mm\", \"range_from\": \"1\"," \
  " \"range_to\": \"10\", \"pin_step\": \"0.01\", \"pin_class\": \"X\", \"pin_sign\": \"plus\"}]"
#define TRIAL(feature, size)                                                               \
  ", " PIN_SET ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"" feature "\"}]," \
  " \"pieces\": [{\"serial\": \"1\"}], \"pin_trials\": [{\"id\": \"1\", \"piece\": \"1\"," \
  " \"feature\": \"1\", \"size\": \"" size "\", \"class\": \"X\", \"sign\": \"plus\","     \
  " \"gauge\": \"P-1\", \"went\": true}]}"

#define CUT(members)                                                                             \
  ", \"features\": [" BORE "], \"pieces\": [{\"serial\": \"1\"}], \"cuts\": [{\"piece\": \"1\"," \
  " \"feature\": \"1\", " members "}]}"
#define MATE(members)                                                                        \
  ", \"features\": [" BORE "], \"pieces\": [{\"serial\": \"1\"}], \"mates\": [{\"feature\":" \
  " \"1\", \"serial\": \"B\", \"smallest\": \"25.02\", " members "}]}"
#define HELD(members, value)                                                                       \
  HEAD ", \"features\": [" BORE "], \"pieces\": [{\"serial\": \"1\", " members "}], \"readings\":" \
       " [{\"piece\": \"1\", \"feature\": \"1\", \"value\": \"" value "\"}]}"
#define PRESS(members) \
  ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"press\": {" members "}}]}"

static const struct {
  const char *job;
  const char *wanted; /* in the one fault; "": nothing is wrong */
} cases[] = {
  { HEAD "}", "" },
  { HEAD ", \"features\": [" BORE ", {\"balloon\": \"2\", \"requirement\": \"" PLACE
         "\", \"size_feature\": \"1\"}]}",
    "" },
  { HEAD ", \"features\": [" BORE ", {\"balloon\": \"2\", \"requirement\": \"" PLACE
         "\", \"size_feature\": \"9\"}]}",
    "size feature “9”" },
  { HEAD ", \"features\": [{\"balloon\": \"2\", \"requirement\": \"" PLACE "\", \"size_feature\": \"2\"}]}",
    "no bore or shaft" },
  { HEAD ", \"features\": [{\"balloon\": \"2\", \"requirement\": \"" PLACE "\"}]}", "no size feature" },
  { HEAD ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"method\": \"lost\"}]}",
    "method “lost”" },
  { HEAD ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 Q7\"}]}", "ISO 286" },
  { HEAD ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"40\"}]}", "general tolerance" },
  { HEAD ", \"features\": [{\"balloon\": \"1\", \"kind\": \"bore\", \"requirement\": \"as drawn\"}]}",
    "no limit" },
  { HEAD ", \"features\": [" BORE "], \"pieces\": [{\"serial\": \"1\"}],"
         " \"nonconformances\": [{\"piece\": \"7\", \"feature\": \"1\", \"number\": \"N-1\"}]}",
    "piece “7”" },
  { HEAD ", \"features\": [" BORE "], \"pieces\": [{\"serial\": \"1\"}],"
         " \"nonconformances\": [{\"piece\": \"1\", \"feature\": \"8\", \"number\": \"N-1\"}]}",
    "feature “8”" },
  { HEAD ", \"signatures\": [{\"by\": \"AB\", \"role\": \"Measured by\", \"at\": \"2026-05-05T10:00:00Z\","
         " \"digest\": \"3f1c6a2b9d8e7f605142332415061728394a5b6c7d8e9fa0b1c2d3e4f5061728\"}]}",
    "signature of AB, 2026-05-05T10:00:00Z: superseded" },
  { REWORK ("1", "rework", "1", ""), "was reworked and not measured since; measure it again" },
  { REWORK ("1", "scrap", "1", AGAIN), "a rework was done, but its disposition is “scrap”" },
  { REWORK ("1", "rework", "77", AGAIN), "rework_after “77” is no reading" },
  { REWORK ("3", "rework", "1", AGAIN), "feature 1 has 1 places, and none number 3" },
  { HEAD ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"affected\": true}]}",
    "feature 1: it is marked as affected, but the first article is not partial" },
  { HEAD ", \"features\": [" BORE ", {\"balloon\": \"2\", \"requirement\": \"Ø30 H7\"}],"
         " \"drawings\": [{\"name\": \"D\", \"media\": \"image/svg+xml\", \"content\": \"" SVG "\"}],"
         " \"balloons\": [{\"drawing\": \"D\", \"feature\": \"1\", \"x\": \"0.5\", \"y\": \"0.5\"}]}",
    "feature 2: its balloon stands on no drawing" },
  { HEAD ", \"drawings\": [{\"name\": \"D\", \"media\": \"image/png\", \"content\": \"AAAA\"}]}",
    "drawing D: the file is no PNG, JPEG, SVG or PDF" },
  { HEAD ", \"drawings\": [{\"name\": \"D\", \"media\": \"image/png\", \"content\": \"" SVG "\"}]}",
    "drawing D: its media says image/png, but it is image/svg+xml" },
  { HEAD ", \"drawings\": [{\"name\": \"D\", \"media\": \"image/svg+xml\", \"page\": 3, \"content\": \"" SVG
         "\"}]}",
    "drawing D: no page 3" },
  { HEAD ", \"sub_parts\": [{\"number\": \"S-1\"}]}", "the article is a detail part" },
  { HEAD ", \"events\": [{\"before_piece\": \"3\", \"kind\": \"tool\"}]}", "event 1: piece “3”" },
  { HEAD ", \"events\": [{\"kind\": \"lot\"}, {\"kind\": \"offset\", \"feature\": \"7\"}]}",
    "event 2: feature “7”" },
  { HEAD ", \"events\": [{\"kind\": \"tool\", \"tool\": \"bar\"}]}", "event 1: tool “bar”" },
  { HEAD ", \"tools\": [{\"name\": \"bar\", \"unit\": \"mm\"}], \"features\": [" BORE "],"
         " \"events\": [{\"kind\": \"tool\", \"tool\": \"bar\", \"feature\": \"1\"}]}",
    "tool “bar” does not cut feature 1" },
  { HELD ("\"disposition\": \"hold\"", "25.01"), "" },
  { HELD ("\"disposition_note\": \"late\"", "25.01"), "piece 1: a note says why it is held back" },
  { HELD ("\"disposition\": \"release\"", "25.01"), "" },
  { HELD ("\"disposition\": \"release\"", "25.03"), "piece 1: it is released, but feature 1 is out" },
  { HEAD ", \"features\": [{\"balloon\": \"2\", \"requirement\": \"⌖ Ø0.2 A\"}], \"pieces\": [{\"serial\": "
         "\"1\"}],"
         " \"readings\": [{\"piece\": \"1\", \"feature\": \"2\", \"value\": \"0.10\", \"dx\": \"0.03\","
         " \"dy\": \"0.04\"}]}",
    "" },
  { HEAD ", \"features\": [{\"balloon\": \"2\", \"requirement\": \"⌖ Ø0.2 A\"}], \"pieces\": [{\"serial\": "
         "\"1\"}],"
         " \"readings\": [{\"piece\": \"1\", \"feature\": \"2\", \"value\": \"0.12\", \"dx\": \"0.03\","
         " \"dy\": \"0.04\"}]}",
    "0.10" },
  { HEAD TRIAL ("Ø8 H7", "8.01"), "" },
  { HEAD TRIAL ("Ø8 H7", "12"), "set “P-1” has no pin of 12" },
  { HEAD TRIAL ("Ø8 H7", "8.005"), "has no pin of 8.005" },
  { HEAD TRIAL ("Ø8 h6", "8.01"), "pins do not measure feature 1" },
  { HEAD ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\", \"tool\": \"bar\"}]}",
    "tool “bar”" },
  { HEAD CUT ("\"dialled\": \"0.1\""), "" },
  { HEAD CUT ("\"dialled\": \"0.1\", \"tool\": \"bar\""), "cut 1: tool “bar”" },
  { HEAD CUT ("\"dialled\": \"-0.1\""), "away from the metal" },
  { HEAD CUT ("\"dialled\": \"0\""), "cut 1: nothing was dialled" },
  { HEAD CUT ("\"dialled\": \"0\", \"passes\": 2"), "" },
  { HEAD MATE ("\"piece\": \"1\""), "" },
  { HEAD MATE ("\"piece\": \"7\""), "mate B: piece “7”" },
  { HEAD MATE ("\"piece\": \"1\", \"place\": 2"), "feature 1 has 1 place" },
  { HEAD PRESS ("\"hub_outside\": \"40\""), "" },
  { HEAD PRESS ("\"hub_outside\": \"25\""), "feature 1: press: " },
  { HEAD PRESS ("\"hub_outside\": \"40\", \"shaft_inside\": \"30\""), "feature 1: press: " },
  { HEAD PRESS ("\"shaft_material\": \"unobtainium\""), "material “unobtainium”" },
};

static void
assert_text_holds (yajl_val value, const char *wanted)
{
  const char *text = YAJL_GET_STRING (value);

  g_assert_nonnull (text);
  g_assert_nonnull (strstr (text, wanted));
}

static void
test_faults (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = write_job ("check.tmjob", cases[i].job);
      g_auto (Call) call = { 0 };
      yajl_val tree, wrong;

      g_test_message ("%s", cases[i].job);
      run (&call, "check", path, "--json", NULL);
      g_assert_cmpstr (call.err, ==, "");
      g_assert_cmpint (call.status, ==, *cases[i].wanted != '\0' ? 1 : 0);
      tree = parse (&call);
      wrong = member (tree, "wrong");
      g_assert_cmpuint (YAJL_GET_ARRAY (wrong)->len, ==, *cases[i].wanted != '\0' ? 1 : 0);
      if (*cases[i].wanted != '\0')
        assert_text_holds (YAJL_GET_ARRAY (wrong)->values[0], cases[i].wanted);
      yajl_tree_free (tree);
    }
}

/* What a gauge cannot be is refused before anything else of the file is looked at. */
static void
test_wrong_gauges (void)
{
  static const struct {
    const char *gauge, *wanted;
  } wrong[] = {
    { "\"calibrated\": \"2026-05-01\", \"due\": \"2026-01-01\"", "due date is before the calibration" },
    { "\"resolution\": \"0\"", "resolution is zero" },
    { "\"error_limit\": \"-0.002\"", "below zero" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autofree char *job = g_strdup_printf (HEAD ", \"gauges\": [{\"tag\": \"G\", %s}]}", wrong[i].gauge);
      g_autofree char *path = write_job ("gauge.tmjob", job);
      g_auto (Call) call = { 0 };

      run (&call, "check", path, "--json", NULL);
      assert_refused (&call, wrong[i].wanted);
      g_assert_nonnull (strstr (call.err, "gauges[0]"));
    }
}

/* What does not apply is null: a thread has no unit, and what is not measured no size. */
static void
test_nulls (void)
{
  g_autofree char *path = write_job (
      "thread.tmjob", HEAD ", \"features\": [{\"balloon\": \"1\", \"requirement\": \"M8x1.25 6H\"}],"
                           " \"pieces\": [{\"serial\": \"1\"}]}");
  static const char *const keys[]
      = { "size",        "smallest",       "largest", "expanded_uncertainty", "unit",   "lower",   "upper",
          "side",        "probability_in", "taper",   "out_of_round",         "method", "settles", "reason",
          "first_result" };
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "judge", path, "--json", NULL);
  g_assert_cmpint (call.status, ==, 1);
  tree = parse (&call);
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    assert_text (YAJL_GET_ARRAY (tree)->values[0], keys[i], NULL);
  assert_text (YAJL_GET_ARRAY (tree)->values[0], "verdict", "not measured");
  yajl_tree_free (tree);
}

#define REWORKED                                                                              \
  HEAD ", \"features\": [" BORE "], \"pieces\": [{\"serial\": \"1\"}], \"readings\": ["       \
       "{\"id\": \"1\", \"piece\": \"1\", \"feature\": \"1\", \"value\": \"24.990\"},"        \
       " {\"id\": \"2\", \"piece\": \"1\", \"feature\": \"1\", \"value\": \"25.010\"}],"      \
       " \"nonconformances\": [{\"piece\": \"1\", \"feature\": \"1\", \"number\": \"NC-14\"," \
       " \"disposition\": \"rework\", \"rework_at\": \"2026-05-04T10:00:00Z\", \"rework_after\": \"1\"}]}"

/* The result counts, and what it was before the rework stands beside it. */
static void
test_first_result (void)
{
  g_autofree char *path = write_job ("rework.tmjob", REWORKED);
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree, row;

  run (&call, "judge", path, "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  row = YAJL_GET_ARRAY (tree)->values[0];
  assert_text (row, "size", "25.010");
  assert_text (member (row, "first_result"), "size", "24.990");
  assert_text (member (row, "first_result"), "verdict", "out");
  assert_text (member (row, "first_result"), "side", "metal left");
  assert_text (member (row, "first_result"), "nonconformance", "NC-14");
  assert_text (member (row, "first_result"), "rework_at", "2026-05-04T10:00:00Z");
  yajl_tree_free (tree);
  run (&words, "judge", path, NULL);
  g_assert_nonnull (
      strstr (words.out, "first result out, metal left 24.990 mm, reworked 2026-05-04T10:00:00Z"));
}

static void
test_arguments (void)
{
  g_autofree char *path = write_job ("arguments.tmjob", HEAD "}");
  g_auto (Call) flag = { 0 }, missing = { 0 }, extra = { 0 };

  run (&flag, "judge", path, "--json=yes", NULL);
  assert_refused (&flag, "--json");
  run (&missing, "judge", path, "--feature", "--json", NULL);
  assert_refused (&missing, "--feature");
  run (&extra, "book", "verify", path, NULL);
  assert_refused (&extra, path);
}

/* The user's own book: what is missing is said, and where else one may lie. */
static void
test_own_book (void)
{
  g_autofree char *path = write_job ("own.tmjob", HEAD "}");
  g_autofree char *blocked = g_build_filename (folder, "tenthmark", NULL);
  g_auto (Call) list = { 0 }, add = { 0 };

  run (&list, "book", "list", NULL);
  assert_refused (&list, "there is no book yet");
  g_assert_true (g_file_set_contents (blocked, "in the way", -1, NULL));
  run (&add, "book", "add", path, NULL);
  assert_refused (&add, "--book");
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/check/faults", test_faults);
  g_test_add_func ("/cli/check/wrong-gauges", test_wrong_gauges);
  g_test_add_func ("/cli/check/nulls", test_nulls);
  g_test_add_func ("/cli/first-result", test_first_result);
  g_test_add_func ("/cli/check/arguments", test_arguments);
  g_test_add_func ("/cli/check/own-book", test_own_book);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
