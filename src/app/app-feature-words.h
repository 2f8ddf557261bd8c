/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-feature-words: a feature, its limits and its stations, as the screen says them. No widgets.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* "mouth/12" as "mouth 12"; a depth in the feature's unit as "12.5 mm, 3"; "" stays "". */
char *tm_words_station (const char *station, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;

/* What the drawing asks, in words that every font has: "pos Ø0.2 MMC A B" for the drawing's signs. */
char *tm_words_requirement (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "critical · sheet 1, C4": designator and where the drawing has it; "" when nothing is known. */
char *tm_words_on_drawing (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "1 · Ø25 H7 bearing bore": the feature in one line of running text. */
char *tm_words_feature (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "bottom 12", "place 3", "place 3, bottom 12", or "" where the feature has neither. */
char *tm_words_spot (const TmFeature *feature, guint place, const char *station) G_GNUC_WARN_UNUSED_RESULT;

/* @count in the feature's unit, with at least the digits of its limits, and the unit's symbol. */
char *tm_words_count (const TmFeature *feature, gint64 count, guint min_decimals) G_GNUC_WARN_UNUSED_RESULT;

/* "2026-05-04" or "2026-05-04T09:12:33Z" as "4 May 2026"; a text that is no date stays as it is. */
char *tm_words_date (const char *iso) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
