/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-study-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app-feature-words.h"
#include "app-words.h"
#include "plot-study.h"

/* Shares of the band or of the study, in percent, under which a gauge is called good, and over which it is
 * called too coarse; classes that a study wants (common practice). */
#define SHARE_GOOD     10
#define SHARE_COARSE   30
#define CLASSES_WANTED 5

static gboolean
is_analysed (const TmStudyResult *result)
{
  return result->status == TM_STUDY_OK || result->status == TM_STUDY_ONE_PERSON;
}

static const char *
translate (const char *text)
{
  return g_dgettext (GETTEXT_PACKAGE, text);
}

static char *
describe_length (double value, TmUnit unit)
{
  g_autofree char *number = tm_study_number (value, unit);

  return g_strdup_printf ("%s %s", number, tm_unit_symbol (unit));
}

char *
tm_words_study_state (const TmJob *job, const TmStudy *study)
{
  const guint n = tm_study_n_cells (study), n_done = tm_study_n_done (job, study);
  TmStudyResult result;

  if (n_done < n && n_done == 0)
    return g_strdup_printf (ngettext ("planned, %u reading to take", "planned, %u readings to take", n), n);
  if (n_done < n)
    return g_strdup_printf (_ ("%u of %u readings taken"), n_done, n);
  tm_study_result (job, study, &result);
  if (!is_analysed (&result))
    return g_strdup (translate (tm_study_status_text (result.status)));
  if (isfinite (result.percent_band))
    return g_strdup_printf (_ ("complete: the gauge eats %.1f %% of the band"), result.percent_band);
  return g_strdup_printf (_ ("complete: the gauge makes %.1f %% of the spread"), result.percent_study);
}

char *
tm_words_study_plan (const TmJob *job, const TmStudy *study)
{
  const TmFeature *feature = tm_job_find_feature (job, study->feature);
  const guint repeats = (guint)study->repeats.count;
  g_autofree char *what = NULL;

  if (feature == NULL)
    return g_strdup_printf (_ ("%s; pieces %u, people %u, repeats %u"), study->method, study->pieces->len,
                            study->people->len, repeats);
  what = tm_words_feature (feature);
  return g_strdup_printf (_ ("%s on %s; pieces %u, people %u, repeats %u"), study->method, what,
                          study->pieces->len, study->people->len, repeats);
}

char *
tm_words_study_person (const TmJob *job, const char *initials)
{
  const TmPerson *person = tm_job_find_person (job, initials);

  if (person == NULL || *person->name == '\0')
    return g_strdup (initials);
  return g_strdup_printf ("%s, %s", initials, person->name);
}

char *
tm_words_study_headline (const TmJob *job, const TmStudy *study, const TmStudyResult *result)
{
  if (!is_analysed (result))
    return g_strdup (translate (tm_study_status_text (result->status)));
  if (!isfinite (result->percent_band))
    return g_strdup_printf (_ ("The gauge makes %.1f %% of the spread seen."), result->percent_study);
  if (result->percent_band <= SHARE_GOOD)
    return g_strdup_printf (_ ("The gauge eats %.1f %% of the band: good for it."), result->percent_band);
  if (result->percent_band <= SHARE_COARSE)
    return g_strdup_printf (_ ("The gauge eats %.1f %% of the band: it may do."), result->percent_band);
  return g_strdup_printf (_ ("The gauge eats %.1f %% of the band: too coarse for it."), result->percent_band);
}

static void
add_line (GString *out, char *line)
{
  if (out->len > 0)
    g_string_append_c (out, '\n');
  g_string_append (out, line);
  g_free (line);
}

