/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauge-form.h"

#include <glib/gi18n-lib.h>

#include "app-edit.h"
#include "app-form-read.h"
#include "app-form.h"

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

void
tm_gauge_form_fill (TmGaugeForm *form, const TmGauge *gauge, TmUnit unit)
{
  TmGauge *blank = tm_gauge_new ();
  const TmGauge *shown = gauge != NULL ? gauge : blank;

  blank->unit = unit;
  tm_form_fill_text (form->tag, shown->tag);
  tm_form_fill_text (form->kind, shown->kind);
  adw_combo_row_set_selected (form->unit, shown->unit == TM_UNIT_IN ? 1 : 0);
  tm_form_fill_quantity (form->resolution, &shown->resolution, shown->unit);
  tm_form_fill_quantity (form->error_limit, &shown->error_limit, shown->unit);
  tm_form_fill_text (form->calibrated, shown->calibrated);
  tm_form_fill_text (form->due, shown->due);
  tm_form_fill_text (form->certificate, shown->certificate);
  tm_gauge_free (blank);
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
  if (tm_form_read_name (form->tag, job, &read->tag, problem)
      && tm_form_read_quantity (form->resolution, read->unit, &read->resolution, problem)
      && tm_form_read_quantity (form->error_limit, read->unit, &read->error_limit, problem)
      && read_date (form->calibrated, job, &read->calibrated, problem)
      && read_date (form->due, job, &read->due, problem))
    return read;
  tm_gauge_free (read);
  return NULL;
}
