/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A new revision of a part: what is measured again, what the baseline report speaks of, what stays with the
 * job before.  Kinds and reasons of a first article: AS9102, from memory.
 */

#include "judge-support.h"

#include "core-revision.h"

/* Two bores, a position that takes its bonus from the second one, a note; invented. */
static TmJob *
make_part (void)
{
  TmJob *job = make_job (TM_DECISION_SIMPLE);
  TmSupply *supply = tm_supply_new ();
  TmReportField *field = tm_report_field_new ();
  TmFeature *position;

  tm_job_remove_piece (job, first_piece (job)->serial);
  job->revision = "B";
  job->report_identifier = "FA-7";
  job->manufacturing_record = "T-100";
  add_feature (job, "1", TM_KIND_BORE, "25.000", "25.021", "");
  add_feature (job, "2", TM_KIND_BORE, "8.000", "8.015", "");
  add_feature (job, "3", TM_KIND_POSITION, NULL, "0.2", "");
  position = tm_job_find_feature (job, "3");
  position->size_feature = "2";
  position->modifier = TM_MODIFIER_MMC;
  field->name = "Heat";
  field->value = "H-17";
  tm_job_add_report_field (job, field);
  supply->name = "bar";
  supply->certificate = "C-1";
  tm_job_add_supply (job, supply);
  return job;
}

static const char *const second[] = { "2", NULL };
static const char *const stranger[] = { "2", "9", NULL };
static const char *const nothing[] = { NULL };

static TmRevision
make_revision (void)
{
  return (TmRevision) { .id = "11111111-2222-4333-8444-555555555556",
                        .revision = "C",
                        .drawing_revision = "",
                        .report = "FA-8",
                        .reason = "bore 2 larger",
                        .baseline = "FA-7",
                        .affected = second };
}

static void
test_check (void)
{
  g_autoptr (TmJob) job = make_part ();
  TmRevision revision = make_revision ();
  const char *balloon = NULL;

  g_assert_cmpint (tm_revision_check (job, &revision, &balloon), ==, TM_REVISION_OK);
  revision.revision = " ";
  g_assert_cmpint (tm_revision_check (job, &revision, &balloon), ==, TM_REVISION_UNNAMED);
  revision.revision = "B";
  g_assert_cmpint (tm_revision_check (job, &revision, &balloon), ==, TM_REVISION_SAME);
  revision.revision = "C";
  revision.affected = stranger;
  g_assert_cmpint (tm_revision_check (job, &revision, &balloon), ==, TM_REVISION_NO_FEATURE);
  g_assert_cmpstr (balloon, ==, "9");
  revision.affected = nothing;
  g_assert_cmpint (tm_revision_check (job, &revision, NULL), ==, TM_REVISION_NO_AFFECTED);
  revision.affected = NULL;
  g_assert_cmpint (tm_revision_check (job, &revision, NULL), ==, TM_REVISION_NO_AFFECTED);
  revision.baseline = "";
  g_assert_cmpint (tm_revision_check (job, &revision, NULL), ==, TM_REVISION_NO_BASELINE);
  revision.reason = "";
  g_assert_cmpint (tm_revision_check (job, &revision, NULL), ==, TM_REVISION_NO_REASON);
  /* A full one refers to nothing. */
  revision.full = TRUE;
  g_assert_cmpint (tm_revision_check (job, &revision, NULL), ==, TM_REVISION_OK);
  for (guint i = 1; i < TM_N_REVISION_STATUSES; i++)
    g_assert_cmpstr (tm_revision_status_text ((TmRevisionStatus)i), !=, "");
}

static void
test_partial (void)
{
  g_autoptr (TmJob) job = make_part ();
  TmRevision revision = make_revision ();

  tm_job_revise (job, &revision);
  g_assert_cmpstr (job->revision, ==, "C");
  g_assert_cmpstr (job->report_identifier, ==, "FA-8");
  g_assert_cmpstr (job->first_article_baseline, ==, "FA-7");
  g_assert_cmpint (job->first_article, ==, TM_FIRST_ARTICLE_PARTIAL);
  g_assert_false (tm_job_feature_is_asked (job, tm_job_find_feature (job, "1")));
  g_assert_true (tm_job_feature_is_asked (job, tm_job_find_feature (job, "2")));
  /* Its bonus comes from bore 2. */
  g_assert_true (tm_job_feature_is_asked (job, tm_job_find_feature (job, "3")));
  g_assert_cmpstr (job->manufacturing_record, ==, "");
  g_assert_cmpuint (job->report_fields->len, ==, 0);
  g_assert_cmpstr (((TmSupply *)g_ptr_array_index (job->supplies, 0))->certificate, ==, "");
  g_assert_cmpstr (((TmSupply *)g_ptr_array_index (job->supplies, 0))->name, ==, "bar");
}

static void
test_full (void)
{
  g_autoptr (TmJob) job = make_part ();
  TmRevision revision = make_revision ();

  tm_job_find_feature (job, "1")->affected = TRUE;
  revision.full = TRUE;
  tm_job_revise (job, &revision);
  g_assert_cmpint (job->first_article, ==, TM_FIRST_ARTICLE_FULL);
  g_assert_cmpstr (job->first_article_baseline, ==, "");
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      g_assert_false (feature->affected);
      g_assert_true (tm_job_feature_is_asked (job, feature));
    }
}

/* On a first-article piece only what is affected is due; on the pieces of the batch everything. */
static void
test_due (void)
{
  g_autoptr (TmJob) job = make_part ();
  TmRevision revision = make_revision ();
  TmPiece article = { .serial = "001", .first_article = TRUE, .disposition = "" };
  TmPiece other = { .serial = "002", .disposition = "" };

  tm_job_revise (job, &revision);
  g_assert_false (tm_job_feature_is_due (job, tm_job_find_feature (job, "1"), &article, 0));
  g_assert_true (tm_job_feature_is_due (job, tm_job_find_feature (job, "2"), &article, 0));
  g_assert_true (tm_job_feature_is_due (job, tm_job_find_feature (job, "1"), &other, 1));
}

static void
test_requires_other (void)
{
  g_autoptr (TmJob) job = make_part ();
  const TmFeature *before = tm_job_find_feature (job, "1");
  TmFeature with = *before;

  with.name = "renamed";
  with.method = "another";
  g_assert_false (tm_feature_requires_other (before, &with));
  with.upper.count += 1;
  g_assert_true (tm_feature_requires_other (before, &with));
  with = *before;
  with.lower.given = FALSE;
  g_assert_true (tm_feature_requires_other (before, &with));
  with = *before;
  with.places = 2;
  g_assert_true (tm_feature_requires_other (before, &with));
  with = *before;
  with.kind = TM_KIND_NOTE;
  g_assert_true (tm_feature_requires_other (before, &with));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/revision/check", test_check);
  g_test_add_func ("/revision/partial", test_partial);
  g_test_add_func ("/revision/full", test_full);
  g_test_add_func ("/revision/due", test_due);
  g_test_add_func ("/revision/requires-other", test_requires_other);
  return g_test_run ();
}
