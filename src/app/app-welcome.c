/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-welcome.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-files.h"
#include "app-first-job.h"
#include "app-new-job.h"

struct _TmWelcome {
  AdwBin parent_instance;

  TmFirstJob *first_job;
  GtkLabel *problem_label;
  GtkWidget *samples_box;
  GtkListBox *samples_list;
};

G_DEFINE_FINAL_TYPE (TmWelcome, tm_welcome, ADW_TYPE_BIN)

static void
begun_cb (TmWelcome *self, TmFirstJob *form)
{
  TmWindow *window = TM_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  g_autofree char *problem = NULL;

  if (tm_new_job_from_form (window, form, &problem))
    tm_dialog_problem_set (self->problem_label, NULL);
  else
    tm_dialog_problem_set (self->problem_label, problem);
}

static void
sample_activated_cb (TmWelcome *self, GtkListBoxRow *row)
{
  const char *path = g_object_get_data (G_OBJECT (row), "path");

  gtk_widget_activate_action (GTK_WIDGET (self), "win.import", "s", path);
}

/* What the samples that come with the program show, by the name of the file. */
static const struct {
  const char *name;
  const char *title;
  const char *shows;
} known_samples[] = {
  { "pump-bearing-housing.tmjob", N_ ("Bearing housing, millimetre"),
    N_ ("An H7 bore at four stations, position, a nonconformance") },
  { "pivot-arm-inch.tmjob", N_ ("Pivot arm, inch"),
    N_ ("A press-fit bore with its mate; a first article half measured") },
  { "guide-block-inch.tmjob", N_ ("Guide block, inch"),
    N_ ("One bore by an inside caliper, transfer gauges and pins, put together") },
  { "bushed-lever.tmjob", N_ ("Bushed lever, millimetre"),
    N_ ("Bores half cut, the tool’s answers, a batch of bushes to pair and press") },
  { "valve-body-batch.tmjob", N_ ("Valve body, a batch of 60"),
    N_ ("Two bores by a wearing bar, a tool change, and a shift that nobody saw") },
  { "piston-rings.tmjob", N_ ("Piston rings"),
    N_ ("Published measurements: 125 inside diameters in the order made") },
};

static void
set_sample_words (AdwActionRow *row, const char *path)
{
  g_autofree char *name = g_filename_display_basename (path);

  for (gsize i = 0; i < G_N_ELEMENTS (known_samples); i++)
    if (g_str_equal (name, known_samples[i].name))
      {
        adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ (known_samples[i].title));
        adw_action_row_set_subtitle (row, _ (known_samples[i].shows));
        return;
      }
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), name);
}

static void
add_sample (TmWelcome *self, const char *path)
{
  GtkWidget *row = adw_action_row_new ();

  set_sample_words (ADW_ACTION_ROW (row), path);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), gtk_image_new_from_icon_name ("go-next-symbolic"));
  tm_access_hide_decoration (row);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  g_object_set_data_full (G_OBJECT (row), "path", g_strdup (path), g_free);
  gtk_list_box_append (self->samples_list, row);
}

static void
list_samples (TmWelcome *self)
{
  g_autoptr (GPtrArray) paths = tm_files_samples ();

  for (guint i = 0; i < paths->len; i++)
    add_sample (self, g_ptr_array_index (paths, i));
  gtk_widget_set_visible (self->samples_box, paths->len > 0);
}

static gboolean
tm_welcome_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (TM_WELCOME (widget)->first_job));
}

static void
tm_welcome_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), TM_TYPE_WELCOME);
  G_OBJECT_CLASS (tm_welcome_parent_class)->dispose (object);
}

static void
tm_welcome_class_init (TmWelcomeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_welcome_dispose;
  widget_class->grab_focus = tm_welcome_grab_focus;
  g_type_ensure (TM_TYPE_FIRST_JOB);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/welcome.ui");
  gtk_widget_class_bind_template_child (widget_class, TmWelcome, first_job);
  gtk_widget_class_bind_template_child (widget_class, TmWelcome, problem_label);
  gtk_widget_class_bind_template_child (widget_class, TmWelcome, samples_box);
  gtk_widget_class_bind_template_child (widget_class, TmWelcome, samples_list);
  gtk_widget_class_bind_template_callback (widget_class, begun_cb);
  gtk_widget_class_bind_template_callback (widget_class, sample_activated_cb);
}

static void
tm_welcome_init (TmWelcome *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  list_samples (self);
}

GtkWidget *
tm_welcome_new (void)
{
  return g_object_new (TM_TYPE_WELCOME, NULL);
}
