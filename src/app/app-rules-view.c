/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-rules-view.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-form.h"
#include "app-rules.h"

/* Pixels. */
#define COLUMN_WIDTH 760

struct _TmRulesView {
  GtkBox parent_instance;

  TmDocument *document;
  gboolean filling;

  AdwActionRow *rows[TM_N_RULE_FIGURES];
  GtkEditable *entries[TM_N_RULE_FIGURES];
  AdwComboRow *drift_rule;
  AdwComboRow *cut_aim;
  AdwActionRow *material;
  AdwActionRow *decision;
  GtkLabel *problem;
};

G_DEFINE_FINAL_TYPE (TmRulesView, tm_rules_view, GTK_TYPE_BOX)

/* -------- Saving -------- */

typedef struct {
  TmRuleFigureKind which;
  TmQuantity quantity;
} Change;

static void
change_figure (TmJob *job, gpointer data)
{
  const Change *change = data;

  *tm_rule_quantity (job, change->which) = change->quantity;
}

static void
mark (TmRulesView *self, TmRuleFigureKind which, const char *problem)
{
  if (problem != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->entries[which]), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->entries[which]), "error");
  tm_dialog_problem_set (self->problem, problem);
}

static gboolean
is_as_it_was (TmRulesView *self, TmRuleFigureKind which, const char *text)
{
  TmJob *job = tm_document_job (self->document);
  g_autofree char *before = tm_quantity_format_in (tm_rule_quantity (job, which), tm_rule_unit (job, which));

  return g_str_equal (before, text);
}

/* What is refused stays typed, is marked, and nothing is saved. */
static void
leave_entry (TmRulesView *self, TmRuleFigureKind which)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (self->entries[which])));
  g_autofree char *problem = NULL;
  g_autoptr (GError) error = NULL;
  Change change = { .which = which };

  if (self->document == NULL || self->filling)
    return;
  if (is_as_it_was (self, which, text))
    {
      if (gtk_widget_has_css_class (GTK_WIDGET (self->entries[which]), "error"))
        mark (self, which, NULL);
      return;
    }
  if (!tm_rule_read (tm_document_job (self->document), which, text, &change.quantity, &problem))
    mark (self, which, problem);
  else if (tm_edit_facts (self->document, change_figure, &change, &error))
    mark (self, which, NULL);
  else
    mark (self, which, error->message);
}

static TmRuleFigureKind
which_entry (TmRulesView *self, gpointer entry)
{
  for (guint i = 0; i < TM_N_RULE_FIGURES; i++)
    if ((gpointer)self->entries[i] == entry)
      return (TmRuleFigureKind)i;
  g_assert_not_reached ();
}

static void
entry_activated_cb (GtkEntry *entry, TmRulesView *self)
{
  leave_entry (self, which_entry (self, entry));
}

static void
entry_left_cb (GtkEventControllerFocus *focus, TmRulesView *self)
{
  leave_entry (self, which_entry (self, gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (focus))));
}

static void
change_drift_rule (TmJob *job, gpointer data)
{
  TmRulesView *self = data;

  job->drift_rule = tm_form_chosen (self->drift_rule) == 1 ? TM_DRIFT_ASK : TM_DRIFT_WIDEN;
}

static void
drift_rule_cb (TmRulesView *self)
{
  g_autoptr (GError) error = NULL;

  if (self->filling || self->document == NULL)
    return;
  if (tm_edit_facts (self->document, change_drift_rule, self, &error))
    return;
  tm_dialog_problem_set (self->problem, error->message);
  self->filling = TRUE;
  adw_combo_row_set_selected (self->drift_rule, tm_document_job (self->document)->drift_rule);
  self->filling = FALSE;
}

static void
change_cut_aim (TmJob *job, gpointer data)
{
  TmRulesView *self = data;

  job->cut_aim = tm_form_chosen (self->cut_aim) == 1 ? TM_AIM_PROVEN : TM_AIM_IN;
}

static void
cut_aim_cb (TmRulesView *self)
{
  g_autoptr (GError) error = NULL;

  if (self->filling || self->document == NULL)
    return;
  if (tm_edit_facts (self->document, change_cut_aim, self, &error))
    return;
  tm_dialog_problem_set (self->problem, error->message);
  self->filling = TRUE;
  adw_combo_row_set_selected (self->cut_aim, tm_document_job (self->document)->cut_aim);
  self->filling = FALSE;
}

/* -------- Showing -------- */

static void
set_subtitle (AdwActionRow *row, const char *text)
{
  g_autofree char *escaped = g_markup_escape_text (text, -1);

  adw_action_row_set_subtitle (row, escaped);
}

