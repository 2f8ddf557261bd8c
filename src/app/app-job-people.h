/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-people: who measures in this job, and who is measuring now.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_PEOPLE (tm_job_people_get_type ())
G_DECLARE_FINAL_TYPE (TmJobPeople, tm_job_people, TM, JOB_PEOPLE, GtkBox)

void tm_job_people_set_document (TmJobPeople *self, TmDocument *document);

G_END_DECLS
