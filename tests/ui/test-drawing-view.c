/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawing with its balloons: put, moved and taken back by pointer and keys, their states, and the Job
 * page's view around it.
 */

#include <adwaita.h>
#include <math.h>
#include <signal.h>
#include <sys/resource.h>

#include "app-dialog.h"
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
record (Shown *shown, guint piece, const char *balloon, guint place, const char *station, const char *text)
{
  TmJob *job = job_of (shown);

  g_assert_true (tm_document_go (shown->fixture->document, g_ptr_array_index (job->pieces, piece),
                                 tm_job_find_feature (job, balloon), place, station));
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
  record (&shown, 0, "1", 1, "mouth/12", "24.990");
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

/* -------- Places -------- */

static void
assert_chosen (Shown *shown, const char *balloon, guint place)
{
  g_assert_cmpstr (tm_drawing_view_chosen (shown->view), ==, balloon);
  g_assert_cmpuint (tm_drawing_view_place (shown->view), ==, place);
  g_assert_cmpstr (tm_drawing_list_chosen (shown->page->list), ==, balloon);
  g_assert_cmpuint (tm_drawing_list_place (shown->page->list), ==, place);
}

static gboolean
has_mark (Shown *shown, const char *balloon, guint place)
{
  return tm_find_mark (job_of (shown), "D-1", balloon, place) != NULL;
}

/* The full stop goes from the feature to each of its places; a click, or Enter, puts the balloon of that one,
 * and the next place follows; after the last the next feature.  It is taken back by place. */
static void
test_places (void)
{
  Shown shown = show (make_job ());
  TmDrawingView *view = shown.view;

  g_assert_false (tm_drawing_view_step_place (view)); /* "1" has one place */
  tm_job_drawing_choose (shown.page, "2");
  assert_chosen (&shown, "2", 0);
  g_assert_nonnull (strstr (gtk_label_get_text (shown.page->hint), "full stop"));
  for (guint place = 1; place <= 4; place++)
    {
      g_assert_true (tm_drawing_view_key (view, GDK_KEY_period, 0));
      assert_chosen (&shown, "2", place);
    }
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_KP_Decimal, 0));
  assert_chosen (&shown, "2", 0);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_period, 0));
  g_assert_nonnull (strstr (gtk_label_get_text (shown.page->hint), "balloon 2.1 "));
  click_at (&shown, 0.2, 0.2, 1, 0);
  g_assert_true (has_mark (&shown, "2", 1));
  g_assert_false (has_mark (&shown, "2", 0));
  g_assert_cmpstr (g_array_index (view->items, TmDrawingItem, 0).text, ==, "2.1");
  assert_chosen (&shown, "2", 2);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Return, 0));
  click_at (&shown, 0.8, 0.2, 1, 0);
  click_at (&shown, 0.8, 0.8, 1, 0);
  g_assert_cmpuint (job_of (&shown)->balloon_marks->len, ==, 4);
  assert_chosen (&shown, "3", 0);
  g_assert_true (tm_drawing_view_undo (view));
  g_assert_false (has_mark (&shown, "2", 4));
  assert_chosen (&shown, "2", 4);
  end (&shown);
}

/* What is done to a balloon is done to that of the place chosen, never to that of the whole feature. */
static void
test_place_alone (void)
{
  Shown shown = show (make_job ());
  TmDrawingView *view = shown.view;
  TmMarkSpot whole;

  tm_job_drawing_choose (shown.page, "2");
  click_at (&shown, 0.5, 0.5, 1, 0);
  whole = spot_of (&shown, "2");
  tm_drawing_view_choose_place (view, "2", 3, FALSE);
  g_assert_false (tm_drawing_view_is_placed (view));
  g_assert_nonnull (strstr (view->said, "place 3 of feature 2 has no balloon of its own"));
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Delete, 0));
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Right, 0));
  release_arrow (&shown);
  g_assert_cmpfloat_with_epsilon (spot_of (&shown, "2").x, whole.x, 1e-9);
  click_at (&shown, 0.2, 0.8, 1, 0);
  tm_drawing_view_choose_place (view, "2", 3, FALSE);
  g_assert_true (tm_drawing_view_key (view, GDK_KEY_Delete, 0));
  g_assert_false (has_mark (&shown, "2", 3));
  g_assert_true (has_mark (&shown, "2", 0));
  g_assert_true (tm_drawing_view_undo (view));
  g_assert_true (has_mark (&shown, "2", 3));
  end (&shown);
}

