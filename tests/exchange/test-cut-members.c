/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tools, cuts, materials, mates and press fits in a job file: what is kept of them, and what is refused, in
 * one line each.
 */

#include "support-job-text.h"
#include "wrong-support.h"

#define BORE      "\"balloon\": \"1\", \"kind\": \"bore\", \"lower\": \"25\", \"upper\": \"25.021\""
#define MATE(x)   "{" BORE ", \"mate\": {" x "}}"
#define PRESS(x)  "{" BORE ", \"press\": {" x "}}"
#define STEEL(x)  "{\"name\": \"steel\", " x "}"
#define BAR(x)    "{\"name\": \"bar\", " x "}"
#define SLEEVE(x) "{\"feature\": \"1\", \"serial\": \"B1\", " x "}"
#define CUT(x)    "{\"piece\": \"001\", \"feature\": \"1\", \"dialled\": \"0.1\", " x "}"

static const Wrong tools[] = {
  { "{\"graduation\": \"0.01\"}", MISSING, "tools[0].name", "give it" },
  { BAR ("\"graduation\": \"-0.01\""), BAD, "tools[0].graduation", "above zero" },
  { BAR ("\"graduation\": \"0\""), BAD, "tools[0].graduation", "above zero" },
  { BAR ("\"graduation\": \"fine\""), BAD, "tools[0].graduation", "25.012" },
  { BAR ("\"least_cut\": \"-0.01\""), BAD, "tools[0].least_cut", "without the sign" },
  { BAR ("\"backlash\": \"-1\""), BAD, "tools[0].backlash", "without the sign" },
  { BAR ("\"unit\": \"deg\""), BAD, "tools[0].unit", "mm, in" },
  { BAR ("\"reads\": \"radii\""), BAD, "tools[0].reads", "diameter, radius" },
  { BAR ("\"spring_passes\": 1001"), BAD, "tools[0].spring_passes", "0 to 1000" },
  { BAR ("\"spring_passes\": \"2\""), BAD, "tools[0].spring_passes", "without quotation" },
  { BAR ("\"note\": \"\"") ", " BAR ("\"note\": \"\""), BAD, "tools[1].name", "choose another" },
};

static const Wrong materials[] = {
  { "{\"modulus\": \"210\"}", MISSING, "materials[0].name", "give it" },
  { STEEL ("\"modulus\": \"-210\""), BAD, "materials[0].modulus", "like 210" },
  { STEEL ("\"modulus\": \"0\""), BAD, "materials[0].modulus", "like 210" },
  { STEEL ("\"modulus\": \"nan\""), BAD, "materials[0].modulus", "25.012" },
  { STEEL ("\"poisson\": \"0.51\""), BAD, "materials[0].poisson", "like 0.3" },
  { STEEL ("\"poisson\": \"-1\""), BAD, "materials[0].poisson", "like 0.3" },
  { STEEL ("\"yield\": \"-1\""), BAD, "materials[0].yield", "like 250" },
  { STEEL ("\"expansion\": \"much\""), BAD, "materials[0].expansion", "25.012" },
  { STEEL ("\"plastic\": \"yes\""), BAD, "materials[0].plastic", "true or false" },
  { STEEL ("\"yield\": \"1\"") ", " STEEL ("\"yield\": \"2\""), BAD, "materials[1].name", "choose another" },
};

static const Wrong features[] = {
  { MATE ("\"wanted_least\": \"0.02\", \"wanted_most\": \"0.01\""), BAD, "features[0].mate.wanted_least",
    "swap them" },
  { MATE ("\"wanted_most\": \"loose\""), BAD, "features[0].mate.wanted_most", "25.012" },
  { PRESS ("\"length\": \"0\""), BAD, "features[0].press.length", "above zero" },
  { PRESS ("\"hub_outside\": \"-50\""), BAD, "features[0].press.hub_outside", "above zero" },
  { PRESS ("\"shaft_inside\": \"-1\""), BAD, "features[0].press.shaft_inside", "without the sign" },
  { PRESS ("\"hub_outside\": \"40\", \"shaft_inside\": \"40\""), BAD, "features[0].press.shaft_inside",
    "correct one" },
  { PRESS ("\"friction_least\": \"-0.1\""), BAD, "features[0].press.friction_least", "without the sign" },
  { PRESS ("\"friction_least\": \"0.2\", \"friction_most\": \"0.1\""), BAD,
    "features[0].press.friction_least", "swap them" },
  { PRESS ("\"hub_roughness\": \"-3.2\""), BAD, "features[0].press.hub_roughness", "without the sign" },
  { PRESS ("\"gap\": \"-0.01\""), BAD, "features[0].press.gap", "without the sign" },
  { PRESS ("\"gap\": 1"), BAD, "features[0].press.gap", "quotation marks" },
  { PRESS ("\"gap\": \"1\", \"gap\": \"1\""), BAD, "features[0].press.gap", "keep one" },
  { "{\"balloon\": \"1\", \"requirement\": \"90° ±1°\", \"press\": {\"gap\": \"1\"}}", BAD,
    "features[0].press", "take it out" },
};

