/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-bench-page-private.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-button.h"
#include "app-column.h"
#include "app-feature-words.h"
#include "app-settings.h"
#include "app-tip.h"
#include "app-toast.h"
#include "app-words.h"
#include "plot-band.h"

/* Callouts up to this long stand in the largest type. */
#define LARGE_CALLOUT_CHARS 14
#define MAX_CALLOUT_CHARS   26

enum { PROP_0, PROP_ORDER, PROP_BY, N_PROPERTIES };

static GParamSpec *properties[N_PROPERTIES];

G_DEFINE_FINAL_TYPE (TmBenchPage, tm_bench_page, GTK_TYPE_BOX)

static TmBench *
get_bench (TmBenchPage *self)
{
  return tm_document_bench (self->document);
}

static void
drop_judgement (TmBenchPage *self)
{
  if (self->has_judgement)
    tm_judgement_clear (&self->judgement);
  self->has_judgement = FALSE;
}

static void
judge_spot (TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (get_bench (self));
  drop_judgement (self);
  if (spot->piece == NULL || spot->feature == NULL)
    return;
  tm_bench_judge (get_bench (self), &self->judgement);
  self->has_judgement = TRUE;
  tm_pictures_show (self->pictures, tm_document_job (self->document), &self->judgement);
}

static TmQuantity
get_typed (TmBenchPage *self)
{
  TmQuantity value = TM_QUANTITY_NONE;
  if (!self->planning && !tm_reading_entry_value (self->entry, &value))
    value = TM_QUANTITY_NONE;
  return value;
}

void
tm_bench_page_show_plot (TmBenchPage *self)
{
  TmBandEntry entry = { .station = tm_bench_spot (get_bench (self))->station,
                        .method = tm_bench_method (get_bench (self)) };
  TmBandPlot *plot;
  if (!self->has_judgement)
    {
      tm_pictures_take_plot (self->pictures, NULL);
      return;
    }
  entry.value = self->drawn = get_typed (self);
  plot = tm_band_plot_new (tm_document_job (self->document), &self->judgement, &entry);
  if (self->planning)
    tm_band_plot_set_plan (plot, tm_cut_bar_advice (self->cut_bar));
  tm_pictures_take_plot (self->pictures, plot);
}

/* Most keys of a reading do not make one yet: the picture is not drawn again for them. */
static void
show_typed (TmBenchPage *self)
{
  const TmQuantity typed = get_typed (self);
  const TmQuantity *drawn = &self->drawn;
  if (typed.given != drawn->given || typed.count != drawn->count || typed.unit != drawn->unit
      || typed.decimals != drawn->decimals)
    tm_bench_page_show_plot (self);
}

void
tm_bench_page_show_panel (TmBenchPage *self)
{
  tm_verdict_panel_show (self->panel, self->document, self->has_judgement ? &self->judgement : NULL);
}

static void
set_label (GtkLabel *label, const char *text)
{
  gtk_label_set_text (label, text);
  gtk_widget_set_visible (GTK_WIDGET (label), *text != '\0');
}

/* The callout keeps its room before the name; a long one is set smaller. */
static void
fit_callout (GtkLabel *label)
{
  glong length = g_utf8_strlen (gtk_label_get_text (label), -1);
  gtk_label_set_width_chars (label, (int)MIN (length, MAX_CALLOUT_CHARS));
  if (length > LARGE_CALLOUT_CHARS)
    gtk_widget_add_css_class (GTK_WIDGET (label), "tm-long");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (label), "tm-long");
}

/* While a cut is planned there is no room for chips: which hole is cut stands beside the limits. */
void
tm_bench_page_show_limits (TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (get_bench (self));
  g_autofree char *callout = tm_words_requirement (spot->feature);
  g_autofree char *limits = tm_words_limits (spot->feature);
  g_autofree char *place = NULL;
  if (g_str_equal (limits, callout))
    *limits = '\0';
  if (!self->planning || spot->feature->places < 2)
    {
      set_label (self->limits, limits);
      return;
    }
  place = g_strdup_printf (_ ("place %u of %u"), spot->place, spot->feature->places);
  g_autofree char *both = *limits != '\0' ? g_strdup_printf ("%s  ·  %s", limits, place) : g_strdup (place);
  set_label (self->limits, both);
}

