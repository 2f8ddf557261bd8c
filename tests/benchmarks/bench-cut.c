/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-cut: 100,000 simulated runs from a rough bore to a finished one, by the plan and by two plain rules
 * of a careful hand: cuts, and how the runs ended.
 */

#include <glib.h>
#include <math.h>
#include <stdio.h>
#include <time.h>

#include "support-cut-run.h"

#define N_RUNS  100000
#define N_CASES 12
/* A part of them, where nothing but the number of cuts is compared, or nothing is promised at all. */
#define FEW  6
#define SEED 20261130

/* What the simulation itself cannot tell: standard deviations of a share. */
#define NOISE 3.0

static guint n_each; /* runs of one case */
static gboolean failed;
static double plan_seconds; /* of the processor, for runs by the plan */
static guint n_plans;

/* -------- Cases -------- */

static void
fill_cases (SupportCutCase *cases)
{
  static const struct {
    const char *name;
    double shared, own;
  } gauges[] = { { "fine", 0.5, 0.3 }, { "ordinary", 1.5, 0.8 }, { "coarse", 3, 1.5 } };
  static const double bands[] = { 25, 52 }, tapers[] = { 1, 5 };
  guint n = 0;

  for (gsize g = 0; g < G_N_ELEMENTS (gauges); g++)
    for (gsize b = 0; b < G_N_ELEMENTS (bands); b++)
      for (gsize t = 0; t < G_N_ELEMENTS (tapers); t++)
        cases[n++] = (SupportCutCase) { .name = gauges[g].name,
                                        .band = bands[b],
                                        .shared = gauges[g].shared,
                                        .own = gauges[g].own,
                                        .n_stations = 2,
                                        .taper = tapers[t],
                                        .graduation = 2,
                                        .metal = 200,
                                        .scatter_by = 1 };
  g_assert_cmpuint (n, ==, N_CASES);
}

/* -------- Lines -------- */

static double
get_share (guint count, const SupportCutTally *tally)
{
  return (double)count / tally->runs;
}

static void
print_head (const char *title)
{
  printf ("\n%s\n  %-9s %4s %5s  %-28s %8s %8s %9s %8s\n", title, "gauge", "band", "taper", "policy", "cuts",
          "in", "gone", "left");
}

static void
print_line (const SupportCutCase *given, const char *policy, const SupportCutTally *tally, const char *note)
{
  printf ("  %-9s %4.0f %5.0f  %-28s %8.2f %7.2f%% %8.3f%% %7.2f%%%s\n", given->name, given->band,
          given->taper, policy, (double)tally->cuts / tally->runs, 100 * get_share (tally->in, tally),
          100 * get_share (tally->gone, tally), 100 * get_share (tally->left, tally), note);
  fflush (stdout);
}

static const char *
check (gboolean good, const char *what)
{
  failed = failed || !good;
  return good ? "" : what;
}

/* -------- What is promised -------- */

/* Metal gone per run is no more than was accepted, and as often as the plan itself reckoned. */
static void
run_plan (const SupportCutCase *given, double risk, guint32 seed, SupportCutTally *out)
{
  g_autofree char *policy = g_strdup_printf ("plan, risk %.2f %%", 100 * risk);
  double gone, spent, noise;
  const char *note;

  plan_seconds -= (double)clock () / CLOCKS_PER_SEC;
  support_cut_run (given, SUPPORT_CUT_PLAN, risk, n_each, seed, out);
  plan_seconds += (double)clock () / CLOCKS_PER_SEC;
  n_plans += out->cuts + out->runs;
  gone = get_share (out->gone, out);
  spent = out->spent / out->runs;
  noise = NOISE * sqrt (MAX (spent, 1.0 / out->runs) / out->runs);
  note = check (gone <= risk + NOISE * sqrt (risk / out->runs), "   MORE THAN ACCEPTED");
  print_line (given, policy, out, note);
  if (*check (fabs (gone - spent) <= noise, "x") != '\0')
    printf ("    RECKONED %.3f %%\n", 100 * spent);
}

