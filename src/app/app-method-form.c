/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-method-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-form-read.h"
#include "app-form.h"

void
tm_method_form_build (TmMethodForm *form, GtkBox *into)
{
  const char *none[] = { _ ("none"), NULL };
  AdwPreferencesGroup *what = tm_form_group (
      into, _ ("Method"),
      _ ("One gauge, or a transfer gauge (telescoping gauge, small-hole gauge) and the instrument that "
         "reads it."));
  AdwPreferencesGroup *spread = tm_form_group (
      into, _ ("Repeatability"),
      _ ("The standard deviation of one reading, from readings of one feature repeated by this method."));

  form->name = tm_form_entry (what, _ ("Name"));
  form->first = tm_form_choice (what, _ ("Gauge, or transfer gauge"), none);
  form->second = tm_form_choice (what, _ ("Instrument that reads it"), none);
  form->repeatability = tm_form_entry (spread, _ ("Standard deviation, in the gauge’s unit"));
  form->dof = tm_form_entry (spread, _ ("Degrees of freedom: repeats less one"));
  form->source = tm_form_entry (spread, _ ("Where the figure comes from"));
  form->spread = spread;
}

static void
fill_gauges (AdwComboRow *row, const TmJob *job, const TmMethod *method, guint which)
{
  const char *chosen
      = method != NULL && method->gauges->len > which ? g_ptr_array_index (method->gauges, which) : "";
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  guint at = 0;

  g_ptr_array_add (words, (gpointer)_ ("none"));
  for (guint i = 0; i < job->gauges->len; i++)
    {
      const TmGauge *gauge = g_ptr_array_index (job->gauges, i);

      if (g_str_equal (gauge->tag, chosen))
        at = words->len;
      g_ptr_array_add (words, (gpointer)gauge->tag);
    }
  if (at == 0 && *chosen != '\0')
    {
      at = words->len;
      g_ptr_array_add (words, (gpointer)chosen);
    }
  g_ptr_array_add (words, NULL);
  tm_form_set_words (row, (const char *const *)words->pdata, at);
}

/* The unit of the method's first gauge. */
static TmUnit
unit_of_method (const TmJob *job, const TmMethod *method)
{
  const TmGauge *gauge
      = method->gauges->len > 0 ? tm_job_find_gauge (job, g_ptr_array_index (method->gauges, 0)) : NULL;

  return gauge != NULL ? gauge->unit : job->unit;
}

void
tm_method_form_fill (TmMethodForm *form, const TmJob *job, const TmMethod *method)
{
  TmMethod *blank = tm_method_new ();
  const TmMethod *shown = method != NULL ? method : blank;

  tm_form_fill_text (form->name, shown->name);
  fill_gauges (form->first, job, method, 0);
  fill_gauges (form->second, job, method, 1);
  tm_form_fill_quantity (form->repeatability, &shown->repeatability, unit_of_method (job, shown));
  tm_form_fill_quantity (form->dof, &shown->repeatability_dof, TM_UNIT_COUNT);
  tm_form_fill_text (form->source, shown->repeatability_source);
  tm_method_free (blank);
}

void
tm_method_form_propose (TmMethodForm *form, const TmQuantity *repeatability, guint dof, const char *source)
{
  const TmQuantity degrees = tm_quantity_new (dof, TM_UNIT_COUNT, 0);

  tm_form_fill_quantity (form->repeatability, repeatability, (TmUnit)repeatability->unit);
  tm_form_fill_quantity (form->dof, &degrees, TM_UNIT_COUNT);
  tm_form_fill_text (form->source, source);
}

static const char *
chosen_tag (AdwComboRow *row)
{
  GObject *item = adw_combo_row_get_selected_item (row);

  return tm_form_chosen (row) > 0 && GTK_IS_STRING_OBJECT (item)
             ? gtk_string_object_get_string (GTK_STRING_OBJECT (item))
             : "";
}

TmUnit
tm_method_form_unit (TmMethodForm *form, const TmJob *job)
{
  const TmGauge *gauge = tm_job_find_gauge (job, chosen_tag (form->first));

  return gauge != NULL ? gauge->unit : job->unit;
}

static void
take_gauge (AdwComboRow *row, TmJob *job, TmMethod *method)
{
  const char *tag = chosen_tag (row);

  if (*tag != '\0')
    g_ptr_array_add (method->gauges, (gpointer)tm_job_intern (job, tag));
}

static gboolean
check_there (TmMethodForm *form, const TmJob *job, const TmMethod *method, char **problem)
{
  for (guint i = 0; i < method->gauges->len; i++)
    if (tm_job_find_gauge (job, g_ptr_array_index (method->gauges, i)) == NULL)
      return tm_form_refuse (
          form->name, problem,
          g_strdup_printf (_ ("%s is not in the register; choose another gauge, or add it."),
                           (const char *)g_ptr_array_index (method->gauges, i)));
  return TRUE;
}

static gboolean
check_gauges (TmMethodForm *form, const TmMethod *method, char **problem)
{
  if (method->gauges->len == 0)
    return tm_form_refuse (form->name, problem,
                           g_strdup (_ ("A method needs a gauge; choose one, or add it first.")));
  if (method->gauges->len == 2
      && g_str_equal (g_ptr_array_index (method->gauges, 0), g_ptr_array_index (method->gauges, 1)))
    return tm_form_refuse (form->name, problem,
                           g_strdup (_ ("The transfer gauge and its instrument are the same gauge.")));
  return TRUE;
}

/* Fewer than one degree of freedom says nothing of the spread. */
static gboolean
read_dof (AdwEntryRow *row, TmQuantity *out, char **problem)
{
  if (!tm_form_read_quantity (row, TM_UNIT_COUNT, out, problem))
    return FALSE;
  if (out->given && out->count < 1)
    return tm_form_refuse (
        row, problem,
        g_strdup (_ ("Degrees of freedom must be at least 1; leave them out when they are not known.")));
  return TRUE;
}

TmMethod *
tm_method_form_read (TmMethodForm *form, TmJob *job, const TmMethod *method, char **problem)
{
  TmMethod *read = method != NULL ? tm_edit_copy_method (method) : tm_method_new ();

  g_autofree char *source = tm_form_text (form->source);

  *problem = NULL;
  read->repeatability_source = tm_job_intern (job, source);
  g_ptr_array_set_size (read->gauges, 0);
  take_gauge (form->first, job, read);
  take_gauge (form->second, job, read);
  if (tm_form_read_name (form->name, job, &read->name, problem) && check_gauges (form, read, problem)
      && check_there (form, job, read, problem)
      && tm_form_read_quantity (form->repeatability, unit_of_method (job, read), &read->repeatability,
                                problem)
      && read_dof (form->dof, &read->repeatability_dof, problem))
    return read;
  tm_method_free (read);
  return NULL;
}
