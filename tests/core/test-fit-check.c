/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether a bore and its mate will fit.
 */

#include <math.h>

#include "core-callout.h"
#include "core-fit-check.h"
#include "judge-support.h"
#include "support-csv.h"

#define SEED  20260914
#define DRAWS 200000

static gint64
count_of (const char *text)
{
  return quantity (text, TM_UNIT_MM).count;
}

static TmFitPart
part_of (const char *smallest, const char *largest, const char *u)
{
  return (TmFitPart) { .smallest = count_of (smallest),
                       .largest = count_of (largest),
                       .u = u != NULL ? (double)count_of (u) : 0,
                       .alpha = NAN,
                       .temp = 20 };
}

static TmFitWant
want_of (const char *least, const char *most)
{
  return (TmFitWant) { least != NULL, most != NULL, least != NULL ? count_of (least) : 0,
                       most != NULL ? count_of (most) : 0 };
}

/* -------- By limits -------- */

/* Every fit of the reference table, exactly; 10 P7/h6 and 12 N7/h6 are also printed in ANSI B4.2, the
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
      TmFitPart hole = { .smallest = fit.hole_lower, .largest = fit.hole_upper, .temp = 20 };
      TmFitPart shaft = { .smallest = fit.shaft_lower, .largest = fit.shaft_upper, .temp = 20 };
      TmFitCheck check;

      g_test_message ("%s", text);
      g_assert_cmpint (fit.status, ==, TM_CALLOUT_OK);
      g_assert_cmpint (tm_fit_check (&hole, &shaft, NULL, &check), ==, TM_FIT_OK);
      g_assert_cmpint ((gint64)check.least, ==,
                       quantity (support_csv_get (csv, row, "min_clear_um"), TM_UNIT_UM).count);
      g_assert_cmpint ((gint64)check.most, ==,
                       quantity (support_csv_get (csv, row, "max_clear_um"), TM_UNIT_UM).count);
      g_assert_cmpfloat (check.u, ==, 0);
      g_assert_cmpfloat (check.within, ==, 1);
    }
}

/* 25 H7/p6, -0.035 to -0.001, against what is wanted: certain, impossible, or not to be told. */
static void
test_chances_by_limits (void)
{
  static const struct {
    const char *least, *most;
    double loose, tight, within;
  } rows[] = {
    { NULL, NULL, 0, 0, 1 },
    { "-0.035", "-0.001", 0, 0, 1 },
    { "-0.034999999", "-0.001", 0, NAN, NAN },
    { "-0.035", "-0.001000001", NAN, 0, NAN },
    { "-0.040", NULL, 0, 0, 1 },
    { NULL, "-0.036", 1, 0, 0 },
    { NULL, "-0.035", NAN, 0, NAN },
    { "0", NULL, 0, 1, 0 },
    { "-0.001", NULL, 0, NAN, NAN },
    { "-0.010", "-0.005", NAN, NAN, NAN },
  };
  TmFitPart hole = part_of ("25.000", "25.021", NULL);
  TmFitPart shaft = part_of ("25.022", "25.035", NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFitWant want = want_of (rows[i].least, rows[i].most);
      TmFitCheck check;

      g_test_message ("row %" G_GSIZE_FORMAT, i);
      g_assert_cmpint (tm_fit_check (&hole, &shaft, &want, &check), ==, TM_FIT_OK);
      g_assert_true (isnan (rows[i].loose) ? isnan (check.loose) : fabs (check.loose - rows[i].loose) <= 0);
      g_assert_true (isnan (rows[i].tight) ? isnan (check.tight) : fabs (check.tight - rows[i].tight) <= 0);
      g_assert_true (isnan (rows[i].within) ? isnan (check.within)
                                            : fabs (check.within - rows[i].within) <= 0);
      g_assert_true (tm_fit_is_within (&check, &want) == (rows[i].within > 0));
      g_assert_cmpfloat (check.interference, ==, 1);
      g_assert_cmpfloat (check.clearance, ==, 0);
    }
}

