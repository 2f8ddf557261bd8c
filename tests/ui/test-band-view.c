/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The aim of a planned cut on the band plot: by the keys and by a finger, and only while there is a plan.
 */

#include <adwaita.h>
#include <math.h>

#include "app-band-view.h"
#include "ui-fixture.h"

typedef struct {
  TmJob *job;
  GtkWidget *window;
  TmBandView *view;
  gint64 asked; /* by the last "aim-moved" */
  guint n;
} ViewFixture;

static void
aim_moved_cb (TmBandView *view, gint64 size, ViewFixture *fixture)
{
  fixture->asked = size;
  fixture->n++;
}

static TmBandPlot *
make_plot (TmJob *job)
{
  g_auto (TmJudgement) judgement = { 0 };
  tm_judge (job, g_ptr_array_index (job->pieces, 0), g_ptr_array_index (job->features, 0), 1, &judgement);
  return tm_band_plot_new (job, &judgement, NULL);
}

/* A bore of 24.980 on the way to @aim, on a dial of 0.01 mm on diameter: invented. */
static TmCutAdvice
make_advice (double aim)
{
  return (TmCutAdvice) { .reference = 24980000000,
                         .plan = { .status = TM_CUT_OK,
                                   .change = (aim - 24.98) * 1e9,
                                   .predicted = (aim - 24.98) * 1e9,
                                   .predicted_u = 3e6,
                                   .size_u = 2e6,
                                   .chances = { 0.9, 0.09, 0.01, NAN } },
                         .dial = (gint64)llround ((aim - 24.98) * 1e9),
                         .graduation = 10000000,
                         .step = 1e7,
                         .response = { .factor = 1.0 },
                         .band = { -INFINITY, INFINITY, -INFINITY, INFINITY, 0 } };
}

static void
open_view (ViewFixture *fixture)
{
  TmCutAdvice advice = make_advice (25.010);
  *fixture = (ViewFixture) { .job = ui_make_job (), .window = gtk_window_new () };
  fixture->view = TM_BAND_VIEW (tm_band_view_new ());
  g_signal_connect (fixture->view, "aim-moved", G_CALLBACK (aim_moved_cb), fixture);
  tm_band_view_take_plot (fixture->view, make_plot (fixture->job));
  gtk_window_set_default_size (GTK_WINDOW (fixture->window), 600, 400);
  gtk_window_set_child (GTK_WINDOW (fixture->window), GTK_WIDGET (fixture->view));
  gtk_window_present (GTK_WINDOW (fixture->window));
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (fixture->view))
                 && gtk_widget_get_width (GTK_WIDGET (fixture->view)) > 0);
  g_assert_false (gtk_widget_get_focusable (GTK_WIDGET (fixture->view)));
  tm_band_view_set_plan (fixture->view, &advice);
}

static void
close_view (ViewFixture *fixture)
{
  ui_close (fixture->window);
  tm_job_free (fixture->job);
}

/* The controller of that type among the view's own. */
static GtkEventController *
find_controller (TmBandView *view, GType type)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (GTK_WIDGET (view));
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (all, i);
      if (G_TYPE_CHECK_INSTANCE_TYPE (controller, type))
        return controller;
    }
  g_assert_not_reached ();
}

/* Does what the key is bound to; FALSE when it is left to others. */
static gboolean
press (TmBandView *view, guint key, GdkModifierType modifiers)
{
  GListModel *shortcuts = G_LIST_MODEL (find_controller (view, GTK_TYPE_SHORTCUT_CONTROLLER));
  for (guint i = 0; i < g_list_model_get_n_items (shortcuts); i++)
    {
      g_autoptr (GtkShortcut) shortcut = g_list_model_get_item (shortcuts, i);
      GtkKeyvalTrigger *trigger = GTK_KEYVAL_TRIGGER (gtk_shortcut_get_trigger (shortcut));
      if (gtk_keyval_trigger_get_keyval (trigger) == key
          && gtk_keyval_trigger_get_modifiers (trigger) == modifiers)
        return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, GTK_WIDGET (view),
                                             gtk_shortcut_get_arguments (shortcut));
    }
  g_assert_not_reached ();
}

