/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-cut: tenthmark-cli cut: how much to dial next, and at what risk, by stated figures or by a job's
 * record.
 */

#include "cli-cut.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "cli-verbs.h"

typedef struct {
  const char *size, *u, *own, *lower, *upper, *kind, *way, *graduation, *reads, *least, *history, *guard,
      *unit;
  const char *risk;
  TmCutWhich which;
  gboolean json;
} Words;

/* What was asked, as numbers; counts, changes and not what the dial shows of them. */
typedef struct {
  TmUnit unit;
  TmReads reads;
  gboolean grows;
  gint64 factor; /* change of size per dialled count */
  TmQuantity lower, upper, size, u, own, graduation, least, guard;
  double risk;
  TmAim aim;
  gint64 dial; /* negative: not stated */
} Question;

/* -------- Single words -------- */

static gboolean
read_length (const char *option, const char *text, TmUnit unit, gboolean may_be_negative, TmQuantity *out)
{
  TmReadStatus status;

  *out = TM_QUANTITY_NONE;
  if (text == NULL)
    return TRUE;
  status = tm_quantity_read (text, unit, out);
  if (status != TM_READ_OK)
    return tm_fail (_ ("cut: --%s “%s”: %s"), option, text, _ (tm_read_status_text (status))) == 0;
  if (!may_be_negative && out->count < 0)
    return tm_fail (_ ("cut: --%s “%s” is below zero; give it without the sign"), option, text) == 0;
  return TRUE;
}

gboolean
tm_cut_read_aim (const char *text, TmAim *aim)
{
  if (tm_aim_from_word (text, aim))
    return TRUE;
  return tm_fail (_ ("cut: --aim “%s”: use in or proven"), text) == 0;
}

gboolean
tm_cut_read_dial (const char *text, TmUnit unit, gint64 *count)
{
  TmQuantity dial;

  if (!read_length ("dial", text, unit, FALSE, &dial))
    return FALSE;
  *count = dial.count;
  return TRUE;
}

/* Below this the chances of the plan have no more true digits (core-cut-chances: REACH). */
#define LEAST_RISK 1e-6

static gboolean
read_risk (const char *text, double *out)
{
  TmQuantity risk;

  *out = 0;
  if (text == NULL)
    return TRUE;
  if (tm_quantity_read (text, TM_UNIT_HARDNESS, &risk) == TM_READ_OK)
    *out = tm_count_to_double (risk.count, TM_UNIT_HARDNESS);
  if (*out >= LEAST_RISK && *out < 1)
    return TRUE;
  return tm_fail (_ ("cut: --risk “%s”: use a share between 0.000001 and 1, such as 0.01"), text) == 0;
}

static gboolean
read_unit (const char *text, TmUnit *out)
{
  *out = TM_UNIT_MM;
  if (text == NULL || (tm_unit_from_word (text, out) && (*out == TM_UNIT_MM || *out == TM_UNIT_IN)))
    return TRUE;
  return tm_fail (_ ("cut: --unit “%s”: use mm or in"), text) == 0;
}

/* Which way metal goes, and what the dial's marks make of the size. */
static gboolean
read_kind (const Words *words, Question *question)
{
  TmFeature feature = { .kind = TM_KIND_BORE };
  TmCut way;

  question->reads = TM_READS_DIAMETER;
  if (words->kind == NULL)
    return tm_fail (_ ("cut: say what is cut: --kind bore, shaft, depth, diameter or length")) == 0;
  if (!tm_kind_from_word (words->kind, &feature.kind) || !tm_feature_is_cut_to_size (&feature))
    return tm_fail (_ ("cut: --kind “%s”: use bore, shaft, depth, diameter or length"), words->kind) == 0;
  if (words->way != NULL && !tm_cut_from_word (words->way, &feature.cut))
    return tm_fail (_ ("cut: --way “%s”: use grows or shrinks"), words->way) == 0;
  if (words->reads != NULL && !tm_reads_from_word (words->reads, &question->reads))
    return tm_fail (_ ("cut: --reads “%s”: use diameter or radius"), words->reads) == 0;
  way = tm_feature_cut (&feature);
  if (way == TM_CUT_UNKNOWN)
    return tm_fail (_ ("cut: a %s may grow or shrink as it is cut; say --way grows or --way shrinks"),
                    words->kind)
           == 0;
  question->grows = way == TM_CUT_GROWS;
  question->factor = tm_cut_changes_by (&feature, question->reads);
  return TRUE;
}

/* -------- Checked together -------- */

