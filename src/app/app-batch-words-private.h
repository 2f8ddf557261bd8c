/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-batch-words-private: what the sentences about a batch share.
 */

#pragma once

#include "app-batch-words.h"

G_BEGIN_DECLS

/* -------- Numbers -------- */

/* With a minus as wide as a digit, and with a plus where @plus and it is not zero. */
char *tm_batch_words_signed (gint64 count, TmUnit unit, guint decimals,
                             gboolean plus) G_GNUC_WARN_UNUSED_RESULT;

/* A chance of a test. */
char *tm_batch_words_p (double p) G_GNUC_WARN_UNUSED_RESULT;

/* Decimals in @unit for a figure known to about @spread, both counts: two digits of that, and no more than
 * four of @value, where a fit has no scatter at all. */
guint tm_batch_words_decimals (double value, double spread, TmUnit unit);

/* Nearest whole count; 0: not finite. */
gint64 tm_batch_words_count (double value);

/* -------- Pieces -------- */

const char *tm_batch_words_symbol (const TmSeries *series); /* of the feature's unit */
const char *tm_batch_words_serial (const TmSeries *series, guint at);
guint tm_batch_words_stretch_count (const TmBatch *batch); /* pieces measured in the present stretch */

/* Indexes in the series; -1: none. */
gint tm_batch_words_last_measured (const TmSeries *series);
gint tm_batch_words_last_out (const TmBatch *batch);              /* of the present stretch */
gint tm_batch_words_last_hit (const TmBatch *batch, guint *rule); /* newest that a rule speaks of */

/* Enough is measured to claim something of sizes. */
gboolean tm_batch_words_is_told (const TmBatch *batch);

/* -------- Sections -------- */

/* Takes @line, which may be NULL or "": then nothing is added. */
void tm_batch_words_add_line (GString *lines, char *line);

/* What tm_words_batch_says() gives. */
char *tm_batch_words_say_slope (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
char *tm_batch_words_say_offset (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
char *tm_batch_words_say_hold (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
char *tm_batch_words_say_capability (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
char *tm_batch_words_say_rules (const TmBatch *batch) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
