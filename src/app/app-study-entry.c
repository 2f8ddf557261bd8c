/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-study-entry.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-study.h"
#include "app-entry-words.h"
#include "app-study-words.h"
#include "app-toast.h"
#include "core-entry.h"
#include "core-gauge.h"

/* A gauge that types may send Enter twice: the second never confirms within this time, ms. */
#define TWICE_MS 300

#define CHARS 10

struct _TmStudyEntry {
  GtkBox parent_instance;

  TmDocument *document; /* borrowed */
  const TmStudy *study; /* borrowed */
  TmFeature *plain;     /* what a value is read as where the study names no feature */
  TmStudyCell cell;
  guint n;         /* of the cell in the order; G_MAXUINT: none is left */
  gint64 asked_ms; /* when the question about a slip was asked; 0: it was not */

  GtkLabel *plan;
  GtkLabel *piece;
  GtkLabel *who;
  GtkWidget *frame;
  GtkWidget *entry;
  GtkLabel *says;
  GtkLabel *question;
  GtkLabel *progress;
  GtkWidget *bar;
  GtkWidget *back;
};

G_DEFINE_FINAL_TYPE (TmStudyEntry, tm_study_entry, GTK_TYPE_BOX)

static const char *
get_text (TmStudyEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

/* The feature of the study, where its values can be its own; else a length without limits. */
static const TmFeature *
get_feature (TmStudyEntry *self)
{
  const TmFeature *feature = tm_job_find_feature (tm_document_job (self->document), self->study->feature);

  if (feature != NULL && feature->unit == self->study->unit)
    return feature;
  return self->plain;
}

static void
ask (TmStudyEntry *self, const char *question)
{
  gtk_label_set_text (self->question, question);
  if (*question != '\0')
    gtk_widget_add_css_class (self->frame, "tm-asking");
  else
    gtk_widget_remove_css_class (self->frame, "tm-asking");
}

static char *
describe_empty (TmStudyEntry *self)
{
  return g_strdup_printf (_ ("reading in %s"), tm_unit_symbol (self->study->unit));
}

static void
show_says (TmStudyEntry *self)
{
  const TmEntry entry = tm_entry_read (get_text (self), get_feature (self));
  const gboolean refused = entry.status != TM_ENTRY_OK && entry.status != TM_ENTRY_EMPTY;
  g_autofree char *says
      = entry.status == TM_ENTRY_EMPTY ? describe_empty (self) : tm_words_entry (&entry, get_feature (self));

  gtk_label_set_text (self->says, says);
  if (refused)
    gtk_widget_add_css_class (GTK_WIDGET (self->says), "tm-refused");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->says), "tm-refused");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, says,
                                  -1);
}

static void
changed_cb (TmStudyEntry *self)
{
  if (self->study == NULL)
    return;
  self->asked_ms = 0;
  ask (self, "");
  show_says (self);
}

/* Another person than took the reading before: the gauge changes hands. */
static gboolean
is_handed_over (TmStudyEntry *self)
{
  return self->n != G_MAXUINT && self->n > 0
         && tm_study_cell (self->study, self->n - 1).person != self->cell.person;
}

static void
show_who (TmStudyEntry *self)
{
  const char *piece = g_ptr_array_index (self->study->pieces, self->cell.piece);
  const char *initials = g_ptr_array_index (self->study->people, self->cell.person);
  const guint repeat = self->cell.trial + 1, repeats = (guint)self->study->repeats.count;
  g_autofree char *person = tm_words_study_person (tm_document_job (self->document), initials);
  g_autofree char *title = g_strdup_printf (_ ("Piece %s"), piece);
  g_autofree char *who = g_strdup_printf (is_handed_over (self) ? _ ("Hand over to %s; repeat %u of %u")
                                                                : _ ("taken by %s; repeat %u of %u"),
                                          person, repeat, repeats);
  g_autofree char *spoken
      = g_strdup_printf (_ ("Reading of piece %s by %s, repeat %u of %u"), piece, initials, repeat, repeats);

  gtk_label_set_text (self->piece, title);
  gtk_label_set_text (self->who, who);
  tm_name_entry (GTK_EDITABLE (self->entry), spoken);
}

static void
show_progress (TmStudyEntry *self)
{
  const guint n = tm_study_n_cells (self->study);
  const guint n_done = tm_study_n_done (tm_document_job (self->document), self->study);
  g_autofree char *text = g_strdup_printf (_ ("%u of %u taken"), n_done, n);

  gtk_label_set_text (self->progress, text);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar), n > 0 ? (double)n_done / n : 0);
  tm_name_widget (self->bar, text);
  gtk_widget_set_sensitive (self->back, n_done > 0);
}

