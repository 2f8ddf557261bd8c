/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-material: how much common materials grow with temperature, by handbook tables.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* A coefficient of linear expansion, 1e-6 / °C.  Where sources differ both stand: `value` is the first
 * source's (the middle of a range), low and high hold them all. */
typedef struct {
  const char *material; /* the table's name; "" when it was stated rather than looked up */
  double value;
  double low, high;
  const char *source;       /* marked for translation */
  const char *other_source; /* of the second value, or NULL */
} TmExpansion;

/* Half of the width within which a coefficient is taken to lie: a tenth of it (assumed: common
 * practice), and at least as far as the sources are apart. */
double tm_expansion_half_width (const TmExpansion *expansion);

/* Looks @text up in any letter case and punctuation: "6061-T6", "Aluminum 6061", "316L stainless". An
 * alloy goes before its family.  FALSE when the table has nothing like it. */
gboolean tm_material_expansion (const char *text, TmExpansion *out);

/* TRUE when one of @keys, "|key|key|" in lower case with one space where there is punctuation, stands as
 * whole words in @text, in any letter case and punctuation. */
gboolean tm_material_matches (const char *text, const char *keys);

/* Of the job's parts: as stated in the job, else by its material; FALSE when neither says. */
gboolean tm_job_expansion (const TmJob *job, TmExpansion *out);

/* Of a gauge: as stated on it, else that of steel. */
TmExpansion tm_gauge_expansion (const TmGauge *gauge);

G_END_DECLS
