/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-judge: what the readings of one place of one feature of one piece prove.
 *
 * Everything here is recomputed from the readings each time; nothing is stored.
 */

#pragma once

#include "core-model.h"
#include "core-station.h"

G_BEGIN_DECLS

typedef enum {
  TM_VERDICT_NOT_MEASURED,
  TM_VERDICT_IN,
  TM_VERDICT_OUT,
  TM_VERDICT_TOO_CLOSE,
  TM_N_VERDICTS
} TmVerdict;

typedef enum { TM_SIDE_NONE, TM_SIDE_METAL_LEFT, TM_SIDE_METAL_GONE } TmSide;

/* How well a method settles a band (metrology: Suitability). */
typedef enum {
  TM_SETTLES_UNKNOWN, /* no method, or no band */
  TM_SETTLES,         /* guards take at most 20 % of the band; under the simple rule: N:1 is met */
  TM_SETTLES_MOSTLY,  /* at most 60 % */
  TM_SETTLES_SELDOM,  /* more */
  TM_SETTLES_CANNOT,  /* no value can be proven in; under the simple rule: N:1 is not met */
} TmSettles;

/* What the verdict rests on. */
typedef enum {
  TM_COUNTED_READINGS, /* the assigned method's */
  TM_COUNTED_COMBINED, /* all methods and pins */
  TM_COUNTED_PINS,     /* pin trials alone */
  TM_N_COUNTED
} TmCounted;

/* Why a verdict is what it is, beyond the number. */
typedef enum {
  TM_WHY_NONE,
  TM_WHY_NO_METHOD,        /* compared plainly: the uncertainty is unknown */
  TM_WHY_METHOD_NOT_GOOD,  /* simple rule: fails N:1 */
  TM_WHY_NO_ERROR_LIMIT,   /* the gauge that reads states no limit of error: u leaves it out */
  TM_WHY_FEW_READINGS,     /* u, or the scatter of repeats alone, has under 10 dof */
  TM_WHY_STATIONS_MISSING, /* not every required station was read */
  TM_WHY_NO_SIZE,          /* position at MMC: the size feature is not measured; no bonus given */
  TM_WHY_NO_LIMITS,        /* a note or a feature with no limit */
  TM_WHY_ASSUMED,          /* u rests on a starting value that nobody measured here */
  TM_WHY_OUT_OF_RANGE,     /* the gauge does not reach this size */
  TM_WHY_OVERDUE,          /* a gauge past its due date, and no reason is stated */
  TM_WHY_CHECK_ASKED,      /* the gauge moved too far on its standard, or was not checked in time */
  TM_WHY_PINS_CONTRADICT,  /* pins, or pins and readings, cannot all be true */
  TM_WHY_METHODS_DISAGREE, /* beyond what their uncertainties explain */
  TM_WHY_PINS_OPEN,        /* the pins do not close the band, and there is no reading */
  TM_N_WHYS
} TmWhy;

typedef struct {
  const TmPiece *piece;
  const TmFeature *feature;
  guint place;

  TmVerdict verdict;
  TmSide side;
  TmWhy why;

  TmSizes sizes;  /* by station; owned: see tm_judgement_clear() */
  guint deciding; /* index in sizes.stations of the station that decides */

  const TmMethod *method;  /* what counted; NULL when unknown or when a bare gauge was named */
  const TmGauge *gauge;    /* the gauge that reads: the method's last one, or the bare gauge */
  const char *method_name; /* "" when unknown */

  /* All in counts of the feature's unit, of the deciding station; NAN when no method is known. */
  double u;              /* combined standard uncertainty */
  double dof;            /* effective degrees of freedom; INFINITY when only type B */
  double coverage;       /* k */
  double expanded;       /* U = k u, 95 % */
  gint64 guard;          /* g, rounded up to a whole count; 0 when none applies */
  gint64 guard_out;      /* g1: beyond a limit by more than this is proven out; 0 likewise */
  double probability_in; /* over all stations; NAN when unknown */
  TmSettles settles;

  TmCounted counted;
  gboolean pins_joined; /* pin trials are part of what counted: it is the mating size, and by its chance */
  double combined_size; /* when COMBINED or PINS: the estimate, counts relative to `combined_reference`; NAN:
                         * none */
  gint64 combined_reference;
  double correction; /* that was added to the raw mean of the deciding station, counts: temperature and
                      * certificate; 0: none */

  gboolean has_taper;
  double taper; /* mean at mouth - mean at bottom, counts: negative opens to the bottom */
  gboolean has_out_of_round;
  double out_of_round; /* largest - smallest over directions, counts */
  double blind_share;  /* resolution / band; > 0.1 is pointed out; NAN when unknown */

  TmLimits limits; /* that were judged against: for position at MMC with the bonus */
} TmJudgement;

