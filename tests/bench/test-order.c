/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The measuring order, on an invented job whose spots can be counted by hand.
 */

#include "bench-fixture.h"

typedef struct {
  const char *piece;
  const char *feature;
  guint place;
  const char *station;
} Stop;

/* Bore 1 has two stations, feature 4 three places and is due on every second piece. */
static TmJob *
make_order_job (void)
{
  TmJob *job = make_job ();
  TmFeature *holes = add_feature (job, "4", TM_KIND_DIAMETER, TM_UNIT_MM, "6.5", "6.4", "6.6");

  holes->places = 2;
  holes->check = tm_job_intern (job, "every 2");
  add_piece (job, "003");
  return job;
}

static const Stop piece_first[] = {
  { "001", "1", 1, "mouth/12" }, { "001", "1", 1, "bottom/12" }, { "001", "2", 1, "" },
  { "001", "3", 1, "" },         { "001", "4", 1, "" },          { "001", "4", 2, "" },
  { "002", "1", 1, "mouth/12" }, { "002", "1", 1, "bottom/12" }, { "002", "2", 1, "" },
  { "002", "3", 1, "" },         { "003", "1", 1, "mouth/12" },  { "003", "1", 1, "bottom/12" },
  { "003", "2", 1, "" },         { "003", "3", 1, "" },          { "003", "4", 1, "" },
  { "003", "4", 2, "" },
};

static const Stop feature_first[] = {
  { "001", "1", 1, "mouth/12" },  { "001", "1", 1, "bottom/12" }, { "002", "1", 1, "mouth/12" },
  { "002", "1", 1, "bottom/12" }, { "003", "1", 1, "mouth/12" },  { "003", "1", 1, "bottom/12" },
  { "001", "2", 1, "" },          { "002", "2", 1, "" },          { "003", "2", 1, "" },
  { "001", "3", 1, "" },          { "002", "3", 1, "" },          { "003", "3", 1, "" },
  { "001", "4", 1, "" },          { "001", "4", 2, "" },          { "003", "4", 1, "" },
  { "003", "4", 2, "" },
};

static void
assert_stop (TmBench *bench, const Stop *stop)
{
  assert_spot (bench, stop->piece, stop->feature, stop->place, stop->station);
}

static void
walk_both_ways (TmOrder order, const Stop *stops, guint n)
{
  g_autoptr (TmJob) job = make_order_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());

  tm_bench_set_order (bench, order);
  g_assert_cmpint (tm_bench_order (bench), ==, order);
  for (guint i = 0; i < n; i++)
    {
      assert_stop (bench, &stops[i]);
      g_assert_true (tm_bench_go_next (bench) == (i + 1 < n));
    }
  for (guint i = n; i > 0; i--)
    {
      assert_stop (bench, &stops[i - 1]);
      g_assert_true (tm_bench_go_previous (bench) == (i > 1));
    }
}

static void
test_walk (void)
{
  walk_both_ways (TM_ORDER_PIECE_FIRST, piece_first, G_N_ELEMENTS (piece_first));
  walk_both_ways (TM_ORDER_FEATURE_FIRST, feature_first, G_N_ELEMENTS (feature_first));
}

static const char *
choose_text (const TmBench *bench)
{
  const char *balloon = tm_bench_spot (bench)->feature->balloon;

  return *balloon == '1' ? "25.01" : *balloon == '2' ? "40" : *balloon == '3' ? "p" : "6.5";
}

/* Recording moves through every due spot once, in the same order, and ends where nothing is left. */
static void
record_all (TmOrder order, const Stop *stops, guint n)
{
  g_autoptr (TmJob) job = make_order_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  guint due, read;

  tm_bench_set_order (bench, order);
  for (guint i = 0; i < n; i++)
    {
      assert_stop (bench, &stops[i]);
      g_assert_cmpint (enter (bench, choose_text (bench), 0), ==, TM_SUBMIT_RECORDED);
    }
  g_assert_cmpuint (job->readings->len, ==, n);
  assert_stop (bench, &stops[n - 1]);
  g_assert_false (tm_bench_go_next_unread (bench));
  tm_bench_count (bench, g_ptr_array_index (job->pieces, 0), &due, &read);
  g_assert_cmpuint (due, ==, 6);
  g_assert_cmpuint (read, ==, 6);
  tm_bench_count (bench, g_ptr_array_index (job->pieces, 1), &due, &read);
  g_assert_cmpuint (due, ==, 4);
}

static void
test_record_all (void)
{
  record_all (TM_ORDER_PIECE_FIRST, piece_first, G_N_ELEMENTS (piece_first));
  record_all (TM_ORDER_FEATURE_FIRST, feature_first, G_N_ELEMENTS (feature_first));
}

