/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawing with its balloons: put, moved and taken back by pointer and keys, their states, and the Job
 * page's view around it.
 */

#include <adwaita.h>
#include <math.h>
#include <signal.h>
#include <sys/resource.h>

#include "app-drawing-add.h"
#include "app-drawing-view-private.h"
#include "app-job-drawing-private.h"
#include "app-job-page.h"
#include "ui-fixture.h"

/* A5 across. */
static const char picture[]
    = "<svg xmlns='http://www.w3.org/2000/svg' width='210mm' height='148mm' viewBox='0 0 210 148'>"
      "<rect x='20' y='20' width='100' height='60' fill='none' stroke='black'/></svg>";

static void
add_drawing (TmJob *job, const char *name)
{
  TmDrawing *drawing = tm_drawing_new ();
  g_autofree char *digest = NULL;

  drawing->name = tm_job_intern (job, name);
  drawing->media = "image/svg+xml";
  drawing->content = g_bytes_new_static (picture, sizeof picture - 1);
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
  drawing->digest = tm_job_intern (job, digest);
  g_assert_cmpint (tm_job_add_drawing (job, drawing), ==, TM_ADD_OK);
}

static TmJob *
make_job (void)
{
  TmJob *job = ui_make_job ();

  add_drawing (job, "D-1");
  add_drawing (job, "D-2");
  return job;
}

typedef struct {
  UiFixture *fixture;
  GtkWidget *window;
  TmJobDrawing *page;
  TmDrawingView *view;
} Shown;

static Shown
show (TmJob *job)
{
  Shown shown = { ui_fixture_new (job), gtk_window_new (), NULL, NULL };

  shown.page = TM_JOB_DRAWING (tm_job_drawing_new ());
  shown.view = shown.page->view;
  gtk_window_set_default_size (GTK_WINDOW (shown.window), 1280, 680);
  gtk_window_set_child (GTK_WINDOW (shown.window), GTK_WIDGET (shown.page));
  tm_job_drawing_set_document (shown.page, shown.fixture->document);
  gtk_window_present (GTK_WINDOW (shown.window));
  if (job->drawings->len > 0)
    {
      ui_wait_until (tm_drawing_frame_is_set (&shown.view->frame));
      tm_job_drawing_enter (shown.page);
    }
  return shown;
}

static void
end (Shown *shown)
{
  ui_close (shown->window);
  ui_fixture_free (shown->fixture);
}

static TmJob *
job_of (Shown *shown)
{
  return tm_document_job (shown->fixture->document);
}

static void
click_at (Shown *shown, double share_x, double share_y, int n_press, GdkModifierType state)
{
  double x, y;

  tm_drawing_frame_to_view (&shown->view->frame, share_x, share_y, &x, &y);
  tm_drawing_view_click (shown->view, n_press, x, y, state);
}

static TmMarkSpot
spot_of (Shown *shown, const char *balloon)
{
  TmBalloonMark *mark = tm_find_mark (job_of (shown), "D-1", balloon, 0);

  g_assert_nonnull (mark);
  return tm_mark_spot (mark);
}

/* A click a feature; the leader points where it was clicked, within a pixel, and the balloon stands beside.
 */
static void
test_clicks (void)
{
  static const double at[][2] = { { 0.2, 0.2 }, { 0.5, 0.2 }, { 0.2, 0.6 }, { 0.55, 0.55 } };
  Shown shown = show (make_job ());

  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *balloon = g_strdup_printf ("%u", i + 1);
      TmMarkSpot spot;

      g_assert_cmpstr (tm_drawing_view_chosen (shown.view), ==, balloon);
      g_assert_cmpstr (tm_drawing_list_chosen (shown.page->list), ==, balloon);
      click_at (&shown, at[i][0], at[i][1], 1, 0);
      spot = spot_of (&shown, balloon);
      g_assert_cmpfloat_with_epsilon (spot.to_x, at[i][0], 0.002);
      g_assert_cmpfloat_with_epsilon (spot.to_y, at[i][1], 0.002);
      g_assert_cmpfloat (hypot (spot.x - spot.to_x, spot.y - spot.to_y), >, 0.01);
    }
  /* All are placed: a further click puts none, and the second of a double click neither. */
  click_at (&shown, 0.8, 0.8, 1, 0);
  click_at (&shown, 0.8, 0.8, 2, 0);
  g_assert_cmpuint (job_of (&shown)->balloon_marks->len, ==, 4);
  /* A click on a balloon chooses it, in the list too. */
  click_at (&shown, spot_of (&shown, "2").x, spot_of (&shown, "2").y, 1, 0);
  g_assert_cmpstr (tm_drawing_list_chosen (shown.page->list), ==, "2");
  end (&shown);
}