static gboolean
check_band (const Words *words, const Question *question)
{
  if (!question->lower.given && !question->upper.given)
    return tm_fail (_ ("cut: the band is missing; give --lower, --upper or both")) == 0;
  if (question->upper.given && question->upper.count <= 0)
    return tm_fail (_ ("cut: --upper %s: no size is below it; give one above zero"), words->upper) == 0;
  if (question->lower.given && question->upper.given && question->lower.count > question->upper.count)
    return tm_fail (_ ("cut: --lower %s is above --upper %s; exchange them"), words->lower, words->upper)
           == 0;
  return TRUE;
}

static gboolean
check_size (const Words *words, const Question *question)
{
  if (!question->size.given || !question->u.given)
    return tm_fail (_ ("cut: give --size and --u, its standard uncertainty")) == 0;
  if (question->size.count <= 0)
    return tm_fail (_ ("cut: --size “%s” is not above zero; give the whole size, not its deviation"),
                    words->size)
           == 0;
  if (question->u.count == 0)
    return tm_fail (_ ("cut: --u “%s”: no size is known without any uncertainty; give one above zero"),
                    words->u)
           == 0;
  if (question->own.count > question->u.count)
    return tm_fail (_ ("cut: --u-own %s is more than --u %s, of which it is a part"), words->own, words->u)
           == 0;
  if (!question->graduation.given || question->graduation.count == 0)
    return tm_fail (_ ("cut: say what one mark of the dial is: --graduation G")) == 0;
  return TRUE;
}

static gboolean
read_question (const Words *words, Question *question)
{
  question->dial = -1;
  return read_unit (words->unit, &question->unit) && read_kind (words, question)
         && read_length ("lower", words->lower, question->unit, TRUE, &question->lower)
         && read_length ("upper", words->upper, question->unit, TRUE, &question->upper)
         && read_length ("size", words->size, question->unit, TRUE, &question->size)
         && read_length ("u", words->u, question->unit, FALSE, &question->u)
         && read_length ("u-own", words->own, question->unit, FALSE, &question->own)
         && read_length ("graduation", words->graduation, question->unit, FALSE, &question->graduation)
         && read_length ("least", words->least, question->unit, FALSE, &question->least)
         && read_length ("guard", words->guard, question->unit, FALSE, &question->guard)
         && check_band (words, question) && check_size (words, question)
         && (words->which.aim == NULL || tm_cut_read_aim (words->which.aim, &question->aim))
         && (words->which.dial == NULL
             || tm_cut_read_dial (words->which.dial, question->unit, &question->dial));
}

/* -------- Cuts made before -------- */

/* What no cutter does, with room for a cut so small that the readings' own error is most of it (our own
 * choice). */
#define MOST_ANSWER  10.0
#define LEAST_ANSWER (-1.0)

static gboolean
check_answer (const char *text, const TmCutAnswer *answer)
{
  if (answer->achieved > MOST_ANSWER * answer->dialled)
    return tm_fail (
               _ ("cut: --history “%s”: the size changed by more than ten times what was dialled; look at "
                  "the decimal points"),
               text)
           == 0;
  if (answer->achieved < LEAST_ANSWER * answer->dialled)
    return tm_fail (
               _ ("cut: --history “%s”: the size went the other way; count a change towards less metal up, "
                  "or leave it out"),
               text)
           == 0;
  return TRUE;
}

/* "dialled:achieved": the first as the dial showed it, the second as the size changed, less metal counting
 * up.  What was achieved is the difference of two readings, each uncertain by --u-own. */
static gboolean
learn_answer (const char *text, const Question *question, TmCutBelief *belief)
{
  g_auto (GStrv) both = g_strsplit (text, ":", -1);
  TmQuantity dialled, achieved;
  TmCutAnswer answer;

  if (g_strv_length (both) != 2)
    return tm_fail (_ ("cut: --history “%s” is not read; write dialled:achieved, …"), text) == 0;
  if (!read_length ("history", g_strstrip (both[0]), question->unit, FALSE, &dialled)
      || !read_length ("history", g_strstrip (both[1]), question->unit, TRUE, &achieved))
    return FALSE;
  if (dialled.count == 0)
    return tm_fail (_ ("cut: --history “%s”: nothing was dialled; leave it out"), text) == 0;
  answer.dialled = (double)dialled.count * (double)question->factor;
  answer.achieved = (double)achieved.count;
  answer.u = M_SQRT2 * (double)question->own.count;
  if (!check_answer (text, &answer))
    return FALSE;
  tm_cut_belief_learn (belief, &answer);
  return TRUE;
}

