/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * tenthmark-cli press.
 */

#include "cli-support.h"

/* A number, or a length as text. */
static double
get_value (yajl_val tree, const char *key)
{
  yajl_val value = member (tree, key);

  return YAJL_IS_STRING (value) ? g_ascii_strtod (YAJL_GET_STRING (value), NULL) : YAJL_GET_DOUBLE (value);
}

static void
assert_value (yajl_val tree, const char *key, double expected, double tolerance)
{
  g_assert_cmpfloat_with_epsilon (get_value (tree, key), expected, tolerance);
}

/* A tube 20/40 in a jacket 40/60: jacket bore 39.968289 gives a hoop stress of 100 MPa (a textbook of machine
 * elements, example 22.6: published); the rest recomputed, F = μ p π d L and T = F d/2 by hand. */
static void
test_tube_and_jacket (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "press", "--interference", "0.031711", "--diameter", "40", "--length", "30", "--hub-od", "60",
       "--shaft-id", "20", "--hub-e", "207", "--hub-nu", "0.3", "--shaft-e", "207", "--shaft-nu", "0.3",
       "--friction", "0.12", "--unit", "mm", "--json", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "unit", "mm");
  assert_value (tree, "pressure", 38.4615, 1e-3);
  assert_value (tree, "hub_hoop", 100.0, 2e-3);
  assert_value (tree, "hub_radial", -38.4615, 1e-3);
  assert_value (tree, "shaft_hoop_outer", -64.10, 5e-3);
  assert_value (tree, "shaft_hoop_inner", -102.56, 7e-3);
  assert_value (tree, "press_force", 0.12 * 38.4615 * G_PI * 40 * 30, 1);
  assert_value (tree, "torque", 0.12 * 38.4615 * G_PI * 40 * 30 * 0.020, 0.02);
  g_assert_true (YAJL_IS_STRING (member (tree, "bore_closure"))); /* a length */
  g_assert_true (YAJL_IS_NULL (member (tree, "heat_hub_to")));
  yajl_tree_free (tree);
}

/* A bush 2.000/2.500 in a sleeve of 3.500 in with 0.0032 in: 3518 psi and 10 846 psi in the sleeve (Mott,
 * Machine Elements in Mechanical Design: from memory). 17e6 and 30e6 psi are 117.211 and 206.843 GPa. */
static void
test_inches (void)
{
  g_auto (Call) call = { 0 };

  run (&call, "press", "--interference", "0.0032", "--diameter", "2.5", "--length", "2", "--hub-od", "3.5",
       "--shaft-id", "2", "--hub-e", "206.843", "--hub-nu", "0.27", "--shaft-e", "117.211", "--shaft-nu",
       "0.27", "--friction", "0.12", "--unit", "in", NULL);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_nonnull (strstr (call.out, "(3518 psi)"));
  g_assert_nonnull (strstr (call.out, "(10846 psi) at the contact"));
  g_assert_nonnull (strstr (call.out, "0.003200 in"));
  g_assert_null (strstr (call.out, "nan"));
}

/* A solid shaft has no bore: null, and 0 closure.  Friction as a range: the press needs the most, the fit
 * holds the least. */
