/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Run rules: when they speak, and how often by chance, against published run lengths.
 */

#include <math.h>

#include "core-run-rules.h"
#include "support-csv.h"

#define BIT(rule) TM_RULE_BIT (TM_RULE_##rule)

static double
get_number (const SupportCsv *csv, guint row, const char *name)
{
  return g_ascii_strtod (support_csv_get (csv, row, name), NULL);
}

/* Champ and Woodall's table: half a unit of its last digit, and the recomputed figures to their own. */
static void
test_published_lengths (void)
{
  static const struct {
    guint rules;
    const char *published, *recomputed;
  } sets[] = {
    { BIT (BEYOND_3S), "pub_C1", "rc_C1" },
    { BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S), "pub_C12", "rc_C12" },
    { BIT (BEYOND_3S) | BIT (4_OF_5_BEYOND_1S), "pub_C13", "rc_C13" },
    { BIT (BEYOND_3S) | BIT (8_ONE_SIDE), "pub_C14", "rc_C14" },
    { BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) | BIT (4_OF_5_BEYOND_1S) | BIT (8_ONE_SIDE), NULL,
      "rc_WE_all4" },
    { BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) | BIT (4_OF_5_BEYOND_1S) | BIT (9_ONE_SIDE), NULL,
      "rc_1_5_6_2" },
  };
  g_autoptr (SupportCsv) csv = support_csv_load ("run_rule_lengths.csv");

  for (guint row = 0; row < csv->rows->len; row++)
    for (guint i = 0; i < G_N_ELEMENTS (sets); i++)
      {
        gboolean exact;
        double length = tm_run_rules_length (sets[i].rules, get_number (csv, row, "shift_sigma"), &exact);
        double recomputed = get_number (csv, row, sets[i].recomputed);

        g_assert_true (exact);
        g_assert_cmpfloat_with_epsilon (length, recomputed, MAX (6e-5, 2e-8 * recomputed));
        if (sets[i].published != NULL)
          g_assert_cmpfloat_with_epsilon (length, get_number (csv, row, sets[i].published), 0.00501);
      }
}

/* One rule alone, and sets, in control: recomputed by an independent Markov chain to the digits given; 2 of 3
 * and 8 on one side by hand: 511 = 2^9 - 1, 255 = 2^8 - 1. */
static void
test_single_lengths (void)
{
  static const struct {
    guint rules;
    double length;
  } cases[] = {
    { BIT (BEYOND_3S), 370.398347 },
    { BIT (9_ONE_SIDE), 511 },
    { BIT (8_ONE_SIDE), 255 },
    { BIT (2_OF_3_BEYOND_2S), 510.688514 },
    { BIT (4_OF_5_BEYOND_1S), 291.319248 },
    { BIT (15_WITHIN_1S), 963.271544 },
    { BIT (8_BEYOND_1S), 14251.366622 },
    { BIT (BEYOND_3S) | BIT (9_ONE_SIDE), 216.695544 },
    { BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) | BIT (4_OF_5_BEYOND_1S), 132.892811 },
    { BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) | BIT (4_OF_5_BEYOND_1S) | BIT (9_ONE_SIDE)
          | BIT (15_WITHIN_1S) | BIT (8_BEYOND_1S),
      98.177588 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gboolean exact;
      double length = tm_run_rules_length (cases[i].rules, 0, &exact);

      g_assert_true (exact);
      g_assert_cmpfloat_with_epsilon (length, cases[i].length, 1e-6 + 1e-9 * length);
    }
}

/* Rising and alternating points: 421.60 and 601.01 (by an integral equation, free of the distribution); 40000
 * runs have a standard error of 0.5 %, four of them are allowed.  All eight of Nelson: 73.50 (simulated
 * elsewhere). */
static void
test_simulated_lengths (void)
{
  static const struct {
    guint rules;
    double length;
  } cases[] = {
    { BIT (6_RISING_OR_FALLING), 421.5986 },
    { BIT (14_ALTERNATING), 601.0078 },
    { (BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) | BIT (4_OF_5_BEYOND_1S) | BIT (9_ONE_SIDE)
       | BIT (6_RISING_OR_FALLING) | BIT (14_ALTERNATING) | BIT (15_WITHIN_1S) | BIT (8_BEYOND_1S)),
      73.496 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gboolean exact;
      double length = tm_run_rules_length (cases[i].rules, 0, &exact);

      g_assert_false (exact);
      g_assert_cmpfloat_with_epsilon (length / cases[i].length, 1, 0.02);
    }
}

