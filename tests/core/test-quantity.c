/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exact quantities.  Every comparison here is exact: no tolerance.
 */

#include "core-quantity.h"

#include <math.h>

static const struct {
  const char *text;
  TmUnit unit;
  TmReadStatus status;
  gint64 count;
  guint decimals;
} read_rows[] = {
  { "25.4", TM_UNIT_MM, TM_READ_OK, G_GINT64_CONSTANT (25400000000), 1 },
  { "1", TM_UNIT_IN, TM_READ_OK, G_GINT64_CONSTANT (25400000000), 0 }, /* international inch, 1959 */
  { "0.00001", TM_UNIT_IN, TM_READ_OK, 254000, 5 },
  { "1", TM_UNIT_UM, TM_READ_OK, 1000000, 0 },
  { ".7486", TM_UNIT_IN, TM_READ_OK, G_GINT64_CONSTANT (19014440000), 4 },
  { "24,987", TM_UNIT_MM, TM_READ_OK, G_GINT64_CONSTANT (24987000000), 3 },
  { "25.", TM_UNIT_MM, TM_READ_OK, G_GINT64_CONSTANT (25000000000), 0 },
  { "  -0.5  ", TM_UNIT_MM, TM_READ_OK, -500000000, 1 },
  { "\xe2\x88\x92"
    "12",
    TM_UNIT_UM, TM_READ_OK, -12000000, 0 },
  { "19.01 mm", TM_UNIT_IN, TM_READ_OK, G_GINT64_CONSTANT (19010000000), 2 },
  { "748.6thou", TM_UNIT_IN, TM_READ_OK, G_GINT64_CONSTANT (19014440000), 1 },
  { "1\"", TM_UNIT_MM, TM_READ_OK, G_GINT64_CONSTANT (25400000000), 0 },
  { "0.001", TM_UNIT_DEGREE, TM_READ_OK, 3600000, 3 },
  { "", TM_UNIT_MM, TM_READ_EMPTY, 0, 0 },
  { " \t", TM_UNIT_MM, TM_READ_EMPTY, 0, 0 },
  { "abc", TM_UNIT_MM, TM_READ_NOT_A_NUMBER, 0, 0 },
  { ".", TM_UNIT_MM, TM_READ_NOT_A_NUMBER, 0, 0 },
  { "--1", TM_UNIT_MM, TM_READ_NOT_A_NUMBER, 0, 0 },
  { "1,234.5", TM_UNIT_MM, TM_READ_THOUSANDS, 0, 0 },
  { "1 234", TM_UNIT_MM, TM_READ_THOUSANDS, 0, 0 },
  { "1.2.3", TM_UNIT_MM, TM_READ_THOUSANDS, 0, 0 },
  { "0.0000000001", TM_UNIT_MM, TM_READ_TOO_FINE, 0, 0 },
  { "0.00000000001", TM_UNIT_IN, TM_READ_TOO_FINE, 0, 0 },
  { "5000000000", TM_UNIT_MM, TM_READ_TOO_LARGE, 0, 0 },
  { "99999999999999999999999999999999999999999999", TM_UNIT_MM, TM_READ_TOO_LARGE, 0, 0 },
  { "25 parsec", TM_UNIT_MM, TM_READ_UNIT_UNKNOWN, 0, 0 },
  { "25x", TM_UNIT_MM, TM_READ_UNIT_UNKNOWN, 0, 0 },
  { "25 deg", TM_UNIT_MM, TM_READ_UNIT_WRONG, 0, 0 },
};

static void
test_read (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (read_rows); i++)
    {
      TmQuantity got = TM_QUANTITY_NONE;

      g_test_message ("“%s”", read_rows[i].text);
      g_assert_cmpint (tm_quantity_read (read_rows[i].text, read_rows[i].unit, &got), ==,
                       read_rows[i].status);
      g_assert_cmpint (got.given, ==, read_rows[i].status == TM_READ_OK);
      g_assert_cmpint (got.count, ==, read_rows[i].count);
      g_assert_cmpuint (got.decimals, ==, read_rows[i].decimals);
    }
}

static void
test_written_text_comes_back (void)
{
  static const char *const texts[] = { "25.000", "0.7510", "-0.005", "0", "12", "0.000001" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      TmQuantity quantity;
      g_autofree char *back = NULL;

      g_assert_cmpint (tm_quantity_read (texts[i], TM_UNIT_IN, &quantity), ==, TM_READ_OK);
      back = tm_quantity_format (&quantity);
      g_assert_cmpstr (back, ==, texts[i]);
    }
}

static void
test_foreign_unit_is_written (void)
{
  TmQuantity quantity;
  g_autofree char *foreign = NULL;
  g_autofree char *own = NULL;

  g_assert_cmpint (tm_quantity_read ("19.01 mm", TM_UNIT_IN, &quantity), ==, TM_READ_OK);
  foreign = tm_quantity_format_in (&quantity, TM_UNIT_IN);
  own = tm_quantity_format_in (&quantity, TM_UNIT_MM);
  g_assert_cmpstr (foreign, ==, "19.01 mm");
  g_assert_cmpstr (own, ==, "19.01");
}

/* Exact decimal input, half to even: ISO 80000-1 Annex B rule A (from memory) and cases recomputed
 * with exact decimal arithmetic; 123.455 -> 123.46 as the JIS Z 8401 / ISO 31-0 summary prints it. */