static void
show_heading (TmBenchPage *self, const TmFeature *feature)
{
  g_autofree char *callout = tm_words_requirement (feature);
  g_autofree char *on_drawing = tm_words_on_drawing (feature);
  const char *name = g_str_equal (feature->name, callout) ? "" : feature->name;
  gboolean crowded = g_utf8_strlen (callout, -1) > MAX_CALLOUT_CHARS;
  set_label (self->callout, callout);
  fit_callout (self->callout);
  /* A note is read in full: it has no picture that needs the room. */
  gtk_label_set_wrap (self->callout, crowded);
  gtk_label_set_lines (self->callout, !crowded ? -1 : tm_kind_is_attribute (feature->kind) ? 8 : 2);
  set_label (self->name, crowded ? "" : name);
  /* A long callout leaves no room for the name beside it. */
  if (crowded && *name != '\0')
    {
      g_autofree char *both
          = *on_drawing != '\0' ? g_strdup_printf ("%s  ·  %s", on_drawing, name) : g_strdup (name);
      set_label (self->on_drawing, both);
    }
  else
    set_label (self->on_drawing, on_drawing);
}

/* What to do when there is nothing to measure, with the button that does it. */
static void
show_empty (TmBenchPage *self, const TmJob *job)
{
  AdwStatusPage *empty = ADW_STATUS_PAGE (self->empty);
  gboolean features = job != NULL && job->features->len > 0;
  adw_status_page_set_title (empty,
                             features ? _ ("No piece to measure yet") : _ ("No features to measure yet"));
  adw_status_page_set_description (empty, features
                                              ? _ ("Add the first piece, then type its readings here.")
                                              : _ ("List what the drawing asks for on the Job page, then "
                                                   "measure it here."));
  tm_button_set_label (self->empty_button, features ? _ ("_Add the first piece") : _ ("_List the features"));
  /* The target goes in while there is no name: never one with the target of another. */
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->empty_button), NULL);
  gtk_actionable_set_action_target_value (GTK_ACTIONABLE (self->empty_button), NULL);
  if (!features)
    gtk_actionable_set_action_target (GTK_ACTIONABLE (self->empty_button), "s", "job");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self->empty_button),
                                  features ? "win.add-piece" : "win.page");
  tm_access_show_page (self->stack, "empty");
}

void
tm_bench_page_focus (TmBenchPage *self)
{
  if (tm_bench_page_is_fitting (self))
    tm_fit_view_enter (self->fit);
  else if (self->planning)
    tm_cut_bar_focus (self->cut_bar);
  else
    tm_reading_entry_focus (self->entry);
}

static gboolean
is_shown (TmBenchPage *self, const TmSpot *spot)
{
  return spot->piece == self->shown.piece && spot->feature == self->shown.feature
         && spot->place == self->shown.place && g_strcmp0 (spot->station, self->shown.station) == 0;
}

/* A gauge chosen for one feature must not follow to the next, where it may not fit. */
static void
forget_method (TmBenchPage *self, const TmSpot *spot)
{
  if (self->shown.feature != NULL && spot->feature != self->shown.feature)
    tm_bench_set_method (get_bench (self), "");
}

