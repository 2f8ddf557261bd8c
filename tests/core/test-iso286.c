/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * ISO 286-1 and ISO 286-2: every value of the reference tables in tests/data (sources stand in the
 * files), the special rules, and the known errors of tables that circulate.  All checks are exact.
 */

#include "core-iso286.h"
#include "core-quantity.h"
#include "support-csv.h"

#define MM G_GINT64_CONSTANT (1000000000)
#define UM G_GINT64_CONSTANT (1000000)

static gint64
read_count (const char *text, TmUnit unit)
{
  TmQuantity quantity;

  g_assert_cmpint (tm_quantity_read (text, unit, &quantity), ==, TM_READ_OK);
  return quantity.count;
}

static TmIso286Class
make_class (const char *letters, int grade)
{
  TmIso286Class out;
  g_autofree char *digits = grade < 0 ? g_strdup ("01") : g_strdup_printf ("%d", grade);

  g_assert_true (tm_iso286_class_read (letters, digits, &out));
  return out;
}

static gboolean
find_limits (gint64 size, const char *letters, int grade, gint64 *lower, gint64 *upper)
{
  TmIso286Class one = make_class (letters, grade);

  return tm_iso286_deviations (size, &one, lower, upper);
}

static void
assert_limits (gint64 size, const char *letters, int grade, gint64 lower, gint64 upper)
{
  gint64 got_lower = 0, got_upper = 0;

  g_test_message ("%" G_GINT64_FORMAT " pm %s%d", size, letters, grade);
  g_assert_true (find_limits (size, letters, grade, &got_lower, &got_upper));
  g_assert_cmpint (got_lower, ==, lower);
  g_assert_cmpint (got_upper, ==, upper);
}

static void
assert_undefined (gint64 size, const char *letters, int grade)
{
  gint64 lower, upper;

  g_test_message ("%" G_GINT64_FORMAT " pm %s%d is not defined", size, letters, grade);
  g_assert_false (find_limits (size, letters, grade, &lower, &upper));
}

/* Sizes at both ends of a row's range and inside it: just over the lower bound, and the upper bound
 * itself, since a boundary belongs to the range below. */
static void
choose_sizes (const SupportCsv *csv, guint row, gint64 sizes[3])
{
  gint64 over = read_count (support_csv_get (csv, row, "over_mm"), TM_UNIT_MM);

  sizes[0] = over > 0 ? over + 1 : MM + 1; /* up to 1 mm has rules of its own */
  sizes[2] = read_count (support_csv_get (csv, row, "upto_mm"), TM_UNIT_MM);
  sizes[1] = sizes[0] / 2 + sizes[2] / 2;
}

static void
test_grades (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("iso286_grades.csv");
  gint64 sizes[3], got;
  guint checked = 0;

  for (guint row = 0; row < csv->rows->len; row++)
    {
      choose_sizes (csv, row, sizes);
      for (int grade = -1; grade <= 18; grade++)
        {
          g_autofree char *name = grade < 0 ? g_strdup ("IT01") : g_strdup_printf ("IT%d", grade);
          const char *cell = support_csv_get (csv, row, name);

          for (guint i = 0; i < 3; i++)
            if (cell[0] == '\0')
              g_assert_false (tm_iso286_grade (sizes[i], grade, &got));
            else
              {
                g_assert_true (tm_iso286_grade (sizes[i], grade, &got));
                g_assert_cmpint (got, ==, read_count (cell, TM_UNIT_UM));
                checked++;
              }
        }
    }
  g_assert_cmpuint (checked, ==, (21 * 20 - 8 * 2) * 3);
}

