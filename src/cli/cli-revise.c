/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-revise: tenthmark-cli revise, the job of a new revision begun from the job of the one before.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-verbs.h"
#include "core-revision.h"
#include "exchange-job.h"

/* What was asked for on the command line; texts are borrowed from it. */
typedef struct {
  const char *revision, *drawing_revision, *report, *reason, *baseline, *affected, *out;
  gboolean full, json;
} Request;

static void
print_balloons (yajl_gen gen, const char *key, const TmJob *job, gboolean asked)
{
  tm_print_key (gen, key);
  yajl_gen_array_open (gen);
  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (tm_job_feature_is_asked (job, feature) == asked)
        tm_print_item (gen, feature->balloon);
    }
  yajl_gen_array_close (gen);
}

static void
print_json (const TmJob *job)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_text (gen, "id", job->id);
  tm_print_text (gen, "revision", job->revision);
  tm_print_text (gen, "first_article", tm_first_article_word (job->first_article));
  print_balloons (gen, "measure_again", job, TRUE);
  print_balloons (gen, "by_reference", job, FALSE);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static void
print_lines (const TmJob *job)
{
  guint n_again = 0;

  for (guint i = 0; i < job->features->len; i++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, i);

      if (!tm_job_feature_is_asked (job, feature))
        continue;
      n_again++;
      printf (_ ("measure again: feature %s, %s\n"), feature->balloon,
              *feature->requirement != '\0' ? feature->requirement : feature->name);
    }
  if (n_again < job->features->len)
    printf (ngettext ("by reference to %2$s: %1$u feature\n", "by reference to %2$s: %1$u features\n",
                      job->features->len - n_again),
            job->features->len - n_again, job->first_article_baseline);
}

/* "1, 4,7" */
static GStrv
split_balloons (const char *text)
{
  g_auto (GStrv) words = g_strsplit (text != NULL ? text : "", ",", -1);
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (guint i = 0; words[i] != NULL; i++)
    {
      if (*g_strstrip (words[i]) != '\0')
        g_strv_builder_add (builder, words[i]);
    }
  return g_strv_builder_end (builder);
}

static int
write_revision (const char *path, const TmJob *job, const TmRevision *revision, const Request *request)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (TmJob) next = tm_job_copy_definitions (job, &error);

  if (next == NULL)
    return tm_fail_error (g_steal_pointer (&error));
  tm_job_revise (next, revision);
  if (g_file_test (request->out, G_FILE_TEST_EXISTS))
    return tm_fail (_ ("%s: is there already; choose another --out"), request->out);
  if (!tm_job_to_file (next, request->out, &error))
    return tm_fail_error (g_steal_pointer (&error));
  if (request->json)
    print_json (next);
  else
    print_lines (next);
  return 0;
}

static const char *
or_empty (const char *text)
{
  return text != NULL ? text : "";
}

static int
revise (const char *path, const Request *request)
{
  g_autoptr (TmJob) job = tm_load_job (path);
  g_auto (GStrv) affected = split_balloons (request->affected);
  g_autofree char *id = g_uuid_string_random ();
  const char *balloon = "";
  TmRevision revision;
  TmRevisionStatus status;

  if (job == NULL)
    return 2;
  revision
      = (TmRevision) { .id = id,
                       .revision = or_empty (request->revision),
                       .drawing_revision = or_empty (request->drawing_revision),
                       .report = or_empty (request->report),
                       .reason = or_empty (request->reason),
                       .baseline = request->baseline != NULL ? request->baseline : job->report_identifier,
                       .full = request->full,
                       .affected = (const char *const *)affected };
  status = tm_revision_check (job, &revision, &balloon);
  if (status == TM_REVISION_NO_FEATURE)
    return tm_fail (_ ("%s: feature %s: %s"), path, balloon, _ (tm_revision_status_text (status)));
  if (status != TM_REVISION_OK)
    return tm_fail ("%s: %s", path, _ (tm_revision_status_text (status)));
  return write_revision (path, job, &revision, request);
}

static gboolean
are_texts_valid (const Request *request)
{
  const char *const texts[] = { request->revision, request->drawing_revision, request->report,
                                request->reason,   request->baseline,         request->affected };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      if (texts[i] == NULL || g_utf8_validate (texts[i], -1, NULL))
        continue;
      g_autofree char *shown = g_utf8_make_valid (texts[i], -1);

      tm_fail (_ ("“%s” is not UTF-8 text; nothing was written"), shown);
      return FALSE;
    }
  return TRUE;
}

int
tm_verb_revise (int n_words, char **words)
{
  Request request = { 0 };
  const TmOption options[] = {
    { "revision", "R", N_ ("the new revision of the part"), &request.revision, NULL },
    { "drawing-revision", "R", N_ ("that of the drawing, where it is another one"), &request.drawing_revision,
      NULL },
    { "affected", "N,N…", N_ ("balloons of the features to be measured again"), &request.affected, NULL },
    { "full", NULL, N_ ("measure every feature again"), NULL, &request.full },
    { "reason", "TEXT", N_ ("why: what has changed"), &request.reason, NULL },
    { "baseline", "ID", N_ ("report that speaks of the rest; else that of the job"), &request.baseline,
      NULL },
    { "report", "ID", N_ ("identifier of the new report"), &request.report, NULL },
    { "out", "FILE", N_ ("the new job file"), &request.out, NULL },
    { "json", NULL, N_ ("print one JSON document"), NULL, &request.json },
    { NULL, NULL, NULL, NULL, NULL },
  };
  const TmVerb *verb = tm_verb_find ("revise");
  int status = 0;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  const char *path;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  if (path == NULL)
    return 2;
  if (request.out == NULL)
    return tm_fail (_ ("%s: say where the new job goes, with --out FILE"), path);
  return are_texts_valid (&request) ? revise (path, &request) : 2;
}
