/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-chart-dialog.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-dialog.h"
#include "app-edit-chart.h"
#include "app-feature-words.h"
#include "app-form-dialog.h"
#include "app-form-read.h"
#include "app-form.h"
#include "core-run-rules.h"

#define GROUP_MOST    100
#define BASELINE_MOST 1000000

typedef struct {
  TmDocument *document;
  char *balloon;
  TmFormDialog window;
  GtkSwitch *rules[TM_N_RUN_RULES];
  AdwEntryRow *group_size, *baseline;
  GtkLabel *rate;
  guint asked; /* counts the askings for a rate: only the answer to the last is shown */
  TmAlarmRate known;
  gboolean is_known;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_object_unref (dialog->document);
  g_free (dialog->balloon);
  g_free (dialog);
}

/* -------- How often they speak -------- */

TmAlarmRate
tm_alarm_rate (guint rules)
{
  TmAlarmRate rate;
  gboolean exact;

  rate.in_control = tm_run_rules_length (rules, 0, &rate.exact);
  rate.shifted = tm_run_rules_length (rules, 1, &exact);
  rate.exact = rate.exact && exact;
  return rate;
}

/* Three digits are more than anybody counts to. */
static char *
format_length (double length)
{
  const double magnitude = length >= 1000 ? pow (10, floor (log10 (length)) - 2) : 1;

  return g_strdup_printf ("%.0f", magnitude * round (length / magnitude));
}

char *
tm_words_alarm_rate (const TmAlarmRate *rate, guint group_size)
{
  g_autofree char *in_control = NULL;
  g_autofree char *shifted = NULL;
  g_autofree char *pieces = NULL;
  const char *how = rate->exact ? _ ("exact") : _ ("simulated");

  if (!isfinite (rate->in_control))
    return g_strdup (_ ("No rule is switched on: the chart would never say anything."));
  in_control = format_length (rate->in_control);
  shifted = format_length (rate->shifted);
  if (group_size <= 1)
    return g_strdup_printf (_ ("While nothing changes, a false alarm about every %s pieces (%s). A shift of "
                               "one standard deviation is found after about %s."),
                            in_control, how, shifted);
  pieces = format_length (rate->in_control * group_size);
  return g_strdup_printf (_ ("While nothing changes, a false alarm about every %s groups, %s pieces (%s). A "
                             "shift of one standard deviation of the means is found after about %s groups."),
                          in_control, pieces, how, shifted);
}

static guint
read_rules (Dialog *dialog)
{
  guint rules = 0;

  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    if (gtk_switch_get_active (dialog->rules[i]))
      rules |= TM_RULE_BIT (i);
  return rules;
}

/* What is typed as a group size just now; 1 while it is none. */
static guint
peek_group_size (Dialog *dialog)
{
  g_autofree char *text = tm_form_text (dialog->group_size);
  guint64 size = 1;

  if (!g_ascii_string_to_unsigned (text, 10, 1, GROUP_MOST, &size, NULL))
    return 1;
  return (guint)size;
}

static void
show_rate (Dialog *dialog)
{
  g_autofree char *words
      = dialog->is_known ? tm_words_alarm_rate (&dialog->known, peek_group_size (dialog)) : NULL;

  gtk_label_set_text (dialog->rate,
                      words != NULL ? words : _ ("Working out how often they speak by chance…"));
}

typedef struct {
  guint rules, asked;
} Asked;

static void
work_cb (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Asked *asked = data;
  TmAlarmRate *rate = g_new (TmAlarmRate, 1);

  *rate = tm_alarm_rate (asked->rules);
  g_task_return_pointer (task, rate, g_free);
}

static void
worked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GWeakRef *window = data;
  g_autoptr (GtkWidget) shown = g_weak_ref_get (window);
  Dialog *dialog = shown != NULL ? g_object_get_data (G_OBJECT (shown), "dialog") : NULL;
  const Asked *asked = g_task_get_task_data (G_TASK (result));
  g_autofree TmAlarmRate *rate = g_task_propagate_pointer (G_TASK (result), NULL);

  g_weak_ref_clear (window);
  g_free (window);
  /* It may have been closed, or another set asked for. */
  if (dialog == NULL || rate == NULL || asked->asked != dialog->asked || gtk_widget_in_destruction (shown)
      || !gtk_widget_get_visible (shown))
    return;
  dialog->known = *rate;
  dialog->is_known = TRUE;
  show_rate (dialog);
}

/* Sets with trends are simulated, which takes a while: never on the main loop.  The task does not hold the
 * window, whose last reference must not go on another thread. */
static void
ask_rate (Dialog *dialog)
{
  GWeakRef *window = g_new (GWeakRef, 1);
  g_autoptr (GTask) task = g_task_new (NULL, NULL, worked_cb, window);
  Asked *asked = g_new (Asked, 1);

  g_weak_ref_init (window, dialog->window.window);
  *asked = (Asked) { read_rules (dialog), ++dialog->asked };
  dialog->is_known = FALSE;
  show_rate (dialog);
  g_task_set_task_data (task, asked, g_free);
  g_task_run_in_thread (task, work_cb);
}

/* -------- Saving -------- */

static gboolean
read_number (AdwEntryRow *row, guint least, guint most, guint absent, guint *out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));
  guint64 number = absent;

  tm_form_mark_wrong (row, FALSE);
  if (*text != '\0' && !g_ascii_string_to_unsigned (text, 10, least, most, &number, NULL))
    return tm_form_refuse (
        row, problem,
        g_strdup_printf (_ ("%s: “%s” is not a whole number from %u to %u."), title, text, least, most));
  *out = (guint)number;
  return TRUE;
}