/* H7/h6: a line of contact is neither clearance nor interference. */
static void
test_touching (void)
{
  TmFitPart hole = part_of ("25.000", "25.021", NULL);
  TmFitPart slide = part_of ("24.987", "25.000", NULL);
  TmFitPart same = part_of ("25.000", "25.000", NULL);
  TmFitCheck check;

  g_assert_cmpint (tm_fit_check (&hole, &slide, NULL, &check), ==, TM_FIT_OK);
  g_assert_true (isnan (check.clearance));
  g_assert_cmpfloat (check.interference, ==, 0);
  g_assert_cmpint (tm_fit_check (&same, &same, NULL, &check), ==, TM_FIT_OK);
  g_assert_cmpfloat (check.clearance, ==, 0);
  g_assert_cmpfloat (check.interference, ==, 0);
}

/* -------- As measured -------- */

/* One error of the bore's sizes and one of the shaft's, drawn; counted by the meaning of each chance. */
static void
draw (GRand *rand, const TmFitPart *bore, const TmFitPart *shaft, const TmFitWant *want, TmFitCheck *out)
{
  guint loose = 0, tight = 0, within = 0, clearance = 0, interference = 0;

  for (guint i = 0; i < DRAWS; i++)
    {
      double radius = sqrt (-2 * log (1 - g_rand_double (rand)));
      double angle = 2 * G_PI * g_rand_double (rand);
      double bore_error = bore->u * radius * cos (angle);
      double shaft_error = shaft->u * radius * sin (angle);
      double least = ((double)bore->smallest + bore_error) - ((double)shaft->largest + shaft_error);
      double most = ((double)bore->largest + bore_error) - ((double)shaft->smallest + shaft_error);
      gboolean is_loose = want->has_most && most > (double)want->most;
      gboolean is_tight = want->has_least && least < (double)want->least;

      loose += is_loose;
      tight += is_tight;
      within += !is_loose && !is_tight;
      clearance += least > 0;
      interference += most < 0;
    }
  out->loose = (double)loose / DRAWS;
  out->tight = (double)tight / DRAWS;
  out->within = (double)within / DRAWS;
  out->clearance = (double)clearance / DRAWS;
  out->interference = (double)interference / DRAWS;
}

/* Four standard deviations of a counted share, and one count where it is near 0 or 1. */
static void
assert_share (double computed, double counted)
{
  assert_near (computed, counted, 4 * sqrt (computed * (1 - computed) / DRAWS) + 1.0 / DRAWS);
}

/* Against 200,000 drawn pairs of errors; the last two have sizes that spread wider than what is wanted, so
 * that one end or the other is always out, and both at once at times. */
static void
test_monte_carlo (void)
{
  static const struct {
    const char *bore_least, *bore_most, *bore_u, *shaft_least, *shaft_most, *shaft_u, *least, *most;
  } rows[] = {
    { "25.004", "25.009", "0.001", "25.027", "25.029", "0.0008", "-0.026", "-0.017" },
    { "25.004", "25.004", "0.001", "25.001", "25.001", "0.0005", "0.001", "0.005" },
    { "25.004", "25.006", "0.002", "25.003", "25.005", "0.002", NULL, "0.006" },
    { "25.004", "25.006", "0.002", "25.003", "25.005", "0.002", "-0.003", NULL },
    { "25.004", "25.006", "0.0015", "25.003", "25.005", NULL, "-0.003", "0.004" },
    { "25.000", "25.010", "0.001", "24.990", "24.990", "0.001", "0.011", "0.019" },
    { "25.000", "25.010", "0.003", "24.990", "24.990", "0.004", "0.012", "0.018" },
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFitPart bore = part_of (rows[i].bore_least, rows[i].bore_most, rows[i].bore_u);
      TmFitPart shaft = part_of (rows[i].shaft_least, rows[i].shaft_most, rows[i].shaft_u);
      TmFitWant want = want_of (rows[i].least, rows[i].most);
      TmFitCheck check, counted = { 0 };

      g_test_message ("row %" G_GSIZE_FORMAT, i);
      draw (rand, &bore, &shaft, &want, &counted);
      g_assert_cmpint (tm_fit_check (&bore, &shaft, &want, &check), ==, TM_FIT_OK);
      assert_share (check.loose, counted.loose);
      assert_share (check.tight, counted.tight);
      assert_share (check.within, counted.within);
      assert_share (check.clearance, counted.clearance);
      assert_share (check.interference, counted.interference);
    }
}

