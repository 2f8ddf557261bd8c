/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-temperatures.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-dialog.h"
#include "core-temperature.h"

struct _TmTemperatures {
  GtkBox parent_instance;

  TmDocument *document; /* borrowed */
  GtkWidget *button;    /* GtkMenuButton */
  GtkWidget *popover;
  GtkWidget *part; /* GtkEntry, in °C */
  GtkWidget *gauge;
  GtkLabel *says;
};

enum { SIGNAL_CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmTemperatures, tm_temperatures, GTK_TYPE_BOX)

static const char *
get_text (GtkWidget *entry)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry));
}

/* FALSE, and says why, for a text that is neither empty nor a temperature. */
static gboolean
read_temperature (TmTemperatures *self, GtkWidget *entry, TmQuantity *out)
{
  g_autofree char *text = g_strstrip (g_strdup (get_text (entry)));
  *out = TM_QUANTITY_NONE;
  if (*text == '\0')
    return TRUE;
  TmReadStatus status = tm_quantity_read (text, TM_UNIT_CELSIUS, out);
  if (status == TM_READ_OK && tm_temperature_may_be (out))
    return TRUE;
  g_autofree char *why
      = status == TM_READ_OK ? g_strdup_printf (
            _ ("“%s” is not between %d and %d °C: write degrees Celsius (72 °F is 22.2 °C)"), text,
            TM_TEMPERATURE_LEAST, TM_TEMPERATURE_MOST)
                             : g_strdup_printf (_ ("“%s”: %s"), text,
                                                g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status)));
  gtk_label_set_text (self->says, why);
  gtk_widget_grab_focus (entry);
  return FALSE;
}

static void
say_use (TmTemperatures *self)
{
  gtk_label_set_text (self->says, _ ("They go with each reading from now on. With both, what is read is "
                                     "brought to 20 °C and judged so; the reading itself stays as it is."));
}

static void
keep (TmTemperatures *self, const TmQuantity *part, const TmQuantity *gauge)
{
  tm_bench_set_temperatures (tm_document_bench (self->document), part, gauge);
  gtk_popover_popdown (GTK_POPOVER (self->popover));
  tm_temperatures_show (self, self->document);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
set_cb (GtkWidget *widget, TmTemperatures *self)
{
  TmQuantity part, gauge;
  if (self->document == NULL)
    return;
  if (widget == self->part && *get_text (self->gauge) == '\0')
    {
      gtk_widget_grab_focus (self->gauge);
      return;
    }
  if (read_temperature (self, self->part, &part) && read_temperature (self, self->gauge, &gauge))
    keep (self, &part, &gauge);
}

static void
clear_cb (GtkButton *button, TmTemperatures *self)
{
  if (self->document != NULL)
    keep (self, NULL, NULL);
}

static void
fill_entry (GtkWidget *entry, const TmQuantity *quantity)
{
  g_autofree char *text = tm_quantity_format (quantity);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
}

static void
opened_cb (GtkWidget *popover, TmTemperatures *self)
{
  TmQuantity part, gauge;
  if (self->document == NULL)
    return;
  tm_bench_temperatures (tm_document_bench (self->document), &part, &gauge);
  fill_entry (self->part, &part);
  fill_entry (self->gauge, &gauge);
  say_use (self);
  gtk_widget_grab_focus (self->part);
}

static void
tm_temperatures_class_init (TmTemperaturesClass *klass)
{
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
}

static GtkWidget *
add_entry (TmTemperatures *self, GtkGrid *grid, int row, const char *title)
{
  GtkWidget *label = gtk_label_new (title);
  GtkWidget *entry = gtk_entry_new ();
  GtkWidget *unit = gtk_label_new ("°C");
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 7);
  gtk_entry_set_input_hints (GTK_ENTRY (entry), GTK_INPUT_HINT_NO_SPELLCHECK | GTK_INPUT_HINT_NO_EMOJI);
  tm_name_entry (GTK_EDITABLE (entry), title);
  g_signal_connect (entry, "activate", G_CALLBACK (set_cb), self);
  gtk_grid_attach (grid, label, 0, row, 1, 1);
  gtk_grid_attach (grid, entry, 1, row, 1, 1);
  gtk_grid_attach (grid, unit, 2, row, 1, 1);
  return entry;
}

