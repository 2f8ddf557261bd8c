/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-model: the job and everything that belongs to it, as plain structs.
 *
 * Ownership.  A TmJob owns every struct and every text reachable from it.  Texts are interned in
 * the job (tm_job_intern()) and live as long as the job; no struct frees a text.  "" and NULL both
 * mean absent in what callers hand in; inside the model an absent text is always "", never NULL.
 *
 * The record.  Readings, pin trials and cuts are only ever added.  A correction is a new row that
 * names the old one in `replaces`; a withdrawal is noted on the row it withdraws.  A row that is
 * neither replaced nor withdrawn *stands*.  A cut changes the size: what was read at its place before it
 * tells how the cutter answers, and no longer how large the feature is.  So does a rework or repair, after
 * which the feature is measured again: what was read before it is the first result, and stays visible.  A
 * row that stands and was taken since the last cut and the last rework that stand *counts*.
 */

#pragma once

#include "core-quantity.h"

G_BEGIN_DECLS

typedef enum {
  TM_KIND_BORE,
  TM_KIND_SHAFT,
  TM_KIND_DIAMETER, /* a diameter not yet said to be inside or outside */
  TM_KIND_LENGTH,
  TM_KIND_DEPTH,
  TM_KIND_ANGLE,
  TM_KIND_POSITION,
  TM_KIND_FORM, /* straightness, flatness, circularity, runout…: zero-bounded */
  TM_KIND_ROUGHNESS,
  TM_KIND_HARDNESS,
  TM_KIND_THREAD,    /* go / no-go: pass or fail */
  TM_KIND_ATTRIBUTE, /* pass or fail */
  TM_KIND_NOTE,      /* text kept from the drawing; pass or fail when it is checked */
  TM_N_KINDS
} TmKind;

typedef enum {
  TM_CUT_UNKNOWN, /* nobody has said which way the metal goes */
  TM_CUT_GROWS,   /* cutting makes it larger: bore, slot, depth */
  TM_CUT_SHRINKS, /* cutting makes it smaller: shaft, faced length */
} TmCut;

typedef enum { TM_STANDARD_ISO, TM_STANDARD_ASME } TmStandard;
typedef enum { TM_DECISION_GUARDED, TM_DECISION_SIMPLE } TmDecision;
typedef enum {
  TM_FIRST_ARTICLE_FULL,
  TM_FIRST_ARTICLE_PARTIAL, /* only the affected features; the rest by reference to the baseline */
  TM_FIRST_ARTICLE_AGAIN,   /* re-inspection after a nonconformance */
  TM_N_FIRST_ARTICLES
} TmFirstArticleKind;

/* What the report is about: one part, or parts put together. */
typedef enum { TM_ARTICLE_DETAIL, TM_ARTICLE_ASSEMBLY } TmArticle;

/* What the customer's requirements ask proof of besides sizes. */
typedef enum {
  TM_SUPPLY_MATERIAL, /* raw material */
  TM_SUPPLY_PROCESS,  /* special process: heat treatment, plating, welding… */
  TM_SUPPLY_TEST,     /* functional test */
  TM_N_SUPPLIES
} TmSupplyKind;

/* Whether the customer has approved the source. */
typedef enum { TM_APPROVAL_UNSAID, TM_APPROVAL_YES, TM_APPROVAL_NO, TM_APPROVAL_NOT_ASKED } TmApproval;

typedef enum { TM_MODIFIER_NONE, TM_MODIFIER_MMC, TM_MODIFIER_LMC } TmModifier;
typedef enum { TM_OUTCOME_NONE, TM_OUTCOME_PASS, TM_OUTCOME_FAIL } TmOutcome;
typedef enum { TM_PIN_MINUS, TM_PIN_PLUS } TmPinSign;

/* Which value of a place counts, as the inspector chose. */
typedef enum {
  TM_COUNTS_ASSIGNED, /* the assigned method's readings, else those of the method used last */
  TM_COUNTS_COMBINED, /* all methods and pins put together by their uncertainties */
} TmCounts;

/* What the marks of a machine's dial count: the size itself, or half of it. */
typedef enum { TM_READS_DIAMETER, TM_READS_RADIUS } TmReads;

/* What a cut is aimed at: the band, or the part of it that the present gauge can prove. */
typedef enum { TM_AIM_IN, TM_AIM_PROVEN } TmAim;

/* What a gauge that was checked on its standard and found to have moved means for its readings. */
typedef enum {
  TM_DRIFT_WIDEN, /* the drift joins the budget */
  TM_DRIFT_ASK,   /* beyond the job's limit a new check or setting is asked for first */
} TmDriftRule;

/* What is known of a budget line that a person wrote (core-uncertainty has the meaning). */
typedef enum {
  TM_LINE_OTHER,
  TM_LINE_FEEL,        /* transfer feel */
  TM_LINE_TEMPERATURE, /* in place of what the job's temperature limits give */
  TM_LINE_FORM,        /* form that the method does not see */
  TM_LINE_SETTING,     /* setting master or zero */
  TM_LINE_PEOPLE,      /* reproducibility between people, from a study */
  TM_N_LINE_KINDS
} TmLineKind;

