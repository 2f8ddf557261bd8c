/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-bench-actions: what the Bench does on a key, a button or a menu item.
 */

#include <glib/gi18n-lib.h>

#include "app-bench-page-private.h"
#include "app-entry-words.h"
#include "app-nonconformance-dialog.h"
#include "app-overdue-dialog.h"
#include "app-readings-dialog.h"
#include "app-reason-dialog.h"
#include "app-toast.h"

static void
say_recorded (TmBenchPage *self)
{
  const TmReading *reading = tm_bench_last (tm_document_bench (self->document));
  if (reading == NULL)
    return;
  g_auto (TmJudgement) judgement = { 0 };
  tm_judge (tm_document_job (self->document), reading->row.piece, reading->row.feature, reading->place,
            &judgement);
  g_autofree char *text = tm_words_recorded (reading, &judgement);
  tm_window_clear_error (GTK_WIDGET (self));
  tm_window_toast (GTK_WIDGET (self), text);
  tm_bench_page_say_unlike (self, reading);
}

typedef struct {
  TmBenchPage *page;
  void (*go_on) (TmBenchPage *self);
} Overdue;

static void
free_overdue (gpointer data, GClosure *closure)
{
  Overdue *overdue = data;
  g_object_unref (overdue->page);
  g_free (overdue);
}

static void
stated_cb (TmOverdueDialog *dialog, const char *reason, gpointer data)
{
  Overdue *overdue = data;
  if (overdue->page->document == NULL)
    return;
  tm_bench_set_overdue_reason (tm_document_bench (overdue->page->document), reason);
  overdue->go_on (overdue->page);
}

void
tm_bench_page_ask_overdue (TmBenchPage *self, const char *about, void (*go_on) (TmBenchPage *self))
{
  GtkWidget *dialog = tm_overdue_dialog_present (GTK_WIDGET (self), about);
  Overdue *overdue = g_new (Overdue, 1);
  *overdue = (Overdue) { g_object_ref (self), go_on };
  g_signal_connect_data (dialog, "stated", G_CALLBACK (stated_cb), overdue, free_overdue, 0);
}

void
tm_bench_page_submit (TmBenchPage *self)
{
  g_autoptr (GError) error = NULL;
  const char *dx = NULL;
  const char *dy = NULL;
  TmSubmit submit;
  if (self->planning)
    {
      tm_bench_page_submit_cut (self);
      return;
    }
  if (tm_reading_entry_holds_pin (self->entry))
    {
      tm_bench_page_submit_pin (self, tm_bench_text (tm_document_bench (self->document)));
      return;
    }
  if (tm_reading_entry_offsets (self->entry, &dx, &dy))
    {
      /* The entries may be emptied while the session moves on. */
      g_autofree char *dx_text = g_strdup (dx);
      g_autofree char *dy_text = g_strdup (dy);
      submit = tm_document_submit_offsets (self->document, dx_text, dy_text, &error);
    }
  else
    submit = tm_document_submit (self->document, &error);
  if (g_error_matches (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE))
    tm_bench_page_ask_overdue (self, error->message, tm_bench_page_submit);
  else if (submit == TM_SUBMIT_FAILED && error != NULL)
    tm_window_show_error (GTK_WIDGET (self), error->message);
  if (submit != TM_SUBMIT_RECORDED)
    {
      tm_reading_entry_select (self->entry);
      return;
    }
  tm_reading_entry_clear_offsets (self->entry);
  say_recorded (self);
  tm_reading_entry_focus (self->entry);
}

static void
record_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (self->has_judgement && !tm_bench_page_is_fitting (self))
    tm_bench_page_submit (self);
}

static void
plan_cut_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (self->has_judgement && !tm_bench_page_is_fitting (self))
    tm_bench_page_toggle_cut (self);
}

static void
pin_trial_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (!self->has_judgement || tm_bench_page_is_fitting (self))
    return;
  tm_bench_page_set_planning (self, FALSE);
  tm_bench_page_toggle_pins (self);
}

static void
temperatures_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (!self->has_judgement || tm_bench_page_is_fitting (self))
    return;
  tm_bench_page_set_planning (self, FALSE);
  tm_verdict_panel_open_temperatures (self->panel);
}

static void
readings_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (self->has_judgement)
    tm_readings_dialog_present (widget, self->document);
}

