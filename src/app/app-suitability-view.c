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
#include "app-suitability-list.h"
#include "app-suitability-words.h"
#include "app-toast.h"
#include "app-words.h"

struct _TmSuitabilityView {
  GtkBox parent_instance;

  TmDocument *document;
  char *balloon; /* of the feature chosen, or NULL */
  gboolean filling;

  GtkListBox *features;
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
  return self->document != NULL && self->balloon != NULL
             ? tm_job_find_feature (tm_document_job (self->document), self->balloon)
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
  gtk_list_box_append (self->features, row);
}

static void
fill_features (TmSuitabilityView *self, const TmJob *job)
{
  gboolean focused = tm_list_clear (self->features);
  g_autofree char *summary = tm_words_suitability_summary (job);

  for (guint i = 0; i < job->features->len; i++)
    add_feature (self, job, g_ptr_array_index (job->features, i));
  gtk_label_set_text (self->summary, summary);
  gtk_widget_set_visible (GTK_WIDGET (self->summary), *summary != '\0');
  tm_list_select (self->features, self->balloon, focused);
}

static const char *
find_page (TmSuitabilityView *self, const TmFeature *feature)
{
  const TmJob *job = tm_document_job (self->document);

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
  tm_suitability_list_show (self->methods, tm_document_job (self->document), feature);
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
  g_free (self->balloon);
  self->balloon = g_strdup (found != NULL ? found->balloon : NULL);
}

static void
refresh (TmSuitabilityView *self)
{
  const TmJob *job = tm_document_job (self->document);

  self->filling = TRUE;
  choose_something (self, job);
  fill_features (self, job);
  self->filling = FALSE;
  show_methods (self);
}

static void
feature_selected_cb (TmSuitabilityView *self, GtkListBoxRow *row)
{
  if (self->filling || row == NULL || self->document == NULL)
    return;
  g_free (self->balloon);
  self->balloon = g_strdup (tm_list_row_key (row));
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
  TmJob *job = tm_document_job (self->document);
  const TmFeature *feature = chosen_feature (self);
  g_autofree char *text = g_strdup_printf (_ ("Feature %s is measured with %s"), self->balloon, method);
  g_autoptr (GError) error = NULL;
  TmFeature *with;

  if (feature == NULL || g_str_equal (feature->method, method))
    return;
  with = tm_edit_copy_feature (feature);
  with->method = tm_job_intern (job, method);
  if (tm_edit_replace_feature (self->document, self->balloon, with, &error))
    tm_window_toast (GTK_WIDGET (self), text);
  else
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
method_activated_cb (TmSuitabilityView *self, GtkListBoxRow *row)
{
  g_autofree char *method = g_strdup (tm_list_row_key (row));

  if (self->document != NULL)
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

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  tm_list_clear (self->features);
  g_clear_pointer (&self->balloon, g_free);
  tm_suitability_list_show (self->methods, NULL, NULL);
  g_set_object (&self->document, document);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (refresh), self);
  refresh (self);
}

void
tm_suitability_view_enter (TmSuitabilityView *self)
{
  g_return_if_fail (TM_IS_SUITABILITY_VIEW (self));

  if (!tm_list_select (self->features, self->balloon, TRUE))
    gtk_widget_child_focus (GTK_WIDGET (self), GTK_DIR_TAB_FORWARD);
}

void
tm_suitability_view_choose (TmSuitabilityView *self, const char *balloon)
{
  g_return_if_fail (TM_IS_SUITABILITY_VIEW (self));

  tm_list_select (self->features, balloon, FALSE);
}

GtkListBox *
tm_suitability_view_features (TmSuitabilityView *self)
{
  g_return_val_if_fail (TM_IS_SUITABILITY_VIEW (self), NULL);

  return self->features;
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

static GtkLabel *
new_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return GTK_LABEL (label);
}

static GtkWidget *
new_scroller (GtkWidget *child)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), child);
  gtk_widget_set_vexpand (scroller, TRUE);
  return scroller;
}

static GtkWidget *
build_left (TmSuitabilityView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->summary = new_label ("tm-view-summary");
  gtk_label_set_wrap (self->summary, TRUE);
  self->features = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_widget_add_css_class (GTK_WIDGET (self->features), "tm-choices");
  tm_list_tab_leaves (self->features);
  tm_name_widget (GTK_WIDGET (self->features), _ ("Features"));
  g_signal_connect_swapped (self->features, "row-selected", G_CALLBACK (feature_selected_cb), self);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->summary));
  gtk_box_append (GTK_BOX (box), new_scroller (GTK_WIDGET (self->features)));
  gtk_widget_add_css_class (box, "tm-choice-side");
  gtk_widget_add_css_class (box, "tm-wide-side");
  return box;
}

static GtkWidget *
build_head (TmSuitabilityView *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->title = new_label ("title-4");
  self->limits = new_label ("dim-label");
  gtk_label_set_ellipsize (self->title, PANGO_ELLIPSIZE_END);
  gtk_box_append (GTK_BOX (texts), GTK_WIDGET (self->title));
  gtk_box_append (GTK_BOX (texts), GTK_WIDGET (self->limits));
  gtk_widget_set_hexpand (texts, TRUE);
  self->assign = tm_button_new (_ ("_Measure with this method"));
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->assign), "suitability.assign");
  gtk_widget_set_tooltip_text (self->assign, _ ("Assign the chosen method to this feature (Enter)"));
  gtk_widget_set_valign (self->assign, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (head), texts);
  gtk_box_append (GTK_BOX (head), self->assign);
  gtk_widget_add_css_class (head, "tm-view-head");
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
  gtk_box_append (GTK_BOX (box), new_scroller (GTK_WIDGET (self->methods)));
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
  GtkLabel *text = new_label ("dim-label");

  self->nothing = new_label ("title-4");
  gtk_label_set_wrap (self->nothing, TRUE);
  gtk_label_set_text (text, _ ("Pass or fail: there is no size, so no uncertainty to hold against limits."));
  gtk_label_set_wrap (text, TRUE);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->nothing));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (text));
  gtk_widget_add_css_class (box, "tm-view-head");
  return box;
}

static void
tm_suitability_view_dispose (GObject *object)
{
  TmSuitabilityView *self = TM_SUITABILITY_VIEW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->balloon, g_free);
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
