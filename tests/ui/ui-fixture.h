/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * ui-fixture: an invented job in a book of its own, and waiting for the screen.
 */

#pragma once

#include <glib/gstdio.h>
#include <gtk/gtk.h>

#include "app-document.h"
#include "app-report-layout.h"
#include "book-store.h"
#include "core-callout.h"

typedef struct {
  char *folder;
  char *path;
  TmBook *book;
  TmDocument *document;
} UiFixture;

static inline gboolean
ui_deadline_cb (gpointer data)
{
  *(gboolean *)data = TRUE;
  return G_SOURCE_REMOVE;
}

/* Only decides how long a failure takes to be seen: on a computer that is busy with other things a window may
 * take many seconds. */
#define UI_DEADLINE_SECONDS 60

/* Runs the main loop until @condition holds; fails, naming it, at the deadline. */
#define ui_wait_until(condition)                                                        \
  G_STMT_START                                                                          \
  {                                                                                     \
    gboolean late_ = FALSE, held_ = FALSE;                                              \
    guint timer_ = g_timeout_add_seconds (UI_DEADLINE_SECONDS, ui_deadline_cb, &late_); \
    while (!(held_ = (condition)) && !late_)                                            \
      g_main_context_iteration (NULL, TRUE);                                            \
    if (!held_)                                                                         \
      g_error ("waited in vain for: %s", #condition);                                   \
    if (!late_)                                                                         \
      g_source_remove (timer_);                                                         \
  }                                                                                     \
  G_STMT_END

/* Runs the main loop until it has nothing to do at once. */
static inline void
ui_drain (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

/* A window of the smallest screen that is supported, with @child in it; not yet shown. */
static inline GtkWidget *
ui_window_new (gpointer child)
{
  GtkWidget *window = gtk_window_new ();

  gtk_window_set_child (GTK_WINDOW (window), GTK_WIDGET (child));
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 720);
  return window;
}

/* Shows @window (any type of it) and waits until it is on the screen. */
static inline void
ui_present (gpointer window)
{
  gtk_window_present (GTK_WINDOW (window));
  ui_wait_until (gtk_widget_get_mapped (GTK_WIDGET (window)));
}

/* Closes a window (any type of it) and lets it go. */
static inline void
ui_close (gpointer window)
{
  gtk_window_destroy (GTK_WINDOW (window));
  ui_drain ();
}

static inline TmFeature *
ui_add_feature (TmJob *job, const char *balloon, const char *requirement, const char *method)
{
  TmFeature *feature = tm_feature_new ();
  feature->balloon = tm_job_intern (job, balloon);
  feature->requirement = tm_job_intern (job, requirement);
  feature->method = tm_job_intern (job, method);
  feature->places = 1;
  g_assert_cmpint (tm_callout_apply (job, feature), ==, TM_CALLOUT_OK);
  g_assert_cmpint (tm_job_add_feature (job, feature), ==, TM_ADD_OK);
  return feature;
}

static inline void
ui_add_piece (TmJob *job, const char *serial)
{
  TmPiece *piece = tm_piece_new ();
  piece->serial = tm_job_intern (job, serial);
  g_assert_cmpint (tm_job_add_piece (job, piece), ==, TM_ADD_OK);
}

static inline void
ui_add_gauge (TmJob *job)
{
  TmGauge *gauge = tm_gauge_new ();
  gauge->tag = tm_job_intern (job, "BM-2");
  gauge->kind = tm_job_intern (job, "bore micrometer");
  gauge->unit = TM_UNIT_MM;
  gauge->due = tm_job_intern (job, "2099-03-14");
  g_assert_cmpint (tm_quantity_read ("0.001", TM_UNIT_MM, &gauge->resolution), ==, TM_READ_OK);
  g_assert_cmpint (tm_quantity_read ("0.002", TM_UNIT_MM, &gauge->error_limit), ==, TM_READ_OK);
  g_assert_cmpint (tm_job_add_gauge (job, gauge), ==, TM_ADD_OK);
}

/* A bore with four stations, a width with four places, a position, a pass/fail feature; two pieces. */
static inline TmJob *
ui_make_job (void)
{
  static const char *const stations[] = { "mouth/12", "mouth/3", "bottom/12", "bottom/3" };
  TmJob *job = tm_job_new ();
  job->id = tm_job_intern (job, "11111111-2222-4333-8444-555555555555");
  job->part_number = tm_job_intern (job, "UI-1");
  job->unit = TM_UNIT_MM;
  ui_add_gauge (job);
  TmFeature *bore = ui_add_feature (job, "1", "Ø25 H7", "BM-2");
  for (guint i = 0; i < G_N_ELEMENTS (stations); i++)
    g_ptr_array_add (bore->stations, (gpointer)tm_job_intern (job, stations[i]));
  ui_add_feature (job, "2", "4X Ø6.6 ±0.15", "BM-2");
  ui_add_feature (job, "3", "⌖ Ø0.2 A B", "");
  ui_add_feature (job, "4", "M8x1.25 6H", "");
  ui_add_piece (job, "001");
  ui_add_piece (job, "002");
  TmPerson *person = tm_person_new ();
  person->initials = tm_job_intern (job, "CD");
  tm_job_add_person (job, person);
  return job;
}

/* Takes @job. */
static inline UiFixture *
ui_fixture_new (TmJob *job)
{
  g_autoptr (GError) error = NULL;
  UiFixture *fixture = g_new0 (UiFixture, 1);
  gboolean added = FALSE;
  fixture->folder = g_dir_make_tmp ("tenthmark-ui-XXXXXX", &error);
  g_assert_no_error (error);
  fixture->path = g_build_filename (fixture->folder, "test.book", NULL);
  fixture->book = tm_book_open (fixture->path, TM_BOOK_OPEN_NORMAL, &error);
  g_assert_no_error (error);
  tm_book_add_job (fixture->book, job, NULL, NULL, &added, &error);
  g_assert_no_error (error);
  fixture->document = tm_document_new (fixture->book, job);
  return fixture;
}

static inline void
ui_remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_unlink (path);
    }
  g_rmdir (folder);
}

/* The thread of an answer that nobody waits for any more may still hold the document, or lay out pages: at
 * the end of the program the fonts would go under it. */
static inline void
ui_fixture_free (UiFixture *fixture)
{
  ui_wait_until (G_OBJECT (fixture->document)->ref_count == 1 && !tm_report_layout_is_any ());
  g_assert_finalize_object (fixture->document);
  tm_book_close (fixture->book);
  ui_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->folder);
  g_free (fixture);
}

/* The job as the book holds it; free it. */
static inline TmJob *
ui_load_again (const UiFixture *fixture)
{
  g_autoptr (GError) error = NULL;
  TmJob *job = tm_book_load_job (fixture->book, tm_document_job (fixture->document)->id, NULL, NULL, &error);

  g_assert_no_error (error);
  return job;
}

/* Without a display there is nothing to test: says so as TAP wants it. */
static inline gboolean
ui_skip_without_display (void)
{
  if (g_getenv ("DISPLAY") != NULL)
    return FALSE;
  g_print ("1..0 # SKIP no display\n");
  return TRUE;
}
