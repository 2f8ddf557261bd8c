/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Under the simple rule a reading equal to a limit is in, and one picometre beyond it is out: every
 * limit from 0.0001 to 20 in by 0.0001, and from 0.001 to 500 mm by 0.001, through the reader of
 * typed numbers and the judgement.  Exact: no tolerance anywhere.  (ASME Y14.5, ASTM E29 absolute
 * method: limits as if continued with zeros.)
 */

#include <string.h>

#include "judge-support.h"

/* A number as digits with @decimals of them after the point. */
static void
write_decimal (char *out, gsize size, gint64 digits, guint decimals)
{
  gint64 scale = 1;

  for (guint i = 0; i < decimals; i++)
    scale *= 10;
  g_snprintf (out, size, "%" G_GINT64_FORMAT ".%0*" G_GINT64_FORMAT, digits / scale, (int)decimals,
              digits % scale);
}

static TmQuantity
read_number (const char *text, TmUnit unit)
{
  TmQuantity value = TM_QUANTITY_NONE;

  g_assert_cmpint (tm_quantity_read (text, unit, &value), ==, TM_READ_OK);
  return value;
}

/* A count of picometres as a person would type it in millimetres. */
static TmQuantity
read_picometres (gint64 count)
{
  char text[48];

  write_decimal (text, sizeof text, count, 9);
  strncat (text, " mm", sizeof text - strlen (text) - 1);
  return read_number (text, TM_UNIT_MM);
}

typedef struct {
  TmJob *job;
  TmFeature *feature;
  TmReading *reading;
} Bench;

static Bench
set_up (TmUnit unit)
{
  Bench bench = { make_job (TM_DECISION_SIMPLE), NULL, NULL };

  /* An error limit of a nanometre: 4:1 is met by every band here, so that the limits decide. */
  add_gauge (bench.job, "G1", NULL, "0.000001");
  bench.feature = add_feature (bench.job, "1", TM_KIND_BORE, NULL, NULL, "G1");
  bench.feature->unit = unit;
  bench.reading = read_size (bench.job, bench.feature, "", "1", "");
  return bench;
}

static TmVerdict
judge (const Bench *bench, TmQuantity value)
{
  g_auto (TmJudgement) judgement = { 0 };

  bench->reading->value = value;
  tm_judge (bench->job, first_piece (bench->job), bench->feature, 1, &judgement);
  g_assert_false (judgement.settles == TM_SETTLES_CANNOT || judgement.settles == TM_SETTLES_UNKNOWN);
  return judgement.verdict;
}

/* The band from @lower to @upper as typed: at each limit in, one picometre beyond each out. */
static void
check_band (const Bench *bench, const char *lower, const char *upper)
{
  TmUnit unit = bench->feature->unit;
  TmQuantity low = read_number (lower, unit), high = read_number (upper, unit);

  bench->feature->lower = low;
  bench->feature->upper = high;
  g_assert_cmpint (judge (bench, read_number (upper, unit)), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (bench, read_picometres (high.count)), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (bench, read_picometres (high.count + 1)), ==, TM_VERDICT_OUT);
  g_assert_cmpint (judge (bench, read_number (lower, unit)), ==, TM_VERDICT_IN);
  if (low.count > 0)
    g_assert_cmpint (judge (bench, read_picometres (low.count - 1)), ==, TM_VERDICT_OUT);
}

static void
check_all (TmUnit unit, guint decimals, gint64 n, gint64 counts_per_step)
{
  Bench bench = set_up (unit);

  for (gint64 i = 1; i <= n; i++)
    {
      char lower[32], upper[32];

      write_decimal (lower, sizeof lower, i - 1, decimals);
      write_decimal (upper, sizeof upper, i, decimals);
      check_band (&bench, lower, upper);
      g_assert_cmpint (bench.feature->upper.count, ==, i * counts_per_step);
    }
  tm_job_free (bench.job);
}

static void
test_inch (void)
{
  check_all (TM_UNIT_IN, 4, 200000, 2540000);
}

static void
test_millimetre (void)
{
  check_all (TM_UNIT_MM, 3, 500000, 1000000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/limits-exhaustive/inch", test_inch);
  g_test_add_func ("/core/limits-exhaustive/millimetre", test_millimetre);
  return g_test_run ();
}
