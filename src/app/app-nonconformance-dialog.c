/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-nonconformance-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-feature-words.h"
#include "app-form.h"

/* The record's words for what was decided; common practice. */
static const char *const dispositions[] = {
  "",
  NC_ ("disposition", "use as is"),
  NC_ ("disposition", "rework"),
  NC_ ("disposition", "repair"),
  NC_ ("disposition", "scrap"),
  NC_ ("disposition", "return to supplier"),
};

struct _TmNonconformanceDialog {
  AdwWindow parent_instance;

  TmDocument *document;
  const TmPiece *piece;
  const TmFeature *feature;

  GtkWidget *number;
  GtkWidget *note;
  GtkWidget *disposition; /* AdwComboRow */
  GtkWidget *save;
  GtkLabel *about;
  GtkLabel *hint;
};

G_DEFINE_FINAL_TYPE (TmNonconformanceDialog, tm_nonconformance_dialog, ADW_TYPE_WINDOW)

static const char *
get_text (GtkWidget *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (row));
}

static void
fill_from_dialog (TmNonconformanceDialog *self, TmJob *job, TmNonconformance *row)
{
  guint chosen = adw_combo_row_get_selected (ADW_COMBO_ROW (self->disposition));
  g_autofree char *number = g_strstrip (g_strdup (get_text (self->number)));
  g_autofree char *note = g_strstrip (g_strdup (get_text (self->note)));
  row->number = tm_job_intern (job, number);
  row->note = tm_job_intern (job, note);
  /* A word of the record that is none of ours stands after them in the list: then it is kept. */
  if (chosen < G_N_ELEMENTS (dispositions))
    row->disposition = tm_job_intern (job, dispositions[chosen]);
}

static gboolean
save_existing (TmNonconformanceDialog *self, TmNonconformance *row, GError **error)
{
  TmNonconformance before = *row;
  fill_from_dialog (self, tm_document_job (self->document), row);
  if (tm_document_save_definitions (self->document, error))
    return TRUE;
  *row = before;
  return FALSE;
}

static gboolean
save_new (TmNonconformanceDialog *self, GError **error)
{
  TmJob *job = tm_document_job (self->document);
  TmNonconformance *row = tm_nonconformance_new ();
  row->piece = self->piece->serial;
  row->feature = self->feature->balloon;
  fill_from_dialog (self, job, row);
  tm_job_add_nonconformance (job, row);
  if (tm_document_save_definitions (self->document, error))
    return TRUE;
  g_ptr_array_remove (job->nonconformances, row);
  return FALSE;
}

static gboolean
keep (TmNonconformanceDialog *self, GError **error)
{
  TmJob *job = tm_document_job (self->document);
  TmNonconformance *row = tm_job_nonconformance_of (job, self->piece, self->feature);
  return row != NULL ? save_existing (self, row, error) : save_new (self, error);
}

static void
save_cb (GtkWidget *widget, TmNonconformanceDialog *self)
{
  g_autoptr (GError) error = NULL;
  if (!gtk_widget_get_sensitive (self->save))
    return;
  if (keep (self, &error))
    gtk_window_close (GTK_WINDOW (self));
  else
    gtk_label_set_text (self->hint, error->message);
}

static void
changed_cb (GtkEditable *editable, TmNonconformanceDialog *self)
{
  gtk_widget_set_sensitive (self->save, *get_text (self->number) != '\0' || *get_text (self->note) != '\0');
}

static void
tm_nonconformance_dialog_dispose (GObject *object)
{
  TmNonconformanceDialog *self = TM_NONCONFORMANCE_DIALOG (object);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_nonconformance_dialog_parent_class)->dispose (object);
}

static void
tm_nonconformance_dialog_class_init (TmNonconformanceDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_nonconformance_dialog_dispose;
}

