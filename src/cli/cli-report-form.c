/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "cli-report-form.h"

#include <glib/gi18n-lib.h>

#include "cli-verbs.h"
#include "report-language.h"
#include "report-package.h"

gboolean
tm_read_form (const TmFormWords *words, TmReportForm *form)
{
  g_autoptr (GError) error = NULL;

  form->paper = tm_paper_of_locale ();
  if (words->paper != NULL && g_ascii_strcasecmp (words->paper, "a4") == 0)
    form->paper = TM_PAPER_A4;
  else if (words->paper != NULL && g_ascii_strcasecmp (words->paper, "letter") == 0)
    form->paper = TM_PAPER_LETTER;
  else if (words->paper != NULL)
    {
      tm_fail (_ ("report: --paper %s is not known; choose a4 or letter"), words->paper);
      return FALSE;
    }
  tm_report_form_by_language (form);
  if (tm_report_form_check (form, &error))
    return TRUE;
  tm_fail (_ ("report: %s"), error->message);
  return FALSE;
}

char *
tm_report_now (void)
{
  const char *fixed = g_getenv ("SOURCE_DATE_EPOCH");
  gint64 seconds;
  g_autoptr (GDateTime) at = NULL;

  if (fixed == NULL || !g_ascii_string_to_signed (fixed, 10, 0, 253402300799, &seconds, NULL))
    seconds = g_get_real_time () / G_USEC_PER_SEC;
  at = g_date_time_new_from_unix_utc (seconds);
  return g_date_time_format (at, "%Y-%m-%dT%H:%M:%SZ");
}

gboolean
tm_write_pages (const TmReportContent *content, const TmReportForm *form, const char *path,
                TmPackageMade *told, GError **error)
{
  g_autofree char *made = tm_report_now ();

  return tm_report_package_write (content, form, made, path, told, NULL, NULL, error);
}
