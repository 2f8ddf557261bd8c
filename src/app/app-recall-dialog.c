/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-recall-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-form-read.h"
#include "app-form.h"
#include "app-gauge-words.h"
#include "app-pointer-list.h"
#include "app-save-path.h"
#include "app-toast.h"
#include "app-work.h"
#include "book-store.h"
#include "core-gauge.h"

/* Pixels. */
#define DIALOG_WIDTH  1100
#define DIALOG_HEIGHT 620

struct _TmRecallDialog {
  AdwWindow parent_instance;

  TmDocument *document;
  char *tag;
  TmRecallList *list; /* NULL before it is asked for and while it is */
  TmPointerList *lines;

  AdwEntryRow *good_until;
  AdwEntryRow *known_error;
  GtkWidget *ask;
  GtkWidget *export;
  GtkLabel *problem;
  GtkLabel *says;
  GtkWidget *table;
  GtkFileChooserNative *chooser;
};

G_DEFINE_FINAL_TYPE (TmRecallDialog, tm_recall_dialog, ADW_TYPE_WINDOW)

/* -------- Off the main loop -------- */

typedef struct {
  char *book_path;
  char *tag;
  char *good_until;
  TmQuantity error;
} RecallWork;

static void
free_work (gpointer data)
{
  RecallWork *recall = data;

  g_free (recall->book_path);
  g_free (recall->tag);
  g_free (recall->good_until);
  g_free (recall);
}

static void
free_list (gpointer data)
{
  tm_recall_list_free (data);
}

static gpointer
run_recall (TmWork *work, gpointer data, GError **error)
{
  RecallWork *recall = data;
  g_autoptr (TmBook) book = tm_book_open (recall->book_path, TM_BOOK_OPEN_NORMAL, error);
  g_autoptr (GPtrArray) jobs = NULL;

  if (book == NULL)
    return NULL;
  jobs = tm_book_recall (book, recall->tag, recall->good_until, tm_work_progress, work, error);
  return jobs != NULL ? tm_recall_list_new (jobs, recall->tag, recall->good_until, &recall->error) : NULL;
}

/* -------- What it found -------- */

static void
drop_list (TmRecallDialog *self)
{
  tm_pointer_list_set_array (self->lines, NULL);
  g_clear_pointer (&self->list, tm_recall_list_free);
  gtk_widget_set_sensitive (self->export, FALSE);
}

static void
show_list (TmRecallDialog *self)
{
  g_autofree char *summary = tm_recall_list_summary (self->list);
  gboolean any = self->list->lines->len > 0;

  gtk_label_set_text (self->says, summary);
  tm_pointer_list_set_array (self->lines, self->list->lines);
  gtk_widget_set_visible (self->table, any);
  gtk_widget_set_sensitive (self->export, any);
}

static void
recalled_cb (GtkWidget *parent, gpointer result, const GError *error, gpointer data)
{
  TmRecallDialog *self = TM_RECALL_DIALOG (parent);

  gtk_widget_set_sensitive (self->ask, TRUE);
  gtk_label_set_text (self->says, "");
  if (error != NULL)
    tm_dialog_problem_set (self->problem, error->message);
  if (result == NULL)
    return;
  drop_list (self);
  self->list = result;
  show_list (self);
}

/* -------- Asking -------- */

static gboolean
read_fields (TmRecallDialog *self, RecallWork *recall, char **problem)
{
  TmJob *job = tm_document_job (self->document);
  const TmGauge *gauge = tm_job_find_gauge (job, self->tag);
  TmUnit unit = gauge != NULL ? gauge->unit : job->unit;
  const char *date = "";

  if (!tm_form_read_date (self->good_until, job, &date, problem)
      || !tm_form_read_signed (self->known_error, unit, &recall->error, problem))
    return FALSE;
  recall->good_until = g_strdup (date);
  return TRUE;
}

static void
ask_cb (TmRecallDialog *self)
{
  RecallWork *recall = g_new0 (RecallWork, 1);
  g_autofree char *title = g_strdup_printf (_ ("Looking for what %s has measured"), self->tag);
  g_autofree char *problem = NULL;

  if (!gtk_widget_get_sensitive (self->ask) || !read_fields (self, recall, &problem))
    {
      tm_dialog_problem_set (self->problem, problem);
      free_work (recall);
      return;
    }
  recall->book_path = g_strdup (tm_book_path (tm_document_book (self->document)));
  recall->tag = g_strdup (self->tag);
  tm_dialog_problem_set (self->problem, NULL);
  drop_list (self);
  gtk_label_set_text (self->says, _ ("Looking through the book…"));
  gtk_widget_set_sensitive (self->ask, FALSE);
  tm_work_run (GTK_WIDGET (self), title, run_recall, recalled_cb, recall, free_work, free_list);
}