static const struct {
  const char *text;
  guint decimals;
  const char *rounded;
} round_rows[] = {
  { "0.12350", 3, "0.124" },  { "0.12450", 3, "0.124" },  { "25.0005", 3, "25.000" },
  { "25.0015", 3, "25.002" }, { "25.0025", 3, "25.002" }, { "-0.0005", 3, "0.000" },
  { "1.005", 2, "1.00" },     { "12.25", 1, "12.2" },     { "12.35", 1, "12.4" },
  { "12.223", 1, "12.2" },    { "12.251", 1, "12.3" },    { "12.275", 1, "12.3" },
  { "12.254", 1, "12.3" },    { "123.455", 2, "123.46" }, { "60.25132", 1, "60.3" },
  { "2.675", 2, "2.68" },     { "-1.5", 0, "-2" },        { "0.5", 0, "0" },
};

static void
test_rounds_half_to_even (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (round_rows); i++)
    {
      TmQuantity quantity;
      g_autofree char *got = NULL;

      g_assert_cmpint (tm_quantity_read (round_rows[i].text, TM_UNIT_MM, &quantity), ==, TM_READ_OK);
      got = tm_count_format (quantity.count, TM_UNIT_MM, round_rows[i].decimals);
      g_assert_cmpstr (got, ==, round_rows[i].rounded);
    }
}

static void
test_exact_format_finds_digits (void)
{
  g_autofree char *exact = tm_count_format_exact (G_GINT64_CONSTANT (25012500000), TM_UNIT_MM, 3);
  g_autofree char *at_least = tm_count_format_exact (G_GINT64_CONSTANT (25000000000), TM_UNIT_MM, 3);
  g_autofree char *endless = tm_count_format_exact (1, TM_UNIT_IN, 0);

  g_assert_cmpstr (exact, ==, "25.0125");
  g_assert_cmpstr (at_least, ==, "25.000");
  g_assert_cmpstr (endless, ==, "0.000000000039");
}

static void
test_mean_is_compared_without_division (void)
{
  TmWide sum = (TmWide)G_GINT64_CONSTANT (25021000000) * 3;

  g_assert_cmpint (tm_mean_compare (sum, 3, G_GINT64_CONSTANT (25021000000)), ==, 0);
  g_assert_cmpint (tm_mean_compare (sum + 1, 3, G_GINT64_CONSTANT (25021000000)), ==, 1);
  g_assert_cmpint (tm_mean_compare (sum - 1, 3, G_GINT64_CONSTANT (25021000000)), ==, -1);
  g_assert_cmpint (tm_mean_compare ((TmWide)TM_COUNT_MAX * 1000, 1000, TM_COUNT_MAX), ==, 0);
}

static void
test_mean_format (void)
{
  g_autofree char *third = tm_mean_format ((TmWide)1000000000, 3, TM_UNIT_MM, 4);
  g_autofree char *tie = tm_mean_format ((TmWide)25001 * 1000000 + (TmWide)25002 * 1000000, 2, TM_UNIT_MM, 3);

  g_assert_cmpstr (third, ==, "0.3333");
  g_assert_cmpstr (tie, ==, "25.002"); /* 25.0015, half to even */
}

static void
test_from_double_is_clamped (void)
{
  g_assert_cmpint (tm_count_from_double (1e30, TM_UNIT_MM), ==, TM_COUNT_MAX);
  g_assert_cmpint (tm_count_from_double (-1e30, TM_UNIT_MM), ==, -TM_COUNT_MAX);
  g_assert_cmpint (tm_count_from_double (NAN, TM_UNIT_MM), ==, 0);
  g_assert_cmpint (tm_count_from_double (25.0, TM_UNIT_MM), ==, G_GINT64_CONSTANT (25000000000));
}

static void
test_every_unit_has_facts (void)
{
  for (guint unit = TM_UNIT_MM; unit < TM_N_UNITS; unit++)
    {
      TmUnit found = TM_UNIT_NONE;

      g_assert_cmpint (tm_unit_counts ((TmUnit)unit), >, 0);
      g_assert_true (tm_unit_from_word (tm_unit_word ((TmUnit)unit), &found));
      g_assert_cmpint (found, ==, unit);
    }
}

static void
test_every_refusal_has_a_text (void)
{
  for (guint status = TM_READ_OK + 1; status < TM_N_READ_STATUSES; status++)
    g_assert_cmpstr (tm_read_status_text ((TmReadStatus)status), !=, "");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity/read", test_read);
  g_test_add_func ("/quantity/written-text-comes-back", test_written_text_comes_back);
  g_test_add_func ("/quantity/foreign-unit-is-written", test_foreign_unit_is_written);
  g_test_add_func ("/quantity/rounds-half-to-even", test_rounds_half_to_even);
  g_test_add_func ("/quantity/exact-format-finds-digits", test_exact_format_finds_digits);
  g_test_add_func ("/quantity/mean-compare", test_mean_is_compared_without_division);
  g_test_add_func ("/quantity/mean-format", test_mean_format);
  g_test_add_func ("/quantity/from-double", test_from_double_is_clamped);
  g_test_add_func ("/quantity/unit-facts", test_every_unit_has_facts);
  g_test_add_func ("/quantity/refusal-texts", test_every_refusal_has_a_text);
  return g_test_run ();
}
