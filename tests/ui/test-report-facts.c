/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a report says of itself, typed on the Job page: each fact can be jumped to by its member, and is kept;
 * materials, processes, tests and parts are listed, added, changed and removed.
 */

#include <adwaita.h>

#include "app-dialog.h"
#include "app-edit-field.h"
#include "app-job-page.h"
#include "app-report-fields.h"
#include "app-resources.h"
#include "report-language.h"
#include "ui-fixture.h"

typedef struct {
  UiFixture *fixture;
  GtkWidget *window;
  TmJobPage *page;
  TmJob *job;
} Page;

static Page *
open_page (void)
{
  Page *page = g_new0 (Page, 1);

  page->job = ui_make_job ();
  page->fixture = ui_fixture_new (page->job);
  page->page = TM_JOB_PAGE (tm_job_page_new ());
  page->window = ui_window_new (page->page);
  tm_job_page_set_document (page->page, page->fixture->document);
  ui_present (page->window);
  return page;
}

static void
close_page (Page *page)
{
  ui_close (page->window);
  ui_fixture_free (page->fixture);
  g_free (page);
}

/* The row, of @type, that the focus is inside; NULL: none. */
static GtkWidget *
focused_row (GtkWindow *window, GType type)
{
  GtkWidget *focus = gtk_window_get_focus (window);

  return focus == NULL                               ? NULL
         : g_type_is_a (G_OBJECT_TYPE (focus), type) ? focus
                                                     : gtk_widget_get_ancestor (focus, type);
}

static GtkWindow *
wait_for_dialog (gpointer over)
{
  ui_wait_until (tm_dialog_over (GTK_WINDOW (over)) != NULL);
  return tm_dialog_over (GTK_WINDOW (over));
}

static void
wait_until_closed (gpointer over)
{
  ui_wait_until (tm_dialog_over (GTK_WINDOW (over)) == NULL);
}

typedef struct {
  const char *fact;
  gsize offset;
} Text;

#define TEXT(member)                        \
  {                                         \
#member, G_STRUCT_OFFSET(TmJob, member) \
  }

/* The row jumped to is the one that fills the member. */
static void
test_texts (void)
{
  static const Text texts[]
      = { TEXT (report_identifier),    TEXT (organisation),     TEXT (supplier_code),
          TEXT (manufacturing_record), TEXT (drawing_revision), TEXT (drawing_changes) };
  Page *page = open_page ();

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *typed = g_strdup_printf ("  <text> of %s & ", texts[i].fact);
      g_autofree char *kept = g_strstrip (g_strdup (typed));
      GtkWindow *dialog;
      GtkWidget *row;

      tm_job_page_focus_fact (page->page, texts[i].fact);
      dialog = wait_for_dialog (page->window);
      row = focused_row (dialog, ADW_TYPE_ENTRY_ROW);
      g_assert_nonnull (row);
      gtk_editable_set_text (GTK_EDITABLE (row), typed);
      g_signal_emit_by_name (row, "entry-activated");
      wait_until_closed (page->window);
      g_assert_cmpstr (*(const char **)G_STRUCT_MEMBER_P (page->job, texts[i].offset), ==, kept);
    }
  g_assert_cmpstr (page->job->report_identifier, ==, "<text> of report_identifier &");
  close_page (page);
}

static void
choose (Page *page, const char *fact, guint chosen, gboolean saved)
{
  GtkWindow *dialog;
  GtkWidget *row;

  tm_job_page_focus_fact (page->page, fact);
  dialog = wait_for_dialog (page->window);
  row = focused_row (dialog, ADW_TYPE_COMBO_ROW);
  g_assert_nonnull (row);
  adw_combo_row_set_selected (ADW_COMBO_ROW (row), chosen);
  gtk_widget_child_focus (GTK_WIDGET (dialog), GTK_DIR_TAB_BACKWARD);
  row = focused_row (dialog, ADW_TYPE_ENTRY_ROW);
  for (guint i = 0; row == NULL && i < 8; i++)
    {
      gtk_widget_child_focus (GTK_WIDGET (dialog), GTK_DIR_TAB_BACKWARD);
      row = focused_row (dialog, ADW_TYPE_ENTRY_ROW);
    }
  g_signal_emit_by_name (row, "entry-activated");
  if (!saved)
    {
      g_assert_true (tm_dialog_over (GTK_WINDOW (page->window)) == dialog);
      gtk_window_destroy (dialog);
    }
  wait_until_closed (page->window);
}

/* "as the screen" stands first; the same language twice is refused. */
static void
test_choices (void)
{
  Page *page = open_page ();
  g_auto (GStrv) known = tm_language_list ();

  choose (page, "article", 1, TRUE);
  g_assert_cmpint (page->job->article, ==, TM_ARTICLE_ASSEMBLY);
  choose (page, "language", 1, TRUE);
  g_assert_cmpstr (page->job->language, ==, known[0]);
  choose (page, "second_language", 1, FALSE);
  g_assert_cmpstr (page->job->second_language, ==, "");
  choose (page, "language", 0, TRUE);
  g_assert_cmpstr (page->job->language, ==, "");
  choose (page, "second_language", 1, TRUE);
  g_assert_cmpstr (page->job->second_language, ==, known[0]);
  close_page (page);
}

