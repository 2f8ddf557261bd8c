/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-pin-bar.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-pin-words.h"

struct _TmPinBar {
  GtkBox parent_instance;

  TmDocument *document; /* borrowed */
  GtkWidget *sets;      /* GtkDropDown */
  GPtrArray *tags;      /* char *: by position; "" = whichever holds the pin */
  gboolean filling;
};

enum { SIGNAL_TRIED, SIGNAL_SET_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmPinBar, tm_pin_bar, GTK_TYPE_BOX)

static void
set_selected_cb (GtkDropDown *sets, GParamSpec *pspec, TmPinBar *self)
{
  guint chosen = gtk_drop_down_get_selected (sets);
  if (self->filling || self->document == NULL || chosen >= self->tags->len)
    return;
  tm_bench_set_pin_set (tm_document_bench (self->document), g_ptr_array_index (self->tags, chosen));
  g_signal_emit (self, signals[SIGNAL_SET_CHOSEN], 0);
}

static void
went_clicked_cb (GtkButton *button, TmPinBar *self)
{
  g_signal_emit (self, signals[SIGNAL_TRIED], 0, TRUE);
}

static void
stopped_clicked_cb (GtkButton *button, TmPinBar *self)
{
  g_signal_emit (self, signals[SIGNAL_TRIED], 0, FALSE);
}

static void
tm_pin_bar_finalize (GObject *object)
{
  TmPinBar *self = TM_PIN_BAR (object);
  g_clear_pointer (&self->tags, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_pin_bar_parent_class)->finalize (object);
}

static void
tm_pin_bar_class_init (TmPinBarClass *klass)
{
  GType type = G_TYPE_FROM_CLASS (klass);
  G_OBJECT_CLASS (klass)->finalize = tm_pin_bar_finalize;
  signals[SIGNAL_TRIED]
      = g_signal_new ("tried", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_BOOLEAN);
  signals[SIGNAL_SET_CHOSEN]
      = g_signal_new ("set-chosen", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
add_button (TmPinBar *self, const char *label, const char *name, GCallback clicked)
{
  GtkWidget *button = tm_button_new (label);
  gtk_widget_set_focus_on_click (button, FALSE);
  gtk_widget_add_css_class (button, "tm-outcome");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (self), button);
}

static void
tm_pin_bar_init (TmPinBar *self)
{
  self->tags = g_ptr_array_new_with_free_func (g_free);
  self->sets = gtk_drop_down_new (NULL, NULL);
  gtk_box_set_spacing (GTK_BOX (self), 8);
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-pin-bar");
  tm_access_name_drop_down (GTK_DROP_DOWN (self->sets), _ ("Pin set"));
  gtk_widget_set_tooltip_text (self->sets, _ ("The set that the pin is from"));
  gtk_widget_set_hexpand (self->sets, TRUE);
  gtk_box_append (GTK_BOX (self), self->sets);
  add_button (self, _ ("_Went  +"), _ ("Went"), G_CALLBACK (went_clicked_cb));
  add_button (self, _ ("_Did not go  −"), _ ("Did not go"), G_CALLBACK (stopped_clicked_cb));
  g_signal_connect (self->sets, "notify::selected", G_CALLBACK (set_selected_cb), self);
}

GtkWidget *
tm_pin_bar_new (void)
{
  return g_object_new (TM_TYPE_PIN_BAR, NULL);
}

static void
add_set (TmPinBar *self, GtkStringList *list, const char *tag, const char *shown)
{
  gtk_string_list_append (list, shown);
  g_ptr_array_add (self->tags, g_strdup (tag));
}

void
tm_pin_bar_show (TmPinBar *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_PIN_BAR (self));

  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  const TmJob *job = tm_document_job (document);
  guint chosen = 0;
  self->document = document;
  self->filling = TRUE;
  g_ptr_array_set_size (self->tags, 0);
  add_set (self, list, "", _ ("The finest set that holds the pin"));
  for (guint i = 0; i < job->gauges->len; i++)
    {
      const TmGauge *set = g_ptr_array_index (job->gauges, i);
      g_autofree char *shown = tm_words_pin_set (set);
      if (tm_gauge_is_pins (set))
        add_set (self, list, set->tag, shown);
    }
  if (!g_ptr_array_find_with_equal_func (self->tags, tm_bench_pin_set (tm_document_bench (document)),
                                         g_str_equal, &chosen))
    chosen = 0;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->sets), G_LIST_MODEL (list));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->sets), chosen);
  self->filling = FALSE;
}

GtkWidget *
tm_pin_bar_sets (TmPinBar *self)
{
  g_return_val_if_fail (TM_IS_PIN_BAR (self), NULL);

  return self->sets;
}
