/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-fit-job: tenthmark-cli fit JOB: a feature and its mate.
 */

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-fit.h"
#include "cli-json.h"
#include "cli-verbs.h"

typedef struct {
  TmJob *job; /* owned */
  const char *path;
  TmFeature *feature;
  TmPiece *piece; /* NULL: none is meant */
  guint place;
  TmMateSize *mate; /* NULL: its limits */
  TmFitWant want;
  gboolean is_bore;
  gboolean warm;
  double part_temp, mate_temp;
} Question;

static void
clear_question (Question *question)
{
  g_clear_pointer (&question->job, tm_job_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Question, clear_question)

/* One of the two parts, or why it is none. */
typedef struct {
  TmFitPart part;
  TmFitStatus status;
} Side;

/* -------- What is asked -------- */

static gboolean
fail_status (const Question *question, TmFitStatus status)
{
  return tm_fail (_ ("%s: feature %s: %s"), question->path, question->feature->balloon,
                  g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (status)))
         == 0;
}

static gboolean
pick_mate (const TmFitWords *words, Question *question)
{
  if (words->mate == NULL)
    {
      if (question->piece != NULL)
        question->mate
            = tm_fit_find_mate (question->job, question->piece, question->feature, question->place);
      return TRUE;
    }
  question->mate = tm_job_find_mate_size (question->job, question->feature->balloon, words->mate);
  if (question->mate != NULL)
    return TRUE;
  return tm_fail (_ ("%s: feature %s has no measured mate “%s”; measure it first, or leave --mate out"),
                  question->path, question->feature->balloon, words->mate)
         == 0;
}

static gboolean
pick_piece (const TmFitWords *words, Question *question)
{
  if (!tm_pick_piece (question->job, question->path, words->piece, &question->piece))
    return FALSE;
  if (question->piece == NULL && question->job->pieces->len == 1)
    question->piece = g_ptr_array_index (question->job->pieces, 0);
  return TRUE;
}

static gboolean
read_temperatures (const TmFitWords *words, Question *question)
{
  question->warm = words->part_temp != NULL || words->mate_temp != NULL;
  question->part_temp = question->mate_temp = 20;
  return tm_fit_read_temp ("part-temp", words->part_temp, &question->part_temp)
         && tm_fit_read_temp ("mate-temp", words->mate_temp, &question->mate_temp);
}

static gboolean
read_question (const char *path, const TmFitWords *words, Question *question)
{
  TmFitStatus status;

  question->path = path;
  question->job = tm_load_job (path);
  if (question->job == NULL || !tm_pick_feature (question->job, path, words->feature, &question->feature))
    return FALSE;
  question->is_bore = tm_fit_feature_is_bore (question->feature, &status);
  if (status != TM_FIT_OK)
    return fail_status (question, status);
  question->want = tm_fit_wanted (question->feature);
  return tm_fit_read_want (words, question->feature->unit, &question->want) && pick_piece (words, question)
         && tm_pick_place ("fit", question->feature, words->place, &question->place)
         && pick_mate (words, question) && read_temperatures (words, question);
}

/* -------- The answer -------- */

static Side
take_part (const Question *question, gboolean measured)
{
  Side side;

  if (measured && question->piece != NULL)
    side.status = tm_fit_part_as_measured (question->job, question->piece, question->feature, question->place,
                                           &side.part);
  else
    side.status = tm_fit_part_by_limits (question->feature, &side.part);
  return side;
}

static Side
take_mate (const Question *question, gboolean measured)
{
  Side side;

  if (measured && question->mate != NULL)
    side.status = tm_fit_mate_as_measured (question->mate, &side.part);
  else
    side.status = tm_fit_mate_by_limits (question->feature, &side.part);
  return side;
}

static char *
name_part (const Question *question, gboolean measured)
{
  if (measured && question->piece != NULL)
    return g_strdup_printf (_ ("piece %s"), question->piece->serial);
  return g_strdup_printf (_ ("feature %s"), question->feature->balloon);
}

static char *
name_mate (const Question *question, gboolean measured)
{
  if (!question->feature->mate.given && question->mate == NULL)
    return g_strdup_printf (_ ("feature %s"), question->feature->balloon);
  if (measured && question->mate != NULL)
    return g_strdup_printf (_ ("mate %s"), question->mate->serial);
  return g_strdup_printf (_ ("mate of feature %s"), question->feature->balloon);
}

static gboolean
is_part (const Side *side)
{
  return side->status == TM_FIT_OK || side->status == TM_FIT_NO_METHOD;
}

/* Whose fault a status is, where it is one part's. */
static void
blame (const Question *question, gboolean measured, const Side *part, const Side *mate, TmFitAnswer *out)
{
  if (part->status == out->status)
    out->culprit = name_part (question, measured);
  else if (mate->status == out->status)
    out->culprit = name_mate (question, measured);
}

static void
answer (const Question *question, gboolean measured, gboolean warm, TmFitAnswer *out)
{
  Side part = take_part (question, measured);
  Side mate = take_mate (question, measured);

  *out = (TmFitAnswer) { .status = is_part (&part) ? mate.status : part.status,
                         .want = question->want,
                         .check = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN } };
  out->has_parts = is_part (&part) && is_part (&mate);
  if (out->has_parts)
    {
      gboolean knows_part = tm_fit_part_warm (question->job, question->feature, FALSE,
                                              warm ? question->part_temp : 20, &part.part);

      tm_fit_part_warm (question->job, question->feature, TRUE, warm ? question->mate_temp : 20, &mate.part);
      out->bore = question->is_bore ? part.part : mate.part;
      out->shaft = question->is_bore ? mate.part : part.part;
      out->status = tm_fit_check (&out->bore, &out->shaft, &out->want, &out->check);
      if (out->status == TM_FIT_NO_EXPANSION)
        out->culprit = knows_part || fabs (question->part_temp - 20) <= 0 ? name_mate (question, measured)
                                                                          : name_part (question, measured);
    }
  if (out->culprit == NULL)
    blame (question, measured, &part, &mate, out);
}

