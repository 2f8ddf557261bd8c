/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-cut-bar.h"

#include <glib/gi18n-lib.h>

#include "app-chances-view.h"
#include "app-cut-words.h"
#include "app-dialog.h"
#include "app-panel-line.h"
#include "app-tip.h"

#define PASSES_MAX 99

struct _TmCutBar {
  GtkBox parent_instance;

  TmDocument *document; /* borrowed */
  TmSpot shown;         /* its pointers are only compared */
  TmCutAdvice plan;
  TmCutAdvice tried;
  gboolean has_tried; /* what stands in the entry can be read */
  gboolean filling;
  gint64 proposed_us; /* when the planned number was put into the entry, monotonic; 0: long ago */
  guint usual_passes;

  TmCutChoices *choices;
  GtkLabel *caption;
  GtkLabel *number;
  GtkLabel *marks;
  GtkLabel *predicted;
  TmChancesView *chances;
  GtkLabel *unread;
  GtkLabel *manner;
  GtkLabel *status;
  GtkWidget *frame; /* round the entry */
  GtkWidget *entry;
  GtkLabel *says;
  GtkWidget *passes;
  GtkWidget *note;
  GtkLabel *question;
  GtkLabel *history;
};

enum { SIGNAL_RECORD, SIGNAL_TRIED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmCutBar, tm_cut_bar, GTK_TYPE_BOX)

static const char *
get_text (GtkWidget *editable)
{
  return gtk_editable_get_text (GTK_EDITABLE (editable));
}

static const TmTool *
get_tool (TmCutBar *self)
{
  return tm_bench_tool (tm_document_bench (self->document));
}

static const TmFeature *
get_feature (TmCutBar *self)
{
  return tm_bench_spot (tm_document_bench (self->document))->feature;
}

static void
set_label (GtkLabel *label, const char *text)
{
  if (!g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
}

/* The sentence is about the planned number: beside the chances of another it steps back. */
static void
show_whose (TmCutBar *self)
{
  gboolean other = self->has_tried && self->tried.dial != self->plan.dial;
  if (other)
    gtk_widget_add_css_class (GTK_WIDGET (self->status), "tm-set-aside");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->status), "tm-set-aside");
}

static void
show_chances (TmCutBar *self)
{
  const TmCutAdvice *advice = self->has_tried                 ? &self->tried
                              : tm_cut_has_dial (&self->plan) ? &self->plan
                                                              : NULL;
  g_autofree char *predicted = advice != NULL ? tm_words_cut_predicted (
                                   advice, get_feature (self), self->has_tried ? get_text (self->entry) : "")
                                              : g_strdup ("");
  set_label (self->predicted, predicted);
  tm_chances_view_show (self->chances, advice != NULL ? &advice->plan.chances : NULL);
}

/* What the entry holds: as it reads on the dial, or why it is none. */
static void
try_text (TmCutBar *self)
{
  g_autoptr (GError) error = NULL;
  const TmTool *tool = get_tool (self);
  const char *text = get_text (self->entry);
  g_autofree char *says = NULL;
  self->has_tried = *text != '\0'
                    && tm_bench_cut_try (tm_document_bench (self->document), text, &self->tried, &error)
                    && self->tried.plan.status == TM_CUT_OK;
  tm_cut_bar_say (self, error != NULL ? error->message : "", FALSE);
  if (error != NULL)
    says = g_strdup ("");
  else if (*text != '\0' && tool != NULL)
    says = tm_words_cut_marks (tool, get_feature (self), self->tried.dial);
  else
    says = g_strdup (tm_cut_has_dial (&self->plan) ? _ ("another number,\nor press Enter")
                                                   : _ ("what was dialled,\nif a cut was made"));
  gtk_label_set_text (self->says, says);
  show_whose (self);
  show_chances (self);
}

static void
changed_cb (GtkEditable *editable, TmCutBar *self)
{
  if (self->filling || self->document == NULL)
    return;
  try_text (self);
  g_signal_emit (self, signals[SIGNAL_TRIED], 0);
}

