/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-station-chips.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-feature-item.h"
#include "app-feature-words.h"

/* More places than this stand in a drop-down list. */
#define MAX_PLACE_CHIPS 12

struct _TmStationChips {
  GtkBox parent_instance;

  GtkWidget *places;   /* GtkFlowBox */
  GtkWidget *place_of; /* GtkDropDown, for many places */
  GtkWidget *stations; /* GtkFlowBox */
  GPtrArray *place_chips;
  GPtrArray *station_chips;
  const TmFeature *feature; /* shown now */
  guint n_places;
  guint n_stations;
  gboolean set_aside;
  gboolean filling;
};

enum { SIGNAL_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (TmStationChips, tm_station_chips, GTK_TYPE_BOX)

static guint
find_active (const GPtrArray *chips)
{
  for (guint i = 0; i < chips->len; i++)
    if (gtk_toggle_button_get_active (g_ptr_array_index (chips, i)))
      return i;
  return 0;
}

static guint
find_place (TmStationChips *self)
{
  if (self->n_places > MAX_PLACE_CHIPS)
    return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->place_of)) + 1;
  return self->place_chips->len > 0 ? find_active (self->place_chips) + 1 : 1;
}

static void
choose (TmStationChips *self)
{
  const char *station = "";
  if (self->filling || self->feature == NULL)
    return;
  if (self->station_chips->len > 0)
    station = g_ptr_array_index (self->feature->stations, find_active (self->station_chips));
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, find_place (self), station);
}

static void
toggled_cb (GtkToggleButton *chip, TmStationChips *self)
{
  if (gtk_toggle_button_get_active (chip))
    choose (self);
}

static void
place_selected_cb (GtkDropDown *drop_down, GParamSpec *pspec, TmStationChips *self)
{
  choose (self);
}

static void
tm_station_chips_finalize (GObject *object)
{
  TmStationChips *self = TM_STATION_CHIPS (object);
  g_clear_pointer (&self->place_chips, g_ptr_array_unref);
  g_clear_pointer (&self->station_chips, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_station_chips_parent_class)->finalize (object);
}

static void
tm_station_chips_class_init (TmStationChipsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = tm_station_chips_finalize;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 2, G_TYPE_UINT, G_TYPE_POINTER);
}

static GtkWidget *
build_flow (const char *name)
{
  GtkWidget *flow = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (flow), GTK_SELECTION_NONE);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (flow), TRUE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (flow), MAX_PLACE_CHIPS);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (flow), 8);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (flow), 6);
  gtk_widget_set_halign (flow, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (flow), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return flow;
}

static void
tm_station_chips_init (TmStationChips *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 8);
  self->place_chips = g_ptr_array_new ();
  self->station_chips = g_ptr_array_new ();
  self->places = build_flow (_ ("Places"));
  self->stations = build_flow (_ ("Stations"));
  self->place_of = gtk_drop_down_new (NULL, NULL);
  gtk_widget_set_halign (self->place_of, GTK_ALIGN_START);
  tm_access_name_drop_down (GTK_DROP_DOWN (self->place_of), _ ("Place"));
  gtk_box_append (GTK_BOX (self), self->places);
  gtk_box_append (GTK_BOX (self), self->place_of);
  gtk_box_append (GTK_BOX (self), self->stations);
  g_signal_connect (self->place_of, "notify::selected", G_CALLBACK (place_selected_cb), self);
}

GtkWidget *
tm_station_chips_new (void)
{
  return g_object_new (TM_TYPE_STATION_CHIPS, NULL);
}

static void
empty_flow (GtkWidget *flow, GPtrArray *chips)
{
  GtkWidget *child;
  g_ptr_array_set_size (chips, 0);
  while ((child = gtk_widget_get_first_child (flow)) != NULL)
    gtk_flow_box_remove (GTK_FLOW_BOX (flow), child);
}

static void
add_chip (TmStationChips *self, GtkWidget *flow, GPtrArray *chips)
{
  GtkWidget *chip = gtk_toggle_button_new ();
  GtkWidget *child = gtk_flow_box_child_new ();
  gtk_widget_add_css_class (chip, "tm-chip");
  if (chips->len > 0)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (chip), g_ptr_array_index (chips, 0));
  g_signal_connect (chip, "toggled", G_CALLBACK (toggled_cb), self);
  /* The chip takes the focus, not the cell around it. */
  gtk_widget_set_focusable (child, FALSE);
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), chip);
  gtk_flow_box_append (GTK_FLOW_BOX (flow), child);
  g_ptr_array_add (chips, chip);
}

static void
fill_place_list (TmStationChips *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);
  for (guint place = 1; place <= self->n_places; place++)
    {
      g_autofree char *text = g_strdup_printf (_ ("place %u of %u"), place, self->n_places);
      gtk_string_list_append (list, text);
    }
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->place_of), G_LIST_MODEL (list));
}

