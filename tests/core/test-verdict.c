/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Decision rules and probabilities: ISO 14253-1:2017, ASME B89.7.3.1, JCGM 106:2012, and closed forms.
 */

#include <math.h>

#include "core-probability.h"
#include "core-verdict.h"

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))

#define UM G_GINT64_CONSTANT (1000000)

static TmUncertainty
know (double u, double dof)
{
  double k = tm_t_quantile (0.975, dof);

  return (TmUncertainty) { u, u, 0, dof, k, k * u };
}

static TmRule
make_rule (TmDecision decision, double ratio, TmLimits limits, double u, double dof)
{
  TmUncertainty uncertainty = know (u, dof);
  TmRule rule;

  tm_rule_init (&rule, decision, ratio, &limits, &uncertainty, FALSE);
  return rule;
}

static TmLimits
between (gint64 lower, gint64 upper)
{
  return (TmLimits) { lower, upper, TRUE, TRUE, FALSE };
}

static TmVerdict
judge (const TmRule *rule, gint64 count)
{
  const TmLocalSize size = { .sum = count, .n = 1 };

  return tm_rule_verdict (rule, &size);
}

/* Guarded at the guard is in, one count nearer is not; likewise for out. */
static void
test_guard_edges (void)
{
  /* H7 at 25: 21 µm; u 1 µm: acceptance 25.00165…25.01935 (recomputed; 1.65 is ISO 14253-1:2017). */
  const gint64 lower = 25000 * UM, upper = 25021 * UM;
  TmRule rule = make_rule (TM_DECISION_GUARDED, 4, between (lower, upper), 1e6, INFINITY);

  g_assert_cmpint (rule.guard, ==, 1650000);
  g_assert_cmpint (rule.guard_out, ==, 1650000);
  g_assert_cmpint (rule.settles, ==, TM_SETTLES);
  g_assert_cmpint (judge (&rule, 25001650000), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&rule, 25001649999), ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judge (&rule, 25019350000), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&rule, 25019350001), ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judge (&rule, 25022650000), ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judge (&rule, 25022650001), ==, TM_VERDICT_OUT);
  g_assert_cmpint (judge (&rule, 24998350000), ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judge (&rule, 24998349999), ==, TM_VERDICT_OUT);
}

/* The mean of repeats is held against the guard as a fraction: a third of a count decides. */
static void
test_guard_edge_of_mean (void)
{
  TmRule rule = make_rule (TM_DECISION_GUARDED, 4, between (25000 * UM, 25021 * UM), 1e6, INFINITY);
  TmLocalSize size = { .sum = (TmWide)25001650000 * 3, .n = 3 };

  g_assert_cmpint (tm_rule_verdict (&rule, &size), ==, TM_VERDICT_IN);
  size.sum--;
  g_assert_cmpint (tm_rule_verdict (&rule, &size), ==, TM_VERDICT_TOO_CLOSE);
}

/* J6: one-sided factor is not enough when u is not small: at the centre of T = 4u P(in) = 0.9545, of
 * T = 3u 0.8664 (recomputed): then nothing can be proven in, but a value can be proven out. */
static void
test_cannot (void)
{
  static const struct {
    double band;
    TmSettles settles;
    TmVerdict at_centre;
  } cases[] = {
    { 3.00, TM_SETTLES_CANNOT, TM_VERDICT_TOO_CLOSE },   { 3.91, TM_SETTLES_CANNOT, TM_VERDICT_TOO_CLOSE },
    { 3.9199, TM_SETTLES_CANNOT, TM_VERDICT_TOO_CLOSE }, { 3.92, TM_SETTLES_SELDOM, TM_VERDICT_IN },
    { 4.00, TM_SETTLES_SELDOM, TM_VERDICT_IN },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      gint64 upper = (gint64)llround (cases[i].band * 1e6);
      TmRule rule = make_rule (TM_DECISION_GUARDED, 4, between (0, upper), 1e6, INFINITY);

      g_assert_cmpint (rule.settles, ==, cases[i].settles);
      g_assert_cmpint (judge (&rule, upper / 2), ==, cases[i].at_centre);
      g_assert_cmpint (judge (&rule, 2 * upper + UM), ==, TM_VERDICT_OUT);
      g_assert_cmpint (judge (&rule, -1650001), ==, TM_VERDICT_OUT);
    }
}