static void
test_second_click (void)
{
  Shown shown = show (make_job ());

  click_at (&shown, 0.3, 0.3, 1, 0);
  click_at (&shown, 0.3, 0.3, 2, 0);
  g_assert_cmpuint (job_of (&shown)->balloon_marks->len, ==, 1);
  g_assert_cmpstr (tm_drawing_view_chosen (shown.view), ==, "2");
  end (&shown);
}

static void
release_arrow (Shown *shown)
{
  tm_drawing_view_settle (shown->view);
}

static void
test_keys (void)
{
  Shown shown = show (make_job ());
  TmDrawingView *view = shown.view;
  TmMarkSpot before, after;
  double step;

  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Return, 0));
  before = spot_of (&shown, "1");
  g_assert_cmpfloat_with_epsilon (before.to_x, 0.5, 0.001);
  g_assert_cmpfloat_with_epsilon (before.to_y, 0.5, 0.001);
  g_assert_cmpstr (tm_drawing_view_chosen (view), ==, "2");
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_p, 0));
  g_assert_cmpstr (tm_drawing_view_chosen (view), ==, "1");
  /* Held down it is one change, and one to take back. */
  step = 1 / (view->frame.page_width * view->frame.scale);
  for (guint i = 0; i < 5; i++)
    g_assert_true (tm_drawing_view_key (view, GDK_KEY_Right, 0));
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "1").x, before.x, 1e-9);
  release_arrow (&shown);
  after = spot_of (&shown, "1");
  g_assert_cmpfloat_with_epsilon (after.x - before.x, 50 * step, 2e-5);
  g_assert_cmpfloat_with_epsilon (after.to_x, before.to_x, 1e-9);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Right, GDK_SHIFT_MASK));
  release_arrow (&shown);
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "1").x - after.x, step, 2e-5);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Left, GDK_CONTROL_MASK));
  release_arrow (&shown);
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "1").to_x - before.to_x, -10 * step, 2e-5);
  for (guint i = 0; i < 3; i++)
    g_assert_true (tm_drawing_view_undo (view));
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "1").x, before.x, 1e-9);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Delete, 0));
  g_assert_null (tm_find_mark (job_of (&shown), "D-1", "1", 0));
  g_assert_true (tm_drawing_view_undo (view));
  g_assert_nonnull (tm_find_mark (job_of (&shown), "D-1", "1", 0));
  g_assert_true (tm_drawing_view_undo (view));
  g_assert_cmpuint (job_of (&shown)->balloon_marks->len, ==, 0);
  g_assert_false (tm_drawing_view_undo (view));
  end (&shown);
}

/* Files may grow no longer than that. */
static void
limit_files (rlim_t most)
{
  struct rlimit limit = { 0 };

  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &limit), ==, 0);
  limit.rlim_cur = most < limit.rlim_max ? most : limit.rlim_max;
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &limit), ==, 0);
}

/* With no room on the disk nothing is taken back, and later it is. */
static void
test_undo_again (void)
{
  Shown shown = show (make_job ());

  signal (SIGXFSZ, SIG_IGN);
  click_at (&shown, 0.5, 0.5, 1, 0);
  limit_files (1000);
  g_assert_true (tm_drawing_view_undo (shown.view));
  limit_files (RLIM_INFINITY);
  g_assert_nonnull (tm_find_mark (job_of (&shown), "D-1", "1", 0));
  g_assert_true (tm_drawing_view_undo (shown.view));
  g_assert_null (tm_find_mark (job_of (&shown), "D-1", "1", 0));
  g_assert_false (tm_drawing_view_undo (shown.view));
  end (&shown);
}

