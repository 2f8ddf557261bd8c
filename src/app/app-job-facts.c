/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-facts.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-form.h"
#include "app-toast.h"

typedef struct {
  const char *fact; /* its name in the job file */
  const char *title;
  gsize offset; /* of its const char * in TmJob */
} TextFact;

#define FACT(fact, title, field)                \
  {                                             \
    fact, title, G_STRUCT_OFFSET (TmJob, field) \
  }

enum {
  PART_NUMBER,
  PART_NAME,
  REVISION,
  DRAWING,
  CUSTOMER,
  ORDER,
  MATERIAL,
  GENERAL_TOLERANCE,
  REASON,
  BASELINE,
  N_TEXTS
};

static const TextFact texts[N_TEXTS] = {
  [PART_NUMBER] = FACT ("part_number", N_ ("Part number"), part_number),
  [PART_NAME] = FACT ("part_name", N_ ("Part name"), part_name),
  [REVISION] = FACT ("revision", N_ ("Revision"), revision),
  [DRAWING] = FACT ("drawing", N_ ("Drawing"), drawing),
  [CUSTOMER] = FACT ("customer", N_ ("Customer"), customer),
  [ORDER] = FACT ("order", N_ ("Order"), order),
  [MATERIAL] = FACT ("material", N_ ("Material"), material),
  [GENERAL_TOLERANCE] = FACT ("general_tolerance", N_ ("General tolerance"), general_tolerance),
  [REASON] = FACT ("reason", N_ ("Reason for it"), first_article_reason),
  [BASELINE] = FACT ("baseline", N_ ("Baseline report it refers to"), first_article_baseline),
};

struct _TmJobFacts {
  GtkBox parent_instance;

  TmDocument *document;
  gboolean filling;

  AdwEntryRow *rows[N_TEXTS];
  AdwComboRow *unit;
  AdwComboRow *standard;
  AdwComboRow *decision;
  AdwEntryRow *ratio;
  AdwComboRow *first_article;
};

G_DEFINE_FINAL_TYPE (TmJobFacts, tm_job_facts, GTK_TYPE_BOX)

static const char **
fact_of (TmJob *job, guint i)
{
  return G_STRUCT_MEMBER_P (job, texts[i].offset);
}

typedef struct {
  guint which;
  const char *text;
} TextChange;

static void
change_text (TmJob *job, gpointer data)
{
  TextChange *change = data;

  *fact_of (job, change->which) = tm_job_intern (job, change->text);
}

/* Shows what went wrong; what was typed stays in its row. */
static gboolean
take_result (TmJobFacts *self, AdwEntryRow *row, gboolean saved, const GError *error)
{
  tm_form_mark_wrong (row, FALSE);
  if (saved)
    tm_window_clear_error (GTK_WIDGET (self));
  else
    {
      gtk_widget_add_css_class (GTK_WIDGET (row), "error");
      tm_window_show_error (GTK_WIDGET (self), error->message);
    }
  return saved;
}

static void
save_text (TmJobFacts *self, guint which, const char *text)
{
  g_autoptr (GError) error = NULL;
  gboolean saved;

  if (which == GENERAL_TOLERANCE)
    saved = tm_edit_general_tolerance (self->document, text, &error);
  else
    {
      TextChange change = { which, text };

      saved = tm_edit_facts (self->document, change_text, &change, &error);
    }
  take_result (self, self->rows[which], saved, error);
}

static void
tolerance_response_cb (AdwMessageDialog *dialog, const char *response, TmJobFacts *self)
{
  g_autofree char *text = tm_form_text (self->rows[GENERAL_TOLERANCE]);

  if (self->document == NULL)
    return;
  if (g_str_equal (response, "change"))
    save_text (self, GENERAL_TOLERANCE, text);
  else
    tm_form_set_text (self->rows[GENERAL_TOLERANCE], tm_document_job (self->document)->general_tolerance);
}