/* Hand values: u = √(3² + 4²) = 5 µm, U = 10 µm; the tabled Φ(1) = 0.841345, Φ(2) = 0.977250. */
static void
test_by_hand (void)
{
  TmFitPart bore = part_of ("25.010", "25.010", "0.003");
  TmFitPart shaft = part_of ("25.000", "25.000", "0.004");
  TmFitWant want = want_of ("0.005", "0.020");
  TmFitCheck check;

  g_assert_cmpint (tm_fit_check (&bore, &shaft, &want, &check), ==, TM_FIT_OK);
  assert_near (check.u, 5e6, 1e-6);
  assert_near (check.expanded, 1e7, 1e-6);
  assert_near (check.tight, 1 - 0.841345, 1e-6);
  assert_near (check.loose, 1 - 0.977250, 1e-6);
  assert_near (check.within, 0.841345 + 0.977250 - 1, 1e-6);
  assert_near (check.within, 1 - check.loose - check.tight, 1e-12);
  assert_near (check.clearance, 0.977250, 1e-6);
  g_assert_false (tm_fit_is_within (&check, &want));
  /* Ten standard uncertainties off: the small chance keeps its digits, 1 - Φ(10) = 7.619853e-24 (tables). */
  want = want_of ("-0.040", "0.060");
  g_assert_cmpint (tm_fit_check (&bore, &shaft, &want, &check), ==, TM_FIT_OK);
  assert_near (check.loose, 7.619853e-24, 1e-29);
  assert_near (check.tight, 7.619853e-24, 1e-29);
  g_assert_true (tm_fit_is_within (&check, &want));
}

/* Sizes spread wider than what is wanted: nothing is within, and the two chances may add to more than 1. */
static void
test_wider_than_wanted (void)
{
  TmFitPart bore = part_of ("25.000", "25.010", "0.001");
  TmFitPart shaft = part_of ("24.990", "24.990", "0.001");
  TmFitWant want = want_of ("0.012", "0.018");
  TmFitCheck check;

  g_assert_cmpint (tm_fit_check (&bore, &shaft, &want, &check), ==, TM_FIT_OK);
  g_assert_cmpfloat (check.within, ==, 0);
  g_assert_cmpfloat (check.loose + check.tight, >, 1.5);
  g_assert_false (tm_fit_is_within (&check, &want));
}

static void
test_unknown_uncertainty (void)
{
  TmFitPart bore = part_of ("25.004", "25.009", "0.001");
  TmFitPart shaft = part_of ("25.001", "25.002", NULL);
  TmFitWant want = want_of ("0.002", "0.008");
  TmFitWant wider = want_of ("0.001", "0.008");
  TmFitCheck check;

  shaft.u = NAN;
  g_assert_cmpint (tm_fit_check (&bore, &shaft, &want, &check), ==, TM_FIT_NO_METHOD);
  g_assert_cmpfloat (check.least, ==, (double)count_of ("0.002"));
  g_assert_cmpfloat (check.most, ==, (double)count_of ("0.008"));
  g_assert_true (isnan (check.u) && isnan (check.expanded) && isnan (check.loose) && isnan (check.tight)
                 && isnan (check.within) && isnan (check.clearance) && isnan (check.interference));
  g_assert_true (tm_fit_is_within (&check, &want));
  g_assert_true (tm_fit_is_within (&check, &wider));
  want = want_of ("0.0021", "0.008");
  g_assert_false (tm_fit_is_within (&check, &want));
}