static void
activate_cb (GtkWidget *entry, TmCutBar *self)
{
  g_signal_emit (self, signals[SIGNAL_RECORD], 0);
}

static void
tm_cut_bar_class_init (TmCutBarClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);
  signals[SIGNAL_RECORD]
      = g_signal_new ("record", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_add_binding_action (GTK_WIDGET_CLASS (klass), GDK_KEY_Escape, 0, "bench.plan-cut", NULL);
  signals[SIGNAL_TRIED]
      = g_signal_new ("tried", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

/* Beside the large number, in two short lines. */
static GtkLabel *
add_beside (GtkWidget *row, const char *css_class, float xalign)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (label, xalign);
  gtk_label_set_justify (label, xalign > 0.5f ? GTK_JUSTIFY_RIGHT : GTK_JUSTIFY_LEFT);
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  gtk_widget_set_valign (GTK_WIDGET (label), GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (label));
  return label;
}

static GtkWidget *
build_number (TmCutBar *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->caption = add_beside (row, "dim-label", 0);
  self->number = add_beside (row, "tm-dial", 0);
  self->marks = add_beside (row, "tm-marks", 0);
  self->predicted = add_beside (row, "tm-marks", 1);
  gtk_label_set_ellipsize (self->number, PANGO_ELLIPSIZE_NONE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->predicted), TRUE);
  return row;
}

static GtkWidget *
build_entry (TmCutBar *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->frame = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->entry = gtk_entry_new ();
  self->says = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_add_css_class (self->frame, "tm-reading");
  gtk_widget_add_css_class (self->frame, "tm-dial-entry");
  gtk_widget_set_hexpand (self->frame, TRUE);
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_entry_set_input_purpose (GTK_ENTRY (self->entry), GTK_INPUT_PURPOSE_NUMBER);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 7);
  tm_name_entry (GTK_EDITABLE (self->entry), _ ("Dialled"));
  gtk_widget_add_css_class (GTK_WIDGET (self->says), "tm-says");
  gtk_label_set_ellipsize (self->says, PANGO_ELLIPSIZE_END);
  gtk_label_set_xalign (self->says, 1);
  gtk_label_set_justify (self->says, GTK_JUSTIFY_RIGHT);
  tm_tip_own_text (GTK_WIDGET (self->says));
  GtkWidget *passes_label = gtk_label_new (_ ("passes"));
  gtk_widget_add_css_class (passes_label, "dim-label");
  self->passes = gtk_spin_button_new_with_range (0, PASSES_MAX, 1);
  gtk_widget_set_tooltip_text (self->passes, _ ("Spring passes taken at this setting"));
  tm_name_widget (self->passes, _ ("Spring passes taken"));
  self->note = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->note), _ ("note"));
  gtk_editable_set_width_chars (GTK_EDITABLE (self->note), 7);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->note), 9);
  tm_name_entry (GTK_EDITABLE (self->note), _ ("Note on the cut"));
  gtk_box_append (GTK_BOX (self->frame), self->entry);
  gtk_box_append (GTK_BOX (self->frame), GTK_WIDGET (self->says));
  gtk_box_append (GTK_BOX (row), self->frame);
  gtk_box_append (GTK_BOX (row), passes_label);
  gtk_box_append (GTK_BOX (row), self->passes);
  gtk_box_append (GTK_BOX (row), self->note);
  gtk_widget_set_valign (self->passes, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (self->note, GTK_ALIGN_CENTER);
  g_signal_connect (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (self->entry, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect (self->note, "activate", G_CALLBACK (activate_cb), self);
  return row;
}

static void
tm_cut_bar_init (TmCutBar *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-cut-bar");
  self->choices = TM_CUT_CHOICES (tm_cut_choices_new ());
  self->chances = TM_CHANCES_VIEW (tm_chances_view_new ());
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->choices));
  gtk_box_append (GTK_BOX (self), build_number (self));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->chances));
  self->status = tm_panel_line_add (GTK_WIDGET (self), "tm-cut-status");
  self->unread = tm_panel_line_add (GTK_WIDGET (self), "tm-lines");
  self->manner = tm_panel_line_add (GTK_WIDGET (self), "tm-lines");
  gtk_box_append (GTK_BOX (self), build_entry (self));
  self->question = tm_panel_line_add (GTK_WIDGET (self), "tm-question");
  self->history = tm_panel_line_add (GTK_WIDGET (self), "tm-caution");
}