static const Wrong mates[] = {
  { "{\"serial\": \"B1\", \"smallest\": \"25\"}", MISSING, "mates[0].feature", "give it" },
  { "{\"feature\": \"1\", \"smallest\": \"25\"}", MISSING, "mates[0].serial", "give it" },
  { "{\"feature\": \"99\", \"serial\": \"B1\", \"smallest\": \"25\"}", BAD, "mates[0].feature",
    "add the feature" },
  { "{\"feature\": \"3\", \"serial\": \"B1\", \"smallest\": \"25\"}", BAD, "mates[0].feature",
    "with a size" },
  { SLEEVE ("\"largest\": \"25\""), MISSING, "mates[0].smallest", "measured" },
  { SLEEVE ("\"smallest\": \"0\""), BAD, "mates[0].smallest", "above zero" },
  { SLEEVE ("\"smallest\": \"25.01\", \"largest\": \"25\""), BAD, "mates[0].smallest", "swap them" },
  { SLEEVE ("\"smallest\": \"25\", \"uncertainty\": \"-0.002\""), BAD, "mates[0].uncertainty",
    "without the sign" },
  { SLEEVE ("\"smallest\": \"25\", \"place\": 0"), BAD, "mates[0].place", "from 1" },
  { SLEEVE ("\"smallest\": \"25\", \"at\": \"noon\""), BAD, "mates[0].at", "UTC" },
  { SLEEVE ("\"smallest\": \"25\"") ", " SLEEVE ("\"smallest\": \"25\""), BAD, "mates[1].serial",
    "choose another" },
};

static const Wrong cuts[] = {
  { CUT ("\"place\": 2"), BAD, "cuts[0].place", "1 place" },
  { CUT ("\"reads\": \"both\""), BAD, "cuts[0].reads", "diameter, radius" },
  { CUT ("\"after\": \"7\""), BAD, "cuts[0].after", "none" },
  { CUT ("\"after\": \"r2\""), BAD, "cuts[0].after", "another place" },
};

static const Wrong gauges[] = {
  { "{\"tag\": \"B\", \"blocks\": \"1.001-1.009\"}", BAD, "gauges[0].blocks", "" },
  { "{\"tag\": \"B\", \"blocks\": \"some\"}", BAD, "gauges[0].blocks", "" },
  { "{\"tag\": \"B\", \"blocks\": \"1-2 by 0.3\"}", BAD, "gauges[0].blocks", "" },
};

static const Wrong rules[] = {
  { "\"cut_risk\": \"0\"", BAD, "job.cut_risk", "like 0.01" },
  { "\"cut_risk\": \"-0.01\"", BAD, "job.cut_risk", "like 0.01" },
  { "\"cut_risk\": \"1\"", BAD, "job.cut_risk", "below 1" },
  { "\"cut_aim\": \"middle\"", BAD, "job.cut_aim", "in, proven" },
};

static void
test_wrong (void)
{
  check_all (TM_TEST_JOB_MM ", \"tools\": [", tools, G_N_ELEMENTS (tools), "]}");
  check_all (TM_TEST_JOB_MM ", \"materials\": [", materials, G_N_ELEMENTS (materials), "]}");
  check_all (TM_TEST_JOB_MM ", \"features\": [", features, G_N_ELEMENTS (features), "]}");
  check_all (TM_TEST_JOB_MM TM_TEST_FEATURES ", \"mates\": [", mates, G_N_ELEMENTS (mates), "]}");
  check_all (
      TM_TEST_JOB_MM TM_TEST_FEATURES TM_TEST_PIECES
      ", \"readings\": [{\"id\": \"r1\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"24.9\"}, "
      "{\"id\": \"r2\", \"piece\": \"001\", \"feature\": \"2\", \"place\": 2, \"value\": \"6.5\"}], "
      "\"cuts\": [",
      cuts, G_N_ELEMENTS (cuts), "]}");
  check_all (TM_TEST_JOB_MM ", \"gauges\": [", gauges, G_N_ELEMENTS (gauges), "]}");
  check_all ("{\"format\": \"tenthmark-job\", \"version\": 1, \"job\": {\"part_number\": \"P\", \"unit\": "
             "\"mm\", ",
             rules, G_N_ELEMENTS (rules), "}}");
}