typedef struct {
  const char *initials; /* unique in a job */
  const char *name;
  const char *extra;
} TmPerson;

typedef struct {
  const char *tag;  /* unique in a job */
  const char *kind; /* free word: "micrometer", "bore micrometer"…: core-gauge-kind knows many */
  TmUnit unit;      /* MM or IN */
  TmQuantity resolution;
  TmQuantity error_limit; /* ± limit of error, rectangular */
  const char *calibrated; /* YYYY-MM-DD or "" */
  const char *due;        /* YYYY-MM-DD or "" */
  const char *certificate;
  const char *serial; /* the maker's number */
  const char *owner;
  const char *place; /* where it is kept */
  TmQuantity range_from;
  TmQuantity range_to;
  TmQuantity feel;      /* ± transfer feel, 95 %: telescoping and small-hole gauges, inside calipers */
  TmQuantity expansion; /* its own, 1e-6 / °C, a plain number; absent: that of steel */
  TmQuantity pin_step;  /* of a pin set; absent: one pin or plug from range_from to range_to */
  const char *pin_class;
  const char *pin_sign; /* "plus", "minus" or "": as written on the set */
  const char *source;   /* where resolution, error limit and feel come from: "assumed", "DIN 863-1"… */
  const char *blocks;   /* of a set of gauge blocks: its sizes, as core-blocks reads them */
  const char *extra;
} TmGauge;

/* One calibration of a gauge; the newest good one agrees with the dates on the gauge itself. */
typedef struct {
  const char *gauge; /* tag */
  const char *date;  /* YYYY-MM-DD */
  const char *due;   /* YYYY-MM-DD or "" */
  const char *certificate;
  const char *by;         /* laboratory or person */
  TmQuantity uncertainty; /* expanded, of the certificate */
  TmQuantity coverage;    /* its k, a plain number; absent: 2 */
  TmQuantity error;       /* known error, indicated - true: a correction, not a component */
  const char *outcome;    /* "good", "bad"; "" = good */
  const char *note;
  const char *extra;
} TmCalibration;

/* A gauge tried on its standard: zero or setting check. */
typedef struct {
  const char *gauge; /* tag */
  TmQuantity standard;
  TmQuantity reading;
  const char *by;
  const char *at; /* UTC, YYYY-MM-DDThh:mm:ssZ */
  const char *note;
  const char *extra;
} TmCheck;

/* A pin of a set whose own size was measured. */
typedef struct {
  const char *gauge; /* tag of the set */
  TmQuantity size;   /* marked */
  TmQuantity measured;
  const char *extra;
} TmPinSize;

/* One more line of a method's uncertainty budget, as a person or a study wrote it. */
typedef struct {
  const char *method; /* name */
  TmLineKind kind;
  const char *name;
  TmQuantity value;         /* in a length, or the unit of the features that it is used for */
  const char *distribution; /* "normal", "rectangular", "triangular", "u-shaped", "t" */
  TmQuantity divisor;       /* a plain number; absent: the distribution's own */
  TmQuantity dof;           /* a plain number; absent: infinite */
  const char *source;
  const char *extra;
} TmBudgetLine;

/* A gauge study: every person takes every piece several times, in random order. */
typedef struct {
  const char *name;    /* unique in a job */
  const char *feature; /* balloon, or "" */
  const char *method;
  TmUnit unit;
  GPtrArray *pieces;  /* const char *, serials or names of their own */
  GPtrArray *people;  /* const char *, initials */
  TmQuantity repeats; /* TM_UNIT_COUNT */
  TmQuantity seed;    /* of the random order, TM_UNIT_COUNT */
  TmQuantity band;    /* to compare with; absent: the feature's */
  const char *at;
  const char *note;
  const char *extra;
} TmStudy;

typedef struct {
  const char *study; /* name */
  const char *piece;
  const char *person;
  TmQuantity trial; /* 1.., TM_UNIT_COUNT */
  TmQuantity value;
  const char *typed;
  const char *at;
  const char *extra;
} TmStudyReading;

/* What cuts: a boring bar, a turning tool, a cutter, with the dial that moves it. */
typedef struct {
  const char *name; /* unique in a job; the same name in other jobs of the book is the same tool */
  TmUnit unit;      /* of its dial, MM or IN */
  TmReads reads;
  TmQuantity graduation;    /* of the dial, as it is marked */
  TmQuantity least_cut;     /* on the dial: less rubs; absent: one graduation */
  TmQuantity backlash;      /* of its screw, on the dial: turn back by more, then come up from one side */
  TmQuantity spring_passes; /* usual repeats without advance, TM_UNIT_COUNT; absent: none */
  TmQuantity offset_step;   /* of the control's tool offset, as a change of size; absent: assumed */
  const char *note;
  const char *extra;
} TmTool;