/* Escape gives a move up, then lets the balloon go; then the arrows move the page. */
static void
test_escape (void)
{
  Shown shown = show (make_job ());
  TmDrawingView *view = shown.view;
  TmMarkSpot before;
  double x;

  click_at (&shown, 0.5, 0.5, 1, 0);
  tm_drawing_view_choose (view, "1", FALSE);
  before = spot_of (&shown, "1");
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Down, 0));
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Escape, 0));
  release_arrow (&shown);
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "1").y, before.y, 1e-9);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Escape, 0));
  g_assert_null (tm_drawing_view_chosen (view));
  g_assert_null (tm_drawing_list_chosen (shown.page->list));
  g_assert_false (tm_drawing_view_key (view, GDK_KEY_Escape, 0));
  for (guint i = 0; i < 8; i++)
    g_assert_true (tm_drawing_view_key (view, GDK_KEY_plus, GDK_CONTROL_MASK));
  x = view->frame.x;
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Right, 0));
  g_assert_cmpfloat (view->frame.x, <, x);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_0, GDK_CONTROL_MASK));
  g_assert_true (view->frame.fits);
  end (&shown);
}

/* A balloon on another drawing brings that drawing; Page Down turns, and stays at the last. */
static void
test_drawings (void)
{
  TmJob *job = make_job ();
  Shown shown = show (job);
  const TmMarkSpot spot = { 0.4, 0.4, 0.5, 0.5 };

  g_assert_true (tm_edit_put_mark (shown.fixture->document, "D-2", "3", 0, &spot, NULL));
  g_assert_cmpstr (tm_drawing_view_drawing (shown.view), ==, "D-1");
  tm_job_drawing_choose (shown.page, "3");
  g_assert_cmpstr (tm_drawing_view_drawing (shown.view), ==, "D-2");
  g_assert_cmpuint (gtk_drop_down_get_selected (shown.page->drop), ==, 1);
  g_assert_true (tm_drawing_view_key (shown.view, GDK_KEY_Page_Down, 0));
  g_assert_cmpstr (tm_drawing_view_drawing (shown.view), ==, "D-2");
  g_assert_true (tm_drawing_view_key (shown.view, GDK_KEY_Page_Up, 0));
  g_assert_cmpstr (tm_drawing_view_drawing (shown.view), ==, "D-1");
  gtk_drop_down_set_selected (shown.page->drop, 1);
  g_assert_cmpstr (tm_drawing_view_drawing (shown.view), ==, "D-2");
  /* Taken out of the job, the other one is shown. */
  g_assert_true (tm_edit_remove_drawing (shown.fixture->document, tm_job_find_drawing (job, "D-2"), NULL));
  g_assert_cmpstr (tm_drawing_view_drawing (shown.view), ==, "D-1");
  g_assert_true (tm_edit_remove_drawing (shown.fixture->document, tm_job_find_drawing (job, "D-1"), NULL));
  g_assert_cmpstr (gtk_stack_get_visible_child_name (shown.page->stack), ==, "empty");
  end (&shown);
}

static TmDrawingState
state_of (Shown *shown, const char *balloon)
{
  const TmFeature *feature = tm_job_find_feature (job_of (shown), balloon);
  TmDrawingState state;

  tm_drawing_states_get (shown->view->states, feature, 0, &state);
  ui_wait_until (tm_drawing_states_get (shown->view->states, feature, 0, &state));
  return state;
}

static void
record (Shown *shown, guint piece, const char *balloon, const char *station, const char *text)
{
  TmJob *job = job_of (shown);

