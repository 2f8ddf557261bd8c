/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings as a machinist types them.  The forms are those of the program's own contract; what each
 * must give is worked out by hand (1 in = 25.4 mm exactly, so 1 tenth = 2 540 000 pm).
 */

#include "core-entry.h"

#define IN_TENTHS(n) (G_GINT64_CONSTANT (n) * 2540000)
#define MM_UM(n)     (G_GINT64_CONSTANT (n) * 1000000)

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

typedef struct {
  const char *text;
  TmEntryStatus status;
  TmEntryForm form;
  const char *value; /* as a job file would hold it */
} Case;

static void
check_cases (const TmFeature *feature, const Case *cases, gsize n_cases)
{
  for (gsize i = 0; i < n_cases; i++)
    {
      TmEntry entry = tm_entry_read (cases[i].text, feature);
      g_autofree char *value = tm_quantity_format_in (&entry.value, feature->unit);
      g_autofree char *shown = g_strescape (cases[i].text, NULL);

      g_test_message ("\"%s\" -> status %d form %d \"%s\"", shown, entry.status, entry.form, value);
      g_assert_cmpint (entry.status, ==, cases[i].status);
      if (entry.status != TM_ENTRY_OK)
        {
          g_assert_false (entry.value.given);
          continue;
        }
      g_assert_cmpint (entry.form, ==, cases[i].form);
      g_assert_cmpstr (value, ==, cases[i].value);
    }
}

