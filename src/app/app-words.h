/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-words: what the screens call things: kinds, limits, callouts, times.  All texts translated.
 */

#pragma once

#include "core-callout.h"
#include "core-model.h"

G_BEGIN_DECLS

/* "bore", "thread"…, in the person's language. */
const char *tm_words_kind (TmKind kind);

/* @text with a capital at its beginning: a phrase that stands alone as a line. */
char *tm_words_start_upper (const char *text) G_GNUC_WARN_UNUSED_RESULT;

/* A quantity as it was written, with its unit symbol: "12 mm", "90°"; "" when absent. */
char *tm_words_quantity (const TmQuantity *quantity) G_GNUC_WARN_UNUSED_RESULT;

/* "25.000 … 25.021 mm", "12 mm max", "18 mm min", "pass or fail", or "no limits". */
char *tm_words_limits (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* The callout as the drawing has it, else the limits. */
char *tm_words_callout (const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* Why a callout is kept as a note. */
char *tm_words_kept_as_note (TmCalloutStatus status) G_GNUC_WARN_UNUSED_RESULT;

/* What a callout was read as: "bore, nominal 25 mm, 25.000 … 25.021 mm", or why it is kept as a
 * note. */
char *tm_words_reads_as (const TmCallout *callout) G_GNUC_WARN_UNUSED_RESULT;

/* "SG-118 Gearbox side cover, rev C" */
char *tm_words_job_title (const char *part_number, const char *part_name,
                          const char *revision) G_GNUC_WARN_UNUSED_RESULT;

/* A UTC time of the record on the person's clock: "4 May 2026, 11:12"; "" for "". */
char *tm_words_time (const char *utc) G_GNUC_WARN_UNUSED_RESULT;

/* "Piece 004 of 10" */
char *tm_words_piece (const char *serial, guint n_pieces) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
