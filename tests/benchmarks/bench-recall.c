/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-recall: how long a recall takes on the book of a shop that has worked for two years: 200 jobs,
 * 500,000 readings, 20 gauges, each of which took a twentieth of them.  Invented data.
 */

#include "bench-figures.h"
#include "book-store.h"
#include "core-recall.h"

#define N_JOBS         200
#define N_GAUGES       20
#define N_FEATURES     25
#define N_PIECES       50
#define N_STATIONS     2
#define RECALL_SECONDS 1.0
#define N_RUNS         5

static const char *const stations[N_STATIONS] = { "mouth/12", "bottom/12" };

static const char *
number_text (TmJob *job, const char *word, guint number)
{
  g_autofree char *text = g_strdup_printf ("%s%02u", word, number);

  return tm_job_intern (job, text);
}

static void
add_gauges (TmJob *job)
{
  for (guint i = 0; i < N_GAUGES; i++)
    {
      TmGauge *gauge = tm_gauge_new ();
      TmMethod *method = tm_method_new ();

      gauge->tag = number_text (job, "G-", i);
      gauge->resolution = tm_quantity_new (1000000, TM_UNIT_MM, 3);
      gauge->error_limit = tm_quantity_new (2000000, TM_UNIT_MM, 3);
      method->name = number_text (job, "by gauge ", i);
      g_ptr_array_add (method->gauges, (gpointer)gauge->tag);
      method->repeatability = tm_quantity_new (1000000, TM_UNIT_MM, 3);
      method->repeatability_dof = tm_quantity_new (30, TM_UNIT_COUNT, 0);
      g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
      g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
    }
}

static void
add_feature (TmJob *job, guint index, guint number)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = number_text (job, "", index + 1);
  feature->kind = TM_KIND_BORE;
  feature->unit = TM_UNIT_MM;
  feature->lower = tm_quantity_new (25000000000, TM_UNIT_MM, 3);
  feature->upper = tm_quantity_new (25021000000, TM_UNIT_MM, 3);
  feature->method = number_text (job, "by gauge ", (index + number) % N_GAUGES);
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
}

static void
add_piece (TmJob *job, guint index)
{
  TmPiece *piece = tm_piece_new ();

  piece->serial = number_text (job, "", index + 1);
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
}

/* @number jobs are spread evenly over the years 2024 and 2025. */
static const char *
make_moment (TmJob *job, guint number, guint index)
{
  guint day = number * 672 / N_JOBS;
  guint second = 25200 + index * 9;
  g_autofree char *text
      = g_strdup_printf ("%u-%02u-%02uT%02u:%02u:%02uZ", 2024 + day / 336, 1 + day / 28 % 12, 1 + day % 28,
                         second / 3600, second / 60 % 60, second % 60);

  return tm_job_intern (job, text);
}

static void
add_reading (TmJob *job, guint number, guint index, TmPiece *piece, TmFeature *feature, const char *station,
             GRand *rand)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = piece;
  reading->row.feature = feature;
  reading->row.by = "RT";
  reading->row.at = make_moment (job, number, index);
  reading->station = station;
  reading->value = tm_quantity_new ((25000 + g_rand_int_range (rand, 1, 21)) * G_GINT64_CONSTANT (1000000),
                                    TM_UNIT_MM, 3);
  reading->method = feature->method;
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

static TmJob *
make_job (guint number, GRand *rand)
{
  TmJob *job = tm_job_new ();
  guint index = 0;

  job->id = number_text (job, "job-", number);
  job->part_number = number_text (job, "INV-", number);
  add_gauges (job);
  for (guint i = 0; i < N_FEATURES; i++)
    add_feature (job, i, number);
  for (guint i = 0; i < N_PIECES; i++)
    add_piece (job, i);
  for (guint p = 0; p < N_PIECES; p++)
    for (guint f = 0; f < N_FEATURES; f++)
      for (guint s = 0; s < N_STATIONS; s++)
        add_reading (job, number, index++, g_ptr_array_index (job->pieces, p),
                     g_ptr_array_index (job->features, f), stations[s], rand);
  return job;
}

