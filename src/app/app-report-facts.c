/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-facts.h"

#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-edit-field.h"
#include "app-form-dialog.h"
#include "app-form.h"
#include "app-language-choice.h"
#include "app-report-fields.h"

/* Pixels. */
#define WIDTH  560
#define HEIGHT 680

enum {
  IDENTIFIER,
  ORGANISATION,
  SUPPLIER_CODE,
  MANUFACTURING_RECORD,
  DRAWING_REVISION,
  DRAWING_CHANGES,
  N_TEXTS
};

typedef struct {
  const char *fact; /* the member of TmJob */
  const char *title;
  gsize offset; /* of its const char * in TmJob */
} TextFact;

#define FACT(title, field)                       \
  {                                              \
#field, title, G_STRUCT_OFFSET(TmJob, field) \
  }

static const TextFact texts[N_TEXTS] = {
  [IDENTIFIER] = FACT (N_ ("Report identifier, unique in the shop"), report_identifier),
  [ORGANISATION] = FACT (N_ ("Organisation that makes the report"), organisation),
  [SUPPLIER_CODE] = FACT (N_ ("Supplier code with the customer"), supplier_code),
  [MANUFACTURING_RECORD] = FACT (N_ ("Manufacturing record: traveller, lot or batch"), manufacturing_record),
  [DRAWING_REVISION] = FACT (N_ ("Drawing revision (empty: that of the part)"), drawing_revision),
  [DRAWING_CHANGES] = FACT (N_ ("Changes not yet on the drawing"), drawing_changes),
};

typedef struct {
  TmDocument *document;
  TmFormDialog window;
  AdwEntryRow *texts[N_TEXTS];
  AdwComboRow *article, *language, *second;
  TmReportFields *fields;    /* or NULL */
  GStrv codes, second_codes; /* of the languages offered; the first is "" */
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  tm_report_fields_free (dialog->fields);
  g_strfreev (dialog->codes);
  g_strfreev (dialog->second_codes);
  g_object_unref (dialog->document);
  g_free (dialog);
}

static const char **
text_of (TmJob *job, guint which)
{
  return G_STRUCT_MEMBER_P (job, texts[which].offset);
}

static void
change_facts (TmJob *job, gpointer data)
{
  Dialog *dialog = data;

  for (guint i = 0; i < N_TEXTS; i++)
    {
      g_autofree char *text = tm_form_text (dialog->texts[i]);

      *text_of (job, i) = tm_job_intern (job, text);
    }
  job->article = tm_form_chosen (dialog->article) == 1 ? TM_ARTICLE_ASSEMBLY : TM_ARTICLE_DETAIL;
  job->language = tm_job_intern (job, tm_language_choice_get (dialog->codes, dialog->language));
  job->second_language = tm_job_intern (job, tm_language_choice_get (dialog->second_codes, dialog->second));
  tm_report_fields_read (dialog->fields, job);
}

static gboolean
languages_differ (Dialog *dialog)
{
  const char *second = tm_language_choice_get (dialog->second_codes, dialog->second);

  return *second == '\0' || !g_str_equal (second, tm_language_choice_get (dialog->codes, dialog->language));
}

static void
save_cb (Dialog *dialog)
{
  g_autoptr (GError) error = NULL;

  if (!languages_differ (dialog))
    {
      tm_dialog_problem_set (dialog->window.problem,
                             _ ("Second language: it is the first one already; choose another, or none."));
      gtk_widget_grab_focus (GTK_WIDGET (dialog->second));
    }
  else if (tm_edit_report_facts (dialog->document, change_facts, dialog, &error))
    tm_form_dialog_done (&dialog->window, _ ("Report facts recorded"));
  else
    tm_dialog_problem_set (dialog->window.problem, error->message);
}

static void
add_text (Dialog *dialog, AdwPreferencesGroup *group, guint which)
{
  TmJob *job = tm_document_job (dialog->document);

  dialog->texts[which] = tm_form_entry (group, g_dgettext (GETTEXT_PACKAGE, texts[which].title));
  tm_form_set_text (dialog->texts[which], *text_of (job, which));
  g_signal_connect_swapped (dialog->texts[which], "entry-activated", G_CALLBACK (save_cb), dialog);
}

