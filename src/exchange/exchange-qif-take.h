/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-qif-take: what one characteristic of a QIF file asks for, in the program's own kinds and units;
 * private to this folder.
 */

#pragma once

#include "core-model.h"
#include "exchange-qif-decimal.h"
#include "exchange-qif-parse.h"

G_BEGIN_DECLS

/* Where the limits of a characteristic stand. */
typedef enum {
  TM_QIF_TAKES_LENGTH,    /* Tolerance and TargetValue */
  TM_QIF_TAKES_ANGLE,     /* the same */
  TM_QIF_TAKES_ZONE,      /* ToleranceValue */
  TM_QIF_TAKES_TEXTURE,   /* RoughnessAverage */
  TM_QIF_TAKES_ROUGHNESS, /* a roughness that QIF has no type for: as LENGTH */
  TM_QIF_TAKES_OWN_UNIT,  /* the nominal's MaxValue and MinValue */
  TM_QIF_TAKES_NOTHING,   /* pass or fail */
} TmQifTakes;

typedef struct {
  const char *name; /* "Diameter" */
  TmKind kind;
  TmQifTakes takes;
  const char *words; /* of a tolerance frame: as a requirement has it; NULL: no such form */
} TmQifKind;

/* The kind of "DiameterCharacteristicItem", by what stands before "Characteristic"; NULL: not judged here.
 * @own is the word that the program's own files keep where QIF has one type for several kinds, else "". */
const TmQifKind *tm_qif_kind_find (const char *type, const char *own);
/* "Diameter", of the same. */
char *tm_qif_kind_name (const char *type) G_GNUC_WARN_UNUSED_RESULT;

/* One number, in @unit. */
typedef struct {
  gboolean given;
  TmDecimal value;
  guint places; /* that it was written with, in this unit; 0 when it was converted to another system */
} TmQifNumber;

/* The limits of one characteristic: as texts in @unit, "" where there is none. */
typedef struct {
  TmUnit unit;
  char *nominal;
  char *lower;
  char *upper;
} TmQifLimits;
void tm_qif_limits_clear (TmQifLimits *limits);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmQifLimits, tm_qif_limits_clear)

/* The three layers of one characteristic; the item may be NULL. */
typedef struct {
  const TmQifRecord *item;
  const TmQifRecord *nominal;
  const TmQifRecord *definition;
} TmQifLayers;

/* Reads the limits that @kind has.  Returns: NULL, or why there are none that could be judged, a text of its
 * own (then @out is empty). */
char *tm_qif_take_limits (const TmQifFile *file, const TmQifLayers *layers, const TmQifKind *kind,
                          TmUnit system, TmQifLimits *out) G_GNUC_WARN_UNUSED_RESULT;

/* exchange-qif-unit: the number of @field in the unit that the file means, with @system, mm or in, where it
 * states none at all.  @unit: MM or IN, DEGREE, HARDNESS.  Returns: NULL, or why it cannot be taken. */
char *tm_qif_take_number (const TmQifFile *file, const TmQifField *field, TmQifTakes takes, TmUnit system,
                          TmUnit *unit, TmQifNumber *out) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
