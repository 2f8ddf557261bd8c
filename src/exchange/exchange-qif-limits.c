/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The limits of one characteristic of a QIF file: those that stand there as sizes, or the nominal with its
 * deviations, added exactly and only then rounded to what a feature holds.
 */

#include <glib/gi18n-lib.h>

#include "core-callout.h"
#include "exchange-qif-take.h"

typedef enum { NOMINAL, LOWER, UPPER, N_NUMBERS } Which;

/* What is being read. */
typedef struct {
  const TmQifFile *file;
  const TmQifLayers *layers;
  const TmQifKind *kind;
  TmUnit system;
  TmUnit unit; /* of all numbers; NONE: none was read yet */
  TmQifNumber numbers[N_NUMBERS];
} Reading;

void
tm_qif_limits_clear (TmQifLimits *limits)
{
  g_clear_pointer (&limits->nominal, g_free);
  g_clear_pointer (&limits->lower, g_free);
  g_clear_pointer (&limits->upper, g_free);
}

/* The finest decimals whose every value is a whole count: core-quantity.h has the counts. */
static guint
get_most_places (TmUnit unit)
{
  switch (unit)
    {
    case TM_UNIT_MM:
      return 9;
    case TM_UNIT_IN:
    case TM_UNIT_DEGREE:
      return 8;
    case TM_UNIT_UM:
    case TM_UNIT_HARDNESS:
      return 6;
    case TM_UNIT_UIN:
      return 2;
    case TM_UNIT_NONE:
    case TM_UNIT_THOU:
    case TM_UNIT_TENTH:
    case TM_UNIT_COUNT:
    case TM_UNIT_CELSIUS:
    case TM_N_UNITS:
    default:
      return 0;
    }
}

static gboolean
multiply (TmQifNumber *number, TmWide digits, guint places)
{
  const TmDecimal factor = { digits, places };

  return tm_decimal_multiply (&number->value, &factor, &number->value);
}

/* Inches to millimetres. */
static gboolean
convert (TmQifNumber *number)
{
  number->places = 0;
  return multiply (number, 254, 1);
}

/* Brings all to millimetres where one number is in them and another in inches. */
static gboolean
join_unit (Reading *reading, TmUnit unit, TmQifNumber *number)
{
  if (reading->unit == TM_UNIT_NONE)
    reading->unit = unit;
  if (reading->unit == unit)
    return TRUE;
  if (unit == TM_UNIT_IN)
    return convert (number);
  for (Which which = 0; which < N_NUMBERS; which++)
    if (&reading->numbers[which] != number && reading->numbers[which].given
        && !convert (&reading->numbers[which]))
      return FALSE;
  reading->unit = unit;
  return TRUE;
}

/* Takes the number at @path, where there is one. */
static char *
take (Reading *reading, const TmQifRecord *record, const char *path, Which which)
{
  const TmQifField *field = tm_qif_field (record, path);
  TmQifNumber *number = &reading->numbers[which];
  TmUnit unit;
  char *trouble;

  if (field == NULL)
    return NULL;
  trouble = tm_qif_take_number (reading->file, field, reading->kind->takes, reading->system, &unit, number);
  if (trouble == NULL && !join_unit (reading, unit, number))
    return g_strdup (_ ("its numbers are too long"));
  return trouble;
}

static gboolean
is_true (const char *text)
{
  return g_str_equal (text, "true") || g_str_equal (text, "1");
}

/* Adds the nominal to a deviation. */
static gboolean
add_nominal (Reading *reading, Which which)
{
  TmQifNumber *number = &reading->numbers[which];
  const TmQifNumber *nominal = &reading->numbers[NOMINAL];

  if (!number->given)
    return TRUE;
  number->places = MAX (number->places, nominal->places);
  return tm_decimal_add (&number->value, &nominal->value, &number->value);
}

static char *
settle_deviations (Reading *reading)
{
  if (!reading->numbers[NOMINAL].given)
    return g_strdup (_ ("its limits are deviations, and the file has no nominal to add them to"));
  if (!add_nominal (reading, LOWER) || !add_nominal (reading, UPPER))
    return g_strdup (_ ("its numbers are too long"));
  return NULL;
}

