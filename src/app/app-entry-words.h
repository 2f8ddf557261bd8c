/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-entry-words: what has been typed, put into a sentence: what it reads as, why it is refused,
 * what slip it might be. No widgets.
 */

#pragma once

#include "bench-session.h"

G_BEGIN_DECLS

/* "reads as 25.019 mm" or the reason for the refusal with what it might have meant; "" while
 * nothing is typed. */
char *tm_words_entry (const TmEntry *entry, const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* "25.512 is one thimble turn from 25.012. Enter again to record it, or correct it."; "" for no slip.
 * @gauge: whose reach is asked about, or NULL. */
char *tm_words_slip (const TmSlipCheck *question, const TmEntry *entry, const TmFeature *feature,
                     const TmGauge *gauge) G_GNUC_WARN_UNUSED_RESULT;

/* One offset from true position, as typed: TRUE and *@out when it reads; @why (may be NULL) then
 * gets NULL, else the refusal. */
gboolean tm_words_read_offset (const char *text, const TmFeature *feature, TmQuantity *out, char **why);

/* "reads as Ø0.142 mm" for two offsets that were read. */
char *tm_words_offsets (const TmQuantity *dx, const TmQuantity *dy,
                        const TmFeature *feature) G_GNUC_WARN_UNUSED_RESULT;

/* The value of a reading as its list shows it: "25.019 mm", "pass", "dx 0.010, dy −0.020 mm". */
char *tm_words_reading (const TmReading *reading) G_GNUC_WARN_UNUSED_RESULT;

/* "Recorded 25.019 mm, bottom 3: too close"; @judgement is that of the reading's place after it. */
char *tm_words_recorded (const TmReading *reading, const TmJudgement *judgement) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