/* One shaft column over a span of grades; FALSE in `upper` means the value is the lower deviation. */
static const struct {
  const char *column;
  const char *letters;
  int from, to;
  gboolean upper;
} shaft_columns[] = {
  { "a", "a", 1, 18, TRUE },    { "b", "b", 1, 18, TRUE },    { "c", "c", 1, 18, TRUE },
  { "cd", "cd", 1, 18, TRUE },  { "d", "d", 1, 18, TRUE },    { "e", "e", 1, 18, TRUE },
  { "ef", "ef", 1, 18, TRUE },  { "f", "f", 1, 18, TRUE },    { "fg", "fg", 1, 18, TRUE },
  { "g", "g", 1, 18, TRUE },    { "h", "h", -1, 18, TRUE },   { "j5_j6", "j", 5, 6, FALSE },
  { "j7", "j", 7, 7, FALSE },   { "j8", "j", 8, 8, FALSE },   { "k4to7", "k", 4, 7, FALSE },
  { "m", "m", 1, 18, FALSE },   { "n", "n", 1, 18, FALSE },   { "p", "p", 1, 18, FALSE },
  { "r", "r", 1, 18, FALSE },   { "s", "s", 1, 18, FALSE },   { "t", "t", 1, 18, FALSE },
  { "u", "u", 1, 18, FALSE },   { "v", "v", 1, 18, FALSE },   { "x", "x", 1, 18, FALSE },
  { "y", "y", 1, 18, FALSE },   { "z", "z", 1, 18, FALSE },   { "za", "za", 1, 18, FALSE },
  { "zb", "zb", 1, 18, FALSE }, { "zc", "zc", 1, 18, FALSE },
};

static void
check_cell (const char *cell, gint64 size, const char *letters, int grade, gboolean upper)
{
  gint64 value, tolerance;

  if (cell[0] == '\0')
    {
      assert_undefined (size, letters, grade);
      return;
    }
  value = read_count (cell, TM_UNIT_UM);
  g_assert_true (tm_iso286_grade (size, grade, &tolerance));
  assert_limits (size, letters, grade, upper ? value - tolerance : value, upper ? value : value + tolerance);
}

static void
test_shafts (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("iso286_shafts.csv");
  gint64 sizes[3];

  g_assert_cmpuint (csv->rows->len, ==, 25);
  for (guint row = 0; row < csv->rows->len; row++)
    {
      choose_sizes (csv, row, sizes);
      for (gsize k = 0; k < G_N_ELEMENTS (shaft_columns); k++)
        for (int grade = shaft_columns[k].from; grade <= shaft_columns[k].to; grade++)
          for (guint i = 0; i < 3; i++)
            check_cell (support_csv_get (csv, row, shaft_columns[k].column), sizes[i],
                        shaft_columns[k].letters, grade, shaft_columns[k].upper);
    }
}

/* A to H: the table's EI at every grade. */
static void
check_clearance_holes (const SupportCsv *csv, guint row, gint64 size)
{
  static const char *const columns[] = { "A", "B", "C", "CD", "D", "E", "EF", "F", "FG", "G", "H" };

  for (gsize k = 0; k < G_N_ELEMENTS (columns); k++)
    for (int grade = 1; grade <= 18; grade++)
      check_cell (support_csv_get (csv, row, columns[k]), size, columns[k], grade, FALSE);
}

/* The table's delta of the grade; none is given outside IT3 to IT8. */
static gint64
read_delta (const SupportCsv *csv, guint row, int grade)
{
  g_autofree char *name = g_strdup_printf ("d%d", grade);

  return read_count (support_csv_get (csv, row, name), TM_UNIT_UM);
}

static void
check_with_delta (const SupportCsv *csv, guint row, const char *column, gint64 size, const char *letters,
                  int grade)
{
  const char *cell = support_csv_get (csv, row, column);
  gint64 es, tolerance;

  if (cell[0] == '\0')
    {
      assert_undefined (size, letters, grade);
      return;
    }
  es = read_count (cell, TM_UNIT_UM) + read_delta (csv, row, grade);
  if (strcmp (letters, "M") == 0 && grade == 6 && size > 250 * MM && size <= 315 * MM)
    es = -9 * UM; /* ISO 286-1, footnote: the one exception */
  g_assert_true (tm_iso286_grade (size, grade, &tolerance));
  assert_limits (size, letters, grade, es - tolerance, es);
}

