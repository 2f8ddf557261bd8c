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
  gboolean pins;     /* pins and plugs: go or do not go into a bore */
  gboolean classed;  /* made to a gauge maker's class: pins, plugs, rings */
  gboolean measures_inside;
  gboolean measures_outside;
} TmGaugeKind;

const TmGaugeKind *tm_gauge_kinds (guint *n);
/* By its word in any letter case, by the free words ("micrometer", "telescoping gauge", "bore
 * gauge"…) that name the same thing, and by such a word with a size or thread after it ("micrometer
 * 25-50", "thread plug M8x1.25 6H"); NULL for a word nobody knows. */
const TmGaugeKind *tm_gauge_kind_find (const char *word);

/* Starting figures for a new gauge of @kind in @unit that reaches to @range_to (absent: the smallest
 * range); a quantity that nobody published is absent.  For an inch gauge a published metric limit is
 * rounded up to 0.00001 in.  @source names where they come from, "" when there is no figure; it is what
 * TmGauge.source keeps, and marked for translation: "DIN 863-1, as published in a table", "assumed: common
 * practice, from memory"… */
typedef struct {
  TmQuantity resolution;
  TmQuantity error_limit;
  TmQuantity feel; /* ± 95 % */
  const char *source;
  gboolean assumed;
} TmGaugeDefaults;
TmGaugeDefaults tm_gauge_kind_defaults (const TmGaugeKind *kind, TmUnit unit, const TmQuantity *range_to);

/* TRUE when a TmGauge.source says that its figures are a starting value which nobody measured here. */
gboolean tm_gauge_source_is_assumed (const char *source);

/* ± limit of error of an outside micrometer that reaches to @to (DIN 863-1), and limit deviation of a
 * gauge block of @grade "00", "0", "1" or "2" (DIN 861, ISO 3650) at @size; counts, 0 beyond the tables. */
gint64 tm_micrometer_limit (gint64 to);
gint64 tm_gauge_block_limit (const char *grade, gint64 size);

G_END_DECLS
