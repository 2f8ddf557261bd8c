/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-facts: the facts of a job (part, order, rules, first article), each saved when it is left
 * or Enter is pressed.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_FACTS (tm_job_facts_get_type ())
G_DECLARE_FINAL_TYPE (TmJobFacts, tm_job_facts, TM, JOB_FACTS, GtkBox)

void tm_job_facts_set_document (TmJobFacts *self, TmDocument *document);

/* Puts the cursor into the row of the fact with this name in the job file ("part_name") or in TmJob
 * ("first_article_reason"); FALSE when there is none. */
gboolean tm_job_facts_focus (TmJobFacts *self, const char *fact);

G_END_DECLS
