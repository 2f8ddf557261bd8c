/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-combine: several methods, and pins, on one bore put together: one estimate with its
 * uncertainty, or the word that they disagree.
 */

#pragma once

#include "core-judge.h"
#include "core-pins.h"

G_BEGIN_DECLS

typedef struct {
  const char *method_name;
  guint n;     /* readings averaged */
  double size; /* counts, relative to the whole's reference */
  double u;    /* pooled where there is one */
  double dof;
  double expanded;
  double weight;     /* 0..1, of the whole; 0 for one that was left out */
  double apart;      /* |y_i - y| / sqrt (u_i² - u²); NAN when it cannot be said */
  TmSettles settles; /* of this method alone on this band */
} TmCombinePart;

typedef struct {
  const char *station;
  gint64 reference;
  TmCombinePart *parts; /* in the order first used; owned */
  guint n_parts;
  double size, u, dof, coverage, expanded; /* NAN with no known part */
  double chi2, p, birge;                   /* NAN with fewer than two parts */
  gboolean disagree;                       /* p < 0.05: u was multiplied by birge */
  int apart;           /* the part that stands apart; -1: none, or two parts of which either may be wrong */
  gboolean best_alone; /* a weight would turn negative: the best method alone counts */
} TmCombined;

/* At one station of a place, from the readings that count, as corrected. */
void tm_combine (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                 const char *station, TmCombined *out);
void tm_combine_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                      const char *station, const TmJudgeOptions *options, TmCombined *out);
void tm_combined_clear (TmCombined *combined);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmCombined, tm_combined_clear)

/* What the pins of a place prove, with the readings' size where one is known (the smallest station's
 * combined size; none when @with_readings is FALSE).  @pins is the caller's; NULL-safe to free. */
typedef struct {
  TmPin *pins; /* owned */
  TmPinResult result;
  double form;           /* F that was used, counts */
  gboolean form_assumed; /* nobody measured or stated it */
} TmPinEvidence;
gboolean tm_pin_evidence (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                          gboolean with_readings, TmPinEvidence *out); /* FALSE: no trial that counts */
gboolean tm_pin_evidence_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                               gboolean with_readings, const TmJudgeOptions *options, TmPinEvidence *out);
void tm_pin_evidence_clear (TmPinEvidence *evidence);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmPinEvidence, tm_pin_evidence_clear)

G_END_DECLS
