/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Slips of the hand.  The turn of a thimble, 0.025 in and 0.5 mm, is common practice (40 threads per
 * inch, 0.5 mm pitch); the cases are our own, worked out by hand.
 */

#include "core-entry.h"

typedef struct {
  const char *value;
  TmSlip slip;
  const char *likelier; /* "" when none is offered */
} Case;

static TmFeature
make_feature (TmKind kind, TmUnit unit, const char *nominal, const char *lower, const char *upper)
{
  TmFeature feature = { .kind = kind, .unit = unit, .places = 1 };

  if (nominal != NULL)
    g_assert_cmpint (tm_quantity_read (nominal, unit, &feature.nominal), ==, TM_READ_OK);
  if (lower != NULL)
    g_assert_cmpint (tm_quantity_read (lower, unit, &feature.lower), ==, TM_READ_OK);
  if (upper != NULL)
    g_assert_cmpint (tm_quantity_read (upper, unit, &feature.upper), ==, TM_READ_OK);
  return feature;
}

static void
check_cases (const TmFeature *feature, const gint64 *so_far, gsize n_so_far, const Case *cases, gsize n)
{
  for (gsize i = 0; i < n; i++)
    {
      TmQuantity value;
      TmSlipCheck check;
      g_autofree char *likelier = NULL;

      g_assert_cmpint (tm_quantity_read (cases[i].value, feature->unit, &value), ==, TM_READ_OK);
      check = tm_slip_check (&value, feature, so_far, n_so_far);
      likelier = tm_quantity_format (&check.likelier);
      g_test_message ("%s -> slip %d, %s", cases[i].value, check.slip, likelier);
      g_assert_cmpint (check.slip, ==, cases[i].slip);
      g_assert_cmpstr (likelier, ==, cases[i].likelier);
    }
}

static void
test_metric_bore (void)
{
  static const Case cases[] = {
    { "25.000", TM_SLIP_NONE, "" },
    { "25.021", TM_SLIP_NONE, "" },
    { "25.022", TM_SLIP_NONE, "" }, /* out, but a real reading may well be */
    { "24.985", TM_SLIP_NONE, "" },
    { "25.512", TM_SLIP_THIMBLE_TURN, "25.012" },
    { "24.512", TM_SLIP_THIMBLE_TURN, "25.012" },
    { "25.5", TM_SLIP_THIMBLE_TURN, "25.0" },
    { "25.102", TM_SLIP_DIGIT_SWAP, "25.012" },
    { "52.012", TM_SLIP_DIGIT_SWAP, "25.012" },
    { "20.512", TM_SLIP_DIGIT_SWAP, "25.012" },
    { "24.900", TM_SLIP_FAR_OUT, "" },
    { "26", TM_SLIP_FAR_OUT, "" },
    { "12.006", TM_SLIP_FAR_OUT, "" },
  };
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");

  check_cases (&feature, NULL, 0, cases, G_N_ELEMENTS (cases));
}

static void
test_inch_bore (void)
{
  static const Case cases[] = {
    { ".7495", TM_SLIP_NONE, "" },
    { ".7745", TM_SLIP_THIMBLE_TURN, "0.7495" },
    { ".7245", TM_SLIP_THIMBLE_TURN, "0.7495" },
    { ".4795", TM_SLIP_DIGIT_SWAP, "0.7495" },
    { ".7995", TM_SLIP_FAR_OUT, "" }, /* two turns are no slip of one */
  };
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_IN, ".7500", ".7490", ".7500");

  check_cases (&feature, NULL, 0, cases, G_N_ELEMENTS (cases));
}

/* Roughing: what was read so far is a place to be near, and to be a turn off. */
static void
test_so_far (void)
{
  static const gint64 so_far[] = { G_GINT64_CONSTANT (24480000000), G_GINT64_CONSTANT (24481000000) };
  static const Case cases[] = {
    { "24.485", TM_SLIP_NONE, "" },
    { "25.010", TM_SLIP_NONE, "" },
    { "23.985", TM_SLIP_THIMBLE_TURN, "24.485" },
    { "42.480", TM_SLIP_DIGIT_SWAP, "24.480" },
    { "24.300", TM_SLIP_FAR_OUT, "" },
  };
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");

  check_cases (&feature, so_far, G_N_ELEMENTS (so_far), cases, G_N_ELEMENTS (cases));
}

