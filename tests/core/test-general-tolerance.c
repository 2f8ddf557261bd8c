/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * ISO 2768-1, every cell, and inch title blocks (common practice).  All checks are exact.
 */

#include "core-general-tolerance.h"
#include "support-csv.h"

#define MM  G_GINT64_CONSTANT (1000000000)
#define DEG G_GINT64_CONSTANT (3600000000)

static gint64
read_count (const char *text, TmUnit unit)
{
  TmQuantity quantity;

  g_assert_cmpint (tm_quantity_read (text, unit, &quantity), ==, TM_READ_OK);
  return quantity.count;
}

/* "1deg30min". */
static gint64
read_angle (const char *text)
{
  const char *minutes = strstr (text, "deg") != NULL ? strstr (text, "deg") + 3 : text;

  return (minutes > text ? (gint64)g_ascii_strtoull (text, NULL, 10) * DEG : 0)
         + (gint64)g_ascii_strtoull (minutes, NULL, 10) * DEG / 60;
}

/* "0.5-3" or ">400": just over the lower bound (at it, where the table begins), and the upper. */
static void
choose_sizes (const char *range, gint64 sizes[2])
{
  g_auto (GStrv) ends = g_strsplit (range[0] == '>' ? range + 1 : range, "-", 2);
  gint64 over = read_count (ends[0], TM_UNIT_MM);

  sizes[0] = strcmp (ends[0], "0.5") == 0 ? over : over + 1;
  sizes[1] = ends[1] != NULL ? read_count (ends[1], TM_UNIT_MM) : 20000 * MM;
}

static void
test_iso2768 (void)
{
  static const char *const classes[] = { "f", "m", "c", "v" };
  g_autoptr (SupportCsv) csv = support_csv_load ("general_tolerances.csv");
  guint cells = 0;

  for (guint row = 0; row < csv->rows->len; row++)
    {
      const char *name = support_csv_get (csv, row, "kind");
      TmGeneralKind kind = strcmp (name, "linear") == 0           ? TM_GENERAL_LINEAR
                           : strcmp (name, "radius_chamfer") == 0 ? TM_GENERAL_RADIUS
                                                                  : TM_GENERAL_ANGLE;
      gint64 sizes[2];

      choose_sizes (support_csv_get (csv, row, "range"), sizes);
      for (guint k = 0; k < 4; k++)
        for (guint i = 0; i < 2; i++, cells++)
          {
            const char *cell = support_csv_get (csv, row, classes[k]);
            gint64 got = 0;

            g_test_message ("%s %s %s", name, support_csv_get (csv, row, "range"), classes[k]);
            g_assert_cmpint (tm_general_iso2768 (classes[k][0], kind, sizes[i], &got), ==,
                             strcmp (cell, "-") != 0);
            if (strcmp (cell, "-") == 0)
              continue;
            g_assert_cmpint (got, ==,
                             kind == TM_GENERAL_ANGLE ? read_angle (cell) : read_count (cell, TM_UNIT_MM));
          }
    }
  g_assert_cmpuint (cells, ==, (8 + 3 + 5) * 4 * 2);
}

/* Outside the table; and the older figures of a circulating copy (c: 0.15 and 0.2). */
static void
test_iso2768_edges (void)
{
  gint64 got;

  g_assert_false (tm_general_iso2768 ('m', TM_GENERAL_LINEAR, MM / 2 - 1, &got));
  g_assert_false (tm_general_iso2768 ('m', TM_GENERAL_RADIUS, MM / 2 - 1, &got));
  g_assert_false (tm_general_iso2768 ('m', TM_GENERAL_LINEAR, 4000 * MM + 1, &got));
  g_assert_false (tm_general_iso2768 ('x', TM_GENERAL_LINEAR, MM, &got));
  g_assert_false (tm_general_iso2768 ('\0', TM_GENERAL_LINEAR, MM, &got));
  g_assert_false (tm_general_iso2768 ('m', TM_GENERAL_ANGLE, 0, &got));
  g_assert_true (tm_general_iso2768 ('c', TM_GENERAL_LINEAR, 2 * MM, &got));
  g_assert_cmpint (got, ==, MM / 5);
  g_assert_true (tm_general_iso2768 ('c', TM_GENERAL_LINEAR, 4 * MM, &got));
  g_assert_cmpint (got, ==, MM * 3 / 10);
}