/* Six standard deviations hold nearly all readings: that much of the band is the gauge's own. */
static void
add_band_lines (GString *out, const TmJob *job, const TmStudy *study, const TmStudyResult *r)
{
  const double band = tm_study_band (job, study);
  g_autofree char *width = band > 0 ? describe_length (band, study->unit) : NULL;

  if (!(band > 0))
    {
      add_line (out,
                g_strdup (_ ("There is no band to compare with: name a feature or a band for the study.")));
      return;
    }
  if (r->status == TM_STUDY_ONE_PERSON)
    add_line (out, g_strdup_printf (_ ("Repeatability eats %.1f %% of the band of %s."),
                                    tm_study_band_share (r->ev.sd, band), width));
  else
    add_line (out,
              g_strdup_printf (_ ("Repeatability alone eats %.1f %% of the band of %s, people alone %.1f %%; "
                                  "together they take %.1f %%, as spreads add like the sides of a square."),
                               tm_study_band_share (r->ev.sd, band), width,
                               tm_study_band_share (r->between, band), r->percent_band));
  add_line (out, g_strdup_printf (
                     _ ("The share may in truth lie between %.0f %% and %.0f %%. Up to %d %% is called "
                        "good, over %d %% too coarse (common practice)."),
                     tm_study_band_share (r->grr.low, band), tm_study_band_share (r->grr.high, band),
                     SHARE_GOOD, SHARE_COARSE));
}

static char *
describe_p (double p)
{
  return p < 0.001 ? g_strdup (_ ("p under 0.001")) : g_strdup_printf (_ ("p %.3f"), p);
}

static void
add_people_lines (GString *out, const TmStudy *study, const TmStudyResult *r)
{
  g_autofree char *between = describe_length (r->between, study->unit);
  g_autofree char *p = describe_p (r->p_interaction);

  if (r->status == TM_STUDY_ONE_PERSON)
    {
      add_line (out,
                g_strdup (_ ("One person took every reading: how much another person would differ is not "
                             "known, nor whether some pieces are held differently by another hand. The "
                             "repeatability found is this person’s.")));
      return;
    }
  if (!(r->between > 0))
    add_line (out, g_strdup (_ ("People add nothing that this study could see.")));
  else
    add_line (out,
              g_strdup_printf (_ ("From person to person the readings differ by a standard deviation of %s. "
                                  "Repeats do not average that."),
                               between));
  if (r->pooled)
    add_line (out, g_strdup_printf (_ ("No piece is read differently by one person alone (%s); what little "
                                       "there is counts as repeatability."),
                                    p));
  else
    add_line (out, g_strdup_printf (_ ("Some people read some pieces differently (%s): look at how they hold "
                                       "those pieces."),
                                    p));
}

static void
add_class_line (GString *out, const TmStudyResult *r)
{
  if (r->ndc == 0)
    add_line (
        out, g_strdup (_ ("No repeat differs from another: the step of the gauge hides its repeatability.")));
  else if (r->ndc < CLASSES_WANTED)
    add_line (
        out, g_strdup_printf (ngettext ("It tells %u class of these pieces apart; %d or more are wanted to "
                                        "judge a process by it (common practice).",
                                        "It tells %u classes of these pieces apart; %d or more are wanted to "
                                        "judge a process by it (common practice).",
                                        r->ndc),
                              r->ndc, CLASSES_WANTED));
  else
    add_line (out, g_strdup_printf (ngettext ("It tells %u class of these pieces apart.",
                                              "It tells %u classes of these pieces apart.", r->ndc),
                                    r->ndc));
}

char *
tm_words_study_result (const TmJob *job, const TmStudy *study, const TmStudyResult *result)
{
  GString *out = g_string_new (NULL);

  if (!is_analysed (result))
    return g_string_free (out, FALSE);
  add_band_lines (out, job, study, result);
  add_people_lines (out, study, result);
  add_class_line (out, result);
  return g_string_free (out, FALSE);
}

gboolean
tm_study_is_in_method (const TmJob *job, const TmStudy *study)
{
  const TmMethod *method = tm_job_find_method (job, study->method);

  return method != NULL && g_str_has_prefix (method->repeatability_source, "study ")
         && g_str_equal (method->repeatability_source + strlen ("study "), study->name);
}

static const TmBudgetLine *
find_people_line (const TmJob *job, const char *method)
{
  for (guint i = 0; i < job->budget_lines->len; i++)
    {
      const TmBudgetLine *line = g_ptr_array_index (job->budget_lines, i);

      if (line->kind == TM_LINE_PEOPLE && g_str_equal (line->method, method))
        return line;
    }
  return NULL;
}

