/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Recall out of the book, held against the slow way: every job loaded whole and asked.
 */

#include "book-fixture.h"
#include "core-recall.h"

#define GOOD "2026-03-01"

static TmQuantity
mm (const char *text)
{
  TmQuantity quantity = TM_QUANTITY_NONE;

  g_assert_cmpint (tm_quantity_read (text, TM_UNIT_MM, &quantity), ==, TM_READ_OK);
  return quantity;
}

static void
add_method (TmJob *job, const char *name, const char *tag)
{
  TmMethod *method = tm_method_new ();

  method->name = name;
  g_ptr_array_add (method->gauges, (gpointer)tag);
  method->repeatability = mm ("0.001");
  g_assert_cmpint (tm_job_add_method (job, method), ==, TM_ADD_OK);
}

static void
add_gauge (TmJob *job, const char *tag)
{
  TmGauge *gauge = tm_gauge_new ();

  gauge->tag = tag;
  gauge->resolution = mm ("0.001");
  gauge->error_limit = mm ("0.002");
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
}

static TmFeature *
add_feature (TmJob *job, const char *balloon, TmKind kind, const char *method)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = balloon;
  feature->kind = kind;
  feature->unit = TM_UNIT_MM;
  feature->places = 2;
  feature->method = method;
  feature->upper = mm (kind == TM_KIND_POSITION ? "0.2" : "25.021");
  if (kind == TM_KIND_BORE)
    feature->lower = mm ("25.000");
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  return feature;
}

/* Two gauges, a bore by each, a position that takes its bonus from the first bore, and a set of pins. */
static TmJob *
make_job (const char *id)
{
  TmJob *job = tm_job_new ();

  job->id = tm_job_intern (job, id);
  job->part_number = job->id;
  add_gauge (job, "M-1");
  add_gauge (job, "M-2");
  add_gauge (job, "PS");
  add_method (job, "micrometer", "M-1");
  add_method (job, "other", "M-2");
  add_feature (job, "1", TM_KIND_BORE, "micrometer");
  add_feature (job, "2", TM_KIND_BORE, "other");
  add_feature (job, "3", TM_KIND_POSITION, "other")->size_feature = "1";
  for (guint i = 0; i < 4; i++)
    {
      TmPiece *piece = tm_piece_new ();
      g_autofree char *serial = g_strdup_printf ("%u", i + 1);

      piece->serial = tm_job_intern (job, serial);
      g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
    }
  return job;
}

static void
fill_row (TmJob *job, TmEntryRow *row, GRand *rand, const char *balloon)
{
  static const char *const moments[] = { "", "2026-02-28T08:00:00Z", "2026-03-01T23:59:59Z",
                                         "2026-03-02T00:00:00Z", "2026-05-04T10:00:00Z" };

  row->feature = tm_job_find_feature (job, balloon);
  row->piece = g_ptr_array_index (job->pieces, g_rand_int_range (rand, 0, (gint32)job->pieces->len));
  row->at = moments[g_rand_int_range (rand, 0, G_N_ELEMENTS (moments))];
  row->by = "RW";
}

/* Corrects an earlier row of the same piece and feature, now and then, and from another place. */
static void
correct (TmJob *job, TmReading *reading, GRand *rand)
{
  for (guint i = 0; i < job->readings->len && g_rand_int_range (rand, 0, 6) == 0; i++)
    {
      const TmReading *other = g_ptr_array_index (job->readings, i);

      if (other->row.piece != reading->row.piece || other->row.feature != reading->row.feature
          || !tm_row_counts (&other->row))
        continue;
      reading->row.replaces = other->row.id;
      reading->row.reason = "the other place";
      return;
    }
}