static void
test_centre_probability (void)
{
  const TmMargin four = { 2, 2, FALSE, 0 }, three = { 1.5, 1.5, FALSE, 0 };

  assert_near (tm_probability_in (&four, 1, INFINITY), 0.9545, 5e-5);
  assert_near (tm_probability_in (&three, 1, INFINITY), 0.8664, 5e-5);
}

/* Proven in means P(in) >= 0.95 and one count less means less, wherever the second tail counts. */
static void
test_guard_is_95_percent (void)
{
  static const double bands[] = { 4, 4.3, 4.8, 5, 6, 8, 12, 40 };
  static const double dofs[] = { 2, 3, 5.7, 9, 30, 200, INFINITY };

  for (guint i = 0; i < G_N_ELEMENTS (bands); i++)
    for (guint j = 0; j < G_N_ELEMENTS (dofs); j++)
      {
        const double u = 1e9;
        TmRule rule = make_rule (TM_DECISION_GUARDED, 4, between (0, llround (bands[i] * u)), u, dofs[j]);
        TmLocalSize at = { .sum = rule.limits.upper - rule.guard, .n = 1 };
        double one_sided = MAX (1.65, tm_t_quantile (0.95, dofs[j]));

        if (bands[i] < MAX (3.92, 2 * tm_t_quantile (0.975, dofs[j])))
          {
            g_assert_cmpint (rule.settles, ==, TM_SETTLES_CANNOT);
            continue;
          }
        g_assert_cmpfloat (tm_rule_probability (&rule, &at), >=, 0.95 - 1e-12);
        g_assert_cmpfloat ((double)rule.guard, >=, one_sided * u - 1);
        if ((double)rule.guard > one_sided * u + 2)
          assert_near (tm_rule_probability (&rule, &at), 0.95, 1e-8);
      }
}

/* Suitability by the share of the band that the guards take: 20 %, 60 %. */
static void
test_settles (void)
{
  static const struct {
    double band;
    TmSettles settles;
  } cases[] = {
    { 16.51, TM_SETTLES },
    { 16.49, TM_SETTLES_MOSTLY },
    { 5.51, TM_SETTLES_MOSTLY },
    { 5.49, TM_SETTLES_SELDOM },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmLimits limits = between (0, llround (cases[i].band * 1e6));

      g_assert_cmpint (make_rule (TM_DECISION_GUARDED, 4, limits, 1e6, INFINITY).settles, ==,
                       cases[i].settles);
    }
}

/* J7: band 0.001 in; 4:1 demands U <= 0.000125 in (2U = 0.00025), 10:1 demands U <= 0.00005. Comparing
 * the band with U instead of 2U would double what is permitted (recomputed). */
static void
test_simple_ratio (void)
{
  static const struct {
    double ratio, expanded_in;
    TmVerdict verdict;
  } cases[] = {
    { 4, 0.000125, TM_VERDICT_IN },       { 4, 0.0001251, TM_VERDICT_TOO_CLOSE },
    { 10, 0.00005, TM_VERDICT_IN },       { 10, 0.0000501, TM_VERDICT_TOO_CLOSE },
    { 4, 0.00025, TM_VERDICT_TOO_CLOSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const gint64 upper = 25400000;
      double u = cases[i].expanded_in * 25.4e9 / tm_t_quantile (0.975, INFINITY);
      TmRule rule = make_rule (TM_DECISION_SIMPLE, cases[i].ratio, between (0, upper), u, INFINITY);

      g_assert_cmpint (judge (&rule, upper / 2), ==, cases[i].verdict);
      g_assert_cmpint (judge (&rule, upper), ==, cases[i].verdict);
      g_assert_cmpint (judge (&rule, upper + 1), ==,
                       cases[i].verdict == TM_VERDICT_IN ? TM_VERDICT_OUT : TM_VERDICT_TOO_CLOSE);
      g_assert_cmpint (rule.settles, ==, cases[i].verdict == TM_VERDICT_IN ? TM_SETTLES : TM_SETTLES_CANNOT);
    }
}

/* Limit of error ±0.003, U 0.001 mm: 0.0017 accepted, 0.0025 in the uncertainty zone: accepted by the
 * simple rule (here 3:1), neither proven by the guarded one (published four-case example; guard ours). */
static void
test_uncertainty_zone (void)
{
  TmLimits limits = between (-3 * UM, 3 * UM);
  TmRule guarded = make_rule (TM_DECISION_GUARDED, 4, limits, 0.5e6, INFINITY);
  TmRule simple = make_rule (TM_DECISION_SIMPLE, 3, limits, 0.5e6, INFINITY);

  g_assert_cmpint (judge (&guarded, 1700000), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&guarded, 2500000), ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judge (&simple, 1700000), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&simple, 2500000), ==, TM_VERDICT_IN);
}

