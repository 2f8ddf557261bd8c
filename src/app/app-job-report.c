/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-report.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-form.h"

struct _TmJobReport {
  GtkBox parent_instance;

  TmDocument *document;
  AdwActionRow *facts, *supplies, *parts;
};

G_DEFINE_FINAL_TYPE (TmJobReport, tm_job_report, GTK_TYPE_BOX)

static void
show_row (AdwActionRow *row, const char *text)
{
  g_autofree char *spoken
      = g_strdup_printf ("%s: %s", adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)), text);

  adw_action_row_set_subtitle (row, text);
  tm_name_widget (GTK_WIDGET (row), spoken);
}

static guint
count_unproven (const TmJob *job)
{
  guint n = 0;

  for (guint i = 0; i < job->supplies->len; i++)
    n += *((const TmSupply *)g_ptr_array_index (job->supplies, i))->certificate == '\0';
  return n;
}

/* "3, 1 without a certificate" */
static char *
describe_supplies (const TmJob *job)
{
  guint unproven = count_unproven (job);

  if (job->supplies->len == 0)
    return g_strdup (_ ("none listed"));
  if (unproven == 0)
    return g_strdup_printf (ngettext ("%u listed", "%u listed", job->supplies->len), job->supplies->len);
  return g_strdup_printf (
      ngettext ("%u listed, %u without a certificate", "%u listed, %u without a certificate", unproven),
      job->supplies->len, unproven);
}

static void
definitions_changed_cb (TmJobReport *self)
{
  const TmJob *job = tm_document_job (self->document);
  g_autofree char *supplies = describe_supplies (job);
  g_autofree char *parts
      = job->sub_parts->len == 0
            ? g_strdup (_ ("none listed"))
            : g_strdup_printf (ngettext ("%u listed", "%u listed", job->sub_parts->len), job->sub_parts->len);

  show_row (self->facts, *job->report_identifier != '\0' ? job->report_identifier : _ ("no identifier yet"));
  show_row (self->supplies, supplies);
  show_row (self->parts, parts);
  /* Parts that were listed stay within reach. */
  gtk_widget_set_visible (GTK_WIDGET (self->parts),
                          job->article == TM_ARTICLE_ASSEMBLY || job->sub_parts->len > 0);
}

void
tm_job_report_set_document (TmJobReport *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_JOB_REPORT (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

static void
tm_job_report_dispose (GObject *object)
{
  TmJobReport *self = TM_JOB_REPORT (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_job_report_parent_class)->dispose (object);
}

static void
tm_job_report_class_init (TmJobReportClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_job_report_dispose;
}

static AdwActionRow *
add_row (AdwPreferencesGroup *group, const char *title, const char *action)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *arrow = gtk_image_new_from_icon_name ("go-next-symbolic");

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (arrow), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), arrow);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  /* Its name says the line under the title too; with its own label it would be read twice. */
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (row), action);
  adw_preferences_group_add (group, row);
  return ADW_ACTION_ROW (row);
}

static void
tm_job_report_init (TmJobReport *self)
{
  AdwPreferencesGroup *group = tm_form_group (GTK_BOX (self), _ ("Report"), NULL);

  gtk_widget_set_hexpand (GTK_WIDGET (group), TRUE);
  self->facts = add_row (group, _ ("Report facts…"), "job.report-facts");
  self->supplies = add_row (group, _ ("Materials, processes, tests…"), "job.supplies");
  self->parts = add_row (group, _ ("Parts of the assembly…"), "job.parts");
}
