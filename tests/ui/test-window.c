/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The window and Home: they open, show what there is to do in each state, and go away without a
 * trace; job files come in, good and bad.
 */

#include <adwaita.h>

#include "app-first-job.h"
#include "app-home.h"
#include "app-resources.h"
#include "app-welcome.h"
#include "app-window.h"
#include "exchange-job.h"
#include "ui-fixture.h"

typedef struct {
  char *folder;
  char *book_path;
  TmWindow *window;
} Shell;

static Shell *
open_shell (const char *book_name)
{
  Shell *shell = g_new0 (Shell, 1);
  g_autoptr (GError) error = NULL;

  shell->folder = g_dir_make_tmp ("tenthmark-ui-XXXXXX", &error);
  g_assert_no_error (error);
  shell->book_path = g_build_filename (shell->folder, book_name, NULL);
  shell->window = tm_window_new (NULL, shell->book_path);
  ui_present (shell->window);
  return shell;
}

/* Closing the window lets go of it, of its pages, of the job and of the book. */
static void
close_shell (Shell *shell)
{
  TmDocument *watched = tm_window_document (shell->window);

  g_object_ref (shell->window);
  if (watched != NULL)
    g_object_add_weak_pointer (G_OBJECT (watched), (gpointer *)&watched);
  gtk_window_destroy (GTK_WINDOW (shell->window));
  ui_drain ();
  g_assert_finalize_object (shell->window);
  g_assert_null (watched);
  ui_remove_folder (shell->folder);
  g_free (shell->book_path);
  g_free (shell->folder);
  g_free (shell);
}

static gpointer
child_of (gpointer widget, GType type, const char *name)
{
  GObject *child = gtk_widget_get_template_child (GTK_WIDGET (widget), type, name);

  g_assert_nonnull (child);
  return child;
}

static TmHome *
home_of (Shell *shell)
{
  return child_of (shell->window, TM_TYPE_WINDOW, "home");
}

static GtkWidget *
welcome_of (Shell *shell)
{
  return gtk_stack_get_child_by_name (child_of (home_of (shell), TM_TYPE_HOME, "stack"), "empty");
}

static const char *
home_state (Shell *shell)
{
  return gtk_stack_get_visible_child_name (child_of (home_of (shell), TM_TYPE_HOME, "stack"));
}

static const char *
error_line (Shell *shell)
{
  GtkRevealer *revealer = child_of (shell->window, TM_TYPE_WINDOW, "error_revealer");

  if (!gtk_revealer_get_reveal_child (revealer))
    return "";
  return gtk_label_get_text (child_of (shell->window, TM_TYPE_WINDOW, "error_label"));
}

static char *
page_of (Shell *shell)
{
  char *page;

  g_object_get (shell->window, "page", &page, NULL);
  return page;
}

static gboolean
act (Shell *shell, const char *action)
{
  return gtk_widget_activate_action (GTK_WIDGET (shell->window), action, NULL);
}

static char *
write_job_file (Shell *shell, const char *name, TmJob *job)
{
  char *path = g_build_filename (shell->folder, name, NULL);
  g_autoptr (GError) error = NULL;

  tm_job_to_file (job, path, &error);
  g_assert_no_error (error);
  tm_job_free (job);
  return path;
}

static void
test_empty_book (void)
{
  Shell *shell = open_shell ("empty.tmbook");
  GtkListBox *samples = child_of (welcome_of (shell), TM_TYPE_WELCOME, "samples_list");

  g_assert_cmpstr (home_state (shell), ==, "empty");
  g_assert_null (tm_window_document (shell->window));
  g_assert_nonnull (gtk_list_box_get_row_at_index (samples, 0));
  close_shell (shell);
}

/* A long list is whole, although the first drawing does not wait for all of it. */
static void
test_many_jobs (void)
{
  Shell *shell = open_shell ("many.tmbook");
  TmWindow *second;
  GtkColumnView *view;

  for (guint i = 0; i < 60; i++)
    {
      g_autoptr (TmJob) job = ui_make_job ();
      g_autofree char *id = g_strdup_printf ("11111111-2222-4333-8444-%012u", i);
      gboolean added;

      job->id = tm_job_intern (job, id);
      g_assert_true (tm_book_add_job (tm_window_book (shell->window), job, NULL, NULL, &added, NULL));
    }
  second = tm_window_new (NULL, shell->book_path);
  view = child_of (child_of (second, TM_TYPE_WINDOW, "home"), TM_TYPE_HOME, "view");
  gtk_window_present (GTK_WINDOW (second));
  ui_wait_until (g_list_model_get_n_items (G_LIST_MODEL (gtk_column_view_get_model (view))) == 60);
  gtk_window_destroy (GTK_WINDOW (second));
  close_shell (shell);
}

