/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signing on the Report page: what was signed is in the book to the byte, a change of the record supersedes
 * it, and a failure at any step leaves the job unsigned.
 */

#include <adwaita.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <sys/resource.h>
#include <unistd.h>

#include "app-dialog.h"
#include "app-edit-signature.h"
#include "app-edit.h"
#include "app-hand-out.h"
#include "app-report-page-private.h"
#include "app-show-file.h"
#include "app-sign-dialog.h"
#include "exchange-job.h"
#include "report-signed.h"
#include "support-big-job.h"
#include "ui-fixture.h"

#define LONG_FEATURES 300

static char *desktop; /* the folder of make_desktop() */

typedef struct {
  UiFixture *fixture;
  TmDocument *document;
  TmJob *job;
  GtkWidget *window;
  TmReportPage *page;
} Signs;

static void
open_page_of (Signs *is, TmJob *job, const char *identifier)
{
  TmPerson *second = tm_person_new ();

  job->report_identifier = tm_job_intern (job, identifier);
  second->initials = tm_job_intern (job, "EF");
  second->name = tm_job_intern (job, "E. F. (invented)");
  g_assert_cmpint (tm_job_add_person (job, second), ==, TM_ADD_OK);
  is->fixture = ui_fixture_new (job);
  is->document = is->fixture->document;
  is->job = job;
  tm_bench_set_by (tm_document_bench (is->document), "CD");
  is->window = gtk_window_new ();
  is->page = TM_REPORT_PAGE (tm_report_page_new ());
  gtk_window_set_child (GTK_WINDOW (is->window), GTK_WIDGET (is->page));
  tm_report_page_set_document (is->page, is->document);
  ui_present (is->window);
}

static void
open_page (Signs *is, const char *identifier)
{
  open_page_of (is, ui_make_job (), identifier);
}

/* Threads that still read the record hold what asked for it, and that the document. */
static void
close_page (Signs *is)
{
  gtk_window_destroy (GTK_WINDOW (is->window));
  ui_wait_until (G_OBJECT (is->document)->ref_count == 1);
  ui_fixture_free (is->fixture);
}

static GtkLabel *
find_problem (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget) && gtk_widget_has_css_class (widget, "tm-problem"))
    return GTK_LABEL (widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkLabel *found = find_problem (child);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The dialog of signing; not the window that shows how far the reading is. */
static GtkWindow *
find_dialog (Signs *is)
{
  GtkWindow *over = tm_dialog_over (GTK_WINDOW (is->window));

  return over != NULL && find_problem (GTK_WIDGET (over)) != NULL ? over : NULL;
}

static GtkWindow *
begin (Signs *is)
{
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (is->page), "report.sign", NULL));
  ui_wait_until (find_dialog (is) != NULL);
  return find_dialog (is);
}

static const TmSignature *
get_signature (Signs *is, guint i)
{
  g_assert_cmpuint (is->job->signatures->len, >, i);
  return g_ptr_array_index (is->job->signatures, i);
}

static const char *
problem (GtkWindow *window)
{
  return gtk_label_get_text (find_problem (GTK_WIDGET (window)));
}

static void
sign (Signs *is, const char *by, const char *role)
{
  guint before = is->job->signatures->len;

  g_assert_true (tm_sign_dialog_answer (begin (is), by, role, TRUE));
  ui_wait_until (is->job->signatures->len == before + 1);
  ui_wait_until (tm_dialog_over (GTK_WINDOW (is->window)) == NULL);
}

static gboolean
has_gap (Signs *is, TmGapKind kind)
{
  g_autofree char *digest = tm_job_digest (is->job);
  g_autoptr (TmReportContent) content = tm_report_content_new (is->job);

  tm_report_content_set_digest (content, digest);
  for (guint i = 0; i < content->gaps->len; i++)
    if (((const TmGap *)g_ptr_array_index (content->gaps, i))->kind == kind)
      return TRUE;
  return FALSE;
}

static GBytes *
read_kept (Signs *is, const char *digest)
{
  g_autoptr (GError) error = NULL;
  GBytes *bytes = tm_book_read_content (is->fixture->book, is->job->id, digest, &error);

  g_assert_no_error (error);
  return bytes;
}

static void
set_customer (TmJob *job, gpointer data)
{
  job->customer = tm_job_intern (job, data);
}