/* -------- Warm and cold -------- */

static TmFitCheck
check_warm (double alpha, double temp, double shaft_alpha, double shaft_temp)
{
  TmFitPart bore = part_of ("25.0000", "25.0000", NULL);
  TmFitPart shaft = part_of ("25.0000", "25.0000", NULL);
  TmFitCheck check;

  bore.alpha = alpha;
  bore.temp = temp;
  shaft.alpha = shaft_alpha;
  shaft.temp = shaft_temp;
  g_assert_cmpint (tm_fit_check (&bore, &shaft, NULL, &check), ==, TM_FIT_OK);
  return check;
}

/* Aluminium bushing 23.6e-6 on a steel pin 11.5e-6, 25 mm, 20 to 40 °C: +0.00605 mm (recomputed from the
 * coefficients of Callister, Materials Science and Engineering, table B.6, and Swyt, J. Res. NIST 99 (1994)).
 * Cooling the pin alone by 100 °C: 25·11.5e-6·100 = 0.02875 mm of room. */
static void
test_temperatures (void)
{
  assert_near (check_warm (23.6, 40, 11.5, 40).least, 6.05e6, 1e-3);
  assert_near (check_warm (23.6, 0, 11.5, 0).least, -6.05e6, 1e-3);
  assert_near (check_warm (23.6, 20, 11.5, -80).least, 28.75e6, 1e-3);
  assert_near (check_warm (11.5, 120, 11.5, 20).least, 28.75e6, 1e-3);
  g_assert_cmpfloat (check_warm (NAN, 20, NAN, 20).least, ==, 0);
  assert_near (check_warm (11.5, -273.15, 11.5, 1000).least, 25e9 * 11.5e-6 * (-293.15 - 980), 1);
}

/* What is not known of a coefficient makes the clearance uncertain as measured, and not by limits. */
static void
test_expansion_uncertain (void)
{
  TmFitPart bore = part_of ("25.0000", "25.0000", "0.001");
  TmFitPart shaft = part_of ("25.0000", "25.0000", NULL);
  TmFitCheck check;

  bore.alpha = shaft.alpha = 11.5;
  bore.alpha_half_width = 1.2;
  bore.temp = 70;
  g_assert_cmpint (tm_fit_check (&bore, &shaft, NULL, &check), ==, TM_FIT_OK);
  /* 25 mm · 1.2e-6 · 50 / √3 = 0.866 µm, with 1 µm: 1.3229 µm. */
  assert_near (check.u, sqrt (1 + 0.75) * 1e6, 1);
  bore.u = 0;
  g_assert_cmpint (tm_fit_check (&bore, &shaft, NULL, &check), ==, TM_FIT_OK);
  g_assert_cmpfloat (check.u, ==, 0);
}

/* -------- What cannot be -------- */

static void
assert_all_unknown (const TmFitCheck *check)
{
  g_assert_true (isnan (check->least) && isnan (check->most) && isnan (check->u) && isnan (check->expanded));
  g_assert_true (isnan (check->loose) && isnan (check->tight) && isnan (check->within));
  g_assert_true (isnan (check->clearance) && isnan (check->interference));
}

