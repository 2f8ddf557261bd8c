/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-features.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-feature-dialog.h"
#include "app-job-columns.h"
#include "app-job-item.h"
#include "app-toast.h"
#include "app-words.h"

struct _TmJobFeatures {
  GtkBox parent_instance;

  TmDocument *document;
  GListStore *items;
  GtkSingleSelection *selection;
  char *proposed; /* the balloon number put into the entry, not typed */

  GtkLabel *count_label;
  GtkEditable *balloon_entry;
  GtkEditable *callout_entry;
  GtkDropDown *way_drop;
  GtkWidget *add_button;
  GtkLabel *reads_label;
  GtkStack *stack;
  GtkColumnView *view;
};

G_DEFINE_FINAL_TYPE (TmJobFeatures, tm_job_features, GTK_TYPE_BOX)

/* Order of the drop-down in the template. */
enum { WAY_AS_READ, WAY_INSIDE, WAY_OUTSIDE };

static char *
typed (GtkEditable *entry)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (entry)));
}

/* The machinist knows more than a plain Ø or length says. */
static void
say_way (TmFeature *feature, guint way)
{
  if (way == WAY_AS_READ || tm_kind_is_attribute (feature->kind))
    return;
  feature->cut = way == WAY_INSIDE ? TM_CUT_GROWS : TM_CUT_SHRINKS;
  if (feature->kind == TM_KIND_DIAMETER)
    feature->kind = way == WAY_INSIDE ? TM_KIND_BORE : TM_KIND_SHAFT;
}

static char *
describe_callout (const TmCallout *callout, guint way)
{
  g_autofree char *words = tm_words_reads_as (callout);

  if (callout->status == TM_CALLOUT_EMPTY)
    return g_strdup (_ ("Enter adds it; what it is read as stands here first"));
  if (callout->status != TM_CALLOUT_OK)
    return g_steal_pointer (&words);
  if (callout->kind == TM_KIND_DIAMETER && callout->cut == TM_CUT_UNKNOWN && way == WAY_AS_READ)
    return g_strdup_printf (_ ("Reads as %s; inside or outside? ID or OD before it says so"), words);
  return g_strdup_printf (_ ("Reads as %s"), words);
}

static void
callout_changed_cb (TmJobFeatures *self)
{
  g_autofree char *text = typed (self->callout_entry);
  guint way = gtk_drop_down_get_selected (self->way_drop);
  g_autofree char *line = NULL;
  const TmJob *job;
  TmCallout callout;

  if (self->document == NULL)
    return;
  job = tm_document_job (self->document);
  callout = tm_callout_read (text, job->unit, job->general_tolerance);
  if (callout.status == TM_CALLOUT_OK && callout.kind == TM_KIND_DIAMETER && way != WAY_AS_READ)
    callout.kind = way == WAY_INSIDE ? TM_KIND_BORE : TM_KIND_SHAFT;
  line = describe_callout (&callout, way);
  gtk_label_set_text (self->reads_label, line);
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_editable_get_delegate (self->callout_entry)),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, line, -1);
  gtk_widget_set_sensitive (self->add_button, *text != '\0');
}

/* A number that nobody typed follows the list. */
static void
propose_balloon (TmJobFeatures *self)
{
  g_autofree char *text = typed (self->balloon_entry);

  if (*text != '\0' && g_strcmp0 (text, self->proposed) != 0)
    return;
  g_free (self->proposed);
  self->proposed = tm_edit_next_balloon (tm_document_job (self->document));
  gtk_editable_set_text (self->balloon_entry, self->proposed);
}

static void
balloon_activate_cb (TmJobFeatures *self)
{
  tm_job_features_focus_entry (self);
}

static TmFeature *
make_feature (TmJobFeatures *self, const char *balloon, const char *callout)
{
  TmJob *job = tm_document_job (self->document);
  TmFeature *feature = tm_feature_new ();

  feature->balloon = tm_job_intern (job, balloon);
  feature->requirement = tm_job_intern (job, callout);
  feature->unit = job->unit;
  tm_callout_apply (job, feature);
  say_way (feature, gtk_drop_down_get_selected (self->way_drop));
  return feature;
}

static void
scroll_to (TmJobFeatures *self, guint at)
{
  gtk_single_selection_set_selected (self->selection, at);
  tm_access_scroll_column_view (self->view, at);
}

static void
empty_entry (TmJobFeatures *self)
{
  gtk_editable_set_text (self->balloon_entry, "");
  propose_balloon (self);
  gtk_drop_down_set_selected (self->way_drop, WAY_AS_READ);
  gtk_editable_set_text (self->callout_entry, "");
  tm_job_features_focus_entry (self);
}