static void
show_spot (TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (get_bench (self));
  gboolean other_feature = spot->feature != self->shown.feature;
  if (spot->piece == NULL || spot->feature == NULL)
    {
      show_empty (self, tm_document_job (self->document));
      return;
    }
  tm_access_show_page (self->stack, "bench");
  forget_method (self, spot);
  tm_bench_page_show_person (self);
  self->shown = *spot;
  tm_feature_list_follow (self->list);
  if (other_feature)
    {
      show_heading (self, spot->feature);
      tm_verdict_panel_list_methods (self->panel, self->document);
    }
  tm_bench_page_show_drawing (self);
  tm_bench_page_show_limits (self);
  tm_station_chips_show (self->chips, self->document);
  tm_reading_entry_refresh (self->entry);
  if (other_feature)
    tm_bench_page_begin_pins (self);
  tm_bench_page_show_pins (self);
  judge_spot (self);
  tm_bench_page_show_run (self);
  tm_bench_page_show_cut (self);
  tm_bench_page_show_panel (self);
  tm_bench_page_show_fit (self);
  if (other_feature && !tm_bench_page_is_fitting (self) && gtk_widget_get_mapped (GTK_WIDGET (self))
      && gtk_widget_get_focus_child (GTK_WIDGET (self->list)) == NULL)
    tm_bench_page_focus (self);
}

static void
moved_cb (TmDocument *document, TmBenchPage *self)
{
  if (!is_shown (self, tm_bench_spot (get_bench (self))))
    {
      show_spot (self);
      return;
    }
  if (!self->has_judgement)
    return;
  tm_reading_entry_refresh (self->entry);
  show_typed (self);
}

static void
recorded_cb (TmDocument *document, const TmEntryRow *row, TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (get_bench (self));
  tm_feature_list_touch (self->list, row->feature);
  tm_bench_page_run_recorded (self, row);
  if (!is_shown (self, spot))
    return; /* "moved" follows and shows the new spot whole */
  tm_station_chips_show (self->chips, self->document);
  judge_spot (self);
  tm_bench_page_show_cut (self);
  tm_bench_page_show_panel (self);
  tm_bench_page_show_fit (self);
}

static void
show_all (TmBenchPage *self)
{
  self->shown = (TmSpot) { 0 };
  tm_bench_page_forget_run (self);
  tm_reading_entry_set_document (self->entry, self->document);
  tm_feature_list_set_document (self->list, self->document);
  show_spot (self);
}

static void
definitions_changed_cb (TmDocument *document, TmBenchPage *self)
{
  show_all (self);
}

static void
feature_chosen_cb (TmFeatureList *list, gpointer chosen, TmBenchPage *self)
{
  TmFeature *feature = chosen;
  const TmSpot *spot = tm_bench_spot (get_bench (self));
  const char *station = feature->stations->len > 0 ? g_ptr_array_index (feature->stations, 0) : "";
  tm_document_go (self->document, spot->piece, feature, 1, station);
}

static void
spot_chosen_cb (TmStationChips *chips, guint place, const char *station, TmBenchPage *self)
{
  const TmSpot *spot = tm_bench_spot (get_bench (self));
  tm_document_go (self->document, spot->piece, spot->feature, place, station);
}

/* A feature that has no gauge of its own keeps the one chosen; otherwise it holds for the readings
 * taken now. */
static void
keep_method (TmBenchPage *self, TmFeature *feature, const char *name)
{
  g_autoptr (GError) error = NULL;
  const char *before = feature->method;
  feature->method = tm_job_intern (tm_document_job (self->document), name);
  if (tm_document_save_definitions (self->document, &error))
    return;
  feature->method = before;
  tm_window_show_error (GTK_WIDGET (self), error->message);
  tm_verdict_panel_list_methods (self->panel, self->document);
}

static void
method_chosen_cb (TmVerdictPanel *panel, const char *name, TmBenchPage *self)
{
  TmFeature *feature = tm_bench_spot (get_bench (self))->feature;
  g_autofree char *chosen = g_strdup (name);
  if (feature == NULL)
    return;
  if (*feature->method == '\0' && *chosen != '\0')
    {
      keep_method (self, feature, chosen);
      return;
    }
  tm_bench_set_method (get_bench (self), chosen);
  tm_bench_page_show_cut (self);
  tm_bench_page_show_panel (self);
}