static void
check_interference_holes (const SupportCsv *csv, guint row, gint64 size)
{
  static const char *const columns[] = { "P", "R", "S", "T", "U", "V", "X", "Y", "Z", "ZA", "ZB", "ZC" };

  for (int grade = 3; grade <= 8; grade++)
    {
      check_with_delta (csv, row, "K_le8", size, "K", grade);
      check_with_delta (csv, row, "M_le8", size, "M", grade);
      check_with_delta (csv, row, "N_le8", size, "N", grade);
    }
  for (int grade = 9; grade <= 16; grade++)
    {
      check_cell (support_csv_get (csv, row, "M_gt8"), size, "M", grade, TRUE);
      check_cell (support_csv_get (csv, row, "N_gt8"), size, "N", grade, TRUE);
      check_cell (row == 0 ? "0" : "", size, "K", grade, TRUE);
    }
  for (gsize k = 0; k < G_N_ELEMENTS (columns); k++)
    for (int grade = 3; grade <= 18; grade++)
      if (grade <= 7)
        check_with_delta (csv, row, columns[k], size, columns[k], grade);
      else
        check_cell (support_csv_get (csv, row, columns[k]), size, columns[k], grade, TRUE);
}

static void
test_holes (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("iso286_holes.csv");
  gint64 sizes[3];

  g_assert_cmpuint (csv->rows->len, ==, 25);
  for (guint row = 0; row < csv->rows->len; row++)
    {
      choose_sizes (csv, row, sizes);
      for (guint i = 0; i < 3; i++)
        {
          check_clearance_holes (csv, row, sizes[i]);
          check_interference_holes (csv, row, sizes[i]);
          check_cell (support_csv_get (csv, row, "J6"), sizes[i], "J", 6, TRUE);
          check_cell (support_csv_get (csv, row, "J7"), sizes[i], "J", 7, TRUE);
          check_cell (support_csv_get (csv, row, "J8"), sizes[i], "J", 8, TRUE);
        }
    }
}

static void
test_over_500 (void)
{
  static const char *const columns[] = { "D", "E", "F", "G", "H", "K", "M", "N", "P", "R", "S", "T", "U" };
  g_autoptr (SupportCsv) csv = support_csv_load ("iso286_over_500.csv");
  gint64 sizes[3], tolerance;

  g_assert_cmpuint (csv->rows->len, ==, 16);
  for (guint row = 0; row < csv->rows->len; row++)
    {
      choose_sizes (csv, row, sizes);
      for (gsize k = 0; k < G_N_ELEMENTS (columns); k++)
        for (int grade = 6; grade <= 16; grade++)
          for (guint i = 0; i < 3; i++)
            {
              gboolean clearance = columns[k][0] <= 'H';
              g_autofree char *small = g_ascii_strdown (columns[k], -1);
              gint64 value = read_count (support_csv_get (csv, row, columns[k]), TM_UNIT_UM);

              if (strcmp (columns[k], "K") == 0 && grade > 8)
                assert_undefined (sizes[i], "K", grade);
              else
                check_cell (support_csv_get (csv, row, columns[k]), sizes[i], columns[k], grade, !clearance);
              g_assert_true (tm_iso286_grade (sizes[i], grade, &tolerance));
              assert_limits (sizes[i], small, grade, clearance ? -value - tolerance : -value,
                             clearance ? -value : -value + tolerance);
            }
    }
}

/* Limits as printed in other tables than those that the program's figures come from. */
static void
test_spot_limits (void)
{
  g_autoptr (SupportCsv) csv = support_csv_load ("iso286_spot_limits.csv");

  g_assert_cmpuint (csv->rows->len, ==, 346);
  for (guint row = 0; row < csv->rows->len; row++)
    {
      const char *text = support_csv_get (csv, row, "class");
      gsize n = strcspn (text, "0123456789");
      g_autofree char *letters = g_strndup (text, n);

      assert_limits (read_count (support_csv_get (csv, row, "size_mm"), TM_UNIT_MM), letters,
                     (int)g_ascii_strtoull (text + n, NULL, 10),
                     read_count (support_csv_get (csv, row, "lower_um"), TM_UNIT_UM),
                     read_count (support_csv_get (csv, row, "upper_um"), TM_UNIT_UM));
    }
}