static TmBook *
open_book (const char *path)
{
  g_autoptr (GError) error = NULL;
  TmBook *book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);

  g_assert_no_error (error);
  return book;
}

static double
make_book (gpointer path)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260504);
  g_autoptr (TmBook) book = open_book (path);
  double start = tm_steady_seconds ();

  for (guint i = 0; i < N_JOBS; i++)
    {
      g_autoptr (TmJob) job = make_job (i, rand);
      g_autoptr (GError) error = NULL;

      g_assert_true (tm_book_add_job (book, job, NULL, NULL, NULL, &error));
    }
  return tm_steady_seconds () - start;
}

typedef struct {
  const char *what;
  const char *good_until;
  guint first_day; /* the first of make_moment()'s days after it */
} Case;

/* How many readings gauge 7 took since then, by how the book was made. */
static guint
count_expected (const Case *each)
{
  guint n = 0;

  for (guint number = 0; number < N_JOBS; number++)
    for (guint f = 0; f < N_FEATURES; f++)
      n += number * 672 / N_JOBS >= each->first_day && (f + number) % N_GAUGES == 7 ? 1 : 0;
  return n * N_PIECES * N_STATIONS;
}

typedef struct {
  GArray *book, *core, *total;
} Times;

static void
run_once (const char *path, const Case *each, Times *times)
{
  g_autoptr (TmBook) book = open_book (path);
  TmQuantity error_found = tm_quantity_new (3000000, TM_UNIT_MM, 3);
  g_autoptr (GError) error = NULL;
  double start = tm_steady_seconds ();
  g_autoptr (GPtrArray) jobs = tm_book_recall (book, "G-07", each->good_until, NULL, NULL, &error);
  double found = tm_steady_seconds () - start;
  double total;
  guint n = 0;

  g_assert_no_error (error);
  for (guint i = 0; i < jobs->len; i++)
    {
      g_autoptr (GArray) rows
          = tm_recall (g_ptr_array_index (jobs, i), "G-07", each->good_until, &error_found);

      n += rows->len;
    }
  total = tm_steady_seconds () - start;
  g_assert_cmpuint (n, ==, count_expected (each));
  g_array_append_val (times->book, found);
  total -= found;
  g_array_append_val (times->core, total);
  total += found;
  g_array_append_val (times->total, total);
}

static void
add_figure (TmFigures *figures, const Case *each, const char *part, GArray *seconds, double bound)
{
  g_autofree char *what = g_strdup_printf ("%s, %u readings: %s", each->what, count_expected (each), part);

  tm_figures_add (figures, what, tm_percentile (seconds, 50), "s", bound);
}

static void
run_case (TmFigures *figures, const char *path, const Case *each)
{
  g_autoptr (GArray) book = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) core = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (GArray) total = g_array_new (FALSE, FALSE, sizeof (double));
  Times times = { book, core, total };

  for (guint i = 0; i < N_RUNS; i++)
    run_once (path, each, &times);
  add_figure (figures, each, "book", book, TM_NO_BOUND);
  add_figure (figures, each, "verdicts", core, TM_NO_BOUND);
  add_figure (figures, each, "in all", total, RECALL_SECONDS);
}

int
main (void)
{
  static const Case cases[] = {
    { "good until the last month", "2025-11-28", 23 * 28 },
    { "good until a year ago", "2024-12-28", 12 * 28 },
    { "never known to be good", "", 0 },
  };
  char *folder = tm_scratch_new ();
  g_autofree char *path = g_build_filename (folder, "shop.tmbook", NULL);
  g_autofree char *title
      = g_strdup_printf ("A recall on a book of %d jobs and %d readings, middle of %d runs", N_JOBS,
                         N_JOBS * N_FEATURES * N_PIECES * N_STATIONS, N_RUNS);
  TmFigures *figures = tm_figures_new (title);
  TmPhase phase = tm_phase_run (make_book, path);

  tm_figures_add (figures, "make the book", phase.seconds, "s", TM_NO_BOUND);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    run_case (figures, path, &cases[i]);
  tm_scratch_remove (folder);
  return tm_figures_finish (figures);
}
