/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-suitability.h"

#include <math.h>

#include "method-support.h"

static TmGauge *
add_kind (TmJob *job, const char *tag, const char *kind, const char *error_limit)
{
  TmGauge *gauge = add_gauge (job, tag, NULL, error_limit);

  gauge->kind = kind;
  return gauge;
}

static const TmSuitability *
find (const GArray *all, const char *name)
{
  for (guint i = 0; i < all->len; i++)
    if (g_str_equal (g_array_index (all, TmSuitability, i).name, name))
      return &g_array_index (all, TmSuitability, i);
  return NULL;
}

/* u = a/√3; the guard is 1.65 u where the band is wide (ISO 14253-1:2017), and the share 2 g / T. A band
 * under 3.92 u cannot be settled (metrology: verdict). */
static void
test_words (void)
{
  static const struct {
    const char *tag, *error_limit; /* mm, on a band of 0.021 */
    TmSettles settles;
    double share;
  } cases[] = {
    { "fine", "0.001732051", TM_SETTLES, 2 * 1.65 / 21 },
    { "middling", "0.005196152", TM_SETTLES_MOSTLY, 2 * 4.95 / 21 },
    { "poor", "0.008660254", TM_SETTLES_SELDOM, 0.80 },
    { "hopeless", "0.017320508", TM_SETTLES_CANNOT, 1.571 },
  };
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  g_autoptr (GArray) all = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    add_gauge (job, cases[i].tag, NULL, cases[i].error_limit);
  all = tm_suitability (job, bore, "2026-05-01");
  g_assert_cmpuint (all->len, ==, G_N_ELEMENTS (cases));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const TmSuitability *one = &g_array_index (all, TmSuitability, i);

      g_assert_cmpstr (one->name, ==, cases[i].tag);
      g_assert_true (one->known && one->fits && one->reaches && !one->assumed);
      g_assert_cmpint (one->outlook.settles, ==, cases[i].settles);
      assert_near (one->share, cases[i].share, 0.02);
      g_assert_cmpint (one->due, ==, TM_DUE_UNKNOWN);
    }
}

/* Under N:1 there are no guards: U = 1.96 u is held against the band, and each reading is settled or none. */
static void
test_simple (void)
{
  static const struct {
    const char *error_limit;
    TmSettles settles;
    double share;
  } cases[] = {
    { "0.001732051", TM_SETTLES, 2 * 1.96 / 21 },
    { "0.002424871", TM_SETTLES_CANNOT, 2 * 1.96 * 1.4 / 21 },
  };
  g_autoptr (TmJob) job = make_job (TM_DECISION_SIMPLE);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");

  add_gauge (job, "G0", NULL, cases[0].error_limit);
  add_gauge (job, "G1", NULL, cases[1].error_limit);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmSuitability one;

      g_assert_true (tm_suitability_of (job, bore, i == 0 ? "G0" : "G1", "", &one));
      g_assert_cmpint (one.outlook.settles, ==, cases[i].settles);
      g_assert_cmpint (one.outlook.guard, ==, 0);
      assert_near (one.share, cases[i].share, 0.001);
    }
}

/* Inside gauges for bores and outside ones for shafts; a transfer by the gauge that touches. Those that do
 * not fit or reach stand last, pins and blocks not at all. */
