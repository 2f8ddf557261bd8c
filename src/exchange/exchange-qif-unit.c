/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Units of a QIF file.  A value is SI = (value + Offset) x Factor of its unit; the unit is the one that the
 * value names, else the primary one for characteristics (PMI…), else the primary one, else the SI unit.  A
 * file without any FileUnits is another matter: its programs mean something by their numbers, and it is not
 * the metre.
 */

#include <glib/gi18n-lib.h>

#include "exchange-qif-take.h"

/* pi / 180 to as many digits as any file has, and how near a factor must come to mean a degree. */
#define DEGREE      "0.017453292519943296"
#define DEGREE_NEAR "0.000000000001"

/* What the numbers of a unit are multiplied with to be in @unit. */
typedef struct {
  TmUnit unit;
  TmDecimal factor;
} Scale;

static const TmDecimal one = { 1, 0 };

static const TmQifRecord *
find_named (const TmQifFile *file, const char *type, const char *name)
{
  const GPtrArray *lists[] = { file->lists[TM_QIF_LIST_OTHER_UNITS], file->lists[TM_QIF_LIST_PRIMARY_UNITS] };

  for (gsize list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; i < lists[list]->len; i++)
      {
        const TmQifRecord *record = g_ptr_array_index (lists[list], i);

        if (g_str_has_suffix (record->type, type)
            && g_str_equal (tm_qif_field_text (record, "UnitName"), name))
          return record;
      }
  return NULL;
}

static const TmQifRecord *
find_primary (const TmQifFile *file, const char *type)
{
  const GPtrArray *list = file->lists[TM_QIF_LIST_PRIMARY_UNITS];
  const TmQifRecord *found = NULL;

  for (guint i = 0; i < list->len; i++)
    {
      const TmQifRecord *record = g_ptr_array_index (list, i);

      if (g_str_has_suffix (record->type, type) && (found == NULL || g_str_has_prefix (record->type, "PMI")))
        found = record;
    }
  return found;
}