GtkWidget *
tm_cut_bar_new (void)
{
  return g_object_new (TM_TYPE_CUT_BAR, NULL);
}

static const char *
find_caption (const TmCutAdvice *plan)
{
  if (!tm_cut_has_dial (plan))
    return "";
  return plan->plan.status == TM_CUT_PROVE ? _ ("Proving cut") : _ ("Dial");
}

/* The number and the line beside it, read out as one. */
static void
show_number (TmCutBar *self)
{
  const TmTool *tool = get_tool (self);
  gboolean dial = tool != NULL && tm_cut_has_dial (&self->plan);
  g_autofree char *title = tm_words_cut_title (&self->plan, tool);
  g_autofree char *marks
      = dial ? tm_words_cut_marks (tool, get_feature (self), self->plan.dial) : g_strdup ("");
  g_autofree char *spoken
      = dial ? g_strdup_printf ("%s %s %s", find_caption (&self->plan), title, marks) : g_strdup (title);
  set_label (self->caption, find_caption (&self->plan));
  set_label (self->number, title);
  set_label (self->marks, marks);
  if (dial)
    gtk_widget_remove_css_class (GTK_WIDGET (self->number), "tm-words");
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->number), "tm-words");
  tm_name_widget (GTK_WIDGET (self->number), spoken);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), dial ? title : "");
}

/* The newest cut of the place that answered unlike the others, then the tool, then the risk. */
static char *
describe_history (TmCutBar *self)
{
  const TmTool *tool = get_tool (self);
  g_autofree char *response
      = tool != NULL ? tm_words_cut_response (&self->plan, tool, get_feature (self)) : g_strdup ("");
  g_autofree char *risk = tm_words_cut_risk (&self->plan);
  g_autofree char *unlike
      = tm_words_last_cut_unlike (tm_document_bench (self->document), tm_document_job (self->document));
  GString *text = g_string_new (unlike);
  const char *const more[] = { response, risk };
  for (guint i = 0; i < G_N_ELEMENTS (more); i++)
    if (*more[i] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", more[i]);
  return g_string_free (text, FALSE);
}

static void
show_plan (TmCutBar *self)
{
  const TmTool *tool = get_tool (self);
  gboolean dial = tool != NULL && tm_cut_has_dial (&self->plan);
  tm_cut_choices_show (self->choices, self->document);
  show_number (self);
  tm_panel_line_take (self->status, tm_words_cut_status (&self->plan, tool, get_feature (self)));
  tm_panel_line_take (self->unread, tm_words_cut_unread (&self->plan));
  tm_panel_line_take (self->manner, dial ? tm_words_cut_manner (&self->plan, tool) : g_strdup (""));
  tm_panel_line_take (self->history, describe_history (self));
  /* Without a dial nothing can be typed on it. */
  gtk_widget_set_visible (gtk_widget_get_parent (self->frame),
                          tool != NULL && tm_feature_is_cut_to_size (get_feature (self)));
}

static void
show_usual_passes (TmCutBar *self)
{
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->passes), self->usual_passes);
}

