/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * bench-cut: planning, recording, correcting and withdrawing cuts at the present place of a session.
 */

#pragma once

#include "bench-session.h"
#include "core-cut-work.h"

G_BEGIN_DECLS

/* The tool in force: the one chosen here, else the feature's, else the one of the last cut at the place, else
 * the job's only one; NULL: none.  "" goes back to that. */
void tm_bench_set_tool (TmBench *bench, const char *name);
const TmTool *tm_bench_tool (const TmBench *bench);

/* Answers of the tool @name from other jobs of the book (TmCutAnswer, oldest first): copied, and used
 * whenever that tool is in force.  tm_bench_has_answers(): whether they were handed in. */
void tm_bench_set_answers (TmBench *bench, const char *name, const GArray *answers);
gboolean tm_bench_has_answers (const TmBench *bench, const char *name);

/* Aim at the fit with this measured mate at the present piece, feature and place; NULL or "": the drawing's
 * limits. */
void tm_bench_set_cut_mate (TmBench *bench, const char *serial);
const TmMateSize *tm_bench_cut_mate (const TmBench *bench);

/* Overrides of the job's accepted risk and aim while the session lasts; 0: the job's. */
void tm_bench_set_cut_risk (TmBench *bench, double risk);
double tm_bench_cut_risk (const TmBench *bench);

/* The plan for the present place; always a whole answer. */
void tm_bench_cut_plan (const TmBench *bench, TmCutAdvice *out);
/* What the dial at @text would do; FALSE with @error when it is no length of the dial's unit, negative, or
 * far more than there is metal. */
gboolean tm_bench_cut_try (const TmBench *bench, const char *text, TmCutAdvice *out, GError **error);
/* The same for a count on the dial, for dragging. */
void tm_bench_cut_try_count (const TmBench *bench, gint64 dial, TmCutAdvice *out);
/* The whole number of marks on the dial after which the predicted size is nearest to @size. */
gint64 tm_bench_cut_dial_for (const TmBench *bench, gint64 size);

/* Records a cut of what @text says was dialled.  Results as of tm_bench_submit(): ASKED when the cut would
 * most likely take the metal over (a second call 300 ms later records it: it was made, after all). */
TmSubmit tm_bench_submit_cut (TmBench *bench, const char *text, guint passes, const char *note,
                              const char *at, gint64 now_ms, GError **error);
/* A new row that names the old one and keeps its place in the order of the record. */
gboolean tm_bench_correct_cut (TmBench *bench, const TmCutRow *cut, const char *text, guint passes,
                               const char *reason, const char *at, GError **error);
gboolean tm_bench_withdraw_cut (TmBench *bench, const TmCutRow *cut, const char *reason, const char *at,
                                GError **error);

/* What a cut of the record did, among those of its place.  FALSE when it does not stand any more. */
gboolean tm_bench_cut_outcome (const TmBench *bench, const TmCutRow *cut, TmCutOutcome *out);

/* The dial as it is written: in its own unit with the graduation's digits. */
char *tm_bench_dial_text (const TmTool *tool, gint64 dial) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