/* A material with the figures that the shop uses, beside those of the tables (core-elastic). */
typedef struct {
  const char *name;   /* unique in a job */
  TmQuantity modulus; /* E, GPa, a plain number, as are the next five */
  TmQuantity poisson;
  TmQuantity yield;     /* MPa */
  TmQuantity expansion; /* 1e-6 / °C */
  TmQuantity cold;      /* the same for cooling well below 0 °C */
  gboolean plastic;     /* creeps and takes up moisture */
  const char *source;
  const char *extra;
} TmShopMaterial;

/* A mate that was measured: one that this feature's piece may get. */
typedef struct {
  const char *feature;    /* balloon of the feature that it goes with */
  const char *serial;     /* unique among the mates of a feature */
  TmQuantity smallest;    /* over its stations, at 20 °C */
  TmQuantity largest;     /* absent: the same */
  TmQuantity uncertainty; /* expanded, k = 2; absent: unknown */
  const char *piece;      /* serial of the piece that it is meant for, or "" */
  TmQuantity place;       /* of that piece, TM_UNIT_COUNT; absent: 1 */
  const char *by;
  const char *at;
  const char *note;
  const char *extra;
} TmMateSize;

typedef struct {
  const char *name;         /* unique in a job */
  GPtrArray *gauges;        /* const char * tags, 1 or 2: the gauge, or the transfer gauge and its reader */
  TmQuantity repeatability; /* standard deviation of one reading, in the first gauge's unit */
  TmQuantity repeatability_dof;     /* its degrees of freedom, unit TM_UNIT_COUNT; absent: infinite */
  const char *repeatability_source; /* "study NAME", "readings"… or "" */
  const char *extra;
} TmMethod;

typedef struct {
  gboolean given;
  TmKind kind;
  TmQuantity lower;
  TmQuantity upper;
  TmQuantity
      wanted_least; /* wanted clearance at 20 °C, bore - shaft: negative is interference; absent: open */
  TmQuantity wanted_most;
  const char *extra;
} TmMate;

/* What a press fit of the feature with its mate needs to be known for; all may be absent. */
typedef struct {
  TmQuantity length;        /* of contact */
  TmQuantity hub_outside;   /* diameter */
  TmQuantity shaft_inside;  /* diameter; absent: solid */
  const char *hub_material; /* of the shop's or of the tables; "" for the job's own part */
  const char *shaft_material;
  TmQuantity friction_least; /* plain numbers */
  TmQuantity friction_most;
  TmQuantity hub_roughness; /* Rz */
  TmQuantity shaft_roughness;
  TmQuantity gap; /* wanted all round room for dropping in: on diameter */
  const char *extra;
} TmPress;

typedef struct {
  const char *balloon; /* unique in a job */
  TmKind kind;
  const char *name;
  const char *requirement; /* as the drawing has it; "" when only limits were given */
  TmUnit unit;
  TmQuantity nominal; /* absent for a range, a one-sided or a zero-bounded requirement */
  TmQuantity lower;   /* absent: no lower limit */
  TmQuantity upper;   /* absent: no upper limit */
  TmCut cut;
  gboolean envelope;        /* ISO 14405 envelope requirement asked for */
  const char *designator;   /* "critical", "key" or ""; the file's "class" */
  guint places;             /* 1.. */
  GPtrArray *stations;      /* const char *, in measuring order; may be empty */
  const char *size_feature; /* balloon of the feature whose size gives the bonus, or "" */
  const char *method;       /* assigned method, or "" */
  const char *check;        /* "each", "first", "every N", or "" = each */
  guint group_size;         /* 0: not stated, taken as 1 */
  const char *sheet;
  const char *zone;
  TmMate mate;
  gboolean zone_diameter; /* from the requirement: the tolerance zone is a cylinder */
  TmModifier modifier;    /* from the requirement */
  const char *datums;     /* from the requirement: "A B C", or "" */
  TmCounts counts;
  const char *tool;        /* that cuts it, or "" */
  const char *chart_rules; /* words of run rules with blanks between (core-run-rules); "": the usual set */
  guint chart_baseline;    /* groups from the first that freeze the control limits; 0: all */
  TmPress press;
  gboolean affected;      /* of a partial first article: measured in it; of the others the baseline speaks */
  const char *tooling;    /* designed or qualified tooling that checks it, or "" */
  const char *comment;    /* printed in the report */
  TmQuantity form_unseen; /* F: how far the two-point size may exceed the mating size; absent: from the
                           * form seen, else assumed */
  const char *extra;
} TmFeature;

typedef struct {
  const char *serial; /* unique in a job */
  gboolean first_article;
  const char *disposition;      /* of a piece held back: "hold", "measure", "release", "scrap" or "" */
  const char *disposition_note; /* why, and who said so */
  const char *extra;
} TmPiece;

typedef struct {
  const char *by;
  const char *at;
  const char *reason; /* never "" on a withdrawn row */
  const char *extra;
} TmWithdrawal;

