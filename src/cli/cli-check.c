/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-check: tenthmark-cli check, what a job file holds and what is wrong in it.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "cli-check-batch.h"
#include "cli-check-cuts.h"
#include "cli-check-report.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "core-callout.h"
#include "core-gauge.h"
#include "core-pins.h"
#include "core-position.h"
#include "core-station.h"
#include "core-temperature.h"
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
  callout
      = tm_callout_read (feature->requirement, tm_callout_unit (job, feature->unit), job->general_tolerance);
  if (callout.status != TM_CALLOUT_OK && callout.status != TM_CALLOUT_NOT_READ
      && callout.status != TM_CALLOUT_EMPTY)
    add_fault (faults, _ ("feature %s: requirement “%s”: %s"), feature->balloon, feature->requirement,
               _ (tm_callout_status_text (callout.status)));
}

static gboolean
is_method (const TmJob *job, const char *name)
{
  return *name == '\0' || tm_job_find_method (job, name) != NULL || tm_job_find_gauge (job, name) != NULL;
}

/* A bonus comes from the size of a bore or a shaft that is in the job. */
static void
check_size_feature (const TmJob *job, const TmFeature *feature, GPtrArray *faults)
{
  const TmFeature *size = tm_job_find_feature (job, feature->size_feature);

  if (*feature->size_feature == '\0')
    {
      if (feature->kind == TM_KIND_POSITION && feature->modifier != TM_MODIFIER_NONE)
        add_fault (faults,
                   _ ("feature %s: it is toleranced at %s, but no size feature gives the bonus; name it"),
                   feature->balloon, tm_modifier_word (feature->modifier));
    }
  else if (size == NULL)
    add_fault (faults, _ ("feature %s: size feature “%s” is not in this job; add it, or name another"),
               feature->balloon, feature->size_feature);
  else if (size == feature || tm_kind_is_attribute (size->kind) || tm_feature_cut (size) == TM_CUT_UNKNOWN)
    add_fault (faults,
               _ ("feature %s: size feature “%s” is no bore or shaft, so it gives no bonus; say which "
                  "of the two it is, or name another"),
               feature->balloon, feature->size_feature);
}

static void
check_feature (const TmJob *job, const TmFeature *feature, GPtrArray *faults)
{
  TmLimits limits = tm_feature_limits (feature);

  check_requirement (job, feature, faults);
  if (!tm_kind_is_attribute (feature->kind) && !limits.has_lower && !limits.has_upper)
    add_fault (faults, _ ("feature %s: it has no limit; give lower, upper or both"), feature->balloon);
  if (!is_method (job, feature->method))
    add_fault (faults, _ ("feature %s: method “%s” is not in this job; add it, or name another"),
               feature->balloon, feature->method);
  check_size_feature (job, feature, faults);
}

static void
check_method (const TmJob *job, const TmMethod *method, GPtrArray *faults)
{
  if (tm_job_find_gauge (job, method->name) != NULL
      && (method->gauges->len != 1 || strcmp (g_ptr_array_index (method->gauges, 0), method->name) != 0))
    add_fault (faults, _ ("method “%s”: a gauge has the same tag, and is not what it reads with; rename one"),
               method->name);
  for (guint i = 0; i < method->gauges->len; i++)
    {
      const char *tag = g_ptr_array_index (method->gauges, i);

      if (tm_job_find_gauge (job, tag) == NULL)
        add_fault (faults, _ ("method “%s”: gauge “%s” is not in this job; add it, or name another"),
                   method->name, tag);
    }
}

/* The deviation that two offsets make, against the one that stands beside them: half a unit of the
 * last digit written is what rounding explains. */
static gboolean
is_deviation_right (const TmReading *reading)
{
  gint64 found, step, difference;

  if (!reading->value.given || !reading->dx.given || !reading->dy.given)
    return TRUE;
  found = tm_position_deviation (reading);
  step = tm_unit_counts (reading->value.unit);
  for (guint i = 0; i < reading->value.decimals; i++)
    step /= 10;
  difference = found > reading->value.count ? found - reading->value.count : reading->value.count - found;
  return difference <= step / 2 + 1;
}