static gboolean
learn_history (const char *text, const Question *question, TmCutBelief *belief)
{
  g_auto (GStrv) each = g_strsplit (text ? text : "", ",", -1);

  for (guint i = 0; each[i] != NULL; i++)
    {
      if (*g_strstrip (each[i]) == '\0' && text != NULL && *text == '\0')
        continue;
      if (!learn_answer (each[i], question, belief))
        return FALSE;
    }
  return TRUE;
}

/* -------- Answers -------- */

static TmCutWish
make_wish (const Question *question, gint64 reference)
{
  double factor = (double)question->factor, own = (double)question->own.count, u = (double)question->u.count;
  TmCutWish wish = { .band = { -INFINITY, INFINITY, -INFINITY, INFINITY, 0 } };

  if (question->lower.given)
    wish.band.lower = (double)(question->lower.count - reference);
  if (question->upper.given)
    wish.band.upper = (double)(question->upper.count - reference);
  wish.step = (double)question->graduation.count * factor;
  wish.least = MAX (wish.step, (double)question->least.count * factor);
  wish.risk = question->risk;
  wish.aim = question->aim;
  wish.next_own = own;
  wish.next_shared = sqrt (MAX (0, u * u - own * own));
  wish.guard = (double)question->guard.count;
  wish.further = TM_CUT_FURTHER;
  return wish;
}

static void
plan_question (const Question *question, TmCutBelief *belief, TmCutAdvice *out)
{
  gint64 reference = question->lower.given ? question->lower.count : question->upper.count;
  TmCutWish wish = make_wish (question, reference);

  tm_cut_belief_read (belief, 0, 0, (double)(question->size.count - reference), wish.next_own,
                      wish.next_shared);
  *out
      = (TmCutAdvice) { .reference = reference, .graduation = question->graduation.count, .band = wish.band };
  out->risk = question->risk;
  tm_cut_belief_response (belief, &out->response);
  out->assumed = out->response.n_answers == 0;
  if (question->dial >= 0)
    tm_cut_try (belief, &wish, (double)question->dial * (double)question->factor, &out->plan);
  else
    tm_cut_plan (belief, &wish, &out->plan);
  out->dial = llround (out->plan.change / (double)question->factor);
  out->second_dial = llround (out->plan.second / wish.step) * question->graduation.count;
}

/* 1: do not cut; 2: there is nothing to plan from. */
static int
answer_case (const TmCutCase *cut, gboolean json)
{
  switch (cut->advice.plan.status)
    {
    case TM_CUT_OK:
    case TM_CUT_PROVE:
    case TM_CUT_NOTHING_LEFT:
    case TM_CUT_METAL_GONE:
    case TM_CUT_TOO_COARSE:
    case TM_CUT_UNDER_LEAST:
    case TM_CUT_UNEVEN:
      break;
    case TM_CUT_BAD_BAND:
      return tm_fail ("%s", _ ("cut: no size is within all limits: the band lies where metal is gone"));
    case TM_CUT_NOT_READ:
      return tm_fail ("%s", _ ("cut: nothing was read there since the last cut; measure it first"));
    case TM_CUT_NO_LIMITS:
      return tm_fail ("%s", _ ("cut: the feature has no limit that says where to stop"));
    case TM_CUT_NO_SIDE:
      return tm_fail ("%s", _ ("cut: the job does not say whether the size grows or shrinks as it is cut"));
    case TM_CUT_NO_METHOD:
      return tm_fail ("%s",
                      _ ("cut: how uncertain the readings are is unknown; name their method in the job"));
    case TM_CUT_NO_DIAL:
      return tm_fail ("%s", _ ("cut: the tool states no graduation of its dial; add it in the job"));
    case TM_CUT_NO_MATE:
      return tm_fail ("%s", _ ("cut: the mate's uncertainty, or the clearance that is wanted of it, is not "
                               "stated; state both in the job"));
    case TM_CUT_NOT_A_SIZE:
      return tm_fail ("%s", _ ("cut: a feature of this kind is not cut to size"));
    case TM_N_CUT_STATUSES:
    default:
      g_assert_not_reached ();
    }
  if (json)
    tm_cut_print_json (cut);
  else
    tm_cut_print (cut);
  return cut->advice.plan.status == TM_CUT_OK || cut->advice.plan.status == TM_CUT_PROVE ? 0 : 1;
}

