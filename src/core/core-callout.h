/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-callout: one requirement of a drawing, as text, read into kind, nominal and limits.
 *
 * What cannot be read becomes a note whose text is kept, never a wrong limit.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* Why a text is a note and not a requirement. */
typedef enum {
  TM_CALLOUT_OK,
  TM_CALLOUT_EMPTY,
  TM_CALLOUT_NOT_READ,        /* not one of the forms that are read */
  TM_CALLOUT_CLASS_UNKNOWN,   /* a tolerance class ISO 286 does not define for this size */
  TM_CALLOUT_NO_GENERAL,      /* a bare number, and no general tolerance is stated */
  TM_CALLOUT_GENERAL_UNKNOWN, /* the general tolerance is none that is read */
  TM_CALLOUT_GENERAL_RANGE,   /* the general tolerance does not cover this size */
  TM_CALLOUT_LIMITS_CROSSED,  /* lower above upper */
  TM_CALLOUT_TOO_FINE,        /* a number finer than the unit's count */
  TM_CALLOUT_UNIT_WRONG,      /* a unit that does not go with the kind */
  TM_N_CALLOUT_STATUSES
} TmCalloutStatus;

#define TM_CALLOUT_MAX_DATUMS 6

typedef struct {
  TmCalloutStatus status; /* not OK: kind is TM_KIND_NOTE and the rest is empty */
  TmKind kind;
  TmUnit unit;
  TmQuantity nominal; /* absent where the requirement has none */
  TmQuantity lower;
  TmQuantity upper; /* form, position, roughness: the stated tolerance */
  guint places;     /* 1 unless "4X" */
  gboolean envelope;
  gboolean zone_diameter;
  TmModifier modifier;
  guint n_datums;
  char datums[TM_CALLOUT_MAX_DATUMS][8];
  TmCut cut; /* when the text says so (an upper-case class: grows; lower-case: shrinks) */
} TmCallout;

/* Reads @text (any bytes) for a drawing in @unit (MM or IN) whose general tolerance is @general
 * (NULL or "" = none; see core-general-tolerance.h for what is read).  A unit written in the text
 * goes first: the result may be MM for a drawing in IN.  Limits carry as many decimals as they need
 * to be exact, and no fewer than were written; those of a class at least the micrometre.  A class
 * needs millimetres (ISO 286 has no other unit); on an inch drawing the text must say mm. */
TmCallout tm_callout_read (const char *text, TmUnit unit, const char *general);

/* What @text asks for by its sign or name, in one wording for each: "position", "flatness", "runout"…, and
 * "radius" for R, SR and CR; "" for a plain size and for what is not read.  Says nothing of the rest of
 * @text. */
const char *tm_callout_characteristic (const char *text);

/* The message template, marked for translation; "" for TM_CALLOUT_OK. */
const char *tm_callout_status_text (TmCalloutStatus status);

/* The unit that the callout of a feature in @feature_unit is read in: its own millimetres or inches,
 * else the job's. */
TmUnit tm_callout_unit (const TmJob *job, TmUnit feature_unit);

/* The unit of a feature of @kind where lengths are in @system, mm or in; TM_UNIT_NONE for one that is
 * judged by pass or fail. */
TmUnit tm_kind_unit (TmKind kind, TmUnit system);

/* Whether a feature may be called @given whose requirement reads as @read: anything that is measured
 * alike, but not the outside of what the class of the requirement makes an inside. */
gboolean tm_kinds_agree (TmKind given, TmKind read);

/* Fills kind, unit, nominal, limits, places, envelope and geometry of @feature from its
 * requirement text, as read for @job.  A kind, cut or places that the caller already made more
 * particular (diameter -> bore, length -> depth) is the caller's to set after.  An empty requirement
 * leaves the feature as it is. */
TmCalloutStatus tm_callout_apply (TmJob *job, TmFeature *feature);

/* A fit "25 H7/p6", or hole and shaft "25 H7 / 25 p6": ISO 286-1. Counts in picometres. */
typedef struct {
  TmCalloutStatus status;
  gint64 nominal;
  gint64 hole_lower, hole_upper;
  gint64 shaft_lower, shaft_upper;
  gint64 clearance_min, clearance_max; /* negative: interference */
} TmFit;

TmFit tm_fit_read (const char *text);

G_END_DECLS
