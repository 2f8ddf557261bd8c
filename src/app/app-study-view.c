/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-study-view.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit-study.h"
#include "app-list-row.h"
#include "app-study-dialog.h"
#include "app-study-words.h"
#include "app-toast.h"

/* Pixels. */
#define LIST_WIDTH 312

#define COMPARE "" /* the name of the row that compares two methods: no study has it */

struct _TmStudyView {
  GtkBox parent_instance;

  TmDocument *document;
  char *chosen; /* name of the study shown; COMPARE; NULL: none */
  gboolean filling;

  GtkListBox *list;
  GtkStack *stack;
  GtkWidget *first; /* what plans the first study */
  TmStudyEntry *entry;
  TmStudyOutcome *outcome;
  TmPairedPanel *paired;
};

G_DEFINE_FINAL_TYPE (TmStudyView, tm_study_view, GTK_TYPE_BOX)

static TmStudy *
find_chosen (TmStudyView *self)
{
  if (self->document == NULL || self->chosen == NULL || *self->chosen == '\0')
    return NULL;
  return tm_job_find_study (tm_document_job (self->document), self->chosen);
}

static gboolean
is_complete (TmStudyView *self, const TmStudy *study)
{
  return tm_study_n_done (tm_document_job (self->document), study) == tm_study_n_cells (study);
}

/* The pages that are not shown hold nothing of the job. */
static void
show_chosen (TmStudyView *self)
{
  const TmStudy *study = find_chosen (self);
  const gboolean complete = study != NULL && is_complete (self, study);
  const gboolean compares = self->document != NULL && g_strcmp0 (self->chosen, COMPARE) == 0;

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "studies.remove", study != NULL);
  tm_study_entry_set (self->entry, self->document, complete ? NULL : study);
  tm_study_outcome_set (self->outcome, self->document, complete ? study : NULL);
  tm_paired_panel_set_document (self->paired, compares ? self->document : NULL);
  tm_access_show_page (self->stack, compares        ? "paired"
                                    : study == NULL ? "empty"
                                    : complete      ? "outcome"
                                                    : "entry");
}

static void
focus_page (TmStudyView *self)
{
  const char *page = tm_study_view_page (self);

  if (g_str_equal (page, "entry"))
    tm_study_entry_focus (self->entry);
  else if (g_str_equal (page, "outcome"))
    tm_study_outcome_focus (self->outcome);
  else if (g_str_equal (page, "paired"))
    tm_paired_panel_focus (self->paired);
  else
    gtk_widget_grab_focus (self->first);
}

static void
add_row (TmStudyView *self, const char *name, const char *title, const char *subtitle)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *safe_title = g_markup_escape_text (title, -1);
  g_autofree char *safe_subtitle = g_markup_escape_text (subtitle, -1);
  g_autofree char *spoken = g_strdup_printf ("%s, %s", title, subtitle);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), safe_title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), safe_subtitle);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  tm_name_widget (row, spoken);
  g_object_set_data_full (G_OBJECT (row), "key", g_strdup (name), g_free);
  gtk_list_box_append (self->list, row);
}

static void
fill_list (TmStudyView *self)
{
  const TmJob *job = tm_document_job (self->document);
  gboolean focused;

  self->filling = TRUE;
  focused = tm_list_clear (self->list);
  for (guint i = 0; i < job->studies->len; i++)
    {
      const TmStudy *study = g_ptr_array_index (job->studies, i);
      g_autofree char *state = tm_words_study_state (job, study);

      add_row (self, study->name, study->name, state);
    }
  add_row (self, COMPARE, _ ("Method against method"), _ ("two methods on the same pieces"));
  tm_list_select (self->list, self->chosen, focused);
  self->filling = FALSE;
}

/* A reading that completes the study turns the page: then the focus goes along. */
static void
definitions_changed_cb (TmStudyView *self)
{
  const gboolean was_entry = g_str_equal (tm_study_view_page (self), "entry");
  const TmJob *job = tm_document_job (self->document);

  if (find_chosen (self) == NULL && g_strcmp0 (self->chosen, COMPARE) != 0)
    {
      g_clear_pointer (&self->chosen, g_free);
      if (job->studies->len > 0)
        self->chosen = g_strdup (((const TmStudy *)g_ptr_array_index (job->studies, 0))->name);
    }
  fill_list (self);
  show_chosen (self);
  if (was_entry && g_str_equal (tm_study_view_page (self), "outcome")
      && gtk_widget_get_mapped (GTK_WIDGET (self)))
    focus_page (self);
}

void
tm_study_view_choose (TmStudyView *self, const char *name)
{
  g_return_if_fail (TM_IS_STUDY_VIEW (self));

  if (self->document == NULL)
    return;
  g_free (self->chosen);
  self->chosen = g_strdup (name);
  fill_list (self);
  show_chosen (self);
}

static void
selected_cb (TmStudyView *self, GtkListBoxRow *row)
{
  if (row == NULL || self->filling)
    return;
  g_free (self->chosen);
  self->chosen = g_strdup (tm_list_row_key (row));
  show_chosen (self);
}

static void
activated_cb (TmStudyView *self)
{
  focus_page (self);
}

static void
planned_cb (const char *name, gpointer data)
{
  TmStudyView *self = data;

  tm_study_view_choose (self, name);
  focus_page (self);
}

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmStudyView *self = TM_STUDY_VIEW (widget);

  if (self->document != NULL)
    tm_study_dialog_present (widget, self->document, planned_cb, self);
}

