/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-nonconformance-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-feature-words.h"

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
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "window.close", NULL);
}

static GtkWidget *
build_entry (TmNonconformanceDialog *self, const char *title)
{
  GtkWidget *row = GTK_WIDGET (tm_access_entry_row_new (title));
  g_signal_connect (row, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (row, "entry-activated", G_CALLBACK (save_cb), self);
  return row;
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

static GtkWidget *
build_header (TmNonconformanceDialog *self)
{
  GtkWidget *header = adw_header_bar_new ();
  GtkWidget *cancel = tm_button_new (_ ("_Cancel"));
  adw_header_bar_set_show_end_title_buttons (ADW_HEADER_BAR (header), FALSE);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (cancel), "window.close");
  adw_header_bar_pack_start (ADW_HEADER_BAR (header), cancel);
  self->save = tm_button_new (_ ("_Save"));
  gtk_widget_add_css_class (self->save, "suggested-action");
  gtk_widget_set_sensitive (self->save, FALSE);
  g_signal_connect (self->save, "clicked", G_CALLBACK (save_cb), self);
  adw_header_bar_pack_end (ADW_HEADER_BAR (header), self->save);
  return header;
}

static GtkLabel *
build_label (const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (label, 0);
  gtk_label_set_wrap (label, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  return label;
}

static void
tm_nonconformance_dialog_init (TmNonconformanceDialog *self)
{
  GtkWidget *outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *group = adw_preferences_group_new ();
  gtk_window_set_title (GTK_WINDOW (self), _ ("Nonconformance"));
  gtk_window_set_default_size (GTK_WINDOW (self), 460, -1);
  gtk_window_set_modal (GTK_WINDOW (self), TRUE);
  gtk_window_set_resizable (GTK_WINDOW (self), FALSE);
  gtk_box_append (GTK_BOX (outer), build_header (self));
  self->about = build_label ("body");
  self->hint = build_label ("dim-label");
  self->number = build_entry (self, _ ("Number of the nonconformance"));
  self->note = build_entry (self, _ ("What is wrong"));
  self->disposition = build_disposition ();
  tm_access_name_inside (group, GTK_TYPE_LIST_BOX, _ ("Nonconformance"));
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (group), self->number);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (group), self->note);
  adw_preferences_group_add (ADW_PREFERENCES_GROUP (group), self->disposition);
  gtk_widget_add_css_class (inner, "tm-dialog");
  gtk_box_append (GTK_BOX (inner), GTK_WIDGET (self->about));
  gtk_box_append (GTK_BOX (inner), group);
  gtk_box_append (GTK_BOX (inner), GTK_WIDGET (self->hint));
  gtk_box_append (GTK_BOX (outer), inner);
  adw_window_set_content (ADW_WINDOW (self), outer);
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
  GtkRoot *root = gtk_widget_get_root (parent);
  g_return_val_if_fail (spot->piece != NULL && spot->feature != NULL, NULL);

  TmNonconformanceDialog *self = g_object_new (TM_TYPE_NONCONFORMANCE_DIALOG, NULL);
  self->document = g_object_ref (document);
  self->piece = spot->piece;
  self->feature = spot->feature;
  show_spot (self);
  if (GTK_IS_WINDOW (root))
    gtk_window_set_transient_for (GTK_WINDOW (self), GTK_WINDOW (root));
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
