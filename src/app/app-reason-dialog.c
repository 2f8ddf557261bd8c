/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-reason-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-entry-words.h"
#include "app-feature-words.h"
#include "app-form.h"
#include "app-pin-words.h"
#include "app-toast.h"

struct _TmReasonDialog {
  AdwWindow parent_instance;

  TmDocument *document;
  const TmReading *reading; /* one of the two; the other is NULL */
  const TmPinTrial *trial;
  gboolean corrects;

  GtkWidget *value; /* AdwEntryRow, shown when correcting a size */
  GtkWidget *dx;    /* AdwEntryRow, and the next: shown when correcting offsets from true position */
  GtkWidget *dy;
  GtkWidget *reason; /* AdwEntryRow */
  GtkWidget *confirm;
  GtkLabel *about;
  GtkLabel *hint;
};

G_DEFINE_FINAL_TYPE (TmReasonDialog, tm_reason_dialog, ADW_TYPE_WINDOW)

static const char *
get_text (GtkWidget *row)
{
  return gtk_editable_get_text (GTK_EDITABLE (row));
}

static gboolean
has_reason (TmReasonDialog *self)
{
  g_autofree char *reason = g_strstrip (g_strdup (get_text (self->reason)));
  return *reason != '\0';
}

static gboolean
corrects_offsets (TmReasonDialog *self)
{
  return self->corrects && self->reading->dx.given && self->reading->dy.given;
}

/* Puts what the correction is read as into *@says; FALSE while it is none. */
static gboolean
read_offsets (TmReasonDialog *self, char **says)
{
  const TmFeature *feature = self->reading->row.feature;
  TmQuantity dx, dy;

  if (!tm_words_read_offset (get_text (self->dx), feature, &dx, says)
      || !tm_words_read_offset (get_text (self->dy), feature, &dy, says))
    return FALSE;
  *says = tm_words_offsets (&dx, &dy, feature);
  return TRUE;
}

static gboolean
read_correction (TmReasonDialog *self, char **says)
{
  const TmFeature *feature = self->reading->row.feature;
  TmEntry entry;

  if (corrects_offsets (self))
    return read_offsets (self, says);
  entry = tm_entry_read (get_text (self->value), feature);
  *says = tm_words_entry (&entry, feature);
  return entry.status == TM_ENTRY_OK;
}

static void
changed_cb (GtkEditable *editable, TmReasonDialog *self)
{
  g_autofree char *says = NULL;
  gboolean readable = !self->corrects || read_correction (self, &says);

  gtk_label_set_text (self->hint, says != NULL ? says : "");
  gtk_widget_set_sensitive (self->confirm, readable && has_reason (self));
}

/* The correction as the bench takes it: offsets are one text with a semicolon. */
static char *
join_correction (TmReasonDialog *self)
{
  if (corrects_offsets (self))
    return g_strdup_printf ("%s; %s", get_text (self->dx), get_text (self->dy));
  return g_strdup (get_text (self->value));
}

static gboolean
keep_change (TmReasonDialog *self, GError **error)
{
  g_autofree char *reason = g_strstrip (g_strdup (get_text (self->reason)));
  g_autofree char *correction = join_correction (self);
  if (self->corrects)
    return tm_document_correct (self->document, self->reading, correction, reason, error);
  if (self->trial != NULL)
    return tm_document_withdraw_pin (self->document, self->trial, reason, error);
  return tm_document_withdraw (self->document, self->reading, reason, error);
}

static void
say_kept (TmReasonDialog *self)
{
  g_autofree char *value
      = self->trial != NULL
            ? tm_words_pin_trial (self->trial)
            : tm_words_reading (self->corrects ? self->reading->row.replaced_by : self->reading);
  g_autofree char *text = g_strdup_printf (self->corrects ? _ ("Corrected to %s") : _ ("Withdrew %s"), value);
  tm_window_toast (GTK_WIDGET (self), text);
}

static void
confirm_cb (GtkWidget *widget, TmReasonDialog *self)
{
  g_autoptr (GError) error = NULL;
  if (!gtk_widget_get_sensitive (self->confirm))
    return;
  if (keep_change (self, &error))
    {
      say_kept (self);
      gtk_window_close (GTK_WINDOW (self));
    }
  else
    gtk_label_set_text (self->hint, error->message);
}

static void
tm_reason_dialog_dispose (GObject *object)
{
  TmReasonDialog *self = TM_REASON_DIALOG (object);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_reason_dialog_parent_class)->dispose (object);
}

static void
tm_reason_dialog_class_init (TmReasonDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_reason_dialog_dispose;
}

