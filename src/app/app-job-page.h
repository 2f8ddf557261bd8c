/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-page: the Job page, in two views: facts on the left, features in the middle, pieces on the right;
 * and the drawing with its balloons.
 */

#pragma once

#include <adwaita.h>

#include "app-document.h"
#include "app-feature-dialog.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_PAGE (tm_job_page_get_type ())
G_DECLARE_FINAL_TYPE (TmJobPage, tm_job_page, TM, JOB_PAGE, AdwBin)

GtkWidget *tm_job_page_new (void);

/* @document may be NULL. */
void tm_job_page_set_document (TmJobPage *self, TmDocument *document);

/* Puts the focus where the present view wants it. */
void tm_job_page_enter (TmJobPage *self);

/* The drawing, with the feature @balloon chosen (NULL: none in particular). */
void tm_job_page_show_drawing (TmJobPage *self, const char *balloon);

/* Where something is missing: the row of a fact by its member of TmJob or its name in the job file
 * ("report_identifier"), the entry for a feature or a piece, one feature, a material, process or test in
 * their list, a part in that of the assembly (NULL: the list). */
void tm_job_page_focus_fact (TmJobPage *self, const char *fact);
/* The field of the shop's template with this name. */
void tm_job_page_show_field (TmJobPage *self, const char *name);
void tm_job_page_show_supply (TmJobPage *self, const TmSupply *supply);
void tm_job_page_show_sub_part (TmJobPage *self, const TmSubPart *part);
void tm_job_page_focus_callout (TmJobPage *self);
void tm_job_page_focus_piece (TmJobPage *self);
void tm_job_page_change_feature (TmJobPage *self, const TmFeature *feature, TmFeatureRow row);

G_END_DECLS
