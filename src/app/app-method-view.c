/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-method-view.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-budget-view.h"
#include "app-budget-words.h"
#include "app-button.h"
#include "app-dialog.h"
#include "app-feature-drop.h"
#include "app-gauge-words.h"
#include "app-gauges-views.h"
#include "app-line-dialog.h"
#include "app-list-row.h"
#include "app-method-dialog.h"
#include "app-side-list.h"
#include "app-view-parts.h"
#include "core-gauge-kind.h"

struct _TmMethodView {
  GtkBox parent_instance;

  TmSideList methods; /* and bare gauges, by name */
  char *balloon;      /* of the feature chosen, or NULL */
  GtkStack *stack;    /* "empty" or "budget" */
  GtkLabel *title;
  GtkLabel *about;
  GtkDropDown *feature;
  GtkWidget *change;
  GtkWidget *add_line;
  TmBudgetView *budget;
};

G_DEFINE_FINAL_TYPE (TmMethodView, tm_method_view, GTK_TYPE_BOX)

static const TmMethod *
chosen_method (TmMethodView *self)
{
  return self->methods.document != NULL && self->methods.key != NULL
             ? tm_job_find_method (tm_document_job (self->methods.document), self->methods.key)
             : NULL;
}

static TmFeature *
chosen_feature (TmMethodView *self)
{
  return self->methods.document != NULL
             ? tm_feature_drop_get (self->feature, tm_document_job (self->methods.document))
             : NULL;
}

/* -------- The list -------- */

/* "±6.2 µm" for the feature chosen; "" when it is not known. */
static char *
describe_expanded (TmMethodView *self, const char *name)
{
  const TmFeature *feature = chosen_feature (self);
  TmOutlook outlook;

  if (feature == NULL
      || !tm_judge_outlook (tm_document_job (self->methods.document), feature, name, &outlook))
    return g_strdup ("");
  return tm_words_total (feature, &outlook, TM_TOTAL_EXPANDED);
}

static void
add_row (TmMethodView *self, const char *name, const char *about)
{
  g_autofree char *expanded = describe_expanded (self, name);
  g_autofree char *what = *about != '\0' ? g_strdup_printf ("%s: %s", name, about) : g_strdup (name);
  g_autofree char *sentence = *expanded != '\0'
                                  ? g_strdup_printf (_ ("%s, expanded uncertainty %s"), what, expanded)
                                  : g_strdup_printf (_ ("%s, uncertainty not known for this feature"), what);

  gtk_list_box_append (self->methods.list, tm_list_row_new (name, about, expanded, sentence, name));
}

/* What measures a feature by itself is listed even so. */
static gboolean
is_assigned (const TmJob *job, const TmGauge *gauge)
{
  for (guint i = 0; i < job->features->len; i++)
    if (g_str_equal (((const TmFeature *)g_ptr_array_index (job->features, i))->method, gauge->tag))
      return TRUE;
  return FALSE;
}

static gboolean
is_in_a_method (const TmJob *job, const TmGauge *gauge)
{
  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);

      if (g_ptr_array_find_with_equal_func (method->gauges, gauge->tag, g_str_equal, NULL))
        return TRUE;
    }
  return FALSE;
}

/* Pins, rings and blocks have no scale to read, and a transfer gauge none without its instrument. */
static gboolean
reads_by_itself (const TmGauge *gauge)
{
  const TmGaugeKind *kind = tm_gauge_kind_find (gauge->kind);

  return kind == NULL
         || !(kind->transfer || kind->pins || kind->classed || kind->contact == TM_CONTACT_FULL_FORM);
}

static gboolean
is_listed (const TmJob *job, const TmGauge *gauge)
{
  if (tm_job_find_method (job, gauge->tag) != NULL)
    return FALSE;
  return is_assigned (job, gauge) || (!is_in_a_method (job, gauge) && reads_by_itself (gauge));
}

static void
add_bare_gauges (TmMethodView *self, const TmJob *job)
{
  gboolean any = FALSE;

  for (guint i = 0; i < job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (job->gauges, i);

      if (!is_listed (job, gauge))
        continue;
      if (!any)
        gtk_list_box_append (self->methods.list, tm_list_row_heading_new (_ ("Gauges used alone")));
      any = TRUE;
      add_row (self, gauge->tag, tm_words_gauge_kind (gauge->kind));
    }
}

static gboolean
is_there (const TmJob *job, const char *name)
{
  return name != NULL && (tm_job_find_method (job, name) != NULL || tm_job_find_gauge (job, name) != NULL);
}