/* What readings, pin trials and cuts share. */
typedef struct {
  const char *id; /* unique among the rows of its kind in a job */
  TmPiece *piece;
  TmFeature *feature;
  const char *by;          /* initials */
  const char *at;          /* UTC, YYYY-MM-DDThh:mm:ssZ, or "" */
  const char *replaces;    /* id of the row this one corrects, or "" */
  const char *reason;      /* why it was corrected */
  TmWithdrawal *withdrawn; /* NULL: stands */
  gpointer replaced_by;    /* the row of the same kind that corrects this one, or NULL */
  gboolean before_cut;     /* a cut that stands was made since; kept up by the job, never written */
  gboolean before_rework;  /* it was reworked or repaired since; likewise */
  guint order;             /* its place among the rows of its kind, from 0; likewise */
  const char *extra;
} TmEntryRow;

typedef struct {
  TmEntryRow row;
  guint place;         /* 1.. */
  const char *station; /* "" or depth[/hour] */
  TmQuantity value;    /* absent when pass/fail, or when only dx and dy were taken */
  TmOutcome outcome;
  TmQuantity dx; /* position: offsets from true position */
  TmQuantity dy;
  const char *typed;
  const char *method;   /* name of a method, or a gauge's tag; "" = the feature's */
  TmQuantity part_temp; /* TM_UNIT_CELSIUS */
  TmQuantity gauge_temp;
  const char *overdue_reason; /* why a gauge past its due date was used, or "" */
} TmReading;

typedef struct {
  TmEntryRow row;
  TmQuantity size;
  const char *pin_class; /* "XXX", "XX", "X", "Y", "Z", "ZZ" */
  TmPinSign sign;
  gboolean went;
  guint place;                /* 1.. */
  const char *gauge;          /* tag of the set, or "" */
  TmQuantity measured;        /* the pin's own size, where it is known; absent: by class and sign */
  const char *overdue_reason; /* as of a reading */
} TmPinTrial;

typedef struct {
  TmEntryRow row;
  TmQuantity dialled; /* as the dial showed it: towards less metal, on the radius where it reads so */
  TmReads reads;
  guint passes;      /* spring passes: repeats without advance */
  guint place;       /* 1.. */
  const char *tool;  /* name, or "" */
  const char *after; /* id of the newest reading of the place when it was made; "none": there was none; "":
                      * by the times */
  const char *note;
} TmCutRow;

typedef struct {
  const char *before_piece; /* serial; "": after the last piece */
  const char *kind;         /* "tool", "offset", "lot", "other" */
  const char *note;
  const char *amount;  /* decimal text, kept as written */
  const char *feature; /* balloon of the one feature that it is about, or "" for all */
  const char *tool;    /* name of the tool that was changed or corrected, or "" */
  const char *by;      /* initials, or "" */
  const char *at;      /* UTC, or "" */
  const char *extra;
} TmEvent;

typedef struct {
  const char *piece;   /* serial, or "" = every piece */
  const char *feature; /* balloon, or "" */
  guint place;         /* 0: every place */
  const char *number;
  const char *note;
  const char *disposition;  /* "use as is", "rework", "repair", "scrap", "return" (common practice), or a
                             * word of the shop's own */
  const char *by;           /* who raised it */
  const char *at;           /* UTC, or "" */
  const char *rework_by;    /* who reworked or repaired the feature, or "" */
  const char *rework_at;    /* when that was done; "": not yet, and everything read counts */
  const char *rework_after; /* id of the newest reading of piece and feature at that time; "none": there
                             * was none; "": by the times */
  const char *extra;
} TmNonconformance;

/* A raw material, a special process or a functional test, with what proves it. */
typedef struct {
  TmSupplyKind kind;
  const char *name;
  const char *specification;
  const char *code;
  const char *supplier; /* or the laboratory */
  TmApproval approval;
  const char *certificate; /* number of the certificate or of the acceptance report */
  const char *note;
  const char *extra;
} TmSupply;

/* A part of an assembly. */
typedef struct {
  const char *number;
  const char *name;
  const char *serial;
  const char *report; /* identifier of its own first-article report */
  const char *extra;
} TmSubPart;

/* A fact of the report that the shop's own template asks for. */
typedef struct {
  const char *name;
  const char *value;
  const char *extra;
} TmReportField;

/* A page of the drawing, as a file of the customer's. */
typedef struct {
  const char *name;   /* unique in a job */
  const char *sheet;  /* as features name it, or "" */
  const char *media;  /* "image/png", "image/jpeg", "image/svg+xml", "application/pdf" */
  guint page;         /* of a PDF, from 1 */
  const char *digest; /* SHA-256 of the content, hex */
  GBytes *content;    /* owned; NULL: not loaded */
  const char *extra;
} TmDrawing;

/* Where a balloon stands on a drawing.  The coordinates are shares of the page's width and height from
 * its upper left corner, plain numbers from 0 to 1. */
typedef struct {
  const char *drawing; /* name */
  const char *feature; /* balloon */
  guint place;         /* 0: all of them */
  TmQuantity x, y;     /* centre of the balloon */
  TmQuantity to_x;     /* tip of its leader line; absent: none */
  TmQuantity to_y;
  const char *extra;
} TmBalloonMark;

