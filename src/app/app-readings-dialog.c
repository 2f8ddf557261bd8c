/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-readings-dialog.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-cut-words.h"
#include "app-dialog.h"
#include "app-entry-words.h"
#include "app-feature-words.h"
#include "app-pin-words.h"
#include "app-reason-dialog.h"
#include "app-words.h"

struct _TmReadingsDialog {
  AdwWindow parent_instance;

  TmDocument *document;
  const TmPiece *piece;
  const TmFeature *feature;
  GtkWidget *list; /* GtkListBox */
};

G_DEFINE_FINAL_TYPE (TmReadingsDialog, tm_readings_dialog, ADW_TYPE_WINDOW)

static void
correct_cb (GtkButton *button, TmReadingsDialog *self)
{
  const TmReading *reading = g_object_get_data (G_OBJECT (button), "row");
  tm_reason_dialog_present_correct (GTK_WIDGET (self), self->document, reading);
}

static void
withdraw_cb (GtkButton *button, TmReadingsDialog *self)
{
  const TmReading *reading = g_object_get_data (G_OBJECT (button), "row");
  tm_reason_dialog_present_withdraw (GTK_WIDGET (self), self->document, reading);
}

static void
withdraw_pin_cb (GtkButton *button, TmReadingsDialog *self)
{
  const TmPinTrial *trial = g_object_get_data (G_OBJECT (button), "row");
  tm_reason_dialog_present_withdraw_pin (GTK_WIDGET (self), self->document, trial);
}

static void
correct_cut_cb (GtkButton *button, TmReadingsDialog *self)
{
  tm_reason_dialog_present_correct_cut (GTK_WIDGET (self), self->document,
                                        g_object_get_data (G_OBJECT (button), "row"));
}

static void
withdraw_cut_cb (GtkButton *button, TmReadingsDialog *self)
{
  tm_reason_dialog_present_withdraw_cut (GTK_WIDGET (self), self->document,
                                         g_object_get_data (G_OBJECT (button), "row"));
}

/* @about: the reading, trial or cut that the button is about, named @value. */
static void
add_button (TmReadingsDialog *self, GtkWidget *row, const char *label, const void *about, const char *value,
            GCallback clicked)
{
  GtkWidget *button = tm_button_new (label);
  g_autofree char *name = g_strdup_printf ("%s %s", label, value);
  g_object_set_data (G_OBJECT (button), "row", (gpointer)about);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (button, "clicked", clicked, self);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), button);
}

static void
add_part (GPtrArray *parts, char *part)
{
  if (*part != '\0')
    g_ptr_array_add (parts, part);
  else
    g_free (part);
}

static char *
join_parts (GPtrArray *parts)
{
  g_ptr_array_add (parts, NULL);
  return g_strjoinv (" · ", (char **)parts->pdata);
}

/* "part 24.5, gauge 21 °C", or "" when neither was taken. */
static char *
describe_temperatures (const TmReading *reading)
{
  g_autofree char *part = tm_quantity_format (&reading->part_temp);
  g_autofree char *gauge = tm_quantity_format (&reading->gauge_temp);
  if (reading->part_temp.given && reading->gauge_temp.given)
    return g_strdup_printf (_ ("part %s, gauge %s °C"), part, gauge);
  if (reading->part_temp.given)
    return g_strdup_printf (_ ("part %s °C"), part);
  return reading->gauge_temp.given ? g_strdup_printf (_ ("gauge %s °C"), gauge) : g_strdup ("");
}

static char *
describe_overdue (const char *reason)
{
  return *reason != '\0' ? g_strdup_printf (_ ("gauge overdue: %s"), reason) : g_strdup ("");
}

/* "bottom 12 · 4 May 2026, 11:12 · MK · BM-2 · typed 25019" */
static char *
describe_origin (const TmReading *reading)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  add_part (parts, tm_words_spot (reading->row.feature, reading->place, reading->station));
  add_part (parts, tm_words_time (reading->row.at));
  add_part (parts, g_strdup (reading->row.by));
  add_part (parts, g_strdup (reading->method));
  if (*reading->typed != '\0')
    add_part (parts, g_strdup_printf (_ ("typed %s"), reading->typed));
  add_part (parts, describe_temperatures (reading));
  add_part (parts, describe_overdue (reading->overdue_reason));
  return join_parts (parts);
}

/* "place 2 · 4 May 2026, 11:12 · MK · PIN-X" */
static char *
describe_pin_origin (const TmPinTrial *trial)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  add_part (parts, tm_words_spot (trial->row.feature, trial->place, ""));
  add_part (parts, tm_words_time (trial->row.at));
  add_part (parts, g_strdup (trial->row.by));
  add_part (parts, g_strdup (trial->gauge));
  add_part (parts, describe_overdue (trial->overdue_reason));
  return join_parts (parts);
}

/* What stands and no longer counts, since the metal was worked on after it. */
static char *
describe_place_in_work (const TmEntryRow *row)
{
  if (row->before_rework)
    return g_strdup (_ ("Before the rework"));
  return row->before_cut ? g_strdup (_ ("Before the cut")) : NULL;
}

