/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-press: tenthmark-cli press: how hard a hub presses its shaft, by stated figures or by a job's.
 */

#include "cli-press.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "cli-verbs.h"

/* What is said of one of the two parts. */
typedef struct {
  const char *material, *modulus, *poisson, *yield, *expansion, *cold, *roughness;
} PartWords;

typedef struct {
  const char *interference, *least, *most, *diameter, *length, *hub_outside, *shaft_inside;
  PartWords hub, shaft;
  const char *friction, *gap, *ambient, *unit;
  TmPressWhich which; /* of a job */
  gboolean materials, json;
} Words;

/* -------- Numbers -------- */

/* In @unit, as a double in @target; @out keeps what it has when nothing was said. */
static gboolean
read_number (const char *option, const char *text, TmUnit unit, TmUnit target, double *out)
{
  TmQuantity quantity;
  TmReadStatus status;

  if (text == NULL)
    return TRUE;
  status = tm_quantity_read (text, unit, &quantity);
  if (status != TM_READ_OK)
    return tm_fail (_ ("press: --%s “%s”: %s"), option, text, _ (tm_read_status_text (status))) == 0;
  *out = tm_count_to_double (quantity.count, target);
  return TRUE;
}

static gboolean
read_length (const char *option, const char *text, TmUnit unit, double *out)
{
  return read_number (option, text, unit, TM_UNIT_MM, out);
}

static gboolean
read_plain (const char *option, const char *text, double *out)
{
  return read_number (option, text, TM_UNIT_HARDNESS, TM_UNIT_HARDNESS, out);
}

/* "0.12", or the least and the most as "0.08-0.14". */
static gboolean
read_friction (const char *text, TmPressInput *input)
{
  const char *dash = text != NULL && text[0] != '\0' ? strchr (text + 1, '-') : NULL;
  g_autofree char *least = dash != NULL ? g_strndup (text, (gsize)(dash - text)) : g_strdup (text);

  return read_plain ("friction", least, &input->friction_least)
         && read_plain ("friction", dash != NULL ? dash + 1 : text, &input->friction_most);
}

/* -------- The parts -------- */

static gboolean
read_material (const TmJob *job, const char *option, const char *name, TmElastic *material, TmPressBody *body)
{
  if (name == NULL)
    return TRUE;
  if (!tm_elastic_find (job, name, material))
    return tm_fail (_ ("press: --%s “%s” is not in the tables; see tenthmark-cli press --materials, or state "
                       "its figures"),
                    option, name)
           == 0;
  *body = tm_press_body (material);
  return TRUE;
}

static gboolean
read_hub (const TmJob *job, const PartWords *words, TmPressCase *out)
{
  TmPressBody *body = &out->input.hub;
  TmUnit fine = out->unit == TM_UNIT_IN ? TM_UNIT_UIN : TM_UNIT_UM;

  return read_material (job, "hub-material", words->material, &out->hub, body)
         && read_plain ("hub-e", words->modulus, &body->modulus)
         && read_plain ("hub-nu", words->poisson, &body->poisson)
         && read_plain ("hub-yield", words->yield, &body->yield)
         && read_plain ("hub-expansion", words->expansion, &body->expansion)
         && read_length ("hub-rz", words->roughness, fine, &out->input.hub_roughness);
}

static gboolean
read_shaft (const TmJob *job, const PartWords *words, TmPressCase *out)
{
  TmPressBody *body = &out->input.shaft;
  TmUnit fine = out->unit == TM_UNIT_IN ? TM_UNIT_UIN : TM_UNIT_UM;

  if (!read_material (job, "shaft-material", words->material, &out->shaft, body)
      || !read_plain ("shaft-e", words->modulus, &body->modulus)
      || !read_plain ("shaft-nu", words->poisson, &body->poisson)
      || !read_plain ("shaft-yield", words->yield, &body->yield))
    return FALSE;
  if (words->expansion != NULL)
    body->cold = NAN; /* of another material than the one that is stated now */
  return read_plain ("shaft-expansion", words->expansion, &body->expansion)
         && read_plain ("shaft-cold", words->cold, &body->cold)
         && read_length ("shaft-rz", words->roughness, fine, &out->input.shaft_roughness);
}