/* Limits wider than a turn: a turn off is a possible size, and no slip. */
static void
test_wide_limits (void)
{
  static const Case cases[] = {
    { "40.2", TM_SLIP_NONE, "" },
    { "40.7", TM_SLIP_NONE, "" },
    { "39.2", TM_SLIP_NONE, "" },
    { "43.0", TM_SLIP_DIGIT_SWAP, "40.3" },
  };
  TmFeature feature = make_feature (TM_KIND_LENGTH, TM_UNIT_MM, "40", "39.7", "40.3");

  check_cases (&feature, NULL, 0, cases, G_N_ELEMENTS (cases));
}

static void
test_one_limit (void)
{
  static const Case greatest[] = {
    { "12", TM_SLIP_NONE, "" },
    { "0.4", TM_SLIP_NONE, "" },
    { "12.1", TM_SLIP_NONE, "" },
    { "21", TM_SLIP_FAR_OUT, "" },
  };
  static const Case least[] = {
    { "3", TM_SLIP_NONE, "" },    { "25", TM_SLIP_NONE, "" },    { "2.98", TM_SLIP_NONE, "" },
    { "1", TM_SLIP_FAR_OUT, "" }, { "34", TM_SLIP_FAR_OUT, "" },
  };
  static const Case flat[] = {
    { "0", TM_SLIP_NONE, "" },
    { "0.030", TM_SLIP_NONE, "" },
    { "0.500", TM_SLIP_DIGIT_SWAP, "0.050" },
    { "12", TM_SLIP_FAR_OUT, "" },
  };
  TmFeature max = make_feature (TM_KIND_LENGTH, TM_UNIT_MM, NULL, NULL, "12");
  TmFeature min = make_feature (TM_KIND_DEPTH, TM_UNIT_MM, NULL, "3", NULL);
  TmFeature form = make_feature (TM_KIND_FORM, TM_UNIT_MM, NULL, NULL, "0.05");

  check_cases (&max, NULL, 0, greatest, G_N_ELEMENTS (greatest));
  check_cases (&min, NULL, 0, least, G_N_ELEMENTS (least));
  check_cases (&form, NULL, 0, flat, G_N_ELEMENTS (flat));
}

static void
test_angle (void)
{
  static const Case cases[] = {
    { "0.2", TM_SLIP_NONE, "" },
    { "-0.4", TM_SLIP_NONE, "" },
    { "9", TM_SLIP_FAR_OUT, "" },
  };
  TmFeature feature = make_feature (TM_KIND_ANGLE, TM_UNIT_DEGREE, "0", "-0.5", "0.5");

  check_cases (&feature, NULL, 0, cases, G_N_ELEMENTS (cases));
}

static void
test_nothing_known (void)
{
  static const Case cases[] = { { "123", TM_SLIP_NONE, "" } };
  TmFeature feature = make_feature (TM_KIND_LENGTH, TM_UNIT_MM, NULL, NULL, NULL);
  TmQuantity none = TM_QUANTITY_NONE;

  check_cases (&feature, NULL, 0, cases, G_N_ELEMENTS (cases));
  g_assert_cmpint (tm_slip_check (&none, &feature, NULL, 0).slip, ==, TM_SLIP_NONE);
}

static void
test_entry_slips (void)
{
  static const struct {
    const char *text;
    TmSlip slip;
  } cases[] = {
    { "25012", TM_SLIP_NONE },        { "984.5", TM_SLIP_OTHER_SYSTEM },
    { "9840", TM_SLIP_OTHER_SYSTEM }, { ".9845 in", TM_SLIP_NONE },
    { "950", TM_SLIP_FAR_OUT },       { "25512", TM_SLIP_THIMBLE_TURN },
    { "25102", TM_SLIP_DIGIT_SWAP },  { "x", TM_SLIP_NONE },
    { "12 mm", TM_SLIP_FAR_OUT },     { "", TM_SLIP_NONE },
  };
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmEntry entry = tm_entry_read (cases[i].text, &feature);
      TmSlipCheck check = tm_entry_slip_check (&entry, &feature, NULL, 0);

      g_test_message ("%s -> %d", cases[i].text, check.slip);
      g_assert_cmpint (check.slip, ==, cases[i].slip);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/slip/metric-bore", test_metric_bore);
  g_test_add_func ("/core/slip/inch-bore", test_inch_bore);
  g_test_add_func ("/core/slip/so-far", test_so_far);
  g_test_add_func ("/core/slip/wide-limits", test_wide_limits);
  g_test_add_func ("/core/slip/one-limit", test_one_limit);
  g_test_add_func ("/core/slip/angle", test_angle);
  g_test_add_func ("/core/slip/nothing-known", test_nothing_known);
  g_test_add_func ("/core/slip/entry-slips", test_entry_slips);
  return g_test_run ();
}