typedef struct {
  const char *name;
  guint rules;
  double z[20];
  guint n;
  const char *hits; /* "point:rule …" */
} Case;

static void
check_case (const Case *test)
{
  static const guint breaks[] = { 10 };
  g_autoptr (GArray) hits = tm_run_rules (test->z, test->n, breaks, 1, test->rules);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < hits->len; i++)
    {
      const TmRuleHit *hit = &g_array_index (hits, TmRuleHit, i);

      g_string_append_printf (text, "%s%u:%s", i > 0 ? " " : "", hit->point, tm_run_rule_word (hit->rule));
    }
  g_test_message ("%s", test->name);
  g_assert_cmpstr (text->str, ==, test->hits);
}

static void
test_hits (void)
{
  const guint all = TM_RULE_BIT (TM_N_RUN_RULES) - 1;
  const Case cases[] = {
    { "beyond, and exactly at three is not",
      BIT (BEYOND_3S),
      { 3, 3.01, -3.01 },
      3,
      "1:beyond-3s 2:beyond-3s" },
    { "two of three, only by the newest",
      BIT (2_OF_3_BEYOND_2S),
      { 2.1, 0, 2.1, 0, 0 },
      5,
      "2:2-of-3-beyond-2s" },
    { "not on two sides", BIT (2_OF_3_BEYOND_2S), { 2.1, -2.1, 0 }, 3, "" },
    { "four of five", BIT (4_OF_5_BEYOND_1S), { -1.1, -1.1, 0, -1.1, -1.1, 0 }, 6, "4:4-of-5-beyond-1s" },
    { "eight, and a point at the centre ends it",
      BIT (8_ONE_SIDE),
      { .1, .1, .1, .1, .1, .1, .1, .1, .1, 0 },
      10,
      "7:8-one-side 8:8-one-side" },
    { "a break ends a run", BIT (8_ONE_SIDE), { 0, 0, 0, 0, .1, .1, .1, .1, .1, .1, .1, .1, .1 }, 13, "" },
    { "a missing point ends a run", BIT (8_ONE_SIDE), { .1, .1, .1, .1, NAN, .1, .1, .1, .1 }, 9, "" },
    { "six that rise",
      BIT (6_RISING_OR_FALLING),
      { .1, .2, .3, .4, .5, .6, .6 },
      7,
      "5:6-rising-or-falling" },
    { "nothing at all", all, { 0 }, 0, "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    check_case (&cases[i]);
}

/* Breaks that stand twice, or before the first point, are breaks all the same. */
static void
test_breaks (void)
{
  static const guint breaks[] = { 0, 4, 4, 8 };
  double z[16];
  g_autoptr (GArray) hits = NULL;

  for (guint i = 0; i < 16; i++)
    z[i] = 0.1;
  hits = tm_run_rules (z, 15, breaks, 4, BIT (8_ONE_SIDE));
  g_assert_cmpuint (hits->len, ==, 0);
  g_clear_pointer (&hits, g_array_unref);
  hits = tm_run_rules (z, 16, breaks, 4, BIT (8_ONE_SIDE));
  g_assert_cmpuint (hits->len, ==, 1);
}

/* 14 points that alternate, without a break. */
static void
test_alternating (void)
{
  double z[15];
  g_autoptr (GArray) hits = NULL;

  for (guint i = 0; i < 15; i++)
    z[i] = i % 2 == 0 ? 0.1 : -0.1;
  hits = tm_run_rules (z, 14, NULL, 0, BIT (14_ALTERNATING));
  g_assert_cmpuint (hits->len, ==, 1);
  g_assert_cmpuint (g_array_index (hits, TmRuleHit, 0).point, ==, 13);
}

static void
test_words (void)
{
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    {
      TmRunRule rule;

      g_assert_true (tm_run_rule_from_word (tm_run_rule_word (i), &rule));
      g_assert_cmpint (rule, ==, i);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/run-rules/published-lengths", test_published_lengths);
  g_test_add_func ("/run-rules/single-lengths", test_single_lengths);
  g_test_add_func ("/run-rules/simulated-lengths", test_simulated_lengths);
  g_test_add_func ("/run-rules/hits", test_hits);
  g_test_add_func ("/run-rules/breaks", test_breaks);
  g_test_add_func ("/run-rules/alternating", test_alternating);
  g_test_add_func ("/run-rules/words", test_words);
  return g_test_run ();
}
