/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-record: tenthmark-cli record, readings added to a job file as typed at the bench.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>

#include "bench-session.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "exchange-job.h"

/* What was asked for on the command line; texts are borrowed from it. */
typedef struct {
  const char *path;
  const char *serial;
  const char *balloon;
  const char *place;
  const char *station;
  const char *method;
  const char *by;
  const char *at;
  gboolean sure;
  gboolean new_piece;
  gboolean json;
} Request;

static TmPiece *
find_or_make_piece (TmJob *job, const Request *request)
{
  TmPiece *piece = tm_job_find_piece (job, request->serial);

  if (piece != NULL || !request->new_piece)
    {
      if (piece == NULL)
        tm_fail (_ ("%s: there is no piece “%s”; add it with --new-piece"), request->path, request->serial);
      return piece;
    }
  piece = tm_piece_new ();
  piece->serial = tm_job_intern (job, request->serial);
  if (tm_job_add_piece (job, piece) == TM_ADD_OK)
    return piece;
  tm_piece_free (piece);
  tm_fail (_ ("%s: a piece needs a serial"), request->path);
  return NULL;
}

static guint
read_place (const Request *request, const TmFeature *feature)
{
  guint64 place = 1;

  if (request->place != NULL
      && !g_ascii_string_to_unsigned (request->place, 10, 1, feature->places, &place, NULL))
    {
      tm_fail (_ ("%s: feature %s has places 1 to %u; --place “%s” is none of them"), request->path,
               feature->balloon, feature->places, request->place);
      return 0;
    }
  return (guint)place;
}

/* Where value number @index goes: the stated station, else the feature's stations in turn. */
static const char *
station_for (const Request *request, const TmFeature *feature, guint index)
{
  if (request->station != NULL)
    return request->station;
  if (feature->stations->len == 0)
    return "";
  return g_ptr_array_index (feature->stations, index % feature->stations->len);
}

static int
say_refused (const Request *request, TmBench *bench, const char *text)
{
  return tm_fail (_ ("%s: feature %s, value “%s”: %s; nothing was recorded"), request->path, request->balloon,
                  text, _ (tm_entry_status_text (tm_bench_entry (bench)->status)));
}

static int
say_slip (const Request *request, TmBench *bench, const char *text)
{
  const TmSlipCheck *question = tm_bench_question (bench);
  g_autofree char *likelier = tm_quantity_format (&question->likelier);

  if (!question->likelier.given)
    return tm_fail (
        _ ("%s: feature %s, value “%s” is far from everything read so far; add --sure to record it"),
        request->path, request->balloon, text);
  return tm_fail (
      _ ("%s: feature %s, value “%s” looks like a slip of the hand, %s is likelier; add --sure to "
         "record it as typed"),
      request->path, request->balloon, text, likelier);
}

/* Records one value.  A slip is asked about at the bench; here --sure stands for the second Enter. */
static int
record_value (const Request *request, TmBench *bench, const char *text)
{
  GError *error = NULL;
  g_autofree char *at = request->at != NULL ? g_strdup (request->at) : tm_time_now ();
  TmSubmit submit;

  tm_bench_set_text (bench, text);
  submit = tm_bench_submit (bench, at, 0, &error);
  if (submit == TM_SUBMIT_ASKED && request->sure)
    submit = tm_bench_submit (bench, at, 2 * TM_BENCH_CONFIRM_MS, &error);
  switch (submit)
    {
    case TM_SUBMIT_RECORDED:
      return 0;
    case TM_SUBMIT_ASKED:
    case TM_SUBMIT_TOO_SOON:
      return say_slip (request, bench, text);
    case TM_SUBMIT_REFUSED:
      g_clear_error (&error);
      return say_refused (request, bench, text);
    case TM_SUBMIT_FAILED:
    default:
      return tm_fail_error (error);
    }
}