static void
change (Signs *is, const char *customer)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (tm_edit_facts (is->document, set_customer, (gpointer)customer, &error));
  g_assert_no_error (error);
}

/* What the pages would show as a box is said before they are kept for good; who signs all the same may.
 * U+10FFF0 is of a private plane that Unicode gives no meaning to. */
static void
test_unprintable (void)
{
  Signs is;
  GtkWindow *dialog;

  open_page (&is, "FA-7");
  dialog = begin (&is);
  g_assert_cmpstr (problem (dialog), ==, "");
  gtk_window_close (dialog);
  change (&is, "Works \xf4\x8f\xbf\xb0");
  dialog = begin (&is);
  g_assert_nonnull (strstr (problem (dialog), "no installed font has its sign U+10FFF0"));
  g_assert_true (tm_sign_dialog_answer (dialog, "", "Measured by", TRUE));
  ui_wait_until (is.job->signatures->len == 1);
  close_page (&is);
}

static void
test_sign (void)
{
  Signs is;
  g_autofree char *digest = NULL;
  g_autoptr (GBytes) pages = NULL, workbook = NULL, again = NULL;
  const TmSignature *first;

  open_page (&is, "FA-7");
  digest = tm_job_digest (is.job);
  g_assert_true (has_gap (&is, TM_GAP_UNSIGNED));
  sign (&is, "", "Measured by");
  first = get_signature (&is, 0);
  g_assert_cmpstr (first->by, ==, "CD");
  g_assert_cmpstr (first->role, ==, "Measured by");
  g_assert_cmpstr (first->report, ==, "FA-7");
  /* The copy out of the book, which was signed, and the job in hand are one record. */
  g_assert_cmpstr (first->digest, ==, digest);
  g_assert_false (has_gap (&is, TM_GAP_UNSIGNED));
  g_assert_false (has_gap (&is, TM_GAP_SUPERSEDED));
  pages = read_kept (&is, first->pages);
  workbook = read_kept (&is, first->workbook);
  g_assert_true (memcmp (g_bytes_get_data (pages, NULL), "%PDF", 4) == 0);
  g_assert_true (memcmp (g_bytes_get_data (workbook, NULL), "PK", 2) == 0);

  change (&is, "Invented");
  g_assert_true (has_gap (&is, TM_GAP_SUPERSEDED));
  again = read_kept (&is, first->pages);
  g_assert_true (g_bytes_equal (again, pages));
  close_page (&is);
}

/* The second person signs the same record: both stand on the second's pages. */
static void
test_two (void)
{
  Signs is;
  GtkWindow *dialog;
  const TmSignature *first, *second;

  open_page (&is, "FA-7");
  sign (&is, "CD", "Measured by");
  /* Once in a role is enough. */
  dialog = begin (&is);
  g_assert_false (tm_sign_dialog_answer (dialog, "CD", "Measured by", TRUE));
  g_assert_nonnull (strstr (problem (dialog), "already"));
  gtk_window_close (dialog);
  sign (&is, "EF", "Released by");
  first = get_signature (&is, 0);
  second = get_signature (&is, 1);
  g_assert_cmpstr (second->role, ==, "Released by");
  g_assert_cmpstr (first->digest, ==, second->digest);
  g_assert_cmpstr (first->pages, !=, second->pages);
  close_page (&is);
}

static void
test_must_say (void)
{
  Signs is;
  GtkWindow *dialog;

  open_page (&is, "FA-7");
  dialog = begin (&is);
  g_assert_false (tm_sign_dialog_answer (dialog, "", "Measured by", FALSE));
  g_assert_false (tm_sign_dialog_answer (dialog, "", "", TRUE));
  gtk_window_close (dialog);
  g_assert_cmpuint (is.job->signatures->len, ==, 0);
  close_page (&is);
}

static void
test_no_identifier (void)
{
  Signs is;
  GtkWindow *dialog;

  open_page (&is, " ");
  dialog = begin (&is);
  g_assert_false (tm_sign_dialog_answer (dialog, "", "Measured by", TRUE));
  g_assert_nonnull (strstr (problem (dialog), "no identifier"));
  gtk_window_close (dialog);
  close_page (&is);
}