static char *
describe_fate (const TmReading *reading)
{
  if (reading->row.withdrawn != NULL)
    return g_strdup_printf (_ ("Withdrawn: %s"), reading->row.withdrawn->reason);
  if (reading->row.replaced_by != NULL)
    {
      const TmReading *with = reading->row.replaced_by;
      g_autofree char *value = tm_words_reading (with);
      return g_strdup_printf (_ ("Corrected to %s: %s"), value, with->row.reason);
    }
  if (*reading->row.reason != '\0')
    return g_strdup_printf (_ ("Correction: %s"), reading->row.reason);
  return describe_place_in_work (&reading->row);
}

static char *
describe_trial_fate (const TmEntryRow *row)
{
  if (row->withdrawn != NULL)
    return g_strdup_printf (_ ("Withdrawn: %s"), row->withdrawn->reason);
  return describe_place_in_work (row);
}

/* A row of the list; what no longer stands is struck out. */
static GtkWidget *
make_row (const char *value, gboolean stands, const char *origin, const char *fate)
{
  GtkWidget *row = adw_action_row_new ();
  g_autofree char *subtitle = fate != NULL ? g_strdup_printf ("%s\n%s", origin, fate) : g_strdup (origin);
  g_autofree char *subtitle_markup = g_markup_escape_text (subtitle, -1);
  g_autofree char *title
      = g_markup_printf_escaped (stands ? "<span font_features='tnum=1'>%s</span>" : "<s>%s</s>", value);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), subtitle_markup);
  return row;
}

static GtkWidget *
build_row (TmReadingsDialog *self, const TmReading *reading)
{
  g_autofree char *value = tm_words_reading (reading);
  g_autofree char *origin = describe_origin (reading);
  g_autofree char *fate = describe_fate (reading);
  gboolean stands = tm_row_stands (&reading->row);
  GtkWidget *row = make_row (value, stands, origin, fate);
  if (stands)
    {
      add_button (self, row, _ ("Correct…"), reading, value, G_CALLBACK (correct_cb));
      add_button (self, row, _ ("Withdraw…"), reading, value, G_CALLBACK (withdraw_cb));
    }
  return row;
}

static GtkWidget *
build_pin_row (TmReadingsDialog *self, const TmPinTrial *trial)
{
  g_autofree char *value = tm_words_pin_trial (trial);
  g_autofree char *origin = describe_pin_origin (trial);
  g_autofree char *fate = describe_trial_fate (&trial->row);
  gboolean stands = tm_row_stands (&trial->row);
  GtkWidget *row = make_row (value, stands, origin, fate);
  if (stands)
    add_button (self, row, _ ("Withdraw…"), trial, value, G_CALLBACK (withdraw_pin_cb));
  return row;
}

/* "place 2 · 4 May 2026, 11:12 · MK · bar 20 · 0.068 mm came off, 0.070 mm was asked for" */
static char *
describe_cut_origin (TmReadingsDialog *self, const TmCutRow *cut)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);
  TmCutOutcome outcome;
  add_part (parts, tm_words_spot (cut->row.feature, cut->place, ""));
  add_part (parts, tm_words_time (cut->row.at));
  add_part (parts, g_strdup (cut->row.by));
  add_part (parts, g_strdup (cut->tool));
  add_part (parts, g_strdup (cut->note));
  if (tm_row_stands (&cut->row) && tm_bench_cut_outcome (tm_document_bench (self->document), cut, &outcome))
    {
      add_part (parts, tm_words_cut_outcome (&outcome));
      add_part (parts, tm_words_cut_unlike (&outcome));
    }
  return join_parts (parts);
}

static char *
describe_cut_fate (const TmCutRow *cut)
{
  if (cut->row.withdrawn != NULL)
    return g_strdup_printf (_ ("Withdrawn: %s"), cut->row.withdrawn->reason);
  if (cut->row.replaced_by != NULL)
    {
      const TmCutRow *with = cut->row.replaced_by;
      g_autofree char *value = tm_words_cut_row (with);
      return g_strdup_printf (_ ("Corrected to %s: %s"), value, with->row.reason);
    }
  return *cut->row.reason != '\0' ? g_strdup_printf (_ ("Correction: %s"), cut->row.reason) : NULL;
}

static GtkWidget *
build_cut_row (TmReadingsDialog *self, const TmCutRow *cut)
{
  g_autofree char *value = tm_words_cut_row (cut);
  g_autofree char *origin = describe_cut_origin (self, cut);
  g_autofree char *fate = describe_cut_fate (cut);
  gboolean stands = tm_row_stands (&cut->row);
  GtkWidget *row = make_row (value, stands, origin, fate);
  gtk_widget_add_css_class (row, "tm-cut-row");
  if (stands)
    {
      add_button (self, row, _ ("Correct…"), cut, value, G_CALLBACK (correct_cut_cb));
      add_button (self, row, _ ("Withdraw…"), cut, value, G_CALLBACK (withdraw_cut_cb));
    }
  return row;
}