/* -------- The fit -------- */

/* One figure, the ends of a range, or all three. */
static gboolean
read_interference (const Words *words, TmPressCase *out)
{
  TmPressInput *input = &out->input;

  if (words->interference != NULL || words->least != NULL || words->most != NULL) /* in place of the job's */
    input->interference = input->interference_least = input->interference_most = NAN;
  if (!read_length ("interference", words->interference, out->unit, &input->interference)
      || !read_length ("least", words->least, out->unit, &input->interference_least)
      || !read_length ("most", words->most, out->unit, &input->interference_most))
    return FALSE;
  if (isnan (input->interference) && isnan (input->interference_least) != isnan (input->interference_most))
    return tm_fail (_ ("press: --least and --most go together; give both, or --interference")) == 0;
  if (input->interference_least > input->interference_most)
    return tm_fail (_ ("press: --least %s is above --most %s; exchange them"), words->least, words->most)
           == 0;
  if (isnan (input->interference))
    input->interference = (input->interference_least + input->interference_most) / 2;
  if (isnan (input->interference))
    return tm_fail (_ ("press: the interference is missing; give --interference, or --least and --most"))
           == 0;
  out->range
      = input->interference_least < input->interference || input->interference_most > input->interference;
  return TRUE;
}

static gboolean
read_case (const Words *words, const TmJob *job, TmPressCase *out)
{
  TmPressInput *input = &out->input;

  return read_interference (words, out)
         && read_length ("diameter", words->diameter, out->unit, &input->diameter)
         && read_length ("length", words->length, out->unit, &input->length)
         && read_length ("hub-od", words->hub_outside, out->unit, &input->hub_outside)
         && read_length ("shaft-id", words->shaft_inside, out->unit, &input->shaft_inside)
         && read_hub (job, &words->hub, out) && read_shaft (job, &words->shaft, out)
         && read_friction (words->friction, input) && read_length ("gap", words->gap, out->unit, &input->gap)
         && read_number ("ambient", words->ambient, TM_UNIT_CELSIUS, TM_UNIT_CELSIUS, &input->ambient);
}

/* Without one, what it is: the feature's, or mm. */
static gboolean
read_unit (const Words *words, TmUnit *unit)
{
  if (words->unit == NULL)
    return TRUE;
  if (tm_unit_from_word (words->unit, unit) && (*unit == TM_UNIT_MM || *unit == TM_UNIT_IN))
    return TRUE;
  return tm_fail (_ ("press: --unit “%s”: use mm or in"), words->unit) == 0;
}

/* 1: nothing holds; 2: the figures are no press fit. */
static int
answer_case (TmPressCase *press, gboolean json)
{
  tm_press (&press->input, &press->answer);
  if (press->answer.status != TM_PRESS_OK && press->answer.status != TM_PRESS_NO_INTERFERENCE)
    return tm_fail (_ ("press: %s"), g_dpgettext2 (GETTEXT_PACKAGE, "press status",
                                                   tm_press_status_word (press->answer.status)));
  if (json)
    tm_press_print_json (press);
  else
    tm_press_print (press);
  return press->answer.status == TM_PRESS_OK ? 0 : 1;
}

static int
answer_words (const Words *words, const TmJob *job, const char *path)
{
  TmPressCase press = { .unit = TM_UNIT_MM, .hub.name = "", .shaft.name = "" };

  tm_press_input_init (&press.input);
  if (job != NULL && !tm_press_take_job (job, path, &words->which, &press))
    return 2;
  if (!read_unit (words, &press.unit) || !read_case (words, job, &press))
    return 2;
  return answer_case (&press, words->json);
}

static int
list_materials (const Words *words, const TmJob *job)
{
  if (words->json)
    tm_materials_print_json (job);
  else
    tm_materials_print (job);
  return 0;
}

