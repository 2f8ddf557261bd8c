/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers of QIF: decimal text from the exact counts, with the places that were written and the unit that
 * they were written in.
 *
 * Units of a length, other than that of the job, are named by the attribute linearUnit and declared in
 * FileUnits/OtherUnits.  1 in = 0.0254 m exactly (international inch, 1959); a degree is pi/180 rad, which
 * QIF has no exact decimal for: the fifteen decimals of the standard's own samples.
 */

#include "exchange-qif-private.h"

#define DEGREE_IN_RADIANS "0.017453292519943"
#define OWN_UNIT          "point"

static const struct {
  TmUnit unit;
  const char *name;
  const char *metres;
} lengths[] = {
  { TM_UNIT_MM, "mm", "0.001" },
  { TM_UNIT_IN, "inch", "0.0254" },
  { TM_UNIT_UM, "um", "0.000001" },
  { TM_UNIT_UIN, "microinch", "0.0000000254" },
};

/* The declared unit that is written for @unit: thou and tenths are inches. */
static TmUnit
get_written_unit (TmUnit unit)
{
  return unit == TM_UNIT_THOU || unit == TM_UNIT_TENTH ? TM_UNIT_IN : unit;
}

static void
put_unit (TmQif *qif, TmUnit unit, TmQifShape shape)
{
  if (shape == TM_QIF_UNIT)
    tm_qif_attribute (qif, "unitName", OWN_UNIT);
  if (tm_unit_dimension (unit) != TM_DIMENSION_LENGTH || unit == qif->job->unit)
    return;
  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    if (lengths[i].unit == unit)
      tm_qif_attribute (qif, "linearUnit", lengths[i].name);
}

static void
put_places (TmQif *qif, const char *text)
{
  const char *point = strchr (text, '.');
  g_autofree char *places = g_strdup_printf ("%zu", point != NULL ? strlen (point + 1) : 0);

  tm_qif_attribute (qif, "decimalPlaces", places);
}

void
tm_qif_value (TmQif *qif, const char *name, const char *text, TmUnit unit, TmQifShape shape,
              const char *uncertainty)
{
  tm_qif_open (qif, name);
  put_places (qif, text);
  if (*uncertainty != '\0')
    {
      tm_qif_attribute (qif, "combinedUncertainty", uncertainty);
      tm_qif_attribute (qif, "meanError", "0"); /* known errors were taken out of the value */
    }
  put_unit (qif, unit, shape);
  xmlTextWriterWriteString (qif->xml, (const xmlChar *)text);
  tm_qif_close (qif);
}

void
tm_qif_quantity (TmQif *qif, const char *name, const TmQuantity *quantity, TmQifShape shape)
{
  TmUnit unit = get_written_unit ((TmUnit)quantity->unit);
  g_autofree char *text = unit == (TmUnit)quantity->unit ? tm_quantity_format (quantity)
                                                         : tm_count_format_exact (quantity->count, unit, 0);

  tm_qif_value (qif, name, text, unit, shape, "");
}

static void
put_length_unit (TmQif *qif, gsize index)
{
  tm_qif_open (qif, "LinearUnit");
  tm_qif_text (qif, "SIUnitName", "meter");
  tm_qif_text (qif, "UnitName", lengths[index].name);
  tm_qif_open (qif, "UnitConversion");
  tm_qif_text (qif, "Factor", lengths[index].metres);
  tm_qif_close (qif);
  tm_qif_close (qif);
}

static void
put_primary_units (TmQif *qif)
{
  tm_qif_open (qif, "PrimaryUnits");
  tm_qif_open (qif, "AngularUnit");
  tm_qif_text (qif, "SIUnitName", "radian");
  tm_qif_text (qif, "UnitName", "degree");
  tm_qif_open (qif, "UnitConversion");
  tm_qif_text (qif, "Factor", DEGREE_IN_RADIANS);
  tm_qif_close (qif);
  tm_qif_close (qif);
  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    if (lengths[i].unit == qif->job->unit)
      put_length_unit (qif, i);
  tm_qif_close (qif);
}

void
tm_qif_units (TmQif *qif)
{
  tm_qif_open (qif, "FileUnits");
  put_primary_units (qif);
  tm_qif_open_list (qif, "OtherUnits", G_N_ELEMENTS (lengths) - 1);
  for (gsize i = 0; i < G_N_ELEMENTS (lengths); i++)
    if (lengths[i].unit != qif->job->unit)
      put_length_unit (qif, i);
  tm_qif_close (qif);
  tm_qif_open_list (qif, "UserDefinedUnits", 1);
  tm_qif_open (qif, "UserDefinedUnit");
  tm_qif_text (qif, "WhatIsMeasured", "hardness on the scale that the characteristic names, or a count");
  tm_qif_text (qif, "UnitName", OWN_UNIT);
  tm_qif_close (qif);
  tm_qif_close (qif);
  tm_qif_close (qif);
}
