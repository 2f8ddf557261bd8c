/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-reading-entry.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-column.h"
#include "app-entry-words.h"
#include "app-pin-words.h"
#include "core-station.h"

/* Width of one line beside the entry, alone and beside offsets or buttons. */
#define SAYS_CHARS        30
#define SAYS_CHARS_NARROW 17

struct _TmReadingEntry {
  GtkBox parent_instance;

  TmDocument *document; /* borrowed */
  const TmFeature *feature;
  gboolean filling;
  gboolean pins;   /* pins are tried, not readings taken */
  char *suggested; /* the pin that was put into the entry; "" none */

  GtkWidget *frame;
  GtkWidget *pin;     /* label before the entry, while pins are tried */
  GtkWidget *offsets; /* box of dx and dy */
  GtkWidget *dx;
  GtkWidget *dy;
  GtkWidget *value;
  GtkWidget *outcomes; /* box of pass and fail */
  GtkLabel *says;
  GtkLabel *question;
};

enum { SIGNAL_SUBMIT, SIGNAL_TYPED, SIGNAL_PIN_TRIED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmReadingEntry, tm_reading_entry, GTK_TYPE_BOX)

static const char *
get_text (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

static gboolean
takes_offsets (TmReadingEntry *self)
{
  return self->feature != NULL && self->feature->kind == TM_KIND_POSITION;
}

gboolean
tm_reading_entry_offsets (TmReadingEntry *self, const char **dx, const char **dy)
{
  g_return_val_if_fail (TM_IS_READING_ENTRY (self), FALSE);

  if (dx != NULL)
    *dx = get_text (self->dx);
  if (dy != NULL)
    *dy = get_text (self->dy);
  return takes_offsets (self) && (*get_text (self->dx) != '\0' || *get_text (self->dy) != '\0');
}

/* What the offsets read as, or what is wrong with the first that does not read. */
static char *
describe_offsets (TmReadingEntry *self, gboolean *refused)
{
  const char *texts[] = { get_text (self->dx), get_text (self->dy) };
  const char *names[] = { "dx", "dy" };
  TmQuantity values[2];
  gboolean whole = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *why = NULL;
      if (*texts[i] == '\0')
        whole = FALSE;
      else if (!tm_words_read_offset (texts[i], self->feature, &values[i], &why))
        {
          *refused = TRUE;
          return g_strdup_printf ("%s: %s", names[i], why);
        }
    }
  return whole ? tm_words_offsets (&values[0], &values[1], self->feature) : g_strdup ("");
}

static void
set_label (GtkLabel *label, const char *text)
{
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
}

/* A box gives a label that may wrap no more than the least width that its height allows, so only a
 * reason too long for one line may wrap. */
static void
set_says (TmReadingEntry *self, const char *says)
{
  gboolean narrow = gtk_widget_get_visible (self->offsets) || gtk_widget_get_visible (self->outcomes);
  int chars = narrow ? SAYS_CHARS_NARROW : SAYS_CHARS;
  gboolean wrap = g_utf8_strlen (says, -1) > chars;

  gtk_label_set_wrap (self->says, wrap);
  gtk_label_set_width_chars (self->says, wrap ? chars : -1);
  gtk_label_set_max_width_chars (self->says, chars);
  set_label (self->says, says);
}

/* An entry with nothing typed says what it is for. */
static char *
describe_empty (TmReadingEntry *self)
{
  const TmFeature *feature = self->feature;

  if (feature == NULL || *tm_unit_symbol (feature->unit) == '\0' || gtk_widget_get_visible (self->offsets)
      || gtk_widget_get_visible (self->outcomes))
    return g_strdup ("");
  if (feature->unit == TM_UNIT_IN)
    return g_strdup (_ ("reading in inches"));
  return g_strdup_printf (_ ("reading in %s"),
                          feature->unit == TM_UNIT_DEGREE ? _ ("degrees") : tm_unit_symbol (feature->unit));
}

/* Whether what is typed is a pin trial, not a reading. */
static gboolean
holds_pin (TmReadingEntry *self)
{
  return self->pins || tm_bench_text_is_pin (tm_document_bench (self->document), get_text (self->value));
}