/* What was signed would not be what was seen. */
static void
test_changed_meanwhile (void)
{
  Signs is;
  GtkWindow *dialog;

  open_page (&is, "FA-7");
  dialog = begin (&is);
  change (&is, "Invented");
  g_assert_true (tm_sign_dialog_answer (dialog, "", "Measured by", TRUE));
  ui_wait_until (*problem (dialog) != '\0');
  g_assert_nonnull (strstr (problem (dialog), "has changed since"));
  g_assert_cmpuint (is.job->signatures->len, ==, 0);
  gtk_window_close (dialog);
  sign (&is, "", "Measured by");
  close_page (&is);
}

/* -------- While it works -------- */

/* Long enough that its signing shows how far it is. */
static void
open_long_page (Signs *is)
{
  open_page_of (is, tm_test_big_job (LONG_FEATURES, 2 * LONG_FEATURES), "FA-7");
  tm_bench_set_by (tm_document_bench (is->document), "EF");
}

static GtkWidget *
find_inside (GtkWidget *widget, GType type)
{
  if (G_OBJECT_TYPE (widget) == type)
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_inside (child, type);

      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The window that shows how far the signing is, or NULL. */
static GtkWidget *
find_work (void)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);

      if (g_strcmp0 (gtk_window_get_title (window), "Signing the report") == 0)
        return GTK_WIDGET (window);
    }
  return NULL;
}

static gint64
newest_fact (Signs *is)
{
  g_autoptr (GError) error = NULL;
  gint64 mark = 0;

  g_assert_true (tm_book_mark (is->fixture->book, &mark, &error));
  g_assert_no_error (error);
  return mark;
}

/* Cancel is pressed once @share of the work is done. */
static void
cancel_at (double share)
{
  g_autoptr (GtkProgressBar) bar = NULL;

  ui_wait_until (find_work () != NULL);
  bar = GTK_PROGRESS_BAR (g_object_ref (find_inside (find_work (), GTK_TYPE_PROGRESS_BAR)));
  ui_wait_until (gtk_progress_bar_get_fraction (bar) >= share);
  g_signal_emit_by_name (find_inside (find_work (), GTK_TYPE_BUTTON), "clicked");
}

/* Given up while the pages are made, and while the workbook is: nothing is signed, the book keeps nothing of
 * it, the dialog says so, and signs when it is asked again. */
static void
test_cancelled (void)
{
  static const double shares[] = { 0.0, 0.5 };

  for (gsize i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      Signs is;
      GtkWindow *dialog;
      g_autoptr (GBytes) kept = NULL;
      gint64 before;

      open_long_page (&is);
      dialog = begin (&is);
      before = newest_fact (&is);
      g_assert_true (tm_sign_dialog_answer (dialog, "EF", "Measured by", TRUE));
      cancel_at (shares[i]);
      ui_wait_until (*problem (dialog) != '\0');
      g_assert_cmpstr (problem (dialog), ==, "Cancelled; nothing was signed.");
      g_assert_null (find_work ());
      g_assert_cmpuint (is.job->signatures->len, ==, 0);
      g_assert_cmpint (newest_fact (&is), ==, before);
      g_assert_true (tm_sign_dialog_answer (dialog, "EF", "Measured by", TRUE));
      ui_wait_until (is.job->signatures->len == 1);
      g_assert_cmpint (newest_fact (&is), >, before);
      kept = read_kept (&is, get_signature (&is, 0)->workbook);
      g_assert_cmpuint (g_bytes_get_size (kept), >, 0);
      close_page (&is);
    }
}

