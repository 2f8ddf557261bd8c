/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pieces to hold back after a shift.
 */

#include "core-hold.h"
#include "series-support.h"

/* Every second piece of 20 is measured; the level goes from 0 to 19 µm before the 12th, where 20 is the
 * limit. */
static TmJob *
make_shifted_job (TmFeature **feature)
{
  static const double sizes[] = { 0, 1, -1, 0.5, -0.5, 0, 19, 20.5, 18, 18.5 };
  double microns[20];

  for (guint i = 0; i < 20; i++)
    microns[i] = i % 2 == 0 ? sizes[i / 2] : NAN;
  return make_bore_job (microns, 20, feature);
}

static void
test_rows (void)
{
  TmFeature *feature;
  g_autoptr (TmJob) job = make_shifted_job (&feature);
  g_auto (TmSeries) series = { 0 };
  TmLevelChange change = { .found = TRUE, .at = 12, .low = 12, .high = 12, .before = 0, .after = 19e6 };
  g_autoptr (GArray) rows = NULL;

  tm_series_init (&series, job, feature, 1);
  rows = tm_hold_back (&series, &change, 1e6, 0);
  /* The 12th piece was not measured: it lies after the last one known to be good, so it is held too. */
  g_assert_cmpuint (rows->len, ==, 9);
  for (guint i = 0; i < rows->len; i++)
    {
      const TmHoldRow *row = &g_array_index (rows, TmHoldRow, i);

      g_assert_cmpuint (row->point, ==, 11 + i);
      g_assert_cmpint (row->measured, ==, row->point % 2 == 0);
    }
  /* Between 19 and 20.5: the nearest two on each side are 19, 20.5 and 18, mean 19.1667; scatter √(4/3);
   * P(beyond 20) = Q(0.8333 / 1.1547) = Q(0.7217) = 0.2352 (normal table). */
  assert_near (g_array_index (rows, TmHoldRow, 2).out, 0.2352, 5e-4);
  /* No method is known: the measured ones by their verdict. */
  assert_near (g_array_index (rows, TmHoldRow, 1).out, 0, 1e-12);
  assert_near (g_array_index (rows, TmHoldRow, 3).out, 1, 1e-12);
}

/* Where it may have begun earlier, the list begins there. */
static void
test_interval (void)
{
  TmFeature *feature;
  g_autoptr (TmJob) job = make_shifted_job (&feature);
  g_auto (TmSeries) series = { 0 };
  TmLevelChange change = { .found = TRUE, .at = 12, .low = 8, .high = 14, .before = 0, .after = 19e6 };
  g_autoptr (GArray) rows = NULL, likely = NULL;

  tm_series_init (&series, job, feature, 1);
  rows = tm_hold_back (&series, &change, 1e6, 0);
  g_assert_cmpuint (g_array_index (rows, TmHoldRow, 0).point, ==, 7);
  g_assert_cmpuint (rows->len, ==, 13);
  /* Made between good ones, yet perhaps after the change: 19 and 20.5 tell its level. */
  assert_near (g_array_index (rows, TmHoldRow, 0).out, 0.4191, 5e-4); /* Q(0.25 / √1.5) */
  likely = tm_hold_back (&series, &change, 1e6, 0.3);
  for (guint i = 0; i < likely->len; i++)
    g_assert_cmpfloat (g_array_index (likely, TmHoldRow, i).out, >=, 0.3);
  g_assert_cmpuint (likely->len, <, rows->len);
  g_assert_cmpuint (likely->len, >, 0);
}

/* The correction that ended it ends the list; nothing found gives nothing. */
static void
test_ends (void)
{
  TmFeature *feature;
  g_autoptr (TmJob) job = make_shifted_job (&feature);
  g_auto (TmSeries) series = { 0 };
  TmLevelChange change = { .found = TRUE, .at = 12, .low = 12, .high = 12, .before = 0, .after = 19e6 };
  g_autoptr (GArray) rows = NULL, none = NULL;

  add_event (job, "offset", "P17", "", "");
  tm_series_init (&series, job, feature, 1);
  rows = tm_hold_back (&series, &change, 1e6, 0);
  g_assert_cmpuint (g_array_index (rows, TmHoldRow, rows->len - 1).point, ==, 15);
  change.found = FALSE;
  none = tm_hold_back (&series, &change, 1e6, 0);
  g_assert_cmpuint (none->len, ==, 0);
}

/* A taper: the mouth is beyond the limit while the mean is not. */
static void
test_stations (void)
{
  g_autoptr (TmJob) job = make_batch_job (5);
  TmFeature *feature = add_feature (job, "1", TM_KIND_BORE, "24.98", "25.02", "");
  g_auto (TmSeries) series = { 0 };
  TmLevelChange change = { .found = TRUE, .at = 2, .low = 2, .high = 2, .before = 0, .after = 12e6 };
  g_autoptr (GArray) rows = NULL;

  for (guint i = 0; i < 5; i += 2)
    {
      read_piece (job, feature, i, "mouth", i < 2 ? 2 : 22);
      read_piece (job, feature, i, "bottom", i < 2 ? -2 : 2);
    }
  tm_series_init (&series, job, feature, 1);
  rows = tm_hold_back (&series, &change, 0, 0);
  g_assert_cmpuint (rows->len, ==, 4);
  assert_near (g_array_index (rows, TmHoldRow, 2).out, 1, 1e-12);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hold/rows", test_rows);
  g_test_add_func ("/hold/interval", test_interval);
  g_test_add_func ("/hold/ends", test_ends);
  g_test_add_func ("/hold/stations", test_stations);
  return g_test_run ();
}