/* ISO 286-2:1988/Cor.1:2006: the four values it puts right, at both ends of their ranges. */
static void
test_corrigendum (void)
{
  assert_limits (355 * MM, "A", 13, 1200 * UM, 2090 * UM);
  assert_limits (315 * MM + 1, "A", 13, 1200 * UM, 2090 * UM);
  assert_limits (120 * MM, "E", 8, 72 * UM, 126 * UM);
  assert_limits (80 * MM + 1, "E", 8, 72 * UM, 126 * UM);
  assert_limits (30 * MM, "R", 10, -112 * UM, -28 * UM);
  assert_limits (18 * MM + 1, "R", 10, -112 * UM, -28 * UM);
  assert_limits (315 * MM, "f", 9, -186 * UM, -56 * UM);
  assert_limits (250 * MM + 1, "f", 9, -186 * UM, -56 * UM);
}

/* Errors of open tables and programs that circulate; each row is the right value. */
static void
test_circulating_errors (void)
{
  gint64 tolerance;

  g_assert_true (tm_iso286_grade (40 * MM, 15, &tolerance));
  g_assert_cmpint (tolerance, ==, 1000 * UM);             /* printed as 100 */
  assert_limits (240 * MM, "U", 8, -356 * UM, -284 * UM); /* sign lost */
  assert_limits (2 * MM, "P", 7, -16 * UM, -6 * UM);      /* delta added below 3 mm */
  assert_limits (3 * MM, "P", 7, -16 * UM, -6 * UM);
  assert_limits (25 * MM, "P", 7, -35 * UM, -14 * UM);   /* textbook's worked line: -22 + 8 */
  assert_limits (150 * MM, "C", 11, 210 * UM, 460 * UM); /* with the shaft's sign */
  /* M6 is special over 250 up to 315, not from 250: -17 + 9, -9, -9, -21 + 11. */
  assert_limits (250 * MM, "M", 6, -37 * UM, -8 * UM);
  assert_limits (250 * MM + 1, "M", 6, -41 * UM, -9 * UM);
  assert_limits (315 * MM, "M", 6, -41 * UM, -9 * UM);
  assert_limits (315 * MM + 1, "M", 6, -46 * UM, -10 * UM);
  assert_limits (300 * MM, "M", 7, -52 * UM, 0);
}

static void
test_js (void)
{
  assert_limits (25 * MM, "JS", 7, -21 * UM / 2, 21 * UM / 2); /* unrounded: 10.5, not 10 */
  assert_limits (40 * MM, "js", 7, -25 * UM / 2, 25 * UM / 2);
  assert_limits (25 * MM, "js", 9, -26 * UM, 26 * UM);
  assert_limits (15 * MM, "js", 9, -43 * UM / 2, 43 * UM / 2); /* a textbook rounds it to 21 */
  assert_limits (2 * MM, "JS", -1, -150000, 150000);           /* half of 0.3 µm */
  assert_limits (600 * MM, "JS", 7, -35 * UM, 35 * UM);
}

static void
test_k_by_grade (void)
{
  assert_limits (25 * MM, "k", 3, 0, 4 * UM);
  assert_limits (25 * MM, "k", 4, 2 * UM, 8 * UM);
  assert_limits (25 * MM, "k", 7, 2 * UM, 23 * UM);
  assert_limits (25 * MM, "k", 8, 0, 33 * UM);
  assert_limits (2 * MM, "K", 9, -25 * UM, 0);
  assert_limits (3 * MM, "K", 10, -40 * UM, 0);
}