/* Judges one place, by the corrected values of its readings.  @place 1..feature->places.  The result's texts
 * and structs belong to the job; what it owns is freed by tm_judgement_clear().
 *
 * Each station is judged by its own method; the worst one decides: out before too close before in,
 * metal gone before metal left, then the one furthest beyond or nearest to a limit.  While a station
 * that the feature asks for is unread, out and too close stand, but in is NOT_MEASURED with
 * STATIONS_MISSING.  A position whose size is unread is judged without the bonus: in stands; what the
 * largest bonus could still bring in is NOT_MEASURED with NO_SIZE.
 *
 * Where the feature counts COMBINED, the methods at a station make one size.  Pins alone: in when they
 * prove the band, out when their certain bounds lie wholly outside, else too close.  Pins beside readings
 * that count combined: by the chance of the mating size, 0.95 either way, and a station that its readings
 * prove out stays out; a contradiction is too close.  Where the readings of the assigned method count, pins
 * and other methods only say when they contradict. */
void tm_judge (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
               TmJudgement *out);

/* As if a gauge had read with an error: its readings at or after @since (a date or a moment), and those
 * without a time, have @error taken out, in place of the known error of its calibration; so have the sizes of
 * the pins of a set. */
typedef struct {
  const char *gauge; /* tag; NULL: none */
  const char *since; /* NULL or "": always */
  gint64 error;      /* indicated - true, counts */
} TmJudgeOptions;
void tm_judge_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                    const TmJudgeOptions *options, TmJudgement *out); /* @options may be NULL */
void tm_judgement_clear (TmJudgement *judgement);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmJudgement, tm_judgement_clear)

/* The worst verdict over the places of a feature on a piece: out, then too close, then not
 * measured, then in.  @n_measured (may be NULL) gets the places that have a verdict. */
TmVerdict tm_judge_feature (const TmJob *job, const TmPiece *piece, const TmFeature *feature,
                            guint *n_measured);

/* What would count if @method_name were used for one more single reading of @feature: guard and
 * suitability before anything is read.  FALSE when the method is unknown. */
typedef struct {
  double u;
  double dof;
  double coverage;
  double expanded;
  gint64 guard;
  TmSettles settles;
  double blind_share;
} TmOutlook;
gboolean tm_judge_outlook (const TmJob *job, const TmFeature *feature, const char *method_name,
                           TmOutlook *out);

/* TRUE when the feature is to be measured on this piece by its `check` plan; @index is the piece's
 * position, from 0.  "first" is the pieces marked first article, and the first piece when none is
 * marked.  A plan that cannot be read means each piece.  On a first-article piece what the baseline report
 * speaks of is not measured. */
gboolean tm_job_feature_is_due (const TmJob *job, const TmFeature *feature, const TmPiece *piece,
                                guint index);

/* The file's and screen's words: "in", "out", "too close", "not measured"; "metal left"…;
 * "settles", "mostly", "seldom", "cannot".  Marked for translation; "" for the NONE values. */
const char *tm_verdict_word (TmVerdict verdict);
const char *tm_side_word (TmSide side);
const char *tm_settles_word (TmSettles settles);
const char *tm_counted_word (TmCounted counted); /* "readings", "combined", "pins"; context "counted" */
const char *tm_why_word (TmWhy why);             /* "no method", "method not good enough"… */

/* The printed size of the deciding station in the feature's unit, with enough digits that it
 * cannot disagree with the verdict; "pass" or "fail"; "" when not measured. */
char *tm_judgement_size_text (const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

/* Any length of the judgement (guard, expanded…) printed in the feature's unit with two
 * significant digits, rounded up, to no more digits than make sense beside the size. */
char *tm_judgement_spread_text (const TmJudgement *judgement, double counts) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