static void
add_cb (TmJobFeatures *self)
{
  g_autofree char *balloon = typed (self->balloon_entry);
  g_autofree char *callout = typed (self->callout_entry);
  g_autoptr (GError) error = NULL;

  if (self->document == NULL || *callout == '\0')
    return;
  if (*balloon == '\0')
    {
      g_free (balloon);
      balloon = tm_edit_next_balloon (tm_document_job (self->document));
    }
  if (!tm_edit_add_feature (self->document, make_feature (self, balloon, callout), &error))
    {
      tm_window_show_error (GTK_WIDGET (self), error->message);
      return;
    }
  tm_window_clear_error (GTK_WIDGET (self));
  empty_entry (self);
  scroll_to (self, g_list_model_get_n_items (G_LIST_MODEL (self->items)) - 1);
}

static TmFeature *
selected_feature (TmJobFeatures *self)
{
  TmJobItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? tm_job_item_feature (item) : NULL;
}

static void
change_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobFeatures *self = TM_JOB_FEATURES (widget);
  TmFeature *feature = selected_feature (self);

  if (feature != NULL)
    tm_feature_dialog_present (widget, self->document, feature, TM_FEATURE_ROW_CALLOUT);
}

static void
activate_cb (TmJobFeatures *self, guint position)
{
  gtk_single_selection_set_selected (self->selection, position);
  change_action (GTK_WIDGET (self), NULL, NULL);
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmJobFeatures *self = TM_JOB_FEATURES (widget);
  TmFeature *feature = selected_feature (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (feature == NULL)
    return;
  text = g_strdup_printf (_ ("Removed feature %s"), feature->balloon);
  if (tm_edit_remove_feature (self->document, feature->balloon, &error))
    tm_window_toast (widget, text);
  else
    tm_window_show_error (widget, error->message);
}

static void
definitions_changed_cb (TmJobFeatures *self)
{
  const TmJob *job = tm_document_job (self->document);
  guint n = job->features->len;
  g_autofree char *count = n > 0 ? g_strdup_printf ("%u", n) : g_strdup ("");

  tm_job_items_refresh (self->items, job);
  gtk_label_set_text (self->count_label, count);
  tm_access_show_page (self->stack, n > 0 ? "list" : "empty");
  propose_balloon (self);
  callout_changed_cb (self);
}

void
tm_job_features_set_document (TmJobFeatures *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_JOB_FEATURES (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_list_store_remove_all (self->items);
  g_set_object (&self->document, document);
  gtk_editable_set_text (self->balloon_entry, "");
  gtk_editable_set_text (self->callout_entry, "");
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

void
tm_job_features_focus_entry (TmJobFeatures *self)
{
  g_return_if_fail (TM_IS_JOB_FEATURES (self));

  gtk_widget_grab_focus (GTK_WIDGET (self->callout_entry));
}

void
tm_job_features_change (TmJobFeatures *self, const TmFeature *feature, TmFeatureRow row)
{
  guint at;

  g_return_if_fail (TM_IS_JOB_FEATURES (self));

  if (self->document == NULL || !g_ptr_array_find (tm_document_job (self->document)->features, feature, &at))
    return;
  scroll_to (self, at);
  tm_feature_dialog_present (GTK_WIDGET (self), self->document,
                             g_ptr_array_index (tm_document_job (self->document)->features, at), row);
}

static void
tm_job_features_dispose (GObject *object)
{
  TmJobFeatures *self = TM_JOB_FEATURES (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  if (self->view != NULL)
    gtk_column_view_set_model (self->view, NULL);
  g_clear_object (&self->selection);
  g_clear_object (&self->items);
  g_clear_pointer (&self->proposed, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), TM_TYPE_JOB_FEATURES);
  G_OBJECT_CLASS (tm_job_features_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, count_label);
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, balloon_entry);
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, callout_entry);
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, way_drop);
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, add_button);
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, reads_label);
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, stack);
  gtk_widget_class_bind_template_child (klass, TmJobFeatures, view);
  gtk_widget_class_bind_template_callback (klass, balloon_activate_cb);
  gtk_widget_class_bind_template_callback (klass, callout_changed_cb);
  gtk_widget_class_bind_template_callback (klass, add_cb);
  gtk_widget_class_bind_template_callback (klass, activate_cb);
}

static void
tm_job_features_class_init (TmJobFeaturesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_job_features_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/job-features.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "features.change", NULL, change_action);
  gtk_widget_class_install_action (widget_class, "features.remove", NULL, remove_action);
}

static void
tm_job_features_init (TmJobFeatures *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->items = g_list_store_new (TM_TYPE_JOB_ITEM);
  self->selection = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (self->items)));
  tm_name_entry (self->balloon_entry, _ ("Balloon number"));
  tm_name_entry (self->callout_entry, _ ("Requirement"));
  tm_access_name_drop_down (self->way_drop, _ ("Inside or outside"));
  tm_access_name_column_view (self->view, _ ("Features"));
  tm_job_add_columns (self->view);
  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (self->selection));
  /* Delete works while the list has the focus, not while something is typed. */
  tm_add_key (GTK_WIDGET (self->view), GDK_KEY_Delete, "features.remove");
}
