/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawing at the Bench: it follows the feature at hand, its balloons go to theirs, and readings go on.
 */

#include <adwaita.h>

#include "app-bench-page-private.h"
#include "app-drawing-view-private.h"
#include "ui-fixture.h"

/* A5 across. */
static const char picture[] = "<svg xmlns='http://www.w3.org/2000/svg' width='210mm' height='148mm'/>";

static void
add_drawing (TmJob *job)
{
  TmDrawing *drawing = tm_drawing_new ();
  g_autofree char *digest = NULL;

  drawing->name = "D-1";
  drawing->media = "image/svg+xml";
  drawing->content = g_bytes_new_static (picture, sizeof picture - 1);
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
  drawing->digest = tm_job_intern (job, digest);
  g_assert_cmpint (tm_job_add_drawing (job, drawing), ==, TM_ADD_OK);
}

static UiFixture *
make_fixture (gboolean with_drawing)
{
  TmJob *job = ui_make_job ();
  UiFixture *fixture;

  if (with_drawing)
    add_drawing (job);
  fixture = ui_fixture_new (job);
  if (!with_drawing)
    return fixture;
  g_assert_true (
      tm_edit_put_mark (fixture->document, "D-1", "1", 0, &(TmMarkSpot) { 0.2, 0.2, 0.25, 0.3 }, NULL));
  g_assert_true (
      tm_edit_put_mark (fixture->document, "D-1", "4", 0, &(TmMarkSpot) { 0.7, 0.7, 0.75, 0.8 }, NULL));
  return fixture;
}

static GtkWidget *
open_page (UiFixture *fixture, TmBenchPage **page)
{
  GtkWidget *window = gtk_window_new ();

  *page = TM_BENCH_PAGE (tm_bench_page_new ());
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 680);
  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (*page));
  tm_bench_page_set_document (*page, fixture->document);
  ui_present (window);
  return window;
}

static void
close_page (GtkWidget *window, UiFixture *fixture)
{
  ui_close (window);
  ui_fixture_free (fixture);
}

static void
go (UiFixture *fixture, const char *balloon, const char *station)
{
  TmJob *job = tm_document_job (fixture->document);

  g_assert_true (tm_document_go (fixture->document, g_ptr_array_index (job->pieces, 0),
                                 tm_job_find_feature (job, balloon), 1, station));
}

static void
toggle (TmBenchPage *page)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "bench.drawing", NULL));
}

static gboolean
is_visible (gpointer widget)
{
  return gtk_widget_get_visible (GTK_WIDGET (widget));
}

/* In the place of the pictures, and back; while a cut is planned the band is there. */
static void
test_toggle (void)
{
  UiFixture *fixture = make_fixture (TRUE);
  TmBenchPage *page;
  GtkWidget *window = open_page (fixture, &page);

  g_assert_true (is_visible (page->drawing_button));
  g_assert_true (is_visible (page->pictures));
  toggle (page);
  g_assert_true (is_visible (page->drawing_pane));
  g_assert_false (is_visible (page->pictures));
  g_assert_true (is_visible (page->entry));
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (page), "bench.plan-cut", NULL));
  g_assert_true (is_visible (page->pictures));
  g_assert_false (is_visible (page->drawing_pane));
  toggle (page);
  g_assert_false (page->planning);
  g_assert_true (is_visible (page->drawing_pane));
  toggle (page);
  g_assert_false (is_visible (page->drawing_pane));
  g_assert_true (is_visible (page->pictures));
  close_page (window, fixture);
}

/* It goes to the balloon of the feature at hand, as large as on paper; a feature judged by pass and fail has
 * it too. */
static void
test_follows (void)
{
  UiFixture *fixture = make_fixture (TRUE);
  TmBenchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  TmDrawingView *view = page->drawing;
  double x, y;

  go (fixture, "1", "mouth/12");
  toggle (page);
  ui_wait_until (tm_drawing_frame_is_set (&view->frame) && !view->closer);
  g_assert_cmpstr (tm_drawing_view_chosen (view), ==, "1");
  g_assert_cmpfloat (view->frame.scale, >=, TM_FRAME_PAPER_SCALE);
  go (fixture, "4", "");
  g_assert_cmpstr (tm_drawing_view_chosen (view), ==, "4");
  g_assert_true (is_visible (page->drawing_pane));
  g_assert_false (is_visible (page->pictures));
  tm_drawing_frame_to_view (&view->frame, 0.7, 0.7, &x, &y);
  g_assert_true (x > 0 && x < view->frame.width && y > 0 && y < view->frame.height);
  go (fixture, "3", "");
  g_assert_nonnull (strstr (gtk_label_get_text (page->drawing_caption), "feature 3 has no balloon"));
  close_page (window, fixture);
}

/* A click on a balloon goes to its feature at the piece at hand; nothing can be moved by it. */
static void
test_click (void)
{
  UiFixture *fixture = make_fixture (TRUE);
  TmBenchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  TmDrawingView *view = page->drawing;
  const TmSpot *spot;
  double x, y;

  go (fixture, "1", "mouth/12");
  toggle (page);
  ui_wait_until (tm_drawing_frame_is_set (&view->frame) && !view->closer);
  tm_drawing_view_fit (view);
  tm_drawing_frame_to_view (&view->frame, 0.7, 0.7, &x, &y);
  tm_drawing_view_click (view, 1, x, y, 0);
  spot = tm_bench_spot (tm_document_bench (fixture->document));
  g_assert_cmpstr (spot->feature->balloon, ==, "4");
  /* Who asked for the whole drawing keeps it. */
  g_assert_true (view->frame.fits);
  g_assert_false (tm_drawing_view_key (view, GDK_KEY_Delete, 0));
  g_assert_false (tm_drawing_view_key (view, GDK_KEY_p, 0));
  g_assert_nonnull (tm_find_mark (tm_document_job (fixture->document), "D-1", "4", 0));
  close_page (window, fixture);
}

