/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-pins: tenthmark-cli pins: what pins that went and did not go prove of a bore, and, of a job's
 * pin sets, which to pull.  Stacks and settings: cli-pin-stack.h.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>

#include "cli-json.h"
#include "cli-pin-stack.h"
#include "cli-pin-trials.h"
#include "cli-verbs.h"

typedef struct {
  const char *lower, *upper, *unit, *size, *u, *form, *clearance, *trials, *feature;
  gboolean json;
} Words;

/* What was asked, as numbers. */
typedef struct {
  TmUnit unit;
  TmQuantity lower, upper, form, clearance;
  TmLimits limits;
  TmPinSizeInput size;
} Question;

/* -------- Reading the options -------- */

static gboolean
read_length (const char *option, const char *text, TmUnit unit, TmQuantity *out)
{
  TmReadStatus status;

  *out = TM_QUANTITY_NONE;
  if (text == NULL)
    return TRUE;
  status = tm_quantity_read (text, unit, out);
  if (status != TM_READ_OK)
    return tm_fail (_ ("pins: --%s “%s”: %s"), option, text, _ (tm_read_status_text (status))) == 0;
  return TRUE;
}

/* A length that cannot be below zero. */
static gboolean
read_spread (const char *option, const char *text, TmUnit unit, TmQuantity *out)
{
  if (!read_length (option, text, unit, out))
    return FALSE;
  if (out->given && out->count < 0)
    return tm_fail (_ ("pins: --%s “%s” is below zero; give it without the sign"), option, text) == 0;
  return TRUE;
}

static gboolean
read_limits (const Words *words, Question *question)
{
  if (!read_length ("lower", words->lower, question->unit, &question->lower)
      || !read_length ("upper", words->upper, question->unit, &question->upper))
    return FALSE;
  if (!question->lower.given && !question->upper.given)
    return tm_fail (_ ("pins: the band is missing; give --lower, --upper or both")) == 0;
  if (question->lower.given && question->upper.given && question->lower.count > question->upper.count)
    return tm_fail (_ ("pins: --lower %s is above --upper %s; exchange them"), words->lower, words->upper)
           == 0;
  question->limits = (TmLimits) { question->lower.count, question->upper.count, question->lower.given,
                                  question->upper.given, FALSE };
  return TRUE;
}

static gboolean
read_size (const Words *words, Question *question)
{
  TmQuantity size, u;

  if (!read_length ("size", words->size, question->unit, &size)
      || !read_spread ("u", words->u, question->unit, &u)
      || !read_spread ("form", words->form, question->unit, &question->form))
    return FALSE;
  if (size.given != u.given)
    return tm_fail (_ ("pins: --size and --u, its standard uncertainty, go together; give both or neither"))
           == 0;
  if (size.given && u.count == 0)
    return tm_fail (_ ("pins: --u “%s”: no size is known without any uncertainty; give one above zero"),
                    words->u)
           == 0;
  question->size = (TmPinSizeInput) { size.given,      size.count, 0,
                                      (double)u.count, INFINITY,   (double)question->form.count };
  return TRUE;
}

static gboolean
read_question (const Words *words, Question *question)
{
  if (!tm_unit_from_word (words->unit, &question->unit)
      || (question->unit != TM_UNIT_MM && question->unit != TM_UNIT_IN))
    return tm_fail (_ ("pins: --unit “%s”: use mm or in"), words->unit) == 0;
  if (!read_limits (words, question) || !read_size (words, question)
      || !read_spread ("clearance", words->clearance, question->unit, &question->clearance))
    return FALSE;
  if (question->clearance.count > TM_PIN_CLEARANCE_MOST)
    return tm_fail (_ ("pins: --clearance “%s” is more than a metre; a pin needs about 0.001 mm to enter"),
                    words->clearance)
           == 0;
  if (!question->clearance.given)
    question->clearance = tm_quantity_new (TM_PIN_ENTRY_CLEARANCE, TM_UNIT_MM, 3);
  return TRUE;
}

/* -------- Lengths in words -------- */

