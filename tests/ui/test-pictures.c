/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pictures of a place: which are offered, which is shown, that the choice stays, and their words.
 */

#include <adwaita.h>
#include <string.h>

#include "app-bench-page.h"
#include "app-form-view.h"
#include "app-pictures.h"
#include "app-settings.h"
#include "ui-fixture.h"

typedef struct {
  TmJob *job;
  GtkWidget *window;
  TmPictures *pictures;
} PicturesFixture;

static PicturesFixture
open_pictures (const char *wanted)
{
  PicturesFixture fixture = { .job = ui_make_job (), .window = gtk_window_new () };
  tm_settings_set_text ("picture", wanted);
  fixture.pictures = TM_PICTURES (tm_pictures_new ());
  gtk_window_set_default_size (GTK_WINDOW (fixture.window), 600, 440);
  gtk_window_set_child (GTK_WINDOW (fixture.window), GTK_WIDGET (fixture.pictures));
  ui_present (fixture.window);
  return fixture;
}

static void
close_pictures (PicturesFixture *fixture)
{
  ui_close (fixture->window);
  tm_job_free (fixture->job);
  tm_settings_set_text ("picture", "band");
}

static void
read_bore (PicturesFixture *fixture, const char *station, const char *value)
{
  TmReading *reading = tm_reading_new ();
  reading->row.piece = g_ptr_array_index (fixture->job->pieces, 0);
  reading->row.feature = g_ptr_array_index (fixture->job->features, 0);
  reading->place = 1;
  reading->station = station;
  g_assert_cmpint (tm_quantity_read (value, TM_UNIT_MM, &reading->value), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_reading (fixture->job, reading), ==, TM_ADD_OK);
}

/* Judges the bore and hands it to the pictures, as the Bench does. */
static void
show (PicturesFixture *fixture)
{
  g_auto (TmJudgement) judgement = { 0 };
  tm_judge (fixture->job, g_ptr_array_index (fixture->job->pieces, 0),
            g_ptr_array_index (fixture->job->features, 0), 1, &judgement);
  tm_pictures_take_plot (fixture->pictures, tm_band_plot_new (fixture->job, &judgement, NULL));
  tm_pictures_show (fixture->pictures, fixture->job, &judgement);
}

static const char *
get_words (PicturesFixture *fixture, TmPictureKind kind)
{
  return tm_form_view_words (TM_FORM_VIEW (tm_pictures_get (fixture->pictures, kind)));
}

static gboolean
is_shown (PicturesFixture *fixture, TmPictureKind kind)
{
  return gtk_widget_get_mapped (tm_pictures_get (fixture->pictures, kind));
}

static GtkWidget *
find_label (GtkWidget *widget, const char *text)
{
  if (GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL
      && gtk_widget_get_mapped (widget))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_label (child, text);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
says (PicturesFixture *fixture, const char *text)
{
  return find_label (GTK_WIDGET (fixture->pictures), text) != NULL;
}

/* A picture is offered when there is something to show, and only then. */
static void
test_offered (void)
{
  PicturesFixture fixture = open_pictures ("section");
  show (&fixture);
  ui_wait_until (is_shown (&fixture, TM_PICTURE_BAND));
  g_assert_false (says (&fixture, "Section"));
  g_assert_cmpstr (get_words (&fixture, TM_PICTURE_SECTION), ==, "");
  read_bore (&fixture, "mouth/12", "25.006");
  show (&fixture);
  g_assert_cmpint (tm_pictures_shown (fixture.pictures), ==, TM_PICTURE_BAND);
  read_bore (&fixture, "bottom/12", "25.012");
  show (&fixture);
  /* What was wanted is shown as soon as there is some of it. */
  ui_wait_until (is_shown (&fixture, TM_PICTURE_SECTION));
  g_assert_true (says (&fixture, "Section"));
  g_assert_false (says (&fixture, "Clock"));
  g_assert_nonnull (strstr (get_words (&fixture, TM_PICTURE_SECTION), "opens to the bottom"));
  read_bore (&fixture, "mouth/3", "25.008");
  show (&fixture);
  ui_wait_until (says (&fixture, "Clock"));
  g_assert_nonnull (strstr (get_words (&fixture, TM_PICTURE_CLOCK), "spread of diameters 0.002 mm"));
  tm_pictures_show (fixture.pictures, fixture.job, NULL);
  ui_wait_until (is_shown (&fixture, TM_PICTURE_BAND));
  g_assert_false (says (&fixture, "Section"));
  close_pictures (&fixture);
}

static void
read_all (PicturesFixture *fixture)
{
  read_bore (fixture, "mouth/12", "25.006");
  read_bore (fixture, "mouth/3", "25.008");
  read_bore (fixture, "bottom/12", "25.012");
  show (fixture);
}

/* The choice stays for the next place and the next start. */
static void
test_choice_stays (void)
{
  PicturesFixture fixture = open_pictures ("band");
  g_autofree char *remembered = NULL;
  read_all (&fixture);
  ui_wait_until (is_shown (&fixture, TM_PICTURE_BAND));
  tm_pictures_choose (fixture.pictures, TM_PICTURE_CLOCK);
  ui_wait_until (is_shown (&fixture, TM_PICTURE_CLOCK));
  g_assert_false (is_shown (&fixture, TM_PICTURE_BAND));
  remembered = tm_settings_get_text ("picture");
  g_assert_cmpstr (remembered, ==, "clock");
  tm_pictures_show (fixture.pictures, fixture.job, NULL);
  ui_wait_until (is_shown (&fixture, TM_PICTURE_BAND));
  show (&fixture);
  ui_wait_until (is_shown (&fixture, TM_PICTURE_CLOCK));
  close_pictures (&fixture);
}

static GtkShortcut *
get_shortcut (PicturesFixture *fixture, guint index)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (GTK_WIDGET (fixture->pictures));
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GObject) controller = g_list_model_get_item (all, i);
      if (GTK_IS_SHORTCUT_CONTROLLER (controller)
          && g_list_model_get_n_items (G_LIST_MODEL (controller)) == TM_N_PICTURES)
        return g_list_model_get_item (G_LIST_MODEL (controller), index);
    }
  g_assert_not_reached ();
}