/* A unit without a conversion is the SI unit itself, and must be called so: "mm" alone could be either. */
static gboolean
is_si_name (const char *name)
{
  static const char *const names[] = { "meter", "metre", "m", "radian", "rad" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    if (g_ascii_strcasecmp (names[i], name) == 0)
      return TRUE;
  return FALSE;
}

static gboolean
read_factor (const TmQifRecord *unit, TmDecimal *factor)
{
  const char *text = tm_qif_field_text (unit, "UnitConversion/Factor");
  const char *offset = tm_qif_field_text (unit, "UnitConversion/Offset");
  TmDecimal zero;

  if (*offset != '\0' && (!tm_decimal_read (offset, &zero) || zero.digits != 0))
    return FALSE;
  *factor = one;
  if (*text == '\0')
    return is_si_name (tm_qif_field_text (unit, "UnitName"));
  return tm_decimal_read (text, factor) && factor->digits > 0;
}

/* An inch or a decimal part of it stays in inches; anything else becomes millimetres. */
static Scale
scale_length (TmDecimal metres)
{
  static const TmDecimal millimetres = { 1000, 0 };
  Scale scale = { TM_UNIT_MM, one };

  while (metres.places > 0 && metres.digits % 10 == 0)
    {
      metres.digits /= 10;
      metres.places--;
    }
  if (metres.digits == 254 && metres.places >= 4)
    return (Scale) { TM_UNIT_IN, { 1, metres.places - 4 } };
  if (!tm_decimal_multiply (&metres, &millimetres, &scale.factor))
    scale.unit = TM_UNIT_NONE;
  while (scale.factor.places > 0 && scale.factor.digits % 10 == 0)
    {
      scale.factor.digits /= 10;
      scale.factor.places--;
    }
  return scale;
}

static gboolean
is_degree (const TmDecimal *factor)
{
  TmDecimal degree, near, difference;

  tm_decimal_read ("-" DEGREE, &degree);
  tm_decimal_read (DEGREE_NEAR, &near);
  if (!tm_decimal_add (factor, &degree, &difference))
    return FALSE;
  if (difference.digits < 0)
    difference.digits = -difference.digits;
  return tm_decimal_compare (&difference, &near) < 0;
}

static char *
refuse_unit (const TmQifField *field)
{
  g_autofree char *quoted = field->unit != NULL ? tm_exchange_quote (field->unit) : NULL;

  if (quoted == NULL)
    return g_strdup (_ ("the unit that the file states cannot be converted exactly"));
  return g_strdup_printf (_ ("the unit %s is not declared in the file, or cannot be converted exactly"),
                          quoted);
}

/* The unit that @field is in; NULL when the file states none. */
static const TmQifRecord *
find_unit (const TmQifFile *file, const TmQifField *field, const char *type)
{
  return field->unit != NULL ? find_named (file, type, field->unit) : find_primary (file, type);
}

static gboolean
find_length (const TmQifFile *file, const TmQifField *field, TmUnit system, Scale *scale)
{
  const TmQifRecord *unit = find_unit (file, field, "LinearUnit");
  TmDecimal factor = one;

  if (unit == NULL && field->unit != NULL)
    return FALSE;
  if (unit == NULL && !file->has_units)
    {
      *scale = (Scale) { system, one };
      return TRUE;
    }
  if (unit != NULL && !read_factor (unit, &factor))
    return FALSE;
  *scale = scale_length (factor);
  return scale->unit != TM_UNIT_NONE;
}

static gboolean
find_angle (const TmQifFile *file, const TmQifField *field, Scale *scale)
{
  const TmQifRecord *unit = find_unit (file, field, "AngularUnit");
  TmDecimal factor;

  *scale = (Scale) { TM_UNIT_DEGREE, one };
  if (unit == NULL)
    return field->unit == NULL && !file->has_units;
  return read_factor (unit, &factor) && is_degree (&factor);
}

/* Hardness, on whatever scale the text of the characteristic names. */
static gboolean
find_own (const TmQifFile *file, const TmQifField *field, Scale *scale)
{
  const GPtrArray *list = file->lists[TM_QIF_LIST_OWN_UNITS];

  *scale = (Scale) { TM_UNIT_HARDNESS, one };
  for (guint i = 0; i < list->len; i++)
    {
      const TmQifRecord *record = g_ptr_array_index (list, i);

      if (g_strcmp0 (tm_qif_field_text (record, "UnitName"), field->unit) == 0
          && strstr (tm_qif_field_text (record, "WhatIsMeasured"), "ardness") != NULL)
        return TRUE;
    }
  return FALSE;
}

static gboolean
find_scale (const TmQifFile *file, const TmQifField *field, TmQifTakes takes, TmUnit system, Scale *scale)
{
  if (takes == TM_QIF_TAKES_ANGLE)
    return find_angle (file, field, scale);
  if (takes == TM_QIF_TAKES_OWN_UNIT)
    return find_own (file, field, scale);
  return find_length (file, field, system, scale);
}

char *
tm_qif_take_number (const TmQifFile *file, const TmQifField *field, TmQifTakes takes, TmUnit system,
                    TmUnit *unit, TmQifNumber *out)
{
  TmDecimal read;
  Scale scale;

  if (!tm_decimal_read (field->text, &read))
    {
      g_autofree char *quoted = tm_exchange_quote (field->text);

      return g_strdup_printf (_ ("%s is no number, or one of too many digits"), quoted);
    }
  if (!find_scale (file, field, takes, system, &scale))
    return refuse_unit (field);
  if (!tm_decimal_multiply (&read, &scale.factor, &out->value))
    return refuse_unit (field);
  out->given = TRUE;
  out->places = 0;
  if (scale.factor.digits == 1)
    out->places = (field->places >= 0 ? (guint)field->places : read.places) + scale.factor.places;
  *unit = scale.unit;
  return NULL;
}
