/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "core-revision.h"

#include <glib/gi18n-lib.h>

static gboolean
is_blank (const char *text)
{
  for (; *text != '\0'; text++)
    {
      if (!g_ascii_isspace (*text))
        return FALSE;
    }
  return TRUE;
}

static TmRevisionStatus
check_partial (const TmJob *job, const TmRevision *revision, const char **balloon)
{
  if (is_blank (revision->reason))
    return TM_REVISION_NO_REASON;
  if (is_blank (revision->baseline))
    return TM_REVISION_NO_BASELINE;
  if (revision->affected == NULL || revision->affected[0] == NULL)
    return TM_REVISION_NO_AFFECTED;
  for (guint i = 0; revision->affected[i] != NULL; i++)
    {
      if (tm_job_find_feature (job, revision->affected[i]) != NULL)
        continue;
      if (balloon != NULL)
        *balloon = revision->affected[i];
      return TM_REVISION_NO_FEATURE;
    }
  return TM_REVISION_OK;
}

TmRevisionStatus
tm_revision_check (const TmJob *job, const TmRevision *revision, const char **balloon)
{
  g_return_val_if_fail (job != NULL && revision != NULL, TM_REVISION_UNNAMED);

  if (is_blank (revision->revision))
    return TM_REVISION_UNNAMED;
  if (g_str_equal (revision->revision, job->revision))
    return TM_REVISION_SAME;
  return revision->full ? TM_REVISION_OK : check_partial (job, revision, balloon);
}

const char *
tm_revision_status_text (TmRevisionStatus status)
{
  static const char *const texts[TM_N_REVISION_STATUSES] = {
    [TM_REVISION_OK] = "",
    [TM_REVISION_UNNAMED] = N_ ("the new revision has no name; type it as the drawing has it"),
    [TM_REVISION_SAME] = N_ ("this is the revision of the job already; type the new one"),
    [TM_REVISION_NO_REASON] = N_ ("a partial first article needs its reason; say what has changed"),
    [TM_REVISION_NO_BASELINE]
    = N_ ("a partial first article refers to a baseline report; name it, or measure everything again"),
    [TM_REVISION_NO_AFFECTED]
    = N_ ("no feature is affected, so nothing would be measured; mark those that are"),
    [TM_REVISION_NO_FEATURE] = N_ ("the job has no such feature; name one of its balloons"),
  };

  g_return_val_if_fail ((guint)status < TM_N_REVISION_STATUSES, "");

  return texts[status];
}

/* -------- The new job -------- */

static void
set_facts (TmJob *job, const TmRevision *revision)
{
  job->id = tm_job_intern (job, revision->id);
  job->revision = tm_job_intern (job, revision->revision);
  job->drawing_revision = tm_job_intern (job, revision->drawing_revision);
  job->drawing_changes = "";
  job->report_identifier = tm_job_intern (job, revision->report);
  job->manufacturing_record = "";
  job->first_article = revision->full ? TM_FIRST_ARTICLE_FULL : TM_FIRST_ARTICLE_PARTIAL;
  job->first_article_reason = tm_job_intern (job, revision->reason);
  job->first_article_baseline = tm_job_intern (job, revision->full ? "" : revision->baseline);
}

/* What was proven was the material and the parts of the pieces made before.  What the shop's template asked
 * for may be of their lot too: a heat number that is asked for again is a nuisance, an old one on a new
 * report a lie. */
static void
forget_proofs (TmJob *job)
{
  for (guint i = 0; i < job->supplies->len; i++)
    ((TmSupply *)g_ptr_array_index (job->supplies, i))->certificate = "";
  for (guint i = 0; i < job->sub_parts->len; i++)
    ((TmSubPart *)g_ptr_array_index (job->sub_parts, i))->serial = "";
  g_ptr_array_set_size (job->report_fields, 0);
}

/* One whose bonus follows from an affected size is judged anew with it.  TRUE when one was found. */
static gboolean
follow_sizes (const TmJob *job, GHashTable *affected)
{
  gboolean found = FALSE;

  for (guint i = 0; i < job->features->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (job->features, i);
      TmFeature *size
          = *feature->size_feature != '\0' ? tm_job_find_feature (job, feature->size_feature) : NULL;

      if (size != NULL && g_hash_table_contains (affected, size))
        found |= g_hash_table_add (affected, feature);
    }
  return found;
}

GHashTable *
tm_revision_affected (const TmJob *job, const char *const *balloons)
{
  GHashTable *affected = g_hash_table_new (NULL, NULL);

  g_return_val_if_fail (job != NULL, affected);

  for (guint i = 0; balloons != NULL && balloons[i] != NULL; i++)
    {
      TmFeature *feature = tm_job_find_feature (job, balloons[i]);

      if (feature != NULL)
        g_hash_table_add (affected, feature);
    }
  while (follow_sizes (job, affected))
    ;
  return affected;
}

static void
mark_affected (TmJob *job, const TmRevision *revision)
{
  g_autoptr (GHashTable) affected = tm_revision_affected (job, revision->full ? NULL : revision->affected);

  for (guint i = 0; i < job->features->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (job->features, i);

      feature->affected = g_hash_table_contains (affected, feature);
    }
}

void
tm_job_revise (TmJob *job, const TmRevision *revision)
{
  g_return_if_fail (job != NULL && revision != NULL);
  g_return_if_fail (job->pieces->len == 0 && job->signatures->len == 0);

  set_facts (job, revision);
  forget_proofs (job);
  mark_affected (job, revision);
}

/* -------- What the baseline cannot speak of -------- */

static gboolean
quantities_differ (const TmQuantity *a, const TmQuantity *b)
{
  return a->given != b->given
         || (a->given
             && (a->count != b->count
                 || tm_unit_dimension ((TmUnit)a->unit) != tm_unit_dimension ((TmUnit)b->unit)));
}

gboolean
tm_feature_requires_other (const TmFeature *before, const TmFeature *with)
{
  g_return_val_if_fail (before != NULL && with != NULL, FALSE);

  return before->kind != with->kind || before->places != with->places || before->modifier != with->modifier
         || before->zone_diameter != with->zone_diameter || before->envelope != with->envelope
         || quantities_differ (&before->lower, &with->lower)
         || quantities_differ (&before->upper, &with->upper)
         || quantities_differ (&before->nominal, &with->nominal)
         || !g_str_equal (before->datums, with->datums)
         || !g_str_equal (before->size_feature, with->size_feature)
         || (tm_kind_is_attribute (with->kind) && !g_str_equal (before->requirement, with->requirement));
}

gboolean
tm_job_is_by_reference (const TmJob *job)
{
  g_return_val_if_fail (job != NULL, FALSE);

  if (job->first_article != TM_FIRST_ARTICLE_PARTIAL)
    return FALSE;
  for (guint i = 0; i < job->features->len; i++)
    {
      if (((const TmFeature *)g_ptr_array_index (job->features, i))->affected)
        return TRUE;
    }
  return FALSE;
}
