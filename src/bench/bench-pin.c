/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-pin: which pin is meant by what is typed, and recording that it went or did not go.
 */

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bench-pin-text.h"
#include "bench-private.h"

#include "core-gauge-kind.h"

void
tm_bench_set_pin_set (TmBench *bench, const char *tag)
{
  g_return_if_fail (bench != NULL);

  g_free (bench->pin_set);
  bench->pin_set = g_strdup (tag != NULL ? tag : "");
}

const char *
tm_bench_pin_set (const TmBench *bench)
{
  g_return_val_if_fail (bench != NULL, "");

  return bench->pin_set;
}

gboolean
tm_gauge_is_pins (const TmGauge *gauge)
{
  const TmGaugeKind *kind;

  g_return_val_if_fail (gauge != NULL, FALSE);

  kind = tm_gauge_kind_find (gauge->kind);
  /* Rings go or do not go as well, over a shaft. */
  return kind != NULL && kind->pins && kind->measures_inside;
}

gboolean
tm_feature_takes_pins (const TmFeature *feature)
{
  g_return_val_if_fail (feature != NULL, FALSE);

  if (feature->unit != TM_UNIT_MM && feature->unit != TM_UNIT_IN)
    return FALSE;
  return feature->kind == TM_KIND_BORE
         || (feature->kind == TM_KIND_DIAMETER && tm_feature_cut (feature) != TM_CUT_SHRINKS);
}

gboolean
tm_bench_text_is_pin (const TmBench *bench, const char *text)
{
  TmPinText pin;

  g_return_val_if_fail (bench != NULL, FALSE);

  if (bench->spot.feature == NULL || text == NULL || !tm_feature_takes_pins (bench->spot.feature))
    return FALSE;
  tm_pin_text_read (text, &pin);
  return pin.has_outcome && pin.size[0] != '\0';
}

static const TmPinSize *
find_own_size (const TmJob *job, const TmGauge *set, gint64 size)
{
  for (guint i = 0; i < job->pin_sizes->len; i++)
    {
      const TmPinSize *row = g_ptr_array_index (job->pin_sizes, i);

      if (row->size.count == size && g_str_equal (row->gauge, set->tag))
        return row;
    }
  return NULL;
}

static gboolean
holds (const TmGauge *set, const TmQuantity *size)
{
  const TmPinSize pin = { .gauge = set->tag, .size = *size, .measured = *size, .extra = "" };

  return tm_pin_size_fault (set, &pin) == TM_GAUGE_FINE;
}

static gboolean
has_sign (const TmGauge *set, TmPinSign sign)
{
  return g_str_equal (set->pin_sign, tm_pin_sign_word (sign));
}

/* Whether @set holds the pin, as far as class and sign are written. */
static gboolean
suits (const TmGauge *set, const TmQuantity *size, const TmPinText *text)
{
  if (!tm_gauge_is_pins (set) || !holds (set, size))
    return FALSE;
  if (text->pin_class != NULL && set->pin_class[0] != '\0'
      && tm_pin_class_rank (set->pin_class) != tm_pin_class_rank (text->pin_class))
    return FALSE;
  return !text->has_sign || set->pin_sign[0] == '\0' || has_sign (set, text->sign);
}

/* The set of the pin: the one chosen, else the finest class; *@rival is another of that class with the
 * other sign, which may as well be meant. */
static const TmGauge *
choose_set (const TmBench *bench, const TmQuantity *size, const TmPinText *text, const TmGauge **rival)
{
  const TmGauge *best = NULL;

  *rival = NULL;
  for (guint i = 0; i < bench->job->gauges->len; i++)
    {
      const TmGauge *set = g_ptr_array_index (bench->job->gauges, i);
      guint rank = tm_pin_class_rank (set->pin_class);

      if (!suits (set, size, text))
        continue;
      if (g_str_equal (set->tag, bench->pin_set))
        {
          *rival = NULL;
          return set;
        }
      if (best == NULL || rank < tm_pin_class_rank (best->pin_class))
        best = set, *rival = NULL;
      else if (rank == tm_pin_class_rank (best->pin_class) && !g_str_equal (set->pin_sign, best->pin_sign))
        *rival = set;
    }
  return best;
}