static void
add_reading (TmJob *job, GRand *rand)
{
  static const char *const balloons[] = { "1", "1", "2", "3" };
  static const char *const methods[] = { "", "micrometer", "other", "M-1", "M-2" };
  const char *balloon = balloons[g_rand_int_range (rand, 0, G_N_ELEMENTS (balloons))];
  TmReading *reading = tm_reading_new ();

  fill_row (job, &reading->row, rand, balloon);
  reading->place = (guint)g_rand_int_range (rand, 1, 3);
  reading->method = methods[g_rand_int_range (rand, 0, G_N_ELEMENTS (methods))];
  if (g_str_equal (balloon, "3"))
    {
      reading->dx = mm ("0.05");
      reading->dy = mm ("0.07");
    }
  else
    {
      reading->value = tm_quantity_new (
          (24998 + g_rand_int_range (rand, 0, 27)) * G_GINT64_CONSTANT (1000000), TM_UNIT_MM, 3);
    }
  correct (job, reading, rand);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  if (g_rand_int_range (rand, 0, 8) == 0)
    tm_job_withdraw (job, &reading->row, "RW", "", "burr");
}

static void
add_trial (TmJob *job, GRand *rand)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  fill_row (job, &trial->row, rand, "1");
  trial->place = (guint)g_rand_int_range (rand, 1, 3);
  trial->size = mm ("25.01");
  trial->pin_class = "X";
  trial->went = g_rand_boolean (rand);
  trial->gauge = g_rand_boolean (rand) ? "PS" : "";
  g_assert_cmpint (tm_job_add_pin_trial (job, trial), ==, TM_ADD_OK);
  if (g_rand_int_range (rand, 0, 8) == 0)
    tm_job_withdraw (job, &trial->row, "RW", "", "dirty pin");
}

/* A cut makes what was read before it old; a withdrawn one does not. */
static void
add_cut (TmJob *job, GRand *rand)
{
  TmCutRow *cut = tm_cut_row_new ();

  fill_row (job, &cut->row, rand, g_rand_boolean (rand) ? "1" : "2");
  cut->place = (guint)g_rand_int_range (rand, 1, 3);
  cut->dialled = mm ("0.02");
  g_assert_cmpint (tm_job_add_cut (job, cut), ==, TM_ADD_OK);
  if (g_rand_int_range (rand, 0, 3) == 0)
    tm_job_withdraw (job, &cut->row, "RW", "", "not made");
}

static TmJob *
make_random_job (guint number, GRand *rand)
{
  g_autofree char *id = g_strdup_printf ("job-%u", number);
  TmJob *job = make_job (id);

  for (guint i = g_rand_int_range (rand, 0, 40); i > 0; i--)
    add_reading (job, rand);
  for (guint i = g_rand_int_range (rand, 0, 6); i > 0; i--)
    add_trial (job, rand);
  for (guint i = g_rand_int_range (rand, 0, 3); i > 0; i--)
    add_cut (job, rand);
  return job;
}

/* What a recall says of one job, a line for each row. */
static void
tell (GString *out, const TmJob *job, const char *tag, const TmQuantity *found)
{
  g_autoptr (GArray) rows = tm_recall (job, tag, GOOD, found);

  for (guint i = 0; i < rows->len; i++)
    {
      const TmRecallRow *row = &g_array_index (rows, TmRecallRow, i);
      const TmEntryRow *entry = row->reading != NULL ? &row->reading->row : &row->trial->row;

      g_string_append_printf (out, "%s %s %s %s %s: %d %d to %d %d\n", job->id,
                              row->reading != NULL ? "reading" : "trial", entry->id, entry->piece->serial,
                              entry->feature->balloon, row->before, row->side_before, row->after,
                              row->side_after);
    }
}

/* Newest job first, as the book gives them. */
static char *
tell_slowly (const char *path, guint n_jobs, const char *tag, const TmQuantity *found)
{
  g_autoptr (GString) out = g_string_new (NULL);

  for (guint i = n_jobs; i > 0; i--)
    {
      g_autofree char *id = g_strdup_printf ("job-%u", i - 1);
      g_autoptr (TmJob) job = take_job (path, id);

      tell (out, job, tag, found);
    }
  return g_string_free (g_steal_pointer (&out), FALSE);
}