/* Each place's balloon has that place's own state: of 4X 6.6 ±0.15 one is out, the others are not measured.
 */
static void
test_place_states (void)
{
  Shown shown = show (make_job ());
  const TmFeature *feature = tm_job_find_feature (job_of (&shown), "2");
  TmDrawingState state;

  tm_drawing_view_choose_place (shown.view, "2", 2, FALSE);
  click_at (&shown, 0.3, 0.3, 1, 0);
  record (&shown, 0, "2", 2, "", "6.9");
  ui_wait_until (tm_drawing_states_get (shown.view->states, feature, 2, &state));
  g_assert_cmpint (state.verdict, ==, TM_VERDICT_OUT);
  g_assert_cmpint (state.point, ==, TM_POINT_UP);
  g_assert_true (tm_drawing_states_get (shown.view->states, feature, 3, &state));
  g_assert_cmpint (state.verdict, ==, TM_VERDICT_NOT_MEASURED);
  tm_drawing_view_choose_place (shown.view, "2", 2, FALSE);
  ui_wait_until (strstr (shown.view->said, "balloon 2, place 2, out") != NULL);
  end (&shown);
}

static GtkWidget *
find_inside (GtkWidget *widget, GType type)
{
  GtkWidget *found = G_TYPE_CHECK_INSTANCE_TYPE (widget, type) ? widget : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_inside (child, type);
  return found;
}

static GtkListView *
get_rows (Shown *shown)
{
  return GTK_LIST_VIEW (find_inside (GTK_WIDGET (shown->page->list), GTK_TYPE_LIST_VIEW));
}

static GtkWidget *
find_row (Shown *shown, guint at)
{
  GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (get_rows (shown)));

  for (guint i = 0; i < at && row != NULL; i++)
    row = gtk_widget_get_next_sibling (row);
  g_assert_nonnull (row);
  return gtk_widget_get_first_child (row);
}

/* Text of the labels of a row of the list at the side: number, requirement, where. */
static const char *
text_of (Shown *shown, guint at, guint label)
{
  GtkWidget *child = gtk_widget_get_first_child (find_row (shown, at));

  for (guint i = 0; i < label; i++)
    child = gtk_widget_get_next_sibling (child);
  return gtk_label_get_text (GTK_LABEL (child));
}

static void
click_arrow (Shown *shown, guint at)
{
  GtkWidget *arrow = gtk_widget_get_last_child (find_row (shown, at));
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (arrow);
  g_autoptr (GtkGesture) click = g_list_model_get_item (controllers, 0);

  g_signal_emit_by_name (click, "pressed", 1, 4.0, 4.0);
}

static gboolean
press_in_list (Shown *shown, guint keyval)
{
  GtkEventController *keys = NULL;
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (get_rows (shown)));
  gboolean taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) one = g_list_model_get_item (controllers, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (one)
          && gtk_event_controller_get_propagation_phase (one) == GTK_PHASE_CAPTURE)
        keys = one;
    }
  g_assert_nonnull (keys);
  g_signal_emit_by_name (keys, "key-pressed", keyval, 0, 0, &taken);
  return taken;
}