static void G_GNUC_PRINTF (2, 3) say_problem (TmPinEntry *out, const char *format, ...)
{
  g_autofree char *text = NULL;
  va_list arguments;

  va_start (arguments, format);
  text = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_strlcpy (out->problem, text, sizeof out->problem);
  if (strlen (text) >= sizeof out->problem)
    *g_utf8_find_prev_char (out->problem, out->problem + strlen (out->problem)) = '\0';
}

static gboolean
read_size (const TmFeature *feature, const TmPinText *text, TmPinEntry *out)
{
  TmEntry entry;

  if (!tm_feature_takes_pins (feature))
    say_problem (out, _ ("a pin tells the size of bores alone"));
  else if (text->size[0] == '\0')
    say_problem (out, _ ("type the pin's size, then + where it went or - where it did not go"));
  else
    {
      entry = tm_entry_read (text->size, feature);
      out->size = entry.value;
      if (entry.status != TM_ENTRY_OK)
        say_problem (out, _ ("pin “%s”: %s"), text->size, _ (tm_entry_status_text (entry.status)));
    }
  return out->problem[0] == '\0';
}

/* Class and sign: as written, else as the set says. */
static void
take_class_and_sign (const TmPinText *text, const TmGauge *set, TmPinEntry *out)
{
  g_autofree char *size = tm_quantity_format (&out->size);
  gboolean signs_known = text->has_sign || (set != NULL && tm_pin_sign_from_word (set->pin_sign, &out->sign));

  if (text->has_sign)
    out->sign = text->sign;
  if (text->pin_class != NULL)
    out->pin_class = text->pin_class;
  else if (set != NULL)
    out->pin_class = set->pin_class;
  if (out->measured.given)
    return;
  if (set == NULL && (text->pin_class == NULL || !text->has_sign))
    say_problem (out, _ ("no pin set of this job holds %s: write its class and sign, like %s X plus"), size,
                 size);
  else if (out->pin_class[0] == '\0' || !signs_known)
    say_problem (out, _ ("the set %s does not say its class and sign: write them, like %s X plus"), set->tag,
                 size);
  else if (tm_pin_class_tolerance (out->pin_class, out->size.count) <= 0)
    say_problem (out, _ ("class %s is not laid down for a pin of %s"), out->pin_class, size);
}

static void
find_pin (const TmBench *bench, const TmPinText *text, TmPinEntry *out)
{
  const TmGauge *rival;
  const TmPinSize *own = NULL;

  out->set = choose_set (bench, &out->size, text, &rival);
  if (rival != NULL)
    {
      g_autofree char *size = tm_quantity_format (&out->size);

      say_problem (out, _ ("%s and %s both hold %s: choose the set, or write plus or minus"), out->set->tag,
                   rival->tag, size);
      return;
    }
  if (out->set != NULL)
    own = find_own_size (bench->job, out->set, out->size.count);
  if (own != NULL)
    out->measured = own->measured;
  take_class_and_sign (text, out->set, out);
}

void
tm_bench_read_pin (const TmBench *bench, const char *text, TmPinEntry *out)
{
  TmPinText parts;

  g_return_if_fail (bench != NULL && out != NULL);

  tm_bench_refresh (bench);
  *out = (TmPinEntry) { .pin_class = "" };
  tm_pin_text_read (text, &parts);
  out->has_outcome = parts.has_outcome;
  out->went = parts.went;
  if (bench->spot.feature == NULL)
    say_problem (out, _ ("the job has no feature yet"));
  else if (read_size (bench->spot.feature, &parts, out))
    find_pin (bench, &parts, out);
  out->ok = out->problem[0] == '\0';
}

static gboolean
check_pin (const TmBench *bench, const TmPinEntry *pin, GError **error)
{
  const char *problem = pin->problem;

  if (pin->ok && pin->has_outcome)
    return TRUE;
  if (pin->ok)
    problem = _ ("say whether the pin went: + or - at the end");
  g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_ENTRY, _ ("Feature %s: %s."),
               bench->spot.feature->balloon, problem);
  return FALSE;
}

static const char *
choose_trial_id (const TmBench *bench)
{
  guint64 number = tm_tally_next_trial_id (bench->tally);
  char text[24];

  do
    g_snprintf (text, sizeof text, "%" G_GUINT64_FORMAT, number++);
  while (tm_job_find_pin_trial (bench->job, text) != NULL);
  return tm_job_intern (bench->job, text);
}