static void
refresh (TmStudyEntry *self)
{
  g_autofree char *plan = tm_words_study_plan (tm_document_job (self->document), self->study);

  if (!tm_study_next (tm_document_job (self->document), self->study, &self->cell, &self->n))
    self->n = G_MAXUINT;
  gtk_label_set_text (self->plan, plan);
  gtk_widget_set_sensitive (self->entry, self->n != G_MAXUINT);
  if (self->n != G_MAXUINT)
    show_who (self);
  show_progress (self);
  show_says (self);
}

static gboolean
is_short (const TmGauge *gauge, const TmQuantity *value)
{
  return gauge != NULL && tm_unit_dimension (value->unit) == TM_DIMENSION_LENGTH
         && !tm_gauge_reaches (gauge, value->count);
}

/* A gauge of the study's method that cannot have read this size, or NULL. */
static const TmGauge *
find_short (TmStudyEntry *self, const TmQuantity *value)
{
  const TmJob *job = tm_document_job (self->document);
  const TmMethod *method = tm_job_find_method (job, self->study->method);
  const TmGauge *gauge = method == NULL ? tm_job_find_gauge (job, self->study->method) : NULL;

  for (guint i = 0; method != NULL && i < method->gauges->len && !is_short (gauge, value); i++)
    gauge = tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i));
  return is_short (gauge, value) ? gauge : NULL;
}

/* TRUE when the value looks like a slip of the hand, or is out of the gauge's reach, and has not been
 * confirmed. */
static gboolean
asks_again (TmStudyEntry *self, const TmEntry *entry)
{
  const gint64 now = g_get_monotonic_time () / 1000;
  const TmGauge *gauge = find_short (self, &entry->value);
  TmSlipCheck slip = tm_entry_slip_check (entry, get_feature (self), NULL, 0);
  g_autofree char *question = NULL;

  if (gauge != NULL && !slip.likelier.given)
    slip.slip = TM_SLIP_OUT_OF_REACH;
  if (slip.slip == TM_SLIP_NONE || (self->asked_ms > 0 && now - self->asked_ms >= TWICE_MS))
    return FALSE;
  if (self->asked_ms == 0)
    self->asked_ms = now;
  question = tm_words_slip (&slip, entry, get_feature (self), gauge);
  ask (self, question);
  return TRUE;
}

static gboolean
record (TmStudyEntry *self, const TmEntry *entry)
{
  g_autofree char *typed = g_strdup (get_text (self));
  g_autoptr (GError) error = NULL;

  if (!tm_edit_add_study_reading (self->document, self->study, self->cell, &entry->value, typed, &error))
    {
      ask (self, error->message);
      return FALSE;
    }
  return TRUE;
}

const char *
tm_study_entry_submit (TmStudyEntry *self)
{
  TmEntry entry;

  g_return_val_if_fail (TM_IS_STUDY_ENTRY (self), "");

  if (self->study == NULL || self->n == G_MAXUINT)
    return "";
  entry = tm_entry_read (get_text (self), get_feature (self));
  if (entry.status == TM_ENTRY_EMPTY)
    return gtk_label_get_text (self->says);
  if (entry.status != TM_ENTRY_OK)
    {
      gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
      return gtk_label_get_text (self->says);
    }
  if (asks_again (self, &entry) || !record (self, &entry))
    {
      gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
      return gtk_label_get_text (self->question);
    }
  /* The record may have completed the study, and another page be shown by now. */
  if (self->study != NULL)
    {
      gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
      refresh (self);
    }
  return "";
}

gboolean
tm_study_entry_take_back (TmStudyEntry *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  g_return_val_if_fail (TM_IS_STUDY_ENTRY (self), FALSE);

  if (self->study == NULL)
    return FALSE;
  if (!tm_edit_take_back_study_reading (self->document, self->study, &error))
    {
      if (error != NULL)
        ask (self, error->message);
      return FALSE;
    }
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  refresh (self);
  text = g_strdup_printf (_ ("Taken back: piece %s is to be measured again."),
                          (const char *)g_ptr_array_index (self->study->pieces, self->cell.piece));
  ask (self, text);
  gtk_widget_remove_css_class (self->frame, "tm-asking");
  tm_study_entry_focus (self);
  return TRUE;
}

/* Ctrl+Z undoes text while the entry holds any. */
static gboolean
key_cb (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
        TmStudyEntry *self)
{
  if ((keyval != GDK_KEY_z && keyval != GDK_KEY_Z) || (state & GDK_CONTROL_MASK) == 0
      || (state & (GDK_SHIFT_MASK | GDK_ALT_MASK)) != 0 || *get_text (self) != '\0')
    return GDK_EVENT_PROPAGATE;
  tm_study_entry_take_back (self);
  return GDK_EVENT_STOP;
}

static void
activate_cb (TmStudyEntry *self)
{
  tm_study_entry_submit (self);
}

static void
back_cb (TmStudyEntry *self)
{
  tm_study_entry_take_back (self);
}

