/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-register.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-calibration-dialog.h"
#include "app-dialog.h"
#include "app-edit.h"
#include "app-gauge-detail.h"
#include "app-gauge-dialog.h"
#include "app-gauge-item.h"
#include "app-gauge-take.h"
#include "app-gauge-words.h"
#include "app-recall-dialog.h"
#include "app-toast.h"

struct _TmGaugeRegister {
  GtkBox parent_instance;

  TmDocument *document;
  GListStore *items;
  GtkFilterListModel *filtered;
  GtkSingleSelection *selection;
  guint n_gauges;   /* that are shown */
  gboolean filling; /* the list is being made anew: what is chosen in between is not shown */

  GtkEditable *search;
  GtkLabel *count_label;
  GtkStack *stack;
  GtkColumnView *view;
  GtkWidget *first_button;
  GtkWidget *divider;
  TmGaugeDetail *detail;
};

G_DEFINE_FINAL_TYPE (TmGaugeRegister, tm_gauge_register, GTK_TYPE_BOX)

static const char *
find_chosen_tag (TmGaugeRegister *self)
{
  TmGaugeItem *item = gtk_single_selection_get_selected_item (self->selection);

  return item != NULL ? tm_gauge_item_tag (item) : "";
}

/* "12, 1 overdue" */
static void
show_count (TmGaugeRegister *self)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->items));
  guint n_overdue = 0;
  g_autofree char *text = NULL;

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (TmGaugeItem) item = g_list_model_get_item (G_LIST_MODEL (self->items), i);

      n_overdue += tm_gauge_item_due (item) == TM_DUE_OVERDUE ? 1 : 0;
    }
  text = n_overdue > 0
             ? g_strdup_printf (ngettext ("%u gauge, %u overdue", "%u gauges, %u overdue", n), n, n_overdue)
             : g_strdup_printf (ngettext ("%u gauge", "%u gauges", n), n);
  gtk_label_set_text (self->count_label, n > 0 ? text : "");
}

static void
show_stack (TmGaugeRegister *self)
{
  gboolean empty = g_list_model_get_n_items (G_LIST_MODEL (self->items)) == 0;
  gboolean nothing = g_list_model_get_n_items (G_LIST_MODEL (self->filtered)) == 0;

  tm_access_show_page (self->stack, empty ? "empty" : nothing ? "nothing" : "list");
  gtk_widget_set_visible (self->divider, !empty);
  gtk_widget_set_visible (GTK_WIDGET (self->detail), !empty);
}

static gboolean
matches_cb (gpointer item, gpointer data)
{
  TmGaugeRegister *self = data;

  return tm_gauge_item_matches (item, gtk_editable_get_text (self->search));
}

static void
search_cb (TmGaugeRegister *self)
{
  if (self->filtered == NULL)
    return;
  gtk_filter_changed (gtk_filter_list_model_get_filter (self->filtered), GTK_FILTER_CHANGE_DIFFERENT);
  show_stack (self);
}

static void
show_chosen (TmGaugeRegister *self)
{
  if (!self->filling)
    tm_gauge_detail_show (self->detail, self->document, find_chosen_tag (self));
}

/* A gauge that was just added is the one to look at. */
static char *
find_next_chosen (TmGaugeRegister *self)
{
  const TmJob *job = tm_document_job (self->document);
  guint n = job->gauges->len;

  if (self->n_gauges > 0 && n == self->n_gauges + 1)
    return g_strdup (((const TmGauge *)g_ptr_array_index (job->gauges, n - 1))->tag);
  return g_strdup (find_chosen_tag (self));
}

/* A row that is made anew takes the focus with it. */
static gboolean
has_focus (TmGaugeRegister *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self->view));
}

static void
definitions_changed_cb (TmGaugeRegister *self)
{
  const TmJob *job = tm_document_job (self->document);
  g_autofree char *chosen = find_next_chosen (self);
  g_autofree char *today = tm_today ();
  gboolean focus = has_focus (self);

  self->filling = TRUE;
  tm_gauge_items_refresh (self->items, job, today);
  tm_gauge_register_choose (self, chosen);
  self->filling = FALSE;
  self->n_gauges = job->gauges->len;
  show_chosen (self);
  show_count (self);
  show_stack (self);
  if (focus && !has_focus (self))
    gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

/* -------- What the buttons and keys do -------- */

static void
add_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (widget);

  if (self->document != NULL)
    tm_gauge_dialog_present (widget, self->document, NULL, NULL);
}

static void
change (TmGaugeRegister *self)
{
  const char *tag = find_chosen_tag (self);

  if (self->document != NULL && *tag != '\0')
    tm_gauge_dialog_present (GTK_WIDGET (self), self->document, tag, NULL);
}

static void
change_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  change (TM_GAUGE_REGISTER (widget));
}

static void
activate_cb (TmGaugeRegister *self, guint position)
{
  change (self);
}

