/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-new-job: putting a new job into the book, from Home or from a dialog of its own.
 */

#pragma once

#include "app-first-job.h"
#include "app-window.h"

G_BEGIN_DECLS

/* Asks for the new job in a dialog. */
void tm_new_job_dialog_present (TmWindow *window);

/* Puts what was typed in @form into the book and shows it.  FALSE with @problem (to be freed) when
 * that cannot be: what was typed stays. */
gboolean tm_new_job_from_form (TmWindow *window, TmFirstJob *form, char **problem);

G_END_DECLS
