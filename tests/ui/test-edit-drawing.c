/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Changes to the drawings of a job and to the balloons on them.  Needs no display.
 */

#include "app-edit-drawing.h"
#include "edit-support.h"

#include <math.h>

static const char picture[] = "<svg xmlns='http://www.w3.org/2000/svg' width='210mm' height='148mm'/>";

static TmDrawing *
make_drawing (const char *name)
{
  TmDrawing *drawing = tm_drawing_new ();

  drawing->name = name;
  drawing->media = "image/svg+xml";
  drawing->content = g_bytes_new_static (picture, sizeof picture - 1);
  return drawing;
}

static void
add_drawing (TmJob *job, const char *name)
{
  TmDrawing *drawing = make_drawing (name);
  g_autofree char *digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);

  drawing->digest = tm_job_intern (job, digest);
  g_assert_cmpint (tm_job_add_drawing (job, drawing), ==, TM_ADD_OK);
}

static void
add_mark (TmJob *job, const char *drawing, const char *balloon, guint place, const char *x, const char *y)
{
  TmBalloonMark *mark = tm_balloon_mark_new ();

  mark->drawing = tm_job_intern (job, drawing);
  mark->feature = tm_job_intern (job, balloon);
  mark->place = place;
  g_assert_cmpint (tm_quantity_read (x, TM_UNIT_HARDNESS, &mark->x), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read (y, TM_UNIT_HARDNESS, &mark->y), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_balloon_mark (job, mark), ==, TM_ADD_OK);
}

/* Clockwise from the upper left: 3, 1, 2 on the first drawing; 4 has no balloon there.  A place of 2 has its
 * own on the second. */
static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();

  add_drawing (job, "D-1");
  add_drawing (job, "D-2");
  add_mark (job, "D-1", "1", 0, "0.9", "0.3");
  add_mark (job, "D-1", "2", 0, "0.2", "0.9");
  add_mark (job, "D-1", "3", 0, "0.2", "0.1");
  add_mark (job, "D-2", "2", 4, "0.5", "0.5");
  return job;
}

static TmDrawing *
get_drawing (TmDocument *document, guint at)
{
  return g_ptr_array_index (tm_document_job (document)->drawings, at);
}

static gboolean
do_add (TmDocument *document, GError **error)
{
  g_autoptr (GPtrArray) drawings = g_ptr_array_new ();

  g_ptr_array_add (drawings, make_drawing ("D-3"));
  g_ptr_array_add (drawings, make_drawing ("D-4"));
  return tm_edit_add_drawings (document, drawings, error);
}

static gboolean
do_name (TmDocument *document, GError **error)
{
  return tm_edit_name_drawing (document, get_drawing (document, 0), "D-1 rev C", "2", error);
}

static gboolean
do_replace (TmDocument *document, GError **error)
{
  static const char other[] = "<svg xmlns='http://www.w3.org/2000/svg' width='420mm' height='297mm'/>";
  TmDrawing *with = make_drawing ("D-9");

  g_bytes_unref (with->content);
  with->content = g_bytes_new_static (other, sizeof other - 1);
  return tm_edit_replace_drawing (document, get_drawing (document, 0), with, error);
}

static gboolean
do_remove (TmDocument *document, GError **error)
{
  return tm_edit_remove_drawing (document, get_drawing (document, 0), error);
}

static gboolean
do_put (TmDocument *document, GError **error)
{
  return tm_edit_put_mark (document, "D-2", "4", 0, &(TmMarkSpot) { 0.25, 0.5, 0.3, 0.6 }, error);
}

static gboolean
do_move (TmDocument *document, GError **error)
{
  return tm_edit_put_mark (document, "D-1", "2", 0, &(TmMarkSpot) { 0.75, 0.5, (double)NAN, 0 }, error);
}

static gboolean
do_take_off (TmDocument *document, GError **error)
{
  return tm_edit_remove_mark (document, tm_find_mark (tm_document_job (document), "D-1", "2", 0), error);
}

static gboolean
do_number (TmDocument *document, GError **error)
{
  return tm_edit_number_balloons (document, error);
}

/* Its balloons go with it, and come back with it. */
static gboolean
do_remove_feature (TmDocument *document, GError **error)
{
  return tm_edit_remove_feature (document, "1", error);
}

/* The balloon of a place that goes; likewise. */
static gboolean
do_fewer_places (TmDocument *document, GError **error)
{
  TmFeature *with = tm_edit_copy_feature (tm_job_find_feature (tm_document_job (document), "2"));

  with->places = 3;
  return tm_edit_replace_feature (document, "2", with, error);
}