/* One that a job file names and that is not there stays until another is chosen. */
static void
test_unknown_language (void)
{
  Page *page = open_page ();

  page->job->language = "xx";
  choose (page, "second_language", 1, TRUE);
  g_assert_cmpstr (page->job->language, ==, "xx");
  choose (page, "language", 0, TRUE);
  g_assert_cmpstr (page->job->language, ==, "");
  close_page (page);
}

/* Of the first article the reason is asked for where it is not a full one; of a full one the kind is jumped
 * to. */
static void
test_first_article (void)
{
  Page *page = open_page ();
  GtkWidget *kind, *row;

  tm_job_page_focus_fact (page->page, "first_article_reason");
  kind = focused_row (GTK_WINDOW (page->window), ADW_TYPE_COMBO_ROW);
  g_assert_nonnull (kind);
  adw_combo_row_set_selected (ADW_COMBO_ROW (kind), TM_FIRST_ARTICLE_AGAIN);
  g_assert_cmpint (page->job->first_article, ==, TM_FIRST_ARTICLE_AGAIN);
  tm_job_page_focus_fact (page->page, "first_article_reason");
  row = focused_row (GTK_WINDOW (page->window), ADW_TYPE_ENTRY_ROW);
  g_assert_nonnull (row);
  gtk_editable_set_text (GTK_EDITABLE (row), "bore reworked");
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_cmpstr (page->job->first_article_reason, ==, "bore reworked");
  tm_job_page_focus_fact (page->page, "first_article_baseline");
  row = focused_row (GTK_WINDOW (page->window), ADW_TYPE_ENTRY_ROW);
  gtk_editable_set_text (GTK_EDITABLE (row), "FA-1");
  g_signal_emit_by_name (row, "entry-activated");
  g_assert_cmpstr (page->job->first_article_baseline, ==, "FA-1");
  close_page (page);
}

static void
save_template (Page *page)
{
  g_autoptr (TmTemplate) template = tm_template_new ();
  GError *error = NULL;

  tm_template_add_field (template, "Heat & lot <number>", TRUE);
  tm_template_add_field (template, "Packed by", FALSE);
  g_assert_true (tm_book_save_template (page->fixture->book, template, "RW", "", &error));
  g_assert_true (tm_document_load_template (page->fixture->document, &error));
  g_assert_no_error (error);
}

static void
fill_field (Page *page, const char *name, const char *value)
{
  GtkWidget *row;

  tm_job_page_show_field (page->page, name);
  row = focused_row (wait_for_dialog (page->window), ADW_TYPE_ENTRY_ROW);
  g_assert_nonnull (row);
  gtk_editable_set_text (GTK_EDITABLE (row), value);
  g_signal_emit_by_name (row, "entry-activated");
  wait_until_closed (page->window);
}

/* What the shop's template asks for is answered here; an answer that is emptied is taken out. */
static void
test_fields (void)
{
  Page *page = open_page ();
  const TmReportField *field;

  save_template (page);
  fill_field (page, "Packed by", " AB ");
  g_assert_cmpuint (page->job->report_fields->len, ==, 1);
  field = g_ptr_array_index (page->job->report_fields, 0);
  g_assert_cmpstr (field->name, ==, "Packed by");
  g_assert_cmpstr (field->value, ==, "AB");
  fill_field (page, "Heat & lot <number>", "H-1");
  g_assert_cmpuint (page->job->report_fields->len, ==, 2);
  fill_field (page, "Packed by", "");
  g_assert_cmpuint (page->job->report_fields->len, ==, 1);
  field = g_ptr_array_index (page->job->report_fields, 0);
  g_assert_cmpstr (field->value, ==, "H-1");
  /* The template gone, the job's own answer can still be changed. */
  g_assert_true (tm_book_save_template (page->fixture->book, NULL, "RW", "", NULL));
  g_assert_true (tm_document_load_template (page->fixture->document, NULL));
  fill_field (page, "Heat & lot <number>", "H-2");
  field = g_ptr_array_index (page->job->report_fields, 0);
  g_assert_cmpstr (field->value, ==, "H-2");
  close_page (page);
}

static void
read_fields (TmJob *job, gpointer fields)
{
  tm_report_fields_read (fields, job);
}

static void
open_for_reading (UiFixture *fixture)
{
  g_autofree char *id = g_strdup (tm_document_job (fixture->document)->id);

  g_assert_finalize_object (fixture->document);
  tm_book_close (fixture->book);
  fixture->book = tm_book_open (fixture->path, TM_BOOK_OPEN_READ_ONLY, NULL);
  fixture->document = tm_document_new (fixture->book, tm_book_load_job (fixture->book, id, NULL, NULL, NULL));
}

static void
add_answer (TmJob *job, const char *name, const char *value)
{
  TmReportField *field = tm_report_field_new ();

  field->name = name;
  field->value = value;
  tm_job_add_report_field (job, field);
}