/* The three steps make a job that can be measured at once. */
static void
test_first_job (void)
{
  Shell *shell = open_shell ("first.tmbook");
  TmFirstJob *form = child_of (welcome_of (shell), TM_TYPE_WELCOME, "first_job");
  GtkLabel *reads = child_of (form, TM_TYPE_FIRST_JOB, "reads_label");
  GtkLabel *problem = child_of (welcome_of (shell), TM_TYPE_WELCOME, "problem_label");
  const TmJob *job;
  const TmFeature *feature;

  gtk_editable_set_text (child_of (form, TM_TYPE_FIRST_JOB, "callout_entry"), "Ø25 H7");
  g_assert_nonnull (strstr (gtk_label_get_text (reads), "25.000 … 25.021 mm"));
  g_signal_emit_by_name (form, "begun");
  g_assert_null (tm_window_document (shell->window));
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (problem)));

  gtk_editable_set_text (child_of (form, TM_TYPE_FIRST_JOB, "part_entry"), "  SG-1 ");
  g_signal_emit_by_name (form, "begun");
  g_assert_nonnull (tm_window_document (shell->window));
  job = tm_document_job (tm_window_document (shell->window));
  g_assert_cmpstr (job->part_number, ==, "SG-1");
  feature = tm_job_find_feature (job, "1");
  g_assert_cmpint (feature->kind, ==, TM_KIND_BORE);
  g_assert_true (((TmPiece *)g_ptr_array_index (job->pieces, 0))->first_article);
  close_shell (shell);
}

static void
test_pages (void)
{
  static const char *const pages[] = { "job", "report", "bench", "job" };
  Shell *shell = open_shell ("pages.tmbook");
  g_autofree char *path = write_job_file (shell, "one.tmjob", ui_make_job ());
  g_autofree char *first = NULL;

  tm_window_open_file (shell->window, path);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  first = page_of (shell);
  g_assert_cmpstr (first, ==, "bench");
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      g_autofree char *page = NULL;

      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.page", "s", pages[i]));
      page = page_of (shell);
      g_assert_cmpstr (page, ==, pages[i]);
      ui_drain ();
    }
  act (shell, "win.home");
  g_assert_null (tm_window_document (shell->window));
  g_assert_cmpstr (home_state (shell), ==, "list");
  close_shell (shell);
}

static void
test_pieces (void)
{
  Shell *shell = open_shell ("pieces.tmbook");
  g_autofree char *path = write_job_file (shell, "one.tmjob", ui_make_job ());
  TmDocument *document;

  tm_window_open_file (shell->window, path);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  document = tm_window_document (shell->window);
  g_assert_cmpstr (tm_bench_spot (tm_document_bench (document))->piece->serial, ==, "001");
  act (shell, "win.next-piece");
  g_assert_cmpstr (tm_bench_spot (tm_document_bench (document))->piece->serial, ==, "002");
  act (shell, "win.next-piece");
  g_assert_cmpstr (tm_bench_spot (tm_document_bench (document))->piece->serial, ==, "002");
  act (shell, "win.add-piece");
  g_assert_cmpstr (tm_bench_spot (tm_document_bench (document))->piece->serial, ==, "003");
  act (shell, "win.previous-piece");
  g_assert_cmpstr (tm_bench_spot (tm_document_bench (document))->piece->serial, ==, "002");
  close_shell (shell);
}

static AdwEntryRow *
find_row (GtkWidget *widget, const char *title)
{
  if (ADW_IS_ENTRY_ROW (widget)
      && g_str_equal (adw_preferences_row_get_title (ADW_PREFERENCES_ROW (widget)), title))
    return ADW_ENTRY_ROW (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      AdwEntryRow *row = find_row (child, title);

      if (row != NULL)
        return row;
    }
  return NULL;
}

/* What is being typed into a fact is kept when the job is left. */
static void
test_typing_is_kept (void)
{
  Shell *shell = open_shell ("typing.tmbook");
  g_autofree char *path = write_job_file (shell, "one.tmjob", ui_make_job ());
  g_autoptr (TmJob) kept = NULL;
  AdwEntryRow *row;

  tm_window_open_file (shell->window, path);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.page", "s", "job");
  row = find_row (GTK_WIDGET (shell->window), "Part name");
  g_assert_nonnull (row);
  gtk_widget_grab_focus (GTK_WIDGET (row));
  ui_drain ();
  gtk_editable_set_text (GTK_EDITABLE (row), "Side cover");
  act (shell, "win.home");
  kept = tm_book_load_job (tm_window_book (shell->window), "11111111-2222-4333-8444-555555555555", NULL, NULL,
                           NULL);
  g_assert_cmpstr (kept->part_name, ==, "Side cover");
  close_shell (shell);
}