/* Which value counts is part of the feature. */
static void
counts_chosen_cb (TmVerdictPanel *panel, gboolean combined, TmBenchPage *self)
{
  g_autoptr (GError) error = NULL;
  TmFeature *feature = tm_bench_spot (get_bench (self))->feature;
  if (feature == NULL)
    return;
  TmCounts before = feature->counts;
  feature->counts = combined ? TM_COUNTS_COMBINED : TM_COUNTS_ASSIGNED;
  if (tm_document_save_definitions (self->document, &error))
    return;
  feature->counts = before;
  tm_window_show_error (GTK_WIDGET (self), error->message);
  tm_bench_page_show_panel (self);
}

static void
temperatures_cb (TmVerdictPanel *panel, TmBenchPage *self)
{
  tm_bench_page_focus (self);
}

static void
submit_cb (TmReadingEntry *entry, TmBenchPage *self)
{
  tm_bench_page_submit (self);
}

static void
typed_cb (TmReadingEntry *entry, TmBenchPage *self)
{
  show_typed (self);
}

static gboolean
focus_cb (gpointer data)
{
  TmBenchPage *self = data;
  self->focus_id = 0;
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)) || !self->has_judgement)
    return G_SOURCE_REMOVE;
  tm_bench_page_show_person (self);
  tm_bench_page_focus (self);
  tm_feature_list_reveal (self->list);
  return G_SOURCE_REMOVE;
}

/* The entry has the keyboard whenever the page shows; when idle, after whoever shows the page has
 * put the focus where it thinks best. */
static void
tm_bench_page_map (GtkWidget *widget)
{
  TmBenchPage *self = TM_BENCH_PAGE (widget);
  GTK_WIDGET_CLASS (tm_bench_page_parent_class)->map (widget);
  if (self->focus_id == 0)
    self->focus_id = g_idle_add (focus_cb, self);
}

static void
tm_bench_page_get_property (GObject *object, guint property_id, GValue *value, GParamSpec *pspec)
{
  TmBenchPage *self = TM_BENCH_PAGE (object);
  const TmBench *bench = self->document != NULL ? get_bench (self) : NULL;
  if (property_id == PROP_ORDER)
    g_value_set_string (value, bench != NULL && tm_bench_order (bench) == TM_ORDER_FEATURE_FIRST
                                   ? "feature-first"
                                   : "piece-first");
  else if (property_id == PROP_BY)
    g_value_set_string (value, bench != NULL ? tm_bench_by (bench) : "");
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
}

static void
set_order (TmBenchPage *self, const char *order)
{
  gboolean feature_first = g_strcmp0 (order, "feature-first") == 0;
  tm_bench_set_order (get_bench (self), feature_first ? TM_ORDER_FEATURE_FIRST : TM_ORDER_PIECE_FIRST);
  tm_settings_set_text ("order", feature_first ? "feature-first" : "piece-first");
  tm_window_toast (GTK_WIDGET (self), feature_first
                                          ? _ ("Measuring feature first: one feature on every piece")
                                          : _ ("Measuring piece first: all features of a piece"));
  tm_bench_page_show_panel (self);
}

static void
tm_bench_page_set_property (GObject *object, guint property_id, const GValue *value, GParamSpec *pspec)
{
  TmBenchPage *self = TM_BENCH_PAGE (object);
  const char *text = g_value_get_string (value);
  if (self->document == NULL)
    return;
  if (property_id == PROP_ORDER)
    set_order (self, text);
  else if (property_id == PROP_BY)
    {
      tm_bench_set_by (get_bench (self), text);
      tm_settings_set_text ("initials", text);
      tm_bench_page_show_person (self);
    }
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, property_id, pspec);
  g_object_notify_by_pspec (object, pspec);
}

