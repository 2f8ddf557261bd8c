/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-reason-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-cut-words.h"
#include "app-dialog.h"
#include "app-entry-words.h"
#include "app-feature-words.h"
#include "app-form.h"
#include "app-pin-words.h"
#include "app-toast.h"

/* As many spring passes as the Bench takes. */
#define PASSES_MAX 99

struct _TmReasonDialog {
  AdwWindow parent_instance;

  TmDocument *document;
  TmBenchFact fact; /* what is corrected or withdrawn: one of the three */
  gboolean corrects;

  GtkWidget *value; /* AdwEntryRow, shown when correcting a size */
  GtkWidget *dx;    /* AdwEntryRow, and the next: shown when correcting offsets from true position */
  GtkWidget *dy;
  GtkWidget *passes; /* AdwEntryRow, shown when correcting a cut */
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
  const TmReading *reading = self->fact.reading;
  return self->corrects && reading != NULL && reading->dx.given && reading->dy.given;
}

/* Puts what the correction is read as into *@says; FALSE while it is none. */
static gboolean
read_offsets (TmReasonDialog *self, char **says)
{
  const TmFeature *feature = self->fact.reading->row.feature;
  TmQuantity dx, dy;

  if (!tm_words_read_offset (get_text (self->dx), feature, &dx, says)
      || !tm_words_read_offset (get_text (self->dy), feature, &dy, says))
    return FALSE;
  *says = tm_words_offsets (&dx, &dy, feature);
  return TRUE;
}

static gboolean
read_passes (TmReasonDialog *self, guint *passes)
{
  g_autofree char *text = g_strstrip (g_strdup (get_text (self->passes)));
  guint64 number = 0;
  gboolean read = *text == '\0' || g_ascii_string_to_unsigned (text, 10, 0, PASSES_MAX, &number, NULL);

  *passes = (guint)number;
  return read;
}

/* The cut as it would then stand. */
static gboolean
read_cut (TmReasonDialog *self, char **says)
{
  TmCutRow cut = *self->fact.cut;
  TmReadStatus status = tm_quantity_read (get_text (self->value), (TmUnit)cut.dialled.unit, &cut.dialled);
  g_autofree char *words = NULL;

  if (status != TM_READ_OK)
    *says = g_strdup (g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status)));
  else if (cut.dialled.count < 0)
    *says = g_strdup (_ ("a cut is typed without a sign"));
  else if (!read_passes (self, &cut.passes))
    *says = g_strdup_printf (_ ("spring passes are a whole number up to %d"), PASSES_MAX);
  else
    {
      words = tm_words_cut_row (&cut);
      *says = g_strdup_printf (_ ("reads as %s"), words);
      return TRUE;
    }
  return FALSE;
}

