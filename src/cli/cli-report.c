/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-report: tenthmark-cli report, the first-article report by the ending of its file name.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-report-form.h"
#include "cli-verbs.h"
#include "exchange-job.h"
#include "exchange-qif.h"
#include "exchange-table.h"
#include "exchange-template.h"
#include "report-template.h"
#include "report-workbook.h"

static gboolean
write_csv (const TmJob *job, const char *out, GError **error)
{
  GString *table = tm_table_report (job);
  gboolean written
      = g_file_set_contents_full (out, table->str, (gssize)table->len,
                                  G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0666, error);

  g_string_free (table, TRUE);
  return written;
}

static gboolean
write_qif (const TmJob *job, const char *out, GError **error)
{
  g_autofree char *now = tm_time_now ();
  const TmQifFacts facts = { .created = now };

  return tm_qif_write_file (job, &facts, out, NULL, NULL, error);
}

static gboolean
write_workbook (const TmReportContent *content, const TmReportForm *form, const char *out, GError **error)
{
  g_autofree char *now = tm_report_now ();
  g_autofree char *digest = content->digest == NULL ? tm_job_digest (content->job) : NULL;

  return tm_workbook_write (content, out, form, &(TmWorkbookFacts) { now, digest }, NULL, NULL, error);
}

/* The digest of a long record takes its time, and is asked for only where something was signed. */
static TmReportContent *
gather (const TmJob *job, const TmTemplate *template)
{
  TmReportContent *content = tm_report_content_new (job);
  g_autofree char *digest = job->signatures->len > 0 ? tm_job_digest (job) : NULL;

  tm_report_content_set_digest (content, digest);
  tm_report_content_set_template (content, template);
  return content;
}

/* NULL after an error line. */
static TmTemplate *
load_template (const char *path)
{
  GError *error = NULL;
  g_autoptr (TmTemplate) template = tm_template_from_file (path, &error);

  if (template != NULL && tm_report_template_check (template, &error))
    return g_steal_pointer (&template);
  if (template != NULL)
    g_prefix_error (&error, "%s: ", path);
  tm_fail_error (error);
  return NULL;
}

static int
write_report (const TmReportContent *content, const char *out, const TmReportForm *form, TmPackageMade *told)
{
  g_autofree char *lower = g_ascii_strdown (out, -1);
  GError *error = NULL;
  gboolean written;

  if (g_str_has_suffix (lower, ".xlsx"))
    written = write_workbook (content, form, out, &error);
  else if (g_str_has_suffix (lower, ".csv"))
    written = write_csv (content->job, out, &error);
  else if (g_str_has_suffix (lower, ".qif"))
    written = write_qif (content->job, out, &error);
  else if (g_str_has_suffix (lower, ".pdf"))
    written = tm_write_pages (content, form, out, told, &error);
  else
    return tm_fail (_ ("%s: this version writes .pdf, .xlsx, .qif and .csv; choose one of these endings"),
                    out);
  if (written)
    return 0;
  if (error->domain == G_FILE_ERROR)
    g_prefix_error (&error, _ ("%s: cannot be written; choose another folder or free some space: "), out);
  return tm_fail_error (error);
}

static void
print_result (const TmReportContent *content, const char *out, guint n_pages, gboolean json)
{
  yajl_gen gen;

  if (!json)
    {
      printf (_ ("Wrote %s\n"), out);
      for (guint i = 0; i < content->gaps->len; i++)
        {
          g_autofree char *gap = tm_gap_describe (g_ptr_array_index (content->gaps, i));

          printf (_ ("missing: %s\n"), gap);
        }
      return;
    }
  gen = tm_print_begin ();
  yajl_gen_map_open (gen);
  tm_print_text (gen, "file", out);
  tm_print_integer (gen, "characteristics", content->lines->len);
  tm_print_integer (gen, "in", content->n_in);
  tm_print_integer (gen, "out", content->n_out);
  tm_print_integer (gen, "too_close", content->n_too_close);
  tm_print_integer (gen, "not_measured", content->n_not_measured);
  if (n_pages > 0)
    tm_print_integer (gen, "pages", n_pages);
  tm_print_key (gen, "missing");
  yajl_gen_array_open (gen);
  for (guint i = 0; i < content->gaps->len; i++)
    {
      g_autofree char *gap = tm_gap_describe (g_ptr_array_index (content->gaps, i));

      tm_print_item (gen, gap);
    }
  yajl_gen_array_close (gen);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

int
tm_verb_report (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("report");
  const char *out = NULL;
  const char *template_path = NULL;
  gboolean json = FALSE;
  TmFormWords form_words = { 0 };
  TmReportForm form = { 0 };
  TmPackageMade told = { 0 };
  const TmOption options[] = {
    { "out", "FILE", N_ ("where to write it: .pdf, .xlsx, .qif or .csv"), &out, NULL },
    { "paper", "a4|letter", N_ ("of .pdf and .xlsx; usual where you are"), &form_words.paper, NULL },
    { "landscape", NULL, N_ ("pages on their side"), NULL, &form.landscape },
    { "language", "CODE", N_ ("that .pdf and .xlsx speak: de, en…"), &form.language, NULL },
    { "second-language", "CODE", N_ ("a second one beside it"), &form.second_language, NULL },
    { "template", "FILE", N_ ("the shop's template that .pdf and .xlsx follow: a .tmtemplate file"),
      &template_path, NULL },
    { "json", NULL, N_ ("print JSON"), NULL, &json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  g_autoptr (TmTemplate) template = NULL;
  g_autoptr (TmJob) job = NULL;
  g_autoptr (TmReportContent) content = NULL;
  const char *path;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  if (path == NULL)
    return 2;
  if (out == NULL)
    return tm_fail (_ ("report: say where to write it with --out FILE.pdf, .xlsx, .qif or .csv"));
  if (!tm_read_form (&form_words, &form))
    return 2;
  if (template_path != NULL && (template = load_template (template_path)) == NULL)
    return 2;
  form.template = template;
  job = tm_load_job (path);
  if (job == NULL)
    return 2;
  content = gather (job, template);
  status = write_report (content, out, &form, &told);
  if (status == 0)
    print_result (content, out, told.n_pages, json);
  if (told.missing_glyphs != NULL)
    fprintf (stderr, "tenthmark-cli: %s: %s\n", out, told.missing_glyphs);
  g_free (told.missing_glyphs);
  return status;
}
