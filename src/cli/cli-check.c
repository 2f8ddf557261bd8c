/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-check: tenthmark-cli check, what a job file holds and what is wrong in it.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-verbs.h"
#include "core-callout.h"
#include "core-station.h"
#include "exchange-job.h"

/* A fault: the thing and the place, and the mend, in one line. */
static void
add_fault (GPtrArray *faults, const char *format, ...)
{
  va_list arguments;

  va_start (arguments, format);
  g_ptr_array_add (faults, g_strdup_vprintf (format, arguments));
  va_end (arguments);
}

/* A requirement that looks like one and yet cannot be held: a note is no fault by itself. */
static void
check_requirement (const TmJob *job, const TmFeature *feature, GPtrArray *faults)
{
  TmCallout callout;

  if (*feature->requirement == '\0' || feature->lower.given || feature->upper.given)
    return;
  callout = tm_callout_read (feature->requirement, job->unit, job->general_tolerance);
  if (callout.status != TM_CALLOUT_OK && callout.status != TM_CALLOUT_NOT_READ
      && callout.status != TM_CALLOUT_EMPTY)
    add_fault (faults, _ ("feature %s: requirement “%s”: %s"), feature->balloon, feature->requirement,
               _ (tm_callout_status_text (callout.status)));
}

static void
check_feature (const TmJob *job, const TmFeature *feature, GPtrArray *faults)
{
  TmLimits limits = tm_feature_limits (feature);

  check_requirement (job, feature, faults);
  if (!tm_kind_is_attribute (feature->kind) && !limits.has_lower && !limits.has_upper)
    add_fault (faults, _ ("feature %s: it has no limit; give lower, upper or both"), feature->balloon);
  if (*feature->method != '\0' && tm_job_find_method (job, feature->method) == NULL
      && tm_job_find_gauge (job, feature->method) == NULL)
    add_fault (faults, _ ("feature %s: method “%s” is not in this job; add it, or name another"),
               feature->balloon, feature->method);
  if (*feature->size_feature != '\0' && tm_job_find_feature (job, feature->size_feature) == NULL)
    add_fault (faults, _ ("feature %s: size feature “%s” is not in this job; add it, or name another"),
               feature->balloon, feature->size_feature);
}

static void
check_method (const TmJob *job, const TmMethod *method, GPtrArray *faults)
{
  for (guint i = 0; i < method->gauges->len; i++)
    {
      const char *tag = g_ptr_array_index (method->gauges, i);

      if (tm_job_find_gauge (job, tag) == NULL)
        add_fault (faults, _ ("method “%s”: gauge “%s” is not in this job; add it, or name another"),
                   method->name, tag);
    }
}

static void
check_reading (const TmJob *job, const TmReading *reading, GPtrArray *faults)
{
  if (*reading->method == '\0' || tm_job_find_method (job, reading->method) != NULL
      || tm_job_find_gauge (job, reading->method) != NULL)
    return;
  add_fault (faults, _ ("reading %s: method “%s” is not in this job; add it"), reading->row.id,
             reading->method);
}

static GPtrArray *
find_faults (const TmJob *job)
{
  GPtrArray *faults = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < job->methods->len; i++)
    check_method (job, g_ptr_array_index (job->methods, i), faults);
  for (guint i = 0; i < job->features->len; i++)
    check_feature (job, g_ptr_array_index (job->features, i), faults);
  for (guint i = 0; i < job->readings->len; i++)
    check_reading (job, g_ptr_array_index (job->readings, i), faults);
  return faults;
}

static void
put_texts (yajl_gen gen, const char *key, const GPtrArray *texts)
{
  tm_print_key (gen, key);
  yajl_gen_array_open (gen);
  for (guint i = 0; texts != NULL && i < texts->len; i++)
    tm_print_item (gen, g_ptr_array_index (texts, i));
  yajl_gen_array_close (gen);
}

static void
print_json (const TmJob *job, const TmJobNotes *notes, const GPtrArray *faults)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_text (gen, "id", job->id);
  tm_print_text (gen, "part_number", job->part_number);
  tm_print_text (gen, "revision", job->revision);
  tm_print_text (gen, "unit", tm_unit_word (job->unit));
  tm_print_integer (gen, "features", job->features->len);
  tm_print_integer (gen, "pieces", job->pieces->len);
  tm_print_integer (gen, "readings", job->readings->len);
  tm_print_integer (gen, "pin_trials", job->pin_trials->len);
  tm_print_integer (gen, "cuts", job->cuts->len);
  tm_print_integer (gen, "gauges", job->gauges->len);
  tm_print_integer (gen, "methods", job->methods->len);
  tm_print_integer (gen, "nonconformances", job->nonconformances->len);
  tm_print_integer (gen, "unknown_members", notes->n_unknown);
  put_texts (gen, "unknown", notes->unknown);
  put_texts (gen, "wrong", faults);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static void
print_words (const TmJob *job, const TmJobNotes *notes, const GPtrArray *faults)
{
  printf (_ ("%s %s, revision %s\n"), job->part_number, job->part_name, *job->revision ? job->revision : "—");
  printf (_ ("%u features, %u pieces, %u readings, %u gauges, %u methods\n"), job->features->len,
          job->pieces->len, job->readings->len, job->gauges->len, job->methods->len);
  for (guint i = 0; notes->unknown != NULL && i < notes->unknown->len; i++)
    printf (_ ("kept, though not known: %s\n"), (const char *)g_ptr_array_index (notes->unknown, i));
  for (guint i = 0; i < faults->len; i++)
    printf (_ ("wrong: %s\n"), (const char *)g_ptr_array_index (faults, i));
  if (faults->len == 0)
    printf ("%s\n", _ ("Nothing wrong found."));
}

int
tm_verb_check (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("check");
  gboolean json = FALSE;
  const TmOption options[] = {
    { "json", NULL, N_ ("print JSON"), NULL, &json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);
  g_autoptr (GPtrArray) faults = NULL;
  g_autoptr (TmJob) job = NULL;
  g_auto (TmJobNotes) notes = { NULL, 0 };
  GError *error = NULL;
  const char *path;

  if (operands == NULL)
    return status;
  path = tm_only_operand (verb, operands);
  if (path == NULL)
    return 2;
  job = tm_job_from_file (path, &notes, NULL, NULL, &error);
  if (job == NULL)
    return tm_fail_error (error);
  faults = find_faults (job);
  if (json)
    print_json (job, &notes, faults);
  else
    print_words (job, &notes, faults);
  return faults->len == 0 ? 0 : 1;
}