/* In the list Right unfolds a feature of several places, Left folds it; the places say where they stand. */
static void
test_unfold (void)
{
  Shown shown = show (make_job ());
  TmDrawingList *list = shown.page->list;
  GtkSelectionModel *selection = gtk_list_view_get_model (get_rows (&shown));
  GListModel *rows = G_LIST_MODEL (selection);
  guint n_placed;

  tm_job_drawing_choose (shown.page, "2");
  g_assert_cmpuint (g_list_model_get_n_items (rows), ==, 4);
  g_assert_true (press_in_list (&shown, GDK_KEY_Right));
  g_assert_cmpuint (g_list_model_get_n_items (rows), ==, 8);
  assert_chosen (&shown, "2", 0);
  gtk_selection_model_select_item (selection, 4, TRUE); /* 2.3 */
  assert_chosen (&shown, "2", 3);
  click_at (&shown, 0.4, 0.4, 1, 0);
  g_assert_true (has_mark (&shown, "2", 3));
  assert_chosen (&shown, "2", 4);
  g_assert_cmpuint (tm_drawing_list_count (list, &n_placed), ==, 4);
  g_assert_cmpuint (n_placed, ==, 1);
  ui_wait_until (g_str_equal (text_of (&shown, 4, 0), "2.3"));
  g_assert_cmpstr (text_of (&shown, 4, 1), ==, "place 3");
  g_assert_cmpstr (text_of (&shown, 4, 2), ==, "placed");
  g_assert_cmpstr (text_of (&shown, 5, 2), ==, "not yet");
  g_assert_cmpstr (text_of (&shown, 1, 2), ==, "1 of 4");
  g_assert_true (press_in_list (&shown, GDK_KEY_Left));
  g_assert_cmpuint (g_list_model_get_n_items (rows), ==, 4);
  assert_chosen (&shown, "2", 0);
  /* By the arrow of its row, as by the key. */
  click_arrow (&shown, 1);
  g_assert_cmpuint (g_list_model_get_n_items (rows), ==, 8);
  click_arrow (&shown, 1);
  click_arrow (&shown, 0); /* "1" has one place */
  g_assert_cmpuint (g_list_model_get_n_items (rows), ==, 4);
  /* A place that is chosen on the drawing is shown in the list. */
  click_at (&shown, tm_mark_spot (tm_find_mark (job_of (&shown), "D-1", "2", 3)).x,
            tm_mark_spot (tm_find_mark (job_of (&shown), "D-1", "2", 3)).y, 1, 0);
  g_assert_cmpuint (g_list_model_get_n_items (rows), ==, 8);
  assert_chosen (&shown, "2", 3);
  end (&shown);
}

/* With fewer places the balloons of those that go are taken off, and the job can be read again. */
static void
test_fewer_places (void)
{
  Shown shown = show (make_job ());
  TmDocument *document = shown.fixture->document;
  TmFeature *with;
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) again = NULL;

  tm_drawing_view_choose_place (shown.view, "2", 4, FALSE);
  click_at (&shown, 0.3, 0.3, 1, 0);
  tm_drawing_view_choose_place (shown.view, "2", 1, FALSE);
  click_at (&shown, 0.6, 0.3, 1, 0);
  tm_drawing_view_choose_place (shown.view, "2", 4, FALSE);
  with = tm_edit_copy_feature (tm_job_find_feature (job_of (&shown), "2"));
  with->places = 2;
  g_assert_true (tm_edit_replace_feature (document, "2", with, NULL));
  g_assert_false (has_mark (&shown, "2", 4));
  g_assert_true (has_mark (&shown, "2", 1));
  assert_chosen (&shown, "2", 0);
  again = tm_book_load_job (shown.fixture->book, job_of (&shown)->id, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (again->balloon_marks->len, ==, 1);
  end (&shown);
}

/* -------- Two fingers -------- */

static gpointer
find_controller (TmDrawingView *view, GType type)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (GTK_WIDGET (view));

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) one = g_list_model_get_item (controllers, i);

      if (G_OBJECT_TYPE (one) == type)
        return one;
    }
  g_assert_not_reached ();
}

/* Two fingers twice as far apart show it twice as large, about the middle between them, here that of the
 * view; and a finger that is then lifted has clicked nothing. */
