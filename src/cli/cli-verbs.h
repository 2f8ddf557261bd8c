/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-verbs: the verbs of the command line, one file each, and what they share.
 */

#pragma once

#include "cli-options.h"
#include "core-model.h"

G_BEGIN_DECLS

int tm_verb_check (int n_words, char **words);
int tm_verb_judge (int n_words, char **words);
int tm_verb_record (int n_words, char **words);
int tm_verb_draw (int n_words, char **words);
int tm_verb_report (int n_words, char **words);
int tm_verb_revise (int n_words, char **words);
int tm_verb_callout (int n_words, char **words);
int tm_verb_fit (int n_words, char **words);
int tm_verb_cut (int n_words, char **words);
int tm_verb_drift (int n_words, char **words);
int tm_verb_pins (int n_words, char **words);
int tm_verb_press (int n_words, char **words);
int tm_verb_study (int n_words, char **words);
int tm_verb_budget (int n_words, char **words);
int tm_verb_summary (int n_words, char **words);
int tm_verb_book (int n_words, char **words);

/* The row of the table of verbs that belongs to @name. */
const TmVerb *tm_verb_find (const char *name);

/* Exactly one operand, or an error line that says what is wanted; NULL then. */
const char *tm_only_operand (const TmVerb *verb, const GPtrArray *operands);

/* The operands in one text, so that a callout need not be quoted. */
char *tm_join_operands (const GPtrArray *operands) G_GNUC_WARN_UNUSED_RESULT;

/* Reads a job file; on failure prints the error line and returns NULL. */
TmJob *tm_load_job (const char *path) G_GNUC_WARN_UNUSED_RESULT;

/* The piece or feature named on the command line; NULL text gives NULL and TRUE.  FALSE after an
 * error line when the job has none of that name. */
gboolean tm_pick_piece (const TmJob *job, const char *path, const char *serial, TmPiece **out);
gboolean tm_pick_feature (const TmJob *job, const char *path, const char *balloon, TmFeature **out);

/* The number of a place of @feature; NULL text gives 1.  FALSE after an error line. */
gboolean tm_pick_place (const char *verb, const TmFeature *feature, const char *text, guint *out);

/* Now, as the record writes it: UTC "YYYY-MM-DDThh:mm:ssZ". */
char *tm_time_now (void) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
