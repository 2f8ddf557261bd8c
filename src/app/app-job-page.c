/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-page.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-job-drawing.h"
#include "app-job-facts.h"
#include "app-job-features.h"
#include "app-job-people.h"
#include "app-job-pieces.h"
#include "app-job-report.h"
#include "app-report-facts.h"
#include "app-supplies-dialog.h"
#include "app-table-dialog.h"
#include "app-toast.h"

struct _TmJobPage {
  AdwBin parent_instance;

  TmDocument *document;
  TmJobFacts *facts;
  TmJobReport *report;
  TmJobPeople *people;
  TmJobFeatures *features;
  TmJobPieces *pieces;
  TmJobDrawing *drawing;
  GtkStack *views; /* "features", "drawing" */
  char *view;
};

enum { PROP_0, PROP_VIEW, N_PROPS };

static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (TmJobPage, tm_job_page, ADW_TYPE_BIN)

static void
table_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPage *self = TM_JOB_PAGE (widget);

  if (self->document != NULL)
    tm_table_dialog_present (widget, self->document);
}

static void
report_facts_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPage *self = TM_JOB_PAGE (widget);

  if (self->document != NULL)
    tm_report_facts_present (widget, self->document, NULL);
}

static void
supplies_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPage *self = TM_JOB_PAGE (widget);

  if (self->document != NULL)
    tm_supplies_dialog_present (widget, self->document, NULL);
}

/* A single part has none, but those that were listed can be seen. */
static void
parts_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPage *self = TM_JOB_PAGE (widget);
  const TmJob *job = self->document != NULL ? tm_document_job (self->document) : NULL;

  if (job == NULL)
    return;
  if (job->article == TM_ARTICLE_ASSEMBLY || job->sub_parts->len > 0)
    tm_sub_parts_dialog_present (widget, self->document, NULL);
  else
    tm_window_toast (widget, _ ("The report is about one part; say in its facts that it is an assembly."));
}

/* -------- Views -------- */

static void
show_view (TmJobPage *self, const char *view)
{
  if (g_strcmp0 (view, "features") != 0 && g_strcmp0 (view, "drawing") != 0)
    return;
  if (g_strcmp0 (view, self->view) != 0)
    {
      g_free (self->view);
      self->view = g_strdup (view);
      tm_access_show_page (self->views, self->view);
      g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_VIEW]);
    }
}

static gboolean
shows_drawing (TmJobPage *self)
{
  return g_strcmp0 (self->view, "drawing") == 0;
}

static void
tm_job_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_VIEW)
    g_value_set_string (value, TM_JOB_PAGE (object)->view);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
tm_job_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  TmJobPage *self = TM_JOB_PAGE (object);

  if (id != PROP_VIEW)
    {
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
      return;
    }
  show_view (self, g_value_get_string (value));
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    tm_job_page_enter (self);
}

static void
add_drawing_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPage *self = TM_JOB_PAGE (widget);

  show_view (self, "drawing");
  tm_job_drawing_add (self->drawing);
}

/* @parameter: the path, for a caller that has chosen one already. */
static void
take_drawing_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobPage *self = TM_JOB_PAGE (widget);

  show_view (self, "drawing");
  tm_job_drawing_take (self->drawing, g_variant_get_string (parameter, NULL));
}

static void
focus_callout_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_job_page_focus_callout (TM_JOB_PAGE (widget));
}

static void
tm_job_page_dispose (GObject *object)
{
  TmJobPage *self = TM_JOB_PAGE (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->view, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), TM_TYPE_JOB_PAGE);
  G_OBJECT_CLASS (tm_job_page_parent_class)->dispose (object);
}

