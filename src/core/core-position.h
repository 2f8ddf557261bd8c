/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-position: true position from two offsets, the bonus that a size gives (ASME Y14.5, ISO 2692),
 * and the chance that the true deviation is within what is allowed.
 */

#pragma once

#include "core-judge.h"
#include "core-model.h"
#include "core-station.h"

G_BEGIN_DECLS

/* 2·sqrt(x² + y²), rounded to the nearest whole count. */
TmWide tm_position_diametral (TmWide dx, TmWide dy);

/* The sign of 2·sqrt(x̄² + ȳ²) - @limit, where x̄ = @dx_sum / @n: by squares, in whole counts. */
int tm_position_compare (TmWide dx_sum, TmWide dy_sum, guint n, gint64 limit);

/* P(2·sqrt(x² + y²) <= @allowed) for a true position spread normally around the one found:
 * the distance is Rice-distributed.  @deviation and @allowed are diametral; @u is the standard
 * uncertainty of the deviation, twice that of one offset; all > or >= 0 in one unit.  By
 * quadrature. */
double tm_position_probability (double deviation, double allowed, double u);

/* The bonus of a size @sum / @n whose limits are @size: |size - MMC|, or from LMC, clamped to
 * 0…|LMC - MMC|, rounded down to a whole count.  @internal: a bore, whose MMC is its lower limit. */
gint64 tm_position_bonus (const TmLimits *size, gboolean internal, TmModifier modifier, TmWide sum, guint n);

/* MMC - tolerance for a bore, MMC + tolerance for a shaft. */
gint64 tm_position_virtual_condition (const TmLimits *size, gboolean internal, gint64 tolerance);

typedef struct {
  const TmFeature *feature; /* whose size gives the bonus; NULL: no such feature */
  gboolean measured;
  gint64 bonus;
  gint64 most;         /* the largest bonus its limits allow; G_MAXINT64 when open */
  double u;            /* standard uncertainty of the bonus: 0 where it is clamped, NAN unknown */
  double dof;          /* of u */
  const char *station; /* which local size it was: the least favourable one */
  gboolean mating;     /* it was the mating size instead, that pins tell */
} TmBonus;

/* The bonus for @place of position @feature: from the mating size of its size feature where pins tell it (at
 * MMC), else from the station whose readings give the least. */
TmBonus tm_position_bonus_of (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place);
TmBonus tm_position_bonus_with (const TmJob *job, const TmPiece *piece, const TmFeature *feature, guint place,
                                const TmJudgeOptions *options); /* @options may be NULL */

G_END_DECLS
