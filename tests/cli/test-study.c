/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli study: the published example as its file stands, the forms of a table, and what is no
 * study.
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
study (const char *path, const char *band)
{
  g_auto (Call) call = { 0 };

  if (band != NULL)
    run (&call, "study", path, "--json", "--band", band, NULL);
  else
    run (&call, "study", path, "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_cmpstr (call.err, ==, "");
  return parse (&call);
}

/* The measurement systems manual's example; figures from memory, as tests/data says. */
static void
test_published (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("TM_TEST_DATA"), "gauge_study_10x3x3.csv", NULL);
  yajl_val tree = study (path, "4");

  assert_close (tree, "ev", 0.199933, 5e-7);
  assert_close (tree, "av", 0.226838, 1e-6);
  assert_close (tree, "interaction", 0, 0);
  assert_close (tree, "grr", 0.302373, 2e-6);
  assert_close (tree, "pv", 1.042327, 1e-6);
  assert_close (tree, "tv", 1.085300, 1e-6);
  assert_close (tree, "percent_study", 27.9, 0.05);
  assert_close (tree, "percent_band", 45.3557, 1e-4);
  assert_close (tree, "p_interaction", 0.9741064043, 1e-9);
  assert_close (tree, "ndc", 4, 0);
  g_assert_true (YAJL_IS_TRUE (member (tree, "pooled")));
  g_assert_true (YAJL_IS_NULL (member (tree, "note")));
  assert_close (member (tree, "range_method"), "grr", 0.30575, 2e-4);
  yajl_tree_free (tree);
}

/* One study of four readings, 1, 3 and 6, 6, in other clothes: error 2 of 2, pieces 16 of 1, so that
 * ev = 1 and pv = sqrt (15 / 2). */
static void
test_forms (void)
{
  static const char *const tables[] = {
    "piece,person,trial,value\na,X,1,1\na,X,2,3\nb,X,1,6\nb,X,2,6\n",
    "VALUE;Trial;Appraiser;Part\n3,0;2;X;a\n1,0;1;X;a\n6,0;1;X;b\n6,0;2;X;b\n",
    "# one, two, three; four\n\nPiece\tPerson\tValue\na\tX\t1\nb\tX\t6\na\tX\t3\nb\tX\t6\n",
    "\xEF\xBB\xBF# note\nvalue,piece\r\n1,a\r\n3,a\r\n6,b\r\n6,b\r\n",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      g_autofree char *path = write_job ("forms.csv", tables[i]);
      yajl_val tree;

      g_test_message ("table %zu", i);
      tree = study (path, NULL);
      assert_close (tree, "ev", 1, 1e-12);
      assert_close (tree, "pv", sqrt (7.5), 1e-12);
      g_assert_true (YAJL_IS_NULL (member (tree, "av")));
      g_assert_true (YAJL_IS_NULL (member (tree, "percent_band")));
      g_assert_true (YAJL_IS_STRING (member (tree, "note")));
      yajl_tree_free (tree);
    }
}

static void
test_equal (void)
{
  g_autofree char *path = write_job ("equal.csv", "piece,value\n1,5\n1,5\n2,5\n2,5\n");
  yajl_val tree = study (path, "0,1");

  g_assert_true (YAJL_IS_NULL (member (tree, "ev")));
  g_assert_true (YAJL_IS_NULL (member (tree, "ndc")));
  assert_text (
      tree, "note",
      "Every value is equal: the step of the gauge hides what there is; read finer, or take other pieces.");
  yajl_tree_free (tree);
}

static void
test_words (void)
{
  g_autofree char *path = write_job ("one.csv", "piece,value\n1,5\n1,6\n2,9\n2,9\n");
  g_auto (Call) call = { 0 };

  run (&call, "study", path, NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "One person: repeatability only"));
  g_assert_nonnull (strstr (call.out, "people: not known"));
}

static void
test_refused (void)
{
  static const struct {
    const char *content, *wanted;
  } cases[] = {
    { "", "first line is" },
    { "piece,person,trial,value\n", "no reading" },
    { "piece,colour,value\n1,2,3\n", "“colour” is no heading" },
    { "piece,part,value\n1,2,3\n", "stands twice" },
    { "piece,person\n1,2\n", "no column “value”" },
    { "person,value\n1,2\n", "no column “piece”" },
    { "piece,person,trial,value\n1,A,1,2,5\n", "line 2: it has 5 cells" },
    { "piece,person,trial,value\n1,A,1,x\n", "line 2: “x” is not a number" },
    { "piece,person,trial,value\n1,A,1,nan\n", "not a number" },
    { "piece,person,trial,value\n1,A,1,0x10\n", "not a number" },
    { "piece,person,trial,value\n1,,1,2\n", "line 2: the person is empty" },
    { "piece,person,trial,value\n1,A,1,2\n1,A,2,3\n1,A,1,2\n",
      "piece 1, person A, trial 1 stands twice (also in line 2)" },
    { "piece,person,trial,value\n1,A,1,2\n1,A,2,3\n", "too small" },
    { "piece,person,trial,value\n1,A,1,2\n2,A,1,3\n", "too small" },
    { "piece,person,trial,value\n1,A,1,2\n1,A,2,3\n2,A,1,2\n2,A,2,3\n1,B,1,2\n1,B,2,2\n2,B,1,4\n",
      "1 reading is missing, the first at piece 2, person B, trial 2" },
    { "piece,person,trial,value\n1,A,1,\n1,A,2,3\n2,A,1,2\n",
      "2 readings are missing, the first at piece 1, person A, trial 1" },
  };
  g_autofree char *good = write_job ("good.csv", "piece,value\n1,5\n1,6\n2,9\n2,9\n");
  g_auto (Call) absent = { 0 }, band = { 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = write_job ("wrong.csv", cases[i].content);
      g_auto (Call) call = { 0 };

      g_test_message ("%s", cases[i].content);
      run (&call, "study", path, NULL);
      assert_refused (&call, cases[i].wanted);
    }
  run (&absent, "study", "absent.csv", NULL);
  assert_refused (&absent, "absent.csv");
  run (&band, "study", good, "--band", "-1", NULL);
  assert_refused (&band, "width above zero");
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/study/published", test_published);
  g_test_add_func ("/cli/study/forms", test_forms);
  g_test_add_func ("/cli/study/equal", test_equal);
  g_test_add_func ("/cli/study/words", test_words);
  g_test_add_func ("/cli/study/refused", test_refused);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
