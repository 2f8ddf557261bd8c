/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-suitability-view.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-feature-words.h"
#include "app-gauges-views.h"
#include "app-list-row.h"
#include "app-side-list.h"
#include "app-suitability-list.h"
#include "app-suitability-words.h"
#include "app-toast.h"
#include "app-view-parts.h"
#include "app-words.h"

struct _TmSuitabilityView {
  GtkBox parent_instance;

  TmSideList features; /* by balloon */
  GtkLabel *summary;
  GtkStack *stack; /* "empty", "nothing" or "methods" */
  GtkLabel *title;
  GtkLabel *limits;
  GtkLabel *nothing;
  GtkWidget *assign;
  TmSuitabilityList *methods;
};

G_DEFINE_FINAL_TYPE (TmSuitabilityView, tm_suitability_view, GTK_TYPE_BOX)

static TmFeature *
chosen_feature (TmSuitabilityView *self)
{
  return self->features.document != NULL && self->features.key != NULL
             ? tm_job_find_feature (tm_document_job (self->features.document), self->features.key)
             : NULL;
}

/* "cannot settle it · CA-150" */
static void
add_feature (TmSuitabilityView *self, const TmJob *job, const TmFeature *feature)
{
  g_autofree char *title = tm_words_feature (feature);
  const char *word = tm_words_assigned (job, feature);
  gboolean has_method = *feature->method != '\0' && !tm_kind_is_attribute (feature->kind);
  g_autofree char *under = has_method ? g_strdup_printf ("%s · %s", word, feature->method) : g_strdup (word);
  g_autofree char *sentence = g_strdup_printf ("%s: %s", title, under);
  GtkWidget *row = tm_list_row_new (title, under, "", sentence, feature->balloon);

  if (tm_assigned_cannot (job, feature))
    gtk_widget_add_css_class (row, "tm-cannot");
  gtk_list_box_append (self->features.list, row);
}

static void
fill_features (TmSuitabilityView *self, const TmJob *job)
{
  gboolean focused = tm_side_list_begin (&self->features);
  g_autofree char *summary = tm_words_suitability_summary (job);

  for (guint i = 0; i < job->features->len; i++)
    add_feature (self, job, g_ptr_array_index (job->features, i));
  gtk_label_set_text (self->summary, summary);
  gtk_widget_set_visible (GTK_WIDGET (self->summary), *summary != '\0');
  tm_side_list_end (&self->features, focused);
}

static const char *
find_page (TmSuitabilityView *self, const TmFeature *feature)
{
  const TmJob *job = tm_document_job (self->features.document);

  if (feature == NULL || (job->gauges->len == 0 && job->methods->len == 0))
    return "empty";
  return tm_kind_is_attribute (feature->kind) ? "nothing" : "methods";
}

static void
show_methods (TmSuitabilityView *self)
{
  const TmFeature *feature = chosen_feature (self);
  g_autofree char *title = feature != NULL ? tm_words_feature (feature) : NULL;
  g_autofree char *limits = feature != NULL ? tm_words_limits (feature) : NULL;

  tm_access_show_page (self->stack, find_page (self, feature));
  gtk_label_set_text (self->title, title);
  gtk_label_set_text (self->limits, limits);
  gtk_label_set_text (self->nothing, title);
  tm_suitability_list_show (self->methods, tm_document_job (self->features.document), feature);
}

/* The feature chosen before, else the first that its method cannot settle, else the first. */
static void
choose_something (TmSuitabilityView *self, const TmJob *job)
{
  const TmFeature *found = NULL;

  if (chosen_feature (self) != NULL)
    return;
  for (guint i = 0; i < job->features->len && found == NULL; i++)
    if (tm_assigned_cannot (job, g_ptr_array_index (job->features, i)))
      found = g_ptr_array_index (job->features, i);
  if (found == NULL && job->features->len > 0)
    found = g_ptr_array_index (job->features, 0);
  tm_side_list_set_key (&self->features, found != NULL ? found->balloon : NULL);
}

static void
show (GtkWidget *view)
{
  show_methods (TM_SUITABILITY_VIEW (view));
}

static void
refresh (GtkWidget *view)
{
  TmSuitabilityView *self = TM_SUITABILITY_VIEW (view);
  const TmJob *job = tm_document_job (self->features.document);

  choose_something (self, job);
  fill_features (self, job);
  show_methods (self);
}

static void
method_selected_cb (TmSuitabilityView *self, GtkListBoxRow *row)
{
  const TmFeature *feature = chosen_feature (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "suitability.assign",
                                 row != NULL && feature != NULL
                                     && !g_str_equal (feature->method, tm_list_row_key (row)));
}

static void
assign (TmSuitabilityView *self, const char *method)
{
  TmJob *job = tm_document_job (self->features.document);
  const TmFeature *feature = chosen_feature (self);
  g_autofree char *text = g_strdup_printf (_ ("Feature %s is measured with %s"), self->features.key, method);
  g_autoptr (GError) error = NULL;
  TmFeature *with;

  if (feature == NULL || g_str_equal (feature->method, method))
    return;
  with = tm_edit_copy_feature (feature);
  with->method = tm_job_intern (job, method);
  if (tm_edit_replace_feature (self->features.document, self->features.key, with, &error))
    tm_window_toast (GTK_WIDGET (self), text);
  else
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
method_activated_cb (TmSuitabilityView *self, GtkListBoxRow *row)
{
  g_autofree char *method = g_strdup (tm_list_row_key (row));

  if (self->features.document != NULL)
    assign (self, method);
}

static void
assign_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmSuitabilityView *self = TM_SUITABILITY_VIEW (widget);
  GtkListBoxRow *row = gtk_list_box_get_selected_row (tm_suitability_list_rows (self->methods));

  if (row != NULL)
    method_activated_cb (self, row);
}

