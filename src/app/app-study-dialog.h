/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-study-dialog: planning a gauge study.
 */

#pragma once

#include "app-document.h"
#include "app-study-form.h"

G_BEGIN_DECLS

/* Called with the name of the study that was added. */
typedef void (*TmStudyPlanned) (const char *name, gpointer data);

/* Presents the dialog over @any_child's window; @planned is not called when it is cancelled, nor after
 * @any_child is gone. */
GtkWindow *tm_study_dialog_present (GtkWidget *any_child, TmDocument *document, TmStudyPlanned planned,
                                    gpointer data);

/* Its fields and its answer; for tests. */
TmStudyForm *tm_study_dialog_form (GtkWindow *window);
void tm_study_dialog_confirm (GtkWindow *window);
const char *tm_study_dialog_problem (GtkWindow *window);

G_END_DECLS