static void
test_solid_and_range (void)
{
  g_auto (Call) call = { 0 };
  yajl_val tree;

  run (&call, "press", "--least", "0.007", "--most", "0.035", "--diameter", "25", "--length", "30",
       "--hub-od", "50", "--hub-material", "6061-T6", "--shaft-material", "steel", "--friction", "0.08-0.14",
       "--gap", "0.025", "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  assert_text (tree, "interference", "0.021");
  assert_text (tree, "shaft_hoop_inner", NULL);
  assert_text (tree, "bore_closure", "0");
  assert_value (tree, "press_force_least", get_value (tree, "press_force") * 0.08 / 0.14, 1e-6);
  assert_value (tree, "torque_most", get_value (tree, "torque") * 0.14 / 0.08, 1e-6);
  assert_value (member (tree, "most"), "pressure", get_value (tree, "pressure") * 35 / 21, 1e-9);
  assert_value (member (tree, "least"), "pressure", get_value (tree, "pressure") * 7 / 21, 1e-9);
  /* (35 + 25) µm on 25 mm are 2400 ppm: by 23.6 of the hub, by 8.5 of cold steel. */
  assert_value (tree, "heat_hub_to", 20 + 2400 / 23.6, 1e-9);
  assert_value (tree, "cool_shaft_to", 20 - 2400 / 8.5, 1e-9);
  yajl_tree_free (tree);
}

/* 0.8 (6.3 + 1.6) µm of roughness is 0.00632 mm (DIN 7190), and the inch shop's 100 µin of Rz 80 µin. */
static void
test_roughness (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) inches = { 0 };
  yajl_val tree;

  run (&call, "press", "--interference", "0.020", "--diameter", "25", "--hub-od", "50", "--hub-material",
       "steel", "--shaft-material", "steel", "--hub-rz", "6.3", "--shaft-rz", "1.6", "--json", NULL);
  tree = parse (&call);
  assert_text (tree, "roughness_loss", "0.00632");
  assert_text (tree, "effective_interference", "0.01368");
  g_assert_true (YAJL_IS_NULL (member (tree, "press_force")));
  yajl_tree_free (tree);
  run (&inches, "press", "--interference", "0.001", "--diameter", "1", "--hub-od", "2", "--hub-material",
       "steel", "--shaft-material", "steel", "--hub-rz", "100", "--unit", "in", "--json", NULL);
  tree = parse (&inches);
  assert_text (tree, "roughness_loss", "0.00008");
  yajl_tree_free (tree);
}

/* What elastic figures leave out of a plastic, and the cautions, are said in words. */
static void
test_plastic_words (void)
{
  g_auto (Call) call = { 0 };

  run (&call, "press", "--interference", "0.1", "--diameter", "25", "--hub-od", "28", "--shaft-id", "22",
       "--hub-material", "steel", "--shaft-material", "nylon 66", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_nonnull (strstr (call.out, "Plastic relaxes"));
  g_assert_nonnull (strstr (call.out, "moisture"));
  g_assert_nonnull (strstr (call.out, "thin sections can burst"));
  g_assert_nonnull (strstr (call.out, "eyes protected"));
  g_assert_nonnull (strstr (call.out, "qualified engineer decide"));
  g_assert_nonnull (strstr (call.out, "state --length and --friction"));
  g_assert_nonnull (strstr (call.out, "sources have 1.59 to 3.79"));
}

/* A clearance is an answer, and not a good one: nothing holds. */
static void
test_clearance (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) json = { 0 };
  yajl_val tree;

  run (&call, "press", "--interference", "-0.010", "--diameter", "25", "--hub-od", "50", "--hub-material",
       "steel", "--shaft-material", "steel", NULL);
  g_assert_cmpint (call.status, ==, 1);
  g_assert_cmpstr (call.err, ==, "");
  g_assert_nonnull (strstr (call.out, "it holds nothing"));
  run (&json, "press", "--interference", "0", "--diameter", "25", "--hub-od", "50", "--hub-material", "steel",
       "--shaft-material", "steel", "--json", NULL);
  g_assert_cmpint (json.status, ==, 1);
  tree = parse (&json);
  assert_value (tree, "pressure", 0, 1e-12);
  yajl_tree_free (tree);
}