static void
remove_chosen (TmStudyView *self)
{
  TmStudy *study = find_chosen (self);
  g_autoptr (GError) error = NULL;

  if (study != NULL && !tm_edit_remove_study (self->document, study, &error))
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
answer_cb (AdwMessageDialog *dialog, const char *response, TmStudyView *self)
{
  if (g_str_equal (response, "remove"))
    remove_chosen (self);
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmStudyView *self = TM_STUDY_VIEW (widget);
  const TmStudy *study = find_chosen (self);
  g_autofree char *heading = NULL;
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *dialog;

  if (study == NULL)
    return;
  heading = g_strdup_printf (_ ("Remove “%s”?"), study->name);
  dialog
      = adw_message_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, heading,
                                _ ("The study leaves the job with all its readings. What it has put into a "
                                   "method’s budget stays there."));
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("_Cancel"), "remove",
                                    _ ("_Remove"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "remove",
                                              ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_signal_connect_object (dialog, "response", G_CALLBACK (answer_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
tm_study_view_dispose (GObject *object)
{
  TmStudyView *self = TM_STUDY_VIEW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->chosen, g_free);
  G_OBJECT_CLASS (tm_study_view_parent_class)->dispose (object);
}

static void
tm_study_view_class_init (TmStudyViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_study_view_dispose;
  gtk_widget_class_install_action (widget_class, "studies.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "studies.remove", NULL, remove_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_i, GDK_CONTROL_MASK, "studies.add", NULL);
}

static GtkWidget *
new_action_button (const char *label, const char *action)
{
  GtkWidget *button = tm_button_new (label);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  return button;
}

static GtkWidget *
build_list_head (void)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *add = new_action_button (_ ("New _study…"), "studies.add");
  GtkWidget *remove = new_action_button (_ ("Re_move…"), "studies.remove");

  gtk_widget_set_tooltip_text (add, _ ("Plan a study (Ctrl+I)"));
  gtk_widget_set_hexpand (add, TRUE);
  gtk_widget_add_css_class (box, "tm-panel-head");
  gtk_box_append (GTK_BOX (box), add);
  gtk_box_append (GTK_BOX (box), remove);
  return box;
}

static GtkWidget *
build_list (TmStudyView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  tm_list_tab_leaves (self->list);
  tm_name_widget (GTK_WIDGET (self->list), _ ("Studies"));
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "tm-study-list");
  tm_list_tab_leaves (self->list);
  g_signal_connect_swapped (self->list, "row-selected", G_CALLBACK (selected_cb), self);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (activated_cb), self);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->list));
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_size_request (box, LIST_WIDTH, -1);
  gtk_widget_set_hexpand (box, FALSE); /* whatever the button in it wants */
  gtk_box_append (GTK_BOX (box), build_list_head ());
  gtk_box_append (GTK_BOX (box), scroller);
  return box;
}

static GtkWidget *
build_empty (TmStudyView *self)
{
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No study yet"));
  adw_status_page_set_description (
      ADW_STATUS_PAGE (page),
      _ ("A study tells what a gauge repeats to, and how much it matters who reads. Take about ten pieces "
         "that "
         "spread over the band; each person reads each piece two or three times, in an order drawn by lot "
         "and "
         "without seeing what was read before. What is found can be put into the method’s budget."));
  self->first = new_action_button (_ ("_Plan the first study…"), "studies.add");
  gtk_widget_set_halign (self->first, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (self->first, "suggested-action");
  adw_status_page_set_child (ADW_STATUS_PAGE (page), self->first);
  return page;
}

static void
add_page (TmStudyView *self, const char *name, GtkWidget *content)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), content);
  gtk_stack_add_named (self->stack, scroller, name);
}

static void
tm_study_view_init (TmStudyView *self)
{
  self->stack = GTK_STACK (gtk_stack_new ());
  self->entry = TM_STUDY_ENTRY (tm_study_entry_new ());
  self->outcome = TM_STUDY_OUTCOME (tm_study_outcome_new ());
  self->paired = TM_PAIRED_PANEL (tm_paired_panel_new ());
  gtk_stack_set_vhomogeneous (self->stack, FALSE);
  gtk_stack_set_hhomogeneous (self->stack, FALSE);
  gtk_widget_set_hexpand (GTK_WIDGET (self->stack), TRUE);
  add_page (self, "empty", build_empty (self));
  add_page (self, "entry", GTK_WIDGET (self->entry));
  add_page (self, "outcome", GTK_WIDGET (self->outcome));
  add_page (self, "paired", GTK_WIDGET (self->paired));
  gtk_box_append (GTK_BOX (self), build_list (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  show_chosen (self);
}

GtkWidget *
tm_study_view_new (void)
{
  return g_object_new (TM_TYPE_STUDY_VIEW, NULL);
}

void
tm_study_view_set_document (TmStudyView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_STUDY_VIEW (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_pointer (&self->chosen, g_free);
  self->filling = TRUE;
  tm_list_clear (self->list);
  self->filling = FALSE;
  /* The pages let go of the old job before it goes. */
  tm_study_entry_set (self->entry, NULL, NULL);
  tm_study_outcome_set (self->outcome, NULL, NULL);
  tm_paired_panel_set_document (self->paired, NULL);
  g_set_object (&self->document, document);
  if (document == NULL)
    {
      show_chosen (self);
      return;
    }
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

void
tm_study_view_enter (TmStudyView *self)
{
  g_return_if_fail (TM_IS_STUDY_VIEW (self));

  /* Readings taken elsewhere since may be compared. */
  if (self->document != NULL)
    show_chosen (self);
  focus_page (self);
}

const char *
tm_study_view_page (TmStudyView *self)
{
  return gtk_stack_get_visible_child_name (self->stack);
}

TmStudyEntry *
tm_study_view_entry (TmStudyView *self)
{
  return self->entry;
}

TmStudyOutcome *
tm_study_view_outcome (TmStudyView *self)
{
  return self->outcome;
}

TmPairedPanel *
tm_study_view_paired (TmStudyView *self)
{
  return self->paired;
}
