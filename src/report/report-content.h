/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-content: what a first-article report says, independent of how it is laid out.
 */

#pragma once

#include "core-first-result.h"
#include "core-judge.h"
#include "core-model.h"
#include "core-template.h"

G_BEGIN_DECLS

/* Something that must be mended before the report can go out. */
typedef enum {
  TM_GAP_NO_FEATURES,
  TM_GAP_NO_PIECE,         /* no first-article piece */
  TM_GAP_FACT_MISSING,     /* part name, revision, drawing, customer or order: see `field` */
  TM_GAP_NOT_MEASURED,     /* a feature or place without a result */
  TM_GAP_STATION_MISSING,  /* a required station was not read */
  TM_GAP_TOO_CLOSE,        /* too close to call and nothing decided */
  TM_GAP_NO_METHOD,        /* a reading whose method is unknown */
  TM_GAP_GAUGE_UNKNOWN,    /* a method names a gauge that is not registered */
  TM_GAP_GAUGE_OVERDUE,    /* overdue on the day of the reading and no reason stated, or no due date */
  TM_GAP_NO_REFERENCE,     /* out, without a nonconformance number */
  TM_GAP_PARTIAL_REASON,   /* partial without reason or baseline */
  TM_GAP_PINS_CONTRADICT,  /* pins, or pins and readings, that cannot all be true */
  TM_GAP_METHODS_DISAGREE, /* beyond what their uncertainties explain */
  TM_GAP_ASSUMED,          /* a verdict rests on an uncertainty that nobody measured here: see `field` */
  TM_GAP_NO_DRAWING,       /* no drawing is kept with the job */
  TM_GAP_NO_BALLOON,       /* drawings are, and a feature, or a place of it, has no balloon on any */
  TM_GAP_DRAWING_REVISION, /* the drawing's revision is not the part's */
  TM_GAP_NO_MATERIAL,      /* no line for a raw material */
  TM_GAP_SUPPLY_PROOF,     /* a material, process or test without certificate or report: see `row` */
  TM_GAP_SUPPLY_APPROVAL,  /* a special process whose source the customer has not approved: see `row` */
  TM_GAP_NO_SUB_PARTS,     /* an assembly without its parts */
  TM_GAP_SUB_PART_REPORT,  /* a part of the assembly without its report: see `row` */
  TM_GAP_NO_TOOLING,       /* a pass/fail result without gauge or tooling */
  TM_GAP_NO_DISPOSITION,   /* a nonconformance without disposition: see `field` */
  TM_GAP_REWORK_OPEN,      /* a rework or repair was decided and is not done */
  TM_GAP_SAME_IDENTIFIER,  /* another job has the same report identifier: see `field` */
  TM_GAP_UNSIGNED,         /* nobody has signed */
  TM_GAP_SUPERSEDED,       /* signed, and the record has changed since: see `signature` */
  TM_GAP_FIELD_MISSING,    /* the shop's template asks for it: see `field` */
  TM_N_GAPS
} TmGapKind;

/* One thing that is missing, at one place or at several alike: what lies there is gone to at the first of
 * them, which `piece`, `place` and `station` name; the lists are of all, in the job's order. */
typedef struct {
  TmGapKind kind;
  const TmPiece *piece;     /* or NULL */
  const TmFeature *feature; /* or NULL */
  guint place;              /* or 0 */
  const char *station;      /* or "" */
  GPtrArray *pieces;        /* const TmPiece *; NULL: only `piece`, or none */
  GArray *places;           /* guint; NULL: only `place`, or none */
  GPtrArray *stations;      /* const char *; NULL: only `station`, or none */
  const char *field; /* the fact's, gauge's, method's, supply's or sub-part's name, the nonconformance's
                      * number, the other job's name; "cut", "rework": that was done since; or "" */
  guint row;         /* of a supply or a sub-part, in the job's list */
  const TmSignature *signature; /* or NULL */
} TmGap;

/* One line of the characteristics table. */
typedef struct {
  const TmFeature *feature;
  const TmPiece *piece;
  guint place;
  TmJudgement judgement;
  const TmNonconformance *nonconformance; /* the newest of the place, or NULL */
  TmFirstResult *first;                   /* what it was before its last rework; NULL: not reworked */
} TmReportLine;

typedef struct {
  const TmJob *job;
  GPtrArray
      *lines; /* TmReportLine: first-article pieces (all pieces when none is marked) × features × places */
  GPtrArray *referred; /* const TmFeature *: not measured for this partial first article: the baseline report
                        * speaks of them */
  GPtrArray *gaps;     /* TmGap */
  GPtrArray *gauges;   /* const TmGauge *: used by any reading or pin trial */
  guint n_in, n_out, n_too_close, n_not_measured;
  char *digest;   /* of the record as it is now; NULL: not known, so no signature is called superseded */
  char *namesake; /* another job with the same report identifier; NULL: none is known */
  TmTemplate *template; /* or NULL */
} TmReportContent;

TmReportContent *tm_report_content_new (const TmJob *job) G_GNUC_WARN_UNUSED_RESULT;
void tm_report_content_free (TmReportContent *content);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmReportContent, tm_report_content_free)

/* What a job does not know of itself.  The digest is that of its canonical file without signatures: each
 * signature holds or is superseded by it; NULL: not known.  @job is the name of another job in the book
 * with the same report identifier; NULL: there is none.  Each puts its gaps after the others. */
void tm_report_content_set_digest (TmReportContent *content, const char *digest);
void tm_report_content_set_namesake (TmReportContent *content, const char *job);

/* The shop's template, of which a copy is kept: the facts stand in its order, and what it requires is missed.
 * NULL: none. */
void tm_report_content_set_template (TmReportContent *content, const TmTemplate *template);

/* The gap in one translated line: the thing, the place, the mend. */
char *tm_gap_describe (const TmGap *gap) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
