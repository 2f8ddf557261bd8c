/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-report-form: in which form a job's report is shown, printed and written: the languages are facts of the
 * job, all else is what the person has chosen and is remembered between starts.
 */

#pragma once

#include "app-document.h"
#include "report-form.h"

G_BEGIN_DECLS

/* A form with the texts that it points to: a copy may go to a thread. */
typedef struct {
  TmReportForm form;
  char *language;
  char *second_language;
  TmTemplate *template; /* or NULL */
} TmJobForm;

/* Decimal mark and dates are those of the job's language, the paper that of the place, where nothing else was
 * chosen.  @out is filled whole; clear it.  On the main loop only. */
void tm_job_form_fill (TmJobForm *out, const TmJob *job);
/* The same for the document's job, with the shop's template. */
void tm_job_form_fill_for (TmJobForm *out, TmDocument *document);
void tm_job_form_copy (TmJobForm *out, const TmJobForm *form);
void tm_job_form_clear (TmJobForm *form);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (TmJobForm, tm_job_form_clear)

/* What was chosen: the value of the enumeration, or AS_USUAL. */
#define TM_FORM_AS_USUAL (-1)

typedef struct {
  int paper;   /* TmPaper */
  int decimal; /* TmDecimal */
  int dates;   /* TmDateForm */
  gboolean landscape;
} TmFormChoice;

void tm_form_choice_load (TmFormChoice *out);
void tm_form_choice_save (const TmFormChoice *choice);

G_END_DECLS
