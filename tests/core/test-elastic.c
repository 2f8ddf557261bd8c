/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The figures of materials: the tables against their printed sources, the shop's own, and a press fit of a
 * job.
 */

#include <math.h>
#include <string.h>

#include "core-material.h"
#include "core-press.h"
#include "judge-support.h"

/* As printed in Dowling, table 5.2, Philpot, table D.1b, and Callister, tables B.2 and B.6. */
static void
test_figures (void)
{
  static const struct {
    const char *name;
    double modulus, poisson, expansion;
  } cases[] = {
    { "4140", 207, 0.30, 12.3 },
    { "steel", 207, 0.293, 11.5 },
    { "CRS", 207, 0.293, 11.5 },
    { "303 stainless", 193, 0.283, 13.7 },
    { "316L stainless", 193, 0.283, 15.9 },
    { "Aluminum 6061-T6", 69, 0.33, 23.6 },
    { "aluminium", 70.3, 0.345, 23.1 },
    { "cartridge brass", 101, 0.350, 19.9 },
    { "red brass", 115, 0.307, 18.7 },
    { "Manganese bronze C86100", 105, 0.34, 21.6 },
    { "aluminium bronze", 110, 0.316, 16.2 },
    { "copper", 130, 0.343, 17.0 },
    { "gray iron", 84, 0.22, 11.4 },
    { "ductile iron", 168, 0.32, 10.9 },
    { "malleable iron", 179, 0.27, 11.9 },
    { "titanium", 120, 0.361, 8.6 },
    { "Ti-6Al-4V", 114, 0.33, 8.6 },
    { "nylon 66", 2.7, 0.41, 144 },
    { "HDPE", 1.08, 0.42, 152 },
    { "UHMW-PE", 0.69, 0.46, 297 },
    { "PTFE", 0.475, 0.46, 171 },
    { "POM", 2.95, 0.35, 106.5 },
    { "peek", 3.6, 0.38, 78.5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmElastic found;

      if (!tm_elastic_find (NULL, cases[i].name, &found))
        g_error ("%s is not known", cases[i].name);
      g_assert_cmpfloat (found.modulus.value, ==, cases[i].modulus);
      g_assert_cmpfloat (found.poisson.value, ==, cases[i].poisson);
      g_assert_cmpfloat (found.expansion.value, ==, cases[i].expansion);
      g_assert_false (found.shop);
    }
}

/* Where sources differ both stand. */
static void
test_both_stand (void)
{
  TmElastic found;

  g_assert_true (tm_elastic_find (NULL, "steel", &found));
  g_assert_cmpfloat (found.modulus.low, ==, 207);
  g_assert_cmpfloat (found.modulus.high, ==, 212);
  g_assert_nonnull (strstr (found.modulus.source, "Callister"));
  g_assert_nonnull (strstr (found.modulus.other_source, "Dowling"));
  g_assert_true (tm_elastic_find (NULL, "PEEK", &found));
  g_assert_cmpfloat (found.modulus.low, ==, 1.10);
  g_assert_nonnull (strstr (found.modulus.other_source, "doubtful"));
  g_assert_true (tm_elastic_find (NULL, "nylon", &found));
  g_assert_cmpfloat (found.modulus.low, ==, 1.59);
  g_assert_cmpfloat (found.modulus.high, ==, 3.79);
  g_assert_true (found.plastic);
}

/* A condition that is named has its own yield strength; one that is not, the weakest. */
static void
test_condition (void)
{
  TmElastic found;

  g_assert_true (tm_elastic_find (NULL, "6061-T651 plate", &found));
  g_assert_cmpstr (found.name, ==, "aluminium 6061-T6");
  g_assert_cmpfloat (found.yield.value, ==, 276);
  g_assert_true (tm_elastic_find (NULL, "6061", &found));
  g_assert_cmpstr (found.name, ==, "aluminium 6061");
  g_assert_cmpfloat (found.yield.value, ==, 55);
  g_assert_cmpfloat (found.yield.high, ==, 276);
}

static void
check_figure (const TmFigure *figure, gboolean must_be, double least, double most)
{
  if (isnan (figure->value) && !must_be)
    {
      g_assert_true (isnan (figure->low) && isnan (figure->high));
      g_assert_cmpstr (figure->source, ==, "");
      return;
    }
  g_assert_cmpfloat (figure->value, >, least);
  g_assert_cmpfloat (figure->value, <, most);
  g_assert_cmpfloat (figure->low, <=, figure->value);
  g_assert_cmpfloat (figure->high, >=, figure->value);
  g_assert_cmpstr (figure->source, !=, "");
}

/* Every row: whole, ordered, each figure with its source, and found again by its own name. */
static void
test_table (void)
{
  gboolean plastics = FALSE;
  TmElastic row, found;
  guint i = 0;

  for (; tm_elastic_table (i, &row); i++)
    {
      g_assert_true (tm_elastic_find (NULL, row.name, &found));
      g_assert_cmpstr (found.name, ==, row.name);
      check_figure (&row.modulus, TRUE, 0.1, 300);
      check_figure (&row.poisson, TRUE, 0.1, 0.5);
      check_figure (&row.expansion, TRUE, 1, 400);
      check_figure (&row.yield, FALSE, 10, 2000);
      check_figure (&row.cold, FALSE, 5, 30);
      if (!isnan (row.cold.value)) /* colder shrinks less per degree */
        g_assert_cmpfloat (row.cold.value, <, row.expansion.value);
      g_assert_true (row.plastic || !plastics);
      plastics = row.plastic;
    }
  g_assert_cmpuint (i, >=, 45);
  g_assert_true (plastics);
}

static void
test_unknown (void)
{
  static const char *const names[] = { "", "oak", "silicon", "60610" };
  TmElastic found;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_assert_false (tm_elastic_find (NULL, names[i], &found));
      g_assert_true (isnan (found.modulus.value) && isnan (found.expansion.value));
    }
  g_assert_false (tm_elastic_find (NULL, NULL, &found));
}

