/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-form-read.h"

#include <glib/gi18n-lib.h>

#include "app-form.h"

/* A number without a unit is in @unit; a protractor says degrees of its own. */
static TmReadStatus
read_in_any_unit (const char *text, TmUnit unit, TmQuantity *out)
{
  TmReadStatus status = tm_quantity_read (text, unit, out);

  return status == TM_READ_UNIT_WRONG ? tm_quantity_read (text, TM_UNIT_DEGREE, out) : status;
}

gboolean
tm_form_read_signed (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem)
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
  return TRUE;
}

gboolean
tm_form_read_quantity (AdwEntryRow *row, TmUnit unit, TmQuantity *out, char **problem)
{
  const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));

  if (!tm_form_read_signed (row, unit, out, problem))
    return FALSE;
  if (out->given && out->count < 0)
    return tm_form_refuse (row, problem, g_strdup_printf (_ ("%s cannot be below zero."), title));
  return TRUE;
}

gboolean
tm_form_read_date (AdwEntryRow *row, TmJob *job, const char **out, char **problem)
{
  g_autofree char *text = tm_form_text (row);
  g_autofree char *stamp = g_strdup_printf ("%sT00:00:00Z", text);
  const char *title = adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row));
  g_autoptr (GDateTime) date = NULL;

  tm_form_mark_wrong (row, FALSE);
  if (*text != '\0')
    {
      date = strlen (text) == 10 ? g_date_time_new_from_iso8601 (stamp, NULL) : NULL;
      if (date == NULL)
        return tm_form_refuse (
            row, problem,
            g_strdup_printf (_ ("%s: “%s” is no date; write it like 2026-05-04."), title, text));
    }
  *out = tm_job_intern (job, text);
  return TRUE;
}

const char *
tm_form_read_text (AdwEntryRow *row, TmJob *job)
{
  g_autofree char *text = tm_form_text (row);

  return tm_job_intern (job, text);
}

gboolean
tm_form_read_name (AdwEntryRow *row, TmJob *job, const char **out, char **problem)
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

void
tm_form_fill_quantity (AdwEntryRow *row, const TmQuantity *quantity, TmUnit unit)
{
  g_autofree char *text = tm_quantity_format_in (quantity, unit);

  tm_form_mark_wrong (row, FALSE);
  tm_form_set_text (row, text);
}

void
tm_form_fill_text (AdwEntryRow *row, const char *text)
{
  tm_form_mark_wrong (row, FALSE);
  tm_form_set_text (row, text);
}