static void
test_keys (void)
{
  ViewFixture fixture;
  open_view (&fixture);
  g_assert_true (gtk_widget_get_focusable (GTK_WIDGET (fixture.view)));
  g_assert_true (press (fixture.view, GDK_KEY_Right, 0));
  g_assert_cmpint (fixture.asked, ==, 25020000000);
  g_assert_true (press (fixture.view, GDK_KEY_Left, 0));
  g_assert_cmpint (fixture.asked, ==, 25000000000);
  g_assert_true (press (fixture.view, GDK_KEY_Left, GDK_SHIFT_MASK));
  g_assert_cmpint (fixture.asked, ==, 24910000000);
  tm_band_view_set_plan (fixture.view, NULL);
  g_assert_false (gtk_widget_get_focusable (GTK_WIDGET (fixture.view)));
  g_assert_false (press (fixture.view, GDK_KEY_Right, 0));
  g_assert_cmpuint (fixture.n, ==, 3);
  close_view (&fixture);
}

/* The picture's coordinates of the aim. */
static void
find_grip (ViewFixture *fixture, TmBandPlot *plot, double *x, double *y, double *scale)
{
  int width = gtk_widget_get_width (GTK_WIDGET (fixture->view));
  int height = gtk_widget_get_height (GTK_WIDGET (fixture->view));
  *scale = tm_picture_scale (width, height);
  g_assert_true (tm_band_plot_aim_at (plot, width / *scale, height / *scale, x, y));
  *x *= *scale;
  *y *= *scale;
}

/* Dragged on, the axis stays, so that the aim stays under the finger. */
static void
test_drag (void)
{
  ViewFixture fixture;
  TmCutAdvice advice = make_advice (25.010);
  double x, y, scale;
  open_view (&fixture);
  g_autoptr (TmBandPlot) same = make_plot (fixture.job);
  tm_band_plot_set_plan (same, &advice);
  find_grip (&fixture, same, &x, &y, &scale);
  GtkEventController *drag = find_controller (fixture.view, GTK_TYPE_GESTURE_DRAG);
  g_signal_emit_by_name (drag, "drag-begin", x - 100.0, y);
  g_signal_emit_by_name (drag, "drag-update", 40.0, 0.0);
  g_assert_cmpuint (fixture.n, ==, 0);
  g_signal_emit_by_name (drag, "drag-begin", x + 10.0, y);
  g_signal_emit_by_name (drag, "drag-update", 1.0, 0.0); /* less than half a mark */
  g_assert_cmpuint (fixture.n, ==, 0);
  g_signal_emit_by_name (drag, "drag-update", 80.0, 5.0);
  g_assert_cmpuint (fixture.n, ==, 1);
  g_assert_cmpint (fixture.asked, >, 25010000000);
  gint64 first = fixture.asked;
  /* The Bench answers with a new plot, which by itself would have a wider axis. */
  TmBandPlot *next = make_plot (fixture.job);
  advice = make_advice (25.060);
  tm_band_plot_set_plan (next, &advice);
  tm_band_view_take_plot (fixture.view, next);
  g_signal_emit_by_name (drag, "drag-update", 80.0, 5.0);
  g_assert_cmpint (fixture.asked, ==, first);
  g_signal_emit_by_name (drag, "drag-end", 80.0, 5.0);
  g_signal_emit_by_name (drag, "drag-update", -80.0, 5.0);
  g_assert_cmpuint (fixture.n, ==, 2);
  close_view (&fixture);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/band-view/keys", test_keys);
  g_test_add_func ("/band-view/drag", test_drag);
  return g_test_run ();
}