/* A jump leaves a gap; the gap is come back to, and a withdrawal opens one again. */
static void
test_gaps (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmPiece *first = g_ptr_array_index (job->pieces, 0);
  TmPiece *second = g_ptr_array_index (job->pieces, 1);
  guint due, read;

  g_assert_true (tm_bench_go (bench, second, g_ptr_array_index (job->features, 2), 1, ""));
  g_assert_cmpint (enter (bench, "p", 0), ==, TM_SUBMIT_RECORDED);
  assert_spot (bench, "001", "1", 1, "mouth/12");
  g_assert_true (tm_bench_go (bench, first, g_ptr_array_index (job->features, 0), 1, "bottom/12"));
  g_assert_cmpint (enter (bench, "25.01", 0), ==, TM_SUBMIT_RECORDED);
  assert_spot (bench, "001", "2", 1, "");
  tm_bench_count (bench, first, &due, &read);
  g_assert_cmpuint (due, ==, 4);
  g_assert_cmpuint (read, ==, 1);

  g_assert_true (tm_bench_withdraw (bench, tm_bench_last (bench), "chips in the bore", AT, NULL));
  tm_bench_count (bench, first, &due, &read);
  g_assert_cmpuint (read, ==, 0);
  g_assert_true (tm_bench_go (bench, first, g_ptr_array_index (job->features, 0), 1, ""));
  assert_spot (bench, "001", "1", 1, "mouth/12");
}

/* Rows that others add are seen; a withdrawal past the session is seen after it is told. */
static void
test_others_change_the_record (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmReading *row = tm_reading_new ();
  guint due, read;

  row->row.piece = g_ptr_array_index (job->pieces, 0);
  row->row.feature = g_ptr_array_index (job->features, 1);
  g_assert_cmpint (tm_quantity_read ("40", TM_UNIT_MM, &row->value), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_reading (job, row), ==, TM_ADD_OK);
  tm_bench_count (bench, row->row.piece, &due, &read);
  g_assert_cmpuint (read, ==, 1);
  g_assert_cmpint (tm_job_withdraw (job, &row->row, "AB", AT, "wrong piece"), ==, TM_ADD_OK);
  tm_bench_job_changed (bench);
  tm_bench_count (bench, row->row.piece, &due, &read);
  g_assert_cmpuint (read, ==, 0);
}

/* Bores on pieces, every one read but the last @n_unread. */
static TmJob *
make_large_job (guint n_features, guint n_pieces, guint n_unread)
{
  TmJob *job = tm_job_new ();
  char name[16];

  for (guint i = 1; i <= n_features; i++)
    {
      g_snprintf (name, sizeof name, "%u", i);
      add_feature (job, name, TM_KIND_BORE, TM_UNIT_MM, "25", "25.000", "25.021");
    }
  for (guint i = 1; i <= n_pieces; i++)
    {
      g_snprintf (name, sizeof name, "%03u", i);
      add_piece (job, name);
    }
  for (guint i = 0; i < n_features * n_pieces - n_unread; i++)
    {
      TmReading *row = tm_reading_new ();

      row->row.piece = g_ptr_array_index (job->pieces, n_pieces - 1 - i % n_pieces);
      row->row.feature = g_ptr_array_index (job->features, i / n_pieces);
      row->value = tm_quantity_new (G_GINT64_CONSTANT (25010000000), TM_UNIT_MM, 3);
      g_assert_cmpint (tm_job_add_reading (job, row), ==, TM_ADD_OK);
    }
  return job;
}

/* The last of 200,000 readings costs no more than the first. */
static void
record_last (guint n_features, guint n_pieces)
{
  g_autoptr (TmJob) job = make_large_job (n_features, n_pieces, 100);
  gint64 start = g_get_monotonic_time ();
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  gint64 opened = g_get_monotonic_time ();
  gint64 spent;
  guint n = 0;

  for (; tm_bench_go_next_unread (bench); n++)
    g_assert_cmpint (enter (bench, "25.012", 0), ==, TM_SUBMIT_RECORDED);
  spent = g_get_monotonic_time () - opened;
  g_assert_cmpuint (job->readings->len, ==, n_features * n_pieces);
  g_assert_cmpuint (n, >=, 99);
  g_test_message ("%u features, %u pieces: opened in %.1f ms, %.1f us a reading", n_features, n_pieces,
                  (double)(opened - start) / 1e3, (double)spent / n);
  /* 1 ms each is the contract; ten times that leaves room for a sanitizer on a busy machine. */
  g_assert_cmpint (spent / n, <, 10000);
}

static void
test_large_job (void)
{
  record_last (1000, 200);
  record_last (1, 200000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/order/walk", test_walk);
  g_test_add_func ("/bench/order/record-all", test_record_all);
  g_test_add_func ("/bench/order/gaps", test_gaps);
  g_test_add_func ("/bench/order/others-change-the-record", test_others_change_the_record);
  g_test_add_func ("/bench/order/large-job", test_large_job);
  return g_test_run ();
}