/* The method chosen before, else the feature's own, else the first in the list. */
static void
choose_something (TmMethodView *self, const TmJob *job)
{
  const TmFeature *feature = chosen_feature (self);
  const char *name = NULL;

  if (is_there (job, self->methods.key))
    return;
  if (feature != NULL && is_there (job, feature->method))
    name = feature->method;
  else if (job->methods->len > 0)
    name = ((const TmMethod *)g_ptr_array_index (job->methods, 0))->name;
  else if (job->gauges->len > 0)
    name = ((const TmGauge *)g_ptr_array_index (job->gauges, 0))->tag;
  tm_side_list_set_key (&self->methods, name);
}

static void
fill_list (TmMethodView *self, const TmJob *job)
{
  gboolean focused = tm_side_list_begin (&self->methods);

  for (guint i = 0; i < job->methods->len; i++)
    {
      const TmMethod *method = g_ptr_array_index (job->methods, i);
      g_autofree char *about = tm_words_method_gauges (method);

      add_row (self, method->name, about);
    }
  add_bare_gauges (self, job);
  tm_side_list_end (&self->methods, focused);
}

/* -------- The budget -------- */

/* "TG-1, read with OM-25: settles most readings" */
static char *
describe_method (TmMethodView *self, const TmJob *job, const TmFeature *feature)
{
  const TmMethod *method = tm_job_find_method (job, self->methods.key);
  const TmGauge *gauge = tm_job_find_gauge (job, self->methods.key);
  g_autofree char *gauges
      = method != NULL ? tm_words_method_gauges (method)
                       : g_strdup (gauge != NULL ? tm_words_gauge_kind (gauge->kind) : self->methods.key);
  g_autofree char *word = NULL;
  TmOutlook outlook;

  if (tm_judge_outlook (job, feature, self->methods.key, &outlook))
    word = tm_words_total (feature, &outlook, TM_TOTAL_WORD);
  return word != NULL && *word != '\0' ? g_strdup_printf ("%s: %s", gauges, word) : g_steal_pointer (&gauges);
}

static void
show_budget (TmMethodView *self)
{
  const TmJob *job = tm_document_job (self->methods.document);
  const TmFeature *feature = chosen_feature (self);
  g_autofree char *about
      = self->methods.key != NULL && feature != NULL ? describe_method (self, job, feature) : NULL;
  gboolean is_method = chosen_method (self) != NULL;

  tm_access_show_page (self->stack, self->methods.key == NULL ? "empty" : "budget");
  gtk_label_set_text (self->title, self->methods.key != NULL ? self->methods.key : "");
  gtk_label_set_text (self->about,
                      feature != NULL ? about : _ ("Add a feature with limits to see a budget."));
  tm_button_set_label (self->change, is_method ? _ ("_Change…") : _ ("_Make a method of it…"));
  gtk_widget_set_visible (self->add_line, is_method);
  tm_budget_view_show (self->budget, self->methods.document, feature, self->methods.key);
}

static void
show (GtkWidget *view)
{
  show_budget (TM_METHOD_VIEW (view));
}

static void
refresh (GtkWidget *view)
{
  TmMethodView *self = TM_METHOD_VIEW (view);
  const TmJob *job = tm_document_job (self->methods.document);

  self->methods.filling = TRUE;
  tm_feature_drop_fill (self->feature, job, self->balloon);
  choose_something (self, job);
  fill_list (self, job);
  show_budget (self);
}

static void
feature_cb (TmMethodView *self)
{
  const TmFeature *feature;

  if (self->methods.filling || self->methods.document == NULL)
    return;
  feature = chosen_feature (self);
  g_free (self->balloon);
  self->balloon = g_strdup (feature != NULL ? feature->balloon : NULL);
  fill_list (self, tm_document_job (self->methods.document));
  show_budget (self);
}

/* -------- Actions -------- */

static void
change_cb (TmMethodView *self)
{
  if (self->methods.document == NULL || self->methods.key == NULL)
    return;
  if (chosen_method (self) != NULL)
    tm_method_dialog_present (GTK_WIDGET (self), self->methods.document, self->methods.key, NULL);
  else
    tm_method_dialog_present (GTK_WIDGET (self), self->methods.document, NULL, self->methods.key);
}

static void
add_method_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmMethodView *self = TM_METHOD_VIEW (widget);

  if (self->methods.document != NULL)
    tm_method_dialog_present (widget, self->methods.document, NULL, NULL);
}

static void
change_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  change_cb (TM_METHOD_VIEW (widget));
}

static void
add_line_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmMethodView *self = TM_METHOD_VIEW (widget);

  if (chosen_method (self) != NULL)
    tm_line_dialog_present (widget, self->methods.document, self->methods.key, NULL);
}