static GtkWidget *
add_row (TmReasonDialog *self, AdwPreferencesGroup *rows, const char *title)
{
  AdwEntryRow *row = tm_form_entry (rows, title);
  g_signal_connect (row, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (row, "entry-activated", G_CALLBACK (confirm_cb), self);
  return GTK_WIDGET (row);
}

static void
tm_reason_dialog_init (TmReasonDialog *self)
{
  TmDialogForm form;
  self->confirm = tm_button_new ("");
  gtk_widget_set_sensitive (self->confirm, FALSE);
  g_signal_connect (self->confirm, "clicked", G_CALLBACK (confirm_cb), self);
  form = tm_dialog_form_build (ADW_WINDOW (self), _ ("Reason"), self->confirm);
  self->about = form.about;
  self->hint = form.hint;
  self->value = add_row (self, form.rows, _ ("What it should have been"));
  self->dx = add_row (self, form.rows, _ ("dx, what it should have been"));
  self->dy = add_row (self, form.rows, _ ("dy, what it should have been"));
  self->reason = add_row (self, form.rows, _ ("Reason"));
}

static void
describe (TmReasonDialog *self)
{
  const TmEntryRow *row = self->trial != NULL ? &self->trial->row : &self->reading->row;
  g_autofree char *value
      = self->trial != NULL ? tm_words_pin_trial (self->trial) : tm_words_reading (self->reading);
  g_autofree char *feature = tm_words_feature (row->feature);
  g_autofree char *spot = self->trial != NULL
                              ? tm_words_spot (row->feature, self->trial->place, "")
                              : tm_words_spot (row->feature, self->reading->place, self->reading->station);
  g_autofree char *where = *spot != '\0' ? g_strdup_printf ("%s, %s", feature, spot) : g_strdup (feature);
  /* Translators: a value, then the feature and where on it. */
  g_autofree char *about = self->trial != NULL
                               ? g_strdup_printf (_ ("%s, tried for %s on piece %s. It stays in the record."),
                                                  value, where, row->piece->serial)
                               : g_strdup_printf (_ ("%s, read for %s on piece %s. It stays in the record."),
                                                  value, where, row->piece->serial);
  gtk_label_set_text (self->about, about);
}

/* One offset of a pair is often right: both begin as they were read. */
static void
show_rows (TmReasonDialog *self)
{
  const TmReading *reading = self->reading;
  gboolean offsets = corrects_offsets (self);

  gtk_widget_set_visible (self->value, self->corrects && !offsets);
  gtk_widget_set_visible (self->dx, offsets);
  gtk_widget_set_visible (self->dy, offsets);
  if (offsets)
    {
      g_autofree char *dx = tm_quantity_format_in (&reading->dx, reading->row.feature->unit);
      g_autofree char *dy = tm_quantity_format_in (&reading->dy, reading->row.feature->unit);
      gtk_editable_set_text (GTK_EDITABLE (self->dx), dx);
      gtk_editable_set_text (GTK_EDITABLE (self->dy), dy);
    }
  changed_cb (NULL, self);
}

static GtkWidget *
present (GtkWidget *parent, TmDocument *document, const TmReading *reading, const TmPinTrial *trial,
         gboolean corrects)
{
  TmReasonDialog *self = g_object_new (TM_TYPE_REASON_DIALOG, NULL);
  self->document = g_object_ref (document);
  self->reading = reading;
  self->trial = trial;
  self->corrects = corrects;
  gtk_window_set_title (GTK_WINDOW (self), corrects        ? _ ("Correct a reading")
                                           : trial != NULL ? _ ("Withdraw a pin trial")
                                                           : _ ("Withdraw a reading"));
  tm_button_set_label (self->confirm, corrects ? _ ("C_orrect") : _ ("_Withdraw"));
  gtk_widget_add_css_class (self->confirm, corrects ? "suggested-action" : "destructive-action");
  show_rows (self);
  describe (self);
  tm_dialog_attach (GTK_WINDOW (self), parent);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (corrects_offsets (self) ? self->dx : corrects ? self->value : self->reason);
  return GTK_WIDGET (self);
}

GtkWidget *
tm_reason_dialog_present_withdraw (GtkWidget *parent, TmDocument *document, const TmReading *reading)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (reading != NULL, NULL);

  return present (parent, document, reading, NULL, FALSE);
}

GtkWidget *
tm_reason_dialog_present_withdraw_pin (GtkWidget *parent, TmDocument *document, const TmPinTrial *trial)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (trial != NULL, NULL);

  return present (parent, document, NULL, trial, FALSE);
}

GtkWidget *
tm_reason_dialog_present_correct (GtkWidget *parent, TmDocument *document, const TmReading *reading)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (reading != NULL, NULL);

  return present (parent, document, reading, NULL, TRUE);
}

/* @value as join_correction() gives it. */
static void
fill_correction (TmReasonDialog *self, const char *value)
{
  g_auto (GStrv) parts = g_strsplit (value, ";", 2);

  if (!corrects_offsets (self))
    gtk_editable_set_text (GTK_EDITABLE (self->value), value);
  else if (g_strv_length (parts) == 2)
    {
      gtk_editable_set_text (GTK_EDITABLE (self->dx), g_strstrip (parts[0]));
      gtk_editable_set_text (GTK_EDITABLE (self->dy), g_strstrip (parts[1]));
    }
}

gboolean
tm_reason_dialog_answer (TmReasonDialog *self, const char *value, const char *reason)
{
  g_autoptr (GError) error = NULL;
  g_return_val_if_fail (TM_IS_REASON_DIALOG (self), FALSE);

  if (value != NULL)
    fill_correction (self, value);
  gtk_editable_set_text (GTK_EDITABLE (self->reason), reason);
  if (!gtk_widget_get_sensitive (self->confirm) || !keep_change (self, &error))
    return FALSE;
  gtk_window_close (GTK_WINDOW (self));
  return TRUE;
}