static void
test_pinch (void)
{
  Shown shown = show (make_job ());
  TmDrawingView *view = shown.view;
  gpointer pinch = find_controller (view, GTK_TYPE_GESTURE_ZOOM);
  gpointer drag = find_controller (view, GTK_TYPE_GESTURE_DRAG);
  gpointer click = find_controller (view, GTK_TYPE_GESTURE_CLICK);
  double scale = view->frame.scale, x, y, after_x, after_y;

  tm_drawing_view_middle (view, &x, &y);
  g_signal_emit_by_name (drag, "drag-begin", 100.0, 100.0);
  g_signal_emit_by_name (pinch, "begin", NULL);
  g_signal_emit_by_name (pinch, "scale-changed", 1.5);
  g_signal_emit_by_name (pinch, "scale-changed", 2.0);
  g_assert_cmpfloat_with_epsilon (view->frame.scale, 2 * scale, 1e-6 * scale);
  tm_drawing_view_middle (view, &after_x, &after_y);
  g_assert_cmpfloat_with_epsilon (after_x, x, 1e-6);
  g_assert_cmpfloat_with_epsilon (after_y, y, 1e-6);
  g_signal_emit_by_name (click, "released", 1, 100.0, 100.0);
  g_assert_cmpuint (job_of (&shown)->balloon_marks->len, ==, 0);
  /* The next one begins at one again; one finger then clicks as before. */
  g_signal_emit_by_name (pinch, "begin", NULL);
  g_signal_emit_by_name (pinch, "scale-changed", 0.5);
  g_assert_cmpfloat_with_epsilon (view->frame.scale, scale, 1e-6 * scale);
  g_signal_emit_by_name (drag, "drag-begin", view->frame.width / 2, view->frame.height / 2);
  g_signal_emit_by_name (click, "released", 1, view->frame.width / 2, view->frame.height / 2);
  g_assert_cmpuint (job_of (&shown)->balloon_marks->len, ==, 1);
  /* A finger that has moved before the second one comes takes part all the same. */
  g_assert_true (gtk_gesture_is_grouped_with (pinch, drag));
  end (&shown);
}

/* -------- Features -------- */

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

/* -------- Which pages of a PDF -------- */

/* So many empty pages; without a table of its objects, which the library then looks for itself. */
static char *
make_pdf (guint n_pages)
{
  GString *pdf = g_string_new ("%PDF-1.5\n1 0 obj << /Type /Catalog /Pages 2 0 R >> endobj\n"
                               "2 0 obj << /Type /Pages /Kids [");

  for (guint i = 0; i < n_pages; i++)
    g_string_append_printf (pdf, "%u 0 R ", i + 3);
  g_string_append_printf (pdf, "] /Count %u >> endobj\n", n_pages);
  for (guint i = 0; i < n_pages; i++)
    g_string_append_printf (pdf, "%u 0 obj << /Type /Page /Parent 2 0 R /MediaBox [0 0 %u 300] >> endobj\n",
                            i + 3, 400 + i);
  g_string_append (pdf, "trailer << /Root 1 0 R >>\n%%EOF\n");
  return g_string_free (pdf, FALSE);
}

static GtkWidget *
open_pages (Shown *shown, guint n_pages)
{
  g_autofree char *pdf = make_pdf (n_pages);
  g_autofree char *path = write_file (shown->fixture, "set.pdf", pdf, -1);

  tm_job_drawing_take (shown->page, path);
  ui_wait_until (tm_dialog_over (GTK_WINDOW (shown->window)) != NULL);
  /* The one that says that the file is being read goes first. */
  ui_wait_until (tm_dialog_over (GTK_WINDOW (shown->window)) != NULL
                 && find_inside (GTK_WIDGET (tm_dialog_over (GTK_WINDOW (shown->window))), GTK_TYPE_LIST_BOX)
                        != NULL);
  return GTK_WIDGET (tm_dialog_over (GTK_WINDOW (shown->window)));
}

