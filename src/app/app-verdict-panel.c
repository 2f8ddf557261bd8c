/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-verdict-panel.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-evidence-words.h"
#include "app-evidence.h"
#include "app-method-choice.h"
#include "app-panel-line.h"
#include "app-reading-words.h"
#include "app-temperatures.h"
#include "app-words.h"
#include "core-cut-work.h"
#include "core-handling.h"

/* A small heading and the lines under it; hidden when there is nothing to say. */
typedef struct {
  GtkWidget *box;
  GtkLabel *lines;
} TmSection;

struct _TmVerdictPanel {
  GtkBox parent_instance;

  GtkLabel *verdict;
  GtkLabel *where;
  GtkLabel *size;
  GtkLabel *chance;
  GtkLabel *corrected; /* raw beside corrected value */
  TmSection form;
  TmSection gauge;
  TmSection todo;
  TmSection nonconformance;
  TmEvidence *evidence;
  GtkLabel *caution;
  GtkWidget *pin_trial; /* button */
  GtkWidget *record;    /* button */
  GtkWidget *plan;      /* button: to the planned cut, and back */
  GtkWidget *ways;      /* buttons for other ways of reading */
  gboolean planning;
  TmMethodChoice *methods;
  gboolean has_choice;
  TmTemperatures *temperatures;
};

enum { SIGNAL_METHOD_CHOSEN, SIGNAL_COUNTS_CHOSEN, SIGNAL_TEMPERATURES, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmVerdictPanel, tm_verdict_panel, GTK_TYPE_BOX)

static void
method_chosen_cb (TmMethodChoice *methods, const char *name, TmVerdictPanel *self)
{
  g_signal_emit (self, signals[SIGNAL_METHOD_CHOSEN], 0, name);
}

static void
counts_chosen_cb (TmEvidence *evidence, gboolean combined, TmVerdictPanel *self)
{
  g_signal_emit (self, signals[SIGNAL_COUNTS_CHOSEN], 0, combined);
}

static void
temperatures_cb (TmTemperatures *temperatures, TmVerdictPanel *self)
{
  g_signal_emit (self, signals[SIGNAL_TEMPERATURES], 0);
}

static void
tm_verdict_panel_class_init (TmVerdictPanelClass *klass)
{
  signals[SIGNAL_METHOD_CHOSEN] = g_signal_new ("method-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST,
                                                0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SIGNAL_COUNTS_CHOSEN] = g_signal_new ("counts-chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST,
                                                0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  signals[SIGNAL_TEMPERATURES] = g_signal_new ("temperatures-changed", G_TYPE_FROM_CLASS (klass),
                                               G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static TmSection
add_section (GtkWidget *box, const char *heading, GtkWidget *first)
{
  TmSection section = { .box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2) };
  gtk_widget_add_css_class (section.box, "tm-section");
  gtk_label_set_text (tm_panel_line_add (section.box, "dim-label"), heading);
  if (first != NULL)
    gtk_box_append (GTK_BOX (section.box), first);
  section.lines = tm_panel_line_add (section.box, "tm-lines");
  gtk_box_append (GTK_BOX (box), section.box);
  return section;
}

/* The verdict and its size: always in sight. */
static GtkWidget *
build_head (TmVerdictPanel *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *rule = gtk_separator_new (GTK_ORIENTATION_HORIZONTAL);
  self->verdict = tm_panel_line_add (head, "tm-verdict");
  self->where = tm_panel_line_add (head, "tm-where");
  gtk_box_append (GTK_BOX (head), rule);
  gtk_widget_add_css_class (rule, "tm-rule");
  self->size = tm_panel_line_add (head, "tm-size");
  self->chance = tm_panel_line_add (head, "tm-chance");
  self->corrected = tm_panel_line_add (head, "tm-chance");
  return head;
}

/* What it rests on: scrolls where there is much to say. */
static GtkWidget *
build_words (TmVerdictPanel *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->evidence = TM_EVIDENCE (tm_evidence_new ());
  gtk_box_append (GTK_BOX (words), GTK_WIDGET (self->evidence));
  self->methods = TM_METHOD_CHOICE (tm_method_choice_new ());
  self->gauge = add_section (words, _ ("Gauge"), GTK_WIDGET (self->methods));
  self->form = add_section (words, _ ("Form"), NULL);
  self->nonconformance = add_section (words, _ ("Nonconformance"), NULL);
  g_signal_connect (self->methods, "chosen", G_CALLBACK (method_chosen_cb), self);
  g_signal_connect (self->evidence, "counts-chosen", G_CALLBACK (counts_chosen_cb), self);
  return words;
}

static GtkWidget *
add_button (GtkWidget *box, const char *label, const char *action, const char *tooltip)
{
  GtkWidget *button = tm_button_new (label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tooltip);
  gtk_widget_set_focus_on_click (button, FALSE);
  gtk_box_append (GTK_BOX (box), button);
  return button;
}

static void
add_more_buttons (TmVerdictPanel *self, GtkWidget *buttons)
{
  GtkWidget *grid = gtk_grid_new ();
  GtkWidget *first = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *second = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->ways = first;
  self->pin_trial = add_button (first, _ ("_Pin trial…"), "bench.pin-trial",
                                _ ("Say which pin went and which did not (F2)"));
  self->temperatures = TM_TEMPERATURES (tm_temperatures_new ());
  gtk_box_append (GTK_BOX (first), GTK_WIDGET (self->temperatures));
  add_button (second, _ ("R_eadings…"), "bench.readings", _ ("See, correct or withdraw readings (Ctrl+L)"));
  GtkWidget *nonconformance = add_button (second, _ ("N_onconformance…"), "bench.nonconformance",
                                          _ ("Write down a nonconformance (Ctrl+Shift+K)"));
  gtk_widget_set_hexpand (self->pin_trial, TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->temperatures), TRUE);
  gtk_widget_set_hexpand (nonconformance, TRUE);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_attach (GTK_GRID (grid), first, 0, 0, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), second, 0, 1, 1, 1);
  gtk_box_append (GTK_BOX (buttons), grid);
  g_signal_connect (self->temperatures, "changed", G_CALLBACK (temperatures_cb), self);
}