/* With a job: what it says, with the options in place of single figures. */
static int
answer (const Words *words, const char *path)
{
  g_autoptr (TmJob) job = path != NULL ? tm_load_job (path) : NULL;

  if (path != NULL && job == NULL)
    return 2;
  if (path == NULL
      && (words->which.feature != NULL || words->which.piece != NULL || words->which.place != NULL
          || words->which.mate != NULL))
    return tm_fail (_ ("press: --feature, --piece, --place and --mate are of a job; name its file"));
  return words->materials ? list_materials (words, job) : answer_words (words, job, path);
}

int
tm_verb_press (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("press");
  Words said = { 0 };
  const TmOption options[] = {
    { "interference", "I", N_ ("shaft minus bore, on diameter"), &said.interference, NULL },
    { "least", "I", N_ ("the least it may be"), &said.least, NULL },
    { "most", "I", N_ ("the most it may be"), &said.most, NULL },
    { "diameter", "D", N_ ("common diameter of the two"), &said.diameter, NULL },
    { "length", "L", N_ ("length of contact; without it no forces"), &said.length, NULL },
    { "hub-od", "D", N_ ("outside diameter of the hub"), &said.hub_outside, NULL },
    { "shaft-id", "D", N_ ("bore of the shaft or bush; solid if not given"), &said.shaft_inside, NULL },
    { "hub-material", "NAME", N_ ("of the tables, such as 6061"), &said.hub.material, NULL },
    { "shaft-material", "NAME", N_ ("the same of the shaft"), &said.shaft.material, NULL },
    { "hub-e", "GPa", N_ ("modulus of the hub, in place of the material's"), &said.hub.modulus, NULL },
    { "hub-nu", "N", N_ ("Poisson's ratio of the hub"), &said.hub.poisson, NULL },
    { "hub-yield", "MPa", N_ ("yield strength of the hub"), &said.hub.yield, NULL },
    { "hub-expansion", "A", N_ ("expansion of the hub, 1e-6 per °C"), &said.hub.expansion, NULL },
    { "shaft-e", "GPa", N_ ("modulus of the shaft"), &said.shaft.modulus, NULL },
    { "shaft-nu", "N", N_ ("Poisson's ratio of the shaft"), &said.shaft.poisson, NULL },
    { "shaft-yield", "MPa", N_ ("yield strength of the shaft"), &said.shaft.yield, NULL },
    { "shaft-expansion", "A", N_ ("expansion of the shaft, 1e-6 per °C"), &said.shaft.expansion, NULL },
    { "shaft-cold", "A", N_ ("the same for cooling well below 0 °C"), &said.shaft.cold, NULL },
    { "friction", "N|N-N", N_ ("least and most; without it no forces"), &said.friction, NULL },
    { "hub-rz", "RZ", N_ ("roughness of the bore, µm or µin"), &said.hub.roughness, NULL },
    { "shaft-rz", "RZ", N_ ("roughness of the shaft, µm or µin"), &said.shaft.roughness, NULL },
    { "gap", "G", N_ ("room for dropping in, on diameter; without it no temperatures"), &said.gap, NULL },
    { "ambient", "T", N_ ("°C that heating and cooling start from; 20 if not given"), &said.ambient, NULL },
    { "unit", "mm|in", N_ ("unit of lengths that name none; the feature's or mm if not given"), &said.unit,
      NULL },
    { "feature", "N", N_ ("with JOB: the feature that is pressed with its mate"), &said.which.feature, NULL },
    { "piece", "S", N_ ("with JOB: as this piece was measured; by limits if not given"), &said.which.piece,
      NULL },
    { "place", "P", N_ ("with JOB: of the feature's places; 1 if not given"), &said.which.place, NULL },
    { "mate", "S", N_ ("with JOB: the measured mate; the one meant for the piece, else by limits"),
      &said.which.mate, NULL },
    { "materials", NULL, N_ ("list the materials of the tables with their sources"), NULL, &said.materials },
    { "json", NULL, N_ ("print JSON"), NULL, &said.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  if (operands == NULL)
    return status;
  if (operands->len > 1)
    return tm_fail (_ ("press: it takes one JOB at most; see tenthmark-cli press --help"));
  return answer (&said, operands->len == 1 ? g_ptr_array_index (operands, 0) : NULL);
}