static void
test_refusals (void)
{
  static const struct {
    const char *smallest, *largest;
    double u, alpha, temp;
    const char *least, *most;
    TmFitStatus status;
  } rows[] = {
    { "25.001", "25.000", 0, 11.5, 20, NULL, NULL, TM_FIT_BAD_PART },
    { "0", "25.000", 0, 11.5, 20, NULL, NULL, TM_FIT_BAD_PART },
    { "-25", "25.000", 0, 11.5, 20, NULL, NULL, TM_FIT_BAD_PART },
    { "25", "25", -1, 11.5, 20, NULL, NULL, TM_FIT_BAD_PART },
    { "25", "25", INFINITY, 11.5, 20, NULL, NULL, TM_FIT_NO_METHOD },
    { "25", "25", 0, 11.5, -273.16, NULL, NULL, TM_FIT_BAD_TEMPERATURE },
    { "25", "25", 0, 11.5, 1000.1, NULL, NULL, TM_FIT_BAD_TEMPERATURE },
    { "25", "25", 0, 11.5, NAN, NULL, NULL, TM_FIT_BAD_TEMPERATURE },
    { "25", "25", 0, 11.5, INFINITY, NULL, NULL, TM_FIT_BAD_TEMPERATURE },
    { "25", "25", 0, NAN, 21, NULL, NULL, TM_FIT_NO_EXPANSION },
    { "25", "25", 0, INFINITY, 21, NULL, NULL, TM_FIT_NO_EXPANSION },
    { "25", "25", 0, 1001, 21, NULL, NULL, TM_FIT_NO_EXPANSION },
    { "25", "25", 0, NAN, 20, NULL, NULL, TM_FIT_OK },
    { "25", "25", 0, 11.5, 20, "0.001", "0.000", TM_FIT_BAD_WANT },
    { "25", "25", 0, 11.5, 20, "0.001", "0.001", TM_FIT_OK },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFitPart good = part_of ("25", "25", NULL);
      TmFitPart part = {
        count_of (rows[i].smallest), count_of (rows[i].largest), rows[i].u, rows[i].alpha, 0, rows[i].temp
      };
      TmFitWant want = want_of (rows[i].least, rows[i].most);
      TmFitCheck check;

      g_test_message ("row %" G_GSIZE_FORMAT, i);
      g_assert_cmpint (tm_fit_check (&part, &good, &want, &check), ==, rows[i].status);
      if (rows[i].status != TM_FIT_OK && rows[i].status != TM_FIT_NO_METHOD)
        assert_all_unknown (&check);
      g_assert_cmpint (tm_fit_check (&good, &part, &want, &check), ==, rows[i].status);
    }
}

/* -------- Parts from the record -------- */

static TmFeature *
add_bore (TmJob *job, const char *method)
{
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", method);

  feature->mate.given = TRUE;
  feature->mate.kind = TM_KIND_SHAFT;
  feature->mate.lower = quantity ("25.022", TM_UNIT_MM);
  feature->mate.upper = quantity ("25.035", TM_UNIT_MM);
  return feature;
}

static void
test_limits_of_record (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  TmFeature *open = add_feature (job, "2", TM_KIND_LENGTH, NULL, "12", "");
  TmFeature *note = add_feature (job, "3", TM_KIND_NOTE, "1", "2", "");
  TmFitPart part, mate;
  TmFitCheck check;
  TmFitWant want;

  g_assert_cmpint (tm_fit_part_by_limits (bore, &part), ==, TM_FIT_OK);
  g_assert_cmpint (tm_fit_mate_by_limits (bore, &mate), ==, TM_FIT_OK);
  g_assert_cmpint (tm_fit_check (&part, &mate, NULL, &check), ==, TM_FIT_OK);
  g_assert_cmpfloat (check.least, ==, -35e6);
  g_assert_cmpfloat (check.most, ==, -1e6);
  g_assert_cmpint (tm_fit_part_by_limits (open, &part), ==, TM_FIT_NO_LIMITS);
  g_assert_cmpint (tm_fit_part_by_limits (note, &part), ==, TM_FIT_NO_LIMITS);
  g_assert_cmpint (tm_fit_mate_by_limits (open, &part), ==, TM_FIT_NO_MATE);
  bore->mate.upper = TM_QUANTITY_NONE;
  g_assert_cmpint (tm_fit_mate_by_limits (bore, &mate), ==, TM_FIT_NO_LIMITS);
  want = tm_fit_wanted (bore);
  g_assert_false (want.has_least || want.has_most);
  bore->mate.wanted_least = quantity ("-0.030", TM_UNIT_MM);
  want = tm_fit_wanted (bore);
  g_assert_true (want.has_least && !want.has_most);
  g_assert_cmpint (want.least, ==, -30000000);
}

