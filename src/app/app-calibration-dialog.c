/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-calibration-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-form-read.h"
#include "app-form.h"
#include "app-gauge-words.h"
#include "app-toast.h"

typedef struct {
  TmDocument *document;
  char *tag;
  TmFoundBad found_bad;
  GtkWidget *parent;
  GtkLabel *problem;
  GtkWindow *window;

  AdwEntryRow *date, *due, *certificate, *by, *uncertainty, *coverage, *known_error, *note;
  AdwComboRow *outcome;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_object_unref (dialog->parent);
  g_free (dialog->tag);
  g_free (dialog);
}

static void
read_texts (Dialog *dialog, TmJob *job, TmCalibration *read)
{
  g_autofree char *certificate = tm_form_text (dialog->certificate);
  g_autofree char *by = tm_form_text (dialog->by);
  g_autofree char *note = tm_form_text (dialog->note);

  read->gauge = tm_job_intern (job, dialog->tag);
  read->certificate = tm_job_intern (job, certificate);
  read->by = tm_job_intern (job, by);
  read->note = tm_job_intern (job, note);
  read->outcome = tm_form_chosen (dialog->outcome) == 1 ? "bad" : "good";
}

static AdwEntryRow *
find_row (Dialog *dialog, TmGaugeFault fault)
{
  switch (fault)
    {
    case TM_GAUGE_DUE_BEFORE:
      return dialog->due;
    case TM_GAUGE_DATE:
      return dialog->date;
    case TM_GAUGE_COVERAGE:
      return dialog->coverage;
    case TM_GAUGE_FINE:
    case TM_GAUGE_ZERO_RESOLUTION:
    case TM_GAUGE_NEGATIVE:
    case TM_GAUGE_RANGE_BACKWARDS:
    case TM_GAUGE_PIN_CLASS:
    case TM_GAUGE_CLASS_SIZE:
    case TM_GAUGE_PIN_OUT_OF_RANGE:
    case TM_GAUGE_PIN_STEP:
    case TM_GAUGE_PIN_RANGE:
    case TM_GAUGE_UNIT:
    case TM_GAUGE_STANDARD:
    case TM_N_GAUGE_FAULTS:
    default:
      return dialog->uncertainty;
    }
}

static gboolean
is_right (Dialog *dialog, const TmGauge *gauge, const TmCalibration *read, char **problem)
{
  TmGaugeFault fault = tm_calibration_fault (gauge, read);
  const char *line = g_dgettext (GETTEXT_PACKAGE, tm_gauge_fault_text (fault));

  return fault == TM_GAUGE_FINE || tm_form_refuse (find_row (dialog, fault), problem, g_strdup (line));
}

static TmCalibration *
read_calibration (Dialog *dialog, TmJob *job, const TmGauge *gauge, char **problem)
{
  TmCalibration *read = tm_calibration_new ();

  read_texts (dialog, job, read);
  if (tm_form_read_date (dialog->date, job, &read->date, problem)
      && tm_form_read_date (dialog->due, job, &read->due, problem)
      && tm_form_read_quantity (dialog->uncertainty, gauge->unit, &read->uncertainty, problem)
      && tm_form_read_signed (dialog->coverage, TM_UNIT_HARDNESS, &read->coverage, problem)
      && tm_form_read_signed (dialog->known_error, gauge->unit, &read->error, problem)
      && is_right (dialog, gauge, read, problem))
    return read;
  tm_calibration_free (read);
  return NULL;
}

/* The window is gone after this. */
static void
close_kept (Dialog *dialog, const char *date, gboolean bad)
{
  g_autoptr (GtkWidget) parent = g_object_ref (dialog->parent);
  g_autoptr (TmDocument) document = g_object_ref (dialog->document);
  g_autofree char *tag = g_strdup (dialog->tag);
  g_autofree char *text = g_strdup_printf (_ ("Calibration of %s kept"), tag);
  TmFoundBad found_bad = dialog->found_bad;

  gtk_window_destroy (dialog->window);
  tm_window_toast (parent, text);
  if (bad && found_bad != NULL)
    found_bad (parent, document, tag, date);
}