/* Limits that come from the general tolerance change with it: never without being asked. */
static void
ask_about_tolerance (TmJobFacts *self, guint n)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  g_autofree char *body = g_strdup_printf (
      ngettext ("%u feature takes its limits from the general tolerance and is read again.",
                "%u features take their limits from the general tolerance and are read again.", n),
      n);
  GtkWidget *dialog
      = adw_message_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, _ ("Change limits?"), body);

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "keep", _ ("_Keep as it was"), "change",
                                    _ ("_Change"), NULL);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "change");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "keep");
  g_signal_connect_object (dialog, "response", G_CALLBACK (tolerance_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* Text that is again as it was is no longer wrong. */
static void
forgive (TmJobFacts *self, AdwEntryRow *row)
{
  if (!gtk_widget_has_css_class (GTK_WIDGET (row), "error"))
    return;
  tm_form_mark_wrong (row, FALSE);
  tm_window_clear_error (GTK_WIDGET (self));
}

static void
leave_row (TmJobFacts *self, guint which)
{
  g_autofree char *text = tm_form_text (self->rows[which]);
  guint n;

  if (self->document == NULL || self->filling)
    return;
  if (g_str_equal (text, *fact_of (tm_document_job (self->document), which)))
    {
      forgive (self, self->rows[which]);
      return;
    }
  if (which == PART_NUMBER && *text == '\0')
    {
      gtk_widget_add_css_class (GTK_WIDGET (self->rows[which]), "error");
      tm_window_show_error (GTK_WIDGET (self),
                            _ ("Part number: a job needs one; type it as the drawing has it."));
      return;
    }
  n = which == GENERAL_TOLERANCE ? tm_edit_general_tolerance_count (self->document, text) : 0;
  if (n > 0)
    ask_about_tolerance (self, n);
  else
    save_text (self, which, text);
}

static guint
which_row (TmJobFacts *self, gpointer row)
{
  for (guint i = 0; i < N_TEXTS; i++)
    if (self->rows[i] == row)
      return i;
  g_assert_not_reached ();
}

static void
row_activated_cb (AdwEntryRow *row, TmJobFacts *self)
{
  leave_row (self, which_row (self, row));
}

static void
row_left_cb (GtkEventControllerFocus *focus, TmJobFacts *self)
{
  GtkWidget *row = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (focus));

  if (row != GTK_WIDGET (self->ratio))
    leave_row (self, which_row (self, row));
}

static void
change_choices (TmJob *job, gpointer data)
{
  TmJobFacts *self = data;

  job->unit = tm_form_chosen (self->unit) == 1 ? TM_UNIT_IN : TM_UNIT_MM;
  job->standard = tm_form_chosen (self->standard) == 1 ? TM_STANDARD_ASME : TM_STANDARD_ISO;
  job->decision = tm_form_chosen (self->decision) == 1 ? TM_DECISION_SIMPLE : TM_DECISION_GUARDED;
  job->first_article
      = (TmFirstArticleKind)MIN (tm_form_chosen (self->first_article), TM_N_FIRST_ARTICLES - 1);
}

static void
show_dependent_rows (TmJobFacts *self)
{
  gboolean refers = tm_form_chosen (self->first_article) != TM_FIRST_ARTICLE_FULL;

  gtk_widget_set_visible (GTK_WIDGET (self->ratio), tm_form_chosen (self->decision) == 1);
  gtk_widget_set_visible (GTK_WIDGET (self->rows[REASON]), refers);
  gtk_widget_set_visible (GTK_WIDGET (self->rows[BASELINE]), refers);
}

static void
fill_choices (TmJobFacts *self, const TmJob *job)
{
  adw_combo_row_set_selected (self->unit, job->unit == TM_UNIT_IN ? 1 : 0);
  adw_combo_row_set_selected (self->standard, job->standard == TM_STANDARD_ASME ? 1 : 0);
  adw_combo_row_set_selected (self->decision, job->decision == TM_DECISION_SIMPLE ? 1 : 0);
  adw_combo_row_set_selected (self->first_article, job->first_article);
  show_dependent_rows (self);
}

static void
choice_cb (TmJobFacts *self)
{
  g_autoptr (GError) error = NULL;

  if (self->filling || self->document == NULL)
    return;
  if (!tm_edit_facts (self->document, change_choices, self, &error))
    {
      tm_window_show_error (GTK_WIDGET (self), error->message);
      self->filling = TRUE;
      fill_choices (self, tm_document_job (self->document));
      self->filling = FALSE;
    }
}

static void
change_ratio (TmJob *job, gpointer data)
{
  job->simple_ratio = *(const TmQuantity *)data;
}

/* The N of N:1; empty means the usual 4. */
static void
leave_ratio (TmJobFacts *self)
{
  g_autofree char *text = tm_form_text (self->ratio);
  g_autoptr (GError) error = NULL;
  TmQuantity ratio = TM_QUANTITY_NONE;
  TmReadStatus status = tm_quantity_read (text, TM_UNIT_HARDNESS, &ratio);

  if (self->filling || self->document == NULL)
    return;
  if ((status != TM_READ_OK && status != TM_READ_EMPTY) || (ratio.given && ratio.count <= 0))
    {
      gtk_widget_add_css_class (GTK_WIDGET (self->ratio), "error");
      tm_window_show_error (GTK_WIDGET (self),
                            _ ("Ratio: write a number above 0, for example 4 for 4 to 1."));
      return;
    }
  take_result (self, self->ratio, tm_edit_facts (self->document, change_ratio, &ratio, &error), error);
}

static void
ratio_left_cb (TmJobFacts *self)
{
  leave_ratio (self);
}

/* A row that is being typed in keeps its text. */
static void
fill_row (AdwEntryRow *row, const char *text)
{
  gboolean typing = gtk_widget_get_state_flags (GTK_WIDGET (row)) & GTK_STATE_FLAG_FOCUS_WITHIN;

  if (!typing && !gtk_widget_has_css_class (GTK_WIDGET (row), "error"))
    tm_form_set_text (row, text);
}

static void
definitions_changed_cb (TmJobFacts *self)
{
  TmJob *job = tm_document_job (self->document);
  g_autofree char *ratio = tm_quantity_format_in (&job->simple_ratio, TM_UNIT_HARDNESS);

  self->filling = TRUE;
  for (guint i = 0; i < N_TEXTS; i++)
    fill_row (self->rows[i], *fact_of (job, i));
  fill_row (self->ratio, ratio);
  fill_choices (self, job);
  self->filling = FALSE;
}

void
tm_job_facts_set_document (TmJobFacts *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_JOB_FACTS (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  for (guint i = 0; i < N_TEXTS; i++)
    {
      tm_form_mark_wrong (self->rows[i], FALSE);
      tm_form_set_text (self->rows[i], *fact_of (tm_document_job (document), i));
    }
  tm_form_mark_wrong (self->ratio, FALSE);
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

/* By the member of TmJob; a row that is not asked for leads to the kind. */
static gboolean
focus_first_article (TmJobFacts *self, const char *fact)
{
  GtkWidget *row = GTK_WIDGET (self->first_article);

  if (g_str_equal (fact, "first_article_reason"))
    row = GTK_WIDGET (self->rows[REASON]);
  if (g_str_equal (fact, "first_article_baseline"))
    row = GTK_WIDGET (self->rows[BASELINE]);
  return gtk_widget_grab_focus (gtk_widget_get_visible (row) ? row : GTK_WIDGET (self->first_article));
}

gboolean
tm_job_facts_focus (TmJobFacts *self, const char *fact)
{
  g_return_val_if_fail (TM_IS_JOB_FACTS (self), FALSE);

  if (g_str_has_prefix (fact, "first_article"))
    return focus_first_article (self, fact);
  for (guint i = 0; i < N_TEXTS; i++)
    if (g_str_equal (texts[i].fact, fact))
      return gtk_widget_grab_focus (GTK_WIDGET (self->rows[i]));
  return FALSE;
}

static void
add_text (TmJobFacts *self, AdwPreferencesGroup *group, guint which)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->rows[which] = tm_form_entry (group, g_dgettext (GETTEXT_PACKAGE, texts[which].title));
  g_signal_connect (self->rows[which], "entry-activated", G_CALLBACK (row_activated_cb), self);
  g_signal_connect (focus, "leave", G_CALLBACK (row_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->rows[which]), focus);
}

static AdwComboRow *
add_choice (TmJobFacts *self, AdwPreferencesGroup *group, const char *title, const char *const *words)
{
  AdwComboRow *row = tm_form_choice (group, title, words);

  g_signal_connect_swapped (row, "notify::selected", G_CALLBACK (choice_cb), self);
  return row;
}

static void
add_ratio (TmJobFacts *self, AdwPreferencesGroup *group)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();

  self->ratio = tm_form_entry (group, _ ("Ratio of the simple rule, N to 1 (empty: 4)"));
  g_signal_connect_swapped (self->ratio, "entry-activated", G_CALLBACK (ratio_left_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (ratio_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->ratio), focus);
}

static void
build_rules (TmJobFacts *self)
{
  const char *units[] = { _ ("millimetre"), _ ("inch"), NULL };
  const char *standards[] = { "ISO", "ASME", NULL };
  const char *decisions[] = { _ ("guarded"), _ ("simple, N to 1"), NULL };
  AdwPreferencesGroup *group = tm_form_group (
      GTK_BOX (self), _ ("Rules"),
      _ ("A general tolerance is ISO 2768-f, -m, -c or -v, or a title block: .X .1, .XX .01, .XXX .005"));

  self->unit = add_choice (self, group, _ ("Unit of the drawing"), units);
  self->standard = add_choice (self, group, _ ("Standard"), standards);
  add_text (self, group, GENERAL_TOLERANCE);
  self->decision = add_choice (self, group, _ ("Decision rule"), decisions);
  add_ratio (self, group);
}

static void
build_first_article (TmJobFacts *self)
{
  const char *kinds[TM_N_FIRST_ARTICLES + 1] = {
    [TM_FIRST_ARTICLE_FULL] = _ ("full"),
    [TM_FIRST_ARTICLE_PARTIAL] = _ ("partial"),
    [TM_FIRST_ARTICLE_AGAIN] = _ ("re-inspection"),
  };
  AdwPreferencesGroup *group = tm_form_group (GTK_BOX (self), _ ("First article"), NULL);

  self->first_article = add_choice (self, group, _ ("First article"), kinds);
  add_text (self, group, REASON);
  add_text (self, group, BASELINE);
}

static void
tm_job_facts_dispose (GObject *object)
{
  TmJobFacts *self = TM_JOB_FACTS (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_job_facts_parent_class)->dispose (object);
}

static void
tm_job_facts_class_init (TmJobFactsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_job_facts_dispose;
}

static void
tm_job_facts_init (TmJobFacts *self)
{
  AdwPreferencesGroup *part, *order;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 18);
  part = tm_form_group (GTK_BOX (self), _ ("Part"), NULL);
  for (guint i = PART_NUMBER; i <= DRAWING; i++)
    add_text (self, part, i);
  add_text (self, part, MATERIAL);
  order = tm_form_group (GTK_BOX (self), _ ("Order"), NULL);
  add_text (self, order, CUSTOMER);
  add_text (self, order, ORDER);
  build_rules (self);
  build_first_article (self);
}