static void
tm_bench_page_dispose (GObject *object)
{
  TmBenchPage *self = TM_BENCH_PAGE (object);
  g_clear_handle_id (&self->focus_id, g_source_remove);
  if (self->document != NULL)
    tm_bench_page_set_document (self, NULL);
  G_OBJECT_CLASS (tm_bench_page_parent_class)->dispose (object);
}

static void
tm_bench_page_class_init (TmBenchPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->dispose = tm_bench_page_dispose;
  object_class->get_property = tm_bench_page_get_property;
  object_class->set_property = tm_bench_page_set_property;
  widget_class->map = tm_bench_page_map;
  /* "piece-first" or "feature-first"; the initials of who measures. */
  properties[PROP_ORDER]
      = g_param_spec_string ("order", NULL, NULL, "piece-first",
                             G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  properties[PROP_BY] = g_param_spec_string (
      "by", NULL, NULL, "", G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPERTIES, properties);
  tm_bench_page_install_actions (widget_class);
}

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_xalign (label, 0);
  gtk_label_set_ellipsize (label, PANGO_ELLIPSIZE_END);
  gtk_widget_set_valign (GTK_WIDGET (label), GTK_ALIGN_BASELINE);
  gtk_widget_add_css_class (GTK_WIDGET (label), css_class);
  tm_tip_own_text (GTK_WIDGET (label));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (label));
  return label;
}

static GtkWidget *
build_heading (TmBenchPage *self)
{
  GtkWidget *across = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *heading = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *first = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  GtkWidget *second = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 24);
  self->callout = add_label (first, "tm-bench-callout");
  self->name = add_label (first, "tm-bench-name");
  self->limits = add_label (second, "tm-bench-limits");
  self->on_drawing = add_label (second, "dim-label");
  gtk_box_append (GTK_BOX (heading), first);
  gtk_box_append (GTK_BOX (heading), second);
  gtk_widget_set_hexpand (heading, TRUE);
  gtk_box_append (GTK_BOX (across), heading);
  gtk_box_append (GTK_BOX (across), tm_bench_page_build_drawing_button (self));
  gtk_box_append (GTK_BOX (across), tm_bench_page_build_fit_button (self));
  return across;
}

static GtkWidget *
build_centre (TmBenchPage *self)
{
  GtkWidget *centre = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  self->chips = TM_STATION_CHIPS (tm_station_chips_new ());
  self->entry = TM_READING_ENTRY (tm_reading_entry_new ());
  self->pin_bar = TM_PIN_BAR (tm_pin_bar_new ());
  gtk_widget_set_visible (GTK_WIDGET (self->pin_bar), FALSE);
  self->cut_bar = TM_CUT_BAR (tm_cut_bar_new ());
  gtk_widget_set_visible (GTK_WIDGET (self->cut_bar), FALSE);
  self->pictures = TM_PICTURES (tm_pictures_new ());
  gtk_widget_add_css_class (centre, "tm-centre");
  gtk_widget_add_css_class (GTK_WIDGET (self->pictures), "tm-band");
  gtk_widget_set_hexpand (centre, TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self->pictures), TRUE);
  gtk_box_append (GTK_BOX (centre), build_heading (self));
  gtk_box_append (GTK_BOX (centre), GTK_WIDGET (self->chips));
  gtk_box_append (GTK_BOX (centre), GTK_WIDGET (self->entry));
  gtk_box_append (GTK_BOX (centre), GTK_WIDGET (self->pin_bar));
  gtk_box_append (GTK_BOX (centre), GTK_WIDGET (self->cut_bar));
  gtk_box_append (GTK_BOX (centre), tm_bench_page_build_run_line (self));
  gtk_box_append (GTK_BOX (centre), GTK_WIDGET (self->pictures));
  gtk_box_append (GTK_BOX (centre), tm_bench_page_build_drawing (self));
  return centre;
}