static void
duplicate_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (widget);
  const char *tag = find_chosen_tag (self);

  if (self->document != NULL && *tag != '\0')
    tm_gauge_dialog_present (widget, self->document, NULL, tag);
}

/* What it has measured since it was last good is the next thing to know. */
static void
found_bad_cb (GtkWidget *parent, TmDocument *document, const char *tag, const char *date)
{
  tm_recall_dialog_present (parent, document, tag, date);
}

static void
calibrate_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (widget);
  const char *tag = find_chosen_tag (self);

  if (self->document != NULL && *tag != '\0')
    tm_calibration_dialog_present (widget, self->document, tag, found_bad_cb);
}

static void
check_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_gauge_history_focus_check (tm_gauge_detail_history (TM_GAUGE_REGISTER (widget)->detail));
}

static void
recall_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (widget);
  const char *tag = find_chosen_tag (self);

  if (self->document != NULL && *tag != '\0')
    tm_recall_dialog_present (widget, self->document, tag, "");
}

static void
take_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (widget);

  if (self->document != NULL)
    tm_gauge_take_present (widget, self->document);
}

static void
say_spread (TmGaugeRegister *self, const char *tag, guint n)
{
  g_autofree char *text
      = n > 0 ? g_strdup_printf (
            ngettext ("%s is now so in %u other job", "%s is now so in %u other jobs", n), tag, n)
              : g_strdup_printf (_ ("No other job has %s in another way"), tag);

  tm_window_toast (GTK_WIDGET (self), text);
}

static void
spread_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (widget);
  const char *tag = find_chosen_tag (self);
  g_autofree char *now = tm_now_utc ();
  g_autoptr (GError) error = NULL;
  guint n = 0;

  if (self->document == NULL || *tag == '\0')
    return;
  if (tm_book_spread_gauge (tm_document_book (self->document), tm_document_job (self->document), tag,
                            tm_bench_by (tm_document_bench (self->document)), now, &n, &error))
    say_spread (self, tag, n);
  else
    tm_window_show_error (widget, error->message);
}

static void
remove_gauge (TmGaugeRegister *self, const char *tag)
{
  g_autofree char *text = g_strdup_printf (_ ("Removed gauge %s"), tag);
  g_autoptr (GError) error = NULL;

  if (tm_edit_remove_gauge (self->document, tag, &error))
    tm_window_toast (GTK_WIDGET (self), text);
  else
    tm_window_show_error (GTK_WIDGET (self), error->message);
}

static void
remove_response_cb (AdwMessageDialog *dialog, const char *response, TmGaugeRegister *self)
{
  const char *tag = g_object_get_data (G_OBJECT (dialog), "tag");

  if (g_str_equal (response, "remove") && self->document != NULL)
    remove_gauge (self, tag);
}

/* A gauge with a history takes it along. */
static void
ask_to_remove (TmGaugeRegister *self, const char *tag)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  g_autofree char *title = g_strdup_printf (_ ("Remove gauge %s?"), tag);
  GtkWidget *dialog
      = adw_message_dialog_new (GTK_IS_WINDOW (root) ? GTK_WINDOW (root) : NULL, title,
                                _ ("Its calibrations, checks and measured pins go out of this job with it."));

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "keep", _ ("_Keep"), "remove", _ ("_Remove"),
                                    NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "remove",
                                              ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "keep");
  g_object_set_data_full (G_OBJECT (dialog), "tag", g_strdup (tag), g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (remove_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static gboolean
has_history (const TmJob *job, const char *tag)
{
  const GPtrArray *lists[] = { job->calibrations, job->checks, job->pin_sizes };

  /* Each struct of these lists begins with the tag. */
  for (guint l = 0; l < G_N_ELEMENTS (lists); l++)
    for (guint i = 0; i < lists[l]->len; i++)
      if (g_str_equal (*(const char **)g_ptr_array_index (lists[l], i), tag))
        return TRUE;
  return FALSE;
}

static void
remove_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (widget);
  g_autofree char *tag = g_strdup (find_chosen_tag (self));

  if (self->document == NULL || *tag == '\0')
    return;
  if (has_history (tm_document_job (self->document), tag))
    ask_to_remove (self, tag);
  else
    remove_gauge (self, tag);
}

void
tm_gauge_register_set_document (TmGaugeRegister *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_GAUGE_REGISTER (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_list_store_remove_all (self->items);
  self->n_gauges = 0;
  g_set_object (&self->document, document);
  gtk_editable_set_text (self->search, "");
  if (document == NULL)
    {
      show_chosen (self);
      return;
    }
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

void
tm_gauge_register_enter (TmGaugeRegister *self)
{
  g_return_if_fail (TM_IS_GAUGE_REGISTER (self));

  if (g_list_model_get_n_items (G_LIST_MODEL (self->items)) == 0)
    gtk_widget_grab_focus (self->first_button);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->view));
}

void
tm_gauge_register_choose (TmGaugeRegister *self, const char *tag)
{
  GListModel *model;

  g_return_if_fail (TM_IS_GAUGE_REGISTER (self));

  model = G_LIST_MODEL (self->selection);
  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (TmGaugeItem) item = g_list_model_get_item (model, i);

      if (g_str_equal (tm_gauge_item_tag (item), tag))
        {
          if (gtk_single_selection_get_selected (self->selection) != i)
            tm_access_scroll_column_view (self->view, i);
          gtk_single_selection_set_selected (self->selection, i);
          return;
        }
    }
}

