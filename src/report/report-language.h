/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-language: the languages that a report can speak.
 */

#pragma once

#include "report-error.h"
#include "report-form.h"

G_BEGIN_DECLS

struct _TmWords; /* plot-words.h */

/* Codes that may be asked for ("de", "en"…), sorted; each also with a territory ("de_CH").  Free with
 * g_strfreev(). */
char **tm_language_list (void) G_GNUC_WARN_UNUSED_RESULT;

/* What a language calls itself: "Deutsch"; the code where it does not say. */
const char *tm_language_name (const char *code);

/* The usual decimal mark and date of the form's first language and its territory ("de_CH"), ISO dates where
 * nothing is known of it (Unicode CLDR, numbers and dates of each language, from memory). */
void tm_report_form_by_language (TmReportForm *form);

/* Whether the report can be made in the languages of @form; else an error that names those that there are. */
gboolean tm_report_form_check (const TmReportForm *form, GError **error);

/* The words of a language with the numbers of @form: "" for the program's own.  A language that is not there
 * gives English.  Fills @words, which may be used on any thread. */
void tm_language_words (const char *code, TmDecimal decimal, struct _TmWords *words);

/* @date (YYYY-MM-DD, with a time after it or not) in the form asked for; what is no date stays as it is. */
char *tm_report_date (TmDateForm form, const char *date) G_GNUC_WARN_UNUSED_RESULT;
/* The same with the minute: "2026-05-04 09:12 UTC". */
char *tm_report_time (TmDateForm form, const char *time) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