/* After how many of the readings of its place the cut was made.  A correction of a reading stands later in
 * the list, but is about what was read then. */
static guint
find_cut_position (const TmJob *job, const TmCutRow *cut, const GPtrArray *readings)
{
  for (guint i = readings != NULL ? readings->len : 0; i > 0; i--)
    {
      const TmReading *reading = g_ptr_array_index (readings, i - 1);
      if (g_str_equal (reading->row.id, cut->after)
          || (*reading->row.replaces == '\0' && tm_cut_follows (job, cut, reading)))
        return i;
    }
  return 0;
}

/* The cuts that were made after @position of the readings of the place. */
static guint
fill_cuts (TmReadingsDialog *self, guint place, guint position, const GPtrArray *readings)
{
  const TmJob *job = tm_document_job (self->document);
  const GPtrArray *cuts = tm_job_cuts_at (job, self->piece, self->feature, place);
  guint n = 0;
  for (guint i = 0; cuts != NULL && i < cuts->len; i++)
    {
      const TmCutRow *cut = g_ptr_array_index (cuts, i);
      if (find_cut_position (job, cut, readings) != position)
        continue;
      gtk_list_box_append (GTK_LIST_BOX (self->list), build_cut_row (self, cut));
      n++;
    }
  return n;
}

/* Readings with the cuts between them, then pin trials, of one place.  Returns how many. */
static guint
fill_place (TmReadingsDialog *self, guint place)
{
  const TmJob *job = tm_document_job (self->document);
  const GPtrArray *readings = tm_job_readings_at (job, self->piece, self->feature, place);
  const GPtrArray *trials = tm_job_pin_trials_at (job, self->piece, self->feature, place);
  guint n = fill_cuts (self, place, 0, readings);
  for (guint i = 0; readings != NULL && i < readings->len; i++, n++)
    {
      gtk_list_box_append (GTK_LIST_BOX (self->list), build_row (self, g_ptr_array_index (readings, i)));
      n += fill_cuts (self, place, i + 1, readings);
    }
  for (guint i = 0; trials != NULL && i < trials->len; i++, n++)
    gtk_list_box_append (GTK_LIST_BOX (self->list), build_pin_row (self, g_ptr_array_index (trials, i)));
  return n;
}

static void
fill (TmReadingsDialog *self)
{
  GtkWidget *child;
  guint n_rows = 0;
  while ((child = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), child);
  for (guint place = 1; place <= self->feature->places; place++)
    n_rows += fill_place (self, place);
  if (n_rows == 0)
    {
      GtkWidget *row = adw_action_row_new ();
      adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ ("No reading yet"));
      adw_action_row_set_subtitle (ADW_ACTION_ROW (row), _ ("Type one on the Bench page and press Enter"));
      gtk_list_box_append (GTK_LIST_BOX (self->list), row);
    }
}

static void
recorded_cb (TmDocument *document, const TmEntryRow *row, TmReadingsDialog *self)
{
  fill (self);
}

static void
tm_readings_dialog_dispose (GObject *object)
{
  TmReadingsDialog *self = TM_READINGS_DIALOG (object);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (tm_readings_dialog_parent_class)->dispose (object);
}

static void
tm_readings_dialog_class_init (TmReadingsDialogClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_readings_dialog_dispose;
}

static void
tm_readings_dialog_init (TmReadingsDialog *self)
{
  GtkWidget *outer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *clamp = adw_clamp_new ();
  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (self->list, "boxed-list");
  gtk_widget_set_valign (self->list, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Readings"),
                                  -1);
  gtk_widget_add_css_class (clamp, "tm-dialog");
  adw_clamp_set_maximum_size (ADW_CLAMP (clamp), 760);
  adw_clamp_set_child (ADW_CLAMP (clamp), self->list);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), clamp);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (outer), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (outer), scroller);
  adw_window_set_content (ADW_WINDOW (self), outer);
  gtk_window_set_default_size (GTK_WINDOW (self), 780, 480);
}

GtkWidget *
tm_readings_dialog_present (GtkWidget *parent, TmDocument *document)
{
  g_return_val_if_fail (TM_IS_DOCUMENT (document), NULL);

  const TmSpot *spot = tm_bench_spot (tm_document_bench (document));
  g_return_val_if_fail (spot->piece != NULL && spot->feature != NULL, NULL);

  TmReadingsDialog *self = g_object_new (TM_TYPE_READINGS_DIALOG, NULL);
  g_autofree char *feature = tm_words_feature (spot->feature);
  /* Translators: the piece's serial, then the feature. */
  g_autofree char *title = g_strdup_printf (_ ("Readings: piece %s, %s"), spot->piece->serial, feature);
  self->document = g_object_ref (document);
  self->piece = spot->piece;
  self->feature = spot->feature;
  gtk_window_set_title (GTK_WINDOW (self), title);
  g_signal_connect_object (document, "recorded", G_CALLBACK (recorded_cb), self, 0);
  fill (self);
  tm_dialog_attach (GTK_WINDOW (self), parent);
  gtk_window_present (GTK_WINDOW (self));
  return GTK_WIDGET (self);
}
