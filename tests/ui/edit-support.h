/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * edit-support: each change to a job's definitions is in the book when it is in the model, and neither when
 * the book does not keep it.
 */

#pragma once

#include "app-edit.h"
#include "exchange-job.h"
#include "ui-fixture.h"

static inline char *
bytes_of (TmJob *job)
{
  return g_string_free (tm_job_to_string (job), FALSE);
}

/* The job in the book is the job in the model. */
static inline void
assert_kept (UiFixture *fixture)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) loaded
      = tm_book_load_job (fixture->book, tm_document_job (fixture->document)->id, NULL, NULL, &error);
  g_autofree char *in_model = bytes_of (tm_document_job (fixture->document));
  g_autofree char *in_book = NULL;

  g_assert_no_error (error);
  in_book = bytes_of (loaded);
  g_assert_cmpstr (in_book, ==, in_model);
}

typedef struct {
  const char *name;
  TmJob *(*make) (void); /* the job that it changes */
  gboolean (*run) (TmDocument *document, GError **error);
} Edit;

static inline void
count_cb (guint *n)
{
  (*n)++;
}

static inline void
test_kept (gconstpointer data)
{
  const Edit *edit = data;
  UiFixture *fixture = ui_fixture_new (edit->make ());
  g_autofree char *before = bytes_of (tm_document_job (fixture->document));
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;
  guint n_changes = 0;

  g_signal_connect_swapped (fixture->document, "definitions-changed", G_CALLBACK (count_cb), &n_changes);
  g_assert_true (edit->run (fixture->document, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (n_changes, ==, 1);
  after = bytes_of (tm_document_job (fixture->document));
  g_assert_cmpstr (after, !=, before);
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

/* Every row that a view may hold. */
static inline GPtrArray *
addresses_of (const TmJob *job)
{
  GPtrArray *all = g_ptr_array_new ();
  const GPtrArray *lists[]
      = { job->people,         job->gauges,          job->methods,   job->features,      job->pieces,
          job->calibrations,   job->checks,          job->pin_sizes, job->budget_lines,  job->studies,
          job->study_readings, job->tools,           job->materials, job->mate_sizes,    job->supplies,
          job->sub_parts,      job->nonconformances, job->drawings,  job->balloon_marks, job->report_fields };

  for (guint l = 0; l < G_N_ELEMENTS (lists); l++)
    for (guint i = 0; i < lists[l]->len; i++)
      g_ptr_array_add (all, g_ptr_array_index (lists[l], i));
  return all;
}

static inline gboolean
are_the_same (const GPtrArray *a, const GPtrArray *b)
{
  return a->len == b->len && memcmp (a->pdata, b->pdata, a->len * sizeof (gpointer)) == 0;
}

/* A book that does not write leaves the model as it was, byte for byte; where a row came back at another
 * address, whoever held the old one is told. */
static inline void
test_undone (gconstpointer data)
{
  const Edit *edit = data;
  UiFixture *fixture = ui_fixture_new (edit->make ());
  g_autofree char *id = g_strdup (tm_document_job (fixture->document)->id);
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GError) refused = NULL;
  g_autoptr (GPtrArray) held = NULL;
  g_autoptr (GPtrArray) now = NULL;
  guint n_changes = 0;

  g_assert_finalize_object (fixture->document);
  tm_book_close (fixture->book);
  fixture->book = tm_book_open (fixture->path, TM_BOOK_OPEN_READ_ONLY, &error);
  g_assert_no_error (error);
  fixture->document
      = tm_document_new (fixture->book, tm_book_load_job (fixture->book, id, NULL, NULL, &error));
  g_assert_no_error (error);
  g_signal_connect_swapped (fixture->document, "definitions-changed", G_CALLBACK (count_cb), &n_changes);

  before = bytes_of (tm_document_job (fixture->document));
  held = addresses_of (tm_document_job (fixture->document));
  g_assert_false (edit->run (fixture->document, &refused));
  g_assert_error (refused, TM_BOOK_ERROR, TM_BOOK_ERROR_READ_ONLY);
  after = bytes_of (tm_document_job (fixture->document));
  g_assert_cmpstr (after, ==, before);
  now = addresses_of (tm_document_job (fixture->document));
  g_assert_cmpuint (n_changes, ==, are_the_same (held, now) ? 0 : 1);
  ui_fixture_free (fixture);
}

static inline void
add_edits (const Edit *edits, gsize n)
{
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *kept = g_strdup_printf ("/edit/kept/%s", edits[i].name);
      g_autofree char *undone = g_strdup_printf ("/edit/undone/%s", edits[i].name);

      g_test_add_data_func (kept, &edits[i], test_kept);
      g_test_add_data_func (undone, &edits[i], test_undone);
    }
}
