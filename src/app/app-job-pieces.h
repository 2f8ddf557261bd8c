/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-job-pieces: the pieces of a job: added by serial, marked as first article, removed while
 * nothing is recorded on them.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"

G_BEGIN_DECLS

#define TM_TYPE_JOB_PIECES (tm_job_pieces_get_type ())
G_DECLARE_FINAL_TYPE (TmJobPieces, tm_job_pieces, TM, JOB_PIECES, GtkBox)

void tm_job_pieces_set_document (TmJobPieces *self, TmDocument *document);

/* Puts the cursor into the entry for the next piece. */
void tm_job_pieces_focus_entry (TmJobPieces *self);

G_END_DECLS