static void
check_reading (const TmJob *job, const TmReading *reading, GPtrArray *faults)
{
  if (!is_method (job, reading->method))
    add_fault (faults, _ ("reading %s: method “%s” is not in this job; add it"), reading->row.id,
               reading->method);
  if (!tm_temperature_may_be (&reading->part_temp) || !tm_temperature_may_be (&reading->gauge_temp))
    add_fault (faults,
               _ ("reading %s: its temperatures are not both between %d and %d °C; they are degrees Celsius"),
               reading->row.id, TM_TEMPERATURE_LEAST, TM_TEMPERATURE_MOST);
  if (!is_deviation_right (reading))
    {
      g_autofree char *value = tm_quantity_format (&reading->value);
      g_autofree char *found
          = tm_count_format (tm_position_deviation (reading), reading->value.unit, reading->value.decimals);

      add_fault (faults,
                 _ ("reading %s: its offsets make a deviation of %s, but its value is %s; correct it"),
                 reading->row.id, found, value);
    }
}

static void
check_trial (const TmJob *job, const TmPinTrial *trial, GPtrArray *faults)
{
  const TmGauge *set = *trial->gauge != '\0' ? tm_job_find_gauge (job, trial->gauge) : NULL;
  const TmPinSize pin = { .gauge = trial->gauge, .size = trial->size, .measured = trial->size, .extra = "" };
  g_autofree char *size = tm_quantity_format (&trial->size);

  if (!tm_row_counts (&trial->row))
    return;
  if (!tm_pins_measure (trial->row.feature))
    add_fault (faults,
               _ ("pin trial %s: pins do not measure feature %s, so the trial counts for nothing; "
                  "withdraw it"),
               trial->row.id, trial->row.feature->balloon);
  if (set != NULL && tm_pin_size_fault (set, &pin) != TM_GAUGE_FINE)
    add_fault (
        faults,
        _ ("pin trial %s: set “%s” has no pin of %s; look at its size and at the set's range and step"),
        trial->row.id, trial->gauge, size);
}

static void
check_nonconformance (const TmJob *job, const TmNonconformance *note, GPtrArray *faults)
{
  if (*note->piece != '\0' && tm_job_find_piece (job, note->piece) == NULL)
    add_fault (faults, _ ("nonconformance %s: piece “%s” is not in this job; add it, or name another"),
               note->number, note->piece);
  if (*note->feature != '\0' && tm_job_find_feature (job, note->feature) == NULL)
    add_fault (faults, _ ("nonconformance %s: feature “%s” is not in this job; add it, or name another"),
               note->number, note->feature);
}

/* The text is none that is read: every number without tolerance is then a note. */
static void
check_general (const TmJob *job, GPtrArray *faults)
{
  TmCallout callout = tm_callout_read ("10", job->unit, job->general_tolerance);

  if (callout.status == TM_CALLOUT_GENERAL_UNKNOWN)
    add_fault (faults, "general_tolerance “%s”: %s", job->general_tolerance,
               _ (tm_callout_status_text (callout.status)));
}

static GPtrArray *
find_faults (const TmJob *job)
{
  GPtrArray *faults = g_ptr_array_new_with_free_func (g_free);

  check_general (job, faults);
  for (guint i = 0; i < job->methods->len; i++)
    check_method (job, g_ptr_array_index (job->methods, i), faults);
  for (guint i = 0; i < job->features->len; i++)
    check_feature (job, g_ptr_array_index (job->features, i), faults);
  for (guint i = 0; i < job->readings->len; i++)
    check_reading (job, g_ptr_array_index (job->readings, i), faults);
  for (guint i = 0; i < job->pin_trials->len; i++)
    check_trial (job, g_ptr_array_index (job->pin_trials, i), faults);
  for (guint i = 0; i < job->nonconformances->len; i++)
    check_nonconformance (job, g_ptr_array_index (job->nonconformances, i), faults);
  tm_check_cuts (job, faults);
  tm_check_batch (job, faults);
  tm_check_report (job, faults);
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
  tm_print_integer (gen, "tools", job->tools->len);
  tm_print_integer (gen, "mates", job->mate_sizes->len);
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
  printf (_ ("features %u, pieces %u, readings %u, gauges %u, methods %u\n"), job->features->len,
          job->pieces->len, job->readings->len, job->gauges->len, job->methods->len);
  if (job->cuts->len + job->tools->len + job->mate_sizes->len > 0)
    printf (_ ("cuts %u, tools %u, measured mates %u\n"), job->cuts->len, job->tools->len,
            job->mate_sizes->len);
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
