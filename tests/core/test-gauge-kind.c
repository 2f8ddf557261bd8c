/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-gauge-kind.h"

#include <string.h>

#include "judge-support.h"

#define UM G_GINT64_CONSTANT (1000000)

/* Words of kinds, in trade use (common practice); the first column is what a job file may hold. */
static const struct {
  const char *word;
  const char *kind; /* NULL: unknown */
} words[] = {
  { "outside micrometer", "outside micrometer" },
  { "Outside Micrometer", "outside micrometer" },
  { "micrometer", "outside micrometer" },
  { "micrometer 25-50", "outside micrometer" },
  { "micrometer 0-1", "outside micrometer" },
  { "0-1 micrometer", "outside micrometer" },
  { "25-50 mm micrometre", "outside micrometer" },
  { "inside micrometer", "inside micrometer" },
  { "bore micrometer", "three-point bore micrometer" },
  { "three point bore micrometer", "three-point bore micrometer" },
  { "3-point bore micrometer 20-25", "three-point bore micrometer" },
  { "dial bore gauge", "dial bore gauge" },
  { "dial bore gage", "dial bore gauge" },
  { "two-point bore gauge", "dial bore gauge" },
  { "bore gauge", "dial bore gauge" },
  { "telescoping gauge", "telescoping gauge" },
  { "telescoping", "telescoping gauge" },
  { "small-hole gauge", "small-hole gauge" },
  { "small hole gage", "small-hole gauge" },
  { "inside caliper", "inside caliper" },
  { "inside calliper", "inside caliper" },
  { "outside caliper", "outside caliper" },
  { "caliper", "caliper" },
  { "digital caliper (0-150)", "caliper" },
  { "vernier", "caliper" },
  { "depth micrometer", "depth micrometer" },
  { "height gauge", "height gauge" },
  { "test indicator", "test indicator" },
  { "dial test indicator", "test indicator" },
  { "pin set", "pin set" },
  { "pin gauges", "pin set" },
  { "pin gage set .061-.250", "pin set" },
  { "plug gauge 12 H7", "plug gauge" },
  { "ring gauge", "ring gauge" },
  { "setting ring 52", "setting ring" },
  { "gauge blocks", "gauge blocks" },
  { "gage block set", "gauge blocks" },
  { "thread plug M8x1.25 6H", "thread plug gauge" },
  { "thread ring 1/4-20", "thread ring gauge" },
  { "cmm", "CMM" },
  { "roughness tester", "roughness tester" },
  { "hardness tester", "hardness tester" },
  { "bevel protractor", "bevel protractor" },
  { "", NULL },
  { "  ", NULL },
  { "-", NULL },
  { "25-50", NULL },
  { "laser tracker", NULL },
  { "ring spanner", NULL },
  { "\xff\xfe", NULL },
};

static void
test_words (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      const TmGaugeKind *kind = tm_gauge_kind_find (words[i].word);
      g_autofree char *printable = g_strescape (words[i].word, NULL);

      g_test_message ("%s", printable);
      g_assert_cmpstr (kind != NULL ? kind->word : NULL, ==, words[i].kind);
    }
  g_assert_null (tm_gauge_kind_find (NULL));
}

/* Each kind is found by its own word, and only once in the table. */
static void
test_kinds (void)
{
  guint n;
  const TmGaugeKind *kinds = tm_gauge_kinds (&n);

  g_assert_cmpuint (n, >, 20);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (tm_gauge_kind_find (kinds[i].word) == &kinds[i]);
      g_assert_false (kinds[i].transfer && kinds[i].pins);
      g_assert_true (!kinds[i].pins || (kinds[i].contact == TM_CONTACT_FULL_FORM && kinds[i].classed));
    }
  g_assert_cmpint (tm_gauge_kind_find ("bore micrometer")->contact, ==, TM_CONTACT_THREE_POINT);
  g_assert_cmpint (tm_gauge_kind_find ("telescoping gauge")->contact, ==, TM_CONTACT_TWO_POINT);
  g_assert_true (tm_gauge_kind_find ("inside caliper")->transfer);
  g_assert_true (tm_gauge_kind_find ("inside caliper")->measures_inside);
  g_assert_false (tm_gauge_kind_find ("inside caliper")->measures_outside);
  g_assert_false (tm_gauge_kind_find ("ring gauge")->pins);
}

/* DIN 863-1, limits of error in µm for 0-25, 25-50 … 475-500 mm, as printed in a published table. */
static void
test_micrometer_limits (void)
{
  static const int limits[] = { 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12, 13, 13 };

  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      gint64 to = (gint64)(i + 1) * 25000 * UM;

      g_assert_cmpint (tm_micrometer_limit (to), ==, limits[i] * UM);
      g_assert_cmpint (tm_micrometer_limit (to - 1), ==, limits[i] * UM);
    }
  g_assert_cmpint (tm_micrometer_limit (500000 * UM + 1), ==, 0);
  g_assert_cmpint (tm_micrometer_limit (0), ==, 0);
  g_assert_cmpint (tm_micrometer_limit (-1), ==, 0);
}

/* Limit deviation of length by grade, two agreeing published tables (former DIN 861, ISO 3650);
 * a range is above its lower end, up to and including its upper. */
