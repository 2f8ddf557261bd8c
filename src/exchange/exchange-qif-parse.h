/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-qif-parse: the parts of a QIF file that its characteristics are made of, as flat records; private
 * to this folder.
 *
 * One pass of a SAX parser that is fed piece by piece: nothing is kept but the texts named below, cut at
 * TM_QIF_MAX_TEXT.  A document type is refused where it begins, so that no entity is ever declared.
 */

#pragma once

#include "exchange-error.h"

G_BEGIN_DECLS

#define TM_QIF_MAX_DEPTH   64
#define TM_QIF_MAX_TEXT    4096    /* bytes of one text */
#define TM_QIF_MAX_RECORDS 50000   /* of one list */
#define TM_QIF_MAX_FIELDS  1000000 /* of all records: some 110 bytes each */

typedef enum {
  TM_QIF_LIST_PRIMARY_UNITS,
  TM_QIF_LIST_OTHER_UNITS,
  TM_QIF_LIST_OWN_UNITS,
  TM_QIF_LIST_DATUMS,
  TM_QIF_LIST_FRAMES,
  TM_QIF_LIST_THREADS,
  TM_QIF_LIST_TOLERANCES,
  TM_QIF_LIST_DEFINITIONS,
  TM_QIF_LIST_NOMINALS,
  TM_QIF_LIST_ITEMS,
  TM_QIF_N_LISTS
} TmQifList;

/* One element inside a record, at its end. */
typedef struct {
  const char *path; /* "Tolerance/MaxValue"; static */
  char *text;       /* without blanks around; of an attribute element its value */
  char *unit;       /* @linearUnit, @angularUnit, @unitName; of an attribute element its @name; else NULL */
  gint places;      /* @decimalPlaces, or -1 */
  gboolean abroad;  /* @xId: what it refers to lies in another file */
} TmQifField;

typedef struct {
  char *type;     /* "DiameterCharacteristicItem" */
  char *id;       /* "" when it has none */
  guint line;     /* of the file, from 1 */
  GArray *fields; /* TmQifField, in the order of the file */
} TmQifRecord;

typedef struct {
  GPtrArray *lists[TM_QIF_N_LISTS]; /* TmQifRecord */
  GHashTable *by_id;                /* id -> TmQifRecord */
  char *version;                    /* versionQIF */
  gboolean has_units;               /* FileUnits is there */
} TmQifFile;

TmQifFile *tm_qif_parse (const char *data, gsize length, const char *place,
                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
void tm_qif_file_free (TmQifFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmQifFile, tm_qif_file_free)

/* The first field at @path, or NULL; and its text, "" when there is none. */
const TmQifField *tm_qif_field (const TmQifRecord *record, const char *path);
const char *tm_qif_field_text (const TmQifRecord *record, const char *path);
/* The value of the attribute called @name, "" when there is none. */
const char *tm_qif_note (const TmQifRecord *record, const char *name);
/* What the field at @path of @record, which may be NULL, refers to, or NULL. */
const TmQifRecord *tm_qif_follow (const TmQifFile *file, const TmQifRecord *record, const char *path);

G_END_DECLS