/* Every nonsense: one line, status 2, nothing printed. */
static void
test_refusals (void)
{
  static const struct {
    const char *option, *value, *wanted;
  } cases[] = {
    { "--hub-od", "24", "hub outside: must be larger" },
    { "--hub-od", "-50", "hub outside" },
    { "--shaft-id", "26", "shaft bore: must be smaller" },
    { "--shaft-id", "-1", "shaft bore" },
    { "--hub-e", "-207", "hub: its modulus must be above zero" },
    { "--hub-e", "0", "hub: its modulus" },
    { "--shaft-nu", "0.6", "shaft: its Poisson's ratio" },
    { "--hub-yield", "-1", "yield strength" },
    { "--hub-expansion", "0", "expansion: must be above zero" },
    { "--friction", "0.2-0.1", "friction" },
    { "--friction", "-0.1", "friction" },
    { "--friction", "abc", "--friction" },
    { "--friction", "", "--friction" },
    { "--length", "0", "length of contact" },
    { "--gap", "-0.1", "gap" },
    { "--gap", "10", "nor above a tenth" },
    { "--ambient", "-300", "absolute zero" },
    { "--ambient", "99999999", "1000 °C" },
    { "--interference", "3", "a tenth of the diameter" },
    { "--interference", "nan", "--interference" },
    { "--interference", "inf", "--interference" },
    { "--interference", "1e9", "--interference" },
    { "--least", "0.03", "interference" },
    { "--diameter", "0", "common diameter" },
    { "--hub-rz", "-1", "roughness" },
    { "--hub-material", "oak", "not in the tables" },
    { "--unit", "furlong", "use mm or in" },
    { "--diameter", "999999999999999999999", "--diameter" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "press", "--interference", "0.020", "--diameter", "25", "--length", "30", "--hub-od", "50",
           "--hub-material", "steel", "--shaft-material", "steel", "--friction", "0.1", "--gap", "0.02",
           cases[i].option, cases[i].value, "--json", NULL);
      assert_refused (&call, cases[i].wanted);
    }
}

static void
test_missing (void)
{
  g_auto (Call) nothing = { 0 };
  g_auto (Call) half = { 0 };
  g_auto (Call) materials = { 0 };

  run (&nothing, "press", NULL);
  assert_refused (&nothing, "interference is missing");
  run (&half, "press", "--least", "0.01", NULL);
  assert_refused (&half, "go together");
  run (&materials, "press", "--interference", "0.02", "--diameter", "25", "--hub-od", "50", NULL);
  assert_refused (&materials, "hub: its modulus");
}

/* Every figure of the tables has its source. */
static void
test_materials (void)
{
  g_auto (Call) call = { 0 };
  g_auto (Call) words = { 0 };
  yajl_val tree, first;

  run (&call, "press", "--materials", "--json", NULL);
  g_assert_cmpint (call.status, ==, 0);
  tree = parse (&call);
  g_assert_true (YAJL_IS_ARRAY (tree));
  g_assert_cmpuint (tree->u.array.len, >=, 45);
  first = tree->u.array.values[0];
  assert_text (first, "material", "steel");
  assert_value (member (first, "modulus"), "value", 207, 1e-12);
  assert_value (member (first, "modulus"), "high", 212, 1e-12);
  for (gsize i = 0; i < tree->u.array.len; i++)
    g_assert_true (YAJL_IS_STRING (member (member (tree->u.array.values[i], "modulus"), "source")));
  yajl_tree_free (tree);
  run (&words, "press", "--materials", NULL);
  g_assert_nonnull (strstr (words.out, "nylon 6,6, a plastic\n"));
  g_assert_nonnull (strstr (words.out, "from memory"));
}

/* An invented job: a bronze bush in an aluminium arm that the shop has its own figures for. */
static const char press_job[]
    = "{\"format\": \"tenthmark-job\", \"version\": 1,"
      " \"job\": {\"part_number\": \"P-1\", \"unit\": \"mm\", \"material\": \"arm stock\"},"
      " \"features\": [{\"balloon\": \"1\", \"requirement\": \"Ø25 H7\","
      "   \"mate\": {\"kind\": \"shaft\", \"lower\": \"25.030\", \"upper\": \"25.043\"},"
      "   \"press\": {\"length\": \"30\", \"hub_outside\": \"50\", \"shaft_inside\": \"20\","
      "    \"shaft_material\": \"bearing bronze\", \"friction_least\": \"0.08\", \"friction_most\": "
      "\"0.14\"}},"
      "  {\"balloon\": \"2\", \"requirement\": \"Ø30 H7\"}],"
      " \"pieces\": [{\"serial\": \"001\"}],"
      " \"readings\": [{\"piece\": \"001\", \"feature\": \"1\", \"value\": \"25.010\"}],"
      " \"materials\": [{\"name\": \"arm stock\", \"modulus\": \"70.5\", \"poisson\": \"0.33\", \"yield\": "
      "\"240\", \"source\": \"mill certificate\"}],"
      " \"mates\": [{\"feature\": \"1\", \"serial\": \"B-7\", \"smallest\": \"25.040\", \"largest\": "
      "\"25.041\", \"piece\": \"001\"}]}";