static GtkWidget *
build_empty (TmBenchPage *self)
{
  self->empty = adw_status_page_new ();
  self->empty_button = tm_button_new ("");
  gtk_widget_set_halign (self->empty_button, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (self->empty_button, "pill");
  gtk_widget_add_css_class (self->empty_button, "suggested-action");
  adw_status_page_set_child (ADW_STATUS_PAGE (self->empty), self->empty_button);
  return self->empty;
}

static GtkWidget *
build_bench (TmBenchPage *self)
{
  GtkWidget *bench = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *measure = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  self->list = TM_FEATURE_LIST (tm_feature_list_new ());
  self->panel = TM_VERDICT_PANEL (tm_verdict_panel_new ());
  self->menu = tm_bench_page_build_menu (self);
  tm_feature_list_set_menu (self->list, self->menu);
  gtk_box_append (GTK_BOX (bench), GTK_WIDGET (self->list));
  gtk_box_append (GTK_BOX (bench), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_box_append (GTK_BOX (measure), tm_column_new (build_centre (self)));
  gtk_box_append (GTK_BOX (measure), tm_column_new (GTK_WIDGET (self->panel)));
  gtk_box_append (GTK_BOX (bench), tm_column_new (tm_bench_page_build_work (self, measure)));
  return bench;
}

static void
tm_bench_page_init (TmBenchPage *self)
{
  self->stack = GTK_STACK (gtk_stack_new ());
  gtk_stack_add_named (self->stack, build_empty (self), "empty");
  gtk_stack_add_named (self->stack, build_bench (self), "bench");
  gtk_widget_set_hexpand (GTK_WIDGET (self->stack), TRUE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->stack));
  gtk_widget_add_css_class (GTK_WIDGET (self), "tm-bench");
  show_empty (self, NULL);
  g_signal_connect (self->list, "chosen", G_CALLBACK (feature_chosen_cb), self);
  g_signal_connect (self->chips, "chosen", G_CALLBACK (spot_chosen_cb), self);
  g_signal_connect (self->entry, "submit", G_CALLBACK (submit_cb), self);
  g_signal_connect (self->entry, "typed", G_CALLBACK (typed_cb), self);
  g_signal_connect (self->panel, "method-chosen", G_CALLBACK (method_chosen_cb), self);
  g_signal_connect (self->panel, "counts-chosen", G_CALLBACK (counts_chosen_cb), self);
  g_signal_connect (self->panel, "temperatures-changed", G_CALLBACK (temperatures_cb), self);
  tm_bench_page_connect_pins (self);
  tm_bench_page_connect_cut (self);
  tm_bench_page_add_controllers (self);
}

GtkWidget *
tm_bench_page_new (void)
{
  return g_object_new (TM_TYPE_BENCH_PAGE, NULL);
}

static void
drop_document (TmBenchPage *self)
{
  g_signal_handlers_disconnect_by_data (self->document, self);
  tm_reading_entry_set_document (self->entry, NULL);
  tm_feature_list_set_document (self->list, NULL);
  tm_pictures_take_plot (self->pictures, NULL);
  tm_pictures_show (self->pictures, NULL, NULL);
  drop_judgement (self);
  tm_bench_page_leave_cut (self);
  tm_bench_page_leave_run (self);
  tm_bench_page_leave_fit (self);
  tm_drawing_view_set_document (self->drawing, NULL);
  self->shown = (TmSpot) { 0 };
  g_clear_object (&self->document);
}

void
tm_bench_page_set_document (TmBenchPage *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_BENCH_PAGE (self));

  if (self->document == document)
    return;
  if (self->document != NULL)
    drop_document (self);
  if (document == NULL)
    {
      show_empty (self, NULL);
      return;
    }
  self->document = g_object_ref (document);
  g_signal_connect (document, "moved", G_CALLBACK (moved_cb), self);
  g_signal_connect (document, "recorded", G_CALLBACK (recorded_cb), self);
  g_signal_connect (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  show_all (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_ORDER]);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_BY]);
}