static char *
describe_pin (TmReadingEntry *self, gboolean *refused)
{
  const TmBench *bench = tm_document_bench (self->document);
  TmPinEntry pin;
  if (*get_text (self->value) == '\0')
    return g_strdup (_ ("type the pin's size, then + or −"));
  tm_bench_read_pin (bench, get_text (self->value), &pin);
  *refused = !pin.ok;
  return tm_words_pin_entry (&pin, self->feature);
}

static char *
describe_typed (TmReadingEntry *self, gboolean *refused)
{
  const TmEntry *entry = tm_bench_entry (tm_document_bench (self->document));
  if (tm_reading_entry_offsets (self, NULL, NULL))
    return describe_offsets (self, refused);
  if (self->feature != NULL && holds_pin (self))
    return describe_pin (self, refused);
  *refused = entry->status != TM_ENTRY_OK && entry->status != TM_ENTRY_EMPTY;
  return tm_words_entry (entry, self->feature);
}

static void
show_says (TmReadingEntry *self)
{
  gboolean refused = FALSE;
  g_autofree char *says = describe_typed (self, &refused);
  if (*says == '\0')
    {
      g_free (says);
      says = describe_empty (self);
    }
  if (!g_str_equal (gtk_label_get_text (self->says), says))
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->value), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, says,
                                    -1);
  set_says (self, says);
  if (refused)
    gtk_widget_add_css_class (GTK_WIDGET (self->says), "tm-refused");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->says), "tm-refused");
}

static void
show_question (TmReadingEntry *self)
{
  const TmBench *bench = tm_document_bench (self->document);
  g_autofree char *question = tm_words_slip (tm_bench_question (bench), tm_bench_entry (bench), self->feature,
                                             tm_bench_question_gauge (bench));
  set_label (self->question, question);
  if (*question != '\0')
    gtk_widget_add_css_class (self->frame, "tm-asking");
  else
    gtk_widget_remove_css_class (self->frame, "tm-asking");
}

static void
value_changed_cb (GtkEditable *editable, TmReadingEntry *self)
{
  if (self->filling || self->document == NULL)
    return;
  if (*get_text (self->value) != '\0')
    tm_reading_entry_clear_offsets (self);
  tm_document_set_text (self->document, get_text (self->value));
}

static void
offset_changed_cb (GtkEditable *editable, TmReadingEntry *self)
{
  if (self->filling || self->document == NULL)
    return;
  if (*get_text (self->value) != '\0')
    tm_document_set_text (self->document, "");
  show_says (self);
  g_signal_emit (self, signals[SIGNAL_TYPED], 0);
}

static void
activate_cb (GtkEntry *entry, TmReadingEntry *self)
{
  if (GTK_WIDGET (entry) == self->dx && *get_text (self->dy) == '\0' && *get_text (self->dx) != '\0')
    gtk_widget_grab_focus (self->dy);
  else
    g_signal_emit (self, signals[SIGNAL_SUBMIT], 0);
}

static void
outcome_clicked_cb (GtkButton *button, TmReadingEntry *self)
{
  const char *typed = g_object_get_data (G_OBJECT (button), "typed");
  tm_document_set_text (self->document, typed);
  g_signal_emit (self, signals[SIGNAL_SUBMIT], 0);
}

/* While pins are tried one key says what the pin did: + or g it went, - or n it did not.  FALSE leaves
 * the key to the entry, where it is part of a text that is no pin yet. */
static gboolean
pin_key_cb (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
            TmReadingEntry *self)
{
  gunichar typed = g_unichar_tolower (gdk_keyval_to_unicode (keyval));
  gboolean went = typed == '+' || typed == 'g';
  if (!self->pins || self->document == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0
      || (!went && typed != '-' && typed != 'n'))
    return GDK_EVENT_PROPAGATE;
  return tm_reading_entry_try_pin (self, went) ? GDK_EVENT_STOP : GDK_EVENT_PROPAGATE;
}

