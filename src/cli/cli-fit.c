/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-fit: tenthmark-cli fit: of two classes, of a feature of a job and its mate, or of plain sizes.
 */

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "cli-fit.h"
#include "cli-json.h"
#include "cli-verbs.h"
#include "core-callout.h"

/* -------- Of two classes -------- */

/* A fit's counts as millimetres with the digits that its limits need. */
static char *
format_mm (gint64 count)
{
  return tm_count_format_exact (count, TM_UNIT_MM, 3);
}

static void
put_mm (yajl_gen gen, const char *key, gint64 count)
{
  g_autofree char *text = format_mm (count);

  tm_print_text (gen, key, text);
}

static void
put_limits (yajl_gen gen, const char *key, gint64 lower, gint64 upper)
{
  tm_print_key (gen, key);
  yajl_gen_map_open (gen);
  put_mm (gen, "lower", lower);
  put_mm (gen, "upper", upper);
  yajl_gen_map_close (gen);
}

static void
print_fit_json (const TmFit *fit)
{
  yajl_gen gen = tm_print_begin ();

  yajl_gen_map_open (gen);
  tm_print_text (gen, "unit", "mm");
  put_limits (gen, "hole", fit->hole_lower, fit->hole_upper);
  put_limits (gen, "shaft", fit->shaft_lower, fit->shaft_upper);
  put_mm (gen, "clearance_min", fit->clearance_min);
  put_mm (gen, "clearance_max", fit->clearance_max);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static void
print_fit (const TmFit *fit)
{
  gboolean press = fit->clearance_max < 0;
  g_autofree char *hole_lower = format_mm (fit->hole_lower);
  g_autofree char *hole_upper = format_mm (fit->hole_upper);
  g_autofree char *shaft_lower = format_mm (fit->shaft_lower);
  g_autofree char *shaft_upper = format_mm (fit->shaft_upper);
  g_autofree char *least = format_mm (press ? -fit->clearance_max : fit->clearance_min);
  g_autofree char *most = format_mm (press ? -fit->clearance_min : fit->clearance_max);

  printf (_ ("hole %s … %s mm\n"), hole_lower, hole_upper);
  printf (_ ("shaft %s … %s mm\n"), shaft_lower, shaft_upper);
  if (press)
    printf (_ ("interference %s to %s mm\n"), least, most);
  else if (fit->clearance_min < 0)
    printf (_ ("clearance %s to %s mm (below zero: interference)\n"), least, most);
  else
    printf (_ ("clearance %s to %s mm\n"), least, most);
}

static int
answer_callout (const GPtrArray *operands, gboolean json)
{
  g_autofree char *text = tm_join_operands (operands);
  TmFit fit = tm_fit_read (text);

  if (fit.status == TM_CALLOUT_NOT_READ || fit.status == TM_CALLOUT_EMPTY)
    return tm_fail (_ ("fit: “%s” is not a fit that is read; write it like \"25 H7/p6\", or name a job file "
                       "and --feature"),
                    text);
  if (fit.status != TM_CALLOUT_OK)
    return tm_fail (_ ("fit: “%s”: %s"), text, _ (tm_callout_status_text (fit.status)));
  if (json)
    print_fit_json (&fit);
  else
    print_fit (&fit);
  return 0;
}

/* -------- Of plain sizes -------- */

/* One part as it was written: its size or range, its standard uncertainty, its expansion, its temperature. */
typedef struct {
  const char *option, *range;
  const char *u_option, *u;
  const char *alpha_option, *alpha;
  const char *temp_option, *temp;
} Written;

static gboolean
read_range (const Written *written, TmUnit unit, TmFitPart *out)
{
  g_auto (GStrv) ends = NULL;
  TmQuantity smallest, largest;

  if (written->range == NULL)
    return tm_fail (_ ("fit: --%s is missing; give its size, or its range such as 25.003..25.009"),
                    written->option)
           == 0;
  ends = g_strsplit (written->range, "..", 2);
  if (ends[0] == NULL)
    return tm_fail (_ ("fit: --%s is empty; give its size, or its range such as 25.003..25.009"),
                    written->option)
           == 0;
  if (!tm_fit_read_number (written->option, ends[0], unit, &smallest)
      || !tm_fit_read_number (written->option, ends[1] != NULL ? ends[1] : ends[0], unit, &largest))
    return FALSE;
  out->smallest = smallest.count;
  out->largest = largest.count;
  return TRUE;
}

static gboolean
read_part (const Written *written, TmUnit unit, TmFitPart *out)
{
  TmQuantity u, alpha;

  *out = (TmFitPart) { .temp = 20 };
  if (!read_range (written, unit, out) || !tm_fit_read_number (written->u_option, written->u, unit, &u)
      || !tm_fit_read_number (written->alpha_option, written->alpha, TM_UNIT_HARDNESS, &alpha)
      || !tm_fit_read_temp (written->temp_option, written->temp, &out->temp))
    return FALSE;
  if (u.given && u.count < 0)
    return tm_fail (_ ("fit: --%s “%s” is below zero; give it without the sign"), written->u_option,
                    written->u)
           == 0;
  out->u = (double)u.count;
  out->alpha = alpha.given ? tm_count_to_double (alpha.count, TM_UNIT_HARDNESS) : (double)NAN;
  return TRUE;
}

/* Which of the two options a refusal is about. */
static int
fail_part (const TmFitAnswer *answer, TmFitStatus bore_status)
{
  gboolean at_bore = bore_status == answer->status;

  if (answer->status == TM_FIT_NO_EXPANSION)
    return tm_fail (at_bore
                        ? _ ("fit: --bore-temp: how much the bore grows is not known; give --bore-alpha, "
                             "1e-6 per °C, at most 1000")
                        : _ ("fit: --shaft-temp: how much the shaft grows is not known; give --shaft-alpha, "
                             "1e-6 per °C, at most 1000"));
  return tm_fail (_ ("fit: --%s: %s"), at_bore ? "bore" : "shaft",
                  g_dpgettext2 (GETTEXT_PACKAGE, "fit status", tm_fit_status_word (answer->status)));
}

static gboolean
is_warm (const TmFitPart *part)
{
  return fabs (part->temp - 20) > 0;
}

static void
print_numbers (const TmFitAnswer *answer, TmUnit unit, gboolean json)
{
  yajl_gen gen;

  if (!json)
    {
      tm_fit_print_want (&answer->want, unit);
      tm_fit_print_answer (answer->check.u > 0 ? _ ("as measured") : _ ("by limits"), answer, unit);
      if (is_warm (&answer->bore) || is_warm (&answer->shaft))
        tm_fit_print_caution ();
      return;
    }
  gen = tm_print_begin ();
  yajl_gen_map_open (gen);
  tm_print_unit (gen, unit);
  tm_fit_put_want (gen, &answer->want, unit);
  tm_fit_put_answer (gen, NULL, answer, unit);
  yajl_gen_map_close (gen);
  tm_print_end (gen);
}

static int
answer_numbers (const TmFitWords *words)
{
  const Written bore = { "bore",       words->bore,       "bore-u",    words->bore_u,
                         "bore-alpha", words->bore_alpha, "bore-temp", words->bore_temp };
  const Written shaft = { "shaft",       words->shaft,       "shaft-u",    words->shaft_u,
                          "shaft-alpha", words->shaft_alpha, "shaft-temp", words->shaft_temp };
  TmFitAnswer answer = { .has_parts = TRUE };
  TmFitCheck ignored;
  TmUnit unit;

  if (!tm_unit_from_word (words->unit != NULL ? words->unit : "mm", &unit)
      || (unit != TM_UNIT_MM && unit != TM_UNIT_IN))
    return tm_fail (_ ("fit: --unit “%s”: use mm or in"), words->unit);
  if (!read_part (&bore, unit, &answer.bore) || !read_part (&shaft, unit, &answer.shaft)
      || !tm_fit_read_want (words, unit, &answer.want))
    return 2;
  answer.status = tm_fit_check (&answer.bore, &answer.shaft, &answer.want, &answer.check);
  if (answer.status != TM_FIT_OK)
    return fail_part (&answer, tm_fit_check (&answer.bore, &answer.bore, NULL, &ignored));
  print_numbers (&answer, unit, words->json);
  return tm_fit_answer_is_good (&answer) ? 0 : 1;
}

/* -------- Which of the three -------- */

typedef struct {
  const char *name, *value;
} Given;

/* The first of the options that was given, up to a row without a name; NULL: none. */
static const char *
find_given (const Given *options)
{
  for (; options->name != NULL; options++)
    if (options->value != NULL)
      return options->name;
  return NULL;
}

static const char *
find_job_option (const TmFitWords *words)
{
  const Given options[] = { { "feature", words->feature },       { "piece", words->piece },
                            { "place", words->place },           { "mate", words->mate },
                            { "part-temp", words->part_temp },   { "mate-temp", words->mate_temp },
                            { "pair", words->pair ? "" : NULL }, { NULL, NULL } };

  return find_given (options);
}

static const char *
find_size_option (const TmFitWords *words)
{
  const Given options[] = { { "bore", words->bore },
                            { "shaft", words->shaft },
                            { "bore-u", words->bore_u },
                            { "shaft-u", words->shaft_u },
                            { "bore-alpha", words->bore_alpha },
                            { "shaft-alpha", words->shaft_alpha },
                            { "bore-temp", words->bore_temp },
                            { "shaft-temp", words->shaft_temp },
                            { "unit", words->unit },
                            { NULL, NULL } };

  return find_given (options);
}

static const char *
find_want_option (const TmFitWords *words)
{
  const Given options[]
      = { { "want-least", words->want_least }, { "want-most", words->want_most }, { NULL, NULL } };

  return find_given (options);
}

static int
answer_job (const GPtrArray *operands, const TmFitWords *words)
{
  const char *stray = find_size_option (words);

  if (stray != NULL)
    return tm_fail (_ ("fit: --%s goes with plain sizes, not with a job; leave it out"), stray);
  if (words->feature == NULL)
    return tm_fail (_ ("fit: --%s goes with --feature; say of which feature"), find_job_option (words));
  if (operands->len != 1)
    return tm_fail (_ ("fit: --feature goes with one job file; name it"));
  return tm_fit_of_job (g_ptr_array_index (operands, 0), words);
}

static int
answer_form (const GPtrArray *operands, const TmFitWords *words)
{
  const char *stray;

  if (find_job_option (words) != NULL)
    return answer_job (operands, words);
  if (words->bore != NULL || words->shaft != NULL)
    return operands->len == 0 ? answer_numbers (words)
                              : tm_fail (_ ("fit: “%s” does not go with --bore and --shaft; leave it out"),
                                         (const char *)g_ptr_array_index (operands, 0));
  stray = find_size_option (words) != NULL ? find_size_option (words) : find_want_option (words);
  if (stray != NULL)
    return tm_fail (_ ("fit: --%s goes with --bore and --shaft or with a job's --feature; give those too"),
                    stray);
  if (operands->len == 0)
    return tm_fail (_ ("fit: it takes a fit such as \"25 H7/p6\", a job file with --feature, or --bore and "
                       "--shaft"));
  return answer_callout (operands, words->json);
}

int
tm_verb_fit (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("fit");
  TmFitWords given = { NULL };
  const TmOption options[] = {
    { "feature", "N", N_ ("of a job: this feature with its mate, by limits and as measured"), &given.feature,
      NULL },
    { "piece", "S", N_ ("as measured on this piece; the only one if not given"), &given.piece, NULL },
    { "place", "P", N_ ("at this place of the feature; 1 if not given"), &given.place, NULL },
    { "mate", "SERIAL", N_ ("with this measured mate; the one meant for the piece if not given"), &given.mate,
      NULL },
    { "part-temp", "T", N_ ("besides, with the part at this temperature, °C"), &given.part_temp, NULL },
    { "mate-temp", "T", N_ ("besides, with the mate at this temperature, °C"), &given.mate_temp, NULL },
    { "pair", NULL, N_ ("which of the measured mates to which of the measured places"), NULL, &given.pair },
    { "bore", "SIZE", N_ ("plain sizes at 20 °C: the bore, or smallest..largest"), &given.bore, NULL },
    { "bore-u", "U", N_ ("its standard uncertainty; exact if not given"), &given.bore_u, NULL },
    { "bore-temp", "T", N_ ("its temperature, °C"), &given.bore_temp, NULL },
    { "bore-alpha", "A", N_ ("its expansion, 1e-6 per °C"), &given.bore_alpha, NULL },
    { "shaft", "SIZE", N_ ("the shaft, likewise"), &given.shaft, NULL },
    { "shaft-u", "U", N_ ("its standard uncertainty"), &given.shaft_u, NULL },
    { "shaft-temp", "T", N_ ("its temperature, °C"), &given.shaft_temp, NULL },
    { "shaft-alpha", "A", N_ ("its expansion, 1e-6 per °C"), &given.shaft_alpha, NULL },
    { "want-least", "C", N_ ("wanted: at least this clearance; negative is interference"), &given.want_least,
      NULL },
    { "want-most", "C", N_ ("wanted: at most this clearance"), &given.want_most, NULL },
    { "unit", "mm|in", N_ ("of plain sizes; mm if not given"), &given.unit, NULL },
    { "json", NULL, N_ ("print JSON"), NULL, &given.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  return operands != NULL ? answer_form (operands, &given) : status;
}
