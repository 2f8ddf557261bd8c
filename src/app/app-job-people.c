/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-job-people.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app-dialog.h"
#include "app-edit.h"
#include "app-form.h"
#include "app-settings.h"
#include "app-toast.h"

struct _TmJobPeople {
  GtkBox parent_instance;

  TmDocument *document;
  AdwPreferencesGroup *group;
  AdwEntryRow *add_row;
  GPtrArray *rows;       /* AdwActionRow, one per person, owned by the group */
  GtkCheckButton *first; /* leads the group of check buttons */
  gboolean watches_room; /* of the column that it scrolls in */
  guint show_end_id;
};

G_DEFINE_FINAL_TYPE (TmJobPeople, tm_job_people, GTK_TYPE_BOX)

static void
chosen_cb (GtkCheckButton *check, TmJobPeople *self)
{
  const char *initials = g_object_get_data (G_OBJECT (check), "initials");

  if (!gtk_check_button_get_active (check) || self->document == NULL)
    return;
  tm_bench_set_by (tm_document_bench (self->document), initials);
  tm_settings_set_text ("initials", initials);
}

static void
remove_cb (GtkButton *button, TmJobPeople *self)
{
  g_autofree char *initials = g_strdup (g_object_get_data (G_OBJECT (button), "initials"));
  g_autoptr (GError) error = NULL;

  if (self->document == NULL)
    return;
  if (!tm_edit_remove_person (self->document, initials, &error))
    {
      tm_window_show_error (GTK_WIDGET (self), error->message);
      return;
    }
  tm_window_clear_error (GTK_WIDGET (self));
  if (g_str_equal (tm_bench_by (tm_document_bench (self->document)), initials))
    tm_bench_set_by (tm_document_bench (self->document), "");
}

static GtkWidget *
make_remove_button (TmJobPeople *self, const TmPerson *person)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("user-trash-symbolic");
  g_autofree char *spoken = g_strdup_printf (_ ("Remove %s"), person->initials);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  g_object_set_data_full (G_OBJECT (button), "initials", g_strdup (person->initials), g_free);
  tm_name_widget (button, spoken);
  g_signal_connect (button, "clicked", G_CALLBACK (remove_cb), self);
  return button;
}

static void
add_person_row (TmJobPeople *self, const TmPerson *person)
{
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *check = gtk_check_button_new ();
  g_autofree char *initials = g_markup_escape_text (person->initials, -1);
  g_autofree char *name = g_markup_escape_text (person->name, -1);
  g_autofree char *spoken = g_strdup_printf (_ ("%s %s measures"), person->initials, person->name);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), initials);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), name);
  g_object_set_data_full (G_OBJECT (check), "initials", g_strdup (person->initials), g_free);
  gtk_check_button_set_group (GTK_CHECK_BUTTON (check), self->first);
  if (self->first == NULL)
    self->first = GTK_CHECK_BUTTON (check);
  gtk_check_button_set_active (
      GTK_CHECK_BUTTON (check),
      g_str_equal (tm_bench_by (tm_document_bench (self->document)), person->initials));
  tm_name_widget (check, spoken);
  g_signal_connect (check, "toggled", G_CALLBACK (chosen_cb), self);
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), check);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), check);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), make_remove_button (self, person));
  adw_preferences_group_add (self->group, row);
  g_ptr_array_add (self->rows, row);
}

/* The Bench has a menu for the same choice. */
static void
mark_who_measures (TmJobPeople *self)
{
  if (self->document == NULL)
    return;
  for (guint i = 0; i < self->rows->len; i++)
    {
      GtkWidget *check = adw_action_row_get_activatable_widget (g_ptr_array_index (self->rows, i));
      const char *initials = g_object_get_data (G_OBJECT (check), "initials");
      const char *by = tm_bench_by (tm_document_bench (self->document));

      gtk_check_button_set_active (GTK_CHECK_BUTTON (check), g_str_equal (by, initials));
    }
}

static void
drop_rows (TmJobPeople *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    adw_preferences_group_remove (self->group, g_ptr_array_index (self->rows, i));
  g_ptr_array_set_size (self->rows, 0);
  self->first = NULL;
}

