/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Characteristics of the QIF writer: for each feature one definition (the tolerance) and one nominal (the
 * target), for each place of it one item (the balloon).
 */

#include "exchange-qif-private.h"

#define PASS_VALUE "ACCEPT"
#define FAIL_VALUE "REJECT"

/* What the drawing asks for, in words: the requirement, else what the feature is called. */
static const char *
get_wording (const TmFeature *feature)
{
  if (*feature->requirement != '\0')
    return feature->requirement;
  return *feature->name != '\0' ? feature->name : tm_kind_word (feature->kind);
}

/* Definitions. */

static void
put_tolerance (TmQif *qif, const TmFeature *feature, TmQifShape shape)
{
  if (!feature->lower.given && !feature->upper.given)
    {
      tm_qif_text (qif, "NonTolerance", "MEASURED");
      return;
    }
  tm_qif_open (qif, "Tolerance");
  if (feature->upper.given)
    tm_qif_quantity (qif, "MaxValue", &feature->upper, shape);
  if (feature->lower.given)
    tm_qif_quantity (qif, "MinValue", &feature->lower, shape);
  tm_qif_text (qif, "DefinedAsLimit", "true");
  tm_qif_close (qif);
}

static void
put_modifier (TmQif *qif, const TmQifFeature *of)
{
  static const char *const words[] = { "NONE", "MAXIMUM", "LEAST" };
  const TmFeature *size
      = *of->feature->size_feature != '\0' ? tm_job_find_feature (qif->job, of->feature->size_feature) : NULL;

  if (!of->type->needs_modifier && of->feature->modifier == TM_MODIFIER_NONE)
    return;
  tm_qif_text (qif, "MaterialCondition", words[of->feature->modifier]);
  if (size != NULL)
    tm_qif_number (qif, "SizeCharacteristicDefinitionId", tm_qif_feature (qif, size)->definition);
}

static void
put_zone_shape (TmQif *qif, const TmQifFeature *of)
{
  if (of->type->zone == TM_QIF_ZONE_NONE)
    return;
  tm_qif_open (qif, "ZoneShape");
  if (of->feature->zone_diameter)
    tm_qif_empty (qif, "DiametricalZone");
  else
    tm_qif_empty (qif, of->type->zone == TM_QIF_ZONE_POSITION ? "NonDiametricalZone" : "PlanarZone");
  tm_qif_close (qif);
}

static void
put_zone (TmQif *qif, const TmQifFeature *of)
{
  tm_qif_quantity (qif, "ToleranceValue", &of->feature->upper, TM_QIF_ZONE);
  if (of->frame != 0)
    tm_qif_number (qif, "DatumReferenceFrameId", of->frame);
  if (of->type->takes_modifier)
    put_modifier (qif, of);
  put_zone_shape (qif, of);
}

static void
put_limits (TmQif *qif, const TmQifFeature *of)
{
  switch (of->type->shape)
    {
    case TM_QIF_LINEAR:
    case TM_QIF_ANGULAR:
      put_tolerance (qif, of->feature, of->type->shape);
      break;
    case TM_QIF_ZONE:
      put_zone (qif, of);
      break;
    case TM_QIF_TEXTURE:
      tm_qif_quantity (qif, "RoughnessAverage", &of->feature->upper, TM_QIF_TEXTURE);
      break;
    case TM_QIF_THREAD:
      tm_qif_number (qif, "ThreadSpecificationId", of->thread);
      break;
    case TM_QIF_UNIT: /* stands in the nominal */
    case TM_QIF_ATTRIBUTE:
    default:
      break;
    }
}

static gboolean
takes_envelope (const TmQifFeature *of)
{
  return of->feature->envelope && of->type->shape == TM_QIF_LINEAR;
}

static void
put_definition (TmQif *qif, const TmQifFeature *of)
{
  const TmFeature *feature = of->feature;

  tm_qif_open_typed (qif, of->type, "CharacteristicDefinition", of->definition);
  tm_qif_maybe (qif, "Description", feature->requirement);
  tm_qif_maybe (qif, "Name", feature->name);
  if (takes_envelope (of))
    tm_qif_text (qif, "EnvelopeRequirement", "true");
  put_limits (qif, of);
  if (of->type->user_defined)
    tm_qif_text (qif, "WhatToMeasure", get_wording (feature));
  tm_qif_close (qif);
}

/* Nominals. */

/* A unit of its own must have a target.  Where the drawing states none, it is a limit, and an attribute
 * says that it is no nominal. */
static void
put_own_target (TmQif *qif, const TmFeature *feature)
{
  const TmQuantity *limit = feature->upper.given ? &feature->upper : &feature->lower;

  tm_qif_quantity (qif, "TargetValue", feature->nominal.given ? &feature->nominal : limit, TM_QIF_UNIT);
  if (feature->upper.given)
    tm_qif_quantity (qif, "MaxValue", &feature->upper, TM_QIF_UNIT);
  if (feature->lower.given)
    tm_qif_quantity (qif, "MinValue", &feature->lower, TM_QIF_UNIT);
  tm_qif_text (qif, "DefinedAsLimit", "true");
}

static void
put_accepted (TmQif *qif, const char *name, const char *value)
{
  tm_qif_open_list (qif, name, 1);
  tm_qif_text (qif, "StringValue", value);
  tm_qif_close (qif);
}

