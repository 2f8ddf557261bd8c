/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-fit: what the forms of tenthmark-cli fit share: what was asked, and the answer for one bore and one
 * shaft.
 */

#pragma once

#include <yajl/yajl_gen.h>

#include "core-fit-check.h"

G_BEGIN_DECLS

/* The words of the command line; NULL: not given. */
typedef struct {
  const char *feature, *piece, *place, *mate, *part_temp, *mate_temp;
  const char *bore, *bore_u, *bore_alpha, *bore_temp, *shaft, *shaft_u, *shaft_alpha, *shaft_temp;
  const char *want_least, *want_most, *unit;
  gboolean pair, json;
} TmFitWords;

/* -------- Reading them -------- */

/* Each returns FALSE after an error line; what is not given leaves @out absent, or as it is. */
gboolean tm_fit_read_number (const char *option, const char *text, TmUnit unit, TmQuantity *out);
gboolean tm_fit_read_temp (const char *option, const char *text, double *out);
gboolean tm_fit_read_want (const TmFitWords *words, TmUnit unit, TmFitWant *out);

/* -------- One answer -------- */

typedef struct {
  TmFitStatus status;
  char *culprit; /* whose status it is: "piece 001"; owned; NULL: none */
  gboolean has_parts;
  TmFitPart bore, shaft;
  TmFitWant want;
  TmFitCheck check; /* where the status is OK or NO_METHOD */
} TmFitAnswer;

void tm_fit_answer_clear (TmFitAnswer *answer);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmFitAnswer, tm_fit_answer_clear)

/* TRUE where there is a range. */
gboolean tm_fit_answer_has_range (const TmFitAnswer *answer);
/* The range is within what is wanted (tm_fit_is_within()). */
gboolean tm_fit_answer_is_good (const TmFitAnswer *answer);
/* "piece 001: not measured; read…" */
char *tm_fit_answer_reason (const TmFitAnswer *answer) G_GNUC_WARN_UNUSED_RESULT;

/* The members of a check, into the open object. */
void tm_fit_put_check (yajl_gen gen, const TmFitCheck *check, TmUnit unit);
/* The object @key, or, for a NULL key, its members into the open one. */
void tm_fit_put_answer (yajl_gen gen, const char *key, const TmFitAnswer *answer, TmUnit unit);
/* The object "wanted". */
void tm_fit_put_want (yajl_gen gen, const TmFitWant *want, TmUnit unit);

/* Lines of words under @title. */
void tm_fit_print_answer (const char *title, const TmFitAnswer *answer, TmUnit unit);
void tm_fit_print_want (const TmFitWant *want, TmUnit unit);
/* "interference 0.021 to 0.026 mm ± 0.003" */
char *tm_fit_describe_range (const TmFitCheck *check, TmUnit unit) G_GNUC_WARN_UNUSED_RESULT;
/* Of hot and cold parts. */
void tm_fit_print_caution (void);

/* -------- The forms -------- */

int tm_fit_of_job (const char *path, const TmFitWords *words);
int tm_fit_pair_job (const TmJob *job, const TmFeature *feature, const TmFitWant *want, gboolean json);

G_END_DECLS
