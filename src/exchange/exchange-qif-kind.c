/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The characteristics of QIF that the program has a kind for.  Any other (tapers, welds, forces, times…) is
 * kept as a note.
 */

#include "exchange-qif-take.h"

#define LENGTH  TM_QIF_TAKES_LENGTH
#define ANGLE   TM_QIF_TAKES_ANGLE
#define ZONE    TM_QIF_TAKES_ZONE
#define NOTHING TM_QIF_TAKES_NOTHING

static const TmQifKind kinds[] = {
  { "Diameter", TM_KIND_DIAMETER, LENGTH, NULL },
  { "SphericalDiameter", TM_KIND_DIAMETER, LENGTH, NULL },
  { "Radius", TM_KIND_LENGTH, LENGTH, NULL },
  { "SphericalRadius", TM_KIND_LENGTH, LENGTH, NULL },
  { "Length", TM_KIND_LENGTH, LENGTH, NULL },
  { "Width", TM_KIND_LENGTH, LENGTH, NULL },
  { "Height", TM_KIND_LENGTH, LENGTH, NULL },
  { "Thickness", TM_KIND_LENGTH, LENGTH, NULL },
  { "Chord", TM_KIND_LENGTH, LENGTH, NULL },
  { "Square", TM_KIND_LENGTH, LENGTH, NULL },
  { "CurveLength", TM_KIND_LENGTH, LENGTH, NULL },
  { "DistanceBetween", TM_KIND_LENGTH, LENGTH, NULL },
  { "DistanceFrom", TM_KIND_LENGTH, LENGTH, NULL },
  { "LinearCoordinate", TM_KIND_LENGTH, LENGTH, NULL },
  { "UserDefinedLinear", TM_KIND_LENGTH, LENGTH, NULL },
  { "Depth", TM_KIND_DEPTH, LENGTH, NULL },
  { "Angle", TM_KIND_ANGLE, ANGLE, NULL },
  { "AngleBetween", TM_KIND_ANGLE, ANGLE, NULL },
  { "AngleFrom", TM_KIND_ANGLE, ANGLE, NULL },
  { "AngularCoordinate", TM_KIND_ANGLE, ANGLE, NULL },
  { "UserDefinedAngular", TM_KIND_ANGLE, ANGLE, NULL },
  { "Position", TM_KIND_POSITION, ZONE, "position" },
  { "Straightness", TM_KIND_FORM, ZONE, "straightness" },
  { "Flatness", TM_KIND_FORM, ZONE, "flatness" },
  { "Circularity", TM_KIND_FORM, ZONE, "circularity" },
  { "Cylindricity", TM_KIND_FORM, ZONE, "cylindricity" },
  { "Sphericity", TM_KIND_FORM, ZONE, NULL },
  { "Conicity", TM_KIND_FORM, ZONE, NULL },
  { "Ellipticity", TM_KIND_FORM, ZONE, NULL },
  { "Toroidicity", TM_KIND_FORM, ZONE, NULL },
  { "OtherForm", TM_KIND_FORM, ZONE, NULL },
  { "LineProfile", TM_KIND_FORM, ZONE, "line profile" },
  { "SurfaceProfile", TM_KIND_FORM, ZONE, "surface profile" },
  { "PointProfile", TM_KIND_FORM, ZONE, "profile" },
  { "Perpendicularity", TM_KIND_FORM, ZONE, "perpendicularity" },
  { "Parallelism", TM_KIND_FORM, ZONE, "parallelism" },
  { "Angularity", TM_KIND_FORM, ZONE, "angularity" },
  { "Concentricity", TM_KIND_FORM, ZONE, "concentricity" },
  { "Coaxiality", TM_KIND_FORM, ZONE, "coaxiality" },
  { "Symmetry", TM_KIND_FORM, ZONE, "symmetry" },
  { "CircularRunout", TM_KIND_FORM, ZONE, "circular runout" },
  { "TotalRunout", TM_KIND_FORM, ZONE, "total runout" },
  { "SurfaceTexture", TM_KIND_ROUGHNESS, TM_QIF_TAKES_TEXTURE, "Ra" },
  { "UserDefinedUnit", TM_KIND_HARDNESS, TM_QIF_TAKES_OWN_UNIT, NULL },
  { "Thread", TM_KIND_THREAD, NOTHING, NULL },
  { "UserDefinedAttribute", TM_KIND_ATTRIBUTE, NOTHING, NULL },
};

char *
tm_qif_kind_name (const char *type)
{
  const char *end = strstr (type, "Characteristic");

  return end != NULL ? g_strndup (type, (gsize)(end - type)) : g_strdup (type);
}

const TmQifKind *
tm_qif_kind_find (const char *type, const char *own)
{
  static const TmQifKind rough = { "UserDefinedLinear", TM_KIND_ROUGHNESS, TM_QIF_TAKES_ROUGHNESS, NULL };
  g_autofree char *name = tm_qif_kind_name (type);

  if (g_str_equal (name, rough.name) && g_str_equal (own, tm_kind_word (TM_KIND_ROUGHNESS)))
    return &rough;
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_str_equal (kinds[i].name, name))
      return &kinds[i];
  return NULL;
}
