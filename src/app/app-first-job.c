/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-first-job.h"

#include <glib/gi18n-lib.h>

#include "app-access.h"
#include "app-dialog.h"
#include "app-words.h"
#include "core-callout.h"

struct _TmFirstJob {
  AdwBin parent_instance;

  GtkEditable *part_entry;
  GtkDropDown *unit_drop;
  GtkEditable *callout_entry;
  GtkLabel *reads_label;
  GtkEditable *piece_entry;
};

G_DEFINE_FINAL_TYPE (TmFirstJob, tm_first_job, ADW_TYPE_BIN)

static guint begun_signal;

static TmUnit
chosen_unit (TmFirstJob *self)
{
  return gtk_drop_down_get_selected (self->unit_drop) == 1 ? TM_UNIT_IN : TM_UNIT_MM;
}

static void
callout_changed_cb (TmFirstJob *self)
{
  TmCallout callout = tm_callout_read (gtk_editable_get_text (self->callout_entry), chosen_unit (self), NULL);
  g_autofree char *words = tm_words_reads_as (&callout);
  g_autofree char *line = *words != '\0' && callout.status == TM_CALLOUT_OK
                              ? g_strdup_printf (_ ("Reads as %s"), words)
                              : g_strdup (words);

  if (callout.status == TM_CALLOUT_EMPTY)
    gtk_label_set_text (self->reads_label, _ ("It says here how it is read; more can be added later"));
  else
    gtk_label_set_text (self->reads_label, line);
}

static void
part_activate_cb (TmFirstJob *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->callout_entry));
}

static void
callout_activate_cb (TmFirstJob *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->piece_entry));
}

static void
begin_cb (TmFirstJob *self)
{
  g_signal_emit (self, begun_signal, 0);
}

static gboolean
tm_first_job_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (TM_FIRST_JOB (widget)->part_entry));
}

static void
tm_first_job_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), TM_TYPE_FIRST_JOB);
  G_OBJECT_CLASS (tm_first_job_parent_class)->dispose (object);
}

static void
tm_first_job_class_init (TmFirstJobClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = tm_first_job_dispose;
  widget_class->grab_focus = tm_first_job_grab_focus;
  begun_signal = g_signal_new ("begun", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/tenthmark/Tenthmark/first-job.ui");
  gtk_widget_class_bind_template_child (widget_class, TmFirstJob, part_entry);
  gtk_widget_class_bind_template_child (widget_class, TmFirstJob, unit_drop);
  gtk_widget_class_bind_template_child (widget_class, TmFirstJob, callout_entry);
  gtk_widget_class_bind_template_child (widget_class, TmFirstJob, reads_label);
  gtk_widget_class_bind_template_child (widget_class, TmFirstJob, piece_entry);
  gtk_widget_class_bind_template_callback (widget_class, callout_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, part_activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, callout_activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, begin_cb);
}

static void
tm_first_job_init (TmFirstJob *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  tm_name_entry (self->part_entry, _ ("Part number"));
  tm_name_entry (self->callout_entry, _ ("First requirement"));
  tm_name_entry (self->piece_entry, _ ("First piece"));
  tm_access_name_drop_down (self->unit_drop, _ ("Unit of the drawing"));
  callout_changed_cb (self);
}

GtkWidget *
tm_first_job_new (void)
{
  return g_object_new (TM_TYPE_FIRST_JOB, NULL);
}

static void
add_typed_feature (TmJob *job, const char *callout)
{
  TmFeature *feature = tm_feature_new ();

  feature->balloon = tm_job_intern (job, "1");
  feature->requirement = tm_job_intern (job, callout);
  feature->unit = job->unit;
  tm_callout_apply (job, feature);
  if (tm_job_add_feature (job, feature) != TM_ADD_OK)
    tm_feature_free (feature);
}

static void
add_typed_piece (TmJob *job, const char *serial)
{
  TmPiece *piece = tm_piece_new ();

  piece->serial = tm_job_intern (job, serial);
  piece->first_article = TRUE;
  if (tm_job_add_piece (job, piece) != TM_ADD_OK)
    tm_piece_free (piece);
}

/* What was typed, without spaces around it. */
static char *
typed_text (GtkEditable *entry)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (entry)));
}

TmJob *
tm_first_job_make (TmFirstJob *self, char **problem)
{
  g_autofree char *part = typed_text (self->part_entry);
  g_autofree char *callout = typed_text (self->callout_entry);
  g_autofree char *serial = typed_text (self->piece_entry);
  g_autofree char *id = g_uuid_string_random ();
  TmJob *job;

  if (*part == '\0')
    {
      *problem = g_strdup (_ ("A job needs its part number; type it as the drawing has it."));
      gtk_widget_grab_focus (GTK_WIDGET (self->part_entry));
      return NULL;
    }
  job = tm_job_new ();
  job->id = tm_job_intern (job, id);
  job->part_number = tm_job_intern (job, part);
  job->unit = chosen_unit (self);
  job->standard = job->unit == TM_UNIT_IN ? TM_STANDARD_ASME : TM_STANDARD_ISO;
  if (*callout != '\0')
    add_typed_feature (job, callout);
  if (*serial != '\0')
    add_typed_piece (job, serial);
  return job;
}

void
tm_first_job_clear (TmFirstJob *self)
{
  g_return_if_fail (TM_IS_FIRST_JOB (self));

  gtk_editable_set_text (self->part_entry, "");
  gtk_editable_set_text (self->callout_entry, "");
  gtk_editable_set_text (self->piece_entry, "001");
}