static void
tm_reading_entry_finalize (GObject *object)
{
  TmReadingEntry *self = TM_READING_ENTRY (object);
  g_free (self->suggested);
  G_OBJECT_CLASS (tm_reading_entry_parent_class)->finalize (object);
}

static void
tm_reading_entry_class_init (TmReadingEntryClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);
  G_OBJECT_CLASS (klass)->finalize = tm_reading_entry_finalize;
  signals[SIGNAL_SUBMIT]
      = g_signal_new ("submit", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_TYPED]
      = g_signal_new ("typed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_PIN_TRIED] = g_signal_new ("pin-tried", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                            G_TYPE_NONE, 1, G_TYPE_STRING);
}

static GtkWidget *
build_entry (TmReadingEntry *self, const char *name, GCallback changed)
{
  GtkWidget *entry = gtk_entry_new ();
  gtk_entry_set_has_frame (GTK_ENTRY (entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 7);
  gtk_entry_set_input_hints (GTK_ENTRY (entry), GTK_INPUT_HINT_NO_SPELLCHECK | GTK_INPUT_HINT_NO_EMOJI);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (entry, "changed", changed, self);
  g_signal_connect (entry, "activate", G_CALLBACK (activate_cb), self);
  return entry;
}

static void
add_offset (TmReadingEntry *self, GtkWidget *entry, const char *name)
{
  GtkWidget *label = gtk_label_new (name);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_box_append (GTK_BOX (self->offsets), label);
  gtk_box_append (GTK_BOX (self->offsets), entry);
}

static void
build_offsets (TmReadingEntry *self)
{
  GtkWidget * or = gtk_label_new (_ ("or deviation"));
  self->offsets = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  gtk_widget_set_valign (self->offsets, GTK_ALIGN_CENTER);
  self->dx = build_entry (self, _ ("Offset dx"), G_CALLBACK (offset_changed_cb));
  self->dy = build_entry (self, _ ("Offset dy"), G_CALLBACK (offset_changed_cb));
  add_offset (self, self->dx, "dx");
  add_offset (self, self->dy, "dy");
  gtk_widget_add_css_class (or, "dim-label");
  gtk_box_append (GTK_BOX (self->offsets), or);
  gtk_widget_set_visible (self->offsets, FALSE);
}

static void
add_outcome (TmReadingEntry *self, const char *label, const char *typed)
{
  GtkWidget *button = tm_button_new (label);
  g_object_set_data_full (G_OBJECT (button), "typed", g_strdup (typed), g_free);
  gtk_widget_set_focus_on_click (button, FALSE);
  gtk_widget_add_css_class (button, "tm-outcome");
  g_signal_connect (button, "clicked", G_CALLBACK (outcome_clicked_cb), self);
  gtk_box_append (GTK_BOX (self->outcomes), button);
}

/* On the text itself: keys typed elsewhere on the page are handed to it alone. */
static void
add_pin_keys (TmReadingEntry *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEditable *text = gtk_editable_get_delegate (GTK_EDITABLE (self->value));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (pin_key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (text), keys);
}

static void
build_frame (TmReadingEntry *self)
{
  self->frame = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  gtk_widget_add_css_class (self->frame, "tm-reading");
  build_offsets (self);
  self->pin = gtk_label_new (_ ("pin"));
  gtk_widget_add_css_class (self->pin, "tm-pin-mark");
  gtk_widget_set_visible (self->pin, FALSE);
  self->value = build_entry (self, _ ("Reading"), G_CALLBACK (value_changed_cb));
  gtk_widget_set_hexpand (self->value, TRUE);
  add_pin_keys (self);
  self->outcomes = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  gtk_widget_set_valign (self->outcomes, GTK_ALIGN_CENTER);
  add_outcome (self, _ ("_Pass"), "p");
  add_outcome (self, _ ("_Fail"), "f");
  self->says = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->says, 1);
  gtk_label_set_justify (self->says, GTK_JUSTIFY_RIGHT);
  gtk_widget_add_css_class (GTK_WIDGET (self->says), "tm-says");
  gtk_box_append (GTK_BOX (self->frame), self->offsets);
  gtk_box_append (GTK_BOX (self->frame), self->pin);
  gtk_box_append (GTK_BOX (self->frame), self->value);
  gtk_box_append (GTK_BOX (self->frame), tm_column_new (GTK_WIDGET (self->says)));
  gtk_box_append (GTK_BOX (self->frame), self->outcomes);
}