/* A file of this program's hand with all that there is, and with members of a later version in both objects
 * of a feature. */
static const char whole[]
    = "{\n \"format\": \"tenthmark-job\",\n \"version\": 1,\n \"job\": {\n  \"id\": \"x\",\n  "
      "\"part_number\": \"P\",\n  \"unit\": \"mm\",\n  \"standard\": \"ISO\",\n  \"decision\": "
      "\"guarded\",\n  \"cut_risk\": \"0.001\",\n  \"cut_aim\": \"proven\"\n },\n"
      " \"gauges\": [\n  {\"tag\": \"B\", \"kind\": \"block set\", \"unit\": \"mm\", \"blocks\": \"1.0005; "
      "1.001-"
      "1.009 by 0.001\", \"source\": \"assumed\"}\n ],\n"
      " \"tools\": [\n  {\"name\": \"bar\", \"unit\": \"in\", \"reads\": \"radius\", \"graduation\": "
      "\"0.001\", "
      "\"least_cut\": \"0.0005\", \"backlash\": \"0.005\", \"spring_passes\": 2, \"note\": \"n\", \"x\": "
      "1}\n "
      "],\n"
      " \"materials\": [\n  {\"name\": \"bronze\", \"modulus\": \"105\", \"poisson\": \"0.34\", \"yield\": "
      "\"150\", \"expansion\": \"18\", \"cold\": \"16.5\", \"plastic\": true, \"source\": \"s\", \"y\": "
      "[]}\n "
      "],\n"
      " \"features\": [\n  {\"balloon\": \"1\", \"kind\": \"bore\", \"unit\": \"mm\", \"lower\": \"25.000\", "
      "\"upper\": \"25.021\", \"tool\": \"bar\", \"mate\": {\"kind\": \"shaft\", \"lower\": \"25.022\", "
      "\"upper\": \"25.035\", \"wanted_least\": \"-0.035\", \"wanted_most\": \"-0.010\", \"x\": 1}, "
      "\"press\": "
      "{\"length\": \"20\", \"hub_outside\": \"50\", \"shaft_inside\": \"10\", \"hub_material\": \"steel\", "
      "\"shaft_material\": \"bronze\", \"friction_least\": \"0.08\", \"friction_most\": \"0.15\", "
      "\"hub_roughness\": \"3.2\", \"shaft_roughness\": \"1.6\", \"gap\": \"0.02\", \"x\": 2}, \"x\": 3}\n "
      "],\n"
      " \"pieces\": [\n  {\"serial\": \"001\"}\n ],\n"
      " \"mates\": [\n  {\"feature\": \"1\", \"serial\": \"B1\", \"smallest\": \"25.024\", \"largest\": "
      "\"25.026\", \"uncertainty\": \"0.002\", \"piece\": \"001\", \"place\": 1, \"by\": \"AB\", \"at\": "
      "\"2026-05-04T09:12:33Z\", \"note\": \"n\", \"x\": 1}\n ],\n"
      " \"readings\": [\n  {\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"24.900\"},\n "
      " "
      "{\"id\": \"2\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"24.980\"}\n ],\n"
      " \"cuts\": [\n  {\"id\": \"1\", \"piece\": \"001\", \"feature\": \"1\", \"dialled\": \"0.002 in\", "
      "\"reads\": \"radius\", \"passes\": 2, \"tool\": \"bar\", \"after\": \"1\", \"note\": \"n\", \"x\": "
      "1}\n "
      "]\n}\n";