static void
tm_job_page_class_init (TmJobPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_job_page_dispose;
  G_OBJECT_CLASS (klass)->get_property = tm_job_page_get_property;
  G_OBJECT_CLASS (klass)->set_property = tm_job_page_set_property;
  properties[PROP_VIEW] = g_param_spec_string (
      "view", NULL, NULL, NULL, G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, properties);
  gtk_widget_class_install_property_action (widget_class, "job.view", "view");
  g_type_ensure (TM_TYPE_JOB_FACTS);
  g_type_ensure (TM_TYPE_JOB_REPORT);
  g_type_ensure (TM_TYPE_JOB_PEOPLE);
  g_type_ensure (TM_TYPE_JOB_FEATURES);
  g_type_ensure (TM_TYPE_JOB_PIECES);
  g_type_ensure (TM_TYPE_JOB_DRAWING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/job-page.ui");
  gtk_widget_class_bind_template_child (widget_class, TmJobPage, facts);
  gtk_widget_class_bind_template_child (widget_class, TmJobPage, report);
  gtk_widget_class_bind_template_child (widget_class, TmJobPage, people);
  gtk_widget_class_bind_template_child (widget_class, TmJobPage, features);
  gtk_widget_class_bind_template_child (widget_class, TmJobPage, pieces);
  gtk_widget_class_bind_template_child (widget_class, TmJobPage, drawing);
  gtk_widget_class_bind_template_child (widget_class, TmJobPage, views);
  gtk_widget_class_install_action (widget_class, "job.add-drawing", NULL, add_drawing_action);
  gtk_widget_class_install_action (widget_class, "job.take-drawing", "s", take_drawing_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_1, GDK_CONTROL_MASK, "job.view", "s",
                                       "features");
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_2, GDK_CONTROL_MASK, "job.view", "s", "drawing");
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_d, GDK_CONTROL_MASK, "job.add-drawing", NULL);
  gtk_widget_class_install_action (widget_class, "job.table", NULL, table_action);
  gtk_widget_class_install_action (widget_class, "job.report-facts", NULL, report_facts_action);
  gtk_widget_class_install_action (widget_class, "job.supplies", NULL, supplies_action);
  gtk_widget_class_install_action (widget_class, "job.parts", NULL, parts_action);
  gtk_widget_class_install_action (widget_class, "job.focus-callout", NULL, focus_callout_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_t, GDK_CONTROL_MASK, "job.table", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_r, GDK_CONTROL_MASK, "job.report-facts", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_m, GDK_CONTROL_MASK, "job.supplies", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_m, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "job.parts", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_g, GDK_CONTROL_MASK, "win.page", "s", "gauges");
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_l, GDK_CONTROL_MASK, "job.focus-callout", NULL);
}

static void
tm_job_page_init (TmJobPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  show_view (self, "features");
}

GtkWidget *
tm_job_page_new (void)
{
  return g_object_new (TM_TYPE_JOB_PAGE, NULL);
}

void
tm_job_page_set_document (TmJobPage *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  g_set_object (&self->document, document);
  tm_job_facts_set_document (self->facts, document);
  tm_job_report_set_document (self->report, document);
  tm_job_people_set_document (self->people, document);
  tm_job_features_set_document (self->features, document);
  tm_job_pieces_set_document (self->pieces, document);
  tm_job_drawing_set_document (self->drawing, document);
}

void
tm_job_page_enter (TmJobPage *self)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  if (shows_drawing (self))
    tm_job_drawing_enter (self->drawing);
  else
    tm_job_features_focus_entry (self->features);
}

void
tm_job_page_show_drawing (TmJobPage *self, const char *balloon)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  show_view (self, "drawing");
  tm_job_drawing_choose (self->drawing, balloon);
  tm_job_drawing_enter (self->drawing);
}

void
tm_job_page_focus_fact (TmJobPage *self, const char *fact)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  show_view (self, "features");
  if (tm_job_facts_focus (self->facts, fact) || self->document == NULL)
    return;
  if (tm_report_facts_has (fact))
    tm_report_facts_present (GTK_WIDGET (self), self->document, fact);
}

void
tm_job_page_show_field (TmJobPage *self, const char *name)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  if (self->document != NULL)
    tm_report_facts_present_field (GTK_WIDGET (self), self->document, name);
}

void
tm_job_page_show_supply (TmJobPage *self, const TmSupply *supply)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  if (self->document != NULL)
    tm_supplies_dialog_present (GTK_WIDGET (self), self->document, supply);
}

void
tm_job_page_show_sub_part (TmJobPage *self, const TmSubPart *part)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  if (self->document != NULL)
    tm_sub_parts_dialog_present (GTK_WIDGET (self), self->document, part);
}

void
tm_job_page_focus_callout (TmJobPage *self)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  show_view (self, "features");
  tm_job_features_focus_entry (self->features);
}

void
tm_job_page_focus_piece (TmJobPage *self)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  show_view (self, "features");
  tm_job_pieces_focus_entry (self->pieces);
}

void
tm_job_page_change_feature (TmJobPage *self, const TmFeature *feature, TmFeatureRow row)
{
  g_return_if_fail (TM_IS_JOB_PAGE (self));

  show_view (self, "features");
  tm_job_features_change (self->features, feature, row);
}