static void
tm_gauge_register_dispose (GObject *object)
{
  TmGaugeRegister *self = TM_GAUGE_REGISTER (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  if (self->view != NULL)
    gtk_column_view_set_model (self->view, NULL);
  g_clear_object (&self->selection);
  g_clear_object (&self->filtered);
  g_clear_object (&self->items);
  gtk_widget_dispose_template (GTK_WIDGET (self), TM_TYPE_GAUGE_REGISTER);
  G_OBJECT_CLASS (tm_gauge_register_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *klass)
{
  gtk_widget_class_bind_template_child (klass, TmGaugeRegister, search);
  gtk_widget_class_bind_template_child (klass, TmGaugeRegister, count_label);
  gtk_widget_class_bind_template_child (klass, TmGaugeRegister, stack);
  gtk_widget_class_bind_template_child (klass, TmGaugeRegister, view);
  gtk_widget_class_bind_template_child (klass, TmGaugeRegister, first_button);
  gtk_widget_class_bind_template_child (klass, TmGaugeRegister, divider);
  gtk_widget_class_bind_template_child (klass, TmGaugeRegister, detail);
  gtk_widget_class_bind_template_callback (klass, search_cb);
  gtk_widget_class_bind_template_callback (klass, activate_cb);
}

static void
tm_gauge_register_class_init (TmGaugeRegisterClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_gauge_register_dispose;
  g_type_ensure (TM_TYPE_GAUGE_DETAIL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/gauge-register.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "register.add", NULL, add_action);
  gtk_widget_class_install_action (widget_class, "register.change", NULL, change_action);
  gtk_widget_class_install_action (widget_class, "register.duplicate", NULL, duplicate_action);
  gtk_widget_class_install_action (widget_class, "register.remove", NULL, remove_action);
  gtk_widget_class_install_action (widget_class, "register.calibrate", NULL, calibrate_action);
  gtk_widget_class_install_action (widget_class, "register.check", NULL, check_action);
  gtk_widget_class_install_action (widget_class, "register.recall", NULL, recall_action);
  gtk_widget_class_install_action (widget_class, "register.take", NULL, take_action);
  gtk_widget_class_install_action (widget_class, "register.spread", NULL, spread_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_i, GDK_CONTROL_MASK, "register.add", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_k, GDK_CONTROL_MASK, "register.calibrate", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_d, GDK_CONTROL_MASK, "register.check", NULL);
}

/* As a column's head says where one was clicked, else the overdue ones first. */
static GtkSorter *
new_sorter (GtkColumnView *view)
{
  GtkMultiSorter *sorter = gtk_multi_sorter_new ();

  gtk_multi_sorter_append (sorter, g_object_ref (gtk_column_view_get_sorter (view)));
  gtk_multi_sorter_append (sorter, GTK_SORTER (gtk_custom_sorter_new (tm_gauge_item_compare, NULL, NULL)));
  return GTK_SORTER (sorter);
}

static void
tm_gauge_register_init (TmGaugeRegister *self)
{
  GtkFilter *filter = GTK_FILTER (gtk_custom_filter_new (matches_cb, self, NULL));
  GtkSortListModel *sorted;

  gtk_widget_init_template (GTK_WIDGET (self));
  tm_gauge_add_columns (self->view);
  self->items = g_list_store_new (TM_TYPE_GAUGE_ITEM);
  self->filtered = gtk_filter_list_model_new (G_LIST_MODEL (g_object_ref (self->items)), filter);
  sorted = gtk_sort_list_model_new (G_LIST_MODEL (g_object_ref (self->filtered)), new_sorter (self->view));
  self->selection = gtk_single_selection_new (G_LIST_MODEL (sorted));
  tm_name_entry (self->search, _ ("Search the gauges"));
  tm_access_name_column_view (self->view, _ ("Gauges"));
  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (self->selection));
  g_signal_connect_swapped (self->selection, "notify::selected-item", G_CALLBACK (show_chosen), self);
  /* Delete works while the list has the focus, not while something is typed. */
  tm_add_key (GTK_WIDGET (self->view), GDK_KEY_Delete, "register.remove");
}

GtkWidget *
tm_gauge_register_new (void)
{
  return g_object_new (TM_TYPE_GAUGE_REGISTER, NULL);
}