/* What the two buttons do depends on whether a reading is taken or a cut is planned. */
static void
name_buttons (TmVerdictPanel *self)
{
  tm_button_set_label (self->record, self->planning ? _ ("_Record cut  ⏎") : _ ("_Record  ⏎"));
  gtk_widget_set_tooltip_text (self->record, self->planning ? _ ("Record the cut that was made (Enter)")
                                                            : _ ("Record the reading (Enter)"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->record), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->planning ? _ ("Record cut") : _ ("Record"), -1);
  tm_button_set_label (self->plan, self->planning ? _ ("_Back to measuring") : _ ("P_lan the next cut…"));
  gtk_widget_set_tooltip_text (self->plan, self->planning ? _ ("Read the size again (F4)")
                                                          : _ ("How much to dial, and at what risk (F4)"));
  gtk_widget_set_visible (self->ways, !self->planning);
}

static GtkWidget *
build_buttons (TmVerdictPanel *self)
{
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  /* Never scrolled out of sight: it is what the hand does next. */
  self->todo = add_section (buttons, _ ("What to do"), NULL);
  self->record = add_button (buttons, "", "bench.record", NULL);
  gtk_widget_add_css_class (self->record, "suggested-action");
  gtk_widget_add_css_class (self->record, "tm-record");
  self->plan = add_button (buttons, "", "bench.plan-cut", NULL);
  add_more_buttons (self, buttons);
  name_buttons (self);
  self->caution = tm_panel_line_add (buttons, "tm-caution");
  return buttons;
}

static void
tm_verdict_panel_init (TmVerdictPanel *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 8);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-verdict-panel");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), build_words (self));
  gtk_widget_set_vexpand (scroller, TRUE);
  /* The column keeps its width: the picture takes what is left. */
  gtk_widget_set_hexpand (GTK_WIDGET (self), FALSE);
  gtk_box_append (GTK_BOX (self), build_head (self));
  gtk_box_append (GTK_BOX (self), scroller);
  gtk_box_append (GTK_BOX (self), build_buttons (self));
}

GtkWidget *
tm_verdict_panel_new (void)
{
  return g_object_new (TM_TYPE_VERDICT_PANEL, NULL);
}

void
tm_verdict_panel_list_methods (TmVerdictPanel *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_VERDICT_PANEL (self));

  self->has_choice = tm_method_choice_list (self->methods, document);
}

void
tm_verdict_panel_open_temperatures (TmVerdictPanel *self)
{
  g_return_if_fail (TM_IS_VERDICT_PANEL (self));

  tm_temperatures_open (self->temperatures);
}

static void
take_lines (TmSection *section, char *text)
{
  gtk_widget_set_visible (section->box, *text != '\0');
  tm_panel_line_take (section->lines, text);
}

/* Lines under the gauge: what it is, what its figures rest on. */
static char *
describe_gauge (TmDocument *document, const TmJudgement *judgement)
{
  const TmJob *job = tm_document_job (document);
  const TmFeature *feature = judgement->feature;
  const char *chosen = tm_bench_method (tm_document_bench (document));
  const char *method = *chosen != '\0' ? chosen : feature->method;
  g_autofree char *now = tm_now_utc ();
  now[strlen ("YYYY-MM-DD")] = '\0';
  g_autofree char *gauge = tm_words_gauge (job, feature, method, now);
  g_autofree char *assumed = *method != '\0' && !tm_kind_is_attribute (feature->kind)
                                 ? tm_words_assumed (job, feature, method)
                                 : g_strdup ("");
  const char *const lines[] = { gauge, assumed };
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    {
      if (*lines[i] != '\0')
        g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", lines[i]);
    }
  return g_string_free (text, FALSE);
}