/* The record changes while its copy is being signed: the copy is not what the record says any more. */
static void
test_changed_while_signing (void)
{
  Signs is;
  GtkWindow *dialog;

  open_long_page (&is);
  dialog = begin (&is);
  g_assert_true (tm_sign_dialog_answer (dialog, "EF", "Measured by", TRUE));
  ui_wait_until (find_work () != NULL);
  change (&is, "Invented");
  ui_wait_until (*problem (dialog) != '\0');
  g_assert_nonnull (strstr (problem (dialog), "has changed since"));
  g_assert_cmpuint (is.job->signatures->len, ==, 0);
  gtk_window_close (dialog);
  sign (&is, "EF", "Measured by");
  g_assert_cmpstr (is.job->customer, ==, "Invented");
  close_page (&is);
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

/* The disk is full for the pages, then for the book: nothing is signed, and afterwards it is. */
static void
test_no_room (void)
{
  static const rlim_t most[] = { 1000, 80000 };

  signal (SIGXFSZ, SIG_IGN);
  for (gsize i = 0; i < G_N_ELEMENTS (most); i++)
    {
      Signs is;
      GtkWindow *dialog;

      open_page (&is, "FA-7");
      dialog = begin (&is);
      limit_files (most[i]);
      g_assert_true (tm_sign_dialog_answer (dialog, "", "Measured by", TRUE));
      ui_wait_until (*problem (dialog) != '\0');
      limit_files (RLIM_INFINITY);
      g_test_message ("%s", problem (dialog));
      g_assert_cmpuint (is.job->signatures->len, ==, 0);
      g_assert_true (tm_sign_dialog_answer (dialog, "", "Measured by", TRUE));
      ui_wait_until (is.job->signatures->len == 1);
      close_page (&is);
    }
}

/* The last step of all. */
static void
test_not_saved (void)
{
  Signs is;
  TmSignature row = { .by = "CD",
                      .role = "x",
                      .at = "2026-05-05T10:00:00Z",
                      .digest = "",
                      .report = "",
                      .pages = "",
                      .workbook = "",
                      .extra = "" };
  gint64 mark = 0;
  g_autoptr (GError) error = NULL;

  open_page (&is, "FA-7");
  g_assert_true (tm_book_mark (is.fixture->book, &mark, NULL));
  limit_files (1000);
  g_assert_false (tm_edit_add_signature (is.document, &row, mark, &error));
  limit_files (RLIM_INFINITY);
  g_assert_nonnull (error);
  g_assert_cmpuint (is.job->signatures->len, ==, 0);
  close_page (&is);
}

/* Given up while it works: whoever closed the dialog has not signed. */
static void
test_closed (void)
{
  Signs is;
  GtkWindow *dialog;
  GApplication *nothing = g_application_get_default ();

  g_assert_null (nothing);
  open_page (&is, "FA-7");
  dialog = begin (&is);
  g_assert_true (tm_sign_dialog_answer (dialog, "", "Measured by", TRUE));
  gtk_window_destroy (dialog);
  /* Signing again waits for no other: when this one is through, so is that one before it. */
  sign (&is, "EF", "Reviewed by");
  g_assert_cmpuint (is.job->signatures->len, ==, 1);
  g_assert_cmpstr (get_signature (&is, 0)->by, ==, "EF");
  close_page (&is);
}

static void
test_hand_out (void)
{
  Signs is;
  g_autofree char *path = NULL, *found = NULL, *digest = NULL, *name = NULL;
  g_autoptr (GError) error = NULL;
  gsize length = 0;

  open_page (&is, "FA/7");
  sign (&is, "", "Measured by");
  name = tm_hand_out_name (is.job, get_signature (&is, 0), TM_HAND_OUT_PAGES);
  g_assert_true (g_str_has_prefix (name, "FA-7 signed 2"));
  g_assert_true (g_str_has_suffix (name, ".pdf"));
  path = g_build_filename (is.fixture->folder, "again.pdf", NULL);
  g_assert_true (tm_hand_out_write (is.document, get_signature (&is, 0)->pages, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &found, &length, NULL));
  digest = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *)found, length);
  g_assert_cmpstr (digest, ==, get_signature (&is, 0)->pages);
  g_assert_false (tm_hand_out_write (is.document, "00", path, &error));
  g_assert_error (error, TM_BOOK_ERROR, TM_BOOK_ERROR_NO_SUCH_FILE);
  close_page (&is);
}

/* -------- Programs of the desktop -------- */

/* All that the places of data have but programs. */
static void
link_data (const char *folder)
{
  const char *places = g_getenv ("XDG_DATA_DIRS");
  g_auto (GStrv) list
      = g_strsplit (places != NULL && *places != '\0' ? places : "/usr/local/share:/usr/share", ":", -1);

  for (guint i = 0; list[i] != NULL; i++)
    {
      g_autoptr (GDir) dir = g_dir_open (list[i], 0, NULL);
      const char *name;

      while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
        {
          g_autofree char *target = g_build_filename (list[i], name, NULL);
          g_autofree char *link = g_build_filename (folder, name, NULL);

          /* The first place that has it counts. */
          if (!g_str_equal (name, "applications") && symlink (target, link) != 0)
            g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
        }
    }
}

