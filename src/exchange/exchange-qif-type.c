/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which characteristic of QIF a feature is.  Only types that need no geometry of the part, which a first
 * article on a drawing does not have; what none of them says is written as user-defined, in words.
 */

#include "core-callout.h"
#include "exchange-qif-private.h"

static const TmQifType diameter = { .name = "Diameter", .shape = TM_QIF_LINEAR };
static const TmQifType radius = { .name = "Radius", .shape = TM_QIF_LINEAR };
static const TmQifType length = { .name = "Length", .shape = TM_QIF_LINEAR };
static const TmQifType depth = { .name = "Depth", .shape = TM_QIF_LINEAR };
static const TmQifType angle = { .name = "Angle", .shape = TM_QIF_ANGULAR };
static const TmQifType texture = { .name = "SurfaceTexture", .shape = TM_QIF_TEXTURE };
static const TmQifType thread = { .name = "Thread", .shape = TM_QIF_THREAD };
static const TmQifType linear = { .name = "UserDefinedLinear", .shape = TM_QIF_LINEAR, .user_defined = TRUE };
static const TmQifType angular
    = { .name = "UserDefinedAngular", .shape = TM_QIF_ANGULAR, .user_defined = TRUE };
static const TmQifType unit = { .name = "UserDefinedUnit", .shape = TM_QIF_UNIT };
static const TmQifType attribute
    = { .name = "UserDefinedAttribute", .shape = TM_QIF_ATTRIBUTE, .user_defined = TRUE };

/* By the wording of tm_callout_characteristic(). */
static const struct {
  const char *words;
  TmQifType type;
} zones[] = {
  { "position", { "Position", TM_QIF_ZONE, TM_QIF_ZONE_POSITION, TRUE, TRUE, TRUE, FALSE } },
  { "straightness", { "Straightness", TM_QIF_ZONE, TM_QIF_ZONE_POSITION, FALSE, TRUE, FALSE, FALSE } },
  { "flatness", { "Flatness", TM_QIF_ZONE, TM_QIF_ZONE_NONE, FALSE, TRUE, FALSE, FALSE } },
  { "circularity", { "Circularity", TM_QIF_ZONE, TM_QIF_ZONE_NONE, FALSE, FALSE, FALSE, FALSE } },
  { "cylindricity", { "Cylindricity", TM_QIF_ZONE, TM_QIF_ZONE_NONE, FALSE, FALSE, FALSE, FALSE } },
  { "surface profile", { "SurfaceProfile", TM_QIF_ZONE, TM_QIF_ZONE_NONE, TRUE, FALSE, FALSE, FALSE } },
  { "perpendicularity", { "Perpendicularity", TM_QIF_ZONE, TM_QIF_ZONE_PLANAR, TRUE, TRUE, TRUE, FALSE } },
  { "parallelism", { "Parallelism", TM_QIF_ZONE, TM_QIF_ZONE_PLANAR, TRUE, TRUE, TRUE, FALSE } },
  { "angularity", { "Angularity", TM_QIF_ZONE, TM_QIF_ZONE_PLANAR, TRUE, TRUE, TRUE, FALSE } },
  { "concentricity", { "Concentricity", TM_QIF_ZONE, TM_QIF_ZONE_POSITION, TRUE, FALSE, FALSE, FALSE } },
  { "coaxiality", { "Coaxiality", TM_QIF_ZONE, TM_QIF_ZONE_POSITION, TRUE, FALSE, FALSE, FALSE } },
  { "symmetry", { "Symmetry", TM_QIF_ZONE, TM_QIF_ZONE_NONE, TRUE, FALSE, FALSE, FALSE } },
  { "circular runout", { "CircularRunout", TM_QIF_ZONE, TM_QIF_ZONE_NONE, TRUE, FALSE, FALSE, FALSE } },
  { "total runout", { "TotalRunout", TM_QIF_ZONE, TM_QIF_ZONE_NONE, TRUE, FALSE, FALSE, FALSE } },
};

/* A zone says only how much at most. */
static gboolean
is_zone (const TmFeature *feature)
{
  return feature->upper.given && feature->upper.count >= 0 && !feature->lower.given
         && !feature->nominal.given;
}

static const TmQifType *
find_zone (const TmFeature *feature)
{
  const char *words = tm_callout_characteristic (feature->requirement);

  if (*words == '\0' && feature->kind == TM_KIND_POSITION)
    words = "position";
  for (gsize i = 0; is_zone (feature) && i < G_N_ELEMENTS (zones); i++)
    if (g_str_equal (zones[i].words, words))
      return &zones[i].type;
  return &linear;
}

/* RoughnessAverage is the arithmetical mean Ra (ISO 21920-2, ASME B46.1); Rz and others are not. */
static gboolean
says_ra (const char *requirement)
{
  const char *at = strstr (requirement, "Ra");

  return at != NULL && !g_ascii_isalpha (at[2]) && (at == requirement || !g_ascii_isalpha (at[-1]));
}

static gboolean
has_limits (const TmFeature *feature)
{
  return feature->lower.given || feature->upper.given;
}

/* A dimension that a fixed gauge checks keeps its limits; its results have no number. */
static const TmQifType *
find_checked (const TmFeature *feature)
{
  if (feature->kind == TM_KIND_THREAD && *feature->requirement != '\0')
    return &thread;
  if (!has_limits (feature))
    return &attribute;
  switch (tm_unit_dimension (feature->unit))
    {
    case TM_DIMENSION_LENGTH:
      return &linear;
    case TM_DIMENSION_ANGLE:
      return &angular;
    case TM_DIMENSION_HARDNESS:
    case TM_DIMENSION_COUNT:
      return &unit;
    case TM_DIMENSION_NONE:
    case TM_DIMENSION_TEMPERATURE:
    default:
      return &attribute;
    }
}

const TmQifType *
tm_qif_type_of (const TmFeature *feature)
{
  switch (feature->kind)
    {
    case TM_KIND_BORE:
    case TM_KIND_SHAFT:
    case TM_KIND_DIAMETER:
      return &diameter;
    case TM_KIND_LENGTH:
      return g_str_equal (tm_callout_characteristic (feature->requirement), "radius") ? &radius : &length;
    case TM_KIND_DEPTH:
      return &depth;
    case TM_KIND_ANGLE:
      return &angle;
    case TM_KIND_POSITION:
    case TM_KIND_FORM:
      return find_zone (feature);
    case TM_KIND_ROUGHNESS:
      return is_zone (feature) && says_ra (feature->requirement) ? &texture : &linear;
    case TM_KIND_HARDNESS:
      return has_limits (feature) ? &unit : &attribute;
    case TM_KIND_THREAD:
    case TM_KIND_ATTRIBUTE:
    case TM_KIND_NOTE:
    case TM_N_KINDS:
    default:
      return find_checked (feature);
    }
}
