/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * exchange-qif-private: what the parts of the QIF writer share.
 */

#pragma once

#include <libxml/xmlwriter.h>

#include "core-judge.h"
#include "exchange-qif.h"

G_BEGIN_DECLS

#define TM_QIF_MAX_DATUMS 5 /* of one frame, by the schema */

/* What a characteristic of QIF holds, and so which children it has. */
typedef enum {
  TM_QIF_LINEAR,    /* Tolerance and TargetValue, lengths */
  TM_QIF_ANGULAR,   /* the same in degrees */
  TM_QIF_ZONE,      /* ToleranceValue */
  TM_QIF_TEXTURE,   /* RoughnessAverage */
  TM_QIF_UNIT,      /* TargetValue with limits in a unit of its own: hardness, count */
  TM_QIF_THREAD,    /* a thread specification; a result without a number */
  TM_QIF_ATTRIBUTE, /* accept or reject */
} TmQifShape;

/* The names that the shapes of a tolerance zone go by. */
typedef enum {
  TM_QIF_ZONE_NONE,     /* no ZoneShape */
  TM_QIF_ZONE_POSITION, /* DiametricalZone, NonDiametricalZone */
  TM_QIF_ZONE_PLANAR,   /* DiametricalZone, PlanarZone */
} TmQifZone;

typedef struct {
  const char *name; /* "Diameter": of DiameterCharacteristicDefinition… */
  TmQifShape shape;
  TmQifZone zone;
  gboolean takes_datums;
  gboolean takes_modifier;
  gboolean needs_modifier;
  gboolean user_defined; /* says in words what to measure */
} TmQifType;

/* The type that a feature is written as; never NULL. */
const TmQifType *tm_qif_type_of (const TmFeature *feature);

/* One feature as it is written. */
typedef struct {
  const TmFeature *feature;
  const TmQifType *type;
  char separator; /* between balloon and place */
  guint definition;
  guint nominal;
  guint first_item; /* of place 1; the others follow */
  guint frame;      /* of its datums; 0: none */
  guint thread;     /* 0: none */
} TmQifFeature;

/* Where a piece stands, once its results were written. */
typedef struct {
  guint n_due;
  guint n_measured;
  guint n_open; /* too close or not measured, though due */
  guint n_out;
} TmQifPiece;

typedef struct {
  const TmJob *job;
  const TmQifFacts *facts;
  const char *place; /* what errors call the file */
  xmlTextWriterPtr xml;
  const char *job_id;

  GArray *features;       /* TmQifFeature */
  GHashTable *by_balloon; /* TmFeature.balloon -> index + 1 in features */
  GPtrArray *datums;      /* char *, labels, in the order first named */
  GPtrArray *frames;      /* const char *, TmFeature.datums, likewise */
  GArray *pieces;         /* TmQifPiece */
  guint n_threads;
  guint n_items;

  /* The first id of each kind; those of one kind follow one another. */
  guint standard, software, datum, frame, gauge, thread, part, external, drawing, result, component, study,
      study_result;
  guint next; /* for results and events, in the order written */
  guint id_max;
} TmQif;

/* exchange-qif-plan: gives out the ids; FALSE, with @error, where two designators are the same. */
gboolean tm_qif_plan (TmQif *qif, GError **error);
void tm_qif_plan_clear (TmQif *qif);
const TmQifFeature *tm_qif_feature (const TmQif *qif, const TmFeature *feature); /* NULL: not in the job */
/* "5", or "5.2" where the feature has several places. */
char *tm_qif_designator (const TmQifFeature *feature, guint place) G_GNUC_WARN_UNUSED_RESULT;
/* TRUE when the piece is to show this place, or was read there all the same. */
gboolean tm_qif_is_shown (const TmJob *job, guint piece, const TmFeature *feature, guint place);
/* TRUE when @index is one of the pieces of the first article: those marked, else the first. */
gboolean tm_qif_is_first_article (const TmJob *job, guint index);
/* TRUE when @event is about @piece, or about every piece. */
gboolean tm_qif_concerns (const TmNonconformance *event, const TmPiece *piece);

/* exchange-qif-id: a UUID of RFC 9562 version 5, of @name within the namespace of the job. */
char *tm_qif_uuid (const char *job_id, const char *name) G_GNUC_WARN_UNUSED_RESULT;

/* exchange-qif-xml: elements.  A text is made valid for XML first: a control character becomes its picture
 * (U+2400…), what is no character at all U+FFFD. */
void tm_qif_open (TmQif *qif, const char *name);
void tm_qif_open_list (TmQif *qif, const char *name, guint n);
void tm_qif_open_id (TmQif *qif, const char *name, guint id);
/* "Diameter" and "CharacteristicItem", as one name. */
void tm_qif_open_typed (TmQif *qif, const TmQifType *type, const char *ending, guint id);
void tm_qif_close (TmQif *qif);
void tm_qif_text (TmQif *qif, const char *name, const char *text);  /* also when "" */
void tm_qif_maybe (TmQif *qif, const char *name, const char *text); /* left out when "" or NULL */
void tm_qif_number (TmQif *qif, const char *name, guint number);    /* an id or a count */
void tm_qif_empty (TmQif *qif, const char *name);
void tm_qif_attribute (TmQif *qif, const char *name, const char *text); /* of the open element */
char *tm_qif_clean (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* Named attributes, collected and then written as one list; what is "" or NULL is not collected. */
typedef struct {
  GPtrArray *names; /* const char *, borrowed */
  GPtrArray *texts; /* char * */
} TmQifNotes;
void tm_qif_notes_init (TmQifNotes *notes);
void tm_qif_notes_add (TmQifNotes *notes, const char *name, const char *text);
void tm_qif_notes_write (TmQif *qif, TmQifNotes *notes); /* and clears */

/* exchange-qif-value: numbers with their unit and decimal places. */
void tm_qif_quantity (TmQif *qif, const char *name, const TmQuantity *quantity, TmQifShape shape);
/* @text is a decimal in @unit; @uncertainty, likewise, may be "". */
void tm_qif_value (TmQif *qif, const char *name, const char *text, TmUnit unit, TmQifShape shape,
                   const char *uncertainty);
void tm_qif_units (TmQif *qif);

/* The parts of the document. */
void tm_qif_gauges (TmQif *qif);          /* exchange-qif-gauge */
void tm_qif_datums (TmQif *qif);          /* exchange-qif-datum */
void tm_qif_characteristics (TmQif *qif); /* exchange-qif-characteristic */
void tm_qif_threads (TmQif *qif);
void tm_qif_moment (TmQif *qif, const char *name, const char *at);
void tm_qif_employee (TmQif *qif, const char *name, const char *initials); /* exchange-qif-write */
void tm_qif_traceability (TmQif *qif);
void tm_qif_devices (TmQif *qif, const char *method); /* exchange-qif-result: of a method, or one gauge */
gboolean tm_qif_results (TmQif *qif, TmExchangeProgress progress, gpointer data); /* exchange-qif-result */
void tm_qif_study (TmQif *qif);

G_END_DECLS