/* Two stations of two readings and of one; the mean that is no whole count is rounded outward. */
static void
test_measured_of_record (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore;
  TmFitPart part;

  add_one_micron (job);
  bore = add_bore (job, "G1");
  ask_stations (job, bore, "mouth bottom");
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_NOT_MEASURED);
  read_size (job, bore, "mouth", "25.008", "G1");
  read_size (job, bore, "mouth", "25.008000001", "G1");
  /* In so far as it was read: not yet a verdict. */
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_NOT_MEASURED);
  read_size (job, bore, "bottom", "25.011", "G1");
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_OK);
  g_assert_cmpint (part.smallest, ==, count_of ("25.008"));
  g_assert_cmpint (part.largest, ==, count_of ("25.011"));
  assert_near (part.u, 1e6, 1e3);
  g_assert_cmpfloat (part.temp, ==, 20);
  g_assert_true (isnan (part.alpha));
  read_size (job, bore, "bottom", "25.011000001", "G1");
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_OK);
  g_assert_cmpint (part.largest, ==, count_of ("25.011000001"));
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 2, &part), ==, TM_FIT_NOT_MEASURED);
}

/* What was read before a cut is no size to fit by. */
static void
test_after_a_cut (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "G1");
  TmCutRow *cut = tm_cut_row_new ();
  TmFitPart part;

  add_one_micron (job);
  read_size (job, bore, "", "25.004", "G1");
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_OK);
  cut->row.piece = first_piece (job);
  cut->row.feature = bore;
  cut->place = 1;
  cut->dialled = quantity ("0.010", TM_UNIT_MM);
  cut->after = tm_job_intern (job, "1");
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_NOT_MEASURED);
  read_size (job, bore, "", "25.013", "G1");
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_OK);
  g_assert_cmpint (part.smallest, ==, count_of ("25.013"));
}

static void
test_no_method (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  TmFitPart part;

  read_size (job, bore, "", "25.010", "");
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_NO_METHOD);
  g_assert_cmpint (part.smallest, ==, count_of ("25.010"));
  g_assert_true (isnan (part.u));
}

/* A repeatability of 1 µm known from five pieces: t_0.975(4) = 2.776 (tables), so that a normal distribution
 * of 2.776 / 1.960 µm has the same 95 % interval. */
static void
test_few_degrees_of_freedom (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "M1");
  TmJudgement judgement = { NULL };
  TmFitPart part;

  add_method (job, "M1", "", "0.001", "4");
  read_size (job, bore, "", "25.010", "M1");
  judge_one (job, bore, &judgement);
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_OK);
  assert_near (part.u, 2.776 / 1.960 * judgement.u, 1e-3 * judgement.u);
  tm_judgement_clear (&judgement);
}

static void
add_trial (TmJob *job, TmFeature *feature, const char *size, gboolean went)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.piece = first_piece (job);
  trial->row.feature = feature;
  trial->place = 1;
  trial->size = quantity (size, TM_UNIT_MM);
  trial->pin_class = tm_job_intern (job, "Z");
  trial->sign = went ? TM_PIN_PLUS : TM_PIN_MINUS;
  trial->went = went;
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
}

/* Pins alone give the mating size, once they close it in. */
static void
test_pins_alone (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  TmFitPart part;

  add_trial (job, bore, "25.002", TRUE);
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_NOT_MEASURED);
  add_trial (job, bore, "25.020", FALSE);
  g_assert_cmpint (tm_fit_part_as_measured (job, first_piece (job), bore, 1, &part), ==, TM_FIT_OK);
  g_assert_cmpint (part.smallest, ==, part.largest);
  g_assert_cmpint (part.smallest, >, count_of ("25.002"));
  g_assert_cmpint (part.smallest, <, count_of ("25.021"));
  g_assert_cmpfloat (part.u, >, 1e6);
}