void
tm_suitability_view_set_document (TmSuitabilityView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_SUITABILITY_VIEW (self));

  tm_suitability_list_show (self->methods, NULL, NULL);
  tm_side_list_set_document (&self->features, document);
}

void
tm_suitability_view_enter (TmSuitabilityView *self)
{
  g_return_if_fail (TM_IS_SUITABILITY_VIEW (self));

  tm_side_list_enter (&self->features);
}

void
tm_suitability_view_choose (TmSuitabilityView *self, const char *balloon)
{
  g_return_if_fail (TM_IS_SUITABILITY_VIEW (self));

  tm_list_select (self->features.list, balloon, FALSE);
}

GtkListBox *
tm_suitability_view_features (TmSuitabilityView *self)
{
  g_return_val_if_fail (TM_IS_SUITABILITY_VIEW (self), NULL);

  return self->features.list;
}

GtkListBox *
tm_suitability_view_methods (TmSuitabilityView *self)
{
  g_return_val_if_fail (TM_IS_SUITABILITY_VIEW (self), NULL);

  return tm_suitability_list_rows (self->methods);
}

const char *
tm_suitability_view_summary (TmSuitabilityView *self)
{
  g_return_val_if_fail (TM_IS_SUITABILITY_VIEW (self), NULL);

  return gtk_label_get_text (self->summary);
}

/* -------- Building -------- */

static GtkWidget *
build_left (TmSuitabilityView *self)
{
  GtkWidget *box;

  self->summary = tm_view_label_new ("tm-view-summary", TRUE);
  tm_side_list_init (&self->features, GTK_WIDGET (self), _ ("Features"), refresh, show);
  box = tm_side_list_put (&self->features, GTK_WIDGET (self->summary), NULL);
  gtk_widget_add_css_class (box, "tm-wide-side");
  return box;
}

static GtkWidget *
build_head (TmSuitabilityView *self)
{
  GtkWidget *head = tm_view_head_new (&self->title, &self->limits);

  self->assign = tm_view_button_new (_ ("_Measure with this method"), "suitability.assign",
                                     _ ("Assign the chosen method to this feature (Enter)"));
  gtk_box_append (GTK_BOX (head), self->assign);
  return head;
}

static GtkWidget *
build_methods (TmSuitabilityView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkListBox *rows;

  self->methods = TM_SUITABILITY_LIST (tm_suitability_list_new ());
  rows = tm_suitability_list_rows (self->methods);
  g_signal_connect_swapped (rows, "row-activated", G_CALLBACK (method_activated_cb), self);
  g_signal_connect_swapped (rows, "row-selected", G_CALLBACK (method_selected_cb), self);
  gtk_box_append (GTK_BOX (box), build_head (self));
  gtk_box_append (GTK_BOX (box), tm_view_scroller_new (GTK_WIDGET (self->methods)));
  return box;
}

static GtkWidget *
build_empty (void)
{
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("Nothing to compare yet"));
  adw_status_page_set_description (
      ADW_STATUS_PAGE (page),
      _ ("Add the drawing’s features on the Job page and the gauges in the register: then it stands here, "
         "before anything is read, which gauge would settle which feature."));
  adw_status_page_set_child (ADW_STATUS_PAGE (page), tm_gauges_open_register_new ());
  return page;
}

/* What goes or does not go has no uncertainty. */
static GtkWidget *
build_nothing (TmSuitabilityView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkLabel *text = tm_view_label_new ("dim-label", TRUE);

  self->nothing = tm_view_label_new ("title-4", TRUE);
  gtk_label_set_text (text, _ ("Pass or fail: there is no size, so no uncertainty to hold against limits."));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->nothing));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (text));
  gtk_widget_add_css_class (box, "tm-view-head");
  return box;
}

static void
tm_suitability_view_dispose (GObject *object)
{
  TmSuitabilityView *self = TM_SUITABILITY_VIEW (object);

  tm_side_list_clear (&self->features);
  G_OBJECT_CLASS (tm_suitability_view_parent_class)->dispose (object);
}

static void
tm_suitability_view_class_init (TmSuitabilityViewClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_suitability_view_dispose;
  gtk_widget_class_install_action (GTK_WIDGET_CLASS (klass), "suitability.assign", NULL, assign_action);
}

static void
tm_suitability_view_init (TmSuitabilityView *self)
{
  gtk_box_append (GTK_BOX (self), build_left (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_widget_set_hexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_stack_add_named (self->stack, build_empty (), "empty");
  gtk_stack_add_named (self->stack, build_nothing (self), "nothing");
  gtk_stack_add_named (self->stack, build_methods (self), "methods");
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_access_show_page (self->stack, "empty");
}

GtkWidget *
tm_suitability_view_new (void)
{
  return g_object_new (TM_TYPE_SUITABILITY_VIEW, NULL);
}
