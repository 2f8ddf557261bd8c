/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-fields.h"

#include <glib/gi18n-lib.h>

#include "app-form.h"

typedef struct {
  char *name;
  int at; /* in the job's list, whose rows may come back at other addresses; -1: not answered */
  AdwEntryRow *row;
} Field;

struct _TmReportFields {
  AdwPreferencesGroup *group;
  GArray *list; /* Field */
  GCallback activated;
  gpointer data;
};

static void
clear_field (gpointer data)
{
  g_free (((Field *)data)->name);
}

static void
add_field (TmReportFields *fields, const TmJob *job, const char *name, gboolean required, int at)
{
  g_autofree char *title = required ? g_strdup_printf (_ ("%s (required)"), name) : g_strdup (name);
  const TmReportField *answer = at >= 0 ? g_ptr_array_index (job->report_fields, at) : NULL;
  const Field field = { g_strdup (name), at, tm_form_plain_entry (fields->group, title) };

  tm_form_set_text (field.row, answer != NULL ? answer->value : "");
  g_signal_connect_swapped (field.row, "entry-activated", fields->activated, fields->data);
  g_array_append_val (fields->list, field);
}

/* A job may answer a field more than once. */
static void
add_asked (TmReportFields *fields, const TmJob *job, const TmTemplateField *asked)
{
  const guint before = fields->list->len;

  for (guint i = 0; i < job->report_fields->len; i++)
    {
      const TmReportField *answer = g_ptr_array_index (job->report_fields, i);

      if (g_str_equal (answer->name, asked->name))
        add_field (fields, job, asked->name, asked->required, (int)i);
    }
  if (fields->list->len == before)
    add_field (fields, job, asked->name, asked->required, -1);
}

static void
add_fields (TmReportFields *fields, const TmJob *job, const TmTemplate *template)
{
  for (guint i = 0; i < template->fields->len; i++)
    add_asked (fields, job, g_ptr_array_index (template->fields, i));
  for (guint i = 0; i < job->report_fields->len; i++)
    {
      const TmReportField *answer = g_ptr_array_index (job->report_fields, i);

      if (tm_template_find_field (template, answer->name) == NULL)
        add_field (fields, job, answer->name, FALSE, (int)i);
    }
}

TmReportFields *
tm_report_fields_new (GtkBox *into, TmDocument *document, GCallback activated, gpointer data)
{
  const TmJob *job = tm_document_job (document);
  const TmTemplate *template = tm_document_template (document);
  TmReportFields *fields;

  if (job->report_fields->len == 0 && template->fields->len == 0)
    return NULL;
  fields = g_new0 (TmReportFields, 1);
  fields->group = tm_form_group (into, _ ("Fields of the shop"), NULL);
  fields->list = g_array_new (FALSE, FALSE, sizeof (Field));
  g_array_set_clear_func (fields->list, clear_field);
  fields->activated = activated;
  fields->data = data;
  add_fields (fields, job, template);
  return fields;
}

void
tm_report_fields_free (TmReportFields *fields)
{
  if (fields == NULL)
    return;
  g_array_unref (fields->list);
  g_free (fields);
}

GtkWidget *
tm_report_fields_row (TmReportFields *fields, const char *name)
{
  for (guint i = 0; fields != NULL && i < fields->list->len; i++)
    {
      const Field *field = &g_array_index (fields->list, Field, i);

      if (g_str_equal (field->name, name))
        return GTK_WIDGET (field->row);
    }
  return NULL;
}

static void
add_answer (TmJob *job, const char *name, const char *value)
{
  TmReportField *answer = tm_report_field_new ();

  answer->name = tm_job_intern (job, name);
  answer->value = tm_job_intern (job, value);
  tm_job_add_report_field (job, answer);
}

void
tm_report_fields_read (TmReportFields *fields, TmJob *job)
{
  g_autoptr (GPtrArray) answers = g_ptr_array_new ();

  for (guint i = 0; i < job->report_fields->len; i++)
    g_ptr_array_add (answers, g_ptr_array_index (job->report_fields, i));
  for (guint i = 0; fields != NULL && i < fields->list->len; i++)
    {
      const Field *field = &g_array_index (fields->list, Field, i);
      TmReportField *answer = field->at >= 0 ? g_ptr_array_index (answers, field->at) : NULL;
      g_autofree char *value = tm_form_text (field->row);

      if (answer == NULL && *value != '\0')
        add_answer (job, field->name, value);
      else if (answer != NULL && *value == '\0')
        tm_job_remove_report_field (job, answer);
      else if (answer != NULL)
        answer->value = tm_job_intern (job, value);
    }
}