static const Case inch_cases[] = {
  { "0.7486", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0.7486" },
  { ".7486", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0.7486" },
  { ",7486", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0.7486" },
  { "  .7486\r\n", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0.7486" },
  { ".7486 in", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.7486" },
  { ".7486\"", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.7486" },
  { ".7486\u2033", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.7486" },
  { "748.6 thou", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.7486" },
  { "748.6 mil", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.7486" },
  { "7486 tenths", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.7486" },
  { "748600 uin", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.748600" },
  { "19.01 mm", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "19.01 mm" },
  { "19.01MM", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "19.01 mm" },
  { "19010 \u00b5m", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "19.010 mm" },
  { "19010 \u03bcm", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "19.010 mm" },
  { "+3", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.7503" },
  { "-12", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.7488" },
  { "\u221212", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.7488" },
  { "- 12", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.7488" },
  { "+3.5", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.75035" },
  { "+0", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.7500" },
  { "+.0003 in", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.7503" },
  { "+3 um", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "19.053 mm" },
  { "-1.5 thou", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "0.7485" },
  { "-.0005", TM_ENTRY_SHORTHAND_MANY, 0, NULL },
  { "+0.5", TM_ENTRY_SHORTHAND_MANY, 0, NULL },
  { "+.00000003", TM_ENTRY_SHORTHAND_MANY, 0, NULL },
  { "-7501", TM_ENTRY_NEGATIVE, 0, NULL },
  { "7486", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "0.7486" },
  { "748.6", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "0.7486" },
  { "748,6", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "0.7486" },
  { "7500", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "0.7500" },
  { "750", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "0.750" },
  { "19010", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "19.010 mm" },
  { "75", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  { "7.486", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  { "74860", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  { "0", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  { "0.5", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0.5" },
  { "3/4", TM_ENTRY_OK, TM_ENTRY_FORM_FRACTION, "0.75" },
  { "1 3/16", TM_ENTRY_OK, TM_ENTRY_FORM_FRACTION, "1.1875" },
  { "1-3/16", TM_ENTRY_OK, TM_ENTRY_FORM_FRACTION, "1.1875" },
  { "1\u00bd", TM_ENTRY_OK, TM_ENTRY_FORM_FRACTION, "1.5" },
  { "\u00be", TM_ENTRY_OK, TM_ENTRY_FORM_FRACTION, "0.75" },
  { "47 / 64 in", TM_ENTRY_OK, TM_ENTRY_FORM_FRACTION, "0.734375" },
  { "1/3", TM_ENTRY_TOO_FINE, 0, NULL },
  { "1/127", TM_ENTRY_TOO_FINE, 0, NULL },
  { "3/0", TM_ENTRY_BAD_FRACTION, 0, NULL },
  { "1 19/16", TM_ENTRY_BAD_FRACTION, 0, NULL },
  { "+1/64", TM_ENTRY_BAD_FRACTION, 0, NULL },
  { "3/16 mm", TM_ENTRY_BAD_FRACTION, 0, NULL },
  { "1.5/16", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "3/", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "/4", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "1/2/4", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
};

static void
test_inch (void)
{
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_IN, ".7500", ".7480", ".7510");

  check_cases (&feature, inch_cases, G_N_ELEMENTS (inch_cases));
  g_assert_cmpint (tm_entry_read ("7486", &feature).value.count, ==, IN_TENTHS (7486));
  g_assert_cmpint (tm_entry_read ("19010", &feature).value.count, ==, MM_UM (19010));
}

static const Case metric_cases[] = {
  { "24.987", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "24.987" },
  { "24,987", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "24.987" },
  { "25", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "25" },
  { "25.", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "25" },
  { "025.010", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "25.010" },
  { "24987", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "24.987" },
  { "25012.5", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "25.0125" },
  { "984.5", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "0.9845 in" },
  { "20", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "20" },
  { "2498", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  { "2.4987", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  { "249.87", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  { "012", TM_ENTRY_SHORTHAND_MANY, 0, NULL },
  { "+3", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "25.003" },
  { "+12", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "25.012" },
  { "+3.5", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "25.0035" },
  { "+0.003 mm", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "25.003" },
  { "+0.5 um", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "25.0005" },
  { "+.0003 in", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "25.00762" },
  { "+0.02", TM_ENTRY_SHORTHAND_MANY, 0, NULL },
  { "+0.5", TM_ENTRY_SHORTHAND_MANY, 0, NULL },
  { "+1.2", TM_ENTRY_SHORTHAND_MANY, 0, NULL },
  { "-25001", TM_ENTRY_NEGATIVE, 0, NULL },
  { "1 3/16", TM_ENTRY_BAD_FRACTION, 0, NULL },
  { "1,234.5", TM_ENTRY_THOUSANDS, 0, NULL },
  { "1.234,5", TM_ENTRY_THOUSANDS, 0, NULL },
  { "24 987", TM_ENTRY_THOUSANDS, 0, NULL },
  { "24\u202f987", TM_ENTRY_THOUSANDS, 0, NULL },
  { "24'987", TM_ENTRY_THOUSANDS, 0, NULL },
  { "24\u2019987", TM_ENTRY_THOUSANDS, 0, NULL },
  { "24_987", TM_ENTRY_THOUSANDS, 0, NULL },
  { "25.0.1", TM_ENTRY_THOUSANDS, 0, NULL },
  { "", TM_ENTRY_EMPTY, 0, NULL },
  { " \t\r\n", TM_ENTRY_EMPTY, 0, NULL },
  { "\u00a0", TM_ENTRY_EMPTY, 0, NULL },
  { ".", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "-", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "+-3", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "--3", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "25.01\r\n25.02", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "25.01 25.02", TM_ENTRY_THOUSANDS, 0, NULL },
  { "\330"
    "25.01",
    TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "25.01\xff", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "19010 \xb5m", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "\u0662\u0665", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "2e1", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "0x19", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "nan", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "inf", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "=25.01", TM_ENTRY_NOT_A_NUMBER, 0, NULL },
  { "25.01 furlong", TM_ENTRY_UNIT_UNKNOWN, 0, NULL },
  { "25.01 deg", TM_ENTRY_UNIT_WRONG, 0, NULL },
  { "25.0000000000001", TM_ENTRY_TOO_FINE, 0, NULL },
  { "25.0000000001", TM_ENTRY_TOO_FINE, 0, NULL },
  { "99999999999999", TM_ENTRY_TOO_LARGE, 0, NULL },
  { "p", TM_ENTRY_PASS_FAIL, 0, NULL },
  { "nogo", TM_ENTRY_PASS_FAIL, 0, NULL },
};

static void
test_metric (void)
{
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");

  check_cases (&feature, metric_cases, G_N_ELEMENTS (metric_cases));
}

static void
test_no_nominal (void)
{
  static const Case range[] = {
    { "25.012", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "25.012" },
    { "25012", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "25.012" },
    { "+3", TM_ENTRY_NO_NOMINAL, 0, NULL },
    { "-3", TM_ENTRY_NO_NOMINAL, 0, NULL },
  };
  static const Case greatest[] = {
    { "12", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "12" },
    { "0.4", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0.4" },
    { "0", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0" },
    { "11950", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "11.950" },
    { "9500", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  };
  static const Case least[] = {
    { "3.2", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "3.2" },
    { "40", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "40" },
    { "3020", TM_ENTRY_OK, TM_ENTRY_FORM_SHORTHAND, "3.020" },
    { "0.03", TM_ENTRY_SHORTHAND_NONE, 0, NULL },
  };
  TmFeature both = make_feature (TM_KIND_BORE, TM_UNIT_MM, NULL, "25.000", "25.021");
  TmFeature max = make_feature (TM_KIND_LENGTH, TM_UNIT_MM, NULL, NULL, "12");
  TmFeature min = make_feature (TM_KIND_DEPTH, TM_UNIT_MM, NULL, "3", NULL);
  TmFeature none = make_feature (TM_KIND_LENGTH, TM_UNIT_MM, NULL, NULL, NULL);

  check_cases (&both, range, G_N_ELEMENTS (range));
  check_cases (&max, greatest, G_N_ELEMENTS (greatest));
  check_cases (&min, least, G_N_ELEMENTS (least));
  g_assert_cmpint (tm_entry_read ("7486", &none).form, ==, TM_ENTRY_FORM_PLAIN);
}

/* Limits so wide that bare digits fit in two small units. */
static void
test_many_meanings (void)
{
  TmFeature wide = make_feature (TM_KIND_LENGTH, TM_UNIT_IN, NULL, ".05", "1");
  TmEntry entry = tm_entry_read ("900", &wide);

  g_assert_cmpint (entry.status, ==, TM_ENTRY_SHORTHAND_MANY);
  g_assert_cmpuint (entry.n_candidates, ==, 4);
  g_assert_cmpint (entry.candidates[0].count, ==, 900 * tm_unit_counts (TM_UNIT_IN));
  g_assert_cmpint (entry.candidates[1].count, ==, IN_TENTHS (9000));
  g_assert_cmpint (entry.candidates[2].count, ==, IN_TENTHS (900));
  g_assert_cmpint (entry.candidates[3].count, ==, MM_UM (900));

  /* 40 is .0040 within the limits, but 40 thou is just outside them and as likely. */
  wide = make_feature (TM_KIND_LENGTH, TM_UNIT_IN, ".020", ".005", ".035");
  g_assert_cmpint (tm_entry_read ("40", &wide).status, ==, TM_ENTRY_SHORTHAND_MANY);
  /* 203 may be tenths or micrometres. */
  g_assert_cmpint (tm_entry_read ("203", &wide).status, ==, TM_ENTRY_SHORTHAND_MANY);
  g_assert_cmpint (tm_entry_read (".0203", &wide).value.count, ==, IN_TENTHS (203));
}

static void
test_other_kinds (void)
{
  static const Case flat[] = {
    { "0.012", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0.012" },
    { "12 um", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.012" },
    { "0", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "0" },
    { "12", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "12" },
    { "-0.01", TM_ENTRY_NO_NOMINAL, 0, NULL },
  };
  static const Case rough[] = {
    { "1.6", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "1.6" },
    { "0,8 \u00b5m", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "0.8" },
    { "63 uin", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "63 uin" },
  };
  static const Case angle[] = {
    { "89.5", TM_ENTRY_OK, TM_ENTRY_FORM_PLAIN, "89.5" },
    { "89.5\u00b0", TM_ENTRY_OK, TM_ENTRY_FORM_WITH_UNIT, "89.5" },
    { "+0.25", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "90.25" },
    { "-0.5 deg", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "89.5" },
    { "-91", TM_ENTRY_OK, TM_ENTRY_FORM_DEVIATION, "-1" },
    { "90 mm", TM_ENTRY_UNIT_WRONG, 0, NULL },
  };
  TmFeature form = make_feature (TM_KIND_FORM, TM_UNIT_MM, NULL, NULL, "0.02");
  TmFeature ra = make_feature (TM_KIND_ROUGHNESS, TM_UNIT_UM, NULL, NULL, "1.6");
  TmFeature square = make_feature (TM_KIND_ANGLE, TM_UNIT_DEGREE, "90", "89.5", "90.5");
  TmFeature offset = make_feature (TM_KIND_LENGTH, TM_UNIT_MM, "0", "-0.1", "0.1");

  check_cases (&form, flat, G_N_ELEMENTS (flat));
  check_cases (&ra, rough, G_N_ELEMENTS (rough));
  check_cases (&square, angle, G_N_ELEMENTS (angle));
  g_assert_cmpint (tm_entry_read ("-50", &offset).value.count, ==, -MM_UM (50));
}

static void
test_pass_fail (void)
{
  static const struct {
    const char *text;
    TmOutcome outcome;
  } words[] = {
    { "p", TM_OUTCOME_PASS },     { "P", TM_OUTCOME_PASS },        { " Pass\n", TM_OUTCOME_PASS },
    { "GO", TM_OUTCOME_PASS },    { "f", TM_OUTCOME_FAIL },        { "fail", TM_OUTCOME_FAIL },
    { "nogo", TM_OUTCOME_FAIL },  { "No-Go", TM_OUTCOME_FAIL },    { "no go", TM_OUTCOME_FAIL },
    { "25.01", TM_OUTCOME_NONE }, { "passable", TM_OUTCOME_NONE }, { "1", TM_OUTCOME_NONE },
  };
  static const TmKind kinds[] = { TM_KIND_THREAD, TM_KIND_ATTRIBUTE, TM_KIND_NOTE };

  for (gsize k = 0; k < G_N_ELEMENTS (kinds); k++)
    {
      TmFeature feature = make_feature (kinds[k], TM_UNIT_NONE, NULL, NULL, NULL);

      for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
        {
          TmEntry entry = tm_entry_read (words[i].text, &feature);

          g_assert_cmpint (entry.outcome, ==, words[i].outcome);
          g_assert_cmpint (entry.status, ==, entry.outcome ? TM_ENTRY_OK : TM_ENTRY_NOT_PASS_FAIL);
        }
      g_assert_cmpint (tm_entry_read ("", &feature).status, ==, TM_ENTRY_EMPTY);
    }
}

static void
test_long_strings (void)
{
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");
  g_autofree char *digits = g_strnfill (10000, '9');
  g_autofree char *spaces = g_strnfill (10000, ' ');
  g_autofree char *padded = g_strconcat (spaces, "25.01", spaces, NULL);
  g_autofree char *minuses = g_strnfill (10000, '-');

  g_assert_cmpint (tm_entry_read (digits, &feature).status, ==, TM_ENTRY_NOT_A_NUMBER);
  g_assert_cmpint (tm_entry_read (minuses, &feature).status, ==, TM_ENTRY_NOT_A_NUMBER);
  g_assert_cmpint (tm_entry_read (spaces, &feature).status, ==, TM_ENTRY_EMPTY);
  g_assert_cmpint (tm_entry_read (padded, &feature).value.count, ==, MM_UM (25010));
  g_assert_cmpint (tm_entry_read (NULL, &feature).status, ==, TM_ENTRY_EMPTY);
}

static void
test_refusals_say_why (void)
{
  TmFeature feature = make_feature (TM_KIND_BORE, TM_UNIT_IN, ".75", ".748", ".751");
  TmEntry entry = tm_entry_read ("+.0005", &feature);

  for (int status = TM_ENTRY_OK + 1; status < TM_N_ENTRY_STATUSES; status++)
    g_assert_cmpstr (tm_entry_status_text (status), !=, "");
  g_assert_cmpuint (entry.n_candidates, ==, 2);
  g_assert_cmpint (entry.candidates[0].count, ==, IN_TENTHS (7500) + 1270);
  g_assert_cmpint (entry.candidates[1].count, ==, IN_TENTHS (7505));

  entry = tm_entry_read ("75", &feature);
  g_assert_cmpuint (entry.n_candidates, ==, 1);
  g_assert_cmpint (entry.candidates[0].count, ==, 75 * tm_unit_counts (TM_UNIT_IN));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/entry/inch", test_inch);
  g_test_add_func ("/core/entry/metric", test_metric);
  g_test_add_func ("/core/entry/no-nominal", test_no_nominal);
  g_test_add_func ("/core/entry/many-meanings", test_many_meanings);
  g_test_add_func ("/core/entry/other-kinds", test_other_kinds);
  g_test_add_func ("/core/entry/pass-fail", test_pass_fail);
  g_test_add_func ("/core/entry/long-strings", test_long_strings);
  g_test_add_func ("/core/entry/refusals-say-why", test_refusals_say_why);
  return g_test_run ();
}