static void
definitions_changed_cb (TmJobPeople *self)
{
  const TmJob *job = tm_document_job (self->document);

  if (self->rows->len == job->people->len && job->people->len > 0)
    return;
  drop_rows (self);
  for (guint i = 0; i < job->people->len; i++)
    add_person_row (self, g_ptr_array_index (job->people, i));
}

static gboolean
show_end_cb (gpointer data)
{
  TmJobPeople *self = data;
  GtkWidget *scroller = gtk_widget_get_ancestor (GTK_WIDGET (self), GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *room;
  graphene_rect_t bounds;
  double top, end;

  self->show_end_id = 0;
  if (scroller == NULL || !gtk_widget_compute_bounds (GTK_WIDGET (self->add_row), scroller, &bounds))
    return G_SOURCE_REMOVE;
  room = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  top = gtk_adjustment_get_value (room) + (double)bounds.origin.y;
  end = gtk_adjustment_get_upper (room) - gtk_adjustment_get_page_size (room);
  gtk_adjustment_set_value (room, MIN (top, end));
  return G_SOURCE_REMOVE;
}

/* While somebody adds people the column grows: the new row is its last and may lie below what is seen, so
 * it and the entry are brought into view when they have their places. */
static void
room_changed_cb (TmJobPeople *self)
{
  gboolean typing = gtk_widget_get_state_flags (GTK_WIDGET (self->add_row)) & GTK_STATE_FLAG_FOCUS_WITHIN;

  if (typing && self->show_end_id == 0)
    self->show_end_id = g_idle_add (show_end_cb, self);
}

/* "AB Anna Berg": the first word is the initials. */
static void
add_cb (TmJobPeople *self)
{
  g_autofree char *text = tm_form_text (self->add_row);
  g_auto (GStrv) parts = g_strsplit (text, " ", 2);
  g_autoptr (GError) error = NULL;
  TmBench *bench;

  if (self->document == NULL || *text == '\0')
    return;
  if (!tm_edit_add_person (self->document, parts[0], parts[1] != NULL ? g_strstrip (parts[1]) : "", &error))
    {
      tm_window_show_error (GTK_WIDGET (self), error->message);
      return;
    }
  tm_window_clear_error (GTK_WIDGET (self));
  bench = tm_document_bench (self->document);
  if (*tm_bench_by (bench) == '\0')
    tm_bench_set_by (bench, parts[0]);
  tm_settings_set_text ("initials", tm_bench_by (bench));
  mark_who_measures (self);
  tm_form_set_text (self->add_row, "");
}

void
tm_job_people_set_document (TmJobPeople *self, TmDocument *document)
{
  g_return_if_fail (TM_IS_JOB_PEOPLE (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  drop_rows (self);
  g_set_object (&self->document, document);
  tm_form_set_text (self->add_row, "");
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "definitions-changed", G_CALLBACK (definitions_changed_cb), self);
  definitions_changed_cb (self);
}

static void
tm_job_people_map (GtkWidget *widget)
{
  TmJobPeople *self = TM_JOB_PEOPLE (widget);
  GtkWidget *scroller = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);

  mark_who_measures (self);
  GTK_WIDGET_CLASS (tm_job_people_parent_class)->map (widget);
  if (scroller == NULL || self->watches_room)
    return;
  self->watches_room = TRUE;
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller)), "changed",
                           G_CALLBACK (room_changed_cb), self, G_CONNECT_SWAPPED);
}

static void
tm_job_people_dispose (GObject *object)
{
  TmJobPeople *self = TM_JOB_PEOPLE (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_handle_id (&self->show_end_id, g_source_remove);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  G_OBJECT_CLASS (tm_job_people_parent_class)->dispose (object);
}

static void
tm_job_people_class_init (TmJobPeopleClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = tm_job_people_dispose;
  GTK_WIDGET_CLASS (klass)->map = tm_job_people_map;
}

static void
tm_job_people_init (TmJobPeople *self)
{
  self->rows = g_ptr_array_new ();
  self->group
      = tm_form_group (GTK_BOX (self), _ ("People"), _ ("Who is marked here is recorded with each reading."));
  self->add_row = tm_form_entry (self->group, _ ("Add: initials and name, then Enter"));
  gtk_widget_set_hexpand (GTK_WIDGET (self->group), TRUE);
  g_signal_connect_swapped (self->add_row, "entry-activated", G_CALLBACK (add_cb), self);
}