static TmShopMaterial *
add_material (TmJob *job, const char *name, const char *modulus, const char *poisson, const char *yield)
{
  TmShopMaterial *material = tm_shop_material_new ();

  material->name = tm_job_intern (job, name);
  material->modulus = quantity (modulus, TM_UNIT_HARDNESS);
  material->poisson = quantity (poisson, TM_UNIT_HARDNESS);
  material->yield = quantity (yield, TM_UNIT_HARDNESS);
  material->source = "mill certificate";
  g_assert_cmpint (tm_job_add_material (job, material), ==, TM_ADD_OK);
  return material;
}

/* The shop's figures go first; what it leaves out is the table's, where the name is known there. */
static void
test_shop (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmElastic found;

  add_material (job, "4140", NULL, NULL, "655");
  add_material (job, "bush mix", "1.9", "0.38", NULL);
  g_assert_true (tm_elastic_find (job, "4140", &found));
  g_assert_true (found.shop);
  g_assert_cmpfloat (found.yield.value, ==, 655);
  g_assert_cmpfloat (found.yield.high, ==, 655);
  g_assert_cmpstr (found.yield.source, ==, "mill certificate");
  g_assert_cmpfloat (found.modulus.value, ==, 207);
  g_assert_true (tm_elastic_find (job, "bush mix", &found));
  g_assert_cmpfloat (found.modulus.value, ==, 1.9);
  g_assert_true (isnan (found.yield.value) && isnan (found.expansion.value));
  g_assert_true (tm_elastic_find (job, "AISI 4140", &found));
  g_assert_false (found.shop);
  g_assert_false (tm_elastic_find (job, "bush", &found));
}

static void
set_press (TmFeature *feature)
{
  feature->press.length = quantity ("30", TM_UNIT_MM);
  feature->press.hub_outside = quantity ("50", TM_UNIT_MM);
  feature->press.shaft_inside = quantity ("20", TM_UNIT_MM);
  feature->press.shaft_material = "bearing bronze";
  feature->press.friction_least = quantity ("0.08", TM_UNIT_HARDNESS);
  feature->press.friction_most = quantity ("0.14", TM_UNIT_HARDNESS);
  feature->press.shaft_roughness = quantity ("6.3", TM_UNIT_UM);
}