typedef struct {
  const char *by;
  const char *role;
  const char *at;
  const char *digest;   /* SHA-256, hex, of the canonical job file with no signatures */
  const char *report;   /* identifier of the report that was signed, or "" */
  const char *pages;    /* SHA-256 of the signed PDF, or "" */
  const char *workbook; /* SHA-256 of the signed workbook, or "" */
  const char *extra;
} TmSignature;

typedef struct _TmJobIndex TmJobIndex;

/* One part number at one drawing revision, for one order.  `extra` fields, here and above, hold
 * members that this version does not know, as the raw bytes `"key": value` joined by ",\n"; "" when
 * there are none.  `extra` is whole-document, `job_extra` that of the "job" object. */
typedef struct {
  const char *id; /* a UUID, or "" until exchange derives it */
  const char *part_number;
  const char *part_name;
  const char *revision;
  const char *drawing;
  const char *drawing_revision; /* as its title block has it; "": that of the part */
  const char *customer;
  const char *order;
  TmUnit unit; /* MM or IN */
  const char *material;
  TmStandard standard;
  TmDecision decision;
  TmQuantity simple_ratio; /* N of the N:1 rule, TM_UNIT_HARDNESS-like plain number; absent = 4 */
  const char *general_tolerance;
  TmQuantity part_temp_limit;  /* ± of a part's temperature about 20 °C where none was taken, CELSIUS */
  TmQuantity gauge_temp_limit; /* ± of a gauge's */
  TmQuantity thermometer;      /* ± of a temperature that was taken */
  TmQuantity expansion;        /* of the material, 1e-6 / °C, a plain number; absent: by `material` */
  TmQuantity entry_clearance;  /* c: what a pin needs to enter; absent: 1 µm, assumed */
  TmDriftRule drift_rule;
  TmQuantity drift_limit; /* share of the error limit, a plain number; absent: 1 */
  TmQuantity check_hours; /* a check older than this at the reading counts as missing; absent: none asked */
  TmQuantity cut_risk;    /* accepted chance of metal gone, of a whole run of cuts on one place, a plain
                           * number; absent: 0.01 */
  TmAim cut_aim;
  TmFirstArticleKind first_article;
  const char *first_article_reason;
  const char *first_article_baseline;
  const char *first_article_extra;
  TmArticle article;
  const char *report_identifier; /* unique in the shop */
  const char *organisation;
  const char *supplier_code;
  const char *manufacturing_record; /* traveller, lot or batch record */
  const char *drawing_changes;      /* changes that are not on the drawing yet */
  const char *language;             /* of the report, like "en" or "de"; "": the screen's */
  const char *second_language;      /* beside it, or "" */
  const char *report_extra;

  GPtrArray *people;          /* TmPerson */
  GPtrArray *gauges;          /* TmGauge */
  GPtrArray *methods;         /* TmMethod */
  GPtrArray *features;        /* TmFeature, in the drawing's order */
  GPtrArray *pieces;          /* TmPiece, in the order made */
  GPtrArray *readings;        /* TmReading, in the order recorded */
  GPtrArray *pin_trials;      /* TmPinTrial */
  GPtrArray *cuts;            /* TmCutRow */
  GPtrArray *events;          /* TmEvent */
  GPtrArray *nonconformances; /* TmNonconformance */
  GPtrArray *signatures;      /* TmSignature */
  GPtrArray *calibrations;    /* TmCalibration, in the order entered */
  GPtrArray *checks;          /* TmCheck */
  GPtrArray *pin_sizes;       /* TmPinSize */
  GPtrArray *budget_lines;    /* TmBudgetLine */
  GPtrArray *studies;         /* TmStudy */
  GPtrArray *study_readings;  /* TmStudyReading */
  GPtrArray *tools;           /* TmTool */
  GPtrArray *materials;       /* TmShopMaterial */
  GPtrArray *mate_sizes;      /* TmMateSize, in the order entered */
  GPtrArray *supplies;        /* TmSupply */
  GPtrArray *sub_parts;       /* TmSubPart */
  GPtrArray *report_fields;   /* TmReportField */
  GPtrArray *drawings;        /* TmDrawing */
  GPtrArray *balloon_marks;   /* TmBalloonMark */

  const char *extra;
  const char *job_extra;

  GStringChunk *texts; /* private to core-model.c */
  TmJobIndex *index;   /* private to core-model.c */
} TmJob;

/* Why a row cannot join the job. */
typedef enum {
  TM_ADD_OK,
  TM_ADD_NO_NAME,     /* its tag, balloon, serial, id… is empty */
  TM_ADD_TAKEN,       /* another row has that name */
  TM_ADD_NO_PIECE,    /* a reading without piece or feature */
  TM_ADD_BAD_PLACE,   /* place is 0 or beyond the feature's places */
  TM_ADD_NO_TARGET,   /* replaces names no earlier row, or one of another piece or feature */
  TM_ADD_TARGET_GONE, /* the row to be corrected or withdrawn is already replaced or withdrawn */
  TM_ADD_NO_REASON,   /* a correction or withdrawal without its reason */
  TM_ADD_IN_USE,      /* not to be removed or renamed: the record or another definition names it */
  TM_ADD_NO_GAUGE,    /* a calibration, check or pin size of a gauge that is not there */
  TM_ADD_NO_METHOD,   /* a budget line or study of a method that is not there */
  TM_ADD_NO_FEATURE,  /* a measured mate of a feature that is not there */
  TM_ADD_NO_DRAWING,  /* a balloon on a drawing that is not there */
  TM_ADD_NO_STUDY,    /* a study reading that fits no study: its name, piece, person or trial */
  TM_N_ADD_STATUSES
} TmAddStatus;