static TmPinTrial *
begin_trial (const TmBench *bench, const TmPinEntry *pin, const char *at, const char *overdue_reason)
{
  TmPinTrial *trial = tm_pin_trial_new ();

  trial->row.id = choose_trial_id (bench);
  trial->row.piece = bench->spot.piece;
  trial->row.feature = bench->spot.feature;
  trial->row.by = tm_job_intern (bench->job, bench->by);
  trial->row.at = tm_job_intern (bench->job, at);
  trial->place = bench->spot.place;
  trial->size = pin->size;
  trial->pin_class = tm_job_intern (bench->job, pin->pin_class);
  trial->sign = pin->sign;
  trial->went = pin->went;
  trial->gauge = tm_job_intern (bench->job, pin->set != NULL ? pin->set->tag : "");
  trial->measured = pin->measured;
  trial->overdue_reason = overdue_reason;
  return trial;
}

/* Hands the trial to the recorder and then to the job; takes ownership of it. */
static gboolean
keep_trial (TmBench *bench, TmPinTrial *trial, GError **error)
{
  TmAddStatus status;

  if (!bench->recorder.record_pin_trial (bench->recorder.self, trial, error))
    {
      tm_pin_trial_free (trial);
      return FALSE;
    }
  status = tm_job_add_pin_trial (bench->job, trial);
  if (status != TM_ADD_OK)
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_REFUSED, _ ("Feature %s, piece %s: %s."),
                   trial->row.feature->balloon, trial->row.piece->serial, _ (tm_add_status_text (status)));
      tm_pin_trial_free (trial);
      return FALSE;
    }
  tm_bench_note_fact (bench, (TmBenchFact) { .trial = trial });
  return TRUE;
}

TmSubmit
tm_bench_submit_pin (TmBench *bench, const char *text, const char *at, GError **error)
{
  TmPinEntry pin;
  const char *reason;
  g_autofree char *typed = g_strdup (text != NULL ? text : "");

  g_return_val_if_fail (bench != NULL, TM_SUBMIT_REFUSED);

  tm_bench_refresh (bench);
  if (!tm_bench_check_somewhere (bench, error))
    return TM_SUBMIT_REFUSED;
  tm_bench_set_now (bench, at);
  tm_bench_read_pin (bench, typed, &pin);
  if (!check_pin (bench, &pin, error)
      || !tm_bench_excuse_overdue (bench, &pin.set, pin.set != NULL ? 1 : 0, at, &reason, error))
    return TM_SUBMIT_REFUSED;
  if (!keep_trial (bench, begin_trial (bench, &pin, at, reason), error))
    return TM_SUBMIT_FAILED;
  tm_bench_bind_reason (bench, &pin.set, pin.set != NULL ? 1 : 0, at);
  if (g_str_equal (bench->text, typed))
    tm_bench_set_text (bench, "");
  return TM_SUBMIT_RECORDED;
}

gboolean
tm_bench_withdraw_pin (TmBench *bench, const TmPinTrial *trial, const char *reason, const char *at,
                       GError **error)
{
  TmPinTrial *found;
  TmWithdrawal withdrawal;

  g_return_val_if_fail (bench != NULL, FALSE);

  tm_bench_refresh (bench);
  found = trial != NULL ? tm_job_find_pin_trial (bench->job, trial->row.id) : NULL;
  if (found == NULL || found != trial || !tm_row_stands (&found->row))
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_TARGET,
                   _ ("There is no pin trial here that still stands."));
      return FALSE;
    }
  if (tm_bench_is_blank (reason))
    {
      g_set_error (error, TM_BENCH_ERROR, TM_BENCH_ERROR_NO_REASON,
                   _ ("Pin trial %s: say why, so that the record can be defended."), found->row.id);
      return FALSE;
    }
  withdrawal = tm_bench_make_withdrawal (bench, reason, at);
  if (!bench->recorder.withdraw_pin_trial (bench->recorder.self, found->row.id, &withdrawal, error))
    return FALSE;
  tm_job_withdraw (bench->job, &found->row, withdrawal.by, withdrawal.at, withdrawal.reason);
  tm_tally_recount (bench->tally, bench->job, found->row.piece, found->row.feature);
  return TRUE;
}
