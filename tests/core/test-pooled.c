/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Repeatability pooled over stations, against certified within-group deviations.
 */

#include "core-pooled.h"
#include "judge-support.h"

/* NIST/SEMATECH e-Handbook 2.4.4: five wafers of 60 degrees of freedom each; published 0.10290
 * to those digits. */
static void
test_handbook (void)
{
  static const double sums[] = { 0.48115, 0.69209, 0.48483, 1.21752, 0.30076 };
  static const guint dofs[] = { 60, 60, 60, 60, 60 };
  double sd;
  guint dof;

  g_assert_true (tm_pool_squares (sums, dofs, G_N_ELEMENTS (sums), &sd, &dof));
  g_assert_cmpuint (dof, ==, 300);
  assert_near (sd, 0.10290, 5e-6);
  g_assert_false (tm_pool_squares (NULL, NULL, 0, &sd, &dof));
}

/* NIST StRD, analysis of variance, data set SiRstv (public domain): five instruments of five readings
 * each.  Certified residual standard deviation 1.04076068334656e-01 with 20 degrees of freedom. */
static const char *const sirstv[5][5] = {
  { "196.3052", "196.1240", "196.1890", "196.2569", "196.3403" },
  { "196.3042", "196.3825", "196.1669", "196.3257", "196.0422" },
  { "196.1303", "196.2005", "196.2889", "196.0343", "196.1811" },
  { "196.2795", "196.1748", "196.1494", "196.1485", "195.9885" },
  { "196.2119", "196.1051", "196.1850", "196.0052", "196.2090" },
};

static TmJob *
make_sirstv (void)
{
  static const char *const stations[] = { "mouth/12", "mouth/3", "middle/12", "bottom/12", "25/3" };
  TmJob *job = make_job (TM_DECISION_GUARDED);
  TmFeature *feature;

  add_gauge (job, "BM-1", "0.0001", "0.001");
  add_gauge (job, "BM-2", "0.0001", "0.001");
  add_method (job, "bore", "BM-1", NULL, NULL);
  feature = add_feature (job, "1", TM_KIND_BORE, "196.000", "196.400", "bore");
  /* Station by station in turn: order and neighbours do not matter. */
  for (guint k = 0; k < 5; k++)
    for (guint i = 0; i < 5; i++)
      read_size (job, feature, stations[i], sirstv[i][k], "");
  return job;
}

static void
assert_printed (const TmPooled *pooled, TmUnit unit, const char *text)
{
  TmQuantity quantity = tm_pooled_quantity (pooled, unit);
  g_autofree char *printed = tm_quantity_format (&quantity);

  g_assert_cmpstr (printed, ==, text);
  /* It can be read back: whole counts. */
  g_assert_cmpint (tm_quantity_read (printed, unit, &quantity), ==, TM_READ_OK);
}

static void
test_certified (void)
{
  g_autoptr (TmJob) job = make_sirstv ();
  TmPooled pooled;

  g_assert_true (tm_pooled_repeatability (job, "bore", TM_DIMENSION_LENGTH, &pooled));
  g_assert_cmpuint (pooled.dof, ==, 20);
  g_assert_cmpuint (pooled.n_stations, ==, 5);
  g_assert_cmpuint (pooled.n_readings, ==, 25);
  assert_near (pooled.sd / 1e9, 1.04076068334656e-01, 1e-14);
  assert_printed (&pooled, TM_UNIT_MM, "0.104");
  assert_printed (&pooled, TM_UNIT_IN, "0.00410");
}

/* Another method, another dimension, a withdrawn reading and a station read once add nothing. */
static void
test_left_out (void)
{
  g_autoptr (TmJob) job = make_sirstv ();
  TmFeature *feature = g_ptr_array_index (job->features, 0);
  TmPooled pooled;

  read_size (job, feature, "bottom/3", "196.2", "");
  read_size (job, feature, "mouth/12", "199", "BM-2");
  g_assert_cmpint (tm_job_withdraw (job, &read_size (job, feature, "mouth/12", "150", "")->row, "CD",
                                    "2026-05-04T09:12:33Z", "chip in the bore"),
                   ==, TM_ADD_OK);
  g_assert_true (tm_pooled_repeatability (job, "bore", TM_DIMENSION_LENGTH, &pooled));
  g_assert_cmpuint (pooled.dof, ==, 20);
  assert_near (pooled.sd / 1e9, 1.04076068334656e-01, 1e-14);
  g_assert_false (tm_pooled_repeatability (job, "BM-2", TM_DIMENSION_LENGTH, &pooled));
  g_assert_false (tm_pooled_repeatability (job, "bore", TM_DIMENSION_ANGLE, &pooled));
  g_assert_false (tm_pooled_repeatability (job, "", TM_DIMENSION_LENGTH, &pooled));
}

/* "25/3" and "25.0/3" are one station; both offsets of a position count. By hand: 1, 3 gives a sum of
 * squares of 2; offsets 0, 2 and 0, 4 give 2 and 8: sqrt (12 / 3) = 2. */
static void
test_stations_and_offsets (void)
{
  g_autoptr (TmJob) job = make_job (TM_DECISION_GUARDED);
  TmFeature *bore, *hole;
  TmPooled pooled;

  add_gauge (job, "G", "0.001", "0.001");
  bore = add_feature (job, "1", TM_KIND_BORE, "24", "26", "G");
  read_size (job, bore, "25/3", "25.001", "");
  read_size (job, bore, "25.0/3", "25.003", "");
  hole = add_feature (job, "2", TM_KIND_POSITION, NULL, "0.2", "G");
  read_offsets (job, hole, "0", "0");
  read_offsets (job, hole, "0.002", "-0.004");
  g_assert_true (tm_pooled_repeatability (job, "G", TM_DIMENSION_LENGTH, &pooled));
  g_assert_cmpuint (pooled.dof, ==, 3);
  g_assert_cmpuint (pooled.n_stations, ==, 2);
  assert_near (pooled.sd, 2e6, 1e-6);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pooled/handbook", test_handbook);
  g_test_add_func ("/pooled/certified", test_certified);
  g_test_add_func ("/pooled/left-out", test_left_out);
  g_test_add_func ("/pooled/stations-and-offsets", test_stations_and_offsets);
  return g_test_run ();
}