static gboolean
press (PicturesFixture *fixture, guint index)
{
  g_autoptr (GtkShortcut) shortcut = get_shortcut (fixture, index);
  return gtk_shortcut_action_activate (gtk_shortcut_get_action (shortcut), 0, GTK_WIDGET (fixture->pictures),
                                       gtk_shortcut_get_arguments (shortcut));
}

/* Ctrl+1 to Ctrl+3; a picture that is not offered leaves the key to others. */
static void
test_keys (void)
{
  PicturesFixture fixture = open_pictures ("band");
  g_assert_false (press (&fixture, TM_PICTURE_SECTION));
  read_all (&fixture);
  g_assert_true (press (&fixture, TM_PICTURE_SECTION));
  g_assert_cmpint (tm_pictures_shown (fixture.pictures), ==, TM_PICTURE_SECTION);
  g_assert_true (press (&fixture, TM_PICTURE_CLOCK));
  g_assert_cmpint (tm_pictures_shown (fixture.pictures), ==, TM_PICTURE_CLOCK);
  g_assert_true (press (&fixture, TM_PICTURE_BAND));
  g_assert_cmpint (tm_pictures_shown (fixture.pictures), ==, TM_PICTURE_BAND);
  close_pictures (&fixture);
}

static void
test_buttons (void)
{
  PicturesFixture fixture = open_pictures ("band");
  GtkWidget *button;
  read_all (&fixture);
  ui_wait_until (says (&fixture, "Section"));
  button = gtk_widget_get_ancestor (find_label (GTK_WIDGET (fixture.pictures), "Section"),
                                    GTK_TYPE_TOGGLE_BUTTON);
  g_assert_nonnull (button);
  g_assert_true (gtk_widget_get_focusable (button));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (button), TRUE);
  ui_wait_until (is_shown (&fixture, TM_PICTURE_SECTION));
  close_pictures (&fixture);
}

/* Images with their words; what the gauges cannot see stands beside them. */
static void
test_words (void)
{
  PicturesFixture fixture = open_pictures ("band");
  TmGauge *gauge = tm_job_find_gauge (fixture.job, "BM-2");
  read_all (&fixture);
  for (guint i = 0; i < TM_N_PICTURES; i++)
    {
      GtkAccessible *picture = GTK_ACCESSIBLE (tm_pictures_get (fixture.pictures, (TmPictureKind)i));
      gtk_test_accessible_assert_role (picture, GTK_ACCESSIBLE_ROLE_IMG);
      g_assert_true (gtk_test_accessible_has_property (picture, GTK_ACCESSIBLE_PROPERTY_LABEL));
    }
  /* Where the picture is of form.  A bore micrometer has three points. */
  g_assert_false (says (&fixture, "cannot see"));
  tm_pictures_choose (fixture.pictures, TM_PICTURE_CLOCK);
  ui_wait_until (says (&fixture, "cannot see an oval"));
  gauge->kind = "dial bore gauge";
  show (&fixture);
  ui_wait_until (says (&fixture, "cannot see an odd number of lobes"));
  gauge->kind = "CMM";
  show (&fixture);
  ui_wait_until (!says (&fixture, "cannot see"));
  close_pictures (&fixture);
}

/* Beside the pictures, where the next reading is asked for, stands how the gauge is held right. */
static void
test_handling_words (void)
{
  TmJob *job = ui_make_job ();
  ((TmGauge *)g_ptr_array_index (job->gauges, 0))->kind = "dial bore gauge";
  UiFixture *fixture = ui_fixture_new (job);
  GtkWidget *window = gtk_window_new (), *page = tm_bench_page_new ();
  gtk_window_set_child (GTK_WINDOW (window), page);
  tm_bench_page_set_document (TM_BENCH_PAGE (page), fixture->document);
  gtk_window_present (GTK_WINDOW (window));
  ui_wait_until (find_label (page, "largest across and the smallest along") != NULL);
  ui_close (window);
  ui_fixture_free (fixture);
}

static void
test_closes_clean (void)
{
  GtkWidget *pictures = tm_pictures_new ();
  g_object_ref_sink (pictures);
  g_assert_finalize_object (pictures);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/pictures/offered", test_offered);
  g_test_add_func ("/pictures/choice-stays", test_choice_stays);
  g_test_add_func ("/pictures/keys", test_keys);
  g_test_add_func ("/pictures/buttons", test_buttons);
  g_test_add_func ("/pictures/words", test_words);
  g_test_add_func ("/pictures/handling-words", test_handling_words);
  g_test_add_func ("/pictures/closes-clean", test_closes_clean);
  return g_test_run ();
}