/* Finer than any pin is known. */
static int
get_decimals (TmUnit unit)
{
  return unit == TM_UNIT_IN ? 6 : 5;
}

/* Outward, so that nothing is claimed that is not proven: @up for an upper bound. */
static char *
format_bound (gint64 count, TmUnit unit, gboolean up)
{
  gint64 step = tm_unit_counts (unit);
  gint64 rest;

  for (int i = 0; i < get_decimals (unit); i++)
    step /= 10;
  rest = count % step;
  if (rest < 0)
    rest += step;
  count -= rest;
  if (up && rest > 0)
    count += step;
  return tm_count_format_exact (count, unit, unit == TM_UNIT_IN ? 4 : 3);
}

/* A count that lies @counts beside @reference. */
static gint64
round_beside (gint64 reference, double counts)
{
  double most = (double)TM_COUNT_MAX;
  TmWide sum = (TmWide)reference + llround (CLAMP (counts, -2 * most, 2 * most));

  return (gint64)CLAMP (sum, -TM_COUNT_MAX, TM_COUNT_MAX);
}

static char *
format_estimate (gint64 reference, double counts, TmUnit unit)
{
  return tm_count_format (round_beside (reference, counts), unit, (guint)get_decimals (unit));
}

/* -------- What trials prove -------- */

static void
put_count (yajl_gen gen, const char *key, gboolean given, gint64 count, TmUnit unit)
{
  g_autofree char *text = given ? tm_count_format_exact (count, unit, unit == TM_UNIT_IN ? 4 : 3) : NULL;

  tm_print_text (gen, key, text);
}

static void
put_estimate (yajl_gen gen, const char *key, const TmPinResult *result, double counts, TmUnit unit)
{
  put_count (gen, key, result->has_estimate,
             result->has_estimate ? round_beside (result->reference, counts) : 0, unit);
}

