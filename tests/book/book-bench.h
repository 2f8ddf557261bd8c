/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * book-bench: a job in memory beside the same job in a book, and what keeps the two alike.
 */

#pragma once

#include "book-fixture.h"

G_BEGIN_DECLS

#define BENCH_ID "5f6c2f0e-0000-4000-8000-000000000002"

typedef struct {
  Place place;
  TmJob *job;
  TmBook *book;
} Bench;

static inline void
set_up (Bench *bench, gconstpointer data)
{
  GError *error = NULL;

  place_set_up (&bench->place, data);
  bench->job = make_bench_job (BENCH_ID, 3);
  put_job (bench->place.path, bench->job);
  bench->book = tm_book_open (bench->place.path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_no_error (error);
}

static inline void
tear_down (Bench *bench, gconstpointer data)
{
  tm_book_close (bench->book);
  assert_clean (bench->place.path);
  tm_job_free (bench->job);
  place_tear_down (&bench->place, data);
}

/* Records and adds to the job in memory, as the bench does. */
static inline void
record (Bench *bench, TmReading *reading)
{
  GError *error = NULL;

  g_assert_true (tm_book_record_reading (bench->book, BENCH_ID, reading, &error));
  g_assert_no_error (error);
  g_assert_cmpint (tm_job_add_reading (bench->job, reading), ==, TM_ADD_OK);
}

static inline void
assert_same_as_book (Bench *bench)
{
  g_autoptr (TmJob) back = take_job (bench->place.path, BENCH_ID);

  assert_same_job (bench->job, back);
}

static inline void
save (Bench *bench)
{
  GError *error = NULL;

  g_assert_true (tm_book_save_definitions (bench->book, bench->job, "RW", "2026-05-05T08:00:00Z", &error));
  g_assert_no_error (error);
  assert_same_as_book (bench);
}

G_END_DECLS