static char *
describe_nonconformance (TmDocument *document, const TmJudgement *judgement)
{
  const TmNonconformance *row = tm_job_nonconformance_at (tm_document_job (document), judgement->piece,
                                                          judgement->feature, MAX (judgement->place, 1));
  if (row == NULL)
    return g_strdup ("");
  if (*row->disposition == '\0')
    return g_strdup_printf (_ ("%s, not decided"), row->number);
  const char *disposition = g_dpgettext2 (GETTEXT_PACKAGE, "disposition", row->disposition);
  if (*row->rework_at == '\0')
    return g_strdup_printf ("%s, %s", row->number, disposition);
  g_autofree char *at = tm_words_time (row->rework_at);
  /* Translators: number, "rework" or "repair", when. */
  return g_strdup_printf (_ ("%s, %s done %s: what was read before it is the first result"), row->number,
                          disposition, at);
}

static void
show_nowhere (TmVerdictPanel *self)
{
  tm_panel_line_take (self->verdict, g_strdup (_ ("Nothing to measure yet")));
  tm_panel_line_take (self->where, g_strdup (""));
  tm_panel_line_take (self->size, g_strdup (""));
  tm_panel_line_take (self->chance, g_strdup (""));
  tm_panel_line_take (self->corrected, g_strdup (""));
  take_lines (&self->form, g_strdup (""));
  take_lines (&self->gauge, g_strdup (""));
  take_lines (&self->nonconformance, g_strdup (""));
  tm_evidence_show (self->evidence, NULL, NULL);
}

static void
show_judgement (TmVerdictPanel *self, TmDocument *document, const TmJudgement *judgement)
{
  tm_panel_line_take (self->verdict, tm_words_verdict (judgement));
  tm_panel_line_take (self->where, tm_words_where (judgement));
  tm_panel_line_take (self->size, tm_words_size (judgement));
  tm_panel_line_take (self->chance, tm_words_chance (judgement));
  tm_panel_line_take (self->corrected, tm_words_corrected (judgement));
  take_lines (&self->form, tm_words_form (tm_document_job (document), judgement));
  take_lines (&self->gauge, describe_gauge (document, judgement));
  take_lines (&self->nonconformance, describe_nonconformance (document, judgement));
  tm_evidence_show (self->evidence, document, judgement);
  gtk_widget_set_visible (self->gauge.box,
                          self->has_choice || *gtk_label_get_text (self->gauge.lines) != '\0');
}

/* How the gauge that reads next is held right, where that decides the size. */
static const char *
find_handling (TmDocument *document, const TmAdvice *advice)
{
  if ((advice->kind != TM_ADVICE_READ && advice->kind != TM_ADVICE_REPEAT) || advice->feature == NULL)
    return "";
  const char *method = tm_bench_method (tm_document_bench (document));
  TmHandling handling = tm_handling_of (tm_document_job (document), advice->feature,
                                        *method != '\0' ? method : advice->feature->method);
  return handling != TM_HANDLING_NONE ? g_dgettext (GETTEXT_PACKAGE, tm_handling_text (handling)) : "";
}

static char *
describe_advice (TmDocument *document, const TmAdvice *advice, const TmJudgement *judgement)
{
  g_autofree char *words = tm_words_advice (advice, judgement);
  const char *handling = find_handling (document, advice);
  return *handling != '\0' ? g_strdup_printf ("%s %s", words, handling) : g_steal_pointer (&words);
}

void
tm_verdict_panel_show (TmVerdictPanel *self, TmDocument *document, const TmJudgement *judgement)
{
  g_return_if_fail (TM_IS_VERDICT_PANEL (self));

  TmBench *bench = tm_document_bench (document);
  g_autofree char *now = tm_now_utc ();
  tm_bench_set_now (bench, now);
  TmAdvice advice = tm_bench_advice (bench);
  if (judgement == NULL)
    show_nowhere (self);
  else
    show_judgement (self, document, judgement);
  gtk_widget_set_visible (
      self->plan, judgement != NULL && (self->planning || tm_feature_is_cut_to_size (judgement->feature)));
  gtk_widget_set_visible (self->pin_trial, judgement != NULL && tm_feature_takes_pins (judgement->feature));
  tm_temperatures_show (self->temperatures, document);
  /* While a cut is planned the plan says what to do. */
  if (self->planning)
    {
      advice.kind = TM_ADVICE_CUT_AGAIN;
      take_lines (&self->todo, g_strdup (""));
    }
  else
    take_lines (&self->todo, describe_advice (document, &advice, judgement));
  tm_panel_line_take (self->caution, tm_words_caution (&advice));
}

const char *
tm_verdict_panel_title (TmVerdictPanel *self)
{
  g_return_val_if_fail (TM_IS_VERDICT_PANEL (self), NULL);

  return gtk_label_get_text (self->verdict);
}

void
tm_verdict_panel_set_planning (TmVerdictPanel *self, gboolean planning)
{
  g_return_if_fail (TM_IS_VERDICT_PANEL (self));

  if (self->planning == planning)
    return;
  self->planning = planning;
  name_buttons (self);
}