static void
tm_study_entry_finalize (GObject *object)
{
  g_clear_pointer (&TM_STUDY_ENTRY (object)->plain, tm_feature_free);
  G_OBJECT_CLASS (tm_study_entry_parent_class)->finalize (object);
}

static void
tm_study_entry_class_init (TmStudyEntryClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_study_entry_finalize;
}

static GtkLabel *
add_label (TmStudyEntry *self, const char *css_class)
{
  GtkWidget *label
      = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0f, "wrap", TRUE, "wrap-mode", PANGO_WRAP_WORD_CHAR, NULL);

  gtk_widget_add_css_class (label, css_class);
  gtk_box_append (GTK_BOX (self), label);
  return GTK_LABEL (label);
}

static void
build_frame (TmStudyEntry *self)
{
  self->frame = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  gtk_widget_add_css_class (self->frame, "tm-reading");
  self->entry = gtk_entry_new ();
  gtk_entry_set_has_frame (GTK_ENTRY (self->entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), CHARS);
  gtk_entry_set_input_hints (GTK_ENTRY (self->entry), GTK_INPUT_HINT_NO_SPELLCHECK | GTK_INPUT_HINT_NO_EMOJI);
  gtk_widget_set_hexpand (self->entry, TRUE);
  g_signal_connect_swapped (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (activate_cb), self);
  self->says = g_object_new (GTK_TYPE_LABEL, "xalign", 1.0f, "wrap", TRUE, "width-chars", 20,
                             "max-width-chars", 34, "justify", GTK_JUSTIFY_RIGHT, NULL);
  gtk_widget_add_css_class (GTK_WIDGET (self->says), "tm-says");
  gtk_box_append (GTK_BOX (self->frame), self->entry);
  gtk_box_append (GTK_BOX (self->frame), GTK_WIDGET (self->says));
  gtk_box_append (GTK_BOX (self), self->frame);
}

static void
build_buttons (TmStudyEntry *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *record_button = tm_button_new (_ ("_Record"));

  self->back = tm_button_new (_ ("_Take back the last"));
  gtk_widget_set_tooltip_text (self->back, _ ("Take back the last reading, to measure it again (Ctrl+Z)"));
  g_signal_connect_swapped (record_button, "clicked", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->back, "clicked", G_CALLBACK (back_cb), self);
  gtk_widget_set_focus_on_click (record_button, FALSE);
  gtk_widget_set_focus_on_click (self->back, FALSE);
  gtk_widget_add_css_class (record_button, "suggested-action");
  gtk_widget_add_css_class (record_button, "tm-wide");
  gtk_box_append (GTK_BOX (box), record_button);
  gtk_box_append (GTK_BOX (box), self->back);
  gtk_box_append (GTK_BOX (self), box);
}

static void
build_progress (TmStudyEntry *self)
{
  self->progress = add_label (self, "numeric");
  self->bar = gtk_progress_bar_new ();
  gtk_box_append (GTK_BOX (self), self->bar);
}

static TmFeature *
make_plain (void)
{
  TmFeature *plain = tm_feature_new ();

  plain->kind = TM_KIND_LENGTH;
  plain->places = 1;
  return plain;
}

static void
tm_study_entry_init (TmStudyEntry *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkLabel *blind;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 10);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-work");
  self->n = G_MAXUINT;
  self->plain = make_plain ();
  self->plan = add_label (self, "dim-label");
  self->piece = add_label (self, "tm-bench-callout");
  self->who = add_label (self, "tm-bench-name");
  build_frame (self);
  self->question = add_label (self, "tm-question");
  build_buttons (self);
  build_progress (self);
  blind = add_label (self, "dim-label");
  gtk_label_set_text (blind,
                      _ ("Values taken before are not shown, so that they cannot guide the hand. Enter "
                         "records; Ctrl+Z takes the last one back to be measured again."));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

GtkWidget *
tm_study_entry_new (void)
{
  return g_object_new (TM_TYPE_STUDY_ENTRY, NULL);
}

void
tm_study_entry_set (TmStudyEntry *self, TmDocument *document, const TmStudy *study)
{
  const gboolean same = self->document == document && self->study == study;

  g_return_if_fail (TM_IS_STUDY_ENTRY (self));

  self->document = document;
  self->study = study;
  if (study == NULL)
    return;
  self->plain->unit = study->unit;
  if (!same)
    {
      gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
      ask (self, "");
    }
  refresh (self);
}

void
tm_study_entry_focus (TmStudyEntry *self)
{
  g_return_if_fail (TM_IS_STUDY_ENTRY (self));

  gtk_widget_grab_focus (self->entry);
}

GtkEditable *
tm_study_entry_editable (TmStudyEntry *self)
{
  return GTK_EDITABLE (self->entry);
}

const char *
tm_study_entry_who (TmStudyEntry *self)
{
  return gtk_label_get_text (self->who);
}

const char *
tm_study_entry_progress (TmStudyEntry *self)
{
  return gtk_label_get_text (self->progress);
}