static int
answer_words (const Words *words)
{
  Question question = { 0 };
  g_autoptr (TmCutBelief) belief = NULL;
  TmCutCase cut = { .place = 0 };

  if (!read_question (words, &question))
    return 2;
  question.risk = words->which.risk > 0 ? words->which.risk : TM_CUT_RISK;
  belief = tm_cut_belief_new (1, question.grows);
  if (!learn_history (words->history, &question, belief))
    return 2;
  plan_question (&question, belief, &cut.advice);
  cut.unit = cut.dial_unit = question.unit;
  cut.reads = question.reads;
  cut.is_tried = question.dial >= 0;
  return answer_case (&cut, words->json);
}

static int
answer_job (const Words *words, const char *path)
{
  g_autoptr (TmJob) job = tm_load_job (path);
  TmCutCase cut = { .place = 0 };

  if (job == NULL || !tm_cut_take_job (job, path, &words->which, &cut))
    return 2;
  return answer_case (&cut, words->json);
}

static gboolean
says_figures (const Words *words)
{
  return words->size || words->u || words->own || words->lower || words->upper || words->kind || words->way
         || words->graduation || words->reads || words->least || words->history || words->guard
         || words->unit;
}

static gboolean
says_job (const Words *words)
{
  const TmCutWhich *which = &words->which;

  return which->feature || which->piece || which->place || which->tool || which->mate || which->method;
}

static int
answer (Words *words, const char *path)
{
  if (!read_risk (words->risk, &words->which.risk))
    return 2;
  if (path != NULL && says_figures (words))
    return tm_fail (_ ("cut: %s says the figures; leave --size, --u and their like out"), path);
  if (path == NULL && says_job (words))
    return tm_fail (_ ("cut: --piece, --feature, --place, --tool, --mate and --method are of a job; name its "
                       "file"));
  return path != NULL ? answer_job (words, path) : answer_words (words);
}

int
tm_verb_cut (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("cut");
  Words said = { 0 };
  const TmOption options[] = {
    { "size", "S", N_ ("as it was read last"), &said.size, NULL },
    { "u", "U", N_ ("its standard uncertainty"), &said.u, NULL },
    { "u-own", "U",
      N_ ("the part of --u that every reading has of its own; the rest is the same in all of them"),
      &said.own, NULL },
    { "lower", "L", N_ ("lower limit"), &said.lower, NULL },
    { "upper", "U", N_ ("upper limit"), &said.upper, NULL },
    { "kind", "KIND", N_ ("bore, shaft, depth, diameter or length"), &said.kind, NULL },
    { "way", "WAY", N_ ("a diameter or a length: grows or shrinks as it is cut"), &said.way, NULL },
    { "graduation", "G", N_ ("one mark of the dial"), &said.graduation, NULL },
    { "reads", "WHAT", N_ ("what the dial reads: diameter or radius; diameter if not given"), &said.reads,
      NULL },
    { "least", "D", N_ ("least the tool takes without rubbing, on the dial; one mark if not given"),
      &said.least, NULL },
    { "history", "LIST", N_ ("cuts of this tool: dialled:achieved, … (as dialled, and as the size changed)"),
      &said.history, NULL },
    { "guard", "G", N_ ("of the verdict on the next reading, for --aim proven"), &said.guard, NULL },
    { "unit", "mm|in", N_ ("unit of lengths that name none; mm if not given"), &said.unit, NULL },
    { "risk", "R", N_ ("accepted chance of metal gone over the whole run; 0.01 or the job's if not given"),
      &said.risk, NULL },
    { "aim", "AIM", N_ ("in the band, or proven in: in or proven"), &said.which.aim, NULL },
    { "dial", "D", N_ ("what this on the dial would do, instead of what to dial"), &said.which.dial, NULL },
    { "piece", "S", N_ ("with JOB: the piece"), &said.which.piece, NULL },
    { "feature", "N", N_ ("with JOB: the feature"), &said.which.feature, NULL },
    { "place", "P", N_ ("with JOB: of the feature's places; 1 if not given"), &said.which.place, NULL },
    { "tool", "T", N_ ("with JOB: the tool; the feature's if not given"), &said.which.tool, NULL },
    { "mate", "S", N_ ("with JOB: aim at the wanted clearance with this measured mate"), &said.which.mate,
      NULL },
    { "method", "M", N_ ("with JOB: of the next reading; the feature's if not given"), &said.which.method,
      NULL },
    { "json", NULL, N_ ("print JSON"), NULL, &said.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  if (operands == NULL)
    return status;
  if (operands->len > 1)
    return tm_fail (_ ("cut: it takes one JOB at most; see tenthmark-cli cut --help"));
  return answer (&said, operands->len == 1 ? g_ptr_array_index (operands, 0) : NULL);
}