static int
record_values (const Request *request, TmJob *job, const GPtrArray *operands)
{
  g_autoptr (TmBench) bench = tm_bench_new (job, tm_recorder_memory ());
  TmPiece *piece = find_or_make_piece (job, request);
  TmFeature *feature;
  guint place;

  if (piece == NULL || !tm_pick_feature (job, request->path, request->balloon, &feature))
    return 2;
  place = read_place (request, feature);
  if (place == 0)
    return 2;
  tm_bench_set_by (bench, request->by != NULL ? request->by : "");
  tm_bench_set_method (bench, request->method != NULL ? request->method : "");
  for (guint i = 1; i < operands->len; i++)
    {
      const char *station = station_for (request, feature, i - 1);
      int status;

      if (!tm_bench_go (bench, piece, feature, place, station))
        return tm_fail (_ ("%s: feature %s has no station “%s”; write it as depth/hour, such as mouth/12"),
                        request->path, feature->balloon, station);
      status = record_value (request, bench, g_ptr_array_index (operands, i));
      if (status != 0)
        return status;
    }
  return 0;
}

static void
print_reading (yajl_gen gen, const TmReading *reading)
{
  g_autofree char *value = tm_quantity_format_in (&reading->value, reading->row.feature->unit);

  if (gen == NULL)
    {
      const char *shown = reading->outcome != TM_OUTCOME_NONE ? tm_outcome_word (reading->outcome) : value;

      printf (_ ("reading %s: piece %s, feature %s: %s\n"), reading->row.id, reading->row.piece->serial,
              reading->row.feature->balloon, shown);
      return;
    }
  yajl_gen_map_open (gen);
  tm_print_text (gen, "id", reading->row.id);
  tm_print_text (gen, "piece", reading->row.piece->serial);
  tm_print_text (gen, "feature", reading->row.feature->balloon);
  tm_print_integer (gen, "place", reading->place);
  tm_print_text (gen, "station", reading->station);
  tm_print_text (gen, "value",
                 reading->outcome != TM_OUTCOME_NONE ? tm_outcome_word (reading->outcome) : value);
  tm_print_text (gen, "unit", tm_unit_word (reading->row.feature->unit));
  tm_print_text (gen, "typed", reading->typed);
  tm_print_text (gen, "method", reading->method);
  tm_print_text (gen, "at", reading->row.at);
  yajl_gen_map_close (gen);
}

static void
print_new_readings (const TmJob *job, guint first, gboolean json)
{
  yajl_gen gen = json ? tm_print_begin () : NULL;

  if (json)
    yajl_gen_array_open (gen);
  for (guint i = first; i < job->readings->len; i++)
    print_reading (gen, g_ptr_array_index (job->readings, i));
  if (json)
    {
      yajl_gen_array_close (gen);
      tm_print_end (gen);
    }
}

/* All the values or none: the file is written once, after the last was taken. */
static int
record_in_file (const Request *request, const GPtrArray *operands)
{
  g_autoptr (TmJob) job = tm_load_job (request->path);
  GError *error = NULL;
  guint first;
  int status;

  if (job == NULL)
    return 2;
  first = job->readings->len;
  status = record_values (request, job, operands);
  if (status != 0)
    return status;
  if (!tm_job_to_file (job, request->path, &error))
    return tm_fail_error (error);
  print_new_readings (job, first, request->json);
  return 0;
}

int
tm_verb_record (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("record");
  Request request = { NULL };
  const TmOption options[] = {
    { "piece", "S", N_ ("the piece's serial"), &request.serial, NULL },
    { "new-piece", NULL, N_ ("add the piece when the job does not have it"), NULL, &request.new_piece },
    { "feature", "N", N_ ("the feature's number"), &request.balloon, NULL },
    { "place", "K", N_ ("which of its places; 1 if not given"), &request.place, NULL },
    { "station", "WHERE", N_ ("where, as depth/hour; else its stations in turn"), &request.station, NULL },
    { "method", "NAME", N_ ("by which method; else the feature's"), &request.method, NULL },
    { "by", "INITIALS", N_ ("who measured"), &request.by, NULL },
    { "at", "TIME", N_ ("when, UTC, such as 2026-05-04T09:12:33Z; else now"), &request.at, NULL },
    { "sure", NULL, N_ ("record a value that looks like a slip"), NULL, &request.sure },
    { "json", NULL, N_ ("print JSON"), NULL, &request.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  if (operands == NULL)
    return status;
  if (operands->len < 2 || request.serial == NULL || request.balloon == NULL)
    return tm_fail (_ ("record: it takes %s; see tenthmark-cli record --help"), verb->operands);
  request.path = g_ptr_array_index (operands, 0);
  return record_in_file (&request, operands);
}