  g_assert_true (tm_document_go (shown->fixture->document, g_ptr_array_index (job->pieces, piece),
                                 tm_job_find_feature (job, balloon), 1, station));
  tm_document_set_text (shown->fixture->document, text);
  g_assert_cmpint (tm_document_submit (shown->fixture->document, NULL), ==, TM_SUBMIT_RECORDED);
}

/* A reading changes the balloon's state, another piece has its own; the description says it.  Limits of 25 H7
 * (0/+21 µm) as ISO 286-2 has them. */
static void
test_states (void)
{
  Shown shown = show (make_job ());

  click_at (&shown, 0.5, 0.5, 1, 0);
  tm_job_drawing_choose (shown.page, "1");
  g_assert_cmpint (state_of (&shown, "1").verdict, ==, TM_VERDICT_NOT_MEASURED);
  record (&shown, 0, "1", "mouth/12", "24.990");
  tm_document_go (shown.fixture->document, g_ptr_array_index (job_of (&shown)->pieces, 0),
                  tm_job_find_feature (job_of (&shown), "2"), 1, "");
  g_assert_cmpint (state_of (&shown, "1").verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpint (state_of (&shown, "1").point, ==, TM_POINT_DOWN);
  ui_wait_until (strstr (shown.view->said, "out") != NULL);
  g_assert_nonnull (strstr (shown.view->said, "Ø25 H7"));
  tm_document_go (shown.fixture->document, g_ptr_array_index (job_of (&shown)->pieces, 1),
                  tm_job_find_feature (job_of (&shown), "2"), 1, "");
  g_assert_cmpint (state_of (&shown, "1").verdict, ==, TM_VERDICT_NOT_MEASURED);
  end (&shown);
}

/* Ctrl and a click asks for a feature there; typed, it is in the job with its balloon. */
static void
test_new_feature (void)
{
  Shown shown = show (make_job ());
  const TmFeature *feature;

  click_at (&shown, 0.25, 0.75, 1, GDK_CONTROL_MASK);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (shown.page->new_feature)));
  g_signal_emit_by_name (shown.page->new_feature, "typed", "Ø40 ±0.1");
  feature = tm_job_find_feature (job_of (&shown), "5");
  g_assert_nonnull (feature);
  g_assert_cmpstr (feature->requirement, ==, "Ø40 ±0.1");
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "5").to_x, 0.25, 0.002);
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "5").to_y, 0.75, 0.002);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (shown.page->new_feature)));
  g_assert_cmpstr (tm_drawing_list_chosen (shown.page->list), ==, "5");
  end (&shown);
}

/* However it is zoomed: what is in sight gets sharp, and the tip stays where it was put. */
static void
test_zoom (void)
{
  Shown shown = show (make_job ());
  TmDrawingView *view = shown.view;

  ui_wait_until (tm_drawing_sheet_is_sharp (view->sheet));
  for (guint i = 0; i < 12; i++)
    tm_drawing_view_key (view, GDK_KEY_plus, GDK_CONTROL_MASK);
  ui_wait_until (!tm_drawing_sheet_is_sharp (view->sheet));
  ui_wait_until (tm_drawing_sheet_is_sharp (view->sheet));
  click_at (&shown, 0.5, 0.5, 1, 0);
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "1").to_x, 0.5, 0.001);
  end (&shown);
}

/* Bytes that are no drawing are said to be so, and nothing else goes wrong. */
static void
test_bad_bytes (void)
{
  TmJob *job = make_job ();
  TmDrawing *drawing = tm_job_find_drawing (job, "D-1");
  g_autofree char *digest = NULL;
  Shown shown;

  g_bytes_unref (drawing->content);
  drawing->content = g_bytes_new_static ("nonsense", 8);
  digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, drawing->content);
  drawing->digest = tm_job_intern (job, digest);
  shown = (Shown) { ui_fixture_new (job), gtk_window_new (), TM_JOB_DRAWING (tm_job_drawing_new ()), NULL };
  gtk_window_set_child (GTK_WINDOW (shown.window), GTK_WIDGET (shown.page));
  tm_job_drawing_set_document (shown.page, shown.fixture->document);
  gtk_window_present (GTK_WINDOW (shown.window));
  ui_wait_until (g_str_equal (gtk_stack_get_visible_child_name (shown.page->paper), "problem"));
  tm_drawing_view_turn (shown.page->view, 1);
  ui_wait_until (g_str_equal (gtk_stack_get_visible_child_name (shown.page->paper), "view"));
  end (&shown);
}