static guint
count_rows (GtkWidget *dialog)
{
  GtkListBox *list = GTK_LIST_BOX (find_inside (dialog, GTK_TYPE_LIST_BOX));
  guint n = 0;

  while (gtk_list_box_get_row_at_index (list, (int)n) != NULL)
    n++;
  return n;
}

static gboolean
says (GtkWidget *widget, const char *text)
{
  gboolean found = GTK_IS_LABEL (widget) && gtk_widget_get_visible (widget)
                   && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && !found;
       child = gtk_widget_get_next_sibling (child))
    found = says (child, text);
  return found;
}

/* Of 700 pages 500 are listed, which is said; a page beyond comes in by its number, in its place and once. */
static void
test_many_pages (void)
{
  TmJob *job = ui_make_job ();
  Shown shown = show (job);
  GtkWidget *dialog = open_pages (&shown, 700);
  GtkWidget *entry = find_inside (dialog, GTK_TYPE_ENTRY);
  static const char *const wrong[] = { "0", "701", "-3", "six", "99999999999999999999" };

  g_assert_cmpuint (count_rows (dialog), ==, 500);
  g_assert_true (says (dialog, "The first 500 of 700 pages are listed."));
  for (gsize i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      gtk_editable_set_text (GTK_EDITABLE (entry), wrong[i]);
      g_signal_emit_by_name (entry, "activate");
      g_assert_true (says (dialog, "type a number from 1 to 700"));
      g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (entry)), ==, wrong[i]);
    }
  for (guint i = 0; i < 2; i++)
    {
      gtk_editable_set_text (GTK_EDITABLE (entry), i == 0 ? "690" : " 600 ");
      g_signal_emit_by_name (entry, "activate");
      gtk_editable_set_text (GTK_EDITABLE (entry), "690");
      g_signal_emit_by_name (entry, "activate");
    }
  g_assert_false (says (dialog, "type a number"));
  g_assert_cmpuint (count_rows (dialog), ==, 502);
  /* What is typed and not entered counts as well; the first page was proposed. */
  gtk_editable_set_text (GTK_EDITABLE (entry), "7");
  gtk_widget_activate (gtk_window_get_default_widget (GTK_WINDOW (dialog)));
  ui_wait_until (job->drawings->len == 4);
  g_assert_cmpuint (((TmDrawing *)g_ptr_array_index (job->drawings, 1))->page, ==, 7);
  g_assert_cmpuint (((TmDrawing *)g_ptr_array_index (job->drawings, 2))->page, ==, 600);
  g_assert_cmpuint (((TmDrawing *)g_ptr_array_index (job->drawings, 3))->page, ==, 690);
  end (&shown);
}

/* With up to 500 every page is listed, and there is no number to type. */
static void
test_few_pages (void)
{
  Shown shown = show (ui_make_job ());
  GtkWidget *dialog = open_pages (&shown, 500);

  g_assert_cmpuint (count_rows (dialog), ==, 500);
  g_assert_null (find_inside (dialog, GTK_TYPE_ENTRY));
  gtk_window_destroy (GTK_WINDOW (dialog));
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
  g_test_add_func ("/drawing-view/places", test_places);
  g_test_add_func ("/drawing-view/place-alone", test_place_alone);
  g_test_add_func ("/drawing-view/place-states", test_place_states);
  g_test_add_func ("/drawing-view/unfold", test_unfold);
  g_test_add_func ("/drawing-view/fewer-places", test_fewer_places);
  g_test_add_func ("/drawing-view/pinch", test_pinch);
  g_test_add_func ("/drawing-view/new-feature", test_new_feature);
  g_test_add_func ("/drawing-view/zoom", test_zoom);
  g_test_add_func ("/drawing-view/bad-bytes", test_bad_bytes);
  g_test_add_func ("/drawing-view/add", test_add);
  g_test_add_func ("/drawing-view/many-pages", test_many_pages);
  g_test_add_func ("/drawing-view/few-pages", test_few_pages);
  g_test_add_func ("/drawing-view/replace", test_replace);
  return g_test_run ();
}
