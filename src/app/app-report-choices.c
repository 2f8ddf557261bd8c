/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-choices.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-form.h"
#include "app-language-choice.h"
#include "app-report-form.h"

/* Pixels. */
#define WIDTH  500
#define HEIGHT 670

typedef struct {
  GtkWidget *page; /* held weakly */
  TmDocument *document;
  void (*changed) (GtkWidget *page);
  GtkLabel *problem;
  AdwComboRow *language, *second, *decimal, *dates, *paper, *orientation;
  GStrv codes, second_codes;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_clear_weak_pointer (&dialog->page);
  g_strfreev (dialog->codes);
  g_strfreev (dialog->second_codes);
  g_object_unref (dialog->document);
  g_free (dialog);
}

/* -------- Languages -------- */

static void
change_languages (TmJob *job, gpointer data)
{
  Dialog *dialog = data;

  job->language = tm_job_intern (job, tm_language_choice_get (dialog->codes, dialog->language));
  job->second_language = tm_job_intern (job, tm_language_choice_get (dialog->second_codes, dialog->second));
}

/* What cannot be is said and not recorded; the job keeps what it had. */
static void
language_cb (Dialog *dialog)
{
  const char *language = tm_language_choice_get (dialog->codes, dialog->language);
  const char *second = tm_language_choice_get (dialog->second_codes, dialog->second);
  g_autoptr (GError) error = NULL;

  tm_dialog_problem_set (dialog->problem, NULL);
  if (*second != '\0' && g_str_equal (language, second))
    tm_dialog_problem_set (dialog->problem,
                           _ ("Second language: it is the first one already; choose another, or none."));
  else if (!tm_edit_facts (dialog->document, change_languages, dialog, &error))
    tm_dialog_problem_set (dialog->problem, error->message);
}

/* -------- Everything else -------- */

/* The first word of each choice is "as usual". */
static void
form_cb (Dialog *dialog)
{
  const TmFormChoice choice = {
    .paper = (int)tm_form_chosen (dialog->paper) - 1,
    .decimal = (int)tm_form_chosen (dialog->decimal) - 1,
    .dates = (int)tm_form_chosen (dialog->dates) - 1,
    .landscape = tm_form_chosen (dialog->orientation) == 1,
  };

  tm_form_choice_save (&choice);
  if (dialog->page != NULL)
    dialog->changed (dialog->page);
}

/* -------- The window -------- */

static void
build_rows (Dialog *dialog, GtkBox *box)
{
  AdwPreferencesGroup *words
      = tm_form_group (box, _ ("Words and numbers"),
                       _ ("The languages are kept with the job; the window goes on in its own."));
  AdwPreferencesGroup *sheet = tm_form_group (box, _ ("Paper"), NULL);
  const char *none[] = { NULL };
  const char *decimals[] = { _ ("as the language has it"), _ ("point: 25.012"), _ ("comma: 25,012"), NULL };
  const char *dates[] = { _ ("as the language has it"), "2026-05-04", "04.05.2026", "05/04/2026", NULL };
  /* Translators: the paper of the place, where nothing else was chosen. */
  g_autofree char *usual = g_strdup_printf (
      _ ("as is usual here, %s"), tm_paper_of_locale () == TM_PAPER_LETTER ? _ ("Letter") : _ ("A4"));
  const char *papers[] = { usual, _ ("A4"), _ ("Letter"), NULL };
  const char *orientations[] = { _ ("portrait"), _ ("landscape"), NULL };

  dialog->language = tm_form_choice (words, _ ("Language"), none);
  dialog->second = tm_form_choice (words, _ ("Second language beside it"), none);
  dialog->decimal = tm_form_choice (words, _ ("Decimal mark"), decimals);
  dialog->dates = tm_form_choice (words, _ ("Dates"), dates);
  dialog->paper = tm_form_choice (sheet, _ ("Size"), papers);
  dialog->orientation = tm_form_choice (sheet, _ ("Orientation"), orientations);
}

/* The template is the shop's, for all jobs: it has a dialog of its own, in the place of this one. */
static void
template_cb (GtkWidget *button)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (button));
  GtkWindow *parent = gtk_window_get_transient_for (window);

  gtk_window_close (window);
  if (parent != NULL)
    gtk_widget_activate_action (GTK_WIDGET (parent), "win.template", NULL);
}

static void
add_template (GtkBox *rows)
{
  AdwPreferencesGroup *group = tm_form_group (rows, _ ("Logo, colour, columns, statements"),
                                              _ ("The shop’s, for the reports of all jobs."));
  GtkWidget *button = tm_button_new (_ ("Report _template…"));

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  adw_preferences_group_add (group, button);
  g_signal_connect (button, "clicked", G_CALLBACK (template_cb), NULL);
}

static void
fill (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);
  TmFormChoice choice;

  tm_form_choice_load (&choice);
  dialog->codes = tm_language_choice_fill (dialog->language, _ ("as the screen"), job->language);
  dialog->second_codes = tm_language_choice_fill (dialog->second, _ ("none"), job->second_language);
  adw_combo_row_set_selected (dialog->paper, (guint)(choice.paper + 1));
  adw_combo_row_set_selected (dialog->decimal, (guint)(choice.decimal + 1));
  adw_combo_row_set_selected (dialog->dates, (guint)(choice.dates + 1));
  adw_combo_row_set_selected (dialog->orientation, choice.landscape ? 1 : 0);
}

static void
connect (Dialog *dialog)
{
  AdwComboRow *form[] = { dialog->decimal, dialog->dates, dialog->paper, dialog->orientation };

  g_signal_connect_swapped (dialog->language, "notify::selected", G_CALLBACK (language_cb), dialog);
  g_signal_connect_swapped (dialog->second, "notify::selected", G_CALLBACK (language_cb), dialog);
  for (guint i = 0; i < G_N_ELEMENTS (form); i++)
    g_signal_connect_swapped (form[i], "notify::selected", G_CALLBACK (form_cb), dialog);
}

GtkWindow *
tm_report_choices_present (GtkWidget *page, TmDocument *document, void (*changed) (GtkWidget *page))
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  Dialog *dialog;
  GtkWindow *window;

  g_return_val_if_fail (TM_IS_DOCUMENT (document) && changed != NULL, NULL);

  dialog = g_new0 (Dialog, 1);
  g_set_weak_pointer (&dialog->page, page);
  dialog->document = g_object_ref (document);
  dialog->changed = changed;
  dialog->problem = tm_dialog_problem_new ();
  gtk_widget_add_css_class (rows, "tm-dialog");
  build_rows (dialog, GTK_BOX (rows));
  add_template (GTK_BOX (rows));
  fill (dialog);
  connect (dialog);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), rows);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (box), scroller);
  window = tm_dialog_new (page, _ ("Form of the report"), WIDTH, HEIGHT, box);
  g_object_set_data_full (G_OBJECT (window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->language));
  gtk_window_present (window);
  return window;
}