static gboolean
read_choice (Dialog *dialog, TmChartChoice *choice, char **problem)
{
  choice->rules = read_rules (dialog);
  if (choice->rules == 0)
    {
      *problem
          = g_strdup (_ ("No rule is switched on; switch on one at least, beyond 3 sigma is the usual."));
      gtk_widget_grab_focus (GTK_WIDGET (dialog->rules[0]));
      return FALSE;
    }
  return read_number (dialog->group_size, 1, GROUP_MOST, 1, &choice->group_size, problem)
         && read_number (dialog->baseline, 2, BASELINE_MOST, 0, &choice->baseline, problem);
}

static void
save_cb (Dialog *dialog)
{
  TmFeature *feature = tm_job_find_feature (tm_document_job (dialog->document), dialog->balloon);
  g_autofree char *problem = NULL;
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  TmChartChoice choice;

  if (feature == NULL)
    problem = g_strdup_printf (_ ("Feature %s is not in the job any more; cancel."), dialog->balloon);
  else if (read_choice (dialog, &choice, &problem)
           && tm_edit_chart_choice (dialog->document, feature, &choice, &error))
    {
      text = g_strdup_printf (_ ("Charts of feature %s changed"), dialog->balloon);
      tm_form_dialog_done (&dialog->window, text);
      return;
    }
  tm_dialog_problem_set (dialog->window.problem, error != NULL ? error->message : problem);
}

/* -------- The window -------- */

/* The rule's words as a label begins. */
static char *
make_title (guint rule)
{
  const char *text = g_dgettext (GETTEXT_PACKAGE, tm_run_rule_text ((TmRunRule)rule));
  char first[7] = { 0 };

  g_unichar_to_utf8 (g_unichar_toupper (g_utf8_get_char (text)), first);
  return g_strconcat (first, g_utf8_next_char (text), NULL);
}

static void
add_rule (Dialog *dialog, AdwPreferencesGroup *group, guint rule)
{
  g_autofree char *text = make_title (rule);
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *toggle = gtk_switch_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), text);
  gtk_widget_set_valign (toggle, GTK_ALIGN_CENTER);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), toggle);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), toggle);
  /* The switch has the focus, not the row around it too. */
  gtk_widget_set_focusable (row, FALSE);
  adw_preferences_group_add (group, row);
  dialog->rules[rule] = GTK_SWITCH (toggle);
}

static void
build (Dialog *dialog)
{
  AdwPreferencesGroup *rules = tm_form_group (dialog->window.rows, _ ("Which rules speak"),
                                              _ ("Each rule more finds a change sooner and alarms more often "
                                                 "for nothing."));
  AdwPreferencesGroup *groups = tm_form_group (dialog->window.rows, _ ("Groups and limits"), NULL);

  dialog->rate
      = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_wrap (dialog->rate, TRUE);
  gtk_label_set_xalign (dialog->rate, 0);
  gtk_widget_add_css_class (GTK_WIDGET (dialog->rate), "tm-answer");
  gtk_box_prepend (dialog->window.rows, GTK_WIDGET (dialog->rate));
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    add_rule (dialog, rules, i);
  dialog->group_size = tm_form_entry (groups, _ ("Pieces in a group"));
  dialog->baseline = tm_form_entry (groups, _ ("Limits from the first groups; empty: from all"));
}

static void
fill (Dialog *dialog, const TmFeature *feature)
{
  const TmChartChoice choice = tm_chart_choice_of (feature);
  g_autofree char *group_size = g_strdup_printf ("%u", choice.group_size);
  g_autofree char *baseline = choice.baseline > 0 ? g_strdup_printf ("%u", choice.baseline) : g_strdup ("");

  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    gtk_switch_set_active (dialog->rules[i], (choice.rules & TM_RULE_BIT (i)) != 0);
  tm_form_set_text (dialog->group_size, group_size);
  tm_form_set_text (dialog->baseline, baseline);
}

static void
connect (Dialog *dialog)
{
  for (guint i = 0; i < TM_N_RUN_RULES; i++)
    g_signal_connect_swapped (dialog->rules[i], "notify::active", G_CALLBACK (ask_rate), dialog);
  g_signal_connect_swapped (dialog->group_size, "changed", G_CALLBACK (show_rate), dialog);
  g_signal_connect_swapped (dialog->group_size, "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->baseline, "entry-activated", G_CALLBACK (save_cb), dialog);
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (save_cb), dialog);
}

GtkWindow *
tm_chart_dialog_present (GtkWidget *any_child, TmDocument *document, const TmFeature *feature)
{
  Dialog *dialog;
  g_autofree char *title = NULL;

  g_return_val_if_fail (TM_IS_DOCUMENT (document) && feature != NULL, NULL);

  title = g_strdup_printf (_ ("Charts of feature %s"), feature->balloon);
  dialog = g_new0 (Dialog, 1);
  dialog->document = g_object_ref (document);
  dialog->balloon = g_strdup (feature->balloon);
  tm_form_dialog_build (&dialog->window, any_child, title, 560, 660);
  build (dialog);
  fill (dialog, feature);
  connect (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->rules[0]));
  gtk_window_present (dialog->window.window);
  ask_rate (dialog);
  return dialog->window.window;
}