/* What the feature's facts, the job and the tables say, in millimetres; what nobody says is unknown. */
static void
test_input_of_a_job (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *feature = tm_feature_new ();
  TmPressInput input;

  feature->balloon = "1";
  feature->kind = TM_KIND_BORE;
  feature->unit = TM_UNIT_MM;
  feature->lower = quantity ("25.000", TM_UNIT_MM);
  feature->upper = quantity ("25.020", TM_UNIT_MM);
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  job->material = "steel";
  tm_press_input_of (job, feature, &input);
  g_assert_cmpfloat (input.hub.modulus, ==, 207);
  g_assert_true (isnan (input.shaft.modulus) && isnan (input.hub_outside) && isnan (input.friction_most));
  g_assert_true (isnan (input.interference) && isnan (input.gap));
  g_assert_cmpfloat (input.shaft_inside, ==, 0);
  set_press (feature);
  tm_press_input_of (job, feature, &input);
  assert_near (input.diameter, 25.010, 1e-12);
  g_assert_cmpfloat (input.length, ==, 30);
  g_assert_cmpfloat (input.shaft.modulus, ==, 100);
  g_assert_cmpfloat (input.shaft.cold, ==, 15);
  g_assert_cmpfloat (input.friction_most, ==, 0.14);
  g_assert_cmpfloat (input.shaft_roughness, ==, 0.0063);
  g_assert_cmpfloat (input.hub_roughness, ==, 0);
  g_assert_false (tm_press_has_plastic (job, feature));
  feature->press.shaft_material = "PTFE";
  g_assert_true (tm_press_has_plastic (job, feature));
}

/* A bore 25.000 … 25.010 with a shaft 25.020 … 25.035: 0.010 to 0.035; measured to ±2 µm, 0.008 to 0.037. */
static void
test_fit (void)
{
  TmFitCheck check = { .least = -35e6, .most = -10e6 };
  TmPressInput input;

  tm_press_input_init (&input);
  tm_press_take_fit (&input, &check);
  assert_near (input.interference, 0.0225, 1e-12);
  assert_near (input.interference_least, 0.010, 1e-12);
  assert_near (input.interference_most, 0.035, 1e-12);
  check.expanded = 2e6;
  tm_press_take_fit (&input, &check);
  assert_near (input.interference, 0.0225, 1e-12);
  assert_near (input.interference_least, 0.008, 1e-12);
  assert_near (input.interference_most, 0.037, 1e-12);
  check.expanded = NAN;
  tm_press_take_fit (&input, &check);
  assert_near (input.interference_most, 0.035, 1e-12);
}

/* The job's own part is the shaft, and says its expansion itself. */
static void
test_shaft_of_a_job (void)
{
  g_autoptr (TmJob) job = tm_job_new ();
  TmFeature *feature = tm_feature_new ();
  TmPressInput input;

  feature->balloon = "1";
  feature->kind = TM_KIND_SHAFT;
  feature->unit = TM_UNIT_IN;
  feature->nominal = quantity ("1", TM_UNIT_IN);
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  job->material = "4140";
  job->expansion = quantity ("12.0", TM_UNIT_HARDNESS);
  tm_press_input_of (job, feature, &input);
  g_assert_cmpfloat (input.diameter, ==, 25.4);
  g_assert_true (isnan (input.hub.modulus));
  g_assert_cmpfloat (input.shaft.modulus, ==, 207);
  g_assert_cmpfloat (input.shaft.expansion, ==, 12.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/elastic/figures", test_figures);
  g_test_add_func ("/elastic/both-stand", test_both_stand);
  g_test_add_func ("/elastic/condition", test_condition);
  g_test_add_func ("/elastic/table", test_table);
  g_test_add_func ("/elastic/unknown", test_unknown);
  g_test_add_func ("/elastic/shop", test_shop);
  g_test_add_func ("/elastic/input-of-a-job", test_input_of_a_job);
  g_test_add_func ("/elastic/fit", test_fit);
  g_test_add_func ("/elastic/shaft-of-a-job", test_shaft_of_a_job);
  return g_test_run ();
}