/* Whether @low lies above @high, where both are there. */
static gboolean
are_crossed (const TmQifNumber *low, const TmQifNumber *high)
{
  return low->given && high->given && tm_decimal_compare (&low->value, &high->value) > 0;
}

/* @high - @low, where it is more than half of the nominal. */
static gboolean
is_far_below (const TmQifNumber *low, const TmQifNumber *high, const TmDecimal *nominal)
{
  TmDecimal gap = low->value;
  TmDecimal size = *nominal;

  gap.digits = -gap.digits;
  size.digits = size.digits < 0 ? -size.digits : size.digits;
  return tm_decimal_add (&gap, &high->value, &gap) && tm_decimal_add (&gap, &gap, &gap)
         && tm_decimal_compare (&gap, &size) > 0;
}

/* A shaft 25 p6 has its nominal outside of its limits, and near them.  One whose nominal lies far away comes
 * from a file that calls sizes deviations, or the other way round. */
static gboolean
is_nominal_far (const TmQifNumber numbers[N_NUMBERS])
{
  const TmQifNumber *nominal = &numbers[NOMINAL];

  return (are_crossed (&numbers[LOWER], nominal) && is_far_below (nominal, &numbers[LOWER], &nominal->value))
         || (are_crossed (nominal, &numbers[UPPER])
             && is_far_below (&numbers[UPPER], nominal, &nominal->value));
}

static char *
check (const Reading *reading)
{
  const TmQifNumber *numbers = reading->numbers;

  if (!numbers[LOWER].given && !numbers[UPPER].given)
    return g_strdup (_ ("the file states no limits for it"));
  if (are_crossed (&numbers[LOWER], &numbers[UPPER]))
    return g_strdup (_ ("its lower limit lies above the upper one; look at the drawing"));
  if (is_nominal_far (numbers))
    return g_strdup (
        _ ("its nominal lies far outside of its limits as the file states them; look at the drawing"));
  return NULL;
}

/* Tolerance, of its own or a default one that it refers to. */
static char *
take_tolerance (Reading *reading)
{
  const TmQifRecord *definition = reading->layers->definition;
  const TmQifRecord *shared = tm_qif_follow (reading->file, definition, "Tolerance/DefinitionId");
  char *trouble = take (reading, reading->layers->nominal, "TargetValue", NOMINAL);

  if (trouble == NULL)
    trouble = take (reading, shared != NULL ? shared : definition,
                    shared != NULL ? "MaxValue" : "Tolerance/MaxValue", UPPER);
  if (trouble == NULL)
    trouble = take (reading, shared != NULL ? shared : definition,
                    shared != NULL ? "MinValue" : "Tolerance/MinValue", LOWER);
  if (trouble == NULL && (reading->numbers[LOWER].given || reading->numbers[UPPER].given)
      && !is_true (tm_qif_field_text (definition, "Tolerance/DefinedAsLimit")))
    trouble = settle_deviations (reading);
  return trouble;
}

static void
set_count (TmQifNumber *number, const TmQuantity *limit)
{
  *number = (TmQifNumber) { limit->given, { limit->count, get_most_places (TM_UNIT_MM) }, limit->decimals };
}

/* A class of ISO 286, such as H7: the limits follow from it, for millimetres. */
static char *
take_class (Reading *reading, const char *class_name)
{
  const TmQifNumber *nominal = &reading->numbers[NOMINAL];
  g_autofree char *number = NULL;
  g_autofree char *text = NULL;
  TmCallout callout;

  if (!nominal->given || reading->unit != TM_UNIT_MM)
    return g_strdup (_ ("its class has no nominal in millimetres to go with"));
  number = tm_decimal_format (&nominal->value, 0, get_most_places (TM_UNIT_MM));
  text = g_strdup_printf ("Ø%s %s", number, class_name);
  callout = tm_callout_read (text, TM_UNIT_MM, NULL);
  if (callout.status != TM_CALLOUT_OK)
    return g_strdup (_ (tm_callout_status_text (callout.status)));
  set_count (&reading->numbers[LOWER], &callout.lower);
  set_count (&reading->numbers[UPPER], &callout.upper);
  return NULL;
}