#define BLOCK ".X .1, .XX .01, .XXX .005, .XXXX .0005"

static const struct {
  const char *general;
  TmUnit unit;
  const char *nominal;
  TmCalloutStatus status;
  const char *tolerance;
} find_rows[] = {
  { "ISO 2768-m", TM_UNIT_MM, "40", TM_CALLOUT_OK, "0.3" },
  { "ISO 2768-mK", TM_UNIT_MM, "40", TM_CALLOUT_OK, "0.3" },
  { "ISO 2768 - mK", TM_UNIT_MM, "40", TM_CALLOUT_OK, "0.3" },
  { "ISO 2768-1 m", TM_UNIT_MM, "40", TM_CALLOUT_OK, "0.3" },
  { "ISO 2768-1-f", TM_UNIT_MM, "40", TM_CALLOUT_OK, "0.15" },
  { "iso2768-C", TM_UNIT_MM, "40", TM_CALLOUT_OK, "0.8" },
  { "DIN ISO 2768 v", TM_UNIT_MM, "40", TM_CALLOUT_OK, "1.5" },
  { "DIN EN ISO 2768-fH", TM_UNIT_MM, "40", TM_CALLOUT_OK, "0.15" },
  { "ISO 2768-m", TM_UNIT_MM, "30", TM_CALLOUT_OK, "0.2" },
  { "ISO 2768-m", TM_UNIT_MM, "30.000000001", TM_CALLOUT_OK, "0.3" },
  { "ISO 2768-m", TM_UNIT_MM, "0.4", TM_CALLOUT_GENERAL_RANGE, NULL },
  { "ISO 2768-v", TM_UNIT_MM, "2", TM_CALLOUT_GENERAL_RANGE, NULL },
  { "ISO 2768-f", TM_UNIT_MM, "2500", TM_CALLOUT_GENERAL_RANGE, NULL },
  { "ISO 2768-m", TM_UNIT_IN, "1.5", TM_CALLOUT_GENERAL_RANGE, NULL }, /* the standard is in mm */
  { "ISO 2768", TM_UNIT_MM, "40", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { "ISO 2768-x", TM_UNIT_MM, "40", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { "ISO 2768-mm", TM_UNIT_MM, "40", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { "ISO 2768-m unless stated", TM_UNIT_MM, "40", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { "ISO 22768-m", TM_UNIT_MM, "40", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { NULL, TM_UNIT_MM, "40", TM_CALLOUT_NO_GENERAL, NULL },
  { "", TM_UNIT_MM, "40", TM_CALLOUT_NO_GENERAL, NULL },
  { "  ", TM_UNIT_MM, "40", TM_CALLOUT_NO_GENERAL, NULL },
  { BLOCK, TM_UNIT_IN, "1.5", TM_CALLOUT_OK, ".1" },
  { BLOCK, TM_UNIT_IN, "1.50", TM_CALLOUT_OK, ".01" },
  { BLOCK, TM_UNIT_IN, "1.500", TM_CALLOUT_OK, ".005" },
  { BLOCK, TM_UNIT_IN, "1.5000", TM_CALLOUT_OK, ".0005" },
  { BLOCK, TM_UNIT_IN, ".875", TM_CALLOUT_OK, ".005" },
  { BLOCK, TM_UNIT_IN, "1", TM_CALLOUT_GENERAL_RANGE, NULL },
  { BLOCK, TM_UNIT_IN, "1.50000", TM_CALLOUT_GENERAL_RANGE, NULL },
  { "X ±.5, .X ±.1", TM_UNIT_IN, "40", TM_CALLOUT_OK, ".5" },
  { "X. = .5; X.X = .1", TM_UNIT_IN, "40.0", TM_CALLOUT_OK, ".1" },
  { ".XX +/- .010\n.XXX +/- .005", TM_UNIT_IN, "2.00", TM_CALLOUT_OK, ".01" },
  { ".xx: .01, .xxx: .005", TM_UNIT_IN, "2.000", TM_CALLOUT_OK, ".005" },
  { ".X 0,1; .XX 0,05", TM_UNIT_MM, "12.25", TM_CALLOUT_OK, "0.05" },
  { ".XX .01, angles 1", TM_UNIT_IN, "2.00", TM_CALLOUT_OK, ".01" },
  { ".XX .01, .XX .02", TM_UNIT_IN, "2.00", TM_CALLOUT_GENERAL_UNKNOWN, NULL }, /* said twice */
  { ".XX .01, see note 3", TM_UNIT_IN, "2.00", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { ".XX", TM_UNIT_IN, "2.00", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { ".XX 0", TM_UNIT_IN, "2.00", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { ".XX -.01x", TM_UNIT_IN, "2.00", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { ".XX .01 .XXX .005", TM_UNIT_IN, "2.00", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
  { "\xff", TM_UNIT_IN, "2.00", TM_CALLOUT_GENERAL_UNKNOWN, NULL },
};

static void
test_find (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (find_rows); i++)
    {
      TmQuantity nominal;
      gint64 got = 0;
      g_autofree char *shown = g_strescape (find_rows[i].general != NULL ? find_rows[i].general : "", NULL);

      g_test_message ("\"%s\" for %s", shown, find_rows[i].nominal);
      g_assert_cmpint (tm_quantity_read (find_rows[i].nominal, find_rows[i].unit, &nominal), ==, TM_READ_OK);
      g_assert_cmpint (tm_general_tolerance_find (find_rows[i].general, find_rows[i].unit, TM_GENERAL_LINEAR,
                                                  &nominal, FALSE, &got),
                       ==, find_rows[i].status);
      if (find_rows[i].status == TM_CALLOUT_OK)
        g_assert_cmpint (got, ==, read_count (find_rows[i].tolerance, find_rows[i].unit));
    }
}

static void
test_angles_and_fractions (void)
{
  const char *general = ".XX .01, ANGLES ±1°, FRACTIONS ±1/64";
  TmQuantity right = tm_quantity_new (90 * DEG, TM_UNIT_DEGREE, 0);
  TmQuantity half = tm_quantity_new (12700000000, TM_UNIT_IN, 1);
  gint64 got;

  g_assert_cmpint (tm_general_tolerance_find (general, TM_UNIT_IN, TM_GENERAL_ANGLE, &right, FALSE, &got), ==,
                   TM_CALLOUT_OK);
  g_assert_cmpint (got, ==, DEG);
  g_assert_cmpint (tm_general_tolerance_find (general, TM_UNIT_IN, TM_GENERAL_LINEAR, &half, TRUE, &got), ==,
                   TM_CALLOUT_OK);
  g_assert_cmpint (got, ==, 396875000); /* 1/64 in */
  g_assert_cmpint (tm_general_tolerance_find (BLOCK, TM_UNIT_IN, TM_GENERAL_ANGLE, &right, FALSE, &got), ==,
                   TM_CALLOUT_GENERAL_RANGE);
  g_assert_cmpint (tm_general_tolerance_find (BLOCK, TM_UNIT_IN, TM_GENERAL_LINEAR, &half, TRUE, &got), ==,
                   TM_CALLOUT_GENERAL_RANGE);
  /* ISO 2768-1 goes by the shorter side, which the number does not tell. */
  g_assert_cmpint (
      tm_general_tolerance_find ("ISO 2768-m", TM_UNIT_MM, TM_GENERAL_ANGLE, &right, FALSE, &got), ==,
      TM_CALLOUT_GENERAL_RANGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/general-tolerance/iso2768", test_iso2768);
  g_test_add_func ("/general-tolerance/iso2768-edges", test_iso2768_edges);
  g_test_add_func ("/general-tolerance/find", test_find);
  g_test_add_func ("/general-tolerance/angles-and-fractions", test_angles_and_fractions);
  return g_test_run ();
}