/* One program there is: it opens text files by copying them. */
static void
put_program (const char *folder)
{
  g_autofree char *programs = g_build_filename (folder, "applications", NULL);
  g_autofree char *entry = g_build_filename (programs, "copies.desktop", NULL);
  g_autofree char *defaults = g_build_filename (programs, "mimeapps.list", NULL);
  g_autofree char *text = g_strdup_printf ("[Desktop Entry]\nType=Application\nName=Copies\n"
                                           "Exec=cp %%f %s/opened\nMimeType=text/plain;\n",
                                           folder);

  g_assert_cmpint (g_mkdir (programs, 0700), ==, 0);
  g_assert_true (g_file_set_contents (entry, text, -1, NULL));
  g_assert_true (
      g_file_set_contents (defaults, "[Default Applications]\ntext/plain=copies.desktop\n", -1, NULL));
}

/* A desktop with that program and no other; before anything asks for one. */
static char *
make_desktop (void)
{
  char *folder = g_dir_make_tmp ("tenthmark-desktop-XXXXXX", NULL);

  g_assert_nonnull (folder);
  link_data (folder);
  put_program (folder);
  g_assert_true (g_setenv ("XDG_DATA_DIRS", folder, TRUE));
  g_assert_true (g_setenv ("XDG_DATA_HOME", folder, TRUE));
  return folder;
}

static void
remove_desktop (void)
{
  g_autofree char *programs = g_build_filename (desktop, "applications", NULL);

  ui_remove_folder (programs);
  ui_remove_folder (desktop);
  g_free (desktop);
}

static void
remember_cb (GtkWidget *teller, const char *text)
{
  g_object_set_data_full (G_OBJECT (teller), "told", g_strdup (text), g_free);
}

static const char *
told (GtkWidget *teller)
{
  return g_object_get_data (G_OBJECT (teller), "told");
}

/* Where there is a program it gets the file, and nothing is said. */
static void
test_opens (void)
{
  Signs is;
  g_autofree char *path = NULL, *opened = g_build_filename (desktop, "opened", NULL);

  open_page (&is, "FA-7");
  path = g_build_filename (is.fixture->folder, "note.txt", NULL);
  g_assert_true (g_file_set_contents (path, "invented", -1, NULL));
  tm_show_file (is.window, path, remember_cb);
  ui_wait_until (g_file_test (opened, G_FILE_TEST_EXISTS) || told (is.window) != NULL);
  g_assert_cmpstr (told (is.window), ==, NULL);
  close_page (&is);
}

/* Where there is none, one line says where the file is and what to do. */
static void
test_no_program (void)
{
  static const struct {
    TmHandOut what;
    const char *ending, *program;
  } cases[] = { { TM_HAND_OUT_PAGES, ".pdf: ", "PDF" }, { TM_HAND_OUT_WORKBOOK, ".xlsx: ", "spreadsheets" } };
  Signs is;

  open_page (&is, "FA-7");
  sign (&is, "", "Measured by");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      GtkLabel *line = tm_dialog_problem_new ();
      GtkWidget *dialog = gtk_window_new ();
      g_auto (GStrv) parts = NULL;
      g_autofree char *path = NULL;

      gtk_window_set_child (GTK_WINDOW (dialog), GTK_WIDGET (line));
      gtk_window_present (GTK_WINDOW (dialog));
      tm_hand_out_open (is.document, get_signature (&is, 0), cases[i].what, line);
      ui_wait_until (*gtk_label_get_text (line) != '\0');
      g_test_message ("%s", gtk_label_get_text (line));
      g_assert_nonnull (strstr (gtk_label_get_text (line), cases[i].ending));
      g_assert_nonnull (strstr (gtk_label_get_text (line), cases[i].program));
      g_assert_nonnull (strstr (gtk_label_get_text (line), "install"));
      g_assert_null (strchr (gtk_label_get_text (line), '\n'));
      g_assert_true (gtk_widget_get_visible (GTK_WIDGET (line)));
      /* The path that it names is that of the file. */
      parts = g_strsplit (gtk_label_get_text (line), ": ", 2);
      g_assert_true (g_file_test (parts[0], G_FILE_TEST_IS_REGULAR));
      path = g_path_get_dirname (parts[0]);
      (void)g_unlink (parts[0]);
      (void)g_rmdir (path);
      gtk_window_destroy (GTK_WINDOW (dialog));
    }
  close_page (&is);
}

static char *
read_text (const char *path)
{
  const char *command[] = { "pdftotext", path, "-", NULL };
  g_autoptr (GError) error = NULL;
  char *text = NULL;

  g_spawn_sync (NULL, (char **)command, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL,
                &text, NULL, NULL, &error);
  g_assert_no_error (error);
  return text;
}