static void
test_mates (void)
{
  TmMateSize mate = { .smallest = quantity ("25.027", TM_UNIT_MM) };
  TmMateSize unread = { "" };
  TmFitPart part;

  g_assert_cmpint (tm_fit_mate_as_measured (&unread, &part), ==, TM_FIT_NOT_MEASURED);
  g_assert_cmpint (tm_fit_mate_as_measured (&mate, &part), ==, TM_FIT_NO_METHOD);
  g_assert_cmpint (part.largest, ==, count_of ("25.027"));
  mate.largest = quantity ("25.029", TM_UNIT_MM);
  mate.uncertainty = quantity ("0.002", TM_UNIT_MM);
  g_assert_cmpint (tm_fit_mate_as_measured (&mate, &part), ==, TM_FIT_OK);
  g_assert_cmpint (part.smallest, ==, count_of ("25.027"));
  g_assert_cmpint (part.largest, ==, count_of ("25.029"));
  g_assert_cmpfloat (part.u, ==, 1e6);
  mate.largest = quantity ("25.026", TM_UNIT_MM);
  g_assert_cmpint (tm_fit_mate_as_measured (&mate, &part), ==, TM_FIT_BAD_PART);
}

static void
test_sides (void)
{
  static const struct {
    TmKind kind, mate;
    TmCut cut;
    gboolean is_bore;
    TmFitStatus status;
  } rows[] = {
    { TM_KIND_BORE, TM_N_KINDS, TM_CUT_UNKNOWN, TRUE, TM_FIT_OK },
    { TM_KIND_SHAFT, TM_N_KINDS, TM_CUT_UNKNOWN, FALSE, TM_FIT_OK },
    { TM_KIND_SHAFT, TM_KIND_SHAFT, TM_CUT_UNKNOWN, FALSE, TM_FIT_OK },
    { TM_KIND_DIAMETER, TM_KIND_SHAFT, TM_CUT_UNKNOWN, TRUE, TM_FIT_OK },
    { TM_KIND_DIAMETER, TM_KIND_BORE, TM_CUT_UNKNOWN, FALSE, TM_FIT_OK },
    { TM_KIND_DIAMETER, TM_KIND_SHAFT, TM_CUT_SHRINKS, FALSE, TM_FIT_OK },
    { TM_KIND_LENGTH, TM_N_KINDS, TM_CUT_GROWS, TRUE, TM_FIT_OK },
    { TM_KIND_LENGTH, TM_KIND_LENGTH, TM_CUT_SHRINKS, FALSE, TM_FIT_OK },
    { TM_KIND_DIAMETER, TM_N_KINDS, TM_CUT_UNKNOWN, FALSE, TM_FIT_NO_SIDE },
    { TM_KIND_POSITION, TM_KIND_SHAFT, TM_CUT_GROWS, FALSE, TM_FIT_NO_SIDE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      TmFeature feature = { .kind = rows[i].kind, .unit = TM_UNIT_MM, .cut = rows[i].cut };
      TmFitStatus status;

      g_test_message ("row %" G_GSIZE_FORMAT, i);
      feature.mate.given = rows[i].mate != TM_N_KINDS;
      feature.mate.kind = feature.mate.given ? rows[i].mate : TM_KIND_BORE;
      g_assert_true (tm_fit_feature_is_bore (&feature, &status) == rows[i].is_bore);
      g_assert_cmpint (status, ==, rows[i].status);
    }
}

/* The part by the job, the mate by what its press says, the shop's own figure before the tables'. */
static void
test_materials (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore = add_bore (job, "");
  TmShopMaterial *own = tm_shop_material_new ();
  TmFitPart part = part_of ("25", "25", NULL);

  own->name = tm_job_intern (job, "bush bronze");
  own->expansion = quantity ("18.4", TM_UNIT_HARDNESS);
  g_assert_cmpint (tm_job_add_material (job, own), ==, TM_ADD_OK);
  g_assert_false (tm_fit_part_warm (job, bore, FALSE, 40, &part));
  g_assert_true (isnan (part.alpha));
  job->material = tm_job_intern (job, "6061-T6");
  g_assert_true (tm_fit_part_warm (job, bore, FALSE, 40, &part));
  assert_near (part.alpha, 23.6, 1e-9); /* Callister, table B.6 */
  g_assert_cmpfloat (part.temp, ==, 40);
  g_assert_cmpfloat (part.alpha_half_width, >, 2);
  g_assert_false (tm_fit_part_warm (job, bore, TRUE, 40, &part));
  bore->press.shaft_material = tm_job_intern (job, "bush bronze");
  g_assert_true (tm_fit_part_warm (job, bore, TRUE, 40, &part));
  assert_near (part.alpha, 18.4, 1e-9);
  bore->press.hub_material = tm_job_intern (job, "grey cast iron");
  g_assert_true (tm_fit_part_warm (job, bore, FALSE, 40, &part));
  assert_near (part.alpha, 11.4, 1e-9); /* Callister, table B.6 */
  bore->press.hub_material = "";
  job->expansion = quantity ("22.0", TM_UNIT_HARDNESS);
  g_assert_true (tm_fit_part_warm (job, bore, FALSE, 40, &part));
  assert_near (part.alpha, 22.0, 1e-9);
  bore->kind = TM_KIND_SHAFT;
  g_assert_true (tm_fit_part_warm (job, bore, FALSE, 40, &part));
  assert_near (part.alpha, 18.4, 1e-9);
}

static void
test_words (void)
{
  for (TmFitStatus status = TM_FIT_OK; status < TM_N_FIT_STATUSES; status++)
    {
      g_assert_nonnull (tm_fit_status_word (status));
      g_assert_true ((status == TM_FIT_OK) == (*tm_fit_status_word (status) == '\0'));
      for (TmFitStatus other = TM_FIT_OK; other < status; other++)
        g_assert_cmpstr (tm_fit_status_word (status), !=, tm_fit_status_word (other));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit-check/reference", test_reference);
  g_test_add_func ("/fit-check/chances-by-limits", test_chances_by_limits);
  g_test_add_func ("/fit-check/touching", test_touching);
  g_test_add_func ("/fit-check/monte-carlo", test_monte_carlo);
  g_test_add_func ("/fit-check/by-hand", test_by_hand);
  g_test_add_func ("/fit-check/wider-than-wanted", test_wider_than_wanted);
  g_test_add_func ("/fit-check/unknown-uncertainty", test_unknown_uncertainty);
  g_test_add_func ("/fit-check/temperatures", test_temperatures);
  g_test_add_func ("/fit-check/expansion-uncertain", test_expansion_uncertain);
  g_test_add_func ("/fit-check/refusals", test_refusals);
  g_test_add_func ("/fit-check/limits-of-record", test_limits_of_record);
  g_test_add_func ("/fit-check/measured-of-record", test_measured_of_record);
  g_test_add_func ("/fit-check/after-a-cut", test_after_a_cut);
  g_test_add_func ("/fit-check/no-method", test_no_method);
  g_test_add_func ("/fit-check/few-degrees-of-freedom", test_few_degrees_of_freedom);
  g_test_add_func ("/fit-check/pins-alone", test_pins_alone);
  g_test_add_func ("/fit-check/mates", test_mates);
  g_test_add_func ("/fit-check/sides", test_sides);
  g_test_add_func ("/fit-check/materials", test_materials);
  g_test_add_func ("/fit-check/words", test_words);
  return g_test_run ();
}