static void
save_cb (Dialog *dialog)
{
  TmJob *job = tm_document_job (dialog->document);
  const TmGauge *gauge = tm_job_find_gauge (job, dialog->tag);
  g_autofree char *problem = NULL;
  g_autoptr (GError) error = NULL;
  TmCalibration *read = gauge != NULL ? read_calibration (dialog, job, gauge, &problem) : NULL;
  const char *date;
  gboolean bad;

  if (read == NULL)
    {
      tm_dialog_problem_set (dialog->problem, problem);
      return;
    }
  date = read->date;
  bad = g_str_equal (read->outcome, "bad");
  if (tm_edit_add_calibration (dialog->document, read, &error))
    close_kept (dialog, date, bad);
  else
    tm_dialog_problem_set (dialog->problem, error->message);
}

static AdwEntryRow *
add_row (Dialog *dialog, AdwPreferencesGroup *group, const char *title)
{
  AdwEntryRow *row = tm_form_entry (group, title);

  g_signal_connect_swapped (row, "entry-activated", G_CALLBACK (save_cb), dialog);
  return row;
}

static void
build_rows (Dialog *dialog, GtkBox *into)
{
  const char *outcomes[] = { _ ("good"), _ ("bad: found out of its limits"), NULL };
  AdwPreferencesGroup *when = tm_form_group (into, NULL, _ ("Dates are year-month-day: 2026-05-04."));
  AdwPreferencesGroup *what = tm_form_group (into, _ ("What the certificate says"), NULL);

  tm_access_name_inside (GTK_WIDGET (when), GTK_TYPE_LIST_BOX, _ ("When, and with what outcome"));
  dialog->date = add_row (dialog, when, _ ("Calibrated on"));
  dialog->due = add_row (dialog, when, _ ("Due on"));
  dialog->outcome = tm_form_choice (when, _ ("Outcome"), outcomes);
  dialog->certificate = add_row (dialog, what, _ ("Certificate"));
  dialog->by = add_row (dialog, what, _ ("Laboratory or person"));
  dialog->uncertainty = add_row (dialog, what, _ ("Expanded uncertainty, ±"));
  dialog->coverage = add_row (dialog, what, _ ("Its k; empty: 2"));
  dialog->known_error = add_row (dialog, what, _ ("Known error: shown less true"));
  dialog->note = add_row (dialog, what, _ ("Note"));
}

static GtkWidget *
build_content (Dialog *dialog)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *rows = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  GtkWidget *save = tm_button_new (_ ("_Add"));

  dialog->problem = tm_dialog_problem_new ();
  gtk_widget_add_css_class (rows, "tm-dialog");
  build_rows (dialog, GTK_BOX (rows));
  gtk_widget_add_css_class (save, "suggested-action");
  g_signal_connect_swapped (save, "clicked", G_CALLBACK (save_cb), dialog);
  gtk_box_append (GTK_BOX (box), tm_dialog_header_new (save));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (dialog->problem));
  gtk_box_append (GTK_BOX (box), rows);
  return box;
}

GtkWidget *
tm_calibration_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag,
                               TmFoundBad found_bad)
{
  Dialog *dialog = g_new0 (Dialog, 1);
  g_autofree char *title = g_strdup_printf (_ ("Calibration of %s"), tag);
  g_autofree char *today = tm_today ();

  dialog->document = g_object_ref (document);
  dialog->parent = g_object_ref (any_child);
  dialog->tag = g_strdup (tag);
  dialog->found_bad = found_bad;
  dialog->window = GTK_WINDOW (adw_window_new ());
  gtk_window_set_title (dialog->window, title);
  gtk_window_set_default_size (dialog->window, 520, -1);
  gtk_window_set_resizable (dialog->window, FALSE);
  adw_window_set_content (ADW_WINDOW (dialog->window), build_content (dialog));
  tm_dialog_attach (dialog->window, any_child);
  g_object_set_data_full (G_OBJECT (dialog->window), "dialog", dialog, free_dialog);
  tm_form_fill_text (dialog->date, today);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->date));
  gtk_window_present (dialog->window);
  return GTK_WIDGET (dialog->window);
}