/* A job must have its part number: the row says so, and forgets it when it is right again. */
static void
test_wrong_fact (void)
{
  Shell *shell = open_shell ("fact.tmbook");
  g_autofree char *path = write_job_file (shell, "one.tmjob", ui_make_job ());
  AdwEntryRow *row;

  tm_window_open_file (shell->window, path);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.page", "s", "job");
  row = find_row (GTK_WIDGET (shell->window), "Part number");
  gtk_editable_set_text (GTK_EDITABLE (row), "");
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_cmpstr (error_line (shell), !=, "");
  g_assert_cmpstr (tm_document_job (tm_window_document (shell->window))->part_number, ==, "UI-1");
  gtk_editable_set_text (GTK_EDITABLE (row), "UI-1");
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_cmpstr (error_line (shell), ==, "");
  close_shell (shell);
}

static gboolean
is_in_view (GtkWidget *row)
{
  GtkWidget *scroller = gtk_widget_get_ancestor (row, GTK_TYPE_SCROLLED_WINDOW);
  graphene_rect_t bounds;

  return gtk_widget_compute_bounds (row, scroller, &bounds) && bounds.origin.y >= 0
         && bounds.origin.y + bounds.size.height <= (float)gtk_widget_get_height (scroller);
}

/* A name that is refused measures nothing; the entry stays in view as the list above it grows. */
static void
test_people (void)
{
  Shell *shell = open_shell ("people.tmbook");
  g_autofree char *path = write_job_file (shell, "one.tmjob", ui_make_job ());
  AdwEntryRow *row;
  TmBench *bench;

  tm_window_open_file (shell->window, path);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.page", "s", "job");
  bench = tm_document_bench (tm_window_document (shell->window));
  tm_bench_set_by (bench, "");
  row = find_row (GTK_WIDGET (shell->window), "Add: initials and name, then Enter");
  gtk_editable_set_text (GTK_EDITABLE (row), "CD somebody else");
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_cmpstr (error_line (shell), !=, "");
  g_assert_cmpstr (tm_bench_by (bench), ==, "");
  gtk_widget_grab_focus (GTK_WIDGET (row));
  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *name = g_strdup_printf ("P%u", i);

      gtk_editable_set_text (GTK_EDITABLE (row), name);
      g_signal_emit_by_name (row, "entry-activated");
    }
  g_assert_cmpstr (tm_bench_by (bench), ==, "P0");
  ui_wait_until (is_in_view (GTK_WIDGET (row)));
  close_shell (shell);
}

/* A job file that is wrong is one line on the window, and nothing is in the book. */
static void
test_wrong_file (void)
{
  Shell *shell = open_shell ("wrong.tmbook");
  g_autofree char *path = g_build_filename (shell->folder, "cut.tmjob", NULL);
  g_autoptr (GError) error = NULL;

  g_file_set_contents (path, "{\"format\": \"tenthmark-job\", \"versi", -1, &error);
  g_assert_no_error (error);
  tm_window_open_file (shell->window, path);
  ui_wait_until (*error_line (shell) != '\0');
  g_assert_nonnull (strstr (error_line (shell), "cut.tmjob"));
  g_assert_null (strchr (error_line (shell), '\n'));
  g_assert_null (tm_window_document (shell->window));
  tm_home_refresh (home_of (shell));
  g_assert_cmpstr (home_state (shell), ==, "empty");
  gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.show-error", "s", "");
  g_assert_cmpstr (error_line (shell), ==, "");
  close_shell (shell);
}

static AdwMessageDialog *
find_question (void)
{
  GListModel *toplevels = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (toplevels); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (toplevels, i);

      if (ADW_IS_MESSAGE_DIALOG (window))
        return ADW_MESSAGE_DIALOG (window);
    }
  return NULL;
}

/* A window that is left while a question about what was typed waits stays until it is answered. */
static void
test_question_holds_window (void)
{
  Shell *shell = open_shell ("holds.tmbook");
  TmJob *job = ui_make_job ();
  g_autofree char *path = NULL;
  AdwEntryRow *row;

  job->general_tolerance = tm_job_intern (job, "ISO 2768-m");
  ui_add_feature (job, "5", "40", "");
  path = write_job_file (shell, "one.tmjob", job);
  tm_window_open_file (shell->window, path);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.page", "s", "job");
  row = find_row (GTK_WIDGET (shell->window), "General tolerance");
  gtk_widget_grab_focus (GTK_WIDGET (row));
  ui_drain ();
  gtk_editable_set_text (GTK_EDITABLE (row), "ISO 2768-c");
  act (shell, "win.home");
  g_assert_nonnull (find_question ());
  g_assert_nonnull (tm_window_document (shell->window));
  gtk_window_close (GTK_WINDOW (shell->window));
  ui_drain ();
  g_assert_nonnull (find_question ());
  adw_message_dialog_response (find_question (), "change");
  gtk_window_destroy (GTK_WINDOW (find_question ()));
  ui_drain ();
  g_assert_cmpstr (tm_document_job (tm_window_document (shell->window))->general_tolerance, ==, "ISO 2768-c");
  act (shell, "win.home");
  g_assert_null (tm_window_document (shell->window));
  close_shell (shell);
}