static void
test_kept (void)
{
  g_autoptr (GError) error = NULL;
  g_auto (TmJobNotes) notes = { 0 };
  g_autoptr (TmJob) job = tm_job_from_bytes (whole, strlen (whole), "part.tmjob", &notes, NULL, NULL, &error);
  g_autoptr (GString) again = NULL;
  const TmFeature *feature;

  g_assert_no_error (error);
  again = tm_job_to_string (job);
  g_assert_cmpstr (again->str, ==, whole);
  g_assert_cmpuint (notes.n_unknown, ==, 7);
  g_assert_true (g_ptr_array_find_with_equal_func (notes.unknown, "features[0].press.x", g_str_equal, NULL));
  g_assert_true (g_ptr_array_find_with_equal_func (notes.unknown, "features[0].mate.x", g_str_equal, NULL));
  feature = g_ptr_array_index (job->features, 0);
  g_assert_cmpstr (feature->mate.extra, ==, "\"x\": 1");
  g_assert_cmpstr (feature->press.extra, ==, "\"x\": 2");
  g_assert_cmpint (feature->press.hub_roughness.unit, ==, TM_UNIT_UM);
  g_assert_cmpint (feature->press.hub_roughness.count, ==, 3200000); /* pm */
  g_assert_cmpint (job->cut_risk.count, ==, 1000);                   /* millionths */
  g_assert_true (((TmReading *)g_ptr_array_index (job->readings, 0))->row.before_cut);
  g_assert_false (((TmReading *)g_ptr_array_index (job->readings, 1))->row.before_cut);
}

/* What stands at its default is left out: an older file keeps its bytes, and a tool its one line. */
static void
test_defaults (void)
{
  static const char said[] = TM_TEST_JOB_MM
      ", \"tools\": [{\"name\": \"bar\", \"reads\": \"diameter\", \"note\": \"\"}], \"features\": "
      "[{\"balloon\": \"1\", \"kind\": \"bore\", \"lower\": \"25\", \"tool\": \"\", \"press\": {}}], "
      "\"pieces\": [{\"serial\": \"1\"}], \"cuts\": [{\"piece\": \"1\", \"feature\": \"1\", \"dialled\": "
      "\"0.1\", \"reads\": \"diameter\", \"place\": 1, \"passes\": 0, \"after\": \"\"}]}";
  static const char *const kept[]
      = { "{\"name\": \"bar\", \"unit\": \"mm\"}\n",
          "{\"id\": \"1\", \"piece\": \"1\", \"feature\": \"1\", \"dialled\": \"0.1\"}\n",
          "\"lower\": \"25\"}\n" };
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = tm_job_from_bytes (said, strlen (said), "part.tmjob", NULL, NULL, NULL, &error);
  g_autoptr (GString) written = NULL;

  g_assert_no_error (error);
  written = tm_job_to_string (job);
  for (gsize i = 0; i < G_N_ELEMENTS (kept); i++)
    g_assert_nonnull (strstr (written->str, kept[i]));
}

/* Thousands of cuts at one place are read at once: what each makes old is found in one pass. */
static void
test_many (void)
{
  const guint n = 5000;
  g_autoptr (GString) text
      = g_string_new (TM_TEST_JOB_MM TM_TEST_FEATURES TM_TEST_PIECES ", \"readings\": [");
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = NULL;
  guint old = 0;

  for (guint i = 1; i <= n; i++)
    g_string_append_printf (text,
                            "%s{\"id\": \"%u\", \"piece\": \"001\", \"feature\": \"1\", \"value\": \"24.9\"}",
                            i > 1 ? ", " : "", i);
  g_string_append (text, "], \"cuts\": [");
  for (guint i = 1; i < n; i++)
    g_string_append_printf (
        text, "%s{\"piece\": \"001\", \"feature\": \"1\", \"dialled\": \"0.01\", \"after\": \"%u\"}",
        i > 1 ? ", " : "", i);
  g_string_append (text, "]}");
  job = tm_job_from_bytes (text->str, text->len, "part.tmjob", NULL, NULL, NULL, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < job->readings->len; i++)
    old += !tm_row_counts (&((TmReading *)g_ptr_array_index (job->readings, i))->row);
  g_assert_cmpuint (old, ==, n - 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exchange/cut-members/wrong", test_wrong);
  g_test_add_func ("/exchange/cut-members/kept", test_kept);
  g_test_add_func ("/exchange/cut-members/defaults", test_defaults);
  g_test_add_func ("/exchange/cut-members/many", test_many);
  return g_test_run ();
}