/* What it is for, and while it is empty what is taken instead. */
static char *
describe (TmJob *job, TmRuleFigureKind which)
{
  const TmRuleFigure *figure = tm_rule_figure (which);
  const char *about = g_dgettext (GETTEXT_PACKAGE, figure->about);

  if (which == TM_RULE_EXPANSION)
    {
      g_autofree char *taken = tm_words_expansion (job);

      return g_strdup_printf ("%s %s", taken, about);
    }
  if (tm_rule_quantity (job, which)->given)
    return g_strdup (about);
  return g_strdup_printf ("%s %s", about, g_dgettext (GETTEXT_PACKAGE, figure->assumed));
}

static void
fill_about (TmRulesView *self, TmJob *job, TmRuleFigureKind which)
{
  g_autofree char *about = describe (job, which);

  set_subtitle (self->rows[which], about);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_editable_get_delegate (self->entries[which])),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, about, -1);
}

static void
fill_entry (TmRulesView *self, TmJob *job, TmRuleFigureKind which)
{
  g_autofree char *text = tm_quantity_format_in (tm_rule_quantity (job, which), tm_rule_unit (job, which));

  if (!g_str_equal (gtk_editable_get_text (self->entries[which]), text))
    gtk_editable_set_text (self->entries[which], text);
}

/* An entry that is being typed in, or that is wrong, keeps its text. */
static gboolean
keeps_text (TmRulesView *self, TmRuleFigureKind which)
{
  GtkWidget *entry = GTK_WIDGET (self->entries[which]);

  return gtk_widget_has_css_class (entry, "error")
         || (gtk_widget_get_state_flags (entry) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;
}

static char *
describe_decision (const TmJob *job)
{
  g_autofree char *ratio = tm_quantity_format_in (&job->simple_ratio, TM_UNIT_HARDNESS);

  if (job->decision == TM_DECISION_GUARDED)
    return g_strdup (_ ("Guarded: a size is called in only where it is proven so, by 95 %."));
  if (*ratio == '\0')
    return g_strdup (_ ("Simple, 4 to 1 (assumed): the band must be 4 times the method’s whole spread."));
  return g_strdup_printf (_ ("Simple, %s to 1: the band must be so many times the method’s whole spread."),
                          ratio);
}

static void
definitions_changed_cb (TmRulesView *self)
{
  TmJob *job = tm_document_job (self->document);
  g_autofree char *decision = describe_decision (job);

  self->filling = TRUE;
  for (guint i = 0; i < TM_N_RULE_FIGURES; i++)
    {
      fill_about (self, job, (TmRuleFigureKind)i);
      if (!keeps_text (self, (TmRuleFigureKind)i))
        fill_entry (self, job, (TmRuleFigureKind)i);
    }
  adw_combo_row_set_selected (self->drift_rule, job->drift_rule);
  adw_combo_row_set_selected (self->cut_aim, job->cut_aim);
  set_subtitle (self->material, *job->material != '\0' ? job->material : _ ("not stated"));
  set_subtitle (self->decision, decision);
  self->filling = FALSE;
}

void
tm_rules_view_set_document (TmRulesView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_RULES_VIEW (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  self->filling = TRUE;
  for (guint i = 0; i < TM_N_RULE_FIGURES; i++)
    {
      mark (self, (TmRuleFigureKind)i, NULL);
      fill_entry (self, tm_document_job (document), (TmRuleFigureKind)i);
    }
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

void
tm_rules_view_enter (TmRulesView *self)
{
  g_return_if_fail (TM_IS_RULES_VIEW (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->entries[0]));
}

GtkEditable *
tm_rules_view_entry (TmRulesView *self, const char *rule)
{
  g_return_val_if_fail (TM_IS_RULES_VIEW (self), NULL);

  for (guint i = 0; i < TM_N_RULE_FIGURES; i++)
    if (g_strcmp0 (tm_rule_figure ((TmRuleFigureKind)i)->name, rule) == 0)
      return self->entries[i];
  return NULL;
}

const char *
tm_rules_view_problem (TmRulesView *self)
{
  g_return_val_if_fail (TM_IS_RULES_VIEW (self), NULL);

  return gtk_label_get_text (self->problem);
}

/* -------- Building -------- */

/* A row that takes the focus where its entry is: the row itself has nothing to be done. */
static AdwActionRow *
add_row (AdwPreferencesGroup *group, const char *title, GtkWidget *suffix)
{
  AdwActionRow *row = ADW_ACTION_ROW (adw_action_row_new ());

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle_lines (row, 3);
  gtk_widget_set_valign (suffix, GTK_ALIGN_CENTER);
  adw_action_row_add_suffix (row, suffix);
  gtk_widget_set_focusable (GTK_WIDGET (row), FALSE);
  adw_preferences_group_add (group, GTK_WIDGET (row));
  return row;
}

static void
add_figure (TmRulesView *self, AdwPreferencesGroup *group, TmRuleFigureKind which)
{
  GtkWidget *entry = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  const char *title = g_dgettext (GETTEXT_PACKAGE, tm_rule_figure (which)->title);

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 10);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), 10);
  gtk_editable_set_alignment (GTK_EDITABLE (entry), 1);
  gtk_entry_set_max_length (GTK_ENTRY (entry), 40);
  self->entries[which] = GTK_EDITABLE (entry);
  self->rows[which] = add_row (group, title, entry);
  tm_name_entry (GTK_EDITABLE (entry), title);
  g_signal_connect (entry, "activate", G_CALLBACK (entry_activated_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (entry_left_cb), self);
  gtk_widget_add_controller (entry, focus);
}

static GtkWidget *
new_job_button (const char *spoken)
{
  GtkWidget *button = tm_button_new (_ ("_Job page"));

  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", "job");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.page");
  tm_name_widget (button, spoken);
  return button;
}