/* By limits 25.030 … 25.043 in 25.000 … 25.021: 0.009 to 0.043; measured 25.010 and 25.040 … 25.041: 0.030 to
 * 0.031 (by hand). */
static void
test_job (void)
{
  g_autofree char *path = write_job ("press.tmjob", press_job);
  g_auto (Call) limits = { 0 };
  g_auto (Call) measured = { 0 };
  yajl_val tree;

  run (&limits, "press", path, "--feature", "1", "--json", NULL);
  g_assert_cmpstr (limits.err, ==, "");
  g_assert_cmpint (limits.status, ==, 0);
  tree = parse (&limits);
  assert_text (tree, "piece", NULL);
  assert_text (tree, "interference", "0.026");
  assert_text (member (tree, "least"), "effective_interference", "0.009");
  assert_text (member (tree, "most"), "effective_interference", "0.043");
  assert_text (member (tree, "hub"), "material", "arm stock");
  assert_value (member (tree, "hub"), "modulus", 70.5, 1e-12);
  assert_value (member (tree, "shaft"), "modulus", 100, 1e-12);
  assert_value (tree, "diameter", 25, 1e-12);
  yajl_tree_free (tree);
  run (&measured, "press", path, "--feature", "1", "--piece", "001", "--friction", "0.1", "--json", NULL);
  g_assert_cmpstr (measured.err, ==, "");
  tree = parse (&measured);
  assert_text (tree, "piece", "001");
  assert_text (tree, "mate", "B-7");
  assert_text (tree, "interference", "0.0305");
  assert_value (tree, "press_force_least", get_value (tree, "press_force"), 1e-9);
  yajl_tree_free (tree);
}

static void
test_job_refusals (void)
{
  static const struct {
    const char *option, *value, *wanted;
  } cases[] = {
    { "--feature", "9", "no feature “9”" },    { "--feature", "2", "has no mate" },
    { "--piece", "009", "no piece “009”" },    { "--mate", "B-9", "no measured mate “B-9”" },
    { "--place", "2", "feature 1 has 1" },     { "--place", "x", "--place" },
    { "--hub-od", "20", "hub outside: must" }, { "--least", "0.01", "go together" },
  };
  g_autofree char *path = write_job ("press.tmjob", press_job);
  g_auto (Call) no_job = { 0 };
  g_auto (Call) two = { 0 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (Call) call = { 0 };

      run (&call, "press", path, "--feature", "1", cases[i].option, cases[i].value, NULL);
      assert_refused (&call, cases[i].wanted);
    }
  run (&no_job, "press", "--feature", "1", NULL);
  assert_refused (&no_job, "name its file");
  run (&two, "press", path, path, NULL);
  assert_refused (&two, "one JOB at most");
}

/* The shop's own entries stand before the tables. */
static void
test_job_materials (void)
{
  g_autofree char *path = write_job ("press.tmjob", press_job);
  g_auto (Call) call = { 0 };

  run (&call, "press", path, "--materials", NULL);
  g_assert_cmpint (call.status, ==, 0);
  g_assert_true (
      g_str_has_prefix (call.out, "arm stock, the shop's own\n  modulus 70.5 GPa: mill certificate\n"));
}

static void
add_tests (void)
{
  g_test_add_func ("/cli/press/tube-and-jacket", test_tube_and_jacket);
  g_test_add_func ("/cli/press/inches", test_inches);
  g_test_add_func ("/cli/press/solid-and-range", test_solid_and_range);
  g_test_add_func ("/cli/press/roughness", test_roughness);
  g_test_add_func ("/cli/press/plastic-words", test_plastic_words);
  g_test_add_func ("/cli/press/clearance", test_clearance);
  g_test_add_func ("/cli/press/refusals", test_refusals);
  g_test_add_func ("/cli/press/missing", test_missing);
  g_test_add_func ("/cli/press/materials", test_materials);
  g_test_add_func ("/cli/press/job", test_job);
  g_test_add_func ("/cli/press/job-refusals", test_job_refusals);
  g_test_add_func ("/cli/press/job-materials", test_job_materials);
}

int
main (int argc, char *argv[])
{
  return run_cli_tests (argc, argv, add_tests);
}