void
tm_method_view_choose (TmMethodView *self, const char *name, const char *balloon)
{
  g_return_if_fail (TM_IS_METHOD_VIEW (self));

  tm_side_list_set_key (&self->methods, name);
  g_free (self->balloon);
  self->balloon = g_strdup (balloon);
  if (self->methods.document != NULL)
    refresh (GTK_WIDGET (self));
}

void
tm_method_view_set_document (TmMethodView *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_METHOD_VIEW (self));

  tm_budget_view_show (self->budget, NULL, NULL, NULL);
  g_clear_pointer (&self->balloon, g_free);
  tm_side_list_set_document (&self->methods, document);
}

void
tm_method_view_enter (TmMethodView *self)
{
  g_return_if_fail (TM_IS_METHOD_VIEW (self));

  tm_side_list_enter (&self->methods);
}

GtkListBox *
tm_method_view_methods (TmMethodView *self)
{
  g_return_val_if_fail (TM_IS_METHOD_VIEW (self), NULL);

  return self->methods.list;
}

GtkListBox *
tm_method_view_budget (TmMethodView *self)
{
  g_return_val_if_fail (TM_IS_METHOD_VIEW (self), NULL);

  return tm_budget_view_list (self->budget);
}

/* -------- Building -------- */

static GtkWidget *
build_left (TmMethodView *self)
{
  GtkWidget *head = tm_view_title_new (_ ("Methods"));

  gtk_box_append (GTK_BOX (head),
                  tm_view_button_new (_ ("_Add a method…"), "method.add",
                                      _ ("One gauge, or a transfer gauge and what reads it (Ctrl+I)")));
  tm_side_list_init (&self->methods, GTK_WIDGET (self), _ ("Methods"), refresh, show);
  tm_side_list_activates (&self->methods, G_CALLBACK (change_cb));
  return tm_side_list_put (&self->methods, head, NULL);
}

static GtkWidget *
build_head (TmMethodView *self)
{
  GtkWidget *head = tm_view_head_new (&self->title, &self->about);

  self->feature = tm_feature_drop_new (_ ("Feature"));
  gtk_widget_set_valign (GTK_WIDGET (self->feature), GTK_ALIGN_CENTER);
  g_signal_connect_swapped (self->feature, "notify::selected", G_CALLBACK (feature_cb), self);
  self->change = tm_view_button_new (_ ("_Change…"), "method.change", _ ("Name, gauges and repeatability"));
  self->add_line = tm_view_button_new (_ ("Add a _line…"), "method.add-line",
                                       _ ("A line of your own in this budget (Ctrl+L)"));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->feature));
  gtk_box_append (GTK_BOX (head), self->change);
  gtk_box_append (GTK_BOX (head), self->add_line);
  return head;
}

static GtkWidget *
build_right (TmMethodView *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->budget = TM_BUDGET_VIEW (tm_budget_view_new ());
  gtk_box_append (GTK_BOX (box), build_head (self));
  gtk_box_append (GTK_BOX (box), tm_view_scroller_new (GTK_WIDGET (self->budget)));
  return box;
}

static GtkWidget *
build_empty (void)
{
  GtkWidget *page = adw_status_page_new ();

  adw_status_page_set_title (ADW_STATUS_PAGE (page), _ ("No methods yet"));
  adw_status_page_set_description (
      ADW_STATUS_PAGE (page),
      _ ("Put the gauges into the register first. A method is one of them, or a transfer gauge and the "
         "instrument that reads it; its uncertainty is worked out here, line by line."));
  adw_status_page_set_child (ADW_STATUS_PAGE (page), tm_gauges_open_register_new ());
  return page;
}

static void
tm_method_view_dispose (GObject *object)
{
  TmMethodView *self = TM_METHOD_VIEW (object);

  tm_side_list_clear (&self->methods);
  g_clear_pointer (&self->balloon, g_free);
  G_OBJECT_CLASS (tm_method_view_parent_class)->dispose (object);
}

static void
tm_method_view_class_init (TmMethodViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_method_view_dispose;
  gtk_widget_class_install_action (widget_class, "method.add", NULL, add_method_action);
  gtk_widget_class_install_action (widget_class, "method.change", NULL, change_action);
  gtk_widget_class_install_action (widget_class, "method.add-line", NULL, add_line_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_i, GDK_CONTROL_MASK, "method.add", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_l, GDK_CONTROL_MASK, "method.add-line", NULL);
}

static void
tm_method_view_init (TmMethodView *self)
{
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_widget_set_hexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), build_left (self));
  gtk_box_append (GTK_BOX (self), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_stack_add_named (self->stack, build_empty (), "empty");
  gtk_stack_add_named (self->stack, build_right (self), "budget");
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  tm_access_show_page (self->stack, "empty");
}

GtkWidget *
tm_method_view_new (void)
{
  return g_object_new (TM_TYPE_METHOD_VIEW, NULL);
}