static gboolean
read_correction (TmReasonDialog *self, char **says)
{
  const TmFeature *feature;
  TmEntry entry;

  if (self->fact.cut != NULL)
    return read_cut (self, says);
  feature = self->fact.reading->row.feature;
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
keep_correction (TmReasonDialog *self, const char *reason, GError **error)
{
  g_autofree char *correction = join_correction (self);
  guint passes = 0;
  if (self->fact.cut == NULL)
    return tm_document_correct (self->document, self->fact.reading, correction, reason, error);
  read_passes (self, &passes);
  return tm_document_correct_cut (self->document, self->fact.cut, correction, passes, reason, error);
}

static gboolean
keep_change (TmReasonDialog *self, GError **error)
{
  g_autofree char *reason = g_strstrip (g_strdup (get_text (self->reason)));
  if (self->corrects)
    return keep_correction (self, reason, error);
  if (self->fact.trial != NULL)
    return tm_document_withdraw_pin (self->document, self->fact.trial, reason, error);
  if (self->fact.cut != NULL)
    return tm_document_withdraw_cut (self->document, self->fact.cut, reason, error);
  return tm_document_withdraw (self->document, self->fact.reading, reason, error);
}

static char *
describe_fact (const TmBenchFact *fact)
{
  if (fact->trial != NULL)
    return tm_words_pin_trial (fact->trial);
  return fact->cut != NULL ? tm_words_cut_row (fact->cut) : tm_words_reading (fact->reading);
}

static void
say_kept (TmReasonDialog *self)
{
  TmBenchFact now = self->fact;
  if (self->corrects && now.cut != NULL)
    now.cut = now.cut->row.replaced_by;
  else if (self->corrects)
    now.reading = now.reading->row.replaced_by;
  g_autofree char *value = describe_fact (&now);
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
  self->passes = add_row (self, form.rows, _ ("Spring passes"));
  self->reason = add_row (self, form.rows, _ ("Reason"));
}

/* Where on the feature: "place 2, bottom 12". */
static char *
describe_spot (const TmBenchFact *fact, const TmFeature *feature)
{
  if (fact->trial != NULL)
    return tm_words_spot (feature, fact->trial->place, "");
  if (fact->cut != NULL)
    return tm_words_spot (feature, fact->cut->place, "");
  return tm_words_spot (feature, fact->reading->place, fact->reading->station);
}

/* A value, then the feature and where on it, then the piece. */
static char *
describe_about (const TmBenchFact *fact, const char *value, const char *where, const char *serial)
{
  if (fact->trial != NULL)
    return g_strdup_printf (_ ("%s, tried for %s on piece %s. It stays in the record."), value, where,
                            serial);
  if (fact->cut != NULL)
    return g_strdup_printf (_ ("%s, made for %s on piece %s. It stays in the record."), value, where, serial);
  return g_strdup_printf (_ ("%s, read for %s on piece %s. It stays in the record."), value, where, serial);
}

static void
describe (TmReasonDialog *self)
{
  const TmEntryRow *row = tm_bench_fact_row (&self->fact);
  g_autofree char *value = describe_fact (&self->fact);
  g_autofree char *feature = tm_words_feature (row->feature);
  g_autofree char *spot = describe_spot (&self->fact, row->feature);
  g_autofree char *where = *spot != '\0' ? g_strdup_printf ("%s, %s", feature, spot) : g_strdup (feature);
  g_autofree char *about = describe_about (&self->fact, value, where, row->piece->serial);
  gtk_label_set_text (self->about, about);
}

/* One number of several is often right: they begin as they were recorded. */
static void
fill_offsets (TmReasonDialog *self)
{
  const TmReading *reading = self->fact.reading;
  g_autofree char *dx = tm_quantity_format_in (&reading->dx, reading->row.feature->unit);
  g_autofree char *dy = tm_quantity_format_in (&reading->dy, reading->row.feature->unit);
  gtk_editable_set_text (GTK_EDITABLE (self->dx), dx);
  gtk_editable_set_text (GTK_EDITABLE (self->dy), dy);
}

static void
fill_cut (TmReasonDialog *self)
{
  g_autofree char *dialled = tm_quantity_format (&self->fact.cut->dialled);
  g_autofree char *passes = g_strdup_printf ("%u", self->fact.cut->passes);
  gtk_editable_set_text (GTK_EDITABLE (self->value), dialled);
  gtk_editable_set_text (GTK_EDITABLE (self->passes), passes);
}

static void
show_rows (TmReasonDialog *self)
{
  gboolean offsets = corrects_offsets (self);
  gboolean cut = self->corrects && self->fact.cut != NULL;

  gtk_widget_set_visible (self->value, self->corrects && !offsets);
  gtk_widget_set_visible (self->passes, cut);
  gtk_widget_set_visible (self->dx, offsets);
  gtk_widget_set_visible (self->dy, offsets);
  if (offsets)
    fill_offsets (self);
  if (cut)
    fill_cut (self);
  changed_cb (NULL, self);
}

static const char *
find_title (const TmBenchFact *fact, gboolean corrects)
{
  if (corrects)
    return fact->cut != NULL ? _ ("Correct a cut") : _ ("Correct a reading");
  if (fact->cut != NULL)
    return _ ("Withdraw a cut");
  return fact->trial != NULL ? _ ("Withdraw a pin trial") : _ ("Withdraw a reading");
}

static GtkWidget *
present (GtkWidget *parent, TmDocument *document, TmBenchFact fact, gboolean corrects)
{
  TmReasonDialog *self = g_object_new (TM_TYPE_REASON_DIALOG, NULL);
  self->document = g_object_ref (document);
  self->fact = fact;
  self->corrects = corrects;
  gtk_window_set_title (GTK_WINDOW (self), find_title (&fact, corrects));
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

  return present (parent, document, (TmBenchFact) { .reading = reading }, FALSE);
}

GtkWidget *
tm_reason_dialog_present_withdraw_pin (GtkWidget *parent, TmDocument *document, const TmPinTrial *trial)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (trial != NULL, NULL);

  return present (parent, document, (TmBenchFact) { .trial = trial }, FALSE);
}

GtkWidget *
tm_reason_dialog_present_withdraw_cut (GtkWidget *parent, TmDocument *document, const TmCutRow *cut)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (cut != NULL, NULL);

  return present (parent, document, (TmBenchFact) { .cut = cut }, FALSE);
}

GtkWidget *
tm_reason_dialog_present_correct (GtkWidget *parent, TmDocument *document, const TmReading *reading)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (reading != NULL, NULL);

  return present (parent, document, (TmBenchFact) { .reading = reading }, TRUE);
}

GtkWidget *
tm_reason_dialog_present_correct_cut (GtkWidget *parent, TmDocument *document, const TmCutRow *cut)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);
  g_return_val_if_fail (cut != NULL, NULL);

  return present (parent, document, (TmBenchFact) { .cut = cut }, TRUE);
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