/* The signed pages are the shop's own, and name who signed and what is missing all the same. */
static void
test_pages (void)
{
  Signs is;
  g_autoptr (TmTemplate) template = tm_template_new ();
  g_autofree char *tool = g_find_program_in_path ("pdftotext");
  g_autofree char *path = NULL, *text = NULL;
  g_autoptr (GError) error = NULL;

  if (tool == NULL)
    {
      g_test_skip ("no pdftotext");
      return;
    }
  g_free (template->name);
  template->name = g_strdup ("Invented Works");
  open_page (&is, "FA-7");
  g_assert_true (tm_book_save_template (is.fixture->book, template, "CD", "2026-05-05T10:00:00Z", &error));
  g_assert_true (tm_document_load_template (is.document, &error));
  sign (&is, "EF", "Released by");
  path = g_build_filename (is.fixture->folder, "signed.pdf", NULL);
  g_assert_true (tm_hand_out_write (is.document, get_signature (&is, 0)->pages, path, &error));
  text = read_text (path);
  g_assert_nonnull (strstr (text, "Invented Works"));
  g_assert_nonnull (strstr (text, "Released by"));
  g_assert_nonnull (strstr (text, "E. F. (invented)"));
  g_assert_nonnull (strstr (text, "Signed although"));
  g_assert_null (strstr (text, "The report is not signed"));
  close_page (&is);
}

/* Wide, the side stands beside the pages; narrow, it is folded away. */
static void
say (gboolean wide)
{
  Signs is;
  g_autoptr (TmJob) other = ui_make_job ();
  guint before;

  open_page (&is, "FA-7");
  gtk_window_set_default_size (GTK_WINDOW (is.window), wide ? 1200 : 500, 600);
  ui_wait_until (!!gtk_widget_get_mapped (GTK_WIDGET (is.page->sign)) == wide);
  before = tm_report_page_count_gaps (is.page);
  other->id = "11111111-2222-4333-8444-666666666666";
  other->report_identifier = "FA-7";
  g_assert_true (tm_book_add_job (is.fixture->book, other, NULL, NULL, NULL, NULL));
  change (&is, "Invented");
  /* One for the customer went, one for the identifier came. */
  g_assert_cmpuint (tm_report_page_count_gaps (is.page), ==, before);
  sign (&is, "", "Measured by");
  g_assert_cmpuint (tm_report_page_count_gaps (is.page), ==, before - 1);
  /* The second change comes while the first is compared with what was signed. */
  change (&is, "Somebody");
  change (&is, "Somebody else");
  g_assert_cmpuint (tm_report_page_count_gaps (is.page), ==, before - 1);
  ui_wait_until (tm_report_page_count_gaps (is.page) == before);
  close_page (&is);
}

/* The page itself names another job with the same identifier, and what was superseded, whether or not the
 * place where signatures stand is in sight. */
static void
test_page_says (void)
{
  say (TRUE);
  say (FALSE);
}

int
main (int argc, char **argv)
{
  int status;

  if (ui_skip_without_display ())
    return 0;
  desktop = make_desktop ();
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/report-sign/sign", test_sign);
  g_test_add_func ("/report-sign/two", test_two);
  g_test_add_func ("/report-sign/must-say", test_must_say);
  g_test_add_func ("/report-sign/no-identifier", test_no_identifier);
  g_test_add_func ("/report-sign/changed-meanwhile", test_changed_meanwhile);
  g_test_add_func ("/report-sign/unprintable", test_unprintable);
  g_test_add_func ("/report-sign/cancelled", test_cancelled);
  g_test_add_func ("/report-sign/changed-while-signing", test_changed_while_signing);
  g_test_add_func ("/report-sign/no-room", test_no_room);
  g_test_add_func ("/report-sign/not-saved", test_not_saved);
  g_test_add_func ("/report-sign/closed", test_closed);
  g_test_add_func ("/report-sign/hand-out", test_hand_out);
  g_test_add_func ("/report-sign/opens", test_opens);
  g_test_add_func ("/report-sign/no-program", test_no_program);
  g_test_add_func ("/report-sign/pages", test_pages);
  g_test_add_func ("/report-sign/page-says", test_page_says);
  status = g_test_run ();
  remove_desktop ();
  return status;
}
