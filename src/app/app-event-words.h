/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-event-words: what the screens say of something that happened between two pieces. All texts translated.
 */

#pragma once

#include "core-model.h"

G_BEGIN_DECLS

/* The kinds that the program knows, in the order of its lists: the file's word, NULL after the last; and
 * what the screen says: "New tool or insert"…, or @kind itself where it is none of ours. */
const char *tm_event_kind_word (guint which);
const char *tm_words_event_kind (const char *kind);

/* "Offset -0.005 mm", "New tool or insert" */
char *tm_words_event (const TmJob *job, const TmEvent *event) G_GNUC_WARN_UNUSED_RESULT;

/* "before piece 016" or "after the last piece" */
char *tm_words_event_place (const TmEvent *event) G_GNUC_WARN_UNUSED_RESULT;

/* "before piece 016 · Ø25 H7 bore · bar 20 · MK · 4 May 2026, 11:12 · note": without what is not known. */
char *tm_words_event_details (const TmJob *job, const TmEvent *event) G_GNUC_WARN_UNUSED_RESULT;

/* A UTC time of the record as a form shows it, on the person's clock: "2026-05-04 11:12"; and back.  ""
 * stays ""; NULL for a text that is no time. */
char *tm_words_clock_from_utc (const char *utc) G_GNUC_WARN_UNUSED_RESULT;
char *tm_words_clock_to_utc (const char *text) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