/* What could not be kept the first time is asked for again, of the answers that came back in their place. */
static void
test_fields_again (void)
{
  TmJob *job = ui_make_job ();
  UiFixture *fixture;
  GtkWidget *box = g_object_ref_sink (gtk_box_new (GTK_ORIENTATION_VERTICAL, 0));
  TmReportFields *fields;

  add_answer (job, "Box", "7");
  add_answer (job, "Heat number", "H-1");
  fixture = ui_fixture_new (job);
  open_for_reading (fixture);
  job = tm_document_job (fixture->document);
  fields = tm_report_fields_new (GTK_BOX (box), fixture->document, G_CALLBACK (gtk_widget_queue_draw), box);
  gtk_editable_set_text (GTK_EDITABLE (tm_report_fields_row (fields, "Box")), "");
  gtk_editable_set_text (GTK_EDITABLE (tm_report_fields_row (fields, "Heat number")), "H-2");
  g_assert_false (tm_edit_report_facts (fixture->document, read_fields, fields, NULL));
  g_assert_cmpuint (job->report_fields->len, ==, 2);
  tm_report_fields_read (fields, job);
  g_assert_cmpuint (job->report_fields->len, ==, 1);
  g_assert_cmpstr (((TmReportField *)g_ptr_array_index (job->report_fields, 0))->value, ==, "H-2");
  tm_report_fields_free (fields);
  g_object_unref (box);
  ui_fixture_free (fixture);
}

/* Types into the row that has the focus and presses Enter. */
static void
enter_text (GtkWindow *dialog, const char *text)
{
  GtkWidget *row = focused_row (dialog, ADW_TYPE_ENTRY_ROW);

  g_assert_nonnull (row);
  gtk_editable_set_text (GTK_EDITABLE (row), text);
  g_signal_emit_by_name (row, "entry-activated");
}

/* The list with the row that was asked for; from it what is wanting is filled in. */
static void
test_supply (void)
{
  Page *page = open_page ();
  GtkWindow *list, *dialog;
  const TmSupply *supply;

  tm_job_page_show_supply (page->page, NULL);
  list = wait_for_dialog (page->window);
  gtk_widget_activate (gtk_window_get_focus (list));
  dialog = wait_for_dialog (list);
  gtk_widget_child_focus (GTK_WIDGET (dialog), GTK_DIR_TAB_FORWARD);
  enter_text (dialog, " ");
  g_assert_cmpuint (page->job->supplies->len, ==, 0);
  enter_text (dialog, "EN-GJL-250");
  wait_until_closed (list);
  g_assert_cmpuint (page->job->supplies->len, ==, 1);
  gtk_window_destroy (list);
  wait_until_closed (page->window);

  supply = g_ptr_array_index (page->job->supplies, 0);
  tm_job_page_show_supply (page->page, supply);
  list = wait_for_dialog (page->window);
  ui_wait_until (focused_row (list, GTK_TYPE_LIST_BOX_ROW) != NULL);
  gtk_widget_activate (focused_row (list, GTK_TYPE_LIST_BOX_ROW));
  dialog = wait_for_dialog (list);
  enter_text (dialog, "4711");
  wait_until_closed (list);
  g_assert_cmpstr (supply->certificate, ==, "4711");
  g_assert_cmpstr (supply->name, ==, "EN-GJL-250");
  gtk_window_destroy (list);
  close_page (page);
}

static void
test_sub_part (void)
{
  Page *page = open_page ();
  GtkWindow *list, *dialog;
  const TmSubPart *part;

  tm_job_page_show_sub_part (page->page, NULL);
  list = wait_for_dialog (page->window);
  gtk_widget_activate (gtk_window_get_focus (list));
  dialog = wait_for_dialog (list);
  enter_text (dialog, "P-7");
  wait_until_closed (list);
  part = g_ptr_array_index (page->job->sub_parts, 0);
  gtk_window_destroy (list);
  wait_until_closed (page->window);
  tm_job_page_show_sub_part (page->page, part);
  list = wait_for_dialog (page->window);
  ui_wait_until (focused_row (list, GTK_TYPE_LIST_BOX_ROW) != NULL);
  gtk_widget_activate (focused_row (list, GTK_TYPE_LIST_BOX_ROW));
  dialog = wait_for_dialog (list);
  enter_text (dialog, "FA-7");
  wait_until_closed (list);
  g_assert_cmpstr (part->number, ==, "P-7");
  g_assert_cmpstr (part->report, ==, "FA-7");
  gtk_window_destroy (list);
  close_page (page);
}

int
main (int argc, char **argv)
{
  if (ui_skip_without_display ())
    return 0;
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_resources_register (tm_resources_get_resource ());
  g_test_add_func ("/report-facts/texts", test_texts);
  g_test_add_func ("/report-facts/choices", test_choices);
  g_test_add_func ("/report-facts/unknown-language", test_unknown_language);
  g_test_add_func ("/report-facts/first-article", test_first_article);
  g_test_add_func ("/report-facts/fields", test_fields);
  g_test_add_func ("/report-facts/fields-again", test_fields_again);
  g_test_add_func ("/report-facts/supply", test_supply);
  g_test_add_func ("/report-facts/sub-part", test_sub_part);
  return g_test_run ();
}