static void
test_block_limits (void)
{
  static const struct {
    int to; /* mm */
    const char *limits[4];
  } rows[] = {
    { 10, { "0.06", "0.12", "0.20", "0.45" } },  { 25, { "0.07", "0.14", "0.30", "0.60" } },
    { 50, { "0.10", "0.20", "0.40", "0.80" } },  { 75, { "0.12", "0.25", "0.50", "1.00" } },
    { 100, { "0.14", "0.30", "0.60", "1.20" } },
  };
  static const char *const grades[] = { "00", "0", "1", "2" };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (gsize g = 0; g < G_N_ELEMENTS (grades); g++)
      {
        gint64 expected = quantity (rows[i].limits[g], TM_UNIT_UM).count;
        gint64 from = i > 0 ? rows[i - 1].to : 0;

        g_assert_cmpint (tm_gauge_block_limit (grades[g], rows[i].to * 1000 * UM), ==, expected);
        g_assert_cmpint (tm_gauge_block_limit (grades[g], from * 1000 * UM + 1), ==, expected);
      }
  g_assert_cmpint (tm_gauge_block_limit ("2", 100000 * UM + 1), ==, 0);
  g_assert_cmpint (tm_gauge_block_limit ("K", 1000 * UM), ==, 0);
  g_assert_cmpint (tm_gauge_block_limit (NULL, 1000 * UM), ==, 0);
}

/* Published figures, and the starting values that are common practice, from memory: inside caliper
 * ±0.002 in, telescoping and small-hole gauge ±0.001 in for an ordinary hand, three-point bore
 * micrometer ±0.0002 in, dial bore gauge set on a ring ±0.0001 in. */
static const struct {
  const char *kind;
  TmUnit unit;
  const char *to;
  const char *error_limit;
  const char *feel;
  gboolean assumed;
} starts[] = {
  { "outside micrometer", TM_UNIT_MM, NULL, "0.004", "", FALSE },
  { "outside micrometer", TM_UNIT_MM, "25", "0.004", "", FALSE },
  { "outside micrometer", TM_UNIT_MM, "150", "0.006", "", FALSE },
  { "outside micrometer", TM_UNIT_MM, "600", "", "", FALSE },
  /* 4 µm is 0.000157 in, 5 µm 0.000197: rounded up */
  { "outside micrometer", TM_UNIT_IN, "1", "0.00016", "", FALSE },
  { "outside micrometer", TM_UNIT_IN, "2", "0.00020", "", FALSE },
  { "gauge blocks", TM_UNIT_MM, "100", "0.0012", "", FALSE },
  { "gauge blocks", TM_UNIT_MM, NULL, "0.00045", "", FALSE },
  { "three-point bore micrometer", TM_UNIT_IN, NULL, "0.0002", "", TRUE },
  { "three-point bore micrometer", TM_UNIT_MM, NULL, "0.00508", "", TRUE },
  { "dial bore gauge", TM_UNIT_IN, NULL, "0.0001", "", TRUE },
  { "telescoping gauge", TM_UNIT_IN, NULL, "", "0.001", TRUE },
  { "telescoping gauge", TM_UNIT_MM, NULL, "", "0.0254", TRUE },
  { "small-hole gauge", TM_UNIT_IN, NULL, "", "0.001", TRUE },
  { "inside caliper", TM_UNIT_IN, NULL, "", "0.002", TRUE },
  { "CMM", TM_UNIT_MM, "1000", "", "", FALSE },
  { "caliper", TM_UNIT_MM, "150", "", "", FALSE },
  { "pin set", TM_UNIT_MM, "10", "", "", FALSE },
};

static void
test_starts (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (starts); i++)
    {
      TmQuantity to = quantity (starts[i].to, starts[i].unit);
      TmGaugeDefaults found
          = tm_gauge_kind_defaults (tm_gauge_kind_find (starts[i].kind), starts[i].unit, &to);
      g_autofree char *limit = tm_quantity_format (&found.error_limit);
      g_autofree char *feel = tm_quantity_format (&found.feel);
      TmQuantity wanted = quantity (*starts[i].error_limit ? starts[i].error_limit : NULL, starts[i].unit);

      g_test_message ("%s to %s: %s %s", starts[i].kind, starts[i].to, limit, feel);
      g_assert_cmpint (found.error_limit.count, ==, wanted.count);
      g_assert_cmpstr (feel, ==, starts[i].feel);
      g_assert_cmpint (found.assumed, ==, starts[i].assumed);
      g_assert_cmpint (tm_gauge_source_is_assumed (found.source), ==, starts[i].assumed);
      /* Nobody published a step: it is read off the gauge. */
      g_assert_false (found.resolution.given);
      g_assert_cmpint (*found.source != '\0', ==, found.error_limit.given || found.feel.given);
    }
  g_assert_true (tm_gauge_source_is_assumed ("Assumed, by the foreman"));
  g_assert_false (tm_gauge_source_is_assumed ("DIN 863-1"));
  g_assert_false (tm_gauge_source_is_assumed (""));
  g_assert_false (tm_gauge_source_is_assumed (NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/gauge-kind/words", test_words);
  g_test_add_func ("/gauge-kind/kinds", test_kinds);
  g_test_add_func ("/gauge-kind/micrometer-limits", test_micrometer_limits);
  g_test_add_func ("/gauge-kind/block-limits", test_block_limits);
  g_test_add_func ("/gauge-kind/starts", test_starts);
  return g_test_run ();
}