static GPtrArray *
ask (const char *path, const char *tag, const char *good_until)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = tm_book_open (path, TM_BOOK_OPEN_NORMAL, &error);
  GPtrArray *jobs;

  g_assert_no_error (error);
  jobs = tm_book_recall (book, tag, good_until, NULL, NULL, &error);
  g_assert_no_error (error);
  return jobs;
}

static char *
tell_by_book (const char *path, const char *tag, const TmQuantity *found)
{
  g_autoptr (GString) out = g_string_new (NULL);
  g_autoptr (GPtrArray) jobs = ask (path, tag, GOOD);

  for (guint i = 0; i < jobs->len; i++)
    tell (out, g_ptr_array_index (jobs, i), tag, found);
  return g_string_free (g_steal_pointer (&out), FALSE);
}

static void
test_as_the_slow_way (Place *place, gconstpointer data)
{
  static const char *const tags[] = { "M-1", "M-2", "PS", "nobody" };
  const TmQuantity found = mm ("0.005");
  g_autoptr (GRand) rand = g_rand_new_with_seed (31);
  const guint n_jobs = 30;

  for (guint i = 0; i < n_jobs; i++)
    {
      g_autoptr (TmJob) job = make_random_job (i, rand);

      put_job (place->path, job);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (tags); i++)
    {
      g_autofree char *slow = tell_slowly (place->path, n_jobs, tags[i], &found);
      g_autofree char *quick = tell_by_book (place->path, tags[i], &found);

      g_assert_cmpstr (quick, ==, slow);
      g_assert_true ((*quick != '\0') == (i < 3));
    }
}

static TmReading *
add_one (TmJob *job, const char *id, const char *serial, const char *method, const char *at)
{
  TmReading *reading = tm_reading_new ();

  reading->row.id = id;
  reading->row.piece = tm_job_find_piece (job, serial);
  reading->row.feature = tm_job_find_feature (job, "1");
  reading->row.at = at;
  reading->value = mm ("25.010");
  reading->method = method;
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
  return reading;
}

/* Only what is concerned comes back: not the other pieces, not the jobs without the gauge. */
static void
test_only_what_is_concerned (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) concerned = make_job ("a");
  g_autoptr (TmJob) other = make_job ("b");
  g_autoptr (GPtrArray) jobs = NULL;
  const TmJob *job;

  add_one (concerned, "1", "1", "micrometer", "2026-05-04T10:00:00Z");
  add_one (concerned, "2", "1", "other", "2026-05-04T10:00:00Z");
  add_one (concerned, "3", "2", "other", "2026-05-04T10:00:00Z");
  add_one (concerned, "4", "3", "micrometer", "2026-02-04T10:00:00Z");
  add_one (other, "1", "1", "other", "2026-05-04T10:00:00Z");
  put_job (place->path, concerned);
  put_job (place->path, other);
  jobs = ask (place->path, "M-1", GOOD);
  g_assert_cmpuint (jobs->len, ==, 1);
  job = g_ptr_array_index (jobs, 0);
  g_assert_cmpstr (job->id, ==, "a");
  g_assert_cmpuint (job->readings->len, ==, 2);
  g_assert_nonnull (tm_job_find_reading (job, "1"));
  g_assert_nonnull (tm_job_find_reading (job, "2"));
  g_assert_cmpuint (job->pieces->len, ==, 4);
}

static TmMethod *
swap_gauge (const char *tag)
{
  TmMethod *method = tm_method_new ();

  method->name = "micrometer";
  g_ptr_array_add (method->gauges, (gpointer)tag);
  return method;
}

static guint
count_rows (const char *path, const char *tag, const char **first)
{
  g_autoptr (GPtrArray) jobs = ask (path, tag, "2026-01-01");
  guint n = 0;

  *first = "";
  for (guint i = 0; i < jobs->len; i++)
    {
      g_autoptr (GArray) rows = tm_recall (g_ptr_array_index (jobs, i), tag, "2026-01-01", NULL);

      if (n == 0 && rows->len > 0)
        *first = g_intern_string (g_array_index (rows, TmRecallRow, 0).reading->row.id);
      n += rows->len;
    }
  return n;
}

/* The method was given another gauge in April: what it read before then was read by the old one, and
 * what it read since by the new one. */