static void
build_temperature (TmRulesView *self, GtkBox *into)
{
  AdwPreferencesGroup *group
      = tm_form_group (into, _ ("Temperature"),
                       _ ("Sizes hold at 20 °C. Where both temperatures were taken the reading is "
                          "corrected; where not, these limits join the budgets."));

  for (guint i = TM_RULE_PART_TEMPERATURE; i <= TM_RULE_THERMOMETER; i++)
    add_figure (self, group, (TmRuleFigureKind)i);
  self->material
      = add_row (group, _ ("Material"), new_job_button (_ ("Material: change it on the Job page")));
  add_figure (self, group, TM_RULE_EXPANSION);
}

static void
build_gauges (TmRulesView *self, GtkBox *into)
{
  const char *rules[] = { _ ("widen the budget"), _ ("ask for a new check first"), NULL };
  AdwPreferencesGroup *pins = tm_form_group (into, _ ("Pins"), NULL);
  AdwPreferencesGroup *checks = tm_form_group (
      into, _ ("Checks on the standard"),
      _ ("What happens when a gauge has moved since it was set, and how long a check holds."));

  add_figure (self, pins, TM_RULE_ENTRY_CLEARANCE);
  self->drift_rule = tm_form_choice (checks, _ ("A gauge that has moved"), rules);
  g_signal_connect_swapped (self->drift_rule, "notify::selected", G_CALLBACK (drift_rule_cb), self);
  add_figure (self, checks, TM_RULE_DRIFT_LIMIT);
  add_figure (self, checks, TM_RULE_CHECK_HOURS);
}

static void
build_cutting (TmRulesView *self, GtkBox *into)
{
  const char *aims[] = { _ ("inside the limits"), _ ("in the proven zone"), NULL };
  AdwPreferencesGroup *group = tm_form_group (
      into, _ ("Cutting"), _ ("What the plan of the last cuts may risk, and what it aims at."));

  add_figure (self, group, TM_RULE_CUT_RISK);
  self->cut_aim = tm_form_choice (group, _ ("A cut aims at a size"), aims);
  g_signal_connect_swapped (self->cut_aim, "notify::selected", G_CALLBACK (cut_aim_cb), self);
}

static GtkWidget *
build_column (TmRulesView *self)
{
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 18);
  AdwPreferencesGroup *decision;

  build_temperature (self, GTK_BOX (column));
  build_gauges (self, GTK_BOX (column));
  build_cutting (self, GTK_BOX (column));
  decision = tm_form_group (GTK_BOX (column), _ ("Decision"), NULL);
  self->decision = add_row (decision, _ ("Decision rule"),
                            new_job_button (_ ("Decision rule: change it on the Job page")));
  gtk_widget_add_css_class (column, "tm-dialog");
  return column;
}

static void
tm_rules_view_dispose (GObject *object)
{
  TmRulesView *self = TM_RULES_VIEW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_rules_view_parent_class)->dispose (object);
}

static void
tm_rules_view_class_init (TmRulesViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_rules_view_dispose;
}

static void
tm_rules_view_init (TmRulesView *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *clamp = adw_clamp_new ();

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), COLUMN_WIDTH);
  adw_clamp_set_tightening_threshold (ADW_CLAMP (clamp), COLUMN_WIDTH);
  adw_clamp_set_child (ADW_CLAMP (clamp), build_column (self));
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), clamp);
  gtk_widget_set_vexpand (scroller, TRUE);
  self->problem = tm_dialog_problem_new ();
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->problem));
  gtk_box_append (GTK_BOX (self), scroller);
}

GtkWidget *
tm_rules_view_new (void)
{
  return g_object_new (TM_TYPE_RULES_VIEW, NULL);
}