/* max / min: one limit only; one-sided guard, no N:1, no suitability. */
static void
test_one_limit (void)
{
  const TmLimits maximum = { 0, 12000 * UM, FALSE, TRUE, FALSE };
  const TmLimits minimum = { 3000 * UM, 0, TRUE, FALSE, FALSE };
  TmRule rule = make_rule (TM_DECISION_GUARDED, 4, maximum, 100e6, INFINITY);

  g_assert_cmpint (rule.settles, ==, TM_SETTLES_UNKNOWN);
  g_assert_cmpint (rule.guard, ==, 165 * UM);
  g_assert_cmpint (judge (&rule, 11835 * UM), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&rule, 11835 * UM + 1), ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judge (&rule, -5), ==, TM_VERDICT_IN);
  rule = make_rule (TM_DECISION_SIMPLE, 4, minimum, 1e15, INFINITY);
  g_assert_cmpint (judge (&rule, 3000 * UM), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&rule, 3000 * UM - 1), ==, TM_VERDICT_OUT);
}

/* Zero-bounded: T is U, no guard at zero, the density is cut at zero. */
static void
test_zero_bounded (void)
{
  const TmLimits limits = { 0, 10 * UM, FALSE, TRUE, TRUE };
  TmRule rule = make_rule (TM_DECISION_GUARDED, 4, limits, 1e6, INFINITY);
  TmLocalSize zero = { .sum = 0, .n = 1 };

  g_assert_cmpint (judge (&rule, 0), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&rule, 8350000), ==, TM_VERDICT_IN);
  g_assert_cmpint (judge (&rule, 8350001), ==, TM_VERDICT_TOO_CLOSE);
  g_assert_cmpint (judge (&rule, 11650001), ==, TM_VERDICT_OUT);
  g_assert_cmpint (rule.settles, ==, TM_SETTLES);
  /* At zero with u = U/2 half of the normal is cut away: 1 - 2(1 - Φ(2)). */
  rule = make_rule (TM_DECISION_GUARDED, 4, limits, 5e6, INFINITY);
  assert_near (tm_rule_probability (&rule, &zero), 1 - 2 * 0.02275013, 1e-8);
  g_assert_cmpint (judge (&rule, 0), ==, TM_VERDICT_IN);
  /* Under U = 1.96 u not even zero is proven. */
  rule = make_rule (TM_DECISION_GUARDED, 4, limits, 10e6 / 1.95, INFINITY);
  g_assert_cmpint (rule.settles, ==, TM_SETTLES_CANNOT);
  g_assert_cmpint (judge (&rule, 0), ==, TM_VERDICT_TOO_CLOSE);
}

static void
test_unknown_is_plain (void)
{
  TmLimits limits = between (0, 10);
  TmRule rule;

  for (int decision = TM_DECISION_GUARDED; decision <= TM_DECISION_SIMPLE; decision++)
    {
      tm_rule_init (&rule, (TmDecision)decision, 4, &limits, &tm_uncertainty_unknown, FALSE);
      g_assert_cmpint (judge (&rule, 0), ==, TM_VERDICT_IN);
      g_assert_cmpint (judge (&rule, 10), ==, TM_VERDICT_IN);
      g_assert_cmpint (judge (&rule, 11), ==, TM_VERDICT_OUT);
      g_assert_cmpint (judge (&rule, -1), ==, TM_VERDICT_OUT);
      g_assert_cmpint (rule.settles, ==, TM_SETTLES_UNKNOWN);
      g_assert_cmpint (rule.guard, ==, 0);
    }
}

/* A band of nothing, or one that is upside down, proves nothing in and does not crash. */
static void
test_no_band (void)
{
  TmRule rule = make_rule (TM_DECISION_GUARDED, 4, between (5 * UM, 5 * UM), 1e6, INFINITY);

  g_assert_cmpint (judge (&rule, 5 * UM), ==, TM_VERDICT_TOO_CLOSE);
  rule = make_rule (TM_DECISION_GUARDED, 4, between (9 * UM, 5 * UM), 1e6, 3);
  g_assert_cmpint (rule.settles, ==, TM_SETTLES_CANNOT);
  rule = make_rule (TM_DECISION_GUARDED, 4, between (-TM_COUNT_MAX, TM_COUNT_MAX), 1e30, 1);
  g_assert_cmpint (judge (&rule, TM_COUNT_MAX), ==, TM_VERDICT_TOO_CLOSE);
}

