/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-template.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "plot-drawing.h"
#include "report-content.h"
#include "report-gaps.h"
#include "report-signed.h"

/* -------- What it asks of a job -------- */

/* In place of those of the template before; what signatures say comes after all others. */
void
tm_report_content_set_template (TmReportContent *content, const TmTemplate *template)
{
  g_return_if_fail (content != NULL);

  for (guint i = content->gaps->len; i > 0; i--)
    if (((const TmGap *)g_ptr_array_index (content->gaps, i - 1))->kind == TM_GAP_FIELD_MISSING)
      g_ptr_array_remove_index (content->gaps, i - 1);
  g_clear_pointer (&content->template, tm_template_free);
  content->template = tm_template_copy (template);
  tm_report_find_field_gaps (content);
  tm_report_find_signed_gaps (content);
}

/* -------- How it makes a report look -------- */

/* The logo that was opened last: while somebody looks at pages, or changes the template, it is opened again
 * and again, and that is slow. */
static GMutex kept_lock;
static struct {
  char *digest;
  TmDrawingPage *page;
} kept;

static TmDrawingPage *
take_kept (const char *digest)
{
  TmDrawingPage *page = NULL;

  g_mutex_lock (&kept_lock);
  if (kept.digest != NULL && g_str_equal (kept.digest, digest))
    page = tm_drawing_page_ref (kept.page);
  g_mutex_unlock (&kept_lock);
  return page;
}

static void
keep (const char *digest, TmDrawingPage *page)
{
  g_mutex_lock (&kept_lock);
  g_free (kept.digest);
  g_clear_pointer (&kept.page, tm_drawing_page_unref);
  kept.digest = g_strdup (digest);
  kept.page = tm_drawing_page_ref (page);
  g_mutex_unlock (&kept_lock);
}

static TmDrawingPage *
open_logo (const TmTemplate *template, GError **error)
{
  TmDrawingPage *page = take_kept (template->logo_digest);

  if (page == NULL)
    {
      page = tm_drawing_page_open (template->logo, 1, error);
      if (page != NULL)
        keep (template->logo_digest, page);
    }
  return page;
}

gboolean
tm_report_template_check (const TmTemplate *template, GError **error)
{
  g_autoptr (GError) problem = NULL;
  TmDrawingPage *page;

  if (template == NULL || template->logo == NULL)
    return TRUE;
  page = open_logo (template, &problem);
  if (page == NULL)
    g_set_error (error, TM_REPORT_ERROR, TM_REPORT_ERROR_FAILED, _ ("The logo cannot be used: %s"),
                 problem->message);
  g_clear_pointer (&page, tm_drawing_page_unref);
  return problem == NULL;
}

TmDrawingPage *
tm_report_template_logo (const TmTemplate *template)
{
  return template != NULL && template->logo != NULL ? open_logo (template, NULL) : NULL;
}

void
tm_report_template_apply (const TmTemplate *template, TmReportDocument *document)
{
  TmReportShop *shop = &document->shop;

  if (template == NULL)
    return;
  shop->name = tm_report_text (document, template->name);
  shop->address = tm_report_text (document, template->address);
  shop->has_accent = template->has_accent;
  shop->accent = template->accent;
  shop->accent_reads = tm_template_accent_reads (template);
  shop->has_ground = template->has_ground;
  shop->ground = template->ground;
  shop->text_on_ground = tm_colour_text_on (template->ground);
  g_clear_pointer (&shop->logo, tm_drawing_page_unref);
  shop->logo = tm_report_template_logo (template);
}

/* -------- Statements -------- */

/* That of the user, where the program follows it, without the way in which its letters are stored. */
static const char *
get_own_language (void)
{
  const char *const *name = g_get_language_names ();

  while (*name != NULL && strchr (*name, '.') != NULL)
    name++;
  return *name == NULL || g_str_equal (*name, "C") || g_str_equal (*name, "POSIX") ? "" : *name;
}

static const char *
get_language (const char *code)
{
  return code != NULL && *code != '\0' ? code : get_own_language ();
}

guint
tm_report_template_languages (const TmReportForm *form, const char *codes[2])
{
  guint n = 0;

  codes[n++] = get_language (form->language);
  if (form->second_language != NULL && *form->second_language != '\0')
    codes[n++] = form->second_language;
  return n;
}

gboolean
tm_report_has_statements (const TmTemplate *template, TmStatementPlace place)
{
  for (guint i = 0; template != NULL && i < template->statements->len; i++)
    if (((const TmTemplateStatement *)g_ptr_array_index (template->statements, i))->place == place)
      return TRUE;
  return FALSE;
}

char *
tm_report_statement (const TmTemplateStatement *statement, const TmReportForm *form)
{
  const char *codes[2];
  const guint n = tm_report_template_languages (form, codes);
  const char *first = tm_statement_text (statement, codes[0]);
  const char *second = n > 1 ? tm_statement_text (statement, codes[1]) : NULL;

  if (first == NULL)
    return g_strdup ("");
  if (second == NULL || g_str_equal (first, second))
    return g_strdup (first);
  return g_strconcat (first, "\n", second, NULL);
}
