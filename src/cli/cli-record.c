/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-record: tenthmark-cli record, readings and pin trials added to a job file as typed at the
 * bench.
 */

#include <glib/gi18n-lib.h>
#include <stdio.h>
#include <string.h>

#include "bench-session.h"
#include "cli-json.h"
#include "cli-lock.h"
#include "cli-verbs.h"
#include "core-temperature.h"
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
  const char *dx;
  const char *dy;
  const char *pins; /* trials, apart by a semicolon or a comma and a space */
  const char *pin_set;
  const char *part_temp;
  const char *gauge_temp;
  const char *overdue_reason;
  gboolean sure;
  gboolean new_piece;
  gboolean json;
} Request;

static gboolean
is_blank (const char *text)
{
  return text[strspn (text, " \t\r\n")] == '\0';
}

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
  if (!is_blank (request->serial) && tm_job_add_piece (job, piece) == TM_ADD_OK)
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

/* A gauge past its due date: what to add so that it may be used. */
static int
say_overdue (const Request *request, const GError *error)
{
  return tm_fail (_ ("%s: %s Add --overdue-reason TEXT; nothing was recorded"), request->path,
                  error->message);
}

static int
say_slip (const Request *request, TmBench *bench, const char *text)
{
  const TmSlipCheck *question = tm_bench_question (bench);
  g_autofree char *likelier = tm_quantity_format (&question->likelier);

  if (question->slip == TM_SLIP_OUT_OF_REACH)
    return tm_fail (_ ("%s: feature %s, value “%s” is outside what %s reaches; add --sure to record it"),
                    request->path, request->balloon, text, tm_bench_question_gauge (bench)->tag);
  if (!question->likelier.given)
    return tm_fail (
        _ ("%s: feature %s, value “%s” is far from everything read so far; add --sure to record it"),
        request->path, request->balloon, text);
  return tm_fail (
      _ ("%s: feature %s, value “%s” looks like a slip of the hand, %s is likelier; add --sure to "
         "record it as typed"),
      request->path, request->balloon, text, likelier);
}

static char *
choose_time (const Request *request)
{
  return request->at != NULL ? g_strdup (request->at) : tm_time_now ();
}

/* Records one value.  A slip is asked about at the bench; here --sure stands for the second Enter. */
static int
record_value (const Request *request, TmBench *bench, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *at = choose_time (request);
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
      if (g_error_matches (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE))
        return say_overdue (request, error);
      return say_refused (request, bench, text);
    case TM_SUBMIT_FAILED:
    default:
      return tm_fail_error (g_steal_pointer (&error));
    }
}

static gboolean
go_to (const Request *request, TmBench *bench, TmPiece *piece, TmFeature *feature, guint place,
       const char *station)
{
  if (tm_bench_go (bench, piece, feature, place, station))
    return TRUE;
  tm_fail (_ ("%s: feature %s has no station “%s”; write it as depth/hour, such as mouth/12"), request->path,
           feature->balloon, station);
  return FALSE;
}

static int
record_offsets (const Request *request, TmBench *bench)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *at = choose_time (request);

  if (tm_bench_submit_offsets (bench, request->dx, request->dy, at, &error) == TM_SUBMIT_RECORDED)
    return 0;
  if (g_error_matches (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE))
    return say_overdue (request, error);
  return tm_fail (_ ("%s: %s Nothing was recorded."), request->path, error->message);
}

static int
record_pin (const Request *request, TmBench *bench, const char *text)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *at = choose_time (request);

  if (tm_bench_submit_pin (bench, text, at, &error) == TM_SUBMIT_RECORDED)
    return 0;
  if (g_error_matches (error, TM_BENCH_ERROR, TM_BENCH_ERROR_OVERDUE))
    return say_overdue (request, error);
  return tm_fail (_ ("%s: pin “%s”: %s Nothing was recorded."), request->path, text, error->message);
}

/* "12.006+; 12.018-": a comma may also be a decimal mark, so that it parts trials only before a space. */
static int
record_pins (const Request *request, TmBench *bench, TmPiece *piece, TmFeature *feature, guint place)
{
  g_auto (GStrv) texts = NULL;
  g_autofree char *joined = g_strdup (request->pins);
  int status = 0;

  for (char *comma = strstr (joined, ", "); comma != NULL; comma = strstr (comma, ", "))
    *comma = ';';
  texts = g_strsplit (joined, ";", -1);
  if (!go_to (request, bench, piece, feature, place, station_for (request, feature, 0)))
    return 2;
  if (texts[0] == NULL)
    return record_pin (request, bench, "");
  for (guint i = 0; texts[i] != NULL && status == 0; i++)
    status = record_pin (request, bench, g_strstrip (texts[i]));
  return status;
}