static void
test_fits (void)
{
  static const struct {
    TmKind kind;
    const char *fit, *misfit;
  } cases[] = {
    { TM_KIND_BORE, "bore-mic", "mic" },   { TM_KIND_BORE, "transfer", "mic" },
    { TM_KIND_SHAFT, "mic", "bore-mic" },  { TM_KIND_SHAFT, "mic", "transfer" },
    { TM_KIND_DEPTH, "depth-mic", "mic" }, { TM_KIND_DEPTH, "caliper", "bore-mic" },
    { TM_KIND_LENGTH, "mic", "ra" },       { TM_KIND_DIAMETER, "mic", "depth-mic" },
    { TM_KIND_ROUGHNESS, "ra", "mic" },    { TM_KIND_FORM, "cmm", "mic" },
  };
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);

  add_kind (job, "mic", "outside micrometer", "0.001");
  add_kind (job, "bore-mic", "three-point bore micrometer", "0.003");
  add_kind (job, "depth-mic", "depth micrometer", "0.004");
  add_kind (job, "caliper", "caliper", "0.020");
  add_kind (job, "cmm", "CMM", "0.002");
  add_kind (job, "ra", "roughness tester", "0.0001");
  add_kind (job, "pins", "pin set", "0.001");
  add_kind (job, "blocks", "gauge blocks", "0.0001");
  add_kind (job, "odd", "home-made thing", "0.001");
  add_kind (job, "tele", "telescoping gauge", NULL);
  add_kind (job, "reader", "micrometer", "0.004");
  add_method (job, "transfer", "tele,reader", NULL, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *balloon = g_strdup_printf ("%u", i);
      TmFeature *feature = add_feature (job, balloon, cases[i].kind, "25.000", "25.021", "");
      g_autoptr (GArray) all = tm_suitability (job, feature, "");
      gboolean was_misfit = FALSE;

      g_test_message ("%s", tm_kind_word (cases[i].kind));
      g_assert_true (find (all, cases[i].fit)->fits);
      g_assert_false (find (all, cases[i].misfit)->fits);
      g_assert_true (find (all, "odd")->fits);
      g_assert_null (find (all, "pins"));
      g_assert_null (find (all, "blocks"));
      g_assert_null (find (all, "tele"));
      g_assert_null (find (all, "reader"));
      for (guint k = 0; k < all->len; k++)
        {
          g_assert_false (was_misfit && g_array_index (all, TmSuitability, k).fits);
          was_misfit = was_misfit || !g_array_index (all, TmSuitability, k).fits;
        }
    }
}

static void
test_reach_and_due (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  TmGauge *small = add_gauge (job, "small", NULL, "0.001"), *large = add_gauge (job, "large", NULL, "0.003");
  g_autoptr (GArray) all = NULL;

  small->range_to = quantity ("25", TM_UNIT_MM);
  large->range_from = quantity ("25", TM_UNIT_MM);
  large->due = "2026-04-30";
  add_gauge (job, "bare", NULL, NULL);
  all = tm_suitability (job, bore, "2026-05-01");
  g_assert_cmpstr (g_array_index (all, TmSuitability, 0).name, ==, "large");
  g_assert_cmpint (g_array_index (all, TmSuitability, 0).due, ==, TM_DUE_OVERDUE);
  g_assert_false (find (all, "small")->reaches);
  g_assert_false (find (all, "bare")->known);
  g_assert_true (isnan (find (all, "bare")->share));
}

/* Transfer with nothing measured rests on the starting value; a study takes that away. */
static void
test_assumed (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  g_autoptr (GArray) all = NULL;

  add_kind (job, "tele", "telescoping gauge", NULL);
  add_kind (job, "mic", "micrometer", "0.004");
  add_method (job, "unstudied", "tele,mic", NULL, NULL);
  add_method (job, "studied", "tele,mic", "0.003", "30");
  all = tm_suitability (job, bore, "");
  g_assert_true (find (all, "unstudied")->assumed);
  g_assert_cmpint (find (all, "unstudied")->outlook.settles, ==, TM_SETTLES_CANNOT);
  assert_near (find (all, "unstudied")->share, 2 * 1.65 * 13.2 / 21, 0.05);
  g_assert_false (find (all, "studied")->assumed);
}

/* A maximum alone has no band to take a share of; nothing is read of a pass or fail. */
static void
test_no_band (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *length = add_feature (job, "1", TM_KIND_LENGTH, NULL, "12.0", "");
  TmFeature *thread = add_feature (job, "2", TM_KIND_THREAD, NULL, NULL, "");
  g_autoptr (GArray) all = NULL, none = NULL;

  add_gauge (job, "mic", NULL, "0.004");
  all = tm_suitability (job, length, NULL);
  g_assert_true (g_array_index (all, TmSuitability, 0).known);
  g_assert_true (isnan (g_array_index (all, TmSuitability, 0).share));
  none = tm_suitability (job, thread, NULL);
  g_assert_false (g_array_index (none, TmSuitability, 0).known);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/suitability/words", test_words);
  g_test_add_func ("/core/suitability/simple", test_simple);
  g_test_add_func ("/core/suitability/fits", test_fits);
  g_test_add_func ("/core/suitability/reach-and-due", test_reach_and_due);
  g_test_add_func ("/core/suitability/assumed", test_assumed);
  g_test_add_func ("/core/suitability/no-band", test_no_band);
  return g_test_run ();
}
