/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-facts.h"

#include <glib/gi18n-lib.h>

#include "report-words.h"

const char *
tm_report_identifier (const TmJob *job)
{
  return *job->report_identifier != '\0' ? job->report_identifier : job->id;
}

const char *
tm_report_kind_word (TmFirstArticleKind kind)
{
  switch (kind)
    {
    case TM_FIRST_ARTICLE_PARTIAL:
      return N_ ("partial");
    case TM_FIRST_ARTICLE_AGAIN:
      return N_ ("re-inspection");
    case TM_FIRST_ARTICLE_FULL:
    case TM_N_FIRST_ARTICLES:
    default:
      return N_ ("full");
    }
}

/* The tooling of all features, each named once. */
static char *
list_tooling (const TmJob *job)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < job->features->len; i++)
    {
      const char *tooling = ((const TmFeature *)g_ptr_array_index (job->features, i))->tooling;

      if (*tooling != '\0' && g_hash_table_add (seen, (gpointer)tooling))
        g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", tooling);
    }
  return g_string_free (out, FALSE);
}

static void
add (TmReportFacts *facts, const char *label, const char *value, TmFactNeed need)
{
  const TmReportFact fact = { label, value, need, FALSE, FALSE };

  g_array_append_val (facts->facts, fact);
}

static void
add_word (TmReportFacts *facts, const char *label, const char *word)
{
  const TmReportFact fact = { label, word, TM_FACT_OPTIONAL, TRUE, FALSE };

  g_array_append_val (facts->facts, fact);
}

static void
add_part (TmReportFacts *facts, const TmJob *job)
{
  add (facts, N_ ("Part number"), job->part_number, TM_FACT_REQUIRED);
  add (facts, N_ ("Part name"), job->part_name, TM_FACT_REQUIRED);
  add (facts, N_ ("Revision"), job->revision, TM_FACT_REQUIRED);
  add (facts, N_ ("Drawing number"), job->drawing, TM_FACT_REQUIRED);
  add (facts, N_ ("Customer"), job->customer, TM_FACT_REQUIRED);
  add (facts, N_ ("Order"), job->order, TM_FACT_REQUIRED);
  add (facts, N_ ("Drawing revision"), job->drawing_revision, TM_FACT_OPTIONAL);
  add (facts, N_ ("Changes not yet on the drawing"), job->drawing_changes, TM_FACT_BY_HAND);
  add (facts, N_ ("Pieces"), facts->pieces, TM_FACT_OPTIONAL);
  add_word (facts, N_ ("Detail part or assembly"),
            job->article == TM_ARTICLE_ASSEMBLY ? N_ ("assembly") : N_ ("detail part"));
}

static void
add_report (TmReportFacts *facts, const TmJob *job)
{
  add (facts, N_ ("Report identifier"), tm_report_identifier (job), TM_FACT_OPTIONAL);
  add_word (facts, N_ ("Kind of first article"), tm_report_kind_word (job->first_article));
  add (facts, N_ ("Reason"), job->first_article_reason, TM_FACT_OPTIONAL);
  add (facts, N_ ("Baseline report"), job->first_article_baseline, TM_FACT_OPTIONAL);
  add (facts, N_ ("Organisation"), job->organisation, TM_FACT_BY_HAND);
  add (facts, N_ ("Supplier code"), job->supplier_code, TM_FACT_BY_HAND);
  add (facts, N_ ("Manufacturing record"), job->manufacturing_record, TM_FACT_BY_HAND);
  add (facts, N_ ("Tooling qualified for this part"), facts->tooling, TM_FACT_BY_HAND);
  add (facts, N_ ("Material"), job->material, TM_FACT_OPTIONAL);
  add (facts, N_ ("Unit of the drawing"), tm_unit_symbol (job->unit), TM_FACT_OPTIONAL);
  add (facts, N_ ("Tolerancing standard"), tm_standard_word (job->standard), TM_FACT_OPTIONAL);
  add (facts, N_ ("General tolerance"), job->general_tolerance, TM_FACT_OPTIONAL);
}

static void
add_own (TmReportFacts *facts, const char *name, const char *value, TmFactNeed need)
{
  const TmReportFact fact = { name, value, need, FALSE, TRUE };

  g_array_append_val (facts->facts, fact);
}

/* What the shop's template asks for, answered or not, in its order. */
static void
add_asked (TmReportFacts *facts, const TmJob *job, const TmTemplateField *asked)
{
  const guint before = facts->facts->len;

  for (guint i = 0; i < job->report_fields->len; i++)
    {
      const TmReportField *field = g_ptr_array_index (job->report_fields, i);

      if (g_str_equal (field->name, asked->name))
        add_own (facts, field->name, field->value, TM_FACT_BY_HAND);
    }
  if (facts->facts->len == before)
    add_own (facts, asked->name, "", asked->required ? TM_FACT_REQUIRED : TM_FACT_BY_HAND);
}

/* Then what the job says besides. */
static void
add_fields (TmReportFacts *facts, const TmJob *job, const TmTemplate *template)
{
  for (guint i = 0; template != NULL && i < template->fields->len; i++)
    add_asked (facts, job, g_ptr_array_index (template->fields, i));
  for (guint i = 0; i < job->report_fields->len; i++)
    {
      const TmReportField *field = g_ptr_array_index (job->report_fields, i);

      if (tm_template_find_field (template, field->name) == NULL)
        add_own (facts, field->name, field->value, TM_FACT_BY_HAND);
    }
}

void
tm_report_facts (const TmReportContent *content, TmReportFacts *out)
{
  const TmJob *job = content->job;

  out->facts = g_array_new (FALSE, FALSE, sizeof (TmReportFact));
  out->pieces = tm_report_pieces (content);
  out->tooling = list_tooling (job);
  add_part (out, job);
  add_report (out, job);
  add_fields (out, job, content->template);
}

void
tm_report_facts_clear (TmReportFacts *facts)
{
  g_clear_pointer (&facts->facts, g_array_unref);
  g_clear_pointer (&facts->pieces, g_free);
  g_clear_pointer (&facts->tooling, g_free);
}

char *
tm_report_referred (const TmReportContent *content)
{
  const char *baseline = content->job->first_article_baseline;
  g_autoptr (GString) list = g_string_new (NULL);

  if (content->referred->len == 0)
    return NULL;
  for (guint i = 0; i < content->referred->len; i++)
    g_string_append_printf (list, "%s%s", i > 0 ? ", " : "",
                            ((const TmFeature *)g_ptr_array_index (content->referred, i))->balloon);
  if (*baseline == '\0')
    return g_strdup_printf (
        ngettext ("Not measured again, by reference to a baseline report that is not named yet: feature %s.",
                  "Not measured again, by reference to a baseline report that is not named yet: features %s.",
                  content->referred->len),
        list->str);
  return g_strdup_printf (ngettext ("Not measured again, by reference to baseline report %s: feature %s.",
                                    "Not measured again, by reference to baseline report %s: features %s.",
                                    content->referred->len),
                          baseline, list->str);
}