/* J4 (recomputed): N(10, 0.4), limits 9 and 11. J5: JCGM 106 clause 7, Zener diode, inputs from memory,
 * answer recomputed: limit -5.40, y -5.47, u 0.05. J6: simple acceptance at the limit 50 %; w = U (k 2)
 * 2.275 % (recomputed). */
static void
test_probability (void)
{
  static const struct {
    double below, above, u, in;
  } cases[] = {
    { 1, 1, 0.4, 1 - 0.01241933 },     { 1.5, 0.5, 0.4, 1 - 0.10573819 }, { 3, -1, 0.4, 1 - 0.99379033 },
    { INFINITY, 0.07, 0.05, 0.91924 }, { INFINITY, 0, 0.05, 0.5 },        { INFINITY, 2, 1, 1 - 0.02275 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      TmMargin margin = { cases[i].below, cases[i].above, FALSE, 0 };

      assert_near (tm_probability_in (&margin, cases[i].u, INFINITY), cases[i].in, 5e-6);
    }
}

/* -------- Risks, by our own chance of a reading -------- */

/* Density of Gamma (shape 4, scale 0.25). */
static double
get_gamma (double x)
{
  return pow (x, 3) * exp (-x / 0.25) / (6 * pow (0.25, 4));
}

static double
get_normal (double x, double s)
{
  return exp (-x * x / (2 * s * s)) / (s * sqrt (2 * G_PI));
}

/* Simpson's rule over 4000 panels. */
static double
integrate (double (*value) (double, const double *), const double *data, double from, double to)
{
  const guint n = 4000;
  double step = (to - from) / n, sum = value (from, data) + value (to, data);

  for (guint i = 1; i < n; i++)
    sum += (i % 2 ? 4 : 2) * value (from + i * step, data);
  return sum * step / 3;
}

/* P(a reading of the true value x is at most A), data: A, u. */
static double
get_accepted (double x, double limit, double u)
{
  const TmMargin margin = { INFINITY, limit - x, FALSE, 0 };

  return tm_probability_in (&margin, u, INFINITY);
}

static double
weigh_gamma (double x, const double *data)
{
  return get_gamma (x) * get_accepted (x, data[0], data[1]);
}

static double
weigh_gamma_rejected (double x, const double *data)
{
  return get_gamma (x) * (1 - get_accepted (x, data[0], data[1]));
}

/* J1, JCGM 106:2012, 9.5.4: radial error motion of a ball bearing, limit 2 µm, u 0.25 µm. Consumer's risk
 * with A = 2: 0.80 % (recomputed 0.801911); producer's 1.74446 %; a risk of 0.1 % takes A = 1.672 (recomputed
 * 1.671829). */
static void
test_ball_bearing (void)
{
  const double simple[] = { 2, 0.25 }, guarded[] = { 1.671829, 0.25 };

  assert_near (integrate (weigh_gamma, simple, 2, 6), 0.00801911, 5e-8);
  assert_near (integrate (weigh_gamma_rejected, simple, 0, 2), 0.0174446, 5e-7);
  assert_near (integrate (weigh_gamma, guarded, 2, 6), 0.001, 5e-8);
  assert_near (integrate (weigh_gamma_rejected, guarded, 0, 2), 0.0754939, 5e-7);
}

/* P(a reading of x lies within ±1), for a process of deviation data[0] read with a quarter of it. */
static double
weigh_process (double x, const double *data)
{
  const TmMargin margin = { x + 1, 1 - x, FALSE, 0 };

  return get_normal (x, data[0]) * tm_probability_in (&margin, data[0] / 4, INFINITY);
}

static double
weigh_process_rejected (double x, const double *data)
{
  return get_normal (x, data[0]) - weigh_process (x, data);
}

/* J2: global risk; PFA (unconditional, and of what is accepted) published, the producer's risk
 * recomputed. Tolerance: the fourth row as published differs from its recomputation in the sixth digit. */
static void
test_global_risk (void)
{
  static const struct {
    double deviation, false_accept, of_accepted, false_reject; /* % */
  } rows[] = {
    { 1.18818295, 4.83860326, 8.26008199, 6.260453 }, { 0.96484734, 3.92234109, 5.72322042, 5.388530 },
    { 0.78030415, 2.85583037, 3.63227145, 4.232016 }, { 0.51021346, 0.87100925, 0.92389664, 1.595394 },
    { 0.38822448, 0.19991684, 0.20243866, 0.445636 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const double *data = &rows[i].deviation;
      double wrong = 2 * integrate (weigh_process, data, 1, 1 + 8 * data[0]);
      double right = integrate (weigh_process, data, -1, 1);

      assert_near (100 * wrong, rows[i].false_accept, 1.5e-6);
      assert_near (100 * wrong / (wrong + right), rows[i].of_accepted, 1.5e-6);
      assert_near (100 * integrate (weigh_process_rejected, data, -1, 1), rows[i].false_reject, 5e-6);
    }
}

/* J7, ASME B89.7.3.1 (recomputed): a band of 0.001 in: 4:1 allows U up to 0.000125 in, 10:1 up to 0.00005.
 * Trap: compared with U in place of 2U, twice as much would pass. */
static void
test_ratio_of_width (void)
{
  static const struct {
    double ratio, expanded; /* 1e-6 in */
    gboolean good;
  } cases[] = {
    { 4, 125, TRUE }, { 4, 126, FALSE }, { 4, 250, FALSE }, { 10, 50, TRUE }, { 10, 51, FALSE },
  };
  const gint64 band = 25400000;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double expanded = cases[i].expanded * 25400;
      const TmUncertainty uncertainty = { expanded / 2, expanded / 2, 0, INFINITY, 2, expanded };
      const TmLimits limits = between (0, band);
      TmRule rule;

      tm_rule_init (&rule, TM_DECISION_SIMPLE, cases[i].ratio, &limits, &uncertainty, FALSE);
      g_assert_cmpint (rule.can_prove_in, ==, cases[i].good);
    }
}

/* Student's t with 1 degree of freedom is Cauchy's: P = (atan a + atan b)/π. */
static void
test_probability_by_t (void)
{
  const TmMargin margin = { 3, 1, FALSE, 0 };

  assert_near (tm_probability_in (&margin, 1, 1.9), (atan (3) + atan (1)) / G_PI, 1e-12);
}

/* With own and shared parts alike, sizes at one limit are correlated by 1/2, and n standard normals so
 * correlated are all negative with probability 1/(n + 1) (closed form; for two, 1/4 + asin(ρ)/2π,
 * Sheppard 1899). */
static void
test_all_in_correlated (void)
{
  TmMargin margins[6];

  for (guint n = 2; n <= 6; n++)
    {
      for (guint i = 0; i < n; i++)
        margins[i] = (TmMargin) { INFINITY, 0, FALSE, 1 };
      assert_near (tm_probability_all_in (margins, n, 1), 1.0 / (n + 1), 1e-9);
    }
  for (double own = 0.01; own < 100; own *= 3)
    {
      double correlation = 1 / (1 + own * own);

      margins[0] = margins[1] = (TmMargin) { INFINITY, 0, FALSE, own };
      assert_near (tm_probability_all_in (margins, 2, 1), 0.25 + asin (correlation) / (2 * G_PI), 1e-8);
    }
}

/* One size alone: the quadrature gives the plain difference of normals; no shared part: a product; no
 * own part: the narrowest range decides. */
static void
test_all_in_limits (void)
{
  const TmMargin one = { 3, 1, FALSE, 0.8 }, steps[] = { { 1, 4, FALSE, 0 }, { 3, 2, FALSE, 0 } };
  const TmMargin two[] = { { 3, 1, FALSE, 0.8 }, { 1, 2, FALSE, 0.5 } };
  double total = sqrt (0.8 * 0.8 + 0.6 * 0.6);

  assert_near (tm_probability_all_in (&one, 1, 0.6), tm_probability_in (&one, total, INFINITY), 1e-9);
  assert_near (tm_probability_all_in (two, 2, 0),
               tm_probability_in (&two[0], 0.8, INFINITY) * tm_probability_in (&two[1], 0.5, INFINITY),
               1e-12);
  assert_near (tm_probability_all_in (steps, 2, 1.5),
               tm_t_below (2 / 1.5, INFINITY) - tm_t_below (-1 / 1.5, INFINITY), 1e-12);
}

/* A narrow band, where both limits count at once, against the trapezoid sum of the same integral. */
static void
test_all_in_by_sum (void)
{
  static const double owns[] = { 0.05, 0.3, 1, 4 };

  for (guint i = 0; i < G_N_ELEMENTS (owns); i++)
    {
      const TmMargin margins[] = { { 1.2, 0.8, FALSE, owns[i] }, { 0.5, 1.5, FALSE, owns[i] / 2 } };
      double sum = 0;

      for (int step = -40000; step <= 40000; step++)
        {
          double s = step * 2e-4, product = exp (-s * s / 2) / sqrt (2 * G_PI) * 2e-4;

          for (guint j = 0; j < 2; j++)
            product *= tm_t_below ((margins[j].above - s) / margins[j].own, INFINITY)
                       - tm_t_below ((-margins[j].below - s) / margins[j].own, INFINITY);
          sum += product;
        }
      assert_near (tm_probability_all_in (margins, 2, 1), sum, 1e-7);
    }
}

/* Words of the file and the screen: each value has its own, and they are those of the contract. */
static void
test_words (void)
{
  g_assert_cmpstr (tm_verdict_word (TM_VERDICT_IN), ==, "in");
  g_assert_cmpstr (tm_verdict_word (TM_VERDICT_OUT), ==, "out");
  g_assert_cmpstr (tm_verdict_word (TM_VERDICT_TOO_CLOSE), ==, "too close");
  g_assert_cmpstr (tm_verdict_word (TM_VERDICT_NOT_MEASURED), ==, "not measured");
  g_assert_cmpstr (tm_side_word (TM_SIDE_METAL_LEFT), ==, "metal left");
  g_assert_cmpstr (tm_side_word (TM_SIDE_METAL_GONE), ==, "metal gone");
  g_assert_cmpstr (tm_side_word (TM_SIDE_NONE), ==, "");
  g_assert_cmpstr (tm_settles_word (TM_SETTLES_UNKNOWN), ==, "");
  g_assert_cmpstr (tm_settles_word (TM_SETTLES), ==, "settles");
  g_assert_cmpstr (tm_settles_word (TM_SETTLES_MOSTLY), ==, "mostly");
  g_assert_cmpstr (tm_settles_word (TM_SETTLES_SELDOM), ==, "seldom");
  g_assert_cmpstr (tm_settles_word (TM_SETTLES_CANNOT), ==, "cannot");
  g_assert_cmpstr (tm_why_word (TM_WHY_NO_METHOD), ==, "no method");
  g_assert_cmpstr (tm_why_word (TM_WHY_METHOD_NOT_GOOD), ==, "method not good enough");
  for (int why = TM_WHY_NO_METHOD; why < TM_N_WHYS; why++)
    g_assert_cmpstr (tm_why_word ((TmWhy)why), !=, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/verdict/guard-edges", test_guard_edges);
  g_test_add_func ("/core/verdict/guard-edge-of-mean", test_guard_edge_of_mean);
  g_test_add_func ("/core/verdict/cannot", test_cannot);
  g_test_add_func ("/core/verdict/centre-probability", test_centre_probability);
  g_test_add_func ("/core/verdict/guard-is-95-percent", test_guard_is_95_percent);
  g_test_add_func ("/core/verdict/settles", test_settles);
  g_test_add_func ("/core/verdict/simple-ratio", test_simple_ratio);
  g_test_add_func ("/core/verdict/uncertainty-zone", test_uncertainty_zone);
  g_test_add_func ("/core/verdict/one-limit", test_one_limit);
  g_test_add_func ("/core/verdict/zero-bounded", test_zero_bounded);
  g_test_add_func ("/core/verdict/unknown-is-plain", test_unknown_is_plain);
  g_test_add_func ("/core/verdict/no-band", test_no_band);
  g_test_add_func ("/core/verdict/probability", test_probability);
  g_test_add_func ("/core/verdict/ball-bearing", test_ball_bearing);
  g_test_add_func ("/core/verdict/global-risk", test_global_risk);
  g_test_add_func ("/core/verdict/ratio-of-width", test_ratio_of_width);
  g_test_add_func ("/core/verdict/probability-by-t", test_probability_by_t);
  g_test_add_func ("/core/verdict/all-in-correlated", test_all_in_correlated);
  g_test_add_func ("/core/verdict/all-in-limits", test_all_in_limits);
  g_test_add_func ("/core/verdict/all-in-by-sum", test_all_in_by_sum);
  g_test_add_func ("/core/verdict/words", test_words);
  return g_test_run ();
}