static GtkWidget *
add_entry (TmNonconformanceDialog *self, AdwPreferencesGroup *rows, const char *title)
{
  AdwEntryRow *row = tm_form_entry (rows, title);
  g_signal_connect (row, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (row, "entry-activated", G_CALLBACK (save_cb), self);
  return GTK_WIDGET (row);
}

static GtkWidget *
build_disposition (void)
{
  GtkWidget *row = GTK_WIDGET (tm_access_combo_row_new (_ ("Decision")));
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);
  gtk_string_list_append (words, _ ("not decided"));
  for (guint i = 1; i < G_N_ELEMENTS (dispositions); i++)
    gtk_string_list_append (words, g_dpgettext2 (GETTEXT_PACKAGE, "disposition", dispositions[i]));
  adw_combo_row_set_model (ADW_COMBO_ROW (row), G_LIST_MODEL (words));
  return row;
}

static void
tm_nonconformance_dialog_init (TmNonconformanceDialog *self)
{
  TmDialogForm form;
  self->save = tm_button_new (_ ("_Save"));
  gtk_widget_add_css_class (self->save, "suggested-action");
  gtk_widget_set_sensitive (self->save, FALSE);
  g_signal_connect (self->save, "clicked", G_CALLBACK (save_cb), self);
  form = tm_dialog_form_build (ADW_WINDOW (self), _ ("Nonconformance"), self->save);
  gtk_window_set_title (GTK_WINDOW (self), _ ("Nonconformance"));
  self->about = form.about;
  self->hint = form.hint;
  self->number = add_entry (self, form.rows, _ ("Number of the nonconformance"));
  self->note = add_entry (self, form.rows, _ ("What is wrong"));
  self->disposition = build_disposition ();
  adw_preferences_group_add (form.rows, self->disposition);
}

static void
show_disposition (TmNonconformanceDialog *self, const char *word)
{
  GListModel *words = adw_combo_row_get_model (ADW_COMBO_ROW (self->disposition));
  guint chosen = 0;
  while (chosen < G_N_ELEMENTS (dispositions) && !g_str_equal (dispositions[chosen], word))
    chosen++;
  if (chosen == G_N_ELEMENTS (dispositions))
    gtk_string_list_append (GTK_STRING_LIST (words), word);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->disposition), chosen);
}

static void
show_spot (TmNonconformanceDialog *self)
{
  const TmNonconformance *row
      = tm_job_nonconformance_of (tm_document_job (self->document), self->piece, self->feature);
  g_autofree char *feature = tm_words_feature (self->feature);
  g_autofree char *about = row != NULL && *row->piece == '\0'
                               ? g_strdup_printf (_ ("Every piece, %s"), feature)
                               : g_strdup_printf (_ ("Piece %s, %s"), self->piece->serial, feature);
  gtk_label_set_text (self->about, about);
  if (row == NULL)
    return;
  gtk_editable_set_text (GTK_EDITABLE (self->number), row->number);
  gtk_editable_set_text (GTK_EDITABLE (self->note), row->note);
  show_disposition (self, row->disposition);
}

GtkWidget *
tm_nonconformance_dialog_present (GtkWidget *parent, TmDocument *document)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  const TmSpot *spot = tm_bench_spot (tm_document_bench (document));
  g_return_val_if_fail (spot->piece != NULL && spot->feature != NULL, NULL);

  TmNonconformanceDialog *self = g_object_new (TM_TYPE_NONCONFORMANCE_DIALOG, NULL);
  self->document = g_object_ref (document);
  self->piece = spot->piece;
  self->feature = spot->feature;
  show_spot (self);
  tm_dialog_attach (GTK_WINDOW (self), parent);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (self->number);
  return GTK_WIDGET (self);
}

gboolean
tm_nonconformance_dialog_answer (TmNonconformanceDialog *self, const char *number, const char *note,
                                 guint disposition)
{
  g_autoptr (GError) error = NULL;
  g_return_val_if_fail (TM_IS_NONCONFORMANCE_DIALOG (self), FALSE);

  gtk_editable_set_text (GTK_EDITABLE (self->number), number);
  gtk_editable_set_text (GTK_EDITABLE (self->note), note);
  adw_combo_row_set_selected (ADW_COMBO_ROW (self->disposition), disposition);
  if (!gtk_widget_get_sensitive (self->save) || !keep (self, &error))
    return FALSE;
  gtk_window_close (GTK_WINDOW (self));
  return TRUE;
}
