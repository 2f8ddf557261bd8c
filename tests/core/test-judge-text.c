/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is printed of a judgement: it never disagrees with the verdict.
 */

#include <math.h>
#include <string.h>

#include "judge-support.h"

/* A mean that lies a third of a count inside a limit, or outside it, is printed on its own side. */
static void
test_size_text (void)
{
  static const struct {
    const char *first, *second, *text;
    TmVerdict verdict;
  } cases[] = {
    { "25.021", "25.021", "25.0210", TM_VERDICT_IN },
    { "25.021", "25.022", "25.0215", TM_VERDICT_OUT },
    { "25.021000000", "25.021000001", "25.0210000005", TM_VERDICT_OUT },
    { "24.999999999", "25.000000000", "24.9999999995", TM_VERDICT_OUT },
    { "25.01", "25.012", "25.0110", TM_VERDICT_IN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_SIMPLE);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
      g_autofree char *text = NULL;

      read_size (job, bore, "", cases[i].first, "");
      read_size (job, bore, "", cases[i].second, "");
      judge_one (job, bore, &judgement);
      text = tm_judgement_size_text (&judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

/* A size typed in the other unit keeps its fineness, or gets as many digits as put it on its own side of
 * the limit: 0.985 in is 25.019 mm. */
static void
test_size_text_other_unit (void)
{
  static const struct {
    const char *upper, *text;
    TmVerdict verdict;
  } cases[] = {
    { "25.018", "25.02", TM_VERDICT_OUT },
    { "25.019", "25.019", TM_VERDICT_IN },
    { "25.1", "25.02", TM_VERDICT_IN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_SIMPLE);
      g_auto (TmJudgement) judgement = { 0 };
      TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", cases[i].upper, "");
      g_autofree char *text = NULL;

      read_size (job, bore, "", "0.985 in", "");
      judge_one (job, bore, &judgement);
      text = tm_judgement_size_text (&judgement);
      g_assert_cmpint (judgement.verdict, ==, cases[i].verdict);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

static int
sign_of (gint64 value)
{
  return (value > 0) - (value < 0);
}

/* Sizes typed in inches, near the limits and guards of a bore in millimetres: what is printed stands to
 * each of them as the size does, so that nobody can read another verdict off the print. */
static void
test_size_text_agrees (void)
{
  for (gint64 digits = 98423; digits < 98512; digits++)
    {
      g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
      g_auto (TmJudgement) judgement = { 0 };
      g_autofree char *typed = g_strdup_printf ("0.%" G_GINT64_FORMAT " in", digits), *text = NULL;
      TmFeature *bore;
      TmReading *reading;
      gint64 printed, marks[4];

      add_one_micron (job);
      bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "G1");
      reading = read_size (job, bore, "", typed, "");
      judge_one (job, bore, &judgement);
      text = tm_judgement_size_text (&judgement);
      printed = quantity (text, TM_UNIT_MM).count;
      marks[0] = judgement.limits.lower;
      marks[1] = judgement.limits.upper;
      marks[2] = judgement.limits.lower + judgement.guard;
      marks[3] = judgement.limits.upper - judgement.guard;
      for (guint i = 0; i < G_N_ELEMENTS (marks); i++)
        g_assert_cmpint (sign_of (printed - marks[i]), ==, sign_of (reading->value.count - marks[i]));
      g_assert_cmpuint (strlen (text), <=, strlen ("25.0000000"));
    }
}

/* Two significant digits, rounded up (GUM 7.2.6, from memory): U 0.00123 → 0.0013. */
static void
test_spread_text (void)
{
  static const struct {
    double counts;
    const char *text;
  } cases[] = {
    { 1230000, "0.0013" }, { 1200000, "0.0012" }, { 1650000, "0.0017" }, { 21e6, "0.021" },
    { 996e6, "1.00" },     { 1234e6, "1.3" },     { 123456e6, "124" },   { -1230000, "-0.0013" },
    { 0, "0.0" },          { NAN, "" },           { INFINITY, "" },      { 12, "0.00001" },
  };
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  g_auto (TmJudgement) judgement = { 0 };
  TmFeature *bore = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");

  read_size (job, bore, "", "25.012", "");
  judge_one (job, bore, &judgement);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = tm_judgement_spread_text (&judgement, cases[i].counts);

      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/judge/size-text", test_size_text);
  g_test_add_func ("/core/judge/size-text-other-unit", test_size_text_other_unit);
  g_test_add_func ("/core/judge/size-text-agrees", test_size_text_agrees);
  g_test_add_func ("/core/judge/spread-text", test_spread_text);
  return g_test_run ();
}
