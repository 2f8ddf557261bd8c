/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A new revision in the window: refused until what it needs is there, then a job of its own beside the old
 * one.
 */

#include <adwaita.h>

#include "app-dialog.h"
#include "app-resources.h"
#include "app-window.h"
#include "ui-fixture.h"

typedef struct {
  char *folder;
  char *path;
  TmWindow *window;
} Shell;

static Shell *
open_shell (void)
{
  Shell *shell = g_new0 (Shell, 1);
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) job = ui_make_job ();
  TmBook *book;
  gboolean added;

  job->revision = "B";
  job->report_identifier = "FA-7";
  shell->folder = g_dir_make_tmp ("tenthmark-ui-XXXXXX", &error);
  g_assert_no_error (error);
  shell->path = g_build_filename (shell->folder, "shop.tmbook", NULL);
  shell->window = tm_window_new (NULL, shell->path);
  book = tm_window_book (shell->window);
  g_assert_true (tm_book_add_job (book, job, NULL, NULL, &added, &error));
  ui_present (shell->window);
  gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.open-job", "s", job->id);
  ui_wait_until (tm_window_document (shell->window) != NULL);
  return shell;
}

static void
close_shell (Shell *shell)
{
  ui_close (shell->window);
  ui_remove_folder (shell->folder);
  g_free (shell->path);
  g_free (shell->folder);
  g_free (shell);
}

/* The first widget of @type under @root whose title, label or name begins with @text. */
static GtkWidget *
find_widget (GtkWidget *root, GType type, const char *property, const char *text)
{
  if (g_type_is_a (G_OBJECT_TYPE (root), type))
    {
      g_autofree char *value = NULL;

      if (property == NULL)
        return root;
      g_object_get (root, property, &value, NULL);
      if (value != NULL && g_str_has_prefix (value, text))
        return root;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (root); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_widget (child, type, property, text);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWindow *
open_dialog (Shell *shell)
{
  gtk_widget_activate_action (GTK_WIDGET (shell->window), "win.new-revision", NULL);
  ui_wait_until (tm_dialog_over (GTK_WINDOW (shell->window)) != NULL);
  return tm_dialog_over (GTK_WINDOW (shell->window));
}

static void
type_into (GtkWindow *dialog, const char *title, const char *text)
{
  GtkWidget *row = find_widget (GTK_WIDGET (dialog), ADW_TYPE_ENTRY_ROW, "title", title);

  g_assert_nonnull (row);
  gtk_editable_set_text (GTK_EDITABLE (row), text);
}

static void
begin (GtkWindow *dialog)
{
  GtkWidget *row = find_widget (GTK_WIDGET (dialog), ADW_TYPE_ENTRY_ROW, "title", "New revision");

  g_signal_emit_by_name (row, "entry-activated");
}

static void
mark (GtkWindow *dialog, const char *feature)
{
  GtkWidget *row = find_widget (GTK_WIDGET (dialog), ADW_TYPE_ACTION_ROW, "title", feature);

  g_assert_nonnull (row);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (find_widget (row, GTK_TYPE_CHECK_BUTTON, NULL, NULL)), TRUE);
}

static void
test_begin (void)
{
  Shell *shell = open_shell ();
  GtkWindow *dialog = open_dialog (shell);
  const char *old_id = tm_document_job (tm_window_document (shell->window))->id;
  g_autofree char *old = g_strdup (old_id);
  g_autoptr (GPtrArray) list = NULL;
  const TmJob *job;

  begin (dialog); /* no revision */
  g_assert_true (tm_dialog_over (GTK_WINDOW (shell->window)) == dialog);
  type_into (dialog, "New revision", "C");
  type_into (dialog, "Reason for it", "thread M8 deeper");
  begin (dialog); /* nothing affected */
  g_assert_true (tm_dialog_over (GTK_WINDOW (shell->window)) == dialog);
  mark (dialog, "4 ·");
  begin (dialog);
  ui_wait_until (tm_dialog_over (GTK_WINDOW (shell->window)) == NULL);
  job = tm_document_job (tm_window_document (shell->window));
  g_assert_cmpstr (job->id, !=, old);
  g_assert_cmpstr (job->revision, ==, "C");
  g_assert_cmpstr (job->first_article_baseline, ==, "FA-7");
  g_assert_true (tm_job_find_feature (job, "4")->affected);
  g_assert_false (tm_job_feature_is_asked (job, tm_job_find_feature (job, "1")));
  g_assert_cmpuint (job->pieces->len, ==, 0);
  list = tm_book_list (tm_window_book (shell->window), NULL);
  g_assert_cmpuint (list->len, ==, 2);
  close_shell (shell);
}

/* Closed without beginning: nothing has changed. */
static void
test_cancel (void)
{
  Shell *shell = open_shell ();
  GtkWindow *dialog = open_dialog (shell);
  g_autoptr (GPtrArray) list = NULL;

  type_into (dialog, "New revision", "C");
  gtk_window_close (dialog);
  ui_wait_until (tm_dialog_over (GTK_WINDOW (shell->window)) == NULL);
  g_assert_cmpstr (tm_document_job (tm_window_document (shell->window))->revision, ==, "B");
  list = tm_book_list (tm_window_book (shell->window), NULL);
  g_assert_cmpuint (list->len, ==, 1);
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
  g_test_add_func ("/revision/begin", test_begin);
  g_test_add_func ("/revision/cancel", test_cancel);
  return g_test_run ();
}