static void
show_which (TmStationChips *self)
{
  gtk_widget_set_visible (self->places, self->place_chips->len > 0);
  gtk_widget_set_visible (self->place_of, self->n_places > MAX_PLACE_CHIPS);
  gtk_widget_set_visible (self->stations, self->n_stations > 0);
  gtk_widget_set_visible (GTK_WIDGET (self),
                          !self->set_aside && (self->n_places > 1 || self->n_stations > 0));
}

/* From feature to feature the chips stay where there are as many: a chip made anew is styled and laid out
 * anew. */
static void
suit_feature (TmStationChips *self, const TmFeature *feature)
{
  guint n_places = feature != NULL ? feature->places : 1;
  guint n_stations = feature != NULL ? feature->stations->len : 0;
  self->feature = feature;
  if (n_places == self->n_places && n_stations == self->n_stations)
    return;
  self->n_places = n_places;
  self->n_stations = n_stations;
  empty_flow (self->places, self->place_chips);
  empty_flow (self->stations, self->station_chips);
  gboolean many = self->n_places > MAX_PLACE_CHIPS;
  for (guint i = 0; !many && self->n_places > 1 && i < self->n_places; i++)
    add_chip (self, self->places, self->place_chips);
  for (guint i = 0; i < self->n_stations; i++)
    add_chip (self, self->stations, self->station_chips);
  if (many)
    fill_place_list (self);
  show_which (self);
}

static gboolean
is_read (const GPtrArray *readings, const char *station)
{
  for (guint i = 0; readings != NULL && i < readings->len; i++)
    {
      const TmReading *reading = g_ptr_array_index (readings, i);
      if (tm_row_counts (&reading->row) && (station == NULL || g_str_equal (reading->station, station)))
        return TRUE;
    }
  return FALSE;
}

static void
show_chip (GtkWidget *chip, const char *text, gboolean read, gboolean active)
{
  g_autofree char *label = read ? g_strdup_printf ("✓ %s", text) : g_strdup (text);
  g_autofree char *spoken = read ? g_strdup_printf (_ ("%s, read"), text) : g_strdup (text);
  if (g_strcmp0 (gtk_button_get_label (GTK_BUTTON (chip)), label) != 0)
    gtk_button_set_label (GTK_BUTTON (chip), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (chip), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (chip), active);
}

static void
show_places (TmStationChips *self, const TmJob *job, const TmSpot *spot)
{
  if (self->n_places > MAX_PLACE_CHIPS && spot->place > 0)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->place_of), spot->place - 1);
  for (guint i = 0; i < self->place_chips->len; i++)
    {
      g_autofree char *text = g_strdup_printf (_ ("place %u"), i + 1);
      const GPtrArray *readings
          = spot->piece != NULL ? tm_job_readings_at (job, spot->piece, spot->feature, i + 1) : NULL;
      show_chip (g_ptr_array_index (self->place_chips, i), text, is_read (readings, NULL),
                 spot->place == i + 1);
    }
}

static void
show_stations (TmStationChips *self, const TmJob *job, const TmSpot *spot)
{
  const GPtrArray *readings
      = spot->piece != NULL ? tm_job_readings_at (job, spot->piece, spot->feature, spot->place) : NULL;
  for (guint i = 0; i < self->station_chips->len; i++)
    {
      const char *station = g_ptr_array_index (spot->feature->stations, i);
      g_autofree char *text = tm_words_station (station, spot->feature->unit);
      show_chip (g_ptr_array_index (self->station_chips, i), text, is_read (readings, station),
                 g_str_equal (spot->station, station));
    }
}

void
tm_station_chips_show (TmStationChips *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_STATION_CHIPS (self));

  static const TmSpot nowhere = { .station = "" };
  const TmSpot *spot = document != NULL ? tm_bench_spot (tm_document_bench (document)) : &nowhere;
  self->filling = TRUE;
  suit_feature (self, spot->feature);
  if (spot->feature != NULL)
    {
      show_places (self, tm_document_job (document), spot);
      show_stations (self, tm_document_job (document), spot);
    }
  self->filling = FALSE;
}

void
tm_station_chips_set_offered (TmStationChips *self, gboolean offered)
{
  g_return_if_fail (TM_IS_STATION_CHIPS (self));

  self->set_aside = !offered;
  show_which (self);
}

GtkWidget *
tm_station_chips_place (TmStationChips *self, guint place)
{
  g_return_val_if_fail (TM_IS_STATION_CHIPS (self), NULL);

  return place >= 1 && place <= self->place_chips->len ? g_ptr_array_index (self->place_chips, place - 1)
                                                       : NULL;
}

GtkWidget *
tm_station_chips_station (TmStationChips *self, guint index)
{
  g_return_val_if_fail (TM_IS_STATION_CHIPS (self), NULL);

  return index < self->station_chips->len ? g_ptr_array_index (self->station_chips, index) : NULL;
}