/* -------- Export -------- */

void
tm_recall_dialog_write (TmRecallDialog *self, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *shown = g_filename_display_basename (path);
  g_autofree char *text = g_strdup_printf (_ ("Written: %s"), shown);
  const GString *table;
  gboolean written;

  g_return_if_fail (TM_IS_RECALL_DIALOG (self));

  if (self->list == NULL)
    return;
  table = self->list->table;
  written
      = g_file_set_contents_full (path, table->str, (gssize)table->len,
                                  G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, &error);
  tm_dialog_problem_set (self->problem, written ? NULL : error->message);
  if (written)
    gtk_label_set_text (self->says, text);
}

static void
chosen_cb (GtkFileChooserNative *chooser, int response, TmRecallDialog *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path
      = response == GTK_RESPONSE_ACCEPT ? tm_save_path_chosen (chooser, ".csv", &error) : NULL;

  g_clear_object (&self->chooser);
  if (path != NULL)
    tm_recall_dialog_write (self, path);
  else if (error != NULL)
    tm_dialog_problem_set (self->problem, error->message);
}

static void
export_cb (TmRecallDialog *self)
{
  g_autofree char *asked = g_strdup_printf (_ ("Recall of %s.csv"), self->tag);
  g_autofree char *name = g_strdelimit (g_steal_pointer (&asked), "/\\:*?\"<>|", '-');

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_ ("Export the recall as CSV"), GTK_WINDOW (self),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, NULL, NULL);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

/* -------- The window -------- */

static void
tm_recall_dialog_dispose (GObject *object)
{
  TmRecallDialog *self = TM_RECALL_DIALOG (object);

  if (self->lines != NULL)
    tm_pointer_list_set_array (self->lines, NULL);
  g_clear_object (&self->lines);
  g_clear_object (&self->chooser);
  g_clear_object (&self->document);
  g_clear_pointer (&self->list, tm_recall_list_free);
  g_clear_pointer (&self->tag, g_free);
  G_OBJECT_CLASS (tm_recall_dialog_parent_class)->dispose (object);
}

static void
tm_recall_dialog_class_init (TmRecallDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_recall_dialog_dispose;
}

static GtkWidget *
build_fields (TmRecallDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  AdwPreferencesGroup *when = tm_form_group (GTK_BOX (box), NULL, NULL);
  AdwPreferencesGroup *what = tm_form_group (GTK_BOX (box), NULL, NULL);

  tm_access_name_inside (GTK_WIDGET (when), GTK_TYPE_LIST_BOX, _ ("Since when"));
  tm_access_name_inside (GTK_WIDGET (what), GTK_TYPE_LIST_BOX, _ ("By how much it was wrong"));
  self->good_until = tm_form_entry (when, _ ("Last known good on, year-month-day"));
  self->known_error = tm_form_entry (what, _ ("Error: shown less true; empty: only the list"));
  self->ask = tm_button_new (_ ("_List"));
  gtk_widget_set_hexpand (GTK_WIDGET (when), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (what), TRUE);
  gtk_widget_set_valign (self->ask, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (self->ask, "suggested-action");
  gtk_box_append (GTK_BOX (box), self->ask);
  g_signal_connect_swapped (self->ask, "clicked", G_CALLBACK (ask_cb), self);
  g_signal_connect_swapped (self->good_until, "entry-activated", G_CALLBACK (ask_cb), self);
  g_signal_connect_swapped (self->known_error, "entry-activated", G_CALLBACK (ask_cb), self);
  return box;
}

static GtkWidget *
build_table (TmRecallDialog *self)
{
  g_autoptr (GtkSelectionModel) selection
      = GTK_SELECTION_MODEL (gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->lines))));
  GtkWidget *view = gtk_column_view_new (g_object_ref (selection));
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_widget_add_css_class (view, "tm-table");
  gtk_column_view_set_show_row_separators (GTK_COLUMN_VIEW (view), TRUE);
  tm_recall_add_columns (GTK_COLUMN_VIEW (view));
  tm_access_name_column_view (GTK_COLUMN_VIEW (view), _ ("What the gauge has measured since"));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), view);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static void