static GtkWidget *
build_buttons (TmTemperatures *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *clear = tm_button_new (_ ("_Not taken"));
  GtkWidget *set = tm_button_new (_ ("_Use from now on"));
  gtk_widget_add_css_class (set, "suggested-action");
  gtk_widget_set_hexpand (clear, TRUE);
  gtk_widget_set_hexpand (set, TRUE);
  g_signal_connect (clear, "clicked", G_CALLBACK (clear_cb), self);
  g_signal_connect (set, "clicked", G_CALLBACK (set_cb), self);
  gtk_box_append (GTK_BOX (box), clear);
  gtk_box_append (GTK_BOX (box), set);
  return box;
}

static GtkWidget *
build_popover (TmTemperatures *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *grid = gtk_grid_new ();
  self->popover = gtk_popover_new ();
  self->says = GTK_LABEL (gtk_label_new (NULL));
  gtk_grid_set_row_spacing (GTK_GRID (grid), 8);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 8);
  self->part = add_entry (self, GTK_GRID (grid), 0, _ ("Temperature of the part"));
  self->gauge = add_entry (self, GTK_GRID (grid), 1, _ ("Temperature of the gauge"));
  gtk_label_set_wrap (self->says, TRUE);
  gtk_label_set_xalign (self->says, 0);
  gtk_label_set_max_width_chars (self->says, 34);
  gtk_widget_add_css_class (GTK_WIDGET (self->says), "dim-label");
  gtk_widget_add_css_class (box, "tm-popover");
  gtk_box_append (GTK_BOX (box), grid);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->says));
  gtk_box_append (GTK_BOX (box), build_buttons (self));
  gtk_popover_set_child (GTK_POPOVER (self->popover), box);
  tm_name_widget (self->popover, _ ("Temperatures"));
  g_signal_connect (self->popover, "map", G_CALLBACK (opened_cb), self);
  return self->popover;
}

static void
tm_temperatures_init (TmTemperatures *self)
{
  self->button = gtk_menu_button_new ();
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->button), build_popover (self));
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->button), _ ("Temperatures…"));
  gtk_widget_set_tooltip_text (self->button, _ ("Temperatures of part and gauge (F3)"));
  gtk_widget_set_hexpand (self->button, TRUE);
  gtk_widget_add_css_class (self->button, "tm-temperatures");
  gtk_box_append (GTK_BOX (self), self->button);
}

GtkWidget *
tm_temperatures_new (void)
{
  return g_object_new (TM_TYPE_TEMPERATURES, NULL);
}

/* "24.5" or, not taken, "–". */
static char *
format_taken (const TmQuantity *quantity)
{
  return quantity->given ? tm_quantity_format (quantity) : g_strdup ("–");
}

/* A menu button builds its content anew for each label, the same one too: that is felt at every key. */
static void
set_label (GtkMenuButton *button, const char *label)
{
  if (g_strcmp0 (gtk_menu_button_get_label (button), label) != 0)
    gtk_menu_button_set_label (button, label);
}

void
tm_temperatures_show (TmTemperatures *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_TEMPERATURES (self));

  TmQuantity part, gauge;
  self->document = document;
  if (document == NULL)
    return;
  tm_bench_temperatures (tm_document_bench (document), &part, &gauge);
  gboolean any = part.given || gauge.given;
  g_autofree char *part_text = format_taken (&part);
  g_autofree char *gauge_text = format_taken (&gauge);
  g_autofree char *shown = any ? g_strdup_printf ("%s / %s °C", part_text, gauge_text) : NULL;
  /* Translators: degrees Celsius of the part, then of the gauge. */
  g_autofree char *name
      = any ? g_strdup_printf (_ ("Temperatures: part %s, gauge %s °C"), part_text, gauge_text) : NULL;
  set_label (GTK_MENU_BUTTON (self->button), any ? shown : _ ("Temperatures…"));
  tm_name_widget (self->button, any ? name : _ ("Temperatures…"));
  if (any)
    gtk_widget_add_css_class (self->button, "tm-in-force");
  else
    gtk_widget_remove_css_class (self->button, "tm-in-force");
}

void
tm_temperatures_open (TmTemperatures *self)
{
  g_return_if_fail (TM_IS_TEMPERATURES (self));

  gtk_menu_button_popup (GTK_MENU_BUTTON (self->button));
}
