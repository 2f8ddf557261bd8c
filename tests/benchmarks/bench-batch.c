/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-batch: whether what the program says of a batch is true of simulated ones: how long charts run before
 * they speak, when a wearing tool meets its limit, and what corrections cost or save.
 */

#include <math.h>
#include <stdio.h>

#include "core-run-rules.h"
#include "support-batch.h"
#include "support-csv.h"

#define N_RUNS  10000
#define N_TOOLS 10000
#define N_LOTS  200

/* Of more than a hundred figures none should lie further from the table than this many standard errors. */
#define MOST_ERRORS 4.5

static gboolean failed;

static const char *
check (gboolean good)
{
  failed = failed || !good;
  return good ? "" : "   MISSED";
}

/* -------- Run lengths -------- */

#define BIT(rule) TM_RULE_BIT (TM_RULE_##rule)
#define ALL_FOUR  (BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) | BIT (4_OF_5_BEYOND_1S) | BIT (8_ONE_SIDE))

static const struct {
  const char *what, *file, *column;
  SupportChartCase given;
} charts[] = {
  { "individuals, beyond 3 sigma", "run_rule_lengths.csv", "pub_C1", { .rules = BIT (BEYOND_3S) } },
  { "and 2 of 3 beyond 2 sigma",
    "run_rule_lengths.csv",
    "pub_C12",
    { .rules = BIT (BEYOND_3S) | BIT (2_OF_3_BEYOND_2S) } },
  { "and 4 of 5 beyond 1 sigma",
    "run_rule_lengths.csv",
    "pub_C13",
    { .rules = BIT (BEYOND_3S) | BIT (4_OF_5_BEYOND_1S) } },
  { "and 8 on one side", "run_rule_lengths.csv", "pub_C14", { .rules = BIT (BEYOND_3S) | BIT (8_ONE_SIDE) } },
  { "all four", "run_rule_lengths.csv", "rc_WE_all4", { .rules = ALL_FOUR } },
  { "all four, 9 on one side",
    "run_rule_lengths.csv",
    "rc_1_5_6_2",
    { .rules = (ALL_FOUR & ~BIT (8_ONE_SIDE)) | BIT (9_ONE_SIDE) } },
  { "moving average, weight 0.5, fixed limits",
    "ewma_lengths.csv",
    "pub_l0.50_L3.071",
    { .chart = SUPPORT_CHART_EWMA, .lambda = 0.5, .l = 3.071 } },
  { "cumulative sum, k 0.5, h 4",
    "cusum_lengths.csv",
    "pub_h4",
    { .chart = SUPPORT_CHART_CUSUM, .k = 0.5, .h = 4 } },
  { "cumulative sum, k 0.5, h 5",
    "cusum_lengths.csv",
    "pub_h5",
    { .chart = SUPPORT_CHART_CUSUM, .k = 0.5, .h = 5 } },
};

/* Half of the last digit that the table prints. */
static double
find_rounding (const char *printed)
{
  const char *point = strchr (printed, '.');

  return point == NULL ? 0.5 : 0.5 * pow (10, -(double)strlen (point + 1));
}

static void
print_length (const char *shift, const char *printed, double found, double se)
{
  double away = MAX (0, fabs (found - g_ascii_strtod (printed, NULL)) - find_rounding (printed)) / se;

  printf ("    shift %-5s table %8s   simulated %9.3f ± %-7.3f %5.1f%s\n", shift, printed, found, se, away,
          check (away < MOST_ERRORS));
}

static void
print_lengths (void)
{
  printf ("\nRun lengths, %d runs each: points until the chart speaks; distance in standard errors\n",
          N_RUNS);
  for (guint i = 0; i < G_N_ELEMENTS (charts); i++)
    {
      g_autoptr (SupportCsv) csv = support_csv_load (charts[i].file);

      printf ("  %s\n", charts[i].what);
      for (guint row = 0; row < csv->rows->len; row += row == 0 ? 1 : 2)
        {
          const char *shift = support_csv_get (csv, row, "shift_sigma");
          const char *printed = support_csv_get (csv, row, charts[i].column);
          double se, found;

          if (*printed == '\0')
            continue;
          found = support_run_length (&charts[i].given, g_ascii_strtod (shift, NULL), N_RUNS,
                                      1000 * i + row + 1, &se);
          print_length (shift, printed, found, se);
        }
      fflush (stdout);
    }
}

/* -------- Wearing tools -------- */

static void
print_tools (const char *what, SupportWear wear)
{
  double share = 100.0 * wear.held / MAX (wear.given, 1);

  printf ("  %-34s mean slope %.1f standard errors; forecast given %6.2f %%; said to have shifted %5.2f %%; "
          "interval holds the true piece %6.2f %%   wanted 92 to 97 %%%s\n",
          what, wear.ratio, 100.0 * wear.given / wear.n, 100.0 * wear.changed / wear.n, share,
          check (share >= 92 && share <= 97));
  fflush (stdout);
}

/* -------- Corrections -------- */

static const SupportMachine machines[] = {
  { "tool wears 0.05 a piece", 0, 0.05, 0 }, { "tool wears 0.1 a piece", 0, 0.1, 0 },
  { "tool wears 0.2 a piece", 0, 0.2, 0 },   { "wears 0.1, set up 3 off", 3, 0.1, 0 },
  { "wears 0.05, shifts by 3", 0, 0.05, 3 }, { "set up 3 off, steady", 3, 0, 0 },
  { "on target and steady", 0, 0, 0 },
};

/* A machine that needs no correction is best left alone, and no rule that looks at its pieces can do better:
 * there it may only cost little. */
static gboolean
is_good (const SupportMachine *machine, const double *spread)
{
  gboolean needs = fabs (machine->wear) + fabs (machine->set_up) + fabs (machine->shift) > 0;

  return spread[SUPPORT_RULE] < spread[SUPPORT_EVERY]
         && spread[SUPPORT_RULE] < (needs ? 1 : 1.06) * spread[SUPPORT_NEVER];
}

static void
print_corrections (void)
{
  printf (
      "\nCorrections, %d lots of 60 pieces: root mean square distance from the target, in the scatter of one "
      "piece\n  %-28s %9s %9s %9s %14s\n",
      N_LOTS, "", "never", "every one", "the rule", "corrections");
  for (guint i = 0; i < G_N_ELEMENTS (machines); i++)
    {
      double spread[SUPPORT_N_POLICIES], corrections = 0;

      for (guint policy = 0; policy < SUPPORT_N_POLICIES; policy++)
        spread[policy] = support_correct (&machines[i], policy, N_LOTS, 77 + i, &corrections);
      printf ("  %-28s %9.3f %9.3f %9.3f %14.1f%s\n", machines[i].what, spread[SUPPORT_NEVER],
              spread[SUPPORT_EVERY], spread[SUPPORT_RULE], corrections,
              check (is_good (&machines[i], spread)));
      fflush (stdout);
    }
}

int
main (void)
{
  print_lengths ();
  printf ("\n%d wearing tools with a clear slope\n", N_TOOLS);
  print_tools ("line and forecast", support_wear_lines (N_TOOLS, 41));
  print_tools ("a job with readings and a guard", support_wear_batches (N_TOOLS, 42));
  print_corrections ();
  return failed ? 1 : 0;
}