TmJob *tm_job_new (void) G_GNUC_WARN_UNUSED_RESULT;
void tm_job_free (TmJob *job);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmJob, tm_job_free)

/* @text, or "" for NULL, as a text that lives as long as @job. */
const char *tm_job_intern (TmJob *job, const char *text);

/* A new, empty struct owned by nobody until it is added; every text in it is "".  The *_free
 * function is for one that was not added.  The add function takes ownership only on TM_ADD_OK;
 * its texts must be interned in @job. */
TmPerson *tm_person_new (void);
TmGauge *tm_gauge_new (void);
TmMethod *tm_method_new (void);
TmFeature *tm_feature_new (void);
TmPiece *tm_piece_new (void);
TmReading *tm_reading_new (void);
TmPinTrial *tm_pin_trial_new (void);
TmCutRow *tm_cut_row_new (void);
TmEvent *tm_event_new (void);
TmNonconformance *tm_nonconformance_new (void);
TmSignature *tm_signature_new (void);

void tm_person_free (TmPerson *person);
void tm_gauge_free (TmGauge *gauge);
void tm_method_free (TmMethod *method);
void tm_feature_free (TmFeature *feature);
void tm_piece_free (TmPiece *piece);
void tm_reading_free (TmReading *reading);
void tm_pin_trial_free (TmPinTrial *trial);
void tm_cut_row_free (TmCutRow *cut);
void tm_event_free (TmEvent *event);
void tm_nonconformance_free (TmNonconformance *nonconformance);
void tm_signature_free (TmSignature *signature);

TmCalibration *tm_calibration_new (void);
TmCheck *tm_check_new (void);
TmPinSize *tm_pin_size_new (void);
TmBudgetLine *tm_budget_line_new (void);
TmStudy *tm_study_new (void);
TmStudyReading *tm_study_reading_new (void);
TmTool *tm_tool_new (void);
TmShopMaterial *tm_shop_material_new (void);
TmMateSize *tm_mate_size_new (void);
TmSupply *tm_supply_new (void);
TmSubPart *tm_sub_part_new (void);
TmReportField *tm_report_field_new (void);
TmDrawing *tm_drawing_new (void);
TmBalloonMark *tm_balloon_mark_new (void);

void tm_calibration_free (TmCalibration *calibration);
void tm_check_free (TmCheck *check);
void tm_pin_size_free (TmPinSize *pin);
void tm_budget_line_free (TmBudgetLine *line);
void tm_study_free (TmStudy *study);
void tm_study_reading_free (TmStudyReading *reading);
void tm_tool_free (TmTool *tool);
void tm_shop_material_free (TmShopMaterial *material);
void tm_mate_size_free (TmMateSize *mate);
void tm_supply_free (TmSupply *supply);
void tm_sub_part_free (TmSubPart *part);
void tm_report_field_free (TmReportField *field);
void tm_drawing_free (TmDrawing *drawing);
void tm_balloon_mark_free (TmBalloonMark *mark);

TmAddStatus tm_job_add_person (TmJob *job, TmPerson *person);
TmAddStatus tm_job_add_gauge (TmJob *job, TmGauge *gauge);
TmAddStatus tm_job_add_method (TmJob *job, TmMethod *method);
TmAddStatus tm_job_add_feature (TmJob *job, TmFeature *feature);
TmAddStatus tm_job_add_piece (TmJob *job, TmPiece *piece);
/* A row whose id is "" is numbered: one more than the largest whole-number id of its kind. */
TmAddStatus tm_job_add_reading (TmJob *job, TmReading *reading);
TmAddStatus tm_job_add_pin_trial (TmJob *job, TmPinTrial *trial);
TmAddStatus tm_job_add_cut (TmJob *job, TmCutRow *cut);
void tm_job_add_event (TmJob *job, TmEvent *event);
void tm_job_add_nonconformance (TmJob *job, TmNonconformance *nonconformance);
void tm_job_add_signature (TmJob *job, TmSignature *signature);
/* Each refuses a row whose gauge, method or study is not in the job, and a second calibration of a
 * gauge on one date, a second size of a pin, a second reading of a study's cell (TAKEN). */