/* -------- Adding -------- */

static char *
write_file (UiFixture *fixture, const char *name, const char *bytes, gssize length)
{
  char *path = g_build_filename (fixture->folder, name, NULL);

  g_assert_true (g_file_set_contents (path, bytes, length, NULL));
  return path;
}

/* By its path, as a caller that has chosen one does; one that cannot be leaves the job as it is. */
static void
test_add (void)
{
  TmJob *job = ui_make_job ();
  Shown shown = show (job);
  g_autofree char *path = write_file (shown.fixture, "bracket.svg", picture, -1);
  g_autofree char *wrong = write_file (shown.fixture, "wrong.png", "no picture", -1);

  g_assert_cmpstr (gtk_stack_get_visible_child_name (shown.page->stack), ==, "empty");
  tm_job_drawing_take (shown.page, wrong);
  tm_job_drawing_take (shown.page, path);
  ui_wait_until (job->drawings->len == 1);
  g_assert_cmpstr (((TmDrawing *)g_ptr_array_index (job->drawings, 0))->name, ==, "bracket");
  g_assert_cmpstr (((TmDrawing *)g_ptr_array_index (job->drawings, 0))->media, ==, "image/svg+xml");
  g_assert_cmpstr (gtk_stack_get_visible_child_name (shown.page->stack), ==, "drawing");
  tm_job_drawing_take (shown.page, path);
  ui_wait_until (job->drawings->len == 2);
  g_assert_cmpstr (((TmDrawing *)g_ptr_array_index (job->drawings, 1))->name, ==, "bracket (2)");
  end (&shown);
}

static void
ignore_cb (GtkWidget *parent, const char *name)
{
}

/* Another revision of the sheet is shown in the place of the one before, with the balloons. */
static void
test_replace (void)
{
  TmJob *job = make_job ();
  Shown shown = show (job);
  const TmDrawing *drawing = tm_job_find_drawing (job, "D-1");
  const char *before = drawing->digest;
  g_autofree char *path
      = write_file (shown.fixture, "later.svg",
                    "<svg xmlns='http://www.w3.org/2000/svg' width='420mm' height='148mm'/>", -1);

  click_at (&shown, 0.5, 0.5, 1, 0);
  tm_drawing_replace_file (GTK_WIDGET (shown.page), shown.fixture->document, "D-1", path, ignore_cb);
  ui_wait_until (!g_str_equal (drawing->digest, before));
  /* 420 mm in points. */
  ui_wait_until (fabs (shown.view->frame.page_width - 420 / 25.4 * 72) < 0.5);
  g_assert_nonnull (tm_find_mark (job, "D-1", "1", 0));
  g_assert_cmpuint (job->drawings->len, ==, 2);
  end (&shown);
}

int
main (int argc, char *argv[])
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/drawing-view/clicks", test_clicks);
  g_test_add_func ("/drawing-view/second-click", test_second_click);
  g_test_add_func ("/drawing-view/keys", test_keys);
  g_test_add_func ("/drawing-view/undo-again", test_undo_again);
  g_test_add_func ("/drawing-view/escape", test_escape);
  g_test_add_func ("/drawing-view/drawings", test_drawings);
  g_test_add_func ("/drawing-view/states", test_states);
  g_test_add_func ("/drawing-view/new-feature", test_new_feature);
  g_test_add_func ("/drawing-view/zoom", test_zoom);
  g_test_add_func ("/drawing-view/bad-bytes", test_bad_bytes);
  g_test_add_func ("/drawing-view/add", test_add);
  g_test_add_func ("/drawing-view/replace", test_replace);
  return g_test_run ();
}