static const Edit edits[] = {
  { "add-drawings", make_job, do_add },
  { "name-drawing", make_job, do_name },
  { "remove-drawing", make_job, do_remove },
  { "put-balloon", make_job, do_put },
  { "move-balloon", make_job, do_move },
  { "remove-balloon", make_job, do_take_off },
  { "replace-drawing", make_job, do_replace },
  { "number-balloons", make_job, do_number },
  { "remove-feature", make_job, do_remove_feature },
  { "fewer-places", make_job, do_fewer_places },
};

/* The balloons follow their drawing to its name, and go with it. */
static void
test_marks_follow (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  const TmJob *job = tm_document_job (fixture->document);

  g_assert_true (do_name (fixture->document, NULL));
  g_assert_nonnull (tm_find_mark (job, "D-1 rev C", "3", 0));
  g_assert_null (tm_find_mark (job, "D-1", "3", 0));
  g_assert_true (do_put (fixture->document, NULL));
  g_assert_true (do_remove (fixture->document, NULL));
  g_assert_cmpuint (job->balloon_marks->len, ==, 2);
  g_assert_cmpstr (tm_find_any_mark (job, "4")->drawing, ==, "D-2");
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

/* Another revision of the sheet keeps name and balloons. */
static void
test_replace (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  const TmDrawing *drawing = get_drawing (fixture->document, 0);
  g_autofree char *before = g_strdup (drawing->digest);
  TmDrawing *empty = make_drawing ("D-9");

  g_assert_true (do_replace (fixture->document, NULL));
  g_assert_cmpstr (drawing->name, ==, "D-1");
  g_assert_cmpstr (drawing->digest, !=, before);
  g_assert_nonnull (tm_find_mark (tm_document_job (fixture->document), "D-1", "3", 0));
  assert_kept (fixture);
  g_bytes_unref (empty->content);
  empty->content = g_bytes_new_static ("", 0);
  g_assert_false (
      tm_edit_replace_drawing (fixture->document, get_drawing (fixture->document, 0), empty, NULL));
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

/* Kept to a hundred-thousandth of the page, at its edge where it was to lie outside. */
static void
test_spot (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  const TmMarkSpot wild = { 1.7, -0.2, 0.123456, 1.0 };
  TmMarkSpot spot;

  g_assert_true (tm_edit_put_mark (fixture->document, "D-1", "1", 0, &wild, NULL));
  spot = tm_mark_spot (tm_find_mark (tm_document_job (fixture->document), "D-1", "1", 0));
  g_assert_cmpfloat_with_epsilon (spot.x, 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (spot.y, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (spot.to_x, 0.12346, 1e-12);
  g_assert_cmpfloat_with_epsilon (spot.to_y, 1, 1e-12);
  g_assert_true (do_move (fixture->document, NULL));
  spot = tm_mark_spot (tm_find_mark (tm_document_job (fixture->document), "D-1", "2", 0));
  g_assert_true (isnan (spot.to_x));
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

static const char *
requirement_of (TmDocument *document, guint at)
{
  return ((TmFeature *)g_ptr_array_index (tm_document_job (document)->features, at))->requirement;
}

/* The upper left comes first, then on clockwise; what has no balloon follows; a bonus stays with its size. */
static void
test_number (void)
{
  TmJob *job = make_job ();
  UiFixture *fixture;
  const TmFeature *position;

  tm_job_find_feature (job, "3")->size_feature = tm_job_intern (job, "1");
  fixture = ui_fixture_new (job);
  position = tm_job_find_feature (job, "3");
  g_assert_true (tm_edit_number_balloons (fixture->document, NULL));
  g_assert_cmpstr (requirement_of (fixture->document, 0), ==, "⌖ Ø0.2 A B");
  g_assert_cmpstr (requirement_of (fixture->document, 1), ==, "Ø25 H7");
  g_assert_cmpstr (requirement_of (fixture->document, 2), ==, "4X Ø6.6 ±0.15");
  g_assert_cmpstr (requirement_of (fixture->document, 3), ==, "M8x1.25 6H");
  g_assert_true (position == tm_job_find_feature (job, "1"));
  g_assert_cmpstr (position->size_feature, ==, "2");
  g_assert_nonnull (tm_find_mark (job, "D-1", "1", 0));
  g_assert_cmpfloat_with_epsilon (tm_mark_spot (tm_find_mark (job, "D-1", "1", 0)).y, 0.1, 1e-9);
  assert_kept (fixture);
  ui_fixture_free (fixture);
}

/* What was recorded stays under its number, and nothing else is numbered either. */
static void
test_number_recorded (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmJob *job = tm_document_job (fixture->document);
  g_autoptr (GError) error = NULL;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  g_assert_true (tm_document_go (fixture->document, g_ptr_array_index (job->pieces, 0),
                                 tm_job_find_feature (job, "1"), 1, "mouth/12"));
  tm_document_set_text (fixture->document, "25.010");
  g_assert_cmpint (tm_document_submit (fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
  before = bytes_of (job);
  g_assert_false (tm_edit_number_balloons (fixture->document, &error));
  g_assert_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "1"));
  after = bytes_of (job);
  g_assert_cmpstr (after, ==, before);
  ui_fixture_free (fixture);
}

/* A baseline report is not numbered anew: what it speaks of keeps its number. */
static void
test_number_by_reference (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  TmJob *job = tm_document_job (fixture->document);
  g_autoptr (GError) error = NULL;
  g_autofree char *before = NULL;
  g_autofree char *after = NULL;

  job->first_article = TM_FIRST_ARTICLE_PARTIAL;
  tm_job_find_feature (job, "4")->affected = TRUE;
  before = bytes_of (job);
  g_assert_false (tm_edit_number_balloons (fixture->document, &error));
  g_assert_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_nonnull (strstr (error->message, "baseline"));
  after = bytes_of (job);
  g_assert_cmpstr (after, ==, before);
  for (guint i = 0; i < job->features->len; i++)
    ((TmFeature *)g_ptr_array_index (job->features, i))->affected = TRUE;
  g_assert_true (tm_edit_number_balloons (fixture->document, NULL));
  ui_fixture_free (fixture);
}

static void
assert_refused (TmDocument *document, GPtrArray *drawings)
{
  g_autofree char *before = bytes_of (tm_document_job (document));
  g_autofree char *after = NULL;
  g_autoptr (GError) error = NULL;

  g_assert_false (tm_edit_add_drawings (document, drawings, &error));
  g_assert_error (error, TM_EDIT_ERROR, TM_EDIT_ERROR_REFUSED);
  g_assert_null (strchr (error->message, '\n'));
  after = bytes_of (tm_document_job (document));
  g_assert_cmpstr (after, ==, before);
}

/* A name that is taken, nothing in the file, too much in it: none of the files is added. */
static void
test_refuses (void)
{
  UiFixture *fixture = ui_fixture_new (make_job ());
  g_autofree char *much = g_malloc0 (TM_BOOK_CONTENT_MAX + 1u);

  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (GPtrArray) drawings = g_ptr_array_new ();
      TmDrawing *second = make_drawing (i == 0 ? "D-1" : "D-4");

      g_ptr_array_add (drawings, make_drawing ("D-3"));
      g_ptr_array_add (drawings, second);
      if (i > 0)
        {
          g_bytes_unref (second->content);
          second->content = g_bytes_new_static (much, i == 1 ? 0 : TM_BOOK_CONTENT_MAX + 1u);
        }
      assert_refused (fixture->document, drawings);
    }
  g_assert_false (
      tm_edit_name_drawing (fixture->document, get_drawing (fixture->document, 0), "D-2", "", NULL));
  g_assert_false (tm_edit_name_drawing (fixture->document, get_drawing (fixture->document, 0), "", "", NULL));
  g_assert_false (tm_edit_put_mark (fixture->document, "D-1", "2", 5, &(TmMarkSpot) { 0, 0, 0, 0 }, NULL));
  g_assert_false (tm_edit_put_mark (fixture->document, "D-9", "2", 0, &(TmMarkSpot) { 0, 0, 0, 0 }, NULL));
  ui_fixture_free (fixture);
}

static void
test_free_name (void)
{
  g_autoptr (TmJob) job = make_job ();
  g_autofree char *same = tm_edit_free_drawing_name (job, "D-3");
  g_autofree char *other = tm_edit_free_drawing_name (job, "D-2");

  g_assert_cmpstr (same, ==, "D-3");
  g_assert_cmpstr (other, ==, "D-2 (2)");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_edits (edits, G_N_ELEMENTS (edits));
  g_test_add_func ("/edit/drawing/marks-follow", test_marks_follow);
  g_test_add_func ("/edit/drawing/replace", test_replace);
  g_test_add_func ("/edit/drawing/spot", test_spot);
  g_test_add_func ("/edit/drawing/number", test_number);
  g_test_add_func ("/edit/drawing/number-recorded", test_number_recorded);
  g_test_add_func ("/edit/drawing/number-by-reference", test_number_by_reference);
  g_test_add_func ("/edit/drawing/refuses", test_refuses);
  g_test_add_func ("/edit/drawing/free-name", test_free_name);
  return g_test_run ();
}