/* -------- Printing -------- */

/* All that is asked, NULL where it is not. */
typedef struct {
  const TmFitAnswer *limits, *measured, *warm_limits, *warm_measured;
} Answers;

static void
put_or_null (yajl_gen gen, const char *key, const TmFitAnswer *given, TmUnit unit)
{
  if (given != NULL)
    tm_fit_put_answer (gen, key, given, unit);
  else
    tm_print_null (gen, key);
}

static void
put_warm (yajl_gen gen, const Question *question, const Answers *answers, TmUnit unit)
{
  if (!question->warm)
    {
      tm_print_null (gen, "at_temperature");
      return;
    }
  tm_print_key (gen, "at_temperature");
  yajl_gen_map_open (gen);
  tm_print_number (gen, "part_temp", question->part_temp);
  tm_print_number (gen, "mate_temp", question->mate_temp);
  put_or_null (gen, "by_limits", answers->warm_limits, unit);
  put_or_null (gen, "as_measured", answers->warm_measured, unit);
  yajl_gen_map_close (gen);
}

static void
print_json (const Question *question, const Answers *answers)
{
  TmUnit unit = question->feature->unit;
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_unit (gen, unit);
  tm_print_text (gen, "feature", question->feature->balloon);
  tm_print_text (gen, "piece", question->piece != NULL ? question->piece->serial : NULL);
  tm_print_integer (gen, "place", question->place);
  tm_print_text (gen, "mate", question->mate != NULL ? question->mate->serial : NULL);
  tm_fit_put_want (gen, &question->want, unit);
  put_or_null (gen, "by_limits", answers->limits, unit);
  put_or_null (gen, "as_measured", answers->measured, unit);
  put_warm (gen, question, answers, unit);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static char *
make_title (const Question *question)
{
  if (question->piece != NULL && question->mate != NULL)
    return g_strdup_printf (_ ("as measured, piece %s with mate %s"), question->piece->serial,
                            question->mate->serial);
  if (question->piece != NULL)
    return g_strdup_printf (_ ("as measured, piece %s with any mate within its limits"),
                            question->piece->serial);
  return g_strdup_printf (_ ("as measured, mate %s with any piece within the limits"),
                          question->mate->serial);
}

static void
print_words (const Question *question, const Answers *answers)
{
  TmUnit unit = question->feature->unit;

  tm_fit_print_want (&question->want, unit);
  tm_fit_print_answer (_ ("by limits"), answers->limits, unit);
  if (answers->measured != NULL)
    {
      g_autofree char *title = make_title (question);

      tm_fit_print_answer (title, answers->measured, unit);
    }
  if (!question->warm)
    return;
  printf (_ ("with the part at %g °C and the mate at %g °C:\n"), question->part_temp, question->mate_temp);
  tm_fit_print_answer (_ ("by limits"), answers->warm_limits, unit);
  if (answers->warm_measured != NULL)
    tm_fit_print_answer (_ ("as measured"), answers->warm_measured, unit);
  tm_fit_print_caution ();
}

/* What cannot be answered at all, rather than not yet. */
static gboolean
is_refused (const TmFitAnswer *given)
{
  return !tm_fit_answer_has_range (given) && given->status != TM_FIT_NOT_MEASURED;
}

static int
refuse (const Question *question, const TmFitAnswer *given)
{
  g_autofree char *reason = tm_fit_answer_reason (given);

  return tm_fail (_ ("%s: %s"), question->path, reason);
}

static int
answer_all (const Question *question, gboolean json)
{
  gboolean measure = question->piece != NULL || question->mate != NULL;
  g_auto (TmFitAnswer) limits = { 0 };
  g_auto (TmFitAnswer) measured = { 0 };
  g_auto (TmFitAnswer) warm_limits = { 0 };
  g_auto (TmFitAnswer) warm_measured = { 0 };
  const TmFitAnswer *decides = measure ? &measured : &limits;
  const TmFitAnswer *warm = measure ? &warm_measured : &warm_limits;
  Answers answers = { &limits, measure ? &measured : NULL, &warm_limits, measure ? &warm_measured : NULL };

  answer (question, FALSE, FALSE, &limits);
  answer (question, TRUE, FALSE, &measured);
  answer (question, FALSE, TRUE, &warm_limits);
  answer (question, TRUE, TRUE, &warm_measured);
  if (is_refused (decides))
    return refuse (question, decides);
  if (question->warm && is_refused (warm))
    return refuse (question, warm);
  if (json)
    print_json (question, &answers);
  else
    print_words (question, &answers);
  return tm_fit_answer_is_good (decides) ? 0 : 1;
}

int
tm_fit_of_job (const char *path, const TmFitWords *words)
{
  g_auto (Question) question = { NULL };

  if (words->pair
      && (words->piece != NULL || words->place != NULL || words->mate != NULL || words->part_temp != NULL
          || words->mate_temp != NULL))
    return tm_fail (_ ("fit: --pair takes all measured places and mates at 20 °C; leave --piece, --place, "
                       "--mate and the temperatures out"));
  if (!read_question (path, words, &question))
    return 2;
  if (words->pair)
    return tm_fit_pair_job (question.job, question.feature, &question.want, words->json);
  return answer_all (&question, words->json);
}
