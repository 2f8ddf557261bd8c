/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The form of a report: what was chosen, and what is usual where nothing was.
 */

#include "app-report-form.h"

static TmJob *
make_job (const char *language, const char *second_language)
{
  TmJob *job = tm_job_new ();

  job->language = tm_job_intern (job, language);
  job->second_language = tm_job_intern (job, second_language);
  return job;
}

/* German has a decimal comma and the day first (Unicode CLDR, "de", from memory); a choice comes before. */
static void
test_usual (void)
{
  const TmFormChoice usual = { TM_FORM_AS_USUAL, TM_FORM_AS_USUAL, TM_FORM_AS_USUAL, FALSE };
  const TmFormChoice own = { TM_PAPER_LETTER, TM_DECIMAL_POINT, TM_DATE_ISO, TRUE };
  g_autoptr (TmJob) job = make_job ("de", "en");
  g_auto (TmJobForm) form = { 0 };
  g_auto (TmJobForm) chosen = { 0 };

  tm_form_choice_save (&usual);
  tm_job_form_fill (&form, job);
  g_assert_cmpint (form.form.decimal, ==, TM_DECIMAL_COMMA);
  g_assert_cmpint (form.form.dates, ==, TM_DATE_DMY);
  g_assert_cmpint (form.form.paper, ==, tm_paper_of_locale ());
  g_assert_false (form.form.landscape);
  tm_form_choice_save (&own);
  tm_job_form_fill (&chosen, job);
  g_assert_cmpint (chosen.form.decimal, ==, TM_DECIMAL_POINT);
  g_assert_cmpint (chosen.form.dates, ==, TM_DATE_ISO);
  g_assert_cmpint (chosen.form.paper, ==, TM_PAPER_LETTER);
  g_assert_true (chosen.form.landscape);
  tm_form_choice_save (&usual);
}

/* A copy stands on its own when job and form are gone. */
static void
test_copy (void)
{
  TmJob *job = make_job ("de", "en");
  TmJobForm form;
  g_auto (TmJobForm) copy = { 0 };

  tm_job_form_fill (&form, job);
  tm_job_form_copy (&copy, &form);
  tm_job_form_clear (&form);
  tm_job_free (job);
  g_assert_cmpstr (copy.form.language, ==, "de");
  g_assert_cmpstr (copy.form.second_language, ==, "en");
  g_assert_cmpint (copy.form.decimal, ==, TM_DECIMAL_COMMA);
}

static void
test_remembered (void)
{
  TmFormChoice back;

  for (int paper = TM_FORM_AS_USUAL; paper <= TM_PAPER_LETTER; paper++)
    for (int decimal = TM_FORM_AS_USUAL; decimal <= TM_DECIMAL_COMMA; decimal++)
      for (int dates = TM_FORM_AS_USUAL; dates <= TM_DATE_MDY; dates++)
        {
          tm_form_choice_save (&(TmFormChoice) { paper, decimal, dates, dates == TM_DATE_DMY });
          tm_form_choice_load (&back);
          g_assert_cmpint (back.paper, ==, paper);
          g_assert_cmpint (back.decimal, ==, decimal);
          g_assert_cmpint (back.dates, ==, dates);
          g_assert_cmpint (back.landscape, ==, dates == TM_DATE_DMY);
        }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report-form/usual", test_usual);
  g_test_add_func ("/report-form/copy", test_copy);
  g_test_add_func ("/report-form/remembered", test_remembered);
  return g_test_run ();
}