static void
tm_reading_entry_init (TmReadingEntry *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  self->suggested = g_strdup ("");
  build_frame (self);
  self->question = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (self->question, 0);
  gtk_label_set_wrap (self->question, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->question), "tm-question");
  gtk_box_append (GTK_BOX (self), self->frame);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->question));
}

GtkWidget *
tm_reading_entry_new (void)
{
  return g_object_new (TM_TYPE_READING_ENTRY, NULL);
}

static void
show_pins (TmReadingEntry *self, gboolean pins)
{
  self->pins = pins;
  gtk_widget_set_visible (self->pin, pins);
  /* Nothing is asked about a pin: the room is the bar's. */
  gtk_widget_set_visible (GTK_WIDGET (self->question), !pins);
  if (pins)
    gtk_widget_add_css_class (self->frame, "tm-pins");
  else
    gtk_widget_remove_css_class (self->frame, "tm-pins");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->value), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  pins ? _ ("Pin trial") : _ ("Reading"), -1);
}

static void
suit_feature (TmReadingEntry *self, const TmFeature *feature)
{
  gboolean position = feature != NULL && feature->kind == TM_KIND_POSITION;
  gboolean attribute = feature != NULL && tm_kind_is_attribute (feature->kind);
  if (feature != self->feature || !position)
    tm_reading_entry_clear_offsets (self);
  if (feature != self->feature)
    show_pins (self, FALSE);
  self->feature = feature;
  gtk_widget_set_visible (self->offsets, position);
  gtk_widget_set_visible (self->outcomes, attribute);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->value), position || attribute ? 4 : 7);
  if (position)
    gtk_widget_add_css_class (self->frame, "tm-three");
  else
    gtk_widget_remove_css_class (self->frame, "tm-three");
}

/* A feature that was removed is compared, not looked into. */
static gboolean
has_feature (TmDocument *document, const TmFeature *feature)
{
  return document != NULL && g_ptr_array_find (tm_document_job (document)->features, feature, NULL);
}

void
tm_reading_entry_set_document (TmReadingEntry *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_READING_ENTRY (self));

  /* The same one again: its definitions have changed, and what is typed for a feature that stays, stays. */
  if (self->document != document || !has_feature (document, self->feature))
    self->feature = NULL;
  self->document = document;
  if (document != NULL)
    {
      suit_feature (self, self->feature);
      tm_reading_entry_refresh (self);
    }
}

void
tm_reading_entry_refresh (TmReadingEntry *self)
{
  g_return_if_fail (TM_IS_READING_ENTRY (self));
  g_return_if_fail (self->document != NULL);

  const TmBench *bench = tm_document_bench (self->document);
  const TmSpot *spot = tm_bench_spot (bench);
  const char *text = tm_bench_text (bench);
  if (spot->feature != self->feature)
    suit_feature (self, spot->feature);
  gtk_widget_set_sensitive (self->frame, spot->feature != NULL && spot->piece != NULL);
  if (!g_str_equal (get_text (self->value), text))
    {
      self->filling = TRUE;
      gtk_editable_set_text (GTK_EDITABLE (self->value), text);
      gtk_editable_set_position (GTK_EDITABLE (self->value), -1);
      self->filling = FALSE;
    }
  show_says (self);
  show_question (self);
}

void
tm_reading_entry_focus (TmReadingEntry *self)
{
  g_return_if_fail (TM_IS_READING_ENTRY (self));

  GtkWidget *entry = takes_offsets (self) && *get_text (self->value) == '\0' ? self->dx : self->value;
  gtk_entry_grab_focus_without_selecting (GTK_ENTRY (entry));
}