tm_recall_dialog_init (TmRecallDialog *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *header = adw_header_bar_new ();

  self->lines = tm_pointer_list_new ();
  self->export = tm_button_new (_ ("_Export as CSV…"));
  gtk_widget_set_sensitive (self->export, FALSE);
  g_signal_connect_swapped (self->export, "clicked", G_CALLBACK (export_cb), self);
  adw_header_bar_pack_end (ADW_HEADER_BAR (header), self->export);
  self->problem = tm_dialog_problem_new ();
  self->says = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_xalign (self->says, 0);
  gtk_label_set_wrap (self->says, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->says), "heading");
  gtk_widget_add_css_class (inner, "tm-dialog");
  gtk_box_append (GTK_BOX (inner), build_fields (self));
  gtk_box_append (GTK_BOX (inner), GTK_WIDGET (self->says));
  self->table = build_table (self);
  gtk_box_append (GTK_BOX (box), header);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->problem));
  gtk_box_append (GTK_BOX (box), inner);
  gtk_box_append (GTK_BOX (box), self->table);
  gtk_widget_set_visible (self->table, FALSE);
  gtk_window_set_default_size (GTK_WINDOW (self), DIALOG_WIDTH, DIALOG_HEIGHT);
  adw_window_set_content (ADW_WINDOW (self), box);
}

static const TmCalibration *
find_bad (const TmJob *job, const char *tag, const char *date)
{
  for (guint i = 0; i < job->calibrations->len; i++)
    {
      const TmCalibration *each = g_ptr_array_index (job->calibrations, i);

      if (g_str_equal (each->gauge, tag) && g_str_equal (each->date, date))
        return each;
    }
  return tm_gauge_found_bad (job, tag, NULL);
}

/* The day of the last good calibration before the bad one; a gauge without a history has its own date. */
static const char *
find_good_until (const TmJob *job, const char *tag, const TmCalibration *bad)
{
  const TmGauge *gauge = tm_job_find_gauge (job, tag);
  const TmCalibration *good = tm_calibration_at (job, tag, bad != NULL ? bad->date : NULL);

  if (good != NULL)
    return good->date;
  return gauge != NULL && (bad == NULL || strcmp (gauge->calibrated, bad->date) < 0) ? gauge->calibrated : "";
}

static void
propose (TmRecallDialog *self, const char *found_bad)
{
  const TmJob *job = tm_document_job (self->document);
  const TmCalibration *bad = find_bad (job, self->tag, found_bad);
  const TmGauge *gauge = tm_job_find_gauge (job, self->tag);

  tm_form_set_text (self->good_until, find_good_until (job, self->tag, bad));
  if (bad != NULL && gauge != NULL)
    tm_form_fill_quantity (self->known_error, &bad->error, gauge->unit);
}

TmRecallDialog *
tm_recall_dialog_present (GtkWidget *any_child, TmDocument *document, const char *tag, const char *found_bad)
{
  TmRecallDialog *self = g_object_new (TM_TYPE_RECALL_DIALOG, NULL);
  g_autofree char *title = g_strdup_printf (_ ("Recall of %s"), tag);

  self->document = g_object_ref (document);
  self->tag = g_strdup (tag);
  gtk_window_set_title (GTK_WINDOW (self), title);
  propose (self, found_bad);
  tm_dialog_attach (GTK_WINDOW (self), any_child);
  gtk_widget_grab_focus (GTK_WIDGET (self->good_until));
  gtk_window_present (GTK_WINDOW (self));
  return self;
}

void
tm_recall_dialog_ask (TmRecallDialog *self, const char *good_until, const char *error)
{
  g_return_if_fail (TM_IS_RECALL_DIALOG (self));

  tm_form_set_text (self->good_until, good_until);
  tm_form_set_text (self->known_error, error);
  ask_cb (self);
}

const TmRecallList *
tm_recall_dialog_list (TmRecallDialog *self)
{
  g_return_val_if_fail (TM_IS_RECALL_DIALOG (self), NULL);

  return self->list;
}

const char *
tm_recall_dialog_says (TmRecallDialog *self)
{
  g_return_val_if_fail (TM_IS_RECALL_DIALOG (self), "");

  return gtk_label_get_text (self->says);
}