/* Tolerance, or a class of limits and fits. */
static char *
take_size (Reading *reading)
{
  const TmQifRecord *definition = reading->layers->definition;
  g_autofree char *class_name
      = g_strconcat (tm_qif_field_text (definition, "LimitsAndFitsSpecification/FormVariance"),
                     tm_qif_field_text (definition, "LimitsAndFitsSpecification/Grade"), NULL);
  char *trouble = take_tolerance (reading);

  if (trouble == NULL && *class_name != '\0')
    trouble = take_class (reading, class_name);
  return trouble;
}

/* A profile zone that lies more to one side: one number for the deviation does not say whether it is in. */
static char *
take_zone (Reading *reading)
{
  const TmQifRecord *definition = reading->layers->definition;

  if (tm_qif_field (definition, "OuterDisposition") != NULL
      || tm_qif_field (definition, "UnequallyDisposedZone") != NULL)
    return g_strdup (_ ("its zone lies unequally about the nominal, which is not judged here"));
  return take (reading, definition, "ToleranceValue", UPPER);
}

/* A target that the file says is no nominal stands there because QIF asks for one. */
static char *
take_own_unit (Reading *reading)
{
  const TmQifRecord *nominal = reading->layers->nominal;
  char *trouble = take (reading, nominal, "TargetValue", NOMINAL);

  if (trouble == NULL)
    trouble = take (reading, nominal, "MaxValue", UPPER);
  if (trouble == NULL)
    trouble = take (reading, nominal, "MinValue", LOWER);
  if (trouble == NULL && !is_true (tm_qif_field_text (nominal, "DefinedAsLimit")))
    trouble = settle_deviations (reading);
  if (g_str_equal (tm_qif_note (nominal, "TargetValueIsNominal"), "false"))
    reading->numbers[NOMINAL].given = FALSE;
  return trouble;
}

/* Roughness is counted in the small unit. */
static gboolean
shrink (TmQifNumber *number, gboolean inch)
{
  guint shift = inch ? 6 : 3;

  number->places = number->places > shift ? number->places - shift : 0;
  return !number->given || multiply (number, inch ? 1000000 : 1000, 0);
}

static char *
take_roughness (Reading *reading, char *(*take_limits) (Reading *reading))
{
  char *trouble = take_limits (reading);
  gboolean inch = reading->unit == TM_UNIT_IN;

  if (trouble != NULL)
    return trouble;
  for (Which which = 0; which < N_NUMBERS; which++)
    if (!shrink (&reading->numbers[which], inch))
      return g_strdup (_ ("its numbers are too long"));
  reading->unit = inch ? TM_UNIT_UIN : TM_UNIT_UM;
  return NULL;
}

static char *
take_texture (Reading *reading)
{
  return take (reading, reading->layers->definition, "RoughnessAverage", UPPER);
}

static char *
take_all (Reading *reading)
{
  switch (reading->kind->takes)
    {
    case TM_QIF_TAKES_LENGTH:
      return take_size (reading);
    case TM_QIF_TAKES_ANGLE:
      return take_tolerance (reading);
    case TM_QIF_TAKES_ZONE:
      return take_zone (reading);
    case TM_QIF_TAKES_TEXTURE:
      return take_roughness (reading, take_texture);
    case TM_QIF_TAKES_ROUGHNESS:
      return take_roughness (reading, take_tolerance);
    case TM_QIF_TAKES_OWN_UNIT:
      return take_own_unit (reading);
    case TM_QIF_TAKES_NOTHING:
    default:
      return NULL;
    }
}

static char *
print (const Reading *reading, Which which)
{
  const TmQifNumber *number = &reading->numbers[which];

  if (!number->given)
    return g_strdup ("");
  return tm_decimal_format (&number->value, number->places, get_most_places (reading->unit));
}

char *
tm_qif_take_limits (const TmQifFile *file, const TmQifLayers *layers, const TmQifKind *kind, TmUnit system,
                    TmQifLimits *out)
{
  Reading reading = { .file = file, .layers = layers, .kind = kind, .system = system, .unit = TM_UNIT_NONE };
  char *trouble = take_all (&reading);

  if (trouble == NULL)
    trouble = check (&reading);
  *out = (TmQifLimits) { .unit = reading.unit };
  if (trouble != NULL)
    return trouble;
  out->nominal = print (&reading, NOMINAL);
  out->lower = print (&reading, LOWER);
  out->upper = print (&reading, UPPER);
  return NULL;
}