static int
record_at (const Request *request, TmBench *bench, TmPiece *piece, TmFeature *feature, guint place,
           const GPtrArray *operands)
{
  if (request->dx != NULL)
    {
      if (!go_to (request, bench, piece, feature, place, station_for (request, feature, 0)))
        return 2;
      return record_offsets (request, bench);
    }
  for (guint i = 1; i < operands->len; i++)
    {
      int status;

      if (!go_to (request, bench, piece, feature, place, station_for (request, feature, i - 1)))
        return 2;
      status = record_value (request, bench, g_ptr_array_index (operands, i));
      if (status != 0)
        return status;
    }
  return request->pins != NULL ? record_pins (request, bench, piece, feature, place) : 0;
}

/* FALSE after a line that names the option. */
static gboolean
read_temperature (const Request *request, const char *option, const char *text, TmQuantity *out)
{
  TmReadStatus status;

  *out = TM_QUANTITY_NONE;
  if (text == NULL)
    return TRUE;
  status = tm_quantity_read (text, TM_UNIT_CELSIUS, out);
  if (status == TM_READ_OK && tm_temperature_may_be (out))
    return TRUE;
  if (status == TM_READ_OK)
    tm_fail (
        _ ("%s: --%s “%s” is not between %d and %d °C; write degrees Celsius (72 °F is 22.2 °C); nothing "
           "was recorded"),
        request->path, option, text, TM_TEMPERATURE_LEAST, TM_TEMPERATURE_MOST);
  else
    tm_fail (_ ("%s: --%s “%s”: %s; write degrees Celsius like 22.5; nothing was recorded"), request->path,
             option, text, _ (tm_read_status_text (status)));
  return FALSE;
}

/* Who, with what, at which temperatures. */
static gboolean
set_up (const Request *request, TmBench *bench)
{
  TmQuantity part, gauge;

  if (!read_temperature (request, "part-temp", request->part_temp, &part)
      || !read_temperature (request, "gauge-temp", request->gauge_temp, &gauge))
    return FALSE;
  tm_bench_set_by (bench, request->by != NULL ? request->by : "");
  tm_bench_set_method (bench, request->method != NULL ? request->method : "");
  tm_bench_set_pin_set (bench, request->pin_set);
  tm_bench_set_temperatures (bench, &part, &gauge);
  tm_bench_set_overdue_reason (bench, request->overdue_reason);
  return TRUE;
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
  if (place == 0 || !set_up (request, bench))
    return 2;
  return record_at (request, bench, piece, feature, place, operands);
}

static void
print_line (const TmReading *reading, const char *shown)
{
  printf (_ ("reading %s: piece %s, feature %s: %s\n"), reading->row.id, reading->row.piece->serial,
          reading->row.feature->balloon, *shown != '\0' ? shown : reading->typed);
}

static void
print_reading (yajl_gen gen, const TmReading *reading)
{
  TmUnit unit = reading->row.feature->unit;
  g_autofree char *value = tm_quantity_format_in (&reading->value, unit);
  const char *shown = reading->outcome != TM_OUTCOME_NONE ? tm_outcome_word (reading->outcome) : value;

  if (gen == NULL)
    {
      print_line (reading, shown);
      return;
    }
  yajl_gen_map_open (gen);
  tm_print_text (gen, "id", reading->row.id);
  tm_print_text (gen, "piece", reading->row.piece->serial);
  tm_print_text (gen, "feature", reading->row.feature->balloon);
  tm_print_integer (gen, "place", reading->place);
  tm_print_text (gen, "station", reading->station);
  tm_print_text (gen, "value", *shown != '\0' ? shown : NULL);
  tm_print_quantity (gen, "dx", &reading->dx, unit);
  tm_print_quantity (gen, "dy", &reading->dy, unit);
  tm_print_unit (gen, unit);
  tm_print_text (gen, "typed", reading->typed);
  tm_print_text (gen, "method", reading->method);
  tm_print_text (gen, "at", reading->row.at);
  yajl_gen_map_close (gen);
}

static void
print_trial_line (const TmPinTrial *trial, const char *size)
{
  printf (trial->went ? _ ("pin trial %s: piece %s, feature %s: %s, class %s %s, went\n")
                      : _ ("pin trial %s: piece %s, feature %s: %s, class %s %s, did not go\n"),
          trial->row.id, trial->row.piece->serial, trial->row.feature->balloon, size, trial->pin_class,
          tm_pin_sign_word (trial->sign));
}

static void
print_trial (yajl_gen gen, const TmPinTrial *trial)
{
  TmUnit unit = trial->row.feature->unit;
  g_autofree char *size = tm_quantity_format_in (&trial->size, unit);

  if (gen == NULL)
    {
      print_trial_line (trial, size);
      return;
    }
  yajl_gen_map_open (gen);
  tm_print_text (gen, "id", trial->row.id);
  tm_print_text (gen, "piece", trial->row.piece->serial);
  tm_print_text (gen, "feature", trial->row.feature->balloon);
  tm_print_integer (gen, "place", trial->place);
  tm_print_text (gen, "pin", size);
  tm_print_unit (gen, unit);
  tm_print_text (gen, "class", trial->pin_class);
  tm_print_text (gen, "sign", tm_pin_sign_word (trial->sign));
  tm_print_flag (gen, "went", trial->went);
  tm_print_text (gen, "gauge", trial->gauge);
  tm_print_text (gen, "at", trial->row.at);
  yajl_gen_map_close (gen);
}