void
tm_reading_entry_select (TmReadingEntry *self)
{
  g_return_if_fail (TM_IS_READING_ENTRY (self));

  if (!tm_reading_entry_offsets (self, NULL, NULL))
    gtk_editable_select_region (GTK_EDITABLE (self->value), 0, -1);
}

gboolean
tm_reading_entry_value (TmReadingEntry *self, TmQuantity *out)
{
  g_return_val_if_fail (TM_IS_READING_ENTRY (self), FALSE);

  TmReading reading = { 0 };
  if (self->document == NULL || self->feature == NULL)
    return FALSE;
  if (tm_reading_entry_offsets (self, NULL, NULL))
    {
      if (!tm_words_read_offset (get_text (self->dx), self->feature, &reading.dx, NULL)
          || !tm_words_read_offset (get_text (self->dy), self->feature, &reading.dy, NULL))
        return FALSE;
      *out = tm_quantity_new (tm_position_deviation (&reading), self->feature->unit, reading.dx.decimals);
      return TRUE;
    }
  const TmEntry *entry = tm_bench_entry (tm_document_bench (self->document));
  if (holds_pin (self) || entry->status != TM_ENTRY_OK || !entry->value.given)
    return FALSE;
  *out = entry->value;
  return TRUE;
}

gboolean
tm_reading_entry_has_text (TmReadingEntry *self)
{
  g_return_val_if_fail (TM_IS_READING_ENTRY (self), FALSE);

  gboolean offered = self->pins && g_str_equal (get_text (self->value), self->suggested);
  return (*get_text (self->value) != '\0' && !offered) || *get_text (self->dx) != '\0'
         || *get_text (self->dy) != '\0';
}

void
tm_reading_entry_clear_offsets (TmReadingEntry *self)
{
  g_return_if_fail (TM_IS_READING_ENTRY (self));

  self->filling = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->dx), "");
  gtk_editable_set_text (GTK_EDITABLE (self->dy), "");
  self->filling = FALSE;
}

GtkWidget *
tm_reading_entry_editable (TmReadingEntry *self)
{
  g_return_val_if_fail (TM_IS_READING_ENTRY (self), NULL);

  return self->value;
}

gboolean
tm_reading_entry_takes_pins (TmReadingEntry *self)
{
  g_return_val_if_fail (TM_IS_READING_ENTRY (self), FALSE);

  return self->pins;
}

gboolean
tm_reading_entry_holds_pin (TmReadingEntry *self)
{
  g_return_val_if_fail (TM_IS_READING_ENTRY (self), FALSE);

  return self->document != NULL && self->feature != NULL && holds_pin (self);
}

void
tm_reading_entry_set_pins (TmReadingEntry *self, gboolean pins)
{
  g_return_if_fail (TM_IS_READING_ENTRY (self));
  g_return_if_fail (self->document != NULL);

  gboolean untouched
      = *get_text (self->value) == '\0' || g_str_equal (get_text (self->value), self->suggested);
  g_free (self->suggested);
  self->suggested = pins ? tm_bench_next_pin_text (tm_document_bench (self->document)) : g_strdup ("");
  show_pins (self, pins);
  if (untouched)
    tm_document_set_text (self->document, self->suggested);
  else
    tm_reading_entry_refresh (self);
  gtk_editable_select_region (GTK_EDITABLE (self->value), untouched ? 0 : -1, -1);
}

gboolean
tm_reading_entry_try_pin (TmReadingEntry *self, gboolean went)
{
  g_return_val_if_fail (TM_IS_READING_ENTRY (self), FALSE);

  TmPinEntry pin;
  if (self->document == NULL || self->feature == NULL || *get_text (self->value) == '\0')
    return FALSE;
  tm_bench_read_pin (tm_document_bench (self->document), get_text (self->value), &pin);
  if (!pin.ok || pin.has_outcome)
    return FALSE;
  g_autofree char *trial = g_strconcat (get_text (self->value), went ? " +" : " -", NULL);
  g_signal_emit (self, signals[SIGNAL_PIN_TRIED], 0, trial);
  return TRUE;
}