/* The same id with other content is never merged: the job in the book can be opened instead. */
static void
test_other_content (void)
{
  Shell *shell = open_shell ("other.tmbook");
  TmJob *changed = ui_make_job ();
  g_autofree char *one = write_job_file (shell, "one.tmjob", ui_make_job ());
  g_autofree char *two = NULL;

  changed->customer = tm_job_intern (changed, "Somebody else");
  two = write_job_file (shell, "two.tmjob", changed);
  tm_window_open_file (shell->window, one);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  act (shell, "win.home");
  tm_window_open_file (shell->window, two);
  ui_wait_until (find_question () != NULL);
  g_assert_null (tm_window_document (shell->window));
  adw_message_dialog_response (find_question (), "open");
  ui_wait_until (tm_window_document (shell->window) != NULL);
  g_assert_cmpstr (tm_document_job (tm_window_document (shell->window))->customer, ==, "");
  gtk_window_destroy (GTK_WINDOW (find_question ()));
  close_shell (shell);
}

/* A book that cannot be opened says so, and trying again works once it can. */
static void
test_book_problem (void)
{
  Shell *shell = open_shell ("missing/shop.tmbook");
  g_autofree char *folder = g_path_get_dirname (shell->book_path);

  g_assert_cmpstr (home_state (shell), ==, "problem");
  g_assert_null (tm_window_book (shell->window));
  g_assert_cmpint (g_mkdir (folder, 0700), ==, 0);
  act (shell, "win.retry-book");
  g_assert_cmpstr (home_state (shell), ==, "empty");
  g_assert_nonnull (tm_window_book (shell->window));
  g_object_ref (shell->window);
  gtk_window_destroy (GTK_WINDOW (shell->window));
  ui_drain ();
  g_assert_finalize_object (shell->window);
  ui_remove_folder (folder);
  ui_remove_folder (shell->folder);
  g_free (shell->book_path);
  g_free (shell->folder);
  g_free (shell);
}

static GtkWidget *
find_label (GtkWidget *widget, const char *text)
{
  GtkWidget *found = NULL;

  if (GTK_IS_LABEL (widget) && g_str_equal (gtk_label_get_text (GTK_LABEL (widget)), text))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL && found == NULL;
       child = gtk_widget_get_next_sibling (child))
    found = find_label (child, text);
  return found;
}

/* A gauge that types, ten readings a second for longer than a toast takes to come and go: the newest
 * words are always there, and the old ones do not queue up behind them. */
static void
test_quick_toasts (void)
{
  Shell *shell = open_shell ("shop.tmbook");
  GtkWidget *toasts = child_of (shell->window, TM_TYPE_WINDOW, "toasts");

  for (guint i = 0; i < 25; i++)
    {
      gboolean over = FALSE;
      g_autofree char *text = g_strdup_printf ("Recorded %u & on", i);

      g_assert_true (gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.show-toast", "s", text));
      g_assert_nonnull (find_label (toasts, text));
      g_timeout_add (100, ui_deadline_cb, &over);
      ui_wait_until (over);
    }
  g_assert_null (find_label (toasts, "Recorded 3 & on"));
  /* The last one can still be read when the toast has gone. */
  ui_wait_until (find_label (toasts, "Recorded 24 & on") == NULL);
  gtk_test_accessible_assert_property (GTK_ACCESSIBLE (toasts), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                       "Recorded 24 & on");
  close_shell (shell);
}

int
main (int argc, char *argv[])
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/window/empty-book", test_empty_book);
  g_test_add_func ("/window/many-jobs", test_many_jobs);
  g_test_add_func ("/window/first-job", test_first_job);
  g_test_add_func ("/window/pages", test_pages);
  g_test_add_func ("/window/pieces", test_pieces);
  g_test_add_func ("/window/typing-is-kept", test_typing_is_kept);
  g_test_add_func ("/window/wrong-fact", test_wrong_fact);
  g_test_add_func ("/window/people", test_people);
  g_test_add_func ("/window/question-holds-window", test_question_holds_window);
  g_test_add_func ("/window/wrong-file", test_wrong_file);
  g_test_add_func ("/window/other-content", test_other_content);
  g_test_add_func ("/window/book-problem", test_book_problem);
  g_test_add_func ("/window/quick-toasts", test_quick_toasts);
  return g_test_run ();
}