static char *
describe_quantity (const TmQuantity *quantity)
{
  return quantity->given ? tm_words_quantity (quantity) : g_strdup (_ ("not known"));
}

static char *
describe_in_method (const TmJob *job, const TmStudy *study)
{
  const TmMethod *method = tm_job_find_method (job, study->method);
  const TmBudgetLine *people = find_people_line (job, study->method);
  g_autofree char *repeatability = describe_quantity (&method->repeatability);
  g_autofree char *between = people != NULL ? describe_quantity (&people->value) : NULL;

  if (people == NULL)
    return g_strdup_printf (_ ("The budget of “%s” holds this study: repeatability %s, no line for people."),
                            study->method, repeatability);
  return g_strdup_printf (_ ("The budget of “%s” holds this study: repeatability %s, people %s."),
                          study->method, repeatability, between);
}

char *
tm_words_study_budget (TmJob *job, const TmStudy *study, const TmStudyResult *result)
{
  const TmMethod *method = tm_job_find_method (job, study->method);
  TmStudyBudget budget;
  TmStudyBudgetStatus status = tm_study_budget (job, study, result, &budget);
  g_autofree char *old = NULL, *fresh = NULL, *dof = NULL, *people = NULL;
  char *text;

  if (status != TM_STUDY_BUDGET_OK)
    return g_strdup (translate (tm_study_budget_status_text (status)));
  old = describe_quantity (&method->repeatability);
  fresh = describe_quantity (&budget.repeatability);
  dof = tm_quantity_format (&budget.repeatability_dof);
  people = budget.people != NULL ? describe_quantity (&budget.people->value) : NULL;
  if (tm_study_is_in_method (job, study))
    text = describe_in_method (job, study);
  else if (people != NULL)
    text = g_strdup_printf (
        _ ("Into “%s”: repeatability %s with %s degrees of freedom, in place of %s; and a line for "
           "people, %s."),
        study->method, fresh, dof, old, people);
  else
    text = g_strdup_printf (
        _ ("Into “%s”: repeatability %s with %s degrees of freedom, in place of %s; no line for "
           "people."),
        study->method, fresh, dof, old);
  g_clear_pointer (&budget.people, tm_budget_line_free);
  return text;
}

static void
add_bias_line (GString *out, const TmPaired *p, const char *a, const char *b, TmUnit unit)
{
  const gboolean seen = p->mean_low > 0 || p->mean_high < 0;
  g_autofree char *mean = describe_length (fabs (p->mean), unit);
  g_autofree char *low = tm_study_number (p->mean_low, unit);
  g_autofree char *high = describe_length (p->mean_high, unit);

  add_line (out,
            g_strdup_printf (p->mean < 0 ? _ ("“%s” reads %s less than “%s” on average (95 %%: %s to %s).")
                                         : _ ("“%s” reads %s more than “%s” on average (95 %%: %s to %s)."),
                             a, mean, b, low, high));
  add_line (out, g_strdup (seen ? _ ("Zero is not among these: the two differ in truth.")
                                : _ ("Zero is among these: a difference is not proven.")));
}

char *
tm_words_paired (const TmPaired *paired, const char *method_a, const char *method_b, TmUnit unit)
{
  GString *out = g_string_new (NULL);
  g_autofree char *low = tm_study_number (paired->agree_low, unit);
  g_autofree char *high = describe_length (paired->agree_high, unit);
  g_autofree char *low_low = tm_study_number (paired->agree_low_low, unit);
  g_autofree char *high_high = describe_length (paired->agree_high_high, unit);

  add_bias_line (out, paired, method_a, method_b, unit);
  add_line (out, g_strdup_printf (_ ("On a single piece expect “%s” less “%s” between %s and %s, 19 times of "
                                     "20; known from %u pairs, these bounds may in truth reach %s and %s."),
                                  method_a, method_b, low, high, paired->n, low_low, high_high));
  return g_string_free (out, FALSE);
}
