/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fits by class: limits and clearance (ISO 286-1).  All checks are exact.
 */

#include "core-callout.h"
#include "support-csv.h"

static gint64
read_count (const char *text, TmUnit unit)
{
  TmQuantity quantity;

  g_assert_cmpint (tm_quantity_read (text, unit, &quantity), ==, TM_READ_OK);
  return quantity.count;
}

/* Every fit of the reference table; 10 P7/h6 and 12 N7/h6 are also printed in ANSI B4.2, the
 * interference of 50 H7/s6 in a textbook. */
static void
test_reference (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("iso286_fits.csv");

  g_assert_cmpuint (csv->rows->len, ==, 11);
  for (guint row = 0; row < csv->rows->len; row++)
    {
      g_autofree char *text
          = g_strdup_printf ("%s %s/%s", support_csv_get (csv, row, "size_mm"),
                             support_csv_get (csv, row, "hole"), support_csv_get (csv, row, "shaft"));
      TmFit fit = tm_fit_read (text);

      g_test_message ("%s", text);
      g_assert_cmpint (fit.status, ==, TM_CALLOUT_OK);
      g_assert_cmpint (fit.clearance_max, ==,
                       read_count (support_csv_get (csv, row, "max_clear_um"), TM_UNIT_UM));
      g_assert_cmpint (fit.clearance_min, ==,
                       read_count (support_csv_get (csv, row, "min_clear_um"), TM_UNIT_UM));
      g_assert_cmpint (fit.hole_upper, ==,
                       read_count (support_csv_get (csv, row, "hole_max_mm"), TM_UNIT_MM));
      g_assert_cmpint (fit.hole_lower, ==,
                       read_count (support_csv_get (csv, row, "hole_min_mm"), TM_UNIT_MM));
      g_assert_cmpint (fit.shaft_upper, ==,
                       read_count (support_csv_get (csv, row, "shaft_max_mm"), TM_UNIT_MM));
      g_assert_cmpint (fit.shaft_lower, ==,
                       read_count (support_csv_get (csv, row, "shaft_min_mm"), TM_UNIT_MM));
    }
}

/* One fit in every way it is written, and its mirror with the same interference. */
static void
test_spellings (void)
{
  static const char *const texts[]
      = { "25 H7/p6", "25 P7/h6",     "Ø25 H7/p6",   "⌀25H7/p6",    "25 H7 / 25 p6", "Ø25 H7/Ø25 p6",
          "25 p6/H7", "25.000 H7/p6", "25 mm H7/p6", "  25 H7-p6 ", "dia 25 H7/p6",  "25,0 H7/p6" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      TmFit fit = tm_fit_read (texts[i]);

      g_test_message ("%s", texts[i]);
      g_assert_cmpint (fit.status, ==, TM_CALLOUT_OK);
      g_assert_cmpint (fit.nominal, ==, G_GINT64_CONSTANT (25000000000));
      g_assert_cmpint (fit.clearance_min, ==, -35000000);
      g_assert_cmpint (fit.clearance_max, ==, -1000000);
    }
}

static void
test_refusals (void)
{
  static const struct {
    const char *text;
    TmCalloutStatus status;
  } rows[] = {
    { NULL, TM_CALLOUT_EMPTY },
    { "", TM_CALLOUT_EMPTY },
    { " \n", TM_CALLOUT_EMPTY },
    { "25", TM_CALLOUT_NOT_READ },
    { "25 H7", TM_CALLOUT_NOT_READ },
    { "25 H7/", TM_CALLOUT_NOT_READ },
    { "25 H7/H7", TM_CALLOUT_NOT_READ },
    { "25 p6/h6", TM_CALLOUT_NOT_READ },
    { "25 H7/26 p6", TM_CALLOUT_NOT_READ },
    { "25 H7/p6 press", TM_CALLOUT_NOT_READ },
    { "H7/p6", TM_CALLOUT_NOT_READ },
    { "Ø H7/p6", TM_CALLOUT_NOT_READ },
    { "25 H7/Ø p6", TM_CALLOUT_NOT_READ },
    { "25 H7/w6", TM_CALLOUT_CLASS_UNKNOWN },
    { "25 H7/p19", TM_CALLOUT_CLASS_UNKNOWN },
    { "20 H7/t6", TM_CALLOUT_CLASS_UNKNOWN },
    { "4000 H7/p6", TM_CALLOUT_CLASS_UNKNOWN },
    { "0 H7/p6", TM_CALLOUT_CLASS_UNKNOWN },
    { "1 in H7/p6", TM_CALLOUT_UNIT_WRONG },
    { "25.0000000001 H7/p6", TM_CALLOUT_TOO_FINE },
    { "25 H7/p6\xff", TM_CALLOUT_NOT_READ },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *shown = g_strescape (rows[i].text != NULL ? rows[i].text : "", NULL);

      g_test_message ("\"%s\"", shown);
      g_assert_cmpint (tm_fit_read (rows[i].text).status, ==, rows[i].status);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit/reference", test_reference);
  g_test_add_func ("/fit/spellings", test_spellings);
  g_test_add_func ("/fit/refusals", test_refusals);
  return g_test_run ();
}
