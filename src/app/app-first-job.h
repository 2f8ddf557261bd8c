/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-first-job: a job begun in three steps: the part, one requirement of its drawing, the first
 * piece.  Only the part is needed.
 */

#pragma once

#include <adwaita.h>

#include "core-model.h"

G_BEGIN_DECLS

#define TM_TYPE_FIRST_JOB (tm_first_job_get_type ())
G_DECLARE_FINAL_TYPE (TmFirstJob, tm_first_job, TM, FIRST_JOB, AdwBin)

/* Signal "begun" (): the person asked for the job to be made; take it with tm_first_job_make(). */
GtkWidget *tm_first_job_new (void);

/* The job as typed, with a new id, or NULL with one line in @problem (to be freed). */
TmJob *tm_first_job_make (TmFirstJob *self, char **problem) G_GNUC_WARN_UNUSED_RESULT;

/* Empties the form. */
void tm_first_job_clear (TmFirstJob *self);

G_END_DECLS