TmAddStatus tm_job_add_calibration (TmJob *job, TmCalibration *calibration);
TmAddStatus tm_job_add_check (TmJob *job, TmCheck *check);
TmAddStatus tm_job_add_pin_size (TmJob *job, TmPinSize *pin);
TmAddStatus tm_job_add_budget_line (TmJob *job, TmBudgetLine *line);
TmAddStatus tm_job_add_study (TmJob *job, TmStudy *study);
TmAddStatus tm_job_add_study_reading (TmJob *job, TmStudyReading *reading);
TmAddStatus tm_job_add_tool (TmJob *job, TmTool *tool);
TmAddStatus tm_job_add_material (TmJob *job, TmShopMaterial *material);
TmAddStatus tm_job_add_mate_size (TmJob *job, TmMateSize *mate);
void tm_job_add_supply (TmJob *job, TmSupply *supply);
void tm_job_add_sub_part (TmJob *job, TmSubPart *part);
void tm_job_add_report_field (TmJob *job, TmReportField *field);
TmAddStatus tm_job_add_drawing (TmJob *job, TmDrawing *drawing);
/* Refuses a mark on a drawing or of a feature that is not in the job, or of a place that the feature has
 * not, and a second mark of one place on one drawing. */
TmAddStatus tm_job_add_balloon_mark (TmJob *job, TmBalloonMark *mark);
/* Take @row out of its list and free it; a study goes with its readings. */
void tm_job_remove_calibration (TmJob *job, TmCalibration *row);
void tm_job_remove_check (TmJob *job, TmCheck *row);
void tm_job_remove_pin_size (TmJob *job, TmPinSize *row);
void tm_job_remove_budget_line (TmJob *job, TmBudgetLine *row);
void tm_job_remove_study (TmJob *job, TmStudy *row);
void tm_job_remove_study_reading (TmJob *job, TmStudyReading *row);
/* IN_USE while a feature or a cut names the tool, a press the material. */
TmAddStatus tm_job_remove_tool (TmJob *job, const char *name);
TmAddStatus tm_job_remove_material (TmJob *job, const char *name);
void tm_job_remove_mate_size (TmJob *job, TmMateSize *row);
void tm_job_remove_event (TmJob *job, TmEvent *event);
void tm_job_remove_supply (TmJob *job, TmSupply *row);
void tm_job_remove_sub_part (TmJob *job, TmSubPart *row);
void tm_job_remove_report_field (TmJob *job, TmReportField *row);
void tm_job_remove_balloon_mark (TmJob *job, TmBalloonMark *row);
/* A drawing goes with its marks. */
void tm_job_remove_drawing (TmJob *job, TmDrawing *row);
/* Marks anew what @row says of readings before and after a rework: after a change of it, or once all of a
 * job's readings are there. */
void tm_job_mark_rework (TmJob *job, const TmNonconformance *row);
/* The same for all of them: once a job was put together in another order than it was recorded. */
void tm_job_mark_reworks (TmJob *job);

/* Each replaces the row of the same name in place, keeping its position and, for a feature, its address
 * (readings point to it); takes ownership of @with on TM_ADD_OK.  A feature may change its balloon only while
 * no reading, trial or cut hangs on it and no position needs it; balloons of places that go are taken off. */
TmAddStatus tm_job_replace_gauge (TmJob *job, const char *tag, TmGauge *with);
TmAddStatus tm_job_replace_method (TmJob *job, const char *name, TmMethod *with);
TmAddStatus tm_job_replace_tool (TmJob *job, const char *name, TmTool *with);
TmAddStatus tm_job_replace_material (TmJob *job, const char *name, TmShopMaterial *with);
TmAddStatus tm_job_replace_feature (TmJob *job, const char *balloon, TmFeature *with);

/* Removal is for definitions that nothing in the record, and no other definition, hangs on. */
TmAddStatus tm_job_remove_person (TmJob *job, const char *initials);
TmAddStatus tm_job_remove_gauge (TmJob *job, const char *tag);
TmAddStatus tm_job_remove_method (TmJob *job, const char *name);
TmAddStatus tm_job_remove_feature (TmJob *job, const char *balloon);
TmAddStatus tm_job_remove_piece (TmJob *job, const char *serial);

/* Notes a withdrawal on a row that stands. */
TmAddStatus tm_job_withdraw (TmJob *job, TmEntryRow *row, const char *by, const char *at, const char *reason);

/* Each returns NULL when there is none; all are constant time. */
TmPerson *tm_job_find_person (const TmJob *job, const char *initials);
TmGauge *tm_job_find_gauge (const TmJob *job, const char *tag);
TmMethod *tm_job_find_method (const TmJob *job, const char *name);
TmFeature *tm_job_find_feature (const TmJob *job, const char *balloon);
TmPiece *tm_job_find_piece (const TmJob *job, const char *serial);
TmReading *tm_job_find_reading (const TmJob *job, const char *id);
TmPinTrial *tm_job_find_pin_trial (const TmJob *job, const char *id);
TmCutRow *tm_job_find_cut (const TmJob *job, const char *id);

/* The readings (those that count and those that do not) of one place of one feature of one piece,
 * in the order recorded; NULL when there are none.  Borrowed, valid until the next addition. */
const GPtrArray *tm_job_readings_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature,
                                     guint place);

/* The pin trials of one place, likewise. */
const GPtrArray *tm_job_pin_trials_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature,
                                       guint place);