/* At the scrap of the halving hand: fewer cuts. */
static void
run_equal (const SupportCutCase *given, const SupportCutTally *half, guint32 seed)
{
  double risk = MAX (get_share (half->gone, half), 1.0 / half->runs);
  g_autofree char *policy = g_strdup_printf ("plan, risk of half: %.2f %%", 100 * risk);
  SupportCutTally tally;

  support_cut_run (given, SUPPORT_CUT_PLAN, risk, n_each / FEW, seed, &tally);
  print_line (given, policy, &tally,
              check ((double)tally.cuts / tally.runs < (double)half->cuts / half->runs, "   NOT FEWER"));
}

static void
run_case (const SupportCutCase *given, guint32 seed)
{
  SupportCutTally all, half, bold, careful;

  support_cut_run (given, SUPPORT_CUT_ALL, 0, n_each, seed, &all);
  print_line (given, "dial all that is left", &all, "");
  support_cut_run (given, SUPPORT_CUT_HALF, 0, n_each, seed, &half);
  print_line (given, "dial half of what is left", &half, "");
  run_equal (given, &half, seed);
  run_plan (given, 0.01, seed, &bold);
  run_plan (given, 0.001, seed, &careful);
  if (*check (get_share (bold.gone, &bold) < get_share (all.gone, &all), "x") != '\0')
    printf ("    NOT LESS SCRAP THAN ALL\n");
}

/* -------- What is not -------- */

static void
run_told (const SupportCutCase *cases, const char *title, double scatter_by, double response_by, guint known)
{
  print_head (title);
  for (guint i = 0; i < N_CASES; i++)
    {
      SupportCutCase given = cases[i];
      SupportCutTally all, half, plan;

      given.scatter_by = scatter_by;
      given.response_by = response_by;
      given.known = known;
      support_cut_run (&given, SUPPORT_CUT_ALL, 0, n_each / FEW, SEED, &all);
      support_cut_run (&given, SUPPORT_CUT_HALF, 0, n_each / FEW, SEED, &half);
      support_cut_run (&given, SUPPORT_CUT_PLAN, 0.01, n_each / FEW, SEED, &plan);
      print_line (&given, "dial all that is left", &all, "");
      print_line (&given, "dial half of what is left", &half, "");
      print_line (&given, "plan, risk 1 %", &plan, "");
    }
}

/* bench-cut [RUNS]: fewer or more of them than 100,000. */
int
main (int argc, char *argv[])
{
  SupportCutCase cases[N_CASES];
  guint64 runs = argc > 1 ? g_ascii_strtoull (argv[1], NULL, 10) : N_RUNS;

  n_each = (guint)(CLAMP (runs, FEW * N_CASES, 100 * N_RUNS) + N_CASES - 1) / N_CASES;

  fill_cases (cases);
  printf (
      "Runs from a rough bore to a finished one; lengths in µm.  The truths are drawn from the priors: b "
      "from\n"
      "N(1, 0.08²), s_e log-normal about 5 with a factor of 2, the bias of each gauge and its repeatability "
      "as\n"
      "fine 0.5 and 0.3, ordinary 1.5 and 0.8, coarse 3 and 1.5; two stations, a taper of that standard\n"
      "deviation; 100 to 300 of metal; marks of 2.  %u runs of each plan and rule, %u at the risk of half.\n",
      n_each * N_CASES, n_each / FEW * N_CASES);
  print_head ("Priors right");
  for (guint i = 0; i < N_CASES; i++)
    run_case (&cases[i], SEED + i);
  printf ("  %.2f ms of the processor for each plan with the run about it\n", 1e3 * plan_seconds / n_plans);
  run_told (cases, "Priors right, ten cuts of the tool known", 1, 0, 10);
  run_told (cases, "Priors wrong: scatter twice as wide (nothing is promised)", 2, 0, 0);
  run_told (cases, "Priors wrong: the cutter takes 16 % more (nothing is promised)", 1, 2, 0);
  printf ("\n%s\n", failed ? "a promise is broken" : "every promise is kept");
  return failed;
}