/* Readings, then pin trials. */
static void
print_new_rows (const TmJob *job, guint first, guint first_trial, gboolean json)
{
  yajl_gen gen = json ? tm_print_begin () : NULL;

  if (json)
    yajl_gen_array_open (gen);
  for (guint i = first; i < job->readings->len; i++)
    print_reading (gen, g_ptr_array_index (job->readings, i));
  for (guint i = first_trial; i < job->pin_trials->len; i++)
    print_trial (gen, g_ptr_array_index (job->pin_trials, i));
  if (json)
    {
      yajl_gen_array_close (gen);
      tm_print_end (gen);
    }
}

/* The reading is kept, whatever it was taken with; but that it proves less should not come as a
 * surprise. */
static void
warn_of_method (const Request *request, const TmJob *job)
{
  if (request->method == NULL || *request->method == '\0' || tm_job_find_method (job, request->method) != NULL
      || tm_job_find_gauge (job, request->method) != NULL)
    return;
  tm_fail (
      _ ("%s: recorded, but method “%s” is not in this job: add it, or the readings are compared plainly "
         "with their limits"),
      request->path, request->method);
}

/* What a job file could not hold, or could not be read back from. */
static gboolean
check_request (const Request *request)
{
  const char *const texts[]
      = { request->serial, request->balloon, request->station, request->method,
          request->by,     request->at,      request->pins,    request->overdue_reason };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (texts[i] != NULL && !g_utf8_validate (texts[i], -1, NULL))
      {
        g_autofree char *shown = g_utf8_make_valid (texts[i], -1);

        tm_fail (_ ("%s: “%s” is not UTF-8 text; nothing was recorded"), request->path, shown);
        return FALSE;
      }
  if (request->at == NULL || tm_job_is_moment (request->at))
    return TRUE;
  tm_fail (_ ("%s: --at “%s” is no date and time in UTC; write it like 2026-05-04T09:12:33Z; nothing was "
              "recorded"),
           request->path, request->at);
  return FALSE;
}

/* All the values or none: the file is written once, after the last was taken. */
static int
record_in_locked_file (const Request *request, const GPtrArray *operands)
{
  g_autoptr (TmJob) job = tm_load_job (request->path);
  GError *error = NULL;
  guint first, first_trial;
  int status;

  if (job == NULL)
    return 2;
  first = job->readings->len;
  first_trial = job->pin_trials->len;
  status = record_values (request, job, operands);
  if (status != 0)
    return status;
  if (!tm_job_to_file (job, request->path, &error))
    return tm_fail_error (error);
  warn_of_method (request, job);
  print_new_rows (job, first, first_trial, request->json);
  return 0;
}

/* Nobody else may write between our reading of the file and our writing of it. */
static int
record_in_file (const Request *request, const GPtrArray *operands)
{
  int lock = tm_lock_take (request->path);
  int status = record_in_locked_file (request, operands);

  tm_lock_release (lock);
  return status;
}

/* Readings as they stand, pin trials, or both; or the two offsets of one position. */
static gboolean
has_values (const Request *request, guint n_values)
{
  if ((request->dx != NULL) != (request->dy != NULL))
    return FALSE;
  return (request->dx != NULL) != (n_values > 0 || request->pins != NULL);
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
    { "dx", "X", N_ ("position: its offset from true position along x, with --dy"), &request.dx, NULL },
    { "dy", "Y", N_ ("position: its offset along y"), &request.dy, NULL },
    { "pin", "TRIALS",
      N_ ("pins tried: size, then + for went or - for did not go, such as \"12.006+; 12.018-\""),
      &request.pins, NULL },
    { "pin-set", "TAG", N_ ("the set they are from; else the finest that holds them"), &request.pin_set,
      NULL },
    { "part-temp", "C", N_ ("temperature of the part, degrees Celsius"), &request.part_temp, NULL },
    { "gauge-temp", "C", N_ ("temperature of the gauge"), &request.gauge_temp, NULL },
    { "overdue-reason", "TEXT", N_ ("why a gauge past its due date is used"), &request.overdue_reason, NULL },
    { "sure", NULL, N_ ("record a value that looks like a slip"), NULL, &request.sure },
    { "json", NULL, N_ ("print JSON"), NULL, &request.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  if (operands == NULL)
    return status;
  if (operands->len == 0 || request.serial == NULL || request.balloon == NULL
      || !has_values (&request, operands->len - 1))
    return tm_fail (
        _ ("record: it takes %s, or --pin TRIALS, or --dx X --dy Y for a position; see tenthmark-cli record "
           "--help"),
        verb->operands);
  request.path = g_ptr_array_index (operands, 0);
  if (!check_request (&request))
    return 2;
  return record_in_file (&request, operands);
}
