/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-report-form.h"

#include "app-settings.h"
#include "report-language.h"

/* As they are remembered, in the order of their enumerations. */
static const char *const papers[] = { "a4", "letter" };
static const char *const decimals[] = { "point", "comma" };
static const char *const dates[] = { "year-first", "day-first", "month-first" };

static int
load_word (const char *key, const char *const *words, guint n)
{
  g_autofree char *word = tm_settings_get_text (key);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (word, words[i]))
      return (int)i;
  return TM_FORM_AS_USUAL;
}

static void
save_word (const char *key, const char *const *words, int chosen)
{
  tm_settings_set_text (key, chosen >= 0 ? words[chosen] : "");
}

void
tm_form_choice_load (TmFormChoice *out)
{
  *out = (TmFormChoice) {
    .paper = load_word ("report-paper", papers, G_N_ELEMENTS (papers)),
    .decimal = load_word ("report-decimal", decimals, G_N_ELEMENTS (decimals)),
    .dates = load_word ("report-dates", dates, G_N_ELEMENTS (dates)),
    .landscape = tm_settings_get_flag ("report-landscape"),
  };
}

void
tm_form_choice_save (const TmFormChoice *choice)
{
  g_return_if_fail (choice->paper < (int)G_N_ELEMENTS (papers));
  g_return_if_fail (choice->decimal < (int)G_N_ELEMENTS (decimals));
  g_return_if_fail (choice->dates < (int)G_N_ELEMENTS (dates));

  save_word ("report-paper", papers, choice->paper);
  save_word ("report-decimal", decimals, choice->decimal);
  save_word ("report-dates", dates, choice->dates);
  tm_settings_set_flag ("report-landscape", choice->landscape);
}

static void
own_template (TmJobForm *form, const TmTemplate *template)
{
  form->template = tm_template_copy (template);
  form->form.template = form->template;
}

static void
own_texts (TmJobForm *form, const char *language, const char *second_language)
{
  form->language = g_strdup (language);
  form->second_language = g_strdup (second_language);
  form->form.language = form->language;
  form->form.second_language = form->second_language;
}

void
tm_job_form_fill (TmJobForm *out, const TmJob *job)
{
  TmFormChoice choice;

  g_return_if_fail (out != NULL && job != NULL);

  tm_form_choice_load (&choice);
  *out = (TmJobForm) { 0 };
  own_texts (out, job->language, job->second_language);
  tm_report_form_by_language (&out->form);
  out->form.paper = choice.paper >= 0 ? (TmPaper)choice.paper : tm_paper_of_locale ();
  out->form.landscape = choice.landscape;
  if (choice.decimal >= 0)
    out->form.decimal = (TmDecimal)choice.decimal;
  if (choice.dates >= 0)
    out->form.dates = (TmDateForm)choice.dates;
}

void
tm_job_form_fill_for (TmJobForm *out, TmDocument *document)
{
  g_return_if_fail (TM_IS_DOCUMENT (document));

  tm_job_form_fill (out, tm_document_job (document));
  own_template (out, tm_document_template (document));
}

void
tm_job_form_copy (TmJobForm *out, const TmJobForm *form)
{
  *out = *form;
  own_texts (out, form->language, form->second_language);
  own_template (out, form->template);
}

void
tm_job_form_clear (TmJobForm *form)
{
  g_clear_pointer (&form->language, g_free);
  g_clear_pointer (&form->second_language, g_free);
  g_clear_pointer (&form->template, tm_template_free);
  form->form = (TmReportForm) { 0 };
}
