/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-form.h"

/* A number without a unit is in @unit; a protractor says degrees of its own. */
static TmReadStatus
read_in_any_unit (const char *text, TmUnit unit, TmQuantity *out)
{
  TmReadStatus status = tm_quantity_read (text, unit, out);

  return status == TM_READ_UNIT_WRONG ? tm_quantity_read (text, TM_UNIT_DEGREE, out) : status;
}

/* Reads @row into @out; empty is absent; below zero is wrong. */
static gboolean
read_quantity (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));
  TmReadStatus status = read_in_any_unit (text, unit, out);

  tm_form_mark_wrong (row, FALSE);
  if (status == TM_READ_EMPTY)
    *out = TM_QUANTITY_NONE;
  if (status != TM_READ_OK && status != TM_READ_EMPTY)
    return tm_form_refuse (row, problem,
                           g_strdup_printf ("%s: “%s”: %s", title, text,
                                            g_dgettext (GETTEXT_PACKAGE, tm_read_status_text (status))));
  if (out->given && out->count < 0)
    return tm_form_refuse (row, problem, g_strdup_printf (_ ("%s cannot be below zero."), title));
  return TRUE;
}

static gboolean
read_date (AdwEntryRow *row, TmJob *job, const char **out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  g_autofree char *stamp = g_strdup_printf ("%sT00:00:00Z", text);
  g_autoptr (GDateTime) date = NULL;

  tm_form_mark_wrong (row, FALSE);
  if (*text != '\0')
    {
      date = strlen (text) == 10 ? g_date_time_new_from_iso8601 (stamp, NULL) : NULL;
      if (date == NULL)
        return tm_form_refuse (row, problem,
                               g_strdup_printf (_ ("%s: “%s” is no date; write it like 2026-05-04."),
                                                adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)),
                                                text));
    }
  *out = tm_job_intern (job, text);
  return TRUE;
}

void
tm_gauge_form_build (TmGaugeForm *form, GtkBox *into)
{
  const char *units[] = { _ ("millimetre"), _ ("inch"), NULL };
  AdwPreferencesGroup *what = tm_form_group (into, _ ("Gauge"), NULL);
  AdwPreferencesGroup *record
      = tm_form_group (into, _ ("Calibration"), _ ("Dates are year-month-day: 2026-05-04."));

  form->tag = tm_form_entry (what, _ ("Tag"));
  form->kind = tm_form_entry (what, _ ("Kind, for example bore micrometer"));
  form->unit = tm_form_choice (what, _ ("Unit"), units);
  form->resolution = tm_form_entry (what, _ ("Resolution"));
  form->error_limit = tm_form_entry (what, _ ("Limit of error, ±"));
  form->calibrated = tm_form_entry (record, _ ("Calibrated on"));
  form->due = tm_form_entry (record, _ ("Due on"));
  form->certificate = tm_form_entry (record, _ ("Certificate"));
}

static void
fill_quantity (AdwEntryRow *row, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = tm_quantity_format_in (quantity, unit);

  tm_form_mark_wrong (row, FALSE);
  tm_form_set_text (row, text);
}

static void
fill_text (AdwEntryRow *row, const char *text)
{
  tm_form_mark_wrong (row, FALSE);
  tm_form_set_text (row, text);
}

void
tm_gauge_form_fill (TmGaugeForm *form, const TmGauge *gauge, TmUnit unit)
{
  TmGauge *blank = tm_gauge_new ();
  const TmGauge *shown = gauge != NULL ? gauge : blank;

  blank->unit = unit;
  fill_text (form->tag, shown->tag);
  fill_text (form->kind, shown->kind);
  adw_combo_row_set_selected (form->unit, shown->unit == TM_UNIT_IN ? 1 : 0);
  fill_quantity (form->resolution, &shown->resolution, shown->unit);
  fill_quantity (form->error_limit, &shown->error_limit, shown->unit);
  fill_text (form->calibrated, shown->calibrated);
  fill_text (form->due, shown->due);
  fill_text (form->certificate, shown->certificate);
  tm_gauge_free (blank);
}

static gboolean
read_name (AdwEntryRow *row, TmJob *job, const char **out, char **problem)
{
  g_autofree char *text = tm_form_text (row);

  tm_form_mark_wrong (row, FALSE);
  if (*text == '\0')
    return tm_form_refuse (
        row, problem,
        g_strdup_printf (_ ("%s: it needs one."), adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row))));
  *out = tm_job_intern (job, text);
  return TRUE;
}

TmGauge *
tm_gauge_form_read (TmGaugeForm *form, TmJob *job, const TmGauge *gauge, char **problem)
{
  TmGauge *read = gauge != NULL ? tm_edit_copy_gauge (gauge) : tm_gauge_new ();
  g_autofree char *kind = tm_form_text (form->kind);
  g_autofree char *certificate = tm_form_text (form->certificate);

  *problem = NULL;
  read->unit = tm_form_chosen (form->unit) == 1 ? TM_UNIT_IN : TM_UNIT_MM;
  read->kind = tm_job_intern (job, kind);
  read->certificate = tm_job_intern (job, certificate);
  if (read_name (form->tag, job, &read->tag, problem)
      && read_quantity (form->resolution, read->unit, &read->resolution, problem)
      && read_quantity (form->error_limit, read->unit, &read->error_limit, problem)
      && read_date (form->calibrated, job, &read->calibrated, problem)
      && read_date (form->due, job, &read->due, problem))
    return read;
  tm_gauge_free (read);
  return NULL;
}

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

  fill_text (form->name, shown->name);
  fill_gauges (form->first, job, method, 0);
  fill_gauges (form->second, job, method, 1);
  fill_quantity (form->repeatability, &shown->repeatability, unit_of_method (job, shown));
  fill_quantity (form->dof, &shown->repeatability_dof, TM_UNIT_COUNT);
  tm_method_free (blank);
}

static void
take_gauge (AdwComboRow *row, TmJob *job, TmMethod *method)
{
  GObject *item = adw_combo_row_get_selected_item (row);

  if (tm_form_chosen (row) > 0 && GTK_IS_STRING_OBJECT (item))
    g_ptr_array_add (method->gauges,
                     (gpointer)tm_job_intern (job, gtk_string_object_get_string (GTK_STRING_OBJECT (item))));
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
  if (!read_quantity (row, TM_UNIT_COUNT, out, problem))
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

  *problem = NULL;
  g_ptr_array_set_size (read->gauges, 0);
  take_gauge (form->first, job, read);
  take_gauge (form->second, job, read);
  if (read_name (form->name, job, &read->name, problem) && check_gauges (form, read, problem)
      && read_quantity (form->repeatability, unit_of_method (job, read), &read->repeatability, problem)
      && read_dof (form->dof, &read->repeatability_dof, problem))
    return read;
  tm_method_free (read);
  return NULL;
}