static void
put_target (TmQif *qif, const TmQifFeature *of)
{
  const TmFeature *feature = of->feature;

  switch (of->type->shape)
    {
    case TM_QIF_LINEAR:
    case TM_QIF_ANGULAR:
      if (feature->nominal.given)
        tm_qif_quantity (qif, "TargetValue", &feature->nominal, of->type->shape);
      break;
    case TM_QIF_UNIT:
      put_own_target (qif, feature);
      break;
    case TM_QIF_ATTRIBUTE:
      put_accepted (qif, "PassValues", PASS_VALUE);
      put_accepted (qif, "FailValues", FAIL_VALUE);
      break;
    case TM_QIF_ZONE:
    case TM_QIF_TEXTURE:
    case TM_QIF_THREAD:
    default:
      break;
    }
}

static void
put_nominal (TmQif *qif, const TmQifFeature *of)
{
  TmQifNotes notes;

  tm_qif_open_typed (qif, of->type, "CharacteristicNominal", of->nominal);
  tm_qif_notes_init (&notes);
  if (of->type->shape == TM_QIF_UNIT && !of->feature->nominal.given)
    tm_qif_notes_add (&notes, "TargetValueIsNominal", "false");
  tm_qif_notes_write (qif, &notes);
  tm_qif_number (qif, "CharacteristicDefinitionId", of->definition);
  tm_qif_maybe (qif, "Name", of->feature->name);
  put_target (qif, of);
  tm_qif_close (qif);
}

/* Items. */

static void
put_designator (TmQif *qif, const TmQifFeature *of, guint place)
{
  const TmFeature *feature = of->feature;
  g_autofree char *designator = tm_qif_designator (of, place);
  g_autofree char *name = g_strdup_printf ("characteristic %u %s", place, feature->balloon);
  g_autofree char *uuid = tm_qif_uuid (qif->job_id, name);
  g_autofree char *level = g_ascii_strup (feature->designator, -1);

  tm_qif_text (qif, "Name", designator);
  tm_qif_open (qif, "CharacteristicDesignator");
  tm_qif_text (qif, "Designator", designator);
  tm_qif_text (qif, "UUID", uuid);
  if (*level != '\0')
    {
      tm_qif_open (qif, "Criticality");
      tm_qif_text (qif, "LevelEnum", level);
      tm_qif_close (qif);
    }
  tm_qif_close (qif);
}

static void
put_location (TmQif *qif, const TmFeature *feature)
{
  if (*feature->sheet == '\0' && *feature->zone == '\0')
    return;
  tm_qif_open (qif, "LocationOnDrawing");
  tm_qif_number (qif, "DrawingId", qif->drawing);
  tm_qif_maybe (qif, "SheetNumber", feature->sheet);
  tm_qif_maybe (qif, "DrawingZone", feature->zone);
  tm_qif_close (qif);
}

static void
put_item_notes (TmQif *qif, const TmFeature *feature)
{
  g_autofree char *places = feature->places > 1 ? g_strdup_printf ("%u", feature->places) : g_strdup ("");
  TmQifNotes notes;

  tm_qif_notes_init (&notes);
  tm_qif_notes_add (&notes, "Kind", tm_kind_word (feature->kind));
  tm_qif_notes_add (&notes, "Places", places);
  tm_qif_notes_add (&notes, "Check", feature->check);
  tm_qif_notes_write (qif, &notes);
}

static void
put_item (TmQif *qif, const TmQifFeature *of, guint place)
{
  tm_qif_open_typed (qif, of->type, "CharacteristicItem", of->first_item + place - 1);
  put_item_notes (qif, of->feature);
  tm_qif_maybe (qif, "Description", of->feature->requirement);
  put_designator (qif, of, place);
  tm_qif_devices (qif, of->feature->method);
  tm_qif_number (qif, "CharacteristicNominalId", of->nominal);
  put_location (qif, of->feature);
  tm_qif_close (qif);
}

/* The lists. */

void
tm_qif_threads (TmQif *qif)
{
  if (qif->n_threads == 0)
    return;
  tm_qif_open_list (qif, "ThreadSpecifications", qif->n_threads);
  for (guint i = 0; i < qif->features->len; i++)
    {
      const TmQifFeature *of = &g_array_index (qif->features, TmQifFeature, i);

      if (of->thread == 0)
        continue;
      tm_qif_open (qif, "ThreadSpecification");
      tm_qif_open_id (qif, "TextThreadSpecification", of->thread);
      tm_qif_text (qif, "TextSpecification", of->feature->requirement);
      tm_qif_close (qif);
      tm_qif_close (qif);
    }
  tm_qif_close (qif);
}

static void
put_all (TmQif *qif, const char *list, void (*put) (TmQif *qif, const TmQifFeature *of))
{
  tm_qif_open_list (qif, list, qif->features->len);
  for (guint i = 0; i < qif->features->len; i++)
    put (qif, &g_array_index (qif->features, TmQifFeature, i));
  tm_qif_close (qif);
}

void
tm_qif_characteristics (TmQif *qif)
{
  if (qif->features->len == 0)
    return;
  tm_qif_open (qif, "Characteristics");
  tm_qif_number (qif, "FormalStandardId", qif->standard);
  put_all (qif, "CharacteristicDefinitions", put_definition);
  put_all (qif, "CharacteristicNominals", put_nominal);
  tm_qif_open_list (qif, "CharacteristicItems", qif->n_items);
  for (guint i = 0; i < qif->features->len; i++)
    {
      const TmQifFeature *of = &g_array_index (qif->features, TmQifFeature, i);

      for (guint place = 1; place <= of->feature->places; place++)
        put_item (qif, of, place);
    }
  tm_qif_close (qif);
  tm_qif_close (qif);
}