static void
nonconformance_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (self->has_judgement)
    tm_nonconformance_dialog_present (widget, self->document);
}

static void
withdraw_last_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  TmBenchFact last = { NULL, NULL, NULL };
  if (self->document != NULL)
    last = tm_bench_newest (tm_document_bench (self->document));
  if (last.reading != NULL)
    tm_reason_dialog_present_withdraw (widget, self->document, last.reading);
  else if (last.trial != NULL)
    tm_reason_dialog_present_withdraw_pin (widget, self->document, last.trial);
  else if (last.cut != NULL)
    tm_reason_dialog_present_withdraw_cut (widget, self->document, last.cut);
  else
    tm_window_toast (widget, _ ("Nothing recorded since the job was opened. Older readings: Readings…"));
}

static void
fit_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  tm_bench_page_toggle_fit (TM_BENCH_PAGE (widget));
}

static void
drawing_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (self->has_judgement)
    tm_bench_page_toggle_drawing (self);
}

static void
step_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  if (!self->has_judgement)
    return;
  TmBench *bench = tm_document_bench (self->document);
  gboolean moved = g_str_equal (name, "bench.next") ? tm_bench_go_next (bench) : tm_bench_go_previous (bench);
  if (moved)
    g_signal_emit_by_name (self->document, "moved");
}

static void
toggle_order_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autofree char *order = NULL;
  g_object_get (widget, "order", &order, NULL);
  g_object_set (widget, "order", g_str_equal (order, "piece-first") ? "feature-first" : "piece-first", NULL);
}

void
tm_bench_page_install_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "bench.record", NULL, record_action);
  gtk_widget_class_install_action (klass, "bench.plan-cut", NULL, plan_cut_action);
  gtk_widget_class_install_action (klass, "bench.pin-trial", NULL, pin_trial_action);
  gtk_widget_class_install_action (klass, "bench.temperatures", NULL, temperatures_action);
  gtk_widget_class_install_action (klass, "bench.readings", NULL, readings_action);
  gtk_widget_class_install_action (klass, "bench.nonconformance", NULL, nonconformance_action);
  gtk_widget_class_install_action (klass, "bench.withdraw-last", NULL, withdraw_last_action);
  gtk_widget_class_install_action (klass, "bench.fit", NULL, fit_action);
  gtk_widget_class_install_action (klass, "bench.drawing", NULL, drawing_action);
  gtk_widget_class_install_action (klass, "bench.next", NULL, step_action);
  gtk_widget_class_install_action (klass, "bench.previous", NULL, step_action);
  gtk_widget_class_install_action (klass, "bench.toggle-order", NULL, toggle_order_action);
  gtk_widget_class_install_property_action (klass, "bench.order", "order");
  gtk_widget_class_install_property_action (klass, "bench.by", "by");
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F2, 0, "bench.pin-trial", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F3, 0, "bench.temperatures", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F4, 0, "bench.plan-cut", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F6, 0, "bench.fit", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_F7, 0, "bench.drawing", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_l, GDK_CONTROL_MASK, "bench.readings", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_k, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "bench.nonconformance", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_o, GDK_CONTROL_MASK | GDK_SHIFT_MASK,
                                       "bench.toggle-order", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Page_Down, 0, "bench.next", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Page_Up, 0, "bench.previous", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Down, GDK_ALT_MASK, "bench.next", NULL);
  gtk_widget_class_add_binding_action (klass, GDK_KEY_Up, GDK_ALT_MASK, "bench.previous", NULL);
}

/* While the entry holds text the key is its own, to undo typing; after that it takes back what was
 * recorded. */
static gboolean
undo_cb (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  gboolean typed
      = self->planning ? tm_cut_bar_has_text (self->cut_bar) : tm_reading_entry_has_text (self->entry);
  if (!self->has_judgement || tm_bench_page_is_fitting (self) || typed)
    return FALSE;
  return gtk_widget_activate_action (widget, "bench.withdraw-last", NULL);
}

/* Digits typed anywhere on the page are a reading: a gauge that types does not know where the focus
 * is. */