void
tm_cut_bar_show (TmCutBar *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_CUT_BAR (self));

  const TmSpot *spot = tm_bench_spot (tm_document_bench (document));
  gboolean moved = spot->piece != self->shown.piece || spot->feature != self->shown.feature
                   || spot->place != self->shown.place || document != self->document;
  guint usual = self->usual_passes;
  self->document = document;
  self->shown = *spot;
  if (spot->piece == NULL || spot->feature == NULL)
    return;
  tm_bench_cut_plan (tm_document_bench (document), &self->plan);
  self->usual_passes = self->plan.spring_passes;
  if (moved)
    tm_cut_bar_clear (self);
  else if (usual != self->usual_passes)
    show_usual_passes (self);
  show_plan (self);
  try_text (self);
}

void
tm_cut_bar_drop_document (TmCutBar *self)
{
  g_return_if_fail (TM_IS_CUT_BAR (self));

  self->document = NULL;
  self->shown = (TmSpot) { 0 };
  tm_cut_bar_clear (self);
}

const TmCutAdvice *
tm_cut_bar_advice (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), NULL);

  if (self->has_tried)
    return &self->tried;
  return self->document != NULL ? &self->plan : NULL;
}

void
tm_cut_bar_set_dial (TmCutBar *self, gint64 dial)
{
  g_return_if_fail (TM_IS_CUT_BAR (self));

  const TmTool *tool = self->document != NULL ? get_tool (self) : NULL;
  if (tool == NULL)
    return;
  g_autofree char *text = tm_bench_dial_text (tool, dial);
  if (!g_str_equal (get_text (self->entry), text))
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
}

const char *
tm_cut_bar_text (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), "");

  if (*get_text (self->entry) == '\0' && tm_cut_has_dial (&self->plan))
    {
      tm_cut_bar_set_dial (self, self->plan.dial);
      self->proposed_us = g_get_monotonic_time ();
      gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
      return "";
    }
  return get_text (self->entry);
}

gboolean
tm_cut_bar_is_settled (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), FALSE);

  return g_get_monotonic_time () - self->proposed_us >= TM_BENCH_CONFIRM_MS * G_TIME_SPAN_MILLISECOND;
}

gboolean
tm_cut_bar_has_text (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), FALSE);

  return *get_text (self->entry) != '\0' || *get_text (self->note) != '\0';
}

guint
tm_cut_bar_passes (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), 0);

  gtk_spin_button_update (GTK_SPIN_BUTTON (self->passes));
  return (guint)gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (self->passes));
}

const char *
tm_cut_bar_note (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), "");

  return get_text (self->note);
}

void
tm_cut_bar_say (TmCutBar *self, const char *text, gboolean asks)
{
  g_return_if_fail (TM_IS_CUT_BAR (self));

  tm_panel_line_take (self->question, g_strdup (text));
  /* In its place what is known of the tool gives way: with both there is no room left for the picture. */
  gtk_widget_set_visible (GTK_WIDGET (self->history),
                          *text == '\0' && *gtk_label_get_text (self->history) != '\0');
  if (asks)
    gtk_widget_add_css_class (self->frame, "tm-asking");
  else
    gtk_widget_remove_css_class (self->frame, "tm-asking");
}

void
tm_cut_bar_clear (TmCutBar *self)
{
  g_return_if_fail (TM_IS_CUT_BAR (self));

  self->filling = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  gtk_editable_set_text (GTK_EDITABLE (self->note), "");
  show_usual_passes (self);
  self->has_tried = FALSE;
  tm_cut_bar_say (self, "", FALSE);
  self->filling = FALSE;
}

void
tm_cut_bar_focus (TmCutBar *self)
{
  g_return_if_fail (TM_IS_CUT_BAR (self));

  if (gtk_widget_get_visible (gtk_widget_get_parent (self->frame)))
    gtk_widget_grab_focus (self->entry);
  else
    gtk_widget_child_focus (GTK_WIDGET (self->choices), GTK_DIR_TAB_FORWARD);
}

TmCutChoices *
tm_cut_bar_choices (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), NULL);

  return self->choices;
}

GtkWidget *
tm_cut_bar_entry (TmCutBar *self)
{
  g_return_val_if_fail (TM_IS_CUT_BAR (self), NULL);

  return self->entry;
}