static void
print_result_json (const Question *question, const TmPinResult *result)
{
  yajl_gen gen = tm_print_begin ();
  TmUnit unit = question->unit;

  yajl_gen_map_open (gen);
  tm_print_unit (gen, unit);
  put_count (gen, "low", result->has_low, result->low, unit);
  put_count (gen, "high", result->has_high, result->high, unit);
  tm_print_flag (gen, "proves_band", result->proves_band);
  put_count (gen, "open_below", result->open_below >= 0, result->open_below, unit);
  put_count (gen, "open_above", result->open_above >= 0, result->open_above, unit);
  put_estimate (gen, "estimate", result, result->estimate, unit);
  tm_print_counts (gen, "uncertainty", result->u, unit);
  put_estimate (gen, "estimate_low", result, result->low95, unit);
  put_estimate (gen, "estimate_high", result, result->high95, unit);
  tm_print_number (gen, "probability_in", result->probability_in);
  tm_print_flag (gen, "contradiction", result->contradiction);
  put_count (gen, "clearance", TRUE, question->clearance.count, unit);
  put_count (gen, "form", question->size.given, question->form.count, unit);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static const char *
get_sign_word (TmPinSign sign)
{
  return sign == TM_PIN_PLUS ? C_ ("pin", "plus") : C_ ("pin", "minus");
}

static void
print_trial (const Question *question, const TmPin *pin, const TmWrittenPin *written)
{
  g_autofree char *size = tm_quantity_format (&written->size);
  g_autofree char *low = format_bound (pin->low, question->unit, FALSE);
  g_autofree char *high = format_bound (pin->high, question->unit, TRUE);
  g_autofree char *bound = pin->went
                               ? g_strdup (low)
                               : format_bound (pin->high + question->clearance.count, question->unit, TRUE);

  printf (pin->went ? _ ("%s %s %s went: it is %s to %s %s, so the bore is at least %s\n")
                    : _ ("%s %s %s did not go: it is %s to %s %s, so the bore is under %s\n"),
          size, written->pin_class, get_sign_word (written->sign), low, high, tm_unit_symbol (question->unit),
          bound);
}

static void
print_bounds (const Question *question, const TmPinResult *result)
{
  const char *unit = tm_unit_symbol (question->unit);
  g_autofree char *low = format_bound (result->low, question->unit, FALSE);
  g_autofree char *high = format_bound (result->high, question->unit, TRUE);

  if (result->has_low && result->has_high)
    printf (result->low_pin == result->high_pin || result->n_pins == 1 ? _ ("this pin proves %s to %s %s\n")
            : result->n_pins == 2                                      ? _ ("these two prove %s to %s %s\n")
                                                                       : _ ("these pins prove %s to %s %s\n"),
            low, high, unit);
  else if (result->has_low)
    printf (_ ("proven: at least %s %s; nothing bounds it above\n"), low, unit);
  else
    printf (_ ("proven: under %s %s; nothing bounds it below\n"), high, unit);
}

static void
print_open (const Question *question, const TmPinResult *result)
{
  const char *unit = tm_unit_symbol (question->unit);
  g_autofree char *lower = tm_quantity_format (&question->lower);
  g_autofree char *upper = tm_quantity_format (&question->upper);
  g_autofree char *below = format_bound (MAX (result->open_below, 0), question->unit, TRUE);
  g_autofree char *above = format_bound (MAX (result->open_above, 0), question->unit, TRUE);

  if (result->proves_band)
    printf ("%s\n", _ ("that is within the band: they prove it"));
  if (result->open_below > 0)
    printf (_ ("the band begins at %s: %s %s below it is left open\n"), lower, below, unit);
  if (result->open_below < 0)
    printf (_ ("the band begins at %s: below it everything is left open\n"), lower);
  if (result->open_above > 0)
    printf (_ ("the band ends at %s: %s %s above it is left open\n"), upper, above, unit);
  if (result->open_above < 0)
    printf (_ ("the band ends at %s: above it everything is left open\n"), upper);
}

static void
print_contradiction (const TmPinTrials *trials, const TmPinResult *result)
{
  const TmPin *first = &g_array_index (trials->pins, TmPin, 0);
  char *names[2] = { NULL, NULL };

  for (int i = 0; i < 2; i++)
    if (result->contradicting[i] != NULL)
      {
        const TmWrittenPin *written
            = &g_array_index (trials->written, TmWrittenPin, result->contradicting[i] - first);
        g_autofree char *size = tm_quantity_format (&written->size);

        names[i] = g_strdup_printf ("%s %s %s", size, written->pin_class, get_sign_word (written->sign));
      }
  if (names[1] != NULL)
    printf (_ ("contradiction: %s went and %s did not; both cannot be true\n"), names[0], names[1]);
  else
    printf (_ ("contradiction: the size lies far outside what %s allows\n"), names[0]);
  g_free (names[0]);
  g_free (names[1]);
}

static void
print_estimate (const Question *question, const TmPinResult *result)
{
  TmUnit unit = question->unit;
  g_autofree char *mean = format_estimate (result->reference, result->estimate, unit);
  g_autofree char *u = tm_count_format (round_beside (0, result->u), unit, (guint)get_decimals (unit));
  g_autofree char *low = format_estimate (result->reference, result->low95, unit);
  g_autofree char *high = format_estimate (result->reference, result->high95, unit);
  g_autofree char *form = tm_count_format_exact (question->form.count, unit, 0);

  printf (_ ("estimate %s %s, standard uncertainty %s, 95 %% from %s to %s\n"), mean, tm_unit_symbol (unit),
          u, low, high);
  printf (_ ("in with probability %.4f\n"), result->probability_in);
  if (question->size.given)
    printf (_ ("form not seen: at most %s %s (--form)\n"), form, tm_unit_symbol (unit));
}

static void
print_result (const Question *question, const TmPinTrials *trials, const TmPinResult *result)
{
  g_autofree char *clearance = format_bound (question->clearance.count, question->unit, TRUE);

  for (guint i = 0; i < trials->pins->len; i++)
    print_trial (question, &g_array_index (trials->pins, TmPin, i),
                 &g_array_index (trials->written, TmWrittenPin, i));
  if (result->has_high && question->clearance.count > 0)
    printf (_ ("with %s %s more that a pin needs to enter (--clearance)\n"), clearance,
            tm_unit_symbol (question->unit));
  if (result->contradiction)
    {
      print_contradiction (trials, result);
      return;
    }
  print_bounds (question, result);
  print_open (question, result);
  if (result->has_estimate)
    print_estimate (question, result);
}

static int
answer_trials (const Words *words)
{
  Question question = { 0 };
  g_auto (TmPinTrials) trials = { 0 };
  TmPinResult result;

  if (words->trials == NULL)
    return tm_fail (_ ("pins: say which pins were tried: --trials \"12.006-Z+ go, 12.018-Z- nogo\""));
  if (!read_question (words, &question) || !tm_pin_trials_read (words->trials, question.unit, &trials))
    return 2;
  tm_pins_judge (&g_array_index (trials.pins, TmPin, 0), trials.pins->len, &question.limits,
                 question.clearance.count, &question.size, &result);
  if (words->json)
    print_result_json (&question, &result);
  else
    print_result (&question, &trials, &result);
  return 0;
}

/* -------- Which pins to pull -------- */

static void
put_pin (yajl_gen gen, const char *key, const TmGauge *set, gint64 size, const TmPin *pin, TmUnit unit)
{
  tm_print_key (gen, key);
  if (set == NULL)
    {
      yajl_gen_null (gen);
      return;
    }
  yajl_gen_map_open (gen);
  tm_print_text (gen, "set", set->tag);
  put_count (gen, "size", TRUE, size, unit);
  put_count (gen, "low", TRUE, pin->low, unit);
  put_count (gen, "high", TRUE, pin->high, unit);
  yajl_gen_map_close (gen);
}

static void
print_plan_json (const TmFeature *feature, const TmPinPlan *plan)
{
  yajl_gen gen = tm_print_begin ();
  TmUnit unit = feature->unit;

  yajl_gen_map_open (gen);
  tm_print_text (gen, "feature", feature->balloon);
  tm_print_unit (gen, unit);
  put_pin (gen, "go", plan->go_set, plan->go_size, &plan->go, unit);
  put_pin (gen, "nogo", plan->nogo_set, plan->nogo_size, &plan->nogo, unit);
  put_count (gen, "low", plan->has_go, plan->low, unit);
  put_count (gen, "high", plan->has_nogo, plan->high, unit);
  tm_print_flag (gen, "proves_band", plan->proves_band);
  put_count (gen, "open_below", plan->open_below >= 0, plan->open_below, unit);
  put_count (gen, "open_above", plan->open_above >= 0, plan->open_above, unit);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static void
print_pin (gboolean go, const TmGauge *set, gint64 size)
{
  g_autofree char *text = tm_count_format_exact (size, set->unit, set->unit == TM_UNIT_IN ? 4 : 3);

  printf (go ? _ ("go: the %s %s pin of %s\n") : _ ("no-go: the %s %s pin of %s\n"), text,
          tm_unit_symbol (set->unit), set->tag);
}

static void
print_plan (const TmFeature *feature, const TmPinPlan *plan)
{
  const Question question = { .unit = feature->unit, .lower = feature->lower, .upper = feature->upper };
  const TmPinResult result = { .n_pins = (guint)(plan->has_go + plan->has_nogo),
                               .has_low = plan->has_go,
                               .has_high = plan->has_nogo,
                               .low = plan->low,
                               .high = plan->high,
                               .low_pin = &plan->go,
                               .high_pin = &plan->nogo,
                               .proves_band = plan->proves_band,
                               .open_below = plan->open_below,
                               .open_above = plan->open_above };

  if (!plan->has_go && !plan->has_nogo)
    {
      printf ("%s\n", _ ("no pin of the job's sets says anything about this feature"));
      return;
    }
  if (plan->has_go)
    print_pin (TRUE, plan->go_set, plan->go_size);
  if (plan->has_nogo)
    print_pin (FALSE, plan->nogo_set, plan->nogo_size);
  print_bounds (&question, &result);
  print_open (&question, &result);
}

static int
answer_job (const Words *words, const char *path)
{
  g_autoptr (TmJob) job = tm_load_job (path);
  TmFeature *feature = NULL;
  TmPinPlan plan;

  if (job == NULL || !tm_pick_feature (job, path, words->feature, &feature))
    return 2;
  if (feature == NULL)
    return tm_fail (_ ("pins: say for which feature of the job: --feature N"));
  tm_pins_to_pull (job, feature, &plan);
  if (words->json)
    print_plan_json (feature, &plan);
  else
    print_plan (feature, &plan);
  return 0;
}

/* Which of the questions was asked. */
static int
answer (const Words *said, const TmStackWords *stack, const TmSettingWords *setting, const char *path)
{
  Words trials = *said;
  TmStackWords blocks = *stack;
  TmSettingWords zero = *setting;

  if (blocks.stack != NULL && zero.zero != NULL)
    return tm_fail (_ ("pins: --stack and --zero are two questions; ask one at a time"));
  blocks.unit = said->unit;
  blocks.json = said->json;
  if (blocks.stack != NULL)
    return tm_answer_stack (&blocks, path);
  trials.unit = said->unit != NULL ? said->unit : "mm";
  zero.unit = trials.unit;
  zero.lower = said->lower;
  zero.upper = said->upper;
  zero.json = said->json;
  if (zero.zero != NULL)
    return tm_answer_setting (&zero);
  return path != NULL ? answer_job (&trials, path) : answer_trials (&trials);
}

int
tm_verb_pins (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("pins");
  Words said = { 0 };
  TmStackWords stack = { 0 };
  TmSettingWords setting = { 0 };
  const TmOption options[] = {
    { "lower", "L", N_ ("the band's lower limit"), &said.lower, NULL },
    { "upper", "U", N_ ("the band's upper limit"), &said.upper, NULL },
    { "unit", "mm|in", N_ ("unit of sizes that name none; mm if not given"), &said.unit, NULL },
    { "trials", "LIST", N_ ("pins tried, such as \"12.006-Z+ go, 12.018-Z- nogo\""), &said.trials, NULL },
    { "size", "S", N_ ("a two-point size that was read"), &said.size, NULL },
    { "u", "u", N_ ("its standard uncertainty"), &said.u, NULL },
    { "form", "F", N_ ("how far it may exceed the mating size; 0 if not given"), &said.form, NULL },
    { "clearance", "c", N_ ("what a pin needs to enter; assumed 0.001 mm if not given"), &said.clearance,
      NULL },
    { "feature", "N", N_ ("with JOB: the feature whose pins to pull are asked"), &said.feature, NULL },
    { "stack", "SIZE", N_ ("the fewest gauge blocks that make this size; 1 when none do"), &stack.stack,
      NULL },
    { "set", "M112", N_ ("with --stack: a usual set of blocks: M112, M88, M87 or IN81"), &stack.set, NULL },
    { "sizes", "LIST", N_ ("with --stack: the blocks, such as \"1.0005; 1.01-1.49 by 0.01; 25\""),
      &stack.sizes, NULL },
    { "gauge", "TAG", N_ ("with --stack and JOB: the block set of the job's register"), &stack.gauge, NULL },
    { "wear", "W", N_ ("with --stack: the size of each of the two wear blocks at its ends"), &stack.wear,
      NULL },
    { "zero", "SIZE", N_ ("where to put the pointer of a dial gauge on a ring, so that this size shows as 0"),
      &setting.zero, NULL },
    { "standard", "S", N_ ("with --zero: the ring's or stack's own size"), &setting.standard, NULL },
    { "graduation", "G", N_ ("with --zero: one mark of the dial"), &setting.graduation, NULL },
    { "reversed", NULL, N_ ("with --zero: the pointer falls when the size grows"), NULL, &setting.reversed },
    { "json", NULL, N_ ("print JSON"), NULL, &said.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  if (operands == NULL)
    return status;
  if (operands->len > 1)
    return tm_fail (_ ("pins: it takes one JOB at most, or --trials; see tenthmark-cli pins --help"));
  return answer (&said, &stack, &setting, operands->len == 1 ? g_ptr_array_index (operands, 0) : NULL);
}