static void
test_method_given_another_gauge (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_job ("a");
  GError *error = NULL;
  TmBook *book;
  const char *first;

  add_one (job, "before", "1", "micrometer", "2026-03-04T10:00:00Z");
  add_one (job, "after", "2", "micrometer", "2026-05-04T10:00:00Z");
  add_one (job, "unnamed", "3", "", "2026-03-05T10:00:00Z");
  put_job (place->path, job);
  g_assert_cmpint (tm_job_replace_method (job, "micrometer", swap_gauge ("M-2")), ==, TM_ADD_OK);
  g_assert_cmpint (tm_job_remove_gauge (job, "M-1"), ==, TM_ADD_OK);
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_save_definitions (book, job, "RW", "2026-04-01T08:00:00Z", &error));
  g_assert_no_error (error);
  tm_book_close (book);
  g_assert_cmpuint (count_rows (place->path, "M-1", &first), ==, 2);
  g_assert_cmpstr (first, ==, "before");
  g_assert_cmpuint (count_rows (place->path, "M-2", &first), ==, 1);
  g_assert_cmpstr (first, ==, "after");
}

/* The feature was given another method since: a reading that names none was taken by the old one. */
static void
test_feature_given_another_method (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_job ("a");
  GError *error = NULL;
  TmBook *book;
  const char *first;

  add_one (job, "before", "1", "", "2026-03-04T10:00:00Z");
  add_one (job, "after", "2", "", "2026-05-04T10:00:00Z");
  put_job (place->path, job);
  tm_job_find_feature (job, "1")->method = "other";
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_true (tm_book_save_definitions (book, job, "RW", "2026-04-01T08:00:00Z", &error));
  tm_book_close (book);
  g_assert_cmpuint (count_rows (place->path, "M-1", &first), ==, 1);
  g_assert_cmpstr (first, ==, "before");
  g_assert_cmpuint (count_rows (place->path, "M-2", &first), ==, 1);
  g_assert_cmpstr (first, ==, "after");
}

/* A tag is not found inside another, however it is written. */
static void
test_tags_are_whole (Place *place, gconstpointer data)
{
  g_autoptr (TmJob) job = make_job ("a");
  g_autoptr (GPtrArray) jobs = NULL;

  add_gauge (job, "M-1\\\nx");
  add_method (job, "odd", "M-1\\\nx");
  add_one (job, "1", "1", "odd", "2026-05-04T10:00:00Z");
  put_job (place->path, job);
  jobs = ask (place->path, "M-1\\\nx", GOOD);
  g_assert_cmpuint (jobs->len, ==, 1);
  g_clear_pointer (&jobs, g_ptr_array_unref);
  jobs = ask (place->path, "M-1", GOOD);
  g_assert_cmpuint (jobs->len, ==, 0);
}

static gboolean
cancel_cb (double fraction, gpointer data)
{
  return fraction < 0.5;
}

static void
test_cancel (Place *place, gconstpointer data)
{
  GError *error = NULL;
  g_autoptr (TmBook) book = NULL;

  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *id = g_strdup_printf ("job-%u", i);
      g_autoptr (TmJob) job = make_job (id);

      add_one (job, "1", "1", "micrometer", "2026-05-04T10:00:00Z");
      put_job (place->path, job);
    }
  book = tm_book_open (place->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_null (tm_book_recall (book, "M-1", GOOD, cancel_cb, NULL, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_CANCELLED);
  g_clear_error (&error);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

#define ADD(name_, function_) \
  g_test_add ("/book/recall/" name_, Place, NULL, place_set_up, function_, place_tear_down)
  ADD ("as-the-slow-way", test_as_the_slow_way);
  ADD ("only-what-is-concerned", test_only_what_is_concerned);
  ADD ("method-given-another-gauge", test_method_given_another_gauge);
  ADD ("feature-given-another-method", test_feature_given_another_method);
  ADD ("tags-are-whole", test_tags_are_whole);
  ADD ("cancel", test_cancel);
  return g_test_run ();
}