static const struct {
  gint64 size;
  const char *letters;
  int grade;
} undefined_rows[] = {
  { 0, "H", 7 },          { -1, "H", 7 },        { 3150 * MM + 1, "H", 7 },
  { MM, "A", 9 },                                                 /* a, b, N above IT8: not up to 1 mm */
  { MM, "b", 9 },         { MM, "N", 9 },        { MM, "H", 14 }, /* IT14 to IT18: not up to 1 mm */
  { 25 * MM, "K", 9 },    { 25 * MM, "J", 5 },   { 25 * MM, "J", 9 },
  { 25 * MM, "j", 4 },    { 25 * MM, "j", 8 },                        /* up to 3 mm only */
  { 3 * MM + 1, "j", 8 }, { 60 * MM, "CD", 8 },                       /* to 50 mm */
  { 60 * MM, "ef", 6 },   { 60 * MM, "FG", 6 },  { 24 * MM, "t", 6 }, /* from over 24 mm */
  { 14 * MM, "V", 7 },                                                /* from over 14 mm */
  { 18 * MM, "y", 6 },                                                /* from over 18 mm */
  { 25 * MM, "P", 2 },                                                /* no delta below IT3 */
  { 25 * MM, "M", 1 },    { 600 * MM, "A", 9 }, /* above 500 mm only D to H, JS, K to U, IT6 to IT16 */
  { 600 * MM, "c", 11 },  { 600 * MM, "J", 7 },  { 600 * MM, "X", 7 },
  { 600 * MM, "G", 5 },   { 600 * MM, "d", 17 }, { 600 * MM, "H", 0 },
};

static void
test_undefined (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (undefined_rows); i++)
    assert_undefined (undefined_rows[i].size, undefined_rows[i].letters, undefined_rows[i].grade);
  /* …and their neighbours are. */
  assert_limits (MM + 1, "A", 9, 270 * UM, 295 * UM);
  assert_limits (MM, "N", 8, -18 * UM, -4 * UM);
  assert_limits (MM + 1, "H", 14, 0, 250 * UM);
  assert_limits (24 * MM + 1, "t", 6, 41 * UM, 54 * UM);
  assert_limits (3 * MM, "j", 8, -6 * UM, 8 * UM);
  assert_limits (500 * MM, "X", 7, -860 * UM, -797 * UM);
}

static const struct {
  const char *letters, *grade;
  gboolean known;
} class_rows[] = {
  { "H", "7", TRUE },    { "h", "6", TRUE },    { "js", "13", TRUE }, { "JS", "01", TRUE },
  { "ZC", "18", TRUE },  { "fg", "5", TRUE },   { "H", "0", TRUE },   { "Js", "7", FALSE },
  { "jS", "7", FALSE },  { "I", "7", FALSE },   { "L", "7", FALSE },  { "O", "7", FALSE },
  { "Q", "7", FALSE },   { "w", "7", FALSE },   { "ZD", "7", FALSE }, { "H", "19", FALSE },
  { "H", "007", FALSE }, { "H", "", FALSE },    { "", "7", FALSE },   { "H", "7a", FALSE },
  { "HHH", "7", FALSE }, { "H", "100", FALSE }, { "H", "02", FALSE }, { "7", "7", FALSE },
  { "H", "-1", FALSE },
};

static void
test_class_read (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (class_rows); i++)
    {
      TmIso286Class out;

      g_test_message ("“%s” “%s”", class_rows[i].letters, class_rows[i].grade);
      g_assert_cmpint (tm_iso286_class_read (class_rows[i].letters, class_rows[i].grade, &out), ==,
                       class_rows[i].known);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/iso286/grades", test_grades);
  g_test_add_func ("/iso286/shafts", test_shafts);
  g_test_add_func ("/iso286/holes", test_holes);
  g_test_add_func ("/iso286/over-500", test_over_500);
  g_test_add_func ("/iso286/spot-limits", test_spot_limits);
  g_test_add_func ("/iso286/corrigendum", test_corrigendum);
  g_test_add_func ("/iso286/circulating-errors", test_circulating_errors);
  g_test_add_func ("/iso286/js", test_js);
  g_test_add_func ("/iso286/k-by-grade", test_k_by_grade);
  g_test_add_func ("/iso286/undefined", test_undefined);
  g_test_add_func ("/iso286/class-read", test_class_read);
  return g_test_run ();
}