static void
build (Dialog *dialog)
{
  const char *articles[] = { _ ("one part"), _ ("an assembly of parts"), NULL };
  const TmJob *job = tm_document_job (dialog->document);
  AdwPreferencesGroup *report = tm_form_group (dialog->window.rows, _ ("Report"), NULL);
  AdwPreferencesGroup *drawing, *languages;

  for (guint i = IDENTIFIER; i <= MANUFACTURING_RECORD; i++)
    add_text (dialog, report, i);
  dialog->article = tm_form_choice (report, _ ("It is about"), articles);
  adw_combo_row_set_selected (dialog->article, job->article == TM_ARTICLE_ASSEMBLY ? 1 : 0);
  drawing = tm_form_group (dialog->window.rows, _ ("Drawing"), NULL);
  add_text (dialog, drawing, DRAWING_REVISION);
  add_text (dialog, drawing, DRAWING_CHANGES);
  dialog->fields = tm_report_fields_new (dialog->window.rows, dialog->document, G_CALLBACK (save_cb), dialog);
  languages = tm_form_group (dialog->window.rows, _ ("Language of the report"), NULL);
  dialog->language = tm_form_choice (languages, _ ("Language"), (const char *const[]) { NULL });
  dialog->second
      = tm_form_choice (languages, _ ("Second language beside it"), (const char *const[]) { NULL });
  dialog->codes = tm_language_choice_fill (dialog->language, _ ("as the screen"), job->language);
  dialog->second_codes = tm_language_choice_fill (dialog->second, _ ("none"), job->second_language);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
}

/* @fact is one of those that there are. */
static GtkWidget *
find_row (Dialog *dialog, const char *fact)
{
  for (guint i = 0; i < N_TEXTS; i++)
    if (g_str_equal (fact, texts[i].fact))
      return GTK_WIDGET (dialog->texts[i]);
  if (g_str_equal (fact, "article"))
    return GTK_WIDGET (dialog->article);
  return GTK_WIDGET (g_str_equal (fact, "language") ? dialog->language : dialog->second);
}

gboolean
tm_report_facts_has (const char *fact)
{
  g_return_val_if_fail (fact != NULL, FALSE);

  for (guint i = 0; i < N_TEXTS; i++)
    if (g_str_equal (fact, texts[i].fact))
      return TRUE;
  return g_strv_contains ((const char *const[]) { "article", "language", "second_language", NULL }, fact);
}

static Dialog *
make_dialog (GtkWidget *any_child, TmDocument *document)
{
  Dialog *dialog = g_new0 (Dialog, 1);

  dialog->document = g_object_ref (document);
  tm_form_dialog_build (&dialog->window, any_child, _ ("Report facts"), WIDTH, HEIGHT);
  build (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  return dialog;
}

static GtkWindow *
present_at (Dialog *dialog, GtkWidget *row)
{
  gtk_widget_grab_focus (row);
  gtk_window_present (dialog->window.window);
  return dialog->window.window;
}

GtkWindow *
tm_report_facts_present (GtkWidget *any_child, TmDocument *document, const char *fact)
{
  Dialog *dialog;

  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (fact == NULL || tm_report_facts_has (fact), NULL);

  dialog = make_dialog (any_child, document);
  return present_at (dialog, find_row (dialog, fact != NULL ? fact : texts[0].fact));
}

/* A field that is gone meanwhile leaves the focus on the first row. */
GtkWindow *
tm_report_facts_present_field (GtkWidget *any_child, TmDocument *document, const char *name)
{
  Dialog *dialog;
  GtkWidget *row;

  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  dialog = make_dialog (any_child, document);
  row = tm_report_fields_row (dialog->fields, name);
  return present_at (dialog, row != NULL ? row : find_row (dialog, texts[0].fact));
}
