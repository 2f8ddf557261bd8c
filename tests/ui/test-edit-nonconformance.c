/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to nonconformances: a rework that was done takes what was read before it out of what counts, and
 * taking it back, or a book that does not keep it, brings that in again.  Needs no display.
 */

#include "app-edit-nonconformance.h"
#include "edit-support.h"

static void
add_reading (TmJob *job, const char *serial, const char *value)
{
  TmReading *reading = tm_reading_new ();

  reading->row.piece = tm_job_find_piece (job, serial);
  reading->row.feature = tm_job_find_feature (job, "1");
  reading->row.at = "2026-05-04T09:12:00Z";
  reading->place = 1;
  reading->station = "mouth/12";
  tm_quantity_read (value, TM_UNIT_MM, &reading->value);
  g_assert_cmpint (tm_job_add_reading (job, reading), ==, TM_ADD_OK);
}

static TmNonconformance *
make_row (const char *piece, const char *disposition)
{
  TmNonconformance *row = tm_nonconformance_new ();

  row->piece = piece;
  row->feature = "1";
  row->number = "NC-1";
  row->disposition = disposition;
  return row;
}

/* Feature 1 is out on piece 001 and was read on 002; one nonconformance is there. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();

  add_reading (job, "001", "25.040");
  add_reading (job, "002", "25.010");
  tm_job_add_nonconformance (job, make_row ("001", "rework"));
  return job;
}

static TmNonconformance *
get_row (TmDocument *document)
{
  return g_ptr_array_index (tm_document_job (document)->nonconformances, 0);
}

static const TmReading *
get_reading (TmDocument *document, guint at)
{
  return g_ptr_array_index (tm_document_job (document)->readings, at);
}

static gboolean
do_add (TmDocument *document, GError **error)
{
  return tm_edit_put_nonconformance (document, NULL, make_row ("002", "repair"), error);
}

static gboolean
do_change (TmDocument *document, GError **error)
{
  TmNonconformance *row = tm_edit_copy_nonconformance (get_row (document));

  row->disposition = "scrap";
  return tm_edit_put_nonconformance (document, get_row (document), row, error);
}

/* What counts is as the model says whether the book kept it or not. */
static gboolean
do_rework (TmDocument *document, GError **error)
{
  TmNonconformance *row = tm_edit_copy_nonconformance (get_row (document));
  gboolean kept;

  tm_edit_mark_reworked (tm_document_job (document), row, "MK");
  kept = tm_edit_put_nonconformance (document, get_row (document), row, error);
  g_assert_cmpint (get_reading (document, 0)->row.before_rework, ==, kept);
  g_assert_false (get_reading (document, 1)->row.before_rework);
  return kept;
}

static gboolean
do_add_reworked (TmDocument *document, GError **error)
{
  TmNonconformance *row = make_row ("002", "rework");
  gboolean kept;

  tm_edit_mark_reworked (tm_document_job (document), row, "MK");
  kept = tm_edit_put_nonconformance (document, NULL, row, error);
  g_assert_cmpint (get_reading (document, 1)->row.before_rework, ==, kept);
  return kept;
}

static const Edit edits[] = {
  { "add-nonconformance", make_job, do_add },
  { "change-nonconformance", make_job, do_change },
  { "rework-done", make_job, do_rework },
  { "add-reworked", make_job, do_add_reworked },
};

/* The newest reading of that piece and feature is named; a later one counts; taken back, both do. */
static void
test_rework (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmDocument *document = fixture->document;
  TmJob *job = tm_document_job (document);
  g_autoptr (GError) error = NULL;
  TmNonconformance *row;

  g_assert_true (do_rework (document, &error));
  row = get_row (document);
  g_assert_cmpstr (row->rework_by, ==, "MK");
  g_assert_cmpstr (row->rework_after, ==, get_reading (document, 0)->row.id);
  g_assert_cmpuint (strlen (row->rework_at), ==, strlen ("2026-05-04T09:12:00Z"));
  add_reading (job, "001", "25.012");
  g_assert_true (tm_row_counts (&get_reading (document, 2)->row));
  g_assert_false (tm_row_counts (&get_reading (document, 0)->row));
  g_assert_true (tm_row_stands (&get_reading (document, 0)->row));

  row = tm_edit_copy_nonconformance (row);
  tm_edit_unmark_reworked (job, row);
  g_assert_true (tm_edit_put_nonconformance (document, get_row (document), row, &error));
  g_assert_cmpstr (get_row (document)->rework_at, ==, "");
  g_assert_true (tm_row_counts (&get_reading (document, 0)->row));
  ui_fixture_free (fixture);
}

/* Nothing read yet is said in so many words, and the first reading then counts. */
static void
test_none (void)
{
  UiFixture *fixture = ui_fixture_new (ui_make_job ());
  TmJob *job = tm_document_job (fixture->document);
  TmNonconformance *row = make_row ("001", "rework");

  tm_edit_mark_reworked (job, row, "MK");
  g_assert_cmpstr (row->rework_after, ==, "none");
  g_assert_true (tm_edit_put_nonconformance (fixture->document, NULL, row, NULL));
  add_reading (job, "001", "25.012");
  g_assert_true (tm_row_counts (&get_reading (fixture->document, 0)->row));
  ui_fixture_free (fixture);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/nonconformance/rework", test_rework);
  g_test_add_func ("/edit/nonconformance/none", test_none);
  return g_test_run ();
}