/* The cuts of one place, likewise, those that were corrected or withdrawn too. */
const GPtrArray *tm_job_cuts_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature,
                                 guint place);

/* The newest cut of the place that stands, or NULL; a corrected one was made when it was first recorded. */
TmCutRow *tm_job_last_cut (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place);

/* TRUE when @cut was made after @reading, of the same place, was taken. */
gboolean tm_cut_follows (const TmJob *job, const TmCutRow *cut, const TmReading *reading);

TmTool *tm_job_find_tool (const TmJob *job, const char *name);
TmShopMaterial *tm_job_find_material (const TmJob *job, const char *name);
TmMateSize *tm_job_find_mate_size (const TmJob *job, const char *balloon, const char *serial);

TmStudy *tm_job_find_study (const TmJob *job, const char *name);

/* The first nonconformance that names this piece (or every piece) and feature, or NULL. */
TmNonconformance *tm_job_nonconformance_of (const TmJob *job, const TmPiece *piece, const TmFeature *feature);

/* The newest nonconformance of this piece (or every piece) and feature that names @place or none, or NULL. */
TmNonconformance *tm_job_nonconformance_at (const TmJob *job, const TmPiece *piece, const TmFeature *feature,
                                            guint place);

TmDrawing *tm_job_find_drawing (const TmJob *job, const char *name);

/* The revision that the drawing is at: its own, else the part's. */
const char *tm_job_drawing_revision (const TmJob *job);

/* TRUE when @feature is to be measured for this first article: of a partial one only what is affected,
 * unless nothing is marked so. */
gboolean tm_job_feature_is_asked (const TmJob *job, const TmFeature *feature);

/* TRUE when a piece is marked as first article. */
gboolean tm_job_has_first_article (const TmJob *job);

/* Neither replaced nor withdrawn. */
gboolean tm_row_stands (const TmEntryRow *row);
/* Stands, and no cut that stands, and no rework, was made since. */
gboolean tm_row_counts (const TmEntryRow *row);

/* The message template, marked for translation. */
const char *tm_add_status_text (TmAddStatus status);

/* Words of the job file and of the screen for each enumeration.  The *_from_word functions return
 * FALSE and leave the target alone when the word is none. */
const char *tm_kind_word (TmKind kind);
gboolean tm_kind_from_word (const char *word, TmKind *kind);
const char *tm_cut_word (TmCut cut); /* "", "grows", "shrinks" */
gboolean tm_cut_from_word (const char *word, TmCut *cut);
const char *tm_standard_word (TmStandard standard);
gboolean tm_standard_from_word (const char *word, TmStandard *standard);
const char *tm_decision_word (TmDecision decision);
gboolean tm_decision_from_word (const char *word, TmDecision *decision);
const char *tm_first_article_word (TmFirstArticleKind kind);
gboolean tm_first_article_from_word (const char *word, TmFirstArticleKind *kind);
const char *tm_article_word (TmArticle article); /* "detail", "assembly" */
gboolean tm_article_from_word (const char *word, TmArticle *article);
const char *tm_supply_kind_word (TmSupplyKind kind); /* "material", "process", "test" */
gboolean tm_supply_kind_from_word (const char *word, TmSupplyKind *kind);
const char *tm_approval_word (TmApproval approval); /* "", "yes", "no", "not asked" */
gboolean tm_approval_from_word (const char *word, TmApproval *approval);
const char *tm_modifier_word (TmModifier modifier); /* "", "mmc", "lmc" */
const char *tm_outcome_word (TmOutcome outcome);    /* "", "pass", "fail" */
const char *tm_pin_sign_word (TmPinSign sign);
gboolean tm_pin_sign_from_word (const char *word, TmPinSign *sign);
const char *tm_counts_word (TmCounts counts); /* "", "combined" */
gboolean tm_counts_from_word (const char *word, TmCounts *counts);
const char *tm_reads_word (TmReads reads); /* "diameter", "radius" */
gboolean tm_reads_from_word (const char *word, TmReads *reads);
const char *tm_aim_word (TmAim aim); /* "in", "proven" */
gboolean tm_aim_from_word (const char *word, TmAim *aim);
const char *tm_drift_rule_word (TmDriftRule rule); /* "", "ask" */
gboolean tm_drift_rule_from_word (const char *word, TmDriftRule *rule);
const char *
tm_line_kind_word (TmLineKind kind); /* "other", "feel", "temperature", "form", "setting", "people" */
gboolean tm_line_kind_from_word (const char *word, TmLineKind *kind);

/* TRUE for kinds judged by pass or fail rather than by a number. */
gboolean tm_kind_is_attribute (TmKind kind);

/* TRUE for kinds whose zero is a physical bound: form, position, roughness (metrology: no lower
 * limit, no guard at zero). */
gboolean tm_kind_is_zero_bounded (TmKind kind);

/* The way the metal goes: what the machinist said, else what the kind says (bore and depth grow,
 * shaft shrinks), else unknown. */
TmCut tm_feature_cut (const TmFeature *feature);

G_END_DECLS
