/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-revision-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-feature-words.h"
#include "app-form-dialog.h"
#include "app-form.h"
#include "core-revision.h"
#include "exchange-job.h"

/* Pixels. */
#define WIDTH  600
#define HEIGHT 680

enum { PARTIAL, FULL };

typedef struct {
  TmWindow *owner;
  TmDocument *document;
  TmFormDialog window;
  AdwEntryRow *revision, *reason, *baseline, *report;
  AdwComboRow *kind;
  AdwPreferencesGroup *features;
  GPtrArray *checks; /* GtkCheckButton of each feature, in the job's order; owned by the rows */
  GtkLabel *says;
} Dialog;

static void
free_dialog (gpointer data)
{
  Dialog *dialog = data;

  g_ptr_array_unref (dialog->checks);
  g_object_unref (dialog->document);
  g_free (dialog);
}

static gboolean
is_full (Dialog *dialog)
{
  return tm_form_chosen (dialog->kind) == FULL;
}

/* Of the marked features; borrowed from the job. */
static GPtrArray *
list_marked (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);
  GPtrArray *balloons = g_ptr_array_new ();

  for (guint i = 0; i < dialog->checks->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (gtk_check_button_get_active (g_ptr_array_index (dialog->checks, i)))
        g_ptr_array_add (balloons, (gpointer)feature->balloon);
    }
  g_ptr_array_add (balloons, NULL);
  return balloons;
}

/* -------- What will have to be measured -------- */

/* @with_positions: some of them only because a size among the others gives them their bonus. */
static char *
say_again (guint n, gboolean with_positions)
{
  if (n == 0)
    return g_strdup (_ ("Nothing is marked as affected yet."));
  if (with_positions)
    return g_strdup_printf (
        ngettext (
            "%u feature is measured again, positions that take their bonus from a marked size included.",
            "%u features are measured again, positions that take their bonus from a marked size included.",
            n),
        n);
  return g_strdup_printf (ngettext ("%u feature is measured again.", "%u features are measured again.", n),
                          n);
}

/* Two sentences. */
static char *
describe_again (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);
  g_autoptr (GPtrArray) marked = list_marked (dialog);
  g_autoptr (GHashTable) affected = tm_revision_affected (job, (const char *const *)marked->pdata);
  guint n = is_full (dialog) ? job->features->len : g_hash_table_size (affected);
  guint rest = job->features->len - n;
  g_autofree char *again = say_again (n, !is_full (dialog) && n > marked->len - 1);
  g_autofree char *by_reference = NULL;

  if (rest == 0 || n == 0)
    return g_steal_pointer (&again);
  by_reference = g_strdup_printf (ngettext ("%u stays by reference to the baseline report.",
                                            "%u stay by reference to the baseline report.", rest),
                                  rest);
  return g_strjoin (" ", again, by_reference, NULL);
}

static void
changed_cb (Dialog *dialog)
{
  g_autofree char *text = describe_again (dialog);

  gtk_label_set_text (dialog->says, text);
  gtk_widget_set_visible (GTK_WIDGET (dialog->features), !is_full (dialog));
  gtk_widget_set_visible (GTK_WIDGET (dialog->baseline), !is_full (dialog));
}

/* -------- Beginning it -------- */

/* The row to be mended. */
static GtkWidget *
row_of (Dialog *dialog, TmRevisionStatus status)
{
  switch (status)
    {
    case TM_REVISION_UNNAMED:
    case TM_REVISION_SAME:
      return GTK_WIDGET (dialog->revision);
    case TM_REVISION_NO_REASON:
      return GTK_WIDGET (dialog->reason);
    case TM_REVISION_NO_BASELINE:
      return GTK_WIDGET (dialog->baseline);
    case TM_REVISION_OK:
    case TM_REVISION_NO_AFFECTED:
    case TM_REVISION_NO_FEATURE:
    case TM_N_REVISION_STATUSES:
    default:
      return dialog->checks->len > 0 ? g_ptr_array_index (dialog->checks, 0) : GTK_WIDGET (dialog->kind);
    }
}

/* What stands in the rows; lives as long as these texts. */
typedef struct {
  char *id, *revision, *reason, *baseline, *report;
  GPtrArray *affected;
} Typed;

static void
typed_clear (Typed *typed)
{
  g_free (typed->id);
  g_free (typed->revision);
  g_free (typed->reason);
  g_free (typed->baseline);
  g_free (typed->report);
  g_ptr_array_unref (typed->affected);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Typed, typed_clear)

static TmRevision
read_rows (Dialog *dialog, Typed *typed)
{
  *typed = (Typed) { .id = g_uuid_string_random (),
                     .revision = tm_form_text (dialog->revision),
                     .reason = tm_form_text (dialog->reason),
                     .baseline = tm_form_text (dialog->baseline),
                     .report = tm_form_text (dialog->report),
                     .affected = list_marked (dialog) };
  return (TmRevision) { .id = typed->id,
                        .revision = typed->revision,
                        .drawing_revision = "",
                        .report = typed->report,
                        .reason = typed->reason,
                        .baseline = typed->baseline,
                        .full = is_full (dialog),
                        .affected = (const char *const *)typed->affected->pdata };
}

