/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * core-gauge-kind: the kinds of gauge a job shop has, and the starting figures of each with their
 * source.  A gauge's kind is a free word; these are the ones the program knows.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* How many points of the feature the gauge touches at once, and so what form it cannot see. */
typedef enum {
  TM_CONTACT_OTHER,       /* CMM, height gauge: not a caliper of one section */
  TM_CONTACT_TWO_POINT,   /* blind to an odd number of lobes */
  TM_CONTACT_THREE_POINT, /* blind to an oval */
  TM_CONTACT_FULL_FORM,   /* pins, plugs, rings: mating size */
} TmContact;

typedef struct {
  const char *word; /* "outside micrometer"; marked for translation, context "gauge" */
  TmContact contact;
  gboolean transfer; /* has no reading of its own: an instrument reads it */
  gboolean pins;     /* goes or does not go */
  gboolean measures_inside;
  gboolean measures_outside;
} TmGaugeKind;

const TmGaugeKind *tm_gauge_kinds (guint *n);
/* By its word in any letter case, and by the older free words ("micrometer", "telescoping",
 * "dial bore gauge"…) that name the same thing; NULL for a word nobody knows. */
const TmGaugeKind *tm_gauge_kind_find (const char *word);

/* Starting figures for a new gauge of @kind in @unit that reaches to @range_to (absent: the smallest
 * range); a quantity that nobody published is absent.  @source names where they come from, marked
 * for translation: "DIN 863-1, as published in a table", "assumed: common practice, from memory"… */
typedef struct {
  TmQuantity resolution;
  TmQuantity error_limit;
  TmQuantity feel; /* ± 95 % */
  const char *source;
  gboolean assumed;
} TmGaugeDefaults;
TmGaugeDefaults tm_gauge_kind_defaults (const TmGaugeKind *kind, TmUnit unit, const TmQuantity *range_to);

G_END_DECLS