static gboolean
key_pressed_cb (GtkEventControllerKey *controller, guint keyval, guint keycode, GdkModifierType state,
                TmBenchPage *self)
{
  gunichar typed = gdk_keyval_to_unicode (keyval);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  if (!self->has_judgement || tm_bench_page_is_fitting (self) || !g_unichar_isgraph (typed)
      || GTK_IS_TEXT (focus) || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0)
    return GDK_EVENT_PROPAGATE;
  tm_bench_page_focus (self);
  focus = gtk_root_get_focus (root);
  return focus != NULL && gtk_event_controller_key_forward (controller, focus);
}

void
tm_bench_page_add_controllers (TmBenchPage *self)
{
  GtkEventController *undo = gtk_shortcut_controller_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (undo, GTK_PHASE_CAPTURE);
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (undo), gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_z, GDK_CONTROL_MASK),
                                                        gtk_callback_action_new (undo_cb, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), undo);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

/* The people of the job may change while it is open, so the menu is made when it is asked for. */
static void
fill_menu_cb (GtkMenuButton *button, gpointer data)
{
  TmBenchPage *self = data;
  /* The window may have set them since. */
  g_object_notify (G_OBJECT (self), "order");
  g_object_notify (G_OBJECT (self), "by");
  g_autoptr (GMenu) menu = g_menu_new ();
  g_autoptr (GMenu) order = g_menu_new ();
  g_autoptr (GMenu) people = g_menu_new ();
  g_autoptr (GMenu) last = g_menu_new ();
  g_menu_append (order, _ ("_Piece first"), "bench.order::piece-first");
  g_menu_append (order, _ ("_Feature first"), "bench.order::feature-first");
  g_menu_append_section (menu, _ ("Measuring order"), G_MENU_MODEL (order));
  const TmJob *job = self->document != NULL ? tm_document_job (self->document) : NULL;
  for (guint i = 0; job != NULL && i < job->people->len; i++)
    {
      const TmPerson *person = g_ptr_array_index (job->people, i);
      g_autoptr (GMenuItem) item = g_menu_item_new (NULL, NULL);
      g_autofree char *label = *person->name != '\0'
                                   ? g_strdup_printf ("%s, %s", person->initials, person->name)
                                   : g_strdup (person->initials);
      g_menu_item_set_label (item, label);
      g_menu_item_set_action_and_target (item, "bench.by", "s", person->initials);
      g_menu_append_item (people, item);
    }
  if (g_menu_model_get_n_items (G_MENU_MODEL (people)) > 0)
    g_menu_append_section (menu, _ ("Who measures"), G_MENU_MODEL (people));
  g_menu_append (last, _ ("_Withdraw what was recorded last…"), "bench.withdraw-last");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (last));
  gtk_menu_button_set_menu_model (button, G_MENU_MODEL (menu));
}

/* A reading may be recorded by nobody; where there are people to choose from, the button asks. */
void
tm_bench_page_show_person (TmBenchPage *self)
{
  GtkMenuButton *menu = GTK_MENU_BUTTON (self->menu);
  const char *initials = tm_bench_by (tm_document_bench (self->document));
  gboolean known = tm_document_job (self->document)->people->len > 0;
  gboolean asks = known && *initials == '\0';
  /* Translators: who measures. */
  g_autofree char *label = asks ? g_strdup (_ ("Who measures?")) : g_strdup_printf (_ ("by %s"), initials);
  if (!known && *initials == '\0')
    {
      if (g_strcmp0 (gtk_menu_button_get_icon_name (menu), "view-more-symbolic") != 0)
        gtk_menu_button_set_icon_name (menu, "view-more-symbolic");
    }
  else if (g_strcmp0 (gtk_menu_button_get_label (menu), label) != 0)
    gtk_menu_button_set_label (menu, label);
  if (asks)
    gtk_widget_add_css_class (self->menu, "tm-asks");
  else
    gtk_widget_remove_css_class (self->menu, "tm-asks");
  tm_feature_list_set_titled (self->list, !asks);
}

GtkWidget *
tm_bench_page_build_menu (TmBenchPage *self)
{
  GtkWidget *button = gtk_menu_button_new ();
  gtk_menu_button_set_icon_name (GTK_MENU_BUTTON (button), "view-more-symbolic");
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (button), fill_menu_cb, self, NULL);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button,
                               _ ("Measuring order and who measures (Ctrl+Shift+O changes the order)"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Measuring"),
                                  -1);
  return button;
}