/* A balloon of one place goes to that place, also from another place of its feature; one of the feature as a
 * whole leaves the place at hand. */
static void
test_click_place (void)
{
  static const TmMarkSpot whole = { 0.2, 0.8, 0.25, 0.9 }, second = { 0.4, 0.8, 0.45, 0.9 };
  UiFixture *fixture = make_fixture (TRUE);
  TmBenchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  TmDrawingView *view = page->drawing;
  const TmSpot *spot;
  double x, y;

  g_assert_true (tm_edit_put_mark (fixture->document, "D-1", "2", 0, &whole, NULL));
  g_assert_true (tm_edit_put_mark (fixture->document, "D-1", "2", 2, &second, NULL));
  go (fixture, "2", "");
  toggle (page);
  ui_wait_until (tm_drawing_frame_is_set (&view->frame) && !view->closer);
  tm_drawing_view_fit (view);
  tm_drawing_frame_to_view (&view->frame, second.x, second.y, &x, &y);
  tm_drawing_view_click (view, 1, x, y, 0);
  spot = tm_bench_spot (tm_document_bench (fixture->document));
  g_assert_cmpstr (spot->feature->balloon, ==, "2");
  g_assert_cmpuint (spot->place, ==, 2);
  tm_drawing_frame_to_view (&view->frame, whole.x, whole.y, &x, &y);
  tm_drawing_view_click (view, 1, x, y, 0);
  g_assert_cmpuint (tm_bench_spot (tm_document_bench (fixture->document))->place, ==, 2);
  close_page (window, fixture);
}

/* What is recorded shows at once.  Limits of 25 H7 (0/+21 µm) as ISO 286-2 has them. */
static void
test_recorded (void)
{
  UiFixture *fixture = make_fixture (TRUE);
  TmJob *job = tm_document_job (fixture->document);
  TmBenchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  const TmFeature *bore = tm_job_find_feature (job, "1");
  TmDrawingState state;

  go (fixture, "1", "mouth/12");
  toggle (page);
  ui_wait_until (tm_drawing_states_get (page->drawing->states, bore, 0, &state));
  g_assert_cmpint (state.verdict, ==, TM_VERDICT_NOT_MEASURED);
  tm_document_set_text (fixture->document, "25.040");
  g_assert_cmpint (tm_document_submit (fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
  g_assert_true (tm_drawing_states_get (page->drawing->states, bore, 0, &state));
  g_assert_cmpint (state.verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpint (state.point, ==, TM_POINT_UP);
  close_page (window, fixture);
}

/* A feature that is taken out takes its balloon along, and what was said of the others stays true; one that
 * comes to have fewer places is asked for no more than those. */
static void
test_features_change (void)
{
  UiFixture *fixture = make_fixture (TRUE);
  TmJob *job = tm_document_job (fixture->document);
  TmBenchPage *page;
  GtkWidget *window = open_page (fixture, &page);
  TmDrawingState state;
  TmFeature *with;

  go (fixture, "1", "mouth/12");
  toggle (page);
  ui_wait_until (tm_drawing_states_get (page->drawing->states, tm_job_find_feature (job, "1"), 0, &state)
                 && tm_drawing_states_get (page->drawing->states, tm_job_find_feature (job, "4"), 0, &state));
  g_assert_cmpuint (page->drawing->items->len, ==, 2);
  g_assert_true (tm_edit_remove_feature (fixture->document, "4", NULL));
  g_assert_cmpuint (page->drawing->items->len, ==, 1);
  g_assert_cmpstr (tm_drawing_view_chosen (page->drawing), ==, "1");

  with = tm_edit_copy_feature (tm_job_find_feature (job, "1"));
  with->places = 3;
  g_assert_true (tm_edit_replace_feature (fixture->document, "1", with, NULL));
  g_assert_true (
      tm_edit_put_mark (fixture->document, "D-1", "1", 3, &(TmMarkSpot) { 0.5, 0.2, 0.55, 0.3 }, NULL));
  tm_drawing_view_choose_place (page->drawing, "1", 3, FALSE);
  with = tm_edit_copy_feature (tm_job_find_feature (job, "1"));
  with->places = 2;
  g_assert_true (tm_edit_replace_feature (fixture->document, "1", with, NULL));
  ui_wait_until (tm_drawing_states_get (page->drawing->states, tm_job_find_feature (job, "1"), 0, &state));
  close_page (window, fixture);
}

/* Without a drawing there is no button, and the key says where one is added. */
static void
test_none (void)
{
  UiFixture *fixture = make_fixture (FALSE);
  TmBenchPage *page;
  GtkWidget *window = open_page (fixture, &page);

  g_assert_false (is_visible (page->drawing_button));
  toggle (page);
  g_assert_false (is_visible (page->drawing_pane));
  g_assert_true (is_visible (page->pictures));
  close_page (window, fixture);
}

int
main (int argc, char *argv[])
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/bench-drawing/toggle", test_toggle);
  g_test_add_func ("/bench-drawing/follows", test_follows);
  g_test_add_func ("/bench-drawing/click", test_click);
  g_test_add_func ("/bench-drawing/click-place", test_click_place);
  g_test_add_func ("/bench-drawing/recorded", test_recorded);
  g_test_add_func ("/bench-drawing/features-change", test_features_change);
  g_test_add_func ("/bench-drawing/none", test_none);
  return g_test_run ();
}
