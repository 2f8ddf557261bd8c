/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Decimals of any file: what XML Schema calls one (part 2, 3.2.3), sums and products that lose nothing, and
 * one rounding, half to even (ISO 80000-1 B.3 rule A).  The results were reckoned by hand.
 */

#include "exchange-qif-decimal.h"

static TmDecimal
read_decimal (const char *text)
{
  TmDecimal decimal;

  g_assert_true (tm_decimal_read (text, &decimal));
  return decimal;
}

static const struct {
  const char *text;
  guint least;
  guint most;
  const char *printed;
} formats[] = {
  { "0", 0, 9, "0" },
  { "-0", 0, 9, "0" },
  { "0.000", 3, 9, "0.000" },
  { "+25.020", 3, 9, "25.020" },
  { "25.020", 0, 9, "25.02" },
  { "  .5\n", 1, 9, "0.5" },
  { "25.", 0, 9, "25" },
  { "-.005", 4, 9, "-0.0050" },
  { "25.399999999999999", 15, 9, "25.4" },
  { "2.5", 0, 0, "2" },
  { "3.5", 0, 0, "4" },
  { "-2.5", 0, 0, "-2" },
  { "-2.51", 0, 0, "-3" },
  { "0.0000000005", 0, 9, "0" },
  { "0.00000000050000000000001", 0, 9, "0.000000001" },
  { "0.0000000015", 0, 9, "0.000000002" },
  { "945.20274658203107", 14, 9, "945.202746582" },
  { "999999999999.999999999999999999999999", 0, 2, "1000000000000" },
  { "000000000000000000012", 0, 9, "12" },
};

static void
test_format (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      TmDecimal decimal = read_decimal (formats[i].text);
      g_autofree char *printed = tm_decimal_format (&decimal, formats[i].least, formats[i].most);

      g_test_message ("%s", formats[i].text);
      g_assert_cmpstr (printed, ==, formats[i].printed);
    }
}

static void
test_refuse (void)
{
  static const char *const texts[]
      = { "",    " ",   "-",     ".",   "1e3", "1,5",           "0x1",
          "1 2", "--1", "1.2.3", "INF", "NaN", "1000000000000", "0.1234567890123456789012345" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      TmDecimal decimal;

      g_test_message ("%s", texts[i]);
      g_assert_false (tm_decimal_read (texts[i], &decimal));
    }
}

static void
test_reckon (void)
{
  TmDecimal nominal = read_decimal ("774.26989746093795");
  TmDecimal deviation = read_decimal ("-0.2");
  TmDecimal inch = read_decimal ("0.0254");
  TmDecimal large = read_decimal ("999999999999.999999999999999999999999");
  TmDecimal result;
  g_autofree char *sum = NULL;
  g_autofree char *product = NULL;

  g_assert_true (tm_decimal_add (&nominal, &deviation, &result));
  sum = tm_decimal_format (&result, 0, 24);
  g_assert_cmpstr (sum, ==, "774.06989746093795");
  g_assert_true (tm_decimal_multiply (&nominal, &inch, &result));
  product = tm_decimal_format (&result, 0, 24);
  g_assert_cmpstr (product, ==, "19.66645539550782393");
  g_assert_false (tm_decimal_multiply (&large, &large, &result));
  g_assert_true (tm_decimal_add (&large, &large, &result));
  g_assert_cmpint (tm_decimal_compare (&deviation, &nominal), <, 0);
  g_assert_cmpint (tm_decimal_compare (&large, &nominal), >, 0);
  g_assert_cmpint (tm_decimal_compare (&nominal, &nominal), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/qif/decimal/format", test_format);
  g_test_add_func ("/qif/decimal/refuse", test_refuse);
  g_test_add_func ("/qif/decimal/reckon", test_reckon);
  return g_test_run ();
}