/* The new job, in the book already; NULL with an error. */
static TmJob *
make_job (Dialog *dialog, const TmRevision *revision, GError **error)
{
  g_autoptr (TmJob) next = tm_job_copy_definitions (tm_document_job (dialog->document), error);
  gboolean added = FALSE;

  if (next == NULL)
    return NULL;
  tm_job_revise (next, revision);
  if (!tm_book_add_job (tm_document_book (dialog->document), next, NULL, NULL, &added, error))
    return NULL;
  return g_steal_pointer (&next);
}

static void
begin_cb (Dialog *dialog)
{
  g_auto (Typed) typed = { 0 };
  TmRevision revision = read_rows (dialog, &typed);
  TmRevisionStatus status = tm_revision_check (tm_document_job (dialog->document), &revision, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  TmWindow *owner = dialog->owner;
  TmJob *next;

  if (status != TM_REVISION_OK)
    {
      tm_dialog_problem_set (dialog->window.problem,
                             g_dgettext (GETTEXT_PACKAGE, tm_revision_status_text (status)));
      gtk_widget_grab_focus (row_of (dialog, status));
      return;
    }
  next = make_job (dialog, &revision, &error);
  if (next == NULL)
    {
      tm_dialog_problem_set (dialog->window.problem, error->message);
      return;
    }
  text = g_strdup_printf (_ ("Revision %s begun"), next->revision);
  tm_form_dialog_done (&dialog->window, text);
  tm_window_show_job (owner, next, "job");
}

/* -------- Its rows -------- */

static AdwEntryRow *
add_entry (Dialog *dialog, AdwPreferencesGroup *group, const char *title, const char *text)
{
  AdwEntryRow *row = tm_form_entry (group, title);

  tm_form_set_text (row, text);
  g_signal_connect_swapped (row, "entry-activated", G_CALLBACK (begin_cb), dialog);
  return row;
}

static void
add_feature (Dialog *dialog, const TmFeature *feature)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *check = gtk_check_button_new ();
  g_autofree char *text = tm_words_feature (feature);

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), text);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (row), 2);
  gtk_widget_set_valign (check, GTK_ALIGN_CENTER);
  tm_name_widget (check, text);
  g_signal_connect_swapped (check, "toggled", G_CALLBACK (changed_cb), dialog);
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  adw_preferences_group_add (dialog->features, row);
  g_ptr_array_add (dialog->checks, check);
}

static void
build_features (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);

  dialog->features
      = tm_form_group (dialog->window.rows, _ ("Affected features"),
                       _ ("Mark what the new revision changes, or what may have changed with it. A "
                          "requirement that is changed later is marked by itself."));
  tm_access_name_inside (GTK_WIDGET (dialog->features), GTK_TYPE_LIST_BOX, _ ("Affected features"));
  for (guint i = 0; i < job->features->len; i++)
    add_feature (dialog, g_ptr_array_index (job->features, i));
}

static void
build (Dialog *dialog)
{
  const TmJob *job = tm_document_job (dialog->document);
  const char *kinds[] = { _ ("partial"), _ ("full"), NULL };
  AdwPreferencesGroup *group = tm_form_group (dialog->window.rows, NULL,
                                              _ ("The new job takes over features, gauges, methods and the "
                                                 "drawing with its balloons. Readings, pieces, "
                                                 "certificates and signatures stay with this one."));

  dialog->revision = add_entry (dialog, group, _ ("New revision"), "");
  dialog->report = add_entry (dialog, group, _ ("Identifier of the new report"), "");
  dialog->kind = tm_form_choice (group, _ ("First article"), kinds);
  dialog->reason = add_entry (dialog, group, _ ("Reason for it"), "");
  dialog->baseline = add_entry (dialog, group, _ ("Baseline report it refers to"), job->report_identifier);
  dialog->says
      = GTK_LABEL (g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL));
  gtk_label_set_wrap (dialog->says, TRUE);
  gtk_label_set_xalign (dialog->says, 0);
  gtk_box_append (dialog->window.rows, GTK_WIDGET (dialog->says));
  build_features (dialog);
  g_signal_connect_swapped (dialog->kind, "notify::selected", G_CALLBACK (changed_cb), dialog);
  tm_button_set_label (dialog->window.save, _ ("_Begin"));
  g_signal_connect_swapped (dialog->window.save, "clicked", G_CALLBACK (begin_cb), dialog);
}

GtkWindow *
tm_revision_dialog_present (TmWindow *window)
{
  TmDocument *document;
  Dialog *dialog;

  g_return_val_if_fail (TM_IS_WINDOW (window), NULL);

  document = tm_window_document (window);
  if (document == NULL)
    return NULL;
  dialog = g_new0 (Dialog, 1);
  dialog->owner = window;
  dialog->document = g_object_ref (document);
  dialog->checks = g_ptr_array_new ();
  tm_form_dialog_build (&dialog->window, GTK_WIDGET (window), _ ("New revision"), WIDTH, HEIGHT);
  build (dialog);
  changed_cb (dialog);
  g_object_set_data_full (G_OBJECT (dialog->window.window), "dialog", dialog, free_dialog);
  gtk_window_present (dialog->window.window);
  gtk_widget_grab_focus (GTK_WIDGET (dialog->revision));
  return dialog->window.window;
}
